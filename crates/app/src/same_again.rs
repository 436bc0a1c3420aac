//! The same again: a new sheet from clubs as they were built.

use crate::look_up::LookUp;
use crate::sheet::SheetView;
use crate::{App, AppError, load_library};
use desk::match_set::{MatchedClub, match_set};
use desk::same_again::{AgainClub, again};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use store::{ClubFilter, Tx};
use trade::club::{Club, ClubDeed};
use trade::error::Noun;
use trade::sheet::{SetRule, Sheet};
use utoipa::ToSchema;

/// Clubs that a customer or a set may have at most.
const MOST: i64 = 100;
/// The fewest other clubs that a line goes through.
const OTHERS: usize = 3;

/// Which clubs are to be built again: named one by one, or all of a job or of a customer.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Again {
    /// Codes of the clubs.
    #[serde(default)]
    pub clubs: Vec<String>,
    /// Running number of a job that was handed over: all its clubs.
    #[serde(default)]
    pub job: Option<i64>,
    /// Running number of a customer: all clubs of theirs that were not given up.
    #[serde(default)]
    pub customer: Option<i64>,
    /// One club to match the others of its set as they are today: its figures are those of the line through them, not its own.
    #[serde(default)]
    pub as_others: bool,
}

/// Clubs that are to be built again, as a sheet that is to be saved.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct SameAgain {
    /// Who plays them.
    pub player: String,
    /// Running number of the customer whose they are; none where no customer is noted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub customer: Option<i64>,
    /// Each club with its new row, and what differs.
    pub clubs: Vec<AgainClub>,
    /// Where one club is built again: what the line through the others of its set gives for it today; none where fewer than three
    /// others of its sort were read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub others: Option<MatchedClub>,
}

/// A sheet that is to be saved of clubs to be built again.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetAgain {
    /// Which clubs.
    pub again: Again,
    /// When the new ones are due.
    #[schema(value_type = String, format = Date)]
    pub due: Date,
    /// Anything else that the bench should know.
    #[serde(default)]
    pub note: String,
}

impl App {
    /// The row that each club would have on a new sheet, and how the parts in stock differ from those it was built with.
    ///
    /// # Errors
    /// No club named, none of that code, job or customer; a job that was not handed over; clubs of several players; what the
    /// store says.
    pub async fn same_again(&self, ask: &Again) -> Result<SameAgain, AppError> {
        let mut tx = self.store.read().await?;
        let (found, _) = again_of(&mut tx, ask).await?;
        Ok(found)
    }

    /// Saves a new sheet of clubs that are to be built again. It is checked and approved as any other.
    ///
    /// # Errors
    /// As [`same_again`](Self::same_again).
    pub async fn sheet_again(&self, request: &SheetAgain) -> Result<SheetView, AppError> {
        let mut tx = self.store.read().await?;
        let (found, first) = again_of(&mut tx, &request.again).await?;
        drop(tx);
        self.save_sheet(&Sheet {
            player: found.player,
            customer: found.customer,
            due: request.due,
            hand: first.hand,
            note: request.note.trim().to_owned(),
            rule: SetRule::AsWritten,
            written: String::new(),
            reference: None,
            quote: Vec::new(),
            clubs: found.clubs.into_iter().map(|club| club.row).collect(),
        })
        .await
    }
}

async fn again_of(tx: &mut Tx, ask: &Again) -> Result<(SameAgain, Club), AppError> {
    let clubs = wanted(tx, ask).await?;
    let Some(first) = clubs.first().cloned() else { return Err(AppError::invalid(AgainFault::NoClub)) };
    if let Some(other) = clubs.iter().find(|club| club.owner != first.owner || club.player != first.player) {
        let (club, other) = (first.code.0.clone(), other.code.0.clone());
        return Err(AppError::invalid(AgainFault::SeveralPlayers { club, other }));
    }
    let others = match clubs.as_slice() {
        [only] => others(tx, only).await?,
        _ => None,
    };
    if ask.as_others && others.is_none() {
        return Err(AppError::invalid(AgainFault::NoOthers { fewest: OTHERS }));
    }
    let library = load_library(tx).await?;
    let free = App::free_parts_for(tx, first.owner).await?;
    let line = others.as_ref().filter(|_| ask.as_others);
    let rows = clubs.iter().map(|club| again(club, line, &library, &free, first.owner)).collect();
    let found = SameAgain { player: first.player.clone(), customer: first.owner, clubs: rows, others };
    Ok((found, first))
}

async fn wanted(tx: &mut Tx, ask: &Again) -> Result<Vec<Club>, AppError> {
    let mut clubs: Vec<Club> = Vec::new();
    let mut codes: Vec<String> = ask.clubs.iter().map(|code| code.trim().to_owned()).collect();
    if let Some(number) = ask.job {
        let job = tx.job_by_number(number).await?;
        let job = job.ok_or_else(|| AppError::not_found(Noun::Job, number.to_string(), &LookUp::Today))?;
        for club in &job.clubs {
            let made = tx.made_of(&club.id).await?;
            let made = made.ok_or_else(|| AppError::invalid(AgainFault::NotHandedOver { job: number }))?;
            codes.push(made.0);
        }
    }
    if let Some(customer) = ask.customer {
        crate::known_customer::customer_row(tx, customer).await?;
        let filter = ClubFilter { search: String::new(), owner: Some(customer) };
        let mut owned = tx.owned_clubs(&filter, MOST).await?;
        owned.reverse();
        for club in owned {
            let given_up = tx.club_events(&club.code).await?.last().is_some_and(|e| e.deed == ClubDeed::Retired);
            if !given_up {
                codes.push(club.code.0);
            }
        }
    }
    for code in codes.into_iter().filter(|code| !code.is_empty()) {
        let club = tx.owned_club(&code).await?;
        let club = club.ok_or_else(|| AppError::not_found(Noun::Club, code, &LookUp::Clubs))?;
        if clubs.iter().all(|other| other.code != club.code) {
            clubs.push(club);
        }
    }
    Ok(clubs)
}

/// What the line through the other clubs of the same player and sort gives for a club; none where there are too few.
async fn others(tx: &mut Tx, club: &Club) -> Result<Option<MatchedClub>, AppError> {
    let filter = ClubFilter { search: String::new(), owner: club.owner };
    let search = ClubFilter { search: club.player.to_lowercase(), ..filter.clone() };
    let all = tx.owned_clubs(if club.owner.is_some() { &filter } else { &search }, MOST).await?;
    let same = |other: &&Club| {
        other.code != club.code
            && other.player == club.player
            && other.made.row.club_kind == club.made.row.club_kind
            && other.made.row.number != club.made.row.number
            && !other.figures.is_empty()
    };
    let set: Vec<Club> = all.iter().filter(same).cloned().collect();
    if set.len() < OTHERS {
        return Ok(None);
    }
    // Clubs that have no place in a set, such as two putters, have no line.
    Ok(match_set(&set, &club.made.row.number).ok())
}

fact::facts! {
    /// What is refused of building clubs again.
    pub(crate) enum AgainFault: "again_fault" {
        NoClub,
        SeveralPlayers { club: String, other: String },
        NotHandedOver { job: i64 },
        NoOthers { fewest: usize },
    }
}

/// The codes of clubs in a list with commas between.
#[must_use]
pub fn codes_of(text: &str) -> Vec<String> {
    text.split(',').map(|code| code.trim().to_owned()).filter(|code| !code.is_empty()).collect()
}
