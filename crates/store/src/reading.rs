//! Readings: appended, never changed. What is said of one later stands beside it.

use crate::column::{Columns, Row, finite, kept, query, time_text};
use crate::error::{Saved, StoreError};
use crate::job::Numbered;
use crate::tx::Tx;
use bench::held::Forecasted;
use bench::seal::Sealed;
use desk::club_csv::PlacedReading;
use fact::Told;
use jiff::Timestamp;
use std::collections::BTreeMap;
use trade::error::Noun;
use trade::id::{ClubId, JobId, ReadingId};
use trade::kind::Role;
use trade::reading::{Reading, StoodForecast, Unit, What};

/// What became of an appended reading.
#[derive(Debug, Clone, PartialEq)]
pub struct Appended {
    /// The reading as it is saved; of a repeated request the one that was saved the first time.
    pub reading: Reading,
    /// Version of the club now.
    pub club_version: i64,
    /// Whether the same request came before, so that nothing was written.
    pub repeated: bool,
}

macro_rules! reading_columns {
    () => {
        "SELECT r.id, r.job, r.club, r.step, r.what, r.value, r.unit, r.typed, r.on_club, r.scale, r.display_step,
             r.pivot_m, r.read_at, r.read_by, r.replaces, r.forecast_value, r.forecast_band, r.forecast_version,
             t.why AS taken_back,
             CASE WHEN i.reading IS NULL THEN r.insisted ELSE 1 END AS insisted
         FROM reading r
         LEFT JOIN reading_taken_back t ON t.reading = r.id
         LEFT JOIN reading_insisted i ON i.reading = r.id "
    };
}

impl Tx {
    /// Appends a reading and counts the version of its club up.
    ///
    /// With a `request_key`, the same request that comes again (a tablet that lost the answer) writes nothing and gets
    /// the first reading back, whatever version it expects.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when the club is not at the expected version; [`StoreError::KeyReused`] when the key was
    /// used for another entry; [`StoreError::Missing`] for an unknown club or replaced reading;
    /// [`StoreError::CodeTaken`] when the identity is there already; [`StoreError::NotStorable`] for a figure that is
    /// no number, or a reading that claims to be taken back already.
    pub async fn append_reading(
        &mut self,
        reading: &Reading,
        expected_club_version: Option<i64>,
        request_key: Option<&str>,
    ) -> Result<Appended, StoreError> {
        if let Some(first) = self.reading_by_request(request_key).await? {
            return self.repeated(first, reading).await;
        }
        let what = format!("the reading of {}", reading.what.key());
        let value = finite(&what, reading.value)?;
        let display_step = finite(&what, reading.display_step)?;
        if reading.taken_back.is_some() {
            let problem = "it is marked as taken back; append it, then take it back".to_owned();
            return Err(StoreError::NotStorable { what, problem });
        }
        if let Some(replaced) = &reading.replaces {
            let same_club = query("SELECT 1 FROM reading WHERE id = $1 AND club = $2");
            if !self.any(same_club.bind(replaced.0.clone()).bind(reading.club.0.clone())).await? {
                return Err(StoreError::Missing { what: Noun::EarlierReading, name: replaced.0.clone() });
            }
        }
        if self.any(query("SELECT 1 FROM reading WHERE id = $1").bind(reading.id.0.clone())).await? {
            return Err(StoreError::CodeTaken { code: reading.id.0.clone() });
        }
        let club_version = self.touch_club(&reading.club, &reading.job, expected_club_version).await?;
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM reading")).await?;
        let insert = query(
            "INSERT INTO reading (id, seq, job, club, step, what, unit, value, mass_kg, length_m, balance_points,
                 angle_rad, frequency_hz, typed, on_club, scale, display_step, read_at, read_by, replaces, insisted,
                 request_key, forecast_value, forecast_band, forecast_version, time_s, inertia_kg_m2, pivot_m)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11,
                 $12, $13, $14, $15, $16, $17, $18, $19, $20, $21, $22,
                 $23, $24, $25, $26, $27, $28)",
        );
        let forecast = reading.forecast;
        if let Some(forecast) = forecast {
            finite(&what, forecast.value)?;
            finite(&what, forecast.band)?;
        }
        let si = Si::of(value, reading.unit);
        let on_club: Vec<&str> = reading.on.iter().map(|role| role.key()).collect();
        let insert = insert
            .bind(reading.id.0.clone())
            .bind(seq)
            .bind(reading.job.0.clone())
            .bind(reading.club.0.clone())
            .bind(reading.step.clone())
            .bind(reading.what.key())
            .bind(reading.unit.key())
            .bind(value)
            .bind(si.mass_kg)
            .bind(si.length_m)
            .bind(si.balance_points)
            .bind(si.angle_rad)
            .bind(si.frequency_hz)
            .bind(reading.typed.clone())
            .bind(on_club.join(" "))
            .bind(reading.scale.clone())
            .bind(display_step)
            .bind(time_text(reading.at))
            .bind(reading.by.clone())
            .bind(reading.replaces.as_ref().map(|id| id.0.clone()))
            .bind(i64::from(reading.insisted))
            .bind(request_key.map(str::to_owned))
            .bind(forecast.map(|f| f.value))
            .bind(forecast.map(|f| f.band))
            .bind(forecast.map(|f| f.version))
            .bind(si.time_s)
            .bind(si.inertia_kg_m2)
            .bind(reading.pivot_mm.map(|mm| mm / 1000.0));
        self.change(insert).await?;
        self.seal(&reading.job, Sealed::Reading, reading.id.as_str()).await?;
        Ok(Appended { reading: reading.clone(), club_version, repeated: false })
    }

    /// The reading that was kept for a request key.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn reading_by_request_key(&mut self, request_key: &str) -> Result<Option<Reading>, StoreError> {
        self.reading_by_request(Some(request_key)).await
    }

    async fn reading_by_request(&mut self, request_key: Option<&str>) -> Result<Option<Reading>, StoreError> {
        let Some(request_key) = request_key else { return Ok(None) };
        let lookup = query(concat!(reading_columns!(), "WHERE r.request_key = $1"));
        let row = self.row(lookup.bind(request_key.to_owned())).await?;
        row.as_ref().map(reading_of).transpose()
    }

    async fn repeated(&mut self, first: Reading, again: &Reading) -> Result<Appended, StoreError> {
        let same = first.job == again.job
            && first.club == again.club
            && first.step == again.step
            && first.what == again.what
            && first.unit == again.unit
            && first.value == again.value;
        if !same {
            let saved = Saved::Reading { what: first.what, typed: first.typed.clone() };
            return Err(StoreError::KeyReused { saved });
        }
        let version = query("SELECT version FROM job_club WHERE id = $1").bind(first.club.0.clone());
        let club_version = self.number(version).await?;
        Ok(Appended { reading: first, club_version, repeated: true })
    }

    /// Notes beside a reading that it was wrong; the reading itself stays. Returns the new version of its club.
    ///
    /// # Errors
    /// [`StoreError::Missing`]; [`StoreError::AlreadyTakenBack`].
    pub async fn take_back(&mut self, id: &ReadingId, why: &Told, by: &str, at: Timestamp) -> Result<i64, StoreError> {
        let reading = self.reading_or_missing(id).await?;
        if let Some(why) = reading.taken_back {
            return Err(StoreError::AlreadyTakenBack { why });
        }
        let club_version = self.touch_club(&reading.club, &reading.job, None).await?;
        let why = kept("why a reading was taken back", why)?;
        let note = query("INSERT INTO reading_taken_back (reading, why, said_by, said_at) VALUES ($1, $2, $3, $4)");
        let note = note.bind(id.0.clone()).bind(why).bind(by.to_owned()).bind(time_text(at));
        self.change(note).await?;
        self.seal(&reading.job, Sealed::TakenBack, id.as_str()).await?;
        Ok(club_version)
    }

    /// Notes beside a reading that the builder insists on it though it is doubted. Returns the new version of its club.
    /// Saying so twice changes nothing.
    ///
    /// # Errors
    /// [`StoreError::Missing`].
    pub async fn insist(&mut self, id: &ReadingId, why: &str, by: &str, at: Timestamp) -> Result<i64, StoreError> {
        let reading = self.reading_or_missing(id).await?;
        if reading.insisted {
            let version = query("SELECT version FROM job_club WHERE id = $1").bind(reading.club.0);
            return self.number(version).await;
        }
        let club_version = self.touch_club(&reading.club, &reading.job, None).await?;
        let note = query("INSERT INTO reading_insisted (reading, why, said_by, said_at) VALUES ($1, $2, $3, $4)");
        let note = note.bind(id.0.clone()).bind(why.to_owned()).bind(by.to_owned()).bind(time_text(at));
        self.change(note).await?;
        self.seal(&reading.job, Sealed::StoodBy, id.as_str()).await?;
        Ok(club_version)
    }

    /// All readings of a job in the order of their arrival, those taken back included and marked.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn readings(&mut self, job: &JobId) -> Result<Vec<Reading>, StoreError> {
        let lookup = query(concat!(reading_columns!(), "WHERE r.job = $1 ORDER BY r.seq"));
        let rows = self.rows(lookup.bind(job.0.clone())).await?;
        rows.iter().map(reading_of).collect()
    }

    /// Readings from one time to before another, of a job or of all, each with its job and club, in the order of their arrival;
    /// those taken back included and marked.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn placed_readings(
        &mut self,
        job: Option<&JobId>,
        since: Timestamp,
        until: Timestamp,
    ) -> Result<Vec<PlacedReading>, StoreError> {
        let mut places = BTreeMap::new();
        let clubs = query(
            "SELECT c.id, c.slot, c.target_body, j.number FROM job_club c JOIN job j ON j.id = c.job
             WHERE c.job = $1 OR $1 IS NULL",
        );
        for row in self.rows(clubs.bind(job.map(|job| job.0.clone()))).await? {
            let club: Numbered = row.body("target_body")?;
            places.insert(row.text("id")?, (row.whole("number")?, row.whole("slot")?, club.number));
        }
        let lookup = query(concat!(
            reading_columns!(),
            "WHERE r.read_at >= $1 AND r.read_at < $2 AND (r.job = $3 OR $3 IS NULL) ORDER BY r.seq"
        ));
        let lookup = lookup.bind(time_text(since)).bind(time_text(until)).bind(job.map(|job| job.0.clone()));
        let placed = |row: &Row| {
            let reading = reading_of(row)?;
            let (job, slot, number) = places.get(&reading.club.0).cloned().unwrap_or_default();
            Ok(PlacedReading { job, slot, number, reading })
        };
        self.rows(lookup).await?.iter().map(placed).collect()
    }

    /// How many those are.
    ///
    /// # Errors
    /// The database failed.
    pub async fn count_placed_readings(
        &mut self,
        job: Option<&JobId>,
        since: Timestamp,
        until: Timestamp,
    ) -> Result<i64, StoreError> {
        let count = query(
            "SELECT COUNT(*) FROM reading r WHERE r.read_at >= $1 AND r.read_at < $2 AND (r.job = $3 OR $3 IS NULL)",
        );
        let count = count.bind(time_text(since)).bind(time_text(until));
        self.number(count.bind(job.map(|job| job.0.clone()))).await
    }

    /// Whether anything was read at any bench from a time on.
    ///
    /// # Errors
    /// The database failed.
    pub async fn read_since(&mut self, since: Timestamp) -> Result<bool, StoreError> {
        self.any(query("SELECT 1 FROM reading WHERE read_at >= $1 LIMIT 1").bind(time_text(since))).await
    }

    /// How many readings with a forecast lay in its band, by job, step, quantity and month (UTC), from a time on. Readings
    /// that were taken back, or read again, are left out.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn forecasted(&mut self, since: Timestamp) -> Result<Vec<Forecasted>, StoreError> {
        let lookup = query(
            "SELECT r.job AS job, r.step AS step, r.what AS what, substr(r.read_at, 1, 7) AS month, COUNT(*) AS n,
                 SUM(CASE WHEN ABS(r.value - r.forecast_value) <= r.forecast_band + 1e-9 THEN 1 ELSE 0 END) AS held
             FROM reading r
             WHERE r.read_at >= $1 AND r.forecast_value IS NOT NULL
                 AND NOT EXISTS (SELECT 1 FROM reading_taken_back t WHERE t.reading = r.id)
                 AND NOT EXISTS (SELECT 1 FROM reading n WHERE n.job = r.job AND n.replaces = r.id)
             GROUP BY r.job, r.step, r.what, substr(r.read_at, 1, 7)
             ORDER BY r.job, r.step, r.what",
        );
        let rows = self.rows(lookup.bind(time_text(since))).await?;
        let count = |row: &Row, column| Ok::<_, StoreError>(u32::try_from(row.whole(column)?).unwrap_or(u32::MAX));
        let of = |row: &Row| {
            Ok(Forecasted {
                job: JobId(row.text("job")?),
                step: row.text("step")?,
                what: row.word("what", What::from_key)?,
                month: row.text("month")?,
                held: count(row, "held")?,
                of: count(row, "n")?,
            })
        };
        rows.iter().map(of).collect()
    }

    /// The reading with this identity.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn reading(&mut self, id: &ReadingId) -> Result<Option<Reading>, StoreError> {
        let lookup = query(concat!(reading_columns!(), "WHERE r.id = $1"));
        let row = self.row(lookup.bind(id.0.clone())).await?;
        row.as_ref().map(reading_of).transpose()
    }

    async fn reading_or_missing(&mut self, id: &ReadingId) -> Result<Reading, StoreError> {
        let found = self.reading(id).await?;
        found.ok_or_else(|| StoreError::Missing { what: Noun::Reading, name: id.0.clone() })
    }
}

/// The value in the one SI column that its unit belongs to.
#[derive(Default)]
struct Si {
    mass_kg: Option<f64>,
    length_m: Option<f64>,
    balance_points: Option<f64>,
    angle_rad: Option<f64>,
    frequency_hz: Option<f64>,
    time_s: Option<f64>,
    inertia_kg_m2: Option<f64>,
}

impl Si {
    fn of(value: f64, unit: Unit) -> Self {
        let none = Self::default();
        match unit {
            Unit::Gram => Self { mass_kg: Some(value / 1000.0), ..none },
            Unit::Millimetre => Self { length_m: Some(value / 1000.0), ..none },
            Unit::Points => Self { balance_points: Some(value), ..none },
            Unit::Degree => Self { angle_rad: Some(value.to_radians()), ..none },
            Unit::Cpm => Self { frequency_hz: Some(value / 60.0), ..none },
            Unit::Second => Self { time_s: Some(value), ..none },
            // A kg·cm² is 1e-4 kg·m².
            Unit::KgCm2 => Self { inertia_kg_m2: Some(value * 1e-4), ..none },
            Unit::None => none,
        }
    }
}

fn reading_of(row: &Row) -> Result<Reading, StoreError> {
    let on = row.text("on_club")?.split_whitespace().map(Role::from_key).collect::<Option<Vec<_>>>();
    Ok(Reading {
        id: ReadingId(row.text("id")?),
        job: JobId(row.text("job")?),
        club: ClubId(row.text("club")?),
        step: row.text("step")?,
        what: row.word("what", What::from_key)?,
        value: row.real("value")?,
        unit: row.word("unit", Unit::from_key)?,
        typed: row.text("typed")?,
        on: on.ok_or_else(|| StoreError::Damaged {
            what: "the column “on_club” of a reading".into(),
            problem: "it names something that no club has".into(),
        })?,
        scale: row.maybe_text("scale")?,
        display_step: row.real("display_step")?,
        pivot_mm: row.maybe_real("pivot_m")?.map(|m| m * 1000.0),
        at: row.time("read_at")?,
        by: row.text("read_by")?,
        replaces: row.maybe_text("replaces")?.map(ReadingId),
        taken_back: row.maybe_told("taken_back")?,
        insisted: row.flag("insisted")?,
        forecast: forecast_of(row)?,
    })
}

/// The forecast that stood when a reading came; readings from before it was kept have none.
fn forecast_of(row: &Row) -> Result<Option<StoodForecast>, StoreError> {
    let (value, band) = (row.maybe_real("forecast_value")?, row.maybe_real("forecast_band")?);
    let version = row.maybe_whole("forecast_version")?;
    Ok(value.zip(band).zip(version).map(|((value, band), version)| StoodForecast { value, band, version }))
}
