//! The record of a job: reference, target, as built, difference and band, parts and lots, who and when.

use crate::accuracy::{ReadOn, read_on};
use crate::belief::{BAND_95, Believed, Finish};
use crate::glue::Batch;
use crate::grip_size;
use crate::open_point::Passed;
pub use crate::reach::ASKED_CONFIDENCE;
use crate::reach::reach;
use estimation::conformity::{Limits, Verdict as Jcgm106, judge};
use fact::{Fact, Told};
use jiff::{Timestamp, civil::Date};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::{JobClub, JobState};
use trade::kind::{Hand, LengthTo, Role, closed_list};
use trade::plan::PlannedPart;
use trade::reading::{Reading, Unit, What};
use trade::rules::{Margin, RuleFigures, margins};
use trade::sheet::{ReferenceClub, SetRule, SheetClub};
use trade::step::Strength;
use utoipa::ToSchema;

closed_list! {
    /// What may be said of a value against its tolerance, by the rules of JCGM 106.
    Verdict {
        /// Inside, with at least 95 % probability.
        In = "in";
        /// Outside, with at least 95 % probability.
        Out = "out";
        /// Neither can be said with the readings that there are.
        TooClose = "too_close";
        /// Not read.
        NotRead = "not_read";
    }
}

/// One value of one club: target, as built, how far off.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Line {
    /// The quantity of this line: swing weight, length, loft …
    pub what: What,
    /// Whether the clubs of the set are compared with each other alone, without how far two scales of two rooms differ.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub within_set: bool,
    /// Unit of the figures.
    pub unit: Unit,
    /// What the sheet asks.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub target: Option<f64>,
    /// What was built: for the swing weight and the masses the belief after all readings, else the last reading.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub built: Option<f64>,
    /// Half width of the 95 % band of `built`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub band: Option<f64>,
    /// Built minus target.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub difference: Option<f64>,
    /// Half width of the tolerance.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<f64>,
    /// What may be said.
    pub verdict: Verdict,
    /// Probability that the true value lies in tolerance.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub probability: Option<f64>,
    /// How far inside the tolerance the value must lie for “in” to be said; none where the value is not known well
    /// enough for it to be said at all.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub guard_band: Option<f64>,
    /// What it was read on; none for what the belief tells of all readings together.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub read_on: Option<ReadOn>,
    /// What would settle a verdict that is too close to say, where a reading could.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reach: Option<Told>,
}

/// One reading as it stands in the record, replaced and taken-back ones too.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct RecordReading {
    /// The reading as it was taken.
    pub reading: Reading,
    /// Whether it stands.
    pub stands: bool,
    /// Whether it was doubted at the end.
    pub doubted: bool,
}

/// What the builder calls a step of the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct StepName {
    /// Key of the step, as readings name it.
    pub key: String,
    /// What the builder calls it.
    pub label: String,
}

/// That somebody let a joint pass before its time: all steps that need no more than a strength, or one step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct LetPass {
    /// Identity of the club.
    pub club: ClubId,
    /// The step at which it was given; none where it was given for the batch as such.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<String>,
    /// The batch that it holds for; none where it holds for that one step of this club.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub batch: Option<i64>,
    /// The strength that the joints of the batch are taken to have.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strength: Option<Strength>,
    /// The reason given.
    pub reason: String,
    /// Who.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

/// How long a club is by each way of measuring: as built where it was read, else as the sheet asks.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Lengths {
    /// Along the shaft axis from the ground to the outside of the grip's cap.
    pub to_cap_mm: f64,
    /// The same to the end of the shaft, by the thickness of the grip model's cap.
    pub to_shaft_end_mm: f64,
    /// As the Equipment Rules measure it: woods and irons by the 60° plane, putters along the axis.
    pub by_rules_mm: f64,
    /// Which of the first two the sheet's length means.
    pub sheet_to: LengthTo,
    /// Whether the finished club was measured.
    pub read: bool,
}

/// The record of one club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ClubRecord {
    /// Identity of the club.
    pub club: ClubId,
    /// Place in the tray.
    pub slot: i64,
    /// What its card says when it is scanned: `J42-3`.
    pub card: String,
    /// What the sheet asked.
    pub target: SheetClub,
    /// Target and as built.
    pub lines: Vec<Line>,
    /// What it is made of.
    pub parts: Vec<PlannedPart>,
    /// Length of the cut shaft as planned; none where the work cuts no shaft.
    pub cut_shaft_mm: Option<f64>,
    /// How long it is, with its cap and without, and as the rules measure it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lengths: Option<Lengths>,
    /// Batches it was glued from, the latest last.
    pub batches: Vec<i64>,
    /// All its readings.
    pub readings: Vec<RecordReading>,
    /// Margins against the Equipment Rules, as built where it was read, else as the sheet asks.
    pub margins: Vec<Margin>,
    /// Where its joint was let pass before its time.
    pub let_pass: Vec<LetPass>,
    /// Where somebody went on with something open.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub passed: Vec<Passed>,
}

/// What was said beside the readings of a job.
#[derive(Debug, Clone, Copy)]
pub struct Beside<'a> {
    /// Batches that its clubs were glued from.
    pub batches: &'a [Batch],
    /// Joints let pass before their time.
    pub let_pass: &'a [LetPass],
    /// Where somebody went on with something open.
    pub passed: &'a [Passed],
}

/// The record of a job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Record {
    /// Name of the shop.
    pub shop: String,
    /// Running number of the job.
    pub job_number: i64,
    /// Where the job stands.
    pub state: JobState,
    /// Who the clubs were built for.
    pub player: String,
    /// Whether the player is right-handed or left-handed.
    pub hand: Hand,
    /// When it was due.
    #[schema(value_type = String, format = Date)]
    pub due: Date,
    /// The law of the set.
    pub rule: SetRule,
    /// The reference club.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reference: Option<ReferenceClub>,
    /// When the job was made.
    #[schema(value_type = String, format = DateTime)]
    pub made_at: Timestamp,
    /// When the last reading was taken.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub last_reading_at: Option<Timestamp>,
    /// Everyone who read or glued.
    pub hands: Vec<String>,
    /// Batches of adhesive with their lots.
    pub batches: Vec<Batch>,
    /// The steps of the job, in their order.
    #[serde(default)]
    pub steps: Vec<StepName>,
    /// One for each club of the job, in the order of the tray.
    pub clubs: Vec<ClubRecord>,
}

impl Record {
    /// What the builder calls a step; the key of one that the job has no longer.
    #[must_use]
    pub fn step_name<'a>(&'a self, key: &'a str) -> &'a str {
        self.steps.iter().find(|step| step.key == key).map_or(key, |step| &step.label)
    }
}

/// Makes the record of a job as it stands now.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn record(believed: &Believed<'_>, readings: &[Reading], beside: &Beside<'_>) -> Result<Record, TradeError> {
    let batches = beside.batches;
    let assembly = believed.assembly;
    let job = assembly.job;
    let mut hands: Vec<String> =
        readings.iter().map(|r| r.by.clone()).chain(batches.iter().map(|b| b.by.clone())).collect();
    hands.sort();
    hands.dedup();
    let clubs =
        job.clubs.iter().map(|club| club_record(believed, club, readings, beside)).collect::<Result<Vec<_>, _>>()?;
    Ok(Record {
        shop: assembly.shop.name.clone(),
        job_number: job.number,
        state: job.state,
        player: job.sheet.player.clone(),
        hand: job.sheet.hand,
        due: job.sheet.due,
        rule: job.sheet.rule,
        reference: job.sheet.reference.clone(),
        made_at: job.made_at,
        last_reading_at: readings.iter().map(|r| r.at).max(),
        hands,
        batches: batches.to_vec(),
        steps: job.steps.iter().map(|s| StepName { key: s.key.clone(), label: s.label.clone() }).collect(),
        clubs,
    })
}

fn club_record(
    believed: &Believed<'_>,
    club: &JobClub,
    readings: &[Reading],
    beside: &Beside<'_>,
) -> Result<ClubRecord, TradeError> {
    let glued = beside.batches.iter().filter(|b| b.taken_back.is_none() && b.clubs.contains(&club.id));
    let standing = believed.standing();
    let last = |what: What| standing.iter().rev().find(|r| r.club == club.id && r.what == what).copied();
    let lines = lines(believed, club, &last)?;
    let grip = believed.assembly.library.grip(&club.target.grip_model)?;
    let asked =
        RuleFigures::of_sheet(&club.target, Some(believed.assembly.library.head(&club.target.head_model)?), Some(grip));
    let figures = RuleFigures {
        length_to_cap_mm: last(What::FinishedLength).map(|r| r.value).or(asked.length_to_cap_mm),
        lie_deg: last(What::Lie).map(|r| r.value).or(asked.lie_deg),
        ..asked
    };
    let cuts =
        club.work.is_none() || believed.assembly.job.steps_of(club).any(|step| step.asks.contains(&What::ShaftLength));
    let lengths = figures.length_to_cap_mm.zip(figures.length_by_rules_mm()).map(|(to_cap_mm, by_rules_mm)| Lengths {
        to_cap_mm,
        to_shaft_end_mm: to_cap_mm - grip.cap_mm,
        by_rules_mm,
        sheet_to: club.target.length_to,
        read: last(What::FinishedLength).is_some(),
    });
    Ok(ClubRecord {
        club: club.id.clone(),
        slot: club.slot,
        card: club.card.clone(),
        target: club.target.clone(),
        lines,
        parts: club.plan.as_ref().map(|p| p.parts.clone()).unwrap_or_default(),
        cut_shaft_mm: club.plan.as_ref().filter(|_| cuts).map(|p| p.cut_shaft_mm),
        lengths,
        batches: glued.map(|b| b.number).collect(),
        readings: readings
            .iter()
            .filter(|r| r.club == club.id)
            .map(|r| RecordReading {
                reading: r.clone(),
                stands: standing.iter().any(|s| s.id == r.id),
                doubted: believed.is_doubted(&r.id),
            })
            .collect(),
        margins: margins(&figures),
        let_pass: beside.let_pass.iter().filter(|l| l.club == club.id).cloned().collect(),
        passed: beside.passed.iter().filter(|p| p.club == club.id).cloned().collect(),
    })
}

fn lines<'r>(
    believed: &Believed<'_>,
    club: &JobClub,
    last: &dyn Fn(What) -> Option<&'r Reading>,
) -> Result<Vec<Line>, TradeError> {
    let target = &club.target;
    let tolerances = &target.tolerances;
    let mut lines = Vec::new();
    let finished = believed.standing().iter().any(|r| {
        r.club == club.id && r.what == What::SwingWeight && r.on.contains(&Role::Grip) && !believed.is_doubted(&r.id)
    });
    let finish = if finished { believed.finish(&club.id)? } else { None };
    let reach = if finished { reach(believed, &club.id)?.map(|reach| reach.told()) } else { None };
    lines.push(Line { reach, ..swing_weight_line(target, finish)? });
    if let Some(finish) = finish.filter(|f| f.own_band_points < f.band_points) {
        // Likeness among the clubs does not hang on how well the target is known.
        let own = line(
            What::SwingWeight,
            Some(target.swing_weight_points),
            Some((finish.swing_weight_points, finish.own_band_points)),
            Some(tolerances.swing_weight_points),
        )?;
        lines.push(Line { within_set: true, ..own });
    }
    let to_cap_mm =
        target.length_to.to_cap_mm(target.length_mm, believed.assembly.library.grip(&target.grip_model)?.cap_mm);
    // Readings that stand beside each other at one step are of a club that was seated again; what was read after a bend or a cut
    // takes the place of what was read before.
    let assembly = believed.assembly;
    let read = |what: What, target: Option<f64>, tolerance: f64| -> Result<Line, TradeError> {
        let Some(latest) = last(what) else { return line(what, target, None, Some(tolerance)) };
        let again =
            |r: &&&Reading| r.club == club.id && r.what == what && r.step == latest.step && !believed.is_doubted(&r.id);
        let standing = believed.standing();
        let repeats: Vec<f64> = standing.iter().filter(again).map(|r| r.value).collect();
        let n = repeats.len().max(1);
        let value = if repeats.is_empty() { latest.value } else { repeats.iter().sum::<f64>() / n as f64 };
        let on = read_on(assembly.shop, assembly.learned, what, latest.display_step, n as i64);
        let band = on.as_ref().map_or(0.0, ReadOn::band);
        Ok(Line { read_on: on, ..line(what, target, Some((value, band)), Some(tolerance))? })
    };
    lines.push(read(What::FinishedLength, Some(to_cap_mm), tolerances.length_mm)?);
    lines.push(read(What::Loft, Some(target.loft_deg), tolerances.loft_deg)?);
    lines.push(read(What::Lie, Some(target.lie_deg), tolerances.lie_deg)?);
    if target.cpm.is_some() || last(What::Cpm).is_some() {
        lines.push(read(What::Cpm, target.cpm, tolerances.cpm)?);
    }
    for what in [What::GripSize, What::GripSizeLower] {
        let asked = grip_size::asked(club, what);
        if asked.is_some() || last(what).is_some() {
            lines.push(read(what, asked, grip_size::SIZE_TOLERANCE_MM)?);
        }
    }
    let total = believed.expected(&club.id, What::TotalMass, &gripped())?;
    let weighed = last(What::TotalMass).and(total);
    lines.push(line(What::TotalMass, target.total_mass_g, weighed.map(|e| (e.value, e.band)), None)?);
    if finished && let Some(inertia) = believed.swing_inertia(&club.id)? {
        let built = Some((inertia.value_kg_cm2, inertia.band_kg_cm2));
        let after = lines.iter().take_while(|line| line.what == What::SwingWeight).count();
        lines.insert(after, line(What::SwingInertia, inertia.target_kg_cm2, built, inertia.tolerance_kg_cm2)?);
    }
    if target.swing_weight_free {
        lines.retain(|line| line.what != What::SwingWeight);
    }
    if club.work.is_some() {
        // A regrip is no fitting: what its steps do not ask, and nobody read, was no part of the work.
        let job = believed.assembly.job;
        let asked = |what: What| job.steps_of(club).any(|step| step.asks.contains(&what));
        lines.retain(|line| line.built.is_some() || asked(line.what));
    }
    Ok(lines)
}

fn gripped() -> Vec<Role> {
    use Role::{Adapter, Adhesive, Extra, Ferrule, Grip, Head, Screw, Shaft, Tape, TipWeight};
    vec![Head, Adapter, Screw, Shaft, Ferrule, TipWeight, Adhesive, Tape, Grip, Extra]
}

/// The swing weight against the sheet, the difference of two scales counted where the reference was read on another.
fn swing_weight_line(target: &SheetClub, finish: Option<Finish>) -> Result<Line, TradeError> {
    let asked = target.swing_weight_points;
    let Some(finish) = finish else {
        return line(What::SwingWeight, Some(asked), None, Some(target.tolerances.swing_weight_points));
    };
    let judged = line(
        What::SwingWeight,
        Some(asked),
        Some((asked + finish.deviation_points, finish.band_points)),
        Some(target.tolerances.swing_weight_points),
    )?;
    Ok(Line { built: Some(finish.swing_weight_points), difference: Some(finish.deviation_points), ..judged })
}

fn line(
    what: What,
    target: Option<f64>,
    built: Option<(f64, f64)>,
    tolerance: Option<f64>,
) -> Result<Line, TradeError> {
    let judged = match (target, built, tolerance) {
        (Some(target), Some((value, band)), Some(tolerance)) if tolerance > 0.0 => {
            Some(judge(value, band / BAND_95, Limits::around(target, tolerance), ASKED_CONFIDENCE)?)
        }
        _ => None,
    };
    Ok(Line {
        what,
        within_set: false,
        unit: what.unit(),
        target,
        built: built.map(|b| b.0),
        band: built.map(|b| b.1),
        difference: target.zip(built).map(|(t, b)| b.0 - t),
        tolerance,
        verdict: judged.map_or(Verdict::NotRead, |j| match j.verdict {
            Jcgm106::In => Verdict::In,
            Jcgm106::Out => Verdict::Out,
            Jcgm106::TooClose => Verdict::TooClose,
        }),
        probability: judged.map(|j| j.probability),
        guard_band: judged.and_then(|j| j.guard_band),
        read_on: None,
        reach: None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// JCGM 106:2012, a single item (from memory): a value of −5.47 with uncertainty 0.05 against a limit of −5.40 conforms
    /// with probability 0.91924. Here the other limit is far away.
    #[test]
    fn a_line_says_the_published_probability() {
        let limit = -5.40;
        let found = line(What::Loft, Some(limit - 50.0), Some((-5.47, 0.05 * BAND_95)), Some(50.0)).unwrap();
        assert!((found.probability.unwrap() - 0.91924).abs() < 5e-6, "{found:?}");
        assert_eq!(found.verdict, Verdict::TooClose);
        // One-sided guard band: 1.644854 standard uncertainties.
        assert!((found.guard_band.unwrap() - 1.644_854 * 0.05).abs() < 1e-6, "{found:?}");
        let inside = line(What::Loft, Some(limit - 50.0), Some((-5.49, 0.05 * BAND_95)), Some(50.0)).unwrap();
        assert_eq!(inside.verdict, Verdict::In);
        let outside = line(What::Loft, Some(limit - 50.0), Some((-5.31, 0.05 * BAND_95)), Some(50.0)).unwrap();
        assert_eq!(outside.verdict, Verdict::Out);
    }

    #[test]
    fn what_is_known_too_badly_cannot_be_in() {
        let found = line(What::SwingWeight, Some(32.0), Some((32.0, 0.4)), Some(0.3)).unwrap();
        assert_eq!((found.verdict, found.guard_band), (Verdict::TooClose, None));
        let unread = line(What::SwingWeight, Some(32.0), None, Some(0.3)).unwrap();
        assert_eq!((unread.verdict, unread.probability), (Verdict::NotRead, None));
    }
}
