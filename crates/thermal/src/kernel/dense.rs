//! Small full matrices: those of the joint, a few dozen nodes.

/// A full matrix, row by row.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Full {
    columns: usize,
    values: Vec<f64>,
}

impl Full {
    /// From its rows, one after another.
    pub fn from_rows(columns: usize, values: Vec<f64>) -> Self {
        Self { columns, values }
    }

    /// One row.
    pub fn row(&self, row: usize) -> &[f64] {
        &self.values[row * self.columns..(row + 1) * self.columns]
    }

    /// All rows.
    pub fn rows(&self) -> impl Iterator<Item = &[f64]> {
        self.values.chunks_exact(self.columns.max(1))
    }

    /// The product with a vector.
    pub fn times(&self, x: &[f64]) -> Vec<f64> {
        self.rows().map(|row| dot(row, x)).collect()
    }
}

/// Σ a·b, in four sums so that the processor can overlap them.
pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let (a4, b4) = (a.chunks_exact(4), b.chunks_exact(4));
    let rest: f64 = a4.remainder().iter().zip(b4.remainder()).map(|(a, b)| a * b).sum();
    let mut sums = [0.0; 4];
    for (a, b) in a4.zip(b4) {
        for k in 0..4 {
            sums[k] += a[k] * b[k];
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3]) + rest
}

/// Solves a symmetric positive definite system of `size` unknowns by Cholesky, `entry(i, j)` for
/// i ≥ j; `None` unless it is positive definite.
pub(crate) fn solve_positive(
    size: usize,
    entry: impl Fn(usize, usize) -> f64,
    right: &[f64],
) -> Option<Vec<f64>> {
    let start = |row: usize| row * (row + 1) / 2;
    let mut lower = vec![0.0; start(size)];
    for i in 0..size {
        for j in 0..=i {
            let left = dot(&lower[start(i)..start(i) + j], &lower[start(j)..start(j) + j]);
            let value = entry(i, j) - left;
            lower[start(i) + j] = if i > j {
                value / lower[start(j) + j]
            } else if value > 0.0 {
                value.sqrt()
            } else {
                return None;
            };
        }
    }
    let mut x = right.to_vec();
    for i in 0..size {
        let left = dot(&lower[start(i)..start(i) + i], &x[..i]);
        x[i] = (x[i] - left) / lower[start(i) + i];
    }
    for i in (0..size).rev() {
        x[i] /= lower[start(i) + i];
        for j in 0..i {
            x[j] -= lower[start(i) + j] * x[i];
        }
    }
    Some(x)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The Hilbert matrix of four rows has the inverse of whole numbers, whose rows sum to
    /// −4, 60, −180, 140 (Knuth, *The Art of Computer Programming*, vol. 1, 1.2.3; from memory).
    #[test]
    fn the_hilbert_matrix_gives_whole_numbers() {
        let hilbert = |i: usize, j: usize| 1.0 / super::super::grading::as_float(i + j + 1);
        let x = solve_positive(4, hilbert, &[1.0; 4]).unwrap();
        for (found, wanted) in x.iter().zip([-4.0, 60.0, -180.0, 140.0]) {
            assert!((found - wanted).abs() < 1e-9, "{x:?}");
        }
        assert!(solve_positive(2, |_, _| 1.0, &[1.0; 2]).is_none());
    }

    #[test]
    fn a_product_of_odd_length_is_whole() {
        let a: Vec<f64> = (0..7).map(super::super::grading::as_float).collect();
        assert!((dot(&a, &a) - 91.0).abs() < 1e-12);
        assert_eq!(Full::from_rows(2, vec![1.0, 2.0, 3.0, 4.0]).times(&[1.0, 1.0]), [3.0, 7.0]);
    }
}
