//! How well the shop meets its tolerances, by month and by model.

use super::{Framed, PageResult, framed};
use crate::reader::Reader;
use app::App;
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::get;
use bench::capability::CapabilityGroup;
use bench::capability::ShopCapability;
use bench::held::{BandsHeld, Promise, Share};
use look::{Action, Cell, Column, Nav, Table, empty_state, section, table};
use maud::{Markup, html};
use quantity::decimal;
use std::collections::BTreeMap;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/capability", get(show))
}

async fn show(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let mut found = app.capability().await?;
    let models = app.models(None).await?;
    for group in &mut found.by_model {
        if let Some(model) = models.iter().find(|m| m.code() == group.name) {
            model.name().clone_into(&mut group.name);
        }
    }
    for group in &mut found.by_month {
        group.name = month_name(&w, &group.name);
    }
    if let Some(all) = &mut found.all {
        all.name = w.text("capability-every");
    }
    let body = match &found.all {
        None => empty_state(
            &w.text("capability-none"),
            &w.text("capability-none-next"),
            &[Action { href: "/bench", label: &w.text("frame-bench"), primary: true }],
        ),
        Some(all) => groups_part(&w, all, &found),
    };
    let shop = app.shop().await?;
    let labels = shop.steps.iter().map(|step| (step.key.clone(), step.label.clone())).collect();
    let body =
        html! { (body) (section(&w.text("capability-bands"), &html! {}, &bands_part(&w, &found.bands, &labels))) };
    let (title, crumb) = (w.text("capability-title"), w.text("capability-crumb"));
    let page = framed(
        &w,
        &app,
        Framed {
            title: &title,
            active: Nav::Records,
            crumb,
            body,
            terms: true,
            help: Some("learned"),
            ..Framed::default()
        },
    );
    Ok(page.await?.into_response())
}

fn groups_part(w: &Words, all: &CapabilityGroup, found: &ShopCapability) -> Markup {
    html! {
        p { (w.text("capability-means")) }
        (section(&w.text("capability-all"), &html! {}, &groups_table(w, "capability-all-finished", "capability-which", std::slice::from_ref(all))))
        (section(&w.text("capability-by-month"), &html! {}, &groups_table(w, "capability-of-months", "capability-month", &found.by_month)))
        (section(&w.text("capability-by-model"), &html! {}, &groups_table(w, "capability-of-models", "capability-model", &found.by_model)))
    }
}

fn bands_part(w: &Words, bands: &BandsHeld, labels: &BTreeMap<String, String>) -> Markup {
    let (Some(all), Some(since)) = (&bands.all, bands.since_on) else {
        return html! { p { (w.text("capability-bands-none")) } };
    };
    let every = (w.text("capability-bands-every"), String::new(), *all);
    let step = |key: &String| labels.get(key).unwrap_or(key).clone();
    let steps = bands.by_step.iter().map(|g| (step(&g.step), w.tell(&g.what), g.share));
    let steps = std::iter::once(every).chain(steps);
    let steps: Vec<_> = steps.map(|(step, what, share)| share_row(w, vec![step, what], &share)).collect();
    let months = bands.by_month.iter().map(|g| share_row(w, vec![month_name(w, &g.month)], &g.share));
    let counted = |heads: &[&str]| -> Vec<Column> {
        let words = heads.iter().map(|head| Column::words(w.text(head)));
        let figures = ["of", "share"].map(|head| Column::figures(w.text(&format!("capability-bands-{head}"))));
        words.chain(figures).chain([Column::words(w.text("capability-bands-verdict"))]).collect()
    };
    let listed = |caption: &str, heads: &[&str], rows: Vec<Vec<Cell>>| {
        table(&Table { caption: &w.text(caption), columns: counted(heads), rows, cards: true, ..Table::default() })
    };
    html! {
        p { (text!(w, "capability-bands-mean", since_on = since)) }
        (listed("capability-bands-by-step", &["capability-bands-step", "capability-bands-read"], steps))
        (listed("capability-bands-by-month", &["capability-month"], months.collect()))
    }
}

fn share_row(w: &Words, of: Vec<String>, share: &Share) -> Vec<Cell> {
    let [low, high] = share.limits_percent;
    let percent = text!(w, "capability-bands-percent", percent = share.percent, low = low, high = high);
    of.into_iter().chain([share.of.to_string(), percent, w.tell(&Promise::of(share))]).map(Cell::from).collect()
}

/// A month as people write it.
fn month_name(w: &Words, month: &str) -> String {
    format!("{month}-01").parse().map_or_else(|_| month.to_owned(), |first| w.month_of(first))
}

fn groups_table(w: &Words, caption: &str, first: &str, groups: &[CapabilityGroup]) -> Markup {
    let plain = |value: f64| w.printed(&decimal(value, 2));
    let index = |value: f64, interval: Option<(f64, f64)>| {
        let (low, high) = interval.unwrap_or((value, value));
        text!(w, "capability-index", value = plain(value), low = plain(low), high = plain(high))
    };
    let row = |group: &CapabilityGroup| {
        let (cp, cpk) = group.capability.map_or_else(
            || (w.text("capability-too-few"), w.text("capability-too-few")),
            |c| (index(c.cp, c.cp_interval), index(c.cpk, c.cpk_interval)),
        );
        vec![
            Cell::from(group.name.clone()),
            Cell::from(group.clubs.to_string()),
            Cell::from(w.signed(group.mean_points, 2)),
            Cell::from(group.inside.to_string()),
            Cell::from(group.too_close.to_string()),
            Cell::from(group.outside.to_string()),
            Cell::from(cp),
            Cell::from(cpk),
        ]
    };
    let heads = ["clubs", "mean", "in", "too-close", "out", "cp", "cpk"].map(|head| format!("capability-{head}"));
    let heads = std::iter::once(first).chain(heads.iter().map(String::as_str));
    table(&Table {
        caption: &w.text(caption),
        columns: heads.enumerate().map(|(i, head)| Column { head: w.text(head).into(), figures: i > 0 }).collect(),
        rows: groups.iter().map(row).collect(),
        cards: true,
        ..Table::default()
    })
}
