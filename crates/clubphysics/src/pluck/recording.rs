//! From samples as given to samples that can be fitted: refusals, the part to use, a sensible rate.

use super::document::PluckInput;
use super::spectrum::Spectra;
use crate::advice::{Advice, Clash};
use crate::check::{above, at_least, at_most, below, enough, finite};
use crate::error::{Bound, PhysicsError};
use fact::Measure;

/// Samples that a fit needs at least.
const SAMPLES_MIN: usize = 64;

/// Periods that a fit needs at least, so that offset, tone and decay are not taken for one another.
const PERIODS_MIN: f64 = 4.0;

/// Power of the peak over the median of the spectrum below which it may be noise: chance reaches it about once in ten
/// thousand recordings of 20 s at 1 kHz.
const PEAK_MIN: f64 = 30.0;

/// Rate that is enough for a club; recordings of sound cards are averaged down to it.
const RATE_ENOUGH_HZ: f64 = 1000.0;

/// The part of a recording that is fitted.
#[derive(Debug)]
pub(super) struct Recording {
    pub(super) axes: Vec<Vec<f64>>,
    pub(super) step_s: f64,
    /// Peak of the spectrum, Hz.
    pub(super) peak_hz: f64,
    pub(super) used_from_s: f64,
    pub(super) used_to_s: f64,
}

impl Recording {
    pub(super) fn read(input: &PluckInput) -> Result<Self, PhysicsError> {
        let range = SearchRange::read(input)?;
        let given = given_axes(input)?;
        let asked = asked_part(input, given[0].len())?;
        let factor = thinning(input.sample_rate_hz, range.highest_hz);
        let step_s = factor as f64 / input.sample_rate_hz;
        let axes: Vec<Vec<f64>> = given.iter().map(|values| averaged(&values[asked.clone()], factor)).collect();
        long_enough(asked.len(), factor, input.sample_rate_hz, |has, needed| Advice::TooShort { has, needed })?;
        let peak_hz = strongest_swing(&axes, step_s, &range)?;
        let skipped = if input.start_s.is_some() { 0 } else { pluck_at(&axes, peak_hz, step_s) };
        let from = asked.start + skipped * factor;
        let axes: Vec<Vec<f64>> = axes.into_iter().map(|mut values| values.split_off(skipped)).collect();
        long_enough(asked.end - from, factor, input.sample_rate_hz, |has, needed| Advice::ShortAfterPluck {
            has,
            needed,
        })?;
        for (field, values) in ["axis_1", "axis_2"].into_iter().zip(&given) {
            refuse_clipped(field, &values[from..asked.end], input.full_scale)?;
        }
        at_least(
            "axis_1",
            axes[0].len() as f64 * step_s * peak_hz,
            PERIODS_MIN,
            "periods after the pluck",
            Advice::RecordLonger,
        )?;
        Ok(Self {
            axes,
            step_s,
            peak_hz,
            used_from_s: from as f64 / input.sample_rate_hz,
            used_to_s: (asked.end - 1) as f64 / input.sample_rate_hz,
        })
    }

    /// The axes as slices.
    pub(super) fn slices(&self) -> Vec<&[f64]> {
        self.axes.iter().map(Vec::as_slice).collect()
    }

    /// The axes at sixteen samples a period or a little more, to search in, and their step.
    pub(super) fn thinned(&self) -> (Vec<Vec<f64>>, f64) {
        let factor = ((1.0 / (self.step_s * 16.0 * self.peak_hz)) as usize).max(1);
        (self.axes.iter().map(|values| averaged(values, factor)).collect(), self.step_s * factor as f64)
    }
}

/// Frequencies to look between.
struct SearchRange {
    lowest_hz: f64,
    highest_hz: f64,
}

impl SearchRange {
    fn read(input: &PluckInput) -> Result<Self, PhysicsError> {
        above("sample_rate_hz", input.sample_rate_hz, 0.0, "Hz", Advice::SamplesASecond)?;
        at_most("sample_rate_hz", input.sample_rate_hz, 1e6, "Hz", Advice::SamplesASecond)?;
        let lowest_hz = input.lowest_hz.unwrap_or(1.0);
        above("lowest_hz", lowest_hz, 0.0, "Hz", Advice::UsualFrequencies)?;
        // Two fifths of the rate: nearer to half of it a tone and its mirror image run together.
        let limit_hz = 0.4 * input.sample_rate_hz;
        let highest_hz = input.highest_hz.unwrap_or_else(|| limit_hz.min(30.0));
        at_most("highest_hz", highest_hz, limit_hz, "Hz", Advice::RecordFaster)?;
        above("highest_hz", highest_hz, lowest_hz, "Hz", Advice::RecordFasterOrLookLower)?;
        Ok(Self { lowest_hz, highest_hz })
    }
}

fn given_axes(input: &PluckInput) -> Result<Vec<&[f64]>, PhysicsError> {
    let mut axes = vec![("axis_1", input.axis_1.as_slice())];
    axes.extend(input.axis_2.as_deref().map(|values| ("axis_2", values)));
    if let Some(scale) = input.full_scale {
        above("full_scale", scale, 0.0, "", Advice::LargestSample)?;
    }
    for (field, values) in &axes {
        enough(field, values.len(), SAMPLES_MIN, Advice::RecordTenSeconds)?;
        if values.len() != input.axis_1.len() {
            return Err(PhysicsError::Contradiction {
                what: Clash::SamplesDiffer { first: input.axis_1.len(), second: values.len() },
                advice: Box::new(Advice::AxesAtSameInstants),
            });
        }
        for (i, value) in values.iter().enumerate() {
            if !value.is_finite() {
                finite(&format!("{field}[{i}]"), *value, "")?;
            }
        }
        if values.iter().all(|value| *value == values[0]) {
            return Err(PhysicsError::OutOfRange {
                field: (*field).to_owned(),
                value: 0.0,
                bound: Bound::Above,
                limit: 0.0,
                unit: "units of change over the recording",
                advice: Box::new(Advice::CheckSensor),
            });
        }
    }
    Ok(axes.into_iter().map(|(_, values)| values).collect())
}

/// Samples between `start_s` and `end_s`.
fn asked_part(input: &PluckInput, count: usize) -> Result<std::ops::Range<usize>, PhysicsError> {
    let duration_s = count as f64 / input.sample_rate_hz;
    let start_s = input.start_s.unwrap_or(0.0);
    let end_s = input.end_s.unwrap_or(duration_s);
    at_least("start_s", start_s, 0.0, "s", Advice::CountFirstSample)?;
    at_most("end_s", end_s, duration_s, "s", Advice::RecordingEndsThere)?;
    below("start_s", start_s, end_s, "s", Advice::StartBeforeEnd)?;
    // An instant a rounding error above a sample is that sample.
    let index = |time_s: f64| ((time_s * input.sample_rate_hz - 1e-6).ceil().max(0.0) as usize).min(count);
    let part = index(start_s)..index(end_s);
    enough("axis_1", part.len(), SAMPLES_MIN, Advice::UseLongerPart)?;
    Ok(part)
}

/// Refuses a part that leaves too few samples once `factor` of them are averaged into one. It counts the samples as they
/// were given: they are what the person knows.
fn long_enough(
    count: usize,
    factor: usize,
    rate_hz: f64,
    advice: fn(Measure, Measure) -> Advice,
) -> Result<(), PhysicsError> {
    let needed = SAMPLES_MIN * factor;
    if count >= needed {
        return Ok(());
    }
    let lasts = |samples: usize| {
        let (value, sign) = match samples as f64 / rate_hz {
            short if short < 1.0 => (quantity::round_to(short * 1000.0, 0), "ms"),
            long => (quantity::round_to(long, 1), "s"),
        };
        Measure::new(value, sign)
    };
    Err(PhysicsError::TooFew {
        field: "axis_1".to_owned(),
        count,
        needed,
        advice: Box::new(advice(lasts(count), lasts(needed))),
    })
}

/// Samples averaged into one: a factor that keeps the rate well above the tone.
fn thinning(rate_hz: f64, highest_hz: f64) -> usize {
    ((rate_hz / RATE_ENOUGH_HZ.max(10.0 * highest_hz)) as usize).max(1)
}

/// Means of neighbouring samples; a rest shorter than the factor is dropped.
fn averaged(values: &[f64], factor: usize) -> Vec<f64> {
    if factor == 1 {
        return values.to_vec();
    }
    values.chunks_exact(factor).map(|chunk| chunk.iter().sum::<f64>() / factor as f64).collect()
}

fn strongest_swing(axes: &[Vec<f64>], step_s: f64, range: &SearchRange) -> Result<f64, PhysicsError> {
    // Ten samples a period of the highest tone looked for are plenty here.
    let factor = ((1.0 / (step_s * 10.0 * range.highest_hz)) as usize).max(1);
    let thin: Vec<Vec<f64>> = axes.iter().map(|values| averaged(values, factor)).collect();
    let slices: Vec<&[f64]> = thin.iter().map(Vec::as_slice).collect();
    let peak = Spectra::of(&slices, step_s * factor as f64).peak_hz(range.lowest_hz, range.highest_hz);
    let (peak_hz, prominence) = peak.unwrap_or((0.0, 0.0));
    at_least("axis_1", prominence, PEAK_MIN, "times the median of the spectrum", Advice::NoSwingInNoise)?;
    Ok(peak_hz)
}

/// First sample after the pluck: where the energy of a period has come near its greatest.
///
/// A recording that swings from its first period is used from its first sample.
fn pluck_at(axes: &[Vec<f64>], peak_hz: f64, step_s: f64) -> usize {
    let block = ((1.0 / (peak_hz * step_s)).round() as usize).max(1);
    let means: Vec<f64> = axes.iter().map(|values| values.iter().sum::<f64>() / values.len() as f64).collect();
    let blocks = axes[0].len() / block;
    let energies: Vec<f64> = (0..blocks)
        .map(|i| {
            let part = i * block..(i + 1) * block;
            axes.iter()
                .zip(&means)
                .map(|(values, mean)| values[part.clone()].iter().map(|value| (value - mean).powi(2)).sum::<f64>())
                .sum()
        })
        .collect();
    let greatest = energies.iter().copied().fold(0.0, f64::max);
    match energies.iter().position(|energy| *energy >= 0.5 * greatest) {
        // The block that holds the pluck itself is left out with what lies before it.
        Some(at) if energies[0] < 0.1 * greatest => (at + 1) * block,
        _ => 0,
    }
}

/// Refuses samples that stand at a stop.
///
/// With a known full scale these are samples at it. Without, a stop shows as an extreme value that comes far more often
/// than the value next to it; a swing read on a coarse grid has at most two and a half times as many.
fn refuse_clipped(field: &str, values: &[f64], full_scale: Option<f64>) -> Result<(), PhysicsError> {
    let at_stop = match full_scale {
        Some(scale) => {
            // The largest positive value of 16 bits lies 3e-5 under full scale.
            let count = values.iter().filter(|value| value.abs() >= scale * (1.0 - 4e-5)).count();
            if count >= 3 { count } else { 0 }
        }
        None => stopped(values, 1.0) + stopped(values, -1.0),
    };
    at_most(field, 100.0 * at_stop as f64 / values.len() as f64, 0.0, "% of samples clipped", Advice::TurnGainDown)?;
    Ok(())
}

/// Samples at the greatest value in the sense of `sign`, when they are suspiciously many.
fn stopped(values: &[f64], sign: f64) -> usize {
    let signed = || values.iter().map(|value| sign * value);
    let greatest = signed().fold(f64::NEG_INFINITY, f64::max);
    let next = signed().filter(|value| *value < greatest).fold(f64::NEG_INFINITY, f64::max);
    let count = |level: f64| signed().filter(|value| *value == level).count();
    let (at_greatest, at_next) = (count(greatest), count(next));
    if at_greatest >= 6 && at_greatest >= 5 * at_next { at_greatest } else { 0 }
}
