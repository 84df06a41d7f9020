//! The order in which the bolts of a circle are tightened.
//!
//! Each bolt is followed by the one opposite, then by one in the middle of the widest space still
//! open, so that the flanges close evenly. With an odd number, the one nearest to opposite serves.
//! Among equals the one farthest from the last is taken, then the lowest number.

/// The order for `bolts` bolts, numbered from 1 around the circle; `None` for fewer than two.
///
/// # Source
/// Common practice: cross the circle, then halve what is open.
/// # Example
/// ```
/// assert_eq!(mechanics::order::tightening_order(8).unwrap(), [1, 5, 3, 7, 2, 6, 4, 8]);
/// assert_eq!(mechanics::order::tightening_order(5).unwrap(), [1, 3, 5, 2, 4]);
/// ```
pub fn tightening_order(bolts: usize) -> Option<Vec<usize>> {
    if bolts < 2 {
        return None;
    }
    let mut order: Vec<usize> = Vec::with_capacity(bolts);
    order.push(0);
    while order.len() < bolts {
        let next =
            if order.len() % 2 == 1 { opposite(&order, bolts) } else { widest(&order, bolts) };
        order.push(next?);
    }
    Some(order.into_iter().map(|bolt| bolt + 1).collect())
}

/// Steps between two bolts, the short way round.
fn apart(a: usize, b: usize, bolts: usize) -> usize {
    let steps = a.abs_diff(b);
    steps.min(bolts - steps)
}

fn open(order: &[usize], bolts: usize) -> impl Iterator<Item = usize> {
    let done: Vec<bool> = (0..bolts).map(|bolt| order.contains(&bolt)).collect();
    (0..bolts).filter(move |&bolt| !done[bolt])
}

/// The open bolt farthest from the last; among equals the one with the most room, then the lowest.
fn opposite(order: &[usize], bolts: usize) -> Option<usize> {
    let last = *order.last()?;
    first_best(open(order, bolts), |bolt| (apart(bolt, last, bolts), room(order, bolt, bolts)))
}

/// The open bolt with the most room; among equals the one farthest from the last, then the lowest.
fn widest(order: &[usize], bolts: usize) -> Option<usize> {
    let last = *order.last()?;
    first_best(open(order, bolts), |bolt| (room(order, bolt, bolts), apart(bolt, last, bolts)))
}

/// Steps to the nearest bolt that is done.
fn room(order: &[usize], bolt: usize, bolts: usize) -> usize {
    order.iter().map(|&done| apart(bolt, done, bolts)).min().unwrap_or(bolts)
}

/// The first of those with the highest score.
fn first_best<S: Ord>(
    bolts: impl Iterator<Item = usize>,
    score: impl Fn(usize) -> S,
) -> Option<usize> {
    bolts.reduce(|best, bolt| if score(bolt) > score(best) { bolt } else { best })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn fewer_than_two_bolts_have_no_order() {
        assert_eq!(tightening_order(0), None);
        assert_eq!(tightening_order(1), None);
        assert_eq!(tightening_order(2), Some(vec![1, 2]));
    }

    /// Common practice for flanges of four, six, eight and twelve bolts: opposite pairs, and the
    /// first two pairs as near to a right angle as the number allows.
    #[test]
    fn usual_flanges_go_across_the_circle() {
        assert_eq!(tightening_order(4).unwrap(), [1, 3, 2, 4]);
        assert_eq!(tightening_order(6).unwrap(), [1, 4, 2, 5, 3, 6]);
        assert_eq!(tightening_order(8).unwrap(), [1, 5, 3, 7, 2, 6, 4, 8]);
        assert_eq!(tightening_order(12).unwrap()[..4], [1, 7, 4, 10]);
    }

    proptest! {
        #[test]
        fn every_bolt_comes_once_and_the_circle_is_crossed(bolts in 2_usize..80) {
            let order = tightening_order(bolts).unwrap();
            let mut sorted = order.clone();
            sorted.sort_unstable();
            prop_assert_eq!(sorted, (1..=bolts).collect::<Vec<_>>());
            if bolts % 2 == 0 {
                for pair in order.chunks(2) {
                    prop_assert_eq!(pair[0].abs_diff(pair[1]), bolts / 2);
                }
            }
            if bolts % 4 == 0 {
                prop_assert_eq!(order[2].abs_diff(order[0]), bolts / 4);
            }
        }

        /// After any pair the widest open stretch is never wider than twice the even share.
        #[test]
        fn what_is_open_is_halved(bolts in 4_usize..80) {
            let order = tightening_order(bolts).unwrap();
            for done in (2..bolts).step_by(2) {
                let mut tight = order[..done].to_vec();
                tight.sort_unstable();
                let gap = |i: usize| (tight[(i + 1) % done] + bolts - tight[i] - 1) % bolts + 1;
                let widest = (0..done).map(gap).max().unwrap();
                let share = bolts.div_ceil(done);
                prop_assert!(widest <= 2 * share, "{bolts}: {widest} open after {done}");
            }
        }

        /// From five bolts on, the first of the second pair and its partner are no neighbours.
        #[test]
        fn partners_are_no_neighbours(bolts in 5_usize..80) {
            let order = tightening_order(bolts).unwrap();
            for pair in order.chunks_exact(2).take(2) {
                prop_assert!(apart(pair[0], pair[1], bolts) > 1);
            }
        }
    }
}
