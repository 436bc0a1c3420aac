//! What a figure of a club can be, and which slip a figure outside of that probably is.
//!
//! One table for all topics and for whoever else reads such figures. The ranges are wide on purpose: a child's club of
//! 18 in, a putter with a heavy head and a counterweight, a shaft of 60 in are clubs. What they keep out is a figure in
//! another unit, which would give an answer that no club has: 38 for a length in millimetres is 38 in.

use crate::advice::{Advice, Quantity};
use crate::slip::{LooksLike, SlipUnit};
use crate::{Bound, PhysicsError};
use fact::Measure;
use quantity::INCH_MM;

/// A slip of the unit: which one was probably meant, and what the figure is in the unit of the field.
#[derive(Debug, Clone, Copy)]
pub struct Slip {
    /// The unit in words, as in "this looks like inches".
    name: SlipUnit,
    /// Its sign.
    unit: &'static str,
    /// From that unit into the field's.
    convert: fn(f64) -> f64,
}

/// What a figure can be.
#[derive(Debug, Clone, Copy)]
pub struct Plausible {
    /// What it is the figure of, as in "a raw shaft is 254 to 1600 mm long".
    what: Quantity,
    /// Least and greatest.
    range: (f64, f64),
    /// Whether nothing at all is allowed too.
    or_zero: bool,
    /// Unit of the range, as in the names of the fields.
    unit: &'static str,
    /// Slips in the order in which they are likely.
    slips: &'static [Slip],
    /// Where a figure lands that was given in another unit, if that is narrower than the range.
    likely: Option<(f64, f64)>,
}

const INCHES: Slip = Slip { name: SlipUnit::Inches, unit: "in", convert: |value| value * INCH_MM };
const CENTIMETRES: Slip = Slip { name: SlipUnit::Centimetres, unit: "cm", convert: |value| value * 10.0 };
const METRES: Slip = Slip { name: SlipUnit::Metres, unit: "m", convert: |value| value * 1000.0 };
const OUNCES: Slip = Slip { name: SlipUnit::Ounces, unit: "oz", convert: |value| value * quantity::OZ_G };
const KILOGRAMS: Slip = Slip { name: SlipUnit::Kilograms, unit: "kg", convert: |value| value * 1000.0 };

/// Slips of a length in millimetres.
const OF_LENGTH: &[Slip] = &[INCHES, CENTIMETRES, METRES];
/// Slips of a mass in grams.
const OF_MASS: &[Slip] = &[KILOGRAMS, OUNCES];
/// Slips of a temperature in degrees Celsius.
const OF_TEMPERATURE: &[Slip] = &[
    Slip { name: SlipUnit::Fahrenheit, unit: "°F", convert: |value| (value - 32.0) / 1.8 },
    Slip { name: SlipUnit::Kelvins, unit: "K", convert: |value| value - 273.15 },
];

// The limits are common practice and the trade's catalogues from memory, no source, unless a line says otherwise.

/// Length of a shaft before or after its cuts: 10 in for a child's putter, 60 in for the longest blanks and a little more.
pub const SHAFT_LENGTH_MM: Plausible = Plausible::new(Quantity::LengthShaft, (254.0, 1600.0), "mm").slips(OF_LENGTH);
/// Length of a club. The Equipment Rules allow 18 to 48 in (2.1c, putters excluded at the upper end); children's clubs
/// and what is built beside the rules may be shorter and longer.
pub const CLUB_LENGTH_MM: Plausible = Plausible::new(Quantity::LengthClub, (254.0, 1600.0), "mm").slips(OF_LENGTH);
/// Mass of a shaft: 35 g for the lightest of composite, 150 g for steel, more for a putter's with a filling.
pub const SHAFT_MASS_G: Plausible = Plausible::new(Quantity::MassShaft, (15.0, 400.0), "g").slips(OF_MASS);
/// Mass of a whole club, or of what there is of it: a bare shaft weighs more than 20 g, a putter with counterweights
/// under 2 kg.
pub const CLUB_MASS_G: Plausible = Plausible::new(Quantity::MassClub, (20.0, 4000.0), "g").slips(&[OUNCES, KILOGRAMS]);
/// Mass of one part, a drop of solvent or the heaviest putter head.
pub const PART_MASS_G: Plausible = Plausible::new(Quantity::MassPart, (0.0, 4000.0), "g");
/// Balance point of a club from its butt end. Half a child's shaft balances at 127 mm.
pub const BALANCE_POINT_MM: Plausible =
    Plausible::new(Quantity::BalancePointClub, (100.0, 3000.0), "mm").slips(OF_LENGTH).likely(300.0, 1200.0);
/// A place on a club, from its butt end.
pub const PLACE_MM: Plausible = Plausible::new(Quantity::PlaceOnClub, (0.0, 3000.0), "mm");
/// Fulcrum of a balance scale from the butt stop: 14 in, and 12 in on older scales.
pub const FULCRUM_IN: Plausible = Plausible::new(Quantity::Fulcrum, (0.0, 24.0), "in").slips(&[
    Slip { name: SlipUnit::Centimetres, unit: "cm", convert: |value| value / 2.54 },
    Slip { name: SlipUnit::Millimetres, unit: "mm", convert: |value| value / INCH_MM },
]);
/// Mass of a grip: 20 g for the lightest, 150 g for a putter's, more with a weight in its end. Nothing is a bare club.
pub const GRIP_MASS_G: Plausible = Plausible::new(Quantity::MassGrip, (10.0, 300.0), "g").or_zero().slips(OF_MASS);
/// Centre of a grip from the end of its cap; that of an iron's lies at 95 to 110 mm. Nothing where there is no grip.
pub const GRIP_CENTRE_MM: Plausible =
    Plausible::new(Quantity::CentreGrip, (40.0, 400.0), "mm").or_zero().slips(OF_LENGTH);
/// Length of a grip: 270 mm for most, 200 mm for a child's, 550 mm for the longest putter grips.
pub const GRIP_LENGTH_MM: Plausible =
    Plausible::new(Quantity::LengthGrip, (100.0, 700.0), "mm").or_zero().slips(OF_LENGTH);
/// Thickness of a grip's cap: 2.5 to 3.5 mm.
pub const CAP_MM: Plausible = Plausible::new(Quantity::CapGrip, (0.0, 25.0), "mm");
/// Length added to a club or taken off it.
pub const LENGTHENING_MM: Plausible = Plausible::new(Quantity::ChangeLength, (-400.0, 400.0), "mm");
/// Mass of a metre of shaft: 45 g for the lightest butt, 140 g for steel.
pub const SHAFT_DENSITY_G_M: Plausible = Plausible::new(Quantity::MetreShaft, (10.0, 600.0), "g/m").or_zero().slips(&[
    Slip { name: SlipUnit::GramsAMillimetre, unit: "g/mm", convert: |value| value * 1000.0 },
    Slip { name: SlipUnit::GramsAnInch, unit: "g/in", convert: |value| value * 1000.0 / INCH_MM },
]);
/// Bottom of a head's bore to the ground line along the shaft axis.
pub const BORE_TO_GROUND_MM: Plausible = Plausible::new(Quantity::BoresDistanceToGround, (0.0, 150.0), "mm");
/// Depth of a head's bore, or of the tip in it: 25 to 40 mm.
pub const BORE_DEPTH_MM: Plausible = Plausible::new(Quantity::DepthBore, (8.0, 120.0), "mm").slips(OF_LENGTH);
/// Diameter of a shaft's tip: 0.335 to 0.370 in for most, 8.5 to 9.4 mm.
pub const TIP_DIAMETER_MM: Plausible =
    Plausible::new(Quantity::TipShaft, (5.0, 20.0), "mm").slips(&[INCHES, CENTIMETRES]);
/// From the shaft axis along the ground to where the sole rests: 30 to 60 mm.
pub const SOLE_CONTACT_MM: Plausible = Plausible::new(Quantity::SolesPointContact, (0.0, 150.0), "mm");
/// Radius of a hosel.
pub const HEEL_RADIUS_MM: Plausible = Plausible::new(Quantity::RadiusHosel, (0.0, 30.0), "mm");
/// Radius of a sole from heel to toe: 150 to 400 mm; a flat sole has a large one, a keel next to none.
pub const SOLE_RADIUS_MM: Plausible = Plausible::new(Quantity::RadiusSole, (0.0, 20_000.0), "mm");
/// Mass of a head with what is in it: 150 g for a child's, 190 g for a driver's, 400 g and more for a putter's.
pub const HEAD_MASS_G: Plausible = Plausible::new(Quantity::MassHead, (50.0, 1500.0), "g").slips(OF_MASS);
/// What is fixed to the tip of a clamped shaft: a head, or the weight of a meter. Nothing is a bare shaft.
pub const TIP_BODY_MASS_G: Plausible =
    Plausible::new(Quantity::HeadOnClampedShaft, (5.0, 1500.0), "g").or_zero().slips(OF_MASS);
/// Speed of the head at the ball: 30 to 58 m/s of men with a driver; a fast putt is 3 m/s. Nothing is a club at rest.
pub const HEAD_SPEED_M_S: Plausible = Plausible::new(Quantity::SpeedHead, (1.0, 75.0), "m/s").or_zero().slips(&[
    // An international mile is 1609.344 m (exact, international yard and pound agreement of 1959; from memory).
    Slip { name: SlipUnit::MilesAnHour, unit: "mph", convert: |value| value * 0.447_04 },
    Slip { name: SlipUnit::KilometresAnHour, unit: "km/h", convert: |value| value / 3.6 },
]);
/// Radius of the head's path: an arm and a club.
pub const SWING_RADIUS_M: Plausible = Plausible::new(Quantity::RadiusSwing, (0.4, 4.0), "m").slips(&[
    Slip { name: SlipUnit::Millimetres, unit: "mm", convert: |value| value / 1000.0 },
    Slip { name: SlipUnit::Centimetres, unit: "cm", convert: |value| value / 100.0 },
    Slip { name: SlipUnit::Inches, unit: "in", convert: |value| value * 0.0254 },
]);
/// Shear strength of an adhesive on its sheet: 10 to 35 MPa.
pub const SHEAR_STRENGTH_MPA: Plausible =
    Plausible::new(Quantity::ShearStrengthAdhesive, (0.5, 100.0), "MPa").slips(&[
        // 1 psi is 6894.757 Pa (derived: pound-force by square inch).
        Slip { name: SlipUnit::PoundsASquareInch, unit: "psi", convert: |value| value * 0.006_894_757 },
        Slip { name: SlipUnit::Kilopascals, unit: "kPa", convert: |value| value / 1000.0 },
    ]);
/// Density of an adhesive or of one of its parts: 0.95 to 1.9 g/ml.
pub const ADHESIVE_DENSITY_G_ML: Plausible = Plausible::new(Quantity::DensityAdhesive, (0.5, 3.0), "g/ml")
    .slips(&[Slip { name: SlipUnit::KilogramsACubicMetre, unit: "kg/m³", convert: |value| value / 1000.0 }]);
/// Adhesive that one joint takes: 1 to 3 g.
pub const JOINT_ADHESIVE_G: Plausible = Plausible::new(Quantity::AdhesiveJoint, (0.0, 20.0), "g");
/// Temperature of a room in which somebody works.
pub const ROOM_C: Plausible = Plausible::new(Quantity::TemperatureWorkshop, (-10.0, 50.0), "°C").slips(OF_TEMPERATURE);
/// Temperature for which a product's sheet states a time; some name an oven.
pub const SHEET_C: Plausible =
    Plausible::new(Quantity::TemperatureProductsSheet, (-20.0, 150.0), "°C").slips(OF_TEMPERATURE);
/// Frequency of a clamped shaft: 200 to 350 cpm with its head (published physics notes), near 1,000 bare.
pub const FREQUENCY_CPM: Plausible = Plausible::new(Quantity::FrequencyClampedShaft, (30.0, 3000.0), "cpm")
    .slips(&[Slip { name: SlipUnit::Hertz, unit: "Hz", convert: |value| value * 60.0 }]);
/// Factor that brings a stiffness table to a reading of its own shaft. Two or one half is another shaft, another clamp or
/// another unit; see [`STIFFNESS_FACTOR_USUAL`] for what is worth a remark.
pub const STIFFNESS_FACTOR: Plausible = Plausible::new(Quantity::FactorOnStiffnessTable, (0.5, 2.0), "");
/// Factor of a table that fits its shaft as tables do: a fifth of frequency to each side.
pub const STIFFNESS_FACTOR_USUAL: Plausible = Plausible::new(Quantity::FactorOnStiffnessTable, (0.7, 1.4), "");
/// Radius of gyration of a club about its balance point: the distance at which its whole mass would turn as it does. A
/// rod has 0.29 of its length, a club with a heavy head 0.2 to 0.4: 70 mm for a child's putter, 500 mm for the longest.
pub const GYRATION_MM: Plausible = Plausible::new(Quantity::RadiusGyrationClub, (50.0, 600.0), "mm");
/// Spacers in a mix of adhesive, percent of the whole mix: 1 to 10.
pub const BEADS_PERCENT: Plausible = Plausible::new(Quantity::SpacersMix, (0.0, 30.0), "%");
/// Adhesive mixed beyond what the joints need, percent of their need: 20 to 60, more for a single club.
pub const SPARE_PERCENT: Plausible = Plausible::new(Quantity::SpareMix, (0.0, 900.0), "%");
/// Joints of one batch: the largest shops glue some dozens from one mixing.
pub const JOINTS: Plausible = Plausible::new(Quantity::JointsBatch, (1.0, 500.0), "");

impl Plausible {
    /// What it is the figure of, its least and its greatest value, and their unit.
    const fn new(what: Quantity, range: (f64, f64), unit: &'static str) -> Self {
        Self { what, range, or_zero: false, unit, slips: &[], likely: None }
    }

    /// Nothing at all is allowed too.
    const fn or_zero(self) -> Self {
        Self { or_zero: true, ..self }
    }

    /// Units that are mistaken for this one, the likeliest first.
    const fn slips(self, slips: &'static [Slip]) -> Self {
        Self { slips, ..self }
    }

    /// Where a figure lands that was given in another unit, where that is narrower than the range.
    const fn likely(self, low: f64, high: f64) -> Self {
        Self { likely: Some((low, high)), ..self }
    }

    /// Least and greatest figure, in the unit of the table.
    #[must_use]
    pub const fn range(&self) -> (f64, f64) {
        self.range
    }

    /// Unit of the range.
    #[must_use]
    pub const fn unit(&self) -> &'static str {
        self.unit
    }

    /// Whether a figure is one that a club can have.
    #[must_use]
    pub fn contains(&self, value: f64) -> bool {
        (self.range.0..=self.range.1).contains(&value) || (self.or_zero && value == 0.0)
    }

    /// Takes the figure of a field, or refuses it with the limit and with what was probably meant.
    ///
    /// # Errors
    ///
    /// [`PhysicsError::NotFinite`], [`PhysicsError::OutOfRange`].
    ///
    /// # Examples
    ///
    /// ```
    /// use clubphysics::plausible::CLUB_LENGTH_MM;
    /// let error = CLUB_LENGTH_MM.check("finished.length_mm", 38.0).unwrap_err();
    /// assert_eq!(error.field(), Some("finished.length_mm"));
    /// ```
    pub fn check(&self, field: &str, value: f64) -> Result<f64, PhysicsError> {
        crate::check::finite(field, value, self.unit)?;
        if self.contains(value) {
            return Ok(value);
        }
        // A figure without a size is wrong for that reason and not for its unit.
        let (bound, limit) = match value {
            _ if value <= 0.0 && self.range.0 > 0.0 && !self.or_zero => (Bound::Above, 0.0),
            _ if value < 0.0 && self.range.0 >= 0.0 => (Bound::AtLeast, 0.0),
            _ if value < self.range.0 => (Bound::AtLeast, self.range.0),
            _ => (Bound::AtMost, self.range.1),
        };
        Err(PhysicsError::OutOfRange {
            field: field.to_owned(),
            value,
            bound,
            limit,
            unit: self.unit,
            advice: Box::new(self.meant(value).unwrap_or_else(|| self.range_of())),
        })
    }

    fn slip(&self, value: f64) -> Option<(&'static Slip, f64)> {
        if value <= 0.0 || self.contains(value) {
            return None;
        }
        let (low, high) = self.likely.unwrap_or(self.range);
        let slip = self.slips.iter().find(|slip| (low..=high).contains(&(slip.convert)(value)))?;
        Some((slip, (slip.convert)(value)))
    }

    /// What a figure outside of the range was probably meant as: "this looks like inches, and 38 in is 965.2 mm".
    #[must_use]
    pub fn looks_like(&self, value: f64) -> Option<LooksLike> {
        let (slip, meant) = self.slip(value)?;
        Some(LooksLike::Unit {
            unit: slip.name,
            given: quantity::round_to(value, 3),
            given_in: slip.unit,
            meant: quantity::round_to(meant, 1),
            meant_in: self.unit,
        })
    }

    /// The same as advice: "This looks like inches, and 38 in is 965.2 mm".
    #[must_use]
    pub fn meant(&self, value: f64) -> Option<Advice> {
        self.looks_like(value).map(|meant| Advice::Meant { meant })
    }

    /// "the length of a club is 254 mm to 1600 mm".
    fn range_of(&self) -> Advice {
        let of = |value| Measure::new(value, self.unit);
        Advice::Range { of: self.what, low: of(self.range.0), high: of(self.range.1) }
    }
}

fact::facts! {
    /// What looks odd about the parts of a club without being impossible.
    pub enum PartsRemark: "parts_remark" {
        /// No part is a grip, and the club is made longer.
        NoGrip,
        /// The places look as if they were given in another unit.
        PlacesInAnotherUnit {
            /// What the farthest place looks like.
            meant: LooksLike,
        },
        /// The masses look as if they were given in another unit.
        MassesInAnotherUnit {
            /// What the sum of the masses looks like.
            meant: LooksLike,
        },
    }
}

/// Whether masses and places of the parts of a club look as if they were given in another unit, and in which.
///
/// A part or two may weigh next to nothing or sit near the butt, so this is a remark and no refusal.
pub(crate) fn parts_in_another_unit(parts: impl Iterator<Item = (f64, f64)> + Clone) -> Vec<PartsRemark> {
    let total_g: f64 = parts.clone().map(|(mass_g, _)| mass_g).sum();
    let furthest_mm = parts.map(|(_, place_mm)| place_mm).fold(0.0, f64::max);
    let places = CLUB_LENGTH_MM.looks_like(furthest_mm).map(|meant| PartsRemark::PlacesInAnotherUnit { meant });
    let masses = CLUB_MASS_G.looks_like(total_g).map(|meant| PartsRemark::MassesInAnotherUnit { meant });
    places.into_iter().chain(masses).collect()
}
