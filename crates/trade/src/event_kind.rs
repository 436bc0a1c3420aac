//! What sort of deed an entry of the shop's log is about.

/// Declares the kinds with the key that each has in the database.
macro_rules! event_kinds {
    ($($(#[$doc:meta])* $kind:ident = $key:literal;)*) => {
        /// What sort of deed an entry of the log is about.
        #[derive(Debug, Clone, PartialEq, Eq)]
        pub enum EventKind {
            $($(#[$doc])* $kind,)*
            /// One that this version does not write: the log of an earlier one may have it.
            Other(String),
        }

        impl EventKind {
            /// Its key in the database.
            #[must_use]
            pub fn key(&self) -> &str {
                match self {
                    $(Self::$kind => $key,)*
                    Self::Other(key) => key,
                }
            }
        }

        impl From<&str> for EventKind {
            fn from(key: &str) -> Self {
                match key {
                    $($key => Self::$kind,)*
                    other => Self::Other(other.to_owned()),
                }
            }
        }

        #[cfg(test)]
        const ALL: &[EventKind] = &[$(EventKind::$kind,)*];
    };
}

event_kinds! {
    /// A sheet became a job.
    SheetApproved = "sheet_approved";
    /// Sheets and jobs were given to a customer, or taken from one.
    SheetOfCustomer = "sheet_of_customer";
    /// A customer was deleted on request.
    CustomerDeleted = "customer_deleted";
    /// A plan was accepted.
    PlanAccepted = "plan_accepted";
    /// A plan was made again for clubs that had one.
    PlanMadeAgain = "plan_made_anew";
    /// A club lost its plan with a part that was taken away.
    PlanLost = "plan_lost";
    /// A part took another's place in a club.
    PartSwapped = "part_swapped";
    /// Two clubs that had each other's piece were put right.
    PartsExchanged = "parts_exchanged";
    /// That was taken back.
    PartsExchangeUndone = "parts_exchange_undone";
    /// The tip of a shaft is to be trimmed otherwise than its plan said.
    TipTrimmed = "tip_trimmed";
    /// A grip is to lie on other layers of tape than its sheet said.
    WrapsChanged = "wraps_changed";
    /// Something was added to a club beyond its plan.
    ExtraAdded = "extra_added";
    /// A part was weighed in.
    PartWeighedIn = "part_weighed_in";
    /// A part that was weighed in was taken back.
    PartTakenBack = "part_taken_back";
    /// A part was changed by hand.
    PartChanged = "part_changed";
    /// A finished club was plucked in two planes.
    TwoPlanesRead = "two_planes_read";
    /// The stiffness readings of a shaft were kept, or taken back.
    ShaftProfileKept = "shaft_profile_kept";
    /// A batch of adhesive was mixed.
    BatchMixed = "batch_mixed";
    /// A batch was taken back.
    BatchTakenBack = "batch_taken_back";
    /// A step was let pass before its strength.
    LetPass = "let_pass";
    /// Somebody went on with something open before a step that cannot be undone.
    PassedOpen = "passed_open";
    /// An extra measurement is not to be offered again.
    OfferDeclined = "offer_declined";
    /// The last club of a job was handed over.
    JobFinished = "job_finished";
    /// A job was given up.
    JobDropped = "job_dropped";
    /// A finished job taught nothing.
    NothingLearned = "nothing_learned";
    /// The machine's clock moved by more than the time that passed.
    ClockJumped = "clock_jumped";
    /// Somebody said that the clock is right.
    ClockConfirmed = "clock_confirmed";
    /// Six digits were shown to let a tablet in.
    DoorCodeShown = "door_code_shown";
    /// Digits that are not shown were typed.
    DoorCodeWrong = "door_code_wrong";
    /// A tablet or a program was given a key.
    KeyGiven = "key_given";
    /// A key was taken away.
    KeyWithdrawn = "key_withdrawn";
    /// The demonstration began to load.
    DemoBegun = "demo_begun";
    /// The demonstration is there in full.
    DemoLoaded = "demo_loaded";
}

#[cfg(test)]
mod tests {
    use super::{ALL, EventKind};

    #[test]
    fn a_kind_comes_back_from_its_key_and_an_unknown_one_stays_what_it_is() {
        for kind in ALL {
            assert_eq!(EventKind::from(kind.key()), *kind);
        }
        let other = EventKind::from("shop_saved");
        assert_eq!((other.key(), &other), ("shop_saved", &EventKind::Other("shop_saved".to_owned())));
    }
}
