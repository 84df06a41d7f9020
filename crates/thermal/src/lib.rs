//! Heat
