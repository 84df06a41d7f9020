//! Jaw couplings: jaws of both hubs press on an elastomer element between them.

use quantities::{Basis, Source};

use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, Forgives, Form, GapRule,
    Gives, GoesBack, Kind, Look, Lubrication, Measure, Part, Planes, Play, Reason, Shock, Spacer,
    Turn, Twist,
};
use crate::step::{Stage, Step};
use crate::steps;

pub struct Jaw;

const STAR: &str = "star element";
const WRAPPED: &str = "wrapped element";
const SPACER: &str = "spacer";

static FORMS: [Form; 3] = [
    Form {
        name: STAR,
        says: "A star of elastomer between the jaws; one hub must slide back to change it.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: WRAPPED,
        says: "An open element wrapped round the jaws and held by a ring; it changes in place.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: SPACER,
        says: "A spacer with jaws at both ends that drops out between the hubs.",
        planes: Planes::Two,
        spacer: Spacer::With,
    },
];

impl Kind for Jaw {
    fn name(&self) -> &'static str {
        "jaw"
    }

    fn title(&self) -> &'static str {
        "Jaw coupling"
    }

    fn says(&self) -> &'static str {
        "Jaws of both hubs press on an elastomer element; if it fails, the jaws meet and still turn."
    }

    fn forms(&self) -> &'static [Form] {
        &FORMS
    }

    fn parts(&self, form: &Form) -> Vec<Part> {
        let elements = if form.spacer == Spacer::With { Each::Two } else { Each::One };
        let mut parts = vec![
            Part::new('A', "shaft", Each::PerHub),
            Part::new('B', "driver hub", Each::One),
            Part::new('C', "driven hub", Each::One),
            Part::new('D', "elastomer element", elements),
        ];
        if form.name == SPACER {
            parts.extend([
                Part::new('E', "spacer", Each::One),
                Part::new('H', "bolt", Each::PerBolt),
            ]);
        }
        parts.extend([Part::new('J', "jaws", Each::PerHub), Part::new('K', "key", Each::PerHub)]);
        if form.name == WRAPPED {
            parts.push(Part::new('W', "retaining ring and its screw", Each::One));
        }
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        Forgives {
            planes: form.planes,
            angular_deg: Some([0.5, 1.0]),
            parallel_mm: Some([0.2, 0.5]),
            axial_mm: Some([0.5, 1.5]),
            shock: Shock::Cushions,
            twist: Twist::Progressive,
            play: Play::Little,
            source: Source::new(
                "typical of jaw couplings; the maker’s sheet rules",
                "",
                Basis::Memory,
            ),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "The rim of the element; a wrapped one comes off in place, a star only when \
                   a hub slides back.",
            torsion: "Stiffer as the element is squeezed; a little play once it has set.",
            balance: "Element and jaws centre it loosely: for moderate speeds.",
            gives: Gives::Elastomer,
            source: Source::common_practice("jaw couplings"),
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
        &["the elastomer element: it goes in last, on cold hubs", "machine seals beside the hub"]
    }

    fn never_again(&self, _form: &Form) -> &'static [&'static str] {
        &[
            "an element that is cracked, set, swollen, sticky or hard",
            "an element of unknown age or hardness",
            "a hub whose jaws have met metal on metal and are burred or cracked",
        ]
    }

    fn close_up(&self, form: &Form) -> CloseUp {
        let bolts = if form.name == STAR { Bolting::None } else { Bolting::IntoHub };
        CloseUp {
            bolts,
            turn: Turn::Screw,
            tools: "torque wrench; hexagon keys for the set screws",
            stages: &[0.5, 1.0],
            rules: &[
                "Element of the material and hardness on the sheet; colours mean what that maker says.",
                "The element goes in without force and keeps its end play; it is not squeezed endwise.",
                "Set screws last, over the key first, then locked.",
            ],
            source: Source::common_practice("jaw couplings"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 3] = [
            Caution::new(
                Stage::Heat,
                "Elastomer gives off harmful fumes when it burns: no element near a hot hub or a flame.",
            ),
            Caution::new(
                Stage::Running,
                "With its element gone the coupling still turns, jaws on jaws, until they break: \
                 clatter means stop.",
            ),
            Caution::new(
                Stage::Removal,
                "A jaw coupling can hold a twist: let the shafts relax before the hubs are parted.",
            ),
        ];
        &CAUTIONS
    }

    fn look(&self) -> Look {
        const SOURCE: Source = Source::common_practice(
            "an elastomer ages unseen: looked at every half to whole year; from memory",
        );
        Look { months: [6, 12], source: SOURCE }
    }

    fn install_steps(&self, form: &Form) -> Vec<Step> {
        let mut order = vec![
            steps::LOCKOUT,
            steps::MACHINE_CHECK,
            steps::MAGNETIC_CENTRE,
            steps::COUPLING_CHECK,
            ELEMENT_CHECK,
            steps::MEASURE,
            steps::FIT,
            THREAD_ON,
            steps::SHIELD,
            steps::HEAT_DRIVER,
            steps::SLIP_DRIVER,
            steps::HEAT_DRIVEN,
            steps::SLIP_DRIVEN,
            steps::COOL,
        ];
        match form.name {
            WRAPPED => order.extend([steps::GAP, steps::LINEUP, WRAP]),
            SPACER => order.extend([steps::GAP, steps::LINEUP, SPACER_IN, SPACER_BOLTS]),
            _ => order.extend([STAR_IN, steps::GAP, steps::LINEUP]),
        }
        order.extend([LOCK, steps::GUARD, steps::FIRST_RUN, steps::HOT_CHECK]);
        order
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let mut order = vec![steps::OFF_LOCKOUT, steps::OFF_GUARD, steps::OFF_RECORD, OFF_RELAX];
        match form.name {
            WRAPPED => order.extend([OFF_WRAP, steps::OFF_CLEAR]),
            SPACER => order.extend([steps::OFF_SPACER, steps::OFF_CLEAR]),
            _ => order.extend([steps::OFF_CLEAR, OFF_STAR]),
        }
        order.extend([
            OFF_JAWS,
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
            Check::new("sound at start and stop", "a dull thud at most", "element worn or missing"),
            Check::new(
                "floor under the guard",
                "no crumbs, no powder",
                "misaligned, wrong material, too hot a place",
            ),
            Check::new(
                "element’s warmth after an hour, stopped and locked out",
                "hand-warm",
                "torsional vibration works it, or it is overloaded",
            ),
        ];
        &CHECKS
    }

    fn first_recheck(&self) -> &'static str {
        "first re-check: line-up hot, set screws tight, crumbs under the guard"
    }

    fn findings(&self) -> &'static [Finding] {
        &FINDINGS
    }

    fn wears(&self) -> &'static [Measure] {
        &[Measure::Element]
    }

    fn suits(&self, duty: &Duty) -> Vec<Reason> {
        reasons(&[
            (duty.shocks(), Reason::pro("The element cushions shocks and is cheap to renew.")),
            (Duty::asks(duty.damping), Reason::pro("Elastomer damps torsional vibration.")),
            (Duty::lacks(duty.grease_service), Reason::pro("It wants no grease.")),
            (Duty::asks(duty.hot_place), Reason::contra("Elastomer ages in heat.")),
            (Duty::asks(duty.end_movement), Reason::contra("It takes little end movement.")),
            (duty.fast(), Reason::contra("Speed and balance are limited by element and jaws.")),
        ])
    }
}

const ELEMENT_CHECK: Step = Step::new(
    "element-check",
    Stage::Coupling,
    "Check the element: material, hardness, date, no cracks",
    "Against the sheet. Bent by hand no crack opens. Kept cool, dark and flat until it goes in.",
)
.needs(&["maker’s sheet", "hardness gauge if at hand"]);

const THREAD_ON: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and a retaining ring: on the shafts now",
    "Whatever a hub would trap goes on first. The element does not: it waits for cold hubs.",
)
.needs(&["guard ends"]);

const STAR_IN: Step = Step::new(
    "element-in",
    Stage::Gap,
    "Put the element in and bring the hubs together by hand",
    "It enters without force and keeps a little end play; a squeezed element pushes on both \
     thrust bearings.",
)
.needs(&["the element", "gauge block"]);

const WRAP: Step = Step::new(
    "element-in",
    Stage::Closeup,
    "Wrap the element round the jaws; ring over it, screws in",
    "All legs between jaws, ring fully home and in its mark, its screws to {closeup.torque}.",
)
.needs(&["the element and ring", "torque wrench in date"]);

const SPACER_IN: Step = Step::new(
    "element-in",
    Stage::Closeup,
    "Sling the spacer in between its elements; marks together",
    "The sling carries it until the bolts of both ends are in. Elements keep a little end play.",
)
.needs(&["soft sling", "both elements"]);

const SPACER_BOLTS: Step = Step::new(
    "torque",
    Stage::Closeup,
    "Bolt the spacer up, across the circle, to {closeup.torque}",
    "Snug all by hand, then in stages, then once round.",
)
.needs(&["torque wrench in date"]);

const LOCK: Step = Step::new(
    "lock",
    Stage::Closeup,
    "Tighten and lock the set screws, the one over the key first",
    "Gap read once more after it: hubs move as they are locked.",
)
.needs(&["hexagon keys", "thread locking as the sheet says"]);

const OFF_RELAX: Step = Step::new(
    "off-relax",
    Stage::Removal,
    "Let the twist out of the shafts; look at the element",
    "Turn back by hand until it is loose. Crumbs, set, colour: take a picture.",
)
.needs(&["camera", "torch"]);

const OFF_WRAP: Step = Step::new(
    "off-element",
    Stage::Removal,
    "Slide the ring back, unwrap the element",
    "Screws out, ring along the shaft. Mark which way round the element ran.",
)
.needs(&["hexagon keys", "marker"]);

const OFF_STAR: Step = Step::new(
    "off-element",
    Stage::Removal,
    "Part the hubs, take the element out",
    "By hand: a hub that must be pried off its element has been too close.",
)
.needs(&["marker"]);

const OFF_JAWS: Step = Step::new(
    "off-jaws",
    Stage::Removal,
    "Look at the jaws: burrs, cracks at the root, wear steps",
    "Legs and jaws side by side: wear at one end means angle, wear all round means offset.",
)
.needs(&["magnifier", "crack-detection dye"]);

const TRADE: Source = Source::common_practice("elastomer couplings");

static FINDINGS: [Finding; 6] = [
    Finding {
        id: "sheared",
        seen: "Legs sheared off, jaws have met",
        causes: &["overload: jam, hard start", "element older than it should be"],
        check: &["trips and starts in the log", "rating and service factor", "age of the element"],
        mend: &["new element", "new hubs if the jaws are burred or cracked"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "powder",
        seen: "Powder or crumbs, legs worn on both flanks",
        causes: &["offset: the legs rub twice a turn", "soft foot or growth moved a machine"],
        check: &["line-up cold and hot", "soft foot"],
        mend: &["new element", "line up again"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "one-end",
        seen: "Legs worn or squeezed at one end",
        causes: &["angle between the shafts", "hubs too close"],
        check: &["line-up", "gap"],
        mend: &["new element", "set gap and line-up right"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "melted",
        seen: "Element melted or glazed inside, sound outside",
        causes: &["torsional vibration heats it from within", "too hot a place"],
        check: &["torsional study", "temperature at the coupling"],
        mend: &["another hardness or material, with the maker", "new element"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "swollen",
        seen: "Swollen, sticky, or hard and cracked",
        causes: &["oil, solvent or chemicals", "ozone, light, age"],
        check: &["what drips on it", "date of the element"],
        mend: &["new element of a material that stands it"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "jaw-crack",
        seen: "Crack at the root of a jaw",
        causes: &["ran without an element", "overload", "casting flaw"],
        check: &["dye test of both hubs", "shafts and keys for twist"],
        mend: &["new hub"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
];
