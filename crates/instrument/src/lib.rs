//! Recordings and weighing scales.
