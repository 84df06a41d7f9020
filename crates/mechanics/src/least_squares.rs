//! Least squares where every group of readings has a level of its own.
//!
//! Readings along one line of a bore share a direction; readings in one plane share a station.
//! Taking each group's level out first keeps out-of-round from passing for taper and the reverse,
//! however unevenly the readings are spread.
//!
//! y level of group + Σ c·x · s² residual sum of squares over degrees of freedom

use std::sync::LazyLock;

/// What a fit of `K` coefficients found.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fit<const K: usize> {
    /// The coefficients.
    pub coefficients: [f64; K],
    /// The inverse of the normal matrix: variances and covariances for a reading of variance 1.
    pub cofactors: [[f64; K]; K],
    /// Standard deviation of one reading about the fit; `None` without spare readings.
    pub residual: Option<f64>,
    /// Readings to spare.
    pub freedom: usize,
}

impl<const K: usize> Fit<K> {
    /// The `±` of coefficient `k` for readings of half-width `reading`, or from their scatter
    /// about the fit (Student's factor) when that is the larger and can be judged.
    pub fn spread(&self, k: usize, reading: f64) -> f64 {
        let scatter = self.residual.filter(|_| self.freedom >= 3);
        let scatter = scatter.map_or(0.0, |s| s * student_95(self.freedom));
        reading.max(scatter) * self.cofactors[k][k].sqrt()
    }
}

/// Fits `y = level(group) + Σ c·x`; `None` when the readings do not tell the coefficients apart.
pub(crate) fn within<const K: usize>(
    groups: &[usize],
    x: &[[f64; K]],
    y: &[f64],
) -> Option<Fit<K>> {
    let count = groups.iter().max()? + 1;
    let x: Vec<[f64; K]> = {
        let columns: [Vec<f64>; K] =
            std::array::from_fn(|k| centred(groups, count, x.iter().map(|row| row[k])));
        (0..y.len()).map(|i| std::array::from_fn(|k| columns[k][i])).collect()
    };
    let y = centred(groups, count, y.iter().copied());
    let normal: [[f64; K]; K] =
        std::array::from_fn(|j| std::array::from_fn(|k| x.iter().map(|row| row[j] * row[k]).sum()));
    let cofactors = inverse(normal)?;
    let right: [f64; K] =
        std::array::from_fn(|k| x.iter().zip(&y).map(|(row, y)| row[k] * y).sum());
    let coefficients: [f64; K] =
        std::array::from_fn(|k| (0..K).map(|j| cofactors[k][j] * right[j]).sum());
    let left = |row: &[f64; K], y: f64| y - (0..K).map(|k| row[k] * coefficients[k]).sum::<f64>();
    let squares: f64 = x.iter().zip(&y).map(|(row, &y)| left(row, y).powi(2)).sum();
    let freedom = y.len().saturating_sub(K + used(groups, count));
    let residual = (freedom > 0).then(|| (squares / count_of(freedom)).sqrt());
    Some(Fit { coefficients, cofactors, residual, freedom })
}

/// How many groups hold any reading.
fn used(groups: &[usize], count: usize) -> usize {
    (0..count).filter(|group| groups.contains(group)).count()
}

/// Every number less the mean of its group.
fn centred(groups: &[usize], count: usize, numbers: impl Iterator<Item = f64>) -> Vec<f64> {
    let numbers: Vec<f64> = numbers.collect();
    let mut sums = vec![(0.0, 0.0); count];
    for (&group, number) in groups.iter().zip(&numbers) {
        sums[group].0 += number;
        sums[group].1 += 1.0;
    }
    groups
        .iter()
        .zip(&numbers)
        .map(|(&group, number)| number - sums[group].0 / sums[group].1)
        .collect()
}

/// Gauss–Jordan with the largest pivot; `None` when a pivot is lost in rounding.
fn inverse<const K: usize>(mut matrix: [[f64; K]; K]) -> Option<[[f64; K]; K]> {
    let mut out: [[f64; K]; K] =
        std::array::from_fn(|j| std::array::from_fn(|k| if j == k { 1.0 } else { 0.0 }));
    let diagonal: [f64; K] = std::array::from_fn(|k| matrix[k][k]);
    for column in 0..K {
        let pivot = (column..K)
            .max_by(|&a, &b| matrix[a][column].abs().total_cmp(&matrix[b][column].abs()))?;
        matrix.swap(column, pivot);
        out.swap(column, pivot);
        let head = matrix[column][column];
        if !(head.abs() > 1e-10 * diagonal[column] && head.is_finite()) {
            return None;
        }
        for k in 0..K {
            matrix[column][k] /= head;
            out[column][k] /= head;
        }
        for row in (0..K).filter(|&row| row != column) {
            let factor = matrix[row][column];
            for k in 0..K {
                matrix[row][k] -= factor * matrix[column][k];
                out[row][k] -= factor * out[column][k];
            }
        }
    }
    Some(out)
}

/// Student's factor for 95 %, both sides.
///
/// Source: Abramowitz and Stegun, *Handbook of Mathematical Functions*, 26.7.3 and 26.7.4; from memory.
pub(crate) fn student_95(freedom: usize) -> f64 {
    FACTORS.get(freedom).copied().unwrap_or_else(|| student(freedom))
}

/// The factors for as many readings as are usual, by how many there are to spare: each is sixty
/// halvings, and a plan asks for the same few again and again.
static FACTORS: LazyLock<[f64; 32]> = LazyLock::new(|| std::array::from_fn(student));

fn student(freedom: usize) -> f64 {
    let (mut low, mut high) = (0.0, 13.0);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if within_student(middle, freedom) < 0.95 { low = middle } else { high = middle }
    }
    f64::midpoint(low, high)
}

/// The probability of lying within ± t.
fn within_student(t: f64, freedom: usize) -> f64 {
    let angle = (t / count_of(freedom).sqrt()).atan();
    let (sine, cosine) = angle.sin_cos();
    let odd = freedom % 2 == 1;
    let first = if odd { cosine } else { 1.0 };
    let (mut term, mut sum) = (first, if freedom == 1 { 0.0 } else { first });
    let mut k = if odd { 3 } else { 2 };
    while k < freedom {
        term *= cosine * cosine * count_of(k - 1) / count_of(k);
        sum += term;
        k += 2;
    }
    if odd { std::f64::consts::FRAC_2_PI * (angle + sine * sum) } else { sine * sum }
}

/// A count as a float.
#[expect(clippy::cast_precision_loss, reason = "readings are counted, not measured: far below 2⁵²")]
pub(crate) fn count_of(count: usize) -> f64 {
    count as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NIST Statistical Reference Datasets, linear least squares, "Norris": data and certified
    /// values; tolerance eleven digits.
    #[test]
    fn a_straight_line_matches_norris() {
        #[rustfmt::skip]
        let x = [0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6,
            775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8,
            339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5];
        #[rustfmt::skip]
        let y = [0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1,
            778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6,
            339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2];
        let rows: Vec<[f64; 1]> = x.iter().map(|&x| [x]).collect();
        let fit = within(&[0; 36], &rows, &y).unwrap();
        let close = |found: f64, wanted: f64| {
            assert!((found / wanted - 1.0).abs() <= 1e-11, "{found} for {wanted}");
        };
        close(fit.coefficients[0], 1.002_116_818_020_45);
        close(fit.residual.unwrap(), 0.884_796_396_144_373);
        close(fit.residual.unwrap() * fit.cofactors[0][0].sqrt(), 0.429_796_848_199_937e-3);
        assert_eq!(fit.freedom, 34);
    }

    /// Student's factors by the incomplete beta function, printed to 12 decimals and good to 1e-6.
    #[test]
    fn student_factors_match_the_tables() {
        let printed = [
            (1, 12.706_204_736),
            (2, 4.302_652_730),
            (3, 3.182_446_305),
            (4, 2.776_445_105),
            (5, 2.570_581_836),
            (8, 2.306_004_135),
            (10, 2.228_138_852),
            (16, 2.119_905_299),
            (30, 2.042_272_456),
        ];
        for (freedom, factor) in printed {
            let found = student_95(freedom);
            assert!((found - factor).abs() < 1e-6, "{freedom}: {found}");
        }
    }

    /// t·s/√Σ(x − x̄)² for a slope when readings scatter more than they claim, by hand: slope −0.2,
    /// s² = (4 − 0.4)/3, Σ 10, t 3.182.
    #[test]
    fn scatter_outweighs_a_small_claim() {
        let x = [[0.0], [1.0], [2.0], [3.0], [4.0]];
        let fit = within(&[0; 5], &x, &[1.0, -1.0, 0.0, 1.0, -1.0]).unwrap();
        let s = fit.residual.unwrap();
        assert!((s * s - (4.0 - 0.4) / 3.0).abs() < 1e-12, "{s}");
        let wide = 3.182_446 * s / 10.0_f64.sqrt();
        assert!((fit.spread(0, 0.1) - wide).abs() < 1e-6);
        assert!((fit.spread(0, 100.0) - 100.0 / 10.0_f64.sqrt()).abs() < 1e-9);
    }

    #[test]
    fn readings_that_cannot_tell_give_no_fit() {
        assert!(within(&[0, 1], &[[1.0], [2.0]], &[5.0, 6.0]).is_none());
        assert!(within(&[0, 0], &[[1.0], [1.0]], &[5.0, 6.0]).is_none());
        assert!(within::<1>(&[], &[], &[]).is_none());
    }
}
