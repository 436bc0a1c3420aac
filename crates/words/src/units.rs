//! Figures in the units of the reader, as a builder writes them.

use crate::{Words, text};
use jiff::Timestamp;
use jiff::civil::Date;
use quantity::{Angle, Length, LengthUnit, Mass, MassUnit, SwingWeight, decimal};

/// Two lengths are the same fraction of an inch when they differ by less than this many thirty-seconds.
const NEAR_32NDS: f64 = 1e-6;

/// A true minus sign in place of the hyphen.
pub(crate) fn minus(text: &str) -> String {
    text.replace('-', "−")
}

/// With its sign written, also a plus; what shows as zero has none.
pub(crate) fn signed(text: String, value: f64) -> String {
    let zero = !text.bytes().any(|b| (b'1'..=b'9').contains(&b));
    match (zero, value > 0.0) {
        (true, _) => text.trim_start_matches('−').to_owned(),
        (false, true) => format!("+{text}"),
        (false, false) => text,
    }
}

impl Words {
    /// A mass: `256.1 g`, `9.034 oz`; a thousandth of an ounce is finer than a tenth of a gram.
    #[must_use]
    pub fn mass(&self, mass_g: f64) -> String {
        self.mass_to(mass_g, 1)
    }

    /// A mass with this many decimals of a gram; ounces have two more.
    #[must_use]
    pub fn mass_to(&self, mass_g: f64, decimals: u8) -> String {
        format!("{} {}", self.mass_figure_to(mass_g, decimals), self.mass_sign())
    }

    /// A mass without its unit: `256.1`, `9.034`.
    #[must_use]
    pub fn mass_figure(&self, mass_g: f64) -> String {
        self.mass_figure_to(mass_g, 1)
    }

    fn mass_figure_to(&self, mass_g: f64, decimals: u8) -> String {
        minus(&match self.units.mass {
            MassUnit::Ounce => decimal(Mass::from_g(mass_g).oz(), decimals + 2),
            _ => decimal(mass_g, decimals),
        })
    }

    /// Sign of the reader's unit of mass: `g`, `oz`.
    #[must_use]
    pub fn mass_sign(&self) -> &'static str {
        self.units.mass.symbol()
    }

    /// Sign of the reader's unit of length: `in`, `mm`.
    #[must_use]
    pub fn length_sign(&self) -> &'static str {
        self.units.length.symbol()
    }

    /// A length: `36 3/4 in` where it is an even fraction down to 1/32, `36.71 in`, `933.5 mm`.
    #[must_use]
    pub fn length(&self, length_mm: f64) -> String {
        let length = Length::from_mm(length_mm);
        let in_32nds = length.inch() * 32.0;
        if self.units.length == LengthUnit::Inch && (in_32nds - in_32nds.round()).abs() < NEAR_32NDS {
            return minus(&length.print_inches());
        }
        self.length_to(length_mm, 2)
    }

    /// A length with this many decimals of an inch; millimetres have one less.
    #[must_use]
    pub fn length_to(&self, length_mm: f64, decimals: u8) -> String {
        format!("{} {}", self.length_figure_to(length_mm, decimals), self.length_sign())
    }

    /// The same without the unit.
    #[must_use]
    pub fn length_figure_to(&self, length_mm: f64, decimals: u8) -> String {
        let unit = self.units.length;
        let decimals = if unit == LengthUnit::Inch { decimals } else { decimals.saturating_sub(1) };
        minus(&decimal(Length::from_mm(length_mm).in_unit(unit), decimals))
    }

    /// A swing weight on the letter scale: `D2.1`.
    #[must_use]
    pub fn swing_weight(&self, points: f64) -> String {
        SwingWeight::from_points(points).to_string()
    }

    /// A difference of swing weights: `0.3 points`, `1.0 point`.
    #[must_use]
    pub fn points(&self, points: f64) -> String {
        let figure = minus(&decimal(points, 1));
        if figure == "1.0" {
            text!(self, "point-one", figure = figure)
        } else {
            text!(self, "point-many", figure = figure)
        }
    }

    /// An angle: `61.5°`.
    #[must_use]
    pub fn angle(&self, deg: f64) -> String {
        minus(&Angle::from_deg(deg).print(1))
    }

    /// A day: `29 Nov 2026`.
    #[must_use]
    pub fn date(&self, day: Date) -> String {
        let (number, year) = (day.day().to_string(), day.year().to_string());
        text!(self, "date", day = number, month = self.month(day), year = year)
    }

    /// A day without its year: `29 Nov`.
    #[must_use]
    pub fn day(&self, day: Date) -> String {
        text!(self, "date-day", day = day.day().to_string(), month = self.month(day))
    }

    fn month(&self, day: Date) -> String {
        self.text(&format!("month-{}", day.month()))
    }

    /// A moment on the shop's clock: `29 Nov 2026 05:01`.
    #[must_use]
    pub fn moment(&self, at: Timestamp) -> String {
        let local = at.to_zoned_datetime(self.zone().clone());
        text!(self, "moment", date = self.date(local.date()), clock = self.clock(at))
    }

    /// The time of day on the shop's clock: `05:01`.
    #[must_use]
    pub fn clock(&self, at: Timestamp) -> String {
        at.to_zoned_datetime(self.zone().clone()).strftime("%H:%M").to_string()
    }

    /// The shop's day of a moment.
    #[must_use]
    pub fn day_of(&self, at: Timestamp) -> Date {
        at.to_zoned_datetime(self.zone().clone()).date()
    }
}

#[cfg(test)]
mod tests {
    use crate::Words;
    use quantity::{LengthUnit, MassUnit, Units};

    fn of(length: LengthUnit, mass: MassUnit) -> Words {
        Words::english(Units { length, mass })
    }

    #[test]
    fn an_ounce_is_the_avoirdupois_one() {
        // NIST SP 811 (2008), appendix B.8: 1 oz (avoirdupois) = 2.834 952 E-02 kg.
        let ounces = of(LengthUnit::Inch, MassUnit::Ounce);
        assert_eq!(ounces.mass(28.349_52), "1.000 oz");
        assert_eq!(ounces.mass(256.1), "9.034 oz");
        assert_eq!(of(LengthUnit::Inch, MassUnit::Gram).mass(256.1), "256.1 g");
    }

    #[test]
    fn a_length_is_a_fraction_where_it_is_one() {
        let inches = of(LengthUnit::Inch, MassUnit::Gram);
        // 1 in is 25.4 mm exactly (international yard, 1959).
        assert_eq!(inches.length(36.75 * 25.4), "36 3/4 in");
        assert_eq!(inches.length(932.4), "36.71 in");
        assert_eq!(of(LengthUnit::Millimetre, MassUnit::Gram).length(36.75 * 25.4), "933.5 mm");
    }

    #[test]
    fn one_point_is_singular() {
        let words = Words::english(Units::default());
        assert_eq!(words.points(1.0), "1.0 point");
        assert_eq!(words.points(-0.3), "−0.3 points");
    }

    #[test]
    fn a_day_has_its_month_by_name() {
        let words = Words::english(Units::default());
        assert_eq!(words.date(jiff::civil::date(2026, 11, 29)), "29 Nov 2026");
        let at = jiff::Timestamp::from_second(1_795_928_486).unwrap_or_default();
        assert_eq!(words.moment(at), at.strftime("%-d %b %Y %H:%M").to_string());
    }
}
