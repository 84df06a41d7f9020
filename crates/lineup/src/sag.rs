//! How far a bracket droops, and what that does to a reading.
//!
//! Turned on a stiff mandrel and zeroed at 12, a bracket shows `s·(cos t − 1)`: −s at the sides
//! and −2s at the bottom. That curve is in every sweep made with it, whatever the shafts do, and
//! is taken off. A face dial on the same bracket has a curve of its own, of either sign.
//!
//! s rim sag, positive · f face sag, signed; both are the amplitude of the cosine

use quantities::{
    Basis, Kind, Length, Mass, MassDensity, Physical, Pressure, Source, Value, Working, both,
    is_spread,
};

use crate::Estimate;

const GRAVITY_M_S2: f64 = 9.806_65;

/// How a computed sag may be off, as a part of it: a rule of our own. Clamp and post, left out of the sum,
/// give as well.
const COMPUTED_PART: f64 = 0.5;

/// What the bracket adds to every reading: `amplitude·cos t`.
#[derive(Clone, Debug, PartialEq)]
pub struct Sag {
    /// s for a rim dial, f for a face dial.
    pub amplitude: Estimate<Length>,
    /// Which bracket; dials on one bracket share the error of its sag. Empty for one of its own.
    pub bracket: String,
}

/// Why there is no sag.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum SagError {
    /// A bracket cannot rise: zeroed at the top, the bottom of a mandrel reads below zero.
    #[error("a bracket that sags reads below zero at the bottom of a mandrel, not {}; look to the sign of the dial", both(.0))]
    Rises(Length),
    /// Not a number, or a negative spread.
    #[error("a sag that is not a number, or a ± below zero")]
    NotANumber,
    /// A bar needs 0 ≤ inside < outside diameter, an overhang, and a material.
    #[error("a bar of {} outside and {} inside, {} long; expected a wall, a length, and masses and stiffness of a metal", both(&.0.outside), both(&.0.inside), both(&.0.overhang))]
    Bar(Bar),
}

impl Sag {
    /// Rim sag from the mandrel: bottom reading, zeroed at the top, on the outside of the mandrel.
    ///
    /// ```text
    /// s = −r6/2
    /// ```
    /// # Errors
    /// [`SagError::Rises`] for a positive reading, [`SagError::NotANumber`].
    /// # Source
    /// US Bureau of Reclamation, FIST 4-1A, pages 17 and 24.
    /// # Example
    /// ```
    /// use lineup::{Estimate, sag::Sag};
    /// use quantities::{Length, Physical};
    /// let bottom = Estimate::new(Length::from_si(-100e-6), Length::from_si(10e-6));
    /// let sag = Sag::rim_on_mandrel(bottom, "clamp bracket")?;
    /// assert!((sag.amplitude.value.si() - 50e-6).abs() < 1e-12);
    /// # Ok::<(), lineup::sag::SagError>(())
    /// ```
    pub fn rim_on_mandrel(bottom: Estimate<Length>, bracket: &str) -> Result<Self, SagError> {
        if bottom.value > Length::from_si(0.0) {
            return Err(SagError::Rises(bottom.value));
        }
        Self::face_on_mandrel(bottom, bracket)
    }

    /// Face sag from the mandrel, or from pushing the bracket up at the top by the full rim sag:
    /// what the face dial then shows is what it shows at the bottom.
    ///
    /// ```text
    /// f = −r6/2
    /// ```
    /// # Errors
    /// [`SagError::NotANumber`].
    /// # Source
    /// Bloch and Geitner, *Machinery Component Maintenance and Repair*, pages 187 to 188.
    pub fn face_on_mandrel(bottom: Estimate<Length>, bracket: &str) -> Result<Self, SagError> {
        if !bottom.is_sound() {
            return Err(SagError::NotANumber);
        }
        let amplitude = Estimate::new(-bottom.value / 2.0, bottom.plus_minus / 2.0);
        Ok(Self { amplitude, bracket: bracket.to_owned() })
    }

    /// What the bracket shows on a mandrel at the bottom, zeroed at the top: −2s.
    pub fn bottom_reading(&self) -> Length {
        self.amplitude.value * -2.0
    }

    pub(crate) fn is_sound(&self) -> bool {
        self.amplitude.is_sound()
    }
}

/// A bar that carries a dial at its end: a rod, or a tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// Outside diameter.
    pub outside: Length,
    /// Inside diameter; zero for a rod.
    pub inside: Length,
    /// From clamp to dial.
    pub overhang: Length,
    /// Dial and clamp at the end.
    pub end_mass: Mass,
    /// Of the bar.
    pub density: MassDensity,
    /// Young's modulus of the bar.
    pub young: Pressure,
}

/// A sag worked out from the bar, with its two parts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BarSag {
    /// The bar.
    pub bar: Bar,
    /// Droop under the mass at the end.
    pub from_end: Length,
    /// Droop under its own weight.
    pub from_weight: Length,
}

/// Sag of a bar clamped at one end, the dial at the other.
///
/// ```text
/// I = π/64·(D⁴ − d⁴)      w = ρ·g·π/4·(D² − d²)
/// s = W·L³/(3·E·I) + w·L⁴/(8·E·I)
/// ```
/// # Valid
/// Small deflection of a straight bar. Clamp and post are taken as rigid, so a real bracket sags
/// more: measure it on a mandrel.
/// # Errors
/// [`SagError::Bar`] unless 0 ≤ d < D, L > 0, E > 0, and masses are not negative.
/// # Source
/// Beam bending, cantilever with end load and with its own weight.
/// # Example
/// ```
/// use lineup::sag::{Bar, bar_sag};
/// use quantities::{Length, Mass, MassDensity, Physical, Pressure};
/// let rod = Bar {
///     outside: Length::from_si(0.012),
///     inside: Length::from_si(0.0),
///     overhang: Length::from_si(0.250),
///     end_mass: Mass::from_si(0.15),
///     density: MassDensity::from_si(7850.0),
///     young: Pressure::from_si(207e9),
/// };
/// assert_eq!(format!("{:.4}", bar_sag(rod)?.total().si() * 1e3), "0.0565");
/// # Ok::<(), lineup::sag::SagError>(())
/// ```
pub fn bar_sag(bar: Bar) -> Result<BarSag, SagError> {
    let [outside, inside, overhang] = [bar.outside, bar.inside, bar.overhang].map(Physical::si);
    let (end_kg, density, young) = (bar.end_mass.si(), bar.density.si(), bar.young.si());
    let shaped = 0.0 <= inside && inside < outside && overhang > 0.0 && young > 0.0;
    let sound = [end_kg, density].into_iter().all(is_spread)
        && [outside, overhang, young].into_iter().all(f64::is_finite);
    if !(shaped && sound) {
        return Err(SagError::Bar(bar));
    }
    let quarter_pi = std::f64::consts::FRAC_PI_4;
    let second_moment_m4 = quarter_pi / 16.0 * (outside.powi(4) - inside.powi(4));
    let weight_n_m = density * GRAVITY_M_S2 * quarter_pi * (outside.powi(2) - inside.powi(2));
    let stiffness = young * second_moment_m4;
    let from_end = end_kg * GRAVITY_M_S2 * overhang.powi(3) / (3.0 * stiffness);
    let from_weight = weight_n_m * overhang.powi(4) / (8.0 * stiffness);
    Ok(BarSag {
        bar,
        from_end: Length::from_si(from_end),
        from_weight: Length::from_si(from_weight),
    })
}

impl BarSag {
    /// Both parts together.
    pub fn total(&self) -> Length {
        self.from_end + self.from_weight
    }

    /// For correcting with, until it is measured; `±` half of it, a rule of our own.
    pub fn sag(&self, bracket: &str) -> Sag {
        let amplitude = Estimate::new(self.total(), self.total() * COMPUTED_PART);
        Sag { amplitude, bracket: bracket.to_owned() }
    }

    /// How it was found.
    pub fn working(&self) -> Working {
        let shown = |length| Value::new(Kind::Allowance, length);
        Working::new(
            "Sag of the bracket’s bar",
            "sW = W·L³/(3·E·I)\nsw = w·L⁴/(8·E·I)\ns = sW + sw",
            shown(self.total()),
            Source::new("Beam bending", "cantilever, end load and own weight", Basis::Computed),
        )
        .term("D", "outside diameter", Value::new(Kind::Length, self.bar.outside))
        .term("d", "inside diameter", Value::new(Kind::Length, self.bar.inside))
        .term("L", "from clamp to dial", Value::new(Kind::Length, self.bar.overhang))
        .term("m", "mass at the end", Value::new(Kind::Mass, self.bar.end_mass))
        .term("E", "Young’s modulus", Value::new(Kind::Stress, self.bar.young))
        .term("sW", "under the mass at the end", shown(self.from_end))
        .term("sw", "under its own weight", shown(self.from_weight))
        .valid("clamp and post taken as rigid; a real bracket sags more, so measure it")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bar(outside_mm: f64, inside_mm: f64, overhang_mm: f64) -> Bar {
        let mm = |mm: f64| Length::from_si(mm / 1e3);
        Bar {
            outside: mm(outside_mm),
            inside: mm(inside_mm),
            overhang: mm(overhang_mm),
            end_mass: Mass::from_si(0.15),
            density: MassDensity::from_si(7850.0),
            young: Pressure::from_si(207e9),
        }
    }

    /// Rod and tube, from the beam formulas worked out apart from this code (to 1e-6 of the value).
    #[test]
    fn rods_and_tubes_sag_as_beams_do() {
        for (bar, sag_mm) in
            [(bar(12.0, 0.0, 250.0), 0.056_538_387), (bar(25.0, 21.0, 400.0), 0.033_607_570)]
        {
            let found = bar_sag(bar).unwrap();
            assert!((found.total().si() * 1e3 / sag_mm - 1.0).abs() < 1e-6, "{found:?}");
            let sag = found.sag("");
            assert!((sag.bottom_reading() + found.total() * 2.0).si().abs() < 1e-15);
        }
        assert!(bar_sag(bar(12.0, 12.0, 250.0)).is_err());
        assert!(bar_sag(bar(f64::NAN, 0.0, 250.0)).is_err());
    }

    #[test]
    fn a_bracket_cannot_rise() {
        let up = Estimate::exact(Length::from_si(1e-4));
        assert!(matches!(Sag::rim_on_mandrel(up, ""), Err(SagError::Rises(_))));
        assert!(Sag::face_on_mandrel(up, "").is_ok());
    }
}
