//! Calculations asked alone: one catalogue for command line, HTTP and guide
