//! The job card: printed, it rides in the tray with the club.

use maud::{Markup, PreEscaped, html};
use words::{Words, text};

/// Paper of the card.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum CardSize {
    /// 105 × 148 mm.
    #[default]
    A6,
    /// 148 × 210 mm.
    A5,
}

/// What stands on a job card.
#[derive(Debug, Clone)]
pub struct JobCard<'a> {
    /// Paper.
    pub size: CardSize,
    /// The club, large: `6 iron`.
    pub club: &'a str,
    /// Job and player: `Job 42 · A. Sample`.
    pub job: &'a str,
    /// Slot in the tray: `3`. May be empty.
    pub slot: &'a str,
    /// Code under the picture, for typing: `42-6`.
    pub code: &'a str,
    /// The code as an SVG picture, made by the caller; empty markup for none.
    pub code_svg: Markup,
    /// Names and values: cut, weight, wraps, graphics, bend.
    pub lines: Vec<(String, String)>,
    /// Stage, expected reading; a blank stands beside each for the pen.
    pub expected: Vec<(String, String)>,
    /// A caution at the foot; may be empty.
    pub caution: &'a str,
}

/// A code as a QR picture; empty where it is too long for one.
#[must_use]
pub fn qr_code(code: &str) -> Markup {
    let drawn =
        fast_qr::QRBuilder::new(code).build().map(|qr| fast_qr::convert::svg::SvgBuilder::default().to_str(&qr));
    PreEscaped(drawn.unwrap_or_default())
}

/// A code as a QR picture of characters, for a terminal; empty where it is too long for one.
#[must_use]
pub fn qr_in_terminal(code: &str) -> String {
    fast_qr::QRBuilder::new(code).build().map(|qr| qr.to_str()).unwrap_or_default()
}

/// One card.
#[must_use]
pub fn job_card(w: &Words, view: &JobCard<'_>) -> Markup {
    html! {
        article.job-card.a5[view.size == CardSize::A5] aria-label={ (view.club) ", " (view.job) } {
            header {
                div { p.job-card-club { (view.club) } p { (view.job) } @if !view.slot.is_empty() { p { (text!(w, "card-slot", slot = view.slot)) } } }
                div.job-card-code { (view.code_svg) p { (view.code) } }
            }
            dl { @for (name, value) in &view.lines { div { dt { (name) } dd { (value) } } } }
            @if !view.expected.is_empty() {
                table {
                    caption.hidden { (w.text("card-expected-readings")) }
                    thead { tr { th scope="col" { (w.text("card-reading")) } th.fig scope="col" { (w.text("card-expected")) } th scope="col" { (w.text("card-read")) } } }
                    tbody {
                        @for (stage, value) in &view.expected {
                            tr { th scope="row" { (stage) } td.fig { (value) } td.job-card-blank {} }
                        }
                    }
                }
            }
            @if !view.caution.is_empty() { (super::blocks::caution(view.caution)) }
        }
    }
}
