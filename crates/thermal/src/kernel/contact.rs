//! One-sided contact in the joint: where the bore presses on the shaft, and how hard.
//!
//! At every pair either the clearance is open and the force nil, or the clearance nil and the
//! force pushes: 0 ≤ C·λ + g ⊥ λ ≥ 0, a linear complementarity problem with a positive definite
//! matrix, which has one solution. No friction, no sticking.

use super::dense::{Cholesky, Full};

/// Rounds in which every pair that is wrong changes sides; nearly always enough.
const BOLD_ROUNDS: usize = 30;
/// Rounds in which only the last one does: that cannot go round in a circle (Murty).
const CAREFUL_ROUNDS: usize = 5_000;

/// The force at every pair (N) for the clearances (m) that there would be without contact.
///
/// Source: Murty, *Linear Complementarity, Linear and Nonlinear Programming*, chapter 4 (the
/// careful rounds); from memory.
pub(crate) fn forces_n(give: &Full, free_gap_m: &[f64], guess: &[f64]) -> Option<Vec<f64>> {
    let mut closed: Vec<bool> = (0..free_gap_m.len())
        .map(|k| guess.get(k).map_or(free_gap_m[k] < 0.0, |force| *force > 0.0))
        .collect();
    for round in 0..BOLD_ROUNDS + CAREFUL_ROUNDS {
        let force = pressed(give, free_gap_m, &closed)?;
        let gap = give.times(&force);
        let wrong = |k: usize| {
            if closed[k] { force[k] < 0.0 } else { gap[k] + free_gap_m[k] < -1e-15 }
        };
        let wrong: Vec<usize> = (0..closed.len()).filter(|&k| wrong(k)).collect();
        let change = if round < BOLD_ROUNDS { 0 } else { wrong.len().saturating_sub(1) };
        if wrong.is_empty() {
            return Some(force);
        }
        for &k in &wrong[change..] {
            closed[k] = !closed[k];
        }
    }
    None
}

/// The forces that close exactly the pairs that are said to be closed.
fn pressed(give: &Full, free_gap_m: &[f64], closed: &[bool]) -> Option<Vec<f64>> {
    let which: Vec<usize> = (0..closed.len()).filter(|&k| closed[k]).collect();
    let mut found: Vec<f64> = which.iter().map(|&k| -free_gap_m[k]).collect();
    Cholesky::new(which.len(), |i, j| give.row(which[j])[which[i]])?.solve(&mut found);
    let mut force = vec![0.0; closed.len()];
    for (&k, value) in which.iter().zip(found) {
        force[k] = value;
    }
    Some(force)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn chain(size: usize) -> Full {
        let distance = |i: usize, j: usize| super::super::grading::as_float(i.abs_diff(j));
        let values = (0..size * size).map(|k| (-distance(k / size, k % size) / 2.0).exp() * 1e-9);
        Full::from_rows(size, values.collect())
    }

    proptest! {
        /// Open pairs carry nothing, closed ones are not open, nothing pulls and nothing overlaps.
        #[test]
        fn every_pair_is_open_or_pressed(gap in proptest::collection::vec(-1e-4..1e-4_f64, 1..24)) {
            let give = chain(gap.len());
            let force = forces_n(&give, &gap, &[]).unwrap();
            let left = give.times(&force);
            for k in 0..gap.len() {
                let open = gap[k] + left[k];
                prop_assert!(force[k] >= 0.0 && open > -1e-12, "{} {}", force[k], open);
                prop_assert!(force[k] * open.abs() < 1e-9, "{} {}", force[k], open);
            }
        }
    }

    #[test]
    fn a_joint_that_is_open_carries_nothing() {
        assert_eq!(forces_n(&chain(3), &[1e-6; 3], &[1.0; 3]).unwrap(), vec![0.0; 3]);
        assert!(forces_n(&chain(0), &[], &[]).unwrap().is_empty());
    }
}
