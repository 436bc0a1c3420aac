//! Which part goes into which club.
