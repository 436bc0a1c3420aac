//! What is made of the definitions of the commands for those who type them: completions and manual pages.

use super::say;
use crate::config::{Arguments, Completions, Manual};
use crate::failure::Failure;
use clap::CommandFactory;

/// Prints the completions of a shell.
///
/// # Errors
/// Standard output that cannot be written.
pub fn completions(arguments: &Completions) -> Result<(), Failure> {
    let mut text = Vec::new();
    clap_complete::generate(arguments.shell, &mut Arguments::command(), "setwright", &mut text);
    say(&text)
}

/// Writes a page for the program and for each command into a folder, and prints its name.
///
/// # Errors
/// A folder that cannot be made or written.
pub fn manual(arguments: &Manual) -> Result<(), Failure> {
    let folder = &arguments.folder;
    std::fs::create_dir_all(folder).map_err(|e| Failure::file(folder, &e))?;
    clap_mangen::generate_to(Arguments::command(), folder).map_err(|e| Failure::file(folder, &e))?;
    say(&format!("{}\n", folder.display()))
}
