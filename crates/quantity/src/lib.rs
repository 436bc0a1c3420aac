//! Typed quantities and the notation of the workshop.
