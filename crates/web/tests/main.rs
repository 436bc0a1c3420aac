//! The whole site, asked as a tablet or a program asks it: one program, so that what it is built of is linked once.

mod adapters;
mod addresses;
mod at_the_tablet;
mod bad_input;
mod clock;
mod club_work;
mod crawl;
mod customers;
mod demo_past;
mod description;
mod door;
mod first_run;
mod forecast_kept;
mod frequency_plan;
mod gates;
mod glossary;
mod glue_gates;
mod half_quanta;
mod learning;
mod orders;
mod other_jobs;
mod part_life;
mod picks;
mod proposals;
mod replay;
mod round_trips;
mod scale_health;
#[cfg(unix)]
mod scales;
mod shaft_frequency;
mod stock_list;
mod support;
mod verdict;
mod weigh_in;
mod whole_job;
mod work_order;
