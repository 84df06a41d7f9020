//! Set screws over the key: their size, and what they hold.

use mechanics::keys::set_screw::set_screws;
use quantities::{Kind, Limits, Measured, Value};
use tables::set_screws::{OVER_KEY, OVER_METRIC_KEY, SOURCE, over_key, set_screw};

use super::{Context, StageBuilder, Written};
use crate::file::End;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End, written: &Written) {
    let sheet = &cx.file.coupling.sheet.setscrew;
    let size = sheet.size.as_deref().and_then(set_screw);
    let own = written.set_screw_holding.as_ref().map(Measured::value);
    let Some(holding) = own.or(size.map(|screw| screw.holding)) else {
        usual(cx, out, end, written);
        return;
    };
    let count = sheet.count.map_or(1, |count| count.0.max(1));
    let Some(shaft) = cx.joint_diameter(end) else { return };
    let Ok(screws) = set_screws(holding, count, shaft) else { return };
    let whose = match (own, size) {
        (Some(_), _) => "holding force as entered".to_owned(),
        (None, Some(screw)) => {
            let seating = Value::new(Kind::Torque, screw.seating).show(cx.system);
            format!("{count} of {}, cup point, seated with {seating} ({SOURCE})", screw.name)
        }
        (None, None) => String::new(),
    };
    let (name, key) = (cx.hub_name(end), end.key());
    out.number(
        &format!("{key}.screw.torque"),
        format!("Torque that the set screws hold, {name}"),
        Value::new(Kind::Torque, screws.torque),
    )
    .second(format!("not counted on beside a key; {whose}"))
    .working(screws.working());
    let entry = out
        .number(
            &format!("{key}.screw.thrust"),
            format!("Thrust that the set screws hold, {name}"),
            Value::new(Kind::Force, screws.thrust),
        )
        .working(screws.thrust_working());
    match &cx.file.fit.axial {
        Some(axial) if cx.fit(end).grip.is_none() => {
            entry.second("the fit holds none; limit: axial pull to hold").judged(
                Limits::at_least(axial.value().value),
                "It may walk along the shaft: a retaining plate or nut, or larger screws.",
            );
        }
        _ => {
            entry.second("along the shaft, while no torque is on them");
        }
    }
}

/// The screw that usually goes over such a key, where nobody gave one.
fn usual(cx: &Context, out: &mut StageBuilder, end: End, written: &Written) {
    let loose = cx.fit(end).interference.is_some_and(|fit| fit.value.value < 0.0);
    let screw = written.width.as_ref().and_then(|width| over_key(width.value()));
    if let Some(screw) = screw.filter(|_| loose) {
        let source = if screw.name.starts_with('M') { OVER_METRIC_KEY } else { OVER_KEY };
        out.note(format!(
            "The {} slides on: a set screw over such a key is usually {} ({source}).",
            cx.hub_name(end),
            screw.name
        ));
    }
}
