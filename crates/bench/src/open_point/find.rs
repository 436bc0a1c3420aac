//! Finds what is open on a club.

use super::{Final, OpenClub, OpenPoint, Passed, PassedBy};
use crate::belief::{Believed, Finish};
use crate::club_state::{AskState, ClubState, StepState};
use crate::glue::{Batch, Gate, glued_from};
use crate::remedy::{Spare, chance_ahead};
use crate::target::{Fit, Target};
use trade::error::TradeError;
use trade::id::{ClubId, ReadingId};
use trade::job::JobClub;
use trade::kind::Role;
use trade::reading::What;
use trade::recall::ClubMark;
use trade::step::Step;

/// Something that is open, and the step where it is put right.
type Found = (OpenPoint, String);

/// What is open on a club before a step that cannot be undone; none for any other step, for a club without parts and for
/// one with nothing open. `spares` are the free parts, for what can still be chosen; `passed` is what somebody passed over
/// before; `marks` stand on the clubs since a recall.
///
/// # Errors
/// A head model that the library lacks; figures that the belief cannot work with.
pub fn open_club(
    believed: &Believed<'_>,
    state: &ClubState,
    batches: &[Batch],
    spares: &[Spare<'_>],
    step: &Step,
    passed: &[Passed],
    marks: &[(ClubId, ClubMark)],
) -> Result<Option<OpenClub>, TradeError> {
    let job = believed.assembly.job;
    let (Some(kind), Some(club), true) = (Final::of(job, step), job.club(&state.club), state.finish.is_some()) else {
        return Ok(None);
    };
    let at = Search { believed, state, club, step };
    let mut open = at.marked(marks);
    open.extend(at.doubted());
    match kind {
        Final::Cut => {
            open.extend(at.beyond_bending()?);
            open.extend(at.off_target(spares)?);
        }
        Final::Glue => {
            open.extend(at.glued_already(batches));
            open.extend(at.unread_swing_weight(|on| !on.contains(&Role::Adhesive)));
            open.extend(at.shaft());
            open.extend(at.off_for_good());
            open.extend(at.beyond_bending()?);
            open.extend(at.off_target(spares)?);
        }
        Final::Bend => {
            open.extend(at.not_cured(batches));
            open.extend(at.unread_swing_weight(|on| on.contains(&Role::Adhesive)));
            open.extend(at.off_for_good());
            open.extend(at.beyond_bending()?);
        }
        Final::HandOver => {
            open.extend(at.not_cured(batches));
            open.extend(at.off_or_unread());
        }
    }
    if open.is_empty() {
        return Ok(None);
    }
    let points: Vec<OpenPoint> = open.iter().map(|(point, _)| point.clone()).collect();
    let passed = passed.iter().filter(|p| p.club == state.club && p.step == step.key).find(|p| {
        let is_passed = |point: &OpenPoint| p.points.iter().any(|before| point.is_the_same(before));
        points.iter().all(is_passed)
    });
    Ok(Some(OpenClub {
        club: state.club.clone(),
        slot: state.slot,
        number: state.number.clone(),
        facts: points.iter().map(|point| point.fact().into()).collect(),
        steps: open.into_iter().map(|(_, step)| step).collect(),
        points,
        passed: passed.map(|p| PassedBy { reason: p.reason.clone(), by: p.by.clone(), at: p.at }),
    }))
}

/// Where something open is looked for.
struct Search<'a> {
    believed: &'a Believed<'a>,
    state: &'a ClubState,
    club: &'a JobClub,
    step: &'a Step,
}

impl Search<'_> {
    fn steps(&self) -> impl Iterator<Item = (&Step, &StepState)> {
        self.believed.assembly.job.steps.iter().zip(&self.state.steps)
    }

    fn earlier(&self) -> impl Iterator<Item = (&Step, &StepState)> {
        self.steps().take_while(|(step, _)| step.key != self.step.key)
    }

    fn marked(&self, marks: &[(ClubId, ClubMark)]) -> Vec<Found> {
        let of_this = marks.iter().filter(|(club, _)| *club == self.state.club);
        let point = |mark: &ClubMark| OpenPoint::Marked { word: mark.word.clone(), mark: mark.id.clone() };
        of_this.map(|(_, mark)| (point(mark), self.step.key.clone())).collect()
    }

    fn doubted(&self) -> Vec<Found> {
        let point = |step: &StepState, ask: &AskState| {
            let reading = ask.reading.as_ref().map(|r| r.id.clone());
            (OpenPoint::Doubted { step: step.label.clone(), what: ask.what, reading }, step.key.clone())
        };
        let doubted = |step: &StepState| -> Vec<Found> {
            step.asks.iter().filter(|ask| ask.doubted).map(|ask| point(step, ask)).collect()
        };
        self.state.steps.iter().flat_map(doubted).collect()
    }

    fn glued_already(&self, batches: &[Batch]) -> Option<Found> {
        let batch = glued_from(batches, &self.state.club)?;
        Some((OpenPoint::Glued { batch: batch.number }, self.step.key.clone()))
    }

    fn not_cured(&self, batches: &[Batch]) -> Option<Found> {
        let here = self.state.steps.iter().find(|state| state.key == self.step.key)?;
        let glues = self.steps().find(|(step, _)| step.glues).map_or(&here.key, |(_, state)| &state.key);
        match (&here.gate, glued_from(batches, &self.state.club)) {
            (Gate::Waits { strength, until }, Some(batch)) => {
                let (batch, strength, until) = (batch.number, *strength, *until);
                Some((OpenPoint::NotCured { batch, strength, until }, glues.clone()))
            }
            (Gate::NotGlued, _) => Some((OpenPoint::NotGlued, glues.clone())),
            _ => None,
        }
    }

    /// A swing weight with these pieces on the club shows a wrong head, shaft or cut as nothing else does. Steps that may
    /// be left out without a question are left out without one here, too.
    fn unread_swing_weight(&self, shows: impl Fn(&[Role]) -> bool) -> Option<Found> {
        if self.club.target.swing_weight_free {
            return None;
        }
        let asked = || {
            let of_club = self.earlier().filter(|(step, _)| !step.optional && shows(&step.on));
            of_club.filter(|(step, _)| step.asks.contains(&What::SwingWeight))
        };
        let read = |ask: &AskState| ask.what == What::SwingWeight && ask.reading.is_some();
        let shown = || self.earlier().filter(|(step, _)| shows(&step.on));
        if shown().any(|(_, state)| state.asks.iter().any(read)) {
            return None;
        }
        let (first, _) = asked().next()?;
        Some((OpenPoint::Unread { what: What::SwingWeight }, first.key.clone()))
    }

    /// A shaft that was cut longer or shorter than planned by more than the sheet's tolerance of the length.
    fn shaft(&self) -> Option<Found> {
        let plan = self.club.plan.as_ref()?;
        let target = Target { value: plan.cut_shaft_mm, tolerance: self.club.target.tolerances.length_mm };
        let (step, ask) = self.last_read(What::ShaftLength)?;
        let reading = ask.reading.as_ref()?;
        if ask.doubted || target.tolerance <= 0.0 || target.fit(reading.value) == Fit::Inside {
            return None;
        }
        let (by_mm, id) = (target.value - reading.value, Some(reading.id.clone()));
        let point = if by_mm > 0.0 {
            OpenPoint::CutShort { by_mm, reading: id }
        } else {
            OpenPoint::Off { what: ask.what, value: reading.value, unit: ask.unit, target, reading: id }
        };
        Some((point, step))
    }

    /// A club that is out as it stands may still come in by the grip that is chosen after the cure.
    fn off_target(&self, spares: &[Spare<'_>]) -> Result<Option<Found>, TradeError> {
        let out = self.state.finish.filter(|f| f.deviation_points.abs() > f.tolerance_points);
        let Some(Finish { deviation_points, tolerance_points, chance, .. }) = out else { return Ok(None) };
        let chance = chance_ahead(self.believed, self.state, spares)?.unwrap_or(chance);
        if chance >= 0.5 {
            return Ok(None);
        }
        let reading = self.last_swing_weight();
        let point = OpenPoint::OffTarget { deviation_points, tolerance_points, chance, reading };
        Ok(Some((point, self.where_weight_is_chosen())))
    }

    fn last_swing_weight(&self) -> Option<ReadingId> {
        let standing = self.believed.standing();
        let mut of_club = standing.iter().rev().filter(|r| r.club == self.state.club && r.what == What::SwingWeight);
        of_club.next().map(|r| r.id.clone())
    }

    /// The step where a weight goes into the tip; where it is planned, the step itself.
    fn where_weight_is_chosen(&self) -> String {
        let mut with = self.earlier().filter(|(step, _)| step.on.contains(&Role::TipWeight));
        with.next().map_or(&self.step.key, |(step, _)| &step.key).clone()
    }

    fn beyond_bending(&self) -> Result<Vec<Found>, TradeError> {
        let library = &self.believed.assembly.library;
        let limit_deg = library.head(&self.club.target.head_model)?.bend_limit_deg;
        let lacking_deg = |what: What| {
            let (_, ask) = self.last_read(what)?;
            Some(ask.target?.value - ask.reading.as_ref()?.value)
        };
        // An adapter is set to the setting that comes nearest: what is lacking then is what counts.
        let now = self.club.target.adapter_setting.as_deref();
        let adapter = self.club.plan.as_ref().and_then(|plan| plan.adapter(library));
        let lacking = (lacking_deg(What::Loft).unwrap_or(0.0), lacking_deg(What::Lie).unwrap_or(0.0));
        let set = adapter.and_then(|adapter| {
            let (nearest, now_deg) = (adapter.nearest(now, lacking)?, adapter.turns_deg(now));
            Some((nearest.name.clone(), nearest.loft_deg - now_deg.0, nearest.lie_deg - now_deg.1))
        });
        let mut found = Vec::new();
        for what in [What::Loft, What::Lie] {
            let Some((step, ask)) = self.last_read(what) else { continue };
            let (Some(target), Some(reading)) = (ask.target, &ask.reading) else { continue };
            let turned_deg = set.as_ref().map_or(0.0, |set| if what == What::Loft { set.1 } else { set.2 });
            let by_deg = target.value - reading.value - turned_deg;
            let limit_deg = if set.is_some() { 0.0 } else { limit_deg };
            if !ask.doubted && target.fit(reading.value + turned_deg) == Fit::Off && by_deg.abs() > limit_deg + 1e-9 {
                let (reading, setting) = (Some(reading.id.clone()), set.as_ref().map(|set| set.0.clone()));
                found.push((OpenPoint::BeyondBending { what, by_deg, limit_deg, setting, reading }, step));
            }
        }
        Ok(found)
    }

    /// What a later step does not change any more: all that the sheet asks and that was read, but for the swing weight,
    /// which weights and grips still move, and the angles, which are bent.
    fn off_for_good(&self) -> Vec<Found> {
        self.off(|what| !matches!(what, What::SwingWeight | What::Loft | What::Lie))
    }

    /// What was read outside of what the sheet asks.
    fn off(&self, counts: impl Fn(What) -> bool) -> Vec<Found> {
        let mut found: Vec<Found> = Vec::new();
        let asked: Vec<What> = self.asked_by_sheet();
        for what in asked.into_iter().filter(|what| counts(*what)) {
            let Some((step, ask)) = self.last_read(what) else { continue };
            found.extend(self.off_point(ask).map(|point| (point, step)));
        }
        found
    }

    /// The same, and what the sheet asks and was never read.
    fn off_or_unread(&self) -> Vec<Found> {
        let mut found = Vec::new();
        for what in self.asked_by_sheet() {
            match self.last_read(what) {
                Some((step, ask)) => found.extend(self.off_point(ask).map(|point| (point, step))),
                None => found.extend(self.where_asked(what).map(|step| (OpenPoint::Unread { what }, step))),
            }
        }
        found
    }

    /// What the steps ask and the sheet has a figure for, each once. What this step itself asks and is not read yet is about
    /// to be read.
    fn asked_by_sheet(&self) -> Vec<What> {
        let asked = |step: &StepState, ask: &AskState| step.key != self.step.key || ask.reading.is_some();
        let asks = self.state.steps.iter().flat_map(|step| step.asks.iter().filter(move |ask| asked(step, ask)));
        let mut seen = Vec::new();
        for what in asks.filter(|ask| ask.target.is_some()).map(|ask| ask.what) {
            if !seen.contains(&what) {
                seen.push(what);
            }
        }
        seen
    }

    /// The last step that asks for it.
    fn where_asked(&self, what: What) -> Option<String> {
        let asks = |step: &&StepState| step.asks.iter().any(|ask| ask.what == what && ask.target.is_some());
        self.state.steps.iter().rev().find(asks).map(|step| step.key.clone())
    }

    /// None where it lies in its tolerance; a doubted one is on the list already.
    fn off_point(&self, ask: &AskState) -> Option<OpenPoint> {
        let (target, reading) = (ask.target?, ask.reading.as_ref()?);
        if ask.fit != Some(Fit::Off) || ask.doubted {
            return None;
        }
        let value = match &self.state.finish {
            Some(finish) if ask.what == What::SwingWeight => target.value + finish.deviation_points,
            _ => reading.value,
        };
        let reading = Some(reading.id.clone());
        Some(OpenPoint::Off { what: ask.what, value, unit: ask.unit, target, reading })
    }

    /// The last reading of something, in the order of the steps, with the key of its step: one that has a target, where any
    /// has.
    fn last_read(&self, what: What) -> Option<(String, &AskState)> {
        let read = |step: &'_ StepState, targeted: bool| {
            let of = |ask: &&AskState| ask.what == what && ask.reading.is_some() && ask.target.is_some() == targeted;
            step.asks.iter().rposition(|ask| of(&ask))
        };
        let find = |targeted: bool| {
            let mut steps = self.state.steps.iter().rev();
            steps.find_map(|step| read(step, targeted).map(|place| (step.key.clone(), &step.asks[place])))
        };
        find(true).or_else(|| find(false))
    }
}
