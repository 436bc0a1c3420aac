//! Swing inertia: what a club's will be beside its swing weight, a timed swing at the bench, and how the shop times it.

use super::PageResult;
use super::bench_screen::Screen;
use super::entries::Entries;
use super::say::{band, forecast, value};
use super::scale_setup::answered;
use crate::reader::Reader;
use app::App;
use axum::Router;
use axum::extract::{Form, State};
use axum::routing::post;
use bench::swing_inertia::SwingInertia;
use look::{Button, Field, button, hidden};
use maud::{Markup, html};
use trade::kind::Role;
use trade::pendulum::Pendulum;
use trade::reading::What;
use trade::shop::Shop;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/scales/setup/pendulum", post(keep))
}

/// What the sheet asks, where it asks an inertia.
fn asked(w: &Words, found: &SwingInertia) -> Markup {
    let what = What::SwingInertia;
    html! {
        @if let Some(target) = found.target_kg_cm2 {
            p { (text!(w, "swing-inertia-asked", asked = value(w, what, target),
                tolerance = found.tolerance_kg_cm2.map_or_else(|| "–".to_owned(), |t| band(w, what, t)))) }
        }
    }
}

impl Screen<'_> {
    /// What the swing inertia of the club will be, and a place for a timed swing where the club is whole.
    pub(super) fn inertia_part(&self, w: &Words) -> Markup {
        let Some(found) = &self.state.swing_inertia else { return html! {} };
        let whole = self.step.on.contains(&Role::Grip) && !self.step.on.contains(&Role::Solvent);
        let pendulum = &self.file.shop.pendulum;
        let expected = self.believed.expected_at(&self.club.id, self.step, What::SwingPeriod, &self.step.on);
        html! {
            details open[found.target_kg_cm2.is_some() && whole] {
                summary { (text!(w, "swing-inertia-stands", inertia = forecast(w, What::SwingInertia, found.value_kg_cm2, found.band_kg_cm2))) }
                (asked(w, found))
                @if whole {
                    @if let Ok(Some(expected)) = expected {
                        p.hint { (text!(w, "swing-inertia-hang", n = pendulum.swings, pivot_mm = pendulum.pivot_mm,
                            all = w.printed(&quantity::decimal(expected.value * f64::from(pendulum.swings), 2)))) }
                    }
                    (self.extra_entry(w, What::SwingPeriod, &self.step.key, &self.step.on, false))
                }
            }
        }
    }
}

/// How the swing of a club is timed.
pub(super) fn pendulum_form(w: &Words, form: &Entries, shop: &Shop) -> Markup {
    let mut form = form.clone();
    if form.text("form") != "pendulum" {
        let pendulum = shop.pendulum;
        form.set("pivot_mm", w.length_to(pendulum.pivot_mm, 2));
        form.set("swings", pendulum.swings.to_string());
        form.set("time_sd_s", w.printed(&quantity::decimal(pendulum.time_sd_s, 3)));
        form.set("amplitude_deg", w.printed(&quantity::decimal(pendulum.amplitude_deg, 0)));
        form.set("gravity_m_s2", w.printed(&quantity::decimal(pendulum.gravity_m_s2, 3)));
    }
    let decimal = Field { required: true, inputmode: "decimal", ..Field::default() };
    html! {
        form.card method="post" action="/scales/setup/pendulum" {
            (hidden("form", "pendulum"))
            div.fields {
                (form.field("pivot_mm", &w.text("pendulum-pivot"), Field { required: true, hint: &w.text("pendulum-pivot-hint"), ..Field::default() }))
                (form.field("swings", &w.text("pendulum-swings"), Field { inputmode: "numeric", hint: &w.text("pendulum-swings-hint"), ..decimal }))
                (form.field("time_sd_s", &w.text("pendulum-time-sd"), Field { unit: "s", hint: &w.text("pendulum-time-sd-hint"), ..decimal }))
                (form.field("amplitude_deg", &w.text("pendulum-amplitude"), Field { unit: "°", hint: &w.text("pendulum-amplitude-hint"), ..decimal }))
                (form.field("gravity_m_s2", &w.text("pendulum-gravity"), Field { unit: "m/s²", hint: &w.text("pendulum-gravity-hint"), ..decimal }))
            }
            div.actions { (button(&Button { label: &w.text("scale-setup-keep"), ..Button::default() })) }
        }
    }
}

async fn keep(State(app): State<App>, Reader(w): Reader, Form(sent): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(sent);
    let mut shop = app.shop().await?;
    let needs = w.text("scale-setup-needs-figure");
    let pivot = form.length_mm(&w, "pivot_mm");
    let pivot_mm = form.needed("pivot_mm", pivot, &needs).unwrap_or_default();
    let swings = form.count(&w, "swings");
    let swings = form.needed("swings", swings, &needs).unwrap_or_default();
    let mut number = |name: &str| {
        let value = form.number(&w, name);
        form.needed(name, value, &needs).unwrap_or_default()
    };
    let (time_sd_s, amplitude_deg) = (number("time_sd_s"), number("amplitude_deg"));
    let gravity_m_s2 = number("gravity_m_s2");
    let swings = u16::try_from(swings).unwrap_or(u16::MAX);
    shop.pendulum = Pendulum { pivot_mm, swings, time_sd_s, amplitude_deg, gravity_m_s2 };
    answered(&w, &app, form, &shop).await
}
