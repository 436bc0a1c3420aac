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
use look::{Action, Cell, Column, Nav, Table, empty_state, section, table};
use maud::{Markup, html};
use quantity::decimal;
use words::Words;

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
        if let Ok(first) = format!("{}-01", group.name).parse::<jiff::civil::Date>() {
            group.name = first.strftime("%b %Y").to_string();
        }
    }
    let body = match &found.all {
        None => empty_state(
            "No club is finished yet.",
            "Each finished club counts here with what its record says. Build a job to its end.",
            &[Action { href: "/bench", label: "Bench", primary: true }],
        ),
        Some(all) => groups_part(&w, all, &found),
    };
    let crumb = "of the swing weight, over all finished clubs".to_owned();
    let page = framed(&w, &app, Framed { title: "Capability", active: Nav::Records, crumb, body, ..Framed::default() });
    Ok(page.await?.into_response())
}

fn groups_part(w: &Words, all: &CapabilityGroup, found: &ShopCapability) -> Markup {
    html! {
        p { "Cp is how many times the shop's spread fits into the tolerance: at 1 a centred shop loses 3 clubs in 1000, 1.33 is a usual aim. Cpk counts as well how far the mean lies beside the target. Each club counts by its own tolerance. In brackets: where the figure lies 95 times in 100, with as many clubs as there are." }
        (section("All clubs", &html! {}, &groups_table(w, "All finished clubs", "which", std::slice::from_ref(all))))
        (section("By month", &html! {}, &groups_table(w, "Capability by month", "month", &found.by_month)))
        (section("By head model", &html! {}, &groups_table(w, "Capability by head model", "model", &found.by_model)))
    }
}

fn groups_table(w: &Words, caption: &str, first: &str, groups: &[CapabilityGroup]) -> Markup {
    let plain = |value: f64| decimal(value, 2).replace('-', "−");
    let index = |value: f64, interval: Option<(f64, f64)>| {
        let (low, high) = interval.unwrap_or((value, value));
        format!("{} ({} to {})", plain(value), plain(low), plain(high))
    };
    let row = |group: &CapabilityGroup| {
        let (cp, cpk) = group.capability.map_or_else(
            || ("too few".to_owned(), "too few".to_owned()),
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
    let heads = [first, "clubs", "mean off by", "in", "too close to say", "out", "Cp", "Cpk"];
    table(&Table {
        caption,
        columns: heads.iter().enumerate().map(|(i, head)| Column { head: (*head).into(), figures: i > 0 }).collect(),
        rows: groups.iter().map(row).collect(),
        cards: true,
        ..Table::default()
    })
}
