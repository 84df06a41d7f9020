//! Packs of whole shims from a stock of thicknesses.
//!
//! The best pack lies closest to the wanted thickness; among those, the one of fewest shims. It is
//! found exactly, from every sum that so many shims can make, not by taking the thickest that fits.
//! Thicknesses are counted in whole nanometres, so that inch sizes stay whole.
//!
//! Thick shims are nominal: measure them before use. A pack has its thin ones in the middle,
//! where the thick ones keep them flat.

use std::collections::BTreeMap;

use quantities::{Basis, Kind, Length, Physical, Source, Value, Working, both};

use crate::moves::FootPlane;

/// Shims under one foot at most, by common practice; some books say three.
pub const USUAL_MOST: usize = 5;
/// More shims than this are refused.
const MOST: usize = 8;
/// More sums than this are refused: a stock of that many odd sizes is no stock.
const MOST_SUMS: usize = 500_000;

/// Why there is no pack.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum ShimError {
    /// A thickness or a move that is no number or not below a metre, a thickness not positive in the
    /// stock, or negative as wanted.
    #[error("{} is no thickness for a shim; expected more than nothing and less than a metre", both(.0))]
    Thickness(Length),
    /// Nothing in stock.
    #[error("there are no shims in stock; list the thicknesses at hand")]
    NoStock,
    /// More than eight shims, or none allowed.
    #[error("{0} shims in a pack; between 1 and 8 can be asked for")]
    Count(usize),
    /// Stock and number of shims make too many sums to go through.
    #[error(
        "the stock makes more than {MOST_SUMS} different packs; list fewer thicknesses, or allow fewer shims in a pack"
    )]
    TooMany,
}

/// A pack: thickest outside, thin ones in the middle.
#[derive(Clone, Debug, PartialEq)]
pub struct Pack {
    /// What was wanted.
    pub wanted: Length,
    /// Its shims, from the base up.
    pub shims: Vec<Length>,
}

impl Pack {
    fn new(wanted: Length, mut nm: Vec<i64>) -> Self {
        nm.sort_unstable_by(|a, b| b.cmp(a));
        let below: Vec<i64> = nm.iter().copied().step_by(2).collect();
        let above = nm.iter().copied().skip(1).step_by(2).rev();
        let shims = below.into_iter().chain(above).map(thickness).collect();
        Self { wanted, shims }
    }

    /// All of its shims together.
    pub fn total(&self) -> Length {
        thickness(self.shims.iter().map(|shim| nanometres(*shim)).fold(0, i64::saturating_add))
    }

    /// Total minus wanted.
    pub fn deviation(&self) -> Length {
        self.total() - self.wanted
    }

    /// How it was found.
    pub fn working(&self) -> Working {
        let shown = |length| Value::new(Kind::Allowance, length);
        let count = u32::try_from(self.shims.len()).unwrap_or(u32::MAX);
        Working::new(
            "Shim pack",
            "e = Σ − w",
            shown(self.deviation()),
            Source::new("Every sum of so many shims", "closest, then fewest", Basis::Computed),
        )
        .term("Σ", "shims of the pack together", shown(self.total()))
        .term("w", "thickness wanted", shown(self.wanted))
        .term("n", "shims in the pack", Value::count(count))
        .valid("nominal thicknesses; measure the thick ones")
    }
}

/// The best pack of at most `most` shims out of `stock`, each thickness as often as needed.
///
/// Least deviation from `wanted`, then fewest shims; of two as close and as few, the thinner.
/// # Errors
/// [`ShimError`].
/// # Example
/// ```
/// use lineup::shims::pack;
/// use quantities::{Length, Physical};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let pack = pack(mm(1.30), &[mm(1.0), mm(0.5), mm(0.4)], 5)?;
/// assert_eq!(pack.shims.len(), 3); // 0.5 + 0.4 + 0.4; the thickest first, 1.0, leaves 0.3 open
/// assert!(pack.deviation().si().abs() < 1e-9);
/// # Ok::<(), lineup::shims::ShimError>(())
/// ```
pub fn pack(wanted: Length, stock: &[Length], most: usize) -> Result<Pack, ShimError> {
    let sums = Sums::new(wanted, stock, most)?;
    let best = sums.closest(nanometres(wanted), most);
    Ok(Pack::new(wanted, best.shims))
}

/// A pack changed into another.
#[derive(Clone, Debug, PartialEq)]
pub struct Repack {
    /// The pack afterwards.
    pub pack: Pack,
    /// Out of the pack that lies there.
    pub take_out: Vec<Length>,
    /// From the stock.
    pub put_in: Vec<Length>,
}

/// The best pack that can be made of the shims that lie there and of the stock.
///
/// Least deviation from `wanted`, then fewest shims, then fewest taken out and put in.
/// # Errors
/// [`ShimError`]; a pack of more than eight cannot be gone through.
pub fn repack(
    there: &[Length],
    wanted: Length,
    stock: &[Length],
    most: usize,
) -> Result<Repack, ShimError> {
    let sums = Sums::new(wanted, stock, most)?;
    let there_nm: Vec<i64> = there.iter().map(|shim| positive(*shim)).collect::<Result<_, _>>()?;
    if there_nm.len() > MOST {
        return Err(ShimError::Count(there_nm.len()));
    }
    let goal = nanometres(wanted);
    let mut best: Option<((i64, usize, usize), Repack)> = None;
    for chosen in 0..1_usize << there_nm.len() {
        let split = |kept: bool| {
            let side = move |i: &usize| ((chosen >> i) & 1 == 1) == kept;
            let there_nm = &there_nm;
            (0..there_nm.len()).filter(side).map(move |i| there_nm[i]).collect::<Vec<i64>>()
        };
        let (kept, out) = (split(true), split(false));
        if kept.len() > most {
            continue;
        }
        let new = sums.closest(goal - kept.iter().sum::<i64>(), most - kept.len());
        let rank = (new.off, kept.len() + new.shims.len(), out.len() + new.shims.len());
        if best.as_ref().is_none_or(|(least, _)| rank < *least) {
            let shims = kept.iter().chain(&new.shims).copied().collect();
            let lengths = |nm: Vec<i64>| nm.into_iter().map(thickness).collect();
            let pack = Pack::new(wanted, shims);
            best =
                Some((rank, Repack { pack, take_out: lengths(out), put_in: lengths(new.shims) }));
        }
    }
    best.map(|(_, repack)| repack).ok_or(ShimError::NoStock)
}

/// Every move that whole shims allow at a foot, least first, between `low` and `high`.
///
/// Where the pack that lies there is known shim by shim, any of them may stay and others join them,
/// `most` in all. Where only its height is known, shims are laid on it, or it is made up anew; where
/// not even that, as much as the stock can make may come out.
///
/// # Errors
/// [`ShimError`].
/// # Example
/// ```
/// use lineup::moves::FootPlane;
/// use lineup::shims::reachable;
/// use quantities::{Length, Physical};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let foot = FootPlane { shims: Some(mm(2.0)), ..FootPlane::new("front", mm(300.0)) };
/// let moves = reachable(&foot, &[mm(0.2), mm(1.0)], 3, (mm(-1.0), mm(0.3)))?;
/// let shown: Vec<String> = moves.iter().map(|m| format!("{:.1}", m.si() * 1e3)).collect();
/// assert_eq!(shown, ["-1.0", "-0.8", "-0.6", "0.0", "0.2"]); // 1.0, 1.2, 1.4 anew; none; 0.2 on top
/// # Ok::<(), lineup::shims::ShimError>(())
/// ```
pub fn reachable(
    foot: &FootPlane,
    stock: &[Length],
    most: usize,
    (low, high): (Length, Length),
) -> Result<Vec<Length>, ShimError> {
    let there: Vec<i64> = foot.pack.iter().map(|shim| positive(*shim)).collect::<Result<_, _>>()?;
    if there.len() > MOST {
        return Err(ShimError::Count(there.len()));
    }
    let listed: i64 = there.iter().sum();
    let stated = foot.shims.map_or(Ok(0), within)?;
    let lying = if there.is_empty() { stated } else { listed };
    let (low, high) = (within(low)?, within(high)?);
    let widest = thickness((lying + high).max(-low).max(0));
    let sums = Sums::new(widest, stock, most)?;
    let mut moves = std::collections::BTreeSet::from([0]);
    if there.is_empty() {
        let all = || sums.made_of.keys().copied();
        moves.extend(all());
        moves.extend(match foot.shims {
            Some(_) => all().map(|sum| sum - lying).collect::<Vec<i64>>(),
            None => all().map(|sum| -sum).collect(),
        });
    } else {
        let kept: std::collections::BTreeSet<(usize, i64)> = subsets(&there)
            .map(|kept| (kept.len(), kept.iter().sum()))
            .filter(|(count, _)| *count <= most)
            .collect();
        for (count, stays) in kept {
            let joined = sums.made_of.iter().filter(|(_, (new, _))| count + new <= most);
            moves.extend(joined.map(|(sum, _)| stays + sum - listed));
        }
    }
    Ok(moves.into_iter().filter(|up| (low..=high).contains(up)).map(thickness).collect())
}

fn subsets(all: &[i64]) -> impl Iterator<Item = Vec<i64>> + '_ {
    (0..1_usize << all.len()).map(|chosen| {
        let is_in = |i: &usize| (chosen >> i) & 1 == 1;
        (0..all.len()).filter(is_in).map(|i| all[i]).collect()
    })
}

/// Every sum that up to so many shims can make, with the fewest that make it.
struct Sums {
    /// Sum to (number of shims, the last one of them), all in nanometres.
    made_of: BTreeMap<i64, (usize, i64)>,
}

struct Closest {
    off: i64,
    shims: Vec<i64>,
}

impl Sums {
    fn new(wanted: Length, stock: &[Length], most: usize) -> Result<Self, ShimError> {
        if most == 0 || most > MOST {
            return Err(ShimError::Count(most));
        }
        if !(wanted.si() >= 0.0 && wanted.si() < 1.0) {
            return Err(ShimError::Thickness(wanted));
        }
        let mut stock: Vec<i64> =
            stock.iter().map(|shim| positive(*shim)).collect::<Result<_, _>>()?;
        stock.sort_unstable();
        stock.dedup();
        let thickest = *stock.last().ok_or(ShimError::NoStock)?;
        // One shim too many may still be closest; two never are.
        let limit = nanometres(wanted) + thickest;
        let mut made_of = BTreeMap::from([(0, (0, 0))]);
        let mut newest = vec![0];
        for count in 1..=most {
            let mut next = Vec::new();
            for (base, shim) in newest.iter().flat_map(|base| stock.iter().map(move |s| (base, s)))
            {
                let sum = base + shim;
                if sum <= limit && !made_of.contains_key(&sum) {
                    made_of.insert(sum, (count, *shim));
                    next.push(sum);
                }
            }
            if made_of.len() > MOST_SUMS {
                return Err(ShimError::TooMany);
            }
            newest = next;
        }
        Ok(Self { made_of })
    }

    /// The sum of at most `most` shims that lies closest to `goal`.
    fn closest(&self, goal: i64, most: usize) -> Closest {
        let few = |(_, (count, _)): &(&i64, &(usize, i64))| *count <= most;
        let below = self.made_of.range(..=goal).rev().find(few);
        let above = self.made_of.range(goal..).find(few);
        let rank = |(sum, (count, _)): &(&i64, &(usize, i64))| ((*sum - goal).abs(), *count, **sum);
        let sum = below.into_iter().chain(above).min_by_key(rank).map_or(0, |(sum, _)| *sum);
        let mut shims = Vec::new();
        let mut rest = sum;
        while let Some(&(_, shim)) = self.made_of.get(&rest).filter(|(count, _)| *count > 0) {
            shims.push(shim);
            rest -= shim;
        }
        Closest { off: (sum - goal).abs(), shims }
    }
}

fn positive(shim: Length) -> Result<i64, ShimError> {
    let nm = nanometres(shim);
    if shim.si() < 1.0 && nm > 0 { Ok(nm) } else { Err(ShimError::Thickness(shim)) }
}

/// Of either sign, below a metre.
fn within(length: Length) -> Result<i64, ShimError> {
    if length.si().abs() < 1.0 { Ok(nanometres(length)) } else { Err(ShimError::Thickness(length)) }
}

#[expect(clippy::cast_possible_truncation, reason = "below a metre, checked by the callers")]
fn nanometres(length: Length) -> i64 {
    (length.si() * 1e9).round() as i64
}

#[expect(clippy::cast_precision_loss, reason = "a pack is far below 2^53 nm")]
fn thickness(nm: i64) -> Length {
    Length::from_si(nm as f64 * 1e-9)
}
