//! Where log books are kept; the only crate that knows SQL
