//! A shaft with its cuts, what lies between it and the finished length, and its mass along it.

use maud::{Markup, html};
use quantity::{INCH_MM, LengthUnit};
use words::{Words, text};

use super::super::layout::{Scale, num, places};
use super::axes::{Paper, Picture, Plot, fixed, heavy, label, measure, papers, range, sound};

/// A shaft to be cut. Lengths in millimetres, places from the new butt end.
#[derive(Debug, Clone, Default)]
pub struct ShaftView {
    /// Length of the cut shaft.
    pub cut_mm: f64,
    /// Cut from the butt.
    pub butt_trim_mm: f64,
    /// Cut from the tip.
    pub tip_trim_mm: f64,
    /// Balance point of the cut shaft.
    pub balance_mm: f64,
    /// Mass of the cut shaft in grams.
    pub mass_g: f64,
    /// What ties it to the finished club.
    pub finish: Option<FinishView>,
    /// Density along the raw shaft from its own butt end: places and grams a metre, straight between them.
    pub density: Vec<(f64, f64)>,
}

/// The finished club around the shaft.
#[derive(Debug, Clone, Copy, Default)]
pub struct FinishView {
    /// Thickness of the grip's cap.
    pub cap_mm: f64,
    /// Length of tip in the bore, where known.
    pub insertion_mm: Option<f64>,
    /// Gap under the tip.
    pub off_bottom_mm: f64,
    /// Bottom of the bore to the ground line along the axis.
    pub bore_to_ground_mm: f64,
    /// Length to the end of the shaft.
    pub to_shaft_end_mm: f64,
    /// Length to the end of the cap.
    pub to_cap_mm: f64,
    /// The length to the cap was asked for, else that to the shaft's end.
    pub asked_to_cap: bool,
}

/// The picture of a trim.
#[must_use]
pub fn shaft(w: &Words, view: &ShaftView) -> Markup {
    let words = in_words(w, view);
    let lines = if view.finish.is_some() { 4.0 } else { 2.0 };
    let papers = papers(104.0 + 30.0 * lines + 150.0, 104.0 + 30.0 * lines + 140.0);
    let title = w.text("picture-calc-shaft");
    let picture = Picture { id: "calc-shaft", title: &title, words: &words, papers };
    picture.drawn(|paper| drawing(w, view, paper))
}

fn in_words(w: &Words, view: &ShaftView) -> String {
    let mut figures = vec![
        ("butt_mm", words::figure(&sound(view.butt_trim_mm))),
        ("tip_mm", words::figure(&sound(view.tip_trim_mm))),
        ("cut_mm", words::figure(&sound(view.cut_mm))),
        ("mass_g", words::figure(&sound(view.mass_g))),
        ("balance_mm", words::figure(&sound(view.balance_mm))),
    ];
    let Some(finish) = &view.finish else { return w.text_with("picture-calc-shaft-words", &figures) };
    figures.push(("end_mm", words::figure(&sound(finish.to_shaft_end_mm))));
    figures.push(("cap_mm", words::figure(&sound(finish.to_cap_mm))));
    w.text_with("picture-calc-shaft-finished", &figures)
}

fn drawing(w: &Words, view: &ShaftView, paper: Paper) -> Markup {
    let room = if paper.narrow() { 42.0 } else { 52.0 };
    let ground_mm = view.finish.map(|f| view.cut_mm + f.off_bottom_mm + f.bore_to_ground_mm);
    let from_mm = -sound(view.butt_trim_mm).max(view.finish.map_or(0.0, |f| f.cap_mm));
    let to_mm = sound(view.cut_mm + view.tip_trim_mm).max(ground_mm.unwrap_or(0.0));
    let x = Scale::new(from_mm, to_mm, room, paper.width - 16.0);
    let axis_y = 38.0;
    let first_y = axis_y + 56.0;
    let raw = (x.at(-view.butt_trim_mm), x.at(view.cut_mm + view.tip_trim_mm));
    let mut measures = vec![
        (
            raw.0,
            raw.1,
            text!(w, "picture-calc-shaft-raw", raw_mm = sound(view.butt_trim_mm + view.cut_mm + view.tip_trim_mm)),
            false,
        ),
        (
            x.at(0.0),
            x.at(view.cut_mm),
            text!(w, "picture-calc-shaft-cut", cut_mm = sound(view.cut_mm)),
            view.finish.is_none(),
        ),
    ];
    if let (Some(finish), Some(ground_mm)) = (&view.finish, ground_mm) {
        let to_end = text!(w, "picture-calc-shaft-to-end", end_mm = sound(finish.to_shaft_end_mm));
        let to_cap = text!(w, "picture-calc-shaft-to-cap", cap_mm = sound(finish.to_cap_mm));
        measures.push((x.at(0.0), x.at(ground_mm), to_end, !finish.asked_to_cap));
        measures.push((x.at(-finish.cap_mm), x.at(ground_mm), to_cap, finish.asked_to_cap));
    }
    let below_y = first_y + 30.0 * measures.len() as f64;
    html! {
        (body(w, view, &x, axis_y, paper))
        @if let (Some(finish), Some(ground_mm)) = (&view.finish, ground_mm) { (finished(w, view, finish, ground_mm, &x, (axis_y, below_y), paper)) }
        @for ((from, to, text, strong), i) in measures.iter().zip(0..) {
            (measure(paper, *from, *to, first_y + 30.0 * f64::from(i), text, *strong))
        }
        (density(w, view, &x, below_y + 16.0, paper))
    }
}

/// The shaft itself: what stays solid, what comes off dashed and crossed.
fn body(w: &Words, view: &ShaftView, x: &Scale, y: f64, paper: Paper) -> Markup {
    // Far thicker than to scale, or it would be a hair.
    let half = |share: f64| 8.0 - 3.0 * share;
    let whole = (view.butt_trim_mm + view.cut_mm + view.tip_trim_mm).max(1.0);
    let piece = |from: f64, to: f64| {
        let (a, b) = ((from + view.butt_trim_mm) / whole, (to + view.butt_trim_mm) / whole);
        let (left, right) = (x.at(from), x.at(to));
        [(left, y - half(a)), (right, y - half(b)), (right, y + half(b)), (left, y + half(a))]
    };
    let off = |from: f64, to: f64, text: String| {
        let (left, right) = (x.at(from), x.at(to));
        html! {
            polygon.off points=(places(&piece(from, to))) {}
            line.off x1=(num(left)) x2=(num(right)) y1=(num(y + 9.0)) y2=(num(y - 9.0)) {}
            (label(paper, f64::midpoint(left, right), y - 18.0, &text, false))
        }
    };
    let swing_weight = x.at(view.balance_mm);
    html! {
        polygon.steel points=(places(&piece(0.0, view.cut_mm))) {}
        @if view.butt_trim_mm > 0.0 { (off(-view.butt_trim_mm, 0.0, text!(w, "picture-calc-shaft-off", off_mm = sound(view.butt_trim_mm)))) }
        @if view.tip_trim_mm > 0.0 { (off(view.cut_mm, view.cut_mm + view.tip_trim_mm, text!(w, "picture-calc-shaft-off", off_mm = sound(view.tip_trim_mm)))) }
        polygon.ink points=(places(&[(swing_weight, y + 8.0), (swing_weight - 7.0, y + 21.0), (swing_weight + 7.0, y + 21.0)])) {}
        (label(paper, swing_weight, y + 37.0, &text!(w, "picture-calc-shaft-balance", balance_mm = sound(view.balance_mm)), true))
    }
}

/// Cap, bore and ground line.
fn finished(
    w: &Words,
    view: &ShaftView,
    finish: &FinishView,
    ground_mm: f64,
    x: &Scale,
    (y, below_y): (f64, f64),
    paper: Paper,
) -> Markup {
    let cap = (x.at(-finish.cap_mm), x.at(0.0));
    let bottom = x.at(view.cut_mm + finish.off_bottom_mm);
    let mouth = finish.insertion_mm.map_or(bottom - 8.0, |mm| x.at(view.cut_mm - mm));
    let ground = x.at(ground_mm);
    html! {
        rect.ink x=(num(cap.0)) y=(num(y - 11.0)) width=(num((cap.1 - cap.0).max(2.0))) height="22" {}
        // The bore stands open to the shaft; the head's outline would say more than is known.
        polyline.outline points=(places(&[(mouth, y - 13.0), (bottom, y - 13.0), (bottom, y + 13.0), (mouth, y + 13.0)])) {}
        line.ground x1=(num(ground)) x2=(num(ground)) y1=(num(y - 16.0)) y2=(num(below_y - 14.0)) {}
        (label(paper, ground, below_y + 4.0, &w.text("picture-calc-shaft-ground"), false))
        @let bore = match finish.insertion_mm {
            Some(mm) if paper.narrow() => text!(w, "picture-calc-shaft-bore-narrow", in_mm = sound(mm)),
            Some(mm) => text!(w, "picture-calc-shaft-in-bore", in_mm = sound(mm)),
            None => w.text("picture-calc-shaft-bore"),
        };
        text.end.halo x=(num(bottom)) y=(num(y + 37.0)) { (bore) }
    }
}

/// Density along the raw shaft, with what comes off left dashed.
fn density(w: &Words, view: &ShaftView, x: &Scale, top: f64, paper: Paper) -> Markup {
    // By the inch for who works in inches, else by the metre: a millimetre of shaft weighs next to nothing.
    let by_inch = w.units.length == LengthUnit::Inch;
    let piece = if by_inch { INCH_MM / 1000.0 } else { 1.0 };
    let shown = |g_m: f64| heavy(w, g_m * piece);
    let at: Vec<(f64, f64)> = view.density.iter().map(|(mm, g_m)| (mm - view.butt_trim_mm, shown(*g_m))).collect();
    if at.len() < 2 {
        return html! {};
    }
    let up = range(at.iter().map(|(_, g_m)| *g_m).chain([0.0]), 0.06);
    let plot = Plot::within(
        paper,
        (if paper.narrow() { 42.0 } else { 52.0 }, paper.width - 16.0),
        (top + 20.0, paper.height - 16.0),
        (0.0, 1.0),
        (0.0, up.1),
    );
    let line = |points: &[(f64, f64)]| -> String {
        places(&points.iter().map(|(mm, g_m)| (x.at(sound(*mm)), plot.y.at(sound(*g_m)))).collect::<Vec<_>>())
    };
    let kept = between(&at, 0.0, view.cut_mm);
    let mut area = vec![(0.0, 0.0)];
    area.extend(&kept);
    area.push((view.cut_mm, 0.0));
    let (levels, decimals) = super::axes::ticks(0.0, up.1, 3);
    html! {
        g.grid {
            @for level in levels {
                line x1=(num(plot.left)) x2=(num(plot.right)) y1=(num(plot.y.at(level))) y2=(num(plot.y.at(level))) {}
                text.end x=(num(plot.left - 7.0)) y=(num(plot.y.at(level) + 5.0)) { (fixed(level, decimals)) }
            }
        }
        polygon.area points=(line(&area)) {}
        polyline.curve-2 points=(line(&at)) {}
        polyline.curve-1 points=(line(&kept)) {}
        text.start x="8" y=(num(top + 8.0)) { (text!(w, "picture-calc-shaft-density", mass = w.mass_sign(), length = if by_inch { "in" } else { "m" })) }
    }
}

/// The part of a line of straight pieces between two places.
fn between(line: &[(f64, f64)], from: f64, to: f64) -> Vec<(f64, f64)> {
    let mut part = Vec::new();
    for pair in line.windows(2) {
        let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
        let (left, right) = (x0.max(from), x1.min(to));
        if right >= left && x1 > x0 {
            let at = |x: f64| (x, y0 + (y1 - y0) * (x - x0) / (x1 - x0));
            part.extend([at(left), at(right)]);
        }
    }
    part
}
