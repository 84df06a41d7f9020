//! Grease or oil: how hard it is spun, which grade stands that, and how much goes in.

use couplings::dues::{Hardship, Service};
use couplings::duty::MANY_STARTS;
use couplings::kind::Lubrication;
use couplings::lubricant::{Amount, Charge, Ring, Throw, amount, throw};
use quantities::{
    Angle, Basis, Kind, Length, Limits, Measured, Physical, Source, Value, Whole, Working,
};
use tables::greases::{GREASES, Grease, SOURCE};

use super::super::Context;
use super::super::coupling::used;
use super::super::stage_builder::{SHEET, StageBuilder};

/// "0.34 kg of coupling grease"; empty while kind or amount are not known.
pub(in crate::plan) fn grease_words(cx: &Context) -> String {
    let sheet = &cx.file.coupling.sheet.lubricant;
    let name = sheet.name.clone().unwrap_or_default();
    let need = cx.kind.and_then(couplings::Kind::lubrication);
    let amount = match need.and_then(|need| amount(sheet, &need, &rings(cx)).ok()) {
        Some(Amount::SheetMass(mass)) => Value::new(Kind::Mass, mass).show(cx.system),
        Some(Amount::SheetVolume(volume)) => Value::new(Kind::Volume, volume).show(cx.system),
        Some(Amount::Estimate(charge)) => {
            format!("about {}", Value::new(Kind::Mass, charge.mass).show(cx.system))
        }
        Some(Amount::NotKnown) | None => String::new(),
    };
    match (amount.is_empty(), name.is_empty()) {
        (false, false) => format!("{amount} of {name}"),
        (false, true) => amount,
        (true, _) => name,
    }
}

/// Rings of free space that were measured in full.
fn rings(cx: &Context) -> Vec<Ring> {
    let rooms = cx.file.closeup.rooms.values();
    rooms
        .filter_map(|room| {
            Some(Ring {
                inside: room.inside.as_ref().map_or_else(Length::default, Measured::value),
                outside: room.outside.as_ref()?.value(),
                length: room.length.as_ref()?.value(),
            })
        })
        .collect()
}

/// What the coupling runs in, for its intervals.
pub(in crate::plan) fn service(cx: &Context) -> Service {
    Service {
        level: spun(cx).map(|(throw, _)| throw.level),
        grease: named_grade(cx),
        hardships: hardships(cx),
    }
}

/// What was entered, and what follows from the duty by itself.
fn hardships(cx: &Context) -> Vec<Hardship> {
    let machines = &cx.file.machines;
    let said = cx.file.running.hardships.iter().filter_map(|name| Hardship::of(name));
    let mut found: Vec<Hardship> = said.collect();
    let hot = machines.ambient.as_ref().is_some_and(|at| at.value().si() > HOT_K);
    for (holds, hardship) in [
        (hot || machines.asks.hot_place == Some(true), Hardship::Hot),
        (machines.reversing == Some(true), Hardship::Reversing),
        (machines.starts.is_some_and(|Whole(starts)| starts > MANY_STARTS), Hardship::ManyStarts),
    ] {
        if holds && !found.contains(&hardship) {
            found.push(hardship);
        }
    }
    found
}

/// Above this place grease and rubber age sooner: 80 °C, common practice.
const HOT_K: f64 = 353.15;

/// The grade that the sheet, or whoever filled it, names.
fn named_grade(cx: &Context) -> Option<&'static Grease> {
    let sheet = cx.file.coupling.sheet.lubricant.name.as_deref().unwrap_or_default();
    let used = cx.file.closeup.grease_used.as_str();
    let name = if used.is_empty() { sheet } else { used }.to_uppercase();
    GREASES.iter().find(|grease| name.contains(grease.grade))
}

/// How hard the grease is spun, at the teeth or grid; else at the rim, which is the most.
fn spun(cx: &Context) -> Option<(Throw, &'static str)> {
    cx.kind?.lubrication()?;
    let sizes = &cx.file.coupling.sheet.sizes;
    let speed = cx.file.machines.speed.as_ref()?.value();
    let pitch = sizes.pitch_diameter.as_ref().map(|size| (size, "at the teeth or grid"));
    let rim = sizes.flange_outside.as_ref().map(|size| (size, "at the rim, which is the most"));
    let (diameter, place) = pitch.or(rim)?;
    Some((throw(diameter.value() / 2.0, speed).ok()?, place))
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    let Some(kind) = cx.kind else { return };
    let Some(need) = kind.lubrication() else {
        out.note("No grease: this kind runs dry.");
        let used = &cx.file.closeup.grease_used;
        if !used.is_empty() {
            out.note(format!("Entered: grease used, {used}. This kind takes none: clean it out."));
        }
        return;
    };
    if cx.file.coupling.sheet.lubricant.name.is_none() {
        out.missing("coupling.sheet.lubricant.name", "grease or oil, from the maker’s sheet");
    }
    filling(cx, out, &need);
    grade(cx, out);
    out.note(format!("What it wants ({}): {}", need.source, need.what));
    out.note(need.hand_pack);
    out.note(need.fill);
    out.note(format!("Never: {}", need.never));
}

fn filling(cx: &Context, out: &mut StageBuilder, need: &Lubrication) {
    match amount(&cx.file.coupling.sheet.lubricant, need, &rings(cx)) {
        Ok(Amount::SheetMass(mass)) => {
            out.number("grease", "Grease, whole coupling", Value::new(Kind::Mass, mass))
                .second("from the sheet")
                .written(SHEET);
        }
        Ok(Amount::SheetVolume(volume)) => {
            out.number("grease", "Grease, whole coupling", Value::new(Kind::Volume, volume))
                .second("from the sheet")
                .written(SHEET);
        }
        Ok(Amount::Estimate(charge)) => estimate(out, &charge, need),
        Ok(Amount::NotKnown) => {
            out.missing(
                "coupling.sheet.lubricant.mass",
                "amount of grease, from the maker’s sheet, or the free rings inside measured",
            );
            out.note("Without an amount: pump until clean grease shows at the opposite plug.");
        }
        Err(error) => out.note(format!("The free rings give no filling: {error}.")),
    }
}

fn estimate(out: &mut StageBuilder, charge: &Charge, need: &Lubrication) {
    let [low, high] = need.fill_share.map(|share| share * 100.0);
    out.number("grease", "Grease, by the free space", Value::new(Kind::Mass, charge.mass))
        .second(format!("{low:.0} to {high:.0} % of the free rings measured; the middle taken"))
        .working(charge.working());
    out.number("grease.volume", "Its volume", Value::new(Kind::Volume, charge.volume))
        .second("teeth, bolts and grid that stand in the rings are not taken out")
        .working(charge.volume_working());
}

/// The grade that stands the spin, and what it is made for.
fn grade(cx: &Context, out: &mut StageBuilder) {
    let Some((throw, place)) = spun(cx) else {
        out.missing(
            "coupling.sheet.sizes.pitch_diameter",
            "pitch diameter of teeth or grid, from the maker’s sheet",
        );
        return;
    };
    out.number("spin", "Times gravity that the grease feels", Value::number(throw.level))
        .second(place)
        .working(throw.working());
    let angle = used::running_angle(cx);
    let at = angle.map(|angle| throw.grade_at(angle.value));
    let Some(grease) = at.unwrap_or_else(|| throw.grade()) else { return };
    if let Some(angle) = angle {
        let most = Angle::from_si(grease.misalignment_deg.to_radians());
        let value = angle.shown(Kind::Degrees);
        let source = Source::new("the line-up as read, running", "", Basis::Computed);
        let working = Working::new("Angle at one engagement", "a = w", value, source).term(
            "w",
            "the worse one",
            value,
        );
        out.number("mesh_angle", "Angle at one engagement, for the grease", value)
            .second(format!("limit: what grease of grade {} is made for ({SOURCE})", grease.grade))
            .working(working)
            .judged(
                Limits::at_most(most.si()),
                "Line up closer: no grade of coupling grease is made for so much angle at this speed.",
            );
    }
    let separation = grease.separation_percent_24h.map_or_else(String::new, |most| {
        format!(", at most {most} % of its oil parted in 24 h of the spinning test")
    });
    out.note(format!(
        "Grade for that: {}, {}; base oil of at least {} mm²/s at 40 °C, NLGI {} to {}{separation}; \
         up to {}° at a mesh; regreased after {} months at most, and sooner where what falls due \
         under Running says so ({SOURCE}). The maker’s choice comes first.",
        grease.grade,
        grease.purpose,
        grease.base_oil_mm2_s,
        grease.nlgi.0,
        grease.nlgi.1,
        grease.misalignment_deg,
        grease.interval_months,
    ));
    if named_grade(cx).is_some_and(|named| named.grade != grease.grade) {
        out.note("The grease named is of another grade than this: ask whoever chose it.");
    }
}
