//! What the weigh-in page shows besides its entry: the sign that is seen from afar, the heap, the last parts.

use super::entries::Entries;
use super::labels::label_texts;
use super::stock_weigh::{Shown, part_address};
use desk::weigh_in::Judged;
use look::{
    Button, ButtonKind, HeapView, Icon, LabelPaper, Tone, button, check, heap, hidden, icon, label_page, link_button,
    request_key, rich, section, tag,
};
use maud::{Markup, html};
use trade::life::figures_of;
use trade::model::Model;
use trade::part::Part;
use trade::shop::WeighInSettings;
use words::{Words, text};

/// The question, large.
pub(super) fn sign(w: &Words, judged: &Judged, typed: &str) -> Markup {
    html! {
        div.weigh-sign.ask role="alert" data-weigh-sign="ask" {
            p.weigh-figure { (typed) " ?" }
            p { (rich!(w, "weigh-in-question", |_, inner| html! { strong { (inner) } }, finding = w.tell(&judged.finding), next = judged.next.as_ref().map(|next| w.tell(next)))) }
        }
    }
}

/// What was kept, large, with its label to print.
pub(super) fn sign_kept(w: &Words, shown: &Shown<'_>, part: &Part, models: &[Model]) -> Markup {
    let mass = match (part.mass_g, part.count) {
        (Some(g), _) => w.mass(g),
        (None, Some(n)) => text!(w, "weigh-in-in-box", n = n),
        (None, None) => String::new(),
    };
    let other = part.number.as_deref().filter(|n| *n != shown.form.text("number"));
    let bend = match (shown.model, part.number.as_deref()) {
        (Model::Head(head), Some(n)) => desk::weigh_in::bend_doubts(head, n, part.loft_deg, part.lie_deg),
        _ => Vec::new(),
    };
    let label = shown.settings.print_labels.then(|| label_texts(w, std::slice::from_ref(part), models));
    let print = format!("/labels?codes={}&paper=strip", super::entries::in_address(&part.code));
    html! {
        div.weigh-sign role="status" data-weigh-sign=(if bend.is_empty() { "kept" } else { "ask" }) data-weigh-code=(part.code) {
            p.weigh-figure { (icon(Icon::Tick)) " " (part.code) @if !mass.is_empty() { span { (mass) } } }
            @if let Some(number) = other { p { strong { (text!(w, "weigh-in-kept-as", number = w.club_number(number))) } } }
            @for doubt in &bend { p { (rich!(w, "weigh-in-bend", |_, inner| html! { strong { (inner) } }, doubt = w.tell(doubt))) } }
            div.actions {
                (link_button(&print, &w.text("stock-print-label"), ButtonKind::Quiet, Some(Icon::Print), ""))
                @if part.version == 0 && part.is_free() { (take_back(w, shown, part)) }
            }
        }
        @if let Some(label) = label { div.print-only data-weigh-label=(part.code) { (label_page(w, &label, LabelPaper::Strip)) } }
    }
}

/// The heap of those weighed; empty where the model gives no mass to hold them against.
pub(super) fn heap_of(w: &Words, shown: &Shown<'_>) -> Markup {
    let Some(spread) = &shown.view.spread else { return html! {} };
    let asked = shown.question.and_then(|_| quantity::parse_mass(shown.form.text("mass"), w.units.mass).ok());
    heap(
        w,
        &HeapView {
            id: "heap".into(),
            name: format!("{} {}", shown.model.name(), shown.form.text("number")),
            nominal_g: spread.nominal_g,
            sd_g: spread.model_sd_g,
            masses_g: spread.weighed_g.clone(),
            asked_g: asked.map(quantity::Mass::g),
            beside: shown.view.beside.clone(),
        },
    )
}

/// The last parts, the newest first.
pub(super) fn last_list(w: &Words, shown: &Shown<'_>) -> Markup {
    let view = shown.view;
    if view.last.is_empty() {
        return html! {};
    }
    let total = text!(w, "weigh-in-total", n = view.count);
    section(
        &w.text("weigh-in-last"),
        &html! { span.hint { (total) } },
        &html! {
            ul.plain.readings { @for part in &view.last {
                li {
                    a href=(part_address(&part.code)) { (part.code) }
                    strong { @match (part.mass_g, part.count) {
                        (Some(g), _) => { (w.mass(g)) }
                        (None, Some(n)) => { (text!(w, "stock-left", n = n)) }
                        (None, None) => { (w.text("stock-not-weighed")) }
                    } }
                    @if let (Some(g), Some(spread)) = (part.mass_g, &view.spread) { span.small { (text!(w, "weigh-in-off-model", off_g = g - spread.nominal_g)) } }
                    @for change in figures_of(part).iter().filter(|change| change.field != "mass_g" && change.field != "count") {
                        span.small { (w.tell(&change.told())) }
                    }
                    @if !part.is_free() { (tag(Tone::Care, &w.tell(&part.state))) }
                    }
            } }
        },
    )
}

/// What the page that follows goes on with.
fn stays(form: &Entries) -> Markup {
    html! { @for name in ["model", "number", "lot", "place", "owner", "angles"] { (hidden(name, form.text(name))) } }
}

fn take_back(w: &Words, shown: &Shown<'_>, part: &Part) -> Markup {
    html! {
        form.inline method="post" action="/stock/new/take-back" data-keep=(part.code) {
            (hidden("code", &part.code)) (hidden("id", part.id.as_str())) (request_key(&app::request_key()))
            (stays(shown.form))
            (button(&Button { label: &w.text("weigh-in-undo"), kind: ButtonKind::Quiet, icon: Some(Icon::Undo), keys: "z", ..Button::default() }))
        }
    }
}

/// What holds for every weigh-in of the shop.
pub(super) fn settings_part(w: &Words, now: &WeighInSettings, form: &Entries) -> Markup {
    html! {
        details.no-print { summary { (w.text("weigh-in-settings")) }
            form method="post" action="/stock/new/settings" {
                (stays(form))
                (check("print_labels", "1", &w.text("weigh-in-print"), now.print_labels))
                p.hint { (w.text("weigh-in-print-hint")) }
                (check("sound", "1", &w.text("weigh-in-sound"), now.sound))
                div.actions { (button(&Button { label: &w.text("weigh-in-settings-keep"), kind: ButtonKind::Quiet, ..Button::default() })) }
            }
        }
    }
}
