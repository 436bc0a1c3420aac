//! The reference club on the page of its sheet.

use app::{App, AppError};
use bench::reference::ReferenceRead;
use look::{columns, definitions, section};
use maud::{Markup, html};
use trade::model::Model;
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

pub(super) fn reference_part(w: &Words, models: &[Model], r: &ReferenceClub) -> Markup {
    let grip = r.grip_model.as_deref();
    let grip = grip.map(|code| models.iter().find(|m| m.code() == code).map_or(code, Model::name).to_owned());
    let noted = |text: Option<String>| Some(text.unwrap_or_else(|| w.text("sheet-not-noted")));
    let length = r.length_mm.map(|length_mm| match r.length_to {
        Some(to) => text!(w, "sheet-length", length_mm = length_mm, to = to),
        None => w.length(length_mm),
    });
    let again = r.also_read.iter().map(|read| {
        let scale = Some(read.scale.clone()).filter(|s| !s.is_empty());
        let points = read.swing_weight_points;
        text!(w, "sheet-reference-again", swing_weight_points = points, scale = scale, read_on = read.read_on)
    });
    let again: Vec<String> = again.collect();
    let known_to = r.swing_weight_sd_points.map(|sd| text!(w, "sheet-reference-within", sd_points = sd));
    // What was not read of it takes no line; where it was read, and with which grip, is worth asking for.
    let lines = |of: Vec<(&str, Option<String>)>| {
        let told = of.into_iter().filter_map(|(id, value)| value.map(|value| (w.text(id), html! { (value) })));
        definitions(&told.collect::<Vec<_>>())
    };
    let left = lines(vec![
        ("sheet-field-length", length),
        ("sheet-field-swing-weight", r.swing_weight_points.map(|points| w.swing_weight(points))),
        ("sheet-reference-mass", r.total_mass_g.map(|mass_g| w.mass(mass_g))),
        ("sheet-reference-balance", r.balance_point_mm.map(|at_mm| w.length(at_mm))),
        ("sheet-field-loft", r.loft_deg.map(|deg| w.angle(deg))),
        ("sheet-field-lie", r.lie_deg.map(|deg| w.angle(deg))),
    ]);
    let right = lines(vec![
        ("sheet-field-frequency", r.cpm.map(|cpm| text!(w, "sheet-cpm", cpm = cpm))),
        ("sheet-reference-clamp", r.clamp_mm.map(|clamp_mm| w.length(clamp_mm))),
        ("sheet-reference-scale", noted(Some(r.scale.clone()).filter(|s| !s.is_empty()))),
        ("sheet-field-grip", noted(grip)),
        ("sheet-reference-cap", r.cap_mm.map(|cap_mm| w.length(cap_mm))),
        ("sheet-reference-coupler-mass", r.coupler_g.map(|mass_g| w.mass(mass_g))),
        ("sheet-reference-read-on", noted(r.read_on.map(|on| w.date(on)))),
        ("sheet-reference-known-to", known_to),
        ("sheet-reference-also-read", Some(again.join("; ")).filter(|text| !text.is_empty())),
    ]);
    let title = text!(w, "sheet-reference-club", club = w.club_number(&r.number));
    section(&title, &html! {}, &columns(&[left, right]))
}
