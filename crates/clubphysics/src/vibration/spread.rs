//! First-order standard deviations of the frequencies.

use super::document::{FrequencyInput, TipBody};
use super::figures::Figures;
use super::require::deviation;
use super::topic::{Answer, evaluate};
use crate::error::PhysicsError;
use crate::uncertainty::{Estimate, Inputs, Var, results};

/// Share of a standard deviation by which a figure is moved: far above rounding, far below curvature, and small enough
/// not to leave the shaft.
const SHARE: f64 = 0.1;

results! {
    /// The set-up asked for.
    pub(super) struct SetUp {
        factor,
        deflection_mm,
        tip_stiffness_n_m,
        uncalibrated_cpm,
        free_length_mm,
        free_shaft_mass_g,
    }
}

results! {
    /// One what-if.
    pub(super) struct Other {
        frequency_cpm,
        /// Against the set-up asked for. It stands on its own: what both sides share cancels in it.
        change_cpm,
        deflection_mm,
    }
}

results! {
    /// One mode of the set-up asked for.
    pub(super) struct Mode { frequency_cpm }
}

/// All answers, by name.
type Answers<N> = (SetUp<N>, Vec<Other<N>>, Vec<Mode<N>>);

/// The standard deviations of the answers; none where no figure had one.
pub(super) struct Spread(Option<Answers<Estimate>>);

/// Where one figure stands among the figures.
type Place = Box<dyn Fn(&mut Figures, f64)>;

/// One figure of the document: name, unit, value, standard deviation, and where it stands.
type Uncertain = (String, &'static str, f64, Option<f64>, Place);

/// One figure of a tip body: name, unit, value, standard deviation, and where it stands.
type TipFigure = (&'static str, &'static str, f64, Option<f64>, fn(&mut TipBody, f64));

impl Spread {
    /// `full` is the answer at the figures themselves.
    pub(super) fn of(input: &FrequencyInput, figures: &Figures, full: &Answer) -> Result<Self, PhysicsError> {
        let mut inputs = Inputs::default();
        let mut places: Vec<(Var, Place)> = Vec::new();
        let mut any = false;
        for (field, unit, value, sd, place) in uncertain_figures(input, figures) {
            deviation(&format!("{field}_sd"), sd, unit)?;
            any |= sd.is_some();
            places.push((inputs.add(field, value, sd)?, place));
        }
        inputs.correlate_named(&input.correlations)?;
        if !any {
            return Ok(Self(None));
        }
        let answers = inputs.results_stepped(SHARE, named(full), |x| {
            let mut moved = Figures { strict: false, ..figures.clone() };
            places.iter().for_each(|(var, put)| put(&mut moved, x[*var]));
            Ok(named(&evaluate(input, &moved)?))
        })?;
        Ok(Self(Some(answers)))
    }

    /// Standard deviation of a figure of the set-up.
    pub(super) fn set_up(&self, of: fn(&SetUp<Estimate>) -> Estimate) -> Option<f64> {
        self.0.as_ref().map(|(set_up, ..)| sd(of(set_up)))
    }

    /// Standard deviation of a figure of a what-if.
    pub(super) fn what_if(&self, i: usize, of: fn(&Other<Estimate>) -> Estimate) -> Option<f64> {
        self.0.as_ref().and_then(|(_, others, _)| Some(sd(of(others.get(i)?))))
    }

    pub(super) fn frequency_cpm(&self, mode: usize) -> Option<f64> {
        self.0.as_ref().and_then(|(.., modes)| Some(sd(modes.get(mode)?.frequency_cpm)))
    }
}

/// Where any figure has a standard deviation, every answer has one: zero where it depends on none of them.
fn sd(estimate: Estimate) -> f64 {
    estimate.sd.unwrap_or(0.0)
}

fn named(answer: &Answer) -> Answers<f64> {
    let set_up = SetUp {
        factor: answer.factor,
        deflection_mm: answer.deflection_mm,
        tip_stiffness_n_m: answer.tip_stiffness_n_m,
        uncalibrated_cpm: answer.uncalibrated_cpm,
        free_length_mm: answer.free_length_mm,
        free_shaft_mass_g: answer.free_shaft_mass_g,
    };
    let other = |&(frequency_cpm, deflection_mm): &(f64, f64)| Other {
        frequency_cpm,
        change_cpm: frequency_cpm - answer.frequencies_cpm[0],
        deflection_mm,
    };
    let mode = |&frequency_cpm: &f64| Mode { frequency_cpm };
    (set_up, answer.predicted.iter().map(other).collect(), answer.frequencies_cpm.iter().map(mode).collect())
}

fn uncertain_figures(input: &FrequencyInput, figures: &Figures) -> Vec<Uncertain> {
    let mut list: Vec<Uncertain> = vec![
        ("length_mm".into(), "mm", figures.length_mm, input.length_mm_sd, Box::new(|f, to| f.length_mm = to)),
        ("tip_trim_mm".into(), "mm", figures.tip_trim_mm, input.tip_trim_mm_sd, Box::new(|f, to| f.tip_trim_mm = to)),
        (
            "butt_trim_mm".into(),
            "mm",
            figures.butt_trim_mm,
            input.butt_trim_mm_sd,
            Box::new(|f, to| f.butt_trim_mm = to),
        ),
        ("clamp_mm".into(), "mm", figures.clamp_mm, input.clamp_mm_sd, Box::new(|f, to| f.clamp_mm = to)),
        ("tip_load_n".into(), "N", figures.load_n, input.tip_load_n_sd, Box::new(|f, to| f.load_n = to)),
        (
            "stiffness_factor".into(),
            "1",
            figures.stiffness_factor,
            input.stiffness_factor_sd,
            Box::new(|f, to| f.stiffness_factor = to),
        ),
        ("mass_factor".into(), "1", figures.mass_factor, input.mass_factor_sd, Box::new(|f, to| f.mass_factor = to)),
    ];
    push_tip(&mut list, "tip_body", &input.tip_body, |figures| Some(&mut figures.tip));
    if let Some(measured) = &input.measured {
        let place: Place = Box::new(|f, to| f.measured_cpm = Some(to));
        let sd = measured.frequency_cpm_sd;
        list.push(("measured.frequency_cpm".into(), "cpm", measured.frequency_cpm, sd, place));
        if let Some(tip) = &measured.tip_body {
            push_tip(&mut list, "measured.tip_body", tip, |figures| figures.measured_tip.as_mut());
        }
    }
    for (i, what_if) in input.what_if.iter().enumerate() {
        if let Some(tip) = &what_if.tip_body {
            push_tip(&mut list, &format!("what_if[{i}].tip_body"), tip, move |figures| {
                figures.what_if_tips[i].as_mut()
            });
        }
    }
    list
}

fn push_tip(
    list: &mut Vec<Uncertain>,
    field: &str,
    tip: &TipBody,
    body: impl Fn(&mut Figures) -> Option<&mut TipBody> + Clone + 'static,
) {
    let parts: [TipFigure; 3] = [
        ("mass_g", "g", tip.mass_g, tip.mass_g_sd, |tip, to| tip.mass_g = to),
        ("offset_mm", "mm", tip.offset_mm, tip.offset_mm_sd, |tip, to| tip.offset_mm = to),
        ("inertia_g_cm2", "g·cm²", tip.inertia_g_cm2, tip.inertia_g_cm2_sd, |tip, to| tip.inertia_g_cm2 = to),
    ];
    for (part, unit, value, sd, put) in parts {
        let body = body.clone();
        let place: Place = Box::new(move |figures, to| {
            if let Some(tip) = body(figures) {
                put(tip, to);
            }
        });
        list.push((format!("{field}.{part}"), unit, value, sd, place));
    }
}
