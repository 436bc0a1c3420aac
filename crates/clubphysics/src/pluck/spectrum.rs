//! Spectra: where the tone starts, and what surrounds it.

use realfft::RealFftPlanner;
use realfft::num_complex::Complex;

/// Spectra of the axes, zero-padded to at least twice their length.
pub(super) struct Spectra {
    bins: Vec<Vec<Complex<f64>>>,
    bin_hz: f64,
}

impl Spectra {
    pub(super) fn of(axes: &[&[f64]], step_s: f64) -> Self {
        let size = (2 * axes[0].len()).next_power_of_two();
        let plan = RealFftPlanner::<f64>::new().plan_fft_forward(size);
        let bins = axes
            .iter()
            .map(|values| {
                let mean = values.iter().sum::<f64>() / values.len() as f64;
                let mut padded = plan.make_input_vec();
                padded.iter_mut().zip(*values).for_each(|(slot, value)| *slot = value - mean);
                transformed(&*plan, &mut padded)
            })
            .collect();
        Self { bins, bin_hz: 1.0 / (size as f64 * step_s) }
    }

    /// Frequency of the strongest bin between two frequencies, all axes together, and its power over the median.
    pub(super) fn peak_hz(&self, lowest_hz: f64, highest_hz: f64) -> Option<(f64, f64)> {
        let last = self.bins[0].len() - 1;
        let from = (lowest_hz / self.bin_hz).ceil() as usize;
        let to = ((highest_hz / self.bin_hz).floor() as usize).min(last);
        let power = |k: usize| self.bins.iter().map(|bins| bins[k].norm_sqr()).sum::<f64>();
        let (peak, strongest) = (from.max(1)..=to).map(|k| (k, power(k))).max_by(|a, b| a.1.total_cmp(&b.1))?;
        // The median of the whole spectrum above the search's lower end: a tone and its skirts take few bins of it.
        let mut powers: Vec<f64> = (from.max(1)..=last).map(power).collect();
        let middle = powers.len() / 2;
        let (_, median, _) = powers.select_nth_unstable_by(middle, f64::total_cmp);
        (strongest > 0.0).then(|| (peak as f64 * self.bin_hz, strongest / median.max(f64::MIN_POSITIVE)))
    }

    /// Frequency of the strongest bin of `x·axis_1 + y·axis_2` within a reach of a frequency.
    pub(super) fn peak_along_hz(&self, x: f64, y: f64, near_hz: f64, reach_hz: f64) -> f64 {
        let last = self.bins[0].len() - 1;
        let from = (((near_hz - reach_hz) / self.bin_hz).floor().max(1.0)) as usize;
        let to = (((near_hz + reach_hz) / self.bin_hz).ceil() as usize).min(last);
        let power = |k: usize| (self.bins[0][k] * x + self.bins[1][k] * y).norm_sqr();
        let strongest = (from..=to).max_by(|a, b| power(*a).total_cmp(&power(*b)));
        strongest.map_or(near_hz, |k| k as f64 * self.bin_hz)
    }
}

/// Noise that a fit leaves over, in standard deviations of white noise as strong.
#[derive(Debug, Clone, Copy)]
pub(super) struct Noise {
    /// Of everything left over.
    pub(super) residual_sd: f64,
    /// Of the floor beneath lines: from the median of the spectrum.
    pub(super) floor_sd: f64,
    /// Around the tone.
    pub(super) near_sd: f64,
    /// Relative standard deviation of `near_sd` over `floor_sd` from their finite number of bins.
    pub(super) near_doubt: f64,
    /// Strongest line that chance does not explain, Hz.
    pub(super) line_hz: Option<f64>,
}

impl Noise {
    /// Looks at the residuals of a fit with `unknowns` unknowns in all and a tone at `tone_hz`.
    pub(super) fn of(rests: &[Vec<f64>], step_s: f64, tone_hz: f64, unknowns: usize) -> Self {
        let count = rests[0].len();
        let total = (count * rests.len()) as f64;
        let square: f64 = rests.iter().flatten().map(|value| value * value).sum();
        let plan = RealFftPlanner::<f64>::new().plan_fft_forward(count);
        // A half sine over the recording keeps the skirts of lines off the floor; the power of a bin of white noise is
        // then count·σ²/2. Zero and the top bin are left out.
        let turn = std::f64::consts::PI / count as f64;
        let mut power = vec![0.0; count.div_ceil(2)];
        for rest in rests {
            let mut tapered: Vec<f64> =
                rest.iter().enumerate().map(|(i, value)| value * (turn * (i as f64 + 0.5)).sin()).collect();
            let bins = transformed(&*plan, &mut tapered);
            for (slot, bin) in power.iter_mut().zip(&bins) {
                *slot += 2.0 * bin.norm_sqr() / (count * rests.len()) as f64;
            }
        }
        let bin_hz = 1.0 / (count as f64 * step_s);
        let tone_bin = tone_hz / bin_hz;
        // A third of the frequency to both sides, and no fewer than twenty bins.
        let reach = (tone_bin / 3.0).max(20.0);
        let to = ((tone_bin + reach) as usize).min(power.len() - 1);
        let from = ((tone_bin - reach).max(1.0) as usize).min(to);
        let near_bins = (to - from + 1) as f64;
        // The fit has taken its unknowns, but for the offsets, out of the bins around the tone: two to a bin.
        let taken = 0.5 * (unknowns - rests.len()) as f64 / rests.len() as f64;
        let near: f64 = power[from..=to].iter().sum::<f64>() / (near_bins - taken).max(1.0);
        let mut sorted = power[1..].to_vec();
        let middle = sorted.len() / 2;
        let (_, median, _) = sorted.select_nth_unstable_by(middle, f64::total_cmp);
        // Median over mean of an exponential variable, and of the mean of two.
        let median_share = if rests.len() == 1 { std::f64::consts::LN_2 } else { 0.839_173_495_008_274 };
        let floor = *median / median_share;
        let (line, strongest) =
            (1..power.len()).fold((0, 0.0), |best, k| if power[k] > best.1 { (k, power[k]) } else { best });
        // One in ten thousand recordings of pure noise has a bin this strong.
        let chance = (power.len() as f64).ln() + 1e4_f64.ln();
        let limit = if rests.len() == 1 { chance } else { 0.5 * (chance + chance.ln() + 0.5) };
        Self {
            residual_sd: (square / (total - unknowns as f64)).sqrt(),
            floor_sd: floor.sqrt(),
            near_sd: near.sqrt(),
            // The taper ties neighbouring bins together: one and a half count as one. A median spreads 2.1 times as wide.
            near_doubt: 0.5 * (1.5 * (1.0 / near_bins + 2.1 / power.len() as f64) / rests.len() as f64).sqrt(),
            line_hz: (strongest > limit * floor && floor > 0.0).then_some(line as f64 * bin_hz),
        }
    }

    /// The noise that decides how well the tone is known.
    pub(super) fn deciding_sd(&self) -> f64 {
        // Three deviations of sampling: beyond that the noise is not white, and what surrounds the tone counts.
        if self.near_sd > self.floor_sd * (1.0 + 3.0 * self.near_doubt) {
            self.near_sd
        } else if self.line_hz.is_some() {
            self.floor_sd
        } else {
            self.residual_sd
        }
    }
}

fn transformed(plan: &dyn realfft::RealToComplex<f64>, values: &mut [f64]) -> Vec<Complex<f64>> {
    let mut bins = plan.make_output_vec();
    let done = plan.process(values, &mut bins);
    debug_assert!(done.is_ok(), "lengths are the plan's own");
    bins
}
