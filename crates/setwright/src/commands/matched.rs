//! Which part goes into which club.

use super::{print_json, reader, say};
use crate::config::MatchArguments;
use crate::failure::CommandFault;
use crate::failure::Failure;
use app::App;
use app::matched::{DayRequest, SetMatch, SetRequest};
use app::searching::Searching;
use bench::chance::Chance;
use desk::planner::{DayPlan, DueDates, HowItComesOut, Law, Lock, WhichPlan};
use fact::Fact;
use indicatif::{ProgressBar, ProgressStyle};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use trade::kind::Role;
use trade::model::{Library, PartKind};
use trade::plan::Plan;
use trade::plan_weights::PlanWeights;
use trade::sheet::Sheet;
use words::{Words, text};

/// Matches one sheet, or a day's jobs, and prints the plan with its proof.
///
/// # Errors
/// A file that is no sheet; jobs or parts that do not allow it; what the store says.
pub async fn matched(arguments: &MatchArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let json = arguments.database.json;
    let library: Library = app.models(None).await?.into_iter().collect();
    let done = match &arguments.set {
        Some(_) => set(&app, arguments)
            .await
            .and_then(|m| if json { print_json(&m) } else { say(&set_text(&reader(), &m, &library)) }),
        None => day(&app, arguments)
            .await
            .and_then(|d| if json { print_json(&d) } else { say(&day_text(&reader(), &d, &library)) }),
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
    let (w, shown, enough) = (reader(), bar.clone(), Arc::new(AtomicBool::new(false)));
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
        shown.set_message(text!(w, "command-match-watch", seconds = at.seconds, cost = at.cost, bound = at.bound));
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
    let which = if arguments.in_turn { WhichPlan::InTurn } else { WhichPlan::Together };
    let request = DayRequest { jobs: Vec::new(), seconds: arguments.seconds, seed: arguments.seed, weights, which };
    let planned = app.plan_day(&request, watch(&bar)).await;
    bar.finish_and_clear();
    Ok(planned?)
}

fn set_text(w: &Words, found: &SetMatch, library: &Library) -> String {
    let mut text = String::new();
    plan_text(w, &mut text, &found.plan, library);
    line(&mut text, &proof(w, found.plan.cost, found.plan.bound));
    if found.options.len() > 1 {
        line(&mut text, &w.text("command-match-options"));
        for option in &found.options {
            let law = match option.law {
                Law::SwingWeight => "swing-weight",
                Law::Inertia => "inertia",
            };
            let figures = [
                ("tip_g", words::figure(&option.tip_g)),
                ("worst_points", words::figure(&option.worst_points)),
                ("worst_cpm", words::figure(&option.worst_cpm)),
            ];
            line(&mut text, &format!("  {}", w.text_with(&format!("command-match-option-{law}"), &figures)));
        }
    }
    text
}

fn day_text(w: &Words, day: &DayPlan, library: &Library) -> String {
    let mut text = String::new();
    for job in &day.jobs {
        line(&mut text, &text!(w, "command-match-job", job = job.number, player = job.player, priority = job.priority));
        plan_text(w, &mut text, &job.plan, library);
    }
    line(&mut text, &proof(w, day.cost, day.bound));
    if let Some(worth) = &day.worth {
        line(&mut text, &w.sentence(&worth.fact));
        let out = |id: &str, out: &HowItComesOut| {
            let figures = [
                ("unbuilt", words::figure(&out.unbuilt)),
                ("inside", words::figure(&out.inside)),
                ("tip_g", words::figure(&out.tip_g)),
            ];
            format!("  {}", w.text_with(id, &figures))
        };
        line(&mut text, &out("command-match-together", &worth.together));
        line(&mut text, &out("command-match-in-turn", &worth.in_turn));
    }
    due_text(w, &mut text, &day.due);
    text
}

fn due_text(w: &Words, text: &mut String, due: &DueDates) {
    line(text, &w.text("command-match-due"));
    for job in &due.jobs {
        let told = text!(w, "command-match-due-job", job = job.number, due_on = job.due_on, state = job.fact.clone());
        line(text, &format!("  {told}"));
        for wait in &job.waits {
            line(text, &format!("    {}", w.sentence(&wait.fact)));
        }
    }
    if let Some(way) = &due.in_the_way {
        let told = text!(w, "plan-due-in-the-way", job = way.job, builds = way.builds.clone());
        line(text, &format!("  {told}"));
    }
    for scarce in &due.scarce {
        line(text, &format!("  {}", w.sentence(&scarce.fact)));
        for goes in &scarce.goes {
            line(text, &format!("    {}", w.sentence(goes)));
        }
    }
    for order in &due.to_order {
        line(text, &format!("  {}", w.sentence(&order.fact)));
    }
}

fn line(text: &mut String, words: &str) {
    text.push_str(words);
    text.push('\n');
}

fn plan_text(w: &Words, text: &mut String, plan: &Plan, library: &Library) {
    for club in plan.clubs.iter().flatten() {
        let code = |kind| club.part(kind).map(|p| p.code.clone());
        let told = text!(
            w,
            "command-match-club",
            head = code(PartKind::Head),
            shaft = code(PartKind::Shaft),
            grip = code(PartKind::Grip),
            adapter = code(PartKind::Adapter),
            screw = club.screw(library).map(|screw| screw.label.clone()),
            tip_g = club.mass_g(Role::TipWeight),
            off_cpm = club.frequency.and_then(|f| f.off_cpm),
            chance = Chance::of(club.chance),
        );
        line(text, &format!("  {:>3}  {told}", w.club_number(&club.head_number)));
    }
    for frequency in &plan.frequency {
        line(text, &format!("  {}", w.sentence(&frequency.fact)));
    }
    for missing in &plan.missing {
        line(text, &format!("  {:>3}  {}", w.club_number(&missing.number), w.sentence(&missing.fact)));
        for other in &missing.instead {
            line(text, &format!("       {}", text!(w, "command-match-or", other = other.fact)));
        }
    }
}

fn proof(w: &Words, cost: f64, bound: f64) -> String {
    if cost - bound <= 1e-9 {
        text!(w, "command-match-proven", cost = cost)
    } else {
        text!(w, "command-match-bound", cost = cost, bound = bound, gap_share = (cost - bound) / cost)
    }
}
