//! The chart of a scale's checks: what it shows too much, check by check, over how far one is from the next.

use maud::{Markup, html};
use words::{Amount, Words, text};

use super::layout::{Scale, num, places};

/// One check.
#[derive(Debug, Clone, Default)]
pub struct CheckMark {
    /// What the scale showed too much.
    pub error: f64,
    /// How far from the check before; none for the first.
    pub range: Option<f64>,
    /// Speaks against the scale: outside its tolerance, or the end of a run.
    pub speaks: bool,
    /// The range lies beyond its limit.
    pub jump: bool,
    /// The limits were computed from it.
    pub in_base: bool,
    /// The day: `3 Mar`.
    pub day: String,
    /// What it says in words, for those who do not see the picture; empty for a plain one.
    pub words: String,
}

/// What a [`check_chart`] shows.
#[derive(Debug, Clone, Default)]
pub struct CheckChartView {
    /// Identity in the page.
    pub id: String,
    /// What the picture shows.
    pub title: String,
    /// The checks in order.
    pub marks: Vec<CheckMark>,
    /// Half width of the tolerance.
    pub tolerance: f64,
    /// Centre line with its lower and upper limit; none while there are too few checks.
    pub limits: Option<(f64, f64, f64)>,
    /// Upper limit of a range.
    pub range_upper: Option<f64>,
    /// What sort of figure an error is.
    pub amount: Option<Amount>,
    /// Decimals of the figures.
    pub decimals: u8,
}

#[derive(Clone, Copy)]
struct Paper {
    name: &'static str,
    width: f64,
    height: f64,
    ranges: f64,
    left: f64,
    most: usize,
    size: f64,
}

const WIDE: Paper = Paper { name: "wide", width: 720.0, height: 250.0, ranges: 92.0, left: 74.0, most: 60, size: 15.0 };
const NARROW: Paper =
    Paper { name: "narrow", width: 350.0, height: 210.0, ranges: 84.0, left: 74.0, most: 24, size: 14.0 };

/// The picture with its table for screen readers; words where there is nothing to draw.
#[must_use]
pub fn check_chart(w: &Words, view: &CheckChartView) -> Markup {
    let sound: Vec<&CheckMark> = view.marks.iter().filter(|m| m.error.is_finite()).collect();
    html! {
        figure.check-chart #(view.id) {
            @if sound.is_empty() { p.hint { (w.text("check-chart-none")) } }
            @else {
                (drawing(w, view, &sound, WIDE)) (drawing(w, view, &sound, NARROW))
                div.hidden { (list(w, view)) }
                figcaption.hint { (key(w, view)) }
            }
        }
    }
}

fn key(w: &Words, view: &CheckChartView) -> Markup {
    let limits = if view.limits.is_some() { "check-chart-limits" } else { "check-chart-no-limits" };
    html! {
        (w.text("check-chart-tolerance")) " " (w.text(limits)) " "
        @if view.marks.iter().any(|m| m.speaks) { (w.text("check-chart-red")) " " }
        (w.text("check-chart-below"))
    }
}

/// How far the drawing reaches either way: all of it, but never so far that the tolerance vanishes.
fn reach(view: &CheckChartView, marks: &[&CheckMark]) -> f64 {
    let limits = view.limits.map_or(0.0, |(_, low, high)| low.abs().max(high.abs()));
    let base = view.tolerance.abs().max(limits).max(1e-9);
    let most = marks.iter().map(|m| m.error.abs()).fold(base, f64::max);
    (most * 1.15).min(base * 4.0)
}

fn drawing(w: &Words, view: &CheckChartView, all: &[&CheckMark], paper: Paper) -> Markup {
    let marks = &all[all.len().saturating_sub(paper.most)..];
    let reach = reach(view, marks);
    let (top, bottom) = (14.0, paper.height - 10.0);
    let up = Scale::new(-reach, reach, bottom, top);
    let (left, right) = (paper.left + 14.0, paper.width - 22.0);
    let last = marks.len().saturating_sub(1).max(1) as f64;
    let across = Scale::new(0.0, last, left, right);
    let spot = |i: usize| (across.at(i as f64), up.at(marks[i].error.clamp(-reach, reach)));
    let line: Vec<(f64, f64)> = (0..marks.len()).map(spot).collect();
    let zone = view.tolerance.abs().min(reach);
    let whole = paper.height + paper.ranges + 24.0;
    let title = format!("{}-{}-t", view.id, paper.name);
    html! {
        svg class={ "check-" (paper.name) } viewBox={ "0 0 " (paper.width) " " (whole) } role="img" aria-labelledby=(title) {
            title id=(title) { (view.title) }
            rect.zone x=(num(paper.left)) width=(num(paper.width - paper.left - 8.0)) y=(num(up.at(zone))) height=(num(up.at(-zone) - up.at(zone))) {}
            line.aim x1=(num(paper.left)) x2=(num(paper.width - 8.0)) y1=(num(up.at(0.0))) y2=(num(up.at(0.0))) {}
            @if let Some((mean, low, high)) = view.limits {
                line.centre x1=(num(paper.left)) x2=(num(paper.width - 8.0)) y1=(num(up.at(mean))) y2=(num(up.at(mean))) {}
                @for limit in [low, high] {
                    line.limit x1=(num(paper.left)) x2=(num(paper.width - 8.0)) y1=(num(up.at(limit))) y2=(num(up.at(limit))) {}
                }
            }
            g.levels { @for (value, y) in level_labels(w, view, &up, reach, paper) {
                text x=(num(paper.left - 7.0)) y=(num(y)) { (value) }
            } }
            polyline.run points=(places(&line)) {}
            @for (i, mark) in marks.iter().enumerate() {
                @let (x, y) = spot(i);
                circle.check.base[mark.in_base].speaks[mark.speaks] cx=(num(x)) cy=(num(y)) r=(if mark.speaks { "6.5" } else { "5" }) {}
            }
            @if let Some(mark) = marks.last() {
                @let (x, y) = spot(marks.len() - 1);
                // On the side where the checks before it are not.
                @let above = (0..marks.len() - 1).rev().take(4).any(|i| spot(i).1 < y - 1.0);
                @let over = y > top + 10.0 && !above;
                text.last x=(num((x + 12.0).min(paper.width - 8.0))) y=(num(if over { y - 12.0 } else { y + 24.0 })) { (signed(w, view, mark.error, view.decimals)) }
            }
            (ranges(w, view, marks, &across, paper))
            text.first x=(num(left - 8.0)) y=(num(whole - 4.0)) { (marks.first().map_or("", |m| m.day.as_str())) }
            @if marks.len() > 1 {
                text.last x=(num(paper.width - 8.0)) y=(num(whole - 4.0)) { (marks.last().map_or("", |m| m.day.as_str())) }
            }
        }
    }
}

/// Labels at the left that do not touch each other: zero first, then the tolerance, then the limits.
fn level_labels(w: &Words, view: &CheckChartView, up: &Scale, reach: f64, paper: Paper) -> Vec<(String, f64)> {
    let tolerance = view.tolerance.abs();
    let limits = view.limits.map_or(Vec::new(), |(_, low, high)| vec![high, low]);
    let mut shown: Vec<(String, f64)> = vec![(zero(w, view), up.at(0.0) + 5.0)];
    for value in [tolerance, -tolerance].into_iter().chain(limits).filter(|v| v.abs() <= reach) {
        let y = up.at(value) + 5.0;
        if shown.iter().all(|(_, other)| (other - y).abs() > paper.size + 1.0) {
            shown.push((signed(w, view, value, view.decimals.max(1)), y));
        }
    }
    shown
}

/// The lower part: how far one check is from the next.
fn ranges(w: &Words, view: &CheckChartView, marks: &[&CheckMark], across: &Scale, paper: Paper) -> Markup {
    let floor = paper.height + paper.ranges;
    let most = marks.iter().filter_map(|m| m.range).chain(view.range_upper).fold(0.0, f64::max).max(1e-9);
    let up = Scale::new(0.0, most * 1.15, floor, paper.height + 12.0);
    html! {
        g.ranges {
            line.floor x1=(num(paper.left)) x2=(num(paper.width - 8.0)) y1=(num(floor)) y2=(num(floor)) {}
            @if let Some(limit) = view.range_upper {
                line.limit x1=(num(paper.left)) x2=(num(paper.width - 8.0)) y1=(num(up.at(limit))) y2=(num(up.at(limit))) {}
                text.level x=(num(paper.left - 7.0)) y=(num(up.at(limit) + 5.0)) { (plain(w, view, limit, view.decimals.max(1))) }
            }
            @for (i, mark) in marks.iter().enumerate() {
                @if let Some(range) = mark.range.filter(|r| r.is_finite()) {
                    @let x = across.at(i as f64);
                    line.range.jump[mark.jump] x1=(num(x)) x2=(num(x)) y1=(num(floor)) y2=(num(up.at(range).min(floor - 1.5))) {}
                }
            }
        }
    }
}

/// A figure without its unit, in the reader's.
fn plain(w: &Words, view: &CheckChartView, value: f64, decimals: u8) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    w.amount_figure(view.amount.unwrap_or(Amount::Times), value, decimals)
}

/// The same with its sign.
fn signed(w: &Words, view: &CheckChartView, value: f64, decimals: u8) -> String {
    words::signed(plain(w, view, value, decimals), value)
}

/// Zero with the unit of the figures beside it.
fn zero(w: &Words, view: &CheckChartView) -> String {
    view.amount.map_or_else(|| "0".to_owned(), |amount| w.amount_whole(amount, 0))
}

fn list(w: &Words, view: &CheckChartView) -> Markup {
    html! {
        table {
            caption { (text!(w, "check-chart-caption", title = view.title, unit = view.amount.map_or_else(String::new, |a| w.amount_sign(a)))) }
            thead { tr {
                th scope="col" { (w.text("check-chart-day")) }
                th scope="col" { (w.text("check-chart-error")) }
                th scope="col" { (w.text("check-chart-range")) }
                th scope="col" { (w.text("check-chart-says")) }
            } }
            tbody { @for mark in &view.marks {
                tr {
                    th scope="row" { (mark.day) }
                    td { (signed(w, view, mark.error, view.decimals)) }
                    td { @if let Some(range) = mark.range {
                        @let range = plain(w, view, range, view.decimals);
                        @if mark.jump { (text!(w, "check-chart-jump", range = range)) } @else { (range) }
                    } }
                    td { (mark.words) }
                }
            } }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    fn view(errors: &[f64]) -> CheckChartView {
        let mark = |(i, error): (usize, &f64)| CheckMark {
            error: *error,
            range: (i > 0).then(|| (error - errors[i - 1]).abs()),
            day: format!("{} Mar", i + 1),
            ..CheckMark::default()
        };
        CheckChartView {
            id: "c".into(),
            title: "Checks with <b>".into(),
            marks: errors.iter().enumerate().map(mark).collect(),
            tolerance: 0.3,
            amount: Some(Amount::Mass),
            decimals: 1,
            ..CheckChartView::default()
        }
    }

    #[test]
    fn a_wild_check_stays_in_the_picture_and_the_tolerance_visible() {
        let text = check_chart(&w(), &view(&[0.0, 0.1, 40.0, f64::NAN, 0.1])).into_string();
        assert!(!text.contains("NaN") && !text.contains("inf") && !text.contains("<b>"), "{text}");
        let heights: Vec<f64> = text
            .split("cy=\"")
            .skip(1)
            .map(|rest| rest.split('"').next().unwrap_or_default().parse().expect("a figure"))
            .collect();
        assert!(heights.iter().all(|y| (10.0..=WIDE.height).contains(y)), "{heights:?}");
    }

    #[test]
    fn what_speaks_against_it_is_said_in_words_as_well() {
        let mut one = view(&[0.0, 0.6]);
        one.marks[1].speaks = true;
        one.marks[1].words = "outside its tolerance".into();
        let text = check_chart(&w(), &one).into_string();
        assert!(text.contains("check speaks") || text.contains("check  speaks") || text.contains("speaks\""), "{text}");
        assert!(text.contains("outside its tolerance") && text.contains("Red: out of control"), "{text}");
        assert!(check_chart(&w(), &CheckChartView::default()).into_string().contains("No check yet"));
    }
}
