//! Where in a document a value stands.

use std::fmt;

/// A place in a document, as an error names it: `what_if.add[0].mass_g`.
#[derive(Debug, Clone, Copy)]
pub(super) enum Place<'a> {
    /// The whole document.
    Document,
    /// A field of an object.
    Field(&'a Place<'a>, &'a str),
    /// An entry of a list, counted from nothing.
    Entry(&'a Place<'a>, usize),
}

impl fmt::Display for Place<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Document => f.write_str("the document"),
            Self::Field(Self::Document, name) => f.write_str(name),
            Self::Field(object, name) => write!(f, "{object}.{name}"),
            Self::Entry(list, index) => write!(f, "{list}[{index}]"),
        }
    }
}
