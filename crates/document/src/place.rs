//! Places in a document.

use std::fmt;

/// A place in a document, as a way back to the document itself.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Place<'p> {
    /// The document.
    Document,
    /// A field of the object at a place.
    Field(&'p Self, &'p str),
    /// An entry of the list at a place, from 0.
    Entry(&'p Self, usize),
}

/// One step on the way to a place.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Step {
    /// Into the field of this name.
    Field(String),
    /// Into this entry, from 0.
    Entry(usize),
}

/// As a part of a JSON pointer (RFC 6901): `~` and `/` of a name are written `~0` and `~1`, in this order (section 3).
impl fmt::Display for Step {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Field(name) => write!(f, "/{}", name.replace('~', "~0").replace('/', "~1")),
            Self::Entry(index) => write!(f, "/{index}"),
        }
    }
}

impl Place<'_> {
    /// The way from the document to here.
    pub(crate) fn steps(&self) -> Vec<Step> {
        let (above, step) = match self {
            Self::Document => return Vec::new(),
            Self::Field(above, name) => (above, Step::Field((*name).to_owned())),
            Self::Entry(above, index) => (above, Step::Entry(*index)),
        };
        let mut steps = above.steps();
        steps.push(step);
        steps
    }
}
