//! Set screws: the torque and thrust that they hold.

use quantities::{Basis, Force, Kind, Length, Physical, Source, Torque, Value, Working};

use super::KeyError;
use crate::is_positive;

/// Set screws on a shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetScrews {
    /// Force along the shaft that one screw holds, by its maker's or a handbook's table.
    pub holding: Force,
    /// Screws.
    pub screws: u32,
    /// Shaft diameter.
    pub shaft: Length,
    /// Torque that they hold together.
    pub torque: Torque,
    /// Thrust that they hold together.
    pub thrust: Force,
}

/// Torque and thrust held by set screws.
///
/// ```text
/// T = n·F·d/2
/// ```
/// # Valid
/// Seated at their torque on clean metal; torque and thrust not both at once. The holding force of
/// one screw is an input: it depends on point, size, seating torque and the hardness of the shaft.
/// # Errors
/// [`KeyError`] for a force, a count or a diameter not above zero.
pub fn set_screws(holding: Force, screws: u32, shaft: Length) -> Result<SetScrews, KeyError> {
    if !is_positive(holding.si()) {
        return Err(KeyError::Number(holding.si()));
    }
    if screws == 0 {
        return Err(KeyError::Number(0.0));
    }
    if !is_positive(shaft.si()) {
        return Err(KeyError::Length(shaft));
    }
    let thrust = holding * f64::from(screws);
    let torque = Torque::from_si(thrust.si() * shaft.si() / 2.0);
    Ok(SetScrews { holding, screws, shaft, torque, thrust })
}

impl SetScrews {
    /// How the torque was found.
    pub fn working(&self) -> Working {
        let source = Source::new("statics", "", Basis::Computed);
        let result = Value::new(Kind::Torque, self.torque);
        Working::new("Torque held by set screws", "T = n·F·d/2", result, source)
            .term("n", "set screws", Value::count(self.screws))
            .term("F", "holding force of one", Value::new(Kind::Force, self.holding))
            .term("d", "shaft", Value::new(Kind::Length, self.shaft))
            .valid("screws seated at their torque on clean metal")
    }

    /// How the thrust was found.
    pub fn thrust_working(&self) -> Working {
        let source = Source::new("statics", "", Basis::Computed);
        let result = Value::new(Kind::Force, self.thrust);
        Working::new("Thrust held by set screws", "H = n·F", result, source)
            .term("n", "set screws", Value::count(self.screws))
            .term("F", "holding force of one", Value::new(Kind::Force, self.holding))
            .valid("screws seated at their torque on clean metal; no torque at once")
    }
}
