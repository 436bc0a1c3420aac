//! Pages, JSON API and live events.

pub mod assets;
pub mod look;
