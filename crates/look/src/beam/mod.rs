//! The beam: the club drawn to scale on its fulcrum, each mass hung at its arm, and under it the letter scale with
//! where the club stands, what is still to come and where it will finish.
//!
//! Two drawings are made of one geometry, and the style sheet shows the one that fits: the wide one carries the names
//! and figures itself, the narrow one carries numbers and the list below tells them. Screen readers get the list.

mod axis;
mod club;
mod hung;
pub(crate) mod outline;

use maud::{Markup, html};
use words::{Words, text};

use super::layout::Scale;
use quantity::Length;

/// The outline of the head.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum ClubShape {
    /// Driver and fairway woods.
    Wood,
    /// Hybrid.
    Hybrid,
    /// Iron.
    #[default]
    Iron,
    /// Wedge.
    Wedge,
    /// Putter.
    Putter,
}

/// What a piece is; decides which part of the drawing stands solid or dashed.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum PieceKind {
    /// Head.
    Head,
    /// Shaft.
    Shaft,
    /// Grip.
    Grip,
    /// Tape under the grip.
    Tape,
    /// Tip weight.
    TipWeight,
    /// Ferrule.
    Ferrule,
    /// Adhesive.
    Adhesive,
    /// Adapter.
    Adapter,
    /// Anything else, such as lead tape.
    #[default]
    Other,
}

/// One mass on the club, or still to come.
#[derive(Debug, Clone, Default)]
pub struct BeamPiece {
    /// Its name: `tip weight`.
    pub label: String,
    /// Mass in grams.
    pub mass_g: f64,
    /// Where its centre lies, inches from the butt end of the shaft along the axis.
    pub arm_in: f64,
    /// What it adds to the swing weight, in points (negative nearer than the fulcrum).
    pub points: f64,
    /// On the club now; else still to come.
    pub on: bool,
    /// Which part of the drawing stands for it.
    pub kind: PieceKind,
}

/// One club as the beam shows it. Points count from A0, so D0 is 30.
#[derive(Debug, Clone)]
pub struct BeamView {
    /// Identity in the page, without spaces: `beam-6`.
    pub id: String,
    /// Name of the club: `6-iron`; empty where it has none.
    pub club: String,
    /// Outline of the head.
    pub shape: ClubShape,
    /// Butt end of the shaft (at 0) to where the shaft axis meets the ground, inches.
    pub length_in: f64,
    /// Thickness of the grip's cap, inches.
    pub cap_in: f64,
    /// Where the fulcrum stands, inches from the butt.
    pub fulcrum_in: f64,
    /// Masses, in any order.
    pub pieces: Vec<BeamPiece>,
    /// Where the club stands now, in points.
    pub now_points: Option<f64>,
    /// Where it will finish, in points.
    pub forecast_points: Option<f64>,
    /// Half the 95 % band of the finish, in points.
    pub forecast_band_points: f64,
    /// Swing weight asked of the finished club, in points; none where there is no target to mark.
    pub target_points: Option<f64>,
    /// Half the tolerance, in points.
    pub tolerance_points: f64,
    /// Name of what the pieces to come do not explain by themselves, such as the cap that moves every arm. Empty: `cap
    /// and rest`.
    pub remainder_label: String,
    /// Always the narrow drawing.
    pub compact: bool,
    /// The narrow drawing without its weights: the club and where it stands, where the screen has no room for more.
    pub slim: bool,
}

impl Default for BeamView {
    fn default() -> Self {
        Self {
            id: "beam".to_owned(),
            club: String::new(),
            shape: ClubShape::default(),
            length_in: 37.5,
            cap_in: 0.12,
            fulcrum_in: 14.0,
            pieces: Vec::new(),
            now_points: None,
            forecast_points: None,
            forecast_band_points: 0.0,
            target_points: None,
            tolerance_points: 0.3,
            remainder_label: String::new(),
            compact: false,
            slim: false,
        }
    }
}

/// What differs between the wide and the narrow drawing. Lengths in drawing units.
#[derive(Debug, Clone, Copy)]
struct Paper {
    width: f64,
    margin: f64,
    /// Size of the text.
    size: f64,
    /// Room between the axis of the beam and the row of weights.
    hang: f64,
    /// Radius of a weight of 1 g; area goes with mass.
    bob: f64,
    narrow: bool,
}

const WIDE: Paper = Paper { width: 980.0, margin: 30.0, size: 16.0, hang: 98.0, bob: 1.2, narrow: false };
const NARROW: Paper = Paper { width: 360.0, margin: 14.0, size: 15.0, hang: 72.0, bob: 0.85, narrow: true };

/// The longest club drawn; beyond it something was misread, and the drawing would say nothing.
const LONGEST_IN: f64 = 80.0;

impl Paper {
    /// Inches to drawing units: butt at the margin, the farthest thing at the other margin.
    fn inches(&self, view: &BeamView) -> Scale {
        let length_in = drawn_length_in(view);
        let farthest_in = view
            .pieces
            .iter()
            .map(|piece| piece.arm_in)
            .filter(|arm_in| (0.0..=LONGEST_IN).contains(arm_in))
            .fold(length_in + club::overhang_in(view.shape), f64::max);
        // The cap of the grip stands before the butt; a little room for it.
        Scale::new(-0.4, farthest_in, self.margin, self.width - self.margin)
    }
}

fn drawn_length_in(view: &BeamView) -> f64 {
    if view.length_in.is_finite() && view.length_in > 4.0 { view.length_in.min(LONGEST_IN) } else { 37.5 }
}

/// Pieces from butt to head. What cannot be placed is left out of the drawing, but stays in the list.
fn by_arm(view: &BeamView) -> Vec<&BeamPiece> {
    let mut pieces: Vec<_> = view.pieces.iter().collect();
    pieces.sort_by(|a, b| a.arm_in.total_cmp(&b.arm_in));
    pieces
}

fn placed<'a>(pieces: &[&'a BeamPiece]) -> Vec<(usize, &'a BeamPiece)> {
    let fits = |piece: &BeamPiece| piece.mass_g.is_finite() && (-1.0..=LONGEST_IN).contains(&piece.arm_in);
    pieces.iter().enumerate().filter(|(_, piece)| fits(piece)).map(|(at, piece)| (at + 1, *piece)).collect()
}

/// The picture with its list.
#[must_use]
pub fn beam(w: &Words, view: &BeamView) -> Markup {
    let pieces = by_arm(view);
    let wide = (!view.compact).then(|| drawing(w, view, &pieces, WIDE));
    let listed = wide.as_ref().is_none_or(|(_, numbered)| *numbered);
    let (narrow, _) = drawing(w, view, &pieces, NARROW);
    html! {
        figure.beam.listed[listed].slim[view.slim] #(view.id) {
            @if let Some((wide, _)) = &wide { (wide) }
            (narrow)
            div.beam-list-room { (list(w, view, &pieces)) }
        }
    }
}

/// One drawing, and whether its weights carry numbers in place of names.
fn drawing(w: &Words, view: &BeamView, pieces: &[&BeamPiece], paper: Paper) -> (Markup, bool) {
    let inches = paper.inches(view);
    let slim = view.slim && paper.narrow;
    let ruler_y = if paper.narrow { 18.0 } else { 15.0 };
    let beam_y = if slim { 14.0 } else { ruler_y + if paper.narrow { 26.0 } else { 33.0 } };
    let depth = club::depth_in(view.shape) * inches.per_unit();
    let shelf_y = beam_y + paper.hang.max(depth + if paper.narrow { 32.0 } else { 42.0 });
    let hung = (!slim).then(|| hung::hung(w, &placed(pieces), &inches, beam_y, shelf_y, paper));
    let below_y = hung.as_ref().map_or(beam_y + depth + 4.0, |hung| hung.bottom_y);
    let axis = axis::axis(w, view, below_y + if paper.narrow { 22.0 } else { 21.0 }, paper);
    let (name, title_id) = (if paper.narrow { "narrow" } else { "wide" }, format!("{}-{}", view.id, paper.width));
    let markup = html! {
        svg class={ "beam-" (name) } viewBox={ "0 0 " (paper.width) " " (axis.bottom_y.ceil()) } role="img"
            aria-labelledby={ (title_id) "-t" } aria-describedby={ (title_id) "-d" } {
            title id={ (title_id) "-t" } { (with_club(w, "beam-title", view)) }
            desc id={ (title_id) "-d" } { (described(w, view)) }
            @if !slim { (club::ruler(w, view, &inches, ruler_y, paper)) }
            (club::club(view, &inches, beam_y))
            @if let Some(hung) = &hung { (hung.markup) }
            (axis.markup)
        }
    };
    (markup, hung.is_some_and(|hung| hung.numbered))
}

/// A text about the club by its name, or about the club where it has none.
fn with_club(w: &Words, id: &str, view: &BeamView) -> String {
    w.text_with(id, &[("club", words::figure(&(!view.club.is_empty()).then(|| view.club.clone())))])
}

/// The whole picture in words.
fn described(w: &Words, view: &BeamView) -> String {
    let half = |points: f64| points.is_finite().then_some(points);
    let mut said = vec![match view.now_points {
        Some(now) => text!(w, "beam-now", now_points = now),
        None => w.text("beam-no-reading"),
    }];
    if let Some(finish) = view.forecast_points {
        let band = half(view.forecast_band_points);
        said.push(text!(w, "beam-finish", finish_points = finish, band_points = band));
    }
    if let Some(target) = view.target_points {
        let (target, tolerance) = (w.swing_weight_short(target), half(view.tolerance_points));
        said.push(text!(w, "beam-target", target = target, tolerance_points = tolerance));
    }
    said.push(w.text("beam-see-table"));
    said.join(" ")
}

/// The list: shown under the narrow drawing, read out by screen readers always.
fn list(w: &Words, view: &BeamView, pieces: &[&BeamPiece]) -> Markup {
    html! {
        table.beam-list {
            caption.hidden { (with_club(w, "beam-list", view)) }
            thead.hidden {
                tr {
                    @for head in ["beam-number", "beam-piece", "beam-mass", "beam-arm", "beam-points"] {
                        th scope="col" { (w.text(head)) }
                    }
                }
            }
            tbody {
                @if pieces.is_empty() { tr { td {} th scope="row" { (w.text("beam-empty")) } td {} td {} td {} } }
                @for (at, piece) in pieces.iter().enumerate() {
                    tr.coming[!piece.on] {
                        td.beam-number { (at + 1) }
                        th scope="row" { (if piece.on { piece.label.clone() } else { text!(w, "beam-to-come", piece = piece.label) }) }
                        td.fig { (w.mass(piece.mass_g)) }
                        td.fig.beam-arm { (arm_text(w, piece.arm_in)) }
                        td.fig { (w.signed(piece.points, 1)) }
                    }
                }
            }
        }
    }
}

fn arm_text(w: &Words, arm_in: f64) -> String {
    w.length_to(Length::from_inch(arm_in).mm(), 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    fn iron() -> BeamView {
        let piece = |label: &str, mass_g, arm_in, points, on, kind| BeamPiece {
            label: label.to_owned(),
            mass_g,
            arm_in,
            points,
            on,
            kind,
        };
        BeamView {
            club: "6-iron".to_owned(),
            pieces: vec![
                piece("head", 256.1, 37.6, 122.2, true, PieceKind::Head),
                piece("shaft", 98.6, 16.9, 5.8, true, PieceKind::Shaft),
                piece("grip", 48.3, 4.0, -9.8, false, PieceKind::Grip),
                piece("<i>adhesive", 1.8, 36.0, 0.8, false, PieceKind::Adhesive),
            ],
            now_points: Some(38.9),
            forecast_points: Some(30.1),
            forecast_band_points: 0.4,
            target_points: Some(30.0),
            ..BeamView::default()
        }
    }

    #[test]
    fn the_inch_scale_is_exact() {
        let scale = WIDE.inches(&iron());
        let per_inch = scale.at(15.0) - scale.at(14.0);
        assert!((scale.at(37.5) - scale.at(0.0) - 37.5 * per_inch).abs() < 1e-9);
        assert!(scale.at(-0.4) >= WIDE.margin - 1e-9);
        // The drawing uses the paper: the far side of the head comes to the right margin.
        assert!(scale.at(37.5) > 880.0 && scale.at(37.5) < WIDE.width - WIDE.margin);
    }

    #[test]
    fn every_figure_is_text_and_escaped() {
        let text = beam(&w(), &iron()).into_string();
        for figure in ["256.1 g", "+122.2", "−9.8", "D8.9", "D0.1", "grip, to come"] {
            assert!(text.contains(figure), "{figure} is missing");
        }
        assert!(text.contains("&lt;i&gt;adhesive") && !text.contains("<i>"), "{text}");
    }

    #[test]
    fn odd_clubs_are_drawn_without_nonsense() {
        let mut views = vec![BeamView::default(), iron(), iron(), iron(), iron()];
        views[1].pieces[0].mass_g = f64::NAN;
        views[1].pieces[1].arm_in = f64::INFINITY;
        views[2].length_in = f64::NAN;
        views[2].tolerance_points = f64::NAN;
        views[2].forecast_band_points = f64::NAN;
        views[3].now_points = Some(-900.0);
        views[3].forecast_points = Some(1e12);
        views[4].length_in = 1e9;
        views[4].pieces[0].arm_in = 1e9;
        for shape in [ClubShape::Wood, ClubShape::Hybrid, ClubShape::Iron, ClubShape::Wedge, ClubShape::Putter] {
            for view in &mut views {
                view.shape = shape;
                let text = beam(&w(), view).into_string();
                assert!(!text.contains("NaN") && !text.contains("inf "), "{shape:?}: {text}");
                assert!(text.contains("<title") && text.contains("<desc"));
            }
        }
    }
}
