//! The coupling: its kind, its hubs, the maker's sheet.

use couplings::Sheet;
use quantities::{Length, Mass, Measured, Pressure};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{End, Named, Text, is_default};

/// The coupling.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Coupling {
    /// "gear", "grid", "disc", "rigid flange", or another kind that is known here.
    pub kind: String,
    /// The variant of the kind, such as "two packs with spacer"; empty for the usual one.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub form: String,
    /// The maker's sheet, as far as it was entered from the manual.
    #[serde(skip_serializing_if = "is_default")]
    pub sheet: Sheet,
    /// True once the coupling was balanced as an assembly.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balanced: Option<bool>,
    /// The hub on the driver's shaft.
    #[serde(skip_serializing_if = "is_default")]
    pub driver: Hub,
    /// The hub on the driven shaft.
    #[serde(skip_serializing_if = "is_default")]
    pub driven: Hub,
}

/// One hub, and the shaft in it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Hub {
    /// Outside diameter of the hub's body.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside: Text<Length>,
    /// Length of the hub on the shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Text<Length>,
    /// Outside diameter of its flange or gear ring, if it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub flange_outside: Text<Length>,
    /// Length of that flange or gear ring along the shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub flange_length: Text<Length>,
    /// The hub in slices, where it has more outside diameters than a body and a flange: numbered
    /// "1", "2", … from the face that looks at the other machine. They outrank the sizes above.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub slices: Named<HubSlice>,
    /// Bore of a hollow shaft; nothing for a solid one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_bore: Text<Length>,
    /// Material of the hub: "steel", "cast iron", …
    #[serde(skip_serializing_if = "String::is_empty")]
    pub material: String,
    /// Material of the shaft.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub shaft_material: String,
    /// Yield strength of the hub, where its own is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub yield_strength: Text<Pressure>,
    /// Roughness Rz of the bore.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore_roughness: Text<Length>,
    /// Roughness Rz of the shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_roughness: Text<Length>,
    /// Mass of the hub, where it was weighed or the sheet gives it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass: Text<Mass>,
}

/// A length of hub with one outside diameter.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct HubSlice {
    /// Its length along the shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Text<Length>,
    /// Its outside diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside: Text<Length>,
}

impl Coupling {
    /// The hub at one end.
    pub fn hub(&self, end: End) -> &Hub {
        match end {
            End::Driver => &self.driver,
            End::Driven => &self.driven,
        }
    }

    /// Outside diameter of a hub's body: its own, else the maker's sheet's; that of its widest slice
    /// where only they are given.
    pub(crate) fn hub_outside(&self, end: End) -> Option<Length> {
        let sizes = &self.sheet.sizes;
        let driven = sizes.driven_hub_outside.as_ref().filter(|_| end == End::Driven);
        let hub = self.hub(end);
        let given = hub.outside.as_ref().or(driven).or(sizes.hub_outside.as_ref());
        given.map(Measured::value).or_else(|| {
            let slices = hub.slices.values().filter_map(|slice| slice.outside.as_ref());
            slices.map(Measured::value).reduce(|most, one| if one > most { one } else { most })
        })
    }

    /// Length of a hub on its shaft: its own, that of its slices, else the maker's sheet's.
    pub(crate) fn hub_length(&self, end: End) -> Option<Length> {
        let sizes = &self.sheet.sizes;
        let driven = sizes.driven_hub_length.as_ref().filter(|_| end == End::Driven);
        let hub = self.hub(end);
        let slices = hub.slices.values().map(|slice| Some(slice.length.as_ref()?.value()));
        let slices = slices.collect::<Option<Vec<_>>>().filter(|slices| !slices.is_empty());
        let own = hub.length.as_ref().map(Measured::value).or(slices.map(|s| s.into_iter().sum()));
        own.or(driven.or(sizes.hub_length.as_ref()).map(Measured::value))
    }
}
