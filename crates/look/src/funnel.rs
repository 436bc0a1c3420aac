//! The funnel: how far the finish is forecast from its target, stage by stage, with its band narrowing as readings
//! arrive and the tolerance behind it.

use maud::{Markup, html};
use words::{Words, text};

use super::layout::{Scale, num, places, text_width};

/// One stage.
#[derive(Debug, Clone, Default)]
pub struct FunnelStage {
    /// Its name: `tip weight`.
    pub label: String,
    /// Forecast finish minus target at this stage, in points.
    pub centre_points: f64,
    /// How far the finish may lie from `centre_points` either way, in points, with 95 % probability.
    pub half_band_points: f64,
    /// The finish that this stage's own reading points to, minus target, in points.
    pub reading_points: Option<f64>,
    /// The reading is doubted.
    pub doubted: bool,
    /// The stage shown now.
    pub current: bool,
    /// Nothing was read at it yet: the band is what its reading would leave.
    pub ahead: bool,
}

/// The funnel of one club.
#[derive(Debug, Clone, Default)]
pub struct FunnelView {
    /// Identity in the page: `funnel-6`.
    pub id: String,
    /// Name of the club.
    pub club: String,
    /// Stages in order.
    pub stages: Vec<FunnelStage>,
    /// The target as text: `D0`.
    pub target_label: String,
    /// Half the tolerance, in points.
    pub tolerance_points: f64,
}

#[derive(Clone, Copy)]
struct Paper {
    name: &'static str,
    width: f64,
    height: f64,
    left: f64,
    right: f64,
    size: f64,
}

const WIDE: Paper = Paper { name: "wide", width: 540.0, height: 236.0, left: 56.0, right: 26.0, size: 16.0 };
const NARROW: Paper = Paper { name: "narrow", width: 340.0, height: 190.0, left: 42.0, right: 14.0, size: 14.5 };

/// The picture with its table for screen readers.
#[must_use]
pub fn funnel(w: &Words, view: &FunnelView) -> Markup {
    html! {
        figure.funnel id=[Some(view.id.as_str()).filter(|id| !id.is_empty())] {
            @if view.stages.is_empty() { p.funnel-none { (w.text("funnel-empty")) } }
            @else {
                (drawing(w, view, WIDE)) (drawing(w, view, NARROW)) div.hidden { (list(w, view)) }
                @if view.stages.iter().any(|stage| stage.ahead) { figcaption.small { (w.text("funnel-ahead")) } }
            }
        }
    }
}

fn finite(value: f64) -> f64 {
    if value.is_finite() { value } else { 0.0 }
}

/// How many points the drawing shows either way: all of it, but never so much that the tolerance vanishes.
fn reach_points(view: &FunnelView) -> f64 {
    let tolerance = if view.tolerance_points > 0.0 { finite(view.tolerance_points) } else { 0.3 }.max(0.05);
    let most = view
        .stages
        .iter()
        .flat_map(|stage| {
            [
                finite(stage.centre_points).abs() + finite(stage.half_band_points).abs(),
                finite(stage.reading_points.unwrap_or(0.0)).abs(),
            ]
        })
        .fold(0.0, f64::max);
    (most * 1.08).clamp(2.0 * tolerance, 6.0 * tolerance)
}

fn drawing(w: &Words, view: &FunnelView, paper: Paper) -> Markup {
    let reach = reach_points(view);
    let (top, bottom) = (12.0, paper.height - 34.0);
    let up = Scale::new(-reach, reach, bottom, top);
    let last = view.stages.len().saturating_sub(1).max(1);
    let (left, right) = (paper.left + paper.size * 1.6, paper.width - paper.right - paper.size * 1.6);
    let across = Scale::new(0.0, last as f64, left, right);
    let at = |index: usize| across.at(index as f64);
    let half = finite(view.tolerance_points).abs() * up.per_unit().abs();
    let title_id = format!("{}-{}", view.id, paper.name);
    html! {
        svg class={ "funnel-" (paper.name) } viewBox={ "0 0 " (paper.width) " " (paper.height) } role="img"
            aria-labelledby={ (title_id) "-t" } {
            title id={ (title_id) "-t" } { (text!(w, "funnel-title", club = view.club)) }
            rect.zone x=(num(paper.left)) y=(num(up.at(0.0) - half)) height=(num(2.0 * half))
                width=(num(paper.width - paper.left - paper.right)) {}
            (levels(w, view, &up, reach, paper))
            // A nested picture cuts off what lies beyond its frame.
            svg x="0" y=(num(top)) width=(paper.width) height=(num(bottom - top))
                viewBox={ "0 " (num(top)) " " (paper.width) " " (num(bottom - top)) } {
                (bands(view, &at, &up))
            }
            (readings(w, view, &at, &up, reach, paper))
            (stage_labels(view, &at, bottom + 26.0, paper))
        }
    }
}

/// The target's line and the next even figures above and below.
fn levels(w: &Words, view: &FunnelView, up: &Scale, reach: f64, paper: Paper) -> Markup {
    let step =
        [0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0].into_iter().rev().find(|step| *step <= reach * 0.95).unwrap_or(reach);
    let decimals = u8::from(step < 1.0);
    html! {
        line.aim x1=(num(paper.left)) x2=(num(paper.width - paper.right)) y1=(num(up.at(0.0))) y2=(num(up.at(0.0))) {}
        g.levels {
            @for level in [step, -step] {
                line x1=(num(paper.left)) x2=(num(paper.left + 6.0)) y1=(num(up.at(level))) y2=(num(up.at(level))) {}
                text x=(num(paper.left - 8.0)) y=(num(up.at(level) + 5.0)) { (w.signed(level, decimals)) }
            }
            text.strong x=(num(paper.left - 8.0)) y=(num(up.at(0.0) + 5.0)) { (view.target_label) }
        }
    }
}

fn bands(view: &FunnelView, at: &dyn Fn(usize) -> f64, up: &Scale) -> Markup {
    let edge = |index: usize, stage: &FunnelStage, side: f64| {
        (at(index), up.at(finite(stage.centre_points) + side * finite(stage.half_band_points).abs()))
    };
    let stages = || view.stages.iter().enumerate();
    let mut outline: Vec<_> = stages().map(|(index, stage)| edge(index, stage, 1.0)).collect();
    outline.extend(stages().rev().map(|(index, stage)| edge(index, stage, -1.0)));
    let centre: Vec<_> = stages().map(|(index, stage)| edge(index, stage, 0.0)).collect();
    html! {
        @if view.stages.len() == 1 {
            @let (x, high) = outline[0];
            line.single x1=(num(x)) x2=(num(x)) y1=(num(high)) y2=(num(outline[1].1)) {}
        } @else {
            polygon.spread points=(places(&outline)) {}
            polyline.centre points=(places(&centre)) {}
        }
    }
}

/// Readings as dots with their figures; a doubted one is hollow, with a question mark.
fn readings(w: &Words, view: &FunnelView, at: &dyn Fn(usize) -> f64, up: &Scale, reach: f64, paper: Paper) -> Markup {
    html! {
        g.readings {
            @for (index, stage) in view.stages.iter().enumerate() {
                @if stage.current {
                    line.here x1=(num(at(index))) x2=(num(at(index))) y1="12" y2=(num(paper.height - 28.0)) {}
                }
                @if let Some(points) = stage.reading_points.filter(|points| points.is_finite()) {
                    @let shown = points.clamp(-reach, reach);
                    @let (x, y) = (at(index), up.at(shown).clamp(18.0, paper.height - 40.0));
                    circle.reading.doubted[stage.doubted] cx=(num(x)) cy=(num(y)) r="6" {}
                    // The figure stands on the side away from the target, unless the edge is there.
                    @let below = (shown < 0.0 && y < paper.height - 66.0) || y < 34.0;
                    text.doubted[stage.doubted] x=(num(x)) y=(num(if below { y + 23.0 } else { y - 12.0 })) {
                        (w.signed(points, 1)) @if stage.doubted { " ?" }
                    }
                }
            }
        }
    }
}

/// Which labels fit on one line: the current stage first, then both ends, then the others from the left.
fn shown_labels(view: &FunnelView, at: &dyn Fn(usize) -> f64, paper: Paper) -> Vec<(usize, f64)> {
    let count = view.stages.len();
    let current = view.stages.iter().position(|stage| stage.current);
    let order = current.into_iter().chain([0, count.saturating_sub(1)]).chain(0..count);
    let mut taken: Vec<(usize, f64, f64)> = Vec::new();
    for index in order {
        let stage = &view.stages[index];
        let half = text_width(&stage.label, paper.size, stage.current) / 2.0;
        let centre = at(index).max(half + 2.0).min((paper.width - half - 2.0).max(half + 2.0));
        let free = taken.iter().all(|(_, other, other_half)| (other - centre).abs() >= half + other_half + 8.0);
        if free && !taken.iter().any(|(other, ..)| *other == index) {
            taken.push((index, centre, half));
        }
    }
    taken.into_iter().map(|(index, centre, _)| (index, centre)).collect()
}

fn stage_labels(view: &FunnelView, at: &dyn Fn(usize) -> f64, y: f64, paper: Paper) -> Markup {
    html! {
        g.stages {
            @for (index, centre) in shown_labels(view, at, paper) {
                text.strong[view.stages[index].current] x=(num(centre)) y=(num(y)) { (view.stages[index].label) }
            }
        }
    }
}

fn list(w: &Words, view: &FunnelView) -> Markup {
    html! {
        table {
            caption { (text!(w, "funnel-list", target = view.target_label)) }
            thead { tr {
                @for head in ["funnel-stage", "funnel-forecast", "funnel-band", "funnel-reading"] { th scope="col" { (w.text(head)) } }
            } }
            tbody {
                @for stage in &view.stages {
                    tr {
                        th scope="row" { (if stage.current { text!(w, "funnel-now", stage = stage.label) } else { stage.label.clone() }) }
                        td { (w.signed(stage.centre_points, 1)) }
                        td { "± " (w.signed(stage.half_band_points, 1).trim_start_matches('+')) }
                        td { @if let Some(points) = stage.reading_points {
                            @let points = w.signed(points, 1);
                            (if stage.doubted { text!(w, "funnel-doubted", points = points) } else { points })
                        } }
                    }
                }
            }
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

    fn view(labels: &[&str]) -> FunnelView {
        let stage = |label: &&str| FunnelStage {
            label: (*label).to_owned(),
            half_band_points: 1.0,
            current: *label == "tip weight",
            ..FunnelStage::default()
        };
        FunnelView {
            id: "f".to_owned(),
            stages: labels.iter().map(stage).collect(),
            target_label: "D0".to_owned(),
            tolerance_points: 0.3,
            ..FunnelView::default()
        }
    }

    #[test]
    fn labels_never_overlap_and_the_current_stage_is_named() {
        let many = [
            "weighed",
            "cut to length",
            "dry",
            "tip weight",
            "glued and cured",
            "ferrule turned",
            "gripped",
            "dried off",
        ];
        for paper in [WIDE, NARROW] {
            let view = view(&many);
            let across = Scale::new(0.0, 7.0, paper.left, paper.width - paper.right);
            let at = |index: usize| across.at(index as f64);
            let mut shown = shown_labels(&view, &at, paper);
            assert!(shown.iter().any(|(index, _)| many[*index] == "tip weight"));
            shown.sort_by_key(|(index, _)| *index);
            for pair in shown.windows(2) {
                let half = |index: usize| text_width(many[index], paper.size, many[index] == "tip weight") / 2.0;
                assert!(pair[1].1 - pair[0].1 >= half(pair[0].0) + half(pair[1].0), "{pair:?}");
            }
        }
    }

    #[test]
    fn a_wide_band_does_not_hide_the_tolerance() {
        let mut view = view(&["weighed", "dry"]);
        view.stages[0].half_band_points = 40.0;
        assert!((reach_points(&view) - 1.8).abs() < 1e-9);
        view.stages[0].half_band_points = f64::NAN;
        view.stages[0].reading_points = Some(f64::INFINITY);
        view.tolerance_points = f64::NAN;
        let text = funnel(&w(), &view).into_string();
        assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
    }

    #[test]
    fn a_doubted_reading_says_so_in_words() {
        let mut view = view(&["weighed", "<b>dry"]);
        view.stages[1].reading_points = Some(-0.6);
        view.stages[1].doubted = true;
        let text = funnel(&w(), &view).into_string();
        assert!(text.contains("−0.6 ?") && text.contains("−0.6, doubted"), "{text}");
        assert!(text.contains("&lt;b&gt;dry") && !text.contains("<b>"), "{text}");
        assert!(funnel(&w(), &FunnelView::default()).into_string().contains("No stage"));
    }
}
