//! What cannot be of a line-up: dials, feet, the rest of the train, visits.

use lineup::clock::{Clock, View};
use lineup::foot::Corner;
use quantities::{Length, Measured, Physical};

use super::Found;
use crate::JobFile;
use crate::file::{Dial, DialKind, Foot, Named};

const SIDES: [&str; 2] = ["left", "right"];

/// No dial in this work travels further.
const TRAVEL_M: f64 = 50e-3;

impl Found {
    pub(super) fn lineup(&mut self, file: &JobFile) {
        let lineup = &file.lineup;
        self.dials("lineup.dials", &lineup.dials);
        for (name, left) in &lineup.as_left.dials {
            let place = format!("lineup.as_left.dials.{name}");
            self.clocks(&format!("{place}.readings"), &left.readings);
            if !lineup.dials.contains_key(name) {
                let what = format!("there is no dial “{name}” in this job");
                self.add(&place, what, one_of(lineup.dials.keys().map(String::as_str)));
            }
        }
        self.clocks("lineup.rough.steps", &lineup.rough.steps);
        self.clocks("lineup.rough.gaps", &lineup.rough.gaps);
        self.positive("lineup.rough.diameter", &lineup.rough.diameter);
        self.positive("lineup.gap_diameter", &lineup.gap_diameter);
        for (key, limit) in [
            ("offset", &lineup.limits.offset),
            ("foot", &lineup.limits.foot),
            ("pipes", &lineup.limits.pipes),
        ] {
            self.positive(&format!("lineup.limits.{key}"), limit);
        }
        self.positive("lineup.limits.slope", &lineup.limits.slope);
        self.stock(&lineup.shims.stock);
        for (end, machine) in [("driver", &lineup.driver), ("driven", &lineup.driven)] {
            let place = format!("lineup.{end}");
            self.feet(&format!("{place}.feet"), &machine.feet);
            self.positive(&format!("{place}.centre_height"), &machine.centre_height);
            self.positive(&format!("{place}.width"), &machine.width);
            self.corners(&format!("{place}.pads"), machine.pads.keys());
            self.corners(&format!("{place}.soles"), machine.soles.keys());
            if let Some(flange) = &machine.flange {
                self.positive(&format!("{place}.flange.circle"), &flange.circle);
                self.clock(&format!("{place}.flange.first"), &flange.first);
                if flange.bolts.is_some_and(|bolts| bolts.0 < 3) {
                    let what = "a flange needs three bolts at least".to_owned();
                    self.add(&format!("{place}.flange.bolts"), what, "3 or more");
                }
            }
        }
        self.train(file);
    }

    fn train(&mut self, file: &JobFile) {
        let train = &file.lineup.train;
        for (side, machines) in [("before", &train.before), ("after", &train.after)] {
            for (number, machine) in machines {
                let place = format!("lineup.train.{side}.{number}");
                if !(1..=6_u32).any(|known| known.to_string() == *number) {
                    let what = format!("“{number}” is no place in a train");
                    self.add(
                        &place,
                        what,
                        "1 for the machine next to this job’s, 2 for the next, …",
                    );
                }
                self.positive(&format!("{place}.coupling_at"), &machine.coupling_at);
                self.positive(&format!("{place}.between_planes"), &machine.between_planes);
                self.positive(&format!("{place}.speed"), &machine.speed);
                self.dials(&format!("{place}.dials"), &machine.dials);
                self.feet(&format!("{place}.feet"), &machine.feet);
            }
        }
        let machines = 2 + train.before.len() + train.after.len();
        if machines > 8 {
            let what = format!("{machines} machines in one train");
            self.add("lineup.train", what, "eight machines at most");
        }
    }

    fn dials(&mut self, place: &str, dials: &Named<Dial>) {
        for (name, dial) in dials {
            let place = format!("{place}.{name}");
            self.dial(&place, dial);
            let opposite = &dial.opposite;
            if !opposite.is_empty() && (opposite == name || !dials.contains_key(opposite)) {
                let what = format!("there is no other dial “{opposite}” at this coupling");
                let others = dials.keys().filter(|other| *other != name).map(String::as_str);
                self.add(&format!("{place}.opposite"), what, one_of(others));
            }
        }
    }

    fn dial(&mut self, place: &str, dial: &Dial) {
        self.positive(&format!("{place}.swing"), &dial.swing);
        self.positive(&format!("{place}.division"), &dial.division);
        self.not_negative(&format!("{place}.runout"), &dial.runout);
        self.clock(&format!("{place}.high"), &dial.high);
        self.clocks(&format!("{place}.readings"), &dial.readings);
        for (clock, read) in &dial.readings {
            if read.value().abs() > Length::from_si(TRAVEL_M) {
                let what = format!("{} is more than a dial travels", read.text());
                let expected = "what the dial showed, such as 0.25 mm or 10 mil";
                self.add(&format!("{place}.readings.{clock}"), what, expected);
            }
        }
        for (number, sweep) in &dial.again {
            self.clocks(&format!("{place}.again.{number}"), sweep);
        }
        if let Some(sag) = &dial.sag
            && sag.value() < Length::default()
        {
            let expected =
                "half of what the dial shows at the bottom of the mandrel, without its sign";
            self.add(&format!("{place}.sag"), format!("{} is negative", sag.text()), expected);
        }
        if let Some(mandrel) = &dial.mandrel
            && dial.kind == DialKind::Rim
            && mandrel.value() > Length::default()
        {
            let what = format!("{} says that the bracket rises", mandrel.text());
            self.add(
                &format!("{place}.mandrel"),
                what,
                "the bottom reading, zeroed on top: negative",
            );
        }
    }

    /// Two planes of feet at one place hold no line.
    fn apart(&mut self, place: &str, feet: &Named<Foot>) {
        let places = feet.iter().filter_map(|(name, foot)| Some((name, foot.at.as_ref()?)));
        let places: Vec<_> = places.collect();
        for (index, (name, at)) in places.iter().enumerate() {
            let same = |(_, other): &&(&String, &Measured<Length>)| {
                (other.value() - at.value()).abs().si() < 1e-6
            };
            if let Some((other, _)) = places[..index].iter().find(same) {
                let what = format!("{} is where the {other} feet stand", at.text());
                let expected = "a distance of its own for each pair of feet";
                self.add(&format!("{place}.{name}.at"), what, expected);
            }
        }
    }

    fn feet(&mut self, place: &str, feet: &Named<Foot>) {
        self.apart(place, feet);
        for (name, foot) in feet {
            let place = format!("{place}.{name}");
            self.positive(&format!("{place}.at"), &foot.at);
            for (key, length) in [
                ("shims", &foot.shims),
                ("side_room", &foot.side_room),
                ("room_right", &foot.room_right),
                ("room_left", &foot.room_left),
            ] {
                self.not_negative(&format!("{place}.{key}"), length);
            }
            self.stock_at(&format!("{place}.pack"), &foot.pack);
            for side in foot.rise.keys() {
                self.side(&format!("{place}.rise"), side);
            }
            for side in foot.rise_free.keys() {
                self.side(&format!("{place}.rise_free"), side);
            }
            for (side, gaps) in &foot.gaps {
                self.side(&format!("{place}.gaps"), side);
                self.corners(&format!("{place}.gaps.{side}"), gaps.keys());
                for (corner, gap) in gaps {
                    self.not_negative(&format!("{place}.gaps.{side}.{corner}"), &Some(gap.clone()));
                }
            }
        }
    }

    fn side(&mut self, place: &str, side: &str) {
        if !SIDES.contains(&side) {
            let what = format!("“{side}” is not a side of a machine");
            self.add(&format!("{place}.{side}"), what, one_of(SIDES));
        }
    }

    fn corners<'a>(&mut self, place: &str, corners: impl Iterator<Item = &'a String>) {
        for corner in corners {
            if corner_of(corner).is_none() {
                let what = format!("“{corner}” is not a corner");
                self.add(&format!("{place}.{corner}"), what, one_of(Corner::ALL.map(corner_key)));
            }
        }
    }

    fn stock(&mut self, stock: &[Measured<Length>]) {
        self.stock_at("lineup.shims.stock", stock);
    }

    fn stock_at(&mut self, place: &str, shims: &[Measured<Length>]) {
        if let Some(shim) = shims.iter().find(|shim| shim.value().si() <= 0.0) {
            self.add(place, format!("a shim of {}", shim.text()), "thicknesses above zero");
        }
    }

    pub(super) fn clocks(&mut self, place: &str, readings: &Named<Measured<Length>>) {
        for clock in readings.keys() {
            self.clock_at(&format!("{place}.{clock}"), clock);
        }
    }

    fn clock(&mut self, place: &str, clock: &str) {
        if !clock.is_empty() {
            self.clock_at(place, clock);
        }
    }

    fn clock_at(&mut self, place: &str, clock: &str) {
        if Clock::read(clock, View::FromDriver).is_err() {
            let what = format!("“{clock}” is not a clock position");
            self.add(place, what, "12, 3, 6, 9 or another, such as 1:30");
        }
    }
}

fn one_of<'a>(names: impl IntoIterator<Item = &'a str>) -> String {
    format!("one of: {}", names.into_iter().collect::<Vec<_>>().join(", "))
}

/// A corner by its key in the file.
fn corner_of(key: &str) -> Option<Corner> {
    Corner::ALL.into_iter().find(|corner| corner_key(*corner) == key)
}

/// Its key in the file.
pub(crate) fn corner_key(corner: Corner) -> &'static str {
    match corner {
        Corner::FrontLeft => "front-left",
        Corner::RearLeft => "rear-left",
        Corner::RearRight => "rear-right",
        Corner::FrontRight => "front-right",
    }
}
