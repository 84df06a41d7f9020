//! What a calculation gives back.

use quantities::{System, Value, Working};

/// Results by name, in the order of the catalogue, and their working.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// The results.
    pub results: Vec<(&'static str, Outcome)>,
    /// How they were found.
    pub working: Vec<Working>,
}

/// One result.
#[derive(Clone, Debug, PartialEq)]
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
    /// Adds a number.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: Value) -> Self {
        self.results.push((name, Outcome::Value(value)));
        self
    }

    /// Adds any result.
    #[must_use]
    pub fn and(mut self, name: &'static str, outcome: Outcome) -> Self {
        self.results.push((name, outcome));
        self
    }

    /// Adds a working.
    #[must_use]
    pub fn shown_by(mut self, working: Working) -> Self {
        self.working.push(working);
        self
    }

    /// The number of this name.
    pub fn value(&self, name: &str) -> Option<Value> {
        self.results.iter().find_map(|(key, outcome)| match outcome {
            Outcome::Value(value) if *key == name => Some(*value),
            _ => None,
        })
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
