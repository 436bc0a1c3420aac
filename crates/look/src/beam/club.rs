//! The club itself and the ruler over it.

use maud::{Markup, html};
use quantity::{INCH_MM, LengthUnit};
use words::{Words, text};

use super::super::layout::{Scale, num, places};
use super::outline::{Outline, outline};
use super::{BeamView, ClubShape, Paper, PieceKind, drawn_length_in};

/// Butt and tip radius of the shaft as drawn, inches: 0.600 and 0.370 in diameters are common (from memory).
const BUTT_RADIUS_IN: f64 = 0.30;
const TIP_RADIUS_IN: f64 = 0.185;
/// A grip of 10.5 in, 0.9 in wide at its cap (common, no source).
const GRIP_LENGTH_IN: f64 = 10.5;
const GRIP_CAP_RADIUS_IN: f64 = 0.5;
const GRIP_MOUTH_RADIUS_IN: f64 = 0.36;

/// How far the head reaches beyond the length, inches.
pub(super) fn overhang_in(shape: ClubShape) -> f64 {
    outline(shape).overhang_in
}

/// How far the head hangs below the shaft axis, inches.
pub(super) fn depth_in(shape: ClubShape) -> f64 {
    outline(shape).depth_in
}

/// Lengths over the club in the reader's unit, with the fulcrum's place in bold.
pub(super) fn ruler(w: &Words, view: &BeamView, inches: &Scale, y: f64, paper: Paper) -> Markup {
    // From one mark to the next: about an inch, in round figures of the unit.
    let (step, step_in) = match w.units.length {
        LengthUnit::Inch => (1, 1.0),
        _ => (20, 20.0 / INCH_MM),
    };
    let last = (drawn_length_in(view) / step_in) as u32;
    let every = if paper.narrow { 10 } else { 5 };
    // A label too near the fulcrum's own gives way to it.
    let near_in = if paper.narrow { 34.0 } else { 62.0 } / inches.per_unit();
    html! {
        g.ruler {
            @for mark in 0..=last {
                @let place_in = f64::from(mark) * step_in;
                @let x = num(inches.at(place_in));
                @let labelled = mark % every == 0;
                @if labelled || !paper.narrow || mark % 5 == 0 {
                    line x1=(x) x2=(x) y1=(num(y + 6.0)) y2=(num(y + if labelled { 14.0 } else { 10.0 })) {}
                }
                @if labelled && (place_in - view.fulcrum_in).abs() > near_in {
                    text x=(x) y=(num(y)) {
                        @let label = (mark * step).to_string();
                        (if mark == 0 { text!(w, "beam-ruler-zero", place = label, unit = w.length_sign()) } else { label })
                    }
                }
            }
            @if view.fulcrum_in > 0.0 && view.fulcrum_in < drawn_length_in(view) {
                @let x = num(inches.at(view.fulcrum_in));
                line.strong x1=(x) x2=(x) y1=(num(y + 4.0)) y2=(num(y + 16.0)) {}
                text.strong x=(x) y=(num(y)) {
                    @let place = num(if step == 1 { view.fulcrum_in } else { (view.fulcrum_in * INCH_MM).round() });
                    (if paper.narrow { place } else { text!(w, "beam-ruler-fulcrum", place = place) })
                }
            }
        }
    }
}

/// Shaft, grip, head and fulcrum, solid where they are on and dashed where they are still to come.
pub(super) fn club(view: &BeamView, inches: &Scale, y: f64) -> Markup {
    let has = |kind: PieceKind| view.pieces.iter().find(|piece| piece.kind == kind).map(|piece| piece.on);
    let class = |on: bool| if on { "on" } else { "coming" };
    let per_inch = inches.per_unit();
    let (length_in, shape) = (drawn_length_in(view), outline(view.shape));
    let tip_in = length_in - shape.hosel_in * 0.3;
    let tube = |from_in: f64, to_in: f64, from_radius_in: f64, to_radius_in: f64| {
        let (from, to) = (inches.at(from_in), inches.at(to_in));
        let (a, b) = (from_radius_in * per_inch, to_radius_in * per_inch);
        places(&[(from, y - a), (to, y - b), (to, y + b), (from, y + a)])
    };
    let grip_length_in = GRIP_LENGTH_IN.min(length_in * 0.4);
    let cap_in = if view.cap_in.is_finite() { view.cap_in.clamp(0.0, 0.4) } else { 0.0 };
    let apex = (inches.at(view.fulcrum_in), y + BUTT_RADIUS_IN * per_inch);
    let foot = if per_inch > 12.0 { (13.0, 23.0) } else { (8.0, 14.0) };
    html! {
        g.club-drawing {
            polygon.shaft.(class(has(PieceKind::Shaft).unwrap_or(false)))
                points=(tube(0.0, tip_in, BUTT_RADIUS_IN, TIP_RADIUS_IN)) {}
            @if let Some(on) = has(PieceKind::Grip) {
                polygon.grip.(class(on))
                    points=(tube(-cap_in, grip_length_in, GRIP_CAP_RADIUS_IN, GRIP_MOUTH_RADIUS_IN)) {}
            }
            path.head-shape.(class(has(PieceKind::Head).unwrap_or(false))) d=(head_path(&shape, inches, length_in, y)) {}
            @for &(from_in, to_in, up_in) in shape.scores {
                @let from = turn(&shape, inches, length_in, y, (from_in, up_in));
                @let to = turn(&shape, inches, length_in, y, (to_in, up_in));
                line.score x1=(num(from.0)) y1=(num(from.1)) x2=(num(to.0)) y2=(num(to.1)) {}
            }
            @if let Some(on) = has(PieceKind::Ferrule) {
                polygon.ferrule.(class(on)) points=(tube(
                    length_in - shape.hosel_in - 0.9, length_in - shape.hosel_in, TIP_RADIUS_IN + 0.02, 0.27,
                )) {}
            }
            @if view.fulcrum_in > 0.0 && view.fulcrum_in < length_in {
                polygon.fulcrum points=(places(&[apex, (apex.0 + foot.0, apex.1 + foot.1), (apex.0 - foot.0, apex.1 + foot.1)])) {}
            }
        }
    }
}

/// A place on the head, drawn.
fn turn(shape: &Outline, inches: &Scale, length_in: f64, y: f64, (sole_in, up_in): (f64, f64)) -> (f64, f64) {
    let (sin, cos) = shape.lie_deg.to_radians().sin_cos();
    let along_in = (sole_in * cos - up_in * sin) * shape.scale;
    let down_in = (sole_in * sin + up_in * cos) * shape.scale;
    (inches.at(length_in + along_in), y + down_in * inches.per_unit())
}

/// The head turned so that its shaft axis lies along the beam: the sole leaves the axis at the lie angle.
fn head_path(shape: &Outline, inches: &Scale, length_in: f64, y: f64) -> String {
    let pieces = shape.path.iter().map(|(letter, points)| {
        let turned: Vec<_> = points.iter().map(|place| turn(shape, inches, length_in, y, *place)).collect();
        format!("{letter}{}", places(&turned))
    });
    pieces.chain(["Z".to_owned()]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Points on the curves themselves: lines and cubic Béziers, sampled.
    fn sampled(shape: &Outline) -> Vec<(f64, f64)> {
        let (sin, cos) = shape.lie_deg.to_radians().sin_cos();
        let mut points = Vec::new();
        let mut at = (0.0, 0.0);
        for (letter, given) in shape.path {
            let curve: Vec<(f64, f64)> = std::iter::once(at).chain(given.iter().copied()).collect();
            for step in 0..=20 {
                let t = f64::from(step) / 20.0;
                let mut level = curve.clone();
                while level.len() > 1 {
                    level = level
                        .windows(2)
                        .map(|w| (w[0].0 + (w[1].0 - w[0].0) * t, w[0].1 + (w[1].1 - w[0].1) * t))
                        .collect();
                }
                if *letter != 'M' {
                    points.push(level[0]);
                }
            }
            at = *given.last().unwrap();
        }
        points.iter().map(|(u, v)| ((u * cos - v * sin) * shape.scale, (u * sin + v * cos) * shape.scale)).collect()
    }

    #[test]
    fn stated_room_holds_every_head() {
        for shape in [ClubShape::Wood, ClubShape::Hybrid, ClubShape::Iron, ClubShape::Wedge, ClubShape::Putter] {
            let outline = outline(shape);
            let points = sampled(&outline);
            let beyond = points.iter().map(|p| p.0).fold(f64::MIN, f64::max);
            let below = points.iter().map(|p| p.1).fold(f64::MIN, f64::max);
            assert!(
                beyond <= outline.overhang_in && beyond > outline.overhang_in - 0.7,
                "{shape:?} reaches {beyond} in"
            );
            assert!(below <= outline.depth_in && below > outline.depth_in - 0.7, "{shape:?} hangs {below} in");
        }
    }

    #[test]
    fn the_hosel_lies_on_the_shaft_axis() {
        for shape in [ClubShape::Wood, ClubShape::Hybrid, ClubShape::Iron, ClubShape::Wedge, ClubShape::Putter] {
            let outline = outline(shape);
            let (sin, cos) = outline.lie_deg.to_radians().sin_cos();
            let (first, last) = (outline.path[0].1[0], outline.path.last().unwrap().1[0]);
            let middle = ((first.0 + last.0) / 2.0, (first.1 + last.1) / 2.0);
            let off = (middle.0 * sin + middle.1 * cos) * outline.scale;
            let top = -(middle.0 * cos - middle.1 * sin) * outline.scale;
            assert!(off.abs() < 0.12, "{shape:?} hosel is {off} in off the axis");
            assert!((top - outline.hosel_in).abs() < 0.2, "{shape:?} hosel ends {top} in up");
        }
    }
}
