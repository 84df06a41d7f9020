//! Seals and grease near a coupling, and the temperature that each stands.
//!
//! A hub is heated far beyond what most seals bear: take them off, or keep them back and cool.
//!
//! Not here: what a given compound of a given maker stands; its sheet outranks this.

use quantities::{Basis, Source, ThermodynamicTemperature};

use crate::si::celsius;

/// A material of seals, O-rings and flexible parts, or grease.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seal {
    /// Its name, as an entry writes it.
    pub name: &'static str,
    /// The highest temperature that it stands for long.
    pub limit: ThermodynamicTemperature,
    /// The highest that it stands for a short time, where one is held.
    pub short_term: Option<ThermodynamicTemperature>,
    /// Where the figures come from.
    pub source: Source,
}

const GUIDES: Source = Source::common_practice("seal trade guides");
const D2000: Source = Source::new("ASTM D2000", "heat type B: 100 °C", Basis::Memory);
const GREASES: Source =
    Source::new("common practice", "lithium-soap grease, for long", Basis::Memory);
const RECALLED: Source = Source::new("seal trade guides", "", Basis::Memory);

const fn limited(name: &'static str, limit: f64, short: Option<f64>, source: Source) -> Seal {
    let short_term = match short {
        Some(short) => Some(celsius(short)),
        None => None,
    };
    Seal { name, limit: celsius(limit), short_term, source }
}

/// Nitrile is held at the lower of two figures that guides give, 100 and 120 °C.
#[rustfmt::skip]
static SEALS: [Seal; 11] = [
    //                    long   short °C
    limited("nitrile",        100.0, Some(140.0), D2000),
    limited("fluoroelastomer", 200.0, Some(230.0), GUIDES),
    limited("silicone",       200.0, None, RECALLED),
    limited("ptfe",           260.0, None, RECALLED),
    limited("epdm",           130.0, None, RECALLED),
    limited("neoprene",       100.0, None, RECALLED),
    limited("polyurethane",    80.0, None, RECALLED),
    limited("natural rubber",  70.0, None, RECALLED),
    limited("felt",           100.0, None, RECALLED),
    limited("cork",           100.0, None, RECALLED),
    limited("grease",         120.0, None, GREASES),
];

const ALSO: [(&str, &str); 6] = [
    ("nbr", "nitrile"),
    ("buna-n", "nitrile"),
    ("fkm", "fluoroelastomer"),
    ("fluorocarbon", "fluoroelastomer"),
    ("chloroprene", "neoprene"),
    ("vmq", "silicone"),
];

/// The seal material of that name; capitals do not matter.
///
/// # Example
/// ```
/// use tables::seals::seal;
/// use uom::si::thermodynamic_temperature::degree_celsius;
/// let limit = seal("NBR").unwrap().limit;
/// assert_eq!(limit.get::<degree_celsius>().round(), 100.0);
/// ```
pub fn seal(name: &str) -> Option<&'static Seal> {
    let wanted = name.trim().to_lowercase();
    let wanted = ALSO.iter().find(|(other, _)| *other == wanted).map_or(&*wanted, |(_, name)| name);
    SEALS.iter().find(|seal| seal.name == wanted)
}

/// Every seal material held.
pub fn all() -> &'static [Seal] {
    &SEALS
}
