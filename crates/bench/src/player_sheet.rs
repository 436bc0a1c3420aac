//! The sheet that a player keeps of a set: what was felt at the fitting, what was asked, what was built, the parts by their
//! names, and who built it. Nothing about chances: how sure the shop is stands in the [record](crate::record).

use crate::record::{ClubRecord, Line, Record};
use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use std::cmp::Reverse;
use std::collections::BTreeMap;
use trade::id::ClubId;
use trade::job::JobState;
use trade::kind::{ClubKind, Hand, LengthTo, SoftSide};
use trade::model::{Library, Model, PartKind, as_it_came};
use trade::reading::{Unit, What};
use trade::sheet::{ReferenceClub, Tolerances};
use trade::wrap::Wraps;
use utoipa::ToSchema;

/// What a player's sheet can show, in the order of its columns.
const COLUMNS: [What; 6] = [What::FinishedLength, What::SwingWeight, What::Cpm, What::Loft, What::Lie, What::TotalMass];

/// One figure of a club: what the sheet asks and what was built.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct AskedAndBuilt {
    /// The quantity.
    pub what: What,
    /// Unit of both figures.
    pub unit: Unit,
    /// What the sheet asks; none where it leaves the figure open.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub asked: Option<f64>,
    /// What was built; none where nobody read it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub built: Option<f64>,
}

/// One club of the set.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct PlayerClub {
    /// Identity of the club.
    pub club: ClubId,
    /// Place in the tray, from 1.
    pub slot: i64,
    /// Wood, hybrid, iron, wedge or putter.
    pub kind: ClubKind,
    /// Number or letter.
    pub number: String,
    /// Length to the outside of the grip's cap, as built where it was read: the club is drawn with it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_to_cap_mm: Option<f64>,
    /// Lie, as built where it was read: the club is drawn with it.
    pub lie_deg: f64,
    /// Its figures, by the columns of the sheet.
    pub figures: Vec<AskedAndBuilt>,
}

/// One figure of the reference club.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct FeltFigure {
    /// The quantity.
    pub what: What,
    /// Unit of the figure.
    pub unit: Unit,
    /// What was read.
    pub value: f64,
}

/// The reference club: what the player felt and liked.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Felt {
    /// Its number or letter.
    pub number: String,
    /// What sort of club it is, where the set has one of its number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kind: Option<ClubKind>,
    /// The day on which it was read, where that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub read_on: Option<Date>,
    /// What was read of it, by the columns of the sheet.
    pub figures: Vec<FeltFigure>,
}

/// What all clubs of the set are made of, by kind of part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct MadeOf {
    /// Heads, shafts or grips.
    pub kind: PartKind,
    /// Names of the models, each once, in the order of the clubs.
    pub models: Vec<String>,
}

/// The sheet that a player keeps.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct PlayerSheet {
    /// Name of the shop.
    pub shop: String,
    /// Running number of the job.
    pub job_number: i64,
    /// Where the job stands: until it is finished the sheet is a draft.
    pub state: JobState,
    /// Who the clubs are for.
    pub player: String,
    /// Right-handed or left-handed.
    pub hand: Hand,
    /// When the last reading was taken; the day of a finished set.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub last_reading_at: Option<Timestamp>,
    /// The quantities that were asked, felt or read, in the order in which they are shown.
    pub columns: Vec<What>,
    /// The clubs, in the order of the tray.
    pub clubs: Vec<PlayerClub>,
    /// The reference club, where one was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub felt: Option<Felt>,
    /// Heads, shafts and grips by their names.
    pub made_of: Vec<MadeOf>,
    /// Where the soft side of the shafts lies, where all clubs have one place for it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub soft_side: Option<SoftSide>,
    /// Layers of tape under the grip, where all clubs have the same.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wraps: Option<Wraps>,
    /// What the shop promises: half widths of the tolerances, where all clubs have the same.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub promised: Option<Tolerances>,
    /// Who took most of the readings that stand; none where nobody read anything.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub builder: Option<String>,
}

/// Makes the sheet from a record. `library` holds the models that the record names.
#[must_use]
pub fn player_sheet(record: &Record, library: &Library) -> PlayerSheet {
    let columns: Vec<What> = COLUMNS
        .into_iter()
        .filter(|what| {
            let shown = |line: &Line| line.what == *what && (line.target.is_some() || line.built.is_some());
            record.clubs.iter().any(|club| club.lines.iter().any(shown))
        })
        .collect();
    let club = |club: &ClubRecord| PlayerClub {
        club: club.club.clone(),
        slot: club.slot,
        kind: club.target.club_kind,
        number: club.target.number.clone(),
        length_to_cap_mm: club.lengths.map(|lengths| lengths.to_cap_mm),
        lie_deg: line_of(club, What::Lie).and_then(|line| line.built).unwrap_or(club.target.lie_deg),
        figures: columns.iter().map(|what| asked_and_built(club, *what)).collect(),
    };
    PlayerSheet {
        shop: record.shop.clone(),
        job_number: record.job_number,
        state: record.state,
        player: record.player.clone(),
        hand: record.hand,
        last_reading_at: record.last_reading_at,
        clubs: record.clubs.iter().map(club).collect(),
        felt: record
            .reference
            .as_ref()
            .map(|reference| felt(record, reference, library, &columns))
            .filter(|felt| !felt.figures.is_empty()),
        columns,
        made_of: [PartKind::Head, PartKind::Shaft, PartKind::Grip]
            .into_iter()
            .map(|kind| MadeOf { kind, models: names(record, library, kind) })
            .filter(|made_of| !made_of.models.is_empty())
            .collect(),
        soft_side: same(record.clubs.iter().map(|club| club.target.soft_side)).flatten(),
        wraps: same(record.clubs.iter().map(|club| club.target.wraps)),
        promised: same(record.clubs.iter().map(|club| club.target.tolerances)),
        builder: builder(record),
    }
}

/// The line of a quantity against the sheet, not the one within the set.
fn line_of(club: &ClubRecord, what: What) -> Option<&Line> {
    club.lines.iter().find(|line| line.what == what && !line.within_set)
}

fn asked_and_built(club: &ClubRecord, what: What) -> AskedAndBuilt {
    let line = line_of(club, what);
    AskedAndBuilt {
        what,
        unit: what.unit(),
        asked: line.and_then(|line| line.target),
        built: line.and_then(|line| line.built),
    }
}

fn felt(record: &Record, reference: &ReferenceClub, library: &Library, columns: &[What]) -> Felt {
    // The sheet tells all lengths to the cap; one to the shaft's end is left out where nobody knows how thick the cap is.
    let model_cap_mm = reference.grip_model.as_deref().and_then(|code| library.grip(code).ok()).map(|grip| grip.cap_mm);
    let length_mm = reference.length_mm.zip(reference.length_to).and_then(|(length_mm, to)| match to {
        LengthTo::Cap => Some(length_mm),
        LengthTo::ShaftEnd => reference.cap_mm.or(model_cap_mm).map(|cap_mm| to.to_cap_mm(length_mm, cap_mm)),
    });
    let read = |what: What| match what {
        What::FinishedLength => length_mm,
        What::SwingWeight => reference.swing_weight_points,
        What::Cpm => reference.cpm,
        What::Loft => reference.loft_deg,
        What::Lie => reference.lie_deg,
        What::TotalMass => reference.total_mass_g,
        _ => None,
    };
    let figure = |&what: &What| read(what).map(|value| FeltFigure { what, unit: what.unit(), value });
    Felt {
        number: reference.number.clone(),
        kind: record.clubs.iter().map(|c| &c.target).find(|t| t.number == reference.number).map(|t| t.club_kind),
        read_on: reference.read_on,
        figures: columns.iter().filter_map(figure).collect(),
    }
}

fn names(record: &Record, library: &Library, kind: PartKind) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for part in record.clubs.iter().flat_map(|club| &club.parts).filter(|part| part.kind == kind) {
        if as_it_came::is(&part.model) {
            continue;
        }
        let name = library.get(&part.model).map_or(part.model.as_str(), Model::name);
        if !names.iter().any(|known| known == name) {
            names.push(name.to_owned());
        }
    }
    names
}

/// The value that all clubs share; none where they differ, or where there are no clubs.
fn same<T: PartialEq>(mut values: impl Iterator<Item = T>) -> Option<T> {
    let first = values.next()?;
    values.all(|value| value == first).then_some(first)
}

fn builder(record: &Record) -> Option<String> {
    let mut count: BTreeMap<&str, usize> = BTreeMap::new();
    for reading in record.clubs.iter().flat_map(|club| &club.readings).filter(|reading| reading.stands) {
        *count.entry(&reading.reading.by).or_default() += 1;
    }
    // Of equal counts the first by name, so that a set has one answer.
    count.into_iter().max_by_key(|&(who, times)| (times, Reverse(who))).map(|(who, _)| who.to_owned())
}
