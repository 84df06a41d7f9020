//! Running: spacers, teeth, vibration, balance.

use couplings::axial_force::pull;
use couplings::inertia::Turns;
use couplings::running::{Support, Zone, group, peak, peak_to_peak, zones};
use couplings::sheet::Inertias;
use couplings::spacer::{Tube, axial_swing, overhang, whirl};
use couplings::teeth::{SlidingBand, axial_friction, sliding};
use couplings::wear::off_centre;
use couplings::{End, Sheet};
use quantities::{
    AngularVelocity, Basis, Force, Kind, Length, Mass, MomentOfInertia, Physical, Source, Torque,
    Value, Velocity,
};
use tables::balance;

use super::choices::{MATERIAL, metal, not_held};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const SUPPORTS: [(&str, Support); 2] = [("rigid", Support::Rigid), ("flexible", Support::Flexible)];
const SUPPORT_NAMES: &[&str] = &names(&SUPPORTS);

const SPEED: Input = Input::quantity("speed", Kind::Speed, "speed");
const PITCH: Input = Input::quantity("pitch_diameter", Kind::Length, "pitch diameter of the teeth");

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "spacer-whirl",
        does: "The speed at which a spacer whirls, and the highest that keeps its distance.",
        inputs: &[
            Input::quantity("outside", Kind::Length, "outside diameter of the tube"),
            Input::quantity("inside", Kind::Length, "inside diameter; 0 when solid").or("0 mm"),
            Input::quantity("length", Kind::Length, "between the flexing planes"),
            Input::word("material", MATERIAL).or("steel"),
            Input::quantity("young", Kind::Stress, "Young’s modulus; the material’s when left out")
                .optional(),
            Input::quantity("density", Kind::Density, "density; the material’s when left out")
                .optional(),
        ],
        outputs: &[
            Output::value("critical", Kind::Speed, "speed at which it whirls"),
            Output::value("run_below", Kind::Speed, "stay below this: 0.7 of it"),
        ],
        valid: "a plain tube hinged at both ends; flanges lower it",
        source: Source::new(
            "beam on two supports; 0.7 common practice",
            "first mode",
            Basis::Memory,
        ),
        answer: whirling,
    },
    Calculation {
        name: "spacer-swing",
        does: "Axial frequency of a spacer that floats between two packs.",
        inputs: &[
            Input::quantity("pack_force", Kind::Force, "force that stretches one pack"),
            Input::quantity("pack_stretch", Kind::Allowance, "by so much").or("1 mm"),
            Input::quantity("mass", Kind::Mass, "mass of the spacer"),
        ],
        outputs: &[Output::value(
            "frequency",
            Kind::Speed,
            "a shaft at this speed excites it once a turn",
        )],
        valid: "small swings: packs stiffen with stretch, so look at a range",
        source: Source::new("one mass between two springs", "", Basis::Computed),
        answer: swing,
    },
    Calculation {
        name: "overhang",
        does: "What a coupling hangs on one shaft end.",
        inputs: &[
            Input::quantity(
                "mass",
                Kind::Mass,
                "mass that this shaft end carries: hub, sleeve, half the spacer",
            ),
            Input::quantity("reach", Kind::Length, "from its centre to the nearest bearing"),
        ],
        outputs: &[
            Output::value("weight", Kind::Force, "its weight"),
            Output::value("moment", Kind::Torque, "bending moment at the bearing"),
        ],
        valid: "at rest; standard gravity",
        source: Source::new("statics", "", Basis::Computed),
        answer: hung,
    },
    Calculation {
        name: "tooth-sliding",
        does: "How fast the teeth of a gear coupling slide.",
        inputs: &[PITCH, Input::quantity("angle", Kind::Slope, "angle at the mesh"), SPEED],
        outputs: &[
            Output::value("highest", Kind::Velocity, "highest sliding speed"),
            Output::value("mean", Kind::Velocity, "mean over a turn"),
            Output::value("stroke", Kind::Offset, "travel of a tooth from end to end"),
            Output::word("band", "where it lies among the guide values of the trade"),
        ],
        valid: "guide values from memory, as cautions only",
        source: Source::new("a tooth goes to and fro once a turn", "", Basis::Computed),
        answer: slide,
    },
    Calculation {
        name: "tooth-thrust",
        does: "The axial force that loaded teeth hold before they slide.",
        inputs: &[
            Input::quantity("torque", Kind::Torque, "torque"),
            PITCH,
            Input::quantity("friction", Kind::Number, "friction in the teeth").or("0.25"),
        ],
        outputs: &[Output::value("force", Kind::Force, "force; it lands on a thrust bearing")],
        valid: "one mesh, all teeth share; 0.25 for design, 0.05 met in good oil, both from memory",
        source: Source::new("statics", "", Basis::Computed),
        answer: thrust,
    },
    Calculation {
        name: "axial-force",
        does: "The force along the shafts that a coupling held away from its rest puts on the bearings.",
        inputs: &[
            Input::quantity("stiffness", Kind::Stiffness, "axial stiffness of the coupling"),
            Input::quantity("moved", Kind::Offset, "stretched or pushed by, with its ±"),
        ],
        outputs: &[Output::value("force", Kind::Force, "force on the bearings of both machines")],
        valid: "an even stiffness; near the end of its travel the maker’s curve holds",
        source: Source::new("Hooke’s law", "", Basis::Computed),
        answer: axial_force,
    },
    Calculation {
        name: "turning-inertia",
        does: "Inertia that turns with a machine: its rotor and its part of the coupling.",
        inputs: &[
            Input::quantity("machine", Kind::Inertia, "inertia of the machine’s rotor"),
            Input::quantity("hub", Kind::Inertia, "of the hub").optional(),
            Input::quantity("sleeve", Kind::Inertia, "of a sleeve or half cover").optional(),
            Input::quantity("spacer", Kind::Inertia, "of the spacer").optional(),
            Input::quantity("coupling", Kind::Inertia, "of the whole, where no hub is given")
                .optional(),
        ],
        outputs: &[Output::value("inertia", Kind::Inertia, "all that turns together")],
        valid: "all at the coupling’s speed; a spacer turns with both ends alike",
        source: Source::new("what turns together adds up", "", Basis::Computed),
        answer: turning,
    },
    Calculation {
        name: "vibration-zone",
        does: "The zone that a vibration lies in, and where to set alarm and trip.",
        inputs: &[
            Input::quantity(
                "velocity",
                Kind::Velocity,
                "r.m.s. velocity on the bearing housing, with its ±",
            ),
            Input::quantity("power", Kind::Power, "power of the machine"),
            Input::choice("support", SUPPORT_NAMES, "how it stands").or("rigid"),
            Input::quantity("baseline", Kind::Velocity, "what is usual for this machine")
                .optional(),
        ],
        outputs: &[
            Output::word("zone", "A to D; two when the ± straddles a bound"),
            Output::value("bounds", Kind::Velocity, "between A and B, B and C, C and D"),
            Output::value("alarm", Kind::Velocity, "where to set the alarm over the baseline"),
            Output::value("highest_trip", Kind::Velocity, "the highest that a trip is set to"),
            Output::word("source", "how the bounds are known"),
        ],
        valid: "machines of 15 kW and more, 120 to 15 000 rpm, whose makers give nothing else",
        source: Source::new("ISO 10816-3:2009", "as reprints give it", Basis::Memory),
        answer: zone,
    },
    Calculation {
        name: "sine-vibration",
        does: "Peak and movement of a sine of an r.m.s. velocity.",
        inputs: &[
            Input::quantity("rms", Kind::Velocity, "r.m.s. velocity"),
            Input::quantity("frequency", Kind::Speed, "its frequency"),
        ],
        outputs: &[
            Output::value("peak", Kind::Velocity, "peak velocity"),
            Output::value("peak_to_peak", Kind::Roughness, "movement, peak to peak"),
        ],
        valid: "a single sine",
        source: Source::new("a sine", "", Basis::Computed),
        answer: sine,
    },
    Calculation {
        name: "off-centre",
        does: "Force, unbalance and balance quality of a mass that hangs off centre.",
        inputs: &[
            Input::quantity("mass", Kind::Mass, "mass that hangs"),
            Input::quantity("shift", Kind::Allowance, "how far off centre"),
            SPEED,
        ],
        outputs: &[
            Output::value("force", Kind::Force, "force that turns with it"),
            Output::value("unbalance", Kind::Number, "unbalance, kg·mm"),
            Output::value("quality", Kind::Velocity, "balance quality: shift times speed"),
            Output::word("grade", "the finest balance grade that it still meets"),
        ],
        valid: "a rigid rotor",
        source: Source::new(
            "Bloch and Geitner, Practical Machinery Management for Process Plants, vol. 4",
            "p. 296",
            Basis::Read,
        ),
        answer: hangs,
    },
    Calculation {
        name: "balance-grade",
        does: "What a balance quality grade is usual for.",
        inputs: &[Input::word("grade", "a grade, such as G6.3")],
        outputs: &[
            Output::value("quality", Kind::Velocity, "speed of the mass centre"),
            Output::word("usual_for", "what it is usual for"),
        ],
        valid: "G100 to G0.4",
        source: balance::SOURCE,
        answer: grade,
    },
    Calculation {
        name: "balance-class",
        does: "How far off the mass axis of a coupling of a balance class may lie.",
        inputs: &[Input::quantity("class", Kind::Count, "class, 5 to 11")],
        outputs: &[Output::value("most", Kind::Roughness, "at a balance plane, at most")],
        valid: "classes 5 to 11",
        source: balance::AGMA_9000_SOURCE,
        answer: class,
    },
];

fn whirling(given: &Given) -> Result<Answer, ReckonError> {
    let metal = metal(given, "material")?;
    let whirl = whirl(Tube {
        outside: given.quantity("outside")?,
        inside: given.quantity("inside")?,
        length: given.quantity("length")?,
        young: given.optional("young").unwrap_or(metal.elastic.young),
        density: given.optional("density").unwrap_or(metal.density),
    })?;
    let answer = given.answer().with("critical", whirl.critical);
    let answer = answer.with("run_below", whirl.run_below());
    Ok(answer.shown_by([whirl.working(), whirl.margin_working()]))
}

fn swing(given: &Given) -> Result<Answer, ReckonError> {
    let (force, stretch) =
        (given.quantity::<Force>("pack_force")?, given.quantity::<Length>("pack_stretch")?);
    let swing = axial_swing(force.si() / stretch.si(), given.quantity("mass")?)?;
    Ok(given.answer().with("frequency", swing.frequency).shown_by([swing.working()]))
}

fn hung(given: &Given) -> Result<Answer, ReckonError> {
    let hung = overhang(given.quantity("mass")?, given.quantity("reach")?)?;
    let answer = given.answer().with("weight", hung.weight).with("moment", hung.moment);
    Ok(answer.shown_by([hung.working()]))
}

fn slide(given: &Given) -> Result<Answer, ReckonError> {
    let (pitch, angle) = (given.quantity("pitch_diameter")?, given.quantity("angle")?);
    let sliding = sliding(pitch, angle, given.quantity("speed")?)?;
    let band = match sliding.band() {
        SlidingBand::Ordinary => "ordinary: what greased couplings run at",
        SlidingBand::Fast => "fast: hardened teeth, close seals and the right grease",
        SlidingBand::TooFast => "beyond what sealed grease is used for",
    };
    let answer = given.answer().with("highest", sliding.highest).with("mean", sliding.mean);
    let answer = answer.with("stroke", sliding.stroke).with("band", band);
    Ok(answer.shown_by([sliding.working()]))
}

fn thrust(given: &Given) -> Result<Answer, ReckonError> {
    let (torque, pitch) = (given.quantity::<Torque>("torque")?, given.quantity("pitch_diameter")?);
    let thrust = axial_friction(torque, pitch, given.quantity("friction")?)?;
    Ok(given.answer().with("force", thrust.force).shown_by([thrust.working()]))
}

fn axial_force(given: &Given) -> Result<Answer, ReckonError> {
    let found = pull(given.estimate("stiffness")?, given.estimate("moved")?)?;
    let answer = given.answer().with("force", found.shown());
    Ok(answer.shown_by([found.working()]))
}

fn turning(given: &Given) -> Result<Answer, ReckonError> {
    let machine = given.quantity::<MomentOfInertia>("machine")?;
    let inertias = Inertias {
        hub: given.written_as("hub"),
        sleeve: given.written_as("sleeve"),
        spacer: given.written_as("spacer"),
        ..Inertias::default()
    };
    let sheet = Sheet { inertia: given.written_as("coupling"), inertias, ..Sheet::default() };
    let turns = Turns::of(&sheet, End::Driver).ok_or_else(|| {
        ReckonError::not_valid("neither the hub’s inertia nor that of the whole coupling is given")
    })?;
    let sound = |inertia: MomentOfInertia| inertia.si() >= 0.0;
    if machine.si() <= 0.0 || !sound(turns.inertia()) {
        return Err(ReckonError::not_valid("inertias above zero are wanted"));
    }
    let answer = given.answer().with("inertia", Value::new(Kind::Inertia, turns.with(machine)));
    Ok(answer.shown_by([turns.working(machine)]))
}

fn zone(given: &Given) -> Result<Answer, ReckonError> {
    let velocity = given.estimate::<Velocity>("velocity")?;
    if velocity.value.si() < 0.0 {
        return Err(ReckonError::not_valid("a velocity below zero"));
    }
    let group = group(given.quantity("power")?).ok_or_else(|| not_held("so small a machine"))?;
    let zones = zones(group, given.pick("support", &SUPPORTS)?);
    let [best, worst] = zones.of(&velocity.shown(Kind::Velocity)).map(|zone| match zone {
        Zone::A => "A",
        Zone::B => "B",
        Zone::C => "C",
        Zone::D => "D",
    });
    let zone = if best == worst { best.to_owned() } else { format!("{best} or {worst}") };
    let alarm = given.optional("baseline").map(|baseline| zones.alarm(baseline));
    let answer = given.answer().with("zone", zone);
    let answer = answer.with("bounds", vec![zones.a_b, zones.b_c, zones.c_d]);
    let answer = answer.with("alarm", alarm).with("highest_trip", zones.highest_trip());
    Ok(answer.with("source", zones.source.to_string()))
}

fn sine(given: &Given) -> Result<Answer, ReckonError> {
    let rms = given.quantity::<Velocity>("rms")?;
    let moved = peak_to_peak(rms, given.quantity("frequency")?);
    let moved = moved.ok_or_else(|| ReckonError::not_valid("no frequency"))?;
    let answer = given.answer().with("peak", peak(rms)).with("peak_to_peak", moved.movement);
    Ok(answer.shown_by([moved.working()]))
}

fn hangs(given: &Given) -> Result<Answer, ReckonError> {
    let (mass, shift) = (given.quantity::<Mass>("mass")?, given.quantity::<Length>("shift")?);
    let speed = given.quantity::<AngularVelocity>("speed")?;
    if mass.si() <= 0.0 || shift.si() < 0.0 || speed.si() <= 0.0 {
        return Err(ReckonError::not_valid("mass and speed above zero are wanted, and a shift"));
    }
    let hangs = off_centre(mass, shift, speed);
    let grade = balance::met_by(hangs.quality.si() * 1e3).map(|grade| format!("G{}", grade.g_mm_s));
    let answer = given.answer().with("force", hangs.force);
    let answer = answer.with("unbalance", Value::number(hangs.unbalance_kg_m * 1e3));
    let answer = answer.with("quality", hangs.quality).with("grade", grade);
    Ok(answer.shown_by([hangs.working()]))
}

fn grade(given: &Given) -> Result<Answer, ReckonError> {
    let grade = balance::grade(given.word("grade")).ok_or_else(|| {
        let known: Vec<String> =
            balance::GRADES.iter().map(|it| format!("G{}", it.g_mm_s)).collect();
        Given::unreadable("grade", format!("none of: {}", known.join(", ")))
    })?;
    let answer = given.answer().with("quality", Velocity::from_si(grade.g_mm_s / 1e3));
    Ok(answer.with("usual_for", grade.usual_for))
}

fn class(given: &Given) -> Result<Answer, ReckonError> {
    let class = given.count("class")?;
    let held = balance::AGMA_9000.iter().find(|(held, _)| u32::from(*held) == class);
    let (_, most) = held.ok_or_else(|| not_held("that class"))?;
    Ok(given.answer().with("most", *most))
}
