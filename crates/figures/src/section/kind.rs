//! The kinds of coupling that have a drawing, with what only that kind has.

use super::Dim;

/// What stands between two shaft hubs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Middle {
    /// Nothing: they face each other.
    Bare,
    /// A spacer that drops out.
    Spacer,
}

/// How the sleeves of a gear coupling are built.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sleeves {
    /// One on each hub, flange to flange.
    Flanged,
    /// One, bolted to a driven hub that is rigid.
    OneEngagement,
    /// One on each hub, with a spacer between their flanges.
    Spacer,
    /// One over both hubs, closed by a ring at each end.
    Continuous,
}

/// How the cover of a grid coupling is split.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Split {
    /// Along the shaft: two half shells, bolted at their sides.
    Along,
    /// Across the shaft: two bells, bolted at their flanges.
    Across,
}

/// Whether there is a cover.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cover {
    /// With grease in it.
    On,
    /// The working parts lie bare.
    Bare,
}

/// How flexing discs or diaphragms are arranged.
#[derive(Clone, Debug, PartialEq)]
pub enum Packs {
    /// One between the hubs.
    One,
    /// One at each end of a spacer; the gap is then the distance between the hub faces.
    Two {
        /// Between the flanges that hold one.
        flange_gap: Option<Dim>,
    },
    /// One at each end of a split spacer, round hubs that are turned towards each other; the gap is
    /// then the distance between the seats on their flanges.
    Close {
        /// Between the flanges that hold one.
        flange_gap: Option<Dim>,
    },
}

/// How bolts stand in the holes of rigid flanges.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Through {
    /// Fitted: they carry the torque.
    Fitted,
    /// Free: they press the faces together.
    Free,
}

/// The elastomer of a jaw coupling.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Elastomer {
    /// A star between the jaws.
    Star,
    /// An open band round the jaws, held by a ring.
    Wrapped,
    /// A star at each end of a spacer.
    Spacer,
}

/// The rubber of a coupling that carries its torque in shear.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rubber {
    /// Clamped to both flanges.
    Clamped,
    /// A sleeve whose teeth sit in both flanges.
    Toothed,
    /// Clamped to one flange, and to a spacer at the other side.
    Spacer,
}

/// The kind of coupling, with what only that kind has.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    /// Crowned teeth in sleeves.
    Gear {
        /// How those are built.
        sleeves: Sleeves,
        /// Diameter of their barrel.
        sleeve_outside: Option<Dim>,
        /// Bolts of a flange.
        bolts: Option<u32>,
    },
    /// A spring grid in slotted hubs under a cover.
    Grid {
        /// How that is split.
        cover: Split,
        /// Whether the slotted hubs are a spacer's.
        middle: Middle,
        /// Diameter over the slotted flanges.
        slotted_outside: Option<Dim>,
        /// Bolts of the cover.
        bolts: Option<u32>,
    },
    /// Flexing disc packs.
    Disc {
        /// One pack or two.
        packs: Packs,
        /// Bolts of a pack.
        bolts: Option<u32>,
    },
    /// Flanges bolted face to face.
    Rigid {
        /// How the bolts stand in their holes.
        through: Through,
        /// Whether a spacer stands between the flanges.
        middle: Middle,
        /// Bolts of a flange.
        bolts: Option<u32>,
    },
    /// Jaws with elastomer between them.
    Jaw {
        /// Of what shape.
        element: Elastomer,
        /// Jaws of one hub.
        jaws: Option<u32>,
    },
    /// Pins in elastomer bushes.
    Pin {
        /// Whether the pins stand in a spacer that is bolted to the driver's hub.
        middle: Middle,
        /// Pins.
        pins: Option<u32>,
    },
    /// A double roller chain round two sprockets.
    Chain {
        /// Whether a cover holds grease round it.
        cover: Cover,
    },
    /// Rubber in shear between two flanges.
    Shear {
        /// How it is held.
        rubber: Rubber,
        /// Clamping screws of one side.
        screws: Option<u32>,
    },
    /// Diaphragms, bolted by their rims.
    Diaphragm {
        /// One diaphragm or two.
        packs: Packs,
        /// Bolts of a rim.
        bolts: Option<u32>,
    },
    /// A kind this crate has no drawing of: hubs and shafts are true, what joins them is left out.
    Other,
}

impl Kind {
    /// Its name in the trade.
    pub fn title(&self) -> &'static str {
        match self {
            Self::Gear { sleeves: Sleeves::Flanged, .. } => "Gear coupling",
            Self::Gear { sleeves: Sleeves::OneEngagement, .. } => "Gear coupling, one engagement",
            Self::Gear { sleeves: Sleeves::Spacer, .. } => "Gear coupling with spacer",
            Self::Gear { sleeves: Sleeves::Continuous, .. } => "Gear coupling, continuous sleeve",
            Self::Grid { middle: Middle::Spacer, .. } => "Grid coupling with spacer",
            Self::Grid { cover: Split::Along, .. } => "Grid coupling, cover split along the shaft",
            Self::Grid { cover: Split::Across, .. } => {
                "Grid coupling, cover split across the shaft"
            }
            Self::Disc { packs: Packs::One, .. } => "Disc coupling, one pack",
            Self::Disc { packs: Packs::Two { .. }, .. } => "Disc coupling, two packs and spacer",
            Self::Disc { packs: Packs::Close { .. }, .. } => "Disc coupling, close-coupled",
            Self::Rigid { middle: Middle::Bare, .. } => "Rigid flange coupling",
            Self::Rigid { middle: Middle::Spacer, .. } => "Rigid flange coupling with spacer",
            Self::Jaw { element: Elastomer::Star, .. } => "Jaw coupling",
            Self::Jaw { element: Elastomer::Wrapped, .. } => "Jaw coupling, wrapped element",
            Self::Jaw { element: Elastomer::Spacer, .. } => "Jaw coupling with spacer",
            Self::Pin { middle: Middle::Bare, .. } => "Pin and bush coupling",
            Self::Pin { middle: Middle::Spacer, .. } => "Pin and bush coupling with spacer",
            Self::Chain { .. } => "Chain coupling",
            Self::Shear { rubber: Rubber::Clamped, .. } => "Coupling with elastomer in shear",
            Self::Shear { rubber: Rubber::Toothed, .. } => "Coupling with toothed rubber sleeve",
            Self::Shear { rubber: Rubber::Spacer, .. } => {
                "Coupling with elastomer in shear and spacer"
            }
            Self::Diaphragm { packs: Packs::One, .. } => "Diaphragm coupling",
            Self::Diaphragm { .. } => "Diaphragm coupling, two diaphragms and spacer",
            Self::Other => "Coupling",
        }
    }

    /// Whether the hub faces meet.
    pub(super) fn faces_meet(&self) -> bool {
        matches!(self, Self::Rigid { middle: Middle::Bare, .. })
    }
}
