//! Where the moving machine's shaft lies against the fixed one's, from whatever was measured.
//!
//! Every observation is a linear form of four unknowns, the offsets (y, z) of moving minus fixed
//! at the reference plane and the slopes: a rim dial sees an offset at its plane, a face dial a
//! slope times half its swing, a straightedge an offset. One generalised least squares takes them
//! all, so reverse rim, rim and face, faces across a spacer and any mixture are one calculation.
//!
//! Readings of one sweep are first fitted to their circle (nothing is lost by that). If the sweeps scatter
//! more than their stated uncertainty allows, that uncertainty is raised to the scatter; if
//! observations then disagree more than theirs allow, the covariance is raised once more.
//! Dials on one bracket share the error of its sag. The `±` of a stem's place, or of a face's swing,
//! counts by the slope that it looks at.
//!
//! What was raised by scatter is known from few readings only, so a 95 % interval takes Student's
//! factor there instead of 2. The effective degrees of freedom are those of Welch and Satterthwaite:
//! the stated part counts as well known, the part that scatter added has the degrees of the scatter,
//! so the factor grows from 2 without a jump.
//!
//! ```text
//! ν = (s·d)⁴ / ( (s² − 1)²/νs + s⁴·(d² − 1)²/νd )
//! ```
//! s scatter and d disagreement over what was stated, each at least 1; the covariance that a
//! [`Line`] carries is that of a normal distribution with the same 95 % interval.

use quantities::{Angle, Basis, Kind, Length, Physical, Source, Value, Working};

pub use crate::observation::{FEELERS_M, Gap, Observation, Offset, STRAIGHTEDGE_M, Slope};

use crate::budget::student_95;
use crate::dial::DialError;
use crate::line::Line;
use crate::linear::{Equation, Solution, generalised, quadratic};
use crate::observation::{Row, covariance, rows};
use crate::{Estimate, Layout, Machine, Plane};

/// Why there is no position.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PositionError {
    /// A sweep is no sweep.
    #[error("observation {}: {why}", index + 1)]
    Dial {
        /// Which one, counted from zero.
        index: usize,
        /// What is wrong with it.
        why: DialError,
    },
    /// A number that is none, a `±` of zero, or a body measured against itself.
    #[error("observation {}: not a number, no ± above nothing, or one shaft measured against itself", .0 + 1)]
    NotAnObservation(usize),
    /// Something touches a spool, and the layout has none.
    #[error("observation {}: it touches a spool, and the layout names no flex planes; give both", .0 + 1)]
    NoSpool(usize),
    /// Together they leave an offset or a slope open.
    #[error(
        "the readings do not fix offset and slope both up and down and sideways; add a face dial or a second rim dial, or readings at more clock places"
    )]
    Undetermined,
}

/// The position of the moving machine's shaft, and how well it is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Position {
    /// Where things are, and which machine moves.
    pub layout: Layout,
    /// Moving minus fixed.
    pub line: Line,
    /// By how much the scatter of the sweeps exceeds their stated uncertainty; at least 1.
    pub scatter: f64,
    /// By how much observations disagree beyond their uncertainty; at least 1.
    pub disagreement: f64,
    /// The factor that makes a 95 % interval: 2, or Student's where scatter rules.
    pub factor: f64,
    /// χ² of the observations against each other, before that.
    pub chi_squared: f64,
    /// Observations beyond the four that are needed (a sweep counts as two).
    pub degrees_of_freedom: u32,
    /// How each observation fits all the others, the worst first; those that nothing checks are
    /// left out.
    pub misfits: Vec<Misfit>,
}

/// How an observation fits the rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Misfit {
    /// Which observation, counted from zero.
    pub observation: usize,
    /// In this plane.
    pub plane: Plane,
    /// Observed minus fitted, over its standard uncertainty: beyond 3 or so, look at it again.
    pub standardised: f64,
}

/// The angles at the two flex planes of a spacer, in one plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlexAngles {
    /// Spool against driver, at the driver's flex plane: set by the offset at the *other* plane.
    pub driver_end: Estimate<Angle>,
    /// Driven against spool, at the driven machine's flex plane.
    pub driven_end: Estimate<Angle>,
}

impl Position {
    /// Offset up and right at the reference plane, slope up and right; m and rad.
    pub(crate) fn numbers(&self) -> [f64; 4] {
        let offset = |plane| self.line.offset(plane, self.layout.reference).value.si();
        let slope = |plane| self.line.slope(plane).value.si();
        let [up, right] = Plane::BOTH;
        [offset(up), offset(right), slope(up), slope(right)]
    }

    /// Offset of the moving shaft from the fixed one at `x`.
    pub fn offset_at(&self, plane: Plane, x: Length) -> Estimate<Length> {
        self.line.offset(plane, x)
    }

    /// Slope of the moving shaft against the fixed one, along +x.
    pub fn slope(&self, plane: Plane) -> Estimate<Angle> {
        self.line.slope(plane)
    }

    /// Gap at the top minus gap at the bottom of facing hubs, or right minus left.
    ///
    /// ```text
    /// g = −D·q      q = slope of driven − slope of driver
    /// ```
    pub fn gap_difference(&self, plane: Plane, diameter: Length) -> Estimate<Length> {
        gap_difference(&self.layout, &self.line, plane, diameter)
    }

    /// Angles at the flex planes; `None` without a spool.
    pub fn flex_angles(&self, plane: Plane) -> Option<FlexAngles> {
        flex_angles(&self.layout, &self.line, plane)
    }

    /// The position of the other machine, if that one moved instead.
    #[must_use]
    pub fn seen_from_other(&self) -> Self {
        let layout = Layout { moving: self.layout.moving.other(), ..self.layout };
        Self { layout, line: self.line.negated(), ..self.clone() }
    }

    /// How the angle at a flex plane was found; `None` without a spool.
    pub fn flex_working(&self, plane: Plane, end: Machine) -> Option<Working> {
        let (spool, angles) = (self.layout.spool?, self.flex_angles(plane)?);
        let (other, angle, formula) = match end {
            Machine::Driver => (spool.driven_end, angles.driver_end, "a = m/L"),
            Machine::Driven => (spool.driver_end, angles.driven_end, "a = −m/L"),
        };
        let offset = self.offset_at(plane, other);
        let offset = Estimate::new(offset.value * self.layout.sign(), offset.plus_minus);
        let name = format!("Angle at the {} flex plane, {}", moving_words(end), plane.words());
        let source = Source::new("Geometry of a spool hinged at both ends", "", Basis::Computed);
        let working = Working::new(name, formula, angle.shown(Kind::Slope), source)
            .term("m", "driven less driver at the other flex plane", offset.shown(Kind::Offset))
            .term("L", "between the flex planes", Value::new(Kind::Length, spool.length()))
            .valid("a straight spool, hinged at its flex planes");
        Some(working)
    }

    /// How the offset at `x` follows from the offset at the reference plane.
    pub fn working(&self, plane: Plane, x: Length) -> Working {
        let shown = |offset: Estimate<Length>| offset.shown(Kind::Offset);
        let reach = x - self.layout.reference;
        Working::new(
            format!("Offset of the {} shaft, {}", moving_words(self.layout.moving), plane.words()),
            "d = p + q·a",
            shown(self.offset_at(plane, x)),
            Source::new("Least squares over all readings", "straight shafts", Basis::Computed),
        )
        .term(
            "p",
            "offset at the reference plane",
            shown(self.offset_at(plane, self.layout.reference)),
        )
        .term("q", "slope along +x", self.slope(plane).shown(Kind::Slope))
        .term("a", "from the reference plane along +x", Value::new(Kind::Length, reach))
        .valid("straight shafts and small slopes")
    }
}

fn moving_words(moving: Machine) -> &'static str {
    match moving {
        Machine::Driver => "driver’s",
        Machine::Driven => "driven machine’s",
    }
}

/// As [`Position::gap_difference`], of any line of moving minus fixed.
pub fn gap_difference(
    layout: &Layout,
    line: &Line,
    plane: Plane,
    diameter: Length,
) -> Estimate<Length> {
    let (gap, u) = line.form(plane, [0.0, -layout.sign() * diameter.si()]);
    Estimate::from_standard(gap, u)
}

/// Angles at the two flex planes, of any line of moving minus fixed; `None` without a spool.
///
/// ```text
/// a = m(x₂)/L      g = −m(x₁)/L      m = driven − driver
/// ```
pub fn flex_angles(layout: &Layout, line: &Line, plane: Plane) -> Option<FlexAngles> {
    let (x1, x2) = layout.flex_planes()?;
    let angle = |x: f64, sign: f64| {
        let per_length = sign * layout.sign() / (x2 - x1);
        let reach = x - line.reference().si();
        let (angle, u) = line.form(plane, [per_length, per_length * reach]);
        Estimate::from_standard(angle, u)
    };
    Some(FlexAngles { driver_end: angle(x2, 1.0), driven_end: angle(x1, -1.0) })
}

/// Combines observations into a position.
///
/// ```text
/// d = (AᵀV⁻¹A)⁻¹·AᵀV⁻¹·y
/// ```
/// # Errors
/// [`PositionError`]: an observation that is none, or too few of them.
/// # Source
/// Generalised least squares, JCGM 100:2008, H.3; the rows follow from the reading model in the
/// crate's head.
/// # Example
/// ```
/// use lineup::clock::Clock;
/// use lineup::dial::{Dial, Surface};
/// use lineup::position::{Observation, position};
/// use lineup::{Layout, Machine, Plane};
/// use quantities::{Length, Physical};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let layout = Layout { moving: Machine::Driver, reference: mm(60.0), spool: None };
/// let dial = |carrier: Machine, at, read: [f64; 4]| {
///     let sweep = Clock::QUARTERS.into_iter().zip(read.map(mm));
///     let dial = Dial::new(carrier, carrier.other(), Surface::Rim, mm(at), mm(0.01));
///     Observation::Sweep(dial.with(sweep))
/// };
/// let found = position(&layout, &[
///     dial(Machine::Driver, 120.0, [0.0, 0.10, 0.20, 0.10]),
///     dial(Machine::Driven, 0.0, [0.0, -0.10, -0.20, -0.10]),
/// ])?;
/// let offset = found.line.offset(Plane::Vertical, mm(60.0));
/// assert!((offset.value - mm(0.10)).si().abs() < 1e-9); // the driver is high by 0.10 mm
/// # Ok::<(), lineup::position::PositionError>(())
/// ```
pub fn position(layout: &Layout, seen: &[Observation]) -> Result<Position, PositionError> {
    let (scatter, scatter_freedom) = scatter(seen)?;
    let mut rows = rows(layout, seen, scatter)?;
    let (mut solved, mut white) = solve(&rows).ok_or(PositionError::Undetermined)?;
    if has_levers(seen) {
        rows = with_levers(rows, layout, seen, &solved.unknowns);
        (solved, white) = solve(&rows).ok_or(PositionError::Undetermined)?;
    }
    let degrees_of_freedom = u32::try_from(rows.len() - 4).unwrap_or(u32::MAX);
    let chi_squared = solved.squares(white.into_iter());
    let disagreement = excess(chi_squared, degrees_of_freedom);
    let factor = factor((scatter, scatter_freedom), (disagreement, degrees_of_freedom));
    Ok(Position {
        layout: *layout,
        line: as_line(layout, &solved).widened(disagreement * factor / 2.0),
        scatter,
        disagreement,
        factor,
        chi_squared,
        degrees_of_freedom,
        misfits: misfits(&rows, &solved),
    })
}

fn has_levers(seen: &[Observation]) -> bool {
    let is_stated = |seen: &Observation| match seen {
        Observation::Sweep(dial) => dial.lever_plus_minus.is_some(),
        Observation::Offset(_) | Observation::Slope(_) | Observation::Gap(_) => false,
    };
    seen.iter().any(is_stated)
}

/// Rows that know how far off their levers may be: that counts by the slope they look at, so it is
/// known once a line has been found.
pub(crate) fn with_levers(
    rows: Vec<Row>,
    layout: &Layout,
    seen: &[Observation],
    line: &[f64; 4],
) -> Vec<Row> {
    let with = |row: Row| match &seen[row.index] {
        Observation::Sweep(dial) => row.with_lever(layout, dial, line),
        Observation::Offset(_) | Observation::Slope(_) | Observation::Gap(_) => row,
    };
    rows.into_iter().map(with).collect()
}

/// Student's factor for what scatter and disagreement added to the stated uncertainty; 2 at least.
fn factor((s, s_freedom): (f64, u32), (d, d_freedom): (f64, u32)) -> f64 {
    let part = |added: f64, freedom: u32| {
        if added > 0.0 { added * added / f64::from(freedom.max(1)) } else { 0.0 }
    };
    let few = part(s * s - 1.0, s_freedom) + part(s * s * (d * d - 1.0), d_freedom);
    if few > 0.0 { student_95((s * d).powi(4) / few).max(2.0) } else { 2.0 }
}

/// What the `±` would be with these further observations, whatever they read: to see what one
/// more sweep or a wider arc would gain. Their readings count for nothing, only their places do.
///
/// # Errors
/// As [`position`].
pub fn foreseen(
    known: &Position,
    seen: &[Observation],
    further: &[Observation],
) -> Result<Line, PositionError> {
    let all: Vec<Observation> = seen.iter().chain(further).cloned().collect();
    let rows = rows(&known.layout, &all, known.scatter)?;
    let rows = with_levers(rows, &known.layout, &all, &known.numbers());
    let (solved, _) = solve(&rows).ok_or(PositionError::Undetermined)?;
    Ok(as_line(&known.layout, &solved).widened(known.disagreement * known.factor / 2.0))
}

fn solve(rows: &[Row]) -> Option<(Solution<4>, Vec<Equation<4>>)> {
    let equations: Vec<Equation<4>> = rows.iter().map(|row| (row.on, row.value)).collect();
    generalised(&equations, &covariance(rows))
}

/// Observed minus fitted over √(V − A·C·Aᵀ).
fn misfits(rows: &[Row], solved: &Solution<4>) -> Vec<Misfit> {
    let covariance = covariance(rows);
    let misfit = |(i, row): (usize, &Row)| {
        let all = covariance[i][i];
        let free = all - quadratic(&row.on, &solved.covariance, &row.on);
        let standardised = solved.residual(&(row.on, row.value)) / free.sqrt();
        (free > 1e-6 * all).then_some(Misfit {
            observation: row.index,
            plane: row.plane,
            standardised,
        })
    };
    let mut misfits: Vec<Misfit> = rows.iter().enumerate().filter_map(misfit).collect();
    misfits.sort_by(|a, b| b.standardised.abs().total_cmp(&a.standardised.abs()));
    misfits
}

fn as_line(layout: &Layout, solved: &Solution<4>) -> Line {
    Line::new(layout.reference.si(), solved.unknowns, solved.covariance)
}

/// √(χ²/ν) where it exceeds 1.
fn excess(chi_squared: f64, degrees_of_freedom: u32) -> f64 {
    if degrees_of_freedom == 0 {
        return 1.0;
    }
    (chi_squared / f64::from(degrees_of_freedom)).sqrt().max(1.0)
}

/// How far the sweeps scatter beyond what was stated, and from how many readings that is known.
fn scatter(seen: &[Observation]) -> Result<(f64, u32), PositionError> {
    let (mut chi_squared, mut freedom) = (0.0, 0);
    for (index, observation) in seen.iter().enumerate() {
        if let Observation::Sweep(dial) = observation {
            let circle = dial.fit().map_err(|why| PositionError::Dial { index, why })?.circle;
            chi_squared += circle.chi_squared;
            freedom += circle.degrees_of_freedom;
        }
    }
    Ok((excess(chi_squared, freedom), freedom))
}
