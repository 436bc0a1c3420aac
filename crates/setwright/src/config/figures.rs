//! The figures of a part as arguments: one for each line of the table of a part's fields.

use clap::{Arg, ArgMatches, Args, Command, Error, FromArgMatches, value_parser};
use quantity::Units;
use trade::part_field::{self, Field, Measure};
use words::Words;

/// Figures as they are typed at a weigh-in, each with the name of its field.
#[derive(Debug, Default)]
pub struct TypedFigures(pub Vec<(&'static str, String)>);

/// Figures in the units of their keys, each with its key: lengths in millimetres, angles in degrees.
#[derive(Debug, Default)]
pub struct PartFigures(pub Vec<(&'static str, f64)>);

/// The figures besides the mass, which has its own argument everywhere.
fn fields() -> impl Iterator<Item = &'static Field> {
    part_field::figures().filter(|(_, figure)| figure.at_weigh_in && figure.only.is_some()).map(|(field, _)| field)
}

fn argument(field: &'static Field) -> Arg {
    let w = Words::english(Units::default());
    let id = field.name.replace('_', "-");
    let unit = match field.measure {
        Measure::Mass => "G",
        Measure::Length => "MM",
        Measure::Frequency => "CPM",
        Measure::Angle => "DEGREES",
        Measure::Count | Measure::Word => "VALUE",
    };
    let label = w.text(&format!("part-label-{id}"));
    // The names are few and made once.
    Arg::new(field.name).long(&*id.leak()).value_name(unit).help(label)
}

impl FromArgMatches for TypedFigures {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, Error> {
        let given =
            |field: &'static Field| matches.get_one::<String>(field.name).map(|text| (field.name, text.clone()));
        Ok(Self(fields().filter_map(given).collect()))
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

impl Args for TypedFigures {
    fn augment_args(command: Command) -> Command {
        fields().fold(command, |command, field| command.arg(argument(field).requires("keep")))
    }

    fn augment_args_for_update(command: Command) -> Command {
        Self::augment_args(command)
    }
}

impl FromArgMatches for PartFigures {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, Error> {
        let given = |field: &'static Field| matches.get_one::<f64>(field.name).map(|value| (field.key, *value));
        Ok(Self(fields().filter_map(given).collect()))
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

impl Args for PartFigures {
    fn augment_args(command: Command) -> Command {
        let number = |field| argument(field).value_parser(value_parser!(f64)).allow_negative_numbers(true);
        fields().fold(command, |command, field| command.arg(number(field)))
    }

    fn augment_args_for_update(command: Command) -> Command {
        Self::augment_args(command)
    }
}
