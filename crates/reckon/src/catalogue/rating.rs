//! Whether the coupling is large enough.

use couplings::Share;
use couplings::rating::{self, Peak, SpeedNeed, Swing};
use quantities::{Basis, Kind, Source, Torque};

use super::machines::duty;
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const SWINGS: [(&str, Swing); 2] = [("one way", Swing::OneWay), ("reversing", Swing::Reversing)];
const SWING_NAMES: &[&str] = &names(&SWINGS);

const SHEET: Source =
    Source::new("share of what the maker’s sheet allows", "", Basis::CommonPractice);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "torque-share",
        does: "Share of a coupling’s rated torque that a drive takes.",
        inputs: &[
            Input::quantity("power", Kind::Power, "power that the coupling carries"),
            Input::quantity("speed", Kind::Speed, "speed of the coupling"),
            Input::quantity("service_factor", Kind::Number, "service factor, 1 or more"),
            Input::quantity("rated_torque", Kind::Torque, "rated torque, from the maker’s sheet"),
        ],
        outputs: SHARE,
        valid: "steady running; peaks are looked at apart",
        source: SHEET,
        answer: torque_share,
    },
    Calculation {
        name: "peak-share",
        does: "Share of a coupling’s peak torque that a repeated peak takes.",
        inputs: &[
            Input::quantity(
                "peak",
                Kind::Torque,
                "peak as measured or worked out, no service factor",
            ),
            Input::choice("swing", SWING_NAMES, "whether it turns round").or("one way"),
            Input::quantity("peak_torque", Kind::Torque, "peak torque, from the maker’s sheet"),
        ],
        outputs: &[
            Output::value(
                "counts",
                Kind::Torque,
                "what the peak counts for; double when it reverses",
            ),
            Output::value("share", Kind::Percent, "share used"),
            Output::word("verdict", "inside, outside or too close to call"),
        ],
        valid: "repeated peaks: starts, jogs, reversals",
        source: SHEET,
        answer: peak_share,
    },
    Calculation {
        name: "bore-share",
        does: "Share of the largest bore that a hub may have.",
        inputs: &[
            Input::quantity("bore", Kind::Size, "bore, with its ± when measured"),
            Input::quantity("largest", Kind::Size, "largest bore, from the maker’s sheet"),
        ],
        outputs: SHARE,
        valid: "the sheet’s largest bore with the key that is used",
        source: SHEET,
        answer: bore_share,
    },
    Calculation {
        name: "speed-need",
        does: "What a running speed asks of a coupling: nothing, balance, or another coupling.",
        inputs: &[
            Input::quantity("running", Kind::Speed, "running speed"),
            Input::quantity("as_supplied", Kind::Speed, "highest speed as supplied").optional(),
            Input::quantity("balanced", Kind::Speed, "highest speed when balanced").optional(),
        ],
        outputs: &[
            Output::word("need", "what the speed asks for"),
            Output::value("share_as_supplied", Kind::Percent, "share of the speed as supplied"),
            Output::value("share_balanced", Kind::Percent, "share of the balanced speed"),
        ],
        valid: "speeds of the maker’s sheet; whirling of a spacer is apart",
        source: SHEET,
        answer: speed_need,
    },
];

const SHARE: &[Output] = &[
    Output::value("share", Kind::Percent, "share used"),
    Output::word("verdict", "inside, outside or too close to call"),
];

pub(super) fn with_share(answer: Answer, share: &Share) -> Answer {
    let answer = answer.with("share", share.fraction()).with("verdict", share.verdict());
    answer.shown_by([share.working()])
}

fn torque_share(given: &Given) -> Result<Answer, ReckonError> {
    let duty = duty(given)?;
    let share = rating::torque(&duty, given.quantity("rated_torque")?)?;
    Ok(with_share(given.answer().shown_by([duty.working(), duty.design_working()]), &share))
}

fn peak_share(given: &Given) -> Result<Answer, ReckonError> {
    let torque = given.quantity::<Torque>("peak")?;
    let peak = Peak { torque, swing: given.pick("swing", &SWINGS)? };
    let share = rating::peak(peak, given.quantity("peak_torque")?)?;
    let answer = given.answer().with("counts", peak.counts());
    Ok(with_share(answer.shown_by([peak.working()]), &share))
}

fn bore_share(given: &Given) -> Result<Answer, ReckonError> {
    let share = rating::bore(&given.measured("bore")?, &given.measured("largest")?)?;
    Ok(with_share(given.answer(), &share))
}

fn speed_need(given: &Given) -> Result<Answer, ReckonError> {
    let (as_supplied, balanced) = (given.optional("as_supplied"), given.optional("balanced"));
    let used = rating::speed(given.quantity("running")?, as_supplied, balanced)?;
    let need = match used.need() {
        SpeedNeed::AsSupplied => "as supplied",
        SpeedNeed::Balance => "balance as an assembly",
        SpeedNeed::TooFast => "too fast for this coupling",
        SpeedNeed::TooClose => "too close to call",
        SpeedNeed::NotKnown => "not known: the sheet gives no speed that decides it",
    };
    let share = |share: &Option<Share>| share.as_ref().map(Share::fraction);
    let answer = given.answer().with("need", need);
    let answer = answer.with("share_as_supplied", share(&used.as_supplied));
    let answer = answer.with("share_balanced", share(&used.balanced));
    let shares = [used.as_supplied, used.balanced];
    Ok(answer.shown_by(shares.iter().flatten().map(Share::working)))
}
