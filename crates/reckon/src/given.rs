//! The inputs of one case, read.

use std::collections::BTreeMap;

use quantities::{Measured, Physical};

use crate::calculation::{Calculation, Input, Sort};
use crate::{ReckonError, error};

/// The inputs of one case, each known to the calculation.
pub struct Given {
    calculation: &'static Calculation,
    texts: BTreeMap<&'static str, String>,
}

impl Given {
    /// Takes inputs as text.
    ///
    /// # Errors
    /// [`ReckonError::UnknownInput`], [`ReckonError::Twice`], [`ReckonError::Missing`].
    pub fn new<'a>(
        calculation: &'static Calculation,
        inputs: impl IntoIterator<Item = (&'a str, &'a str)>,
    ) -> Result<Self, ReckonError> {
        let mut texts = BTreeMap::new();
        for (name, text) in inputs {
            let input = find(calculation, name)?;
            if texts.insert(input.name, text.trim().to_owned()).is_some() {
                return Err(ReckonError::Twice(name.to_owned()));
            }
        }
        for input in calculation.inputs {
            match (texts.contains_key(input.name), input.default) {
                (false, Some(default)) => {
                    texts.insert(input.name, default.to_owned());
                }
                (false, None) => {
                    let (input, what) = (input.name, input.what);
                    return Err(ReckonError::Missing { calculation: calculation.name, input, what });
                }
                (true, _) => {}
            }
        }
        Ok(Self { calculation, texts })
    }

    /// A quantity.
    ///
    /// # Errors
    /// [`ReckonError::Unreadable`].
    pub fn quantity<Q: Physical>(&self, name: &'static str) -> Result<Q, ReckonError> {
        self.measured(name).map(|measured| measured.value())
    }

    /// A quantity with its `±`.
    ///
    /// # Errors
    /// [`ReckonError::Unreadable`].
    pub fn measured<Q: Physical>(&self, name: &'static str) -> Result<Measured<Q>, ReckonError> {
        self.text(name).parse().map_err(|why| ReckonError::unreadable(name, &why))
    }

    /// A quantity that may be left out.
    ///
    /// # Errors
    /// [`ReckonError::Unreadable`].
    pub fn optional<Q: Physical>(&self, name: &'static str) -> Result<Option<Q>, ReckonError> {
        if self.text(name).is_empty() { Ok(None) } else { self.quantity(name).map(Some) }
    }

    /// Several quantities.
    ///
    /// # Errors
    /// [`ReckonError::Unreadable`].
    pub fn quantities<Q: Physical>(&self, name: &'static str) -> Result<Vec<Q>, ReckonError> {
        let parts = self.text(name).split(';').filter(|part| !part.trim().is_empty());
        let read = |part: &str| part.parse::<Measured<Q>>().map(|measured| measured.value());
        parts.map(|part| read(part).map_err(|why| ReckonError::unreadable(name, &why))).collect()
    }

    /// A word; for a choice, one of its words.
    ///
    /// # Errors
    /// [`ReckonError::Unreadable`] for a word that is no choice.
    pub fn word(&self, name: &'static str) -> Result<&str, ReckonError> {
        let text = self.text(name);
        let input = self.calculation.inputs.iter().find(|input| input.name == name);
        match input.map(|input| input.sort) {
            Some(Sort::Choice(words)) if !words.contains(&text) => {
                let why = format!("“{text}” is none of: {}", words.join(", "));
                Err(ReckonError::Unreadable { input: name.to_owned(), why })
            }
            _ => Ok(text),
        }
    }

    fn text(&self, name: &'static str) -> &str {
        self.texts.get(name).map_or("", String::as_str)
    }
}

fn find(calculation: &'static Calculation, name: &str) -> Result<&'static Input, ReckonError> {
    calculation.inputs.iter().find(|input| input.name == name).ok_or_else(|| {
        let known: Vec<&'static str> = calculation.inputs.iter().map(|input| input.name).collect();
        ReckonError::UnknownInput {
            calculation: calculation.name,
            input: name.to_owned(),
            nearest: error::nearest(name, known.iter().copied()),
            known,
        }
    })
}
