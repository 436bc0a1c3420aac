//! The trim topic.

use crate::advice::{Advice, Clash};
use serde_json::{Value, json};

use super::{
    Convention, FinishedInput, FinishedLength, FinishedOutput, MassLine, MassLinePiece, RulesLengthOutput, Shaft, Tip,
    TrimInput, TrimOutput, TrimRemark, TrimmedPiece, rules_length::RulesGeometry, shaft::check_trim,
};
use crate::{
    Bound, PhysicsError, check, plausible,
    real::{Dual, Real},
    topic::{Topic, described, through_json},
    uncertainty::{Estimate, Inputs, Point, Var, results},
};

/// Grams times square millimetres in a kg·cm².
const G_MM2_IN_KG_CM2: f64 = 1e5;
/// How far a table's length may differ from the shaft's.
const TABLE_GAP_MM: f64 = 1.0;

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "trim",
    example,
    input: described::<TrimInput>,
    output: described::<TrimOutput>,
    run: |input| through_json(&input, trim),
};

fn example() -> Value {
    json!({
        "mass_g": 128.0, "mass_g_sd": 0.1, "length_mm": 1016.0, "length_mm_sd": 0.3,
        "balance_point_mm": 500.0, "balance_point_mm_sd": 1.0,
        "tip_trim_mm": 25.4, "tip_trim_mm_sd": 0.3,
        "finished": {
            "length_mm": 965.2, "convention": "to_cap", "cap_mm": 3.0, "cap_mm_sd": 0.2,
            "bore_to_ground_mm": 33.0, "bore_to_ground_mm_sd": 0.5, "bore_depth_mm": 32.0,
            "rules": { "lie_deg": 61.0, "heel_radius_mm": 6.5, "sole_contact_mm": 35.0, "sole_radius_mm": 250.0 }
        }
    })
}

/// The inputs of a trim.
struct Cut {
    mass: Var,
    length: Var,
    balance_point: Var,
    tip: Var,
    /// Given; else it follows from the finished length.
    butt: Option<Var>,
    finished: Option<Finished>,
    table: Option<MassLine<Dual>>,
}

/// The inputs of the finished club.
struct Finished {
    length: Option<Var>,
    cap: Var,
    bore_to_ground: Var,
    off_bottom_mm: f64,
    convention: Convention,
    rules: Option<RulesGeometry>,
}

/// A shaft after its cuts.
///
/// Accuracy: rounding of some thirty operations; cutting nothing changes nothing and two cuts equal one to 1e-12
/// (`tests/val_trim.rs`).
///
/// # Errors
///
/// [`PhysicsError`] where a figure is impossible, the mass line cannot have the balance point, the trims leave nothing,
/// the raw shaft is too short for the finished length, or a taper tip is to be cut without `allow_taper_tip_trim`.
///
/// # Examples
///
/// ```
/// use clubphysics::trim::{TrimInput, trim};
/// // An even shaft of a metre keeps 800 of its 1000 mm, so 80 of its 100 g, and balances in the middle of them.
/// let shaft = TrimInput { mass_g: 100.0, length_mm: 1000.0, balance_point_mm: 500.0, ..TrimInput::default() };
/// let cut = trim(&TrimInput { tip_trim_mm: 50.0, butt_trim_mm: Some(150.0), ..shaft })?;
/// assert!((cut.mass_g - 80.0).abs() < 1e-9 && (cut.balance_point_mm - 400.0).abs() < 1e-9);
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
pub fn trim(input: &TrimInput) -> Result<TrimOutput, PhysicsError> {
    let warnings = check_input(input)?;
    let mut inputs = Inputs::default();
    let cut = read(input, &mut inputs)?;
    inputs.correlate_named(&input.correlations)?;
    let (kept, lengths, by_rules) = inputs.results(|x| cut.results(x))?;

    let [raw_mass_line, mass_line] = mass_lines(input, kept.butt_length_mm.value)?;
    let piece = |length_mm: Estimate, mass_g: Estimate| TrimmedPiece {
        length_mm: length_mm.value,
        length_mm_sd: length_mm.sd,
        mass_g: mass_g.value,
        mass_g_sd: mass_g.sd,
    };
    let finished = |(asked, lengths): (&FinishedInput, Lengths<Estimate>)| FinishedOutput {
        to_shaft_end_mm: lengths.to_shaft_end_mm.value,
        to_shaft_end_mm_sd: lengths.to_shaft_end_mm.sd,
        to_cap_mm: lengths.to_cap_mm.value,
        to_cap_mm_sd: lengths.to_cap_mm.sd,
        insertion_mm: asked.bore_depth_mm.map(|depth_mm| depth_mm - asked.off_bottom_mm),
        rules: by_rules.map(|by_rules| RulesLengthOutput::new(by_rules.length_mm, by_rules.beyond_axis_length_mm)),
    };
    Ok(TrimOutput {
        mass_g: kept.mass_g.value,
        mass_g_sd: kept.mass_g.sd,
        length_mm: kept.length_mm.value,
        length_mm_sd: kept.length_mm.sd,
        balance_point_mm: kept.balance_point_mm.value,
        balance_point_mm_sd: kept.balance_point_mm.sd,
        inertia_about_centre_kg_cm2: kept.inertia_about_centre_kg_cm2.value,
        inertia_about_centre_kg_cm2_sd: kept.inertia_about_centre_kg_cm2.sd,
        butt_piece: piece(kept.butt_length_mm, kept.butt_mass_g),
        tip_piece: piece(kept.tip_length_mm, kept.tip_mass_g),
        raw_mass_line,
        mass_line,
        finished: input.finished.as_ref().zip(lengths).map(finished),
        warnings,
    })
}

fn check_input(input: &TrimInput) -> Result<Vec<TrimRemark>, PhysicsError> {
    plausible::SHAFT_MASS_G.check("mass_g", input.mass_g)?;
    plausible::SHAFT_LENGTH_MM.check("length_mm", input.length_mm)?;
    check::positive("balance_point_mm", input.balance_point_mm, "mm")?;
    let advice = Advice::BalancePointOnShaft;
    check::below("balance_point_mm", input.balance_point_mm, input.length_mm, "mm", advice)?;
    check_trim(input.length_mm, input.tip_trim_mm, input.butt_trim_mm.unwrap_or(0.0))?;
    if input.mass_table.is_some() && input.steps.is_some() {
        return Err(PhysicsError::Contradiction {
            what: Clash::BothGiven { first: "mass_table".into(), second: "steps".into() },
            advice: Box::new(Advice::MassLineOneWay),
        });
    }
    if input.tip == Tip::Parallel || input.tip_trim_mm == 0.0 {
        return Ok(Vec::new());
    }
    if !input.allow_taper_tip_trim {
        return Err(PhysicsError::Contradiction {
            what: Clash::TaperTrim { trim_mm: input.tip_trim_mm },
            advice: Box::new(Advice::TaperTipAtButt),
        });
    }
    Ok(vec![TrimRemark::TaperTipCut { tip_trim_mm: input.tip_trim_mm }])
}

fn read(input: &TrimInput, inputs: &mut Inputs) -> Result<Cut, PhysicsError> {
    if input.butt_trim_mm.is_none() && input.butt_trim_mm_sd.is_some() {
        return Err(PhysicsError::Missing { field: "butt_trim_mm".to_owned(), advice: Box::new(Advice::SdApart) });
    }
    let finished_length_mm = input.finished.as_ref().and_then(|finished| finished.length_mm);
    match (input.butt_trim_mm, finished_length_mm, &input.finished) {
        (Some(_), Some(_), _) => {
            return Err(PhysicsError::Contradiction {
                what: Clash::BothDetermine { first: "butt_trim_mm".into(), second: "finished.length_mm".into() },
                advice: Box::new(Advice::LeaveOneOut),
            });
        }
        (None, None, Some(_)) => {
            return Err(PhysicsError::Missing {
                field: "finished.length_mm".to_owned(),
                advice: Box::new(Advice::LengthOrButtTrim),
            });
        }
        _ => {}
    }
    Ok(Cut {
        mass: inputs.add("mass_g", input.mass_g, input.mass_g_sd)?,
        length: inputs.add("length_mm", input.length_mm, input.length_mm_sd)?,
        balance_point: inputs.add("balance_point_mm", input.balance_point_mm, input.balance_point_mm_sd)?,
        tip: inputs.add("tip_trim_mm", input.tip_trim_mm, input.tip_trim_mm_sd)?,
        butt: match (input.butt_trim_mm, finished_length_mm) {
            (None, Some(_)) => None,
            (given, _) => Some(inputs.add("butt_trim_mm", given.unwrap_or(0.0), input.butt_trim_mm_sd)?),
        },
        finished: input.finished.as_ref().map(|finished| read_finished(finished, inputs)).transpose()?,
        table: table(input)?,
    })
}

fn read_finished(input: &FinishedInput, inputs: &mut Inputs) -> Result<Finished, PhysicsError> {
    input.length_mm.map(|length_mm| plausible::CLUB_LENGTH_MM.check("finished.length_mm", length_mm)).transpose()?;
    plausible::CAP_MM.check("finished.cap_mm", input.cap_mm)?;
    plausible::BORE_TO_GROUND_MM.check("finished.bore_to_ground_mm", input.bore_to_ground_mm)?;
    if let Some(depth_mm) = input.bore_depth_mm {
        plausible::BORE_DEPTH_MM.check("finished.bore_depth_mm", depth_mm)?;
        let advice = Advice::TipOutsideBore;
        check::below("finished.off_bottom_mm", input.off_bottom_mm, depth_mm, "mm", advice)?;
    }
    Ok(Finished {
        length: input.length_mm.map(|length_mm| inputs.add("finished.length_mm", length_mm, None)).transpose()?,
        cap: inputs.add("finished.cap_mm", input.cap_mm, input.cap_mm_sd)?,
        bore_to_ground: inputs.add(
            "finished.bore_to_ground_mm",
            input.bore_to_ground_mm,
            input.bore_to_ground_mm_sd,
        )?,
        off_bottom_mm: check::not_negative("finished.off_bottom_mm", input.off_bottom_mm, "mm")?,
        convention: input.convention,
        rules: input.rules.as_ref().map(|rules| RulesGeometry::read(rules, inputs)).transpose()?,
    })
}

/// The mass line as given by table or steps, before it is fitted to the weighed figures.
fn table<T: Real>(input: &TrimInput) -> Result<Option<MassLine<T>>, PhysicsError> {
    let (field, line) = if let Some(rows) = &input.mass_table {
        let rows: Vec<_> = rows.iter().map(|row| (row.position_mm, row.density_g_m)).collect();
        if let Some((first_mm, _)) = rows.first() {
            check::at_most("mass_table[0].position_mm", *first_mm, 0.0, "mm", Advice::StartTableAtButt)?;
        }
        ("mass_table", MassLine::<T>::from_table("mass_table", &rows)?)
    } else if let Some(steps) = &input.steps {
        let steps: Vec<_> = steps.iter().map(|step| (step.length_mm, step.mass_g)).collect();
        ("steps", MassLine::from_steps("steps", &steps)?)
    } else {
        return Ok(None);
    };
    let table_mm = line.length_mm().value();
    if (table_mm - input.length_mm).abs() > TABLE_GAP_MM {
        return Err(PhysicsError::OutOfRange {
            field: format!("length of {field}"),
            value: table_mm,
            bound: if table_mm > input.length_mm { Bound::AtMost } else { Bound::AtLeast },
            limit: input.length_mm,
            unit: "mm",
            advice: Box::new(Advice::TableToBothEnds),
        });
    }
    Ok(Some(line))
}

results! {
    /// The cut shaft and the two pieces that came off it.
    struct Kept {
        mass_g,
        length_mm,
        /// From the new butt end.
        balance_point_mm,
        inertia_about_centre_kg_cm2,
        butt_length_mm,
        butt_mass_g,
        tip_length_mm,
        tip_mass_g,
    }
}

results! {
    /// Lengths of the finished club.
    struct Lengths { to_shaft_end_mm, to_cap_mm }
}

results! {
    /// The length by the 60-degree plane, and what of it lies beyond the length to the cap.
    struct ByRules { length_mm, beyond_axis_length_mm }
}

/// The shaft, and of the finished club what was asked for.
type Trimmed = (Kept<Dual>, Option<Lengths<Dual>>, Option<ByRules<Dual>>);

impl Cut {
    fn results(&self, x: &Point<'_, Dual>) -> Result<Trimmed, PhysicsError> {
        let (raw_mm, tip_mm) = (x[self.length], x[self.tip]);
        let butt_mm = match (self.butt, &self.finished) {
            (Some(butt), _) => x[butt],
            (None, Some(finished)) => raw_mm - tip_mm - finished.length(x, raw_mm).cut_shaft_length_mm()?,
            (None, None) => Dual::fixed(0.0),
        };
        if butt_mm.value < 0.0 {
            return Err(PhysicsError::OutOfRange {
                field: "length_mm".to_owned(),
                value: raw_mm.value,
                bound: Bound::AtLeast,
                limit: raw_mm.value - butt_mm.value,
                unit: "mm",
                advice: Box::new(Advice::RawShaftTooShort),
            });
        }
        check_trim(raw_mm.value, tip_mm.value, butt_mm.value)?;
        let shaft = Shaft { mass_g: x[self.mass], length_mm: raw_mm, balance_point_mm: x[self.balance_point] };
        let line = raw_line(&shaft, self.table.as_ref())?;
        let [mass_g, first_g_mm, second_g_mm2] = line.part(butt_mm, raw_mm - tip_mm).moments();
        let centre_mm = first_g_mm / mass_g;
        let own = (second_g_mm2 - first_g_mm * centre_mm) / G_MM2_IN_KG_CM2;
        let zero = Dual::fixed(0.0);
        let butt_g = line.part(zero, butt_mm).moments()[0];
        let tip_g = line.part(raw_mm - tip_mm, raw_mm).moments()[0];
        let length_mm = raw_mm - tip_mm - butt_mm;
        let kept = Kept {
            mass_g,
            length_mm,
            balance_point_mm: centre_mm,
            inertia_about_centre_kg_cm2: own,
            butt_length_mm: butt_mm,
            butt_mass_g: butt_g,
            tip_length_mm: tip_mm,
            tip_mass_g: tip_g,
        };
        let Some(finished) = &self.finished else { return Ok((kept, None, None)) };
        let to_shaft_end_mm = FinishedLength { convention: Convention::ToShaftEnd, ..finished.length(x, raw_mm) }
            .finished_with_mm(length_mm)?;
        let to_cap_mm = to_shaft_end_mm + x[finished.cap];
        let by_rules = finished.rules.as_ref().map(|rules| {
            let beyond_axis_length_mm = rules.beyond_axis_length_mm(x[rules.lie()]);
            ByRules { length_mm: to_cap_mm + beyond_axis_length_mm, beyond_axis_length_mm }
        });
        Ok((kept, Some(Lengths { to_shaft_end_mm, to_cap_mm }), by_rules))
    }
}

impl Finished {
    fn length(&self, x: &Point<'_, Dual>, otherwise_mm: Dual) -> FinishedLength<Dual> {
        FinishedLength {
            finished_length_mm: self.length.map_or(otherwise_mm, |length| x[length]),
            convention: self.convention,
            cap_mm: x[self.cap],
            bore_to_ground_mm: x[self.bore_to_ground],
            off_bottom_mm: Dual::fixed(self.off_bottom_mm),
        }
    }
}

/// Mass line of the raw shaft: straight, or the table's shape fitted to the weighed figures.
fn raw_line<T: Real>(shaft: &Shaft<T>, table: Option<&MassLine<T>>) -> Result<MassLine<T>, PhysicsError> {
    match table {
        None => shaft.mass_line(),
        Some(table) => table.stretched(shaft.length_mm).fitted(shaft.mass_g, shaft.balance_point_mm),
    }
}

/// Mass lines of the raw and of the cut shaft.
fn mass_lines(input: &TrimInput, butt_mm: f64) -> Result<[Vec<MassLinePiece>; 2], PhysicsError> {
    let shaft = Shaft { mass_g: input.mass_g, length_mm: input.length_mm, balance_point_mm: input.balance_point_mm };
    let raw = raw_line(&shaft, table::<f64>(input)?.as_ref())?;
    let cut = raw.part(butt_mm, input.length_mm - input.tip_trim_mm);
    Ok([&raw, &cut].map(|line| {
        let piece = |piece: &super::Segment| MassLinePiece {
            from_mm: piece.from_mm,
            to_mm: piece.to_mm,
            from_g_m: piece.from_g_mm * 1000.0,
            to_g_m: piece.to_g_mm * 1000.0,
        };
        line.segments().iter().map(piece).collect()
    }))
}
