//! What could be done instead, when the limit forbids the heat.

use mechanics::heat::{CanBeDone, HubHeat};
use quantities::{Basis, Kind, Source, ThermodynamicTemperature, Value, Working};

use super::super::Context;
use super::super::sizes::capital;
use super::super::stage_builder::StageBuilder;
use crate::file::End;

pub(super) fn numbers(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    heat: &HubHeat,
    limit: ThermodynamicTemperature,
) {
    let Ok(CanBeDone::No(instead)) = heat.can_it_be_done(limit) else { return };
    let (key, name) = (end.key(), cx.hub_name(end));
    let (opening, hub) = (&heat.opening, instead.hub_at_shaft);
    let allowance = |length| Value::new(Kind::Allowance, length);
    let mut any = false;
    if let (Some(shaft), Ok(working)) = (instead.shaft_at, opening.chill_working(hub)) {
        let value = Value::new(Kind::Temperature, shaft);
        let label = format!("With the {name} at its limit: shaft cooled to");
        out.number(&format!("{key}.instead.shaft"), label, value)
            .second("dry ice or liquid nitrogen reach this or they do not; cautions first")
            .working(working);
        any = true;
    }
    if let (Some(most), Ok(working)) = (instead.interference_at_most, opening.opens_working(hub)) {
        let label = format!("With the {name} at its limit: or interference, at most");
        out.number(&format!("{key}.instead.interference"), label, allowance(most)).working(working);
        any = true;
    }
    if let (Some(left), Ok(opens)) = (instead.clearance_left, opening.opens(hub)) {
        let source = Source::new("what is left of the opening", "", Basis::Computed);
        let working =
            Working::new("Clearance that is left", "k = o + c − i", allowance(left), source)
                .term("o", "interference that goes on with c", allowance(opens))
                .term("c", "clearance to slide by", allowance(opening.clearance))
                .term("i", "interference, upper end", allowance(opening.interference));
        let label = format!("With the {name} at its limit: or clearance to slide by, only");
        out.number(&format!("{key}.instead.clearance"), label, allowance(left))
            .second("on the diameter; quick and straight, with a stop set")
            .working(working);
        any = true;
    }
    if !any {
        out.note(format!(
            "{}: at its limit neither a cooled shaft nor less clearance gets it on: less interference by the maker’s word, or oil.",
            capital(&name)
        ));
    }
}
