//! A quantity for a reader whose units nobody knows: an error that a calculation gives.

use crate::{Physical, System, Value};

/// Digits that count; a number in an error wants to be known again, not to be worked with.
const DIGITS: f64 = 4.0;

/// In metric and in inch units, to four digits.
///
/// # Example
/// ```
/// use quantities::{Length, Physical, ThermodynamicTemperature, both};
/// assert_eq!(both(&Length::from_si(-5.08e-5)), "-0.0508 mm (-0.002 in)");
/// assert_eq!(both(&ThermodynamicTemperature::from_si(198.15)), "-75 °C (-103 °F)");
/// assert_eq!(both(&Length::from_si(f64::NAN)), "no number");
/// ```
pub fn both<Q: Physical>(quantity: &Q) -> String {
    let si = quantity.si();
    if !si.is_finite() {
        return "no number".to_owned();
    }
    let [metric, inch] = [System::Metric, System::Inch].map(|system| {
        let unit = Value::new(Q::KIND, *quantity).kind.unit(system);
        format!("{} {}", plain(unit.from_si(si)), unit.name()).trim_end().to_owned()
    });
    if metric == inch { metric } else { format!("{metric} ({inch})") }
}

fn plain(number: f64) -> String {
    let magnitude = if number == 0.0 { 0.0 } else { number.abs().log10().floor() };
    let step = 10.0_f64.powf(magnitude + 1.0 - DIGITS);
    let decimals = (DIGITS - 1.0 - magnitude).clamp(0.0, 9.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 9")]
    let text = format!("{:.*}", decimals as usize, (number / step).round() * step);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}
