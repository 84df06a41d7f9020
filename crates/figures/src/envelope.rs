//! How far a disc pack is bent and stretched, against what it may bear at once.
//!
//! Angle over axial travel from the free length. The allowed field is hatched, its narrower one for
//! fitting a broken line; each state is a point in the box of its uncertainty: measured full and
//! pencil, worked out open and ink.
//!
//! Not here: the field itself (`couplings`).

use crate::chart::Axes;
use crate::geometry::{Point, Rect, at};
use crate::hatch::Cut;
use crate::ink::{
    ASSUMED, Anchor, Colour, Drawing, MEDIUM, Stroke, THICK, THIN, Words, outline, upright,
};
use crate::labels::place;
use crate::{Figure, Paper, PaperError};

/// How a state is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// Read on this job.
    Measured,
    /// Worked out, as from growth.
    WorkedOut,
}

/// One state of the pack.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// "cold", "hot".
    pub name: String,
    /// From the free length, in the unit of the run.
    pub axial: f64,
    /// In the unit of the heights; its sign does not matter.
    pub angle: f64,
    /// ± of both, 95 %.
    pub plus_minus: (f64, f64),
    /// How it is known.
    pub basis: Basis,
}

/// A pack's field and its states.
#[derive(Clone, Debug, PartialEq)]
pub struct Envelope {
    /// What the heights are: "angle at the pack, degrees".
    pub heights: String,
    /// Unit of the run: "mm axial".
    pub run: String,
    /// Upper edge of the allowed field, axial and angle, from left to right; closed along zero.
    pub allowed: Vec<(f64, f64)>,
    /// The same for fitting.
    pub fitting: Option<Vec<(f64, f64)>>,
    /// Where the pack is.
    pub states: Vec<State>,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum EnvelopeError {
    /// An edge that is no field: too few points, no numbers, below zero, or running back.
    #[error("the edge is no field: {0:?}")]
    NoField(Vec<(f64, f64)>),
    /// A state that is no number.
    #[error("{0} cannot be drawn")]
    NotANumber(f64),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`EnvelopeError`] when an edge is no field, or a state no number.
pub fn draw(envelope: &Envelope, paper: Paper) -> Result<Figure, EnvelopeError> {
    paper.check()?;
    check(envelope)?;
    let states = envelope.states.iter().map(|state| {
        let State { name, axial, angle, .. } = state;
        format!("{name}: axial {axial:.2}, angle {:.3}", angle.abs())
    });
    let states = states.collect::<Vec<_>>().join("; ");
    let says = format!("{} over {}. {states}.", envelope.heights, envelope.run);
    Ok(Figure::of(&drawing(envelope, paper), "What the coupling bears at once", says))
}

fn check(envelope: &Envelope) -> Result<(), EnvelopeError> {
    for edge in std::iter::once(&envelope.allowed).chain(&envelope.fitting) {
        let field = crate::chart::is_curve(edge)
            && edge.iter().all(|(_, angle)| *angle >= 0.0)
            && edge.iter().any(|(_, angle)| *angle > 0.0);
        if !field {
            return Err(EnvelopeError::NoField(edge.clone()));
        }
    }
    let numbers = envelope
        .states
        .iter()
        .flat_map(|state| [state.axial, state.angle, state.plus_minus.0, state.plus_minus.1]);
    let bad = { numbers }.find(|n| !(n.is_finite() && n.abs() < 1e9));
    bad.map_or(Ok(()), |number| Err(EnvelopeError::NotANumber(number)))
}

/// The sheet of an envelope that was checked.
pub(crate) fn drawing(envelope: &Envelope, paper: Paper) -> Drawing {
    let t = paper.type_mm;
    let states = &envelope.states;
    let sides = states.iter().flat_map(|s| {
        let half = s.plus_minus.0.abs();
        [s.axial - half, s.axial + half]
    });
    let most =
        envelope.allowed.iter().map(|(x, _)| *x).chain(sides).fold(0.0, |m, x| x.abs().max(m));
    let tops = states.iter().map(|s| s.angle.abs() + s.plus_minus.1.abs());
    let high = envelope.allowed.iter().map(|(_, y)| *y).chain(tops).fold(1e-9, f64::max);
    let height = (0.5 * paper.width_mm).clamp(14.0 * t, 20.0 * t);
    let run = (-1.1 * most, 1.1 * most);
    let axes = Axes::new((paper.width_mm, height), t, run, (0.0, 1.08 * high));
    let mut drawing = Drawing::new(paper.width_mm, axes.sheet_height());
    let field = closed(&axes, &envelope.allowed);
    drawing.fill(&field, Colour::Leaf);
    drawing.hatch(vec![field.clone()], Cut::new(135.0, 0.7 * t));
    axes.draw(&mut drawing, &envelope.heights, &envelope.run);
    drawing.shape(&field, Some(Stroke::of(THICK)), None);
    if let Some(fitting) = &envelope.fitting {
        let stroke = Stroke::of(THIN).dash(ASSUMED).shy();
        drawing.shape(&closed(&axes, fitting), Some(stroke), None);
    }
    let zero = axes.at(0.0, 0.0).x;
    let faint = Stroke::of(THIN).colour(Colour::Edge).under();
    upright(&mut drawing, zero, axes.frame.top, axes.frame.bottom, faint);
    for state in states {
        draw_state(&mut drawing, &axes, state, t);
    }
    for state in states {
        name_state(&mut drawing, &axes, state, t);
    }
    drawing
}

fn closed(axes: &Axes, edge: &[(f64, f64)]) -> Vec<Point> {
    let mut field: Vec<Point> = edge.iter().map(|(x, y)| axes.at(*x, *y)).collect();
    for (x, _) in [edge[edge.len() - 1], edge[0]] {
        field.push(axes.at(x, 0.0));
    }
    field.dedup_by(|a, b| a.distance(*b) < 1e-6);
    field
}

/// The box of a state's uncertainty; never smaller than its point.
fn bounds(axes: &Axes, state: &State, t: f64) -> Rect {
    let (axial, angle) = (state.plus_minus.0.abs(), state.plus_minus.1.abs());
    let least = 0.55 * t;
    let middle = axes.at(state.axial, state.angle.abs());
    let corner = axes.at(state.axial + axial, state.angle.abs() + angle);
    let half = ((corner.x - middle.x).max(least), (middle.y - corner.y).max(least));
    let whole = Rect::new(middle.x, middle.y, middle.x, middle.y).grown(half.0, half.1);
    Rect { bottom: whole.bottom.min(axes.frame.bottom), ..whole }
}

fn colour(state: &State) -> Colour {
    match state.basis {
        Basis::Measured => Colour::Pencil,
        Basis::WorkedOut => Colour::Ink,
    }
}

fn draw_state(drawing: &mut Drawing, axes: &Axes, state: &State, t: f64) {
    let stroke = Stroke::of(MEDIUM).colour(colour(state));
    drawing.shape(&outline(bounds(axes, state, t)), Some(Stroke { weight: THIN, ..stroke }), None);
    let fill = match state.basis {
        Basis::Measured => Colour::Pencil,
        Basis::WorkedOut => Colour::Leaf,
    };
    let place = axes.at(state.axial, state.angle.abs());
    drawing.circle(place, 0.3 * t, Some(stroke), Some(fill));
}

fn name_state(drawing: &mut Drawing, axes: &Axes, state: &State, t: f64) {
    let bounds = bounds(axes, state, t);
    let words = Words::new(&state.name, t).strong().colour(colour(state)).halo();
    let mut spots = Vec::new();
    let middle =
        at(f64::midpoint(bounds.left, bounds.right), f64::midpoint(bounds.top, bounds.bottom));
    for away in [0.8, 1.8, 3.0] {
        let off = away * t;
        spots.push((at(middle.x, bounds.top - off), Anchor::Middle));
        spots.push((at(bounds.right + off - 0.3 * t, middle.y), Anchor::Start));
        spots.push((at(bounds.left - off + 0.3 * t, middle.y), Anchor::End));
        spots.push((at(middle.x, bounds.bottom + off), Anchor::Middle));
    }
    place(drawing, &words, &spots, axes.frame.grown(1.0, 1.0));
}
