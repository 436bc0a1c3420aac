//! Makes a shop of many years out of a small one: copies each finished job of an SQLite database, with its sheet, clubs,
//! parts, readings, batches, log and what was learned from it, into the past until there are as many readings as asked.
//!
//! `cargo run --release -p store --example multiply -- sqlite:big.db 1000000`
//!
//! For measuring only: nothing is synced to disk, and a break leaves the file useless. `scripts/load-test` calls it.

use sqlx::{AnyPool, AssertSqlSafe, Row};

/// A table, the columns that carry an identity of what is copied, and which of its rows are copied.
struct Copied {
    table: &'static str,
    identities: &'static [&'static str],
    times: &'static [&'static str],
    of: &'static str,
}

const JOBS: &str = "(SELECT id FROM template)";
const CLUBS: &str = "(SELECT c.id FROM job_club c JOIN template t ON t.id = c.job)";
const BATCHES: &str =
    "(SELECT g.batch FROM batch_club g JOIN job_club c ON c.id = g.club JOIN template t ON t.id = c.job)";
const PARTS: &str = "(SELECT p.id FROM part p JOIN template t ON t.id = p.job WHERE p.count IS NULL)";

/// Hours from one job to the next: five jobs on each of 250 days of a year.
const HOURS_A_JOB: i64 = 7;

#[tokio::main]
async fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut arguments = std::env::args().skip(1);
    let (Some(url), Some(wanted)) = (arguments.next(), arguments.next()) else {
        return Err("say the database and the number of readings: multiply sqlite:big.db 1000000".into());
    };
    let wanted: i64 = wanted.parse()?;
    sqlx::any::install_default_drivers();
    let pool = sqlx::any::AnyPoolOptions::new().max_connections(1).connect(&url).await?;
    let of_template = "SELECT COUNT(*) FROM reading r JOIN job j ON j.id = r.job WHERE j.state = 'finished'";
    let (all, each) = (number(&pool, "SELECT COUNT(*) FROM reading").await?, number(&pool, of_template).await?);
    if each == 0 {
        return Err("the database holds no finished job with readings: there is nothing to copy".into());
    }
    let copies = (wanted - all + each - 1).max(0) / each;
    for sql in [
        "PRAGMA journal_mode = OFF".to_owned(),
        "PRAGMA synchronous = OFF".to_owned(),
        "PRAGMA cache_size = -200000".to_owned(),
        "CREATE TEMP TABLE template AS SELECT id FROM job WHERE state = 'finished'".to_owned(),
        format!(
            "CREATE TEMP TABLE copy AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < {copies})
             SELECT i FROM n"
        ),
    ] {
        sqlx::raw_sql(AssertSqlSafe(sql)).execute(&pool).await?;
    }
    let mut tx = pool.begin().await?;
    for copied in tables() {
        let columns: Vec<String> =
            sqlx::query(AssertSqlSafe(format!("SELECT name FROM pragma_table_info('{}')", copied.table)))
                .fetch_all(&mut *tx)
                .await?
                .iter()
                .map(|row| row.try_get(0))
                .collect::<Result<_, _>>()?;
        let values: Vec<String> = columns.iter().map(|c| value(&copied, c, copies)).collect();
        let sql = format!(
            "INSERT INTO {0} ({1}) SELECT {2} FROM copy, {0} x WHERE {3} ORDER BY copy.i DESC",
            copied.table,
            columns.join(", "),
            values.join(", "),
            copied.of
        );
        let done =
            sqlx::query(AssertSqlSafe(sql)).execute(&mut *tx).await.map_err(|e| format!("{}: {e}", copied.table))?;
        println!("{:>10} rows of {}", done.rows_affected(), copied.table);
    }
    tx.commit().await?;
    println!("{} readings", number(&pool, "SELECT COUNT(*) FROM reading").await?);
    pool.close().await;
    Ok(())
}

async fn number(pool: &AnyPool, sql: &'static str) -> Result<i64, sqlx::Error> {
    sqlx::query(sql).fetch_one(pool).await?.try_get(0)
}

/// In the order in which rows refer to each other.
fn tables() -> Vec<Copied> {
    let of = |of: String| -> &'static str { of.leak() };
    let by_job = of(format!("x.job IN {JOBS}"));
    vec![
        Copied {
            table: "sheet",
            identities: &["id", "approved_job"],
            times: &["saved_at"],
            of: of(format!("x.approved_job IN {JOBS}")),
        },
        Copied {
            table: "job",
            identities: &["id", "sheet_id"],
            times: &["made_at"],
            of: of(format!("x.id IN {JOBS}")),
        },
        Copied { table: "job_club", identities: &["id", "job"], times: &[], of: by_job },
        Copied {
            table: "part",
            identities: &["id", "job", "club"],
            times: &["saved_at"],
            of: of(format!("x.id IN {PARTS}")),
        },
        Copied {
            table: "part_life",
            identities: &["part", "job", "club"],
            times: &["happened_at"],
            of: of(format!("x.part IN {PARTS}")),
        },
        Copied { table: "part_hold", identities: &["job", "club"], times: &["held_at"], of: by_job },
        Copied { table: "reading", identities: &["id", "job", "club", "replaces"], times: &["read_at"], of: by_job },
        Copied { table: "batch", identities: &["id"], times: &["mixed_at"], of: of(format!("x.id IN {BATCHES}")) },
        Copied {
            table: "batch_club",
            identities: &["batch", "club"],
            times: &[],
            of: of(format!("x.club IN {CLUBS}")),
        },
        Copied { table: "event", identities: &["id", "job", "club"], times: &["happened_at"], of: by_job },
        Copied { table: "learned", identities: &["id", "job"], times: &["happened_at"], of: by_job },
        Copied { table: "finished_club", identities: &["club", "job"], times: &["finished_at"], of: by_job },
        Copied {
            table: "scale_event",
            identities: &["id", "job"],
            times: &["happened_at", "kept_at"],
            // Some three checks a day. What was checked beside a job is the job's own reading and would be there twice.
            of: "x.kind = 'check' AND x.job IS NULL AND x.seq % 30 = 0",
        },
    ]
}

/// A time so long before as the copy's number says.
fn before(column: &str) -> String {
    format!(
        "strftime('%Y-%m-%dT%H:%M:%S', {column}, '-' || (copy.i * {HOURS_A_JOB} * (SELECT COUNT(*) FROM template)) || ' hours') || '.000000000Z'"
    )
}

/// What a column of a copy holds.
fn value(copied: &Copied, column: &str, copies: i64) -> String {
    if copied.identities.contains(&column) {
        return format!("x.{column} || '/' || copy.i");
    }
    if copied.times.contains(&column) {
        return before(&format!("x.{column}"));
    }
    match (copied.table, column) {
        // What is older came earlier: numbers below nothing keep that order and meet none that is there.
        (_, "seq") => format!("x.seq - copy.i * (1 + (SELECT MAX(seq) FROM {}))", copied.table),
        ("job" | "batch", "number") => {
            format!("x.number + (SELECT MAX(number) FROM {}) * ({copies} - copy.i + 1)", copied.table)
        }
        ("finished_club", "job_number") => {
            format!("x.job_number + (SELECT MAX(number) FROM job) * ({copies} - copy.i + 1)")
        }
        ("job_club" | "part", "card" | "code" | "card_key" | "code_key") => format!("x.{column} || '-' || copy.i"),
        (_, "request_key") => "NULL".to_owned(),
        // The whole of an event is a document, which says again whose it is and when it was.
        ("scale_event", "day") => format!("substr({}, 1, 10)", before("x.happened_at")),
        ("scale_event", "body") => {
            let (at, kept) = (before("x.happened_at"), before("x.kept_at"));
            format!(
                "json_set(x.body, '$.id', x.id || '/' || copy.i, '$.at', {at}, '$.kept_at', {kept},
                     '$.day', substr({at}, 1, 10))"
            )
        }
        _ => format!("x.{column}"),
    }
}
