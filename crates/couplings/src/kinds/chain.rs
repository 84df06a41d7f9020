//! Roller chain couplings: two sprockets side by side, wrapped in one length of double chain.

use quantities::{Basis, Source};

use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, Forgives, Form, GapRule,
    Gives, GoesBack, Kind, Look, Lubrication, Measure, Part, Planes, Play, Reason, Shock, Spacer,
    Turn, Twist,
};
use crate::step::{Stage, Step};
use crate::steps;

pub struct Chain;

const COVERED: &str = "with cover";
const OPEN: &str = "without cover";

static FORMS: [Form; 2] = [
    Form {
        name: COVERED,
        says: "A cover full of grease over the chain.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: OPEN,
        says: "The chain bare, for slow drives; brushed with heavy oil or grease.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
];

const CLIP: &str =
    "New clip or split pin; the closed end of a spring clip leads in the direction of turning.";

impl Kind for Chain {
    fn name(&self) -> &'static str {
        "roller chain"
    }

    fn title(&self) -> &'static str {
        "Roller chain coupling"
    }

    fn says(&self) -> &'static str {
        "A length of double roller chain round two sprockets joins the hubs; draw one pin and they part."
    }

    fn forms(&self) -> &'static [Form] {
        &FORMS
    }

    fn parts(&self, form: &Form) -> Vec<Part> {
        let mut parts = vec![
            Part::new('A', "shaft", Each::PerHub),
            Part::new('B', "driver hub", Each::One),
            Part::new('C', "driven hub", Each::One),
            Part::new('D', "chain", Each::One),
        ];
        if form.name == COVERED {
            parts.extend([
                Part::new('E', "cover half", Each::Two),
                Part::new('F', "seal", Each::PerHub),
                Part::new('G', "gasket", Each::One),
                Part::new('H', "cover bolt", Each::PerBolt),
                Part::new('J', "plug", Each::AsMade),
            ]);
        }
        parts.push(Part::new('K', "key", Each::PerHub));
        parts.push(Part::new('T', "sprocket teeth", Each::PerHub));
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        Forgives {
            planes: form.planes,
            angular_deg: Some([0.5, 1.5]),
            parallel_mm: Some([0.2, 0.6]),
            axial_mm: Some([0.5, 2.0]),
            shock: Shock::Passes,
            twist: Twist::Stiff,
            play: Play::Backlash,
            source: Source::new(
                "typical of roller chain couplings; the maker’s sheet rules",
                "",
                Basis::Memory,
            ),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "Rollers and sprocket teeth with the cover off; all of it where there is no \
                   cover.",
            torsion: "Stiff, with the play of rollers in the teeth.",
            balance: "A loose ring in a cover: for slow and moderate speeds.",
            gives: Gives::Metal,
            source: Source::common_practice("roller chain couplings"),
        }
    }

    fn lubrication(&self) -> Option<Lubrication> {
        Some(Lubrication {
            what: "Grease in a cover; heavy oil or grease brushed into a bare chain.",
            never: "A bare chain run dry, or dusty grease left on it.",
            hand_pack: "Work grease between the rollers and the plates by hand before the cover goes on.",
            fill: "Two opposite plugs out, pump slowly until clean grease shows, refit both.",
            fill_share: [0.75, 0.85],
            months: [3, 6],
            source: Source::new(
                "roller chain couplings",
                "interval to be confirmed",
                Basis::Memory,
            ),
        })
    }

    fn gap_rule(&self, _: &Form) -> GapRule {
        GapRule::HubFaces
    }

    fn near_heat(&self) -> &'static [&'static str] {
        &["seals and gasket of the cover", "hardened sprocket teeth: keep a flame off them"]
    }

    fn never_again(&self, _form: &Form) -> &'static [&'static str] {
        &[
            "a chain that is stretched, stiff, rusted or has a cracked plate",
            "a connecting pin’s spring clip or split pin",
            "gasket, and seals with a nick",
            "a new chain on hooked teeth: chain and sprockets wear in together",
        ]
    }

    fn close_up(&self, form: &Form) -> CloseUp {
        CloseUp {
            bolts: if form.name == COVERED { Bolting::CoverSplit } else { Bolting::None },
            turn: Turn::Either,
            tools: "torque wrench; pliers for the clip",
            stages: &[0.5, 1.0],
            rules: match form.name {
                COVERED => &[CLIP, "Cover bolts hold the cover, not the torque."],
                _ => &[CLIP],
            },
            source: Source::common_practice("roller chain couplings"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 3] = [
            Caution::new(Stage::Closeup, "A spring clip flies when it slips: eye protection."),
            Caution::new(
                Stage::Running,
                "A bare chain throws grease and catches cloth: the guard closes it in fully.",
            ),
            Caution::new(
                Stage::Removal,
                "The chain swings open under twist: let the shafts relax first.",
            ),
        ];
        &CAUTIONS
    }

    fn look(&self) -> Look {
        const SOURCE: Source = Source::common_practice(
            "a chain stretches and dries: looked at twice a year; from memory",
        );
        Look { months: [6, 6], source: SOURCE }
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
            WRAP,
        ];
        match form.name {
            COVERED => order.extend([PACK, COVER, steps::FILL]),
            _ => order.push(BRUSH),
        }
        order.extend([steps::GUARD, steps::FIRST_RUN, steps::HOT_CHECK]);
        order
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let mut order = vec![steps::OFF_LOCKOUT, steps::OFF_GUARD, steps::OFF_RECORD];
        if form.name == COVERED {
            order.push(OFF_COVER);
        }
        order.extend([
            OFF_PIN,
            OFF_CHAIN,
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
                "sound at start and under load",
                "even, no rattle",
                "chain stretched, dry, or misaligned",
            ),
            Check::new("inside of the guard", "dry", "seal or gasket leaks, too full"),
            Check::new(
                "connecting pin and clip, stopped and locked out",
                "clip whole and in its groove",
                "clip the wrong way round, or plates bent",
            ),
        ];
        &CHECKS
    }

    fn findings(&self) -> &'static [Finding] {
        &FINDINGS
    }

    fn wears(&self) -> &'static [Measure] {
        &[Measure::Stretch, Measure::Tooth]
    }

    fn suits(&self, duty: &Duty) -> Vec<Reason> {
        reasons(&[
            (
                duty.load.is_some_and(|load| load <= crate::Load::Moderate),
                Reason::pro("Simple and cheap for even loads; it parts at one pin."),
            ),
            (
                Duty::asks(duty.hot_place),
                Reason::pro("All metal: only grease and seals set a limit to heat."),
            ),
            (duty.shocks(), Reason::contra("It passes shocks on and has play.")),
            (Duty::asks(duty.damping), Reason::contra("It damps nothing.")),
            (Duty::lacks(duty.grease_service), Reason::contra("A dry chain wears fast.")),
            (duty.fast(), Reason::contra("Chain and cover limit its speed.")),
        ])
    }
}

const THREAD_ON: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and cover seals: on the shafts now",
    "One seal on each shaft before its hub, greased, the right way round; a cover split across \
     the shaft too.",
)
.needs(&["grease", "seals, new"]);

const WRAP: Step = Step::new(
    "chain-in",
    Stage::Closeup,
    "Line the teeth up, wrap the chain round, pin it, new clip",
    "Teeth of both sprockets in line, match marks together. Closed end of the clip leads in the \
     direction of turning.",
)
.needs(&["the chain", "connecting pin and new clip", "pliers"]);

const PACK: Step = Step::new(
    "pack",
    Stage::Closeup,
    "Work grease between rollers and plates by hand",
    "Both rows, all round, and the space between the sprockets.",
)
.needs(&["grease", "lint-free cloth"]);

const COVER: Step = Step::new(
    "cover",
    Stage::Closeup,
    "Seals, new gasket, cover on; bolts to {closeup.torque}",
    "Match marks at one side, bolts by turns from side to side.",
)
.needs(&["gasket, new", "torque wrench in date"]);

const BRUSH: Step = Step::new(
    "brush",
    Stage::Closeup,
    "Brush {closeup.grease} into the chain, both rows",
    "Into the gaps between the plates, turning by hand; wipe off what would be thrown.",
)
.needs(&["brush", "heavy oil or grease"]);

const OFF_COVER: Step = Step::new(
    "off-cover",
    Stage::Removal,
    "Plugs out, catch the grease, cover halves off or back",
    "Mark the halves. Keep a sample of the grease.",
)
.needs(&["tray", "clean jar"]);

const OFF_PIN: Step = Step::new(
    "off-pin",
    Stage::Removal,
    "Let the twist out; draw the connecting pin",
    "Turn until the pin is free of load. Clip off with a hand in front of it.",
)
.needs(&["pliers", "soft drift", "eye protection"]);

const OFF_CHAIN: Step = Step::new(
    "off-chain",
    Stage::Removal,
    "Take the chain off; look, clean, measure its stretch",
    "Ten pitches under light pull against ten new ones. Teeth: hooked or stepped?",
)
.needs(&["rule or callipers", "solvent"]);

const TRADE: Source = Source::common_practice("roller chain couplings");

static FINDINGS: [Finding; 5] = [
    Finding {
        id: "stretched",
        seen: "Chain longer than new, rattles",
        causes: &["pins and bushes worn: dry or dirty", "misaligned"],
        check: &["ten pitches against new", "grease and its date", "line-up"],
        mend: &["new chain; new sprockets where teeth are hooked"],
        goes_back: GoesBack::Measure,
        source: TRADE,
    },
    Finding {
        id: "hooked",
        seen: "Sprocket teeth hooked or stepped",
        causes: &["worn chain run on", "misaligned"],
        check: &["chain", "line-up"],
        mend: &["new hubs and chain together"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "plates",
        seen: "Plates cracked or pins broken",
        causes: &["overload or shock", "rust"],
        check: &["jams and starts in the log", "rating"],
        mend: &["new chain", "check shafts and keys"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
    Finding {
        id: "dry",
        seen: "Red rust, stiff links",
        causes: &["no grease", "water got in"],
        check: &["seals and gasket", "date of the last grease"],
        mend: &["new chain if a link stays stiff", "grease, shorter interval"],
        goes_back: GoesBack::Measure,
        source: TRADE,
    },
    Finding {
        id: "rollers",
        seen: "Rollers cracked, or marked at one end",
        causes: &["angle between the shafts", "shock"],
        check: &["line-up", "gap"],
        mend: &["new chain", "line up again"],
        goes_back: GoesBack::No,
        source: TRADE,
    },
];
