//! The readings of one club in their order, as the hypotheses see them.

use super::anatomy::{Alter, Anatomy};
use super::kinds::CauseKind;
use super::says::CauseSays;
use crate::belief::Believed;
use crate::remedy::Spare;
use estimation::{Change, Effect, Hypothesis, JobModel, Misread, Observation, OnClub, Quantity, Standing};
use jiff::Timestamp;
use std::collections::{BTreeMap, BTreeSet};
use trade::error::TradeError;
use trade::id::{ClubId, ReadingId};
use trade::job::JobClub;
use trade::kind::Role;
use trade::reading::{Reading, What};

/// A reading within this many standard deviations of what the others say is not suspected of being the wrong one.
const SUSPECT: f64 = 2.0;
/// Name that planned readings carry before the number.
const PLANNED: &str = "planned:";

/// Where the club stands at a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Stage {
    /// A part by itself.
    Loose,
    /// Head on the shaft, nothing glued, nothing in the tip.
    Dry,
    /// The weight in the tip, nothing glued.
    Tip,
    /// Glued, no grip.
    Glued,
    /// The grip on.
    Gripped,
}

impl Stage {
    fn of(what: What, on: &[Role]) -> Self {
        let has = |role| on.contains(&role);
        match what {
            What::FinishedLength => Self::Gripped,
            What::SwingWeight | What::TotalMass | What::BalancePoint => match () {
                () if has(Role::Grip) => Self::Gripped,
                () if has(Role::Adhesive) => Self::Glued,
                () if has(Role::TipWeight) => Self::Tip,
                () => Self::Dry,
            },
            _ => Self::Loose,
        }
    }
}

/// How long a change lasts from the reading at which it is first seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Span {
    /// That reading only.
    Only,
    /// Until the next step.
    Step,
    /// From then on.
    On,
}

/// One reading, taken or planned.
#[derive(Debug, Clone)]
pub(super) struct Seen {
    pub obs: Observation,
    pub reading: Reading,
    pub stage: Stage,
    pub planned: bool,
    pub suspect: bool,
}

/// A hypothesis with what it stands for.
#[derive(Debug, Clone)]
pub(super) struct Candidate {
    pub kinds: Vec<CauseKind>,
    /// What it is here.
    pub says: CauseSays,
    /// What a unit alters, for the shift that it means; none for what concerns the reading only.
    pub alter: Option<Alter>,
    pub hypothesis: Hypothesis,
    /// First reading that it concerns, by its place.
    pub from: usize,
    /// The looks that show it, each with from when until when it would: for ever where nothing ended it. Two causes together
    /// are shown by the looks of both.
    pub seen_by: Vec<SeenBy>,
}

/// A state of the club or the scale that a look shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct SeenBy {
    /// The look; it is answered no while the state lasts.
    pub look: What,
    /// When the state was first there.
    pub from: Timestamp,
    /// When it was last there, where it ended.
    pub until: Option<Timestamp>,
}

/// Another club of the set.
pub(super) struct Other<'a> {
    pub club: &'a JobClub,
    pub anatomy: Anatomy,
    /// Its readings in the order of time; none is planned.
    pub seen: Vec<Seen>,
}

/// A reading on a scale.
pub(super) struct OnScale {
    pub id: String,
    pub scale: String,
    pub at: Timestamp,
}

/// One club under inquiry.
pub(super) struct Case<'a> {
    pub believed: &'a Believed<'a>,
    pub club: &'a JobClub,
    pub spares: &'a [Spare<'a>],
    pub model: JobModel,
    pub anatomy: Anatomy,
    /// Readings of the club in the order of time, planned ones last.
    pub seen: Vec<Seen>,
    /// The other clubs of the set with their readings.
    pub others: Vec<Other<'a>>,
    /// All readings of the job on a scale, in the order of time; planned ones left out.
    pub on_scale: Vec<OnScale>,
    /// What was looked at: the empty scale, this club's ferrule.
    pub looks: Vec<&'a Reading>,
    /// All observations of the job, planned ones left out.
    pub observations: Vec<Observation>,
    /// The reading that is asked about, by its place.
    pub asked: usize,
}

impl<'a> Case<'a> {
    /// The case of a reading; none where its club has no plan or the reading says nothing about masses and arms.
    pub(super) fn new(
        believed: &'a Believed<'a>,
        reading: &Reading,
        planned: &[Reading],
        spares: &'a [Spare<'a>],
    ) -> Result<Option<Self>, TradeError> {
        let assembly = believed.assembly;
        let Some(club) = assembly.job.club(&reading.club) else { return Ok(None) };
        let mut readings: Vec<Reading> = believed.standing().into_iter().cloned().collect();
        let taken = readings.len();
        readings.extend(planned.iter().cloned());
        let mut model = assembly.job_model()?;
        assembly.let_drift(&mut model, &readings);
        let Some(anatomy) = Anatomy::of(&model, club.id.as_str()) else { return Ok(None) };
        let mut by_id: BTreeMap<String, Observation> =
            assembly.observations(&readings).into_iter().map(|o| (o.id.clone(), o)).collect();
        let far: BTreeSet<String> =
            believed.belief().innovations()?.into_iter().filter(|i| i.z.abs() > SUSPECT).map(|i| i.id).collect();
        let mut order: Vec<usize> = (0..readings.len()).collect();
        order.sort_by_key(|i| (*i >= taken, readings[*i].at, *i));
        let seen_of = |of: &ClubId| -> Vec<Seen> {
            let of_club = order.iter().filter(|i| readings[**i].club == *of);
            let seen = of_club.filter_map(|i| {
                let reading = &readings[*i];
                let obs = by_id.get(reading.id.as_str())?.clone();
                let planned = *i >= taken;
                let doubted = !planned && (believed.is_doubted(&reading.id) || far.contains(reading.id.as_str()));
                let suspect = doubted && !reading.insisted;
                let stage = Stage::of(reading.what, &reading.on);
                Some(Seen { obs, reading: reading.clone(), stage, planned, suspect })
            });
            seen.collect()
        };
        let seen = seen_of(&club.id);
        let Some(asked) = seen.iter().position(|s| s.reading.id == reading.id) else { return Ok(None) };
        let others = assembly.job.clubs.iter().filter(|c| c.id != club.id).filter_map(|c| {
            let seen = seen_of(&c.id).into_iter().filter(|s| !s.planned).collect();
            Some(Other { club: c, anatomy: Anatomy::of(&model, c.id.as_str())?, seen })
        });
        let others = others.collect();
        let on_scale = order.iter().filter(|i| **i < taken).filter_map(|i| {
            let reading = &readings[*i];
            let scale = by_id.get(reading.id.as_str())?.scale.clone()?;
            Some(OnScale { id: reading.id.0.clone(), scale, at: reading.at })
        });
        let on_scale = on_scale.collect();
        let of_club = |r: &Reading| r.what == What::EmptyScale || r.what.is_look() && r.club == club.id;
        let looks = believed.standing().into_iter().filter(|r| of_club(r)).collect();
        for planned in planned {
            by_id.remove(planned.id.as_str());
        }
        // What is kept and not believed is not given to the causes as believed either; what they are about counts as it is.
        let aside = |o: Observation| if believed.is_set_aside(&o.id) { o.standing(Standing::Doubted) } else { o };
        let observations = by_id.into_values().map(aside).collect();
        Ok(Some(Self { believed, club, spares, model, anatomy, seen, others, on_scale, looks, observations, asked }))
    }

    /// A reading that could be taken now, for [`Case::new`].
    pub(super) fn plan(number: usize, like: &Reading, what: What, on: &[Role], display_step: f64) -> Reading {
        Reading {
            id: ReadingId(format!("{PLANNED}{number:02}")),
            what,
            unit: what.unit(),
            value: 1.0,
            typed: String::new(),
            on: on.to_vec(),
            display_step,
            replaces: None,
            taken_back: None,
            pivot_mm: None,
            insisted: false,
            ..like.clone()
        }
    }

    /// Readings that the hypotheses are about.
    pub(super) fn about(&self, candidates: &[Candidate]) -> BTreeSet<String> {
        let named = candidates.iter().flat_map(|c| {
            let shifted = c.hypothesis.changes.iter().flat_map(|c| &c.effects).map(|e| &e.reading);
            shifted.chain(c.hypothesis.misread.iter().map(|m| &m.reading))
        });
        let own = self.seen.iter().filter(|s| s.suspect).map(|s| &s.obs.id);
        named.chain(own).filter(|id| !id.starts_with(PLANNED)).cloned().collect()
    }

    /// The planned readings as observations.
    pub(super) fn planned(&self) -> Vec<Observation> {
        self.seen.iter().filter(|s| s.planned).map(|s| s.obs.clone()).collect()
    }

    /// Effects of an alteration on the readings of the club within a span.
    pub(super) fn effects(&self, alter: Alter, from: usize, span: Span) -> Vec<Effect> {
        let step = &self.seen[from].reading.step;
        let lasts = |i: usize, s: &Seen| match span {
            Span::Only => i == from,
            Span::Step => i >= from && s.reading.step == *step,
            Span::On => i >= from,
        };
        let each = self.seen.iter().enumerate().filter(|(i, s)| lasts(*i, s));
        let effects =
            each.map(|(_, s)| Effect { reading: s.obs.id.clone(), per_unit: self.anatomy.effect(alter, &s.obs) });
        effects.filter(|e| e.per_unit != 0.0).collect()
    }

    /// Places at which an alteration may first show, at most one a step, with the stage there. A part that is weighed
    /// once the club is together was on it before.
    pub(super) fn onsets(&self, alter: Alter) -> Vec<(usize, Stage)> {
        let mut steps: Vec<(&str, Stage)> = Vec::new();
        let mut onsets = Vec::new();
        let together = self.seen.iter().position(|s| s.stage > Stage::Loose).unwrap_or(self.seen.len());
        let begins = |(i, s): &(usize, &Seen)| !s.planned && (*i < together || s.stage > Stage::Loose);
        for (i, seen) in self.seen.iter().enumerate().filter(begins) {
            let here = (seen.reading.step.as_str(), seen.stage);
            if self.anatomy.effect(alter, &seen.obs) != 0.0 && !steps.contains(&here) {
                steps.push(here);
                onsets.push((i, seen.stage));
            }
        }
        onsets
    }

    /// Whether anything is seen of an alteration after the step in which it first shows.
    pub(super) fn outlasts(&self, alter: Alter, from: usize) -> bool {
        let step = &self.seen[from].reading.step;
        let later = self.seen.iter().enumerate().filter(|(i, s)| *i > from && s.reading.step != *step);
        later.into_iter().any(|(_, s)| self.anatomy.effect(alter, &s.obs) != 0.0)
    }

    /// Suspected readings by their places.
    pub(super) fn suspects(&self) -> impl Iterator<Item = (usize, &Seen)> {
        self.seen.iter().enumerate().filter(|(_, s)| s.suspect)
    }

    /// A meant value in the unit of the observation.
    pub(super) fn meant(seen: &Seen, meant: f64, stretch: f64) -> Misread {
        let unit = if seen.reading.what.unit() == trade::reading::Unit::Millimetre { quantity::INCH_MM } else { 1.0 };
        let reading = seen.obs.id.clone();
        Misread { reading, meant: seen.obs.value + (meant - seen.reading.value) / unit, stretch }
    }

    /// A change of known or unknown amount.
    pub(super) fn change(mean: f64, sd: f64, effects: Vec<Effect>) -> Change {
        Change { mean, sd, effects }
    }

    /// What is on the club at its last reading of the whole club.
    pub(super) fn last_whole(&self) -> Option<&Seen> {
        let whole = |s: &&Seen| !s.planned && s.stage > Stage::Loose && s.reading.what != What::FinishedLength;
        self.seen.iter().rev().find(whole)
    }

    /// Points that a unit of an alteration means on the reading asked about, or on the last of the whole club.
    pub(super) fn points(&self, alter: Alter) -> f64 {
        let asked = &self.seen[self.asked];
        let on = if asked.obs.quantity == Quantity::SwingWeight {
            asked.obs.on
        } else {
            self.last_whole().map_or_else(OnClub::finished, |s| s.obs.on)
        };
        self.anatomy.points(alter, on)
    }
}
