//! Blocks of the bench: one decision a screen, the grid across a set, the bar of a live scale.

use maud::{Markup, html};
use words::Words;

use super::blocks::Tone;
use super::clubs::{ClubState, club_mark};
use super::icons::{Icon, icon};

/// The parts of the one-club screen. Each is markup so that a page may leave one out with empty markup.
#[derive(Debug, Clone)]
pub struct BenchBody {
    /// [`club_row`](super::club_row).
    pub clubs: Markup,
    /// [`beam`](super::beam()).
    pub beam: Markup,
    /// What is expected and the entry: [`decision`].
    pub decision: Markup,
    /// What it means, where the club finishes and the first advice: [`verdict`], [`outlook`](super::outlook()).
    pub outlook: Markup,
    /// What follows below: readings so far, further remedies.
    pub below: Markup,
}

/// Lays the one-club screen out so that nothing of it scrolls: entry at the left of the tablet, at the thumb of the phone,
/// the set beside the club where there is room for both.
#[must_use]
pub fn bench_body(view: &BenchBody) -> Markup {
    html! {
        div.bench {
            (view.clubs)
            div.card.bench-beam { (view.beam) }
            div.card.bench-decision { (view.decision) }
            div.card.bench-outlook { (view.outlook) }
        }
        div.bench-below { (view.below) }
    }
}

/// The one decision: what is expected and the entry.
#[derive(Debug, Clone)]
pub struct Decision<'a> {
    /// Which club and step, read out: `6 iron · read dry with the tip weight`.
    pub heading: &'a str,
    /// The form with its entries, each an [`ask`], and its buttons.
    pub form: Markup,
}

/// One decision.
#[must_use]
pub fn decision(view: &Decision<'_>) -> Markup {
    html! {
        section.decision aria-label=(view.heading) { (view.form) }
    }
}

/// One thing that is read: what is expected, between the label of its entry and the entry.
#[derive(Debug, Clone)]
pub struct Ask<'a> {
    /// The expected reading, the largest figure of the page: `D8.8`.
    pub expected: &'a str,
    /// Beside it: `± 0.3 expected`.
    pub note: &'a str,
    /// The entry, a [`field`](super::field) with `big`.
    pub entry: Markup,
}

/// One thing that is read.
#[must_use]
pub fn ask(view: &Ask<'_>) -> Markup {
    html! {
        div.ask {
            p.expected { span.figure-value { (view.expected) } " " span.figure-note { (view.note) } }
            (view.entry)
        }
    }
}

/// What a reading means for the finish, or what to do before it; markup so that the finish may be strong.
#[must_use]
pub fn verdict(tone: Tone, said: &Markup) -> Markup {
    html! {
        @if !said.0.is_empty() {
            div.verdict.(tone.class()) role="status" {
                @if tone != Tone::Plain { (icon(tone.icon())) }
                p { (said) }
            }
        }
    }
}

/// One club in the set grid.
#[derive(Debug, Clone)]
pub struct GridRow {
    /// Number of the club.
    pub number: String,
    /// Where its own screen is.
    pub href: String,
    /// Forecast finish minus target, in points.
    pub deviation_points: Option<f64>,
    /// How far the finish may lie from the forecast either way, in points, with 95 % probability.
    pub half_band_points: f64,
    /// Half the tolerance, in points.
    pub tolerance_points: f64,
    /// Expected reading: `D9.2 ± 0.4`.
    pub expected: String,
    /// The reading kept, or the entry of the row under the cursor.
    pub reading: Markup,
    /// Where it finishes with what is advised for it, minus target, in points.
    pub becomes_points: Option<f64>,
    /// In words: `finish D0.1`, what to fit, or the likely cause and the one thing to do, with its button.
    pub said: Markup,
    /// How it stands.
    pub state: ClubState,
    /// The cursor is here.
    pub current: bool,
}

/// One step across the set. `against` names the target: `where it will finish, against D0`.
#[must_use]
pub fn set_grid(w: &Words, caption: &str, against: &str, rows: &[GridRow]) -> Markup {
    html! {
        div.grid-wrap {
            table.set-grid role="table" {
                caption.hidden { (caption) }
                thead {
                    tr {
                        th scope="col" { (w.text("row-club")) }
                        th.grid-mark scope="col" { (against) }
                        @for head in ["row-expected", "row-reading", "row-meaning"] { th scope="col" { (w.text(head)) } }
                    }
                }
                tbody { @for row in rows { (grid_row(w, row)) } }
            }
        }
    }
}

fn grid_row(w: &Words, row: &GridRow) -> Markup {
    let class = match row.state {
        ClubState::Unknown => "unknown",
        ClubState::Within => "within",
        ClubState::Off => "off",
        ClubState::Doubted => "doubted",
    };
    html! {
        tr.(class).current[row.current] role="row" aria-current=[row.current.then_some("true")] {
            th scope="row" role="rowheader" { a href=(row.href) { (row.number) } }
            td.grid-mark role="cell" {
                (club_mark(row.deviation_points, row.half_band_points, row.tolerance_points, true, row.becomes_points))
                span.hidden { (row.state.word(w)) }
            }
            td.grid-expected role="cell" { (row.expected) }
            td.grid-reading role="cell" { (row.reading) }
            td.grid-words role="cell" {
                div.said {
                    @match row.state {
                        ClubState::Doubted => { (icon(Icon::Doubt)) }
                        ClubState::Off => { (icon(Icon::Flag)) }
                        ClubState::Within | ClubState::Unknown => {}
                    }
                    (row.said)
                }
            }
        }
    }
}

/// What a connected scale shows now.
#[derive(Debug, Clone, Copy, Default)]
pub struct LiveBar<'a> {
    /// Which scale and how it stands: `scale 2 · steady`.
    pub scale: &'a str,
    /// What it shows: `D8.5`.
    pub value: &'a str,
    /// What taking it does: `to the 9 iron: scan its card, press the pedal, or Enter`.
    pub words: &'a str,
}

/// The bar of a live scale, under the grid.
#[must_use]
pub fn live_bar(view: &LiveBar<'_>, buttons: &Markup) -> Markup {
    html! {
        div.live-bar {
            span.tag.plain { (view.scale) }
            span.figure-value { (view.value) }
            p { (view.words) }
            div.live-buttons { (buttons) }
        }
    }
}

/// A short offer of one extra measurement, with what it would do; its entry and "not again in this job" on a touch.
#[must_use]
pub fn offer(words: &str, form: &Markup) -> Markup {
    html! { details.offer { summary { (words) } (form) } }
}

/// One likely cause of a doubted reading.
#[derive(Debug, Clone, Copy)]
pub struct CauseLine<'a> {
    /// How likely, as people say it: `9 in 10`.
    pub odds: &'a str,
    /// What it is: `the 2 g weight is not in the tip`.
    pub words: &'a str,
    /// What to do about it.
    pub to_do: &'a str,
}

/// What may be behind a doubted reading, the likeliest first, and the one measurement that would tell: its order and
/// the form to enter it; both may be empty.
#[must_use]
pub fn causes(w: &Words, lines: &[CauseLine<'_>], order: &str, form: &Markup) -> Markup {
    html! {
        section.card.causes aria-labelledby="causes-title" {
            h2 #causes-title { (w.text("cause-title")) }
            ol.plain { @for line in lines {
                li { span.odds { (line.odds) } span { strong { (line.words) } " " span.small { (line.to_do) } } }
            } }
            @if !order.is_empty() { p.order { (order) } }
            (form)
        }
    }
}
