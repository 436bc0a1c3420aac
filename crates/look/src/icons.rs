//! Icons: own line drawings on a 24-unit field, one line weight, coloured by the text they stand in.
//!
//! They are decoration beside words, never the only carrier of a meaning, so they are hidden from screen readers.

use maud::{Markup, PreEscaped, html};

/// Which drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Icon {
    /// A tick: done, within tolerance.
    Tick,
    /// A question in a ring: doubted.
    Doubt,
    /// A triangle with a stroke: caution.
    Caution,
    /// A ring with a cross: refused, failed.
    Refused,
    /// A ring with an i: something to know.
    Know,
    /// Forward.
    Forward,
    /// Back.
    Back,
    /// Add one.
    Plus,
    /// A lens: search.
    Search,
    /// A sheet leaving a slot: print.
    Print,
    /// A clock.
    Clock,
    /// A curved arrow back: undo, "that was wrong".
    Undo,
    /// Two turning arrows: read again.
    Again,
    /// A club on a fulcrum: swing weight; also the mark of the product.
    SwingWeight,
    /// A written sheet.
    Sheet,
    /// A box: stock.
    Stock,
    /// A vice: the bench.
    Bench,
    /// A drop: glue.
    Glue,
    /// A bound record.
    Record,
    /// A broken wave: no network.
    Offline,
    /// An arrow into a tray: import.
    Import,
    /// An arrow out of a tray: export.
    Export,
    /// A bin of small bars: a bar code to scan.
    Scan,
    /// A pencil: change.
    Edit,
    /// A cross: close, take away.
    Close,
    /// Clubs side by side: the whole set.
    Set,
    /// A flag: off target.
    Flag,
}

/// Draws an icon at the size of the text around it.
#[must_use]
pub fn icon(which: Icon) -> Markup {
    html! {
        svg.icon viewBox="0 0 24 24" aria-hidden="true" focusable="false" { (PreEscaped(strokes(which))) }
    }
}

/// The drawing itself. Constant text of this file, so it needs no escaping.
fn strokes(which: Icon) -> &'static str {
    match which {
        Icon::Tick => r#"<path d="M4.5 12.8l5 5L19.5 6.8"/>"#,
        Icon::Doubt => {
            r#"<circle cx="12" cy="12" r="9"/><path d="M9.2 9.6a2.9 2.9 0 1 1 4.4 2.5c-1.1.7-1.6 1.2-1.6 2.3M12 17.1v.4"/>"#
        }
        Icon::Caution => r#"<path d="M12 3.8 21.3 20H2.7zM12 10v4.6M12 17v.4"/>"#,
        Icon::Refused => r#"<circle cx="12" cy="12" r="9"/><path d="M8.7 8.7l6.6 6.6M15.3 8.7l-6.6 6.6"/>"#,
        Icon::Know => r#"<circle cx="12" cy="12" r="9"/><path d="M12 11v6M12 7.4v.4"/>"#,
        Icon::Forward => r#"<path d="M4.5 12h15M13.5 6l6 6-6 6"/>"#,
        Icon::Back => r#"<path d="M19.5 12h-15M10.5 6l-6 6 6 6"/>"#,
        Icon::Plus => r#"<path d="M12 5v14M5 12h14"/>"#,
        Icon::Search => r#"<circle cx="10.5" cy="10.5" r="6.5"/><path d="M15.4 15.4l5.1 5.1"/>"#,
        Icon::Print => r#"<path d="M7 9V3.5h10V9M7 17H4V9h16v8h-3M7 14h10v6.5H7z"/>"#,
        Icon::Clock => r#"<circle cx="12" cy="12" r="9"/><path d="M12 6.8V12l3.6 2.4"/>"#,
        Icon::Undo => r#"<path d="M8 4.5 4 8.7l4.2 4M4.4 8.7h9.4a5.6 5.6 0 0 1 0 11.2H8.5"/>"#,
        Icon::Again => {
            r#"<path d="M4.6 10.2a7.7 7.7 0 0 1 13.6-2.8l1.6 2M19.8 4.6v4.8H15M19.4 13.8a7.7 7.7 0 0 1-13.6 2.8l-1.6-2M4.2 19.4v-4.8H9"/>"#
        }
        Icon::SwingWeight => {
            r#"<path d="M2 9.5h16.2M18.2 8.2c2.6 0 3.6 1.6 3.2 3.8-.3 1.9-1.1 3.6-1.9 3.6-.9 0-.8-1.4-1.3-3zM8.5 10.2 5.4 16h6.2zM4 19.5h16"/>"#
        }
        Icon::Sheet => r#"<path d="M5.5 3h9l4 4v14h-13zM14.5 3v4h4M8.5 11h7M8.5 14.5h7M8.5 18h4"/>"#,
        Icon::Stock => r#"<path d="M3.5 8 12 3.5 20.5 8v8.5L12 21l-8.5-4.5zM3.5 8 12 12.5 20.5 8M12 12.5V21"/>"#,
        Icon::Bench => r#"<path d="M3 9.5h18M5 9.5V20M19 9.5V20M8.5 9.5V5h4v4.5M12.5 6.5h3V5M15.5 9.5V6.5M5 15h14"/>"#,
        Icon::Glue => {
            r#"<path d="M12 3.5c3.3 4 5.5 6.8 5.5 10a5.5 5.5 0 0 1-11 0c0-3.2 2.2-6 5.5-10zM9.3 14.3a2.8 2.8 0 0 0 2.2 2.5"/>"#
        }
        Icon::Record => {
            r#"<path d="M5 4.5h12.5a1.5 1.5 0 0 1 1.5 1.5v14H6.5A1.5 1.5 0 0 1 5 18.5zM5 18.5A1.5 1.5 0 0 1 6.5 17H19M9 8.5h6M9 12h4"/>"#
        }
        Icon::Offline => {
            r#"<path d="M3.5 9.5a12.5 12.5 0 0 1 5-2.8M20.5 9.5a12.5 12.5 0 0 0-7-3.3M7 13.5a7.3 7.3 0 0 1 3-1.7M17 13.5l-.8-.7M12 18v.4M4.5 3.5l15 17"/>"#
        }
        Icon::Import => r#"<path d="M12 3.5v11M7.5 10l4.5 4.5 4.5-4.5M4 15.5v5h16v-5"/>"#,
        Icon::Export => r#"<path d="M12 14.5v-11M7.5 8 12 3.5 16.5 8M4 15.5v5h16v-5"/>"#,
        Icon::Scan => r#"<path d="M3.5 8V4H8M16 4h4.5v4M20.5 16v4H16M8 20H3.5v-4M7.5 8v8M10.5 8v8M13 8v8M16.5 8v8"/>"#,
        Icon::Edit => r#"<path d="M4 20l1-4.5L16.5 4l3.5 3.5L8.5 19zM14 6.5l3.5 3.5"/>"#,
        Icon::Close => r#"<path d="M6 6l12 12M18 6 6 18"/>"#,
        Icon::Set => r#"<path d="M5 3.5v14l3 3M11 3.5v14l3 3M17 3.5v14l3 3"/>"#,
        Icon::Flag => r#"<path d="M6 21V4h12l-3 4 3 4H6"/>"#,
    }
}

/// Every icon, for the page that shows the look.
pub const ALL_ICONS: [(Icon, &str); 27] = [
    (Icon::Tick, "tick"),
    (Icon::Doubt, "doubt"),
    (Icon::Caution, "caution"),
    (Icon::Refused, "refused"),
    (Icon::Know, "know"),
    (Icon::Forward, "forward"),
    (Icon::Back, "back"),
    (Icon::Plus, "plus"),
    (Icon::Search, "search"),
    (Icon::Print, "print"),
    (Icon::Clock, "clock"),
    (Icon::Undo, "undo"),
    (Icon::Again, "again"),
    (Icon::SwingWeight, "swing_weight"),
    (Icon::Sheet, "sheet"),
    (Icon::Stock, "stock"),
    (Icon::Bench, "bench"),
    (Icon::Glue, "glue"),
    (Icon::Record, "record"),
    (Icon::Offline, "offline"),
    (Icon::Import, "import"),
    (Icon::Export, "export"),
    (Icon::Scan, "scan"),
    (Icon::Edit, "edit"),
    (Icon::Close, "close"),
    (Icon::Set, "set"),
    (Icon::Flag, "flag"),
];
