//! Figures of one sheet that cannot both be right: the one that should be the smaller is not.
//!
//! Only what cannot be on any coupling is told: a least above its greatest, a part heavier than the
//! whole, a bolt circle outside its flange. Which of the two is wrong, the manual says.

use quantities::{Kind, Length, Measured, Physical, Value};

use crate::Sheet;

/// Two figures of a sheet in the wrong order of size.
#[derive(Clone, Debug, PartialEq)]
pub struct Contradiction {
    /// What should be no larger: "least gap".
    pub small: &'static str,
    /// As it stands.
    pub small_is: Value,
    /// What should be no smaller.
    pub large: &'static str,
    /// As it stands.
    pub large_is: Value,
}

/// Every pair of a sheet that contradicts itself, in the order of the sheet.
///
/// # Source
/// What the words mean, and the order in which the parts of one coupling lie.
/// # Example
/// ```
/// use couplings::{Sheet, contradictions::contradictions};
/// let mut sheet = Sheet::default();
/// sheet.gap.least = Some("6 mm".parse()?);
/// assert!(contradictions(&sheet).is_empty());
/// sheet.gap.greatest = Some("4 mm".parse()?);
/// assert_eq!(contradictions(&sheet)[0].small, "least gap");
/// # Ok::<(), quantities::TextError>(())
/// ```
pub fn contradictions(sheet: &Sheet) -> Vec<Contradiction> {
    let mut found = Vec::new();
    ratings(sheet, &mut found);
    sizes(sheet, &mut found);
    bears(sheet, &mut found);
    masses(sheet, &mut found);
    inertias(sheet, &mut found);
    wear(sheet, &mut found);
    found
}

type Named<'a, Q> = (&'static str, &'a Option<Measured<Q>>);

/// Notes a pair when both are there and the first is above the second.
fn order<Q: Physical>(
    found: &mut Vec<Contradiction>,
    kind: Kind,
    (small, one): Named<Q>,
    (large, other): Named<Q>,
) {
    if let (Some(one), Some(other)) = (one, other)
        && one.value().si() > other.value().si()
    {
        let [small_is, large_is] = [one, other].map(|figure| Value::new(kind, figure.value()));
        found.push(Contradiction { small, small_is, large, large_is });
    }
}

fn ratings(sheet: &Sheet, found: &mut Vec<Contradiction>) {
    let rated = ("rated torque", &sheet.rated_torque);
    order(found, Kind::Torque, rated, ("peak torque", &sheet.peak_torque));
    let supplied = ("highest speed as supplied", &sheet.max_speed);
    let swings = ("vibratory torque", &sheet.vibratory_torque);
    order(found, Kind::Torque, swings, ("peak torque", &sheet.peak_torque));
    order(found, Kind::Speed, supplied, ("highest speed balanced", &sheet.balanced_speed));
}

fn sizes(sheet: &Sheet, found: &mut Vec<Contradiction>) {
    let (sizes, gap) = (&sheet.sizes, &sheet.gap);
    let mut length = |small: Named<Length>, large| order(found, Kind::Length, small, large);
    length(("least gap", &gap.least), ("greatest gap", &gap.greatest));
    let spacer = ("outside of the spacer", &sizes.spacer_outside);
    length(("inside of the spacer", &sizes.spacer_inside), spacer);
    let flange = ("outside of the flange", &sizes.flange_outside);
    length(("outside of a hub", &sizes.hub_outside), flange);
    length(("outside of the driven hub", &sizes.driven_hub_outside), flange);
    length(("pitch diameter", &sizes.pitch_diameter), flange);
    length(("bolt circle", &sheet.bolts.circle), flange);
    length(("largest bore", &sheet.max_bore), ("outside of a hub", &sizes.hub_outside));
    let own = ("outside of the driven hub", &sizes.driven_hub_outside);
    let driven = if own.1.is_some() { own } else { ("outside of a hub", &sizes.hub_outside) };
    length(("largest bore of the driven hub", &sheet.driven_max_bore), driven);
    let new = ("thickness of a new element", &sizes.element_thickness);
    length(("thickness at which an element is renewed", &sheet.wear.element), new);
    let interference = &sheet.interference;
    order(
        found,
        Kind::Offset,
        ("least interference", &interference.least),
        ("greatest interference", &interference.greatest),
    );
}

fn bears(sheet: &Sheet, found: &mut Vec<Contradiction>) {
    let (fitting, running) = (&sheet.allows.fitting, &sheet.allows.running);
    order(
        found,
        Kind::Offset,
        ("offset allowed at fitting", &fitting.offset),
        ("offset borne running", &running.offset),
    );
    order(
        found,
        Kind::Degrees,
        ("angle allowed at fitting", &fitting.angle),
        ("angle borne running", &running.angle),
    );
    order(
        found,
        Kind::Offset,
        ("axial movement allowed at fitting", &fitting.axial),
        ("axial movement borne running", &running.axial),
    );
}

fn masses(sheet: &Sheet, found: &mut Vec<Contradiction>) {
    let whole = ("mass of the whole coupling", &sheet.masses.total);
    for part in [
        ("mass of a hub", &sheet.masses.hub),
        ("mass of the driven hub", &sheet.masses.driven_hub),
        ("mass of a sleeve", &sheet.masses.sleeve),
        ("mass of the spacer", &sheet.masses.spacer),
    ] {
        order(found, Kind::Mass, part, whole);
    }
}

fn inertias(sheet: &Sheet, found: &mut Vec<Contradiction>) {
    let (whole, parts) = (("inertia of the whole coupling", &sheet.inertia), &sheet.inertias);
    for part in [
        ("inertia of a hub", &parts.hub),
        ("inertia of the driven hub", &parts.driven_hub),
        ("inertia of a sleeve", &parts.sleeve),
        ("inertia of the spacer", &parts.spacer),
    ] {
        order(found, Kind::Inertia, part, whole);
    }
}

fn wear(sheet: &Sheet, found: &mut Vec<Contradiction>) {
    let new = ("backlash when new", &sheet.wear.new_backlash);
    order(found, Kind::Offset, new, ("backlash to renew at", &sheet.wear.backlash));
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A sheet with every pair the wrong way round, and the same one with every pair right.
    #[test]
    fn every_pair_is_told_once_and_only_when_it_is_wrong() {
        let sheet = |low: &str, high: &str| -> Sheet {
            let text = format!(
                r#"{{"rated_torque":"{low} N·m","peak_torque":"{high} N·m",
                "vibratory_torque":"{low} N·m","driven_max_bore":"{low} mm",
                "inertia":"{high} kg·m2","inertias":{{"hub":"{low} kg·m2","spacer":"{low} kg·m2"}},
                "max_speed":"{low} rpm","balanced_speed":"{high} rpm",
                "gap":{{"least":"{low} mm","greatest":"{high} mm"}},
                "sizes":{{"spacer_inside":"{low} mm","spacer_outside":"{high} mm",
                "driven_hub_outside":"{high} mm","element_thickness":"{high} mm",
                "pitch_diameter":"{low} mm","flange_outside":"{high} mm"}},
                "bolts":{{"circle":"{low} mm"}},
                "interference":{{"least":"{low} um","greatest":"{high} um"}},
                "allows":{{"fitting":{{"offset":"{low} mm","angle":"{low} deg","axial":"{low} mm"}},
                "running":{{"offset":"{high} mm","angle":"{high} deg","axial":"{high} mm"}}}},
                "masses":{{"hub":"{low} kg","spacer":"{low} kg","total":"{high} kg"}},
                "wear":{{"new_backlash":"{low} mm","backlash":"{high} mm","element":"{low} mm"}}}}"#
            );
            serde_json::from_str(&text).unwrap()
        };
        assert_eq!(contradictions(&sheet("1", "2")), []);
        assert_eq!(contradictions(&sheet("2", "2")), []);
        assert_eq!(contradictions(&sheet("2", "1")).len(), 18);
    }
}
