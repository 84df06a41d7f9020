//! Pages and forms; the only crate that knows HTTP
