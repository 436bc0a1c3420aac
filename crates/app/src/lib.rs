//! The use cases: open a transaction, load, call something pure, save, tell the other screens.
//!
//! Nothing here computes and nothing here writes SQL or HTML. Time comes from a [`Clock`], so that a test can let a
//! cure pass in an instant.

pub mod access;
pub mod advice;
pub mod anyway;
pub mod archive;
pub mod backup;
pub mod begin;
pub mod bench;
pub mod calc;
pub mod calendar;
pub mod clock;
pub mod clock_doubt;
pub mod clock_watch;
pub mod club;
pub mod club_job;
pub mod cpm;
pub mod customer;
mod deletion;
pub mod done;
mod entry;
pub mod error;
pub mod export;
mod fault;
pub mod find;
pub mod fit;
pub mod gauge_study;
pub mod glue;
pub mod grip_size;
pub mod job;
pub mod kept_job;
mod known_customer;
pub mod label_print;
mod lanes;
pub mod learned;
pub mod ledger;
mod let_pass;
pub mod life;
pub mod live;
mod look_up;
pub mod match_job;
pub mod matched;
mod meanwhile;
mod need;
pub mod needs;
pub mod open;
pub mod order;
pub mod plan;
pub mod price;
mod proven;
pub mod recall;
pub mod same_again;
pub mod scale_health;
mod scale_watch;
pub mod scales;
pub mod scan;
pub mod searching;
pub mod sheet;
pub mod soft_side;
pub mod sorting;
pub mod stiffness_profile;
pub mod stock;
pub mod stock_list;
pub mod told;
pub mod usual;
pub mod weigh_in;

use crate::look_up::LookUp;
use ::bench::learned::Learned;
pub use clock::{Clock, SetClock, SystemClock};
pub use error::{AppError, Kind};
use fact::Fact;
use fact::Refusal;
pub use kept_job::WorkDone;
pub use live::LiveEvent;
use trade::error::NotFound;
use trade::model::PartKind;

pub use store::shown_address;

use jiff::Timestamp;
use std::sync::Arc;
use store::Store;
use tokio::sync::broadcast;
use trade::model::Library;
use trade::shop::{Person, Shop, Units};
use words::Words;

/// The workshop with its store: cheap to clone, one a program.
#[derive(Clone)]
pub struct App {
    store: Store,
    clock: Arc<dyn Clock>,
    live: broadcast::Sender<LiveEvent>,
    imports: broadcast::Sender<stock_list::ImportProgress>,
    board: scales::Board,
    lanes: lanes::Lanes,
    clock_watch: Arc<clock_watch::ClockWatch>,
    proven: proven::Proven,
    capability: learned::KeptCapability,
    charts: scale_health::KeptCharts,
    jobs: kept_job::KeptJobs,
    backups: backup::DailyBackups,
    others_told: Arc<live::OthersTold>,
}

impl App {
    /// Opens a database and makes the shop if there is none yet, with English names of its steps and scales.
    ///
    /// # Errors
    /// What the store says of the database.
    pub async fn open(url: &str, clock: Arc<dyn Clock>) -> Result<Self, AppError> {
        Self::open_in(url, clock, &Words::english(Units::default())).await
    }

    /// The same for a shop of another language: the names that a new shop begins with come from the texts of that one.
    ///
    /// # Errors
    /// What the store says of the database.
    pub async fn open_in(url: &str, clock: Arc<dyn Clock>, words: &Words) -> Result<Self, AppError> {
        Self::of(Store::open(url).await?, clock, words).await
    }

    /// Opens the shop that is at an address.
    ///
    /// # Errors
    /// There is none: nothing is made; what the store says of the database.
    pub async fn open_existing(url: &str, clock: Arc<dyn Clock>) -> Result<Self, AppError> {
        Self::of(Store::open_existing(url).await?, clock, &Words::english(Units::default())).await
    }

    /// Whether the database was empty when it was opened.
    #[must_use]
    pub const fn is_new(&self) -> bool {
        self.store.is_new()
    }

    /// The store itself, for what stands beside the use cases and fills a database by itself: the demonstration.
    #[must_use]
    pub const fn store(&self) -> &Store {
        &self.store
    }

    /// The same shop on another clock, which is taken as it is: work of weeks ago can be entered as of then.
    #[must_use]
    pub fn on_clock(&self, clock: Arc<dyn Clock>) -> Self {
        Self { clock, clock_watch: Arc::new(clock_watch::ClockWatch::trusting()), ..self.clone() }
    }

    async fn of(store: Store, clock: Arc<dyn Clock>, words: &Words) -> Result<Self, AppError> {
        let faults = store.folder().map_or_else(fault::Faults::default, fault::Faults::in_folder);
        let proven = proven::Proven::new(faults);
        let app = Self {
            store,
            clock,
            live: live::channel(),
            imports: broadcast::channel(64).0,
            board: scales::Board::new(),
            lanes: lanes::Lanes::default(),
            clock_watch: Arc::new(clock_watch::ClockWatch::new()),
            proven,
            capability: learned::KeptCapability::default(),
            charts: scale_health::KeptCharts::default(),
            jobs: kept_job::KeptJobs::default(),
            backups: backup::DailyBackups::default(),
            others_told: Arc::default(),
        };
        let mut tx = app.store.write().await?;
        if tx.shop().await?.is_none() {
            tx.save_shop(&Shop::named(|id| words.text(id)), app.now()).await?;
            tx.commit().await?;
        }
        Ok(app)
    }

    /// Now, by the clock that the program was given.
    #[must_use]
    pub fn now(&self) -> Timestamp {
        self.clock.now()
    }

    /// Whether the shop can be read now.
    ///
    /// # Errors
    /// What the store says.
    pub async fn can_be_read(&self) -> Result<(), AppError> {
        self.store.read().await?.shop().await?;
        Ok(())
    }

    /// Waits for open work and closes the database.
    pub async fn close(&self) {
        self.store.close().await;
    }

    /// The shop.
    ///
    /// # Errors
    /// What the store says.
    pub async fn shop(&self) -> Result<Shop, AppError> {
        let mut tx = self.store.read().await?;
        Ok(Arc::unwrap_or_clone(load_shop(&mut tx).await?))
    }

    /// Remembers who works here and in which units; without units, those that the person chose before. Returns them. An
    /// empty name is nobody, and only gives the units back.
    ///
    /// # Errors
    /// What the store says.
    pub async fn name_person(&self, name: &str, units: Option<Units>) -> Result<Units, AppError> {
        let mut tx = self.store.write().await?;
        let mut shop = Arc::unwrap_or_clone(load_shop(&mut tx).await?);
        let known = shop.people.iter().position(|p| p.name == name);
        let units = units.or(known.map(|at| shop.people[at].units)).unwrap_or_default();
        if name.is_empty() || known.is_some_and(|at| shop.people[at].units == units) {
            return Ok(units);
        }
        match known {
            Some(at) => shop.people[at].units = units,
            None => shop.people.push(Person { name: name.to_owned(), units }),
        }
        tx.save_shop(&shop, self.now()).await?;
        tx.commit().await?;
        Ok(units)
    }

    /// Changes what the shop says of itself. Jobs that are under way keep their own steps.
    ///
    /// # Errors
    /// A template or a figure that the bench could not work with; what the store says.
    pub async fn save_shop(&self, shop: &Shop) -> Result<(), AppError> {
        shop.check()?;
        let mut tx = self.store.write().await?;
        for (kind, code) in [(PartKind::Adhesive, &shop.adhesive), (PartKind::Tape, &shop.tape)] {
            if let Some(code) = code
                && tx.model(code).await?.is_none_or(|m| m.kind() != kind)
            {
                return Err(AppError::NotFound(
                    Refusal::new(&NotFound::Model { kind: kind.told(), code: code.clone() }).next(&LookUp::AddModel),
                ));
            }
        }
        tx.save_shop(shop, self.now()).await?;
        tx.commit().await?;
        // A scale with new settings is heard at once.
        if self.board.differs(&shop.scales) {
            self.start_scales().await?;
        }
        Ok(())
    }
}

pub(crate) async fn load_shop(tx: &mut store::Tx) -> Result<Arc<Shop>, AppError> {
    Ok(tx.shop().await?.unwrap_or_default())
}

pub(crate) async fn load_library(tx: &mut store::Tx) -> Result<Arc<Library>, AppError> {
    Ok(tx.library().await?)
}

/// What the shop knows now from its own readings.
pub(crate) async fn load_learned(tx: &mut store::Tx) -> Result<Arc<Learned>, AppError> {
    Ok(tx.learned().await?.unwrap_or_default())
}

/// A new identity: UUID version 7, so that identities sort by the time they were made.
pub(crate) fn new_id() -> String {
    uuid::Uuid::now_v7().to_string()
}

/// A fresh key for a form or a request, so that sending it twice keeps it once.
#[must_use]
pub fn request_key() -> String {
    new_id()
}
