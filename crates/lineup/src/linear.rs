//! Small dense least squares.
//!
//! `A·x ≈ y` is solved by Householder reflections on columns scaled to unit length, which keeps
//! the digits that normal equations would square away; correlated observations are whitened first
//! by the Cholesky factor of their covariance. Sizes here are a few dozen rows and up to eight
//! columns, so rows are plain vectors.

/// A least-squares solution.
#[derive(Clone, Debug)]
pub(crate) struct Solution {
    /// The unknowns.
    pub unknowns: Vec<f64>,
    /// Inverse of the normal matrix: the covariance for observations of unit variance.
    pub covariance: Vec<Vec<f64>>,
    /// Observation minus model.
    pub residuals: Vec<f64>,
}

impl Solution {
    /// Sum of the squares of the residuals.
    pub fn squares(&self) -> f64 {
        self.residuals.iter().map(|r| r * r).sum()
    }
}

/// Diagonal of the triangle, relative to unit columns, below which the unknowns count as undetermined.
const RANK: f64 = 1e-10;

/// Solves `rows·x ≈ values`; `None` when the rows do not determine every unknown.
pub(crate) fn least_squares(rows: &[Vec<f64>], values: &[f64]) -> Option<Solution> {
    let width = rows.first()?.len();
    if rows.len() < width || rows.len() != values.len() {
        return None;
    }
    let scales: Vec<f64> = (0..width).map(|j| norm(rows.iter().map(|row| row[j]))).collect();
    if scales.iter().any(|scale| !scale.is_finite() || *scale == 0.0) {
        return None;
    }
    let mut work: Vec<Vec<f64>> = rows
        .iter()
        .zip(values)
        .map(|(row, value)| row.iter().zip(&scales).map(|(a, s)| a / s).chain([*value]).collect())
        .collect();
    for column in 0..width {
        reflect(&mut work, column);
        if work[column][column].abs() < RANK {
            return None;
        }
    }
    let inverse = invert_upper(&work, width);
    let unscaled = |i: usize| -> f64 { (i..width).map(|j| inverse[i][j] * work[j][width]).sum() };
    let unknowns: Vec<f64> = (0..width).map(|i| unscaled(i) / scales[i]).collect();
    let covariance = (0..width)
        .map(|i| {
            (0..width).map(|j| dot(&inverse[i], &inverse[j]) / (scales[i] * scales[j])).collect()
        })
        .collect();
    let residuals =
        rows.iter().zip(values).map(|(row, value)| value - dot(row, &unknowns)).collect();
    Some(Solution { unknowns, covariance, residuals })
}

/// As [`least_squares`], for observations with this covariance; residuals come back whitened, so
/// that their squares sum to χ².
pub(crate) fn generalised(
    rows: &[Vec<f64>],
    values: &[f64],
    covariance: &[Vec<f64>],
) -> Option<Solution> {
    let factor = cholesky(covariance)?;
    let width = rows.first()?.len();
    let mut white = vec![vec![0.0; width]; rows.len()];
    for column in 0..width {
        let bare: Vec<f64> = rows.iter().map(|row| row[column]).collect();
        for (row, value) in white.iter_mut().zip(forward(&factor, &bare)) {
            row[column] = value;
        }
    }
    least_squares(&white, &forward(&factor, values))
}

/// `a·M·b`.
pub(crate) fn quadratic(a: &[f64], matrix: &[Vec<f64>], b: &[f64]) -> f64 {
    a.iter().zip(matrix).map(|(a, row)| a * dot(row, b)).sum()
}

/// Scalar product.
pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

fn norm(column: impl Iterator<Item = f64>) -> f64 {
    column.map(|a| a * a).sum::<f64>().sqrt()
}

/// One Householder reflection: zeroes `column` below the diagonal, in all columns from it on.
fn reflect(work: &mut [Vec<f64>], column: usize) {
    let length = norm(work[column..].iter().map(|row| row[column]));
    if length == 0.0 {
        return;
    }
    let alpha = if work[column][column] > 0.0 { -length } else { length };
    let mut mirror: Vec<f64> = work[column..].iter().map(|row| row[column]).collect();
    mirror[0] -= alpha;
    let square: f64 = dot(&mirror, &mirror);
    for j in column..work[0].len() {
        let along: f64 = mirror.iter().zip(&work[column..]).map(|(m, row)| m * row[j]).sum();
        for (m, row) in mirror.iter().zip(&mut work[column..]) {
            row[j] -= 2.0 * along / square * m;
        }
    }
}

/// Inverse of the upper triangle in the first `width` rows and columns.
fn invert_upper(upper: &[Vec<f64>], width: usize) -> Vec<Vec<f64>> {
    let mut inverse = vec![vec![0.0; width]; width];
    for column in 0..width {
        inverse[column][column] = 1.0 / upper[column][column];
        for row in (0..column).rev() {
            let sum: f64 = (row + 1..=column).map(|k| upper[row][k] * inverse[k][column]).sum();
            inverse[row][column] = -sum / upper[row][row];
        }
    }
    inverse
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

/// Solves `L·x = values`.
fn forward(lower: &[Vec<f64>], values: &[f64]) -> Vec<f64> {
    let mut solved: Vec<f64> = Vec::with_capacity(values.len());
    for (row, value) in lower.iter().zip(values) {
        let i = solved.len();
        solved.push((value - dot(&row[..i], &solved)) / row[i]);
    }
    solved
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, certified: f64, relative: f64) {
        assert!((found / certified - 1.0).abs() < relative, "{found} for {certified}");
    }

    fn deviations(solved: &Solution, freedom: f64) -> Vec<f64> {
        let variance = solved.squares() / freedom;
        (0..solved.unknowns.len()).map(|i| (variance * solved.covariance[i][i]).sqrt()).collect()
    }

    #[rustfmt::skip]
    const NORRIS: [(f64, f64); 36] = [
        (0.2, 0.1), (337.4, 338.8), (118.2, 118.1), (884.6, 888.0), (10.1, 9.2), (226.5, 228.1),
        (666.3, 668.5), (996.3, 998.5), (448.6, 449.1), (777.0, 778.9), (558.2, 559.2), (0.4, 0.3),
        (0.6, 0.1), (775.5, 778.1), (666.9, 668.8), (338.0, 339.3), (447.5, 448.9), (11.6, 10.8),
        (556.0, 557.7), (228.1, 228.3), (995.8, 998.0), (887.6, 888.8), (120.2, 119.6), (0.3, 0.3),
        (0.3, 0.6), (556.8, 557.6), (339.1, 339.3), (887.2, 888.0), (999.0, 998.5), (779.0, 778.9),
        (11.1, 10.2), (118.3, 117.6), (229.2, 228.9), (669.1, 668.4), (448.9, 449.2), (0.5, 0.2),
    ];

    /// NIST Statistical Reference Datasets, Norris (linear, lower difficulty): certified values.
    #[test]
    fn a_straight_line_meets_norris() {
        let rows: Vec<Vec<f64>> = NORRIS.iter().map(|(x, _)| vec![1.0, *x]).collect();
        let values: Vec<f64> = NORRIS.iter().map(|(_, y)| *y).collect();
        let solved = least_squares(&rows, &values).unwrap();
        near(solved.unknowns[0], -0.262_323_073_774, 1e-11);
        near(solved.unknowns[1], 1.002_116_818_02, 1e-11);
        let deviations = deviations(&solved, 34.0);
        near(deviations[0], 0.232_818_234_301, 1e-11);
        near(deviations[1], 0.000_429_796_848_199_937, 1e-11);
        near(solved.squares(), 26.617_398_529_422, 1e-11);
    }

    #[rustfmt::skip]
    const LONGLEY: [[f64; 7]; 16] = [
        [60323.0,  83.0, 234_289.0, 2356.0, 1590.0, 107_608.0, 1947.0],
        [61122.0,  88.5, 259_426.0, 2325.0, 1456.0, 108_632.0, 1948.0],
        [60171.0,  88.2, 258_054.0, 3682.0, 1616.0, 109_773.0, 1949.0],
        [61187.0,  89.5, 284_599.0, 3351.0, 1650.0, 110_929.0, 1950.0],
        [63221.0,  96.2, 328_975.0, 2099.0, 3099.0, 112_075.0, 1951.0],
        [63639.0,  98.1, 346_999.0, 1932.0, 3594.0, 113_270.0, 1952.0],
        [64989.0,  99.0, 365_385.0, 1870.0, 3547.0, 115_094.0, 1953.0],
        [63761.0, 100.0, 363_112.0, 3578.0, 3350.0, 116_219.0, 1954.0],
        [66019.0, 101.2, 397_469.0, 2904.0, 3048.0, 117_388.0, 1955.0],
        [67857.0, 104.6, 419_180.0, 2822.0, 2857.0, 118_734.0, 1956.0],
        [68169.0, 108.4, 442_769.0, 2936.0, 2798.0, 120_445.0, 1957.0],
        [66513.0, 110.8, 444_546.0, 4681.0, 2637.0, 121_950.0, 1958.0],
        [68655.0, 112.6, 482_704.0, 3813.0, 2552.0, 123_366.0, 1959.0],
        [69564.0, 114.2, 502_601.0, 3931.0, 2514.0, 125_368.0, 1960.0],
        [69331.0, 115.7, 518_173.0, 4806.0, 2572.0, 127_852.0, 1961.0],
        [70551.0, 116.9, 554_894.0, 4007.0, 2827.0, 130_081.0, 1962.0],
    ];

    /// NIST Statistical Reference Datasets, Longley (linear, higher difficulty): certified values.
    #[test]
    fn seven_unknowns_meet_longley() {
        let rows: Vec<Vec<f64>> = LONGLEY.iter().map(|row| [&[1.0], &row[1..]].concat()).collect();
        let values: Vec<f64> = LONGLEY.iter().map(|row| row[0]).collect();
        let solved = least_squares(&rows, &values).unwrap();
        #[rustfmt::skip]
        let certified = [
            (-3_482_258.634_595_82,    890_420.383_607_373),
            (      15.061_872_271_373,      84.914_925_774_767),
            (      -0.035_819_179_293,       0.033_491_007_772),
            (      -2.020_229_803_817,       0.488_399_681_652),
            (      -1.033_226_867_174,       0.214_274_163_162),
            (      -0.051_104_105_654,       0.226_073_200_069),
            (   1_829.151_464_613_55,      455.478_499_142_212),
        ];
        let deviations = deviations(&solved, 9.0);
        for (i, (value, deviation)) in certified.into_iter().enumerate() {
            near(solved.unknowns[i], value, 1e-9);
            near(deviations[i], deviation, 1e-9);
        }
    }

    #[test]
    fn what_is_not_determined_is_not_answered() {
        assert!(least_squares(&[vec![1.0, 2.0], vec![2.0, 4.0]], &[1.0, 2.0]).is_none());
        assert!(least_squares(&[vec![1.0, f64::NAN], vec![2.0, 4.0]], &[1.0, 2.0]).is_none());
        assert!(least_squares(&[], &[]).is_none());
        let singular = [vec![1.0, 1.0], vec![1.0, 1.0]];
        assert!(generalised(&[vec![1.0], vec![1.0]], &[1.0, 2.0], &singular).is_none());
    }

    /// Two correlated looks at one thing: weights by the closed form (σ₂² − c)/(σ₁² + σ₂² − 2c).
    #[test]
    fn correlated_observations_are_weighed_together() {
        let (v1, v2, c) = (4.0, 9.0, 2.0);
        let covariance = [vec![v1, c], vec![c, v2]];
        let solved = generalised(&[vec![1.0], vec![1.0]], &[10.0, 13.0], &covariance).unwrap();
        let weight = (v2 - c) / (v1 + v2 - 2.0 * c);
        near(solved.unknowns[0], 10.0 * weight + 13.0 * (1.0 - weight), 1e-12);
        near(solved.covariance[0][0], (v1 * v2 - c * c) / (v1 + v2 - 2.0 * c), 1e-12);
    }
}
