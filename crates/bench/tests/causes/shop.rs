//! A job of the invented shop, its truth drawn from what the belief starts with, and a bench that reads it. Swing weights are
//! summed up in ounces and inches here, by other means than the belief's.

#![allow(dead_code, reason = "tests and bench each use a part of it")]

use super::fault::Fault;
use bench::assembly::Assembly;
use bench::learned::Learned;
use bench::remedy::Spare;
use bench::scale_watch::ScaleWatch;
use desk::planner;
use estimation::{Datum, JobModel, Prior};
use jiff::{Timestamp, ToSpan};
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64;
use trade::id::{ClubId, JobId, PartId, ReadingId, SheetId};
use trade::job::{Job, JobClub, JobState};
use trade::kind::Role;
use trade::model::{Library, PartKind};
use trade::part::Part;
use trade::reading::{Reading, Unit, What};
use trade::shop::Shop;

/// The steps that read something, in their order, with what they read.
pub const STEPS: [(&str, &[What]); 7] = [
    ("weighed", &[What::HeadMass, What::GripMass]),
    ("cut", &[What::ShaftLength, What::ShaftMass]),
    ("dry", &[What::SwingWeight]),
    ("tip", &[What::SwingWeight]),
    ("cured", &[What::SwingWeight]),
    ("gripped", &[What::SwingWeight]),
    ("finish", &[What::SwingWeight, What::TotalMass, What::FinishedLength]),
];

/// A standard normal number (Box and Muller).
pub fn normal(rng: &mut Pcg64) -> f64 {
    let (u, v): (f64, f64) = (1.0 - rng.random::<f64>(), rng.random());
    (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
}

/// A job with its plan accepted.
pub struct Front {
    pub shop: Shop,
    pub library: Library,
    pub parts: Vec<Part>,
    pub learned: Learned,
    pub job: Job,
}

impl Front {
    /// The demonstration's sheet of this number, planned from its stock.
    pub fn new(sheet: usize, seed: u64) -> Self {
        Self::planned(demo::sheets(jiff::civil::date(2026, 3, 2)).swap_remove(sheet), seed)
    }

    /// A bag of fourteen: irons, driver, wedges, putter, and two irons more.
    pub fn of_fourteen(seed: u64) -> Self {
        let sheets = demo::sheets(jiff::civil::date(2026, 3, 2));
        let mut bag = sheets[0].clone();
        bag.clubs.extend(sheets[1..4].iter().flat_map(|s| s.clubs.clone()));
        let more: Vec<_> = sheets[0].clubs.iter().take(14 - bag.clubs.len()).cloned().collect();
        bag.clubs.extend(more);
        Self::planned(bag, seed)
    }

    fn planned(sheet: trade::sheet::Sheet, seed: u64) -> Self {
        let shop = demo::shop();
        let library: Library = demo::models().into_iter().collect();
        let demo_parts = demo::parts(seed);
        let mut parts = demo_parts.clone();
        // The heads that need a few grams in the tip: the lightest five of each number.
        let lightest = |part: &Part| {
            let lighter = |p: &&Part| {
                p.kind == PartKind::Head && p.model == part.model && p.number == part.number && p.mass_g < part.mass_g
            };
            demo_parts.iter().filter(lighter).count() < 5
        };
        parts.retain(|p| p.kind != PartKind::Head || lightest(p));
        for part in &mut parts {
            part.id = PartId(format!("P-{}", part.code));
        }
        let clubs = sheet.clubs.iter().enumerate().map(|(i, target)| JobClub {
            id: ClubId(format!("club-{i:02}")),
            slot: i as i64 + 1,
            card: format!("J1-{}", i + 1),
            target: target.clone(),
            work: None,
            plan: None,
            version: 0,
        });
        let mut job = Job {
            id: JobId("job".into()),
            number: 1,
            sheet_id: SheetId("sheet".into()),
            clubs: clubs.collect(),
            sheet,
            state: JobState::Planned,
            steps: shop.steps.clone(),
            made_at: "2026-03-02T08:00:00Z".parse().unwrap(),
            version: 0,
        };
        let learned = Learned::default();
        let assembly =
            Assembly { job: &job, library: &library, shop: &shop, learned: &learned, watch: ScaleWatch::nothing() };
        let plan = planner::propose(assembly, &parts, &[]).unwrap();
        for (club, plan) in job.clubs.iter_mut().zip(plan.clubs) {
            assert!(plan.is_some(), "the demonstration can be built");
            club.plan = plan;
        }
        let taken: Vec<PartId> =
            job.clubs.iter().flat_map(|c| &c.plan.as_ref().unwrap().parts).map(|p| p.part.clone()).collect();
        parts.retain(|p| p.count.is_some() || !taken.contains(&p.id));
        Self { shop, library, parts, learned, job }
    }

    pub fn assembly(&self) -> Assembly<'_> {
        Assembly {
            job: &self.job,
            library: &self.library,
            shop: &self.shop,
            learned: &self.learned,
            watch: ScaleWatch::nothing(),
        }
    }

    pub fn spares(&self) -> Vec<Spare<'_>> {
        let spare = |part| Some(Spare { part, mass_g: part.mass_g? });
        self.parts.iter().filter(|p| p.kind != PartKind::Shaft).filter_map(spare).collect()
    }

    pub fn planned_g(&self, club: usize, role: Role) -> f64 {
        self.job.clubs[club].plan.as_ref().unwrap().mass_g(role)
    }
}

/// One piece as it truly is: grams, inches from the butt end of the shaft.
#[derive(Debug, Clone, Copy)]
pub struct TruePiece {
    pub role: Role,
    pub mass_g: f64,
    pub arm_in: f64,
    pub moves: bool,
}

#[derive(Debug, Clone)]
pub struct TrueClub {
    pub pieces: Vec<TruePiece>,
    pub cap_in: f64,
    /// To the ground point.
    pub length_in: f64,
    pub tip_to_ground_mm: f64,
}

/// The truth about a job and its scales.
pub struct Truth {
    pub clubs: Vec<TrueClub>,
    pub swing_weight_offset: f64,
    pub mass_offset: f64,
    /// Offset of the swing weight by quarter hours since the first reading.
    drift: Vec<f64>,
    pub check_points: f64,
}

impl Truth {
    pub fn draw(front: &Front, rng: &mut Pcg64) -> Self {
        let model: JobModel = front.assembly().job_model().unwrap();
        let shared: Vec<(String, f64)> =
            model.shared.iter().map(|s| (s.key.clone(), s.mean_shift + s.sd * normal(rng))).collect();
        let value = |prior: &Prior, rng: &mut Pcg64| {
            let of = |key: &str| shared.iter().find(|(k, _)| k == key).unwrap().1;
            prior.mean + prior.piece_sd * normal(rng) + prior.shared.iter().map(|s| s.gain * of(&s.key)).sum::<f64>()
        };
        let clubs = model
            .clubs
            .iter()
            .zip(&front.job.clubs)
            .map(|(club, of)| {
                let longer_in = club.length_sd_in * normal(rng);
                let cap_in = value(&club.cap_in, rng);
                let pieces = club.pieces.iter().map(|piece| {
                    let mass_g = value(&piece.mass_g, rng).max(0.0);
                    let from_cap = if piece.arm_from == Datum::GripCap { cap_in } else { 0.0 };
                    let moved = if piece.moves_with_length { longer_in } else { 0.0 };
                    let arm_in = value(&piece.arm_in, rng) - from_cap + moved;
                    TruePiece { role: piece.role, mass_g, arm_in, moves: piece.moves_with_length }
                });
                let pieces: Vec<TruePiece> = pieces.collect();
                TrueClub {
                    pieces,
                    cap_in,
                    length_in: club.shaft_length_in + longer_in,
                    tip_to_ground_mm: of.plan.as_ref().unwrap().tip_to_ground_mm,
                }
            })
            .collect();
        let scale = |i: usize, rng: &mut Pcg64| model.scales[i].offset_mean + model.scales[i].offset_sd * normal(rng);
        let sd = front.shop.balance_scale.drift_sd_per_root_h * 0.5;
        let mut drift = vec![0.0];
        for _ in 0..400 {
            drift.push(drift[drift.len() - 1] + sd * normal(rng));
        }
        let check = front.shop.check_weight.as_ref().unwrap();
        let check_points = check.swing_weight_points + check.sd_points * normal(rng);
        Self { clubs, swing_weight_offset: scale(0, rng), mass_offset: scale(1, rng), drift, check_points }
    }
}

/// Readings of a job as they come, one every three minutes.
pub struct Bench<'a> {
    pub front: &'a Front,
    pub truth: Truth,
    pub rng: Pcg64,
    pub readings: Vec<Reading>,
    pub faults: Vec<Fault>,
    /// What the blunder does to each reading, in its unit.
    pub shifts: Vec<f64>,
}

impl<'a> Bench<'a> {
    pub fn new(front: &'a Front, seed: u64) -> Self {
        let mut rng = Pcg64::seed_from_u64(seed);
        let truth = Truth::draw(front, &mut rng);
        Self { front, truth, rng, readings: Vec::new(), faults: Vec::new(), shifts: Vec::new() }
    }

    fn now(&self) -> Timestamp {
        let start: Timestamp = "2026-03-02T09:00:00Z".parse().unwrap();
        start + (3 * self.readings.len() as i64).minutes()
    }

    /// Quarter hours of work so far, as the clock of the wall counts them.
    fn quarter(&self) -> usize {
        self.readings.len() * 3 / 15
    }

    /// Reads one thing of a club at a step and keeps it.
    pub fn read(&mut self, club: usize, step: &str, what: What, on: Option<&[Role]>) -> usize {
        let roles = on.map_or_else(|| self.front.job.step(step).unwrap().on.clone(), <[Role]>::to_vec);
        let mut seen = super::fault::Seen {
            club: self.truth.clubs[club].clone(),
            on: roles.clone(),
            gap_in: 0.0,
            head_out_in: 0.0,
            shown: 0.0,
            shaft_longer_in: 0.0,
            off_zero: false,
            other_number: false,
        };
        let faults: Vec<Fault> = self.faults.iter().filter(|f| f.acts(self, club, step, what)).cloned().collect();
        let mut shift = -seen.truth(what, self.truth.check_points);
        for fault in &faults {
            fault.on_club(&mut seen);
        }
        shift += seen.truth(what, self.truth.check_points);
        let scale = &self.front.shop.balance_scale;
        let truth = seen.truth(what, self.truth.check_points);
        let (value, step_of_display) = match what.unit() {
            Unit::Points => {
                let systematic = self.truth.swing_weight_offset + self.truth.drift[self.quarter()];
                (truth + systematic + scale.noise_sd * normal(&mut self.rng), scale.display_step)
            }
            Unit::Gram => {
                let scale = &self.front.shop.mass_scale;
                (truth + self.truth.mass_offset + scale.noise_sd * normal(&mut self.rng), scale.display_step)
            }
            Unit::None => (truth, 0.0),
            _ => {
                let sd = if what == What::BalancePoint { 1.0 } else { 0.4 };
                (truth + sd * normal(&mut self.rng), 0.0)
            }
        };
        seen.shown = value;
        for fault in &faults {
            fault.on_display(&mut seen);
        }
        if what == What::EmptyScale {
            seen.shown = f64::from(u8::from(!seen.off_zero));
        }
        shift += seen.shown - value;
        let decimals = 10.0;
        let value = (seen.shown * decimals).round() / decimals;
        let typed = match what.unit() {
            Unit::Points => quantity::SwingWeight::from_points(value).letter(1),
            _ => format!("{value:.1}"),
        };
        let mut reading = Reading {
            id: ReadingId(format!("r{:04}", self.readings.len())),
            job: self.front.job.id.clone(),
            club: self.front.job.clubs[club].id.clone(),
            step: step.into(),
            what,
            value,
            unit: what.unit(),
            typed,
            on: roles,
            scale: match what.unit() {
                Unit::Points => Some(scale.key.clone()),
                Unit::Gram => Some(self.front.shop.mass_scale.key.clone()),
                _ => None,
            },
            display_step: step_of_display,
            at: self.now(),
            by: "Runa".into(),
            replaces: None,
            taken_back: None,
            pivot_mm: None,
            insisted: false,
            forecast: None,
        };
        for fault in &faults {
            fault.on_entry(&mut reading);
        }
        shift += reading.value - value;
        self.shifts.push(shift);
        self.readings.push(reading);
        self.readings.len() - 1
    }
}
