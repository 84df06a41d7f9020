//! Couplings with invented sizes: the full data sheet, small, large and short, unequal, inch,
//! and bores alone.

use figures::section::{
    Cover, Elastomer, Middle, Rubber, Sleeves, Split, Through, draw, taken_apart,
};

use crate::{Detail, Dim, Figure, Half, Key, Kind, Packs, Section, System};

/// Every kind with every set of sizes, and in the small form with the first.
pub fn all() -> Vec<(String, Figure)> {
    let mut figures = Vec::new();
    for set in sets() {
        for (kind, section) in kinds(&set) {
            for (detail, word) in [(Detail::Full, "full"), (Detail::Small, "small")] {
                match draw(&section, detail) {
                    Ok(figure) => figures.push((format!("{kind}-{}-{word}", set.name), figure)),
                    Err(error) => eprintln!("{kind}-{}: {error}", set.name),
                }
            }
            if let Ok(Some(figure)) = taken_apart(&section) {
                figures.push((format!("{kind}-{}-apart", set.name), figure));
            }
        }
    }
    figures
}

struct Set {
    name: &'static str,
    system: System,
    shafts: [Dim; 2],
    hubs: [Dim; 2],
    gap: Dim,
    hub: Option<f64>,
    sleeve: Option<f64>,
    flange: Option<f64>,
    bolts: u32,
}

fn sets() -> Vec<Set> {
    let mm = |v: f64| Dim::sheet(v, format!("{v}"));
    let inch = |v: f64, places: usize| Dim::sheet(v * 25.4, format!("{v:.places$}"));
    vec![
        Set {
            name: "sheet",
            system: System::Metric,
            shafts: [Dim::measured(79.962, "79.962"), mm(80.0)],
            hubs: [mm(90.0), mm(90.0)],
            gap: Dim::measured(6.12, "6.12"),
            hub: Some(116.0),
            sleeve: Some(178.0),
            flange: Some(225.0),
            bolts: 8,
        },
        Set {
            name: "little",
            system: System::Metric,
            shafts: [mm(25.0), Dim::measured(22.008, "22.008")],
            hubs: [mm(43.0), mm(43.0)],
            gap: mm(3.0),
            hub: Some(42.0),
            sleeve: Some(70.0),
            flange: Some(100.0),
            bolts: 6,
        },
        Set {
            name: "short",
            system: System::Metric,
            shafts: [mm(220.0), mm(220.0)],
            hubs: [mm(150.0), mm(150.0)],
            gap: Dim::measured(10.4, "10.40"),
            hub: Some(310.0),
            sleeve: Some(450.0),
            flange: Some(530.0),
            bolts: 12,
        },
        Set {
            name: "unequal",
            system: System::Metric,
            shafts: [mm(110.0), mm(65.0)],
            hubs: [mm(160.0), mm(75.0)],
            gap: mm(8.0),
            hub: Some(152.0),
            sleeve: Some(210.0),
            flange: Some(265.0),
            bolts: 8,
        },
        Set {
            name: "inch",
            system: System::Inch,
            shafts: [Dim::measured(82.507, "3.2483"), inch(2.875, 3)],
            hubs: [inch(3.5, 2), inch(3.5, 2)],
            gap: Dim::measured(3.251, "0.128"),
            hub: Some(114.3),
            sleeve: Some(175.3),
            flange: Some(222.25),
            bolts: 8,
        },
        Set {
            name: "bores",
            system: System::Metric,
            shafts: [Dim::measured(69.985, "69.985"), mm(60.0)],
            hubs: [mm(80.0), mm(80.0)],
            gap: mm(5.0),
            hub: None,
            sleeve: None,
            flange: None,
            bolts: 8,
        },
    ]
}

fn half(set: &Set, index: usize, hub: Option<f64>) -> Half {
    let d = set.shafts[index].mm;
    Half {
        machine: ["motor", "pump"][index].to_owned(),
        shaft: set.shafts[index].clone(),
        shaft_bore_mm: None,
        hub_length: set.hubs[index].clone(),
        hub_outside: hub.map(|hub| size(set, hub)),
        key: Some(Key {
            height_mm: 0.175 * d,
            depth_mm: 0.11 * d,
            length_mm: 0.8 * set.hubs[index].mm,
        }),
    }
}

fn size(set: &Set, mm: f64) -> Dim {
    match set.system {
        System::Metric => Dim::sheet(mm, format!("{mm:.0}")),
        System::Inch => Dim::sheet(mm, format!("{:.2}", mm / 25.4)),
    }
}

fn kinds(set: &Set) -> Vec<(&'static str, Section)> {
    let d = set.shafts[0].mm.max(set.shafts[1].mm);
    let section = |hub: Option<f64>, gap: Dim, outside: Option<f64>, kind: Kind| Section {
        driver: half(set, 0, hub),
        driven: half(set, 1, hub),
        gap,
        outside: outside.map(|mm| size(set, mm)),
        kind,
        system: set.system,
    };
    let wide = |share: f64| match set.gap.known {
        figures::section::Known::Measured => {
            let mm = share * d;
            let text = if set.system == System::Inch {
                format!("{:.3}", mm / 25.4)
            } else {
                format!("{mm:.2}")
            };
            Dim::measured(mm, text)
        }
        _ => size(set, (share * d).round()),
    };
    let hub = set.hub;
    let bolts = Some(set.bolts);
    let disc_bolts = Some(match set.name {
        "little" => 4,
        "short" => 8,
        _ => 6,
    });
    let disc = |packs| Kind::Disc { packs, bolts: disc_bolts };
    let flange = hub.map(|hub| hub + 0.68 * d);
    let mut all = Vec::new();
    for (name, sleeves, gap) in [
        ("gear", Sleeves::Flanged, set.gap.clone()),
        ("gear-one", Sleeves::OneEngagement, set.gap.clone()),
        ("gear-spacer", Sleeves::Spacer, wide(1.9)),
        ("gear-continuous", Sleeves::Continuous, set.gap.clone()),
    ] {
        let sleeve_outside = set.sleeve.map(|s| size(set, s));
        let outside = if sleeves == Sleeves::Continuous { set.sleeve } else { set.flange };
        all.push((name, section(hub, gap, outside, Kind::Gear { sleeves, sleeve_outside, bolts })));
    }
    for (name, cover, middle, gap) in [
        ("grid", Split::Along, Middle::Bare, set.gap.clone()),
        ("grid-across", Split::Across, Middle::Bare, set.gap.clone()),
        ("grid-spacer", Split::Along, Middle::Spacer, wide(2.6)),
    ] {
        let slotted_outside = hub.map(|hub| size(set, hub + 0.5 * d));
        let outside = hub.map(|hub| hub + 1.1 * d);
        all.push((
            name,
            section(hub, gap, outside, Kind::Grid { cover, middle, slotted_outside, bolts }),
        ));
    }
    let flange_gap = (set.name != "bores").then(|| size(set, (0.15 * d).round()));
    let both = set.hubs[0].mm + set.hubs[1].mm;
    let two = Packs::Two { flange_gap: flange_gap.clone() };
    let close = Packs::Close { flange_gap };
    all.extend([
        ("disc", section(hub, wide(0.17), flange, disc(Packs::One))),
        ("spacer", section(hub, wide(1.7), flange, disc(two.clone()))),
        ("close", section(hub, wide(0.9 * both / d), flange, disc(close))),
    ]);
    for (name, through, middle, gap) in [
        ("rigid", Through::Fitted, Middle::Bare, set.gap.clone()),
        ("rigid-free", Through::Free, Middle::Bare, set.gap.clone()),
        ("rigid-spacer", Through::Fitted, Middle::Spacer, wide(1.9)),
    ] {
        let outside = hub.map(|hub| 1.08 * hub + 1.05 * d);
        all.push((name, section(hub, gap, outside, Kind::Rigid { through, middle, bolts })));
    }
    for (name, element, gap) in [
        ("jaw", Elastomer::Star, wide(0.36)),
        ("jaw-wrapped", Elastomer::Wrapped, wide(0.36)),
        ("jaw-spacer", Elastomer::Spacer, wide(1.9)),
    ] {
        let outside = hub.map(|_| 1.8 * d);
        all.push((name, section(None, gap, outside, Kind::Jaw { element, jaws: Some(6) })));
    }
    for (name, middle, gap) in
        [("pin", Middle::Bare, set.gap.clone()), ("pin-spacer", Middle::Spacer, wide(1.9))]
    {
        all.push((name, section(hub, gap, None, Kind::Pin { middle, pins: Some(6) })));
    }
    for (name, rubber, gap) in [
        ("shear", Rubber::Clamped, set.gap.clone()),
        ("shear-toothed", Rubber::Toothed, wide(0.4)),
        ("shear-spacer", Rubber::Spacer, wide(1.9)),
    ] {
        all.push((name, section(hub, gap, None, Kind::Shear { rubber, screws: bolts })));
    }
    all.extend([
        ("chain", section(hub, set.gap.clone(), set.flange, Kind::Chain { cover: Cover::On })),
        ("chain-bare", section(hub, set.gap.clone(), None, Kind::Chain { cover: Cover::Bare })),
        ("diaphragm", section(hub, wide(0.17), None, Kind::Diaphragm { packs: Packs::One, bolts })),
        ("diaphragms", section(hub, wide(1.7), None, Kind::Diaphragm { packs: two, bolts })),
        ("other", section(hub, set.gap.clone(), set.flange, Kind::Other)),
    ]);
    all
}
