//! The diameter along a grip against what is wanted.

use maud::{Markup, html};
use quantity::INCH_MM;
use words::{Words, text};

use super::super::layout::{num, text_width};
use super::axes::{Form, Paper, Picture, Plot, apart, label, long, mark, papers, range, sound};

/// A place along the grip. All in inches.
#[derive(Debug, Clone, Copy, Default)]
pub struct GripPlace {
    /// Below the end of the cap.
    pub below_cap_in: f64,
    /// Diameter where core and shaft agree, without tape.
    pub nominal_in: f64,
    /// Diameter by the trade's rule.
    pub diameter_in: f64,
    /// Its standard deviation.
    pub diameter_in_sd: Option<f64>,
    /// Diameter if the rubber keeps its volume.
    pub kept_in: f64,
}

/// A grip on its shaft.
#[derive(Debug, Clone, Default)]
pub struct GripView {
    /// Places along it.
    pub places: Vec<GripPlace>,
    /// Wanted at the first place.
    pub wanted_in: Option<f64>,
    /// Where the tape ends below the cap, where there is tape.
    pub tape_to_in: Option<f64>,
}

/// The picture of a grip's size.
#[must_use]
pub fn grip(w: &Words, view: &GripView) -> Markup {
    let of = |p: &GripPlace| {
        let (at_mm, wide_mm) = (sound(p.below_cap_in) * INCH_MM, sound(p.diameter_in) * INCH_MM);
        text!(w, "picture-calc-grip-place", below_mm = at_mm, wide_mm = wide_mm)
    };
    let said: Vec<String> = view.places.iter().map(of).collect();
    let words = match view.wanted_in.map(|wanted_in| sound(wanted_in) * INCH_MM) {
        Some(wanted_mm) => text!(w, "picture-calc-grip-wanted-words", places = said.join("; "), wanted_mm = wanted_mm),
        None => text!(w, "picture-calc-grip-words", places = said.join("; ")),
    };
    let title = w.text("picture-calc-grip");
    let picture = Picture { id: "calc-grip", title: &title, words: &words, papers: papers(330.0, 300.0) };
    picture.drawn(|paper| drawing(w, view, paper))
}

fn drawing(w: &Words, view: &GripView, paper: Paper) -> Markup {
    // From here on all is in the reader's unit.
    let unit = long(w, INCH_MM);
    let shown = |p: &GripPlace| GripPlace {
        below_cap_in: p.below_cap_in * unit,
        nominal_in: p.nominal_in * unit,
        diameter_in: p.diameter_in * unit,
        diameter_in_sd: p.diameter_in_sd.map(|sd| sd * unit),
        kept_in: p.kept_in * unit,
    };
    let mut stations: Vec<GripPlace> = view.places.iter().map(shown).collect();
    let wanted_mm = view.wanted_in.map(|wanted_in| sound(wanted_in) * INCH_MM);
    let names_of_lines = NAMES.map(|name| w.text(name));
    stations.sort_by(|a, b| a.below_cap_in.total_cmp(&b.below_cap_in));
    let values =
        stations.iter().flat_map(|p| [p.nominal_in, p.diameter_in, p.kept_in]).chain(wanted_mm.map(|mm| long(w, mm)));
    let up = range(values, 0.16);
    let last_in = stations.iter().map(|p| p.below_cap_in).fold(4.0 * unit, f64::max);
    let room = if paper.narrow() { 50.0 } else { 60.0 };
    // The names of the lines stand right of the last place.
    let names_wide = names_of_lines.iter().map(|name| text_width(name, paper.size, false)).fold(0.0, f64::max) + 14.0;
    let across = paper.width - 14.0 - room;
    let end_in = last_in * across / (across - names_wide);
    let plot = Plot::new(paper, room, (0.0, end_in), up);
    let line = |of: fn(&GripPlace) -> f64| stations.iter().map(|p| (p.below_cap_in, of(p))).collect::<Vec<_>>();
    let (rule, kept, nominal) = (line(|p| p.diameter_in), line(|p| p.kept_in), line(|p| p.nominal_in));
    html! {
        (plot.axes(&text!(w, "picture-calc-grip-below", unit = w.length_sign()), &text!(w, "picture-calc-grip-diameter", unit = w.length_sign())))
        @if let Some(to) = view.tape_to_in {
            @let (from, to) = (plot.x.at(0.0), plot.x.at((to * unit).clamp(0.0, end_in)));
            rect.tape x=(num(from)) y=(num(plot.bottom - 7.0)) width=(num(to - from)) height="7" {}
            text.start.halo x=(num(from + 6.0)) y=(num(plot.bottom - 13.0)) { (w.text("picture-calc-grip-tape")) }
        }
        polyline.curve-3 points=(plot.line(&nominal)) {}
        polyline.curve-2 points=(plot.line(&kept)) {}
        polyline.curve-1 points=(plot.line(&rule)) {}
        @if let (Some(wanted_mm), Some(first)) = (wanted_mm, stations.first()) {
            @let (x, y) = plot.at(first.below_cap_in, long(w, wanted_mm));
            line.aim x1=(num(plot.left)) x2=(num(x + 26.0)) y1=(num(y)) y2=(num(y)) {}
            (label(paper, f64::midpoint(plot.left, x), y - 9.0, &text!(w, "picture-calc-grip-wanted", wanted_mm = wanted_mm), true))
        }
        @for p in &stations {
            @if let Some(sd) = p.diameter_in_sd.filter(|sd| *sd * plot.y.per_unit().abs() > 3.0) {
                @let (x, high, low) = (plot.x.at(p.below_cap_in), plot.y.at(p.diameter_in + sd), plot.y.at(p.diameter_in - sd));
                line.doubt x1=(num(x)) x2=(num(x)) y1=(num(high)) y2=(num(low)) {}
            }
            (mark(Form::Dot, plot.at(p.below_cap_in, p.diameter_in)))
            (mark(Form::Diamond, plot.at(p.below_cap_in, p.kept_in)))
            (mark(Form::Ring, plot.at(p.below_cap_in, p.nominal_in)))
        }
        (names(&names_of_lines, &stations, &plot, paper))
    }
}

/// What the lines are: by the trade's rule, with the rubber's volume kept, and without shaft and tape.
const NAMES: [&str; 3] = ["picture-calc-grip-rule", "picture-calc-grip-kept", "picture-calc-grip-nominal"];

/// What each line is, at its last place, moved apart where they come close.
fn names(names: &[String; 3], stations: &[GripPlace], plot: &Plot, paper: Paper) -> Markup {
    let Some(last) = stations.last() else { return html! {} };
    let x = plot.x.at(last.below_cap_in) + 11.0;
    let wanted = [last.diameter_in, last.kept_in, last.nominal_in].map(|v| plot.y.at(v));
    let placed = apart(&wanted, paper.size + 4.0, plot.top, plot.bottom - 24.0);
    html! {
        @for (name, y) in names.iter().zip(placed) {
            text.start.halo x=(num(x)) y=(num(y + 5.0)) { (name) }
        }
    }
}
