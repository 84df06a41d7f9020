//! The kind of coupling: what it is and is like, and all kinds side by side for this drive.

use job::plan::{About, Choice, Fault, KindRow, Trait};
use maud::{Markup, html};

use crate::head::link;
use crate::opened::Opened;

/// What this job's kind is: said, like, made of, and apt to.
pub(crate) fn about(opened: &Opened) -> Markup {
    html! {
        @if let Some(about) = &opened.plan.about {
            section.about {
                div.h { h2 { (about.title) } small { (about.form) } }
                p.says { (about.says) " " (about.form_says) }
                (traits(&about.like))
                @if !about.note.is_empty() { p.advice { (about.note) } }
                details.folded id="parts" {
                    summary { h2 { "Its parts" } small { "by the letters of the drawing" } }
                    (parts(about))
                }
                details.folded id="faults" {
                    summary { h2 { "What may be found" } small { "when it is opened" } }
                    @for fault in &about.faults { (self::fault(fault)) }
                }
            }
        }
    }
}

fn traits(traits: &[Trait]) -> Markup {
    html! {
        dl.traits { @for one in traits { div { dt { (one.what) } dd { (one.says) } } } }
    }
}

fn parts(about: &About) -> Markup {
    html! {
        table {
            thead { tr { th scope="col" { "letter" } th scope="col" { "part" } th scope="col" { "how many" } } }
            tbody {
                @for part in &about.parts {
                    tr { td { (part.letter) } td { (part.name) } td { (part.how_many) } }
                }
            }
        }
        @if !about.never_again.is_empty() {
            p.settle { "Never used again: " (about.never_again.join("; ")) "." }
        }
    }
}

fn fault(fault: &Fault) -> Markup {
    let list = |title: &str, items: &[&str]| {
        html! { @if !items.is_empty() { div { dt { (title) } dd { (items.join("; ")) } } } }
    };
    html! {
        div.fault {
            h3 { (fault.seen) @if fault.ticked { " " span.entry { "seen on this job" } } }
            dl.traits {
                (list("likely from", fault.causes))
                (list("check", fault.check))
                (list("mend", fault.mend))
                div { dt { "goes back" } dd { (fault.goes_back) } }
            }
            small { "Source: " (fault.source) }
        }
    }
}

/// All kinds side by side; open while none is chosen.
pub(crate) fn choice(opened: &Opened) -> Markup {
    let choice = &opened.plan.choice;
    html! {
        section.choice {
            details.folded id="kinds" open[opened.plan.about.is_none()] {
                summary { h2 { "All kinds, for this drive" } small { "what speaks for each, and what against" } }
                (traits(&choice.asked))
                @if !choice.open.is_empty() {
                    p.settle {
                        "Nobody has said "
                        @for (place, item) in choice.open.iter().enumerate() {
                            @if place > 0 { ", " } (link(opened, item))
                        }
                        "."
                    }
                }
                (side_by_side(choice))
                @for row in &choice.kinds { (kind(row)) }
            }
        }
    }
}

/// Kinds against what is asked, a word to each.
fn side_by_side(choice: &Choice) -> Markup {
    html! {
        @if !choice.questions.is_empty() {
            div.side-by-side tabindex="0" role="region" aria-label="Kinds against what the drive asks" {
                table {
                    thead { tr {
                        th scope="col" { "kind" }
                        @for question in &choice.questions { th scope="col" { (question) } }
                    } }
                    tbody { @for row in &choice.kinds {
                        tr {
                            th scope="row" { (row.title) @if row.chosen { " " span.entry { "chosen" } } }
                            @for answer in &row.answers { td { (word(answer)) } }
                        }
                    } }
                }
            }
        }
    }
}

/// A word that speaks is set stronger than one that says nothing.
fn word(answer: &str) -> Markup {
    html! { @if answer == "against" { strong { (answer) } } @else if answer == "neither" { small { (answer) } } @else { (answer) } }
}

fn kind(row: &KindRow) -> Markup {
    html! {
        div.fault {
            h3 { (row.title) @if row.chosen { " " span.entry { "chosen" } } }
            p.says { (row.says) }
            dl.traits {
                @for pro in &row.pros { div { dt { "for it" } dd { (pro) } } }
                @for con in &row.cons { div { dt { "against it" } dd { (con) } } }
            }
        }
    }
}
