//! Where every foot goes: the common line of the train, in shims of whole thickness.

use lineup::gains::{Change, Gain, gains};
use lineup::line::Line;
use lineup::moves::{FootPlane, moves as single_moves};
use lineup::shims::{Pack, Repack, USUAL_MOST, pack, repack};
use lineup::tolerance::{Level, Measure};
use lineup::train::{Part, Preference, TrainCoupling, TrainFoot, TrainMachine, TrainPlan, line_up};
use lineup::whole::{Proof, Stock, line_up_whole};
use lineup::{Estimate, Machine, Plane};
use quantities::{Angle, Length, Measured, Physical, Source};

use super::bench::{Member, Stand};
use super::{Context, Found, Joint};
use crate::file::Prefer;

/// Where nothing limits an offset or a slope, moves are weighed by these: a rule of our own.
const WEIGH_OFFSET_M: f64 = 0.05e-3;
const WEIGH_SLOPE: f64 = 0.5e-3;
/// A worst ratio below this is in line.
const IN_LINE: f64 = 1e-4;
/// A pack that misses its wanted height by less than this hits it, m.
const HAIR_M: f64 = 1e-8;

/// What to do at the feet of all machines that move.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Moves {
    /// The work, machine by machine from the driver's end, feet next to this job's coupling first.
    pub work: Vec<FootWork>,
    /// The moves without regard to whole shims.
    pub free: TrainPlan,
    /// The moves in whole shims, and how sure it is that nothing better can be made of the stock.
    pub whole: Option<(TrainPlan, Proof)>,
    /// What each change would gain.
    pub gains: Vec<Gain>,
    /// Most shims under one foot.
    pub most: usize,
}

/// The work at one plane of feet.
#[derive(Clone, Debug)]
pub(in crate::plan) struct FootWork {
    /// Which machine of the train.
    pub member: usize,
    /// Its foot plane.
    pub plane: FootPlane,
    /// Up, and to the right: what would bring it on the line.
    pub amount: [Estimate<Length>; 2],
    /// Where its shaft stands and where it should, where one machine alone goes to its target.
    pub exact: Option<lineup::moves::FootMove>,
    /// What the search for the least worst ratio asks of it.
    pub searched: TrainFoot,
    /// Up, in whole shims.
    pub whole: Length,
    /// What to do with the shims.
    pub packing: Packing,
}

/// What to do with the shims under each foot of a plane.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::plan) enum Packing {
    /// Nothing.
    Leave,
    /// These go on the pack that lies there.
    OnTop(Pack),
    /// The pack is made up anew of these.
    Anew(Pack),
    /// Some come out, some go in.
    Change(Repack),
    /// So much comes out; nobody said what lies there.
    TakeOut(Length),
}

impl Packing {
    /// Shims that go in.
    pub fn goes_in(&self) -> &[Length] {
        match self {
            Self::Leave | Self::TakeOut(_) => &[],
            Self::OnTop(pack) | Self::Anew(pack) => &pack.shims,
            Self::Change(repack) => &repack.put_in,
        }
    }
}

impl FootWork {
    /// Up.
    pub fn up(&self) -> Estimate<Length> {
        self.amount[0]
    }

    /// To the right.
    pub fn right(&self) -> Estimate<Length> {
        self.amount[1]
    }

    /// True where the room of the foot stops it.
    pub fn is_bound(&self, plane: Plane) -> bool {
        let amount = self.amount[usize::from(plane == Plane::Sideways)].value.si();
        let (least, greatest) = match plane {
            Plane::Vertical => {
                (self.plane.shims.map_or(f64::NEG_INFINITY, |shims| -shims.si()), f64::INFINITY)
            }
            Plane::Sideways => {
                self.plane.side_room.map_or((f64::NEG_INFINITY, f64::INFINITY), |(right, left)| {
                    (-left.si(), right.si())
                })
            }
        };
        amount - least < 1e-7 || greatest - amount < 1e-7
    }
}

/// Moves and shim packs of all machines; nothing while they are not known.
pub(in crate::plan) fn foot_work(found: &Found) -> &[FootWork] {
    found.moves.as_ref().map_or(&[], |moves| &moves.work)
}

/// The moves of a train whose couplings were read.
pub(super) fn moves(
    cx: &Context,
    members: &[Member],
    joints: &[Joint],
    own: usize,
) -> Option<Moves> {
    let train: Vec<TrainMachine> = members.iter().map(train_machine).collect();
    train.iter().find(|machine| machine.part == Part::Movable)?;
    let couplings: Vec<TrainCoupling> = joints.iter().map(train_coupling).collect();
    let preference = preference(cx);
    let free = line_up(&train, &couplings, preference).ok()?;
    let stock = stock(cx);
    let whole = line_up_whole(&train, &couplings, preference, &stock).ok();
    let whole = whole.map(|whole| (whole.plan, whole.proof));
    let gains = gains(&train, &couplings, preference).unwrap_or_default();
    let exact = exact(members, joints, own, &free);
    let mut work = Vec::new();
    for (member, machine) in members.iter().enumerate().filter(|(_, member)| member.can_move()) {
        for stand in &machine.stands {
            let of = |plan: &TrainPlan| foot_of(plan, member, stand).cloned();
            let Some(free) = of(&free) else { continue };
            let whole = whole.as_ref().and_then(|(plan, _)| of(plan));
            let exact = exact.iter().find(|exact| exact.foot.name == stand.plane.name).cloned();
            work.push(foot(member, stand, &free, whole.as_ref(), exact, &stock));
        }
    }
    Some(Moves { work, free, whole, gains, most: stock.most })
}

fn foot_of<'a>(plan: &'a TrainPlan, member: usize, stand: &Stand) -> Option<&'a TrainFoot> {
    plan.machines[member].feet.iter().find(|foot| foot.foot.name == stand.plane.name)
}

fn foot(
    member: usize,
    stand: &Stand,
    free: &TrainFoot,
    whole: Option<&TrainFoot>,
    exact: Option<lineup::moves::FootMove>,
    stock: &Stock,
) -> FootWork {
    let present = free.present.map(|present| present.plus_minus);
    let moved = [0, 1].map(|i| Estimate::new(free.amount[i], present[i]));
    let amount = exact.as_ref().map_or(moved, |exact| exact.amount);
    let wanted = whole.map_or(amount[0].value, |whole| whole.amount[0]);
    let (packing, whole) = packing(&stand.plane, wanted, stock);
    let (plane, searched) = (stand.plane.clone(), free.clone());
    FootWork { member, plane, amount, exact, searched, whole, packing }
}

/// Where one machine alone moves at this job's coupling and reaches its target, the moves follow
/// from two straight lines without a search.
fn exact(
    members: &[Member],
    joints: &[Joint],
    own: usize,
    free: &TrainPlan,
) -> Vec<lineup::moves::FootMove> {
    let joint = &joints[own];
    let mover = own + usize::from(joint.position.layout.moving == Machine::Driven);
    let alone = members.iter().enumerate().all(|(i, member)| member.can_move() == (i == mover));
    if members.len() > 2 || !alone || free.worst_ratio.iter().any(|ratio| *ratio > IN_LINE) {
        return Vec::new();
    }
    let planes = members[mover].planes();
    single_moves(&joint.position.line, &joint.target, &planes).unwrap_or_default()
}

fn train_machine(member: &Member) -> TrainMachine {
    TrainMachine {
        name: member.name.clone(),
        part: if member.can_move() { Part::Movable } else { Part::Held },
        feet: member.planes(),
        growth: member.growth.clone(),
    }
}

/// A coupling with a level for every measure that moves are weighed by.
fn train_coupling(joint: &Joint) -> TrainCoupling {
    let mut levels = joint.levels.clone();
    let has = |measure| joint.levels.iter().any(|level| level.measure == measure);
    let source = Source::common_practice("weighs moves where nothing limits them");
    if !has(Measure::FlexAngle) {
        if !has(Measure::Offset) {
            let weigh = Length::from_si(WEIGH_OFFSET_M);
            levels.extend(Level::offset("", None, Some(weigh), source));
        }
        if !has(Measure::Slope) {
            let weigh = Angle::from_si(WEIGH_SLOPE);
            levels.extend(Level::slope("", None, Some(weigh), source));
        }
    }
    TrainCoupling { position: joint.position.clone(), levels }
}

fn preference(cx: &Context) -> Preference {
    match cx.file.lineup.prefer.unwrap_or_default() {
        Prefer::LeastTotal => Preference::LeastTotal,
        Prefer::LeastGreatest => Preference::LeastGreatest,
        Prefer::RaiseOnly => Preference::RaiseOnly,
    }
}

fn stock(cx: &Context) -> Stock {
    let shims = &cx.file.lineup.shims;
    let thicknesses = if shims.stock.is_empty() {
        tables::shims::stock(cx.system_of_job()).to_vec()
    } else {
        shims.stock.iter().map(Measured::value).collect()
    };
    let most = shims.most.as_ref().map_or(USUAL_MOST, |most| whole(most.value().si()));
    Stock { thicknesses, most }
}

fn whole(number: f64) -> usize {
    (1..=8).rev().find(|n| f64::from(u8::try_from(*n).unwrap_or(1)) <= number).unwrap_or(1)
}

/// What to do with the shims for a move of so much, and what that comes to.
fn packing(foot: &FootPlane, up: Length, stock: &Stock) -> (Packing, Length) {
    let none = Length::default();
    if up.abs().si() < HAIR_M {
        return (Packing::Leave, none);
    }
    let (thicknesses, most) = (&stock.thicknesses, stock.most);
    let hits = |pack: &Pack| pack.deviation().abs().si() < HAIR_M;
    if !foot.pack.is_empty() {
        let there = foot.pack.iter().fold(none, |sum, shim| sum + *shim);
        if let Ok(change) = repack(&foot.pack, (there + up).max(none), thicknesses, most) {
            let comes_to = change.pack.total() - there;
            return (Packing::Change(change), comes_to);
        }
    }
    let on_top = (up > none).then(|| pack(up, thicknesses, most).ok()).flatten();
    let anew = foot.shims.and_then(|there| {
        let pack = pack((there + up).max(none), thicknesses, most).ok()?;
        Some((pack.total() - there, pack))
    });
    match (on_top, anew) {
        (Some(on_top), Some((_, anew))) if !hits(&on_top) && hits(&anew) => {
            (Packing::Anew(anew), up)
        }
        (Some(on_top), _) => {
            let comes_to = on_top.total();
            if comes_to.si() < HAIR_M {
                (Packing::Leave, none)
            } else {
                (Packing::OnTop(on_top), comes_to)
            }
        }
        (None, Some((comes_to, anew))) => (Packing::Anew(anew), comes_to),
        (None, None) => (Packing::TakeOut(-up), up),
    }
}

impl Moves {
    /// The plan that is carried out: whole shims where the stock allows.
    pub fn carried_out(&self) -> &TrainPlan {
        self.whole.as_ref().map_or(&self.free, |(plan, _)| plan)
    }

    /// What is left at a coupling after the moves that are carried out.
    pub fn left(&self, joint: usize) -> &Line {
        &self.carried_out().couplings[joint].deviation
    }

    /// What changes would gain in a plane.
    pub fn gains(&self, plane: Plane) -> impl Iterator<Item = &Gain> {
        self.gains.iter().filter(move |gain| gain.plane == plane)
    }

    /// How much more a foot would take to reach what it could then.
    pub fn beyond(&self, work: &FootWork, plane: Plane) -> Option<Length> {
        self.gains(plane).find_map(|gain| match &gain.change {
            Change::Room { machine, foot, beyond }
                if *machine == work.member && *foot == work.plane.name =>
            {
                Some(*beyond)
            }
            _ => None,
        })
    }
}
