//! Customers, and what a text may mean.

use super::{print_json, reader, say, write_json};
use crate::config::{CustomerCommand, CustomerDelete, CustomerExport, CustomerFields, CustomerList, FindArguments};
use crate::failure::Failure;
use app::App;
use app::customer::{CustomerView, DeleteCustomer, Deletion, GiveSheet, TakeName};
use app::find::FoundNear;
use app::stock::PartChange;
use quantity::LengthUnit;
use std::fmt::Write;
use trade::customer::{Customer, code};
use trade::error::TradeError;
use trade::kind::Hand;
use words::{Words, text};

/// Does what is asked with customers.
///
/// # Errors
/// No such customer; a text or figure that cannot be; what the store says.
pub async fn customer(command: &CustomerCommand) -> Result<(), Failure> {
    match command {
        CustomerCommand::List(list) => list_customers(list).await,
        CustomerCommand::Part(part) => {
            let app = part.signed.database.open().await?;
            let version = app.part(&part.code).await?.version;
            let owner = part.customer.map_or_else(|| "shop".to_owned(), |number| number.to_string());
            let (reason, by) = (part.reason.clone(), part.signed.by.clone());
            let change = PartChange { version, owner: Some(owner), reason, by, ..PartChange::default() };
            let kept = app.change_part(&part.code, &change).await?;
            app.close().await;
            if part.signed.database.json {
                return print_json(&kept);
            }
            let whose = kept.owner.map_or_else(|| "shop".to_owned(), code);
            say(&(text!(reader(), "customer-line-part", code = kept.code, whose = whose) + "\n"))
        }
        CustomerCommand::Export(export) => export_customer(export).await,
        CustomerCommand::Delete(delete) => delete_customer(delete).await,
        CustomerCommand::Show(show) => {
            let app = show.database.open().await?;
            let view = app.customer(show.number).await?;
            tell(app, &view, show.database.json).await
        }
        CustomerCommand::Add(add) => {
            let customer = with_fields(Customer::named(&add.name), &add.fields)?;
            let app = add.database.open().await?;
            let view = app.add_customer(&customer).await?;
            tell(app, &view, add.database.json).await
        }
        CustomerCommand::Change(change) => {
            let app = change.database.open().await?;
            let before = app.customer(change.number).await?;
            let mut customer = with_fields(before.customer, &change.fields)?;
            if let Some(name) = &change.name {
                customer.name.clone_from(name);
            }
            let view = app.change_customer(change.number, &customer, before.version).await?;
            tell(app, &view, change.database.json).await
        }
        CustomerCommand::Take(take) => {
            let app = take.signed.database.open().await?;
            let (name, customer, by) = (take.name.clone(), take.customer, take.signed.by.clone());
            let view = app.take_name(&TakeName { name, customer, by }).await?;
            tell(app, &view, take.signed.database.json).await
        }
        CustomerCommand::Give(give) => {
            let app = give.signed.database.open().await?;
            let id = give.sheet.as_str().into();
            app.give_sheet(&id, &GiveSheet { customer: give.customer, by: give.signed.by.clone() }).await?;
            let view = app.sheet(&id).await?;
            app.close().await;
            if give.signed.database.json {
                return print_json(&view);
            }
            let w = reader();
            say(&match view.sheet.customer {
                Some(number) => text!(w, "customer-line-sheet", player = view.sheet.player, code = code(number)),
                None => w.text("sheet-of-nobody"),
            })?;
            say("\n")
        }
    }
}

/// The customer with what was given of them.
fn with_fields(mut customer: Customer, fields: &CustomerFields) -> Result<Customer, Failure> {
    if let Some(hand) = &fields.hand {
        customer.hand = Hand::from_key(hand);
    }
    for (given, of) in [
        (&fields.phone, &mut customer.phone),
        (&fields.email, &mut customer.email),
        (&fields.address, &mut customer.address),
        (&fields.note, &mut customer.note),
        (&fields.glove, &mut customer.glove),
    ] {
        if let Some(given) = given {
            of.clone_from(given);
        }
    }
    if let Some(typed) = &fields.grip_diameter {
        let length = quantity::parse_length(typed, LengthUnit::Millimetre);
        let length = length.map_err(|e| Failure::usage(TradeError::unreadable("grip_diameter_mm", &e).refusal()))?;
        customer.grip_diameter_mm = Some(length.mm());
    }
    if fields.wraps.is_some() || fields.lower_wraps.is_some() {
        let mut wraps = customer.wraps.unwrap_or_default();
        wraps.base = 1;
        wraps.full = fields.wraps.unwrap_or(wraps.full);
        wraps.lower_hand = fields.lower_wraps.unwrap_or(wraps.lower_hand);
        customer.wraps = Some(wraps);
    }
    Ok(customer)
}

async fn tell(app: App, view: &CustomerView, json: bool) -> Result<(), Failure> {
    app.close().await;
    if json {
        return print_json(view);
    }
    say(&lines(&reader(), view))
}

fn lines(w: &Words, view: &CustomerView) -> String {
    let customer = &view.customer;
    let mut text = text!(w, "find-customer", name = customer.name, code = view.code) + "\n";
    let mut line = |label: &str, value: &str| {
        if !value.is_empty() {
            // Writing to a string does not fail.
            let _ = writeln!(text, "  {}: {value}", w.text(label));
        }
    };
    line("customer-form-hand", &customer.hand.map_or_else(String::new, |hand| w.tell(&hand)));
    line("customer-form-phone", &customer.phone);
    line("customer-form-email", &customer.email);
    line("customer-form-address", &customer.address);
    line("customer-form-glove", &customer.glove);
    line("customer-form-grip", &customer.grip_diameter_mm.map_or_else(String::new, |mm| w.length_to(mm, 3)));
    line("customer-form-note", &customer.note);
    let sheets: Vec<String> = view.sheets.iter().filter(|s| s.job.is_none()).map(|s| s.id.to_string()).collect();
    line("customer-sheets", &sheets.join(", "));
    let jobs: Vec<String> = view.jobs.iter().map(|job| format!("{} ({})", job.number, w.tell(&job.state))).collect();
    line("customer-jobs", &jobs.join(", "));
    text
}

async fn list_customers(list: &CustomerList) -> Result<(), Failure> {
    let app = list.database.open().await?;
    let found = app.customers(&list.text).await?;
    let names = app.names_on_sheets().await?;
    app.close().await;
    if list.database.json {
        return print_json(&found);
    }
    let w = reader();
    let mut text = String::new();
    for one in &found {
        let _ = writeln!(
            text,
            "{}",
            text!(w, "customer-line", code = one.code, name = one.name, sheets = one.sheets, jobs = one.jobs)
        );
    }
    if found.is_empty() {
        text += &(w.text(if list.text.is_empty() { "customer-none-yet" } else { "customer-none-found" }) + "\n");
    }
    if list.text.is_empty() && !names.is_empty() {
        text += &(w.text("customer-line-names") + "\n");
        for one in &names {
            let _ = writeln!(text, "  {}: {}", one.name, text!(w, "customer-names-sheets", n = one.sheets));
        }
    }
    say(&text)
}

async fn export_customer(export: &CustomerExport) -> Result<(), Failure> {
    let app = export.database.open().await?;
    let file = app.customer_file(export.number).await?;
    app.close().await;
    match &export.out {
        Some(out) => write_json(out, &file),
        None => print_json(&file),
    }
}

async fn delete_customer(delete: &CustomerDelete) -> Result<(), Failure> {
    let app = delete.signed.database.open().await?;
    let deletion = match &delete.name {
        Some(name) => {
            let request = DeleteCustomer { name: name.clone(), by: delete.signed.by.clone() };
            app.delete_customer(delete.number, &request).await?
        }
        None => app.deletion(delete.number).await?,
    };
    app.close().await;
    if delete.signed.database.json {
        return print_json(&deletion);
    }
    let w = reader();
    let mut text = what_happens(&w, &deletion);
    text += &match (&delete.name, deletion.under_way.as_slice()) {
        (Some(_), _) => text!(w, "customer-deleted", code = deletion.code),
        (None, []) => w.text("customer-line-say-name"),
        (None, jobs) => text!(w, "customer-delete-under-way", n = jobs.len(), jobs = jobs.to_vec()),
    };
    say(&(text + "\n"))
}

/// What goes and what stays, line by line.
fn what_happens(w: &Words, deletion: &Deletion) -> String {
    let part = |title: &str, lines: Vec<String>| {
        lines.into_iter().fold(w.text(title) + ":\n", |text, line| text + "  " + &line + "\n")
    };
    part("customer-goes", deletion.goes(w)) + &part("customer-stays", deletion.stays(w))
}

/// What a text may mean.
///
/// # Errors
/// Nothing fits; what the store says.
pub async fn find(arguments: &FindArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let near = if arguments.near { app.find_near(&arguments.text).await? } else { FoundNear::default() };
    let found = if near.found.is_empty() { app.find_some(&arguments.text).await? } else { near.found };
    app.close().await;
    if arguments.database.json {
        return print_json(&found);
    }
    let w = reader();
    let meant = near.meant.map(|meant| text!(w, "find-meant", text = arguments.text, meant = meant) + "\n");
    say(&(meant.unwrap_or_default() + &found.iter().map(|one| one.words(&w) + "\n").collect::<String>()))
}
