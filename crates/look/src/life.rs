//! The life of a club: its swing weight from entry to entry.

use super::layout::{Scale, num, places};
use maud::{Markup, html};

/// One entry of the life.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct LifePoint {
    /// Swing weight that was read then, in points; none where it was not read.
    pub points: Option<f64>,
    /// The same as a builder reads it.
    pub above: Option<String>,
    /// What happened.
    pub below: String,
    /// When, as a person reads a date.
    pub day: String,
}

/// What a [`life`] shows.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct LifeView {
    /// What the picture shows, for those who do not see it.
    pub title: String,
    /// The entries in order; the last six are drawn.
    pub points: Vec<LifePoint>,
    /// Where it is to be and how far off is still good, in points; none where nothing was asked.
    pub aim: Option<(f64, f64)>,
}

/// Entries that fit beside each other, each as wide as its words ask for.
const MOST: usize = 6;
const EACH: f64 = 140.0;
/// A phone shows this much.
const LEAST: f64 = 330.0;
const HEIGHT: f64 = 210.0;
const FLOOR: f64 = 150.0;

/// The picture. Nothing is drawn where the swing weight was read at fewer than one of the entries.
#[must_use]
pub fn life(view: &LifeView) -> Markup {
    let from = view.points.len().saturating_sub(MOST);
    let entries = &view.points[from..];
    let read: Vec<f64> = entries.iter().filter_map(|p| p.points).filter(|p| p.is_finite()).collect();
    if read.is_empty() {
        return html! {};
    }
    let aim = view.aim.map(|(at, within)| [at - within, at + within]);
    let all = || read.iter().copied().chain(aim.into_iter().flatten());
    let (low, high) = all().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), x| (l.min(x), h.max(x)));
    let margin = 0.2 * (high - low).max(1.0);
    let up = Scale::new(low - margin, high + margin, FLOOR - 12.0, 30.0);
    let width = (EACH * entries.len() as f64 + 40.0).max(LEAST);
    let across = Scale::new(0.0, entries.len() as f64, 20.0, width - 20.0);
    let place = |i: usize| across.at(i as f64 + 0.5);
    // The club keeps what it read until the next entry: a line with steps.
    let mut line: Vec<(f64, f64)> = Vec::new();
    for (i, entry) in entries.iter().enumerate() {
        let Some(points) = entry.points else { continue };
        if let Some(&(_, y)) = line.last() {
            line.push((place(i), y));
        }
        line.push((place(i), up.at(points)));
    }
    html! {
        figure.funnel.club-life tabindex="0" {
            svg viewBox={ "0 0 " (num(width)) " " (HEIGHT) } width=(num(width)) role="img" aria-label=(view.title) {
                @if let (Some([a, b]), Some((at, _))) = (aim, view.aim) {
                    rect.zone x="20" width=(num(width - 40.0)) y=(num(up.at(b))) height=(num(up.at(a) - up.at(b))) {}
                    line.aim x1="20" x2=(num(width - 20.0)) y1=(num(up.at(at))) y2=(num(up.at(at))) {}
                }
                line x1="20" x2=(num(width - 20.0)) y1=(num(FLOOR)) y2=(num(FLOOR)) {}
                polyline.centre points=(places(&line)) {}
                @for (i, entry) in entries.iter().enumerate() {
                    @if let (Some(points), Some(words)) = (entry.points, &entry.above) {
                        line.here x1=(num(place(i))) x2=(num(place(i))) y1=(num(up.at(points))) y2=(num(FLOOR)) {}
                        circle.reading cx=(num(place(i))) cy=(num(up.at(points))) r="5" {}
                        (figure_at(place(i), up.at(points), view.aim.map(|(at, _)| up.at(at)), words))
                    }
                    circle.reading cx=(num(place(i))) cy=(num(FLOOR)) r="4" {}
                    text.strong x=(num(place(i))) y=(num(FLOOR + 24.0)) font-size="16" { (entry.below) }
                    text x=(num(place(i))) y=(num(FLOOR + 45.0)) font-size="15" { (entry.day) }
                }
            }
        }
    }
}

/// A figure over its point; beside it where it would lie on the line of the aim.
fn figure_at(x: f64, y: f64, aim_y: Option<f64>, words: &str) -> Markup {
    if aim_y.is_some_and(|aim| (y - 27.0..y - 8.0).contains(&aim)) {
        html! { text.strong.start x=(num(x + 14.0)) y=(num(y + 6.0)) font-size="17" { (words) } }
    } else {
        html! { text.strong x=(num(x)) y=(num(y - 16.0)) font-size="17" { (words) } }
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn a_figure_keeps_off_the_line_of_its_aim() {
        let at = |aim| figure_at(100.0, 80.0, aim, "D1.8").into_string();
        assert!(at(None).contains("y=\"64\"") && at(Some(80.0)).contains("y=\"64\""), "{}", at(None));
        let beside = at(Some(62.0));
        assert!(beside.contains("x=\"114\"") && beside.contains("y=\"86\""), "{beside}");
    }

    use super::*;

    fn point(points: Option<f64>) -> LifePoint {
        LifePoint { points, above: points.map(|p| format!("<{p}>")), below: "read".into(), day: "1 Mar".into() }
    }

    #[test]
    fn what_was_never_read_is_not_drawn() {
        assert_eq!(life(&LifeView { points: vec![point(None)], ..LifeView::default() }).into_string(), "");
        assert_eq!(life(&LifeView::default()).into_string(), "");
    }

    #[test]
    fn an_entry_without_a_reading_leaves_the_line_where_it_is() {
        let view = LifeView {
            title: "a & b".into(),
            points: vec![point(Some(32.0)), point(None), point(Some(31.6))],
            aim: Some((32.0, 0.3)),
        };
        let text = life(&view).into_string();
        assert!(text.contains("a &amp; b") && text.contains("&lt;32&gt;"), "{text}");
        let line = text.split("points=\"").nth(1).unwrap().split('"').next().unwrap();
        // Two readings: there, along, and up or down.
        assert_eq!(line.split(' ').count(), 3, "{line}");
    }
}
