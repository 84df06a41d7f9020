//! What the work on a gear coupling has of its own; the rest stands in the common steps.

use super::forms::{CONTINUOUS, SINGLE, SPACER};
use crate::kind::Form;
use crate::step::{Stage, Step, When};
use crate::steps as common;

pub(super) fn thread_on(form: &Form) -> Step {
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

pub(super) fn closing(form: &Form) -> Vec<Step> {
    match form.name {
        CONTINUOUS => vec![DRAW_SLEEVE, RINGS],
        SPACER => vec![DRAW_AND_SLING, GASKET, common::TORQUE],
        SINGLE => vec![DRAW_SLEEVE, GASKET, common::TORQUE],
        _ => vec![DRAW_SLEEVES, GASKET, common::TORQUE],
    }
}

pub(super) const PACK_TEETH: Step = Step::new(
    "pack-teeth",
    Stage::Closeup,
    "Clean, then pack all teeth by hand with coupling grease",
    "Teeth of hubs and sleeves full to the tips; smear the seal lips and the barrels they slide \
     over. Coupling grease, not bearing grease.",
)
.needs(&["coupling grease", "lint-free cloth"]);

pub(super) const FLOAT_PLATE: Step = Step::new(
    "float-plate",
    Stage::Closeup,
    "Fit the plate or button that limits the end float",
    "Between the hubs or shaft ends, as the sheet shows. Push the {driver} to and fro: neither \
     thrust shoulder may touch before the coupling stops it.",
)
.when(When::EndFloat)
.needs(&["float plate or button", "dial indicator"]);

pub(super) const DRAW_SLEEVES: Step = Step::new(
    "draw-sleeves",
    Stage::Closeup,
    "Draw the sleeves over the hubs; match marks together",
    "The teeth must mesh without force. Each sleeve then rocks and slides freely on its hub.",
)
.needs(&["aligning pins"]);

pub(super) const DRAW_SLEEVE: Step = Step::new(
    "draw-sleeves",
    Stage::Closeup,
    "Draw the sleeve over; match marks together",
    "The teeth must mesh without force. The sleeve then rocks and slides freely.",
)
.needs(&["aligning pins"]);

pub(super) const DRAW_AND_SLING: Step = Step::new(
    "draw-sleeves",
    Stage::Closeup,
    "Draw the sleeves over, sling the spacer in; marks together",
    "The teeth must mesh without force; each sleeve then rocks and slides freely. The sling \
     carries the spacer until bolts of both ends are in. Spigots clean and dry.",
)
.needs(&["aligning pins", "soft sling"]);

pub(super) const GASKET: Step = Step::new(
    "gasket",
    Stage::Closeup,
    "New gasket between the flanges; all bolts in by hand",
    "Faces clean, gasket dry or lightly coated as the sheet says, lubricant holes of the two \
     flanges half a turn apart. Bolts of one set from the marked side, nuts finger-tight.",
)
.needs(&["gasket, new", "bolts and nuts of one set"]);

pub(super) const RINGS: Step = Step::new(
    "end-rings",
    Stage::Closeup,
    "Fit end rings and their snap rings or screws",
    "Seals not pinched, snap rings full in their grooves all round; screws to the sheet’s torque.",
)
.needs(&["snap-ring pliers", "end rings"]);

pub(super) const OFF_DRAIN: Step = Step::new(
    "off-drain",
    Stage::Removal,
    "Take out the plugs; catch the grease or oil and keep some",
    "A sample in a clean jar with the date: dry soap, water or metal in it is evidence.",
)
.needs(&["tray", "clean jar"]);

pub(super) const OFF_BOLTS: Step = Step::new(
    "off-bolts",
    Stage::Removal,
    "Support sleeves; take out the bolts, keep them as a set",
    "Slacken across the circle. Part the flanges with the jack screws, never with wedges on the \
     faces. In a balanced coupling note each bolt’s hole.",
)
.needs(&["jack screws", "sling or blocks", "marked tray"]);

pub(super) const OFF_RINGS: Step = Step::new(
    "off-rings",
    Stage::Removal,
    "Support the sleeve; take out the end rings",
    "Snap rings fly: face shield, one hand in front.",
)
.needs(&["snap-ring pliers", "face shield"]);

pub(super) const OFF_SLEEVES: Step = Step::new(
    "off-sleeves",
    Stage::Removal,
    "Slide the sleeves back clear of the hubs, and block them",
    "By hand or with soft bars, evenly. A sleeve that sticks has a ridge worn in its teeth.",
)
.needs(&["wooden blocks"]);

pub(super) const OFF_TEETH: Step = Step::new(
    "off-teeth",
    Stage::Removal,
    "Look at the teeth before wiping; then clean and measure",
    "The wear pattern shows what went wrong: take a picture. Then backlash and tooth wear, \
     written down against new.",
)
.needs(&["camera", "feeler gauges", "dial indicator"]);
