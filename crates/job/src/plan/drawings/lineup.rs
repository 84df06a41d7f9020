//! The line-up sheet: lines, bands, limits, feet and moves.

use ::lineup::dial::Dial;
use ::lineup::growth::{PlaneGrowth, growth_line};
use ::lineup::line::Line;
use ::lineup::position::Observation;
use ::lineup::tolerance::{Level, Measure};
use ::lineup::{Estimate, Machine as Side, Plane};
use quantities::{Kind, Length, Physical, Value};

use super::super::Context;
use super::super::lineup::{FootWork, Found, Joint as FoundJoint, Packing, foot_work};
use super::{Feet, Joint, LineUp, Machine, SweepCurve, View};

pub(super) fn lineup(cx: &Context) -> Option<LineUp> {
    let found = cx.lineup()?;
    let datum = datum(found);
    let present = present(found, datum);
    let machine = |(index, member): (usize, &super::super::lineup::Member)| {
        let work: Vec<&FootWork> =
            foot_work(found).iter().filter(|work| work.member == index).collect();
        let stays = index == datum && work.is_empty();
        let line = &present[index];
        let target = target(found, index, line, &work);
        let mut feet: Vec<Feet> =
            member.stands.iter().map(|stand| feet(cx, stand, &work)).collect();
        feet.sort_by(|a, b| a.x.abs().total_cmp(&b.x.abs()));
        Machine {
            name: member.name.clone(),
            moves: !work.is_empty() || (member.moves && index != datum),
            feet,
            views: (!stays).then(|| {
                let after = after(found, index, line);
                Plane::BOTH.map(|plane| view(line, &target, after.as_ref(), plane))
            }),
        }
    };
    Some(LineUp {
        machines: found.members.iter().enumerate().map(machine).collect(),
        couplings: found.joints.iter().map(|joint| coupling(cx, joint)).collect(),
    })
}

/// Every sweep that the line-up was found from.
pub(super) fn sweeps(cx: &Context) -> Vec<SweepCurve> {
    let found = cx.lineup().into_iter().flat_map(|found| &found.joints);
    let seen = found.flat_map(|joint| &joint.seen);
    seen.filter_map(|seen| match &seen.observation {
        Observation::Sweep(dial) => sweep(cx, &seen.what, dial),
        _ => None,
    })
    .collect()
}

fn sweep(cx: &Context, name: &str, dial: &Dial) -> Option<SweepCurve> {
    let circle = dial.fit().ok()?.circle;
    let unit = Kind::Offset.unit(cx.system);
    let shown = |si: f64| unit.from_si(si);
    let coefficients = [circle.constant, circle.cosine, circle.sine];
    let places = dial.all_readings().into_iter().map(|reading| reading.clock.degrees());
    let reading = |(degrees, off): (f64, &f64)| {
        let (sin, cos) = degrees.to_radians().sin_cos();
        (degrees, shown(circle.constant + circle.cosine * cos + circle.sine * sin + off))
    };
    Some(SweepCurve {
        name: name.to_owned(),
        unit: unit.name(),
        readings: places.zip(&circle.residuals).map(reading).collect(),
        circle: coefficients.map(shown),
        plus_minus: shown(2.0 * dial.standard_uncertainty()),
    })
}

/// The machine that all others are drawn against: the one that stays at this job's coupling.
fn datum(found: &Found) -> usize {
    found.own + usize::from(found.own().position.layout.moving == Side::Driver)
}

/// Every machine's line as it lies, against the datum's.
fn present(found: &Found, datum: usize) -> Vec<Line> {
    let step = |joint: &FoundJoint| match joint.position.layout.moving {
        Side::Driven => joint.position.line.clone(),
        Side::Driver => joint.position.line.negated(),
    };
    let mut lines = vec![Line::zero(Length::default()); found.members.len()];
    for i in datum..found.joints.len() {
        lines[i + 1] = lines[i].plus(&step(&found.joints[i]));
    }
    for i in (0..datum).rev() {
        lines[i] = lines[i + 1].minus(&step(&found.joints[i]));
    }
    lines
}

/// Where a machine is to lie, cold: at this job's coupling as it is aimed, elsewhere where its moves
/// bring it.
fn target(found: &Found, index: usize, present: &Line, work: &[&FootWork]) -> Line {
    let joint = found.own();
    let alone = found.members.len() == 2 && foot_work(found).iter().all(|w| w.member == index);
    if alone && index != datum(found) {
        return joint.target.clone();
    }
    let planes: Vec<PlaneGrowth> = work
        .iter()
        .map(|work| PlaneGrowth {
            at: work.plane.at,
            up: Estimate::exact(work.up().value),
            right: Estimate::exact(work.right().value),
        })
        .collect();
    growth_line(&planes).map_or_else(|_| present.clone(), |shift| present.plus(&shift))
}

/// Where the moves that are carried out will leave a machine, cold.
fn after(found: &Found, index: usize, present: &Line) -> Option<Line> {
    let machine = &found.moves.as_ref()?.carried_out().machines[index];
    let planes: Vec<PlaneGrowth> = machine
        .feet
        .iter()
        .map(|foot| {
            let [up, right] = foot.amount.map(Estimate::exact);
            PlaneGrowth { at: foot.foot.at, up, right }
        })
        .collect();
    let moves =
        planes.iter().any(|plane| plane.up.value.si() != 0.0 || plane.right.value.si() != 0.0);
    moves.then(|| growth_line(&planes).ok()).flatten().map(|shift| present.plus(&shift))
}

fn view(line: &Line, target: &Line, after: Option<&Line>, plane: Plane) -> View {
    let centre = Length::default();
    let at_centre =
        |line: &Line| [line.offset(plane, centre).value.si(), line.slope(plane).value.si()];
    let (found, target, after) = (at_centre(line), at_centre(target), after.map(at_centre));
    View { found, band: band(line, plane), target, after }
}

/// Where the line is known best, how well there, and how well its slope: from the ± at three
/// places, since the square of the ± is a parabola along x.
fn band(line: &Line, plane: Plane) -> [f64; 3] {
    let square = |x: f64| line.offset(plane, Length::from_si(x)).plus_minus.si().powi(2);
    let (left, middle, right) = (square(-1.0), square(0.0), square(1.0));
    let curve = f64::midpoint(left, right) - middle;
    if curve <= 0.0 {
        return [0.0, middle.max(0.0).sqrt(), 0.0];
    }
    let pivot = (left - right) / (4.0 * curve);
    [pivot, (middle - curve * pivot * pivot).max(0.0).sqrt(), curve.sqrt()]
}

fn coupling(cx: &Context, joint: &FoundJoint) -> Joint {
    let layout = &joint.position.layout;
    let middle = layout.reference.si();
    let planes =
        layout.spool.map_or([middle; 2], |spool| [spool.driver_end.si(), spool.driven_end.si()]);
    Joint {
        planes,
        text: plain(cx, layout.reference.abs()),
        limit: wedge(&joint.levels, planes, Level::limit),
        aim: wedge(&joint.levels, planes, Level::aim),
    }
}

/// Offset and slope allowed at a flexing plane. With a spacer the slope alone is limited: the
/// offset at one plane is what the slope makes over the distance between them.
fn wedge(levels: &[Level], planes: [f64; 2], of: fn(&Level) -> Option<Value>) -> Option<[f64; 2]> {
    let strictest = |measure| {
        let with = levels.iter().filter(|level| level.measure == measure);
        with.filter_map(of).map(|value| value.si).reduce(f64::min)
    };
    let length = planes[1] - planes[0];
    if length > 0.0 {
        return strictest(Measure::FlexAngle).map(|slope| [slope * length, slope]);
    }
    Some([strictest(Measure::Offset)?, strictest(Measure::Slope)?])
}

fn feet(cx: &Context, stand: &super::super::lineup::Stand, work: &[&FootWork]) -> Feet {
    let plane = &stand.plane;
    let here = work.iter().find(|work| work.plane.name == plane.name);
    let packing = here.map(|work| &work.packing);
    let comes_out = match packing {
        Some(Packing::TakeOut(_) | Packing::Anew(_)) => true,
        Some(Packing::Change(change)) => !change.take_out.is_empty(),
        _ => false,
    };
    let at = stand.foot.at.as_ref().map_or(plane.at, quantities::Measured::value);
    Feet {
        x: plane.at.si(),
        text: plain(cx, at),
        shimmed: plane.shims.is_some_and(|shims| shims > Length::default()),
        goes_in: packing.map_or(0, |packing| packing.goes_in().len()),
        comes_out,
        rise: here.map(|work| rise(cx, work)),
        push: here.map(|work| push(cx, work)),
    }
}

fn plain(cx: &Context, at: Length) -> String {
    let digits = Value::new(Kind::Length, at).digits(cx.system);
    let short = digits.trim_end_matches('0').trim_end_matches('.');
    if digits.contains('.') { short.to_owned() } else { digits }
}

/// "+0.35".
fn rise(cx: &Context, work: &FootWork) -> (f64, String) {
    let up = work.up().value;
    let sign = if up.si() < 0.0 { "" } else { "+" };
    (up.si(), format!("{sign}{}", Value::new(Kind::Offset, up).digits(cx.system)))
}

/// "0.45 to 9".
fn push(cx: &Context, work: &FootWork) -> (f64, String) {
    let right = work.right().value;
    let way = if right.si() < 0.0 { "9" } else { "3" };
    (right.si(), format!("{} to {way}", Value::new(Kind::Offset, right.abs()).digits(cx.system)))
}
