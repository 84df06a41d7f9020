//! Hub, shaft, joint and heat as the inputs give them.

use mechanics::heat::expansion::Rows;
use quantities::{
    Length, Physical, Power, Ratio, TemperatureCoefficient, ThermodynamicTemperature, Time,
};
use thermal::{
    Air, Body, Bounds, Expansion, GapAir, Heat, Hub, Metal, Peak, Place, Rough, Shaft, Slice,
    Surfaces, Surroundings, Unknowns, Zone,
};

use super::super::choices::{metal, slices};
use crate::{Answer, Given, ReckonError};

/// Hub or shaft: the names of its inputs, the shaft's own before those of both.
struct Part {
    metal: &'static str,
    conductivity: [&'static str; 2],
    heat_capacity: [&'static str; 2],
    density: [&'static str; 2],
    modulus: [&'static str; 2],
    /// Mean expansion; the temperatures of a table; its means.
    expansion: [[&'static str; 3]; 2],
}

const BOTH_EXPAND: [&str; 3] = ["expansion", "expansion_to", "expansion_means"];
const OF_HUB: Part = Part {
    metal: "hub",
    conductivity: ["conductivity"; 2],
    heat_capacity: ["heat_capacity"; 2],
    density: ["density"; 2],
    modulus: ["modulus"; 2],
    expansion: [BOTH_EXPAND; 2],
};
const OF_SHAFT: Part = Part {
    metal: "shaft",
    conductivity: ["shaft_conductivity", "conductivity"],
    heat_capacity: ["shaft_heat_capacity", "heat_capacity"],
    density: ["shaft_density", "density"],
    modulus: ["shaft_modulus", "modulus"],
    expansion: [["shaft_expansion", "shaft_expansion_to", "shaft_expansion_means"], BOTH_EXPAND],
};

/// The metal that an input names, with the figures that were given.
fn metal_of(given: &Given, part: &Part) -> Result<Metal, ReckonError> {
    fn own<Q: Physical>(given: &Given, names: [&'static str; 2], usual: Q) -> Q {
        names.into_iter().find_map(|name| given.optional(name)).unwrap_or(usual)
    }
    let material = metal(given, part.metal)?;
    let usual = Metal::from(material);
    let mut expansion = match material.name {
        "steel" => Expansion::Steel,
        _ => usual.expansion,
    };
    for names in part.expansion.into_iter().rev() {
        expansion = expands(given, names)?.unwrap_or(expansion);
    }
    let mut elastic = usual.elastic;
    elastic.young = own(given, part.modulus, elastic.young);
    Ok(Metal {
        conductivity: own(given, part.conductivity, usual.conductivity),
        heat_capacity: own(given, part.heat_capacity, usual.heat_capacity),
        density: own(given, part.density, usual.density),
        expansion,
        elastic,
        heating_limit: None,
        ..usual
    })
}

/// An expansion that was given: by temperature, else in one figure.
fn expands(given: &Given, names: [&'static str; 3]) -> Result<Option<Expansion>, ReckonError> {
    let [mean, to, means] = names;
    let at: Vec<ThermodynamicTemperature> = given.quantities(to);
    let each: Vec<TemperatureCoefficient> = given.quantities(means);
    if at.len() != each.len() {
        let why = format!("{} temperatures and {} mean expansions", at.len(), each.len());
        return Err(Given::unreadable(to, why));
    }
    if at.is_empty() {
        return Ok(given.optional(mean).map(Expansion::Constant));
    }
    let rows = Rows::new(at.into_iter().zip(each).collect())?;
    Ok(Some(Expansion::Table(rows.rows().to_vec())))
}

pub(super) fn hub(given: &Given) -> Result<Hub, ReckonError> {
    let lengths: Vec<Length> = given.quantities("slice_lengths");
    let outsides: Vec<Length> = given.quantities("slice_outsides");
    if lengths.len() != outsides.len() {
        let why = format!("{} lengths and {} outsides", lengths.len(), outsides.len());
        return Err(Given::unreadable("slice_lengths", why));
    }
    let listed = lengths.into_iter().zip(outsides);
    let listed: Vec<Slice> = listed.map(|(length, outside)| Slice { length, outside }).collect();
    let slice = |slice: mechanics::Slice| Slice { length: slice.length, outside: slice.outside };
    let slices =
        if listed.is_empty() { slices(given)?.into_iter().map(slice).collect() } else { listed };
    Ok(Hub { bore: given.quantity("bore")?, slices, metal: metal_of(given, &OF_HUB)? })
}

/// A shaft that has the places near on it.
pub(super) fn shaft(given: &Given) -> Result<Shaft, ReckonError> {
    let bore = given.quantity::<Length>("bore")?;
    let near: Vec<Length> = given.quantities("near_behind");
    let needed = near.iter().map(|near| near.si() + 0.5 * bore.si()).fold(0.0, f64::max);
    let behind = given.optional("shaft_behind").unwrap_or(2.0 * bore);
    Ok(Shaft {
        hollow: given.quantity("shaft_bore")?,
        behind: Length::from_si(behind.si().max(needed)),
        ahead: given.quantity("shaft_ahead")?,
        metal: metal_of(given, &OF_SHAFT)?,
    })
}

/// Places on the shaft's surface behind the hub.
pub(super) fn places(given: &Given) -> Result<Vec<Place>, ReckonError> {
    let radius = 0.49 * given.quantity::<Length>("bore")?;
    let near: Vec<Length> = given.quantities("near_behind");
    if near.iter().any(|near| near.si() <= 0.0) {
        return Err(Given::unreadable("near_behind", "a place is not behind the hub"));
    }
    let limits: Vec<ThermodynamicTemperature> = given.quantities("near_limits");
    if !limits.is_empty() && limits.len() != near.len() {
        let why = format!("{} limits for {} places", limits.len(), near.len());
        return Err(Given::unreadable("near_limits", why));
    }
    let place = |(at, near): (usize, Length)| Place {
        name: String::new(),
        body: Body::Shaft,
        radius,
        along: -near,
        limit: limits.get(at).copied(),
    };
    Ok(near.into_iter().enumerate().map(place).collect())
}

pub(super) fn with_places(answer: Answer, places: &[Place], peaks: &[Peak]) -> Answer {
    if peaks.is_empty() {
        return answer;
    }
    let answer = answer.with("near", peaks.iter().map(|peak| peak.temperature).collect::<Vec<_>>());
    let answer = answer.with("near_after", peaks.iter().map(|peak| peak.time).collect::<Vec<_>>());
    if places.iter().all(|place| place.limit.is_none()) {
        return answer;
    }
    let over = peaks.iter().any(|peak| peak.over_limit.is_some());
    answer.with("near_over", if over { "over its limit" } else { "none over a limit" })
}

pub(super) fn surroundings(given: &Given) -> Result<Surroundings, ReckonError> {
    let hub = Air {
        temperature: given.quantity("air")?,
        convection: given.quantity("convection")?,
        emissivity: given.number("emissivity")?,
    };
    let emissivity = given.optional::<Ratio>("shaft_emissivity");
    let shaft = Air {
        temperature: given.optional("shaft_air").unwrap_or(hub.temperature),
        convection: given.optional("shaft_convection").unwrap_or(hub.convection),
        emissivity: emissivity.map_or(hub.emissivity, |share| share.value),
    };
    Ok(Surroundings { hub, shaft })
}

pub(super) fn surfaces(given: &Given) -> Result<Surfaces, ReckonError> {
    let usual = Surfaces::default();
    let rough = rough(given)?;
    Ok(Surfaces {
        touching: rough.map_or(given.quantity("touching")?, |rough| rough.touching),
        pressed: rough.map_or(given.quantity("pressed")?, |rough| rough.pressed),
        air: given.optional("gap_filling").map_or(usual.air, GapAir::Constant),
        emissivity: given.number("joint_emissivity")?,
    })
}

/// What the roughness of both makes of the joint, where it was given.
fn rough(given: &Given) -> Result<Option<Surfaces>, ReckonError> {
    match [given.optional("bore_roughness"), given.optional("shaft_roughness")] {
        [Some(bore), Some(shaft)] => {
            let conductivity =
                [metal_of(given, &OF_HUB)?.conductivity, metal_of(given, &OF_SHAFT)?.conductivity];
            let hardness = given.quantity("hardness")?;
            let rough = Rough { arithmetic_mean: [bore, shaft], conductivity, hardness };
            Ok(Some(rough.surfaces()?))
        }
        [None, None] => Ok(None),
        _ => Err(ReckonError::not_valid("roughness needs both bore_roughness and shaft_roughness")),
    }
}

pub(super) fn unknowns(given: &Given) -> Result<Unknowns, ReckonError> {
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

/// Heat on body and flange or on slices, where there is any.
pub(super) fn heats(given: &Given, hub: &Hub) -> Result<Vec<Heat>, ReckonError> {
    let start: Time = given.quantity("heated_from")?;
    let (stop, later) = (start + given.quantity("heated_for")?, given.quantity("flange_later")?);
    let listed: Vec<Power> = given.quantities("slice_powers");
    let in_slices = !given.quantities::<Length>("slice_lengths").is_empty();
    if in_slices && listed.len() != hub.slices.len() {
        let why = format!("{} powers for {} slices", listed.len(), hub.slices.len());
        return Err(Given::unreadable("slice_powers", why));
    }
    let powers = if in_slices {
        listed
    } else {
        vec![given.quantity("body_power")?, given.quantity("flange_power")?]
    };
    let (mut heats, mut from) = (Vec::new(), Length::default());
    for (at, (slice, power)) in hub.slices.iter().zip(powers).enumerate() {
        let to = from + slice.length;
        if power.si() > 0.0 {
            let late = if at == 1 && !in_slices { later } else { Time::default() };
            let name = ["body", "flange"].get(at).copied().unwrap_or("slice");
            heats.push(Heat {
                zone: Zone::outside(name, from, to),
                power,
                start: start + late,
                stop,
            });
        }
        from = to;
    }
    if heats.is_empty() {
        return Err(ReckonError::not_valid(
            "no heat: body_power, flange_power or one of slice_powers must be above zero",
        ));
    }
    Ok(heats)
}
