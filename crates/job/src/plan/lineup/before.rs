//! Before anything is moved: does every foot sit, is the base flat, do pipes pull, do hubs run true?

use lineup::foot::{Corner, FootFinding, FootKind, FootReadings, Twist, highest_rise, kind};
use lineup::{Estimate, Plane};
use quantities::{Kind, Length, Limits, Measured, Physical, Source, Value};
use tables::limits::{HUB_FACE_RUNOUT, HUB_RIM_RUNOUT, Limit, PIPE_STRAIN, SOFT_FOOT};

use super::super::stage_builder::StageBuilder;
use super::bench::{Member, Stand};
use super::judge::key;
use super::{Context, observed};
use crate::check::corner_key;
use crate::file::{Before, End, LineupMachine, Named, Pipe};
use crate::plan::sizes::capital;

/// ± of a rise, a gap or a runout that was read without one (common practice): a dial's division.
const DIAL_M: f64 = 0.01e-3;
const SIDES: [&str; 2] = ["left", "right"];

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, members: &[Member]) {
    state(cx, out);
    for member in members {
        feet(cx, out, member);
        if let Some(table) = &member.table {
            base(cx, out, member, table);
            runout(cx, out, member, table);
        }
    }
    for (name, pipe) in &cx.file.lineup.before.pipes {
        pipes(cx, out, name, pipe);
    }
}

/// The yes and no of base, bolts and coupling.
fn state(cx: &Context, out: &mut StageBuilder) {
    let before = &cx.file.lineup.before;
    let asked = asked(before);
    for (_, answer, mend) in asked {
        if answer == Some(false) {
            out.note(format!("Before anything is moved: {mend}"));
        }
    }
    let begun = cx.lineup().is_some();
    if let Some((key, ..)) = asked.iter().find(|(_, answer, _)| answer.is_none()).filter(|_| begun)
    {
        let open = asked.iter().filter(|(_, answer, _)| answer.is_none()).count();
        let what = if open == asked.len() {
            "anchor bolts, grout, feet, jack bolts, dowels: yes or no"
        } else {
            "the rest of anchor bolts, grout, feet, jack bolts, dowels: yes or no"
        };
        out.missing(&format!("lineup.before.{key}"), what);
    }
}

fn asked(before: &Before) -> [(&'static str, Option<bool>, &'static str); 6] {
    [
        (
            "anchors_tight",
            before.anchors_tight,
            "the anchor bolts are loose. Tighten them, and look at the grout.",
        ),
        (
            "grout_sound",
            before.grout_sound,
            "the grout sounds hollow. A base that moves holds no line-up; have it grouted.",
        ),
        ("feet_clean", before.feet_clean, "clean feet and pads of rust, paint and burrs."),
        (
            "jack_bolts_free",
            before.jack_bolts_free,
            "back the jack bolts off the feet; what they hold will spring away later.",
        ),
        ("dowels_out", before.dowels_out, "draw the dowels of the machine that moves."),
        (
            "coupling_free",
            before.coupling_free,
            "free the coupling: a made-up coupling bends both shafts.",
        ),
    ]
}

/// Whether every foot sits, and what cures one that does not.
fn feet(cx: &Context, out: &mut StageBuilder, member: &Member) {
    let limit = soft_foot(cx);
    let mut rises: Vec<(String, Length)> = Vec::new();
    for stand in &member.stands {
        for side in SIDES {
            let Some(readings) = readings(stand, side) else { continue };
            rises.push((readings.name.clone(), readings.rise.value));
            let Ok(finding) = kind(&readings, limit.most) else { continue };
            foot(cx, out, member, stand, side, &finding, &limit);
        }
    }
    let only: Vec<Length> = rises.iter().map(|(_, rise)| *rise).collect();
    let soft = |rise: &&Length| **rise > limit.most;
    if only.iter().filter(soft).count() == 1
        && let Some((index, shim)) = highest_rise(&only)
    {
        let shim = Value::new(Kind::Offset, shim).show(cx.system);
        let name = &rises[index].0;
        out.note(format!("The {name} foot of the {} rises by {shim} more than the next: without gaps taken, that is the shim to try under it.", member.name));
    }
}

/// The site's limit on the rise of a foot, or the usual one.
pub(in crate::plan) fn soft_foot(cx: &Context) -> Limit {
    let site = cx.file.lineup.limits.foot.as_ref().map(Measured::value);
    site.map_or(SOFT_FOOT, |most| Limit {
        most,
        source: Source::new("The site’s limit", "soft foot", quantities::Basis::Entered),
    })
}

fn readings(stand: &Stand, side: &str) -> Option<FootReadings> {
    let foot = &stand.foot;
    let dial = Length::from_si(DIAL_M);
    let rise = observed(foot.rise.get(side)?, dial);
    let gaps = foot.gaps.get(side).and_then(|gaps| {
        let at = |corner: Corner| gaps.get(corner_key(corner)).map(Measured::value);
        let [a, b, c, d] = Corner::ALL.map(at);
        Some([a?, b?, c?, d?])
    });
    let rise_free = foot.rise_free.get(side).map(|free| observed(free, dial));
    Some(FootReadings { name: format!("{} {side}", stand.plane.name), rise, rise_free, gaps })
}

fn foot(
    cx: &Context,
    out: &mut StageBuilder,
    member: &Member,
    stand: &Stand,
    side: &str,
    finding: &FootFinding,
    limit: &Limit,
) {
    let name = &finding.name;
    let id = format!("foot.{}.{}.{side}", member.key, stand.plane.name);
    let label = format!("Rise of the {name} foot, {}", member.name);
    out.number(&id, label, finding.rise.shown(Kind::Offset))
        .second(format!("its bolt let go, all others tight; {}", kind_words(finding.kind)))
        .written(limit.source)
        .judged(Limits::at_most(limit.most.si()), cure(cx, finding))
        .settled_by(
            "Its ± reaches over the limit: let it go again with a finer dial and read once more.",
        );
    if finding.kind == FootKind::GapsWanted {
        let place = format!("{}.feet.{}.gaps.{side}.front-left", member.place, stand.plane.name);
        out.missing(
            &place,
            &format!("gaps under the four corners of the {name} foot, {}", member.name),
        );
    }
}

fn kind_words(kind: FootKind) -> &'static str {
    match kind {
        FootKind::Sound => "it sits",
        FootKind::Parallel => "it stands off evenly",
        FootKind::Angled => "it touches at one side",
        FootKind::Springing => "it rises without a gap: its pack springs",
        FootKind::Induced => "pipes or coupling lift it",
        FootKind::GapsWanted => "the gaps under it will say why",
    }
}

fn cure(cx: &Context, finding: &FootFinding) -> String {
    let shown = |length: Length| Value::new(Kind::Offset, length).show(cx.system);
    match finding.kind {
        FootKind::Sound => String::new(),
        FootKind::Parallel => {
            let shim = finding.shim.map(shown).unwrap_or_default();
            format!("Put {shim} under the whole foot, tighten, and let it go again.")
        }
        FootKind::Angled => {
            let even = finding.shim.filter(|shim| shim.si() >= 1e-5).map(shown);
            let even =
                even.map_or_else(String::new, |even| format!("{even} under the whole foot, and "));
            format!(
                "Put {even}step or tapered shims on top: {}. Better, have foot or pad machined.",
                steps(cx, finding)
            )
        }
        FootKind::Springing => {
            "Take the pack out, clean it, and lay fewer and flatter shims.".to_owned()
        }
        FootKind::Induced => {
            "Shims are no cure. Free the pipes and the coupling, and mend the pipework.".to_owned()
        }
        FootKind::GapsWanted => {
            "Feel under its four corners with the bolt loose, and enter the gaps.".to_owned()
        }
    }
}

/// "rear left 0.20 mm, rear right 0.20 mm".
fn steps(cx: &Context, finding: &FootFinding) -> String {
    let Some(steps) = finding.steps else { return String::new() };
    let parts = Corner::ALL.into_iter().zip(steps).filter(|(_, step)| step.si() > 1e-6);
    let parts = parts.map(|(corner, step)| {
        format!("{} {}", corner.words(), Value::new(Kind::Offset, step).show(cx.system))
    });
    parts.collect::<Vec<_>>().join(", ")
}

/// Whether base and soles agree: the twist of four feet, and its cure.
fn base(cx: &Context, out: &mut StageBuilder, member: &Member, table: &LineupMachine) {
    let Some(gaps) = profile(table) else {
        if !table.pads.is_empty() {
            for corner in
                Corner::ALL.map(corner_key).into_iter().filter(|c| !table.pads.contains_key(*c))
            {
                out.missing(
                    &format!("{}.pads.{corner}", member.place),
                    &format!("height of the {} pad, {}", corner.replace('-', " "), member.name),
                );
            }
        }
        return;
    };
    let Ok(twist) = Twist::of(gaps) else { return };
    let limit = soft_foot(cx);
    let stands = twist.feet_that_stand_off().map(Corner::words).join(" or ");
    let shim = Value::new(Kind::Offset, twist.shim()).show(cx.system);
    let value = Value { si: twist.twist.value.si().abs(), ..twist.twist.shown(Kind::Offset) };
    out.number(
        &format!("base.{}", member.key),
        format!("Twist of the base under the {}", member.name),
        value,
    )
    .second("one diagonal of its pads, soles counted, less the other")
    .working(twist.working())
    .judged(
        Limits::at_most(limit.most.si()),
        format!("It rocks. Have the base machined, or put {shim} under {stands}."),
    )
    .settled_by("Its ± reaches over the limit: read the pads again with a finer level.");
}

/// Sole height less pad height at the four corners; soles that nobody measured are in one plane.
fn profile(table: &LineupMachine) -> Option<[Estimate<Length>; 4]> {
    let dial = Length::from_si(DIAL_M);
    let height = |named: &Named<Measured<Length>>, corner: Corner| {
        named.get(corner_key(corner)).map(|height| observed(height, dial))
    };
    let gap = |corner: Corner| {
        let pad = height(&table.pads, corner)?;
        let flat = Estimate::exact(Length::default());
        let sole = if table.soles.is_empty() { flat } else { height(&table.soles, corner)? };
        Some(sole.less(&pad))
    };
    let [a, b, c, d] = Corner::ALL.map(gap);
    Some([a?, b?, c?, d?])
}

/// Runout of shaft and hub.
fn runout(cx: &Context, out: &mut StageBuilder, member: &Member, table: &LineupMachine) {
    let end = if member.place == "lineup.driver" { End::Driver } else { End::Driven };
    let shaft = cx.joint_diameter(end).and_then(tables::limits::shaft_runout);
    for (what, text, limit) in [
        ("shaft", &table.runout.shaft, shaft),
        ("rim", &table.runout.rim, Some(HUB_RIM_RUNOUT)),
        ("face", &table.runout.face, Some(HUB_FACE_RUNOUT)),
    ] {
        let Some(text) = text else { continue };
        let part = if what == "shaft" { "shaft".to_owned() } else { format!("hub’s {what}") };
        let value = observed(text, Length::from_si(DIAL_M)).shown(Kind::Offset);
        let label = format!("Runout of the {}’s {part}", member.name);
        let entry = out.number(&format!("runout.{}.{what}", member.key), label, value);
        let entry = entry.second("total, turned in its own bearings");
        let source = limit.map_or(Source::common_practice("runout"), |limit| limit.source);
        let entry = entry.written(source);
        if let Some(limit) = limit {
            entry
                .judged(Limits::at_most(limit.most.si()), "Find out whether shaft, bore or hub is bent or eccentric before lining up to it.")
                .settled_by("Its ± reaches over the limit: read it again with a finer dial.");
        }
    }
}

/// Whether a pipe pulls.
fn pipes(cx: &Context, out: &mut StageBuilder, name: &str, pipe: &Pipe) {
    let site = cx.file.lineup.limits.pipes.as_ref().map(Measured::value);
    let most = site.unwrap_or(PIPE_STRAIN.most);
    let on = cx.name(pipe.on.unwrap_or(End::Driven));
    for (plane, text) in [(Plane::Vertical, &pipe.up), (Plane::Sideways, &pipe.right)] {
        let Some(text) = text else { continue };
        let value = observed(text, Length::from_si(DIAL_M)).shown(Kind::Offset);
        let value = Value { si: value.si.abs(), ..value };
        let label = format!("The {on}’s shaft as the {name} pipe was made up, {}", plane.words());
        out.number(&format!("pipe.{name}.{}", key(plane)), label, value)
            .second("at the coupling, from loose to tight")
            .written(PIPE_STRAIN.source)
            .judged(
                Limits::at_most(most.si()),
                "The pipe pulls. Loosen it, cut and fit it anew; a coupling does not carry pipework.",
            )
            .settled_by("Its ± reaches over the limit: loosen the flange, make it up and read again.");
    }
    let Some(gap) = &pipe.out_of_parallel else { return };
    let value = observed(gap, Length::from_si(DIAL_M)).shown(Kind::Offset);
    let entry = out
        .number(
            &format!("pipe.{name}.parallel"),
            capital(&format!("{name} flanges out of parallel")),
            value,
        )
        .second("widest less narrowest gap, bolts out");
    let outside = pipe.outside.as_ref().map(Measured::value);
    if let Some(limit) = outside.and_then(tables::limits::pipe_parallelism) {
        entry
            .written(limit.source)
            .judged(
                Limits::at_most(limit.most.si()),
                "Heat or cut the pipe until its flange stands square.",
            )
            .settled_by("Its ± reaches over the limit: read the gaps again with finer feelers.");
    } else {
        entry.written(PIPE_STRAIN.source);
        out.missing(
            &format!("lineup.before.pipes.{name}.outside"),
            &format!("outside diameter of the {name} flange"),
        );
    }
}
