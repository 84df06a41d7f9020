//! Keys: what the torque does to them, and how they sit in their keyways.
//!
//! The force acts at the shaft's surface. A key with round ends bears only where its sides are
//! straight: each round end takes half a width from its length.
//!
//! T torque · d shaft · F force at its surface · w, h width and height of the key · l straight
//! length · n keys that carry · τ shear, σ bearing stress
//!
//! The room around a key (top clearance, side fit) is in [`room`].
//!
//! Not here: standard sizes (`tables::iso_r_773`, `tables::ansi_b17_1`).

pub mod balance;
pub mod room;
pub mod set_screw;

use quantities::{
    Basis, Force, Kind, Length, Physical, Pressure, Source, Torque, Value, Working, both,
};

use crate::is_positive;

/// How the ends of a key are shaped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ends {
    /// Square at both ends (form B of ISO/R 773): the whole length bears.
    #[default]
    Square,
    /// Round at one end (form C): half a width bears nothing.
    OneRound,
    /// Round at both ends (form A): one width bears nothing.
    BothRound,
}

/// How deep a side of the key bears.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Depth {
    /// Half the height in each part.
    #[default]
    HalfHeight,
    /// The shaft's keyway is so deep; the rest of the height bears in the hub, and the shallower
    /// of the two decides.
    ShaftKeyway(Length),
}

/// A key.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Key {
    /// Width.
    pub width: Length,
    /// Height.
    pub height: Length,
    /// Length from end to end, as far as it lies in the hub.
    pub length: Length,
    /// Its ends.
    pub ends: Ends,
    /// How deep it bears.
    pub depth: Depth,
}

/// How many keys carry the torque.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Keys {
    /// One.
    #[default]
    One,
    /// Two at 180°, which never share evenly: they count as one and a half (DIN 6892; from memory).
    Two,
}

impl Keys {
    /// How many they count as.
    pub fn carrying(self) -> f64 {
        match self {
            Self::One => 1.0,
            Self::Two => 1.5,
        }
    }
}

/// Shear yield as a part of the yield strength.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ShearYield {
    /// Greatest shear stress (Tresca): 0.5, the safe side.
    #[default]
    GreatestShear,
    /// Distortion energy (von Mises): 0.577.
    DistortionEnergy,
}

impl ShearYield {
    /// The ratio.
    pub fn ratio(self) -> f64 {
        match self {
            Self::GreatestShear => 0.5,
            Self::DistortionEnergy => 0.577,
        }
    }
}

/// What key and keyways stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Shear stress at which the key yields.
    pub shear: Pressure,
    /// Bearing stress at which the weakest of key, shaft and hub yields.
    pub bearing: Pressure,
}

impl Strength {
    /// From the yield strength of the key and of the weakest of key, shaft and hub.
    pub fn from_yield(key: Pressure, weakest: Pressure, rule: ShearYield) -> Self {
        Self { shear: key * rule.ratio(), bearing: weakest }
    }
}

/// What the key is asked to carry when the fit also holds by friction.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Sharing {
    /// The whole torque: the rule for clearance and light fits, and the safe side for all.
    #[default]
    KeyAlone,
    /// What is left after the least torque that the fit holds by friction.
    AfterFriction(Torque),
}

impl Sharing {
    /// The key's share of a torque; never below zero.
    ///
    /// # Valid
    /// [`Sharing::AfterFriction`] when the least friction and interference are used for the
    /// torque held; the two do not build up at the same twist, so a key that takes its share does it
    /// only after the fit has begun to slip.
    pub fn share(self, torque: Torque) -> Torque {
        match self {
            Self::KeyAlone => torque,
            Self::AfterFriction(held) => {
                let left = torque.si() - held.si().max(0.0);
                Torque::from_si(if left < 0.0 { 0.0 } else { left })
            }
        }
    }

    /// How the key's share was found.
    pub fn working(self, torque: Torque) -> Working {
        let shown = |torque| Value::new(Kind::Torque, torque);
        let result = shown(self.share(torque));
        let source = Source::common_practice("the key alone, or what least friction leaves");
        let (formula, held) = match self {
            Self::KeyAlone => ("K = T", None),
            Self::AfterFriction(held) => ("K = T − H, not below zero", Some(held)),
        };
        let working = Working::new("Torque on the key", formula, result, source).term(
            "T",
            "torque",
            shown(torque),
        );
        match held {
            Some(held) => working.term("H", "least torque held by friction", shown(held)),
            None => working,
        }
    }
}

/// Why a key gives no number.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum KeyError {
    /// A key that is not above zero somewhere, or bears nowhere.
    #[error("key bears nowhere: {} wide, {} high, {} long", both(&.0.width), both(&.0.height), both(&.0.length))]
    Key(Key),
    /// A diameter or another length not above zero.
    #[error("length is not above zero: {}", both(.0))]
    Length(Length),
    /// A torque below zero, or none.
    #[error("torque is not sound: {}", both(.0))]
    Torque(Torque),
    /// A strength not above zero.
    #[error("strength is not above zero: {} in shear, {} in bearing", both(&.0.shear), both(&.0.bearing))]
    Strength(Strength),
    /// A safety or a count not above zero.
    #[error("number is not above zero: {0}")]
    Number(f64),
}

impl Key {
    /// The straight length that bears.
    pub fn straight(&self) -> Length {
        match self.ends {
            Ends::Square => self.length,
            Ends::OneRound => self.length - self.width / 2.0,
            Ends::BothRound => self.length - self.width,
        }
    }

    /// How deep the side bears where it bears least.
    pub fn bearing_depth(&self) -> Length {
        match self.depth {
            Depth::HalfHeight => self.height / 2.0,
            Depth::ShaftKeyway(depth) => {
                let hub = self.height - depth;
                if depth < hub { depth } else { hub }
            }
        }
    }

    fn check(&self) -> Result<(), KeyError> {
        let sizes = [self.width, self.height, self.straight(), self.bearing_depth()];
        if sizes.iter().all(|size| is_positive(size.si())) {
            Ok(())
        } else {
            Err(KeyError::Key(*self))
        }
    }
}

/// What a torque does to a key.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loaded {
    /// The key.
    pub key: Key,
    /// How many carry.
    pub keys: Keys,
    /// Torque that the keys carry.
    pub torque: Torque,
    /// Shaft diameter.
    pub shaft: Length,
    /// Force at the shaft's surface, on one key.
    pub force: Force,
    /// Straight length that bears.
    pub straight: Length,
    /// Depth that bears.
    pub depth: Length,
    /// Shear stress in the key.
    pub shear: Pressure,
    /// Bearing stress at its side.
    pub bearing: Pressure,
}

/// Shear and bearing stress of a key.
///
/// ```text
/// F = 2·T/(d·n)      τ = F/(w·l)      σ = F/(t·l)
/// ```
/// with the straight length l and the bearing depth t.
/// # Valid
/// Load even along the length: keys longer than about one and a half shaft diameters do not bear
/// evenly ([`LONGEST_OVER_SHAFT`]). Chamfers are left out of account.
/// # Errors
/// [`KeyError`] for a key that bears nowhere, a shaft without diameter, a torque below zero.
/// # Source
/// Shigley, *Mechanical Engineering Design*, 9th ed., "Keys and pins".
/// # Example
/// ```
/// use mechanics::keys::{Depth, Ends, Key, Keys, loaded};
/// use quantities::{Length, Physical, Torque};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let key = Key {
///     width: mm(15.0), height: mm(15.0), length: mm(90.0), ends: Ends::Square, depth: Depth::HalfHeight,
/// };
/// let load = loaded(key, Keys::One, Torque::from_si(1200.0), mm(60.0))?;
/// assert_eq!(format!("{:.1}", load.shear.get::<megapascal>()), "29.6");
/// assert_eq!(format!("{:.1}", load.bearing.get::<megapascal>()), "59.3");
/// # Ok::<(), mechanics::keys::KeyError>(())
/// ```
pub fn loaded(key: Key, keys: Keys, torque: Torque, shaft: Length) -> Result<Loaded, KeyError> {
    key.check()?;
    if !is_positive(shaft.si()) {
        return Err(KeyError::Length(shaft));
    }
    if !(torque.is_finite() && torque.si() >= 0.0) {
        return Err(KeyError::Torque(torque));
    }
    let (straight, depth) = (key.straight(), key.bearing_depth());
    let force = Force::from_si(2.0 * torque.si() / (shaft.si() * keys.carrying()));
    let over = |width: Length| Pressure::from_si(force.si() / (width.si() * straight.si()));
    let (shear, bearing) = (over(key.width), over(depth));
    Ok(Loaded { key, keys, torque, shaft, force, straight, depth, shear, bearing })
}

/// A key longer than this many shaft diameters does not bear evenly (Shigley, 9th ed., p. 391).
pub const LONGEST_OVER_SHAFT: f64 = 1.5;

/// Safety of a key; infinite when it carries nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Safety {
    /// Against shear of the key.
    pub shear: f64,
    /// Against crushing of the weakest side.
    pub bearing: f64,
}

impl Safety {
    /// The lower of the two.
    pub fn least(&self) -> f64 {
        self.shear.min(self.bearing)
    }
}

impl Loaded {
    /// Safety against yielding.
    ///
    /// # Errors
    /// [`KeyError::Strength`] for a strength not above zero.
    pub fn safety(&self, strength: Strength) -> Result<Safety, KeyError> {
        check_strength(strength)?;
        Ok(Safety {
            shear: strength.shear.si() / self.shear.si(),
            bearing: strength.bearing.si() / self.bearing.si(),
        })
    }

    fn term_by_term(&self, working: Working) -> Working {
        working
            .term("T", "torque that the key carries", Value::new(Kind::Torque, self.torque))
            .term("d", "shaft", Value::new(Kind::Length, self.shaft))
            .term("n", "keys, as they share", Value::number(self.keys.carrying()))
            .term("F", "force on one key", Value::new(Kind::Force, self.force))
            .term("l", "straight length that bears", Value::new(Kind::Length, self.straight))
    }

    /// How the shear stress was found.
    pub fn shear_working(&self) -> Working {
        let result = Value::new(Kind::Stress, self.shear);
        let working =
            Working::new("Shear in the key", "F = 2·T/(d·n)\ns = F/(w·l)", result, SHIGLEY);
        self.term_by_term(working)
            .term("w", "width of the key", Value::new(Kind::Length, self.key.width))
            .valid("load even along the key")
    }

    /// How the bearing stress was found.
    pub fn bearing_working(&self) -> Working {
        let result = Value::new(Kind::Stress, self.bearing);
        let formula = "F = 2·T/(d·n)\ns = F/(t·l)";
        let working =
            Working::new("Bearing stress at the side of the key", formula, result, SHIGLEY);
        self.term_by_term(working)
            .term("t", "depth that bears least", Value::new(Kind::Length, self.depth))
            .valid("load even along the key; chamfers left out")
    }
}

const SHIGLEY: Source = Source::new(
    "Shigley’s Mechanical Engineering Design, 9th ed.",
    "keys and pins, p. 391",
    Basis::Memory,
);

fn check_strength(strength: Strength) -> Result<(), KeyError> {
    if is_positive(strength.shear.si()) && is_positive(strength.bearing.si()) {
        Ok(())
    } else {
        Err(KeyError::Strength(strength))
    }
}

/// Straight lengths that a key needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NeededLength {
    /// For shear.
    pub shear: Length,
    /// For bearing.
    pub bearing: Length,
}

impl NeededLength {
    /// The longer of the two.
    pub fn longest(&self) -> Length {
        if self.shear > self.bearing { self.shear } else { self.bearing }
    }

    /// How the whole length, with its round ends, was found for a key under this load.
    pub fn working(
        &self,
        safety: f64,
        load: &Loaded,
        strength: Strength,
        round: Length,
    ) -> Working {
        let length = |length| Value::new(Kind::Length, length);
        let by_bearing = self.bearing > self.shear;
        let (formula, symbol, name, width, stress) = if by_bearing {
            (
                "F = 2·T/(d·n)\nL = S·F/(t·σ) + r",
                "t",
                "depth that bears least",
                load.depth,
                strength.bearing,
            )
        } else {
            (
                "F = 2·T/(d·n)\nL = S·F/(w·σ) + r",
                "w",
                "width of the key",
                load.key.width,
                strength.shear,
            )
        };
        let result = length(self.longest() + round);
        Working::new("Key length that would do", formula, result, SHIGLEY)
            .term("T", "torque that the key carries", Value::new(Kind::Torque, load.torque))
            .term("d", "shaft", length(load.shaft))
            .term("n", "keys, as they share", Value::number(load.keys.carrying()))
            .term("F", "force on one key", Value::new(Kind::Force, load.force))
            .term("S", "safety", Value::number(safety))
            .term(symbol, name, length(width))
            .term("σ", "stress at which it yields", Value::new(Kind::Stress, stress))
            .term("r", "taken by round ends", length(round))
            .valid("load even along the key")
    }
}

/// Straight length that a key of this section needs for a safety.
///
/// ```text
/// l = S·F/(w·τ)      l = S·F/(t·σ)
/// ```
/// The length of `key` itself plays no part. Valid, Source: as [`loaded`].
/// # Errors
/// [`KeyError`] as [`loaded`], and for a strength or a safety not above zero.
pub fn needed_length(
    key: Key,
    keys: Keys,
    torque: Torque,
    shaft: Length,
    strength: Strength,
    safety: f64,
) -> Result<NeededLength, KeyError> {
    check_strength(strength)?;
    if !is_positive(safety) {
        return Err(KeyError::Number(safety));
    }
    let metre = Key { length: Length::from_si(1.0), ends: Ends::Square, ..key };
    let load = loaded(metre, keys, torque, shaft)?;
    let length =
        |stress: Pressure, stands: Pressure| Length::from_si(safety * stress.si() / stands.si());
    Ok(NeededLength {
        shear: length(load.shear, strength.shear),
        bearing: length(load.bearing, strength.bearing),
    })
}

#[cfg(test)]
mod tests;
