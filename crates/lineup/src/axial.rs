//! Along the shafts: distance between shaft ends cold and hot, and end float of the rotor.
//!
//! Each shaft grows from the bearing that holds it towards the coupling; the gap closes by both.
//! A motor with sleeve bearings finds its magnetic centre; a coupling of limited float keeps it
//! off its bearing's shoulders. Both travels must be less than the rotor's float on either side.

use quantities::{
    Basis, Kind, Length, Limits, Physical, Power, Source, TemperatureCoefficient,
    TemperatureInterval, Value, Verdict, Working, both, judge,
};
use tables::limits::{END_FLOAT, END_FLOAT_SOURCE};
use uom::si::power::horsepower;

use crate::Estimate;

/// Why there is no distance or no float.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum AxialError {
    /// A number that is none, or a distance or float below zero.
    #[error(
        "a distance or float that is below zero or not a number; give lengths of nothing or more"
    )]
    NotANumber,
    /// The magnetic centre lies beyond the rotor's float.
    #[error(
        "the magnetic centre lies {} off the middle, beyond either end of a float of {}; measure it from the middle of the float",
        both(centre),
        both(float)
    )]
    BeyondFloat {
        /// Of the centre from the middle.
        centre: Length,
        /// Whole float of the rotor.
        float: Length,
    },
}

/// A shaft between the bearing that holds it and its end at the coupling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftGrowth {
    /// From the bearing that holds it to its end; negative where the coupling lies on the side that
    /// the shaft grows away from.
    pub length: Length,
    /// Mean rise of the shaft over that length.
    pub rise: Estimate<TemperatureInterval>,
    /// Coefficient of expansion.
    pub expansion: TemperatureCoefficient,
    /// What the casing carries the bearing towards the coupling, when known.
    pub casing: Estimate<Length>,
}

impl ShaftGrowth {
    /// Towards the coupling.
    ///
    /// ```text
    /// ΔL = c·ΔT·L + k
    /// ```
    pub fn growth(&self) -> Estimate<Length> {
        let per_kelvin = self.expansion.si() * self.length.si();
        let value = per_kelvin * self.rise.value.si() + self.casing.value.si();
        let spread = (per_kelvin * self.rise.plus_minus.si()).hypot(self.casing.plus_minus.si());
        Estimate::new(Length::from_si(value), Length::from_si(spread))
    }

    fn is_sound(&self) -> bool {
        self.length.is_finite()
            && self.expansion.si().is_finite()
            && self.rise.is_sound()
            && self.casing.is_sound()
    }

    /// How the growth was found.
    pub fn working(&self) -> Working {
        Working::new(
            "Growth of the shaft towards the coupling",
            "D = a·L·t + k",
            self.growth().shown(Kind::Offset),
            Source::new(
                "McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment",
                "equation 8.1, along the shaft",
                Basis::Read,
            ),
        )
        .term("a", "coefficient of expansion", Value::new(Kind::Expansion, self.expansion))
        .term(
            "L",
            "from the bearing that holds it to its end",
            Value::new(Kind::Length, self.length),
        )
        .term("t", "mean rise of the shaft", self.rise.shown(Kind::TemperatureDifference))
        .term("k", "what the casing carries that bearing", self.casing.shown(Kind::Offset))
    }
}

/// Distance between shaft ends to set cold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftEnds {
    /// Wanted when hot.
    pub hot: Length,
    /// Growth of the driver's shaft towards the coupling.
    pub driver: Estimate<Length>,
    /// Growth of the driven shaft towards the coupling.
    pub driven: Estimate<Length>,
    /// To set cold.
    pub cold: Estimate<Length>,
}

/// Distance between shaft ends to set cold for one wanted hot.
///
/// ```text
/// B = H + ΔL₁ + ΔL₂
/// ```
/// # Errors
/// [`AxialError::NotANumber`].
/// # Source
/// Growth of a support turned along the shaft; casings that carry the bearings are a term each.
/// # Example
/// ```
/// use lineup::{Estimate, axial::{ShaftGrowth, shaft_ends}};
/// use quantities::{Length, Physical, TemperatureCoefficient, TemperatureInterval};
/// let shaft = |length: f64, rise: f64| ShaftGrowth {
///     length: Length::from_si(length),
///     rise: Estimate::exact(TemperatureInterval::from_si(rise)),
///     expansion: TemperatureCoefficient::from_si(11.7e-6),
///     casing: Estimate::exact(Length::from_si(0.0)),
/// };
/// let ends = shaft_ends(Length::from_si(0.180), &shaft(0.9, 80.0), &shaft(1.1, 40.0))?;
/// assert_eq!(format!("{:.4}", ends.cold.value.si() * 1e3), "181.3572");
/// # Ok::<(), lineup::axial::AxialError>(())
/// ```
#[expect(clippy::similar_names, reason = "driver and driven are the words of the trade")]
pub fn shaft_ends(
    hot: Length,
    driver: &ShaftGrowth,
    driven: &ShaftGrowth,
) -> Result<ShaftEnds, AxialError> {
    if !(driver.is_sound() && driven.is_sound() && hot.si() >= 0.0 && hot.si().is_finite()) {
        return Err(AxialError::NotANumber);
    }
    Ok(ShaftEnds::of(hot, [driver.growth(), driven.growth()]))
}

impl ShaftEnds {
    /// From the growth of the driver's and of the driven shaft, however they were found.
    #[expect(clippy::similar_names, reason = "driver and driven are the words of the trade")]
    pub fn of(hot: Length, [driver, driven]: [Estimate<Length>; 2]) -> Self {
        let spread = driver.plus_minus.si().hypot(driven.plus_minus.si());
        let cold = Estimate::new(hot + driver.value + driven.value, Length::from_si(spread));
        Self { hot, driver, driven, cold }
    }

    /// How it was found.
    pub fn working(&self) -> Working {
        Working::new(
            "Distance between shaft ends, cold",
            "B = H + D1 + D2",
            self.cold.shown(Kind::Gap),
            Source::new(
                "Growth along the shaft from the bearing that holds it",
                "",
                Basis::Computed,
            ),
        )
        .term("H", "wanted hot", Value::new(Kind::Gap, self.hot))
        .term("D1", "growth of the driver’s shaft", self.driver.shown(Kind::Gap))
        .term("D2", "growth of the driven shaft", self.driven.shown(Kind::Gap))
        .valid("both growths towards the coupling")
    }
}

/// A rotor with end float and a coupling that limits it; the coupling set with the rotor on its
/// magnetic centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndFloat {
    /// Whole float of the rotor between its bearing shoulders.
    pub rotor: Estimate<Length>,
    /// Magnetic centre off the middle of that float, along +x.
    pub magnetic_centre: Estimate<Length>,
    /// Whole travel that the coupling leaves.
    pub coupling: Estimate<Length>,
}

impl EndFloat {
    /// Checked.
    ///
    /// # Errors
    /// [`AxialError`].
    pub fn new(
        rotor: Estimate<Length>,
        magnetic_centre: Estimate<Length>,
        coupling: Estimate<Length>,
    ) -> Result<Self, AxialError> {
        let sound = [rotor, magnetic_centre, coupling].iter().all(Estimate::is_sound);
        if !sound || rotor.value.si() < 0.0 || coupling.value.si() < 0.0 {
            return Err(AxialError::NotANumber);
        }
        if magnetic_centre.value.abs() > rotor.value / 2.0 {
            let (centre, float) = (magnetic_centre.value, rotor.value);
            return Err(AxialError::BeyondFloat { centre, float });
        }
        Ok(Self { rotor, magnetic_centre, coupling })
    }

    /// What is left between rotor and nearer shoulder when the coupling stops it.
    ///
    /// ```text
    /// c = R/2 − |m| − F/2
    /// ```
    pub fn clearance(&self) -> Estimate<Length> {
        let value =
            self.rotor.value / 2.0 - self.magnetic_centre.value.abs() - self.coupling.value / 2.0;
        let parts = [self.rotor.plus_minus / 2.0, self.magnetic_centre.plus_minus];
        let spread = parts
            .map(Physical::si)
            .into_iter()
            .fold(self.coupling.plus_minus.si() / 2.0, f64::hypot);
        Estimate::new(value, Length::from_si(spread))
    }

    /// Inside while the coupling stops the rotor before a shoulder does.
    pub fn clears_shoulders(&self) -> Verdict {
        judge(&self.clearance().shown(Kind::Gap), &Limits::at_least(0.0))
    }

    /// Inside while the coupling's travel is less than half the rotor's float.
    ///
    /// # Source
    /// Common practice.
    pub fn within_half_of_float(&self) -> Verdict {
        let spread = (self.rotor.plus_minus.si() / 2.0).hypot(self.coupling.plus_minus.si());
        let over = self.coupling.value - self.rotor.value / 2.0;
        judge(&Value::new(Kind::Gap, over).with_plus_minus(spread), &Limits::at_most(0.0))
    }

    /// How the clearance was found.
    pub fn working(&self) -> Working {
        Working::new(
            "Clearance left at the bearing shoulder",
            "c = R/2 − |m| − F/2",
            self.clearance().shown(Kind::Gap),
            Source::common_practice("limited end float, set on the magnetic centre"),
        )
        .term("R", "float of the rotor", self.rotor.shown(Kind::Gap))
        .term("m", "magnetic centre off the middle", self.magnetic_centre.shown(Kind::Gap))
        .term("F", "travel that the coupling leaves", self.coupling.shown(Kind::Gap))
        .valid("coupling set with the rotor on its magnetic centre, travel even to both sides")
    }
}

/// A float of the rotor and a travel of its coupling that go together for a size of motor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UsualFloat {
    /// Least float of the motor's rotor.
    pub rotor_least: Length,
    /// Greatest travel that the coupling may leave.
    pub coupling_greatest: Length,
    /// How it is known.
    pub source: Source,
}

/// What is paired for a sleeve-bearing motor of this power; `None` below 125 hp, where nothing is
/// set, and between 450 and 500 hp, where the pair depends on speed.
///
/// # Source
/// NEMA MG 1, part 20; from memory, to be confirmed ([`tables::limits`]).
pub fn usual_float(power: Power) -> Option<UsualFloat> {
    let [small, large] = END_FLOAT.map(|(rotor_least, coupling_greatest)| UsualFloat {
        rotor_least,
        coupling_greatest,
        source: END_FLOAT_SOURCE,
    });
    // Rounding on the way from another unit must not carry a motor over the end of its band.
    match (power.get::<horsepower>() * 1e6).round() / 1e6 {
        hp if (125.0..=450.0).contains(&hp) => Some(small),
        hp if hp >= 500.0 => Some(large),
        _ => None,
    }
}
