//! Arguments of the stiffness along a shaft.

use super::Signed;
use clap::Args;

/// Which shaft, and what was read of it.
#[derive(Debug, Args)]
pub struct ProfileArguments {
    /// Code of the shaft.
    pub code: String,
    /// A frequency: how much of the butt the clamp held, mm, and what it read, cycles a minute, such as 127=262.4. Give one a
    /// clamp length.
    #[arg(long, value_name = "HELD=CPM", value_parser = pair)]
    pub cpm: Vec<(f64, f64)>,
    /// A deflection under the weight: how much of the butt the clamp held and how far the shaft went down, mm, such as 127=41.5.
    #[arg(long, value_name = "HELD=MM", value_parser = pair)]
    pub deflection: Vec<(f64, f64)>,
    /// The weight on the shaft, g; left out: the test weight of the shop's clamp.
    #[arg(long, value_name = "G")]
    pub weight: Option<f64>,
    /// Centre of that weight beyond the tip, mm; negative where it sits or hangs on the shaft. Left out: as the shop's clamp has
    /// it.
    #[arg(long, value_name = "MM", allow_negative_numbers = true)]
    pub beyond_tip: Option<f64>,
    /// Keep the readings with the shaft; without, they are only worked out.
    #[arg(long)]
    pub keep: bool,
    /// Take the readings that were kept back.
    #[arg(long, conflicts_with_all = ["cpm", "deflection", "keep"])]
    pub take_back: bool,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Two figures with a sign of equality between them.
pub(super) fn pair(text: &str) -> Result<(f64, f64), String> {
    let read = |part: &str| part.trim().parse::<f64>().ok().filter(|value| value.is_finite());
    let (held, value) = text.split_once('=').ok_or("write it as HELD=VALUE, such as 127=262.4")?;
    read(held).zip(read(value)).ok_or_else(|| "write two numbers, such as 127=262.4".to_owned())
}
