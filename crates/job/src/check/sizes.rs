//! What cannot be of measured sizes and keys.

use quantities::{Kind, Length, Measured, Physical};

use super::Found;
use crate::JobFile;
use crate::file::{Bore, End, Gauge, GaugeReads, Key, Named, SizeEnd, Text};

/// A bore gauge travels no further than this; more is a size where a difference was asked for.
const TRAVEL_M: f64 = 2e-3;

impl Found {
    pub(super) fn sizes(&mut self, file: &JobFile, end: End) {
        let (place, sizes) = (format!("sizes.{}", end.key()), file.sizes.at(end));
        self.positive(&format!("{place}.nominal"), &sizes.nominal);
        for (part, stations, key, gauge) in [
            ("bore", &sizes.bore, "bore_gauge", &sizes.bore_gauge),
            ("shaft", &sizes.shaft, "micrometer", &sizes.micrometer),
        ] {
            self.gauge(&format!("{place}.{key}"), gauge);
            for (station, readings) in stations {
                let place = format!("{place}.{part}.{station}");
                self.readings(&place, readings, gauge.reads);
                if part == "bore" {
                    self.depth(file, end, &place, &readings.at);
                }
            }
            if gauge.reads == GaugeReads::Size {
                self.within_hub(file, end, &format!("{place}.{part}"), stations);
            }
        }
        if let Some(key) = &sizes.key {
            self.key(&format!("{place}.key"), key, sizes);
        }
    }

    fn gauge(&mut self, place: &str, gauge: &Gauge) {
        self.positive(&format!("{place}.set_on"), &gauge.set_on);
        self.positive(&format!("{place}.read_there"), &gauge.read_there);
        self.not_negative(&format!("{place}.spread"), &gauge.spread);
    }

    fn readings(&mut self, place: &str, readings: &Bore, reads: GaugeReads) {
        let named = |key: &str, named: &Named<Measured<Length>>| {
            let one = |(name, read): (&String, &Measured<Length>)| {
                (format!("{key}.{name}"), Some(read.clone()))
            };
            named.iter().map(one).collect::<Vec<_>>()
        };
        let mut all = vec![
            ("along".to_owned(), readings.along.clone()),
            ("across".to_owned(), readings.across.clone()),
            ("between".to_owned(), readings.between.clone()),
        ];
        all.extend(named("around", &readings.around));
        all.extend(named("three_point", &readings.three_point));
        for (key, read) in &all {
            let place = format!("{place}.{key}");
            match reads {
                GaugeReads::Size => self.positive(&place, read),
                GaugeReads::Difference => self.difference(&place, read),
            }
        }
        for (key, table) in [("around", &readings.around), ("three_point", &readings.three_point)] {
            for degrees in table.keys().filter(|name| angle(name).is_none()) {
                let what = format!("“{degrees}” is no angle from the key");
                self.add(&format!("{place}.{key}.{degrees}"), what, "degrees, such as 30 or 120");
            }
        }
    }

    fn difference(&mut self, place: &str, read: &Text<Length>) {
        if let Some(read) = read
            && read.value().si().abs() > TRAVEL_M
        {
            let what = format!("{} is more than a bore gauge travels", read.text());
            let expected = "the difference from what it was set on, such as 0.012 mm or 0.5 mil";
            self.add(place, what, expected);
        }
    }

    /// A bore ends where its hub ends.
    fn depth(&mut self, file: &JobFile, end: End, place: &str, at: &Text<Length>) {
        if let (Some(at), Some(length)) = (at, file.coupling.hub_length(end))
            && at.value().si() > length.si() * (1.0 + 1e-9)
        {
            let length = Measured::written(length, Kind::Length, file.system());
            let what = format!("{} deep in a hub {length} long", at.text());
            self.add(&format!("{place}.at"), what, "a depth within the hub, from its outer face");
        }
    }

    /// A reading as large as the hub itself was read elsewhere.
    fn within_hub(&mut self, file: &JobFile, end: End, place: &str, stations: &Named<Bore>) {
        let Some(outside) = file.coupling.hub_outside(end) else { return };
        let reads = stations.iter().flat_map(|(station, readings)| {
            let both = [("along", &readings.along), ("across", &readings.across)];
            both.into_iter().filter_map(move |(key, read)| Some((station, key, read.as_ref()?)))
        });
        let reads: Vec<_> = reads.collect();
        let too_large = |read: &Measured<Length>| read.value() >= outside;
        let shown = Measured::written(outside, Kind::Length, file.system());
        if reads.len() > 1 && reads.iter().all(|(.., read)| too_large(read)) {
            let what = format!("no reading goes into a hub of {shown} outside");
            let expected = format!(
                "sizes smaller than the hub: look at its outside first (coupling.{}.outside, or the sheet), then at the unit of the readings",
                end.key()
            );
            self.add(place, what, expected);
            return;
        }
        for (station, key, read) in reads.into_iter().filter(|(.., read)| too_large(read)) {
            let what = format!("{} does not go into a hub of {shown} outside", read.text());
            let expected =
                "a size smaller than the hub: was its outside read, or the unit mistaken?";
            self.add(&format!("{place}.{station}.{key}"), what, expected);
        }
    }

    fn key(&mut self, place: &str, key: &Key, sizes: &SizeEnd) {
        for (name, size) in [
            ("width", &key.width),
            ("height", &key.height),
            ("length", &key.length),
            ("shaft_width", &key.shaft_width),
            ("hub_width", &key.hub_width),
            ("shaft_depth", &key.shaft_depth),
            ("hub_depth", &key.hub_depth),
            ("shaft_keyway_length", &key.shaft_keyway_length),
            ("hub_keyway_length", &key.hub_keyway_length),
        ] {
            self.positive(&format!("{place}.{name}"), size);
        }
        if let Some(count) = key.count.filter(|count| !(1..=2).contains(&count.0)) {
            let what = format!("{} keys in one shaft", count.0);
            self.add(&format!("{place}.count"), what, "1, or 2 at 180°");
        }
        self.positive(&format!("{place}.yield_strength"), &key.yield_strength);
        self.positive(&format!("{place}.set_screw_holding"), &key.set_screw_holding);
        if !key.steel.is_empty() && tables::key_steels::key_steel(&key.steel).is_none() {
            let names = tables::key_steels::names();
            self.known(&format!("{place}.steel"), &key.steel, "a key steel", names);
        }
        if let (Some(width), Some(nominal)) = (&key.width, &sizes.nominal)
            && width.value() * 2.0 >= nominal.value()
        {
            let what = format!("a key {} wide on a shaft of {}", width.text(), nominal.text());
            self.add(&format!("{place}.width"), what, "about a quarter of the shaft’s diameter");
        }
    }
}

/// An angle from the key, in degrees.
pub(crate) fn angle(name: &str) -> Option<f64> {
    let degrees: f64 = name.trim().parse().ok()?;
    (0.0..360.0).contains(&degrees).then_some(degrees)
}
