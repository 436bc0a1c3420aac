//! The heap: every weighed part as a dot over its mass, beside the maker's figure and the numbers to either side.

use maud::{Markup, html};
use quantity::decimal;
use words::{Words, text};

use super::layout::{Scale, num};

/// What the parts of one model and number weigh.
#[derive(Debug, Clone, Default)]
pub struct HeapView {
    /// Identity in the page.
    pub id: String,
    /// What they are: `Siskin 7`.
    pub name: String,
    /// The maker's figure, in grams.
    pub nominal_g: f64,
    /// One standard deviation about it, in grams.
    pub sd_g: f64,
    /// Masses in the order in which they came.
    pub masses_g: Vec<f64>,
    /// A mass that is asked about and not kept yet.
    pub asked_g: Option<f64>,
    /// The numbers beside it with what they weigh.
    pub beside: Vec<(String, f64)>,
}

#[derive(Clone, Copy)]
struct Paper {
    name: &'static str,
    width: f64,
    height: f64,
    size: f64,
}

const WIDE: Paper = Paper { name: "wide", width: 620.0, height: 220.0, size: 15.0 };
const NARROW: Paper = Paper { name: "narrow", width: 350.0, height: 200.0, size: 14.0 };
/// Numbers farther away than this many standard deviations are not drawn: they would press the dots together.
const BESIDE_WITHIN_SD: f64 = 8.0;
/// Parts that are drawn, the last ones.
const DRAWN: usize = 400;

/// The picture, told in words for those who do not see it.
#[must_use]
pub fn heap(w: &Words, view: &HeapView) -> Markup {
    html! {
        figure.calc-picture #(view.id) {
            (drawing(w, view, WIDE)) (drawing(w, view, NARROW))
            figcaption { (words(w, view)) }
        }
    }
}

/// `12 weighed, 266.8 g on average, +1.3 g from the maker's 265.5 g; they scatter by 1.1 g`.
fn words(w: &Words, view: &HeapView) -> String {
    let n = view.masses_g.len();
    if n == 0 {
        return text!(w, "weigh-in-heap-none", nominal_g = view.nominal_g);
    }
    let mean_g = view.masses_g.iter().sum::<f64>() / n as f64;
    let squares: f64 = view.masses_g.iter().map(|g| (g - mean_g).powi(2)).sum();
    let sd_g = (n > 1).then(|| (squares / (n as f64 - 1.0)).sqrt());
    let off_g = mean_g - view.nominal_g;
    text!(w, "weigh-in-heap-words", n = n, mean_g = mean_g, off_g = off_g, nominal_g = view.nominal_g, sd_g = sd_g)
}

/// From which mass to which: the maker's band and all that was weighed, with the numbers beside it where they are near.
fn range(view: &HeapView) -> (f64, f64) {
    let sd = if view.sd_g.is_finite() && view.sd_g > 0.0 { view.sd_g } else { 0.1 };
    let near = |g: &f64| (g - view.nominal_g).abs() <= BESIDE_WITHIN_SD * sd;
    let beside = view.beside.iter().map(|(_, g)| *g).filter(near);
    // What lies far out stands at the edge, so that one slip does not press all others together.
    let most = 12.0 * sd;
    let weighed = view.masses_g.iter().copied().chain(view.asked_g);
    let all = weighed.map(|g| g.clamp(view.nominal_g - most, view.nominal_g + most)).chain(beside);
    let (low, high) =
        all.fold((view.nominal_g - 3.5 * sd, view.nominal_g + 3.5 * sd), |(low, high), g| (low.min(g), high.max(g)));
    (low - 0.6 * sd, high + 0.6 * sd)
}

fn drawing(w: &Words, view: &HeapView, paper: Paper) -> Markup {
    let (low, high) = range(view);
    let (left, right, base, top) = (10.0, paper.width - 10.0, paper.height - 40.0, 30.0);
    let across = Scale::new(low, high, left, right);
    let dots = stacked(view, &across, base, top);
    let sd = view.sd_g.max(0.0);
    let (from, to) = (across.at(view.nominal_g - 2.0 * sd), across.at(view.nominal_g + 2.0 * sd));
    html! {
        svg class={ "calc-" (paper.name) } viewBox={ "0 0 " (paper.width) " " (paper.height) } role="img"
            aria-label=(text!(w, "weigh-in-heap-title", name = view.name.as_str(), words = words(w, view))) font-size=(paper.size) {
            rect.zone x=(num(from)) y=(num(top)) width=(num((to - from).max(0.0))) height=(num(base - top)) {}
            line.aim x1=(num(across.at(view.nominal_g))) x2=(num(across.at(view.nominal_g))) y1=(num(top)) y2=(num(base)) {}
            line.axis x1=(left) x2=(right) y1=(num(base)) y2=(num(base)) {}
            (beside(view, &across, low, high, base, top, paper))
            (ticks(w, &across, low, high, base, paper))
            @for dot in &dots { circle.mark.open[!dot.last] cx=(num(dot.x)) cy=(num(dot.y)) r=(num(dot.r)) {} }
            @if let Some(asked) = view.asked_g {
                @let x = across.at(asked.clamp(low, high));
                line.off x1=(num(x)) x2=(num(x)) y1=(num(top)) y2=(num(base)) {}
                text.strong.halo x=(num(x)) y=(num(base - 6.0)) { "?" }
            }
            text.halo x=(num(across.at(view.nominal_g))) y=(num(top - 10.0)) { (text!(w, "weigh-in-heap-maker", nominal_g = view.nominal_g)) }
        }
    }
}

struct Dot {
    x: f64,
    y: f64,
    r: f64,
    last: bool,
}

/// Dots of equal mass stand on each other; they shrink before the heap grows out of the picture.
fn stacked(view: &HeapView, across: &Scale, base: f64, top: f64) -> Vec<Dot> {
    let masses = &view.masses_g[view.masses_g.len().saturating_sub(DRAWN)..];
    let (low, high) = range(view);
    let place = |r: f64| -> Vec<(i64, f64)> {
        let step = 2.0 * r / across.per_unit().abs().max(1e-9);
        masses
            .iter()
            .map(|g| ((g.clamp(low, high) - low) / step).floor())
            .map(|bin| (bin as i64, (bin + 0.5) * step + low))
            .collect()
    };
    let mut r = 7.0;
    loop {
        let placed = place(r);
        let mut heights = std::collections::BTreeMap::<i64, u32>::new();
        for (bin, _) in &placed {
            *heights.entry(*bin).or_default() += 1;
        }
        let tallest = heights.values().max().copied().unwrap_or(0);
        if 2.0 * r * f64::from(tallest) <= base - top - 4.0 || r <= 1.5 {
            let mut grown = std::collections::BTreeMap::<i64, f64>::new();
            return placed
                .iter()
                .enumerate()
                .map(|(i, (bin, mass))| {
                    let below = grown.entry(*bin).or_insert(0.0);
                    let y = base - r - 2.0 * r * *below;
                    *below += 1.0;
                    Dot { x: across.at(*mass), y: y.max(top), r: (r - 0.5).max(1.2), last: i + 1 == masses.len() }
                })
                .collect();
        }
        r *= 0.85;
    }
}

fn beside(view: &HeapView, across: &Scale, low: f64, high: f64, base: f64, top: f64, paper: Paper) -> Markup {
    html! {
        @for (number, mass_g) in view.beside.iter().filter(|(_, g)| (low..=high).contains(g)) {
            @let x = across.at(*mass_g);
            line.rest x1=(num(x)) x2=(num(x)) y1=(num(top + paper.size)) y2=(num(base)) {}
            text.halo x=(num(x)) y=(num(top + paper.size - 4.0)) { (number) }
        }
    }
}

/// Ticks at round figures of the reader's unit.
fn ticks(w: &Words, across: &Scale, low_g: f64, high_g: f64, base: f64, paper: Paper) -> Markup {
    let unit_g = w.units.mass.grams();
    let (low, high) = (low_g / unit_g, high_g / unit_g);
    let room = (high - low) / (paper.width / (paper.size * 4.5));
    let steps = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0];
    let step = steps.into_iter().find(|s| *s >= room).unwrap_or(100.0);
    let first = (low / step).ceil();
    let count = (((high - first * step) / step).floor().max(0.0) as u32).min(40);
    let decimals = if step < 0.1 { 2 } else { u8::from(step < 1.0) };
    html! {
        @for i in 0..=count {
            @let mass = (first + f64::from(i)) * step;
            @let x = num(across.at(mass * unit_g));
            line x1=(x) x2=(x) y1=(num(base)) y2=(num(base + 5.0)) {}
            text x=(x) y=(num(base + 6.0 + paper.size)) { (w.printed(&decimal(mass, decimals))) }
        }
        text.end x=(num(paper.width - 6.0)) y=(num(base + 8.0 + 2.0 * paper.size)) { (w.mass_sign()) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    fn view(masses_g: Vec<f64>) -> HeapView {
        HeapView {
            id: "heap".into(),
            name: "Siskin 7".into(),
            nominal_g: 265.5,
            sd_g: 1.5,
            masses_g,
            asked_g: None,
            beside: vec![("6".into(), 258.0), ("8".into(), 273.0), ("P".into(), 288.5)],
        }
    }

    #[test]
    fn every_part_is_a_dot_inside_the_picture() {
        let mut masses = vec![265.5; 60];
        masses.extend([264.0, 268.2, 345.0]);
        let text = heap(&w(), &view(masses)).into_string();
        // Once on each paper.
        assert_eq!(text.matches("<circle").count(), 2 * 63);
        assert_eq!(text.matches("class=\"mark\"").count(), 2, "the last one is filled");
        for y in text.split("cy=\"").skip(1).map(|rest| rest.split('"').next().unwrap().parse::<f64>().unwrap()) {
            assert!((20.0..190.0).contains(&y), "{y}");
        }
        assert!(text.contains(">6</text>") && text.contains(">8</text>") && !text.contains(">P</text>"), "{text}");
        // By hand: (60 · 265.5 + 264.0 + 268.2 + 345.0) / 63 = 266.78.
        assert!(text.contains("63 weighed, 266.8 g on average, +1.3 g from the maker's 265.5 g"), "{text}");
    }

    #[test]
    fn an_empty_heap_and_a_question_are_drawn() {
        let text = heap(&w(), &HeapView { asked_g: Some(272.6), ..view(vec![]) }).into_string();
        assert!(text.contains("None weighed yet") && text.contains(">?</text>"), "{text}");
        let flat = heap(&w(), &HeapView { sd_g: 0.0, ..view(vec![265.5]) }).into_string();
        assert!(!flat.contains("NaN") && !flat.contains("inf"), "{flat}");
    }
}
