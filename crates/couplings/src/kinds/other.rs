//! Any other kind: what holds for all, with the maker's manual in hand.

use quantities::Source;

use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, Forgives, Form, GapRule,
    Gives, Kind, Lubrication, Part, Planes, Play, Reason, Shock, Spacer, Turn, Twist,
};
use crate::step::{Stage, Step};
use crate::steps;

pub struct Other;

static FORMS: [Form; 3] = [
    Form {
        name: "one flexing plane",
        says: "It gives at one place: angle and end movement.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: "two flexing planes",
        says: "It gives at two places: offset too.",
        planes: Planes::Two,
        spacer: Spacer::Without,
    },
    Form {
        name: "rigid",
        says: "It gives nowhere.",
        planes: Planes::None,
        spacer: Spacer::Without,
    },
];

impl Kind for Other {
    fn name(&self) -> &'static str {
        "other"
    }

    fn title(&self) -> &'static str {
        "Another kind of coupling"
    }

    fn says(&self) -> &'static str {
        "A kind that has no page of its own here: the maker’s manual says what is special about it."
    }

    fn forms(&self) -> &'static [Form] {
        &FORMS
    }

    fn parts(&self, form: &Form) -> Vec<Part> {
        let mut parts = vec![
            Part::new('A', "shaft", Each::PerHub),
            Part::new('B', "driver hub", Each::One),
            Part::new('C', "driven hub", Each::One),
        ];
        if form.planes != Planes::None {
            parts.push(Part::new('D', "flexing element", Each::AsMade));
        }
        parts.push(Part::new('H', "bolt", Each::PerBolt));
        parts.push(Part::new('K', "key", Each::PerHub));
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        Forgives {
            planes: form.planes,
            angular_deg: None,
            parallel_mm: None,
            axial_mm: None,
            shock: Shock::NotKnown,
            twist: Twist::NotKnown,
            play: Play::NotKnown,
            source: Source::common_practice(
                "nothing is taken as forgiven that the maker’s sheet does not give",
            ),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "Not known of such a kind: look at the maker’s drawing.",
            torsion: "Not known of such a kind: the maker’s sheet says it.",
            balance: "Not known of such a kind: the maker’s sheet says it.",
            gives: Gives::NotKnown,
            source: Source::common_practice(
                "nothing is taken as known that the maker’s sheet does not give",
            ),
        }
    }

    fn lubrication(&self) -> Option<Lubrication> {
        None
    }

    fn gap_rule(&self, _: &Form) -> GapRule {
        GapRule::HubFaces
    }

    fn near_heat(&self) -> &'static [&'static str] {
        &["seals, rubber, grease and gaskets, whatever the coupling has of them"]
    }

    fn never_again(&self, _form: &Form) -> &'static [&'static str] {
        &[
            "gaskets, seals, self-locking nuts with a plastic ring",
            "a flexing element that is cracked, set or worn",
        ]
    }

    fn close_up(&self, _: &Form) -> CloseUp {
        CloseUp {
            bolts: Bolting::Through,
            turn: Turn::Nut,
            tools: "torque wrench and ring spanner",
            stages: &[0.3, 0.7, 1.0],
            rules: &["The maker’s manual for order, torque and locking."],
            source: Source::common_practice("flanged couplings"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 1] = [Caution::new(
            Stage::Coupling,
            "Without the maker’s manual do not guess how it opens: springs, twist and weight may be \
             held by the last bolt.",
        )];
        &CAUTIONS
    }

    fn install_steps(&self, _: &Form) -> Vec<Step> {
        vec![
            steps::LOCKOUT,
            steps::MACHINE_CHECK,
            steps::MAGNETIC_CENTRE,
            steps::COUPLING_CHECK,
            MANUAL,
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
            CLOSE,
            steps::TORQUE,
            LUBRICATE,
            steps::GUARD,
            steps::FIRST_RUN,
            steps::HOT_CHECK,
        ]
    }

    fn removal_steps(&self, _: &Form) -> Vec<Step> {
        vec![
            steps::OFF_LOCKOUT,
            steps::OFF_GUARD,
            steps::OFF_RECORD,
            OFF_MANUAL,
            OFF_OPEN,
            OFF_LOOK,
            steps::OFF_CLEAR,
            steps::OFF_FASTENINGS,
            steps::OFF_RIG,
            steps::OFF_DRIVER,
            steps::OFF_SLIDE_DRIVER,
            steps::OFF_DRIVEN,
            steps::OFF_SLIDE_DRIVEN,
            steps::OFF_SHAFTS,
            steps::OFF_KEEP,
        ]
    }

    fn checks_after_start(&self) -> &'static [Check] {
        const CHECKS: [Check; 2] = [
            Check::new(
                "sound, warmth, and what lies under the guard",
                "quiet, hand-warm, clean",
                "line-up, gap, or the element: the maker’s manual",
            ),
            Check::new(
                "vibration at once and twice speed, both bearings beside the coupling",
                "in the zone for a machine just started, steady",
                "line-up when hot",
            ),
        ];
        &CHECKS
    }

    fn findings(&self) -> &'static [Finding] {
        &[]
    }

    fn suits(&self, _: &Duty) -> Vec<Reason> {
        Vec::new()
    }
}

const MANUAL: Step = Step::new(
    "manual",
    Stage::Coupling,
    "Read the maker’s manual; mark what differs from this card",
    "Order of assembly, what goes on before the hubs, gap, torque, lubricant, what is never used \
     again.",
)
.hold("Whoever is in charge of the job has the manual and agrees to the order of work.")
.needs(&["maker’s manual"]);

const THREAD_ON: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and all a hub would trap: on the shafts now",
    "Covers, sleeves, rings, seals: look at the drawing of the manual before a hub is hot.",
)
.needs(&["maker’s manual"]);

const CLOSE: Step = Step::new(
    "close",
    Stage::Closeup,
    "Fit the flexing element as the manual shows; marks together",
    "Without force. What is heavy stays on its sling until both ends are bolted.",
)
.needs(&["maker’s manual", "soft sling"]);

const LUBRICATE: Step = Step::new(
    "lubricate",
    Stage::Closeup,
    "Lubricate if the manual asks for it: {closeup.grease}",
    "Right grease or oil, right amount, plugs back in.",
)
.needs(&["maker’s manual"]);

const OFF_MANUAL: Step = Step::new(
    "off-manual",
    Stage::Removal,
    "Read how the manual opens it; support what is heavy",
    "Springs, twist and weight may be held by the last bolt. Whole coupling: {coupling.mass}.",
)
.hold("Whoever is in charge of the job agrees to the order of work.")
.needs(&["maker’s manual", "soft sling"]);

const OFF_OPEN: Step = Step::new(
    "off-open",
    Stage::Removal,
    "Open it in that order; keep bolts and parts to their places",
    "Mark everything. Nothing is pried that has a jack screw.",
)
.needs(&["marked tray", "jack screws"]);

const OFF_LOOK: Step = Step::new(
    "off-look",
    Stage::Removal,
    "Look before wiping; take a picture",
    "Wear, cracks, dust and colour show the cause.",
)
.needs(&["camera", "torch"]);
