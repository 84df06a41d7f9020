//! Short ways to write readings in tests.
#![allow(dead_code, reason = "each test file uses its own part of these")]
#![expect(clippy::unwrap_used, reason = "a test that cannot be set up must stop")]

use lineup::clock::{Clock, View};
use lineup::dial::{Dial, Surface};
use lineup::line::Line;
use lineup::moves::{FootPlane, moves};
use lineup::position::Position;
use lineup::sag::Sag;
use lineup::{Body, Estimate, Layout, Machine, Plane};
use quantities::{Angle, Length, Physical};

pub const IN: f64 = 25.4;
pub const MIL: f64 = 0.0254;

pub fn mm(mm: f64) -> Length {
    Length::from_si(mm * 1e-3)
}

pub fn in_mm(length: Length) -> f64 {
    length.si() * 1e3
}

pub fn mm_per_m(angle: Angle) -> f64 {
    angle.si() * 1e3
}

pub fn clock(degrees: f64) -> Clock {
    Clock::from_degrees(degrees, View::FromDriver).unwrap()
}

pub const QUARTERS: [f64; 4] = [0.0, 90.0, 180.0, 270.0];

/// A dial with readings at these degrees, all in millimetres; division 0.01 mm.
pub fn dial(
    carried_by: Body,
    touches: Body,
    surface: Surface,
    at_mm: f64,
    degrees: &[f64],
    readings_mm: &[f64],
) -> Dial {
    let readings = degrees.iter().zip(readings_mm).map(|(d, r)| (clock(*d), mm(*r)));
    let zero = degrees.first().map(|d| clock(*d));
    Dial { zero, ..Dial::new(carried_by, touches, surface, mm(at_mm), mm(0.01)) }.with(readings)
}

pub fn sag(amplitude_mm: f64) -> Sag {
    Sag { amplitude: Estimate::exact(mm(amplitude_mm)), bracket: String::new() }
}

pub fn layout(moving: Machine, reference_mm: f64) -> Layout {
    Layout { moving, reference: mm(reference_mm), spool: None }
}

/// Moves up and right at feet at these places, in millimetres, for a target of zero.
pub fn moves_mm(position: &Position, feet_mm: &[f64]) -> Vec<[f64; 2]> {
    let feet: Vec<FootPlane> = feet_mm.iter().map(|x| FootPlane::new("foot", mm(*x))).collect();
    let moves = moves(&position.line, &Line::zero(mm(0.0)), &feet).unwrap();
    moves.iter().map(|m| [in_mm(m.up().value), in_mm(m.right().value)]).collect()
}

pub fn offset_mm(position: &Position, plane: Plane, x_mm: f64) -> f64 {
    in_mm(position.offset_at(plane, mm(x_mm)).value)
}

#[track_caller]
pub fn near(found: f64, wanted: f64, tolerance: f64) {
    assert!((found - wanted).abs() <= tolerance, "{found} for {wanted} ± {tolerance}");
}
