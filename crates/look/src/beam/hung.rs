//! The weights hung from the beam, each at its arm, with labels that never overlap.

use maud::{Markup, html};
use words::Words;

use super::super::layout::{Scale, num, places, spread, text_width};
use super::{BeamPiece, Paper};

/// The row of weights.
pub(super) struct Hung {
    pub(super) markup: Markup,
    /// Lowest edge of the labels.
    pub(super) bottom_y: f64,
    /// Labels are numbers of the list, because names would not fit or the paper is narrow.
    pub(super) numbered: bool,
}

/// How much a label says: as much as fits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Says {
    /// Name; grams and points beside each other.
    TwoLines,
    /// Name; grams; points.
    ThreeLines,
    /// The number in the list.
    Number,
    /// Nothing: even numbers would not fit.
    Nothing,
}

impl Says {
    fn lines(self, w: &Words, number: usize, piece: &BeamPiece) -> Vec<String> {
        match self {
            Self::TwoLines => {
                vec![piece.label.clone(), format!("{} · {}", w.mass(piece.mass_g), w.signed(piece.points, 1))]
            }
            Self::ThreeLines => vec![piece.label.clone(), w.mass(piece.mass_g), w.signed(piece.points, 1)],
            Self::Number => vec![number.to_string()],
            Self::Nothing => vec![],
        }
    }
}

/// Smallest and largest radius of a weight, so that a gram is still seen and a slip of the pen does not fill the page.
fn radius(piece: &BeamPiece, paper: Paper) -> f64 {
    (piece.mass_g.max(0.0).sqrt() * paper.bob).clamp(3.5, 24.0)
}

/// Centres of the labels, and how much they say.
fn placed(w: &Words, pieces: &[(usize, &BeamPiece)], inches: &Scale, paper: Paper) -> (Vec<f64>, Says) {
    if pieces.is_empty() {
        return (Vec::new(), Says::Nothing);
    }
    let wanted: Vec<f64> = pieces.iter().map(|(_, piece)| inches.at(piece.arm_in)).collect();
    let tries: &[Says] = if paper.narrow { &[Says::Number] } else { &[Says::TwoLines, Says::ThreeLines, Says::Number] };
    for says in tries {
        let widths: Vec<f64> = pieces.iter().map(|(number, piece)| width(w, *says, *number, piece, paper)).collect();
        let gap = if *says == Says::Number { 4.0 } else { 14.0 };
        if let Some(centres) = spread(&wanted, &widths, gap, 4.0, paper.width - 4.0) {
            return (centres, *says);
        }
    }
    (wanted, Says::Nothing)
}

fn width(w: &Words, says: Says, number: usize, piece: &BeamPiece, paper: Paper) -> f64 {
    let lines = says.lines(w, number, piece);
    let text = lines.iter().enumerate().map(|(at, line)| text_width(line, paper.size, at == 0)).fold(0.0, f64::max);
    text.max(2.0 * radius(piece, paper))
}

/// Hangs the pieces, which come numbered and in order of their arms.
pub(super) fn hung(
    w: &Words,
    pieces: &[(usize, &BeamPiece)],
    inches: &Scale,
    beam_y: f64,
    shelf_y: f64,
    paper: Paper,
) -> Hung {
    let (centres, says) = placed(w, pieces, inches, paper);
    let line_height = paper.size * 1.16;
    let lines = match says {
        Says::TwoLines => 2.0,
        Says::ThreeLines => 3.0,
        Says::Number => 1.0,
        Says::Nothing => 0.0,
    };
    let (fan_from, fan_to) = fan(beam_y, shelf_y, paper);
    let markup = html! {
        g.hung {
            @for ((number, piece), centre) in pieces.iter().zip(&centres) {
                @let arm = inches.at(piece.arm_in);
                @let radius = radius(piece, paper);
                @let string = [(arm, beam_y), (arm, fan_from), (*centre, fan_to), (*centre, shelf_y - 2.0 * radius)];
                g class=(if piece.on { "on" } else { "coming" }) {
                    polyline.string points=(places(&string)) {}
                    circle.arm cx=(num(arm)) cy=(num(beam_y)) r="2.5" {}
                    circle.bob cx=(num(*centre)) cy=(num(shelf_y - radius)) r=(num(radius)) {}
                    @for (at, line) in says.lines(w, *number, piece).iter().enumerate() {
                        text.strong[at == 0] x=(num(*centre)) y=(num(shelf_y + line_height * (at as f64 + 1.0))) { (line) }
                    }
                }
            }
        }
    };
    Hung {
        markup,
        bottom_y: shelf_y + lines * line_height,
        numbered: !matches!(says, Says::TwoLines | Says::ThreeLines),
    }
}

/// Between which heights the strings go aslant. Arms and labels are in the same order, so they never cross.
fn fan(beam_y: f64, shelf_y: f64, paper: Paper) -> (f64, f64) {
    let below_fulcrum = if paper.narrow { 20.0 } else { 30.0 };
    (beam_y + below_fulcrum, (shelf_y - 42.0).max(beam_y + below_fulcrum + 12.0))
}

#[cfg(test)]
mod tests {
    use super::super::{NARROW, WIDE};
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    fn pieces(arms_in: &[f64]) -> Vec<BeamPiece> {
        let piece = |arm_in: &f64| BeamPiece {
            label: "tip weight".to_owned(),
            mass_g: 256.1,
            arm_in: *arm_in,
            points: -122.2,
            ..BeamPiece::default()
        };
        arms_in.iter().map(piece).collect()
    }

    fn check(arms_in: &[f64], paper: Paper, expected: Says) {
        let pieces = pieces(arms_in);
        let numbered: Vec<_> = pieces.iter().enumerate().map(|(at, piece)| (at + 1, piece)).collect();
        let inches = Scale::new(0.0, 40.0, paper.margin, paper.width - paper.margin);
        let (centres, says) = placed(&w(), &numbered, &inches, paper);
        assert_eq!(says, expected, "{arms_in:?}");
        for at in 1..centres.len() {
            let room = centres[at] - centres[at - 1];
            let need = width(&w(), says, at, &pieces[at], paper);
            assert!(room >= need - 1e-9, "labels {at} and the next are {room} apart and need {need}");
        }
    }

    #[test]
    fn labels_say_as_much_as_fits() {
        check(&[4.0, 5.2, 17.0, 36.0, 36.1, 37.0], WIDE, Says::TwoLines);
        check(&[4.0, 4.1, 5.2, 17.0, 36.0, 36.1, 37.0, 37.1], WIDE, Says::ThreeLines);
        check(&[4.0, 4.1, 5.2, 17.0, 35.0, 35.5, 36.0, 36.1, 36.2, 36.3, 37.0, 37.1], WIDE, Says::Number);
        check(&[4.0, 5.2, 17.0, 36.0, 36.1, 37.0], NARROW, Says::Number);
    }
}
