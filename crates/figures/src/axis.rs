//! Round steps for ticks, scales and enlargements.

/// The largest of `steps` times a power of ten that is not above `value`.
pub(crate) fn round_down(value: f64, steps: &[f64]) -> f64 {
    let power = 10.0_f64.powf(value.log10().floor());
    let fits = steps.iter().map(|step| step * power).filter(|step| *step <= value * (1.0 + 1e-9));
    fits.fold(power, f64::max)
}

/// The smallest of `steps` times a power of ten that is not below `value`.
pub(crate) fn round_up(value: f64, steps: &[f64]) -> f64 {
    let power = 10.0_f64.powf(value.log10().floor());
    let fits = steps.iter().map(|step| step * power).filter(|step| *step >= value * (1.0 - 1e-9));
    fits.fold(10.0 * power, f64::min)
}

/// Steps between ticks.
pub(crate) const TICKS: [f64; 3] = [1.0, 2.0, 5.0];

/// Multiples of `step` from `low` to `high`.
pub(crate) fn ticks(low: f64, high: f64, step: f64) -> Vec<f64> {
    let mut found = Vec::new();
    let mut count = (low / step - 1e-9).ceil();
    while count * step <= high + 1e-9 * step && found.len() < 200 {
        found.push(count * step);
        count += 1.0;
    }
    found
}

/// A tick's number: as many decimals as its step needs, a true minus, zero without a sign.
pub(crate) fn tick_text(value: f64, step: f64, signed: bool) -> String {
    if value.abs() < step * 1e-6 {
        return "0".to_owned();
    }
    let powers = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5];
    let places = powers.iter().position(|power| {
        let scaled = step * power;
        (scaled - scaled.round()).abs() < 1e-6 * scaled
    });
    let places = places.unwrap_or(6);
    let sign = if value < 0.0 {
        "−"
    } else if signed {
        "+"
    } else {
        ""
    };
    format!("{sign}{:.places$}", value.abs())
}

/// A count as a length is reckoned with.
#[expect(clippy::cast_precision_loss, reason = "labels, bolts and rows are far below 2^52")]
pub(crate) fn real(count: usize) -> f64 {
    count as f64
}

/// A round number without needless decimals.
pub(crate) fn plain(number: f64) -> String {
    let text = format!("{number:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round() {
        assert!((round_down(37.0, &TICKS) - 20.0).abs() < 1e-9);
        assert!((round_up(37.0, &TICKS) - 50.0).abs() < 1e-9);
        assert!((round_up(0.07, &TICKS) - 0.1).abs() < 1e-12);
        assert_eq!(ticks(-0.41, 0.2, 0.2).len(), 4);
        assert_eq!(tick_text(-0.4, 0.2, true), "−0.4");
        assert_eq!(tick_text(0.25, 0.25, true), "+0.25");
        assert_eq!(tick_text(0.0, 5.0, true), "0");
    }
}
