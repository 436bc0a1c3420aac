//! Solvent that is left in a fresh grip.

/// Solvent left in a fresh grip: mean and standard deviation, g. An estimate from memory, weigh it; the forecast of a wet
/// grip and the cause "solvent is still in it" are of one figure.
pub const SOLVENT_G: (f64, f64) = (2.5, 1.0);

/// Hours after which a fresh grip is taken to be dry enough to read the club (from memory; the product's own sheet goes before
/// it, and weighing the club twice tells).
pub const SOLVENT_DRY_H: i64 = 2;
