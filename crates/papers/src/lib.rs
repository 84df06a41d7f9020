//! The job card and the maker's sheet as PDF; the only crate that knows typst.
//!
//! A card is a pure function of a plan and its figures. It prints what the plan says and works
//! nothing out. For the hand: head, first cautions, drawings, key numbers with limits and stamps,
//! steps with boxes and a column for initials, what is still to measure, the kit, the steps in
//! full, the day it comes off, the record to fill in. For the desk, in small print: drawings, where
//! each stage stands, the working of every number. Black on white, as it's read at arm's length
//! beside a machine.
//!
//! The same plan gives the same bytes. Sections without content are left out.
//!
//! Not here: what a plan says (`job`), how a drawing is made (`figures`).

mod card;
mod printable;
mod sheet;
mod world;

pub use card::{CardFigures, card};
pub use sheet::sheet;
pub use world::make_ready;

use quantities::System;

/// A sheet of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 mm by 297 mm.
    A4,
    /// 8½ in by 11 in.
    Letter,
}

impl Paper {
    /// What lies in the printer where people work in `system`.
    ///
    /// # Example
    /// ```
    /// use papers::Paper;
    /// use quantities::System;
    /// assert_eq!(Paper::usual(System::Metric), Paper::A4);
    /// assert_eq!(Paper::usual(System::Inch), Paper::Letter);
    /// ```
    pub fn usual(system: System) -> Self {
        match system {
            System::Metric => Self::A4,
            System::Inch => Self::Letter,
        }
    }

    /// Its name to the typesetter.
    fn name(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "us-letter",
        }
    }

    /// Height that print may take, between head and foot margins.
    fn print_height_mm(self) -> f64 {
        match self {
            Self::A4 => 261.0,
            Self::Letter => 243.0,
        }
    }

    /// Key numbers that stand on the first page, so that the first steps find room under them.
    fn numbers_first(self) -> usize {
        match self {
            Self::A4 => 10,
            Self::Letter => 8,
        }
    }
}

/// Why there is no paper. A plan alone never brings this about; a figure that is no SVG does.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PaperError {
    /// The data could not be written down.
    #[error("data of the card: {0}")]
    Data(String),
    /// The typesetter refused.
    #[error("layout of the card: {0}")]
    Layout(String),
    /// The PDF could not be written to its standard.
    #[error("PDF of the card: {0}")]
    Pdf(String),
}
