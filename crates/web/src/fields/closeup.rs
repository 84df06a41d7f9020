//! Bolts and grease as the job has them.

use quantities::Kind;

use super::{Face, Group, Row, sheet};

pub(super) fn groups() -> Vec<Group> {
    let torque = Face::Quantity(Kind::Torque);
    let rows = vec![
        Row::one("Threads", "closeup.threads", sheet::threads()),
        Row::one(
            "Running torque of a self-locking nut",
            "closeup.prevailing_torque",
            torque.clone(),
        ),
        Row::one("Torque put on", "closeup.torque_done", torque),
        Row::one("Grease put in", "closeup.grease_used", Face::Words("name and amount")),
    ];
    vec![Group::new("Bolts and grease", "as this job has them", rows)]
}
