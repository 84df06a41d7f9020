//! What to do at the feet: up or down with shims, sideways with jack screws.
//!
//! ```text
//! m(x) = t(x) − d(x)
//! ```
//! t target, d position, x of the foot plane; + is add shims, push towards +z (right, looking
//! along +x). The `±` comes from the covariance of both; front and rear are almost fully correlated,
//! and a hundredth at the hubs is several hundredths at a rear foot. So a move is judged by where it
//! brings the shaft at the coupling, not by its own `±`.
//!
//! A foot is base-bound when more shims should come out than lie there, and bolt-bound when it
//! should go farther sideways than its bolts allow.

use quantities::{Basis, Kind, Length, Physical, Source, Value, Working};

use crate::line::Line;
use crate::{Estimate, Plane};

/// A plane of feet across the machine, and how far it can go.
#[derive(Clone, Debug, PartialEq)]
pub struct FootPlane {
    /// "front", "rear", as the job names it.
    pub name: String,
    /// Its x.
    pub at: Length,
    /// Shims under it that can come out; `None` when not known.
    pub shims: Option<Length>,
    /// The same one by one; empty when only their sum is known, or nothing.
    pub pack: Vec<Length>,
    /// How far it can go to the right and to the left (both positive); `None` when not known.
    pub side_room: Option<(Length, Length)>,
}

impl FootPlane {
    /// A plane of feet without known limits.
    pub fn new(name: impl Into<String>, at: Length) -> Self {
        Self { name: name.into(), at, shims: None, pack: Vec::new(), side_room: None }
    }

    /// Least and greatest move in a plane, in SI; infinite where nothing is known.
    pub(crate) fn room(&self, plane: Plane) -> (f64, f64) {
        let open = (f64::NEG_INFINITY, f64::INFINITY);
        match plane {
            Plane::Vertical => self.shims.map_or(open, |shims| (-shims.si(), f64::INFINITY)),
            Plane::Sideways => {
                self.side_room.map_or(open, |(right, left)| (-left.si(), right.si()))
            }
        }
    }
}

/// Where a dial stands that watches a foot move; zeroed before, its stem against the foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Watch {
    /// Above the foot, stem down.
    OnTop,
    /// To the right of the machine looking along +x, stem to the left.
    FromRight,
    /// To its left, stem to the right.
    FromLeft,
}

/// The move at one plane of feet.
#[derive(Clone, Debug, PartialEq)]
pub struct FootMove {
    /// The foot plane.
    pub foot: FootPlane,
    /// Where its shaft stands above and to the right of the fixed line.
    pub position: [Estimate<Length>; 2],
    /// Where it should stand.
    pub target: [Estimate<Length>; 2],
    /// Up, and to the right.
    pub amount: [Estimate<Length>; 2],
}

impl FootMove {
    /// Shims to add; negative to take out.
    pub fn up(&self) -> Estimate<Length> {
        self.amount[Plane::Vertical.index()]
    }

    /// Push to the right, looking along +x; negative to the left.
    pub fn right(&self) -> Estimate<Length> {
        self.amount[Plane::Sideways.index()]
    }

    /// How much more it should go than it can; zero where there is room, or none is known.
    pub fn beyond(&self, plane: Plane) -> Length {
        let (least, greatest) = self.foot.room(plane);
        let wanted = self.amount[plane.index()].value.si();
        Length::from_si(wanted - wanted.clamp(least, greatest))
    }

    /// True when more shims should come out than lie there.
    pub fn is_base_bound(&self) -> bool {
        self.beyond(Plane::Vertical).si() < 0.0
    }

    /// True when it should go farther sideways than its bolts allow.
    pub fn is_bolt_bound(&self) -> bool {
        self.beyond(Plane::Sideways).si() != 0.0
    }

    /// What a dial at this foot, zeroed before the move, reads after it.
    pub fn dial_reads(&self, watch: Watch) -> Length {
        match watch {
            Watch::OnTop => self.up().value,
            Watch::FromLeft => -self.right().value,
            Watch::FromRight => self.right().value,
        }
    }

    /// How it was found.
    pub fn working(&self, plane: Plane) -> Working {
        let shown =
            |estimates: &[Estimate<Length>; 2]| estimates[plane.index()].shown(Kind::Offset);
        Working::new(
            format!("Move at the {} feet, {}", self.foot.name, plane.words()),
            "m = t − d",
            shown(&self.amount),
            Source::new("Geometry of two straight lines", "moving minus fixed", Basis::Computed),
        )
        .term("t", "target at the foot plane", shown(&self.target))
        .term("d", "position at the foot plane", shown(&self.position))
        .term("x", "of the foot plane", Value::new(Kind::Length, self.foot.at))
        .valid("straight shafts, feet that take up what is put under them")
    }
}

/// Why there are no moves.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum MovesError {
    /// A machine stands on at least two planes of feet.
    #[error(
        "fewer than two planes of feet at different places; give two or more, each with its own distance from the coupling"
    )]
    TooFewFeet,
    /// A place or a room that is no number, or a room below zero.
    #[error(
        "foot plane “{0}”: its place is not a number, or there is less than no room to move; give a distance, and room of nothing or more"
    )]
    Foot(String),
}

/// Moves that bring the moving machine from `position` to `target` at each of its foot planes.
///
/// # Errors
/// [`MovesError`].
/// # Example
/// ```
/// use lineup::line::Line;
/// use lineup::moves::{FootPlane, moves};
/// use quantities::{Length, Physical};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let level = Line::zero(mm(0.0));
/// let feet = [FootPlane::new("front", mm(300.0)), FootPlane::new("rear", mm(700.0))];
/// let moves = moves(&level, &level, &feet)?;
/// assert_eq!(moves[0].up().value, mm(0.0));
/// # Ok::<(), lineup::moves::MovesError>(())
/// ```
pub fn moves(
    position: &Line,
    target: &Line,
    feet: &[FootPlane],
) -> Result<Vec<FootMove>, MovesError> {
    check(feet)?;
    let needed = target.minus(position);
    let both = |line: &Line, x| Plane::BOTH.map(|plane| line.offset(plane, x));
    Ok(feet
        .iter()
        .map(|foot| FootMove {
            foot: foot.clone(),
            position: both(position, foot.at),
            target: both(target, foot.at),
            amount: both(&needed, foot.at),
        })
        .collect())
}

pub(crate) fn check(feet: &[FootPlane]) -> Result<(), MovesError> {
    for foot in feet {
        let rooms = [
            foot.shims.map_or(0.0, Physical::si),
            foot.side_room.map_or(0.0, |(right, _)| right.si()),
            foot.side_room.map_or(0.0, |(_, left)| left.si()),
        ];
        let sound =
            foot.at.si().is_finite() && rooms.iter().all(|room| room.is_finite() && *room >= 0.0);
        if !sound {
            return Err(MovesError::Foot(foot.name.clone()));
        }
    }
    let places = || feet.iter().map(|foot| foot.at.si());
    let spread =
        places().fold(f64::NEG_INFINITY, f64::max) - places().fold(f64::INFINITY, f64::min);
    if feet.len() < 2 || spread <= 0.0 {
        return Err(MovesError::TooFewFeet);
    }
    Ok(())
}

/// What the fixed machine must rise so that a base-bound foot can stay above its base.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Raise {
    /// The move wanted at the foot, negative downwards.
    pub up: Length,
    /// Shims there now.
    pub shims: Length,
    /// Shims that should lie there at least.
    pub least_pack: Length,
    /// Of the fixed machine's line, at the plane of that foot; zero when the foot can come down.
    pub raise: Length,
}

/// How far the fixed machine must be raised, at the plane of a foot that cannot come down enough,
/// so that the foot ends on at least `least_pack` of shims.
///
/// ```text
/// raise = least pack − shims there − m
/// ```
/// # Source
/// Harlon, *A Millwright's Guide to Motor/Pump Alignment*, 2nd ed., options four and five.
pub fn raise_of_target(up: Length, shims: Length, least_pack: Length) -> Raise {
    let raise = (least_pack - shims - up).max(Length::from_si(0.0));
    Raise { up, shims, least_pack, raise }
}

impl Raise {
    /// How it was found.
    pub fn working(&self) -> Working {
        let shown = |length| Value::new(Kind::Offset, length);
        Working::new(
            "Raise of the fixed machine",
            "r = p − s − m",
            shown(self.raise),
            Source::new(
                "Harlon, A Millwright’s Guide to Motor/Pump Alignment, 2nd ed.",
                "options four and five",
                Basis::Read,
            ),
        )
        .term("p", "shims wanted under the foot at least", shown(self.least_pack))
        .term("s", "shims there", shown(self.shims))
        .term("m", "move wanted at the foot", shown(self.up))
        .valid("zero when the foot can come down")
    }
}

/// Shims that shift a shaft sideways by tilting its machine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tilt {
    /// Wanted sideways.
    pub shift: Length,
    /// Of the shaft above its feet.
    pub shaft_height: Length,
    /// Between left and right feet.
    pub foot_width: Length,
    /// To raise one side and lower the other by; the shaft moves towards the lowered side.
    pub shims: Length,
}

/// Raise one side and lower the other, and the shaft moves towards the lowered side.
///
/// ```text
/// s = m·W/(2·H)
/// ```
/// `None` unless both the shaft's height above its feet and the width between them are positive.
/// # Source
/// Bloch and Geitner, *Machinery Component Maintenance and Repair*, pages 224 to 225.
/// # Example
/// ```
/// use lineup::moves::tilt;
/// use quantities::{Length, Physical};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let tilt = tilt(mm(0.40), mm(315.0), mm(500.0)).unwrap();
/// assert!((tilt.shims.si() * 1e3 - 0.3175).abs() < 5e-5);
/// ```
pub fn tilt(shift: Length, shaft_height: Length, foot_width: Length) -> Option<Tilt> {
    let sound = [shaft_height, foot_width].iter().all(|size| size.si() > 0.0 && size.is_finite());
    let shims = shift * (foot_width / (shaft_height * 2.0)).value;
    (sound && shift.is_finite()).then_some(Tilt { shift, shaft_height, foot_width, shims })
}

impl Tilt {
    /// How it was found.
    pub fn working(&self) -> Working {
        Working::new(
            "Shims that tilt the machine",
            "s = m·W/(2·H)",
            Value::new(Kind::Offset, self.shims),
            Source::new(
                "Bloch and Geitner, Machinery Component Maintenance and Repair",
                "pages 224 to 225",
                Basis::Read,
            ),
        )
        .term("m", "shift wanted", Value::new(Kind::Offset, self.shift))
        .term("W", "between left and right feet", Value::new(Kind::Length, self.foot_width))
        .term("H", "shaft above its feet", Value::new(Kind::Length, self.shaft_height))
        .valid("small angles; raise one side and lower the other by s")
    }
}
