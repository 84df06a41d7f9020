//! How metal behaves: sizes, fits, keys, heat, bolts; pure functions
