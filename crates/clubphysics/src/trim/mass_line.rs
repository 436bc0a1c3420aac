//! The mass of a shaft, spread along its axis.

use crate::advice::Advice;
use crate::{Bound, PhysicsError, real::Real};

/// A piece of a shaft whose density runs straight from one end to the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Segment<T = f64> {
    /// Where it starts, from the butt end.
    pub from_mm: T,
    /// Where it ends, mm from the butt end.
    pub to_mm: T,
    /// Density at its start, g/mm, at least 0.
    pub from_g_mm: T,
    /// Density at its end, g/mm; straight in between.
    pub to_g_mm: T,
}

impl<T: Real> Segment<T> {
    fn length_mm(&self) -> T {
        self.to_mm - self.from_mm
    }

    fn density_g_mm(&self, place_mm: T) -> T {
        let share = (place_mm - self.from_mm) / self.length_mm();
        self.from_g_mm + (self.to_g_mm - self.from_g_mm) * share
    }

    /// Mass, first moment about the butt end, and second moment about the butt end.
    fn moments(&self) -> [T; 3] {
        let (length, start) = (self.length_mm(), self.from_mm);
        let (from, to) = (self.from_g_mm, self.to_g_mm);
        let mass = length * (from + to) * 0.5;
        // About the start of the segment: ∫ x·λ and ∫ x²·λ of a straight line.
        let first = length.squared() * (from + to * 2.0) / 6.0;
        let second = length.squared() * length * (from + to * 3.0) / 12.0;
        [mass, first + mass * start, second + first * start * 2.0 + mass * start.squared()]
    }
}

/// Linear density along a shaft: segments from the butt end to the tip end, without gaps.
#[derive(Debug, Clone, PartialEq)]
pub struct MassLine<T = f64> {
    segments: Vec<Segment<T>>,
}

impl<T: Real> MassLine<T> {
    /// The straight mass line of a shaft of known mass, length and balance point.
    ///
    /// Definition (derived): `λ(x) = m/L·(1 + s·(2x/L − 1))` with `s = 6·(c/L − ½)` has mass m and balance point c.
    /// Valid while λ is nowhere negative, that is for c between L/3 and 2L/3; the caller checks this.
    pub(crate) fn straight(mass_g: T, length_mm: T, balance_point_mm: T) -> Self {
        let mean = mass_g / length_mm;
        let tilt = (balance_point_mm / length_mm - 0.5) * 6.0;
        let butt = mean * (-tilt + 1.0);
        let tip = mean * (tilt + 1.0);
        let zero = T::constant(0.0);
        Self { segments: vec![Segment { from_mm: zero, to_mm: length_mm, from_g_mm: butt, to_g_mm: tip }] }
    }

    /// The line through a table of place and density, straight between its rows.
    ///
    /// # Errors
    ///
    /// [`PhysicsError`] with fewer than two rows, rows out of order, or densities that are negative or not finite.
    pub fn from_table(field: &str, rows_mm_g_m: &[(f64, f64)]) -> Result<Self, PhysicsError> {
        crate::check::enough(field, rows_mm_g_m.len(), 2, Advice::DensityAtBothEnds)?;
        for (i, (place_mm, density_g_m)) in rows_mm_g_m.iter().enumerate() {
            crate::check::finite(&format!("{field}[{i}].position_mm"), *place_mm, "mm")?;
            crate::check::not_negative(&format!("{field}[{i}].density_g_m"), *density_g_m, "g/m")?;
        }
        let mut segments = Vec::with_capacity(rows_mm_g_m.len() - 1);
        for (i, pair) in rows_mm_g_m.windows(2).enumerate() {
            let [(from_mm, from_g_m), (to_mm, to_g_m)] = [pair[0], pair[1]];
            let advice = Advice::SortFromButt;
            crate::check::above(&format!("{field}[{}].position_mm", i + 1), to_mm, from_mm, "mm", advice)?;
            segments.push(Segment {
                from_mm: T::constant(from_mm),
                to_mm: T::constant(to_mm),
                from_g_mm: T::constant(from_g_m / 1000.0),
                to_g_mm: T::constant(to_g_m / 1000.0),
            });
        }
        Ok(Self { segments })
    }

    /// The line of a stepped shaft: pieces of even density, from the butt end.
    ///
    /// # Errors
    ///
    /// [`PhysicsError`] without a step, or with one that has no length or a negative mass.
    pub fn from_steps(field: &str, steps_mm_g: &[(f64, f64)]) -> Result<Self, PhysicsError> {
        crate::check::enough(field, steps_mm_g.len(), 1, Advice::EachStepWhole)?;
        let mut segments = Vec::with_capacity(steps_mm_g.len());
        let mut from_mm = 0.0;
        for (i, (length_mm, mass_g)) in steps_mm_g.iter().enumerate() {
            crate::check::positive(&format!("{field}[{i}].length_mm"), *length_mm, "mm")?;
            crate::check::not_negative(&format!("{field}[{i}].mass_g"), *mass_g, "g")?;
            let density = T::constant(mass_g / length_mm);
            let to_mm = from_mm + length_mm;
            segments.push(Segment {
                from_mm: T::constant(from_mm),
                to_mm: T::constant(to_mm),
                from_g_mm: density,
                to_g_mm: density,
            });
            from_mm = to_mm;
        }
        Ok(Self { segments })
    }

    /// The same shape, scaled and tilted so that a weighed mass and a measured balance point come out.
    ///
    /// Definition (derived): `α·λ(x) + γ·(2x/L − 1)`; the tilt has no mass, so α is the ratio of the masses and γ moves
    /// the balance point alone.
    ///
    /// # Errors
    ///
    /// [`PhysicsError`] where the table has no mass, or where the density would become negative somewhere: table and
    /// measurement are then not of one shaft.
    pub(crate) fn fitted(&self, mass_g: T, balance_point_mm: T) -> Result<Self, PhysicsError> {
        let [table_g, table_g_mm, _] = self.moments();
        crate::check::positive("mass of the table", table_g.value(), "g")?;
        let (start, length) = (self.start_mm(), self.length_mm());
        let scale = mass_g / table_g;
        let tilt = (mass_g * balance_point_mm - scale * table_g_mm) * 6.0 / length.squared();
        let fit = |place: T, density: T| density * scale + tilt * ((place - start) / length * 2.0 - 1.0);
        let fitted = Self {
            segments: self
                .segments
                .iter()
                .map(|piece| Segment {
                    from_g_mm: fit(piece.from_mm, piece.from_g_mm),
                    to_g_mm: fit(piece.to_mm, piece.to_g_mm),
                    ..*piece
                })
                .collect(),
        };
        fitted.refuse_negative("balance_point_mm", balance_point_mm.value())?;
        Ok(fitted)
    }

    /// The same masses spread over another length.
    pub(crate) fn stretched(&self, length_mm: T) -> Self {
        let factor = length_mm / self.length_mm();
        let stretch = |piece: &Segment<T>| Segment {
            from_mm: piece.from_mm * factor,
            to_mm: piece.to_mm * factor,
            from_g_mm: piece.from_g_mm / factor,
            to_g_mm: piece.to_g_mm / factor,
        };
        Self { segments: self.segments.iter().map(stretch).collect() }
    }

    /// An error where the density is negative anywhere.
    pub(crate) fn refuse_negative(&self, field: &str, balance_point_mm: f64) -> Result<(), PhysicsError> {
        // A shaft whose density just touches nothing at one end may round below it.
        const ROUNDING_G_MM: f64 = -1e-12;
        let negative = |piece: &Segment<T>| piece.from_g_mm.value().min(piece.to_g_mm.value()) < ROUNDING_G_MM;
        if self.segments.iter().any(negative) {
            let middle_mm = self.start_mm().value() + self.length_mm().value() / 2.0;
            let bound = if balance_point_mm < middle_mm { Bound::AtLeast } else { Bound::AtMost };
            let third = self.length_mm().value() / 6.0;
            return Err(PhysicsError::OutOfRange {
                field: field.to_owned(),
                value: balance_point_mm,
                bound,
                limit: if bound == Bound::AtLeast { middle_mm - third } else { middle_mm + third },
                unit: "mm",
                advice: Box::new(Advice::NoShaftBalancesThere),
            });
        }
        Ok(())
    }

    /// The line between two places, moved so that it starts at the butt end again.
    ///
    /// Between a place and itself it is one piece without length, whose mass is nothing but still has a slope.
    #[must_use]
    pub fn part(&self, from_mm: T, to_mm: T) -> Self {
        let mut segments = Vec::with_capacity(self.segments.len());
        for piece in &self.segments {
            let start = if piece.from_mm.value() <= from_mm.value() { from_mm } else { piece.from_mm };
            let end = if piece.to_mm.value() >= to_mm.value() { to_mm } else { piece.to_mm };
            let point = from_mm.value() == to_mm.value() && start.value() == end.value() && segments.is_empty();
            if point || start.value() < end.value() {
                segments.push(Segment {
                    from_mm: start - from_mm,
                    to_mm: end - from_mm,
                    from_g_mm: piece.density_g_mm(start),
                    to_g_mm: piece.density_g_mm(end),
                });
            }
        }
        Self { segments }
    }

    /// The pieces, from the butt end.
    #[must_use]
    pub fn segments(&self) -> &[Segment<T>] {
        &self.segments
    }

    /// Total mass (g), first moment (g·mm) and second moment (g·mm²) about the butt end.
    #[must_use]
    pub fn moments(&self) -> [T; 3] {
        let zero = T::constant(0.0);
        self.segments.iter().fold([zero; 3], |[mass, first, second], piece| {
            let [a, b, c] = piece.moments();
            [mass + a, first + b, second + c]
        })
    }

    /// From the first place to the last.
    #[must_use]
    pub fn length_mm(&self) -> T {
        self.segments.last().map_or(T::constant(0.0), |piece| piece.to_mm) - self.start_mm()
    }

    fn start_mm(&self) -> T {
        self.segments.first().map_or(T::constant(0.0), |piece| piece.from_mm)
    }
}
