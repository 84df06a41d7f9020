//! Grid couplings: a spring-steel grid woven through grooves in both hubs.

use quantities::{Basis, Source};

use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, FloatLimit, Forgives, Form,
    GapRule, Gives, GoesBack, Kind, Lubrication, Measure, Part, Planes, Play, Reason, Shock,
    Spacer, Turn, Twist,
};
use crate::step::{Stage, Step, When};
use crate::steps;

pub struct Grid;

const ALONG: &str = "cover split along";
const ACROSS: &str = "cover split across";
const SPACER: &str = "spacer";

static FORMS: [Form; 3] = [
    Form {
        name: ALONG,
        says: "The cover is split along the shaft and bolted from the side; it comes off without moving anything.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: ACROSS,
        says: "The cover is split across the shaft; its halves are threaded on before the hubs. For higher speed.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: SPACER,
        says: "Grooved hubs on a spacer that drops out between two flanged shaft hubs.",
        planes: Planes::One,
        spacer: Spacer::With,
    },
];

impl Kind for Grid {
    fn name(&self) -> &'static str {
        "grid"
    }

    fn title(&self) -> &'static str {
        "Grid coupling"
    }

    fn says(&self) -> &'static str {
        "A spring-steel grid lies in flared grooves of both hubs: soft at light load, stiffer as it beds on the flare."
    }

    fn forms(&self) -> &'static [Form] {
        &FORMS
    }

    fn parts(&self, form: &Form) -> Vec<Part> {
        let mut parts = vec![
            Part::new('A', "shaft", Each::PerHub),
            Part::new('B', "driver hub", Each::One),
            Part::new('C', "driven hub", Each::One),
            Part::new('D', "grid", Each::AsMade),
            Part::new('E', "cover half", Each::Two),
        ];
        parts.extend([
            Part::new('F', "seal", Each::PerHub),
            Part::new('G', "gasket", Each::One),
            Part::new('H', "bolt and nut", Each::PerBolt),
            Part::new('J', "plug", Each::Two),
            Part::new('K', "key", Each::PerHub),
        ]);
        if form.spacer == Spacer::With {
            parts.push(Part::new('L', "spacer", Each::One));
        }
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        Forgives {
            planes: form.planes,
            angular_deg: Some([0.06, 0.25]),
            parallel_mm: Some([0.3, 0.76]),
            axial_mm: Some([1.5, 3.0]),
            shock: Shock::Softens,
            twist: Twist::Progressive,
            play: Play::Little,
            source: Source::new(
                "typical of tapered grids; the maker’s sheet rules",
                "",
                Basis::Memory,
            ),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "Nothing while the cover is on; with it off every rung, without moving a \
                   machine.",
            torsion: "Soft at light load, stiffer as the grid beds on the flare of its grooves; \
                   a little play.",
            balance: "Grid and cover are never quite central: for moderate speeds as supplied, \
                   cover halves of one set.",
            gives: Gives::Metal,
            source: Source::common_practice("grid couplings"),
        }
    }

    fn lubrication(&self) -> Option<Lubrication> {
        Some(Lubrication {
            what: "A coupling grease that stays put: the grid’s own movement keeps it spread, so \
                   it may be stiffer than for teeth; at speed one that does not separate.",
            never: "Any grease that separates at the speed of the coupling, or mixes badly with \
                    what is left inside.",
            hand_pack: "Pack gap and grooves before the grid goes in, and the space round the \
                        rungs after, wiped flush with the top.",
            fill: "Two opposite plugs out, pump at the lower until clean grease shows at the \
                   upper, refit both.",
            fill_share: [0.75, 0.85],
            months: [12, 12],
            source: Source::common_practice("coupling lubrication"),
        })
    }

    fn gap_rule(&self, form: &Form) -> GapRule {
        match form.spacer {
            Spacer::With => GapRule::Dbse,
            Spacer::Without => GapRule::HubFaces,
        }
    }

    fn near_heat(&self) -> &'static [&'static str] {
        &["seals of the cover", "gasket", "the grid itself: never heat it, its temper goes"]
    }

    fn never_again(&self, _form: &Form) -> &'static [&'static str] {
        &[
            "gasket",
            "seals that were near a hot hub or show a nick",
            "a grid with a broken, blued or cut rung",
            "self-locking nuts with a plastic ring",
            "old grease",
        ]
    }

    fn close_up(&self, form: &Form) -> CloseUp {
        CloseUp {
            bolts: if form.name == ACROSS { Bolting::Through } else { Bolting::CoverSplit },
            turn: Turn::Nut,
            tools: "torque wrench; soft hammer for the grid",
            stages: &[0.5, 1.0],
            rules: &[
                "Match marks of the cover halves at one side.",
                "Cover bolts hold the cover, not the torque: even and not too tight on the gasket.",
            ],
            source: Source::common_practice("grid couplings"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 3] = [
            Caution::new(
                Stage::Closeup,
                "The grid is a hard spring: eye protection, a soft hammer only, fingers out of the \
                 loops. A hard hammer chips it and starts a crack.",
            ),
            Caution::new(
                Stage::Running,
                "A spare that stood long may be dry: look at its grease before the start.",
            ),
            Caution::new(
                Stage::Removal,
                "A grid under twist springs out: let the shafts relax first, stand clear of the \
                 open end, eye protection.",
            ),
        ];
        &CAUTIONS
    }

    fn float_limit(&self, form: &Form) -> FloatLimit {
        match form.spacer {
            Spacer::With => FloatLimit::AsMade,
            Spacer::Without => FloatLimit::Plate,
        }
    }

    fn install_steps(&self, form: &Form) -> Vec<Step> {
        vec![
            steps::LOCKOUT,
            steps::MACHINE_CHECK,
            steps::MAGNETIC_CENTRE,
            steps::COUPLING_CHECK,
            steps::MEASURE,
            steps::FIT,
            match (form.name, form.spacer) {
                (ACROSS, _) => THREAD_ON_COVERS,
                (_, Spacer::With) => THREAD_ON_SPACER,
                _ => THREAD_ON_SEALS,
            },
            steps::SHIELD,
            steps::HEAT_DRIVER,
            steps::SLIP_DRIVER,
            steps::HEAT_DRIVEN,
            steps::SLIP_DRIVEN,
            steps::COOL,
            if form.spacer == Spacer::With { GAP_SPACER } else { GAP },
            steps::LINEUP,
            GROOVES,
            FLOAT_SPACERS,
            GRID,
            COVER,
            TORQUE,
            steps::FILL,
            steps::GUARD,
            steps::FIRST_RUN,
            steps::HOT_CHECK,
        ]
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let mut order = vec![
            steps::OFF_LOCKOUT,
            steps::OFF_GUARD,
            steps::OFF_RECORD,
            OFF_RELAX,
            OFF_COVER,
            OFF_LOOK,
            OFF_GRID,
        ];
        if form.spacer == Spacer::With {
            order.push(steps::OFF_SPACER);
        }
        order.extend([
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
                "sound at start and at light load",
                "even, no rattle",
                "grid broken at an end turn, grooves worn, no grease",
            ),
            Check::new(
                "inside of the guard, below seals and split",
                "dry",
                "seal out of its groove, gasket torn, plug left out",
            ),
            Check::new(
                "cover temperature after an hour",
                "little above the bearings beside it",
                "misaligned, or too little grease",
            ),
            Check::new(
                "vibration at once and twice speed, both bearings beside the coupling",
                "in the zone for a machine just started, steady",
                "line-up when hot, gap wrong",
            ),
        ];
        &CHECKS
    }

    fn findings(&self) -> &'static [Finding] {
        &FINDINGS
    }

    /// Those of the cover.
    fn bolt_circles(&self, _: &Form) -> u32 {
        1
    }

    fn wears(&self) -> &'static [Measure] {
        &[Measure::Tooth]
    }

    fn suits(&self, duty: &Duty) -> Vec<Reason> {
        reasons(&[
            (
                duty.shocks(),
                Reason::pro(
                    "The grid takes the edge off shocks and is renewed without moving a machine.",
                ),
            ),
            (
                Duty::asks(duty.damping),
                Reason::pro(
                    "Its stiffness rises with torque, so it has no one resonance; friction in the grease damps a little.",
                ),
            ),
            (
                Duty::lacks(duty.grease_service),
                Reason::contra("Without fresh grease the grid breaks."),
            ),
            (
                Duty::asks(duty.offset),
                Reason::contra("It has one flexing plane: it takes little offset."),
            ),
            (duty.fast(), Reason::contra("Grid and split cover limit its speed.")),
        ])
    }
}

const THREAD_ON_SEALS: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and cover seals: on the shafts now",
    "One seal on each shaft before its hub, greased, the right way round. The thing most often \
     forgotten. The cover comes later, from the side.",
)
.needs(&["coupling grease", "seals, new"]);

const THREAD_ON_SPACER: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and all a hub would trap: on the shafts now",
    "Seals of the cover wait with the spacer hubs, which carry them: they go over those before these \
     are bolted up. The cover comes later, from the side.",
)
.needs(&["guard ends"]);

const THREAD_ON_COVERS: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends, seals, cover halves, gasket: on the shafts now",
    "Seal in its cover half, a half on each shaft before its hub, the gasket over one hub. A \
     cover split across the shaft cannot come later.",
)
.needs(&["coupling grease", "seals and gasket, new"]);

const GAP: Step = Step::new(
    "gap",
    Stage::Gap,
    "Set the gap: {gap.faces}, bar at four points",
    "Hubs cool, rotors where they run. A bar of the gap’s thickness at four quarter turns; the \
     difference between widest and narrowest is the angle. Tighten set screws, measure again: a \
     hub moves as it is locked.",
)
.needs(&["gap bar", "feeler gauges"]);

const GAP_SPACER: Step = Step::new(
    "gap",
    Stage::Gap,
    "Set the distance for the spacer: {gap.faces}, at four points",
    "Hubs cool, rotors where they run. A new seal, greased, the right way round, over each spacer \
     hub; bolt these up in their marks, then check the gap at the grid with a bar at four quarter \
     turns.",
)
.needs(&["inside micrometer", "gap bar", "feeler gauges", "seals, new"]);

const GROOVES: Step = Step::new(
    "grooves",
    Stage::Closeup,
    "Turn the hubs till the grooves line up; pack the gap",
    "Straight-edge along the grooves all round. Pack gap and grooves with grease by hand.",
)
.needs(&["straight-edge", "coupling grease"]);

const FLOAT_SPACERS: Step = Step::new(
    "float-plate",
    Stage::Closeup,
    "Fit the float limiters at both sides",
    "As the sheet shows. Push the {driver} to and fro: neither thrust shoulder may touch before the \
     coupling stops it.",
)
.when(When::EndFloat)
.needs(&["float limiters", "dial indicator"]);

const GRID: Step = Step::new(
    "grid",
    Stage::Closeup,
    "Tap the grid home from one end with a soft hammer",
    "Open it a little, start all rungs at one end, seat it round a little at a time. Cut ends of \
     several pieces all the same way. Never a hard hammer. Then pack between and round the rungs, \
     wiped flush with the top.",
)
.needs(&["soft hammer", "eye protection", "coupling grease"]);

const COVER: Step = Step::new(
    "cover",
    Stage::Closeup,
    "Seals to their places, new gasket, cover on in its marks",
    "Seals flat in the grooves, gasket on one half, match marks at one side, lubricant holes \
     opposite each other. All bolts in by hand.",
)
.needs(&["gasket, new", "cover bolts"]);

const TORQUE: Step = Step::new(
    "torque",
    Stage::Closeup,
    "Tighten the cover evenly to {closeup.torque}",
    "By turns from side to side, half the torque first. No nut moves on the last round.",
)
.needs(&["torque wrench in date"]);

const OFF_RELAX: Step = Step::new(
    "off-relax",
    Stage::Removal,
    "Let the twist out of the shafts; catch the grease",
    "Turn back by hand until the grid is loose in its grooves. Plugs out, keep a sample of the \
     grease.",
)
.needs(&["tray", "clean jar"]);

const OFF_COVER: Step = Step::new(
    "off-cover",
    Stage::Removal,
    "Cover bolts out, cover halves and seals off or back",
    "Mark the halves. Part them with a screw or a soft drift, not a chisel in the joint.",
)
.needs(&["marker", "soft drift"]);

const OFF_LOOK: Step = Step::new(
    "off-look",
    Stage::Removal,
    "Look at grid, grooves and grease before wiping",
    "Broken end turns, blue colour, steps under the rungs: take a picture, it shows the cause.",
)
.needs(&["camera"]);

const OFF_GRID: Step = Step::new(
    "off-grid",
    Stage::Removal,
    "Lift the grid out: round bar in the loops, side by side",
    "From the open end, bar through the loop, prying on the hub teeth, by turns left and right \
     all round. Do not cut rungs unless it is scrap.",
)
.needs(&["round bar", "eye protection"]);

const CASE: Source = Source::common_practice("case notes on grid couplings");
const NAVY: Source = Source::new(
    "NAVEDTRA 14115 (US Navy training manual)",
    "grid-type flexible coupling",
    Basis::Read,
);

static FINDINGS: [Finding; 7] = [
    Finding {
        id: "no-grease",
        seen: "Grid in pieces, grooves mangled, no grease, metal blued",
        causes: &["never greased, or run dry", "a spare started without a look"],
        check: &["grease and records", "whether the fitting can be reached through the guard"],
        mend: &["new grid; new hubs if the grooves are hurt", "a way to grease it"],
        goes_back: GoesBack::No,
        source: NAVY,
    },
    Finding {
        id: "broken-greased",
        seen: "Grid broken in several places with plenty of grease",
        causes: &["fatigue or overload", "misaligned"],
        check: &["load events", "line-up", "service factor"],
        mend: &["new grid", "line up again", "check the rating"],
        goes_back: GoesBack::No,
        source: CASE,
    },
    Finding {
        id: "end-turn",
        seen: "Rattle at start, end turns of the grid broken",
        causes: &["fatigue at the end turns", "misaligned", "shock"],
        check: &["all rungs", "line-up", "starts and jams in the log"],
        mend: &["new grid", "line up again"],
        goes_back: GoesBack::No,
        source: CASE,
    },
    Finding {
        id: "taper-teeth",
        seen: "Hub teeth worn to a smooth taper towards the other hub",
        causes: &["sliding wear of many years"],
        check: &["hours in service", "grease"],
        mend: &["new hubs together with the grid"],
        goes_back: GoesBack::No,
        source: CASE,
    },
    Finding {
        id: "blue",
        seen: "Coating rubbed off the grid, bluish tint",
        causes: &["too little grease, too hot", "misaligned"],
        check: &["grease", "line-up"],
        mend: &["new grid"],
        goes_back: GoesBack::No,
        source: NAVY,
    },
    Finding {
        id: "hub-loose",
        seen: "Hub moves on the shaft",
        causes: &["bore, key or key seat worn", "poor fit"],
        check: &["bore, shaft and key sizes"],
        mend: &["new hub", "make the shaft good"],
        goes_back: GoesBack::No,
        source: NAVY,
    },
    Finding {
        id: "steps",
        seen: "Steps worn in the grooves under the rungs",
        causes: &["misaligned", "poor grease", "torque that reverses"],
        check: &["line-up", "how the load runs"],
        mend: &["new hubs and grid where a nail catches on the step"],
        goes_back: GoesBack::Measure,
        source: Source::common_practice("grid couplings"),
    },
];
