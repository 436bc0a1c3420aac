//! A simulated shop: true values drawn from the stated priors, clubs built from them, readings with noise and rounding.
//! Swing weights are summed up here piece by piece, not by the belief's code.

use bench::assembly::Assembly;
use bench::learned::{JOB_LEVEL, KEPT_PER_JOB, Learned};
use bench::scale_watch::ScaleWatch;
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64;
use std::collections::BTreeMap;
use trade::id::{ClubId, JobId, ReadingId, SheetId};
use trade::job::{Job, JobClub, JobState};
use trade::kind::Role;
use trade::model::Library;
use trade::reading::{Reading, Unit, What};
use trade::shop::Shop;

/// What stands on the club dry, cured and finished.
pub const DRY: &[Role] = &[Role::Head, Role::Shaft, Role::Ferrule, Role::Turnings, Role::TipWeight];
pub const CURED: &[Role] = &[Role::Head, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive];
pub const FINISHED: &[Role] =
    &[Role::Head, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive, Role::Tape, Role::Grip];

/// What is fixed of all simulated shops: models and planned jobs.
pub struct World {
    pub library: Library,
    pub shop: Shop,
    /// The irons with their own head and grip, and the left-hander's with others; both have the same shaft.
    pub jobs: [Job; 2],
}

impl World {
    pub fn new() -> Self {
        let library: Library = demo::models().into_iter().collect();
        let shop = demo::shop();
        let sheets = demo::sheets(jiff::civil::date(2026, 3, 2));
        let jobs = [0, 4].map(|i: usize| {
            let clubs = sheets[i].clubs.iter().zip(1..).map(|(target, slot)| JobClub {
                id: ClubId(format!("club-{i}-{slot}")),
                slot,
                card: format!("J{i}-{slot}"),
                target: target.clone(),
                work: None,
                plan: None,
                version: 1,
            });
            let mut job = Job {
                id: JobId(format!("job-{i}")),
                number: i as i64,
                sheet_id: SheetId("sheet".into()),
                sheet: sheets[i].clone(),
                state: JobState::Planned,
                steps: shop.steps.clone(),
                made_at: "2026-03-02T08:00:00Z".parse().unwrap(),
                clubs: clubs.collect(),
                version: 1,
            };
            let assembly = Assembly {
                job: &job,
                library: &library,
                shop: &shop,
                learned: Learned::nothing(),
                watch: ScaleWatch::nothing(),
            };
            let plan = desk::planner::propose(assembly, &demo::parts(7), &[]).unwrap();
            assert!(plan.missing.is_empty(), "{:?}", plan.missing);
            for (club, plan) in job.clubs.iter_mut().zip(plan.clubs) {
                club.plan = plan;
            }
            job
        });
        Self { library, shop, jobs }
    }

    pub fn assembly<'a>(&'a self, job: &'a Job, learned: &'a Learned) -> Assembly<'a> {
        Assembly { job, library: &self.library, shop: &self.shop, learned, watch: ScaleWatch::nothing() }
    }
}

/// One shop with its own truth.
pub struct Simulated<'a> {
    world: &'a World,
    rng: Pcg64,
    /// True values of what is carried from job to job, by key.
    pub truth: BTreeMap<String, f64>,
    /// By how much the true scatter of these is another than a new shop's.
    pub times: BTreeMap<&'static str, f64>,
    jobs: i64,
}

impl<'a> Simulated<'a> {
    pub fn new(world: &'a World, seed: u64) -> Self {
        Self { world, rng: Pcg64::seed_from_u64(seed), truth: BTreeMap::new(), times: BTreeMap::new(), jobs: 0 }
    }

    /// A standard normal number, by Box and Muller.
    pub fn normal(&mut self) -> f64 {
        let (a, b): (f64, f64) = (self.rng.random(), self.rng.random());
        (-2.0 * (1.0 - a).ln()).sqrt() * (2.0 * std::f64::consts::PI * b).cos()
    }

    fn times(&self, key: &str) -> f64 {
        self.times.get(key).copied().unwrap_or(1.0)
    }

    /// Builds one job to the end: the job with its own number, and all its readings.
    pub fn build(&mut self, which: usize) -> (Job, Vec<Reading>) {
        self.jobs += 1;
        let mut job = self.world.jobs[which].clone();
        job.number = self.jobs;
        let model = self.world.assembly(&job, Learned::nothing()).job_model().unwrap();
        // What the job shares.
        let mut shared = BTreeMap::new();
        for prior in &model.shared {
            let value = if let Some(of) = prior.key.strip_suffix(JOB_LEVEL) {
                let kind = of.split(':').next().unwrap();
                let times = self.times(&format!("{kind}.job"));
                prior.sd * times * self.normal()
            } else if prior.key.starts_with("turned:") || prior.key == "reference" || prior.key == "check_weight" {
                prior.sd * self.normal()
            } else {
                let fresh = prior.sd * self.normal();
                *self.truth.entry(prior.key.clone()).or_insert(fresh)
            };
            shared.insert(prior.key.clone(), value);
        }
        let mut offset = BTreeMap::new();
        for scale in &model.scales {
            let half = scale.offset_sd * 0.5f64.sqrt();
            let fresh = half * self.normal();
            let habit = *self.truth.entry(format!("usual_offset:{}", scale.key)).or_insert(fresh);
            let today = half * self.times("today") * self.normal();
            offset.insert(scale.key.clone(), habit + today);
        }
        let mut readings = Vec::new();
        for club in &model.clubs {
            self.club(&job, club, &shared, &offset, &mut readings);
        }
        let check = self.world.shop.check_weight.clone().unwrap();
        let first = job.clubs[0].id.clone();
        for _ in 0..3 {
            let value = check.swing_weight_points + shared["check_weight"] + offset["balance"];
            self.read(&job, &first, What::CheckWeight, &[], value, &mut readings);
        }
        (job, readings)
    }

    fn draw(&mut self, prior: &estimation::Prior, times: f64, shared: &BTreeMap<String, f64>) -> f64 {
        let own = prior.piece_sd * times * self.normal();
        prior.mean + own + prior.shared.iter().map(|s| s.gain * shared[&s.key]).sum::<f64>()
    }

    fn club(
        &mut self,
        job: &Job,
        club: &estimation::Club,
        shared: &BTreeMap<String, f64>,
        offset: &BTreeMap<String, f64>,
        readings: &mut Vec<Reading>,
    ) {
        let cap_times = self.times("cap.piece");
        let cap = self.draw(&club.cap_in, cap_times, shared);
        let longer = club.length_sd_in * self.normal();
        let mut pieces = Vec::new();
        for piece in &club.pieces {
            let times = self.times(match piece.role {
                Role::Adhesive => "adhesive.piece",
                Role::Tape => "tape.piece",
                _ => "",
            });
            let arm_times = self.times(if piece.role == Role::Grip { "grip_centre.piece" } else { "" });
            let mass = self.draw(&piece.mass_g, times, shared);
            let arm = self.draw(&piece.arm_in, arm_times, shared);
            let from_cap = piece.arm_from == estimation::Datum::GripCap;
            pieces.push((piece.role, mass, arm, if piece.moves_with_length { longer } else { 0.0 }, from_cap));
        }
        let swing_weight = |on: &[Role]| {
            let lift = if on.contains(&Role::Grip) { cap } else { 0.0 };
            let on_it = pieces.iter().filter(|p| on.contains(&p.0));
            // Ounces and inches, A0 at 161 oz·in, 1.75 oz·in a point.
            let oz_in: f64 = on_it
                .map(|(_, g, arm, moved, from_cap)| {
                    g / 28.349_523_125 * (arm + moved + if *from_cap { 0.0 } else { lift } - 14.0)
                })
                .sum();
            (oz_in - 161.0) / 1.75
        };
        let mass = |on: &[Role]| pieces.iter().filter(|p| on.contains(&p.0)).map(|p| p.1).sum::<f64>();
        let id = ClubId(club.key.clone());
        for on in [DRY, CURED, FINISHED] {
            self.read(job, &id, What::SwingWeight, on, swing_weight(on) + offset["balance"], readings);
        }
        for on in [DRY, CURED] {
            self.read(job, &id, What::TotalMass, on, mass(on) + offset["mass"], readings);
        }
        self.read(job, &id, What::TapeMass, &[], mass(&[Role::Tape]) + offset["mass"], readings);
    }

    fn read(&mut self, job: &Job, club: &ClubId, what: What, on: &[Role], value: f64, readings: &mut Vec<Reading>) {
        let (scale, times) = match what.unit() {
            Unit::Points => (&self.world.shop.balance_scale, self.times("noise")),
            _ => (&self.world.shop.mass_scale, self.times("noise:mass")),
        };
        let shown = value + scale.noise_sd * times * self.normal();
        let shown = (shown / scale.display_step).round() * scale.display_step;
        readings.push(Reading {
            id: ReadingId(format!("r{:04}-{:04}", self.jobs, readings.len())),
            job: job.id.clone(),
            club: club.clone(),
            step: "bench".into(),
            what,
            value: shown,
            unit: what.unit(),
            typed: format!("{shown:.1}"),
            on: on.to_vec(),
            scale: Some(scale.key.clone()),
            display_step: scale.display_step,
            at: "2026-03-02T09:00:00Z".parse().unwrap(),
            by: "Wren".into(),
            replaces: None,
            taken_back: None,
            pivot_mm: None,
            insisted: false,
            forecast: None,
        });
    }

    /// The time after a job: what it had slides as the shop believes that it slides.
    pub fn pass(&mut self, learned: &Learned, job: i64) {
        for value in learned.values.iter().filter(|v| v.from.last().is_some_and(|f| f.job == job)) {
            let moved = (1.0 - KEPT_PER_JOB.powi(2)).sqrt() * value.prior_sd * self.normal();
            let truth = self.truth.get_mut(&value.key).unwrap();
            *truth = KEPT_PER_JOB * *truth + moved;
        }
    }

    /// Builds a job and lets the shop learn from it.
    pub fn learn(&mut self, which: usize, learned: &Learned) -> Learned {
        let (job, readings) = self.build(which);
        let believed = self.world.assembly(&job, learned).believe(&readings).unwrap();
        let next = learned.after(&believed).unwrap();
        self.pass(&next, job.number);
        next
    }
}
