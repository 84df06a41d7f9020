//! What each foot did as its bolt was let go, and the gaps under it, seen from above.

use lineup::foot::Corner;
use quantities::{Kind, Length, Measured, Physical, Value};

use super::super::Context;
use super::super::lineup::soft_foot;
use super::{FootMap, MapFoot, MapPlane};
use crate::check::corner_key;
use crate::file::{End, Foot};

/// `None` where no foot of this machine was tried.
pub(super) fn foot_map(cx: &Context, end: End) -> Option<FootMap> {
    let machine = cx.file.lineup.machine(end);
    let mut feet: Vec<(&String, &Foot)> = machine.feet.iter().collect();
    let distance = |foot: &Foot| foot.at.as_ref().map_or(f64::INFINITY, |at| at.value().si().abs());
    feet.sort_by(|a, b| distance(a.1).total_cmp(&distance(b.1)));
    let tried = |foot: &Foot| !foot.rise.is_empty() || !foot.gaps.is_empty();
    let plane = |(name, foot): (&String, &Foot)| MapPlane {
        name: name.clone(),
        feet: ["left", "right"].map(|side| one(cx, foot, side)),
    };
    feet.iter().any(|(_, foot)| tried(foot)).then(|| FootMap {
        end: end.key(),
        name: cx.name(end).to_owned(),
        unit: Kind::Offset.unit(cx.system).name(),
        planes: feet.into_iter().map(plane).collect(),
    })
}

fn one(cx: &Context, foot: &Foot, side: &str) -> MapFoot {
    let shown = |read: &Measured<Length>| Value::new(Kind::Offset, read.value()).digits(cx.system);
    let rise = foot.rise.get(side);
    let gaps = foot.gaps.get(side);
    let corners = [Corner::FrontLeft, Corner::FrontRight, Corner::RearLeft, Corner::RearRight];
    MapFoot {
        rise: rise.map(shown),
        soft: rise.is_some_and(|rise| rise.value() > soft_foot(cx).most),
        gaps: corners.map(|corner| Some(shown(gaps?.get(corner_key(corner))?))),
    }
}
