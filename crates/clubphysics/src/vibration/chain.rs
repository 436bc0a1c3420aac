//! What a load does to the clamped beam: a chain of elements, each held at the end of the one before it.
//!
//! A beam that is held at one end only carries its loads in one way: what an element bears is the sum of the loads
//! beyond it. So no system of equations is solved. The loads are added up from the tip, each element bends by its own
//! flexibility, and the bends are added up from the clamp. Nothing is subtracted from anything of its own size, however
//! short an element is. A factored stiffness matrix would lose that: its entries go with 1/h³, and an element of 10 µm
//! between others of 30 mm leaves no digit of the whole (seen as 302 cpm becoming 309).

/// One element held at the end nearer to the clamp: how its far end moves under a force and a moment there.
#[derive(Debug, Clone, Copy)]
struct Link {
    length_m: f64,
    /// Deflection under a force, m/N.
    by_force_m: f64,
    /// Deflection under a moment, and slope under a force, 1/N.
    across: f64,
    /// Slope under a moment, 1/(N·m).
    by_moment_rad: f64,
}

/// The elements from the clamp to the tip.
#[derive(Debug, Clone)]
pub(super) struct Chain {
    links: Vec<Link>,
}

impl Chain {
    pub(super) fn with_capacity(elements: usize) -> Self {
        Self { links: Vec::with_capacity(elements) }
    }

    /// Adds the next element by the stiffness of its far end: force by deflection, moment by deflection, moment by
    /// slope. Returns false, and adds nothing, where the element does not resist every bend.
    #[must_use]
    pub(super) fn push(&mut self, length_m: f64, [force, across, moment]: [f64; 3]) -> bool {
        let determinant = force * moment - across * across;
        // An even element has a determinant of a quarter of the product; a hundred-millionth of that is a hinge.
        let stiff = force > 0.0 && moment > 0.0 && determinant > 1e-9 * force * moment && determinant.is_finite();
        if stiff {
            self.links.push(Link {
                length_m,
                by_force_m: moment / determinant,
                across: -across / determinant,
                by_moment_rad: force / determinant,
            });
        }
        stiff
    }

    /// Turns the force and moment on each free node into its deflection and slope, in place.
    pub(super) fn bend(&self, x: &mut [f64]) {
        let (mut force, mut moment) = (0.0, 0.0);
        for (link, node) in self.links.iter().zip(x.chunks_exact_mut(2)).rev() {
            force += node[0];
            moment += node[1];
            node[0] = link.by_force_m * force + link.across * moment;
            node[1] = link.across * force + link.by_moment_rad * moment;
            moment += force * link.length_m;
        }
        let (mut deflection, mut slope) = (0.0, 0.0);
        for (link, node) in self.links.iter().zip(x.chunks_exact_mut(2)) {
            deflection += slope * link.length_m + node[0];
            slope += node[1];
            node[0] = deflection;
            node[1] = slope;
        }
    }
}
