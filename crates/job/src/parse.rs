//! TOML to the tables of a file, with all that is wrong told at once.

use serde::de::DeserializeOwned;
use toml::de::{DeTable, Error};

use crate::FileError;
use crate::read::at;

/// More than these are not worth reading at once.
const MOST: usize = 20;

/// The file that a text holds.
///
/// # Errors
/// Text that is not TOML, every place of it; else every key that is not known and every value that
/// cannot be read.
pub(crate) fn parsed<T: DeserializeOwned>(text: &str) -> Result<T, Vec<FileError>> {
    let (_, broken) = DeTable::parse_recoverable(text);
    if !broken.is_empty() {
        let mut errors: Vec<FileError> =
            broken.iter().map(|error| from_toml(text, error)).take(MOST).collect();
        errors.dedup_by_key(|error| error.line);
        return Err(errors);
    }
    let mut left = text.to_owned();
    let mut errors = Vec::new();
    loop {
        let error = match toml::from_str::<T>(&left) {
            Ok(file) if errors.is_empty() => return Ok(file),
            Ok(_) => return Err(errors),
            Err(error) => error,
        };
        // What is missing may have been taken out here.
        let follows = !errors.is_empty() && error.message().starts_with("missing field");
        if !follows {
            errors.push(from_toml(text, &error));
        }
        match without(&left, &error) {
            Some(rest) if !follows && errors.len() < MOST => left = rest,
            _ => return Err(errors),
        }
    }
}

/// The text with the lines of an error blank, all else in its place; a table's header takes its
/// table with it. `None` where the error has no lines of its own.
fn without(text: &str, error: &Error) -> Option<String> {
    if error.message().starts_with("missing field") {
        return None;
    }
    let span = error.span()?;
    let start = text.get(..span.start)?.rfind('\n').map_or(0, |end| end + 1);
    let is_header = text[start..].trim_start().starts_with('[');
    let after = span.end.max(span.start + 1).min(text.len());
    let ends_at = if is_header { "\n[" } else { "\n" };
    let end = text.get(after..)?.find(ends_at).map_or(text.len(), |length| after + length);
    let blank = text[start..end].bytes().map(|b| if b == b'\n' { '\n' } else { ' ' });
    let rest = [&text[..start], &blank.collect::<String>(), &text[end..]].concat();
    (rest != text).then_some(rest)
}

fn from_toml(text: &str, error: &toml::de::Error) -> FileError {
    let message = error.message();
    let start = error.span().map(|span| span.start);
    if let Some((key, known)) = unknown_key(message) {
        let nearest = nearest(&key, &known);
        let word = if message.starts_with("unknown variant") { "word" } else { "key" };
        let what = format!("the {word} “{key}” is not known here");
        let mut error = at(text, start, what, format!("one of: {}", known.join(", ")));
        error.nearest = nearest;
        return error;
    }
    if let Some(key) = message.strip_prefix("missing field ") {
        let key = key.trim_matches('`');
        let expected = match key {
            "hubwright" => "the line hubwright = 1, the version of the file’s form".to_owned(),
            "job" => "a table [job] with the number and the title of the job".to_owned(),
            _ => format!("a line {key} = …"),
        };
        return at(text, start, format!("“{key}” is missing"), expected);
    }
    let (what, expected) = message.split_once("; expected ").unwrap_or((message, ""));
    at(text, start, what.trim_end().to_owned(), expected.trim_end().to_owned())
}

/// The key and the known keys in serde's message on an unknown field.
fn unknown_key(message: &str) -> Option<(String, Vec<String>)> {
    let rest =
        message.strip_prefix("unknown field ").or(message.strip_prefix("unknown variant "))?;
    let mut quoted = rest.split('`').skip(1).step_by(2).map(str::to_owned);
    let key = quoted.next()?;
    Some((key, quoted.collect()))
}

/// The known name that is most like `key`, if any is like it.
pub(crate) fn nearest<S: AsRef<str>>(key: &str, known: &[S]) -> Option<String> {
    let scored = known.iter().map(|name| (strsim::jaro_winkler(key, name.as_ref()), name));
    let best = scored.max_by(|a, b| a.0.total_cmp(&b.0))?;
    (best.0 > 0.7).then(|| best.1.as_ref().to_owned())
}
