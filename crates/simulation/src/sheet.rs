//! The sheet of a simulated job, as the workshop keeps it.

use crate::job::SimulatedJob;
use crate::models::IRONS;
use crate::settings::{Reference, Settings, Trouble};
use jiff::Timestamp;
use jiff::civil::Date;
use trade::id::{ClubId, JobId, SheetId};
use trade::job::{Job, JobClub, JobState};
use trade::kind::{ClubKind, Hand, LengthTo};
use trade::model::PartKind;
use trade::sheet::{ReferenceClub, SetRule, Sheet, SheetClub, Tolerances};
use trade::shop::Shop;
use trade::wrap::Wraps;

/// The job as the bench sees it: eight irons of one swing weight, known as it truly is, or by a reading of the reference club
/// on the shop's own scale or on the fitting bay's.
#[must_use]
pub fn job_of(settings: &Settings, truth: &SimulatedJob, shop: &Shop) -> Job {
    let elsewhere = settings.has(Trouble::BayScale);
    let was_read = elsewhere || settings.reference == Reference::OwnScale;
    let head = truth.library.of_kind(PartKind::Head).next().map_or("", |m| m.code());
    let grip = truth.library.of_kind(PartKind::Grip).next().map_or("", |m| m.code());
    let clubs: Vec<SheetClub> = IRONS
        .iter()
        .enumerate()
        .map(|(i, (number, _))| SheetClub {
            number: (*number).into(),
            club_kind: ClubKind::Iron,
            head_model: head.into(),
            shaft_model: "SHAFT".into(),
            grip_model: grip.into(),
            ferrule_model: Some("FERRULE".into()),
            adhesive: None,
            tape: None,
            length_mm: truth.nominal.length_mm[i],
            length_to: LengthTo::Cap,
            swing_weight_points: truth.target_points,
            loft_deg: 21.0 + 4.0 * i as f64,
            lie_deg: 60.5 + 0.5 * i as f64,
            cpm: None,
            total_mass_g: None,
            inertia_kg_cm2: None,
            grip_size: None,
            grip_graphics: None,
            adapter_setting: None,
            swing_weight_free: false,
            shaft_graphics: None,
            soft_side: None,
            tip_weight: None,
            wraps: Wraps { base: 1, full: truth.full_wraps, lower_hand: 0 },
            tolerances: Tolerances::default(),
        })
        .collect();
    let reference = ReferenceClub {
        number: "7".into(),
        length_mm: None,
        length_to: None,
        swing_weight_points: was_read.then_some(truth.target_points),
        total_mass_g: None,
        balance_point_mm: None,
        loft_deg: None,
        lie_deg: None,
        cpm: None,
        clamp_mm: None,
        scale: if elsewhere { "fitting bay".into() } else { shop.balance_scale.key.clone() },
        grip_model: None,
        cap_mm: None,
        coupler_g: None,
        read_on: None,
        swing_weight_sd_points: None,
        also_read: Vec::new(),
    };
    let sheet = Sheet {
        customer: None,
        quote: Vec::new(),
        player: "Simulated".into(),
        due: Date::constant(2026, 12, 1),
        hand: Hand::Right,
        note: String::new(),
        rule: SetRule::ConstantSwingWeight,
        written: String::new(),
        reference: Some(reference),
        clubs: clubs.clone(),
    };
    Job {
        id: JobId::from("job"),
        number: truth.number as i64 + 1,
        sheet_id: SheetId::from("sheet"),
        sheet,
        state: JobState::Planned,
        steps: shop.steps.clone(),
        made_at: Timestamp::UNIX_EPOCH,
        clubs: clubs
            .into_iter()
            .enumerate()
            .map(|(i, target)| JobClub {
                id: ClubId(format!("club-{i}")),
                slot: i as i64 + 1,
                card: format!("J{}-{}", truth.number + 1, i + 1),
                target,
                work: None,
                plan: None,
                version: 0,
            })
            .collect(),
        version: 0,
    }
}
