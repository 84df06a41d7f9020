//! The coupling in half section, to scale, with this job's sizes.
//!
//! Above the axis it is cut, below it is seen from outside; driver to the left. What gives is
//! solid ink (crowned teeth, spring grid, disc pack), elastomer the closest cross-hatch; what only
//! carries is white and hatched. Shafts, keys, bolts, nuts and pins are never cut.
//!
//! x = 0 lies midway between the hub faces, hubs are flush with the shaft ends, and everything is
//! in millimetres of the job until a view brings it to the sheet. What nobody stated is drawn
//! from proportions of the larger bore: for drawing only, shown thin and broken, its size in
//! brackets. No calculation may read them.
//!
//! Not here: what the sizes mean (`couplings`), how they were found (`job`).
#![allow(
    clippy::many_single_char_names,
    clippy::similar_names,
    reason = "coordinates and radii go by their letters; driver and driven are words of the trade"
)]

use quantities::System;

use crate::Figure;

mod assembly;
mod chain;
mod check;
mod diaphragm;
mod disc;
mod exploded;
mod fasteners;
mod gear;
mod grid;
mod jaw;
mod joint;
mod kind;
mod order;
mod other;
mod pin;
#[cfg(test)]
mod proof;
mod rigid;
mod scale;
mod seam;
mod shaft;
mod shape;
mod shear;
mod sheet;
mod small;
mod tube;

pub use kind::{Cover, Elastomer, Kind, Middle, Packs, Rubber, Sleeves, Split, Through};

/// Where a size comes from, and so how it is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// Read on this job: pencil, typewritten, framed.
    Measured,
    /// From the maker's data sheet or a drawing: ink.
    Sheet,
    /// Nobody said: in brackets, and what rests on it thin and broken.
    Assumed,
}

/// A size as it is drawn and as it is written.
#[derive(Clone, Debug, PartialEq)]
pub struct Dim {
    /// As drawn.
    pub mm: f64,
    /// As written, in the job's units and without a unit: "79.962", "80 p6", "3.1512".
    pub text: String,
    /// Where it comes from.
    pub known: Known,
}

impl Dim {
    /// A size measured on this job.
    pub fn measured(mm: f64, text: impl Into<String>) -> Self {
        Self { mm, text: text.into(), known: Known::Measured }
    }

    /// A size from the data sheet.
    pub fn sheet(mm: f64, text: impl Into<String>) -> Self {
        Self { mm, text: text.into(), known: Known::Sheet }
    }

    /// A size that was assumed.
    pub fn assumed(mm: f64, text: impl Into<String>) -> Self {
        Self { mm, text: text.into(), known: Known::Assumed }
    }
}

/// A parallel key, as the key's own table gives it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Key {
    /// From the bottom of the seat in the shaft to the top of the key.
    pub height_mm: f64,
    /// Of the seat in the shaft.
    pub depth_mm: f64,
    /// Along the shaft.
    pub length_mm: f64,
}

/// One machine's side of the coupling.
#[derive(Clone, Debug, PartialEq)]
pub struct Half {
    /// "motor", "pump".
    pub machine: String,
    /// Diameter of the shaft where the hub sits, and of the hub's bore: one line at any scale.
    pub shaft: Dim,
    /// Diameter of the hole along a hollow shaft.
    pub shaft_bore_mm: Option<f64>,
    /// Length of the hub along the shaft.
    pub hub_length: Dim,
    /// Diameter of the hub's barrel.
    pub hub_outside: Option<Dim>,
    /// The key; none on a keyless fit.
    pub key: Option<Key>,
}

/// A coupling on its shafts.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// The driving machine's half, drawn to the left.
    pub driver: Half,
    /// The driven machine's half.
    pub driven: Half,
    /// Between the hub faces; zero where they meet.
    pub gap: Dim,
    /// The largest diameter: flange, cover, or hub where that is all.
    pub outside: Option<Dim>,
    /// What joins the halves.
    pub kind: Kind,
    /// Whose scales, and whose units for the printed rule and for assumed sizes.
    pub system: System,
}

/// How much the drawing carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    /// For a card or a phone: 82 mm wide, the sizes that matter, no letters.
    Small,
    /// For a page: 180 mm wide, every part lettered and named.
    Full,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SectionError {
    /// A size that is no length.
    #[error("{what} cannot be {mm} mm")]
    Size {
        /// Which.
        what: &'static str,
        /// As given.
        mm: f64,
    },
    /// Diameters that must grow from the inside out do not.
    #[error("{inner} {inner_mm} mm is not smaller than {outer} {outer_mm} mm")]
    Order {
        /// Which must be smaller.
        inner: &'static str,
        /// As given.
        inner_mm: f64,
        /// Which must be larger.
        outer: &'static str,
        /// As given.
        outer_mm: f64,
    },
}

/// The drawing.
///
/// # Errors
/// [`SectionError`] when a size is not a length, or diameters are out of order.
///
/// # Example
/// ```
/// use figures::section::{Detail, Dim, Half, Kind, Section, Sleeves, draw};
/// let half = |machine: &str, d, says: &str| Half {
///     machine: machine.to_owned(),
///     shaft: Dim::measured(d, says),
///     shaft_bore_mm: None,
///     hub_length: Dim::sheet(90.0, "90"),
///     hub_outside: None,
///     key: None,
/// };
/// let section = Section {
///     driver: half("motor", 80.0, "80.046"),
///     driven: half("pump", 75.0, "75.012"),
///     gap: Dim::sheet(6.0, "6.0"),
///     outside: None,
///     kind: Kind::Gear { sleeves: Sleeves::Flanged, sleeve_outside: None, bolts: Some(8) },
///     system: quantities::System::Metric,
/// };
/// let figure = draw(&section, Detail::Full)?;
/// assert!(figure.svg.contains("80.046"));
/// assert!(figure.says.contains("gap 6.0 mm"));
/// # Ok::<(), figures::section::SectionError>(())
/// ```
pub fn draw(section: &Section, detail: Detail) -> Result<Figure, SectionError> {
    let drawing = match detail {
        Detail::Small => small::draw(section)?,
        Detail::Full => sheet::draw(section)?,
    };
    Ok(Figure::of(&drawing, section.kind.title(), section.says()))
}

/// The parts moved apart along the axis, numbered in the order of work, 180 mm wide; `None` for a
/// kind that has no such picture.
///
/// # Errors
/// As [`draw`].
pub fn taken_apart(section: &Section) -> Result<Option<Figure>, SectionError> {
    let drawing = exploded::draw(section)?;
    let title = format!("{}, taken apart", section.kind.title());
    let figure = |drawing| Some(Figure::of(&drawing, &title, exploded::says(section)?));
    Ok(drawing.and_then(figure))
}

impl Section {
    pub(crate) fn halves(&self) -> [&Half; 2] {
        [&self.driver, &self.driven]
    }

    fn unit(&self) -> &'static str {
        match self.system {
            System::Metric => "mm",
            System::Inch => "in",
        }
    }

    /// The drawing in words.
    fn says(&self) -> String {
        let half = |half: &Half| {
            let (machine, unit) = (&half.machine, self.unit());
            let (shaft, hub) = (told(&half.shaft, unit), told(&half.hub_length, unit));
            format!("shaft of the {machine} {shaft}, its hub {hub} long")
        };
        let (driver, driven) = (half(&self.driver), half(&self.driven));
        let gap = if self.kind.faces_meet() {
            "faces together".to_owned()
        } else {
            let between = match self.kind {
                Kind::Disc { packs: Packs::Close { .. }, .. } => "the seats on the hub flanges",
                _ => "the hub faces",
            };
            format!("gap {} between {between}", told(&self.gap, self.unit()))
        };
        let outside = self
            .outside
            .as_ref()
            .map_or(String::new(), |dim| format!("; largest diameter {}", told(dim, self.unit())));
        let title = self.kind.title();
        format!(
            "{title} in half section, above the axis cut, below it from outside. \
             Sizes: {driver}; {driven}; {gap}{outside}."
        )
    }
}

fn told(dim: &Dim, unit: &str) -> String {
    let standing = match dim.known {
        Known::Measured => " measured",
        Known::Sheet => "",
        Known::Assumed => " assumed",
    };
    format!("{} {unit}{standing}", dim.text)
}
