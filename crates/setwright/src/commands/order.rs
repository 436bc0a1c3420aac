//! Orders of parts, and the stock against the sheets to come.

use super::print::table;
use super::{print_json, say};
use crate::config::{NeedsArguments, OrderAdd, OrderCancel, OrderJob, OrderList, OrderReceive, OrderTell};
use crate::failure::CommandFault;
use crate::failure::Failure;
use app::order::{CloseOrder, JobCount, NewOrder, OrderForJob, OrderQuery, Receive, TellOrder};
use desk::order::Wanted;
use jiff::civil::Date;
use quantity::decimal;
use trade::order::OrderView;

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
        return say("Nothing is on order.\n");
    }
    show(&orders);
    Ok(())
}

fn show(orders: &[OrderView]) {
    let window = |o: &OrderView| match (o.line.from_g, o.line.to_g) {
        (Some(from), Some(to)) => format!("{} to {} g", decimal(from, 1), decimal(to, 1)),
        (Some(from), None) => format!("from {} g", decimal(from, 1)),
        (None, Some(to)) => format!("to {} g", decimal(to, 1)),
        (None, None) => String::new(),
    };
    let rows: Vec<Vec<String>> = orders
        .iter()
        .map(|o| {
            let line = &o.line;
            let jobs: Vec<String> = line.jobs.iter().map(|j| j.number.to_string()).collect();
            let late = o.days_late.map_or_else(String::new, |d| format!(", {d} days late"));
            vec![
                line.order.to_string(),
                format!("{} {}", line.model, line.number.as_deref().unwrap_or_default()).trim().to_owned(),
                format!("{} of {}", o.received, line.count),
                window(o),
                jobs.join(", "),
                line.supplier.clone(),
                format!("{}{late}", line.expected_on.map_or_else(String::new, |d| d.to_string())),
                o.state.to_string(),
            ]
        })
        .collect();
    table(&["order", "what", "here", "masses", "for job", "of", "expected", ""], &rows);
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
        by: arguments.by.clone(),
    };
    let app = arguments.database.open().await?;
    let placed = app.place_orders(&[order]).await?;
    app.close().await;
    answer(&placed, arguments.database.json)
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
    let app = arguments.database.open().await?;
    if arguments.look {
        let wanted = app.wanted(arguments.job).await?;
        app.close().await;
        if arguments.database.json {
            return print_json(&wanted);
        }
        return say(&wanted_text(arguments.job, &wanted));
    }
    let wish = OrderForJob {
        supplier: arguments.supplier.clone(),
        expected_on: day(arguments.expected.as_deref())?,
        by: arguments.by.clone(),
    };
    let placed = app.order_for_job(arguments.job, &wish).await?;
    app.close().await;
    answer(&placed, arguments.database.json)
}

fn wanted_text(job: i64, wanted: &[Wanted]) -> String {
    if wanted.is_empty() {
        return format!("Job {job} lacks nothing.\n");
    }
    let line = |w: &Wanted| {
        let number = w.number.as_deref().map(|n| format!(" {n}")).unwrap_or_default();
        let window = match (w.from_g, w.to_g) {
            (Some(from), Some(to)) => format!(", {} to {} g", decimal(from, 1), decimal(to, 1)),
            _ => String::new(),
        };
        format!("{} × {} {}{number}{window}; {} ordered\n", w.count, w.kind, w.model, w.ordered)
    };
    wanted.iter().map(line).collect()
}

/// Books in what came.
///
/// # Errors
/// More than was to come, unless it is said that it is so; what the store says.
pub async fn receive(arguments: &OrderReceive) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let receive = Receive {
        count: arguments.count,
        model: arguments.model.clone(),
        number: arguments.number.clone(),
        short: arguments.short,
        anyway: arguments.anyway,
        note: arguments.note.clone(),
        by: arguments.by.clone(),
        version: None,
    };
    let received = app.receive_order(arguments.order, &receive).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&received);
    }
    show(std::slice::from_ref(&received.order));
    println!("Weigh in {} of {}.", received.to_weigh, received.model);
    Ok(())
}

/// Cancels an order or closes it short.
///
/// # Errors
/// No reason; nothing still to come; what the store says.
pub async fn cancel(arguments: &OrderCancel) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let close = CloseOrder {
        short: arguments.short,
        reason: arguments.reason.clone(),
        by: arguments.by.clone(),
        version: None,
    };
    let order = app.close_order(arguments.order, &close).await?;
    app.close().await;
    if arguments.database.json { print_json(&order) } else { answer(&[order], false) }
}

/// Says another supplier or day.
///
/// # Errors
/// Nothing said; a day that cannot be; what the store says.
pub async fn tell(arguments: &OrderTell) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let told = TellOrder {
        supplier: arguments.supplier.clone(),
        expected_on: day(arguments.expected.as_deref())?,
        note: arguments.note.clone(),
        by: arguments.by.clone(),
        version: None,
    };
    let order = app.tell_order(arguments.order, &told).await?;
    app.close().await;
    if arguments.database.json { print_json(&order) } else { answer(&[order], false) }
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
    let rows: Vec<Vec<String>> = needs
        .iter()
        .map(|n| {
            let mut row = vec![format!("{} {}", n.model, n.number.as_deref().unwrap_or_default()).trim().to_owned()];
            let counts = [n.free, n.held, n.on_order, n.needed_by_jobs, n.needed_by_sheets, n.short, n.to_order];
            row.extend(counts.map(|count| count.to_string()));
            row
        })
        .collect();
    table(&["", "free", "held", "on order", "for jobs", "for sheets", "short", "to order"], &rows);
    Ok(())
}
