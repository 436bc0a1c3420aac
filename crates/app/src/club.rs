//! Clubs that live on: noted, found, measured, changed; what a finished job makes of them.

use crate::job::JobFile;
use crate::known_customer::customer_row;
use crate::look_up::LookUp;
use crate::need::need_name;
use crate::{App, AppError, load_library};
use bench::belief::Believed;
use desk::match_set::MatchedClub;
use fact::{Fact, Told};
use serde::{Deserialize, Serialize};
use store::{ClubFilter, Tx};
use trade::arrival::Arrival;
use trade::club::{Club, ClubChange, ClubDeed, ClubEvent, ClubFigure, Made, as_it_came};
use trade::error::Noun;
use trade::id::{ClubCode, ClubId};
use trade::job::{ClubWork, JobClub};
use trade::kind::{ClubKind, Hand, Role};
use trade::model::PartKind;
use trade::model::as_it_came::{HeadMaterial, SHAFT_BALANCE_SHARE};
use trade::plan::ClubPlan;
use trade::reading::{Reading, What};
use trade::recall::ClubMark;
use utoipa::ToSchema;

/// A club from elsewhere, to be noted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewClub {
    /// What people call it, where it has a name of its own.
    #[serde(default)]
    pub label: String,
    /// Who plays it.
    #[schema(min_length = 1, pattern = r"\S")]
    pub player: String,
    /// Running number of the customer whose it is.
    #[serde(default)]
    pub owner: Option<i64>,
    /// Whether it is for a right-handed or a left-handed player.
    pub hand: Hand,
    /// What sort of club.
    pub club_kind: ClubKind,
    /// Its number or letter: `7`, `P`.
    #[schema(min_length = 1, max_length = 12, pattern = r"\S")]
    pub number: String,
    /// What its head is made of, as far as known: it limits bending.
    #[serde(default = "unknown")]
    pub head_material: HeadMaterial,
    /// What was read of it on arrival.
    #[serde(default)]
    pub arrival: Arrival,
    /// Anything else that the bench should know.
    #[serde(default)]
    pub note: String,
    /// That the figures are right, though hardly any club of its kind has such.
    #[serde(default)]
    pub sure: bool,
    /// Who notes it.
    pub by: String,
}

/// Letters of a club's number at most.
const LONGEST_NUMBER: usize = 12;

fn unknown() -> HeadMaterial {
    HeadMaterial::Unknown
}

/// What was read of a club outside of a job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct MeasureClub {
    /// The figures.
    pub arrival: Arrival,
    /// What is to be said beside them.
    #[serde(default)]
    pub note: String,
    /// That the figures are right, though hardly any club of its kind has such.
    #[serde(default)]
    pub sure: bool,
    /// Who.
    pub by: String,
    /// Version of the club that was looked at.
    pub version: i64,
}

/// What is changed of a club by hand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeClub {
    /// Its new label; left out: as it is.
    #[serde(default)]
    pub label: Option<String>,
    /// Who plays it now; left out: as it is.
    #[serde(default)]
    pub player: Option<String>,
    /// Running number of the customer whose it is now; left out: as it is.
    #[serde(default)]
    pub owner: Option<i64>,
    /// Whether it is given up: lost, broken, sold.
    #[serde(default)]
    pub retired: bool,
    /// Why, or what is to be said beside it.
    #[serde(default)]
    pub note: String,
    /// Who.
    pub by: String,
    /// Version of the club that was looked at.
    pub version: i64,
}

/// A club in a list.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ClubLine {
    /// What is kept of it: whose it is, what it is made of, what was read.
    #[serde(flatten)]
    pub club: Club,
    /// Number of the job in which it is being worked on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<i64>,
}

/// A club with its life.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ClubView {
    /// What is kept of it: whose it is, what it is made of, what was read.
    pub club: Club,
    /// Number of the job in which it is being worked on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<i64>,
    /// Its life, the first entry first.
    pub life: Vec<ClubEvent>,
    /// Marks of recalls on it, the oldest first: those that stand, and those that were cleared with what was found.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub marks: Vec<ClubMark>,
}

impl App {
    /// Clubs that are found by words, of all or of one customer, the latest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn clubs(&self, search: &str, owner: Option<i64>, limit: i64) -> Result<Vec<ClubLine>, AppError> {
        let mut tx = self.store.read().await?;
        let filter = ClubFilter { search: search.to_owned(), owner };
        let clubs = tx.owned_clubs(&filter, limit).await?;
        let busy = tx.clubs_in_open_jobs().await?;
        Ok(clubs.into_iter().map(|club| ClubLine { job: busy.get(&club.code).copied(), club }).collect())
    }

    /// A club with its life.
    ///
    /// # Errors
    /// No such club; what the store says.
    pub async fn club(&self, code: &str) -> Result<ClubView, AppError> {
        let mut tx = self.store.read().await?;
        view(&mut tx, code).await
    }

    /// What a club with a number must be to match clubs that were measured.
    ///
    /// # Errors
    /// No such club; fewer than three clubs, or of several sorts; nothing read of enough of them; what the store says.
    pub async fn match_to_set(&self, codes: &[String], number: &str) -> Result<MatchedClub, AppError> {
        let mut tx = self.store.read().await?;
        let mut clubs: Vec<Club> = Vec::with_capacity(codes.len());
        for code in codes {
            let club = owned(&mut tx, code).await?;
            if clubs.iter().all(|other| other.code != club.code) {
                clubs.push(club);
            }
        }
        Ok(desk::match_set::match_set(&clubs, number)?)
    }

    /// Notes a club from elsewhere with what was read of it.
    ///
    /// # Errors
    /// Nobody named; no number; figures that no club has; what the store says.
    pub async fn add_club(&self, new: &NewClub) -> Result<ClubView, AppError> {
        need_name(&new.by)?;
        if new.player.trim().is_empty() || new.number.trim().is_empty() {
            return Err(AppError::invalid(OwnedClubFault::NoPlayer));
        }
        if new.number.chars().count() > LONGEST_NUMBER {
            return Err(AppError::invalid(OwnedClubFault::LongNumber { most: LONGEST_NUMBER }));
        }
        new.arrival.check()?;
        need_sure(&new.arrival, new.sure, new.club_kind, new.number.trim())?;
        let mut tx = self.store.write().await?;
        if let Some(owner) = new.owner {
            customer_row(&mut tx, owner).await?;
        }
        let number = tx.next_club_number().await?;
        let at = self.now();
        let mut club = Club {
            code: ClubCode(format!("C{number}")),
            label: new.label.trim().to_owned(),
            player: new.player.trim().to_owned(),
            owner: new.owner,
            hand: new.hand,
            made: as_it_came(new.club_kind, new.number.trim(), new.head_material, &new.arrival),
            grip_size_mm: new.arrival.grip_size_mm,
            figures: Vec::new(),
            version: 1,
        };
        let figures = self.figures(&mut tx, &new.arrival).await?;
        club.note(figures.clone());
        tx.insert_club(&club, number, at).await?;
        let event = self.club_event(&club, ClubDeed::Arrived, &new.by);
        tx.append_club_event(&ClubEvent { figures, note: new.note.trim().to_owned(), ..event }).await?;
        let view = view(&mut tx, club.code.as_str()).await?;
        tx.commit().await?;
        Ok(view)
    }

    /// Notes what was read of a club outside of a job.
    ///
    /// # Errors
    /// No such club; one in a job; nothing read; figures that no club has; another version; what the store says.
    pub async fn measure_club(&self, code: &str, read: &MeasureClub) -> Result<ClubView, AppError> {
        need_name(&read.by)?;
        read.arrival.check()?;
        let mut tx = self.store.write().await?;
        let mut club = self.free_club(&mut tx, code).await?;
        need_club_version(&club, read.version)?;
        need_sure(&read.arrival, read.sure, club.made.row.club_kind, &club.made.row.number)?;
        let figures = self.figures(&mut tx, &read.arrival).await?;
        let known = [read.arrival.head_mass_g, read.arrival.shaft_mass_g, read.arrival.grip_mass_g];
        if let Some(size_mm) = read.arrival.grip_size_mm {
            club.grip_size_mm = Some(size_mm);
        }
        if figures.is_empty() && read.arrival.grip_size_mm.is_none() && known.iter().all(Option::is_none) {
            return Err(AppError::invalid(OwnedClubFault::NothingRead));
        }
        club.note(figures.clone());
        let library = load_library(&mut tx).await?;
        take_measures(&library, &mut club, &read.arrival)?;
        tx.save_owned_club(&club, self.now()).await?;
        let event = self.club_event(&club, ClubDeed::Measured, &read.by);
        tx.append_club_event(&ClubEvent { figures, note: read.note.trim().to_owned(), ..event }).await?;
        let view = view(&mut tx, code).await?;
        tx.commit().await?;
        Ok(view)
    }

    /// Changes what a club is called and whose it is, or gives it up.
    ///
    /// # Errors
    /// No such club; one in a job that is to be given up; another version; what the store says.
    pub async fn change_club(&self, code: &str, change: &ChangeClub) -> Result<ClubView, AppError> {
        need_name(&change.by)?;
        let mut tx = self.store.write().await?;
        let mut club = match change.retired {
            true => self.free_club(&mut tx, code).await?,
            false => owned(&mut tx, code).await?,
        };
        need_club_version(&club, change.version)?;
        if let Some(label) = &change.label {
            label.trim().clone_into(&mut club.label);
        }
        if let Some(player) = change.player.as_ref().filter(|player| !player.trim().is_empty()) {
            player.trim().clone_into(&mut club.player);
        }
        if let Some(owner) = change.owner {
            customer_row(&mut tx, owner).await?;
            club.owner = Some(owner);
        }
        tx.save_owned_club(&club, self.now()).await?;
        let deed = if change.retired { ClubDeed::Retired } else { ClubDeed::Changed };
        let event = self.club_event(&club, deed, &change.by);
        tx.append_club_event(&ClubEvent { note: change.note.trim().to_owned(), ..event }).await?;
        let view = view(&mut tx, code).await?;
        tx.commit().await?;
        Ok(view)
    }

    /// A club that is in no open job.
    pub(crate) async fn free_club(&self, tx: &mut Tx, code: &str) -> Result<Club, AppError> {
        let club = owned(tx, code).await?;
        match tx.clubs_in_open_jobs().await?.get(&club.code) {
            None => Ok(club),
            Some(&job) => {
                let fault = desk::club_work::ClubWorkFault::InJob { club: club.code.0, job };
                Err(AppError::conflict(fault))
            }
        }
    }

    fn club_event(&self, club: &Club, deed: ClubDeed, by: &str) -> ClubEvent {
        ClubEvent {
            id: crate::new_id().as_str().into(),
            club: club.code.clone(),
            deed,
            job: None,
            slot: None,
            job_kind: None,
            changes: Vec::new(),
            figures: Vec::new(),
            note: String::new(),
            by: by.to_owned(),
            at: self.now(),
        }
    }

    async fn figures(&self, tx: &mut Tx, arrival: &Arrival) -> Result<Vec<ClubFigure>, AppError> {
        let (shop, at) = (crate::load_shop(tx).await?, self.now());
        let scale = |what: What| match what {
            What::SwingWeight => Some(shop.balance_scale.key.clone()),
            What::TotalMass => Some(shop.mass_scale.key.clone()),
            _ => None,
        };
        let arrival = arrival.clone().with_inertia(&shop.pendulum)?;
        let figure = |(what, value): (What, f64)| ClubFigure { what, value, unit: what.unit(), scale: scale(what), at };
        Ok(arrival.read().into_iter().map(figure).collect())
    }

    /// What becomes of a club that is handed over: it lives on with what it is made of now and with what was read of it.
    pub(crate) async fn lives_on(
        &self,
        tx: &mut Tx,
        file: &JobFile,
        believed: &Believed<'_>,
        club: &ClubId,
        by: &str,
    ) -> Result<(), AppError> {
        let Some((found, plan)) = file.job.club(club).and_then(|club| Some((club, club.plan.as_ref()?))) else {
            return Ok(());
        };
        let figures = read_at_the_end(believed, found)?;
        let pieces = ClubPlan { expected: Vec::new(), reasons: Vec::new(), ..plan.clone() };
        let made = Made { row: found.target.clone(), pieces };
        let of_job = |event: ClubEvent, kind: &str, changes: Vec<Told>| ClubEvent {
            job: Some(file.job.number),
            slot: Some(found.slot),
            job_kind: Some(kind.to_owned()),
            changes,
            figures: figures.clone(),
            ..event
        };
        let known = tx.made_of(club).await?;
        let Some(code) = known else {
            let number = tx.next_club_number().await?;
            let new = Club {
                code: ClubCode(format!("C{number}")),
                label: String::new(),
                player: file.job.sheet.player.clone(),
                owner: file.job.sheet.customer,
                hand: file.job.sheet.hand,
                made,
                grip_size_mm: None,
                figures: figures.clone(),
                version: 1,
            };
            tx.insert_club(&new, number, self.now()).await?;
            tx.note_made(club, &new.code).await?;
            let event = of_job(self.club_event(&new, ClubDeed::Built, by), trade::step::NEW_CLUB, Vec::new());
            return Ok(tx.append_club_event(&event).await?);
        };
        let mut old = owned(tx, code.as_str()).await?;
        let changes = found.work.as_ref().map(|work| changes(believed, work, found)).transpose()?.unwrap_or_default();
        if made.pieces != old.made.pieces {
            // What was read before the work says nothing of the club as it is now.
            old.figures.retain(|figure| {
                let whole = [What::SwingWeight, What::TotalMass, What::Cpm, What::SwingInertia];
                !whole.contains(&figure.what)
            });
        }
        if found.work.as_ref().is_some_and(|work| !work.keeps(plan, PartKind::Grip)) {
            old.grip_size_mm = None;
        }
        old.made = made;
        old.note(figures.clone());
        tx.save_owned_club(&old, self.now()).await?;
        let told = tx.club_events(&old.code).await?;
        if told.iter().any(|event| event.job == Some(file.job.number)) {
            return Ok(());
        }
        let kind = found.work.as_ref().map_or(trade::step::NEW_CLUB, |work| work.kind.as_str());
        Ok(tx.append_club_event(&of_job(self.club_event(&old, ClubDeed::Worked, by), kind, changes)).await?)
    }
}

pub(crate) async fn owned(tx: &mut Tx, code: &str) -> Result<Club, AppError> {
    tx.owned_club(code).await?.ok_or_else(|| AppError::not_found(Noun::Club, code, &LookUp::Clubs))
}

async fn view(tx: &mut Tx, code: &str) -> Result<ClubView, AppError> {
    let club = owned(tx, code).await?;
    let job = tx.clubs_in_open_jobs().await?.get(&club.code).copied();
    let marks = tx.marks_of_club(&club.code).await?.into_iter().map(|shown| shown.mark).collect();
    Ok(ClubView { life: tx.club_events(&club.code).await?, job, marks, club })
}

fn need_club_version(club: &Club, version: i64) -> Result<(), AppError> {
    match club.version == version {
        true => Ok(()),
        false => Err(AppError::conflict(OwnedClubFault::Stale { club: club.code.0.clone() })),
    }
}

/// What a measurement says of the pieces of a club from elsewhere: its shaft by its length, masses that were weighed.
fn take_measures(library: &trade::model::Library, club: &mut Club, read: &Arrival) -> Result<(), AppError> {
    if club.built_here() {
        return Ok(());
    }
    let pieces = &mut club.made.pieces;
    for (kind, mass_g) in
        [(PartKind::Head, read.head_mass_g), (PartKind::Shaft, read.shaft_mass_g), (PartKind::Grip, read.grip_mass_g)]
    {
        let (Some(mass_g), Some(part)) = (mass_g, pieces.parts.iter_mut().find(|part| part.kind == kind)) else {
            continue;
        };
        (part.mass_g, part.weighed) = (mass_g, true);
        if kind == PartKind::Shaft {
            pieces.cut_shaft_mass_g = mass_g;
        }
    }
    if let Some(length_mm) = read.length_mm {
        let cap_mm = library.grip(&club.made.row.grip_model)?.cap_mm;
        pieces.cut_shaft_mm = length_mm - cap_mm - pieces.tip_to_ground_mm;
        pieces.cut_shaft_balance_point_mm = pieces.cut_shaft_mm * SHAFT_BALANCE_SHARE;
        club.made.row.length_mm = length_mm;
    }
    Ok(())
}

/// The last readings of a club as it leaves, one of each sort; doubted ones are left out.
fn read_at_the_end(believed: &Believed<'_>, club: &JobClub) -> Result<Vec<ClubFigure>, AppError> {
    let whole = |r: &Reading| r.on.contains(&Role::Grip) && !r.on.contains(&Role::Solvent);
    let kinds = [What::SwingWeight, What::TotalMass, What::FinishedLength, What::Loft, What::Lie, What::Cpm];
    let standing = believed.standing();
    let last = |what: What| {
        let needs_whole = matches!(what, What::SwingWeight | What::TotalMass | What::SwingPeriod | What::SwingInertia);
        let fits = |r: &&&Reading| {
            r.club == club.id && r.what == what && (!needs_whole || whole(r)) && !believed.is_doubted(&r.id)
        };
        standing.iter().rev().find(fits).copied()
    };
    let figure = |reading: &Reading| ClubFigure {
        what: reading.what,
        value: reading.value,
        unit: reading.unit,
        scale: reading.scale.clone(),
        at: reading.at,
    };
    let mut figures: Vec<ClubFigure> = kinds.into_iter().filter_map(last).map(figure).collect();
    // A timed swing tells the inertia with all else that is known of the club.
    let timed = last(What::SwingPeriod).or_else(|| last(What::SwingInertia));
    if let (Some(reading), Some(inertia)) = (timed, believed.swing_inertia(&club.id)?) {
        let what = What::SwingInertia;
        let value = inertia.value_kg_cm2;
        figures.push(ClubFigure { what, value, unit: what.unit(), scale: None, at: reading.at });
    }
    Ok(figures)
}

/// What the work changed.
fn changes(believed: &Believed<'_>, work: &ClubWork, club: &JobClub) -> Result<Vec<Told>, AppError> {
    let mut found = Vec::new();
    let Some(plan) = &club.plan else { return Ok(found) };
    let came = &work.came.pieces;
    let weighed = |role| believed.piece_as_it_came(&club.id, role);
    if !work.keeps(plan, PartKind::Grip) {
        let from_g = weighed(Role::Grip)?.unwrap_or_else(|| came.mass_g(Role::Grip));
        found.push(ClubChange::Grip { from_g, to_g: plan.mass_g(Role::Grip) }.told());
    }
    if !work.keeps(plan, PartKind::Shaft) {
        let from_g = weighed(Role::Shaft)?.unwrap_or(came.cut_shaft_mass_g);
        found.push(ClubChange::Shaft { from_g, to_g: plan.cut_shaft_mass_g }.told());
    }
    let by_mm = plan.cut_shaft_mm - came.cut_shaft_mm;
    if by_mm.abs() > 0.05 {
        let from_mm = work.came.row.length_mm;
        found.push(ClubChange::Length { from_mm, to_mm: from_mm + by_mm }.told());
    }
    for extra in plan.extras.iter().skip(came.extras.len()) {
        found.push(ClubChange::Added { action: extra.action, mass_g: extra.mass_g }.told());
    }
    for what in [What::Loft, What::Lie] {
        let of = |r: &&&Reading| r.club == club.id && r.what == what;
        let job = believed.assembly.job;
        let all = believed.standing_all();
        let first = all.iter().find(|r| of(r) && job.is_of_club_as_it_came(r));
        let last = all.iter().rev().find(|r| of(r) && !job.is_of_club_as_it_came(r));
        let (Some(first), Some(last)) = (first, last) else { continue };
        let (from_deg, to_deg) = (first.value, last.value);
        found.push(match what {
            What::Loft => ClubChange::Loft { from_deg, to_deg }.told(),
            _ => ClubChange::Lie { from_deg, to_deg }.told(),
        });
    }
    Ok(found)
}

/// Refuses figures that hardly any such club has, until somebody says that they are right: a slip here would be believed in
/// every later job.
fn need_sure(arrival: &Arrival, sure: bool, kind: ClubKind, number: &str) -> Result<(), AppError> {
    let odd: Vec<Told> = arrival.odd(kind, number).iter().map(Fact::told).collect();
    if sure || odd.is_empty() { Ok(()) } else { Err(AppError::conflict(OwnedClubFault::Odd { odd })) }
}

fact::facts! {
    /// What is refused of a club that lives on.
    pub(crate) enum OwnedClubFault: "owned_club_fault" {
        NoPlayer,
        LongNumber { most: usize },
        NothingRead,
        Odd { odd: Vec<Told> },
        Stale { club: String },
    }
}
