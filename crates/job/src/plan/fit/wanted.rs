//! The interference wanted, and who wants it.

use quantities::{Length, Limits, Measured, Physical};
use tables::fits::Fit;

use super::Context;
use crate::file::{End, si};

/// What is wanted.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Wanted {
    /// Least and greatest interference.
    pub limits: Limits,
    /// Who wants it: "class H7/p6, ISO 286".
    pub whose: String,
    /// True where a class gives them.
    class: bool,
}

impl Wanted {
    /// True where a class gives the limits.
    pub fn is_class(&self) -> bool {
        self.class
    }
}

/// Limits as entered; else those of the class; else the maker's; on a taper a rule of thumb.
pub(in crate::plan) fn wanted(cx: &Context, end: End) -> Option<Wanted> {
    let fit = cx.file.fit.at(end);
    if fit.least.is_some() || fit.greatest.is_some() {
        let limits = Limits { least: si(&fit.least), greatest: si(&fit.greatest) };
        return Some(Wanted { limits, whose: "limits as entered".to_owned(), class: false });
    }
    let of_class = if cx.taper(end).is_some() { None } else { by_class(cx, end) };
    of_class.or_else(|| makers(cx)).or_else(|| by_rule(cx, end))
}

fn by_class(cx: &Context, end: End) -> Option<Wanted> {
    let class: Fit = cx.file.fit.at(end).class.parse().ok()?;
    let nominal = cx.file.sizes.at(end).nominal.as_ref()?.value();
    let (least, greatest) = class.interference(nominal).ok()?;
    let basis = class.source(nominal).basis;
    let known = match basis {
        quantities::Basis::Read => String::new(),
        _ => format!(" ({})", basis.words()),
    };
    let whose = format!("class {class}, {}{known}", class.system());
    Some(Wanted { limits: Limits::between(least.si(), greatest.si()), whose, class: true })
}

fn makers(cx: &Context) -> Option<Wanted> {
    let sheet = &cx.file.coupling.sheet.interference;
    let end = |text: &Option<Measured<Length>>| text.as_ref().map(|text| text.value().si());
    let limits = Limits { least: end(&sheet.least), greatest: end(&sheet.greatest) };
    (limits != Limits::default()).then(|| Wanted {
        limits,
        whose: "limits of the maker’s sheet".to_owned(),
        class: false,
    })
}

/// A keyless taper is drawn up to a thousandth of its diameter, give or take a tenth of that.
fn by_rule(cx: &Context, end: End) -> Option<Wanted> {
    cx.taper(end)?;
    let middle = cx.joint_diameter(end)?.si() * tables::hub_fits::TAPER;
    let limits = Limits::between(0.9 * middle, 1.1 * middle);
    let whose = format!("a thousandth of the diameter, ± 10 % ({})", tables::hub_fits::SOURCE);
    Some(Wanted { limits, whose, class: false })
}
