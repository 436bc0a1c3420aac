//! The diameter along a grip against what is wanted.

use maud::{Markup, html};
use words::Words;

use super::super::layout::{num, text_width};
use super::axes::{Form, Paper, Picture, Plot, apart, fixed, label, mark, papers, range};

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
    let said: Vec<String> = view
        .places
        .iter()
        .map(|p| format!("{} in below the cap: {} in", fixed(p.below_cap_in, 1), fixed(p.diameter_in, 3)))
        .collect();
    let wanted = view.wanted_in.map_or(String::new(), |w| format!(" Wanted at the first place: {} in.", fixed(w, 3)));
    let words = format!("{}.{wanted}", said.join("; "));
    let picture =
        Picture { id: "calc-grip", title: "Diameter along the grip", words: &words, papers: papers(330.0, 300.0) };
    picture.drawn(|paper| drawing(w, view, paper))
}

fn drawing(w: &Words, view: &GripView, paper: Paper) -> Markup {
    let mut stations = view.places.clone();
    stations.sort_by(|a, b| a.below_cap_in.total_cmp(&b.below_cap_in));
    let values = stations.iter().flat_map(|p| [p.nominal_in, p.diameter_in, p.kept_in]).chain(view.wanted_in);
    let up = range(values, 0.16);
    let last_in = stations.iter().map(|p| p.below_cap_in).fold(4.0, f64::max);
    let room = if paper.narrow() { 50.0 } else { 60.0 };
    // The names of the lines stand right of the last place.
    let names_wide = NAMES.iter().map(|name| text_width(name, paper.size, false)).fold(0.0, f64::max) + 14.0;
    let across = paper.width - 14.0 - room;
    let end_in = last_in * across / (across - names_wide);
    let plot = Plot::new(paper, room, (0.0, end_in), up);
    let line = |of: fn(&GripPlace) -> f64| stations.iter().map(|p| (p.below_cap_in, of(p))).collect::<Vec<_>>();
    let (rule, kept, nominal) = (line(|p| p.diameter_in), line(|p| p.kept_in), line(|p| p.nominal_in));
    html! {
        (plot.axes("below the cap, in", "diameter, in"))
        @if let Some(to) = view.tape_to_in {
            @let (from, to) = (plot.x.at(0.0), plot.x.at(to.clamp(0.0, end_in)));
            rect.tape x=(num(from)) y=(num(plot.bottom - 7.0)) width=(num(to - from)) height="7" {}
            text.start.halo x=(num(from + 6.0)) y=(num(plot.bottom - 13.0)) { "tape under the grip" }
        }
        polyline.curve-3 points=(plot.line(&nominal)) {}
        polyline.curve-2 points=(plot.line(&kept)) {}
        polyline.curve-1 points=(plot.line(&rule)) {}
        @if let (Some(wanted), Some(first)) = (view.wanted_in, stations.first()) {
            @let (x, y) = plot.at(first.below_cap_in, wanted);
            line.aim x1=(num(plot.left)) x2=(num(x + 26.0)) y1=(num(y)) y2=(num(y)) {}
            (label(paper, f64::midpoint(plot.left, x), y - 9.0, &format!("wanted {}", fixed(wanted, 3)), true))
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
        (names(&stations, &plot, paper))
    }
}

/// What the lines are: by the trade's rule, with the rubber's volume kept, and without shaft and tape.
const NAMES: [&str; 3] = ["by the rule", "volume kept", "nominal"];

/// What each line is, at its last place, moved apart where they come close.
fn names(stations: &[GripPlace], plot: &Plot, paper: Paper) -> Markup {
    let Some(last) = stations.last() else { return html! {} };
    let x = plot.x.at(last.below_cap_in) + 11.0;
    let wanted = [last.diameter_in, last.kept_in, last.nominal_in].map(|v| plot.y.at(v));
    let placed = apart(&wanted, paper.size + 4.0, plot.top, plot.bottom - 24.0);
    html! {
        @for (name, y) in NAMES.iter().zip(placed) {
            text.start.halo x=(num(x)) y=(num(y + 5.0)) { (name) }
        }
    }
}
