//! The room around a key: over its top and at its sides, from what was measured.
//!
//! S bottom of the shaft's keyway to the far side of the shaft · T bottom of the hub's keyway to
//! the far side of the bore · h height of the key

use quantities::{Basis, Kind, Length, Physical, Source, Value, Working, root_sum_square};

use super::KeyError;
use crate::Estimate;

/// What is measured to know the room over a key.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TopSizes {
    /// Bottom of the hub's keyway to the far side of the bore.
    pub hub_across: Estimate<Length>,
    /// Bore.
    pub bore: Estimate<Length>,
    /// Bottom of the shaft's keyway to the far side of the shaft.
    pub shaft_across: Estimate<Length>,
    /// Shaft.
    pub shaft: Estimate<Length>,
    /// Height of the key.
    pub key_height: Estimate<Length>,
}

/// The room over a key.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TopClearance {
    /// What was measured.
    pub sizes: TopSizes,
    /// Room over the key; negative when the key would lift the hub.
    pub clearance: Estimate<Length>,
}

/// Room over the top of a key, with hub and shaft on one centre.
///
/// ```text
/// c = (T − B/2) − (S − d/2) − h
/// ```
/// # Valid
/// Bore and shaft concentric. In an interference fit B and d are one and c = T − S − h.
/// # Errors
/// [`KeyError::Length`] for a size that is no sound number above zero.
/// # Source
/// Geometry; ANSI B17.1 keeps 0.005 in by the same rule, T − S − H = C; from memory.
pub fn top_clearance(sizes: TopSizes) -> Result<TopClearance, KeyError> {
    let TopSizes { hub_across, bore, shaft_across, shaft, key_height } = sizes;
    for size in [hub_across, bore, shaft_across, shaft, key_height] {
        sound(size)?;
    }
    let half = |size: Estimate<Length>| size.plus_minus.si() / 2.0;
    let spread = root_sum_square([
        hub_across.plus_minus.si(),
        half(bore),
        shaft_across.plus_minus.si(),
        half(shaft),
        key_height.plus_minus.si(),
    ]);
    let up = hub_across.value - bore.value / 2.0;
    let seat = shaft_across.value - shaft.value / 2.0;
    let clearance = Estimate::new(up - seat - key_height.value, Length::from_si(spread));
    Ok(TopClearance { sizes, clearance })
}

fn sound(size: Estimate<Length>) -> Result<(), KeyError> {
    if size.is_sound() && size.value.si() > 0.0 {
        Ok(())
    } else {
        Err(KeyError::Length(size.value))
    }
}

impl TopClearance {
    /// How the clearance was found.
    pub fn working(&self) -> Working {
        let result = self.clearance.shown(Kind::Gap);
        let formula = "c = (T − B/2) − (S − d/2) − h";
        let source = Source::new("geometry", "as ANSI B17.1, T − S − H", Basis::Computed);
        Working::new("Room over the key", formula, result, source)
            .term("T", "hub, keyway to far side", self.sizes.hub_across.shown(Kind::Size))
            .term("B", "bore", self.sizes.bore.shown(Kind::Size))
            .term("S", "shaft, keyway to far side", self.sizes.shaft_across.shown(Kind::Size))
            .term("d", "shaft", self.sizes.shaft.shown(Kind::Size))
            .term("h", "height of the key", self.sizes.key_height.shown(Kind::Size))
            .valid("bore and shaft on one centre")
    }
}

/// The room at the sides of a key in one keyway.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SideFit {
    /// Width of the keyway.
    pub keyway: Estimate<Length>,
    /// Width of the key.
    pub key: Estimate<Length>,
    /// Keyway less key: positive is play, negative a tight key.
    pub play: Estimate<Length>,
}

/// Play of a key in a keyway.
///
/// # Errors
/// [`KeyError::Length`] for a width that is no sound number above zero.
pub fn side_fit(keyway: Estimate<Length>, key: Estimate<Length>) -> Result<SideFit, KeyError> {
    sound(keyway)?;
    sound(key)?;
    Ok(SideFit { keyway, key, play: keyway.less(&key) })
}

impl SideFit {
    /// How the play was found; `part` names the keyway: "shaft", "hub".
    pub fn working(&self, part: &str) -> Working {
        let source = Source::new("keyway less key", "", Basis::Computed);
        let result = self.play.shown(Kind::Allowance);
        Working::new(format!("Play of the key in the {part}"), "p = k − w", result, source)
            .term("k", "width of the keyway", self.keyway.shown(Kind::Size))
            .term("w", "width of the key", self.key.shown(Kind::Size))
            .valid("positive is play, negative a tight key")
    }
}

/// The room that a key has at its sides when the two keyways lean against each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leaning {
    /// Play in the hub's keyway.
    pub hub: Estimate<Length>,
    /// Play in the shaft's keyway, as far as there is any.
    pub shaft: Estimate<Length>,
    /// How far one keyway leans against the other over the length of the key.
    pub lean: Estimate<Length>,
    /// Room left; below zero the key binds.
    pub room: Estimate<Length>,
}

/// Room at the sides of a key whose keyways lean: each twist is how far a keyway's middle departs
/// from the axis over the key's length, with its sign.
///
/// ```text
/// l = |a − b|      c = h + s − l
/// ```
/// # Valid
/// A straight key; play in the shaft counts as far as there is any, a tight key follows the shaft.
/// # Errors
/// [`KeyError::Length`] for a twist that is no sound number.
/// # Source
/// Geometry.
pub fn leaning(
    hub: SideFit,
    shaft: SideFit,
    hub_twist: Estimate<Length>,
    shaft_twist: Estimate<Length>,
) -> Result<Leaning, KeyError> {
    if let Some(bad) = [hub_twist, shaft_twist].into_iter().find(|twist| !twist.is_sound()) {
        return Err(KeyError::Length(bad.value));
    }
    let none = Length::default();
    let tight = shaft.play.value < none;
    let shaft = if tight { Estimate::exact(none) } else { shaft.play };
    let apart = hub_twist.less(&shaft_twist);
    let lean = Estimate::new(apart.value.abs(), apart.plus_minus);
    let parts = [hub.play.plus_minus, shaft.plus_minus, lean.plus_minus];
    let plus_minus = Length::from_si(root_sum_square(parts.map(Physical::si)));
    let room = Estimate::new(hub.play.value + shaft.value - lean.value, plus_minus);
    Ok(Leaning { hub: hub.play, shaft, lean, room })
}

impl Leaning {
    /// How the room was found.
    pub fn working(&self) -> Working {
        let source = Source::new("geometry of a straight key in two keyways", "", Basis::Computed);
        let result = self.room.shown(Kind::Allowance);
        Working::new("Room at the sides of the key", "c = h + s − l", result, source)
            .term("h", "play in the hub", self.hub.shown(Kind::Allowance))
            .term("s", "play in the shaft, if any", self.shaft.shown(Kind::Allowance))
            .term("l", "lean of one keyway against the other", self.lean.shown(Kind::Allowance))
            .valid("below zero the key binds and pushes the hub askew")
    }
}

/// Depth that a chord of the key's width takes from a shaft's roundness: Y of ANSI B17.1.
///
/// ```text
/// Y = (d − √(d² − w²))/2      S = d − Y − h/2      T = d − Y + h/2 + C
/// ```
/// with C = 0.005 in for S and T of parallel keys.
/// # Errors
/// [`KeyError::Length`] unless 0 < w < d.
/// # Source
/// ANSI B17.1, depth control values; from memory.
pub fn chord_height(shaft: Length, key_width: Length) -> Result<Length, KeyError> {
    let (d, w) = (shaft.si(), key_width.si());
    if d.is_finite() && 0.0 < w && w < d {
        Ok(Length::from_si((d - (d * d - w * w).sqrt()) / 2.0))
    } else {
        Err(KeyError::Length(key_width))
    }
}

/// The two sizes across a shaft and a bore that a keyway should leave, by ANSI B17.1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AcrossKeyway {
    /// S: bottom of the shaft's keyway to the far side of the shaft.
    pub shaft: Length,
    /// T: bottom of the hub's keyway to the far side of the bore.
    pub hub: Length,
}

/// Sizes across the keyways of an inch shaft and bore: formulas as [`chord_height`].
///
/// # Errors
/// [`KeyError::Length`] unless 0 < w < d and the height is above zero.
pub fn across_keyway(
    shaft: Length,
    key_width: Length,
    key_height: Length,
) -> Result<AcrossKeyway, KeyError> {
    if !(key_height.is_finite() && key_height.si() > 0.0) {
        return Err(KeyError::Length(key_height));
    }
    let flat = shaft - chord_height(shaft, key_width)?;
    let clearance = Length::from_si(0.005 * 0.0254);
    let half = key_height / 2.0;
    Ok(AcrossKeyway { shaft: flat - half, hub: flat + half + clearance })
}

/// A size shown, for those who print it beside a measured one.
impl AcrossKeyway {
    /// How T was found.
    pub fn hub_working(&self, shaft: Length, key_width: Length, key_height: Length) -> Working {
        let source = Source::new("ANSI B17.1", "depth control", Basis::Memory);
        let size = |length| Value::new(Kind::Size, length);
        let formula = "Y = (d − √(d² − w²))/2\nT = d − Y + h/2 + C";
        let flat = self.hub - key_height / 2.0 - Length::from_si(0.005 * 0.0254);
        Working::new("Hub, keyway to far side", formula, size(self.hub), source)
            .term("d", "shaft", size(shaft))
            .term("w", "width of the key", size(key_width))
            .term("h", "height of the key", size(key_height))
            .term("Y", "height of the chord", size(shaft - flat))
            .term("C", "room over the key", size(Length::from_si(0.005 * 0.0254)))
    }
}
