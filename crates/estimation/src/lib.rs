//! Gaussian belief about a job: conditioning, forecasts, doubt.
