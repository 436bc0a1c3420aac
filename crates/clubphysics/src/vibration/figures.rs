//! The figures of a `frequency` document, checked, and the set-ups made from them.

use super::beam::{Beam, RigidTip};
use super::document::{FrequencyInput, Measured, TipBody, WhatIf};
use super::line::StiffnessLine;
use super::require::deviation;
use crate::advice::Advice;
use crate::check::{above, at_least, at_most, below, enough, finite};
use crate::error::PhysicsError;
use crate::plausible::FREQUENCY_CPM;

/// Most rows of a table and set-ups of one document: enough for any shaft and set, and answered in well under a second.
const ROWS_MAX: f64 = 1000.0;
const WHAT_IF_MAX: f64 = 40.0;

/// g·cm² in a kg·m².
const G_CM2_PER_KG_M2: f64 = 1e7;

/// One club in one clamp.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Setup {
    pub(super) tip: TipBody,
    pub(super) clamp_mm: f64,
    pub(super) tip_trim_mm: f64,
    pub(super) butt_trim_mm: f64,
}

/// The figures that may carry a standard deviation, apart from the rest of the document.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Figures {
    pub(super) length_mm: f64,
    pub(super) tip_trim_mm: f64,
    pub(super) butt_trim_mm: f64,
    pub(super) clamp_mm: f64,
    pub(super) tip: TipBody,
    pub(super) load_n: f64,
    pub(super) stiffness_factor: f64,
    pub(super) mass_factor: f64,
    pub(super) measured_cpm: Option<f64>,
    pub(super) measured_tip: Option<TipBody>,
    pub(super) what_if_tips: Vec<Option<TipBody>>,
    /// Off while derivatives are taken: a step may then leave the table by a hair.
    pub(super) strict: bool,
}

impl Figures {
    pub(super) fn read(input: &FrequencyInput) -> Result<Self, PhysicsError> {
        let last_mm = input.stiffness_line.last().map_or(0.0, |row| row.position_mm);
        at_least("elements", input.elements as f64, 2.0, "", Advice::AboutThirty)?;
        at_most("elements", input.elements as f64, 400.0, "", Advice::AboutThirty)?;
        enough("stiffness_line", input.stiffness_line.len(), 2, Advice::StiffnessAtBothEnds)?;
        let (rows, setups) = (input.stiffness_line.len() as f64, input.what_if.len() as f64);
        at_most("stiffness_line", rows, ROWS_MAX, "", Advice::ThinTableOut)?;
        at_most("what_if", setups, WHAT_IF_MAX, "", Advice::AskInSecondDocument)?;
        let length_mm = input.length_mm.unwrap_or(last_mm);
        above("length_mm", length_mm, 0.0, "mm", Advice::LengthOfRawShaft)?;
        above("tip_load_n", input.tip_load_n, 0.0, "N", Advice::ForceThatBends)?;
        check_tip("tip_body", &input.tip_body)?;
        check_place("", length_mm, input.clamp_mm, input.tip_trim_mm, input.butt_trim_mm)?;
        if let Some(measured) = &input.measured {
            check_measured(input, measured, length_mm)?;
        }
        for (i, what_if) in input.what_if.iter().enumerate() {
            check_what_if(input, &format!("what_if[{i}]"), what_if, length_mm)?;
        }
        Ok(Self {
            length_mm,
            tip_trim_mm: input.tip_trim_mm,
            butt_trim_mm: input.butt_trim_mm,
            clamp_mm: input.clamp_mm,
            tip: input.tip_body,
            load_n: input.tip_load_n,
            stiffness_factor: 1.0,
            mass_factor: 1.0,
            measured_cpm: input.measured.as_ref().map(|measured| measured.frequency_cpm),
            measured_tip: input.measured.as_ref().and_then(|measured| measured.tip_body),
            what_if_tips: input.what_if.iter().map(|what_if| what_if.tip_body).collect(),
            strict: true,
        })
    }

    pub(super) fn main_setup(&self) -> Setup {
        Setup { tip: self.tip, clamp_mm: self.clamp_mm, tip_trim_mm: self.tip_trim_mm, butt_trim_mm: self.butt_trim_mm }
    }

    pub(super) fn measured_setup(&self, measured: &Measured) -> Setup {
        Setup {
            tip: self.measured_tip.unwrap_or(self.tip),
            clamp_mm: measured.clamp_mm.unwrap_or(self.clamp_mm),
            tip_trim_mm: measured.tip_trim_mm.unwrap_or(self.tip_trim_mm),
            butt_trim_mm: measured.butt_trim_mm.unwrap_or(self.butt_trim_mm),
        }
    }

    pub(super) fn what_if_setup(&self, i: usize, what_if: &WhatIf) -> Setup {
        Setup {
            tip: self.what_if_tips[i].unwrap_or(self.tip),
            clamp_mm: what_if.clamp_mm.unwrap_or(self.clamp_mm),
            tip_trim_mm: what_if.tip_trim_mm.unwrap_or(self.tip_trim_mm),
            butt_trim_mm: what_if.butt_trim_mm.unwrap_or(self.butt_trim_mm),
        }
    }

    /// The line of the document by these figures, for all set-ups: a long table takes longer to read than to bend.
    pub(super) fn line(&self, input: &FrequencyInput) -> Result<StiffnessLine, PhysicsError> {
        let mut rows = input.stiffness_line.clone();
        // The factors differ from one only while derivatives are taken.
        for row in &mut rows {
            row.stiffness_n_m2 *= self.stiffness_factor;
            row.mass_g_m *= self.mass_factor;
        }
        StiffnessLine::new(&rows, input.measured_from, input.between_rows, self.length_mm)
    }

    pub(super) fn beam(&self, line: &StiffnessLine, elements: usize, setup: &Setup) -> Result<Beam, PhysicsError> {
        let tip = RigidTip {
            mass_kg: setup.tip.mass_g / 1000.0,
            offset_m: setup.tip.offset_mm / 1000.0,
            inertia_kg_m2: setup.tip.inertia_g_cm2 / G_CM2_PER_KG_M2,
        };
        let clamp_m = (setup.butt_trim_mm + setup.clamp_mm) / 1000.0;
        let tip_m = (self.length_mm - setup.tip_trim_mm) / 1000.0;
        let make = if self.strict { Beam::new } else { Beam::build };
        make(line, clamp_m, tip_m, tip, elements)
    }
}

fn check_tip(field: &str, tip: &TipBody) -> Result<(), PhysicsError> {
    let name = |part: &str| format!("{field}.{part}");
    at_least(&name("mass_g"), tip.mass_g, 0.0, "g", Advice::MassOfHeadOrZero)?;
    finite(&name("offset_mm"), tip.offset_mm, "mm")?;
    at_least(&name("inertia_g_cm2"), tip.inertia_g_cm2, 0.0, "g·cm²", Advice::ZeroForSmallBody)?;
    deviation(&name("mass_g_sd"), tip.mass_g_sd, "g")?;
    deviation(&name("offset_mm_sd"), tip.offset_mm_sd, "mm")?;
    deviation(&name("inertia_g_cm2_sd"), tip.inertia_g_cm2_sd, "g·cm²")?;
    Ok(())
}

/// Clamp and trims of one set-up; `prefix` names the part of the document they stand in.
fn check_place(prefix: &str, length_mm: f64, clamp: f64, tip_trim: f64, butt_trim: f64) -> Result<(), PhysicsError> {
    let name = |part: &str| if prefix.is_empty() { part.to_owned() } else { format!("{prefix}.{part}") };
    at_least(&name("clamp_mm"), clamp, 0.0, "mm", Advice::LengthInClamp)?;
    at_least(&name("tip_trim_mm"), tip_trim, 0.0, "mm", Advice::CutOrZero)?;
    at_least(&name("butt_trim_mm"), butt_trim, 0.0, "mm", Advice::CutOrZero)?;
    let advice = Advice::ShaftUsedUp;
    below(&name("tip_trim_mm"), tip_trim, length_mm, "mm", advice.clone())?;
    below(&name("butt_trim_mm"), butt_trim, length_mm - tip_trim, "mm", advice.clone())?;
    below(&name("clamp_mm"), clamp, length_mm - tip_trim - butt_trim, "mm", advice)?;
    Ok(())
}

fn check_measured(input: &FrequencyInput, measured: &Measured, length_mm: f64) -> Result<(), PhysicsError> {
    FREQUENCY_CPM.check("measured.frequency_cpm", measured.frequency_cpm)?;
    deviation("measured.frequency_cpm_sd", measured.frequency_cpm_sd, "cpm")?;
    if let Some(tip) = &measured.tip_body {
        check_tip("measured.tip_body", tip)?;
    }
    check_place(
        "measured",
        length_mm,
        measured.clamp_mm.unwrap_or(input.clamp_mm),
        measured.tip_trim_mm.unwrap_or(input.tip_trim_mm),
        measured.butt_trim_mm.unwrap_or(input.butt_trim_mm),
    )
}

fn check_what_if(input: &FrequencyInput, field: &str, what_if: &WhatIf, length_mm: f64) -> Result<(), PhysicsError> {
    if let Some(tip) = &what_if.tip_body {
        check_tip(&format!("{field}.tip_body"), tip)?;
    }
    check_place(
        field,
        length_mm,
        what_if.clamp_mm.unwrap_or(input.clamp_mm),
        what_if.tip_trim_mm.unwrap_or(input.tip_trim_mm),
        what_if.butt_trim_mm.unwrap_or(input.butt_trim_mm),
    )
}
