//! A shaft as three figures: mass, length, balance point.

use crate::advice::Advice;
use crate::{PhysicsError, check, real::Real, trim::MassLine};

/// A shaft without head or grip. With only these three figures its mass line is taken as straight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shaft<T = f64> {
    /// Mass in grams, above 0.
    pub mass_g: T,
    /// Length from end to end in millimetres, above 0.
    pub length_mm: T,
    /// Balance point in millimetres from the butt end; a straight mass line has it in the middle third.
    pub balance_point_mm: T,
}

impl<T: Real> Shaft<T> {
    /// Its straight mass line.
    ///
    /// # Errors
    ///
    /// [`PhysicsError`] where a figure is not finite, not positive, or where the balance point lies outside the middle
    /// third: no straight mass line has it there.
    pub fn mass_line(&self) -> Result<MassLine<T>, PhysicsError> {
        check::positive("mass_g", self.mass_g.value(), "g")?;
        check::positive("length_mm", self.length_mm.value(), "mm")?;
        check::positive("balance_point_mm", self.balance_point_mm.value(), "mm")?;
        let line = MassLine::straight(self.mass_g, self.length_mm, self.balance_point_mm);
        line.refuse_negative("balance_point_mm", self.balance_point_mm.value())?;
        Ok(line)
    }

    /// The shaft after a piece is cut from each end; its balance point counts from the new butt end.
    ///
    /// Accuracy: rounding of about twenty operations; two cuts equal one to 1e-12 (`tests/val_trim.rs`).
    ///
    /// # Errors
    ///
    /// [`PhysicsError`] where a trim is negative, the trims leave nothing, or the mass line is impossible (see
    /// [`Shaft::mass_line`]).
    ///
    /// # Examples
    ///
    /// ```
    /// use clubphysics::trim::Shaft;
    /// let even = Shaft { mass_g: 100.0, length_mm: 1000.0, balance_point_mm: 500.0 };
    /// let cut = even.cut(50.0, 150.0)?;
    /// assert!((cut.mass_g - 80.0).abs() < 1e-12 && (cut.balance_point_mm - 400.0).abs() < 1e-12);
    /// # Ok::<(), clubphysics::PhysicsError>(())
    /// ```
    pub fn cut(&self, tip_mm: T, butt_mm: T) -> Result<Self, PhysicsError> {
        let line = self.mass_line()?;
        check_trim(self.length_mm.value(), tip_mm.value(), butt_mm.value())?;
        Ok(Self::of(&line.part(butt_mm, self.length_mm - tip_mm)))
    }

    /// Mass, length and balance point of a mass line that starts at the butt end.
    pub(crate) fn of(line: &MassLine<T>) -> Self {
        let [mass_g, first_g_mm, _] = line.moments();
        Self { mass_g, length_mm: line.length_mm(), balance_point_mm: first_g_mm / mass_g }
    }
}

/// Refuses trims that are negative or leave no shaft.
pub(crate) fn check_trim(length_mm: f64, tip_mm: f64, butt_mm: f64) -> Result<(), PhysicsError> {
    check::not_negative("tip_trim_mm", tip_mm, "mm")?;
    check::not_negative("butt_trim_mm", butt_mm, "mm")?;
    let advice = Advice::CutsLeaveAPiece;
    check::below("tip_trim_mm", tip_mm, length_mm, "mm", advice.clone())?;
    check::below("butt_trim_mm", butt_mm, length_mm - tip_mm, "mm", advice)?;
    Ok(())
}
