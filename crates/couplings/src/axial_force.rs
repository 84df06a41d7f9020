//! The force along the shafts that a coupling of metal packs or diaphragms puts on its bearings.
//!
//! Not here: what teeth hold by friction ([`crate::teeth`]), where the gap stands
//! ([`crate::gap`]).

use mechanics::Estimate;
use quantities::{Basis, Force, Kind, Length, Physical, Source, Stiffness, Value, Working};

/// A coupling held away from where it rests.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pull {
    /// Axial stiffness of the whole coupling.
    pub stiffness: Estimate<Stiffness>,
    /// How far it is stretched or pushed; a magnitude.
    pub moved: Estimate<Length>,
    /// The force, with its `±`.
    pub force: Estimate<Force>,
}

/// The force that a displacement along the shafts puts on the bearings.
///
/// ```text
/// F = k·x
/// ```
/// # Valid
/// A stiffness that stays the same; packs and diaphragms stiffen towards the end of their travel,
/// so that near it the maker's curve holds.
/// # Errors
/// [`NoForce`] for a stiffness not above zero, or a displacement that is no number or below zero.
/// # Source
/// Hooke's law.
/// # Example
/// ```
/// use couplings::axial_force::pull;
/// use mechanics::Estimate;
/// use quantities::{Length, Physical, Stiffness};
/// let exact = |n_per_m| Estimate::exact(Stiffness::from_si(n_per_m));
/// let found = pull(exact(400e3), Estimate::exact(Length::from_si(0.8e-3)))?;
/// assert!((found.force.value.value - 320.0).abs() < 1e-9);
/// # Ok::<(), couplings::axial_force::NoForce>(())
/// ```
pub fn pull(stiffness: Estimate<Stiffness>, moved: Estimate<Length>) -> Result<Pull, NoForce> {
    let (k, x) = (stiffness.value.si(), moved.value.si());
    if !(k.is_finite() && k > 0.0) {
        return Err(NoForce { what: "axial stiffness", si: k });
    }
    if !(x.is_finite() && x >= 0.0) {
        return Err(NoForce { what: "displacement along the shafts", si: x });
    }
    let spread = (k * moved.plus_minus.si()).hypot(x * stiffness.plus_minus.si());
    let force = Estimate::new(Force::from_si(k * x), Force::from_si(spread));
    Ok(Pull { stiffness, moved, force })
}

/// Why there is no force.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("{what} is out of range: {si}")]
pub struct NoForce {
    /// What was put in.
    pub what: &'static str,
    /// In SI.
    pub si: f64,
}

impl Pull {
    /// The force, to be shown.
    pub fn shown(&self) -> Value {
        shown(&self.force, Kind::Force)
    }

    /// How it was found.
    pub fn working(&self) -> Working {
        let source = Source::new("Hooke’s law", "", Basis::Computed);
        Working::new("Axial force on the bearings", "F = k·x", self.shown(), source)
            .term("k", "axial stiffness of the coupling", shown(&self.stiffness, Kind::Stiffness))
            .term("x", "away from where it rests", shown(&self.moved, Kind::Offset))
            .valid("an even stiffness; near the end of its travel the maker’s curve holds")
    }
}

/// With its `±` where it has one.
fn shown<Q: Physical<Spread = Q>>(estimate: &Estimate<Q>, kind: Kind) -> Value {
    let exact = estimate.plus_minus.si() == 0.0;
    if exact { Value::new(kind, estimate.value) } else { estimate.shown(kind) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantities::Measured;

    /// By hand, one pack of the trade's usual size in inches: 2300 lbf/in moved 0.030 in is 69 lbf.
    #[test]
    fn stiffness_times_displacement() {
        let stiffness: Measured<Stiffness> = "2300 lbf/in".parse().unwrap();
        let moved: Measured<Length> = "30 ± 3 mil".parse().unwrap();
        let spread = moved.spread().unwrap();
        let found =
            pull(Estimate::exact(stiffness.value()), Estimate::new(moved.value(), spread)).unwrap();
        let pounds = |force: Force| force.si() / 4.448_221_615_260_5;
        assert!((pounds(found.force.value) - 69.0).abs() <= 1e-9);
        assert!((pounds(found.force.plus_minus) - 6.9).abs() <= 1e-9);
        assert!(pull(Estimate::exact(Stiffness::from_si(0.0)), found.moved).is_err());
        let none = Estimate::exact(Length::from_si(f64::NAN));
        assert!(pull(found.stiffness, none).is_err());
    }
}
