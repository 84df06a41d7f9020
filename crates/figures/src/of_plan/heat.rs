//! Curves of heat as their drawings want them.

use job::plan::drawings::Warmth as Moments;
use job::plan::drawings::{Closing, Pulling};

use crate::clearance::{Clearance, Level, Moment};
use crate::pull::{Pull, Window};
use crate::warmth::{self, Warmth};
use crate::{Figure, Paper};

pub(super) fn clearance(data: &Closing) -> Clearance {
    let moment = |(seconds, text): &(f64, String)| Moment { seconds: *seconds, text: text.clone() };
    Clearance {
        heights: data.heights.clone(),
        quickest: data.tight.clone(),
        likely: Some(data.likely.clone()),
        slowest: None,
        level: None,
        count_on: Some(moment(&data.home_by)),
        at_most: Some(moment(&data.at_most)),
    }
}

pub(super) fn pull(data: &Pulling) -> Pull {
    let window = data.window.as_ref();
    Pull {
        heights: data.heights.clone(),
        pull: data.pull.clone(),
        level: data
            .puller
            .as_ref()
            .map(|(value, text)| Level { value: *value, text: text.clone() }),
        window: window.map(|open| Window { from: open.from, to: open.to, text: open.text.clone() }),
        heat_off: data.heat_off,
    }
}

/// One drawing a moment; a moment that cannot be drawn is left out.
pub(super) fn warmth(data: &Moments, since: &str, paper: Paper) -> Vec<Figure> {
    let drawn = data.moments.iter().filter_map(|moment| {
        let warmth = Warmth {
            title: format!("{} {since}", moment.at),
            ranges: moment.says.clone(),
            bore: data.bore,
            hollow: data.hollow,
            shaft: data.shaft,
            slices: data.slices.clone(),
            lines: moment.lines.clone(),
        };
        warmth::draw(&warmth, paper).ok()
    });
    drawn.collect()
}
