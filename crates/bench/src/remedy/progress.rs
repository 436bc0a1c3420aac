//! How far a club has come, as its readings tell: what can still be changed follows from it.

use crate::belief::Believed;
use trade::job::{Job, JobClub};
use trade::kind::Role;
use trade::model::PartKind;
use trade::reading::{Reading, What};
use trade::step::Step;

/// How far a club has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Progress {
    /// The shaft is cut.
    pub cut: bool,
    /// The joint is glued.
    pub glued: bool,
    /// The swing weight was read after the cure, without the grip, and is not doubted.
    pub cure_read: bool,
    /// The grip is on.
    pub gripped: bool,
}

impl Progress {
    /// How far this club has come.
    #[must_use]
    pub fn of(believed: &Believed<'_>, club: &JobClub) -> Self {
        let (standing, job) = (believed.standing(), believed.assembly.job);
        // A bare club that is neither cut nor opened reads the same before its grip goes on as when its old one came off.
        let untouched = Self::of_work(club);
        let untouched = untouched.cut && untouched.glued;
        let cure_read = believed.standing_all().iter().any(|r| {
            r.club == club.id
                && r.what == What::SwingWeight
                && r.on.contains(&Role::Adhesive)
                && !r.on.contains(&Role::Grip)
                && (untouched || !job.is_of_club_as_it_came(r))
                && !believed.is_doubted(&r.id)
        });
        Self { cure_read, ..Self::by_hand(believed.assembly.job, &standing, club) }
    }

    /// What was done with a club by its standing readings alone, whether or not they are believed; `cure_read` is left
    /// out.
    #[must_use]
    pub fn by_hand(job: &Job, standing: &[&Reading], club: &JobClub) -> Self {
        let mut found = Self::of_work(club);
        for reading in standing.iter().filter(|r| r.club == club.id) {
            if !is_of_club(reading.what) || job.is_of_club_as_it_came(reading) {
                continue;
            }
            let step = job.step(&reading.step);
            let on_step = |role: Role| reading.on.contains(&role);
            // A shaft that was read with a head on it has its length: it is cut before the dry fit.
            let assembled = on_step(Role::Head) && on_step(Role::Shaft) && is_whole(reading.what);
            found.cut |= reading.what == What::ShaftLength || on_step(Role::Adhesive) || assembled;
            found.glued |= step.is_some_and(|s| s.glues && reading.what == What::Done)
                || on_step(Role::Adhesive) && is_whole(reading.what);
            found.gripped |= on_step(Role::Grip) && is_whole(reading.what);
        }
        found
    }

    /// What is done already on a club that was there before, as far as it stays as it is.
    fn of_work(club: &JobClub) -> Self {
        let Some((work, plan)) = club.work.as_ref().zip(club.plan.as_ref()) else { return Self::default() };
        Self {
            cut: work.keeps(plan, PartKind::Shaft) && plan.cut_shaft_mm == work.came.pieces.cut_shaft_mm,
            glued: work.keeps_joint(plan),
            cure_read: false,
            gripped: work.keeps(plan, PartKind::Grip),
        }
    }
}

/// Whether a reading speaks of the club as it stood there and then, and not of a part, the scale or another club.
fn is_whole(what: What) -> bool {
    matches!(
        what,
        What::SwingWeight | What::TotalMass | What::BalancePoint | What::FinishedLength | What::Cpm | What::Done
    )
}

fn is_of_club(what: What) -> bool {
    !matches!(what, What::CheckWeight | What::ReferenceSwingWeight)
}

/// The step at which the swing weight is read after the cure and before the grip.
#[must_use]
pub fn cure_step(steps: &[Step]) -> Option<&Step> {
    steps
        .iter()
        .find(|s| s.asks.contains(&What::SwingWeight) && s.on.contains(&Role::Adhesive) && !s.on.contains(&Role::Grip))
}
