//! A set drawn to one scale on one ground line, each club at its lie, as it would stand if nobody held it.

use crate::beam::ClubShape;
use crate::beam::outline::{Outline, outline};
use crate::layout::{num, places};
use maud::{Markup, html};
use quantity::INCH_MM;
use words::{Words, text};

/// Width of the drawing, millimetres on paper: what A4 and Letter have between margins for a frame.
pub const WIDTH_MM: f64 = 172.0;
/// Greatest height of the longest club, millimetres on paper, and how much of it each club beyond eight gives to the table, so
/// that a set of fourteen fits the lower of the two papers, Letter.
const HEIGHT_MM: f64 = 70.0;
const GIVEN_MM: f64 = 3.5;
/// Room over the butts for the lengths, and below the ground for the numbers.
const OVER_MM: f64 = 7.0;
const BELOW_MM: f64 = 8.0;
/// Least and greatest distance from head to head, millimetres on paper.
const NEAR_MM: f64 = 8.0;
const FAR_MM: f64 = 22.0;
/// A length at the butt needs this much room beside the next, and the note on the ground this much before the first head.
const LABEL_MM: f64 = 12.5;
const NOTE_MM: f64 = 42.0;
/// How far a head reaches from the foot of its shaft to its toe: 4.5 in, more than any outline has.
const TOE_MM: f64 = 115.0;
/// Half widths: butt and tip of a shaft (0.600 and 0.370 in are common), cap and mouth of a grip, and a grip's length. From
/// memory, typical, not those of any part.
const BUTT_MM: f64 = 7.6;
const TIP_MM: f64 = 4.7;
const CAP_MM: f64 = 12.0;
const MOUTH_MM: f64 = 9.0;
const GRIP_MM: f64 = 267.0;

/// A club to draw.
#[derive(Debug, Clone, PartialEq)]
pub struct DrawnClub {
    /// The outline of its head.
    pub shape: ClubShape,
    /// Length to the cap.
    pub length_mm: f64,
    /// The angle between shaft and ground.
    pub lie_deg: f64,
    /// What stands below it: `7`, `PW`.
    pub name: String,
    /// What stands at its butt: `37`.
    pub length: String,
}

/// Where the clubs stand: the scale, and the foot of each shaft along the ground.
#[derive(Debug, Clone, PartialEq)]
struct Layout {
    paper_per_mm: f64,
    feet: Vec<f64>,
}

fn height_mm(clubs: usize) -> f64 {
    HEIGHT_MM - GIVEN_MM * clubs.saturating_sub(8) as f64
}

fn lean(club: &DrawnClub) -> (f64, f64) {
    let (sin, cos) = club.lie_deg.to_radians().sin_cos();
    (club.length_mm * cos, club.length_mm * sin)
}

/// The largest scale at which the longest club is no taller than the paper has room for and the heads stand apart.
fn lay_out(clubs: &[DrawnClub]) -> Layout {
    let tallest = clubs.iter().map(|club| lean(club).1).fold(1.0, f64::max);
    let mut paper_per_mm = height_mm(clubs.len()) / tallest;
    let gaps = clubs.len().saturating_sub(1) as f64;
    loop {
        let room = |gap: f64| {
            let left = clubs
                .iter()
                .enumerate()
                .map(|(i, club)| lean(club).0 * paper_per_mm - i as f64 * gap)
                .fold(0.0, f64::max)
                + CAP_MM * paper_per_mm
                + 4.0;
            (left, WIDTH_MM - left - gaps * gap - TOE_MM * paper_per_mm)
        };
        // With wider gaps the first butt reaches further over the edge only if a later club leans more: the widest is tried
        // first, in steps that nobody sees.
        let mut gap = FAR_MM;
        while gap > NEAR_MM && room(gap).1 < 0.0 {
            gap -= 0.25;
        }
        let (left, spare) = room(gap);
        if spare >= 0.0 || paper_per_mm < 0.02 {
            // What is left over stands on both sides.
            let from = left + spare.max(0.0) / 2.0;
            return Layout { paper_per_mm, feet: (0..clubs.len()).map(|i| from + i as f64 * gap).collect() };
        }
        paper_per_mm *= 0.97;
    }
}

/// The drawing; `left_hand` mirrors it. Nothing where there is no club.
#[must_use]
pub fn set_drawing(w: &Words, clubs: &[DrawnClub], left_hand: bool) -> Markup {
    if clubs.is_empty() {
        return html! {};
    }
    let Layout { paper_per_mm, feet } = lay_out(clubs);
    let tallest = clubs.iter().map(|club| lean(club).1).fold(0.0, f64::max) * paper_per_mm;
    let ground = OVER_MM + tallest + CAP_MM * paper_per_mm;
    let side = |x: f64| if left_hand { WIDTH_MM - x } else { x };
    let crowded = feet.windows(2).any(|pair| pair[1] - pair[0] < LABEL_MM);
    html! {
        svg.set-drawing viewBox=(format!("0 0 {} {}", num(WIDTH_MM), num(ground + BELOW_MM))) role="img" aria-label=(text!(w, "player-drawing", n = clubs.len())) {
            line.ground x1="0" x2=(num(WIDTH_MM)) y1=(num(ground)) y2=(num(ground)) {}
            @for (club, foot) in clubs.iter().zip(&feet) {
                @let drawn = Drawn { club, foot: *foot, ground, paper_per_mm, side: &side };
                (drawn.markup())
                @if !crowded {
                    @let butt = drawn.along(0.0, 0.0);
                    text.length x=(num(butt.0)) y=(num(butt.1 - 2.5)) text-anchor="middle" {
                        @let (whole, fraction) = whole_and_fraction(&club.length);
                        (whole) @if !fraction.is_empty() { tspan.fraction { (fraction) } }
                    }
                }
                text.name x=(num(side(foot + 25.0 * paper_per_mm))) y=(num(ground + 5.5)) text-anchor="middle" { (club.name) }
            }
            @if feet.first().is_some_and(|foot| *foot > NOTE_MM) {
                text.scale-note x=(num(side(0.0))) y=(num(ground - 1.5)) text-anchor=(if left_hand { "end" } else { "start" }) { (w.text("player-drawing-scale")) }
            }
        }
    }
}

/// Splits a length before its fraction, which is printed as one character: `38 3/4` gives `38 ` and `3/4`. Without a fraction the
/// second part is empty.
#[must_use]
pub fn whole_and_fraction(length: &str) -> (&str, &str) {
    match length.rfind(' ') {
        Some(at) if length[at..].contains('/') => length.split_at(at + 1),
        _ if length.contains('/') => ("", length),
        _ => (length, ""),
    }
}

/// One club in its place.
struct Drawn<'a> {
    club: &'a DrawnClub,
    foot: f64,
    ground: f64,
    paper_per_mm: f64,
    side: &'a dyn Fn(f64) -> f64,
}

impl Drawn<'_> {
    /// A place so far from the cap along the axis and so far beside it, millimetres of the club.
    fn along(&self, from_cap_mm: f64, beside_mm: f64) -> (f64, f64) {
        let (sin, cos) = self.club.lie_deg.to_radians().sin_cos();
        let up_mm = self.club.length_mm - from_cap_mm;
        let x = self.foot + (-up_mm * cos + beside_mm * sin) * self.paper_per_mm;
        ((self.side)(x), self.ground - (up_mm * sin + beside_mm * cos) * self.paper_per_mm)
    }

    /// A place on the head, inches along the sole and up from the ground.
    fn on_head(&self, shape: &Outline, (sole_in, up_in): (f64, f64)) -> (f64, f64) {
        let by = INCH_MM * shape.scale * self.paper_per_mm;
        ((self.side)(self.foot + sole_in * by), self.ground - up_in * by)
    }

    fn tube(&self, from_mm: f64, to_mm: f64, from_half_mm: f64, to_half_mm: f64) -> String {
        places(&[
            self.along(from_mm, from_half_mm),
            self.along(to_mm, to_half_mm),
            self.along(to_mm, -to_half_mm),
            self.along(from_mm, -from_half_mm),
        ])
    }

    fn markup(&self) -> Markup {
        let shape = outline(self.club.shape);
        let path = shape.path.iter().map(|(letter, points)| {
            let on_paper: Vec<_> = points.iter().map(|place| self.on_head(&shape, *place)).collect();
            format!("{letter}{}", places(&on_paper))
        });
        let path: String = path.chain(["Z".to_owned()]).collect();
        let length_mm = self.club.length_mm;
        let hosel_mm = length_mm - shape.hosel_in * INCH_MM * shape.scale;
        let grip_mm = GRIP_MM.min(length_mm * 0.4);
        html! {
            g.drawn-club {
                polygon.shaft points=(self.tube(grip_mm, hosel_mm, BUTT_MM, TIP_MM)) {}
                polygon.grip points=(self.tube(0.0, grip_mm, CAP_MM, MOUTH_MM)) {}
                polygon.ferrule points=(self.tube(hosel_mm - 22.0, hosel_mm, TIP_MM + 0.5, 6.8)) {}
                path.head-shape d=(path) {}
                @for &(from_in, to_in, up_in) in shape.scores {
                    @let (from, to) = (self.on_head(&shape, (from_in, up_in)), self.on_head(&shape, (to_in, up_in)));
                    line.score x1=(num(from.0)) y1=(num(from.1)) x2=(num(to.0)) y2=(num(to.1)) {}
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(lengths_in: &[f64], lie_deg: f64) -> Vec<DrawnClub> {
        let club = |(i, inches): (usize, &f64)| DrawnClub {
            shape: ClubShape::Iron,
            length_mm: inches * INCH_MM,
            lie_deg: lie_deg + i as f64 * 0.5,
            name: String::new(),
            length: String::new(),
        };
        lengths_in.iter().enumerate().map(club).collect()
    }

    /// Whatever the set, no butt lies over the left edge and no toe over the right one, and no club is taller than the room.
    #[test]
    fn every_set_of_one_to_fourteen_lies_inside_the_paper() {
        let all = [45.0, 43.0, 41.0, 40.0, 39.0, 38.5, 38.0, 37.5, 37.0, 36.5, 36.0, 35.75, 35.5, 33.0];
        for clubs in (1..=14).map(|n| set(&all[..n], 56.0)).chain([set(&[34.0; 14], 70.0), set(&[18.0, 22.0], 60.0)]) {
            let Layout { paper_per_mm, feet } = lay_out(&clubs);
            for (club, foot) in clubs.iter().zip(&feet) {
                let (across, up) = lean(club);
                assert!(foot - across * paper_per_mm > 0.0, "{} clubs", clubs.len());
                assert!(foot + TOE_MM * paper_per_mm <= WIDTH_MM + 1e-9, "{} clubs", clubs.len());
                assert!(up * paper_per_mm <= height_mm(clubs.len()) + 1e-9);
            }
            assert!(feet.windows(2).all(|pair| pair[1] - pair[0] >= NEAR_MM));
        }
    }

    #[test]
    fn a_fraction_is_set_apart() {
        assert_eq!(whole_and_fraction("38 3/4"), ("38 ", "3/4"));
        assert_eq!(whole_and_fraction("3/4"), ("", "3/4"));
        assert_eq!((whole_and_fraction("42.99"), whole_and_fraction("37")), (("42.99", ""), ("37", "")));
    }

    /// By hand: 1,000 mm at 60° stand 866.0 mm high and 500 mm to the side; a place at the cap lies there.
    #[test]
    fn a_club_stands_at_its_lie() {
        let club = DrawnClub { length_mm: 1000.0, lie_deg: 60.0, ..set(&[38.0], 60.0).remove(0) };
        let drawn = Drawn { club: &club, foot: 100.0, ground: 90.0, paper_per_mm: 0.1, side: &|x| x };
        let cap = drawn.along(0.0, 0.0);
        assert!((cap.0 - 50.0).abs() < 1e-9 && (cap.1 - (90.0 - 86.602_54)).abs() < 1e-4, "{cap:?}");
        let foot = drawn.along(1000.0, 0.0);
        assert!((foot.0 - 100.0).abs() < 1e-9 && (foot.1 - 90.0).abs() < 1e-9);
    }
}
