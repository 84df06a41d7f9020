//! What may be found on a hub of any kind of coupling.

use quantities::Source;

use crate::kind::{Finding, GoesBack};

/// Findings for every kind; [`crate::Kind::findings`] has those of one.
pub fn common_findings() -> &'static [Finding] {
    &COMMON
}

static COMMON: [Finding; 2] = [
    Finding {
        id: "hub-walk",
        seen: "Hub moved along the shaft",
        causes: &["fit too loose", "set screw not tight", "axial push"],
        check: &["mark on the shaft against the hub’s face", "bore, shaft and key sizes"],
        mend: &["fit it again with the right interference"],
        goes_back: GoesBack::Measure,
        source: Source::common_practice("hubs in general"),
    },
    Finding {
        id: "hub-crack",
        seen: "Hub split at the key seat",
        causes: &["too much interference", "key tight on top", "overload"],
        check: &["stress in the bore", "clearance over the key"],
        mend: &["new hub"],
        goes_back: GoesBack::No,
        source: Source::common_practice("hubs in general"),
    },
];
