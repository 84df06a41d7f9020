//! What machine supports are made of, how warm they run, and how high shafts lie: for thermal
//! growth of a shaft's position, and for seeing whether a figure is plausible.
//!
//! Heights are from the shim plane to the shaft's centre; rises are of the metal of the support,
//! not of the fluid pumped.
//!
//! Not here: the growth itself and the targets it gives (`lineup`).

use quantities::{Basis, Length, Source, TemperatureCoefficient, TemperatureInterval};

use crate::si::{kelvins, millimetres, per_kelvin_e6};

/// A material of frames, pedestals and foundations.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Support {
    /// Its name, as an entry writes it.
    pub name: &'static str,
    /// Coefficient of expansion near room temperature.
    pub expansion: TemperatureCoefficient,
    /// Where it comes from.
    pub source: Source,
}

const MCMILLAN: Source = Source::new(
    "McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment (2004)",
    "ch. 8: 0.0063 mil/in/°F, from 0 to 100 °C",
    Basis::Read,
);
const TRADE_PRESS: Source =
    Source::new("Maintenance Technology, January 2003", "thermal growth", Basis::Read);
const HANDBOOK: Source = Source::new("handbook values near room temperature", "", Basis::Memory);

const fn support(name: &'static str, expansion: f64, source: Source) -> Support {
    Support { name, expansion: per_kelvin_e6(expansion), source }
}

#[rustfmt::skip]
static SUPPORTS: [Support; 9] = [
    //                                         1e-6/K
    support("steel or iron frame",             11.34, MCMILLAN),
    support("carbon steel",                    11.7,  HANDBOOK),
    support("cast iron",                       10.62, TRADE_PRESS),
    support("austenitic stainless steel",      17.0,  HANDBOOK),
    support("martensitic stainless steel",     10.5,  HANDBOOK),
    support("aluminium",                       23.0,  HANDBOOK),
    support("bronze",                          18.0,  HANDBOOK),
    support("copper",                          16.8,  HANDBOOK),
    support("concrete",                        10.0,  HANDBOOK),
];

/// The support material of that name; capitals do not matter.
///
/// # Example
/// ```
/// use tables::growth::support_of;
/// use uom::si::temperature_coefficient::per_kelvin;
/// let frame = support_of("steel or iron frame").unwrap();
/// assert!((frame.expansion.get::<per_kelvin>() - 11.34e-6).abs() < 1e-12);
/// ```
pub fn support_of(name: &str) -> Option<&'static Support> {
    let wanted = name.trim().to_lowercase();
    SUPPORTS.iter().find(|support| support.name == wanted)
}

/// Every support material held; the first is the usual one.
pub fn supports() -> &'static [Support] {
    &SUPPORTS
}

/// What is usual for a kind of machine: bounds to see a slip by, no substitute for measuring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Usual {
    /// The kind of machine.
    pub machine: &'static str,
    /// From the shim plane to the shaft's centre.
    pub height: (Length, Length),
    /// How far the support warms up, from standing to running; negative when it cools.
    pub rise: (TemperatureInterval, TemperatureInterval),
}

/// Where [`usual`] comes from.
pub const USUAL_SOURCE: Source =
    Source::new("common practice", "heights and rises seen in the field", Basis::Memory);

const fn seen(machine: &'static str, height: [f64; 2], rise: [f64; 2]) -> Usual {
    Usual {
        machine,
        height: (millimetres(height[0]), millimetres(height[1])),
        rise: (kelvins(rise[0]), kelvins(rise[1])),
    }
}

#[rustfmt::skip]
static USUAL: [Usual; 8] = [
    //                                                    height mm        rise K
    seen("electric motor",                               [160.0,  630.0], [ 10.0,  40.0]),
    seen("cold water pump",                              [150.0,  600.0], [ -5.0,   5.0]),
    seen("hot water pump, foot mounted",                 [200.0,  700.0], [ 30.0,  90.0]),
    seen("hot oil pump, centreline mounted (pedestal)",  [400.0,  900.0], [  5.0,  30.0]),
    seen("steam turbine, exhaust end",                   [500.0, 1200.0], [ 30.0,  80.0]),
    seen("steam turbine, inlet end",                     [500.0, 1200.0], [ 60.0, 150.0]),
    seen("gearbox",                                      [250.0,  900.0], [ 25.0,  55.0]),
    seen("refrigeration compressor",                     [300.0,  800.0], [-30.0,  10.0]),
];

/// What is usual, by kind of machine.
pub fn usual() -> &'static [Usual] {
    &USUAL
}
