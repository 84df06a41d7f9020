//! Nut factor K of T = K·F·d, by the state of the threads, and how far a bolt is stretched.
//!
//! Torque is a poor measure of tension: the preload of bolts tightened alike scatters by
//! [`SCATTER`]. The maker's torque outranks any estimate made with these.

use quantities::{Basis, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// State of threads and nut face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Threads {
    /// Plain, as received.
    Dry,
    /// Zinc plated, dry.
    #[serde(rename = "zinc plated")]
    ZincPlated,
    /// A drop of oil.
    Oiled,
    /// Well lubricated with oil or grease.
    Lubricated,
    /// Molybdenum disulphide paste.
    Molybdenum,
}

/// Where the factors come from.
pub const SOURCE: Source =
    Source::new("common practice", "nut factors by thread condition", Basis::Memory);

/// How far the preload may be off, either way, when only the torque is known: 25 to 35 %.
pub const SCATTER: (f64, f64) = (0.25, 0.35);

/// Preload as a fraction of the proof load, for a joint that is opened again.
pub const REUSABLE: f64 = 0.75;
/// Preload as a fraction of the proof load, for a joint that stays closed.
pub const PERMANENT: f64 = 0.90;
/// Where the fractions come from.
pub const PRELOAD: Source = Source::new("machine-design texts", "preload of bolts", Basis::Memory);

/// Torque of each pass, as a fraction of the last.
pub const PASSES: [f64; 3] = [0.30, 0.70, 1.00];
/// Where the passes come from.
pub const PASSES_SOURCE: Source =
    Source::new("ASME PCC-1", "tightening in passes across the circle", Basis::Memory);

/// K.
///
/// # Source
/// [`SOURCE`]; dry 0.20 is also read in a bolt torque table, zinc plated is read as 0.18 to 0.20.
/// # Example
/// ```
/// use tables::nut_factor::{Threads, nut_factor};
/// assert_eq!(nut_factor(Threads::Oiled), 0.18);
/// ```
pub fn nut_factor(threads: Threads) -> f64 {
    match threads {
        Threads::Dry | Threads::ZincPlated => 0.20,
        Threads::Oiled => 0.18,
        Threads::Lubricated => 0.15,
        Threads::Molybdenum => 0.12,
    }
}
