//! Do the pipes pull? Movement of the shaft at the coupling while flanges are tightened.
//!
//! Dials at the coupling watch the shaft up and sideways while the flanges are drawn up, the
//! largest first. Movement tells strain; strain comes out in the pipe, not in the coupling.
//!
//! Not here: how much is allowed, and how square a loose flange must stand (`tables::limits`).

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
