//! What a torque does to keys and set screws.

use mechanics::keys::set_screw::set_screws;
use mechanics::keys::{
    Depth, Ends, Key, Keys, LONGEST_OVER_SHAFT, Sharing, ShearYield, Strength, loaded,
    needed_length,
};
use quantities::{Basis, Kind, Length, Pressure, Source, Torque};

use tables::set_screws;

use super::choices::not_held;
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const ENDS: [(&str, Ends); 3] =
    [("square", Ends::Square), ("one round", Ends::OneRound), ("both round", Ends::BothRound)];
const END_NAMES: &[&str] = &names(&ENDS);
const KEYS: [(&str, Keys); 2] = [("one", Keys::One), ("two", Keys::Two)];
const KEY_NAMES: &[&str] = &names(&KEYS);
const RULES: [(&str, ShearYield); 2] = [
    ("greatest shear", ShearYield::GreatestShear),
    ("distortion energy", ShearYield::DistortionEnergy),
];
const RULE_NAMES: &[&str] = &names(&RULES);

const TORQUE: Input = Input::quantity("torque", Kind::Torque, "torque");
const SHAFT: Input = Input::quantity("shaft", Kind::Length, "shaft diameter");
const WIDTH: Input = Input::quantity("width", Kind::Length, "width of the key");
const HEIGHT: Input = Input::quantity("height", Kind::Length, "height of the key");
const HOW_MANY: Input =
    Input::choice("keys", KEY_NAMES, "how many; two at 180° count as one and a half").or("one");
const DEPTH: Input = Input::quantity(
    "shaft_keyway",
    Kind::Length,
    "depth of the shaft’s keyway; half the height bears in each part when left out",
)
.optional();
const RULE: Input =
    Input::choice("rule", RULE_NAMES, "shear yield from yield strength").or("greatest shear");

const SHIGLEY: Source = Source::new(
    "Shigley’s Mechanical Engineering Design, 9th ed.",
    "keys and pins, p. 391",
    Basis::Memory,
);
const VALID: &str = "the force acts at the shaft’s surface; the key bears evenly along its straight length, which is no longer than 1.5 shafts";

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "key-load",
        does: "Shear and bearing stress of a key, and how safe it is.",
        inputs: &[
            TORQUE,
            SHAFT,
            WIDTH,
            HEIGHT,
            Input::quantity(
                "length",
                Kind::Length,
                "length of the key, as far as it lies in the hub",
            ),
            Input::choice("ends", END_NAMES, "its ends").or("square"),
            DEPTH,
            HOW_MANY,
            Input::quantity("held_by_friction", Kind::Torque, "least torque that the fit holds")
                .optional(),
            Input::quantity("key_yield", Kind::Stress, "yield strength of the key").optional(),
            Input::quantity("weakest_yield", Kind::Stress, "least of key, shaft and hub")
                .optional(),
            RULE,
        ],
        outputs: &[
            Output::value("carried", Kind::Torque, "torque that the keys carry"),
            Output::value("force", Kind::Force, "force at the shaft’s surface, on one key"),
            Output::value("straight", Kind::Length, "straight length that bears"),
            Output::value("shear", Kind::Stress, "shear stress in the key"),
            Output::value("bearing", Kind::Stress, "bearing stress at its side"),
            Output::value("shear_safety", Kind::Number, "safety against shear"),
            Output::value("bearing_safety", Kind::Number, "safety against crushing"),
            Output::value("longest", Kind::Length, "a longer key does not bear evenly"),
        ],
        valid: VALID,
        source: SHIGLEY,
        answer: load,
    },
    Calculation {
        name: "key-length",
        does: "Straight length that a key of a section needs.",
        inputs: &[
            TORQUE,
            SHAFT,
            WIDTH,
            HEIGHT,
            DEPTH,
            HOW_MANY,
            Input::quantity("key_yield", Kind::Stress, "yield strength of the key"),
            Input::quantity("weakest_yield", Kind::Stress, "least of key, shaft and hub"),
            RULE,
            Input::quantity("safety", Kind::Number, "safety wanted"),
        ],
        outputs: &[
            Output::value("for_shear", Kind::Length, "for shear"),
            Output::value("for_bearing", Kind::Length, "for bearing"),
            Output::value("needed", Kind::Length, "the longer of the two"),
        ],
        valid: VALID,
        source: SHIGLEY,
        answer: length,
    },
    Calculation {
        name: "set-screws",
        does: "Torque and thrust that set screws hold.",
        inputs: &[
            Input::quantity("holding", Kind::Force, "force along the shaft that one screw holds"),
            Input::quantity("screws", Kind::Count, "screws"),
            SHAFT,
        ],
        outputs: &[
            Output::value("torque", Kind::Torque, "torque that they hold together"),
            Output::value("thrust", Kind::Force, "thrust that they hold together"),
        ],
        valid: "seated at their torque on clean metal; torque and thrust not both at once",
        source: Source::new("statics", "", Basis::Computed),
        answer: screws,
    },
    Calculation {
        name: "set-screw",
        does: "What one set screw holds, and which goes over a key.",
        inputs: &[
            Input::word("size", "size of the screw, such as M10 or 3/8").optional(),
            Input::quantity("key_width", Kind::Length, "or the width of the key under it")
                .optional(),
        ],
        outputs: &[
            Output::word("name", "the screw"),
            Output::value("diameter", Kind::Length, "its diameter"),
            Output::value("seating", Kind::Torque, "torque that seats it"),
            Output::value("holding", Kind::Force, "force along or around the shaft that it holds"),
            Output::word("source", "which screw goes over a key, when that was asked"),
        ],
        valid: "cup points on plain steel; a metric screw takes the figures of the next smaller inch size",
        source: set_screws::SOURCE,
        answer: one_screw,
    },
];

fn key(given: &Given, length: Length, ends: Ends) -> Result<Key, ReckonError> {
    let depth = given.optional("shaft_keyway").map_or(Depth::HalfHeight, Depth::ShaftKeyway);
    Ok(Key {
        width: given.quantity("width")?,
        height: given.quantity("height")?,
        length,
        ends,
        depth,
    })
}

fn strength(given: &Given) -> Result<Option<Strength>, ReckonError> {
    let rule = given.pick("rule", &RULES)?;
    let yields = ["key_yield", "weakest_yield"].map(|name| given.optional::<Pressure>(name));
    match yields {
        [None, None] => Ok(None),
        [Some(key), Some(weakest)] => Ok(Some(Strength::from_yield(key, weakest, rule))),
        _ => Err(ReckonError::not_valid("a safety needs both key_yield and weakest_yield")),
    }
}

fn load(given: &Given) -> Result<Answer, ReckonError> {
    let torque = given.quantity::<Torque>("torque")?;
    let shaft = given.quantity::<Length>("shaft")?;
    let sharing =
        given.optional("held_by_friction").map_or(Sharing::KeyAlone, Sharing::AfterFriction);
    let key = key(given, given.quantity("length")?, given.pick("ends", &ENDS)?)?;
    let load = loaded(key, given.pick("keys", &KEYS)?, sharing.share(torque), shaft)?;
    let safety = strength(given)?.map(|strength| load.safety(strength)).transpose()?;
    let answer = given.answer().with("carried", load.torque).with("force", load.force);
    let answer = answer.with("straight", load.straight);
    let answer = answer.with("shear", load.shear).with("bearing", load.bearing);
    let answer = answer.with("shear_safety", safety.map(|safety| safety.shear));
    let answer = answer.with("bearing_safety", safety.map(|safety| safety.bearing));
    let answer = answer.with("longest", shaft * LONGEST_OVER_SHAFT);
    let answer = answer.shown_by([sharing.working(torque)]);
    Ok(answer.shown_by([load.shear_working(), load.bearing_working()]))
}

fn length(given: &Given) -> Result<Answer, ReckonError> {
    let key = key(given, given.quantity("width")?, Ends::Square)?;
    let strength = Strength::from_yield(
        given.quantity("key_yield")?,
        given.quantity("weakest_yield")?,
        given.pick("rule", &RULES)?,
    );
    let (keys, torque) = (given.pick("keys", &KEYS)?, given.quantity("torque")?);
    let (shaft, safety) = (given.quantity("shaft")?, given.number("safety")?);
    let needed = needed_length(key, keys, torque, shaft, strength, safety)?;
    let load = loaded(key, keys, torque, shaft)?;
    let working = needed.working(safety, &load, strength, Length::default());
    let answer = given.answer().with("for_shear", needed.shear);
    let answer = answer.with("for_bearing", needed.bearing).with("needed", needed.longest());
    Ok(answer.shown_by([working]))
}

fn one_screw(given: &Given) -> Result<Answer, ReckonError> {
    let named = Some(given.word("size")).filter(|size| !size.is_empty());
    let (screw, source) = match (named, given.optional::<Length>("key_width")) {
        (Some(size), None) => {
            let held = set_screws::set_screw(size).ok_or_else(|| {
                let known: Vec<&str> = set_screws::names().collect();
                Given::unreadable("size", format!("“{size}” is none of: {}", known.join(", ")))
            });
            (held?, None)
        }
        (None, Some(width)) => {
            let held = set_screws::over_key(width).ok_or_else(|| not_held("such a key"))?;
            (held, Some(format!("{}; {}", set_screws::OVER_KEY, set_screws::OVER_METRIC_KEY)))
        }
        _ => return Err(ReckonError::not_valid("give either size or key_width")),
    };
    let answer = given.answer().with("name", screw.name).with("diameter", screw.diameter);
    let answer = answer.with("seating", screw.seating).with("holding", screw.holding);
    Ok(answer.with("source", source))
}

fn screws(given: &Given) -> Result<Answer, ReckonError> {
    let held =
        set_screws(given.quantity("holding")?, given.count("screws")?, given.quantity("shaft")?)?;
    let answer = given.answer().with("torque", held.torque).with("thrust", held.thrust);
    Ok(answer.shown_by([held.working()]))
}
