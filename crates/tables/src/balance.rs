//! Balance: quality grades of rigid rotors, and classes of couplings.
//!
//! G is the speed of the mass centre, in mm/s, of a rotor that turns free in space.
//!
//! Not here: the unbalance that a grade allows (`mechanics`).

use quantities::{Basis, Length, Source};

use crate::si::inches;

/// A balance quality grade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grade {
    /// G, mm/s.
    pub g_mm_s: f64,
    /// What it is usual for.
    pub usual_for: &'static str,
}

/// Where the grades come from.
pub const SOURCE: Source =
    Source::new("ISO 21940-11 (ISO 1940-1)", "grades as reprinted", Basis::CommonPractice);

/// Grades, coarsest first.
#[rustfmt::skip]
pub const GRADES: [Grade; 7] = [
    Grade { g_mm_s: 100.0, usual_for: "crankshaft drives of large diesels" },
    Grade { g_mm_s: 40.0,  usual_for: "crankshaft drives of truck and locomotive engines" },
    Grade { g_mm_s: 16.0,  usual_for: "parts of crushing and agricultural machinery" },
    Grade { g_mm_s: 6.3,   usual_for: "flywheels, electrical armatures, process-plant parts, pump impellers" },
    Grade { g_mm_s: 2.5,   usual_for: "turbo-compressors, small armatures, turbine-driven pumps" },
    Grade { g_mm_s: 1.0,   usual_for: "grinding-machine drives" },
    Grade { g_mm_s: 0.4,   usual_for: "gyroscopes, high-precision spindles" },
];

/// The grade named G6.3, 6.3 or g 6.3.
///
/// # Example
/// ```
/// assert_eq!(tables::balance::grade("G 2.5").unwrap().g_mm_s, 2.5);
/// ```
pub fn grade(text: &str) -> Option<&'static Grade> {
    let number: f64 = text.trim().trim_start_matches(['G', 'g']).trim().parse().ok()?;
    GRADES.iter().find(|grade| (grade.g_mm_s - number).abs() < 1e-9)
}

/// The finest grade that a rotor of so many mm/s still meets; `None` when it meets none.
pub fn met_by(g_mm_s: f64) -> Option<&'static Grade> {
    GRADES.iter().rev().find(|grade| g_mm_s.is_finite() && g_mm_s <= grade.g_mm_s + 1e-9)
}

/// Where [`AGMA_9000`] comes from.
pub const AGMA_9000_SOURCE: Source =
    Source::new("ANSI/AGMA 9000", "balance classes, to be confirmed", Basis::Memory);

/// Balance classes of couplings: the most by which the mass axis may lie off, at a balance plane.
#[rustfmt::skip]
pub const AGMA_9000: [(u8, Length); 7] = [
    (5, inches(32_000e-6)), (6, inches(16_000e-6)), (7, inches(8_000e-6)), (8, inches(4_000e-6)),
    (9, inches(2_000e-6)), (10, inches(1_000e-6)), (11, inches(500e-6)),
];
