//! What is found when a gear coupling is opened.

use quantities::{Basis, Source};

use crate::kind::{Finding, GoesBack};

const NOTE: Source = Source::common_practice("gear-coupling failure notes");
const RECALLED: Source = Source::new("coupling symposium literature", "", Basis::Memory);

pub(super) static FINDINGS: [Finding; 10] = [
    Finding {
        id: "scuffed",
        seen: "Scuffed bands on the teeth, red-brown powder",
        causes: &[
            "grease lacking or lost",
            "wrong grease, no film",
            "misaligned, so it slides fast",
        ],
        check: &[
            "amount and age of the grease",
            "seals and plugs",
            "line-up when hot",
            "sliding speed of the teeth",
        ],
        mend: &[
            "clean, measure both members, renew as a pair if worn",
            "coupling grease",
            "line up again",
        ],
        goes_back: GoesBack::Measure,
        source: NOTE,
    },
    Finding {
        id: "cake",
        seen: "Hard dry soap between the teeth, the oil gone",
        causes: &["bearing grease separated at speed", "too long between openings"],
        check: &["grade of grease against speed", "date of the last packing"],
        mend: &[
            "open and clean: pumping more through does not clear it",
            "a grease made for couplings",
            "shorter interval",
        ],
        goes_back: GoesBack::Measure,
        source: NOTE,
    },
    Finding {
        id: "one-side",
        seen: "Teeth worn at one side or one end",
        causes: &["angular misalignment", "gap or hub position wrong"],
        check: &["line-up cold and hot", "gap and axial position"],
        mend: &["line up again", "set the gap right", "measure the wear"],
        goes_back: GoesBack::Measure,
        source: NOTE,
    },
    Finding {
        id: "even-polish",
        seen: "Even polish at mid-tooth all round",
        causes: &["normal wear"],
        check: &["backlash against new"],
        mend: &["record it and follow it; renew at the limit"],
        goes_back: GoesBack::Yes,
        source: Source::common_practice("trade articles on coupling failure"),
    },
    Finding {
        id: "worm-tracks",
        seen: "Wandering grooves along the flanks",
        causes: &[
            "film broken by fast sliding",
            "misaligned at high speed",
            "water, or the wrong viscosity",
        ],
        check: &["sliding speed", "angle at each mesh", "viscosity and temperature of the oil"],
        mend: &["renew both members", "smaller angle", "better lubricant"],
        goes_back: GoesBack::No,
        source: RECALLED,
    },
    Finding {
        id: "locked",
        seen: "Acted solid: axial vibration, a shaft pushed on its thrust face, axial reading in steps",
        causes: &[
            "high friction: sludge or dry teeth",
            "ridges worn in the flanks",
            "misaligned beyond what it bears",
        ],
        check: &["axial force and thrust bearing", "ridges and sludge in the teeth"],
        mend: &[
            "clean; renew if ridged",
            "put the lubrication right",
            "look over the thrust bearing",
        ],
        goes_back: GoesBack::Measure,
        source: RECALLED,
    },
    Finding {
        id: "off-centre",
        seen: "Vibration at once per turn grew over the years; sleeve or spacer hangs",
        causes: &["teeth worn at the tips where they centre the sleeve"],
        check: &["clearance of the pilot at the tooth tips", "balance"],
        mend: &["renew the worn parts"],
        goes_back: GoesBack::No,
        source: Source::new(
            "Bloch and Geitner, Practical Machinery Management for Process Plants, vol. 4",
            "p. 296",
            Basis::Read,
        ),
    },
    Finding {
        id: "broken-teeth",
        seen: "Broken teeth, often several together",
        causes: &["shock overload", "seized mesh", "badly misaligned"],
        check: &["trips, jams and starts in the log", "line-up", "shafts and keys for twist"],
        mend: &["renew the set", "check shafts and keys for cracks"],
        goes_back: GoesBack::No,
        source: Source::common_practice("gear couplings"),
    },
    Finding {
        id: "bolts",
        seen: "Flange bolts sheared, or holes oval",
        causes: &["bolts loose and working", "overload", "wrong bolts"],
        check: &["record of the tightening", "grade of the bolts", "wear of the holes"],
        mend: &["renew the bolts as a set", "ream oversize or renew the flange"],
        goes_back: GoesBack::Measure,
        source: Source::common_practice("trade articles on coupling failure"),
    },
    Finding {
        id: "leak",
        seen: "Grease thrown in the guard",
        causes: &["seal cut at assembly", "too full", "plug missing", "gasket torn"],
        check: &["seal lip and groove", "plugs", "gasket", "teeth: how dry did they run"],
        mend: &["new seal and gasket", "the right filling"],
        goes_back: GoesBack::Measure,
        source: Source::common_practice("trade articles on coupling failure"),
    },
];
