//! The only place with SQL: SQLite or PostgreSQL behind one set of queries.
//!
//! A [`Store`] hands out transactions. [`Store::read`] sees one consistent state and changes nothing; [`Store::write`]
//! is alone: there is one writer at a time on either database (SQLite by `BEGIN IMMEDIATE`, PostgreSQL by an advisory
//! lock), so what was checked in a write transaction still holds when it commits. A shop has a handful of tablets; a
//! write takes milliseconds. Dropping a [`Tx`] without [`Tx::commit`] leaves everything as it was.
//!
//! What is acknowledged is on disk: SQLite runs in WAL with `synchronous = FULL`.
//!
//! Models, sheets, steps and plans are documents that are read whole and kept as JSON beside the columns that are
//! searched. Parts, readings and batches are rows with SI columns, for other programs; the figures that come back here
//! are those that went in, bit for bit.

mod access;
mod archive;
mod backup;
mod batch;
mod club;
mod column;
mod customer;
mod engine;
mod error;
mod event;
mod file;
mod find;
mod find_line;
mod finished_club;
mod hold;
mod job;
mod layout;
mod learned;
mod learned_row;
mod life;
mod mark;
mod model;
mod open;
mod order;
mod part;
mod profile;
mod reading;
mod recall;
mod remembered;
mod scale;
mod schema;
mod seal;
mod sheet;
mod shop;
mod side_file;
mod study;
mod tables;
mod tx;

pub use access::DoorCode;
pub use archive::{Archived, fill_from_archive, fill_from_file};
pub use backup::{Contents, Copied, look_into};
pub use club::ClubFilter;
pub use customer::{CustomerLine, CustomerRow, FreeName};
pub use error::{ModelUser, Saved, StoreError, Stored};
pub use event::Event;
pub use file::{Making, ShopFile};
pub use find::{FoundEntries, FoundEntry, FoundNote, PARTS_COUNTED};
pub use hold::Hold;
pub use job::JobLine;
pub use learned_row::LearnedRow;
pub use life::LifeNote;
pub use mark::ShownMark;
pub use open::{Store, shown_address};
pub use order::OrderFilter;
pub use part::PartFilter;
pub use reading::Appended;
pub use recall::ReachedClub;
pub use scale::KeptScaleEvent;
pub use sheet::{SheetLine, SheetRow};
pub use study::{StudyReading, StudyRow};
pub use tx::Tx;
