//! What a drive asks of a coupling, and the reasons for or against a kind that follow.

use crate::kind::{FloatLimit, Form, Kind, Planes, Play, Shock};
use quantities::{AngularVelocity, Physical};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What a drive asks of a coupling; what is not known stays `None`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Duty {
    /// How the load runs.
    pub load: Option<Load>,
    /// Speed, rad/s.
    pub speed: Option<AngularVelocity>,
    /// Whether the shaft lines stay offset while running.
    pub offset: Option<Need>,
    /// Whether a shaft moves along its axis while running.
    pub end_movement: Option<Need>,
    /// Whether it can be stopped and opened for grease.
    pub grease_service: Option<Need>,
    /// Whether it stands in heat (above about 80 °C), where elastomers age.
    pub hot_place: Option<Need>,
    /// Whether torsional vibration must be damped.
    pub damping: Option<Need>,
    /// Whether the torque turns round.
    pub reversing: Option<Need>,
    /// Whether it starts oftener than a hundred times in an hour.
    pub many_starts: Option<Need>,
    /// Whether a rotor in sleeve bearings floats along its axis.
    pub end_float: Option<Need>,
}

/// Whether something is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
#[expect(missing_docs, reason = "the names say it")]
pub enum Need {
    No,
    Yes,
}

/// How a load runs.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Load {
    /// Steadily: a centrifugal pump on clean liquid.
    Uniform,
    /// With moderate shock: a mixer, an apron conveyor.
    Moderate,
    /// With heavy shock: a crusher, a piston pump.
    Heavy,
    /// With extreme shock, or reversing.
    Extreme,
}

impl Load {
    /// In a few words.
    pub fn says(self) -> &'static str {
        match self {
            Self::Uniform => "runs steadily",
            Self::Moderate => "moderate shock",
            Self::Heavy => "heavy shock",
            Self::Extreme => "extreme shock, or reversing",
        }
    }
}

impl From<bool> for Need {
    fn from(asked: bool) -> Self {
        if asked { Self::Yes } else { Self::No }
    }
}

/// A reason for or against a kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Reason {
    /// For or against.
    pub speaks: Speaks,
    /// The reason.
    pub text: &'static str,
}

/// For or against.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
#[expect(missing_docs, reason = "the names say it")]
pub enum Speaks {
    For,
    Against,
}

impl Reason {
    pub(crate) const fn pro(text: &'static str) -> Self {
        Self { speaks: Speaks::For, text }
    }

    pub(crate) const fn contra(text: &'static str) -> Self {
        Self { speaks: Speaks::Against, text }
    }
}

/// More starts in an hour are many: where the start factor of DIN 740-2 rises (from memory).
pub const MANY_STARTS: u32 = 100;

/// All that speaks for and against a kind on a duty: what its own file says, and what follows from
/// its nature.
pub fn all_reasons(kind: &dyn Kind, form: &Form, duty: &Duty) -> Vec<Reason> {
    kind.suits(duty).into_iter().chain(by_nature(kind, form, duty)).collect()
}

/// The reasons whose question was answered with yes.
pub(crate) fn reasons(asked: &[(bool, Reason)]) -> Vec<Reason> {
    asked.iter().filter(|(holds, _)| *holds).map(|(_, reason)| *reason).collect()
}

/// The reasons that follow from what a kind is by nature: its play, how it takes a shock, what
/// stops a rotor that floats. Those of its own stand in [`Kind::suits`].
///
/// # Source
/// Common practice: play hammers where torque turns round; what cushions shock spares the starts; a
/// motor in sleeve bearings needs a coupling that limits its float.
/// # Example
/// ```
/// use couplings::duty::by_nature;
/// use couplings::{Duty, Need, Speaks, kind};
/// let gear = kind("gear").unwrap();
/// let duty = Duty { reversing: Some(Need::Yes), ..Duty::default() };
/// let reasons = by_nature(gear, &gear.forms()[0], &duty);
/// assert_eq!(reasons[0].speaks, Speaks::Against);
/// ```
pub fn by_nature(kind: &dyn Kind, form: &Form, duty: &Duty) -> Vec<Reason> {
    let forgives = kind.forgives(form);
    let (play, shock) = (forgives.play, forgives.shock);
    let turns = Duty::asks(duty.reversing);
    let starts = Duty::asks(duty.many_starts);
    let floats = Duty::asks(duty.end_float);
    let flexes = form.planes != Planes::None;
    let held = kind.float_limit(form) != FloatLimit::ByItself;
    let slack = !held && flexes && kind.cold_stretch().is_none() && play != Play::NotKnown;
    reasons(&[
        (
            turns && play == Play::Backlash,
            Reason::contra("its backlash hammers each time the torque turns round"),
        ),
        (turns && play == Play::None, Reason::pro("no play where the torque turns round")),
        (starts && shock == Shock::Cushions, Reason::pro("cushions each of the many starts")),
        (
            starts && shock == Shock::Passes,
            Reason::contra("passes each of the many starts on as it comes"),
        ),
        (floats && held, Reason::pro("a plate or limiters in it can limit the end float")),
        (
            floats && kind.cold_stretch().is_some(),
            Reason::pro("holds a floating rotor near its magnetic centre by itself"),
        ),
        (
            floats && slack,
            Reason::contra("has no part that limits the end float of a sleeve-bearing motor"),
        ),
    ])
}

impl Duty {
    pub(crate) fn asks(need: Option<Need>) -> bool {
        need == Some(Need::Yes)
    }

    pub(crate) fn lacks(need: Option<Need>) -> bool {
        need == Some(Need::No)
    }

    pub(crate) fn shocks(&self) -> bool {
        self.load.is_some_and(|load| load >= Load::Heavy)
    }

    /// Faster than a two-pole motor on the mains.
    pub(crate) fn fast(&self) -> bool {
        self.speed.is_some_and(|speed| speed.si() > 3_700.0 * std::f64::consts::TAU / 60.0)
    }
}
