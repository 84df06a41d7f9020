//! A hub of slices: what it holds, what it bears, at rest and running.
//!
//! Every slice is a ring in plane stress of its own (Lamé), each with its own outside diameter: a
//! flange or a gear ring presses harder than the barrel beside it. Slices do not bear on each
//! other. Finite elements of whole hubs (axisymmetric, frictionless, d 60 to 100 mm, D/d 1.5 to 3,
//! with and without flanges) hold up to 1.1 % more than the slices say on a shaft as long as the
//! hub, and 0.7 to 2.7 % more where the shaft runs on 1.5·d beyond both ends: the slices are a
//! little low, which is the safe side for torque. At the very end of the hub the pressure has no
//! bound in theory, and so no peak at the edge is ever given.
//!
//! Only the part of the joint that bears is counted ([`PressFit::bearing`]): a keyway takes its own
//! width, w/(π·d), and a taper bears where it showed blue.
//!
//! On a taper every slice has the mean diameter that it stands on; the error of taking the mean is
//! (Δd/d)²/12 of its torque, below a thousandth.
//!
//! Running, the hub grows more than the shaft and the joint loses interference:
//!
//! ```text
//! hub bore      ρ·ω²·d/(16·E)·((3 + ν)·D² + (1 − ν)·d²)
//! shaft         ρ·ω²·d/(16·E)·((3 + ν)·b² + (1 − ν)·d²)
//! warmth        d·(αh·th − αs·ts)
//! ```
//! ω speed · t temperature over 20 °C; letters otherwise as in [`super`].
//!
//! Source: Timoshenko and Goodier, *Theory of Elasticity*, "Rotating disks"; from memory.

use quantities::{
    AngularVelocity, Length, MassDensity, Physical, TemperatureCoefficient, TemperatureInterval,
};
use tables::materials::{Elastic, Material};

use super::{Joint, JointError, Sizes};
use crate::taper::Taper;
use crate::{Slice, is_positive};

pub use grip::{Grip, Hold};
pub use state::{SliceState, State};

mod grip;
mod state;

/// A metal, as far as a running fit knows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Metal {
    /// How it gives.
    pub elastic: Elastic,
    /// Density.
    pub density: MassDensity,
    /// Mean coefficient of expansion.
    pub expansion: TemperatureCoefficient,
}

impl From<&Material> for Metal {
    fn from(material: &Material) -> Self {
        let Material { elastic, density, expansion, .. } = *material;
        Self { elastic, density, expansion }
    }
}

/// How fast it turns and how warm it is; by default cold and at rest.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Running {
    /// Speed.
    pub speed: AngularVelocity,
    /// Hub over 20 °C.
    pub hub_rise: TemperatureInterval,
    /// Shaft over 20 °C.
    pub shaft_rise: TemperatureInterval,
}

/// A hub of slices on a shaft. Only [`PressFit::new`] and [`PressFit::tapered`] make one.
#[derive(Clone, Debug, PartialEq)]
pub struct PressFit {
    joints: Vec<(Slice, Joint)>,
    diameter: Length,
    taper: Option<Taper>,
    hub: Metal,
    shaft: Metal,
    bearing: f64,
}

impl PressFit {
    /// A hub of slices on a straight shaft.
    ///
    /// # Errors
    /// [`JointError`] for no slices or no length, for diameters out of order, and for metals that
    /// are no metals.
    pub fn new(
        shaft_bore: Length,
        diameter: Length,
        slices: &[Slice],
        hub: Metal,
        shaft: Metal,
    ) -> Result<Self, JointError> {
        let diameters = vec![diameter; slices.len()];
        Self::on_diameters(shaft_bore, &diameters, slices, hub, shaft)
    }

    /// A hub of slices on a tapered shaft end; `small` is the diameter at the first slice's face, and
    /// the taper grows from there.
    ///
    /// # Valid
    /// Bore and shaft of one taper, so that the interference is alike all along.
    /// # Errors
    /// As [`PressFit::new`].
    /// # Example
    /// ```
    /// use mechanics::{Slice, taper::Taper};
    /// use mechanics::interference::hub::{Metal, PressFit};
    /// use uom::si::{f64::Length, length::millimeter};
    /// let mm = Length::new::<millimeter>;
    /// let steel = Metal::from(tables::materials::material("steel").unwrap());
    /// let hub = [Slice { length: mm(96.0), outside: mm(150.0) }];
    /// let fit = PressFit::tapered(mm(0.0), mm(94.0), Taper::ONE_IN_TWELVE, &hub, steel, steel)?;
    /// assert!((fit.diameter() - mm(98.0)).abs() < mm(1e-9));
    /// # Ok::<(), mechanics::interference::JointError>(())
    /// ```
    pub fn tapered(
        shaft_bore: Length,
        small: Length,
        taper: Taper,
        slices: &[Slice],
        hub: Metal,
        shaft: Metal,
    ) -> Result<Self, JointError> {
        let mut far = Length::default();
        let middle = |slice: &Slice| {
            let middle = small + (far + slice.length / 2.0) * taper.on_diameter();
            far += slice.length;
            middle
        };
        let diameters: Vec<Length> = slices.iter().map(middle).collect();
        let fit = Self::on_diameters(shaft_bore, &diameters, slices, hub, shaft)?;
        Ok(Self { taper: Some(taper), ..fit })
    }

    fn on_diameters(
        shaft_bore: Length,
        diameters: &[Length],
        slices: &[Slice],
        hub: Metal,
        shaft: Metal,
    ) -> Result<Self, JointError> {
        if slices.is_empty() || slices.iter().any(|slice| !is_positive(slice.length.si())) {
            return Err(JointError::Length);
        }
        for metal in [hub, shaft] {
            if !(is_positive(metal.density.si()) && metal.expansion.si().is_finite()) {
                return Err(JointError::Metal(metal));
            }
        }
        let joint = |(slice, &joint): (&Slice, &Length)| {
            let sizes = Sizes { shaft_bore, joint, hub_outside: slice.outside };
            Ok((*slice, Joint::new(sizes, hub.elastic, shaft.elastic)?))
        };
        let joints = slices.iter().zip(diameters).map(joint).collect::<Result<Vec<_>, _>>()?;
        let length: Length = joints.iter().map(|(slice, _)| slice.length).sum();
        let weighted = joints.iter().map(|(slice, joint)| joint.sizes.joint * slice.length);
        let diameter = weighted.sum::<uom::si::f64::Area>() / length;
        Ok(Self { joints, diameter, taper: None, hub, shaft, bearing: 1.0 })
    }

    /// The same with only a part of the joint bearing: a keyway leaves 1 − w/(π·d), a taper what
    /// showed blue.
    ///
    /// # Valid
    /// The part that bears is spread evenly, and presses as the whole would.
    /// # Errors
    /// [`JointError::Number`] for a part not above zero or above one.
    pub fn bearing(self, part: f64) -> Result<Self, JointError> {
        if part.is_finite() && 0.0 < part && part <= 1.0 {
            Ok(Self { bearing: part, ..self })
        } else {
            Err(JointError::Number(part))
        }
    }

    /// Joint diameter; on a taper its mean.
    pub fn diameter(&self) -> Length {
        self.diameter
    }

    /// Length of the joint.
    pub fn length(&self) -> Length {
        self.joints.iter().map(|(slice, _)| slice.length).sum()
    }
}
