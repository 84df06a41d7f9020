//! Drawings to scale and curves, as SVG.
//!
//! A figure is a pure function of plain inputs: sizes in millimetres with the words that name
//! them, lines, limits, moves. It is the same for page and card: no colour variable, no style
//! sheet, no pattern, no clip, no `id`, no script and no outside reference, so any number of
//! figures can stand inline on one page, and a typesetter reads the same bytes.
//!
//! One user unit is one millimetre of paper; `width` and `height` say so. A figure paints no
//! ground of its own. Ink is what was printed or worked out; pencil is what this job measured, and
//! it never stands alone: a measured size is also framed and typewritten.
//!
//! # Classes
//! Every element carries plain light values and classes that a page's sheet may override, one
//! property each; [`SHEET`] does so with custom properties. The root has the class `figure`.
//!
//! | class | property | for | light |
//! |---|---|---|---|
//! | `ink` `soft` `edge` `rule` `pencil` `hatch` `leaf` | `stroke` | lines | #1c1a17 #544d42 #857a68 #d3c9b5 #5a2a8a #1c1a17 #ffffff |
//! | `ink-fill` `soft-fill` `edge-fill` `rule-fill` `pencil-fill` | `fill` | words, solid marks | as above |
//! | `metal` | `fill` | parts, white under their hatch | #ffffff |
//! | `leaf-fill` | `fill` | ground of a plot, words on solid ink | #ffffff |
//! | `band` | `fill` | how sure a measured line is: pencil at a fifth | #5a2a8a |
//! | `tint` | `fill` | how sure a worked-out line is: ink at an eighth | #1c1a17 |
//! | `halo` | `stroke` | rim of ground round a word that lies on a line | #ffffff |

mod axis;
pub mod bore_map;
pub mod budget;
mod chart;
pub mod clearance;
mod dimension;
pub mod envelope;
mod face;
pub mod fit;
pub mod foot_map;
mod geometry;
mod hatch;
mod ink;
mod labels;
pub mod lineup;
pub mod marks;
pub mod of_plan;
pub mod pressure;
#[cfg(test)]
mod proof;
pub mod pull;
pub mod section;
mod svg;
pub mod sweep;
pub mod tightening;
pub mod torque;
pub mod warmth;
pub mod window;

use ink::Drawing;

/// For a page's style sheet: turns every class to the page's own colours.
pub const SHEET: &str = "\
.figure .ink,.figure .hatch{stroke:var(--ink)}.figure .soft{stroke:var(--soft)}
.figure .edge{stroke:var(--edge)}.figure .rule{stroke:var(--rule)}
.figure .pencil{stroke:var(--pencil)}.figure .leaf,.figure .halo{stroke:var(--leaf)}
.figure .ink-fill,.figure .tint{fill:var(--ink)}.figure .soft-fill{fill:var(--soft)}
.figure .edge-fill{fill:var(--edge)}.figure .rule-fill{fill:var(--rule)}
.figure .pencil-fill,.figure .band{fill:var(--pencil)}
.figure .metal,.figure .leaf-fill{fill:var(--leaf)}
";

/// How wide a figure is drawn, and its type; what is drawn anew for each is not shrunk.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Paper {
    /// Of the whole figure, mm.
    pub width_mm: f64,
    /// Size of type, mm; its figures are 0.61 of that high.
    pub type_mm: f64,
}

impl Paper {
    /// Half the width of a job card.
    pub const CARD: Self = Self { width_mm: 86.0, type_mm: 2.8 };
    /// The full width of a page or a card.
    pub const PAGE: Self = Self { width_mm: 180.0, type_mm: 3.6 };
    /// A column beside the entries: type shows as large as the page's own at 490 px.
    pub const COLUMN: Self = Self { width_mm: 110.0, type_mm: 3.6 };
    /// A phone.
    pub const PHONE: Self = Self { width_mm: 90.0, type_mm: 3.8 };
}

/// Paper that nothing readable fits on.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("nothing can be drawn on {} mm of paper in type of {} mm", .0.width_mm, .0.type_mm)]
pub struct PaperError(pub Paper);

impl Paper {
    fn check(self) -> Result<(), PaperError> {
        let Self { width_mm, type_mm } = self;
        let good = (1.0..12.0).contains(&type_mm) && (22.0 * type_mm..2000.0).contains(&width_mm);
        if good { Ok(()) } else { Err(PaperError(self)) }
    }
}

/// A finished figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// The drawing, ready to stand in a page or to be set on a card.
    pub svg: String,
    /// Of the paper it takes.
    pub width_mm: f64,
    /// Of the paper it takes.
    pub height_mm: f64,
    /// What it shows, in words with numbers, for a reader who cannot see it.
    pub says: String,
}

impl Figure {
    fn of(drawing: &Drawing, title: &str, says: String) -> Self {
        let svg = svg::write(drawing, title, &says);
        Self { svg, width_mm: drawing.width, height_mm: drawing.height, says }
    }
}
