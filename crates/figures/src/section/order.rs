//! In which order the parts of a coupling go on, kind by kind, from the driver's shaft to the driven
//! one. What a hub would trap lies outside it.

use super::assembly::Side;
use super::{Cover, Elastomer, Kind, Middle, Packs, Rubber, Sleeves, Split};

/// Parts that move together, on one side or where there is but one of them.
#[derive(Clone, Copy, Debug)]
pub(super) struct Group {
    pub name: &'static str,
    /// Its number in the order of work; equal where both sides are alike.
    pub order: usize,
    pub letters: &'static [char],
    pub side: Option<Side>,
}

/// The groups from left to right, and the two that the bolt stands midway between, or over one.
pub(super) struct Order {
    pub groups: Vec<Group>,
    pub bolt_over: [usize; 2],
}

/// Name, number, letters at the driver's side, letters at the driven side.
type Pair = (&'static str, usize, &'static [char], &'static [char]);

/// Name, number, letters, side.
type Single = (&'static str, usize, &'static [char], Option<Side>);

const L: Option<Side> = Some(Side::Driver);
const R: Option<Side> = Some(Side::Driven);

const SHAFT: Pair = ("shaft, key", 1, &['A', 'K'], &['A', 'K']);

const fn hub(order: usize) -> Pair {
    ("hub", order, &['B'], &['C'])
}

/// Pairs from the shafts inwards, with what lies between them.
fn order(outer: &[Pair], middle: &[Single], bolt_over: [usize; 2]) -> Order {
    let of_side = |side: Option<Side>| {
        outer.iter().filter_map(move |(name, order, driver, driven)| {
            let letters = if side == L { *driver } else { *driven };
            (!letters.is_empty()).then_some(Group { name, order: *order, letters, side })
        })
    };
    let mut driven: Vec<Group> = of_side(R).collect();
    driven.reverse();
    let between = middle.iter().map(|(name, order, letters, side)| Group {
        name,
        order: *order,
        letters,
        side: *side,
    });
    let groups = of_side(L).chain(between).chain(driven).collect();
    Order { groups, bolt_over }
}

/// `None` for a kind that is not known well enough.
pub(super) fn of(kind: &Kind) -> Option<Order> {
    Some(match kind {
        Kind::Gear { sleeves, .. } => gear(*sleeves),
        Kind::Grid { cover, middle, .. } => grid(*cover, *middle),
        Kind::Disc { packs, .. } => disc(packs),
        Kind::Rigid { middle: Middle::Bare, .. } => order(&[SHAFT, hub(2)], &[], [1, 2]),
        Kind::Rigid { middle: Middle::Spacer, .. } => {
            order(&[SHAFT, hub(2)], &[("spacer", 3, &['E'], None)], [1, 2])
        }
        Kind::Jaw { element, .. } => jaw(*element),
        Kind::Pin { middle, .. } => pin(*middle),
        Kind::Chain { cover } => chain(*cover),
        Kind::Shear { rubber, .. } => shear(*rubber),
        Kind::Diaphragm { packs: Packs::One, .. } => {
            order(&[SHAFT, hub(2)], &[("diaphragm", 3, &['D'], L)], [2, 2])
        }
        Kind::Diaphragm { .. } => order(
            &[SHAFT, hub(2)],
            &[
                ("diaphragm", 3, &['D'], L),
                ("spacer", 3, &['E'], None),
                ("diaphragm", 3, &['D'], R),
            ],
            [2, 2],
        ),
        Kind::Other => return None,
    })
}

fn gear(sleeves: Sleeves) -> Order {
    const SEAL: Pair = ("seal", 2, &['F'], &['F']);
    const SLEEVE: Pair = ("sleeve", 3, &['D', 'J'], &['E', 'J']);
    match sleeves {
        Sleeves::Flanged => {
            order(&[SHAFT, SEAL, SLEEVE, hub(4)], &[("gasket", 5, &['G'], None)], [4, 4])
        }
        Sleeves::OneEngagement => order(
            &[SHAFT, ("seal", 2, &['F'], &[]), ("sleeve", 3, &['D', 'J'], &[]), hub(4)],
            &[("gasket", 5, &['G'], None)],
            [4, 4],
        ),
        Sleeves::Spacer => order(
            &[SHAFT, SEAL, ("sleeve", 3, &['D', 'J'], &['D', 'J']), hub(4)],
            &[("gasket", 6, &['G'], L), ("spacer", 5, &['E'], None), ("gasket", 6, &['G'], R)],
            [4, 4],
        ),
        // The sleeve waits on the shaft that has more room.
        Sleeves::Continuous => order(
            &[
                SHAFT,
                ("end ring, seal", 2, &['F', 'W'], &['F', 'W']),
                ("sleeve", 3, &['D', 'J'], &[]),
                hub(4),
            ],
            &[],
            [3, 3],
        ),
    }
}

fn grid(cover: Split, middle: Middle) -> Order {
    const SHELL: &[char] = &['E', 'J', 'G', 'H'];
    match (middle, cover) {
        (Middle::Bare, Split::Along) => order(
            &[SHAFT, ("seal", 2, &['F'], &['F']), hub(3)],
            &[("grid", 4, &['D'], None), ("cover", 5, SHELL, None)],
            [4, 4],
        ),
        // Each half of the cover waits on its shaft, the gasket over one hub.
        (Middle::Bare, Split::Across) => order(
            &[SHAFT, ("seal", 2, &['F'], &['F']), ("cover half", 3, &['E', 'J'], &['E']), hub(4)],
            &[("gasket", 5, &['G'], None), ("grid", 6, &['D'], None)],
            [4, 4],
        ),
        (Middle::Spacer, _) => order(
            &[SHAFT, hub(2), ("seal", 3, &['F'], &['F']), ("spacer half", 3, &['L'], &['L'])],
            &[("grid", 4, &['D'], None), ("cover", 5, SHELL, None)],
            [4, 4],
        ),
    }
}

fn disc(packs: &Packs) -> Order {
    let spaced = |pack: usize, spacer: usize| {
        let middle: [Single; 3] = [
            ("disc pack", pack, &['D'], L),
            ("spacer", spacer, &['E'], None),
            ("disc pack", pack, &['D'], R),
        ];
        order(&[SHAFT, hub(2)], &middle, [2, 2])
    };
    match packs {
        Packs::One => order(&[SHAFT, hub(2)], &[("disc pack", 3, &['D'], L)], [2, 2]),
        Packs::Two { .. } => spaced(4, 3),
        // Rings of discs go over the barrels before a spacer closes round them.
        Packs::Close { .. } => spaced(3, 4),
    }
}

fn jaw(element: Elastomer) -> Order {
    let middle: &[Single] = match element {
        Elastomer::Star => &[("element", 3, &['D'], None)],
        Elastomer::Wrapped => &[("element", 3, &['D'], None), ("ring", 4, &['W'], None)],
        Elastomer::Spacer => &[
            ("element", 3, &['D'], L),
            ("spacer", 4, &['E', 'H'], None),
            ("element", 3, &['D'], R),
        ],
    };
    order(&[SHAFT, hub(2)], middle, [2, 2])
}

fn pin(middle: Middle) -> Order {
    let middle: &[Single] = match middle {
        Middle::Bare => &[("pins", 4, &['H'], None), ("bushes", 3, &['D'], None)],
        Middle::Spacer => {
            &[("spacer", 3, &['E'], None), ("pins", 5, &['H'], None), ("bushes", 4, &['D'], None)]
        }
    };
    order(&[SHAFT, hub(2)], middle, [2, 2])
}

fn chain(cover: Cover) -> Order {
    match cover {
        Cover::On => order(
            &[SHAFT, ("seal", 2, &['F'], &['F']), hub(3)],
            &[("chain", 4, &['D'], None), ("cover", 5, &['E', 'J', 'G', 'H'], None)],
            [4, 4],
        ),
        Cover::Bare => order(&[SHAFT, hub(2)], &[("chain", 3, &['D'], None)], [2, 2]),
    }
}

fn shear(rubber: Rubber) -> Order {
    match rubber {
        Rubber::Clamped => order(
            &[SHAFT, hub(2), ("ring", 3, &['W'], &['W'])],
            &[("element", 4, &['D'], None)],
            [3, 3],
        ),
        Rubber::Toothed => order(&[SHAFT, hub(2)], &[("sleeve", 3, &['D'], None)], [2, 2]),
        Rubber::Spacer => order(
            &[SHAFT, hub(2)],
            &[
                ("spacer", 3, &['E'], None),
                ("ring", 4, &['W'], L),
                ("element", 5, &['D'], None),
                ("ring", 4, &['W'], R),
            ],
            [4, 4],
        ),
    }
}
