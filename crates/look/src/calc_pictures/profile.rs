//! How stiff a shaft is along its length: as its readings tell it, beside what its model says, each with its band.

use maud::{Markup, html};
use words::{Words, text};

use super::axes::{Paper, Picture, Plot, label, long, papers, range, sound};

/// A line of the picture: its middle and half its band at a place.
type Line = fn(&ProfilePlace) -> (f64, f64);

/// One place of a shaft.
#[derive(Debug, Clone, Copy, Default)]
pub struct ProfilePlace {
    /// From the tip end, mm.
    pub from_tip_mm: f64,
    /// Stiffness by its readings, N·m², and the half width of its 95 % band.
    pub own: (f64, f64),
    /// The same by its model.
    pub model: (f64, f64),
}

/// A shaft along its length.
#[derive(Debug, Clone, Default)]
pub struct ProfileView {
    /// Its places, in order.
    pub places: Vec<ProfilePlace>,
    /// Whether it was read; else the model is drawn alone.
    pub read: bool,
}

/// The picture of a stiffness profile.
#[must_use]
pub fn profile(w: &Words, view: &ProfileView) -> Markup {
    if view.places.len() < 2 {
        return html! {};
    }
    let at = |share: f64| view.places[((view.places.len() - 1) as f64 * share).round() as usize];
    let (butt, middle, tip) = (at(0.0), at(0.5), at(1.0));
    let words = text!(
        w,
        "picture-profile-words",
        butt = w.printed(&quantity::decimal(sound(butt.own.0), 1)),
        middle = w.printed(&quantity::decimal(sound(middle.own.0), 1)),
        tip = w.printed(&quantity::decimal(sound(tip.own.0), 1))
    );
    let title = w.text("picture-profile");
    let picture = Picture { id: "stiffness-profile", title: &title, words: &words, papers: papers(300.0, 280.0) };
    picture.drawn(|paper| drawing(w, view, paper))
}

fn drawing(w: &Words, view: &ProfileView, paper: Paper) -> Markup {
    let edges = |of: Line| view.places.iter().map(of).flat_map(|(mean, band)| [mean - band, mean + band]);
    let (_, high) = range(edges(|p| p.own).chain(edges(|p| p.model)), 0.05);
    let longest = view.places.iter().map(|p| p.from_tip_mm).fold(0.0, f64::max);
    let plot = Plot::new(paper, if paper.narrow() { 40.0 } else { 48.0 }, (0.0, long(w, longest)), (0.0, high));
    let line = |of: Line, side: f64| -> Vec<(f64, f64)> {
        let point = |p: &ProfilePlace| (long(w, p.from_tip_mm), of(p).0 + side * of(p).1);
        view.places.iter().map(point).collect()
    };
    let around = |of: Line| {
        let mut points = line(of, 1.0);
        points.extend(line(of, -1.0).into_iter().rev());
        points
    };
    let (own, model): (Line, Line) = (|p| p.own, |p| p.model);
    let middle = view.places[view.places.len() / 2];
    let above = |of: (f64, f64), up: f64| {
        let (x, y) = plot.at(long(w, middle.from_tip_mm), of.0);
        (x, y + up)
    };
    let own_above = middle.own.0 >= middle.model.0;
    html! {
        (plot.axes(&text!(w, "picture-profile-axis", unit = w.length_sign()), "N·m²"))
        @for side in [-1.0, 1.0] { polyline.curve-2 points=(plot.line(&line(model, side))) {} }
        @if view.read {
            polygon.area points=(plot.line(&around(own))) {}
            polyline.curve-1 points=(plot.line(&line(own, 0.0))) {}
            @let (x, y) = above(middle.own, if own_above { -14.0 } else { 24.0 });
            (label(paper, x, y, &w.text("picture-profile-own"), true))
        } @else {
            polyline.curve-1 points=(plot.line(&line(model, 0.0))) {}
        }
        @let (x, y) = above((middle.model.0 + if own_above && view.read { -middle.model.1 } else { middle.model.1 }, 0.0), if own_above && view.read { 20.0 } else { -8.0 });
        (label(paper, x, y, &w.text("picture-profile-model"), false))
    }
}
