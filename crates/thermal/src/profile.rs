//! The shape of a hub and of its shaft.
//!
//! z runs along the shaft from the face of the hub that looks towards the machine (0) to the face
//! at the shaft's end. Keyways, tapers, recesses in the bore and bolt holes are not modelled.

use quantities::{Length, Physical};

use crate::ThermalError;
use crate::check::{not_negative, size};
use crate::kernel::section::Section;
use crate::metal::Metal;

/// A piece of a hub with one outside diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slice {
    /// Along the shaft.
    pub length: Length,
    /// Outside diameter.
    pub outside: Length,
}

/// A hub with a straight bore.
#[derive(Clone, Debug, PartialEq)]
pub struct Hub {
    /// Diameter of the bore at 20 °C.
    pub bore: Length,
    /// Its slices, from the face towards the machine to the face at the shaft's end.
    pub slices: Vec<Slice>,
    /// What it is made of.
    pub metal: Metal,
}

/// The shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct Shaft {
    /// Its own bore; zero when solid. A hollow shaft is taken to lose no heat inside.
    pub hollow: Length,
    /// Shaft between the hub and what lies behind it, on the side of the machine; its cut end
    /// loses heat to the air as its surface does.
    pub behind: Length,
    /// Shaft beyond the hub on the side of its end; zero when flush.
    pub ahead: Length,
    /// What it is made of.
    pub metal: Metal,
}

impl Hub {
    /// A hub of one outside diameter.
    pub fn plain(bore: Length, outside: Length, length: Length, metal: Metal) -> Self {
        Self { bore, slices: vec![Slice { length, outside }], metal }
    }

    /// Length of the bore.
    pub fn length(&self) -> Length {
        self.slices.iter().map(|slice| slice.length).fold(Length::from_si(0.0), |a, b| a + b)
    }
}

impl Shaft {
    /// A solid shaft, flush at its end, that goes on behind the hub for two diameters. Farther
    /// metal is reached too late to matter while a hub goes on; for a hub that is heated off for
    /// long, enter what is there.
    pub fn solid(diameter: Length, metal: Metal) -> Self {
        let zero = Length::from_si(0.0);
        Self { hollow: zero, behind: 2.0 * diameter, ahead: zero, metal }
    }
}

/// A slice or a wall thinner than this share of the bore is not meshed.
const THINNEST: f64 = 0.01;
/// More slices than this are not meshed.
const MOST: usize = 24;
/// Nothing that is so many times the bore is a hub.
const LARGEST: f64 = 20.0;

/// The section of both, when they fit together.
pub(crate) fn section(
    hub: &Hub,
    shaft: &Shaft,
    marks_m: Vec<f64>,
    coarseness: f64,
) -> Result<Section, ThermalError> {
    size(hub.bore)?;
    not_negative("shaft behind", shaft.behind.si())?;
    not_negative("shaft ahead", shaft.ahead.si())?;
    not_negative("shaft bore", shaft.hollow.si())?;
    nest(shaft.hollow, hub.bore)?;
    let mut slices_m: Vec<(f64, f64, f64)> = Vec::new();
    let mut start = 0.0;
    for slice in &hub.slices {
        size(slice.length)?;
        nest(hub.bore, slice.outside)?;
        if slice.length.si() < THINNEST * hub.bore.si() {
            return Err(ThermalError::Size(slice.length));
        }
        let end = start + slice.length.si();
        if end.max(slice.outside.si()) > LARGEST * hub.bore.si() || slices_m.len() >= MOST {
            return Err(ThermalError::Proportions { bore: hub.bore, size: slice.outside });
        }
        slices_m.push((start, end, 0.5 * slice.outside.si()));
        start = end;
    }
    if slices_m.is_empty() {
        return Err(ThermalError::NoSlices);
    }
    Ok(Section {
        bore_r_m: 0.5 * hub.bore.si(),
        slices_m,
        hollow_r_m: 0.5 * shaft.hollow.si(),
        beyond_m: [shaft.behind.si(), shaft.ahead.si()],
        marks_m,
        coarseness,
    })
}

/// The smaller within the larger, with a wall between them.
fn nest(inside: Length, outside: Length) -> Result<(), ThermalError> {
    let wall = outside.si() - inside.si();
    if outside.si().is_finite() && wall >= THINNEST * outside.si() {
        Ok(())
    } else {
        Err(ThermalError::Order { inside, outside })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::length::millimeter;

    fn mm(length: f64) -> Length {
        Length::new::<millimeter>(length)
    }

    fn steel() -> Metal {
        Metal::from(tables::materials::material("steel").unwrap())
    }

    #[test]
    fn what_does_not_nest_is_refused() {
        let shaft = Shaft::solid(mm(80.0), steel());
        let hub = Hub::plain(mm(80.0), mm(130.0), mm(90.0), steel());
        assert!(section(&hub, &shaft, vec![], 1.0).is_ok());
        let small = Hub::plain(mm(80.0), mm(80.1), mm(90.0), steel());
        assert!(matches!(section(&small, &shaft, vec![], 1.0), Err(ThermalError::Order { .. })));
        let none = Hub { slices: vec![], ..hub.clone() };
        assert_eq!(section(&none, &shaft, vec![], 1.0), Err(ThermalError::NoSlices));
        let odd = Hub::plain(mm(80.0), mm(f64::NAN), mm(90.0), steel());
        assert!(section(&odd, &shaft, vec![], 1.0).is_err());
        let hollow = Shaft { hollow: mm(79.9), ..shaft };
        assert!(section(&hub, &hollow, vec![], 1.0).is_err());
    }
}
