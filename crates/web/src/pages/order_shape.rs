//! How one order is shown: its parts, its state, what happened to it, the forms for what came and what was heard.

use super::entries::Entries;
use desk::order::PartCount;
use look::{Button, ButtonKind, Field, Tone, button, check, hidden, tag};
use maud::{Markup, html};
use trade::model::{Library, Model};
use trade::order::{OrderEvent, OrderLine, OrderState, OrderStep, OrderView};
use words::{Words, text};

pub(super) fn window(w: &Words, from_g: Option<f64>, to_g: Option<f64>) -> String {
    match (from_g, to_g) {
        (Some(from_g), Some(to_g)) => text!(w, "order-window", from_g = from_g, to_g = to_g),
        (Some(from_g), None) => text!(w, "order-window-from", from_g = from_g),
        (None, Some(to_g)) => text!(w, "order-window-to", to_g = to_g),
        (None, None) => String::new(),
    }
}

/// A number of parts of one model: `2 heads Siskin 7`.
pub(super) fn parts(w: &Words, count: i64, line: &OrderLine, library: &Library) -> String {
    w.tell(&PartCount::of(count, line.kind, &line.model, line.number.as_deref(), library))
}

pub(super) fn state_tag(w: &Words, order: &OrderView) -> Markup {
    let state = w.tell(&order.state);
    match (order.state, order.days_late) {
        (_, Some(days)) => tag(Tone::Bad, &text!(w, "order-overdue", days = days)),
        (OrderState::Ordered | OrderState::PartlyHere, None) => tag(Tone::Care, &state),
        (OrderState::Here, _) => tag(Tone::Good, &state),
        (OrderState::Short | OrderState::Cancelled, _) => tag(Tone::Plain, &state),
    }
}

fn version(order: &OrderView) -> Markup {
    hidden("version", &order.version.to_string())
}

pub(super) fn receive_form(w: &Words, order: &OrderView, form: &Entries, asks: bool) -> Markup {
    let (line, number) = (&order.line, order.line.order);
    let count = if form.raw("count").is_empty() { order.open.to_string() } else { form.raw("count").to_owned() };
    let fields = html! {
        (version(order))
        div.fields {
            (look::field(&Field { name: "count", label: &w.text("order-came"), value: &count, error: form.error("count"), inputmode: "numeric", required: true, ..Field::default() }))
            @if line.number.is_some() {
                (form.field("number", &w.text("order-came-number"), Field { hint: &w.text("order-came-number-hint"), ..Field::default() }))
            }
            (form.field("model", &w.text("order-came-model"), Field { hint: &w.text("order-came-model-hint"), ..Field::default() }))
            (form.field("note", &w.text("order-field-note"), Field::default()))
        }
        p { (check("short", "1", &w.text("order-came-short"), form.has("short", "1"))) }
        @if asks { p { (check("anyway", "1", &w.text("order-came-anyway"), false)) } }
        div.actions { (button(&Button { label: &w.text("order-came-button"), big: order.open > 0, ..Button::default() })) }
    };
    html! {
        @if order.open > 0 || asks {
            form.card method="post" action={ "/orders/" (number) "/receive" } { h2 { (w.text("order-came-heading")) } (fields) }
        } @else {
            details { summary { (w.text("order-came-more")) }
                form.card method="post" action={ "/orders/" (number) "/receive" } { (fields) }
            }
        }
    }
}

pub(super) fn tell_form(w: &Words, order: &OrderView, form: &Entries) -> Markup {
    let line = &order.line;
    // What was typed stays where it could not be used.
    let typed =
        |name: &str, now: String| if form.error("expected").is_some() { form.raw(name).to_owned() } else { now };
    let supplier = typed("supplier", line.supplier.clone());
    let expected = typed("expected", line.expected_on.map(|d| d.to_string()).unwrap_or_default());
    html! {
        form.card method="post" action={ "/orders/" (line.order) "/tell" } {
            (version(order))
            div.fields {
                (look::field(&Field { name: "supplier", label: &w.text("order-field-supplier"), value: &supplier, ..Field::default() }))
                (look::field(&Field { name: "expected", label: &w.text("order-field-expected"), value: &expected, error: form.error("expected"), kind: "date", ..Field::default() }))
                (look::field(&Field { name: "note", id: "told", label: &w.text("order-field-note"), ..Field::default() }))
            }
            div.actions { (button(&Button { label: &w.text("order-keep"), kind: ButtonKind::Quiet, ..Button::default() })) }
        }
    }
}

pub(super) fn close_form(w: &Words, order: &OrderView) -> Markup {
    html! {
        form.card method="post" action={ "/orders/" (order.line.order) "/close" } {
            (version(order))
            (look::field(&Field { name: "reason", label: &w.text("order-close-why"), required: true, ..Field::default() }))
            div.actions {
                (button(&Button { label: &w.text("order-close-short"), kind: ButtonKind::Quiet, name: "short", value: "1", ..Button::default() }))
                (button(&Button { label: &w.text("order-cancel"), kind: ButtonKind::Danger, ..Button::default() }))
            }
        }
    }
}

pub(super) fn history(w: &Words, events: &[OrderEvent], library: &Library) -> Markup {
    let told = |e: &OrderEvent| match e.step {
        OrderStep::Received if e.is_substitute() => {
            let model = e.model.as_deref().map(|m| library.get(m).map_or(m, Model::name)).unwrap_or_default();
            let number = e.number.as_deref().map(|number| w.club_number(number)).unwrap_or_default();
            text!(w, "order-event-other", n = e.count, what = format!("{model} {number}").trim())
        }
        OrderStep::Received => text!(w, "order-event-came", n = e.count),
        OrderStep::Told => {
            let supplier = e.supplier.as_ref().map(|s| text!(w, "order-event-supplier", supplier = s));
            let expected = e.expected_on.map(|d| text!(w, "order-event-expected", expected_on = d));
            let told: Vec<String> = supplier.into_iter().chain(expected).collect();
            if told.is_empty() { w.text("order-event-remark") } else { told.join(", ") }
        }
        step => words::sentence(&w.tell(&step)).trim_end_matches('.').to_owned(),
    };
    html! { ul.life { @for e in events.iter().rev() { li {
        strong { (told(e)) } @if !e.note.is_empty() { " “" (e.note) "”" }
        span.small { (w.moment(e.at)) @if !e.by.is_empty() { ", " (e.by) } }
    } } } }
}
