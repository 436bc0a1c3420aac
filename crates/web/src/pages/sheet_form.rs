//! A new sheet, written short: looked at first, then saved.

use super::entries::{Entries, go_to, group, in_address};
use super::sheets::{expanded_table, findings};
use super::{Framed, PageResult, failure, failure_status, framed};
use super::{beside, within_its_entry};
use crate::reader::Reader;
use crate::units;
use app::App;
use app::sheet::ShortSheet;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use desk::sheet_check::SheetProblem;
use desk::short_sheet::Expanded;
use desk::short_sheet::KindChoice;
use desk::short_sheet::SetModels;
use jiff::ToSpan;
use jiff::civil::Date;
use look::{Action, Button, ButtonKind, Choice, Field, Nav, Notice, button, check, empty_state, radios, section};
use maud::{Markup, html};
use trade::kind::ClubKind;
use trade::kind::Hand;
use trade::kind::LengthTo;
use trade::model::Model;
use trade::model::PartKind;
use trade::reading::Unit;
use trade::sheet::ReferenceClub;
use trade::sheet::SetRule;
use trade::sheet::Sheet;
use words::Words;

/// The kinds that may have a shaft, a grip or a ferrule of their own.
const OWN: [ClubKind; 4] = [ClubKind::Wood, ClubKind::Hybrid, ClubKind::Wedge, ClubKind::Putter];

const WRITTEN_HINT: &str = "For example: 5-PW, +1/2, 2 up, D3, 2 wraps. Clubs first, then what holds for them; what \
                            stands before the first clubs holds for all.";

/// The phrases that a sheet may use, by what they say.
const PHRASES: [(&str, &str); 11] = [
    ("clubs", "5-PW · 5 to P · 5, 7, 9 · 3w · 7-iron · driver · wedges · all"),
    ("length", "+1/2 · -1/4 in · +12 mm · 1/2 over · std · 36 3/4 in · to the cap · to the shaft end"),
    ("lie", "2 up · 1° flat · lie 62 · lie +1"),
    ("loft", "1 strong · 1 weak · loft 34 · loft -1"),
    ("swing weight", "D3 · D2.5 · D2 +0.5 a club · wedges +2 points"),
    ("tape", "2 wraps (beside the base) · 2 wraps + 1 lower hand · no wraps"),
    ("labels", "grip down · logo away · shaft up"),
    ("frequency", "300 cpm · 300 cpm +4 a club"),
    ("whole mass", "total 428 g · total 428 g +7 a club"),
    ("soft side", "soft side heel · toe · target · away"),
    ("tolerance", "±0.3 (points) · ±1.5 mm · ±0.5° · ±2 cpm"),
];

pub(super) async fn blank(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let due = app.today().saturating_add(14.days());
    let pairs = [("due", due.to_string()), ("hand", "right".into()), ("rule", SetRule::AsWritten.key().into())];
    let form = Entries::new(pairs.map(|(k, v): (&str, String)| (k.to_owned(), v)).to_vec());
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
    let (head, short) = (head(&w, &mut form), short(&w, &mut form));
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
            Ok(view) => Ok(go_to(&format!("/sheets/{}", in_address(view.id.as_str()))).into_response()),
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
    let player = form.needed("player", player, "Give the player's name");
    let due = form.date(w, "due");
    let due = form.needed("due", due, "Give the day when the set is due");
    let hand = Hand::from_key(form.text("hand"));
    Some(Head { player: player?, due: due?, hand: hand.unwrap_or(Hand::Right), note: form.text("note").to_owned() })
}

pub(super) fn head_fields(w: &Words, form: &Entries) -> Markup {
    let hands: Vec<Choice<'_>> = Hand::ALL
        .iter()
        .map(|h| Choice { value: h.key(), label: h.word().into(), chosen: form.text("hand") == h.key() })
        .collect();
    html! {
        div.fields {
            (form.field("player", "Player", Field { required: true, ..Field::default() }))
            (form.field("due", "Due", Field { kind: "date", required: true, ..Field::default() }))
            (radios("hand", "Hand", &hands))
        }
        (form.field("note", "Note", Field { hint: "Anything else that the bench should know", ..Field::default() }))
    }
}

fn short(w: &Words, form: &mut Entries) -> Option<ShortSheet> {
    let written = form.some("written");
    let written = form.needed("written", written, "Write the sheet, for example 5-PW, +1/2, 2 up, D3");
    let heads: Vec<String> = form.all("head").map(str::to_owned).collect();
    if heads.is_empty() {
        form.refuse("head", "Tick at least one head model");
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
    for (what, list) in [("shaft", &models.shafts), ("grip", &models.grips)] {
        if list.is_empty() {
            form.refuse(what, format!("Choose a {what}"));
        }
    }
    let reference = reference(w, form);
    form.is_sound_but(&["player", "due"]).then_some(())?;
    let rule = SetRule::from_key(form.text("rule")).unwrap_or(SetRule::AsWritten);
    Some(ShortSheet { written: written?, models, rule, reference })
}

fn reference(w: &Words, form: &mut Entries) -> Option<ReferenceClub> {
    let filled =
        form.pairs().iter().any(|(k, v)| k.starts_with("ref-") && k != "ref-length_to" && !v.trim().is_empty());
    if !filled {
        return None;
    }
    let number = form.some("ref-number");
    let number = form.needed("ref-number", number, "Give the number of the club that was read, for example 7");
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
        cap_mm: form.small_mm(w, "ref-cap"),
        coupler_g: form.mass_g(w, "ref-coupler"),
        read_on: form.date(w, "ref-read_on"),
        number: number?,
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
    let lacking = [PartKind::Head, PartKind::Shaft, PartKind::Grip]
        .into_iter()
        .find(|kind| !models.iter().any(|m| m.kind() == *kind));
    let body = match lacking {
        Some(kind) => {
            let href = format!("/stock/models/new?kind={}", kind.key());
            empty_state(
                &format!("There is no {kind} model yet."),
                "A sheet is relative to the models it is built from: add a head, a shaft and a grip model first.",
                &[
                    Action { href: &href, label: &format!("New {kind} model"), primary: true },
                    Action { href: "/stock/models/file", label: "Load models from a file", primary: false },
                ],
            )
        }
        None => html! {
            @if let Some(preview) = &preview { (preview_part(w, preview)) }
            form #sheet-form method="post" action="/sheets/new" { (fields(w, form, &models)) }
        },
    };
    let notice = notice.or_else(|| form.notice(w));
    let page =
        framed(w, app, Framed { title: "New sheet", active: Nav::Sheets, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

fn preview_part(w: &Words, preview: &Preview) -> Markup {
    let save = Button { label: "Save", name: "do", value: "save", form: "sheet-form", ..Button::default() };
    html! {
        (section("What it means", &button(&save), &html! {
            (expanded_table(w, &preview.expanded))
        }))
        (findings(w, &preview.problems))
        p.hint { "Nothing is saved yet. A sheet with findings may be saved and put right later; only the job waits for it." }
    }
}

fn fields(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let rules: Vec<(&str, &str)> = SetRule::ALL.iter().map(|r| (r.key(), r.word())).collect();
    html! {
        div.card { (head_fields(w, form)) }
        div.card {
            (form.area("written", "The sheet", 4, Field { hint: WRITTEN_HINT, required: true, ..Field::default() }))
            details { summary { "What it understands" }
                dl.defs { @for (what, words) in PHRASES { div { dt { (what) } dd { (words) } } } }
            }
            (form.select("rule", "What ties the set together", "", &rules))
        }
        div.card { (model_part(w, form, models)) }
        details.card open[form.pairs().iter().any(|(k, v)| k.starts_with("ref-") && k != "ref-length_to" && !v.is_empty())] {
            summary { "The reference club, where one was read" }
            (reference_fields(w, form, models))
        }
        div.actions {
            (button(&Button { label: "Look at it", name: "do", value: "look", ..Button::default() }))
            (button(&Button { label: "Save", kind: ButtonKind::Quiet, name: "do", value: "save", ..Button::default() }))
        }
    }
}

fn model_part(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let heads = models.iter().filter_map(|m| if let Model::Head(head) = m { Some(head) } else { None });
    let list = |kind: PartKind, none: &'static str| -> Vec<(&str, &str)> {
        std::iter::once(("", none))
            .chain(models.iter().filter(|m| m.kind() == kind).map(|m| (m.code(), m.name())))
            .collect()
    };
    html! {
        (group("Heads", &html! {
            @if let Some(error) = form.error("head") { p.error { (error) } }
            div.actions { @for head in heads {
                @let hand = if head.hand == Hand::Left { ", left" } else { "" };
                (check("head", &head.code, &format!("{} ({}{hand})", head.name, head.club_kind), form.has("head", &head.code)))
            } }
        }))
        div.fields {
            (form.select("shaft", "Shaft", "", &list(PartKind::Shaft, "choose")))
            (form.select("grip", "Grip", "", &list(PartKind::Grip, "choose")))
            (form.select("ferrule", "Ferrule", "", &list(PartKind::Ferrule, "none")))
            (form.select("adhesive", "Adhesive", "", &list(PartKind::Adhesive, "the shop's own")))
            (form.select("tape", "Tape", "", &list(PartKind::Tape, "the shop's own")))
        }
        @let own = form.pairs().iter().any(|(k, v)| {
            ["shaft-", "grip-", "ferrule-"].iter().any(|p| k.starts_with(p)) && !v.is_empty()
        });
        details open[own] { summary { "Others for woods, hybrids, wedges or putters" }
            @for (what, label, kind) in [("shaft", "Shaft", PartKind::Shaft), ("grip", "Grip", PartKind::Grip), ("ferrule", "Ferrule", PartKind::Ferrule)] {
                div.section { div.fields { @for own in OWN {
                    (form.select(&format!("{what}-{}", own.key()), &format!("{label} of {}s", own.word()), "", &list(kind, "as above")))
                } } }
            }
        }
    }
}

fn reference_fields(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let length_to: Vec<(&str, &str)> = LengthTo::ALL.iter().rev().map(|l| (l.key(), l.word())).collect();
    let grips: Vec<(&str, &str)> = std::iter::once(("", "not noted"))
        .chain(models.iter().filter(|m| m.kind() == PartKind::Grip).map(|m| (m.code(), m.name())))
        .collect();
    let decimal = |unit| Field { unit, inputmode: "decimal", ..Field::default() };
    html! {
        p.hint { "What was read on the club that the fitting settled on. What the sheet does not say is taken from it." }
        div.fields {
            (form.field("ref-number", "Number", Field { hint: "7, P, 1", ..Field::default() }))
            (form.field("ref-length", "Length", Field { unit: w.length_sign(), hint: units::example(w, "37 1/4, or 94.6 cm", "946, or 37 1/4 in", Unit::Millimetre), ..Field::default() }))
            (form.select("ref-length_to", "Measured", "", &length_to))
            (form.field("ref-swing_weight", "Swing weight", Field { hint: "D2.1", ..Field::default() }))
            (form.field("ref-mass", "Total mass", decimal("g")))
            (form.field("ref-balance_point", "Balance point from the cap", Field { unit: w.length_sign(), hint: units::example(w, "28 3/8, or 720 mm", "720, or 28 3/8 in", Unit::Millimetre), ..Field::default() }))
            (form.field("ref-loft", "Loft", decimal("°")))
            (form.field("ref-lie", "Lie", decimal("°")))
            (form.field("ref-cpm", "Frequency", decimal("cpm")))
            (form.field("ref-clamp", "Clamped length", Field { unit: w.length_sign(), hint: units::example(w, "5", "127", Unit::Millimetre), ..Field::default() }))
            (form.field("ref-scale", "Scale that read the swing weight", Field { hint: "balance for the shop's own, else its name", ..Field::default() }))
            (form.select("ref-grip", "Its grip", "", &grips))
            (form.field("ref-cap", "Thickness of its cap", decimal("mm")))
            (form.field("ref-coupler", "Coupler of a fitting club", decimal("g")))
            (form.field("ref-read_on", "Read on", Field { kind: "date", ..Field::default() }))
        }
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
