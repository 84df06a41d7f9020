//! Torque, peak, start, heat, speed and bore against the maker's sheet.

use couplings::din_740;
use couplings::inertia::Turns;
use couplings::kind::{Gives, Load};
use couplings::rating::{self, Peak, SpeedNeed, Start, StartError, Swing};
use couplings::service::{least_in_special_trains, usual};
use quantities::{
    Kind, Limits, Measured, MomentOfInertia, Physical, ThermodynamicTemperature, Torque, Value,
    Whole, Working,
};

use super::super::Context;
use super::super::stage_builder::{StageBuilder, WRITTEN};
use crate::file::End;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    steady(cx, out);
    peak(cx, out);
    start(cx, out);
    place(cx, out);
    speed(cx, out);
    bores(cx, out);
}

/// The steady torque with its service factor, and what warm rubber asks instead.
fn steady(cx: &Context, out: &mut StageBuilder) {
    let Some(duty) = cx.duty() else { return };
    let Some(rated) = &cx.file.coupling.sheet.rated_torque else {
        out.missing("coupling.sheet.rated_torque", "rated torque, from the maker’s sheet");
        return;
    };
    let design = Value::new(Kind::Torque, duty.design_torque());
    out.number("rating", "Torque that the coupling must carry", design)
        .second("with service factor; limit: rated torque on the sheet")
        .working(duty.design_working())
        .judged(Limits::at_most(rated.value().si()), "A larger coupling, or ask the maker.");
    if let Ok(share) = rating::torque(duty, rated.value()) {
        out.number("share", "Share of the rated torque", share.fraction()).working(share.working());
    }
    if let Some(least) = cx.kind.and_then(|kind| least_in_special_trains(kind.name())) {
        out.note(format!(
            "In special-purpose trains API 671 asks a service factor of at least {} of this kind \
             ({}).",
            least.factor, least.source
        ));
    }
    warm(cx, out, duty.torque(), rated.value());
}

/// Rubber carries less when it is warm.
fn warm(cx: &Context, out: &mut StageBuilder, steady: Torque, rated: Torque) {
    let Some(ambient) = ambient(cx).filter(|_| gives(cx) == Gives::Elastomer) else { return };
    let Some(factor) = din_740::temperature_factor(ambient) else {
        out.note(
            "No figure is held for rubber at this temperature (DIN 740-2 ends at 80 °C, 176 °F): ask the \
             maker.",
        );
        return;
    };
    let Ok(needed) = din_740::steady(steady, factor) else { return };
    let value = Value::new(Kind::Torque, needed);
    let working =
        Working::new("Rated torque that warm rubber asks for", "K = T·St", value, din_740::SOURCE)
            .term("T", "steady torque", Value::new(Kind::Torque, steady))
            .term("St", "temperature factor", Value::number(factor))
            .valid("natural-rubber-like elastomers, −30 to 80 °C");
    out.number("warm", "Steady torque, for rubber at this temperature", value)
        .second("limit: rated torque on the sheet")
        .working(working)
        .judged(Limits::at_most(rated.si()), "A larger coupling, or a cooler place.");
}

pub(super) fn ambient(cx: &Context) -> Option<ThermodynamicTemperature> {
    cx.file.machines.ambient.as_ref().map(Measured::value)
}

pub(super) fn gives(cx: &Context) -> Gives {
    cx.kind.map_or(Gives::NotKnown, |kind| kind.character().gives)
}

fn swing(cx: &Context) -> Swing {
    if cx.file.machines.reversing == Some(true) { Swing::Reversing } else { Swing::OneWay }
}

fn peak(cx: &Context, out: &mut StageBuilder) {
    let machines = &cx.file.machines;
    let sheet = &cx.file.coupling.sheet.peak_torque;
    let Some(torque) = &machines.peak_torque else {
        if sheet.is_some() && machines.start_torque.is_none() {
            out.missing("machines.peak_torque", "largest torque at start-up or in a jam");
        }
        return;
    };
    let peak = Peak { torque: torque.value(), swing: swing(cx) };
    against_peak(cx, out, "peak", "Peak torque, as it counts", peak.working(), peak.counts());
    if machines.reversing.is_none() {
        out.missing("machines.reversing", "whether the torque turns round");
    }
}

/// A peak against the sheet's peak torque, or the sheet's figure asked for.
fn against_peak(
    cx: &Context,
    out: &mut StageBuilder,
    id: &str,
    label: &str,
    working: Working,
    torque: Torque,
) {
    let sheet = cx.file.coupling.sheet.peak_torque.as_ref();
    if sheet.is_none() {
        out.missing("coupling.sheet.peak_torque", "peak torque, from the maker’s sheet");
    }
    let entry = out.number(id, label, Value::new(Kind::Torque, torque)).working(working);
    match sheet {
        None => entry.second("no peak torque on the sheet to hold it against"),
        Some(most) => entry.second("no service factor on a peak; limit: the sheet").judged(
            Limits::at_most(most.value().si()),
            "A larger coupling, a softer start, or one that slips; ask the maker.",
        ),
    };
}

/// The torque that passes the coupling while the driver starts; all of it while the inertias are
/// not known.
fn start(cx: &Context, out: &mut StageBuilder) {
    let machines = &cx.file.machines;
    starts(cx, out);
    let Some(torque) = &machines.start_torque else { return };
    let inertias = [End::Driver, End::Driven].map(|end| machines.at(end).inertia.as_ref());
    let [Some(one), Some(other)] = inertias else {
        for end in End::BOTH {
            if machines.at(end).inertia.is_none() {
                let place = format!("machines.{}.inertia", end.key());
                out.missing(&place, &format!("moment of inertia of the {}", machines.name(end)));
            }
        }
        let label = "Torque of the driver at start, all of it";
        let working = Working::new(label, "C = T", torque.shown(), WRITTEN)
            .term("T", "driver’s torque at start", torque.shown())
            .valid("the most that can pass while the inertias are not known; kicks apart");
        peak_of(cx, out, ("start", label), working, torque.value());
        return;
    };
    let inertias = turning(cx, out, [one.value(), other.value()]);
    let found = match rating::start(torque.value(), load(cx, out), inertias) {
        Ok(found) => found,
        Err(StartError::Stalls { .. }) => {
            out.note(
                "The torque entered for the start is no more than the load’s: against its load it \
                 would not speed up. Look both up, or enter that it starts without its load.",
            );
            return;
        }
        Err(StartError::NoNumber(_)) => return,
    };
    let label = "Torque in the coupling at start";
    peak_of(cx, out, ("start", label), found.working(), found.passes);
    if gives(cx) == Gives::Elastomer {
        shock(cx, out, &found);
    }
}

/// What turns on either side: the rotors, each with its part of the coupling where that is known.
fn turning(
    cx: &Context,
    out: &mut StageBuilder,
    rotors: [MomentOfInertia; 2],
) -> [MomentOfInertia; 2] {
    let [one, other] = End::BOTH.map(|end| {
        let rotor = rotors[usize::from(end == End::Driven)];
        let Some(turns) = Turns::of(&cx.file.coupling.sheet, end) else { return rotor };
        let label = format!("Inertia that turns with the {}", cx.name(end));
        let value = Value::new(Kind::Inertia, turns.with(rotor));
        out.number(&format!("{}.turns", end.key()), label, value)
            .second("its rotor and its part of the coupling")
            .working(turns.working(rotor));
        turns.with(rotor)
    });
    [one, other]
}

/// The load's torque while it starts; not told, the larger of the two is taken.
fn load(cx: &Context, out: &mut StageBuilder) -> Option<Torque> {
    let loaded = cx.file.machines.starts_loaded;
    let load = cx.duty().map(mechanics::power::Duty::torque).filter(|_| loaded != Some(false));
    if loaded.is_none() {
        out.missing("machines.starts_loaded", "whether it starts against its load");
        if load.is_some() {
            out.note(
                "The start is taken as one against all of the load’s torque, which is the larger; \
                 enter whether it is.",
            );
        }
    }
    load
}

/// A repeated peak that was worked out against the sheet's peak torque: double where it reverses.
fn peak_of(
    cx: &Context,
    out: &mut StageBuilder,
    (id, label): (&str, &str),
    working: Working,
    torque: Torque,
) {
    if swing(cx) == Swing::OneWay {
        against_peak(cx, out, id, label, working, torque);
        return;
    }
    out.number(&format!("{id}.passes"), label, Value::new(Kind::Torque, torque)).working(working);
    let peak = Peak { torque, swing: Swing::Reversing };
    let label = format!("{label}, as it counts");
    against_peak(cx, out, id, &label, peak.working(), peak.counts());
}

/// The same start in the manner of DIN 740-2, for an elastomer.
fn shock(cx: &Context, out: &mut StageBuilder, start: &Start) {
    let factor = match cx.file.machines.asks.load {
        Some(Load::Uniform) => 1.5,
        Some(Load::Moderate) | None => 1.8,
        Some(Load::Heavy | Load::Extreme) => 2.2,
    };
    let per_hour = cx.file.machines.starts.map_or(0, |Whole(starts)| starts);
    let (Some(start_factor), Some(temperature_factor)) = (
        din_740::start_factor(per_hour),
        ambient(cx).map_or(Some(1.0), din_740::temperature_factor),
    ) else {
        out.note("So many starts, or such heat, are beyond DIN 740-2: ask the maker.");
        return;
    };
    let shock = din_740::Shock {
        from: din_740::From::Driver,
        peak: start.driver,
        inertias: start.inertias,
        shock_factor: factor,
        start_factor,
        temperature_factor,
        load: start.load,
    };
    if let Ok(need) = din_740::shock(shock) {
        let label = "Greatest torque that rubber must bear at start";
        peak_of(cx, out, ("shock", label), need.working(), need.needed);
        if cx.file.machines.asks.load.is_none() {
            out.note("The start is taken as a medium shock (DIN 740-2); enter how the load runs.");
        }
    }
}

/// Many starts in an hour make each of them a repeated peak.
fn starts(cx: &Context, out: &mut StageBuilder) {
    let Some(Whole(starts)) = cx.file.machines.starts else { return };
    if cx.file.machines.start_torque.is_none() && cx.file.machines.peak_torque.is_none() {
        out.missing("machines.start_torque", "torque of the driver while it starts");
    }
    out.note(format!(
        "{starts} starts an hour: each is a repeated peak, held against the peak torque and not \
         against the rated one (common practice)."
    ));
}

/// The temperature of the place against the seals or the elastomer.
fn place(cx: &Context, out: &mut StageBuilder) {
    let Some(ambient) = &cx.file.machines.ambient else { return };
    let sheet = &cx.file.coupling.sheet;
    let whose = if gives(cx) == Gives::Elastomer { "the elastomer" } else { "the seals" };
    if let Some(most) = &sheet.seal_limit {
        out.number("place", "Temperature of the place", ambient.shown())
            .second(format!("limit: {whose}, from the sheet; the coupling itself runs warmer"))
            .written(WRITTEN)
            .judged(
                Limits::at_most(most.value().si()),
                "Another material, or shade it from the heat.",
            );
    } else if gives(cx) == Gives::Elastomer {
        out.missing("coupling.sheet.seal_limit", "highest temperature of the elastomer");
    }
}

/// The speed against what the sheet allows as supplied, or once it was balanced.
fn speed(cx: &Context, out: &mut StageBuilder) {
    let sheet = &cx.file.coupling.sheet;
    let Some(speed) = &cx.file.machines.speed else { return };
    let limit = |text: &Option<Measured<_>>| text.as_ref().map(Measured::value);
    let (supplied, balanced) = (limit(&sheet.max_speed), limit(&sheet.balanced_speed));
    let Ok(found) = rating::speed(speed.value(), supplied, balanced) else { return };
    let done = cx.file.coupling.balanced == Some(true);
    let (most, second) = match (supplied, balanced) {
        (_, Some(balanced)) if done => (balanced, "limit: the sheet, balanced as an assembly"),
        (Some(supplied), _) => (supplied, "limit: the sheet, as supplied"),
        (None, Some(balanced)) => (balanced, "limit: the sheet, balanced as an assembly"),
        (None, None) => {
            out.missing("coupling.sheet.max_speed", "highest speed, from the maker’s sheet");
            return;
        }
    };
    let need = found.need();
    if need == SpeedNeed::Balance && cx.file.coupling.balanced.is_none() {
        out.missing("coupling.balanced", "whether it was balanced as an assembly");
    }
    let mend = match need {
        SpeedNeed::Balance => "It must be balanced as an assembly for this speed.",
        _ => "It is too fast for this coupling: another one, or ask the maker.",
    };
    out.number("speed", "Speed", speed.shown())
        .second(second)
        .written(WRITTEN)
        .judged(Limits::at_most(most.si()), mend);
}

fn bores(cx: &Context, out: &mut StageBuilder) {
    let sheet = &cx.file.coupling.sheet;
    for end in End::BOTH {
        let Some(bore) = &cx.file.sizes.at(end).nominal else { continue };
        let driven = sheet.driven_max_bore.as_ref().filter(|_| end == End::Driven);
        let Some(most) = driven.or(sheet.max_bore.as_ref()) else {
            out.missing("coupling.sheet.max_bore", "largest bore, from the maker’s sheet");
            continue;
        };
        let label = format!("Bore, {}", cx.hub_name(end));
        out.number(&format!("{}.bore", end.key()), label, bore.shown_as(Kind::Size))
            .second("limit: the sheet, with its key")
            .written(WRITTEN)
            .judged(
                Limits::at_most(most.value().si()),
                "The hub has too little metal left; ask the maker.",
            );
    }
}

/// What is usual for these machines, while no service factor was entered.
pub(in crate::plan) fn usual_factor(cx: &Context, out: &mut StageBuilder) {
    let machines = &cx.file.machines;
    let Some(usual) = usual(&machines.driver.sort, &machines.driven.sort) else { return };
    let [least, most] = usual.factors;
    let span =
        if (least - most).abs() < 1e-9 { format!("{most}") } else { format!("{least} to {most}") };
    let what = format!("{}: {}", machines.name(End::Driven), usual.machines.join("; "));
    if machines.service_factor.is_none() {
        out.note(format!(
            "A service factor of {span} is usual for this driver and load ({what}; {}). It is not \
             used until it is entered.",
            usual.source
        ));
    } else if machines.service_factor.as_ref().is_some_and(|f| f.value().si() < least - 1e-9) {
        out.note(format!(
            "The service factor entered is below the {span} that is usual for this driver and load \
             ({what}; {}).",
            usual.source
        ));
    }
}
