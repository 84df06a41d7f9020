//! Certified and published answers.

use super::{Equation, Solution, least_squares, quadratic};

fn near(found: f64, certified: f64, relative: f64) {
    assert!((found / certified - 1.0).abs() < relative, "{found} for {certified}");
}

/// Standard deviation of the residuals, and of every unknown.
fn deviations<const W: usize>(
    solved: &Solution<W>,
    equations: &[Equation<W>],
    freedom: f64,
) -> (f64, [f64; W]) {
    let variance = solved.squares(equations.iter().copied()) / freedom;
    (variance.sqrt(), std::array::from_fn(|i| (variance * solved.covariance[i][i]).sqrt()))
}

fn solved<const W: usize>(equations: &[Equation<W>]) -> Solution<W> {
    least_squares(&equations.iter().copied()).unwrap()
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
    let equations = NORRIS.map(|(x, y)| ([1.0, x], y));
    let solved = solved(&equations);
    near(solved.unknowns[0], -0.262_323_073_774_029, 1e-11);
    near(solved.unknowns[1], 1.002_116_818_020_45, 1e-11);
    let (residual, deviations) = deviations(&solved, &equations, 34.0);
    near(residual, 0.884_796_396_144_373, 1e-11);
    near(deviations[0], 0.232_818_234_301_152, 1e-11);
    near(deviations[1], 0.000_429_796_848_199_937, 1e-11);
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
    let equations = LONGLEY.map(|[y, a, b, c, d, e, f]| ([1.0, a, b, c, d, e, f], y));
    let solved = solved(&equations);
    #[rustfmt::skip]
    let certified = [
        (-3_482_258.634_595_82,    890_420.383_607_373),
        (      15.061_872_271_373_3,    84.914_925_774_766_9),
        (      -0.035_819_179_292_591,   0.033_491_007_772_243),
        (      -2.020_229_803_816_83,    0.488_399_681_651_699),
        (      -1.033_226_867_173_59,    0.214_274_163_161_675),
        (      -0.051_104_105_653_580_7, 0.226_073_200_069_370),
        (   1_829.151_464_613_55,      455.478_499_142_212),
    ];
    let (residual, deviations) = deviations(&solved, &equations, 9.0);
    near(residual, 304.854_073_561_965, 1e-11);
    for (i, (value, deviation)) in certified.into_iter().enumerate() {
        near(solved.unknowns[i], value, 1e-13);
        near(deviations[i], deviation, 1e-10);
    }
}

/// What Wampler lays on his polynomial, orthogonal to all powers up to the fifth.
#[rustfmt::skip]
const WAMPLER: [f64; 21] = [
     759.0, -2048.0, 2048.0, -2048.0, 2523.0, -2048.0, 2048.0,
    -2048.0, 1838.0, -2048.0, 2048.0, -2048.0, 1838.0, -2048.0,
    2048.0, -2048.0, 2523.0, -2048.0, 2048.0, -2048.0, 759.0,
];

/// y = Σ (x/over)ᵏ up to the fifth power, for x = 0 … 20, with so many times the disturbance.
fn wampler(over: f64, times: f64) -> [Equation<6>; 21] {
    let mut x = -1.0;
    WAMPLER.map(|off| {
        x += 1.0;
        let powers: [f64; 6] = std::array::from_fn(|k| (0..k).map(|_| x).product());
        // Over one denominator the sum is exact, as the published decimals are.
        let whole: f64 = powers
            .iter()
            .rev()
            .fold((0.0, 1.0), |(sum, share), power| (sum + power * share, share * over))
            .0;
        (powers, whole / over.powi(5) + times * off)
    })
}

/// NIST Statistical Reference Datasets, Wampler 1 to 5 (linear, higher difficulty): the certified
/// coefficients are 1 (a tenth from power to power in the second), the certified deviations those
/// below, times nothing, 1, 100 or 10 000. Data by their published rule, known from memory, and
/// confirmed: the disturbance is orthogonal to the powers, and gives the certified deviations, in
/// whole numbers.
#[test]
fn polynomials_meet_wampler() {
    let certified = [
        2_152.326_246_781_70,
        2_363.551_734_696_81,
        779.343_524_331_583,
        101.475_507_550_350,
        5.645_665_121_707_52,
        0.112_324_854_679_312,
    ];
    for (over, times) in [(1.0, 0.0), (10.0, 0.0), (1.0, 1.0), (1.0, 100.0), (1.0, 10_000.0)] {
        let equations = wampler(over, times);
        let solved = solved(&equations);
        let (residual, deviations) = deviations(&solved, &equations, 15.0);
        let mut wanted = 1.0;
        for (found, (deviation, certified)) in
            solved.unknowns.iter().zip(deviations.iter().zip(certified))
        {
            near(*found, wanted, 1e-12);
            let off = deviation - times * certified;
            assert!(off.abs() < 1e-12 * times.max(1.0) * certified, "{deviation}, {over} {times}");
            wanted /= over;
        }
        let off = residual - times * 2_360.145_023_792_68;
        assert!(off.abs() < 1e-8 * times.max(1e-4), "{residual}, {over} {times}");
    }
}

/// JCGM 100:2008, H.3, correction of a thermometer by a line through eleven readings: data and printed
/// figures from memory, confirmed in that the one gives the other.
#[test]
fn a_thermometer_is_corrected_as_in_the_guide() {
    #[rustfmt::skip]
    let read = [
        (21.521, -0.171), (22.012, -0.169), (22.512, -0.166), (23.003, -0.159),
        (23.507, -0.164), (23.999, -0.165), (24.513, -0.156), (25.002, -0.157),
        (25.503, -0.159), (26.010, -0.161), (26.511, -0.160),
    ];
    let equations = read.map(|(celsius, correction)| ([1.0, celsius - 20.0], correction));
    let line = solved(&equations);
    let (residual, [u_level, u_slope]) = deviations(&line, &equations, 9.0);
    let correlation =
        line.covariance[0][1] / (line.covariance[0][0] * line.covariance[1][1]).sqrt();
    // At 30 °C.
    let at = [1.0, 10.0];
    let there = line.unknowns[0] + 10.0 * line.unknowns[1];
    let u_there = residual * quadratic(&at, &line.covariance, &at).sqrt();
    for (found, printed, half_digit) in [
        (line.unknowns[0], -0.1712, 0.5e-4),
        (u_level, 0.0029, 0.5e-4),
        (line.unknowns[1], 0.00218, 0.5e-5),
        (u_slope, 0.00067, 0.5e-5),
        (correlation, -0.930, 0.5e-3),
        (residual, 0.0035, 0.5e-4),
        (there, -0.1494, 0.5e-4),
        (u_there, 0.0041, 0.5e-4),
    ] {
        assert!((found - printed).abs() <= half_digit, "{found} for {printed}");
    }
}

/// JCGM 100:2008, H.2, resistance, reactance and impedance from five readings of three quantities that
/// vary together; by a restatement of its figures, the readings confirmed in that they give them.
/// Unrounded, u(X) is 0.2956, which the guide prints as 0.295.
#[test]
fn quantities_that_vary_together_combine_as_in_the_guide() {
    let volts = [5.007, 4.994, 5.005, 4.990, 4.999];
    let amperes = [0.019_663, 0.019_639, 0.019_640, 0.019_685, 0.019_678];
    let radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
    let read = [volts, amperes, radians];
    let means = read.map(|values| solved(&values.map(|value| ([1.0], value))).unknowns[0]);
    let off = |k: usize, i: usize| read[k][i] - means[k];
    let covariance: [[f64; 3]; 3] = std::array::from_fn(|j| {
        std::array::from_fn(|k| (0..5).map(|i| off(j, i) * off(k, i)).sum::<f64>() / 20.0)
    });
    let [v, i, phi] = means;
    let (sin, cos) = phi.sin_cos();
    let z = v / i;
    let gradients = [
        [cos / i, -z * cos / i, -z * sin],
        [sin / i, -z * sin / i, z * cos],
        [1.0 / i, -z / i, 0.0],
    ];
    let shared = |a: usize, b: usize| quadratic(&gradients[a], &covariance, &gradients[b]);
    let u: [f64; 3] = std::array::from_fn(|k| shared(k, k).sqrt());
    for (found, wanted, half_digit) in [
        (z * cos, 127.732, 0.5e-3),
        (u[0], 0.071, 0.5e-3),
        (z * sin, 219.847, 0.5e-3),
        (u[1], 0.2956, 0.5e-4),
        (z, 254.260, 0.5e-3),
        (u[2], 0.236, 0.5e-3),
        (shared(0, 1) / (u[0] * u[1]), -0.588, 0.5e-3),
        (shared(0, 2) / (u[0] * u[2]), -0.485, 0.5e-3),
        (shared(1, 2) / (u[1] * u[2]), 0.993, 0.5e-3),
    ] {
        assert!((found - wanted).abs() <= half_digit, "{found} for {wanted}");
    }
}
