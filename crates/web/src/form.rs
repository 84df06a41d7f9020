//! A stage's form: the strip that says what waits, the fields in the order that the hand moves,
//! and what stands in each of them.

use std::collections::{BTreeMap, BTreeSet};

use job::plan::StagePlan;
use maud::{Markup, html};
use quantities::{Kind, System};

use crate::fields::{self, Face, Field, Group, Row};
use crate::head::anchor;
use crate::opened::{BETWEEN, Opened};

/// What is asked of the form besides the job itself.
#[derive(Default)]
pub(crate) struct Asked {
    /// The place of the field that waits.
    pub at: String,
    /// What could not be written: the place, what was typed there, and what is wrong with it.
    pub refused: BTreeMap<String, Refused>,
    /// What is only tried.
    pub trying: job::plan::Trying,
}

/// What could not be written.
#[derive(Clone, Debug)]
pub(crate) struct Refused {
    pub typed: String,
    pub why: String,
}

/// The field that waits: the one at the place that was asked for, or the first empty one of the
/// table that the place names; where no place was asked for, the first that the plan misses; on a
/// page that nothing was written on yet, the first. Otherwise none.
pub(crate) fn waiting<'a>(
    groups: &'a [Group],
    opened: &Opened,
    plan: &StagePlan,
    at: &str,
) -> Option<&'a Field> {
    let open = || fields::open(groups);
    let empty = |field: &&Field| opened.text_at(&field.place).is_empty();
    let asked = [at].into_iter().filter(|at| !at.is_empty());
    let wanted = asked.chain(plan.missing.iter().map(|item| item.place.as_str()));
    let mut found = wanted.filter_map(|place| {
        let table = format!("{place}.");
        let within = |field: &&Field| field.place.starts_with(&table);
        let exact = fields::all(groups).find(|field| field.place == place);
        exact.or_else(|| open().filter(within).find(empty)).or_else(|| open().find(within))
    });
    found.next().or_else(|| open().find(|_| !plan.begun))
}

/// What a field shows: what was written, without the unit that stands beside the field.
pub(crate) fn shown(opened: &Opened, field: &Field, system: System) -> String {
    let text = opened.text_at(&field.place);
    match &field.face {
        Face::Quantity(kind) => without_unit(&text, kind.unit(system).names),
        Face::Hours => without_unit(&text, &["h", "hr", "hour", "hours"]),
        _ => text,
    }
}

fn without_unit(text: &str, names: &[&str]) -> String {
    let bare = names.iter().filter(|name| !name.is_empty()).find_map(|name| {
        let number = text.strip_suffix(name)?.trim_end();
        is_bare(number).then_some(number)
    });
    bare.unwrap_or(text).to_owned()
}

/// True for a number, perhaps with its ±, that no unit follows.
pub(crate) fn is_bare(text: &str) -> bool {
    let number = |c: char| {
        c.is_ascii_digit()
            || c.is_whitespace()
            || matches!(c, '.' | ',' | '+' | '-' | '−' | '–' | '±' | '/')
    };
    text.contains(|c: char| c.is_ascii_digit()) && text.chars().all(number)
}

/// The form's fields.
pub(crate) fn groups(
    groups: &[Group],
    opened: &Opened,
    asked: &Asked,
    now: Option<&Field>,
) -> Markup {
    let form = Form { opened, asked, now };
    html! {
        @for group in groups {
            @if group.folded { (form.folded(group)) } @else { (form.group(group)) }
        }
    }
}

/// The strip above the fields.
pub(crate) fn strip(now: Option<&Field>, system: System) -> Markup {
    html! {
        p.say id="say" {
            @match now {
                Some(field) => {
                    a.what href={ "#" (anchor(&field.place)) } { (field.say) }
                    span.unit { (field.face.unit(system)) }
                }
                None => {
                    a.what href="#entry" { "Nothing is missing here; write over what has changed." }
                    span.unit {}
                }
            }
        }
    }
}

/// Letters of a label that has room beside its fields on a phone.
const TIGHT: usize = 10;

fn is_tight(row: &Row) -> bool {
    row.label.chars().count() <= TIGHT
}

struct Form<'a> {
    opened: &'a Opened,
    asked: &'a Asked,
    now: Option<&'a Field>,
}

impl Form<'_> {
    fn group(&self, group: &Group) -> Markup {
        html! {
            section.group {
                div.h { h2 { (group.title) } @if !group.about.is_empty() { small { (group.about) } } }
                (self.rows(group))
            }
        }
    }

    fn folded(&self, group: &Group) -> Markup {
        let wanted = group
            .fields()
            .any(|field| self.waits(field) || self.asked.refused.contains_key(&field.place));
        let written =
            group.fields().filter(|field| !self.opened.text_at(&field.place).is_empty()).count();
        let id = group.fields().next().map(|field| format!("g{}", anchor(&field.place)));
        html! {
            details.group.folded open[wanted] id=[id] {
                summary {
                    h2 { (group.title) }
                    small { @if written > 0 { (written) " entered; " } (group.about) }
                }
                (self.rows(group))
            }
        }
    }

    fn rows(&self, group: &Group) -> Markup {
        let columns = !group.columns.is_empty();
        html! {
            @if columns {
                div.row.table.heads.tight[group.rows.iter().all(is_tight)].(width(group.columns.len())) aria-hidden="true" {
                    span {}
                    @for column in &group.columns { span { (column) } }
                }
            }
            @for row in &group.rows { (self.row(row, columns)) }
        }
    }

    fn row(&self, row: &Row, columns: bool) -> Markup {
        if let [field] = row.fields.as_slice()
            && let Face::Several(choices) = &field.face
        {
            return several(field, choices, &shown(self.opened, field, self.opened.system));
        }
        let many = row.fields.len() > 1;
        // One unit for all of a row stands under its label; else each field has its own beside it.
        let unit = |field: &Field| field.face.unit(self.opened.system);
        let units: BTreeSet<&str> = row.fields.iter().map(unit).collect();
        let shared = units.first().filter(|unit| many && units.len() == 1 && !unit.is_empty());
        let beside = shared.is_none();
        let wordy = row.fields.iter().any(|field| {
            matches!(field.face, Face::Words(_) | Face::Texts(_) | Face::Quantities(_))
        });
        let columns = columns && !wordy;
        html! {
            div.row.(width(row.fields.len())).wordy[wordy].table[columns].tight[many && is_tight(row)] {
                span.label { (row.label) @if let Some(unit) = shared { small { (unit) } } }
                @for field in &row.fields { (self.field(field, many, columns, beside)) }
            }
            @for field in &row.fields {
                @if let Some(refused) = self.asked.refused.get(&field.place) {
                    p.wrong id=(wrong(&field.place)) role="alert" { (refused.why) }
                }
            }
        }
    }

    fn waits(&self, field: &Field) -> bool {
        self.now.is_some_and(|now| now.place == field.place)
    }

    /// True where the browser should go to the field at once. A page that is opened without asking
    /// for a field stays at its head; the strip says which one waits.
    fn calls(&self, field: &Field) -> bool {
        self.waits(field) && !self.asked.at.is_empty()
    }

    fn field(&self, field: &Field, many: bool, columns: bool, beside: bool) -> Markup {
        let unit = field.face.unit(self.opened.system);
        let shown = shown(self.opened, field, self.opened.system);
        let beside = beside && !unit.is_empty() && (shown.is_empty() || is_bare(&shown));
        html! {
            label.field.now[self.waits(field)] {
                @if many { span.short.unseen[columns] { (field.short) } }
                span.line {
                    (self.entry(field, &shown))
                    @if beside { span.unit { (unit) } }
                }
            }
            @if !shown.is_empty() {
                input type="hidden" name={ "was." (field.place) } value=(shown);
            }
        }
    }

    fn entry(&self, field: &Field, shown: &str) -> Markup {
        let refused = self.asked.refused.get(&field.place);
        let value = refused.map_or(shown, |refused| refused.typed.as_str());
        match &field.face {
            Face::Choice(choices, usual) => self.select(field, choices, usual, value),
            Face::YesNo => {
                let choices = ["yes", "no"]
                    .map(|word| fields::Choice { value: word.into(), words: word.into() });
                self.select(field, &choices, "", value)
            }
            face => self.input(field, face, value, refused.is_some()),
        }
    }

    fn input(&self, field: &Field, face: &Face, value: &str, wrong_now: bool) -> Markup {
        let placeholder = match face {
            Face::Words(example) | Face::Texts(example) => Some((*example).to_owned()),
            Face::Code(example) => Some(format!("such as {example}")),
            _ => None,
        };
        let digits = matches!(face, Face::Quantity(Kind::Size | Kind::Gap | Kind::Length));
        html! {
            input id=(anchor(&field.place)) name=(field.place) value=(value)
                aria-label=(field.say) data-unit=(face.unit(self.opened.system))
                class=[(value.chars().count() > 9 || placeholder.is_some()).then_some("words")]
                inputmode=[digits.then_some("decimal")] placeholder=[placeholder]
                aria-invalid=[wrong_now.then_some("true")]
                aria-describedby=[wrong_now.then(|| wrong(&field.place))]
                autofocus[self.calls(field)] data-waits=[self.waits(field).then_some("")] autocomplete="off" autocapitalize="off"
                spellcheck="false" enterkeyhint="next";
        }
    }

    fn select(
        &self,
        field: &Field,
        choices: &[fields::Choice],
        usual: &str,
        value: &str,
    ) -> Markup {
        let known = value.is_empty() || choices.iter().any(|choice| choice.value == value);
        let wrong_now = self.asked.refused.contains_key(&field.place);
        html! {
            select id=(anchor(&field.place)) name=(field.place) aria-label=(field.say) data-unit=""
                aria-invalid=[wrong_now.then_some("true")]
                aria-describedby=[wrong_now.then(|| wrong(&field.place))]
                autofocus[self.calls(field)] data-waits=[self.waits(field).then_some("")] {
                option value="" selected[value.is_empty()] { (usual) }
                @for choice in choices {
                    option value=(choice.value) selected[choice.value == value] { (choice.words) }
                }
                @if !known { option value=(value) selected { (value) } }
            }
        }
    }
}

/// A box for each: pressing one writes the list with it, or without it.
fn several(field: &Field, choices: &[fields::Choice], value: &str) -> Markup {
    let held: Vec<&str> = value.split(BETWEEN).collect();
    html! {
        div.row.boxes role="group" aria-label=(field.say) {
            span.label { (field.say) }
            @for choice in choices {
                @let holds = held.contains(&choice.value.as_str());
                button.ticked type="submit" name="toggle" aria-pressed=(holds)
                    id={ (anchor(&field.place)) "-" (anchor(&choice.value)) }
                    value={ (field.place) "=" (choice.value) } {
                    span.box {}
                    span { (choice.words) }
                }
            }
            @if choices.is_empty() { small { "Choose the kind of coupling first." } }
        }
    }
}

fn wrong(place: &str) -> String {
    format!("wrong-{}", anchor(place))
}

fn width(fields: usize) -> &'static str {
    match fields {
        0 | 1 => "one",
        2 => "two",
        3 => "three",
        _ => "many",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_unit_beside_the_field_is_left_out() {
        let mm = Kind::Size.unit(System::Metric).names;
        assert_eq!(without_unit("80.012 mm", mm), "80.012");
        assert_eq!(without_unit("80.012 ± 0.004 mm", mm), "80.012 ± 0.004");
        assert_eq!(without_unit("3.1502 in", mm), "3.1502 in");
        assert_eq!(without_unit("80.012 mm ± 4 µm", mm), "80.012 mm ± 4 µm");
        let celsius = Kind::Temperature.unit(System::Metric).names;
        assert_eq!(without_unit("18 degC", celsius), "18");
        assert!(is_bare("3 1/8") && is_bare("−0.31") && !is_bare("") && !is_bare("oven"));
    }
}
