//! Our side of the rows about heat: hubs that the finite elements of both sides are given.

use quantities::{Length, Physical, ThermalConductivity, ThermodynamicTemperature, Time};
use serde_json::{Value, json};
use tables::materials::Material;
use thermal::{
    Bounds, Effort, GapAir, HeatTransfer, HotHub, Hub, InHand, Metal, Shaft, Slice, Surfaces,
    ThermalError, Unknowns,
};

/// A hot hub that goes on a shaft, metres and kelvins.
pub struct Hot {
    /// What it is called.
    pub name: &'static str,
    /// Diameter of the bore.
    pub bore: f64,
    /// Lengths and outside diameters from the back face on.
    pub slices: &'static [[f64; 2]],
    /// Interference.
    pub interference: f64,
    /// The hub as it comes home.
    pub hot: f64,
}

const COLD_K: f64 = 293.15;
const AIR_W_MK: f64 = 0.032;
const TOUCHING_W_M2K: f64 = 5_000.0;
const PRESSED_W_M2K: f64 = 20_000.0;
const EMISSIVITY: f64 = 0.3;
const ECCENTRICITY: f64 = 0.7;

/// Two ordinary hubs: a plain one and one with a flange.
pub const ORDINARY: [Hot; 2] = [
    Hot {
        name: "plain hub",
        bore: 0.080,
        slices: &[[0.090, 0.130]],
        interference: 60e-6,
        hot: 453.15,
    },
    Hot {
        name: "flanged hub",
        bore: 0.100,
        slices: &[[0.090, 0.150], [0.030, 0.280]],
        interference: 100e-6,
        hot: 473.15,
    },
];

/// A hub of many steps, whose mesh has more than 20,000 temperatures.
pub const LARGE: Hot = Hot {
    name: "stepped hub",
    bore: 0.100,
    slices: &[
        [0.025, 0.150],
        [0.025, 0.160],
        [0.025, 0.170],
        [0.025, 0.185],
        [0.025, 0.200],
        [0.025, 0.220],
        [0.025, 0.240],
        [0.025, 0.280],
        [0.025, 0.320],
        [0.025, 0.360],
        [0.025, 0.340],
        [0.025, 0.310],
        [0.025, 0.300],
        [0.025, 0.260],
        [0.025, 0.230],
        [0.025, 0.210],
        [0.025, 0.190],
        [0.025, 0.180],
    ],
    interference: 100e-6,
    hot: 473.15,
};

/// Steps of one length in which [`LARGE`] comes to first contact, on both sides.
pub const STRIDES: u32 = 200;

/// The steel of the tables.
///
/// # Panics
/// Never: the tables hold steel.
#[must_use]
pub fn steel() -> &'static Material {
    &tables::materials::all()[0]
}

/// How a hub is asked for: all as entered, nothing unknown.
pub fn asked(hot: &Hot, effort: Effort) -> HotHub {
    let metal = Metal { heating_limit: None, ..Metal::from(steel()) };
    let slice = |&[length, outside]: &[f64; 2]| Slice {
        length: Length::from_si(length),
        outside: Length::from_si(outside),
    };
    let bore = Length::from_si(hot.bore);
    let hub = Hub { bore, slices: hot.slices.iter().map(slice).collect(), metal: metal.clone() };
    let conductance = HeatTransfer::from_si;
    HotHub {
        surfaces: Surfaces {
            touching: conductance(TOUCHING_W_M2K),
            pressed: conductance(PRESSED_W_M2K),
            air: GapAir::Constant(ThermalConductivity::from_si(AIR_W_MK)),
            emissivity: EMISSIVITY,
        },
        unknowns: Unknowns { eccentricity: Bounds::known(ECCENTRICITY), ..Unknowns::none() },
        effort,
        ..HotHub::new(
            hub,
            Shaft::solid(bore, metal),
            Length::from_si(hot.interference),
            ThermodynamicTemperature::from_si(hot.hot),
            ThermodynamicTemperature::from_si(COLD_K),
        )
    }
}

/// From home on the shaft to first contact, all as entered.
///
/// # Errors
/// [`ThermalError`].
pub fn in_hand(hot: &Hot, effort: Effort) -> Result<InHand, ThermalError> {
    asked(hot, effort).in_hand()
}

/// The same in steps of one length, of which about [`STRIDES`] lead to a contact that is expected
/// after so many seconds; and that length (s).
///
/// # Errors
/// [`ThermalError`].
pub fn in_strides(hot: &Hot, expected_s: f64) -> Result<(InHand, f64), ThermalError> {
    // Rounded up to the clock of the kernel, so that both sides take the same.
    let stride_s = (expected_s / f64::from(STRIDES) * 1024.0).ceil() / 1024.0;
    let found = asked(hot, Effort::Fine).in_strides(Time::from_si(stride_s))?;
    Ok((found, stride_s))
}

/// The same with its low and its high end, as the plan asks for it.
///
/// # Errors
/// [`ThermalError`].
pub fn bounded(hot: &Hot, effort: Effort) -> Result<InHand, ThermalError> {
    HotHub { unknowns: Unknowns::default(), ..asked(hot, effort) }.in_hand()
}

/// The same case for a program that shares nothing with ours.
#[must_use]
pub fn told(hot: &Hot) -> Value {
    let steel = steel();
    let metal = json!({
        "conductivity": steel.conductivity.value,
        "heat_capacity": steel.heat_capacity.value,
        "density": steel.density.value,
        "expansion": steel.expansion.value,
        "young": steel.elastic.young.value,
        "poisson": steel.elastic.poisson,
    });
    let film = json!({ "air": COLD_K, "convection": 7.0, "emissivity": 0.6 });
    json!({
        "bore": hot.bore, "slices": hot.slices, "hollow": 0.0,
        "behind": 2.0 * hot.bore, "ahead": 0.0,
        "interference": hot.interference,
        "hub_metal": metal, "shaft_metal": metal, "films": [film, film],
        "air": AIR_W_MK, "touching": TOUCHING_W_M2K, "pressed": PRESSED_W_M2K,
        "joint_emissivity": EMISSIVITY, "eccentricity": ECCENTRICITY,
        "hub_start": hot.hot, "shaft_start": COLD_K,
    })
}
