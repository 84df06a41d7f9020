//! Where a function that only rises, or only falls, passes through nothing.

/// Steps that are taken at most: as many halvings as a float has digits, and some.
const STEPS: usize = 80;

/// How near to each other the two places come, as a part of the larger end.
const NEAR: f64 = 1e-15;

/// Two places with the crossing between them, nearer to each other than [`NEAR`]: `from`’s
/// side first.
///
/// By chords, each bent towards the side that stays (the Illinois rule); a chord that gains less than
/// half is followed by a halving. `ends` are the values at `from` and `to`, of unlike signs.
///
/// Source: Dowell and Jarratt, "A modified regula falsi method for computing the root of an equation",
/// BIT 11 (1971); from memory.
pub(crate) fn crossing<E>(
    [mut from, mut to]: [f64; 2],
    [mut at_from, mut at_to]: [f64; 2],
    value: impl Fn(f64) -> Result<f64, E>,
) -> Result<[f64; 2], E> {
    let near = NEAR * from.abs().max(to.abs());
    let mut kept = 0_i8;
    let mut bold = true;
    for _ in 0..STEPS {
        let width = (to - from).abs();
        if width <= near {
            break;
        }
        let chord = from + (to - from) * at_from / (at_from - at_to);
        let inside = (chord - from).abs() < width && (chord - to).abs() < width;
        let here = if bold && inside { chord } else { f64::midpoint(from, to) };
        let at_here = value(here)?;
        if at_here == 0.0 {
            return Ok([here, here]);
        }
        if (at_here > 0.0) == (at_from > 0.0) {
            (from, at_from) = (here, at_here);
            if kept > 0 {
                at_to /= 2.0;
            }
            kept = 1;
        } else {
            (to, at_to) = (here, at_here);
            if kept < 0 {
                at_from /= 2.0;
            }
            kept = -1;
        }
        bold = !bold || (to - from).abs() < 0.5 * width;
    }
    Ok([from, to])
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::cell::Cell;

    /// √2, a kink, and a step that is all but flat: found to the last digits, in few steps where the
    /// function is smooth.
    #[test]
    fn it_is_found_to_the_last_digits() {
        let steps = Cell::new(0);
        let find = |ends: [f64; 2], f: &dyn Fn(f64) -> f64| {
            steps.set(0);
            let value = |x: f64| {
                steps.set(steps.get() + 1);
                Ok::<f64, ()>(f(x))
            };
            crossing(ends, ends.map(f), value).unwrap()
        };
        let [low, high] = find([0.0, 10.0], &|x| x * x - 2.0);
        assert!((low - 2.0_f64.sqrt()).abs() < 1e-13 && (high - low).abs() < 1e-13);
        assert!(steps.get() < 27, "{} steps", steps.get());
        let kink = |x: f64| if x < 3.0 { 0.01 * (x - 3.0) } else { 100.0 * (x - 3.0) };
        let [low, high] = find([0.0, 1e3], &|x| kink(x) + 0.005);
        assert!((low - 2.5).abs() < 1e-12 && (high - 2.5).abs() < 1e-12, "{low} {high}");
        let falls = find([0.0, 1e5], &|x| 1.0 - (x / 700.0).powi(2));
        assert!(falls.iter().all(|x| (x - 700.0).abs() < 1e-9), "{falls:?}");
        let step = find([0.0, 1.0], &|x| if x < 0.3 { -1.0 } else { 1.0 });
        assert!(step.iter().all(|x| (x - 0.3).abs() < 1e-12), "{step:?}");
    }
}
