//! Usual models: list them, keep some.

use super::clubs::member;
use super::{print_json, reader, say};
use crate::config::UsualArguments;
use crate::failure::Failure;
use app::usual::{KeepUsual, UsualView};
use trade::model::PartKind;
use words::text;

/// Lists the usual models, or keeps those that are named.
///
/// # Errors
/// A kind or a code that does not exist; what the store says.
pub async fn usual(arguments: &UsualArguments) -> Result<(), Failure> {
    let w = reader();
    if arguments.codes.is_empty() {
        let kind = arguments.kind.as_deref().map(kind_of).transpose()?;
        let app = arguments.database.open_or_make().await?;
        let usual = app.usual_models(kind, |name| w.tell(name)).await?;
        app.close().await;
        if arguments.database.json {
            return print_json(&usual);
        }
        let width = usual.iter().map(|view| view.code.len()).max().unwrap_or_default();
        let line = |view: &UsualView| {
            let there = if view.kept { text!(w, "usual-line-there") } else { String::new() };
            format!("{:width$}  {}{there}\n", view.code, w.told(&view.name))
        };
        return say(&usual.iter().map(line).collect::<String>());
    }
    let app = arguments.database.open_or_make().await?;
    let done = app.keep_usual(&KeepUsual { codes: arguments.codes.clone() }, |name| w.tell(name)).await;
    app.close().await;
    let done = done?;
    if arguments.database.json {
        return print_json(&done);
    }
    say(&format!("{}\n", text!(w, "usual-done", kept = done.kept.len(), there = done.were_there.len())))
}

fn kind_of(text: &str) -> Result<PartKind, Failure> {
    let known: Vec<&str> = PartKind::ALL.iter().map(|kind| kind.key()).collect();
    member(text, PartKind::from_key, &known)
}
