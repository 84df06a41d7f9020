//! How a table is read by steps of size: over one end and up to and including the other.

/// One row: over, up to and including, and its figures.
pub(crate) type Row<T> = (f64, f64, T);

/// Where the publication prints a dash.
pub(crate) const NO: f64 = f64::NAN;

/// A size converted from another unit must not slip over a step's end by a rounding error: a
/// millionth of the table's unit.
const HAIR: f64 = 1e-6;

/// True when the size is over `over` and up to `to`.
pub(crate) fn lies_in(size: f64, over: f64, to: f64) -> bool {
    let size = size - HAIR;
    over < size && size <= to
}

/// The figures of the step that holds the size; `None` outside all of them.
pub(crate) fn row<T>(table: &[Row<T>], size: f64) -> Option<&T> {
    let mut rows = table.iter();
    rows.find(|(over, to, _)| lies_in(size, *over, *to)).map(|(_, _, figures)| figures)
}
