//! Do the pipes pull? Movement of the shaft at the coupling while flanges are tightened, and how
//! square a loose flange stands to the machine's.
//!
//! Dials at the coupling watch the shaft up and sideways while the flanges are drawn up, the
//! largest first. Movement tells strain; strain comes out in the pipe, not in the coupling.

use quantities::{Basis, Kind, Length, Limits, Physical, Source, Value, Verdict, Working, judge};

use crate::{Estimate, Plane};

/// Movement of the shaft at the coupling while pipes were made up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PipeStrain {
    /// Up, and to the right; signed.
    pub movement: [Estimate<Length>; 2],
    /// Allowed in each of the two.
    pub limit: Length,
}

impl PipeStrain {
    /// The verdict in one plane.
    pub fn verdict(&self, plane: Plane) -> Verdict {
        let movement = self.movement[plane.index()].shown(Kind::Offset);
        judge(&movement, &Limits::between(-self.limit.si(), self.limit.si()))
    }

    /// The worse of the two.
    pub fn worst(&self) -> Verdict {
        self.verdict(Plane::Vertical).max(self.verdict(Plane::Sideways))
    }

    /// How it was judged.
    pub fn working(&self, plane: Plane) -> Working {
        let movement = self.movement[plane.index()].shown(Kind::Offset);
        Working::new(
            format!("Movement at the coupling as pipes were made up, {}", plane.words()),
            "r = |m|/L",
            Value {
                kind: Kind::Percent,
                si: movement.si.abs() / self.limit.si(),
                plus_minus: None,
            },
            Source::new("API RP 686, 2nd ed.", "clauses 4.6 to 4.8, by a summary", Basis::Read),
        )
        .term("m", "movement of the shaft", movement)
        .term("L", "allowed", Value::new(Kind::Offset, self.limit))
        .valid("each plane by itself, all flanges tight")
    }
}

/// Greatest movement of the shaft, 0.05 mm in each of the two directions.
///
/// # Source
/// API RP 686, 2nd ed., clauses 4.6 to 4.8, by a summary. Bloch and Geitner print 0.003 in.
pub fn movement_limit() -> Length {
    Length::from_si(0.05e-3)
}

/// How far out of parallel a loose flange may stand, over its outside diameter: 0.01 mm for each
/// centimetre of it, but 0.25 mm below 250 mm, and never more than 0.75 mm. `None` unless the
/// diameter is positive.
///
/// # Source
/// API RP 686, 2nd ed., clauses 4.6 to 4.8, by a summary.
/// # Example
/// ```
/// use lineup::strain::flange_parallelism;
/// use quantities::{Length, Physical};
/// let limit = flange_parallelism(Length::from_si(0.400)).unwrap();
/// assert!((limit.si() - 0.40e-3).abs() < 1e-12);
/// ```
pub fn flange_parallelism(outside: Length) -> Option<Length> {
    let outside_m = outside.si();
    let limit_m = if outside_m < 0.250 { 0.25e-3 } else { (outside_m * 1e-3).min(0.75e-3) };
    (outside_m > 0.0 && outside_m.is_finite()).then(|| Length::from_si(limit_m))
}
