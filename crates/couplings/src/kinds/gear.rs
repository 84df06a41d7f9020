//! Gear couplings: crowned teeth on the hubs, straight teeth in the sleeves.

use quantities::{Basis, Source};

use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, FloatLimit, Forgives, Form,
    GapRule, Gives, GoesBack, Kind, Lubrication, Measure, Part, Planes, Play, Reason, Shock,
    Sliding, Spacer, Turn, Twist,
};
use crate::service::{GEAR_IN_SPECIAL_TRAINS, ServiceFactor};
use crate::step::{Stage, Step, When};
use crate::steps;

pub struct Gear;

const FLANGED: &str = "flanged sleeves";
const SINGLE: &str = "single engagement";
const SPACER: &str = "spacer";
const CONTINUOUS: &str = "continuous sleeve";

static FORMS: [Form; 4] = [
    Form {
        name: FLANGED,
        says: "A toothed sleeve on each hub, bolted together at their flanges.",
        planes: Planes::Two,
        spacer: Spacer::Without,
    },
    Form {
        name: SINGLE,
        says: "One toothed hub and sleeve, bolted to a plain flanged hub.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: SPACER,
        says: "Two flanged sleeves with a spacer between them that drops out.",
        planes: Planes::Two,
        spacer: Spacer::With,
    },
    Form {
        name: CONTINUOUS,
        says: "One sleeve over both hubs, held by rings at its ends; no flange bolts.",
        planes: Planes::Two,
        spacer: Spacer::Without,
    },
];

const BY_FLANGES: &[&str] = &[
    "The maker’s bolts only, all of one set; in a balanced coupling each in its place.",
    "Match marks together; bolts from the marked side.",
    "Snug by hand all round, then across the circle in stages, then once round.",
];
const BY_RINGS: &[&str] = &[
    "Match marks together; the sleeve moves freely along the teeth by hand.",
    "End rings home against their shoulders, snap rings full in their grooves all round.",
];

const RINGED: &[&str] = &[
    "snap rings that were bent or sprung",
    "seals that were near a hot hub or show a nick",
    "old grease",
    "one hub or one sleeve of a worn pair alone: teeth wear in together",
];
const NEVER: &[&str] = &[
    "gasket",
    "seals that were near a hot hub or show a nick",
    "self-locking nuts with a plastic ring",
    "old grease",
    "one hub or one sleeve of a worn pair alone: teeth wear in together",
];

impl Kind for Gear {
    fn name(&self) -> &'static str {
        "gear"
    }

    fn title(&self) -> &'static str {
        "Gear coupling"
    }

    fn says(&self) -> &'static str {
        "Crowned teeth on each hub rock and slide in the straight teeth of a sleeve, in grease."
    }

    fn forms(&self) -> &'static [Form] {
        &FORMS
    }

    fn parts(&self, form: &Form) -> Vec<Part> {
        let seals = if form.name == SINGLE { Each::One } else { Each::PerHub };
        let mut parts = vec![
            Part::new('A', "shaft", Each::PerHub),
            Part::new('B', "driver hub", Each::One),
            Part::new('C', "driven hub", Each::One),
        ];
        match form.name {
            SPACER => parts.extend([
                Part::new('D', "sleeve", Each::PerHub),
                Part::new('E', "spacer", Each::One),
            ]),
            FLANGED => parts.extend([
                Part::new('D', "driver sleeve", Each::One),
                Part::new('E', "driven sleeve", Each::One),
            ]),
            _ => parts.push(Part::new('D', "sleeve", Each::One)),
        }
        parts.push(Part::new('F', "seal", seals));
        if form.name != CONTINUOUS {
            let gaskets = if form.name == SPACER { Each::Two } else { Each::One };
            parts.push(Part::new('G', "gasket", gaskets));
            parts.push(Part::new('H', "bolt and nut", Each::PerBolt));
        }
        parts.push(Part::new('J', "plug", Each::AsMade));
        parts.push(Part::new('K', "key", Each::PerHub));
        parts.push(Part::new('T', "teeth", seals));
        if form.name == CONTINUOUS {
            parts.push(Part::new('W', "end ring", Each::Two));
        }
        parts
    }

    fn forgives(&self, form: &Form) -> Forgives {
        Forgives {
            planes: form.planes,
            angular_deg: Some([0.5, 1.5]),
            parallel_mm: None,
            axial_mm: Some([1.5, 6.0]),
            shock: Shock::Passes,
            twist: Twist::Stiff,
            play: Play::Backlash,
            source: Source::new(
                "typical of crowned teeth; the maker’s sheet rules",
                "",
                Basis::Memory,
            ),
        }
    }

    fn character(&self) -> Character {
        Character {
            seen: "Nothing while it is closed: sleeves hide teeth and grease, and only leaks \
                   tell.",
            torsion: "Stiff, with backlash at the teeth: quiet while the torque goes one way, \
                   hammering where it reverses.",
            balance: "Tooth tips centre the sleeves: true while new, less so as they wear. A \
                   fast one is balanced as an assembly and goes back to its marks.",
            gives: Gives::Metal,
            source: Source::common_practice("gear couplings"),
        }
    }

    fn lubrication(&self) -> Option<Lubrication> {
        Some(Lubrication {
            what: "A coupling grease, soft enough to be thrown to the teeth and made not to \
                   separate there (ANSI/AGMA 9001 grades); or oil where the sheet says so.",
            never: "Ordinary bearing grease at speed: its soap is thrown out and cakes between the \
                    teeth, and the oil is gone.",
            hand_pack: "Pack the teeth of hubs and sleeves full; smear seal lips and barrels.",
            fill: "Take out two opposite plugs, turn one to the top, pump slowly at the lower one \
                   until clean grease shows at the upper, refit both. Too much harms the seals as \
                   too little harms the teeth.",
            fill_share: [0.75, 0.85],
            months: [6, 12],
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
        &["seals and O-rings in the sleeves", "gaskets", "hardened teeth: keep a flame off them"]
    }

    fn never_again(&self, form: &Form) -> &'static [&'static str] {
        if form.name == CONTINUOUS { RINGED } else { NEVER }
    }

    fn close_up(&self, form: &Form) -> CloseUp {
        let bolts = if form.name == CONTINUOUS { Bolting::None } else { Bolting::Through };
        CloseUp {
            bolts,
            turn: Turn::Nut,
            tools: "torque wrench and a ring spanner to hold the bolt",
            stages: &[0.3, 0.7, 1.0],
            rules: if form.name == CONTINUOUS { BY_RINGS } else { BY_FLANGES },
            source: Source::common_practice("flanged couplings"),
        }
    }

    fn cautions(&self) -> &'static [Caution] {
        const CAUTIONS: [Caution; 4] = [
            Caution::new(
                Stage::Heat,
                "Sleeves and seals go on the shafts before the hubs: a hub that is home and hot \
                 cannot wait for them.",
            ),
            Caution::new(
                Stage::Closeup,
                "Sleeves run away on a greasy shaft: hold fingers out of the flange gap, use \
                 aligning pins.",
            ),
            Caution::new(
                Stage::Running,
                "A gear coupling without grease acts like a rigid one and can break shafts. It is \
                 not run on without a decision by whoever is responsible.",
            ),
            Caution::new(
                Stage::Removal,
                "Never heat a hub with the sleeve closed over it: the grease inside flashes and \
                 the space can burst.",
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
        let mut order = vec![
            steps::LOCKOUT,
            steps::MACHINE_CHECK,
            steps::MAGNETIC_CENTRE,
            steps::COUPLING_CHECK,
            steps::MEASURE,
            steps::FIT,
            thread_on(form),
            steps::SHIELD,
            steps::HEAT_DRIVER,
            steps::SLIP_DRIVER,
            steps::HEAT_DRIVEN,
            steps::SLIP_DRIVEN,
            steps::COOL,
            steps::GAP,
            steps::LINEUP,
            PACK_TEETH,
            FLOAT_PLATE,
        ];
        order.extend(closing(form));
        order.extend([steps::FILL, steps::GUARD, steps::FIRST_RUN, steps::HOT_CHECK]);
        order
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let opening = if form.name == CONTINUOUS { OFF_RINGS } else { OFF_BOLTS };
        let mut order =
            vec![steps::OFF_LOCKOUT, steps::OFF_GUARD, steps::OFF_RECORD, OFF_DRAIN, opening];
        if form.spacer == Spacer::With {
            order.push(steps::OFF_SPACER);
        }
        order.extend([
            OFF_SLEEVES,
            OFF_TEETH,
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
                "inside of the guard, below the seals",
                "dry",
                "cut seal, torn gasket, plug left out, too full",
            ),
            Check::new(
                "hub and sleeve temperature after an hour",
                "little above the bearings beside it, both sides alike",
                "dry teeth, or misaligned when hot",
            ),
            Check::new(
                "axial vibration and thrust bearing temperature, also when the load changes",
                "steady",
                "teeth lock under torque: lubricant, sludge, misalignment",
            ),
            Check::new(
                "vibration at once and twice speed, both bearings beside the coupling",
                "in the zone for a machine just started, steady",
                "line-up when hot, unbalance from a sleeve that hangs, wrong key length",
            ),
        ];
        &CHECKS
    }

    fn findings(&self) -> &'static [Finding] {
        &FINDINGS
    }

    fn teeth_slide(&self) -> Sliding {
        Sliding::Yes
    }

    fn least_in_special_trains(&self) -> Option<ServiceFactor> {
        Some(GEAR_IN_SPECIAL_TRAINS)
    }

    fn wears(&self) -> &'static [Measure] {
        &[Measure::Backlash, Measure::Tooth]
    }

    fn suits(&self, duty: &Duty) -> Vec<Reason> {
        reasons(&[
            (
                Duty::asks(duty.end_movement),
                Reason::pro("Hubs slide in the sleeves: it takes much end movement."),
            ),
            (duty.shocks(), Reason::pro("It carries more torque for its size than other kinds.")),
            (
                Duty::asks(duty.hot_place),
                Reason::pro("All metal: only grease and seals set a limit to heat."),
            ),
            (
                Duty::lacks(duty.grease_service),
                Reason::contra("Without fresh grease it wears out and locks."),
            ),
            (
                Duty::asks(duty.damping),
                Reason::contra("It is stiff in torsion and has backlash; it damps nothing."),
            ),
            (
                duty.fast(),
                Reason::contra(
                    "At high speed it wants oil, close balance and a small angle: the teeth slide fast.",
                ),
            ),
        ])
    }
}

fn thread_on(form: &Form) -> Step {
    let step = Step::new(
        "thread-on",
        Stage::Heat,
        "Guard ends, seals, then sleeves: on the shafts now",
        "Everything that a hub would trap goes on first, flanges towards the other machine; seals \
         greased, flat in their grooves. The thing most often forgotten.",
    )
    .needs(&["coupling grease", "seals, new"]);
    match form.name {
        SINGLE => Step {
            title: "Guard ends, seal, then the sleeve: on its shaft now",
            detail: "On the shaft of the toothed hub, before the hub: seal greased and flat in its \
                     groove, flange towards the other machine. The thing most often forgotten.",
            ..step
        },
        CONTINUOUS => Step {
            title: "Guard ends, end rings, seals, sleeve: on the shafts now",
            detail: "End ring and seal on each shaft, the sleeve on the shaft with more room, \
                     before the hubs. The thing most often forgotten.",
            ..step
        },
        _ => step,
    }
}

fn closing(form: &Form) -> Vec<Step> {
    match form.name {
        CONTINUOUS => vec![DRAW_SLEEVE, RINGS],
        SPACER => vec![DRAW_AND_SLING, GASKET, steps::TORQUE],
        SINGLE => vec![DRAW_SLEEVE, GASKET, steps::TORQUE],
        _ => vec![DRAW_SLEEVES, GASKET, steps::TORQUE],
    }
}

const PACK_TEETH: Step = Step::new(
    "pack-teeth",
    Stage::Closeup,
    "Clean, then pack all teeth by hand with coupling grease",
    "Teeth of hubs and sleeves full to the tips; smear the seal lips and the barrels they slide \
     over. Coupling grease, not bearing grease.",
)
.needs(&["coupling grease", "lint-free cloth"]);

const FLOAT_PLATE: Step = Step::new(
    "float-plate",
    Stage::Closeup,
    "Fit the plate or button that limits the end float",
    "Between the hubs or shaft ends, as the sheet shows. Push the {driver} to and fro: neither \
     thrust shoulder may touch before the coupling stops it.",
)
.when(When::EndFloat)
.needs(&["float plate or button", "dial indicator"]);

const DRAW_SLEEVES: Step = Step::new(
    "draw-sleeves",
    Stage::Closeup,
    "Draw the sleeves over the hubs; match marks together",
    "The teeth must mesh without force. Each sleeve then rocks and slides freely on its hub.",
)
.needs(&["aligning pins"]);

const DRAW_SLEEVE: Step = Step::new(
    "draw-sleeves",
    Stage::Closeup,
    "Draw the sleeve over; match marks together",
    "The teeth must mesh without force. The sleeve then rocks and slides freely.",
)
.needs(&["aligning pins"]);

const DRAW_AND_SLING: Step = Step::new(
    "draw-sleeves",
    Stage::Closeup,
    "Draw the sleeves over, sling the spacer in; marks together",
    "The teeth must mesh without force; each sleeve then rocks and slides freely. The sling \
     carries the spacer until bolts of both ends are in. Spigots clean and dry.",
)
.needs(&["aligning pins", "soft sling"]);

const GASKET: Step = Step::new(
    "gasket",
    Stage::Closeup,
    "New gasket between the flanges; all bolts in by hand",
    "Faces clean, gasket dry or lightly coated as the sheet says, lubricant holes of the two \
     flanges half a turn apart. Bolts of one set from the marked side, nuts finger-tight.",
)
.needs(&["gasket, new", "bolts and nuts of one set"]);

const RINGS: Step = Step::new(
    "end-rings",
    Stage::Closeup,
    "Fit end rings and their snap rings or screws",
    "Seals not pinched, snap rings full in their grooves all round; screws to the sheet’s torque.",
)
.needs(&["snap-ring pliers", "end rings"]);

const OFF_DRAIN: Step = Step::new(
    "off-drain",
    Stage::Removal,
    "Take out the plugs; catch the grease or oil and keep some",
    "A sample in a clean jar with the date: dry soap, water or metal in it is evidence.",
)
.needs(&["tray", "clean jar"]);

const OFF_BOLTS: Step = Step::new(
    "off-bolts",
    Stage::Removal,
    "Support sleeves; take out the bolts, keep them as a set",
    "Slacken across the circle. Part the flanges with the jack screws, never with wedges on the \
     faces. In a balanced coupling note each bolt’s hole.",
)
.needs(&["jack screws", "sling or blocks", "marked tray"]);

const OFF_RINGS: Step = Step::new(
    "off-rings",
    Stage::Removal,
    "Support the sleeve; take out the end rings",
    "Snap rings fly: face shield, one hand in front.",
)
.needs(&["snap-ring pliers", "face shield"]);

const OFF_SLEEVES: Step = Step::new(
    "off-sleeves",
    Stage::Removal,
    "Slide the sleeves back clear of the hubs, and block them",
    "By hand or with soft bars, evenly. A sleeve that sticks has a ridge worn in its teeth.",
)
.needs(&["wooden blocks"]);

const OFF_TEETH: Step = Step::new(
    "off-teeth",
    Stage::Removal,
    "Look at the teeth before wiping; then clean and measure",
    "The wear pattern shows what went wrong: take a picture. Then backlash and tooth wear, \
     written down against new.",
)
.needs(&["camera", "feeler gauges", "dial indicator"]);

const NOTE: Source = Source::common_practice("gear-coupling failure notes");
const RECALLED: Source = Source::new("coupling symposium literature", "", Basis::Memory);

static FINDINGS: [Finding; 10] = [
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
