//! Adhesive: what to weigh out, the batch, its clocks.

use crate::job::JobFile;
use crate::{App, AppError, load_library, load_shop};
use jiff::{SignedDuration, Timestamp};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use workshop::glue::{Batch, Mix, MixWarning, mix, pot_life_until, ready_at, refuse_cold_room, room_warnings};
use workshop::id::ClubId;
use workshop::model::Library;
use workshop::reading::{Reading, Unit, What};
use workshop::step::Strength;

/// A batch that is being mixed.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewBatch {
    /// Number of the job.
    pub job: i64,
    /// Places in the tray of the clubs glued from it.
    pub slots: Vec<i64>,
    /// Code of the adhesive; left out: the shop's own.
    #[serde(default)]
    pub adhesive: Option<String>,
    /// Lot on the tins.
    pub lot: String,
    /// Share of spacers, percent by mass; left out: the shop's own.
    #[serde(default)]
    pub bead_share_percent: Option<f64>,
    /// Temperature of the room; left out: the shop's own.
    #[serde(default)]
    pub room_c: Option<f64>,
    /// Why the clock may start in a room colder than the product's sheet: what the maker says at this temperature.
    #[serde(default)]
    pub cold_reason: Option<String>,
    /// Who mixes.
    pub by: String,
}

/// A batch with its clocks.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct BatchView {
    /// The batch.
    pub batch: Batch,
    /// Name of the adhesive.
    pub adhesive_name: String,
    /// Job number and number of each club, in words: "42: 5, 6, 7".
    pub clubs: Vec<String>,
    /// When the cup goes off.
    #[schema(value_type = String, format = DateTime)]
    pub pot_life_until: Timestamp,
    /// When the clubs may be handled, gripped and balanced.
    #[schema(value_type = String, format = DateTime)]
    pub handling_at: Timestamp,
    /// When they may be bent, handed over and swung.
    #[schema(value_type = String, format = DateTime)]
    pub full_cure_at: Timestamp,
    /// What its room means for these times.
    pub warnings: Vec<MixWarning>,
}

/// A mixed cup and how long it is good.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cup {
    /// Number of its batch.
    pub number: i64,
    /// When it goes off.
    pub until: Timestamp,
}

impl From<&BatchView> for Cup {
    fn from(view: &BatchView) -> Self {
        Self { number: view.batch.number, until: view.pot_life_until }
    }
}

impl App {
    /// What to weigh out for so many joints, and the times of the room.
    ///
    /// # Errors
    /// No joints, an unknown adhesive, a figure that no batch has; what the store says.
    pub async fn mix(
        &self,
        adhesive: Option<&str>,
        joints: usize,
        bead_share_percent: Option<f64>,
        room_c: Option<f64>,
    ) -> Result<Mix, AppError> {
        let mut tx = self.store.read().await?;
        let shop = load_shop(&mut tx).await?;
        let library = load_library(&mut tx).await?;
        let code = adhesive_code(adhesive, shop.adhesive.as_deref())?;
        let model = library.adhesive(code)?;
        let joint_mass_g = crate::learned::known(&mut tx).await?.joint_mass_g(model);
        let bead_share_percent = bead_share_percent.unwrap_or(shop.bead_share_percent);
        Ok(mix(model, joints, joint_mass_g, bead_share_percent, room_c.unwrap_or(shop.room_c))?)
    }

    /// Starts a batch: its clocks run, and its clubs count as glued.
    ///
    /// # Errors
    /// Clubs that are not at the bench or are glued already in a batch that has not been undone; no lot; a room that is
    /// too cold for the product's sheet without a reason; what the store says.
    pub async fn start_batch(&self, new: &NewBatch) -> Result<BatchView, AppError> {
        let mut tx = self.store.write().await?;
        let file = JobFile::load(&mut tx, new.job).await?;
        crate::bench::need_at_bench(&file)?;
        if new.lot.trim().is_empty() {
            return Err(AppError::Invalid {
                what: "the lot of the adhesive is missing".into(),
                next: "Type what stands on the tins: it is how every club of a bad lot is found again".into(),
            });
        }
        let code = adhesive_code(new.adhesive.as_deref(), file.shop.adhesive.as_deref())?.to_owned();
        let room_c = new.room_c.unwrap_or(file.shop.room_c);
        let bead_share_percent = new.bead_share_percent.unwrap_or(file.shop.bead_share_percent);
        let model = file.library.adhesive(&code)?;
        refuse_cold_room(model, room_c, new.cold_reason.as_deref())?;
        let joint_mass_g = file.learned.joint_mass_g(model);
        let amounts = mix(model, new.slots.len(), joint_mass_g, bead_share_percent, room_c)?;
        let step = file.job.steps.iter().find(|s| s.glues).cloned().ok_or_else(|| AppError::Conflict {
            what: format!("the steps of job {} have no gluing", new.job),
            next: "Nothing is glued in this job".into(),
        })?;
        let mut clubs = Vec::new();
        for &slot in &new.slots {
            let club = file.club_at(slot)?;
            if club.plan.is_none() {
                return Err(AppError::Conflict {
                    what: format!("the {} has no parts yet", club.target.number),
                    next: "Plan it first, or leave it out of this batch".into(),
                });
            }
            if clubs.contains(&club.id) {
                return Err(AppError::Invalid {
                    what: format!("club {slot} is in this batch twice"),
                    next: "Name each club once".into(),
                });
            }
            clubs.push(club.id.clone());
        }
        let now = self.now();
        let batch = Batch {
            id: crate::new_id().as_str().into(),
            number: tx.next_batch_number().await?,
            adhesive: code,
            lot: new.lot.trim().to_owned(),
            clubs: clubs.clone(),
            bead_share_percent,
            room_c,
            cold_reason: new.cold_reason.as_deref().map(str::trim).filter(|r| !r.is_empty()).map(str::to_owned),
            resin_g: amounts.resin_g,
            hardener_g: amounts.hardener_g,
            beads_g: amounts.beads_g,
            mixed_at: now,
            by: new.by.clone(),
        };
        tx.insert_batch(&batch).await?;
        for club in &clubs {
            let done = Reading {
                id: crate::new_id().as_str().into(),
                job: file.job.id.clone(),
                club: club.clone(),
                step: step.key.clone(),
                what: What::Done,
                value: 0.0,
                unit: Unit::None,
                typed: format!("batch {}", batch.number),
                on: step.on.clone(),
                scale: None,
                display_step: 0.0,
                at: now,
                by: new.by.clone(),
                replaces: None,
                taken_back: None,
                insisted: false,
            };
            tx.append_reading(&done, None, None).await?;
        }
        let note = serde_json::json!({ "batch": batch.number, "lot": batch.lot });
        self.log(&mut tx, Some(&file.job.id), None, "batch_mixed", &new.by, note).await?;
        tx.commit().await?;
        self.tell(Some(new.job), "batch");
        let name = |id: &ClubId| file.job.club(id).map(|c| (file.job.number, c.target.number.clone()));
        let numbers: Vec<(i64, String)> = clubs.iter().filter_map(name).collect();
        batch_view(batch, &file.library, &numbers)
    }

    /// Cups that are still good, the latest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn running_cups(&self) -> Result<Vec<Cup>, AppError> {
        // No adhesive that a shop glues clubs with stays good for two days.
        let since = self.now() - SignedDuration::from_hours(48);
        let mut tx = self.store.read().await?;
        let batches = tx.batches_since(since).await?;
        if batches.is_empty() {
            return Ok(Vec::new());
        }
        let library = load_library(&mut tx).await?;
        let cup = |b: &Batch| Ok(Cup { number: b.number, until: pot_life_until(b, library.adhesive(&b.adhesive)?)? });
        let mut cups = batches.iter().rev().map(cup).collect::<Result<Vec<_>, AppError>>()?;
        cups.retain(|cup| cup.until > self.now());
        Ok(cups)
    }

    /// Batches of the last days whose clocks still matter, the latest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn recent_batches(&self, days: i64) -> Result<Vec<BatchView>, AppError> {
        let since = self.now() - SignedDuration::from_hours(24 * days);
        let mut tx = self.store.read().await?;
        let batches = tx.batches_since(since).await?;
        if batches.is_empty() {
            return Ok(Vec::new());
        }
        let library = load_library(&mut tx).await?;
        let mut glued = tx.clubs_glued_since(since).await?;
        let mut views = Vec::with_capacity(batches.len());
        for batch in batches {
            let clubs = glued.remove(&batch.id).unwrap_or_default();
            views.push(batch_view(batch, &library, &clubs)?);
        }
        views.sort_by_key(|v| std::cmp::Reverse(v.batch.mixed_at));
        Ok(views)
    }
}

/// A batch with its clocks; its clubs by job number and number, in the order of jobs and trays.
fn batch_view(batch: Batch, library: &Library, glued: &[(i64, String)]) -> Result<BatchView, AppError> {
    let adhesive = library.adhesive(&batch.adhesive)?;
    let clubs = glued
        .chunk_by(|a, b| a.0 == b.0)
        .map(|of_job| {
            let numbers: Vec<&str> = of_job.iter().map(|(_, number)| number.as_str()).collect();
            format!("{}: {}", of_job[0].0, numbers.join(", "))
        })
        .collect();
    let at = |strength| ready_at(&batch, adhesive, strength).map(|t| t.unwrap_or(batch.mixed_at));
    Ok(BatchView {
        pot_life_until: pot_life_until(&batch, adhesive)?,
        handling_at: at(Strength::Handling)?,
        full_cure_at: at(Strength::Full)?,
        adhesive_name: adhesive.name.clone(),
        warnings: room_warnings(adhesive, batch.room_c),
        clubs,
        batch,
    })
}

fn adhesive_code<'a>(asked: Option<&'a str>, own: Option<&'a str>) -> Result<&'a str, AppError> {
    asked.filter(|c| !c.trim().is_empty()).or(own).ok_or_else(|| AppError::Invalid {
        what: "no adhesive is named, and the shop has none of its own".into(),
        next: "Name one, or set the shop's own under Shop".into(),
    })
}
