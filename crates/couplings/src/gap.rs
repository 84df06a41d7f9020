//! The gap: what it should be, what it is at four points, how to bring it back.
//!
//! Not here: what heat does to it and the end float of sleeve-bearing motors (`lineup::axial`),
//! the angle of the shafts (`lineup`).

use mechanics::Estimate;
use quantities::{
    Angle, Basis, Kind, Length, Limits, Measured, Physical, Source, Value, Verdict, Working, judge,
};

use tables::limits::RIGID_FLANGE_FEELER;

use crate::Sheet;
use crate::kind::{GapRule, Planes};

/// What the gap is to be, cold or hot as the sheet means it.
#[derive(Clone, Debug, PartialEq)]
pub struct Target {
    /// The gap.
    pub gap: Length,
    /// The limits that it may lie between; open when neither sheet nor kind gives a tolerance.
    pub limits: Limits,
    /// The field of the sheet that it comes from, or what was added up.
    pub from: &'static str,
    /// How the tolerance is known.
    pub source: Source,
}

/// Why there is no target.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TargetError {
    /// A figure that the sheet lacks: the field's name.
    #[error("the sheet has no {0}")]
    Missing(&'static str),
}

const SHEET: Source = Source::new("maker’s sheet", "", Basis::MakersSheet);
const EIGHTH: Source = Source::common_practice(
    "an eighth of the axial allowance to each side, where a sheet gives no tolerance for a pack",
);

/// The gap that the sheet asks for.
///
/// Between hub seats it is `gap.hub_faces` when the sheet gives it, else the packs' free length
/// with the spacer's, else the distance between shaft ends; a tolerance that is missing there is an
/// eighth of the axial allowance.
///
/// # Errors
/// [`TargetError::Missing`] names the figure that would settle it.
/// # Example
/// ```
/// use couplings::{Sheet, gap, kind::{GapRule, Planes}};
/// let mut sheet = Sheet::default();
/// let missing = gap::target(&sheet, GapRule::HubFaces, Planes::Two).unwrap_err();
/// assert_eq!(missing.to_string(), "the sheet has no gap.hub_faces");
/// sheet.gap.hub_faces = Some("3.2 ± 0.4 mm".parse()?);
/// let target = gap::target(&sheet, GapRule::HubFaces, Planes::Two).unwrap();
/// assert!((target.limits.greatest.unwrap() - 3.6e-3).abs() < 1e-12);
/// # Ok::<(), quantities::TextError>(())
/// ```
pub fn target(sheet: &Sheet, rule: GapRule, planes: Planes) -> Result<Target, TargetError> {
    let (gap, dbse) = (&sheet.gap.hub_faces, &sheet.gap.dbse);
    match rule {
        GapRule::HubFaces => gap
            .as_ref()
            .map(|gap| written(sheet, gap, "gap.hub_faces"))
            .ok_or(TargetError::Missing("gap.hub_faces")),
        GapRule::Dbse => dbse
            .as_ref()
            .map(|dbse| written(sheet, dbse, "gap.dbse"))
            .or_else(|| gap.as_ref().map(|gap| written(sheet, gap, "gap.hub_faces")))
            .ok_or(TargetError::Missing("gap.dbse")),
        GapRule::SeatsEqualPack => seats(sheet, planes).map(|seats| pack_tolerance(sheet, seats)),
        GapRule::FacesTouch => Ok(Target {
            gap: Length::default(),
            limits: Limits::at_most(RIGID_FLANGE_FEELER.most.si()),
            from: "faces touch",
            source: RIGID_FLANGE_FEELER.source,
        }),
    }
}

/// The distance between seats: as written, else added up, else that of the shaft ends.
fn seats(sheet: &Sheet, planes: Planes) -> Result<Target, TargetError> {
    if let Some(gap) = &sheet.gap.hub_faces {
        return Ok(written(sheet, gap, "gap.hub_faces"));
    }
    added_up(sheet, planes).or_else(|missing| {
        let flush = "gap.dbse, hubs flush with the shaft ends";
        sheet.gap.dbse.as_ref().map(|dbse| written(sheet, dbse, flush)).ok_or(missing)
    })
}

fn written(sheet: &Sheet, gap: &Measured<Length>, from: &'static str) -> Target {
    let si = gap.value().si();
    let limits = match (&sheet.gap.least, &sheet.gap.greatest, gap.spread()) {
        (None, None, Some(spread)) => Limits::between(si - spread.si(), si + spread.si()),
        (least, greatest, _) => Limits {
            least: least.as_ref().map(|least| least.value().si()),
            greatest: greatest.as_ref().map(|greatest| greatest.value().si()),
        },
    };
    Target { gap: gap.value(), limits, from, source: SHEET }
}

fn added_up(sheet: &Sheet, planes: Planes) -> Result<Target, TargetError> {
    let missing = |field| TargetError::Missing(field);
    let sizes = &sheet.sizes;
    let pack = sizes.pack_thickness.as_ref().ok_or(missing("sizes.pack_thickness"))?.value();
    let (gap, from) = if planes == Planes::Two {
        let spacer = sizes.spacer_length.as_ref().ok_or(missing("sizes.spacer_length"))?.value();
        (spacer + pack * 2.0, "sizes.spacer_length and two of sizes.pack_thickness")
    } else {
        (pack, "sizes.pack_thickness")
    };
    let limits = Limits {
        least: sheet.gap.least.as_ref().map(|least| least.value().si()),
        greatest: sheet.gap.greatest.as_ref().map(|greatest| greatest.value().si()),
    };
    Ok(Target { gap, limits, from, source: SHEET })
}

fn pack_tolerance(sheet: &Sheet, target: Target) -> Target {
    let axial = sheet.allows.running.axial.as_ref().map(|axial| axial.value().si() / 8.0);
    match axial {
        Some(eighth) if target.limits == Limits::default() => {
            let si = target.gap.si();
            let limits = Limits::between(si - eighth, si + eighth);
            Target { limits, source: EIGHTH, ..target }
        }
        _ => target,
    }
}

/// A gap read at points round the hubs.
#[derive(Clone, Debug, PartialEq)]
pub struct Readings {
    /// The readings, with the `±` of each.
    pub points: Vec<Estimate<Length>>,
    /// Their mean, with its `±`.
    pub mean: Estimate<Length>,
    /// Widest less narrowest, with its `±`.
    pub spread: Estimate<Length>,
}

/// The most that a gap may differ round the hubs: the angle that is allowed, over their faces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpreadMost {
    /// The angle that is allowed.
    pub angle: Angle,
    /// Diameter of the faces that the gap is read between.
    pub faces: Length,
    /// The most.
    pub most: Length,
}

/// The most that a gap may differ round the hubs for an angle that is allowed.
///
/// ```text
/// s = D·a
/// ```
/// # Valid
/// Small angles; readings at the rim of the faces.
/// # Errors
/// [`ShareError`](crate::share::ShareError) for an angle or a diameter not above zero.
/// # Source
/// Geometry; a, in radians, for its tangent.
/// # Example
/// ```
/// use couplings::gap::spread_most;
/// use quantities::{Angle, Length, Physical};
/// let most = spread_most(Angle::from_si(1.0e-3), Length::from_si(0.140))?;
/// assert!((most.most.value - 0.14e-3).abs() < 1e-12);
/// # Ok::<(), couplings::share::ShareError>(())
/// ```
pub fn spread_most(angle: Angle, faces: Length) -> Result<SpreadMost, crate::share::ShareError> {
    let sound = |si: f64| si.is_finite() && si > 0.0;
    for (what, si) in [("angle allowed", angle.si()), ("diameter of the faces", faces.si())] {
        if !sound(si) {
            return Err(crate::share::ShareError::Borne { what, si });
        }
    }
    Ok(SpreadMost { angle, faces, most: faces * angle.si() })
}

impl SpreadMost {
    /// How it was found.
    pub fn working(&self, source: Source) -> Working {
        let most = Value::new(Kind::Gap, self.most);
        Working::new("Widest less narrowest, at most", "s = D·a", most, source)
            .term("D", "diameter of the faces", Value::new(Kind::Length, self.faces))
            .term("a", "angle that is allowed", Value::new(Kind::Slope, self.angle))
            .valid("read at the rim of the faces")
    }
}

/// Why readings give no gap.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum ReadingError {
    /// Fewer than two points tell nothing of the spread.
    #[error("{0} points; at least two are needed")]
    TooFew(usize),
    /// A point that is no number, or has a `±` below zero.
    #[error("point {index}: no number, or a ± below zero")]
    NotANumber {
        /// Its place, from 0.
        index: usize,
    },
}

/// Mean and spread of a gap read at points round the hubs, evenly spaced.
///
/// ```text
/// mean = Σg/n        spread = widest − narrowest
/// ```
/// # Valid
/// An even number of evenly spaced points, so that an angle between the faces cancels in the mean.
/// # Errors
/// [`ReadingError`] for fewer than two points, or one that is no number.
pub fn readings(points: &[Estimate<Length>]) -> Result<Readings, ReadingError> {
    if points.len() < 2 {
        return Err(ReadingError::TooFew(points.len()));
    }
    let sound = |point: &Estimate<Length>| {
        point.value.is_finite() && point.plus_minus.is_finite() && point.plus_minus.si() >= 0.0
    };
    if let Some(index) = points.iter().position(|point| !sound(point)) {
        return Err(ReadingError::NotANumber { index });
    }
    let mut sorted = points.to_vec();
    sorted.sort_by(|a, b| a.value.si().total_cmp(&b.value.si()));
    let spread = sorted[sorted.len() - 1].less(&sorted[0]);
    Ok(Readings { points: points.to_vec(), mean: mean(points), spread })
}

fn mean(points: &[Estimate<Length>]) -> Estimate<Length> {
    let count = points.iter().fold(0.0, |count, _| count + 1.0);
    let sum: f64 = points.iter().map(|point| point.value.si()).sum();
    let squares: f64 = points.iter().map(|point| point.plus_minus.si().powi(2)).sum();
    Estimate::new(Length::from_si(sum / count), Length::from_si(squares.sqrt() / count))
}

impl Readings {
    /// Whether the mean lies within the limits; not measured when there are none.
    pub fn verdict(&self, target: &Target) -> Verdict {
        if target.limits == Limits::default() {
            return Verdict::NotMeasured;
        }
        judge(&self.mean.shown(Kind::Gap), &target.limits)
    }

    /// How the mean was found.
    pub fn mean_working(&self) -> Working {
        let formula = match self.points.len() {
            2 => "m = (g1 + g2)/2",
            3 => "m = (g1 + g2 + g3)/3",
            4 => "m = (g1 + g2 + g3 + g4)/4",
            _ => "m = Σg/n",
        };
        self.lettered("Mean gap", formula, self.mean)
    }

    /// How the spread was found.
    pub fn spread_working(&self) -> Working {
        self.lettered("Spread of the gap", "s = widest − narrowest", self.spread)
    }

    fn lettered(
        &self,
        name: &'static str,
        formula: &'static str,
        result: Estimate<Length>,
    ) -> Working {
        const LETTERS: [&str; 8] = ["g1", "g2", "g3", "g4", "g5", "g6", "g7", "g8"];
        let source = Source::new("readings round the hubs", "", Basis::Computed);
        let working = Working::new(name, formula, result.shown(Kind::Gap), source);
        self.points.iter().zip(LETTERS).enumerate().fold(
            working,
            |working, (at, (point, letter))| {
                working.term(letter, format!("gap at point {}", at + 1), point.shown(Kind::Gap))
            },
        )
    }
}

/// How far a gap has to change to be as it was recorded; positive opens it.
///
/// ```text
/// c = r − f
/// ```
pub fn restore(recorded: &Estimate<Length>, found: &Estimate<Length>) -> Restore {
    Restore { recorded: *recorded, found: *found, change: recorded.less(found) }
}

/// Bringing a gap back to its record.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Restore {
    /// As recorded.
    pub recorded: Estimate<Length>,
    /// As found now.
    pub found: Estimate<Length>,
    /// Change that brings it back; positive opens.
    pub change: Estimate<Length>,
}

impl Restore {
    /// How the change was found.
    pub fn working(&self) -> Working {
        let source = Source::new("the record of this job", "", Basis::Entered);
        Working::new(
            "Change that restores the gap",
            "c = r − f",
            self.change.shown(Kind::Gap),
            source,
        )
        .term("r", "gap as recorded", self.recorded.shown(Kind::Gap))
        .term("f", "gap as it is", self.found.shown(Kind::Gap))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(mm: f64) -> Length {
        Length::from_si(mm / 1e3)
    }

    fn read(points: [f64; 4]) -> Readings {
        readings(&points.map(|point| Estimate::new(mm(point), mm(0.02)))).unwrap()
    }

    /// US Army TM 55-1905-223-24-12, grid coupling: gap 0.125 in, widest less narrowest at most
    /// 0.010 in.
    #[test]
    fn four_points_give_mean_and_spread() {
        let found = read([3.18, 3.25, 3.30, 3.23]);
        assert!((found.mean.value.si() - 3.24e-3).abs() < 1e-12);
        assert!((found.mean.plus_minus.si() - 0.01e-3).abs() < 1e-12);
        assert!((found.spread.value.si() - 0.12e-3).abs() < 1e-12);
        assert!(found.spread.value.si() < 0.010 * 0.0254);
        assert!(readings(&[Estimate::exact(mm(3.0))]).is_err());
        assert!(readings(&[Estimate::exact(mm(3.0)), Estimate::exact(mm(f64::NAN))]).is_err());
        assert!(found.mean_working().put_in(quantities::System::Metric).starts_with("(3.18 mm +"));
    }

    fn sheet(text: [(&str, &str); 4]) -> Sheet {
        let mut sheet = Sheet::default();
        for (field, text) in text {
            let length = (!text.is_empty()).then(|| text.parse().unwrap());
            match field {
                "faces" => sheet.gap.hub_faces = length,
                "pack" => sheet.sizes.pack_thickness = length,
                "spacer" => sheet.sizes.spacer_length = length,
                _ => sheet.allows.running.axial = length,
            }
        }
        sheet
    }

    /// An eighth of the axial allowance is what one instruction for disc packs gives (common
    /// practice).
    #[test]
    fn seats_stand_apart_by_packs_and_spacer() {
        let bare = [("faces", ""), ("pack", "8.5 mm"), ("spacer", "123.0 mm"), ("axial", "2.0 mm")];
        let two = target(&sheet(bare), GapRule::SeatsEqualPack, Planes::Two).unwrap();
        assert!((two.gap.si() - 0.140).abs() < 1e-12);
        assert!((two.limits.least.unwrap() - 0.139_75).abs() < 1e-12);
        assert!((two.limits.greatest.unwrap() - 0.140_25).abs() < 1e-12);
        let one = target(&sheet(bare), GapRule::SeatsEqualPack, Planes::One).unwrap();
        assert!((one.gap.si() - 0.0085).abs() < 1e-12);
        let given =
            [("faces", "140.2 ± 0.3 mm"), ("pack", "8.5 mm"), ("spacer", ""), ("axial", "2.0 mm")];
        let given = target(&sheet(given), GapRule::SeatsEqualPack, Planes::Two).unwrap();
        assert!((given.limits.greatest.unwrap() - 0.1405).abs() < 1e-12);
        let short = [("faces", ""), ("pack", "8.5 mm"), ("spacer", ""), ("axial", "")];
        assert_eq!(
            target(&sheet(short), GapRule::SeatsEqualPack, Planes::Two),
            Err(TargetError::Missing("sizes.spacer_length"))
        );
    }

    #[test]
    fn without_a_tolerance_there_is_no_verdict() {
        let bare = [("faces", "3.2 mm"), ("pack", ""), ("spacer", ""), ("axial", "")];
        let open = target(&sheet(bare), GapRule::HubFaces, Planes::Two).unwrap();
        assert_eq!(read([3.2; 4]).verdict(&open), Verdict::NotMeasured);
        let touch = target(&sheet(bare), GapRule::FacesTouch, Planes::None).unwrap();
        assert_eq!(read([0.0, 0.01, 0.0, 0.0]).verdict(&touch), Verdict::Inside);
        assert_eq!(read([0.3; 4]).verdict(&touch), Verdict::Outside);
    }

    /// By hand: 0.25° across 200 mm is 0.873 mm.
    #[test]
    fn an_angle_opens_the_gap_at_the_rim() {
        let most = spread_most(Angle::from_si(0.25_f64.to_radians()), mm(200.0)).unwrap();
        assert!((most.most.si() - 0.873e-3).abs() <= 0.5e-6);
        assert!(spread_most(Angle::from_si(0.0), mm(200.0)).is_err());
        assert!(spread_most(Angle::from_si(1e-3), mm(f64::NAN)).is_err());
    }

    proptest::proptest! {
        /// Turning one shaft moves every point of the gap round; mean and spread stay.
        #[test]
        fn turning_round_changes_nothing(a in 1.0..9.0_f64, b in 1.0..9.0_f64, c in 1.0..9.0_f64, d in 1.0..9.0_f64) {
            let (one, other) = (read([a, b, c, d]), read([c, d, a, b]));
            proptest::prop_assert!((one.mean.value.si() - other.mean.value.si()).abs() < 1e-15);
            proptest::prop_assert_eq!(one.spread, other.spread);
        }
    }
}
