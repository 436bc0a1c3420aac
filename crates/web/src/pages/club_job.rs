//! A job on clubs that are there: which kind for each, and what its sheet asks.

use super::clubs::{called, typed};
use super::entries::{Entries, capital, go_to};
use super::match_set::{heads, model_choices};
use super::say::value;
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::reader::Reader;
use app::club_job::{KindView, NewClubJob};
use app::sheet::ShortSheet;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use desk::club_work::AskedOfClub;
use desk::short_sheet::{KindChoice, SetModels};
use look::{Action, Button, ButtonKind, Field, Nav, Notice, button, empty_state, link_button};
use maud::{Markup, html};
use trade::club::Club;
use trade::job_kind::Asked;
use trade::kind::Facing;
use trade::model::{Model, PartKind};
use trade::reading::What;
use trade::sheet::{SetRule, SheetClub};
use trade::wrap::Wraps;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/clubs/job", get(new).post(make))
}

async fn new(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    form_page(&w, &app, &Entries::new(pairs), None, StatusCode::OK).await
}

/// The name of a field of one club.
fn of(field: &str, club: &Club) -> String {
    format!("{field}-{}", club.code)
}

/// The kind of job of one club: its own choice, else that of all.
fn kind_of<'a>(form: &Entries, club: &Club, kinds: &'a [KindView]) -> Option<&'a KindView> {
    let own = form.text(&of("kind", club)).to_owned();
    let key = if own.is_empty() { form.text("kind").to_owned() } else { own };
    kinds.iter().find(|kind| kind.kind.key == key).or_else(|| kinds.first())
}

async fn form_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let kinds = app.job_kinds(w).await?;
    let models = app.models(None).await?;
    let mut clubs: Vec<Club> = Vec::new();
    for code in form.all("club") {
        clubs.push(app.club(code).await?.club);
    }
    let body = html! {
        @if clubs.is_empty() {
            (empty_state(&w.text("club-job-no-clubs"), &w.text("club-job-no-clubs-next"),
                &[Action { href: "/clubs", label: &w.text("club-life-page"), primary: true }]))
        } @else {
            form.card method="get" action="/clubs/job" {
                @for club in &clubs { input type="hidden" name="club" value=(club.code); }
                div.fields { @for club in &clubs { (kind_choice(w, form, club, &kinds)) } }
                div.actions { (button(&Button { label: &w.text("club-job-choose"), kind: ButtonKind::Quiet, ..Button::default() })) }
            }
            form.card method="post" action="/clubs/job" data-keep="" {
                @for club in &clubs { (club_fields(w, form, club, &kinds, &models)) }
                details open[!form.text("new").is_empty() || form.error("new").is_some()] {
                    summary { (w.text("club-job-new")) }
                    div.fields {
                        (form.field("new", &w.text("club-job-new-written"), Field { hint: &w.text("club-job-new-hint"), ..Field::default() }))
                        (model_choices(w, form, &models, &heads(&models, None)))
                    }
                }
                div.fields {
                    (form.field("due", &w.text("sheet-form-due"), Field { kind: "date", required: true, ..Field::default() }))
                    (form.field("note", &w.text("club-life-note-field"), Field::default()))
                }
                div.actions { (button(&Button { label: &w.text("club-job-make"), big: true, ..Button::default() })) (link_button("/clubs", &w.text("button-back"), ButtonKind::Quiet, None, "")) }
            }
        }
    };
    let notice = notice.or_else(|| form.notice(w));
    let title = w.text("club-job-page");
    let page = framed(
        w,
        app,
        Framed { title: &title, active: Nav::Sheets, notice, body, help: Some("other-jobs"), ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

fn kind_choice(w: &Words, form: &Entries, club: &Club, kinds: &[KindView]) -> Markup {
    let name = of("kind", club);
    let now = kind_of(form, club, kinds).map(|kind| kind.kind.key.clone()).unwrap_or_default();
    let mut chosen = form.clone();
    chosen.set(&name, now);
    let choices: Vec<(&str, &str)> = kinds.iter().map(|k| (k.kind.key.as_str(), k.name.as_str())).collect();
    chosen.select(&name, &format!("{} {}", club.code, called(w, club)), "", &choices)
}

fn club_fields(w: &Words, form: &Entries, club: &Club, kinds: &[KindView], models: &[Model]) -> Markup {
    let Some(kind) = kind_of(form, club, kinds) else { return html! {} };
    let model_choices = |part: PartKind, may_be_none: bool| -> Vec<(&str, String)> {
        let none = may_be_none.then(|| ("", w.text("club-job-shops-own")));
        let of_kind = models.iter().filter(|m| m.kind() == part).map(|m| (m.code(), m.name().to_owned()));
        none.into_iter().chain(of_kind).collect()
    };
    let decimal = Field { inputmode: "decimal", ..Field::default() };
    let entry = |asked: Asked| {
        let name = of(asked.key(), club);
        let label = capital(&w.tell(&asked));
        match asked {
            Asked::GripModel => form.select(&name, &label, "", &model_choices(PartKind::Grip, false)),
            Asked::ShaftModel => form.select(&name, &label, "", &model_choices(PartKind::Shaft, false)),
            Asked::FerruleModel => form.select(&name, &label, "", &model_choices(PartKind::Ferrule, true)),
            Asked::Adhesive => form.select(&name, &label, "", &model_choices(PartKind::Adhesive, true)),
            Asked::GripGraphics => {
                let facings: Vec<(&str, String)> = std::iter::once(("", "–".to_owned()))
                    .chain(Facing::ALL.iter().map(|facing| (facing.key(), w.tell(facing))))
                    .collect();
                form.select(&name, &label, "", &facings)
            }
            Asked::Wraps => form.field(
                &name,
                &w.text("club-job-wraps"),
                Field {
                    inputmode: "numeric",
                    placeholder: "0",
                    hint: &w.text("club-job-wraps-hint"),
                    ..Field::default()
                },
            ),
            Asked::GripSize => super::grip_size::asked_fields(w, form, &name),
            Asked::Length => {
                let hint = typed(w, club, What::FinishedLength)
                    .map(|now| text!(w, "club-job-now", now = now))
                    .unwrap_or_default();
                form.field(
                    &name,
                    &w.text("club-life-length"),
                    Field { required: true, hint: &hint, ..Field::default() },
                )
            }
            Asked::ExtensionMass => form.field(
                &name,
                &label,
                Field { required: true, unit: w.mass_sign(), hint: &w.text("club-job-extension-hint"), ..decimal },
            ),
            Asked::SwingWeight => {
                let hint = typed(w, club, What::SwingWeight)
                    .map_or_else(|| w.text("club-job-keeps"), |now| text!(w, "club-job-keeps-now", now = now));
                form.field(&name, &label, Field { hint: &hint, ..Field::default() })
            }
            Asked::SwingInertia => {
                let now = club.figure(What::SwingInertia).map(|figure| value(w, What::SwingInertia, figure.value));
                let hint =
                    now.map_or_else(|| w.text("club-job-inertia"), |now| text!(w, "club-job-inertia-now", now = now));
                form.field(&name, &label, Field { unit: "kg·cm²", hint: &hint, ..decimal })
            }
            Asked::Loft | Asked::Lie => {
                let what = if asked == Asked::Loft { What::Loft } else { What::Lie };
                let hint = typed(w, club, what).map(|now| text!(w, "club-job-now", now = now)).unwrap_or_default();
                form.field(&name, &label, Field { unit: "°", hint: &hint, ..decimal })
            }
        }
    };
    html! {
        fieldset.card {
            legend { (club.code) " " (called(w, club)) ": " (kind.name) }
            @if !kind.say.is_empty() { p.hint { (kind.say) } }
            input type="hidden" name="club" value=(club.code);
            input type="hidden" name=(of("kind", club)) value=(kind.kind.key);
            div.fields { @for asked in &kind.kind.asks { (entry(*asked)) } }
        }
    }
}

async fn make(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let codes: Vec<String> = form.all("club").map(str::to_owned).collect();
    let clubs = codes.iter().map(|code| asked(&w, &mut form, code)).collect();
    let due = form.date(&w, "due");
    let due = form.needed("due", due, &w.text("club-job-due-needed"));
    let (true, Some(due)) = (form.is_sound(), due) else {
        return form_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let made = async {
        let new = NewClubJob {
            due,
            player: String::new(),
            note: form.text("note").to_owned(),
            clubs,
            new_clubs: new_clubs(&app, &form).await?,
            hand: None,
            customer: None,
            neighbour_reason: String::new(),
            by,
        };
        app.new_club_job(&new).await
    };
    match made.await {
        Ok(job) => Ok(go_to(&format!("/bench/{}", job.number)).into_response()),
        Err(error) => form_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

/// The new clubs of the same job, written as on a short sheet.
async fn new_clubs(app: &App, form: &Entries) -> Result<Vec<SheetClub>, AppError> {
    if form.text("new").is_empty() {
        return Ok(Vec::new());
    }
    let of = |name: &str| -> Vec<KindChoice> {
        form.some(name).into_iter().map(|model| KindChoice { club_kind: None, model }).collect()
    };
    let models = SetModels {
        heads: form.some("head").into_iter().collect(),
        shafts: of("shaft"),
        grips: of("grip"),
        ferrules: of("ferrule"),
        ..SetModels::default()
    };
    let written = form.text("new").to_owned();
    let short = ShortSheet { written, models, rule: SetRule::AsWritten, reference: None, customer: None };
    Ok(app.expand_sheet(&short).await?.into_iter().map(|expanded| expanded.club).collect())
}

/// What was typed for one club; a field that its kind does not show is not there.
fn asked(w: &Words, form: &mut Entries, code: &str) -> AskedOfClub {
    let name = |field: Asked| format!("{}-{code}", field.key());
    let full = form.count(w, &name(Asked::Wraps));
    AskedOfClub {
        club: code.to_owned(),
        kind: form.text(&format!("kind-{code}")).to_owned(),
        grip_model: form.some(&name(Asked::GripModel)),
        wraps: full.map(|full| Wraps { base: 1, full: u8::try_from(full).unwrap_or(u8::MAX), lower_hand: 0 }),
        grip_size: super::grip_size::asked(w, form, &name(Asked::GripSize)),
        grip_graphics: Facing::from_key(form.text(&name(Asked::GripGraphics))),
        shaft_model: form.some(&name(Asked::ShaftModel)),
        ferrule_model: form.some(&name(Asked::FerruleModel)),
        adhesive: form.some(&name(Asked::Adhesive)),
        length_mm: form.length_mm(w, &name(Asked::Length)),
        extension_mass_g: form.mass_g(w, &name(Asked::ExtensionMass)),
        swing_weight_points: form.swing_weight_points(w, &name(Asked::SwingWeight)),
        inertia_kg_cm2: form.number(w, &name(Asked::SwingInertia)),
        loft_deg: form.angle_deg(w, &name(Asked::Loft)),
        lie_deg: form.angle_deg(w, &name(Asked::Lie)),
    }
}
