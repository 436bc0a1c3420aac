//! Whether the shop's scales may be relied on: check weights day by day, charts with run rules, trust and what takes it
//! away, offset and drift, and the gauge study.
//!
//! Everything that happens to a scale is an event that is kept and never changed ([`trade::scale_event`]); what is said of the
//! scale follows from its events. The checks of a job's days are readings of that job's belief ([`bench::scale_watch`]).

mod chart;
mod offset;
mod question;
mod study;
mod trust;

pub use estimation::chart::Pattern;
pub use estimation::gauge_study::GaugeStudy;

pub use chart::{BASE_FULL, ChartPoint, CheckChart, chart, charts};
pub use offset::{Offset, offset};
pub use question::{Doubtful, LooksLike, Question, QuestionNext, question};
pub use study::{
    Category, StudyAdvice, StudyFound, StudyNext, StudyPlan, StudyResult, StudyStep, evaluate, noise_from,
    shuffled_plan, study_design_check,
};
pub use trust::{Spoken, judge, said, trust};
