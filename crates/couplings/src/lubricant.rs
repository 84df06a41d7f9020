//! Grease: what speed does to it, and how much goes in.
//!
//! G centrifugal level · ω speed · r radius · g standard gravity · V free volume · s share filled ·
//! ρ density
//!
//! The amount of the maker's sheet comes first. Without it the free space can be measured and a
//! share of it filled; without either the amount is not known, and pumping until clean grease shows
//! at the opposite plug is all that can be said.
//!
//! Not here: the grades (`tables`), how a kind is packed ([`crate::Kind::lubrication`]).

use quantities::{
    Acceleration, Angle, AngularVelocity, Basis, Kind, Length, Mass, MassDensity, Physical, Source,
    Value, Volume, Working,
};

use tables::greases::{Grease, grease_for, grease_for_angle};

use crate::kind::Lubrication;
use crate::sheet::Lubricant;

/// Why there is no number.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum LubricantError {
    /// A quantity that is no number above zero.
    #[error("{what} is no number above zero: {si}")]
    NotPositive {
        /// Which.
        what: &'static str,
        /// In SI.
        si: f64,
    },
    /// A ring whose inside is not smaller than its outside.
    #[error("ring {index} has no room in it")]
    Ring {
        /// Its place, from 0.
        index: usize,
    },
    /// No ring at all.
    #[error("no free space was measured")]
    NoRings,
}

fn positive<Q: Physical>(what: &'static str, quantity: Q) -> Result<f64, LubricantError> {
    let si = quantity.si();
    if si.is_finite() && si > 0.0 { Ok(si) } else { Err(LubricantError::NotPositive { what, si }) }
}

pub(crate) const STANDARD_GRAVITY_M_S2: f64 = 9.806_65;

/// Standard gravity, as a term of a working.
pub(crate) fn standard_gravity() -> Value {
    Value::new(Kind::Acceleration, Acceleration::from_si(STANDARD_GRAVITY_M_S2))
}

/// How hard grease is thrown outwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Throw {
    /// Radius.
    pub radius: Length,
    /// Speed.
    pub speed: AngularVelocity,
    /// Centrifugal acceleration in multiples of standard gravity.
    pub level: f64,
}

/// How hard grease is thrown outwards at a radius.
///
/// ```text
/// G = w²·r/g
/// ```
/// # Errors
/// [`LubricantError`] for a radius or speed not above zero.
/// # Source
/// Kinematics. Greases for couplings are graded by it: about 200 parts the slower grade from the
/// faster (ANSI/AGMA 9001, from memory).
/// # Example
/// ```
/// use couplings::lubricant::throw;
/// use quantities::{AngularVelocity, Length, Physical};
/// use uom::si::angular_velocity::revolution_per_minute;
/// let throw = throw(Length::from_si(0.1), AngularVelocity::new::<revolution_per_minute>(1800.0))?;
/// assert_eq!(format!("{:.1}", throw.level), "362.3");
/// # Ok::<(), couplings::lubricant::LubricantError>(())
/// ```
pub fn throw(radius: Length, speed: AngularVelocity) -> Result<Throw, LubricantError> {
    let acceleration = positive("speed", speed)?.powi(2) * positive("radius", radius)?;
    Ok(Throw { radius, speed, level: acceleration / STANDARD_GRAVITY_M_S2 })
}

impl Throw {
    /// The speed at which the same radius reaches a level: w = √(G·g/r).
    ///
    /// # Errors
    /// [`LubricantError`] for a level or radius not above zero.
    pub fn speed_at(level: f64, radius: Length) -> Result<AngularVelocity, LubricantError> {
        if !(level.is_finite() && level > 0.0) {
            return Err(LubricantError::NotPositive { what: "level", si: level });
        }
        let square = level * STANDARD_GRAVITY_M_S2 / positive("radius", radius)?;
        Ok(AngularVelocity::from_si(square.sqrt()))
    }

    /// The grade of coupling grease for this level (ANSI/AGMA 9001 as `tables::greases` holds it).
    pub fn grade(&self) -> Option<&'static Grease> {
        grease_for(self.level)
    }

    /// The grade for this level and for the angle that a mesh runs at.
    pub fn grade_at(&self, angle: Angle) -> Option<&'static Grease> {
        grease_for_angle(self.level, angle.si().to_degrees())
    }

    /// How the level was found.
    pub fn working(&self) -> Working {
        let source =
            Source::new("centrifugal acceleration over standard gravity", "", Basis::Computed);
        Working::new("Centrifugal level", "G = w²·r/g", Value::number(self.level), source)
            .term("w", "speed, as an angle per time", Value::new(Kind::Speed, self.speed))
            .term("r", "radius", Value::new(Kind::Length, self.radius))
            .term("g", "standard gravity", standard_gravity())
    }
}

/// A ring of free space inside a coupling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Its inside diameter.
    pub inside: Length,
    /// Its outside diameter.
    pub outside: Length,
    /// Its length along the shaft.
    pub length: Length,
}

/// Volume of free rings.
///
/// ```text
/// V = Σ π/4·(D² − d²)·L
/// ```
/// # Valid
/// Teeth, bolts and grids that stand in the rings are not taken out.
/// # Errors
/// [`LubricantError`] for no ring, or one without room.
pub fn free_volume(rings: &[Ring]) -> Result<Volume, LubricantError> {
    if rings.is_empty() {
        return Err(LubricantError::NoRings);
    }
    let one = |(index, ring): (usize, &Ring)| {
        let [inside, outside] = [ring.inside, ring.outside].map(Physical::si);
        let room = outside.is_finite() && 0.0 <= inside && inside < outside;
        let long = ring.length.is_finite() && ring.length.si() > 0.0;
        let volume =
            std::f64::consts::FRAC_PI_4 * (outside.powi(2) - inside.powi(2)) * ring.length.si();
        if room && long { Ok(volume) } else { Err(LubricantError::Ring { index }) }
    };
    let volumes: Result<Vec<f64>, _> = rings.iter().enumerate().map(one).collect();
    Ok(Volume::from_si(volumes?.iter().sum()))
}

/// How much grease or oil goes in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// As the maker's sheet says.
    SheetMass(Mass),
    /// As the maker's sheet says, by volume.
    SheetVolume(Volume),
    /// Estimated from the free space.
    Estimate(Charge),
    /// Neither sheet nor free space: pump until clean grease shows at the opposite plug.
    NotKnown,
}

/// A charge estimated from the free space.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Charge {
    /// Free volume.
    pub free: Volume,
    /// Share filled.
    pub share: f64,
    /// Density of the grease.
    pub density: MassDensity,
    /// Volume to put in.
    pub volume: Volume,
    /// Its mass.
    pub mass: Mass,
}

/// Density of grease, as is usual: 900 kg/m³ (common practice).
pub fn usual_density() -> MassDensity {
    MassDensity::from_si(900.0)
}

/// A charge from the free space.
///
/// ```text
/// v = s·V      m = ρ·v
/// ```
/// # Errors
/// [`LubricantError`] for a volume, share or density not above zero, or a share above one.
pub fn charge(free: Volume, share: f64, density: MassDensity) -> Result<Charge, LubricantError> {
    if !(share > 0.0 && share <= 1.0) {
        return Err(LubricantError::NotPositive { what: "share filled, up to one", si: share });
    }
    let volume = share * positive("free volume", free)?;
    let mass = volume * positive("density", density)?;
    let (volume, mass) = (Volume::from_si(volume), Mass::from_si(mass));
    Ok(Charge { free, share, density, volume, mass })
}

impl Charge {
    /// How the mass was found.
    pub fn working(&self) -> Working {
        let source = Source::common_practice("share of the free space that is filled");
        let result = Value::new(Kind::Mass, self.mass);
        Working::new("Charge of grease", "v = s·V\nm = r·v", result, source)
            .term("s", "share filled", Value { kind: Kind::Percent, ..Value::number(self.share) })
            .term("V", "free volume", Value::new(Kind::Volume, self.free))
            .term("v", "volume to put in", Value::new(Kind::Volume, self.volume))
            .term("r", "density", Value::new(Kind::Density, self.density))
            .valid("teeth, bolts and grid standing in the space are not taken out")
    }

    /// How the volume was found.
    pub fn volume_working(&self) -> Working {
        let source = Source::common_practice("share of the free space that is filled");
        let result = Value::new(Kind::Volume, self.volume);
        Working::new("Volume of grease", "v = s·V", result, source)
            .term("s", "share filled", Value { kind: Kind::Percent, ..Value::number(self.share) })
            .term("V", "free volume", Value::new(Kind::Volume, self.free))
            .valid("teeth, bolts and grid standing in the space are not taken out")
    }
}

/// How much goes in: the sheet's amount, else the middle of the kind's share of the free space.
///
/// # Errors
/// [`LubricantError`] for rings without room.
pub fn amount(
    sheet: &Lubricant,
    need: &Lubrication,
    rings: &[Ring],
) -> Result<Amount, LubricantError> {
    if let Some(mass) = &sheet.mass {
        return Ok(Amount::SheetMass(mass.value()));
    }
    if let Some(volume) = &sheet.volume {
        return Ok(Amount::SheetVolume(volume.value()));
    }
    if rings.is_empty() {
        return Ok(Amount::NotKnown);
    }
    let [low, high] = need.fill_share;
    Ok(Amount::Estimate(charge(free_volume(rings)?, f64::midpoint(low, high), usual_density())?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::angular_velocity::revolution_per_minute;

    fn level(radius: f64, rpm: f64) -> f64 {
        let speed = AngularVelocity::new::<revolution_per_minute>(rpm);
        throw(Length::from_si(radius), speed).unwrap().level
    }

    /// G = ω²·r/g by hand to six digits; the trade's inch form 1.42·10⁻⁵·D·N² (rounded constant) at
    /// 6 in and 1750 rpm gives 260.9.
    #[test]
    fn grease_is_thrown_as_kinematics_says() {
        assert!((level(0.1, 1800.0) - 362.311).abs() <= 0.0005);
        assert!((level(0.1, 3600.0) - 1449.24).abs() <= 0.005);
        let inch_form: f64 = 1.42e-5 * 6.0 * 1750.0 * 1750.0;
        assert!((level(3.0 * 0.0254, 1750.0) / inch_form - 1.0).abs() <= 0.005 / 1.42);
        let speed = Throw::speed_at(200.0, Length::from_si(0.09)).unwrap();
        assert!((speed.get::<revolution_per_minute>() - 1409.7).abs() <= 0.05);
    }

    /// 200 times gravity parts the grades (ANSI/AGMA 9001, from memory).
    #[test]
    fn a_fast_coupling_takes_the_closer_grade() {
        let grade = |rpm| {
            let speed = AngularVelocity::new::<revolution_per_minute>(rpm);
            throw(Length::from_si(0.09), speed).unwrap().grade().unwrap().grade
        };
        assert_eq!((grade(1400.0), grade(1420.0)), ("CG-1", "CG-2"));
    }

    /// By hand: 650 cm³ free, 80 % filled, 900 kg/m³: 520 cm³, 0.468 kg.
    #[test]
    fn a_charge_is_a_share_of_the_free_space() {
        let found = charge(Volume::from_si(650e-6), 0.8, usual_density()).unwrap();
        assert!((found.volume.si() - 520e-6).abs() <= 0.5e-6);
        assert!((found.mass.si() - 0.468).abs() <= 0.0005);
        assert!(charge(Volume::from_si(650e-6), 1.2, usual_density()).is_err());
    }

    #[test]
    fn without_sheet_or_space_the_amount_is_not_known() {
        let need = crate::kind("gear").unwrap().lubrication().unwrap();
        let mut sheet = Lubricant::default();
        assert_eq!(amount(&sheet, &need, &[]), Ok(Amount::NotKnown));
        let ring = |inside, outside| Ring {
            inside: Length::from_si(inside),
            outside: Length::from_si(outside),
            length: Length::from_si(0.05),
        };
        assert!(matches!(amount(&sheet, &need, &[ring(0.1, 0.14)]), Ok(Amount::Estimate(_))));
        assert_eq!(
            amount(&sheet, &need, &[ring(0.14, 0.1)]),
            Err(LubricantError::Ring { index: 0 })
        );
        sheet.mass = Some("0.4 kg".parse().unwrap());
        assert_eq!(
            amount(&sheet, &need, &[ring(0.1, 0.14)]),
            Ok(Amount::SheetMass(Mass::from_si(0.4)))
        );
    }

    proptest::proptest! {
        /// A ring cut in two holds the same.
        #[test]
        fn a_cut_ring_holds_the_same(inside in 0.05..0.2_f64, wall in 0.01..0.1_f64, cut in 0.01..0.99_f64) {
            let ring = |length: f64| Ring {
                inside: Length::from_si(inside),
                outside: Length::from_si(inside + wall),
                length: Length::from_si(length),
            };
            let whole = free_volume(&[ring(1.0)]).unwrap().si();
            let parts = free_volume(&[ring(cut), ring(1.0 - cut)]).unwrap().si();
            proptest::prop_assert!((whole - parts).abs() < 1e-12);
        }
    }
}
