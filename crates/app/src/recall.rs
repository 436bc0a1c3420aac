//! Recall: whom something reached; marks on clubs until somebody has looked.

use crate::look_up::LookUp;
use crate::need::need_name;
use crate::{App, AppError, load_shop, new_id};
use desk::recall::{RecallList, RecalledClub};
use fact::{Fact, Told};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, HashMap, HashSet};
use store::{ReachedClub, ShownMark, Tx};
use trade::club::{Club, ClubFigure};
use trade::club_name::ClubName;
use trade::error::{FindIt, Noun};
use trade::id::{ClubCode, ClubId, EventId};
use trade::model::Model;
use trade::reading::{Reading, What, standing};
use trade::recall::{ClubMark, MarkCleared, Reach, Recall, RecallOf, check_word};
use utoipa::ToSchema;

/// Marks that are to go onto the clubs of a recall.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct MarkClubs {
    /// What is called back.
    pub recall: Recall,
    /// What to look at, as the bench is to read it.
    #[schema(min_length = 3, max_length = 300, pattern = r"\S")]
    pub word: String,
    /// Keys of the clubs to mark, as the list gives them; left out: all that the recall finds.
    #[serde(default)]
    pub clubs: Option<Vec<String>>,
    /// Who marks them.
    pub by: String,
}

/// What somebody found at a marked club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClearMark {
    /// What was found or done.
    #[schema(min_length = 3, max_length = 300, pattern = r"\S")]
    pub word: String,
    /// Who looked.
    pub by: String,
}

/// A mark with the club that it is on.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct MarkView {
    /// The mark itself.
    #[serde(flatten)]
    pub mark: ClubMark,
    /// Number of the job in which it was reached; none where that was outside of a job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<i64>,
    /// Place of the club in the tray of that job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot: Option<i64>,
    /// Whether the club has left the shop.
    pub handed_over: bool,
    /// Its kind and number, as people call it.
    #[schema(value_type = Told)]
    pub name: ClubName,
    /// Who plays it.
    pub player: String,
}

impl From<ShownMark> for MarkView {
    fn from(shown: ShownMark) -> Self {
        let ShownMark { mark, job, player, name } = shown;
        let handed_over = mark.code.is_some();
        Self { mark, job: job.map(|j| j.0), slot: job.map(|j| j.1), handed_over, name, player }
    }
}

impl App {
    /// The clubs that a lot, a part, a model, a scale or a builder reached, with their players.
    ///
    /// # Errors
    /// Nothing or several things named, days that do not go with it; what the store says.
    pub async fn recall(&self, recall: &Recall) -> Result<RecallList, AppError> {
        let of = recall.of(self.today())?;
        let mut tx = self.store.read().await?;
        let of = known(&mut tx, of).await?;
        Ok(found(&mut tx, &of).await?.0)
    }

    /// Marks the clubs of a recall: what to look at stands at each until somebody has looked. A club that the same recall
    /// marked with the same word is not marked twice, so a recall that is asked again marks what came since. Returns the marks
    /// that were made.
    ///
    /// # Errors
    /// Nobody named; a word that says nothing; a club that the recall did not find; what the store says.
    pub async fn mark_clubs(&self, request: &MarkClubs) -> Result<Vec<MarkView>, AppError> {
        need_name(&request.by)?;
        check_word(&request.word)?;
        let of = request.recall.of(self.today())?;
        let mut tx = self.store.write().await?;
        let of = known(&mut tx, of).await?;
        let (list, ids) = found(&mut tx, &of).await?;
        let wanted: Option<HashSet<&str>> =
            request.clubs.as_ref().map(|keys| keys.iter().map(|key| key.trim()).collect());
        if wanted.as_ref().is_some_and(HashSet::is_empty) {
            return Err(AppError::invalid(RecallRefusal::NoClub));
        }
        for key in wanted.iter().flatten() {
            if !list.clubs.iter().any(|club| club.key.eq_ignore_ascii_case(key)) {
                return Err(AppError::conflict(RecallRefusal::NotInRecall { club: (*key).to_owned() }));
            }
        }
        let at = self.now();
        let (word, told) = (request.word.trim(), of.told());
        let mut made = Vec::new();
        for club in &list.clubs {
            let chosen = wanted.as_ref().is_none_or(|keys| keys.iter().any(|key| club.key.eq_ignore_ascii_case(key)));
            if !chosen || club.marks.iter().any(|mark| mark.word == word && mark.of == told) {
                continue;
            }
            let mark = ClubMark {
                id: EventId(new_id()),
                club: ids.get(&club.key).cloned(),
                code: club.code.clone(),
                word: word.to_owned(),
                of: told.clone(),
                by: request.by.trim().to_owned(),
                at,
                cleared: None,
            };
            tx.insert_mark(&mark).await?;
            made.push(MarkView {
                mark,
                job: club.job,
                slot: club.slot,
                handed_over: club.code.is_some(),
                name: club.name.clone(),
                player: club.player.clone(),
            });
        }
        tx.commit().await?;
        self.tell(None, "mark");
        Ok(made)
    }

    /// Clears a mark with what was found.
    ///
    /// # Errors
    /// Nobody named; a word that says nothing; no such mark; one that is cleared already; what the store says.
    pub async fn clear_mark(&self, id: &str, request: &ClearMark) -> Result<MarkView, AppError> {
        need_name(&request.by)?;
        if NOBODY.contains(&request.by.trim()) {
            return Err(AppError::invalid(RecallRefusal::Nameless));
        }
        check_word(&request.word)?;
        let id = EventId(id.trim().to_owned());
        let mut tx = self.store.write().await?;
        let shown = tx.mark(&id).await?;
        let shown = shown.ok_or_else(|| AppError::not_found(Noun::Mark, id.0.clone(), &LookUp::Today))?;
        if let Some(before) = &shown.mark.cleared {
            let (word, by) = (before.word.clone(), before.by.clone());
            return Err(AppError::conflict(RecallRefusal::Cleared { word, by, at: before.at }));
        }
        let cleared =
            MarkCleared { word: request.word.trim().to_owned(), by: request.by.trim().to_owned(), at: self.now() };
        tx.clear_mark(&id, &cleared).await?;
        tx.commit().await?;
        self.tell(None, "mark");
        let mut view = MarkView::from(shown);
        view.mark.cleared = Some(cleared);
        Ok(view)
    }

    /// The marks that stand, the oldest first; with `cleared` all that ever were.
    ///
    /// # Errors
    /// What the store says.
    pub async fn marks(&self, cleared: bool) -> Result<Vec<MarkView>, AppError> {
        let mut tx = self.store.read().await?;
        Ok(tx.marks(cleared).await?.into_iter().map(MarkView::from).collect())
    }
}

/// What stands for a person where nobody said who is at the tablet or at the keys: no name for what others rely on.
const NOBODY: [&str; 2] = ["bench", "command line"];

/// The same with the code or key as the shop has it. A part or model that is not there, or a scale that was never read on, is a
/// slip of the hand, and must not pass for a recall that reached nobody.
async fn known(tx: &mut Tx, of: RecallOf) -> Result<RecallOf, AppError> {
    Ok(match of {
        RecallOf::Part { part } => {
            let found = tx.part_by_code(&part).await?;
            let found = found.ok_or_else(|| AppError::not_found(Noun::Part, part, &LookUp::Stock))?;
            RecallOf::Part { part: found.code }
        }
        RecallOf::Model { model } => {
            let of_name = |one: &&Model| one.name().to_lowercase() == model.to_lowercase();
            let found = match tx.model(&model).await? {
                Some(found) => Some(found.code().to_owned()),
                None => tx.models(None).await?.iter().find(of_name).map(|one| one.code().to_owned()),
            };
            RecallOf::Model { model: found.ok_or_else(|| AppError::not_found(Noun::Model, model, &LookUp::Models))? }
        }
        RecallOf::Scale { scale } => RecallOf::Scale { scale: scale_key(tx, scale).await? },
        RecallOf::ScaleDays { scale, from_on, to_on } => {
            RecallOf::ScaleDays { scale: scale_key(tx, scale).await?, from_on, to_on }
        }
        other => other,
    })
}

async fn scale_key(tx: &mut Tx, named: String) -> Result<String, AppError> {
    let shop = load_shop(tx).await?;
    let wanted = named.to_lowercase();
    let of_shop = shop.scales.iter().find(|s| s.key.to_lowercase() == wanted || s.name.to_lowercase() == wanted);
    match of_shop {
        Some(scale) => Ok(scale.key.clone()),
        None if tx.was_read_on(&named).await? => Ok(named),
        None => {
            let known = shop.scales.iter().map(|scale| scale.name.clone()).collect();
            Err(AppError::not_found(Noun::Scale, named, &FindIt::Known { known }))
        }
    }
}

/// The list of a recall, and which club of a job each key stands for.
async fn found(tx: &mut Tx, of: &RecallOf) -> Result<(RecallList, HashMap<String, ClubId>), AppError> {
    let shop = load_shop(tx).await?;
    let tape = shop.tape.as_deref();
    let (all_since, all_until) = (Timestamp::UNIX_EPOCH, Timestamp::MAX);
    let mut scale_read = None;
    let reached = match of {
        RecallOf::Lot { lot } => tx.clubs_of_lot(lot, tape).await?,
        RecallOf::Part { part } => tx.clubs_of_part(part, tape).await?,
        RecallOf::Model { model } => tx.clubs_of_model(model, tape).await?,
        RecallOf::Scale { scale } => {
            scale_read = Some((scale.as_str(), all_since, all_until));
            tx.clubs_of_scale(scale, all_since, all_until).await?
        }
        RecallOf::ScaleDays { scale, from_on, to_on } => {
            let (since, until) = (morning(*from_on), evening(*to_on));
            scale_read = Some((scale.as_str(), since, until));
            tx.clubs_of_scale(scale, since, until).await?
        }
        RecallOf::Builder { builder } => tx.clubs_of_builder(builder, all_since, all_until).await?,
        RecallOf::BuilderDays { builder, from_on, to_on } => {
            tx.clubs_of_builder(builder, morning(*from_on), evening(*to_on)).await?
        }
    };
    let mut marks: HashMap<String, Vec<ClubMark>> = HashMap::new();
    for shown in tx.marks(false).await? {
        for key in shown.mark.code.iter().map(|c| c.0.clone()).chain(shown.mark.club.iter().map(|c| c.0.clone())) {
            marks.entry(key).or_default().push(shown.mark.clone());
        }
    }
    let mut figures = Figures::default();
    let mut at_key: HashMap<String, usize> = HashMap::new();
    let mut clubs: Vec<RecalledClub> = Vec::new();
    let mut ids = HashMap::new();
    for one in reached {
        let owned = figures.owned(tx, one.code.as_ref()).await?;
        let key = match (&one.code, &one.job) {
            (Some(code), _) => code.0.clone(),
            (None, Some((.., card))) => card.clone(),
            (None, None) => continue,
        };
        let reach = still_in(one.reach.clone(), owned.as_ref());
        if let Some(&at) = at_key.get(&key) {
            if !clubs[at].reaches.contains(&reach) {
                clubs[at].reaches.push(reach);
            }
            continue;
        }
        let read = figures.read(tx, &one, owned.as_ref(), scale_read).await?;
        let standing = one.code.iter().map(|c| &c.0).chain(one.club.iter().map(|c| &c.0));
        let mut own: Vec<ClubMark> = standing.filter_map(|id| marks.get(id)).flatten().cloned().collect();
        own.sort_by(|a, b| a.id.cmp(&b.id));
        own.dedup_by(|a, b| a.id == b.id);
        if let Some(id) = &one.club {
            ids.insert(key.clone(), id.clone());
        }
        at_key.insert(key.clone(), clubs.len());
        clubs.push(RecalledClub {
            key,
            job: one.job.as_ref().map(|j| j.0),
            slot: one.job.as_ref().map(|j| j.1),
            state: one.state,
            name: owned.as_ref().map_or(one.name, Club::name),
            player: owned.as_ref().map_or(one.player, |club| club.player.clone()),
            customer: owned.as_ref().map_or(one.customer, |club| club.owner),
            code: one.code,
            reaches: vec![reach],
            read,
            marks: own,
        });
    }
    let mut customers = BTreeMap::new();
    for number in clubs.iter().filter_map(|club| club.customer).collect::<HashSet<_>>() {
        if let Some(row) = tx.customer(number).await?.filter(|row| row.deleted_at.is_none()) {
            customers.insert(number, row.customer);
        }
    }
    Ok((RecallList::new(of.told(), clubs, &customers), ids))
}

/// A part that later work took out of a club was in it.
fn still_in(reach: Reach, owned: Option<&Club>) -> Reach {
    match (reach, owned) {
        (Reach::Part { kind, part }, Some(club)) if !club.made.pieces.parts.iter().any(|p| p.code == part) => {
            Reach::HadPart { kind, part }
        }
        (reach, _) => reach,
    }
}

/// When a day of the shop begins.
pub(crate) fn morning(day: Date) -> Timestamp {
    day.to_zoned_datetime(TimeZone::system()).map_or(Timestamp::UNIX_EPOCH, |zoned| zoned.timestamp())
}

/// When it is over.
pub(crate) fn evening(day: Date) -> Timestamp {
    day.tomorrow().map_or(Timestamp::MAX, morning)
}

/// What was read of clubs, each job and each club looked up once.
#[derive(Default)]
struct Figures {
    owned: HashMap<ClubCode, Option<Club>>,
    jobs: HashMap<i64, Vec<Reading>>,
}

impl Figures {
    async fn owned(&mut self, tx: &mut Tx, code: Option<&ClubCode>) -> Result<Option<Club>, AppError> {
        let Some(code) = code else { return Ok(None) };
        if let Some(known) = self.owned.get(code) {
            return Ok(known.clone());
        }
        let club = tx.owned_club(code.as_str()).await?;
        self.owned.insert(code.clone(), club.clone());
        Ok(club)
    }

    /// The last figure of each sort; on a scale and in a time only, where that is asked.
    async fn read(
        &mut self,
        tx: &mut Tx,
        one: &ReachedClub,
        owned: Option<&Club>,
        on: Option<(&str, Timestamp, Timestamp)>,
    ) -> Result<Vec<ClubFigure>, AppError> {
        if let (Some(club), None) = (owned, on) {
            return Ok(club.figures.clone());
        }
        let (Some(id), Some((number, ..))) = (&one.club, &one.job) else {
            let figures = owned.map(|club| club.figures.clone()).unwrap_or_default();
            let wanted = |f: &ClubFigure| on.is_none_or(|(scale, ..)| f.scale.as_deref() == Some(scale));
            return Ok(figures.into_iter().filter(wanted).collect());
        };
        if !self.jobs.contains_key(number) {
            let readings = match tx.job_id(*number).await? {
                Some(job) => tx.readings(&job).await?,
                None => Vec::new(),
            };
            self.jobs.insert(*number, readings);
        }
        let readings = self.jobs.get(number).map_or(&[][..], Vec::as_slice);
        let mut last: BTreeMap<What, ClubFigure> = BTreeMap::new();
        for reading in standing(readings).into_iter().filter(|r| r.club == *id && r.what != What::Done) {
            let wanted = on.is_none_or(|(scale, since, until)| {
                reading.scale.as_deref() == Some(scale) && reading.at >= since && reading.at < until
            });
            if wanted {
                let figure = ClubFigure {
                    what: reading.what,
                    value: reading.value,
                    unit: reading.unit,
                    scale: reading.scale.clone(),
                    at: reading.at,
                };
                last.insert(reading.what, figure);
            }
        }
        Ok(last.into_values().collect())
    }
}

fact::facts! {
    /// What is refused of marks.
    pub(crate) enum RecallRefusal: "recall_refusal" {
        NotInRecall { club: String },
        NoClub,
        Nameless,
        Cleared { word: String, by: String, at: Timestamp },
    }
}
