//! How a quantity is shown: its unit and its decimals, in metric and in inch.

use std::sync::LazyLock;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::{Dimension, Unit, unit};

/// The units that a person works in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum System {
    /// Millimetres, newton-metres, degrees Celsius.
    #[default]
    Metric,
    /// Inches and mils, pound-feet, degrees Fahrenheit.
    Inch,
}

/// How a quantity of a dimension is used, and so how it is shown: a bore to the micrometre, a
/// hub's length to a tenth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the names say it")]
pub enum Kind {
    Number,
    Percent,
    Count,
    /// A bore or a shaft: mm to 0.001, in to 0.0001.
    Size,
    /// An interference, a clearance, a taper: mm to 0.001, mil to 0.1.
    Allowance,
    /// A dial reading, an offset, a shim: mm to 0.01, mil to 0.1.
    Offset,
    /// A gap that feelers take: mm to 0.01, in to 0.001.
    Gap,
    /// Any other length: mm to 0.1, in to 0.01.
    Length,
    /// Surface roughness.
    Roughness,
    Area,
    Volume,
    Mass,
    Time,
    /// A time in service: days.
    Days,
    /// A time that nobody counts in seconds: minutes.
    Minutes,
    /// A slope of one shaft line against another: mm/m, mil/in.
    Slope,
    Degrees,
    Speed,
    Velocity,
    Force,
    Torque,
    Stress,
    Pressure,
    Power,
    /// Heat that flows: kW in both systems, as heaters and burners are rated.
    HeatFlow,
    Energy,
    Temperature,
    TemperatureDifference,
    Expansion,
    Density,
    Conductivity,
    HeatCapacity,
    HeatTransfer,
    Inertia,
    /// Force for a length: of a coupling along its axis.
    Stiffness,
    Acceleration,
}

/// Unit and decimals of one kind in one system; decimals `None` means three significant digits.
type Face = (&'static str, Option<usize>);

/// The units of each kind, looked up once: a plan shows thousands of values.
static UNITS_OF: LazyLock<[[&'static Unit; 2]; Kind::ALL.len()]> = LazyLock::new(|| {
    let named = |kind: Kind, name| unit::find(kind.dimension(), name).unwrap_or(&unit::UNITS[0]);
    Kind::ALL.map(|kind| kind.faces().map(|(name, _)| named(kind, name)))
});

impl Kind {
    /// Every kind, in the order of the list.
    const ALL: [Self; 36] = [
        Self::Number,
        Self::Percent,
        Self::Count,
        Self::Size,
        Self::Allowance,
        Self::Offset,
        Self::Gap,
        Self::Length,
        Self::Roughness,
        Self::Area,
        Self::Volume,
        Self::Mass,
        Self::Time,
        Self::Days,
        Self::Minutes,
        Self::Slope,
        Self::Degrees,
        Self::Speed,
        Self::Velocity,
        Self::Force,
        Self::Torque,
        Self::Stress,
        Self::Pressure,
        Self::Power,
        Self::HeatFlow,
        Self::Energy,
        Self::Temperature,
        Self::TemperatureDifference,
        Self::Expansion,
        Self::Density,
        Self::Conductivity,
        Self::HeatCapacity,
        Self::HeatTransfer,
        Self::Inertia,
        Self::Stiffness,
        Self::Acceleration,
    ];

    /// Two ways to write it, one metric and one inch, of the size that it usually has.
    ///
    /// # Example
    /// ```
    /// use quantities::Kind;
    /// assert_eq!(Kind::Offset.examples(), ["0.25 mm", "10 mil"]);
    /// assert_eq!(Kind::Torque.examples(), Kind::Torque.dimension().examples());
    /// ```
    pub fn examples(self) -> [&'static str; 2] {
        match self {
            Self::Number => ["1.75", "1.75"],
            Self::Percent => ["85 %", "0.85"],
            Self::Count => ["8", "8"],
            Self::Allowance => ["0.06 mm", "2.4 mil"],
            Self::Offset => ["0.25 mm", "10 mil"],
            Self::Gap => ["3.2 mm", "1/8 in"],
            Self::Length => ["120 mm", "4 3/4 in"],
            Self::Roughness => ["1.6 µm", "63 µin"],
            Self::Days => ["90 d", "90 d"],
            Self::Degrees => ["0.25 deg", "0.25 deg"],
            _ => self.dimension().examples(),
        }
    }

    /// Its dimension.
    pub fn dimension(self) -> Dimension {
        match self {
            Self::Number | Self::Percent | Self::Count => Dimension::Number,
            Self::Size
            | Self::Allowance
            | Self::Offset
            | Self::Gap
            | Self::Length
            | Self::Roughness => Dimension::Length,
            Self::Area => Dimension::Area,
            Self::Volume => Dimension::Volume,
            Self::Mass => Dimension::Mass,
            Self::Time | Self::Days | Self::Minutes => Dimension::Time,
            Self::Slope | Self::Degrees => Dimension::Angle,
            Self::Speed => Dimension::Speed,
            Self::Velocity => Dimension::Velocity,
            Self::Force => Dimension::Force,
            Self::Torque => Dimension::Torque,
            Self::Stress | Self::Pressure => Dimension::Pressure,
            Self::Power | Self::HeatFlow => Dimension::Power,
            Self::Energy => Dimension::Energy,
            Self::Temperature => Dimension::Temperature,
            Self::TemperatureDifference => Dimension::TemperatureDifference,
            Self::Expansion => Dimension::Expansion,
            Self::Density => Dimension::Density,
            Self::Conductivity => Dimension::Conductivity,
            Self::HeatCapacity => Dimension::HeatCapacity,
            Self::HeatTransfer => Dimension::HeatTransfer,
            Self::Inertia => Dimension::Inertia,
            Self::Stiffness => Dimension::Stiffness,
            Self::Acceleration => Dimension::Acceleration,
        }
    }

    fn faces(self) -> [Face; 2] {
        match self {
            Self::Number => [("", None); 2],
            Self::Percent => [("%", Some(0)); 2],
            Self::Count => [("", Some(0)); 2],
            Self::Size => [("mm", Some(3)), ("in", Some(4))],
            Self::Allowance => [("mm", Some(3)), ("mil", Some(1))],
            Self::Offset => [("mm", Some(2)), ("mil", Some(1))],
            Self::Gap => [("mm", Some(2)), ("in", Some(3))],
            Self::Length => [("mm", Some(1)), ("in", Some(2))],
            Self::Roughness => [("µm", Some(1)), ("µin", Some(0))],
            Self::Area => [("mm2", None), ("in2", None)],
            Self::Volume => [("L", None), ("fl oz", None)],
            Self::Mass => [("kg", None), ("lb", None)],
            Self::Time => [("s", Some(0)); 2],
            Self::Days => [("d", Some(0)); 2],
            Self::Minutes => [("min", Some(0)); 2],
            Self::Slope => [("mm/m", Some(2)), ("mil/in", Some(2))],
            Self::Degrees => [("deg", Some(2)); 2],
            Self::Speed => [("rpm", Some(0)); 2],
            Self::Velocity => [("mm/s", None), ("in/s", None)],
            Self::Force => [("kN", None), ("lbf", None)],
            Self::Torque => [("N·m", None), ("lbf·ft", None)],
            Self::Stress => [("MPa", None), ("psi", None)],
            Self::Pressure => [("bar", None), ("psi", None)],
            Self::Power => [("kW", None), ("hp", None)],
            Self::HeatFlow => [("kW", None); 2],
            Self::Energy => [("kJ", None), ("Btu", None)],
            Self::Temperature => [("°C", Some(0)), ("°F", Some(0))],
            Self::TemperatureDifference => [("K", Some(0)), ("°F", Some(0))],
            Self::Expansion => [("µm/m/K", None), ("µin/in/°F", None)],
            Self::Density => [("kg/m3", None), ("lb/in3", None)],
            Self::Conductivity => [("W/m/K", None), ("Btu/h/ft/°F", None)],
            Self::HeatCapacity => [("J/kg/K", None), ("Btu/lb/°F", None)],
            Self::HeatTransfer => [("W/m2/K", None), ("Btu/h/ft2/°F", None)],
            Self::Inertia => [("kg·m2", None), ("lb·ft2", None)],
            Self::Stiffness => [("N/mm", None), ("lbf/in", None)],
            Self::Acceleration => [("m/s2", None), ("ft/s2", None)],
        }
    }

    fn face(self, system: System) -> Face {
        self.faces()[usize::from(system == System::Inch)]
    }

    /// The unit that this kind is shown in.
    pub fn unit(self, system: System) -> &'static Unit {
        UNITS_OF[self as usize][usize::from(system == System::Inch)]
    }

    /// Decimals that such a number is shown with.
    pub fn decimals(self, system: System, number: f64) -> usize {
        let (_, fixed) = self.face(system);
        fixed.unwrap_or_else(|| three_digits(number))
    }
}

/// Decimals that leave three significant digits; none for a number of three digits or more.
fn three_digits(number: f64) -> usize {
    if number == 0.0 || !number.is_finite() {
        return 0;
    }
    let magnitude = number.abs().log10().floor();
    (0_u8..9).find(|&decimals| f64::from(decimals) >= 2.0 - magnitude).map_or(9, usize::from)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A face whose unit were misspelt would fall back to no unit at all.
    #[test]
    fn every_kind_has_its_unit_in_both_systems() {
        for (place, kind) in Kind::ALL.into_iter().enumerate() {
            assert_eq!(kind as usize, place, "{kind:?} is out of its order");
            for system in [System::Metric, System::Inch] {
                let unit = kind.unit(system);
                assert_eq!(unit.dimension, kind.dimension(), "{kind:?}");
                assert_eq!(unit.name(), kind.face(system).0, "{kind:?}");
            }
        }
    }
}
