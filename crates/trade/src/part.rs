//! Parts: weighed pieces with a code each, or counted bulk of equal pieces.

pub mod field;
pub mod named_fields;

use crate::error::TradeError;
use crate::error::within;
use crate::id::{ClubId, JobId, PartId};
use crate::kind::closed_list;
use crate::model::PartKind;
use crate::part_field;
use crate::stiffness_profile::ShaftProfile;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// Where a part is in its life.
    PartState {
        /// Ordered, not here yet.
        Ordered = "ordered";
        /// In stock and free.
        Free = "free";
        /// Held for a club of a job.
        Held = "held";
        /// In a club.
        Used = "used";
        /// Pulled out of a club.
        Pulled = "pulled";
        /// Put aside as unfit.
        Rejected = "rejected";
    }
}

crate::part::named_fields::with_part_figures! {
    /// A single part, or a bulk of `count` equal ones.
    #[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
    #[serde(deny_unknown_fields)]
    pub struct Part {
        /// Identity.
        pub id: PartId,
        /// The shop's code on the label, unique.
        pub code: String,
        /// What sort of part it is: head, shaft, grip …
        pub kind: PartKind,
        /// Code of its model.
        pub model: String,
        /// The number of a head, or of a taper blank.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub number: Option<String>,
        /// Mass on the shop's scale; none until weighed (ordered parts, bulk weighed at use).
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub mass_g: Option<f64>,
        /// The mass as it was typed or read.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub mass_typed: String,
        /// How many are left, for counted bulk; none for a single part.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub count: Option<i64>,
        /// What was cut off the tip of this shaft already, where it was used before or cut wrongly.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub tip_trimmed_mm: Option<f64>,
        /// How stiff this shaft is along its length, as the shop read it; none for one that was not read, and for other parts.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub profile: Option<ShaftProfile>,
        /// Lot or serial of the maker.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub lot: String,
        /// Its place in the shop.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub place: String,
        /// Number of the customer whose it is; left out where it is the shop's own. A customer's part goes into clubs of that
        /// customer only, and is no stock for anybody else.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub owner: Option<i64>,
        /// Where it is in its life.
        pub state: PartState,
        /// The job that holds or used it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub job: Option<JobId>,
        /// The club that holds or used it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub club: Option<ClubId>,
        /// Goes up by one with every change, so that two tablets cannot overwrite each other.
        #[serde(default)]
        pub version: i64,
    }
}

impl Part {
    /// A free part with nothing known of it but its code and model. The store gives it its identity.
    #[must_use]
    pub fn new(code: &str, kind: PartKind, model: &str) -> Self {
        Self {
            id: PartId::from(""),
            code: code.to_owned(),
            kind,
            model: model.to_owned(),
            number: None,
            mass_g: None,
            mass_typed: String::new(),
            count: None,
            length_mm: None,
            balance_point_mm: None,
            cpm: None,
            tip_trimmed_mm: None,
            profile: None,
            loft_deg: None,
            lie_deg: None,
            lot: String::new(),
            place: String::new(),
            owner: None,
            state: PartState::Free,
            job: None,
            club: None,
            version: 0,
        }
    }

    /// Refuses figures that no part of this kind can have.
    ///
    /// # Errors
    /// The first impossible figure by its field name.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::model::PartKind;
    /// use trade::part::Part;
    ///
    /// let mut head = Part::new("H7-014", PartKind::Head, "SISKIN");
    /// head.mass_g = Some(268.4);
    /// head.check()?;
    /// head.mass_g = Some(2684.0);
    /// assert_eq!(head.check().expect_err("ten times too heavy").field(), Some("mass_g"));
    /// # Ok::<(), trade::error::TradeError>(())
    /// ```
    pub fn check(&self) -> Result<(), TradeError> {
        if let Some(cpm) = self.cpm
            && self.kind != PartKind::Shaft
        {
            return Err(TradeError::unreadable("cpm", &PartFault::NoFrequency { kind: self.kind, is_cpm: cpm }));
        }
        for (field, figure) in part_field::figures() {
            if let (Some(value), Some((low, high))) = ((figure.get)(self), (figure.range)(self)) {
                within(field.key, value, low, high, field.measure.sign())?;
            }
        }
        if let Some(count) = self.count
            && !(0..=1_000_000).contains(&count)
        {
            return Err(TradeError::refused(PartFault::BadCount { code: self.code.clone(), n: count }));
        }
        if self.count.is_some() && matches!(self.kind, PartKind::Head | PartKind::Shaft) {
            return Err(TradeError::refused(PartFault::Counted { code: self.code.clone(), kind: self.kind }));
        }
        Ok(())
    }

    /// Whether it may go into a club of this customer; of nobody's, where the job belongs to none.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::model::PartKind;
    /// use trade::part::Part;
    ///
    /// let theirs = Part { owner: Some(3), ..Part::new("H1", PartKind::Head, "SISKIN") };
    /// assert!(theirs.may_go_to(Some(3)) && !theirs.may_go_to(Some(4)) && !theirs.may_go_to(None));
    /// let shops = Part::new("H2", PartKind::Head, "SISKIN");
    /// assert!(shops.may_go_to(Some(3)) && shops.may_go_to(None));
    /// ```
    #[must_use]
    pub fn may_go_to(&self, customer: Option<i64>) -> bool {
        self.owner.is_none() || self.owner == customer
    }

    /// Whether a plan may take it.
    #[must_use]
    pub fn is_free(&self) -> bool {
        self.state == PartState::Free && self.count.is_none_or(|n| n > 0)
    }
}

/// The lowest frequency that a shaft or club can have at all, cycles a minute. Wide, to catch slips of the key and of the
/// unit only. Common practice, no source.
pub const CPM_LEAST: f64 = 50.0;
/// The highest; see [`CPM_LEAST`].
pub const CPM_MOST: f64 = 600.0;

/// The masses that a part of this kind can have at all, in grams. Wide, to catch slips of the key and of the unit
/// only. Common practice, no source.
///
/// # Examples
///
/// ```
/// use trade::model::PartKind;
/// use trade::part::possible_mass_g;
///
/// let (least_g, most_g) = possible_mass_g(PartKind::Head);
/// assert!(least_g < 254.6 && 254.6 < most_g);
/// // 9 oz typed as 9 g is caught.
/// assert!(9.0 < least_g);
/// ```
#[must_use]
pub const fn possible_mass_g(kind: PartKind) -> (f64, f64) {
    match kind {
        PartKind::Head => (120.0, 600.0),
        PartKind::Shaft => (20.0, 250.0),
        PartKind::Grip => (10.0, 250.0),
        PartKind::Adapter => (0.5, 40.0),
        PartKind::TipWeight => (0.1, 40.0),
        PartKind::Ferrule => (0.1, 10.0),
        PartKind::Adhesive | PartKind::Tape => (0.1, 5000.0),
    }
}

fact::facts! {
    /// What is refused of a part.
    pub(crate) enum PartFault: "part_fault" {
        NoFrequency { kind: PartKind, is_cpm: f64 },
        BadCount { code: String, n: i64 },
        Counted { code: String, kind: PartKind },
    }
}
