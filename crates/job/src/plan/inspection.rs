//! As found: what was seen and measured when the coupling was opened, what likely did it, and
//! whether it goes back.

use couplings::kind::{Finding, GoesBack, Measure, Planes, common_findings};
use couplings::wear::{self, Fate, Worn, off_centre};
use quantities::{Basis, Kind, Length, Limits, Measured, Physical, Source, Time, Value, Working};

use super::Context;
use super::stage_builder::{StageBuilder, WRITTEN};
use crate::file::Inspection;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    if cx.file.inspection == Inspection::default() {
        return;
    }
    seen(cx, out);
    for measure in cx.kind.map_or(&[][..], couplings::Kind::wears) {
        worn(cx, out, *measure);
    }
    elsewhere(cx, out);
    hanging(cx, out);
    if !cx.file.inspection.note.is_empty() {
        out.note(format!("Seen besides: {}", cx.file.inspection.note));
    }
}

/// Every finding that was ticked, with its causes, what to check and what to do.
fn seen(cx: &Context, out: &mut StageBuilder) {
    let Some(kind) = cx.kind else { return };
    let ticked = &cx.file.inspection.seen;
    let all = kind.findings().iter().chain(common_findings());
    let found: Vec<&Finding> = all.filter(|one| ticked.iter().any(|id| id == one.id)).collect();
    for finding in &found {
        out.note(format!(
            "As found: {}. Likely: {}. Check next: {}. Before it goes back: {} ({}).",
            finding.seen,
            finding.causes.join("; "),
            finding.check.join("; "),
            finding.mend.join("; "),
            finding.source
        ));
    }
    let renew: Vec<&&Finding> =
        found.iter().filter(|finding| finding.goes_back == GoesBack::No).collect();
    if let Some(first) = renew.first() {
        let count = Value::count(u32::try_from(renew.len()).unwrap_or(u32::MAX));
        let mend: Vec<&str> = renew.iter().map(|finding| finding.mend[0]).collect();
        out.number("found.renew", "Findings that rule out its use again", count)
            .second(format!("first: {}", first.seen))
            .working(count_working(count))
            .key()
            .judged(Limits::at_most(0.0), format!("{}.", super::sizes::capital(&mend.join("; "))));
    }
}

fn count_working(count: Value) -> Working {
    let source = Source::new("what was seen on this job", "", Basis::Entered);
    Working::new("Findings that rule out its use again", "n = s", count, source).term(
        "s",
        "findings seen that mean renewal",
        count,
    )
}

/// One measure of wear against its limit; asked for once the coupling is open.
fn worn(cx: &Context, out: &mut StageBuilder, measure: Measure) {
    let found = &cx.file.inspection;
    let limits = &cx.file.coupling.sheet.wear;
    let (id, place, what) = names(measure);
    let read = match measure {
        Measure::Pack => return packs(cx, out),
        Measure::Backlash => found.backlash.as_ref().map(|read| wear::backlash(read, limits)),
        Measure::Tooth => found.tooth.as_ref().map(|read| wear::tooth(read, limits)),
        Measure::Element => {
            let new = cx.file.coupling.sheet.sizes.element_thickness.as_ref();
            found.element.as_ref().map(|read| wear::element(read, limits, new))
        }
        Measure::Stretch => found.stretch.as_ref().map(|read| wear::stretch(read, limits)),
    };
    match read {
        Some(read) => judged(cx, out, id, &read),
        None => out.missing(place, what),
    }
}

/// Readings of wear that this kind does not have.
fn elsewhere(cx: &Context, out: &mut StageBuilder) {
    let Some(kind) = cx.kind else { return };
    let found = &cx.file.inspection;
    let text = |read: &Option<Measured<Length>>| read.as_ref().map(|read| read.text().to_owned());
    let stretch = found.stretch.as_ref().map(|read| read.text().to_owned());
    let packs: Vec<&str> = found.packs.values().map(Measured::text).collect();
    let packs = Some(packs.join(", ")).filter(|packs| !packs.is_empty());
    for (measure, read) in [
        (Measure::Backlash, text(&found.backlash)),
        (Measure::Tooth, text(&found.tooth)),
        (Measure::Element, text(&found.element)),
        (Measure::Stretch, stretch),
        (Measure::Pack, packs),
    ] {
        let Some(read) = read.filter(|_| !kind.wears().contains(&measure)) else { continue };
        let (_, _, what) = names(measure);
        out.note(format!(
            "Entered: {what}, {read}. A coupling of this kind, {}, has no such wear: look which \
             reading it was.",
            kind.name()
        ));
    }
}

fn names(measure: Measure) -> (&'static str, &'static str, &'static str) {
    match measure {
        Measure::Backlash => {
            ("found.backlash", "inspection.backlash", "backlash along the pitch circle, as found")
        }
        Measure::Tooth => ("found.tooth", "inspection.tooth", "wear of teeth or grooves, as found"),
        Measure::Element => {
            ("found.element", "inspection.element", "least thickness of the elastomer, as found")
        }
        Measure::Stretch => {
            ("found.stretch", "inspection.stretch", "stretch of the chain, as found")
        }
        Measure::Pack => ("found.pack", "inspection.packs", "free length of each pack, as found"),
    }
}

fn judged(cx: &Context, out: &mut StageBuilder, id: &str, worn: &Worn) {
    let label = super::sizes::capital(worn.what);
    let second = match worn.fate() {
        Fate::Reuse => "goes back",
        Fate::MeasureAgain => "measure again, or renew",
        Fate::Renew => "renew",
        Fate::NoLimit => "no limit is held: the maker has it",
    };
    let entry = out
        .number(id, format!("{label}, as found"), worn.measured)
        .second(format!("{second} ({})", worn.source))
        .written(WRITTEN);
    let Some(limit) = &worn.limit else {
        if let Some(place) = limit_place(id) {
            out.missing(place, &format!("limit of {}, from the maker’s sheet", worn.what));
        }
        return;
    };
    let limits = match worn.wears {
        wear::Wears::Up => Limits::at_most(limit.si),
        wear::Wears::Down => Limits::at_least(limit.si),
    };
    entry
        .judged(limits, "Renew: worn parts of a pair together.")
        .settled_by("Its ± reaches over the limit: read it again at other places, or renew.");
    if let Some(working) = worn.limit_working() {
        out.number(&format!("{id}.limit"), working.name.clone(), working.result).working(working);
    }
    pace(cx, out, id, worn);
}

fn limit_place(id: &str) -> Option<&'static str> {
    match id {
        "found.backlash" => Some("coupling.sheet.wear.backlash"),
        "found.tooth" => Some("coupling.sheet.wear.tooth"),
        "found.element" => Some("coupling.sheet.wear.element"),
        "found.stretch" => Some("coupling.sheet.wear.stretch"),
        _ => None,
    }
}

/// How long it has left at the pace so far.
fn pace(cx: &Context, out: &mut StageBuilder, id: &str, worn: &Worn) {
    let Some(served) = in_service(cx) else {
        out.missing("inspection.in_service", "time in service so far");
        return;
    };
    if worn.new.is_none() && id == "found.element" {
        let what = "thickness of a new element, from the maker’s sheet";
        out.missing("coupling.sheet.sizes.element_thickness", what);
    }
    let Some(left) = worn.time_left(served) else { return };
    let label = format!("Left at this pace, {}", worn.what);
    out.number(&format!("{id}.left"), label, Value::new(Kind::Days, left.left))
        .second("a straight line from new to now: look again well before")
        .working(left.working());
}

/// As entered, else from the day it was closed up to the day it was opened.
fn in_service(cx: &Context) -> Option<Time> {
    let found = &cx.file.inspection;
    if let Some(entered) = &found.in_service {
        return Some(entered.value());
    }
    let days = found.opened?.days_since(cx.file.closeup.closed?)?;
    let days = u32::try_from(days).ok().filter(|days| *days > 0)?;
    Some(Time::from_si(f64::from(days) * 86_400.0))
}

/// Free length of the packs off the coupling, against new.
fn packs(cx: &Context, out: &mut StageBuilder) {
    let (_, place, what) = names(Measure::Pack);
    let sheet = &cx.file.coupling.sheet;
    if cx.file.inspection.packs.is_empty() {
        out.missing(place, what);
        return;
    }
    let packs = match cx.form.map(|form| form.planes) {
        Some(Planes::Two) => 2,
        _ => 1,
    };
    let limit = wear::pack_limit(sheet, packs);
    let new = sheet.sizes.pack_thickness.as_ref().map(Measured::value);
    if new.is_none() {
        let place = "coupling.sheet.sizes.pack_thickness";
        out.missing(place, "free length of a new pack, from the maker’s sheet");
    }
    if limit.is_none() {
        let what = "what a pack may set by, or the axial allowance, from the maker’s sheet";
        out.missing("coupling.sheet.wear.pack", what);
    }
    let Some((new, limit)) = new.zip(limit) else { return };
    for (name, read) in &cx.file.inspection.packs {
        let worn = wear::pack(read, new, limit);
        let source = Source::common_practice("free length of a pack off the coupling against new");
        let working = Working::new("Set of the pack", "s = |m − n|", worn.measured, source)
            .term("m", "free length as found", read.shown_as(Kind::Gap))
            .term("n", "when new", Value::new(Kind::Gap, new));
        pack(out, name, &worn, working);
    }
    if let Some(working) = limit.working() {
        out.number("found.pack_limit", working.name.clone(), working.result).working(working);
    }
}

fn pack(out: &mut StageBuilder, name: &str, worn: &Worn, working: Working) {
    let (Some(limit), measured) = (&worn.limit, worn.measured) else { return };
    out.number(&format!("found.pack.{name}"), format!("Set of the pack, {name}"), measured)
        .second(format!("limit: {}", worn.source))
        .working(working)
        .judged(Limits::at_most(limit.si), "A pack that has set is renewed with bolts and nuts.");
}

/// What a sleeve or spacer that hangs on worn teeth throws.
fn hanging(cx: &Context, out: &mut StageBuilder) {
    let Some(shift) = &cx.file.inspection.off_centre else { return };
    let masses = &cx.file.coupling.sheet.masses;
    let mass = masses.spacer.as_ref().or(masses.sleeve.as_ref()).map(Measured::value);
    let speed = cx.file.machines.speed.as_ref().map(Measured::value);
    let Some((mass, speed)) = mass.zip(speed) else {
        out.missing("coupling.sheet.masses.sleeve", "mass of the sleeve or spacer that hangs");
        return;
    };
    let found = off_centre(mass, shift.value(), speed);
    out.number(
        "found.throws",
        "Force that turns with what hangs off centre",
        Value::new(Kind::Force, found.force),
    )
    .second(format!(
        "{} off centre, {} a second of balance quality",
        Value::new(Kind::Offset, found.shift).show(cx.system),
        Value::new(Kind::Length, Length::from_si(found.quality.si())).show(cx.system)
    ))
    .working(found.working());
}
