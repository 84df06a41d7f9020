//! What a practitioner says of gear, grid and disc couplings, told one to another at the machine
//! (common practice): each saying holds in what the kinds answer.
#![expect(clippy::unwrap_used, reason = "a test may stop")]

use couplings::kind::{GapRule, Planes, Shock};
use couplings::step::{Stage, Step};
use couplings::{Kind, Sheet, gap, kind};
use quantities::Physical;

fn three() -> [&'static dyn Kind; 3] {
    ["gear", "grid", "disc"].map(|name| kind(name).unwrap())
}

fn told(step: &Step) -> String {
    format!("{} {} {}", step.title, step.detail, step.needs.join(" ")).to_lowercase()
}

fn at<'a>(steps: &'a [Step], id: &str) -> (usize, &'a Step) {
    let mut found = steps.iter().enumerate();
    found.find(|(_, step)| step.id == id).unwrap_or_else(|| panic!("no step {id}"))
}

#[test]
fn gear_and_grid_need_lubrication_disc_needs_none() {
    let [gear, grid, disc] = three();
    assert!(gear.lubrication().is_some() && grid.lubrication().is_some());
    assert!(disc.lubrication().is_none());
    for form in disc.forms() {
        let steps = disc.install_steps(form);
        assert!(steps.iter().all(|step| !step.id.contains("fill")), "{}", form.name);
    }
}

#[test]
fn gear_passes_shock_on_grid_takes_the_edge_off_it() {
    let [gear, grid, disc] = three();
    for form in gear.forms() {
        assert_eq!(gear.forgives(form).shock, Shock::Passes, "{}", form.name);
    }
    for form in grid.forms() {
        assert_eq!(grid.forgives(form).shock, Shock::Softens, "{}", form.name);
    }
    assert_eq!(disc.forgives(&disc.forms()[0]).shock, Shock::Passes);
}

#[test]
fn all_three_forgive_some_misalignment_and_some_movement_along_the_shaft() {
    for kind in three() {
        for form in kind.forms() {
            let forgives = kind.forgives(form);
            let angle = forgives.angular_deg.unwrap();
            let axial = forgives.axial_mm.unwrap();
            assert!(angle[0] > 0.0 && axial[0] > 0.0, "{} {}", kind.name(), form.name);
            assert_ne!(forgives.planes, Planes::None);
        }
    }
}

#[test]
fn sleeves_and_covers_are_back_on_before_the_hubs_are_heated() {
    let [gear, grid, disc] = three();
    for (kind, word) in [(gear, "sleeve"), (grid, "cover")] {
        for form in kind.forms() {
            let steps = kind.install_steps(form);
            let (thread_on, step) = at(&steps, "thread-on");
            assert!(told(step).contains(word), "{} {}", kind.name(), form.name);
            for hot in ["heat-driver", "heat-driven"] {
                assert!(thread_on < at(&steps, hot).0, "{} {}", kind.name(), form.name);
            }
        }
    }
    // The seals stay clear of the hot hub.
    for kind in [gear, grid] {
        assert!(kind.near_heat().iter().any(|part| part.contains("seals")), "{}", kind.name());
    }
    for form in disc.forms() {
        let parts = disc.parts(form);
        let covered = |name: &str| name.contains("sleeve") || name.contains("cover");
        assert!(parts.iter().all(|part| !covered(part.name)), "{}", form.name);
        let steps = disc.install_steps(form);
        let (pack, _) = at(&steps, "pack-in");
        assert!(at(&steps, "heat-driven").0 < pack, "packs go on cold hubs");
    }
}

/// A pack of 8.5 mm stands between seats 8.5 mm apart; two of them and a spacer of 123 mm between
/// seats 140 mm apart.
#[test]
fn disc_seats_stand_apart_by_the_pack() {
    let [_, _, disc] = three();
    let mut sheet = Sheet::default();
    sheet.sizes.pack_thickness = Some("8.5 mm".parse().unwrap());
    sheet.sizes.spacer_length = Some("123 mm".parse().unwrap());
    for form in disc.forms() {
        let rule = disc.gap_rule(form);
        assert_eq!(rule, GapRule::SeatsEqualPack, "{}", form.name);
        let wanted = if form.planes == Planes::One { 8.5e-3 } else { 140e-3 };
        let found = gap::target(&sheet, rule, form.planes).unwrap().gap.si();
        assert!((found - wanted).abs() < 1e-12, "{}: {found}", form.name);
    }
}

/// Recorded before anything comes apart, in every form of every kind.
#[test]
fn the_distance_between_hub_faces_is_recorded_before_removal() {
    for kind in couplings::kinds() {
        for form in kind.forms() {
            let steps = kind.removal_steps(form);
            let (recorded, step) = at(&steps, "off-record");
            let words = told(step);
            assert!(words.contains("gap at four points") && words.contains("hub face"));
            let later = &steps[recorded + 1..];
            assert!(later.len() > 5 && later.iter().all(|step| step.stage == Stage::Removal));
        }
    }
}

#[test]
fn a_grid_is_seated_with_a_soft_hammer() {
    let [_, grid, _] = three();
    for form in grid.forms() {
        let steps = grid.install_steps(form);
        let words = told(at(&steps, "grid").1);
        for said in ["soft hammer", "never a hard hammer", "from one end"] {
            assert!(words.contains(said), "{}: {words}", form.name);
        }
        assert!(at(&steps, "grooves").0 < at(&steps, "grid").0, "grooves in line first");
    }
}
