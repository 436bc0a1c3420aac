//! A new sheet, written short: looked at first, then saved.

use super::customers::name_list;
use super::entries::{Entries, capital, go_on, group, in_address};
use super::fields::{Ask, Way, header, rows};
use super::measured::Measured;
use super::sheets::{expanded_table, findings};
use super::{Framed, PageError, PageResult, failure, failure_status, framed};
use super::{beside, within_its_entry};
use crate::reader::Reader;
use crate::tablet::Done;
use crate::units;
use app::App;
use app::customer::CustomerSummary;
use app::sheet::ShortSheet;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use desk::sheet_check::SheetProblem;
use desk::short_sheet::Expanded;
use desk::short_sheet::KindChoice;
use desk::short_sheet::SetModels;
use fact::{Refusal, Told};
use jiff::ToSpan;
use jiff::civil::Date;
use look::{
    Action, Button, ButtonKind, Choice, Field, Nav, Notice, button, check, empty_state, hidden, radios, section,
};
use maud::{Markup, html};
use trade::customer::code;
use trade::kind::ClubKind;
use trade::kind::Hand;
use trade::kind::LengthTo;
use trade::model::Model;
use trade::model::PartKind;
use trade::reading::Unit;
use trade::sheet::SetRule;
use trade::sheet::Sheet;
use trade::sheet::{ReferenceClub, ReferenceReading};
use words::{Words, text};

/// The kinds that may have a shaft, a grip or a ferrule of their own.
const OWN: [ClubKind; 4] = [ClubKind::Wood, ClubKind::Hybrid, ClubKind::Wedge, ClubKind::Putter];

/// What a sheet may say, by the names of its texts: the field, and the phrases for it.
const PHRASES: [(&str, &str); 12] = [
    ("sheet-form-say-clubs", "sheet-form-phrases-clubs"),
    ("sheet-form-say-length", "sheet-form-phrases-length"),
    ("sheet-form-say-lie", "sheet-form-phrases-lie"),
    ("sheet-form-say-loft", "sheet-form-phrases-loft"),
    ("sheet-form-say-swing-weight", "sheet-form-phrases-swing-weight"),
    ("sheet-form-say-tape", "sheet-form-phrases-tape"),
    ("sheet-form-say-labels", "sheet-form-phrases-labels"),
    ("sheet-form-say-frequency", "sheet-form-phrases-frequency"),
    ("sheet-form-say-total-mass", "sheet-form-phrases-total-mass"),
    ("sheet-form-say-soft-side", "sheet-form-phrases-soft-side"),
    ("sheet-field-adapter-setting", "sheet-form-phrases-adapter"),
    ("sheet-form-say-tolerance", "sheet-form-phrases-tolerance"),
];

pub(super) async fn blank(
    State(app): State<App>,
    Reader(w): Reader,
    Query(asked): Query<Vec<(String, String)>>,
) -> PageResult {
    let due = app.today().saturating_add(14.days());
    let pairs = [("due", due.to_string()), ("hand", "right".into()), ("rule", SetRule::AsWritten.key().into())];
    let mut form = Entries::new(pairs.map(|(k, v): (&str, String)| (k.to_owned(), v)).to_vec());
    let asked = Entries::new(asked);
    let wanted = asked.text("customer");
    let number = match wanted.parse::<i64>() {
        Ok(number) => Some(number),
        Err(_) if wanted.is_empty() => None,
        Err(_) => {
            form.set("player", wanted);
            customer_of(&w, &app, &mut form, wanted).await?.flatten()
        }
    };
    if let Some(number) = number {
        let view = app.customer(number).await?;
        form.set("customer", number.to_string());
        form.set("player", view.customer.name);
        if let Some(hand) = view.customer.hand {
            form.set("hand", hand.key());
        }
    }
    form_page(&w, &app, &form, None, None, StatusCode::OK).await
}

/// A sheet that was looked at.
struct Preview {
    expanded: Vec<Expanded>,
    problems: Vec<SheetProblem>,
}

pub(super) async fn look_or_save(
    State(app): State<App>,
    Reader(w): Reader,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let save = form.has("do", "save");
    let (head, mut short) = (head(&w, &mut form), short(&w, &mut form));
    let mut customer = None;
    if let Some(head) = &head {
        match customer_of(&w, &app, &mut form, &head.player).await? {
            Some(known) => customer = known,
            None => return form_page(&w, &app, &form, None, None, StatusCode::UNPROCESSABLE_ENTITY).await,
        }
    }
    if let Some(short) = &mut short {
        short.customer = customer;
    }
    // The clubs can be looked at before player and date stand.
    let expanded = match &short {
        Some(short) => app.expand_sheet(short).await,
        None => return form_page(&w, &app, &form, None, None, StatusCode::UNPROCESSABLE_ENTITY).await,
    };
    let expanded = match expanded {
        Ok(expanded) => expanded,
        Err(error) => {
            let status = failure_status(&error);
            form.refuse("written", beside(&w, &within_its_entry(&error.refusal())));
            return form_page(&w, &app, &form, None, None, status).await;
        }
    };
    let (Some(head), Some(short)) = (head, short) else {
        let preview = Preview { expanded, problems: vec![] };
        return form_page(&w, &app, &form, Some(preview), None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let sheet = Sheet {
        player: head.player,
        customer,
        quote: Vec::new(),
        due: head.due,
        hand: head.hand,
        note: head.note,
        rule: short.rule,
        written: short.written,
        reference: short.reference,
        clubs: expanded.iter().map(|e| e.club.clone()).collect(),
    };
    if save {
        return match app.save_sheet(&sheet).await {
            Ok(view) => Ok(go_on(&format!("/sheets/{}", in_address(view.id.as_str())), Done::Saved)),
            Err(error) => form_page(&w, &app, &form, None, Some(failure(&w, &error)), failure_status(&error)).await,
        };
    }
    let problems = app.check_sheet(&sheet).await?;
    form_page(&w, &app, &form, Some(Preview { expanded, problems }), None, StatusCode::OK).await
}

/// Player, date, hand and note.
pub(super) struct Head {
    pub player: String,
    pub due: Date,
    pub hand: Hand,
    pub note: String,
}

pub(super) fn head(w: &Words, form: &mut Entries) -> Option<Head> {
    let player = form.some("player");
    let player = form.needed("player", player, &w.text("sheet-form-player-needed"));
    let due = form.date(w, "due");
    let due = form.needed("due", due, &w.text("sheet-form-due-needed"));
    let hand = Hand::from_key(form.text("hand"));
    Some(Head { player: player?, due: due?, hand: hand.unwrap_or(Hand::Right), note: form.text("note").to_owned() })
}

/// Whose the sheet is: the customer that the form was begun for where it still carries their name, else the only one of that
/// name, or the one whose code was typed. None where several have the name, which is said beside it.
pub(super) async fn customer_of(
    w: &Words,
    app: &App,
    form: &mut Entries,
    player: &str,
) -> Result<Option<Option<i64>>, PageError> {
    let same = match app.customers_named(player).await {
        Ok(same) => same,
        Err(error) => {
            form.refuse("player", beside(w, &error.refusal()));
            return Ok(None);
        }
    };
    let begun = form.text("customer").parse::<i64>().ok().filter(|number| same.contains(number));
    Ok(match (begun, same.as_slice()) {
        (Some(number), _) => Some(Some(number)),
        (None, []) => Some(None),
        (None, [only]) => Some(Some(*only)),
        (None, several) => {
            let codes: Vec<String> = several.iter().map(|number| code(*number)).collect();
            form.refuse("player", text!(w, "sheet-form-which-customer", codes = codes));
            None
        }
    })
}

pub(super) fn head_fields(w: &Words, form: &Entries, customers: &[CustomerSummary]) -> Markup {
    let hands: Vec<Choice<'_>> = Hand::ALL
        .iter()
        .map(|h| Choice { value: h.key(), label: w.tell(h).into(), chosen: form.text("hand") == h.key() })
        .collect();
    html! {
        (hidden("customer", form.text("customer")))
        (name_list(customers))
        div.fields {
            (form.field("player", &w.text("sheet-form-player"), Field { required: true, list: "customers", ..Field::default() }))
            (form.field("due", &w.text("sheet-form-due"), Field { kind: "date", required: true, ..Field::default() }))
            (radios("hand", &w.text("sheet-form-hand"), &hands))
        }
        (form.field("note", &w.text("sheet-form-note"), Field { hint: &w.text("sheet-form-note-hint"), ..Field::default() }))
    }
}

fn short(w: &Words, form: &mut Entries) -> Option<ShortSheet> {
    let written = form.some("written");
    let written = form.needed("written", written, &w.text("sheet-form-written-needed"));
    let heads: Vec<String> = form.all("head").map(str::to_owned).collect();
    if heads.is_empty() {
        form.refuse("head", w.text("sheet-form-head-needed"));
    }
    let choices = |form: &Entries, what: &str| {
        let mut list = Vec::new();
        if let Some(model) = form.some(what) {
            list.push(KindChoice { club_kind: None, model });
        }
        for kind in OWN {
            if let Some(model) = form.some(&format!("{what}-{}", kind.key())) {
                list.push(KindChoice { club_kind: Some(kind), model });
            }
        }
        list
    };
    let models = SetModels {
        heads,
        shafts: choices(form, "shaft"),
        grips: choices(form, "grip"),
        ferrules: choices(form, "ferrule"),
        adhesive: form.some("adhesive"),
        tape: form.some("tape"),
    };
    for (what, list, needed) in
        [("shaft", &models.shafts, "sheet-form-shaft-needed"), ("grip", &models.grips, "sheet-form-grip-needed")]
    {
        if list.is_empty() {
            form.refuse(what, w.text(needed));
        }
    }
    let reference = reference(w, form);
    form.is_sound_but(&["player", "due"]).then_some(())?;
    let rule = SetRule::from_key(form.text("rule")).unwrap_or(SetRule::AsWritten);
    Some(ShortSheet { written: written?, models, rule, reference, customer: None })
}

fn reference(w: &Words, form: &mut Entries) -> Option<ReferenceClub> {
    let filled =
        form.pairs().iter().any(|(k, v)| k.starts_with("ref-") && k != "ref-length_to" && !v.trim().is_empty());
    if !filled {
        return None;
    }
    let number = form.some("ref-number");
    let number = form.needed("ref-number", number, &w.text("sheet-form-reference-number-needed"));
    let length_mm = form.length_mm(w, "ref-length");
    Some(ReferenceClub {
        length_mm,
        length_to: length_mm.and_then(|_| LengthTo::from_key(form.text("ref-length_to"))),
        swing_weight_points: form.swing_weight_points(w, "ref-swing_weight"),
        total_mass_g: form.mass_g(w, "ref-mass"),
        balance_point_mm: form.length_mm(w, "ref-balance_point"),
        loft_deg: form.angle_deg(w, "ref-loft"),
        lie_deg: form.angle_deg(w, "ref-lie"),
        cpm: form.cpm(w, "ref-cpm"),
        clamp_mm: form.length_mm(w, "ref-clamp"),
        scale: form.text("ref-scale").to_owned(),
        grip_model: form.some("ref-grip"),
        cap_mm: form.measured(w, "ref-cap", Measured::Millimetre),
        coupler_g: form.mass_g(w, "ref-coupler"),
        read_on: form.date(w, "ref-read_on"),
        swing_weight_sd_points: form.number(w, "ref-sd"),
        also_read: also_read(w, form),
        number: number?,
    })
}

/// A further reading of the reference club, one a line.
fn also_read_columns() -> [Ask; 3] {
    let label = |id| Told::new(id);
    [
        Ask::new("swing_weight_points", label("sheet_form.also_read_swing_weight"), Way::SwingWeight),
        Ask::new("scale", label("sheet_form.also_read_scale"), Way::Text).optional(),
        Ask::new("read_on", label("sheet_form.also_read_on"), Way::Text).optional(),
    ]
}

fn also_read(w: &Words, form: &mut Entries) -> Vec<ReferenceReading> {
    let typed = form.text("ref-also_read").to_owned();
    let read = rows(w, &typed, &also_read_columns()).map_err(|words| capital(&words)).and_then(|rows| {
        let one = |row| document::read_value::<ReferenceReading>(row).map_err(|e| beside(w, &Refusal::new(&e)));
        rows.into_iter().map(one).collect()
    });
    read.unwrap_or_else(|words: String| {
        form.refuse("ref-also_read", words);
        Vec::new()
    })
}

async fn form_page(
    w: &Words,
    app: &App,
    form: &Entries,
    preview: Option<Preview>,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let models = app.models(None).await?;
    let customers = app.customers("").await?;
    let lacking = [PartKind::Head, PartKind::Shaft, PartKind::Grip]
        .into_iter()
        .find(|kind| !models.iter().any(|m| m.kind() == *kind));
    let body = match lacking {
        Some(kind) => {
            let href = format!("/stock/models/new?kind={}", kind.key());
            empty_state(
                &text!(w, "sheet-form-no-model", kind = kind),
                &w.text("sheet-form-needs-models"),
                &[
                    Action { href: &href, label: &text!(w, "sheet-form-new-model", kind = kind), primary: true },
                    Action { href: "/stock/models/file", label: &w.text("sheet-form-load-models"), primary: false },
                ],
            )
        }
        None => html! {
            @if let Some(preview) = &preview { (preview_part(w, &models, preview)) }
            @if preview.is_none() && !customers.is_empty() && form.text("written").is_empty() { (known_part(w, form)) }
            form #sheet-form method="post" action="/sheets/new" { (fields(w, form, &models, &customers)) }
        },
    };
    let notice = notice.or_else(|| form.notice(w));
    let page =
        framed(w, app, Framed { title: &w.text("sheet-new"), active: Nav::Sheets, notice, body, ..Framed::default() })
            .await?;
    Ok((status, page).into_response())
}

/// Begins the sheet with what is known of a customer.
fn known_part(w: &Words, form: &Entries) -> Markup {
    html! {
        form.search method="get" action="/sheets/new" {
            label.hidden for="customer" { (w.text("sheet-form-known")) }
            input #customer name="customer" list="customers" value=(form.raw("player")) placeholder=(w.text("sheet-form-known")) autocomplete="off";
            button.button.quiet type="submit" { (w.text("sheet-form-take-known")) }
        }
    }
}

fn preview_part(w: &Words, models: &[Model], preview: &Preview) -> Markup {
    let label = w.text("sheet-form-save");
    let save = Button { label: &label, name: "do", value: "save", form: "sheet-form", ..Button::default() };
    html! {
        (section(&w.text("sheet-form-meaning"), &button(&save), &html! {
            (expanded_table(w, models, &preview.expanded))
        }))
        (findings(w, &preview.problems))
        p.hint { (w.text("sheet-form-not-saved")) }
    }
}

fn fields(w: &Words, form: &Entries, models: &[Model], customers: &[CustomerSummary]) -> Markup {
    let rules: Vec<(&str, String)> = SetRule::ALL.iter().map(|r| (r.key(), w.tell(r))).collect();
    html! {
        div.card { (head_fields(w, form, customers)) }
        div.card {
            (form.area("written", &w.text("sheet-form-written"), 4, Field { hint: &w.text("sheet-form-written-hint"), required: true, ..Field::default() }))
            details { summary { (w.text("sheet-form-understands")) }
                dl.defs { @for (what, phrases) in PHRASES { div { dt { (w.text(what)) } dd { (w.text(phrases)) } } } }
            }
            (form.select("rule", &w.text("sheet-form-rule"), "", &rules))
        }
        div.card { (model_part(w, form, models)) }
        details.card open[form.pairs().iter().any(|(k, v)| k.starts_with("ref-") && k != "ref-length_to" && !v.is_empty())] {
            summary { (w.text("sheet-form-reference")) }
            (reference_fields(w, form, models))
        }
        div.actions {
            (button(&Button { label: &w.text("sheet-form-look"), name: "do", value: "look", ..Button::default() }))
            (button(&Button { label: &w.text("sheet-form-save"), kind: ButtonKind::Quiet, name: "do", value: "save", ..Button::default() }))
        }
    }
}

fn model_part(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let heads = models.iter().filter_map(|m| if let Model::Head(head) = m { Some(head) } else { None });
    let list = |kind: PartKind, none: &str| -> Vec<(&str, String)> {
        std::iter::once(("", w.text(none)))
            .chain(models.iter().filter(|m| m.kind() == kind).map(|m| (m.code(), m.name().to_owned())))
            .collect()
    };
    html! {
        (group(&w.text("sheet-form-heads"), &html! {
            @if let Some(error) = form.error("head") { p.error { (error) } }
            div.actions { @for head in heads {
                @let name = text!(w, "sheet-form-head-choice", head = head.name, kind = head.club_kind, hand = head.hand.key());
                (check("head", &head.code, &name, form.has("head", &head.code)))
            } }
        }))
        div.fields {
            (form.select("shaft", &w.text("sheet-form-shaft"), "", &list(PartKind::Shaft, "sheet-form-choose")))
            (form.select("grip", &w.text("sheet-form-grip"), "", &list(PartKind::Grip, "sheet-form-choose")))
            (form.select("ferrule", &w.text("sheet-form-ferrule"), "", &list(PartKind::Ferrule, "sheet-form-none")))
            (form.select("adhesive", &w.text("sheet-form-adhesive"), "", &list(PartKind::Adhesive, "sheet-form-shops-own")))
            (form.select("tape", &w.text("sheet-form-tape"), "", &list(PartKind::Tape, "sheet-form-shops-own")))
        }
        @let own = form.pairs().iter().any(|(k, v)| {
            ["shaft-", "grip-", "ferrule-"].iter().any(|p| k.starts_with(p)) && !v.is_empty()
        });
        details open[own] { summary { (w.text("sheet-form-others")) }
            @for kind in [PartKind::Shaft, PartKind::Grip, PartKind::Ferrule] {
                div.section { div.fields { @for own in OWN {
                    @let label = text!(w, "sheet-form-own", part = kind.key(), club = own.key());
                    (form.select(&format!("{}-{}", kind.key(), own.key()), &label, "", &list(kind, "sheet-form-as-above")))
                } } }
            }
        }
    }
}

fn reference_fields(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let length_to: Vec<(&str, String)> = LengthTo::ALL.iter().rev().map(|l| (l.key(), w.tell(l))).collect();
    let grips: Vec<(&str, String)> = std::iter::once(("", w.text("sheet-not-noted")))
        .chain(models.iter().filter(|m| m.kind() == PartKind::Grip).map(|m| (m.code(), m.name().to_owned())))
        .collect();
    let decimal = |unit| Field { unit, inputmode: "decimal", ..Field::default() };
    let example = |inches, millimetres| w.text(units::example(w, inches, millimetres, Unit::Millimetre));
    let length = example("sheet-form-reference-length-in", "sheet-form-reference-length-mm");
    let balance = example("sheet-form-reference-balance-in", "sheet-form-reference-balance-mm");
    let clamp = example("sheet-form-reference-clamp-in", "sheet-form-reference-clamp-mm");
    let unit = w.length_sign();
    html! {
        p.hint { (w.text("sheet-form-reference-hint")) }
        div.fields {
            (form.field("ref-number", &w.text("sheet-form-reference-number"), Field { hint: &w.text("sheet-form-reference-number-hint"), ..Field::default() }))
            (form.field("ref-length", &w.text("sheet-club-length"), Field { unit, hint: &length, ..Field::default() }))
            (form.select("ref-length_to", &w.text("sheet-club-measured"), "", &length_to))
            (form.field("ref-swing_weight", &w.text("sheet-club-swing-weight"), Field { hint: &w.text("sheet-form-reference-swing-weight-hint"), ..Field::default() }))
            (form.field("ref-mass", &w.text("sheet-form-reference-mass"), decimal(w.mass_sign())))
            (form.field("ref-balance_point", &w.text("sheet-form-reference-balance"), Field { unit, hint: &balance, ..Field::default() }))
            (form.field("ref-loft", &w.text("sheet-club-loft"), decimal("°")))
            (form.field("ref-lie", &w.text("sheet-club-lie"), decimal("°")))
            (form.field("ref-cpm", &w.text("sheet-club-frequency"), decimal("cpm")))
            (form.field("ref-clamp", &w.text("sheet-form-reference-clamp"), Field { unit, hint: &clamp, ..Field::default() }))
            (form.field("ref-scale", &w.text("sheet-form-reference-scale"), Field { hint: &w.text("sheet-form-reference-scale-hint"), ..Field::default() }))
            (form.select("ref-grip", &w.text("sheet-form-reference-grip"), "", &grips))
            (form.field("ref-cap", &w.text("sheet-form-reference-cap"), decimal(w.length_sign())))
            (form.field("ref-coupler", &w.text("sheet-form-reference-coupler"), decimal(w.mass_sign())))
            (form.field("ref-read_on", &w.text("sheet-form-reference-read-on"), Field { kind: "date", ..Field::default() }))
            (form.field("ref-sd", &w.text("sheet-form-reference-sd"), Field { hint: &w.text("sheet-form-reference-sd-hint"), ..decimal(&w.tell(&trade::reading::Unit::Points)) }))
        }
        (form.area("ref-also_read", &w.text("sheet-form-also-read"), 3, Field {
            hint: &w.text("sheet-form-also-read-hint"), placeholder: &header(w, &also_read_columns()), ..Field::default()
        }))
    }
}

impl Entries {
    /// Whether all is sound but perhaps these fields.
    fn is_sound_but(&self, names: &[&str]) -> bool {
        self.mistakes().all(|name| names.contains(&name))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    fn filled(more: &[(&str, &str)]) -> Entries {
        let base = [("written", "5-P, D2"), ("head", "SISKIN"), ("shaft", "S"), ("grip", "G"), ("grip-putter", "P")];
        Entries::new(base.iter().chain(more).map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect())
    }

    #[test]
    fn a_grip_of_its_own_for_putters_is_read() {
        let short = short(&w(), &mut filled(&[])).expect("reads");
        assert_eq!(short.models.grips.len(), 2);
        assert_eq!(short.models.grips[1].club_kind, Some(ClubKind::Putter));
        assert!(short.reference.is_none());
    }

    #[test]
    fn a_reference_without_a_number_is_asked_for_it() {
        let mut form = filled(&[("ref-lie", "63"), ("ref-length_to", "cap")]);
        assert!(short(&w(), &mut form).is_none());
        assert!(form.error("ref-number").is_some());
    }
}
