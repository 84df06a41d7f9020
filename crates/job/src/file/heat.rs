//! How the hubs are made hot.

use quantities::{
    HeatTransfer, Length, MassDensity, Power, Pressure, Ratio, SpecificHeatCapacity,
    TemperatureCoefficient, TemperatureInterval, ThermalConductivity, ThermodynamicTemperature,
    Time,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Named, Text, is_default};

/// Heating the hubs.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Heat {
    /// "oven", "induction", "oil bath" or "torch".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub method: String,
    /// Clearance wanted while the hub slides; otherwise by size, and said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clearance: Text<Length>,
    /// What the hub loses on the way from heater to shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loss: Text<TemperatureInterval>,
    /// Time on the way from heater to shaft, from which the loss is reckoned where none is written.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub carried: Text<Time>,
    /// The site's own limit on the hub's temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Text<ThermodynamicTemperature>,
    /// Temperature of the shaft, where it is cooled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_temperature: Text<ThermodynamicTemperature>,
    /// Seals that stay in the hub or touch it: "nitrile", "fluoroelastomer", …
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub seals_left: Vec<String>,
    /// What the hub is heated to, where it is more than it needs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heated_to: Text<ThermodynamicTemperature>,
    /// Time that getting the hub home takes, and so the time in hand that is wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub time_wanted: Text<Time>,
    /// Power of the heater that goes into the hub.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub power: Text<Power>,
    /// What the seconds in hand, and heat to get a hub off, assume; a blank takes the usual figure.
    #[serde(skip_serializing_if = "is_default")]
    pub assume: Assume,
}

/// What the flow of heat assumes, both for putting on and for taking off.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Assume {
    /// The hubs' metal.
    #[serde(skip_serializing_if = "is_default")]
    pub hub: Figures,
    /// The shafts' metal.
    #[serde(skip_serializing_if = "is_default")]
    pub shaft: Figures,
    /// From a surface to the air: 7 W/m²/K in still air.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub convection: Text<HeatTransfer>,
    /// Emissivity of the outside, 0 to 1: 0.6 for lightly oxidised steel.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub emissivity: Text<Ratio>,
    /// From the shaft to the air: as from the hub. Ice or wet cloth round it is a strong film.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_convection: Text<HeatTransfer>,
    /// Emissivity of the shaft, 0 to 1: as the hub's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_emissivity: Text<Ratio>,
    /// Temperature of the air, ice or cloth round the shaft: that of the place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_air: Text<ThermodynamicTemperature>,
    /// True where the roughness of bore and shaft gives what the joint conducts, instead of the
    /// usual figures for Ra 1.6 µm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub by_roughness: Option<bool>,
    /// Hardness of the softer of bore and shaft, as a pressure, where roughness counts: 2000 MPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hardness: Text<Pressure>,
    /// Conductance of bore and shaft that just touch: by their roughness where that counts, else 3500 W/m²/K.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub touching: Text<HeatTransfer>,
    /// What a contact pressure of 10 MPa adds to it: by their roughness where that counts, else 25 000 W/m²/K.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pressed: Text<HeatTransfer>,
    /// Emissivity of bore and shaft, 0 to 1: 0.3.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_emissivity: Text<Ratio>,
    /// Conductivity of what fills the gap; air by its temperature otherwise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap_filling: Text<ThermalConductivity>,
    /// How far off the middle the hub hangs in its clearance, at least: 0, in the middle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub off_middle_least: Text<Ratio>,
    /// The same, likely: 0.7.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub off_middle: Text<Ratio>,
    /// The same, at most: 1, resting on one side all along.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub off_middle_greatest: Text<Ratio>,
    /// What the joint's conductance may be multiplied by, at least: 0.8.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub conductance_least: Text<Ratio>,
    /// The same, at most: 1.25.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub conductance_greatest: Text<Ratio>,
    /// How far each metal's expansion may be off: 0.03 of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expansion_scatter: Text<Ratio>,
    /// Shaft behind the hub that takes heat: two diameters.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_behind: Text<Length>,
    /// Shaft beyond the hub at its end: none, flush.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_ahead: Text<Length>,
    /// Share of its cold grip with which a hub holds by itself: 0.5.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grip: Text<Ratio>,
    /// Cool enough for a hand and for grease: 50 °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub touch: Text<ThermodynamicTemperature>,
    /// Over the temperature of the place, and cool enough to line up: 10 K.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line_up_within: Text<TemperatureInterval>,
}

/// Figures of a metal, where they are known better than by its name.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Figures {
    /// Thermal conductivity.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub conductivity: Text<ThermalConductivity>,
    /// Heat capacity.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heat_capacity: Text<SpecificHeatCapacity>,
    /// Density.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub density: Text<MassDensity>,
    /// Mean expansion; steel’s rises with temperature otherwise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expansion: Text<TemperatureCoefficient>,
    /// Mean expansion from 20 °C to temperatures, a row under each name: "1", "2", … They outrank
    /// the one figure; straight lines between them, nothing beyond the last.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub expansions: Named<ExpansionTo>,
    /// Young’s modulus.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub modulus: Text<Pressure>,
}

/// One row of an expansion by temperature.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ExpansionTo {
    /// From 20 °C to this temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperature: Text<ThermodynamicTemperature>,
    /// Mean expansion over that.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mean: Text<TemperatureCoefficient>,
}
