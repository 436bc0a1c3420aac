//! Setwright on the command line: the whole of the program, so that it is built beside the crates that it stands on. The binary
//! only calls it.

mod commands;
mod config;
mod failure;
mod reader;
mod terminal;

use clap::Parser;
use std::process::ExitCode;

/// Does what the arguments of the process ask for; the code says how it went (see `failure`).
#[must_use]
pub fn run() -> ExitCode {
    let arguments = match config::Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(refused) => return told(&refused),
    };
    match commands::run(arguments) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => failure.report(),
    }
}

/// Help and version as asked for; arguments that cannot be, in words, and as a problem document where JSON is wanted.
fn told(refused: &clap::Error) -> ExitCode {
    if refused.use_stderr() && std::env::args_os().any(|a| a == "--json") {
        let words = refused.render().to_string();
        let text = words.trim().trim_start_matches("error: ").to_owned();
        return failure::Failure::usage(failure::CommandFault::Arguments { text }).in_json(true).report();
    }
    let _ = refused.print();
    ExitCode::from(if refused.use_stderr() { 2 } else { 0 })
}
