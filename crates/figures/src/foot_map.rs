//! The feet of a machine from above: how far each rose as its bolt was let go, and the gaps under
//! its corners.
//!
//! As in the plan view of the line-up, the driver is on the left and 3 o'clock is down the page. A
//! foot that rose more than is allowed has a thick rim and says so. Not to scale: it is a table that
//! lies as the feet do.

use crate::axis::real;
use crate::geometry::{Point, Rect, at};
use crate::ink::{Anchor, Colour, Drawing, MEDIUM, Stroke, THICK, THIN, Words, level, outline};
use crate::labels::fitting;
use crate::{Figure, Paper, PaperError};

/// A machine and its feet.
#[derive(Clone, Debug, PartialEq)]
pub struct FootMap {
    /// The machine.
    pub name: String,
    /// Unit of all that is written.
    pub unit: String,
    /// True where the coupling is on the right: the driver.
    pub coupling_right: bool,
    /// Planes of feet, next to the coupling first: the foot at 9 o'clock, the one at 3 o'clock.
    pub planes: Vec<[Tried; 2]>,
}

/// One foot that was tried.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tried {
    /// Its rise, in words.
    pub rise: Option<String>,
    /// True where that is too much.
    pub soft: bool,
    /// Gaps at its corners: front left, front right, rear left, rear right; front is next to the
    /// coupling.
    pub gaps: [Option<String>; 4],
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FootMapError {
    /// No plane of feet, or more than can be drawn.
    #[error("{0} planes of feet cannot be drawn")]
    Planes(usize),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// More planes than this do not stand side by side.
const MOST: usize = 4;

/// The drawing.
///
/// # Errors
/// [`FootMapError`] when there is no plane of feet or more than four.
///
/// # Example
/// ```
/// use figures::{Paper, foot_map::{Tried, FootMap, draw}};
/// let foot = |rise: &str| Tried { rise: Some(rise.to_owned()), ..Tried::default() };
/// let figure = draw(&FootMap {
///     name: "motor".to_owned(),
///     unit: "mm".to_owned(),
///     coupling_right: true,
///     planes: vec![[foot("0.02"), foot("0.14")], [foot("0.03"), foot("0.02")]],
/// }, Paper::COLUMN)?;
/// assert!(figure.says.contains("0.14"));
/// # Ok::<(), figures::foot_map::FootMapError>(())
/// ```
pub fn draw(map: &FootMap, paper: Paper) -> Result<Figure, FootMapError> {
    paper.check()?;
    if map.planes.is_empty() || map.planes.len() > MOST {
        return Err(FootMapError::Planes(map.planes.len()));
    }
    Ok(Figure::of(&drawing(map, paper), "Feet from above", says(map)))
}

fn says(map: &FootMap) -> String {
    let foot = |foot: &Tried| match (&foot.rise, foot.soft) {
        (Some(rise), true) => format!("{rise}, too much"),
        (Some(rise), false) => rise.clone(),
        (None, _) => "not tried".to_owned(),
    };
    let plane = |(place, [left, right]): (usize, &[Tried; 2])| {
        format!("plane {}: 9 o’clock {}; 3 o’clock {}", place + 1, foot(left), foot(right))
    };
    let planes: Vec<String> = map.planes.iter().enumerate().map(plane).collect();
    format!("Rise of the feet of the {}, {}. {}.", map.name, map.unit, planes.join(". "))
}

/// The sheet of a map that was checked.
pub(crate) fn drawing(map: &FootMap, paper: Paper) -> Drawing {
    let t = paper.type_mm;
    let (count, width) = (map.planes.len(), paper.width_mm);
    let stub = 2.2 * t;
    let gap = 1.4 * t;
    let wide = ((width - stub - gap * real(count)) / real(count)).min(17.0 * t);
    let (high, between) = (5.6 * t, 3.0 * t);
    let top = 3.2 * t;
    let mut drawing = Drawing::new(width, top + 2.0 * high + between + 1.2 * t);
    let used = real(count) * (wide + gap) - gap;
    let from = if map.coupling_right { width - stub - used } else { stub };
    let axis = top + high + between / 2.0;
    shaft(&mut drawing, map, axis, (from, from + used), width);
    for (place, feet) in map.planes.iter().enumerate() {
        let column = if map.coupling_right { count - 1 - place } else { place };
        let left = from + real(column) * (wide + gap);
        for (foot, y) in feet.iter().zip([top, axis + between / 2.0]) {
            let bounds = Rect::new(left, y, left + wide, y + high);
            one(&mut drawing, foot, bounds, map.coupling_right, t);
        }
    }
    let head = format!("rise as its bolt was let go, gaps at its corners, {}", map.unit);
    for (text, row, strong) in [(map.name.clone(), 0.7, true), (head, 2.0, false)] {
        let Some(words) = fitting(&text, 0.95 * t, width) else { continue };
        let words = if strong { words.strong() } else { words.colour(Colour::Soft) };
        drawing.text(&words, at(0.0, row * t), Anchor::Start);
    }
    drawing
}

/// The shaft line between the rows of feet, out to the coupling.
fn shaft(drawing: &mut Drawing, map: &FootMap, y: f64, (from, to): (f64, f64), width: f64) {
    let (left, right) = if map.coupling_right { (from, width) } else { (0.0, to) };
    level(drawing, y, left, right, Stroke::of(THIN).dash(crate::ink::CHAIN).under());
    let end = if map.coupling_right { width - 0.6 } else { 0.6 };
    let flange = Rect::new(end - 0.6, y - 3.0, end + 0.6, y + 3.0);
    drawing.shape(&outline(flange), Some(Stroke::of(THICK)), Some(Colour::Metal));
}

/// A foot: its rise in the middle, its gaps in the corners.
fn one(drawing: &mut Drawing, foot: &Tried, bounds: Rect, coupling_right: bool, t: f64) {
    let stroke = if foot.soft { Stroke::of(0.7) } else { Stroke::of(MEDIUM) };
    drawing.shape(&outline(bounds), Some(stroke), Some(Colour::Metal));
    let middle = f64::midpoint(bounds.left, bounds.right);
    let rise = foot.rise.as_deref().unwrap_or("not tried");
    let text = if foot.soft { format!("{rise} soft") } else { rise.to_owned() };
    let words = Words::new(text, if foot.rise.is_some() { 1.1 * t } else { 0.9 * t });
    let words = if foot.rise.is_some() { words.strong() } else { words.colour(Colour::Soft) };
    if words.width() < bounds.width() - 1.0 {
        let y = f64::midpoint(bounds.top, bounds.bottom);
        drawing.text(&words, at(middle, y), Anchor::Middle);
    }
    // Front is next to the coupling, left is 9 o'clock and up the page.
    let x = |front: bool| (front == coupling_right, 0.5 * t);
    let corners = [(true, true), (true, false), (false, true), (false, false)];
    for (gap, (front, up)) in foot.gaps.iter().zip(corners) {
        let Some(gap) = gap else { continue };
        let words = Words::new(gap.as_str(), 0.9 * t);
        let (right, inset) = x(front);
        let y = if up { bounds.top + 0.95 * t } else { bounds.bottom - 0.95 * t };
        let (place, anchor): (Point, Anchor) = if right {
            (at(bounds.right - inset, y), Anchor::End)
        } else {
            (at(bounds.left + inset, y), Anchor::Start)
        };
        drawing.text(&words, place, anchor);
    }
}
