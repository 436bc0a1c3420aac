//! A club on the ground before and after its length changes, and the aim that an error of the lie makes.

use maud::{Markup, html};
use words::{Words, text};

use super::super::layout::{Scale, num, places};
use super::axes::{Paper, Picture, fixed, label, papers, sound};

/// A club at a fixed height of the hands. Angles in degrees, lengths in millimetres.
#[derive(Debug, Clone, Copy, Default)]
pub struct LieView {
    /// Length and lie before.
    pub before: (f64, f64),
    /// Length and lie after.
    pub after: (f64, f64),
    /// Hands below the butt end.
    pub hands_mm: f64,
}

/// An error of aim.
#[derive(Debug, Clone, Copy, Default)]
pub struct AimView {
    /// Error of the lie in degrees; positive is upright.
    pub lie_error_deg: f64,
    /// Error of the aim in degrees.
    pub aim_deg: f64,
    /// Distance and what it is off there, in metres.
    pub off: Option<(f64, f64)>,
}

/// The picture of a change of length.
#[must_use]
pub fn lie(w: &Words, view: &LieView) -> Markup {
    let (length_mm, lie_deg) = (sound(view.before.0), sound(view.before.1));
    let (new_mm, new_deg) = (sound(view.after.0), sound(view.after.1));
    let by_deg = (new_deg - lie_deg).abs();
    let id = if new_deg < lie_deg { "picture-calc-lie-flatter" } else { "picture-calc-lie-upright" };
    let figures = [
        ("length_mm", words::figure(&length_mm)),
        ("lie_deg", words::figure(&lie_deg)),
        ("new_mm", words::figure(&new_mm)),
        ("new_deg", words::figure(&new_deg)),
        ("by_deg", words::figure(&by_deg)),
    ];
    let (words, title) = (w.text_with(id, &figures), w.text("picture-calc-lie"));
    let picture = Picture { id: "calc-lie", title: &title, words: &words, papers: papers(390.0, 330.0) };
    picture.drawn(|paper| lie_drawing(w, view, paper))
}

/// How much larger than it is the change of the lie is drawn, so that it can be seen.
const ENLARGED: f64 = 4.0;

fn lie_drawing(w: &Words, view: &LieView, paper: Paper) -> Markup {
    let ground = paper.height - 36.0;
    let longest = sound(view.before.0).max(sound(view.after.0)).max(1.0);
    let room = (paper.width - 90.0).min((ground - 60.0) / 0.9);
    let mm = room / longest;
    // Both clubs meet in the hands: that is what stays.
    let hands_up = (view.before.0 - view.hands_mm) * view.before.1.to_radians().sin();
    let shown_lie = view.before.1 + ENLARGED * (view.after.1 - view.before.1);
    let after_lie = sound(shown_lie).clamp(25.0, 85.0);
    let reach = (view.before.0 - view.hands_mm) * view.before.1.to_radians().cos() * mm;
    let hands = (paper.width * 0.62 - 0.5 * reach, ground - hands_up * mm);
    let club = |lie_deg: f64| {
        let (sin, cos) = lie_deg.to_radians().sin_cos();
        let down = hands_up * mm / sin;
        let up = view.hands_mm * mm;
        [(hands.0 - up * cos, hands.1 - up * sin), (hands.0 + down * cos, hands.1 + down * sin)]
    };
    let (before, after) = (club(view.before.1), club(after_lie));
    let changed = (view.after.1 - view.before.1).abs() > 1e-9;
    html! {
        line.ground x1="8" x2=(num(paper.width - 8.0)) y1=(num(ground)) y2=(num(ground)) {}
        line.hands x1="8" x2=(num(paper.width - 8.0)) y1=(num(hands.1)) y2=(num(hands.1)) {}
        text.end.halo x=(num(paper.width - 8.0)) y=(num(hands.1 - 8.0)) { (w.text("picture-calc-lie-hands")) }
        (club_line(before, "curve-2"))
        @if changed { (club_line(after, "curve-1 thick")) }
        (angle(before[1], view.before.1, "curve-2 thin", 46.0))
        @if changed { (angle(after[1], after_lie, "curve-1 thin", 64.0)) }
        circle.ink cx=(num(hands.0)) cy=(num(hands.1)) r="6" {}
        (named(14.0, ground - 44.0, "curve-2", &text!(w, "picture-calc-lie-club", length_mm = sound(view.before.0), lie_deg = sound(view.before.1)), false))
        @if changed { (named(14.0, ground - 18.0, "curve-1 thick", &text!(w, "picture-calc-lie-club", length_mm = sound(view.after.0), lie_deg = sound(view.after.1)), true)) }
        @if changed { (label(paper, paper.width / 2.0, ground + 26.0, &text!(w, "picture-calc-lie-enlarged", times = ENLARGED), false)) }
    }
}

fn club_line([butt, sole]: [(f64, f64); 2], class: &str) -> Markup {
    html! { polyline class=(class) points=(places(&[butt, sole])) {} circle.mark.open cx=(num(sole.0)) cy=(num(sole.1)) r="5" {} }
}

/// A line with what it is beside it.
fn named(x: f64, y: f64, class: &str, text: &str, strong: bool) -> Markup {
    html! {
        line class=(class) x1=(num(x)) x2=(num(x + 30.0)) y1=(num(y)) y2=(num(y)) {}
        text.start.halo.strong[strong] x=(num(x + 38.0)) y=(num(y + 5.0)) { (text) }
    }
}

/// The angle at the ground, on the player's side.
fn angle(at: (f64, f64), lie_deg: f64, class: &str, radius: f64) -> Markup {
    let points: Vec<(f64, f64)> = (0..=20)
        .map(|i| {
            let (sin, cos) = (lie_deg * f64::from(i) / 20.0).to_radians().sin_cos();
            (at.0 - radius * cos, at.1 - radius * sin)
        })
        .collect();
    html! { polyline class=(class) points=(places(&points)) {} }
}

/// The picture of an error of aim, from above.
#[must_use]
pub fn aim(w: &Words, view: &AimView) -> Markup {
    let flat = if view.lie_error_deg < 0.0 { "flat" } else { "upright" };
    let figures = [
        ("lie_deg", words::figure(&sound(view.lie_error_deg.abs()))),
        ("flat", words::figure(flat)),
        ("aim_deg", words::figure(&sound(view.aim_deg.abs()))),
        ("side", words::figure(&side(w, view.aim_deg))),
        ("off_m", words::figure(&fixed(view.off.map_or(0.0, |(_, off)| off.abs()), 2))),
        ("far_m", words::figure(&fixed(view.off.map_or(0.0, |(far, _)| far), 0))),
    ];
    let id = if view.off.is_some() { "picture-calc-aim-off" } else { "picture-calc-aim-only" };
    let (words, title) = (w.text_with(id, &figures), w.text("picture-calc-aim"));
    let picture = Picture { id: "calc-aim", title: &title, words: &words, papers: papers(210.0, 190.0) };
    picture.drawn(|paper| aim_drawing(w, view, paper))
}

/// An upright lie aims to the left of a right-handed player.
fn side(w: &Words, aim_deg: f64) -> String {
    text!(w, "picture-calc-side", side = if aim_deg >= 0.0 { "left" } else { "right" })
}

fn aim_drawing(w: &Words, view: &AimView, paper: Paper) -> Markup {
    let (from, to) = (24.0, paper.width - if paper.narrow() { 20.0 } else { 150.0 });
    let middle = paper.height / 2.0;
    let far_m = view.off.map_or(1.0, |(far, _)| far).max(1e-6);
    let off_m = view.off.map_or(view.aim_deg.to_radians().tan(), |(_, off)| off);
    // Sideways drawn larger than along: the line would else hardly leave the aim.
    let reach = Scale::new(0.0, (0.05 * far_m).max(off_m.abs()), 0.0, middle - 46.0);
    let end = middle - reach.at(sound(off_m));
    let flag = end.clamp(20.0, paper.height - 20.0);
    let off = match view.off {
        Some((_, off)) => {
            text!(w, "picture-calc-aim-metres", off_m = fixed(off.abs(), 2), side = side(w, view.aim_deg))
        }
        None => text!(w, "picture-calc-aim-angle", aim_deg = sound(view.aim_deg.abs()), side = side(w, view.aim_deg)),
    };
    let target = match view.off {
        Some((far, _)) => text!(w, "picture-calc-aim-target-at", far_m = fixed(far, 0)),
        None => w.text("picture-calc-aim-target"),
    };
    html! {
        line.aim x1=(num(from)) x2=(num(to)) y1=(num(middle)) y2=(num(middle)) {}
        polyline.curve-1 points=(places(&[(from, middle), (to, flag)])) {}
        circle.ink cx=(num(from)) cy=(num(middle)) r="5" {}
        line.doubt x1=(num(to)) x2=(num(to)) y1=(num(middle)) y2=(num(flag)) {}
        (label(paper, to - if paper.narrow() { 60.0 } else { 80.0 }, middle + if flag > middle { -10.0 } else { 20.0 }, &target, false))
        @if paper.narrow() { (label(paper, to - 60.0, flag + if flag > middle { 20.0 } else { -10.0 }, &off, true)) }
        @else { text.start.halo.strong x=(num(to + 10.0)) y=(num(f64::midpoint(flag, middle) + 5.0)) { (off) } }
        text.start x="8" y=(num(paper.height - 8.0)) { (text!(w, "picture-calc-aim-larger", aim_deg = sound(view.aim_deg.abs()), side = side(w, view.aim_deg))) }
    }
}
