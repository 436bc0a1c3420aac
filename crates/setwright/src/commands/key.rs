//! Keys: who may come in from outside this machine.

use super::{print_json, reader, say};
use crate::config::{KeyCommand, KeyList, KeyProgram, KeyTablet, KeyWithdraw};
use crate::failure::{CommandFault, Failure};
use app::App;
use app::access::{GiveProgramKey, LetTabletIn, WithdrawKey};
use jiff::Timestamp;
use trade::access::{AccessKey, KeyRole};
use words::{Words, text};

/// Does what is asked with keys.
///
/// # Errors
/// No such key, a name or time that cannot be; what the store says.
pub async fn key(command: &KeyCommand) -> Result<(), Failure> {
    match command {
        KeyCommand::List(KeyList { database }) => {
            let app = database.open().await?;
            let keys = app.access_keys().await?;
            tell_keys(app, &keys, database.json).await
        }
        KeyCommand::Tablet(tablet) => let_tablet_in(tablet).await,
        KeyCommand::Program(program) => give_program(program).await,
        KeyCommand::Withdraw(KeyWithdraw { number, signed }) => {
            let app = signed.database.open().await?;
            let keys = app.withdraw_key(*number, &WithdrawKey { by: signed.by.clone() }).await?;
            tell_keys(app, &keys, signed.database.json).await
        }
    }
}

fn role_of(key: &str) -> Result<KeyRole, Failure> {
    // The command line lets no other word through.
    KeyRole::from_key(key).ok_or_else(|| {
        Failure::usage(CommandFault::NoneOf {
            text: key.to_owned(),
            known: KeyRole::ALL.iter().map(|role| role.key().to_owned()).collect(),
        })
    })
}

async fn let_tablet_in(tablet: &KeyTablet) -> Result<(), Failure> {
    let app = tablet.signed.database.open().await?;
    let by = tablet.signed.by.clone();
    let shown = app.let_tablet_in(&LetTabletIn { name: tablet.name.clone(), role: role_of(&tablet.role)?, by }).await?;
    app.close().await;
    if tablet.signed.database.json {
        return print_json(&shown);
    }
    let w = reader();
    let time = w.clock(shown.ends_at);
    say(&(text!(w, "key-line-code", code = shown.code, name = shown.name, time = time) + "\n"))
}

async fn give_program(program: &KeyProgram) -> Result<(), Failure> {
    let app = program.signed.database.open().await?;
    let (name, by) = (program.name.clone(), program.signed.by.clone());
    let wanted = GiveProgramKey { name, role: role_of(&program.role)?, days: program.days, by };
    let given = app.give_program_key(&wanted).await?;
    app.close().await;
    if program.signed.database.json {
        return print_json(&given);
    }
    say(&(text!(reader(), "key-line-secret", secret = given.secret, name = given.key.name) + "\n"))
}

async fn tell_keys(app: App, keys: &[AccessKey], json: bool) -> Result<(), Failure> {
    let now = app.now();
    app.close().await;
    if json {
        return print_json(&keys);
    }
    let w = reader();
    let text: String = keys.iter().map(|key| line(&w, key, now) + "\n").collect();
    say(&if text.is_empty() { w.text("keys-none") + "\n" } else { text })
}

fn line(w: &Words, key: &AccessKey, now: Timestamp) -> String {
    let until = match key.end(now) {
        Some(end) => w.tell(&end),
        None => text!(w, "keys-given", given_at = key.given_at, by = key.given_by.clone()),
    };
    text!(w, "key-line", number = key.number, name = key.name.clone(), held = key.held(), until = until)
}
