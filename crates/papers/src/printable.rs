//! Text as the fonts at hand can print it.
//!
//! PDF/A allows no letter without a shape. People write what they like, so a letter that no font
//! here has is printed as an empty box, and one that is no letter at all (a line end, a tab, a
//! mark that only steers other letters) as a space or not at all. Words longer than a line get
//! places to break.

use std::borrow::Cow;

use serde_json::Value;

use crate::world;

/// Stands for a letter without a shape.
const BOX: char = '\u{25a1}';
/// No width, but a line may break here.
const BREAK: &str = "\u{200b}";
/// Letters of the longest word that is kept whole.
const LONG: usize = 24;
/// Letters between the places where a longer one may break.
const PIECE: usize = 6;

/// Makes every text in `value` printable.
pub(crate) fn all(value: &mut Value) {
    match value {
        Value::String(text) => *text = breakable(&printable(text)),
        Value::Array(items) => items.iter_mut().for_each(all),
        Value::Object(fields) => fields.values_mut().for_each(all),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

/// `text` in letters that have a shape.
pub(crate) fn printable(text: &str) -> Cow<'_, str> {
    if text.bytes().all(|byte| (b' '..=b'~').contains(&byte)) {
        return Cow::Borrowed(text);
    }
    text.chars().filter_map(letter).collect::<String>().into()
}

fn letter(c: char) -> Option<char> {
    match c {
        ' '..='~' => Some(c),
        _ if c.is_whitespace() && c.is_control() => Some(' '),
        _ if c.is_control() || steers_only(c) => None,
        _ if is_private(c) || !world::has_shape(c) => Some(BOX),
        _ => Some(c),
    }
}

/// Joiners, marks of direction, selectors of a variant: nothing of their own to see.
fn steers_only(c: char) -> bool {
    matches!(c, '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}'
        | '\u{fe00}'..='\u{fe0f}' | '\u{feff}' | '\u{ad}' | '\u{e0000}'..='\u{e0fff}')
}

/// Shapes that mean something to one font alone.
fn is_private(c: char) -> bool {
    matches!(c, '\u{e000}'..='\u{f8ff}' | '\u{f0000}'..)
}

fn breakable(text: &str) -> String {
    let words = text.split(' ').map(|word| {
        let letters: Vec<char> = word.chars().collect();
        let whole = if letters.len() > LONG { PIECE } else { LONG };
        let pieces = letters.chunks(whole).map(|piece| piece.iter().collect::<String>());
        pieces.collect::<Vec<_>>().join(BREAK)
    });
    words.collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn trade_letters_stay_and_others_become_boxes() {
        for text in
            ["plain #*$_@<\\\"", "80.062 ± 0.004 mm", "Δ·√∛σ²₁′ ⌀ ½ µ Ω −", "Насос, Grüße, Łódź"]
        {
            assert_eq!(printable(text), text);
        }
        assert_eq!(printable("泵 2"), "□ 2");
        assert_eq!(printable("one\ntwo\u{0}\u{fe0f}"), "one two");
        assert_eq!(printable("\u{e123}"), "□");
    }

    #[test]
    fn only_long_words_are_broken() {
        assert_eq!(breakable("a sentence of ordinary words"), "a sentence of ordinary words");
        assert_eq!(breakable("a  b "), "a  b ");
        assert_eq!(breakable(&"x".repeat(24)), "x".repeat(24));
        assert_eq!(breakable(&"x".repeat(50)).matches(BREAK).count(), 8);
    }
}
