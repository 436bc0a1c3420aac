//! Arguments of clubs that live on, of the work on them, and of readings at the bench.

use super::{Database, Signed};
use clap::{Args, Subcommand};
use std::path::PathBuf;

/// Clubs that live on.
#[derive(Debug, Subcommand)]
pub enum ClubCommand {
    /// Clubs found by words: code, label, player, number, models.
    List(ClubList),
    /// One club with its life.
    Show(ClubShow),
    /// Note a club from elsewhere with what was read of it on arrival.
    Add(ClubAdd),
    /// Note what was read of a club outside of a job.
    Read(ClubRead),
    /// What one club must be to match others that were measured: the line through them.
    Match(ClubMatch),
    /// Note what was put on a club at the bench: lead tape, powder, a weight in the butt.
    Extra(ClubExtra),
    /// Make a job on clubs: regrip, bend, shorten … What goes on them is chosen from stock and held.
    Job(ClubJob),
}

/// Which clubs.
#[derive(Debug, Args)]
pub struct ClubList {
    /// Words that must all be found; default: all clubs.
    #[arg(default_value = "")]
    pub search: String,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which club.
#[derive(Debug, Args)]
pub struct ClubShow {
    /// Code of the club: C1.
    pub code: String,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What was read, in workshop notation.
#[derive(Debug, Args)]
pub struct ClubFigures {
    /// Swing weight: D2.1.
    #[arg(long, value_name = "LETTER")]
    pub swing_weight: Option<String>,
    /// Mass of the whole club: 432.7, or 15.2 oz.
    #[arg(long, value_name = "MASS")]
    pub total_mass: Option<String>,
    /// Length to the cap: 37, 36 3/4, 940 mm.
    #[arg(long, value_name = "LENGTH")]
    pub length: Option<String>,
    /// Loft in degrees.
    #[arg(long, value_name = "DEGREES")]
    pub loft: Option<String>,
    /// Lie in degrees.
    #[arg(long, value_name = "DEGREES")]
    pub lie: Option<String>,
    /// Frequency, cycles a minute.
    #[arg(long, value_name = "CPM")]
    pub cpm: Option<String>,
    /// Time of the shop's number of swings from its pivot, in seconds; or of how many: 18.81/10; with another pivot: 18.2/10 @ 100 mm.
    #[arg(long, value_name = "SECONDS")]
    pub swing_time: Option<String>,
    /// Swing inertia about the butt, kg·cm², where a machine showed it.
    #[arg(long, value_name = "KG_CM2")]
    pub swing_inertia: Option<f64>,
    /// What the grip weighs, where that is known.
    #[arg(long, value_name = "MASS")]
    pub grip_mass: Option<String>,
    /// What is to be said beside it.
    #[arg(long, default_value = "")]
    pub note: String,
    /// The figures are right, though hardly any club of its kind has such.
    #[arg(long)]
    pub sure: bool,
    /// Who.
    #[arg(long, default_value = "command line")]
    pub by: String,
}

/// A club from elsewhere.
#[derive(Debug, Args)]
pub struct ClubAdd {
    /// Who plays it.
    #[arg(long)]
    pub player: String,
    /// What sort of club: iron, wedge, wood, hybrid, putter.
    #[arg(long, default_value = "iron")]
    pub club_kind: String,
    /// Its number or letter.
    #[arg(long)]
    pub number: String,
    /// right or left.
    #[arg(long, default_value = "right")]
    pub hand: String,
    /// What people call it, where it has a name of its own.
    #[arg(long, default_value = "")]
    pub label: String,
    /// What its head is made of: unknown, forged, cast, brittle.
    #[arg(long, default_value = "unknown")]
    pub head_material: String,
    /// What was read of it.
    #[command(flatten)]
    pub figures: ClubFigures,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What was read of a club.
#[derive(Debug, Args)]
pub struct ClubRead {
    /// Code of the club.
    pub code: String,
    /// What was read.
    #[command(flatten)]
    pub figures: ClubFigures,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which clubs, and which is to match them.
#[derive(Debug, Args)]
pub struct ClubMatch {
    /// Codes of the measured clubs, separated by commas: three at least, all of one sort.
    #[arg(long, value_name = "CODES", value_delimiter = ',', required = true)]
    pub club: Vec<String>,
    /// Number or letter of the club that is to match.
    #[arg(long)]
    pub number: String,
    /// Make the job that builds it, of a head of this model.
    #[arg(long, value_name = "CODE", requires = "shaft", requires = "grip")]
    pub head: Option<String>,
    /// Model of its shaft.
    #[arg(long, value_name = "CODE", requires = "head")]
    pub shaft: Option<String>,
    /// Model of its grip.
    #[arg(long, value_name = "CODE", requires = "head")]
    pub grip: Option<String>,
    /// Model of its ferrule, where it has one.
    #[arg(long, value_name = "CODE", requires = "head")]
    pub ferrule: Option<String>,
    /// It matches in swing inertia and not in swing weight.
    #[arg(long, requires = "head")]
    pub by_inertia: bool,
    /// When it is due: 2031-04-01; default: today.
    #[arg(long, value_name = "DATE", requires = "head")]
    pub due: Option<String>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// What was put on.
#[derive(Debug, Args)]
pub struct ClubExtra {
    /// Number of the job.
    pub job: i64,
    /// Place of the club in the tray.
    pub slot: i64,
    /// What: lead_tape, powder, counterweight, screw, lower_hand_tape.
    #[arg(long)]
    pub action: String,
    /// How much came on: 2.3, or 0.1 oz.
    #[arg(long, value_name = "MASS")]
    pub mass: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// A job on clubs.
#[derive(Debug, Args)]
pub struct ClubJob {
    /// A JSON file with what is asked of each club, as the API takes it; in its place the options for clubs of one kind.
    #[arg(long, value_name = "FILE", conflicts_with_all = ["kind", "club"])]
    pub file: Option<PathBuf>,
    /// Codes of the clubs, separated by commas.
    #[arg(long, value_name = "CODES", value_delimiter = ',')]
    pub club: Vec<String>,
    /// Key of the kind of job: regrip.
    #[arg(long, default_value = "regrip")]
    pub kind: String,
    /// When it is due: 2031-04-01; default: today.
    #[arg(long, value_name = "DATE")]
    pub due: Option<String>,
    /// Model code of the new grip.
    #[arg(long, value_name = "CODE")]
    pub grip_model: Option<String>,
    /// Model code of the new shaft.
    #[arg(long, value_name = "CODE")]
    pub shaft_model: Option<String>,
    /// Model code of the new ferrule.
    #[arg(long, value_name = "CODE")]
    pub ferrule_model: Option<String>,
    /// Code of the adhesive of the new joint; default: the shop's.
    #[arg(long, value_name = "CODE")]
    pub adhesive: Option<String>,
    /// Full layers of tape over the base layer.
    #[arg(long, value_name = "N")]
    pub wraps: Option<u8>,
    /// How thick the grip is to be under the upper hand, 2 in below its cap; default: as it is.
    #[arg(long, value_name = "LENGTH")]
    pub grip_size: Option<String>,
    /// The same under the lower hand, 6 in below its cap.
    #[arg(long, value_name = "LENGTH", requires = "grip_size")]
    pub grip_size_lower: Option<String>,
    /// Swing weight of the finished club; default: it keeps what it reads on arrival.
    #[arg(long, value_name = "LETTER")]
    pub swing_weight: Option<String>,
    /// Swing inertia of the finished club about its butt, kg·cm², in place of a swing weight.
    #[arg(long, value_name = "KG_CM2")]
    pub swing_inertia: Option<f64>,
    /// Length of the finished club to the cap.
    #[arg(long, value_name = "LENGTH")]
    pub length: Option<String>,
    /// What the piece weighs that lengthens the shaft.
    #[arg(long, value_name = "MASS")]
    pub extension_mass: Option<String>,
    /// Loft of the finished club.
    #[arg(long, value_name = "DEGREES")]
    pub loft: Option<String>,
    /// Lie of the finished club.
    #[arg(long, value_name = "DEGREES")]
    pub lie: Option<String>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Kinds of job.
#[derive(Debug, Subcommand)]
pub enum KindCommand {
    /// The kinds of the trade, and the shop's own.
    List(KindList),
    /// Keep a kind of the shop's own from a JSON file, over the one with its key.
    Add(KindAdd),
    /// Take a kind of the shop's own away.
    Remove(KindRemove),
}

/// All kinds.
#[derive(Debug, Args)]
pub struct KindList {
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// A new kind.
#[derive(Debug, Args)]
pub struct KindAdd {
    /// A JSON file of one kind; `kind list --json` shows the form.
    pub file: PathBuf,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which kind.
#[derive(Debug, Args)]
pub struct KindRemove {
    /// Key of a kind of the shop's own, as `kind list` shows it.
    pub key: String,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Readings of one club at one step.
#[derive(Debug, Args)]
pub struct ReadArguments {
    /// Number of the job.
    pub job: i64,
    /// Place of the club in the tray.
    pub slot: i64,
    /// Key of the step: dry, arrived, finish, or as the job calls it.
    pub step: String,
    /// What was read, in workshop notation: swing_weight=D2.1 total_mass=432.7
    #[arg(required = true, value_name = "WHAT=READ")]
    pub readings: Vec<String>,
    /// The club was seated again: both readings count.
    #[arg(long)]
    pub again: bool,
    /// Why the work goes on though something is open.
    #[arg(long)]
    pub reason: Option<String>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}
