//! What a calculation gives back.

use quantities::{
    Angle, AngularVelocity, Area, Energy, Estimate, Force, Kind, Length, Mass, MassDensity,
    Physical, Power, Pressure, Ratio, SpecificHeatCapacity, System, TemperatureCoefficient,
    TemperatureInterval, ThermalConductivity, ThermodynamicTemperature, Time, Torque, Value,
    Velocity, Verdict, Volume, Working,
};
use serde::Serialize;

use crate::ReckonError;
use crate::calculation::Output;

/// Results by name, in the order of the catalogue, and their working.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    declared: &'static [Output],
    /// The results. What is not known in a case is left out.
    pub results: Vec<(&'static str, Outcome)>,
    /// How they were found.
    pub working: Vec<Working>,
}

/// One result.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Outcome {
    /// A number.
    Value(Value),
    /// A word: a verdict, a class.
    Word(String),
    /// Several numbers: readings to aim at, shims.
    Values(Vec<Value>),
    /// Several words.
    Words(Vec<String>),
}

impl Answer {
    pub(crate) fn to(declared: &'static [Output]) -> Self {
        Self { declared, ..Self::default() }
    }

    /// Adds a result under a name that the catalogue declares, as the kind that it declares.
    /// Nothing is added for `None`.
    #[must_use]
    pub fn with(mut self, name: &'static str, result: impl Gives) -> Self {
        let output = self.declared.iter().find(|output| output.name == name);
        debug_assert!(output.is_some(), "{name} is not declared");
        let outcome = result.gives(output.and_then(|output| output.kind));
        self.results.extend(outcome.map(|outcome| (name, outcome)));
        self
    }

    /// Adds how a result was found.
    #[must_use]
    pub fn shown_by(mut self, working: impl IntoIterator<Item = Working>) -> Self {
        self.working.extend(working);
        self
    }

    /// The answer, unless some number in it is none: inputs of absurd size may overflow.
    pub(crate) fn sound(self) -> Result<Self, ReckonError> {
        let sound =
            |value: &Value| value.si.is_finite() && value.plus_minus.is_none_or(f64::is_finite);
        for (name, outcome) in &self.results {
            let values: &[Value] = match outcome {
                Outcome::Value(value) => std::slice::from_ref(value),
                Outcome::Values(values) => values,
                Outcome::Word(_) | Outcome::Words(_) => &[],
            };
            if !values.iter().all(sound) {
                return Err(ReckonError::not_valid(format!("{name} comes out as no number")));
            }
        }
        Ok(self)
    }

    /// The result of this name.
    pub fn result(&self, name: &str) -> Option<&Outcome> {
        self.results.iter().find_map(|(key, outcome)| (*key == name).then_some(outcome))
    }

    /// The number of this name.
    pub fn value(&self, name: &str) -> Option<Value> {
        match self.result(name) {
            Some(Outcome::Value(value)) => Some(*value),
            _ => None,
        }
    }
}

impl Outcome {
    /// As text.
    pub fn show(&self, system: System) -> String {
        match self {
            Self::Value(value) => value.show(system),
            Self::Word(word) => word.clone(),
            Self::Values(values) => {
                values.iter().map(|value| value.show(system)).collect::<Vec<_>>().join("; ")
            }
            Self::Words(words) => words.join("; "),
        }
    }
}

/// Something that can be a result.
pub trait Gives {
    /// The result, to be shown as `kind`; `None` when there is none.
    fn gives(self, kind: Option<Kind>) -> Option<Outcome>;
}

fn shown<Q: Physical>(quantity: Q, kind: Option<Kind>) -> Value {
    Value::new(kind.unwrap_or(Q::KIND), quantity)
}

macro_rules! quantities_give {
    ($($quantity:ident)*) => {$(
        impl Gives for $quantity {
            fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
                Some(Outcome::Value(shown(self, kind)))
            }
        }

        impl Gives for Vec<$quantity> {
            fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
                Some(Outcome::Values(self.into_iter().map(|one| shown(one, kind)).collect()))
            }
        }
    )*};
}

quantities_give! {
    Angle AngularVelocity Area Energy Force Length Mass MassDensity Power Pressure Ratio
    SpecificHeatCapacity TemperatureCoefficient TemperatureInterval ThermalConductivity
    ThermodynamicTemperature Time Torque Velocity Volume
}

impl Gives for Value {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        Some(Outcome::Value(Self { kind: kind.unwrap_or(self.kind), ..self }))
    }
}

impl Gives for Vec<Value> {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        let shown = self.into_iter().map(|one| Value { kind: kind.unwrap_or(one.kind), ..one });
        Some(Outcome::Values(shown.collect()))
    }
}

impl<Q: Physical<Spread = Q>> Gives for Estimate<Q> {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        self.shown(kind.unwrap_or(Q::KIND)).gives(kind)
    }
}

impl<Q: Physical<Spread = Q>> Gives for Vec<Estimate<Q>> {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        let shown = |one: &Estimate<Q>| one.shown(kind.unwrap_or(Q::KIND));
        self.iter().map(shown).collect::<Vec<_>>().gives(kind)
    }
}

impl Gives for f64 {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        Value::number(self).gives(kind)
    }
}

impl Gives for Vec<f64> {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        self.into_iter().map(Value::number).collect::<Vec<_>>().gives(kind)
    }
}

impl Gives for u32 {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        Value::count(self).gives(kind)
    }
}

impl Gives for Vec<u32> {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        self.into_iter().map(Value::count).collect::<Vec<_>>().gives(kind)
    }
}

impl Gives for &str {
    fn gives(self, _: Option<Kind>) -> Option<Outcome> {
        Some(Outcome::Word(self.to_owned()))
    }
}

impl Gives for String {
    fn gives(self, _: Option<Kind>) -> Option<Outcome> {
        Some(Outcome::Word(self))
    }
}

impl Gives for Vec<String> {
    fn gives(self, _: Option<Kind>) -> Option<Outcome> {
        Some(Outcome::Words(self))
    }
}

impl Gives for Vec<&str> {
    fn gives(self, _: Option<Kind>) -> Option<Outcome> {
        Some(Outcome::Words(self.into_iter().map(str::to_owned).collect()))
    }
}

impl Gives for Verdict {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        self.words().gives(kind)
    }
}

impl<T: Gives> Gives for Option<T> {
    fn gives(self, kind: Option<Kind>) -> Option<Outcome> {
        self.and_then(|result| result.gives(kind))
    }
}
