//! What every dial reads once the machine stands where it is aimed: to be watched during the move.

use lineup::clock::Clock;
use lineup::growth::target_readings;
use lineup::position::Observation;
use quantities::{Basis, Kind, Source, Value, Working};

use super::super::stage_builder::StageBuilder;
use super::seen::{clock_view, dial_name};
use super::{Context, Found, bench};

/// Read at these, zeroed at 12.
const AT: [Clock; 3] = [Clock::THREE, Clock::SIX, Clock::NINE];

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let joint = found.own();
    let setup = bench::own(cx);
    for (name, dial) in setup.dials {
        let swept = joint.seen.iter().find_map(|seen| match &seen.observation {
            Observation::Sweep(swept) if seen.dial.as_deref() == Some(name) => Some(swept),
            _ => None,
        });
        let Some(swept) = swept else { continue };
        let layout = &joint.position.layout;
        let Some(readings) = target_readings(layout, swept, &joint.target, &AT) else { continue };
        let called = dial_name(&setup, dial);
        // r3 = b − a and r6 = −2·a give back what the dial sees.
        let [three, six, _] = [0, 1, 2].map(|i| readings[i].1);
        let cosine = -six / 2.0;
        let sine = three + cosine;
        for (clock, reading) in readings {
            let seen = clock.seen(clock_view(dial.view));
            let shown = |length| Value::new(Kind::Offset, length);
            let value = shown(reading);
            let source = Source::new("Geometry of two straight lines", "", Basis::Computed);
            let working = Working::new(
                format!("Target at {seen}"),
                "r = a·(cos t − 1) + b·sin t",
                value,
                source,
            )
            .term("a", "upwards at its plane, sag in it", shown(cosine))
            .term("b", "to 3 o’clock at its plane", shown(sine))
            .term(
                "t",
                "clock position, seen from the driver",
                Value::new(Kind::Degrees, clock.angle()),
            )
            .valid("set to 0 at 12; for a face dial half its swing times the slope");
            out.number(
                &format!("aimed.{name}.{seen}"),
                format!("Reads at {seen} when there, {called}"),
                value,
            )
            .second("set to 0 at 12; sag left in")
            .working(working);
        }
    }
}
