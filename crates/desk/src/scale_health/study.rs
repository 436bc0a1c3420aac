//! The gauge study at the bench: several parts, each read several times by several builders, in random
//! order; then how much of what scatters is the scale and the hands.

use estimation::gauge_study::{Crossed, GaugeStudy};
use fact::facts;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::gauge::{Gauge, GaugeFigure};
use utoipa::ToSchema;

/// What is recommended at least (common practice after AIAG, Measurement Systems Analysis: 10 parts, 3 builders, 3
/// trials; with fewer than 5 parts and 2 builders the figures say next to nothing).
const WANTED: (usize, usize, usize) = (10, 3, 3);
const LEAST: (usize, usize, usize) = (5, 2, 2);
const MOST: (usize, usize, usize) = (20, 5, 5);
/// Above this probability the interaction counts as chance (customary).
const POOL_ABOVE: f64 = 0.25;
/// Classes that a gauge should tell apart (customary).
const CLASSES_WANTED: usize = 5;

/// One reading that is to be taken: positions in the lists of builders and parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StudyStep {
    /// Which builder.
    pub builder: usize,
    /// Which time, from 0.
    pub trial: usize,
    /// Which part.
    pub part: usize,
}

/// A study as it was begun; it never changes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StudyPlan {
    /// Key of the scale.
    pub scale: String,
    /// What is read: codes of parts, or what they are called for the study.
    pub parts: Vec<String>,
    /// Who reads.
    pub builders: Vec<String>,
    /// How often each reads each part.
    pub trials: usize,
    /// Every reading, in the order in which it is taken.
    pub order: Vec<StudyStep>,
}

facts! {
    /// What is recommended for a study that has less.
    pub enum StudyAdvice: "study_advice" {
        /// More parts, builders or trials.
        More {
            /// How many parts are recommended.
            parts: usize,
            /// How many builders are recommended.
            builders: usize,
            /// How often each reads each part.
            trials: usize,
        },
    }
}

facts! {
    /// What a study has found.
    pub enum StudyFound: "study_found" {
        /// How much of the spread is the scale and the hands.
        Spread {
            /// Share of the spread that is the scale and the hands, 0 to 1; the rest is how the parts differ.
            gauge_share: f64,
            /// How much one hand's readings scatter.
            scale: GaugeFigure,
            /// How much the hands differ.
            hands: GaugeFigure,
        },
    }
}

facts! {
    /// What to do about a scale that does not tell its parts apart well.
    pub enum StudyNext: "study_next" {
        /// The hands differ more than the scale scatters.
        HandsDiffer {
            /// Classes told apart.
            classes: usize,
            /// Classes wanted.
            wanted: usize,
        },
        /// Several readings of each part are enough.
        Repeat {
            /// Classes told apart.
            classes: usize,
            /// Classes wanted.
            wanted: usize,
            /// Readings of each part.
            times: usize,
        },
        /// A finer scale is needed.
        FinerScale {
            /// Classes told apart.
            classes: usize,
            /// Classes wanted.
            wanted: usize,
            /// How far the parts lie apart.
            within: GaugeFigure,
        },
    }
}

/// Refuses a study that could tell nothing, and says what is recommended where it has less.
///
/// # Errors
/// Too few or too many parts, builders or trials; names that are empty or occur twice.
pub fn study_design_check(
    parts: &[String],
    builders: &[String],
    trials: usize,
) -> Result<Option<StudyAdvice>, TradeError> {
    let refuse = |fault: StudyFault| Err(TradeError::refused(fault));
    let named = |names: &[String], unnamed: StudyFault, twice: fn(String) -> StudyFault| {
        if names.iter().any(|name| name.trim().is_empty()) {
            return Err(TradeError::refused(unnamed));
        }
        match names.iter().enumerate().find(|(i, name)| names[..*i].contains(name)) {
            Some((_, name)) => Err(TradeError::refused(twice(name.clone()))),
            None => Ok(()),
        }
    };
    named(parts, StudyFault::PartUnnamed, |name| StudyFault::PartTwice { name })?;
    named(builders, StudyFault::BuilderUnnamed, |name| StudyFault::BuilderTwice { name })?;
    let counts = (parts.len(), builders.len(), trials);
    if counts.0 < LEAST.0 || counts.1 < LEAST.1 || counts.2 < LEAST.2 {
        return refuse(StudyFault::TooFew { parts: counts.0, builders: counts.1, trials });
    }
    if counts.0 > MOST.0 || counts.1 > MOST.1 || counts.2 > MOST.2 {
        return refuse(StudyFault::TooMany { parts: counts.0, builders: counts.1, trials });
    }
    let small = counts.0 < WANTED.0 || counts.1 < WANTED.1 || counts.2 < WANTED.2;
    Ok(small.then_some(StudyAdvice::More { parts: WANTED.0, builders: WANTED.1, trials: WANTED.2 }))
}

/// A study with its readings in random order: trial by trial, the builders in turn, each with the parts shuffled again,
/// so that nobody remembers what a part read before. The same seed gives the same order.
///
/// # Errors
/// As [`study_design_check`].
pub fn shuffled_plan(
    scale: &str,
    parts: Vec<String>,
    builders: Vec<String>,
    trials: usize,
    seed: u64,
) -> Result<StudyPlan, TradeError> {
    study_design_check(&parts, &builders, trials)?;
    let mut random = SplitMix(seed);
    let mut order = Vec::with_capacity(parts.len() * builders.len() * trials);
    for trial in 0..trials {
        let mut turn: Vec<usize> = (0..builders.len()).collect();
        random.shuffle(&mut turn);
        for builder in turn {
            let mut these: Vec<usize> = (0..parts.len()).collect();
            random.shuffle(&mut these);
            order.extend(these.into_iter().map(|part| StudyStep { builder, trial, part }));
        }
    }
    Ok(StudyPlan { scale: scale.to_owned(), parts, builders, trials, order })
}

/// SplitMix64 (Steele, Lea and Flood, OOPSLA 2014): small, and good enough to shuffle.
struct SplitMix(u64);

impl SplitMix {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn shuffle(&mut self, items: &mut [usize]) {
        for i in (1..items.len()).rev() {
            // The bias of the remainder is below 1e-17 for so few.
            let j = (self.next() % (i as u64 + 1)) as usize;
            items.swap(i, j);
        }
    }
}

/// How well a study's parts are told apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Category {
    /// Below 10 % of the spread.
    Good,
    /// 10 to 30 %.
    Usable,
    /// Above.
    Poor,
}

/// What a study has found.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct StudyResult {
    /// By averages and ranges.
    pub average_range: GaugeStudy,
    /// By analysis of variance; none where repeats show no scatter at all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub variance_analysis: Option<GaugeStudy>,
    /// Share of the spread that is the scale and the hands, per cent: by analysis of variance, else by ranges.
    pub share_percent: f64,
    /// Classes that the scale tells apart among these parts.
    pub classes: usize,
    /// How good that is.
    pub category: Category,
    /// Scatter of one reading by one hand, in the scale's unit: what the scale may state as its noise, its rounding
    /// taken off.
    pub noise_sd: f64,
    /// How much of the spread is the scale and the hands.
    #[serde(flatten)]
    pub found: StudyFound,
    /// What to do; none where nothing is to be done.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<StudyNext>,
}

/// Works a study out. `readings` has one value a step, in the order of the plan.
///
/// # Errors
/// A reading missing; figures that are none.
pub fn evaluate(plan: &StudyPlan, gauge: &Gauge, readings: &[Option<f64>]) -> Result<StudyResult, TradeError> {
    let mut table = vec![vec![vec![f64::NAN; plan.parts.len()]; plan.trials]; plan.builders.len()];
    let missing = readings.iter().filter(|r| r.is_none()).count() + plan.order.len().saturating_sub(readings.len());
    if missing > 0 {
        return Err(TradeError::refused(StudyFault::NotFinished { n: missing, of: plan.order.len() }));
    }
    for (step, value) in plan.order.iter().zip(readings) {
        let place = table.get_mut(step.builder).and_then(|t| t.get_mut(step.trial)).and_then(|t| t.get_mut(step.part));
        if let Some((place, value)) = place.zip(*value) {
            *place = value;
        }
    }
    let crossed = Crossed::new(table)?;
    let average_range = crossed.average_range();
    let variance_analysis = crossed.variance_analysis(POOL_ABOVE).ok();
    let found = variance_analysis.unwrap_or(average_range);
    let category = match found.gauge_percent {
        p if p < 10.0 => Category::Good,
        p if p <= 30.0 => Category::Usable,
        _ => Category::Poor,
    };
    Ok(StudyResult {
        average_range,
        variance_analysis,
        share_percent: found.gauge_percent,
        classes: found.categories,
        category,
        noise_sd: noise_from(found.equipment, gauge.display_step),
        found: StudyFound::Spread {
            gauge_share: found.gauge_percent / 100.0,
            scale: gauge.amount(found.equipment),
            hands: gauge.amount(found.appraiser.hypot(found.interaction)),
        },
        next: next(&found, category, gauge),
    })
}

/// The noise of one reading before rounding, from the scatter of repeats as they were shown: the variance that rounding
/// adds (a twelfth of the squared step, derived) taken off, but never less than a tenth of a step.
#[must_use]
pub fn noise_from(shown_sd: f64, display_step: f64) -> f64 {
    let least = (0.1 * display_step).max(0.001);
    (shown_sd * shown_sd - display_step * display_step / 12.0).max(0.0).sqrt().max(least)
}

fn next(found: &GaugeStudy, category: Category, gauge: &Gauge) -> Option<StudyNext> {
    if found.categories >= CLASSES_WANTED && category != Category::Poor {
        return None;
    }
    let (classes, wanted) = (found.categories, CLASSES_WANTED);
    let hands = found.appraiser.hypot(found.interaction);
    if hands > found.equipment {
        return Some(StudyNext::HandsDiffer { classes, wanted });
    }
    // With n readings each the repeats' variance falls to an nth; what is wanted of it follows from the classes.
    let wanted_sd = std::f64::consts::SQRT_2 * found.part / CLASSES_WANTED as f64;
    let left = wanted_sd * wanted_sd - hands * hands;
    let repeats = (found.equipment * found.equipment / left).ceil();
    if left > 0.0 && (2.0..=5.0).contains(&repeats) {
        return Some(StudyNext::Repeat { classes, wanted, times: repeats as usize });
    }
    Some(StudyNext::FinerScale { classes, wanted, within: gauge.amount(6.0 * found.part.max(gauge.display_step)) })
}

fact::facts! {
    /// What is refused of a gauge study.
    pub(crate) enum StudyFault: "study_fault" {
        PartUnnamed,
        BuilderUnnamed,
        PartTwice { name: String },
        BuilderTwice { name: String },
        TooFew { parts: usize, builders: usize, trials: usize },
        TooMany { parts: usize, builders: usize, trials: usize },
        NotFinished { n: usize, of: usize },
    }
}
