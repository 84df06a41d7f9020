//! What heat and the rotors' play do to the gap: each shaft grows into it, or moves in its bearings.

use lineup::axial::{ShaftEnds, ShaftGrowth};
use mechanics::Estimate;
use quantities::{
    Basis, Kind, Length, Limits, Measured, Physical, Source, TemperatureInterval, Value, Working,
};
use tables::materials::material;

use super::super::Context;
use super::super::sizes::capital;
use super::super::stage_builder::{StageBuilder, WRITTEN};
use crate::file::{End, Meant, ShaftEnd};

/// `±` of a growth or a rise that was given without one, as a share of it: a rule of our own.
const SHARE: f64 = 0.25;

/// What both shafts grow towards each other.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Growth {
    /// Driver's, driven; a figure for both together stands at the driver's.
    ends: [Estimate<Length>; 2],
    /// How each was found, where it was worked out.
    shafts: [Option<ShaftGrowth>; 2],
    /// True where one figure was entered for both.
    both: bool,
}

impl Growth {
    /// Of both together.
    pub fn total(&self) -> Estimate<Length> {
        let [one, other] = &self.ends;
        let plus_minus = one.plus_minus.si().hypot(other.plus_minus.si());
        Estimate::new(one.value + other.value, Length::from_si(plus_minus))
    }

    /// The gap to set cold for one that is right hot.
    pub fn cold(&self, hot: Length) -> ShaftEnds {
        ShaftEnds::of(hot, self.ends)
    }
}

/// The growth of both shafts, each by its own figure or worked out; else one figure for both.
pub(super) fn growth(cx: &Context) -> Option<Growth> {
    let gap = &cx.file.gap;
    let shafts = End::BOTH.map(|end| worked_out(cx, end));
    let ends = End::BOTH.map(|end| {
        let entered = gap.at(end).growth.as_ref().map(rough);
        entered.or(shafts[usize::from(end == End::Driven)].map(|shaft| shaft.growth()))
    });
    let nothing = Estimate::exact(Length::default());
    if ends.iter().any(Option::is_some) {
        let ends = ends.map(|end| end.unwrap_or(nothing));
        return Some(Growth { ends, shafts, both: false });
    }
    let both = gap.shaft_growth.as_ref().map(rough)?;
    Some(Growth { ends: [both, nothing], shafts: [None, None], both: true })
}

fn rough(text: &Measured<Length>) -> Estimate<Length> {
    let usual = text.value().abs() * SHARE;
    Estimate::new(text.value(), text.spread().unwrap_or(usual))
}

fn worked_out(cx: &Context, end: End) -> Option<ShaftGrowth> {
    let shaft = cx.file.gap.at(end);
    let (length, rise) = (shaft.length.as_ref()?, shaft.rise.as_ref()?);
    let usual = TemperatureInterval::from_si(rise.value().si().abs() * SHARE);
    let rise = Estimate::new(rise.value(), rise.spread().unwrap_or(usual));
    let metal = cx.shaft_metal(end).or(material("steel"))?;
    let casing = shaft.casing.as_ref();
    let casing = casing.map_or(Estimate::exact(Length::default()), rough);
    Some(ShaftGrowth { length: length.value(), rise, expansion: metal.expansion, casing })
}

/// How far the rotors still move towards each other, from where they stood when the gap was read.
pub(super) fn shift(cx: &Context) -> Estimate<Length> {
    let shifts = End::BOTH.map(|end| cx.file.gap.at(end).shift.as_ref());
    let value = shifts.into_iter().flatten().map(|shift| shift.value().si()).sum();
    let spread = shifts.into_iter().flatten().filter_map(Measured::spread).map(|s| s.si().powi(2));
    Estimate::new(Length::from_si(value), Length::from_si(spread.sum::<f64>().sqrt()))
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    for end in End::BOTH {
        asked(cx, out, end);
    }
    let Some(growth) = &cx.gap().growth else { return };
    if cx.is_rigid() {
        ends(cx, out, growth);
        out.note(
            "Nothing in this coupling gives along the axis: one thrust bearing holds both rotors, \
             and what the shafts grow goes to it and to the free end. The gap stays as it is set \
             (common practice).",
        );
        return;
    }
    if cx.file.gap.meant.is_none() {
        out.missing(
            "gap.meant",
            "whether the gap wanted is that of the machines running or standing",
        );
        out.note(
            "The shafts grow, and nothing says whether the gap wanted is for running or standing: \
             it is taken as for standing.",
        );
    }
    ends(cx, out, growth);
    hot(cx, out);
    stretch(cx, out, growth);
    running(cx, out);
}

/// A length without a rise, or the other way round, gives no growth.
fn asked(cx: &Context, out: &mut StageBuilder, end: End) {
    let ShaftEnd { growth, length, rise, .. } = cx.file.gap.at(end);
    let name = cx.name(end);
    if growth.is_some() || length.is_some() == rise.is_some() {
        return;
    }
    let (key, what) = if length.is_none() {
        ("length", format!("length of the {name}’s shaft from its thrust bearing"))
    } else {
        ("rise", format!("rise of the {name}’s shaft temperature"))
    };
    out.missing(&format!("gap.{}.{key}", end.key()), &what);
}

fn ends(cx: &Context, out: &mut StageBuilder, growth: &Growth) {
    if growth.both {
        out.number("growth", "Growth of both shafts", growth.ends[0].shown(Kind::Offset))
            .second("closes the gap; as entered")
            .written(WRITTEN);
        return;
    }
    for (end, (grown, shaft)) in End::BOTH.into_iter().zip(growth.ends.iter().zip(&growth.shafts)) {
        if grown.value == Length::default() && shaft.is_none() {
            continue;
        }
        let label = format!("Growth of the {}’s shaft", cx.name(end));
        let value = grown.shown(Kind::Offset);
        let entry =
            out.number(&format!("{}.growth", end.key()), label, value).second("+ closes the gap");
        match shaft {
            Some(shaft) if cx.file.gap.at(end).growth.is_none() => entry.working(shaft.working()),
            _ => entry.written(WRITTEN),
        };
    }
}

fn hot(cx: &Context, out: &mut StageBuilder) {
    let (Some(cold), Some(hot), Some(growth)) =
        (cx.gap().cold(cx), cx.gap().hot(cx), &cx.gap().growth)
    else {
        return;
    };
    let spread = growth.total().plus_minus.si();
    let value = Value::new(Kind::Gap, hot.gap).with_plus_minus(spread);
    out.number("hot", "Gap when warm, if set so", value)
        .second("cold gap less what the shafts grow")
        .working(warm_working(cold.gap, growth, value));
}

fn warm_working(cold: Length, growth: &Growth, result: Value) -> Working {
    let source = Source::new("growth towards the coupling closes the gap", "", Basis::Computed);
    Working::new("Gap when warm", "h = c − D1 − D2", result, source)
        .term("c", "gap set cold", Value::new(Kind::Gap, cold))
        .term("D1", "growth of the driver’s shaft", growth.ends[0].shown(Kind::Offset))
        .term("D2", "growth of the driven shaft", growth.ends[1].shown(Kind::Offset))
}

/// What growth takes of the axial allowance: as a stretch of the packs cold, or as travel.
fn stretch(cx: &Context, out: &mut StageBuilder, growth: &Growth) {
    let axial = &cx.file.coupling.sheet.allows.running.axial;
    let wide = cx.file.gap.meant == Some(Meant::Running);
    let flexes = cx.kind.and_then(couplings::Kind::cold_stretch).filter(|_| wide);
    let total = growth.total();
    let value = Value { si: total.value.si().abs(), ..total.shown(Kind::Gap) };
    let (id, label, second) = if let Some(what) = flexes {
        let label = format!("{} stretched when cold", capital(what));
        ("stretch", label, "none when warm; limit: the sheet, to one side")
    } else {
        let label = "Axial travel used by growth".to_owned();
        ("travel", label, "limit: the sheet, running, to one side")
    };
    let Some(axial) = axial else {
        out.missing(
            "coupling.sheet.allows.running.axial",
            "axial allowance, from the maker’s sheet",
        );
        return;
    };
    let working = Working::new(
        label.clone(),
        "s = |D1 + D2|",
        value,
        Source::new("what the shafts grow towards each other", "", Basis::Computed),
    )
    .term("D1", "growth of the driver’s shaft", growth.ends[0].shown(Kind::Offset))
    .term("D2", "growth of the driven shaft", growth.ends[1].shown(Kind::Offset));
    let mend = match (flexes, wide) {
        (Some(what), _) => {
            format!("More than the {what} bear: ask the maker for a longer spacer or other {what}.")
        }
        (None, true) => {
            "It is set wider cold by all of the growth already: ask the maker for more travel."
                .into()
        }
        (None, false) => {
            "Set it wider cold by part of the growth; the maker says how much.".to_owned()
        }
    };
    out.number(id, label, value)
        .second(second)
        .working(working)
        .judged(Limits::at_most(axial.value().si()), mend);
}

/// What the gap as it was read becomes when the machines run.
fn running(cx: &Context, out: &mut StageBuilder) {
    let (Some(running), Some(hot)) = (cx.gap().running(cx), cx.gap().hot(cx)) else { return };
    let (Some(read), Some(growth)) = (&cx.gap().read, &cx.gap().growth) else { return };
    let value = running.shown(Kind::Gap);
    let source = Source::new("growth and play of the rotors close the gap", "", Basis::Computed);
    let working = Working::new("Gap when running, as read", "r = m − q − D1 − D2", value, source)
        .term("m", "mean gap as read", read.mean.shown(Kind::Gap))
        .term("q", "rotors still move together by", shift(cx).shown(Kind::Offset))
        .term("D1", "growth of the driver’s shaft", growth.ends[0].shown(Kind::Offset))
        .term("D2", "growth of the driven shaft", growth.ends[1].shown(Kind::Offset));
    let entry = out.number("running", "Gap when running, as read", value).working(working);
    let for_running = cx.file.gap.meant == Some(Meant::Running);
    if for_running && hot.limits != Limits::default() {
        entry
            .second("against the gap wanted running")
            .judged(hot.limits, "Set the cold gap, and read again.");
    }
}
