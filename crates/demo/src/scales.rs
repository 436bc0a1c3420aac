//! The invented shop's check weights, gauges, and what its scales showed on the days before.

use desk::scale_health::{StudyPlan, shuffled_plan};
use jiff::civil::date;
use trade::error::TradeError;
use trade::gauge::{Gauge, Measures, Standard};

/// What the invented shop's instruments are held against.
pub(super) fn standards() -> Vec<Standard> {
    let weight = |key: &str, name: &str, value: f64, tolerance: f64| Standard {
        key: key.into(),
        name: name.into(),
        scale: "mass".into(),
        value,
        sd: 0.005,
        certified_on: Some(date(2025, 9, 15)),
        certificate: "HK-2291, Wexholme Calibrations".into(),
        tolerance: Some(tolerance),
        mass_g: None,
    };
    vec![
        weight("w200", "200 g weight", 200.0, 0.3),
        weight("w50", "50 g weight", 50.0, 0.3),
        Standard {
            key: "reed".into(),
            name: "Steel reed".into(),
            scale: "frequency".into(),
            value: 255.0,
            sd: 0.2,
            certified_on: Some(date(2025, 11, 3)),
            certificate: "own, mean of ten".into(),
            tolerance: Some(1.0),
            mass_g: None,
        },
    ]
}

/// The other gauges of the invented shop.
pub(super) fn gauges() -> Vec<Gauge> {
    vec![Gauge {
        key: "frequency".into(),
        name: "frequency gauge".into(),
        measures: Measures::Frequency,
        display_step: 0.1,
        noise_sd: 0.3,
        offset_sd: 0.2,
    }]
}

/// A check of the days before.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DemoCheck {
    /// Key of the scale.
    pub scale: &'static str,
    /// Key of the check weight.
    pub standard: &'static str,
    /// How many days ago.
    pub days_ago: i64,
    /// What the scale showed too much, in its unit.
    pub error: f64,
}

/// What the balance scale showed too much, day by day.
const SWING_WEIGHT: [f64; 26] = [
    0.0, 0.1, -0.1, 0.0, 0.1, 0.0, -0.1, 0.1, 0.0, 0.2, 0.0, -0.1, 0.0, 0.1, 0.0, 0.0, 0.1, -0.1, 0.0, 0.1, 0.0, -0.1,
    0.1, 0.0, 0.1, 0.0,
];

/// What the gram scale showed too much, day by day.
const GRAM: [f64; 26] = [
    0.0, 0.0, 0.1, 0.0, -0.1, 0.0, 0.0, 0.1, 0.0, 0.0, 0.1, 0.0, 0.0, 0.0, 0.1, 0.0, -0.1, 0.0, 0.1, 0.0, 0.0, 0.1,
    0.0, 0.6, 0.6, 0.7,
];

/// The checks of the last weeks, the earliest first: the balance scale is sound; something happened to the gram scale
/// three days ago.
#[must_use]
pub fn checks() -> Vec<DemoCheck> {
    let days = |i: usize| 26 - i64::try_from(i).unwrap_or(0);
    let of = |scale, standard, errors: &[f64; 26]| -> Vec<DemoCheck> {
        let all = errors.iter().enumerate();
        all.map(|(i, error)| DemoCheck { scale, standard, days_ago: days(i), error: *error }).collect()
    };
    let mut all = of("balance", "check_weight", &SWING_WEIGHT);
    all.extend(of("mass", "w200", &GRAM));
    all.push(DemoCheck { scale: "frequency", standard: "reed", days_ago: 5, error: 0.2 });
    all
}

/// Heads of one number, a few grams apart.
const MASS_G: [f64; 10] = [254.2, 256.8, 255.1, 257.9, 253.4, 256.0, 258.6, 254.9, 255.7, 257.2];

/// A gauge study of the gram scale that was finished two weeks ago, with its readings.
///
/// # Errors
/// None: the study is sound.
pub fn study() -> Result<(StudyPlan, Vec<f64>), TradeError> {
    let parts = (1..=10).map(|i| format!("H{i}")).collect();
    let builders = vec!["Ines".to_owned(), "Tobin".into(), "Marit".into()];
    let plan = shuffled_plan("mass", parts, builders, 3, 11)?;
    // A tenth of scatter that repeats no pattern anybody would see.
    let scatter = |i: usize| [0.0, 0.1, -0.1, 0.0, 0.0, 0.1, 0.0, -0.1, 0.1, 0.0, -0.1][(i * 7) % 11];
    let hand = [0.0, 0.0, 0.1];
    let read = |(i, step): (usize, &desk::scale_health::StudyStep)| {
        let shown: f64 = MASS_G[step.part] + hand[step.builder] + scatter(i);
        (shown * 10.0).round() / 10.0
    };
    let readings = plan.order.iter().enumerate().map(read).collect();
    Ok((plan, readings))
}
