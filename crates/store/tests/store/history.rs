//! An invented history: some 2,000 sets of eight clubs with their parts, batches and readings, made in a few seconds.

use crate::database::TestDb;
use crate::samples::{at, box_of_ferrules, new_id, with_job};
use sqlx::{AnyConnection, Connection, Row};
use std::fmt::Write;

/// Sets of the history.
pub const SETS: i64 = 2000;
/// Clubs of a set.
pub const CLUBS: i64 = 8;
/// Seconds from one set to the next: four a working day.
pub const APART_S: i64 = 21_600;

/// Who reads at the bench, in turn.
pub const BUILDERS: [&str; 3] = ["Wren", "Jay", "Łukasz"];
/// First and last names of which the players are made.
pub const FIRST: [&str; 10] = ["Ada", "Hesper", "Ivo", "Linnea", "Otto", "Pia", "Quentin", "Rosa", "Søren", "Tove"];
pub const LAST: [&str; 20] = [
    "Fenwick",
    "Wainfleet",
    "Farrowby",
    "Harrowgate",
    "Millbrook",
    "Ashdown",
    "Thornbury",
    "Larkrise",
    "Peverell",
    "Quillfeather",
    "Ravenscar",
    "Stonecroft",
    "Umberleigh",
    "Vantongeren",
    "Whitlock",
    "Yarrow",
    "Zellweg",
    "Brindlewood",
    "Copplestone",
    "Dunmere",
];

/// Who plays set `i`, counted from 0.
pub fn player(i: i64) -> String {
    let (i, n) = (i as usize, FIRST.len());
    format!("{} {}", FIRST[i % n], LAST[(i / n) % LAST.len()])
}

/// The lot of the adhesive of set `i`: a tin lasts for 40 sets.
pub fn adhesive_lot(i: i64) -> String {
    format!("D-{}", 100 + i / 40)
}

/// The lot of the head of club `slot` of set `i`: a box lasts for 25 sets.
pub fn head_lot(i: i64, slot: i64) -> String {
    format!("H{slot}-{}", i / 25)
}

/// When set `i` was begun, in seconds of [`at`].
pub fn begun_s(i: i64) -> i64 {
    100_000 + i * APART_S
}

/// Fills a new database; number 1 is a job of two clubs that the store made, the sets follow from number 2.
pub async fn fill(db: &TestDb) {
    let template = with_job(db).await;
    let mut tx = db.write().await;
    tx.insert_part(&box_of_ferrules("RINGS", 1_000_000), at(2)).await.expect("a box");
    let ferrules = tx.part_by_code("RINGS").await.expect("read").expect("there").id.0;
    tx.commit().await.expect("saved");
    sqlx::any::install_default_drivers();
    let mut conn = AnyConnection::connect(&db.url).await.expect("a connection");
    let job = sqlx::query("SELECT sheet_id, sheet_body, steps_body FROM job WHERE number = 1");
    let job = job.fetch_one(&mut conn).await.expect("the job");
    let text = |row: &sqlx::any::AnyRow, column: &str| row.get::<String, _>(column).replace('\'', "''");
    let (sheet_id, sheet, steps) = (text(&job, "sheet_id"), text(&job, "sheet_body"), text(&job, "steps_body"));
    let target = sqlx::query("SELECT target_body FROM job_club ORDER BY slot LIMIT 1");
    let target = text(&target.fetch_one(&mut conn).await.expect("a club"), "target_body");
    assert!(target.contains("\"number\":\"6\""), "{target}");
    assert_eq!(template.number, 1);
    let stamp = |seconds: i64| format!("{:.9}", at(seconds));

    let mut rows = Rows::default();
    let (mut seq, mut hold, mut life) = (10_000, 10_000, 10_000);
    for i in 0..SETS {
        let (number, begun) = (i + 2, begun_s(i));
        let (job, who) = (format!("job-{number}"), player(i));
        let state = if i >= SETS - 4 { "planned" } else { "finished" };
        let made = stamp(begun);
        rows.add(
            "job",
            "id, number, sheet_id, player, due, state, sheet_body, steps_body, made_at, version",
            format!(
                "'{job}', {number}, '{sheet_id}', '{who}', '2027-01-01', '{state}', '{sheet}', '{steps}', '{made}', 0"
            ),
        );
        let batch = format!("batch-{number}");
        let (builder, mixed) = (BUILDERS[i as usize % 3], stamp(begun + 5000));
        rows.add("batch", "id, number, adhesive, lot, bead_mass_fraction, room_k, resin_kg, hardener_kg, beads_kg, given, mixed_at, mixed_by",
            format!("'{batch}', {number}, 'BOND-24', '{}', 0.05, 293.15, 0.006, 0.006, 0.0006, \
                '{{\"bead_share_percent\":5.0,\"room_c\":20.0,\"resin_g\":6.0,\"hardener_g\":6.0,\"beads_g\":0.6}}', '{mixed}', '{builder}'",
                adhesive_lot(i)));
        for slot in 1..=CLUBS {
            let club = format!("club-{number}-{slot}");
            let target = target.replace("\"number\":\"6\"", &format!("\"number\":\"{}\"", slot + 3));
            rows.add(
                "job_club",
                "id, job, slot, card, card_key, target_body, version",
                format!("'{club}', '{job}', {slot}, 'J{number}-{slot}', 'j{number}-{slot}', '{target}', 0"),
            );
            rows.add("batch_club", "batch, place, club", format!("'{batch}', {slot}, '{club}'"));
            for (kind, model, code, lot) in [
                ("head", "LARK-2", format!("H{slot}-{number}"), head_lot(i, slot)),
                ("shaft", "RUSH-110", format!("S{slot}-{number}"), String::new()),
            ] {
                seq += 1;
                let key = code.to_lowercase();
                rows.add("part", "id, seq, code, code_key, kind, model, number, mass_kg, mass_typed, given, lot, place, state, job, club, search, version, saved_at",
                    format!("'p-{code}', {seq}, '{code}', '{key}', '{kind}', '{model}', '6', 0.2613, '261.3 g', '{{\"mass_g\":261.3}}', '{lot}', '', 'used', \
                        '{job}', '{club}', '{key} {lot}', 0, '{made}'"));
                life += 1;
                rows.add(
                    "part_life",
                    "seq, part, step, job, club, figures, reason, done_by, happened_at",
                    format!("{life}, 'p-{code}', 'used', '{job}', '{club}', '[]', '', '{builder}', '{made}'"),
                );
            }
            hold += 1;
            rows.add(
                "part_hold",
                "seq, part, job, club, used, held_at",
                format!("{hold}, '{ferrules}', '{job}', '{club}', 1, '{made}'"),
            );
            for (n, (step, what, scale)) in [
                ("received", "head_mass", "mass"),
                ("dry", "swing_weight", "balance"),
                ("done", "swing_weight", "balance"),
            ]
            .iter()
            .enumerate()
            {
                seq += 1;
                let (unit, mass) = if *scale == "mass" { ("g", "0.2613") } else { ("points", "NULL") };
                let points = if *scale == "mass" { "NULL" } else { "32.1" };
                let read = stamp(begun + 600 * (n as i64 + 1) + slot);
                rows.add("reading", "id, seq, job, club, step, what, unit, value, mass_kg, balance_points, typed, on_club, scale, display_step, read_at, read_by, insisted",
                    format!("'{}', {seq}, '{job}', '{club}', '{step}', '{what}', '{unit}', {}, {mass}, {points}, '', 'head shaft', '{scale}', 0.1, '{read}', '{builder}', 0",
                        new_id(), if *scale == "mass" { "261.3" } else { "32.1" }));
            }
        }
    }
    rows.write(&mut conn).await;
    conn.close().await.expect("closed");
}

/// Rows by table, in the order in which the tables refer to each other.
#[derive(Default)]
struct Rows(Vec<(&'static str, &'static str, Vec<String>)>);

impl Rows {
    fn add(&mut self, table: &'static str, columns: &'static str, values: String) {
        match self.0.iter_mut().find(|(of, ..)| *of == table) {
            Some((.., rows)) => rows.push(values),
            None => self.0.push((table, columns, vec![values])),
        }
    }

    async fn write(mut self, conn: &mut AnyConnection) {
        const ORDER: [&str; 8] =
            ["job", "job_club", "batch", "batch_club", "part", "part_life", "part_hold", "reading"];
        self.0.sort_by_key(|(table, ..)| ORDER.iter().position(|of| of == table));
        let mut tx = conn.begin().await.expect("a transaction");
        for (table, columns, rows) in self.0 {
            for some in rows.chunks(400) {
                let mut sql = format!("INSERT INTO {table} ({columns}) VALUES ");
                for (i, row) in some.iter().enumerate() {
                    // Writing to a string does not fail.
                    let _ = write!(sql, "{}({row})", if i > 0 { ", " } else { "" });
                }
                let done = sqlx::raw_sql(sqlx::AssertSqlSafe(sql)).execute(&mut *tx).await;
                done.unwrap_or_else(|e| panic!("{table}: {e}"));
            }
        }
        tx.commit().await.expect("saved");
    }
}
