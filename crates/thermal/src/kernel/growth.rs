//! How far a metal has grown from its size at 20 °C, and other figures that follow temperature.

/// Temperature of all sizes (K): 20 °C, ISO 1.
pub(crate) const REFERENCE_K: f64 = 293.15;

/// A figure by temperature: straight lines between rows that rise, level beyond them.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Curve(Vec<(f64, f64)>);

impl Curve {
    /// From rows `(K, figure)` in order of temperature.
    pub fn new(rows: Vec<(f64, f64)>) -> Self {
        Self(rows)
    }

    /// The same at every temperature.
    pub fn level(figure: f64) -> Self {
        Self(vec![(REFERENCE_K, figure)])
    }

    /// The figure at a temperature.
    pub fn at(&self, temperature_k: f64) -> f64 {
        let above = self.0.partition_point(|(row, _)| *row < temperature_k);
        match (above.checked_sub(1).map(|k| self.0[k]), self.0.get(above)) {
            (Some((from, low)), Some((to, high))) => {
                low + (high - low) * (temperature_k - from) / (to - from)
            }
            (Some((_, figure)), None) | (None, Some(&(_, figure))) => figure,
            (None, None) => f64::NAN,
        }
    }
}

/// Growth of a metal by its mean coefficient of expansion from 20 °C.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Growth {
    /// Mean coefficient from 20 °C to the temperature (1/K).
    pub mean_per_k: Curve,
    /// What the coefficient is multiplied by, for a case at the edge of what is known.
    pub factor: f64,
}

impl Growth {
    /// ε = α·(T − 20 °C).
    pub fn strain(&self, temperature_k: f64) -> f64 {
        self.factor * self.mean_per_k.at(temperature_k) * (temperature_k - REFERENCE_K)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_curve_goes_through_its_rows_and_stays_level_beyond() {
        let curve = Curve::new(vec![(300.0, 1.0), (400.0, 3.0)]);
        for (kelvin, wanted) in
            [(250.0, 1.0), (300.0, 1.0), (350.0, 2.0), (400.0, 3.0), (500.0, 3.0)]
        {
            assert!((curve.at(kelvin) - wanted).abs() < 1e-12, "{kelvin}: {}", curve.at(kelvin));
        }
        assert!(Curve::new(vec![]).at(300.0).is_nan());
    }

    #[test]
    fn nothing_has_grown_at_twenty_degrees() {
        let growth = Growth { mean_per_k: Curve::level(11.5e-6), factor: 1.0 };
        assert!(growth.strain(REFERENCE_K).abs() < f64::EPSILON);
        assert!((growth.strain(REFERENCE_K + 100.0) - 1.15e-3).abs() < 1e-12);
    }
}
