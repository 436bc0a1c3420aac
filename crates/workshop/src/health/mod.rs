//! Whether the shop's scales may be relied on: check weights day by day, charts with run rules, trust and what takes it
//! away, offset and drift, and the gauge study.
//!
//! Everything that happens to a scale is an event that is kept and never changed ([`ScaleEvent`]); what is said of the
//! scale follows from its events. The checks of a job's days are readings of that job's belief ([`ScaleWatch`]).

mod chart;
mod event;
mod gauge;
mod offset;
mod question;
mod study;
mod trust;
mod watch;

pub use estimation::chart::Pattern;
pub use estimation::gauge_study::GaugeStudy;

pub use chart::{BASE_FULL, BASE_LEAST, ChartPoint, CheckChart, chart, charts};
pub use event::{CheckRead, Happened, ScaleEvent, standing_checks};
pub use gauge::{Gauge, Measures, Standard, parse_value, print_error, print_value};
pub use offset::{Offset, offset};
pub use question::{Doubtful, LooksLike, question};
pub use study::{Category, StudyPlan, StudyResult, StudyStep, evaluate, noise_from, shuffled_plan, study_design_check};
pub use trust::{Reason, Spoken, Trust, TrustCause, judge, sentence, trust};
pub use watch::{ScaleWatch, TodayOffset, WatchedCheck, today_offset};
