//! From the document to findings.

use crate::advice::{Advice, Clash};
use nalgebra::{Cholesky, SMatrix, SVector};
use serde_json::{Value, json};
use statrs::distribution::{ChiSquared, ContinuousCDF, StudentsT};

use super::correlated::{self, SOURCES};
use super::document::{Finding, Mark, Presence, RestingPlaces, SoftSideInput, SoftSideNote, SoftSideOutput};
use super::harmonics::{Harmonics, TERMS};
use super::readings::{Options, Readings};
use super::shaft::{Held, Shaft, reading, wrapped};
use crate::error::PhysicsError;
use crate::topic::{Topic, described, through_json};

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "soft-side",
    example,
    input: described::<SoftSideInput>,
    output: described::<SoftSideOutput>,
    run: |input| through_json(&input, soft_side),
};

fn example() -> Value {
    json!({
        "angles_deg": [0.0, 30.0, 60.0, 90.0, 120.0, 150.0, 180.0, 210.0, 240.0, 270.0, 300.0, 330.0],
        "forces_n": [15.16, 14.94, 14.94, 15.13, 15.24, 15.09, 14.74, 14.5, 14.6, 14.98, 15.32, 15.37],
        "fixed_deflection_mm": 100.0
    })
}

/// Stiffness asymmetry, soft direction, residual bow, what a roller test shows, and where to mark.
///
/// The readings are fitted by the mean, one and two cycles a turn. An effect is stated only when the F test of its two
/// terms finds it; otherwise the result says whether it could still be large enough to matter. Standard deviations are
/// first order from the covariance of the fit, with the shared error of the fixed deflection or force; multiplied by
/// `coverage_factor_95` they hold 95 % in simulation (`tests/soft_side.rs`).
///
/// # Errors
/// [`PhysicsError`] for fewer than six different angles, angles bunched together, lists of different length, readings
/// that are not positive, none or more than one kind of reading.
///
/// # Examples
/// ```
/// let input: clubphysics::soft_side::SoftSideInput = serde_json::from_str(
///     r#"{"angles_deg": [0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330],
///         "frequencies_cpm": [252.0, 251.5, 250.5, 250.0, 250.5, 251.5, 252.0, 251.5, 250.5, 250.0, 250.5, 251.5]}"#,
/// )?;
/// let output = clubphysics::soft_side::soft_side(&input)?;
/// assert_eq!(output.soft_direction_deg.map(f64::round), Some(90.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn soft_side(input: &SoftSideInput) -> Result<SoftSideOutput, PhysicsError> {
    let readings = Readings::read(input)?;
    let options = Options::read(input)?;
    let angles_rad: Vec<f64> = input.angles_deg.iter().map(|angle| angle.to_radians()).collect();
    let mut fit = Harmonics::fit(&angles_rad, &readings.values, &readings.spreads, readings.noise, readings.rounding)?;
    let sources = correlated::covariance(input, &readings, &fit, &angles_rad)?;
    fit.covariance = sources.fixed_view::<TERMS, TERMS>(0, 0).into_owned();
    let result = Fitted::new(fit, &readings, &sources)?;
    Ok(result.document(input, &readings, &options))
}

/// The fit as a line around the shaft, and where a roller test comes to rest: for a picture.
#[derive(Debug, Clone, PartialEq)]
pub struct Around {
    /// Angle in degrees and the reading there by the fit, in the unit of the readings, once around.
    pub fitted: Vec<(f64, f64)>,
    /// Directions in which the loaded shaft comes to rest, degrees in [0, 360); none where the output has none.
    pub resting_deg: Vec<f64>,
}

/// The fitted readings around the shaft, three degrees apart, and its resting places.
///
/// # Errors
/// As [`soft_side`].
pub fn around(input: &SoftSideInput) -> Result<Around, PhysicsError> {
    let output = soft_side(input)?;
    let readings = Readings::read(input)?;
    let angles_rad: Vec<f64> = input.angles_deg.iter().map(|angle| angle.to_radians()).collect();
    let fit = Harmonics::fit(&angles_rad, &readings.values, &readings.spreads, readings.noise, readings.rounding)?;
    let terms: [f64; TERMS] = fit.terms.into();
    let squared = readings.held == Held::Nothing;
    let fitted = |step: i32| {
        let angle_deg = f64::from(3 * step);
        let value = reading(&terms, angle_deg.to_radians());
        (angle_deg, if squared { value.max(0.0).sqrt() } else { value })
    };
    let shaft = Shaft::from_terms(&terms, readings.held);
    let resting_deg =
        output.resting_places.map_or_else(Vec::new, |places| shaft.resting_directions_deg(places.roller_deflection_mm));
    Ok(Around { fitted: (0..=120).map(fitted).collect(), resting_deg })
}

/// Results with a standard deviation, in the order of `Fitted::figures`.
#[derive(Clone, Copy)]
enum Figure {
    Stiffness,
    Asymmetry,
    SoftDirection,
    Bow,
    BowDirection,
    MeanFrequency,
    FrequencyDifference,
}

const FIGURES: usize = 7;

/// The fit, turned into a shaft with the standard deviation of each figure.
struct Fitted {
    fit: Harmonics,
    shaft: Shaft,
    sds: [f64; FIGURES],
    coverage: f64,
}

impl Fitted {
    fn new(
        fit: Harmonics,
        readings: &Readings,
        sources: &SMatrix<f64, SOURCES, SOURCES>,
    ) -> Result<Self, PhysicsError> {
        let terms: [f64; TERMS] = fit.terms.into();
        let shaft = Shaft::from_terms(&terms, readings.held);
        if !(fit.terms[0] > 0.0 && shaft.asymmetry < 1.0) {
            return Err(PhysicsError::Contradiction {
                what: Clash::NoStiffDirection,
                advice: Box::new(Advice::CheckReadings),
            });
        }
        let sds = Self::deviations(&fit, readings, sources);
        let coverage = match fit.noise_freedoms {
            None => 1.959_963_984_540_054,
            Some(freedoms) => StudentsT::new(0.0, 1.0, freedoms as f64).map_or(f64::NAN, |t| t.inverse_cdf(0.975)),
        };
        Ok(Self { fit, shaft, sds, coverage })
    }

    fn figures(terms: &[f64; TERMS], held: Held) -> [f64; FIGURES] {
        let shaft = Shaft::from_terms(terms, held);
        [
            shaft.mean_stiffness,
            shaft.asymmetry,
            shaft.soft_direction_deg(),
            shaft.bow_size_mm(),
            shaft.bow_direction_deg(),
            shaft.mean_stiffness.sqrt(),
            shaft.frequency_difference_cpm(),
        ]
    }

    /// First order: slopes by central differences over each term and the thing held fixed.
    fn deviations(fit: &Harmonics, readings: &Readings, covariance: &SMatrix<f64, SOURCES, SOURCES>) -> [f64; FIGURES] {
        let terms: [f64; TERMS] = fit.terms.into();
        let mut slopes = SMatrix::<f64, FIGURES, SOURCES>::zeros();
        for source in 0..SOURCES {
            // Small against the term's own deviation, so that a direction hardly turns, large against rounding.
            let step = 1e-3 * covariance[(source, source)].sqrt();
            if step == 0.0 {
                continue;
            }
            let moved = |by: f64| {
                let (mut terms, mut held) = (terms, readings.held);
                match (source < TERMS, &mut held) {
                    (true, _) => terms[source] += by,
                    (false, Held::Deflection(value) | Held::Force(value)) => *value += by,
                    (false, Held::Nothing) => {}
                }
                Self::figures(&terms, held)
            };
            let (up, down) = (moved(step), moved(-step));
            for figure in 0..FIGURES {
                let mut change = up[figure] - down[figure];
                // Directions may have wrapped.
                if figure == Figure::SoftDirection as usize {
                    change -= 180.0 * (change / 180.0).round();
                } else if figure == Figure::BowDirection as usize {
                    change -= 360.0 * (change / 360.0).round();
                }
                slopes[(figure, source)] = change / (2.0 * step);
            }
        }
        let spread = slopes * *covariance * slopes.transpose();
        std::array::from_fn(|figure| spread[(figure, figure)].max(0.0).sqrt())
    }

    fn sd(&self, figure: Figure) -> f64 {
        self.sds[figure as usize]
    }

    fn asymmetry_finding(&self, options: &Options) -> Finding {
        let at_most = 100.0 * (self.shaft.asymmetry + self.coverage * self.widest(3) / self.fit.terms[0]);
        finding(self.fit.chance_of_none(3), at_most, options.asymmetry_that_matters_percent, options)
    }

    fn bow_finding(&self, held: Held, options: &Options) -> Option<Finding> {
        let per_term = match held {
            Held::Nothing => return None,
            Held::Force(_) => 1.0,
            Held::Deflection(_) => 1.0 / (self.shaft.mean_stiffness * (1.0 - self.shaft.asymmetry)),
        };
        let at_most = self.shaft.bow_size_mm() + self.coverage * self.widest(1) * per_term;
        Some(finding(self.fit.chance_of_none(1), at_most, options.bow_that_matters_mm, options))
    }

    /// Largest standard deviation of a pair of terms over all phases.
    fn widest(&self, first_term: usize) -> f64 {
        let block = self.fit.covariance.fixed_view::<2, 2>(first_term, first_term);
        let half_sum = 0.5 * (block[(0, 0)] + block[(1, 1)]);
        let half_difference = 0.5 * (block[(0, 0)] - block[(1, 1)]);
        (half_sum + half_difference.hypot(block[(0, 1)])).sqrt()
    }

    /// The number of resting places, and whether it holds at the ends of the axes of the 95 % region.
    fn resting(&self, readings: &Readings, roller_mm: Option<f64>) -> Option<RestingPlaces> {
        let deflection_mm = roller_mm.or(match readings.held {
            Held::Deflection(deflection) => Some(deflection),
            Held::Force(_) => Some(self.fit.terms[0]),
            Held::Nothing => None,
        })?;
        if readings.held == Held::Nothing {
            return None;
        }
        let count = self.shaft.resting_places(deflection_mm);
        let factor = Cholesky::new(self.fit.covariance)?.l();
        let sure = (0..2 * TERMS).all(|side| {
            let sign = if side % 2 == 0 { self.coverage } else { -self.coverage };
            let terms: SVector<f64, TERMS> = self.fit.terms + factor.column(side / 2) * sign;
            Shaft::from_terms(&terms.into(), readings.held).resting_places(deflection_mm) == count
        });
        Some(RestingPlaces { count, sure, roller_deflection_mm: deflection_mm })
    }

    fn document(&self, input: &SoftSideInput, readings: &Readings, options: &Options) -> SoftSideOutput {
        let asymmetry = self.asymmetry_finding(options);
        let bow = self.bow_finding(readings.held, options);
        let has_asymmetry = asymmetry.presence == Presence::There;
        let has_bow = bow.is_some_and(|bow| bow.presence == Presence::There);
        let from_frequencies = readings.held == Held::Nothing;
        let stiffness = |value: f64| (!from_frequencies).then_some(value);
        let frequency = |value: f64| from_frequencies.then_some(value);
        let resting_places =
            if has_asymmetry || has_bow { self.resting(readings, input.roller_deflection_mm) } else { None };
        SoftSideOutput {
            mean_stiffness_n_m: stiffness(1000.0 * self.shaft.mean_stiffness),
            mean_stiffness_n_m_sd: stiffness(1000.0 * self.sd(Figure::Stiffness)),
            mean_frequency_cpm: frequency(self.shaft.mean_stiffness.sqrt()),
            mean_frequency_cpm_sd: frequency(self.sd(Figure::MeanFrequency)),
            frequency_difference_cpm: frequency(self.shaft.frequency_difference_cpm()),
            frequency_difference_cpm_sd: frequency(self.sd(Figure::FrequencyDifference)),
            asymmetry_percent: 100.0 * self.shaft.asymmetry,
            asymmetry_percent_sd: 100.0 * self.sd(Figure::Asymmetry),
            asymmetry,
            soft_direction_deg: has_asymmetry.then(|| self.shaft.soft_direction_deg()),
            soft_direction_deg_sd: has_asymmetry.then(|| self.sd(Figure::SoftDirection)),
            bow_mm: stiffness(self.shaft.bow_size_mm()),
            bow_mm_sd: stiffness(self.sd(Figure::Bow)),
            bow,
            bow_direction_deg: has_bow.then(|| self.shaft.bow_direction_deg()),
            bow_direction_deg_sd: has_bow.then(|| self.sd(Figure::BowDirection)),
            once_a_turn_p_value: self.fit.chance_of_none(1),
            resting_places,
            mark_deg: has_asymmetry.then(|| self.mark_deg(input.mark, has_bow)),
            mark_deg_sd: has_asymmetry.then(|| self.sd(Figure::SoftDirection)),
            force_n_sd: matches!(readings.held, Held::Deflection(_)).then_some(self.fit.noise),
            deflection_mm_sd: matches!(readings.held, Held::Force(_)).then_some(self.fit.noise),
            frequency_cpm_sd: frequency(self.fit.noise),
            noise_given: readings.noise.is_some(),
            residual_freedoms: self.fit.freedoms,
            coverage_factor_95: self.coverage,
            notes: self.notes(input, readings, options, &asymmetry, bow.as_ref()),
        }
    }

    /// The wanted principal direction, at the end that lies on the side of the bow when there is one.
    fn mark_deg(&self, mark: Mark, has_bow: bool) -> f64 {
        let soft = self.shaft.soft_direction_deg();
        let end = match mark {
            Mark::Soft => soft,
            Mark::Stiff => wrapped(soft + 90.0, 180.0),
        };
        let (sin, cos) = end.to_radians().sin_cos();
        let along = self.shaft.bow_mm.0 * cos + self.shaft.bow_mm.1 * sin;
        if has_bow && along < 0.0 { end + 180.0 } else { end }
    }

    fn notes(
        &self,
        input: &SoftSideInput,
        readings: &Readings,
        options: &Options,
        asymmetry: &Finding,
        bow: Option<&Finding>,
    ) -> Vec<SoftSideNote> {
        let mut notes = Vec::new();
        match asymmetry.presence {
            Presence::There => {}
            Presence::TooSmallToMatter => {
                notes.push(SoftSideNote::PlanesAlike { at_most_share: asymmetry.at_most / 100.0 });
            }
            Presence::CannotTell => {
                notes.push(SoftSideNote::CannotTellSoftSide { at_most_share: asymmetry.at_most / 100.0 });
            }
        }
        match bow.map(|bow| (bow.presence, bow.at_most)) {
            Some((Presence::CannotTell, at_most_mm)) => notes.push(SoftSideNote::CannotTellBow { at_most_mm }),
            None if self.fit.chance_of_none(1) < options.significance => notes.push(SoftSideNote::OnceATurn),
            _ => {}
        }
        if readings.noise.is_none() && self.fit.freedoms < 3 {
            notes.push(SoftSideNote::FewSpare { spare: self.fit.freedoms });
        }
        let square = self.fit.freedoms as f64 * (self.fit.scatter / self.fit.noise).powi(2);
        let chance = ChiSquared::new(self.fit.freedoms as f64).map_or(1.0, |chi| chi.sf(square));
        // Readings that err together scatter less or more than on their own.
        if readings.noise.is_some() && input.correlations.is_empty() && chance < 1e-3 {
            notes.push(SoftSideNote::Scatter { times: self.fit.scatter / self.fit.noise });
        }
        notes
    }
}

fn finding(p_value: f64, at_most: f64, matters: f64, options: &Options) -> Finding {
    let presence = if p_value < options.significance {
        Presence::There
    } else if at_most < matters {
        Presence::TooSmallToMatter
    } else {
        Presence::CannotTell
    };
    Finding { presence, p_value, at_most }
}
