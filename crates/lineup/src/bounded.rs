//! The best that can be done when feet are base-bound or bolt-bound.
//!
//! The moved line is a straight line whatever the number of feet, so two numbers are free in each
//! plane: the deviation `(u, v)` that is left, offset at the reference plane and slope. The sum of
//! the squares of its ratios to the levels is least at a point of a polygon, each foot giving two
//! of its sides. With so few sides the least point is found exactly: at zero, at the foot of a
//! perpendicular on one side, or at a corner.

use quantities::{Length, Physical};

use crate::line::Line;
use crate::moves::{FootPlane, MovesError, check};
use crate::tolerance::{Level, ToleranceError, ratio_forms};
use crate::{Layout, Plane};

/// A foot that cannot do what's wanted of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Obstacle {
    /// The foot plane's name.
    pub foot: String,
    /// Vertical: base-bound. Sideways: bolt-bound.
    pub plane: Plane,
    /// How much more room would let the whole move be made; negative downwards or to the left.
    pub beyond: Length,
}

/// The best move within the feet's room.
#[derive(Clone, Debug, PartialEq)]
pub struct BestMove {
    /// Up and to the right, at each foot plane, in the order given.
    pub feet: Vec<[Length; 2]>,
    /// Deviation from the target that is left, with the `±` of position and target.
    pub left: Line,
    /// What stood in the way, and by how much.
    pub obstacles: Vec<Obstacle>,
    /// The largest ratio to a level that is left; 0 when nothing stood in the way.
    pub worst_ratio: f64,
}

/// Why there is no best move.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BoundedError {
    /// The feet are no feet.
    #[error(transparent)]
    Feet(#[from] MovesError),
    /// The levels cannot be judged by.
    #[error(transparent)]
    Levels(#[from] ToleranceError),
    /// One level alone cannot weigh offset against slope.
    #[error(
        "the best move weighs offset against slope: give a limit on each, or one on the flex angles"
    )]
    OneLevel,
}

/// The move within the feet's room that leaves the least sum of squared ratios to the levels.
///
/// # Errors
/// [`BoundedError`].
/// # Example
/// ```
/// use lineup::bounded::best_move;
/// use lineup::growth::{PlaneGrowth, growth_line};
/// use lineup::line::Line;
/// use lineup::moves::FootPlane;
/// use lineup::tolerance::Level;
/// use lineup::{Estimate, Layout, Machine};
/// use quantities::{Angle, Length, Physical, Source};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let layout = Layout { moving: Machine::Driven, reference: mm(0.0), spool: None };
/// let source = Source::common_practice("site rule");
/// let levels = [
///     Level::offset("offset", None, Some(mm(0.05)), source)?,
///     Level::slope("slope", None, Some(Angle::from_si(0.5e-3)), source)?,
/// ];
/// // Everywhere 0.20 mm high, and only 0.15 mm of shims under the rear feet.
/// let high = growth_line(&[PlaneGrowth::up(mm(0.0), Estimate::exact(mm(0.20)))]).unwrap();
/// let rear = FootPlane { shims: Some(mm(0.15)), ..FootPlane::new("rear", mm(700.0)) };
/// let feet = [FootPlane::new("front", mm(300.0)), rear];
/// let best = best_move(&layout, &high, &Line::zero(mm(0.0)), &feet, &levels).unwrap();
/// assert_eq!(best.obstacles[0].foot, "rear");
/// assert!(best.worst_ratio < 0.2); // the front feet make up for it
/// # Ok::<(), lineup::tolerance::ToleranceError>(())
/// ```
pub fn best_move(
    layout: &Layout,
    position: &Line,
    target: &Line,
    feet: &[FootPlane],
    levels: &[Level],
) -> Result<BestMove, BoundedError> {
    check(feet)?;
    let forms = ratio_forms(layout, levels)?;
    let weight = Weight::new(&forms).ok_or(BoundedError::OneLevel)?;
    let x0 = layout.reference.si();
    let deviation = position.minus(target);
    let mut moved = vec![[Length::from_si(0.0); 2]; feet.len()];
    let mut obstacles = Vec::new();
    let (mut left, mut worst_ratio) = ([[0.0; 2]; 2], 0.0_f64);
    for plane in Plane::BOTH {
        let now = |x: Length| deviation.offset(plane, x).value.si();
        let strips: Vec<Strip> = feet
            .iter()
            .map(|foot| {
                let (least, greatest) = foot.room(plane);
                let now = now(foot.at);
                let direction = [1.0, foot.at.si() - x0];
                Strip { direction, low: least + now, high: greatest + now }
            })
            .collect();
        let unmoved = [now(layout.reference), deviation.slope(plane).value.si()];
        let best = least_in(&weight, &strips, unmoved);
        for ((foot, strip), moved) in feet.iter().zip(&strips).zip(&mut moved) {
            moved[plane.index()] = Length::from_si(along(strip.direction, best) - now(foot.at));
            let beyond = 0.0_f64.clamp(strip.low, strip.high);
            if beyond != 0.0 {
                let (foot, beyond) = (foot.name.clone(), Length::from_si(-beyond));
                obstacles.push(Obstacle { foot, plane, beyond });
            }
        }
        let ratios = forms.iter().map(|form| along(*form, best).abs());
        worst_ratio = ratios.fold(worst_ratio, f64::max);
        left[plane.index()] = best;
    }
    let numbers = [left[0][0], left[1][0], left[0][1], left[1][1]];
    let left = Line::new(x0, numbers, [[0.0; 4]; 4]).with_covariance_of(&deviation);
    Ok(BestMove { feet: moved, left, obstacles, worst_ratio })
}

/// low ≤ direction·w ≤ high.
struct Strip {
    direction: [f64; 2],
    low: f64,
    high: f64,
}

impl Strip {
    fn holds(&self, point: [f64; 2]) -> bool {
        let here = along(self.direction, point);
        let hair = 1e-12;
        here >= self.low - hair && here <= self.high + hair
    }

    /// Its sides that lie somewhere.
    fn sides(&self) -> impl Iterator<Item = ([f64; 2], f64)> {
        let sides = [self.low, self.high].map(|side| (self.direction, side));
        sides.into_iter().filter(|(_, side)| side.is_finite())
    }
}

/// Q = Kᵀ·K and its inverse.
struct Weight {
    square: [[f64; 2]; 2],
    inverse: [[f64; 2]; 2],
}

impl Weight {
    fn new(forms: &[[f64; 2]]) -> Option<Self> {
        let sum = |i: usize, j: usize| forms.iter().map(|form| form[i] * form[j]).sum::<f64>();
        let (a, b, d) = (sum(0, 0), sum(0, 1), sum(1, 1));
        let determinant = a * d - b * b;
        if determinant.is_nan() || determinant <= 1e-12 * a * d {
            return None;
        }
        let inverse = [[d / determinant, -b / determinant], [-b / determinant, a / determinant]];
        Some(Self { square: [[a, b], [b, d]], inverse })
    }

    fn of(&self, point: [f64; 2]) -> f64 {
        along(point, turn(&self.square, point))
    }
}

/// The point of least weight inside all strips; `unmoved` lies inside them all.
fn least_in(weight: &Weight, strips: &[Strip], unmoved: [f64; 2]) -> [f64; 2] {
    let sides: Vec<([f64; 2], f64)> = strips.iter().flat_map(Strip::sides).collect();
    let on_one = sides.iter().map(|(c, h)| {
        let across = turn(&weight.inverse, *c);
        across.map(|part| part * h / along(*c, across))
    });
    let on_two = sides.iter().enumerate().flat_map(|(i, first)| {
        sides[i + 1..].iter().filter_map(|second| crossing(*first, *second))
    });
    let candidates = [[0.0, 0.0]].into_iter().chain(on_one).chain(on_two);
    let inside = candidates.filter(|point| strips.iter().all(|strip| strip.holds(*point)));
    inside.min_by(|a, b| weight.of(*a).total_cmp(&weight.of(*b))).unwrap_or(unmoved)
}

fn crossing((a, h): ([f64; 2], f64), (b, k): ([f64; 2], f64)) -> Option<[f64; 2]> {
    let determinant = a[0] * b[1] - a[1] * b[0];
    (determinant.abs() > 1e-12)
        .then(|| [(h * b[1] - k * a[1]) / determinant, (a[0] * k - b[0] * h) / determinant])
}

fn along(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

fn turn(matrix: &[[f64; 2]; 2], point: [f64; 2]) -> [f64; 2] {
    [along(matrix[0], point), along(matrix[1], point)]
}
