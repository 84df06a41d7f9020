//! Spacers: where they whirl, where they swing along the axis, and what they hang on a shaft end.
//!
//! E Young's modulus · I second moment of area · ρ density · A area · L length between flexing
//! planes · D, d outside and inside diameter · k axial stiffness of one pack · m mass

use std::f64::consts::PI;

use quantities::{
    AngularVelocity, Basis, Force, Kind, Length, Mass, MassDensity, Physical, Pressure, Source,
    Torque, Value, Working, both,
};

use crate::lubricant::{STANDARD_GRAVITY_M_S2, standard_gravity};

/// Why a spacer gives no number.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum SpacerError {
    /// A quantity that is no number above zero.
    #[error("{what} is no number above zero: {si}")]
    NotPositive {
        /// Which.
        what: &'static str,
        /// In SI.
        si: f64,
    },
    /// A tube without a wall.
    #[error("no wall between {} and {}", both(inside), both(outside))]
    Wall {
        /// Inside diameter.
        inside: Length,
        /// Outside diameter.
        outside: Length,
    },
}

fn positive<Q: Physical>(what: &'static str, quantity: Q) -> Result<f64, SpacerError> {
    let si = quantity.si();
    if si.is_finite() && si > 0.0 { Ok(si) } else { Err(SpacerError::NotPositive { what, si }) }
}

/// A tube between two flexing planes; a solid one has an inside of zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tube {
    /// Outside diameter.
    pub outside: Length,
    /// Inside diameter.
    pub inside: Length,
    /// Length between the flexing planes.
    pub length: Length,
    /// Young's modulus.
    pub young: Pressure,
    /// Density.
    pub density: MassDensity,
}

/// Where a spacer whirls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Whirl {
    /// The tube.
    pub tube: Tube,
    /// Speed at which it whirls.
    pub critical: AngularVelocity,
}

/// First whirling speed of a spacer.
///
/// ```text
/// w = (π/L)²·√(E·I/(ρ·A))      I/A = (D² + d²)/16
/// ```
/// # Valid
/// A plain tube on simple supports: packs or teeth that give make the true speed lower, so this is
/// the high side. Flanges and the mass of bolts are left out.
/// # Errors
/// [`SpacerError`] for sizes or material not above zero, or a tube without a wall.
/// # Source
/// Thin beam on simple supports.
/// # Example
/// ```
/// use couplings::spacer::{Tube, whirl};
/// use quantities::{Length, MassDensity, Physical, Pressure};
/// use uom::si::angular_velocity::revolution_per_minute;
/// let whirl = whirl(Tube {
///     outside: Length::from_si(0.14),
///     inside: Length::from_si(0.12),
///     length: Length::from_si(2.4),
///     young: Pressure::from_si(207e9),
///     density: MassDensity::from_si(7850.0),
/// })?;
/// assert_eq!(format!("{:.0}", whirl.critical.get::<revolution_per_minute>()), "3873");
/// # Ok::<(), couplings::spacer::SpacerError>(())
/// ```
pub fn whirl(tube: Tube) -> Result<Whirl, SpacerError> {
    let Tube { outside, inside, length, young, density } = tube;
    let wide = positive("outside diameter", outside)?;
    if !(inside.is_finite() && inside.si() >= 0.0 && inside < outside) {
        return Err(SpacerError::Wall { inside, outside });
    }
    let gyration_squared = (wide.powi(2) + inside.si().powi(2)) / 16.0;
    let wave = positive("Young’s modulus", young)? / positive("density", density)?;
    let speed = (PI / positive("length", length)?).powi(2) * (wave * gyration_squared).sqrt();
    Ok(Whirl { tube, critical: AngularVelocity::from_si(speed) })
}

impl Whirl {
    /// The highest speed that keeps its distance: 0.7 of the whirling speed.
    ///
    /// # Source
    /// Common practice, from memory.
    pub fn run_below(&self) -> AngularVelocity {
        self.critical * RUN_BELOW
    }

    /// How the whirling speed was found.
    pub fn working(&self) -> Working {
        let length = |length| Value::new(Kind::Length, length);
        let source = Source::new("thin beam on simple supports", "", Basis::Computed);
        Working::new(
            "Whirling speed of the spacer",
            "w = (π/L)²·√(E·(D² + d²)/(16·r))",
            Value::new(Kind::Speed, self.critical),
            source,
        )
        .term("L", "between the flexing planes", length(self.tube.length))
        .term("E", "Young’s modulus", Value::new(Kind::Stress, self.tube.young))
        .term("D", "outside diameter", length(self.tube.outside))
        .term("d", "inside diameter", length(self.tube.inside))
        .term("r", "density", Value::new(Kind::Density, self.tube.density))
        .valid("plain tube; supports that give make it lower")
    }

    /// How the speed to stay below was found.
    pub fn margin_working(&self) -> Working {
        let source = Source::new("0.7 of the whirling speed", "", Basis::Memory);
        let result = Value::new(Kind::Speed, self.run_below());
        Working::new("Run the spacer below", "n = 0.7·w", result, source).term(
            "w",
            "whirling speed",
            Value::new(Kind::Speed, self.critical),
        )
    }
}

const RUN_BELOW: f64 = 0.7;

/// A spacer that swings along the axis between its packs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxialSwing {
    /// Axial stiffness of one pack, N/m.
    pub stiffness_n_per_m: f64,
    /// Mass of the spacer.
    pub mass: Mass,
    /// Angular frequency; a shaft at that speed excites it once a turn.
    pub frequency: AngularVelocity,
}

/// Axial frequency of a spacer that floats between two packs.
///
/// ```text
/// w = √(2·k/m)
/// ```
/// # Valid
/// Small swings: packs stiffen with stretch, so look at a range.
/// # Errors
/// [`SpacerError`] for what is not above zero.
/// # Source
/// One mass between two springs.
pub fn axial_swing(stiffness_n_per_m: f64, mass: Mass) -> Result<AxialSwing, SpacerError> {
    if !(stiffness_n_per_m.is_finite() && stiffness_n_per_m > 0.0) {
        let what = "axial stiffness";
        return Err(SpacerError::NotPositive { what, si: stiffness_n_per_m });
    }
    let square = 2.0 * stiffness_n_per_m / positive("mass", mass)?;
    Ok(AxialSwing { stiffness_n_per_m, mass, frequency: AngularVelocity::from_si(square.sqrt()) })
}

impl AxialSwing {
    /// How the frequency was found.
    pub fn working(&self) -> Working {
        let source = Source::new("one mass between two springs", "", Basis::Computed);
        let result = Value::new(Kind::Speed, self.frequency);
        Working::new("Axial frequency of the spacer", "w = √(2·k/m)", result, source)
            .term("k", "axial stiffness of one pack, N/m", Value::number(self.stiffness_n_per_m))
            .term("m", "mass of the spacer", Value::new(Kind::Mass, self.mass))
            .valid("small swings; packs stiffen with stretch")
    }
}

/// The mass that one shaft end carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hangs {
    /// Its own hub, one sleeve or half cover, and half the spacer.
    Parts {
        /// The hub.
        hub: Mass,
        /// The sleeve; nothing where there is none.
        sleeve: Mass,
        /// The whole spacer; nothing where there is none.
        spacer: Mass,
    },
    /// Half of the whole coupling, where its parts are not known.
    HalfOf(Mass),
}

impl Hangs {
    /// What it comes to.
    ///
    /// ```text
    /// m = h + s + p/2      m = w/2
    /// ```
    /// # Example
    /// ```
    /// use couplings::spacer::Hangs;
    /// use quantities::{Mass, Physical};
    /// let [hub, sleeve, spacer] = [14.0, 3.0, 6.0].map(Mass::from_si);
    /// assert_eq!(Hangs::Parts { hub, sleeve, spacer }.mass().si(), 20.0);
    /// ```
    pub fn mass(self) -> Mass {
        match self {
            Self::Parts { hub, sleeve, spacer } => hub + sleeve + spacer / 2.0,
            Self::HalfOf(whole) => whole / 2.0,
        }
    }

    /// How it was found.
    pub fn working(self) -> Working {
        let shown = |mass| Value::new(Kind::Mass, mass);
        let source = Source::new("statics", "", Basis::Computed);
        let name = "Mass on this shaft end";
        match self {
            Self::Parts { hub, sleeve, spacer } => {
                Working::new(name, "m = h + s + p/2", shown(self.mass()), source)
                    .term("h", "hub", shown(hub))
                    .term("s", "sleeve or half cover", shown(sleeve))
                    .term("p", "spacer, carried by both ends alike", shown(spacer))
            }
            Self::HalfOf(whole) => Working::new(name, "m = w/2", shown(self.mass()), source)
                .term("w", "whole coupling", shown(whole))
                .valid("two hubs alike; enter the masses of the parts where they differ"),
        }
    }
}

/// What a coupling hangs on one shaft end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Overhang {
    /// Mass that this shaft end carries.
    pub mass: Mass,
    /// From its centre to the nearest bearing.
    pub reach: Length,
    /// Its weight.
    pub weight: Force,
    /// Bending moment at the bearing.
    pub moment: Torque,
}

/// What hangs on a shaft end: a hub with its sleeve, and half the spacer.
///
/// ```text
/// W = m·g      M = W·a
/// ```
/// # Valid
/// At rest; a spacer carried by both ends alike.
/// # Errors
/// [`SpacerError`] for a mass or reach not above zero.
/// # Source
/// Statics; g = 9.806 65 m/s².
pub fn overhang(mass: Mass, reach: Length) -> Result<Overhang, SpacerError> {
    let weight = positive("mass", mass)? * STANDARD_GRAVITY_M_S2;
    let moment = weight * positive("reach", reach)?;
    Ok(Overhang { mass, reach, weight: Force::from_si(weight), moment: Torque::from_si(moment) })
}

impl Overhang {
    /// How the moment was found.
    pub fn working(&self) -> Working {
        let source = Source::new("statics", "", Basis::Computed);
        let result = Value::new(Kind::Torque, self.moment);
        Working::new("Bending moment at the nearest bearing", "W = m·g\nM = W·a", result, source)
            .term("m", "mass on this shaft end", Value::new(Kind::Mass, self.mass))
            .term("g", "standard gravity", standard_gravity())
            .term("W", "its weight", Value::new(Kind::Force, self.weight))
            .term("a", "from its centre to the bearing", Value::new(Kind::Length, self.reach))
            .valid("at rest; half the spacer counts to each end")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::angular_velocity::revolution_per_minute;

    fn steel(outside: f64, inside: f64, length: f64, young: f64, density: f64) -> Tube {
        Tube {
            outside: Length::from_si(outside),
            inside: Length::from_si(inside),
            length: Length::from_si(length),
            young: Pressure::from_si(young),
            density: MassDensity::from_si(density),
        }
    }

    fn rpm(speed: AngularVelocity) -> f64 {
        speed.get::<revolution_per_minute>()
    }

    /// Machinery's Handbook constant for steel tubes, N = 4.7687·10⁶·√(D² + d²)/L² (inches): 5 in
    /// by 4.25 in by 72 in gives 6036 rpm. It holds for about 30·10⁶ psi; with 29·10⁶ psi and
    /// 0.2833 lb/in³ the beam whirls at 5929 rpm (by hand), within 2 % of it.
    #[test]
    fn a_steel_tube_whirls_where_the_handbook_says() {
        const INCH: f64 = 0.0254;
        let density = 0.2833 * 0.453_592_37 / INCH.powi(3);
        let tube = steel(5.0 * INCH, 4.25 * INCH, 72.0 * INCH, 29e6 * 6_894.757_293_168, density);
        let found = rpm(whirl(tube).unwrap().critical);
        let handbook = 4.768_7e6 * (25.0_f64 + 4.25 * 4.25).sqrt() / (72.0 * 72.0);
        assert!((handbook - 6036.45).abs() <= 0.05, "{handbook}");
        assert!((found / handbook - 1.0).abs() <= 0.02, "{found}");
        assert!((found - 5929.47).abs() <= 0.05, "{found}");
    }

    /// Worked by hand to six digits: tube 140 by 120 by 2400 mm, 207 GPa, 7850 kg/m³.
    #[test]
    fn a_tube_in_si() {
        let found = whirl(steel(0.14, 0.12, 2.4, 207e9, 7850.0)).unwrap();
        assert!((found.critical.si() - 405.609).abs() <= 0.0005);
        assert!((rpm(found.critical) - 3873.28).abs() <= 0.005);
        assert!((rpm(found.run_below()) - 2711.29).abs() <= 0.005);
        assert!(whirl(steel(0.14, 0.14, 2.4, 207e9, 7850.0)).is_err());
        assert!(whirl(steel(0.14, f64::NAN, 2.4, 207e9, 7850.0)).is_err());
    }

    /// Worked by hand: k = 250 kN/m, m = 18 kg, so 26.5258 Hz.
    #[test]
    fn a_spacer_swings_between_its_packs() {
        let found = axial_swing(250e3, Mass::from_si(18.0)).unwrap();
        assert!((rpm(found.frequency) - 1591.55).abs() <= 0.005);
        assert!(axial_swing(0.0, Mass::from_si(18.0)).is_err());
    }

    /// By hand, from a hub of 4 kg, a driven hub of 14 kg, a sleeve of 3 kg and no spacer: 7 and
    /// 17 kg; at 0.1 m they bend with 6.864 655 and 16.671 3 N·m. Half of the whole 24 kg would be
    /// 11.768 N·m at both.
    #[test]
    fn each_end_carries_its_own_parts() {
        let parts = |hub: f64| {
            let [hub, sleeve, spacer] = [hub, 3.0, 0.0].map(Mass::from_si);
            let hangs = Hangs::Parts { hub, sleeve, spacer };
            overhang(hangs.mass(), Length::from_si(0.1)).unwrap().moment.si()
        };
        assert!((parts(4.0) - 6.864_655).abs() <= 0.5e-6);
        assert!((parts(14.0) - 16.671_3).abs() <= 0.5e-4);
        assert_eq!(Hangs::HalfOf(Mass::from_si(24.0)).mass(), Mass::from_si(12.0));
    }

    /// By hand: 25 kg at 0.2 m weighs 245.166 N and bends with 49.0333 N·m.
    #[test]
    fn what_hangs_bends_the_shaft() {
        let found = overhang(Mass::from_si(25.0), Length::from_si(0.2)).unwrap();
        assert!((found.weight.si() - 245.166).abs() <= 0.0005);
        assert!((found.moment.si() - 49.0333).abs() <= 0.000_05);
    }

    proptest::proptest! {
        /// Twice as long whirls at a quarter of the speed; twice all sizes at half.
        #[test]
        fn longer_whirls_slower(outside in 0.05..0.4_f64, wall in 0.05..0.9_f64, length in 0.3..4.0_f64) {
            let tube = |factor: f64, long: f64| {
                let inside = outside * (1.0 - wall);
                let tube = steel(outside * factor, inside * factor, length * long, 207e9, 7850.0);
                whirl(tube).unwrap().critical.si()
            };
            proptest::prop_assert!((tube(1.0, 2.0) * 4.0 / tube(1.0, 1.0) - 1.0).abs() < 1e-12);
            proptest::prop_assert!((tube(2.0, 2.0) * 2.0 / tube(1.0, 1.0) - 1.0).abs() < 1e-12);
        }
    }
}
