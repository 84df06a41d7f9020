//! The maker's sheet, as it is copied from the manual.

use quantities::Kind;

use super::{Face, Group, Row};

const LENGTH: Face = Face::Quantity(Kind::Length);
const ALLOWANCE: Face = Face::Quantity(Kind::Allowance);
const GAP: Face = Face::Quantity(Kind::Gap);
const TORQUE: Face = Face::Quantity(Kind::Torque);
const MASS: Face = Face::Quantity(Kind::Mass);
const INERTIA: Face = Face::Quantity(Kind::Inertia);
const COUNT: Face = Face::Quantity(Kind::Count);

pub(super) fn groups() -> Vec<Group> {
    vec![sheet(), bolts(), limits(), sizes(), more(), grease_and_wear()]
}

fn row(label: &str, key: &str, face: Face) -> Row {
    Row::one(label, format!("coupling.sheet.{key}"), face)
}

fn sheet() -> Group {
    let rows = vec![
        row("Taken from", "taken_from", Face::Words("manual, number, edition")),
        row("Rated torque", "rated_torque", TORQUE),
        row("Highest speed", "max_speed", Face::Quantity(Kind::Speed)),
        row("Largest bore", "max_bore", LENGTH),
        row("Largest bore of the driven hub, if other", "driven_max_bore", LENGTH),
        row("Gap between hub faces, with its ±", "gap.hub_faces", GAP),
        row("Distance between shaft ends, with its ±", "gap.dbse", GAP),
        row("Offset allowed at fitting", "allows.fitting.offset", Face::Quantity(Kind::Offset)),
        row("Angle allowed at fitting", "allows.fitting.angle", Face::Quantity(Kind::Slope)),
    ];
    Group::new("The maker’s sheet", "a blank is not known, never guessed", rows)
}

fn bolts() -> Group {
    let rows = vec![
        row("Bolts in one flange, cover or pack", "bolts.count", COUNT),
        row("Size of the bolts", "bolts.size", Face::Code("M16")),
        row("Class or grade", "bolts.grade", Face::Code("8.8")),
        row("Tightening torque", "bolts.torque", TORQUE),
        row("Threads for that torque", "bolts.threads", threads()),
        row("Diameter of the bolt circle", "bolts.circle", LENGTH),
        row("Torque that turns a self-locking nut", "bolts.prevailing_torque", TORQUE),
    ];
    Group::new("Bolts on the sheet", "", rows)
}

/// What threads are like when they are tightened.
pub(super) fn threads() -> Face {
    Face::choice(&[
        ("dry", "dry, as received"),
        ("zinc plated", "zinc plated, dry"),
        ("oiled", "a drop of oil"),
        ("lubricated", "well lubricated"),
        ("molybdenum", "molybdenum disulphide"),
    ])
}

fn limits() -> Group {
    let rows = vec![
        row("Peak torque", "peak_torque", TORQUE),
        row("Vibratory torque, to each side", "vibratory_torque", TORQUE),
        row("Highest speed when balanced", "balanced_speed", Face::Quantity(Kind::Speed)),
        row("Offset borne while running", "allows.running.offset", Face::Quantity(Kind::Offset)),
        row("Angle borne while running", "allows.running.angle", Face::Quantity(Kind::Slope)),
        row("Axial movement borne while running", "allows.running.axial", GAP),
        row("Axial movement allowed at fitting", "allows.fitting.axial", GAP),
        row("Least gap that may be set", "gap.least", GAP),
        row("Greatest gap that may be set", "gap.greatest", GAP),
        row("End float that the coupling leaves", "gap.end_float", GAP),
        row("Highest temperature of a hub", "max_heating", Face::Quantity(Kind::Temperature)),
        row("Material of the hubs", "hub_material", Face::named(tables::materials::names())),
        row("Material of the seals", "seal_material", Face::Words("nitrile")),
        row("Highest temperature of the seals", "seal_limit", Face::Quantity(Kind::Temperature)),
    ];
    Group::new("Limits on the sheet", "peaks, running, heating", rows).folded()
}

fn sizes() -> Group {
    let rows = vec![
        row("Length of a hub", "sizes.hub_length", LENGTH),
        row("Length of the driven hub, if other", "sizes.driven_hub_length", LENGTH),
        row("Outside of a hub", "sizes.hub_outside", LENGTH),
        row("Outside of the driven hub, if other", "sizes.driven_hub_outside", LENGTH),
        row("Outside of flanges or cover", "sizes.flange_outside", LENGTH),
        row("Pitch diameter of teeth or grid", "sizes.pitch_diameter", LENGTH),
        row("Length of the spacer", "sizes.spacer_length", LENGTH),
        row("Outside of the spacer’s tube", "sizes.spacer_outside", LENGTH),
        row("Inside of the spacer’s tube", "sizes.spacer_inside", LENGTH),
        row("Free length of one disc pack or diaphragm", "sizes.pack_thickness", LENGTH),
        row("Thickness of grid, insert or bush when new", "sizes.element_thickness", LENGTH),
        row("Between the flexing planes", "sizes.between_planes", LENGTH),
    ];
    Group::new("Sizes on the sheet", "hubs, flanges, spacer, packs", rows).folded()
}

fn more() -> Group {
    let rows = vec![
        row("Mass of a hub", "masses.hub", MASS),
        row("Mass of the driven hub, if other", "masses.driven_hub", MASS),
        row("Mass of a sleeve or half cover", "masses.sleeve", MASS),
        row("Mass of the spacer", "masses.spacer", MASS),
        row("Mass of the whole coupling", "masses.total", MASS),
        row("Inertia of the whole coupling", "inertia", INERTIA),
        row("Inertia of a hub", "inertias.hub", INERTIA),
        row("Inertia of the driven hub, if other", "inertias.driven_hub", INERTIA),
        row("Inertia of a sleeve or half cover", "inertias.sleeve", INERTIA),
        row("Inertia of the spacer", "inertias.spacer", INERTIA),
        row("Torsional stiffness", "torsional_stiffness", TORQUE),
        row("Axial stiffness", "axial_stiffness", Face::Quantity(Kind::Stiffness)),
        row("Backlash when new, as an angle", "backlash", Face::Quantity(Kind::Degrees)),
        row("Set screws in one hub", "setscrew.count", COUNT),
        row("Size of the set screws", "setscrew.size", Face::Code("M10")),
        row("Torque of the set screws", "setscrew.torque", TORQUE),
        row("Least interference of the hubs", "interference.least", ALLOWANCE),
        row("Greatest interference of the hubs", "interference.greatest", ALLOWANCE),
    ];
    Group::new("Masses, stiffness, set screws, fit", "from the sheet", rows).folded()
}

fn grease_and_wear() -> Group {
    let rows = vec![
        row("Grease or oil that the sheet asks for", "lubricant.name", Face::Words("in its words")),
        row("Mass of the filling", "lubricant.mass", MASS),
        row("Volume of the filling", "lubricant.volume", Face::Quantity(Kind::Volume)),
        row("Months between fillings", "lubricant.months", COUNT),
        row("Running time between fillings", "lubricant.running_time", Face::Hours),
        row("Backlash when new, on the pitch circle", "wear.new_backlash", GAP),
        row("Backlash at which it is renewed", "wear.backlash", GAP),
        row("Wear of a tooth or groove at which it is renewed", "wear.tooth", GAP),
        row("Least thickness of an element or bush", "wear.element", LENGTH),
        row(
            "Stretch of a chain at which it is renewed",
            "wear.stretch",
            Face::Quantity(Kind::Percent),
        ),
        row("What a disc pack’s free length may differ from new", "wear.pack", GAP),
    ];
    Group::new("Grease and wear", "from the sheet", rows).folded()
}
