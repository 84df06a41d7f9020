//! As found: what is seen and measured when the coupling is opened.

use couplings::kind::common_findings;
use quantities::Kind;

use super::{Choice, Face, Field, Group, Row};
use crate::opened::Opened;

const GAP: Face = Face::Quantity(Kind::Gap);

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    vec![seen(opened), measured()]
}

fn seen(opened: &Opened) -> Group {
    let kind = couplings::kind(&opened.job.file.coupling.kind);
    let own = kind.map_or(&[][..], |kind| kind.findings());
    let findings = own.iter().chain(common_findings());
    let findings = findings.map(|finding| Choice::new(finding.id, finding.seen));
    let rows = vec![
        Row::one("Opened on", "inspection.opened", Face::Code("2026-11-25")),
        Row::one("Time in service", "inspection.in_service", Face::Hours),
        Row::one("What is seen", "inspection.seen", Face::Several(findings.collect())),
        Row::one("Anything else", "inspection.note", Face::Words("what was seen")),
    ];
    Group::new("As found", "when it is opened after its time", rows).folded()
}

fn measured() -> Group {
    let pack = |name: &str| {
        let say = format!("Free length of the disc pack, {name}");
        Field::new(format!("inspection.packs.{name}"), say, name, GAP)
    };
    let rows = vec![
        Row::one("Backlash on the pitch circle", "inspection.backlash", GAP),
        Row::one("Wear of tooth, groove or sprocket", "inspection.tooth", GAP),
        Row::one("Element or bush, thinnest", "inspection.element", GAP),
        Row::one("Stretch of the chain", "inspection.stretch", Face::Quantity(Kind::Percent)),
        Row::new("Free length of each disc pack", ["driver", "driven", "pack"].map(pack).into()),
        Row::one("Sleeve or spacer off centre by", "inspection.off_centre", GAP),
    ];
    Group::new("Wear as measured", "what this kind has of it", rows).folded()
}
