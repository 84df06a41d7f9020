//! The catalogue: one chapter a noun, in the order of the way through a job.

mod choices;
mod choosing;
mod closeup;
mod dials;
mod elastomer;
mod feet;
mod fit;
mod gap;
mod grease;
mod growth;
mod heat;
mod heat_flow;
mod key_load;
mod keys;
mod kinds;
mod levels;
mod machines;
mod metal;
mod misalignment;
mod moves;
mod position;
mod press;
mod rating;
mod removal;
mod running;
mod shown;
mod sizes;
mod taper;
mod train;
mod trials;
mod uncertainty;
mod wear;
mod whole_train;

use crate::Calculation;

/// All chapters.
pub(crate) const ALL: &[&[Calculation]] = &[
    machines::ALL,
    kinds::ALL,
    rating::ALL,
    misalignment::ALL,
    elastomer::ALL,
    sizes::ALL,
    uncertainty::ALL,
    fit::ALL,
    press::ALL,
    choosing::ALL,
    taper::ALL,
    keys::ALL,
    key_load::ALL,
    metal::ALL,
    heat::ALL,
    heat_flow::ALL,
    gap::ALL,
    dials::ALL,
    position::ALL,
    growth::ALL,
    levels::ALL,
    trials::ALL,
    feet::ALL,
    moves::ALL,
    train::ALL,
    whole_train::ALL,
    closeup::ALL,
    grease::ALL,
    running::ALL,
    wear::ALL,
    removal::ALL,
];
