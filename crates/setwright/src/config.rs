//! Arguments and configuration: the command line first, then the environment, then a file, then what is usual.

use clap::{Args, Parser, Subcommand};
use jiff::civil::Date;
use std::path::PathBuf;

mod again;
mod backup;
mod clubs;
mod cpm;
mod customer;
mod figures;
mod fit;
mod gates;
mod grip_size;
mod job;
mod key;
mod place;
mod price;
mod profile;
mod recall;
mod record;
mod scale;
mod serve;
mod soft_side;
mod stock;

pub use again::*;
pub use backup::*;
pub use clubs::*;
pub use cpm::*;
pub use customer::*;
pub use figures::{PartFigures, TypedFigures};
pub use fit::*;
pub use gates::*;
pub use grip_size::*;
pub use job::*;
pub use key::*;
pub use place::*;
pub use price::*;
pub use profile::*;
pub use recall::*;
pub use record::*;
pub use scale::*;
pub use serve::*;
pub use soft_side::*;
pub use stock::*;

/// The bench companion of a golf club builder: sheets, stock, plans, readings, glue, records.
#[derive(Debug, Parser)]
#[command(name = "setwright", version, about)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// What can be done.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Try Setwright on an invented shop, which has a database of its own: loads it and opens the bench on this machine.
    Demo(Demo),
    /// Open the bench on this machine; makes an empty shop where there is none.
    Serve(Serve),
    /// Every setting of the server: what it is, where that comes from, how it is set and what it is for.
    Config(Serve),
    /// How tablets reach this machine: its addresses with a picture to point a camera at, and what they are told to trust.
    Reach(Serve),
    /// What helps to find a fault, without names: version, settings, amounts, clock, backups, damage. For whoever helps you.
    Support(SupportArguments),
    /// Make a backup of the shop now, while it is in use: opened, found whole and counted before it has its name.
    Backup(BackupArguments),
    /// Put a backup in the place of the shop; without --replace tells what would be lost and changes nothing.
    Restore(RestoreArguments),
    /// Write the whole shop as a text that any program can read: to move it to another database, or to keep it for good.
    Archive(ArchiveArguments),
    /// Set up a new shop from an archive, in SQLite or PostgreSQL; an existing shop is never overwritten.
    Unpack(UnpackArguments),
    /// Look for damage in the shop, or in a backup.
    Check(CheckArguments),
    /// Import parts from a CSV file or an XLSX workbook, or models from a JSON file: good rows are kept, bad rows named.
    Import(Import),
    /// Models that are nobody's, to begin with: lists them, keeps those named. Weighing corrects their figures.
    Usual(UsualArguments),
    /// Export a list as CSV: parts (or a workbook), clubs, jobs, readings, records, orders; or models as JSON.
    Export(Export),
    /// The calendar as an iCalendar file: due dates, ends of cures, expected parts. With --json its entries.
    Calendar(CalendarArguments),
    /// Labels of parts to print, as an HTML document: the code as QR and as Code 128.
    Labels(Labels),
    /// Identify a part by its mass: its own number, the one beside it, another model; with --keep weigh it in.
    Weigh(Weigh),
    /// Fitting sheets.
    #[command(subcommand)]
    Sheet(SheetCommand),
    /// Customers: list, keep, change, give them sheets; export all that is held, delete on request.
    #[command(subcommand)]
    Customer(CustomerCommand),
    /// Keys: let a tablet in by six digits, give a program a key, list them, take one away.
    #[command(subcommand)]
    Key(KeyCommand),
    /// What a text may mean: a customer's name, "job 1", the code of a part or a job card, a lot, an order.
    Find(FindArguments),
    /// Every club that a lot, a part, a model, a scale or a builder reached, with its player; marks them, writes addresses.
    Recall(RecallArguments),
    /// The clubs that a recall marked; clears a mark with what was found.
    Marks(MarksArguments),
    /// The shop's prices: prints the list, or keeps another.
    Prices(PricesArguments),
    /// The quote of a sheet: prints it, takes it from the price list, or keeps lines of a file.
    Quote(QuoteArguments),
    /// The bill of a job with what was built.
    Bill(JobArguments),
    /// Propose a plan for a job from the parts that are free, or accept it.
    Plan(PlanArguments),
    /// Which part goes into which club: one sheet, or all jobs of the day together. Nothing is held.
    Match(MatchArguments),
    /// Orders of parts: list, place, receive, cancel; what a job lacks.
    #[command(subcommand)]
    Order(OrderCommand),
    /// The stock against the sheets to come: what is free, held, on order, needed and short.
    Needs(NeedsArguments),
    /// The parts of a model in weight classes, each with its place in the tray.
    Sort(SortArguments),
    /// Which head masses to ask a supplier for, and how likely a head of theirs will do.
    Ask(AskArguments),
    /// A part with its life; reserves, returns, scraps, corrects or pulls it.
    Part(PartArguments),
    /// Clubs that live on, and jobs on them.
    #[command(subcommand)]
    Club(ClubCommand),
    /// The same again: clubs, a set or a customer's clubs as they were built, what differs today, and a new sheet of them.
    Again(AgainArguments),
    /// Kinds of job: regrip, bend, shorten, and the shop's own.
    #[command(subcommand)]
    Kind(KindCommand),
    /// Jobs: list them, show where each club stands, give one up.
    #[command(subcommand)]
    Job(JobCommand),
    /// Keep readings of a club at the bench, and say what they mean.
    Read(ReadArguments),
    /// Take a reading back: it stays in the record and counts for nothing.
    TakeBack(ReadingWord),
    /// Stand by a doubted reading: it is believed, and the record says why.
    StandBy(ReadingWord),
    /// Put another part into a club in place of the planned one: another head, shaft, grip or tip weight.
    Change(ChangeArguments),
    /// Let a joint pass before it has its strength, with a reason that the record keeps.
    Pass(PassArguments),
    /// What is open in a set before a step that cannot be undone: the cut, the glue, the bend, the hand over.
    Open(OpenArguments),
    /// Note that a step which is only done, such as turning the ferrules, is done for the clubs of a job.
    Done(DoneArguments),
    /// Batches of adhesive: their clocks, and the override of a cure.
    #[command(subcommand)]
    Glue(GlueCommand),
    /// What to fit across a set: a weight into each tip, grips to hang out, lead tape; takes it, and lists what to fetch.
    Fit(FitArguments),
    /// What each club of a job will read in the clamp, and the tip trims that bring the set to a slope.
    Cpm(CpmArguments),
    /// How thick the grip of each club of a job will be under either hand, and the layers of tape that bring it to its size.
    GripSize(GripSizeArguments),
    /// How stiff a shaft is along its length, from readings at several clamp lengths, beside its model.
    Profile(ProfileArguments),
    /// The soft side of a club's shaft, from readings around it; or whether the finished club has it where the sheet wants it.
    SoftSide(SoftSideArguments),
    /// Two clubs that had each other's head, tip weight or grip were put right.
    Exchange(ExchangeArguments),
    /// What can be done about the clubs of a job now, and what is worth measuring first.
    Advise(AdviseArguments),
    /// What may be behind the doubted readings of a club, and the measurement that would tell.
    Causes(CausesArguments),
    /// The record of a job as it stands now, or the sheet that its player keeps.
    Record(RecordArguments),
    /// What the shop has learned from its jobs; sets a value back or pins it.
    Learned(LearnedArguments),
    /// How well the shop meets its tolerances, by month and by head model.
    Capability(CapabilityArguments),
    /// Try out a scale on a serial line, or see and keep how the shop's scales stand: checks, trust, gauge studies.
    Scale(ScaleArguments),
    /// A calculation: reads a JSON document from standard input.
    Calc(Calc),
    /// Simulated shops: what the advice is worth against builders without it.
    Simulate(Simulate),
    /// Completions of these commands for a shell, to standard output.
    Completions(Completions),
    /// The manual pages of these commands, for `man`: writes one file for each into a folder.
    Manual(Manual),
}

/// Which shell.
#[derive(Debug, Args)]
pub struct Completions {
    /// The shell that will read them.
    pub shell: clap_complete::Shell,
}

/// Where to write the manual.
#[derive(Debug, Args)]
pub struct Manual {
    /// The folder; it is made if need be, and older pages in it are replaced.
    pub folder: PathBuf,
}

/// What to import.
#[derive(Debug, Args)]
pub struct Import {
    /// A CSV file or an XLSX workbook of parts, or a JSON file of models.
    pub file: PathBuf,
    /// The sheet of a workbook; left out: the first one with something in it.
    #[arg(long, value_name = "NAME")]
    pub sheet: Option<String>,
    /// Line of the headings; left out: looked for.
    #[arg(long, value_name = "LINE")]
    pub header_line: Option<u64>,
    /// Which column is what: mass="Weight (g)". Of code, kind, model, number, mass, length, balance_point, cpm, loft,
    /// lie, lot, place, state, count, owner. May be given more than once; other columns are then left aside.
    #[arg(long, value_name = "WHAT=HEADING")]
    pub map: Vec<String>,
    /// Unit of the mass (g, oz, lb, kg, grain) or of a length (mm, in, cm, m) where a cell has none: mass=oz.
    #[arg(long, value_name = "WHAT=UNIT")]
    pub unit: Vec<String>,
    /// What holds for every row: model=HERON. May be given more than once; other columns are then left aside.
    #[arg(long, value_name = "WHAT=VALUE")]
    pub set: Vec<String>,
    /// Name of remembered columns to read it by; --map, --unit and --set are then left out.
    #[arg(long, value_name = "NAME", conflicts_with_all = ["map", "unit", "set", "sheet", "header_line"])]
    pub layout: Option<String>,
    /// Remember what the columns are under this name, once the file is imported.
    #[arg(long, value_name = "NAME")]
    pub remember: Option<String>,
    /// Leave columns aside that nobody knows, instead of refusing the file.
    #[arg(long)]
    pub ignore_others: bool,
    /// Where to write the refused rows, to mend and import again.
    #[arg(long, value_name = "FILE")]
    pub refused: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What to export.
#[derive(Debug, Args)]
pub struct Export {
    /// Which list: parts, models, clubs, jobs, readings, records or orders.
    #[arg(default_value = "parts", value_parser = ["parts", "models", "clubs", "jobs", "readings", "records", "orders"])]
    pub what: String,
    /// Models instead of parts, as “setwright export models” does.
    #[arg(long)]
    pub models: bool,
    /// Clubs of one customer only, by number.
    #[arg(long, value_name = "NUMBER")]
    pub customer: Option<i64>,
    /// Readings of one job only.
    #[arg(long, value_name = "JOB")]
    pub job: Option<i64>,
    /// Readings from this day on: 2031-04-01.
    #[arg(long, value_name = "DAY")]
    pub from: Option<Date>,
    /// Readings until this day.
    #[arg(long, value_name = "DAY")]
    pub to: Option<Date>,
    /// File to write, a workbook of parts where its name ends in .xlsx; left out: standard output.
    #[arg(long, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Where to write the calendar.
#[derive(Debug, Args)]
pub struct CalendarArguments {
    /// File to write; left out: standard output.
    pub file: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which labels to print, and where.
#[derive(Debug, Args)]
pub struct Labels {
    /// Codes of the parts, separated by commas.
    #[arg(long, value_name = "CODES", value_delimiter = ',', required_unless_present = "clubs")]
    pub codes: Vec<String>,
    /// Codes of the clubs, separated by commas.
    #[arg(long, value_name = "CODES", value_delimiter = ',')]
    pub clubs: Vec<String>,
    /// Print at once on a printer of the shop, by its name.
    #[arg(long, value_name = "NAME", conflicts_with_all = ["to", "out", "strip"])]
    pub printer: Option<String>,
    /// Print at once on a printer in the network (192.168.1.40, printer.local:9100) or on a device (/dev/usb/lp0).
    #[arg(long, value_name = "PLACE", conflicts_with_all = ["out", "strip"])]
    pub to: Option<String>,
    /// Page language of the printer that --to names.
    #[arg(long, default_value = "zpl", value_parser = ["zpl", "epl", "esc_pos"], requires = "to")]
    pub language: String,
    /// Dots an inch of that printer.
    #[arg(long, default_value = "203", value_parser = ["203", "300"], requires = "to")]
    pub dots: String,
    /// Width and height of its labels, with a unit or in millimetres: 62x29, 2.25x1.25in.
    #[arg(long, default_value = "62x29", value_name = "WIDTHxHEIGHT", requires = "to")]
    pub size: String,
    /// How often each label is printed.
    #[arg(long, default_value_t = 1, value_name = "N")]
    pub copies: u32,
    /// One label a page, 62 × 29 mm, instead of a sheet.
    #[arg(long)]
    pub strip: bool,
    /// File to write; left out: standard output.
    #[arg(long, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// A part to weigh.
#[derive(Debug, Args)]
pub struct Weigh {
    /// Code of its model.
    #[arg(long, value_name = "MODEL")]
    pub model: String,
    /// Its number, where it has one.
    #[arg(long, value_name = "NUMBER")]
    pub number: Option<String>,
    /// Its mass, grams where no unit stands: 268.4, or "9.47 oz".
    #[arg(long, value_name = "MASS")]
    pub mass: String,
    /// Weigh it in: keep it in the stock.
    #[arg(long)]
    pub keep: bool,
    /// Code on its label; left out: the next one of its model and number.
    #[arg(long, value_name = "CODE", requires = "keep")]
    pub code: Option<String>,
    /// What else was measured on it.
    #[command(flatten)]
    pub figures: TypedFigures,
    /// Keep it though its mass is in question.
    #[arg(long, requires = "keep")]
    pub sure: bool,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Sheets.
#[derive(Debug, Subcommand)]
pub enum SheetCommand {
    /// Check a sheet file against models, stock and rules. Nothing is saved.
    Check(SheetFile),
    /// Save a sheet file, and approve it where nothing stands against it.
    Add(SheetFile),
    /// The JSON Schema of a sheet file.
    Schema,
}

/// A sheet file.
#[derive(Debug, Args)]
pub struct SheetFile {
    /// The sheet, as JSON.
    pub file: PathBuf,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which job to plan.
#[derive(Debug, Args)]
pub struct PlanArguments {
    /// Number of the job.
    pub job: i64,
    /// Hold the parts of the plan.
    #[arg(long)]
    pub accept: bool,
    /// Plan what can be built and leave out the rest.
    #[arg(long)]
    pub partly: bool,
    /// A head, shaft, grip or adapter that must go into a club: SLOT:CODE. May be given more than once.
    #[arg(long, value_name = "SLOT:CODE")]
    pub keep: Vec<String>,
    /// Why a neighbouring number's blank is used, where the plan uses one.
    #[arg(long, default_value = "", value_name = "REASON")]
    pub neighbour_reason: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which job.
#[derive(Debug, Args)]
pub struct JobArguments {
    /// Number of the job.
    pub job: i64,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What to match.
#[derive(Debug, Args)]
#[group(skip)]
pub struct MatchArguments {
    /// A sheet file to match by itself.
    #[arg(long, value_name = "FILE", required_unless_present = "day", conflicts_with = "day")]
    pub set: Option<PathBuf>,
    /// Every job that waits for a plan, together, on the stock that they share.
    #[arg(long)]
    pub day: bool,
    /// With --day: the plain plan, each job in its turn, the earliest due first.
    #[arg(long, requires = "day")]
    pub in_turn: bool,
    /// How long to search, seconds; the best plan by then is given, with its bound. Ctrl-C ends it sooner.
    #[arg(long, default_value_t = 1.0, value_name = "S")]
    pub seconds: f64,
    /// Seed of the search.
    #[arg(long, default_value_t = 0)]
    pub seed: u64,
    /// Keep a head, shaft, grip or adapter for a place in the tray of a sheet: 3:H-0412. May be given again.
    #[arg(long, value_name = "SLOT:CODE")]
    pub keep: Vec<String>,
    /// What counts for how much, for this once: tip_per_g, second_tip, mass_per_g, cpm_per_tolerance, shaft_range_per_g,
    /// spent_grip, rare_head or neighbour_blank, from 0 (left out) in clubs that are missed. May be given again; the
    /// others are as the shop has them.
    #[arg(long, value_name = "NAME=VALUE")]
    pub weight: Vec<String>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which job, and which club of it.
#[derive(Debug, Args)]
pub struct AdviseArguments {
    /// Number of the job.
    pub job: i64,
    /// Place of the club in the tray; left out: every club, shortly.
    #[arg(long)]
    pub slot: Option<i64>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which club to ask about.
#[derive(Debug, Args)]
pub struct CausesArguments {
    /// Number of the job.
    #[arg(long)]
    pub job: i64,
    /// Place of the club in the tray.
    #[arg(long)]
    pub slot: i64,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What to do with what the shop has learned.
#[derive(Debug, Args)]
pub struct LearnedArguments {
    /// Reset this value to what a new shop begins with; `all` for everything.
    #[arg(long, value_name = "KEY", conflicts_with_all = ["pin", "unpin", "tell", "withdraw"], requires = "reason")]
    pub reset: Option<String>,
    /// Lock this value: it is used as it is and learns nothing.
    #[arg(long, value_name = "KEY", conflicts_with_all = ["unpin", "tell", "withdraw"], requires = "reason")]
    pub pin: Option<String>,
    /// Unlock this value: it learns again.
    #[arg(long, value_name = "KEY", conflicts_with_all = ["tell", "withdraw"], requires = "reason")]
    pub unpin: Option<String>,
    /// Say what one of these does to the swing weight of a club, from what you have seen: joint, grip, wrap or ferrule.
    #[arg(long, value_name = "WHAT", conflicts_with = "withdraw", value_parser = ["joint", "grip", "wrap", "ferrule"])]
    pub tell: Option<String>,
    /// Points that it puts on: a joint, a ferrule.
    #[arg(long, value_name = "POINTS", requires = "tell", allow_negative_numbers = true)]
    pub puts_on: Option<f64>,
    /// Points that it takes off: a grip, a wrap.
    #[arg(long, value_name = "POINTS", requires = "tell", allow_negative_numbers = true)]
    pub takes_off: Option<f64>,
    /// How sure you are: sure, figure (the figure you work with) or about.
    #[arg(long, requires = "tell", default_value = "figure", value_parser = ["sure", "figure", "about"])]
    pub sure: String,
    /// Code of the adhesive, grip, tape or ferrule; left out: the shop's own, or the only one there is.
    #[arg(long, value_name = "CODE")]
    pub model: Option<String>,
    /// Withdraw what was said of a joint, grip, wrap or ferrule.
    #[arg(long, value_name = "WHAT", value_parser = ["joint", "grip", "wrap", "ferrule"])]
    pub withdraw: Option<String>,
    /// Why, for the history.
    #[arg(long)]
    pub reason: Option<String>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which shop's capability.
#[derive(Debug, Args)]
pub struct CapabilityArguments {
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which calculation.
#[derive(Debug, Args)]
pub struct Calc {
    /// Name of the calculation; left out: all of them are listed.
    pub topic: Option<String>,
    /// Print an input that works instead of calculating.
    #[arg(long)]
    pub example: bool,
    /// A recording in place of the document, for pluck: WAV, or CSV with time and one or two axes.
    #[arg(long, value_name = "FILE")]
    pub recording: Option<std::path::PathBuf>,
    /// Answer in JSON.
    #[arg(long)]
    pub json: bool,
}

/// What to simulate.
#[derive(Debug, Args)]
pub struct Simulate {
    /// Jobs of eight clubs that every builder is judged by, rounded up to tens.
    #[arg(long, default_value_t = 100)]
    pub jobs: u32,
    /// Seed of all draws: the same seed gives the same report.
    #[arg(long, default_value_t = 1)]
    pub seed: u64,
    /// Jobs that a shop builds before it counts as known.
    #[arg(long, default_value_t = 10, value_name = "JOBS")]
    pub known_after: u32,
    /// What makes the shops awkward: drift, heavy-adhesive, light-adhesive, scattered-grips, few-grips, new-models, bay-scale,
    /// loose-grips, loose-heads, overnight. May be given more than once.
    #[arg(long, value_name = "TROUBLE")]
    pub trouble: Vec<String>,
    /// Clubs of a hundred in which something goes wrong on purpose.
    #[arg(long, default_value_t = 0.0, value_name = "PERCENT")]
    pub blunders: f64,
    /// Each club finished before the next is begun, instead of sets glued as one batch.
    #[arg(long)]
    pub one_at_a_time: bool,
    /// What the sheet's target rests on: own-scale (the reference club read once on the shop's scale, on another day) or
    /// perfect (known in true points).
    #[arg(long, default_value = "own-scale", value_name = "REFERENCE")]
    pub reference: String,
    /// Where the shops come from: wide (means off the middle of what the belief starts from and further away, clubs in another
    /// form) or as-believed.
    #[arg(long, default_value = "wide", value_name = "WORLD")]
    pub world: String,
    /// Work on clubs from elsewhere in place of new sets: a kind of job (regrip, shorten, lengthen, rebalance, reshaft, loose_head), or
    /// `all` of them.
    #[arg(long, value_name = "KIND")]
    pub kind: Option<String>,
    /// What is judged: swing_weight, or cpm (sets trimmed to a slope of frequencies by the maker's chart, by a hand that reads each
    /// club, as advised; --jobs are shops then).
    #[arg(long, default_value = "swing_weight", value_parser = ["swing_weight", "cpm"], conflicts_with = "kind")]
    pub measure: String,
    /// Clubs of each kind, with --kind.
    #[arg(long, default_value_t = 2000, value_name = "CLUBS")]
    pub clubs: u32,
    /// Only the builders whose key contains this, for example new or known.
    #[arg(long, default_value = "", value_name = "KEY")]
    pub only: String,
    /// Threads to run on; the report does not depend on it.
    #[arg(long, default_value_t = 2)]
    pub threads: u32,
    /// Answer in JSON.
    #[arg(long)]
    pub json: bool,
}
