//! What heat does to the gap: shafts grow into it, so it is set wider, or a pack stretched, cold.
//!
//! Δ growth of a shaft · α coefficient of expansion · L length from the thrust bearing (or whatever
//! holds the rotor) to the shaft end · t mean rise of the shaft's temperature · h, c gap hot and cold
//!
//! A growth towards the coupling is positive and closes the gap.
//!
//! Not here: how supports grow, and so the line-up (`lineup::growth`).

use mechanics::Estimate;
use quantities::{
    Basis, Kind, Length, Physical, Source, TemperatureCoefficient, TemperatureInterval, Value,
    Working,
};

/// A shaft that grows towards its coupling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftGrowth {
    /// Coefficient of expansion.
    pub expansion: TemperatureCoefficient,
    /// From the thrust bearing, or whatever holds the rotor, to the shaft end; negative when the
    /// coupling lies on the side that the shaft grows away from.
    pub length: Length,
    /// Mean rise of the shaft between setting and running.
    pub rise: Estimate<TemperatureInterval>,
    /// Growth; positive closes the gap.
    pub growth: Estimate<Length>,
}

/// Why there is no growth.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("growth of a shaft from numbers that are none")]
pub struct GrowthError;

/// Growth of a shaft along its axis.
///
/// ```text
/// Δ = α·L·t
/// ```
/// # Valid
/// Growth of the casing that carries the thrust bearing is left out: give it as a shaft of its own
/// when it is known.
/// # Errors
/// [`GrowthError`] for what is no number.
/// # Source
/// Thermal expansion; `McMillan`, *Rotating Machinery: Practical Solutions to Unbalance and
/// Misalignment*, equation 8.1, laid along the shaft.
pub fn shaft_growth(
    expansion: TemperatureCoefficient,
    length: Length,
    rise: Estimate<TemperatureInterval>,
) -> Result<ShaftGrowth, GrowthError> {
    let per_kelvin = expansion.si() * length.si();
    let (growth, spread) =
        (per_kelvin * rise.value.si(), (per_kelvin * rise.plus_minus.si()).abs());
    if !(growth.is_finite() && spread.is_finite()) {
        return Err(GrowthError);
    }
    let growth = Estimate::new(Length::from_si(growth), Length::from_si(spread));
    Ok(ShaftGrowth { expansion, length, rise, growth })
}

impl ShaftGrowth {
    /// How the growth was found.
    pub fn working(&self) -> Working {
        let result = self.growth.shown(Kind::Offset);
        let place = "equation 8.1, along the shaft";
        let title =
            "McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment";
        Working::new(
            "Growth of the shaft towards the coupling",
            "D = a·L·t",
            result,
            Source::new(title, place, Basis::Read),
        )
        .term("a", "coefficient of expansion", Value::new(Kind::Expansion, self.expansion))
        .term("L", "from thrust bearing to shaft end", Value::new(Kind::Length, self.length))
        .term("t", "mean rise of the shaft", self.rise.shown(Kind::TemperatureDifference))
        .valid("without growth of the casing that carries the thrust bearing")
    }
}

/// A gap set cold so that it is right hot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColdGap {
    /// Gap wanted hot.
    pub hot: Length,
    /// Growth of the driver’s and of the driven shaft.
    pub growths: [Estimate<Length>; 2],
    /// Gap to set cold.
    pub cold: Estimate<Length>,
}

/// The gap to set cold, so that it is as wanted when both shafts, driver’s and driven, have grown.
///
/// ```text
/// c = h + Δ1 + Δ2
/// ```
/// A pack that is to be free when hot is stretched cold by Δ1 + Δ2: compare with
/// [`crate::envelope`].
pub fn cold_gap(hot: Length, growths: [Estimate<Length>; 2]) -> ColdGap {
    let spread = growths[0].plus_minus.si().hypot(growths[1].plus_minus.si());
    let cold = hot + growths[0].value + growths[1].value;
    ColdGap { hot, growths, cold: Estimate::new(cold, Length::from_si(spread)) }
}

impl ColdGap {
    /// What a pack is stretched by, cold: what it loses while it warms up.
    pub fn stretch(&self) -> Estimate<Length> {
        Estimate::new(self.cold.value - self.hot, self.cold.plus_minus)
    }

    /// How the cold gap was found.
    pub fn working(&self) -> Working {
        let source = Source::new("growth towards the coupling closes the gap", "", Basis::Computed);
        Working::new("Gap to set cold", "c = h + D1 + D2", self.cold.shown(Kind::Gap), source)
            .term("h", "gap wanted hot", Value::new(Kind::Gap, self.hot))
            .term("D1", "growth of the driver’s shaft", self.growths[0].shown(Kind::Offset))
            .term("D2", "growth of the driven shaft", self.growths[1].shown(Kind::Offset))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(mm: f64) -> Length {
        Length::from_si(mm / 1e3)
    }

    /// H = 180 mm wanted hot; shafts of 900 mm by 80 K and 1100 mm by 40 K, 11.7 µm/m/K; worked by
    /// hand: 0.8424 + 0.5148 mm, so 181.3572 mm cold.
    #[test]
    fn shafts_grow_into_the_gap() {
        let steel = TemperatureCoefficient::from_si(1.17e-5);
        let rise = |kelvin| Estimate::exact(TemperatureInterval::from_si(kelvin));
        let one = shaft_growth(steel, mm(900.0), rise(80.0)).unwrap();
        let other = shaft_growth(steel, mm(1100.0), rise(40.0)).unwrap();
        assert!((one.growth.value.si() - 0.8424e-3).abs() < 0.5e-7);
        assert!((other.growth.value.si() - 0.5148e-3).abs() < 0.5e-7);
        let cold = cold_gap(mm(180.0), [one.growth, other.growth]);
        assert!((cold.cold.value.si() - 181.3572e-3).abs() < 0.5e-7);
        assert!((cold.stretch().value.si() - 1.3572e-3).abs() < 0.5e-7);
    }
}
