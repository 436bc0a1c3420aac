//! Frequency: what every club should read in the clamp, how sure that is, and how readings move it.
//!
//! A small linear belief of its own beside the one of masses and arms, solved by the same engine with the same doubt. It is
//! apart because the two have next to nothing to tell each other: a swing weight says nothing of stiffness, and what a
//! frequency says of a head's mass, a gram for half a cycle, the scale says better. What it needs of the other (masses, the
//! centre of the head, the cut length as read) it takes as it is there.
//!
//! The logarithm of the frequency is what is believed, in hundredths: a stiffer shaft adds half of its logarithm whatever
//! head and clamp it swings in, so a belief that begins 15 % wide stays straight. Unknown are
//! - of the shaft model: how stiff it is against its table or tube, and how that tilts toward the tip (kept by the shop);
//! - of the clamp: how much longer the shaft acts because it gives, and how much more with a grip in it (kept by the shop);
//! - of the head model: where its centre lies and what it weighs out of the axis (job);
//! - of the single shaft: its stiffness (its scatter is kept) and, where it was read at several clamp lengths, how it deviates
//!   along its length; of the single club: its cuts and its head's mass.
//!
//! Not counted: damping, a head's centre out of the shaft's axis, shear, the rubber of a grip, a ferrule's stiffness.

mod profile;
mod setup;
mod shaft;

pub(crate) use profile::{HELD_SD_MM, SHAPE_LENGTH_MM, figure_of, seen_of};
pub(crate) use setup::InClamp;
pub use shaft::StiffnessFrom;
pub(crate) use shaft::{InHand, RawShaft};

use self::setup::{Linear, Setup};
use crate::accuracy::noise_sd;
use crate::assembly::{Assembly, STIFFNESS_PIECE_SD};
use crate::learned::{Learned, Scattered, ValueKey};
use clubphysics::vibration::ClampedMode;
use estimation::{
    Belief, DOUBT_LIMIT, Forecast, JobModel, JointPrior, Mixture, Observation, Probe, Quantity, Share, SharedPrior,
    Standing, WideMean,
};
use std::collections::BTreeMap;
use std::sync::Arc;
use trade::error::TradeError;
use trade::gauge::{Gauge, Measures};
use trade::id::ClubId;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::reading::{Reading, What};
use trade::shop::Shop;

/// Hundredths of a logarithm: what the belief's figures are in.
pub(crate) const PERCENT: f64 = 100.0;
/// Name that the reading of a raw shaft has among the readings of its club.
const RAW: &str = "raw:";
/// Name that the readings of its profile have.
const PROFILE: &str = "profile:";

/// Key of what one club's shaft deviates from its model.
pub(crate) fn piece_key(club: &ClubId) -> String {
    format!("flex_piece:{club}")
}

/// Key of what one club's cuts and head deviate, in their own standard deviation.
pub(crate) fn build_key(club: &ClubId) -> String {
    format!("flex_build:{club}")
}

/// What the shop expects of each unknown before the readings of the job.
#[derive(Debug, Clone, Copy)]
pub(super) struct Known<'a>(&'a Learned);

impl Known<'_> {
    fn mean(&self, key: &str) -> f64 {
        self.0.position(key).map_or(0.0, |at| self.0.values[at].mean_shift)
    }
}

impl Assembly<'_> {
    /// Scatter of single shafts about their model's stiffness, as stated or as learned, as a share.
    pub(crate) fn stiffness_piece_sd(&self) -> f64 {
        self.learned.scatter_sd(Scattered::StiffnessPiece.key(), STIFFNESS_PIECE_SD)
    }

    /// Noise of one reading in the clamp, and the step of the display, cpm.
    pub(crate) fn meter(&self) -> (f64, f64) {
        meter_of(self.shop, self.learned)
    }
}

/// Noise of one reading of a club that is taken out and clamped again, and the step of the display, cpm.
pub(crate) fn meter_of(shop: &Shop, learned: &Learned) -> (f64, f64) {
    let gauge = shop.gauge_for(What::Cpm).map_or_else(|| Gauge::never_studied(Measures::Frequency), |(gauge, _)| gauge);
    (noise_sd(learned, &gauge.key, gauge.noise_sd), gauge.display_step)
}

/// A frequency with its standard deviation, cycles a minute.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Cpm {
    pub mean: f64,
    pub sd: f64,
}

/// A club with its tip cut otherwise: its true frequency and its mode.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Trimmed {
    pub cpm: Cpm,
    pub mode: ClampedMode,
}

/// What is believed of the frequencies of a job.
#[derive(Debug, Clone)]
pub struct Flex {
    mixture: Option<Arc<Mixture>>,
    /// The cut lengths as they were read.
    read_mm: BTreeMap<ClubId, f64>,
    /// The lasting unknowns by the clubs of which a frequency was read.
    lasting: BTreeMap<ClubId, Vec<String>>,
}

impl Flex {
    /// Weighs up the frequencies among the standing readings; `aside` names those of masses and lengths that are not believed.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub(crate) fn solve(assembly: Assembly<'_>, readings: &[&Reading], aside: &[String]) -> Result<Self, TradeError> {
        let mut flex = Self { mixture: None, read_mm: BTreeMap::new(), lasting: BTreeMap::new() };
        for club in &assembly.job.clubs {
            if let Some(mm) = Setup::read_length_mm(club, readings, aside) {
                flex.read_mm.insert(club.id.clone(), mm);
            }
        }
        let setups: Vec<Setup<'_>> = assembly.job.clubs.iter().filter_map(|club| flex.setup(assembly, club)).collect();
        if setups.is_empty() {
            return Ok(flex);
        }
        let model = model_of(assembly, &setups)?;
        let wide: Vec<WideMean> = wide_means(assembly, &setups);
        let mut observed = Vec::new();
        for setup in &setups {
            let of_club = observations(assembly, setup, readings);
            if !of_club.is_empty() {
                let keys = setup.keys()?.into_iter().map(|(key, _)| key);
                let lasting = keys.filter(|key| key.parse::<ValueKey>().is_ok()).collect();
                flex.lasting.insert(setup.club.id.clone(), lasting);
            }
            observed.extend(of_club);
        }
        flex.mixture = Some(Arc::new(model.solve_mixture(&wide, &observed, DOUBT_LIMIT)?));
        Ok(flex)
    }

    fn setup<'a>(&self, assembly: Assembly<'a>, club: &'a JobClub) -> Option<Setup<'a>> {
        Setup::of(assembly, club, self.read_mm.get(&club.id).copied())
    }

    /// Whether a reading of a frequency is kept and not believed.
    pub(crate) fn is_set_aside(&self, id: &str) -> bool {
        self.mixture.as_ref().is_some_and(|mixture| mixture.doubt.set_aside.iter().any(|other| other == id))
    }

    /// Whether an observation is a reading of a club, and not of its shaft before the cut.
    pub(crate) fn is_of_club(id: &str) -> bool {
        !id.starts_with(RAW) && !id.starts_with(PROFILE)
    }

    /// The belief with all means as usual: what is learned is learned from it.
    pub(crate) fn usual(&self) -> Option<&Belief> {
        self.mixture.as_ref().map(|mixture| mixture.usual())
    }

    /// The clubs of which a frequency was read and is believed, each with the lasting unknowns behind it.
    pub(crate) fn read_of(&self) -> impl Iterator<Item = (&ClubId, &[String])> {
        let believed = |club: &ClubId| {
            let keys = [piece_key(club)];
            self.usual().is_some_and(|belief| {
                belief.readings().iter().any(|r| {
                    let of = matches!(&r.quantity, Quantity::Combination(shares) if shares.iter().any(|s| keys.contains(&s.key)));
                    of && r.is_believed()
                })
            })
        };
        self.lasting.iter().filter(move |(club, _)| believed(club)).map(|(club, keys)| (club, keys.as_slice()))
    }

    /// What a reading in the clamp should show, with the noise of the meter where it is to be read; none where nothing can be said.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub(crate) fn expected(
        &self,
        assembly: Assembly<'_>,
        club: &JobClub,
        on: &[Role],
        read: bool,
    ) -> Result<Option<Cpm>, TradeError> {
        Ok(self
            .trimmed(assembly, club, on, 0.0)?
            .map(|found| if read { noisy(assembly, found.cpm) } else { found.cpm }))
    }

    /// The same with more cut off the tip and as much less off the butt than planned, mm, and its mode. The true frequency,
    /// without the meter's noise.
    pub(crate) fn trimmed(
        &self,
        assembly: Assembly<'_>,
        club: &JobClub,
        on: &[Role],
        more_tip_mm: f64,
    ) -> Result<Option<Trimmed>, TradeError> {
        let Some((setup, mixture)) = self.setup(assembly, club).zip(self.mixture.as_ref()) else { return Ok(None) };
        let setup = Setup { more_tip_mm, ..setup };
        let Some(linear) = linear(&setup, InClamp::Cut(on)) else { return Ok(None) };
        let probe = Probe::of_job(Quantity::Combination(linear.shares.clone()));
        let found = mixture.forecast(|belief| belief.answer(&probe))?;
        let cpm = of_logarithm(Forecast { mean: found.mean + linear.constant, sd: found.sd });
        Ok(Some(Trimmed { cpm, mode: linear.mode }))
    }

    /// What another tip trim adds to the true frequency: what both cuts have in common is not counted twice.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub(crate) fn gain(
        &self,
        assembly: Assembly<'_>,
        club: &JobClub,
        on: &[Role],
        more_tip_mm: f64,
    ) -> Result<Option<Cpm>, TradeError> {
        let Some((setup, mixture)) = self.setup(assembly, club).zip(self.mixture.as_ref()) else { return Ok(None) };
        let then = Setup { more_tip_mm, ..setup.clone() };
        let (Some(now), Some(then)) = (linear(&setup, InClamp::Cut(on)), linear(&then, InClamp::Cut(on))) else {
            return Ok(None);
        };
        let less = now.shares.iter().map(|share| Share { gain: -share.gain, ..share.clone() });
        let ask = |shares: Vec<Share>| {
            let probe = Probe::of_job(Quantity::Combination(shares));
            mixture.forecast(|belief| belief.answer(&probe))
        };
        let level = ask(now.shares.clone())?.mean + now.constant;
        let change = ask(then.shares.iter().cloned().chain(less).collect())?;
        let by = (change.mean + then.constant - now.constant) / PERCENT;
        let mean = (level / PERCENT).exp();
        Ok(Some(Cpm { mean: mean * by.exp_m1(), sd: mean * by.exp() * change.sd / PERCENT }))
    }

    /// What the stiffness of a club's shaft rests on before any reading; none where nothing is forecast.
    pub(crate) fn rests_on(&self, assembly: Assembly<'_>, club: &JobClub) -> Option<StiffnessFrom> {
        self.setup(assembly, club).map(|setup| setup.raw.from)
    }

    /// What a cause could do: the job's belief with all readings of one club, each with the mode in which it was read.
    pub(crate) fn case(
        &self,
        assembly: Assembly<'_>,
        club: &JobClub,
        readings: &[&Reading],
    ) -> Result<Option<FlexCase>, TradeError> {
        let Some(setup) = self.setup(assembly, club) else { return Ok(None) };
        let setups: Vec<Setup<'_>> = assembly.job.clubs.iter().filter_map(|club| self.setup(assembly, club)).collect();
        let model = model_of(assembly, &setups)?;
        let aside = |o: Observation| if self.is_set_aside(&o.id) { o.standing(Standing::Doubted) } else { o };
        let others = setups.iter().flat_map(|setup| observations(assembly, setup, readings));
        let observed = others.map(aside).collect();
        let of_club = readings.iter().filter(|r| r.club == club.id && r.what == What::Cpm);
        let own = of_club
            .filter_map(|r| Some((r.id.0.clone(), r.on.clone(), linear(&setup, InClamp::Cut(&r.on))?.mode)))
            .collect();
        let raw = raw_cpm(&setup).is_some().then(|| format!("{RAW}{}", club.id));
        Ok(Some(FlexCase { model, observed, own, raw }))
    }
}

/// See [`Flex::case`].
pub(crate) struct FlexCase {
    pub model: JobModel,
    pub observed: Vec<Observation>,
    /// Readings of the club: name, pieces on it, mode.
    pub own: Vec<(String, Vec<Role>, ClampedMode)>,
    /// The reading of its raw shaft, where there is one.
    pub raw: Option<String>,
}

/// The frequency that a logarithm in hundredths stands for.
fn of_logarithm(found: Forecast) -> Cpm {
    let mean = (found.mean / PERCENT).exp();
    Cpm { mean, sd: mean * found.sd / PERCENT }
}

/// With the noise and the rounding of the meter.
pub(crate) fn noisy(assembly: Assembly<'_>, cpm: Cpm) -> Cpm {
    let (noise, step) = assembly.meter();
    Cpm { sd: cpm.sd.hypot(noise).hypot(step / 12f64.sqrt()), ..cpm }
}

/// A club whose figures no beam can have is not forecast; the bench goes on without.
fn linear(setup: &Setup<'_>, what: InClamp<'_>) -> Option<Linear> {
    setup.linear(what, &Known(setup.assembly.learned)).ok().flatten()
}

fn raw_cpm(setup: &Setup<'_>) -> Option<f64> {
    // The reading of a profile in the usual clamp is that of the raw shaft: it counts once.
    let counts = setup.assembly.shop.clamp.test_weight_g.is_some() && setup.raw.from != StiffnessFrom::Profile;
    setup.plan.part(PartKind::Shaft)?.raw_cpm.filter(|_| counts)
}

/// The readings of a club as the belief takes them.
fn observations(assembly: Assembly<'_>, setup: &Setup<'_>, readings: &[&Reading]) -> Vec<Observation> {
    let (noise, step) = assembly.meter();
    let one = |id: String, what: InClamp<'_>, cpm: f64, step: f64| {
        let linear = linear(setup, what)?;
        let value = cpm.max(1.0).ln() * PERCENT - linear.constant;
        let of_reading = PERCENT / cpm.max(1.0);
        let made = Observation::new(id, Quantity::Combination(linear.shares), value, noise * of_reading);
        Some(made.rounded_to(step * of_reading))
    };
    // A raw shaft cannot be read again once it is cut: where it and the club disagree, the club is looked at.
    let raw = raw_cpm(setup).and_then(|cpm| one(format!("{RAW}{}", setup.club.id), InClamp::Raw, cpm, step));
    let raw = raw.map(|made| made.standing(Standing::Insisted));
    let of_club = readings.iter().filter(|r| r.club == setup.club.id && r.what == What::Cpm);
    let read = of_club.filter(|r| !assembly.job.is_of_club_as_it_came(r)).filter_map(|r| {
        let made = one(r.id.0.clone(), InClamp::Cut(&r.on), r.value, r.display_step.max(step))?;
        Some(if r.insisted { made.standing(Standing::Insisted) } else { made })
    });
    let of_profile = setup.plan.part(PartKind::Shaft).and_then(|part| part.profile.as_ref());
    let profile = of_profile.iter().flat_map(|profile| &profile.readings).enumerate().filter_map(|(i, read)| {
        let (value, shares, sd) = setup.of_profile(read, &Known(assembly.learned)).ok().flatten()?;
        let id = format!("{PROFILE}{}:{i}", setup.club.id);
        Some(Observation::new(id, Quantity::Combination(shares), value, sd).standing(Standing::Insisted))
    });
    raw.into_iter().chain(profile).chain(read).collect()
}

/// The unknowns of all clubs; those that the shop has learned with what it learned and how they hang together.
fn model_of(assembly: Assembly<'_>, setups: &[Setup<'_>]) -> Result<JobModel, TradeError> {
    let mut widest = BTreeMap::<String, f64>::new();
    for setup in setups {
        for (key, sd) in setup.keys()? {
            let known = widest.entry(key).or_insert(sd);
            *known = known.max(sd);
        }
    }
    let learned = assembly.learned;
    let at: Vec<(String, usize)> =
        widest.keys().filter_map(|key| Some((key.clone(), learned.position(key)?))).collect();
    let row = |i: usize| at.iter().map(|(_, j)| learned.covariance[i][*j]).collect();
    let joint = JointPrior {
        keys: at.iter().map(|(key, _)| key.clone()).collect(),
        covariance: at.iter().map(|(_, i)| row(*i)).collect(),
    };
    let shared = widest.into_iter().map(|(key, sd)| match learned.position(&key) {
        Some(at) => SharedPrior {
            mean_shift: learned.values[at].mean_shift,
            sd: learned.covariance[at][at].max(0.0).sqrt(),
            key,
        },
        None => SharedPrior::new(key, sd),
    });
    let shared = shared.collect();
    let joint = if at.is_empty() { Vec::new() } else { vec![joint] };
    Ok(JobModel { clubs: Vec::new(), shared, scales: Vec::new(), joint })
}

/// A model whose stiffness the shop has not learned may lie far from its table or tube.
fn wide_means(assembly: Assembly<'_>, setups: &[Setup<'_>]) -> Vec<WideMean> {
    let mut keys: Vec<String> =
        setups.iter().map(|setup| ValueKey::Stiffness(setup.shaft_model().to_owned()).to_string()).collect();
    keys.sort();
    keys.dedup();
    keys.retain(|key| assembly.learned.position(key).is_none());
    keys.into_iter().map(WideMean::of_mean_alone).collect()
}
