//! The shop's instruments, and what they are held against.

use crate::error::TradeError;
use crate::error::within;
use crate::kind::closed_list;
use crate::scale::Scale;
use fact::facts;
use jiff::civil::Date;
use quantity::{LengthUnit, MassUnit, decimal};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// What an instrument measures. Its figures are in that unit everywhere.
    Measures {
        /// Mass, grams.
        Mass = "mass";
        /// Swing weight, points since A0.
        SwingWeight = "swing_weight" was "balance";
        /// Frequency, cycles per minute.
        Frequency = "frequency";
        /// Loft or lie, degrees.
        Angle = "angle";
        /// Length, millimetres.
        Length = "length";
        /// Diameter of a grip by caliper, millimetres.
        Diameter = "diameter";
    }
}

impl Measures {
    /// The unit of its figures, as people write it.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Mass => "g",
            Self::SwingWeight => "points",
            Self::Frequency => "cpm",
            Self::Angle => "°",
            Self::Length | Self::Diameter => "mm",
        }
    }

    /// What a standard of this sort can be at all. Wide: slips of the key and of the unit only. Common practice, no
    /// source.
    #[must_use]
    pub const fn possible(self) -> (f64, f64) {
        match self {
            Self::Mass => (0.05, 20_000.0),
            Self::SwingWeight => (-60.0, 160.0),
            Self::Frequency => (50.0, 600.0),
            Self::Angle => (0.0, 90.0),
            Self::Length => (1.0, 3_000.0),
            Self::Diameter => (1.0, 150.0),
        }
    }

    /// Which way a reading is off, by its error: too much where it is positive.
    #[must_use]
    pub fn way(self, error: f64) -> Way {
        match (self, error > 0.0) {
            (Self::Mass | Self::SwingWeight, true) => Way::Heavy,
            (Self::Mass | Self::SwingWeight, false) => Way::Light,
            (Self::Frequency | Self::Angle, true) => Way::High,
            (Self::Frequency | Self::Angle, false) => Way::Low,
            (Self::Length | Self::Diameter, true) => Way::Long,
            (Self::Length | Self::Diameter, false) => Way::Short,
        }
    }
}

facts! {
    /// Which way an instrument is off.
    pub enum Way: "gauge_way" {
        /// A mass or swing weight is shown too high.
        Heavy,
        /// A mass or swing weight is shown too low.
        Light,
        /// A frequency or angle is shown too high.
        High,
        /// A frequency or angle is shown too low.
        Low,
        /// A length is shown too long.
        Long,
        /// A length is shown too short.
        Short,
    }
}

facts! {
    /// A figure of an instrument, or an amount by which one is off; shown in the reader's unit.
    pub enum GaugeFigure: "gauge_figure" {
        /// A mass.
        Mass {
            /// What the scale shows or is off by, g.
            figure_g: f64,
            /// Decimals.
            digits: u8,
        },
        /// A swing weight as the scale shows it.
        Reading {
            /// The figure, points since A0.
            figure_points: f64,
            /// Decimals.
            digits: u8,
        },
        /// A difference of swing weights.
        Points {
            /// The figure, points.
            by_points: f64,
            /// Decimals.
            digits: u8,
        },
        /// A frequency.
        Frequency {
            /// The figure, cycles per minute.
            figure_cpm: f64,
            /// Decimals.
            digits: u8,
        },
        /// An angle.
        Angle {
            /// The figure, degrees.
            figure_deg: f64,
            /// Decimals.
            digits: u8,
        },
        /// A length.
        Length {
            /// What the gauge shows or is off by, mm.
            figure_mm: f64,
            /// Decimals of an inch; of a millimetre one less.
            digits: u8,
        },
    }
}

/// An instrument of the shop: its two scales, or another gauge by name.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Gauge {
    /// Short key, for example `loft-lie`.
    #[schema(min_length = 1, pattern = r"\S")]
    pub key: String,
    /// What people call it.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Which quantity it reads; its figures are in that quantity's unit.
    pub measures: Measures,
    /// Step of its display, in the unit of what it measures.
    #[schema(minimum = 0, maximum = 50)]
    pub display_step: f64,
    /// Standard deviation of one re-seated reading, same unit.
    #[schema(minimum = 0.0001, maximum = 50)]
    pub noise_sd: f64,
    /// Standard deviation of what it may be off by on a given day, same unit.
    #[serde(default)]
    #[schema(minimum = 0, maximum = 50)]
    pub offset_sd: f64,
}

impl Gauge {
    /// A scale of the shop as an instrument.
    #[must_use]
    pub fn of_scale(scale: &Scale, measures: Measures) -> Self {
        Self {
            key: scale.key.clone(),
            name: scale.name.clone(),
            measures,
            display_step: scale.display_step,
            noise_sd: scale.noise_sd,
            offset_sd: scale.offset_sd,
        }
    }

    /// What is taken of an instrument that the shop has neither stated nor studied: a rule against a stop, a protractor or a
    /// machine for loft and lie, a frequency meter with its clamp (common practice, no source). One reading is then good to
    /// ± 0.8 mm, ± 0.25° and ± 1.2 cpm, of soft rubber by a caliper that just touches to ± 0.3 mm; a study, a statement or repeated readings take its place.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::gauge::{Gauge, Measures};
    ///
    /// let rule = Gauge::never_studied(Measures::Length);
    /// let band_mm = 1.96 * rule.noise_sd.hypot(rule.offset_sd);
    /// assert!((band_mm - 0.8).abs() < 0.02, "{band_mm}");
    /// ```
    #[must_use]
    pub fn never_studied(measures: Measures) -> Self {
        let (noise_sd, offset_sd) = match measures {
            Measures::Mass => (0.05, 0.1),
            Measures::SwingWeight => (0.1, 0.2),
            Measures::Frequency => (0.6, 0.0),
            Measures::Angle => (0.1, 0.08),
            Measures::Length => (0.3, 0.28),
            Measures::Diameter => (0.15, 0.05),
        };
        let key = measures.key().to_owned();
        Self { name: key.clone(), key, measures, display_step: 0.0, noise_sd, offset_sd }
    }

    /// Standard deviation of one reading: re-seating and the rounding of the display (a step over root 12, derived: the
    /// standard deviation of what lies evenly within a step).
    #[must_use]
    pub fn reading_sd(&self) -> f64 {
        self.noise_sd.hypot(self.display_step / 12f64.sqrt()).max(1e-6)
    }

    /// What the instrument shows, as a figure of a fact, with the decimals that its display has.
    #[must_use]
    pub fn reading(&self, value: f64) -> GaugeFigure {
        let digits = places(self.display_step).max(1);
        match self.measures {
            Measures::SwingWeight => GaugeFigure::Reading { figure_points: value, digits },
            _ => self.figure(value, digits),
        }
    }

    /// An amount by which it is off, without its sign, as a figure of a fact; a small one with two decimals.
    #[must_use]
    pub fn amount(&self, error: f64) -> GaugeFigure {
        let digits = if error.abs() < 0.095 { 2 } else { places(self.display_step).max(1) };
        self.figure(error.abs(), digits)
    }

    fn figure(&self, value: f64, digits: u8) -> GaugeFigure {
        match self.measures {
            Measures::Mass => GaugeFigure::Mass { figure_g: value, digits },
            Measures::SwingWeight => GaugeFigure::Points { by_points: value, digits },
            Measures::Frequency => GaugeFigure::Frequency { figure_cpm: value, digits },
            Measures::Angle => GaugeFigure::Angle { figure_deg: value, digits },
            Measures::Length | Measures::Diameter => GaugeFigure::Length { figure_mm: value, digits: digits + 1 },
        }
    }

    /// Refuses an instrument that could not be.
    ///
    /// # Errors
    /// An empty key or name; an impossible figure.
    pub fn check(&self) -> Result<(), TradeError> {
        need_name(&self.key, &self.name, GaugeFault::InstrumentUnnamed)?;
        let unit = self.measures.unit();
        within(format!("{}.display_step", self.key), self.display_step, 0.0, 50.0, unit)?;
        within(format!("{}.noise_sd", self.key), self.noise_sd, 0.0001, 50.0, unit)?;
        within(format!("{}.offset_sd", self.key), self.offset_sd, 0.0, 50.0, unit).map(|_| ())
    }
}

/// What an instrument is held against: a check weight, a check club, a gauge block, by what its certificate says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Standard {
    /// Short key, for example `w200`.
    #[schema(min_length = 1, pattern = r"\S")]
    pub key: String,
    /// What people call it.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Key of the instrument that it is for.
    pub scale: String,
    /// What a true instrument shows for it, in the instrument's unit.
    pub value: f64,
    /// How surely that is known: one standard deviation, same unit.
    pub sd: f64,
    /// When it was certified or assigned.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub certified_on: Option<Date>,
    /// By whom, number of the certificate, or how it was assigned.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub certificate: String,
    /// By how much a reading of it may be off before the instrument is no longer trusted, same unit; left out: what the
    /// instrument's own stated figures allow.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<f64>,
    /// Mass of a check club, g.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 50, maximum = 1000)]
    pub mass_g: Option<f64>,
}

impl Standard {
    /// By how much a reading may be off. Where nothing is stated: three standard deviations of the day's offset, one
    /// reading and the standard itself together, and no less than two steps of the display (common practice, no
    /// source).
    #[must_use]
    pub fn tolerance_on(&self, gauge: &Gauge) -> f64 {
        self.tolerance.unwrap_or_else(|| {
            let sd = gauge.reading_sd().hypot(gauge.offset_sd).hypot(self.sd);
            (3.0 * sd).max(2.0 * gauge.display_step)
        })
    }

    pub(crate) fn check(&self, gauge: &Gauge) -> Result<(), TradeError> {
        need_name(&self.key, &self.name, GaugeFault::CheckWeightUnnamed)?;
        let unit = gauge.measures.unit();
        let (low, high) = gauge.measures.possible();
        within(format!("{}.value", self.key), self.value, low, high, unit)?;
        within(format!("{}.sd", self.key), self.sd, 0.0, 0.1 * (high - low), unit)?;
        if let Some(tolerance) = self.tolerance {
            within(format!("{}.tolerance", self.key), tolerance, 1e-6, 0.1 * (high - low), unit)?;
        }
        if let Some(mass_g) = self.mass_g {
            within(format!("{}.mass_g", self.key), mass_g, 50.0, 1000.0, "g")?;
        }
        Ok(())
    }
}

pub(crate) fn need_name(key: &str, name: &str, fault: GaugeFault) -> Result<(), TradeError> {
    if key.trim().is_empty() || name.trim().is_empty() { Err(TradeError::refused(fault)) } else { Ok(()) }
}

/// Reads an entry as the instrument's figure: `200.1`, `7.06 oz`, `D1.4`, `255 cpm`, `61.5`, `939.8 mm`.
///
/// # Errors
/// What cannot be read, with an example; a figure that no standard can have.
///
/// # Examples
///
/// ```
/// use trade::gauge::{Measures, parse_value};
///
/// assert_eq!(parse_value(Measures::Mass, "200.1")?, 200.1);
/// assert!((parse_value(Measures::SwingWeight, "D1.4")? - 31.4).abs() < 1e-9);
/// // 1 oz (avoirdupois) is 28.349 52 g: NIST SP 811 (2008), appendix B.8.
/// assert!((parse_value(Measures::Mass, "7.06 oz")? - 7.06 * 28.349_52).abs() < 0.001);
/// # Ok::<(), trade::error::TradeError>(())
/// ```
pub fn parse_value(measures: Measures, text: &str) -> Result<f64, TradeError> {
    let value = match measures {
        Measures::Mass => quantity::parse_mass(text, MassUnit::Gram).map(quantity::Mass::g),
        Measures::SwingWeight => quantity::parse_swing_weight(text).map(quantity::SwingMoment::points),
        Measures::Frequency => quantity::parse_frequency(text).map(quantity::Frequency::cpm),
        Measures::Angle => quantity::parse_angle(text).map(quantity::Angle::deg),
        Measures::Length | Measures::Diameter => {
            quantity::parse_length(text, LengthUnit::Millimetre).map(quantity::Length::mm)
        }
    };
    let value = value.map_err(|e| TradeError::unreadable("reading", &e))?;
    let (low, high) = measures.possible();
    within("reading", value, low, high, measures.unit())
}

/// Decimals that a display step needs.
fn places(step: f64) -> u8 {
    match step {
        s if s <= 0.0 => 2,
        s if s >= 1.0 => 0,
        s if s >= 0.1 => 1,
        s if s >= 0.01 => 2,
        _ => 3,
    }
}

/// A figure of the instrument as it may be typed: `200.1 g`, `D1.4`; [`parse_value`] reads it.
#[must_use]
pub fn print_value(gauge: &Gauge, value: f64) -> String {
    let places = places(gauge.display_step);
    match gauge.measures {
        Measures::SwingWeight => quantity::SwingWeight::from_points(value).letter(places.max(1)),
        Measures::Angle => format!("{}°", decimal(value, places.max(1))),
        measures => format!("{} {}", decimal(value, places.max(1)), measures.unit()),
    }
}

fact::facts! {
    /// What is refused of an instrument or a check weight.
    pub(crate) enum GaugeFault: "gauge_fault" {
        InstrumentUnnamed,
        CheckWeightUnnamed,
    }
}
