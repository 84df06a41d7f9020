//! What the coupling bears at once, and how much of it each state uses up.

use couplings::envelope::shares;
use quantities::{Kind, Physical};

use super::super::Context;
use super::super::coupling::used::asked_and_borne;
use super::{Bears, InField, UsedUp};

/// Line-up and gap as they were read, before anything is moved.
const AS_READ: &str = "cold at the start";
const STATES: [&str; 3] = ["running", AS_READ, "cold, once lined up"];

pub(super) fn used(cx: &Context) -> Vec<UsedUp> {
    let Some((states, borne)) = asked_and_borne(cx) else { return Vec::new() };
    let one = |(name, asked)| {
        let found = shares(&asked, &borne).ok()?;
        let sum = found.sum()?;
        let parts = [&found.offset, &found.angle, &found.axial];
        Some(UsedUp {
            name,
            shares: parts.map(|part| part.as_ref().map(|share| share.fraction().si)),
            plus_minus: sum.plus_minus.unwrap_or_default(),
        })
    };
    STATES.into_iter().zip(states).filter_map(one).collect()
}

pub(super) fn bears(cx: &Context) -> Option<Bears> {
    let (states, borne) = asked_and_borne(cx)?;
    let (angle, axial) = (borne.angle?, borne.axial?);
    let (degrees, along) = (Kind::Degrees.unit(cx.system), Kind::Offset.unit(cx.system));
    let state = |(name, asked): (&'static str, couplings::envelope::Misalignment)| {
        let (bent, moved) = (asked.angle?, asked.axial?);
        Some(InField {
            name,
            at: [along.from_si(moved.value.si()), degrees.from_si(bent.value.si())],
            plus_minus: [
                along.from_si(moved.plus_minus.si()),
                degrees.from_si(bent.plus_minus.si()),
            ],
            read: name == AS_READ,
        })
    };
    let fitting = &cx.file.coupling.sheet.allows.fitting;
    let fitting = fitting.axial.as_ref().zip(fitting.angle.as_ref());
    let states: Vec<_> = STATES.into_iter().zip(states).filter_map(state).collect();
    (!states.is_empty()).then(|| Bears {
        heights: format!("angle at the worse engagement, {}", degrees.name()),
        run: format!("{} axial", along.name()),
        most: [along.from_si(axial.si()), degrees.from_si(angle.si())],
        fitting: fitting.map(|(axial, angle)| {
            [along.from_si(axial.value().si()), degrees.from_si(angle.value().si())]
        }),
        states,
    })
}
