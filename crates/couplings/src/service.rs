//! Service factors: what driver and driven machine do to the steady torque.
//!
//! A factor multiplies the steady torque before it is compared with the rated torque. It covers
//! what is off design, cyclic or uneven; it is no factor of safety. The maker's own table comes
//! first: makers rate differently, and values differ from those for gear units (AGMA 922).

use quantities::{Basis, Source};

use crate::kind::{Load, same_name};

/// What drives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Driver {
    /// An electric motor or another smooth driver.
    ElectricMotor,
    /// An engine of four to twelve cylinders.
    Engine4To12,
    /// An engine of one to three cylinders.
    Engine1To3,
}

/// A service factor and how it is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ServiceFactor {
    /// The factor.
    pub factor: f64,
    /// How it is known.
    pub source: Source,
}

const AGMA_514: Source =
    Source::new("classes of AGMA 514.02, as reprinted in the trade", "", Basis::CommonPractice);
const AGMA_922: Source = Source::new("AGMA 922-A96", "table 1; to be confirmed", Basis::Memory);

/// The factor of a class of load, by driver; `None` where no figure is held: extreme shock with an
/// engine.
///
/// # Example
/// ```
/// use couplings::kind::Load;
/// use couplings::service::{Driver, factor};
/// assert_eq!(factor(Driver::ElectricMotor, Load::Moderate).map(|held| held.factor), Some(1.5));
/// ```
pub fn factor(driver: Driver, load: Load) -> Option<ServiceFactor> {
    let row = match load {
        Load::Uniform => [1.0, 1.5, 1.8],
        Load::Moderate => [1.5, 2.3, 2.8],
        Load::Heavy => [2.0, 3.0, 3.5],
        Load::Extreme => {
            return (driver == Driver::ElectricMotor)
                .then_some(ServiceFactor { factor: 2.5, source: AGMA_922 });
        }
    };
    let column = match driver {
        Driver::ElectricMotor => 0,
        Driver::Engine4To12 => 1,
        Driver::Engine1To3 => 2,
    };
    Some(ServiceFactor { factor: row[column], source: AGMA_514 })
}

/// A driven machine and its class of load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Machine {
    /// Its name.
    pub name: &'static str,
    /// Its class.
    pub load: Load,
}

const fn machine(name: &'static str, load: Load) -> Machine {
    Machine { name, load }
}

/// Driven machines and their classes, as the trade reprints them from AGMA 514.02.
pub const MACHINES: [Machine; 29] = [
    machine("agitator, light liquid", Load::Uniform),
    machine("axial compressor", Load::Uniform),
    machine("centrifugal compressor", Load::Uniform),
    machine("centrifugal pump, clean liquid", Load::Uniform),
    machine("crane travel", Load::Uniform),
    machine("apron or drag conveyor", Load::Moderate),
    machine("calender", Load::Moderate),
    machine("centrifugal fan", Load::Moderate),
    machine("centrifugal pump, semi-liquid", Load::Moderate),
    machine("concrete mixer", Load::Moderate),
    machine("crane hoist and slewing", Load::Moderate),
    machine("elevator or hoist", Load::Moderate),
    machine("kneader", Load::Moderate),
    machine("machine-tool main drive", Load::Moderate),
    machine("mill live table", Load::Moderate),
    machine("pipeline pump", Load::Moderate),
    machine("turbo compressor", Load::Moderate),
    machine("belt conveyor", Load::Heavy),
    machine("cold rolling mill", Load::Heavy),
    machine("crusher", Load::Heavy),
    machine("inclined hoist", Load::Heavy),
    machine("kiln", Load::Heavy),
    machine("piston pump", Load::Heavy),
    machine("reciprocating compressor", Load::Heavy),
    machine("rotary drilling", Load::Heavy),
    machine("rubber extruder", Load::Heavy),
    machine("stamping mill", Load::Heavy),
    machine("wet press or drying cylinder", Load::Heavy),
    machine("wind machine fan", Load::Heavy),
];

/// The class of a driven machine by its name in [`MACHINES`].
pub fn load_of(name: &str) -> Option<Load> {
    MACHINES.iter().find(|machine| same_name(machine.name, name)).map(|machine| machine.load)
}

/// The least service factor that API 671 asks for in special-purpose trains.
///
/// # Source
/// Metallic flexible element 1.5: API 671, 4th ed., data sheet of a filled form. Gear 1.75: from
/// memory, to be confirmed.
pub fn least_in_special_trains(kind: &str) -> Option<ServiceFactor> {
    match kind {
        "disc" | "diaphragm" => Some(ServiceFactor {
            factor: 1.5,
            source: Source::new("API 671, 4th ed.", "data sheet", Basis::Read),
        }),
        "gear" => Some(ServiceFactor {
            factor: 1.75,
            source: Source::new("API 671", "to be confirmed", Basis::Memory),
        }),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// AGMA 514.02 classes as reprinted in the trade (common practice): electric motor, engine of 4
    /// to 12 cylinders, engine of 1 to 3.
    #[test]
    fn factors_are_as_reprinted() {
        let row = |load| {
            [Driver::ElectricMotor, Driver::Engine4To12, Driver::Engine1To3]
                .map(|driver| factor(driver, load).map(|held| held.factor))
        };
        assert_eq!(row(Load::Uniform), [Some(1.0), Some(1.5), Some(1.8)]);
        assert_eq!(row(Load::Moderate), [Some(1.5), Some(2.3), Some(2.8)]);
        assert_eq!(row(Load::Heavy), [Some(2.0), Some(3.0), Some(3.5)]);
        assert_eq!(row(Load::Extreme), [Some(2.5), None, None]);
    }

    /// The generic bands of the trade: smooth 1, moderate 1.3 to 1.5, heavy 1.5 to 2 (common
    /// practice).
    #[test]
    fn factors_of_a_motor_lie_in_the_bands_of_the_trade() {
        let motor = |load| factor(Driver::ElectricMotor, load).unwrap().factor;
        assert!((1.3..=1.5).contains(&motor(Load::Moderate)));
        assert!((1.5..=2.0).contains(&motor(Load::Heavy)));
    }

    #[test]
    fn machines_are_found_by_name() {
        assert_eq!(load_of("Piston pump"), Some(Load::Heavy));
        assert_eq!(load_of("centrifugal pump, clean liquid"), Some(Load::Uniform));
        assert_eq!(load_of("teapot"), None);
    }
}
