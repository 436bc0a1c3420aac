//! The fields of a part, described once: forms, weigh-in, lists in and out, the command line, the life of a part and the
//! store read this table.
//!
//! A new figure of a part is an entry of [`FIELDS`], a line in each of the three lists of names in
//! [`named_fields`](crate::part::named_fields) (figures, figures as typed, limits to ask for), its texts, and a column of the store.
//! A test fails while a list lacks it.

use crate::model::PartKind;
use crate::part::{CPM_LEAST, CPM_MOST, Part, possible_mass_g};
use fact::{Fact, Told};
use quantity::{LengthUnit, MassUnit, NotationError, parse_angle, parse_frequency, parse_length, parse_mass};

/// What the values of a field are, and so their unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// A word or a text: a code, a kind, a place.
    Word,
    /// How many; no unit.
    Count,
    /// A mass in grams.
    Mass,
    /// A length in millimetres.
    Length,
    /// A frequency in cycles a minute.
    Frequency,
    /// An angle in degrees.
    Angle,
}

/// One field of a part.
#[derive(Debug)]
pub struct Field {
    /// Its name in documents, the heading of its column in an exported file, its name in the life of a part: `mass_g`.
    pub key: &'static str,
    /// Its name in forms, in a mapping and on the command line: `mass`. Its texts are `part-field-mass` (a word within a
    /// sentence), `part-label-mass` and `part-hint-mass`.
    pub name: &'static str,
    /// What its values are.
    pub measure: Measure,
    /// Other words by which the headings of lists call it, in small letters.
    pub also: &'static [&'static str],
    /// Whether lists of parts have a column for it.
    pub listed: bool,
    /// The figure, where it is one.
    pub figure: Option<Figure>,
}

/// A field is told from another by its key.
impl PartialEq for Field {
    fn eq(&self, other: &Self) -> bool {
        self.key == other.key
    }
}

/// From a figure as it is given to SI.
pub type ToSi = fn(f64) -> f64;

/// A field that is a figure.
#[derive(Debug)]
pub struct Figure {
    /// The kind of part that is asked for it; none: any.
    pub only: Option<PartKind>,
    /// At the weigh-in, forms ask for it.
    pub at_weigh_in: bool,
    /// Where a part is changed by hand, forms ask for it.
    pub at_change: bool,
    /// Column of the database that holds it in SI units, and how it is converted; none: it has no column of its own.
    pub si: Option<(&'static str, ToSi)>,
    /// Its value.
    pub get: fn(&Part) -> Option<f64>,
    /// Sets its value.
    pub set: fn(&mut Part, Option<f64>),
    /// The values that this part can have at all, low and high; none: nothing is known to hold it against.
    pub range: fn(&Part) -> Option<(f64, f64)>,
}

/// A word of a part: no figure.
const fn word(key: &'static str, also: &'static [&'static str]) -> Field {
    Field { key, name: key, measure: Measure::Word, also, listed: true, figure: None }
}

const fn thousandth(value: f64) -> f64 {
    value / 1000.0
}

/// The fields in the order of an exported file. Ranges are wide, to catch slips of the key and of the unit only (common
/// practice, no source).
pub static FIELDS: [Field; 16] = FIELDS_TABLE;

const FIELDS_TABLE: [Field; 16] = [
    word(
        "code",
        &[
            "id",
            "part",
            "part code",
            "part id",
            "part no",
            "label",
            "barcode",
            "bar code",
            "serial",
            "serial no",
            "serial number",
        ],
    ),
    word("kind", &["type", "part kind", "part type", "category"]),
    word("model", &["model code", "product", "item"]),
    word("number", &["no", "club", "iron", "club no", "club number", "head number"]),
    Field {
        key: "mass_g",
        name: "mass",
        measure: Measure::Mass,
        also: &["weight", "wt", "part mass", "part weight", "actual weight", "measured weight"],
        listed: true,
        figure: Some(Figure {
            only: None,
            at_weigh_in: true,
            at_change: true,
            si: Some(("mass_kg", thousandth)),
            get: |part| part.mass_g,
            set: |part, mass_g| part.mass_g = mass_g,
            range: |part| Some(possible_mass_g(part.kind)),
        }),
    },
    Field {
        key: "length_mm",
        name: "length",
        measure: Measure::Length,
        also: &["raw length", "shaft length"],
        listed: true,
        figure: Some(Figure {
            only: Some(PartKind::Shaft),
            at_weigh_in: true,
            at_change: true,
            si: Some(("length_m", thousandth)),
            get: |part| part.length_mm,
            set: |part, length_mm| part.length_mm = length_mm,
            range: |_| Some((100.0, 1500.0)),
        }),
    },
    Field {
        key: "balance_point_mm",
        name: "balance_point",
        measure: Measure::Length,
        also: &["balance point from butt", "bp", "balance pt"],
        listed: true,
        figure: Some(Figure {
            only: Some(PartKind::Shaft),
            at_weigh_in: true,
            at_change: false,
            si: Some(("balance_point_m", thousandth)),
            get: |part| part.balance_point_mm,
            set: |part, balance_point_mm| part.balance_point_mm = balance_point_mm,
            range: |part| part.length_mm.map(|length_mm| (length_mm / 4.0, length_mm * 0.75)),
        }),
    },
    Field {
        key: "cpm",
        name: "cpm",
        measure: Measure::Frequency,
        also: &[
            "frequency",
            "freq",
            "frequency cpm",
            "freq cpm",
            "shaft cpm",
            "raw cpm",
            "cpm as received",
            "shaft frequency",
            "raw frequency",
            "cycles per minute",
        ],
        listed: true,
        figure: Some(Figure {
            only: Some(PartKind::Shaft),
            at_weigh_in: true,
            at_change: true,
            si: Some(("frequency_hz", |cpm| cpm / 60.0)),
            get: |part| part.cpm,
            set: |part, cpm| part.cpm = cpm,
            range: |_| Some((CPM_LEAST, CPM_MOST)),
        }),
    },
    Field {
        key: "tip_trimmed_mm",
        name: "tip_trimmed",
        measure: Measure::Length,
        also: &[],
        // It comes of a cut in this shop, not from a list.
        listed: false,
        figure: Some(Figure {
            only: Some(PartKind::Shaft),
            at_weigh_in: false,
            at_change: false,
            si: None,
            get: |part| part.tip_trimmed_mm,
            set: |part, tip_trimmed_mm| part.tip_trimmed_mm = tip_trimmed_mm,
            range: |_| Some((0.0, 300.0)),
        }),
    },
    Field {
        key: "loft_deg",
        name: "loft",
        measure: Measure::Angle,
        also: &["loft angle", "loft as received"],
        listed: true,
        figure: Some(Figure {
            only: Some(PartKind::Head),
            at_weigh_in: true,
            at_change: true,
            si: Some(("loft_rad", f64::to_radians)),
            get: |part| part.loft_deg,
            set: |part, loft_deg| part.loft_deg = loft_deg,
            range: |_| Some((0.0, 80.0)),
        }),
    },
    Field {
        key: "lie_deg",
        name: "lie",
        measure: Measure::Angle,
        also: &["lie angle", "lie as received"],
        listed: true,
        figure: Some(Figure {
            only: Some(PartKind::Head),
            at_weigh_in: true,
            at_change: true,
            si: Some(("lie_rad", f64::to_radians)),
            get: |part| part.lie_deg,
            set: |part, lie_deg| part.lie_deg = lie_deg,
            range: |_| Some((40.0, 80.0)),
        }),
    },
    word("lot", &["batch", "lot no", "lot number", "batch no"]),
    word("place", &["location", "shelf", "bin", "drawer", "where"]),
    word("state", &["status", "condition"]),
    Field {
        key: "count",
        name: "count",
        measure: Measure::Count,
        also: &["quantity", "qty", "pieces", "pcs", "how many", "in stock"],
        listed: true,
        figure: None,
    },
    word("owner", &["customer", "belongs to", "whose"]),
];

impl Measure {
    /// Sign of the unit that figures are kept in; empty where there is none.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Word | Self::Count => "",
            Self::Mass => "g",
            Self::Length => "mm",
            Self::Frequency => "cpm",
            Self::Angle => "°",
        }
    }
}

/// What the texts call a field: `mass` within a sentence.
impl Fact for Field {
    fn told(&self) -> Told {
        Told::of_list("PartField", self.name)
    }
}

impl Field {
    /// The field of this key.
    #[must_use]
    pub fn by_key(key: &str) -> Option<&'static Self> {
        FIELDS.iter().find(|field| field.key == key)
    }

    /// The field of this name.
    #[must_use]
    pub fn by_name(name: &str) -> Option<&'static Self> {
        FIELDS.iter().find(|field| field.name == name)
    }

    /// Reads a value in workshop notation; a mass or a length without its unit is in the given one.
    ///
    /// # Errors
    /// What is wrong with the notation. A count or a word is never read here: a word means nothing as a figure.
    pub fn parse(&self, text: &str, mass: MassUnit, length: LengthUnit) -> Result<f64, NotationError> {
        match self.measure {
            Measure::Mass => parse_mass(text, mass).map(quantity::Mass::g),
            Measure::Length => parse_length(text, length).map(quantity::Length::mm),
            Measure::Frequency => parse_frequency(text).map(quantity::Frequency::cpm),
            Measure::Angle | Measure::Count | Measure::Word => parse_angle(text).map(quantity::Angle::deg),
        }
    }
}

/// How many columns lists of parts have.
pub const LISTED: usize = {
    let (mut i, mut n) = (0, 0);
    while i < FIELDS_TABLE.len() {
        n += FIELDS_TABLE[i].listed as usize;
        i += 1;
    }
    n
};

/// The headings of an exported file in their order.
pub const COLUMNS: [&str; LISTED] = {
    let (mut i, mut n, mut keys) = (0, 0, [""; LISTED]);
    while i < FIELDS_TABLE.len() {
        if FIELDS_TABLE[i].listed {
            keys[n] = FIELDS_TABLE[i].key;
            n += 1;
        }
        i += 1;
    }
    keys
};

/// The fields that lists have a column for, in the order of [`COLUMNS`].
pub fn listed() -> impl Iterator<Item = &'static Field> {
    FIELDS.iter().filter(|field| field.listed)
}

/// The figures of a part in the order of [`FIELDS`], each with its field.
pub fn figures() -> impl Iterator<Item = (&'static Field, &'static Figure)> {
    FIELDS.iter().filter_map(|field| field.figure.as_ref().map(|figure| (field, figure)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_name_of_a_field_and_of_its_column_means_one_field() {
        let mut seen = BTreeSet::new();
        for field in &FIELDS {
            let names = [field.key, field.name].into_iter().collect::<BTreeSet<_>>();
            for name in names.into_iter().chain(field.also.iter().copied()) {
                assert!(seen.insert(name.replace('_', " ")), "{name} means two fields");
            }
        }
    }

    #[test]
    fn every_field_has_its_word() {
        let w = words::Words::english(quantity::Units::default());
        for field in &FIELDS {
            assert!(!w.tell(field).is_empty(), "{}", field.key);
        }
    }

    #[test]
    fn a_figure_is_read_from_where_it_was_set() {
        for (field, figure) in figures() {
            let mut part = Part::new("A", PartKind::Shaft, "M");
            assert_eq!((figure.get)(&part), None, "{}", field.key);
            (figure.set)(&mut part, Some(61.5));
            assert_eq!((figure.get)(&part), Some(61.5), "{}", field.key);
            let set: Vec<_> = figures().filter(|(_, other)| (other.get)(&part).is_some()).map(|(f, _)| f.key).collect();
            assert_eq!(set, [field.key]);
        }
    }
}
