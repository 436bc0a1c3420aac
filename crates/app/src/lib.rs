//! Use cases: load, compute, save, publish.
