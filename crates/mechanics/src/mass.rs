//! What a hub weighs, from its outline.

use quantities::{
    Basis, Kind, Length, Mass, MassDensity, Physical, Source, Value, Volume, Working, both,
};

use crate::is_positive;

/// A length of hub with one outside diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slice {
    /// How long.
    pub length: Length,
    /// Its outside diameter.
    pub outside: Length,
}

/// A hub's mass and what it was found from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HubMass {
    /// Volume of metal.
    pub volume: Volume,
    /// Density.
    pub density: MassDensity,
    /// Mass.
    pub mass: Mass,
}

/// Why an outline gives no mass.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum MassError {
    /// Not a single slice.
    #[error("a hub of no slices")]
    Empty,
    /// A slice without length, or no larger than the bore.
    #[error("slice {}, {} long and {} outside, is not a ring around a bore of {}", index + 1, both(&slice.length), both(&slice.outside), both(bore))]
    Slice {
        /// Its place, from 0.
        index: usize,
        /// The slice.
        slice: Slice,
        /// The bore.
        bore: Length,
    },
    /// A density not above zero.
    #[error("density is not above zero: {}", both(.0))]
    Density(MassDensity),
}

/// Mass of a hub of slices around one bore.
///
/// ```text
/// V = Σ π/4·(D² − d²)·L      m = ρ·V
/// ```
/// # Valid
/// Keyways, holes and chamfers are not taken out: the true hub is a little lighter.
/// # Errors
/// [`MassError`] for an empty outline, a slice that is no ring, or no density.
/// # Example
/// ```
/// use mechanics::mass::{Slice, hub_mass};
/// use quantities::{Length, MassDensity, Physical};
/// let slice = Slice { length: Length::from_si(0.12), outside: Length::from_si(0.2) };
/// let hub = hub_mass(Length::from_si(0.1), &[slice], MassDensity::from_si(7850.0))?;
/// assert_eq!(format!("{:.3}", hub.mass.si()), "22.195");
/// # Ok::<(), mechanics::mass::MassError>(())
/// ```
pub fn hub_mass(
    bore: Length,
    slices: &[Slice],
    density: MassDensity,
) -> Result<HubMass, MassError> {
    if slices.is_empty() {
        return Err(MassError::Empty);
    }
    let ring = |slice: &Slice| {
        is_positive(slice.length.si())
            && slice.outside.is_finite()
            && bore.si() >= 0.0
            && slice.outside > bore
    };
    if let Some(index) = slices.iter().position(|slice| !ring(slice)) {
        return Err(MassError::Slice { index, slice: slices[index], bore });
    }
    if !is_positive(density.si()) {
        return Err(MassError::Density(density));
    }
    let ring = |slice: &Slice| {
        let area = slice.outside.si().powi(2) - bore.si().powi(2);
        std::f64::consts::FRAC_PI_4 * area * slice.length.si()
    };
    let volume = Volume::from_si(slices.iter().map(ring).sum());
    Ok(HubMass { volume, density, mass: density * volume })
}

impl HubMass {
    /// How the mass was found.
    pub fn working(&self) -> Working {
        let source = Source::new("density times volume", "", Basis::Computed);
        Working::new("Mass of the hub", "m = r·V", Value::new(Kind::Mass, self.mass), source)
            .term("r", "density", Value::new(Kind::Density, self.density))
            .term("V", "volume of its rings", Value::new(Kind::Volume, self.volume))
            .valid("keyways, holes and chamfers are not taken out")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slice(length: f64, outside: f64) -> Slice {
        Slice { length: Length::from_si(length), outside: Length::from_si(outside) }
    }

    fn mass(bore: f64, slices: &[Slice], density: f64) -> f64 {
        let density = MassDensity::from_si(density);
        hub_mass(Length::from_si(bore), slices, density).unwrap().mass.si()
    }

    /// Rings worked by hand to five digits, ρ·π/4·(D² − d²)·L.
    #[test]
    fn rings_weigh_what_a_hand_calculation_says() {
        assert!((mass(0.1, &[slice(0.12, 0.2)], 7850.0) - 22.195).abs() < 0.0005);
        assert!((mass(0.075, &[slice(0.09, 0.15)], 7850.0) - 9.3637).abs() < 0.000_05);
        assert!((mass(0.08, &[slice(0.09, 0.13)], 7100.0) - 5.2696).abs() < 0.000_05);
    }

    #[test]
    fn a_slice_inside_the_bore_is_refused() {
        let error =
            hub_mass(Length::from_si(0.1), &[slice(0.1, 0.09)], MassDensity::from_si(7850.0));
        assert!(matches!(error, Err(MassError::Slice { index: 0, .. })));
    }

    proptest::proptest! {
        #[test]
        fn a_slice_cut_in_two_weighs_the_same(cut in 0.01..0.99_f64) {
            let whole = mass(0.1, &[slice(0.12, 0.2)], 7850.0);
            let parts = mass(0.1, &[slice(0.12 * cut, 0.2), slice(0.12 * (1.0 - cut), 0.2)], 7850.0);
            proptest::prop_assert!((whole - parts).abs() < 1e-9);
        }
    }
}
