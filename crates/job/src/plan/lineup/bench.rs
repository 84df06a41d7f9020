//! The machines on their bench: the two of the job, and what else stands in the train.
//!
//! One x axis runs through all of them from driver to driven, its zero in the middle of this job's
//! coupling. Machines beyond the two stand where the middles of their couplings are said to be.

use lineup::line::Line;
use lineup::moves::FootPlane;
use lineup::tolerance::Level;
use lineup::{Layout, Machine, Spool};
use quantities::{Length, Measured, Physical};

use super::{Context, growth, layout, levels};
use crate::file::{Aim, Dial, End, Foot, LineupMachine, Named, Offsets, TrainMachine};

/// A machine of the train.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Member {
    /// Where its feet are entered: "lineup.driver", "lineup.train.after.1".
    pub place: String,
    /// A short name for numbers: "driver", "after.1".
    pub key: String,
    /// "motor".
    pub name: String,
    /// True where it may be moved.
    pub moves: bool,
    /// Its foot planes, those next to this job's coupling first.
    pub stands: Vec<Stand>,
    /// What its line grows until it starts, and until it runs.
    pub states: [Line; 2],
    /// What its line grows until the state that is aimed at.
    pub growth: Line,
    /// The machine's own table, for the two of the job.
    pub table: Option<LineupMachine>,
}

/// A plane of feet.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Stand {
    /// As the job writes it.
    pub foot: Foot,
    /// Where it is and how far it can go.
    pub plane: FootPlane,
}

/// A coupling as it is set up, before anything is read.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Setup<'a> {
    /// Where its dials are entered: "lineup", "lineup.train.after.1".
    pub place: String,
    /// A short name for numbers: nothing for this job's own, "after.1".
    pub key: String,
    /// Where things are, and which machine moves.
    pub layout: Layout,
    /// The machines on both sides of it.
    pub names: [String; 2],
    pub dials: &'a Named<Dial>,
    pub typed: Option<&'a Offsets>,
    /// What it is judged by.
    pub levels: Vec<Level>,
}

impl Member {
    /// The line that its growth makes at the foot planes of a table.
    fn new(
        cx: &Context,
        place: String,
        name: &str,
        moves: bool,
        stands: Vec<Stand>,
        table: Option<LineupMachine>,
    ) -> Self {
        let key = place.strip_prefix("lineup.").unwrap_or(&place);
        let key = key.strip_prefix("train.").unwrap_or(key).to_owned();
        let states = growth::STATES.map(|state| growth::line(&stands, state));
        let growth = match cx.file.lineup.aim.unwrap_or_default() {
            Aim::Start => states[0].clone(),
            Aim::Run => states[1].clone(),
            Aim::Between => states[0].midway(&states[1]),
        };
        Self { place, key, name: name.to_owned(), moves, stands, states, growth, table }
    }

    /// Its foot planes.
    pub fn planes(&self) -> Vec<FootPlane> {
        self.stands.iter().map(|stand| stand.plane.clone()).collect()
    }

    /// True where it can be moved at its feet.
    pub fn can_move(&self) -> bool {
        self.moves && self.stands.len() > 1
    }
}

/// All machines whose place is known, from the driver's end of the train.
pub(super) fn members(cx: &Context) -> Vec<Member> {
    let train = &cx.file.lineup.train;
    let before = others(cx, "before", &train.before, -1.0);
    let after = others(cx, "after", &train.after, 1.0);
    let two = End::BOTH.map(|end| {
        let table = cx.file.lineup.machine(end);
        let moves = table.moves.unwrap_or(cx.file.machines.moves == end);
        let side = if end == End::Driver { -1.0 } else { 1.0 };
        let stands = stands(&table.feet, Length::default(), side);
        let place = format!("lineup.{}", end.key());
        Member::new(cx, place, cx.name(end), moves, stands, Some(table.clone()))
    });
    before.into_iter().rev().chain(two).chain(after).collect()
}

/// The machines on one side, the nearest first, as far as their couplings' places are known.
fn others(cx: &Context, side: &str, machines: &Named<TrainMachine>, sign: f64) -> Vec<Member> {
    let middles = middles(machines, sign);
    let member = |((number, machine), middle): ((&String, &TrainMachine), Length)| {
        let place = format!("lineup.train.{side}.{number}");
        let name = train_name(machine, side, number);
        let stands = stands(&machine.feet, middle, sign);
        Member::new(cx, place, &name, machine.moves.unwrap_or(false), stands, None)
    };
    machines.iter().zip(middles).map(member).collect()
}

fn train_name(machine: &TrainMachine, side: &str, number: &str) -> String {
    if machine.name.is_empty() {
        format!(
            "machine {number} {}",
            if side == "before" { "before the driver" } else { "after the driven one" }
        )
    } else {
        machine.name.clone()
    }
}

/// x of the couplings' middles on one side, as far as they are known without a gap.
fn middles(machines: &Named<TrainMachine>, sign: f64) -> Vec<Length> {
    let reaches =
        machines.values().map(|machine| machine.coupling_at.as_ref().map(Measured::value));
    let known = reaches.take_while(Option::is_some).flatten();
    known
        .scan(Length::default(), |middle, reach| {
            *middle += reach * sign;
            Some(*middle)
        })
        .collect()
}

fn stands(feet: &Named<Foot>, middle: Length, side: f64) -> Vec<Stand> {
    let stand = |(name, foot): (&String, &Foot)| {
        let at = middle + foot.at.as_ref()?.value() * side;
        Some(Stand { foot: foot.clone(), plane: plane(name, foot, at) })
    };
    let mut stands: Vec<Stand> = feet.iter().filter_map(stand).collect();
    stands.sort_by(|a, b| {
        (a.plane.at - middle).abs().si().total_cmp(&(b.plane.at - middle).abs().si())
    });
    stands
}

fn plane(name: &str, foot: &Foot, at: Length) -> FootPlane {
    let pack: Vec<Length> = foot.pack.iter().map(Measured::value).collect();
    let listed = pack.iter().fold(Length::default(), |sum, shim| sum + *shim);
    let whole = foot.shims.as_ref().map(Measured::value);
    let room = |own: &Option<Measured<Length>>| {
        own.as_ref().or(foot.side_room.as_ref()).map(Measured::value)
    };
    let open = Length::from_si(f64::MAX.sqrt());
    let (right, left) = (room(&foot.room_right), room(&foot.room_left));
    let bound = right.is_some() || left.is_some();
    FootPlane {
        name: name.to_owned(),
        at,
        shims: if pack.is_empty() { whole } else { Some(listed) },
        pack,
        side_room: bound.then(|| (right.unwrap_or(open), left.unwrap_or(open))),
    }
}

/// All couplings between machines whose place is known, from the driver's end of the train.
pub(super) fn setups<'a>(cx: &Context<'a>) -> Vec<Setup<'a>> {
    let train = &cx.file.lineup.train;
    let mut all = further(cx, "before", &train.before, -1.0);
    all.reverse();
    all.push(own(cx));
    all.extend(further(cx, "after", &train.after, 1.0));
    all
}

/// The coupling of the job.
pub(super) fn own<'a>(cx: &Context<'a>) -> Setup<'a> {
    let file = cx.file;
    Setup {
        place: "lineup".to_owned(),
        key: String::new(),
        layout: layout(cx),
        names: End::BOTH.map(|end| cx.name(end).to_owned()),
        dials: &file.lineup.dials,
        typed: file.lineup.typed.as_ref(),
        levels: levels(cx),
    }
}

fn further<'a>(
    cx: &Context<'a>,
    side: &str,
    machines: &'a Named<TrainMachine>,
    sign: f64,
) -> Vec<Setup<'a>> {
    let near_end = if sign < 0.0 { End::Driver } else { End::Driven };
    let mut nearer = cx.name(near_end).to_owned();
    let mut all = Vec::new();
    for ((number, machine), middle) in machines.iter().zip(middles(machines, sign)) {
        let name = train_name(machine, side, number);
        let half = machine.between_planes.as_ref().map(|length| length.value() / 2.0);
        let spool = half.filter(|half| half.si() > 0.0);
        let spool =
            spool.map(|half| Spool { driver_end: middle - half, driven_end: middle + half });
        let moving = if sign < 0.0 { Machine::Driver } else { Machine::Driven };
        let names = if sign < 0.0 {
            [name.clone(), nearer.clone()]
        } else {
            [nearer.clone(), name.clone()]
        };
        nearer = name;
        all.push(Setup {
            place: format!("lineup.train.{side}.{number}"),
            key: format!("{side}.{number}"),
            layout: Layout { moving, reference: middle, spool },
            names,
            dials: &machine.dials,
            typed: machine.typed.as_ref(),
            levels: super::judge::levels_of_train(cx, machine, spool.is_some()),
        });
    }
    all
}

impl Setup<'_> {
    /// The name of the machine at one end of it.
    pub fn name(&self, end: End) -> &str {
        &self.names[usize::from(end == End::Driven)]
    }
}
