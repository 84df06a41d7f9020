//! Heat to put a hub on.

use mechanics::heat::ramp::Ramp;
use mechanics::heat::{
    CanBeDone, HubHeat, Opening, heating_energy, sliding_clearance, sliding_clearance_working,
};
use quantities::{
    Basis, Kind, Length, Physical, Source, SpecificHeatCapacity, TemperatureInterval,
    ThermodynamicTemperature,
};
use tables::heating::{self, Bath};

use super::choices::{MATERIAL, expansion, metal, not_held};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const BATHS: [(&str, Bath); 2] = [("oven", Bath::Oven), ("oil", Bath::Oil)];
const BATH_NAMES: &[&str] = &names(&BATHS);

const DIAMETER: Input = Input::quantity("diameter", Kind::Length, "diameter of the joint");
const INTERFERENCE: Input = Input::quantity(
    "interference",
    Kind::Allowance,
    "interference at 20 °C: the upper end of its ±, before flattening",
);
pub(super) const CLEARANCE: Input = Input::quantity(
    "clearance",
    Kind::Allowance,
    "clearance to slide by; a thousandth of the diameter, at least 0.05 mm, when left out",
)
.optional();
const HUB: Input = Input::word("hub", MATERIAL).or("steel");
const SHAFT: Input = Input::word("shaft", MATERIAL).or("steel");
pub(super) const HUB_EXPANSION: Input =
    Input::quantity("hub_expansion", Kind::Expansion, "mean expansion of the hub").optional();
pub(super) const SHAFT_EXPANSION: Input =
    Input::quantity("shaft_expansion", Kind::Expansion, "mean expansion of the shaft").optional();
pub(super) const SHAFT_TEMPERATURE: Input =
    Input::quantity("shaft_temperature", Kind::Temperature, "shaft when the hub goes on")
        .or("20 °C");
pub(super) const LOSS: Input = Input::quantity(
    "loss",
    Kind::TemperatureDifference,
    "what the hub loses between heater and shaft",
)
.or("0 K");

const DIN_7190: Source = Source::new(
    "DIN 7190-1; Bloch, Improving Machinery Reliability, Eq. 3-12",
    "joining temperature",
    Basis::Memory,
);
const VALID: &str = "the hub hot through and through, and evenly; how long it stays open is another matter; hot metal burns";

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "sliding-clearance",
        does: "Clearance to slide a hot hub on by.",
        inputs: &[DIAMETER],
        outputs: &[Output::value("clearance", Kind::Allowance, "on the diameter")],
        valid: "a thousandth of the diameter, at least 0.05 mm, which is a rule of our own",
        source: Source::new("DIN 7190-1", "joining clearance", Basis::Memory),
        answer: clearance,
    },
    Calculation {
        name: "hub-temperature",
        does: "How hot a hub must be to slide on, and what serves when it may not be so hot.",
        inputs: &[
            DIAMETER,
            INTERFERENCE,
            CLEARANCE,
            HUB,
            HUB_EXPANSION,
            SHAFT,
            SHAFT_EXPANSION,
            SHAFT_TEMPERATURE,
            LOSS,
            Input::quantity("limit", Kind::Temperature, "the hub may be no hotter than this")
                .optional(),
        ],
        outputs: &[
            Output::value("at_shaft", Kind::Temperature, "hub at the shaft, at least"),
            Output::value(
                "from_heater",
                Kind::Temperature,
                "hub as it leaves the heater, at least",
            ),
            Output::value("bore_growth", Kind::Allowance, "growth that the bore needs from 20 °C"),
            Output::value("mean_expansion", Kind::Expansion, "mean expansion of the hub over that"),
            Output::word("can_be_done", "yes, or not by heat alone"),
            Output::value(
                "in_hand",
                Kind::TemperatureDifference,
                "limit less the temperature needed",
            ),
            Output::value("chill_shaft_to", Kind::Temperature, "or cool the shaft to this as well"),
            Output::value(
                "interference_at_most",
                Kind::Allowance,
                "or take the interference down to this",
            ),
            Output::value("clearance_left", Kind::Allowance, "or slide with this clearance"),
        ],
        valid: VALID,
        source: DIN_7190,
        answer: hub_temperature,
    },
    Calculation {
        name: "shaft-chill",
        does: "How cold a shaft must be for a hub of a given temperature to slide on.",
        inputs: &[
            DIAMETER,
            INTERFERENCE,
            CLEARANCE,
            HUB,
            HUB_EXPANSION,
            Input::quantity(
                "shaft_expansion",
                Kind::Expansion,
                "mean expansion of the shaft over the chill",
            )
            .or("8.5 µm/m/K"),
            Input::quantity("hub_temperature", Kind::Temperature, "hub when it goes on")
                .or("20 °C"),
        ],
        outputs: &[Output::value("shaft", Kind::Temperature, "shaft, at most")],
        valid: "a mean expansion over the chill; dry ice reaches −78 °C, liquid nitrogen −196 °C; cold metal burns, and the gas drives out the air",
        source: DIN_7190,
        answer: chill,
    },
    Calculation {
        name: "hub-opens",
        does: "The largest interference that a hub of a temperature still slides over.",
        inputs: &[
            DIAMETER,
            CLEARANCE,
            HUB,
            HUB_EXPANSION,
            SHAFT,
            SHAFT_EXPANSION,
            SHAFT_TEMPERATURE,
            Input::quantity("hub_temperature", Kind::Temperature, "hub at the shaft"),
        ],
        outputs: &[Output::value("interference", Kind::Allowance, "at most; − is none at all")],
        valid: VALID,
        source: DIN_7190,
        answer: opens,
    },
    Calculation {
        name: "heating-energy",
        does: "Energy that goes into a hub to heat it.",
        inputs: &[
            Input::quantity("mass", Kind::Mass, "mass of the hub"),
            Input::word("material", MATERIAL).or("steel"),
            Input::quantity(
                "heat_capacity",
                Kind::HeatCapacity,
                "its heat capacity; that of the material when left out",
            )
            .optional(),
            Input::quantity("rise", Kind::TemperatureDifference, "how much warmer it gets"),
        ],
        outputs: &[Output::value("energy", Kind::Energy, "energy")],
        valid: "what the heater loses comes on top",
        source: Source::new("heat is mass times heat capacity times rise", "", Basis::Computed),
        answer: energy,
    },
    Calculation {
        name: "heating-ramp",
        does: "How slowly to heat a hub from one side so that its bore keeps up with its rim.",
        inputs: &[
            Input::quantity("wall", Kind::Length, "thickest wall of the hub"),
            Input::word("material", MATERIAL).or("steel"),
            Input::quantity("rise", Kind::TemperatureDifference, "how much warmer it gets"),
            Input::quantity("apart", Kind::TemperatureDifference, "rim and bore apart, at most")
                .or("50 K"),
            Input::quantity("time", Kind::Minutes, "or a time of heating, for how far apart")
                .optional(),
        ],
        outputs: &[
            Output::value("least_time", Kind::Minutes, "time of heating, at least"),
            Output::value("apart", Kind::TemperatureDifference, "rim ahead of the bore"),
        ],
        valid: "heat evenly all round, once it has settled; a wall that is thin against its diameter",
        source: Source::new(
            "Carslaw and Jaeger, Conduction of Heat in Solids",
            "3.8",
            Basis::Memory,
        ),
        answer: ramp,
    },
    Calculation {
        name: "soak-time",
        does: "How long to soak a hub in an oven or an oil bath.",
        inputs: &[
            Input::choice("bath", BATH_NAMES, "where it is heated"),
            Input::quantity("wall", Kind::Length, "thickest wall of the hub"),
        ],
        outputs: &[Output::value("time", Kind::Time, "time at temperature")],
        valid: "3 min a millimetre in an oven, 6 in oil; an oil bath stays well below its flash point",
        source: heating::INSTRUCTIONS,
        answer: soak,
    },
];

fn clearance(given: &Given) -> Result<Answer, ReckonError> {
    let diameter = given.quantity::<Length>("diameter")?;
    if diameter.value <= 0.0 {
        return Err(ReckonError::not_valid("the diameter is not above zero"));
    }
    let answer = given.answer().with("clearance", sliding_clearance(diameter));
    Ok(answer.shown_by([sliding_clearance_working(diameter)]))
}

fn opening(given: &Given, interference: Length) -> Result<Opening, ReckonError> {
    opening_at(given, given.quantity("diameter")?, interference)
}

/// What is asked of the heat at a joint of that diameter.
pub(super) fn opening_at(
    given: &Given,
    diameter: Length,
    interference: Length,
) -> Result<Opening, ReckonError> {
    let clearance = given.optional("clearance");
    Ok(Opening {
        diameter,
        interference,
        clearance: clearance.unwrap_or_else(|| sliding_clearance(diameter)),
        hub: expansion(given, "hub_expansion", "hub")?,
        shaft: expansion(given, "shaft_expansion", "shaft")?,
        shaft_temperature: given.quantity("shaft_temperature")?,
        loss: TemperatureInterval::default(),
    })
}

fn hub_temperature(given: &Given) -> Result<Answer, ReckonError> {
    let opening = opening(given, given.quantity("interference")?)?;
    let heat = Opening { loss: given.quantity("loss")?, ..opening }.hub_heat()?;
    let answer = given.answer().with("at_shaft", heat.at_shaft);
    let answer = answer.with("from_heater", heat.from_heater);
    let answer = answer.with("bore_growth", heat.bore_growth).with("mean_expansion", heat.mean);
    let answer = limited(answer, &heat, given.optional("limit"))?;
    Ok(answer.shown_by([heat.working()]))
}

fn limited(
    answer: Answer,
    heat: &HubHeat,
    limit: Option<ThermodynamicTemperature>,
) -> Result<Answer, ReckonError> {
    let Some(limit) = limit else { return Ok(answer) };
    Ok(match heat.can_it_be_done(limit)? {
        CanBeDone::Yes { in_hand } => answer.with("can_be_done", "yes").with("in_hand", in_hand),
        CanBeDone::No(other) => {
            let answer = answer.with("can_be_done", "not by heat alone");
            let answer = answer.with("chill_shaft_to", other.shaft_at);
            let answer = answer.with("interference_at_most", other.interference_at_most);
            answer.with("clearance_left", other.clearance_left)
        }
    })
}

fn chill(given: &Given) -> Result<Answer, ReckonError> {
    let diameter = given.quantity("diameter")?;
    let clearance = given.optional("clearance");
    let opening = Opening {
        diameter,
        interference: given.quantity("interference")?,
        clearance: clearance.unwrap_or_else(|| sliding_clearance(diameter)),
        hub: expansion(given, "hub_expansion", "hub")?,
        shaft: mechanics::heat::expansion::Expansion::Constant(given.quantity("shaft_expansion")?),
        shaft_temperature: ThermodynamicTemperature::from_si(293.15),
        loss: TemperatureInterval::default(),
    };
    let hub = given.quantity("hub_temperature")?;
    let answer = given.answer().with("shaft", opening.shaft_chill(hub)?);
    Ok(answer.shown_by([opening.chill_working(hub)?]))
}

fn opens(given: &Given) -> Result<Answer, ReckonError> {
    let opening = opening(given, Length::default())?;
    let hub = given.quantity("hub_temperature")?;
    let answer = given.answer().with("interference", opening.opens(hub)?);
    Ok(answer.shown_by([opening.opens_working(hub)?]))
}

fn energy(given: &Given) -> Result<Answer, ReckonError> {
    let capacity = match given.optional::<SpecificHeatCapacity>("heat_capacity") {
        Some(capacity) => capacity,
        None => metal(given, "material")?.heat_capacity,
    };
    let energy = heating_energy(given.quantity("mass")?, capacity, given.quantity("rise")?)?;
    Ok(given.answer().with("energy", energy.energy).shown_by([energy.working()]))
}

fn soak(given: &Given) -> Result<Answer, ReckonError> {
    let time = heating::soak(given.pick("bath", &BATHS)?, given.quantity("wall")?);
    Ok(given.answer().with("time", time.ok_or_else(|| not_held("such a wall"))?))
}

fn ramp(given: &Given) -> Result<Answer, ReckonError> {
    let metal = metal(given, "material")?;
    let ramp = Ramp {
        wall: given.quantity("wall")?,
        conductivity: metal.conductivity,
        heat_capacity: metal.heat_capacity,
        density: metal.density,
        rise: given.quantity("rise")?,
    };
    let most = given.quantity("apart")?;
    let answer = given.answer().with("least_time", ramp.shortest(most)?);
    let answer = answer.shown_by([ramp.shortest_working(most)?]);
    let Some(time) = given.optional("time") else { return Ok(answer) };
    Ok(answer.with("apart", ramp.apart(time)?).shown_by([ramp.apart_working(time)?]))
}
