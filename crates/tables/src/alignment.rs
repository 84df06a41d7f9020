//! How well two shafts must be lined up, by speed: a rule of our own with two levels.
//!
//! *Limit* is what a running machine may have; *aim* is what to stop at when it is being lined up.
//! Short couplings are judged by the offset of the shaft lines at the coupling's centre and by the
//! slope between them, upright and sideways each by itself; spacers by the slope between a shaft
//! and the spacer, at either plane of flexing.
//!
//! The trade works by tables that step with speed and differ among themselves. Ours is smooth: the
//! offset falls nearly as one over the speed, the slope levels off at high speed. At every speed of
//! those tables it lies between the strictest and the most lenient of them, to half of the last
//! digit that they print; the tests show it. A machine's or a coupling's maker outranks it.
//!
//! n speed of the shaft in rpm · 600 to 7200; slower ones are judged as at 600.

use quantities::{Angle, AngularVelocity, Basis, Kind, Length, Source, Value, Working};
use uom::si::angular_velocity::revolution_per_minute;
use uom::si::length::millimeter;

use crate::si::milliradians;

/// Where the rule comes from.
pub const SOURCE: Source = Source::new(
    "smooth rule by speed",
    "within the span of the speed tables of common practice",
    Basis::OwnRule,
);

const VALID: &str = "600 to 7200 rpm, n in rpm; slower machines as at 600 rpm";

/// What a short coupling's shaft lines are held to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Levels {
    /// The speed that the levels are for, 600 rpm at least.
    pub speed: AngularVelocity,
    /// Offset at the coupling's centre to stop at.
    pub offset_aim: Length,
    /// Offset at the coupling's centre to run with.
    pub offset_limit: Length,
    /// Slope to stop at.
    pub slope_aim: Angle,
    /// Slope to run with.
    pub slope_limit: Angle,
}

/// What the slope at each plane of flexing of a spacer is held to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpacerLevels {
    /// The speed that the levels are for, 600 rpm at least.
    pub speed: AngularVelocity,
    /// Slope to stop at.
    pub slope_aim: Angle,
    /// Slope to run with.
    pub slope_limit: Angle,
}

const OFFSET_AIM: &str = "a = 102/(n + 250)";
const OFFSET_LIMIT: &str = "a = 193/(n + 400)";
const SLOPE_AIM: &str = "s = min(1.0, 0.08 + 600/n)";
const SLOPE_LIMIT: &str = "s = min(1.5, 0.10 + 900/n)";
const SPACER_AIM: &str = "s = min(1.8, 1100/n)";
const SPACER_LIMIT: &str = "s = min(3.0, 1850/n)";

/// Levels for a short coupling; `None` above 7200 rpm, at rest, or when the speed is no number.
///
/// ```text
/// offset:  aim 102/(n + 250) mm           limit 193/(n + 400) mm
/// slope:   aim 0.08 + 600/n, at most 1.0  limit 0.10 + 900/n, at most 1.5 mm/m
/// ```
/// # Valid
/// 600 to 7200 rpm; slower machines are judged as at 600 rpm.
/// # Source
/// A rule of our own; see the module.
/// # Example
/// ```
/// use quantities::AngularVelocity;
/// use tables::alignment::short;
/// use uom::si::{angular_velocity::revolution_per_minute, length::millimeter};
/// let levels = short(AngularVelocity::new::<revolution_per_minute>(1500.0)).unwrap();
/// assert_eq!(format!("{:.3}", levels.offset_aim.get::<millimeter>()), "0.058");
/// assert_eq!(format!("{:.3}", levels.offset_limit.get::<millimeter>()), "0.102");
/// ```
pub fn short(speed: AngularVelocity) -> Option<Levels> {
    let rpm = held(speed)?;
    Some(Levels {
        speed: AngularVelocity::new::<revolution_per_minute>(rpm),
        offset_aim: Length::new::<millimeter>(102.0 / (rpm + 250.0)),
        offset_limit: Length::new::<millimeter>(193.0 / (rpm + 400.0)),
        slope_aim: milliradians((0.08 + 600.0 / rpm).min(1.0)),
        slope_limit: milliradians((0.10 + 900.0 / rpm).min(1.5)),
    })
}

/// Levels for each plane of flexing of a coupling with a spacer; `None` as for [`short`].
///
/// ```text
/// slope:   aim 1100/n, at most 1.8        limit 1850/n, at most 3.0 mm/m
/// ```
/// # Valid
/// 600 to 7200 rpm; slower machines are judged as at 600 rpm.
/// # Source
/// A rule of our own; see the module. At 600 and 7200 rpm only one of the tables speaks.
/// # Example
/// ```
/// use quantities::AngularVelocity;
/// use tables::alignment::spacer;
/// use uom::si::{angle::radian, angular_velocity::revolution_per_minute};
/// let levels = spacer(AngularVelocity::new::<revolution_per_minute>(3000.0)).unwrap();
/// assert_eq!(format!("{:.2e}", levels.slope_limit.get::<radian>()), "6.17e-4");
/// ```
pub fn spacer(speed: AngularVelocity) -> Option<SpacerLevels> {
    let rpm = held(speed)?;
    Some(SpacerLevels {
        speed: AngularVelocity::new::<revolution_per_minute>(rpm),
        slope_aim: milliradians((1100.0 / rpm).min(1.8)),
        slope_limit: milliradians((1850.0 / rpm).min(3.0)),
    })
}

/// The speed in rpm that the rule is read at.
fn held(speed: AngularVelocity) -> Option<f64> {
    let rpm = speed.get::<revolution_per_minute>().abs();
    (rpm > 0.0 && rpm <= 7200.0 + 1e-6).then(|| rpm.clamp(600.0, 7200.0))
}

fn working(
    name: &'static str,
    formula: &'static str,
    speed: AngularVelocity,
    result: Value,
) -> Working {
    Working::new(name, formula, result, SOURCE)
        .term("n", "speed of the shaft", Value::new(Kind::Speed, speed))
        .valid(VALID)
}

impl Levels {
    /// How each level was found: offset aim and limit (mm), slope aim and limit (mm/m).
    pub fn workings(&self) -> [Working; 4] {
        let offset = |offset| Value::new(Kind::Offset, offset);
        let slope = |slope| Value::new(Kind::Slope, slope);
        [
            working("Offset to aim at, mm", OFFSET_AIM, self.speed, offset(self.offset_aim)),
            working("Offset limit, mm", OFFSET_LIMIT, self.speed, offset(self.offset_limit)),
            working("Slope to aim at, mm/m", SLOPE_AIM, self.speed, slope(self.slope_aim)),
            working("Slope limit, mm/m", SLOPE_LIMIT, self.speed, slope(self.slope_limit)),
        ]
    }
}

impl SpacerLevels {
    /// How each level was found: slope aim and limit (mm/m).
    pub fn workings(&self) -> [Working; 2] {
        let slope = |slope| Value::new(Kind::Slope, slope);
        [
            working("Slope to aim at, mm/m", SPACER_AIM, self.speed, slope(self.slope_aim)),
            working("Slope limit, mm/m", SPACER_LIMIT, self.speed, slope(self.slope_limit)),
        ]
    }
}
