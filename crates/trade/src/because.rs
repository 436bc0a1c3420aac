//! Why something was taken back or changed, where the program itself gives the reason.
//!
//! What somebody types as a reason is kept as typed ([`typed`]). Both are facts, so that a reason of the program is told in
//! the language of whoever reads it; those that an earlier version kept as a sentence are told as they are.

use crate::club_name::ClubName;
use crate::model::PartKind;
use fact::Told;

fact::facts! {
    /// Why a reading was taken back, or a part changed hands, without anybody having typed a reason.
    pub enum Because: "because" {
        /// Somebody said that a reading was wrong, and no more.
        Wrong,
        /// A reading speaks of a part that was exchanged since.
        OtherPart {
            /// Of which kind.
            kind: PartKind,
            /// What was typed as the reason of the exchange.
            reason: Option<String>,
        },
        /// A reading speaks of a club that had another one's piece in it.
        Exchanged {
            /// Of which kind.
            kind: PartKind,
            /// Whose it was.
            club: ClubName,
        },
        /// A reading speaks of a club that lost its plan since.
        PlanLost {
            /// What was typed as the reason of that.
            reason: Option<String>,
        },
        /// A part was reserved by hand, and the accepted plan does not use it.
        NotInPlan,
        /// The weigh-in that brought the part was taken back.
        WeighInBack,
    }
}

/// What somebody typed as a reason; none where nothing was typed.
#[must_use]
pub fn typed(reason: &str) -> Option<Told> {
    written(reason).map(Told::verbatim)
}

/// The same as a figure of another fact.
#[must_use]
pub fn written(reason: &str) -> Option<String> {
    Some(reason.trim()).filter(|reason| !reason.is_empty()).map(str::to_owned)
}
