//! What is refused of what is done with a part by hand.

use crate::life::PartDeed;
use fact::Told;
use trade::job::JobState;
use trade::model::PartKind;
use trade::part::PartState;

fact::facts! {
    /// What is refused of what is done with a part.
    pub(crate) enum DeedFault: "deed_fault" {
        NotOfDeed { field: String, deed: PartDeed },
        Stale { code: String },
        NoClub,
        InNoJob { code: String, state: PartState },
        NotAside { code: String, state: PartState },
        MassChanged { code: String },
        SameFigures { code: String },
        InNoClub { code: String, state: PartState },
        NotGlued { code: String, club: Told },
        OnlyReserved { code: String },
        NoMass { code: String },
        Box { code: String },
        CutAlready { code: String, club: Told },
        Used { code: String },
        Gripped { code: String, club: Told },
        Glued { code: String, club: Told },
        NotFree { code: String, state: PartState, club: Option<Told> },
        InClub { code: String, club: Told },
        ClubOf { number: String, job: i64 },
        WouldTakeApart { code: String, state: PartState, club: Told, number: String },
        WouldReplan { code: String, state: PartState, club: Told, number: String },
        PullFirst,
        GiveBackFirst,
        AsideAlready,
        CleanFirst,
        BookInFirst,
        BoxEmpty,
        JobNotUnderWay { job: i64, state: JobState },
        Planned { number: String, job: i64 },
        Misfit { code: String, kind: PartKind, model: String, number: Option<String>, club: String, job: i64 },
        ReservedAlready { code: String, club: String, job: i64 },
        BoxReserved { code: String },
        NotCut { code: String, kind: PartKind },
        NoLength { code: String },
        NotACut { code: String, before_mm: f64, length_mm: f64, tip_mm: f64 },
        NoWeight { code: String },
    }
}
