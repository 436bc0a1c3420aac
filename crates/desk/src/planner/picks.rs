//! One club with given parts: whether they fit, how they are cut, what they should read.

use super::frequency::Lines;
use bench::assembly::Assembly;
use trade::action::Action;
use trade::error::TradeError;
use trade::fit::{self, BlankUse};
use trade::job::JobClub;
use trade::kind::Hand;
use trade::model::PartKind;
use trade::part::Part;
use trade::places::Places;
use trade::plan::{ClubPlan, Expected, ExpectedInertia, Extra, Plan, PlannedPart};
use trade::reading::What;
use trade::tip_weight::tip_weight_fits;

/// A part as a plan copies it.
#[must_use]
pub(crate) fn planned(part: &Part, mass_g: f64) -> PlannedPart {
    PlannedPart {
        kind: part.kind,
        part: part.id.clone(),
        code: part.code.clone(),
        model: part.model.clone(),
        mass_g,
        weighed: part.mass_g.is_some() && part.count.is_none(),
        tip_lost_mm: part.tip_trimmed_mm,
        raw_cpm: part.cpm.filter(|_| part.tip_trimmed_mm.is_none()),
        profile: part.profile.clone(),
        lot: part.lot.clone(),
        place: part.place.clone(),
    }
}

/// The parts of one club.
#[derive(Debug, Clone)]
pub struct Picks<'a> {
    /// The head that was chosen.
    pub head: &'a Part,
    /// The raw shaft.
    pub shaft: &'a Part,
    /// The grip, or the bulk it comes from.
    pub grip: &'a Part,
    /// The adapter, where the head takes one.
    pub adapter: Option<&'a Part>,
    /// The ferrule, where there is one.
    pub ferrule: Option<&'a Part>,
    /// What goes into the tip.
    pub tips: Vec<&'a Part>,
    /// What the screw weighs more than the one that the head comes with; 0 for that one.
    pub screw_more_g: f64,
}

impl<'a> Picks<'a> {
    /// Sorts the parts of one club by kind; of the kinds that a club has one of, the first counts.
    ///
    /// # Errors
    /// What `lacking` says of a head, shaft or grip that is not among them.
    pub fn of<E>(parts: impl IntoIterator<Item = &'a Part>, lacking: impl Fn(PartKind) -> E) -> Result<Self, E> {
        let parts: Vec<&Part> = parts.into_iter().collect();
        let first = |kind| parts.iter().copied().find(|p| p.kind == kind);
        let need = |kind| first(kind).ok_or_else(|| lacking(kind));
        Ok(Self {
            head: need(PartKind::Head)?,
            shaft: need(PartKind::Shaft)?,
            grip: need(PartKind::Grip)?,
            adapter: first(PartKind::Adapter),
            ferrule: first(PartKind::Ferrule),
            tips: parts.iter().copied().filter(|p| p.kind == PartKind::TipWeight).collect(),
            screw_more_g: 0.0,
        })
    }
}

/// Parts that were chosen for a place in the tray.
#[derive(Debug, Clone, Copy)]
pub struct Taken<'a> {
    /// Place in the tray.
    pub slot: i64,
    /// Head, shaft and grip, and whatever else goes in; a bulk twice for two of it.
    pub parts: &'a [Part],
    /// What the screw in its head weighs more than the one that it comes with; 0 for that one.
    pub screw_more_g: f64,
}

/// A plan from parts that were chosen by hand. Clubs that are not named stay without one. `lines` are the frequency lines
/// of the stock.
///
/// # Errors
/// A club without head, shaft or grip; a part twice, or not free; what [`plan_with`] refuses.
pub fn plan_of(assembly: Assembly<'_>, taken: &[Taken<'_>], lines: &Lines) -> Result<Plan, TradeError> {
    let mut seen = std::collections::BTreeMap::<&str, i64>::new();
    for part in taken.iter().flat_map(|t| t.parts) {
        let times = seen.entry(part.code.as_str()).or_default();
        *times += 1;
        if *times > part.count.unwrap_or(1) || !part.is_free() {
            return Err(TradeError::refused(PickFault::NotFree { code: part.code.clone() }));
        }
    }
    let mut clubs = Vec::with_capacity(assembly.job.clubs.len());
    for club in &assembly.job.clubs {
        let Some(chosen) = taken.iter().find(|t| t.slot == club.slot) else {
            clubs.push(None);
            continue;
        };
        let picks = Picks::of(chosen.parts, |kind| {
            TradeError::refused(PickFault::Missing { number: club.target.number.clone(), kind })
        })?;
        let picks = Picks { screw_more_g: chosen.screw_more_g, ..picks };
        let model = assembly.library.shaft(&picks.shaft.model)?;
        clubs.push(Some(lines.note(model, picks.shaft, club, plan_with(assembly, club, &picks)?)));
    }
    expect(assembly, &mut clubs)?;
    let frequency = lines.told(assembly.library, assembly.job.clubs.iter().map(|c| &c.target));
    Ok(Plan { clubs, missing: Vec::new(), frequency, cost: 0.0, bound: 0.0, proven: false })
}

/// Cuts and bends of one club with given parts; without expected readings, reasons, and how its
/// shaft lies against its frequency line ([`Lines::note`]).
///
/// # Errors
/// A part that does not fit, a shaft that is too short, a model that the library lacks.
pub fn plan_with(assembly: Assembly<'_>, club: &JobClub, picks: &Picks<'_>) -> Result<ClubPlan, TradeError> {
    let target = &club.target;
    let library = assembly.library;
    let (head_model, head_number) =
        library.head_number(&picks.head.model, picks.head.number.as_deref().unwrap_or_default())?;
    let shaft_model = library.shaft(&picks.shaft.model)?;
    let grip_model = library.grip(&picks.grip.model)?;
    picks_fit(assembly, club, picks)?;
    let mut parts = vec![
        planned(picks.head, picks.head.mass_g.unwrap_or(head_number.mass_g)),
        planned(picks.shaft, fit::raw_shaft(shaft_model, picks.shaft, &target.number)?.mass_g),
        planned(picks.grip, picks.grip.mass_g.unwrap_or(grip_model.mass_g)),
    ];
    let setting = target.adapter_setting.as_deref();
    let (mut off_bottom_mm, mut turned_loft_deg, mut turned_lie_deg) = (0.0, 0.0, 0.0);
    if let Some(part) = picks.adapter {
        let model = library.adapter(&part.model)?;
        off_bottom_mm += model.lifts_mm(setting);
        (turned_loft_deg, turned_lie_deg) = model.turns_deg(setting);
        parts.push(planned(part, part.mass_g.unwrap_or(model.mass_g)));
    }
    if let Some(part) = picks.ferrule {
        parts.push(planned(part, part.mass_g.unwrap_or(library.ferrule(&part.model)?.mass_g)));
    }
    for part in &picks.tips {
        let model = library.tip_weight(&part.model)?;
        if !tip_weight_fits(model, shaft_model.tip_diameter_mm) {
            return Err(TradeError::refused(PickFault::TipWeightTooWide {
                code: part.code.clone(),
                tip_mm: shaft_model.tip_diameter_mm,
            }));
        }
        off_bottom_mm += model.flange_mm;
        parts.push(planned(part, part.mass_g.unwrap_or(model.mass_g)));
    }
    let cut_mm = fit::cut_length_mm(target, head_number, grip_model, off_bottom_mm)?;
    let raw = fit::raw_shaft(shaft_model, picks.shaft, &target.number)?;
    let cut = fit::cut(shaft_model, raw, picks.shaft.tip_trimmed_mm.unwrap_or(0.0), &target.number, cut_mm)?
        .ok_or_else(|| {
            let (code, number) = (picks.shaft.code.clone(), target.number.clone());
            TradeError::refused(PickFault::ShaftTooShort { code, number })
        })?;
    let extras = screw(
        assembly,
        picks,
        Places::new(cut_mm, head_number.bore_to_ground_mm + off_bottom_mm, head_model.bore_depth_mm),
    )?;
    Ok(ClubPlan {
        parts,
        head_number: head_number.number.clone(),
        tip_trim_mm: cut.tip_trim_mm,
        butt_cut_mm: cut.butt_cut_mm,
        cut_shaft_mm: cut.shaft.length_mm,
        cut_shaft_mass_g: cut.shaft.mass_g,
        cut_shaft_balance_point_mm: cut.shaft.balance_point_mm,
        tip_to_ground_mm: head_number.bore_to_ground_mm + off_bottom_mm,
        bend_loft_deg: target.loft_deg - picks.head.loft_deg.unwrap_or(head_number.loft_deg) - turned_loft_deg,
        bend_lie_deg: target.lie_deg - picks.head.lie_deg.unwrap_or(head_number.lie_deg) - turned_lie_deg,
        expected: Vec::new(),
        chance: 0.0,
        reasons: Vec::new(),
        swing_inertia: None,
        frequency: None,
        extras,
        neighbour_blank: match fit::blank_use(shaft_model, picks.shaft, &target.number) {
            Some(BlankUse::Neighbour(_)) => picks.shaft.number.clone(),
            _ => None,
        },
    })
}

/// The screw in the head, where it is not the one that it comes with.
fn screw(assembly: Assembly<'_>, picks: &Picks<'_>, places: Places) -> Result<Vec<Extra>, TradeError> {
    let mass_g = picks.screw_more_g;
    if mass_g.abs() < 1e-9 {
        return Ok(Vec::new());
    }
    let head = assembly.library.head(&picks.head.model)?;
    if head.screw_of(mass_g).is_none() {
        return Err(TradeError::refused(PickFault::NoSuchScrew { head: head.name.clone(), more_g: mass_g }));
    }
    let arm_mm = places.head_mm(head.offset_prior_mm().0);
    // It is in before anything is read.
    Ok(vec![Extra { action: Action::Screw, mass_g, arm_mm, at: assembly.job.made_at }])
}

/// Refuses parts that do not go into this club: another hand, another number, a bore that does not hold the tip, a
/// blank that the model does not allow.
fn picks_fit(assembly: Assembly<'_>, club: &JobClub, picks: &Picks<'_>) -> Result<(), TradeError> {
    let refused = |fault: PickFault| Err(TradeError::refused(fault));
    let code = |part: &Part| part.code.clone();
    let head = assembly.library.head(&picks.head.model)?;
    let shaft = assembly.library.shaft(&picks.shaft.model)?;
    let hand = assembly.job.sheet.hand;
    let number = &club.target.number;
    if head.hand != hand {
        return refused(PickFault::OtherHand { code: code(picks.head), hand: head.hand, wanted: hand });
    }
    if !picks.head.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(number)) {
        return refused(PickFault::OtherNumber {
            code: code(picks.head),
            is: picks.head.number.clone(),
            number: number.clone(),
        });
    }
    let adapter = picks.adapter.map(|part| assembly.library.adapter(&part.model)).transpose()?;
    if let Some((part, _)) = picks.adapter.zip(adapter).filter(|(_, a)| a.fits_head_model != head.code) {
        return refused(PickFault::AdapterMisfit { code: code(part), head: head.name.clone() });
    }
    if head.takes_adapter && adapter.is_none() {
        return refused(PickFault::AdapterMissing { head: head.name.clone(), number: number.clone() });
    }
    let adapter_bore_mm = adapter.map(|a| a.bore_diameter_mm);
    if !fit::head_takes_shaft(head, adapter_bore_mm, shaft) {
        return refused(PickFault::TipMisfit {
            code: code(picks.shaft),
            tip_mm: shaft.tip_diameter_mm,
            bore_mm: adapter_bore_mm.unwrap_or(head.bore_diameter_mm),
        });
    }
    if fit::blank_use(shaft, picks.shaft, number).is_none() {
        return refused(PickFault::OtherBlank { code: code(picks.shaft), blank: picks.shaft.number.clone() });
    }
    Ok(())
}

/// Expected readings of every swing weight step and the chance of each club, from the belief before any reading.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn expect(assembly: Assembly<'_>, plans: &mut [Option<ClubPlan>]) -> Result<(), TradeError> {
    let mut job = assembly.job.clone();
    for (club, plan) in job.clubs.iter_mut().zip(plans.iter()) {
        club.plan.clone_from(plan);
    }
    let assembly = Assembly { job: &job, ..assembly };
    let believed = assembly.believe(&[])?;
    for (club, plan) in job.clubs.iter().zip(plans.iter_mut()) {
        let Some(plan) = plan else { continue };
        for step in job.steps.iter().filter(|s| s.asks.contains(&What::SwingWeight)) {
            if let Some(e) = believed.expected(&club.id, What::SwingWeight, &step.on)? {
                plan.expected.push(Expected {
                    step: step.key.clone(),
                    swing_weight_points: e.value,
                    band_points: e.band,
                });
            }
        }
        plan.swing_inertia = believed
            .swing_inertia(&club.id)?
            .map(|found| ExpectedInertia { value_kg_cm2: found.value_kg_cm2, band_kg_cm2: found.band_kg_cm2 });
        plan.chance = believed.finish(&club.id)?.map_or(0.0, |f| f.chance);
    }
    Ok(())
}

fact::facts! {
    /// What is refused of the parts that were chosen for a club.
    pub(crate) enum PickFault: "pick_fault" {
        NotFree { code: String },
        Missing { number: String, kind: PartKind },
        TipWeightTooWide { code: String, tip_mm: f64 },
        ShaftTooShort { code: String, number: String },
        OtherHand { code: String, hand: Hand, wanted: Hand },
        OtherNumber { code: String, is: Option<String>, number: String },
        AdapterMisfit { code: String, head: String },
        AdapterMissing { head: String, number: String },
        TipMisfit { code: String, tip_mm: f64, bore_mm: f64 },
        OtherBlank { code: String, blank: Option<String> },
        NoSuchScrew { head: String, more_g: f64 },
    }
}
