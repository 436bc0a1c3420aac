//! Pages, JSON API and live events.
