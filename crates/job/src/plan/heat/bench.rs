//! Hub, shaft and joint as the flow of heat wants them: the job's figures, else the usual ones.

use mechanics::Slice;
use mechanics::heat::expansion::Expansion as Grows;
use quantities::{Kind, Length, Measured, Physical, Value, Working};
use tables::materials::Material;
use thermal::{
    Air, Bounds, Expansion, Friction, GapAir, Hub, Metal, Rough, Shaft, Surfaces, Surroundings,
    Unknowns,
};

use super::super::{Context, fit};
use super::{ambient, joint};
use crate::file::{Assume, End, Figures, Text, si};

/// What putting on and taking off have in common.
pub(in crate::plan) struct Bench {
    pub hub: Hub,
    pub shaft: Shaft,
    pub surroundings: Surroundings,
    pub surfaces: Surfaces,
    pub unknowns: Unknowns,
    pub friction: Friction,
}

/// `None` while hub or metal is not known.
pub(in crate::plan) fn bench(cx: &Context, end: End) -> Option<Bench> {
    let bore = cx.joint_diameter(end)?;
    let assume = &cx.file.heat.assume;
    let part = |slice: Slice| thermal::Slice { length: slice.length, outside: slice.outside };
    let mut hub_metal = metal(cx.hub_metal(end)?, &assume.hub);
    let own = cx.file.coupling.hub(end).yield_strength.as_ref();
    hub_metal.yield_strength = own.map(Measured::value).or(hub_metal.yield_strength);
    let shaft = Shaft {
        hollow: or(&cx.file.coupling.hub(end).shaft_bore, Length::default()),
        behind: or(&assume.shaft_behind, 2.0 * bore),
        ahead: or(&assume.shaft_ahead, Length::default()),
        metal: metal(cx.shaft_metal(end)?, &assume.shaft),
    };
    let slices = cx.hub_slices(end)?.into_iter().map(part).collect();
    let range = fit::friction(cx, end);
    let (air, metals) = (air(cx, assume), [&hub_metal, &shaft.metal]);
    let surfaces = surfaces(assume, joint::rough(cx, end, metals.map(|metal| metal.conductivity)));
    Some(Bench {
        surroundings: Surroundings { hub: air, shaft: shaft_air(assume, air) },
        surfaces,
        hub: Hub { bore, slices, metal: hub_metal },
        shaft,
        unknowns: unknowns(assume),
        friction: Friction { low: range.low, high: range.high },
    })
}

fn or<Q: Physical>(text: &Text<Q>, usual: Q) -> Q {
    text.as_ref().map_or(usual, Measured::value)
}

/// Limits on temperature are judged by the plan, so none is set here.
fn metal(material: &Material, figures: &Figures) -> Metal {
    let usual = Metal::from(material);
    let expansion = match super::expansion(material, figures) {
        Grows::Constant(mean) => Expansion::Constant(mean),
        Grows::Steel => Expansion::Steel,
        Grows::Table(rows) => Expansion::Table(rows.rows().to_vec()),
    };
    let mut elastic = usual.elastic;
    elastic.young = or(&figures.modulus, elastic.young);
    Metal {
        conductivity: or(&figures.conductivity, usual.conductivity),
        heat_capacity: or(&figures.heat_capacity, usual.heat_capacity),
        density: or(&figures.density, usual.density),
        expansion,
        elastic,
        heating_limit: None,
        ..usual
    }
}

fn air(cx: &Context, assume: &Assume) -> Air {
    let usual = Air::still(ambient(cx));
    Air {
        convection: or(&assume.convection, usual.convection),
        emissivity: si(&assume.emissivity).unwrap_or(usual.emissivity),
        ..usual
    }
}

/// Round the shaft: as round the hub, where nothing else is written.
fn shaft_air(assume: &Assume, hub: Air) -> Air {
    Air {
        temperature: or(&assume.shaft_air, hub.temperature),
        convection: or(&assume.shaft_convection, hub.convection),
        emissivity: si(&assume.shaft_emissivity).unwrap_or(hub.emissivity),
    }
}

/// As written, else by the roughness of bore and shaft, else the usual figures.
fn surfaces(assume: &Assume, rough: Option<Rough>) -> Surfaces {
    let usual = rough.and_then(|rough| rough.surfaces().ok()).unwrap_or_default();
    let filling = assume.gap_filling.as_ref();
    Surfaces {
        touching: or(&assume.touching, usual.touching),
        pressed: or(&assume.pressed, usual.pressed),
        air: filling.map_or(usual.air, |filling| GapAir::Constant(filling.value())),
        emissivity: si(&assume.joint_emissivity).unwrap_or(usual.emissivity),
    }
}

fn unknowns(assume: &Assume) -> Unknowns {
    let usual = Unknowns::default();
    Unknowns {
        eccentricity: Bounds {
            low: si(&assume.off_middle_least).unwrap_or(usual.eccentricity.low),
            likely: si(&assume.off_middle).unwrap_or(usual.eccentricity.likely),
            high: si(&assume.off_middle_greatest).unwrap_or(usual.eccentricity.high),
        },
        conductance: Bounds {
            low: si(&assume.conductance_least).unwrap_or(usual.conductance.low),
            likely: usual.conductance.likely,
            high: si(&assume.conductance_greatest).unwrap_or(usual.conductance.high),
        },
        expansion: si(&assume.expansion_scatter).unwrap_or(usual.expansion),
    }
}

impl Bench {
    /// Every assumption, so that a reader sees what went in.
    pub fn assumed(&self, working: Working) -> Working {
        let (hub, shaft) = (&self.hub.metal, &self.shaft.metal);
        let share = |number: f64| Value::number(number);
        let film = |film| Value::new(Kind::HeatTransfer, film);
        let length = |length| Value::new(Kind::Length, length);
        let (air, round) = (&self.surroundings.hub, &self.surroundings.shaft);
        let temperature = |at| Value::new(Kind::Temperature, at);
        let joint = &self.surfaces;
        let unknowns = &self.unknowns;
        working
            .term("Eh", "modulus of the hub", Value::new(Kind::Stress, hub.elastic.young))
            .term(
                "ks",
                "conductivity of the shaft",
                Value::new(Kind::Conductivity, shaft.conductivity),
            )
            .term(
                "cs",
                "heat capacity of the shaft",
                Value::new(Kind::HeatCapacity, shaft.heat_capacity),
            )
            .term("ρs", "density of the shaft", Value::new(Kind::Density, shaft.density))
            .term("Es", "modulus of the shaft", Value::new(Kind::Stress, shaft.elastic.young))
            .term("Lb", "shaft behind the hub", length(self.shaft.behind))
            .term("La", "shaft beyond the hub", length(self.shaft.ahead))
            .term("ha", "to the air", film(air.convection))
            .term("ε", "emissivity outside", share(air.emissivity))
            .term("ta", "air round the hub", temperature(air.temperature))
            .term("hs", "from the shaft to the air", film(round.convection))
            .term("εs", "emissivity of the shaft", share(round.emissivity))
            .term("tb", "air round the shaft", temperature(round.temperature))
            .term("h0", "joint just touching", film(joint.touching))
            .term("hp", "more at 10 MPa", film(joint.pressed))
            .term("εj", "emissivity of the joint", share(joint.emissivity))
            .term("e0", "off the middle, at least", share(unknowns.eccentricity.low))
            .term("e1", "off the middle, likely", share(unknowns.eccentricity.likely))
            .term("f0", "joint’s conductance times, at least", share(unknowns.conductance.low))
            .term("f1", "joint’s conductance times, at most", share(unknowns.conductance.high))
            .term("s", "scatter of the expansion", share(unknowns.expansion))
    }
}

/// What the finite elements could not answer, in words.
pub(in crate::plan) fn why_not(error: &thermal::ThermalError) -> &'static str {
    use thermal::ThermalError as E;
    match error {
        E::Yields { .. } => {
            "the bore would be stretched beyond its yield strength, and only what springs back can be reckoned"
        }
        E::NoClearance(_) => {
            "it does not clear the shaft as it arrives, in the worst case: heat it more"
        }
        E::StaysOpen(_) => "it is still open after a day and does not grab",
        E::Temperature(_) => "a temperature lies beyond what the metal’s expansion is known for",
        E::Unsettled(_) => "a coarser mesh gives another answer, so none is given",
        E::Unsolved(_) => "the equations could not be solved",
        E::Loose(_) => "nothing presses",
        E::NoSurface { .. } => "there is no such surface to heat",
        _ => "its sizes and figures do not make a hub that can be reckoned",
    }
}
