//! The page that shows the look itself, with invented data.
