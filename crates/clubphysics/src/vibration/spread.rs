//! First-order standard deviations of the frequencies.

use super::document::{FrequencyInput, TipBody};
use super::figures::Figures;
use super::require::deviation;
use super::topic::{Answer, evaluate};
use crate::error::PhysicsError;

/// The answers with each uncertain figure moved by one standard deviation to both sides.
pub(super) struct Spread {
    moved: Vec<(Answer, Answer)>,
    any: bool,
}

/// Moves one figure.
type Shift = Box<dyn Fn(&mut Figures, f64)>;

/// How one figure is moved: name, unit, standard deviation, and where it stands.
type Uncertain = (String, &'static str, Option<f64>, Shift);

/// One figure of a tip body: name, unit, standard deviation, and where it stands.
type TipFigure = (&'static str, &'static str, Option<f64>, fn(&mut TipBody, f64));

impl Spread {
    pub(super) fn of(input: &FrequencyInput, figures: &Figures, full: &Answer) -> Result<Self, PhysicsError> {
        let mut moved = Vec::new();
        let mut any = false;
        for (field, unit, sd, shift) in uncertain_figures(input) {
            let given = deviation(&field, sd, unit)?;
            any |= sd.is_some();
            if given == 0.0 {
                continue;
            }
            // A small step keeps the difference first order where a whole deviation would leave the shaft.
            let at = |by: f64| -> Result<Answer, PhysicsError> {
                let mut figures = Figures { strict: false, ..figures.clone() };
                shift(&mut figures, by);
                evaluate(input, &figures)
            };
            let step = given * SHARE;
            moved.push((at(step)?, at(-step)?));
        }
        // A mode that only exists on one side of a massless limit has no derivative.
        let modes = full.frequencies_cpm.len();
        if moved.iter().any(|(up, down)| up.frequencies_cpm.len() != modes || down.frequencies_cpm.len() != modes) {
            return Err(PhysicsError::Contradiction {
                what: "a standard deviation adds mass where there is none".to_owned(),
                advice: "leave out the standard deviation of a mass or inertia that is zero",
            });
        }
        Ok(Self { moved, any })
    }

    pub(super) fn sd(&self, pick: impl Fn(&Answer) -> f64) -> Option<f64> {
        let sum: f64 =
            self.moved.iter().map(|(up, down)| ((pick(up) - pick(down)) / (2.0 * SHARE)).powi(2)).sum::<f64>();
        self.any.then(|| sum.sqrt())
    }
}

/// Share of a standard deviation by which a figure is moved: far above rounding, far below curvature.
const SHARE: f64 = 0.1;

fn uncertain_figures(input: &FrequencyInput) -> Vec<Uncertain> {
    let mut list: Vec<Uncertain> = vec![
        ("length_mm_sd".into(), "mm", input.length_mm_sd, Box::new(|f, by| f.length_mm += by)),
        ("tip_trim_mm_sd".into(), "mm", input.tip_trim_mm_sd, Box::new(|f, by| f.tip_trim_mm += by)),
        ("butt_trim_mm_sd".into(), "mm", input.butt_trim_mm_sd, Box::new(|f, by| f.butt_trim_mm += by)),
        ("clamp_mm_sd".into(), "mm", input.clamp_mm_sd, Box::new(|f, by| f.clamp_mm += by)),
        ("tip_load_n_sd".into(), "N", input.tip_load_n_sd, Box::new(|f, by| f.load_n += by)),
        ("stiffness_factor_sd".into(), "1", input.stiffness_factor_sd, Box::new(|f, by| f.stiffness_factor += by)),
        ("mass_factor_sd".into(), "1", input.mass_factor_sd, Box::new(|f, by| f.mass_factor += by)),
    ];
    push_tip(&mut list, "tip_body", &input.tip_body, |figures| Some(&mut figures.tip));
    if let Some(measured) = &input.measured {
        let shift: Shift = Box::new(|f, by| f.measured_cpm = f.measured_cpm.map(|value| value + by));
        list.push(("measured.frequency_cpm_sd".into(), "cpm", measured.frequency_cpm_sd, shift));
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
    place: impl Fn(&mut Figures) -> Option<&mut TipBody> + Clone + 'static,
) {
    let parts: [TipFigure; 3] = [
        ("mass_g_sd", "g", tip.mass_g_sd, |tip, by| tip.mass_g += by),
        ("offset_mm_sd", "mm", tip.offset_mm_sd, |tip, by| tip.offset_mm += by),
        ("inertia_g_cm2_sd", "g·cm²", tip.inertia_g_cm2_sd, |tip, by| tip.inertia_g_cm2 += by),
    ];
    for (part, unit, sd, add) in parts {
        let place = place.clone();
        let shift: Shift = Box::new(move |figures, by| {
            if let Some(tip) = place(figures) {
                add(tip, by);
            }
        });
        list.push((format!("{field}.{part}"), unit, sd, shift));
    }
}
