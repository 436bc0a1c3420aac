//! What a step has to say of one club beside its own sentence: figures of the sheet and the plan, which way and how far, what
//! to watch and why. It follows from what the step asks, never from its name.

use super::{PageError, say};
use app::AppError;
use app::job::JobFile;
use bench::bend::{bend, better_setting};
use bench::club_state::{ClubState, StepState};
use bench::open_point::Final;
use bench::target::{Fit, Target};
use look::{Icon, icon, rich};
use maud::{Markup, html};
use trade::adapter::AdapterModel;
use trade::job::JobClub;
use trade::kind::{Role, SoftSide};
use trade::plan::ClubPlan;
use trade::reading::What;
use trade::shaft::ShaftMaterial;
use trade::sheet::SheetClub;
use trade::soft_side::SoftSideRead;
use trade::step::{Caution, Step};
use trade::wrap::strip_mm;
use words::{Words, text};

/// One line: what to do, and why or what to watch.
struct Line {
    deed: Markup,
    why: String,
    /// The quantity that it is about; the grid says it in the club's own row.
    of: Option<What>,
}

/// The lines of a step for a club; nothing where the step has none of its own.
///
/// # Errors
/// A model that the library does not have.
pub(super) fn step_says(
    w: &Words,
    file: &JobFile,
    club: &JobClub,
    state: &ClubState,
    step: &Step,
) -> Result<Markup, PageError> {
    Ok(listed(&lines_of(w, file, club, state, step)?))
}

/// The same without what the club's row in the grid says already.
///
/// # Errors
/// A model that the library does not have.
pub(super) fn set_says(
    w: &Words,
    file: &JobFile,
    club: &JobClub,
    state: &ClubState,
    step: &Step,
) -> Result<Markup, PageError> {
    let mut lines = lines_of(w, file, club, state, step)?;
    lines.retain(|line| line.of.is_none());
    Ok(listed(&lines))
}

/// What a row of the grid says of one quantity: where to saw until the shaft is cut, which way and how far to bend.
///
/// # Errors
/// A model that the library does not have.
pub(super) fn row_says(
    w: &Words,
    file: &JobFile,
    club: &JobClub,
    state: &ClubState,
    step: &Step,
    what: What,
) -> Result<Option<Markup>, PageError> {
    let asks = state.steps.iter().find(|s| s.key == step.key).map_or(&[][..], |s| &s.asks);
    let cut = asks.iter().any(|ask| ask.what == What::ShaftLength && ask.reading.is_some());
    let of = if matches!(what, What::Loft | What::Lie) { what } else { What::ShaftLength };
    // A loose head is only measured, never bent, so its row says how far off it is, as for any other figure.
    if of != What::ShaftLength && !step.on.contains(&Role::Adhesive) {
        return Ok(None);
    }
    let lines = lines_of(w, file, club, state, step)?;
    let found = lines.into_iter().find(|line| line.of == Some(of) && !(of == What::ShaftLength && cut));
    Ok(found.map(|line| html! { span.told { (line.written()) } }))
}

impl Line {
    fn written(&self) -> Markup {
        html! { (self.deed) @if !self.why.is_empty() { " " span.small { (self.why) } } }
    }
}

fn listed(lines: &[Line]) -> Markup {
    html! { @if !lines.is_empty() { ul.plain.says { @for line in lines { li { (line.written()) } } } } }
}

fn lines_of(w: &Words, file: &JobFile, club: &JobClub, state: &ClubState, step: &Step) -> Result<Vec<Line>, PageError> {
    let Some(plan) = &club.plan else { return Ok(Vec::new()) };
    let mut lines = lines_of_deed(w, file, club, plan, state, step)?;
    let cpm = file.job.steps.iter().any(|s| s.asks.contains(&What::Cpm)) || club.target.cpm.is_some();
    if cpm && (step.asks.contains(&What::ShaftLength) || step.asks.contains(&What::Cpm)) && !step.before {
        let deed = html! { a href={ "/bench/" (file.job.number) "/cpm" } { (w.text("cpm-open")) } };
        lines.push(Line { deed, why: String::new(), of: None });
    }
    Ok(lines)
}

/// What a step says of its own work.
fn lines_of_deed(
    w: &Words,
    file: &JobFile,
    club: &JobClub,
    plan: &ClubPlan,
    state: &ClubState,
    step: &Step,
) -> Result<Vec<Line>, PageError> {
    Ok(match step {
        _ if step.caution == Some(Caution::Preparing) => preparing(w, file, club)?,
        _ if step.asks.contains(&What::ShaftLength) => cutting(w, plan, step),
        _ if step.asks.contains(&What::SoftSide) => soft_side(w, file, club),
        _ if step.glues => gluing(w, file, club),
        _ if step.on.contains(&Role::Solvent) => gripping(w, file, club, plan)?,
        _ if step.asks.contains(&What::Loft) => bending(w, file, club, state, step)?,
        _ if Final::of(&file.job, step) == Some(Final::HandOver) => handing_over(w, file, club, state),
        _ => Vec::new(),
    })
}

fn strong(_: &str, inner: &str) -> Markup {
    html! { strong { (inner) } }
}

/// How deep the shaft goes in, and what makes a joint hold there.
fn preparing(w: &Words, file: &JobFile, club: &JobClub) -> Result<Vec<Line>, AppError> {
    let head = file.library.head(&club.target.head_model)?;
    let depth_mm = head.bore_depth_mm;
    let composite = file.library.shaft(&club.target.shaft_model)?.material == ShaftMaterial::Composite;
    let watch = if composite { "says-tip-composite" } else { "says-tip-steel" };
    Ok(vec![
        Line { deed: rich!(w, "says-tip", strong, depth_mm = depth_mm), why: w.text(watch), of: None },
        Line { deed: rich!(w, "says-hosel", strong, depth_mm = depth_mm), why: w.text("says-hosel-why"), of: None },
    ])
}

/// What comes off at either end, and what is left.
fn cutting(w: &Words, plan: &ClubPlan, step: &Step) -> Vec<Line> {
    let off = if plan.tip_trim_mm > 0.0 {
        rich!(w, "says-cut", strong, tip_mm = plan.tip_trim_mm, butt_mm = plan.butt_cut_mm, left_mm = plan.cut_shaft_mm)
    } else {
        rich!(w, "says-cut-butt", strong, butt_mm = plan.butt_cut_mm, left_mm = plan.cut_shaft_mm)
    };
    // Where the mass is asked for, its forecast stands over the entry, and knows more than the plan.
    let weighed = step.asks.contains(&What::ShaftMass);
    let why = if weighed { String::new() } else { text!(w, "says-cut-weight", mass_g = plan.cut_shaft_mass_g) };
    vec![Line { deed: off, why, of: Some(What::ShaftLength) }]
}

fn soft_side(w: &Words, file: &JobFile, club: &JobClub) -> Vec<Line> {
    let deed = match club.target.soft_side {
        Some(side) => rich!(w, "says-soft-side", strong, side = w.tell(&side)),
        None => html! { (w.text("says-soft-side-free")) },
    };
    let find =
        html! { a href={ "/bench/" (file.job.number) "/" (club.slot) "/soft-side" } { (w.text("soft-side-open")) } };
    vec![Line { deed, why: w.text("says-soft-side-why"), of: None }, Line { deed: find, why: String::new(), of: None }]
}

/// The soft side as it was read, with how sure that is; none where it was not.
fn soft_side_read(file: &JobFile, club: &JobClub) -> Option<SoftSideRead> {
    let standing = trade::reading::standing(&file.readings);
    standing.iter().rev().filter(|r| r.club == club.id).find_map(|r| SoftSideRead::of(r))
}

/// How a shaft is turned in its head: the soft side as it was found, where the sheet wants it. Empty where neither is known.
pub(super) fn alignment(w: &Words, file: &JobFile, club: &JobClub) -> String {
    let asked: Option<SoftSide> = club.target.soft_side;
    match (soft_side_read(file, club), asked) {
        (Some(read), Some(side)) => {
            text!(w, "says-turn-to", at_deg = read.at_deg, band_deg = read.band_deg, side = w.tell(&side))
        }
        (Some(read), None) => text!(w, "says-turn-mark", at_deg = read.at_deg, band_deg = read.band_deg),
        (None, Some(side)) => text!(w, "says-turn-asked", side = w.tell(&side)),
        (None, None) => club
            .target
            .shaft_graphics
            .map_or_else(String::new, |facing| text!(w, "says-turn-label", facing = w.tell(&facing))),
    }
}

fn gluing(w: &Words, file: &JobFile, club: &JobClub) -> Vec<Line> {
    let turned = alignment(w, file, club);
    if turned.is_empty() { Vec::new() } else { vec![Line { deed: html! { (turned) }, why: String::new(), of: None }] }
}

/// The strips of tape with their length, the grip, and where its logo goes.
fn gripping(w: &Words, file: &JobFile, club: &JobClub, plan: &ClubPlan) -> Result<Vec<Line>, AppError> {
    let grip = file.library.grip(&club.target.grip_model)?;
    let (wraps, strip) = (club.target.wraps, strip_mm(grip));
    let layers = i64::from(wraps.base) + i64::from(wraps.full);
    let mut lines = vec![Line {
        deed: rich!(w, "says-strips", strong, n = layers, strip_mm = strip),
        why: text!(w, "says-strips-are", base = wraps.base, full = wraps.full),
        of: None,
    }];
    if club.target.grip_size.is_some() {
        let deed = html! { a href={ "/bench/" (file.job.number) "/grip-size" } { (w.text("grip-size-open")) } };
        lines.push(Line { deed, why: String::new(), of: None });
    }
    if wraps.lower_hand > 0 {
        let deed = rich!(w, "says-strips-lower", strong, n = wraps.lower_hand, strip_mm = strip / 2.0);
        lines.push(Line { deed, why: String::new(), of: None });
    }
    let code = plan.part(trade::model::PartKind::Grip).map_or_else(String::new, |part| part.code.to_string());
    let logo = club.target.grip_graphics.map_or_else(|| w.text("plan-card-facing-any"), |facing| w.tell(&facing));
    lines.push(Line {
        deed: rich!(w, "says-grip", strong, code = code, name = grip.name, core_mm = grip.core_diameter_mm),
        why: text!(w, "says-logo", facing = logo),
        of: None,
    });
    Ok(lines)
}

/// The setting that an adapter goes in at, and what it changes.
pub(super) fn adapter_words(w: &Words, adapter: &AdapterModel, club: &SheetClub) -> String {
    let asked = club.adapter_setting.as_deref();
    let name = asked.unwrap_or(&adapter.setting);
    match adapter.built_at(asked) {
        Some(set) => text!(
            w,
            "says-adapter",
            setting = name,
            loft_deg = set.loft_deg,
            lie_deg = set.lie_deg,
            face_deg = set.face_deg
        ),
        None if name.is_empty() => String::new(),
        None => text!(w, "says-adapter-only", setting = name),
    }
}

/// The sheet's loft and lie, which way and how far to bend, and what came back.
fn bending(w: &Words, file: &JobFile, club: &JobClub, state: &ClubState, step: &Step) -> Result<Vec<Line>, AppError> {
    let built = step.on.contains(&Role::Adhesive);
    let limit_deg = file.library.head(&club.target.head_model)?.bend_limit_deg;
    let found = state.steps.iter().find(|s| s.key == step.key);
    let asks = found.map_or(&[][..], |s| &s.asks);
    let adapter = club.plan.as_ref().and_then(|plan| plan.adapter(&file.library)).filter(|a| !a.settings.is_empty());
    let better = found.and_then(|state| better_setting(&file.library, club, state));
    let one = |what: What| -> Option<Line> {
        let asked: &Target = asks.iter().find(|ask| ask.what == what)?.target.as_ref()?;
        let found = bend(&file.readings, &club.id, what, asked);
        let way = |by_deg: f64| match (what, by_deg < 0.0) {
            (What::Loft, true) => "says-strong",
            (What::Loft, false) => "says-weak",
            (_, true) => "says-flat",
            (_, false) => "says-upright",
        };
        let deed = match found {
            Some(found) if found.by_deg.abs() > 0.0 && better.is_some() => rich!(
                w,
                "says-set-adapter",
                strong,
                what = w.tell(&what),
                asked_deg = found.asked_deg,
                read_deg = found.read_deg,
                setting = better.as_deref().unwrap_or_default()
            ),
            // Somebody in a hurry bends what a line says: beyond the maker's limit it says not to.
            Some(found) if found.by_deg.abs() > limit_deg + 1e-9 => rich!(
                w,
                "says-bend-beyond",
                strong,
                what = w.tell(&what),
                asked_deg = found.asked_deg,
                read_deg = found.read_deg,
                limit_deg = limit_deg
            ),
            Some(found) if found.by_deg.abs() > 0.0 => rich!(
                w,
                "says-bend",
                strong,
                what = w.tell(&what),
                asked_deg = found.asked_deg,
                read_deg = found.read_deg,
                by_deg = found.by_deg.abs(),
                way = w.text(way(found.by_deg))
            ),
            Some(found) => rich!(
                w,
                "says-bend-none",
                strong,
                what = w.tell(&what),
                asked_deg = found.asked_deg,
                read_deg = found.read_deg
            ),
            None => rich!(w, "says-bend-unread", strong, what = w.tell(&what), asked_deg = asked.value),
        };
        let back = found.and_then(|found| found.came_back_deg);
        let mut why: Vec<String> = asks
            .iter()
            .filter(|ask| ask.what == what)
            .flat_map(|ask| &ask.effects)
            .map(|effect| w.told(effect))
            .collect();
        why.extend(back.map(|back_deg| text!(w, "says-came-back", back_deg = back_deg)));
        let why = why.join(" ");
        Some(Line { deed, why, of: Some(what) })
    };
    let mut lines: Vec<Line> = [What::Loft, What::Lie].into_iter().filter_map(one).collect();
    if let Some(adapter) = adapter {
        let deed = html! { (adapter_words(w, adapter, &club.target)) };
        lines.insert(0, Line { deed, why: w.text("says-adapter-not-bent"), of: None });
    } else if built && !lines.is_empty() {
        lines.push(Line { deed: html! {}, why: text!(w, "says-bend-limit", limit_deg = limit_deg), of: None });
    }
    Ok(lines)
}

/// Each figure of the finished club against the sheet.
fn handing_over(w: &Words, file: &JobFile, club: &JobClub, state: &ClubState) -> Vec<Line> {
    let mut last: Vec<(What, Line)> = Vec::new();
    let on_club = |key: &str| file.job.step(key).is_some_and(|step| step.on.contains(&Role::Grip));
    for ask in state.steps.iter().filter(|s: &&StepState| on_club(&s.key)).flat_map(|s| &s.asks) {
        let (Some(reading), Some(target)) = (&ask.reading, &ask.target) else { continue };
        let read = say::value(w, ask.what, reading.value);
        let mark = if ask.fit == Some(Fit::Off) { Icon::Flag } else { Icon::Tick };
        let deed = html! {
            (icon(mark)) " " (rich!(w, "says-built", strong, what = w.tell(&ask.what), read = read))
        };
        last.retain(|(what, _)| *what != ask.what);
        last.push((ask.what, Line { deed, why: say::asked(w, ask.what, target), of: None }));
    }
    let mut lines: Vec<Line> = last.into_iter().map(|(_, line)| line).collect();
    if club.target.soft_side.is_some() {
        let address = format!("/bench/{}/{}/soft-side", file.job.number, club.slot);
        let deed = html! { a href=(address) { (w.text("soft-side-check-open")) } };
        lines.push(Line { deed, why: String::new(), of: None });
    }
    lines
}
