//! A builder who says what he knows of his shop.

use crate::hands::Figures;
use crate::job::SimulatedJob;
use crate::settings::Settings;
use crate::shop::SimulatedShop;
use bench::learned::Learned;
use bench::told::{Sureness, ToldFigure, ToldOf};
use jiff::Timestamp;

/// What was learned, and what the builder says of his shop: the figures that a hand there works with.
pub(crate) fn told(
    settings: &Settings,
    shop: &SimulatedShop,
    job: &SimulatedJob,
    learned: &Learned,
    sure: Sureness,
) -> Learned {
    let figures = Figures::of(settings, shop, job);
    let mut learned = learned.clone();
    let mut tell = |of: ToldOf, model: &str, change_points: f64| {
        let (least, most) = of.limits_points();
        let size = change_points.abs().clamp(least, most);
        let change_points = if of.puts_on() { size } else { -size };
        let by = "builder".into();
        learned.tell(ToldFigure { of, model: model.into(), change_points, sure, by, at: Timestamp::UNIX_EPOCH });
    };
    tell(ToldOf::Joint, "ADHESIVE", figures.joint_adds);
    if !job.new_models {
        tell(ToldOf::Grip, &crate::models::grip_code(0), figures.grip_takes);
    }
    tell(ToldOf::Wrap, "TAPE", figures.wrap_takes);
    learned
}
