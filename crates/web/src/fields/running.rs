//! The first run.

use quantities::Kind;

use super::{Face, Group, Row};

pub(super) fn groups() -> Vec<Group> {
    let velocity = Face::Quantity(Kind::Velocity);
    let warmth = Face::Quantity(Kind::Temperature);
    let rows = vec![
        Row::one("Has run for", "running.ran_for", Face::Hours),
        Row::one("Vibration, largest, r.m.s.", "running.vibration", velocity.clone()),
        Row::one("Vibration along the shaft, r.m.s.", "running.vibration_axial", velocity.clone()),
        Row::one("Outside of the coupling", "running.temperature", warmth.clone()),
        Row::one("Warmer bearing beside it", "running.bearing_temperature", warmth),
    ];
    let support = Face::choice(&[("rigid", "rigid"), ("flexible", "flexible")]);
    let hardships =
        Face::several(&["hot", "wet", "dusty", "reversing", "many starts"].map(|one| (one, one)));
    let seldom = vec![
        Row::one("Vibration before this job, r.m.s.", "running.vibration_before", velocity),
        Row::one("How the machine stands", "running.support", support),
        Row::one("What makes grease age sooner", "running.hardships", hardships),
    ];
    vec![
        Group::new("First run", "guard on before it turns", rows),
        Group::new("More of the run", "before, base, surroundings", seldom).folded(),
    ]
}
