//! Bolts: torque and preload, and what a bolted flange carries.
//!
//! T torque · K nut factor · F preload · d bolt diameter · A stress area · n bolts ·
//! R radius of the bolt circle · μ friction between the flanges
//!
//! A torque on the maker's sheet outranks any of this. The order of tightening is in
//! [`crate::order`]; proof loads and nut factors are in `tables`.

use quantities::{
    Basis, Force, Kind, Length, Physical, Pressure, Source, Torque, Value, Working, both,
};

use uom::si::f64::Area;

use crate::{Range, is_positive};

/// Why bolts give no number.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum BoltError {
    /// A length that is not above zero.
    #[error("length is not above zero: {}", both(.0))]
    Length(Length),
    /// A force that is not above zero.
    #[error("force is not above zero: {}", both(.0))]
    Force(Force),
    /// A torque that is not above zero.
    #[error("torque is not above zero: {}", both(.0))]
    Torque(Torque),
    /// A stress that is not above zero.
    #[error("stress is not above zero: {}", both(.0))]
    Stress(Pressure),
    /// A factor or a friction that is not above zero, or ends out of order.
    #[error("factor is not above zero: {0}")]
    Factor(f64),
    /// No bolts.
    #[error("no bolts")]
    None,
}

fn factor(number: f64) -> Result<f64, BoltError> {
    if is_positive(number) { Ok(number) } else { Err(BoltError::Factor(number)) }
}

fn length(length: Length) -> Result<Length, BoltError> {
    if is_positive(length.si()) { Ok(length) } else { Err(BoltError::Length(length)) }
}

fn force(force: Force) -> Result<Force, BoltError> {
    if is_positive(force.si()) { Ok(force) } else { Err(BoltError::Force(force)) }
}

fn torque(torque: Torque) -> Result<Torque, BoltError> {
    if is_positive(torque.si()) { Ok(torque) } else { Err(BoltError::Torque(torque)) }
}

fn some(bolts: u32) -> Result<f64, BoltError> {
    if bolts == 0 { Err(BoltError::None) } else { Ok(f64::from(bolts)) }
}

/// Torque for a preload.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tightening {
    /// Nut factor.
    pub nut_factor: f64,
    /// Preload.
    pub preload: Force,
    /// Bolt diameter.
    pub diameter: Length,
    /// Torque that gives it.
    pub torque: Torque,
}

/// Preload as a part of the proof load: usually 0.75 for bolts that come off again, 0.9 for those
/// that stay.
///
/// # Errors
/// [`BoltError`] for a load or a fraction not above zero.
/// # Source
/// Shigley, *Mechanical Engineering Design*, "Bolt preload"; from memory.
pub fn preload_from_proof(proof_load: Force, fraction: f64) -> Result<Force, BoltError> {
    Ok(force(proof_load)? * factor(fraction)?)
}

/// How a preload was found from a proof load.
///
/// # Errors
/// As [`preload_from_proof`].
pub fn preload_working(proof_load: Force, fraction: f64) -> Result<Working, BoltError> {
    let force = |force| Value::new(Kind::Force, force);
    let result = force(preload_from_proof(proof_load, fraction)?);
    let source =
        Source::new("Shigley’s Mechanical Engineering Design", "bolt preload", Basis::Memory);
    Ok(Working::new("Preload", "F = k·P", result, source)
        .term("k", "part of the proof load", Value::number(fraction))
        .term("P", "proof load", force(proof_load)))
}

/// Torque for a preload.
///
/// ```text
/// T = K·F·d
/// ```
/// # Valid
/// An estimate: the preload scatters 25 to 35 % from torque alone ([`preload_range`]).
/// # Errors
/// [`BoltError`] for a factor, preload or diameter not above zero.
/// # Source
/// Common practice; Shigley, *Mechanical Engineering Design*, "Relating bolt torque to bolt
/// tension"; from memory.
/// # Example
/// ```
/// use mechanics::bolts::{preload_from_proof, tightening_torque};
/// use quantities::{Force, Length, Physical};
/// let preload = preload_from_proof(Force::from_si(91_000.0), 0.75)?; // M16, class 8.8
/// let tightening = tightening_torque(0.20, preload, Length::from_si(0.016))?;
/// assert_eq!(format!("{:.1}", tightening.torque.si()), "218.4");
/// # Ok::<(), mechanics::bolts::BoltError>(())
/// ```
pub fn tightening_torque(
    nut_factor: f64,
    preload: Force,
    diameter: Length,
) -> Result<Tightening, BoltError> {
    let si = factor(nut_factor)? * force(preload)?.si() * length(diameter)?.si();
    Ok(Tightening { nut_factor, preload, diameter, torque: Torque::from_si(si) })
}

impl Tightening {
    /// How the torque was found.
    pub fn working(&self) -> Working {
        let result = Value::new(Kind::Torque, self.torque);
        Working::new("Tightening torque", "T = K·F·d", result, NUT_FACTOR)
            .term("K", "nut factor", Value::number(self.nut_factor))
            .term("F", "preload", Value::new(Kind::Force, self.preload))
            .term("d", "bolt diameter", Value::new(Kind::Length, self.diameter))
            .valid("an estimate: preload scatters 25 to 35 % from torque alone")
    }
}

const NUT_FACTOR: Source =
    Source::common_practice("nut factor; the maker’s torque outranks the estimate");

/// The preload that a torque may give while the nut factor lies in a range.
///
/// ```text
/// F = T/(K·d)
/// ```
/// # Errors
/// [`BoltError`] for what is not above zero.
pub fn preload_range(
    setting: Torque,
    nut_factor: Range<f64>,
    diameter: Length,
) -> Result<Range<Force>, BoltError> {
    let (setting, diameter) = (torque(setting)?, length(diameter)?);
    if nut_factor.low > nut_factor.high {
        return Err(BoltError::Factor(nut_factor.low));
    }
    let at = |k: f64| Ok(Force::from_si(setting.si() / (factor(k)? * diameter.si())));
    Ok(Range { low: at(nut_factor.high)?, high: at(nut_factor.low)? })
}

/// Wrench setting with a self-locking nut: the torque that seats, and what the nut takes to turn.
///
/// # Errors
/// [`BoltError::Torque`] for a seating torque not above zero, or a prevailing one below.
/// # Source
/// Common practice.
pub fn with_prevailing(seating: Torque, prevailing: Torque) -> Result<Torque, BoltError> {
    if !(prevailing.is_finite() && prevailing.si() >= 0.0) {
        return Err(BoltError::Torque(prevailing));
    }
    Ok(torque(seating)? + prevailing)
}

/// How a wrench setting with a self-locking nut was found.
///
/// # Errors
/// As [`with_prevailing`].
pub fn prevailing_working(seating: Torque, prevailing: Torque) -> Result<Working, BoltError> {
    let torque = |torque| Value::new(Kind::Torque, torque);
    let result = torque(with_prevailing(seating, prevailing)?);
    let source = Source::common_practice("prevailing torque is added");
    Ok(Working::new("Wrench setting", "W = T + P", result, source)
        .term("T", "torque that seats", torque(seating))
        .term("P", "prevailing torque of the nut", torque(prevailing)))
}

/// The torque of every pass on the way to the final one.
///
/// # Errors
/// [`BoltError`] for a torque or fraction not above zero.
/// # Example
/// ```
/// use mechanics::bolts::passes;
/// use quantities::{Physical, Torque};
/// let torques = passes(Torque::from_si(218.4), &[0.3, 0.7, 1.0])?;
/// assert_eq!(format!("{:.2}", torques[0].si()), "65.52");
/// # Ok::<(), mechanics::bolts::BoltError>(())
/// ```
pub fn passes(last: Torque, fractions: &[f64]) -> Result<Vec<Torque>, BoltError> {
    let last = torque(last)?;
    fractions.iter().map(|&fraction| Ok(last * factor(fraction)?)).collect()
}

/// Tensile stress area of a thread.
///
/// ```text
/// A = π/4·(d − 0.9382·P)²
/// ```
/// # Valid
/// ISO metric and Unified threads, which share one profile: 0.9743/n in inches is 0.9743·P.
/// # Errors
/// [`BoltError::Length`] for a diameter or pitch not above zero, or a pitch that leaves no core.
/// # Source
/// ISO 898-1 (metric), ASME B1.1 (Unified); from memory.
pub fn stress_area(diameter: Length, pitch: Length, thread: Thread) -> Result<Area, BoltError> {
    let loss = match thread {
        Thread::Metric => 0.9382,
        Thread::Unified => 0.9743,
    };
    let core = length(diameter)? - length(pitch)? * loss;
    let core = length(core)?;
    Ok(core * core * std::f64::consts::FRAC_PI_4)
}

/// The two families of thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Thread {
    /// ISO metric.
    Metric,
    /// Unified inch.
    Unified,
}

/// Torque that a flange carries by friction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlangeFriction {
    /// Friction between the flanges.
    pub friction: f64,
    /// Bolts.
    pub bolts: u32,
    /// Preload of each.
    pub preload: Force,
    /// Diameter of the bolt circle.
    pub bolt_circle: Length,
    /// Torque.
    pub torque: Torque,
}

/// Torque that a bolted flange carries by friction between its faces.
///
/// ```text
/// T = μ·n·F·C/2
/// ```
/// # Valid
/// Faces touch near the bolt circle; C is its diameter; preload at the lower end of its scatter
/// gives the torque that can be counted on.
/// # Errors
/// [`BoltError`] for what is not above zero.
pub fn flange_friction(
    friction: f64,
    bolts: u32,
    preload: Force,
    bolt_circle: Length,
) -> Result<FlangeFriction, BoltError> {
    let pull = factor(friction)? * some(bolts)? * force(preload)?.si();
    let torque = Torque::from_si(pull * length(bolt_circle)?.si() / 2.0);
    Ok(FlangeFriction { friction, bolts, preload, bolt_circle, torque })
}

impl FlangeFriction {
    /// How the torque was found.
    pub fn working(&self) -> Working {
        let result = Value::new(Kind::Torque, self.torque);
        Working::new("Torque carried by flange friction", "T = m·n·F·C/2", result, STATICS)
            .term("m", "friction between the faces", Value::number(self.friction))
            .term("n", "bolts", Value::count(self.bolts))
            .term("F", "preload of each", Value::new(Kind::Force, self.preload))
            .term("C", "bolt circle", Value::new(Kind::Length, self.bolt_circle))
    }
}

/// Torque that fitted bolts carry in shear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FittedBolts {
    /// Bolts.
    pub bolts: u32,
    /// Shank diameter.
    pub shank: Length,
    /// Shear stress allowed.
    pub shear: Pressure,
    /// Diameter of the bolt circle.
    pub bolt_circle: Length,
    /// Torque.
    pub torque: Torque,
}

/// Torque that bolts fitted in reamed holes carry by the shear of their shanks.
///
/// ```text
/// T = n·(π/4)·s²·τ·C/2
/// ```
/// # Valid
/// Every shank fits its hole, no thread in the shear plane; friction comes on top and is not counted.
/// # Errors
/// [`BoltError`] for what is not above zero.
pub fn fitted_bolts(
    bolts: u32,
    shank: Length,
    shear: Pressure,
    bolt_circle: Length,
) -> Result<FittedBolts, BoltError> {
    if !is_positive(shear.si()) {
        return Err(BoltError::Stress(shear));
    }
    let area = std::f64::consts::FRAC_PI_4 * length(shank)?.si().powi(2);
    let si = some(bolts)? * area * shear.si() * length(bolt_circle)?.si() / 2.0;
    Ok(FittedBolts { bolts, shank, shear, bolt_circle, torque: Torque::from_si(si) })
}

impl FittedBolts {
    /// How the torque was found.
    pub fn working(&self) -> Working {
        let result = Value::new(Kind::Torque, self.torque);
        let formula = "T = n·(π/4)·s²·t·C/2";
        Working::new("Torque carried by fitted bolts", formula, result, STATICS)
            .term("n", "bolts", Value::count(self.bolts))
            .term("s", "shank diameter", Value::new(Kind::Length, self.shank))
            .term("t", "shear stress allowed", Value::new(Kind::Stress, self.shear))
            .term("C", "bolt circle", Value::new(Kind::Length, self.bolt_circle))
            .valid("every shank fits its hole; no thread in the shear plane")
    }
}

const STATICS: Source = Source::new("statics of the bolt circle", "", Basis::Computed);

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::force::{newton, pound_force};
    use uom::si::length::{inch, millimeter};
    use uom::si::pressure::megapascal;
    use uom::si::torque::{newton_meter, pound_force_foot};

    fn close(found: f64, wanted: f64, half_digit: f64) {
        assert!((found - wanted).abs() <= half_digit, "{found} for {wanted}");
    }

    fn mm(mm: f64) -> Length {
        Length::new::<millimeter>(mm)
    }

    /// ISO 898-1 proof loads (M16 8.8: 91 kN, M12 10.9: 70 kN), K and 75 % common practice; worked
    /// by hand to the digits shown.
    #[test]
    fn metric_torques() {
        let torque = |proof, k, d| {
            let preload = preload_from_proof(Force::new::<newton>(proof), 0.75).unwrap();
            let found = tightening_torque(k, preload, mm(d)).unwrap();
            (preload.get::<newton>(), found.torque.get::<newton_meter>())
        };
        let (preload, found) = torque(91_000.0, 0.2, 16.0);
        close(preload, 68_250.0, 0.5);
        close(found, 218.4, 0.05);
        let (preload, found) = torque(70_000.0, 0.15, 12.0);
        close(preload, 52_500.0, 0.5);
        close(found, 94.5, 0.05);
    }

    /// Hardware torque table for SAE grade 2, dry, K 0.20, 75 % of proof (common practice): 1/2-13
    /// 5853 lbf and 48.8 lbf·ft, 3/4-10 13 778 lbf and 172 lbf·ft; 5/8-11 grade 5 with K 0.15 by
    /// hand.
    #[test]
    fn inch_torques() {
        for (k, d, area, proof_psi, preload, torque, digit) in [
            (0.2, 0.5, 0.1419, 55_000.0, 5853.0, 48.8, 0.05),
            (0.2, 0.75, 0.334, 55_000.0, 13_778.0, 172.0, 0.5),
            (0.15, 0.625, 0.226, 85_000.0, 14_407.5, 112.559, 0.0005),
        ] {
            let proof = Force::new::<pound_force>(area * proof_psi);
            let found = preload_from_proof(proof, 0.75).unwrap();
            close(found.get::<pound_force>(), preload, 0.5);
            let found = tightening_torque(k, found, Length::new::<inch>(d)).unwrap();
            close(found.torque.get::<pound_force_foot>(), torque, digit);
        }
    }

    /// ISO 898-1 stress areas: M16 157 mm², M20 245 mm²; ASME B1.1: 3/4-10 0.334 in².
    #[test]
    fn stress_areas() {
        let area = |d, p| stress_area(mm(d), mm(p), Thread::Metric).unwrap().value * 1e6;
        close(area(16.0, 2.0), 157.0, 0.5);
        close(area(20.0, 2.5), 245.0, 0.5);
        let (d, p) = (Length::new::<inch>(0.75), Length::new::<inch>(0.1));
        let area = stress_area(d, p, Thread::Unified).unwrap();
        close(area.value / 0.0254_f64.powi(2), 0.334, 0.0005);
    }

    /// Worked by hand: μ·n·F·R = 0.15·8·68 250·0.110 and n·π/4·s²·τ·R = 6·380.13·60·0.130.
    #[test]
    fn flanges_carry_by_friction_and_by_shear() {
        let friction = flange_friction(0.15, 8, Force::new::<newton>(68_250.0), mm(220.0)).unwrap();
        close(friction.torque.get::<newton_meter>(), 9009.0, 0.5);
        let shear = Pressure::new::<megapascal>(60.0);
        let fitted = fitted_bolts(6, mm(22.0), shear, mm(260.0)).unwrap();
        close(fitted.torque.get::<newton_meter>(), 17_790.2, 0.05);
    }

    /// A bolt set dry (K 0.20) and found oiled (K 0.15) reaches its proof load: worked by hand.
    #[test]
    fn oil_on_a_dry_torque_overstretches() {
        let setting = Torque::new::<newton_meter>(218.4);
        let range = preload_range(setting, Range::new(0.15, 0.25), mm(16.0)).unwrap();
        close(range.high.get::<newton>(), 91_000.0, 0.5);
        close(range.low.get::<newton>(), 54_600.0, 0.5);
        let torque = Torque::new::<newton_meter>;
        let setting = with_prevailing(torque(94.5), torque(12.0)).unwrap();
        close(setting.get::<newton_meter>(), 106.5, 0.05);
        let steps = passes(torque(218.4), &tables::nut_factor::PASSES).unwrap();
        for (found, wanted) in steps.iter().zip([65.52, 152.88, 218.4]) {
            close(found.get::<newton_meter>(), wanted, 0.005);
        }
    }

    #[test]
    fn what_is_not_above_zero_is_refused() {
        assert!(tightening_torque(0.0, Force::from_si(1.0), mm(16.0)).is_err());
        assert!(tightening_torque(f64::NAN, Force::from_si(1.0), mm(16.0)).is_err());
        assert!(flange_friction(0.1, 0, Force::from_si(1.0), mm(16.0)).is_err());
        assert!(stress_area(mm(2.0), mm(3.0), Thread::Metric).is_err());
        let backwards = Range::new(0.25, 0.15);
        assert!(preload_range(Torque::from_si(1.0), backwards, mm(16.0)).is_err());
    }
}
