//! What brings the gap from where it is to where it is to be: a hub, a machine, or shims.

use couplings::gap::Target;
use couplings::kind::Spacer;
use lineup::shims::{Pack, USUAL_MOST, pack};
use mechanics::Estimate;
use quantities::{Basis, Kind, Length, Measured, Physical, Source, Value, Verdict, Working, judge};

use super::super::Context;
use super::super::stage_builder::StageBuilder;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, cold: Option<&Target>) {
    let (Some(read), Some(cold)) = (&cx.gap().read, cold) else { return };
    if judge(&read.mean.shown(Kind::Gap), &cold.limits) == Verdict::Inside {
        return;
    }
    let change = Estimate::exact(cold.gap).less(&read.mean);
    let source = Source::new("gap to be less gap as it is", "", Basis::Computed);
    let value = change.shown(Kind::Gap);
    let working = Working::new("Change that sets the gap", "c = s − m", value, source)
        .term("s", "gap to set cold", Value::new(Kind::Gap, cold.gap))
        .term("m", "mean gap as read", read.mean.shown(Kind::Gap));
    out.number("set_change", "Change that sets the gap", value)
        .second("+ opens it: by a hub not yet locked, or by the machine that may move")
        .working(working);
    if cx.form.is_some_and(|form| form.spacer == Spacer::With) && change.value < Length::default() {
        shims(cx, out, -change.value);
    }
}

/// A distance that is too long for its spacer can be made up with shims at a flange.
fn shims(cx: &Context, out: &mut StageBuilder, wanted: Length) {
    let Ok(pack) = pack(wanted, &stock(cx), USUAL_MOST) else { return };
    let thin = |length| Value::new(Kind::Offset, length);
    let each: Vec<String> = pack.shims.iter().map(|shim| thin(*shim).digits(cx.system)).collect();
    let label = "Or shims between spacer and flange";
    let total = thin(pack.total());
    let source = Source::new("Every sum of so many shims", "closest, then fewest", Basis::Computed);
    let working = Working::new("Shims between spacer and flange", "t = w + e", total, source)
        .term("w", "thickness wanted", thin(wanted))
        .term("e", "what the pack is off by", thin(pack.deviation()))
        .valid("nominal thicknesses; measure the thick ones");
    out.number("shims", label, total).second(in_words(cx, &pack, &each)).working(working);
    out.note(
        "Shims at a spacer’s flange only where the maker allows them: full rings of the flange’s \
         own bolt circle, the spigot still home, bolts still long enough.",
    );
}

fn in_words(cx: &Context, pack: &Pack, each: &[String]) -> String {
    let off = Value::new(Kind::Offset, pack.deviation());
    let unit = off.unit(cx.system);
    if pack.deviation().si().abs() < 1e-9 {
        format!("{} {unit}", each.join(" + "))
    } else {
        format!("{} {unit}; {} from what is wanted", each.join(" + "), off.show(cx.system))
    }
}

fn stock(cx: &Context) -> Vec<Length> {
    let given = &cx.file.lineup.shims.stock;
    if given.is_empty() {
        return tables::shims::stock(cx.system_of_job()).to_vec();
    }
    given.iter().map(Measured::value).collect()
}
