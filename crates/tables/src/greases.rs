//! Coupling grease and oil: grades, stiffness, how often and how full.
//!
//! Grease in a fast coupling is spun hard: what counts is how many times gravity it feels at the
//! teeth or grid, and that the soap does not part from the oil. The grade limits are from memory
//! and are to be confirmed against the standard; the coupling maker's choice outranks them.
//!
//! Not here: the level of g from speed and radius (`mechanics`), how a kind of coupling is filled
//! (`couplings`).

use quantities::{Basis, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A grade of coupling grease.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grease {
    /// Its name in the standard.
    pub grade: &'static str,
    /// Least viscosity of the base oil at 40 °C, mm²/s.
    pub base_oil_mm2_s: f64,
    /// Softest and stiffest NLGI number.
    pub nlgi: (u8, u8),
    /// Most oil that may part from the soap in the spinning test, per cent in 24 h.
    pub separation_percent_24h: Option<f64>,
    /// Greatest misalignment at a mesh, degrees.
    pub misalignment_deg: f64,
    /// Months between regreasings.
    pub interval_months: u32,
    /// What it is for.
    pub purpose: &'static str,
}

/// Where the grades come from.
pub const SOURCE: Source =
    Source::new("ANSI/AGMA 9001-B97", "grades CG-1 to CG-3, to be confirmed", Basis::Memory);

/// Up to so many times gravity a general grease serves; beyond it one for high speed is wanted.
pub const HIGH_SPEED_G: f64 = 200.0;

/// Grades of coupling grease.
pub const GREASES: [Grease; 3] = [
    Grease {
        grade: "CG-1",
        base_oil_mm2_s: 198.0,
        nlgi: (0, 3),
        separation_percent_24h: Some(60.0),
        misalignment_deg: 0.75,
        interval_months: 12,
        purpose: "normal speed, to 200 times gravity at the teeth",
    },
    Grease {
        grade: "CG-2",
        base_oil_mm2_s: 288.0,
        nlgi: (0, 1),
        separation_percent_24h: Some(8.0),
        misalignment_deg: 0.5,
        interval_months: 36,
        purpose: "high speed, over 200 times gravity at the teeth",
    },
    Grease {
        grade: "CG-3",
        base_oil_mm2_s: 30.0,
        nlgi: (0, 3),
        separation_percent_24h: None,
        misalignment_deg: 1.5,
        interval_months: 1,
        purpose: "low speed with much misalignment, regreased monthly",
    },
];

/// Kinds of coupling that are lubricated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Lubricated {
    /// Spinning carries the grease to the teeth: it must be soft enough to creep there.
    Gear,
    /// The grid's movement keeps the grease spread: it may be fairly stiff.
    Grid,
}

/// The grade for a coupling whose grease feels `g_level` times gravity; `None` for a level that is
/// no number or negative.
///
/// # Source
/// [`SOURCE`].
/// # Example
/// ```
/// use tables::greases::grease_for;
/// assert_eq!(grease_for(362.0).unwrap().grade, "CG-2");
/// ```
pub fn grease_for(g_level: f64) -> Option<&'static Grease> {
    let usable = g_level.is_finite() && g_level >= 0.0;
    usable.then_some(&GREASES[usize::from(g_level > HIGH_SPEED_G)])
}

/// The grade for a level and for the angle that a mesh runs at, in degrees: at the level of CG-1 more
/// angle than it is made for asks for CG-3. An angle beyond the grade given is beyond all of them.
///
/// # Source
/// [`SOURCE`].
/// # Example
/// ```
/// use tables::greases::grease_for_angle;
/// assert_eq!(grease_for_angle(120.0, 0.3).unwrap().grade, "CG-1");
/// assert_eq!(grease_for_angle(120.0, 1.0).unwrap().grade, "CG-3");
/// assert_eq!(grease_for_angle(362.0, 1.0).unwrap().grade, "CG-2");
/// ```
pub fn grease_for_angle(g_level: f64, angle_deg: f64) -> Option<&'static Grease> {
    let grease = grease_for(g_level).filter(|_| angle_deg.is_finite() && angle_deg >= 0.0)?;
    let slow = g_level <= HIGH_SPEED_G;
    Some(if slow && angle_deg > grease.misalignment_deg { &GREASES[2] } else { grease })
}

/// What to know of a lubricated kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Practice {
    /// Months between regreasings: least and most that are usual.
    pub interval_months: (u32, u32),
    /// What the grease must be like.
    pub wants: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// What to know of a kind.
pub fn practice(kind: Lubricated) -> Practice {
    match kind {
        Lubricated::Gear => Practice {
            interval_months: (6, 12),
            wants: "a soft grease with extreme-pressure additives that creeps to the teeth and does \
                    not part from its oil when spun",
            source: Source::new(
                "Reliable Plant, July-August 2008, p. 37; lubrication handbooks",
                "",
                Basis::Read,
            ),
        },
        Lubricated::Grid => Practice {
            interval_months: (12, 12),
            wants: "a fairly stiff grease with extreme-pressure additives: the grid's movement \
                    keeps it spread",
            source: Source::new(
                "Plant Services, 2008, causes of coupling failure; lubrication handbooks",
                "",
                Basis::Read,
            ),
        },
    }
}

/// How much of the free room inside is filled, least and most.
pub const FILL: (f64, f64) = (0.75, 0.85);
/// Where the filling comes from.
pub const FILL_SOURCE: Source = Source::new("common practice", "filling", Basis::Memory);

/// Viscosity grade of oil for an oil-filled gear coupling, ISO VG: usual, and at low speed.
pub const OIL_VG: (u32, u32) = (460, 680);

/// NLGI number by worked penetration, tenths of a millimetre: number, from, to.
pub const NLGI: [(&str, u32, u32); 9] = [
    ("000", 445, 475),
    ("00", 400, 430),
    ("0", 355, 385),
    ("1", 310, 340),
    ("2", 265, 295),
    ("3", 220, 250),
    ("4", 175, 205),
    ("5", 130, 160),
    ("6", 85, 115),
];

/// The NLGI number of a worked penetration; `None` between the numbers and beyond them.
///
/// # Source
/// NLGI classification, as reprinted in lubrication handbooks (common practice).
/// # Example
/// ```
/// assert_eq!(tables::greases::nlgi(325), Some("1"));
/// ```
pub fn nlgi(worked_penetration: u32) -> Option<&'static str> {
    let holds = |(_, from, to): &&(&str, u32, u32)| (*from..=*to).contains(&worked_penetration);
    NLGI.iter().find(holds).map(|(number, _, _)| *number)
}

/// Soaps that get on with a lithium soap; charts differ on polyurea.
pub const WITH_LITHIUM: [&str; 4] =
    ["lithium complex", "calcium complex", "silica gel", "polyurea"];
/// Soaps that do not.
pub const NOT_WITH_LITHIUM: [&str; 4] = ["aluminium complex", "barium", "sodium", "bentone"];
/// Where the two lists come from.
pub const MIXING_SOURCE: Source =
    Source::common_practice("grease compatibility charts: when in doubt, clean out");
