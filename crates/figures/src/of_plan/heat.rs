//! Curves of heat as their drawings want them.

use job::plan::drawings::{Closing, Pulling};

use crate::clearance::{Clearance, Level, Moment};
use crate::pull::{Pull, Window};

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
