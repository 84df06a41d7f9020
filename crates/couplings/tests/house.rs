//! What every kind owes the house, whatever its file says.

use std::collections::BTreeSet;

use couplings::kind::{Gives, Planes, Shock, common_cautions, common_findings};
use couplings::step::{PLACEHOLDERS, blanks};
use couplings::{End, Form, Kind, Stage, Step, When, kind, kinds};

fn forms() -> impl Iterator<Item = (&'static dyn Kind, &'static Form)> {
    kinds().iter().flat_map(|kind| kind.forms().iter().map(move |form| (*kind, form)))
}

fn place(steps: &[Step], id: &str) -> usize {
    steps.iter().position(|step| step.id == id).unwrap_or_else(|| panic!("no step {id}"))
}

/// What a job with two hot hubs and rolling bearings gets.
fn usual(steps: &[Step]) -> usize {
    let on_card =
        |step: &&Step| matches!(step.when, When::Always | When::Hot(End::Driver | End::Driven));
    steps.iter().filter(on_card).count()
}

#[test]
fn a_kind_is_found_by_its_name_and_so_is_its_form() {
    let names: BTreeSet<&str> = kinds().iter().map(|kind| kind.name()).collect();
    assert_eq!(names.len(), kinds().len());
    for (kind_, form) in forms() {
        assert_eq!(kind(kind_.name()).map(Kind::title), Some(kind_.title()));
        assert_eq!(kind_.form(Some(form.name)), Some(form));
        assert!(kind_.form(Some("no such form")).is_none());
        assert_eq!(kind_.form(None), kind_.forms().first());
    }
    assert!(kind(" Rigid  FLANGE ").is_some());
}

#[test]
fn step_names_are_unique_within_a_kind() {
    for (kind, form) in forms() {
        let all = [kind.install_steps(form), kind.removal_steps(form)].concat();
        let names: BTreeSet<&str> = all.iter().map(|step| step.id).collect();
        assert_eq!(names.len(), all.len(), "{} {}", kind.name(), form.name);
    }
}

#[test]
fn lockout_comes_first_and_is_a_hold_point() {
    for (kind, form) in forms() {
        for steps in [kind.install_steps(form), kind.removal_steps(form)] {
            assert!(steps[0].id.ends_with("lockout"), "{}", kind.name());
            assert!(steps[0].hold.is_some(), "{}", kind.name());
        }
    }
}

#[test]
fn work_goes_in_the_order_of_the_stages() {
    for (kind, form) in forms() {
        let steps = kind.install_steps(form);
        assert!(steps.is_sorted_by_key(|step| step.stage), "{} {}", kind.name(), form.name);
        assert!(steps.iter().all(|step| step.stage != Stage::Removal));
        assert!(kind.removal_steps(form).iter().all(|step| step.stage == Stage::Removal));
    }
}

#[test]
fn the_guard_goes_back_last_before_the_start() {
    for (kind, form) in forms() {
        let steps = kind.install_steps(form);
        let start = steps.iter().position(|step| step.stage == Stage::Running).unwrap();
        assert_eq!(steps[start - 1].id, "guard", "{} {}", kind.name(), form.name);
    }
}

#[test]
fn what_hubs_would_trap_goes_on_first_and_is_shielded() {
    for (kind, form) in forms() {
        let steps = kind.install_steps(form);
        let hot = place(&steps, "heat-driver").min(place(&steps, "heat-driven"));
        assert!(place(&steps, "thread-on") < place(&steps, "shield"), "{}", kind.name());
        assert!(place(&steps, "shield") < hot, "{}", kind.name());
        assert!(place(&steps, "fit") < hot && steps[place(&steps, "fit")].hold.is_some());
    }
}

#[test]
fn somebody_else_agrees_to_the_line_up_before_it_is_closed() {
    for (kind, form) in forms() {
        let steps = kind.install_steps(form);
        let lineup = place(&steps, "lineup");
        assert!(steps[lineup].hold.is_some_and(|hold| hold.contains("other than the doer")));
        let close = steps.iter().position(|step| step.stage == Stage::Closeup).unwrap();
        assert!(lineup < close, "{} {}", kind.name(), form.name);
    }
}

#[test]
fn nothing_comes_apart_before_it_is_recorded() {
    for (kind, form) in forms() {
        let steps = kind.removal_steps(form);
        let before: Vec<&str> =
            steps[..place(&steps, "off-record")].iter().map(|step| step.id).collect();
        assert_eq!(before, ["off-lockout", "off-guard"], "{} {}", kind.name(), form.name);
    }
}

#[test]
fn a_card_holds_the_steps_and_a_line_holds_the_title() {
    for (kind, form) in forms() {
        let (on, off) = (kind.install_steps(form), kind.removal_steps(form));
        for steps in [&on, &off] {
            let count = usual(steps);
            assert!((12..=20).contains(&count), "{} {}: {count}", kind.name(), form.name);
        }
        let long: Vec<&str> = on.iter().chain(&off).map(|step| step.title).collect();
        let long: Vec<&str> = long.into_iter().filter(|title| title.chars().count() > 60).collect();
        assert!(long.is_empty(), "{}: {long:#?}", kind.name());
        for step in on.iter().chain(&off) {
            assert!(!step.detail.contains("  "), "{}: {}", kind.name(), step.detail);
        }
    }
}

#[test]
fn blanks_are_ones_that_a_job_can_fill() {
    for (kind, form) in forms() {
        for step in [kind.install_steps(form), kind.removal_steps(form)].concat() {
            for text in [step.title, step.detail] {
                assert_eq!(text.matches('{').count(), blanks(text).count());
                for blank in blanks(text) {
                    assert!(PLACEHOLDERS.contains(&blank), "{}: {blank}", kind.name());
                }
            }
        }
        for caution in kind.cautions().iter().chain(common_cautions()) {
            assert!(blanks(caution.text).all(|blank| PLACEHOLDERS.contains(&blank)));
        }
    }
}

/// A letter means one thing in every drawing.
#[test]
fn letters_keep_their_meaning() {
    let meanings: &[(char, &[&str])] = &[
        ('A', &["shaft"]),
        ('B', &["driver hub"]),
        ('C', &["driven hub"]),
        ('D', &["sleeve", "grid", "pack", "element", "bush", "chain", "diaphragm"]),
        ('E', &["sleeve", "cover", "spacer"]),
        ('F', &["seal"]),
        ('G', &["gasket"]),
        ('H', &["bolt", "pin", "screw"]),
        ('J', &["plug", "jaw"]),
        ('K', &["key"]),
        ('L', &["spacer"]),
        ('N', &["nut"]),
        ('S', &["spigot"]),
        ('T', &["teeth"]),
        ('W', &["washer", "ring"]),
    ];
    for (kind, form) in forms() {
        let parts = kind.parts(form);
        assert!(parts.is_sorted_by_key(|part| part.letter), "{} {}", kind.name(), form.name);
        let letters: BTreeSet<char> = parts.iter().map(|part| part.letter).collect();
        assert_eq!(letters.len(), parts.len(), "{} {}", kind.name(), form.name);
        for part in parts {
            let (_, words) = meanings.iter().find(|(letter, _)| *letter == part.letter).unwrap();
            assert!(words.iter().any(|word| part.name.contains(word)), "{part:?}");
        }
    }
}

#[test]
fn a_form_without_a_flexing_plane_forgives_nothing() {
    for (kind, form) in forms() {
        let forgives = kind.forgives(form);
        assert_eq!(forgives.planes, form.planes);
        if form.planes == Planes::None {
            assert!(forgives.angular().is_none() && forgives.parallel().is_none());
        }
        let spans = [forgives.angular_deg, forgives.parallel_mm, forgives.axial_mm];
        assert!(spans.into_iter().flatten().all(|[low, high]| 0.0 <= low && low <= high));
    }
}

#[test]
fn every_finding_says_what_to_do() {
    for kind in kinds() {
        let all = [kind.findings(), common_findings()].concat();
        let names: BTreeSet<&str> = all.iter().map(|finding| finding.id).collect();
        assert_eq!(names.len(), all.len(), "{}", kind.name());
        for finding in all {
            let lists = [finding.causes, finding.check, finding.mend];
            assert!(lists.iter().all(|list| !list.is_empty()), "{} {}", kind.name(), finding.id);
        }
    }
}

/// A kind without a flexing element gives nowhere, one of rubber cushions, and only the kind that is
/// not known here says that it does not know.
#[test]
fn a_kind_says_what_it_is_like() {
    for (kind, form) in forms() {
        let (like, forgives) = (kind.character(), kind.forgives(form));
        for text in [like.seen, like.torsion, like.balance] {
            assert!(text.ends_with('.') && text.len() > 20, "{}: {text}", kind.name());
        }
        let cushions = forgives.shock == Shock::Cushions;
        assert_eq!(cushions, like.gives == Gives::Elastomer, "{}", kind.name());
        assert_eq!(like.gives == Gives::NotKnown, kind.name() == "other");
        assert_eq!(forgives.shock == Shock::NotKnown, kind.name() == "other");
        assert!(kind.bolt_circles(form) >= 1);
    }
}

/// What the trade insists on, and where it must be said (common practice).
#[test]
fn the_trades_rules_stand_in_their_steps() {
    let rules: [(&str, &str, &[&str]); 12] = [
        ("gear", "heat-driver", &["one smooth push", "hold it home", "No steel hammer"]),
        ("gear", "thread-on", &["seals", "sleeves", "now"]),
        ("gear", "gap", &["four points", "magnetic centre"]),
        ("gear", "pack-teeth", &["Coupling grease, not bearing grease"]),
        ("gear", "gasket", &["New gasket"]),
        ("gear", "torque", &["across the circle", "stages", "once round"]),
        ("grid", "grooves", &["grooves line up"]),
        ("grid", "grid", &["from one end", "soft hammer", "Never a hard hammer"]),
        (
            "disc",
            "bolts",
            &["Every other bolt to the opposite hub", "Rounded side", "self-locking"],
        ),
        ("disc", "torque", &["Hold the bolt, turn the nut", "No impact wrench"]),
        ("disc", "pack-in", &["never hang it on a pack"]),
        ("rigid flange", "faces", &["not by bolts"]),
    ];
    for (name, id, words) in rules {
        let kind = kind(name).unwrap();
        let steps = kind.install_steps(&kind.forms()[0]);
        let step = &steps[place(&steps, id)];
        let text = format!("{} {} {}", step.title, step.detail, step.needs.join(" "));
        for word in words {
            assert!(text.contains(word), "{name} {id}: {word}");
        }
    }
}

/// Observations made up from the failure notes of the trade, with the cause to think of first.
#[test]
fn a_finding_names_the_likeliest_cause_first() {
    for (name, id, seen, cause) in [
        ("disc", "outer-crack", "Cracks in the outer laminations", "angular misalignment"),
        ("disc", "buckled", "several links", "torque overload"),
        ("grid", "no-grease", "no grease, metal blued", "never greased"),
        ("gear", "cake", "dry soap", "bearing grease separated"),
        ("gear", "locked", "axial reading in steps", "high friction"),
        ("disc", "red-dust", "Red dust at the bolts, holes oval", "bolts too slack"),
    ] {
        let findings = kind(name).unwrap().findings();
        let finding = findings.iter().find(|finding| finding.id == id).unwrap();
        assert!(finding.seen.contains(seen), "{}", finding.seen);
        assert!(finding.causes[0].contains(cause), "{}", finding.causes[0]);
    }
}
