//! The catalogue: one chapter a noun, in the order of the way through a job.

mod closeup;
mod fit;
mod machines;
mod sizes;

use crate::Calculation;

/// All chapters.
pub(crate) const ALL: &[&[Calculation]] = &[machines::ALL, sizes::ALL, fit::ALL, closeup::ALL];
