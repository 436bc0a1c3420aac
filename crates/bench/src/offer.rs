//! What to measure next: the small extra measurements that narrow the finish, before the step that cannot be undone.
//!
//! Each candidate is asked of the belief: what would the finish of every club of the set be known to after it, and how
//! many more clubs would then be expected in tolerance, allowing for the cure reading and the grips still to come? What
//! is known already gains nothing and is not offered.

use crate::belief::{BAND_95, Believed, CAP_SD_MM, CENTRE_SD_MM};
use crate::remedy::{GripBox, Progress, Spare};
use estimation::choice::Prospect;
use estimation::{OnClub, Probe, Quantity};
use serde::{Deserialize, Serialize};
use trade::club_name::ClubName;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::JobClub;
use trade::kind::{Role, closed_list};
use trade::model::PartKind;
use trade::reading::What;
use trade::step::Step;
use utoipa::ToSchema;

/// An offer must be worth at least this many clubs of the set …
const LEAST_CLUBS: f64 = 0.03;
/// … and at least this many for each minute that it takes.
const LEAST_CLUBS_PER_MINUTE: f64 = 0.02;

closed_list! {
    /// An extra measurement.
    Measure {
        /// The check weight on the balance scale.
        CheckWeight = "check_weight";
        /// The reference club on the shop's own scale.
        Reference = "reference";
        /// The strip of tape weighed.
        Tape = "tape";
        /// The grip balanced on an edge.
        GripCentre = "grip_centre";
        /// The grip's cap by caliper.
        Cap = "cap";
        /// The cut shaft balanced on an edge.
        ShaftCentre = "shaft_centre";
        /// The club weighed before gluing, to be weighed again after.
        Weighed = "weighed";
        /// The club weighed now that it is glued.
        Total = "total";
        /// The swing weight read once more, re-seated.
        Again = "again";
        /// One club finished before the others are glued.
        Pilot = "pilot";
    }
}

fact::facts! {
    /// How long a measurement takes.
    pub enum OfferTime: "offer_time" {
        /// Less than a minute.
        Seconds {
            /// About how many.
            n: i64,
        },
        /// A minute and more.
        Minutes {
            /// About how many.
            n: i64,
        },
    }
}

impl OfferTime {
    fn of(minutes: f64) -> Self {
        if minutes < 1.0 {
            Self::Seconds { n: (minutes * 6.0).round() as i64 * 10 }
        } else {
            Self::Minutes { n: minutes.round() as i64 }
        }
    }
}

fact::facts! {
    /// By how much a measurement narrows the forecast of the club, in the fractions that people say.
    pub enum OfferGain: "offer_gain" {
        /// To less than two thirds of it.
        Half,
        /// By a third.
        Third,
        /// By a quarter.
        Quarter,
        /// By a sixth.
        Sixth,
        /// By a tenth.
        Tenth,
        /// By a twentieth.
        Twentieth,
        /// That of this club hardly, those of the other clubs of the set more.
        OtherClubs,
    }
}

impl OfferGain {
    /// From the band of this club without the measurement and with it.
    fn of((without, with): (f64, f64)) -> Self {
        let gain = if without > 0.0 { 1.0 - with / without } else { 0.0 };
        // The fraction that is nearest.
        match gain {
            g if g >= 5.0 / 12.0 => Self::Half,
            g if g >= 7.0 / 24.0 => Self::Third,
            g if g >= 5.0 / 24.0 => Self::Quarter,
            g if g >= 2.0 / 15.0 => Self::Sixth,
            g if g >= 3.0 / 40.0 => Self::Tenth,
            g if g >= 1.0 / 40.0 => Self::Twentieth,
            _ => Self::OtherClubs,
        }
    }
}

fact::facts! {
    /// An extra measurement that is worth its minutes.
    pub enum OfferSays: "offer" {
        /// The check weight on the balance scale.
        CheckWeight {
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The reference club on the shop's own scale.
        Reference {
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The strip of tape weighed.
        Tape {
            /// The club.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The grip balanced on an edge.
        GripCentre {
            /// The club.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The grip's cap by caliper.
        Cap {
            /// The club.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The cut shaft balanced on an edge.
        ShaftCentre {
            /// The club.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The club weighed before gluing, to be weighed again after.
        Weighed {
            /// The club.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The club weighed now that it is glued.
        Total {
            /// The club.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The swing weight read once more, re-seated.
        Again {
            /// The club.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// One club finished before the others are glued.
        Pilot {
            /// The club.
            club: ClubName,
        },
    }
}

impl OfferSays {
    fn of(measure: Measure, club: ClubName, minutes: f64, bands: (f64, f64)) -> Self {
        let (time, gain) = (OfferTime::of(minutes), OfferGain::of(bands));
        match measure {
            Measure::CheckWeight => Self::CheckWeight { time, gain },
            Measure::Reference => Self::Reference { time, gain },
            Measure::Tape => Self::Tape { club, time, gain },
            Measure::GripCentre => Self::GripCentre { club, time, gain },
            Measure::Cap => Self::Cap { club, time, gain },
            Measure::ShaftCentre => Self::ShaftCentre { club, time, gain },
            Measure::Weighed => Self::Weighed { club, time, gain },
            Measure::Total => Self::Total { club, time, gain },
            Measure::Again => Self::Again { club, time, gain },
            Measure::Pilot => Self::Pilot { club },
        }
    }
}

/// A measurement that is worth its while.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Offer {
    /// What is measured.
    pub measure: Measure,
    /// Place in the tray of the club that it is made on or entered for.
    pub slot: i64,
    /// What is entered for it.
    pub what: What,
    /// What is on the club meanwhile.
    pub on: Vec<Role>,
    /// Half width of this club's 95 % band with the readings to come but without it.
    pub band_without_points: f64,
    /// Half width with it.
    pub band_with_points: f64,
    /// More clubs of the set expected in tolerance.
    pub clubs_gained: f64,
    /// About how many minutes it takes.
    pub minutes: f64,
    /// What to do, and what it is worth.
    #[serde(flatten)]
    pub fact: OfferSays,
}

struct Candidate {
    measure: Measure,
    what: What,
    on: Vec<Role>,
    readings: Vec<(Probe, f64)>,
    minutes: f64,
}

/// A club that can still be changed, with what will be read on it anyway.
struct Open<'a> {
    club: &'a JobClub,
    planned: Vec<(Probe, f64)>,
    effects: Vec<f64>,
    tolerance_points: f64,
}

/// What is worth measuring for this club now, the most clubs gained a minute first; empty where nothing is.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn offers(believed: &Believed<'_>, club: &ClubId, spares: &[Spare<'_>]) -> Result<Vec<Offer>, TradeError> {
    let job = believed.assembly.job;
    let Some(club) = job.club(club).filter(|c| c.plan.is_some()) else { return Ok(Vec::new()) };
    let progress = Progress::of(believed, club);
    if progress.gripped {
        return Ok(Vec::new());
    }
    let mut open = Vec::new();
    for other in job.clubs.iter().filter(|c| c.plan.is_some()) {
        let progress = Progress::of(believed, other);
        if !progress.gripped {
            open.push(Open {
                club: other,
                planned: planned(believed, other, progress),
                effects: GripBox::of(believed, other, spares)?.effects(),
                tolerance_points: other.target.tolerances.swing_weight_points,
            });
        }
    }
    let mut without = Vec::with_capacity(open.len());
    for club in &open {
        without.push(outlook(believed, club, &[])?);
    }
    let mut offers = Vec::new();
    for candidate in candidates(believed, club, progress)? {
        let mut gained = 0.0;
        let mut bands = (0.0, 0.0);
        for (open, (chance, rest)) in open.iter().zip(&without) {
            // The pilot itself gains nothing from being first.
            if candidate.measure == Measure::Pilot && open.club.id == club.id {
                continue;
            }
            let (with, rest_with) = outlook(believed, open, &candidate.readings)?;
            gained += with - chance;
            if open.club.id == club.id {
                bands = (BAND_95 * rest, BAND_95 * rest_with);
            }
        }
        if gained < LEAST_CLUBS || gained < LEAST_CLUBS_PER_MINUTE * candidate.minutes {
            continue;
        }
        offers.push(Offer {
            measure: candidate.measure,
            slot: club.slot,
            what: candidate.what,
            on: candidate.on,
            band_without_points: bands.0,
            band_with_points: bands.1,
            clubs_gained: gained,
            minutes: candidate.minutes,
            fact: OfferSays::of(candidate.measure, club.target.name(), candidate.minutes, bands),
        });
    }
    let per_minute = |o: &Offer| o.clubs_gained / o.minutes;
    offers.sort_by(|a, b| per_minute(b).total_cmp(&per_minute(a)));
    Ok(offers)
}

/// Chance of a club with all choices still to come, and the standard deviation that will be left, if the finish is
/// aimed at its target: (chance, sd).
fn outlook(believed: &Believed<'_>, open: &Open<'_>, more: &[(Probe, f64)]) -> Result<(f64, f64), TradeError> {
    let belief = believed.belief();
    let finish = believed.assembly.finish_probe(&open.club.id);
    let known = belief.sd_after(&finish, more)?;
    let all: Vec<(Probe, f64)> = more.iter().chain(&open.planned).cloned().collect();
    let rest = belief.sd_after(&finish, &all)?;
    let prospect = Prospect {
        deviation_points: 0.0,
        told_sd: (known * known - rest * rest).max(0.0).sqrt(),
        rest_sd: rest,
        tolerance_points: open.tolerance_points,
    };
    Ok((prospect.chance_with(&open.effects), rest))
}

fn planned(believed: &Believed<'_>, club: &JobClub, progress: Progress) -> Vec<(Probe, f64)> {
    if progress.cure_read {
        return Vec::new();
    }
    crate::remedy::cure_step(&believed.assembly.job.steps)
        .map(|step| vec![swing_weight_reading(believed, club, &step.on)])
        .unwrap_or_default()
}

fn swing_weight_reading(believed: &Believed<'_>, club: &JobClub, on: &[Role]) -> (Probe, f64) {
    let scale = &believed.assembly.shop.balance_scale;
    let probe = Probe::of_club(club.id.0.clone(), Quantity::SwingWeight, OnClub::of(on)).on_scale(scale.key.clone());
    (probe, believed.assembly.shown_sd(scale))
}

fn mass_reading(believed: &Believed<'_>, club: &JobClub, quantity: Quantity, on: &[Role]) -> (Probe, f64) {
    let scale = &believed.assembly.shop.mass_scale;
    let probe = Probe::of_club(club.id.0.clone(), quantity, OnClub::of(on)).on_scale(scale.key.clone());
    (probe, believed.assembly.shown_sd(scale))
}

/// The step at which a club stands for a swing weight or mass reading now: the last one read with the whole club together.
fn step_now<'a>(believed: &'a Believed<'_>, club: &JobClub) -> Option<&'a Step> {
    let job = believed.assembly.job;
    let read = believed.standing();
    job.steps
        .iter()
        .rev()
        .find(|s| s.asks.contains(&What::SwingWeight) && read.iter().any(|r| r.club == club.id && r.step == s.key))
}

fn candidates(believed: &Believed<'_>, club: &JobClub, progress: Progress) -> Result<Vec<Candidate>, TradeError> {
    let assembly = believed.assembly;
    let has = |role| assembly.has(club, role);
    let of_part = |quantity, sd_mm: f64| {
        let probe = Probe::of_club(club.id.0.clone(), quantity, OnClub::NONE);
        vec![(probe, sd_mm / quantity::INCH_MM)]
    };
    let mut found = Vec::new();
    let mut add = |measure, what, on: &[Role], readings, minutes| {
        found.push(Candidate { measure, what, on: on.to_vec(), readings, minutes });
    };
    for (measure, what, minutes, seatings) in [
        (Measure::CheckWeight, What::CheckWeight, 1.0, 1.0f64),
        (Measure::Reference, What::ReferenceSwingWeight, 3.0, 4.0),
    ] {
        if let Some(quantity) = assembly.known_weight(what) {
            let (mut probe, sd) = swing_weight_reading(believed, club, &[]);
            probe.quantity = quantity;
            probe.club = None;
            add(measure, what, &[], vec![(probe, sd / seatings.sqrt())], minutes);
        }
    }
    if has(Role::Tape) {
        let reading = mass_reading(believed, club, Quantity::PartMass(Role::Tape), &[]);
        add(Measure::Tape, What::TapeMass, &[], vec![reading], 0.5);
    }
    if club.plan.as_ref().is_some_and(|p| p.part(PartKind::Grip).is_some()) {
        let centre = of_part(Quantity::PartArm(Role::Grip), CENTRE_SD_MM);
        add(Measure::GripCentre, What::GripCentre, &[], centre, 1.0);
        add(Measure::Cap, What::CapThickness, &[], of_part(Quantity::CapThickness, CAP_SD_MM), 0.5);
    }
    if let Some(step) = step_now(believed, club) {
        add(Measure::Again, What::SwingWeight, &step.on, vec![swing_weight_reading(believed, club, &step.on)], 0.5);
    }
    let cured = crate::remedy::cure_step(&assembly.job.steps).map(|s| s.on.clone());
    if progress.glued {
        if let Some(on) = &cured {
            add(Measure::Total, What::TotalMass, on, vec![mass_reading(believed, club, Quantity::TotalMass, on)], 0.5);
        }
    } else {
        let centre = of_part(Quantity::PartArm(Role::Shaft), CENTRE_SD_MM);
        add(Measure::ShaftCentre, What::ShaftBalancePoint, &[], centre, 1.0);
        if let Some(on) = &cured {
            let dry: Vec<Role> = on.iter().copied().filter(|r| *r != Role::Adhesive).chain([Role::Turnings]).collect();
            let before = mass_reading(believed, club, Quantity::TotalMass, &dry);
            let after = mass_reading(believed, club, Quantity::TotalMass, on);
            add(Measure::Weighed, What::TotalMass, &dry, vec![before, after], 1.0);
            let finished: Vec<Role> = OnClub::finished().iter().collect();
            let pilot = vec![swing_weight_reading(believed, club, on), swing_weight_reading(believed, club, &finished)];
            add(Measure::Pilot, What::SwingWeight, &finished, pilot, 5.0);
        }
    }
    Ok(found)
}
