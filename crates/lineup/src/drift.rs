//! How a line-up wanders over the years: what was found each time less what had been left.
//!
//! Each span between two visits says by how much one number (an offset, a slope) changed over so
//! many years. A steady drift is the slope through nothing that fits all spans best, each weighed by
//! its uncertainty. Spans that scatter more than their `±` allows raise it, with Student's factor
//! for the few spans there are.
//!
//! c change · t span in years · u standard uncertainty of the change · b drift in a year

use quantities::{Basis, Kind, Physical, Source, Value, Working};

use crate::Estimate;
use crate::budget::student_95;

/// A change between two visits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span<Q> {
    /// How many years lie between.
    pub years: f64,
    /// Found this time less left the time before; the `±` must not be zero.
    pub change: Estimate<Q>,
}

/// A steady drift.
#[derive(Clone, Debug, PartialEq)]
pub struct Drift<Q> {
    /// What it was found from.
    pub spans: Vec<Span<Q>>,
    /// In a year.
    pub per_year: Estimate<Q>,
}

/// Why there is no drift.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum DriftError {
    /// No span at all.
    #[error("no span between two visits; at least two, with their days, are needed")]
    None,
    /// A span that is no time, or a change that is no number or has no `±`.
    #[error("two visits on one day, or a change without a ±")]
    Span,
}

/// The steady drift that fits all spans best.
///
/// ```text
/// b = Σ(c·t/u²) / Σ(t²/u²)
/// ```
/// # Errors
/// [`DriftError`].
/// # Source
/// Weighted least squares through the origin, JCGM 100:2008, H.3.
/// # Example
/// ```
/// use lineup::{Estimate, drift::{Span, drift}};
/// use quantities::{Length, Physical};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let span = |years, change| Span { years, change: Estimate::new(mm(change), mm(0.02)) };
/// let drift = drift(vec![span(2.0, -0.10), span(4.0, -0.20)])?;
/// assert!((drift.per_year.value.si() * 1e3 + 0.05).abs() < 1e-12);
/// # Ok::<(), lineup::drift::DriftError>(())
/// ```
pub fn drift<Q: Physical<Spread = Q>>(spans: Vec<Span<Q>>) -> Result<Drift<Q>, DriftError> {
    let sound = |span: &Span<Q>| {
        let u = span.change.standard_uncertainty();
        span.years > 0.0 && span.years.is_finite() && span.change.is_sound() && u > 0.0
    };
    if spans.is_empty() {
        return Err(DriftError::None);
    }
    if !spans.iter().all(sound) {
        return Err(DriftError::Span);
    }
    let weight = |span: &Span<Q>| span.change.standard_uncertainty().powi(-2);
    let squares: f64 = spans.iter().map(|s| s.years * s.years * weight(s)).sum();
    let products: f64 = spans.iter().map(|s| s.change.value.si() * s.years * weight(s)).sum();
    let rate = products / squares;
    let off = |s: &Span<Q>| s.change.value.si() - rate * s.years;
    let chi_squared: f64 = spans.iter().map(|s| off(s).powi(2) * weight(s)).sum();
    let freedom = f64::from(u32::try_from(spans.len() - 1).unwrap_or(u32::MAX));
    let scatter = (chi_squared / freedom.max(1.0)).max(1.0);
    // Welch and Satterthwaite: only what scatter added is known from few spans.
    let added = scatter - 1.0;
    let factor =
        if added > 0.0 { student_95(scatter * scatter * freedom / (added * added)) } else { 2.0 };
    let half_width = factor.max(2.0) * (scatter / squares).sqrt();
    Ok(Drift { spans, per_year: Estimate::new(Q::from_si(rate), Q::from_si(half_width)) })
}

impl<Q: Physical<Spread = Q>> Drift<Q> {
    /// Years from now until `now` has drifted to `limit` on either side; `None` when it does not
    /// drift, or not surely: its `±` reaches beyond nothing.
    ///
    /// ```text
    /// y = (±L − d)/b
    /// ```
    pub fn reaches(&self, now: Q, limit: Q) -> Option<f64> {
        let rate = self.per_year.value.si();
        if rate.abs() <= self.per_year.plus_minus.si() {
            return None;
        }
        let room = limit.si().abs() - now.si() * rate.signum();
        Some((room / rate.abs()).max(0.0))
    }

    /// How it was found, the spans shown as a `kind`.
    pub fn working(&self, kind: Kind) -> Working {
        let count = u32::try_from(self.spans.len()).unwrap_or(u32::MAX);
        let years: f64 = self.spans.iter().map(|span| span.years).sum();
        let change: f64 = self.spans.iter().map(|span| span.change.value.si()).sum();
        Working::new(
            "Drift in a year",
            "b = Σ(c·t/u²)/Σ(t²/u²)",
            self.per_year.shown(kind),
            Source::new("Weighted least squares", "JCGM 100:2008, H.3", Basis::Computed),
        )
        .term("n", "spans between visits", Value::count(count))
        .term("Σt", "years in all", Value::number(years))
        .term("Σc", "change in all", Value { kind, si: change, plus_minus: None })
        .valid("a steady drift; changes between what was left and what was found next")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantities::Length;

    fn span(years: f64, mm: f64, plus_minus: f64) -> Span<Length> {
        let length = |mm: f64| Length::from_si(mm / 1e3);
        Span { years, change: Estimate::new(length(mm), length(plus_minus)) }
    }

    /// Worked by hand: Σct/u² = (0.1·1 + 0.3·2)/1e-4 and Σt²/u² = 5/1e-4 give 0.14; residuals −0.04
    /// and 0.02, χ² = 0.002/1e-4 = 20 with one degree of freedom.
    #[test]
    fn two_spans_by_hand() {
        let found = drift(vec![span(1.0, 0.1, 0.02), span(2.0, 0.3, 0.02)]).unwrap();
        assert!((found.per_year.value.si() * 1e3 - 0.14).abs() < 1e-12);
        // ν = 20²·1/19² = 1.108, cut to 1: t = 12.706; u = √(20·1e-4/5) = 0.02.
        assert!((found.per_year.plus_minus.si() * 1e3 - 12.706_204_736 * 0.02).abs() < 1e-6);
        assert_eq!(found.reaches(Length::default(), Length::from_si(1e-3)), None, "not surely");
        let sure = drift(vec![span(2.0, -0.10, 0.02)]).unwrap();
        let years = sure.reaches(Length::from_si(0.02e-3), Length::from_si(0.07e-3)).unwrap();
        assert!((years - 1.8).abs() < 1e-9, "{years}");
        assert!(drift::<Length>(vec![]).is_err());
        assert!(drift(vec![span(0.0, 0.1, 0.02)]).is_err());
        assert!(drift(vec![span(1.0, 0.1, 0.0)]).is_err());
    }
}
