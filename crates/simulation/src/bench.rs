//! A set built at the bench as Setwright advises: its plan, the readings that the steps ask, doubt, the choices of
//! weights and grips, the finish. Readings are made as the app keeps them.

mod measuring;
mod wrong;

use crate::CHECK_POINTS;
use crate::advice::{self, Choice, Followed, Grips, Measured};
use crate::blunder::Blunder;
use crate::club::{Build, CURED, DRY, FINISHED, Faults, TrueClub};
use crate::error::SimulationError;
use crate::hands::{moment, stage};
use crate::job::{CLUBS, Knowledge, SimulatedJob};
use crate::scale::{Instruments, Moment, Name, RULE_STEP_MM, STEP};
use crate::settings::Settings;
use crate::shop::SimulatedShop;
use crate::tally::{BlunderSeen, READ, Tally};
use crate::told::told;
use bench::assembly::Assembly;
use bench::belief::{BAND_95, Believed};
use bench::learned::Learned;
use bench::scale_watch::ScaleWatch;
use bench::work_order::{GripOrder, WorkOrder};
use desk::planner::{self, Picks};
use fact::Fact;
use jiff::Timestamp;
use quantity::{SwingWeight, decimal};
use std::collections::BTreeSet;
use trade::check_weight::CheckWeight;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::Job;
use trade::kind::Role;
use trade::model::PartKind;
use trade::part::{Part, PartState};
use trade::plan::ClubPlan;
use trade::plan::{Missing, PlanLacks};
use trade::reading::{Reading, Unit, What};
use trade::shop::Shop;

/// The first morning: seconds of 2026-01-05T08:00Z, a Monday. Any would do.
const FIRST_MORNING_S: i64 = 1_767_600_000;
/// What the check weight weighs, g.
const CHECK_G: f64 = 412.0;

/// Builds a job as Setwright advises, and gives what the shop has learned after it.
///
/// # Errors
/// Advice that failed; a club that no plan was made for.
pub fn build(
    settings: &Settings,
    shop: &SimulatedShop,
    job: &SimulatedJob,
    way: &'static str,
    measured: Measured,
    learned: &Learned,
) -> Result<(Tally, Learned), SimulationError> {
    let failed = |error: TradeError| SimulationError::Advice {
        shop: shop.id,
        job: job.number,
        way: way.to_owned(),
        what: error.refusal().told(),
    };
    let told = measured.told.map(|sure| told(settings, shop, job, learned, sure));
    let learned = told.as_ref().unwrap_or(learned);
    let mut work = Work::new(settings, shop, job, measured, learned);
    let missing = work.plan().map_err(failed)?;
    // What the plan asks for is ordered, and planned with.
    let stocked = missing.iter().fold(None, |stocked: Option<SimulatedJob>, lack| {
        let (PartKind::Head, Some(from_g)) = (lack.kind, lack.order_from_g) else { return stocked };
        Some(stocked.as_ref().unwrap_or(job).with_ordered_heads(shop, &lack.number, from_g))
    });
    if let Some(stocked) = &stocked {
        work = Work::new(settings, shop, stocked, measured, learned);
        work.plan().map_err(failed)?;
    }
    if let Some(club) = work.job.clubs.iter().find(|c| c.plan.is_none()) {
        let club = club.target.number.clone();
        return Err(SimulationError::Unplanned { shop: shop.id, job: job.number, club });
    }
    let after = work.run().map_err(failed)?;
    Ok((work.tally, after))
}

/// The work on one job.
struct Work<'a> {
    settings: &'a Settings,
    shop: &'a SimulatedShop,
    truth: &'a SimulatedJob,
    tools: Instruments<'a>,
    measured: Measured,
    learned: &'a Learned,
    setup: Shop,
    job: Job,
    parts: Vec<Part>,
    readings: Vec<Reading>,
    /// Blunders not yet found, by club.
    blunders: Vec<Option<Blunder>>,
    seen: Vec<Option<BlunderSeen>>,
    /// By how many hours the work goes on later than in one batch, where some clubs went before the others.
    later_h: f64,
    /// Whether a night has passed since the last reading.
    watch: ScaleWatch,
    /// Readings that a blunder touched.
    touched: Vec<String>,
    /// Doubted readings that something was done about.
    answered: BTreeSet<String>,
    tally: Tally,
}

impl<'a> Work<'a> {
    fn new(
        settings: &'a Settings,
        shop: &'a SimulatedShop,
        truth: &'a SimulatedJob,
        measured: Measured,
        learned: &'a Learned,
    ) -> Self {
        let check = CheckWeight {
            name: "Check weight".into(),
            swing_weight_points: CHECK_POINTS,
            sd_points: 0.04,
            mass_g: CHECK_G,
        };
        let setup = Shop {
            check_weight: (measured.check_weight || measured.offered).then_some(check),
            adhesive: Some("ADHESIVE".into()),
            tape: Some("TAPE".into()),
            tip_weight_cap_g: crate::models::TIP_CAP_G,
            ..Shop::default()
        };
        Self {
            settings,
            shop,
            truth,
            tools: Instruments { shop, job: truth },
            measured,
            learned,
            job: crate::sheet::job_of(settings, truth, &setup),
            setup,
            parts: truth.parts.clone(),
            readings: Vec::new(),
            blunders: (0..CLUBS).map(|slot| Blunder::draw(settings, shop, truth, slot)).collect(),
            seen: vec![None; CLUBS],
            later_h: 0.0,
            watch: ScaleWatch::default(),
            touched: Vec::new(),
            answered: BTreeSet::new(),
            tally: Tally::default(),
        }
    }

    fn assembly(&self) -> Assembly<'_> {
        Assembly {
            job: &self.job,
            library: &self.truth.library,
            shop: &self.setup,
            learned: self.learned,
            watch: &self.watch,
        }
    }

    fn believe(&self) -> Result<Believed<'_>, TradeError> {
        self.assembly().believe(&self.readings)
    }

    fn id(&self, slot: usize) -> ClubId {
        self.job.clubs[slot].id.clone()
    }

    fn hold(&mut self, code: &str, state: PartState) {
        for part in self.parts.iter_mut().filter(|p| p.code == code && p.count.is_none()) {
            part.state = state;
            part.job = (state == PartState::Held).then(|| self.job.id.clone());
        }
    }

    /// Plans the job; gives what is missing for it.
    fn plan(&mut self) -> Result<Vec<Missing>, TradeError> {
        let plan = planner::propose(self.assembly(), &self.parts, &[])?;
        for (slot, club) in plan.clubs.into_iter().enumerate() {
            for part in club.iter().flat_map(|c| &c.parts) {
                self.hold(&part.code, PartState::Held);
            }
            self.job.clubs[slot].plan = club;
        }
        Ok(plan.missing)
    }

    /// What lies on the bench under the label of the plan.
    fn build_of(&self, slot: usize) -> Build {
        let empty = String::new;
        let plan = self.job.clubs[slot].plan.as_ref();
        let code = |kind| plan.and_then(|p| p.part(kind)).map_or_else(empty, |p| p.code.clone());
        let mut tips_g: Vec<f64> = plan
            .into_iter()
            .flat_map(|p| &p.parts)
            .filter(|p| p.kind == PartKind::TipWeight)
            .map(|p| p.mass_g)
            .collect();
        tips_g.sort_by(f64::total_cmp);
        Build {
            head: code(PartKind::Head),
            shaft: code(PartKind::Shaft),
            grip: code(PartKind::Grip),
            tips_g,
            tip_trim_mm: plan.map_or(0.0, |p| p.tip_trim_mm),
            cut_mm: plan.map_or(0.0, |p| p.cut_shaft_mm),
        }
    }

    fn club(&self, slot: usize, faults: Faults) -> TrueClub {
        self.truth.put_together(self.shop, slot, &self.build_of(slot), faults, Knowledge::Everything)
    }

    fn moment(&self, stage: u64, slot: usize) -> Moment {
        let at = moment(self.settings, stage, slot);
        Moment { hours: at.hours + self.later_h, ..at }
    }

    /// When a stage of a club comes, as its readings have it.
    fn at(&self, stage: u64, slot: usize) -> Timestamp {
        let of_job_s = FIRST_MORNING_S + self.truth.number as i64 * 86_400 * 3;
        Timestamp::from_second(of_job_s + self.moment(stage, slot).seconds()).unwrap_or_default()
    }

    /// It is as late as this stage of a club: where a night has passed, what the scale shows next is of another day.
    fn time_passes(&mut self, stage: u64, slot: usize) {
        self.watch.next_day = self.assembly().is_next_day(&self.readings, self.at(stage, slot));
    }

    fn goal_points(&self) -> f64 {
        self.truth.target_points - self.truth.reference_error_points
    }

    /// Keeps a reading.
    fn keep(&mut self, slot: usize, stage: u64, what: What, on: &[Role], value: f64, nth: u64) -> String {
        let at = self.at(stage, slot) + jiff::SignedDuration::from_secs(nth as i64);
        self.watch.next_day = false;
        let id = format!("{:02}-{slot}-{}-{nth:02}", stage, what.key());
        let display_step = match what {
            What::ShaftLength | What::GripCentre | What::FinishedLength | What::BalancePoint => RULE_STEP_MM,
            What::Done | What::EmptyScale | What::FerruleOn | What::HeadNumber => 0.0,
            _ => STEP,
        };
        self.readings.push(Reading {
            id: id.as_str().into(),
            job: self.job.id.clone(),
            club: self.id(slot),
            step: step_key(stage).into(),
            what,
            value,
            unit: what.unit(),
            typed: if what.unit() == Unit::Points {
                SwingWeight::from_points(value).letter(1)
            } else {
                decimal(value, 1)
            },
            on: on.to_vec(),
            scale: None,
            display_step,
            at,
            by: "simulated".into(),
            replaces: None,
            taken_back: None,
            pivot_mm: None,
            insisted: false,
            forecast: None,
        });
        id
    }

    /// Reads the swing weight of some clubs at a stage, each `times`, after saying what it should be.
    fn read_swing_weight(&mut self, slots: &[usize], stage: u64, on: &[Role], times: u64) -> Result<(), TradeError> {
        let place = READ.iter().position(|r| *r == step_key(stage));
        let mut expected = Vec::new();
        if let Some(first) = slots.first() {
            self.time_passes(stage, *first);
        }
        {
            let believed = self.believe()?;
            for &slot in slots {
                expected.push(believed.expected(&self.id(slot), What::SwingWeight, on)?);
            }
        }
        for (&slot, expected) in slots.iter().zip(&expected) {
            let blunder = self.blunders[slot];
            let faults = blunder.map_or_else(Faults::default, |b| b.faults(stage));
            let club = self.club(slot, faults);
            let right_points = self.club(slot, Faults::default()).swing_weight_points(on);
            for nth in 0..times {
                let name = Name { slot, stage, what: What::SwingWeight, nth };
                let shown = self.tools.swing_weight(club.swing_weight_points(on), self.moment(stage, slot), name);
                // A reading is misread once, not three times.
                let entered = blunder.filter(|_| nth == 0).map_or(shown, |b| b.misread(stage, shown, club.mass_g(on)));
                let id = self.keep(slot, stage, What::SwingWeight, on, entered, nth);
                let (Some(e), Some(place)) = (expected, place) else { continue };
                let sd = e.band / BAND_95;
                let wrong_by = entered - shown + club.swing_weight_points(on) - right_points;
                if let Some(blunder) = blunder.filter(|_| wrong_by.abs() > 0.05) {
                    self.touched.push(id);
                    self.saw(slot, blunder, wrong_by.abs() / sd);
                } else if nth == 0 {
                    let z = (entered - e.value) / sd;
                    self.tally.innovations[place].add(z.abs() <= BAND_95);
                    self.tally.z[place].add(z);
                }
            }
        }
        self.look_again(slots, stage, on)
    }

    /// Holds the forecast of the finish against the truth, with what is planned now.
    fn judge_bands(&mut self, slots: &[usize], at: usize) -> Result<(), TradeError> {
        let mut found = Vec::new();
        {
            let believed = self.believe()?;
            for &slot in slots {
                found.push(believed.finish(&self.id(slot))?);
            }
        }
        for (&slot, finish) in slots.iter().zip(found) {
            let Some(finish) = finish else { continue };
            if self.blunders[slot].is_some_and(Blunder::is_of_club) {
                continue;
            }
            let truth = self.club(slot, Faults::default()).finish_points() - self.goal_points();
            self.tally.bands[at].add((truth - finish.deviation_points).abs() <= finish.band_points);
            self.tally.widths[at].add(finish.band_points);
            if at == 3 {
                self.tally.error.add(truth - finish.deviation_points);
                self.tally.left.add(finish.deviation_points);
                self.tally.chance.add(finish.chance);
            }
        }
        Ok(())
    }

    fn run(&mut self) -> Result<Learned, TradeError> {
        let all: Vec<usize> = (0..CLUBS).collect();
        self.judge_bands(&all, 0)?;
        self.check(stage::CHECK)?;
        if self.measured.parts {
            self.measure_parts();
        }
        self.cut()?;
        if self.settings.one_at_a_time {
            if self.measured.offered {
                self.measure_offered(stage::PARTS)?;
            }
            for slot in 0..CLUBS {
                self.dry(&[slot])?;
                self.tips(&[slot])?;
                self.cure(&[slot])?;
                self.grip(&[slot])?;
            }
            return self.close();
        }
        self.dry(&all)?;
        if self.measured.offered {
            self.measure_offered(stage::PARTS)?;
        }
        let order = match self.measured.order {
            Followed::Together => WorkOrder::Batch,
            Followed::AsProposed => advice::order_of_work(&self.believe()?, &self.parts)?,
            Followed::OneCuredFirst => WorkOrder::OneCuredFirst,
        };
        // Those that go before the others, each with whether it is finished.
        let (first, finished) = match order {
            WorkOrder::Batch => (0, false),
            WorkOrder::OneCuredFirst => (1, false),
            WorkOrder::OneFinishedFirst => (1, true),
            WorkOrder::OneOneRest => (2, true),
            WorkOrder::OneByOne => (CLUBS - 1, true),
        };
        for slot in 0..first {
            self.glue(&[slot])?;
            self.cure(&[slot])?;
            if finished {
                self.grip(&[slot])?;
            }
            // The next is glued when this one has cured, or dried.
            self.later_h += if finished { 5.75 } else { 3.0 };
        }
        let rest: Vec<usize> = (first..CLUBS).collect();
        self.glue(&rest)?;
        self.check(stage::RECHECK)?;
        self.cure(&rest)?;
        if self.measured.offered {
            self.measure_offered(stage::TAPE)?;
        }
        let waiting: Vec<usize> = if finished { rest } else { all };
        self.grip(&waiting)?;
        self.close()
    }

    fn glue(&mut self, slots: &[usize]) -> Result<(), TradeError> {
        if self.measured.joints { slots.iter().try_for_each(|slot| self.tips(&[*slot])) } else { self.tips(slots) }
    }

    fn cut(&mut self) -> Result<(), TradeError> {
        let mut expected = Vec::new();
        if self.settings.blunders > 0.0 {
            let believed = self.believe()?;
            for slot in 0..CLUBS {
                expected.push(believed.expected(&self.id(slot), What::ShaftLength, &[])?);
            }
        }
        for slot in 0..CLUBS {
            let blunder = self.blunders[slot];
            let faults = blunder.map_or_else(Faults::default, |b| b.faults(stage::CUT));
            let club = self.club(slot, faults);
            let name = |what| Name { slot, stage: stage::CUT, what, nth: 0 };
            let length = self.tools.length(club.shaft_mm, name(What::ShaftLength));
            let mass = self.tools.mass(club.mass_g(&[Role::Shaft]), name(What::ShaftMass));
            let id = self.keep(slot, stage::CUT, What::ShaftLength, &[], length, 0);
            self.keep(slot, stage::CUT, What::ShaftMass, &[], mass, 0);
            if let (Some(blunder), Some(Some(e))) = (blunder.filter(|_| faults.cut_mm != 0.0), expected.get(slot)) {
                self.touched.push(id);
                self.saw(slot, blunder, faults.cut_mm.abs() * BAND_95 / e.band);
            }
        }
        self.look_again(&[], stage::CUT, &[])
    }

    fn dry(&mut self, slots: &[usize]) -> Result<(), TradeError> {
        self.read_swing_weight(slots, stage::DRY, &DRY, 1)?;
        self.judge_bands(slots, 1)
    }

    /// Weights chosen, read dry, glued; weighed before and after where the shop does so.
    fn tips(&mut self, slots: &[usize]) -> Result<(), TradeError> {
        let ids: Vec<ClubId> = slots.iter().map(|s| self.id(*s)).collect();
        let choices = advice::choose_tips(&self.believe()?, &ids, &self.parts)?;
        self.take(PartKind::TipWeight, choices)?;
        let with_tip: Vec<Role> = DRY.into_iter().chain([Role::TipWeight]).collect();
        self.read_swing_weight(slots, stage::TIP, &with_tip, 1)?;
        self.judge_bands(slots, 2)?;
        let glued: Vec<Role> = with_tip.iter().copied().chain([Role::Adhesive]).collect();
        for &slot in slots {
            if self.measured.joints {
                let club = self.club(slot, self.blunders[slot].map_or_else(Faults::default, |b| b.faults(stage::TIP)));
                for (stage, on) in [(stage::TIP, &with_tip), (stage::GLUE, &glued)] {
                    let name = Name { slot, stage, what: What::TotalMass, nth: 0 };
                    let shown = self.tools.mass(club.mass_g(on), name);
                    self.keep(slot, stage, What::TotalMass, on, shown, 0);
                }
            }
            self.keep(slot, stage::GLUE, What::Done, &glued, 0.0, 0);
        }
        Ok(())
    }

    fn cure(&mut self, slots: &[usize]) -> Result<(), TradeError> {
        self.read_swing_weight(slots, stage::CURED, &CURED, self.measured.cure_readings)?;
        if self.measured.each_tape {
            for &slot in slots {
                let club = self.club(slot, Faults::default());
                self.weigh_tape(slot, stage::TAPE, &club);
            }
        }
        Ok(())
    }

    /// Grips chosen and put on, all at once or one after another, and the clubs read when they have dried.
    fn grip(&mut self, slots: &[usize]) -> Result<(), TradeError> {
        let mut waiting = slots.to_vec();
        while !waiting.is_empty() {
            let in_turn = waiting.len() > 1
                && match self.measured.grips {
                    Grips::AtOnce => false,
                    Grips::AsProposed => advice::order_of_grips(&self.believe()?, &self.parts)? != GripOrder::AtOnce,
                    Grips::InTurn => true,
                };
            let now = if in_turn { 1 } else { waiting.len() };
            let next: Vec<usize> = waiting.drain(..now).collect();
            let ids: Vec<ClubId> = next.iter().map(|s| self.id(*s)).collect();
            let choices = advice::choose_grips(&self.believe()?, &ids, &self.parts)?;
            self.take(PartKind::Grip, choices)?;
            self.judge_bands(&next, 3)?;
            self.finish(&next)?;
            if !waiting.is_empty() {
                // The solvent of this one dries before the next is chosen.
                self.later_h += 1.5;
            }
        }
        Ok(())
    }

    fn finish(&mut self, slots: &[usize]) -> Result<(), TradeError> {
        let wet: Vec<Role> = FINISHED.into_iter().chain([Role::Solvent]).collect();
        self.read_swing_weight(slots, stage::GRIPPED, &wet, 1)?;
        self.read_swing_weight(slots, stage::FINISH, &FINISHED, 1)?;
        for &slot in slots {
            let club = self.club(slot, self.blunders[slot].map_or_else(Faults::default, |b| b.faults(stage::FINISH)));
            let name = |what| Name { slot, stage: stage::FINISH, what, nth: 0 };
            let mass = self.tools.mass(club.mass_g(&FINISHED), name(What::TotalMass));
            let length_mm = club.shaft_mm + club.bore_to_ground_mm + club.cap_mm;
            let length = self.tools.length(length_mm, name(What::FinishedLength));
            self.keep(slot, stage::FINISH, What::TotalMass, &FINISHED, mass, 0);
            self.keep(slot, stage::FINISH, What::FinishedLength, &FINISHED, length, 0);
        }
        self.look_again(slots, stage::FINISH, &FINISHED)?;
        self.judge_bands(slots, 4)
    }

    /// Judges the set by its truth, and learns.
    fn close(&mut self) -> Result<Learned, TradeError> {
        for slot in 0..CLUBS {
            let faults = self.blunders[slot].map_or_else(Faults::default, |b| b.faults(stage::FINISH));
            let truth = self.club(slot, faults).finish_points() - self.goal_points();
            self.tally.finished(truth, self.build_of(slot).tips_g.iter().sum());
        }
        let (good, after) = {
            let believed = self.believe()?;
            let standing = believed.standing();
            let good =
                standing.iter().filter(|r| r.what != What::Done && !self.touched.iter().any(|t| t == r.id.as_str()));
            let good: Vec<(&str, bool)> = good.map(|r| (r.what.key(), believed.is_doubted(&r.id))).collect();
            (good, advice::learn(self.learned, &believed)?)
        };
        for (what, doubted) in good {
            self.tally.false_doubts.add(doubted);
            self.tally.false_doubts_by.entry(what).or_default().add(doubted);
        }
        self.tally.blunders = self.seen.iter().flatten().cloned().collect();
        Ok(after)
    }

    /// Puts what was chosen into the plans.
    fn take(&mut self, kind: PartKind, choices: Vec<(ClubId, Choice)>) -> Result<(), TradeError> {
        let choices: Vec<(usize, Vec<String>)> = choices
            .into_iter()
            .filter_map(|(id, codes)| Some((self.job.clubs.iter().position(|c| c.id == id)?, codes?)))
            .collect();
        // All are laid back before any is taken: two clubs may exchange theirs.
        for (slot, _) in &choices {
            let plan = self.job.clubs[*slot].plan.as_ref();
            let old = plan.and_then(|p| p.part(kind)).map(|p| p.code.clone()).filter(|_| kind != PartKind::TipWeight);
            if let Some(old) = old {
                self.hold(&old, PartState::Free);
            }
        }
        for (slot, codes) in choices {
            let plan = self.replanned(slot, kind, &codes)?;
            self.job.clubs[slot].plan = Some(plan);
            for code in &codes {
                self.hold(code, PartState::Held);
            }
        }
        Ok(())
    }

    fn replanned(&self, slot: usize, kind: PartKind, codes: &[String]) -> Result<ClubPlan, TradeError> {
        let club = &self.job.clubs[slot];
        let part = |code: &str| self.parts.iter().find(|p| p.code == code);
        let planned = club.plan.iter().flat_map(|p| &p.parts).filter(|p| p.kind != kind).map(|p| p.code.as_str());
        let all: Vec<&Part> = planned.chain(codes.iter().map(String::as_str)).filter_map(part).collect();
        let of = |kind| all.iter().find(|p| p.kind == kind).copied();
        let need = |kind: PartKind| {
            of(kind).ok_or_else(|| TradeError::refused(PlanLacks::Part { number: club.target.number.clone(), kind }))
        };
        let picks = Picks {
            screw_more_g: 0.0,
            head: need(PartKind::Head)?,
            shaft: need(PartKind::Shaft)?,
            grip: need(PartKind::Grip)?,
            adapter: None,
            ferrule: of(PartKind::Ferrule),
            tips: all.iter().filter(|p| p.kind == PartKind::TipWeight).copied().collect(),
        };
        planner::plan_with(self.assembly(), club, &picks)
    }
}

/// Key of the step that a stage's readings belong to.
const fn step_key(stage: u64) -> &'static str {
    match stage {
        stage::CHECK | stage::PARTS => "weighed",
        stage::CUT => "cut",
        stage::DRY => "dry",
        stage::TIP => "tip",
        stage::GLUE => "glue",
        stage::RECHECK | stage::CURED | stage::TAPE => "cured",
        stage::GRIPPED => "gripped",
        _ => "finish",
    }
}
