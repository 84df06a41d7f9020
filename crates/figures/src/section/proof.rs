//! Every kind in random proportions: no label collides, and what is drawn measures what it says.

use proptest::prelude::*;
use quantities::System;

use super::*;
use crate::proof::{cases, is_plain, is_tidy, paths, texts};

#[expect(clippy::struct_excessive_bools, reason = "each is drawn by lot")]
/// Sizes of one coupling before it has a kind; shares of the larger bore.
#[derive(Clone, Debug)]
struct Proportions {
    bore: f64,
    smaller: f64,
    lengths: [f64; 2],
    gap: f64,
    hub: Option<f64>,
    outside: Option<f64>,
    inch: bool,
    measured: [bool; 3],
    swapped: bool,
    keyed: bool,
    hollow: bool,
    bolts: Option<u32>,
}

fn proportions() -> impl Strategy<Value = Proportions> {
    (
        (1.2..2.7_f64, 0.45..1.0_f64, [0.6..2.0_f64, 0.6..2.0_f64], 0.02..0.14_f64),
        (prop::option::of(1.38..1.75_f64), prop::option::of(1.25..1.9_f64), any::<bool>()),
        (any::<[bool; 3]>(), any::<bool>(), any::<bool>(), any::<bool>()),
        prop::option::of(prop::sample::select(vec![4_u32, 5, 6, 8, 10, 12])),
    )
        .prop_map(|((power, smaller, lengths, gap), (hub, outside, inch), flags, bolts)| {
            let (measured, swapped, keyed, hollow) = flags;
            let bore = 10.0_f64.powf(power);
            Proportions {
                bore,
                smaller,
                lengths,
                gap,
                hub,
                outside,
                inch,
                measured,
                swapped,
                keyed,
                hollow,
                bolts,
            }
        })
}

fn written(p: &Proportions, mm: f64, measured: bool) -> Dim {
    let text = match (p.inch, measured) {
        (true, true) => format!("{:.4}", mm / 25.4),
        (true, false) => format!("{:.3}", mm / 25.4),
        (false, true) => format!("{mm:.3}"),
        (false, false) => format!("{mm:.1}"),
    };
    let known = if measured { Known::Measured } else { Known::Sheet };
    Dim { mm, text, known }
}

fn half(p: &Proportions, index: usize) -> Half {
    let larger = (index == 0) != p.swapped;
    let d = if larger { p.bore } else { p.bore * p.smaller };
    let length = p.bore * p.lengths[index];
    Half {
        machine: ["motor", "pump"][index].to_owned(),
        shaft: written(p, d, p.measured[index]),
        shaft_bore_mm: p.hollow.then_some(0.4 * d),
        hub_length: written(p, length, false),
        hub_outside: p.hub.map(|share| written(p, share * p.bore, false)),
        key: p.keyed.then_some(Key {
            height_mm: 0.17 * d,
            depth_mm: 0.1 * d,
            length_mm: 0.8 * length,
        }),
    }
}

fn section(p: &Proportions, gap: f64, kind: Kind) -> Section {
    // Outside in proportion to the hub, given or not.
    let hub = p.hub.unwrap_or(1.6);
    let measured = p.measured[2];
    Section {
        driver: half(p, 0),
        driven: half(p, 1),
        gap: written(p, gap * p.bore, measured),
        outside: p.outside.map(|share| written(p, share * hub * p.bore, false)),
        kind,
        system: if p.inch { System::Inch } else { System::Metric },
    }
}

fn all_kinds(p: &Proportions) -> Vec<Section> {
    let bolts = p.bolts;
    let wide = 0.7 + 20.0 * p.gap;
    // Between the flanges of a pack: stated where the smaller shaft is not much smaller.
    let flange_gap = (p.smaller > 0.7).then(|| written(p, 0.2 * p.bore, p.measured[0]));
    let seats = 0.9 * (p.lengths[0] + p.lengths[1]) + p.gap;
    let mut sections = vec![
        section(p, 0.1 + p.gap, Kind::Disc { packs: Packs::One, bolts }),
        section(
            p,
            wide,
            Kind::Disc { packs: Packs::Two { flange_gap: flange_gap.clone() }, bolts },
        ),
        section(p, 0.1 + p.gap, Kind::Diaphragm { packs: Packs::One, bolts }),
        section(
            p,
            wide,
            Kind::Diaphragm { packs: Packs::Two { flange_gap: flange_gap.clone() }, bolts },
        ),
        section(p, p.gap, Kind::Other),
    ];
    if p.lengths.iter().all(|length| *length > 0.8) {
        let packs = Packs::Close { flange_gap };
        sections.push(section(p, seats, Kind::Disc { packs, bolts }));
    }
    let gear = |sleeves| Kind::Gear { sleeves, sleeve_outside: None, bolts };
    for sleeves in [Sleeves::Flanged, Sleeves::OneEngagement, Sleeves::Continuous] {
        sections.push(section(p, p.gap, gear(sleeves)));
    }
    sections.push(section(p, wide, gear(Sleeves::Spacer)));
    let grid = |cover, middle| Kind::Grid { cover, middle, slotted_outside: None, bolts };
    for cover in [Split::Along, Split::Across] {
        sections.push(section(p, p.gap, grid(cover, Middle::Bare)));
    }
    sections.push(section(p, 1.2 + wide, grid(Split::Along, Middle::Spacer)));
    for through in [Through::Fitted, Through::Free] {
        for (gap, middle) in [(0.0, Middle::Bare), (wide, Middle::Spacer)] {
            sections.push(section(p, gap, Kind::Rigid { through, middle, bolts }));
        }
    }
    for (gap, element) in [
        (0.25 + p.gap, Elastomer::Star),
        (0.25 + p.gap, Elastomer::Wrapped),
        (wide, Elastomer::Spacer),
    ] {
        sections.push(section(p, gap, Kind::Jaw { element, jaws: bolts }));
    }
    for (gap, middle) in [(p.gap, Middle::Bare), (wide, Middle::Spacer)] {
        sections.push(section(p, gap, Kind::Pin { middle, pins: bolts }));
    }
    for cover in [Cover::On, Cover::Bare] {
        sections.push(section(p, p.gap, Kind::Chain { cover }));
    }
    for (gap, rubber) in
        [(p.gap, Rubber::Clamped), (0.3 + p.gap, Rubber::Toothed), (wide, Rubber::Spacer)]
    {
        sections.push(section(p, gap, Kind::Shear { rubber, screws: bolts }));
    }
    sections
}

proptest! {
    #![proptest_config(cases(200))]

    #[test]
    fn labels_never_collide(p in proportions()) {
        for section in all_kinds(&p) {
            for (name, drawn) in [("full", sheet::draw(&section)), ("small", small::draw(&section))] {
                let drawing = drawn.map_err(|e| TestCaseError::fail(e.to_string()))?;
                let tidy = is_tidy(&drawing);
                prop_assert!(tidy.is_ok(), "{} {name}: {}", section.kind.title(), tidy.unwrap_err());
            }
            let apart = exploded::draw(&section).map_err(|e| TestCaseError::fail(e.to_string()))?;
            let tidy = apart.as_ref().map_or(Ok(()), is_tidy);
            prop_assert!(tidy.is_ok(), "{} apart: {}", section.kind.title(), tidy.unwrap_err());
        }
    }

}

proptest! {
    #![proptest_config(cases(20))]

    #[test]
    fn figures_are_plain_and_measure_what_they_say(p in proportions()) {
        for section in all_kinds(&p) {
            for detail in [Detail::Small, Detail::Full] {
                let figure = draw(&section, detail).map_err(|e| TestCaseError::fail(e.to_string()))?;
                let plain = is_plain(&figure);
                prop_assert!(plain.is_ok(), "{}", plain.unwrap_err());
                let width = if detail == Detail::Full { 180.0 } else { 82.0 };
                prop_assert!((figure.width_mm - width).abs() < 1e-9);
                let listed = detail == Detail::Small && small::lists_sizes(&section);
                measures(&figure.svg, &section, listed)?;
            }
        }
    }
}

/// Paper over job, read from the words of the figure.
fn stated_scale(svg: &str) -> f64 {
    let texts = texts(svg);
    let words = texts.iter().flat_map(|text| text.split(' ')).filter_map(|word| {
        let (paper, job) = word.split_once(':')?;
        Some(paper.parse::<f64>().ok()? / job.parse::<f64>().ok()?)
    });
    words.fold(None, |_, scale| Some(scale)).expect("a figure states its scale")
}

/// Shafts and rule, taken from the SVG with a ruler, come to what is written there; where sizes are
/// listed under the drawing there are no dimension lines to take.
fn measures(svg: &str, section: &Section, listed: bool) -> Result<(), TestCaseError> {
    let scale = stated_scale(svg);
    let paths = paths(svg);
    for half in section.halves() {
        let wanted = half.shaft.mm * scale;
        let found = paths.iter().any(|(_, points)| {
            points.len() == 2
                && (points[0].0 - points[1].0).abs() < 1e-9
                && ((points[0].1 - points[1].1).abs() - wanted).abs() < 0.021
        });
        let found = found || listed || wanted < 2.0 * 2.8 + 0.1;
        prop_assert!(found, "no dimension line {wanted} mm long for a shaft {}", half.shaft.text);
        let drawn = paths.iter().any(|(attributes, points)| {
            attributes.contains("stroke-width=\"0.5\"")
                && points.len() == 6
                && ((points[0].1 - points[5].1).abs() - wanted).abs() < 0.021
        });
        prop_assert!(drawn, "no shaft drawn {wanted} mm thick");
    }
    rule_is_true(svg, &paths, scale)
}

/// The printed rule is as long as it says.
fn rule_is_true(
    svg: &str,
    paths: &[(String, Vec<(f64, f64)>)],
    scale: f64,
) -> Result<(), TestCaseError> {
    let rule = paths.iter().filter(|(a, points)| {
        a.contains("stroke-width=\"0.15\"") && points.len() == 4 && a.contains("fill=\"#")
    });
    let xs: Vec<f64> = rule.flat_map(|(_, points)| points.iter().map(|p| p.0)).collect();
    let (low, high) = xs.iter().fold((f64::MAX, f64::MIN), |(l, h), x| (l.min(*x), h.max(*x)));
    let label = texts(svg).into_iter().find_map(|text| {
        let (number, unit) = text.split_once(' ')?;
        let unit = match unit {
            "mm" => 1.0,
            "in" => 25.4,
            _ => return None,
        };
        Some(number.parse::<f64>().ok()? * unit)
    });
    let label = label.expect("the rule carries its length");
    prop_assert!((high - low - label * scale).abs() < 0.021, "rule {low} to {high}, says {label}");
    Ok(())
}

fn plain_section() -> Section {
    let half = |machine: &str| Half {
        machine: machine.to_owned(),
        shaft: Dim::sheet(80.0, "80"),
        shaft_bore_mm: None,
        hub_length: Dim::sheet(90.0, "90"),
        hub_outside: None,
        key: None,
    };
    Section {
        driver: half("motor"),
        driven: half("pump"),
        gap: Dim::sheet(6.0, "6"),
        outside: None,
        kind: Kind::Gear { sleeves: Sleeves::Flanged, sleeve_outside: None, bolts: None },
        system: System::Metric,
    }
}

#[test]
fn sizes_that_are_none_are_refused() {
    for bad in [f64::NAN, f64::INFINITY, -1.0, 0.0] {
        let mut section = plain_section();
        section.driver.shaft.mm = bad;
        assert!(matches!(draw(&section, Detail::Full), Err(SectionError::Size { .. })));
    }
    let mut section = plain_section();
    section.outside = Some(Dim::sheet(70.0, "70"));
    assert!(matches!(draw(&section, Detail::Small), Err(SectionError::Order { .. })));
    section.outside = None;
    section.driven.hub_outside = Some(Dim::sheet(79.0, "79"));
    assert!(matches!(draw(&section, Detail::Small), Err(SectionError::Order { .. })));
}

/// A name from outside cannot break out of its element.
#[test]
fn names_are_escaped() {
    let mut section = plain_section();
    section.driver.machine = "<b>&\"x".to_owned();
    let figure = draw(&section, Detail::Full).unwrap();
    assert!(is_plain(&figure).is_ok() && figure.svg.contains("&lt;b&gt;&amp;"));
}

/// Measured sizes are pencil and framed; assumed ones stand in brackets; neither without the other.
#[test]
fn standing_shows_without_colour() {
    let mut section = plain_section();
    let figure = draw(&section, Detail::Full).unwrap();
    assert!(!figure.svg.contains("<rect") && !figure.svg.contains("pencil"));
    assert!(texts(&figure.svg).iter().any(|text| text.starts_with('(')));
    section.gap = Dim::measured(6.12, "6.12");
    let figure = draw(&section, Detail::Full).unwrap();
    assert_eq!(figure.svg.matches("<rect").count(), 1);
    assert!(figure.svg.contains("DejaVu Sans Mono"));
}
