//! The nine-node rectangle of a body of revolution: products of quadratics in r and z.
//!
//! Node `3·j + i` stands at the i-th of three radii and the j-th of three stations. A rectangle
//! in the (r, z) plane is a ring in space, so every integral carries 2π·r.

use std::f64::consts::TAU;

/// Abscissas and weights of Gauss's rule with three points, exact to the fifth power.
/// Source: Abramowitz and Stegun, *Handbook of Mathematical Functions*, Table 25.4; from memory.
const GAUSS: [(f64, f64); 3] =
    [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];

/// The three quadratics that are 1 at −1, 0 and 1 in turn.
pub(crate) fn shape(x: f64) -> [f64; 3] {
    [0.5 * x * (x - 1.0), (1.0 - x) * (1.0 + x), 0.5 * x * (x + 1.0)]
}

/// Their slopes.
fn slope(x: f64) -> [f64; 3] {
    [x - 0.5, -2.0 * x, x + 0.5]
}

/// A ring of rectangular section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Ring {
    /// Inner and outer radius.
    pub r_m: [f64; 2],
    /// First and last station.
    pub z_m: [f64; 2],
}

/// What an integral needs at one point of a ring.
pub(crate) struct Point {
    /// The nine shape functions.
    pub value: [f64; 9],
    /// Their slopes along r and z (1/m).
    pub slope: [[f64; 2]; 9],
    /// Radius (m).
    pub r_m: f64,
    /// The volume that the point stands for (m³).
    pub volume_m3: f64,
}

impl Ring {
    /// The nine points of integration.
    pub fn points(&self) -> [Point; 9] {
        std::array::from_fn(|k| {
            let ((x, wx), (y, wy)) = (GAUSS[k % 3], GAUSS[k / 3]);
            let mut point = self.at([x, y]);
            point.volume_m3 *= wx * wy;
            point
        })
    }

    /// The point at local coordinates between −1 and 1, with the whole Jacobian as its volume.
    pub fn at(&self, [x, y]: [f64; 2]) -> Point {
        let half = |side: [f64; 2]| 0.5 * (side[1] - side[0]);
        let (half_r, half_z) = (half(self.r_m), half(self.z_m));
        let ((nx, ny), (sx, sy)) = ((shape(x), shape(y)), (slope(x), slope(y)));
        let r_m = self.r_m[0] + half_r * (1.0 + x);
        Point {
            value: std::array::from_fn(|n| nx[n % 3] * ny[n / 3]),
            slope: std::array::from_fn(|n| {
                [sx[n % 3] * ny[n / 3] / half_r, nx[n % 3] * sy[n / 3] / half_z]
            }),
            r_m,
            volume_m3: TAU * r_m * half_r * half_z,
        }
    }
}

/// The three shares ∫ N 2π·r ds of an edge from one end `[r, z]` to the other.
pub(crate) fn edge_shares([start, end]: [[f64; 2]; 2]) -> [f64; 3] {
    let half = 0.5 * (end[0] - start[0]).hypot(end[1] - start[1]);
    let mut shares = [0.0; 3];
    for (x, weight) in GAUSS {
        let r_m = start[0] + 0.5 * (1.0 + x) * (end[0] - start[0]);
        for (share, n) in shares.iter_mut().zip(shape(x)) {
            *share += n * TAU * r_m * half * weight;
        }
    }
    shares
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    #[test]
    fn a_ring_holds_its_own_volume_and_the_edge_its_area() {
        let ring = Ring { r_m: [0.03, 0.07], z_m: [-0.01, 0.04] };
        let volume: f64 = ring.points().iter().map(|point| point.volume_m3).sum();
        let wanted = PI * (0.07_f64.powi(2) - 0.03_f64.powi(2)) * 0.05;
        assert!((volume / wanted - 1.0).abs() < 1e-14, "{volume} for {wanted}");
        let side: f64 = edge_shares([[0.03, 0.0], [0.07, 0.0]]).iter().sum();
        let wanted = PI * (0.07_f64.powi(2) - 0.03_f64.powi(2));
        assert!((side / wanted - 1.0).abs() < 1e-14, "{side} for {wanted}");
        let [a, b, c] = edge_shares([[0.05, 0.0], [0.05, 0.06]]);
        assert!((a - c).abs() < 1e-15 && (b / a - 4.0).abs() < 1e-12, "Simpson: {a} {b} {c}");
    }

    #[test]
    fn a_field_of_second_power_has_its_own_slope() {
        let ring = Ring { r_m: [1.0, 3.0], z_m: [0.0, 2.0] };
        let field = |r: f64, z: f64| r * r * z - 2.0 * z * z + r;
        for point in ring.points() {
            let at = |n: usize| {
                #[expect(clippy::cast_precision_loss, reason = "0, 1 or 2")]
                let (i, j) = ((n % 3) as f64, (n / 3) as f64);
                field(1.0 + i, j)
            };
            let dr: f64 = (0..9).map(|n| at(n) * point.slope[n][0]).sum();
            let z: f64 = (0..9).map(|n| [0.0, 1.0, 2.0][n / 3] * point.value[n]).sum();
            assert!((dr - (2.0 * point.r_m * z + 1.0)).abs() < 1e-12, "{dr}");
        }
    }
}
