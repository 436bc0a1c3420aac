//! The small closed lists of the trade.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A closed list whose members have a key for documents. The word for people is a text of `kind.ftl`, and a member is
/// shown by `w.tell(&member)`; there is no `Display`, so that no key is shown by mistake.
///
/// `was` gives the key of earlier versions, which stands in databases and files of their time and is still read.
///
/// The key is matched as a token: as a `literal` it would reach the derives wrapped, and the schema of the API would name
/// the variants instead of the keys.
#[macro_export]
macro_rules! closed_list {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $key:tt $(was $former:literal)?;)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
        pub enum $name { $($(#[$vdoc])* #[serde(rename = $key $(, alias = $former)?)] $variant,)* }

        impl $name {
            /// Every member, in the order of the trade.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// The key used in documents and in the database.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key,)* }
            }

            /// The member with this key.
            #[must_use]
            pub fn from_key(key: &str) -> Option<Self> {
                match key { $($key $(| $former)? => Some(Self::$variant),)* _ => None }
            }
        }

        impl fact::Fact for $name {
            fn told(&self) -> fact::Told {
                fact::Told::of_list(stringify!($name), self.key())
            }
        }

        impl fact::ToFigure for $name {
            fn to_figure(&self) -> fact::Figure {
                fact::Figure::Fact(fact::Fact::told(self))
            }
        }

        #[cfg(test)]
        #[test]
        #[allow(non_snake_case)]
        fn $name() {
            ::words::check::texts_of_list($name::ALL);
        }
    };
}
pub use closed_list;

closed_list! {
    /// What sort of club.
    ClubKind {
        /// Driver or fairway wood.
        Wood = "wood";
        /// Hybrid.
        Hybrid = "hybrid";
        /// Iron.
        Iron = "iron";
        /// Wedge.
        Wedge = "wedge";
        /// Putter.
        Putter = "putter";
    }
}

closed_list! {
    /// Which hand the club is for.
    Hand {
        /// Right-handed.
        Right = "right";
        /// Left-handed.
        Left = "left";
    }
}

closed_list! {
    /// Where a club's length ends at the butt. It starts where the shaft axis meets the ground.
    LengthTo {
        /// To the cut end of the shaft, without the grip's cap.
        ShaftEnd = "shaft_end";
        /// To the outside of the grip's cap.
        Cap = "cap";
    }
}

impl LengthTo {
    /// A club's length to the outside of the cap, mm, from a length that ends here; `cap_mm` is how thick the cap is.
    #[must_use]
    pub fn to_cap_mm(self, length_mm: f64, cap_mm: f64) -> f64 {
        match self {
            Self::Cap => length_mm,
            Self::ShaftEnd => length_mm + cap_mm,
        }
    }
}

closed_list! {
    /// Which way a label faces when the club is soled.
    Facing {
        /// Seen by the player.
        Up = "up";
        /// Hidden under the shaft.
        Down = "down";
        /// Facing away from the target.
        Away = "away";
    }
}

closed_list! {
    /// Where the soft side of the shaft is turned.
    SoftSide {
        /// Along the line to the target.
        Target = "target";
        /// Away from the target.
        AwayFromTarget = "away_from_target";
        /// Toward the heel.
        Heel = "heel";
        /// Toward the toe.
        Toe = "toe";
    }
}

/// What can be on a club when it lies on the scale; the belief names its pieces by it.
pub use estimation::Role;
