//! How a table of the standard is read: by steps of nominal size, over one and up to another.

/// One row: over, up to and including (mm), and the figures (µm).
pub(super) type Row<const N: usize> = (f64, f64, [f64; N]);

/// Where the standard prints a dash.
pub(super) const NO: f64 = f64::NAN;

/// A size converted from another unit must not slip over a step's end by a rounding error.
const HAIR_MM: f64 = 1e-6;

/// True when the size is over `over` and up to `to`.
pub(super) fn lies_in(nominal_mm: f64, over: f64, to: f64) -> bool {
    let size = nominal_mm - HAIR_MM;
    over < size && size <= to
}

/// The figures of the step that holds the size; `None` outside all of them.
pub(super) fn row<const N: usize>(table: &[Row<N>], nominal_mm: f64) -> Option<&[f64; N]> {
    let mut rows = table.iter();
    rows.find(|(over, to, _)| lies_in(nominal_mm, *over, *to)).map(|(_, _, figures)| figures)
}
