//! What cannot be of a hub and its fit.

use mechanics::taper::Taper;
use quantities::{Kind, Length, Measured};

use super::Found;
use crate::JobFile;
use crate::file::{End, Hub};

impl Found {
    pub(super) fn hub(&mut self, file: &JobFile, end: End) {
        let place = format!("coupling.{}", end.key());
        let hub = file.coupling.hub(end);
        for (key, size) in [
            ("outside", &hub.outside),
            ("length", &hub.length),
            ("flange_outside", &hub.flange_outside),
            ("flange_length", &hub.flange_length),
        ] {
            self.positive(&format!("{place}.{key}"), size);
        }
        for (key, name) in [("material", &hub.material), ("shaft_material", &hub.shaft_material)] {
            if !name.is_empty() && tables::materials::material(name).is_none() {
                let place = format!("{place}.{key}");
                self.known(&place, name, "a material", tables::materials::names());
            }
        }
        if let (Some(flange), Some(length)) = (&hub.flange_length, file.coupling.hub_length(end))
            && flange.value() > length
        {
            let length = Measured::written(length, Kind::Length, file.system());
            let what = format!("a flange of {} on a hub that is {length} long", flange.text());
            let expected = "no more than the length of the hub, flange and all";
            self.add(&format!("{place}.flange_length"), what, expected);
        }
        self.slices(&place, hub);
        self.around_the_bore(file, end, &place);
    }

    fn slices(&mut self, place: &str, hub: &Hub) {
        let mut sum = Length::default();
        for (name, slice) in &hub.slices {
            let place = format!("{place}.slices.{name}");
            self.positive(&format!("{place}.length"), &slice.length);
            self.positive(&format!("{place}.outside"), &slice.outside);
            sum += slice.length.as_ref().map(Measured::value).unwrap_or_default();
            if name.parse::<u32>().is_err() {
                let what = format!("“{name}” is no number of a slice");
                self.add(&place, what, "1, 2, 3 from the face that looks at the other machine");
            }
        }
        let whole = hub.slices.values().all(|slice| slice.length.is_some());
        if let Some(length) = hub.length.as_ref().filter(|_| whole && !hub.slices.is_empty())
            && (sum - length.value()).abs().value > 0.002 * length.value().value
        {
            let sum = Measured::written(sum, Kind::Length, file_system(length.text()));
            let what = format!("the slices are {} long together, the hub {}", sum, length.text());
            self.add(&format!("{place}.slices"), what, "slices that make up the hub’s length");
        }
    }

    /// Whatever lies around the bore must be larger than it, and a shaft’s own bore smaller.
    fn around_the_bore(&mut self, file: &JobFile, end: End, place: &str) {
        let hub = file.coupling.hub(end);
        let Some(nominal) = &file.sizes.at(end).nominal else { return };
        let slices = hub
            .slices
            .iter()
            .map(|(name, slice)| (format!("slices.{name}.outside"), &slice.outside));
        let all = [
            ("outside".to_owned(), &hub.outside),
            ("flange_outside".to_owned(), &hub.flange_outside),
        ];
        for (key, outside) in all.into_iter().chain(slices) {
            if let Some(outside) = outside
                && nominal.value() >= outside.value()
            {
                let what = format!(
                    "a bore of {} does not go into a hub of {} outside",
                    nominal.text(),
                    outside.text()
                );
                self.add(&format!("{place}.{key}"), what, "a hub larger than its bore");
            }
        }
        let given = hub.outside.is_some() || !hub.slices.is_empty();
        if let Some(outside) = file.coupling.hub_outside(end).filter(|_| !given)
            && nominal.value() >= outside
        {
            let outside = Measured::written(outside, Kind::Length, file_system(nominal.text()));
            let what = format!(
                "a bore of {} does not go into the sheet’s hub of {outside} outside",
                nominal.text()
            );
            let expected =
                "a nominal size smaller than the hub: was the size or the unit mistaken?";
            self.add(&format!("sizes.{}.nominal", end.key()), what, expected);
        }
        if let Some(bore) = &hub.shaft_bore
            && bore.value() >= nominal.value()
        {
            let what = format!("a shaft of {} has no bore of {}", nominal.text(), bore.text());
            self.add(&format!("{place}.shaft_bore"), what, "a bore smaller than the shaft");
        }
    }

    pub(super) fn fit(&mut self, file: &JobFile, end: End) {
        let (place, fit) = (format!("fit.{}", end.key()), file.fit.at(end));
        if !fit.class.is_empty()
            && let Err(error) = fit.class.parse::<tables::fits::Fit>()
        {
            let expected =
                "a class such as H7/p6 (ISO 286, hole first), FN2 (ANSI B4.1) or AGMA interference";
            self.add(&format!("{place}.class"), error.to_string(), expected);
        }
        if let (Some(least), Some(greatest)) = (&fit.least, &fit.greatest)
            && least.value() > greatest.value()
        {
            let what =
                format!("the least, {}, is above the greatest, {}", least.text(), greatest.text());
            self.add(&format!("{place}.least"), what, "the least no larger than the greatest; a clearance is written as a negative interference, such as -0.02 mm");
        }
        self.not_negative(&format!("{place}.drawn_up"), &fit.drawn_up);
        let taper = &file.sizes.at(end).taper;
        let place = format!("sizes.{}.taper", end.key());
        if !taper.rate.is_empty()
            && let Err(error) = taper.rate.parse::<Taper>()
        {
            let expected = "a taper on the diameter, such as 1:12 or 3/4 in/ft";
            self.add(&format!("{place}.rate"), error.to_string(), expected);
        }
        self.positive(&format!("{place}.small_end"), &taper.small_end);
        if let Some(contact) = &taper.contact
            && !(0.0..=1.0).contains(&contact.value().value)
        {
            let what = format!("{} is no part of a surface", contact.text());
            self.add(&format!("{place}.contact"), what, "from 0 to 100 %");
        }
    }
}

/// The system that a text’s unit belongs to.
fn file_system(text: &str) -> quantities::System {
    if text.contains("mm") { quantities::System::Metric } else { quantities::System::Inch }
}
