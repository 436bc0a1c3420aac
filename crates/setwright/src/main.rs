//! The binary `setwright`.

use std::process::ExitCode;

fn main() -> ExitCode {
    setwright::run()
}
