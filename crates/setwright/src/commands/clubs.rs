//! Clubs that live on, jobs on them, kinds of job, and readings at the bench.

use super::print::table;
use super::work::bytes_of;
use super::{print_json, reader, say};
use crate::config::{
    ClubAdd, ClubCommand, ClubExtra, ClubFigures, ClubJob, ClubList, ClubMatch, ClubRead, ClubShow, KindAdd,
    KindCommand, KindList, KindRemove, ReadArguments,
};
use crate::failure::{CommandFault, Failure};
use crate::terminal::line;
use app::AppError;
use app::bench::{Entry, NewReadings};
use app::club::{ClubView, MeasureClub, NewClub};
use app::club_job::NewClubJob;
use app::match_job::NewMatch;
use app::plan::AddExtra;
use desk::club_work::AskedOfClub;
use desk::match_set::MatchModels;
use jiff::civil::Date;
use quantity::{LengthUnit, MassUnit, decimal};
use std::path::Path;
use trade::action::Action;
use trade::arrival::Arrival;
use trade::grip::GripSize;
use trade::job_kind::JobKind;
use trade::kind::{ClubKind, Hand};
use trade::model::as_it_came::HeadMaterial;
use trade::pendulum::Pendulum;
use trade::reading::{Unit, What};
use trade::wrap::Wraps;
use words::text;

/// What is asked of clubs.
///
/// # Errors
/// What the use case says.
pub async fn club(command: &ClubCommand) -> Result<(), Failure> {
    match command {
        ClubCommand::List(list) => clubs(list).await,
        ClubCommand::Show(show) => one(show).await,
        ClubCommand::Add(add) => note(add).await,
        ClubCommand::Read(read) => measured(read).await,
        ClubCommand::Match(asked) => matched(asked).await,
        ClubCommand::Extra(extra) => put_on(extra).await,
        ClubCommand::Job(job) => make(job).await,
    }
}

/// Whether a command answers in JSON.
pub const fn in_json(command: &ClubCommand) -> bool {
    match command {
        ClubCommand::List(list) => list.database.json,
        ClubCommand::Show(show) => show.database.json,
        ClubCommand::Add(add) => add.database.json,
        ClubCommand::Read(read) => read.database.json,
        ClubCommand::Match(asked) => asked.signed.database.json,
        ClubCommand::Extra(extra) => extra.signed.database.json,
        ClubCommand::Job(job) => job.signed.database.json,
    }
}

async fn clubs(arguments: &ClubList) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let clubs = app.clubs(&arguments.search, None, 500).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&clubs);
    }
    let w = reader();
    if clubs.is_empty() {
        return say(&(w.text("club-life-none") + "\n"));
    }
    let rows: Vec<Vec<String>> = clubs
        .iter()
        .map(|line| {
            let club = &line.club;
            let swing_weight = club.figure(What::SwingWeight).map(|f| w.swing_weight(f.value)).unwrap_or_default();
            let job = line.job.map(|job| job.to_string()).unwrap_or_default();
            let name = if club.label.is_empty() { w.tell(&club.name()) } else { club.label.clone() };
            vec![club.code.0.clone(), name, club.player.clone(), swing_weight, job]
        })
        .collect();
    let columns = ["code", "club", "player", "swing-weight", "job"];
    table(&columns.map(|column| w.text(&format!("club-life-column-{column}"))), &rows);
    Ok(())
}

async fn put_on(arguments: &ClubExtra) -> Result<(), Failure> {
    let known: Vec<&str> = Action::ALL.iter().map(|action| action.key()).collect();
    let action = member(&arguments.action, Action::from_key, &known)?;
    let mass = quantity::parse_mass(&arguments.mass, MassUnit::Gram).map_err(AppError::from)?;
    let add = AddExtra { action, mass_g: mass.g(), by: arguments.signed.by.clone(), version: None };
    let app = arguments.signed.database.open().await?;
    let plan = app.add_extra(arguments.job, arguments.slot, &add).await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&plan);
    }
    let w = reader();
    let extras: Vec<String> =
        plan.extras.iter().map(|extra| format!("{} {}", w.tell(&extra.action), w.mass(extra.mass_g))).collect();
    say(&(extras.join(", ") + "\n"))
}

/// The day that something is due, today where none is given.
fn due(text: Option<&str>) -> Result<Date, Failure> {
    match text {
        Some(text) => text.parse().map_err(|_| Failure::usage(CommandFault::NotADate { text: text.to_owned() })),
        None => Ok(reader().day_of(jiff::Timestamp::now())),
    }
}

async fn matched(arguments: &ClubMatch) -> Result<(), Failure> {
    if let (Some(head), Some(shaft), Some(grip)) = (&arguments.head, &arguments.shaft, &arguments.grip) {
        let models = MatchModels {
            head: head.clone(),
            shaft: shaft.clone(),
            grip: grip.clone(),
            ferrule: arguments.ferrule.clone(),
            by_inertia: arguments.by_inertia,
        };
        let new = NewMatch {
            clubs: arguments.club.clone(),
            number: arguments.number.clone(),
            models,
            due: due(arguments.due.as_deref())?,
            by: arguments.signed.by.clone(),
        };
        let app = arguments.signed.database.open().await?;
        let job = app.new_match_job(new).await?;
        app.close().await;
        if arguments.signed.database.json {
            return print_json(&job);
        }
        return say(&(text!(reader(), "command-club-job", job = job.number, n = job.clubs.len()) + "\n"));
    }
    let app = arguments.signed.database.open().await?;
    let found = app.match_to_set(&arguments.club, &arguments.number).await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&found);
    }
    let w = reader();
    let figure = |what: What, value: f64| match what.unit() {
        Unit::Points => w.swing_weight(value),
        Unit::Millimetre => w.length(value),
        Unit::Gram => w.mass(value),
        Unit::Degree => w.angle(value),
        unit => format!("{} {}", decimal(value, 1), unit.sign()),
    };
    // How far apart two figures are: points have no letter then.
    let size = |what: What, value: f64| match what.unit() {
        Unit::Points => decimal(value, 1),
        _ => figure(what, value),
    };
    let rows: Vec<Vec<String>> = found
        .targets
        .iter()
        .map(|target| {
            let off = target.outlier.as_ref().map(|o| format!("{} {}", o.club, figure(target.what, o.value)));
            let band = format!("{} ± {}", figure(target.what, target.value), size(target.what, target.band));
            let step = size(target.what, target.a_number);
            let scatter = format!("± {}", size(target.what, target.scatter));
            vec![w.tell(&target.what), band, step, scatter, target.clubs.to_string(), off.unwrap_or_default()]
        })
        .collect();
    let columns = ["figure", "target", "a-number", "scatter", "clubs", "off"];
    table(&columns.map(|column| w.text(&format!("match-set-column-{column}"))), &rows);
    Ok(())
}

async fn one(arguments: &ClubShow) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let view = app.club(&arguments.code).await?;
    app.close().await;
    answer(&view, arguments.database.json)
}

fn answer(view: &ClubView, json: bool) -> Result<(), Failure> {
    if json {
        return print_json(view);
    }
    let w = reader();
    let club = &view.club;
    let mut lines = format!(
        "{}  {}\n",
        club.code,
        text!(w, "club-life-of", club = w.tell(&club.name()), player = club.player.as_str())
    );
    for event in &view.life {
        let changes: Vec<String> = event.changes.iter().map(|change| w.told(change)).collect();
        let kind = event.job_kind.as_deref().unwrap_or_default();
        lines += &format!("{}  {} {} {}\n", w.date(w.day_of(event.at)), w.tell(&event.deed), kind, changes.join(", "));
    }
    for figure in &club.figures {
        let value = serde_json::json!({ "value": figure.value });
        lines += &format!("{}: {} {}\n", w.tell(&figure.what), value["value"], figure.unit.sign());
    }
    say(&lines)
}

/// The figures as they were typed.
fn arrival(figures: &ClubFigures, pendulum: &Pendulum) -> Result<Arrival, Failure> {
    let failed = |e: quantity::NotationError| Failure::from(AppError::from(e));
    let mass = |text: &Option<String>| {
        text.as_deref()
            .map(|t| quantity::parse_mass(t, MassUnit::Gram).map(quantity::Mass::g))
            .transpose()
            .map_err(failed)
    };
    let angle = |text: &Option<String>| {
        text.as_deref().map(|t| quantity::parse_angle(t).map(quantity::Angle::deg)).transpose().map_err(failed)
    };
    let timed = figures.swing_time.as_deref().map(|typed| pendulum.timed(typed)).transpose();
    let timed = timed.map_err(AppError::from)?;
    Ok(Arrival {
        swing_period_s: timed.map(|timed| timed.period_s),
        pivot_mm: timed.and_then(|timed| timed.pivot_mm),
        swing_inertia_kg_cm2: figures.swing_inertia,
        swing_weight_points: points(figures.swing_weight.as_deref())?,
        total_mass_g: mass(&figures.total_mass)?,
        length_mm: length(figures.length.as_deref())?,
        cpm: figures
            .cpm
            .as_deref()
            .map(|t| quantity::parse_frequency(t).map(quantity::Frequency::cpm))
            .transpose()
            .map_err(failed)?,
        loft_deg: angle(&figures.loft)?,
        lie_deg: angle(&figures.lie)?,
        grip_mass_g: mass(&figures.grip_mass)?,
        ..Arrival::default()
    })
}

fn points(text: Option<&str>) -> Result<Option<f64>, Failure> {
    let read = text.map(|t| quantity::parse_swing_weight(t).map(quantity::SwingMoment::points)).transpose();
    read.map_err(|e| AppError::from(e).into())
}

fn length(text: Option<&str>) -> Result<Option<f64>, Failure> {
    let read = text.map(|t| quantity::parse_length(t, LengthUnit::Inch).map(quantity::Length::mm)).transpose();
    read.map_err(|e| AppError::from(e).into())
}

/// A member of a closed list by its key.
/// One of a closed list by its key.
pub(super) fn member<T>(text: &str, from_key: impl Fn(&str) -> Option<T>, known: &[&str]) -> Result<T, Failure> {
    let known = known.iter().map(|key| (*key).to_owned()).collect();
    from_key(text).ok_or_else(|| Failure::usage(CommandFault::NoneOf { text: text.to_owned(), known }))
}

async fn note(arguments: &ClubAdd) -> Result<(), Failure> {
    let keys = |keys: Vec<&'static str>| keys;
    let app = arguments.database.open().await?;
    let new = NewClub {
        label: arguments.label.clone(),
        player: arguments.player.clone(),
        owner: None,
        hand: member(&arguments.hand, Hand::from_key, &keys(Hand::ALL.iter().map(|h| h.key()).collect()))?,
        club_kind: member(
            &arguments.club_kind,
            ClubKind::from_key,
            &keys(ClubKind::ALL.iter().map(|k| k.key()).collect()),
        )?,
        number: arguments.number.clone(),
        head_material: member(
            &arguments.head_material,
            HeadMaterial::from_key,
            &keys(HeadMaterial::ALL.iter().map(|m| m.key()).collect()),
        )?,
        arrival: arrival(&arguments.figures, &app.shop().await?.pendulum)?,
        note: arguments.figures.note.clone(),
        sure: arguments.figures.sure,
        by: arguments.figures.by.clone(),
    };
    let view = app.add_club(&new).await?;
    app.close().await;
    answer(&view, arguments.database.json)
}

async fn measured(arguments: &ClubRead) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let version = app.club(&arguments.code).await?.club.version;
    let (note, by) = (arguments.figures.note.clone(), arguments.figures.by.clone());
    let figures = arrival(&arguments.figures, &app.shop().await?.pendulum)?;
    let read = MeasureClub { arrival: figures, note, sure: arguments.figures.sure, by, version };
    let view = app.measure_club(&arguments.code, &read).await?;
    app.close().await;
    answer(&view, arguments.database.json)
}

fn document_of<T: serde::de::DeserializeOwned>(path: &Path) -> Result<T, Failure> {
    serde_json::from_slice(&bytes_of(path)?).map_err(|e| {
        Failure::usage(CommandFault::NotADocument { path: path.display().to_string(), log: e.to_string() })
    })
}

async fn make(arguments: &ClubJob) -> Result<(), Failure> {
    let new = match &arguments.file {
        Some(file) => document_of::<NewClubJob>(file)?,
        None => of_options(arguments)?,
    };
    let app = arguments.signed.database.open().await?;
    let job = app.new_club_job(&new).await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&job);
    }
    say(&(text!(reader(), "command-club-job", job = job.number, n = job.clubs.len()) + "\n"))
}

fn of_options(arguments: &ClubJob) -> Result<NewClubJob, Failure> {
    let failed = |e: quantity::NotationError| Failure::from(AppError::from(e));
    let due = due(arguments.due.as_deref())?;
    let angle = |text: &Option<String>| {
        text.as_deref().map(|t| quantity::parse_angle(t).map(quantity::Angle::deg)).transpose().map_err(failed)
    };
    let extension = arguments.extension_mass.as_deref();
    let asked = AskedOfClub {
        club: String::new(),
        kind: arguments.kind.clone(),
        grip_model: arguments.grip_model.clone(),
        wraps: arguments.wraps.map(|full| Wraps { base: 1, full, lower_hand: 0 }),
        grip_size: match length(arguments.grip_size.as_deref())? {
            Some(upper_mm) => Some(GripSize { upper_mm, lower_mm: length(arguments.grip_size_lower.as_deref())? }),
            None => None,
        },
        grip_graphics: None,
        shaft_model: arguments.shaft_model.clone(),
        ferrule_model: arguments.ferrule_model.clone(),
        adhesive: arguments.adhesive.clone(),
        length_mm: length(arguments.length.as_deref())?,
        extension_mass_g: extension
            .map(|t| quantity::parse_mass(t, MassUnit::Gram).map(quantity::Mass::g))
            .transpose()
            .map_err(failed)?,
        swing_weight_points: points(arguments.swing_weight.as_deref())?,
        inertia_kg_cm2: arguments.swing_inertia,
        loft_deg: angle(&arguments.loft)?,
        lie_deg: angle(&arguments.lie)?,
    };
    let of = |club: &String| AskedOfClub { club: club.clone(), ..asked.clone() };
    let clubs = arguments.club.iter().map(of).collect();
    Ok(NewClubJob {
        due,
        player: String::new(),
        note: String::new(),
        clubs,
        new_clubs: Vec::new(),
        hand: None,
        customer: None,
        neighbour_reason: String::new(),
        by: arguments.signed.by.clone(),
    })
}

/// What is asked of kinds of job.
///
/// # Errors
/// What the use case says.
pub async fn kind(command: &KindCommand) -> Result<(), Failure> {
    match command {
        KindCommand::List(list) => kinds(list).await,
        KindCommand::Add(add) => keep_kind(add).await,
        KindCommand::Remove(remove) => remove_kind(remove).await,
    }
}

/// Whether a command answers in JSON.
pub const fn kind_in_json(command: &KindCommand) -> bool {
    match command {
        KindCommand::List(list) => list.database.json,
        KindCommand::Add(add) => add.database.json,
        KindCommand::Remove(remove) => remove.database.json,
    }
}

async fn kinds(arguments: &KindList) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let w = reader();
    let kinds = app.job_kinds(&w).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&kinds);
    }
    let rows: Vec<Vec<String>> = kinds
        .iter()
        .map(|kind| {
            let steps: Vec<&str> = kind.kind.steps.iter().map(|step| step.label.as_str()).collect();
            vec![kind.kind.key.clone(), kind.name.clone(), steps.join(", ")]
        })
        .collect();
    table(&["key", "name", "steps"].map(|column| w.text(&format!("job-kind-column-{column}"))), &rows);
    Ok(())
}

async fn keep_kind(arguments: &KindAdd) -> Result<(), Failure> {
    let kind = document_of::<JobKind>(&arguments.file)?;
    let app = arguments.database.open().await?;
    let kept = app.save_job_kind(&kind).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&kept);
    }
    say(&(text!(reader(), "command-kind-kept", name = kept.label) + "\n"))
}

async fn remove_kind(arguments: &KindRemove) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    app.remove_job_kind(&arguments.key).await?;
    app.close().await;
    say(&(text!(reader(), "command-kind-removed", name = arguments.key.as_str()) + "\n"))
}

/// Keeps readings at the bench.
///
/// # Errors
/// An entry that cannot be read; what the use case says.
pub async fn read(arguments: &ReadArguments) -> Result<(), Failure> {
    let entry = |text: &String| {
        let (what, typed) = text.split_once('=').unwrap_or((text.as_str(), ""));
        let what = member(what, What::from_key, &What::ALL.iter().map(|w| w.key()).collect::<Vec<_>>())?;
        Ok(Entry { what, typed: typed.to_owned(), value: None, pivot_mm: None, again: arguments.again })
    };
    let new = NewReadings {
        slot: arguments.slot,
        step: arguments.step.clone(),
        entries: arguments.readings.iter().map(entry).collect::<Result<Vec<_>, Failure>>()?,
        on: None,
        by: arguments.signed.by.clone(),
        version: None,
        at: None,
        reason: arguments.reason.clone(),
        request_key: None,
        seen: Vec::new(),
    };
    let app = arguments.signed.database.open().await?;
    let kept = app.read(arguments.job, &new).await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&kept);
    }
    let (w, meaning) = (reader(), &kept.meaning);
    line!("{}", w.sentence(&meaning.fact));
    if let Some(over_set) = &meaning.over_set {
        line!("{}", w.sentence(over_set));
    }
    line!("{}", w.sentence(&meaning.next));
    Ok(())
}
