//! The plant's own rules, which stand in every job that they were put into.

use job::plan::Step;
use quantities::Kind;

use super::{Face, Field, Group, Row, sheet};
use crate::opened::Opened;

/// All of them.
pub(crate) fn groups(opened: &Opened) -> Vec<Group> {
    vec![rules(), holds(opened)]
}

/// The rules themselves, asked for with the machines.
pub(super) fn rules() -> Group {
    let offset = Face::Quantity(Kind::Offset);
    let share = Face::Quantity(Kind::Percent);
    let rows = vec![
        Row::one("Title and edition of the rules", "site.rules", Face::Words("works rules 12")),
        Row::one("No hub hotter than", "site.hub_limit", Face::Quantity(Kind::Temperature)),
        Row::one("Heat may be used at machines", "site.heat_allowed", Face::YesNo),
        Row::one("Offset at most", "site.limits.offset", offset.clone()),
        Row::one("Slope at most", "site.limits.slope", Face::Quantity(Kind::Slope)),
        Row::one("A foot rises at most", "site.limits.foot", offset.clone()),
        Row::one("Pipes move the shaft at most", "site.limits.pipes", offset),
        Row::one("Threads are prepared", "site.threads", sheet::threads()),
        Row::one("Torque put on is right within", "site.torque_within", share),
        Row::one("Puller over pull at least", "site.puller_margin", Face::Quantity(Kind::Number)),
        Row::one("Pullers here", "site.pullers", Face::Quantities(Kind::Force)),
        Row::one("Shims in store", "site.shims", Face::Quantities(Kind::Offset)),
        Row::one("Greases in store", "site.greases", Face::Texts("grease; oil")),
        Row::one("Tools on hand", "site.tools", Face::Texts("torque wrench; gauge blocks")),
        Row::one("Everybody wears", "site.wear", Face::Texts("helmet; safety boots")),
    ];
    Group::new("Plant rules", "they come before the usual, and the plan says where", rows).folded()
}

/// One field a step: who must agree before it. Asked for with closing up, once the coupling, and so
/// its steps, are known.
pub(super) fn holds(opened: &Opened) -> Group {
    let row = |step: &Step| {
        let place = format!("site.holds.{}", step.id);
        let way = if step.id.starts_with("off.") { "coming off" } else { "going on" };
        let say = format!("Hold, {way}: {}", step.title_text());
        let face = Face::Words("who must agree, and to what");
        Row::new(step.title_text(), vec![Field::new(place, say, "", face)])
    };
    let rows = opened.plan.on.iter().chain(&opened.plan.off).map(row).collect();
    Group::new("Hold points of the plant", "in place of the usual ones", rows).folded()
}
