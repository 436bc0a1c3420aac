//! Heads as received that cannot be bent far enough.

use quantity::decimal;
use trade::head::HeadModel;

/// How far off its figure a head may end without a word, in degrees: what makers allow themselves. Common practice,
/// no source.
const NEAR_DEG: f64 = 1.0;

/// What is to be said of a head's loft and lie as received: how far the maker lets it be bent, where the model's own
/// figure lies beyond. Said at the weigh-in, since a head is bent for nothing once it is glued and cannot reach.
#[must_use]
pub fn bend_doubts(head: &HeadModel, number: &str, loft_deg: Option<f64>, lie_deg: Option<f64>) -> Vec<String> {
    let Some(own) = head.number(number) else { return Vec::new() };
    let limit = head.bend_limit_deg;
    let one = |what: &str, received: Option<f64>, nominal: f64| {
        let received = received?;
        let apart = (nominal - received).abs();
        if !received.is_finite() || apart <= limit + NEAR_DEG + 1e-9 {
            return None;
        }
        let figure = |deg: f64| format!("{}°", decimal(deg, 1));
        let range = if limit > 0.0 {
            format!("bent it reaches {} to {} only", figure(received - limit), figure(received + limit))
        } else {
            "it must not be bent".to_owned()
        };
        Some(format!(
            "its {what} is {}, {} off the model's {}: {range}",
            figure(received),
            figure(apart),
            figure(nominal)
        ))
    };
    [one("loft", loft_deg, own.loft_deg), one("lie", lie_deg, own.lie_deg)].into_iter().flatten().collect()
}
