//! Arguments of the soft side of a shaft.

use super::Signed;
use super::profile::pair;
use clap::Args;

/// Which club, and what was read around its shaft or of the finished club.
#[derive(Debug, Args)]
pub struct SoftSideArguments {
    /// Number of the job.
    pub job: i64,
    /// Place of the club in the tray.
    pub slot: i64,
    /// A frequency at an angle from the label, degrees and cycles a minute, such as 30=251.4. Give six or more.
    #[arg(long, value_name = "ANGLE=CPM", value_parser = pair)]
    pub frequency: Vec<(f64, f64)>,
    /// A deflection under a weight at an angle, degrees and mm; needs --fixed, the force in N.
    #[arg(long, value_name = "ANGLE=MM", value_parser = pair, conflicts_with_all = ["frequency", "force"])]
    pub deflection: Vec<(f64, f64)>,
    /// A force at a fixed deflection at an angle, degrees and N; needs --fixed, the deflection in mm.
    #[arg(long, value_name = "ANGLE=N", value_parser = pair, conflicts_with = "frequency")]
    pub force: Vec<(f64, f64)>,
    /// What is held fixed: the force in N, or the deflection in mm.
    #[arg(long)]
    pub fixed: Option<f64>,
    /// Keep what is found as the reading of the club's soft side.
    #[arg(long)]
    pub keep: bool,
    /// The finished club swinging along the line of play, cycles a minute: checks where the soft side was turned.
    #[arg(long, value_name = "CPM", requires = "heel_toe", conflicts_with_all = ["frequency", "deflection", "force", "keep"])]
    pub along: Option<f64>,
    /// The finished club swinging from heel to toe.
    #[arg(long, value_name = "CPM", requires = "along")]
    pub heel_toe: Option<f64>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}
