//! Service factors: what driver and driven machine do to the steady torque.
//!
//! A factor multiplies the steady torque before it is compared with the rated torque. It covers
//! what is off design, cyclic or uneven; it is no factor of safety. The maker's own table comes
//! first: makers rate differently, and values differ from those for gear units (AGMA 922).
//!
//! Not here: the classes and factors themselves (`tables::service_factors`).

use quantities::{Basis, Source};
use tables::service_factors::{self as table, Driver};

use crate::kind::{Load, same_name};

/// A service factor and how it is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ServiceFactor {
    /// The factor.
    pub factor: f64,
    /// How it is known.
    pub source: Source,
}

/// The factor of a load, by driver; `None` where no figure is held: extreme shock with an engine.
///
/// # Source
/// AGMA 514.02 classes as reprinted (`tables::service_factors`); extreme shock with a motor, 2.5, is
/// of AGMA 922-A96, from memory, to be confirmed.
/// # Example
/// ```
/// use couplings::kind::Load;
/// use couplings::service::factor;
/// use tables::service_factors::Driver;
/// assert_eq!(factor(Driver::ElectricMotor, Load::Moderate).map(|held| held.factor), Some(1.5));
/// ```
pub fn factor(driver: Driver, load: Load) -> Option<ServiceFactor> {
    let of = |class| {
        let factor = table::service_factor(class, driver);
        Some(ServiceFactor { factor, source: table::SOURCE })
    };
    match load {
        Load::Uniform => of(table::Load::Uniform),
        Load::Moderate => of(table::Load::Medium),
        Load::Heavy => of(table::Load::Heavy),
        Load::Extreme => (driver == Driver::ElectricMotor).then_some(EXTREME),
    }
}

const EXTREME: ServiceFactor = ServiceFactor {
    factor: 2.5,
    source: Source::new("AGMA 922-A96", "table 1, to be confirmed", Basis::Memory),
};

/// The load of a driven machine, by its name among `tables::service_factors::machines`.
pub fn load_of(name: &str) -> Option<Load> {
    let classes = [
        (table::Load::Uniform, Load::Uniform),
        (table::Load::Medium, Load::Moderate),
        (table::Load::Heavy, Load::Heavy),
    ];
    let holds = |class| table::machines(class).iter().any(|machine| same_name(machine, name));
    classes.into_iter().find(|(class, _)| holds(*class)).map(|(_, load)| load)
}

/// What is usual for two machines, from their sorts in words.
#[derive(Clone, Debug, PartialEq)]
pub struct Usual {
    /// Machines of the table that the driven one may be.
    pub machines: Vec<&'static str>,
    /// Lightest and heaviest load among them.
    pub loads: [Load; 2],
    /// Least and greatest factor.
    pub factors: [f64; 2],
    /// How they are known.
    pub source: Source,
}

/// Service factors that are usual for a driver and a driven machine, by their sorts in words;
/// `None` where either is not among those held. A suggestion: the maker's table comes first.
///
/// # Example
/// ```
/// let usual = couplings::service::usual("electric motor", "belt conveyor, inclined").unwrap();
/// assert_eq!(usual.factors, [2.0, 2.0]);
/// let pump = couplings::service::usual("motor", "centrifugal pump").unwrap();
/// assert_eq!(pump.factors, [1.0, 1.5], "on clean or on semi-liquid");
/// ```
pub fn usual(driver: &str, machine: &str) -> Option<Usual> {
    let machines = machines_like(machine);
    let loads: Vec<Load> = machines.iter().filter_map(|name| load_of(name)).collect();
    let drivers = drivers_like(driver);
    let factors = drivers
        .iter()
        .flat_map(|driver| loads.iter().map(|load| factor(*driver, *load)))
        .flatten()
        .map(|held| held.factor);
    let (least, greatest) =
        factors.fold((f64::INFINITY, 0.0_f64), |(low, high), f| (low.min(f), high.max(f)));
    let (lightest, heaviest) = (loads.iter().min()?, loads.iter().max()?);
    (greatest > 0.0).then(|| Usual {
        machines: machines.clone(),
        loads: [*lightest, *heaviest],
        factors: [least, greatest],
        source: table::SOURCE,
    })
}

fn words(text: &str) -> Vec<String> {
    let parts = text.split(|c: char| !c.is_alphanumeric());
    parts.filter(|word| !word.is_empty()).map(str::to_lowercase).collect()
}

/// Machines of the table whose name, up to its first comma, is in the text; of those the ones with
/// the longest such name, so that an inclined hoist is no plain hoist.
fn machines_like(sort: &str) -> Vec<&'static str> {
    let sort = words(sort);
    let length = |name: &&'static str| {
        let bare = name.split(',').next().unwrap_or(name);
        let ways = bare.split(" or ").map(words);
        let fits = ways.filter(|way| !way.is_empty() && way.iter().all(|word| sort.contains(word)));
        fits.map(|way| way.len()).max()
    };
    let classes = [table::Load::Uniform, table::Load::Medium, table::Load::Heavy];
    let all = || classes.into_iter().flat_map(table::machines).copied();
    let longest = all().filter_map(|name| length(&name)).max();
    all().filter(|name| longest.is_some() && length(name) == longest).collect()
}

fn drivers_like(sort: &str) -> Vec<Driver> {
    let sort = words(sort);
    let has = |word: &str| sort.iter().any(|other| other == word);
    if has("engine") || has("diesel") {
        vec![Driver::EngineFourToTwelve, Driver::EngineOneToThree]
    } else if has("motor") {
        vec![Driver::ElectricMotor]
    } else {
        Vec::new()
    }
}

/// The least service factor that API 671 asks for in special-purpose trains, by kind of coupling.
///
/// # Source
/// Metallic flexing element: a filled data sheet of API 671, 4th ed. Gear: from memory, to be
/// confirmed.
pub fn least_in_special_trains(kind: &str) -> Option<ServiceFactor> {
    crate::kind(kind)?.least_in_special_trains()
}

/// For kinds with a metallic flexing element.
pub(crate) const FLEXING_IN_SPECIAL_TRAINS: ServiceFactor =
    ServiceFactor { factor: table::SPECIAL_PURPOSE_FLEXING, source: table::SPECIAL_PURPOSE };

/// For gear couplings.
pub(crate) const GEAR_IN_SPECIAL_TRAINS: ServiceFactor = ServiceFactor {
    factor: table::SPECIAL_PURPOSE_GEAR,
    source: Source::new("API Std 671", "gear, to be confirmed", Basis::Memory),
};

#[cfg(test)]
mod tests {
    use super::*;

    /// AGMA 514.02 classes as reprinted in the trade (common practice): electric motor, engine of 4
    /// to 12 cylinders, engine of 1 to 3.
    #[test]
    fn factors_are_as_reprinted() {
        let row = |load| {
            [Driver::ElectricMotor, Driver::EngineFourToTwelve, Driver::EngineOneToThree]
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

    /// Words that belong to no machine of the table give no factor, and the nearer name wins.
    #[test]
    fn sorts_in_words_find_their_machines() {
        let of = |driver, machine| usual(driver, machine).map(|usual| usual.factors);
        assert_eq!(of("electric motor", "inclined hoist"), Some([2.0, 2.0]));
        assert_eq!(of("electric motor", "hoist"), Some([1.5, 1.5]));
        assert_eq!(of("electric motor", "Drying cylinder"), Some([2.0, 2.0]));
        assert_eq!(of("diesel engine", "centrifugal fan"), Some([2.3, 2.8]));
        assert_eq!(of("electric motor", "centrifugal pump, hot water"), Some([1.0, 1.5]));
        for (driver, machine) in
            [("", "crusher"), ("motor", ""), ("motor", "teapot"), ("mule", "kiln")]
        {
            assert_eq!(of(driver, machine), None, "{driver} {machine}");
        }
    }

    #[test]
    fn machines_are_found_by_name() {
        assert_eq!(load_of("Piston pump"), Some(Load::Heavy));
        assert_eq!(load_of("centrifugal pump, clean liquid"), Some(Load::Uniform));
        assert_eq!(load_of("teapot"), None);
    }
}
