//! Writing a drawing out as SVG.
//!
//! Plain attributes with the values for light paper, so that a reader without style sheets shows
//! it as meant, and a class on every element by which a page's sheet may turn it for the dark.

use std::fmt::Write as _;

use maud::{Markup, html};

use crate::face::Face;
use crate::geometry::{Point, Rect};
use crate::hatch;
use crate::ink::{Anchor, Colour, Drawing, Lie, Mark, Stroke, Words};

/// A drawing as text, with its title and what it says to who cannot see it.
pub(crate) fn write(drawing: &Drawing, title: &str, says: &str) -> String {
    let (width, height) = (number(drawing.width), number(drawing.height));
    // Hatch keeps this far from words.
    let gaps: Vec<Rect> = drawing.boxes.iter().map(|(b, _)| b.grown(0.7, 0.6)).collect();
    let markup = html! {
        svg xmlns="http://www.w3.org/2000/svg" class="figure" role="img"
            width={ (width) "mm" } height={ (height) "mm" } viewBox={ "0 0 " (width) " " (height) }
            font-family="Libertinus Serif, Georgia, serif" {
            title { (title) }
            desc { (says) }
            @for mark in &drawing.marks { (one(mark, &gaps)) }
        }
    };
    markup.into_string()
}

fn one(mark: &Mark, gaps: &[Rect]) -> Markup {
    match mark {
        Mark::Path { points, closed, stroke, fill } => {
            let d = path(points, *closed);
            element(*stroke, *fill, &|a| {
                html! {
                    path d=(d) class=(a.class) fill=(a.fill) fill-opacity=[a.opacity] stroke=(a.stroke)
                        stroke-width=[a.weight] stroke-dasharray=[a.dash] stroke-linecap=[a.cap]
                        stroke-linejoin=[a.join] {}
                }
            })
        }
        Mark::Circle { centre, radius, stroke, fill } => {
            let (x, y, r) = (number(centre.x), number(centre.y), number(*radius));
            element(*stroke, *fill, &|a| {
                html! {
                    circle cx=(x) cy=(y) r=(r) class=(a.class) fill=(a.fill) fill-opacity=[a.opacity]
                        stroke=(a.stroke) stroke-width=[a.weight] stroke-dasharray=[a.dash] {}
                }
            })
        }
        Mark::Rounded { bounds, radius, stroke } => element(Some(*stroke), None, &|a| {
            html! {
                rect x=(number(bounds.left)) y=(number(bounds.top)) width=(number(bounds.width()))
                    height=(number(bounds.height())) rx=(number(*radius)) class=(a.class)
                    fill=(a.fill) stroke=(a.stroke) stroke-width=[a.weight] {}
            }
        }),
        Mark::Hatch { polygons, cut } => hatched(polygons, *cut, gaps),
        Mark::Text { words, baseline, anchor, turn } => text(words, *baseline, *anchor, *turn),
    }
}

fn hatched(polygons: &[Vec<Point>], cut: hatch::Cut, gaps: &[Rect]) -> Markup {
    let lines = hatch::lines(polygons, cut, gaps);
    let d: String = lines.iter().map(|(from, to)| path(&[*from, *to], false)).collect();
    let stroke = Stroke::of(cut.weight).colour(Colour::Hatch);
    html! {
        @if !d.is_empty() {
            (element(Some(stroke), None, &|a| html! {
                path d=(d) class=(a.class) fill=(a.fill) stroke=(a.stroke) stroke-width=[a.weight] {}
            }))
        }
    }
}

fn text(words: &Words, baseline: Point, anchor: Anchor, turn: Point) -> Markup {
    let anchor = match anchor {
        Anchor::Start => None,
        Anchor::Middle => Some("middle"),
        Anchor::End => Some("end"),
    };
    let turned = match words.lie {
        Lie::Level => None,
        Lie::Upright => Some(format!("rotate(-90 {} {})", number(turn.x), number(turn.y))),
    };
    let (family, weight) = match words.face {
        Face::Print => (None, None),
        Face::Strong => (None, Some("600")),
        Face::Entry => (Some("DejaVu Sans Mono, monospace"), None),
    };
    let halo = words.halo.then_some(());
    let class = if words.halo {
        format!("{} halo", fill_class(words.colour))
    } else {
        fill_class(words.colour).to_owned()
    };
    html! {
        text x=(number(baseline.x)) y=(number(baseline.y)) class=(class)
            font-size=(number(words.size)) font-family=[family] font-weight=[weight]
            text-anchor=[anchor] fill=(value(words.colour)) transform=[turned]
            stroke=[halo.map(|()| value(Colour::Leaf))] stroke-width=[halo.map(|()| "0.9")]
            stroke-linejoin=[halo.map(|()| "round")] paint-order=[halo.map(|()| "stroke")]
            { (words.text) }
    }
}

/// The attributes that stroke and fill come down to.
struct Attributes {
    class: String,
    fill: &'static str,
    opacity: Option<&'static str>,
    stroke: &'static str,
    weight: Option<String>,
    dash: Option<&'static str>,
    cap: Option<&'static str>,
    join: Option<&'static str>,
}

fn element(
    stroke: Option<Stroke>,
    fill: Option<Colour>,
    draw: &dyn Fn(Attributes) -> Markup,
) -> Markup {
    let classes = [stroke.map(|s| stroke_class(s.colour)), fill.map(fill_class)];
    draw(Attributes {
        class: classes.into_iter().flatten().collect::<Vec<_>>().join(" "),
        fill: fill.map_or("none", value),
        opacity: match fill {
            Some(Colour::Band) => Some("0.2"),
            Some(Colour::Tint) => Some("0.12"),
            _ => None,
        },
        stroke: stroke.map_or("none", |s| value(s.colour)),
        weight: stroke.map(|s| number(s.weight)),
        dash: stroke.and_then(|s| s.dash),
        cap: stroke.filter(|s| s.round).map(|_| "round"),
        join: stroke.map(|_| "round"),
    })
}

fn value(colour: Colour) -> &'static str {
    match colour {
        Colour::Ink | Colour::Hatch | Colour::Tint => "#1c1a17",
        Colour::Soft => "#544d42",
        Colour::Edge => "#857a68",
        Colour::Rule => "#d3c9b5",
        Colour::Pencil | Colour::Band => "#5a2a8a",
        Colour::Metal | Colour::Leaf => "#ffffff",
    }
}

fn stroke_class(colour: Colour) -> &'static str {
    match colour {
        Colour::Ink | Colour::Tint => "ink",
        Colour::Hatch => "hatch",
        Colour::Soft => "soft",
        Colour::Edge => "edge",
        Colour::Rule => "rule",
        Colour::Pencil | Colour::Band => "pencil",
        Colour::Metal | Colour::Leaf => "leaf",
    }
}

fn fill_class(colour: Colour) -> &'static str {
    match colour {
        Colour::Ink | Colour::Hatch => "ink-fill",
        Colour::Soft => "soft-fill",
        Colour::Edge => "edge-fill",
        Colour::Rule => "rule-fill",
        Colour::Pencil => "pencil-fill",
        Colour::Band => "band",
        Colour::Tint => "tint",
        Colour::Metal => "metal",
        Colour::Leaf => "leaf-fill",
    }
}

/// Path data: straight pieces through points.
pub(crate) fn path(points: &[Point], closed: bool) -> String {
    let mut d = String::with_capacity(points.len() * 12 + 2);
    for (index, p) in points.iter().enumerate() {
        let sign = if index == 0 { 'M' } else { 'L' };
        let _ = write!(d, "{sign}{} {}", number(p.x), number(p.y));
    }
    if closed {
        d.push('Z');
    }
    d
}

/// Hundredths of a millimetre are enough for ink; no trailing zeros, no "-0".
fn number(mm: f64) -> String {
    let text = format!("{mm:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}
