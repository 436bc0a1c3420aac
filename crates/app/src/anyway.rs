//! Building a club whose target is out of reach of the stock: with the nearest parts, by the owner's word.

use crate::job::JobFile;
use crate::matched::{AcceptPicks, Picked};
use crate::needs::PlanStock;
use crate::{App, AppError};
use desk::planner;
use fact::Figure;
use trade::plan::{ClubPlan, Missing, Plan};

/// How far off its target the nearest choice for a club stays, less than 0 where it stays short of it, points; none where
/// something else is missing.
#[must_use]
pub fn off_points(missing: &Missing) -> Option<f64> {
    let Some(Figure::Number(by_points)) = missing.fact.figure("by_points") else { return None };
    match missing.fact.code() {
        "planner_lack.short" => Some(-by_points),
        "planner_lack.over" => Some(*by_points),
        _ => None,
    }
}

impl App {
    /// Holds the nearest parts for every club of a job, also where the target stays out of reach. The target stays what the
    /// sheet says; the bench goes on saying how far off the club is and what can still be done.
    ///
    /// # Errors
    /// No reason; a club that lacks a part and not only a mass; a job that has its plan; what the store says.
    pub async fn build_anyway(&self, number: i64, reason: &str, by: &str) -> Result<Plan, AppError> {
        crate::need::need_reason(reason)?;
        let clubs = self.nearest(number).await?;
        self.accept_picks(number, &AcceptPicks { clubs, reason: reason.to_owned(), by: by.to_owned() }).await
    }

    async fn nearest(&self, number: i64) -> Result<Vec<Picked>, AppError> {
        let mut tx = self.store.read().await?;
        let mut file = JobFile::load(&mut tx, number).await?;
        let stock = PlanStock::load(&mut tx, &[&file.job]).await?;
        crate::plan::need_open(&file)?;
        let locks = planner::kept(&file.job, &stock.parts, &[]);
        let plan = planner::propose(file.assembly(), stock.supply(), &locks)?;
        // A plan looks no further than a club can still be brought in. The nearest choice is found where the target lies where that
        // choice comes out.
        for (club, planned) in file.job.clubs.iter_mut().zip(&plan.clubs) {
            let of_club = |missing: &&Missing| missing.number == club.target.number;
            let off = plan.missing.iter().filter(of_club).find_map(off_points);
            if let (None, Some(off_points)) = (planned, off) {
                club.target.swing_weight_points += off_points;
            }
        }
        let nearest = planner::propose(file.assembly(), stock.supply(), &locks)?;
        crate::plan::need_built(&file, &nearest, false)?;
        let picked = |(slot, plan): (i64, &ClubPlan)| Picked {
            slot,
            codes: plan.parts.iter().map(|part| part.code.clone()).collect(),
            screw_more_g: plan.extras.iter().map(|extra| extra.mass_g).sum(),
            swing_weight_points: None,
        };
        let slots = file.job.clubs.iter().map(|club| club.slot);
        Ok(slots.zip(&nearest.clubs).filter_map(|(slot, plan)| Some((slot, plan.as_ref()?))).map(picked).collect())
    }
}
