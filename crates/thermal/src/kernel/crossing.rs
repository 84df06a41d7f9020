//! Heat across the joint: through air while it is open, through the tips that touch when closed.
//!
//! h = k/√((g + s)² − (e·g)²) + radiation + pressed·(p/10 MPa)^0.95
//!
//! g radial clearance of a hub that stands in the middle · e how far off the middle it stands,
//! 0 in the middle to 1 resting on one side · k conductivity of air · s = k/touching, the air that
//! is left between rough surfaces that just touch · p contact pressure
//!
//! The root is the mean round the joint: ∫dφ/(g + s − e·g·cos φ)/2π = 1/√((g + s)² − (e·g)²).
//! The power 0.95 of pressure: Cooper, Mikic and Yovanovich, *Thermal contact conductance*,
//! International Journal of Heat and Mass Transfer 12 (1969), as refined by Yovanovich; from memory.

use super::growth::Curve;

/// Stefan's and Boltzmann's constant (W/(m²·K⁴)), CODATA 2018.
pub(crate) const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;

/// Pressure at which `pressed_w_m2k` is given (Pa).
pub(crate) const PRESSED_AT_PA: f64 = 10e6;

/// How heat crosses the joint.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Crossing {
    /// Conductance where the surfaces just touch.
    pub touching_w_m2k: f64,
    /// What a contact pressure of 10 MPa adds.
    pub pressed_w_m2k: f64,
    /// Conductivity of the air (W/(m·K)) by its temperature.
    pub air_w_mk: Curve,
    /// Emissivity of bore and shaft.
    pub emissivity: f64,
    /// How far off the middle the hub stands.
    pub eccentricity: f64,
    /// What the whole is multiplied by, for a case at the edge of what is known.
    pub factor: f64,
}

/// h of heat radiated between two temperatures, for a unit of effective emissivity.
pub(crate) fn radiated_w_m2k(a_k: f64, b_k: f64) -> f64 {
    STEFAN_BOLTZMANN * (a_k * a_k + b_k * b_k) * (a_k + b_k)
}

impl Crossing {
    /// Conductance of the joint at one station.
    pub fn conductance_w_m2k(&self, gap_m: f64, pressure_pa: f64, hub_k: f64, shaft_k: f64) -> f64 {
        let air = self.air_w_mk.at(f64::midpoint(hub_k, shaft_k));
        let gap = gap_m.max(0.0);
        let (wide, off) = (gap + air / self.touching_w_m2k, self.eccentricity * gap);
        let through_air = air / (wide * wide - off * off).sqrt();
        // Two grey surfaces close together: 1/(1/ε + 1/ε − 1).
        let grey = self.emissivity / (2.0 - self.emissivity);
        let through_tips = self.pressed_w_m2k * (pressure_pa.max(0.0) / PRESSED_AT_PA).powf(0.95);
        self.factor * (through_air + grey * radiated_w_m2k(hub_k, shaft_k) + through_tips)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kernel::grading::as_float;

    fn crossing(eccentricity: f64) -> Crossing {
        Crossing {
            touching_w_m2k: 5_000.0,
            pressed_w_m2k: 20_000.0,
            air_w_mk: Curve::level(0.03),
            emissivity: 0.0,
            eccentricity,
            factor: 1.0,
        }
    }

    #[test]
    fn closed_it_is_what_was_entered_and_wide_it_is_air() {
        let of = |gap, pressure| crossing(0.0).conductance_w_m2k(gap, pressure, 400.0, 300.0);
        assert!((of(0.0, 0.0) - 5_000.0).abs() < 1e-9);
        assert!((of(0.0, 10e6) - 25_000.0).abs() < 1e-9);
        assert!((of(1.0, 0.0) - 0.03).abs() < 1e-5);
    }

    /// The mean round the joint, summed over many places.
    #[test]
    fn a_hub_off_the_middle_conducts_as_its_gap_all_round() {
        let (gap, separation) = (50e-6, 0.03 / 5_000.0);
        let count = 100_000;
        let local = |k: usize| {
            let angle = std::f64::consts::TAU * as_float(k) / as_float(count);
            0.03 / (gap + separation - 0.9 * gap * angle.cos())
        };
        let mean = (0..count).map(local).sum::<f64>() / as_float(count);
        let found = crossing(0.9).conductance_w_m2k(gap, 0.0, 400.0, 300.0);
        assert!((found / mean - 1.0).abs() < 1e-9, "{found} for {mean}");
    }

    /// Black surfaces at 400 K and 300 K exchange σ·(400⁴ − 300⁴) = 992 W/m².
    #[test]
    fn radiation_is_stefans() {
        let flux = radiated_w_m2k(400.0, 300.0) * 100.0;
        assert!((flux - 992.3).abs() < 0.1, "{flux}");
    }
}
