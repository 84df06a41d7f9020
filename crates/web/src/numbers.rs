//! Numbers: name, value with its ±, stamp, and an equals sign that opens the working.

use job::plan::Number;
use maud::{Markup, html};
use quantities::{System, Verdict};

use crate::marks::{self, Stamped};
use crate::working;

/// The numbers of a stage; the one that a hand counts on while it holds a hot hub comes first.
pub(crate) fn numbers(numbers: &[Number], system: System) -> Markup {
    let (first, rest): (Vec<&Number>, Vec<&Number>) =
        numbers.iter().partition(|number| size(number) == Size::Hero);
    html! {
        @for number in first.into_iter().chain(rest) { (row(number, system)) }
    }
}

fn row(number: &Number, system: System) -> Markup {
    let size = size(number).class();
    let id = format!("n-{}", number.id.replace('.', "-"));
    html! {
        @if let Some(working) = &number.working {
            details.number.(size) id=(id) {
                summary { (face(number, system)) (equals()) }
                (working::slip(working, &number.label, system))
            }
        } @else {
            div.number.(size) id=(id) { div.plain { (face(number, system)) } }
        }
        @if !number.settle.is_empty() && number.verdict != Some(Verdict::Inside) {
            p.settle { (number.settle) }
        }
    }
}

fn face(number: &Number, system: System) -> Markup {
    html! {
        span.label { (number.label) small { (second_line(number, system)) } }
        span.value.long[is_long(number, system)] {
            @match &number.value {
                Some(value) => {
                    b { (value.digits(system)) }
                    i {
                        @if let Some(half) = value.plus_minus_digits(system) { "± " (half) " " }
                        (value.unit(system))
                    }
                }
                None => { b.nothing aria-label="no number yet" { "—" } }
            }
        }
        @if let Some(verdict) = number.verdict {
            span.verdict { (marks::stamp(verdict, Stamped::Small)) }
        }
    }
}

fn equals() -> Markup {
    html! { span.equals { span aria-hidden="true" { "=" } span.unseen { "working" } } }
}

/// How large a number is set: what the hand needs at the machine is read from a step away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Size {
    /// Among others.
    Usual,
    /// A move to make.
    Move,
    /// Seconds in hand.
    Hero,
}

impl Size {
    fn class(self) -> &'static str {
        match self {
            Self::Usual => "usual",
            Self::Move => "move",
            Self::Hero => "hero",
        }
    }
}

fn size(number: &Number) -> Size {
    if number.id.starts_with("heat.") && number.id.ends_with(".seconds") {
        Size::Hero
    } else if number.id.starts_with("lineup.move.") {
        Size::Move
    } else {
        Size::Usual
    }
}

fn is_long(number: &Number, system: System) -> bool {
    number.value.as_ref().is_some_and(|value| value.show(system).chars().count() > 16)
}

/// What it is judged against, and where that is from.
fn second_line(number: &Number, system: System) -> String {
    let limits = match (&number.limits, &number.value) {
        (Some(limits), Some(value)) => limits.show(value, system),
        _ => String::new(),
    };
    match (limits.as_str(), number.second.as_str()) {
        ("", second) => second.to_owned(),
        (limits, "") => limits.to_owned(),
        (limits, second) => format!("{limits}; {second}"),
    }
}
