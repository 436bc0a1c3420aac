//! One club of a saved sheet, changed by hand before the sheet is approved.

use super::entries::{Entries, go_to, group, in_address, plain, typed_length, typed_swing_weight};
use super::measured::Measured;
use super::sheets::club_title;
use super::still_below;
use super::{Framed, PageResult, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use crate::units;
use app::App;
use app::sheet::SheetView;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use look::{Action, Button, ButtonKind, Field, Nav, Notice, actions, button, hidden, link_button};
use maud::{Markup, html};
use trade::kind::ClubKind;
use trade::kind::Facing;
use trade::kind::LengthTo;
use trade::kind::SoftSide;
use trade::model::Model;
use trade::model::PartKind;
use trade::reading::Unit;
use trade::sheet::Sheet;
use trade::sheet::SheetClub;
use trade::sheet::Tolerances;
use trade::wrap::Wraps;
use words::{Words, text};

pub(super) async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path((id, index)): Path<(String, usize)>,
) -> PageResult {
    let view = app.sheet(&id.as_str().into()).await?;
    let Some(club) = view.sheet.clubs.get(index) else { return Ok(to_sheet(&id)) };
    if view.job.is_some() {
        return Ok(to_sheet(&id));
    }
    club_page(&w, &app, &view, index, &typed(&w, club, view.version), None, StatusCode::OK).await
}

fn to_sheet(id: &str) -> axum::response::Response {
    go_to(&format!("/sheets/{}", in_address(id))).into_response()
}

/// The club as it would be typed.
fn typed(w: &Words, club: &SheetClub, version: i64) -> Entries {
    let t = &club.tolerances;
    let key = |facing: Option<Facing>| facing.map_or("", Facing::key).to_owned();
    let pairs = [
        ("length", typed_length(w, club.length_mm)),
        ("length_to", club.length_to.key().to_owned()),
        (
            "swing_weight",
            if club.swing_weight_free { String::new() } else { typed_swing_weight(club.swing_weight_points) },
        ),
        ("loft", plain(club.loft_deg)),
        ("lie", plain(club.lie_deg)),
        ("cpm", club.cpm.map(plain).unwrap_or_default()),
        ("total_mass", club.total_mass_g.map(|mass_g| Measured::Gram.typed(w, mass_g)).unwrap_or_default()),
        ("wraps_base", club.wraps.base.to_string()),
        ("wraps_full", club.wraps.full.to_string()),
        ("wraps_lower", club.wraps.lower_hand.to_string()),
        (
            "grip_size-upper",
            club.grip_size.map(|size| Measured::Millimetre.typed(w, size.upper_mm)).unwrap_or_default(),
        ),
        (
            "grip_size-lower",
            club.grip_size.and_then(|s| s.lower_mm).map(|mm| Measured::Millimetre.typed(w, mm)).unwrap_or_default(),
        ),
        ("grip_graphics", key(club.grip_graphics)),
        ("shaft_graphics", key(club.shaft_graphics)),
        ("adapter_setting", club.adapter_setting.clone().unwrap_or_default()),
        ("tip_weight", club.tip_weight.map_or("", |may| if may { "yes" } else { "no" }).to_owned()),
        ("soft_side", club.soft_side.map_or("", SoftSide::key).to_owned()),
        ("tol_swing_weight", plain(t.swing_weight_points)),
        ("tol_length", Measured::Millimetre.typed(w, t.length_mm)),
        ("tol_loft", plain(t.loft_deg)),
        ("tol_lie", plain(t.lie_deg)),
        ("tol_cpm", plain(t.cpm)),
        ("head_model", club.head_model.clone()),
        ("shaft_model", club.shaft_model.clone()),
        ("grip_model", club.grip_model.clone()),
        ("ferrule_model", club.ferrule_model.clone().unwrap_or_default()),
        ("adhesive", club.adhesive.clone().unwrap_or_default()),
        ("tape", club.tape.clone().unwrap_or_default()),
        ("version", version.to_string()),
    ];
    Entries::new(pairs.map(|(k, v)| (k.to_owned(), v)).to_vec())
}

async fn club_page(
    w: &Words,
    app: &App,
    view: &SheetView,
    index: usize,
    form: &Entries,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let models = app.models(None).await?;
    let club = &view.sheet.clubs[index];
    let here = format!("/sheets/{}/clubs/{index}", in_address(view.id.as_str()));
    let stale_page = status == StatusCode::CONFLICT;
    let body = html! {
        @if stale_page { p.actions { (link_button(&here, &w.text("sheet-as-it-is-now"), ButtonKind::Quiet, None, "")) } }
        form.card method="post" action=(here) {
            (hidden("version", form.text("version")))
            div.fields { (figures(w, form, club.club_kind == ClubKind::Putter)) }
            (group(&w.text("sheet-club-grip-and-shaft"), &html! { div.fields { (grip_fields(w, form, &settings_of(&models, club))) } }))
            (group(&w.text("sheet-club-tolerances"), &html! { div.fields { (tolerance_fields(w, form)) } }))
            (group(&w.text("sheet-club-models"), &html! { div.fields { (model_fields(w, form, &models)) } }))
            div.actions {
                (button(&Button { label: &w.text("sheet-club-change"), ..Button::default() }))
                (button(&Button { label: &w.text("sheet-club-remove"), kind: ButtonKind::Danger, name: "do", value: "remove", unchecked: true, ..Button::default() }))
            }
        }
        (actions(&[Action { href: &format!("/sheets/{}", in_address(view.id.as_str())), label: &w.text("sheet-club-back"), primary: false }]))
    };
    let title = club_title(w, club);
    let crumb = text!(w, "sheet-of", player = view.sheet.player);
    let notice = notice.or_else(|| form.notice(w));
    let page =
        framed(w, app, Framed { title: &title, active: Nav::Sheets, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

fn figures(w: &Words, form: &Entries, putter: bool) -> Markup {
    let decimal = Field { inputmode: "decimal", ..Field::default() };
    let length_to: Vec<(&str, String)> = LengthTo::ALL.iter().map(|l| (l.key(), w.tell(l))).collect();
    let length = w.text(units::example(w, "sheet-club-length-in", "sheet-club-length-mm", Unit::Millimetre));
    let mass = w.text(units::example(w, "sheet-club-mass-g", "sheet-club-mass-oz", Unit::Gram));
    html! {
        (form.field("length", &w.text("sheet-club-length"), Field { unit: w.length_sign(), hint: &length, required: true, ..Field::default() }))
        (form.select("length_to", &w.text("sheet-club-measured"), &w.text("sheet-club-measured-from"), &length_to))
        (form.field("swing_weight", &w.text("sheet-club-swing-weight"), Field { hint: &w.text(if putter { "sheet-club-swing-weight-putter" } else { "sheet-club-swing-weight-hint" }), required: !putter, ..Field::default() }))
        (form.field("loft", &w.text("sheet-club-loft"), Field { unit: "°", required: true, ..decimal }))
        (form.field("lie", &w.text("sheet-club-lie"), Field { unit: "°", required: true, ..decimal }))
        (form.field("cpm", &w.text("sheet-club-frequency"), Field { unit: "cpm", hint: &w.text("sheet-club-not-asked"), ..decimal }))
        (form.field("total_mass", &w.text("sheet-club-total-mass"), Field { hint: &mass, ..decimal }))
    }
}

/// The settings that the adapters of a club's head have; none where it takes no adapter.
fn settings_of(models: &[Model], club: &SheetClub) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    for model in models {
        if let Model::Adapter(adapter) = model
            && adapter.fits_head_model == club.head_model
        {
            found.extend(adapter.settings.iter().map(|setting| setting.name.clone()));
        }
    }
    found.extend(club.adapter_setting.clone());
    found.sort();
    found.dedup();
    found
}

fn grip_fields(w: &Words, form: &Entries, settings: &[String]) -> Markup {
    let layers = w.text("sheet-club-layers");
    let whole = Field { inputmode: "numeric", unit: &layers, ..Field::default() };
    let none = w.text("sheet-club-not-given");
    let facing = choices(Facing::ALL.iter().map(|f| (f.key(), w.tell(f))), &none);
    let soft = choices(SoftSide::ALL.iter().map(|s| (s.key(), w.tell(s))), &none);
    html! {
        (form.field("wraps_base", &w.text("sheet-club-tape-base"), whole))
        (form.field("wraps_full", &w.text("sheet-club-tape-full"), whole))
        (form.field("wraps_lower", &w.text("sheet-club-tape-lower"), whole))
        (super::grip_size::asked_fields(w, form, "grip_size"))
        (form.select("grip_graphics", &w.text("sheet-club-grip-label"), "", &facing))
        (form.select("shaft_graphics", &w.text("sheet-club-shaft-label"), "", &facing))
        (form.select("soft_side", &w.text("sheet-club-soft-side"), "", &soft))
        @if !settings.is_empty() {
            (form.select("adapter_setting", &w.text("sheet-club-adapter-setting"), "", &std::iter::once(("", w.text("sheet-club-adapter-usual")))
                .chain(settings.iter().map(|name| (name.as_str(), name.clone()))).collect::<Vec<_>>()))
        }
        (form.select("tip_weight", &w.text("sheet-club-tip-weight"), "", &[
            ("", w.text("sheet-club-tip-weight-usual")),
            ("yes", w.text("sheet-club-tip-weight-yes")),
            ("no", w.text("sheet-club-tip-weight-no")),
        ]))
    }
}

fn choices(given: impl Iterator<Item = (&'static str, String)>, none: &str) -> Vec<(&'static str, String)> {
    std::iter::once(("", none.to_owned())).chain(given).collect()
}

fn tolerance_fields(w: &Words, form: &Entries) -> Markup {
    let one = |name, label: &str, unit: &str| {
        let label = w.text(label);
        form.field(name, &label, Field { unit, inputmode: "decimal", required: true, ..Field::default() })
    };
    html! {
        (one("tol_swing_weight", "sheet-club-swing-weight-tolerance", &w.text("sheet-club-points")))
        (one("tol_length", "sheet-club-length-tolerance", w.length_sign()))
        (one("tol_loft", "sheet-club-loft-tolerance", "°"))
        (one("tol_lie", "sheet-club-lie-tolerance", "°"))
        (one("tol_cpm", "sheet-club-frequency-tolerance", "cpm"))
    }
}

fn model_fields(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let one = |name: &str, label: &str, kind: PartKind, none: Option<&str>| {
        let mut list: Vec<(&str, String)> = none.map(|none| ("", w.text(none))).into_iter().collect();
        list.extend(models.iter().filter(|m| m.kind() == kind).map(|m| (m.code(), m.name().to_owned())));
        // A model that is gone stays what it is until another is chosen.
        let now = form.text(name);
        if !list.iter().any(|(code, _)| *code == now) {
            list.push((now, now.to_owned()));
        }
        form.select(name, &w.text(label), "", &list)
    };
    let own = Some("sheet-form-shops-own");
    html! {
        (one("head_model", "sheet-form-head", PartKind::Head, None))
        (one("shaft_model", "sheet-form-shaft", PartKind::Shaft, None))
        (one("grip_model", "sheet-form-grip", PartKind::Grip, None))
        (one("ferrule_model", "sheet-form-ferrule", PartKind::Ferrule, Some("sheet-form-none")))
        (one("adhesive", "sheet-form-adhesive", PartKind::Adhesive, own))
        (one("tape", "sheet-form-tape", PartKind::Tape, own))
    }
}

pub(super) async fn change(
    State(app): State<App>,
    Reader(w): Reader,
    Path((id, index)): Path<(String, usize)>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let view = app.sheet(&id.as_str().into()).await?;
    let Some(club) = view.sheet.clubs.get(index) else { return Ok(to_sheet(&id)) };
    let mut form = Entries::new(fields);
    let mut clubs = view.sheet.clubs.clone();
    if form.has("do", "remove") {
        clubs.remove(index);
    } else if let Some(changed) = read(&w, &mut form, club) {
        clubs[index] = changed;
    } else {
        return club_page(&w, &app, &view, index, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    let sheet = Sheet { clubs, ..view.sheet.clone() };
    let version = form.text("version").parse().unwrap_or(-1);
    match app.change_sheet(&view.id, &sheet, version).await {
        Ok(_) => Ok(to_sheet(&id)),
        Err(error) => {
            let notice = still_below(&w, &error);
            club_page(&w, &app, &view, index, &form, Some(notice), failure_status(&error)).await
        }
    }
}

fn read(w: &Words, form: &mut Entries, club: &SheetClub) -> Option<SheetClub> {
    let length = form.length_mm(w, "length");
    let length = form.needed("length", length, &w.text("sheet-club-length-needed"));
    let swing_weight = form.swing_weight_points(w, "swing_weight");
    let swing_weight_free =
        club.club_kind == ClubKind::Putter && swing_weight.is_none() && form.text("swing_weight").is_empty();
    let swing_weight = if swing_weight_free {
        Some(club.swing_weight_points)
    } else {
        form.needed("swing_weight", swing_weight, &w.text("sheet-club-swing-weight-needed"))
    };
    let loft = form.angle_deg(w, "loft");
    let loft = form.needed("loft", loft, &w.text("sheet-club-loft-needed"));
    let lie = form.angle_deg(w, "lie");
    let lie = form.needed("lie", lie, &w.text("sheet-club-lie-needed"));
    let cpm = form.cpm(w, "cpm");
    let total_mass_g = form.measured(w, "total_mass", Measured::Gram);
    let mut layers = |name: &str| {
        let count = form.count(w, name).unwrap_or(0);
        u8::try_from(count).ok().filter(|n| *n <= 20).unwrap_or_else(|| {
            form.refuse(name, w.text("sheet-club-too-many-layers"));
            0
        })
    };
    let wraps = Wraps { base: layers("wraps_base"), full: layers("wraps_full"), lower_hand: layers("wraps_lower") };
    let grip_size = super::grip_size::asked(w, form, "grip_size");
    let mut tolerance = |name: &str| {
        let value = match name {
            "tol_length" => form.measured(w, name, Measured::Millimetre),
            _ => form.number(w, name),
        };
        let value = form.needed(name, value, &w.text("sheet-club-tolerance-needed"));
        if value.is_some_and(|v| v <= 0.0) {
            form.refuse(name, w.text("sheet-club-tolerance-zero"));
        }
        value.unwrap_or(1.0)
    };
    let tolerances = Tolerances {
        swing_weight_points: tolerance("tol_swing_weight"),
        length_mm: tolerance("tol_length"),
        loft_deg: tolerance("tol_loft"),
        lie_deg: tolerance("tol_lie"),
        cpm: tolerance("tol_cpm"),
    };
    if !form.is_sound() {
        return None;
    }
    Some(SheetClub {
        head_model: form.some("head_model")?,
        shaft_model: form.some("shaft_model")?,
        grip_model: form.some("grip_model")?,
        ferrule_model: form.some("ferrule_model"),
        adhesive: form.some("adhesive"),
        tape: form.some("tape"),
        // The length is read back from what was shown; unchanged it stays exactly what it was.
        length_mm: length.map(|l| if (l - club.length_mm).abs() < 0.02 { club.length_mm } else { l })?,
        length_to: LengthTo::from_key(form.text("length_to"))?,
        swing_weight_points: swing_weight
            .map(|b| if (b - club.swing_weight_points).abs() < 0.006 { club.swing_weight_points } else { b })?,
        loft_deg: loft?,
        lie_deg: lie?,
        swing_weight_free,
        cpm,
        total_mass_g,
        grip_graphics: Facing::from_key(form.text("grip_graphics")),
        shaft_graphics: Facing::from_key(form.text("shaft_graphics")),
        soft_side: SoftSide::from_key(form.text("soft_side")),
        adapter_setting: form.some("adapter_setting"),
        tip_weight: match form.text("tip_weight") {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        },
        wraps,
        grip_size,
        tolerances,
        ..club.clone()
    })
}
