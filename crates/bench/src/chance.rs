//! A chance and a finish as people say them.

use crate::belief::Finish;
use quantity::{SwingWeight, decimal};

fact::facts! {
    /// The chance of finishing in tolerance, as people say it.
    pub enum Chance: "chance" {
        /// As good as certain.
        NinetyNine,
        /// A twentieth short of certain.
        Nineteen,
        /// In tenths.
        Tenths {
            /// From 1 to 9.
            n: u32,
        },
        /// Less than one in twenty.
        Hardly,
    }
}

impl Chance {
    /// How a probability is told.
    #[must_use]
    pub fn of(chance: f64) -> Self {
        let tenths = (chance * 10.0).round();
        if chance >= 0.985 {
            Self::NinetyNine
        } else if chance >= 0.945 {
            Self::Nineteen
        } else if tenths >= 1.0 {
            Self::Tenths { n: tenths.min(9.0) as u32 }
        } else {
            Self::Hardly
        }
    }
}

/// "9 in 10 inside": a chance as people say it.
#[must_use]
pub fn chance_words(chance: f64) -> String {
    let tenths = (chance * 10.0).round();
    if chance >= 0.985 {
        "99 in 100 inside".into()
    } else if chance >= 0.945 {
        "19 in 20 inside".into()
    } else if tenths < 1.0 {
        "hardly any chance inside".into()
    } else {
        format!("{} in 10 inside", decimal(tenths.min(9.0), 0))
    }
}

/// "D0.1 ± 0.4": a finish as people say it.
#[must_use]
pub fn finish_words(finish: &Finish) -> String {
    format!(
        "{} ± {}",
        SwingWeight::from_points(finish.swing_weight_points).letter(1),
        decimal(finish.band_points.max(0.05), 1)
    )
}
