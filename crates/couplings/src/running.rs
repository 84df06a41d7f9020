//! Running: vibration zones after the start, and what a pattern points to.
//!
//! Limits here are the general ones for machines whose makers give none; several free tables
//! disagree, so each says how it is known. The machine's own history comes first: a change is worth
//! more than a level.

use std::f64::consts::SQRT_2;

use quantities::{
    AngularVelocity, Basis, Kind, Length, Physical, Power, Source, Value, Velocity, Working,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::power::kilowatt;

/// How a machine stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Support {
    /// Its lowest natural frequency on its base lies well above its speed.
    Rigid,
    /// It does not.
    Flexible,
}

/// Machines that share one set of zones.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// Above 300 kW.
    Large,
    /// 15 to 300 kW.
    Medium,
}

/// The group of a machine; `None` below 15 kW, which these zones leave out.
///
/// # Source
/// ISO 10816-3, scope, as trade articles give it. Speeds 120 to 15 000 rpm; pumps have moved to
/// part 7.
pub fn group(power: Power) -> Option<Group> {
    match power.get::<kilowatt>() {
        large if large > 300.0 => Some(Group::Large),
        medium if medium >= 15.0 => Some(Group::Medium),
        _ => None,
    }
}

/// The slowest machine that the zones are held for.
///
/// # Source
/// As [`group`].
pub fn slowest() -> AngularVelocity {
    AngularVelocity::from_si(120.0 * std::f64::consts::TAU / 60.0)
}

/// Boundaries between the zones, as r.m.s. velocities measured on the bearing housings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Zones {
    /// Between A, newly put into service, and B, fit to run on.
    pub a_b: Velocity,
    /// Between B and C, fit for a limited time only.
    pub b_c: Velocity,
    /// Between C and D, likely to do damage.
    pub c_d: Velocity,
    /// How they are known.
    pub source: Source,
}

/// The zones of a group on a support.
///
/// # Source
/// ISO 10816-3:2009. Group 2 on rigid supports is read in two independent reprints; group 1 rigid in
/// two that do not name the group; flexible supports are from memory, to be confirmed.
/// # Example
/// ```
/// use couplings::running::{Group, Support, zones};
/// use quantities::Physical;
/// assert_eq!(zones(Group::Medium, Support::Rigid).b_c.si(), 2.8e-3);
/// ```
pub fn zones(group: Group, support: Support) -> Zones {
    const READ: Source =
        Source::new("ISO 10816-3:2009", "group 2, rigid, as reprinted", Basis::Read);
    const MEMORY: Source = Source::new("ISO 10816-3:2009", "to be confirmed", Basis::Memory);
    let (mm_s, source) = match (group, support) {
        (Group::Medium, Support::Rigid) => ([1.4, 2.8, 4.5], READ),
        (Group::Medium, Support::Flexible) | (Group::Large, Support::Rigid) => {
            ([2.3, 4.5, 7.1], MEMORY)
        }
        (Group::Large, Support::Flexible) => ([3.5, 7.1, 11.0], MEMORY),
    };
    let [a_b, b_c, c_d] = mm_s.map(|mm_s| Velocity::from_si(mm_s / 1e3));
    Zones { a_b, b_c, c_d, source }
}

/// A zone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Zone {
    /// As a machine newly put into service.
    A,
    /// Fit to run on without a term.
    B,
    /// For a limited time, until it can be put right.
    C,
    /// Likely to do damage.
    D,
}

impl Zones {
    /// The zones that a reading may lie in: best and worst end of its `±`.
    pub fn of(&self, velocity: &Value) -> [Zone; 2] {
        let spread = velocity.plus_minus.unwrap_or(0.0);
        let zone = |si: f64| match si {
            si if si <= self.a_b.si() => Zone::A,
            si if si <= self.b_c.si() => Zone::B,
            si if si <= self.c_d.si() => Zone::C,
            _ => Zone::D,
        };
        [zone(velocity.si - spread), zone(velocity.si + spread)]
    }

    /// Where to set the alarm over a machine's own baseline: a quarter of B/C above it, at most
    /// 1.25 times B/C.
    ///
    /// # Source
    /// ISO 10816 series, from memory, to be confirmed.
    pub fn alarm(&self, baseline: Velocity) -> Velocity {
        (baseline + self.b_c * 0.25).min(self.b_c * 1.25)
    }

    /// The highest that a trip is set to: 1.25 times C/D (ISO 10816 series, from memory).
    pub fn highest_trip(&self) -> Velocity {
        self.c_d * 1.25
    }
}

/// Peak of a sine of this r.m.s. velocity: √2 times it.
pub fn peak(rms: Velocity) -> Velocity {
    rms * SQRT_2
}

/// Movement to and fro of a sine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PeakToPeak {
    /// R.m.s. velocity.
    pub rms: Velocity,
    /// Frequency, as an angle per time.
    pub frequency: AngularVelocity,
    /// Movement, peak to peak.
    pub movement: Length,
}

/// Movement, peak to peak, of a sine of this r.m.s. velocity; `None` at no frequency.
///
/// ```text
/// x = 2·√2·v/w
/// ```
pub fn peak_to_peak(rms: Velocity, frequency: AngularVelocity) -> Option<PeakToPeak> {
    let movement = 2.0 * SQRT_2 * rms.si() / frequency.si();
    let movement = movement.is_finite().then(|| Length::from_si(movement))?;
    Some(PeakToPeak { rms, frequency, movement })
}

impl PeakToPeak {
    /// How it was found.
    pub fn working(&self) -> Working {
        let source = Source::new("sine motion", "", Basis::Computed);
        let result = Value::new(Kind::Offset, self.movement);
        Working::new("Movement, peak to peak", "x = 2·√2·v/w", result, source)
            .term("v", "velocity, r.m.s.", Value::new(Kind::Velocity, self.rms))
            .term("w", "frequency", Value::new(Kind::Speed, self.frequency))
    }
}

/// What a vibration pattern points to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Signature {
    /// The fault.
    pub fault: &'static str,
    /// Multiples of running speed.
    pub orders: &'static str,
    /// Direction in which it is strongest.
    pub direction: &'static str,
    /// Phase.
    pub phase: &'static str,
    /// How it is known.
    pub source: Source,
}

const TRAINING: Source = Source::common_practice("vibration training tables");

/// Patterns. Texts conflict on which multiple belongs to angle and which to offset: go by axial
/// against radial level and by the phase across the coupling, not by the multiple alone.
pub const SIGNATURES: [Signature; 5] = [
    Signature {
        fault: "angle between the shafts",
        orders: "once and twice per turn",
        direction: "axial",
        phase: "about 180° across the coupling, axial",
        source: TRAINING,
    },
    Signature {
        fault: "offset of the shafts",
        orders: "once and twice per turn; twice may be the larger",
        direction: "radial",
        phase: "about 180° across the coupling, radial",
        source: TRAINING,
    },
    Signature {
        fault: "angle and offset together",
        orders: "once, twice, and multiples of twice",
        direction: "radial and axial",
        phase: "mixed",
        source: TRAINING,
    },
    Signature {
        fault: "unbalance",
        orders: "once per turn",
        direction: "radial",
        phase: "90° between upright and level",
        source: TRAINING,
    },
    Signature {
        fault: "looseness",
        orders: "many multiples, halves too",
        direction: "radial",
        phase: "unsteady",
        source: TRAINING,
    },
];

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::angular_velocity::revolution_per_minute;

    fn mm_s(mm_s: f64) -> Velocity {
        Velocity::from_si(mm_s / 1e3)
    }

    /// A trade article converts 2.8 mm/s r.m.s. to 0.16 in/s peak; x = 2√2·v/ω by hand.
    #[test]
    fn velocities_convert() {
        assert!((peak(mm_s(2.8)).si() / 0.0254 - 0.16).abs() <= 0.005);
        let turning = AngularVelocity::new::<revolution_per_minute>(1500.0);
        let found = peak_to_peak(mm_s(2.8), turning).unwrap();
        assert!((found.movement.si() - 50.42e-6).abs() <= 0.005e-6, "{found:?}");
        assert!(peak_to_peak(mm_s(2.8), AngularVelocity::default()).is_none());
    }

    #[test]
    fn a_reading_near_a_boundary_may_lie_on_either_side() {
        let zones = zones(Group::Medium, Support::Rigid);
        let reading = |v, spread: f64| {
            zones.of(&Value::new(Kind::Velocity, mm_s(v)).with_plus_minus(spread / 1e3))
        };
        assert_eq!(reading(1.0, 0.1), [Zone::A, Zone::A]);
        assert_eq!(reading(2.7, 0.3), [Zone::B, Zone::C]);
        assert_eq!(reading(9.0, 0.3), [Zone::D, Zone::D]);
    }

    /// ISO 10816 series, from memory: a quarter of B/C over the baseline, at most 1.25 of B/C; trip
    /// at most 1.25 of C/D. By hand for 1.4, 2.8 and 4.5 mm/s.
    #[test]
    fn alarms_follow_the_baseline_up_to_a_cap() {
        let zones = zones(Group::Medium, Support::Rigid);
        for (baseline, alarm) in [(1.0, 1.7), (2.0, 2.7), (4.0, 3.5)] {
            assert!((zones.alarm(mm_s(baseline)).si() - alarm / 1e3).abs() <= 0.05e-3);
        }
        assert!((zones.highest_trip().si() - 5.625e-3).abs() <= 0.0005e-3);
    }

    #[test]
    fn zones_widen_with_size_and_support() {
        for support in [Support::Rigid, Support::Flexible] {
            let [medium, large] = [Group::Medium, Group::Large].map(|group| zones(group, support));
            assert!(medium.a_b < large.a_b && medium.b_c < large.b_c && medium.c_d < large.c_d);
            for zones in [medium, large] {
                assert!(zones.a_b < zones.b_c && zones.b_c < zones.c_d);
            }
        }
        assert_eq!(group(Power::from_si(10e3)), None);
        assert_eq!(group(Power::from_si(75e3)), Some(Group::Medium));
        assert_eq!(group(Power::from_si(500e3)), Some(Group::Large));
    }
}
