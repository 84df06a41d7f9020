//! Ways to get each hub off, side by side.

use job::plan::{HubOff, Way};
use maud::{Markup, html};

use crate::head::link;
use crate::opened::Opened;

/// The ways, gentlest first.
pub(crate) fn ways(opened: &Opened) -> Markup {
    html! {
        @for hub in &opened.plan.ways {
            section.ways {
                div.h { h2 { "Getting the " (hub.hub) " off" } small { "gentlest first" } }
                @for way in &hub.ways { (self::way(opened, hub, way)) }
            }
        }
    }
}

fn way(opened: &Opened, hub: &HubOff, way: &Way) -> Markup {
    html! {
        div.fault id={ "w-" (hub.end) "-" (way.id) } {
            h3 { (way.name) ": " (way.may.words()) }
            dl.traits {
                @for one in &way.takes { div { dt { (one.what) } dd { (one.says) } } }
                @for bar in &way.bars { div { dt { "not because" } dd { (bar) } } }
                div { dt { "mind" } dd { (way.mind) } }
                @if !way.open.is_empty() {
                    div {
                        dt { "not known" }
                        dd {
                            @for (place, item) in way.open.iter().enumerate() {
                                @if place > 0 { ", " } (link(opened, item))
                            }
                        }
                    }
                }
            }
        }
    }
}
