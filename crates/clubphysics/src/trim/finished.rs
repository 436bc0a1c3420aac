//! From a finished length to the length of the cut shaft.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::{PhysicsError, check, real::Real};

/// Where the length of a club ends at the grip. The two differ by the thickness of the grip's cap and must never be
/// mixed: the sheet says which is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Convention {
    /// At the butt end of the bare shaft.
    ToShaftEnd,
    /// At the end of the grip's cap.
    ToCap,
}

/// A finished length along the shaft axis, from where the axis meets the ground line, and what lies between it and the
/// length of the cut shaft.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FinishedLength<T = f64> {
    /// Length of the finished club along the shaft axis.
    pub finished_length_mm: T,
    /// Where it ends at the grip.
    pub convention: Convention,
    /// Thickness of the grip's cap.
    pub cap_mm: T,
    /// From the bottom of the head's bore to the ground line, along the shaft axis: a property of the head.
    pub bore_to_ground_mm: T,
    /// Gap left between the tip end and the bottom of the bore, as by a weight's flange; usually nothing.
    pub off_bottom_mm: T,
}

impl<T: Real> FinishedLength<T> {
    /// Length of the shaft that gives the finished length.
    ///
    /// Definition: finished length, less the cap where it is measured to the cap, less bottom of bore to ground, less
    /// the gap.
    ///
    /// # Errors
    ///
    /// [`PhysicsError`] where a figure is not finite, a thickness is negative, or nothing would be left of the shaft.
    ///
    /// # Examples
    ///
    /// ```
    /// use clubphysics::trim::{Convention, FinishedLength};
    /// let club = FinishedLength {
    ///     finished_length_mm: 965.2, convention: Convention::ToCap, cap_mm: 3.0, bore_to_ground_mm: 40.0,
    ///     off_bottom_mm: 0.0,
    /// };
    /// assert!((club.cut_shaft_length_mm()? - 922.2).abs() < 1e-9);
    /// # Ok::<(), clubphysics::PhysicsError>(())
    /// ```
    pub fn cut_shaft_length_mm(&self) -> Result<T, PhysicsError> {
        self.check()?;
        let cut_mm = self.finished_length_mm - self.beyond_shaft_mm();
        check::positive("cut shaft length (finished_length_mm less cap and bore)", cut_mm.value(), "mm")?;
        Ok(cut_mm)
    }

    /// Finished length that a cut shaft gives: the reverse. `finished_length_mm` itself is not looked at.
    ///
    /// # Errors
    ///
    /// [`PhysicsError`] where a figure is not finite or a thickness is negative.
    ///
    /// # Examples
    ///
    /// ```
    /// use clubphysics::trim::{Convention, FinishedLength};
    /// let club = FinishedLength {
    ///     finished_length_mm: 0.0, convention: Convention::ToCap, cap_mm: 3.0, bore_to_ground_mm: 40.0, off_bottom_mm: 0.0,
    /// };
    /// // 922.2 of shaft, 40 of head and 3 of cap.
    /// assert!((club.finished_with_mm(922.2)? - 965.2).abs() < 1e-9);
    /// # Ok::<(), clubphysics::PhysicsError>(())
    /// ```
    pub fn finished_with_mm(&self, cut_shaft_length_mm: T) -> Result<T, PhysicsError> {
        check::positive("cut_shaft_length_mm", cut_shaft_length_mm.value(), "mm")?;
        Self { finished_length_mm: cut_shaft_length_mm, ..*self }.check()?;
        Ok(cut_shaft_length_mm + self.beyond_shaft_mm())
    }

    /// What the finished length holds beside the shaft.
    fn beyond_shaft_mm(&self) -> T {
        let beyond_mm = self.bore_to_ground_mm + self.off_bottom_mm;
        match self.convention {
            Convention::ToShaftEnd => beyond_mm,
            Convention::ToCap => beyond_mm + self.cap_mm,
        }
    }

    fn check(&self) -> Result<(), PhysicsError> {
        check::positive("finished_length_mm", self.finished_length_mm.value(), "mm")?;
        check::not_negative("cap_mm", self.cap_mm.value(), "mm")?;
        check::not_negative("bore_to_ground_mm", self.bore_to_ground_mm.value(), "mm")?;
        check::not_negative("off_bottom_mm", self.off_bottom_mm.value(), "mm")?;
        Ok(())
    }
}
