//! What one reading may be out by: its parts put together.
//!
//! Each part is a standard uncertainty, with degrees of freedom where it was found from few
//! readings. They add as squares; the factor that makes a 95 % interval of the sum is 2, or Student's
//! factor where few readings rule (Welch and Satterthwaite).
//!
//! ```text
//! u² = Σ uᵢ²      ν = u⁴/Σ( uᵢ⁴/νᵢ )      U = t(ν)·u
//! ```

use quantities::{Basis, Kind, Length, Physical, Source, Value, Working, is_spread};

/// One part of an uncertainty.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it comes from.
    pub name: String,
    /// Standard uncertainty.
    pub u: Length,
    /// Degrees of freedom; `None` for as good as unlimited.
    pub degrees_of_freedom: Option<f64>,
}

impl Part {
    /// A part known by itself.
    pub fn new(name: impl Into<String>, u: Length, degrees_of_freedom: Option<f64>) -> Self {
        Self { name: name.into(), u, degrees_of_freedom }
    }

    /// A division of a dial: a rectangle of half its width, u = q/√12.
    pub fn division(division: Length) -> Self {
        Self::new("division", division / 12_f64.sqrt(), None)
    }

    /// Bounds that hold for certain: a rectangle, u = w/√3.
    pub fn bounds(name: impl Into<String>, half_width: Length) -> Self {
        Self::new(name, half_width / 3_f64.sqrt(), None)
    }

    /// The mean of repeated readings: u = s/√n with n − 1 degrees of freedom.
    pub fn repeats(deviation: Length, count: u32) -> Self {
        let n = f64::from(count);
        Self::new("repeated readings", deviation / n.sqrt(), Some(n - 1.0))
    }

    fn is_sound(&self) -> bool {
        is_spread(self.u.si()) && self.degrees_of_freedom.is_none_or(|nu| nu >= 1.0)
    }
}

/// The parts and their sum.
#[derive(Clone, Debug, PartialEq)]
pub struct Budget {
    /// The parts.
    pub parts: Vec<Part>,
    /// Standard uncertainty of the whole.
    pub u: Length,
    /// Effective degrees of freedom; `None` for as good as unlimited.
    pub degrees_of_freedom: Option<f64>,
    /// The factor that makes a 95 % interval of it, 2 at least.
    pub factor: f64,
}

/// Why there is no budget.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum BudgetError {
    /// A part below zero or no number, or with less than one degree of freedom (one reading repeats
    /// nothing); or no part.
    #[error("a part of the budget is not a number or is below zero, or there are no parts")]
    Part,
}

impl Budget {
    /// Puts parts together.
    ///
    /// # Errors
    /// [`BudgetError::Part`].
    /// # Source
    /// JCGM 100:2008, 5.1.2 and annex G.4.
    /// # Example
    /// ```
    /// use lineup::budget::{Budget, Part};
    /// use quantities::{Length, Physical};
    /// let um = |um: f64| Length::from_si(um * 1e-6);
    /// let budget = Budget::new(vec![Part::division(um(10.0)), Part::repeats(um(4.0), 5)])?;
    /// assert_eq!(format!("{:.1}", budget.plus_minus().si() * 1e6), "6.8");
    /// # Ok::<(), lineup::budget::BudgetError>(())
    /// ```
    pub fn new(parts: Vec<Part>) -> Result<Self, BudgetError> {
        if parts.is_empty() || !parts.iter().all(Part::is_sound) {
            return Err(BudgetError::Part);
        }
        let u = parts.iter().map(|part| part.u.si().powi(2)).sum::<f64>().sqrt();
        let few: f64 = parts
            .iter()
            .filter_map(|part| part.degrees_of_freedom.map(|nu| part.u.si().powi(4) / nu))
            .sum();
        let degrees_of_freedom = (few > 0.0).then(|| u.powi(4) / few);
        let factor = degrees_of_freedom.map_or(2.0, |nu| student_95(nu).max(2.0));
        Ok(Self { parts, u: Length::from_si(u), degrees_of_freedom, factor })
    }

    /// Half-width of the 95 % interval.
    pub fn plus_minus(&self) -> Length {
        self.u * self.factor
    }

    /// How it was found.
    pub fn working(&self) -> Working {
        let working = Working::new(
            "± of one reading",
            "u² = Σ uᵢ²\nU = t·u",
            Value::new(Kind::Allowance, self.plus_minus()),
            Source::new("JCGM 100:2008", "5.1.2 and annex G.4", Basis::Read),
        )
        .term("t", "factor for 95 %", Value::number(self.factor))
        .term(
            "u",
            "standard uncertainty of the whole",
            Value::new(Kind::Allowance, self.u),
        );
        let part = |working: Working, part: &Part| {
            working.term("uᵢ", part.name.clone(), Value::new(Kind::Allowance, part.u))
        };
        self.parts.iter().fold(working, part).valid("independent parts")
    }
}

/// Student's factor for a two-sided 95 % interval; degrees of freedom are cut to a whole number
/// as JCGM 100, G.4.2 allows. Not below one.
///
/// The share of the distribution within ±t is a finite sum in θ = atan(t/√ν); t is found by halving.
/// # Source
/// Abramowitz and Stegun, *Handbook of Mathematical Functions*, 26.7.3 and 26.7.4; from memory.
pub fn student_95(degrees_of_freedom: f64) -> f64 {
    let nu = degrees_of_freedom.floor().clamp(1.0, 1000.0);
    let (mut low, mut high) = (1.0, 13.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if share_within(middle, nu) < 0.95 { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

fn share_within(t: f64, nu: f64) -> f64 {
    let theta = (t / nu.sqrt()).atan();
    let (sin, cos) = theta.sin_cos();
    let is_odd = nu % 2.0 > 0.5;
    let mut n = if is_odd { 1.0 } else { 0.0 };
    let (mut term, mut sum) = (if is_odd { cos } else { 1.0 }, 0.0);
    while n <= nu - 2.0 {
        sum += term;
        n += 2.0;
        term *= cos * cos * (n - 1.0) / n;
    }
    if is_odd { std::f64::consts::FRAC_2_PI * (theta + sin * sum) } else { sin * sum }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two-sided 95 % factors, from the incomplete beta function.
    #[test]
    fn student_factors_meet_the_table() {
        for (nu, t) in [
            (1.0, 12.706_204_736),
            (2.0, 4.302_652_730),
            (3.0, 3.182_446_305),
            (4.0, 2.776_445_105),
            (5.0, 2.570_581_836),
            (8.0, 2.306_004_135),
            (10.0, 2.228_138_852),
            (16.0, 2.119_905_299),
            (30.0, 2.042_272_456),
        ] {
            assert!((student_95(nu) - t).abs() < 1e-6, "{nu}: {}", student_95(nu));
        }
    }

    /// JCGM 100:2008, H.1, end gauge: parts of 25 nm (18 degrees of freedom), 9.7 nm (25.6), 2.9 nm
    /// (50) and 16.6 nm (2) give 32 nm with 16. By a restatement of its figures; 31.664, 16.752 and
    /// 25.447 are the same unrounded, worked out apart from this code.
    #[test]
    fn the_end_gauge_of_the_guide() {
        let nm = |nm: f64| Length::from_si(nm * 1e-9);
        let near = |found: f64, wanted: f64, half_digit: f64| {
            assert!((found - wanted).abs() <= half_digit, "{found} for {wanted}");
        };
        let difference = Budget::new(vec![
            Part::new("comparison", nm(5.8), Some(24.0)),
            Part::new("random", nm(3.9), Some(5.0)),
            Part::new("systematic", nm(6.7), Some(8.0)),
        ])
        .unwrap();
        near(difference.u.si() * 1e9, 9.681_942, 0.5e-6);
        near(difference.degrees_of_freedom.unwrap(), 25.447_251, 0.5e-6);
        // Of the length 50.000623 mm: half-widths 1e-6/°C (a rectangle) at −0.1 °C, and 0.05 °C at
        // 11.5e-6/°C.
        let length = 50_000_623.0;
        let expansion = length * 0.1 * 1e-6 / 3_f64.sqrt();
        let temperature = length * 11.5e-6 * 0.05 / 3_f64.sqrt();
        let whole = Budget::new(vec![
            Part::new("standard", nm(25.0), Some(18.0)),
            Part::new("difference", difference.u, difference.degrees_of_freedom),
            Part::new("expansion", nm(expansion), Some(50.0)),
            Part::new("temperature", nm(temperature), Some(2.0)),
        ])
        .unwrap();
        near(whole.u.si() * 1e9, 31.663_879, 0.5e-6);
        near(whole.degrees_of_freedom.unwrap(), 16.751_856, 0.5e-6);
        near(whole.u.si() * 1e9, 32.0, 0.5);
        near(whole.degrees_of_freedom.unwrap().floor(), 16.0, 0.0);
    }

    /// One dial reading: division 0.01, dial error ±0.005, five repeats of deviation 0.004, and a sag
    /// known to u = 0.006 mm with 4 degrees; worked out apart from this code.
    #[test]
    fn one_dial_reading() {
        let mm = |mm: f64| Length::from_si(mm * 1e-3);
        let budget = Budget::new(vec![
            Part::division(mm(0.01)),
            Part::bounds("dial", mm(0.005)),
            Part::repeats(mm(0.004), 5),
            Part::new("sag", mm(0.006), Some(4.0)),
        ])
        .unwrap();
        let u: Vec<f64> = budget.parts.iter().map(|part| part.u.si() * 1e3).collect();
        for (u, wanted) in u.iter().zip([0.002_886_751, 0.002_886_751, 0.001_788_854, 0.006]) {
            assert!((u - wanted).abs() < 1e-9, "{u} for {wanted}");
        }
        assert!((budget.u.si() * 1e3 - 0.007_474_400_756).abs() < 1e-11);
        assert!((budget.degrees_of_freedom.unwrap() - 9.557_460_939_6).abs() < 1e-8);
        assert!((budget.factor - student_95(9.0)).abs() < 1e-12);
        assert!(Budget::new(vec![Part::repeats(mm(0.004), 1)]).is_err());
        assert!(Budget::new(vec![]).is_err());
    }
}
