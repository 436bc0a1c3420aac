//! Orders of parts, and the stock against the sheets to come.

use super::print::table;
use super::{print_json, reader, say};
use crate::config::{NeedsArguments, OrderAdd, OrderCancel, OrderJob, OrderList, OrderReceive, OrderTell};
use crate::failure::CommandFault;
use crate::failure::Failure;
use crate::terminal::line;
use app::order::{CloseOrder, JobCount, NewOrder, OrderForJob, OrderQuery, Receive, TellOrder};
use desk::order::Wanted;
use jiff::civil::Date;
use trade::order::OrderView;
use words::{Words, text};

fn day(text: Option<&str>) -> Result<Option<Date>, Failure> {
    text.map(|t| t.parse::<Date>().map_err(|_| Failure::usage(CommandFault::NotADate { text: t.to_owned() })))
        .transpose()
}

/// Lists orders.
///
/// # Errors
/// No such job; what the store says.
pub async fn list(arguments: &OrderList) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let query = OrderQuery { open: arguments.open, job: arguments.job, ..OrderQuery::default() };
    if arguments.csv {
        let text = app.export_orders(&query).await?;
        app.close().await;
        return say(&text);
    }
    let (orders, _) = app.orders(&query).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&orders);
    }
    if orders.is_empty() {
        return say(&(reader().text("order-none") + "\n"));
    }
    show(&orders);
    Ok(())
}

/// A model by its code, with its number.
fn coded(w: &Words, model: &str, number: Option<&str>) -> String {
    format!("{model} {}", number.map(|number| w.club_number(number)).unwrap_or_default()).trim().to_owned()
}

/// Masses that will do; empty where any will.
fn window(w: &Words, from_g: Option<f64>, to_g: Option<f64>) -> String {
    match (from_g, to_g) {
        (Some(from_g), Some(to_g)) => text!(w, "order-window", from_g = from_g, to_g = to_g),
        (Some(from_g), None) => text!(w, "order-window-from", from_g = from_g),
        (None, Some(to_g)) => text!(w, "order-window-to", to_g = to_g),
        (None, None) => String::new(),
    }
}

fn show(orders: &[OrderView]) {
    let w = &reader();
    let rows: Vec<Vec<String>> = orders
        .iter()
        .map(|o| {
            let line = &o.line;
            let jobs: Vec<String> = line.jobs.iter().map(|j| j.number.to_string()).collect();
            let late =
                o.days_late.map_or_else(String::new, |days| format!(", {}", text!(w, "order-overdue", days = days)));
            vec![
                line.order.to_string(),
                coded(w, &line.model, line.number.as_deref()),
                text!(w, "command-order-here", received = o.received, count = line.count),
                window(w, line.from_g, line.to_g),
                jobs.join(", "),
                line.supplier.clone(),
                format!("{}{late}", line.expected_on.map_or_else(String::new, |d| d.to_string())),
                w.tell(&o.state),
            ]
        })
        .collect();
    let columns = ["order", "what", "here", "masses", "job", "supplier", "expected", "state"];
    table(&columns.map(|column| w.text(&format!("command-order-column-{column}"))), &rows);
}

fn answer(orders: &[OrderView], json: bool) -> Result<(), Failure> {
    if json {
        return print_json(&orders);
    }
    show(orders);
    Ok(())
}

/// Places an order.
///
/// # Errors
/// A count, mass or day that cannot be; an unknown model or job; what the store says.
pub async fn add(arguments: &OrderAdd) -> Result<(), Failure> {
    let order = NewOrder {
        supplier: arguments.supplier.clone(),
        model: arguments.model.clone(),
        number: arguments.number.clone(),
        count: arguments.count,
        from_g: arguments.from,
        to_g: arguments.to,
        jobs: arguments.jobs.iter().map(|text| job_count(text)).collect::<Result<_, _>>()?,
        note: arguments.note.clone(),
        ordered_on: None,
        expected_on: day(arguments.expected.as_deref())?,
        by: arguments.signed.by.clone(),
    };
    let app = arguments.signed.database.open().await?;
    let placed = app.place_orders(&[order]).await?;
    app.close().await;
    answer(&placed, arguments.signed.database.json)
}

fn job_count(text: &str) -> Result<JobCount, Failure> {
    let wrong = || Failure::usage(CommandFault::NotJobCount { text: text.to_owned() });
    let (job, count) = text.split_once(':').unwrap_or((text, "1"));
    Ok(JobCount { job: job.trim().parse().map_err(|_| wrong())?, count: count.trim().parse().map_err(|_| wrong())? })
}

/// Orders what a job lacks, or only says it.
///
/// # Errors
/// A job that lacks nothing that is not ordered; what the store says.
pub async fn for_job(arguments: &OrderJob) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    if arguments.look {
        let wanted = app.wanted(arguments.job).await?;
        app.close().await;
        if arguments.signed.database.json {
            return print_json(&wanted);
        }
        return say(&wanted_text(&reader(), arguments.job, &wanted));
    }
    let wish = OrderForJob {
        supplier: arguments.supplier.clone(),
        expected_on: day(arguments.expected.as_deref())?,
        by: arguments.signed.by.clone(),
    };
    let placed = app.order_for_job(arguments.job, &wish).await?;
    app.close().await;
    answer(&placed, arguments.signed.database.json)
}

fn wanted_text(w: &Words, job: i64, wanted: &[Wanted]) -> String {
    if wanted.is_empty() {
        return text!(w, "command-order-lacks-nothing", job = job) + "\n";
    }
    let line = |wish: &Wanted| {
        let masses = Some(window(w, wish.from_g, wish.to_g)).filter(|masses| !masses.is_empty());
        let told = text!(
            w,
            "command-order-wanted",
            n = wish.count,
            kind = wish.kind,
            model = wish.model,
            number = wish.number,
            masses = masses,
            ordered = wish.ordered
        );
        told + "\n"
    };
    wanted.iter().map(line).collect()
}

/// Books in what came.
///
/// # Errors
/// More than was to come, unless it is said that it is so; what the store says.
pub async fn receive(arguments: &OrderReceive) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let receive = Receive {
        count: arguments.count,
        model: arguments.model.clone(),
        number: arguments.number.clone(),
        short: arguments.short,
        anyway: arguments.anyway,
        note: arguments.note.clone(),
        by: arguments.signed.by.clone(),
        version: None,
    };
    let received = app.receive_order(arguments.order, &receive).await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&received);
    }
    show(std::slice::from_ref(&received.order));
    line!("{}", text!(reader(), "command-order-weigh-in", n = received.to_weigh, model = received.model));
    Ok(())
}

/// Cancels an order or closes it short.
///
/// # Errors
/// No reason; nothing still to come; what the store says.
pub async fn cancel(arguments: &OrderCancel) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let close = CloseOrder {
        short: arguments.short,
        reason: arguments.reason.clone(),
        by: arguments.signed.by.clone(),
        version: None,
    };
    let order = app.close_order(arguments.order, &close).await?;
    app.close().await;
    if arguments.signed.database.json { print_json(&order) } else { answer(&[order], false) }
}

/// Says another supplier or day.
///
/// # Errors
/// Nothing said; a day that cannot be; what the store says.
pub async fn tell(arguments: &OrderTell) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let told = TellOrder {
        supplier: arguments.supplier.clone(),
        expected_on: day(arguments.expected.as_deref())?,
        note: arguments.note.clone(),
        by: arguments.signed.by.clone(),
        version: None,
    };
    let order = app.tell_order(arguments.order, &told).await?;
    app.close().await;
    if arguments.signed.database.json { print_json(&order) } else { answer(&[order], false) }
}

/// The stock against the sheets to come.
///
/// # Errors
/// What the store says.
pub async fn needs(arguments: &NeedsArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let mut needs = app.stock_needs().await?;
    app.close().await;
    if arguments.short {
        needs.retain(|n| n.short > 0);
    }
    if arguments.csv {
        return say(&desk::stock_csv::needs(&needs));
    }
    if arguments.database.json {
        return print_json(&needs);
    }
    let w = &reader();
    let rows: Vec<Vec<String>> = needs
        .iter()
        .map(|n| {
            let mut row = vec![coded(w, &n.model, n.number.as_deref())];
            let counts = [n.free, n.held, n.on_order, n.needed_by_jobs, n.needed_by_sheets, n.short, n.to_order];
            row.extend(counts.map(|count| count.to_string()));
            row
        })
        .collect();
    let columns = [
        "need-column-what",
        "need-column-free",
        "need-column-held",
        "need-column-on-order",
        "need-column-for-jobs",
        "need-column-for-sheets",
        "need-column-short",
        "command-need-to-order",
    ];
    table(&columns.map(|id| w.text(id)), &rows);
    Ok(())
}
