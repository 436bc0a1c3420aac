//! What the shop has learned, and how well it meets its tolerances.

use super::print::table;
use super::print_json;
use crate::config::{CapabilityArguments, LearnedArguments};
use crate::failure::Failure;
use app::learned::{LearnedShop, LearnedView, PinLearned, ResetLearned};
use bench::capability::{CapabilityGroup, ShopCapability};
use quantity::decimal;

/// Shows what the shop has learned, sets it back or pins it.
///
/// # Errors
/// A key that is not there; no reason; what the store says.
pub async fn learned(arguments: &LearnedArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let (by, reason) = (arguments.by.clone(), arguments.reason.clone().unwrap_or_default());
    if let Some(key) = &arguments.reset {
        let key = (key != "all").then(|| key.clone());
        app.reset_learned(&ResetLearned { key, by, reason }).await?;
    } else if let Some((key, pinned)) =
        arguments.pin.as_ref().map(|key| (key, true)).or_else(|| arguments.unpin.as_ref().map(|key| (key, false)))
    {
        app.pin_learned(&PinLearned { key: key.clone(), pinned, by, reason }).await?;
    }
    let learned = app.learned().await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&learned);
    }
    tell(&learned);
    Ok(())
}

fn tell(learned: &LearnedShop) {
    if learned.at.is_none() {
        println!("The shop has learned nothing yet. It learns from the readings of each finished job.");
        return;
    }
    let pinned = |view: &LearnedView| if view.pinned { "pinned" } else { "" }.to_owned();
    let rows: Vec<Vec<String>> = learned
        .values
        .iter()
        .map(|v| {
            vec![
                v.key.clone(),
                v.words.clone(),
                format!("{} {} ± {}", decimal(v.figure.unwrap_or(v.mean), 2), v.unit, decimal(v.band, 2)),
                format!("± {}", decimal(v.new_shop, 2)),
                format!("{} in {}", v.clubs, v.jobs),
                pinned(v),
            ]
        })
        .collect();
    table(&["key", "what", "mean", "new shop", "clubs in jobs", ""], &rows);
    println!();
    let rows: Vec<Vec<String>> = learned
        .scatter
        .iter()
        .map(|v| {
            vec![
                v.key.clone(),
                v.words.clone(),
                format!("{} {}", decimal(v.mean, 2), v.unit),
                decimal(v.new_shop, 2),
                decimal(v.observations.unwrap_or(0.0), 0),
                pinned(v),
            ]
        })
        .collect();
    table(&["key", "what scatters", "now", "new shop", "worth readings", ""], &rows);
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
    Ok(())
}

fn tell_capability(found: &ShopCapability) {
    let Some(all) = &found.all else {
        println!("No club is finished yet: each finished club counts with what its record says.");
        return;
    };
    let index = |value: f64, interval: Option<(f64, f64)>| {
        let (low, high) = interval.unwrap_or((value, value));
        format!("{} ({} to {})", decimal(value, 2), decimal(low, 2), decimal(high, 2))
    };
    let row = |group: &CapabilityGroup| {
        let (cp, cpk) = group.capability.map_or_else(
            || ("too few".to_owned(), "too few".to_owned()),
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
    table(&["", "clubs", "mean off by", "in", "too close", "out", "Cp", "Cpk"], &rows);
}
