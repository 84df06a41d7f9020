//! Small dense least squares.
//!
//! `A·x ≈ y` is solved by Householder reflections, which keep the digits that normal equations would
//! square away. Equations are taken into the triangle a few at a time, so that any number of them is
//! solved on the stack, nothing laid aside. Columns are first brought to a like length, by powers
//! of two, so that this costs no digit. Where columns are nearly alike the answer is refined
//! ([`refine`]). Correlated observations are whitened first by the Cholesky factor of their covariance.
//!
//! Source: Lawson and Hanson, *Solving Least Squares Problems*, chapter 27, "sequential
//! accumulation"; from memory.

#[cfg(test)]
mod certified;
mod refine;

/// One equation: what each unknown counts, and what was observed.
pub(crate) type Equation<const W: usize> = ([f64; W], f64);

/// A least-squares solution.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Solution<const W: usize> {
    /// The unknowns.
    pub unknowns: [f64; W],
    /// Inverse of the normal matrix: the covariance for observations of unit variance.
    pub covariance: [[f64; W]; W],
}

impl<const W: usize> Solution<W> {
    /// Observation minus model.
    pub fn residual(&self, (row, value): &Equation<W>) -> f64 {
        value - dot(row, &self.unknowns)
    }

    /// Sum of the squares of the residuals.
    pub fn squares(&self, equations: impl Iterator<Item = Equation<W>>) -> f64 {
        equations.map(|equation| self.residual(&equation).powi(2)).sum()
    }
}

/// Diagonal of the triangle, relative to its column, below which the unknowns count as undetermined.
const RANK: f64 = 1e-10;
/// Below this, columns are alike enough to cost digits that refining brings back.
const ALIKE: f64 = 0.02;
/// Equations taken in at a time.
const BLOCK: usize = 8;

/// Solves all equations at once; `None` when they do not determine every unknown.
pub(crate) fn least_squares<const W: usize>(
    equations: &(impl Iterator<Item = Equation<W>> + Clone),
) -> Option<Solution<W>> {
    let mut squares = [0.0; W];
    let mut count = 0;
    for (row, _) in equations.clone() {
        count += 1;
        for (square, a) in squares.iter_mut().zip(row) {
            *square += a * a;
        }
    }
    let lengths = squares.map(f64::sqrt);
    let scales = lengths.map(power_of_two);
    if count < W || !lengths.iter().chain(&scales).all(|length| length.is_normal()) {
        return None;
    }
    let triangle = Triangle::of(equations.clone(), &scales);
    let own = |j: usize| triangle.upper[j][j].abs() * scales[j] / lengths[j];
    let least = (0..W).map(own).fold(f64::INFINITY, f64::min);
    if least.is_nan() || least < RANK {
        return None;
    }
    let inverse = triangle.inverse();
    let unscaled: [f64; W] = std::array::from_fn(|i| dot(&inverse[i], &triangle.right));
    let covariance = std::array::from_fn(|i| {
        std::array::from_fn(|j| dot(&inverse[i], &inverse[j]) / (scales[i] * scales[j]))
    });
    let mut solved =
        Solution { unknowns: std::array::from_fn(|i| unscaled[i] / scales[i]), covariance };
    if least < ALIKE {
        refine::refine(&mut solved, equations);
    }
    Some(solved)
}

/// As [`least_squares`], for observations with this covariance. The equations that come back are
/// whitened: the squares of their residuals sum to χ².
pub(crate) fn generalised<const W: usize>(
    equations: &[Equation<W>],
    covariance: &[Vec<f64>],
) -> Option<(Solution<W>, Vec<Equation<W>>)> {
    let factor = cholesky(covariance)?;
    let mut white: Vec<Equation<W>> = Vec::with_capacity(equations.len());
    for (lower, (row, value)) in factor.iter().zip(equations) {
        let (mut row, mut value) = (*row, *value);
        for (times, (above, known)) in lower.iter().zip(&white) {
            row = std::array::from_fn(|j| row[j] - times * above[j]);
            value -= times * known;
        }
        let own = lower[white.len()];
        white.push((row.map(|a| a / own), value / own));
    }
    Some((least_squares(&white.iter().copied())?, white))
}

/// `a·M·b`.
pub(crate) fn quadratic<const W: usize>(a: &[f64; W], matrix: &[[f64; W]; W], b: &[f64; W]) -> f64 {
    a.iter().zip(matrix).map(|(a, row)| a * dot(row, b)).sum()
}

/// Scalar product.
pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// The power of two at or below a length.
fn power_of_two(length: f64) -> f64 {
    const EXPONENT: u64 = 0x7ff << 52;
    f64::from_bits(length.to_bits() & EXPONENT)
}

/// `R` and `Qᵀy` of the equations taken in so far.
struct Triangle<const W: usize> {
    upper: [[f64; W]; W],
    right: [f64; W],
}

impl<const W: usize> Triangle<W> {
    fn of(equations: impl Iterator<Item = Equation<W>>, scales: &[f64; W]) -> Self {
        let mut triangle = Self { upper: [[0.0; W]; W], right: [0.0; W] };
        let mut block = [([0.0; W], 0.0); BLOCK];
        let mut filled = 0;
        for (row, value) in equations {
            block[filled] = (std::array::from_fn(|j| row[j] / scales[j]), value);
            filled += 1;
            if filled == BLOCK {
                triangle.take_in(&mut block);
                filled = 0;
            }
        }
        triangle.take_in(&mut block[..filled]);
        triangle
    }

    /// One reflection a column: it turns what the block holds of that column into the triangle.
    fn take_in(&mut self, block: &mut [Equation<W>]) {
        for column in 0..W {
            let below: f64 = block.iter().map(|(row, _)| row[column] * row[column]).sum();
            if below == 0.0 {
                continue;
            }
            let head = self.upper[column][column];
            let length = (head * head + below).sqrt();
            let turned = if head > 0.0 { -length } else { length };
            // The mirror is (head − turned, the block's column); its square is −2·turned·(head − turned).
            let first = head - turned;
            let share = 1.0 / (turned * first);
            self.upper[column][column] = turned;
            for j in column + 1..W {
                let in_block: f64 = block.iter().map(|(row, _)| row[column] * row[j]).sum();
                let times = share * (first * self.upper[column][j] + in_block);
                self.upper[column][j] += times * first;
                for (row, _) in &mut *block {
                    row[j] += times * row[column];
                }
            }
            let in_block: f64 = block.iter().map(|(row, value)| row[column] * value).sum();
            let times = share * (first * self.right[column] + in_block);
            self.right[column] += times * first;
            for (row, value) in &mut *block {
                *value += times * row[column];
            }
        }
    }

    fn inverse(&self) -> [[f64; W]; W] {
        let mut inverse = [[0.0; W]; W];
        for row in (0..W).rev() {
            inverse[row] = std::array::from_fn(|column| {
                let below: f64 =
                    (row + 1..=column).map(|k| self.upper[row][k] * inverse[k][column]).sum();
                (f64::from(u8::from(row == column)) - below) / self.upper[row][row]
            });
        }
        inverse
    }
}

/// Lower triangle `L` with `L·Lᵀ = matrix`; `None` unless the matrix is positive definite.
fn cholesky(matrix: &[Vec<f64>]) -> Option<Vec<Vec<f64>>> {
    let size = matrix.len();
    let mut lower = vec![vec![0.0; size]; size];
    for i in 0..size {
        for j in 0..=i {
            let sum = matrix[i][j] - dot(&lower[i][..j], &lower[j][..j]);
            lower[i][j] = if i == j {
                if sum.is_nan() || sum <= 0.0 {
                    return None;
                }
                sum.sqrt()
            } else {
                sum / lower[j][j]
            };
        }
    }
    Some(lower)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, wanted: f64) {
        assert!((found / wanted - 1.0).abs() < 1e-12, "{found} for {wanted}");
    }

    #[test]
    fn what_is_not_determined_is_not_answered() {
        let solved = |equations: &[Equation<2>]| least_squares(&equations.iter().copied());
        assert!(solved(&[([1.0, 2.0], 1.0), ([2.0, 4.0], 2.0)]).is_none());
        assert!(solved(&[([1.0, f64::NAN], 1.0), ([2.0, 4.0], 2.0)]).is_none());
        assert!(solved(&[([1.0, f64::INFINITY], 1.0), ([2.0, 4.0], 2.0)]).is_none());
        assert!(solved(&[([1.0, 0.0], 1.0), ([2.0, 0.0], 2.0)]).is_none());
        assert!(solved(&[([1.0, 2.0], 1.0)]).is_none());
        assert!(solved(&[]).is_none());
        let singular = [vec![1.0, 1.0], vec![1.0, 1.0]];
        assert!(generalised(&[([1.0], 1.0), ([1.0], 2.0)], &singular).is_none());
    }

    /// However many blocks the equations fill, and in whatever units, the answer is that of the
    /// closed form of a straight line: slope 12·Σ(x − x̄)·y/(n³ − n) for x = 1 … n.
    #[test]
    fn blocks_of_any_filling_agree_with_the_closed_form() {
        for n in [2_u32, 7, 8, 9, 16, 17, 40] {
            let y = |x: f64| (1.7 * x).sin();
            let xs = (1..=n).map(f64::from);
            let count = f64::from(n);
            let mean = f64::midpoint(count, 1.0);
            let slope = 12.0 * xs.clone().map(|x| (x - mean) * y(x)).sum::<f64>()
                / (count * count * count - count);
            for unit in [1.0, 1e-6, 3e5] {
                let line = least_squares(&xs.clone().map(|x| ([1.0, x * unit], y(x)))).unwrap();
                assert!((line.unknowns[1] * unit - slope).abs() < 1e-13, "{n} {unit}");
                near(line.covariance[1][1] * unit * unit, 12.0 / (count * count * count - count));
            }
        }
    }

    /// Two correlated looks at one thing: weights by the closed form (σ₂² − c)/(σ₁² + σ₂² − 2c).
    #[test]
    fn correlated_observations_are_weighed_together() {
        let (v1, v2, c) = (4.0, 9.0, 2.0);
        let covariance = [vec![v1, c], vec![c, v2]];
        let (solved, white) = generalised(&[([1.0], 10.0), ([1.0], 13.0)], &covariance).unwrap();
        let weight = (v2 - c) / (v1 + v2 - 2.0 * c);
        near(solved.unknowns[0], 10.0 * weight + 13.0 * (1.0 - weight));
        near(solved.covariance[0][0], (v1 * v2 - c * c) / (v1 + v2 - 2.0 * c));
        // χ² of the two against each other.
        near(solved.squares(white.into_iter()), 9.0 / (v1 + v2 - 2.0 * c));
    }
}
