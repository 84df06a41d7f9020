//! How wide words are, so that labels can keep out of each other's way without a renderer.
//!
//! Advance widths of Libertinus Serif in thousandths of its size, read from the fonts that the
//! pages and the cards ship. Kerning is left out: it only ever makes words a little narrower.

/// Who speaks: the printed form, or the hand that wrote into it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Face {
    /// Libertinus Serif: labels and whatever was worked out.
    Print,
    /// Its semibold: names, letters, the number that matters.
    Strong,
    /// `DejaVu Sans Mono`: entries, that is, sizes measured on this job.
    Entry,
}

impl Face {
    /// Height of capitals and figures, as a share of the size.
    pub fn rise(self) -> f64 {
        match self {
            Self::Print | Self::Strong => 0.65,
            Self::Entry => 0.74,
        }
    }

    /// How far below its line a word reaches, as a share of the size.
    pub fn fall(words: &str) -> f64 {
        let falls =
            |c: char| matches!(c, 'g' | 'j' | 'p' | 'q' | 'y' | 'Q' | 'µ' | '(' | ')' | ',' | ';');
        if words.chars().any(falls) { 0.24 } else { 0.02 }
    }

    /// Width of the words at a size, mm.
    pub fn width(self, words: &str, size: f64) -> f64 {
        words.chars().map(|c| f64::from(self.advance(c))).sum::<f64>() * size / 1000.0
    }

    fn advance(self, c: char) -> u16 {
        let (table, signs) = match self {
            Self::Print => (&PRINT, PRINT_SIGNS),
            Self::Strong => (&STRONG, STRONG_SIGNS),
            Self::Entry => return 602,
        };
        match u32::from(c) {
            code @ 32..=126 => table[code as usize - 32],
            _ => signs.iter().find(|(sign, _)| *sign == c).map_or(WIDEST, |(_, width)| *width),
        }
    }
}

/// For a sign that is not held here: as wide as it is high, so that room is kept for it.
const WIDEST: u16 = 1000;

#[rustfmt::skip]
const PRINT: [u16; 95] = [
    250, 288, 336, 465, 465, 637, 705, 190, 298, 298, 369, 550, 220, 338, 220, 323,
    465, 465, 465, 465, 465, 465, 465, 465, 465, 465, 236, 236, 550, 550, 550, 435,
    895, 695, 588, 646, 701, 557, 485, 685, 730, 297, 322, 637, 528, 839, 699, 702,
    541, 702, 587, 485, 597, 661, 652, 951, 660, 575, 604, 356, 287, 356, 518, 486,
    392, 457, 493, 428, 506, 447, 310, 500, 538, 271, 272, 512, 264, 790, 542, 504,
    519, 503, 372, 390, 316, 531, 497, 747, 490, 515, 424, 277, 205, 277, 449,
];

#[rustfmt::skip]
const STRONG: [u16; 95] = [
    250, 244, 366, 463, 438, 637, 729, 215, 315, 315, 433, 537, 244, 358, 244, 316,
    490, 490, 490, 490, 490, 490, 490, 490, 490, 490, 219, 219, 512, 551, 512, 430,
    988, 699, 620, 666, 718, 562, 513, 727, 723, 319, 380, 660, 538, 853, 710, 730,
    550, 730, 609, 475, 597, 678, 636, 998, 708, 617, 624, 375, 307, 375, 518, 486,
    392, 476, 505, 435, 527, 461, 336, 508, 550, 286, 289, 523, 289, 801, 563, 519,
    523, 518, 401, 401, 331, 550, 527, 778, 521, 533, 432, 306, 220, 306, 473,
];

#[rustfmt::skip]
const PRINT_SIGNS: &[(char, u16)] = &[
    ('°', 267), ('±', 550), ('·', 250), ('×', 550), ('Ø', 702), ('⌀', 566), ('Δ', 636),
    ('µ', 515), ('–', 548), ('−', 550), ('’', 268), ('…', 749), ('≤', 527), ('≥', 527),
    ('½', 660), ('¼', 660), ('¾', 660), ('\u{a0}', 250), ('\u{202f}', 125), ('\u{2009}', 125),
];

#[rustfmt::skip]
const STRONG_SIGNS: &[(char, u16)] = &[
    ('°', 267), ('±', 527), ('·', 301), ('×', 527), ('Ø', 730), ('Δ', 692),
    ('µ', 529), ('–', 534), ('−', 537), ('’', 268), ('…', 749), ('≤', 527), ('≥', 527),
    ('½', 660), ('¼', 660), ('¾', 660), ('\u{a0}', 250), ('\u{202f}', 156), ('\u{2009}', 125),
];

#[cfg(test)]
mod tests {
    use super::*;

    /// Figures of one width: columns of numbers must not jump.
    #[test]
    fn figures_stand_in_columns() {
        for face in [Face::Print, Face::Strong, Face::Entry] {
            let one = face.width("1", 10.0);
            assert!(('0'..='9').all(|c| (face.width(&c.to_string(), 10.0) - one).abs() < 1e-9));
        }
    }
}
