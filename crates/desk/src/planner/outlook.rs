//! What a planned deviation costs a club: the chance of missing its tolerance with the readings and the choice of grip
//! still to come; and where the club stands by what the shop has learned.

use super::{Picks, Shelf, plan_with};
use bench::assembly::Assembly;
use bench::remedy::cure_step;
use estimation::{NO_DOUBT, OnClub, Probe, Quantity};
use matching::{Candidate, GripStillToChoose, Loss, LossForm};
use trade::error::TradeError;
use trade::job::JobClub;
use trade::part::Part;

/// Standard deviation of a finish counted with where a club's own cannot be worked out, points.
const FINISH_SD_POINTS: f64 = 0.3;
/// Curves that differ by less than this are one, points.
const ALIKE_POINTS: f64 = 0.02;

/// Parts that fit a club.
pub(super) struct Lists<'a> {
    pub heads: &'a [Candidate],
    pub shafts: &'a [Candidate],
    pub grips: &'a [Candidate],
    /// None where the head takes no adapter.
    pub adapters: &'a [Candidate],
    /// The ferrule that it gets.
    pub ferrule: Option<&'a Part>,
}

/// Curves made so far: clubs of one set are mostly alike, and a curve takes longer than a whole set's search.
#[derive(Default)]
pub(super) struct Losses(Vec<(GripStillToChoose, Loss)>);

impl Losses {
    fn get(&mut self, club: GripStillToChoose) -> Result<Loss, TradeError> {
        let near = |a: f64, b: f64| (a - b).abs() < ALIKE_POINTS;
        let known = self.0.iter().find(|(k, _)| {
            (k.tolerance_points - club.tolerance_points).abs() < 1e-9
                && near(k.sigma_learned_points, club.sigma_learned_points)
                && near(k.sigma_rest_points, club.sigma_rest_points)
                && near(k.grip_spread_points, club.grip_spread_points)
                && k.spare_grips == club.spare_grips
        });
        if let Some((_, loss)) = known {
            return Ok(loss.clone());
        }
        let loss = Loss::from_spare_grips(&club, LossForm::Yield)?;
        self.0.push((club, loss.clone()));
        Ok(loss)
    }
}

/// What is known of a club before anything of it is chosen.
pub(super) struct Outlook {
    /// The cost of a deviation.
    pub loss: Loss,
    /// Deviation from the target of everything that is not chosen, as the shop believes it: its own grams of adhesive,
    /// its own turns of tape, where its heads' centres lie. None where it cannot be worked out.
    pub base_points: Option<f64>,
}

/// The outlook of one club.
pub(super) fn outlook(
    assembly: Assembly<'_>,
    club: &JobClub,
    shelf: &Shelf<'_>,
    lists: &Lists<'_>,
    losses: &mut Losses,
) -> Result<Outlook, TradeError> {
    let tolerance_points = club.target.planned_tolerance();
    let found = spreads(assembly, club, shelf, lists)?;
    let (spreads, base_points) = (found.map(|f| (f.0, f.1)), found.map(|f| f.2));
    let single: Vec<f64> =
        lists.grips.iter().filter(|g| shelf.grips[g.part].count.is_none()).map(|g| g.points).collect();
    let rivals = assembly.job.clubs.iter().filter(|c| c.target.grip_model == club.target.grip_model).count();
    let spare_grips = single.len().saturating_sub(rivals / 2);
    let spread = standard_deviation(&single);
    let loss = match spreads {
        Some((learned, rest)) if spare_grips > 1 && spread > 0.01 => losses.get(GripStillToChoose {
            tolerance_points,
            sigma_learned_points: learned.max(0.01),
            sigma_rest_points: rest.max(0.01),
            grip_spread_points: spread,
            spare_grips: u32::try_from(spare_grips).unwrap_or(u32::MAX),
        })?,
        other => {
            let sd = other.map_or(FINISH_SD_POINTS, |(learned, rest)| learned.hypot(rest).max(0.01));
            Loss::from_sigma(sd, tolerance_points, LossForm::Yield)?
        }
    };
    Ok(Outlook { loss, base_points })
}

/// What the reading after the cure will tell of the finish and what it will not, and the finish's deviation less what
/// the chosen parts bring, from the club built with the first parts that fit: none of the three depends on which ones
/// by more than a hundredth of a point. None where nothing fits.
fn spreads(
    assembly: Assembly<'_>,
    club: &JobClub,
    shelf: &Shelf<'_>,
    lists: &Lists<'_>,
) -> Result<Option<(f64, f64, f64)>, TradeError> {
    let (Some(head), Some(shaft), Some(grip)) = (lists.heads.first(), lists.shafts.first(), lists.grips.first()) else {
        return Ok(None);
    };
    let adapter = lists.adapters.first();
    let parts = [shelf.heads[head.part], shelf.shafts[shaft.part], shelf.grips[grip.part]];
    let parts = parts.into_iter().chain(adapter.map(|a| shelf.adapters[a.part])).chain(lists.ferrule);
    let Ok(picks) = Picks::of(parts, |kind| kind) else { return Ok(None) };
    // What cannot be built (a model without its adapter, say) is named elsewhere.
    let Ok(plan) = plan_with(assembly, club, &picks) else { return Ok(None) };
    let model = assembly.one_club_model(club, &plan)?;
    let belief = assembly.weigh_up(&model, &assembly.known_before(), NO_DOUBT)?;
    let scale = &assembly.shop.balance_scale;
    let noise = scale.noise_sd.hypot(scale.display_step / 12f64.sqrt()).max(1e-3);
    let mut planned = Vec::new();
    // The dry reading moves the choice of tip weight, so what it tells does not count as open.
    for step in assembly.job.steps.iter().filter(|s| s.asks.contains(&trade::reading::What::SwingWeight)).take(1) {
        planned.push((reading(club, &step.on, &scale.key), noise));
    }
    let before = belief.sd_after(&assembly.finish_probe(&club.id), &planned)?;
    if let Some(step) = cure_step(&assembly.job.steps) {
        planned.push((reading(club, &step.on, &scale.key), noise));
    }
    let rest = belief.sd_after(&assembly.finish_probe(&club.id), &planned)?;
    let finish = belief.forecast(|belief| belief.answer(&assembly.finish_probe(&club.id)))?;
    let chosen = head.points + shaft.points + grip.points + adapter.map_or(0.0, |a| a.points);
    let base = finish.mean - club.target.swing_weight_points - chosen;
    Ok(Some(((before * before - rest * rest).max(0.0).sqrt(), rest, base)))
}

fn reading(club: &JobClub, on: &[trade::kind::Role], scale: &str) -> Probe {
    Probe::of_club(club.id.0.clone(), Quantity::SwingWeight, OnClub::of(on)).on_scale(scale.to_owned())
}

fn standard_deviation(values: &[f64]) -> f64 {
    let n = values.len() as f64;
    if n < 2.0 {
        return 0.0;
    }
    let mean = values.iter().sum::<f64>() / n;
    (values.iter().map(|v| (v - mean).powi(2)).sum::<f64>() / (n - 1.0)).sqrt()
}
