//! A batch of mixed adhesive, and what waits for it.

use crate::id::{BatchId, ClubId};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A batch: one cup of adhesive and the clubs glued from it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Batch {
    /// Identity.
    pub id: BatchId,
    /// The running number that people say.
    pub number: i64,
    /// Code of the adhesive model.
    pub adhesive: String,
    /// Lot on the tins.
    pub lot: String,
    /// Clubs glued from it.
    pub clubs: Vec<ClubId>,
    /// Share of spacers in the mass of the mix, percent.
    pub bead_share_percent: f64,
    /// Temperature of the room where it cures.
    pub room_c: f64,
    /// Resin weighed out.
    pub resin_g: f64,
    /// Hardener weighed out.
    pub hardener_g: f64,
    /// Spacers weighed out.
    pub beads_g: f64,
    /// When mixing began: the pot-life clock.
    #[schema(value_type = String, format = DateTime)]
    pub mixed_at: Timestamp,
    /// Who mixed it.
    pub by: String,
}
