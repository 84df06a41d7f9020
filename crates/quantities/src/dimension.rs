//! What a quantity is made of, and which `uom` type carries it.

use uom::si::f64::{
    Acceleration, Angle, AngularVelocity, Area, Energy, Force, HeatTransfer, Length, Mass,
    MassDensity, MomentOfInertia, Power, Pressure, Ratio, SpecificHeatCapacity, SurfaceTension,
    TemperatureCoefficient, TemperatureInterval, ThermalConductivity, ThermodynamicTemperature,
    Time, Torque, Velocity, Volume,
};

use crate::Kind;

/// The physical dimensions that Hubwright reads and shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Dimension {
    Number,
    Length,
    Area,
    Volume,
    Mass,
    Time,
    Angle,
    Speed,
    Velocity,
    Force,
    Torque,
    Pressure,
    Power,
    Energy,
    Temperature,
    TemperatureDifference,
    Expansion,
    Density,
    Conductivity,
    HeatCapacity,
    HeatTransfer,
    Inertia,
    Stiffness,
    Acceleration,
}

impl Dimension {
    /// The dimension in words, as an error names it: "a length".
    pub fn words(self) -> &'static str {
        match self {
            Self::Number => "a plain number",
            Self::Length => "a length",
            Self::Area => "an area",
            Self::Volume => "a volume",
            Self::Mass => "a mass",
            Self::Time => "a time",
            Self::Angle => "an angle",
            Self::Speed => "a speed of rotation",
            Self::Velocity => "a velocity",
            Self::Force => "a force",
            Self::Torque => "a torque",
            Self::Pressure => "a pressure or stress",
            Self::Power => "a power",
            Self::Energy => "an energy",
            Self::Temperature => "a temperature",
            Self::TemperatureDifference => "a difference of temperature",
            Self::Expansion => "a coefficient of expansion",
            Self::Density => "a density",
            Self::Conductivity => "a thermal conductivity",
            Self::HeatCapacity => "a specific heat capacity",
            Self::HeatTransfer => "a heat transfer coefficient",
            Self::Inertia => "a moment of inertia",
            Self::Stiffness => "a stiffness along the shaft",
            Self::Acceleration => "an acceleration",
        }
    }

    /// Two ways to write such a quantity, one metric and one inch.
    pub fn examples(self) -> [&'static str; 2] {
        match self {
            Self::Number => ["1.75", "75 %"],
            Self::Length => ["80.062 mm", "3.1512 in"],
            Self::Area => ["157 mm2", "0.226 in2"],
            Self::Volume => ["0.8 L", "27 fl oz"],
            Self::Mass => ["8.3 kg", "18.3 lb"],
            Self::Time => ["40 s", "10 min"],
            Self::Angle => ["0.5 mm/m", "0.5 mil/in"],
            Self::Speed => ["1480 rpm", "24.7 Hz"],
            Self::Velocity => ["2.8 mm/s", "0.11 in/s"],
            Self::Force => ["40 kN", "9000 lbf"],
            Self::Torque => ["120 N·m", "90 lbf·ft"],
            Self::Pressure => ["250 MPa", "36000 psi"],
            Self::Power => ["75 kW", "100 hp"],
            Self::Energy => ["500 kJ", "470 Btu"],
            Self::Temperature => ["180 degC", "350 degF"],
            Self::TemperatureDifference => ["40 K", "72 degF"],
            Self::Expansion => ["11.5 µm/m/K", "6.4 µin/in/degF"],
            Self::Density => ["7850 kg/m3", "0.284 lb/in3"],
            Self::Conductivity => ["50 W/m/K", "29 Btu/h/ft/degF"],
            Self::HeatCapacity => ["470 J/kg/K", "0.112 Btu/lb/degF"],
            Self::HeatTransfer => ["10 W/m2/K", "1.8 Btu/h/ft2/degF"],
            Self::Inertia => ["0.12 kg·m2", "2.8 lb·ft2"],
            Self::Stiffness => ["400 N/mm", "2300 lbf/in"],
            Self::Acceleration => ["9.81 m/s2", "32.2 ft/s2"],
        }
    }
}

/// A `uom` quantity that can be read from text and shown.
pub trait Physical: Copy + std::fmt::Debug + PartialEq {
    /// The type of its `±`: itself, but for a temperature, whose spread is an interval.
    type Spread: Copy + std::fmt::Debug + PartialEq;
    /// Its dimension.
    const DIMENSION: Dimension;
    /// How it is shown when nothing more is known of it.
    const KIND: Kind;
    /// From a float in SI base units.
    fn from_si(si: f64) -> Self;
    /// As a float in SI base units.
    fn si(self) -> f64;
    /// The spread from a float in SI base units.
    fn spread_from_si(si: f64) -> Self::Spread;
    /// The spread as a float in SI base units.
    fn spread_si(spread: Self::Spread) -> f64;
}

macro_rules! physical {
    ($($quantity:ident ($unit:path) $dimension:ident $kind:ident;)*) => {$(
        impl Physical for $quantity {
            type Spread = Self;
            const DIMENSION: Dimension = Dimension::$dimension;
            const KIND: Kind = Kind::$kind;
            #[inline]
            fn from_si(si: f64) -> Self { Self::new::<$unit>(si) }
            #[inline]
            fn si(self) -> f64 { self.get::<$unit>() }
            #[inline]
            fn spread_from_si(si: f64) -> Self { Self::from_si(si) }
            #[inline]
            fn spread_si(spread: Self) -> f64 { spread.si() }
        }
    )*};
}

physical! {
    Ratio (uom::si::ratio::ratio) Number Number;
    Length (uom::si::length::meter) Length Length;
    Area (uom::si::area::square_meter) Area Area;
    Volume (uom::si::volume::cubic_meter) Volume Volume;
    Mass (uom::si::mass::kilogram) Mass Mass;
    Time (uom::si::time::second) Time Time;
    Angle (uom::si::angle::radian) Angle Slope;
    AngularVelocity (uom::si::angular_velocity::radian_per_second) Speed Speed;
    Velocity (uom::si::velocity::meter_per_second) Velocity Velocity;
    Force (uom::si::force::newton) Force Force;
    Torque (uom::si::torque::newton_meter) Torque Torque;
    Pressure (uom::si::pressure::pascal) Pressure Stress;
    Power (uom::si::power::watt) Power Power;
    Energy (uom::si::energy::joule) Energy Energy;
    TemperatureInterval (uom::si::temperature_interval::kelvin) TemperatureDifference TemperatureDifference;
    TemperatureCoefficient (uom::si::temperature_coefficient::per_kelvin) Expansion Expansion;
    MassDensity (uom::si::mass_density::kilogram_per_cubic_meter) Density Density;
    ThermalConductivity (uom::si::thermal_conductivity::watt_per_meter_kelvin) Conductivity Conductivity;
    SpecificHeatCapacity (uom::si::specific_heat_capacity::joule_per_kilogram_kelvin) HeatCapacity HeatCapacity;
    HeatTransfer (uom::si::heat_transfer::watt_per_square_meter_kelvin) HeatTransfer HeatTransfer;
    MomentOfInertia (uom::si::moment_of_inertia::kilogram_square_meter) Inertia Inertia;
    SurfaceTension (uom::si::surface_tension::newton_per_meter) Stiffness Stiffness;
    Acceleration (uom::si::acceleration::meter_per_second_squared) Acceleration Acceleration;
}

impl Physical for ThermodynamicTemperature {
    type Spread = TemperatureInterval;
    const DIMENSION: Dimension = Dimension::Temperature;
    const KIND: Kind = Kind::Temperature;
    #[inline]
    fn from_si(si: f64) -> Self {
        Self::new::<uom::si::thermodynamic_temperature::kelvin>(si)
    }
    #[inline]
    fn si(self) -> f64 {
        self.get::<uom::si::thermodynamic_temperature::kelvin>()
    }
    #[inline]
    fn spread_from_si(si: f64) -> TemperatureInterval {
        TemperatureInterval::from_si(si)
    }
    #[inline]
    fn spread_si(spread: TemperatureInterval) -> f64 {
        spread.si()
    }
}
