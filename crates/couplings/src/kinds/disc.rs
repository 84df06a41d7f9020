//! Disc couplings: packs of thin steel laminations bolted by turns to the one side and the other.

use quantities::{Basis, Source};

use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, Forgives, Form, GapRule,
    Gives, GoesBack, Kind, Lubrication, Measure, Part, Planes, Play, Reason, Shock, Spacer, Turn,
    Twist,
};
use crate::service::{FLEXING_IN_SPECIAL_TRAINS, ServiceFactor};
use crate::step::{Stage, Step};
use crate::steps;

pub struct Disc;

const TWO_PACKS: &str = "two packs with spacer";
const ONE_PACK: &str = "single pack";
const CLOSE: &str = "close-coupled";

static FORMS: [Form; 3] = [
    Form {
        name: TWO_PACKS,
        says: "A pack at each end of a spacer: two flexing planes.",
        planes: Planes::Two,
        spacer: Spacer::With,
    },
    Form {
        name: ONE_PACK,
        says: "One pack between two hubs: it takes angle and end movement, no offset.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: CLOSE,
        says: "Hubs turned towards each other inside a spacer split along its length, a pack at \
               each end: two flexing planes in the room of a short coupling.",
        planes: Planes::Two,
        spacer: Spacer::With,
    },
];

impl Kind for Disc {
    fn name(&self) -> &'static str {
        "disc"
    }

    fn title(&self) -> &'static str {
        "Disc coupling"
    }

    fn says(&self) -> &'static str {
        "Packs of thin laminations, bolted by turns to one side and the other, bend as the shafts turn; no grease, no play."
    }

    fn forms(&self) -> &'static [Form] {
        &FORMS
    }

    fn parts(&self, form: &Form) -> Vec<Part> {
        let two = form.spacer == Spacer::With;
        let mut parts = vec![
            Part::new('A', "shaft", Each::PerHub),
            Part::new('B', "driver hub", Each::One),
            Part::new('C', "driven hub", Each::One),
            Part::new('D', "disc pack", if two { Each::Two } else { Each::One }),
        ];
        if two {
            let name = if form.name == CLOSE { "split spacer" } else { "spacer" };
            parts.push(Part::new('E', name, Each::One));
        }
        parts.extend([
            Part::new('H', "bolt", Each::PerBolt),
            Part::new('K', "key", Each::PerHub),
            Part::new('N', "self-locking nut", Each::PerBolt),
            Part::new('W', "bevelled washer", Each::TwoPerBolt),
        ]);
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        Forgives {
            planes: form.planes,
            angular_deg: Some([0.33, 1.0]),
            parallel_mm: None,
            axial_mm: Some([0.5, 3.0]),
            shock: Shock::Passes,
            twist: Twist::Stiff,
            play: Play::None,
            source: Source::new(
                "typical of packs with eight bolts (low) to four bolts (high); the maker’s sheet rules",
                "",
                Basis::Memory,
            ),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "All of it: edges of the packs, bolts and their marks, stopped or by strobe.",
            torsion: "Stiff along a straight line, no play.",
            balance: "Fixed centres keep it true; in a balanced one every bolt, nut and washer \
                   has its own place.",
            gives: Gives::Metal,
            source: Source::common_practice("disc couplings"),
        }
    }

    fn lubrication(&self) -> Option<Lubrication> {
        None
    }

    fn gap_rule(&self, _: &Form) -> GapRule {
        GapRule::SeatsEqualPack
    }

    fn near_heat(&self) -> &'static [&'static str] {
        &["disc packs: fit them last, on cold hubs", "machine seals beside the hub"]
    }

    fn never_again(&self, _form: &Form) -> &'static [&'static str] {
        &[
            "a pack with a cracked, waved or kinked lamination",
            "self-locking nuts with a plastic ring; all-metal ones below their prevailing torque",
            "bolts of a pack that is renewed: packs, bolts and nuts go together",
        ]
    }

    fn close_up(&self, _: &Form) -> CloseUp {
        CloseUp {
            bolts: Bolting::AlternateHubs,
            turn: Turn::Nut,
            tools: "torque wrench and ring spanner; no impact wrench on a pack",
            stages: &[0.3, 0.7, 1.0],
            rules: &[
                "Every other bolt goes to the opposite flange; head or nut stands in the wide hole.",
                "Rounded side of every bevelled washer to the pack.",
                "Threads clean and lightly oiled. Hold the bolt, turn the nut: a turning bolt kinks the laminations.",
                "New self-locking nuts, or the prevailing torque measured and added.",
                "In a balanced coupling every bolt, nut and washer in its own place.",
            ],
            source: Source::common_practice("disc couplings"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 4] = [
            Caution::new(
                Stage::Closeup,
                "Laminations are thin and sharp: gloves. A kinked one is scrap.",
            ),
            Caution::new(
                Stage::Closeup,
                "The spacer must never hang on one pack, not for a moment: sling or blocks until \
                 both ends are bolted.",
            ),
            Caution::new(
                Stage::Running,
                "A pack with a cracked lamination can let the spacer fly. It is not run on to the \
                 next outage without a decision by whoever is responsible.",
            ),
            Caution::new(Stage::Removal, "Support the spacer before the first nut is slack."),
        ];
        &CAUTIONS
    }

    fn cold_stretch(&self) -> Option<&'static str> {
        Some("packs")
    }

    fn install_steps(&self, form: &Form) -> Vec<Step> {
        let mut order = vec![
            steps::LOCKOUT,
            steps::MACHINE_CHECK,
            steps::MAGNETIC_CENTRE,
            steps::COUPLING_CHECK,
            steps::MEASURE,
            steps::FIT,
            THREAD_ON,
            steps::SHIELD,
            steps::HEAT_DRIVER,
            steps::SLIP_DRIVER,
            steps::HEAT_DRIVEN,
            steps::SLIP_DRIVEN,
            steps::COOL,
            if form.name == CLOSE { GAP_CLOSE } else { GAP },
            steps::LINEUP,
            SEATS,
        ];
        order.push(match form.name {
            TWO_PACKS => SPACER_IN,
            CLOSE => SPLIT_IN,
            _ => PACK_IN,
        });
        order.extend([BOLTS, TORQUE, FLAT, steps::GUARD, steps::FIRST_RUN, steps::HOT_CHECK]);
        order
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let mut order = vec![steps::OFF_LOCKOUT, steps::OFF_GUARD, steps::OFF_RECORD, OFF_LOOK];
        match form.spacer {
            Spacer::With if form.name == CLOSE => {
                order.extend([OFF_SUPPORT, OFF_BOLTS, OFF_SPLIT]);
            }
            Spacer::With => order.extend([OFF_SUPPORT, OFF_BOLTS, OFF_SPACER]),
            Spacer::Without => order.extend([OFF_BOLTS, OFF_PACK]),
        }
        order.extend([
            OFF_PACKS_FLAT,
            steps::OFF_CLEAR,
            steps::OFF_FASTENINGS,
            steps::OFF_RIG,
            steps::OFF_DRIVER,
            steps::OFF_SLIDE_DRIVER,
            steps::OFF_DRIVEN,
            steps::OFF_SLIDE_DRIVEN,
            steps::OFF_SHAFTS,
            steps::OFF_KEEP,
        ]);
        order
    }

    fn checks_after_start(&self) -> &'static [Check] {
        const CHECKS: [Check; 4] = [
            Check::new(
                "outer laminations beside the bolts, stopped and locked out (or by strobe from a safe place)",
                "clean edges, no crack, pack flat",
                "misaligned when hot, gap wrong, washer the wrong way round",
            ),
            Check::new(
                "nuts against their paint marks",
                "none has moved; no red dust",
                "too slack: re-torque only as the sheet allows, else renew",
            ),
            Check::new(
                "gap over the pack at four points, hot",
                "as set cold, plus the growth that was reckoned",
                "growth not as reckoned, motor off its magnetic centre",
            ),
            Check::new(
                "vibration, axial above all, at once and twice speed",
                "in the zone for a machine just started, steady",
                "misaligned, pack pushed or pulled, spacer near its axial resonance",
            ),
        ];
        &CHECKS
    }

    fn first_recheck(&self) -> &'static str {
        "first re-check: gap and line-up hot, nuts against their marks; where they stand, leave them"
    }

    fn findings(&self) -> &'static [Finding] {
        &FINDINGS
    }

    fn least_in_special_trains(&self) -> Option<ServiceFactor> {
        Some(FLEXING_IN_SPECIAL_TRAINS)
    }

    fn wears(&self) -> &'static [Measure] {
        &[Measure::Pack]
    }

    fn suits(&self, duty: &Duty) -> Vec<Reason> {
        reasons(&[
            (
                Duty::lacks(duty.grease_service),
                Reason::pro("No grease, nothing that slides: it runs for years unopened."),
            ),
            (duty.fast(), Reason::pro("No play and fixed centres: it keeps its balance at speed.")),
            (Duty::asks(duty.hot_place), Reason::pro("All metal: heat does not age it.")),
            (
                Duty::asks(duty.end_movement),
                Reason::contra(
                    "End movement and angle share one allowance; it takes far less of both than teeth that slide.",
                ),
            ),
            (Duty::asks(duty.damping), Reason::contra("It is stiff in torsion and damps nothing.")),
            (
                duty.shocks(),
                Reason::contra("Shock beyond its peak rating buckles the laminations."),
            ),
        ])
    }
}

const THREAD_ON: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and anything a hub would trap: on the shafts now",
    "Packs, spacer and bolts stay in their boxes until the hubs are cold and lined up.",
)
.needs(&["guard ends"]);

const GAP: Step = Step::new(
    "gap",
    Stage::Gap,
    "Set the seats apart: {gap.packs}, measured at four points",
    "The distance between hub seats equals the free length of what goes between them, and what \
     the shafts grow on top; rotors where they run. Quarter turns apart. Then tighten set screws and measure \
     again.",
)
.needs(&["inside micrometer", "gauge block"]);

const GAP_CLOSE: Step = Step::new(
    "gap",
    Stage::Gap,
    "Set the seats apart: {gap.packs}, measured at four points",
    "Over both hubs, from the seat on the one flange to that on the other: it equals the spacer \
     with its packs, rotors where they run, growth taken in. Quarter turns apart. Then tighten \
     set screws and measure again.",
)
.needs(&["outside caliper or gauge rod", "gauge block"]);

const SEATS: Step = Step::new(
    "seats",
    Stage::Closeup,
    "Turn the hubs so that seats face holes; clean all seats",
    "Each bolt seat opposite a wide hole of the other flange; match marks together. Seats, \
     washers and packs clean and dry.",
)
.needs(&["lint-free cloth"]);

const SPACER_IN: Step = Step::new(
    "pack-in",
    Stage::Closeup,
    "Sling the spacer in with its packs; never hang it on a pack",
    "Sling or blocks carry it until both ends are bolted. Collapse the packs with the long bolts \
     only as far as the sheet allows. Match marks together.",
)
.needs(&["soft sling or blocks", "long bolts", "gloves"]);

const SPLIT_IN: Step = Step::new(
    "pack-in",
    Stage::Closeup,
    "Packs on, then the halves of the spacer; marks together",
    "Both halves of one set, their joint screws in by hand first and tight before the packs are. \
     Sling or blocks carry the spacer until both ends are bolted: it never hangs on one pack.",
)
.needs(&["soft sling or blocks", "gloves"]);

const PACK_IN: Step = Step::new(
    "pack-in",
    Stage::Closeup,
    "Slide the pack in between the hubs, flat, not forced",
    "It goes in without spreading anything. Match marks together.",
)
.needs(&["gloves"]);

const BOLTS: Step = Step::new(
    "bolts",
    Stage::Closeup,
    "Every other bolt to the opposite hub, washers round to pack",
    "Bolt, washer, pack, washer, nut. Rounded side of each bevelled washer against the laminations: \
     a sharp edge cuts the outer one. Nuts by hand, threads lightly oiled.",
)
.needs(&["bolts, new self-locking nuts", "bevelled washers", "light oil"]);

const TORQUE: Step = Step::new(
    "torque",
    Stage::Closeup,
    "Hold the bolt, turn the nut: in stages to {closeup.torque}",
    "Across the circle in the order of the drawing. The prevailing torque of the self-locking nuts \
     is in it where it was entered; else feel it on the free thread and add it. No impact wrench. \
     Mark each nut.",
)
.needs(&["torque wrench in date", "ring spanner", "paint marker"]);

const FLAT: Step = Step::new(
    "flat",
    Stage::Closeup,
    "Check that each pack is flat and the gap even: {gap.packs}",
    "Four points round each pack, alike. One that is set wider for growth is drawn evenly, and \
     no more. Waved, hourglass, or bowed on one side means pushed, pulled or twisted: undo and \
     set it right.",
)
.hold("Someone other than the doer looks at each pack and agrees.")
.needs(&["inside micrometer or callipers", "torch"]);

const OFF_LOOK: Step = Step::new(
    "off-look",
    Stage::Removal,
    "Look at the packs before a nut moves; take a picture",
    "Cracks beside the bolts, bowed links, red dust, nuts off their marks: they show the cause, \
     and it is gone once it is apart.",
)
.needs(&["torch", "camera", "mirror"]);

const OFF_SUPPORT: Step = Step::new(
    "off-support",
    Stage::Removal,
    "Sling or block the spacer before the first nut is slack",
    "The sling carries it now. Whole coupling: {coupling.mass}.",
)
.needs(&["soft sling or blocks"]);

const OFF_BOLTS: Step = Step::new(
    "off-bolts",
    Stage::Removal,
    "Hold the bolts, slacken the nuts across the circle",
    "A turning bolt kinks the pack. Keep bolts, washers and nuts to their holes; nuts are scrap \
     if they have lost their grip.",
)
.needs(&["ring spanners", "marked tray"]);

const OFF_SPACER: Step = Step::new(
    "off-spacer",
    Stage::Removal,
    "Collapse the packs with the long bolts; lift the spacer out",
    "Only as far as needed, evenly. Never pry on laminations.",
)
.needs(&["long bolts or jack screws", "soft sling"]);

const OFF_SPLIT: Step = Step::new(
    "off-spacer",
    Stage::Removal,
    "Part the spacer along its joint; lift halves and packs out",
    "Halves stay a pair, their screws with them. Never pry on laminations.",
)
.needs(&["soft sling", "tags"]);

const OFF_PACK: Step = Step::new(
    "off-pack",
    Stage::Removal,
    "Slide the pack out flat; move a machine if it is tight",
    "Never pry on laminations.",
)
.needs(&["gloves"]);

const OFF_PACKS_FLAT: Step = Step::new(
    "off-packs",
    Stage::Removal,
    "Lay the packs flat, paired and tagged; measure and look",
    "Thickness at each bolt, every edge for cracks, holes for wear. A pack that stays bowed has \
     set.",
)
.needs(&["callipers", "magnifier", "tags"]);

const NOTE: Source = Source::common_practice("disc-coupling failure notes");

static FINDINGS: [Finding; 9] = [
    Finding {
        id: "outer-crack",
        seen: "Cracks in the outer laminations beside bolt or bushing",
        causes: &[
            "angular misalignment, bending fatigue",
            "growth not allowed for",
            "foundation or pipe strain",
        ],
        check: &["offset and angle, cold and hot", "growth figures", "soft foot"],
        mend: &["new pack with bolts and nuts", "line up to the hot target", "find what moved"],
        goes_back: GoesBack::No,
        source: NOTE,
    },
    Finding {
        id: "axial",
        seen: "Cracks at both sides of the bolts; axial vibration, motor current swings",
        causes: &[
            "gap wrong, pack pushed or pulled",
            "rotor off its magnetic centre",
            "growth not allowed for",
        ],
        check: &["gap against the pack", "magnetic centre", "end play"],
        mend: &["new pack", "set the gap right"],
        goes_back: GoesBack::No,
        source: NOTE,
    },
    Finding {
        id: "buckled",
        seen: "Laminations bowed between bolts, several links in a row",
        causes: &["torque overload: fault, slug, hard start"],
        check: &["trips and starts in the log", "service factor", "shafts, keys and bolts"],
        mend: &["new pack and bolts", "look at the rating again"],
        goes_back: GoesBack::No,
        source: NOTE,
    },
    Finding {
        id: "mid-link",
        seen: "Broken in mid-link, fretted at the clamp",
        causes: &["torsional vibration: drive, synchronous start"],
        check: &["torsional study", "settings of the drive"],
        mend: &["move the resonance or the drive’s settings", "new pack"],
        goes_back: GoesBack::No,
        source: NOTE,
    },
    Finding {
        id: "red-dust",
        seen: "Red dust at the bolts, holes oval",
        causes: &["bolts too slack, or nuts used again"],
        check: &["tightening record", "prevailing torque of the nuts"],
        mend: &["new pack, bolts and nuts"],
        goes_back: GoesBack::No,
        source: Source::common_practice("disc couplings"),
    },
    Finding {
        id: "waved",
        seen: "Pack waved or hourglass at rest",
        causes: &["gap wrong: pushed or pulled", "bolt turned instead of nut"],
        check: &["gap at four points", "pack off and flat on a plate"],
        mend: &["set the gap right", "new pack if it has set"],
        goes_back: GoesBack::Measure,
        source: Source::common_practice("disc couplings"),
    },
    Finding {
        id: "washer-edge",
        seen: "Crack starts at the edge of a washer",
        causes: &["bevelled washer the wrong way round"],
        check: &["every washer’s face"],
        mend: &["new pack, rounded side to it"],
        goes_back: GoesBack::No,
        source: Source::common_practice("disc couplings"),
    },
    Finding {
        id: "first-run",
        seen: "Damaged at the first run",
        causes: &["impact wrench or twist at assembly", "pack carried the spacer"],
        check: &["who did what at assembly"],
        mend: &["new pack; carry the spacer, hold the bolts"],
        goes_back: GoesBack::No,
        source: NOTE,
    },
    Finding {
        id: "short-life",
        seen: "Packs last months though the line-up is good at rest",
        causes: &["line-up differs when running", "rated too small", "torsional load"],
        check: &["line-up hot", "rating", "torsional study, in that order"],
        mend: &["put right what is found first"],
        goes_back: GoesBack::No,
        source: Source::new(
            "Power Transmission Engineering, April 2021",
            "Ask the Expert",
            Basis::Read,
        ),
    },
];
