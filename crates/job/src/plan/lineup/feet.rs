//! What to do at the feet: shims up and down, a push to one side.

use lineup::Plane;
use lineup::shims::Pack;
use quantities::{Kind, Length, Limits, Physical, Value, Verdict, Working};

use super::super::stage_builder::StageBuilder;
use super::judge::key;
use super::reached::room_words;
use super::{Context, FootWork, Found, Moves, Packing};

/// A move this small is none, m.
const NOTHING_M: f64 = 2e-6;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let Some(moves) = &found.moves else { return lacking(cx, out) };
    for work in &moves.work {
        vertical(cx, out, found, moves, work);
        sideways(cx, out, found, moves, work);
    }
    order(out, found, moves);
}

fn lacking(cx: &Context, out: &mut StageBuilder) {
    let end = cx.file.machines.moves;
    if cx.file.lineup.machine(end).flange.is_some() {
        return;
    }
    for name in ["front", "rear"] {
        let place = format!("lineup.{}.feet.{name}.at", end.key());
        let what = format!("distance of the {name} feet of the {} from the coupling", cx.name(end));
        out.missing(&place, &what);
    }
}

/// "move.front.up" for this job's own machine, "move.after.1.front.up" for another.
fn id(found: &Found, work: &FootWork, plane: Plane) -> String {
    let key = key(plane);
    let foot = &work.plane.name;
    let member = &found.members[work.member];
    if member.place == found.mover().place {
        format!("move.{foot}.{key}")
    } else {
        format!("move.{}.{foot}.{key}", member.key)
    }
}

/// "the front feet", "the front feet of the compressor".
pub(super) fn feet_words(found: &Found, work: &FootWork) -> String {
    let foot = &work.plane.name;
    let member = &found.members[work.member];
    if member.place == found.mover().place {
        format!("the {foot} feet")
    } else {
        format!("the {foot} feet of the {}", member.name)
    }
}

fn vertical(cx: &Context, out: &mut StageBuilder, found: &Found, moves: &Moves, work: &FootWork) {
    let up = work.up();
    let verb = if up.value.si() < 0.0 { "Lower" } else { "Raise" };
    let label = format!("{verb} {}", feet_words(found, work));
    let value = Value { si: up.value.si().abs(), ..up.shown(Kind::Offset) };
    let entry = out
        .number(&id(found, work, Plane::Vertical), label, value)
        .working(working(moves, work, Plane::Vertical))
        .second(and_then(&packing_words(cx, work), far_enough(moves, work, Plane::Vertical)));
    let shims = work.plane.shims.filter(|_| up.value.si() < 0.0);
    if bound(moves, work, Plane::Vertical) {
        let limits = Limits::at_most(shims.map_or(f64::INFINITY, Physical::si));
        let wanted = moves.beyond(work, Plane::Vertical).unwrap_or_default();
        let settle = format!(
            "It stands on its base: there is nothing left to take out. {}",
            room_words(cx, Plane::Vertical, wanted)
        );
        entry.ruled(limits, held_up(moves, Plane::Vertical), settle);
    } else if let Some(shims) = shims {
        entry.judged(Limits::at_most(shims.si()), "There are not so many shims to take out. Raise the other machine, or have feet or base machined.")
            .settled_by("With its ± it may take more shims than lie there: read the dials again, or count the pack.");
    }
}

fn sideways(cx: &Context, out: &mut StageBuilder, found: &Found, moves: &Moves, work: &FootWork) {
    let right = work.right();
    let to_nine = right.value.si() < 0.0;
    let way = if to_nine { "9" } else { "3" };
    let value = Value { si: right.value.si().abs(), ..right.shown(Kind::Offset) };
    let label = format!("Push {} to {way}", feet_words(found, work));
    let reads = Value { plus_minus: None, ..value }.digits(cx.system);
    let entry = out
        .number(&id(found, work, Plane::Sideways), label, value)
        .working(working(moves, work, Plane::Sideways))
        .second(and_then(&format!(
            "dial on the {way} o’clock side, stem against the foot: set to 0 it reads +{reads} when there; set to −{reads} it reads 0"
        ), far_enough(moves, work, Plane::Sideways)));
    let room = work.plane.side_room.map(|(right, left)| if to_nine { left } else { right });
    if bound(moves, work, Plane::Sideways) {
        let limits = Limits::at_most(room.map_or(f64::INFINITY, Physical::si));
        let wanted = moves.beyond(work, Plane::Sideways).unwrap_or_default();
        let settle = format!("Its bolts bind there. {}", room_words(cx, Plane::Sideways, wanted));
        entry.ruled(limits, held_up(moves, Plane::Sideways), settle);
    } else if let Some(room) = room {
        entry.judged(
            Limits::at_most(room.si()),
            "The bolts bind before it is there. Open the holes, undercut the bolts, or move the other machine.",
        )
        .settled_by("With its ± the bolts may bind before it is there: read the dials again, or try how far it goes.");
    }
}

/// True where the foot's room is what keeps the line from its target.
fn bound(moves: &Moves, work: &FootWork, plane: Plane) -> bool {
    work.is_bound(plane) && moves.gains(plane).next().is_some()
}

/// Outside where the room of its feet keeps a coupling outside; a foot that goes as far as it can
/// while all couplings come inside does its part.
fn held_up(moves: &Moves, plane: Plane) -> Verdict {
    let left = moves.carried_out().worst_ratio[usize::from(plane == Plane::Sideways)];
    if left > 1.0 { Verdict::Outside } else { Verdict::Inside }
}

fn far_enough(moves: &Moves, work: &FootWork, plane: Plane) -> &'static str {
    let enough = bound(moves, work, plane) && held_up(moves, plane) == Verdict::Inside;
    if enough { "as far as it goes, and far enough for every limit" } else { "" }
}

fn and_then(said: &str, more: &str) -> String {
    let said: Vec<&str> = [said, more].into_iter().filter(|said| !said.is_empty()).collect();
    said.join("; ")
}

/// How the move was found: from two straight lines where it goes to its target, from the search for
/// the least worst ratio elsewhere.
fn working(moves: &Moves, work: &FootWork, plane: Plane) -> Working {
    match &work.exact {
        Some(exact) => exact.working(plane),
        None => work.searched.working(plane, moves.free.worst_ratio),
    }
}

/// "put in 0.25 + 0.10 mm", from the base up.
pub(super) fn packing_words(cx: &Context, work: &FootWork) -> String {
    let up = work.up().value;
    let comes_to = match &work.packing {
        Packing::Leave | Packing::TakeOut(_) => String::new(),
        Packing::OnTop(pack) if pack.shims.len() == 1 => String::new(),
        _ if (work.whole - up).abs().si() < NOTHING_M => String::new(),
        _ => format!(", {} in all", shown(cx, work.whole)),
    };
    match &work.packing {
        Packing::Leave if up.abs().si() < NOTHING_M => String::new(),
        Packing::Leave => "too little for a shim: leave it".to_owned(),
        Packing::TakeOut(out) => format!("take {} out", shown(cx, *out)),
        Packing::OnTop(pack) => format!("put in {}{comes_to}", pack_words(cx, pack)),
        Packing::Anew(pack) => {
            format!("make its pack up anew: {}, from the base up{comes_to}", pack_words(cx, pack))
        }
        Packing::Change(change) => {
            let list = |shims: &[Length]| list_words(cx, shims);
            let parts = [("take out", &change.take_out), ("put in", &change.put_in)];
            let parts = parts.into_iter().filter(|(_, shims)| !shims.is_empty());
            let parts: Vec<String> =
                parts.map(|(verb, shims)| format!("{verb} {}", list(shims))).collect();
            let pack = pack_words(cx, &change.pack);
            format!("{}; then {pack} from the base up{comes_to}", parts.join(", "))
        }
    }
}

fn shown(cx: &Context, length: Length) -> String {
    Value::new(Kind::Offset, length).show(cx.system)
}

/// "0.25 + 0.05 + 0.20 mm", thin ones in the middle, from the base up.
pub(in crate::plan) fn pack_words(cx: &Context, pack: &Pack) -> String {
    list_words(cx, &pack.shims)
}

/// Thicknesses with as many decimals as their size needs.
fn list_words(cx: &Context, shims: &[Length]) -> String {
    let Some(first) = shims.first() else { return "nothing".to_owned() };
    let unit = Value::new(Kind::Offset, *first).unit(cx.system);
    let shown: Vec<String> = shims.iter().map(|shim| thickness(cx, *shim)).collect();
    format!("{} {unit}", shown.join(" + "))
}

/// "0.025" where "0.03" would be another shim.
pub(in crate::plan) fn thickness(cx: &Context, shim: Length) -> String {
    let offset = Value::new(Kind::Offset, shim);
    let unit = Kind::Offset.unit(cx.system);
    let decimals = Kind::Offset.decimals(cx.system, unit.from_si(shim.si()));
    let scale = 10_f64.powi(i32::try_from(decimals).unwrap_or(2));
    let rest = unit.from_si(shim.si()) * scale;
    if (rest - rest.round()).abs() < 0.05 {
        offset.digits(cx.system)
    } else {
        offset.with_plus_minus(shim.si() * 1e-3).digits(cx.system)
    }
}

/// In what order to move and to tighten.
fn order(out: &mut StageBuilder, found: &Found, moves: &Moves) {
    let mut names: Vec<&str> = Vec::new();
    for work in &moves.work {
        let name = found.members[work.member].name.as_str();
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let name = names.join(", then the ");
    out.note(format!(
        "Order, {name}: shims first, one plane of feet at a time, the other left tight; the same pack under both feet of a plane. Snug all bolts, read the height again."
    ));
    out.note("Then sideways, a dial at each plane of feet: push the plane with the longer way first, half of it, then the other, then the rest. Tighten crosswise in three passes with the dials watched; a reading that runs away on tightening is a foot that does not sit.");
    if let Some(proof) = proof_words(moves) {
        out.note(proof);
    }
}

fn proof_words(moves: &Moves) -> Option<String> {
    use lineup::whole::Proof;
    let (_, proof) = moves.whole.as_ref()?;
    let most = moves.most;
    Some(match proof {
        Proof::Best => format!(
            "Packs: whole shims of the stock, {most} at most under a foot, the thick ones outside. Every other choice within reach leaves a larger part of a limit used up, or as much."
        ),
        Proof::Within(gap) => format!(
            "Packs: whole shims of the stock, {most} at most under a foot, the thick ones outside. Another choice might leave up to {:.0} % of a limit less; not all of them could be tried.",
            gap * 100.0
        ),
    })
}
