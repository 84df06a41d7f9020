//! The interference that would do, and the classes beside it.

use quantities::{Length, Physical, System};

use super::super::Context;
use super::super::fit::{Candidate, Choosing, Lies, wanted};
use super::{FitWindow, WindowClass};
use crate::file::End;

pub(super) fn window(cx: &Context, end: End) -> Option<FitWindow> {
    let fit = cx.fit(end);
    let choosing = fit.choosing.as_ref()?;
    let window = &choosing.window;
    let own = cx.file.fit.at(end).class.parse::<tables::fits::Fit>().ok();
    let class = |one: &Candidate| WindowClass {
        name: one.fit.to_string(),
        least: shown(cx, one.least),
        greatest: shown(cx, one.greatest),
        inside: one.lies == Lies::Inside,
        wanted: own == Some(one.fit),
    };
    let mut classes: Vec<WindowClass> = choosing.candidates.iter().map(class).collect();
    classes.extend(limits(cx, end, choosing));
    let measured =
        fit.interference.map(|found| (shown(cx, found.value), shown(cx, found.plus_minus)));
    Some(FitWindow {
        end: end.key(),
        name: cx.hub_name(end),
        unit: match cx.system {
            System::Metric => "µm",
            System::Inch => "mil",
        },
        holds_from: window.least.as_ref().map(|edge| shown(cx, edge.interference)),
        bears_to: window.greatest.as_ref().map(|edge| shown(cx, edge.interference)),
        goes_on_to: choosing.goes_on.as_ref().map(|(opens, ..)| shown(cx, *opens)),
        classes,
        measured,
    })
}

/// Limits that are no class: as entered, the maker's, or by rule; both ends must be known.
fn limits(cx: &Context, end: End, choosing: &Choosing) -> Option<WindowClass> {
    let wanted = wanted(cx, end).filter(|wanted| !wanted.is_class())?;
    let (least, greatest) = (wanted.limits.least?, wanted.limits.greatest?);
    Some(WindowClass {
        name: "wanted".to_owned(),
        least: shown(cx, Length::from_si(least)),
        greatest: shown(cx, Length::from_si(greatest)),
        inside: choosing.lies(least, greatest) == Lies::Inside,
        wanted: true,
    })
}

/// In micrometres or mils.
fn shown(cx: &Context, length: Length) -> f64 {
    match cx.system {
        System::Metric => length.si() * 1e6,
        System::Inch => length.si() / 25.4e-6,
    }
}
