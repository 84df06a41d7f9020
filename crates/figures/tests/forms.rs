//! Every form of every kind of coupling, from a job to its drawings. Sizes are invented.

use std::collections::BTreeSet;

use couplings::kind::{GapRule, Planes, Spacer};
use couplings::{Form, Kind};
use figures::of_plan;
use figures::section::Detail;
use job::plan::{Plan, plan};
use quantities::System;

fn forms() -> impl Iterator<Item = (&'static dyn Kind, &'static Form)> {
    couplings::kinds().iter().flat_map(|kind| kind.forms().iter().map(move |form| (*kind, form)))
}

/// A job in which the gap is as wide as the form needs it.
fn planned(kind: &dyn Kind, form: &Form, pack: &str, system: System) -> Plan {
    let gap = match (form.spacer, kind.gap_rule(form), form.planes) {
        (Spacer::With, ..) => "dbse = \"140 ± 0.5 mm\"",
        (_, GapRule::SeatsEqualPack, Planes::One) => "hub_faces = \"12 ± 0.3 mm\"",
        _ => "hub_faces = \"6 ± 0.3 mm\"",
    };
    let text = format!(
        "hubwright = 1\n[job]\ntitle = \"forms\"\n[coupling]\nkind = \"{}\"\nform = \"{}\"\n\
         [coupling.sheet]\ngap = {{ {gap} }}\nbolts.count = 8\n\
         sizes = {{ hub_length = \"60 mm\", hub_outside = \"85 mm\", flange_outside = \"170 mm\"{pack} }}\n\
         [sizes.driver]\nnominal = \"55 mm\"\n[sizes.driven]\nnominal = \"50 mm\"\n",
        kind.name(),
        form.name
    );
    let file = job::read(&text).unwrap_or_else(|errors| panic!("{text}\n{}", errors[0]));
    plan(&job::Job::from_file(&file), system)
}

/// No form is drawn as another one, and each comes apart; only the kind that nobody knows has
/// nothing between its hubs.
#[test]
fn every_form_is_drawn_as_itself() {
    for system in [System::Metric, System::Inch] {
        let mut drawn = BTreeSet::new();
        for (kind, form) in forms() {
            let plan = planned(kind, form, "", system);
            for detail in [Detail::Full, Detail::Small] {
                let figure = of_plan::section(&plan, detail);
                let figure = figure.unwrap_or_else(|| panic!("{} {}", kind.name(), form.name));
                let unlike = drawn.insert((detail == Detail::Full, figure.svg));
                assert!(unlike || kind.name() == "other", "{} {}", kind.name(), form.name);
            }
            let apart = of_plan::taken_apart(&plan);
            assert_eq!(apart.is_none(), kind.name() == "other", "{} {}", kind.name(), form.name);
        }
    }
}

/// Of two packs or two diaphragms the distance between the flanges is the sheet's; where the sheet
/// is silent it stands in brackets.
#[test]
fn what_lies_between_the_flanges_is_the_sheets_or_in_brackets() {
    for (kind, form) in forms() {
        let bends = ["disc", "diaphragm"].contains(&kind.name());
        if !bends || form.spacer == Spacer::Without || form.name == "close-coupled" {
            continue;
        }
        let svg = |pack: &str| {
            let plan = planned(kind, form, pack, System::Metric);
            of_plan::section(&plan, Detail::Full).unwrap().svg
        };
        let (given, silent) = (svg(", pack_thickness = \"11.5 mm\""), svg(""));
        assert!(given.contains(">11.5<") && !given.contains("assumed"), "{}", kind.name());
        assert!(silent.contains("assumed") && silent.contains(">("), "{}", kind.name());
    }
}

/// The parts list goes by the letters of the drawing: every letter of the one stands in the other.
/// A key is drawn once its sizes are known.
#[test]
fn every_letter_of_the_parts_list_stands_in_the_drawing() {
    let mut unlike = Vec::new();
    for (kind, form) in forms().filter(|(kind, _)| kind.name() != "other") {
        let plan = planned(kind, form, "", System::Metric);
        let svg = of_plan::section(&plan, Detail::Full).unwrap().svg;
        let listed: BTreeSet<char> = kind.parts(form).iter().map(|part| part.letter).collect();
        for letter in ('A'..='Z').filter(|letter| *letter != 'K') {
            let drawn = svg.contains(&format!(">{letter}<"));
            if drawn != listed.contains(&letter) {
                unlike.push(format!("{} {}: {letter}, drawn {drawn}", kind.name(), form.name));
            }
        }
    }
    assert_eq!(unlike, Vec::<String>::new());
}
