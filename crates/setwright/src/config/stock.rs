//! Arguments about the stock: orders, what is short, sorting, heads to ask for, the life of a part.

use super::{Database, PartFigures, Signed};
use clap::{Args, Subcommand};
use std::path::PathBuf;

/// Orders.
#[derive(Debug, Subcommand)]
pub enum OrderCommand {
    /// Orders, the newest first.
    List(OrderList),
    /// Place an order.
    Add(OrderAdd),
    /// Order what the plan of a job lacks.
    Job(OrderJob),
    /// Book in what came of an order.
    Receive(OrderReceive),
    /// Cancel an order, or say that the rest does not come.
    Cancel(OrderCancel),
    /// Say another supplier or another day.
    Tell(OrderTell),
}

/// Which orders to list.
#[derive(Debug, Args)]
pub struct OrderList {
    /// Only those of which something is still to come.
    #[arg(long)]
    pub open: bool,
    /// Only those for a job.
    #[arg(long, value_name = "NUMBER")]
    pub job: Option<i64>,
    /// As CSV.
    #[arg(long)]
    pub csv: bool,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What to order.
#[derive(Debug, Args)]
pub struct OrderAdd {
    /// Code of the model.
    pub model: String,
    /// How many.
    #[arg(allow_negative_numbers = true)]
    pub count: i64,
    /// Number of a head or taper blank.
    #[arg(long)]
    pub number: Option<String>,
    /// Of whom.
    #[arg(long, default_value = "")]
    pub supplier: String,
    /// Lightest that will do, g.
    #[arg(long, value_name = "GRAMS", allow_negative_numbers = true)]
    pub from: Option<f64>,
    /// Heaviest that will do, g.
    #[arg(long, value_name = "GRAMS", allow_negative_numbers = true)]
    pub to: Option<f64>,
    /// A job they are for: JOB or JOB:COUNT. May be given more than once.
    #[arg(long = "for", value_name = "JOB:COUNT")]
    pub jobs: Vec<String>,
    /// When it is expected: 2026-03-10.
    #[arg(long, value_name = "DAY")]
    pub expected: Option<String>,
    /// A remark.
    #[arg(long, default_value = "")]
    pub note: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Ordering for a job.
#[derive(Debug, Args)]
pub struct OrderJob {
    /// Number of the job.
    pub job: i64,
    /// Only say what it lacks; nothing is ordered.
    #[arg(long)]
    pub look: bool,
    /// Of whom; left out: of whom each model was ordered last.
    #[arg(long)]
    pub supplier: Option<String>,
    /// When it is expected: 2026-03-10.
    #[arg(long, value_name = "DAY")]
    pub expected: Option<String>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// What came.
#[derive(Debug, Args)]
pub struct OrderReceive {
    /// Number of the order.
    pub order: i64,
    /// How many came.
    #[arg(allow_negative_numbers = true)]
    pub count: i64,
    /// Another model, where one came in its place.
    #[arg(long)]
    pub model: Option<String>,
    /// Another number, where one came in its place.
    #[arg(long)]
    pub number: Option<String>,
    /// The rest does not come.
    #[arg(long)]
    pub short: bool,
    /// It is so although it is more than was to come, or the order was cancelled.
    #[arg(long)]
    pub anyway: bool,
    /// A remark.
    #[arg(long, default_value = "")]
    pub note: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which order to cancel.
#[derive(Debug, Args)]
pub struct OrderCancel {
    /// Number of the order.
    pub order: i64,
    /// Why.
    #[arg(long, default_value = "")]
    pub reason: String,
    /// The supplier does not send the rest, instead of the shop cancelling it.
    #[arg(long)]
    pub short: bool,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// New details of an order.
#[derive(Debug, Args)]
pub struct OrderTell {
    /// Number of the order.
    pub order: i64,
    /// Who the parts come from.
    #[arg(long)]
    pub supplier: Option<String>,
    /// When it is expected: 2026-03-10.
    #[arg(long, value_name = "DAY")]
    pub expected: Option<String>,
    /// A remark.
    #[arg(long, default_value = "")]
    pub note: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// The stock against the sheets to come.
#[derive(Debug, Args)]
pub struct NeedsArguments {
    /// Only what is short.
    #[arg(long)]
    pub short: bool,
    /// As CSV.
    #[arg(long)]
    pub csv: bool,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What to sort.
#[derive(Debug, Args)]
pub struct SortArguments {
    /// Code of the model.
    pub model: String,
    /// Number of a head or taper blank; left out: all of the model.
    #[arg(long)]
    pub number: Option<String>,
    /// Width of a class, g; left out: 1.
    #[arg(long, value_name = "GRAMS", allow_negative_numbers = true)]
    pub width: Option<f64>,
    /// How many classes of equal width instead.
    #[arg(long)]
    pub classes: Option<usize>,
    /// Places in a row of the tray.
    #[arg(long)]
    pub columns: Option<usize>,
    /// As CSV.
    #[arg(long)]
    pub csv: bool,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which head masses to ask for.
#[derive(Debug, Args)]
pub struct AskArguments {
    /// Running number of a job whose clubs need heads.
    #[arg(long, value_name = "NUMBER")]
    pub job: Option<i64>,
    /// A sheet file.
    #[arg(long, value_name = "FILE")]
    pub sheet: Option<PathBuf>,
    /// What the supplier says of a number: MODEL:NUMBER=MEAN,SCATTER in grams. May be given more than once.
    #[arg(long, value_name = "MODEL:NUMBER=MEAN,SCATTER")]
    pub supply: Vec<String>,
    /// Most in the tip, g; left out: the shop's own.
    #[arg(long, value_name = "GRAMS", allow_negative_numbers = true)]
    pub cap: Option<f64>,
    /// How far from its swing weight a club may stay and still count, points.
    #[arg(long, value_name = "POINTS", default_value_t = 0.0, allow_negative_numbers = true)]
    pub within: f64,
    /// As CSV.
    #[arg(long)]
    pub csv: bool,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which part, and what is done with it.
#[derive(Debug, Args)]
pub struct PartArguments {
    /// Code of the part.
    pub code: String,
    /// Action: reserve, return, use, scrap, restore, correct, pull or miscut; default: show the part.
    #[arg(long = "action", alias = "deed", value_name = "ACTION")]
    pub deed: Option<String>,
    /// Job to reserve it for.
    #[arg(long, value_name = "NUMBER")]
    pub job: Option<i64>,
    /// Place of the club in its tray.
    #[arg(long)]
    pub slot: Option<i64>,
    /// Mass as it is weighed now.
    #[arg(long)]
    pub mass: Option<String>,
    /// Its figures as they are.
    #[command(flatten)]
    pub figures: PartFigures,
    /// How much of a wrong cut went off the tip, mm.
    #[arg(long, value_name = "MM", allow_negative_numbers = true)]
    pub off_the_tip: Option<f64>,
    /// A pulled part is free of adhesive and good.
    #[arg(long)]
    pub clean: bool,
    /// Where it lies from now on.
    #[arg(long)]
    pub place: Option<String>,
    /// The club that it is planned for is to lose its plan and wait.
    #[arg(long)]
    pub lose_plan: bool,
    /// Why.
    #[arg(long, default_value = "")]
    pub reason: String,
    /// Who.
    #[arg(long, default_value = "command line")]
    pub by: String,
    /// Its life as CSV.
    #[arg(long)]
    pub csv: bool,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Usual models: to look through, or to keep.
#[derive(Debug, Args)]
pub struct UsualArguments {
    /// Codes of those to keep; left out: list them all.
    pub codes: Vec<String>,
    /// Only those of one kind: head, shaft, grip, tip_weight, ferrule, adhesive, tape.
    #[arg(long, value_name = "KIND", conflicts_with = "codes")]
    pub kind: Option<String>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}
