//! Bringing a reading to 20 °C, and to the setting standard.
//!
//! A warm instrument has stretched and reads small; a warm part has grown and reads large:
//!
//! ```text
//! d20 = (R + S − Rs)·(1 + a·t)/(1 + b·u)
//! ```
//! R reading · S size of the setting standard at 20 °C · Rs what the instrument read on it ·
//! a, t expansion of the instrument (of the standard it was set on, if any) and its temperature
//! over 20 °C · b, u the same of the part

use quantities::{
    Basis, Kind, Length, Physical, Source, TemperatureCoefficient, TemperatureInterval,
    ThermodynamicTemperature, Value, Working, root_sum_square,
};

use crate::{Estimate, is_positive};

/// 20 °C (ISO 1), in kelvin.
pub(crate) const REFERENCE_K: f64 = 293.15;

/// How warm part and instrument were while the readings were taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Temperatures {
    /// The part.
    pub part: ThermodynamicTemperature,
    /// The instrument, or the standard that it was set on.
    pub instrument: ThermodynamicTemperature,
    /// Expansion of the part.
    pub part_expansion: TemperatureCoefficient,
    /// Expansion of the instrument, or of the standard that it was set on.
    pub instrument_expansion: TemperatureCoefficient,
    /// The `±` of each of the two temperatures.
    pub spread: TemperatureInterval,
    /// The `±` of each of the two expansions.
    pub expansion_spread: TemperatureCoefficient,
}

/// The parts of the `±` that temperature brings into a size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThermalSpread {
    /// From the `±` of the two temperatures.
    pub temperatures: Length,
    /// From the `±` of the two expansions.
    pub expansions: Length,
}

impl ThermalSpread {
    /// Both together.
    pub fn whole(&self) -> Length {
        Length::from_si(root_sum_square([self.temperatures.si(), self.expansions.si()]))
    }
}

impl Temperatures {
    /// Part and instrument over 20 °C, in kelvin.
    fn over(&self) -> (f64, f64) {
        (self.part.si() - REFERENCE_K, self.instrument.si() - REFERENCE_K)
    }

    /// What a reading is multiplied by.
    pub(crate) fn factor(&self) -> f64 {
        let (part, instrument) = self.over();
        (1.0 + self.instrument_expansion.si() * instrument)
            / (1.0 + self.part_expansion.si() * part)
    }

    /// The `±` that a size takes from its temperatures and expansions.
    ///
    /// ```text
    /// Ut = d·√(a² + b²)·U(T)      Ua = d·√(t² + u²)·U(α)
    /// ```
    /// # Valid
    /// First order; the two temperatures, and the two expansions, known apart from each other.
    /// # Source
    /// JCGM 100:2008 (GUM), annex H.1, its terms in δα and δθ.
    pub fn spread_of(&self, size: Length) -> ThermalSpread {
        let (part, instrument) = self.over();
        let (a, b) = (self.instrument_expansion.si(), self.part_expansion.si());
        ThermalSpread {
            temperatures: size * (a.hypot(b) * self.spread.si()),
            expansions: size * (part.hypot(instrument) * self.expansion_spread.si()),
        }
    }

    /// What bringing a size to 20 °C added to it.
    ///
    /// ```text
    /// c = d − d·(1 + b·u)/(1 + a·t)
    /// ```
    pub fn correction(&self, at_20: Length) -> Correction {
        let by = at_20 - at_20 / self.factor();
        Correction { temperatures: *self, at_20, by }
    }

    fn terms(&self, working: Working) -> Working {
        let (part, instrument) = self.over();
        let kelvin = |k| Value::new(Kind::TemperatureDifference, TemperatureInterval::from_si(k));
        let expansion = |alpha| Value::new(Kind::Expansion, alpha);
        working
            .term("a", "expansion of the instrument", expansion(self.instrument_expansion))
            .term("t", "instrument over 20 °C", kelvin(instrument))
            .term("b", "expansion of the part", expansion(self.part_expansion))
            .term("u", "part over 20 °C", kelvin(part))
    }

    pub(crate) fn is_sound(&self) -> bool {
        let sound = |alpha: f64| alpha.is_finite() && (0.0..1e-3).contains(&alpha);
        is_positive(self.part.si())
            && is_positive(self.instrument.si())
            && sound(self.part_expansion.si())
            && sound(self.instrument_expansion.si())
            && sound(self.expansion_spread.si())
            && self.spread.si().is_finite()
            && self.spread.si() >= 0.0
    }
}

/// What warmth of part and instrument added to a size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Correction {
    /// How warm they were.
    pub temperatures: Temperatures,
    /// The size at 20 °C.
    pub at_20: Length,
    /// What was added.
    pub by: Length,
}

impl Correction {
    /// How it was found.
    pub fn working(&self) -> Working {
        let result = Value::new(Kind::Allowance, self.by);
        let formula = "c = d − d·(1 + b·u)/(1 + a·t)";
        let working = Working::new("Brought to 20 °C", formula, result, ISO_1).term(
            "d",
            "size at 20 °C",
            Value::new(Kind::Size, self.at_20),
        );
        self.temperatures.terms(working)
    }
}

/// What the instrument was set on: a ring, a length bar, a gauge block.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// The standard's size at 20 °C with its `±`.
    pub standard: Estimate<Length>,
    /// What the instrument read on it.
    pub read: Length,
}

impl Setting {
    /// What is added to every reading.
    pub fn shift(&self) -> Length {
        self.standard.value - self.read
    }

    /// How the shift was found.
    pub fn working(&self) -> Working {
        let source =
            Source::new("what the standard is, less what was read on it", "", Basis::Computed);
        let result = Value::new(Kind::Allowance, self.shift());
        Working::new("Set right by the standard", "c = S − r", result, source)
            .term("S", "setting standard", self.standard.shown(Kind::Size))
            .term("r", "reading on the standard", Value::new(Kind::Size, self.read))
    }

    /// How a difference from the standard became a reading.
    pub fn difference_working(&self, difference: Length) -> Working {
        let source =
            Source::new("what the standard is, and the difference from it", "", Basis::Computed);
        let result = Value::new(Kind::Size, self.standard.value + difference);
        Working::new("Reading from a difference", "R = S + D", result, source)
            .term("S", "setting standard", self.standard.shown(Kind::Size))
            .term("D", "difference read", Value::new(Kind::Allowance, difference))
    }

    pub(crate) fn is_sound(&self) -> bool {
        self.standard.is_sound()
            && is_positive(self.standard.value.si())
            && is_positive(self.read.si())
    }
}

/// How one reading became a size at 20 °C.
pub(super) fn working(
    read: Length,
    size: Length,
    temperatures: Option<&Temperatures>,
    setting: Option<&Setting>,
) -> Working {
    let shown = |length| Value::new(Kind::Size, length);
    let formula = match (setting, temperatures) {
        (None, None) => "d = R",
        (Some(_), None) => "d = R + S − r",
        (None, Some(_)) => "d = R·(1 + a·t)/(1 + b·u)",
        (Some(_), Some(_)) => "d = (R + S − r)·(1 + a·t)/(1 + b·u)",
    };
    let mut working = Working::new("Size at 20 °C", formula, shown(size), ISO_1).term(
        "R",
        "reading",
        shown(read),
    );
    if let Some(setting) = setting {
        working = working.term("S", "setting standard", setting.standard.shown(Kind::Size)).term(
            "r",
            "reading on the standard",
            shown(setting.read),
        );
    }
    match temperatures {
        Some(temperatures) => temperatures.terms(working),
        None => working,
    }
}

const ISO_1: Source = Source::new("ISO 1", "20 °C", Basis::Memory);
