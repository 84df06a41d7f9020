//! The inputs of one case, read.

use quantities::{Dimension, Estimate, Kind, Measured, Physical, Ratio, Reading, TextError, read};

use crate::calculation::{Calculation, Input, Sort};
use crate::{Answer, ReckonError, error};

/// The inputs of one case, each known to the calculation and read as what it takes.
pub struct Given {
    calculation: &'static Calculation,
    /// One for each input, in the order of the catalogue.
    written: Vec<Written>,
}

/// What was written for one input.
#[derive(Clone, Debug, PartialEq)]
enum Written {
    Nothing,
    Quantity(Reading, String),
    Quantities(Vec<Reading>, String),
    Words(Vec<String>),
}

impl Given {
    /// Takes inputs as text.
    ///
    /// # Errors
    /// [`ReckonError::UnknownInput`], [`ReckonError::Twice`], [`ReckonError::Missing`],
    /// [`ReckonError::Unreadable`].
    pub fn new<'a>(
        calculation: &'static Calculation,
        inputs: impl IntoIterator<Item = (&'a str, &'a str)>,
    ) -> Result<Self, ReckonError> {
        let mut texts = vec![None; calculation.inputs.len()];
        for (name, text) in inputs {
            let place = find(calculation, name)?;
            if texts[place].replace(text.trim()).is_some() {
                return Err(ReckonError::Twice(name.to_owned()));
            }
        }
        let understood = |(input, text): (&'static Input, Option<&str>)| {
            let text = text.or(input.default).ok_or(ReckonError::Missing {
                calculation: calculation.name,
                input: input.name,
                what: input.what,
            })?;
            understood(input, text)
        };
        let written = calculation.inputs.iter().zip(texts).map(understood);
        let written = written.collect::<Result<_, _>>()?;
        Ok(Self { calculation, written })
    }

    /// An answer to this calculation, without results yet.
    pub fn answer(&self) -> Answer {
        Answer::to(self.calculation.outputs)
    }

    /// A quantity, its `±` left aside.
    ///
    /// # Errors
    /// [`ReckonError::Missing`] for one that was left out.
    pub fn quantity<Q: Physical>(&self, name: &'static str) -> Result<Q, ReckonError> {
        self.optional(name).ok_or_else(|| self.missing(name))
    }

    /// A quantity that may have been left out, its `±` left aside.
    pub fn optional<Q: Physical>(&self, name: &'static str) -> Option<Q> {
        self.readings::<Q>(name).first().map(|reading| Q::from_si(reading.si))
    }

    /// A quantity with its `±`, exact when none was written.
    ///
    /// # Errors
    /// As [`Given::quantity`].
    pub fn estimate<Q: Physical<Spread = Q>>(
        &self,
        name: &'static str,
    ) -> Result<Estimate<Q>, ReckonError> {
        self.estimates(name).into_iter().next().ok_or_else(|| self.missing(name))
    }

    /// A quantity as it was written, for those that keep the text.
    ///
    /// # Errors
    /// As [`Given::quantity`].
    pub fn measured<Q: Physical>(&self, name: &'static str) -> Result<Measured<Q>, ReckonError> {
        self.written_as(name).ok_or_else(|| self.missing(name))
    }

    /// A quantity as it was written, which may have been left out.
    pub fn written_as<Q: Physical>(&self, name: &'static str) -> Option<Measured<Q>> {
        match self.written(name) {
            Some(Written::Quantity(_, text) | Written::Quantities(_, text)) => text.parse().ok(),
            _ => None,
        }
    }

    /// Several quantities; none when they were left out.
    pub fn quantities<Q: Physical>(&self, name: &'static str) -> Vec<Q> {
        self.readings::<Q>(name).iter().map(|reading| Q::from_si(reading.si)).collect()
    }

    /// Several quantities, none where a calculation has no such input.
    pub(crate) fn listed<Q: Physical>(&self, name: &'static str) -> Vec<Q> {
        if self.input(name).is_some() { self.quantities(name) } else { Vec::new() }
    }

    /// Several quantities, each with its `±`.
    pub fn estimates<Q: Physical<Spread = Q>>(&self, name: &'static str) -> Vec<Estimate<Q>> {
        let estimate = |reading: &Reading| {
            let half_width = reading.spread.unwrap_or(0.0);
            Estimate::new(Q::from_si(reading.si), Q::from_si(half_width))
        };
        self.readings::<Q>(name).iter().map(estimate).collect()
    }

    /// So many quantities, no more and no fewer.
    ///
    /// # Errors
    /// [`ReckonError::Unreadable`] for another number of them.
    pub fn exactly<Q: Physical, const N: usize>(
        &self,
        name: &'static str,
    ) -> Result<[Q; N], ReckonError> {
        let all = self.quantities(name);
        all.try_into().map_err(|all: Vec<Q>| self.unlike(name, N, all.len()))
    }

    /// A plain number.
    ///
    /// # Errors
    /// As [`Given::quantity`].
    pub fn number(&self, name: &'static str) -> Result<f64, ReckonError> {
        self.quantity::<Ratio>(name).map(|number| number.value)
    }

    /// A number of things.
    ///
    /// # Errors
    /// As [`Given::quantity`]; [`ReckonError::Unreadable`] for what is not a whole number from 0 to
    /// a million.
    pub fn count(&self, name: &'static str) -> Result<u32, ReckonError> {
        let number = self.number(name)?;
        let whole = number.round();
        if (whole - number).abs() > 1e-9 || !(0.0..=1e6).contains(&whole) {
            let why = format!("{number} is not a whole number from 0 to a million");
            return Err(ReckonError::Unreadable { input: name.to_owned(), why });
        }
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "just checked")]
        Ok(whole as u32)
    }

    /// A word; for a choice, one of its words. Empty when it was left out.
    pub fn word(&self, name: &'static str) -> &str {
        self.words(name).first().map_or("", String::as_str)
    }

    /// Several words; none when they were left out.
    pub fn words(&self, name: &'static str) -> &[String] {
        match self.written(name) {
            Some(Written::Words(words)) => words,
            _ => &[],
        }
    }

    /// What the word of a choice stands for.
    ///
    /// # Errors
    /// [`ReckonError::Missing`] for one that was left out.
    pub(crate) fn pick<T: Copy>(
        &self,
        name: &'static str,
        pairs: &[(&'static str, T)],
    ) -> Result<T, ReckonError> {
        let word = self.word(name);
        let found = pairs.iter().find(|(known, _)| *known == word);
        found.map(|(_, meant)| *meant).ok_or_else(|| self.missing(name))
    }

    /// An input cannot be what it is.
    pub(crate) fn unreadable(name: &'static str, why: impl Into<String>) -> ReckonError {
        ReckonError::Unreadable { input: name.to_owned(), why: why.into() }
    }

    fn readings<Q: Physical>(&self, name: &'static str) -> &[Reading] {
        debug_assert_eq!(self.dimension(name), Some(Q::DIMENSION), "{name}");
        match self.written(name) {
            Some(Written::Quantity(reading, _)) => std::slice::from_ref(reading),
            Some(Written::Quantities(readings, _)) => readings,
            _ => &[],
        }
    }

    fn written(&self, name: &str) -> Option<&Written> {
        let place = self.calculation.inputs.iter().position(|input| input.name == name)?;
        self.written.get(place)
    }

    fn input(&self, name: &str) -> Option<&'static Input> {
        self.calculation.inputs.iter().find(|input| input.name == name)
    }

    fn dimension(&self, name: &str) -> Option<Dimension> {
        match self.input(name)?.sort {
            Sort::Quantity(kind) | Sort::Quantities(kind) => Some(kind.dimension()),
            _ => None,
        }
    }

    fn missing(&self, input: &'static str) -> ReckonError {
        let what = self.input(input).map_or("", |input| input.what);
        ReckonError::Missing { calculation: self.calculation.name, input, what }
    }

    fn unlike(&self, name: &'static str, wanted: usize, found: usize) -> ReckonError {
        let what = self.input(name).map_or("", |input| input.what);
        let why = format!("{found} given where {wanted} are wanted: {what}");
        ReckonError::Unreadable { input: name.to_owned(), why }
    }
}

fn understood(input: &Input, text: &str) -> Result<Written, ReckonError> {
    let unreadable = |why: &TextError| ReckonError::unreadable(input.name, why);
    if text.is_empty() && input.default == Some("") {
        return Ok(Written::Nothing);
    }
    match input.sort {
        Sort::Quantity(kind) => {
            let reading = read(text, kind.dimension()).map_err(|why| unreadable(&why))?;
            Ok(Written::Quantity(reading, text.to_owned()))
        }
        Sort::Quantities(kind) => several(text, kind).map_err(|why| unreadable(&why)),
        Sort::Choice(words) if !words.contains(&text) => {
            let nearest = error::nearest(text, words.iter().copied());
            let why = format!(
                "“{text}” is none of: {}{}",
                words.join(", "),
                error::did_you_mean(nearest.as_deref())
            );
            Err(ReckonError::Unreadable { input: input.name.to_owned(), why })
        }
        Sort::Choice(_) | Sort::Word => Ok(Written::Words(vec![text.to_owned()])),
        Sort::Words => Ok(Written::Words(parts(text).map(str::to_owned).collect())),
    }
}

/// Several quantities. Where only the last has a unit, it serves them all: "0; 5; 12; 7 mil".
fn several(text: &str, kind: Kind) -> Result<Written, TextError> {
    let dimension = kind.dimension();
    let all: Vec<&str> = parts(text).collect();
    let (last, before) = all.split_last().ok_or(TextError::Empty(dimension))?;
    let is_unit = |c: char| c.is_alphabetic() || "°µ%\"".contains(c);
    let unit = last.find(is_unit).map_or("", |start| &last[start..]);
    let shared = !unit.is_empty() && !before.iter().any(|part| part.contains(is_unit));
    let with_unit = |part: &str| if shared { format!("{part} {unit}") } else { part.to_owned() };
    let before = before.iter().map(|part| read(&with_unit(part), dimension));
    let readings: Result<Vec<Reading>, _> = before.chain([read(last, dimension)]).collect();
    Ok(Written::Quantities(readings?, text.to_owned()))
}

fn parts(text: &str) -> impl Iterator<Item = &str> {
    text.split(';').map(str::trim).filter(|part| !part.is_empty())
}

/// The place of an input among those of its calculation.
fn find(calculation: &'static Calculation, name: &str) -> Result<usize, ReckonError> {
    calculation.inputs.iter().position(|input| input.name == name).ok_or_else(|| {
        let known: Vec<&'static str> = calculation.inputs.iter().map(|input| input.name).collect();
        ReckonError::UnknownInput {
            calculation: calculation.name,
            input: name.to_owned(),
            nearest: error::nearest(name, known.iter().copied()),
            known,
        }
    })
}
