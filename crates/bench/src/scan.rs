//! A code that was scanned at the bench: what it is for the club and the step at hand.

use serde::Serialize;
use trade::club_name::ClubName;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::part::{Part, PartState};
use trade::reading::What;
use trade::step::Step;
use utoipa::ToSchema;

/// What a scanned part is for the club at hand.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
#[serde(tag = "is", rename_all = "snake_case")]
#[schema(as = PartAtClub)]
pub enum ScannedPart {
    /// It is in this club already: nothing changes.
    Already,
    /// It takes its place at this step, where another is planned or none.
    Takes {
        /// Readings with the part before it, which are taken back.
        readings: usize,
    },
    /// It is of another model or number than this club has.
    DoesNotFit {
        /// Code of the model, and the number, that it should be.
        wants: String,
    },
    /// Another club has it.
    OtherClub {
        /// Number of the job; none where it is no longer known.
        job: Option<i64>,
        /// Place of the club in its tray.
        slot: Option<i64>,
        /// The club; none where it is no longer known.
        club: Option<ClubName>,
    },
    /// This step has no place for such a part.
    OtherStep {
        /// What it has a place for; may be empty.
        takes: Vec<PartKind>,
    },
    /// It is neither free nor in a club.
    NotFree {
        /// Where it is in its life.
        state: PartState,
    },
}

/// The kinds of part that a step has a place for: those it weighs, and those that come onto the club at it.
#[must_use]
pub fn takes(steps: &[Step], key: &str) -> Vec<PartKind> {
    let Some(at) = steps.iter().position(|s| s.key == key) else { return Vec::new() };
    let step = &steps[at];
    let before = |role: &Role| steps[..at].iter().any(|s| !s.optional && s.on.contains(role));
    let weighed = step.asks.iter().filter_map(|what| what.mass_of());
    let coming = step.on.iter().copied().filter(|role| !before(role));
    // Loft and lie with nothing on the club are those of the loose head.
    let loose = step.on.is_empty() && step.asks.iter().any(|w| matches!(w, What::Loft | What::Lie));
    let mut kinds: Vec<PartKind> = Vec::new();
    for role in weighed.chain(coming).chain(loose.then_some(Role::Head)) {
        if let Some(kind) = PartKind::from_key(role.key())
            && !matches!(kind, PartKind::Adhesive | PartKind::Tape)
            && !kinds.contains(&kind)
        {
            kinds.push(kind);
        }
    }
    kinds
}

/// What a scanned part is for a club at a step. `elsewhere` names the club that has it, where that is another one;
/// `readings` counts those that were taken with the part of its kind that the club has now.
#[must_use]
pub fn scanned_part(
    steps: &[Step],
    step: &str,
    club: &JobClub,
    part: &Part,
    elsewhere: Option<(Option<i64>, Option<i64>, Option<ClubName>)>,
    readings: usize,
) -> ScannedPart {
    let planned = club.plan.as_ref().is_some_and(|plan| plan.parts.iter().any(|p| p.part == part.id));
    if planned || part.club.as_ref() == Some(&club.id) {
        return ScannedPart::Already;
    }
    if let Some((job, slot, club)) = elsewhere {
        return ScannedPart::OtherClub { job, slot, club };
    }
    if !part.is_free() {
        return ScannedPart::NotFree { state: part.state };
    }
    if let Some(wants) = wanted(club, part) {
        return ScannedPart::DoesNotFit { wants };
    }
    let takes = takes(steps, step);
    if takes.contains(&part.kind) { ScannedPart::Takes { readings } } else { ScannedPart::OtherStep { takes } }
}

/// What a part of this kind should be for a club, where this one is not.
fn wanted(club: &JobClub, part: &Part) -> Option<String> {
    let target = &club.target;
    let (model, number) = match part.kind {
        PartKind::Head => (Some(&target.head_model), Some(target.number.as_str())),
        PartKind::Shaft => (Some(&target.shaft_model), None),
        PartKind::Grip => (Some(&target.grip_model), None),
        PartKind::Ferrule => (target.ferrule_model.as_ref(), None),
        _ => (None, None),
    };
    let model = model?;
    let same = number.is_none_or(|n| part.number.as_deref().is_some_and(|own| own.eq_ignore_ascii_case(n)));
    if *model == part.model && same {
        return None;
    }
    Some(number.map_or_else(|| model.clone(), |n| format!("{model} {n}")))
}

fact::facts! {
    /// What a scanned part is for the club at hand, as it is told.
    pub enum ScanSays: "scan" {
        /// This scan put it in.
        PutIn {
            /// Code of the part.
            part: String,
            /// What sort of part it is: head, shaft, grip …
            kind: PartKind,
            /// Name of the club at hand.
            club: ClubName,
        },
        /// It is in this club already.
        Already {
            /// Code of the part.
            part: String,
            /// Name of the club at hand.
            club: ClubName,
        },
        /// It is free and fits.
        Free {
            /// Code of the part.
            part: String,
            /// What sort of part it is: head, shaft, grip …
            kind: PartKind,
        },
        /// It is of another model, or of no number.
        OtherModel {
            /// Code of the part.
            part: String,
            /// What sort of part it is: head, shaft, grip …
            kind: PartKind,
            /// Code of its model.
            model: String,
            /// Name of the club at hand.
            club: ClubName,
            /// Code of the model that this club takes.
            wants: String,
        },
        /// It is of another number.
        OtherNumber {
            /// Code of the part.
            part: String,
            /// What sort of part it is: head, shaft, grip …
            kind: PartKind,
            /// Code of its model.
            model: String,
            /// Number that the part is made for: `6`, `PW`.
            number: String,
            /// Name of the club at hand.
            club: ClubName,
            /// Code of the model, and the number, that this club takes.
            wants: String,
        },
        /// Another club of a job has it.
        OtherClub {
            /// Code of the part.
            part: String,
            /// Name of the club.
            club: ClubName,
            /// Number of its job.
            job: i64,
        },
        /// Another club has it; its job is no longer known.
        SomeClub {
            /// Code of the part.
            part: String,
        },
        /// It is free, and this step takes no such part.
        OtherStep {
            /// Code of the part.
            part: String,
            /// What sort of part it is: head, shaft, grip …
            kind: PartKind,
        },
        /// It is neither free nor in a club.
        NotFree {
            /// Code of the part.
            part: String,
            /// Where it is in its life.
            state: PartState,
        },
    }
}

fact::facts! {
    /// What to do after a scan.
    pub enum ScanNext: "scan_next" {
        /// Nothing was changed.
        NothingChanged,
        /// It can go in.
        CanGoIn,
        /// It can go in; readings with the planned part are taken back then.
        TakesBack {
            /// How many readings.
            readings: usize,
        },
        /// It belongs into another tray.
        IntoItsTray,
        /// This step takes no part.
        ChooseStep,
        /// This step takes other parts.
        StepTakes {
            /// What it takes.
            kinds: Vec<PartKind>,
        },
        /// Look at it under Stock.
        OpenInStock,
    }
}

impl ScannedPart {
    /// What it is for the club of this name, and what to do next; `put_in`: by this scan.
    #[must_use]
    pub fn says(&self, part: &Part, club: &ClubName, put_in: bool) -> (ScanSays, Option<ScanNext>) {
        let (code, kind, here) = (part.code.clone(), part.kind, club.clone());
        let (says, next) = match self {
            Self::Already if put_in => return (ScanSays::PutIn { part: code, kind, club: here }, None),
            Self::Already => (ScanSays::Already { part: code, club: here }, ScanNext::NothingChanged),
            Self::Takes { readings: 0 } => (ScanSays::Free { part: code, kind }, ScanNext::CanGoIn),
            Self::Takes { readings } => {
                (ScanSays::Free { part: code, kind }, ScanNext::TakesBack { readings: *readings })
            }
            Self::DoesNotFit { wants } => {
                let (model, wants) = (part.model.clone(), wants.clone());
                let says = match part.number.clone() {
                    Some(number) => ScanSays::OtherNumber { part: code, kind, model, number, club: here, wants },
                    None => ScanSays::OtherModel { part: code, kind, model, club: here, wants },
                };
                (says, ScanNext::NothingChanged)
            }
            Self::OtherClub { job: Some(job), club: Some(club), .. } => {
                (ScanSays::OtherClub { part: code, club: club.clone(), job: *job }, ScanNext::IntoItsTray)
            }
            Self::OtherClub { .. } => (ScanSays::SomeClub { part: code }, ScanNext::IntoItsTray),
            Self::OtherStep { takes } if takes.is_empty() => {
                (ScanSays::OtherStep { part: code, kind }, ScanNext::ChooseStep)
            }
            Self::OtherStep { takes } => {
                (ScanSays::OtherStep { part: code, kind }, ScanNext::StepTakes { kinds: takes.clone() })
            }
            Self::NotFree { state } => (ScanSays::NotFree { part: code, state: *state }, ScanNext::OpenInStock),
        };
        (says, Some(next))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use trade::step::full_build;

    #[test]
    fn each_step_takes_what_comes_onto_the_club_at_it() {
        let steps = full_build();
        let of = |key: &str| takes(&steps, key);
        assert_eq!(of("received"), [PartKind::Head]);
        assert_eq!(of("weighed"), [PartKind::Head, PartKind::Grip]);
        assert_eq!(of("cut"), [PartKind::Shaft]);
        assert_eq!(of("dry"), [PartKind::Head, PartKind::Adapter, PartKind::Shaft, PartKind::Ferrule]);
        assert_eq!(of("tip"), [PartKind::TipWeight]);
        assert_eq!(of("glue"), []);
        assert_eq!(of("cured"), []);
        assert_eq!(of("gripped"), [PartKind::Grip]);
        assert_eq!(of("hand_over"), []);
        assert_eq!(of("no such step"), []);
    }
}
