//! A plucked club's recording: the swing as it fades, and with two axes the path of the tip.

use maud::{Markup, html};
use words::{Words, text};

use super::super::layout::{num, places};
use super::axes::{Paper, Picture, Plot, fixed, label, papers, sound};

/// A plane that the club swings in.
#[derive(Debug, Clone, Copy, Default)]
pub struct PlaneView {
    /// Its direction in degrees.
    pub direction_deg: f64,
    /// Its frequency in cycles a minute.
    pub cpm: f64,
}

/// A recording with what was found in it.
#[derive(Debug, Clone, Default)]
pub struct RecordingView {
    /// Seconds between samples.
    pub step_s: f64,
    /// The part that was used, in seconds.
    pub used_s: (f64, f64),
    /// One axis or two.
    pub axes: Vec<Vec<f64>>,
    /// Frequency in cycles a minute.
    pub cpm: f64,
    /// Amplitude at the start of the part used, all axes together.
    pub amplitude: f64,
    /// Decay in parts a second.
    pub decay_per_s: f64,
    /// Soft and stiff plane, where two were found.
    pub planes: Option<[PlaneView; 2]>,
}

/// The picture of a recording.
#[must_use]
pub fn recording(w: &Words, view: &RecordingView) -> Markup {
    let figures = |[soft, stiff]: [PlaneView; 2]| {
        [
            ("long", words::figure(&fixed(view.used_s.1 - view.used_s.0, 1))),
            ("cycles", words::figure(&fixed(view.cpm, 1))),
            ("kept", words::figure(&fixed(100.0 * (-view.decay_per_s).exp(), 0))),
            ("soft_deg", words::figure(&sound(soft.direction_deg))),
            ("stiff_deg", words::figure(&sound(stiff.direction_deg))),
            ("apart", words::figure(&fixed(stiff.cpm - soft.cpm, 2))),
        ]
    };
    let id = if view.planes.is_some() { "picture-calc-recording-planes" } else { "picture-calc-recording-words" };
    let words = w.text_with(id, &figures(view.planes.unwrap_or_default()));
    let orbit = view.axes.len() == 2;
    let (wide, narrow) = if orbit { (600.0, 560.0) } else { (280.0, 250.0) };
    let title = w.text(if orbit { "picture-calc-recording-orbit" } else { "picture-calc-recording" });
    let picture = Picture { id: "calc-recording", title: &title, words: &words, papers: papers(wide, narrow) };
    picture.drawn(|paper| drawing(w, view, paper))
}

/// Columns of a drawing: finer than the eye, coarser than the samples.
const COLUMNS: usize = 300;

/// Samples of the part used, at most so many seconds of it.
fn used<'a>(view: &RecordingView, axis: &'a [f64], most_s: f64) -> &'a [f64] {
    let at = |s: f64| ((sound(s) / view.step_s.max(1e-9)).round().max(0.0) as usize).min(axis.len());
    let from = at(view.used_s.0);
    let to = at(view.used_s.1.min(view.used_s.0 + most_s) + view.step_s).max(from);
    &axis[from..to]
}

/// The farthest that anything reaches, and the amplitude at the start.
fn greatest(view: &RecordingView) -> f64 {
    let most = |axis: &Vec<f64>| centred(used(view, axis, f64::MAX)).into_iter().map(f64::abs).fold(0.0, f64::max);
    view.axes.iter().map(most).fold(sound(view.amplitude).abs(), f64::max).max(1e-12)
}

fn centred(values: &[f64]) -> Vec<f64> {
    let mean = values.iter().map(|v| sound(*v)).sum::<f64>() / values.len().max(1) as f64;
    values.iter().map(|v| sound(*v) - mean).collect()
}

fn drawing(w: &Words, view: &RecordingView, paper: Paper) -> Markup {
    let long_s = (view.used_s.1 - view.used_s.0).max(view.step_s);
    let fade_bottom = if paper.narrow() { 196.0 } else { 226.0 };
    let reach = 1.08 * greatest(view);
    let swing = from_rest(view);
    let both = view.axes.len() == 2;
    let low = if both { 0.0 } else { -reach };
    let plot = Plot::within(paper, (14.0, paper.width - 14.0), (24.0, fade_bottom), (0.0, long_s), (low, reach));
    let envelope = |sign: f64| -> Vec<(f64, f64)> {
        let at = |i: i32| f64::from(i) / 60.0 * long_s;
        (0..=60).map(|i| (at(i), sign * view.amplitude * (-view.decay_per_s * at(i)).exp())).collect()
    };
    let fade = text!(w, "picture-calc-recording-fade", share = fixed(100.0 * (1.0 - (-view.decay_per_s).exp()), 1));
    html! {
        text.start x="8" y="15" { (w.text(if both { "picture-calc-recording-distance" } else { "picture-calc-recording-readings" })) }
        (columns(&swing, view.step_s, &plot))
        polyline.curve-2 points=(plot.line(&envelope(1.0))) {}
        @if !both { polyline.curve-2 points=(plot.line(&envelope(-1.0))) {} }
        (plot.below(&w.text("picture-calc-recording-time")))
        (label(paper, plot.right - 110.0, plot.top + 14.0, &fade, false))
        @if let [one, two] = &view.axes[..] { (orbit(w, view, one, two, reach, fade_bottom + 66.0, paper)) }
    }
}

/// The readings of one axis, or how far both together stand from rest: that never exceeds the fading amplitude, while
/// on one axis two planes swell and wane.
fn from_rest(view: &RecordingView) -> Vec<f64> {
    let part = |axis: &Vec<f64>| centred(used(view, axis, f64::MAX));
    match &view.axes[..] {
        [one, two] => part(one).iter().zip(part(two)).map(|(a, b)| a.hypot(b)).collect(),
        axes => axes.first().map(part).unwrap_or_default(),
    }
}

/// The readings: a line where they are few, else the span of each column.
fn columns(values: &[f64], step_s: f64, plot: &Plot) -> Markup {
    if values.len() <= 3 * COLUMNS {
        let line: Vec<(f64, f64)> = values.iter().enumerate().map(|(i, v)| (i as f64 * step_s, *v)).collect();
        return html! { polyline.trace points=(plot.line(&line)) {} };
    }
    let a_column = values.len().div_ceil(COLUMNS);
    let spans = values.chunks(a_column).enumerate().map(|(i, part)| {
        let (low, high) = part.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(*v), h.max(*v)));
        let time = (i * a_column) as f64 * step_s;
        [(time, low), (time, high)]
    });
    let line: Vec<(f64, f64)> = spans.flatten().collect();
    html! { polyline.trace points=(plot.line(&line)) {} }
}

/// The path of the tip in the first seconds, with the planes through it.
fn orbit(w: &Words, view: &RecordingView, one: &[f64], two: &[f64], reach: f64, top: f64, paper: Paper) -> Markup {
    // Some thirty swings: enough to see the path turn, not a blot.
    let most_s = 30.0 * 60.0 / view.cpm.max(1.0);
    let radius = (paper.height - top - 16.0) / 2.0;
    let (x, y) = (if paper.narrow() { paper.width / 2.0 } else { 190.0 }, top + radius);
    let (one, two) = (centred(used(view, one, most_s)), centred(used(view, two, most_s)));
    let path: Vec<(f64, f64)> =
        one.iter().zip(&two).map(|(a, b)| (x + a / reach * radius, y - b / reach * radius)).collect();
    let shown_s = (one.len() as f64 * view.step_s).min(most_s);
    let heading = text!(w, "picture-calc-recording-path", long = fixed(shown_s, 1));
    html! {
        text.start x="8" y=(num(top - 14.0)) { (heading) }
        circle.frame cx=(num(x)) cy=(num(y)) r=(num(radius)) {}
        polyline.trace points=(places(&path)) {}
        @if let Some([soft, stiff]) = view.planes {
            (plane(w, soft, &w.text("picture-calc-recording-soft"), "soft-plane", (x, y), radius, paper))
            (plane(w, stiff, &w.text("picture-calc-recording-stiff"), "stiff-plane", (x, y), radius, paper))
        } @else if !paper.narrow() {
            text.start x=(num(x + radius + 30.0)) y=(num(y)) { (w.text("picture-calc-recording-one")) }
        }
    }
}

/// A plane as a line through the middle with its name: counted from the first axis toward the second.
fn plane(
    w: &Words,
    plane: PlaneView,
    name: &str,
    class: &str,
    (x, y): (f64, f64),
    radius: f64,
    paper: Paper,
) -> Markup {
    let (sin, cos) = sound(plane.direction_deg).to_radians().sin_cos();
    let text = if paper.narrow() {
        name.to_owned()
    } else {
        text!(w, "picture-calc-recording-plane", name = name, cycles = fixed(plane.cpm, 2))
    };
    let (end_x, end_y) = (x + radius * cos, y - radius * sin);
    let label_x = x + (radius + 12.0) * cos;
    let beside = !paper.narrow() && cos.abs() >= 0.3;
    html! {
        line class=(class) x1=(num(x - radius * cos)) y1=(num(y + radius * sin)) x2=(num(end_x)) y2=(num(end_y)) {}
        @if beside {
            text.halo.strong.start[cos > 0.0].end[cos < 0.0] x=(num(label_x)) y=(num(end_y + 5.0)) { (text) }
        } @else {
            (label(paper, x + 0.86 * radius * cos, y - 0.86 * radius * sin, &text, true))
        }
    }
}
