//! Gear couplings: crowned teeth on the hubs, straight teeth in the sleeves.
//!
//! This file answers what every kind is asked; its forms and parts, its own steps and its findings
//! stand beside it.

mod findings;
mod forms;
mod steps;

use quantities::{Basis, Source};

use self::findings::FINDINGS;
use self::forms::{CONTINUOUS, FORMS};
use self::steps::{
    FLOAT_PLATE, OFF_BOLTS, OFF_DRAIN, OFF_RINGS, OFF_SLEEVES, OFF_TEETH, PACK_TEETH, closing,
    thread_on,
};
use crate::duty::reasons;
use crate::kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Finding, FloatLimit, Forgives, Form,
    GapRule, Gives, Kind, Lubrication, Measure, Part, Play, Reason, Shock, Sliding, Spacer, Turn,
    Twist,
};
use crate::service::{GEAR_IN_SPECIAL_TRAINS, ServiceFactor};
use crate::step::{Stage, Step};
use crate::steps as common;

pub struct Gear;

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
        forms::parts(form)
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
            common::LOCKOUT,
            common::MACHINE_CHECK,
            common::MAGNETIC_CENTRE,
            common::COUPLING_CHECK,
            common::MEASURE,
            common::FIT,
            thread_on(form),
            common::SHIELD,
            common::HEAT_DRIVER,
            common::SLIP_DRIVER,
            common::HEAT_DRIVEN,
            common::SLIP_DRIVEN,
            common::COOL,
            common::GAP,
            common::LINEUP,
            PACK_TEETH,
            FLOAT_PLATE,
        ];
        order.extend(closing(form));
        order.extend([common::FILL, common::GUARD, common::FIRST_RUN, common::HOT_CHECK]);
        order
    }

    fn removal_steps(&self, form: &Form) -> Vec<Step> {
        let opening = if form.name == CONTINUOUS { OFF_RINGS } else { OFF_BOLTS };
        let mut order =
            vec![common::OFF_LOCKOUT, common::OFF_GUARD, common::OFF_RECORD, OFF_DRAIN, opening];
        if form.spacer == Spacer::With {
            order.push(common::OFF_SPACER);
        }
        order.extend([
            OFF_SLEEVES,
            OFF_TEETH,
            common::OFF_CLEAR,
            common::OFF_FASTENINGS,
            common::OFF_RIG,
            common::OFF_DRIVER,
            common::OFF_SLIDE_DRIVER,
            common::OFF_DRIVEN,
            common::OFF_SLIDE_DRIVEN,
            common::OFF_SHAFTS,
            common::OFF_KEEP,
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
