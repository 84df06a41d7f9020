//! Pin and bush couplings: pins fixed in one hub carry rubber bushes in holes of the other.

use quantities::{Basis, Source};

use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, Forgives, Form, GapRule,
    Gives, GoesBack, Kind, Look, Lubrication, Measure, Part, Planes, Play, Reason, Shock, Spacer,
    Turn, Twist,
};
use crate::step::{Stage, Step};
use crate::steps;

pub struct PinAndBush;

const PLAIN: &str = "close-coupled";
const SPACER: &str = "spacer";

static FORMS: [Form; 2] = [
    Form {
        name: PLAIN,
        says: "Two flanged hubs face to face; pins can be drawn without moving a machine.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: SPACER,
        says: "A spacer bolted to one hub lets the other machine stay when a seal is changed.",
        planes: Planes::One,
        spacer: Spacer::With,
    },
];

impl Kind for PinAndBush {
    fn name(&self) -> &'static str {
        "pin and bush"
    }

    fn title(&self) -> &'static str {
        "Pin and bush coupling"
    }

    fn says(&self) -> &'static str {
        "Steel pins in one hub carry rubber bushes in holes of the other; it turns on even when bushes fail."
    }

    fn forms(&self) -> &'static [Form] {
        &FORMS
    }

    fn parts(&self, form: &Form) -> Vec<Part> {
        let mut parts = vec![
            Part::new('A', "shaft", Each::PerHub),
            Part::new('B', "driver hub", Each::One),
            Part::new('C', "driven hub", Each::One),
            Part::new('D', "bush", Each::PerBolt),
        ];
        if form.spacer == Spacer::With {
            parts.push(Part::new('E', "spacer", Each::One));
        }
        parts.extend([
            Part::new('H', "pin with nut and end washer", Each::PerBolt),
            Part::new('K', "key", Each::PerHub),
        ]);
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        Forgives {
            planes: form.planes,
            angular_deg: Some([0.5, 1.0]),
            parallel_mm: Some([0.2, 0.5]),
            axial_mm: Some([1.0, 3.0]),
            shock: Shock::Cushions,
            twist: Twist::Progressive,
            play: Play::Little,
            source: Source::new(
                "typical of pin and bush couplings; the maker’s sheet rules",
                "",
                Basis::Memory,
            ),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "Ends of the bushes; a pin comes out for a look without moving a machine.",
            torsion: "Stiffer as the bushes are squeezed; a little play once they have worn.",
            balance: "Pins and bushes of one set and mass, each hub by itself.",
            gives: Gives::Elastomer,
            source: Source::common_practice("pin and bush couplings"),
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
        &["bushes: they go in last, on cold hubs", "machine seals beside the hub"]
    }

    fn never_again(&self, _form: &Form) -> &'static [&'static str] {
        &[
            "a bush that is cracked, set, swollen or worn; renew all of them together",
            "a bent pin, or one whose thread or seat is hurt",
            "self-locking nuts with a plastic ring, tab washers, split pins",
        ]
    }

    fn close_up(&self, _: &Form) -> CloseUp {
        CloseUp {
            bolts: Bolting::IntoHub,
            turn: Turn::Nut,
            tools: "torque wrench and a spanner to hold the pin",
            stages: &[0.5, 1.0],
            rules: &[
                "Pins seat on metal in their hub: clean, dry, not on paint.",
                "Bushes enter without force, dry or with what the sheet names; no oil on natural rubber.",
                "All pins and bushes of one set and mass.",
            ],
            source: Source::common_practice("pin and bush couplings"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 3] = [
            Caution::new(
                Stage::Closeup,
                "Never feel for holes with a finger while the hubs can turn; use a pin.",
            ),
            Caution::new(
                Stage::Running,
                "With its bushes gone it still turns, pins on iron, until pins or flange break: \
                 knocking means stop.",
            ),
            Caution::new(
                Stage::Removal,
                "Pins under twist are gripped and let go at once: let the shafts relax first.",
            ),
        ];
        &CAUTIONS
    }

    fn look(&self) -> Look {
        const SOURCE: Source = Source::common_practice(
            "bushes harden and wear: looked at every half to whole year; from memory",
        );
        Look { months: [6, 12], source: SOURCE }
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
            steps::GAP,
            steps::LINEUP,
        ];
        if form.spacer == Spacer::With {
            order.push(SPACER_IN);
        }
        order.extend([HOLES, PINS, TORQUE, steps::GUARD, steps::FIRST_RUN, steps::HOT_CHECK]);
        order
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let mut order =
            vec![steps::OFF_LOCKOUT, steps::OFF_GUARD, steps::OFF_RECORD, OFF_RELAX, OFF_PINS];
        if form.spacer == Spacer::With {
            order.push(steps::OFF_SPACER);
        }
        order.extend([
            OFF_BUSHES,
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
            Check::new("sound at start and at light load", "quiet", "bushes worn or too few carry"),
            Check::new(
                "floor under the guard",
                "no rubber powder",
                "misaligned, or bushes swollen by oil",
            ),
            Check::new(
                "nuts against their paint marks, stopped and locked out",
                "none has moved",
                "pin loose in its seat",
            ),
        ];
        &CHECKS
    }

    fn first_recheck(&self) -> &'static str {
        "first re-check: line-up hot, nuts of the pins, crumbs under the guard"
    }

    fn findings(&self) -> &'static [Finding] {
        &FINDINGS
    }

    /// The pins.
    fn bolt_circles(&self, _: &Form) -> u32 {
        1
    }

    fn wears(&self) -> &'static [Measure] {
        &[Measure::Element]
    }

    fn suits(&self, duty: &Duty) -> Vec<Reason> {
        reasons(&[
            (duty.shocks(), Reason::pro("Bushes cushion shocks; if they fail it still turns.")),
            (Duty::asks(duty.damping), Reason::pro("Rubber damps torsional vibration.")),
            (
                Duty::lacks(duty.grease_service),
                Reason::pro("It wants no grease, and bushes change in place."),
            ),
            (Duty::asks(duty.hot_place), Reason::contra("Rubber ages in heat and in oil.")),
            (
                Duty::asks(duty.offset),
                Reason::contra("Offset works every bush once a turn and wears it."),
            ),
            (duty.fast(), Reason::contra("Iron hubs and rubber limit its speed.")),
        ])
    }
}

const THREAD_ON: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and covers: on the shafts now, before the hubs",
    "Whatever a hub would trap goes on first. Pins and bushes stay in their box until the hubs are \
     cold.",
)
.needs(&["guard ends"]);

const SPACER_IN: Step = Step::new(
    "spacer-in",
    Stage::Closeup,
    "Sling the spacer in and bolt it to its hub; marks together",
    "The sling carries it until its bolts are in.",
)
.needs(&["soft sling", "aligning pins"]);

const HOLES: Step = Step::new(
    "holes",
    Stage::Closeup,
    "Turn the hubs until pin seats face bush holes; clean both",
    "Match marks together. Seats to bare metal, holes smooth: a burr cuts the bush.",
)
.needs(&["fine stone", "lint-free cloth", "aligning pin"]);

const PINS: Step = Step::new(
    "pins",
    Stage::Closeup,
    "New bushes on the pins; pins in from the bush side, by hand",
    "Bushes of one set, dry or with what the sheet names. Pin shoulder on its seat, washer and \
     nut by hand.",
)
.needs(&["set of bushes", "pins, washers, nuts"]);

const TORQUE: Step = Step::new(
    "torque",
    Stage::Closeup,
    "Hold the pin, turn the nut: in stages to {closeup.torque}",
    "Half the torque first, then all of it, then once round. Lock and mark each nut; each bush \
     still turns on its pin if the sheet says so.",
)
.needs(&["torque wrench in date", "ring spanner", "paint marker"]);

const OFF_RELAX: Step = Step::new(
    "off-relax",
    Stage::Removal,
    "Let the twist out of the shafts; number pins and holes",
    "Turn back by hand until the pins are loose in their bushes.",
)
.needs(&["marker"]);

const OFF_PINS: Step = Step::new(
    "off-pins",
    Stage::Removal,
    "Nuts off across the circle; draw the pins, softly",
    "Nut run on flush to save the thread, soft drift. Keep two opposite ones to the last.",
)
.needs(&["soft drift", "penetrating oil", "marked tray"]);

const OFF_BUSHES: Step = Step::new(
    "off-bushes",
    Stage::Removal,
    "Lay pins and bushes out in order; look and measure",
    "Which side of each bush is worn, pins straight, holes round: take a picture.",
)
.needs(&["callipers", "camera"]);

const TRADE: Source = Source::common_practice("pin and bush couplings");

static FINDINGS: [Finding; 5] = [
    Finding {
        id: "all-worn",
        seen: "All bushes worn alike, powder in the guard",
        causes: &["offset: each bush works once a turn", "long service"],
        check: &["line-up cold and hot", "hours in service"],
        mend: &["new set of bushes", "line up again"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "few-worn",
        seen: "A few bushes torn, the others sound",
        causes: &["those pins carried all: pitch, bent pin or mixed bushes"],
        check: &["pins for straightness", "holes for wear", "that all bushes are of one set"],
        mend: &["new set of bushes", "new pins where bent"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "swollen",
        seen: "Bushes swollen, soft or sticky",
        causes: &["oil from a bearing or a seal", "solvent"],
        check: &["what drips on it"],
        mend: &["stop the leak", "new bushes of a material that stands it"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "pins-bent",
        seen: "Pins bent or broken, holes oval",
        causes: &["overload or jam", "ran on without bushes", "nuts loose"],
        check: &["trips and jams in the log", "seats and holes", "shafts and keys for twist"],
        mend: &["new pins and bushes", "bush or renew the flange"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "seat-fret",
        seen: "Red dust at the pin seats, nuts off their marks",
        causes: &["nuts too slack or used again", "paint under the shoulder"],
        check: &["tightening record", "seat of each pin"],
        mend: &["clean to bare metal, new nuts, right torque"],
        goes_back: GoesBack::Measure,
        source: TRADE,
    },
];
