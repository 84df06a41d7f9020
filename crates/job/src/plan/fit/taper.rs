//! Hubs on tapered shaft ends: how far to draw up, where that ends, and how oil moves them.

use mechanics::Estimate;
use mechanics::interference::hub::Running;
use mechanics::taper::{Taper, dilation};
use quantities::{
    Basis, Kind, Length, Limits, Physical, Source, TemperatureInterval, Value, Working,
};
use tables::friction::OIL_FILM;
use tables::pullers::{DILATION, PUMP_MPA};

use super::{Context, StageBuilder, allowed, closer, wanted};
use crate::file::End;
use crate::plan::stage_builder::WRITTEN;

/// ± of a draw-up taken with a depth gauge from metal touching metal, where none is written: the
/// seating is no surer than that (common practice).
const SEATING_M: f64 = 0.05e-3;

/// Interference of a hub that was drawn up.
pub(super) fn drawn_up(cx: &Context, end: End) -> Option<Estimate<Length>> {
    let taper = cx.taper(end)?;
    taper.interference(distance(cx, end)?).ok().filter(|found| found.value > Length::default())
}

fn distance(cx: &Context, end: End) -> Option<Estimate<Length>> {
    let drawn = cx.file.fit.at(end).drawn_up.as_ref()?;
    let spread = drawn.spread().unwrap_or(Length::from_si(SEATING_M));
    Some(Estimate::new(drawn.value(), spread))
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End) {
    let Some(taper) = cx.taper(end) else { return };
    to_draw_up(cx, out, end, taper);
    as_drawn(cx, out, end, taper);
    oil(cx, out, end, taper);
    if cx.file.sizes.at(end).taper.small_end.is_none() {
        out.note_once("The nominal size of a taper is taken as that of its large end; enter the small end where the drawing says otherwise.".to_owned());
    }
    if !cx.file.fit.at(end).class.is_empty() {
        out.note(format!(
            "A class says nothing of a taper: the {} goes by how far it is drawn up.",
            cx.hub_name(end)
        ));
    }
}

/// How far, for the interference wanted, and where the shaft's end then stands.
fn to_draw_up(cx: &Context, out: &mut StageBuilder, end: End, taper: Taper) {
    let Some(wanted) = wanted(cx, end) else { return };
    let (Some(least), Some(greatest)) = (wanted.limits.least, wanted.limits.greatest) else {
        return;
    };
    let middle = Length::from_si(f64::midpoint(least, greatest));
    let half = Length::from_si((greatest - least) / 2.0);
    let Ok(draw_up) = taper.draw_up(Estimate::new(middle, half)) else { return };
    let name = cx.hub_name(end);
    let value = draw_up.distance.shown(Kind::Offset);
    out.number(&format!("{}.draw_up", end.key()), format!("Draw up the {name} by"), value)
        .second(format!("from metal touching metal, both equally warm; {}", wanted.whose))
        .working(draw_up.working())
        .key();
    let place = format!("sizes.{}.taper.stands_out", end.key());
    let Some(stands_out) = &cx.file.sizes.at(end).taper.stands_out else {
        out.missing(
            &place,
            &format!("how far the shaft stands out of the face, {name}, metal touching metal"),
        );
        return;
    };
    let stop = Length::from_si(stands_out.value().si() + draw_up.distance.value.si());
    let value = Value::new(Kind::Offset, stop).with_plus_minus(draw_up.distance.plus_minus.si());
    let source = Source::new("where it stood, and how far it goes", "", Basis::Computed);
    let working = Working::new("Stop", "e = o + s", value, source)
        .term("o", "shaft stands out, metal touching metal", stands_out.shown_as(Kind::Offset))
        .term("s", "draw-up", draw_up.distance.shown(Kind::Offset));
    out.number(&format!("{}.stop", end.key()), format!("Stop of the {name}"), value)
        .second("how far the shaft’s end then stands out of the hub’s face; − is back")
        .working(working)
        .key();
}

fn as_drawn(cx: &Context, out: &mut StageBuilder, end: End, taper: Taper) {
    let name = cx.hub_name(end);
    let id = format!("{}.interference", end.key());
    let (Some(distance), Some(found)) = (distance(cx, end), cx.fit(end).interference) else {
        let place = format!("fit.{}.drawn_up", end.key());
        let what = format!("how far the {name} was drawn up");
        out.unmeasured(&id, format!("Interference, {name}"), &place, &what);
        return;
    };
    let written = distance.shown(Kind::Offset);
    out.number(&format!("{}.drawn_up", end.key()), format!("Drawn up, {name}"), written)
        .written(WRITTEN);
    let value = found.shown(Kind::Allowance);
    let source = Source::new("geometry of a cone", "", Basis::Computed);
    let working = Working::new("Interference", "i = s·t", value, source)
        .term("s", "drawn up", written)
        .term("t", "taper on the diameter", Value::number(taper.on_diameter()));
    let entry = out.number(&id, format!("Interference, {name}"), value).working(working).key();
    if let Some(wanted) = wanted(cx, end) {
        let closer = closer(
            cx,
            &value,
            &wanted.limits,
            "Take the reading of the draw-up again from the marks of metal touching metal",
        );
        entry
            .second(wanted.whose)
            .judged(wanted.limits, "Draw it up to its mark, or let it back; never turn the nut on a dry taper that has seized.")
            .settled_by(closer);
    }
}

/// Oil pressure that lifts the hub, what the hub bears of it, and what the taper pushes with.
fn oil(cx: &Context, out: &mut StageBuilder, end: End, taper: Taper) {
    let fit = cx.fit(end);
    let (Some(press), Some(effective)) = (&fit.press, &fit.effective) else { return };
    let Ok(state) = press.state(effective.high(), Running::default()) else { return };
    let Ok(lift) = dilation(&state, DILATION.1) else { return };
    let (name, key) = (cx.hub_name(end), end.key());
    out.number(
        &format!("{key}.oil"),
        format!("Oil pressure to lift the {name}, at most"),
        Value::new(Kind::Pressure, lift.oil),
    )
    .second(format!("{} to {} times the highest contact pressure; limit: common hand pumps", DILATION.0, DILATION.1))
    .working(lift.working())
    .judged(
        Limits::at_most(PUMP_MPA * 1e6),
        "More than a common hand pump gives: a pump, hoses and fittings rated for it, and the maker’s word.",
    );
    let stress = Value::new(Kind::Stress, lift.hub_stress);
    let entry = out
        .number(&format!("{key}.oil.stress"), format!("Stress at the bore on oil, {name}"), stress)
        .working(lift.stress_working());
    if let Some((limit, whose)) = allowed(cx, end) {
        entry.second(format!("limit: {whose}")).judged(
            Limits::at_most(limit.si()),
            "The oil would stretch the hub for good. Less interference, or the maker’s word.",
        );
    }
    let Ok(film) = taper.axial(state.normal_force, OIL_FILM) else { return };
    out.number(
        &format!("{key}.push_off"),
        format!("Push of the {name} on its oil film"),
        Value::new(Kind::Force, film.withdrawal()),
    )
    .second("negative: it slides off by itself; a nut or stop must catch it before oil is let in")
    .working(film.working());
    out.number(
        &format!("{key}.draw_force"),
        format!("Push to bring the {name} home on its oil film"),
        Value::new(Kind::Force, film.to_draw_up()),
    )
    .second("at the end of its way")
    .working(film.draw_up_working());
    // Nothing here turns or warms: the hub stands while it is moved.
    debug_assert!(state.running.hub_rise == TemperatureInterval::from_si(0.0));
}
