//! The form that the readings show: taper, barrel or waist, lobes.

use mechanics::size::Size;
use mechanics::size::form::{Profile, Roundness};
use quantities::{Kind, Length};

use super::StageBuilder;

pub(super) fn numbers(
    out: &mut StageBuilder,
    size: &Size,
    three_point: Option<&Size>,
    id: &str,
    what: &str,
) {
    if let Some(taper) = &size.taper {
        let wider = match (taper.is_clear(), taper.slope.value.value > 0.0) {
            (false, _) => "no more than the ± of the readings",
            (true, true) => "wider at the far end, clear of the ± of the readings",
            (true, false) => "wider at the outer face, clear of the ± of the readings",
        };
        let value = taper.over_span.shown(Kind::Allowance);
        out.number(&format!("{id}.taper"), format!("Taper of the {what}"), value)
            .second(format!("over the stations, inwards; {wider}"))
            .working(taper.working());
    }
    if let Some(bow) = &size.bow {
        let shape = match bow.profile() {
            Profile::Straight => "no more than the ± of the readings",
            Profile::Barrel => "wide in the middle",
            Profile::Waist => "narrow in the middle",
        };
        let value = bow.middle_over_ends.shown(Kind::Allowance);
        out.number(&format!("{id}.bow"), format!("Middle over ends of the {what}"), value)
            .second(shape)
            .working(bow.working());
    }
    for round in [size.roundness.as_ref(), three_point.and_then(|size| size.roundness.as_ref())]
        .into_iter()
        .flatten()
    {
        lobes(out, round, id, what);
    }
}

fn lobes(out: &mut StageBuilder, round: &Roundness, id: &str, what: &str) {
    let (key, label) = match round.lobes {
        3 => ("lobes", format!("Three lobes of the {what}")),
        _ => ("round", format!("Out-of-round of the {what}")),
    };
    let clear = round.out_of_round.value > round.out_of_round.plus_minus;
    let place = round.largest_at.filter(|_| clear).map(|at| {
        let degrees = at.value.to_degrees().rem_euclid(360.0 / f64::from(round.lobes));
        format!(", widest at {degrees:.0}° from the key")
    });
    let clear = if clear { "" } else { "; no more than the ± of the readings" };
    let second = match (round.lobes, round.directions) {
        (3, _) => "seen by three points; two points are blind to it".to_owned(),
        (_, 2) => {
            "two directions: at least this much; two points are blind to three lobes".to_owned()
        }
        _ => format!("oval{}; two points are blind to three lobes", place.unwrap_or_default()),
    };
    // A form is a size of its own: never below zero.
    debug_assert!(round.out_of_round.value >= Length::default());
    out.number(&format!("{id}.{key}"), label, round.out_of_round.shown(Kind::Allowance))
        .second(format!("{second}{clear}"))
        .working(round.working());
}
