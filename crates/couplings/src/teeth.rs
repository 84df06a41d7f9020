//! What the teeth of a gear coupling go through: sliding, and the axial force of their friction.
//!
//! D pitch diameter · θ angle at the mesh · ω speed · T torque · μ friction

use std::f64::consts::PI;

use quantities::{
    Angle, AngularVelocity, Basis, Force, Kind, Length, Physical, Ratio, Source, Torque, Value,
    Velocity, Working,
};

/// Why teeth give no number.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("{what} is no number above zero: {si}")]
pub struct ToothError {
    /// What was put in.
    pub what: &'static str,
    /// In SI.
    pub si: f64,
}

fn positive<Q: Physical>(what: &'static str, quantity: Q) -> Result<f64, ToothError> {
    let si = quantity.si();
    if si.is_finite() && si > 0.0 { Ok(si) } else { Err(ToothError { what, si }) }
}

/// How the teeth slide in one turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sliding {
    /// Pitch diameter.
    pub pitch_diameter: Length,
    /// Angle at the mesh.
    pub angle: Angle,
    /// Speed.
    pub speed: AngularVelocity,
    /// Highest sliding speed.
    pub highest: Velocity,
    /// Mean sliding speed over a turn.
    pub mean: Velocity,
    /// Travel of a tooth from end to end.
    pub stroke: Length,
}

/// How fast teeth slide: each goes to and fro once a turn as a sine.
///
/// ```text
/// v = (D/2)·θ·ω      mean = (2/π)·v      stroke = D·θ
/// ```
/// # Valid
/// Small angles. A crossed mesh at both ends slides each at its own angle.
/// # Errors
/// [`ToothError`] for a diameter, angle or speed not above zero.
/// # Source
/// Kinematics.
/// # Example
/// ```
/// use couplings::teeth::sliding;
/// use quantities::{Angle, AngularVelocity, Length, Physical};
/// use uom::si::angular_velocity::revolution_per_minute;
/// let speed = AngularVelocity::new::<revolution_per_minute>(3600.0);
/// let sliding = sliding(Length::from_si(0.2), Angle::from_si(0.25_f64.to_radians()), speed)?;
/// assert_eq!(format!("{:.3}", sliding.highest.si()), "0.164");
/// # Ok::<(), couplings::teeth::ToothError>(())
/// ```
pub fn sliding(
    pitch_diameter: Length,
    angle: Angle,
    speed: AngularVelocity,
) -> Result<Sliding, ToothError> {
    let diameter = positive("pitch diameter", pitch_diameter)?;
    let tilt = positive("angle", angle)?;
    let highest = diameter / 2.0 * tilt * positive("speed", speed)?;
    Ok(Sliding {
        pitch_diameter,
        angle,
        speed,
        highest: Velocity::from_si(highest),
        mean: Velocity::from_si(2.0 / PI * highest),
        stroke: Length::from_si(diameter * tilt),
    })
}

/// Where a sliding speed lies among the guide values of the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SlidingBand {
    /// What ordinary greased couplings run at.
    Ordinary,
    /// What wants hardened teeth, close seals and the right grease.
    Fast,
    /// Beyond what sealed grease is used for.
    TooFast,
}

impl SlidingBand {
    /// How the guide values are known.
    pub const SOURCE: Source = Source::new(
        "guide values for the sliding of gear-coupling teeth (1.5 and 5 in/s); cautions, no limits",
        "",
        Basis::Memory,
    );
}

impl Sliding {
    /// Its band; guide values from memory, used as cautions only.
    pub fn band(&self) -> SlidingBand {
        match self.highest.si() / 0.0254 {
            speed if speed <= 1.5 => SlidingBand::Ordinary,
            speed if speed <= 5.0 => SlidingBand::Fast,
            _ => SlidingBand::TooFast,
        }
    }

    /// How the highest sliding speed was found.
    pub fn working(&self) -> Working {
        let source = Source::new("kinematics of a tilted mesh", "", Basis::Computed);
        let result = Value::new(Kind::Velocity, self.highest);
        Working::new("Highest sliding speed of the teeth", "v = (D/2)·a·w", result, source)
            .term("D", "pitch diameter", Value::new(Kind::Length, self.pitch_diameter))
            .term("a", "angle at the mesh", Value::new(Kind::Slope, self.angle))
            .term("w", "speed, as an angle per time", Value::new(Kind::Speed, self.speed))
            .valid("small angles")
    }
}

/// Axial force that teeth hold before they slide.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxialFriction {
    /// Torque.
    pub torque: Torque,
    /// Pitch diameter.
    pub pitch_diameter: Length,
    /// Friction in the teeth.
    pub friction: Ratio,
    /// Force.
    pub force: Force,
}

/// The axial force that loaded teeth hold before they slide; it lands on a thrust bearing.
///
/// ```text
/// F = μ·T/(D/2)
/// ```
/// # Valid
/// One mesh; all teeth share. Friction 0.25 is used for design, 0.05 met in good oil (from memory).
/// # Errors
/// [`ToothError`] for what is not above zero.
pub fn axial_friction(
    torque: Torque,
    pitch_diameter: Length,
    friction: Ratio,
) -> Result<AxialFriction, ToothError> {
    let pull = positive("friction", friction)? * positive("torque", torque)?;
    let force = Force::from_si(pull / (positive("pitch diameter", pitch_diameter)? / 2.0));
    Ok(AxialFriction { torque, pitch_diameter, friction, force })
}

impl AxialFriction {
    /// How it was found.
    pub fn working(&self) -> Working {
        let source = Source::new("Coulomb friction at the pitch circle", "", Basis::Computed);
        let result = Value::new(Kind::Force, self.force);
        Working::new("Axial force held by the teeth", "F = m·T/(D/2)", result, source)
            .term("m", "friction in the teeth", Value::number(self.friction.si()))
            .term("T", "torque", Value::new(Kind::Torque, self.torque))
            .term("D", "pitch diameter", Value::new(Kind::Length, self.pitch_diameter))
            .valid("one mesh, teeth sharing alike")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::angular_velocity::revolution_per_minute;
    use uom::si::force::pound_force;
    use uom::si::torque::pound_force_inch;

    /// Worked by hand from v = (D/2)·θ·ω to six digits: D mm, θ degrees, rpm | v and mean m/s,
    /// in/s, stroke µm.
    const SLIDING: [([f64; 3], [f64; 4]); 2] = [
        ([200.0, 0.25, 3600.0], [0.164_493, 0.104_720, 6.476_12, 872.665]),
        ([120.0, 0.5, 1780.0], [0.097_599_4, 0.062_133_7, 3.842_50, 1_047.20]),
    ];

    #[test]
    fn teeth_slide_as_kinematics_says() {
        for ([diameter, angle, rpm], wanted) in SLIDING {
            let found = sliding(
                Length::from_si(diameter / 1e3),
                Angle::from_si(angle.to_radians()),
                AngularVelocity::new::<revolution_per_minute>(rpm),
            )
            .unwrap();
            let found = [
                found.highest.si(),
                found.mean.si(),
                found.highest.si() / 0.0254,
                found.stroke.si() * 1e6,
            ];
            for (found, wanted) in found.into_iter().zip(wanted) {
                assert!((found / wanted - 1.0).abs() <= 5e-6, "{found} for {wanted}");
            }
        }
    }

    /// Data of Mancuso and Jones, "Coupling Interface Connection", Turbomachinery Symposium: 5000
    /// hp, 10 000 rpm, 7 in pitch diameter; friction 0.25 from memory; worked by hand.
    #[test]
    fn friction_holds_a_force() {
        let torque = Torque::new::<pound_force_inch>(31_512.7);
        let force =
            axial_friction(torque, Length::from_si(7.0 * 0.0254), Ratio::from_si(0.25)).unwrap();
        assert!((force.force.get::<pound_force>() - 2250.91).abs() <= 0.005);
        assert!(axial_friction(torque, Length::from_si(0.0), Ratio::from_si(0.25)).is_err());
    }
}
