//! The job card as PDF; the only crate that knows typst
