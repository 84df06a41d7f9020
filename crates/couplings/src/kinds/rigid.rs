//! Rigid flange couplings: two flanged hubs bolted face to face.

use quantities::{Basis, Source};

use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, Forgives, Form, GapRule,
    Gives, GoesBack, Kind, Look, Lubrication, Part, Planes, Play, Reason, Shock, Spacer, Turn,
    Twist,
};
use crate::step::{Stage, Step};
use crate::steps;

pub struct Rigid;

const FITTED: &str = "fitted bolts";
const FRICTION: &str = "clearance bolts";
const SPACER: &str = "spacer";

static FORMS: [Form; 3] = [
    Form {
        name: FITTED,
        says: "Bolts fit their reamed holes and carry the torque in shear.",
        planes: Planes::None,
        spacer: Spacer::Without,
    },
    Form {
        name: FRICTION,
        says: "Bolts stand in clearance holes; their tension presses the faces, which carry the torque by friction.",
        planes: Planes::None,
        spacer: Spacer::Without,
    },
    Form {
        name: SPACER,
        says: "A rigid spacer between the flanges, so that a seal can be changed without moving a machine.",
        planes: Planes::None,
        spacer: Spacer::With,
    },
];

const MEET_FIRST: &str =
    "Never draw the flanges together with the bolts: move the machine until they meet.";
const ACROSS: &str = "Tighten across the circle in stages, then once round; lock the nuts.";
const IN_SHEAR: &[&str] = &[
    MEET_FIRST,
    "Fitted bolts go into the holes they were reamed for, oiled, driven gently.",
    ACROSS,
];
const BY_FRICTION: &[&str] = &[
    MEET_FIRST,
    "Faces that carry by friction stay dry and bare: no oil, paint or gasket.",
    ACROSS,
];

impl Kind for Rigid {
    fn name(&self) -> &'static str {
        "rigid flange"
    }

    fn title(&self) -> &'static str {
        "Rigid flange coupling"
    }

    fn says(&self) -> &'static str {
        "Two flanges bolted face to face make one shaft of two; it forgives nothing."
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
        if form.spacer == Spacer::With {
            parts.push(Part::new('E', "spacer", Each::One));
        }
        let spigots = if form.spacer == Spacer::With { Each::Two } else { Each::One };
        let bolt = if form.name == FITTED { "fitted bolt and nut" } else { "bolt and nut" };
        parts.extend([
            Part::new('H', bolt, Each::PerBolt),
            Part::new('K', "key", Each::PerHub),
            Part::new('S', "spigot", spigots),
        ]);
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        Forgives {
            planes: form.planes,
            angular_deg: None,
            parallel_mm: None,
            axial_mm: None,
            shock: Shock::Passes,
            twist: Twist::Rigid,
            play: Play::None,
            source: Source::common_practice("by definition"),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "Faces, bolts and spigot; nothing works in it.",
            torsion: "As stiff as a shaft, no play.",
            balance: "It runs as true as its faces, spigot and shafts; bolts of one set and mass.",
            gives: Gives::Nothing,
            source: Source::common_practice("rigid flange couplings"),
        }
    }

    fn lubrication(&self) -> Option<Lubrication> {
        None
    }

    fn gap_rule(&self, form: &Form) -> GapRule {
        match form.spacer {
            Spacer::With => GapRule::Dbse,
            Spacer::Without => GapRule::FacesTouch,
        }
    }

    fn near_heat(&self) -> &'static [&'static str] {
        &["machine seals and bearings beside the hub", "paint on the flange faces"]
    }

    fn never_again(&self, form: &Form) -> &'static [&'static str] {
        const LOCKS: &str = "self-locking nuts with a plastic ring, tab washers, split pins";
        match form.name {
            FITTED => &[
                "fitted bolts that are scored, bent or loose in their holes",
                LOCKS,
                "a fitted bolt in another hole than its own",
            ],
            _ => &["bolts that are stretched, bent or torn in the thread", LOCKS],
        }
    }

    fn close_up(&self, form: &Form) -> CloseUp {
        CloseUp {
            bolts: if form.name == FITTED { Bolting::Fitted } else { Bolting::Through },
            turn: Turn::Nut,
            tools: "torque wrench and a ring spanner to hold the bolt; soft hammer for fitted bolts",
            stages: &[0.3, 0.7, 1.0],
            rules: if form.name == FITTED { IN_SHEAR } else { BY_FRICTION },
            source: Source::common_practice("rigid flange couplings"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 4] = [
            Caution::new(
                Stage::Lineup,
                "It forgives nothing: what is left of misalignment bends the shafts and loads the \
                 bearings every turn.",
            ),
            Caution::new(
                Stage::Closeup,
                "Never feel for bolt holes with a finger while flanges can move; use a pin.",
            ),
            Caution::new(
                Stage::Removal,
                "A vertical shaft or a rotor without its own bearing drops when the flange opens: \
                 carry all weight before the first nut is slack.",
            ),
            Caution::new(
                Stage::Removal,
                "Flanges pulled together by force spring apart when the last bolt goes.",
            ),
        ];
        &CAUTIONS
    }

    fn look(&self) -> Look {
        const SOURCE: Source = Source::common_practice(
            "nothing in it works: looked at every one to two years; from memory",
        );
        Look { months: [12, 24], source: SOURCE }
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
            FLANGES,
        ];
        match form.spacer {
            Spacer::With => order.extend([DBSE, steps::LINEUP, HANG_SPACER]),
            Spacer::Without => order.extend([FACES, steps::LINEUP, MEET]),
        }
        order.push(if form.name == FITTED { FITTED_BOLTS } else { CLEARANCE_BOLTS });
        order.extend([steps::TORQUE, RUNOUT, steps::GUARD, steps::FIRST_RUN, steps::HOT_CHECK]);
        order
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let mut order = vec![
            steps::OFF_LOCKOUT,
            steps::OFF_GUARD,
            steps::OFF_RECORD,
            OFF_SUPPORT,
            OFF_NUMBERS,
            OFF_BOLTS,
            OFF_PART,
        ];
        if form.spacer == Spacer::With {
            order.push(OFF_SPACER);
        }
        order.extend([
            steps::OFF_CLEAR,
            OFF_FACES,
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
                "bearings beside the coupling: temperature, and vibration at once per turn",
                "as before it was opened, steady",
                "flanges bent together, faces out of square, machines moved when hot",
            ),
            Check::new(
                "the joint between the flanges, stopped and locked out",
                "no fresh dust, no mark of slip, nuts on their marks",
                "bolts too slack, faces dirty, overload",
            ),
            Check::new(
                "runout beside the joint, after the first heat",
                "as written at close-up",
                "flange slipped or bent",
            ),
        ];
        &CHECKS
    }

    fn first_recheck(&self) -> &'static str {
        "first re-check: runout beside the joint, nuts against their marks, bearings warm alike"
    }

    fn findings(&self) -> &'static [Finding] {
        &FINDINGS
    }

    fn suits(&self, duty: &Duty) -> Vec<Reason> {
        reasons(&[
            (
                Duty::lacks(duty.offset),
                Reason::pro(
                    "Shafts that stay in one line, or a rotor hung from the other’s thrust bearing, need nothing that gives.",
                ),
            ),
            (Duty::lacks(duty.grease_service), Reason::pro("Nothing in it wants grease or wears.")),
            (Duty::asks(duty.offset), Reason::contra("It takes no misalignment at all.")),
            (
                Duty::asks(duty.end_movement),
                Reason::contra(
                    "It takes no end movement: one thrust bearing must hold both rotors.",
                ),
            ),
            (Duty::asks(duty.damping), Reason::contra("It passes every shock on.")),
        ])
    }
}

const THREAD_ON: Step = Step::new(
    "thread-on",
    Stage::Heat,
    "Guard ends and covers: on the shafts now, before the hubs",
    "Whatever a hub would trap goes on first; flange faces towards the other machine.",
)
.needs(&["guard ends"]);

const FLANGES: Step = Step::new(
    "flanges",
    Stage::Heat,
    "Clean faces, spigot and holes; runout of each flange",
    "To bare metal; burrs off with a fine stone. Indicator at face and rim, each flange on its \
     own shaft: a face out of square bends the shaft when it is bolted.",
)
.needs(&["fine stone", "dial indicator with base", "lint-free cloth"]);

const FACES: Step = Step::new(
    "faces",
    Stage::Gap,
    "Bring the flanges near by moving the machine, not by bolts",
    "Leave room for a feeler between the faces; the spigot must enter without force. Never pull a \
     machine with the coupling bolts.",
)
.needs(&["jack screws", "feeler gauges"]);

const DBSE: Step = Step::new(
    "faces",
    Stage::Gap,
    "Set the distance for the spacer: {gap.faces}",
    "At four points, rotors where they run. Spacer and spigots must go in without springing \
     anything apart.",
)
.needs(&["inside micrometer"]);

const MEET: Step = Step::new(
    "meet",
    Stage::Closeup,
    "Spigot in, faces together: the thinnest feeler finds no gap",
    "Feel all round at four places of the turn. A gap that turns with the shaft: the flange is \
     out. A gap that stays: the line-up is out. Put it right; the bolts must not.",
)
.hold("Someone other than the doer feels the faces all round and agrees.")
.needs(&["feeler gauges from 0.03 mm (0.001 in)"]);

const HANG_SPACER: Step = Step::new(
    "meet",
    Stage::Closeup,
    "Sling the spacer in; spigots home, the feeler finds no gap",
    "Both joints, all round, at four places of the turn. The sling carries it until bolts of both \
     ends are in.",
)
.hold("Someone other than the doer feels both joints all round and agrees.")
.needs(&["soft sling", "feeler gauges from 0.03 mm (0.001 in)"]);

const FITTED_BOLTS: Step = Step::new(
    "bolts",
    Stage::Closeup,
    "Match marks together; each fitted bolt into its own hole",
    "Oiled, tapped in with a soft hammer. One that drops in loose is renewed after reaming. Nuts \
     finger-tight.",
)
.needs(&["fitted bolts, numbered", "light oil", "soft hammer"]);

const CLEARANCE_BOLTS: Step = Step::new(
    "bolts",
    Stage::Closeup,
    "Match marks together; all bolts in by hand",
    "Bolts of one set and grade, hardened washers if the sheet has them. Faces dry and bare: they \
     carry by friction. Nuts finger-tight.",
)
.needs(&["bolts and nuts of one set"]);

const RUNOUT: Step = Step::new(
    "runout",
    Stage::Closeup,
    "Runout beside the joint on both shafts, bolted up",
    "If it jumped from before: undo, look for dirt or a burr, do it again. Write both readings \
     down.",
)
.hold("Someone other than the doer reads the runout and agrees.")
.needs(&["dial indicator with base"]);

const OFF_SUPPORT: Step = Step::new(
    "off-support",
    Stage::Removal,
    "Carry both shafts and any hanging weight: {coupling.mass}",
    "Blocks, sling or jacks under whatever the joint holds up, taking the weight now. Vertical \
     sets: the lower rotor hangs on these bolts.",
)
.hold("Whoever is in charge of the lift agrees before the first nut is slack.")
.needs(&["slings, blocks or jacks"]);

const OFF_NUMBERS: Step = Step::new(
    "off-numbers",
    Stage::Removal,
    "Number every bolt, nut and hole",
    "A fitted bolt belongs to one hole. Centre-punch or mark, clockwise from the match mark.",
)
.needs(&["marker or punch"]);

const OFF_BOLTS: Step = Step::new(
    "off-bolts",
    Stage::Removal,
    "Slacken across the circle; drive fitted bolts out softly",
    "Nut run on flush to save the thread, soft drift. Leave two opposite ones finger-tight to the \
     last.",
)
.needs(&["soft drift", "penetrating oil", "marked tray"]);

const OFF_PART: Step = Step::new(
    "off-part",
    Stage::Removal,
    "Part the spigot evenly with the jack screws",
    "A quarter turn each by turns. No wedges between the faces.",
)
.needs(&["jack screws"]);

const OFF_SPACER: Step = Step::new(
    "off-spacer",
    Stage::Removal,
    "Lift the spacer out on its sling",
    "Sling tight before the last bolts are out.",
)
.needs(&["soft sling"]);

const OFF_FACES: Step = Step::new(
    "off-faces",
    Stage::Removal,
    "Look at faces, spigot, bolts and holes",
    "Fretting, slip marks, oval holes, stretched bolts: they tell what the joint went through.",
)
.needs(&["camera", "micrometer"]);

const RECALLED: Source = Source::common_practice("rigid flange couplings");

static FINDINGS: [Finding; 5] = [
    Finding {
        id: "bolts",
        seen: "Fitted bolts loose or broken",
        causes: &["holes not reamed in line", "flanges misaligned", "tightened unequally"],
        check: &["runout each side of the joint", "fit of each bolt"],
        mend: &["ream oversize together, new bolts"],
        goes_back: GoesBack::No,
        source: RECALLED,
    },
    Finding {
        id: "runout-jumps",
        seen: "Runout jumps when it is bolted up",
        causes: &["dirt or a burr on a face", "a face out of square"],
        check: &["face runout of each flange alone", "feeler all round"],
        mend: &["clean and stone", "machine the face on its own shaft"],
        goes_back: GoesBack::Measure,
        source: RECALLED,
    },
    Finding {
        id: "fretting",
        seen: "Red dust or polish between the faces",
        causes: &[
            "too little bolt tension",
            "oil or paint on faces that carry by friction",
            "overload",
        ],
        check: &["tightening record", "length and stretch of the bolts", "torque peaks in the log"],
        mend: &["clean to bare metal", "new bolts, right tension"],
        goes_back: GoesBack::Measure,
        source: RECALLED,
    },
    Finding {
        id: "bent",
        seen: "Bearings beside it ran hot or short-lived",
        causes: &["shafts bent into line by the flange", "machines move when hot"],
        check: &["face and rim with the flange opened", "line-up hot"],
        mend: &[
            "line up to a rigid joint’s tolerance",
            "a flexible coupling if the machines must move",
        ],
        goes_back: GoesBack::Yes,
        source: RECALLED,
    },
    Finding {
        id: "flange-crack",
        seen: "Crack in hub or flange, at key seat or fillet",
        causes: &["bending every turn", "too much interference", "key tight on top"],
        check: &["dye test", "interference and key clearance", "line-up"],
        mend: &["renew the hub"],
        goes_back: GoesBack::No,
        source: Source::new("hub failures in general", "", Basis::Memory),
    },
];
