//! Text to quantity: a number, a unit, and perhaps a `±`.

use crate::number::{self, NumberError};
use crate::{Dimension, Physical, Unit, unit};

/// Why a text is not the quantity that was asked for.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TextError {
    /// Nothing was written.
    #[error("nothing is written here; expected {}", like(*.0))]
    Empty(Dimension),
    /// No number could be read.
    #[error("“{text}” is not a number with a unit; expected {}", like(*.wanted))]
    NotANumber {
        /// What was written.
        text: String,
        /// What was wanted.
        wanted: Dimension,
    },
    /// The number can be read in two ways.
    #[error(
        "“{text}” has two meanings, {first} or {second}; write it with a decimal point and no thousands mark"
    )]
    TwoMeanings {
        /// What was written.
        text: String,
        /// The one reading.
        first: String,
        /// The other.
        second: String,
    },
    /// A number without its unit.
    #[error("“{text}” has no unit; expected {}", like(*.wanted))]
    NoUnit {
        /// What was written.
        text: String,
        /// What was wanted.
        wanted: Dimension,
    },
    /// A unit of something else.
    #[error("“{unit}” is a unit of {}; expected {}", words(.is), like(*.wanted))]
    WrongUnit {
        /// The unit that was written.
        unit: String,
        /// What it measures.
        is: Vec<Dimension>,
        /// What was wanted.
        wanted: Dimension,
    },
    /// A unit that nobody knows.
    #[error("“{unit}” is not a unit that is known here; expected {}", like(*.wanted))]
    UnknownUnit {
        /// The unit that was written.
        unit: String,
        /// What was wanted.
        wanted: Dimension,
    },
    /// A unit that means different things in different places.
    #[error("“{unit}” means different things in different places; write {instead}")]
    UnitOfTwoMeanings {
        /// The unit that was written.
        unit: String,
        /// What to write instead.
        instead: &'static str,
    },
    /// The part after `±` cannot be read.
    #[error("the part after ± in “{text}” is not a spread of the same quantity: {why}")]
    Spread {
        /// What was written.
        text: String,
        /// What is wrong with it.
        why: String,
    },
}

fn like(wanted: Dimension) -> String {
    let [metric, inch] = wanted.examples();
    format!("{}, such as {metric} or {inch}", wanted.words())
}

fn words(dimensions: &[Dimension]) -> String {
    dimensions.iter().map(|d| d.words()).collect::<Vec<_>>().join(" or of ")
}

/// A quantity as read, where its dimension is only known at run time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// In SI base units.
    pub si: f64,
    /// Half the width of its `±` in SI, if one was written.
    pub spread: Option<f64>,
}

/// Reads a quantity of type `Q`, such as `parse::<Length>("80.062 ± 0.004 mm")`.
///
/// # Errors
/// [`TextError`]: a missing, wrong or unknown unit, a number that is none or has two meanings.
///
/// # Example
/// ```
/// use quantities::{Length, parse};
/// use uom::si::length::millimeter;
/// let bore = parse::<Length>("3 1/8 in")?;
/// assert!((bore.value().get::<millimeter>() - 79.375).abs() < 1e-9);
/// # Ok::<(), quantities::TextError>(())
/// ```
pub fn parse<Q: Physical>(text: &str) -> Result<crate::Measured<Q>, TextError> {
    text.parse()
}

/// Reads a quantity of a dimension that is only known at run time.
///
/// # Errors
/// As [`parse`].
pub fn read(text: &str, wanted: Dimension) -> Result<Reading, TextError> {
    let clean = text.trim();
    if clean.is_empty() {
        return Err(TextError::Empty(wanted));
    }
    let Some((main, spread)) = split_spread(clean) else {
        let (si, _) = quantity(clean, wanted)?;
        return Ok(Reading { si, spread: None });
    };
    let (main, spread) = (main.trim(), spread.trim());
    let spread_error =
        |why: TextError| TextError::Spread { text: clean.into(), why: why.to_string() };
    // "80.062 ± 0.004 mm" writes the unit once, at the end; "80.062 mm ± 4 µm" writes two.
    let (_, spread_unit) = split_unit(spread);
    let (_, main_unit) = split_unit(main);
    let main = if main_unit.is_empty() { format!("{main} {spread_unit}") } else { main.into() };
    let (si, unit) = quantity(&main, wanted)?;
    let spread =
        if spread_unit.is_empty() { format!("{spread} {}", unit.name()) } else { spread.into() };
    let half_width = match wanted {
        // The spread of a temperature is a difference of temperatures.
        Dimension::Temperature => quantity(&spread, Dimension::TemperatureDifference),
        _ => quantity(&spread, wanted),
    };
    match half_width {
        Ok((half_width, _)) if half_width >= 0.0 => Ok(Reading { si, spread: Some(half_width) }),
        Ok(_) => Err(TextError::Spread { text: clean.into(), why: "it is negative".into() }),
        Err(why) => Err(spread_error(why)),
    }
}

fn split_spread(text: &str) -> Option<(&str, &str)> {
    text.split_once('±').or_else(|| {
        let spelt = || ["+/-", "+-"].into_iter().find_map(|mark| text.split_once(mark));
        text.contains('+').then(spelt)?
    })
}

/// The number and the unit of "80.062 mm"; a fraction keeps its slash.
fn split_unit(text: &str) -> (&str, &str) {
    let mut end = 0;
    let mut rest = text.char_indices().peekable();
    while let Some((at, c)) = rest.next() {
        let next_is_digit =
            rest.peek().is_some_and(|(_, c)| c.is_ascii_digit() || *c == '-' || *c == '+');
        let in_number = c.is_ascii_digit()
            || matches!(c, '.' | ',' | '-' | '−' | '–' | '+')
            || (matches!(c, '/' | 'e' | 'E') && next_is_digit && end > 0)
            || (c.is_whitespace() && next_is_digit);
        if in_number {
            end = at + c.len_utf8();
        } else if !c.is_whitespace() {
            break;
        }
    }
    (text[..end].trim(), text[end..].trim())
}

fn quantity(text: &str, wanted: Dimension) -> Result<(f64, &'static Unit), TextError> {
    let (digits, name) = split_unit(text);
    let number = number::read(digits).map_err(|error| match error {
        NumberError::None => TextError::NotANumber { text: text.trim().into(), wanted },
        NumberError::TwoMeanings(first, second) => {
            TextError::TwoMeanings { text: digits.into(), first, second }
        }
    })?;
    let unit = named(name, wanted, text)?;
    if number::is_fraction(digits) && !(unit.takes_fractions() || wanted == Dimension::Number) {
        return Err(TextError::NotANumber { text: text.trim().into(), wanted });
    }
    let si = unit.to_si(number);
    if si.is_finite() {
        Ok((si, unit))
    } else {
        Err(TextError::NotANumber { text: text.trim().into(), wanted })
    }
}

fn named(name: &str, wanted: Dimension, text: &str) -> Result<&'static Unit, TextError> {
    if let Some(unit) = unit::find(wanted, name) {
        return Ok(unit);
    }
    if name.is_empty() {
        return Err(TextError::NoUnit { text: text.trim().into(), wanted });
    }
    if let Some((_, instead)) = unit::TWO_MEANINGS.iter().find(|(unit, _)| *unit == name) {
        return Err(TextError::UnitOfTwoMeanings { unit: name.into(), instead });
    }
    let is = unit::dimensions_with(name);
    if is.is_empty() {
        Err(TextError::UnknownUnit { unit: name.into(), wanted })
    } else {
        Err(TextError::WrongUnit { unit: name.into(), is, wanted })
    }
}
