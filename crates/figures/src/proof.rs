//! What every figure must be: no label collides, no forbidden means, well-formed.

mod charts;

use proptest::test_runner::{Config, RngSeed};

use crate::Figure;
use crate::ink::Drawing;

/// So many cases, the same ones each time.
pub(crate) fn cases(cases: u32) -> Config {
    Config { cases, rng_seed: RngSeed::Fixed(20), failure_persistence: None, ..Config::default() }
}

/// No word on a word, under a line, or off the sheet.
pub(crate) fn is_tidy(drawing: &Drawing) -> Result<(), String> {
    let clashes = drawing.clashes();
    if clashes.is_empty() { Ok(()) } else { Err(clashes.join("\n")) }
}

/// Fit to stand inline on a page and to be read by a typesetter.
pub(crate) fn is_plain(figure: &Figure) -> Result<(), String> {
    let svg = &figure.svg;
    let banned = [
        " id=",
        "<style",
        "style=",
        "<script",
        "url(",
        "clip",
        "<pattern",
        "href",
        "var(",
        "currentColor",
        "dominant-baseline",
        "NaN",
        "inf",
        "<use",
        "<image",
        "<filter",
    ];
    if let Some(word) = banned.iter().find(|word| svg.contains(**word)) {
        return Err(format!("{word} in {svg}"));
    }
    if figure.says.trim().is_empty() {
        return Err("says nothing".to_owned());
    }
    if !(figure.width_mm > 0.0 && figure.height_mm > 0.0 && figure.height_mm < 1000.0) {
        return Err(format!("{} × {} mm", figure.width_mm, figure.height_mm));
    }
    balanced(svg)
}

/// Every element that opens closes, in order.
fn balanced(svg: &str) -> Result<(), String> {
    let mut open = Vec::new();
    for piece in svg.split('<').skip(1) {
        let (tag, rest) = piece.split_once('>').ok_or("a tag without an end")?;
        if rest.contains('>') {
            return Err(format!("a stray bracket after {tag}"));
        }
        if let Some(name) = tag.strip_prefix('/') {
            if open.pop() != Some(name) {
                return Err(format!("{name} closes what it did not open"));
            }
        } else if !tag.ends_with('/') {
            open.push(tag.split_whitespace().next().unwrap_or(tag));
        }
    }
    if open.is_empty() { Ok(()) } else { Err(format!("left open: {open:?}")) }
}

/// Points of every path, with its attributes, as they stand in the SVG.
pub(crate) fn paths(svg: &str) -> Vec<(String, Vec<(f64, f64)>)> {
    svg.split("<path ")
        .skip(1)
        .filter_map(|piece| {
            let attributes = piece.split('>').next()?;
            let d = attributes.split("d=\"").nth(1)?.split('"').next()?;
            let points = d.split(['M', 'L', 'Z']).filter_map(|pair| {
                let (x, y) = pair.split_once(' ')?;
                Some((x.parse().ok()?, y.parse().ok()?))
            });
            Some((attributes.to_owned(), points.collect()))
        })
        .collect()
}

/// Every text of the SVG.
pub(crate) fn texts(svg: &str) -> Vec<String> {
    let texts = svg
        .split("<text ")
        .skip(1)
        .filter_map(|piece| piece.split_once('>')?.1.split("</text>").next().map(str::to_owned));
    texts.collect()
}
