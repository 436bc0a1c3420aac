//! First-order standard deviations of the frequencies.

use super::document::{FrequencyInput, TipBody};
use super::figures::Figures;
use super::require::deviation;
use super::topic::{Answer, evaluate};
use crate::error::PhysicsError;
use crate::uncertainty::{Inputs, Propagated, Var};

/// Share of a standard deviation by which a figure is moved: far above rounding, far below curvature, and small enough
/// not to leave the shaft.
const SHARE: f64 = 0.1;

/// Results of each what-if: frequency, change, deflection.
const OF_WHAT_IF: usize = 3;
/// Results before those of the what-ifs: factor, deflection, tip stiffness, uncalibrated frequency, free
/// length and mass.
const FIXED: usize = 6;

/// The answers with their standard deviations.
pub(super) struct Spread {
    results: Option<Propagated>,
    what_ifs: usize,
}

/// Where one figure stands among the figures.
type Place = Box<dyn Fn(&mut Figures, f64)>;

/// One figure of the document: name, unit, value, standard deviation, and where it stands.
type Uncertain = (String, &'static str, f64, Option<f64>, Place);

/// One figure of a tip body: name, unit, value, standard deviation, and where it stands.
type TipFigure = (&'static str, &'static str, f64, Option<f64>, fn(&mut TipBody, f64));

impl Spread {
    pub(super) fn of(input: &FrequencyInput, figures: &Figures) -> Result<Self, PhysicsError> {
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
            return Ok(Self { results: None, what_ifs: input.what_if.len() });
        }
        let results = inputs.propagate_stepped(SHARE, |x| {
            let mut moved = Figures { strict: false, ..figures.clone() };
            places.iter().for_each(|(var, put)| put(&mut moved, x[*var]));
            Ok(listed(&evaluate(input, &moved)?))
        })?;
        Ok(Self { results: Some(results), what_ifs: input.what_if.len() })
    }

    fn sd(&self, at: usize) -> Option<f64> {
        self.results.as_ref().map(|results| results.variance(at).sqrt())
    }

    pub(super) fn factor(&self) -> Option<f64> {
        self.sd(0)
    }

    pub(super) fn deflection_mm(&self) -> Option<f64> {
        self.sd(1)
    }

    pub(super) fn tip_stiffness_n_m(&self) -> Option<f64> {
        self.sd(2)
    }

    pub(super) fn uncalibrated_cpm(&self) -> Option<f64> {
        self.sd(3)
    }

    pub(super) fn free_length_mm(&self) -> Option<f64> {
        self.sd(4)
    }

    pub(super) fn free_shaft_mass_g(&self) -> Option<f64> {
        self.sd(5)
    }

    /// Frequency, change and deflection of a what-if.
    pub(super) fn what_if(&self, i: usize) -> [Option<f64>; OF_WHAT_IF] {
        std::array::from_fn(|k| self.sd(FIXED + OF_WHAT_IF * i + k))
    }

    pub(super) fn frequency_cpm(&self, mode: usize) -> Option<f64> {
        self.sd(FIXED + OF_WHAT_IF * self.what_ifs + mode)
    }
}

/// The answer as one list. Differences stand on their own: what both their sides share cancels in them.
fn listed(answer: &Answer) -> Vec<f64> {
    let mut list = vec![
        answer.factor,
        answer.deflection_mm,
        answer.tip_stiffness_n_m,
        answer.uncalibrated_cpm,
        answer.free_length_mm,
        answer.free_shaft_mass_g,
    ];
    for (cpm, deflection_mm) in &answer.predicted {
        list.extend([*cpm, cpm - answer.frequencies_cpm[0], *deflection_mm]);
    }
    list.extend(&answer.frequencies_cpm);
    list
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
