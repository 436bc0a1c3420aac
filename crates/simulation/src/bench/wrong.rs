//! What is done about a doubted reading, and what became of the blunders.

use super::Work;
use crate::advice::{self, Tells};
use crate::blunder::Blunder;
use crate::club::Faults;
use crate::hands::{moment, stage};
use crate::job::CLUBS;
use crate::scale::Name;
use crate::tally::BlunderSeen;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::kind::Role;
use trade::reading::{Reading, What};

/// Looks before the measurement at most: the empty scale, the ferrule, the number on the sole.
const MOST_LOOKS: u64 = 3;

impl Work<'_> {
    /// What a builder does about a doubted reading: seats the club again and reads once more; if it is doubted still,
    /// looks for what is wrong with the club, finds it if there is something, and mends it.
    pub(super) fn look_again(&mut self, slots: &[usize], stage: u64, on: &[Role]) -> Result<(), TradeError> {
        if self.settings.blunders <= 0.0 {
            return Ok(());
        }
        let doubted: Vec<(String, ClubId)> = {
            let believed = self.believe()?;
            let standing = believed.standing();
            // What speaks of the club as a whole; a doubted part is weighed again, which changes nothing here.
            let whole = |w| matches!(w, What::SwingWeight | What::TotalMass | What::ShaftLength | What::FinishedLength);
            let doubted = standing.iter().filter(|r| whole(r.what) && believed.is_doubted(&r.id));
            doubted.map(|r| (r.id.as_str().to_owned(), r.club.clone())).collect()
        };
        for slot in 0..CLUBS {
            let club = self.id(slot);
            let mine = doubted.iter().filter(|(id, c)| *c == club && !self.answered.contains(id));
            let mine: Vec<String> = mine.map(|(id, _)| id.clone()).collect();
            if mine.is_empty() {
                continue;
            }
            self.answered.extend(mine.iter().cloned());
            let here = format!("{stage:02}-");
            let touched = mine.iter().any(|id| self.touched.contains(id));
            let blunder = self.blunders[slot];
            if let Some(seen) = &mut self.seen[slot] {
                // Found when a reading that it touched is doubted, or when a doubt makes the builder look at the club.
                seen.found |= touched || blunder.is_some_and(Blunder::is_of_club);
                let first = self.touched.iter().find(|id| id[3..].starts_with(&format!("{slot}-")));
                seen.at_once |= first.is_some_and(|id| id.starts_with(&here) && mine.contains(id));
            }
            if let Some(id) = mine.iter().find(|id| self.touched.contains(id)) {
                self.ask_for_the_cause(slot, stage, id)?;
            }
            if blunder.is_some_and(|b| b.is_of_club() && b.faults(stage) != Faults::default()) {
                self.mend(slot, stage);
            }
            if slots.contains(&slot) && stage > stage::CUT {
                self.read_once_more(slot, stage, on);
            }
        }
        Ok(())
    }

    /// Asks what may be wrong, looks where a look is asked for, takes the one measurement that would tell, asks again, and
    /// notes whether the true cause is named first.
    fn ask_for_the_cause(&mut self, slot: usize, stage: u64, id: &str) -> Result<(), TradeError> {
        let Some(blunder) = self.blunders[slot] else { return Ok(()) };
        if self.seen[slot].as_ref().is_none_or(|seen| seen.named.is_some()) {
            return Ok(());
        }
        // Looks take three seconds each; a measurement is the last.
        for nth in 80..80 + MOST_LOOKS + 1 {
            let Some((what, on)) = self.causes(id)?.1 else { break };
            let faults = blunder.faults(stage);
            let club = self.club(slot, faults);
            let name = Name { slot, stage, what, nth };
            let at = moment(self.settings, stage, slot);
            let length_mm = club.shaft_mm + club.bore_to_ground_mm + club.cap_mm;
            let role = what.mass_of().filter(|r| *r != Role::TipWeight);
            let shown = match (what, role) {
                (What::SwingWeight, _) => Some(self.tools.swing_weight(club.swing_weight_points(&on), at, name)),
                (What::TotalMass, _) => Some(self.tools.mass(club.mass_g(&on), name)),
                (What::BalancePoint, _) => club.balance_point_mm(&on).map(|mm| self.tools.edge(mm, name)),
                // Nobody forgets to zero the scale here.
                (What::EmptyScale, _) => Some(1.0),
                (What::FerruleOn, _) => Some(f64::from(u8::from(!faults.ferrule_missing))),
                (What::HeadNumber, _) => Some(f64::from(u8::from(!blunder.is_another_number()))),
                (What::CheckWeight, _) => {
                    Some(self.tools.swing_weight(crate::CHECK_POINTS + self.shop.check_error_points, at, name))
                }
                (What::FinishedLength, _) => Some(self.tools.length(length_mm, name)),
                (What::ShaftLength, _) => Some(self.tools.length(club.shaft_mm, name)),
                (_, Some(role)) => Some(self.tools.mass(club.mass_g(&[role]), name)),
                _ => None,
            };
            if let Some(shown) = shown {
                self.keep(slot, stage, what, &on, shown, nth);
            }
            if !what.is_look() {
                break;
            }
        }
        let first = self.causes(id)?.0;
        if let Some(seen) = &mut self.seen[slot] {
            seen.named = Some(first.as_deref().is_some_and(|key| blunder.is_named_by(key)));
            seen.first_cause = first;
        }
        Ok(())
    }

    /// The cause named first for a reading, and what would tell.
    fn causes(&self, id: &str) -> Result<(Option<String>, Option<Tells>), TradeError> {
        let believed = self.believe()?;
        let Some(reading) = self.readings.iter().find(|r| r.id.as_str() == id) else { return Ok((None, None)) };
        let (causes, telling) = advice::ask(&believed, reading, &self.parts)?;
        Ok((causes.into_iter().next(), telling))
    }

    fn mend(&mut self, slot: usize, stage: u64) {
        if stage > stage::GLUE {
            self.tally.rework += 1;
        }
        self.blunders[slot] = None;
        let club = self.id(slot);
        let of_club = |r: &Reading| {
            r.club == club
                && !matches!(
                    r.what,
                    What::Done | What::CheckWeight | What::TapeMass | What::GripCentre | What::CapThickness
                )
        };
        self.readings.retain(|r| !of_club(r));
        self.touched.retain(|id| !id[3..].starts_with(&format!("{slot}-")));
        let club = self.club(slot, Faults::default());
        let name = Name { slot, stage: stage::CUT, what: What::ShaftLength, nth: 90 };
        let value = self.tools.length(club.shaft_mm, name);
        self.keep(slot, stage::CUT, What::ShaftLength, &[], value, 90);
    }

    fn read_once_more(&mut self, slot: usize, stage: u64, on: &[Role]) {
        let club = self.club(slot, self.blunders[slot].map_or_else(Faults::default, |b| b.faults(stage)));
        let before = format!("{stage:02}-{slot}-{}-9", What::SwingWeight.key());
        let nth = 90 + self.readings.iter().filter(|r| r.id.as_str().starts_with(&before)).count() as u64;
        let name = Name { slot, stage, what: What::SwingWeight, nth };
        let shown = self.tools.swing_weight(club.swing_weight_points(on), moment(self.settings, stage, slot), name);
        let id = self.keep(slot, stage, What::SwingWeight, on, shown, nth);
        if self.blunders[slot].is_some_and(|b| b.faults(stage) != Faults::default()) {
            self.touched.push(id);
        }
    }

    /// The first reading that a blunder touches, with its shift in standard deviations.
    pub(super) fn saw(&mut self, slot: usize, blunder: Blunder, shift_in_s: f64) {
        let first = BlunderSeen {
            kind: blunder.key(),
            shift_in_s,
            at_once: false,
            found: false,
            named: None,
            first_cause: None,
        };
        self.seen[slot].get_or_insert(first);
    }
}
