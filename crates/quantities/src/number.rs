//! Reading a number as people write it: decimal point or comma, fractions of an inch, a true
//! minus; and refusing one that has two meanings.

/// Why a piece of text is not one number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum NumberError {
    /// No number here.
    None,
    /// It could be either of these.
    TwoMeanings(String, String),
}

/// The number in `text`, all of it.
pub(crate) fn read(text: &str) -> Result<f64, NumberError> {
    if let Some(number) = bare(text) {
        return Ok(number);
    }
    let text = text.trim().replace(['−', '–'], "-");
    let (sign, digits) = match text.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, text.strip_prefix('+').unwrap_or(&text).trim_start()),
    };
    let magnitude = if digits.contains('/') { fraction(digits)? } else { decimal(digits)? };
    Ok(sign * magnitude)
}

/// The number of a text that holds nothing but digits and at most one point, as most do.
fn bare(text: &str) -> Option<f64> {
    let digits = text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    digits.then(|| text.parse().ok().filter(|number: &f64| number.is_finite()))?
}

/// True when the text writes a common fraction, such as 3 1/8.
pub(crate) fn is_fraction(text: &str) -> bool {
    text.contains('/')
}

/// "3 1/8", "3-1/8", "1/8".
fn fraction(text: &str) -> Result<f64, NumberError> {
    let (whole, part) = text.rsplit_once([' ', '-']).unwrap_or(("0", text));
    let (above, below) = part.split_once('/').ok_or(NumberError::None)?;
    let [whole, above, below] = [whole, above, below].map(|piece| piece.trim().parse::<u32>());
    match (whole, above, below) {
        (Ok(whole), Ok(above), Ok(below)) if above < below => {
            Ok(f64::from(whole) + f64::from(above) / f64::from(below))
        }
        _ => Err(NumberError::None),
    }
}

fn decimal(text: &str) -> Result<f64, NumberError> {
    let text = join_groups(text);
    let commas = text.matches(',').count();
    let points = text.matches('.').count();
    let plain = match (points, commas) {
        (_, 0) => text,
        (0, 1) => decimal_comma(&text)?,
        (0, _) => thousands(&text, ',')?,
        (1, _) if text.find('.') > text.rfind(',') => {
            let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
            format!("{}.{part}", thousands(whole, ',')?)
        }
        (_, 1) => {
            let (whole, part) = text.split_once(',').unwrap_or((&text, ""));
            format!("{}.{part}", thousands(whole, '.')?)
        }
        _ => return Err(NumberError::None),
    };
    let begins = plain.starts_with(|c: char| c.is_ascii_digit() || c == '.');
    match plain.parse::<f64>() {
        Ok(number) if begins && number.is_finite() => Ok(number),
        _ => Err(NumberError::None),
    }
}

/// "1 480" is 1480: a space, narrow or not, between groups of three digits.
fn join_groups(text: &str) -> String {
    let text = text.replace(['\u{a0}', '\u{2009}', '\u{202f}'], " ");
    let groups: Vec<&str> = text.split(' ').collect();
    let leading =
        |group: &str| (1..=3).contains(&group.len()) && group.bytes().all(|b| b.is_ascii_digit());
    let following = |group: &str| {
        let whole = group.split(['.', ',']).next().unwrap_or("");
        whole.len() == 3 && whole.bytes().all(|b| b.is_ascii_digit())
    };
    let joins = groups.len() > 1 && leading(groups[0]) && groups[1..].iter().all(|g| following(g));
    if joins { groups.concat() } else { text }
}

/// One comma and no point: a decimal comma, unless it could as well part thousands.
fn decimal_comma(text: &str) -> Result<String, NumberError> {
    let (whole, part) = text.split_once(',').unwrap_or((text, ""));
    let may_part_thousands =
        part.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0');
    if may_part_thousands {
        return Err(NumberError::TwoMeanings(format!("{whole}.{part}"), format!("{whole}{part}")));
    }
    Ok(format!("{whole}.{part}"))
}

/// Takes the marks out of "1,480,000"; every group after the first must have three digits.
fn thousands(text: &str, mark: char) -> Result<String, NumberError> {
    let mut groups = text.split(mark);
    let first = groups.next().unwrap_or("");
    let fits = (1..=3).contains(&first.len()) || !text.contains(mark);
    if fits && groups.all(|group| group.len() == 3) {
        Ok(text.replace(mark, ""))
    } else {
        Err(NumberError::None)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_what_people_write() {
        for (text, number) in [
            ("80.062", 80.062),
            ("80,06", 80.06),
            ("0,062", 0.062),
            ("-4", -4.0),
            ("−4", -4.0),
            ("+0.5", 0.5),
            ("3 1/8", 3.125),
            ("3-1/8", 3.125),
            ("1/8", 0.125),
            ("1 480", 1480.0),
            ("1\u{202f}480,5", 1480.5),
            ("1,480.5", 1480.5),
            ("1.480,5", 1480.5),
            ("1,480,000", 1_480_000.0),
            ("12e-6", 12e-6),
            (".002", 0.002),
        ] {
            assert_eq!(read(text), Ok(number), "{text}");
        }
    }

    #[test]
    fn refuses_what_could_be_two_numbers() {
        assert_eq!(read("80,062"), Err(NumberError::TwoMeanings("80.062".into(), "80062".into())));
        assert!(matches!(read("1,480"), Err(NumberError::TwoMeanings(..))));
    }

    #[test]
    fn refuses_what_is_no_number() {
        for text in ["", "-", "abc", "1.2.3", "nan", "inf", "1e999", "1 2", "9/8", "1/0", "1,48,0"]
        {
            assert_eq!(read(text), Err(NumberError::None), "{text}");
        }
    }
}
