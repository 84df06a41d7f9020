//! Where the shafts are: readings to positions, targets, foot moves and shims
