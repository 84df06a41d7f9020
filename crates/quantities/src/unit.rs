//! The units that Hubwright reads, with their exact factors.
//!
//! Source of the factors: the SI Brochure (9th ed.) and NIST SP 811 (2008), appendix B; an inch
//! is 25.4 mm, a pound 0.453 592 37 kg and a standard gravity 9.806 65 m/s², all exactly.

use crate::Dimension::{
    self, Acceleration, Angle, Area, Conductivity, Density, Energy, Expansion, Force, HeatCapacity,
    HeatTransfer, Inertia, Length, Mass, Number, Power, Pressure, Speed, Stiffness, Temperature,
    TemperatureDifference, Time, Torque, Velocity, Volume,
};

/// One unit: how it may be written, and how it is brought to SI: `si = (number + shift) · factor`.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// Spellings; the first is the one that Hubwright writes.
    pub names: &'static [&'static str],
    /// What it measures.
    pub dimension: Dimension,
    /// SI units in one of it.
    pub factor: f64,
    /// Added before the factor; only temperatures have one.
    pub shift: f64,
}

impl Unit {
    /// How Hubwright writes it.
    pub fn name(&self) -> &'static str {
        self.names[0]
    }

    /// A number of this unit, in SI.
    pub fn to_si(&self, number: f64) -> f64 {
        (number + self.shift) * self.factor
    }

    /// An SI float as a number of this unit.
    pub fn from_si(&self, si: f64) -> f64 {
        si / self.factor - self.shift
    }

    /// True for the units that a rule marks in eighths and sixteenths.
    pub(crate) fn takes_fractions(&self) -> bool {
        self.dimension == Length && matches!(self.name(), "in" | "ft")
    }
}

const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
const POUND: f64 = 0.453_592_37;
const POUND_FORCE: f64 = POUND * 9.806_65;
const PSI: f64 = POUND_FORCE / (INCH * INCH);
const RPM: f64 = std::f64::consts::TAU / 60.0;
const BTU: f64 = 1_055.055_852_62;
const RANKINE: f64 = 5.0 / 9.0;
/// A Julian year, as astronomers count it: 365.25 days.
const YEAR: f64 = 365.25 * 86_400.0;

const fn unit(names: &'static [&'static str], dimension: Dimension, factor: f64) -> Unit {
    Unit { names, dimension, factor, shift: 0.0 }
}

#[rustfmt::skip]
pub(crate) static UNITS: [Unit; 92] = [
    unit(&[""], Number, 1.0),
    unit(&["%", "percent", "per cent"], Number, 0.01),
    unit(&["mm", "millimetre", "millimeter"], Length, 1e-3),
    unit(&["in", "inch", "inches", "\""], Length, INCH),
    unit(&["µm", "um", "μm", "micron", "microns"], Length, 1e-6),
    unit(&["mil", "mils", "thou"], Length, INCH * 1e-3),
    unit(&["m", "metre", "meter"], Length, 1.0),
    unit(&["cm"], Length, 1e-2),
    unit(&["ft", "foot", "feet"], Length, FOOT),
    unit(&["µin", "uin", "μin", "microinch"], Length, INCH * 1e-6),
    unit(&["mm2", "mm²", "sq mm"], Area, 1e-6),
    unit(&["in2", "in²", "sq in"], Area, INCH * INCH),
    unit(&["L", "l", "litre", "liter"], Volume, 1e-3),
    unit(&["mL", "ml", "cm3", "cm³", "cc"], Volume, 1e-6),
    unit(&["fl oz", "US fl oz"], Volume, 29.573_529_562_5e-6),
    unit(&["in3", "in³", "cu in"], Volume, INCH * INCH * INCH),
    unit(&["m3", "m³"], Volume, 1.0),
    unit(&["US gal"], Volume, 231.0 * INCH * INCH * INCH),
    unit(&["imp gal"], Volume, 4.546_09e-3),
    unit(&["US pt"], Volume, 28.875 * INCH * INCH * INCH),
    unit(&["kg", "kilogram"], Mass, 1.0),
    unit(&["lb", "lbs", "pound", "pounds", "lbm"], Mass, POUND),
    unit(&["g", "gram"], Mass, 1e-3),
    unit(&["oz", "ounce"], Mass, POUND / 16.0),
    unit(&["t", "tonne"], Mass, 1e3),
    unit(&["s", "sec", "second", "seconds"], Time, 1.0),
    unit(&["min", "minute", "minutes"], Time, 60.0),
    unit(&["h", "hr", "hour", "hours"], Time, 3600.0),
    unit(&["d", "day", "days"], Time, 86_400.0),
    unit(&["month", "months"], Time, YEAR / 12.0),
    unit(&["year", "years"], Time, YEAR),
    unit(&["mm/m", "mrad"], Angle, 1e-3),
    unit(&["mil/in", "mils/in", "thou/in"], Angle, 1e-3),
    unit(&["mm/100mm", "mm/100 mm"], Angle, 1e-2),
    unit(&["in/ft"], Angle, 1.0 / 12.0),
    unit(&["µm/m", "um/m", "μm/m"], Angle, 1e-6),
    unit(&["deg", "°", "degree", "degrees"], Angle, std::f64::consts::PI / 180.0),
    unit(&["arcmin", "′"], Angle, std::f64::consts::PI / 10_800.0),
    unit(&["rad"], Angle, 1.0),
    unit(&["rpm", "r/min", "1/min", "rev/min"], Speed, RPM),
    unit(&["Hz", "r/s", "1/s"], Speed, std::f64::consts::TAU),
    unit(&["rad/s"], Speed, 1.0),
    unit(&["mm/s"], Velocity, 1e-3),
    unit(&["in/s", "ips"], Velocity, INCH),
    unit(&["m/s"], Velocity, 1.0),
    unit(&["ft/min", "fpm"], Velocity, FOOT / 60.0),
    unit(&["kN"], Force, 1e3),
    unit(&["lbf"], Force, POUND_FORCE),
    unit(&["N", "newton"], Force, 1.0),
    unit(&["kgf"], Force, 9.806_65),
    unit(&["MN"], Force, 1e6),
    unit(&["N·m", "Nm", "N.m", "N*m", "N m", "N-m", "N·m/rad", "Nm/rad"], Torque, 1.0),
    unit(&["lbf·ft", "lbf-ft", "lbf ft", "ft·lbf", "ft-lbf", "ft lbf", "lb-ft", "lb·ft", "lb ft", "ft-lb", "ft·lb", "ft lb", "ft-lbs", "lbf·ft/rad", "lbf-ft/rad", "ft-lb/rad", "lb-ft/rad"],
        Torque, POUND_FORCE * FOOT),
    unit(&["lbf·in", "lbf-in", "lbf in", "in·lbf", "in-lbf", "in lbf", "lb-in", "lb·in", "lb in", "in-lb", "in·lb", "in lb", "in-lbs", "lbf·in/rad", "lb-in/rad"],
        Torque, POUND_FORCE * INCH),
    unit(&["kN·m", "kNm", "kN.m", "kN*m", "kN m", "kN·m/rad", "kNm/rad"], Torque, 1e3),
    unit(&["MPa", "N/mm2", "N/mm²"], Pressure, 1e6),
    unit(&["psi", "lbf/in2", "lbf/in²"], Pressure, PSI),
    unit(&["ksi"], Pressure, 1e3 * PSI),
    unit(&["GPa", "kN/mm2", "kN/mm²"], Pressure, 1e9),
    unit(&["bar"], Pressure, 1e5),
    unit(&["kPa"], Pressure, 1e3),
    unit(&["Pa"], Pressure, 1.0),
    unit(&["kW"], Power, 1e3),
    unit(&["hp", "HP"], Power, 550.0 * FOOT * POUND_FORCE),
    unit(&["W"], Power, 1.0),
    unit(&["MW"], Power, 1e6),
    unit(&["kJ"], Energy, 1e3),
    unit(&["Btu", "BTU"], Energy, BTU),
    unit(&["J"], Energy, 1.0),
    unit(&["kWh"], Energy, 3.6e6),
    Unit { names: &["°C", "degC", "deg C", "C", "ºC", "celsius"], dimension: Temperature, factor: 1.0, shift: 273.15 },
    Unit { names: &["°F", "degF", "deg F", "F", "ºF", "fahrenheit"], dimension: Temperature, factor: RANKINE, shift: 459.67 },
    unit(&["K", "°C", "degC", "deg C", "C", "ºC", "kelvin"], TemperatureDifference, 1.0),
    unit(&["°F", "degF", "deg F", "F", "ºF"], TemperatureDifference, RANKINE),
    unit(&["µm/m/K", "um/m/K", "µm/(m·K)", "um/(m*K)", "ppm/K", "1e-6/K", "µm/m/degC", "um/m/degC"], Expansion, 1e-6),
    unit(&["µin/in/°F", "µin/in/degF", "uin/in/degF", "ppm/degF", "1e-6/degF"], Expansion, 1e-6 / RANKINE),
    unit(&["kg/m3", "kg/m³"], Density, 1.0),
    unit(&["lb/in3", "lb/in³"], Density, POUND / (INCH * INCH * INCH)),
    unit(&["W/m/K", "W/(m·K)", "W/(m*K)"], Conductivity, 1.0),
    unit(&["Btu/h/ft/°F", "Btu/h/ft/degF"], Conductivity, BTU / (3600.0 * FOOT * RANKINE)),
    unit(&["J/kg/K", "J/(kg·K)", "J/(kg*K)"], HeatCapacity, 1.0),
    unit(&["Btu/lb/°F", "Btu/lb/degF"], HeatCapacity, BTU / (POUND * RANKINE)),
    unit(&["W/m2/K", "W/m²/K", "W/(m²·K)", "W/(m2*K)"], HeatTransfer, 1.0),
    unit(&["Btu/h/ft2/°F", "Btu/h/ft2/degF"], HeatTransfer, BTU / (3600.0 * FOOT * FOOT * RANKINE)),
    unit(&["kg·m2", "kg·m²", "kg m2", "kg*m2"], Inertia, 1.0),
    unit(&["lb·ft2", "lb·ft²", "lb ft2", "lb*ft2"], Inertia, POUND * FOOT * FOOT),
    unit(&["N/mm", "kN/m"], Stiffness, 1e3),
    unit(&["lbf/in", "lb/in"], Stiffness, POUND_FORCE / INCH),
    unit(&["kN/mm", "N/µm", "N/um"], Stiffness, 1e6),
    unit(&["N/m"], Stiffness, 1.0),
    unit(&["m/s2", "m/s²"], Acceleration, 1.0),
    unit(&["ft/s2", "ft/s²"], Acceleration, FOOT),
];

/// Spellings that mean different things to different people, and what to write instead.
pub(crate) const TWO_MEANINGS: [(&str, &str); 4] = [
    ("gal", "US gal or imp gal"),
    ("pt", "US pt or mL"),
    ("ton", "t (1000 kg) or lb"),
    ("PS", "kW or hp"),
];

/// The units of one dimension, the metric one that Hubwright prefers first.
pub fn units_of(dimension: Dimension) -> impl Iterator<Item = &'static Unit> {
    UNITS.iter().filter(move |unit| unit.dimension == dimension)
}

/// The unit of `dimension` that is written `name`.
pub(crate) fn find(dimension: Dimension, name: &str) -> Option<&'static Unit> {
    units_of(dimension).find(|unit| unit.names.contains(&name))
}

/// What else a spelling could be: the dimensions that know it.
pub(crate) fn dimensions_with(name: &str) -> Vec<Dimension> {
    UNITS.iter().filter(|unit| unit.names.contains(&name)).map(|unit| unit.dimension).collect()
}
