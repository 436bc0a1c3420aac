//! Standard output. A reader that ends early, `head` for one, is no error: the rest is not written, and the program ends as if
//! it had been.

use std::fmt::Arguments;
use std::io::{ErrorKind, Write};

/// Writes a line to standard output, as `println!` does.
macro_rules! line {
    () => { $crate::terminal::write_line(format_args!("")) };
    ($($argument:tt)*) => { $crate::terminal::write_line(format_args!($($argument)*)) };
}
pub(crate) use line;

pub(crate) fn write_line(text: Arguments<'_>) {
    // What else may go wrong with standard output cannot be told on it.
    let _ = write(format!("{text}\n").as_bytes());
}

/// Writes bytes and flushes them.
pub(crate) fn write(bytes: &[u8]) -> std::io::Result<()> {
    let mut out = std::io::stdout().lock();
    let written = out.write_all(bytes).and_then(|()| out.flush());
    if written.as_ref().is_err_and(|error| error.kind() == ErrorKind::BrokenPipe) {
        std::process::exit(0);
    }
    written
}
