//! Bending in steps against the maker's limit.

use maud::{Markup, html};
use words::{Words, text};

use super::super::layout::{num, places};
use super::axes::{Form, Paper, Picture, Plot, label, mark, papers, sound};

/// What is bent, in degrees from the maker's angle.
#[derive(Debug, Clone, Default)]
pub struct BendView {
    /// The maker's limit either way.
    pub limit_deg: f64,
    /// Each angle that is bent: its name, where it stands before, and after each step.
    pub rows: Vec<(String, f64, Vec<f64>)>,
}

/// The picture of bending steps.
#[must_use]
pub fn bend(w: &Words, view: &BendView) -> Markup {
    let said: Vec<String> = view
        .rows
        .iter()
        .map(|(name, before, steps)| {
            let (from_deg, to_deg) = (sound(*before), sound(steps.last().copied().unwrap_or(*before)));
            text!(w, "picture-calc-bend-row", name = name, from_deg = from_deg, to_deg = to_deg, steps = steps.len())
        })
        .collect();
    let words = text!(w, "picture-calc-bend-words", limit_deg = sound(view.limit_deg), bent = said.join("; "));
    let high = 74.0 + 58.0 * view.rows.len() as f64;
    let picture =
        Picture { id: "calc-bend", title: &w.text("picture-calc-bend"), words: &words, papers: papers(high, high) };
    picture.drawn(|paper| drawing(w, view, paper))
}

fn drawing(w: &Words, view: &BendView, paper: Paper) -> Markup {
    let limit = sound(view.limit_deg).abs().max(0.1);
    let most = view
        .rows
        .iter()
        .flat_map(|(_, before, steps)| steps.iter().chain([before]))
        .map(|d| sound(*d).abs())
        .fold(limit, f64::max);
    let room = if paper.narrow() { 46.0 } else { 60.0 };
    let bottom = paper.height - 46.0;
    let plot = Plot::within(paper, (room, paper.width - 24.0), (24.0, bottom), (-1.15 * most, 1.15 * most), (0.0, 1.0));
    let (left, right) = (plot.x.at(-limit), plot.x.at(limit));
    html! {
        rect.zone x=(num(left)) y="24" width=(num(right - left)) height=(num(bottom - 24.0)) {}
        @for x in [left, right] { line.limit x1=(num(x)) x2=(num(x)) y1="24" y2=(num(bottom)) {} }
        (label(paper, f64::midpoint(left, right), 15.0, &w.text("picture-calc-bend-within"), false))
        @for ((name, before, steps), i) in view.rows.iter().zip(0..) {
            @let y = 24.0 + 58.0 * f64::from(i) + 30.0;
            @let beyond = steps.iter().any(|d| d.abs() > limit + 1e-9);
            text.start x="8" y=(num(y + 5.0)) { (name) }
            (path(*before, steps, y, &plot))
            @let last = steps.last().copied().unwrap_or(*before);
            @let bent_deg = sound(last);
            @let text = if beyond { text!(w, "picture-calc-bend-beyond", bent_deg = bent_deg) } else { text!(w, "picture-calc-bend-to", bent_deg = bent_deg) };
            (label(paper, plot.x.at(sound(last)), y - 13.0, &text, true))
        }
        (plot.below(&w.text("picture-calc-bend-axis")))
    }
}

fn path(before: f64, steps: &[f64], y: f64, plot: &Plot) -> Markup {
    let x = |d: f64| plot.x.at(sound(d));
    let last = x(steps.last().copied().unwrap_or(before));
    html! {
        polyline.curve-1 points=(places(&[(x(before), y), (last, y)])) {}
        (mark(Form::Ring, (x(before), y)))
        @for (at, i) in steps.iter().zip(1..) {
            (mark(if i == steps.len() { Form::Diamond } else { Form::Dot }, (x(*at), y)))
        }
    }
}
