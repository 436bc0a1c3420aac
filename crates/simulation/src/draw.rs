//! Random draws, each from its own named stream: what one part of the simulation draws never moves another's draws, so
//! that every strategy meets the same shop, the same parts and the same scale.

use rand_pcg::Pcg64Mcg;
use rand_pcg::rand_core::{Rng, SeedableRng};

/// What a stream is for; the first step of its path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(u64)]
pub enum Stream {
    /// True values of a shop.
    Shop = 1,
    /// True values of a head model.
    Head,
    /// True values of a grip model.
    Grip,
    /// What one day and one mix do to all clubs of a job.
    Day,
    /// Parts in the boxes.
    Parts,
    /// What the hand does to one club.
    Club,
    /// Noise of one reading.
    Reading,
    /// What goes wrong.
    Blunder,
    /// In which form a shop's clubs differ from what is believed, and what its scale is always off by.
    Form,
    /// What a builder takes his own shop's figures for.
    Figures,
}

/// A stream of draws.
#[derive(Debug, Clone)]
pub struct Draw(Pcg64Mcg);

impl Draw {
    /// The stream with this seed and path.
    #[must_use]
    pub fn of(seed: u64, stream: Stream, path: &[u64]) -> Self {
        let start = mix(seed ^ 0x5e7c_0ffe_e000_0001);
        let state = path.iter().fold(mix(start ^ stream as u64), |state, step| mix(state ^ step.wrapping_add(1)));
        Self(Pcg64Mcg::seed_from_u64(state))
    }

    /// Uniform in 0 … 1, both ends excluded.
    fn unit(&mut self) -> f64 {
        ((self.0.next_u64() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    /// Uniform between two values.
    pub fn uniform(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// Normal (Box and Muller, 1958). Not that of a library: another way to draw would make other shops of the same seed,
    /// and every figure of `docs/simulation.md` is of these.
    pub fn normal(&mut self, mean: f64, sd: f64) -> f64 {
        let radius = (-2.0 * self.unit().ln()).sqrt();
        mean + sd * radius * (std::f64::consts::TAU * self.unit()).cos()
    }

    /// Whether something of this probability happens.
    pub fn happens(&mut self, probability: f64) -> bool {
        self.unit() < probability
    }

    /// A whole number below a limit.
    pub fn below(&mut self, limit: usize) -> usize {
        ((self.unit() * limit as f64) as usize).min(limit.saturating_sub(1))
    }

    /// −1 or 1.
    pub fn sign(&mut self) -> f64 {
        if self.happens(0.5) { 1.0 } else { -1.0 }
    }
}

/// The finaliser of `SplitMix64` (G. Steele, D. Lea, C. Flood, 2014).
const fn mix(value: u64) -> u64 {
    let z = value.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}
