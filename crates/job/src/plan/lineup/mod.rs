//! The line-up: from the dials as they were read to what to do at the feet.

mod dials;
mod feet;
mod judge;
mod words;

use lineup::growth::{PlaneGrowth, Support, growth_line, support_growth, target};
use lineup::line::Line;
use lineup::moves::{FootMove, moves};
use lineup::position::{Position, PositionError, position};
use lineup::{Estimate, Layout, Machine, Plane, Spool};
use quantities::{
    Kind, Length, Measured, Physical, TemperatureCoefficient, TemperatureInterval, Value,
};

use super::stage_builder::StageBuilder;
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::{End, Foot};

pub(super) use feet::{FootWork, foot_work};
pub(super) use judge::levels;

/// What the readings say.
#[derive(Clone, Debug)]
pub(super) struct Found {
    /// Where the moving machine's shaft stands, against the other's.
    pub position: Position,
    /// Where it should stand cold.
    pub target: Line,
    /// Position less target.
    pub off: Line,
    /// What to do at the feet of the machine that moves; empty when its feet are not known.
    pub moves: Vec<FootMove>,
}

/// `±` of a growth that was given without one, as a share of it: a rule of our own, said in the
/// plan. Temperatures of supports are rarely known better.
const GROWTH_SHARE: f64 = 0.25;

pub(super) fn machine(end: End) -> Machine {
    match end {
        End::Driver => Machine::Driver,
        End::Driven => Machine::Driven,
    }
}

/// x of a place that was measured from the middle of the coupling towards one machine.
pub(super) fn x(end: End, at: Length) -> Length {
    match end {
        End::Driver => -at,
        End::Driven => at,
    }
}

pub(super) fn layout(cx: &Context) -> Layout {
    let moving = machine(cx.file.machines.moves);
    Layout { moving, reference: Length::default(), spool: spool(cx) }
}

/// The flexing planes of a coupling with a spacer, half their distance each way from the middle.
pub(super) fn spool(cx: &Context) -> Option<Spool> {
    if !cx.has_two_planes() {
        return None;
    }
    let sheet = &cx.file.coupling.sheet;
    let sizes = &sheet.sizes;
    let distance = sizes.between_planes.as_ref().or(sizes.spacer_length.as_ref());
    let half = distance?.value() / 2.0;
    (half > Length::default()).then_some(Spool { driver_end: -half, driven_end: half })
}

/// The position, the target, the moves; `None` while the readings do not fix a position.
pub(super) fn found(cx: &Context) -> Option<Found> {
    let seen = dials::observations(cx);
    let layout = layout(cx);
    let position = position(&layout, &seen).ok()?;
    let target = target_line(cx);
    let off = position.line.minus(&target);
    let feet = feet::planes(cx);
    let moves = moves(&position.line, &target, &feet).unwrap_or_default();
    Some(Found { position, target, off, moves })
}

/// Growth of the machine that stays less growth of the one that moves.
fn target_line(cx: &Context) -> Line {
    let moves = cx.file.machines.moves;
    target(&growth(cx, moves.other()), &growth(cx, moves))
}

pub(super) fn growth(cx: &Context, end: End) -> Line {
    let feet = &cx.file.lineup.machine(end).feet;
    let planes: Vec<PlaneGrowth> = feet
        .values()
        .filter_map(|foot| {
            let at = x(end, foot.at.as_ref()?.value());
            Some(PlaneGrowth::up(at, foot_growth(foot)?))
        })
        .collect();
    growth_line(&planes).unwrap_or_else(|_| Line::zero(Length::default()))
}

/// Growth of one foot plane: measured, or worked out from height, rise and material.
fn foot_growth(foot: &Foot) -> Option<Estimate<Length>> {
    let growth = foot.growth.as_ref()?;
    if let Some(up) = &growth.up {
        let usual = up.value().abs() * GROWTH_SHARE;
        return Some(Estimate::new(up.value(), up.spread().unwrap_or(usual)));
    }
    support(foot).and_then(|support| support_growth(support).ok()).map(|grown| grown.growth)
}

fn support(foot: &Foot) -> Option<Support> {
    let growth = foot.growth.as_ref()?;
    let (height, rise) = (growth.height.as_ref()?, growth.rise.as_ref()?);
    let usual = TemperatureInterval::from_si(rise.value().si().abs() * GROWTH_SHARE);
    Some(Support {
        height: Estimate::new(height.value(), height.spread().unwrap_or_default()),
        rise: Estimate::new(rise.value(), rise.spread().unwrap_or(usual)),
        expansion: expansion(&growth.material),
    })
}

fn expansion(material: &str) -> TemperatureCoefficient {
    let known = tables::materials::material(material).or(tables::materials::material("cast iron"));
    known.map_or(TemperatureCoefficient::from_si(11e-6), |material| material.expansion)
}

pub(super) fn stage(cx: &Context) -> StagePlan {
    let lineup = &cx.file.lineup;
    let mut out = cx.stage(Stage::Lineup, *lineup != crate::file::Lineup::default());
    dials::checks(cx, &mut out);
    let summary = if let Some(found) = &cx.lineup {
        judge::numbers(cx, &mut out, found);
        feet::numbers(cx, &mut out, found);
        words::summary(cx, found)
    } else {
        lacking(cx, &mut out);
        "not read yet".to_owned()
    };
    growth_numbers(cx, &mut out);
    out.done(summary)
}

fn lacking(cx: &Context, out: &mut StageBuilder) {
    let seen = dials::observations(cx);
    match position(&layout(cx), &seen) {
        Err(PositionError::Undetermined) if !seen.is_empty() => {
            out.missing("lineup.dials", "one more dial: these leave an offset or a slope open");
            out.note("A rim dial gives the offset at its plane. A slope needs a second rim at another place, or a face.");
        }
        Err(error) if !seen.is_empty() => {
            out.note(format!("The readings give no position: {error}."));
        }
        _ => {}
    }
    for (id, label) in
        [("offset.up", "Offset, up or down"), ("offset.right", "Offset, to 3 or 9 o’clock")]
    {
        out.unmeasured(
            id,
            label,
            "lineup.dials",
            "the line-up, with dials on rim and face or on both rims",
        );
    }
}

fn growth_numbers(cx: &Context, out: &mut StageBuilder) {
    for end in End::BOTH {
        for (name, foot) in &cx.file.lineup.machine(end).feet {
            let Some(grown) = foot_growth(foot) else { continue };
            let id = format!("growth.{}.{name}", end.key());
            let label = format!("Growth of the {}, {name} feet", cx.name(end));
            let value =
                Value::new(Kind::Offset, grown.value).with_plus_minus(grown.plus_minus.si());
            let entry = out.number(&id, label, value).second("cold to running");
            if let Some(Ok(worked)) = support(foot).map(support_growth) {
                entry.working(worked.working());
            }
        }
    }
    let moving = cx.file.machines.moves;
    let aimed = target_line(cx).offset(Plane::Vertical, Length::default());
    if aimed.value.si() != 0.0 {
        let label = format!("Set the {} cold, at the coupling", cx.name(moving));
        let value = Value::new(Kind::Offset, aimed.value).with_plus_minus(aimed.plus_minus.si());
        out.number("target.up", label, value).second(
            "so that it runs in line: growth of the one less growth of the other; − is low",
        );
    }
    let none = End::BOTH.iter().all(|end| {
        cx.file.lineup.machine(*end).feet.values().all(|foot| foot_growth(foot).is_none())
    });
    if none {
        out.note("No growth was given: the machines are aimed to be in line as they stand. Hot machines move; ask for their growth.");
    }
}

pub(super) fn observed(written: &Measured<Length>, usual: Length) -> Estimate<Length> {
    Estimate::new(written.value(), written.spread().unwrap_or(usual))
}

/// "raise front 0.20 mm, rear 0.35 mm; push front 0.27 mm, rear 0.45 mm to 9"; empty while the
/// moves are not known.
pub(super) fn moves_phrase(cx: &Context) -> String {
    cx.lineup.as_ref().map_or_else(String::new, |found| words::moves(cx, found))
}
