//! The kinds of coupling, one file each
