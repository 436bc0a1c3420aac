//! The pages that a stranger follows are true: their commands run as printed.

mod folder;
mod one_set;
mod readme;
