//! Normal numbers, by the ziggurat: the bell is cut into layers of one area, so that nearly every draw
//! is a product.
//!
//! Source: Marsaglia and Tsang (2000), in the form of Doornik, "An improved ziggurat method to
//! generate normal random samples" (2005); from memory, the layers checked against their area.

use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::Rng;

const LAYERS: usize = 128;
/// Where the tail begins, and the area of every layer.
const TAIL: f64 = 3.442_619_855_899;
const AREA: f64 = 9.912_563_035_262_17e-3;

/// Draws normal numbers of mean 0 and deviation 1.
pub(super) struct Normal {
    /// Right ends of the layers, from the lowest up, and the part of each that lies wholly under the bell.
    layers: [(f64, f64); LAYERS],
}

impl Normal {
    pub fn new() -> Self {
        let mut ends = [0.0; LAYERS + 1];
        (ends[0], ends[1]) = (AREA / bell(TAIL), TAIL);
        for i in 2..LAYERS {
            ends[i] = (-2.0 * (AREA / ends[i - 1] + bell(ends[i - 1])).ln()).sqrt();
        }
        Self { layers: std::array::from_fn(|i| (ends[i], ends[i + 1] / ends[i])) }
    }

    pub fn draw(&self, random: &mut Xoshiro256PlusPlus) -> f64 {
        loop {
            let bits = random.next_u64();
            let layer = usize::from(bits.to_le_bytes()[0]) % LAYERS;
            let part = 2.0 * from_bits(bits) - 1.0;
            let (end, wholly) = self.layers[layer];
            if part.abs() < wholly {
                return part * end;
            }
            if layer == 0 {
                return tail(random).copysign(part);
            }
            let x = part * end;
            let (low, high) = (bell(end), bell(wholly * end));
            if low + from_bits(random.next_u64()) * (high - low) < bell(x) {
                return x;
            }
        }
    }
}

fn bell(x: f64) -> f64 {
    (-0.5 * x * x).exp()
}

/// From 0 to below 1, by the upper 52 bits.
fn from_bits(bits: u64) -> f64 {
    f64::from_bits(bits >> 12 | 0x3ff << 52) - 1.0
}

/// Beyond the last layer, as Marsaglia (1964) draws it.
fn tail(random: &mut Xoshiro256PlusPlus) -> f64 {
    loop {
        let [x, y] = [(); 2].map(|()| -(1.0 - from_bits(random.next_u64())).ln());
        let x = x / TAIL;
        if 2.0 * y >= x * x {
            return TAIL + x;
        }
    }
}

#[cfg(test)]
mod tests {
    use rand_xoshiro::rand_core::SeedableRng;

    use super::*;

    /// Every layer has the area of the lowest, tail and all, and they close at the top.
    #[test]
    fn the_layers_are_of_one_area() {
        let layers = Normal::new().layers;
        for (end, wholly) in &layers[1..LAYERS - 1] {
            let area = end * (bell(wholly * end) - bell(*end));
            assert!((area / AREA - 1.0).abs() < 1e-9, "{end}: {area}");
        }
        let (end, wholly) = layers[LAYERS - 1];
        assert!((end * (1.0 - bell(end)) / AREA - 1.0).abs() < 1e-6 && wholly == 0.0);
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
        let normal = Normal::new();
        let mut random = Xoshiro256PlusPlus::seed_from_u64(7);
        let trials = 400_000_u32;
        let mut below = [0_u32; 11];
        for _ in 0..trials {
            let drawn = normal.draw(&mut random);
            for (below, (z, _)) in below.iter_mut().zip(table) {
                *below += u32::from(drawn < z);
            }
        }
        for (below, (z, share)) in below.into_iter().zip(table) {
            let trials = f64::from(trials);
            let off = (f64::from(below) - share * trials) / (share * (1.0 - share) * trials).sqrt();
            assert!(off.abs() < 4.0, "{z}: {off} deviations");
        }
    }
}
