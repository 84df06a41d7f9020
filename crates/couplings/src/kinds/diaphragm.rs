//! Diaphragm couplings: thin metal diaphragms between hub and spacer bend as the shafts turn.

use quantities::{Basis, Source};

use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, Forgives, Form, GapRule,
    Gives, GoesBack, Kind, Lubrication, Part, Planes, Play, Reason, Shock, Spacer, Turn, Twist,
};
use crate::service::{FLEXING_IN_SPECIAL_TRAINS, ServiceFactor};
use crate::step::{Stage, Step};
use crate::steps;

pub struct Diaphragm;

const TWO: &str = "two diaphragms with spacer";
const ONE: &str = "single diaphragm";

static FORMS: [Form; 2] = [
    Form {
        name: TWO,
        says: "A diaphragm, or a pack of them, at each end of a spacer.",
        planes: Planes::Two,
        spacer: Spacer::With,
    },
    Form {
        name: ONE,
        says: "One diaphragm between two hubs: angle and end movement, no offset.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
];

impl Kind for Diaphragm {
    fn name(&self) -> &'static str {
        "diaphragm"
    }

    fn title(&self) -> &'static str {
        "Diaphragm coupling"
    }

    fn says(&self) -> &'static str {
        "Torque goes through thin metal diaphragms from rim to hub; they bend with angle and end movement; no grease, no play."
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
            Part::new('D', "diaphragm", if two { Each::Two } else { Each::One }),
        ];
        if two {
            parts.push(Part::new('E', "spacer", Each::One));
        }
        parts.extend([
            Part::new('H', "bolt", Each::PerBolt),
            Part::new('K', "key", Each::PerHub),
            Part::new('N', "self-locking nut", Each::PerBolt),
            Part::new('S', "spigot", Each::PerHub),
        ]);
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        Forgives {
            planes: form.planes,
            angular_deg: Some([0.25, 0.5]),
            parallel_mm: None,
            axial_mm: Some([1.5, 8.0]),
            shock: Shock::Passes,
            twist: Twist::Stiff,
            play: Play::None,
            source: Source::new(
                "typical of diaphragm couplings; the maker’s sheet rules",
                "",
                Basis::Memory,
            ),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "Little: guards cover most of the diaphragms; their rims, and bolts with \
                   their marks.",
            torsion: "Stiff along a straight line, no play.",
            balance: "Made for speed: balanced by the maker as an assembly, every part back to \
                   its marks.",
            gives: Gives::Metal,
            source: Source::common_practice("diaphragm couplings"),
        }
    }

    fn lubrication(&self) -> Option<Lubrication> {
        None
    }

    fn gap_rule(&self, form: &Form) -> GapRule {
        match form.spacer {
            Spacer::With => GapRule::Dbse,
            Spacer::Without => GapRule::HubFaces,
        }
    }

    fn near_heat(&self) -> &'static [&'static str] {
        &["diaphragms: fitted last, on cold hubs", "machine seals beside the hub"]
    }

    fn never_again(&self, _form: &Form) -> &'static [&'static str] {
        &[
            "a diaphragm with a crack, a scratch, a pit or a dent in its thin part",
            "self-locking nuts below their prevailing torque or past the count on the sheet",
            "a bolt or nut of a balanced set alone",
        ]
    }

    fn close_up(&self, _: &Form) -> CloseUp {
        CloseUp {
            bolts: Bolting::Through,
            turn: Turn::Nut,
            tools: "torque wrench and ring spanner; no impact wrench",
            stages: &[0.3, 0.7, 1.0],
            rules: &[
                "Spigots enter without force; jack screws draw up and part, never the bolts alone.",
                "Threads clean and lightly oiled; hold the bolt, turn the nut.",
                "Bolts, nuts and washers in their own places: they are weighed as a set.",
            ],
            source: Source::common_practice("diaphragm couplings"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 4] = [
            Caution::new(
                Stage::Closeup,
                "No tool, marker or ring on a finger may touch the thin part: a scratch starts a \
                 crack.",
            ),
            Caution::new(
                Stage::Closeup,
                "The spacer must never hang on one diaphragm: sling or blocks until both ends are \
                 bolted.",
            ),
            Caution::new(
                Stage::Running,
                "A cracked diaphragm is not run on: it can let the spacer fly.",
            ),
            Caution::new(Stage::Removal, "Support the spacer before the first nut is slack."),
        ];
        &CAUTIONS
    }

    fn cold_stretch(&self) -> Option<&'static str> {
        Some("diaphragms")
    }

    fn install_steps(&self, form: &Form) -> Vec<Step> {
        vec![
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
            GAP,
            steps::LINEUP,
            LOOK,
            if form.spacer == Spacer::With { SPACER_IN } else { DIAPHRAGM_IN },
            BOLTS,
            steps::TORQUE,
            STRETCH,
            steps::GUARD,
            steps::FIRST_RUN,
            steps::HOT_CHECK,
        ]
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let mut order = vec![steps::OFF_LOCKOUT, steps::OFF_GUARD, steps::OFF_RECORD, OFF_LOOK];
        if form.spacer == Spacer::With {
            order.push(OFF_SUPPORT);
        }
        order.extend([
            OFF_BOLTS,
            OFF_OUT,
            OFF_STORE,
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
        const CHECKS: [Check; 3] = [
            Check::new(
                "distance between the hubs, hot, against the cold setting",
                "growth as reckoned, so that the diaphragm is near its free shape",
                "growth not as reckoned: change the shims",
            ),
            Check::new(
                "thin part of each diaphragm, stopped and locked out",
                "bright, no crack, no pit",
                "misaligned when hot, corrosion, overload",
            ),
            Check::new(
                "vibration, axial above all, at once and twice speed",
                "in the zone for a machine just started, steady",
                "misaligned, spacer near its axial resonance, balance",
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

    fn suits(&self, duty: &Duty) -> Vec<Reason> {
        reasons(&[
            (
                duty.fast(),
                Reason::pro("No play and fixed centres: made for speed and close balance."),
            ),
            (
                Duty::asks(duty.end_movement),
                Reason::pro("It takes more end movement than disc packs."),
            ),
            (Duty::lacks(duty.grease_service), Reason::pro("No grease, nothing that slides.")),
            (Duty::asks(duty.hot_place), Reason::pro("All metal: heat does not age it.")),
            (
                Duty::asks(duty.offset),
                Reason::contra("It takes a small angle only: offset wants a long spacer."),
            ),
            (Duty::asks(duty.damping), Reason::contra("It is stiff in torsion and damps nothing.")),
        ])
    }
}

const THREAD_ON: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and anything a hub would trap: on the shafts now",
    "Diaphragms and spacer stay in their boxes, faces covered, until the hubs are cold.",
)
.needs(&["guard ends"]);

const GAP: Step = Step::new(
    "gap",
    Stage::Gap,
    "Set the hubs apart: {gap.faces}, measured at four points",
    "Free length of what goes between, and the stretch that growth will take back when hot; \
     shims as the sheet shows. Rotors where they run. Measure again after locking.",
)
.needs(&["inside micrometer", "shims of the sheet"]);

const LOOK: Step = Step::new(
    "look",
    Stage::Closeup,
    "Look each diaphragm over in good light; touch only its rim",
    "No scratch, pit or dent in the thin part. Spigots and faces clean and dry.",
)
.hold("Whoever is responsible for the coupling agrees that no diaphragm is marked.")
.needs(&["torch", "lint-free gloves"]);

const SPACER_IN: Step = Step::new(
    "spacer-in",
    Stage::Closeup,
    "Sling the spacer in, ends drawn in with the jack screws",
    "Only as far as the sheet allows, evenly. Never hung on one diaphragm. Marks together.",
)
.needs(&["soft sling or blocks", "jack screws"]);

const DIAPHRAGM_IN: Step = Step::new(
    "spacer-in",
    Stage::Closeup,
    "Bring the diaphragm in between the hubs, spigots square",
    "Without force. Marks together.",
)
.needs(&["soft sling or blocks"]);

const BOLTS: Step = Step::new(
    "bolts",
    Stage::Closeup,
    "Spigots home, jack screws out; bolts of the set by hand",
    "Each bolt in its own place, threads lightly oiled, nuts by hand. No gap at a spigot face all \
     round.",
)
.needs(&["bolts and nuts of the set", "light oil", "feeler gauges"]);

const STRETCH: Step = Step::new(
    "stretch",
    Stage::Closeup,
    "Read the length over the diaphragms: {gap.faces}",
    "At four points; the difference from free length is the cold stretch. Write it down.",
)
.hold("Someone other than the doer reads it and agrees.")
.needs(&["inside micrometer or callipers"]);

const OFF_LOOK: Step = Step::new(
    "off-look",
    Stage::Removal,
    "Look at the diaphragms before a nut moves; take a picture",
    "Cracks, their direction, pits, dust at the spigots.",
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
    "Bolts, nuts and washers to their places in a marked tray.",
)
.needs(&["ring spanners", "marked tray"]);

const OFF_OUT: Step = Step::new(
    "off-out",
    Stage::Removal,
    "Draw the ends in with the jack screws; lift it out square",
    "Never pry on a diaphragm; nothing leans on its thin part.",
)
.needs(&["jack screws", "soft sling"]);

const OFF_STORE: Step = Step::new(
    "off-store",
    Stage::Removal,
    "Cover the diaphragms, store them on their flanges, tagged",
    "Dry, oiled thinly, nothing stacked on them; shims with the end they came from.",
)
.needs(&["covers", "thin oil", "tags"]);

const PAPERS: Source = Source::new("turbomachinery symposium literature", "", Basis::Memory);

static FINDINGS: [Finding; 5] = [
    Finding {
        id: "round-crack",
        seen: "Crack round the thinnest part",
        causes: &["angle between the shafts, bending fatigue", "scratch or pit that started it"],
        check: &["line-up cold and hot", "start of the crack under a glass"],
        mend: &["new diaphragm", "line up to the hot target"],
        goes_back: GoesBack::No,
        source: PAPERS,
    },
    Finding {
        id: "slant-crack",
        seen: "Torn at a slant, or buckled in waves",
        causes: &["torque overload: fault, slug, hard start", "torsional vibration"],
        check: &["trips and starts in the log", "torsional study"],
        mend: &["new diaphragm", "shafts, keys and bolts checked"],
        goes_back: GoesBack::No,
        source: PAPERS,
    },
    Finding {
        id: "dished",
        seen: "Dished at rest, or axial vibration at one load",
        causes: &["cold stretch wrong", "growth not as reckoned", "spacer at its axial resonance"],
        check: &["length cold and hot", "thrust bearing", "axial frequency"],
        mend: &["change the shims", "new diaphragm if the shape stays"],
        goes_back: GoesBack::Measure,
        source: PAPERS,
    },
    Finding {
        id: "pits",
        seen: "Pits or rust in the thin part",
        causes: &["coating hurt", "moisture or process gas at the coupling"],
        check: &["coating", "air in the guard"],
        mend: &["new diaphragm; ask the maker before any polish"],
        goes_back: GoesBack::No,
        source: PAPERS,
    },
    Finding {
        id: "fretting",
        seen: "Dust at spigots or bolts",
        causes: &["bolts too slack", "spigot worn"],
        check: &["tightening record", "fit of the spigot"],
        mend: &["new bolts and nuts as a set, right torque"],
        goes_back: GoesBack::Measure,
        source: PAPERS,
    },
];
