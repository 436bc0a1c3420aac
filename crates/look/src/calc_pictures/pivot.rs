//! A club about a pivot: what each part gives to the inertia; and a set matched by swing weight beside one by inertia.

use maud::{Markup, html};
use words::{Words, text};

use super::super::layout::{num, places, spread, text_width};
use super::axes::{Form, Paper, Picture, Plot, fixed, heavy, label, long, mark, measure, papers, range, sound};

/// One part on the club.
#[derive(Debug, Clone, Default)]
pub struct PivotPart {
    /// What the input calls the part, or its number in the list where it gives no name.
    pub name: String,
    /// Its mass in grams.
    pub mass_g: f64,
    /// Its place from the butt end in millimetres.
    pub position_mm: f64,
    /// What it gives to the inertia about the pivot, in kg·cm².
    pub inertia_kg_cm2: f64,
}

/// A club that turns about a pivot. Places from the butt end in millimetres.
#[derive(Debug, Clone, Default)]
pub struct PivotView {
    /// Its parts; none for a club timed whole.
    pub parts: Vec<PivotPart>,
    /// Where the club is turned about, from the butt end.
    pub pivot_mm: f64,
    /// The balance point.
    pub balance_mm: f64,
    /// Inertia about the pivot in kg·cm².
    pub inertia_kg_cm2: f64,
    /// Mass of the whole in grams.
    pub mass_g: f64,
}

/// A series of lengths.
#[derive(Debug, Clone, Default)]
pub struct SeriesView {
    /// Length in millimetres, head mass in grams that keeps the swing weight, and that keeps the inertia.
    pub rows: Vec<(f64, f64, f64)>,
    /// Length of the reference club.
    pub reference_mm: f64,
}

/// The picture of a club about its pivot.
#[must_use]
pub fn pivot(w: &Words, view: &PivotView) -> Markup {
    let gyration_mm = gyration_mm(view);
    let shares: Vec<String> = view
        .parts
        .iter()
        .map(|p| format!("{} {} %", p.name, fixed(100.0 * p.inertia_kg_cm2 / view.inertia_kg_cm2, 1)))
        .collect();
    let figures = [
        ("pivot_mm", words::figure(&sound(view.pivot_mm))),
        ("inertia", words::figure(&fixed(view.inertia_kg_cm2, 1))),
        ("shares", words::figure(&shares.join(", "))),
        ("gyration_mm", words::figure(&gyration_mm)),
    ];
    let id = if shares.is_empty() { "picture-calc-pivot-whole" } else { "picture-calc-pivot-parts" };
    let (words, title) = (w.text_with(id, &figures), w.text("picture-calc-pivot"));
    let rows = view.parts.len() as f64;
    let papers = papers(166.0 + 30.0 * rows, 166.0 + 30.0 * rows);
    let picture = Picture { id: "calc-pivot", title: &title, words: &words, papers };
    picture.drawn(|paper| drawing(w, view, gyration_mm, paper))
}

/// Where all the mass would have to sit for the same inertia, from the pivot.
fn gyration_mm(view: &PivotView) -> f64 {
    sound((view.inertia_kg_cm2 * 1e5 / view.mass_g).sqrt())
}

fn drawing(w: &Words, view: &PivotView, gyration_mm: f64, paper: Paper) -> Markup {
    let side = if view.balance_mm >= view.pivot_mm { 1.0 } else { -1.0 };
    let gyration_at = view.pivot_mm + side * gyration_mm;
    let ends = view.parts.iter().map(|p| p.position_mm).chain([0.0, view.pivot_mm, view.balance_mm, gyration_at]);
    let across = range(ends, 0.04);
    let axis_y = 58.0;
    let plot = Plot::within(paper, (24.0, paper.width - 24.0), (0.0, axis_y), across, (0.0, 1.0));
    let most = view.parts.iter().map(|p| p.mass_g).fold(1.0, f64::max);
    let pivot = plot.x.at(view.pivot_mm);
    let butt = plot.x.at(0.0);
    let (swing_weight, gyration) = (plot.x.at(view.balance_mm), plot.x.at(gyration_at));
    html! {
        line.rod x1=(num(butt)) x2=(num(plot.x.at(across.1))) y1=(num(axis_y)) y2=(num(axis_y)) {}
        @for part in &view.parts {
            @let (x, r) = (plot.x.at(sound(part.position_mm)), 15.0 * (sound(part.mass_g).max(0.0) / most).sqrt());
            circle.bob cx=(num(x)) cy=(num(axis_y)) r=(num(r.max(2.0))) {}
        }
        (part_names(view, &plot, axis_y - 24.0, paper))
        polygon.ink points=(places(&[(pivot, axis_y), (pivot - 9.0, axis_y + 17.0), (pivot + 9.0, axis_y + 17.0)])) {}
        (label(paper, pivot, axis_y + 33.0, &w.text("picture-calc-pivot-mark"), true))
        (measure(paper, pivot, swing_weight, axis_y + 54.0, &text!(w, "picture-calc-pivot-balance", off_mm = sound((view.balance_mm - view.pivot_mm).abs())), false))
        (measure(paper, pivot, gyration, axis_y + 82.0, &text!(w, "picture-calc-pivot-gyration", gyration_mm = gyration_mm), true))
        (shares(view, axis_y + 108.0, paper))
    }
}

/// Names over the parts, left out where they do not fit.
fn part_names(view: &PivotView, plot: &Plot, y: f64, paper: Paper) -> Markup {
    let mut parts: Vec<&PivotPart> = view.parts.iter().collect();
    parts.sort_by(|a, b| a.position_mm.total_cmp(&b.position_mm));
    let wanted: Vec<f64> = parts.iter().map(|p| plot.x.at(sound(p.position_mm))).collect();
    let widths: Vec<f64> = parts.iter().map(|p| text_width(&p.name, paper.size, false)).collect();
    html! {
        @if let Some(centres) = spread(&wanted, &widths, 8.0, 2.0, paper.width - 2.0) {
            @for (part, x) in parts.iter().zip(centres) { text x=(num(x)) y=(num(y)) { (part.name) } }
        }
    }
}

/// What each part gives, as bars with their figures.
fn shares(view: &PivotView, top: f64, paper: Paper) -> Markup {
    let names =
        view.parts.iter().map(|p| text_width(&p.name, paper.size, false)).fold(0.0, f64::max).min(paper.width * 0.34);
    let figure = if paper.narrow() { 84.0 } else { 190.0 };
    let from = 12.0 + names + 8.0;
    let room = paper.width - from - figure;
    html! {
        @for (part, i) in view.parts.iter().zip(0..) {
            @let (y, share) = (top + 30.0 * f64::from(i), sound(part.inertia_kg_cm2 / view.inertia_kg_cm2).clamp(0.0, 1.0));
            text.end x=(num(12.0 + names)) y=(num(y + 5.0)) { (part.name) }
            rect.bar x=(num(from)) y=(num(y - 9.0)) width=(num((share * room).max(1.0))) height="18" {}
            text.start.strong x=(num(from + (share * room).max(1.0) + 8.0)) y=(num(y + 5.0)) {
                (fixed(100.0 * share, 1)) " %"
                @if !paper.narrow() { ", " (fixed(part.inertia_kg_cm2, 1)) " kg·cm²" }
            }
        }
    }
}

/// Head masses along a series, for both laws.
#[must_use]
pub fn series(w: &Words, view: &SeriesView) -> Markup {
    let said = |(mm, swing_weight_g, inertia_g): &(f64, f64, f64)| {
        text!(
            w,
            "picture-calc-series-row",
            length_mm = sound(*mm),
            swing_weight_g = sound(*swing_weight_g),
            inertia_g = sound(*inertia_g)
        )
    };
    let said: Vec<String> = view.rows.iter().map(said).collect();
    let words = text!(w, "picture-calc-series-words", rows = said.join("; "));
    let title = w.text("picture-calc-series");
    let papers = papers(320.0, 290.0);
    let picture = Picture { id: "calc-series", title: &title, words: &words, papers };
    picture.drawn(|paper| series_drawing(w, view, paper))
}

fn series_drawing(w: &Words, view: &SeriesView, paper: Paper) -> Markup {
    let shown = |(mm, a, b): &(f64, f64, f64)| (long(w, *mm), heavy(w, *a), heavy(w, *b));
    let mut rows: Vec<(f64, f64, f64)> = view.rows.iter().map(shown).collect();
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    let across = range(rows.iter().map(|r| r.0), 0.06);
    let up = range(rows.iter().flat_map(|r| [r.1, r.2]), 0.08);
    let plot = Plot::new(paper, if paper.narrow() { 44.0 } else { 54.0 }, across, up);
    let swing_weight: Vec<(f64, f64)> = rows.iter().map(|r| (r.0, r.1)).collect();
    let inertia: Vec<(f64, f64)> = rows.iter().map(|r| (r.0, r.2)).collect();
    let reference = plot.x.at(sound(long(w, view.reference_mm)));
    // The laws part most at the shortest club; their names stand along the lines' upper ends there.
    let key_x = plot.right - if paper.narrow() { 138.0 } else { 160.0 };
    html! {
        (plot.axes(&text!(w, "picture-calc-series-length", unit = w.length_sign()), &text!(w, "picture-calc-series-head", unit = w.mass_sign())))
        @if (plot.left..=plot.right).contains(&reference) {
            line.mine x1=(num(reference)) x2=(num(reference)) y1=(num(plot.top)) y2=(num(plot.bottom)) {}
            (label(paper, reference, plot.bottom - 6.0, &w.text("picture-calc-series-reference"), false))
        }
        polyline.curve-1 points=(plot.line(&swing_weight)) {}
        polyline.curve-2 points=(plot.line(&inertia)) {}
        @for (x, y) in &swing_weight { (mark(Form::Dot, plot.at(*x, *y))) }
        @for (x, y) in &inertia { (mark(Form::Diamond, plot.at(*x, *y))) }
        @for (form, class, text, y) in [(Form::Diamond, "curve-2", w.text("picture-calc-series-inertia"), plot.top + 8.0), (Form::Dot, "curve-1", w.text("picture-calc-series-swing-weight"), plot.top + 32.0)] {
            line class=(class) x1=(num(key_x)) x2=(num(key_x + 28.0)) y1=(num(y)) y2=(num(y)) {}
            (mark(form, (key_x + 14.0, y)))
            text.start.halo x=(num(key_x + 36.0)) y=(num(y + 5.0)) { (text) }
        }
    }
}
