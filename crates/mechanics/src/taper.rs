//! Hubs on tapered shaft ends: how far to draw up, how they come off.
//!
//! t taper, change of diameter per length · s draw-up from metal touching metal · δ diametral
//! interference · β half of the cone's angle, tan β = t/2 · N all that presses on the joint
//!
//! A taper pushes its hub off by itself once friction falls below tan β, as it does on a film of
//! oil: a nut or a stop must catch it.

use std::fmt;
use std::str::FromStr;

use quantities::{
    Angle, Basis, Force, Kind, Length, Physical, Pressure, Source, Value, Working, both,
};

use crate::interference::hub::State;
use crate::{Estimate, is_positive};

/// Change of diameter per length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taper(f64);

/// Why a taper gives no number.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TaperError {
    /// A taper that is not above zero, or is no longer a shaft end.
    #[error("not a taper of a shaft end: {0}")]
    Taper(f64),
    /// Text that is no taper.
    #[error("“{0}” is not a taper such as 1:10 or 3/4 in/ft")]
    Text(String),
    /// Diameters and a length that make no taper.
    #[error("length is not sound: {}", both(.0))]
    Length(Length),
    /// A force, a friction or a factor that is not sound.
    #[error("number is not sound: {0}")]
    Number(f64),
}

impl Taper {
    /// 1:10 on the diameter.
    pub const ONE_IN_TEN: Self = Self(0.1);
    /// 1:12 on the diameter.
    pub const ONE_IN_TWELVE: Self = Self(1.0 / 12.0);
    /// 1:16 on the diameter, which is 3/4 in per foot.
    pub const ONE_IN_SIXTEEN: Self = Self(1.0 / 16.0);
    /// 3/4 in per foot on the diameter, which is 1:16.
    pub const THREE_QUARTER_INCH_PER_FOOT: Self = Self::ONE_IN_SIXTEEN;

    /// One in so much, on the diameter.
    ///
    /// # Errors
    /// [`TaperError::Taper`] for less than one in two, or what is no number.
    pub fn one_in(length: f64) -> Result<Self, TaperError> {
        if length.is_finite() && length >= 2.0 {
            Ok(Self(1.0 / length))
        } else {
            Err(TaperError::Taper(length))
        }
    }

    /// From two diameters and the length between them.
    ///
    /// # Errors
    /// [`TaperError`] for sizes that are no taper of a shaft end.
    pub fn between(large: Length, small: Length, length: Length) -> Result<Self, TaperError> {
        for size in [large, small, length] {
            if !is_positive(size.si()) {
                return Err(TaperError::Length(size));
            }
        }
        let taper = (large.si() - small.si()) / length.si();
        if taper > 0.0 && taper <= 0.5 { Ok(Self(taper)) } else { Err(TaperError::Taper(taper)) }
    }

    /// Change of diameter per length.
    pub fn on_diameter(self) -> f64 {
        self.0
    }

    /// Half of the cone's angle.
    pub fn half_angle(self) -> Angle {
        Angle::from_si((self.0 / 2.0).atan())
    }

    /// How far to draw up for an interference.
    ///
    /// ```text
    /// s = δ/t
    /// ```
    /// # Valid
    /// From metal touching metal all round, both at one temperature; the seating itself (a light
    /// push, a clean dry fit) is uncertain by several hundredths of a millimetre along the shaft.
    /// # Errors
    /// [`TaperError::Length`] for an interference not above zero.
    /// # Example
    /// ```
    /// use mechanics::{Estimate, taper::Taper};
    /// use uom::si::{f64::Length, length::millimeter};
    /// let interference = Estimate::exact(Length::new::<millimeter>(0.1524));
    /// let draw_up = Taper::THREE_QUARTER_INCH_PER_FOOT.draw_up(interference)?;
    /// assert_eq!(format!("{:.3}", draw_up.distance.value.get::<millimeter>()), "2.438");
    /// # Ok::<(), mechanics::taper::TaperError>(())
    /// ```
    pub fn draw_up(self, interference: Estimate<Length>) -> Result<DrawUp, TaperError> {
        if !(interference.is_sound() && interference.value.si() > 0.0) {
            return Err(TaperError::Length(interference.value));
        }
        let Estimate { value, plus_minus } = interference;
        let distance = Estimate::new(value / self.0, plus_minus / self.0);
        Ok(DrawUp { taper: self, interference, distance })
    }

    /// The interference that a draw-up gives.
    ///
    /// # Errors
    /// [`TaperError::Length`] for a distance below zero.
    pub fn interference(self, distance: Estimate<Length>) -> Result<Estimate<Length>, TaperError> {
        if !(distance.is_sound() && distance.value.si() >= 0.0) {
            return Err(TaperError::Length(distance.value));
        }
        Ok(Estimate::new(distance.value * self.0, distance.plus_minus * self.0))
    }

    /// The forces along the shaft at a taper that presses with N in all.
    ///
    /// ```text
    /// push-off  N·sin β      grip  μ·N·cos β
    /// ```
    /// # Errors
    /// [`TaperError::Number`] for a force or a friction below zero.
    /// # Source
    /// Statics of a cone.
    pub fn axial(self, normal_force: Force, friction: f64) -> Result<Axial, TaperError> {
        for number in [normal_force.si(), friction] {
            if !(number.is_finite() && number >= 0.0) {
                return Err(TaperError::Number(number));
            }
        }
        let (sine, cosine) = self.half_angle().si().sin_cos();
        Ok(Axial {
            taper: self,
            normal_force,
            friction,
            push_off: normal_force * sine,
            grip: normal_force * (friction * cosine),
        })
    }
}

/// "1:10", "1 in 12", "3/4 in/ft", "0.75 in per ft".
impl FromStr for Taper {
    type Err = TaperError;

    fn from_str(text: &str) -> Result<Self, TaperError> {
        let unread = || TaperError::Text(text.trim().to_owned());
        let plain = text.trim().to_lowercase().replace("per", "/").replace(' ', "");
        if let Some(inches) = plain.strip_suffix("in/ft") {
            let inches = match inches.split_once('/') {
                Some((above, below)) => number(above)? / number(below)?,
                None => number(inches)?,
            };
            return Self::one_in(12.0 / inches);
        }
        let (one, length) =
            plain.split_once(':').or_else(|| plain.split_once("in")).ok_or_else(unread)?;
        if one == "1" { Self::one_in(number(length)?) } else { Err(unread()) }
    }
}

fn number(text: &str) -> Result<f64, TaperError> {
    text.parse().map_err(|_| TaperError::Text(text.to_owned()))
}

/// As "1:12".
impl fmt::Display for Taper {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = format!("{:.3}", 1.0 / self.0);
        write!(f, "1:{}", text.trim_end_matches('0').trim_end_matches('.'))
    }
}

/// A draw-up and what it was found from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawUp {
    /// The taper.
    pub taper: Taper,
    /// Interference wanted.
    pub interference: Estimate<Length>,
    /// Distance along the shaft.
    pub distance: Estimate<Length>,
}

impl DrawUp {
    /// How the distance was found.
    pub fn working(&self) -> Working {
        let result = self.distance.shown(Kind::Offset);
        Working::new("Draw-up", "s = i/t", result, CONE)
            .term("i", "interference wanted", self.interference.shown(Kind::Allowance))
            .term("t", "taper on the diameter", Value::number(self.taper.0))
            .valid("from metal touching metal all round, both parts equally warm")
    }
}

const CONE: Source = Source::new("geometry and statics of a cone", "", Basis::Computed);

/// What acts along the shaft at a taper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axial {
    /// The taper.
    pub taper: Taper,
    /// All that presses.
    pub normal_force: Force,
    /// Friction.
    pub friction: f64,
    /// What the pressure pushes the hub off with.
    pub push_off: Force,
    /// What friction holds it with.
    pub grip: Force,
}

impl Axial {
    /// True when friction alone keeps the hub on.
    pub fn is_self_locking(&self) -> bool {
        self.grip > self.push_off
    }

    /// Grip less push-off: the force to draw the hub off, negative when it comes off by itself.
    pub fn withdrawal(&self) -> Force {
        self.grip - self.push_off
    }

    /// Force to draw the hub off; zero when it comes off by itself.
    pub fn to_draw_off(&self) -> Force {
        if self.is_self_locking() { self.grip - self.push_off } else { Force::default() }
    }

    /// Force to draw it up the last of its way, and so to hold it there on a film of oil.
    pub fn to_draw_up(&self) -> Force {
        self.grip + self.push_off
    }

    /// How the force to bring it home was found.
    pub fn draw_up_working(&self) -> Working {
        let force = |force| Value::new(Kind::Force, force);
        let result = force(self.to_draw_up());
        let formula = "b = atan(t/2)\nP = N·sin b\nG = m·N·cos b\nF = G + P";
        Working::new("Force to bring the hub home", formula, result, CONE)
            .term("t", "taper on the diameter", Value::number(self.taper.0))
            .term(
                "b",
                "half of the cone’s angle",
                Value::new(Kind::Degrees, self.taper.half_angle()),
            )
            .term("N", "all that presses", force(self.normal_force))
            .term("m", "friction", Value::number(self.friction))
            .term("P", "push-off by the pressure", force(self.push_off))
            .term("G", "grip by friction", force(self.grip))
            .valid("at the end of its way, where all of the pressure stands")
    }

    /// How the force to draw it off was found; negative says that it comes off by itself.
    pub fn working(&self) -> Working {
        let force = |force| Value::new(Kind::Force, force);
        let result = force(self.grip - self.push_off);
        Working::new(
            "Force to draw the hub off",
            "b = atan(t/2)\nP = N·sin b\nG = m·N·cos b\nF = G − P",
            result,
            CONE,
        )
        .term("t", "taper on the diameter", Value::number(self.taper.0))
        .term("b", "half of the cone’s angle", Value::new(Kind::Degrees, self.taper.half_angle()))
        .term("N", "all that presses", force(self.normal_force))
        .term("m", "friction", Value::number(self.friction))
        .term("P", "push-off by the pressure", force(self.push_off))
        .term("G", "grip by friction", force(self.grip))
        .valid("below zero the hub comes off by itself")
    }
}

/// Oil pressure that lifts a hub off its shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dilation {
    /// Highest contact pressure of the fit.
    pub fit: Pressure,
    /// Times this.
    pub factor: f64,
    /// Oil pressure.
    pub oil: Pressure,
    /// Equivalent stress at the bore of the hub under that oil pressure, at the worst slice.
    pub hub_stress: Pressure,
}

/// Oil pressure to dilate a hub.
///
/// ```text
/// po = f·p
/// ```
/// # Valid
/// f 1.1 to 1.25. The oil must lift the slice that presses hardest; the stress at the bore of the
/// hub (to be judged by the caller) and the pump set its end.
/// # Errors
/// [`TaperError::Number`] for a factor below one.
/// # Source
/// Common practice; from memory.
pub fn dilation(state: &State, factor: f64) -> Result<Dilation, TaperError> {
    if !(factor.is_finite() && factor >= 1.0) {
        return Err(TaperError::Number(factor));
    }
    let highest = |of: &dyn Fn(&crate::interference::hub::SliceState) -> Pressure| {
        state.slices.iter().map(|slice| of(slice).si()).fold(0.0, f64::max)
    };
    let fit = highest(&|slice| slice.pressure);
    let stress = highest(&|slice| slice.hub_bore.von_mises);
    Ok(Dilation {
        fit: Pressure::from_si(fit),
        factor,
        oil: Pressure::from_si(fit * factor),
        hub_stress: Pressure::from_si(stress * factor),
    })
}

impl Dilation {
    /// How the oil pressure was found.
    pub fn working(&self) -> Working {
        let source = Source::common_practice("1.1 to 1.25 times the contact pressure");
        let pressure = |pressure| Value::new(Kind::Stress, pressure);
        let oil = Value::new(Kind::Pressure, self.oil);
        Working::new("Oil pressure to lift the hub", "o = f·p", oil, source)
            .term("f", "factor", Value::number(self.factor))
            .term("p", "highest contact pressure", pressure(self.fit))
            .valid("never above what hub, pump and fittings are rated for")
    }

    /// How the stress at the bore under that oil was found.
    pub fn stress_working(&self) -> Working {
        let source = Source::new("stress rises with the pressure in the bore", "", Basis::Computed);
        let pressure = |pressure| Value::new(Kind::Stress, pressure);
        let at_rest = Pressure::from_si(self.hub_stress.si() / self.factor);
        Working::new("Stress at the bore on oil", "s = f·a", pressure(self.hub_stress), source)
            .term("f", "factor", Value::number(self.factor))
            .term("a", "equivalent stress at the bore from the fit", pressure(at_rest))
            .valid("elastic, at the slice that is stressed highest")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::interference::hub::{Metal, PressFit, Running};
    use crate::pull::pull_force;
    use crate::{Range, Slice};
    use quantities::Torque;
    use uom::si::angle::degree;
    use uom::si::length::{inch, millimeter};
    use uom::si::pressure::{megapascal, psi};

    fn mm(mm: f64) -> Length {
        Length::new::<millimeter>(mm)
    }

    fn close(found: f64, wanted: f64, half_digit: f64) {
        assert!((found - wanted).abs() <= half_digit, "{found} for {wanted}");
    }

    /// Statics of a cone worked apart from this program to six digits: 3/4 in per foot on 4 in,
    /// 3.5 in long, 82.7 MPa, oil film 0.02.
    #[test]
    fn a_hub_on_oil_pushes_itself_off() {
        let taper = Taper::THREE_QUARTER_INCH_PER_FOOT;
        close(taper.half_angle().get::<degree>(), 1.789_91, 5e-6);
        let area = std::f64::consts::PI * 0.1016 * 0.0889;
        let oiled = taper.axial(Force::from_si(82.7e6 * area), 0.02).unwrap();
        close(oiled.push_off.si(), 73_297.5, 0.05);
        close(oiled.grip.si(), 46_910.4, 0.05);
        assert!(!oiled.is_self_locking());
        assert_eq!(oiled.to_draw_off(), Force::default());
        let dry = taper.axial(Force::from_si(82.7e6 * area), 0.15).unwrap();
        assert!(dry.is_self_locking() && dry.to_draw_off() < dry.to_draw_up());
    }

    /// Statics of the same cone, half of its angle 1.789 91°: pull, torque and pull at once.
    #[test]
    fn a_fit_on_a_taper_is_pushed_off_by_its_own_pressure() {
        let steel = Metal::from(tables::materials::material("steel").unwrap());
        let slice = [Slice { length: mm(88.9), outside: mm(160.0) }];
        let taper = Taper::THREE_QUARTER_INCH_PER_FOOT;
        let fit = PressFit::tapered(mm(0.0), mm(98.8), taper, &slice, steel, steel).unwrap();
        let state = fit.state(mm(0.1), Running::default()).unwrap();
        let pressed = state.normal_force.si();
        let (sine, cosine) = 1.789_91_f64.to_radians().sin_cos();
        let along = pressed * (0.15 * cosine - sine);
        close(state.axial(0.15).si(), along, 1e-5 * along);
        let pull = pull_force(&state, Range::new(0.01, 0.15)).unwrap();
        close(pull.force.high.si(), along, 1e-5 * along);
        assert_eq!(pull.force.low, Force::default(), "on so little friction it jumps off");
        let held = state.hold(0.15, Torque::default(), Force::from_si(along)).unwrap();
        close(held.safety, 1.0, 1e-5);
        let straight = PressFit::new(mm(0.0), state.diameter, &slice, steel, steel).unwrap();
        let straight = straight.state(mm(0.1), Running::default()).unwrap();
        assert!(straight.axial(0.15) > state.axial(0.15) * 1.2);
    }

    #[test]
    fn draw_up_and_interference_undo_each_other() {
        let wanted = Estimate::new(mm(0.1524), mm(0.004));
        let draw_up = Taper::ONE_IN_SIXTEEN.draw_up(wanted).unwrap();
        close(draw_up.distance.value.get::<millimeter>(), 2.4384, 5e-5);
        close(draw_up.distance.plus_minus.get::<millimeter>(), 0.064, 1e-9);
        let back = Taper::ONE_IN_SIXTEEN.interference(draw_up.distance).unwrap();
        close(back.value.get::<millimeter>(), 0.1524, 1e-12);
        let measured = Taper::between(mm(100.0), mm(95.0), mm(60.0)).unwrap();
        close(measured.on_diameter(), Taper::ONE_IN_TWELVE.on_diameter(), 1e-12);
        close(Taper::one_in(10.0).unwrap().on_diameter(), 0.1, 1e-12);
    }

    /// 1.2 times 82.7 MPa is 99.24 MPa or 14 393.5 psi.
    #[test]
    fn oil_lifts_the_slice_that_presses_hardest() {
        let steel = Metal::from(tables::materials::material("steel").unwrap());
        let slices = [(60.0, 160.0), (30.0, 240.0)]
            .map(|(length, outside)| Slice { length: mm(length), outside: mm(outside) });
        let fit = PressFit::new(mm(0.0), mm(101.6), &slices, steel, steel).unwrap();
        let state = fit.state(mm(0.1), Running::default()).unwrap();
        let oil = dilation(&state, 1.2).unwrap();
        assert_eq!(oil.fit, state.slices[1].pressure);
        close(oil.oil.si() / oil.fit.si(), 1.2, 1e-12);
        let scale = 82.7 / oil.fit.get::<megapascal>();
        close(oil.oil.get::<megapascal>() * scale, 99.24, 0.005);
        close(oil.oil.get::<psi>() * scale, 14_393.5, 0.05);
        assert!(dilation(&state, 0.9).is_err());
    }

    #[test]
    fn tapers_are_read_as_written() {
        for (text, one_in) in [
            ("1:10", 10.0),
            ("1 : 12", 12.0),
            ("1 in 16", 16.0),
            ("3/4 in/ft", 16.0),
            ("0.75 in per ft", 16.0),
            ("1.25 in/ft", 9.6),
        ] {
            let taper: Taper = text.parse().unwrap();
            close(1.0 / taper.on_diameter(), one_in, 1e-9);
            assert_eq!(taper.to_string().parse::<Taper>(), Ok(taper));
        }
        for text in ["", "10", "2:10", "1:1", "1:x", "3/4", "1:-5", "0 in/ft", "NaN in/ft"] {
            assert!(text.parse::<Taper>().is_err(), "{text}");
        }
    }

    /// A thick hub on a taper holds a little more than on its small end, a little less than on its
    /// large end, and on its mean the same to (Δd/d)²/12.
    #[test]
    fn a_taper_holds_as_its_mean_diameter() {
        let steel = Metal::from(tables::materials::material("steel").unwrap());
        let slices = vec![Slice { length: mm(12.0), outside: mm(300.0) }; 8];
        let held =
            |fit: PressFit| fit.state(mm(0.1), Running::default()).unwrap().torque(0.12).si();
        let straight = |d: f64| held(PressFit::new(mm(0.0), mm(d), &slices, steel, steel).unwrap());
        let taper = Taper::ONE_IN_TWELVE;
        let tapered = PressFit::tapered(mm(0.0), mm(94.0), taper, &slices, steel, steel).unwrap();
        close(tapered.diameter().get::<millimeter>(), 98.0, 1e-9);
        let found = held(tapered);
        assert!(straight(94.0) < found && found < straight(102.0));
        close(found / straight(98.0), 1.0, 0.002);
        let one = [Slice { length: mm(96.0), outside: mm(300.0) }];
        let whole = PressFit::tapered(mm(0.0), mm(94.0), taper, &one, steel, steel).unwrap();
        close(held(whole) / found, 1.0, 0.001);
    }

    #[test]
    fn what_is_no_taper_is_refused() {
        assert!(Taper::one_in(0.0).is_err() && Taper::one_in(f64::NAN).is_err());
        assert!(Taper::between(mm(90.0), mm(95.0), mm(60.0)).is_err());
        let none = Estimate::exact(Length::new::<inch>(0.0));
        assert!(Taper::ONE_IN_TEN.draw_up(none).is_err());
    }
}
