//! What Setwright advises, asked as the app asks it: which weights go into the tips, which grip goes onto which club,
//! what to measure. This is the one file to change when the advice changes.

use bench::belief::Believed;
use bench::cause::inquire;
use bench::club_state::{ClubState, Surroundings, club_state};
use bench::learned::Learned;
use bench::offer::{Measure, Offer, offers};
use bench::remedy::{Spare, assign_grips, chance_ahead, remedies};
use bench::told::Sureness;
use bench::work_order::{GripOrder, WorkOrder, grips_in_turn, set_advice};
use trade::action::Action;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::part::Part;
use trade::reading::{Reading, What};

/// A weight is changed where that promises so much more than what is planned.
const LEAST_GAIN: f64 = 0.0025;

/// A measurement that would tell: what, and with what on the club.
pub type Tells = (What, Vec<Role>);

/// Codes of what goes into one club in place of what is planned; none: leave it as planned.
pub type Choice = Option<Vec<String>>;

/// Grips and tip weights that are free, with the mass to count with.
fn spares<'a>(believed: &Believed<'_>, parts: &'a [Part]) -> Vec<Spare<'a>> {
    let library = believed.assembly.library;
    parts
        .iter()
        .filter(|p| p.is_free())
        .filter_map(|part| {
            let nominal_g = match part.kind {
                PartKind::Grip => library.grip(&part.model).ok()?.mass_g,
                PartKind::TipWeight => library.tip_weight(&part.model).ok()?.mass_g,
                _ => return None,
            };
            Some(Spare { part, mass_g: part.mass_g.unwrap_or(nominal_g) })
        })
        .collect()
}

fn state_of(believed: &Believed<'_>, club: &JobClub) -> Result<ClubState, TradeError> {
    let now = believed.standing().iter().map(|r| r.at).max().unwrap_or_default();
    club_state(believed, Surroundings { batches: &[], overrides: &[], now }, club)
}

/// What goes into the tips of these clubs, before they are glued: the first that the table of remedies names, where it
/// promises more than what is planned.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn choose_tips(
    believed: &Believed<'_>,
    clubs: &[ClubId],
    parts: &[Part],
) -> Result<Vec<(ClubId, Choice)>, TradeError> {
    let spares = spares(believed, parts);
    let job = believed.assembly.job;
    let mut chosen = Vec::new();
    for club in clubs.iter().filter_map(|id| job.club(id)) {
        let state = state_of(believed, club)?;
        let now = chance_ahead(believed, &state, &spares)?.unwrap_or(0.0);
        let best = remedies(believed, &state, &spares)?.into_iter().find(|r| r.action == Action::TipWeight);
        let better = best.filter(|r| r.chance_at_end > now + LEAST_GAIN);
        let codes = better.map(|r| r.code.iter().map(str::to_owned).collect());
        chosen.push((club.id.clone(), codes));
    }
    Ok(chosen)
}

/// Which grips go onto these clubs, after the cure. No grip goes onto two.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn choose_grips(
    believed: &Believed<'_>,
    clubs: &[ClubId],
    parts: &[Part],
) -> Result<Vec<(ClubId, Choice)>, TradeError> {
    let picks = assign_grips(believed, &spares(believed, parts))?;
    let mine = picks.into_iter().filter(|p| clubs.contains(&p.club));
    Ok(mine.map(|p| (p.club, p.change.then(|| vec![p.code]))).collect())
}

/// What may be behind a reading, the likeliest first, and the one measurement that would tell: what, and with what on
/// the club.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn ask(
    believed: &Believed<'_>,
    reading: &Reading,
    parts: &[Part],
) -> Result<(Vec<String>, Option<Tells>), TradeError> {
    let inquest = inquire(believed, reading, &spares(believed, parts))?;
    let causes = inquest.causes.into_iter().map(|c| c.key).collect();
    Ok((causes, inquest.telling.map(|t| (t.what, t.on))))
}

/// How the clubs of a set follow each other at the glue.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Followed {
    /// All are glued together.
    Together,
    /// In the order that is proposed.
    AsProposed,
    /// One is glued and cured before the others, whether that is proposed or not.
    OneCuredFirst,
}

/// In which order a set's grips are chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grips {
    /// All at once.
    AtOnce,
    /// One after another where that is proposed.
    AsProposed,
    /// Each when the one before has dried and was read, as a skilled hand does.
    InTurn,
}

/// What a shop measures beside the readings that every set asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Measured {
    /// Check weight on the balance scale, and the reference club where another scale read it.
    pub check_weight: bool,
    /// A strip of tape weighed, a grip balanced on an edge, its cap measured.
    pub parts: bool,
    /// Each club's tape weighed before its grip is chosen.
    pub each_tape: bool,
    /// Each club weighed before and after gluing, before the next club's tip weight is chosen.
    pub joints: bool,
    /// Cure readings of each club.
    pub cure_readings: u64,
    /// What is offered as worth measuring is measured, until nothing is.
    pub offered: bool,
    /// How the clubs of a set follow each other at the glue.
    pub order: Followed,
    /// In which order grips are chosen.
    pub grips: Grips,
    /// How sure the builder says that he is of his own figures; none where he says nothing.
    pub told: Option<Sureness>,
}

/// What is worth measuring at a club before its set is glued: the first of the bundle; none where nothing is. What is measured
/// only at the glue or by reading a club again is left out.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn offered(believed: &Believed<'_>, club: &ClubId, parts: &[Part]) -> Result<Option<Offer>, TradeError> {
    let without = [Measure::Again, Measure::Weighed, Measure::Total];
    Ok(offers(believed, club, &spares(believed, parts), &without)?.offers.into_iter().next())
}

/// In which order the set is glued.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn order_of_work(believed: &Believed<'_>, parts: &[Part]) -> Result<WorkOrder, TradeError> {
    let advice = set_advice(believed, &spares(believed, parts), &[])?;
    Ok(advice.and_then(|a| a.proposed).map_or(WorkOrder::Batch, |p| p.order))
}

/// In which order the grips of the clubs that have cured are chosen.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn order_of_grips(believed: &Believed<'_>, parts: &[Part]) -> Result<GripOrder, TradeError> {
    Ok(grips_in_turn(believed, &spares(believed, parts))?.map_or(GripOrder::AtOnce, |g| g.order))
}

/// What the shop has learned when a job is done: the prior of the next.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn learn(learned: &Learned, believed: &Believed<'_>) -> Result<Learned, TradeError> {
    learned.after(believed)
}
