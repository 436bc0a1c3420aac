//! How well the shop meets its tolerances, month by month and model by model.

use estimation::capability::{Capability, of_sample};
use jiff::civil::Date;
use serde::Serialize;
use std::collections::BTreeMap;
use utoipa::ToSchema;

use crate::held::BandsHeld;
use crate::record::Verdict;

/// Where one finished club came out.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// The day on which its job was finished.
    pub on: Date,
    /// Code of its head model.
    pub head_model: String,
    /// Swing weight as built minus what the sheet asks, points.
    pub deviation_points: f64,
    /// Half width of the tolerance, points.
    pub tolerance_points: f64,
    /// What its record says.
    pub verdict: Verdict,
}

/// The clubs of one month or one model.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CapabilityGroup {
    /// The month, for example `2026-03`, the code of the head model, or `all`.
    pub name: String,
    /// How many clubs.
    pub clubs: i64,
    /// Mean of what they came out beside their target, points.
    pub mean_points: f64,
    /// Clubs whose record says "in".
    pub inside: i64,
    /// Clubs whose record says "out".
    pub outside: i64,
    /// Clubs that are too close to say.
    pub too_close: i64,
    /// Cp and Cpk with their 95 % intervals, of the deviations as shares of each club's own tolerance (limits −1 and
    /// 1), so that clubs of different tolerances count together. None for fewer than two clubs, or clubs that are all
    /// alike.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capability: Option<Capability>,
}

/// Capability of the shop's finished clubs.
#[derive(Debug, Clone, PartialEq, Default, Serialize, ToSchema)]
pub struct ShopCapability {
    /// All clubs together; none where no club is finished.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub all: Option<CapabilityGroup>,
    /// By month, the earliest first.
    pub by_month: Vec<CapabilityGroup>,
    /// By head model, in the order of their codes.
    pub by_model: Vec<CapabilityGroup>,
    /// How often the forecasts of the shop's readings have held: the tool's own honesty.
    pub bands: BandsHeld,
}

/// Groups finished clubs and says how capable the shop is of their tolerances. Clubs without a tolerance are left out.
#[must_use]
pub fn capability(outcomes: &[Outcome]) -> ShopCapability {
    let sound: Vec<&Outcome> =
        outcomes.iter().filter(|o| o.tolerance_points > 0.0 && o.deviation_points.is_finite()).collect();
    let mut months: BTreeMap<String, Vec<&Outcome>> = BTreeMap::new();
    let mut models: BTreeMap<String, Vec<&Outcome>> = BTreeMap::new();
    for outcome in &sound {
        months.entry(outcome.on.strftime("%Y-%m").to_string()).or_default().push(outcome);
        models.entry(outcome.head_model.clone()).or_default().push(outcome);
    }
    let groups = |of: BTreeMap<String, Vec<&Outcome>>| of.iter().map(|(name, all)| group(name, all)).collect();
    ShopCapability {
        all: (!sound.is_empty()).then(|| group("all", &sound)),
        by_month: groups(months),
        by_model: groups(models),
        bands: BandsHeld::default(),
    }
}

fn group(name: &str, all: &[&Outcome]) -> CapabilityGroup {
    let count = |verdict| i64::try_from(all.iter().filter(|o| o.verdict == verdict).count()).unwrap_or(i64::MAX);
    let shares: Vec<f64> = all.iter().map(|o| o.deviation_points / o.tolerance_points).collect();
    CapabilityGroup {
        name: name.to_owned(),
        clubs: i64::try_from(all.len()).unwrap_or(i64::MAX),
        mean_points: all.iter().map(|o| o.deviation_points).sum::<f64>() / all.len().max(1) as f64,
        inside: count(Verdict::In),
        outside: count(Verdict::Out),
        too_close: count(Verdict::TooClose),
        capability: of_sample(&shares, -1.0, 1.0).ok(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outcome(month: i8, model: &str, deviation_points: f64, tolerance_points: f64) -> Outcome {
        let on = jiff::civil::date(2026, month, 9);
        Outcome { on, head_model: model.into(), deviation_points, tolerance_points, verdict: Verdict::In }
    }

    /// The handbook's example (NIST/SEMATECH e-Handbook 6.1.6: limits 8 and 20, mean 16, standard deviation 2, so Cp 1.0
    /// and Cpk 0.6667) as clubs: the middle 14 ± 6 becomes a target with a tolerance of 0.6 points.
    #[test]
    fn the_published_cpk_comes_out() {
        // Two values a distance s·√½ either side of the mean have the standard deviation s.
        let off = 2.0 / 2f64.sqrt();
        let clubs = [16.0 - off, 16.0 + off].map(|x| outcome(3, "SISKIN", (x - 14.0) / 10.0, 0.6));
        let found = capability(&clubs).all.unwrap();
        let capability = found.capability.unwrap();
        assert!((capability.cp - 1.0).abs() < 1e-9 && (capability.cpk - 0.666_667).abs() < 1e-5, "{capability:?}");
        assert!((found.mean_points - 0.2).abs() < 1e-12);
    }

    /// Clubs of ±0.3 and of ±0.6 count together by their share of the tolerance; groups keep months and models apart.
    #[test]
    fn groups_keep_months_and_models_apart() {
        let clubs = [
            outcome(4, "WREN", 0.3, 0.6),
            outcome(3, "SISKIN", -0.15, 0.3),
            outcome(4, "WREN", -0.3, 0.6),
            outcome(4, "SISKIN", 0.15, 0.3),
            outcome(4, "DRIVER", 0.1, 0.0),
        ];
        let found = capability(&clubs);
        let names = |groups: &[CapabilityGroup]| {
            groups.iter().map(|g| format!("{} {}", g.name, g.clubs)).collect::<Vec<_>>().join(", ")
        };
        assert_eq!(names(&found.by_month), "2026-03 1, 2026-04 3");
        assert_eq!(names(&found.by_model), "SISKIN 2, WREN 2");
        assert_eq!(found.by_month[0].capability, None, "one club has no scatter");
        // Shares −½ and ½ twice: standard deviation √(4·¼/3).
        let all = found.all.unwrap();
        assert!((all.capability.unwrap().cp - 2.0 / (6.0 * (1.0f64 / 3.0).sqrt())).abs() < 1e-12);
        assert_eq!((all.clubs, all.inside, all.outside), (4, 4, 0));
        assert_eq!(capability(&[]), ShopCapability::default());
    }
}
