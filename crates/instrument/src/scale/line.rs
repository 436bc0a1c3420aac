//! One line of a scale.

use fact::{Fact, Refusal, Told, facts};
use quantity::{MassUnit, parse_mass_offset, parse_swing_weight};
use serde::Serialize;
use trade::connection::{LineFormat, MarkMeans, Shows};
use trade::gauge::GaugeFigure;

/// Longest line that any scale sends; beyond it the line is refused whole.
pub(crate) const LONGEST: usize = 120;

/// A value in the unit that Setwright counts in.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Measured {
    /// Grams.
    MassG(f64),
    /// Swing weight, points since A0.
    SwingWeightPoints(f64),
}

impl Measured {
    /// The figure alone: grams or points.
    #[must_use]
    pub const fn figure(self) -> f64 {
        match self {
            Self::MassG(value) | Self::SwingWeightPoints(value) => value,
        }
    }
}

/// What a line says.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum ScaleLine {
    /// A value; `settled` where the scale says so itself.
    Value {
        /// The value.
        measured: Measured,
        /// Whether it has settled; none where the scale does not say.
        settled: Option<bool>,
    },
    /// Too much, or too little, on the scale.
    Overload,
    /// A heading or an empty line.
    Nothing,
    /// A line that does not fit the format, with the reason.
    Refused {
        /// Why, and what to do.
        why: LineFault,
    },
}

facts! {
    /// What is told of a line.
    pub enum LineSaid: "scale_line" {
        /// A value of a scale that does not say whether it has settled.
        Value {
            /// The value.
            figure: GaugeFigure,
        },
        /// A settled value.
        Settled {
            /// The value.
            figure: GaugeFigure,
        },
        /// A value that still moves.
        Moving {
            /// The value.
            figure: GaugeFigure,
        },
        /// Too much, or too little, on the scale.
        Overload,
        /// A heading or an empty line.
        Skipped,
        /// It does not fit the format.
        Refused {
            /// Why, and what to do.
            why: Refusal,
        },
    }
}

impl ScaleLine {
    /// The line as it is told to a person.
    #[must_use]
    pub fn said(&self) -> LineSaid {
        match self {
            Self::Value { measured, settled } => {
                let figure = match *measured {
                    Measured::MassG(figure_g) => GaugeFigure::Mass { figure_g, digits: 2 },
                    Measured::SwingWeightPoints(figure_points) => GaugeFigure::Reading { figure_points, digits: 2 },
                };
                match settled {
                    Some(true) => LineSaid::Settled { figure },
                    Some(false) => LineSaid::Moving { figure },
                    None => LineSaid::Value { figure },
                }
            }
            Self::Overload => LineSaid::Overload,
            Self::Nothing => LineSaid::Skipped,
            Self::Refused { why } => LineSaid::Refused { why: why.clone().into() },
        }
    }
}

fn refused(why: LineFault) -> ScaleLine {
    ScaleLine::Refused { why }
}

/// Reads one line without its end.
#[must_use]
pub fn read_line(line: &str, shows: Shows, format: &LineFormat) -> ScaleLine {
    if line.len() > LONGEST {
        return refused(LineFault::TooLong { n: line.chars().count() });
    }
    if line
        .chars()
        .any(|c| c == char::REPLACEMENT_CHARACTER || (c.is_control() && c != '\t' && c != '\u{2}' && c != '\u{3}'))
    {
        return refused(LineFault::Characters);
    }
    let text = line.trim_matches(|c: char| c.is_whitespace() || c.is_control());
    if text.is_empty() || format.skip.iter().any(|s| text.starts_with(s.trim())) {
        return ScaleLine::Nothing;
    }
    if format.overload.iter().any(|o| text.contains(o.trim())) {
        return ScaleLine::Overload;
    }
    let mut rest = text.to_owned();
    let settled = format.settled.as_ref().map(|mark| {
        let there = take_word(&mut rest, mark.text.trim());
        there == (mark.means == MarkMeans::Settled)
    });
    for word in &format.ignore {
        take_word(&mut rest, word.trim());
    }
    match value(&rest, shows, format) {
        Ok(measured) => ScaleLine::Value { measured, settled },
        Err(why) => refused(why),
    }
}

/// Takes a mark out of a line where it stands by itself: not as a part of a longer word, unless it is a sign.
fn take_word(text: &mut String, word: &str) -> bool {
    let is_word = |c: char| c.is_alphanumeric();
    let wordy = word.chars().all(is_word);
    let mut from = 0;
    while let Some(at) = text[from..].find(word).map(|i| i + from) {
        let end = at + word.len();
        let clear = !wordy
            || (!text[..at].chars().next_back().is_some_and(char::is_alphabetic)
                && !text[end..].chars().next().is_some_and(char::is_alphabetic));
        if clear {
            text.replace_range(at..end, " ");
            return true;
        }
        from = end;
    }
    false
}

fn value(rest: &str, shows: Shows, format: &LineFormat) -> Result<Measured, LineFault> {
    // Separators between fields carry nothing; a comma between digits is a decimal comma.
    let chars: Vec<char> = rest.chars().collect();
    let digit = |i: Option<usize>| i.and_then(|i| chars.get(i)).is_some_and(char::is_ascii_digit);
    let cleaned: String = chars
        .iter()
        .enumerate()
        .map(|(i, c)| match c {
            ',' if !(digit(i.checked_sub(1)) && digit(Some(i + 1))) => ' ',
            ';' | ':' | '\t' => ' ',
            '\u{2}' | '\u{3}' => ' ',
            c => *c,
        })
        .collect();
    let text = cleaned.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = text.replacen("+ ", "+", 1).replacen("- ", "-", 1);
    if !text.chars().any(|c| c.is_ascii_digit()) {
        return Err(LineFault::NoFigure { text });
    }
    match shows {
        Shows::Mass => mass(&text, format.unit.as_deref()),
        Shows::SwingWeight => swing_weight(&text, format.unit.as_deref()),
    }
}

fn mass(text: &str, unit: Option<&str>) -> Result<Measured, LineFault> {
    let bare = !text.chars().any(char::is_alphabetic);
    let text = match (bare, unit) {
        (true, Some(unit)) => format!("{text} {unit}"),
        (true, None) => return Err(LineFault::NoUnit { text: text.to_owned() }),
        (false, _) => text.to_owned(),
    };
    // A figure without a sign is a mass like any other.
    let signed = if text.starts_with(['+', '-']) { text.clone() } else { format!("+{text}") };
    // A mark that nobody named for this scale, as the S of “S +264.30 g”, is what mostly keeps a line from being read.
    let mark = text.chars().take_while(|c| !c.is_ascii_digit()).any(char::is_alphabetic);
    let read = parse_mass_offset(&signed, MassUnit::Gram).map(|m| Measured::MassG(m.g()));
    read.map_err(|e| if mark { LineFault::NotAMass { text } } else { LineFault::Unreadable { what: e.told() } })
}

fn swing_weight(text: &str, unit: Option<&str>) -> Result<Measured, LineFault> {
    let bare = !text.chars().any(char::is_alphabetic);
    let text = match (bare, unit) {
        (true, Some(unit)) => format!("{text} {unit}"),
        (true, None) => return Err(LineFault::NoUnit { text: text.to_owned() }),
        (false, _) => text.to_owned(),
    };
    parse_swing_weight(text.trim_start_matches('+'))
        .map(|b| Measured::SwingWeightPoints(b.points()))
        .map_err(|_| LineFault::NotASwingWeight { text })
}

fact::facts! {
    /// Why a line of a scale is refused.
    pub enum LineFault: "line_fault" {
        /// A line of … characters: no scale sends that.
        TooLong {
            /// How many.
            n: usize,
        },
        /// Characters that no scale sends.
        Characters,
        /// “…” has no figure.
        NoFigure {
            /// What is left of the line without its marks and separators.
            text: String,
        },
        /// “…” has no unit, and none is set for this scale.
        NoUnit {
            /// What is left of the line: a figure without letters.
            text: String,
        },
        /// Letters before a mass that are not known for this scale.
        NotAMass {
            /// The line without what is known.
            text: String,
        },
        /// Not a mass.
        Unreadable {
            /// Why.
            what: Told,
        },
        /// “…” does not look like a swing weight.
        NotASwingWeight {
            /// What is left of the line, with the scale's unit where the line has none.
            text: String,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use trade::connection::SettledMark;

    fn marked(means: MarkMeans, text: &str) -> LineFormat {
        LineFormat {
            settled: Some(SettledMark { text: text.into(), means }),
            overload: vec!["OL".into(), "----".into()],
            ignore: vec!["GS".into()],
            skip: vec!["Date".into()],
            ..LineFormat::default()
        }
    }

    fn value_of(line: &str, format: &LineFormat) -> Option<(f64, Option<bool>)> {
        match read_line(line, Shows::Mass, format) {
            ScaleLine::Value { measured, settled } => Some((measured.figure(), settled)),
            _ => None,
        }
    }

    #[test]
    fn marks_of_either_polarity_are_told() {
        let settled = marked(MarkMeans::Settled, "ST");
        assert_eq!(value_of("ST,GS,+  256.10 g", &settled), Some((256.1, Some(true))));
        assert_eq!(value_of("US,GS,+  256.10 g", &settled), None, "US is not known: refused");
        let mut known = settled.clone();
        known.ignore.push("US".into());
        assert_eq!(value_of("US,GS,+  256.10 g", &known), Some((256.1, Some(false))));
        let moving = marked(MarkMeans::Moving, "?");
        assert_eq!(value_of("   98.4 g ?", &moving), Some((98.4, Some(false))));
        assert_eq!(value_of("   98.4 g", &moving), Some((98.4, Some(true))));
    }

    #[test]
    fn units_signs_and_decimal_commas() {
        let format = LineFormat { unit: None, ..LineFormat::default() };
        // The avoirdupois ounce is 28.349523125 g.
        let (ounces, _) = value_of("9.03 oz", &format).unwrap();
        assert!((ounces - 9.03 * 28.349_523_125).abs() < 1e-9);
        assert_eq!(value_of("0,2561 kg", &format), Some((256.1, None)));
        assert_eq!(value_of("-   0.3 g", &format), Some((-0.3, None)));
        assert_eq!(value_of("256.1", &format), None, "no unit, none set");
        assert_eq!(value_of("256.1", &LineFormat::default()), Some((256.1, None)));
    }

    #[test]
    fn what_does_not_fit_is_refused_and_not_guessed() {
        let format = marked(MarkMeans::Settled, "ST");
        assert_eq!(read_line("", Shows::Mass, &format), ScaleLine::Nothing);
        assert_eq!(read_line("Date 2026-03-02", Shows::Mass, &format), ScaleLine::Nothing);
        assert_eq!(read_line("ST OL g", Shows::Mass, &format), ScaleLine::Overload);
        for line in
            ["ST 25", "56.1 g 12", "ST 1.2.3 g", "ST 256.1 stone", "ERR 5", "ST 256.1g 256.1g", "\u{fffd}\u{fffd}8"]
        {
            let read = read_line(line, Shows::Mass, &format);
            let whole =
                matches!(&read, ScaleLine::Value { measured, .. } if line == "ST 25" && measured.figure() == 25.0);
            assert!(whole || matches!(read, ScaleLine::Refused { .. }), "{line}: {read:?}");
        }
        assert!(matches!(read_line(&"9".repeat(500), Shows::Mass, &format), ScaleLine::Refused { .. }));
    }

    #[test]
    fn a_swing_weight_comes_in_letters_or_as_a_moment() {
        let format = LineFormat { unit: None, ..LineFormat::default() };
        assert_eq!(
            read_line("D2.5", Shows::SwingWeight, &format),
            ScaleLine::Value { measured: Measured::SwingWeightPoints(32.5), settled: None }
        );
        // D0 is 213.5 oz·in.
        match read_line("213.5 oz in", Shows::SwingWeight, &format) {
            ScaleLine::Value { measured, .. } => assert!((measured.figure() - 30.0).abs() < 1e-9),
            other => panic!("{other:?}"),
        }
    }
}
