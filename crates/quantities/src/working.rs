//! How a number was found: formula, what was put in, result, source.

use std::borrow::Cow;

use serde::Serialize;

use crate::{Source, System, Value};

/// One quantity that was put into a formula.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Term {
    /// Its letter in the formula.
    pub symbol: &'static str,
    /// What it is, in words.
    pub name: Cow<'static, str>,
    /// What was put in.
    pub value: Value,
}

/// The working of one number.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Working {
    /// What was found, in words.
    pub name: Cow<'static, str>,
    /// The formula in letters, one line an equation; the last one gives the result.
    pub formula: &'static str,
    /// What was put in.
    pub terms: Vec<Term>,
    /// What came out.
    pub result: Value,
    /// What it holds for.
    pub valid: &'static str,
    /// Where the formula comes from.
    pub source: Source,
}

impl Working {
    /// A working without terms; [`Working::term`] adds them.
    pub fn new(
        name: impl Into<Cow<'static, str>>,
        formula: &'static str,
        result: Value,
        source: Source,
    ) -> Self {
        Self { name: name.into(), formula, terms: Vec::new(), result, valid: "", source }
    }

    /// Adds what was put in.
    #[must_use]
    pub fn term(
        mut self,
        symbol: &'static str,
        name: impl Into<Cow<'static, str>>,
        value: Value,
    ) -> Self {
        self.terms.push(Term { symbol, name: name.into(), value });
        self
    }

    /// Says what it holds for.
    #[must_use]
    pub fn valid(mut self, valid: &'static str) -> Self {
        self.valid = valid;
        self
    }

    /// The right side of the last line of the formula with the values put in for their letters.
    pub fn put_in(&self, system: System) -> String {
        let last = self.formula.lines().last().unwrap_or("").trim();
        let right = last.split_once('=').map_or(last, |(_, right)| right.trim());
        let mut out = String::new();
        let mut word = String::new();
        for c in right.chars().chain(std::iter::once(' ')) {
            let power = matches!(c, '²' | '³' | '⁴');
            if !power && (c.is_alphanumeric() || c == '_' || c == '′') {
                word.push(c);
                continue;
            }
            let spelt = self.spell(&word, system);
            let brackets = if power && spelt != word { ["(", ")"] } else { ["", ""] };
            out.extend([brackets[0], &spelt, brackets[1]]);
            word.clear();
            out.push(c);
        }
        out.trim_end().to_owned()
    }

    fn spell(&self, word: &str, system: System) -> String {
        let term = self.terms.iter().find(|term| term.symbol == word);
        term.map_or_else(
            || word.to_owned(),
            |term| Value { plus_minus: None, ..term.value }.show(system),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Force, Kind, Length, Physical, Torque};

    #[test]
    fn letters_give_way_to_values() {
        let working = Working::new(
            "Tightening torque",
            "T = K·F·d",
            Value::new(Kind::Torque, Torque::from_si(218.24)),
            Source::common_practice("nut factor"),
        )
        .term("K", "nut factor", Value::number(0.2))
        .term("F", "preload", Value::new(Kind::Force, Force::from_si(68_200.0)))
        .term("d", "bolt diameter", Value::new(Kind::Length, Length::from_si(0.016)));
        assert_eq!(working.put_in(System::Metric), "0.200·68.2 kN·16.0 mm");
    }

    #[test]
    fn a_power_takes_the_whole_value() {
        let ratio = Value::number(0.5);
        let source = Source::common_practice("geometry");
        let working = Working::new("Square", "A = π/4·d²", ratio, source);
        let d = Value::new(Kind::Length, Length::from_si(0.022));
        assert_eq!(working.term("d", "shank", d).put_in(System::Metric), "π/4·(22.0 mm)²");
    }
}
