//! The row of clubs: each with its tolerance, forecast and band, so that the odd one out is seen at a glance.

use maud::{Markup, html};
use words::Words;

use super::icons::{Icon, icon};
use super::layout::{num, places};

/// How a club stands against its target.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum ClubState {
    /// Nothing is known yet.
    #[default]
    Unknown,
    /// Forecast within tolerance.
    Within,
    /// Forecast outside.
    Off,
    /// Its last reading is doubted.
    Doubted,
}

impl ClubState {
    /// The word for it.
    #[must_use]
    pub fn word(self, w: &Words) -> String {
        w.text(match self {
            Self::Unknown => "row-unknown",
            Self::Within => "row-within",
            Self::Off => "row-off",
            Self::Doubted => "row-doubted",
        })
    }

    const fn class(self) -> &'static str {
        match self {
            Self::Unknown => "unknown",
            Self::Within => "within",
            Self::Off => "off",
            Self::Doubted => "doubted",
        }
    }
}

/// One club of the row.
#[derive(Debug, Clone, Default)]
pub struct ClubChip {
    /// Its number or letter: `6`, `PW`.
    pub number: String,
    /// Where it leads.
    pub href: String,
    /// Forecast finish minus target in points, if there is a forecast.
    pub deviation_points: Option<f64>,
    /// The deviation as text: `+0.1`. May be empty.
    pub deviation_text: String,
    /// How far the finish may lie from the forecast either way, in points, with 95 % probability.
    pub half_band_points: f64,
    /// Half the tolerance in points.
    pub tolerance_points: f64,
    /// How it stands.
    pub state: ClubState,
    /// The club shown now.
    pub current: bool,
    /// Its step is finished.
    pub done: bool,
}

/// Room kept free at either end of a club's picture.
const EDGE: f64 = 4.0;

/// The row of clubs of a set; scrolls sideways where it must. `all_href` leads to all of them at once; empty: nowhere.
#[must_use]
pub fn club_row(w: &Words, clubs: &[ClubChip], all_href: &str) -> Markup {
    html! {
        nav.clubs aria-label=(w.text("row-title")) {
            @if !all_href.is_empty() { a.club.all-clubs href=(all_href) data-key="a" { (icon(Icon::Set)) span { (w.text("row-all")) } } }
            @for club in clubs {
                a.club.(club.state.class()).done[club.done] href=(club.href)
                    aria-current=[club.current.then_some("true")] {
                    (club_mark(club.deviation_points, club.half_band_points, club.tolerance_points, false, None))
                    span.club-text {
                        span.club-number { (club.number) @if club.done { (icon(Icon::Tick)) span.hidden { " " (w.text("row-done")) } } }
                        span.club-dev {
                            @if club.state == ClubState::Off { (icon(Icon::Flag)) }
                            (club.deviation_text)
                            @if club.state == ClubState::Doubted { " ?" }
                        }
                        span.hidden { ", " (club.state.word(w)) }
                    }
                }
            }
        }
    }
}

/// The small picture of one club: tolerance as a box, target as a line, forecast as a diamond on its band.
///
/// Three tolerances either way are shown; what lies beyond stands at the edge as an arrow. `lying` draws it along the
/// line, for rows of a table; else it stands upright. An arrow leads to what it `becomes` with a planned change of mass. Hidden from screen readers: the words stand beside it.
#[must_use]
pub fn club_mark(deviation: Option<f64>, half_band: f64, tolerance: f64, lying: bool, becomes: Option<f64>) -> Markup {
    let tolerance = if tolerance.is_finite() && tolerance > 0.0 { tolerance } else { 0.3 };
    let (long, broad) = if lying { (160.0, 28.0) } else { (50.0, 34.0) };
    let middle = long / 2.0;
    let per_point = (middle - EDGE) / (3.0 * tolerance);
    // Upright, more is up; lying, more is to the right.
    let along = |points: f64| {
        let place = (points * per_point).clamp(EDGE - middle, middle - EDGE);
        if lying { middle + place } else { middle - place }
    };
    let (box_from, box_to) =
        (along(if lying { -tolerance } else { tolerance }), along(if lying { tolerance } else { -tolerance }));
    // Turns (along, across) into (x, y).
    let turn = |a: f64, c: f64| if lying { (a, c) } else { (c, a) };
    let (width, height) = turn(long, broad);
    let (zone_x, zone_y) = turn(box_from, 3.0);
    let (zone_w, zone_h) = turn(box_to - box_from, broad - 6.0);
    let (from, to) = (turn(middle, 3.0), turn(middle, broad - 3.0));
    html! {
        svg.club-mark.lying[lying] viewBox={ "0 0 " (num(width)) " " (num(height)) } aria-hidden="true" focusable="false" {
            rect.zone x=(num(zone_x)) y=(num(zone_y)) width=(num(zone_w)) height=(num(zone_h)) {}
            line.aim x1=(num(from.0)) y1=(num(from.1)) x2=(num(to.0)) y2=(num(to.1)) {}
            @if let Some(deviation) = deviation.filter(|d| d.is_finite()) {
                @let half_band = if half_band.is_finite() { half_band.abs() } else { 0.0 };
                @let (from, to) = (turn(along(deviation - half_band), broad / 2.0), turn(along(deviation + half_band), broad / 2.0));
                line.band x1=(num(from.0)) y1=(num(from.1)) x2=(num(to.0)) y2=(num(to.1)) {}
                @let at = along(deviation);
                @let beyond = deviation.abs() * per_point > middle - EDGE;
                @let shape = if beyond { arrow(at, broad / 2.0, (at - middle).signum()) } else { diamond(at, broad / 2.0) };
                polygon.diamond.beyond[beyond] points=(places(&shape.map(|(a, c)| turn(a, c)))) {}
                @if let Some(becomes) = becomes.filter(|b| b.is_finite() && (along(*b) - at).abs() > 4.0) {
                    @let (to, across) = (along(becomes), 5.0);
                    @let way = (to - at).signum();
                    @let (from, end) = (turn(at, across), turn(to - way * 3.0, across));
                    line x1=(num(from.0)) y1=(num(from.1)) x2=(num(end.0)) y2=(num(end.1)) stroke="var(--brass)" stroke-width="2" {}
                    polygon points=(places(&arrow(to - way * 3.0, across, way).map(|(a, c)| turn(a, c)))) fill="var(--brass)" {}
                }
            }
        }
    }
}

fn diamond(at: f64, across: f64) -> [(f64, f64); 4] {
    [(at - 5.0, across), (at, across - 4.5), (at + 5.0, across), (at, across + 4.5)]
}

/// An arrow head at the edge, pointing outward.
fn arrow(at: f64, across: f64, way: f64) -> [(f64, f64); 4] {
    let base = at - way * 5.0;
    [(base, across - 5.5), (at + way * 3.0, across), (base, across + 5.5), (base, across)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn a_doubted_club_is_told_by_mark_and_word() {
        let club = ClubChip {
            number: "8".to_owned(),
            deviation_points: Some(-0.6),
            deviation_text: "−0.6".to_owned(),
            tolerance_points: 0.3,
            half_band_points: 0.3,
            state: ClubState::Doubted,
            ..ClubChip::default()
        };
        let text = club_row(&w(), &[club], "").into_string();
        assert!(text.contains("−0.6 ?") && text.contains("doubted"), "{text}");
    }

    #[test]
    fn the_diamond_stands_to_scale() {
        // Lying: 160 long, three tolerances (0.9 point) take 76 units from the middle, so 0.45 point takes 38.
        let text = club_mark(Some(0.45), 0.1, 0.3, true, None).into_string();
        assert!(text.contains("113,14 118,9.5 123,14 118,18.5"), "{text}");
        // Far off: at the edge, and nothing unreadable is drawn.
        let text = club_mark(Some(40.0), f64::NAN, f64::NAN, true, None).into_string();
        assert!(text.contains("159,14") && !text.contains("NaN"), "{text}");
    }
}
