//! Heads as received that cannot be bent far enough.

use trade::head::HeadModel;

/// How far off its figure a head may end without a word, in degrees: what makers allow themselves. Common practice,
/// no source.
const NEAR_DEG: f64 = 1.0;

fact::facts! {
    /// A head as received that cannot be bent to its model's figures.
    pub enum BendDoubt: "bend_doubt" {
        /// The loft is too far off.
        Loft {
            /// As received.
            is_deg: f64,
            /// How far off the model's.
            off_deg: f64,
            /// The model's.
            model_deg: f64,
            /// Least that it can be bent to.
            least_deg: f64,
            /// Most that it can be bent to.
            most_deg: f64,
        },
        /// The lie is too far off.
        Lie {
            /// As received.
            is_deg: f64,
            /// How far off the model's.
            off_deg: f64,
            /// The model's.
            model_deg: f64,
            /// Least that it can be bent to.
            least_deg: f64,
            /// Most that it can be bent to.
            most_deg: f64,
        },
        /// The loft is off, and the head must not be bent.
        LoftUnbendable {
            /// As received.
            is_deg: f64,
            /// How far off the model's.
            off_deg: f64,
            /// The model's.
            model_deg: f64,
        },
        /// The lie is off, and the head must not be bent.
        LieUnbendable {
            /// As received.
            is_deg: f64,
            /// How far off the model's.
            off_deg: f64,
            /// The model's.
            model_deg: f64,
        },
    }
}

/// What is doubtful about a head's loft and lie as received: how far the maker lets it be bent, where the model's own
/// figure is beyond that. Told at the weigh-in, since a head is bent for nothing once it is glued and cannot reach.
#[must_use]
pub fn bend_doubts(head: &HeadModel, number: &str, loft_deg: Option<f64>, lie_deg: Option<f64>) -> Vec<BendDoubt> {
    let Some(own) = head.number(number) else { return Vec::new() };
    let limit_deg = head.bend_limit_deg;
    let too_far = |received: Option<f64>, model_deg: f64| {
        let is_deg = received.filter(|deg| deg.is_finite())?;
        let off_deg = (model_deg - is_deg).abs();
        (off_deg > limit_deg + NEAR_DEG + 1e-9).then_some((is_deg, off_deg, model_deg))
    };
    let bendable = limit_deg > 0.0;
    let loft = too_far(loft_deg, own.loft_deg).map(|(is_deg, off_deg, model_deg)| {
        let (least_deg, most_deg) = (is_deg - limit_deg, is_deg + limit_deg);
        if bendable {
            BendDoubt::Loft { is_deg, off_deg, model_deg, least_deg, most_deg }
        } else {
            BendDoubt::LoftUnbendable { is_deg, off_deg, model_deg }
        }
    });
    let lie = too_far(lie_deg, own.lie_deg).map(|(is_deg, off_deg, model_deg)| {
        let (least_deg, most_deg) = (is_deg - limit_deg, is_deg + limit_deg);
        if bendable {
            BendDoubt::Lie { is_deg, off_deg, model_deg, least_deg, most_deg }
        } else {
            BendDoubt::LieUnbendable { is_deg, off_deg, model_deg }
        }
    });
    loft.into_iter().chain(lie).collect()
}
