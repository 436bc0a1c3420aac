//! The outlook of a club: lines on one axis that may be compared. Where it finishes as it stands, how narrow the readings
//! to come would make that, and where the first advice would bring it.

use maud::{Markup, html};
use words::Words;

use super::layout::{Scale, num, places};

/// What a line stands for.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum OutlookKind {
    /// As it stands: solid.
    #[default]
    Stands,
    /// Holds only if the readings to come are taken: dashed.
    IfRead,
    /// With a change of mass: an arrow from where it stands.
    Advised,
}

/// One line.
#[derive(Debug, Clone, Default)]
pub struct OutlookLine {
    /// What it stands for.
    pub kind: OutlookKind,
    /// In words: `as it stands`, `tip 3 g`.
    pub label: String,
    /// Finish minus target, in points.
    pub centre_points: f64,
    /// How far the finish may lie from `centre_points` either way, in points, with 95 % probability.
    pub half_band_points: f64,
    /// The finish as text: `D1.5 ± 0.4`.
    pub finish: String,
    /// How likely inside: `2 in 10`; empty where it cannot be compared with the others.
    pub chance: String,
}

/// The outlook of one club.
#[derive(Debug, Clone, Default)]
pub struct OutlookView {
    /// What the picture shows, for screen readers.
    pub title: String,
    /// Lines from the top, the one that stands first.
    pub lines: Vec<OutlookLine>,
    /// Target, in points since A0.
    pub target_points: f64,
    /// Half the tolerance, in points.
    pub tolerance_points: f64,
}

/// Size of the picture of one line, in drawing units.
const LONG: f64 = 200.0;
const HIGH: f64 = 30.0;
/// Room kept free at either end.
const EDGE: f64 = 9.0;

/// Finite, or nothing.
fn finite(value: f64) -> f64 {
    if value.is_finite() { value } else { 0.0 }
}

/// How many points are shown either way: enough for every line, but the tolerance must stay visible.
fn reach(view: &OutlookView) -> f64 {
    let tolerance = tolerance(view);
    let most = view
        .lines
        .iter()
        .map(|line| finite(line.centre_points).abs() + finite(line.half_band_points).abs())
        .fold(0.0, f64::max);
    (most * 1.05).clamp(2.0 * tolerance, 8.0 * tolerance)
}

fn tolerance(view: &OutlookView) -> f64 {
    if view.tolerance_points > 0.0 { finite(view.tolerance_points).max(0.05) } else { 0.3 }
}

/// The lines under each other on one axis.
#[must_use]
pub fn outlook(w: &Words, view: &OutlookView) -> Markup {
    let reach = reach(view);
    let across = Scale::new(-reach, reach, EDGE, LONG - EDGE);
    let stands = view.lines.first().map_or(0.0, |line| finite(line.centre_points));
    html! {
        div.outlook aria-label=(view.title) role="group" {
            @for line in &view.lines {
                p.outlook-line.(class(line.kind)) {
                    span.outlook-label { (line.label) } " "
                    span.outlook-mark { (mark(line, &across, tolerance(view), stands)) } " "
                    span.outlook-finish { strong { (line.finish) } @if !line.chance.is_empty() { " " span { (line.chance) } } }
                }
            }
            (ticks(w, view, &across, reach))
        }
    }
}

const fn class(kind: OutlookKind) -> &'static str {
    match kind {
        OutlookKind::Stands => "stands",
        OutlookKind::IfRead => "if-read",
        OutlookKind::Advised => "advised",
    }
}

fn mark(line: &OutlookLine, across: &Scale, tolerance: f64, stands: f64) -> Markup {
    let within = |points: f64| across.at(points).clamp(EDGE - 5.0, LONG - EDGE + 5.0);
    let (centre, half) = (finite(line.centre_points), finite(line.half_band_points).abs());
    let advised = line.kind == OutlookKind::Advised;
    let y = if advised { HIGH * 0.66 } else { HIGH / 2.0 };
    let x = within(centre);
    html! {
        svg viewBox={ "0 0 " (LONG) " " (HIGH) } aria-hidden="true" focusable="false" {
            rect.zone x=(num(within(-tolerance))) y="0" width=(num(within(tolerance) - within(-tolerance))) height=(HIGH) {}
            line.aim x1=(num(across.at(0.0))) x2=(num(across.at(0.0))) y1="0" y2=(HIGH) {}
            line.band x1=(num(within(centre - half))) x2=(num(within(centre + half))) y1=(num(y)) y2=(num(y)) {}
            polygon.diamond points=(places(&[(x - 6.0, y), (x, y - 7.0), (x + 6.0, y), (x, y + 7.0)])) {}
            @let (from, to) = (within(stands), x);
            @if advised && (to - from).abs() > 6.0 {
                @let way = (to - from).signum();
                line.change x1=(num(from)) x2=(num(to - way * 6.0)) y1="5" y2="5" {}
                polygon.change points=(places(&[(to, 5.0), (to - way * 8.0, 1.0), (to - way * 8.0, 9.0)])) {}
            }
        }
    }
}

/// The letters under the lines.
fn ticks(w: &Words, view: &OutlookView, across: &Scale, reach: f64) -> Markup {
    let target = finite(view.target_points);
    let step = [0.5, 1.0, 2.0, 5.0, 10.0].into_iter().find(|step| *step * across.per_unit() >= 44.0).unwrap_or(20.0);
    let low = ((target - reach) / step).ceil() as i64;
    let high = ((target + reach) / step).floor() as i64;
    html! {
        p.outlook-line.outlook-axis aria-hidden="true" {
            span.outlook-mark { svg viewBox={ "0 0 " (LONG) " 22" } focusable="false" {
                line.floor x1="0" x2=(LONG) y1="1" y2="1" {}
                @for at in low..=high {
                    @let points = at as f64 * step;
                    @let x = across.at(points - target);
                    line.floor x1=(num(x)) x2=(num(x)) y1="1" y2="6" {}
                    @if (16.0..=LONG - 16.0).contains(&x) { text x=(num(x)) y="20" { (w.swing_weight_short(points)) } }
                }
            } }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn view() -> OutlookView {
        let line = |kind, centre_points, half_band_points, chance: &str| OutlookLine {
            kind,
            label: "as it stands".to_owned(),
            centre_points,
            half_band_points,
            finish: "D1.5 ± 0.4".to_owned(),
            chance: chance.to_owned(),
        };
        OutlookView {
            title: "where it finishes".to_owned(),
            lines: vec![
                line(OutlookKind::Stands, -0.5, 0.4, "2 in 10"),
                line(OutlookKind::IfRead, -0.5, 0.2, ""),
                line(OutlookKind::Advised, 0.0, 0.4, "9 in 10"),
            ],
            target_points: 32.0,
            tolerance_points: 0.3,
        }
    }

    #[test]
    fn all_lines_have_one_scale() {
        let view = view();
        let across = Scale::new(-reach(&view), reach(&view), EDGE, LONG - EDGE);
        // The widest of them reaches 0.9 points out, with a twentieth to spare.
        assert!((reach(&view) - 0.945).abs() < 1e-9);
        let text = outlook(&Words::english(Units::default()), &view).into_string();
        let middle = num(across.at(-0.5) - 6.0);
        assert_eq!(text.matches(&format!("points=\"{middle},")).count(), 2, "both stand at the same place: {text}");
        assert_eq!(text.matches("class=\"change\"").count(), 2, "one arrow: {text}");
        assert!(text.contains(">D2<") && text.contains("9 in 10"), "{text}");
    }

    #[test]
    fn what_is_far_off_stands_at_the_edge() {
        let mut view = view();
        view.lines[0].centre_points = 40.0;
        view.lines[1].half_band_points = f64::NAN;
        view.tolerance_points = f64::NAN;
        let text = outlook(&Words::english(Units::default()), &view).into_string();
        assert!(!text.contains("NaN") && text.contains(&num(LONG - EDGE + 5.0)), "{text}");
    }
}
