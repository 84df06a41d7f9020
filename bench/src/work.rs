//! Our side of every row.

use lineup::clock::{Clock, View};
use lineup::dial::{Dial, Surface};
use lineup::position::{Observation, position};
use lineup::shims::{USUAL_MOST, pack};
use lineup::{Layout, Machine, Plane};
use mechanics::interference::hub::{Metal, PressFit, Running};
use mechanics::window::{Allowed, Demand};
use mechanics::{Slice, interference::JointError};
use quantities::{AngularVelocity, Length, Physical, Pressure, System, Torque};

use crate::{Hub, Sweep};

/// Friction between hub and shaft.
pub const FRICTION: f64 = 0.14;
/// Stress that hub and shaft may bear, Pa.
pub const ALLOWED_PA: f64 = 300e6;
/// Smallest step of the dials, m.
pub const DIVISION_M: f64 = 1e-5;
/// x of the planes that the two dials touch, m.
pub const PLANES_M: [f64; 2] = [0.12, 0.0];

fn fit(hub: &Hub, steel: Metal) -> Result<PressFit, JointError> {
    let slice = |length, outside| Slice {
        length: Length::from_si(length),
        outside: Length::from_si(outside),
    };
    let slices = [slice(hub.barrel, hub.outside), slice(hub.flange_length, hub.flange)];
    PressFit::new(Length::default(), Length::from_si(hub.joint), &slices, steel, steel)
}

/// The steel of the tables.
pub fn steel() -> Metal {
    Metal::from(&tables::materials::all()[0])
}

/// Torque that a hub holds, running; `None` where it would be loose.
pub fn torque_held(hub: &Hub, steel: Metal) -> Option<f64> {
    let speed = AngularVelocity::from_si(hub.speed);
    let running = Running { speed, ..Running::default() };
    let state = fit(hub, steel).ok()?.state(Length::from_si(hub.interference), running).ok()?;
    Some(state.torque(FRICTION).si())
}

/// Least and greatest interference of a hub for its torque; `None` where there is none.
pub fn window(hub: &Hub, steel: Metal) -> Option<[f64; 2]> {
    let demand = Demand {
        torque: Torque::from_si(hub.torque),
        safety: 1.5,
        friction: FRICTION,
        running: Running::default(),
        flattening: Length::default(),
    };
    let allowed = Pressure::from_si(ALLOWED_PA);
    let window =
        fit(hub, steel).ok()?.window(demand, Allowed { hub: allowed, shaft: allowed }).ok()?;
    Some([window.least?.interference.si(), window.greatest?.interference.si()])
}

pub(crate) fn dial(carrier: Machine, at: f64, sweep: &Sweep) -> Dial {
    let clocks = sweep.angles.iter().map(|t| Clock::from_degrees(t.to_degrees(), View::FromDriver));
    let readings = clocks.flatten().zip(sweep.readings.iter().map(|r| Length::from_si(*r)));
    let (at, division) = (Length::from_si(at), Length::from_si(DIVISION_M));
    Dial::new(carrier, carrier.other(), Surface::Rim, at, division).with(readings)
}

/// Cosine and sine of a sweep; `None` where it fixes no circle.
pub fn circle(sweep: &Sweep) -> Option<[f64; 2]> {
    let fitted = dial(Machine::Driver, PLANES_M[0], sweep).fit().ok()?;
    Some([fitted.circle.cosine, fitted.circle.sine])
}

/// Offset at the middle and slope of the driven shaft, upwards and to the right, from two rims.
pub fn placed(pair: &[Sweep; 2]) -> Option<[f64; 4]> {
    let reference = Length::from_si(f64::midpoint(PLANES_M[0], PLANES_M[1]));
    let layout = Layout { moving: Machine::Driven, reference, spool: None };
    let seen = [
        Observation::Sweep(dial(Machine::Driver, PLANES_M[0], &pair[0])),
        Observation::Sweep(dial(Machine::Driven, PLANES_M[1], &pair[1])),
    ];
    let found = position(&layout, &seen).ok()?;
    let [up, right] = Plane::BOTH.map(|plane| found.line.offset(plane, reference).value.si());
    let [climb, bear] = Plane::BOTH.map(|plane| found.line.slope(plane).value.si());
    Some([up, climb, right, bear])
}

/// How far the best pack of metric shims misses a thickness.
pub fn missed(wanted: f64) -> Option<f64> {
    let stock = tables::shims::stock(System::Metric);
    pack(Length::from_si(wanted), stock, USUAL_MOST).ok().map(|pack| pack.deviation().si().abs())
}

/// Thicknesses that the packs are made of, m.
pub fn stock() -> Vec<f64> {
    tables::shims::stock(System::Metric).iter().map(|size| size.si()).collect()
}
