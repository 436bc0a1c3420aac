//! A few plans on two scales: what each costs in grams, how close each comes.

use maud::{Markup, html};
use quantity::decimal;

/// One plan.
#[derive(Debug, Clone)]
pub struct ChoicePoint {
    /// Its number in the list below.
    pub label: String,
    /// Weight in the tips, in the reader's unit.
    pub across: f64,
    /// Points.
    pub up: f64,
    /// Of the other kind: drawn as a square.
    pub other: bool,
    /// The same in words.
    pub told: String,
}

const WIDE: f64 = 340.0;
const HIGH: f64 = 206.0;
const LEFT: f64 = 46.0;
const BASE: f64 = 166.0;
/// Marks stand this far inside the axes, so that one at nought covers no figure.
const IN: f64 = 16.0;

/// The plans as numbered marks; where each lies is told in words, too.
#[must_use]
pub fn choice_picture(title: &str, across: &str, up: &str, points: &[ChoicePoint]) -> Markup {
    let most = |f: fn(&ChoicePoint) -> f64| points.iter().map(f).fold(0.0, f64::max);
    let (top_x, top_y) = (ceiling(most(|p| p.across)), ceiling(most(|p| p.up)));
    let x = |v: f64| LEFT + IN + (WIDE - LEFT - IN - 20.0) * v / top_x;
    let y = |v: f64| BASE - IN - (BASE - IN - 34.0) * v / top_y;
    let told: Vec<&str> = points.iter().map(|p| p.told.as_str()).collect();
    html! {
        svg.choice viewBox={ "0 0 " (WIDE) " " (HIGH) } role="img" aria-label={ (title) ": " (told.join("; ")) } {
            title { (title) }
            line x1=(LEFT) y1=(BASE) x2=(WIDE - 16.0) y2=(BASE) stroke="var(--line)" {}
            line x1=(LEFT) y1=(BASE) x2=(LEFT) y2="22" stroke="var(--line)" {}
            @for step in 0..=2 {
                @let (vx, vy) = (top_x * f64::from(step) / 2.0, top_y * f64::from(step) / 2.0);
                text x=(x(vx)) y=(BASE + 16.0) text-anchor="middle" font-size="12" fill="var(--ink-soft, currentColor)" { (decimal(vx, u8::from(vx.fract() != 0.0))) }
                text x=(LEFT - 6.0) y=(y(vy) + 4.0) text-anchor="end" font-size="12" fill="var(--ink-soft, currentColor)" { (decimal(vy, 2)) }
            }
            text x=((LEFT + WIDE) / 2.0) y=(HIGH - 6.0) text-anchor="middle" font-size="12" fill="currentColor" { (across) }
            text x=(LEFT + 6.0) y="14" font-size="12" fill="currentColor" { (up) }
            @for p in points {
                @if p.other {
                    rect x=(x(p.across) - 9.0) y=(y(p.up) - 9.0) width="18" height="18" fill="var(--paper, none)" stroke="currentColor" stroke-width="2" {}
                } @else {
                    circle cx=(x(p.across)) cy=(y(p.up)) r="10" fill="var(--paper, none)" stroke="currentColor" stroke-width="2" {}
                }
                text x=(x(p.across)) y=(y(p.up) + 4.0) text-anchor="middle" font-size="12" fill="currentColor" { (p.label) }
            }
        }
    }
}

/// A round figure at or above a value: 1, 2 or 5 times a power of ten.
fn ceiling(value: f64) -> f64 {
    if value <= 0.0 {
        return 1.0;
    }
    let power = 10f64.powf(value.log10().floor());
    [1.0, 2.0, 5.0, 10.0].into_iter().map(|m| m * power).find(|v| *v >= value * 1.02).unwrap_or(20.0 * power)
}
