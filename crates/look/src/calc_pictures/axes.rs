//! What the pictures share: their paper, a plot with ticks and labels, and marks with text beside them.

use maud::{Markup, html};
use quantity::{Length, Mass, MassUnit};
use words::Words;

use super::super::layout::{Scale, num, places, text_width};

/// The ground of one drawing. Lengths in drawing units.
#[derive(Debug, Clone, Copy)]
pub(super) struct Paper {
    pub name: &'static str,
    pub width: f64,
    pub height: f64,
    /// Size of the text.
    pub size: f64,
}

impl Paper {
    pub fn narrow(self) -> bool {
        self.name == "narrow"
    }
}

/// Both papers of a picture, with their heights.
pub(super) fn papers(wide: f64, narrow: f64) -> [Paper; 2] {
    [
        Paper { name: "wide", width: 680.0, height: wide, size: 15.0 },
        Paper { name: "narrow", width: 340.0, height: narrow, size: 14.0 },
    ]
}

/// A picture: its drawings with title and description, for screen readers and for the eye.
pub(super) struct Picture<'a> {
    /// Identity in the page.
    pub id: &'a str,
    pub title: &'a str,
    /// The picture in words, with its figures.
    pub words: &'a str,
    pub papers: [Paper; 2],
}

impl Picture<'_> {
    pub fn drawn(&self, drawing: impl Fn(Paper) -> Markup) -> Markup {
        html! {
            figure.calc-picture #(self.id) {
                @for paper in self.papers {
                    @let id = format!("{}-{}", self.id, paper.name);
                    svg class={ "calc-" (paper.name) } viewBox={ "0 0 " (num(paper.width)) " " (num(paper.height)) } role="img"
                        aria-labelledby={ (id) "-t" } aria-describedby={ (id) "-d" } {
                        title id={ (id) "-t" } { (self.title) }
                        desc id={ (id) "-d" } { (self.words) }
                        (drawing(paper))
                    }
                }
                figcaption { (self.title) }
            }
        }
    }
}

/// A length of a drawing in the reader's unit.
pub(super) fn long(w: &Words, length_mm: f64) -> f64 {
    Length::from_mm(length_mm).in_unit(w.units.length)
}

/// A mass of a drawing in the reader's unit.
pub(super) fn heavy(w: &Words, mass_g: f64) -> f64 {
    match w.units.mass {
        MassUnit::Ounce => Mass::from_g(mass_g).oz(),
        _ => mass_g,
    }
}

/// What is not a number, or absurdly large, would spoil a whole drawing; it is drawn at nothing.
pub(super) fn sound(value: f64) -> f64 {
    if value.is_finite() && value.abs() < 1e9 { value } else { 0.0 }
}

/// A number with so many decimals and a true minus sign.
pub(super) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{:.decimals$}", sound(value));
    let zero = text.trim_start_matches('-').chars().all(|c| matches!(c, '0' | '.'));
    if zero { text.trim_start_matches('-').to_owned() } else { text.replace('-', "−") }
}

/// Round values across a range, at most so many, and the decimals they need.
pub(super) fn ticks(low: f64, high: f64, most: usize) -> (Vec<f64>, usize) {
    let span = high - low;
    if !(span.is_finite() && span > 0.0) {
        return (vec![low], 2);
    }
    let rough = span / most.max(1) as f64;
    let power = 10_f64.powf(rough.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|m| m * power).find(|s| *s >= rough * 0.999).unwrap_or(rough);
    let decimals = (-step.log10().floor()).max(0.0) as usize;
    let first = (low / step - 1e-6).ceil() as i64;
    let last = (high / step + 1e-6).floor() as i64;
    ((first..=last).map(|i| i as f64 * step).collect(), decimals)
}

/// A range a little wider than the values.
pub(super) fn range(values: impl Iterator<Item = f64>, share: f64) -> (f64, f64) {
    let (low, high) = values
        .filter(|v| v.is_finite())
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(v), high.max(v)));
    if low > high {
        return (0.0, 1.0);
    }
    let more = ((high - low) * share).max(high.abs().max(low.abs()) * 1e-6).max(1e-9);
    (low - more, high + more)
}

/// Two scales in a frame.
#[derive(Debug, Clone, Copy)]
pub(super) struct Plot {
    pub x: Scale,
    pub y: Scale,
    pub left: f64,
    pub right: f64,
    pub top: f64,
    pub bottom: f64,
    across: (f64, f64),
    up: (f64, f64),
    paper: Paper,
}

/// Room around a plot for its labels.
const TOP: f64 = 26.0;
const BOTTOM: f64 = 46.0;

impl Plot {
    /// A plot over the whole paper; `room` is that for the figures of the upright axis.
    pub fn new(paper: Paper, room: f64, across: (f64, f64), up: (f64, f64)) -> Self {
        Self::within(paper, (room, paper.width - 14.0), (TOP, paper.height - BOTTOM), across, up)
    }

    /// A plot in a part of the paper.
    pub fn within(
        paper: Paper,
        (left, right): (f64, f64),
        (top, bottom): (f64, f64),
        across: (f64, f64),
        up: (f64, f64),
    ) -> Self {
        let (x, y) = (Scale::new(across.0, across.1, left, right), Scale::new(up.0, up.1, bottom, top));
        Self { x, y, left, right, top, bottom, across, up, paper }
    }

    pub fn at(&self, x: f64, y: f64) -> (f64, f64) {
        (self.x.at(sound(x)), self.y.at(sound(y)))
    }

    /// The `points` of a line through these.
    pub fn line(&self, points: &[(f64, f64)]) -> String {
        places(&points.iter().map(|(x, y)| self.at(*x, *y)).collect::<Vec<_>>())
    }

    /// Axes with round figures and their names: that of the upright one above it, that of the level one below.
    pub fn axes(&self, across: &str, up: &str) -> Markup {
        let (levels, decimals) = ticks(self.up.0, self.up.1, if self.paper.narrow() { 4 } else { 5 });
        html! {
            g.grid {
                @for level in levels {
                    @let y = self.y.at(level);
                    line x1=(num(self.left)) x2=(num(self.right)) y1=(num(y)) y2=(num(y)) {}
                    text.end x=(num(self.left - 7.0)) y=(num(y + 5.0)) { (fixed(level, decimals)) }
                }
            }
            text.start x=(num(self.left.min(8.0))) y="15" { (up) }
            (self.below(across))
        }
    }

    /// The level axis alone.
    pub fn below(&self, name: &str) -> Markup {
        let (values, decimals) = ticks(self.across.0, self.across.1, if self.paper.narrow() { 4 } else { 8 });
        html! {
            line.axis x1=(num(self.left)) x2=(num(self.right)) y1=(num(self.bottom)) y2=(num(self.bottom)) {}
            g.ticks {
                @for value in values {
                    @let x = self.x.at(value);
                    line x1=(num(x)) x2=(num(x)) y1=(num(self.bottom)) y2=(num(self.bottom + 5.0)) {}
                    text x=(num(x)) y=(num(self.bottom + 20.0)) { (fixed(value, decimals)) }
                }
            }
            text.end x=(num(self.right)) y=(num(self.bottom + 39.0)) { (name) }
        }
    }
}

/// A text kept inside the paper: centred on x where there is room, with a halo so that lines do not cross it.
pub(super) fn label(paper: Paper, x: f64, y: f64, text: &str, strong: bool) -> Markup {
    let half = text_width(text, paper.size, strong) / 2.0;
    let x = x.max(half + 2.0).min((paper.width - half - 2.0).max(half + 2.0));
    html! { text.halo.strong[strong] x=(num(x)) y=(num(y)) { (text) } }
}

/// Moves labels on one upright line apart so that none covers another; the order stays.
pub(super) fn apart(wanted: &[f64], gap: f64, low: f64, high: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|a, b| wanted[*a].total_cmp(&wanted[*b]));
    let sorted: Vec<f64> = order.iter().map(|i| wanted[*i]).collect();
    let heights = vec![gap; wanted.len()];
    let placed = super::super::layout::spread(&sorted, &heights, 0.0, low, high).unwrap_or(sorted);
    let mut found = vec![0.0; wanted.len()];
    for (place, index) in placed.into_iter().zip(order) {
        found[index] = place;
    }
    found
}

/// A measure between two places: a line with an end stroke on both sides, and its text on it or beside it.
pub(super) fn measure(paper: Paper, from: f64, to: f64, y: f64, text: &str, strong: bool) -> Markup {
    let width = text_width(text, paper.size, strong);
    let inside = (to - from).abs() > width + 20.0;
    let middle = f64::midpoint(from, to);
    let way = if to < from { -1.0 } else { 1.0 };
    // The line leaves room for its own text.
    let gap = if inside { way * (width / 2.0 + 4.0) } else { 0.0 };
    html! {
        g.measure.asked[strong] {
            line x1=(num(from)) x2=(num(middle - gap)) y1=(num(y)) y2=(num(y)) {}
            line x1=(num(middle + gap)) x2=(num(to)) y1=(num(y)) y2=(num(y)) {}
            @for x in [from, to] { line x1=(num(x)) x2=(num(x)) y1=(num(y - 5.0)) y2=(num(y + 5.0)) {} }
        }
        @if inside { (label(paper, middle, y + 5.0, text, strong)) }
        @else if from.max(to) + 8.0 + width < paper.width {
            text.start.halo.strong[strong] x=(num(from.max(to) + 8.0)) y=(num(y + 5.0)) { (text) }
        } @else { text.end.halo.strong[strong] x=(num(from.min(to) - 8.0)) y=(num(y + 5.0)) { (text) } }
    }
}

/// Marks that differ by their form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Form {
    Dot,
    Diamond,
    Ring,
}

pub(super) fn mark(form: Form, (x, y): (f64, f64)) -> Markup {
    html! {
        @match form {
            Form::Dot => circle.mark cx=(num(x)) cy=(num(y)) r="4.5" {},
            Form::Ring => circle.mark.open cx=(num(x)) cy=(num(y)) r="5" {},
            Form::Diamond => polygon.mark.open points=(places(&[(x - 6.0, y), (x, y - 6.5), (x + 6.0, y), (x, y + 6.5)])) {},
        }
    }
}
