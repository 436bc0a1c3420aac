//! Goal: what the bench is told (remedies, extra measurements) follows from the parts that are there and from what is
//! still to come. Method: a set of the demonstration shop, planned from its own stock; readings made up around what the
//! belief expects; figures held against sums written out here.

use bench::assembly::Assembly;
use bench::club_state::{ClubState, Surroundings};
use bench::learned::Learned;
use bench::remedy::Spare;
use bench::scale_watch::ScaleWatch;
use demo as shop_of;
use jiff::Timestamp;
use trade::id::{ClubId, JobId, PartId, ReadingId, SheetId};
use trade::job::{Job, JobClub, JobState};
use trade::kind::Role;
use trade::model::{Library, PartKind};
use trade::part::{Part, PartState};
use trade::reading::{Reading, What};
use trade::shop::Shop;

/// Everything that is on a finished club.
pub const WHOLE: [Role; 9] = [
    Role::Head,
    Role::Adapter,
    Role::Screw,
    Role::Shaft,
    Role::Ferrule,
    Role::TipWeight,
    Role::Adhesive,
    Role::Tape,
    Role::Grip,
];

/// A set of irons with its plan, its readings, and the stock that is left.
pub(crate) struct Set {
    pub job: Job,
    pub library: Library,
    pub shop: Shop,
    pub learned: Learned,
    pub readings: Vec<Reading>,
    pub parts: Vec<Part>,
    pub watch: ScaleWatch,
}

pub(crate) fn time(minutes: i64) -> Timestamp {
    Timestamp::from_second(1_770_000_000 + minutes * 60).unwrap()
}

impl Set {
    /// The first iron set of the demonstration sheets, without a plan.
    pub fn open() -> Self {
        let sheet = shop_of::sheets(jiff::civil::date(2026, 3, 2))
            .into_iter()
            .find(|s| s.clubs.len() >= 6 && s.clubs.iter().all(|c| c.head_model == "SISKIN"))
            .expect("a set of irons");
        let clubs = (1i64..)
            .zip(&sheet.clubs)
            .map(|(slot, target)| JobClub {
                id: ClubId(format!("club-{slot}")),
                slot,
                card: format!("J1-{slot}"),
                target: target.clone(),
                work: None,
                plan: None,
                version: 0,
            })
            .collect();
        let shop = shop_of::shop();
        let job = Job {
            id: JobId("job".into()),
            number: 1,
            sheet_id: SheetId("sheet".into()),
            sheet,
            state: JobState::Planned,
            steps: shop.steps.clone(),
            made_at: time(0),
            clubs,
            version: 0,
        };
        let mut parts = shop_of::parts(7);
        for (i, part) in parts.iter_mut().enumerate() {
            part.id = PartId(format!("part-{i}"));
        }
        let library = shop_of::models().into_iter().collect();
        Self {
            job,
            library,
            shop,
            learned: Learned::default(),
            readings: Vec::new(),
            parts,
            watch: ScaleWatch::default(),
        }
    }

    /// The same with its plan accepted and its parts held.
    pub fn planned() -> Self {
        let mut set = Self::open();
        let plan = desk::planner::propose(set.assembly(), &set.parts, &[]).unwrap();
        for (club, plan) in set.job.clubs.iter_mut().zip(plan.clubs) {
            let plan = plan.expect("the demonstration stock is enough");
            for planned in &plan.parts {
                let part = set.parts.iter_mut().find(|p| p.id == planned.part).unwrap();
                if part.count.is_none() {
                    part.state = PartState::Held;
                    part.job = Some(set.job.id.clone());
                    part.club = Some(club.id.clone());
                }
            }
            club.plan = Some(plan);
        }
        set
    }

    pub fn assembly(&self) -> Assembly<'_> {
        Assembly {
            job: &self.job,
            library: &self.library,
            shop: &self.shop,
            learned: &self.learned,
            watch: &self.watch,
        }
    }

    pub fn club(&self, slot: i64) -> ClubId {
        ClubId(format!("club-{slot}"))
    }

    /// Adds a reading at a step, at a minute.
    pub fn read(&mut self, slot: i64, step: &str, what: What, value: f64, minute: i64) -> ReadingId {
        let on = self.job.step(step).map(|s| s.on.clone()).unwrap_or_default();
        self.read_on(slot, step, what, value, minute, on)
    }

    pub fn read_on(&mut self, slot: i64, step: &str, what: What, value: f64, minute: i64, on: Vec<Role>) -> ReadingId {
        let id = ReadingId(format!("r{:04}", self.readings.len()));
        self.readings.push(Reading {
            id: id.clone(),
            job: self.job.id.clone(),
            club: self.club(slot),
            step: step.into(),
            what,
            value,
            unit: what.unit(),
            typed: value.to_string(),
            on,
            scale: None,
            display_step: if what == What::Done { 0.0 } else { 0.1 },
            at: time(minute),
            by: "bench".into(),
            replaces: None,
            taken_back: None,
            pivot_mm: None,
            insisted: false,
            forecast: None,
        });
        id
    }

    /// What a step's swing weight should read.
    pub fn expected(&self, slot: i64, step: &str) -> f64 {
        let believed = self.assembly().believe(&self.readings).unwrap();
        let on = self.job.step(step).unwrap().on.clone();
        believed.expected(&self.club(slot), What::SwingWeight, &on).unwrap().unwrap().value
    }

    /// Reads a step's balance at what is expected plus some points, to a tenth.
    pub fn read_off(&mut self, slot: i64, step: &str, off_points: f64, minute: i64) -> ReadingId {
        let value = ((self.expected(slot, step) + off_points) * 10.0).round() / 10.0;
        self.read(slot, step, What::SwingWeight, value, minute)
    }

    /// What a role of a club is believed to weigh, g.
    pub fn state_mass(&self, slot: i64, role: Role) -> f64 {
        let believed = self.assembly().believe(&self.readings).unwrap();
        believed.piece(&self.club(slot), role).unwrap().map_or(0.0, |(mass_g, _)| mass_g)
    }

    /// The builder stands by the last reading.
    pub fn insist(&mut self) {
        self.readings.last_mut().unwrap().insisted = true;
    }

    pub fn spares(&self) -> Vec<Spare<'_>> {
        self.parts
            .iter()
            .filter(|p| p.is_free())
            .filter_map(|part| {
                let nominal = match part.kind {
                    PartKind::TipWeight => self.library.tip_weight(&part.model).unwrap().mass_g,
                    PartKind::Ferrule => self.library.ferrule(&part.model).unwrap().mass_g,
                    PartKind::Adapter => self.library.adapter(&part.model).unwrap().mass_g,
                    PartKind::Grip => self.library.grip(&part.model).unwrap().mass_g,
                    PartKind::Head => part.mass_g?,
                    _ => return None,
                };
                Some(Spare { part, mass_g: part.mass_g.unwrap_or(nominal) })
            })
            .collect()
    }

    pub fn state(&self, slot: i64) -> ClubState {
        let believed = self.assembly().believe(&self.readings).unwrap();
        let around = Surroundings { batches: &[], overrides: &[], now: time(600) };
        let club = self.job.club(&self.club(slot)).unwrap();
        bench::club_state::club_state(&believed, around, club).unwrap()
    }
}
