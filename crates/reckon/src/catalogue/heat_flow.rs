//! The flow of heat: how long a hot hub stays open, and heat that opens one on its shaft.

use quantities::{
    Basis, Kind, Length, Physical, Power, Pressure, Ratio, Source, TemperatureCoefficient,
    ThermodynamicTemperature, Time,
};
use thermal::{
    Air, Bounds, Check, Expansion, Friction, GapAir, Heat, HotHub, Hub, Metal, Removal, Shaft,
    Slice, Surfaces, Surroundings, Unknowns, Zone,
};

use super::choices::{MATERIAL, metal, slices};
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const BORE: Input = Input::quantity("bore", Kind::Size, "diameter of the joint");
const OUTSIDE: Input = Input::quantity("outside", Kind::Length, "outside of the hub’s body");
const LENGTH: Input = Input::quantity("length", Kind::Length, "length of the hub");
const FLANGE_OUTSIDE: Input = Input::quantity(
    "flange_outside",
    Kind::Length,
    "outside of its flange or gear ring, at the shaft’s end",
)
.optional();
const FLANGE_LENGTH: Input =
    Input::quantity("flange_length", Kind::Length, "length of the flange or gear ring").optional();
const SHAFT_BORE: Input =
    Input::quantity("shaft_bore", Kind::Length, "bore of a hollow shaft").or("0 mm");
const SHAFT_BEHIND: Input = Input::quantity(
    "shaft_behind",
    Kind::Length,
    "shaft behind the hub that takes heat; two diameters when left out",
)
.optional();
const HUB: Input = Input::word("hub", MATERIAL).or("steel");
const SHAFT: Input = Input::word("shaft", MATERIAL).or("steel");
const CONDUCTIVITY: Input = Input::quantity(
    "conductivity",
    Kind::Conductivity,
    "conductivity of hub and shaft, where it is not their materials’",
)
.optional();
const HEAT_CAPACITY: Input =
    Input::quantity("heat_capacity", Kind::HeatCapacity, "heat capacity of both").optional();
const DENSITY: Input = Input::quantity("density", Kind::Density, "density of both").optional();
const EXPANSION: Input = Input::quantity(
    "expansion",
    Kind::Expansion,
    "mean expansion of both; steel’s rises with temperature when left out",
)
.optional();
const MODULUS: Input =
    Input::quantity("modulus", Kind::Stress, "Young’s modulus of both").optional();
const AIR: Input = Input::quantity("air", Kind::Temperature, "air round them").or("20 °C");
const CONVECTION: Input =
    Input::quantity("convection", Kind::HeatTransfer, "from the outside to still air")
        .or("7 W/m2/K");
const EMISSIVITY: Input =
    Input::quantity("emissivity", Kind::Number, "of the outside, 0 to 1").or("0.6");
const TOUCHING: Input =
    Input::quantity("touching", Kind::HeatTransfer, "conductance of the joint just touching")
        .or("3500 W/m2/K");
const PRESSED: Input =
    Input::quantity("pressed", Kind::HeatTransfer, "what 10 MPa of contact pressure adds to it")
        .or("25000 W/m2/K");
const GAP_FILLING: Input = Input::quantity(
    "gap_filling",
    Kind::Conductivity,
    "what fills the gap conducts; air by its temperature when left out",
)
.optional();
const OFF_LEAST: Input =
    Input::quantity("off_middle_least", Kind::Number, "off the middle of the clearance, at least")
        .or("0");
const OFF_LIKELY: Input =
    Input::quantity("off_middle", Kind::Number, "the same, likely; 1 rests on one side").or("0.7");
const OFF_MOST: Input =
    Input::quantity("off_middle_greatest", Kind::Number, "the same, at most").or("1");
const SCATTER: Input =
    Input::quantity("expansion_scatter", Kind::Number, "share by which each expansion may be off")
        .or("0.03");
const CONDUCTS_LESS: Input =
    Input::quantity("conductance_least", Kind::Number, "joint’s conductance times, at least")
        .or("0.8");
const CONDUCTS_MORE: Input =
    Input::quantity("conductance_greatest", Kind::Number, "joint’s conductance times, at most")
        .or("1.25");

const ELEMENTS: Source = Source::new(
    "Heat conduction, thermoelasticity and contact by finite elements",
    "checked against a program of its own in scikit-fem, Incropera 5.6 and Lamé’s thick ring",
    Basis::Computed,
);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "time-in-hand",
        does: "Seconds that a hot hub stays open on a cold shaft, and what comes after.",
        inputs: &[
            BORE,
            OUTSIDE,
            LENGTH,
            FLANGE_OUTSIDE,
            FLANGE_LENGTH,
            SHAFT_BORE,
            SHAFT_BEHIND,
            HUB,
            SHAFT,
            Input::quantity(
                "interference",
                Kind::Allowance,
                "interference at 20 °C: the upper end of its ±, before flattening",
            ),
            Input::quantity("hub_temperature", Kind::Temperature, "hub as it leaves the heater"),
            Input::quantity("shaft_temperature", Kind::Temperature, "shaft before").or("20 °C"),
            Input::quantity("carried", Kind::Time, "from heater to shaft").or("0 s"),
            CONDUCTIVITY,
            HEAT_CAPACITY,
            DENSITY,
            EXPANSION,
            MODULUS,
            AIR,
            CONVECTION,
            EMISSIVITY,
            TOUCHING,
            PRESSED,
            GAP_FILLING,
            OFF_LEAST,
            OFF_LIKELY,
            OFF_MOST,
            SCATTER,
            CONDUCTS_LESS,
            CONDUCTS_MORE,
            Input::quantity("grip", Kind::Number, "share of its cold grip that holds by itself")
                .or("0.5"),
            Input::quantity("touch", Kind::Temperature, "cool enough to touch").or("50 °C"),
        ],
        outputs: &[
            Output::value("seconds", Kind::Time, "until first touch, to count on"),
            Output::value("likely", Kind::Time, "until first touch, likely"),
            Output::value("at_most", Kind::Time, "until first touch, at most"),
            Output::value("clearance", Kind::Allowance, "as it comes home, least case"),
            Output::value("grips", Kind::Time, "until it holds by itself, likely"),
            Output::value("cool", Kind::Minutes, "until cool enough to touch, likely"),
            Output::value("creep", Kind::Allowance, "it may draw off its shoulder by so much"),
            Output::word("check", "energy balance, and difference from a coarser mesh"),
        ],
        valid: "straight bore, no keyway, no taper, elastic; the hub evenly hot and home at once; hot metal burns",
        source: ELEMENTS,
        answer: in_hand,
    },
    Calculation {
        name: "heat-off",
        does: "Whether heat opens a hub on its shaft, when, and when it shuts again.",
        inputs: &[
            BORE,
            OUTSIDE,
            LENGTH,
            FLANGE_OUTSIDE,
            FLANGE_LENGTH,
            SHAFT_BORE,
            SHAFT_BEHIND,
            HUB,
            SHAFT,
            Input::quantity(
                "interference",
                Kind::Allowance,
                "interference at 20 °C that presses: the upper end, after flattening",
            ),
            Input::quantity("body_power", Kind::Power, "heat into the body’s metal").or("0 W"),
            Input::quantity("flange_power", Kind::Power, "heat into the flange’s metal").or("0 W"),
            Input::quantity("heated_for", Kind::Minutes, "how long").or("5 min"),
            Input::quantity("looked_for", Kind::Minutes, "how long is looked at").or("60 min"),
            Input::quantity("clearance", Kind::Allowance, "open means so much everywhere")
                .or("0.02 mm"),
            Input::quantity("start", Kind::Temperature, "hub and shaft before").or("20 °C"),
            Input::quantity("friction_least", Kind::Number, "friction, low end").or("0.12"),
            Input::quantity("friction_greatest", Kind::Number, "friction, high end").or("0.24"),
            CONDUCTIVITY,
            HEAT_CAPACITY,
            DENSITY,
            EXPANSION,
            MODULUS,
            AIR,
            CONVECTION,
            EMISSIVITY,
            TOUCHING,
            PRESSED,
            GAP_FILLING,
            OFF_LEAST,
            OFF_LIKELY,
            OFF_MOST,
            SCATTER,
            CONDUCTS_LESS,
            CONDUCTS_MORE,
        ],
        outputs: &[
            Output::word("opens", "in every case, likely, or not"),
            Output::value("opens_after", Kind::Time, "slowest case"),
            Output::value("opens_likely", Kind::Time, "likely case"),
            Output::value("shuts", Kind::Time, "heat as entered, likely case"),
            Output::value("shuts_if_stopped", Kind::Time, "heat stopped as it opens, likely case"),
            Output::value("cold_pull", Kind::Force, "pull before heat, friction at its high end"),
            Output::value("least_pull", Kind::Force, "least pull, friction at its high end"),
            Output::value("hottest", Kind::Temperature, "hottest spot of the hub"),
            Output::word("check", "energy balance, and difference from a coarser mesh"),
        ],
        valid: "straight bore, no keyway, no taper, elastic; heat evenly all round; load the puller first; hot metal and flame: the site’s permit comes first",
        source: ELEMENTS,
        answer: off,
    },
];

/// The metal that an input names, with the figures that were given.
fn metal_of(given: &Given, input: &'static str) -> Result<Metal, ReckonError> {
    let material = metal(given, input)?;
    let usual = Metal::from(material);
    let expansion = match given.optional::<TemperatureCoefficient>("expansion") {
        Some(mean) => Expansion::Constant(mean),
        None if material.name == "steel" => Expansion::Steel,
        None => usual.expansion,
    };
    let mut elastic = usual.elastic;
    elastic.young = given.optional::<Pressure>("modulus").unwrap_or(elastic.young);
    Ok(Metal {
        conductivity: given.optional("conductivity").unwrap_or(usual.conductivity),
        heat_capacity: given.optional("heat_capacity").unwrap_or(usual.heat_capacity),
        density: given.optional("density").unwrap_or(usual.density),
        expansion,
        elastic,
        heating_limit: None,
        ..usual
    })
}

fn hub(given: &Given) -> Result<Hub, ReckonError> {
    let slice = |slice: mechanics::Slice| Slice { length: slice.length, outside: slice.outside };
    Ok(Hub {
        bore: given.quantity("bore")?,
        slices: slices(given)?.into_iter().map(slice).collect(),
        metal: metal_of(given, "hub")?,
    })
}

fn shaft(given: &Given) -> Result<Shaft, ReckonError> {
    let bore = given.quantity::<Length>("bore")?;
    Ok(Shaft {
        hollow: given.quantity("shaft_bore")?,
        behind: given.optional("shaft_behind").unwrap_or(2.0 * bore),
        ahead: Length::default(),
        metal: metal_of(given, "shaft")?,
    })
}

fn surroundings(given: &Given) -> Result<Surroundings, ReckonError> {
    let air = Air {
        temperature: given.quantity("air")?,
        convection: given.quantity("convection")?,
        emissivity: given.number("emissivity")?,
    };
    Ok(Surroundings { hub: air, shaft: air })
}

fn surfaces(given: &Given) -> Result<Surfaces, ReckonError> {
    let usual = Surfaces::default();
    Ok(Surfaces {
        touching: given.quantity("touching")?,
        pressed: given.quantity("pressed")?,
        air: given.optional("gap_filling").map_or(usual.air, GapAir::Constant),
        ..usual
    })
}

fn unknowns(given: &Given) -> Result<Unknowns, ReckonError> {
    Ok(Unknowns {
        eccentricity: Bounds {
            low: given.number("off_middle_least")?,
            likely: given.number("off_middle")?,
            high: given.number("off_middle_greatest")?,
        },
        conductance: Bounds {
            low: given.number("conductance_least")?,
            likely: 1.0,
            high: given.number("conductance_greatest")?,
        },
        expansion: given.number("expansion_scatter")?,
    })
}

/// Both are noise of the last digits, and so words rather than numbers to compare.
fn check_of(check: Check) -> String {
    let percent = |share: Ratio| 100.0 * share.si();
    let coarser = percent(check.coarser.unwrap_or_default());
    format!(
        "heat adds up to {:.4} %; a coarser mesh differs by {coarser:.1} %",
        percent(check.energy)
    )
}

fn in_hand(given: &Given) -> Result<Answer, ReckonError> {
    let shaft_temperature: ThermodynamicTemperature = given.quantity("shaft_temperature")?;
    let asked = HotHub {
        carried: given.quantity("carried")?,
        surroundings: surroundings(given)?,
        surfaces: surfaces(given)?,
        unknowns: unknowns(given)?,
        grip: given.number("grip")?,
        touch: given.quantity("touch")?,
        ..HotHub::new(
            hub(given)?,
            shaft(given)?,
            given.quantity("interference")?,
            given.quantity("hub_temperature")?,
            shaft_temperature,
        )
    };
    let grab = asked.solve()?;
    let answer =
        given.answer().with("seconds", grab.contact.low).with("likely", grab.contact.likely);
    let answer = answer.with("at_most", grab.contact.high).with("clearance", grab.clearance);
    let answer = answer.with("grips", grab.after.grips).with("cool", grab.after.cool);
    let answer = answer.with("creep", grab.after.creep);
    Ok(answer.with("check", check_of(grab.check)).shown_by([grab.working()]))
}

/// Heat on body and flange, where there is any.
fn heats(given: &Given, hub: &Hub) -> Result<Vec<Heat>, ReckonError> {
    let stop: Time = given.quantity("heated_for")?;
    let (mut heats, mut from) = (Vec::new(), Length::default());
    for (slice, name) in hub.slices.iter().zip(["body", "flange"]) {
        let to = from + slice.length;
        let power: Power =
            given.quantity(if name == "body" { "body_power" } else { "flange_power" })?;
        if power.si() > 0.0 {
            heats.push(Heat::until(Zone::outside(name, from, to), power, stop));
        }
        from = to;
    }
    if heats.is_empty() {
        return Err(ReckonError::not_valid(
            "no heat: body_power or flange_power must be above zero",
        ));
    }
    Ok(heats)
}

fn off(given: &Given) -> Result<Answer, ReckonError> {
    let hub = hub(given)?;
    let heats = heats(given, &hub)?;
    let friction =
        Friction { low: given.number("friction_least")?, high: given.number("friction_greatest")? };
    let opening = Removal {
        surroundings: surroundings(given)?,
        surfaces: surfaces(given)?,
        unknowns: unknowns(given)?,
        friction,
        clearance: given.quantity("clearance")?,
        until: given.quantity("looked_for")?,
        ..Removal::new(
            hub,
            shaft(given)?,
            given.quantity("interference")?,
            given.quantity("start")?,
            heats,
        )
    }
    .solve()?;
    let opens = match (opening.opens.high, opening.opens.likely) {
        (Some(_), _) => "in every case",
        (None, Some(_)) => "likely",
        (None, None) => "not",
    };
    let answer = given.answer().with("opens", opens).with("opens_after", opening.opens.high);
    let answer = answer.with("opens_likely", opening.opens.likely);
    let answer = answer.with("shuts", opening.window.and_then(|window| window.shuts));
    let stopped = opening.if_stopped.and_then(|window| window.shuts);
    let answer = answer.with("shuts_if_stopped", stopped);
    let answer = answer.with("cold_pull", opening.cold_pull.high);
    let answer = answer.with("least_pull", opening.least_pull.1.high);
    let answer = answer.with("hottest", opening.hottest.peak.temperature);
    let answer = answer.with("check", check_of(opening.check));
    Ok(answer.shown_by([opening.working()]))
}
