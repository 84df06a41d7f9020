//! What to do at the feet: shims up and down, a push to one side.

use lineup::Plane;
use lineup::moves::{FootMove, FootPlane};
use lineup::shims::{Pack, USUAL_MOST, pack};
use quantities::{Kind, Length, Limits, Measured, Physical, Value};

use super::super::stage_builder::StageBuilder;
use super::{Context, Found, judge, x};

/// The work at one plane of feet.
#[derive(Clone, Debug)]
pub(in crate::plan) struct FootWork {
    /// The move that was worked out.
    pub foot: FootMove,
    /// The shims to put in, when it must go up.
    pub pack: Option<Pack>,
}

/// The foot planes of the machine that moves.
pub(super) fn planes(cx: &Context) -> Vec<FootPlane> {
    let end = cx.file.machines.moves;
    let feet = &cx.file.lineup.machine(end).feet;
    let plane = |(name, foot): (&String, &crate::file::Foot)| {
        Some(FootPlane {
            name: name.clone(),
            at: x(end, foot.at.as_ref()?.value()),
            shims: foot.shims.as_ref().map(Measured::value),
            pack: Vec::new(),
            side_room: foot.side_room.as_ref().map(|room| (room.value(), room.value())),
        })
    };
    feet.iter().filter_map(plane).collect()
}

/// Moves and shim packs, the feet next to the coupling first.
pub(in crate::plan) fn foot_work(cx: &Context, found: &Found) -> Vec<FootWork> {
    let stock = stock(cx);
    let most =
        cx.file.lineup.shims.most.as_ref().map_or(USUAL_MOST, |most| whole(most.value().si()));
    let work = found.moves.iter().map(|foot| {
        let up = foot.up().value;
        let pack = (up > Length::default()).then(|| pack(up, &stock, most).ok()).flatten();
        FootWork { foot: foot.clone(), pack }
    });
    let mut work: Vec<FootWork> = work.collect();
    work.sort_by(|a, b| a.foot.foot.at.si().abs().total_cmp(&b.foot.foot.at.si().abs()));
    work
}

fn whole(number: f64) -> usize {
    (1..=8).rev().find(|n| f64::from(u8::try_from(*n).unwrap_or(1)) <= number).unwrap_or(1)
}

fn stock(cx: &Context) -> Vec<Length> {
    let given = &cx.file.lineup.shims.stock;
    if given.is_empty() {
        return tables::shims::stock(cx.system_of_job()).to_vec();
    }
    given.iter().map(Measured::value).collect()
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, found: &Found) {
    if found.moves.is_empty() {
        let end = cx.file.machines.moves;
        for name in ["front", "rear"] {
            let place = format!("lineup.{}.feet.{name}.at", end.key());
            let what =
                format!("distance of the {name} feet of the {} from the coupling", cx.name(end));
            out.missing(&place, &what);
        }
        return;
    }
    for work in foot_work(cx, found) {
        vertical(cx, out, &work);
        sideways(out, &work);
    }
}

fn vertical(cx: &Context, out: &mut StageBuilder, work: &FootWork) {
    let (foot, name) = (&work.foot, &work.foot.foot.name);
    let up = foot.up();
    let label = if up.value.si() < 0.0 {
        format!("Lower the {name} feet")
    } else {
        format!("Raise the {name} feet")
    };
    let value = Value::new(Kind::Offset, up.value.abs()).with_plus_minus(up.plus_minus.si());
    let second = match &work.pack {
        Some(pack) => format!("put in {}", pack_words(cx, pack)),
        None if up.value.si() < 0.0 => "take shims out".to_owned(),
        None => String::new(),
    };
    let entry = out
        .number(&format!("move.{name}.{}", judge::key(Plane::Vertical)), label, value)
        .working(foot.working(Plane::Vertical))
        .second(second);
    if let Some(shims) = foot.foot.shims.filter(|_| up.value.si() < 0.0) {
        entry.judged(
            Limits::at_most(shims.si()),
            "There are not so many shims to take out. Raise the other machine, or have feet or base machined.",
        );
    }
}

fn sideways(out: &mut StageBuilder, work: &FootWork) {
    let (foot, name) = (&work.foot, &work.foot.foot.name);
    let right = foot.right();
    let way = if right.value.si() < 0.0 { "9" } else { "3" };
    let value = Value::new(Kind::Offset, right.value.abs()).with_plus_minus(right.plus_minus.si());
    let entry = out
        .number(
            &format!("move.{name}.{}", judge::key(Plane::Sideways)),
            format!("Push the {name} feet to {way}"),
            value,
        )
        .working(foot.working(Plane::Sideways))
        .second(format!(
            "a dial on the {way} o’clock side, stem against the foot, reads + as much"
        ));
    if let Some((room, _)) = foot.foot.side_room {
        entry.judged(
            Limits::at_most(room.si()),
            "The bolts bind before it is there. Open the holes, undercut the bolts, or move the other machine.",
        );
    }
}

/// "0.25 + 0.10 mm".
pub(in crate::plan) fn pack_words(cx: &Context, pack: &Pack) -> String {
    let mut shims = pack.shims.clone();
    shims.sort_by(|a, b| b.si().total_cmp(&a.si()));
    let unit = Value::new(Kind::Offset, pack.wanted).unit(cx.system);
    let shown: Vec<String> =
        shims.iter().map(|shim| Value::new(Kind::Offset, *shim).digits(cx.system)).collect();
    if shown.is_empty() { "nothing".into() } else { format!("{} {unit}", shown.join(" + ")) }
}
