//! One simulated job: its day, its parts and what the hand does to each club.

use crate::club::{Build, Faults, Mass, TrueClub, cut_shaft};
use crate::draw::{Draw, Stream};
use crate::models::{self, IRONS, Nominal, TRAY_G};
use crate::settings::{Reference, Settings, Trouble};
use crate::shop::{GripTruth, HeadTruth, SimulatedShop, target_shift_points};
use std::collections::BTreeMap;
use trade::kind::Role;
use trade::model::Library;
use trade::model::PartKind;
use trade::part::Part;

/// Clubs of a job.
pub const CLUBS: usize = IRONS.len();
/// Heads of each number in the boxes.
pub(crate) const HEADS_A_NUMBER: usize = 4;
/// Shafts in the rack.
const SHAFTS: usize = 12;
/// Spare grips beside one for each club.
const SPARE_GRIPS: usize = 60;
const FEW_GRIPS: usize = 12;

/// How much is known when a club is put together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Knowledge {
    /// Everything: the truth.
    Everything,
    /// The shop's true means and today's, but of the pieces only what was weighed.
    Means,
}

/// What one day does to everything.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Day {
    /// What the balance scale shows too much in the morning, points; on the second day, where the cure takes a night.
    pub offset_points: [f64; 2],
    /// How far it drifts in eight hours, points.
    pub drift_points: f64,
    /// What the mass scale shows too much, g.
    pub mass_offset_g: f64,
    /// What today's mix adds to every joint, g.
    pub mix_g: f64,
    /// What today's hand adds to the tape, share.
    pub tape_share: f64,
}

/// A part as it truly is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TruePiece {
    /// What it truly weighs.
    pub mass_g: f64,
    /// What the shop's scale showed when it came in.
    pub weighed_g: f64,
    /// Its centre against its model's, mm.
    pub centre_mm: f64,
    /// Its cap against its model's, mm.
    pub cap_mm: f64,
}

/// What the hand does to one club.
#[derive(Debug, Clone, PartialEq)]
#[allow(missing_docs)]
pub struct Hand {
    pub joint_g: f64,
    pub turnings_g: f64,
    pub ferrule_g: f64,
    pub tape_g: f64,
    pub tape_end_mm: f64,
    pub solvent_g: f64,
    pub cut_mm: f64,
    pub tip_place_mm: f64,
    tips_g: Vec<f64>,
}

impl Hand {
    /// How much the weight of so many grams differs from its figure.
    #[must_use]
    pub fn tip_g(&self, nominal_g: f64) -> f64 {
        TRAY_G.iter().position(|&g| (f64::from(g) - nominal_g).abs() < 0.01).map_or(0.0, |i| self.tips_g[i])
    }
}

/// One simulated job.
#[derive(Debug, Clone)]
pub struct SimulatedJob {
    /// Which shop.
    pub shop_id: u64,
    /// Which job of it, from 0.
    pub number: u64,
    /// Whether it is built from models that the shop has not had.
    pub new_models: bool,
    /// What the sheet asks of every club, points since A0.
    pub target_points: f64,
    /// By how much that is more than what the reference club truly is, points: the scale that read it and its noise.
    pub reference_error_points: f64,
    /// Layers of tape over the base one.
    pub full_wraps: u8,
    /// Makers' figures.
    pub nominal: Nominal,
    /// Truth of the head model.
    pub head: HeadTruth,
    /// Truth of the grip model.
    pub grip: GripTruth,
    /// What the days at the bench do to every club of the job.
    pub day: Day,
    /// What the hand does to each club.
    pub clubs: Vec<Hand>,
    /// What the makers say.
    pub library: Library,
    /// What lies in the boxes, as the shop knows it.
    pub parts: Vec<Part>,
    pieces: BTreeMap<String, TruePiece>,
}

impl SimulatedJob {
    /// Draws a job.
    #[must_use]
    pub fn draw(settings: &Settings, shop: &SimulatedShop, number: u64) -> Self {
        let seed = settings.seed;
        let new_models = settings.has(Trouble::NewModels) && number % 2 == 1;
        let model = if new_models { number } else { 0 };
        let scatter = &shop.scatter;
        let mut draw = Draw::of(seed, Stream::Day, &[shop.id, number]);
        let target_points = 32.0 + target_shift_points(&mut draw);
        let full_wraps = [0, 1, 2][draw.below(3)];
        let first = draw.normal(0.0, scatter.day_points());
        let second = draw.normal(0.0, scatter.day_points());
        let day = Day {
            offset_points: [first, if settings.has(Trouble::Overnight) { second } else { first }]
                .map(|of_day| shop.habit_points + of_day),
            drift_points: draw.normal(0.0, scatter.drift_points) + scatter.drift_fixed_points * draw.sign(),
            mass_offset_g: draw.normal(0.0, scatter.mass_offset_g),
            mix_g: draw.normal(0.0, scatter.mix_g),
            tape_share: draw.normal(0.0, scatter.tape_job_share),
        };
        let reference_error_points = shop.bay_points
            + if settings.reference == Reference::OwnScale {
                // Another day of the same scale.
                shop.habit_points + draw.normal(0.0, scatter.day_points().hypot(shop.noise_points))
            } else {
                0.0
            };
        let head = HeadTruth::draw(settings, shop, model, CLUBS);
        let nominal = Nominal::default();
        let grip = GripTruth::draw(settings, shop, model);
        let masses_g = head_masses_g(shop, &nominal, &head, grip);
        let clubs = (0..CLUBS as u64).map(|slot| hand(shop, number, slot)).collect();
        let mut job = Self {
            shop_id: shop.id,
            number,
            new_models,
            target_points,
            reference_error_points,
            full_wraps,
            grip,
            head,
            day,
            clubs,
            library: models::library(&nominal, model, &masses_g, scatter.grip_g),
            nominal,
            parts: Vec::new(),
            pieces: BTreeMap::new(),
        };
        let spares = if settings.has(Trouble::FewGrips) { FEW_GRIPS } else { SPARE_GRIPS };
        job.fill_boxes(shop, model, &masses_g, spares);
        job
    }

    /// The true piece of this code.
    ///
    /// # Panics
    /// Never for a code of this job's boxes.
    #[must_use]
    pub fn piece(&self, code: &str) -> &TruePiece {
        &self.pieces[code]
    }

    /// What the builder cuts the shaft of a club to: sheet length to the cap less cap and bore, by the makers' figures.
    #[must_use]
    pub fn cut_mm(&self, slot: usize) -> f64 {
        self.nominal.length_mm[slot] - self.nominal.cap_mm - self.nominal.bore_to_ground_mm[slot]
    }

    /// The job with as many heads again of a number, ordered from this mass up.
    #[must_use]
    pub(crate) fn with_ordered_heads(&self, shop: &SimulatedShop, number: &str, from_g: f64) -> Self {
        let mut job = self.clone();
        let s = shop.scatter;
        let code = self.parts.iter().find(|p| p.kind == PartKind::Head).map_or_else(String::new, |p| p.model.clone());
        let slot = IRONS.iter().position(|(of, _)| *of == number).unwrap_or_default() as u64;
        let mut draw = Draw::of(shop.seed, Stream::Parts, &[shop.id, self.number, 1 + slot]);
        for i in 1..=HEADS_A_NUMBER {
            let part = Part::new(&format!("H{number}-{}", HEADS_A_NUMBER + i), PartKind::Head, &code);
            let part = Part { number: Some(number.into()), ..part };
            job.put(part, (from_g + 2.0 * s.head_g, s.head_g), (s.head_offset_mm, 0.0), &s, &mut draw);
        }
        job
    }

    /// Puts a club together.
    #[must_use]
    pub(crate) fn put_together(
        &self,
        shop: &SimulatedShop,
        slot: usize,
        build: &Build,
        faults: Faults,
        knowledge: Knowledge,
    ) -> TrueClub {
        let club = &self.clubs[slot];
        let nominal = &self.nominal;
        let whole = knowledge == Knowledge::Everything;
        let own = |value: f64| if whole { value } else { 0.0 };
        let head = self.piece(&build.head);
        let shaft = self.piece(&build.shaft);
        let grip = self.piece(&build.grip);
        let mass_of = |piece: &TruePiece| if whole { piece.mass_g } else { piece.weighed_g };

        let shaft_mm = build.cut_mm + own(club.cut_mm) + faults.cut_mm;
        let (shaft_g, shaft_arm_mm) = cut_shaft(
            mass_of(shaft),
            nominal.shaft_mm,
            nominal.shaft_centre_mm + shop.shaft_centre_mm + own(shaft.centre_mm),
            shop.shaft_bulge,
            nominal.shaft_mm - build.tip_trim_mm - shaft_mm,
            build.tip_trim_mm,
        );
        let bore_to_ground_mm = nominal.bore_to_ground_mm[slot];
        let ground_mm = shaft_mm + bore_to_ground_mm;
        let mut masses = vec![
            Mass {
                role: Role::Head,
                mass_g: mass_of(head) + faults.head_g,
                arm_mm: ground_mm + self.head.offset_mm[slot] + own(head.centre_mm),
            },
            Mass { role: Role::Shaft, mass_g: shaft_g, arm_mm: shaft_arm_mm },
            Mass {
                role: Role::Grip,
                mass_g: mass_of(grip),
                arm_mm: self.grip.centre_mm + own(grip.centre_mm) + shop.stretch_mm / 2.0,
            },
        ];
        if !faults.ferrule_missing {
            let arm_mm = shaft_mm - nominal.bore_mm - nominal.ferrule_mm / 2.0;
            let turnings_g = shop.turnings_g + own(club.turnings_g);
            masses.push(Mass {
                role: Role::Ferrule,
                mass_g: nominal.ferrule_g + own(club.ferrule_g) - turnings_g,
                arm_mm,
            });
            masses.push(Mass { role: Role::Turnings, mass_g: turnings_g, arm_mm });
        }
        let mut below_mm = 0.0;
        for &tip_g in build.tips_g.iter().filter(|_| !faults.tip_left_out) {
            let long_mm = models::tip_weight_mm(tip_g);
            let arm_mm = shaft_mm - below_mm - long_mm / 2.0 - own(club.tip_place_mm).abs();
            below_mm += long_mm;
            masses.push(Mass { role: Role::TipWeight, mass_g: tip_g + own(club.tip_g(tip_g)), arm_mm });
        }
        masses.push(Mass {
            role: Role::Adhesive,
            mass_g: (shop.joint_g + self.day.mix_g + own(club.joint_g) - shop.above_tip_g).max(0.3),
            arm_mm: shaft_mm - nominal.bore_mm / 2.0 + shop.joint_arm_mm,
        });
        if shop.above_tip_g > 0.0 {
            let arm_mm = shaft_mm - nominal.bore_mm - shop.above_tip_mm;
            masses.push(Mass { role: Role::Adhesive, mass_g: shop.above_tip_g, arm_mm });
        }
        let layers = 1.0 + f64::from(self.full_wraps);
        let strip_mm = nominal.grip_mm - nominal.cap_mm - 13.0 - shop.tape_short_mm;
        let area_m2 = strip_mm * std::f64::consts::PI * nominal.butt_mm * 1e-6;
        let layer_g = area_m2 * nominal.tape_g_m2 * shop.tape_share * (1.0 + self.day.tape_share);
        masses.push(Mass {
            role: Role::Tape,
            mass_g: layers * layer_g + layers.sqrt() * own(club.tape_g),
            arm_mm: strip_mm / 2.0 + own(club.tape_end_mm) / 2.0,
        });
        masses.push(Mass {
            role: Role::Solvent,
            mass_g: shop.solvent_g + own(club.solvent_g),
            arm_mm: nominal.grip_mm / 2.0,
        });
        TrueClub { masses, cap_mm: self.grip.cap_mm + own(grip.cap_mm), shaft_mm, bore_to_ground_mm }
    }

    fn fill_boxes(&mut self, shop: &SimulatedShop, model: u64, masses_g: &[f64], spare_grips: usize) {
        let mut draw = Draw::of(shop.seed, Stream::Parts, &[shop.id, self.number]);
        let s = shop.scatter;
        let head_code = models::head_code(model);
        for ((number, _), mass_g) in IRONS.iter().zip(masses_g) {
            for i in 1..=HEADS_A_NUMBER {
                let part = Part::new(&format!("H{number}-{i}"), PartKind::Head, &head_code);
                let part = Part { number: Some((*number).into()), ..part };
                self.put(part, (*mass_g, s.head_g), (s.head_offset_mm, 0.0), &s, &mut draw);
            }
        }
        for i in 1..=SHAFTS {
            let part = Part::new(&format!("S-{i:02}"), PartKind::Shaft, "SHAFT");
            self.put(part, (self.nominal.shaft_g, s.shaft_g), (s.shaft_centre_mm, 0.0), &s, &mut draw);
        }
        let grip_code = models::grip_code(model);
        for i in 1..=CLUBS + spare_grips {
            let part = Part::new(&format!("G-{i:02}"), PartKind::Grip, &grip_code);
            self.put(part, (self.nominal.grip_g, s.grip_g), (s.grip_centre_mm, s.cap_mm), &s, &mut draw);
        }
        for g in TRAY_G {
            self.bulk(PartKind::TipWeight, &format!("TIP-{g}"));
        }
        self.bulk(PartKind::Ferrule, "FERRULE");
        self.bulk(PartKind::Adhesive, "ADHESIVE");
        self.bulk(PartKind::Tape, "TAPE");
    }

    fn bulk(&mut self, kind: PartKind, model: &str) {
        let part = Part::new(&format!("{model}-BOX"), kind, model);
        let id = part.code.as_str().into();
        self.parts.push(Part { count: Some(100), id, ..part });
    }

    /// Puts a part into the boxes: (mean, scatter) of its mass, scatter of (centre, cap).
    fn put(
        &mut self,
        part: Part,
        (mean_g, sd_g): (f64, f64),
        (centre_sd_mm, cap_sd_mm): (f64, f64),
        scatter: &crate::shop::Scatter,
        draw: &mut Draw,
    ) {
        let mass_g = draw.normal(mean_g, sd_g);
        // Weighed on the day it came in, with that day's offset.
        let error_g = draw.normal(0.0, scatter.mass_noise_g.hypot(scatter.mass_offset_g));
        let weighed_g = ((mass_g + error_g) * 10.0).round() / 10.0;
        let centre_mm = draw.normal(0.0, centre_sd_mm);
        let cap_mm = draw.normal(0.0, cap_sd_mm);
        self.pieces.insert(part.code.clone(), TruePiece { mass_g, weighed_g, centre_mm, cap_mm });
        let id = part.code.as_str().into();
        self.parts.push(Part { mass_g: Some(weighed_g), id, ..part });
    }
}

/// What the hand of a shop does to one club of a job.
pub(crate) fn hand(shop: &SimulatedShop, number: u64, slot: u64) -> Hand {
    let s = &shop.scatter;
    let mut draw = Draw::of(shop.seed, Stream::Club, &[shop.id, number, slot]);
    Hand {
        joint_g: draw.normal(0.0, s.joint_g),
        turnings_g: draw.normal(0.0, s.turnings_g),
        ferrule_g: draw.normal(0.0, s.ferrule_g),
        tape_g: draw.normal(0.0, s.tape_g),
        tape_end_mm: draw.normal(0.0, s.tape_end_mm),
        solvent_g: draw.normal(0.0, s.solvent_g),
        cut_mm: draw.normal(0.0, s.cut_mm),
        tip_place_mm: draw.normal(0.0, s.tip_place_mm),
        tips_g: TRAY_G.iter().map(|_| draw.normal(0.0, s.tip_weight_g)).collect(),
    }
}

/// Head masses that leave an average club of this shop so many points light for D2, to half a gram.
fn head_masses_g(shop: &SimulatedShop, nominal: &Nominal, head: &HeadTruth, grip: GripTruth) -> Vec<f64> {
    let piece = |mass_g| TruePiece { mass_g, weighed_g: mass_g, centre_mm: 0.0, cap_mm: 0.0 };
    let mut average = SimulatedJob {
        shop_id: shop.id,
        number: 0,
        new_models: false,
        target_points: 32.0,
        reference_error_points: 0.0,
        full_wraps: 1,
        nominal: nominal.clone(),
        head: head.clone(),
        grip,
        day: Day { offset_points: [0.0; 2], drift_points: 0.0, mass_offset_g: 0.0, mix_g: 0.0, tape_share: 0.0 },
        clubs: (0..CLUBS as u64).map(|slot| hand(shop, 0, slot)).collect(),
        library: Library::default(),
        parts: Vec::new(),
        pieces: BTreeMap::from([("S".to_owned(), piece(nominal.shaft_g)), ("G".to_owned(), piece(nominal.grip_g))]),
    };
    let mut at_g = |mass_g: f64, slot: usize| {
        average.pieces.insert("H".to_owned(), piece(mass_g));
        let build = Build {
            head: "H".into(),
            shaft: "S".into(),
            grip: "G".into(),
            tips_g: Vec::new(),
            tip_trim_mm: nominal.tip_trim_mm[slot],
            cut_mm: average.cut_mm(slot),
        };
        average.put_together(shop, slot, &build, Faults::default(), Knowledge::Means).finish_points()
    };
    head.light_points
        .iter()
        .enumerate()
        .map(|(slot, light)| {
            let (low, high) = (at_g(200.0, slot), at_g(300.0, slot));
            let mass_g = 200.0 + 100.0 * (32.0 - light - low) / (high - low);
            (mass_g * 2.0).round() / 2.0
        })
        .collect()
}
