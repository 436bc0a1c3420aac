//! Form parts: real fields and buttons that work without script.

use std::borrow::Cow;

use maud::{Markup, html};
use words::Words;

use super::icons::{Icon, icon};

/// A text field with its label, hint and error.
#[derive(Debug, Clone, Copy, Default)]
pub struct Field<'a> {
    /// Name sent.
    pub name: &'a str,
    /// Identity in the page; the name when empty.
    pub id: &'a str,
    /// Label over the field.
    pub label: &'a str,
    /// Value as typed.
    pub value: &'a str,
    /// A short hint under the label, with an example.
    pub hint: &'a str,
    /// A grey example inside the empty field.
    pub placeholder: &'a str,
    /// What was wrong with the last entry, beside the field.
    pub error: Option<&'a str>,
    /// `text` when empty; `date`, `number`, `search`.
    pub kind: &'a str,
    /// Which keys a tablet shows: `decimal`, `numeric`, `text`.
    pub inputmode: &'a str,
    /// A unit shown at the right of the field: `g`.
    pub unit: &'a str,
    /// Identity of a list of proposals in the page; none when empty.
    pub list: &'a str,
    /// Must be filled.
    pub required: bool,
    /// The cursor starts here.
    pub autofocus: bool,
    /// The reading at the bench: the largest entry, and the page's single keys work while it is empty.
    pub big: bool,
    /// Enter goes to the next such field of the form instead of sending, as in a set grid.
    pub enter_next: bool,
}

impl Field<'_> {
    fn id(&self) -> &str {
        if self.id.is_empty() { self.name } else { self.id }
    }
}

/// A field.
#[must_use]
pub fn field(view: &Field<'_>) -> Markup {
    let id = view.id();
    let (hint_id, error_id) = (format!("{id}-hint"), format!("{id}-error"));
    let described = described_by(view, &hint_id, &error_id);
    html! {
        div.field.big[view.big].wrong[view.error.is_some()] {
            label for=(id) { (view.label) }
            div.entry {
                input #(id) name=(view.name) value=(view.value)
                    type=(if view.kind.is_empty() { "text" } else { view.kind })
                    inputmode=[some(view.inputmode)] placeholder=[some(view.placeholder)] list=[some(view.list)]
                    required[view.required] autofocus[view.autofocus] autocomplete="off"
                    spellcheck="false" autocapitalize="off"
                    data-bench-entry[view.big] data-enter-next[view.enter_next]
                    aria-invalid=[view.error.map(|_| "true")] aria-describedby=[described];
                @if !view.unit.is_empty() { span.unit aria-hidden="true" { (view.unit) } }
            }
            @if !view.hint.is_empty() { p.hint #(hint_id) { (view.hint) } }
            @if let Some(error) = view.error { (error_line(&error_id, error)) }
        }
    }
}

fn described_by(view: &Field<'_>, hint_id: &str, error_id: &str) -> Option<String> {
    match (view.hint.is_empty(), view.error.is_some()) {
        (true, false) => None,
        (true, true) => Some(error_id.to_owned()),
        (false, false) => Some(hint_id.to_owned()),
        (false, true) => Some(format!("{hint_id} {error_id}")),
    }
}

fn error_line(id: &str, error: &str) -> Markup {
    html! { p.error #(id) { (icon(Icon::Refused)) span { (error) } } }
}

fn some(text: &str) -> Option<&str> {
    (!text.is_empty()).then_some(text)
}

/// A longer text, such as a sheet written short.
#[must_use]
pub fn text_area(view: &Field<'_>, rows: u32) -> Markup {
    let id = view.id();
    let (hint_id, error_id) = (format!("{id}-hint"), format!("{id}-error"));
    let described = described_by(view, &hint_id, &error_id);
    html! {
        div.field.wrong[view.error.is_some()] {
            label for=(id) { (view.label) }
            textarea #(id) name=(view.name) rows=(rows) placeholder=[some(view.placeholder)] required[view.required]
                spellcheck="false" aria-invalid=[view.error.map(|_| "true")] aria-describedby=[described] {
                (view.value)
            }
            @if !view.hint.is_empty() { p.hint #(hint_id) { (view.hint) } }
            @if let Some(error) = view.error { (error_line(&error_id, error)) }
        }
    }
}

/// A file to send.
#[must_use]
pub fn file_field(name: &str, label: &str, hint: &str, accept: &str) -> Markup {
    html! {
        div.field {
            label for=(name) { (label) }
            input #(name) type="file" name=(name) accept=[some(accept)]
                aria-describedby=[(!hint.is_empty()).then(|| format!("{name}-hint"))];
            @if !hint.is_empty() { p.hint id={ (name) "-hint" } { (hint) } }
        }
    }
}

/// One of several: for [`select`] and [`radios`].
#[derive(Debug, Clone, Default)]
pub struct Choice<'a> {
    /// Value sent.
    pub value: &'a str,
    /// Words shown.
    pub label: Cow<'a, str>,
    /// Whether it stands selected when the page opens.
    pub chosen: bool,
}

/// A choice from a list.
#[derive(Debug, Clone, Default)]
pub struct Select<'a> {
    /// Name sent, also its identity.
    pub name: &'a str,
    /// What the field asks for, shown over it.
    pub label: &'a str,
    /// Hint; may be empty.
    pub hint: &'a str,
    /// What was wrong.
    pub error: Option<&'a str>,
    /// Choices in order.
    pub choices: Vec<Choice<'a>>,
}

/// A list to choose from.
#[must_use]
pub fn select(view: &Select<'_>) -> Markup {
    let (hint_id, error_id) = (format!("{}-hint", view.name), format!("{}-error", view.name));
    let described = [(!view.hint.is_empty()).then_some(hint_id.as_str()), view.error.map(|_| error_id.as_str())];
    let described = described.into_iter().flatten().collect::<Vec<_>>().join(" ");
    html! {
        div.field.wrong[view.error.is_some()] {
            label for=(view.name) { (view.label) }
            select #(view.name) name=(view.name) aria-invalid=[view.error.map(|_| "true")]
                aria-describedby=[some(&described)] {
                @for choice in &view.choices {
                    option value=(choice.value) selected[choice.chosen] { (choice.label) }
                }
            }
            @if !view.hint.is_empty() { p.hint #(hint_id) { (view.hint) } }
            @if let Some(error) = view.error { (error_line(&error_id, error)) }
        }
    }
}

/// Few choices, all seen at once.
#[must_use]
pub fn radios(name: &str, legend: &str, choices: &[Choice<'_>]) -> Markup {
    html! {
        fieldset.radios {
            legend { (legend) }
            div {
                @for choice in choices {
                    label { input type="radio" name=(name) value=(choice.value) checked[choice.chosen]; span { (choice.label) } }
                }
            }
        }
    }
}

/// Yes or no.
#[must_use]
pub fn check(name: &str, value: &str, label: &str, checked: bool) -> Markup {
    html! { label.check { input type="checkbox" name=(name) value=(value) checked[checked]; span { (label) } } }
}

/// A value that rides along.
#[must_use]
pub fn hidden(name: &str, value: &str) -> Markup {
    html! { input type="hidden" name=(name) value=(value); }
}

/// The key, made by the server, by which an entry sent twice is kept once. Put it in a form with `data-keep`.
#[must_use]
pub fn request_key(key: &str) -> Markup {
    hidden("request_key", key)
}

/// How strong a button is.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum ButtonKind {
    /// The one to press: once a screen.
    #[default]
    Primary,
    /// Others.
    Quiet,
    /// Takes something away.
    Danger,
}

impl ButtonKind {
    const fn class(self) -> &'static str {
        match self {
            Self::Primary => "primary",
            Self::Quiet => "quiet",
            Self::Danger => "danger",
        }
    }
}

/// A button of a form.
#[derive(Debug, Clone, Copy, Default)]
pub struct Button<'a> {
    /// Words.
    pub label: &'a str,
    /// Strength.
    pub kind: ButtonKind,
    /// An icon before the words.
    pub icon: Option<Icon>,
    /// Name sent; empty for none.
    pub name: &'a str,
    /// Value sent with the name.
    pub value: &'a str,
    /// Sends to another address than the form's; empty for the form's own.
    pub formaction: &'a str,
    /// The form it belongs to when it stands outside of it; empty for the one around it.
    pub form: &'a str,
    /// Single keys that press it, separated by spaces: `r`, `z Backspace`. Empty for none.
    pub keys: &'a str,
    /// Sends without checking the fields, for "that was wrong".
    pub unchecked: bool,
    /// The large button beside the reading.
    pub big: bool,
}

/// A button that sends its form.
#[must_use]
pub fn button(view: &Button<'_>) -> Markup {
    html! {
        button.button.(view.kind.class()).big[view.big] type="submit"
            name=[some(view.name)] value=[some(view.name).map(|_| view.value)]
            formaction=[some(view.formaction)] form=[some(view.form)] data-key=[some(view.keys)]
            formnovalidate[view.unchecked] {
            @if let Some(which) = view.icon { (icon(which)) }
            span { (view.label) }
            (key_cap(view.keys))
        }
    }
}

/// A link that looks like a button. `keys` as in [`Button`].
#[must_use]
pub fn link_button(href: &str, label: &str, kind: ButtonKind, which: Option<Icon>, keys: &str) -> Markup {
    html! {
        a.button.(kind.class()) href=(href) data-key=[some(keys)] {
            @if let Some(which) = which { (icon(which)) }
            span { (label) }
            (key_cap(keys))
        }
    }
}

/// The key that presses a button, beside its word. One letter is not shown where a tablet has switched letters off.
fn key_cap(keys: &str) -> Markup {
    let first = keys.split(' ').find(|key| !key.is_empty());
    html! { @if let Some(key) = first { kbd.letter[key.len() == 1] aria-hidden="true" { (key) } } }
}

/// Which keys do what on this page: `("Enter", "keep, next club")`.
#[must_use]
pub fn keypad_hints(hints: &[(&str, impl AsRef<str>)]) -> Markup {
    html! {
        p.keys { @for (key, what) in hints { span.letter[key.len() == 1] { kbd { (key) } " " (what.as_ref()) } " " } }
    }
}

/// A search field with its button; what is searched for stays in the address.
#[must_use]
pub fn search_bar(w: &Words, action: &str, name: &str, label: &str, value: &str, more: &Markup) -> Markup {
    html! {
        form.search role="search" method="get" action=(action) {
            label.hidden for=(name) { (label) }
            input #(name) type="search" name=(name) value=(value) placeholder=(label);
            (more)
            button.button.quiet type="submit" { (icon(Icon::Search)) span { (w.text("button-find")) } }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_error_is_tied_to_its_field() {
        let view = Field {
            name: "reading",
            label: "Swing weight",
            value: "D\"8<",
            hint: "such as D3.5",
            error: Some("Could not be read after D. Write it like D3.5."),
            inputmode: "decimal",
            ..Field::default()
        };
        let text = field(&view).into_string();
        assert!(text.contains(r#"aria-describedby="reading-hint reading-error""#), "{text}");
        assert!(text.contains(r#"id="reading-error""#) && text.contains(r#"aria-invalid="true""#), "{text}");
        assert!(text.contains(r#"value="D&quot;8&lt;""#), "{text}");
        assert!(text.contains(r#"inputmode="decimal""#), "{text}");
    }

    #[test]
    fn a_plain_field_says_nothing_it_does_not_need() {
        let text = field(&Field { name: "code", label: "Code", ..Field::default() }).into_string();
        assert!(
            !text.contains("aria-describedby") && !text.contains("required") && !text.contains("autofocus"),
            "{text}"
        );
    }

    #[test]
    fn a_button_shows_its_key() {
        let view = Button { label: "That was wrong", keys: "z Backspace", unchecked: true, ..Button::default() };
        let text = button(&view).into_string();
        assert!(text.contains(r#"data-key="z Backspace""#) && text.contains("<kbd"), "{text}");
        assert!(text.contains("formnovalidate"), "{text}");
        assert!(!text.contains("name="), "{text}");
    }
}
