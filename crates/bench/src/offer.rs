//! What to measure next: the small extra measurements that narrow the finish, before the step that cannot be undone.
//!
//! Measurements are worth more together than the sum of each alone: a scale's offset is not told from a joint's mass until
//! both are measured. So they are chosen as a bundle: one after another by the clubs that each brings a minute beyond those
//! before it, then exchanged where another is better, until the next brings too little. How many clubs are expected in
//! tolerance follows from covariances alone, with the readings, weights and grips still to come (`estimation::worth`). What
//! is known already gains nothing and is not offered.

use crate::ahead::{Extra, Glued, SetAhead};
use crate::belief::{BAND_95, Believed, CAP_SD_MM, CENTRE_SD_MM};
use crate::learned::ValueKey;
use crate::reference::ReferenceRead;
use crate::remedy::{Progress, Spare};
use estimation::worth::bundle;
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

/// A measurement must bring at least this many clubs of the set for each minute that it takes, beyond those before it.
const LEAST_CLUBS_A_MINUTE: f64 = 0.05;

/// Grips of a model that are measured in its first job.
const PIECES_OF_A_NEW_MODEL: usize = 3;

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
        /// Another order of work than one batch: no measurement, but declined like one.
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
            /// Where and when it was read last.
            last: ReferenceRead,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The strip of tape weighed.
        Tape {
            /// Whose strip of tape is weighed.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The grip balanced on an edge.
        GripCentre {
            /// Whose grip is balanced.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The grip's cap by caliper.
        Cap {
            /// Whose grip is measured.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The cut shaft balanced on an edge.
        ShaftCentre {
            /// Whose shaft is balanced.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The club weighed before gluing, to be weighed again after.
        Weighed {
            /// Which one is weighed.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The club weighed now that it is glued.
        Total {
            /// Which one is weighed.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The swing weight read once more, re-seated.
        Again {
            /// Which one is read again.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
            /// What it narrows.
            gain: OfferGain,
        },
        /// The strip of tape weighed, to learn how much strips vary.
        TapeScatter {
            /// Whose strip of tape is weighed.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
        },
        /// The grip balanced on an edge, to learn how much grips vary.
        GripCentreScatter {
            /// Whose grip is balanced.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
        },
        /// The grip's cap by caliper, to learn how much caps vary.
        CapScatter {
            /// Whose grip is measured.
            club: ClubName,
            /// How long it takes.
            time: OfferTime,
        },
    }
}

impl OfferSays {
    fn of(measure: Measure, club: ClubName, last: ReferenceRead, minutes: f64, bands: (f64, f64)) -> Option<Self> {
        let (time, gain) = (OfferTime::of(minutes), OfferGain::of(bands));
        Some(match measure {
            Measure::CheckWeight => Self::CheckWeight { time, gain },
            Measure::Reference => Self::Reference { last, time, gain },
            Measure::Tape => Self::Tape { club, time, gain },
            Measure::GripCentre => Self::GripCentre { club, time, gain },
            Measure::Cap => Self::Cap { club, time, gain },
            Measure::ShaftCentre => Self::ShaftCentre { club, time, gain },
            Measure::Weighed => Self::Weighed { club, time, gain },
            Measure::Total => Self::Total { club, time, gain },
            Measure::Again => Self::Again { club, time, gain },
            Measure::Pilot => return None,
        })
    }
}

fact::facts! {
    /// What the measurements of a bundle are worth together.
    pub enum BundleSays: "bundle" {
        /// What the bundle brings: clubs expected in tolerance before and after it.
        Worth {
            /// About how many minutes all of them take.
            minutes: i64,
            /// Clubs expected in tolerance without any of them.
            before: f64,
            /// The same with all.
            after: f64,
            /// Clubs of the set.
            clubs: i64,
        },
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
    /// Half width of this club's 95 % band with the readings to come and the offers before it, but without it.
    pub band_without_points: f64,
    /// Half width with it as well.
    pub band_with_points: f64,
    /// More clubs of the set expected in tolerance than with the offers before it alone: these add up to what the bundle
    /// gains.
    pub clubs_gained: f64,
    /// About how many minutes it takes.
    pub minutes: f64,
    /// What to do, and what it is worth.
    #[serde(flatten)]
    pub fact: OfferSays,
}

/// Measurements that are worth their while together, in the order in which they bring most a minute.
#[derive(Debug, Clone, PartialEq, Default, Serialize, ToSchema)]
pub struct Bundle {
    /// The measurements; empty where none is worth it.
    pub offers: Vec<Offer>,
    /// About how many minutes all of them take.
    pub minutes: f64,
    /// Clubs of the set expected in tolerance without any of them, all choices still to come counted in.
    pub clubs_before: f64,
    /// The same with all of them.
    pub clubs_after: f64,
    /// Clubs of the set.
    pub of_clubs: usize,
    /// Measurements that teach the shop how much pieces of a kind differ, beside the bundle: they bring this set little, and
    /// every set after it a band that holds.
    pub to_learn: Vec<Offer>,
    /// What they are worth together; none where none is worth it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worth: Option<BundleSays>,
}

pub(crate) struct Candidate {
    measure: Measure,
    what: What,
    on: Vec<Role>,
    readings: Vec<(Probe, f64)>,
    minutes: f64,
    after_cure: Option<(Probe, f64)>,
}

/// What is worth measuring now, at this club where it is made on a club; empty where nothing is. What was `declined` is
/// neither offered nor counted with.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn offers(
    believed: &Believed<'_>,
    club: &ClubId,
    spares: &[Spare<'_>],
    declined: &[Measure],
) -> Result<Bundle, TradeError> {
    let job = believed.assembly.job;
    let Some(club) = job.club(club).filter(|c| c.plan.is_some()) else { return Ok(Bundle::default()) };
    let candidates = candidates_at(believed, club, declined)?;
    if candidates.is_empty() {
        return Ok(Bundle::default());
    }
    let Some(ahead) = SetAhead::of(believed, spares, &extras(&candidates, club))? else { return Ok(Bundle::default()) };
    Ok(chosen(believed, &ahead, club, &candidates)?.0)
}

/// What can be measured at a club now that nobody declined; nothing once its grip is on.
pub(crate) fn candidates_at(
    believed: &Believed<'_>,
    club: &JobClub,
    declined: &[Measure],
) -> Result<Vec<Candidate>, TradeError> {
    let progress = Progress::of(believed, club);
    if progress.gripped {
        return Ok(Vec::new());
    }
    let mut found = candidates(believed, club, progress)?;
    found.retain(|c| !declined.contains(&c.measure));
    Ok(found)
}

/// The same as the set ahead takes them.
pub(crate) fn extras(candidates: &[Candidate], club: &JobClub) -> Vec<Extra> {
    let extra = |c: &Candidate| {
        let (readings, after_cure) = (c.readings.clone(), c.after_cure.clone());
        Extra { readings, after_cure, club: club.id.clone() }
    };
    candidates.iter().map(extra).collect()
}

/// The bundle, and the places of its candidates.
pub(crate) fn chosen(
    believed: &Believed<'_>,
    ahead: &SetAhead,
    club: &JobClub,
    candidates: &[Candidate],
) -> Result<(Bundle, Vec<usize>), TradeError> {
    let standing = believed.standing().into_iter().filter(|r| !believed.is_doubted(&r.id));
    let last = believed.assembly.reference_read(&standing.collect::<Vec<_>>()).unwrap_or(ReferenceRead::Known);
    let minutes: Vec<f64> = candidates.iter().map(|c| c.minutes).collect();
    let turns = ahead.usual_turns();
    let worth = |extras: &[usize]| ahead.inside(extras, &Glued::Together, turns);
    let found = bundle(&minutes, LEAST_CLUBS_A_MINUTE, worth);
    let places: Vec<usize> = found.iter().map(|(at, _)| *at).collect();
    let clubs_before = worth(&[]);
    let mut made = Bundle { clubs_before, clubs_after: clubs_before, of_clubs: ahead.of_clubs, ..Bundle::default() };
    let band_points = |chosen: &[usize]| Ok::<_, TradeError>(BAND_95 * ahead.sd_with(believed, &club.id, chosen)?);
    let mut without = band_points(&[])?;
    for (n, (at, gained)) in found.iter().enumerate() {
        let candidate = &candidates[*at];
        let bands = (without, band_points(&places[..=n])?);
        without = bands.1;
        made.minutes += candidate.minutes;
        made.clubs_after += gained;
        let name = club.target.name();
        let Some(fact) = OfferSays::of(candidate.measure, name, last.clone(), candidate.minutes, bands) else {
            continue;
        };
        made.offers.push(Offer {
            measure: candidate.measure,
            slot: club.slot,
            what: candidate.what,
            on: candidate.on.clone(),
            band_without_points: bands.0,
            band_with_points: bands.1,
            clubs_gained: *gained,
            minutes: candidate.minutes,
            fact,
        });
    }
    made.worth = (!made.offers.is_empty()).then(|| BundleSays::Worth {
        minutes: made.minutes.ceil() as i64,
        before: made.clubs_before,
        after: made.clubs_after,
        clubs: made.of_clubs as i64,
    });
    for (at, candidate) in candidates.iter().enumerate().filter(|(at, _)| !places.contains(at)) {
        let Some(fact) = owed(believed, club, candidate) else { continue };
        let chosen: Vec<usize> = places.iter().copied().chain([at]).collect();
        made.to_learn.push(Offer {
            measure: candidate.measure,
            slot: club.slot,
            what: candidate.what,
            on: candidate.on.clone(),
            band_without_points: without,
            band_with_points: band_points(&chosen)?,
            clubs_gained: 0.0,
            minutes: candidate.minutes,
            fact,
        });
    }
    Ok((made, places))
}

/// What is measured for its scatter's sake, whatever it brings to this set: each strip in the first job of a tape, a few grips
/// of a model that is new, and one a job after that. The readings of finished clubs hide it in their noise.
fn owed(believed: &Believed<'_>, club: &JobClub, candidate: &Candidate) -> Option<OfferSays> {
    let (target, assembly) = (&club.target, believed.assembly);
    let value = match candidate.measure {
        Measure::Tape => ValueKey::Tape(target.tape_in(assembly.shop)?.clone()),
        Measure::Cap => ValueKey::Cap(target.grip_model.clone()),
        Measure::GripCentre => ValueKey::GripCentre(target.grip_model.clone()),
        _ => return None,
    };
    let standing = believed.standing();
    let measured = || standing.iter().filter(|r| r.what == candidate.what);
    let first_job = assembly.learned.position(&value.to_string()).is_none();
    let pieces = match (first_job, candidate.measure) {
        (true, Measure::Tape) => usize::MAX,
        (true, _) => PIECES_OF_A_NEW_MODEL,
        (false, _) => 1,
    };
    if measured().any(|r| r.club == club.id) || measured().count() >= pieces {
        return None;
    }
    let (club, time) = (target.name(), OfferTime::of(candidate.minutes));
    Some(match candidate.measure {
        Measure::Tape => OfferSays::TapeScatter { club, time },
        Measure::Cap => OfferSays::CapScatter { club, time },
        _ => OfferSays::GripCentreScatter { club, time },
    })
}

/// What can be read on the balance scale of a club that stands with these pieces on: the club itself, re-seated, and what is
/// known beside it.
pub(crate) fn swing_weight_checks(believed: &Believed<'_>, club: &JobClub, on: &[Role]) -> Vec<(What, (Probe, f64))> {
    let again = (What::SwingWeight, believed.assembly.swing_weight_reading(club, on));
    let known = [What::CheckWeight, What::ReferenceSwingWeight].into_iter();
    let known = known.filter_map(|what| Some((what, believed.assembly.known_weight_reading(what)?)));
    std::iter::once(again).chain(known).collect()
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
        found.push(Candidate { measure, what, on: on.to_vec(), readings, minutes, after_cure: None });
    };
    // One seating of either: a second one is offered after the first, by what it still brings.
    for (measure, what) in [(Measure::CheckWeight, What::CheckWeight), (Measure::Reference, What::ReferenceSwingWeight)]
    {
        if let Some(reading) = believed.assembly.known_weight_reading(what) {
            add(measure, what, &[], vec![reading], 1.0);
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
        add(
            Measure::Again,
            What::SwingWeight,
            &step.on,
            vec![believed.assembly.swing_weight_reading(club, &step.on)],
            0.5,
        );
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
            add(Measure::Weighed, What::TotalMass, &dry, vec![before], 1.0);
            // Its joint has its mass only once it has cured and its ferrule is turned.
            found.iter_mut().filter(|c| c.measure == Measure::Weighed).for_each(|c| c.after_cure = Some(after.clone()));
        }
    }
    Ok(found)
}
