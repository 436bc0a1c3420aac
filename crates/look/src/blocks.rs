//! Small building blocks: cards, tags, cautions, tables, steps, figures.

use std::borrow::Cow;

use maud::{Markup, html};

use super::icons::{Icon, icon};

/// How a block speaks. Always with a mark and words, never by colour alone.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Tone {
    /// Something to know.
    #[default]
    Plain,
    /// Done, believed, within tolerance.
    Good,
    /// Something waits or needs care.
    Care,
    /// Doubted.
    Doubt,
    /// Refused or failed.
    Bad,
}

impl Tone {
    /// The class that colours it.
    #[must_use]
    pub const fn class(self) -> &'static str {
        match self {
            Self::Plain => "plain",
            Self::Good => "good",
            Self::Care => "care",
            Self::Doubt => "doubt",
            Self::Bad => "bad",
        }
    }

    /// The mark that tells it without colour.
    #[must_use]
    pub const fn icon(self) -> Icon {
        match self {
            Self::Plain => Icon::Know,
            Self::Good => Icon::Tick,
            Self::Care => Icon::Caution,
            Self::Doubt => Icon::Doubt,
            Self::Bad => Icon::Refused,
        }
    }
}

/// A message: what happened, then what to do next.
#[must_use]
pub fn notice_block(tone: Tone, text: &str, next: &str) -> Markup {
    let role = if tone == Tone::Bad { "alert" } else { "status" };
    html! {
        div.notice.(tone.class()) role=(role) {
            (icon(tone.icon()))
            p { strong { (text) } @if !next.is_empty() { " " (next) } }
        }
    }
}

/// A card around anything.
#[must_use]
pub fn card(body: &Markup) -> Markup {
    html! { div.card { (body) } }
}

/// A card with a heading.
#[must_use]
pub fn titled_card(title: &str, body: &Markup) -> Markup {
    html! { section.card { h2 { (title) } (body) } }
}

/// A heading and what belongs to it, without a frame. `aside` stands at the right of the heading (a button, a count).
#[must_use]
pub fn section(title: &str, aside: &Markup, body: &Markup) -> Markup {
    html! {
        section.section {
            div.section-head { h2 { (title) } div.section-aside { (aside) } }
            (body)
        }
    }
}

/// Blocks beside each other where there is room, under each other where not.
#[must_use]
pub fn columns(blocks: &[Markup]) -> Markup {
    html! { div.columns { @for block in blocks { (block) } } }
}

/// A short word of state with its mark: `held`, `doubted`.
#[must_use]
pub fn tag(tone: Tone, word: &str) -> Markup {
    html! {
        span.tag.(tone.class()) { @if tone != Tone::Plain { (icon(tone.icon())) } (word) }
    }
}

/// A caution where the hazard is: short, small, with its mark.
#[must_use]
pub fn caution(words: &str) -> Markup {
    html! { p.caution { (icon(Icon::Caution)) span { (words) } } }
}

/// A link or button that does something, for [`empty_state`] and [`actions`].
#[derive(Debug, Clone, Copy, Default)]
pub struct Action<'a> {
    /// Address.
    pub href: &'a str,
    /// Words.
    pub label: &'a str,
    /// The one to take, drawn strongly.
    pub primary: bool,
}

/// Links as buttons in a row.
#[must_use]
pub fn actions(links: &[Action<'_>]) -> Markup {
    html! {
        div.actions {
            @for link in links { a.button.quiet[!link.primary].primary[link.primary] href=(link.href) { (link.label) } }
        }
    }
}

/// Nothing here yet: says what is missing and what to do.
#[must_use]
pub fn empty_state(what: &str, to_do: &str, links: &[Action<'_>]) -> Markup {
    html! {
        div.empty { p.empty-what { (what) } p { (to_do) } @if !links.is_empty() { (actions(links)) } }
    }
}

/// Names with their values.
#[must_use]
pub fn definitions(pairs: &[(impl AsRef<str>, Markup)]) -> Markup {
    html! {
        dl.defs { @for (name, value) in pairs { div { dt { (name.as_ref()) } dd { (value) } } } }
    }
}

/// A large figure with its name.
#[derive(Debug, Clone, Copy, Default)]
pub struct Figure<'a> {
    /// Name over it.
    pub label: &'a str,
    /// The figure: `D8.8`.
    pub value: &'a str,
    /// What stands small beside it: `± 0.3 expected`. May be empty.
    pub note: &'a str,
}

/// One large figure.
#[must_use]
pub fn figure(view: &Figure<'_>) -> Markup {
    html! {
        div.figure {
            span.figure-label { (view.label) } " "
            span.figure-value { (view.value) }
            @if !view.note.is_empty() { " " span.figure-note { (view.note) } }
        }
    }
}

/// Figures side by side.
#[must_use]
pub fn figures(views: &[Figure<'_>]) -> Markup {
    html! { div.figures { @for view in views { (figure(view)) } } }
}

/// A countdown: shows `text` until the script runs it down, `done` when it is over.
#[must_use]
pub fn clock(until_rfc3339: &str, text: &str, done: &str) -> Markup {
    html! { time.clock datetime=(until_rfc3339) data-until=(until_rfc3339) data-done=(done) { (text) } }
}

/// One tab.
#[derive(Debug, Clone, Default)]
pub struct Tab<'a> {
    /// Word.
    pub label: Cow<'a, str>,
    /// Address.
    pub href: &'a str,
    /// A count beside the word; empty for none.
    pub count: &'a str,
    /// Shown now.
    pub current: bool,
}

/// Views of one thing as plain links, so that each has an address.
#[must_use]
pub fn tabs(label: &str, tabs: &[Tab<'_>]) -> Markup {
    html! {
        nav.tabs aria-label=(label) {
            @for tab in tabs {
                a href=(tab.href) aria-current=[tab.current.then_some("page")] {
                    (tab.label) @if !tab.count.is_empty() { " " span.count { (tab.count) } }
                }
            }
        }
    }
}

/// A column of a [`table`]: [`Column::words`] or [`Column::figures`].
#[derive(Debug, Clone, Default)]
pub struct Column<'a> {
    /// Heading.
    pub head: Cow<'a, str>,
    /// Figures: set to the right in tabular digits.
    pub figures: bool,
}

impl<'a> Column<'a> {
    /// A column of words.
    #[must_use]
    pub fn words(head: impl Into<Cow<'a, str>>) -> Self {
        Self { head: head.into(), figures: false }
    }

    /// A column of figures.
    #[must_use]
    pub fn figures(head: impl Into<Cow<'a, str>>) -> Self {
        Self { head: head.into(), figures: true }
    }
}

/// A cell of a [`table`].
#[derive(Debug, Clone)]
pub struct Cell(
    /// Its content.
    pub Markup,
);

impl From<&str> for Cell {
    fn from(text: &str) -> Self {
        Self(html! { (text) })
    }
}

impl From<String> for Cell {
    fn from(text: String) -> Self {
        Self(html! { (text) })
    }
}

impl From<Markup> for Cell {
    fn from(markup: Markup) -> Self {
        Self(markup)
    }
}

/// Rows under headings. The first cell of a row names the row.
#[derive(Debug, Clone, Default)]
pub struct Table<'a> {
    /// What the table shows, read out by screen readers; shown over it when `show_caption`.
    pub caption: &'a str,
    /// Whether sighted readers see the caption too; screen readers always have it.
    pub show_caption: bool,
    /// One for each cell of a row, from the left, with its heading.
    pub columns: Vec<Column<'a>>,
    /// Rows of cells.
    pub rows: Vec<Vec<Cell>>,
    /// On a phone each row is a card, its values under each other with their headings.
    pub cards: bool,
}

/// A table that scrolls inside itself where the screen is narrow.
#[must_use]
pub fn table(view: &Table<'_>) -> Markup {
    html! {
        div.table-wrap.cards[view.cards] tabindex="0" role="region" aria-label=(view.caption) {
            table {
                caption.hidden[!view.show_caption] { (view.caption) }
                thead {
                    tr { @for column in &view.columns { th.fig[column.figures] scope="col" { (column.head) } } }
                }
                tbody {
                    @for row in &view.rows {
                        tr {
                            @for (at, cell) in row.iter().enumerate() {
                                @let column = view.columns.get(at);
                                @let fig = column.is_some_and(|column| column.figures);
                                @let head = column.filter(|_| view.cards).map(|column| column.head.as_ref());
                                @if at == 0 { th.fig[fig] scope="row" data-head=[head] { (cell.0) } }
                                @else { td.fig[fig] data-head=[head] { div { (cell.0) } } }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// A [`table`] whose columns that say the same in every row stand over it as one line each: what all have in common needs
/// no room in each row, and a value that none of them has is not said at all. The first column stays; of a single row it is
/// all that does.
#[must_use]
pub fn table_of_alike(view: Table<'_>) -> Markup {
    let same = |at: usize| {
        let mut cells = view.rows.iter().filter_map(|row| row.get(at)).map(|cell| &cell.0.0);
        let first = cells.next();
        at > 0 && cells.all(|cell| Some(cell) == first)
    };
    let alike: Vec<bool> = (0..view.columns.len()).map(same).collect();
    let common: Vec<(String, Markup)> = view
        .columns
        .iter()
        .zip(&alike)
        .enumerate()
        .filter(|(_, (_, alike))| **alike)
        .filter_map(|(at, (column, _))| Some((column.head.to_string(), view.rows.first()?.get(at)?.0.clone())))
        .filter(|(_, cell)| cell.0 != "–")
        .collect();
    let kept = |at: usize| !alike.get(at).copied().unwrap_or(false);
    let rows = view.rows.into_iter();
    let rows = rows.map(|row| row.into_iter().enumerate().filter(|(at, _)| kept(*at)).map(|(_, cell)| cell).collect());
    let rows: Vec<Vec<Cell>> = rows.collect();
    let columns: Vec<Column<'_>> =
        view.columns.into_iter().enumerate().filter(|(at, _)| kept(*at)).map(|(_, column)| column).collect();
    html! {
        @if !common.is_empty() {
            dl.alike { @for (head, cell) in &common { div { dt { (head) } dd { (cell) } } } }
        }
        (table(&Table { columns, rows, ..view }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_all_rows_say_is_said_once() {
        let rows = [["4", "D2", "Siskin"], ["5", "D3", "Siskin"]].map(|row| row.map(Cell::from).to_vec()).to_vec();
        let columns = ["club", "weight", "head"].map(|head| Column::words(head.to_owned())).to_vec();
        let view = Table { caption: "Clubs", columns, rows, ..Table::default() };
        let text = table_of_alike(view.clone()).into_string();
        assert_eq!(text.matches("Siskin").count(), 1, "{text}");
        assert!(text.contains("<dt>head</dt><dd>Siskin</dd>") && text.contains("D3"), "{text}");
        // A single row needs no columns.
        let one = table_of_alike(Table { rows: view.rows[..1].to_vec(), ..view }).into_string();
        assert!(one.contains("<dd>D2</dd>") && one.matches("<th ").count() == 2, "{one}");
    }

    #[test]
    fn state_is_told_by_a_mark_and_a_word() {
        let text = tag(Tone::Doubt, "doubted").into_string();
        assert!(text.contains("<svg") && text.contains("doubted"), "{text}");
    }

    #[test]
    fn cells_are_escaped() {
        let view = Table {
            caption: "a & b",
            columns: vec![Column::figures("<i>")],
            rows: vec![vec!["<script>".into()]],
            ..Table::default()
        };
        let text = table(&view).into_string();
        assert!(!text.contains("<script>") && !text.contains("<i>"), "{text}");
        assert!(text.contains("a &amp; b"), "{text}");
    }
}
