//! What can be done to a club that is under way: one word for plans, remedies and what was added.

use crate::kind::closed_list;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// What is done.
    Action {
        /// Another weight, or pair of weights, in the tip.
        TipWeight = "tip_weight";
        /// Another grip.
        Grip = "grip";
        /// Another ferrule.
        Ferrule = "ferrule";
        /// Another head of the same number.
        Head = "head";
        /// Another adapter.
        Adapter = "adapter";
        /// Another screw in the head.
        Screw = "screw";
        /// Lead tape on the head.
        LeadTape = "lead_tape";
        /// Powder in the tip, held by a stopper.
        Powder = "powder";
        /// A weight in the butt.
        Counterweight = "counterweight";
        /// One more strip under the lower hand.
        LowerHandTape = "lower_hand_tape";
        /// The butt cut a little more.
        Cut = "cut";
        /// The butt extended a little.
        ButtExtension = "butt_extension";
        /// The grip off and another on.
        ReGrip = "re_grip";
        /// The head pulled and the joint made anew.
        PullHead = "pull_head";
    }
}

impl Action {
    /// About how many minutes it takes (common practice, no source).
    #[must_use]
    pub const fn minutes(self) -> f64 {
        match self {
            Self::TipWeight | Self::Grip => 1.0,
            Self::Ferrule | Self::Screw => 2.0,
            Self::LeadTape | Self::LowerHandTape => 3.0,
            Self::Head | Self::Adapter | Self::Powder | Self::Cut => 5.0,
            Self::Counterweight | Self::ButtExtension => 10.0,
            Self::ReGrip => 15.0,
            Self::PullHead => 60.0,
        }
    }

    /// Whether it can be undone at the bench without loss.
    #[must_use]
    pub const fn can_be_undone(self) -> bool {
        !matches!(self, Self::Cut | Self::ReGrip | Self::PullHead | Self::ButtExtension)
    }
}
