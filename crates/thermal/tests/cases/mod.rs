//! The hubs that the tests share.

use quantities::{
    Length, MassDensity, Physical, Pressure, SpecificHeatCapacity, TemperatureCoefficient,
    ThermalConductivity, ThermodynamicTemperature,
};
use thermal::{Bounds, Expansion, GapAir, Hub, Metal, Shaft, Slice, Surfaces, Unknowns};
use uom::si::f64::HeatTransfer;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Millimetres.
pub fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

/// Degrees Celsius.
pub fn celsius(temperature: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(temperature)
}

/// A metal by its conductivity, heat capacity, density, expansion, modulus and Poisson’s ratio.
pub fn metal(figures: [f64; 6]) -> Metal {
    let [conductivity, heat_capacity, density, expansion, young, poisson] = figures;
    Metal {
        conductivity: ThermalConductivity::from_si(conductivity),
        heat_capacity: SpecificHeatCapacity::from_si(heat_capacity),
        density: MassDensity::from_si(density),
        expansion: Expansion::Constant(TemperatureCoefficient::from_si(expansion)),
        elastic: tables::materials::Elastic { young: Pressure::from_si(young), poisson },
        yield_strength: None,
        heating_limit: None,
    }
}

/// Steel, its figures written out so that no change of a table moves a test.
pub fn steel() -> Metal {
    metal([51.0, 470.0, 7800.0, 11.52e-6, 207e9, 0.292])
}

/// A plain hub for 80 mm: 130 mm outside, 90 mm long.
pub fn plain() -> Hub {
    Hub::plain(mm(80.0), mm(130.0), mm(90.0), steel())
}

/// A flanged hub for 100 mm: a body of 150 mm by 90 mm, a flange of 280 mm by 30 mm.
pub fn flanged() -> Hub {
    let slice = |length, outside| Slice { length: mm(length), outside: mm(outside) };
    Hub { bore: mm(100.0), slices: vec![slice(90.0, 150.0), slice(30.0, 280.0)], metal: steel() }
}

/// A solid steel shaft of two diameters behind the hub, flush with its end.
pub fn shaft(hub: &Hub) -> Shaft {
    Shaft::solid(hub.bore, steel())
}

/// The joint with air of one conductivity.
pub fn joint() -> Surfaces {
    let conductance = HeatTransfer::new::<watt_per_square_meter_kelvin>;
    Surfaces {
        touching: conductance(5_000.0),
        pressed: conductance(20_000.0),
        air: GapAir::Constant(ThermalConductivity::from_si(0.032)),
        emissivity: 0.3,
    }
}

/// All as entered, the hub 0.7 off the middle.
pub fn settled() -> Unknowns {
    Unknowns { eccentricity: Bounds::known(0.7), ..Unknowns::none() }
}
