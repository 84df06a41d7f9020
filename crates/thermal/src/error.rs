//! Why heat gives no number.

use quantities::{Length, Pressure, Ratio, ThermodynamicTemperature, Time, both};

/// Why heat gives no number.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ThermalError {
    /// A size that is not above zero, or no number.
    #[error("size is not above zero: {}", both(.0))]
    Size(Length),
    /// A hub without slices.
    #[error("the hub has no slices")]
    NoSlices,
    /// Sizes that do not nest: shaft bore < joint < outside.
    #[error("{} does not fit within {}", both(inside), both(outside))]
    Order {
        /// What should be the smaller.
        inside: Length,
        /// What should be the larger.
        outside: Length,
    },
    /// A hub more than twenty times as large as its bore, or of more than 24 slices.
    #[error("no hub that is modelled: {} outside on a bore of {}", both(size), both(bore))]
    Proportions {
        /// Its bore.
        bore: Length,
        /// Outside of the slice at which it went too far.
        size: Length,
    },
    /// A figure of a metal, a film or the joint that is not sound.
    #[error("{what} is not sound: {value}")]
    Figure {
        /// Which, in SI.
        what: &'static str,
        /// What it was.
        value: f64,
    },
    /// Nothing presses: no interference to open or to close.
    #[error("no interference: {}", both(.0))]
    Loose(Length),
    /// A temperature that is none, or beyond what the expansion is known for.
    #[error("temperature is not sound, or beyond the expansion’s range: {}", both(.0))]
    Temperature(ThermodynamicTemperature),
    /// The hub would be hotter than it may be.
    #[error("hub at {}, limit {}", both(hub), both(limit))]
    TooHot {
        /// Its temperature.
        hub: ThermodynamicTemperature,
        /// What it may have.
        limit: ThermodynamicTemperature,
    },
    /// The hub is too cold to go on: the clearance where it is least.
    #[error("the hub does not clear the shaft as it arrives: {} on the diameter", both(.0))]
    NoClearance(Length),
    /// The hub never grabs: it is still open after a day.
    #[error("still open after a day: {} on the diameter", both(.0))]
    StaysOpen(Length),
    /// The bore is stressed beyond yield, and the model is elastic.
    #[error("bore stressed to {}, yield {}", both(stress), both(strength))]
    Yields {
        /// Von Mises stress along the bore, in the mean.
        stress: Pressure,
        /// Least yield strength.
        strength: Pressure,
    },
    /// A place that is not in the metal.
    #[error("no metal at {place}")]
    NoMetal {
        /// Its name.
        place: String,
    },
    /// A heated surface that the hub does not have.
    #[error("nothing to heat: {zone}")]
    NoSurface {
        /// Its name.
        zone: String,
    },
    /// A time that is not above zero, or no number, or a stop before its start.
    #[error("time is not sound: {}", both(.0))]
    Time(Time),
    /// Nothing to search among.
    #[error("nothing to search among")]
    NothingToSearch,
    /// Equations that could not be set up or solved.
    #[error("the equations could not be solved at {}", both(.0))]
    Unsolved(Time),
    /// A coarser mesh and longer steps give another answer.
    #[error("answer not settled: {} between two meshes", both(.0))]
    Unsettled(Ratio),
}
