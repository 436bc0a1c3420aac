//! Which part goes into which club.

use super::{print_json, say};
use crate::config::MatchArguments;
use crate::failure::CommandFault;
use crate::failure::Failure;
use app::App;
use app::matched::{DayRequest, Searching, SetMatch, SetRequest};
use desk::planner::{DayPlan, Law, Lock};
use fact::Fact;
use indicatif::{ProgressBar, ProgressStyle};
use std::fmt::Write;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use trade::kind::Role;
use trade::model::PartKind;
use trade::plan::Plan;
use trade::plan_weights::PlanWeights;
use trade::sheet::Sheet;

/// Matches one sheet, or a day's jobs, and prints the plan with its proof.
///
/// # Errors
/// A file that is no sheet; jobs or parts that do not allow it; what the store says.
pub async fn matched(arguments: &MatchArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let json = arguments.database.json;
    let done = match &arguments.set {
        Some(_) => set(&app, arguments).await.and_then(|m| if json { print_json(&m) } else { say(&set_text(&m)) }),
        None => day(&app, arguments).await.and_then(|d| if json { print_json(&d) } else { say(&day_text(&d)) }),
    };
    app.close().await;
    done
}

async fn set(app: &App, arguments: &MatchArguments) -> Result<SetMatch, Failure> {
    let Some(path) = &arguments.set else { return Err(Failure::usage(CommandFault::NoSet)) };
    let text = std::fs::read_to_string(path).map_err(|e| Failure::file(path, &e))?;
    let sheet: Sheet = document::read(text.as_bytes())
        .map_err(|e| Failure::usage(CommandFault::NotASheet { path: path.display().to_string(), what: e.told() }))?;
    let locks = arguments.keep.iter().map(|text| lock(text)).collect::<Result<Vec<_>, _>>()?;
    let request = SetRequest { sheet, locks, seconds: arguments.seconds, weights: weights(app, arguments).await? };
    let bar = progress(arguments);
    let found = app.match_set(&request, watch(&bar)).await;
    bar.finish_and_clear();
    Ok(found?)
}

/// A line that says where a search stands; none where the answer is JSON.
fn progress(arguments: &MatchArguments) -> ProgressBar {
    let bar = if arguments.database.json { ProgressBar::hidden() } else { ProgressBar::new_spinner() };
    bar.with_style(ProgressStyle::with_template("{spinner} {msg}").unwrap_or_else(|_| ProgressStyle::default_spinner()))
}

/// Shows where a search stands; Ctrl-C ends it with the best so far, a second one ends the program.
fn watch(bar: &ProgressBar) -> impl FnMut(Searching) -> bool + Send + use<> {
    let (shown, enough) = (bar.clone(), Arc::new(AtomicBool::new(false)));
    let said = Arc::clone(&enough);
    tokio::spawn(async move {
        if tokio::signal::ctrl_c().await.is_ok() {
            said.store(true, Ordering::Relaxed);
        }
        if tokio::signal::ctrl_c().await.is_ok() {
            // What shells give for a program that was interrupted.
            std::process::exit(130);
        }
    });
    move |at| {
        let (cost, bound) = (at.cost, at.bound);
        shown.set_message(format!("{:.1} s: cost {cost:.4}, proven at least {bound:.4}. Ctrl-C: enough", at.seconds));
        shown.tick();
        !enough.load(Ordering::Relaxed)
    }
}

/// The shop's weights with those changed that were given; none where none was.
async fn weights(app: &App, arguments: &MatchArguments) -> Result<Option<PlanWeights>, Failure> {
    if arguments.weight.is_empty() {
        return Ok(None);
    }
    let mut all = app.shop().await?.plan_weights;
    for text in &arguments.weight {
        let read = text.split_once('=').and_then(|(name, value)| Some((name, value.trim().parse::<f64>().ok()?)));
        let (name, value) = read.ok_or_else(|| Failure::usage(CommandFault::NotAWeight { text: text.clone() }))?;
        all = all.with(name, value).map_err(|e| Failure::usage(e.refusal()))?;
    }
    Ok(Some(all))
}

fn lock(text: &str) -> Result<Lock, Failure> {
    let read = || {
        let (slot, code) = text.split_once(':')?;
        Some(Lock { slot: slot.trim().parse().ok()?, code: code.trim().to_owned() })
    };
    read().ok_or_else(|| Failure::usage(CommandFault::NotALock { text: text.to_owned() }))
}

async fn day(app: &App, arguments: &MatchArguments) -> Result<DayPlan, Failure> {
    let weights = weights(app, arguments).await?;
    let bar = progress(arguments);
    let request = DayRequest { jobs: Vec::new(), seconds: arguments.seconds, seed: arguments.seed, weights };
    let planned = app.plan_day(&request, watch(&bar)).await;
    bar.finish_and_clear();
    Ok(planned?)
}

fn set_text(found: &SetMatch) -> String {
    let mut text = String::new();
    plan_text(&mut text, &found.plan);
    // Writing to a string does not fail.
    let _ = writeln!(text, "{}", proof(found.plan.cost, found.plan.bound));
    if found.options.len() > 1 {
        let _ = writeln!(text, "To choose from:");
        for option in &found.options {
            let law = match option.law {
                Law::SwingWeight => "",
                Law::Inertia => ", equal inertia",
            };
            let cpm = option.worst_cpm.map_or_else(String::new, |cpm| format!(", shafts at most {cpm:.1} cpm off"));
            let _ = writeln!(
                text,
                "  {:.1} g in the tips, worst {:.2} points off{cpm}{law}",
                option.tip_g, option.worst_points
            );
        }
    }
    text
}

fn day_text(day: &DayPlan) -> String {
    let mut text = String::new();
    for job in &day.jobs {
        let _ = writeln!(text, "Job {}, {} (counts {:.2})", job.number, job.player, job.priority);
        plan_text(&mut text, &job.plan);
    }
    let _ = writeln!(text, "{}", proof(day.cost, day.bound));
    text
}

fn plan_text(text: &mut String, plan: &Plan) {
    for club in plan.clubs.iter().flatten() {
        let code = |kind| club.part(kind).map_or("none", |p| p.code.as_str());
        let _ = writeln!(
            text,
            "  {:>3}  head {}  shaft {}  grip {}{}  tip {:.1} g{}  {}",
            club.head_number,
            code(PartKind::Head),
            code(PartKind::Shaft),
            code(PartKind::Grip),
            club.part(PartKind::Adapter).map_or_else(String::new, |p| format!("  adapter {}", p.code)),
            club.mass_g(Role::TipWeight),
            club.frequency.and_then(|f| f.off_cpm).map_or_else(String::new, |cpm| format!("  {cpm:+.1} cpm")),
            bench::chance::chance_words(club.chance)
        );
    }
    for line in &plan.frequency {
        let _ = writeln!(text, "  {}", line.words);
    }
    for missing in &plan.missing {
        let _ = writeln!(text, "  {:>3}  {}", missing.number, missing.words);
        for other in &missing.instead {
            let _ = writeln!(text, "       or {}", other.words);
        }
    }
}

fn proof(cost: f64, bound: f64) -> String {
    if cost - bound <= 1e-9 {
        format!("Cost {cost:.4}, proven: no choice of these parts costs less.")
    } else {
        format!(
            "Cost {cost:.4}, proven at least {bound:.4}: at most {:.1} % better is possible.",
            100.0 * (cost - bound) / cost
        )
    }
}
