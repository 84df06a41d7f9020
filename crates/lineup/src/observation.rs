//! What was measured, and what each of it sees of the four unknowns.
//!
//! A rim dial sees the offset of two lines at its plane, a face dial half its swing times the
//! slope between them, a gap difference minus a diameter times that slope, a typed offset or slope
//! itself. The lines are those of driver, spool and driven.

use quantities::{Angle, Length, Physical, is_spread};

use crate::dial::{Dial, Surface};
use crate::position::PositionError;
use crate::{Body, Estimate, Layout, Plane};

/// Something measured.
#[derive(Clone, Debug, PartialEq)]
pub enum Observation {
    /// The sweep of a dial.
    Sweep(Dial),
    /// The offset of one body's line from another's, by whatever instrument.
    Offset(Offset),
    /// The slope of one body's line against another's.
    Slope(Slope),
    /// The difference of two gaps between facing hubs.
    Gap(Gap),
}

/// `of` lies this much above (to the right of) `from` at a plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offset {
    /// In this plane.
    pub plane: Plane,
    /// Whose line.
    pub of: Body,
    /// Against whose.
    pub from: Body,
    /// x of the plane where it was measured.
    pub at: Length,
    /// How far; the `±` must not be zero.
    pub amount: Estimate<Length>,
}

/// `of` climbs (bears right) this much against `from`, along +x.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slope {
    /// In this plane.
    pub plane: Plane,
    /// Whose line.
    pub of: Body,
    /// Against whose.
    pub from: Body,
    /// How steeply; the `±` must not be zero.
    pub amount: Estimate<Angle>,
}

/// Gap at the top minus gap at the bottom, or right minus left, between two facing bodies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// Vertical for top minus bottom, sideways for right minus left.
    pub plane: Plane,
    /// The two facing bodies, in either order.
    pub between: (Body, Body),
    /// Diameter at which the gaps were taken.
    pub diameter: Length,
    /// The difference; the `±` must not be zero.
    pub difference: Estimate<Length>,
}

/// `±` of an offset taken with straightedge and feelers: roughing in, a rule of our own.
pub const STRAIGHTEDGE_M: f64 = 0.10e-3;
/// `±` of a difference of gaps taken with feelers or a taper gauge: a rule of our own.
pub const FEELERS_M: f64 = 0.05e-3;

impl Offset {
    /// Taken with straightedge and feelers across two rims of one diameter: for roughing in.
    pub fn by_straightedge(plane: Plane, of: Body, from: Body, at: Length, amount: Length) -> Self {
        let amount = Estimate::new(amount, Length::from_si(STRAIGHTEDGE_M));
        Self { plane, of, from, at, amount }
    }
}

impl Gap {
    /// Taken with feelers or a taper gauge at two opposite places.
    pub fn by_feelers(
        plane: Plane,
        between: (Body, Body),
        diameter: Length,
        difference: Length,
    ) -> Self {
        let difference = Estimate::new(difference, Length::from_si(FEELERS_M));
        Self { plane, between, diameter, difference }
    }
}

/// One scalar observation on its way into the least squares.
pub(crate) struct Row {
    pub on: [f64; 4],
    pub value: f64,
    pub plane: Plane,
    /// Which observation it comes from, for errors and for its covariance with its twin.
    pub index: usize,
    variance: f64,
    /// Covariance with the next row (cosine with sine of one sweep).
    with_next: f64,
    /// Shared sag: whose, and its standard uncertainty.
    pub sag: Option<((String, bool), f64)>,
}

impl Row {
    /// What the `±` of a dial's lever adds, once the line that it looks at is known.
    pub fn with_lever(mut self, layout: &Layout, dial: &Dial, line: &[f64; 4]) -> Self {
        let (Some([on_offset, on_slope]), Some(spread)) =
            (lever_form(layout, dial), dial.lever_plus_minus)
        else {
            return self;
        };
        let u = spread.si() / 2.0;
        let seen = [0, 1].map(|i| u * (on_offset * line[i] + on_slope * line[i + 2]));
        self.variance += seen[self.plane.index()].powi(2);
        self.with_next += seen[0] * seen[1];
        self
    }
}

/// The rows of all observations, the noise of sweeps raised by `scatter`.
pub(crate) fn rows(
    layout: &Layout,
    seen: &[Observation],
    scatter: f64,
) -> Result<Vec<Row>, PositionError> {
    let mut rows = Vec::new();
    for (index, observation) in seen.iter().enumerate() {
        match observation {
            Observation::Sweep(dial) => rows.extend(sweep_rows(layout, dial, index, scatter)?),
            Observation::Offset(offset) => rows.push(offset_row(layout, offset, index)?),
            Observation::Slope(slope) => rows.push(slope_row(layout, slope, index)?),
            Observation::Gap(gap) => rows.push(gap_row(layout, gap, index)?),
        }
    }
    Ok(rows)
}

fn sweep_rows(
    layout: &Layout,
    dial: &Dial,
    index: usize,
    scatter: f64,
) -> Result<[Row; 2], PositionError> {
    let sweep = dial.fit().map_err(|why| PositionError::Dial { index, why })?;
    let on = dial_form(layout, dial).ok_or(PositionError::NoSpool(index))?;
    let [[_, _, _], [_, aa, ab], [_, _, bb]] = sweep.circle.covariance;
    let (noise, runout) = (scatter * scatter, sweep.runout_u_m.powi(2));
    let sag = dial.sag.as_ref().map(|sag| {
        ((sag.bracket.clone(), dial.surface.is_rim()), sag.amplitude.standard_uncertainty())
    });
    Ok([
        Row {
            on: place(Plane::Vertical, on),
            plane: Plane::Vertical,
            value: sweep.circle.cosine - sweep.sag_m,
            index,
            variance: noise * aa + runout,
            with_next: noise * ab,
            sag,
        },
        Row {
            on: place(Plane::Sideways, on),
            plane: Plane::Sideways,
            value: sweep.circle.sine,
            index,
            variance: noise * bb + runout,
            with_next: 0.0,
            sag: None,
        },
    ])
}

/// What the cosine (or sine) of a dial sees, as coefficients of (offset, slope).
pub(crate) fn dial_form(layout: &Layout, dial: &Dial) -> Option<[f64; 2]> {
    let (a, b) = (dial.carried_by, dial.touches);
    let arm = |swing: Length| swing.si() / 2.0;
    match dial.surface {
        Surface::Rim | Surface::InsideRim => {
            let x = dial.at.si();
            Some(less(layout.line_row(b, x)?, layout.line_row(a, x)?))
        }
        Surface::Face(swing) => opening(layout, (a, b)).map(|form| times(form, arm(swing))),
        Surface::FarFace(swing) => opening(layout, (a, b)).map(|form| times(form, -arm(swing))),
    }
}

/// What a metre more of its lever adds to what a dial sees, as [`dial_form`].
pub(crate) fn lever_form(layout: &Layout, dial: &Dial) -> Option<[f64; 2]> {
    let metre = Length::from_si(1.0);
    let mut longer = dial.clone();
    match &mut longer.surface {
        Surface::Rim | Surface::InsideRim => longer.at += metre,
        Surface::Face(swing) | Surface::FarFace(swing) => *swing += metre,
    }
    Some(less(dial_form(layout, &longer)?, dial_form(layout, dial)?))
}

/// Slope of the body at larger x minus the slope of the one at smaller x.
fn opening(layout: &Layout, (a, b): (Body, Body)) -> Option<[f64; 2]> {
    Some(less(layout.slope_row(a.max(b))?, layout.slope_row(a.min(b))?))
}

fn offset_row(layout: &Layout, offset: &Offset, index: usize) -> Result<Row, PositionError> {
    let x = offset.at.si();
    let form = layout.line_row(offset.of, x).zip(layout.line_row(offset.from, x));
    let same = offset.of == offset.from || !x.is_finite();
    typed_row(form.map(|(of, from)| less(of, from)), offset.plane, &offset.amount, index, same)
}

fn slope_row(layout: &Layout, slope: &Slope, index: usize) -> Result<Row, PositionError> {
    let form = layout.slope_row(slope.of).zip(layout.slope_row(slope.from));
    let form = form.map(|(of, from)| less(of, from));
    typed_row(form, slope.plane, &slope.amount, index, slope.of == slope.from)
}

fn gap_row(layout: &Layout, gap: &Gap, index: usize) -> Result<Row, PositionError> {
    let diameter = gap.diameter.si();
    let form = opening(layout, gap.between).map(|form| times(form, -diameter));
    let same = gap.between.0 == gap.between.1 || !(diameter > 0.0 && diameter.is_finite());
    typed_row(form, gap.plane, &gap.difference, index, same)
}

fn typed_row<Q: Physical<Spread = Q>>(
    form: Option<[f64; 2]>,
    plane: Plane,
    amount: &Estimate<Q>,
    index: usize,
    senseless: bool,
) -> Result<Row, PositionError> {
    let u = amount.standard_uncertainty();
    if senseless || !amount.is_sound() || !is_spread(u) || u == 0.0 {
        return Err(PositionError::NotAnObservation(index));
    }
    let on = place(plane, form.ok_or(PositionError::NoSpool(index))?);
    let value = amount.value.si();
    Ok(Row { on, value, plane, index, variance: u * u, with_next: 0.0, sag: None })
}

/// Covariance of the rows.
pub(crate) fn covariance(rows: &[Row]) -> Vec<Vec<f64>> {
    let shared = |i: usize, j: usize| {
        let (Some((first, u)), Some((second, v))) = (&rows[i].sag, &rows[j].sag) else {
            return 0.0;
        };
        let one_bracket = first == second && !first.0.is_empty();
        if i == j || one_bracket { u * v } else { 0.0 }
    };
    let own = |i: usize, j: usize| match i.abs_diff(j) {
        0 => rows[i].variance,
        1 if rows[i].index == rows[j].index => rows[i.min(j)].with_next,
        _ => 0.0,
    };
    (0..rows.len()).map(|i| (0..rows.len()).map(|j| own(i, j) + shared(i, j)).collect()).collect()
}

fn place(plane: Plane, [on_offset, on_slope]: [f64; 2]) -> [f64; 4] {
    match plane {
        Plane::Vertical => [on_offset, 0.0, on_slope, 0.0],
        Plane::Sideways => [0.0, on_offset, 0.0, on_slope],
    }
}

fn less(a: [f64; 2], b: [f64; 2]) -> [f64; 2] {
    [a[0] - b[0], a[1] - b[1]]
}

fn times(a: [f64; 2], factor: f64) -> [f64; 2] {
    a.map(|a| a * factor)
}
