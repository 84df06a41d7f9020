//! Keys: standard sizes, and the room around them.

use mechanics::keys::balance::{BalanceKey, LengthRule};
use mechanics::keys::room::{
    TopSizes, across_keyway, chord_height, leaning, side_fit, top_clearance,
};
use quantities::{Basis, Kind, Length, Source};
use tables::ansi_b17_1::{self, Class, Shape};
use tables::iso_r_773::{self, Seat};

use super::choices::not_held;
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const SEATS: [(&str, Seat); 3] =
    [("normal", Seat::Normal), ("tight", Seat::Tight), ("free", Seat::Free)];
const SEAT_NAMES: &[&str] = &names(&SEATS);
const SHAPES: [(&str, Shape); 2] = [("square", Shape::Square), ("rectangular", Shape::Rectangular)];
const SHAPE_NAMES: &[&str] = &names(&SHAPES);
const CLASSES: [(&str, Class); 2] = [("1", Class::One), ("2", Class::Two)];
const CLASS_NAMES: &[&str] = &names(&CLASSES);
const RULES: [(&str, LengthRule); 2] =
    [("mean", LengthRule::Mean), ("mean less 5 %", LengthRule::MeanLess5Percent)];
const RULE_NAMES: &[&str] = &names(&RULES);

const SHAFT: Input = Input::quantity("shaft", Kind::Size, "shaft diameter");
const WIDTH: Output = Output::value("width", Kind::Size, "width of the key");
const HEIGHT: Output = Output::value("height", Kind::Size, "height of the key");

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "key-metric",
        does: "The metric parallel key of a shaft, and its keyway in shaft and hub.",
        inputs: &[
            SHAFT,
            Input::choice("seat", SEAT_NAMES, "how tight it sits sideways").or("normal"),
        ],
        outputs: &[
            WIDTH,
            HEIGHT,
            Output::value("shaft_depth", Kind::Size, "depth in the shaft, t1"),
            Output::value("hub_depth", Kind::Size, "depth in the hub, t2"),
            Output::value("deeper_by", Kind::Allowance, "either may be deeper by"),
            Output::value("across_shaft", Kind::Size, "shaft less t1"),
            Output::value("across_hub", Kind::Size, "bore plus t2"),
            Output::value(
                "shaft_seat_upper",
                Kind::Allowance,
                "width of the shaft’s keyway, upper deviation",
            ),
            Output::value("shaft_seat_lower", Kind::Allowance, "the same, lower deviation"),
            Output::value(
                "hub_seat_upper",
                Kind::Allowance,
                "width of the hub’s keyway, upper deviation",
            ),
            Output::value("hub_seat_lower", Kind::Allowance, "the same, lower deviation"),
        ],
        valid: "shafts over 6 up to 500 mm",
        source: iso_r_773::SOURCE,
        answer: metric,
    },
    Calculation {
        name: "key-inch",
        does: "The inch parallel key of a shaft, and its keyseat in shaft and hub.",
        inputs: &[
            SHAFT,
            Input::choice("shape", SHAPE_NAMES, "section of the key").or("square"),
            Input::choice("class", CLASS_NAMES, "side fit: 1 clearance, 2 closer").or("1"),
        ],
        outputs: &[
            WIDTH,
            HEIGHT,
            Output::value("depth", Kind::Size, "depth of the seat in shaft and hub, at its side"),
            Output::value(
                "across_shaft",
                Kind::Size,
                "S: bottom of the shaft’s seat to its far side",
            ),
            Output::value(
                "across_hub",
                Kind::Size,
                "T: bottom of the hub’s seat to the bore’s far side",
            ),
            Output::value("key_upper", Kind::Allowance, "width of the key, upper deviation"),
            Output::value("key_lower", Kind::Allowance, "the same, lower deviation"),
            Output::value("seat_upper", Kind::Allowance, "width of the seat, upper deviation"),
            Output::value("seat_lower", Kind::Allowance, "the same, lower deviation"),
            Output::word("source", "where the size comes from"),
        ],
        valid: "shafts over 5/16 up to 30 in; square keys to 15 in, rectangular from 7/16 in",
        source: ansi_b17_1::SOURCE,
        answer: inch,
    },
    Calculation {
        name: "keyseat-depths",
        does: "Sizes across the keyseats of an inch shaft and bore, from the key.",
        inputs: &[
            SHAFT,
            Input::quantity("width", Kind::Size, "width of the key"),
            Input::quantity("height", Kind::Size, "height of the key"),
        ],
        outputs: &[
            Output::value("chord", Kind::Size, "Y: what a chord of the key’s width takes"),
            Output::value(
                "across_shaft",
                Kind::Size,
                "S: bottom of the shaft’s seat to its far side",
            ),
            Output::value("across_hub", Kind::Size, "T, with 0.005 in over the key"),
        ],
        valid: "parallel keys narrower than the shaft",
        source: ansi_b17_1::RECALLED,
        answer: depths,
    },
    Calculation {
        name: "key-top-room",
        does: "Room over the top of a key, from measured sizes.",
        inputs: &[
            Input::quantity(
                "hub_across",
                Kind::Size,
                "bottom of the hub’s keyway to the bore’s far side",
            ),
            Input::quantity("bore", Kind::Size, "bore"),
            Input::quantity(
                "shaft_across",
                Kind::Size,
                "bottom of the shaft’s keyway to its far side",
            ),
            SHAFT,
            Input::quantity("key_height", Kind::Size, "height of the key"),
        ],
        outputs: &[Output::value("room", Kind::Allowance, "room over the key; − lifts the hub")],
        valid: "bore and shaft on one centre",
        source: Source::new("geometry; ANSI B17.1 keeps 0.005 in", "", Basis::Memory),
        answer: top_room,
    },
    Calculation {
        name: "key-side-play",
        does: "Play of a key in a keyway, from measured widths.",
        inputs: &[
            Input::quantity("keyway", Kind::Size, "width of the keyway, with its ±"),
            Input::quantity("key", Kind::Size, "width of the key, with its ±"),
        ],
        outputs: &[Output::value("play", Kind::Allowance, "keyway less key; − is tight")],
        valid: "widths at 20 °C, measured apart from each other",
        source: Source::new("difference of two widths", "", Basis::Computed),
        answer: side_play,
    },
    Calculation {
        name: "key-lean",
        does: "Room at the sides of a key whose keyways lean against each other.",
        inputs: &[
            Input::quantity("hub_keyway", Kind::Size, "width of the hub’s keyway, with its ±"),
            Input::quantity("shaft_keyway", Kind::Size, "width of the shaft’s keyway, with its ±"),
            Input::quantity("key", Kind::Size, "width of the key, with its ±"),
            Input::quantity(
                "hub_lean",
                Kind::Allowance,
                "how far the hub’s keyway departs over the key’s length",
            ),
            Input::quantity(
                "shaft_lean",
                Kind::Allowance,
                "the same of the shaft’s, with its sign",
            ),
        ],
        outputs: &[
            Output::value("room", Kind::Allowance, "room left; − binds"),
            Output::value("lean", Kind::Allowance, "how far one leans against the other"),
        ],
        valid: "a straight key; a tight key follows the shaft",
        source: Source::new("geometry", "", Basis::Computed),
        answer: lean,
    },
    Calculation {
        name: "key-for-balance",
        does: "Length of a plain key that keeps a balanced hub and shaft in balance together.",
        inputs: &[
            Input::quantity("hub_keyway", Kind::Length, "length of the hub’s keyway"),
            Input::quantity("shaft_keyway", Kind::Length, "length of the shaft’s keyway"),
            Input::choice("rule", RULE_NAMES, "how it is reckoned").or("mean"),
        ],
        outputs: &[Output::value("length", Kind::Length, "length of the key")],
        valid: "hub and shaft each balanced with half a key; a stepped key is exact",
        source: Source::new("ISO 21940-32", "half-key convention", Basis::Memory),
        answer: for_balance,
    },
];

fn metric(given: &Given) -> Result<Answer, ReckonError> {
    let shaft = given.quantity::<Length>("shaft")?;
    let key = iso_r_773::key_for(shaft).ok_or_else(|| not_held("a shaft of that size"))?;
    let keyway = key.keyway(given.pick("seat", &SEATS)?);
    let answer = given.answer().with("width", key.width).with("height", key.height);
    let answer = answer.with("shaft_depth", key.shaft_depth).with("hub_depth", key.hub_depth);
    let answer = answer.with("deeper_by", key.depth_tolerance);
    let answer = answer.with("across_shaft", key.across_shaft(shaft));
    let answer = answer.with("across_hub", key.across_hub(shaft));
    let answer = answer.with("shaft_seat_upper", keyway.map(|keyway| keyway.shaft.upper));
    let answer = answer.with("shaft_seat_lower", keyway.map(|keyway| keyway.shaft.lower));
    let answer = answer.with("hub_seat_upper", keyway.map(|keyway| keyway.hub.upper));
    Ok(answer.with("hub_seat_lower", keyway.map(|keyway| keyway.hub.lower)))
}

fn inch(given: &Given) -> Result<Answer, ReckonError> {
    let shaft = given.quantity::<Length>("shaft")?;
    let shape = given.pick("shape", &SHAPES)?;
    let key = ansi_b17_1::key_for(shaft, shape);
    let key = key.ok_or_else(|| not_held("a shaft of that size and a key of that shape"))?;
    let across = across_keyway(shaft, key.width, key.height)?;
    let widths = ansi_b17_1::widths(key.width, shape, given.pick("class", &CLASSES)?);
    let answer = given.answer().with("width", key.width).with("height", key.height);
    let answer = answer.with("depth", key.depth);
    let answer = answer.with("across_shaft", across.shaft).with("across_hub", across.hub);
    let answer = answer.with("key_upper", widths.map(|widths| widths.key.upper));
    let answer = answer.with("key_lower", widths.map(|widths| widths.key.lower));
    let answer = answer.with("seat_upper", widths.map(|widths| widths.seat.upper));
    let answer = answer.with("seat_lower", widths.map(|widths| widths.seat.lower));
    let answer = answer.with("source", key.source.to_string());
    Ok(answer.shown_by([across.hub_working(shaft, key.width, key.height)]))
}

fn depths(given: &Given) -> Result<Answer, ReckonError> {
    let (shaft, width) = (given.quantity("shaft")?, given.quantity("width")?);
    let height = given.quantity("height")?;
    let across = across_keyway(shaft, width, height)?;
    let answer = given.answer().with("chord", chord_height(shaft, width)?);
    let answer = answer.with("across_shaft", across.shaft).with("across_hub", across.hub);
    Ok(answer.shown_by([across.hub_working(shaft, width, height)]))
}

fn top_room(given: &Given) -> Result<Answer, ReckonError> {
    let room = top_clearance(TopSizes {
        hub_across: given.estimate("hub_across")?,
        bore: given.estimate("bore")?,
        shaft_across: given.estimate("shaft_across")?,
        shaft: given.estimate("shaft")?,
        key_height: given.estimate("key_height")?,
    })?;
    Ok(given.answer().with("room", room.clearance).shown_by([room.working()]))
}

fn side_play(given: &Given) -> Result<Answer, ReckonError> {
    let fit = side_fit(given.estimate("keyway")?, given.estimate("key")?)?;
    Ok(given.answer().with("play", fit.play).shown_by([fit.working("part")]))
}

fn lean(given: &Given) -> Result<Answer, ReckonError> {
    let key = given.estimate("key")?;
    let hub = side_fit(given.estimate("hub_keyway")?, key)?;
    let shaft = side_fit(given.estimate("shaft_keyway")?, key)?;
    let found = leaning(hub, shaft, given.estimate("hub_lean")?, given.estimate("shaft_lean")?)?;
    let answer = given.answer().with("room", found.room).with("lean", found.lean);
    Ok(answer.shown_by([found.working()]))
}

fn for_balance(given: &Given) -> Result<Answer, ReckonError> {
    let (hub, shaft) = (given.quantity("hub_keyway")?, given.quantity("shaft_keyway")?);
    let key = BalanceKey::new(hub, shaft, given.pick("rule", &RULES)?)?;
    Ok(given.answer().with("length", key.length).shown_by([key.working()]))
}
