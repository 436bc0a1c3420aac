//! A small picture of how a learned value came about: its mean with its band, job by job.

use maud::{Markup, html};
use words::{Amount, Words};

use super::layout::{Scale, num, places};

/// The value at one moment.
#[derive(Debug, Clone, Copy, Default)]
pub struct TracePoint {
    /// The value as it was believed then, in the unit of the figure.
    pub mean: f64,
    /// Half width of its band; 0 for a figure without one.
    pub band: f64,
}

/// What a [`trace`] shows.
#[derive(Debug, Clone, Default)]
pub struct TraceView {
    /// Identity in the page.
    pub id: String,
    /// What the picture shows, for those who do not see it.
    pub title: String,
    /// The moments in order.
    pub points: Vec<TracePoint>,
    /// Where a new shop stands: drawn as a line.
    pub start: f64,
    /// Words at the left end and at the right: `job 3`, `job 12`.
    pub ends: (String, String),
    /// What sort of figure it is, for those at the edge; none for bare figures.
    pub amount: Option<Amount>,
    /// Decimals of those figures.
    pub decimals: u8,
}

const WIDTH: f64 = 320.0;
const HEIGHT: f64 = 112.0;
/// Left of it stand the figures of the edge, such as `−0.087 in`.
const LEFT: f64 = 76.0;

/// The picture. Nothing is drawn of fewer than two moments.
#[must_use]
pub fn trace(w: &Words, view: &TraceView) -> Markup {
    let sound: Vec<TracePoint> =
        view.points.iter().copied().filter(|p| p.mean.is_finite() && p.band.is_finite()).collect();
    if sound.len() < 2 {
        return html! {};
    }
    let edges = || sound.iter().flat_map(|p| [p.mean - p.band, p.mean + p.band]).chain([view.start]);
    let (low, high) = edges().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), x| (l.min(x), h.max(x)));
    let margin = 0.08 * (high - low).max(1e-9);
    let up = Scale::new(low - margin, high + margin, HEIGHT - 24.0, 6.0);
    let across = Scale::new(0.0, (sound.len() - 1) as f64, LEFT, WIDTH - 10.0);
    let edge =
        |side: f64| sound.iter().enumerate().map(move |(i, p)| (across.at(i as f64), up.at(p.mean + side * p.band)));
    let mut outline: Vec<_> = edge(1.0).collect();
    outline.extend(edge(-1.0).collect::<Vec<_>>().into_iter().rev());
    let centre: Vec<_> = edge(0.0).collect();
    let to = |value: f64, decimals: u8| match view.amount {
        Some(amount) => w.amount(amount, value, decimals),
        None => w.signed(value, decimals).trim_start_matches('+').to_owned(),
    };
    // Two ends that differ are not labelled alike.
    let apart = (view.decimals..view.decimals + 3).find(|d| to(high, *d) != to(low, *d)).unwrap_or(view.decimals);
    let figure = |value: f64| to(value, apart);
    html! {
        figure.lesson {
            svg viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" aria-labelledby={ (view.id) "-t" } {
                title id={ (view.id) "-t" } { (view.title) }
                line.start x1=(num(LEFT)) x2=(num(WIDTH - 10.0)) y1=(num(up.at(view.start))) y2=(num(up.at(view.start))) {}
                polygon.spread points=(places(&outline)) {}
                polyline.centre points=(places(&centre)) {}
                @if let Some((x, y)) = centre.last() { circle.now cx=(num(*x)) cy=(num(*y)) r="4" {} }
                g.levels {
                    text x=(num(LEFT - 6.0)) y=(num(up.at(high).max(16.0))) { (figure(high)) }
                    text x=(num(LEFT - 6.0)) y=(num(up.at(low).min(HEIGHT - 26.0))) { (figure(low)) }
                }
                text.first x=(num(LEFT)) y=(num(HEIGHT - 4.0)) { (view.ends.0) }
                text.last x=(num(WIDTH - 10.0)) y=(num(HEIGHT - 4.0)) { (view.ends.1) }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn w() -> Words {
        Words::english(quantity::Units::default())
    }

    fn view(points: &[(f64, f64)]) -> TraceView {
        TraceView {
            id: "t".into(),
            title: "Adhesive <b>".into(),
            points: points.iter().map(|(mean, band)| TracePoint { mean: *mean, band: *band }).collect(),
            ends: ("job 1".into(), "job 3".into()),
            amount: Some(Amount::Mass),
            decimals: 1,
            ..TraceView::default()
        }
    }

    #[test]
    fn the_band_is_drawn_within_the_picture() {
        let text = trace(&w(), &view(&[(0.0, 0.8), (-0.4, 0.3), (-0.5, 0.2)])).into_string();
        assert!(text.contains("Adhesive &lt;b&gt;") && text.contains("0.8 g") && text.contains("−0.8 g"), "{text}");
        let points = text.split("points=\"").nth(1).unwrap().split('"').next().unwrap();
        let figures: Vec<f64> = points.split([' ', ',']).map(|x| x.parse().unwrap()).collect();
        assert_eq!(figures.len(), 12, "three moments, there and back");
        assert!(figures.iter().all(|x| (0.0..=WIDTH).contains(x)), "{points}");
    }

    #[test]
    fn what_cannot_be_drawn_is_left_out() {
        assert_eq!(trace(&w(), &view(&[(0.1, 0.2)])).into_string(), "");
        assert_eq!(trace(&w(), &view(&[(f64::NAN, 0.2), (0.1, 0.2)])).into_string(), "");
        let flat = trace(&w(), &view(&[(0.0, 0.0), (0.0, 0.0)])).into_string();
        assert!(!flat.contains("NaN") && !flat.contains("inf"), "{flat}");
    }
}
