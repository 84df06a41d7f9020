//! Set screws in hubs: which goes over a key, and what a seated one holds.
//!
//! Screws with a cup point, of hardened alloy steel, on a plain steel shaft, seated at their torque.
//! A metric screw takes the figures of the next smaller inch size, the safe side.
//!
//! Not here: the torque that several hold on a shaft (`mechanics::keys::set_screw`).

use quantities::{Basis, Force, Length, Source, Torque};
use uom::si::length::{inch, millimeter};

use crate::si::{inches, millimetres, pound_feet, pounds_force};

/// Where the holding forces come from.
pub const SOURCE: Source = Source::new(
    "Shigley’s Mechanical Engineering Design, 9th ed.",
    "Table 7-4, cup-point socket set screws",
    Basis::Memory,
);
/// Where the sizes over inch keys come from.
pub const OVER_KEY: Source =
    Source::new("ANSI B17.1-1967", "set screws for use over keys", Basis::Memory);
/// Where the sizes over metric keys come from.
pub const OVER_METRIC_KEY: Source = Source::new(
    "the largest metric screw not over three quarters of the key’s width",
    "",
    Basis::OwnRule,
);

/// A set screw, seated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetScrew {
    /// As it is called: "3/8 in", "M10".
    pub name: &'static str,
    /// Its diameter.
    pub diameter: Length,
    /// Torque that seats it.
    pub seating: Torque,
    /// Force along or around the shaft that it holds.
    pub holding: Force,
}

#[rustfmt::skip]
const INCH: [(&str, f64, f64, f64); 14] = [
    // name | diameter (in), seating torque (lbf·in), holding force (lbf)
    ("No. 5",   0.1250,   10.0,  200.0),
    ("No. 6",   0.1380,   10.0,  250.0),
    ("No. 8",   0.1640,   20.0,  385.0),
    ("No. 10",  0.1900,   36.0,  540.0),
    ("1/4 in",  0.2500,   87.0, 1000.0),
    ("5/16 in", 0.3125,  165.0, 1500.0),
    ("3/8 in",  0.3750,  290.0, 2000.0),
    ("7/16 in", 0.4375,  430.0, 2500.0),
    ("1/2 in",  0.5000,  620.0, 3000.0),
    ("9/16 in", 0.5625,  620.0, 3500.0),
    ("5/8 in",  0.6250, 1325.0, 4000.0),
    ("3/4 in",  0.7500, 2400.0, 5000.0),
    ("7/8 in",  0.8750, 5200.0, 6000.0),
    ("1 in",    1.0000, 7200.0, 7000.0),
];

const METRIC: [(&str, f64); 10] = [
    ("M4", 4.0),
    ("M5", 5.0),
    ("M6", 6.0),
    ("M8", 8.0),
    ("M10", 10.0),
    ("M12", 12.0),
    ("M14", 14.0),
    ("M16", 16.0),
    ("M20", 20.0),
    ("M24", 24.0),
];

/// Key’s width and the screw that goes over it, by its place in [`INCH`].
#[rustfmt::skip]
const KEYS: [(f64, usize); 13] = [
    (0.09375, 3), (0.125, 3), (0.1875, 4), (0.25, 5), (0.3125, 6), (0.375, 6), (0.5, 8), (0.625, 8),
    (0.75, 10), (0.875, 11), (1.0, 11), (1.25, 12), (1.5, 13),
];

/// The set screw of a size, written "M10", "3/8", "3/8-16", "3/8 in" or "No. 10"; `None` for one not
/// held.
///
/// # Source
/// [`SOURCE`].
/// # Example
/// ```
/// use tables::set_screws::set_screw;
/// use uom::si::force::pound_force;
/// let screw = set_screw("3/8").unwrap();
/// assert_eq!(screw.holding.get::<pound_force>().round(), 2000.0);
/// assert_eq!(set_screw("m10").unwrap().holding, screw.holding);
/// ```
pub fn set_screw(size: &str) -> Option<SetScrew> {
    let plain =
        |text: &str| text.to_lowercase().replace("in", "").replace(['.', ' ', '"', '#'], "");
    let size = size.split(['-', 'x', '×']).next().unwrap_or("");
    let wanted = plain(size).trim_start_matches("no").to_owned();
    let imperial =
        INCH.iter().position(|(name, ..)| plain(name).trim_start_matches("no") == wanted);
    let metric = METRIC.iter().find(|(name, _)| name.to_lowercase() == wanted);
    imperial.map(inch_screw).or_else(|| metric.and_then(metric_screw))
}

/// The set screw that goes over a key of that width; `None` where no rule is held.
///
/// # Source
/// [`OVER_KEY`] for inch keys, [`OVER_METRIC_KEY`] for the others.
pub fn over_key(width: Length) -> Option<SetScrew> {
    let width_in = width.get::<inch>();
    if let Some((_, place)) = KEYS.iter().find(|(key, _)| (key - width_in).abs() < 1e-6) {
        return Some(inch_screw(*place));
    }
    let most = 0.75 * width.get::<millimeter>() + 1e-9;
    let held = METRIC.iter().rev().find(|(_, diameter)| *diameter <= most);
    held.and_then(metric_screw)
}

/// Every screw that is held, by name.
pub fn names() -> impl Iterator<Item = &'static str> {
    INCH.iter().map(|(name, ..)| *name).chain(METRIC.iter().map(|(name, _)| *name))
}

fn inch_screw(place: usize) -> SetScrew {
    let (name, diameter, seating, holding) = INCH[place];
    SetScrew {
        name,
        diameter: inches(diameter),
        seating: pound_feet(seating / 12.0),
        holding: pounds_force(holding),
    }
}

fn metric_screw((name, diameter_mm): &(&'static str, f64)) -> Option<SetScrew> {
    let smaller = INCH.iter().rposition(|(_, diameter, ..)| diameter * 25.4 <= *diameter_mm)?;
    Some(SetScrew { name, diameter: millimetres(*diameter_mm), ..inch_screw(smaller) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::force::pound_force;

    /// ANSI B17.1, set screws over keys, from memory: 1/2 in over a 1/2 in key, 3/4 in over 1 in.
    #[test]
    fn screws_go_over_their_keys() {
        let name = |width| over_key(Length::new::<inch>(width)).unwrap().name;
        assert_eq!([name(0.5), name(1.0), name(0.25)], ["1/2 in", "3/4 in", "5/16 in"]);
        let metric = |width| over_key(Length::new::<millimeter>(width)).map(|screw| screw.name);
        assert_eq!([metric(22.0), metric(12.0), metric(4.0)], [Some("M16"), Some("M8"), None]);
        assert!(over_key(Length::new::<millimeter>(f64::NAN)).is_none());
    }

    #[test]
    fn sizes_are_read_as_written() {
        for (text, pounds) in [
            ("1/2 in", 3000.0),
            ("1/2\"", 3000.0),
            ("no 10", 540.0),
            ("#10", 540.0),
            ("3/8-16", 2000.0),
            ("M10 x 1.5", 2000.0),
            ("M8", 1500.0),
            ("m 12", 2500.0),
        ] {
            let found = set_screw(text).unwrap_or_else(|| panic!("{text}"));
            assert!((found.holding.get::<pound_force>() - pounds).abs() < 0.5, "{text}");
        }
        for text in ["", "M7", "2/3", "ten"] {
            assert!(set_screw(text).is_none(), "“{text}” is {:?}", set_screw(text));
        }
        assert!(names().all(|name| set_screw(name).unwrap().name == name));
    }

    /// A larger screw holds more.
    #[test]
    fn larger_holds_more() {
        for pair in INCH.windows(2) {
            assert!(pair[1].1 > pair[0].1 && pair[1].3 > pair[0].3);
        }
    }
}
