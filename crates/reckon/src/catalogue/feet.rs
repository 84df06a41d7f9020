//! Whether every foot sits, and packs of shims.

use lineup::Estimate;
use lineup::foot::{
    Corner, FootKind, FootReadings, PlacedGap, Twist, highest_rise, kind, out_of_plane,
};
use lineup::moves::FootPlane;
use lineup::shims::{Pack, pack, reachable, repack};
use quantities::{Basis, Kind, Length, Physical, Power, Source, both};
use tables::limits::SOFT_FOOT;
use tables::shims;

use super::choices::{SYSTEM_NAMES, SYSTEMS};
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const LIMIT: Input =
    Input::quantity("limit", Kind::Offset, "a foot may rise by this; 0.05 mm when left out")
        .optional();
const WANTED: Input = Input::quantity("wanted", Kind::Offset, "thickness wanted");
const STOCK: Input =
    Input::quantities("stock", Kind::Allowance, "thicknesses in stock; precut shims when left out")
        .optional();
const UNITS: Input = Input::choice("units", SYSTEM_NAMES, "which precut shims").or("metric");
const MOST: Input = Input::quantity("most", Kind::Count, "shims in a pack at most, 1 to 8").or("5");
const PACK: Output = Output::value("pack", Kind::Allowance, "the shims, from the base up");
const TOTAL: Output = Output::value("total", Kind::Allowance, "all of them together");
const DEVIATION: Output = Output::value("deviation", Kind::Allowance, "total less wanted");
const EXACT: Source = Source::new("every sum that so many shims can make", "", Basis::Computed);
const OWN: Source = Source::new("soft feet", "kinds by a rule of our own", Basis::OwnRule);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "soft-foot",
        does: "What is wrong with a foot, from its rise and the gaps under its corners, and the cure.",
        inputs: &[
            Input::quantity("rise", Kind::Offset, "rise when its own bolt is loosened, with its ±"),
            Input::quantity("rise_free", Kind::Offset, "the same with pipes and coupling free")
                .optional(),
            Input::quantities(
                "gaps",
                Kind::Offset,
                "gaps under its corners: front left, rear left, rear right, front right",
            )
            .optional(),
            LIMIT,
        ],
        outputs: &[
            Output::word("verdict", "rise against the limit"),
            Output::word("kind", "sound, parallel, angled, springing, induced or gaps wanted"),
            Output::value(
                "shim",
                Kind::Offset,
                "shim under the whole foot, where that is the cure",
            ),
            Output::value("steps", Kind::Offset, "to be filled on top of it at each corner"),
        ],
        valid: "all other bolts tight; the bounds between the kinds are a rule of our own",
        source: OWN,
        answer: soft,
    },
    Calculation {
        name: "highest-foot",
        does: "The one foot that rises more than the rest, and the shim that brings it to them.",
        inputs: &[Input::quantities(
            "rises",
            Kind::Offset,
            "rise of each foot, its own bolt loosened",
        )],
        outputs: &[
            Output::value("foot", Kind::Count, "which, from 1"),
            Output::value("shim", Kind::Offset, "its rise less the next largest"),
        ],
        valid: "two rises or more, of which one is the largest",
        source: Source::new("US Bureau of Reclamation, FIST 4-1A", "p. 17", Basis::Read),
        answer: highest,
    },
    Calculation {
        name: "foot-twist",
        does: "How far four feet rock, and the shim that takes it out.",
        inputs: &[Input::quantities(
            "gaps",
            Kind::Offset,
            "gap under each foot, with its ±: front left, rear left, rear right, front right",
        )],
        outputs: &[
            Output::value(
                "twist",
                Kind::Offset,
                "front left + rear right − rear left − front right",
            ),
            Output::value("shim", Kind::Offset, "one shim that takes it out"),
            Output::word("feet", "the two feet that stand off: either may take it"),
        ],
        valid: "four feet on a rectangle",
        source: Source::new("geometry of four feet", "", Basis::Computed),
        answer: twist,
    },
    Calculation {
        name: "feet-out-of-plane",
        does: "How far each foot lies from the plane that fits all best.",
        inputs: &[
            Input::quantities("x", Kind::Length, "place of each foot along the machine"),
            Input::quantities("z", Kind::Length, "place of each foot across it"),
            Input::quantities("gaps", Kind::Offset, "sole height less pad height"),
        ],
        outputs: &[Output::value("out", Kind::Offset, "each foot from the plane")],
        valid: "four feet or more, not all on one line",
        source: Source::new("least squares", "", Basis::Computed),
        answer: plane,
    },
    Calculation {
        name: "shim-pack",
        does: "The best pack of shims for a thickness.",
        inputs: &[WANTED, STOCK, UNITS, MOST],
        outputs: &[PACK, TOTAL, DEVIATION],
        valid: "least deviation, then fewest shims; thick shims are nominal: measure them",
        source: EXACT,
        answer: best_pack,
    },
    Calculation {
        name: "shim-repack",
        does: "The best pack that can be made of the shims that lie there and of the stock.",
        inputs: &[
            Input::quantities("there", Kind::Allowance, "shims that lie there"),
            WANTED,
            STOCK,
            UNITS,
            MOST,
        ],
        outputs: &[
            PACK,
            TOTAL,
            DEVIATION,
            Output::value("take_out", Kind::Allowance, "out of the pack that lies there"),
            Output::value("put_in", Kind::Allowance, "from the stock"),
        ],
        valid: "least deviation, then fewest shims, then fewest changed",
        source: EXACT,
        answer: changed_pack,
    },
    Calculation {
        name: "whole-moves",
        does: "The moves up and down that whole shims allow at a foot.",
        inputs: &[
            Input::quantity("there", Kind::Offset, "height of the pack that lies there").optional(),
            Input::quantities("pack", Kind::Allowance, "or its shims, one by one").optional(),
            STOCK,
            UNITS,
            MOST,
            Input::quantity("low", Kind::Offset, "lowest move wanted"),
            Input::quantity("high", Kind::Offset, "highest move wanted"),
        ],
        outputs: &[Output::value("moves", Kind::Allowance, "every move between them")],
        valid: "shims added on top, or the pack made anew",
        source: EXACT,
        answer: whole_moves,
    },
    Calculation {
        name: "first-pack",
        does: "The pack that a motor starts on, so that it can be lowered later.",
        inputs: &[Input::quantity("power", Kind::Power, "power of the motor")],
        outputs: &[Output::value("pack", Kind::Offset, "pack under each foot")],
        valid: "1/8 in; over 250 hp 1/4 in",
        source: Source::new(
            "US Bureau of Reclamation, FIST 4-1A",
            "p. 17; over 250 hp common practice",
            Basis::Read,
        ),
        answer: first,
    },
];

fn soft(given: &Given) -> Result<Answer, ReckonError> {
    let free = given.optional::<Length>("rise_free").map(|_| given.estimate("rise_free"));
    let gaps = given.optional::<Length>("gaps").map(|_| given.exactly("gaps"));
    let readings = FootReadings {
        name: "tried".to_owned(),
        rise: given.estimate("rise")?,
        rise_free: free.transpose()?,
        gaps: gaps.transpose()?,
    };
    let limit = given.optional::<Length>("limit").unwrap_or(SOFT_FOOT.most);
    if readings.rise.value < -limit {
        let fallen = both(&-readings.rise.value);
        return Err(ReckonError::not_valid(format!(
            "the foot falls by {fallen} when its own bolt is loosened, which no foot does: look to \
             the sign of the dial, and whether the base gives"
        )));
    }
    let found = kind(&readings, limit)?;
    let word = match found.kind {
        FootKind::Sound => "sound",
        FootKind::Parallel => "parallel: shim it",
        FootKind::Angled => "angled: step shims, or machine it",
        FootKind::Springing => "springing: clean it, and lay fewer and flatter shims",
        FootKind::Induced => "induced: free pipes and coupling first",
        FootKind::GapsWanted => "gaps wanted: take the gaps under its corners",
    };
    let answer = given.answer().with("verdict", found.verdict).with("kind", word);
    let answer = answer.with("shim", found.shim);
    let answer = answer.with("steps", found.steps.map(|steps| steps.to_vec()));
    Ok(answer.shown_by([found.working()]))
}

fn highest(given: &Given) -> Result<Answer, ReckonError> {
    let found = highest_rise(&given.quantities("rises"));
    let (foot, shim) = found.ok_or_else(|| ReckonError::not_valid("no one foot rises most"))?;
    let foot = u32::try_from(foot + 1).unwrap_or(u32::MAX);
    Ok(given.answer().with("foot", foot).with("shim", shim))
}

fn twist(given: &Given) -> Result<Answer, ReckonError> {
    let gaps = given.estimates::<Length>("gaps");
    let found = gaps.len();
    let gaps: [Estimate<Length>; 4] = gaps
        .try_into()
        .map_err(|_| Given::unreadable("gaps", format!("{found} gaps given for four feet")))?;
    let twist = Twist::of(gaps)?;
    let feet = twist.feet_that_stand_off().map(Corner::words);
    let answer = given.answer().with("twist", twist.twist).with("shim", twist.shim());
    Ok(answer.with("feet", feet.to_vec()).shown_by([twist.working()]))
}

fn plane(given: &Given) -> Result<Answer, ReckonError> {
    let [x, z, gaps] = ["x", "z", "gaps"].map(|name| given.quantities::<Length>(name));
    if x.len() != z.len() || x.len() != gaps.len() {
        return Err(ReckonError::not_valid("x, z and gaps differ in number"));
    }
    let feet: Vec<PlacedGap> =
        x.into_iter().zip(z).zip(gaps).map(|((x, z), gap)| PlacedGap { x, z, gap }).collect();
    Ok(given.answer().with("out", out_of_plane(&feet)?))
}

fn stock(given: &Given) -> Result<Vec<Length>, ReckonError> {
    let stock = given.quantities::<Length>("stock");
    let precut = shims::stock(given.pick("units", &SYSTEMS)?);
    Ok(if stock.is_empty() { precut.to_vec() } else { stock })
}

fn most(given: &Given) -> Result<usize, ReckonError> {
    Ok(usize::try_from(given.count("most")?).unwrap_or(usize::MAX))
}

fn with_pack(answer: Answer, pack: &Pack) -> Answer {
    let answer = answer.with("pack", pack.shims.clone()).with("total", pack.total());
    answer.with("deviation", pack.deviation()).shown_by([pack.working()])
}

fn best_pack(given: &Given) -> Result<Answer, ReckonError> {
    let pack = pack(given.quantity("wanted")?, &stock(given)?, most(given)?)?;
    Ok(with_pack(given.answer(), &pack))
}

fn changed_pack(given: &Given) -> Result<Answer, ReckonError> {
    let there = given.quantities::<Length>("there");
    let change = repack(&there, given.quantity("wanted")?, &stock(given)?, most(given)?)?;
    let answer = with_pack(given.answer(), &change.pack);
    Ok(answer.with("take_out", change.take_out).with("put_in", change.put_in))
}

fn whole_moves(given: &Given) -> Result<Answer, ReckonError> {
    let foot = FootPlane {
        shims: given.optional("there"),
        pack: given.quantities("pack"),
        ..FootPlane::new("foot", Length::default())
    };
    let ends = (given.quantity("low")?, given.quantity("high")?);
    let beyond = |length: &Length| length.si().abs() >= 1.0;
    if [ends.0, ends.1].into_iter().chain(foot.shims).any(|length| beyond(&length)) {
        return Err(ReckonError::not_valid("a move or a pack of a metre and more"));
    }
    Ok(given.answer().with("moves", reachable(&foot, &stock(given)?, most(given)?, ends)?))
}

fn first(given: &Given) -> Result<Answer, ReckonError> {
    let power = given.quantity::<Power>("power")?;
    if power.si() <= 0.0 {
        return Err(ReckonError::not_valid("the power is not above zero"));
    }
    Ok(given.answer().with("pack", shims::first_pack(power)))
}
