//! From the document to frequency, damping and planes.

use crate::advice::Advice;
use std::f64::consts::{PI, TAU};

use serde_json::{Value, json};
use statrs::distribution::{ChiSquared, ContinuousCDF};

use super::damped::Care;
use super::document::{Plane, Planes, PluckInput, PluckNote, PluckOutput};
use super::planes::{PlanesFit, search};
use super::recording::Recording;
use super::spectrum::{Noise, Spectra};
use super::tone::{Tone, ToneFit};
use crate::check::at_least;
use crate::error::PhysicsError;
use crate::topic::{Topic, described, through_json};

/// Chance below which two planes are stated. Strict, since the direction is searched for, which helps chance along.
const TWO_PLANES_CHANCE: f64 = 1e-4;

/// Second planes are looked for within this of the peak: 1.5 Hz is 90 cpm, several times what shafts show.
const REACH_HZ: f64 = 1.5;

/// Amplitude over its standard deviation below which there is no swing.
const AMPLITUDE_MIN: f64 = 6.0;

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "pluck",
    example,
    input: described::<PluckInput>,
    output: described::<PluckOutput>,
    run: |input| through_json(&input, pluck),
};

/// Ten seconds at 40 samples a second, two planes 6 cpm apart, read on a grid of a thousandth.
fn example() -> Value {
    let sample = |i: i32| {
        let time = f64::from(i) / 40.0;
        let fade = (-0.25 * time).exp();
        let (soft, stiff) = (fade * (TAU * 4.4 * time).cos(), fade * (TAU * 4.5 * time).cos());
        let rounded = |value: f64| (value * 1000.0).round() / 1000.0;
        (rounded(0.8 * soft - 0.4 * stiff), rounded(0.4 * soft + 0.8 * stiff))
    };
    let (axis_1, axis_2): (Vec<f64>, Vec<f64>) = (0..400).map(sample).unzip();
    json!({ "sample_rate_hz": 40.0, "axis_1": axis_1, "axis_2": axis_2 })
}

/// Frequency and damping of a plucked club; with two axes its principal planes.
///
/// Maximum likelihood for white noise: in simulation the error of the frequency is the Cramér–Rao bound within
/// sampling, and 95 % intervals of ±1.96 standard deviations hold 95 % (`tests/pluck.rs`). Where the noise around the
/// tone is stronger than elsewhere, standard deviations follow it.
///
/// # Errors
/// [`PhysicsError`] for silence, clipping, recordings shorter than four periods, lists of different length, values that
/// are not finite.
///
/// # Examples
/// ```
/// let axis_1 = (0..4000).map(|i| {
///     let time = f64::from(i) / 500.0;
///     (-0.3 * time).exp() * (std::f64::consts::TAU * 4.5 * time).sin()
/// });
/// let input = clubphysics::pluck::PluckInput { sample_rate_hz: 500.0, axis_1: axis_1.collect(), ..Default::default() };
/// let output = clubphysics::pluck::pluck(&input)?;
/// assert!((output.frequency_cpm - 270.0).abs() < 1e-6);
/// assert!((output.decay_per_s - 0.3).abs() < 1e-6);
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
pub fn pluck(input: &PluckInput) -> Result<PluckOutput, PhysicsError> {
    let recording = Recording::read(input)?;
    let slices = recording.slices();
    let single = one_tone(&recording, &slices)?;
    let rests: Vec<Vec<f64>> = slices
        .iter()
        .zip(&single.parts)
        .map(|(values, parts)| {
            let model = single.tone.model(*parts, values.len(), recording.step_s);
            values.iter().zip(model).map(|(value, fitted)| value - fitted).collect()
        })
        .collect();
    let unknowns = 2 + 3 * slices.len();
    let noise = Noise::of(&rests, recording.step_s, single.tone.omega / TAU, unknowns);
    let swing = Swing::of_one(&single);
    swing.check(slices[0].len(), recording.step_s, noise.floor_sd)?;
    if let [first, second] = slices[..] {
        let pair = two_tones(&recording, [first, second], &single);
        return Ok(with_two_axes(&recording, [first, second], &single, pair.as_ref(), &noise));
    }
    Ok(swing.document(&recording, &noise))
}

/// One frequency and decay for all axes.
fn one_tone(recording: &Recording, slices: &[&[f64]]) -> Result<ToneFit, PhysicsError> {
    let (thin, thin_step_s) = recording.thinned();
    let thin_slices: Vec<&[f64]> = thin.iter().map(Vec::as_slice).collect();
    let spectra = Spectra::of(&thin_slices, thin_step_s);
    let near = spectra.peak_hz(0.5 * recording.peak_hz, 2.0 * recording.peak_hz);
    let omega = TAU * near.map_or(recording.peak_hz, |(hz, _)| hz);
    let start = Tone { omega, gamma: decay_guess(&thin, thin_step_s) };
    let coarse = ToneFit::from(start, &thin_slices, thin_step_s, Care::ROUGH)?;
    ToneFit::from(coarse.tone, slices, recording.step_s, Care::FULL)
}

/// Decay from the energies of both halves: their ratio is exp(γ·T).
fn decay_guess(axes: &[Vec<f64>], step_s: f64) -> f64 {
    let half = axes[0].len() / 2;
    let energy = |from: usize, to: usize| -> f64 {
        axes.iter()
            .map(|values| {
                let mean = values.iter().sum::<f64>() / values.len() as f64;
                values[from..to].iter().map(|value| (value - mean).powi(2)).sum::<f64>()
            })
            .sum()
    };
    let ratio = energy(0, half) / energy(half, 2 * half).max(f64::MIN_POSITIVE);
    (ratio.ln() / (half as f64 * step_s * 2.0)).clamp(0.0, 20.0 / (half as f64 * step_s))
}

/// Two planes, or nothing where the samples do not determine a second tone: planes alike without noise, or a pluck along
/// one of them.
fn two_tones(recording: &Recording, axes: [&[f64]; 2], single: &ToneFit) -> Option<PlanesFit> {
    let (thin, thin_step_s) = recording.thinned();
    let [first, second] = &thin[..] else {
        return None;
    };
    let spectra = Spectra::of(&[first, second], thin_step_s);
    let centre_hz = single.tone.omega / TAU;
    let reach_hz = REACH_HZ.min(0.4 * centre_hz);
    let start = search([first, second], thin_step_s, |x, y| Tone {
        omega: TAU * spectra.peak_along_hz(x, y, centre_hz, reach_hz),
        gamma: single.tone.gamma.max(0.0),
    })
    .ok()?;
    PlanesFit::from(start.tones, start.direction_rad, axes, recording.step_s, Care::FULL).ok()
}

/// Decides between one tone and two planes, and writes the result.
fn with_two_axes(
    recording: &Recording,
    axes: [&[f64]; 2],
    single: &ToneFit,
    pair: Option<&PlanesFit>,
    noise_of_one: &Noise,
) -> PluckOutput {
    let amplitude = amplitude(&single.parts);
    let judged = pair.map(|pair| {
        let hz = pair.tones.iter().map(|tone| tone.omega).sum::<f64>() / (2.0 * TAU);
        let noise = Noise::of(&pair.residuals(axes, recording.step_s), recording.step_s, hz, 11);
        // Samples without noise leave only rounding, which must not make a plane.
        let sd = noise.deciding_sd().max(1e-7 * amplitude);
        let gain = (single.square - pair.square).max(0.0) / (sd * sd);
        (pair, noise, ChiSquared::new(3.0).map_or(1.0, |chi| chi.sf(gain)))
    });
    let mut output = match &judged {
        Some((pair, noise, chance)) if *chance < TWO_PLANES_CHANCE => {
            let mut output = Swing::of_two(pair).document(recording, noise);
            output.planes = Some(planes(pair, noise.deciding_sd()));
            output
        }
        _ => {
            let mut output = Swing::of_one(single).document(recording, noise_of_one);
            output.notes.push(PluckNote::OneFrequency);
            output
        }
    };
    output.one_plane_p_value = judged.map(|(_, _, chance)| chance);
    output.amplitude = amplitude;
    output.swing_direction_deg = Some(swing_direction_deg(&single.parts));
    output
}

/// Greatest reach of the first swing, all axes together.
fn amplitude(parts: &[[f64; 3]]) -> f64 {
    parts.iter().map(|part| part[0] * part[0] + part[1] * part[1]).sum::<f64>().sqrt()
}

/// Long axis of the ellipse that the first swing draws.
fn swing_direction_deg(parts: &[[f64; 3]]) -> f64 {
    let [first, second] = parts else {
        return 0.0;
    };
    let along = first[0] * second[0] + first[1] * second[1];
    let size = |part: &[f64; 3]| part[0] * part[0] + part[1] * part[1];
    direction_deg(0.5 * (2.0 * along).atan2(size(first) - size(second)))
}

/// Degrees in [0, 180).
fn direction_deg(rad: f64) -> f64 {
    let turned = rad.rem_euclid(PI).to_degrees();
    if turned >= 180.0 { 0.0 } else { turned }
}

/// Frequency and decay with their deviations at unit noise.
struct Swing {
    omega: f64,
    omega_unit_sd: f64,
    gamma: f64,
    gamma_unit_sd: f64,
    amplitude: f64,
}

impl Swing {
    fn of_one(fit: &ToneFit) -> Self {
        Self {
            omega: fit.tone.omega,
            omega_unit_sd: fit.inverse[(0, 0)].sqrt(),
            gamma: fit.tone.gamma,
            gamma_unit_sd: fit.inverse[(1, 1)].sqrt(),
            amplitude: amplitude(&fit.parts),
        }
    }

    /// The mean stiffness: the root of the mean square of both frequencies.
    fn of_two(fit: &PlanesFit) -> Self {
        let [a, b] = fit.tones.map(|tone| tone.omega);
        let omega = (0.5 * (a * a + b * b)).sqrt();
        let (slope_a, slope_b) = (0.5 * a / omega, 0.5 * b / omega);
        let variance = |i: usize, j: usize, x: f64, y: f64| {
            x * x * fit.inverse[(i, i)] + 2.0 * x * y * fit.inverse[(i, j)] + y * y * fit.inverse[(j, j)]
        };
        Self {
            omega,
            omega_unit_sd: variance(0, 5, slope_a, slope_b).sqrt(),
            gamma: 0.5 * (fit.tones[0].gamma + fit.tones[1].gamma),
            gamma_unit_sd: variance(1, 6, 0.5, 0.5).sqrt(),
            amplitude: amplitude(&fit.parts),
        }
    }

    /// Refuses a tone that is only noise that the fit has dressed up.
    fn check(&self, samples: usize, step_s: f64, noise_sd: f64) -> Result<(), PhysicsError> {
        // Cosine and sine have the deviation σ·√(2/n), n the samples weighted by the square of the decay.
        let duration_s = samples as f64 * step_s;
        let faded = 2.0 * self.gamma * duration_s;
        let weight = samples as f64 * if faded.abs() < 1e-6 { 1.0 } else { -(-faded).exp_m1() / faded };
        let doubt = noise_sd * (2.0 / weight).sqrt();
        at_least(
            "axis_1",
            self.amplitude / doubt.max(f64::MIN_POSITIVE),
            AMPLITUDE_MIN,
            "times its own doubt",
            Advice::NoSwingInNoise,
        )?;
        Ok(())
    }

    fn document(&self, recording: &Recording, noise: &Noise) -> PluckOutput {
        let sd = noise.deciding_sd();
        let cpm = 30.0 / PI;
        PluckOutput {
            frequency_cpm: self.omega * cpm,
            frequency_cpm_sd: sd * self.omega_unit_sd * cpm,
            frequency_hz: self.omega / TAU,
            frequency_hz_sd: sd * self.omega_unit_sd / TAU,
            decay_per_s: self.gamma,
            decay_per_s_sd: sd * self.gamma_unit_sd,
            damping_percent: 100.0 * self.gamma / self.omega,
            amplitude: self.amplitude,
            swing_direction_deg: None,
            planes: None,
            one_plane_p_value: None,
            residual_sd: noise.residual_sd,
            noise_sd: noise.floor_sd,
            noise_near_tone_sd: noise.near_sd,
            bound_cpm: noise.floor_sd * self.omega_unit_sd * cpm,
            bound_ratio: if noise.floor_sd > 0.0 { noise.near_sd / noise.floor_sd } else { 1.0 },
            other_tone_hz: noise.line_hz,
            used_from_s: recording.used_from_s,
            used_to_s: recording.used_to_s,
            notes: self.notes(noise),
        }
    }

    fn notes(&self, noise: &Noise) -> Vec<PluckNote> {
        let mut notes = Vec::new();
        let own_hz = self.omega / TAU;
        match noise.line_hz {
            Some(hz) if (hz - own_hz).abs() < REACH_HZ => notes.push(PluckNote::TwoPlanes { other_cpm: hz * 60.0 }),
            Some(tone_hz) => notes.push(PluckNote::OtherTone { tone_hz }),
            None => {}
        }
        if noise.near_sd > noise.floor_sd * (1.0 + 3.0 * noise.near_doubt) {
            notes.push(PluckNote::Noise { times: noise.near_sd / noise.floor_sd });
        }
        if self.gamma < -3.0 * noise.deciding_sd() * self.gamma_unit_sd {
            notes.push(PluckNote::Grows);
        }
        notes
    }
}

/// Both planes, the slower one first.
fn planes(fit: &PlanesFit, sd: f64) -> Planes {
    let cpm = 30.0 / PI;
    let deviation = |unknown: usize| sd * fit.inverse[(unknown, unknown)].sqrt();
    let plane = |k: usize| Plane {
        frequency_cpm: fit.tones[k].omega * cpm,
        frequency_cpm_sd: deviation(5 * k) * cpm,
        direction_deg: direction_deg(fit.direction_rad + 0.5 * PI * k as f64),
        direction_deg_sd: deviation(10).to_degrees(),
        decay_per_s: fit.tones[k].gamma,
        decay_per_s_sd: deviation(5 * k + 1),
        amplitude: amplitude(&[fit.parts[k]]),
    };
    let (slow, fast) = if fit.tones[0].omega <= fit.tones[1].omega { (0, 1) } else { (1, 0) };
    let (soft, stiff) = (plane(slow), plane(fast));
    let spread = |x: f64, y: f64| {
        let variance = x * x * fit.inverse[(5 * slow, 5 * slow)]
            + 2.0 * x * y * fit.inverse[(5 * slow, 5 * fast)]
            + y * y * fit.inverse[(5 * fast, 5 * fast)];
        sd * variance.sqrt()
    };
    let (low, high) = (fit.tones[slow].omega, fit.tones[fast].omega);
    let sum = low * low + high * high;
    Planes {
        soft,
        stiff,
        difference_cpm: stiff.frequency_cpm - soft.frequency_cpm,
        difference_cpm_sd: spread(-1.0, 1.0) * cpm,
        asymmetry_percent: 100.0 * (high * high - low * low) / sum,
        asymmetry_percent_sd: 100.0
            * spread(-4.0 * low * high * high / (sum * sum), 4.0 * high * low * low / (sum * sum)),
        mirrored_after_s: 30.0 / (stiff.frequency_cpm - soft.frequency_cpm),
    }
}
