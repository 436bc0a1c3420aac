//! What is measured beside the readings that every set asks for.

use super::Work;
use crate::CHECK_POINTS;
use crate::advice;
use crate::club::{Faults, TrueClub};
use crate::hands::stage;
use crate::scale::Name;
use crate::settings::Trouble;
use bench::belief::BAND_95;
use bench::offer::Measure;
use trade::error::TradeError;
use trade::kind::Role;
use trade::reading::What;

impl Work<'_> {
    /// What is offered at the first club, until nothing is.
    pub(super) fn measure_offered(&mut self, stage: u64) -> Result<(), TradeError> {
        /// More than this nobody measures, whatever is offered.
        const MOST: u64 = 10;
        for nth in 0..MOST {
            let Some(offer) = advice::offered(&self.believe()?, &self.id(0), &self.parts)? else { break };
            self.measure(offer.measure, stage, 20 + 10 * nth);
        }
        Ok(())
    }

    /// Makes one of the measurements that are offered, at the first club.
    pub(super) fn measure(&mut self, measure: Measure, stage: u64, nth: u64) {
        let club = self.club(0, Faults::default());
        let build = self.build_of(0);
        let name = |what, nth| Name { slot: 0, stage, what, nth };
        let scale = |points, name| self.tools.swing_weight(points, self.moment(stage, 0), name);
        let mut shown: Vec<(What, f64)> = Vec::new();
        match measure {
            Measure::CheckWeight => {
                let what = What::CheckWeight;
                shown.push((what, scale(CHECK_POINTS + self.shop.check_error_points, name(what, nth))));
            }
            Measure::Reference => {
                let what = What::ReferenceSwingWeight;
                shown.extend((nth..nth + 4).map(|nth| (what, scale(self.reference_points(), name(what, nth)))));
            }
            Measure::Tape => {
                shown.push((What::TapeMass, self.tools.mass(club.mass_g(&[Role::Tape]), name(What::TapeMass, nth))));
            }
            Measure::GripCentre => {
                let centre_mm = self.truth.grip.centre_mm + self.truth.piece(&build.grip).centre_mm;
                shown.push((What::GripCentre, self.tools.edge(centre_mm, name(What::GripCentre, nth))));
            }
            Measure::Cap => {
                let cap_mm = self.truth.grip.cap_mm + self.truth.piece(&build.grip).cap_mm;
                shown.push((What::CapThickness, self.tools.caliper(cap_mm, name(What::CapThickness, nth))));
            }
            Measure::ShaftCentre => {
                let shaft = club.masses.iter().find(|m| m.role == Role::Shaft).map_or(0.0, |m| m.arm_mm);
                shown.push((What::ShaftBalancePoint, self.tools.edge(shaft, name(What::ShaftBalancePoint, nth))));
            }
            // Left out of what is asked for.
            Measure::Weighed | Measure::Total | Measure::Again | Measure::Pilot => {}
        }
        for (more, (what, value)) in (0..).zip(shown) {
            self.keep(0, stage, what, &[], value, nth + more);
        }
    }

    /// The check weight, and the reference club where another scale read it.
    pub(super) fn check(&mut self, stage: u64) -> Result<(), TradeError> {
        if !self.measured.check_weight {
            return Ok(());
        }
        let mut known = vec![(What::CheckWeight, CHECK_POINTS + self.shop.check_error_points, 2)];
        if self.settings.has(Trouble::BayScale) {
            // The sheet's figure is a mean of four readings on the bay's scale.
            known.push((What::ReferenceSwingWeight, self.reference_points(), 4));
        }
        for (what, true_points, times) in known {
            self.time_passes(stage, 0);
            let expected = self.believe()?.expected(&self.id(0), what, &[])?;
            for nth in 0..times {
                let name = Name { slot: 0, stage, what, nth };
                let shown = self.tools.swing_weight(true_points, self.moment(stage, 0), name);
                self.keep(0, stage, what, &[], shown, nth);
                if let (Some(e), true) = (expected, nth == 0) {
                    let z = (shown - e.value) * BAND_95 / e.band;
                    self.tally.innovations[0].add(z.abs() <= BAND_95);
                    self.tally.z[0].add(z);
                }
            }
        }
        Ok(())
    }

    /// True swing weight of the reference club: what the sheet says of it less what the scale that read it showed too much.
    pub(super) fn reference_points(&self) -> f64 {
        let said = self.job.sheet.reference.as_ref().and_then(|r| r.swing_weight_points);
        said.unwrap_or(self.truth.target_points) - self.truth.reference_error_points
    }

    /// A strip of tape weighed, a grip balanced on an edge, its cap measured.
    pub(super) fn measure_parts(&mut self) {
        let club = self.club(0, Faults::default());
        let slot = 0;
        let grip = self.truth.piece(&self.build_of(slot).grip);
        let name = |what| Name { slot, stage: stage::PARTS, what, nth: 0 };
        let centre = self.tools.edge(self.truth.grip.centre_mm + grip.centre_mm, name(What::GripCentre));
        let cap = self.tools.caliper(self.truth.grip.cap_mm + grip.cap_mm, name(What::CapThickness));
        self.keep(slot, stage::PARTS, What::GripCentre, &[], centre, 0);
        self.keep(slot, stage::PARTS, What::CapThickness, &[], cap, 0);
        if !self.measured.each_tape {
            self.weigh_tape(0, stage::PARTS, &club);
        }
    }

    pub(super) fn weigh_tape(&mut self, slot: usize, stage: u64, club: &TrueClub) {
        let name = Name { slot, stage, what: What::TapeMass, nth: 0 };
        let shown = self.tools.mass(club.mass_g(&[Role::Tape]), name);
        self.keep(slot, stage, What::TapeMass, &[], shown, 0);
    }
}
