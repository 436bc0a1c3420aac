//! What a plan is made from: the parts that it may take, and those that other jobs hold.

use super::frequency::Lines;
use trade::model::Library;
use trade::order::Order;
use trade::part::Part;
use trade::shop::Shop;

/// A part in the hands of a job that is not planned along.
#[derive(Debug, Clone, PartialEq)]
pub struct HeldPart {
    /// What is held, with its code, model and mass.
    pub part: Part,
    /// Running number of the job that holds it.
    pub job: i64,
    /// Number of the club that it is held for.
    pub club: String,
    /// It is cut, glued or gripped there, so it cannot be given up.
    pub fixed: bool,
}

/// What a plan is made from.
#[derive(Debug, Clone, Copy)]
pub struct Supply<'a> {
    /// Parts that may be taken: those that are free, and those that the job itself holds.
    pub parts: &'a [Part],
    /// Parts that other jobs hold. They are never taken, but named where they would do, and what was measured of them
    /// counts for the frequency lines.
    pub held: &'a [HeldPart],
    /// What is on order: it is in no plan, but says which due dates hold.
    pub orders: &'a [Order],
}

impl<'a> Supply<'a> {
    /// The frequency lines of all that is in stock.
    pub fn lines(&self, library: &Library, shop: &Shop) -> Lines {
        Lines::of(library, &shop.clamp, self.parts.iter().chain(self.held.iter().map(|h| &h.part)))
    }
}

impl<'a> From<&'a [Part]> for Supply<'a> {
    fn from(parts: &'a [Part]) -> Self {
        Self { parts, held: &[], orders: &[] }
    }
}

impl<'a> From<&'a Vec<Part>> for Supply<'a> {
    fn from(parts: &'a Vec<Part>) -> Self {
        Self { parts, held: &[], orders: &[] }
    }
}
