//! A part with its life, parts sorted by weight, head masses to ask for.

use super::print::table;
use super::{print_json, reader, say};
use crate::config::{AskArguments, PartArguments, SortArguments};
use crate::failure::CommandFault;
use crate::failure::Failure;
use app::life::{Deed, Given, PartAction, PartDeed, PartFigures, PartLife};
use app::sorting::{AskRequest, SortRequest};
use desk::ask::Supply;
use fact::Fact;
use trade::sheet::Sheet;
use words::{Words, text};

/// Shows a part with its life, after doing something with it where that is asked.
///
/// # Errors
/// An unknown action, or one not allowed in the part's state; a store error.
pub async fn part(arguments: &PartArguments) -> Result<(), Failure> {
    let deed = arguments.deed.as_deref().map(deed).transpose()?;
    let app = arguments.database.open().await?;
    let life = match deed {
        Some(deed) => {
            let mut figures = PartFigures::default();
            for (key, value) in &arguments.figures.0 {
                figures.set_figure(key, Some(*value));
            }
            let given = Given {
                job: arguments.job,
                slot: arguments.slot,
                mass_typed: arguments.mass.clone(),
                off_the_tip_mm: arguments.off_the_tip,
                clean: arguments.clean,
                place: arguments.place.clone(),
                lose_plan: arguments.lose_plan,
                reason: arguments.reason.clone(),
                figures,
            };
            let deed = Deed::read(&arguments.code, deed, given)?;
            let action = PartAction { deed, version: None, by: arguments.by.clone() };
            app.part_deed(&arguments.code, &action).await?
        }
        None => app.part_life(&arguments.code).await?,
    };
    app.close().await;
    if arguments.csv {
        let entries: Vec<_> = life.life.into_iter().map(|l| l.entry).collect();
        return say(&desk::stock_csv::life(&entries));
    }
    if arguments.database.json {
        return print_json(&life);
    }
    say(&life_text(&reader(), &life))
}

fn deed(text: &str) -> Result<PartDeed, Failure> {
    PartDeed::from_key(text).ok_or_else(|| Failure::usage(CommandFault::NoDeed { text: text.to_owned() }))
}

fn life_text(w: &Words, life: &PartLife) -> String {
    let part = &life.part;
    let club = life.club.as_ref().filter(|_| life.job.is_some());
    let mut told = text!(
        w,
        "part-life-line",
        code = part.code.as_str(),
        kind = part.kind,
        model = part.model.as_str(),
        number = part.number,
        mass_g = part.mass_g,
        state = part.state,
        club = club.cloned(),
        job = life.job
    );
    told.push('\n');
    for line in &life.life {
        let reason = if line.entry.reason.is_empty() { String::new() } else { format!(" “{}”", line.entry.reason) };
        let by = if line.entry.by.is_empty() { String::new() } else { format!(", {}", line.entry.by) };
        told.push_str(&format!("  {}{by}: {}{reason}\n", w.moment(line.entry.at), w.sentence(&line.told)));
    }
    told
}

/// Sorts the parts of a model by weight.
///
/// # Errors
/// An unknown model; a width or count that makes no classes; what the store says.
pub async fn sort(arguments: &SortArguments) -> Result<(), Failure> {
    let request = SortRequest {
        model: arguments.model.clone(),
        number: arguments.number.clone(),
        state: None,
        width_g: arguments.width,
        classes: arguments.classes,
        columns: arguments.columns,
    };
    let app = arguments.database.open().await?;
    let sorting = app.sort_parts(&request).await?;
    app.close().await;
    if arguments.csv {
        return say(&desk::stock_csv::sorting(&sorting));
    }
    if arguments.database.json {
        return print_json(&sorting);
    }
    let w = &reader();
    let mut text = String::new();
    for class in &sorting.classes {
        let codes: Vec<String> =
            class.parts.iter().map(|p| format!("{} {}", p.code, w.mass_figure(p.mass_g))).collect();
        let masses = text!(w, "order-window", from_g = class.from_g, to_g = class.to_g);
        let line = format!("{}  {masses}  {}: {}", class.name, class.parts.len(), codes.join(", "));
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text += &text!(w, "command-sort-sum", n = sorting.count, mean_g = sorting.mean_g, scatter_g = sorting.sd_g);
    text.push('\n');
    if !sorting.not_weighed.is_empty() {
        text += &text!(w, "command-sort-not-weighed", codes = sorting.not_weighed.join(", "));
        text.push('\n');
    }
    say(&text)
}

/// Which head masses to ask for.
///
/// # Errors
/// A file that is no sheet; figures that cannot be; what the store says.
pub async fn ask(arguments: &AskArguments) -> Result<(), Failure> {
    let sheet = match &arguments.sheet {
        Some(path) => {
            let bytes = super::work::bytes_of(path)?;
            let read = document::read::<Sheet>(&bytes);
            Some(read.map_err(|e| {
                Failure::usage(CommandFault::NotASheet { path: path.display().to_string(), what: e.told() })
            })?)
        }
        None => None,
    };
    let request = AskRequest {
        job: arguments.job,
        sheet,
        supply: arguments.supply.iter().map(|text| supply(text)).collect::<Result<_, _>>()?,
        cap_g: arguments.cap,
        within_points: arguments.within,
        ..AskRequest::default()
    };
    let app = arguments.database.open().await?;
    let asks = app.ask_heads(&request).await?;
    app.close().await;
    if arguments.csv {
        return say(&desk::stock_csv::asks(&asks));
    }
    if arguments.database.json {
        return print_json(&asks);
    }
    let w = &reader();
    let rows: Vec<Vec<String>> = asks
        .iter()
        .map(|a| {
            vec![
                format!("{} {}", a.head_model, w.club_number(&a.number)),
                w.swing_weight(a.swing_weight_points),
                text!(w, "order-window", from_g = a.from_g, to_g = a.to_g),
                text!(w, "ask-mean-scatter", mean_g = a.mean_g, scatter_g = a.sd_g),
                text!(w, "command-ask-share", inside_share = a.inside),
                text!(w, "command-ask-share", inside_share = a.inside_any_shaft),
                a.order_for_one.map_or_else(|| w.text("ask-hopeless"), |n| n.to_string()),
            ]
        })
        .collect();
    let columns = ["head", "swing-weight", "masses", "supply", "inside", "any-shaft", "order"];
    table(&columns.map(|column| w.text(&format!("command-ask-column-{column}"))), &rows);
    Ok(())
}

fn supply(text: &str) -> Result<Supply, Failure> {
    let read = || {
        let (head, figures) = text.split_once('=')?;
        let (model, number) = head.split_once(':')?;
        let (mean, scatter) = figures.split_once(',')?;
        Some(Supply {
            head_model: model.trim().to_owned(),
            number: number.trim().to_owned(),
            mean_g: mean.trim().parse().ok()?,
            sd_g: scatter.trim().parse().ok()?,
        })
    };
    read().ok_or_else(|| Failure::usage(CommandFault::NotASupply { text: text.to_owned() }))
}
