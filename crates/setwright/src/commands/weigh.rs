//! One part weighed: what its mass speaks for, and into the stock.

use super::{print_json, say};
use crate::config::Weigh;
use crate::failure::CommandFault;
use crate::failure::Failure;
use app::weigh_in::{ToJudge, WeighIn, WeighedIn};
use desk::weigh_in::Judged;
use std::fmt::Write;

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
        return if json { print_json(&judged) } else { say(&words(&judged)) };
    }
    let new = WeighIn {
        model: arguments.model.clone(),
        number: arguments.number.clone().unwrap_or_default(),
        code: arguments.code.clone().unwrap_or_default(),
        mass: arguments.mass.clone(),
        loft: arguments.loft.clone(),
        lie: arguments.lie.clone(),
        cpm: arguments.cpm.clone(),
        sure: if arguments.sure { arguments.mass.clone() } else { String::new() },
        by: "command line".into(),
        ..WeighIn::default()
    };
    let answer = app.weigh_in(&new).await?;
    app.close().await;
    if json && !matches!(answer, WeighedIn::Refused(_)) {
        print_json(&answer)?;
    }
    match answer {
        WeighedIn::Kept(kept) if !json => {
            let bend: String = kept.judged.bend.iter().map(|w| format!("  {w}\n")).collect();
            say(&format!("{} is kept; the next one is {}\n{bend}", kept.part.code, kept.next_code))
        }
        WeighedIn::Kept(_) => Ok(()),
        WeighedIn::Questioned(judged) => {
            let (words, next) = (judged.words.clone(), judged.next.clone());
            let failure = Failure::usage(CommandFault::Questioned { words, next });
            Err(if json { failure.answered() } else { failure })
        }
        WeighedIn::Refused(bad) => {
            let refusal = bad.refusals().into_iter().next().unwrap_or_else(|| bad.what());
            Err(Failure::usage(refusal))
        }
    }
}

fn words(judged: &Judged) -> String {
    let mut text = if judged.questioned {
        format!("{}. {}.\n", judged.words, judged.next)
    } else {
        "It weighs what it should.\n".to_owned()
    };
    for likely in &judged.likely {
        // Writing to a string does not fail.
        let _ = writeln!(text, "  {:3.0} in 100: {}", 100.0 * likely.probability, likely.words);
    }
    text
}
