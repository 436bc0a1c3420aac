//! A recall, and the marks on clubs.

use super::{print_json, reader, say};
use crate::config::{MarksArguments, RecallArguments};
use crate::failure::Failure;
use app::recall::{ClearMark, MarkClubs, MarkView};
use desk::recall::{RecallList, RecalledClub};
use std::fmt::Write;
use trade::recall::Recall;
use words::{Words, text};

/// Prints the clubs that something reached, writes their addresses, marks them.
///
/// # Errors
/// Nothing or several things named; nothing of that name; a file that cannot be written; what the store says.
pub async fn recall(arguments: &RecallArguments) -> Result<(), Failure> {
    let RecallArguments { lot, part, model, scale, builder, from, to, .. } = arguments;
    let recall = Recall {
        lot: lot.clone(),
        part: part.clone(),
        model: model.clone(),
        scale: scale.clone(),
        builder: builder.clone(),
        from: *from,
        to: *to,
    };
    let app = arguments.signed.database.open().await?;
    let marked = match &arguments.mark {
        Some(word) => {
            let (clubs, by) = (arguments.clubs.clone(), arguments.signed.by.clone());
            Some(app.mark_clubs(&MarkClubs { recall: recall.clone(), word: word.clone(), clubs, by }).await?)
        }
        None => None,
    };
    let list = app.recall(&recall).await?;
    app.close().await;
    if let Some(file) = &arguments.addresses {
        std::fs::write(file, list.addresses_csv()).map_err(|e| Failure::file(file, &e))?;
    }
    if arguments.signed.database.json {
        return print_json(&list);
    }
    let w = reader();
    let mut text = lines(&w, &list);
    if let Some(marked) = marked {
        text += &(text!(w, "recall-line-marked", n = marked.len()) + "\n");
    }
    say(&text)
}

fn lines(w: &Words, list: &RecallList) -> String {
    if list.clubs.is_empty() {
        return text!(w, "recall-nobody", of = list.of) + "\n";
    }
    let mut text = text!(w, "recall-title", of = list.of) + "\n";
    let place = |club: &RecalledClub| match (club.job, &club.state) {
        (Some(job), Some(state)) => text!(w, "recall-in-job", job = job) + " " + &w.tell(state),
        _ => w.text("recall-never-in-job"),
    };
    for club in &list.clubs {
        let line = text!(w, "recall-line", key = club.key, club = club.name, player = club.player, place = place(club));
        let why: Vec<String> = club.reaches.iter().map(|reach| w.tell(reach)).collect();
        // Writing to a string does not fail.
        let _ = writeln!(text, "  {line}\n    {}", w.list(&why));
        for mark in &club.marks {
            let _ = writeln!(text, "    {}: {}", w.text("recall-column-mark"), mark.word);
        }
    }
    for player in &list.players {
        let reach = [&player.phone, &player.email, &player.address].map(|part| part.replace('\n', ", "));
        let known: Vec<String> = reach.into_iter().filter(|part| !part.is_empty()).collect();
        let _ = writeln!(text, "{}: {}", player.player, w.list(&known));
    }
    text
}

/// Prints the marks that stand, or clears one.
///
/// # Errors
/// No such mark; nobody named; a word that says nothing; what the store says.
pub async fn marks(arguments: &MarksArguments) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let marks = match (&arguments.clear, &arguments.found) {
        (Some(id), Some(found)) => {
            let request = ClearMark { word: found.clone(), by: arguments.signed.by.clone() };
            vec![app.clear_mark(id, &request).await?]
        }
        _ => app.marks(arguments.all).await?,
    };
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&marks);
    }
    let w = reader();
    if marks.is_empty() {
        return say(&(w.text("mark-none") + "\n"));
    }
    say(&marks.iter().map(|view| mark_lines(&w, view)).collect::<String>())
}

fn mark_lines(w: &Words, view: &MarkView) -> String {
    let mark = &view.mark;
    let head = text!(w, "mark-line", id = mark.id.as_str(), club = view.name, player = view.player, word = mark.word);
    let from = text!(w, "mark-from", of = mark.of, by = mark.by, at_at = mark.at);
    let mut text = format!("{head}\n  {from}\n");
    if let Some(cleared) = &mark.cleared {
        let line = text!(w, "mark-cleared", found = cleared.word, by = cleared.by, at_at = cleared.at);
        let _ = writeln!(text, "  {line}");
    }
    text
}
