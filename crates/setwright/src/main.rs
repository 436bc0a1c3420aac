//! Setwright on the command line.

mod commands;
mod config;
mod failure;

use clap::Parser;
use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments = config::Arguments::parse();
    match commands::run(arguments) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => failure.report(),
    }
}
