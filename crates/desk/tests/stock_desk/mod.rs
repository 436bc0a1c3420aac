//! Goal: what is on order, what is short, how parts are sorted and which head masses to ask for follow from what is
//! written down, and bad entries are refused by name. Method: the invented shop of the demonstration and a plain club
//! whose swing weight is worked out by hand below; probabilities against seeded simulations that know nothing of the code.

mod ask;
mod needs;
mod order;
mod weight_class;

use demo as shop_of;
use jiff::Timestamp;
use jiff::civil::{Date, date};
use trade::id::{ClubId, JobId};
use trade::job::Job;
use trade::model::{Library, PartKind};
use trade::part::Part;

fn library() -> Library {
    shop_of::models().into_iter().collect()
}

/// A Monday.
fn today() -> Date {
    date(2026, 3, 2)
}

fn now() -> Timestamp {
    Timestamp::from_second(1_772_440_000).unwrap()
}

/// A job of the demonstration's sheets, by the head model that it is built with.
fn job(head_model: &str, number: i64) -> Job {
    let sheet =
        shop_of::sheets(today()).into_iter().find(|s| s.clubs.iter().all(|c| c.head_model == head_model)).unwrap();
    let mut job = Job::of_sheet(&sheet, trade::step::full_build(), now());
    job.id = JobId(format!("job-{number}"));
    job.number = number;
    for club in &mut job.clubs {
        club.id = ClubId(format!("{number}-{}", club.slot));
    }
    job
}

fn weighed(kind: PartKind, model: &str, code: &str, number: Option<&str>, mass_g: f64) -> Part {
    Part { id: code.into(), number: number.map(str::to_owned), mass_g: Some(mass_g), ..Part::new(code, kind, model) }
}
