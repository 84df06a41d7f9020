//! What every kind of coupling can be asked.
//!
//! A kind is one file under `kinds/` that implements [`Kind`], and one line in the list of
//! `kinds.rs`. Nothing else knows which kinds there are.
//!
//! Figures given here are what is common for the kind, with their source; whoever uses them says
//! so. The maker's sheet ([`crate::Sheet`]) comes first wherever it has a figure.

use quantities::{Basis, Source};
use serde::Serialize;

pub use crate::cautions::{CHILLED, Caution, common_cautions};
pub use crate::character::{Character, Gives};
pub use crate::duty::{Duty, Load, Need, Reason, Speaks};
pub use crate::findings::common_findings;
pub use crate::forgives::{Forgives, Play, Shock, Twist};
use crate::service::ServiceFactor;
use crate::step::Step;
pub use crate::wear::Measure;

/// A kind of coupling.
pub trait Kind: Sync {
    /// As it is written in a job: "gear".
    fn name(&self) -> &'static str;

    /// As a heading: "Gear coupling".
    fn title(&self) -> &'static str;

    /// What it is, in one sentence.
    fn says(&self) -> &'static str;

    /// How it is built, the usual form first.
    fn forms(&self) -> &'static [Form];

    /// Its parts, sorted by letter.
    fn parts(&self, form: &Form) -> Vec<Part>;

    /// What it forgives, and what it does to the torque.
    fn forgives(&self, form: &Form) -> Forgives;

    /// What it is like to live with: what can be seen, how it twists, what its balance rests on.
    fn character(&self) -> Character;

    /// Grease or oil, if it needs any.
    fn lubrication(&self) -> Option<Lubrication>;

    /// What sets the hubs apart.
    fn gap_rule(&self, form: &Form) -> GapRule;

    /// Parts that a hot hub or a flame spoils.
    fn near_heat(&self) -> &'static [&'static str];

    /// What must never be used again once it has been off.
    fn never_again(&self, form: &Form) -> &'static [&'static str];

    /// How its bolts go in and are tightened.
    fn close_up(&self, form: &Form) -> CloseUp;

    /// What can hurt somebody or spoil the coupling, for this kind; [`common_cautions`] hold for
    /// all of them.
    fn cautions(&self) -> &'static [Caution];

    /// The order of the work, on.
    fn install_steps(&self, form: &Form) -> Vec<Step>;

    /// The order of the work, off.
    fn removal_steps(&self, form: &Form) -> Vec<Step>;

    /// What to look at in the first minutes, and again when hot.
    fn checks_after_start(&self) -> &'static [Check];

    /// What to go over again after the first day to the first week.
    fn first_recheck(&self) -> &'static str {
        "first re-check: line-up read hot, nuts against their marks, leaks, heat and noise"
    }

    /// How often it is stopped and looked over.
    fn look(&self) -> Look {
        Look { months: [12, 12], source: YEARLY }
    }

    /// What may be found when it is opened: causes, what to check, what to do before it goes back;
    /// [`common_findings`] hold for all kinds.
    fn findings(&self) -> &'static [Finding];

    /// What of its wear can be measured.
    fn wears(&self) -> &'static [Measure] {
        &[]
    }

    /// For and against this kind on such a duty.
    fn suits(&self, duty: &Duty) -> Vec<Reason>;

    /// What stops the shafts when a rotor floats along its axis.
    fn float_limit(&self, _form: &Form) -> FloatLimit {
        FloatLimit::ByItself
    }

    /// What is set stretched while cold so that it is free when warm, in words: "packs"; `None`
    /// where nothing that flexes is held at both ends.
    fn cold_stretch(&self) -> Option<&'static str> {
        None
    }

    /// Whether teeth slide in teeth as it takes misalignment, at the pitch diameter of the sheet.
    fn teeth_slide(&self) -> Sliding {
        Sliding::No
    }

    /// The least service factor that API 671 asks for in special-purpose trains, if it has one.
    fn least_in_special_trains(&self) -> Option<ServiceFactor> {
        None
    }

    /// How many circles of flange, cover or pack bolts it has, each with as many as the sheet says.
    fn bolt_circles(&self, form: &Form) -> u32 {
        match form.spacer {
            Spacer::With => 2,
            Spacer::Without => 1,
        }
    }

    /// The form of this name; the usual one when there is no name, none when it is not known.
    fn form(&self, name: Option<&str>) -> Option<&'static Form> {
        let forms = self.forms();
        name.map_or(forms.first(), |name| forms.iter().find(|form| same_name(form.name, name)))
    }
}

/// How often a coupling is stopped, locked out and looked over.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Look {
    /// Months, earliest and latest.
    pub months: [u32; 2],
    /// How it is known.
    pub source: Source,
}

const YEARLY: Source =
    Source::new("Plant Services, 2008", "Tracking the causes of coupling failure", Basis::Read);

/// What stops the shafts of a coupling when a rotor floats along its axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FloatLimit {
    /// A plate or button between the hub faces.
    Plate,
    /// Limiters that the maker fits elsewhere, such as at the ends of a spacer.
    AsMade,
    /// What joins the hubs, by itself, or nothing at all: no part is fitted for it.
    ByItself,
}

/// Whether teeth slide in teeth as a kind takes misalignment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
#[expect(missing_docs, reason = "the names say it")]
pub enum Sliding {
    No,
    Yes,
}

/// Names are the same whatever their case and spaces: "Rigid  flange".
pub(crate) fn same_name(one: &str, other: &str) -> bool {
    one.split_whitespace()
        .map(str::to_lowercase)
        .eq(other.split_whitespace().map(str::to_lowercase))
}

/// A way to build a kind.
#[derive(Debug, PartialEq, Eq, Serialize)]
pub struct Form {
    /// As it is written in a job: "spacer".
    pub name: &'static str,
    /// In one sentence.
    pub says: &'static str,
    /// Where it can flex.
    pub planes: Planes,
    /// Whether a spacer stands between the hubs.
    pub spacer: Spacer,
}

/// How many planes of flexure: offset needs two (API 671, definitions).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Planes {
    /// Rigid.
    None,
    /// One: angle and axial movement, no offset by angles alone.
    One,
    /// Two: offset too.
    Two,
}

impl Planes {
    /// In a few words.
    pub fn says(self) -> &'static str {
        match self {
            Self::None => "nowhere: rigid",
            Self::One => "at one plane: angle and end movement, no offset by angles alone",
            Self::Two => "at two planes: offset too",
        }
    }
}

/// Whether a spacer stands between the hubs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Spacer {
    /// Hubs face each other.
    Without,
    /// A spacer drops out between them.
    With,
}

/// A kind of part, lettered alike in every drawing: A shaft, B driver hub, C driven hub, D what
/// gives or the first sleeve, E second sleeve, cover or spacer, F seal, G gasket, H bolt or pin,
/// J plug or jaw, K key, L spacer where E is
/// taken, N nut, S spigot, T teeth, W washer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Part {
    /// Its letter.
    pub letter: char,
    /// Its name.
    pub name: &'static str,
    /// How many there are.
    pub each: Each,
}

impl Part {
    /// So many parts of one name.
    pub const fn new(letter: char, name: &'static str, each: Each) -> Self {
        Self { letter, name, each }
    }
}

/// How many there are of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Each {
    /// One to a coupling.
    One,
    /// One to a hub or shaft.
    PerHub,
    /// Two to a coupling.
    Two,
    /// As many as there are bolts.
    PerBolt,
    /// Two at every bolt.
    TwoPerBolt,
    /// As the maker has it.
    AsMade,
}

impl Each {
    /// How many that is, with so many bolts in one circle; `None` when it can't be told.
    ///
    /// # Example
    /// ```
    /// use couplings::kind::Each;
    /// assert_eq!(Each::TwoPerBolt.count(Some(6), 2), Some(24));
    /// assert_eq!(Each::PerBolt.count(None, 2), None);
    /// ```
    pub fn count(self, bolts: Option<u32>, circles: u32) -> Option<u32> {
        let bolts = bolts.and_then(|bolts| bolts.checked_mul(circles));
        match self {
            Self::One => Some(1),
            Self::PerHub | Self::Two => Some(2),
            Self::PerBolt => bolts,
            Self::TwoPerBolt => bolts?.checked_mul(2),
            Self::AsMade => None,
        }
    }

    /// In words, where no number can be given.
    pub fn says(self) -> &'static str {
        match self {
            Self::One => "one",
            Self::PerHub => "one to a hub",
            Self::Two => "two",
            Self::PerBolt => "one to a bolt",
            Self::TwoPerBolt => "two to a bolt",
            Self::AsMade => "as the maker has it",
        }
    }
}

/// What a coupling must be lubricated with, and how.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Lubrication {
    /// What sort of grease or oil, and why.
    pub what: &'static str,
    /// What must not go in.
    pub never: &'static str,
    /// What is packed by hand before it is closed.
    pub hand_pack: &'static str,
    /// How it is filled and how full.
    pub fill: &'static str,
    /// Share of the free space to be filled, low and high.
    pub fill_share: [f64; 2],
    /// Months between openings, shortest and longest in common use.
    pub months: [u32; 2],
    /// How the figures are known.
    pub source: Source,
}

/// What sets the hubs apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum GapRule {
    /// The gap between hub faces on the maker's sheet.
    HubFaces,
    /// Hub seats stand apart by the free length of the packs, or of packs and spacer.
    SeatsEqualPack,
    /// The distance between shaft ends (DBSE) on the maker's sheet.
    Dbse,
    /// Flange faces touch; there is no gap.
    FacesTouch,
}

impl GapRule {
    /// In one sentence.
    pub fn says(self) -> &'static str {
        match self {
            Self::HubFaces => "Hub faces stand apart by the gap on the maker’s sheet.",
            Self::SeatsEqualPack => {
                "The seats on the hubs stand apart by the free length of what goes between them \
                 where the shafts stand when running, so that no pack is pushed or pulled then; \
                 what the shafts grow is set wider when cold."
            }
            Self::Dbse => "Shaft ends stand apart by the distance (DBSE) on the maker’s sheet.",
            Self::FacesTouch => "Flange faces touch all round; feelers find no gap.",
        }
    }
}

/// How bolts go in and are tightened.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct CloseUp {
    /// Where they go.
    pub bolts: Bolting,
    /// What is turned.
    pub turn: Turn,
    /// Tools.
    pub tools: &'static str,
    /// Shares of the final torque, stage by stage.
    pub stages: &'static [f64],
    /// Further rules.
    pub rules: &'static [&'static str],
    /// How it is known.
    pub source: Source,
}

/// Where the bolts go.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Bolting {
    /// All through both flanges.
    Through,
    /// Fitted bolts, each in its own reamed hole.
    Fitted,
    /// By turns to the one hub and to the other, through a pack.
    AlternateHubs,
    /// Through the split of a cover.
    CoverSplit,
    /// Into the end of a hub or element, with or without clamping rings.
    IntoHub,
    /// There are none.
    None,
}

/// What is turned when a bolt is tightened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Turn {
    /// The nut; the bolt is held.
    Nut,
    /// Bolt or nut, as it comes.
    Either,
    /// The screw, since it has no nut.
    Screw,
}

/// Something to look at while it runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Check {
    /// What to look at.
    pub look: &'static str,
    /// What is right.
    pub right: &'static str,
    /// What it may be if it is not.
    pub wrong: &'static str,
}

impl Check {
    pub(crate) const fn new(look: &'static str, right: &'static str, wrong: &'static str) -> Self {
        Self { look, right, wrong }
    }
}

/// Something found when a coupling is opened.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// A name that stays, unique within the kind.
    pub id: &'static str,
    /// What is seen.
    pub seen: &'static str,
    /// What likely did it, likeliest first.
    pub causes: &'static [&'static str],
    /// What to check next.
    pub check: &'static [&'static str],
    /// What to do before it goes back.
    pub mend: &'static [&'static str],
    /// Whether it may go back.
    pub goes_back: GoesBack,
    /// How it is known.
    pub source: Source,
}

/// Whether a part may go back after such a finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum GoesBack {
    /// Yes, once cleaned, measured and recorded.
    Yes,
    /// Not before it is measured against its limit.
    Measure,
    /// No: renew.
    No,
}
