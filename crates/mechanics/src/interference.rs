//! Interference fits: how hard a hub and a shaft press on each other.
//!
//! Two elastic rings in plane stress share one diameter (Lamé). Sizes are at 20 °C (ISO 1).
//! Diametral interference is positive when the shaft is the larger.
//!
//! δ diametral interference · d joint · D hub outside · b shaft bore, 0 when solid ·
//! E, ν Young's modulus and Poisson's ratio · p contact pressure; suffix h hub, s shaft
//!
//! One ring is a [`Joint`]; a hub with a flange or a gear ring is a [`hub::PressFit`] of slices.
//!
//! Not here: tolerances (`tables::iso_286`), heating ([`crate::heat`]), verdicts (`job`).

pub mod flattening;
pub mod hub;
pub mod release;
pub mod stress;

use quantities::{Basis, Kind, Length, Physical, Pressure, Source, Value, Working, both};
use tables::materials::Elastic;

use stress::Stress;

/// The three diameters; a solid shaft has a bore of zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sizes {
    /// Bore of the shaft; zero when it is solid.
    pub shaft_bore: Length,
    /// Where hub and shaft meet.
    pub joint: Length,
    /// Outside of the hub.
    pub hub_outside: Length,
}

/// A ring on a shaft. Only [`Joint::new`] makes one, so 0 ≤ b < d < D always holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    sizes: Sizes,
    hub: Elastic,
    shaft: Elastic,
}

/// Why a joint gives no number.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum JointError {
    /// Diameters that make no ring on a shaft.
    #[error("diameters out of order: shaft’s bore {}, joint {}, outside of the hub {}", both(&.0.shaft_bore), both(&.0.joint), both(&.0.hub_outside))]
    Order(Sizes),
    /// A metal without stiffness, or with a Poisson's ratio outside 0 to 0.5.
    #[error("not elastic: modulus {}, Poisson’s ratio {}", both(&.0.young), .0.poisson)]
    Elastic(Elastic),
    /// A density or an expansion that is no sound number.
    #[error("not a sound metal: density {}, expansion {}", both(&.0.density), both(&.0.expansion))]
    Metal(hub::Metal),
    /// A hub without slices, or a slice without length.
    #[error("hub has no length")]
    Length,
    /// The shaft is not larger than the bore.
    #[error("no interference to press with: {}", both(.0))]
    Loose(Length),
    /// A speed or a temperature that is no sound number.
    #[error("running state is not sound: speed {}, hub {} and shaft {} over 20 °C", both(&.0.speed), both(&.0.hub_rise), both(&.0.shaft_rise))]
    Running(hub::Running),
    /// A friction, a safety or a stress that is not above zero, or ends out of order.
    #[error("not above zero or out of order: {0}")]
    Number(f64),
}

impl Joint {
    /// A ring on a shaft.
    ///
    /// # Errors
    /// [`JointError::Order`] unless 0 ≤ b < d < D, [`JointError::Elastic`] for a metal without
    /// stiffness; what is no number fails these too.
    pub fn new(sizes: Sizes, hub: Elastic, shaft: Elastic) -> Result<Self, JointError> {
        let Sizes { shaft_bore, joint, hub_outside } = sizes;
        let zero = Length::default();
        if !(zero <= shaft_bore
            && shaft_bore < joint
            && joint < hub_outside
            && hub_outside.is_finite())
        {
            return Err(JointError::Order(sizes));
        }
        for metal in [hub, shaft] {
            let young = metal.young.si();
            if !(young.is_finite() && young > 0.0 && (0.0..0.5).contains(&metal.poisson)) {
                return Err(JointError::Elastic(metal));
            }
        }
        Ok(Self { sizes, hub, shaft })
    }

    /// The three diameters.
    pub fn sizes(&self) -> Sizes {
        self.sizes
    }

    /// (D² + d²)/(D² − d²) of the hub.
    fn hub_shape(&self) -> f64 {
        shape(self.sizes.joint, self.sizes.hub_outside)
    }

    /// (d² + b²)/(d² − b²) of the shaft; 1 when it is solid.
    fn shaft_shape(&self) -> f64 {
        shape(self.sizes.shaft_bore, self.sizes.joint)
    }
}

fn shape(inside: Length, outside: Length) -> f64 {
    let (inside, outside) = (inside.si().powi(2), outside.si().powi(2));
    (outside + inside) / (outside - inside)
}

/// A joint under pressure, and what the pressure was found from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contact {
    /// The joint.
    pub joint: Joint,
    /// Interference that presses.
    pub interference: Length,
    /// (D² + d²)/(D² − d²) + νh: how the hub gives.
    pub hub_give: f64,
    /// (d² + b²)/(d² − b²) − νs: how the shaft gives.
    pub shaft_give: f64,
    /// Contact pressure.
    pub pressure: Pressure,
}

/// Pressure between hub and shaft, cold and at rest.
///
/// ```text
/// p = δ / ( d·(Ch/Eh + Cs/Es) )
/// Ch = (D² + d²)/(D² − d²) + νh      Cs = (d² + b²)/(d² − b²) − νs
/// ```
/// # Valid
/// Both parts elastic (check their stress before use); no speed; away from the hub's ends, where
/// theory has no bound for the pressure and none is given. `interference` is what is left after the
/// surfaces have flattened ([`flattening`]).
/// # Errors
/// [`JointError::Loose`] without interference: a pressure of zero would look like an answer.
/// # Source
/// Shigley, *Mechanical Engineering Design*, 9th ed., Eq. 7-39.
/// # Example
/// ```
/// use mechanics::interference::{Joint, Sizes, contact_pressure};
/// use uom::si::{f64::Length, length::millimeter, pressure::megapascal};
/// let (mm, steel) = (Length::new::<millimeter>, tables::materials::steel()); // 207 GPa, 0.292
/// let sizes = Sizes { shaft_bore: mm(0.0), joint: mm(50.0), hub_outside: mm(100.0) };
/// let contact = contact_pressure(&Joint::new(sizes, steel, steel)?, mm(0.050))?;
/// assert_eq!(format!("{:.1}", contact.pressure.get::<megapascal>()), "77.6");
/// # Ok::<(), mechanics::interference::JointError>(())
/// ```
pub fn contact_pressure(joint: &Joint, interference: Length) -> Result<Contact, JointError> {
    if !(interference > Length::default() && interference.is_finite()) {
        return Err(JointError::Loose(interference));
    }
    let hub_give = joint.hub_shape() + joint.hub.poisson;
    let shaft_give = joint.shaft_shape() - joint.shaft.poisson;
    let give = hub_give / joint.hub.young.si() + shaft_give / joint.shaft.young.si();
    let pressure = Pressure::from_si(interference.si() / (joint.sizes.joint.si() * give));
    Ok(Contact { joint: *joint, interference, hub_give, shaft_give, pressure })
}

impl Contact {
    /// Stress in the hub at its bore, where it is highest.
    pub fn hub_bore(&self) -> Stress {
        Stress::plane(self.pressure * self.joint.hub_shape(), -self.pressure)
    }

    /// Stress in the shaft at its surface.
    pub fn shaft_surface(&self) -> Stress {
        Stress::plane(-self.pressure * self.joint.shaft_shape(), -self.pressure)
    }

    /// Stress in a hollow shaft at its bore, where it is highest; that of a solid one is alike
    /// everywhere.
    pub fn shaft_inside(&self) -> Stress {
        let Sizes { shaft_bore, .. } = self.joint.sizes;
        if shaft_bore == Length::default() {
            return self.shaft_surface();
        }
        // −2·p·d²/(d² − b²) is −p·(shape + 1).
        Stress::plane(-self.pressure * (self.joint.shaft_shape() + 1.0), Pressure::default())
    }

    /// Growth of the hub's bore diameter under the pressure.
    pub fn hub_growth(&self) -> Length {
        let strain = self.pressure.si() * self.hub_give / self.joint.hub.young.si();
        self.joint.sizes.joint * strain
    }

    /// How much smaller the shaft's diameter becomes under the pressure.
    pub fn shaft_shrink(&self) -> Length {
        let strain = self.pressure.si() * self.shaft_give / self.joint.shaft.young.si();
        self.joint.sizes.joint * strain
    }

    /// How the pressure was found.
    pub fn working(&self) -> Working {
        let length = |length| Value::new(Kind::Length, length);
        let stress = |stress| Value::new(Kind::Stress, stress);
        let Joint { sizes, hub, shaft } = self.joint;
        Working::new("Contact pressure", LAME_LINES, stress(self.pressure), LAME)
            .term("i", "interference that presses", Value::new(Kind::Allowance, self.interference))
            .term("d", "joint", length(sizes.joint))
            .term("D", "outside of the hub", length(sizes.hub_outside))
            .term("b", "bore of the shaft", length(sizes.shaft_bore))
            .term("E", "Young’s modulus of the hub", stress(hub.young))
            .term("v", "Poisson’s ratio of the hub", Value::number(hub.poisson))
            .term("F", "Young’s modulus of the shaft", stress(shaft.young))
            .term("w", "Poisson’s ratio of the shaft", Value::number(shaft.poisson))
            .term("H", "how the hub gives", Value::number(self.hub_give))
            .term("S", "how the shaft gives", Value::number(self.shaft_give))
            .valid("both parts elastic; away from the ends of the hub; cold and at rest")
    }
}

const LAME_LINES: &str =
    "H = (D² + d²)/(D² − d²) + v\nS = (d² + b²)/(d² − b²) − w\np = i/(d·(H/E + S/F))";

pub(crate) const LAME: Source =
    Source::new("Shigley’s Mechanical Engineering Design, 9th ed.", "Eq. 7-39", Basis::Read);

#[cfg(test)]
mod tests;
