//! Marks and stamps: where a value fell between its limits, and how far a stage is.
//!
//! A mark never stands for its word alone: beside it stands the word, or its label says it.

use job::Stage;
use maud::{Markup, html};
use quantities::Verdict;

use crate::opened::Standing;

/// Two limits, and where the value fell.
fn shape(verdict: Verdict) -> Markup {
    match verdict {
        Verdict::Inside => html! {
            path class="limits" d="M5 3v20M25 3v20" {}
            circle class="solid" cx="15" cy="13" r="5.5" {}
        },
        Verdict::Outside => html! {
            path class="limits" d="M3 3v20M16 3v20" {}
            rect class="solid" x="20" y="8.5" width="9" height="9" {}
        },
        Verdict::TooClose => html! {
            path class="limits" d="M4 3v20M20 3v20" {}
            path class="hollow" d="M20 6l7 7-7 7-7-7z" {}
            path class="solid" d="M20 6v14l-7-7z" {}
        },
        Verdict::NotMeasured => html! {
            path class="limits broken" d="M5 3v20M25 3v20" {}
        },
    }
}

fn mark(shape: &Markup) -> Markup {
    html! { svg.mark viewBox="0 0 30 26" width="30" height="26" aria-hidden="true" { (shape) } }
}

/// The mark of a verdict; its word must stand beside it.
pub(crate) fn verdict(verdict: Verdict) -> Markup {
    mark(&shape(verdict))
}

/// How far a stage is.
pub(crate) fn stage(standing: Standing) -> Markup {
    match standing {
        Standing::Judged(verdict) => mark(&shape(verdict)),
        Standing::Done => mark(&html! { circle class="solid" cx="15" cy="13" r="6" {} }),
        Standing::NotBegun => mark(&html! { circle class="hollow" cx="15" cy="13" r="5" {} }),
    }
}

/// The size of a stamp.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stamped {
    /// Beside a number.
    Small,
    /// In the head of a page.
    Large,
}

/// A stamp: mark, frame, fill and word.
pub(crate) fn stamp(verdict: Verdict, size: Stamped) -> Markup {
    let kind = match verdict {
        Verdict::Inside => "inside",
        Verdict::NotMeasured => "unmeasured",
        Verdict::TooClose => "close",
        Verdict::Outside => "outside",
    };
    html! {
        span.stamp.(kind).large[size == Stamped::Large] {
            (self::verdict(verdict)) span { (verdict.words()) }
        }
    }
}

/// The ten stages on a small shaft line.
pub(crate) fn trail(stages: &[(Stage, Standing)]) -> Markup {
    let words: Vec<String> = stages.iter().copied().map(trail_words).collect();
    html! {
        svg.trail viewBox="0 0 230 22" width="230" height="22" role="img" aria-label=(words.join(", ")) {
            path.shaft d="M0 11H230" {}
            @for (place, (_, standing)) in (0_u8..).zip(stages) {
                (dot(*standing, 12.5 + 22.8 * f64::from(place)))
            }
        }
    }
}

fn trail_words((stage, standing): (Stage, Standing)) -> String {
    let words = match standing {
        Standing::NotBegun => "not begun",
        Standing::Done => "done",
        Standing::Judged(verdict) => verdict.words(),
    };
    format!("{}: {words}", stage.title())
}

/// Dot, square, half diamond, broken square, ring.
fn dot(standing: Standing, x: f64) -> Markup {
    let at = format!("translate({x:.1} 11)");
    html! {
        g transform=(at) {
            @match standing {
                Standing::Done | Standing::Judged(Verdict::Inside) => circle.full r="6.5" {},
                Standing::Judged(Verdict::Outside) => rect.full x="-6.5" y="-6.5" width="13" height="13" {},
                Standing::Judged(Verdict::TooClose) => {
                    path.open d="M0 -8L8 0L0 8L-8 0Z" {}
                    path.full d="M0 -8V8L-8 0Z" {}
                }
                Standing::Judged(Verdict::NotMeasured) => {
                    rect.dashed x="-6" y="-6" width="12" height="12" {}
                }
                Standing::NotBegun => circle.ring r="4" {},
            }
        }
    }
}
