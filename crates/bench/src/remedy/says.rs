//! What a remedy is, and where it brings the club.

use crate::chance::Chance;
use trade::club_name::ClubName;

fact::facts! {
    /// What is done to the club.
    pub enum Deed: "deed" {
        /// Another weight in the tip.
        Tip {
            /// What goes in.
            tip_g: f64,
            /// What is planned now.
            now_g: f64,
        },
        /// A weight in a tip that is planned empty.
        TipFirst {
            /// What goes in.
            tip_g: f64,
        },
        /// The tip left empty.
        TipEmpty {
            /// What is planned now.
            now_g: f64,
        },
        /// One weight in place of two as heavy.
        TipOneForTwo {
            /// What goes in.
            tip_g: f64,
        },
        /// Another ferrule.
        Ferrule {
            /// Its code.
            part: String,
            /// What that ferrule weighs.
            mass_g: f64,
        },
        /// Another head.
        Head {
            /// Its code.
            part: String,
            /// What that head weighs.
            mass_g: f64,
        },
        /// Another adapter.
        Adapter {
            /// Its code.
            part: String,
            /// What that adapter weighs.
            mass_g: f64,
        },
        /// Another screw.
        Screw {
            /// Its mark.
            label: String,
            /// What that screw weighs.
            mass_g: f64,
        },
        /// Another grip, before one is on.
        Grip {
            /// Its code.
            part: String,
            /// What that grip weighs.
            mass_g: f64,
        },
        /// The grip of another club, which gets this one's.
        GripOfOther {
            /// Its code.
            part: String,
            /// What that grip weighs.
            mass_g: f64,
            /// The other club.
            club: ClubName,
        },
        /// The grip off and another on.
        ReGrip {
            /// Code of the new one.
            part: String,
            /// What the new one weighs.
            mass_g: f64,
        },
        /// Lead tape on the head.
        LeadTape {
            /// How much.
            mass_g: f64,
        },
        /// Powder in the shaft.
        Powder {
            /// How much.
            mass_g: f64,
        },
        /// A plug in the butt.
        Counterweight {
            /// How heavy.
            mass_g: f64,
        },
        /// A strip under the lower hand.
        LowerHandTape {
            /// What it weighs.
            mass_g: f64,
        },
        /// The butt cut.
        Cut {
            /// By how much.
            by_mm: f64,
        },
        /// The butt extended.
        ButtExtension {
            /// By how much.
            by_mm: f64,
        },
        /// The head pulled, the joint made again.
        PullHead {
            /// What goes into the tip.
            tip_g: f64,
        },
    }
}

fact::facts! {
    /// A remedy, and what it leads to.
    pub enum RemedySays: "remedy" {
        /// It decides the finish.
        Finish {
            /// What is done.
            deed: Deed,
            /// Where the club finishes.
            finish_points: f64,
            /// How likely in tolerance.
            chance: Chance,
        },
        /// A heavier grip after the cure does the rest.
        ThenHeavierGrip {
            /// What is done.
            deed: Deed,
            /// How likely in tolerance then.
            chance: Chance,
        },
        /// A lighter grip after the cure does the rest.
        ThenLighterGrip {
            /// What is done.
            deed: Deed,
            /// How likely in tolerance then.
            chance: Chance,
        },
    }
}

impl RemedySays {
    /// What is done, without where it leads.
    #[must_use]
    pub const fn deed(&self) -> &Deed {
        match self {
            Self::Finish { deed, .. } | Self::ThenHeavierGrip { deed, .. } | Self::ThenLighterGrip { deed, .. } => deed,
        }
    }
}
