//! Is the line-up good enough? Offset, slope, and the angles at flex planes, against levels.
//!
//! Levels are data: a site's rule, a rule by speed, the coupling's own allowance. Each has an aim,
//! a limit, or both. What is judged is the deviation from the target; vertical and sideways stand
//! apart, each with its `±`. Of several levels that apply, the strictest counts and is named.
//!
//! A difference of gaps across a face is a slope: gap over diameter.

use quantities::{
    Angle, Basis, Kind, Length, Limits, Physical, Source, Value, Verdict, Working, both, judge,
    probability_inside,
};

use crate::line::Line;
use crate::{Layout, Plane};

/// What a level limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Measure {
    /// Offset of the two shafts at the reference plane.
    Offset,
    /// Slope of the one against the other.
    Slope,
    /// Angle at each flex plane of a spacer.
    FlexAngle,
}

impl Measure {
    fn kind(self) -> Kind {
        match self {
            Self::Offset => Kind::Offset,
            Self::Slope | Self::FlexAngle => Kind::Slope,
        }
    }
}

/// A level of one measure; make it with [`Level::offset`], [`Level::slope`] or [`Level::flex_angle`].
#[derive(Clone, Debug, PartialEq)]
pub struct Level {
    /// Whose: "site rule", "coupling's own".
    pub name: String,
    /// What it limits.
    pub measure: Measure,
    /// What to work towards, in SI.
    aim: Option<f64>,
    /// What to stay within, in SI.
    limit: Option<f64>,
    /// Where it comes from.
    pub source: Source,
}

/// Why nothing can be judged.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum ToleranceError {
    /// A level that is no number or not positive, or an aim wider than its limit.
    #[error("{}", no_level(*measure, *aim, *limit))]
    Level {
        /// What it would limit.
        measure: Measure,
        /// The aim, in SI.
        aim: Option<f64>,
        /// The limit, in SI.
        limit: Option<f64>,
    },
    /// A level for flex planes, and a layout without them.
    #[error(
        "a level for the angle at flex planes, and no spacer between two of them; give both flex planes, or limit offset and slope instead"
    )]
    NoSpool,
}

fn no_level(measure: Measure, aim: Option<f64>, limit: Option<f64>) -> String {
    let what = match measure {
        Measure::Offset => "offset",
        Measure::Slope => "slope",
        Measure::FlexAngle => "flex angle",
    };
    let shown = |si: Option<f64>| match (measure, si) {
        (_, None) => "nothing".to_owned(),
        (Measure::Offset, Some(si)) => both(&Length::from_si(si)),
        (Measure::Slope | Measure::FlexAngle, Some(si)) => both(&Angle::from_si(si)),
    };
    format!(
        "a level on the {what} with {} as aim and {} as limit; expected either above nothing, and \
         the aim no wider than the limit",
        shown(aim),
        shown(limit)
    )
}

impl Level {
    /// On the offset at the reference plane.
    ///
    /// # Errors
    /// [`ToleranceError::Level`]; so for all makers of levels.
    pub fn offset(
        name: impl Into<String>,
        aim: Option<Length>,
        limit: Option<Length>,
        source: Source,
    ) -> Result<Self, ToleranceError> {
        let si = |length: Option<Length>| length.map(Physical::si);
        Self::new(name.into(), Measure::Offset, si(aim), si(limit), source)
    }

    /// On the slope; a gap difference over its diameter is one.
    ///
    /// # Errors
    /// [`ToleranceError::Level`].
    pub fn slope(
        name: impl Into<String>,
        aim: Option<Angle>,
        limit: Option<Angle>,
        source: Source,
    ) -> Result<Self, ToleranceError> {
        let si = |angle: Option<Angle>| angle.map(Physical::si);
        Self::new(name.into(), Measure::Slope, si(aim), si(limit), source)
    }

    /// On the angle at each flex plane: offset at the other plane over the distance between them.
    ///
    /// # Errors
    /// [`ToleranceError::Level`].
    pub fn flex_angle(
        name: impl Into<String>,
        aim: Option<Angle>,
        limit: Option<Angle>,
        source: Source,
    ) -> Result<Self, ToleranceError> {
        let si = |angle: Option<Angle>| angle.map(Physical::si);
        Self::new(name.into(), Measure::FlexAngle, si(aim), si(limit), source)
    }

    fn new(
        name: String,
        measure: Measure,
        aim: Option<f64>,
        limit: Option<f64>,
        source: Source,
    ) -> Result<Self, ToleranceError> {
        let positive = [aim, limit].into_iter().flatten().all(|si| si > 0.0 && si.is_finite());
        let ordered = aim.zip(limit).is_none_or(|(aim, limit)| aim <= limit);
        if !positive || !ordered || (aim.is_none() && limit.is_none()) {
            return Err(ToleranceError::Level { measure, aim, limit });
        }
        Ok(Self { name, measure, aim, limit, source })
    }

    /// What to work towards, as a value to show.
    pub fn aim(&self) -> Option<Value> {
        self.aim.map(|si| self.value(si))
    }

    /// What to stay within, as a value to show.
    pub fn limit(&self) -> Option<Value> {
        self.limit.map(|si| self.value(si))
    }

    /// The limit in SI, or the aim where there is none.
    pub(crate) fn widest(&self) -> f64 {
        self.limit.or(self.aim).unwrap_or(f64::INFINITY)
    }

    /// The limit, or the aim where there is none, as a value to show.
    pub fn shown(&self) -> Value {
        self.value(self.widest())
    }

    fn value(&self, si: f64) -> Value {
        Value { kind: self.measure.kind(), si, plus_minus: None }
    }
}

/// Where along the coupling a deviation was judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// The reference plane, for an offset; the whole coupling, for a slope.
    Coupling,
    /// The flex plane at the driver's end.
    DriverEnd,
    /// The flex plane at the driven machine's end.
    DrivenEnd,
}

/// One deviation against the strictest levels.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// In this plane.
    pub plane: Plane,
    /// Here.
    pub place: Place,
    /// Of this measure.
    pub measure: Measure,
    /// Deviation from the target, signed, with its `±`.
    pub deviation: Value,
    /// The level with the strictest limit, and the verdict by it.
    pub by_limit: Option<(Level, Verdict)>,
    /// The level with the strictest aim, and the verdict by it.
    pub by_aim: Option<(Level, Verdict)>,
}

impl Judgement {
    /// The verdict by the limit, or by the aim where no level has a limit.
    pub fn verdict(&self) -> Verdict {
        let by = self.by_limit.as_ref().or(self.by_aim.as_ref());
        by.map_or(Verdict::NotMeasured, |(_, verdict)| *verdict)
    }

    /// What was judged: "offset, vertical", "angle at the driver's end, sideways".
    pub fn words(&self) -> String {
        let what = match (self.measure, self.place) {
            (Measure::Offset, _) => "offset",
            (Measure::Slope, _) => "slope",
            (Measure::FlexAngle, Place::DrivenEnd) => "angle at the driven machine’s end",
            (Measure::FlexAngle, _) => "angle at the driver’s end",
        };
        format!("{what}, {}", self.plane.words())
    }

    /// The level it was judged by: the strictest limit, or the strictest aim without one.
    pub fn level(&self) -> Option<&Level> {
        self.by_limit.as_ref().or(self.by_aim.as_ref()).map(|(level, _)| level)
    }

    /// Size of the deviation over the limit (over the aim where there is no limit).
    pub fn ratio(&self) -> f64 {
        self.level().map_or(0.0, |level| self.deviation.si.abs() / level.widest())
    }

    /// The chance that the true deviation lies within the level, by its `±`; `None` without a level.
    pub fn chance(&self) -> Option<f64> {
        let widest = self.level()?.widest();
        let known = f64::from(u8::from(self.deviation.si.abs() <= widest));
        Some(
            probability_inside(&self.deviation, &Limits::between(-widest, widest)).unwrap_or(known),
        )
    }

    /// How it was judged.
    pub fn working(&self) -> Working {
        let level = self.level();
        let source = level.map_or(Source::new("No level given", "", Basis::Entered), |l| l.source);
        let name = match self.place {
            Place::Coupling => "deviation from the target",
            Place::DriverEnd => "angle at the driver’s flex plane, less its target",
            Place::DrivenEnd => "angle at the driven machine’s flex plane, less its target",
        };
        let working = Working::new(
            format!("Part of the level used up, {}", self.plane.words()),
            "r = |d|/T",
            Value { kind: Kind::Percent, si: self.ratio(), plus_minus: None },
            source,
        )
        .term("d", name, self.deviation);
        match level {
            Some(level) => working.term("T", level.name.clone(), level.shown()),
            None => working,
        }
    }
}

/// The chance that all of them lie within their levels at once is at least this: one less the sum of
/// the chances that each does not. Zero at least; `None` when nothing is judged.
pub fn chance_of_all(judgements: &[Judgement]) -> Option<f64> {
    let chances: Vec<f64> = judgements.iter().filter_map(Judgement::chance).collect();
    let outside: f64 = chances.iter().map(|chance| 1.0 - chance).sum();
    (!chances.is_empty()).then_some((1.0 - outside).max(0.0))
}

/// The worst word of all, and not measured when there is nothing.
pub fn worst(judgements: &[Judgement]) -> Verdict {
    judgements.iter().map(Judgement::verdict).max().unwrap_or(Verdict::NotMeasured)
}

/// Judges a deviation (position minus target) in both planes against all levels.
///
/// # Errors
/// [`ToleranceError::NoSpool`] for a level on flex angles without flex planes.
/// # Example
/// ```
/// use lineup::line::Line;
/// use lineup::tolerance::{Level, judge_line, worst};
/// use lineup::{Layout, Machine};
/// use quantities::{Length, Physical, Source, Verdict};
/// let level = Level::offset("site rule", None, Some(Length::from_si(6e-5)), Source::common_practice("site"))?;
/// let middle = Length::from_si(0.0);
/// let layout = Layout { moving: Machine::Driver, reference: middle, spool: None };
/// let judged = judge_line(&layout, &Line::zero(middle), &[level])?;
/// assert_eq!(worst(&judged), Verdict::Inside);
/// # Ok::<(), lineup::tolerance::ToleranceError>(())
/// ```
pub fn judge_line(
    layout: &Layout,
    deviation: &Line,
    levels: &[Level],
) -> Result<Vec<Judgement>, ToleranceError> {
    let mut judged = Vec::new();
    for plane in Plane::BOTH {
        for (place, measure) in places(levels) {
            let form = form(layout, place, measure).ok_or(ToleranceError::NoSpool)?;
            let shift = deviation.reference().si() - layout.reference.si();
            let (si, u) = deviation.form(plane, [form[0], form[1] - form[0] * shift]);
            let deviation = Value { kind: measure.kind(), si, plus_minus: Some(2.0 * u) };
            let strictest = |of: fn(&Level) -> Option<f64>| {
                let with = levels.iter().filter(|level| level.measure == measure);
                let with = with.filter_map(|level| of(level).map(|si| (si, level)));
                with.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(si, level)| {
                    (level.clone(), judge(&deviation, &Limits::between(-si, si)))
                })
            };
            let (by_limit, by_aim) = (strictest(|level| level.limit), strictest(|level| level.aim));
            judged.push(Judgement { plane, place, measure, deviation, by_limit, by_aim });
        }
    }
    Ok(judged)
}

/// What the levels ask to be looked at.
fn places(levels: &[Level]) -> Vec<(Place, Measure)> {
    let all = [
        (Place::Coupling, Measure::Offset),
        (Place::Coupling, Measure::Slope),
        (Place::DriverEnd, Measure::FlexAngle),
        (Place::DrivenEnd, Measure::FlexAngle),
    ];
    let asked = |measure| levels.iter().any(|level| level.measure == measure);
    all.into_iter().filter(|(_, measure)| asked(*measure)).collect()
}

/// A measure as a form of (offset at the layout's reference plane, slope) of moving minus fixed.
pub(crate) fn form(layout: &Layout, place: Place, measure: Measure) -> Option<[f64; 2]> {
    let flex = |sign: f64, x: f64, length: f64| {
        let per_length = sign * layout.sign() / length;
        [per_length, per_length * (x - layout.reference.si())]
    };
    match (measure, place) {
        (Measure::Offset, _) => Some([1.0, 0.0]),
        (Measure::Slope, _) => Some([0.0, 1.0]),
        (Measure::FlexAngle, Place::DrivenEnd) => {
            layout.flex_planes().map(|(x1, x2)| flex(-1.0, x1, x2 - x1))
        }
        (Measure::FlexAngle, _) => layout.flex_planes().map(|(x1, x2)| flex(1.0, x2, x2 - x1)),
    }
}

/// Every level as a ratio: forms that give 1 where the widest of its level is reached, the
/// strictest of each measure only.
pub(crate) fn ratio_forms(
    layout: &Layout,
    levels: &[Level],
) -> Result<Vec<[f64; 2]>, ToleranceError> {
    places(levels)
        .into_iter()
        .map(|(place, measure)| {
            let of = |bound: fn(&Level) -> Option<f64>| {
                let with = levels.iter().filter(|level| level.measure == measure);
                with.filter_map(bound).reduce(f64::min)
            };
            let widest = of(|level| level.limit).or(of(|level| level.aim));
            let widest = widest.unwrap_or(f64::INFINITY);
            let form = form(layout, place, measure).ok_or(ToleranceError::NoSpool)?;
            Ok(form.map(|part| part / widest))
        })
        .collect()
}
