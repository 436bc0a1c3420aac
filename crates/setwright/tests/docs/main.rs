//! The pages that a stranger follows are true: their commands run as printed.

mod folder;
mod guide;
mod one_set;
mod readme;
