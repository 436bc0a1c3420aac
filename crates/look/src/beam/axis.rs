//! The letter scale under the club: the target with its tolerance, where the club stands now, a step for each piece
//! still to come, and where it will finish with its band.

use maud::{Markup, html};
use words::{Words, text};

use super::super::layout::{Scale, num, places, spread, text_width};
use super::{BeamView, Paper};

/// Points farther than this from the target are told by an arrow at the edge instead of a place.
const NEAR_POINTS: f64 = 25.0;
/// Steps drawn one by one; more are drawn as one.
const STEPS_SHOWN: usize = 4;

/// The finished scale.
pub(super) struct Axis {
    pub(super) markup: Markup,
    pub(super) bottom_y: f64,
}

/// What a piece still to come will do: from where to where.
#[derive(Debug, Clone, PartialEq)]
struct Rung {
    label: String,
    from: f64,
    to: f64,
}

/// The steps from where the club stands to its finish; what the pieces do not explain comes last.
fn rungs(w: &Words, view: &BeamView) -> Vec<Rung> {
    let (Some(now), Some(finish)) = (finite(view.now_points), finite(view.forecast_points)) else { return Vec::new() };
    let mut coming: Vec<(String, f64)> = view
        .pieces
        .iter()
        .filter(|piece| !piece.on && piece.points.is_finite() && piece.points.abs() >= 0.05)
        .map(|piece| (piece.label.clone(), piece.points))
        .collect();
    let rest = finish - now - coming.iter().map(|(_, points)| points).sum::<f64>();
    if rest.abs() >= 0.05 {
        let label = &view.remainder_label;
        coming.push((if label.is_empty() { w.text("beam-rest") } else { label.clone() }, rest));
    }
    if coming.len() > STEPS_SHOWN {
        let more = coming.split_off(STEPS_SHOWN - 1);
        coming.push((text!(w, "beam-more", n = more.len()), more.iter().map(|(_, points)| points).sum()));
    }
    let mut at = now;
    coming
        .into_iter()
        .map(|(label, points)| {
            let from = at;
            at += points;
            Rung { label: text!(w, "beam-rung", piece = label, points = w.signed(points, 1)), from, to: at }
        })
        .collect()
}

fn finite(value: Option<f64>) -> Option<f64> {
    value.filter(|value| value.is_finite())
}

fn positive(value: f64) -> f64 {
    if value.is_finite() { value.abs() } else { 0.0 }
}

/// The readable marks of a view: what is near enough to the target to have a place.
struct Marks {
    target: Option<f64>,
    tolerance: f64,
    now: Option<f64>,
    finish: Option<f64>,
    band: f64,
    rungs: Vec<Rung>,
    middle: f64,
}

impl Marks {
    fn new(w: &Words, view: &BeamView) -> Self {
        let (target, now) = (finite(view.target_points), finite(view.now_points));
        let finish = finite(view.forecast_points);
        let middle = target.or(finish).or(now).unwrap_or(30.0);
        let near = |value: &f64| (value - middle).abs() <= NEAR_POINTS;
        let mut rungs = rungs(w, view);
        if rungs.iter().any(|rung| !near(&rung.from) || !near(&rung.to)) {
            rungs.clear();
        }
        let (tolerance, band) = (positive(view.tolerance_points), positive(view.forecast_band_points));
        Self { target, tolerance, now, finish, band, rungs, middle }
    }

    /// Smallest and largest place that must be seen.
    fn range(&self) -> (f64, f64) {
        let spread = |value: Option<f64>, half: f64| value.into_iter().flat_map(move |v| [v - half, v + half]);
        let all = spread(self.target, self.tolerance)
            .chain(spread(self.finish, self.band))
            .chain(self.now)
            .chain(self.rungs.iter().map(|rung| rung.to))
            .filter(|value| (value - self.middle).abs() <= NEAR_POINTS);
        let (low, high) = all.fold((self.middle, self.middle), |(low, high), value| (low.min(value), high.max(value)));
        let lacking = (4.0 - (high - low)).max(0.0) / 2.0;
        (low - lacking, high + lacking)
    }
}

/// Points to drawing units, with `room` left at either side for labels.
fn scale(range: (f64, f64), room: f64, paper: Paper) -> Scale {
    let inner = Scale::new(range.0, range.1, paper.margin + room, paper.width - paper.margin - room);
    let aside = room / inner.per_unit();
    Scale::new(range.0 - aside, range.1 + aside, paper.margin, paper.width - paper.margin)
}

/// Draws the scale from `top_y` down.
pub(super) fn axis(w: &Words, view: &BeamView, top_y: f64, paper: Paper) -> Axis {
    let marks = Marks::new(w, view);
    if paper.narrow { narrow_axis(w, &marks, top_y, paper) } else { wide_axis(w, &marks, top_y, paper) }
}

fn texts(w: &Words, marks: &Marks) -> (Option<String>, Option<String>, Option<String>) {
    let some = |half: f64| (half > 0.0).then_some(half);
    let target = marks.target.map(|target| {
        let tolerance = some(marks.tolerance).map(|half| w.printed(&num((half * 100.0).round() / 100.0)));
        text!(w, "beam-axis-target", target = w.swing_weight_short(target), tolerance = tolerance)
    });
    let now = marks.now.map(|now| text!(w, "beam-axis-now", now_points = now));
    let finish = marks.finish.map(|finish| {
        // The band of a forecast, as everywhere at the bench: one decimal, and never "± 0.0".
        text!(w, "beam-axis-finish", finish_points = finish, band_points = some(marks.band).map(|half| half.max(0.05)))
    });
    (target, now, finish)
}

fn wide_axis(w: &Words, marks: &Marks, top_y: f64, paper: Paper) -> Axis {
    let (target_text, now_text, finish_text) = texts(w, marks);
    let labels = marks.rungs.iter().map(|rung| rung.label.clone());
    let widest = labels
        .chain([&target_text, &now_text, &finish_text].into_iter().flatten().cloned())
        .map(|text| text_width(&text, paper.size, true))
        .fold(60.0, f64::max);
    let scale = scale(marks.range(), (widest + 18.0).min(paper.width * 0.3), paper);
    let lane = 18.0;
    let finish_y = top_y + lane * (marks.rungs.len() as f64 + 1.0);
    let axis_y = finish_y + 13.0;
    // Now and what is to come are told on one side, the target on the other.
    let right = marks.now.unwrap_or(marks.middle) >= marks.target.unwrap_or(marks.middle);
    let (side, other) = if right { (1.0, -1.0) } else { (-1.0, 1.0) };
    let markup = html! {
        g.axis {
            (zone(marks, &scale, top_y - 12.0, axis_y))
            @if let (Some(target), Some(text)) = (marks.target, &target_text) {
                (beside(scale.at(target) + other * (marks.tolerance * scale.per_unit()).max(2.0), top_y, other, 8.0, "target-text", text))
            }
            @if let (Some(now), Some(text)) = (marks.now, &now_text) { (now_mark(now, text, &scale, top_y, side, paper)) }
            @for (at, rung) in marks.rungs.iter().enumerate() {
                (rung_line(rung, &scale, top_y + lane * (at as f64 + 1.0), lane, side))
            }
            @if let (Some(finish), Some(text)) = (marks.finish, &finish_text) {
                (finish_mark(finish, marks.band, &scale, finish_y, paper))
                @let off = finish - marks.target.unwrap_or(finish);
                @let way = if off.abs() > 2.0 * marks.tolerance { off.signum() } else { other };
                @let edge = seen(scale.at(finish + way * marks.band), paper);
                // Beyond the edge there is room on the inner side only.
                @let way = if seen(scale.at(finish), paper) == scale.at(finish) { way } else { -way };
                (beside(edge, finish_y, way, 12.0, "finish-text", text))
            }
            (ticks(w, &scale, axis_y, paper))
        }
    };
    Axis { markup, bottom_y: axis_y + 26.0 }
}

fn narrow_axis(w: &Words, marks: &Marks, top_y: f64, paper: Paper) -> Axis {
    let (target_text, now_text, finish_text) = texts(w, marks);
    let scale = scale(marks.range(), 16.0, paper);
    let dot_y = top_y + 14.0;
    // The finish is told beside its band where there is room, else on a line of its own over it.
    let band = marks
        .finish
        .map(|finish| (seen(scale.at(finish - marks.band), paper), seen(scale.at(finish + marks.band), paper)));
    let finish_width = finish_text.as_ref().map_or(0.0, |text| text_width(text, paper.size, true)) + 16.0;
    let way = band.map_or(0.0, |(from, to)| {
        let way = if from > paper.width - to { -1.0 } else { 1.0 };
        if from.max(paper.width - to) > finish_width { way } else { 0.0 }
    });
    let finish_y = dot_y + if way == 0.0 && band.is_some() { 40.0 } else { 20.0 };
    let axis_y = finish_y + 14.0;
    // Both labels on one line, in the order of their marks, pushed apart where they would meet.
    let mut heads: Vec<(f64, &str, &String)> = Vec::new();
    heads.extend(
        marks.target.zip(target_text.as_ref()).map(|(at, text)| (seen(scale.at(at), paper), "target-text", text)),
    );
    heads.extend(marks.now.zip(now_text.as_ref()).map(|(at, text)| (seen(scale.at(at), paper), "now-text", text)));
    heads.sort_by(|a, b| a.0.total_cmp(&b.0));
    let wanted: Vec<f64> = heads.iter().map(|head| head.0).collect();
    let widths: Vec<f64> = heads.iter().map(|head| text_width(head.2, paper.size, true)).collect();
    let centres = spread(&wanted, &widths, 8.0, 2.0, paper.width - 2.0).unwrap_or(wanted);
    let markup = html! {
        g.axis {
            (zone(marks, &scale, top_y + 6.0, axis_y))
            @for (head, centre) in heads.iter().zip(&centres) {
                text class=(head.1) x=(num(*centre)) y=(num(top_y)) text-anchor="middle" { (head.2) }
            }
            @if let Some(now) = marks.now { (now_mark(now, "", &scale, dot_y, 1.0, paper)) }
            @if let (Some(now), Some(finish)) = (marks.now, marks.finish) {
                @if !marks.rungs.is_empty() {
                    (rung_line(&Rung { label: String::new(), from: now, to: finish }, &scale, dot_y, finish_y - dot_y, 1.0))
                }
            }
            @if let (Some(finish), Some(text)) = (marks.finish, &finish_text) {
                (finish_mark(finish, marks.band, &scale, finish_y, paper))
                @let (from, to) = band.unwrap_or_default();
                @if way == 0.0 {
                    // A text wider than the paper stands in the middle of it.
                    @let half = (finish_width / 2.0).min(paper.width / 2.0);
                    @let x = seen(scale.at(finish), paper).clamp(half, paper.width - half);
                    text.finish-text x=(num(x)) y=(num(finish_y - 14.0)) text-anchor="middle" { (text) }
                } @else {
                    (beside(if way > 0.0 { to } else { from }, finish_y, way, 12.0, "finish-text", text))
                }
            }
            (ticks(w, &scale, axis_y, paper))
        }
    };
    Axis { markup, bottom_y: axis_y + 24.0 }
}

/// Where a mark is drawn: at its place, or at the edge when it lies beyond.
fn seen(x: f64, paper: Paper) -> f64 {
    x.clamp(paper.margin, paper.width - paper.margin)
}

fn beside(x: f64, y: f64, way: f64, gap: f64, class: &str, text: &str) -> Markup {
    html! {
        text class=(class) x=(num(x + way * gap)) y=(num(y + 5.5)) text-anchor=(if way > 0.0 { "start" } else { "end" }) {
            (text)
        }
    }
}

fn zone(marks: &Marks, scale: &Scale, from_y: f64, to_y: f64) -> Markup {
    html! {
        @if let Some(target) = marks.target {
            @let half = (marks.tolerance * scale.per_unit()).max(1.0);
            rect.zone x=(num(scale.at(target) - half)) y=(num(from_y)) width=(num(2.0 * half)) height=(num(to_y - from_y)) {}
            line.aim x1=(num(scale.at(target))) x2=(num(scale.at(target))) y1=(num(from_y)) y2=(num(to_y)) {}
        }
    }
}

fn now_mark(now: f64, text: &str, scale: &Scale, y: f64, side: f64, paper: Paper) -> Markup {
    let x = seen(scale.at(now), paper);
    let beyond = scale.at(now) - x;
    html! {
        @if beyond.abs() > 0.5 {
            @let way = beyond.signum();
            polygon.now points=(places(&[(x + way * 7.0, y), (x - way * 5.0, y - 7.0), (x - way * 5.0, y + 7.0)])) {}
            @if !text.is_empty() { (beside(x, y, -way, 14.0, "now-text", text)) }
        } @else {
            circle.now cx=(num(x)) cy=(num(y)) r="6" {}
            @if !text.is_empty() { (beside(x, y, side, 13.0, "now-text", text)) }
        }
    }
}

/// One step: along its lane with an arrow head, then down to the next lane.
fn rung_line(rung: &Rung, scale: &Scale, y: f64, lane: f64, side: f64) -> Markup {
    let (from, to) = (scale.at(rung.from), scale.at(rung.to));
    let way = (to - from).signum();
    let head = (to - from).abs().min(8.0);
    let outer = if side > 0.0 { from.max(to) } else { from.min(to) };
    html! {
        line.rung x1=(num(from)) x2=(num(to - way * head)) y1=(num(y)) y2=(num(y)) {}
        polygon.rung-head points=(places(&[(to, y), (to - way * head, y - 4.0), (to - way * head, y + 4.0)])) {}
        line.drop x1=(num(to)) x2=(num(to)) y1=(num(y + 3.0)) y2=(num(y + lane - 3.0)) {}
        @if !rung.label.is_empty() { (beside(outer, y, side, 13.0, "rung-text", &rung.label)) }
    }
}

fn finish_mark(finish: f64, band: f64, scale: &Scale, y: f64, paper: Paper) -> Markup {
    let x = seen(scale.at(finish), paper);
    let (from, to) = (seen(scale.at(finish - band), paper), seen(scale.at(finish + band), paper));
    html! {
        line.band x1=(num(from)) x2=(num(to)) y1=(num(y)) y2=(num(y)) {}
        polygon.diamond points=(places(&[(x - 7.0, y), (x, y - 9.0), (x + 7.0, y), (x, y + 9.0)])) {}
    }
}

fn ticks(w: &Words, scale: &Scale, y: f64, paper: Paper) -> Markup {
    let least = if paper.narrow { 46.0 } else { 56.0 };
    let every = [1_i64, 2, 5, 10, 20].into_iter().find(|step| *step as f64 * scale.per_unit() >= least).unwrap_or(50);
    let low = ((paper.margin - scale.at(0.0)) / scale.per_unit()).ceil() as i64;
    let high = ((paper.width - paper.margin - scale.at(0.0)) / scale.per_unit()).floor() as i64;
    let small = scale.per_unit() >= 5.0;
    html! {
        line.axis-line x1=(num(paper.margin)) x2=(num(paper.width - paper.margin)) y1=(num(y)) y2=(num(y)) {}
        g.ticks {
            @for point in low..=high {
                @let x = scale.at(point as f64);
                @let labelled = point % every == 0;
                @if labelled || small {
                    line x1=(num(x)) x2=(num(x)) y1=(num(y)) y2=(num(y + if labelled { 7.0 } else { 4.0 })) {}
                }
                @if labelled && x > paper.margin + 8.0 && x < paper.width - paper.margin - 8.0 {
                    text.strong[point % 10 == 0] x=(num(x)) y=(num(y + 22.0)) {
                        (w.swing_weight_short(point as f64).trim_end_matches(" oz·in"))
                    }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{BeamPiece, NARROW, WIDE};
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    fn view() -> BeamView {
        let piece = |label: &str, points, on| BeamPiece { label: label.to_owned(), points, on, ..BeamPiece::default() };
        BeamView {
            pieces: vec![piece("head", 122.0, true), piece("adhesive", 0.8, false), piece("grip", -9.8, false)],
            now_points: Some(38.9),
            forecast_points: Some(30.7),
            forecast_band_points: 0.4,
            target_points: Some(30.0),
            ..BeamView::default()
        }
    }

    #[test]
    fn steps_lead_from_now_to_the_finish() {
        let rungs = rungs(&w(), &view());
        let labels: Vec<&str> = rungs.iter().map(|rung| rung.label.as_str()).collect();
        assert_eq!(labels, ["adhesive +0.8", "grip −9.8", "cap and rest +0.8"]);
        assert_eq!(rungs[0].from, 38.9);
        assert!((rungs[2].to - 30.7).abs() < 1e-9);
        assert_eq!(rungs[1].from, rungs[0].to);
    }

    #[test]
    fn many_steps_become_few() {
        let mut view = view();
        for at in 0..8 {
            view.pieces.push(BeamPiece { label: format!("piece {at}"), points: 0.5, ..BeamPiece::default() });
        }
        let rungs = rungs(&w(), &view);
        assert_eq!(rungs.len(), STEPS_SHOWN);
        assert!(rungs[3].label.contains("more"), "{rungs:?}");
        assert!((rungs[3].to - 30.7).abs() < 1e-9);
    }

    #[test]
    fn the_letter_scale_is_exact_and_leaves_room_for_labels() {
        let marks = Marks::new(&w(), &view());
        let (low, high) = marks.range();
        assert!(low <= 29.7 && high > 39.69, "{low} {high}");
        let scale = scale((low, high), 150.0, WIDE);
        assert!((scale.at(low) - (WIDE.margin + 150.0)).abs() < 1e-9);
        assert!((scale.at(high) - (WIDE.width - WIDE.margin - 150.0)).abs() < 1e-9);
        let per_point = scale.at(31.0) - scale.at(30.0);
        assert!((scale.at(38.9) - scale.at(30.0) - 8.9 * per_point).abs() < 1e-9);
    }

    #[test]
    fn far_off_marks_stand_at_the_edge() {
        let far = BeamView { now_points: Some(-60.0), ..view() };
        let marks = Marks::new(&w(), &far);
        assert!(marks.rungs.is_empty());
        assert!(marks.range().0 > 5.0);
        for paper in [WIDE, NARROW] {
            let text = axis(&w(), &far, 0.0, paper).markup.into_string();
            assert!(text.contains("now A−60.0 (56.0 oz in)"), "{text}");
            assert!(text.contains("polygon class=\"now\""), "{text}");
        }
    }
}
