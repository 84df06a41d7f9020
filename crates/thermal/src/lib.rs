//! Heat.
mod kernel;
