//! Elastomer in shear: a ring of rubber between two flanges twists as it carries the torque.

use quantities::{Basis, Source};

use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, Forgives, Form, GapRule,
    Gives, GoesBack, Kind, Look, Lubrication, Measure, Part, Planes, Play, Reason, Shock, Spacer,
    Turn, Twist,
};
use crate::step::{Stage, Step};
use crate::steps;

pub struct Shear;

const CLAMPED: &str = "clamped element";
const TOOTHED: &str = "toothed sleeve";
const SPACER: &str = "spacer";

static FORMS: [Form; 3] = [
    Form {
        name: CLAMPED,
        says: "A split ring of rubber with beads clamped to both flanges; it changes in place.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: TOOTHED,
        says: "A rubber sleeve whose teeth sit in both flanges, with neither clamp nor bolt.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: SPACER,
        says: "A clamped element with a spacer that drops out between the machines.",
        planes: Planes::One,
        spacer: Spacer::With,
    },
];

impl Kind for Shear {
    fn name(&self) -> &'static str {
        "elastomer in shear"
    }

    fn title(&self) -> &'static str {
        "Coupling with elastomer in shear"
    }

    fn says(&self) -> &'static str {
        "A rubber ring between two flanges carries the torque in shear: very soft, forgiving, no play; it parts when overloaded."
    }

    fn forms(&self) -> &'static [Form] {
        &FORMS
    }

    fn parts(&self, form: &Form) -> Vec<Part> {
        let mut parts = vec![
            Part::new('A', "shaft", Each::PerHub),
            Part::new('B', "driver hub", Each::One),
            Part::new('C', "driven hub", Each::One),
            Part::new('D', "rubber element", Each::One),
        ];
        if form.spacer == Spacer::With {
            parts.push(Part::new('E', "spacer", Each::One));
        }
        if form.name != TOOTHED {
            parts.push(Part::new('H', "clamping screw", Each::PerBolt));
        }
        parts.push(Part::new('K', "key", Each::PerHub));
        if form.name != TOOTHED {
            parts.push(Part::new('W', "clamping ring", Each::Two));
        }
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        let (angular, parallel, axial) = if form.name == TOOTHED {
            ([0.5, 1.0], [0.25, 1.5], [0.5, 2.0])
        } else {
            ([1.0, 4.0], [1.0, 4.0], [1.5, 6.0])
        };
        Forgives {
            planes: form.planes,
            angular_deg: Some(angular),
            parallel_mm: Some(parallel),
            axial_mm: Some(axial),
            shock: Shock::Cushions,
            twist: Twist::Soft,
            play: Play::None,
            source: Source::new(
                "typical of rubber in shear; the maker’s sheet rules",
                "",
                Basis::Memory,
            ),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "The whole outside of the element: cracks, twist that stays, crumbs.",
            torsion: "Very soft, nearly along a straight line, no play: it winds up by degrees.",
            balance: "The element spreads with speed and draws the hubs together: for moderate \
                   speeds.",
            gives: Gives::Elastomer,
            source: Source::common_practice("couplings with elastomer in shear"),
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
        &["the rubber element: it goes on last, on cold hubs", "machine seals beside the hub"]
    }

    fn never_again(&self, _form: &Form) -> &'static [&'static str] {
        &[
            "an element with cracks, a torn bead, or a twist that stays in it",
            "clamping screws that have lost their locking",
            "an element of unknown age",
        ]
    }

    fn close_up(&self, form: &Form) -> CloseUp {
        CloseUp {
            bolts: if form.name == TOOTHED { Bolting::None } else { Bolting::IntoHub },
            turn: Turn::Screw,
            tools: "torque wrench and hexagon bits; soft hammer to settle the element",
            stages: &[0.3, 0.7, 1.0],
            rules: if form.name == TOOTHED {
                &[
                    "Teeth of sleeve and hubs clean and dry; the sleeve goes on by hand and keeps its end play.",
                ]
            } else {
                &[
                    "Beads and clamping faces dry and clean: grease lets the bead slip.",
                    "Rubber creeps: go round again and again until no screw moves, and check once more after the first day where the sheet asks it.",
                ]
            },
            source: Source::common_practice("couplings with elastomer in shear"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 3] = [
            Caution::new(
                Stage::Heat,
                "Rubber gives off harmful fumes when it burns: no element near a hot hub or a flame.",
            ),
            Caution::new(
                Stage::Running,
                "An element that parts flies in pieces: the guard must hold them.",
            ),
            Caution::new(
                Stage::Running,
                "At speed the element draws the hubs together or apart: thrust bearings take that \
                 push.",
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
            TOOTHED => order.extend([SLEEVE_IN, steps::GAP, steps::LINEUP, LOCK]),
            SPACER => order.extend([steps::GAP, steps::LINEUP, SPACER_IN, ELEMENT_IN, TORQUE]),
            _ => order.extend([steps::GAP, steps::LINEUP, ELEMENT_IN, TORQUE]),
        }
        order.extend([steps::GUARD, steps::FIRST_RUN, steps::HOT_CHECK]);
        order
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let mut order = vec![steps::OFF_LOCKOUT, steps::OFF_GUARD, steps::OFF_RECORD, OFF_LOOK];
        match form.name {
            TOOTHED => order.extend([steps::OFF_CLEAR, OFF_SLEEVE]),
            SPACER => order.extend([OFF_ELEMENT, steps::OFF_SPACER, steps::OFF_CLEAR]),
            _ => order.extend([OFF_ELEMENT, steps::OFF_CLEAR]),
        }
        order.extend([
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
                "element while it runs, through the guard with a strobe",
                "runs true, no flutter, no bulge",
                "wrong gap, bead slipping, torsional vibration",
            ),
            Check::new(
                "clamping screws, stopped and locked out, after the first day",
                "none has moved",
                "rubber has crept: go round again",
            ),
            Check::new(
                "element’s warmth after an hour, stopped and locked out",
                "hand-warm",
                "torsional vibration or misalignment works it",
            ),
        ];
        &CHECKS
    }

    fn first_recheck(&self) -> &'static str {
        "first re-check: screws of the element again where the sheet asks it, line-up hot, crumbs"
    }

    fn findings(&self) -> &'static [Finding] {
        &FINDINGS
    }

    /// One to a flange.
    fn bolt_circles(&self, _: &Form) -> u32 {
        2
    }

    fn wears(&self) -> &'static [Measure] {
        &[Measure::Element]
    }

    fn suits(&self, duty: &Duty) -> Vec<Reason> {
        reasons(&[
            (
                Duty::asks(duty.offset),
                Reason::pro("It takes more offset and angle than other kinds of its size."),
            ),
            (
                Duty::asks(duty.damping),
                Reason::pro("Soft in torsion, it keeps torsional vibration from passing."),
            ),
            (duty.shocks(), Reason::pro("It cushions shocks.")),
            (Duty::lacks(duty.grease_service), Reason::pro("It wants no grease.")),
            (Duty::asks(duty.hot_place), Reason::contra("Rubber ages in heat, ozone and oil.")),
            (duty.fast(), Reason::contra("Rubber is thrown outwards: its speed is limited.")),
        ])
    }
}

const ELEMENT_CHECK: Step = Step::new(
    "element-check",
    Stage::Coupling,
    "Check the element: material, date, no cracks at the bead",
    "Against the sheet. Keep it cool, dark and unbent until it goes on.",
)
.needs(&["maker’s sheet"]);

const THREAD_ON: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and all a hub would trap: on the shafts now",
    "Whatever a hub would trap goes on first, the right way round. Clamping rings, where it has \
     them, lie between the flanges: they follow once the hubs are cold. The rubber comes last.",
)
.needs(&["guard ends"]);

const SLEEVE_IN: Step = Step::new(
    "element-in",
    Stage::Gap,
    "Put the sleeve between the flanges, teeth home at both ends",
    "By hand, dry. Bring the flanges together until they sit on it without squeezing.",
)
.needs(&["the sleeve"]);

const SPACER_IN: Step = Step::new(
    "spacer-in",
    Stage::Closeup,
    "Sling the spacer in and bolt it up; marks together",
    "The sling carries it until its bolts are in.",
)
.needs(&["soft sling", "aligning pins"]);

const ELEMENT_IN: Step = Step::new(
    "element-in",
    Stage::Closeup,
    "Rings in, then the element round: beads home in both flanges",
    "Dry and clean, a ring to each flange, screws in by hand. Open the element over both. Leave the cut open by the width that the sheet gives; tap it round with a soft \
     hammer to settle the beads.",
)
.needs(&["the element", "clamping rings", "soft hammer"]);

const TORQUE: Step = Step::new(
    "torque",
    Stage::Closeup,
    "Tighten the rings evenly, in rounds, to {closeup.torque}",
    "A little on each screw, round and round, until none moves: rubber creeps. Both rings alike.",
)
.needs(&["torque wrench in date"]);

const LOCK: Step = Step::new(
    "lock",
    Stage::Closeup,
    "Tighten and lock the set screws, the one over the key first",
    "Gap read once more after it: hubs move as they are locked.",
)
.needs(&["hexagon keys"]);

const OFF_LOOK: Step = Step::new(
    "off-look",
    Stage::Removal,
    "Look at the element where it sits; take a picture",
    "Cracks, their direction, slip marks at the beads, powder: they show the cause.",
)
.needs(&["camera", "torch"]);

const OFF_ELEMENT: Step = Step::new(
    "off-element",
    Stage::Removal,
    "Slacken the rings in rounds; open the element, lift it off",
    "A little on each screw. Pry with something blunt if it is to go back.",
)
.needs(&["hexagon keys", "blunt lever"]);

const OFF_SLEEVE: Step = Step::new(
    "off-element",
    Stage::Removal,
    "Part the flanges, take the sleeve out",
    "By hand, both ends at once.",
)
.needs(&["marker"]);

const TRADE: Source = Source::common_practice("elastomer couplings");

static FINDINGS: [Finding; 6] = [
    Finding {
        id: "torn",
        seen: "Torn across at a slant, all at once",
        causes: &["overload: jam, hard start", "wrong size"],
        check: &["trips and starts in the log", "rating and service factor"],
        mend: &["new element", "find what jammed"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "bead",
        seen: "Cracks at the bead or at the clamping ring, slip marks",
        causes: &["rings too slack or greasy", "misaligned", "screws not gone round again"],
        check: &["tightening record", "line-up", "beads for grease"],
        mend: &["new element on dry faces", "right torque, gone round until none moves"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "crazed",
        seen: "Fine cracks all over the surface",
        causes: &["ozone, light, age"],
        check: &["date of the element", "switchgear or welding near by"],
        mend: &["new element when a crack opens by hand"],
        goes_back: GoesBack::Measure,
        source: TRADE,
    },
    Finding {
        id: "hot",
        seen: "Soft and sticky inside, smell of burnt rubber",
        causes: &["torsional vibration heats it", "misaligned", "too hot a place"],
        check: &["torsional study", "line-up hot", "temperature at the coupling"],
        mend: &["new element", "move the resonance, with the maker"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "bulge",
        seen: "Element bulged or drawn in at rest",
        causes: &["gap wrong: hubs too near or too far", "shaft moved along"],
        check: &["gap", "thrust bearing"],
        mend: &["set the gap right", "new element if the shape stays"],
        goes_back: GoesBack::Measure,
        source: TRADE,
    },
    Finding {
        id: "teeth",
        seen: "Teeth of a sleeve rounded or sheared",
        causes: &["overload", "flanges too far apart", "misaligned"],
        check: &["gap", "line-up", "log"],
        mend: &["new sleeve", "set the gap right"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
];
