//! Wear: what was measured against its limit; re-use or renew.
//!
//! m measured · n new · l limit · τ time in service
//!
//! The sheet's limit comes first. For gear teeth without one the trade renews when the backlash has
//! doubled; for anything else without a limit no verdict is given.

use quantities::{
    AngularVelocity, Basis, Force, Kind, Length, Limits, Mass, Physical, Source, Time, Value,
    Verdict, Working, judge,
};

use serde::Serialize;

use crate::sheet::Wear;

/// Something worn, against its limit.
#[derive(Clone, Debug, PartialEq)]
pub struct Worn {
    /// What was measured: "backlash".
    pub what: &'static str,
    /// As measured.
    pub measured: Value,
    /// When new, if known.
    pub new: Option<Value>,
    /// The limit, if there is one.
    pub limit: Option<Value>,
    /// Which way it wears.
    pub wears: Wears,
    /// How the limit is known.
    pub source: Source,
}

/// What can be measured of a kind's wear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Measure {
    /// Backlash of teeth along the pitch circle.
    Backlash,
    /// Depth worn into a tooth, a groove or a sprocket.
    Tooth,
    /// Thickness left of an elastomer element or bush.
    Element,
    /// Stretch of a chain.
    Stretch,
    /// Free length of a disc pack.
    Pack,
}

/// Which way something wears.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wears {
    /// It grows: play, stretch.
    Up,
    /// It shrinks: a bush, an element.
    Down,
}

/// What becomes of a worn part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It goes back.
    Reuse,
    /// Too close to call: measure again, or renew.
    MeasureAgain,
    /// It is renewed.
    Renew,
    /// Without a limit nobody can say: ask the maker.
    NoLimit,
}

const SHEET: Source = Source::new("maker’s sheet", "wear", Basis::MakersSheet);
const DOUBLED: Source =
    Source::common_practice("gear teeth are renewed when the backlash has doubled");
const NO_LIMIT: Source = Source::new("no limit is held; the maker has it", "", Basis::MakersSheet);

/// Backlash of gear teeth along the pitch circle, against the sheet's limit, else twice new.
///
/// # Example
/// ```
/// use couplings::wear::{Fate, backlash};
/// use couplings::sheet::Wear;
/// let wear = Wear { new_backlash: Some("0.30 mm".parse()?), ..Wear::default() };
/// let worn = backlash(&"0.48 ± 0.03 mm".parse()?, &wear);
/// assert_eq!(worn.fate(), Fate::Reuse);
/// # Ok::<(), quantities::TextError>(())
/// ```
pub fn backlash(measured: &quantities::Measured<Length>, sheet: &Wear) -> Worn {
    let shown = |length| Value::new(Kind::Offset, length);
    let new = sheet.new_backlash.as_ref().map(quantities::Measured::value);
    let (limit, source) = match (&sheet.backlash, new) {
        (Some(limit), _) => (Some(shown(limit.value())), SHEET),
        (None, Some(new)) => (Some(shown(new * 2.0)), DOUBLED),
        (None, None) => (None, NO_LIMIT),
    };
    Worn {
        what: "backlash",
        measured: measured.shown_as(Kind::Offset),
        new: new.map(shown),
        limit,
        wears: Wears::Up,
        source,
    }
}

/// Wear of a tooth, a groove or an element, against the sheet's limit.
pub fn tooth(measured: &quantities::Measured<Length>, sheet: &Wear) -> Worn {
    let limit = sheet.tooth.as_ref().map(|limit| limit.shown_as(Kind::Offset));
    let source = if limit.is_some() { SHEET } else { NO_LIMIT };
    let new = Some(Value::new(Kind::Offset, Length::default()));
    let measured = measured.shown_as(Kind::Offset);
    Worn { what: "wear of teeth or grooves", measured, new, limit, wears: Wears::Up, source }
}

/// Thickness of an elastomer element or bush, against the sheet's least; its thickness when new
/// tells the pace.
pub fn element(
    measured: &quantities::Measured<Length>,
    sheet: &Wear,
    new: Option<&quantities::Measured<Length>>,
) -> Worn {
    let limit = sheet.element.as_ref().map(|limit| limit.shown_as(Kind::Length));
    let source = if limit.is_some() { SHEET } else { NO_LIMIT };
    let measured = measured.shown_as(Kind::Length);
    Worn {
        what: "thickness of the element",
        measured,
        new: new.map(|new| new.shown_as(Kind::Length)),
        limit,
        wears: Wears::Down,
        source,
    }
}

/// Stretch of a chain as a share of its length, against the sheet's limit.
pub fn stretch(measured: &quantities::Measured<quantities::Ratio>, sheet: &Wear) -> Worn {
    let limit = sheet.stretch.as_ref().map(|limit| limit.shown_as(Kind::Percent));
    let source = if limit.is_some() { SHEET } else { NO_LIMIT };
    let new = Some(Value { kind: Kind::Percent, ..Value::number(0.0) });
    let measured = measured.shown_as(Kind::Percent);
    Worn { what: "stretch of the chain", measured, new, limit, wears: Wears::Up, source }
}

/// Free length of a disc pack off the coupling, against its length when new and what it may differ
/// by: a pack that stays longer or shorter has set.
pub fn pack(measured: &quantities::Measured<Length>, new: Length, may: PackLimit) -> Worn {
    let change = (measured.value() - new).abs();
    let spread = measured.spread().map(Physical::si);
    Worn {
        what: "set of the pack",
        measured: Value { plus_minus: spread, ..Value::new(Kind::Offset, change) },
        new: Some(Value::new(Kind::Offset, Length::default())),
        limit: Some(Value::new(Kind::Offset, may.differ)),
        wears: Wears::Up,
        source: may.source,
    }
}

/// What the free length of one pack may differ from new.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PackLimit {
    /// By so much.
    pub differ: Length,
    /// How that is known.
    pub source: Source,
    /// The axial allowance of the whole coupling and its packs, where the limit was worked out.
    shared: Option<(Length, u32)>,
}

/// The limit of one pack: the sheet's, else an eighth of its part of the coupling's axial allowance.
///
/// ```text
/// l = X/(8·n)
/// ```
/// X axial allowance of the whole coupling · n packs, which share it
/// # Source
/// A rule of our own: the eighth that the gap of a pack is set to.
/// # Example
/// ```
/// use couplings::{sheet::Sheet, wear::pack_limit};
/// let mut sheet = Sheet::default();
/// sheet.allows.running.axial = Some("2 mm".parse()?);
/// let limit = pack_limit(&sheet, 2).unwrap();
/// assert!((limit.differ.value - 0.125e-3).abs() < 1e-12);
/// # Ok::<(), quantities::TextError>(())
/// ```
pub fn pack_limit(sheet: &crate::Sheet, packs: u32) -> Option<PackLimit> {
    if let Some(limit) = &sheet.wear.pack {
        return Some(PackLimit::of_sheet(limit.value()));
    }
    let axial = sheet.allows.running.axial.as_ref()?.value();
    let differ = axial / (8.0 * f64::from(packs.max(1)));
    Some(PackLimit { differ, source: EIGHTH, shared: Some((axial, packs.max(1))) })
}

const EIGHTH: Source = Source::new(
    "an eighth of one pack’s part of the axial allowance, as for its gap",
    "",
    Basis::OwnRule,
);

impl PackLimit {
    /// A limit that the maker gives.
    pub fn of_sheet(differ: Length) -> Self {
        Self { differ, source: SHEET, shared: None }
    }

    /// How it was found, where it is not the sheet's.
    pub fn working(&self) -> Option<Working> {
        let (axial, packs) = self.shared?;
        let limit = Value::new(Kind::Offset, self.differ);
        let working = Working::new("What a pack may have set by", "l = X/(8·n)", limit, EIGHTH);
        Some(
            working
                .term("X", "axial allowance, maker’s sheet", Value::new(Kind::Offset, axial))
                .term("n", "packs that share it", Value::count(packs)),
        )
    }
}

impl Worn {
    fn limits(&self) -> Option<Limits> {
        let limit = self.limit.as_ref()?.si;
        Some(match self.wears {
            Wears::Up => Limits::at_most(limit),
            Wears::Down => Limits::at_least(limit),
        })
    }

    /// The verdict on what was measured; not measured when there is no limit.
    pub fn verdict(&self) -> Verdict {
        self.limits().map_or(Verdict::NotMeasured, |limits| judge(&self.measured, &limits))
    }

    /// What becomes of it.
    pub fn fate(&self) -> Fate {
        match self.verdict() {
            Verdict::Inside => Fate::Reuse,
            Verdict::TooClose => Fate::MeasureAgain,
            Verdict::Outside => Fate::Renew,
            Verdict::NotMeasured => Fate::NoLimit,
        }
    }

    /// How the limit was found, when it was worked out from the new size.
    pub fn limit_working(&self) -> Option<Working> {
        let (new, limit) = self.new.zip(self.limit).filter(|_| self.source == DOUBLED)?;
        let working = Working::new("Backlash to renew at", "l = 2·n", limit, DOUBLED);
        Some(working.term("n", "backlash when new", new))
    }

    /// Time that is left at the pace so far; `None` without a limit, a new size or any wear yet, and
    /// past the limit.
    pub fn time_left(&self, in_service: Time) -> Option<TimeLeft> {
        let (new, limit) = self.new.zip(self.limit)?;
        let (gone, to_go) = (self.measured.si - new.si, limit.si - self.measured.si);
        let left = to_go / gone * in_service.si();
        let sound = gone * to_go > 0.0 && left.is_finite() && left > 0.0;
        sound.then(|| TimeLeft {
            new,
            measured: self.measured,
            limit,
            in_service,
            left: Time::from_si(left),
        })
    }
}

/// Time left at the pace so far.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeLeft {
    /// When new.
    pub new: Value,
    /// As measured.
    pub measured: Value,
    /// The limit.
    pub limit: Value,
    /// Time in service so far.
    pub in_service: Time,
    /// Time left.
    pub left: Time,
}

impl TimeLeft {
    /// How it was found: t = (l − m)/(m − n)·τ.
    pub fn working(&self) -> Working {
        let source = Source::new("straight line from new to now", "", Basis::OwnRule);
        let time = |time| Value::new(Kind::Time, time);
        Working::new("Time left at this pace", "t = (l − m)/(m − n)·s", time(self.left), source)
            .term("l", "limit", self.limit)
            .term("m", "measured", self.measured)
            .term("n", "new", self.new)
            .term("s", "time in service", time(self.in_service))
            .valid("wear at an even pace; worn parts wear faster")
    }
}

/// Unbalance of a sleeve or spacer that worn teeth let hang off centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OffCentre {
    /// Mass that hangs.
    pub mass: Mass,
    /// How far it hangs off centre.
    pub shift: Length,
    /// Speed.
    pub speed: AngularVelocity,
    /// Unbalance, kg·m.
    pub unbalance_kg_m: f64,
    /// The balance quality that it amounts to, as a velocity: shift times speed.
    pub quality: quantities::Velocity,
    /// Force that turns with it.
    pub force: Force,
}

/// What hangs off centre throws.
///
/// ```text
/// U = m·s      F = U·w²
/// ```
/// # Source
/// Bloch and Geitner, *Practical Machinery Management for Process Plants*, vol. 4, p. 296: worn
/// teeth let sleeve and spacer drop off centre.
pub fn off_centre(mass: Mass, shift: Length, speed: AngularVelocity) -> OffCentre {
    let unbalance_kg_m = mass.si() * shift.si();
    OffCentre {
        mass,
        shift,
        speed,
        unbalance_kg_m,
        quality: quantities::Velocity::from_si(shift.si() * speed.si()),
        force: Force::from_si(unbalance_kg_m * speed.si().powi(2)),
    }
}

impl OffCentre {
    /// How the force was found.
    pub fn working(&self) -> Working {
        let title = "Bloch and Geitner, Practical Machinery Management for Process Plants, vol. 4";
        let source = Source::new(title, "p. 296", Basis::Read);
        let result = Value::new(Kind::Force, self.force);
        Working::new("Force of what hangs off centre", "F = m·s·w²", result, source)
            .term("m", "mass that hangs", Value::new(Kind::Mass, self.mass))
            .term("s", "off centre by", Value::new(Kind::Offset, self.shift))
            .term("w", "speed, as an angle per time", Value::new(Kind::Speed, self.speed))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantities::Measured;
    use uom::si::angular_velocity::revolution_per_minute;

    fn length(text: &str) -> Measured<Length> {
        text.parse().unwrap()
    }

    /// Twice the backlash of new is common practice; the sheet's own limit goes before it.
    #[test]
    fn teeth_are_renewed_at_twice_their_backlash() {
        let new = Wear { new_backlash: Some(length("0.30 mm")), ..Wear::default() };
        let fate = |text: &str, wear: &Wear| backlash(&length(text), wear).fate();
        assert_eq!(fate("0.48 ± 0.03 mm", &new), Fate::Reuse);
        assert_eq!(fate("0.59 ± 0.03 mm", &new), Fate::MeasureAgain);
        assert_eq!(fate("0.70 ± 0.03 mm", &new), Fate::Renew);
        let sheet = Wear { backlash: Some(length("0.45 mm")), ..new };
        assert_eq!(fate("0.48 ± 0.02 mm", &sheet), Fate::Renew);
        assert_eq!(fate("0.48 mm", &Wear::default()), Fate::NoLimit);
    }

    #[test]
    fn bushes_wear_down_and_packs_take_a_set() {
        let wear = Wear { element: Some(length("9.0 mm")), ..Wear::default() };
        assert_eq!(element(&length("9.4 ± 0.1 mm"), &wear, None).fate(), Fate::Reuse);
        assert_eq!(element(&length("8.6 ± 0.1 mm"), &wear, None).fate(), Fate::Renew);
        let new = Length::from_si(8.5e-3);
        let mut sheet = crate::Sheet::default();
        sheet.wear.pack = Some(length("0.1 mm"));
        let may = pack_limit(&sheet, 2).unwrap();
        assert_eq!(pack(&length("8.45 ± 0.02 mm"), new, may).fate(), Fate::Reuse);
        assert_eq!(pack(&length("8.20 ± 0.02 mm"), new, may).fate(), Fate::Renew);
    }

    /// By hand: 2 mm of the whole coupling are 1 mm for each of two packs, and an eighth of that is
    /// 0.125 mm; one pack alone may set by 0.25 mm. The sheet's own limit comes first.
    #[test]
    fn packs_share_the_axial_allowance() {
        let mut sheet = crate::Sheet::default();
        assert_eq!(pack_limit(&sheet, 2), None);
        sheet.allows.running.axial = Some(length("2 mm"));
        let limit = |sheet: &crate::Sheet, packs| pack_limit(sheet, packs).unwrap();
        assert!((limit(&sheet, 2).differ.si() - 0.125e-3).abs() < 1e-12);
        assert!((limit(&sheet, 1).differ.si() - 0.25e-3).abs() < 1e-12);
        assert_eq!(limit(&sheet, 2).source.basis, Basis::OwnRule);
        sheet.wear.pack = Some(length("0.3 mm"));
        let own = limit(&sheet, 2);
        assert!((own.differ.si() - 0.3e-3).abs() < 1e-12 && own.working().is_none());
        assert_eq!(own.source.basis, Basis::MakersSheet);
    }

    #[test]
    fn time_left_follows_the_pace() {
        let wear = Wear { new_backlash: Some(length("0.30 mm")), ..Wear::default() };
        let years = |years: f64| Time::from_si(years * 3.156e7);
        let left = backlash(&length("0.40 mm"), &wear).time_left(years(3.0)).unwrap();
        assert!((left.left.si() / years(6.0).si() - 1.0).abs() < 1e-12);
        assert!(backlash(&length("0.70 mm"), &wear).time_left(years(3.0)).is_none());
        assert!(backlash(&length("0.30 mm"), &wear).time_left(years(3.0)).is_none());
    }

    /// By hand: 40 kg hanging 0.15 mm off centre at 3600 rpm is 6000 g·mm, G 56.5487 and 852.734 N.
    #[test]
    fn a_sleeve_that_hangs_throws() {
        let speed = AngularVelocity::new::<revolution_per_minute>(3600.0);
        let found = off_centre(Mass::from_si(40.0), Length::from_si(0.15e-3), speed);
        assert!((found.unbalance_kg_m * 1e6 - 6000.0).abs() <= 0.5);
        assert!((found.quality.si() * 1e3 - 56.5487).abs() <= 0.5e-4);
        assert!((found.force.si() - 852.734).abs() <= 0.0005);
    }
}
