//! Arguments of the shop's scales: how they stand, and one tried out on a serial line.

use super::{Database, Signed};
use clap::{Args, Subcommand};

/// How the shop's scales stand, and what is entered of them.
#[derive(Debug, Subcommand)]
pub enum ScaleCommand {
    /// How every scale stands, or one: trust, checks, charts, offset and drift, what the belief begins with.
    Health {
        /// Key of the scale, for example balance or mass; default: all of them.
        scale: Option<String>,
        /// Where the database is.
        #[command(flatten)]
        database: Database,
    },
    /// Keep a check: what a scale shows for a check weight. One that looks like a slip is asked about (exit code 4).
    Check {
        /// Key of the scale.
        scale: String,
        /// What it shows: 200.1, "7.06 oz", D1.4.
        shows: String,
        /// Key of the check weight; default: the scale's first.
        #[arg(long, value_name = "KEY")]
        weight: Option<String>,
        /// Keep it as it is though it looks like a slip.
        #[arg(long)]
        as_it_is: bool,
        /// A key of your own: the same one again keeps nothing twice.
        #[arg(long, value_name = "KEY")]
        request_key: Option<String>,
        /// Who.
        #[arg(long, default_value = "command line")]
        by: String,
        /// Where the database is.
        #[command(flatten)]
        database: Database,
    },
    /// Trust a scale again, on its passed check or on your word.
    Trust(ScaleWord),
    /// Do not trust a scale.
    Distrust(ScaleWord),
    /// Enter a calibration.
    Calibrated {
        /// Key of the scale.
        scale: String,
        /// When: 2026-03-02.
        #[arg(long, value_name = "DATE")]
        on: jiff::civil::Date,
        /// Who calibrated it: a person, or a laboratory's name.
        #[arg(long)]
        by_whom: String,
        /// When it is due again.
        #[arg(long, value_name = "DATE")]
        next_due: Option<jiff::civil::Date>,
        /// Number of the certificate, what was adjusted.
        #[arg(long, default_value = "")]
        note: String,
        /// It was adjusted: a new chart begins.
        #[arg(long)]
        adjusted: bool,
        /// Who enters it.
        #[arg(long, default_value = "command line")]
        by: String,
        /// Where the database is.
        #[command(flatten)]
        database: Database,
    },
    /// Gauge studies and what they found; they are started and read on the page Scales.
    Studies {
        /// Identity of one; default: all of them.
        study: Option<String>,
        /// Where the database is.
        #[command(flatten)]
        database: Database,
    },
}

/// A word on a scale.
#[derive(Debug, Args)]
pub struct ScaleWord {
    /// Key of the scale.
    pub scale: String,
    /// Why.
    #[arg(long)]
    pub reason: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// A scale on a serial line.
#[derive(Debug, Args)]
#[command(args_conflicts_with_subcommands = true, subcommand_negates_reqs = true)]
pub struct ScaleArguments {
    /// How the shop's scales stand.
    #[command(subcommand)]
    pub command: Option<ScaleCommand>,
    /// The port: /dev/ttyUSB0, COM3.
    #[arg(required = true)]
    pub port: Option<String>,
    /// Speed, bits a second.
    #[arg(long, default_value_t = 9600)]
    pub baud: u32,
    /// Data bits, 7 or 8.
    #[arg(long, default_value_t = 8)]
    pub data_bits: u8,
    /// Parity: none, even or odd.
    #[arg(long, default_value = "none")]
    pub parity: String,
    /// Stop bits, 1 or 2.
    #[arg(long, default_value_t = 1)]
    pub stop_bits: u8,
    /// It shows swing weights, not masses.
    #[arg(long)]
    pub swing_weight: bool,
    /// Text by which a line says that its value has settled.
    #[arg(long, value_name = "TEXT", conflicts_with = "moving")]
    pub settled: Option<String>,
    /// Text by which a line says that its value is still moving.
    #[arg(long, value_name = "TEXT")]
    pub moving: Option<String>,
    /// Unit of lines that carry none; empty refuses them.
    #[arg(long, default_value = "g")]
    pub unit: String,
    /// Text for overload. May be given again.
    #[arg(long, value_name = "TEXT")]
    pub overload: Vec<String>,
    /// Text to ignore. May be given again.
    #[arg(long, value_name = "TEXT")]
    pub ignore: Vec<String>,
    /// Beginning of lines to skip. May be given again.
    #[arg(long, value_name = "TEXT")]
    pub skip: Vec<String>,
    /// Sent once a second to a scale that answers only when asked; write \r and \n for the end of a line.
    #[arg(long, default_value = "")]
    pub ask: String,
    /// How long to listen, seconds.
    #[arg(long, default_value_t = 10.0, value_name = "S")]
    pub seconds: f64,
    /// One JSON document a line.
    #[arg(long)]
    pub json: bool,
}
