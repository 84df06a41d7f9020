//! Metals and seals: figures, growth with temperature, mass; and bodies that cool, for checking.

use mechanics::heat::cylinder;
use mechanics::heat::lumped::{Body, BoreSurface, Substance, lumped_cooling};
use mechanics::mass::hub_mass;
use quantities::{Basis, HeatTransfer, Kind, Length, MassDensity, Physical, Source};
use tables::{din_7190, seals};

use super::choices::{MATERIAL, expansion, metal, slices};
use super::press::{FLANGE_LENGTH, FLANGE_OUTSIDE, LENGTH, OUTSIDE, SLICE_LENGTHS, SLICE_OUTSIDES};
use super::shown;
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError, error};

const SURFACES: [(&str, BoreSurface); 2] =
    [("bare", BoreSurface::Bare), ("covered", BoreSurface::Covered)];
const SURFACE_NAMES: &[&str] = &names(&SURFACES);

const EXPANSION: Input = Input::quantity(
    "expansion",
    Kind::Expansion,
    "mean expansion from 20 °C; that of the material when left out",
)
.optional();
const INCROPERA: &str = "Incropera et al., Fundamentals of Heat and Mass Transfer";

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "material",
        does: "What is held of a material of hubs and shafts.",
        inputs: &[Input::word("material", MATERIAL)],
        outputs: &[
            Output::value("young", Kind::Stress, "Young’s modulus"),
            Output::value("poisson", Kind::Number, "Poisson’s ratio"),
            Output::value("yield", Kind::Stress, "least yield strength to be expected"),
            Output::value("expansion", Kind::Expansion, "mean expansion near room temperature"),
            Output::value("density", Kind::Density, "density"),
            Output::value("conductivity", Kind::Conductivity, "thermal conductivity"),
            Output::value("heat_capacity", Kind::HeatCapacity, "specific heat capacity"),
            Output::value("heat_to", Kind::Temperature, "a hub of it may be heated to"),
            Output::value("joining_heated", Kind::Expansion, "expansion for joining by heat"),
            Output::value("joining_chilled", Kind::Expansion, "expansion for joining by cold"),
            Output::word("sources", "elastic and thermal figures; yield; heating; joining"),
        ],
        valid: "a class of metal, not this heat of it; a certificate or the maker’s sheet outranks it",
        source: Source::common_practice("as the answer says"),
        answer: material,
    },
    Calculation {
        name: "seal-limit",
        does: "The temperature that a seal stands.",
        inputs: &[Input::word("seal", "a seal material, such as nitrile or fluoroelastomer")],
        outputs: &[
            Output::value("long", Kind::Temperature, "for long"),
            Output::value("short", Kind::Temperature, "for a short time, where one is held"),
            Output::word("source", "where the figures come from"),
        ],
        valid: "the compound’s own sheet outranks it; a hub is heated far beyond what most seals bear",
        source: Source::common_practice("seal trade guides"),
        answer: seal,
    },
    Calculation {
        name: "growth",
        does: "How much a diameter grows from 20 °C to a temperature.",
        inputs: &[
            Input::quantity("diameter", Kind::Length, "diameter at 20 °C"),
            Input::quantity("temperature", Kind::Temperature, "temperature"),
            Input::word("material", MATERIAL).or("steel"),
            EXPANSION,
        ],
        outputs: &[
            Output::value("growth", Kind::Allowance, "growth; − is shrinkage"),
            Output::value("mean_expansion", Kind::Expansion, "mean expansion from 20 °C"),
        ],
        valid: "steel −50 to 537 °C",
        source: tables::materials::STEEL_EXPANSION,
        answer: growth,
    },
    Calculation {
        name: "growth-temperature",
        does: "The temperature at which a diameter has grown so much from 20 °C.",
        inputs: &[
            Input::quantity("diameter", Kind::Length, "diameter at 20 °C"),
            Input::quantity("growth", Kind::Allowance, "growth; − for shrinkage"),
            Input::word("material", MATERIAL).or("steel"),
            EXPANSION,
        ],
        outputs: &[
            Output::value("temperature", Kind::Temperature, "temperature"),
            Output::value("mean_expansion", Kind::Expansion, "mean expansion from 20 °C"),
        ],
        valid: "steel −50 to 537 °C",
        source: tables::materials::STEEL_EXPANSION,
        answer: reaches,
    },
    Calculation {
        name: "hub-mass",
        does: "Mass of a hub of a body and a flange.",
        inputs: &[
            Input::quantity("bore", Kind::Length, "bore; 0 when it is solid").or("0 mm"),
            OUTSIDE,
            LENGTH,
            FLANGE_OUTSIDE,
            FLANGE_LENGTH,
            SLICE_LENGTHS,
            SLICE_OUTSIDES,
            Input::word("material", MATERIAL).or("steel"),
            Input::quantity(
                "density",
                Kind::Density,
                "its density; that of the material when left out",
            )
            .optional(),
        ],
        outputs: &[
            Output::value("mass", Kind::Mass, "mass"),
            Output::value("volume", Kind::Volume, "volume of metal"),
        ],
        valid: "rings; holes, keyways and teeth not taken out",
        source: Source::new("geometry", "", Basis::Computed),
        answer: mass,
    },
    Calculation {
        name: "lump-cooling",
        does: "Time for a lump, as warm inside as outside, to go from one temperature to another.",
        inputs: &[
            Input::quantity("outside", Kind::Length, "outside diameter"),
            Input::quantity("bore", Kind::Length, "bore of a ring; a ball when left out")
                .optional(),
            Input::quantity("length", Kind::Length, "length of a ring").optional(),
            Input::choice("bore_surface", SURFACE_NAMES, "whether the bore gives off heat")
                .or("bare"),
            Input::quantity("density", Kind::Density, "density"),
            Input::quantity("heat_capacity", Kind::HeatCapacity, "specific heat capacity"),
            Input::quantity("conductivity", Kind::Conductivity, "thermal conductivity"),
            Input::quantity("film", Kind::HeatTransfer, "heat transfer coefficient of its surface"),
            Input::quantity("from", Kind::Temperature, "temperature at first"),
            Input::quantity("to", Kind::Temperature, "temperature at last"),
            Input::quantity("surroundings", Kind::Temperature, "temperature around it"),
        ],
        outputs: &[
            Output::value("time", Kind::Time, "time"),
            Output::value("time_constant", Kind::Time, "time constant"),
            Output::value("biot", Kind::Number, "Biot number on volume over surface"),
            Output::value("mass", Kind::Mass, "mass"),
            Output::value(
                "whole_heat",
                Kind::Energy,
                "heat given off until it is as its surroundings",
            ),
        ],
        valid: "Biot number below 0.1; a hub on a cold shaft is no such body",
        source: Source::new(INCROPERA, "the lumped capacitance method", Basis::Memory),
        answer: lump,
    },
    Calculation {
        name: "cylinder-cooling",
        does: "A long solid cylinder whose surroundings change at once: what is left of the difference.",
        inputs: &[
            Input::quantity(
                "biot",
                Kind::Number,
                "Biot number, film times radius over conductivity",
            ),
            Input::quantity(
                "fourier",
                Kind::Number,
                "Fourier number, diffusivity times time over radius squared",
            ),
            Input::quantity("radius", Kind::Number, "radius over the outer radius, 0 to 1").or("0"),
            Input::quantity("terms", Kind::Count, "terms of the series").or("40"),
        ],
        outputs: &[
            Output::value("left", Kind::Number, "part of the first difference that is left"),
            Output::value("heat_gone", Kind::Number, "part of the heat that has gone"),
            Output::value("first_root", Kind::Number, "first root, radians"),
            Output::value("first_coefficient", Kind::Number, "first coefficient"),
        ],
        valid: "one term for Fourier above 0.2, forty down to 0.01; at most 200 terms",
        source: Source::new(INCROPERA, "radial systems with convection", Basis::Memory),
        answer: series,
    },
];

fn material(given: &Given) -> Result<Answer, ReckonError> {
    let metal = metal(given, "material")?;
    let joining = din_7190::joining_of(metal.name);
    let mut sources = vec![metal.source, metal.yield_source, metal.heating_source];
    sources.extend(joining.map(|_| din_7190::SOURCE));
    let answer = given.answer().with("young", metal.elastic.young);
    let answer = answer.with("poisson", metal.elastic.poisson).with("yield", metal.yield_strength);
    let answer = answer.with("expansion", metal.expansion).with("density", metal.density);
    let answer = answer.with("conductivity", metal.conductivity);
    let answer = answer.with("heat_capacity", metal.heat_capacity);
    let answer = answer.with("heat_to", metal.heating_limit);
    let answer = answer.with("joining_heated", joining.map(|joining| joining.heating));
    let answer = answer.with("joining_chilled", joining.map(|joining| joining.chilling));
    Ok(answer.with("sources", sources.iter().map(ToString::to_string).collect::<Vec<String>>()))
}

fn seal(given: &Given) -> Result<Answer, ReckonError> {
    let name = given.word("seal");
    let seal = seals::seal(name).ok_or_else(|| {
        let known: Vec<&str> = seals::all().iter().map(|seal| seal.name).collect();
        let nearest = error::nearest(name, known.iter().copied());
        let meant = error::did_you_mean(nearest.as_deref());
        Given::unreadable("seal", format!("“{name}” is none of: {}{meant}", known.join(", ")))
    })?;
    let answer = given.answer().with("long", seal.limit).with("short", seal.short_term);
    Ok(answer.with("source", seal.source.to_string()))
}

fn growth(given: &Given) -> Result<Answer, ReckonError> {
    let expansion = expansion(given, "expansion", "material")?;
    let temperature = given.quantity("temperature")?;
    let diameter = given.quantity("diameter")?;
    let growth = expansion.growth(diameter, temperature)?;
    let mean = expansion.mean(temperature)?;
    let answer = given.answer().with("growth", growth).with("mean_expansion", mean);
    Ok(answer.shown_by([shown::growth(growth, mean, diameter, temperature)]))
}

fn reaches(given: &Given) -> Result<Answer, ReckonError> {
    let expansion = expansion(given, "expansion", "material")?;
    let (diameter, growth) = (given.quantity("diameter")?, given.quantity("growth")?);
    let found = expansion.reaches(diameter, growth)?;
    let working = shown::reaches(found.temperature, found.mean, diameter, growth);
    let answer = given.answer().with("temperature", found.temperature);
    Ok(answer.with("mean_expansion", found.mean).shown_by([working]))
}

fn mass(given: &Given) -> Result<Answer, ReckonError> {
    let density = match given.optional::<MassDensity>("density") {
        Some(density) => density,
        None => metal(given, "material")?.density,
    };
    let hub = hub_mass(given.quantity("bore")?, &slices(given)?, density)?;
    let answer = given.answer().with("mass", hub.mass).with("volume", hub.volume);
    Ok(answer.shown_by([hub.working()]))
}

fn lump(given: &Given) -> Result<Answer, ReckonError> {
    let outside = given.quantity::<Length>("outside")?;
    let body = match (given.optional("bore"), given.optional("length")) {
        (None, None) => Body::ball(outside),
        (Some(bore), Some(length)) => {
            Body::ring(outside, bore, length, given.pick("bore_surface", &SURFACES)?)
        }
        _ => return Err(ReckonError::not_valid("a ring needs both bore and length")),
    };
    let substance = Substance {
        density: given.quantity("density")?,
        heat_capacity: given.quantity("heat_capacity")?,
        conductivity: given.quantity("conductivity")?,
    };
    let film = given.quantity::<HeatTransfer>("film")?.si();
    let (from, to) = (given.quantity("from")?, given.quantity("to")?);
    let surroundings = given.quantity("surroundings")?;
    let cooled = lumped_cooling(body, substance, film, from, to, surroundings)?;
    let working = shown::cooling(cooled.time, cooled.time_constant, [from, to, surroundings]);
    let answer = given.answer().with("time", cooled.time);
    let answer = answer.with("time_constant", cooled.time_constant).with("biot", cooled.biot);
    let answer = answer.with("mass", cooled.mass).with("whole_heat", cooled.whole_heat);
    Ok(answer.shown_by([working]))
}

/// More terms change nothing and would only take time.
const MOST_TERMS: u32 = 200;

fn series(given: &Given) -> Result<Answer, ReckonError> {
    let (biot, fourier) = (given.number("biot")?, given.number("fourier")?);
    let terms = given.count("terms")?;
    if terms == 0 || terms > MOST_TERMS {
        return Err(ReckonError::not_valid(format!("{terms} terms")));
    }
    let terms = usize::try_from(terms).unwrap_or(1);
    let first = cylinder::term(biot, 1)?;
    let cooled = cylinder::cooled(biot, fourier, given.number("radius")?, terms)?;
    let answer = given.answer().with("left", cooled.theta).with("heat_gone", cooled.heat_fraction);
    Ok(answer.with("first_root", first.root).with("first_coefficient", first.coefficient))
}
