//! What each command does.

mod advise;
mod again;
mod backup;
mod calc;
mod causes;
mod clubs;
mod cpm;
mod customer;
mod encryption;
mod fit;
mod gates;
mod grip_size;
mod job;
mod key;
mod learned;
mod list;
mod manual;
mod matched;
mod operate;
mod order;
mod part;
mod price;
mod print;
mod profile;
mod reach;
mod recall;
mod record;
mod scale;
mod scale_health;
mod serve;
mod simulate;
mod soft_side;
mod usual;
mod weigh;
mod work;

use crate::config::{Arguments, Command, GlueCommand, OrderCommand, SheetCommand};
use crate::failure::CommandFault;
use crate::failure::Failure;
use crate::reader::reader;
use std::future::Future;
use std::path::Path;

/// Runs one command.
///
/// # Errors
/// What went wrong, with the exit code that belongs to it.
pub fn run(arguments: Arguments) -> Result<(), Failure> {
    match arguments.command {
        Command::Demo(demo) => told(demo.serve.database.json, block(serve::demo(&demo))),
        Command::Serve(serve) => told(serve.database.json, block(serve::serve(&serve))),
        Command::Config(serve) => told(serve.database.json, operate::config(&serve)),
        Command::Reach(serve) => told(serve.database.json, reach::reach(&serve)),
        Command::Support(support) => told(support.database.json, block(operate::support(&support))),
        Command::Backup(backup) => told(backup.database.json, block(backup::backup(&backup))),
        Command::Restore(restore) => told(restore.database.json, block(backup::restore(&restore))),
        Command::Archive(archive) => told(archive.database.json, block(backup::archive(&archive))),
        Command::Unpack(unpack) => told(unpack.database.json, block(backup::unpack(&unpack))),
        Command::Check(check) => told(check.database.json, block(backup::check(&check))),
        Command::Import(import) => told(import.database.json, block(list::import(&import))),
        Command::Usual(usual) => told(usual.database.json, block(usual::usual(&usual))),
        Command::Export(export) => told(export.database.json, block(list::export(&export))),
        Command::Calendar(calendar) => told(calendar.database.json, block(list::calendar(&calendar))),
        Command::Weigh(weigh) => told(weigh.database.json, block(weigh::weigh(&weigh))),
        Command::Labels(labels) => told(labels.database.json, block(list::labels(&labels))),
        Command::Sheet(SheetCommand::Check(file)) => told(file.database.json, block(work::sheet_check(&file))),
        Command::Sheet(SheetCommand::Add(file)) => told(file.database.json, block(work::sheet_add(&file))),
        Command::Sheet(SheetCommand::Schema) => say(&(web::sheet_schema() + "\n")),
        Command::Customer(command) => told(command.json(), block(customer::customer(&command))),
        Command::Find(find) => told(find.database.json, block(customer::find(&find))),
        Command::Recall(recall) => told(recall.signed.database.json, block(recall::recall(&recall))),
        Command::Marks(marks) => told(marks.signed.database.json, block(recall::marks(&marks))),
        Command::Key(command) => told(command.json(), block(key::key(&command))),
        Command::Prices(prices) => told(prices.database.json, block(price::prices(&prices))),
        Command::Quote(quote) => told(quote.database.json, block(price::quote(&quote))),
        Command::Bill(job) => told(job.database.json, block(price::bill(&job))),
        Command::Plan(plan) => told(plan.signed.database.json, block(work::plan(&plan))),
        Command::Order(OrderCommand::List(list)) => told(list.database.json, block(order::list(&list))),
        Command::Order(OrderCommand::Add(add)) => told(add.signed.database.json, block(order::add(&add))),
        Command::Order(OrderCommand::Job(job)) => told(job.signed.database.json, block(order::for_job(&job))),
        Command::Order(OrderCommand::Receive(came)) => told(came.signed.database.json, block(order::receive(&came))),
        Command::Order(OrderCommand::Cancel(cancel)) => {
            told(cancel.signed.database.json, block(order::cancel(&cancel)))
        }
        Command::Order(OrderCommand::Tell(tell)) => told(tell.signed.database.json, block(order::tell(&tell))),
        Command::Needs(needs) => told(needs.database.json, block(order::needs(&needs))),
        Command::Sort(sort) => told(sort.database.json, block(part::sort(&sort))),
        Command::Ask(ask) => told(ask.database.json, block(part::ask(&ask))),
        Command::Part(part) => told(part.database.json, block(part::part(&part))),
        Command::Match(matching) => told(matching.database.json, block(matched::matched(&matching))),
        Command::Club(club) => told(clubs::in_json(&club), block(clubs::club(&club))),
        Command::Again(again) => told(again.database.json, block(again::again(&again))),
        Command::Kind(kind) => told(clubs::kind_in_json(&kind), block(clubs::kind(&kind))),
        Command::Job(command) => told(job::in_json(&command), block(job::job(&command))),
        Command::TakeBack(word) => told(word.signed.database.json, block(job::take_back(&word))),
        Command::StandBy(word) => told(word.signed.database.json, block(job::stand_by(&word))),
        Command::Pass(pass) => told(pass.signed.database.json, block(job::pass(&pass))),
        Command::Change(change) => told(change.signed.database.json, block(job::change(&change))),
        Command::Read(read) => told(read.signed.database.json, block(clubs::read(&read))),
        Command::Done(done) => told(done.signed.database.json, block(gates::done(&done))),
        Command::Open(open) => told(open.signed.database.json, block(gates::open(&open))),
        Command::Glue(GlueCommand::List(list)) => told(list.database.json, block(gates::glue_list(&list))),
        Command::Glue(GlueCommand::Start(start)) => told(start.signed.database.json, block(gates::glue_start(&start))),
        Command::Glue(GlueCommand::Override(pass)) => {
            told(pass.signed.database.json, block(gates::glue_override(&pass)))
        }
        Command::Fit(fit) => told(fit.signed.database.json, block(fit::fit(&fit))),
        Command::GripSize(asked) => told(asked.signed.database.json, block(grip_size::grip_size(&asked))),
        Command::Cpm(cpm) => told(cpm.signed.database.json, block(cpm::cpm(&cpm))),
        Command::Profile(profile) => told(profile.signed.database.json, block(profile::profile(&profile))),
        Command::SoftSide(soft) => told(soft.signed.database.json, block(soft_side::soft_side(&soft))),
        Command::Exchange(exchange) => told(exchange.signed.database.json, block(fit::exchange(&exchange))),
        Command::Causes(causes) => told(causes.database.json, block(causes::causes(&causes))),
        Command::Advise(advise) => told(advise.database.json, block(advise::advise(&advise))),
        Command::Record(record) => told(record::in_json(&record), block(record::record(&record))),
        Command::Learned(learned) => told(learned.signed.database.json, block(learned::learned(&learned))),
        Command::Capability(capability) => told(capability.database.json, block(learned::capability(&capability))),
        Command::Scale(scale) => match &scale.command {
            Some(command) => told(scale_health::in_json(command), block(scale_health::scale_health(command))),
            None => told(scale.json, scale::scale(&scale)),
        },
        Command::Calc(calc) => told(calc.json, calc::calc(&calc)),
        Command::Simulate(simulate) => told(simulate.json, simulate::simulate(&simulate)),
        Command::Completions(completions) => manual::completions(&completions),
        Command::Manual(manual) => manual::manual(&manual),
    }
}

fn told(json: bool, result: Result<(), Failure>) -> Result<(), Failure> {
    result.map_err(|f| f.in_json(json))
}

fn block(work: impl Future<Output = Result<(), Failure>>) -> Result<(), Failure> {
    tokio::runtime::Builder::new_multi_thread()
        .enable_all()
        .build()
        .map_err(|e| Failure::outside(CommandFault::Threads { log: e.to_string() }))?
        .block_on(work)
}

/// Prints a document, each of its facts with its sentence.
fn print_json(value: &impl serde::Serialize) -> Result<(), Failure> {
    say(&spoken_json(value)?)
}

/// Writes a document into a file, each of its facts with its sentence.
fn write_json(path: &Path, value: &impl serde::Serialize) -> Result<(), Failure> {
    std::fs::write(path, spoken_json(value)?).map_err(|e| Failure::file(path, &e))
}

fn spoken_json(value: &impl serde::Serialize) -> Result<String, Failure> {
    let spoken = || {
        let text = serde_json::to_string_pretty(value)?;
        if !words::may_have_facts(&text) {
            return Ok(text);
        }
        let mut document: serde_json::Value = serde_json::from_str(&text)?;
        words::speak(&mut document, &reader());
        serde_json::to_string_pretty(&document)
    };
    let text: String = spoken()
        .map_err(|e: serde_json::Error| Failure::outside(CommandFault::AnswerUnwritable { log: e.to_string() }))?;
    Ok(text + "\n")
}

/// Writes an answer to standard output; a full disk is told, a reader that ended early is no error.
fn say(text: &(impl AsRef<[u8]> + ?Sized)) -> Result<(), Failure> {
    crate::terminal::write(text.as_ref()).map_err(|e| Failure::outside(CommandFault::Unwritable { log: e.to_string() }))
}
