//! SAE J429: bolts of grades 2, 5 and 8, unified coarse threads.
//!
//! Held: 1/4-20 to 1 1/2-6.
//!
//! Not here: fine threads, how hard to tighten (`mechanics`).

use quantities::{Basis, Length, Pressure, Source};
use uom::si::length::inch;

use crate::bolts::Thread;
use crate::si::{inches, psi, square_inches};

/// Where the figures come from.
pub const SOURCE: Source =
    Source::new("SAE J429", "proof loads of coarse threads, as reprinted", Basis::Read);

const fn unified(name: &'static str, diameter: f64, threads_per_inch: f64, area: f64) -> Thread {
    Thread {
        name,
        diameter: inches(diameter),
        pitch: inches(1.0 / threads_per_inch),
        stress_area: square_inches(area),
        source: SOURCE,
    }
}

/// Coarse threads.
#[rustfmt::skip]
pub static THREADS: [Thread; 13] = [
    //                  d in  per in  area in²
    unified("1/4-20",  0.2500, 20.0, 0.0318),
    unified("5/16-18", 0.3125, 18.0, 0.0524),
    unified("3/8-16",  0.3750, 16.0, 0.0775),
    unified("7/16-14", 0.4375, 14.0, 0.1063),
    unified("1/2-13",  0.5000, 13.0, 0.1419),
    unified("5/8-11",  0.6250, 11.0, 0.2260),
    unified("3/4-10",  0.7500, 10.0, 0.3340),
    unified("7/8-9",   0.8750,  9.0, 0.4620),
    unified("1-8",     1.0000,  8.0, 0.6060),
    unified("1 1/8-7", 1.1250,  7.0, 0.7630),
    unified("1 1/4-7", 1.2500,  7.0, 0.9690),
    unified("1 3/8-6", 1.3750,  6.0, 1.1550),
    unified("1 1/2-6", 1.5000,  6.0, 1.4050),
];

/// Grades held.
pub const GRADES: [&str; 3] = ["grade 2", "grade 5", "grade 8"];

/// Proof stress of a grade, written "5" or "grade 5"; grades 2 and 5 are weaker in large sizes.
///
/// # Source
/// [`SOURCE`].
/// # Example
/// ```
/// use quantities::Length;
/// use tables::sae_j429::proof_stress;
/// use uom::si::{length::inch, pressure::psi};
/// let (grade, stress) = proof_stress("grade 5", Length::new::<inch>(0.625)).unwrap();
/// assert_eq!((grade, stress.get::<psi>().round()), ("grade 5", 85_000.0));
/// ```
pub fn proof_stress(grade: &str, diameter: Length) -> Option<(&'static str, Pressure)> {
    let over = |limit: f64| diameter.get::<inch>() > limit + 1e-6;
    let number = grade.trim().trim_start_matches("grade").trim_start();
    let held = GRADES.into_iter().find(|held| held.strip_prefix("grade ") == Some(number))?;
    let strength = match held {
        "grade 2" if over(0.75) => 33_000.0,
        "grade 2" => 55_000.0,
        "grade 5" if over(1.0) => 74_000.0,
        "grade 5" => 85_000.0,
        _ => 120_000.0,
    };
    Some((held, psi(strength)))
}
