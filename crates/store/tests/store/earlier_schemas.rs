//! A shop that was begun with any earlier version is carried over whole: every row, every figure.
//!
//! For each earlier schema the database is made by the numbered migrations up to it, with rows of a shop in every table
//! and column that it has. They are written by the store of today and copied as SQL, less what the schema could not hold
//! yet; so the columns are those of the time, and the documents in them are written as today.

use crate::database::TestDb;
use crate::orders;
use crate::samples::{at, box_of_ferrules, ferrule_model, head, new_id, part, plan, reading, stock_models};
use crate::scales::check;
use bench::finished_club::FinishedClub;
use bench::glue::Batch;
use bench::learned::{Learned, LearnedCause, Scatter};
use bench::record::Verdict;
use desk::scale_health::{StudyPlan, StudyStep};
use desk::stock_file::{Layout, Mapping};
use fact::Told;
use jiff::civil::date;
use sqlx::migrate::{Migration, MigrationType, Migrator};
use sqlx::{AnyConnection, AssertSqlSafe, Connection, Row, SqlSafeStr};
use std::collections::BTreeMap;
use std::path::Path;
use store::{
    ClubFilter, CustomerRow, DoorCode, Event, LearnedRow, LifeNote, OrderFilter, PartFilter, Store, StudyReading,
    StudyRow, Tx,
};
use trade::access::{AccessKey, KeyHolder, KeyRole};
use trade::club::{Club, ClubDeed, ClubEvent, Made};
use trade::customer::Customer;
use trade::id::{BatchId, ClubCode, EventId, ReadingId};
use trade::job::Job;
use trade::job_kind::JobKind;
use trade::life::{FigureChange, LifeStep};
use trade::model::PartKind;
use trade::order::{OrderLine, OrderStep};
use trade::part::Part;
use trade::reading::{Reading, StoodForecast, What};
use trade::recall::{ClubMark, MarkCleared, RecallOf};
use trade::shop::Shop;
use trade::stiffness_profile::{ProfileRow, ShaftProfile, StiffnessReading};

/// Schemas from which something can be kept for the first time.
const LEARNED: i64 = 3;
const SCALE_HEALTH: i64 = 5;
const ORDERS_AND_LIFE: i64 = 6;
const LIST_LAYOUTS: i64 = 7;
const SHAFT_FREQUENCY: i64 = 8;
const FORECAST_AND_BATCH: i64 = 10;
const CUSTOMERS: i64 = 12;
const CLUBS: i64 = 13;
const SHAFT_PROFILES: i64 = 14;
const ACCESS: i64 = 15;
const CLUB_MARKS: i64 = 16;

/// The migrations by number, each as this backend runs it, from their own files: the parts for both backends first.
pub fn migrations(sqlite: bool) -> BTreeMap<i64, String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("migrations");
    let (mine, other) = if sqlite { (".sqlite.sql", ".postgres.sql") } else { (".postgres.sql", ".sqlite.sql") };
    let files = std::fs::read_dir(folder).expect("the migrations");
    let mut files: Vec<_> = files.map(|file| file.expect("a file").path()).collect();
    files.sort();
    let mut found: BTreeMap<i64, String> = BTreeMap::new();
    for file in files {
        let name = file.file_name().and_then(|n| n.to_str()).expect("a plain name").to_owned();
        if name.ends_with(other) {
            continue;
        }
        let number = name.split('_').next().and_then(|n| n.parse().ok()).expect("a number");
        let sql = std::fs::read_to_string(&file).expect("SQL");
        assert!(name.ends_with(mine) || !found.contains_key(&number), "{name} does not come first");
        found.entry(number).or_default().push_str(&sql);
    }
    found
}

/// Runs the migrations up to a schema on an empty database, as the version of that time did.
pub async fn make(conn: &mut AnyConnection, migrations: &BTreeMap<i64, String>, schema: i64) {
    let list = migrations.range(..=schema).map(|(&number, sql)| {
        let sql = AssertSqlSafe(sql.clone()).into_sql_str();
        Migration::new(number, "as it was".into(), MigrationType::Simple, sql, false)
    });
    let migrator = Migrator::with_migrations(list.collect());
    migrator.run_direct(None, &mut *conn, false).await.expect("an earlier schema");
}

async fn texts(conn: &mut AnyConnection, sql: &str) -> Vec<String> {
    let rows = sqlx::query(AssertSqlSafe(sql)).fetch_all(conn).await.unwrap_or_else(|e| panic!("{sql}: {e}"));
    rows.iter().map(|row| row.try_get(0).unwrap_or_else(|e| panic!("{sql}: {e}"))).collect()
}

/// A table with its columns.
pub struct Table {
    pub name: String,
    pub columns: Vec<String>,
}

/// The tables of a schema in the order in which they are made, so that each comes after those that it refers to.
pub async fn tables(
    conn: &mut AnyConnection,
    db: &TestDb,
    migrations: &BTreeMap<i64, String>,
    schema: i64,
) -> Vec<Table> {
    let mut tables = Vec::new();
    for sql in migrations.range(..=schema).map(|(_, sql)| sql) {
        for line in sql.lines().filter_map(|line| line.strip_prefix("CREATE TABLE ")) {
            let name = line.split([' ', '(']).next().expect("a name").to_owned();
            let columns = if db.is_sqlite() {
                format!("SELECT name FROM pragma_table_info('{name}') ORDER BY cid")
            } else {
                format!(
                    "SELECT CAST(column_name AS TEXT) FROM information_schema.columns
                     WHERE table_schema = current_schema() AND table_name = '{name}' ORDER BY ordinal_position"
                )
            };
            let columns = texts(conn, &columns).await;
            assert!(!columns.is_empty(), "{name} is not there");
            tables.push(Table { name, columns });
        }
    }
    // Older tables refer to this one by columns that came with it.
    tables.sort_by_key(|table| table.name != "customer");
    tables
}

/// The rows of a table in these columns, each as the SQL that writes it, figures in all their digits.
async fn rows(conn: &mut AnyConnection, db: &TestDb, table: &Table) -> Vec<String> {
    let Table { name, columns } = table;
    let quote = if db.is_sqlite() { "quote" } else { "quote_nullable" };
    let values: Vec<String> = columns.iter().map(|column| format!("{quote}({column})")).collect();
    let order = if columns.iter().any(|column| column == "seq") { "seq" } else { "1" };
    let (columns, values) = (columns.join(", "), values.join(" || ', ' || "));
    let sql =
        format!("SELECT 'INSERT INTO {name} ({columns}) VALUES (' || {values} || ')' FROM {name} ORDER BY {order}");
    texts(conn, &sql).await
}

fn batch(job: &Job, number: i64) -> Batch {
    Batch {
        id: BatchId(new_id()),
        number,
        adhesive: "BOND-24".into(),
        lot: "A 7".into(),
        clubs: job.clubs.iter().map(|club| club.id.clone()).collect(),
        bead_share_percent: 5.1,
        room_c: 19.3,
        cold_reason: None,
        resin_g: 6.23,
        hardener_g: 0.1 + 0.2,
        beads_g: 0.63,
        mixed_at: at(3600 * number),
        by: "Wren".into(),
        taken_back: None,
    }
}

/// A job with its sheet, parts, readings of every unit, batches and log, as far as a schema has a place for them.
pub async fn fill(store: &Store, schema: i64) -> Job {
    let mut tx = store.write().await.expect("a writer").signed("Wren");
    stock_models(&mut tx).await;
    tx.save_shop(&Shop { name: "Größe & Co".into(), ..Shop::default() }, at(1)).await.expect("saved");
    let mut job = crate::samples::add_job(&mut tx, &["6", "7"]).await;
    let parts = [head("H6-1"), head("H6-2"), box_of_ferrules("F-1", 40), part("S-1", PartKind::Shaft, "RUSH-110")];
    for part in &parts {
        let cpm = (schema >= SHAFT_FREQUENCY && part.kind == PartKind::Shaft).then_some(262.0 + 1.0 / 3.0);
        tx.insert_part(&Part { cpm, ..part.clone() }, at(2)).await.expect("saved");
    }
    for part in [&parts[0], &parts[2]] {
        tx.hold(&part.id, &job.id, &job.clubs[0].id, at(3)).await.expect("held");
    }
    job.clubs[0].plan = Some(plan(&parts[0]));
    tx.save_club(&job.clubs[0], &job.id).await.expect("saved");
    read(&mut tx, &job).await;
    let kept_with_more = schema >= FORECAST_AND_BATCH;
    for number in 1..=2 {
        let batch = batch(&job, number);
        let key = kept_with_more.then(|| format!("cup {number}"));
        tx.insert_batch(&batch, key.as_deref()).await.expect("saved");
        if kept_with_more && number == 2 {
            tx.take_back_batch(&batch.id, "mixed for another job", "Jay", at(4)).await.expect("noted");
        }
    }
    if kept_with_more {
        let forecast = Some(StoodForecast { value: 41.7, band: 0.4, version: 1 });
        let foreseen = Reading { forecast, ..reading(&job, 1, What::SwingWeight, 41.8) };
        tx.append_reading(&foreseen, None, None).await.expect("appended");
    }
    for (seconds, kind) in [(5, "plan_accepted"), (6, "batch_mixed")] {
        let body = serde_json::json!({ "why": "Größe", "parts": [1, 2.5, null] });
        let (id, by, job) = (EventId(new_id()), "Jay".into(), Some(job.id.clone()));
        tx.append_event(&Event { id, at: at(seconds), by, job, club: None, kind: kind.into(), body })
            .await
            .expect("logged");
    }
    if schema >= LEARNED {
        learn(&mut tx, &job).await;
    }
    if schema >= SCALE_HEALTH {
        look_after_scales(&mut tx).await;
    }
    if schema >= ORDERS_AND_LIFE {
        order(&mut tx, &job, &parts[1]).await;
    }
    if schema >= LIST_LAYOUTS {
        let layout =
            Layout { name: "Heron list".into(), headings: vec!["Gewicht".into()], mapping: Mapping::default() };
        tx.put_layout(&layout, at(8)).await.expect("kept");
    }
    if schema >= CLUBS {
        keep_club(&mut tx, &job).await;
    }
    if schema >= SHAFT_PROFILES {
        tx.append_profile(&parts[3].id, &profile(), Some("profile 1")).await.expect("kept");
    }
    if schema >= ACCESS {
        give_key(&mut tx, 1).await;
    }
    if schema >= CUSTOMERS {
        keep_customer(&mut tx, &mut job).await;
    }
    if schema >= CLUB_MARKS {
        mark(&mut tx, &job).await;
    }
    tx.commit().await.expect("commit");
    job
}

/// A tablet that was let in by six digits.
async fn give_key(tx: &mut Tx, number: i64) {
    let key = AccessKey {
        number,
        name: "Größe".into(),
        holder: KeyHolder::Tablet,
        role: KeyRole::Builder,
        given_at: at(13),
        given_by: "Wren".into(),
        ends_at: None,
        used_at: Some(at(14)),
        used_from: Some("192.168.1.31".into()),
        withdrawn_at: None,
        withdrawn_by: None,
    };
    let hash = format!("hash {number}");
    tx.insert_key(&key, &hash).await.expect("kept");
    assert_eq!(tx.key_of_secret(&hash).await.expect("read"), Some(key.clone()));
    let (name, role, shown_by) = (key.name, key.role, key.given_by);
    let code = DoorCode { number: 0, name, role, shown_by, ends_at: at(400) };
    let code_number = tx.insert_door_code(&code, &hash).await.expect("kept");
    assert!(tx.door_code(&hash, at(399)).await.expect("read").is_some());
    assert!(tx.door_code(&hash, at(400)).await.expect("read").is_none(), "its time is over");
    tx.spend_door_code(code_number, number).await.expect("noted");
    assert!(tx.door_code(&hash, at(399)).await.expect("read").is_none(), "it let somebody in");
}

/// A club that the job's first became, its life, and a kind of job of the shop's own.
async fn keep_club(tx: &mut Tx, job: &Job) {
    let number = tx.next_club_number().await.expect("a number");
    let made_of = &job.clubs[0];
    let pieces = made_of.plan.clone().expect("a plan");
    let club = Club {
        code: ClubCode(format!("C{number}")),
        label: "Größes altes 6er".into(),
        player: job.sheet.player.clone(),
        owner: None,
        hand: job.sheet.hand,
        made: Made { row: made_of.target.clone(), pieces },
        grip_size_mm: Some(0.1 + 26.7),
        figures: Vec::new(),
        version: 0,
    };
    tx.insert_club(&club, number, at(11)).await.expect("saved");
    tx.note_made(&made_of.id, &club.code).await.expect("noted");
    let event = ClubEvent {
        id: EventId(new_id()),
        club: club.code.clone(),
        deed: ClubDeed::Built,
        job: Some(job.number),
        slot: Some(made_of.slot),
        job_kind: None,
        changes: Vec::new(),
        figures: Vec::new(),
        note: "whole".into(),
        by: "Wren".into(),
        at: at(12),
    };
    tx.append_club_event(&event).await.expect("appended");
    let kind = trade::job_kind::of_the_trade().first().expect("a kind of the trade").clone();
    tx.save_job_kind(&JobKind { key: "own".into(), label: "Unsere Art".into(), ..kind }).await.expect("saved");
}

/// Readings of a shaft at several clamp lengths, with what they told.
fn profile() -> ShaftProfile {
    let read = |held_mm: f64, cpm: Option<f64>, deflection_mm: Option<f64>| StiffnessReading {
        held_mm,
        weight_g: 205.3,
        weight_beyond_tip_mm: -12.5,
        cpm,
        deflection_mm,
    };
    let row = |from_tip_mm: f64| ProfileRow { from_tip_mm, stiffness_n_m2: 0.1 + from_tip_mm / 20.0, sd_percent: 4.3 };
    ShaftProfile {
        readings: vec![read(127.0, Some(262.0 + 1.0 / 3.0), None), read(254.0, None, Some(0.1 + 0.2))],
        rows: vec![row(1041.4), row(520.7), row(0.0)],
        length_mm: 1041.4,
        tip_trimmed_mm: 0.0,
        by: "Wren".into(),
        at: at(8),
    }
}

/// Two marks of a recall on the job's clubs, one of which was cleared.
async fn mark(tx: &mut Tx, job: &Job) {
    let made_of = tx.made_of(&job.clubs[0].id).await.expect("read");
    for (club, code) in [(0, made_of), (1, None)] {
        let club = Some(job.clubs[club].id.clone());
        let (word, by, of) = ("look at the joint".into(), "Wren".into(), RecallOf::Lot { lot: "A 7".into() }.into());
        let mark = ClubMark { id: EventId(new_id()), club, code, word, of, by, at: at(13), cleared: None };
        tx.insert_mark(&mark).await.expect("marked");
        if mark.code.is_none() {
            let cleared = MarkCleared { word: "sound, größer".into(), by: "Jay".into(), at: at(14) };
            tx.clear_mark(&mark.id, &cleared).await.expect("cleared");
        }
    }
}

/// A customer whose the job and its sheet are.
async fn keep_customer(tx: &mut Tx, job: &mut Job) {
    let number = tx.next_customer_number().await.expect("a number");
    let customer = Customer { glove: "ML".into(), grip_diameter_mm: Some(0.1 + 22.7), ..Customer::named("Größe") };
    let row = CustomerRow { number, customer, deleted_at: None, version: 0, saved_at: at(9) };
    tx.insert_customer(&row).await.expect("saved");
    job.sheet.customer = Some(number);
    job.version = tx.save_job(job).await.expect("saved");
    let mut sheet = tx.sheet(&job.sheet_id).await.expect("read").expect("there");
    sheet.sheet.customer = Some(number);
    tx.update_sheet(&sheet, at(9)).await.expect("saved");
}

async fn read(tx: &mut Tx, job: &Job) {
    let readings = [
        reading(job, 0, What::SwingWeight, 0.1 + 0.2),
        reading(job, 0, What::HeadMass, 261.3),
        reading(job, 0, What::ShaftLength, 933.6),
        reading(job, 1, What::Lie, 62.25),
        reading(job, 1, What::Cpm, 312.0),
        Reading { scale: None, typed: String::new(), ..reading(job, 1, What::Done, 0.0) },
    ];
    for (i, reading) in readings.iter().enumerate() {
        tx.append_reading(reading, None, Some(&format!("tablet {i}"))).await.expect("appended");
    }
    let again = Reading { replaces: Some(readings[0].id.clone()), ..reading(job, 0, What::SwingWeight, 41.9) };
    tx.append_reading(&again, None, None).await.expect("appended");
    tx.take_back(&readings[1].id, &Told::verbatim("digits swapped"), "Wren", at(700)).await.expect("noted");
    tx.insist(&readings[3].id, "read three times", "Jay", at(701)).await.expect("noted");
}

async fn learn(tx: &mut Tx, job: &Job) {
    let scatter = Scatter { key: "adhesive.piece".into(), sd: 0.1 + 0.2, prior_sd: 0.25, weight: 3.5, pinned: false };
    let learned = Learned { values: Vec::new(), covariance: Vec::new(), scatter: vec![scatter], ..Learned::default() };
    let (id, by) = (EventId(new_id()), "Jay".into());
    let (cause, job_id, about, reason) = (LearnedCause::Job, Some(job.id.clone()), String::new(), String::new());
    let row = LearnedRow { id, at: at(5), by, cause, job: job_id, about, reason, learned };
    tx.append_learned(&row).await.expect("kept");
    let club = FinishedClub {
        club: job.clubs[0].id.clone(),
        job: job.id.clone(),
        job_number: job.number,
        number: "6".into(),
        head_model: "LARK-2".into(),
        finished_at: at(60),
        target_points: 32.0,
        deviation_points: -0.1 - 0.2,
        band_points: 0.17,
        tolerance_points: 0.5,
        verdict: Verdict::TooClose,
    };
    tx.note_finished(&club).await.expect("kept");
}

async fn look_after_scales(tx: &mut Tx) {
    tx.append_scale_event(&check(100, 200.1), Some("check 1")).await.expect("kept");
    let plan = StudyPlan {
        scale: "mass".into(),
        parts: vec!["H6-1".into()],
        builders: vec!["Ada".into()],
        trials: 1,
        order: vec![StudyStep { builder: 0, trial: 0, part: 0 }],
    };
    let study = StudyRow { id: new_id(), at: at(5), by: "Ada".into(), plan };
    tx.begin_study(&study, Some("study 1")).await.expect("begun");
    let (id, typed, by) = (new_id(), "261.3".into(), "Ada".into());
    let reading = StudyReading { id, study: study.id, place: 0, typed, reading: 261.3, at: at(6), by };
    tx.append_study_reading(&reading, None).await.expect("kept");
}

async fn order(tx: &mut Tx, job: &Job, part: &Part) {
    let number = tx.next_order_number().await.expect("a number");
    let line = OrderLine { ordered_on: date(2025, 10, 2), ..orders::line(number, &[job]) };
    tx.insert_order(&line).await.expect("saved");
    let event = orders::event(OrderStep::Received, 1);
    tx.append_order_event(&line.id, &event, None).await.expect("appended");
    let figures = [FigureChange { field: "mass_g".into(), from: Some(261.3), to: Some(0.1 + 261.3) }];
    let note = LifeNote {
        part: &part.id,
        step: LifeStep::Corrected,
        job: None,
        club: None,
        figures: &figures,
        reason: Some(&Told::verbatim("damp")),
    };
    tx.append_life(note, at(10)).await.expect("noted");
}

/// All that the store's functions say, line by line.
pub async fn everything(store: &Store, schema: i64) -> String {
    let mut tx = store.read().await.expect("a reader");
    let mut all = String::new();
    macro_rules! say {
        ($($what:expr),*) => { $( all.push_str(&format!("{:#?}\n", $what.await.expect("read"))); )* };
    }
    say!(tx.models(None), tx.shop(), tx.sheets(99), tx.jobs(None), tx.batches(None), tx.events(None, 99));
    for job in tx.jobs(None).await.expect("read") {
        say!(tx.holds(&job.id), tx.readings(&job.id), tx.batches(Some(&job.id)), tx.clubs_glued_since(at(0)));
    }
    say!(tx.learned(), tx.learned_rows(99), tx.finished_clubs(), tx.scale_events("mass"), tx.studies());
    for study in tx.studies().await.expect("read") {
        say!(tx.study_readings(&study.id));
    }
    for club in tx.owned_clubs(&ClubFilter::default(), 99).await.expect("read") {
        all.push_str(&format!("{club:#?}\n"));
        say!(tx.club_events(&club.code));
    }
    say!(tx.access_keys());
    say!(tx.marks(true));
    say!(tx.job_kinds(), tx.orders(&OrderFilter::default()), tx.layouts(), tx.customer_lines("", 99));
    for part in tx.parts(&PartFilter::default()).await.expect("read") {
        all.push_str(&format!("{part:#?}\n"));
        // Before there were lives the store of today wrote one, which the schema had no place for.
        if schema >= ORDERS_AND_LIFE {
            say!(tx.life(&part.id));
        }
    }
    all
}

/// The shop goes on where it was, with all that can be kept today.
pub async fn work_goes_on(store: &Store, job: &Job, schema: i64) {
    let mut tx = store.write().await.expect("a writer").signed("Jay");
    let forecast = Some(StoodForecast { value: 41.8, band: 0.35, version: 2 });
    let new = Reading { forecast, ..reading(job, 0, What::SwingWeight, 41.9) };
    tx.append_reading(&new, None, Some("tablet new")).await.expect("appended");
    assert_eq!(tx.reading(&new.id).await.expect("read"), Some(new));
    let number = tx.next_batch_number().await.expect("a number");
    assert_eq!(number, 3, "from schema {schema}");
    let cup = batch(job, number);
    tx.insert_batch(&cup, Some("cup")).await.expect("saved");
    tx.take_back_batch(&cup.id, "the wrong job", "Jay", at(99)).await.expect("noted");
    let mut shaft = tx.part_by_code("S-1").await.expect("read").expect("there");
    shaft.cpm = Some(261.5);
    tx.update_part(&shaft, at(99)).await.expect("saved");
    assert!(
        !tx.append_profile(&shaft.id, &profile(), Some("profile new")).await.expect("kept"),
        "from schema {schema}"
    );
    assert!(
        tx.append_profile(&shaft.id, &profile(), Some("profile new")).await.expect("answered"),
        "from schema {schema}"
    );
    let shaft = tx.part_by_code("S-1").await.expect("read").expect("there");
    assert_eq!(shaft.profile, Some(profile()), "from schema {schema}");
    order(&mut tx, job, &shaft).await;
    let number = tx.next_key_number().await.expect("a number");
    give_key(&mut tx, number).await;
    assert!(tx.withdraw_key(number, at(99), "Jay").await.expect("noted"), "from schema {schema}");
    assert!(!tx.withdraw_key(number, at(99), "Jay").await.expect("noted"), "from schema {schema}");
    let mut job = tx.job(&job.id).await.expect("read").expect("there");
    keep_customer(&mut tx, &mut job).await;
    mark(&mut tx, &job).await;
    tx.put_model(&ferrule_model(), at(99)).await.expect("saved");
    let first = tx.reading_by_request_key("tablet 0").await.expect("read").expect("there");
    let repeated = Reading { id: ReadingId(new_id()), ..first.clone() };
    let repeated = tx.append_reading(&repeated, None, Some("tablet 0")).await.expect("answered");
    assert!(repeated.repeated && repeated.reading.id == first.id, "from schema {schema}");
}

/// What the one field finds is made from the other tables, as they are written.
fn is_made_again(table: &str) -> bool {
    table.starts_with("find_")
}

on_both! {
    async fn a_shop_of_every_earlier_schema_is_carried_over_whole(db: &TestDb) {
        sqlx::any::install_default_drivers();
        let migrations = migrations(db.is_sqlite());
        let newest = *migrations.keys().next_back().expect("migrations");
        assert_eq!(migrations.len(), usize::try_from(newest).expect("few"), "no number is left out");
        let mut conn = AnyConnection::connect(&db.url).await.expect("a connection");
        let emptied = async || db.store.erase().await.expect("erased");
        for schema in 1..newest {
            emptied().await;
            make(&mut conn, &migrations, schema).await;
            let tables = tables(&mut conn, db, &migrations, schema).await;
            emptied().await;
            let today = Store::open(&db.url).await.expect("opened");
            let job = fill(&today, schema).await;
            let expected = everything(&today, schema).await;
            today.close().await;
            let mut saved = Vec::new();
            for table in &tables {
                let rows = rows(&mut conn, db, table).await;
                assert!(!rows.is_empty() || is_made_again(&table.name), "schema {schema}: put something into {} to see what becomes of it", table.name);
                saved.push(rows);
            }
            emptied().await;

            make(&mut conn, &migrations, schema).await;
            for (table, rows) in tables.iter().zip(&saved) {
                // The database counts for itself, from the first row on.
                if matches!(table.name.as_str(), "stock_change" | "data_state") || is_made_again(&table.name) {
                    continue;
                }
                for row in rows {
                    sqlx::raw_sql(AssertSqlSafe(row.as_str())).execute(&mut conn).await.unwrap_or_else(|e| panic!("{row}: {e}"));
                }
            }
            let mut before = Vec::new();
            for table in &tables {
                before.push(rows(&mut conn, db, table).await);
            }
            let carried = Store::open(&db.url).await.unwrap_or_else(|e| panic!("schema {schema}: {e}"));
            assert!(!carried.is_new(), "schema {schema}");
            if let Some(file) = db.url.strip_prefix("sqlite://") {
                // The file as the earlier version left it lies beside, so that this version can be gone back from.
                let copy = Path::new(file).with_file_name(format!("shop.db.before-schema-{newest}"));
                let kept = store::look_into(&copy).await.unwrap_or_else(|e| panic!("schema {schema}: {e}"));
                assert_eq!((kept.schema, kept.jobs), (schema, 1), "schema {schema}");
                std::fs::remove_file(copy).expect("removed");
            }
            for (table, before) in tables.iter().zip(&before).filter(|(table, _)| !is_made_again(&table.name)) {
                assert_eq!(&rows(&mut conn, db, table).await, before, "schema {schema}: {}", table.name);
            }
            assert_eq!(everything(&carried, schema).await, expected, "schema {schema}");
            work_goes_on(&carried, &job, schema).await;
            carried.close().await;
        }
        conn.close().await.expect("closed");
    }
}
