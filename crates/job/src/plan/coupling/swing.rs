//! The torque that swings about the steady one without end, against what the coupling bears of it.

use couplings::din_740::{self, Swings};
use couplings::kind::Gives;
use quantities::{Kind, Limits, Physical, Value};

use super::super::Context;
use super::super::stage_builder::{StageBuilder, WRITTEN};
use super::rating::{ambient, gives};

const MEND: &str = "It tires and breaks: a coupling for more vibratory torque, or another stiffness \
                    so that the swing is less; ask the maker.";

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    let machines = &cx.file.machines;
    let sheet = cx.file.coupling.sheet.vibratory_torque.as_ref();
    let Some(torque) = &machines.vibratory_torque else {
        if sheet.is_some() {
            let what = "torque that swings about the steady one, to each side";
            out.missing("machines.vibratory_torque", what);
        }
        return;
    };
    let Some(most) = sheet else {
        out.missing(
            "coupling.sheet.vibratory_torque",
            "vibratory torque that it bears, from the maker’s sheet",
        );
        out.number("swing", "Torque that swings, to each side", torque.shown())
            .second("no vibratory torque on the sheet to hold it against")
            .written(WRITTEN);
        return;
    };
    let limits = Limits::at_most(most.value().si());
    if gives(cx) != Gives::Elastomer {
        out.number("swing", "Torque that swings, to each side", torque.shown())
            .second("limit: vibratory torque on the sheet")
            .written(WRITTEN)
            .judged(limits, MEND);
        return;
    }
    let Some(frequency) = &machines.vibratory_frequency else {
        out.missing("machines.vibratory_frequency", "how often the torque swings");
        return;
    };
    let Some(temperature_factor) = ambient(cx).map_or(Some(1.0), din_740::temperature_factor)
    else {
        return;
    };
    let swings =
        Swings { torque: torque.value(), frequency: frequency.value(), temperature_factor };
    let Ok(need) = din_740::swings(swings) else { return };
    out.number(
        "swing",
        "Swinging torque, as rubber feels it",
        Value::new(Kind::Torque, need.needed),
    )
    .second("limit: vibratory torque on the sheet")
    .working(need.working())
    .judged(limits, MEND);
}
