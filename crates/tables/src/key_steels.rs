//! Key steel, and where it yields.
//!
//! Not here: the key's size (`iso_r_773`, `ansi_b17_1`) and what a torque does to it (`mechanics`).

use quantities::{Basis, Pressure, Source};

use crate::si::megapascals;

/// A steel that keys are made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KeySteel {
    /// As an entry writes it.
    pub name: &'static str,
    /// Yield strength that may be counted on.
    pub yield_strength: Pressure,
    /// Where it comes from.
    pub source: Source,
}

const SHIGLEY: &str = "Shigley’s Mechanical Engineering Design, 9th ed.";

/// What is held, the weakest first; the first serves where nobody knows the key.
#[rustfmt::skip]
pub static STEELS: [KeySteel; 4] = [
    KeySteel { name: "plain key bar", yield_strength: megapascals(250.0),
        source: Source::common_practice("the low end for cold-drawn low-carbon key bar") },
    KeySteel { name: "low-carbon bar", yield_strength: megapascals(370.0),
        source: Source::new(SHIGLEY, "Table A-20, 1018 cold drawn", Basis::Memory) },
    KeySteel { name: "medium-carbon bar", yield_strength: megapascals(530.0),
        source: Source::new(SHIGLEY, "Table A-20, 1045 cold drawn", Basis::Memory) },
    KeySteel { name: "stainless bar", yield_strength: megapascals(205.0),
        source: Source::new("ASTM A276", "type 304, annealed: 30 ksi", Basis::Memory) },
];

/// The steel of that name; `None` for one not held.
///
/// # Example
/// ```
/// use uom::si::pressure::megapascal;
/// let steel = tables::key_steels::key_steel("Low-carbon bar").unwrap();
/// assert_eq!(steel.yield_strength.get::<megapascal>().round(), 370.0);
/// ```
pub fn key_steel(name: &str) -> Option<&'static KeySteel> {
    let wanted = name.trim().to_lowercase();
    STEELS.iter().find(|steel| steel.name == wanted)
}

/// Names of what is held.
pub fn names() -> impl Iterator<Item = &'static str> {
    STEELS.iter().map(|steel| steel.name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::pressure::psi;

    /// Mott, *Machine Elements in Mechanical Design*, ch. 11: keys of 1018 at 54 000 psi and of 1045
    /// at 77 000 psi, to the nearest thousand.
    #[test]
    fn the_bars_are_those_of_the_handbooks() {
        for (name, thousand) in [("low-carbon bar", 54.0), ("medium-carbon bar", 77.0)] {
            let found = key_steel(name).unwrap().yield_strength.get::<psi>() / 1e3;
            assert!((found - thousand).abs() <= 0.5, "{name}: {found}");
        }
        assert!(key_steel("butter").is_none());
    }
}
