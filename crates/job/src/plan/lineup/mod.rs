//! The line-up: from the dials as they were read to what to do at the feet.

mod aimed;
mod before;
mod bench;
mod envelope;
mod feet;
mod flange;
mod growth;
mod history;
mod judge;
mod left;
mod reached;
mod seen;
mod settle;
mod solve;
mod sweeps;
mod words;

use lineup::growth::target;
use lineup::line::Line;
use lineup::position::{Observation, Position, PositionError, position};
use lineup::tolerance::Level;
use lineup::{Estimate, Layout, Machine, Spool};
use quantities::{Length, Measured};

use super::stage_builder::StageBuilder;
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::End;

pub(super) use before::soft_foot;
pub(super) use bench::{Member, Stand};
pub(super) use feet::thickness;
pub(super) use solve::{FootWork, Moves, Packing, foot_work};

use bench::Setup;
use judge::levels;
use seen::{Seen, Sweeps, seen};

/// What the readings say.
#[derive(Clone, Debug)]
pub(super) struct Found {
    /// The machines of the train that the readings join to this job's, from the driver's end.
    pub members: Vec<Member>,
    /// The couplings between them.
    pub joints: Vec<Joint>,
    /// Which of the couplings is this job's; its driver has the same number among the machines.
    pub own: usize,
    /// What to do at the feet; `None` while no machine's feet are known.
    pub moves: Option<Moves>,
}

/// One coupling and what was found at it.
#[derive(Clone, Debug)]
pub(super) struct Joint {
    /// A short name for numbers: nothing for this job's own, "after.1".
    pub key: String,
    /// The machines on both sides of it.
    pub names: [String; 2],
    /// What its position was found from.
    pub seen: Vec<Seen>,
    /// Where the moving machine's shaft stands now, against the other's.
    pub position: Position,
    /// Where it stood before the moves, once it was read again after them.
    pub as_found: Option<Position>,
    /// True where straightedge and feelers had to help.
    pub roughed_in: bool,
    /// Where it should stand cold.
    pub target: Line,
    /// Position less target.
    pub off: Line,
    /// What it is judged by.
    pub levels: Vec<Level>,
}

impl Found {
    /// This job's coupling.
    pub fn own(&self) -> &Joint {
        &self.joints[self.own]
    }

    /// Growth of the machine that stays and of the one that moves, at this job's coupling.
    fn growths(&self) -> (&Line, &Line) {
        let at = |index: usize| &self.members[self.own + index].growth;
        if self.own().moving_end() == End::Driver { (at(1), at(0)) } else { (at(0), at(1)) }
    }

    /// The same at start (0) or running (1), whatever is aimed at.
    fn states(&self, state: usize) -> (&Line, &Line) {
        let at = |index: usize| &self.members[self.own + index].states[state];
        if self.own().moving_end() == End::Driver { (at(1), at(0)) } else { (at(0), at(1)) }
    }

    /// Where the moving shaft of this job lies against the other one when running.
    pub fn running(&self) -> Line {
        let (fixed, moving) = self.states(1);
        self.own().position.line.minus(&target(fixed, moving))
    }

    /// The one of this job's machines that its line-up is stated of.
    pub fn mover(&self) -> &Member {
        let driven = self.own().moving_end() == End::Driven;
        &self.members[self.own + usize::from(driven)]
    }
}

impl Joint {
    fn id(&self, id: &str) -> String {
        if self.key.is_empty() { id.to_owned() } else { format!("{}.{id}", self.key) }
    }

    fn moving_end(&self) -> End {
        match self.position.layout.moving {
            Machine::Driver => End::Driver,
            Machine::Driven => End::Driven,
        }
    }

    fn moving_name(&self) -> &str {
        &self.names[usize::from(self.moving_end() == End::Driven)]
    }

    fn observations(&self) -> Vec<Observation> {
        self.seen.iter().map(|seen| seen.observation.clone()).collect()
    }
}

pub(super) fn machine(end: End) -> Machine {
    match end {
        End::Driver => Machine::Driver,
        End::Driven => Machine::Driven,
    }
}

/// Where things are at this job's coupling, and which machine moves.
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

/// Positions, targets and moves; `None` while the readings do not fix this job's position.
pub(super) fn found(cx: &Context) -> Option<Found> {
    let members = bench::members(cx);
    let setups = bench::setups(cx);
    let own = setups.iter().position(|setup| setup.key.is_empty())?;
    let joint = |index: usize| {
        let setup = setups.get(index)?;
        let growths = [&members.get(index)?.growth, &members.get(index + 1)?.growth];
        joint(cx, setup, growths)
    };
    let middle = joint(own)?;
    let before = (0..own).rev().map_while(joint);
    let mut joints: Vec<Joint> = before.collect();
    joints.reverse();
    let first = own - joints.len();
    joints.push(middle);
    joints.extend((own + 1..setups.len()).map_while(joint));
    let members: Vec<Member> = members.into_iter().skip(first).take(joints.len() + 1).collect();
    let moves = solve::moves(cx, &members, &joints, own - first);
    Some(Found { members, joints, own: own - first, moves })
}

/// One coupling, when what was seen at it fixes a position.
fn joint(cx: &Context, setup: &Setup, growths: [&Line; 2]) -> Option<Joint> {
    let target = match setup.layout.moving {
        Machine::Driver => target(growths[1], growths[0]),
        Machine::Driven => target(growths[0], growths[1]),
    };
    let mut sights = seen(cx, setup, Sweeps::Found);
    let mut found = located(setup, &sights).ok();
    let rough = own_rough(cx, setup);
    let roughed_in = found.is_none() && !rough.is_empty();
    if roughed_in {
        sights.extend(rough);
        found = located(setup, &sights).ok();
    }
    let left = setup.key.is_empty().then(|| seen(cx, setup, Sweeps::Left(&cx.file.lineup.as_left)));
    let left = left.and_then(|sights| Some((located(setup, &sights).ok()?, sights)));
    let (position, as_found, seen, roughed_in) = match left {
        Some((position, seen)) => (position, found, seen, false),
        None => (found?, None, sights, roughed_in),
    };
    let off = position.line.minus(&target);
    Some(Joint {
        key: setup.key.clone(),
        names: setup.names.clone(),
        seen,
        position,
        as_found,
        roughed_in,
        target,
        off,
        levels: setup.levels.clone(),
    })
}

fn located(setup: &Setup, seen: &[Seen]) -> Result<Position, PositionError> {
    let all: Vec<Observation> = seen.iter().map(|seen| seen.observation.clone()).collect();
    position(&setup.layout, &all)
}

fn own_rough(cx: &Context, setup: &Setup) -> Vec<Seen> {
    if setup.key.is_empty() { seen::rough(setup, &cx.file.lineup.rough) } else { Vec::new() }
}

pub(super) fn stage(cx: &Context) -> StagePlan {
    let lineup = &cx.file.lineup;
    let mut out = cx.stage(Stage::Lineup, *lineup != crate::file::Lineup::default());
    let members = bench::members(cx);
    let summary = if let Some(found) = cx.lineup() {
        judge::numbers(cx, &mut out, found);
        feet::numbers(cx, &mut out, found);
        flange::numbers(cx, &mut out, found);
        reached::numbers(cx, &mut out, found);
        envelope::numbers(cx, &mut out, found);
        growth::targets(cx, &mut out, found);
        growth::states(cx, &mut out, found);
        aimed::numbers(cx, &mut out, found);
        left::numbers(cx, &mut out, found);
        words::summary(cx, found)
    } else {
        lacking(cx, &mut out);
        "not read yet".to_owned()
    };
    growth::numbers(cx, &mut out, &members);
    before::numbers(cx, &mut out, &members);
    for setup in bench::setups(cx) {
        sweeps::numbers(cx, &mut out, &setup);
    }
    train_lacks(cx, &mut out);
    history::numbers(cx, &mut out);
    out.done(summary)
}

fn lacking(cx: &Context, out: &mut StageBuilder) {
    let setup = bench::own(cx);
    let mut sights = seen(cx, &setup, Sweeps::Found);
    sights.extend(own_rough(cx, &setup));
    match located(&setup, &sights) {
        Err(PositionError::Undetermined) if !sights.is_empty() => {
            out.missing("lineup.dials", "one more dial: these leave an offset or a slope open");
            out.note("A rim dial gives the offset at its plane. A slope needs a second rim at another place, or a face.");
        }
        Err(PositionError::NoSpool(_)) => {
            out.missing(
                "coupling.sheet.sizes.between_planes",
                "distance between the flexing planes, from the maker’s sheet",
            );
        }
        Err(error) if !sights.is_empty() => {
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

/// What keeps the rest of the train out of the common line.
fn train_lacks(cx: &Context, out: &mut StageBuilder) {
    let train = &cx.file.lineup.train;
    for (side, machines) in [("before", &train.before), ("after", &train.after)] {
        for (number, machine) in machines {
            let place = format!("lineup.train.{side}.{number}");
            if machine.coupling_at.is_none() {
                out.missing(
                    &format!("{place}.coupling_at"),
                    "distance between the middles of the two couplings",
                );
            }
            if machine.dials.is_empty() && machine.typed.is_none() {
                out.missing(&format!("{place}.dials"), "the line-up at that coupling of the train");
            }
        }
    }
    let known = bench::members(cx).len();
    let joined = cx.lineup().map_or(known, |found| found.members.len());
    if joined < known {
        out.note("Part of the train was not read yet: the common line is that of the rest.");
    }
}

pub(super) fn observed(written: &Measured<Length>, usual: Length) -> Estimate<Length> {
    Estimate::new(written.value(), written.spread().unwrap_or(usual))
}

/// "raise front 0.20 mm, rear 0.35 mm; push front 0.27 mm, rear 0.45 mm to 9"; empty while the
/// moves are not known.
pub(super) fn moves_phrase(cx: &Context) -> String {
    cx.lineup().map_or_else(String::new, |found| words::moves(cx, found))
}

/// What to do with the shims under each foot; empty while nothing moves.
pub(super) fn packs_phrase(cx: &Context) -> String {
    cx.lineup().map_or_else(String::new, |found| words::packs(cx, found))
}
