//! A machine on a flange, upright as a rule: shims at the flange's bolts tilt it, a shift on its
//! seat carries it aside.
//!
//! The seat lies in one plane across the shaft, so the shift is what the line must move there, and
//! the tilt is the slope that must change. A shim at a bolt is as thick as the flange must rise
//! there; the bolt that needs none is the pivot. Clock positions are those of the train: 12 is the
//! direction that was called up, wherever it points.
//!
//! ```text
//! s(t) = ±B/2·(qy·cos t + qz·sin t) + c        c so that the least is nothing
//! ```
//! B bolt circle · q change of slope along +x, moving shaft · + where the machine stands at smaller
//! x than its seat (a driver), − where at larger

use quantities::{Basis, Kind, Length, Physical, Source, Value, Working, both};

use crate::clock::{Clock, View};
use crate::line::Line;
use crate::{Estimate, Machine, Plane};

/// A flange and its bolts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flange {
    /// x of its seat.
    pub at: Length,
    /// Bolt circle.
    pub circle: Length,
    /// How many bolts, evenly spread.
    pub bolts: u32,
    /// Where the first of them stands.
    pub first: Clock,
}

/// Why there are no shims.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum FlangeError {
    /// A place or a circle that is none, or fewer than three bolts.
    #[error("a flange at {}, {} bolts on a circle of {}; expected a place, three bolts or more, and a circle above nothing", both(&.0.at), .0.bolts, both(&.0.circle))]
    Flange(Flange),
}

/// What to do at a flange.
#[derive(Clone, Debug, PartialEq)]
pub struct FlangeMove {
    /// The flange.
    pub flange: Flange,
    /// Shift on its seat, towards 12 and towards 3.
    pub shift: [Estimate<Length>; 2],
    /// Change of slope, towards 12 and towards 3.
    pub tilt: [Estimate<quantities::Angle>; 2],
    /// Shim at every bolt, in the order of the clock from the first; at one it is nothing.
    pub shims: Vec<(Clock, Length)>,
}

/// Shims and shift that bring a flange-mounted machine from `position` to `target`.
///
/// # Errors
/// [`FlangeError::Flange`].
/// # Source
/// Geometry of a straight shaft square to its flange; for the proportion to the distance from the
/// pivot, common practice.
/// # Example
/// ```
/// use lineup::clock::Clock;
/// use lineup::flange::{Flange, flange_move};
/// use lineup::growth::{PlaneGrowth, growth_line};
/// use lineup::line::Line;
/// use lineup::{Estimate, Machine};
/// use quantities::{Length, Physical};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let flange = Flange { at: mm(-200.0), circle: mm(400.0), bolts: 4, first: Clock::TWELVE };
/// // The motor's shaft climbs by 0.5 mm/m towards 12 along +x: it must lean back.
/// let leaning = growth_line(&[
///     PlaneGrowth::up(mm(-200.0), Estimate::exact(mm(0.0))),
///     PlaneGrowth::up(mm(0.0), Estimate::exact(mm(0.1))),
/// ]).unwrap();
/// let found = flange_move(Machine::Driver, flange, &leaning, &Line::zero(mm(0.0)))?;
/// assert!((found.shims[2].1.si() * 1e3 - 0.2).abs() < 1e-9); // at 6; none at 12
/// # Ok::<(), lineup::flange::FlangeError>(())
/// ```
pub fn flange_move(
    moving: Machine,
    flange: Flange,
    position: &Line,
    target: &Line,
) -> Result<FlangeMove, FlangeError> {
    let circle = flange.circle.si();
    if !(circle > 0.0 && circle.is_finite() && flange.at.is_finite() && flange.bolts >= 3) {
        return Err(FlangeError::Flange(flange));
    }
    let needed = target.minus(position);
    let shift = Plane::BOTH.map(|plane| needed.offset(plane, flange.at));
    let tilt = Plane::BOTH.map(|plane| needed.slope(plane));
    let side = if moving == Machine::Driver { 1.0 } else { -1.0 };
    let [to_twelve, to_three] = tilt.map(|tilt| side * circle / 2.0 * tilt.value.si());
    let rise = |clock: Clock| {
        let (cos, sin) = clock.cos_sin();
        to_twelve * cos + to_three * sin
    };
    let clocks = bolts(&flange);
    let least = clocks.iter().map(|clock| rise(*clock)).fold(f64::INFINITY, f64::min);
    let shim = |clock: &Clock| (*clock, Length::from_si(rise(*clock) - least));
    Ok(FlangeMove { flange, shift, tilt, shims: clocks.iter().map(shim).collect() })
}

/// Where the bolts stand, clockwise from the first.
fn bolts(flange: &Flange) -> Vec<Clock> {
    let step = 360.0 / f64::from(flange.bolts);
    let at = |bolt: u32| {
        let degrees = flange.first.degrees() + step * f64::from(bolt);
        Clock::from_degrees(degrees, View::FromDriver)
    };
    (0..flange.bolts).filter_map(at).collect()
}

impl FlangeMove {
    /// How the shim at a bolt was found; `None` for a bolt that there is not.
    pub fn working(&self, bolt: usize) -> Option<Working> {
        let (clock, shim) = self.shims.get(bolt)?;
        let source = Source::common_practice("shims in proportion to the distance from the pivot");
        let [to_twelve, to_three] = self.tilt.map(|tilt| tilt.shown(Kind::Slope));
        let working = Working::new(
            format!("Shim at the bolt at {clock}"),
            "s = B/2·(qy·cos t + qz·sin t) + c",
            Value::new(Kind::Offset, *shim),
            source,
        )
        .term("B", "bolt circle", Value::new(Kind::Length, self.flange.circle))
        .term("qy", "change of slope towards 12", to_twelve)
        .term("qz", "change of slope towards 3", to_three)
        .term("t", "clock position of the bolt", Value::new(Kind::Degrees, clock.angle()))
        .valid("c makes the least shim nothing; the other sign for the machine at larger x");
        Some(working)
    }

    /// How the shift was found.
    pub fn shift_working(&self, plane: Plane) -> Working {
        Working::new(
            format!("Shift on the flange’s seat, {}", plane.words()),
            "m = t − d",
            self.shift[plane.index()].shown(Kind::Offset),
            Source::new("Geometry of two straight lines", "moving minus fixed", Basis::Computed),
        )
        .term("x", "of the seat", Value::new(Kind::Length, self.flange.at))
        .valid("straight shaft, square to its flange")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::growth::{PlaneGrowth, growth_line};

    fn mm(mm: f64) -> Length {
        Length::from_si(mm / 1e3)
    }

    /// Common practice: the shim at a bolt is the face difference over the swing diameter, times the
    /// distance from the pivot bolt. Face 0.10 mm over 250 mm, bolt circle 500 mm: 0.20 mm opposite
    /// the pivot, 0.10 mm beside it; and a machine at the other end takes them at the other side.
    #[test]
    fn shims_grow_with_the_distance_from_the_pivot() {
        let slope = 0.10 / 250.0;
        let line = growth_line(&[
            PlaneGrowth::up(mm(0.0), Estimate::exact(mm(0.0))),
            PlaneGrowth::up(mm(1000.0), Estimate::exact(mm(1000.0 * slope))),
        ])
        .unwrap();
        let flange = Flange { at: mm(150.0), circle: mm(500.0), bolts: 4, first: Clock::TWELVE };
        let shims = |moving| {
            let found = flange_move(moving, flange, &line, &Line::zero(mm(0.0))).unwrap();
            found.shims.iter().map(|(_, shim)| shim.si() * 1e3).collect::<Vec<f64>>()
        };
        for (moving, wanted) in
            [(Machine::Driver, [0.0, 0.10, 0.20, 0.10]), (Machine::Driven, [0.20, 0.10, 0.0, 0.10])]
        {
            for (shim, wanted) in shims(moving).iter().zip(wanted) {
                assert!((shim - wanted).abs() < 1e-9, "{moving:?}: {shim} for {wanted}");
            }
        }
        let found = flange_move(Machine::Driven, flange, &line, &Line::zero(mm(0.0))).unwrap();
        assert!((found.shift[0].value.si() * 1e3 + 150.0 * slope).abs() < 1e-9);
        assert!(found.working(3).is_some() && found.working(4).is_none());
        let two = Flange { bolts: 2, ..flange };
        assert!(flange_move(Machine::Driven, two, &line, &Line::zero(mm(0.0))).is_err());
    }

    proptest::proptest! {
        /// Seated on its shims, the flange has the tilt that was asked: the rise over any pair of
        /// opposite bolts is the change of slope over the circle.
        #[test]
        fn the_shims_give_the_tilt(qy in -2e-3..2e-3_f64, qz in -2e-3..2e-3_f64, bolts in 2_u32..9) {
            let at = |x: f64| PlaneGrowth {
                at: Length::from_si(x),
                up: Estimate::exact(Length::from_si(-qy * x)),
                right: Estimate::exact(Length::from_si(-qz * x)),
            };
            let line = growth_line(&[at(0.0), at(1.0)]).unwrap();
            let flange = Flange { at: mm(-100.0), circle: mm(300.0), bolts: 2 * bolts, first: Clock::TWELVE };
            let found = flange_move(Machine::Driver, flange, &line, &Line::zero(mm(0.0))).unwrap();
            for (i, (clock, shim)) in found.shims.iter().enumerate().take(bolts as usize) {
                let opposite = found.shims[i + bolts as usize].1;
                let (cos, sin) = clock.cos_sin();
                let wanted = 0.300 * (qy * cos + qz * sin);
                proptest::prop_assert!(((*shim - opposite).si() - wanted).abs() < 1e-12);
            }
        }
    }
}
