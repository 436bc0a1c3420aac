//! The reference club on the page of its sheet.

use super::sheets::NO_VALUE;
use app::{App, AppError};
use bench::reference::ReferenceRead;
use look::{columns, definitions, section};
use maud::{Markup, html};
use trade::sheet::ReferenceClub;
use words::{Words, text};

/// Where the reference club was not read on the bench's scale today: what to do about it.
/// It was read `at_bench` times in the job.
pub(super) async fn reference_once_more(
    w: &Words,
    app: &App,
    r: &ReferenceClub,
    at_bench: usize,
) -> Result<Markup, AppError> {
    let (shop, today) = (app.shop().await?, w.day_of(app.now()));
    let last =
        ReferenceRead::of(r, &shop.balance_scale, |day| day == today, at_bench).filter(ReferenceRead::is_elsewhere);
    Ok(html! { @if let Some(last) = last { p.hint { (text!(w, "sheet-reference-once-more", last = last)) } } })
}

pub(super) fn reference_part(w: &Words, r: &ReferenceClub) -> Markup {
    let show = |text: Option<String>| html! { (text.unwrap_or_else(|| NO_VALUE.to_owned())) };
    let noted = |text: Option<String>| html! { (text.unwrap_or_else(|| w.text("sheet-not-noted"))) };
    let length = r.length_mm.map(|length_mm| match r.length_to {
        Some(to) => text!(w, "sheet-length", length_mm = length_mm, to = to),
        None => w.length(length_mm),
    });
    let left = definitions(&[
        (w.text("sheet-field-length"), show(length)),
        (w.text("sheet-field-swing-weight"), show(r.swing_weight_points.map(|points| w.swing_weight(points)))),
        (w.text("sheet-reference-mass"), show(r.total_mass_g.map(|mass_g| w.mass(mass_g)))),
        (w.text("sheet-reference-balance"), show(r.balance_point_mm.map(|at_mm| w.length(at_mm)))),
        (w.text("sheet-field-loft"), show(r.loft_deg.map(|deg| w.angle(deg)))),
        (w.text("sheet-field-lie"), show(r.lie_deg.map(|deg| w.angle(deg)))),
    ]);
    let right = definitions(&[
        (w.text("sheet-field-frequency"), show(r.cpm.map(|cpm| text!(w, "sheet-cpm", cpm = cpm)))),
        (w.text("sheet-reference-clamp"), show(r.clamp_mm.map(|clamp_mm| w.length(clamp_mm)))),
        (w.text("sheet-reference-scale"), noted(Some(r.scale.clone()).filter(|s| !s.is_empty()))),
        (w.text("sheet-field-grip"), noted(r.grip_model.clone())),
        (w.text("sheet-reference-cap"), show(r.cap_mm.map(|cap_mm| w.length(cap_mm)))),
        (w.text("sheet-reference-coupler-mass"), show(r.coupler_g.map(|mass_g| w.mass(mass_g)))),
        (w.text("sheet-reference-read-on"), noted(r.read_on.map(|on| w.date(on)))),
        (
            w.text("sheet-reference-known-to"),
            show(r.swing_weight_sd_points.map(|sd| text!(w, "sheet-reference-within", sd_points = sd))),
        ),
        (
            w.text("sheet-reference-also-read"),
            html! {
                @if r.also_read.is_empty() { (NO_VALUE) }
                @for read in &r.also_read { div { (text!(w, "sheet-reference-again", swing_weight_points = read.swing_weight_points,
                    scale = Some(read.scale.clone()).filter(|s| !s.is_empty()), read_on = read.read_on)) } }
            },
        ),
    ]);
    let title = text!(w, "sheet-reference-club", club = w.club_number(&r.number));
    section(&title, &html! {}, &columns(&[left, right]))
}
