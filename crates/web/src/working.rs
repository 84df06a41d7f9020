//! The working of a number on a slip: formula in letters, values put in, where they are from.

use maud::{Markup, html};
use quantities::{System, Working};

/// The slip under a number of this label.
pub(crate) fn slip(working: &Working, label: &str, system: System) -> Markup {
    html! {
        div.slip {
            @if working.name != label { p.found { (working.name) } }
            @for line in working.formula.lines() { p.equation { (letters(line, working)) } }
            p.equation.put-in { (result_side(working)) " = " (working.put_in(system)) }
            p.equation.result { (result_side(working)) " = " b { (working.result.show(system)) } }
            @if !working.terms.is_empty() { (terms(working, system)) }
            @if !working.valid.is_empty() { p.advice { (working.valid) } }
            p.source { "Source: " (working.source.to_string()) }
        }
    }
}

/// What was put in.
fn terms(working: &Working, system: System) -> Markup {
    html! {
        table.put {
            caption { "Put in" }
            thead { tr { th scope="col" { "letter" } th scope="col" { "what" } th.right scope="col" { "value" } } }
            tbody {
                @for term in &working.terms {
                    tr {
                        td { (letter(term.symbol)) }
                        td { (term.name) }
                        td.right { (term.value.show(system)) }
                    }
                }
            }
        }
    }
}

/// The left side of the last line of the formula.
fn result_side(working: &Working) -> Markup {
    let last = working.formula.lines().last().unwrap_or("");
    let left = last.split_once('=').map_or("", |(left, _)| left.trim());
    letters(left, working)
}

/// A line of a formula: its letters slanted, an underscore as a low index.
fn letters(line: &str, working: &Working) -> Markup {
    let known = |word: &str| working.terms.iter().any(|term| term.symbol == word);
    html! {
        @for word in words(line) {
            @if known(word) || is_letter(word) { (letter(word)) } @else { (word) }
        }
    }
}

/// A single letter, with or without an index, stands for a quantity; a longer word is a word.
fn is_letter(word: &str) -> bool {
    let stem = word.split('_').next().unwrap_or("");
    let mut letters = stem.chars();
    let begins = letters.next().is_some_and(char::is_alphabetic);
    begins && letters.all(|c| c.is_ascii_digit() || matches!(c, '′' | '₀'..='₉'))
}

fn letter(symbol: &str) -> Markup {
    html! {
        @match symbol.split_once('_') {
            Some((stem, index)) => { var { (stem) } sub { (index) } }
            None => { var { (symbol) } }
        }
    }
}

/// The line cut where words begin and end.
fn words(line: &str) -> Vec<&str> {
    let in_word = |c: char| c.is_alphanumeric() || c == '_' || c == '′';
    let mut cut = Vec::new();
    let mut start = 0;
    let mut inside = line.starts_with(in_word);
    for (at, c) in line.char_indices() {
        if in_word(c) != inside {
            cut.push(&line[start..at]);
            (start, inside) = (at, !inside);
        }
    }
    cut.push(&line[start..]);
    cut
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_cut_at_its_words() {
        let line = "T = K·F_v·d/2";
        assert_eq!(words(line), ["T", " = ", "K", "·", "F_v", "·", "d", "/", "2"]);
        assert_eq!(words(line).concat(), line);
        let seen: Vec<_> = words(line).into_iter().filter(|word| is_letter(word)).collect();
        assert_eq!(seen, ["T", "K", "F_v", "d"]);
        assert!(!is_letter("sin") && !is_letter("2") && is_letter("δ") && is_letter("d1"));
    }
}
