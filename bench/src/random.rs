//! Numbers at random that are the same in every run.

/// The generator `SplitMix64` (Steele, Lea and Flood, 2014).
pub struct Random(u64);

impl Random {
    /// Starts at a seed.
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A number between two.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        let [_, _, bits @ ..] = (mixed ^ (mixed >> 31)).to_be_bytes();
        let bits = bits.iter().fold(0.0, |sum, byte| sum * 256.0 + f64::from(*byte));
        low + (high - low) * bits / 2.0_f64.powi(48)
    }
}
