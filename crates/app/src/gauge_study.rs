//! Gauge studies: begun, gone on with reading by reading, worked out, taken over.

use crate::look_up::LookUp;
use crate::{App, AppError, load_shop, new_id};
use desk::scale_health::{StudyAdvice, StudyPlan, StudyResult, evaluate, shuffled_plan, study_design_check};
use fact::facts;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use store::{StudyReading, StudyRow, Tx};
use trade::error::Noun;
use trade::gauge::{Gauge, parse_value};
use trade::id::EventId;
use trade::scale_event::{Happened, ScaleEvent};
use trade::shop::Shop;
use utoipa::ToSchema;

/// A reading this many standard deviations from what its part read before is asked about …
const FAR_SD: f64 = 15.0;
/// … unless it lies within this share of it.
const FAR_SHARE: f64 = 0.02;

/// A study to begin.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewStudy {
    /// Key of the scale.
    pub scale: String,
    /// What is read: codes of parts, or what they are called for the study.
    #[schema(min_items = 5, max_items = 20)]
    pub parts: Vec<String>,
    /// Who reads.
    #[schema(min_items = 2, max_items = 5)]
    pub builders: Vec<String>,
    /// How often each reads each part.
    #[schema(minimum = 2, maximum = 5)]
    pub trials: usize,
    /// Who begins it.
    pub by: String,
    /// A key of the sender's own: the same one again begins nothing twice.
    #[serde(default)]
    pub request_key: Option<String>,
}

/// One reading of a study.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewStudyReading {
    /// Which reading of the plan, from 0. One that is there already is corrected.
    pub place: usize,
    /// What the scale shows, as typed.
    pub typed: String,
    /// Keep it as it is though it was asked about.
    #[serde(default)]
    pub confirmed: bool,
    /// Who enters it.
    pub by: String,
    /// A key of the sender's own: the same one again keeps nothing twice.
    #[serde(default)]
    pub request_key: Option<String>,
}

/// A reading that is to be taken.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct StudyTurn {
    /// Its place in the plan, from 0.
    pub place: usize,
    /// What is put on the scale.
    pub part: String,
    /// Who reads.
    pub builder: String,
    /// Which time, from 1.
    pub trial: usize,
}

/// How a study stands.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct StudyView {
    /// Identity.
    pub id: String,
    /// The scale.
    pub gauge: Gauge,
    /// When it was begun.
    #[schema(value_type = String, format = DateTime)]
    pub begun_at: Timestamp,
    /// Who began it.
    pub by: String,
    /// What is read, by whom, in which order.
    pub plan: StudyPlan,
    /// What is recommended, where this study has less.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub recommended: Option<StudyAdvice>,
    /// How many readings are there.
    pub done: usize,
    /// How many there are to be.
    pub of: usize,
    /// The next reading; none when all are there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<StudyTurn>,
    /// The reading that was entered last, to correct it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last: Option<StudyTurn>,
    /// What it found, once all readings are there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub result: Option<StudyResult>,
}

facts! {
    /// What is asked before a reading of a study is kept. What the part read before is not told: the next reading must not
    /// be led by it.
    pub enum StudyQuestion: "study_question" {
        /// It is far from what the part read before.
        Far {
            /// The entry.
            typed: String,
            /// What is on the scale, as the study calls it.
            part: String,
        },
    }
}

/// What became of a reading of a study.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct StudyAnswer {
    /// Whether it is kept.
    pub kept: bool,
    /// What is asked before it is kept.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub question: Option<StudyQuestion>,
    /// How the study stands now.
    pub study: StudyView,
}

impl App {
    /// Begins a study, its order drawn at random.
    ///
    /// # Errors
    /// No such scale; too few or too many parts, builders or trials; what the store says.
    pub async fn begin_study(&self, new: &NewStudy) -> Result<StudyView, AppError> {
        let mut tx = self.store.write().await?;
        let shop = load_shop(&mut tx).await?;
        shop.instrument(&new.scale)?;
        let names = |names: &[String]| names.iter().map(|n| n.trim().to_owned()).collect::<Vec<_>>();
        let seed = uuid::Uuid::now_v7().as_u64_pair().1;
        let plan = shuffled_plan(&new.scale, names(&new.parts), names(&new.builders), new.trials, seed)?;
        let row = StudyRow { id: new_id(), at: self.now(), by: new.by.trim().to_owned(), plan };
        let row = tx.begin_study(&row, new.request_key.as_deref()).await?;
        let view = view(&mut tx, &shop, row).await?;
        tx.commit().await?;
        self.tell(None, "scale");
        Ok(view)
    }

    /// All studies, the newest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn studies(&self) -> Result<Vec<StudyView>, AppError> {
        let mut tx = self.store.read().await?;
        let shop = load_shop(&mut tx).await?;
        let mut all = Vec::new();
        for row in tx.studies().await? {
            // The study of a gauge that was taken away stays in the database.
            if shop.instrument(&row.plan.scale).is_ok() {
                all.push(view(&mut tx, &shop, row).await?);
            }
        }
        Ok(all)
    }

    /// How a study stands.
    ///
    /// # Errors
    /// No such study; what the store says.
    pub async fn study(&self, id: &str) -> Result<StudyView, AppError> {
        let mut tx = self.store.read().await?;
        let shop = load_shop(&mut tx).await?;
        let row = study_row(&mut tx, id).await?;
        view(&mut tx, &shop, row).await
    }

    /// Keeps a reading of a study, or asks about it first where it is far from what its part read before.
    ///
    /// # Errors
    /// No such study or place; an entry that cannot be read or cannot be; what the store says.
    pub async fn read_study(&self, id: &str, new: &NewStudyReading) -> Result<StudyAnswer, AppError> {
        let mut tx = self.store.write().await?;
        let shop = load_shop(&mut tx).await?;
        let row = study_row(&mut tx, id).await?;
        let gauge = shop.instrument(&row.plan.scale)?;
        let Some(step) = row.plan.order.get(new.place) else {
            return Err(AppError::not_found(
                Noun::Reading,
                new.place.to_string(),
                &LookUp::StudyPlaces { most: row.plan.order.len().saturating_sub(1) },
            ));
        };
        let value = parse_value(gauge.measures, &new.typed)?;
        let before = latest(&tx.study_readings(id).await?, row.plan.order.len());
        let of_part = |(i, value): (usize, &Option<f64>)| {
            let same = i != new.place && row.plan.order[i].part == step.part;
            value.filter(|_| same)
        };
        let earlier: Vec<f64> = before.iter().enumerate().filter_map(of_part).collect();
        let mean = earlier.iter().sum::<f64>() / earlier.len().max(1) as f64;
        let far = (FAR_SD * gauge.reading_sd()).max(FAR_SHARE * mean.abs());
        if !earlier.is_empty() && (value - mean).abs() > far && !new.confirmed {
            let part = row.plan.parts[step.part].clone();
            let question = StudyQuestion::Far { typed: new.typed.trim().to_owned(), part };
            let study = view(&mut tx, &shop, row).await?;
            return Ok(StudyAnswer { kept: false, question: Some(question), study });
        }
        let reading = StudyReading {
            id: new_id(),
            study: id.to_owned(),
            place: i64::try_from(new.place).unwrap_or(i64::MAX),
            typed: new.typed.trim().to_owned(),
            reading: value,
            at: self.now(),
            by: new.by.trim().to_owned(),
        };
        tx.append_study_reading(&reading, new.request_key.as_deref()).await?;
        let study = view(&mut tx, &shop, row).await?;
        tx.commit().await?;
        self.tell(None, "scale");
        Ok(StudyAnswer { kept: true, question: None, study })
    }

    /// The scatter that a study found becomes the stated noise of its scale.
    ///
    /// # Errors
    /// No such study; readings that are still missing; what the store says.
    pub async fn take_noise(&self, id: &str, by: &str) -> Result<Shop, AppError> {
        let mut tx = self.store.write().await?;
        let mut shop = Arc::unwrap_or_clone(load_shop(&mut tx).await?);
        let row = study_row(&mut tx, id).await?;
        let gauge = shop.instrument(&row.plan.scale)?;
        let readings = latest(&tx.study_readings(id).await?, row.plan.order.len());
        let noise_sd = evaluate(&row.plan, &gauge, &readings)?.noise_sd;
        for scale in [&mut shop.balance_scale, &mut shop.mass_scale] {
            if scale.key == gauge.key {
                scale.noise_sd = noise_sd;
            }
        }
        for other in shop.gauges.iter_mut().filter(|g| g.key == gauge.key) {
            other.noise_sd = noise_sd;
        }
        shop.check()?;
        tx.save_shop(&shop, self.now()).await?;
        let event = ScaleEvent {
            id: EventId(new_id()),
            scale: gauge.key.clone(),
            at: self.now(),
            kept_at: self.now(),
            day: self.today(),
            by: by.trim().to_owned(),
            what: Happened::NoiseTaken { study: id.to_owned(), noise_sd, before_sd: gauge.noise_sd },
        };
        tx.append_scale_event(&event, None).await?;
        tx.commit().await?;
        self.tell(None, "scale");
        Ok(shop)
    }
}

async fn study_row(tx: &mut Tx, id: &str) -> Result<StudyRow, AppError> {
    let row = tx.study(id).await?;
    row.ok_or_else(|| AppError::not_found(Noun::Study, id, &LookUp::Scales))
}

/// The value of each place, the latest entered; none where there is none yet.
fn latest(readings: &[StudyReading], places: usize) -> Vec<Option<f64>> {
    let mut values = vec![None; places];
    for reading in readings {
        if let Some(value) = usize::try_from(reading.place).ok().and_then(|at| values.get_mut(at)) {
            *value = Some(reading.reading);
        }
    }
    values
}

async fn view(tx: &mut Tx, shop: &Shop, row: StudyRow) -> Result<StudyView, AppError> {
    let gauge = shop.instrument(&row.plan.scale)?;
    let readings = tx.study_readings(&row.id).await?;
    let values = latest(&readings, row.plan.order.len());
    let turn = |place: usize| {
        row.plan.order.get(place).map(|step| StudyTurn {
            place,
            part: row.plan.parts[step.part].clone(),
            builder: row.plan.builders[step.builder].clone(),
            trial: step.trial + 1,
        })
    };
    let next = values.iter().position(Option::is_none);
    let result = match next {
        None => Some(evaluate(&row.plan, &gauge, &values)?),
        Some(_) => None,
    };
    Ok(StudyView {
        recommended: study_design_check(&row.plan.parts, &row.plan.builders, row.plan.trials)?,
        done: values.iter().flatten().count(),
        of: values.len(),
        next: next.and_then(turn),
        last: readings.last().and_then(|r| usize::try_from(r.place).ok()).and_then(turn),
        result,
        id: row.id,
        gauge,
        begun_at: row.at,
        by: row.by,
        plan: row.plan,
    })
}
