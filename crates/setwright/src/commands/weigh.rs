//! One part weighed: identified by its mass, and put into the stock.

use super::{print_json, reader, say};
use crate::config::Weigh;
use crate::failure::CommandFault;
use crate::failure::Failure;
use app::weigh_in::{ToJudge, WeighIn, WeighedIn};
use desk::weigh_in::Judged;
use fact::Fact;
use words::{Words, text};

/// Judges a mass, or weighs the part in.
///
/// # Errors
/// No such model or number; a figure that cannot be; a mass in question that nobody stands by; what the store says.
pub async fn weigh(arguments: &Weigh) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let json = arguments.database.json;
    if !arguments.keep {
        let asked = ToJudge {
            model: arguments.model.clone(),
            number: arguments.number.clone(),
            mass: arguments.mass.clone(),
            ..ToJudge::default()
        };
        let judged = app.judge_part(&asked).await?;
        app.close().await;
        return if json { print_json(&judged) } else { say(&judged_text(&reader(), &judged)) };
    }
    let mut new = WeighIn {
        model: arguments.model.clone(),
        number: arguments.number.clone().unwrap_or_default(),
        code: arguments.code.clone().unwrap_or_default(),
        mass: arguments.mass.clone(),
        sure: if arguments.sure { arguments.mass.clone() } else { String::new() },
        by: "command line".into(),
        ..WeighIn::default()
    };
    for (name, typed) in &arguments.figures.0 {
        new.set_typed(name, typed.clone());
    }
    let answer = app.weigh_in(&new).await?;
    app.close().await;
    if json && !matches!(answer, WeighedIn::Refused(_)) {
        print_json(&answer)?;
    }
    match answer {
        WeighedIn::Kept(kept) if !json => {
            let w = reader();
            let bend: String = kept.judged.bend.iter().map(|doubt| format!("  {}\n", w.tell(doubt))).collect();
            let (code, next) = (kept.part.code.as_str(), kept.next_code.as_str());
            say(&format!("{}\n{bend}", text!(w, "weigh-in-kept", code = code, next = next)))
        }
        WeighedIn::Kept(_) => Ok(()),
        WeighedIn::Questioned(judged) => {
            let (what, next) = (judged.finding.told(), judged.next.as_ref().map(Fact::told));
            let failure = Failure::usage(CommandFault::Questioned { what, next });
            Err(if json { failure.answered() } else { failure })
        }
        WeighedIn::Refused(bad) => {
            let refusal = bad.refusals().into_iter().next().unwrap_or_else(|| bad.what());
            Err(Failure::usage(refusal))
        }
    }
}

fn judged_text(w: &Words, judged: &Judged) -> String {
    let mut told = w.sentence(&judged.finding);
    if let Some(next) = &judged.next {
        told.push(' ');
        told.push_str(&w.sentence(next));
    }
    told.push('\n');
    for likely in &judged.likely {
        let line =
            text!(w, "weigh-in-odds", hundredths = format!("{:3.0}", 100.0 * likely.probability), likely = likely.fact);
        told.push_str(&format!("  {line}\n"));
    }
    told
}
