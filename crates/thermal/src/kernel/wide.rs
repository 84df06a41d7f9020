//! The widest instructions that the processor has, chosen when the program runs.
//!
//! Sums are laid out in several parts beforehand and no product is fused with a sum, so that the
//! width changes the time and not one bit of the answer.

use pulp::Arch;

/// Does a piece of work with them: all of it that is inlined.
#[inline]
pub(crate) fn wide<T>(work: impl FnOnce() -> T) -> T {
    Arch::new().dispatch(work)
}
