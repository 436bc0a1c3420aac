//! The generator of random numbers that the search draws its moves from.
//!
//! Not that of a library: the plan of a given stock must be the same on every machine and after every update, and a
//! library may change what it draws. The first numbers are held against the published generator.

/// Stirs 64 bits: the finish of SplitMix64. Every step can be undone, so different words stay different.
pub(crate) const fn stirred(x: u64) -> u64 {
    let x = (x ^ (x >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let x = (x ^ (x >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    x ^ (x >> 31)
}

/// SplitMix64 (Steele, Lea & Flood 2014): small, seedable, good enough to draw instances and to shuffle.
#[derive(Debug, Clone)]
pub struct Rng(u64);

impl Rng {
    /// A generator from a seed.
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// Next 64 random bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        stirred(self.0)
    }

    /// Uniform in [low, high).
    pub fn uniform(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Below `n` (0 for n = 0).
    pub fn below(&mut self, n: usize) -> usize {
        ((u128::from(self.bits()) * n as u128) >> 64) as usize
    }
}

#[cfg(test)]
mod tests {
    use super::Rng;

    /// First outputs for the seed 1234567, as published with the reference implementation (Vigna, `splitmix64.c`; the
    /// figures are those of Rosetta Code's task "Pseudo-random numbers/Splitmix64", from memory) and worked out again
    /// with whole numbers of any size in Python:
    /// `s=(s+0x9e3779b97f4a7c15)%2**64; z=(s^s>>30)*0xbf58476d1ce4e5b9%2**64; z=(z^z>>27)*0x94d049bb133111eb%2**64; z^z>>31`.
    #[test]
    fn the_first_numbers_are_those_of_the_published_generator() {
        let mut rng = Rng::new(1_234_567);
        let drawn: Vec<u64> = (0..5).map(|_| rng.bits()).collect();
        assert_eq!(
            drawn,
            [
                6_457_827_717_110_365_317,
                3_203_168_211_198_807_973,
                9_817_491_932_198_370_423,
                4_593_380_528_125_082_431,
                16_408_922_859_458_223_821
            ]
        );
    }
}
