//! Job cards: one for each planned club, to print and to lie in its tray.

use super::bench::club_name;
use super::plan::{is_bent, kinds_of, off_tip, reading, screw, stays};
use super::step_says::adapter_words;
use super::{Framed, PageResult, framed};
use crate::asked::{Asked, Path};
use crate::reader::Reader;
use app::App;
use app::job::JobFile;
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::get;
use look::{CardSize, JobCard, Nav, Tab, job_card, qr_code, tabs};
use maud::{Markup, html};
use serde::Deserialize;
use trade::job::JobClub;
use trade::model::PartKind;
use trade::plan::ClubPlan;
use trade::reading::What;
use trade::step::Step;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/plan/{job}/cards", get(cards))
}

#[derive(Debug, Default, Deserialize)]
struct CardsQuery {
    /// `one`: each card on a paper of its own, of its size; left out: four on a sheet, to cut apart.
    #[serde(default)]
    paper: String,
}

async fn cards(
    State(app): State<App>,
    Reader(w): Reader,
    Path(job): Path<i64>,
    Asked(query): Asked<CardsQuery>,
) -> PageResult {
    let file = app.job_file(job).await?;
    let one = query.paper == "one";
    let head = text!(w, "plan-job", job = job, player = file.job.sheet.player);
    let back = |_: &str, inner: &str| html! { a href={ "/plan/" (job) } { (inner) } };
    let body = html! {
        p.no-print { (look::rich!(&w, "plan-cards-print", back)) }
        @let here = format!("/plan/{job}/cards");
        @let alone = format!("{here}?paper=one");
        (tabs(&w.text("plan-cards-paper"), &[
            Tab { label: w.text("plan-cards-four").into(), href: &here, count: "", current: !one },
            Tab { label: w.text("plan-cards-one").into(), href: &alone, count: "", current: one },
        ]))
        div.job-cards.four[!one] { @for club in &file.job.clubs { @if let Some(plan) = &club.plan { (one_card(&w, &file, &head, club, plan)) } } }
    };
    let title = w.text("plan-cards");
    let page = framed(
        &w,
        &app,
        Framed {
            title: &title,
            active: Nav::Plan,
            crumb: head.clone(),
            body,
            help: Some("labels"),
            ..Framed::default()
        },
    )
    .await?;
    Ok(page.into_response())
}

fn one_card(w: &Words, file: &JobFile, head: &str, club: &JobClub, plan: &ClubPlan) -> Markup {
    let target = &club.target;
    let part = |kind| match plan.part(kind) {
        Some(_) if stays(club, plan, kind) => w.text("plan-part-stays"),
        Some(p) => text!(w, "plan-card-part", code = p.code, part_g = p.mass_g),
        None => w.text("plan-no-part"),
    };
    let mut tips: Vec<String> =
        plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight).map(|p| w.mass(p.mass_g)).collect();
    tips.extend(screw(w, file, plan));
    let facing =
        |f: Option<trade::kind::Facing>| f.map_or_else(|| w.text("plan-card-facing-any"), |facing| w.tell(&facing));
    let soft = target.soft_side.map_or_else(|| w.text("plan-card-soft-side-any"), |side| w.tell(&side));
    let wraps = target.wraps;
    let marks = file.marks.iter().filter(|(of, _)| *of == club.id);
    let mut lines: Vec<(String, String)> = marks.map(|(_, mark)| (w.text("mark-on-card"), mark.word.clone())).collect();
    lines.extend(kinds_of(std::iter::once(plan)).into_iter().map(|kind| (w.tell(&kind), part(kind))));
    if !stays(club, plan, PartKind::Shaft) {
        lines.extend(
            [
                ("plan-column-tip", if tips.is_empty() { w.text("plan-no-part") } else { tips.join(" + ") }),
                ("plan-column-off-tip", off_tip(w, plan)),
                ("plan-column-cut-shaft", w.length(plan.cut_shaft_mm)),
            ]
            .map(|(id, value)| (w.text(id), value)),
        );
    }
    lines.extend(
        [
            ("plan-card-length", text!(w, "plan-card-length-to", length_mm = target.length_mm, end = target.length_to)),
            (
                "plan-card-wraps",
                text!(w, "plan-card-wraps-are", base = wraps.base, full = wraps.full, lower = wraps.lower_hand),
            ),
            (
                "plan-card-labels",
                text!(
                    w,
                    "plan-card-labels-are",
                    grip = facing(target.grip_graphics),
                    shaft = facing(target.shaft_graphics)
                ),
            ),
            ("plan-card-soft-side", soft),
        ]
        .map(|(id, value)| (w.text(id), value)),
    );
    let adapter = plan.adapter(&file.library).map(|adapter| adapter_words(w, adapter, target));
    let (id, value) = match adapter.filter(|set| !set.is_empty()) {
        Some(set) => (
            "plan-card-set",
            text!(w, "plan-card-set-is", set = set, loft_deg = target.loft_deg, lie_deg = target.lie_deg),
        ),
        None => (
            "plan-card-bend",
            text!(
                w,
                "plan-card-bend-is",
                bend_loft_deg = plan.bend_loft_deg,
                loft_deg = target.loft_deg,
                bend_lie_deg = plan.bend_lie_deg,
                lie_deg = target.lie_deg
            ),
        ),
    };
    if is_bent(file, club) {
        lines.push((w.text(id), value));
    }
    let mut expected: Vec<(String, String)> = plan
        .expected
        .iter()
        .map(|e| {
            let label = file.job.step(&e.step).map_or(e.step.as_str(), |s: &Step| s.label.as_str());
            (label.to_owned(), reading(w, e))
        })
        .collect();
    if expected.is_empty() {
        // Of a club that is worked on nothing is expected before it is read: its lines stand empty.
        let read = file.job.steps_of(club).filter(|step| step.asks.contains(&What::SwingWeight));
        expected.extend(read.map(|step| (step.label.clone(), String::new())));
    }
    job_card(
        w,
        &JobCard {
            size: CardSize::A6,
            club: &club_name(w, club),
            job: head,
            slot: &club.slot.to_string(),
            code: &club.card,
            code_svg: qr_code(&club.card),
            lines,
            expected,
            caution: &w.text("plan-card-caution"),
        },
    )
}
