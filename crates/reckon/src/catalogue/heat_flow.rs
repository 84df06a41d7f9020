//! The flow of heat: how long a hot hub stays open, and heat that opens one on its shaft.

mod parts;

use quantities::{Basis, Kind, Length, Physical, Power, Ratio, Source, ThermodynamicTemperature};
use thermal::{Advice, Check, Friction, HotHub, Hub, Removal, Search, Zone};

use super::choices::MATERIAL;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};
use parts::{heats, hub, places, shaft, surfaces, surroundings, unknowns, with_places};

const BORE: Input = Input::quantity("bore", Kind::Size, "diameter of the joint");
const OUTSIDE: Input =
    Input::quantity("outside", Kind::Length, "outside of the hub’s body").optional();
const LENGTH: Input = Input::quantity("length", Kind::Length, "length of the hub").optional();
const FLANGE_OUTSIDE: Input = Input::quantity(
    "flange_outside",
    Kind::Length,
    "outside of its flange or gear ring, at the shaft’s end",
)
.optional();
const FLANGE_LENGTH: Input =
    Input::quantity("flange_length", Kind::Length, "length of the flange or gear ring").optional();
const SLICE_LENGTHS: Input = Input::quantities(
    "slice_lengths",
    Kind::Length,
    "or the hub in slices, instead of body and flange: lengths from the machine’s side on",
)
.optional();
const SLICE_OUTSIDES: Input =
    Input::quantities("slice_outsides", Kind::Length, "outside of each slice").optional();
const SHAFT_BORE: Input =
    Input::quantity("shaft_bore", Kind::Length, "bore of a hollow shaft").or("0 mm");
const SHAFT_BEHIND: Input = Input::quantity(
    "shaft_behind",
    Kind::Length,
    "shaft behind the hub that takes heat; two diameters when left out",
)
.optional();
const SHAFT_AHEAD: Input =
    Input::quantity("shaft_ahead", Kind::Length, "shaft beyond the hub at its end").or("0 mm");
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
const EXPANSION_TO: Input = Input::quantities(
    "expansion_to",
    Kind::Temperature,
    "or the mean expansion of both by temperature: from 20 °C to these",
)
.optional();
const EXPANSION_MEANS: Input =
    Input::quantities("expansion_means", Kind::Expansion, "mean expansion to each of them")
        .optional();
const SHAFT_CONDUCTIVITY: Input = Input::quantity(
    "shaft_conductivity",
    Kind::Conductivity,
    "conductivity of the shaft, where it is not the hub’s",
)
.optional();
const SHAFT_HEAT_CAPACITY: Input =
    Input::quantity("shaft_heat_capacity", Kind::HeatCapacity, "the same of its heat capacity")
        .optional();
const SHAFT_DENSITY: Input =
    Input::quantity("shaft_density", Kind::Density, "the same of its density").optional();
const SHAFT_EXPANSION: Input =
    Input::quantity("shaft_expansion", Kind::Expansion, "the same of its mean expansion")
        .optional();
const SHAFT_EXPANSION_TO: Input = Input::quantities(
    "shaft_expansion_to",
    Kind::Temperature,
    "the same by temperature: from 20 °C to these",
)
.optional();
const SHAFT_EXPANSION_MEANS: Input =
    Input::quantities("shaft_expansion_means", Kind::Expansion, "mean expansion to each of them")
        .optional();
const SHAFT_MODULUS: Input =
    Input::quantity("shaft_modulus", Kind::Stress, "the same of its modulus").optional();
const AIR: Input = Input::quantity("air", Kind::Temperature, "air round them").or("20 °C");
const CONVECTION: Input =
    Input::quantity("convection", Kind::HeatTransfer, "from the outside to still air")
        .or("7 W/m2/K");
const EMISSIVITY: Input =
    Input::quantity("emissivity", Kind::Number, "of the outside, 0 to 1").or("0.6");
const SHAFT_AIR: Input = Input::quantity(
    "shaft_air",
    Kind::Temperature,
    "air, ice or wet cloth round the shaft; as round the hub when left out",
)
.optional();
const SHAFT_CONVECTION: Input = Input::quantity(
    "shaft_convection",
    Kind::HeatTransfer,
    "from the shaft to it; as from the hub when left out",
)
.optional();
const SHAFT_EMISSIVITY: Input = Input::quantity(
    "shaft_emissivity",
    Kind::Number,
    "of the shaft, 0 to 1; as the hub’s when left out",
)
.optional();
const TOUCHING: Input =
    Input::quantity("touching", Kind::HeatTransfer, "conductance of the joint just touching")
        .or("3500 W/m2/K");
const PRESSED: Input =
    Input::quantity("pressed", Kind::HeatTransfer, "what 10 MPa of contact pressure adds to it")
        .or("25000 W/m2/K");
const JOINT_EMISSIVITY: Input =
    Input::quantity("joint_emissivity", Kind::Number, "of bore and shaft, 0 to 1").or("0.3");
const BORE_ROUGHNESS: Input = Input::quantity(
    "bore_roughness",
    Kind::Roughness,
    "Ra of the bore; with that of the shaft it outranks touching and pressed",
)
.optional();
const SHAFT_ROUGHNESS: Input =
    Input::quantity("shaft_roughness", Kind::Roughness, "Ra of the shaft").optional();
const HARDNESS: Input = Input::quantity(
    "hardness",
    Kind::Stress,
    "hardness of the softer of both as a pressure, for the roughness",
)
.or("2000 MPa");
const NEAR_BEHIND: Input = Input::quantities(
    "near_behind",
    Kind::Length,
    "seals and bearings on the shaft: how far behind the hub",
)
.optional();
const NEAR_LIMITS: Input =
    Input::quantities("near_limits", Kind::Temperature, "what each of them may have").optional();
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

const NEAR: Output =
    Output::value("near", Kind::Temperature, "hottest at each place near, at the shaft’s surface");
const NEAR_OVER: Output = Output::word("near_over", "whether a place near passes its limit");
const NEAR_AFTER: Output = Output::value("near_after", Kind::Minutes, "and when");

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
            SLICE_LENGTHS,
            SLICE_OUTSIDES,
            SHAFT_BEHIND,
            SHAFT_AHEAD,
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
            EXPANSION_TO,
            EXPANSION_MEANS,
            MODULUS,
            SHAFT_CONDUCTIVITY,
            SHAFT_HEAT_CAPACITY,
            SHAFT_DENSITY,
            SHAFT_EXPANSION,
            SHAFT_EXPANSION_TO,
            SHAFT_EXPANSION_MEANS,
            SHAFT_MODULUS,
            AIR,
            CONVECTION,
            EMISSIVITY,
            SHAFT_AIR,
            SHAFT_CONVECTION,
            SHAFT_EMISSIVITY,
            TOUCHING,
            PRESSED,
            BORE_ROUGHNESS,
            SHAFT_ROUGHNESS,
            HARDNESS,
            JOINT_EMISSIVITY,
            GAP_FILLING,
            NEAR_BEHIND,
            NEAR_LIMITS,
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
            NEAR,
            NEAR_AFTER,
            NEAR_OVER,
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
            SLICE_LENGTHS,
            SLICE_OUTSIDES,
            SHAFT_BEHIND,
            SHAFT_AHEAD,
            HUB,
            SHAFT,
            Input::quantity(
                "interference",
                Kind::Allowance,
                "interference at 20 °C that presses: the upper end, after flattening",
            ),
            Input::quantity("body_power", Kind::HeatFlow, "heat into the body’s metal").or("0 W"),
            Input::quantity("flange_power", Kind::HeatFlow, "heat into the flange’s metal")
                .or("0 W"),
            Input::quantities(
                "slice_powers",
                Kind::HeatFlow,
                "or, for a hub in slices, the heat into each of them",
            )
            .optional(),
            Input::quantity("heated_from", Kind::Minutes, "when heat begins").or("0 min"),
            Input::quantity("heated_for", Kind::Minutes, "how long it goes on").or("5 min"),
            Input::quantity("flange_later", Kind::Time, "the flange’s begins so much later")
                .or("0 s"),
            Input::quantity("limit", Kind::Temperature, "the hub may be no hotter than this")
                .optional(),
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
            EXPANSION_TO,
            EXPANSION_MEANS,
            MODULUS,
            SHAFT_CONDUCTIVITY,
            SHAFT_HEAT_CAPACITY,
            SHAFT_DENSITY,
            SHAFT_EXPANSION,
            SHAFT_EXPANSION_TO,
            SHAFT_EXPANSION_MEANS,
            SHAFT_MODULUS,
            AIR,
            CONVECTION,
            EMISSIVITY,
            SHAFT_AIR,
            SHAFT_CONVECTION,
            SHAFT_EMISSIVITY,
            TOUCHING,
            PRESSED,
            BORE_ROUGHNESS,
            SHAFT_ROUGHNESS,
            HARDNESS,
            JOINT_EMISSIVITY,
            GAP_FILLING,
            NEAR_BEHIND,
            NEAR_LIMITS,
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
            Output::value(
                "least_window",
                Kind::Time,
                "from opening to shutting, heat stopped as it opens: the shortest of the cases",
            ),
            Output::value("hottest", Kind::Temperature, "hottest spot of the hub"),
            Output::value(
                "over_limit_after",
                Kind::Time,
                "when the hub passes its limit, if it does",
            ),
            NEAR,
            NEAR_AFTER,
            NEAR_OVER,
            Output::word("check", "energy balance, and difference from a coarser mesh"),
        ],
        valid: "straight bore, no keyway, no taper, elastic; heat evenly all round; load the puller first; hot metal and flame: the site’s permit comes first",
        source: ELEMENTS,
        answer: off,
    },
    Calculation {
        name: "heat-off-advice",
        does: "A power and a pattern that opens a hub and holds it open, or the word that none does.",
        inputs: &[
            BORE,
            OUTSIDE,
            LENGTH,
            FLANGE_OUTSIDE,
            FLANGE_LENGTH,
            SHAFT_BORE,
            SLICE_LENGTHS,
            SLICE_OUTSIDES,
            SHAFT_BEHIND,
            SHAFT_AHEAD,
            HUB,
            SHAFT,
            Input::quantity(
                "interference",
                Kind::Allowance,
                "interference at 20 °C that presses: the upper end, after flattening",
            ),
            Input::quantity("at_hand", Kind::HeatFlow, "all the heat that can go into the metal")
                .or("20 kW"),
            Input::quantity("window", Kind::Time, "to stay open for, heat kept on").or("30 s"),
            Input::quantity("limit", Kind::Temperature, "the hub may be no hotter than this")
                .optional(),
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
            EXPANSION_TO,
            EXPANSION_MEANS,
            MODULUS,
            SHAFT_CONDUCTIVITY,
            SHAFT_HEAT_CAPACITY,
            SHAFT_DENSITY,
            SHAFT_EXPANSION,
            SHAFT_EXPANSION_TO,
            SHAFT_EXPANSION_MEANS,
            SHAFT_MODULUS,
            AIR,
            CONVECTION,
            EMISSIVITY,
            SHAFT_AIR,
            SHAFT_CONVECTION,
            SHAFT_EMISSIVITY,
            TOUCHING,
            PRESSED,
            BORE_ROUGHNESS,
            SHAFT_ROUGHNESS,
            HARDNESS,
            JOINT_EMISSIVITY,
            GAP_FILLING,
            NEAR_BEHIND,
            NEAR_LIMITS,
            OFF_LEAST,
            OFF_LIKELY,
            OFF_MOST,
            SCATTER,
            CONDUCTS_LESS,
            CONDUCTS_MORE,
        ],
        outputs: &[
            Output::word("works", "heat that works, or none does"),
            Output::value("powers", Kind::HeatFlow, "heat into each: body; flange, or the slices"),
            Output::value("heat_for", Kind::Time, "how long"),
            Output::value("opens_after", Kind::Time, "slowest case"),
            Output::value("opens_likely", Kind::Time, "likely case"),
            Output::value("hottest", Kind::Temperature, "hottest spot of the hub"),
            Output::value(
                "least_pull",
                Kind::Force,
                "least pull of what came nearest, where none does",
            ),
            NEAR,
            NEAR_AFTER,
            NEAR_OVER,
        ],
        valid: "a small search: quarters of five powers and the neighbours of the best, each zone with some; straight bore, no keyway, no taper, elastic; load the puller first; the site’s permit comes first",
        source: ELEMENTS,
        answer: advice,
    },
];

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
        places: places(given)?,
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
    let answer = with_places(answer, &grab.asked.places, &grab.places);
    Ok(answer.with("check", check_of(grab.check)).shown_by([grab.working()]))
}

/// The hub on its shaft, without heat.
fn removal(given: &Given) -> Result<Removal, ReckonError> {
    let hub = hub(given)?;
    let friction =
        Friction { low: given.number("friction_least")?, high: given.number("friction_greatest")? };
    let interference = given.quantity("interference")?;
    let start = given.quantity("start")?;
    Ok(Removal {
        surroundings: surroundings(given)?,
        surfaces: surfaces(given)?,
        unknowns: unknowns(given)?,
        friction,
        clearance: given.quantity("clearance")?,
        limit: given.optional("limit"),
        places: places(given)?,
        until: given.quantity("looked_for")?,
        ..Removal::new(hub, shaft(given)?, interference, start, Vec::new())
    })
}

fn off(given: &Given) -> Result<Answer, ReckonError> {
    let asked = removal(given)?;
    let heats = heats(given, &asked.hub)?;
    let opening = Removal { heats, ..asked }.solve()?;
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
    let least = opening.shortest.and_then(|window| window.lasts());
    let answer = answer.with("least_window", least);
    let answer = answer.with("hottest", opening.hottest.peak.temperature);
    let answer = answer.with("over_limit_after", opening.hottest.peak.over_limit);
    let answer = with_places(answer, &opening.asked.places, &opening.places);
    let answer = answer.with("check", check_of(opening.check));
    Ok(answer.shown_by([opening.working()]))
}

/// Zones that can be heated: one for each slice.
fn zones(hub: &Hub) -> Result<Vec<Zone>, ReckonError> {
    const MOST: usize = 3;
    if hub.slices.len() > MOST {
        return Err(ReckonError::not_valid(
            "more than three slices make too many patterns to try: join those of like outside",
        ));
    }
    let mut from = Length::default();
    let zone = |(at, slice): (usize, &thermal::Slice)| {
        let to = from + slice.length;
        let name = ["body", "flange"].get(at).copied().unwrap_or("slice");
        let zone = Zone::outside(name, from, to);
        from = to;
        zone
    };
    Ok(hub.slices.iter().enumerate().map(zone).collect())
}

fn advice(given: &Given) -> Result<Answer, ReckonError> {
    let asked = removal(given)?;
    let search = Search {
        zones: zones(&asked.hub)?,
        greatest: given.quantity("at_hand")?,
        window: given.quantity("window")?,
    };
    let powers = |power: Power, shares: &[f64]| -> Vec<Power> {
        shares.iter().map(|share| power * *share).collect()
    };
    match asked.advise(&search)? {
        Advice::Heat { trial, opening } => {
            let stop = opening.asked.heats.first().map(|heat| heat.stop);
            let answer = given.answer().with("works", "this heat works");
            let answer = answer.with("powers", powers(trial.power, &trial.shares));
            let answer = answer.with("heat_for", stop).with("opens_after", opening.opens.high);
            let answer = answer.with("opens_likely", opening.opens.likely);
            let answer = answer.with("hottest", opening.hottest.peak.temperature);
            let answer = with_places(answer, &opening.asked.places, &opening.places);
            Ok(answer.shown_by([opening.working()]))
        }
        Advice::Nothing { nearest } => {
            let answer = given.answer().with("works", "none does");
            let answer = answer.with("powers", powers(nearest.power, &nearest.shares));
            let answer = answer.with("hottest", nearest.hottest);
            Ok(answer.with("least_pull", nearest.least_pull.high))
        }
    }
}
