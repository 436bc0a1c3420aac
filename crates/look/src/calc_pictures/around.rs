//! Readings around a shaft: the fit through them, the soft side, the bow and where a roller test comes to rest.

use maud::{Markup, html};
use words::{Words, text};

use super::super::layout::{num, places};
use super::axes::{Paper, Picture, fixed, papers, sound, ticks};

/// Readings around a shaft. Angles in degrees.
#[derive(Debug, Clone, Default)]
pub struct AroundView {
    /// Angle and reading.
    pub readings: Vec<(f64, f64)>,
    /// The fit, once around.
    pub fitted: Vec<(f64, f64)>,
    /// What the readings are: `force, N`.
    pub quantity: String,
    /// Soft direction, where there is one.
    pub soft_deg: Option<f64>,
    /// Direction of the bow and its size in millimetres, where there is one.
    pub bow: Option<(f64, f64)>,
    /// Direction to mark.
    pub mark_deg: Option<f64>,
    /// Where the loaded shaft comes to rest.
    pub resting_deg: Vec<f64>,
}

/// The picture around the shaft.
#[must_use]
pub fn around(w: &Words, view: &AroundView) -> Markup {
    let words = in_words(w, view);
    let picture = Picture {
        id: "calc-around",
        title: &w.text("picture-calc-around"),
        words: &words,
        papers: papers(430.0, 470.0),
    };
    picture.drawn(|paper| drawing(w, view, paper))
}

fn in_words(w: &Words, view: &AroundView) -> String {
    let mut words = vec![text!(w, "picture-calc-around-readings", count = view.readings.len(), of = view.quantity)];
    words.push(match view.soft_deg.map(sound) {
        Some(deg) => text!(w, "picture-calc-around-soft", along_deg = deg),
        None => w.text("picture-calc-around-none"),
    });
    words.extend(
        view.bow.map(|(deg, mm)| text!(w, "picture-calc-around-bow", bow_mm = sound(mm), toward_deg = sound(deg))),
    );
    words.extend(view.mark_deg.map(|deg| text!(w, "picture-calc-around-mark", mark_deg = sound(deg))));
    if !view.resting_deg.is_empty() {
        let rests_deg: Vec<f64> = view.resting_deg.iter().copied().map(sound).collect();
        words.push(text!(w, "picture-calc-around-rests", rests_deg = rests_deg));
    }
    words.join(" ")
}

/// Where an angle and a distance from the middle stand: nothing at the top, on to the right.
#[derive(Clone, Copy)]
struct Dial {
    x: f64,
    y: f64,
    radius: f64,
    low: f64,
    high: f64,
}

impl Dial {
    fn new(view: &AroundView, paper: Paper) -> Self {
        let all = || view.readings.iter().chain(&view.fitted).map(|(_, value)| sound(*value));
        let (low, high) = all().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
        let (low, high) = if low < high { (low, high) } else { (low - 1.0, low + 1.0) };
        // The least reading stands at 0.45 of the radius, the greatest at 0.85: a change of one in a hundred shows.
        let span = (high - low).max(1e-4 * high.abs()) / 0.4;
        let least = low - 0.45 * span;
        let radius = if paper.narrow() { 126.0 } else { 158.0 };
        let x = if paper.narrow() { paper.width / 2.0 } else { 210.0 };
        Self { x, y: radius + 40.0, radius, low: least, high: least + span }
    }

    fn at(&self, angle_deg: f64, share: f64) -> (f64, f64) {
        let (sin, cos) = sound(angle_deg).to_radians().sin_cos();
        (self.x + self.radius * share * sin, self.y - self.radius * share * cos)
    }

    fn share(&self, value: f64) -> f64 {
        ((sound(value) - self.low) / (self.high - self.low)).clamp(0.0, 1.0)
    }
}

fn drawing(w: &Words, view: &AroundView, paper: Paper) -> Markup {
    let dial = Dial::new(view, paper);
    let fitted: Vec<(f64, f64)> = view.fitted.iter().map(|(a, v)| dial.at(*a, dial.share(*v))).collect();
    html! {
        (rings(&dial))
        @if let Some(soft) = view.soft_deg {
            @let (a, b) = (dial.at(soft, 1.0), dial.at(soft + 180.0, 1.0));
            line.soft x1=(num(a.0)) y1=(num(a.1)) x2=(num(b.0)) y2=(num(b.1)) {}
        }
        polygon.curve-1 points=(places(&fitted)) {}
        @for (angle, value) in &view.readings {
            @let (x, y) = dial.at(*angle, dial.share(*value));
            circle.mark cx=(num(x)) cy=(num(y)) r="4" {}
        }
        @if let Some((deg, _)) = view.bow { (arrow(&dial, deg)) }
        @for rest in &view.resting_deg { (wedge(&dial, *rest)) }
        @if let Some(deg) = view.mark_deg { (tick(&dial, deg)) }
        (key(w, view, &dial, paper))
    }
}

/// Rings of round readings, and the angles around them.
fn rings(dial: &Dial) -> Markup {
    let (values, decimals) = ticks(dial.low + 0.4 * (dial.high - dial.low), dial.high, 4);
    html! {
        g.grid {
            circle cx=(num(dial.x)) cy=(num(dial.y)) r=(num(dial.radius)) {}
            @for value in &values { circle cx=(num(dial.x)) cy=(num(dial.y)) r=(num(dial.radius * dial.share(*value))) {} }
            @for step in 0..12 {
                @let deg = f64::from(step) * 30.0;
                @let (a, b) = (dial.at(deg, 0.97), dial.at(deg, 1.0));
                line x1=(num(a.0)) y1=(num(a.1)) x2=(num(b.0)) y2=(num(b.1)) {}
                @if step % 3 == 0 {
                    @let (x, y) = dial.at(deg, 1.13);
                    text x=(num(x)) y=(num(y + 5.0)) { (step * 30) "°" }
                }
            }
        }
        @for value in values.iter().filter(|v| dial.share(**v) < 0.98) {
            @let (x, y) = dial.at(15.0, dial.share(*value));
            text.halo.quiet x=(num(x)) y=(num(y + 4.0)) { (fixed(*value, decimals)) }
        }
    }
}

/// The bow: an arrow from the middle.
fn arrow(dial: &Dial, deg: f64) -> Markup {
    let (tip, left, right) = (dial.at(deg, 0.36), dial.at(deg - 14.0, 0.27), dial.at(deg + 14.0, 0.27));
    html! {
        line.bow x1=(num(dial.x)) y1=(num(dial.y)) x2=(num(tip.0)) y2=(num(tip.1)) {}
        polygon.brass points=(places(&[tip, left, right])) {}
    }
}

/// A resting place: a wedge on the outer ring, pointing in.
fn wedge(dial: &Dial, deg: f64) -> Markup {
    html! { polygon.rest-mark points=(places(&[dial.at(deg, 0.9), dial.at(deg - 4.0, 1.0), dial.at(deg + 4.0, 1.0)])) {} }
}

/// The mark: a thick stroke across the outer ring.
fn tick(dial: &Dial, deg: f64) -> Markup {
    let (a, b) = (dial.at(deg, 1.0), dial.at(deg, 1.08));
    html! { line.mark-here x1=(num(a.0)) y1=(num(a.1)) x2=(num(b.0)) y2=(num(b.1)) {} }
}

/// What the marks mean, with their figures: beside the dial, or below it.
fn key(w: &Words, view: &AroundView, dial: &Dial, paper: Paper) -> Markup {
    let mut rows: Vec<(Markup, String)> = Vec::new();
    let dot = html! { circle.mark cx="9" cy="-5" r="4" {} };
    rows.push((dot, view.quantity.clone()));
    if let Some(deg) = view.soft_deg {
        rows.push((
            html! { line.soft x1="0" x2="19" y1="-5" y2="-5" {} },
            text!(w, "picture-calc-key-soft", along_deg = sound(deg)),
        ));
    }
    if let Some((deg, mm)) = view.bow {
        let head = html! { line.bow x1="0" x2="12" y1="-5" y2="-5" {} polygon.brass points="19,-5 10,-10 10,0" {} };
        rows.push((head, text!(w, "picture-calc-key-bow", bow_mm = sound(mm), toward_deg = sound(deg))));
    }
    if let Some(deg) = view.mark_deg {
        rows.push((
            html! { line.mark-here x1="2" x2="17" y1="-5" y2="-5" {} },
            text!(w, "picture-calc-key-mark", mark_deg = sound(deg)),
        ));
    }
    if !view.resting_deg.is_empty() {
        let rests_deg: Vec<f64> = view.resting_deg.iter().copied().map(sound).collect();
        rows.push((
            html! { polygon.rest-mark points="9,2 3,-10 15,-10" {} },
            text!(w, "picture-calc-key-rests", rests_deg = rests_deg),
        ));
    }
    if view.soft_deg.is_none() {
        rows.push((html! {}, w.text("picture-calc-key-none")));
    }
    let (x, y) = if paper.narrow() { (40.0, dial.y + dial.radius + 52.0) } else { (428.0, 120.0) };
    html! {
        @for ((sign, text), i) in rows.iter().zip(0..) {
            g transform={ "translate(" (num(x)) " " (num(y + f64::from(i) * if paper.narrow() { 24.0 } else { 32.0 })) ")" } {
                (sign)
                text.start x="28" y="0" { (text) }
            }
        }
    }
}
