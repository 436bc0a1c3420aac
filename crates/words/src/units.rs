//! Figures in the units of the reader, as a builder writes them.

use crate::{Words, text};
use jiff::Timestamp;
use jiff::civil::Date;
use quantity::{Angle, Length, LengthUnit, Mass, MassUnit, SwingWeight, decimal};

/// Two lengths are the same fraction of an inch when they differ by less than this many thirty-seconds.
const NEAR_32NDS: f64 = 1e-6;

/// A day this far from today needs no year.
const NEAR_DAYS: i32 = 60;

/// A true minus sign in place of the hyphen.
pub(crate) fn minus(text: &str) -> String {
    text.replace('-', "−")
}

/// What stands for a figure that is not a number.
const NO_FIGURE: &str = "–";

/// With its sign written, also a plus; what shows as zero has none.
#[must_use]
pub fn signed(text: String, value: f64) -> String {
    let zero = !text.bytes().any(|b| (b'1'..=b'9').contains(&b));
    match (zero, value > 0.0) {
        (true, _) => text.trim_start_matches('−').to_owned(),
        (false, true) => format!("+{text}"),
        (false, false) => text,
    }
}

impl Words {
    /// A mass: `256.1 g`, `9.034 oz`; a thousandth of an ounce is finer than a tenth of a gram.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::{MassUnit, Units};
    /// use words::Words;
    ///
    /// // 1 oz (avoirdupois) is 28.349 52 g: NIST SP 811 (2008), appendix B.8.
    /// let ounces = Words::english(Units { mass: MassUnit::Ounce, ..Units::default() });
    /// assert_eq!(ounces.mass(28.349_52), "1.000 oz");
    /// let grams = Words::english(Units { mass: MassUnit::Gram, ..Units::default() });
    /// assert_eq!(grams.mass(256.1), "256.1 g");
    /// ```
    #[must_use]
    pub fn mass(&self, mass_g: f64) -> String {
        self.mass_to(mass_g, 1)
    }

    /// A mass with this many decimals of a gram; ounces have two more.
    #[must_use]
    pub fn mass_to(&self, mass_g: f64, decimals: u8) -> String {
        if !mass_g.is_finite() {
            return NO_FIGURE.to_owned();
        }
        format!("{} {}", self.mass_figure_to(mass_g, decimals), self.mass_sign())
    }

    /// A mass without its unit: `256.1`, `9.034`.
    #[must_use]
    pub fn mass_figure(&self, mass_g: f64) -> String {
        self.mass_figure_to(mass_g, 1)
    }

    fn mass_figure_to(&self, mass_g: f64, decimals: u8) -> String {
        self.printed(&match self.units.mass {
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
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::{LengthUnit, Units};
    /// use words::Words;
    ///
    /// // 1 in is 25.4 mm exactly (international yard, 1959).
    /// let inches = Words::english(Units { length: LengthUnit::Inch, ..Units::default() });
    /// assert_eq!(inches.length(36.75 * 25.4), "36 3/4 in");
    /// let millimetres = Words::english(Units { length: LengthUnit::Millimetre, ..Units::default() });
    /// assert_eq!(millimetres.length(36.75 * 25.4), "933.5 mm");
    /// ```
    #[must_use]
    pub fn length(&self, length_mm: f64) -> String {
        let length = Length::from_mm(length_mm);
        let in_32nds = length.inch() * 32.0;
        if self.units.length == LengthUnit::Inch && (in_32nds - in_32nds.round()).abs() < NEAR_32NDS {
            return self.printed(&length.print_inches());
        }
        self.length_to(length_mm, 2)
    }

    /// A length with this many decimals of an inch; millimetres have one less.
    #[must_use]
    pub fn length_to(&self, length_mm: f64, decimals: u8) -> String {
        if !length_mm.is_finite() {
            return NO_FIGURE.to_owned();
        }
        format!("{} {}", self.length_figure_to(length_mm, decimals), self.length_sign())
    }

    /// The same without the unit.
    #[must_use]
    pub fn length_figure_to(&self, length_mm: f64, decimals: u8) -> String {
        let unit = self.units.length;
        let decimals = if unit == LengthUnit::Inch { decimals } else { decimals.saturating_sub(1) };
        self.printed(&decimal(Length::from_mm(length_mm).in_unit(unit), decimals))
    }

    /// A swing weight on the letter scale: `D2.1`; outside of its letters with the moment beside it.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::Units;
    /// use words::Words;
    ///
    /// // Ten points to a letter from A0: D2 is the 32nd.
    /// assert_eq!(Words::english(Units::default()).swing_weight(32.1), "D2.1");
    /// ```
    #[must_use]
    pub fn swing_weight(&self, points: f64) -> String {
        if points.is_finite() {
            self.printed(&SwingWeight::from_points(points).to_string())
        } else {
            NO_FIGURE.to_owned()
        }
    }

    /// The same without a closing `.0`: `D0`, `D2.5`.
    #[must_use]
    pub fn swing_weight_short(&self, points: f64) -> String {
        let text = self.swing_weight(points);
        text.strip_suffix(&self.printed(".0")).map_or(text.clone(), str::to_owned)
    }

    /// A figure without a unit and with its sign, also a plus: `+0.1`, `−9.0`; what shows as zero has none.
    #[must_use]
    pub fn signed(&self, value: f64, decimals: u8) -> String {
        if !value.is_finite() {
            return NO_FIGURE.to_owned();
        }
        signed(self.printed(&decimal(value, decimals)), value)
    }

    /// A difference of swing weights: `0.3 points`, `1.0 point`.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::Units;
    /// use words::Words;
    ///
    /// let words = Words::english(Units::default());
    /// assert_eq!(words.points(1.0), "1.0 point");
    /// assert_eq!(words.points(-0.3), "−0.3 points");
    /// ```
    #[must_use]
    pub fn points(&self, points: f64) -> String {
        let figure = self.printed(&decimal(points, 1));
        if figure == self.printed("1.0") {
            text!(self, "figure-point", figure = figure)
        } else {
            text!(self, "figure-points", figure = figure)
        }
    }

    /// An angle: `61.5°`.
    #[must_use]
    pub fn angle(&self, deg: f64) -> String {
        self.printed(&Angle::from_deg(deg).print(1))
    }

    /// An angle with its sign, also a plus: `+1.0°`, `−0.5°`, `0.0°`.
    #[must_use]
    pub fn signed_angle(&self, deg: f64) -> String {
        signed(self.angle(deg), deg)
    }

    /// A day: `29 Nov 2026`.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::Units;
    /// use words::Words;
    ///
    /// let day = jiff::civil::date(2026, 11, 29);
    /// assert_eq!(Words::english(Units::default()).date(day), "29 Nov 2026");
    /// ```
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

    /// A day as it is told today: without its year while that is this one, or the day is near.
    #[must_use]
    pub fn date_near(&self, day: Date, today: Date) -> String {
        let near = day.year() == today.year() || (day - today).get_days().abs() <= NEAR_DAYS;
        if near { self.day(day) } else { self.date(day) }
    }

    /// The month of a day with its year: `Nov 2026`.
    #[must_use]
    pub fn month_of(&self, day: Date) -> String {
        text!(self, "date-month", month = self.month(day), year = day.year().to_string())
    }

    /// The day of the week: `Tuesday`.
    #[must_use]
    pub fn weekday(&self, day: Date) -> String {
        self.text(&format!("weekday-{}", day.weekday().to_monday_one_offset()))
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
    fn letters_follow_the_scale() {
        let words = Words::english(Units::default());
        // 213.5 oz·in is D0, 231 is E0: thirty and forty points over A0.
        assert_eq!(words.swing_weight(30.0), "D0.0");
        assert_eq!(words.swing_weight(38.9), "D8.9");
        assert_eq!(words.swing_weight(29.96), "D0.0");
        assert_eq!(words.swing_weight(29.94), "C9.9");
        assert_eq!(words.swing_weight(0.0), "A0.0");
        assert_eq!(words.swing_weight(69.9), "G9.9");
        assert_eq!(words.swing_weight_short(30.0), "D0");
        assert_eq!(words.swing_weight_short(32.5), "D2.5");
        // Outside the letters the moment stands beside: 161 - 10 * 1.75 and 161 + 70 * 1.75 oz·in.
        assert_eq!(words.swing_weight(-10.0), "A−10.0 (143.5 oz in)");
        assert_eq!(words.swing_weight(70.0), "G10.0 (283.5 oz in)");
        assert_eq!(words.swing_weight(-100.0), "A−100.0 (−14.0 oz in)");
        assert_eq!(words.swing_weight(f64::NAN), "–");
    }

    #[test]
    fn signs_are_true_and_zero_has_none() {
        let words = Words::english(Units::default());
        assert_eq!(words.signed(0.1, 1), "+0.1");
        assert_eq!(words.signed(-9.0, 1), "−9.0");
        assert_eq!(words.signed(-0.04, 1), "0.0");
        assert_eq!(words.signed(f64::INFINITY, 1), "–");
        assert_eq!(words.signed_angle(-0.5), "−0.5°");
        assert_eq!(words.mass(5.0), "5.0 g");
        assert_eq!(words.mass(f64::NAN), "–");
    }

    #[test]
    fn a_day_needs_its_year_only_far_off() {
        let (words, day) = (Words::english(Units::default()), jiff::civil::date);
        assert_eq!(words.date_near(day(2027, 1, 20), day(2026, 12, 1)), "20 Jan");
        assert_eq!(words.date_near(day(2026, 1, 2), day(2026, 12, 1)), "2 Jan");
        assert_eq!(words.date_near(day(2025, 6, 1), day(2026, 12, 1)), "1 Jun 2025");
    }

    #[test]
    fn a_comma_takes_the_place_of_the_point_where_the_reader_wants_it() {
        let words = of(LengthUnit::Inch, MassUnit::Ounce).with_decimal_comma(true);
        assert_eq!(words.mass(256.1), "9,034 oz");
        assert_eq!(words.length(932.4), "36,71 in");
        assert_eq!(words.length(36.75 * 25.4), "36 3/4 in");
        assert_eq!(words.swing_weight_short(30.0), "D0");
        assert_eq!((words.points(1.0), words.points(-0.3)), ("1,0 point".to_owned(), "−0,3 points".to_owned()));
        assert_eq!((words.signed(0.14, 1), words.angle(61.5)), ("+0,1".to_owned(), "61,5°".to_owned()));
        // A figure of a text that says nothing of its kind.
        let told = fact::Told::new("x").with("figure", &2.5).with("by_g", &0.25);
        let shown = |name: &str| crate::shown::as_text(name, told.figure(name).unwrap(), &words);
        assert_eq!(shown("figure"), "2,5");
        assert_eq!(of(LengthUnit::Inch, MassUnit::Gram).printed("0.5"), "0.5");
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
        // 2026 begins on a Thursday (any calendar); the 333rd day is a Sunday.
        assert_eq!(words.weekday(jiff::civil::date(2026, 11, 29)), "Sunday");
        let at = jiff::Timestamp::from_second(1_795_928_486).unwrap_or_default();
        assert_eq!(words.moment(at), at.strftime("%-d %b %Y %H:%M").to_string());
    }
}
