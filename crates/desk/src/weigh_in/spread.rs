//! What the parts of one model and number weigh: the maker's figure, and what the scale has shown so far.

use serde::Serialize;
use trade::model::{Library, Model, PartKind};
use trade::part::Part;
use trade::shaft::TipShape;
use utoipa::ToSchema;

/// One standard deviation of heads of one number about their mean. Common practice, no source.
const HEAD_SD_G: f64 = 1.5;
/// The same of small turned or moulded parts. Common practice, no source.
const SMALL_SD_G: f64 = 0.15;
/// No scatter is known to be smaller than what a scale with steps of 0.1 g adds to it.
const LEAST_SD_G: f64 = 0.05;
/// How many parts the maker's figure is worth when the mean of a lot is estimated: a lot then stands off the figure by
/// two thirds of the scatter of single parts. Common practice, no source.
const NOMINAL_WORTH: f64 = 2.25;
/// How many parts the maker's scatter is worth when that of a lot is estimated. Common practice, no source.
const SCATTER_WORTH: u32 = 20;
/// Parts beyond these change nothing that can be seen.
const MOST_COUNTED: usize = 300;

/// What the parts of one model and number weigh.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Spread {
    /// The maker's figure.
    pub nominal_g: f64,
    /// The maker's scatter, one standard deviation; the trade's usual one where the model has none.
    pub model_sd_g: f64,
    /// Masses of those weighed so far, in the order in which they came.
    pub weighed_g: Vec<f64>,
    /// Mean of those weighed; none before the first.
    pub mean_g: Option<f64>,
    /// Standard deviation of those weighed; none before the second.
    pub sd_g: Option<f64>,
    /// What the next one is expected to weigh: between the maker's figure and the mean, nearer to the mean the more
    /// are weighed.
    pub next_g: f64,
    /// Half-width of the band that holds two of three of the next ones.
    pub next_sd_g: f64,
    /// Degrees of freedom of Student's distribution of the next one about `next_g`.
    pub freedom: u32,
}

/// What parts of this model and number weigh, with those of `weighed` that are such parts; none where the model gives
/// no mass or has no such number.
#[must_use]
pub fn spread(library: &Library, model: &str, number: Option<&str>, weighed: &[Part]) -> Option<Spread> {
    let (nominal_g, model_sd_g) = nominal(library.get(model)?, number)?;
    let same = |a: Option<&str>, b: Option<&str>| match (a, b) {
        (Some(a), Some(b)) => a.eq_ignore_ascii_case(b),
        (a, b) => a.is_none() && b.is_none(),
    };
    let masses: Vec<f64> = weighed
        .iter()
        .filter(|p| p.model == model && same(p.number.as_deref(), number) && p.count.is_none())
        .filter_map(|p| p.mass_g)
        .collect();
    Some(Spread::of(nominal_g, model_sd_g, masses))
}

impl Spread {
    /// The normal model with unknown mean and scatter under its conjugate prior (from memory, any text on Bayesian
    /// data analysis): the maker's mean is worth `NOMINAL_WORTH` parts, its scatter `SCATTER_WORTH`.
    fn of(nominal_g: f64, model_sd_g: f64, weighed_g: Vec<f64>) -> Self {
        let model_sd_g = model_sd_g.max(LEAST_SD_G);
        let counted = &weighed_g[weighed_g.len().saturating_sub(MOST_COUNTED)..];
        let n = f64::from(u32::try_from(counted.len()).unwrap_or(u32::MAX));
        let mean = (n > 0.0).then(|| counted.iter().sum::<f64>() / n);
        let squares: f64 = mean.map_or(0.0, |m| counted.iter().map(|g| (g - m).powi(2)).sum());
        let off = mean.map_or(0.0, |m| m - nominal_g);
        let worth = NOMINAL_WORTH + n;
        let freedom = SCATTER_WORTH + u32::try_from(counted.len()).unwrap_or(u32::MAX);
        let all_squares =
            f64::from(SCATTER_WORTH) * model_sd_g.powi(2) + squares + NOMINAL_WORTH * n / worth * off.powi(2);
        let single_sd = (all_squares / f64::from(freedom)).sqrt();
        Self {
            nominal_g,
            model_sd_g,
            mean_g: mean,
            sd_g: (n > 1.0).then(|| (squares / (n - 1.0)).sqrt()),
            next_g: nominal_g + off * n / worth,
            next_sd_g: single_sd * (1.0 + 1.0 / worth).sqrt(),
            freedom,
            weighed_g,
        }
    }

    /// Density of the next part's mass, per gram: Student's distribution about [`Self::next_g`].
    pub(super) fn density(&self, mass_g: f64) -> f64 {
        let nu = f64::from(self.freedom);
        let t = (mass_g - self.next_g) / self.next_sd_g;
        gamma_ratio(self.freedom) / (nu * std::f64::consts::PI).sqrt() / self.next_sd_g
            * (1.0 + t * t / nu).powf(-f64::midpoint(nu, 1.0))
    }
}

/// Γ((ν+1)/2) / Γ(ν/2), by r(1) = 1/√π and r(ν)·r(ν+1) = ν/2. Derived: from Γ(x+1) = x·Γ(x).
fn gamma_ratio(nu: u32) -> f64 {
    let first = 1.0 / std::f64::consts::PI.sqrt();
    (1..nu).fold(first, |ratio, n| f64::from(n) / 2.0 / ratio)
}

/// The maker's mass and its scatter.
pub(super) fn nominal(model: &Model, number: Option<&str>) -> Option<(f64, f64)> {
    let sd_g = match model {
        Model::Head(head) => head.mass_sd_g.unwrap_or(HEAD_SD_G),
        Model::Shaft(shaft) => shaft.mass_sd_g,
        Model::Grip(grip) => grip.mass_sd_g,
        _ => SMALL_SD_G,
    };
    Some((model.part_mass_g(number)?, sd_g))
}

/// The numbers that parts of a model have, in its order; one without number where they have none.
pub(super) fn numbers(model: &Model) -> Vec<Option<&str>> {
    match model {
        Model::Head(head) => head.numbers.iter().map(|n| Some(n.number.as_str())).collect(),
        Model::Shaft(shaft) if shaft.tip == TipShape::Taper => {
            shaft.blanks.iter().map(|b| b.number.as_deref()).collect()
        }
        _ => vec![None],
    }
}

/// How much a film, a label or a wrapper may add to a part of this kind, in grams; none where parts come bare. Common
/// practice, no source.
pub(super) const fn wrapping_g(kind: PartKind) -> Option<(f64, f64)> {
    match kind {
        PartKind::Head => Some((0.4, 5.0)),
        PartKind::Shaft => Some((0.3, 2.0)),
        PartKind::Grip => Some((0.4, 4.0)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed with scipy.stats.t.pdf.
    #[test]
    fn the_density_is_students() {
        let first = Spread::of(266.0, 1.5, vec![]);
        assert_eq!((first.next_g, first.freedom), (266.0, 20));
        let at_nominal = first.density(266.0) * first.next_sd_g;
        assert!((at_nominal - 0.393_988_585_711).abs() < 1e-9, "{at_nominal}");
        let out = first.density(266.0 + 2.0 * first.next_sd_g) * first.next_sd_g;
        assert!((out - 0.058_087_215_247).abs() < 1e-9, "{out}");
    }

    #[test]
    fn the_lot_takes_over_from_the_maker() {
        let few = Spread::of(266.0, 1.5, vec![268.0; 2]);
        let many = Spread::of(266.0, 1.5, vec![268.0; 40]);
        assert!(few.next_g > 266.5 && few.next_g < 267.5, "{few:?}");
        assert!(many.next_g > 267.8 && many.next_sd_g < few.next_sd_g, "{many:?}");
        assert_eq!(few.sd_g, Some(0.0));
        assert_eq!(
            Spread::of(266.0, 0.0, vec![]).model_sd_g,
            LEAST_SD_G,
            "a model without scatter still has the scale's"
        );
    }
}
