//! Draws that several tests share.

use rand::RngExt;
use rand_pcg::Pcg64Mcg;

/// Standard normal by Box and Muller. Not that of a library: bounds in these tests hold for these very draws.
pub fn normal(rng: &mut Pcg64Mcg) -> f64 {
    let (radius, turn): (f64, f64) = (1.0 - rng.random::<f64>(), rng.random());
    (-2.0 * radius.ln()).sqrt() * (std::f64::consts::TAU * turn).cos()
}
