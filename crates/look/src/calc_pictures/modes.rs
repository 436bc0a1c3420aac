//! How a clamped club swings in its first modes, and how it bends under a load at its tip.

use maud::{Markup, html};
use words::{Words, text};

use super::super::layout::num;
use super::axes::{Paper, Picture, Plot, fixed, label, long, papers, sound};

/// Lines of a clamped club, from the clamp to the tip: places in millimetres and how far the shaft stands off there.
#[derive(Debug, Clone, Default)]
pub struct ModesView {
    /// Frequency in cycles a minute and shape of each mode, its largest deflection 1.
    pub modes: Vec<(f64, Vec<(f64, f64)>)>,
    /// Deflection under the load, in millimetres.
    pub bent: Vec<(f64, f64)>,
    /// The load in newtons.
    pub load_n: f64,
    /// A head or weight sits at the tip.
    pub head: bool,
}

const ROW: f64 = 92.0;

/// The picture of the modes.
#[must_use]
pub fn modes(w: &Words, view: &ModesView) -> Markup {
    let cpm: Vec<String> = view.modes.iter().map(|(cpm, _)| fixed(*cpm, 1)).collect();
    let tip_mm = view.bent.last().map_or(0.0, |(_, mm)| *mm);
    let words = text!(
        w,
        "picture-calc-modes-words",
        all = cpm.join(", "),
        load = fixed(view.load_n, 2),
        bent_mm = sound(tip_mm)
    );
    let rows = view.modes.len() as f64 + 1.0;
    let papers = papers(ROW * rows + 58.0, ROW * rows + 58.0);
    let title = w.text("picture-calc-modes");
    let picture = Picture { id: "calc-modes", title: &title, words: &words, papers };
    picture.drawn(|paper| drawing(w, view, paper))
}

fn drawing(w: &Words, view: &ModesView, paper: Paper) -> Markup {
    let free_mm = view.bent.last().map_or(1.0, |(mm, _)| *mm).max(1.0);
    let bottom = paper.height - 46.0;
    let whole = Plot::within(paper, (34.0, paper.width - 26.0), (0.0, bottom), (0.0, long(w, free_mm)), (0.0, 1.0));
    let order = ["picture-calc-mode-first", "picture-calc-mode-second", "picture-calc-mode-third"];
    html! {
        (clamp(bottom))
        @for ((cpm, line), i) in view.modes.iter().zip(0_usize..) {
            @let name = w.text_with(order.get(i).copied().unwrap_or("picture-calc-mode-next"), &[("cycles", words::figure(&fixed(*cpm, if *cpm < 1000.0 { 1 } else { 0 })))]);
            (row(view, line, 1.15, i as f64, &name, true, paper))
        }
        @let most = view.bent.iter().map(|(_, mm)| sound(*mm).abs()).fold(1e-9, f64::max);
        @let name = text!(w, "picture-calc-modes-bent", bent_mm = sound(view.bent.last().map_or(0.0, |b| b.1)), load = fixed(view.load_n, 2));
        // A bent shaft hangs down, as on the bench.
        @let down: Vec<(f64, f64)> = view.bent.iter().map(|(at, mm)| (*at, -mm)).collect();
        (row(view, &down, 1.15 * most, view.modes.len() as f64, &name, false, paper))
        (whole.below(&text!(w, "picture-calc-modes-axis", unit = w.length_sign())))
    }
}

fn clamp(bottom: f64) -> Markup {
    html! {
        rect.steel x="20" y="4" width="14" height=(num(bottom - 4.0)) {}
        line.ink-line x1="34" x2="34" y1="4" y2=(num(bottom)) {}
    }
}

fn row(view: &ModesView, line: &[(f64, f64)], reach: f64, at: f64, name: &str, swings: bool, paper: Paper) -> Markup {
    let (top, bottom) = (ROW * at + 22.0, ROW * (at + 1.0) + 2.0);
    let free_mm = line.last().map_or(1.0, |(mm, _)| *mm).max(1.0);
    let plot = Plot::within(paper, (34.0, paper.width - 26.0), (top, bottom), (0.0, free_mm), (-reach, reach));
    let other: Vec<(f64, f64)> = line.iter().map(|(x, y)| (*x, -y)).collect();
    let rest = plot.y.at(0.0);
    let tip = line.last().map(|(x, y)| plot.at(*x, *y));
    // Where the line crosses its rest, the shaft stands still.
    let nodes: Vec<f64> = line
        .windows(2)
        .filter(|pair| pair[0].1 * pair[1].1 < 0.0)
        .map(|pair| pair[0].0 + (pair[1].0 - pair[0].0) * pair[0].1 / (pair[0].1 - pair[1].1))
        .collect();
    html! {
        line.rest x1=(num(plot.left)) x2=(num(plot.right)) y1=(num(rest)) y2=(num(rest)) {}
        @if swings { polyline.curve-2 points=(plot.line(&other)) {} }
        polyline.curve-1 points=(plot.line(line)) {}
        @for node in &nodes { circle.mark.open cx=(num(plot.x.at(*node))) cy=(num(rest)) r="4" {} }
        @if let (Some((x, y)), true) = (tip, view.head) {
            rect.bob x=(num(x - 1.0)) y=(num(y - 7.0)) width="14" height="14" {}
        }
        (label(paper, plot.left + 110.0, if swings { top + 2.0 } else { bottom - 8.0 }, name, true))
    }
}
