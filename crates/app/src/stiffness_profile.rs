//! The stiffness along a shaft of the stock: looked at, tried with readings, kept with the part.

use crate::look_up::LookUp;
use crate::need::need_name;
use crate::{App, AppError, load_library};
use bench::stiffness_profile::{ShaftStiffness, shaft_stiffness};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use store::Tx;
use trade::clamp::Clamp;
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::model::PartKind;
use trade::part::{CPM_MOST, Part, PartState};
use trade::stiffness_profile::{ShaftProfile, StiffnessFault, StiffnessReading};
use utoipa::ToSchema;
use words::{Words, text};

/// Readings of one shaft, to look at or to keep.
#[derive(Debug, Clone, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadShaft {
    /// All its readings; they take the place of those before. Empty: those before are taken back.
    pub readings: Vec<StiffnessReading>,
    /// Only worked out; nothing is kept.
    #[serde(default)]
    pub look: bool,
    /// A key of the sender's own: the same one again keeps nothing twice.
    #[serde(default)]
    pub request_key: Option<String>,
    /// Who.
    #[serde(default)]
    pub by: String,
}

/// The stiffness of a shaft of the stock, with who read it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct StiffnessOfShaft {
    /// What its readings and its model tell.
    #[serde(flatten)]
    pub stiffness: ShaftStiffness,
    /// Who read it; none where it was not read, and where nothing was kept.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub by: Option<String>,
    /// When it was kept.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub at: Option<Timestamp>,
    /// The shaft was cut since it was read: a forecast no longer rests on its readings.
    pub cut_since: bool,
}

impl App {
    /// The stiffness along a shaft, by its readings as far as it has any.
    ///
    /// # Errors
    /// No such part; a part that is no shaft; what the store says.
    pub async fn shaft_stiffness(&self, code: &str) -> Result<StiffnessOfShaft, AppError> {
        let mut tx = self.store.read().await?;
        let part = shaft_of(&mut tx, code).await?;
        let kept = part.profile.clone();
        let length_mm = part.length_mm.or(kept.as_ref().map(|profile| profile.length_mm));
        let part = Part { length_mm, ..part };
        let is_as_read = |profile: &ShaftProfile| {
            profile.is_of(part.length_mm.unwrap_or(profile.length_mm), part.tip_trimmed_mm.unwrap_or(0.0))
        };
        let cut_since = kept.as_ref().is_some_and(|profile| !is_as_read(profile));
        let readings = kept.as_ref().filter(|_| !cut_since).map_or(&[][..], |profile| &profile.readings);
        let stiffness = of_shaft(&mut tx, &part, readings).await?;
        let (by, at) = kept.map(|profile| (profile.by, profile.at)).unzip();
        Ok(StiffnessOfShaft { stiffness, by, at, cut_since })
    }

    /// Works out the stiffness along a shaft by these readings and, unless it is only looked at, keeps them with it. The plan of
    /// the club that holds it follows.
    ///
    /// # Errors
    /// No such part; a part that is no shaft, or one in a club; readings that no shaft gives; nobody named; what the store says.
    pub async fn read_shaft(&self, code: &str, read: &ReadShaft) -> Result<StiffnessOfShaft, AppError> {
        if read.look {
            let mut tx = self.store.read().await?;
            let part = shaft_of(&mut tx, code).await?;
            let stiffness = of_shaft(&mut tx, &part, &read.readings).await?;
            return Ok(StiffnessOfShaft { stiffness, by: None, at: None, cut_since: false });
        }
        need_name(&read.by)?;
        let mut tx = self.store.write().await?.signed(&read.by);
        let part = shaft_of(&mut tx, code).await?;
        if matches!(part.state, PartState::Used | PartState::Rejected | PartState::Ordered) {
            return Err(AppError::conflict(StiffnessFault::NotInHand { code: part.code.clone() }));
        }
        let stiffness = of_shaft(&mut tx, &part, &read.readings).await?;
        let kept = stiffness.kept(&read.by, self.now());
        let key = read.request_key.as_deref().filter(|key| !key.is_empty());
        if !tx.append_profile(&part.id, &kept, key).await? {
            // What was read in the shop's own clamp with its own weight is the frequency that shafts are sorted and planned by.
            let shop = crate::load_shop(&mut tx).await?;
            let usual = read.readings.iter().find(|read| is_usual(read, &shop.clamp)).and_then(|read| read.cpm);
            let usual = usual.filter(|_| part.tip_trimmed_mm.is_none());
            // Taken back, it goes with the readings that it came with.
            let came_with = part.profile.iter().flat_map(|profile| &profile.readings);
            let came_with = came_with.filter(|read| is_usual(read, &shop.clamp)).find_map(|read| read.cpm);
            let stays = part.cpm.filter(|_| part.cpm != came_with);
            let after = Part { cpm: usual.or(stays), ..part.clone() };
            // Even where no figure is another: who has read the stock before reads it again.
            tx.update_part(&after, self.now()).await?;
            if after.cpm != part.cpm {
                self.note_change(&mut tx, &part, &after, "").await?;
            }
            let now = shaft_of(&mut tx, code).await?;
            self.plan_follows(&mut tx, &now).await?;
            let note = serde_json::json!({ "code": part.code, "readings": read.readings.len() });
            self.log(&mut tx, part.job.as_ref(), part.club.as_ref(), EventKind::ShaftProfileKept, &read.by, note)
                .await?;
            tx.commit().await?;
            self.tell(None, "stock");
        }
        self.shaft_stiffness(code).await
    }
}

/// Whether a reading was taken as raw shafts are at the weigh-in.
fn is_usual(read: &StiffnessReading, clamp: &Clamp) -> bool {
    let weight = clamp.test_weight_g.is_some_and(|weight_g| (read.weight_g - weight_g).abs() < 0.5);
    let place = (read.weight_beyond_tip_mm - clamp.test_weight_centre_mm).abs() < 0.5;
    weight && place && (read.held_mm - clamp.held_mm).abs() < 0.5 && read.cpm.is_some_and(|cpm| cpm <= CPM_MOST)
}

async fn shaft_of(tx: &mut Tx, code: &str) -> Result<Part, AppError> {
    let part = tx.part_by_code(code.trim()).await?;
    let part = part.ok_or_else(|| AppError::not_found(Noun::Part, code, &LookUp::OnLabel))?;
    if part.kind != PartKind::Shaft {
        return Err(AppError::invalid(StiffnessFault::NotAShaft { code: part.code }));
    }
    Ok(part)
}

async fn of_shaft(tx: &mut Tx, part: &Part, readings: &[StiffnessReading]) -> Result<ShaftStiffness, AppError> {
    let library = load_library(tx).await?;
    let shop = crate::load_shop(tx).await?;
    let learned = crate::load_learned(tx).await?;
    Ok(shaft_stiffness(&shop, &learned, library.shaft(&part.model)?, part, readings)?)
}

/// What there is to say of a shaft's stiffness beside its line, sentence by sentence.
#[must_use]
pub fn said(w: &Words, found: &StiffnessOfShaft) -> Vec<String> {
    let stiffness = &found.stiffness;
    let percent = |value: f64| w.printed(&quantity::decimal(value, 1));
    let mut said = Vec::new();
    if found.cut_since {
        said.push(w.text("profile-cut-since"));
    }
    if stiffness.readings.is_empty() {
        said.push(text!(w, "profile-none", from = w.tell(&stiffness.rests_on)));
    } else {
        let (percent, model) = (percent(stiffness.band_percent), percent(stiffness.model_band_percent));
        said.push(text!(w, "profile-band", percent = percent, model = model));
        let figures = w.printed(&quantity::decimal(stiffness.told_figures, 1));
        said.push(text!(w, "profile-told", n = stiffness.readings.len() as i64, figures = figures));
        let (gives_mm, band_mm) = (stiffness.clamp_gives_mm, stiffness.clamp_gives_band_mm);
        said.push(text!(w, "profile-gives", gives_mm = gives_mm, band_mm = band_mm));
    }
    for (place, read) in (1_i64..).zip(&stiffness.readings).filter(|(_, read)| read.doubted) {
        let (value, unit) =
            read.reading.cpm.map_or((read.reading.deflection_mm.unwrap_or_default(), "mm"), |cpm| (cpm, "cpm"));
        let figure = |value: f64| format!("{} {unit}", w.printed(&quantity::decimal(value, 1)));
        let (read, fitted) = (figure(value), figure(read.fitted));
        said.push(text!(w, "profile-doubted", place = place, read = read, fitted = fitted));
    }
    let at = usize::try_from(stiffness.enough_readings).unwrap_or(1).max(1) - 1;
    said.push(text!(
        w,
        "profile-enough",
        n = stiffness.enough_readings,
        percent = percent(stiffness.band_after_percent.get(at).copied().unwrap_or_default()),
        from_mm = stiffness.held_from_mm,
        to_mm = stiffness.held_to_mm
    ));
    said
}
