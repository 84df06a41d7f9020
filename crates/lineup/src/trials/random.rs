//! Numbers at random, some at a time side by side.
//!
//! Each lane has a generator of its own, xoshiro128++, that starts elsewhere. Numbers have single
//! precision, 24 bits: what a million trials can tell ends at the tenth. Every step is an addition, a
//! product, a quotient or a root, rounded as IEEE 754 has it, and none are fused: so every machine draws
//! the same, however wide its registers are.
//!
//! Normal numbers come in pairs: a point of the plane whose two numbers are normal lies at any angle
//! alike, and the square of its distance falls off as `e^(−r²/2)`.
//!
//! ```text
//! r = √(−2·ln u)      x = r·cos φ      y = r·sin φ
//! ```
//!
//! `u` has 31 bits, so that nothing lies beyond 6.7, where one of 10¹⁰ would.
//!
//! Source: Blackman and Vigna, "Scrambled linear pseudorandom number generators" (2021); Box and
//! Muller (1958); both from memory.

#![expect(
    clippy::inline_always,
    reason = "what is inlined has the width that the caller was chosen for"
)]
#![expect(
    clippy::cast_possible_wrap,
    clippy::cast_precision_loss,
    reason = "bits become numbers here"
)]

use rand_xoshiro::SplitMix64;
use rand_xoshiro::rand_core::{Rng, SeedableRng};

/// Trials side by side.
pub(super) const LANES: usize = 16;
/// One number of each of them.
pub(super) type Lanes = [f32; LANES];
/// 32 bits of each.
type Bits = [u32; LANES];

/// Where numbers at random come from.
pub(super) struct Random {
    state: [Bits; 4],
}

impl Random {
    pub fn new(seed: u64) -> Self {
        let mut start = SplitMix64::seed_from_u64(seed);
        let mut state = [[0; LANES]; 4];
        for lane in 0..LANES {
            for word in &mut state {
                word[lane] = (start.next_u64() >> 32) as u32;
            }
        }
        Self { state }
    }

    #[inline(always)]
    fn bits(&mut self) -> Bits {
        let [a, b, c, d] = &mut self.state;
        let mut drawn = [0; LANES];
        for (lane, drawn) in drawn.iter_mut().enumerate() {
            *drawn = a[lane].wrapping_add(d[lane]).rotate_left(7).wrapping_add(a[lane]);
            let shifted = b[lane] << 9;
            c[lane] ^= a[lane];
            d[lane] ^= b[lane];
            b[lane] ^= c[lane];
            a[lane] ^= d[lane];
            c[lane] ^= shifted;
            d[lane] = d[lane].rotate_left(11);
        }
        drawn
    }

    /// Evenly between −1 and 1.
    #[inline(always)]
    pub fn even(&mut self) -> Lanes {
        let (bits, mut evenly) = (self.bits(), [0.0; LANES]);
        for (evenly, bits) in evenly.iter_mut().zip(bits) {
            *evenly = even(bits);
        }
        evenly
    }

    /// Two numbers evenly between −1 and 1, each in 65 536 steps.
    #[inline(always)]
    pub fn two_coarse(&mut self) -> [Lanes; 2] {
        const MIDDLE: u32 = 1 << 15;
        let (bits, mut high, mut low) = (self.bits(), [0.0; LANES], [0.0; LANES]);
        for ((high, low), bits) in high.iter_mut().zip(&mut low).zip(bits) {
            *high = even(bits & 0xffff_0000 | MIDDLE);
            *low = even(bits << 16 | MIDDLE);
        }
        [high, low]
    }

    /// Cosine and sine of an angle, all of them alike likely.
    #[inline(always)]
    pub fn circle(&mut self) -> [Lanes; 2] {
        let (mut cos, mut sin) = (self.even(), [0.0; LANES]);
        for (cos, sin) in cos.iter_mut().zip(&mut sin) {
            (*cos, *sin) = cos_sin(*cos);
        }
        [cos, sin]
    }

    /// Two normal numbers of mean 0 and deviation 1.
    #[inline(always)]
    pub fn two_normal(&mut self) -> [Lanes; 2] {
        let far = self.bits();
        let mut two = self.circle();
        let [x, y] = &mut two;
        for ((bits, x), y) in far.iter().zip(x).zip(y) {
            let u = ((bits >> 1) as i32 as f32 + 0.5) * (1.0 / HALF);
            let r = (-2.0 * ln(u)).sqrt();
            *x *= r;
            *y *= r;
        }
        two
    }
}

/// Half of what 32 bits count to.
const HALF: f32 = 2_147_483_648.0;

#[inline(always)]
fn even(bits: u32) -> f32 {
    bits as i32 as f32 * (1.0 / HALF)
}

/// Of half a turn times this: series for a quarter of it, then twice that, twice.
#[inline(always)]
fn cos_sin(of_half_a_turn: f32) -> (f32, f32) {
    let x = of_half_a_turn * std::f32::consts::FRAC_PI_4;
    let y = x * x;
    let sin =
        x + x * y * (-1.0 / 6.0 + y * (1.0 / 120.0 + y * (-1.0 / 5040.0 + y * (1.0 / 362_880.0))));
    let cos = 1.0 + y * (-1.0 / 2.0 + y * (1.0 / 24.0 + y * (-1.0 / 720.0 + y * (1.0 / 40_320.0))));
    let (sin, cos) = (2.0 * sin * cos, 1.0 - 2.0 * sin * sin);
    (1.0 - 2.0 * sin * sin, 2.0 * sin * cos)
}

/// Of a normal number up to one: `ln(m·2ᵉ) = e·ln 2 + 2·artanh((m − 1)/(m + 1))`, m about one.
#[inline(always)]
fn ln(x: f32) -> f32 {
    const ROOT_HALF: u32 = std::f32::consts::FRAC_1_SQRT_2.to_bits();
    let doublings = (x.to_bits().wrapping_sub(ROOT_HALF) as i32) >> 23;
    let m = f32::from_bits(x.to_bits().wrapping_sub(doublings.cast_unsigned() << 23));
    let s = (m - 1.0) / (m + 1.0);
    let y = s * s;
    let series = 1.0 / 3.0 + y * (1.0 / 5.0 + y * (1.0 / 7.0 + y * (1.0 / 9.0)));
    doublings as f32 * std::f32::consts::LN_2 + 2.0 * (s + s * y * series)
}

#[cfg(test)]
#[expect(clippy::cast_possible_truncation, reason = "numbers of single precision are asked about")]
mod tests {
    use rand_xoshiro::Xoshiro128PlusPlus;

    use super::*;

    /// Each lane beside the generator of `rand_xoshiro`, which is held to its authors' own numbers.
    #[test]
    fn every_lane_is_the_known_generator() {
        let mut ours = Random::new(7);
        let mut known: Vec<Xoshiro128PlusPlus> = (0..LANES)
            .map(|lane| {
                let words = ours.state.map(|word| word[lane].to_le_bytes());
                let bytes: Vec<u8> = words.into_iter().flatten().collect();
                Xoshiro128PlusPlus::from_seed(bytes.try_into().unwrap())
            })
            .collect();
        for _ in 0..1000 {
            let wanted: Vec<u32> = known.iter_mut().map(Rng::next_u32).collect();
            assert_eq!(ours.bits().to_vec(), wanted);
        }
    }

    /// The series beside the standard library's functions in double precision.
    #[test]
    fn the_series_have_single_precision() {
        for k in -10_000_i16..=10_000 {
            let t = f32::from(k) / 10_000.0;
            let (cos, sin) = cos_sin(t);
            let (wanted_sin, wanted_cos) = (f64::from(t) * std::f64::consts::PI).sin_cos();
            let off = (f64::from(cos) - wanted_cos).abs().max((f64::from(sin) - wanted_sin).abs());
            // Sixteen units of the last of 24 bits.
            assert!(off < 2_f64.powi(-20), "{t}: {off}");
        }
        for k in 1..=1_000_000_u32 {
            let u = (f64::from(k) / 1e6).powi(4).max(2_f64.powi(-32)) as f32;
            let wanted = f64::from(u).ln();
            let off = (f64::from(ln(u)) - wanted).abs();
            assert!(off <= 3e-7 * wanted.abs().max(1e-30), "{u}: {off} of {wanted}");
        }
    }

    /// Shares below −4 … 4 against Φ (Abramowitz and Stegun, Table 26.1; from memory), within four
    /// standard deviations of the count.
    #[test]
    fn so_many_lie_below_as_the_table_says() {
        let table = [
            (-4.0, 0.000_031_671),
            (-3.5, 0.000_232_629),
            (-3.0, 0.001_349_898),
            (-2.0, 0.022_750_132),
            (-1.0, 0.158_655_254),
            (-0.25, 0.401_293_674),
            (0.0, 0.5),
            (0.5, 0.691_462_461),
            (1.5, 0.933_192_799),
            (2.5, 0.993_790_335),
            (3.5, 0.999_767_371),
        ];
        let mut random = Random::new(7);
        let mut drawn = Vec::new();
        while drawn.len() < 4_000_000 {
            drawn.extend(random.two_normal().into_iter().flatten());
        }
        shares(&drawn, &table);
    }

    /// Whatever is drawn evenly: a share of a half, a quarter, a tenth on either side.
    #[test]
    fn even_is_even() {
        let table = [(-0.9, 0.05), (-0.5, 0.25), (0.0, 0.5), (0.2, 0.6), (0.98, 0.99)];
        let mut random = Random::new(8);
        let (mut fine, mut coarse) = (Vec::new(), Vec::new());
        while fine.len() < 1_000_000 {
            fine.extend(random.even());
            coarse.extend(random.two_coarse().into_iter().flatten());
        }
        shares(&fine, &table);
        shares(&coarse, &table);
    }

    /// Neighbours in a pair, in time and in lane have nothing to do with each other.
    #[test]
    fn neighbours_do_not_know_each_other() {
        let mut random = Random::new(9);
        let (mut pairs, mut sums, mut before) = (0.0, [0.0; 3], [0.0; LANES]);
        for _ in 0..50_000 {
            let [x, y] = random.two_normal().map(|lanes| lanes.map(f64::from));
            for lane in 0..LANES {
                pairs += 1.0;
                sums[0] += x[lane] * y[lane];
                sums[1] += x[lane] * before[lane];
                sums[2] += x[lane] * x[(lane + 1) % LANES];
            }
            before = x;
        }
        for sum in sums {
            assert!(sum.abs() < 4.0 * f64::sqrt(pairs), "{sum} of {pairs}");
        }
    }

    #[track_caller]
    fn shares(drawn: &[f32], table: &[(f32, f64)]) {
        let trials = drawn.len() as f64;
        for (z, share) in table {
            let below = drawn.iter().filter(|drawn| *drawn < z).count() as f64;
            let off = (below - share * trials) / (share * (1.0 - share) * trials).sqrt();
            assert!(off.abs() < 4.0, "{z}: {off} deviations");
        }
    }
}
