//! What can be drawn at all.

use super::{Key, Section, SectionError};

/// Whether every size is a length, and diameters grow from the inside out.
pub(super) fn check(section: &Section) -> Result<(), SectionError> {
    let length = |what, mm: f64| {
        let good = mm.is_finite() && mm > 0.0 && mm < 1e5;
        if good { Ok(()) } else { Err(SectionError::Size { what, mm }) }
    };
    for half in section.halves() {
        length("a shaft's diameter", half.shaft.mm)?;
        length("a hub's length", half.hub_length.mm)?;
        if let Some(hub) = &half.hub_outside {
            length("a hub's outside", hub.mm)?;
            order(("shaft", half.shaft.mm), ("hub outside", hub.mm))?;
        }
        if let Some(bore) = half.shaft_bore_mm {
            length("a shaft's bore", bore)?;
            order(("shaft bore", bore), ("shaft", half.shaft.mm))?;
        }
        if let Some(Key { height_mm, depth_mm, length_mm }) = half.key {
            length("a key's height", height_mm)?;
            length("a key seat's depth", depth_mm)?;
            length("a key's length", length_mm)?;
            order(("key seat", depth_mm), ("key height", height_mm))?;
            order(("key seat", depth_mm), ("half the shaft", half.shaft.mm / 2.0))?;
        }
    }
    let gap = section.gap.mm;
    if !(gap.is_finite() && (0.0..1e5).contains(&gap)) {
        return Err(SectionError::Size { what: "the gap", mm: gap });
    }
    check_outside(section)
}

fn check_outside(section: &Section) -> Result<(), SectionError> {
    let Some(outside) = &section.outside else { return Ok(()) };
    if !(outside.mm.is_finite() && outside.mm > 0.0) {
        return Err(SectionError::Size { what: "the largest diameter", mm: outside.mm });
    }
    for half in section.halves() {
        order(("shaft", half.shaft.mm), ("largest diameter", outside.mm))?;
    }
    Ok(())
}

/// Diameters grow from the inside out.
pub(super) fn order(
    (inner, inner_mm): (&'static str, f64),
    (outer, outer_mm): (&'static str, f64),
) -> Result<(), SectionError> {
    if inner_mm < outer_mm {
        Ok(())
    } else {
        Err(SectionError::Order { inner, inner_mm, outer, outer_mm })
    }
}
