//! What the shop has learned, and how well it meets its tolerances.

use super::print::table;
use super::{print_json, reader};
use crate::config::{CapabilityArguments, LearnedArguments};
use crate::failure::Failure;
use crate::terminal::line;
use app::learned::{LearnedShop, LearnedView, PinLearned, ResetLearned};
use app::told::{TellShop, ToldView, WithdrawTold};
use bench::capability::{CapabilityGroup, ShopCapability};
use bench::held::{BandsHeld, Promise, Share};
use bench::told::{Sureness, ToldOf};
use quantity::decimal;
use words::{Words, text};

/// Shows what the shop has learned, resets or locks it.
///
/// # Errors
/// A key that is not there; no reason; what the store says.
pub async fn learned(arguments: &LearnedArguments) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let (by, reason) = (arguments.signed.by.clone(), arguments.reason.clone().unwrap_or_default());
    if let Some(key) = &arguments.reset {
        let key = (key != "all").then(|| key.clone());
        app.reset_learned(&ResetLearned { key, by, reason }).await?;
    } else if let Some((key, pinned)) =
        arguments.pin.as_ref().map(|key| (key, true)).or_else(|| arguments.unpin.as_ref().map(|key| (key, false)))
    {
        app.pin_learned(&PinLearned { key: key.clone(), pinned, by, reason }).await?;
    } else if let Some(of) = arguments.tell.as_deref().and_then(ToldOf::from_key) {
        app.tell_shop(&[TellShop {
            of,
            model: arguments.model.clone(),
            puts_on_points: arguments.puts_on,
            takes_off_points: arguments.takes_off,
            sure: Sureness::from_key(&arguments.sure),
            by,
        }])
        .await?;
    } else if let Some(of) = arguments.withdraw.as_deref().and_then(ToldOf::from_key) {
        app.withdraw_told(&WithdrawTold { of, model: arguments.model.clone(), by, reason }).await?;
    }
    let learned = app.learned().await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&learned);
    }
    tell(&learned);
    Ok(())
}

fn tell(learned: &LearnedShop) {
    let w = reader();
    if learned.at.is_none() {
        line!("{}", w.text("learned-command-empty"));
        return;
    }
    tell_told(&w, &learned.told);
    let locked = |view: &LearnedView| if view.pinned { w.text("learned-locked") } else { String::new() };
    let figure = |view: &LearnedView, value: f64| match web::learned_amount(view.unit) {
        Some((amount, factor)) => w.amount(amount, value * factor, 2),
        None => decimal(value, 2),
    };
    let band = |view: &LearnedView, value: f64| match web::learned_amount(view.unit) {
        Some((amount, factor)) => w.amount_figure(amount, value * factor, 2),
        None => decimal(value, 2),
    };
    let rows: Vec<Vec<String>> = learned
        .values
        .iter()
        .map(|v| {
            vec![
                v.key.clone(),
                words::capital(&w.tell(&v.what)),
                format!("{} ± {}", figure(v, v.figure.unwrap_or(v.mean)), band(v, v.band)),
                format!("± {}", band(v, v.new_shop)),
                text!(w, "learned-command-clubs", clubs = v.clubs, jobs = v.jobs),
                locked(v),
            ]
        })
        .collect();
    let heads = [
        "learned-command-column-key",
        "learned-column-what",
        "learned-command-column-mean",
        "learned-column-new-shop",
        "learned-command-column-clubs",
    ];
    table(&headings(&w, &heads), &rows);
    line!();
    let rows: Vec<Vec<String>> = learned
        .scatter
        .iter()
        .map(|v| {
            vec![
                v.key.clone(),
                words::capital(&w.tell(&v.what)),
                figure(v, v.mean),
                band(v, v.new_shop),
                decimal(v.observations.unwrap_or(0.0), 0),
                locked(v),
            ]
        })
        .collect();
    let heads = [
        "learned-command-column-key",
        "learned-command-column-scatter",
        "learned-column-now",
        "learned-column-new-shop",
        "learned-column-readings",
    ];
    table(&headings(&w, &heads), &rows);
}

/// What builders said, if they did, beside what the shop's clubs have taught since.
fn tell_told(w: &Words, told: &[ToldView]) {
    if told.is_empty() {
        return;
    }
    let row = |view: &ToldView| {
        let said = view.change_points.map_or_else(String::new, |points| w.points(points));
        let band = view.learned_band_points.unwrap_or(0.0);
        vec![
            words::capital(&w.tell(&view.of)),
            view.model.clone(),
            format!("{said}, {}", view.sure.map_or_else(String::new, |sure| w.tell(&sure))),
            view.learned_change_points.map_or_else(
                || w.text("told-nothing-learned"),
                |learned_points| text!(w, "told-learned", learned_points = learned_points, band_points = band),
            ),
        ]
    };
    let heads = ["told-column-of", "told-column-model", "told-column-said", "told-column-learned"];
    table(&heads.map(|id| w.text(id)), &told.iter().map(row).collect::<Vec<_>>());
    line!();
}

/// The heads of a table whose last column needs none.
fn headings(w: &Words, ids: &[&str]) -> Vec<String> {
    ids.iter().map(|id| w.text(id)).chain([String::new()]).collect()
}

/// Shows how well the shop meets its tolerances.
///
/// # Errors
/// What the store says.
pub async fn capability(arguments: &CapabilityArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let found = app.capability().await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&found);
    }
    tell_capability(&found);
    tell_bands(&found.bands);
    Ok(())
}

fn tell_bands(bands: &BandsHeld) {
    let w = reader();
    let (Some(all), Some(since)) = (&bands.all, bands.since_on) else { return };
    line!("\n{}", text!(w, "capability-bands-mean", since_on = since));
    let row = |step: String, what: String, share: &Share| {
        let [low, high] = share.limits_percent;
        let percent = text!(w, "capability-bands-percent", percent = share.percent, low = low, high = high);
        vec![step, what, share.of.to_string(), percent, w.tell(&Promise::of(share))]
    };
    let mut rows = vec![row(w.text("capability-bands-every"), String::new(), all)];
    rows.extend(bands.by_step.iter().map(|g| row(g.step.clone(), w.tell(&g.what), &g.share)));
    rows.extend(bands.by_month.iter().map(|g| row(g.month.clone(), String::new(), &g.share)));
    let heads = ["step", "read", "of", "share", "verdict"].map(|head| w.text(&format!("capability-bands-{head}")));
    table(&heads, &rows);
}

fn tell_capability(found: &ShopCapability) {
    let w = reader();
    let Some(all) = &found.all else {
        line!("{}", w.text("learned-capability-none"));
        return;
    };
    let index = |value: f64, interval: Option<(f64, f64)>| {
        let (low, high) = interval.unwrap_or((value, value));
        let (low, high) = (decimal(low, 2), decimal(high, 2));
        text!(w, "learned-capability-index", index = decimal(value, 2), low = low, high = high)
    };
    let row = |group: &CapabilityGroup| {
        let (cp, cpk) = group.capability.map_or_else(
            || (w.text("learned-capability-too-few"), w.text("learned-capability-too-few")),
            |c| (index(c.cp, c.cp_interval), index(c.cpk, c.cpk_interval)),
        );
        vec![
            group.name.clone(),
            group.clubs.to_string(),
            decimal(group.mean_points, 2),
            group.inside.to_string(),
            group.too_close.to_string(),
            group.outside.to_string(),
            cp,
            cpk,
        ]
    };
    let rows: Vec<Vec<String>> = std::iter::once(all).chain(&found.by_month).chain(&found.by_model).map(row).collect();
    let heads = ["clubs", "mean", "in", "close", "out", "cp", "cpk"]
        .map(|head| w.text(&format!("learned-capability-column-{head}")));
    table(&[&[String::new()][..], &heads].concat(), &rows);
}
