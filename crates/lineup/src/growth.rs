//! Where the shafts must stand cold, so that they run in line when hot.
//!
//! A support grows by `ΔL = c·ΔT·L`, L from the shims to the shaft's centre, ΔT the rise of the
//! metal of the support, not of what is pumped. The growth of a machine is the straight line
//! through the growths at its foot planes. Cold, the moving machine is set off by what the fixed
//! one grows more than it does: `target d(x) = growth of fixed − growth of moving`.

use quantities::{
    Basis, Kind, Length, Physical, Source, TemperatureCoefficient, TemperatureInterval, Value,
    Working,
};

use crate::clock::Clock;
use crate::dial::Dial;
use crate::line::Line;
use crate::linear::{dot, least_squares};
use crate::observation::dial_form;
use crate::{Estimate, Layout, Plane};

/// Why there is no growth.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum GrowthError {
    /// A number that is none, or a negative height.
    #[error(
        "a height below zero, or a height, a rise of temperature or a coefficient that is not a number; give the height from base to shaft as a length above zero"
    )]
    NotANumber,
    /// Two growths at one plane and none elsewhere, or none at all.
    #[error("two different places along the shaft are wanted; they are fewer, or all the same")]
    OnePlane,
}

/// A support on its way from cold to running.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Support {
    /// From the shims to the shaft's centre.
    pub height: Estimate<Length>,
    /// Running temperature of its metal minus the temperature at which shafts are lined up.
    pub rise: Estimate<TemperatureInterval>,
    /// Coefficient of expansion.
    pub expansion: TemperatureCoefficient,
}

/// A support's growth, with what it came from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SupportGrowth {
    /// The support.
    pub support: Support,
    /// Upwards.
    pub growth: Estimate<Length>,
}

/// Growth of a support.
///
/// ```text
/// ΔL = c·ΔT·L
/// ```
/// # Valid
/// One mean temperature over the height. The `±` is that of height and rise.
/// # Errors
/// [`GrowthError::NotANumber`].
/// # Source
/// *Rotating Machinery: Practical Solutions to Unbalance and Misalignment* (2004), equations 8.1, 8.2.
/// # Example
/// ```
/// use lineup::{Estimate, growth::{Support, support_growth}};
/// use quantities::{Length, Physical, TemperatureCoefficient, TemperatureInterval};
/// let growth = support_growth(Support {
///     height: Estimate::exact(Length::from_si(0.500)),
///     rise: Estimate::exact(TemperatureInterval::from_si(55.0)),
///     expansion: TemperatureCoefficient::from_si(11.7e-6),
/// })?;
/// assert!((growth.growth.value.si() - 0.32175e-3).abs() < 1e-12);
/// # Ok::<(), lineup::growth::GrowthError>(())
/// ```
pub fn support_growth(support: Support) -> Result<SupportGrowth, GrowthError> {
    let (height, rise) = (support.height.value.si(), support.rise.value.si());
    let expansion = support.expansion.si();
    let sound = support.height.is_sound() && support.rise.is_sound() && expansion.is_finite();
    if !sound || height < 0.0 {
        return Err(GrowthError::NotANumber);
    }
    let spread = (expansion * rise * support.height.plus_minus.si())
        .hypot(expansion * height * support.rise.plus_minus.si());
    let growth = Estimate::new(Length::from_si(expansion * rise * height), Length::from_si(spread));
    Ok(SupportGrowth { support, growth })
}

impl SupportGrowth {
    /// How it was found.
    pub fn working(&self) -> Working {
        let Support { height, rise, expansion } = self.support;
        Working::new(
            "Growth of the support",
            "ΔL = c·ΔT·L",
            self.growth.shown(Kind::Allowance),
            Source::new(
                "McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment",
                "equations 8.1 and 8.2",
                Basis::Read,
            ),
        )
        .term("c", "coefficient of expansion", Value::new(Kind::Expansion, expansion))
        .term("ΔT", "rise of the support’s metal", rise.shown(Kind::TemperatureDifference))
        .term("L", "from the shims to the shaft’s centre", height.shown(Kind::Length))
        .valid("one mean temperature over the height")
    }
}

/// Growth at one plane: worked out, measured, or from the maker's sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaneGrowth {
    /// x of the plane.
    pub at: Length,
    /// Upwards.
    pub up: Estimate<Length>,
    /// To the right.
    pub right: Estimate<Length>,
}

impl PlaneGrowth {
    /// Upwards only.
    pub fn up(at: Length, up: Estimate<Length>) -> Self {
        Self { at, up, right: Estimate::exact(Length::from_si(0.0)) }
    }
}

/// The growth line of a machine through the growths at its planes; with one plane it is level,
/// with more than two it is the line that fits best.
///
/// # Errors
/// [`GrowthError`] for a number that is none, or planes that all coincide.
pub fn growth_line(planes: &[PlaneGrowth]) -> Result<Line, GrowthError> {
    let sound = |p: &PlaneGrowth| p.at.si().is_finite() && p.up.is_sound() && p.right.is_sound();
    if !planes.iter().all(sound) {
        return Err(GrowthError::NotANumber);
    }
    let x0 = planes.first().ok_or(GrowthError::OnePlane)?.at.si();
    let gains = gains(planes, x0).ok_or(GrowthError::OnePlane)?;
    let mut numbers = [0.0; 4];
    let mut covariance = [[0.0; 4]; 4];
    for plane in Plane::BOTH {
        for (gain, p) in gains.iter().zip(planes) {
            let grown = if plane == Plane::Vertical { p.up } else { p.right };
            let variance = grown.standard_uncertainty().powi(2);
            for (i, on) in gain.iter().enumerate() {
                let to = 2 * i + plane.index();
                numbers[to] += on * grown.value.si();
                for (j, other) in gain.iter().enumerate() {
                    covariance[to][2 * j + plane.index()] += on * other * variance;
                }
            }
        }
    }
    Ok(Line::new(x0, numbers, covariance))
}

/// How the growth at each plane moves offset and slope: the columns of (AᵀA)⁻¹·Aᵀ.
fn gains(planes: &[PlaneGrowth], x0: f64) -> Option<Vec<[f64; 2]>> {
    if planes.len() == 1 {
        return Some(vec![[1.0, 0.0]]);
    }
    let rows = planes.iter().map(|p| [1.0, p.at.si() - x0]);
    let solved = least_squares(&rows.clone().map(|row| (row, 0.0)))?;
    Some(rows.map(|row| solved.covariance.map(|to| dot(&to, &row))).collect())
}

/// Where the moving machine's line must stand cold, against the fixed one's.
///
/// ```text
/// t(x) = growth of fixed(x) − growth of moving(x)
/// ```
pub fn target(fixed: &Line, moving: &Line) -> Line {
    fixed.minus(moving)
}

/// How the target at `x` was found.
pub fn target_working(fixed: &Line, moving: &Line, plane: Plane, x: Length) -> Working {
    let grown = |line: &Line| line.offset(plane, x).shown(Kind::Offset);
    Working::new(
        format!("Cold target of the moving shaft, {}", plane.words()),
        "t = F − M",
        grown(&target(fixed, moving)),
        Source::new("Growth lines of both machines", "", Basis::Computed),
    )
    .term("F", "growth of the machine that stays", grown(fixed))
    .term("M", "growth of the machine that moves", grown(moving))
    .term("x", "of the plane", Value::new(Kind::Length, x))
    .valid("growth straight between and beyond the foot planes")
}

/// How the slope of the target was found.
pub fn target_tilt_working(fixed: &Line, moving: &Line, plane: Plane) -> Working {
    let tilted = |line: &Line| line.slope(plane).shown(Kind::Slope);
    Working::new(
        format!("Cold target of the moving shaft’s slope, {}", plane.words()),
        "t = F − M",
        tilted(&target(fixed, moving)),
        Source::new("Growth lines of both machines", "", Basis::Computed),
    )
    .term("F", "slope of the growth of the machine that stays", tilted(fixed))
    .term("M", "slope of the growth of the machine that moves", tilted(moving))
    .valid("growth straight between the foot planes; slopes along +x")
}

/// What a dial must read, zeroed at its zero position, when the moving shaft stands on `target`;
/// sag of its bracket included, so that it can be watched during the move.
/// `None` when the dial touches a spool that the layout lacks.
pub fn target_readings(
    layout: &Layout,
    dial: &Dial,
    target: &Line,
    at: &[Clock],
) -> Option<Vec<(Clock, Length)>> {
    let [on_offset, on_slope] = dial_form(layout, dial)?;
    let shift = target.reference().si() - layout.reference.si();
    // The form counts its offset at the layout's reference plane; the line has its own.
    let form = [on_offset, on_slope - on_offset * shift];
    let sag = dial.sag.as_ref().map_or(0.0, |sag| sag.amplitude.value.si());
    let cosine = target.form(Plane::Vertical, form).0 + sag;
    let sine = target.form(Plane::Sideways, form).0;
    let raw = |clock: Clock| {
        let (cos, sin) = clock.cos_sin();
        dial.sign() * (cosine * cos + sine * sin)
    };
    let zero = raw(dial.zero.unwrap_or(Clock::TWELVE));
    Some(at.iter().map(|&clock| (clock, Length::from_si(raw(clock) - zero))).collect())
}
