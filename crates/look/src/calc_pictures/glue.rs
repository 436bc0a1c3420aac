//! A glued joint across its axis, and the times of the glue by temperature.

use maud::{Markup, html};
use words::{Words, text};

use super::super::layout::{num, text_width};
use super::axes::{Form, Paper, Picture, Plot, apart, fixed, label, mark, measure, papers, sound, ticks};

/// Tip and bore, in millimetres.
#[derive(Debug, Clone, Copy, Default)]
pub struct JointView {
    /// Diameter of the bore.
    pub bore_mm: f64,
    /// Diameter of the tip.
    pub tip_mm: f64,
    /// Depth of tip in the bore.
    pub depth_mm: f64,
    /// Gap under the tip.
    pub bottom_gap_mm: f64,
    /// Adhesive in the gap, in grams.
    pub ring_g: f64,
    /// Adhesive that the joint takes all told, in grams.
    pub all_told_g: f64,
}

/// Times of one kind: pot life, handling or full cure.
#[derive(Debug, Clone, Default)]
pub struct CureLine {
    /// Which time it is, in the reader's words: pot life, handling or full cure.
    pub name: String,
    /// Two points of the line, each degrees Celsius and minutes: those of the product's sheet.
    pub sheet: [(f64, f64); 2],
    /// Whether the sheet gives the first of them alone; the other is then worked out.
    pub one_point: bool,
    /// Minutes at the temperature of the shop.
    pub here_min: f64,
    /// Its standard deviation.
    pub here_min_sd: Option<f64>,
}

/// Times by temperature.
#[derive(Debug, Clone, Default)]
pub struct CureView {
    /// The shop's temperature in degrees Celsius.
    pub here_c: f64,
    /// The times.
    pub lines: Vec<CureLine>,
}

/// How much wider than it is the gap is drawn.
const GAP_ENLARGED: f64 = 10.0;

/// The picture of a joint.
#[must_use]
pub fn joint(w: &Words, view: &JointView) -> Markup {
    let gap_mm = (view.bore_mm - view.tip_mm) / 2.0;
    let words = text!(
        w,
        "picture-calc-joint-words",
        tip_mm = sound(view.tip_mm),
        bore_mm = sound(view.bore_mm),
        gap_mm = sound(gap_mm),
        depth_mm = sound(view.depth_mm),
        ring_g = sound(view.ring_g),
        joint_g = sound(view.all_told_g)
    );
    let title = w.text("picture-calc-joint");
    let picture = Picture { id: "calc-joint", title: &title, words: &words, papers: papers(244.0, 440.0) };
    picture.drawn(|paper| joint_drawing(w, view, gap_mm, paper))
}

fn joint_drawing(w: &Words, view: &JointView, gap_mm: f64, paper: Paper) -> Markup {
    let tip = sound(view.tip_mm).max(0.1);
    let gap = sound(gap_mm).max(0.0) * GAP_ENLARGED;
    let mm = 128.0 / (tip + 2.0 * gap);
    let (r_tip, r_bore) = (tip / 2.0 * mm, (tip / 2.0 + gap) * mm);
    let (x, y) = (if paper.narrow() { paper.width / 2.0 } else { 120.0 }, 96.0);
    let (left, top) = if paper.narrow() { (52.0, 250.0) } else { (280.0, 96.0) };
    html! {
        circle.head cx=(num(x)) cy=(num(y)) r=(num(r_bore + 18.0)) {}
        circle.glue cx=(num(x)) cy=(num(y)) r=(num(r_bore)) {}
        circle.steel cx=(num(x)) cy=(num(y)) r=(num(r_tip)) {}
        (label(paper, x, y + r_bore + 40.0, &text!(w, "picture-calc-joint-gap", gap_mm = sound(gap_mm)), true))
        (label(paper, x, y + r_bore + 60.0, &text!(w, "picture-calc-joint-fit", tip_mm = sound(view.tip_mm), bore_mm = sound(view.bore_mm)), false))
        (along(w, view, (r_tip, r_bore), (left, if paper.narrow() { top + 58.0 } else { top }), paper))
    }
}

/// The joint cut open along its axis.
fn along(w: &Words, view: &JointView, (r_tip, r_bore): (f64, f64), (left, y): (f64, f64), paper: Paper) -> Markup {
    let long = paper.width - left - if paper.narrow() { 36.0 } else { 60.0 };
    let depth = sound(view.depth_mm).max(0.1);
    let bottom = sound(view.bottom_gap_mm).max(0.0);
    let mm = long / (depth * 1.25 + bottom);
    let shaft_end = left + depth * 1.25 * mm;
    let mouth = left + depth * 0.25 * mm;
    let end = shaft_end + bottom * mm;
    let half = 0.75;
    html! {
        rect.head x=(num(mouth)) y=(num(y - half * r_bore - 16.0)) width=(num(end + 14.0 - mouth)) height=(num(2.0 * (half * r_bore + 16.0))) {}
        rect.glue x=(num(mouth)) y=(num(y - half * r_bore)) width=(num(end - mouth)) height=(num(2.0 * half * r_bore)) {}
        rect.steel x=(num(left)) y=(num(y - half * r_tip)) width=(num(shaft_end - left)) height=(num(2.0 * half * r_tip)) {}
        (measure(paper, mouth, shaft_end, y + half * r_bore + 32.0, &text!(w, "picture-calc-joint-deep", depth_mm = sound(view.depth_mm)), false))
        (label(paper, f64::midpoint(mouth, end), y + half * r_bore + 60.0, &text!(w, "picture-calc-joint-takes", ring_g = sound(view.ring_g), joint_g = sound(view.all_told_g)), true))
    }
}

/// The picture of times by temperature.
#[must_use]
pub fn cure(w: &Words, view: &CureView) -> Markup {
    let said = |line: &CureLine| text!(w, "picture-calc-cure-line", name = line.name, time = time(w, line.here_min));
    let said: Vec<String> = view.lines.iter().map(said).collect();
    let words = text!(w, "picture-calc-cure-words", here_c = fixed(view.here_c, 1), times = w.list(&said));
    let title = w.text("picture-calc-cure");
    let picture = Picture { id: "calc-cure", title: &title, words: &words, papers: papers(360.0, 320.0) };
    picture.drawn(|paper| cure_drawing(w, view, paper))
}

/// A time as it is said: minutes, hours or days.
fn time(w: &Words, minutes: f64) -> String {
    match sound(minutes) {
        m if m < 100.0 => text!(w, "picture-calc-minutes", count = fixed(m, 0)),
        m if m < 2880.0 => text!(w, "picture-calc-hours", count = fixed(m / 60.0, 1)),
        m => text!(w, "picture-calc-days", count = fixed(m / 1440.0, 1)),
    }
}

const KELVIN: f64 = 273.15;

/// The time at a temperature by the straight line of its logarithm over the inverse temperature.
fn at_temperature(sheet: &[(f64, f64); 2], celsius: f64) -> f64 {
    let inverse = |c: f64| 1.0 / (c + KELVIN);
    let [(a, time_a), (b, time_b)] = *sheet;
    let share = (inverse(celsius) - inverse(a)) / (inverse(b) - inverse(a));
    sound((time_a.ln() + share * (time_b.ln() - time_a.ln())).exp())
}

fn cure_drawing(w: &Words, view: &CureView, paper: Paper) -> Markup {
    let temperatures = || view.lines.iter().flat_map(|l| l.sheet).map(|(c, _)| sound(c)).chain([sound(view.here_c)]);
    let (low, high) = temperatures().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), c| (l.min(c), h.max(c)));
    let across = (low - 4.0, high + 4.0);
    let line = |l: &CureLine| -> Vec<(f64, f64)> {
        let at = |i: i32| across.0 + (across.1 - across.0) * f64::from(i) / 40.0;
        (0..=40).map(|i| (at(i), at_temperature(&l.sheet, at(i)).max(1e-3).log10())).collect()
    };
    let all: Vec<Vec<(f64, f64)>> = view.lines.iter().map(line).collect();
    let (least, most) =
        all.iter().flatten().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), (_, v)| (l.min(*v), h.max(*v)));
    let room = if paper.narrow() { 62.0 } else { 72.0 };
    let plot = Plot::new(paper, room, across, (least - 0.1, most + 0.15));
    let here = plot.x.at(sound(view.here_c));
    html! {
        (levels(w, &plot, (least, most)))
        text.start x="8" y="15" { (w.text("picture-calc-time")) }
        (plot.below(&w.text("picture-calc-temperature")))
        line.aim x1=(num(here)) x2=(num(here)) y1=(num(plot.top)) y2=(num(plot.bottom)) {}
        (label(paper, here, plot.top - 4.0, &text!(w, "picture-calc-here", here_c = fixed(view.here_c, 1)), true))
        @for ((points, cure), class) in all.iter().zip(&view.lines).zip(["curve-1", "curve-2", "curve-3"]) {
            polyline class=(class) points=(plot.line(points)) {}
            @for (c, minutes) in cure.sheet.into_iter().take(if cure.one_point { 1 } else { 2 }) { (mark(Form::Ring, plot.at(c, minutes.max(1e-3).log10()))) }
            (mark(Form::Dot, plot.at(view.here_c, cure.here_min.max(1e-3).log10())))
        }
        (names(w, view, &plot, paper))
    }
}

/// Round times up the axis.
fn levels(w: &Words, plot: &Plot, (least, most): (f64, f64)) -> Markup {
    const ROUND_MIN: [f64; 13] =
        [1.0, 5.0, 15.0, 30.0, 60.0, 180.0, 480.0, 1440.0, 2880.0, 7200.0, 20_160.0, 43_200.0, 525_600.0];
    let shown: Vec<f64> = ROUND_MIN.into_iter().filter(|m| (least - 0.1..=most + 0.15).contains(&m.log10())).collect();
    // Below a minute or beyond a year the plain powers do.
    let shown =
        if shown.is_empty() { ticks(least, most, 3).0.into_iter().map(|p| 10_f64.powf(p)).collect() } else { shown };
    let text = |m: f64| match m {
        m if m < 60.0 => text!(w, "picture-calc-minutes", count = fixed(m, 0)),
        m if m < 1440.0 => text!(w, "picture-calc-hours", count = fixed(m / 60.0, 0)),
        m if m < 2880.0 => w.text("picture-calc-one-day"),
        m => text!(w, "picture-calc-days", count = fixed(m / 1440.0, 0)),
    };
    html! {
        g.grid {
            @for minutes in shown {
                @let y = plot.y.at(minutes.log10());
                line x1=(num(plot.left)) x2=(num(plot.right)) y1=(num(y)) y2=(num(y)) {}
                text.end x=(num(plot.left - 7.0)) y=(num(y + 5.0)) { (text(minutes)) }
            }
        }
    }
}

/// What each line is and its time in the shop, right of the shop's line where there is room, else left.
fn names(w: &Words, view: &CureView, plot: &Plot, paper: Paper) -> Markup {
    let here = plot.x.at(sound(view.here_c));
    let wanted: Vec<f64> = view.lines.iter().map(|l| plot.y.at(l.here_min.max(1e-3).log10()) - 12.0).collect();
    let placed = apart(&wanted, paper.size + 4.0, plot.top + 4.0, plot.bottom - 4.0);
    html! {
        @for (line, y) in view.lines.iter().zip(placed) {
            @let text = match line.here_min_sd {
                Some(sd) if !paper.narrow() => text!(w, "picture-calc-cure-line-sd", name = line.name, time = time(w, line.here_min), sd = time(w, sd)),
                _ => text!(w, "picture-calc-cure-line", name = line.name, time = time(w, line.here_min)),
            };
            @if here + 12.0 + text_width(&text, paper.size, true) < plot.right {
                text.start.halo.strong x=(num(here + 12.0)) y=(num(y)) { (text) }
            } @else {
                text.end.halo.strong x=(num(here - 12.0)) y=(num(y)) { (text) }
            }
        }
    }
}
