//! The frame around every page: head, title, navigation, notice, footer.

use maud::{DOCTYPE, Markup, PreEscaped, html};
use words::{Words, text};

use super::blocks::{Tone, notice_block};
use super::icons::{Icon, icon};
use crate::assets::asset_url;

/// The places of the shop, in the order of the day.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Nav {
    /// What to do now.
    #[default]
    Today,
    /// Fitting sheets.
    Sheets,
    /// Models and parts.
    Stock,
    /// Which part goes where.
    Plan,
    /// Steps and readings.
    Bench,
    /// Batches and clocks.
    Glue,
    /// Finished clubs and sets.
    Records,
    /// A page outside the seven places: none is marked.
    Elsewhere,
}

impl Nav {
    /// The seven places shown, in order.
    pub const SHOWN: [Self; 7] =
        [Self::Today, Self::Sheets, Self::Stock, Self::Plan, Self::Bench, Self::Glue, Self::Records];

    /// Its word.
    #[must_use]
    pub fn label(self, w: &Words) -> String {
        w.text(match self {
            Self::Today => "frame-today",
            Self::Sheets => "frame-sheets",
            Self::Stock => "frame-stock",
            Self::Plan => "frame-plan",
            Self::Bench => "frame-bench",
            Self::Glue => "frame-glue",
            Self::Records => "frame-records",
            Self::Elsewhere => return String::new(),
        })
    }

    /// Its address.
    #[must_use]
    pub const fn href(self) -> &'static str {
        match self {
            Self::Today | Self::Elsewhere => "/",
            Self::Sheets => "/sheets",
            Self::Stock => "/stock",
            Self::Plan => "/plan",
            Self::Bench => "/bench",
            Self::Glue => "/glue",
            Self::Records => "/records",
        }
    }
}

/// A running clock in the head of the page, such as the pot life of an open batch.
#[derive(Debug, Clone, Default)]
pub struct Clock {
    /// What runs: `Glue`.
    pub label: String,
    /// When it ends, RFC 3339.
    pub until: String,
    /// What to show where no script runs: `14:20`.
    pub text: String,
    /// What to show when it has run out: `over`.
    pub done: String,
    /// Where it leads.
    pub href: String,
}

/// A message over the page: what happened, where, what to do next.
#[derive(Debug, Clone, Default)]
pub struct Notice {
    /// How serious.
    pub tone: Tone,
    /// What happened and where.
    pub text: String,
    /// What to do next; may be empty.
    pub next: String,
}

/// A link in the foot of the page.
#[derive(Debug, Clone, Default)]
pub struct FooterLink {
    /// Address.
    pub href: String,
    /// Word.
    pub label: String,
}

/// What a tablet keeps of itself: its colours and its keys.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tablet {
    /// `Some("light")` or `Some("dark")` fixes the colours; `None` follows the device.
    pub theme: Option<&'static str>,
    /// Keys that print a letter do nothing by themselves (WCAG 2.1, 2.1.4 Character Key Shortcuts).
    pub letters_off: bool,
    /// Name of the key that the foot pedal types, as browsers call it: `PageDown`. None: any function key.
    pub pedal: Option<String>,
}

/// Everything a whole page needs.
#[derive(Debug, Clone)]
pub struct PageFrame {
    /// Heading of the page, also its window title.
    pub title: String,
    /// The place it belongs to.
    pub active: Nav,
    /// A short line under the title: `Job 42 · 8 irons · tip weight in, before gluing`. May be empty.
    pub crumb: String,
    /// Running clocks.
    pub clocks: Vec<Clock>,
    /// The server's time, RFC 3339, so that clocks run true on a tablet whose own clock is wrong.
    pub now: Option<String>,
    /// A message over the page.
    pub notice: Option<Notice>,
    /// At the bench: larger type, tighter frame, the places folded into one button.
    pub at_bench: bool,
    /// Without the places of the shop: for whoever is not let in yet.
    pub bare: bool,
    /// Style sheets besides the one of all pages and that of the bench.
    pub sheets: &'static [&'static str],
    /// Links in the foot.
    pub footer: Vec<FooterLink>,
    /// What the tablet keeps of itself.
    pub tablet: Tablet,
    /// The page's content.
    pub body: Markup,
}

impl Default for PageFrame {
    fn default() -> Self {
        Self {
            title: String::new(),
            active: Nav::default(),
            crumb: String::new(),
            clocks: Vec::new(),
            now: None,
            notice: None,
            at_bench: false,
            bare: false,
            sheets: &[],
            footer: Vec::new(),
            tablet: Tablet::default(),
            body: PreEscaped(String::new()),
        }
    }
}

/// A whole HTML page.
#[must_use]
pub fn page(w: &Words, frame: &PageFrame) -> Markup {
    html! {
        (DOCTYPE)
        html lang=(w.language_code()) data-theme=[frame.tablet.theme]
            data-letters=[frame.tablet.letters_off.then_some("off")] data-pedal=[frame.tablet.pedal.as_deref()]
            data-decimal=[w.has_decimal_comma().then_some("comma")]
            data-now=[frame.now.as_deref()]
            data-words=(crate::scripts::sentences(w)) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (text!(w, "frame-window", title = frame.title)) }
                link rel="stylesheet" href=(asset_url("setwright.css"));
                link rel="stylesheet" href=(asset_url(if frame.at_bench { "bench.css" } else { "desk.css" }));
                @for sheet in frame.sheets { link rel="stylesheet" href=(asset_url(sheet)); }
                link rel="stylesheet" media="print" href=(asset_url("print.css"));
                link rel="icon" type="image/svg+xml" href=(asset_url("mark.svg"));
                script type="module" src=(asset_url("bench.js")) {}
            }
            body.at-bench[frame.at_bench] {
                a.skip href="#main" { (w.text("frame-skip")) }
                header.head {
                    a.mark href="/" aria-label=(w.text("frame-home")) { (icon(Icon::SwingWeight)) }
                    div.head-title {
                        h1 { (frame.title) }
                        @if !frame.crumb.is_empty() { p.crumb { (frame.crumb) } }
                    }
                    @if frame.bare {
                    } @else if frame.at_bench {
                        details.fold { summary { (w.text("frame-places")) } (navigation(w, frame.active)) }
                    } @else { (navigation(w, frame.active)) }
                    @for clock in &frame.clocks { (head_clock(clock)) }
                }
                div #waiting .waiting role="status" aria-live="polite" hidden {}
                @if let Some(notice) = &frame.notice { (notice_block(notice.tone, &notice.text, &notice.next)) }
                main #main tabindex="-1" { (frame.body) }
                @if !frame.footer.is_empty() {
                    footer.foot {
                        nav aria-label=(w.text("frame-more")) {
                            @for link in &frame.footer { a href=(link.href) data-key=[(link.href == "/scan").then_some("/")] { (link.label) } }
                            a href="/tablet#keys" data-key-list data-key="?" { (w.text("frame-keys")) }
                        }
                        p.version { (text!(w, "frame-version", version = env!("CARGO_PKG_VERSION"))) }
                    }
                }
            }
        }
    }
}

fn navigation(w: &Words, active: Nav) -> Markup {
    html! {
        nav.places aria-label=(w.text("frame-places")) {
            @for place in Nav::SHOWN {
                a href=(place.href()) aria-current=[(place == active).then_some("page")] { (place.label(w)) }
            }
        }
    }
}

fn head_clock(clock: &Clock) -> Markup {
    html! {
        a.head-clock href=(clock.href) {
            (icon(Icon::Clock))
            span { span.head-clock-of { (clock.label) " " } (super::blocks::clock(&clock.until, &clock.text, &clock.done)) }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn a_page_escapes_and_marks_its_place() {
        let frame = PageFrame {
            title: "<b>Irons</b>".to_owned(),
            active: Nav::Glue,
            notice: Some(Notice { tone: Tone::Doubt, text: "5 < 6".to_owned(), next: "weigh it".to_owned() }),
            ..PageFrame::default()
        };
        let text = page(&w(), &frame).into_string();
        assert!(text.starts_with("<!DOCTYPE html>"), "{text}");
        assert!(text.contains("&lt;b&gt;Irons&lt;/b&gt;"), "{text}");
        assert!(!text.contains("<b>Irons"), "{text}");
        assert!(text.contains(r#"<a href="/glue" aria-current="page">Glue</a>"#), "{text}");
        assert_eq!(text.matches("aria-current").count(), 1);
        assert!(text.contains("5 &lt; 6"), "{text}");
    }
}
