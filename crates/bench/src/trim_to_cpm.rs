//! Trim to frequency: what each club of a set will read, what it should read, and how much more or less off its tip brings it
//! there before the saw, with what that costs in swing weight and what cannot be undone.

use crate::belief::{BAND_95, Believed};
use crate::cpm_remedy::remedies;
use crate::flex::{StiffnessFrom, Trimmed};
use crate::remedy::Progress;
use clubphysics::trim::Shaft;
use estimation::normal;
use fact::Told;
use quantity::INCH_MM;
use serde::{Deserialize, Serialize};
use trade::error::{TradeError, within};
use trade::job::{Job, JobClub};
use trade::kind::{LengthTo, Role, closed_list};
use trade::model::{Library, PartKind};
use trade::plan::ClubPlan;
use trade::reading::What;
use trade::shaft::TipShape;
use trade::swing_weight::points_per_g;
use utoipa::ToSchema;

/// Usual rise from club to club, cpm for each half inch (common practice, no source).
pub const STEP_CPM: f64 = 4.3;
/// What counts as on target where a sheet gives no tolerance, cycles a minute (common practice, no source).
const TOLERANCE_CPM: f64 = 2.0;
/// No more is advised off a tip beyond the plan than this, mm: an inch and a half, three numbers of a trim chart.
const MOST_MORE_MM: f64 = 38.1;
/// Cuts are told in steps of half a millimetre; less than one is not worth a saw.
const STEP_MM: f64 = 0.5;
const LEAST_MM: f64 = 1.0;
/// Standard deviation of a tip cut, mm (common practice, no source).
const SAW_SD_MM: f64 = 0.8;
/// Rounds of the search for a trim: it is nearly straight.
const ROUNDS: usize = 6;

closed_list! {
    /// What the clubs of a set are to read.
    Slope {
        /// What the sheet asks of each club.
        Sheet = "sheet";
        /// The same for all.
        Flat = "flat";
        /// A fixed rise for each half inch that a club is shorter.
        Step = "step";
        /// That step through the reference club of the sheet.
        Reference = "reference";
    }
}

/// The slope of a set as it is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlopeAsked {
    /// Which law.
    pub slope: Slope,
    /// Cycles a minute for a half inch less of length, for a step and for a reference.
    pub step_cpm: f64,
    /// What the first club of the tray is to read; none: what suits the shafts of the set best, or what the reference club read.
    pub level_cpm: Option<f64>,
}

impl SlopeAsked {
    /// What is usual for a job: its sheet where that asks for frequencies, else the usual step.
    #[must_use]
    pub fn usual(job: &Job) -> Self {
        let asks = job.clubs.iter().any(|club| club.target.cpm.is_some());
        Self { slope: if asks { Slope::Sheet } else { Slope::Step }, step_cpm: STEP_CPM, level_cpm: None }
    }
}

/// Another tip trim for one club.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct TipTrimChange {
    /// Cut off the tip beyond what is planned; negative for less.
    pub more_mm: f64,
    /// Cut off the tip in all.
    pub tip_trim_mm: f64,
    /// Cut off the butt then: the club keeps its length.
    pub butt_cut_mm: f64,
    /// What the change adds to the frequency.
    pub gain_cpm: f64,
    /// Half width of its 95 % band.
    pub gain_band_cpm: f64,
    /// Frequency with it.
    pub after_cpm: f64,
    /// Half width of its 95 % band.
    pub after_band_cpm: f64,
    /// What the change adds to the swing weight.
    pub swing_weight_change_points: f64,
    /// Probability of the true frequency in tolerance with it.
    pub chance: f64,
}

fact::facts! {
    /// What to do about a club's frequency.
    pub enum CpmSays: "cpm_says" {
        /// Nothing can be forecast of it.
        NotForecast,
        /// It should read nothing in particular.
        NoAim,
        /// It is on target as planned.
        AsPlanned,
        /// More off the tip, before the saw.
        TrimMore {
            /// How much more.
            by_mm: f64,
            /// What that adds to the frequency.
            gain_cpm: f64,
            /// Half width of its 95 % band.
            band_cpm: f64,
            /// What it adds to the swing weight.
            by_points: f64,
        },
        /// Less off the tip, before the saw.
        TrimLess {
            /// How much less.
            by_mm: f64,
            /// What that takes off the frequency.
            loss_cpm: f64,
            /// Half width of its 95 % band.
            band_cpm: f64,
            /// What it adds to the swing weight.
            by_points: f64,
        },
        /// A tip cut brings it nearer and not there.
        NotFarEnough {
            /// By how much it still misses.
            by_cpm: f64,
        },
        /// It reads softer than it should, and its tip is not cut: a taper tip, or a shaft that is cut already.
        Soft {
            /// By how much.
            by_cpm: f64,
        },
        /// It reads stiffer than it should, and its tip is not cut.
        Stiff {
            /// By how much.
            by_cpm: f64,
        },
    }
}

/// The frequency of one club: forecast, aim, trim.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CpmOfClub {
    /// Place in the tray.
    pub slot: i64,
    /// Number of the club.
    pub number: String,
    /// True frequency of the club as planned, with what is on it at its step; none where nothing can be forecast.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub forecast_cpm: Option<f64>,
    /// Half width of its 95 % band.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub band_cpm: Option<f64>,
    /// What the stiffness of its shaft rests on before any reading.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rests_on: Option<StiffnessFrom>,
    /// What it is to read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim_cpm: Option<f64>,
    /// Half width of what counts as on target.
    pub tolerance_cpm: f64,
    /// Probability of the true frequency in tolerance as planned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub chance: Option<f64>,
    /// The tip trim that brings it there or nearest; none where none helps or can be made.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trim: Option<TipTrimChange>,
    /// What else can be done where no tip cut brings it there, each with what it does to the swing weight.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub remedies: Vec<Told>,
    /// What to do.
    #[serde(flatten)]
    pub fact: Told,
}

/// The frequencies of a set.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct SetCpm {
    /// What the clubs are to read.
    pub slope: Slope,
    /// Cycles a minute for a half inch less, where the slope has a step.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub step_cpm: Option<f64>,
    /// What is on a club while it is read.
    pub on: Vec<Role>,
    /// One a club, in the order of the tray.
    pub clubs: Vec<CpmOfClub>,
    /// How many clubs are expected in tolerance as planned.
    pub inside_as_planned: f64,
    /// How many with the trims that are advised.
    pub inside_trimmed: f64,
}

/// What is on a club while its frequency is read: at the last step that asks it, else as a dry fit.
#[must_use]
pub fn read_with(job: &Job) -> Vec<Role> {
    let step = job.steps.iter().rev().find(|step| step.asks.contains(&What::Cpm) && !step.before);
    step.map_or_else(
        || vec![Role::Head, Role::Adapter, Role::Screw, Role::Shaft, Role::Ferrule, Role::Turnings],
        |s| s.on.clone(),
    )
}

/// What a club can be asked to read: from a long limp shaft to a short stout one, and far beyond both (a judgement, no source). A
/// steep slope runs out of it.
const LEAST_AIM_CPM: f64 = 50.0;
const MOST_AIM_CPM: f64 = 1000.0;

/// The frequencies of a set against a slope, and the trims that bring its clubs there.
///
/// # Errors
/// A slope that asks of a club what no shaft reads; figures that the belief cannot work with.
pub fn set_cpm(believed: &Believed<'_>, asked: SlopeAsked) -> Result<SetCpm, TradeError> {
    let job = believed.assembly.job;
    let on = read_with(job);
    let mut now = Vec::with_capacity(job.clubs.len());
    for club in &job.clubs {
        now.push(believed.flex().trimmed(believed.assembly, club, &on, 0.0)?);
    }
    let means: Vec<Option<f64>> = now.iter().map(|found| found.as_ref().map(|t| t.cpm.mean)).collect();
    let aims = aims(job, asked, &means);
    for aim in aims.iter().flatten() {
        within("aim_cpm", *aim, LEAST_AIM_CPM, MOST_AIM_CPM, "cpm")?;
    }
    let mut clubs = Vec::with_capacity(job.clubs.len());
    for ((club, now), aim) in job.clubs.iter().zip(now).zip(aims) {
        clubs.push(of_club(believed, club, &on, now, aim)?);
    }
    let inside_as_planned = clubs.iter().filter_map(|club| club.chance).sum();
    let inside_trimmed = clubs.iter().filter_map(|c| c.trim.map(|t| t.chance).or(c.chance)).sum();
    let step_cpm = matches!(asked.slope, Slope::Step | Slope::Reference).then_some(asked.step_cpm);
    Ok(SetCpm { slope: asked.slope, step_cpm, on, clubs, inside_as_planned, inside_trimmed })
}

/// What each club is to read.
fn aims(job: &Job, asked: SlopeAsked, forecasts: &[Option<f64>]) -> Vec<Option<f64>> {
    let first_mm = job.clubs.first().map_or(0.0, |club| club.target.length_mm);
    let half_inches = |mm: f64| (first_mm - mm) / (INCH_MM / 2.0);
    let step_cpm = if asked.slope == Slope::Flat { 0.0 } else { asked.step_cpm };
    let steps = |club: &JobClub| step_cpm * half_inches(club.target.length_mm);
    let own = || {
        let mut levels: Vec<f64> =
            job.clubs.iter().zip(forecasts).filter_map(|(club, cpm)| Some((*cpm)? - steps(club))).collect();
        levels.sort_by(f64::total_cmp);
        let n = levels.len();
        (n > 0).then(|| f64::midpoint(levels[(n - 1) / 2], levels[n / 2]))
    };
    let reference = || {
        let club = job.sheet.reference.as_ref()?;
        // Held in the clamp by its cap or its butt end, as its length says.
        let cap_mm = if club.length_to == Some(LengthTo::Cap) { club.cap_mm.unwrap_or(0.0) } else { 0.0 };
        let of_job = job.clubs.first().map(|c| c.target.length_to);
        let mm = club.length_mm? - if of_job == Some(LengthTo::ShaftEnd) { cap_mm } else { 0.0 };
        Some(club.cpm? - step_cpm * half_inches(mm))
    };
    let level = match asked.slope {
        Slope::Sheet => None,
        Slope::Flat | Slope::Step => asked.level_cpm.or_else(own),
        Slope::Reference => asked.level_cpm.or_else(reference),
    };
    let aim = |club: &JobClub| match asked.slope {
        Slope::Sheet => club.target.cpm,
        _ => level.map(|level| level + steps(club)),
    };
    job.clubs.iter().map(aim).collect()
}

fn of_club(
    believed: &Believed<'_>,
    club: &JobClub,
    on: &[Role],
    now: Option<Trimmed>,
    aim_cpm: Option<f64>,
) -> Result<CpmOfClub, TradeError> {
    let assembly = believed.assembly;
    let asked = club.target.tolerances.cpm;
    let tolerance_cpm = if asked > 0.0 { asked } else { TOLERANCE_CPM };
    let mut found = CpmOfClub {
        slot: club.slot,
        number: club.target.number.clone(),
        forecast_cpm: now.as_ref().map(|t| t.cpm.mean),
        band_cpm: now.as_ref().map(|t| BAND_95 * t.cpm.sd),
        rests_on: assembly_rests_on(believed, club, now.is_some()),
        aim_cpm,
        tolerance_cpm,
        chance: None,
        trim: None,
        remedies: Vec::new(),
        fact: CpmSays::NotForecast.into(),
    };
    let Some(now) = now else { return Ok(found) };
    let Some(aim) = aim_cpm else { return Ok(CpmOfClub { fact: CpmSays::NoAim.into(), ..found }) };
    let inside = |mean: f64, sd: f64| normal::between(-tolerance_cpm, tolerance_cpm, mean - aim, sd.max(1e-6));
    found.chance = Some(inside(now.cpm.mean, now.cpm.sd));
    let off = now.cpm.mean - aim;
    let Some(plan) = club.plan.as_ref() else { return Ok(found) };
    let may_be_cut = may_be_trimmed(believed, club);
    let more_mm = if may_be_cut { search(believed, club, on, &now, aim)? } else { 0.0 };
    let more_mm = more_mm.clamp(-plan.tip_trim_mm, plan.butt_cut_mm.min(MOST_MORE_MM));
    let more_mm = (more_mm / STEP_MM).round() * STEP_MM;
    let more_mm = more_mm.clamp(-plan.tip_trim_mm, plan.butt_cut_mm.min(MOST_MORE_MM));
    if !may_be_cut || more_mm.abs() < LEAST_MM {
        found.fact = match off {
            _ if off.abs() <= tolerance_cpm / 2.0 || may_be_cut && off.abs() <= tolerance_cpm => {
                CpmSays::AsPlanned.into()
            }
            _ if off < 0.0 => CpmSays::Soft { by_cpm: -off }.into(),
            _ => CpmSays::Stiff { by_cpm: off }.into(),
        };
        if !matches!(found.fact.code(), "cpm_says.as_planned") {
            found.remedies = remedies(believed, club, &now, off)?;
        }
        return Ok(found);
    }
    let Some(gain) = believed.flex().gain(assembly, club, on, more_mm)? else { return Ok(found) };
    let Some(after) = believed.flex().trimmed(assembly, club, on, more_mm)? else { return Ok(found) };
    let saw_cpm = after.cpm.mean * after.mode.by_tip_trim_mm * SAW_SD_MM;
    let trim = TipTrimChange {
        more_mm,
        tip_trim_mm: plan.tip_trim_mm + more_mm,
        butt_cut_mm: plan.butt_cut_mm - more_mm,
        gain_cpm: gain.mean,
        gain_band_cpm: BAND_95 * gain.sd.hypot(saw_cpm),
        after_cpm: after.cpm.mean,
        after_band_cpm: BAND_95 * after.cpm.sd,
        swing_weight_change_points: swing_weight_change(believed, club, more_mm)?,
        chance: inside(after.cpm.mean, after.cpm.sd),
    };
    let (band_cpm, by_points) = (trim.gain_band_cpm, trim.swing_weight_change_points);
    let left = after.cpm.mean - aim;
    // Half of the tolerance is left to what nobody knows yet.
    found.fact = if left.abs() > tolerance_cpm / 2.0 {
        found.remedies = remedies(believed, club, &after, left)?;
        CpmSays::NotFarEnough { by_cpm: left.abs() }.into()
    } else if more_mm > 0.0 {
        CpmSays::TrimMore { by_mm: more_mm, gain_cpm: gain.mean, band_cpm, by_points }.into()
    } else {
        CpmSays::TrimLess { by_mm: -more_mm, loss_cpm: -gain.mean, band_cpm, by_points }.into()
    };
    Ok(CpmOfClub { trim: Some(trim), ..found })
}

fn assembly_rests_on(believed: &Believed<'_>, club: &JobClub, forecast: bool) -> Option<StiffnessFrom> {
    believed.flex().rests_on(believed.assembly, club).filter(|_| forecast)
}

/// The extra tip trim that brings the forecast to the aim, mm; beyond the limits it may run out of shaft.
fn search(believed: &Believed<'_>, club: &JobClub, on: &[Role], now: &Trimmed, aim: f64) -> Result<f64, TradeError> {
    let (mut at_mm, mut cpm, mut slope) = (0.0, now.cpm.mean, now.mode.by_tip_trim_mm);
    for _ in 0..ROUNDS {
        // A shaft that does not taper answers no cut.
        if slope <= 1e-6 {
            return Ok(0.0);
        }
        at_mm = (at_mm + (aim / cpm).ln() / slope).clamp(-2.0 * MOST_MORE_MM, 2.0 * MOST_MORE_MM);
        let Some(there) = believed.flex().trimmed(believed.assembly, club, on, at_mm)? else { break };
        (cpm, slope) = (there.cpm.mean, there.mode.by_tip_trim_mm);
    }
    Ok(at_mm)
}

/// The raw shaft of a plan as three figures; none where its model has no blank for it.
fn raw_shaft(library: &Library, club: &JobClub, plan: &ClubPlan) -> Result<Option<Shaft>, TradeError> {
    let Some(part) = plan.part(PartKind::Shaft) else { return Ok(None) };
    let model = library.shaft(&part.model)?;
    let blank = model.blank(plan.neighbour_blank.as_deref().unwrap_or(&club.target.number));
    let length_mm = plan.cut_shaft_mm + plan.butt_cut_mm + plan.tip_trim_mm;
    Ok(blank.map(|blank| Shaft {
        mass_g: part.mass_g,
        length_mm,
        balance_point_mm: blank.balance_point_mm * length_mm / blank.length_mm,
    }))
}

/// What another tip trim at the same length does to the finished swing weight, points.
fn swing_weight_change(believed: &Believed<'_>, club: &JobClub, more_mm: f64) -> Result<f64, TradeError> {
    let library = believed.assembly.library;
    let Some(plan) = club.plan.as_ref() else { return Ok(0.0) };
    let Some(raw) = raw_shaft(library, club, plan)? else { return Ok(0.0) };
    let cap_mm = library.grip(&club.target.grip_model)?.cap_mm;
    let points = |shaft: Shaft| shaft.mass_g * points_per_g(shaft.balance_point_mm + cap_mm);
    let now = raw.cut(plan.tip_trim_mm, plan.butt_cut_mm)?;
    let then = raw.cut(plan.tip_trim_mm + more_mm, plan.butt_cut_mm - more_mm)?;
    Ok(points(then) - points(now))
}

/// A plan with another tip trim: what comes off the tip more stays on at the butt, and the cut shaft weighs and balances as its
/// mass line says. What single shafts deviate from that line stays as the plan had it.
///
/// # Errors
/// A model that the library lacks; a trim that leaves no shaft.
pub fn with_tip_trim(
    library: &Library,
    club: &JobClub,
    plan: &ClubPlan,
    tip_trim_mm: f64,
) -> Result<ClubPlan, TradeError> {
    let most_mm = plan.tip_trim_mm + plan.butt_cut_mm;
    within("tip_trim_mm", tip_trim_mm, 0.0, most_mm, "mm")?;
    let Some(raw) = raw_shaft(library, club, plan)? else { return Ok(plan.clone()) };
    let butt_cut_mm = (most_mm - tip_trim_mm).max(0.0);
    let (now, then) = (raw.cut(plan.tip_trim_mm, plan.butt_cut_mm)?, raw.cut(tip_trim_mm, butt_cut_mm)?);
    Ok(ClubPlan {
        tip_trim_mm,
        butt_cut_mm,
        cut_shaft_mass_g: plan.cut_shaft_mass_g + then.mass_g - now.mass_g,
        cut_shaft_balance_point_mm: plan.cut_shaft_balance_point_mm + then.balance_point_mm - now.balance_point_mm,
        ..plan.clone()
    })
}

/// Whether the tip of a club can still be trimmed otherwise: a parallel tip that is not cut.
#[must_use]
pub fn may_be_trimmed(believed: &Believed<'_>, club: &JobClub) -> bool {
    let shaft = believed.assembly.library.shaft(&club.target.shaft_model);
    shaft.is_ok_and(|shaft| shaft.tip == TipShape::Parallel) && !Progress::of(believed, club).cut
}
