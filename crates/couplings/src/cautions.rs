//! What can hurt somebody, or spoil the coupling, whatever its kind.
//!
//! Reminders in the words of the trade; local codes, the permit and the maker's manual come first.

use serde::Serialize;

use crate::step::Stage;

/// What can hurt somebody, or spoil the coupling.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Caution {
    /// When it is to be said.
    pub stage: Stage,
    /// What to heed.
    pub text: &'static str,
    /// Ways of heating that it is about; none for one that is about them all.
    pub heated_by: &'static [&'static str],
}

impl Caution {
    pub(crate) const fn new(stage: Stage, text: &'static str) -> Self {
        Self { stage, text, heated_by: &[] }
    }

    const fn when(heated_by: &'static [&'static str], text: &'static str) -> Self {
        Self { stage: Stage::Heat, text, heated_by }
    }
}

/// Cautions for every kind of coupling.
pub fn common_cautions() -> &'static [Caution] {
    &COMMON
}

/// Stands among the ways of heating for a shaft that is cooled with ice, dry ice or liquid nitrogen.
pub const CHILLED: &str = "chilled shaft";

const COMMON: [Caution; 15] = [
    Caution::new(
        Stage::Machines,
        "Lock out and tag both machines and prove them dead before the guard comes off. A driven \
         machine can turn the shaft too: back-flow, windmilling, a hanging load. Local codes and \
         the site’s permit rule.",
    ),
    Caution::new(
        Stage::Machines,
        "Turning by hand: one person calls, fingers out of flange holes, grooves and gaps.",
    ),
    Caution::new(
        Stage::Coupling,
        "Hubs, sleeves and spacers are heavy, round and greasy. Weigh or reckon first, sling them, \
         chock them, nobody under them. This coupling: {coupling.mass}.",
    ),
    Caution::new(
        Stage::Heat,
        "A hub at fitting temperature burns through leather. Dry heat-proof gloves, long sleeves, \
         face shield, a clear way to the shaft, a rehearsal with the hub cold.",
    ),
    Caution::when(
        &["oven", "induction"],
        "An oven or an induction heater before any flame. People with a pacemaker stay away from \
         an induction heater; demagnetise the hub.",
    ),
    Caution::when(
        &["oil bath"],
        "Oil bath: flash point at least 30 °C (54 °F) above the bath, thermometer in the oil, no naked \
         flame near it, the hub dry and off the floor of the pan, lid and extinguisher at hand.",
    ),
    Caution::when(
        &["torch"],
        "A flame needs a hot-work permit, a gas test and a fire watch. Take the plugs out of a \
         closed coupling first: grease inside flashes, and a closed space can burst.",
    ),
    Caution::when(
        &[CHILLED],
        "A chilled shaft: its gas drives the air out of pits and small rooms, so ventilate and carry \
         an oxygen alarm; loose gloves, face shield, nothing closed tight over ice or liquid. Ask \
         the shaft’s maker whether its steel bears the cold; wipe frost off dry.",
    ),
    Caution::new(
        Stage::Lineup,
        "Move machines with jack screws while their weight is on the base; no pry bar under a \
         shaft, no hands under feet when shims go in.",
    ),
    Caution::new(
        Stage::Closeup,
        "Solvent: fresh air, gloves, no sparks. Let it dry off before the coupling is closed.",
    ),
    Caution::new(
        Stage::Running,
        "No start without the guard. Tools out, turned by hand, people clear of the plane of the \
         coupling. Locks come off by those who put them on.",
    ),
    Caution::new(
        Stage::Running,
        "Stop at once for new noise, smoke, hot grease or rising vibration. Hubs stay hot after a \
         run.",
    ),
    Caution::new(
        Stage::Removal,
        "A jammed train can hold a twist in its shafts and spring back when the coupling is \
         opened. Let it relax before the first bolt is slack.",
    ),
    Caution::new(
        Stage::Removal,
        "A loaded puller or hub can let go without warning: face shield, screen or blanket round \
         it, nobody in line with screw or hub, a nut or stop plate on the shaft to catch it. No \
         hammer on loaded jaws, no pull through the bearings.",
    ),
    Caution::new(
        Stage::Removal,
        "Oil under pressure goes through skin: rated hose and fittings, air bled, pressure raised \
         in steps and let down before anything is touched.",
    ),
];
