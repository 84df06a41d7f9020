//! What the drawings of a plan need: sizes with their words, lines with their bands, zones.
//!
//! Only data, in SI; how it looks is for `figures`.

mod fit;
mod foot_map;
pub(super) mod heat;
mod holding;
mod lineup;
mod section;
mod used;
mod warmth;
mod window;

use serde::Serialize;

use super::Context;
use crate::file::End;

/// The data of all drawings; what cannot be drawn yet is left out.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Drawings {
    /// The coupling in half section.
    pub section: Option<Section>,
    /// Shaft lines, limits, feet and moves.
    pub lineup: Option<LineUp>,
    /// Sweeps of the dials, coupling by coupling.
    pub sweeps: Vec<SweepCurve>,
    /// One fit at each end that has anything to show.
    pub fits: Vec<FitZones>,
    /// The interference that would do at each end, and the classes beside it.
    pub windows: Vec<FitWindow>,
    /// Pressure along each hub that presses.
    pub pressures: Vec<HubPressure>,
    /// What each fit holds against what is needed.
    pub torques: Vec<HeldTorque>,
    /// Bolts of the circle.
    pub tightening: Option<Tightening>,
    /// Hot hubs closing on their shafts; only in a full plan.
    pub closing: Vec<Closing>,
    /// Hubs heated off; only in a full plan.
    pub pulling: Vec<Pulling>,
    /// Shares of what the coupling bears, state by state.
    pub used: Vec<UsedUp>,
    /// Angle over axial position, where both are borne at once.
    pub bears: Option<Bears>,
    /// Feet that were tried for softness, machine by machine.
    pub foot_maps: Vec<FootMap>,
    /// Temperature over the section of a hub going on; only in a full plan.
    pub warmth_on: Vec<Warmth>,
    /// Temperature over the section of a hub coming off; only in a full plan.
    pub warmth_off: Vec<Warmth>,
}

/// How a size is known, and so how it is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Known {
    /// Measured on this job.
    Measured,
    /// From sheet or drawing.
    Given,
    /// Nobody said: for the drawing only.
    Assumed,
}

/// A size as drawn and as written.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Size {
    /// Metres.
    pub si: f64,
    /// In the plan's units, without the unit.
    pub text: String,
    /// How it is known.
    pub known: Known,
}

/// The coupling.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Section {
    /// Name of the kind.
    pub kind: String,
    /// How it is built: one of the kind's forms.
    pub form: String,
    /// True when a spacer stands between the hubs.
    pub spacer: bool,
    /// Driver's half, then the driven one.
    pub halves: [Half; 2],
    /// Between the hub faces.
    pub gap: Size,
    /// Largest diameter.
    pub outside: Option<Size>,
    /// Bolts of one circle.
    pub bolts: Option<u32>,
    /// Free length of a disc pack or a diaphragm, between what holds it.
    pub pack: Option<Size>,
}

/// One half of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Half {
    /// "motor".
    pub machine: String,
    /// Shaft diameter.
    pub shaft: Size,
    /// Bore of a hollow shaft, metres.
    pub shaft_bore: Option<f64>,
    /// Length of the hub.
    pub length: Size,
    /// Outside diameter of its barrel.
    pub outside: Option<Size>,
    /// Key: height, depth of its seat in the shaft, length; metres.
    pub key: Option<[f64; 3]>,
}

/// Line-up of a train. x in metres from the middle of this job's coupling, driver to driven.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LineUp {
    /// From the driver's end.
    pub machines: Vec<Machine>,
    /// Between each two of them.
    pub couplings: Vec<Joint>,
}

/// A coupling of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Joint {
    /// Flexing planes; one and the same where it has but one.
    pub planes: [f64; 2],
    /// Where it is, as written: "0".
    pub text: String,
    /// Limit of offset (metres) and slope, where both are known.
    pub limit: Option<[f64; 2]>,
    /// Aim of offset and slope.
    pub aim: Option<[f64; 2]>,
}

/// One machine of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Machine {
    /// "motor".
    pub name: String,
    /// True where it is moved.
    pub moves: bool,
    /// Feet, next to this job's coupling first.
    pub feet: Vec<Feet>,
    /// Side view (up), view from above (to 3 o'clock), against the machine that all are lined up to;
    /// `None` for that one itself.
    pub views: Option<[View; 2]>,
}

/// A plane of feet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Feet {
    /// Its x.
    pub x: f64,
    /// Its distance from the coupling as written.
    pub text: String,
    /// Shims lie under it already.
    pub shimmed: bool,
    /// Shims that go in.
    pub goes_in: usize,
    /// Shims come out.
    pub comes_out: bool,
    /// Move up, metres, and as written; only where it moves.
    pub rise: Option<(f64, String)>,
    /// Move to 3 o'clock, metres, and as written.
    pub push: Option<(f64, String)>,
}

/// A shaft line in one view, with its 95 % band: ±√(offset² + (slope·(x − pivot))²).
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct View {
    /// Offset at x = 0, metres, and slope; as found.
    pub found: [f64; 2],
    /// Pivot (metres), ± of the offset there, ± of the slope.
    pub band: [f64; 3],
    /// Offset at x = 0 and slope; as aimed at, cold.
    pub target: [f64; 2],
    /// The same as the moves will leave it, whole shims counted; none where nothing moves. It is known as
    /// well as what was found.
    pub after: Option<[f64; 2]>,
}

/// A sweep of a dial with the curve `c + a·cos t + b·sin t` through it, in the unit that is named.
/// A stem pushed in reads more; t is clockwise from 12, looking from the driver to the driven.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SweepCurve {
    /// "motor rim, dial on the pump".
    pub name: String,
    /// "mm", "mil".
    pub unit: &'static str,
    /// Degrees and reading.
    pub readings: Vec<(f64, f64)>,
    /// c, a, b.
    pub circle: [f64; 3],
    /// ± of one reading.
    pub plus_minus: f64,
}

/// Zones and readings of one fit, as deviations from the nominal size.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FitZones {
    /// Which end.
    pub end: &'static str,
    /// "motor hub".
    pub name: String,
    /// What the heights are: "µm above 80 mm".
    pub axis: String,
    /// Bore, then shaft.
    pub parts: [FitPart; 2],
    /// Interference or clearance, as written.
    /// With its unit, its ± and its word: "0.034 mm", "± 0.003", "interference".
    pub outcome: Option<(String, String, &'static str)>,
}

/// Bore or shaft. Deviations in the axis's unit.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FitPart {
    /// "bore".
    pub name: &'static str,
    /// Lower and upper deviation, and as written.
    pub zone: Option<(f64, f64, String)>,
    /// What makes its size.
    pub readings: Vec<FitReading>,
    /// What was read with three points besides.
    pub by_three_points: Vec<FitReading>,
    /// Mean.
    pub mean: Option<f64>,
}

/// One reading, as it is at 20 °C.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FitReading {
    /// "2".
    pub station: String,
    /// From the key, clockwise.
    pub degrees: f64,
    /// Points that touch, evenly round: two or three.
    pub touches: u8,
    /// From the nominal size.
    pub deviation: f64,
    /// Its ±.
    pub plus_minus: f64,
}

/// The window of interference at one end; all in the axis's unit.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FitWindow {
    /// Which end.
    pub end: &'static str,
    /// "motor hub".
    pub name: String,
    /// "µm", "mil".
    pub unit: &'static str,
    /// The least that holds by friction alone.
    pub holds_from: Option<f64>,
    /// The greatest that hub and shaft bear.
    pub bears_to: Option<f64>,
    /// The greatest that goes on hot.
    pub goes_on_to: Option<f64>,
    /// Classes, loosest first.
    pub classes: Vec<WindowClass>,
    /// As measured: value and ±.
    pub measured: Option<(f64, f64)>,
}

/// A class beside the window.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WindowClass {
    /// "H7/p6".
    pub name: String,
    /// Its least interference.
    pub least: f64,
    /// Its greatest.
    pub greatest: f64,
    /// All of it lies in the window.
    pub inside: bool,
    /// It is the class that this job asks for.
    pub wanted: bool,
}

/// Pressure along one hub.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HubPressure {
    /// Which end.
    pub end: &'static str,
    /// "motor hub".
    pub name: String,
    /// "MPa", "psi".
    pub unit: &'static str,
    /// Slices from the face that looks at the other machine.
    pub slices: Vec<PressureSlice>,
    /// Bore of a hollow shaft, metres.
    pub shaft_bore: Option<f64>,
}

/// One slice.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PressureSlice {
    /// Length, outside and joint diameter, metres.
    pub sizes: [f64; 3],
    /// At the lower end of the interference, which may be none.
    pub least: f64,
    /// At the upper end.
    pub most: f64,
    /// That, as written: "24.1".
    pub text: String,
}

/// Torque held and needed at one end.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HeldTorque {
    /// Which end.
    pub end: &'static str,
    /// "motor hub".
    pub name: String,
    /// "N·m", "lbf·ft".
    pub unit: &'static str,
    /// From least interference and friction to most of both, and both as written.
    pub held: (f64, f64, String),
    /// What the key carries at its limit, as written.
    pub key: Option<(f64, String)>,
    /// What is asked, least first, each with its words and as written.
    pub needed: Vec<(f64, &'static str, String)>,
}

/// A circle of bolts.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Tightening {
    /// Places in order, from 1.
    pub order: Vec<usize>,
    /// True where bolts go by turns to the one hub and to the other.
    pub by_turns: bool,
    /// Share of the last torque, and as written.
    pub passes: Vec<(f64, String)>,
}

/// Least clearance of a hot hub against time. Seconds and heights in the unit that is named.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Closing {
    /// Which end.
    pub end: &'static str,
    /// "motor hub".
    pub name: String,
    /// What the heights are: "least clearance in the bore, µm".
    pub heights: String,
    /// The case that grabs first.
    pub tight: Vec<(f64, f64)>,
    /// The likely case.
    pub likely: Vec<(f64, f64)>,
    /// When the first grabs, and in words.
    pub home_by: (f64, String),
    /// When the last does, and in words.
    pub at_most: (f64, String),
}

/// Pull against time while a hub is heated off.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Pulling {
    /// Which end.
    pub end: &'static str,
    /// "motor hub".
    pub name: String,
    /// What the heights are: "pull needed, kN".
    pub heights: String,
    /// Seconds and pull, friction at its high end.
    pub pull: Vec<(f64, f64)>,
    /// What the puller at hand is good for, and in words.
    pub puller: Option<(f64, String)>,
    /// When it is open.
    pub window: Option<Opens>,
    /// When heat stops.
    pub heat_off: Option<f64>,
}

/// How much of what the coupling bears one state uses up.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct UsedUp {
    /// "running".
    pub name: &'static str,
    /// Shares of offset, angle and axial position.
    pub shares: [Option<f64>; 3],
    /// ± of their sum.
    pub plus_minus: f64,
}

/// Angle at the worse engagement over axial position, each in the unit that is named.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Bears {
    /// "angle at the worse engagement, deg".
    pub heights: String,
    /// "mm axial", from the position that it was made for.
    pub run: String,
    /// The most of either while the other is nothing.
    pub most: [f64; 2],
    /// The same at fitting, where the sheet allows less there.
    pub fitting: Option<[f64; 2]>,
    /// Where this job stands in it.
    pub states: Vec<InField>,
}

/// A state in the field of what is borne.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct InField {
    /// "cold at the start".
    pub name: &'static str,
    /// Axial and angle.
    pub at: [f64; 2],
    /// The ± of both.
    pub plus_minus: [f64; 2],
    /// True where it was read on this job, false where it was worked out.
    pub read: bool,
}

/// The feet of a machine from above, next to the coupling first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FootMap {
    /// Which end.
    pub end: &'static str,
    /// The machine.
    pub name: String,
    /// Unit of all that is written in it.
    pub unit: &'static str,
    /// Its planes of feet.
    pub planes: Vec<MapPlane>,
}

/// The feet of one plane.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MapPlane {
    /// "front".
    pub name: String,
    /// The one at 9 o'clock, the one at 3 o'clock.
    pub feet: [MapFoot; 2],
}

/// One foot.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MapFoot {
    /// Its rise as its own bolt was let go.
    pub rise: Option<String>,
    /// True where that is more than is allowed.
    pub soft: bool,
    /// Gaps at its corners: front left, front right, rear left, rear right.
    pub gaps: [Option<String>; 4],
}

/// Temperature over the half section of a hub on its shaft, moment by moment. Millimetres, along
/// the shaft from the hub's face towards the machine.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Warmth {
    /// Which end.
    pub end: &'static str,
    /// "motor hub".
    pub name: String,
    /// Diameter of the joint.
    pub bore: f64,
    /// The shaft's own bore; zero when solid.
    pub hollow: f64,
    /// Shaft behind the hub, and beyond it.
    pub shaft: [f64; 2],
    /// Length and outside diameter of each slice of the hub.
    pub slices: Vec<(f64, f64)>,
    /// The moments, in order.
    pub moments: Vec<WarmMoment>,
}

/// One moment of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WarmMoment {
    /// "17 s".
    pub at: String,
    /// "hub 96 to 131 °C, shaft 21 to 58 °C".
    pub says: String,
    /// Lines of one temperature: in words, and through which points (along, from the axis).
    pub lines: Vec<(String, Vec<(f64, f64)>)>,
}

/// While it is open.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Opens {
    /// From, seconds.
    pub from: f64,
    /// To, seconds.
    pub to: f64,
    /// "open 34 to 55 s".
    pub text: String,
}

pub(super) fn drawings(cx: &Context) -> Drawings {
    Drawings {
        section: section::section(cx),
        lineup: lineup::lineup(cx),
        sweeps: lineup::sweeps(cx),
        fits: End::BOTH.into_iter().filter_map(|end| fit::zones(cx, end)).collect(),
        windows: End::BOTH.into_iter().filter_map(|end| window::window(cx, end)).collect(),
        pressures: End::BOTH.into_iter().filter_map(|end| holding::pressure(cx, end)).collect(),
        torques: End::BOTH.into_iter().filter_map(|end| holding::torque(cx, end)).collect(),
        tightening: tightening(cx),
        closing: End::BOTH.into_iter().filter_map(|end| heat::closing(cx, end)).collect(),
        pulling: End::BOTH.into_iter().filter_map(|end| heat::pulling(cx, end)).collect(),
        used: used::used(cx),
        bears: used::bears(cx),
        foot_maps: End::BOTH.into_iter().filter_map(|end| foot_map::foot_map(cx, end)).collect(),
        warmth_on: End::BOTH.into_iter().filter_map(|end| warmth::on(cx, end)).collect(),
        warmth_off: End::BOTH.into_iter().filter_map(|end| warmth::off(cx, end)).collect(),
    }
}

fn tightening(cx: &Context) -> Option<Tightening> {
    use quantities::{Kind, Value};
    let found = cx.closeup().tightening.as_ref().filter(|found| !found.order.is_empty())?;
    let last = found.setting();
    let passes = found
        .passes
        .iter()
        .map(|torque| ((*torque / last).value, Value::new(Kind::Torque, *torque).show(cx.system)));
    let bolting = cx.kind.zip(cx.form).map(|(kind, form)| kind.close_up(form).bolts);
    let by_turns = bolting == Some(couplings::Bolting::AlternateHubs);
    Some(Tightening { order: found.order.clone(), by_turns, passes: passes.collect() })
}
