//! Models, and who uses them.

use crate::column::{Columns, document, key, query, time_text};
use crate::error::ModelUser;
use crate::error::StoreError;
use crate::remembered::{library, texts};
use crate::tx::Tx;
use jiff::Timestamp;
use std::collections::BTreeSet;
use std::sync::Arc;
use trade::error::Noun;
use trade::model::{Library, Model, PartKind};
use trade::sheet::{Sheet, SheetClub};

/// What can name a model.
#[derive(Debug, Clone, Copy)]
pub(crate) enum UsedBy {
    Shop,
    Model,
    Sheet,
    Job,
}

impl UsedBy {
    const fn key(self) -> &'static str {
        match self {
            Self::Shop => "shop",
            Self::Model => "model",
            Self::Sheet => "sheet",
            Self::Job => "job",
        }
    }
}

impl Tx {
    /// Saves a model, in place of the one with the same code. Returns its version: 1 when it is new, then one more
    /// with every change.
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`] when the code belongs to a model of another kind, or differs from an existing one only
    /// by capitals; [`StoreError::NotStorable`] for a figure that is no number.
    pub async fn put_model(&mut self, model: &Model, now: Timestamp) -> Result<i64, StoreError> {
        let body = document(&format!("the model “{}”", model.code()), model)?;
        let taken = query("SELECT code FROM model WHERE code_key = $1 AND (code <> $2 OR kind <> $3)")
            .bind(key(model.code()))
            .bind(model.code().to_owned())
            .bind(model.kind().key());
        if let Some(row) = self.row(taken).await? {
            return Err(StoreError::CodeTaken { code: row.text("code")? });
        }
        let upsert = query(
            "INSERT INTO model (code, code_key, kind, name, body, version, saved_at) VALUES ($1, $2, $3, $4, $5, 1, $6)
             ON CONFLICT (code) DO UPDATE SET name = excluded.name, body = excluded.body,
                 version = model.version + 1, saved_at = excluded.saved_at",
        );
        let upsert = upsert
            .bind(model.code().to_owned())
            .bind(key(model.code()))
            .bind(model.kind().key())
            .bind(model.name().to_owned())
            .bind(body)
            .bind(time_text(now));
        self.change(upsert).await?;
        let fits = match model {
            Model::Adapter(adapter) => Some(adapter.fits_head_model.as_str()),
            _ => None,
        };
        self.replace_model_uses(UsedBy::Model, model.code(), fits).await?;
        self.number(query("SELECT version FROM model WHERE code = $1").bind(model.code().to_owned())).await
    }

    /// The model with this code. Capitals do not matter.
    ///
    /// # Errors
    /// The database failed, or the document in it is damaged.
    pub async fn model(&mut self, code: &str) -> Result<Option<Model>, StoreError> {
        let row = self.row(query("SELECT body FROM model WHERE code_key = $1").bind(key(code))).await?;
        row.map(|row| row.body("body")).transpose()
    }

    /// All models, or those of a kind, by code.
    ///
    /// # Errors
    /// The database failed, or a document in it is damaged.
    pub async fn models(&mut self, kind: Option<PartKind>) -> Result<Vec<Model>, StoreError> {
        let rows = match kind {
            Some(kind) => {
                self.rows(query("SELECT body FROM model WHERE kind = $1 ORDER BY code_key").bind(kind.key())).await?
            }
            None => self.rows(query("SELECT body FROM model ORDER BY code_key")).await?,
        };
        rows.iter().map(|row| row.body("body")).collect()
    }

    /// All models, to look up by code. Made anew only where some model's text is another than the last time.
    ///
    /// # Errors
    /// The database failed, or a document in it is damaged.
    pub async fn library(&mut self) -> Result<Arc<Library>, StoreError> {
        let rows = self.rows(query("SELECT body FROM model ORDER BY code_key")).await?;
        self.remembered().library.of(texts(&rows, "body")?, library)
    }

    /// Removes a model that nothing names.
    ///
    /// # Errors
    /// [`StoreError::InUse`] while parts, sheets, jobs, batches, other models or the shop name it;
    /// [`StoreError::Missing`] when there is none.
    pub async fn remove_model(&mut self, code: &str) -> Result<(), StoreError> {
        let row = self.row(query("SELECT code FROM model WHERE code_key = $1").bind(key(code))).await?;
        let Some(row) = row else { return Err(StoreError::Missing { what: Noun::Model, name: code.to_owned() }) };
        let code = row.text("code")?;
        let counts = query(
            "SELECT 'part' AS used_by, COUNT(*) AS times FROM part WHERE model = $1
             UNION ALL SELECT 'batch', COUNT(*) FROM batch WHERE adhesive = $1
             UNION ALL SELECT 'order', COUNT(*) FROM part_order WHERE model = $1
             UNION ALL SELECT 'order', COUNT(*) FROM part_order_event WHERE model = $1
             UNION ALL SELECT used_by, COUNT(*) FROM model_use WHERE model = $2 GROUP BY used_by",
        );
        let mut users = Vec::new();
        for row in self.rows(counts.bind(code.clone()).bind(key(&code))).await? {
            let (used_by, times) = (row.text("used_by")?, row.whole("times")?);
            match (used_by.as_str(), times) {
                (_, 0) => {}
                ("shop", _) => users.push(ModelUser::Shop),
                ("batch", n) => users.push(ModelUser::Batches { n }),
                ("part", n) => users.push(ModelUser::Parts { n }),
                ("job", n) => users.push(ModelUser::Jobs { n }),
                ("sheet", n) => users.push(ModelUser::Sheets { n }),
                ("order", n) => users.push(ModelUser::Orders { n }),
                ("model", n) => users.push(ModelUser::Models { n }),
                (name, n) => users.push(ModelUser::Other { n, name: name.to_owned() }),
            }
        }
        if !users.is_empty() {
            return Err(StoreError::InUse { code, users });
        }
        self.replace_model_uses(UsedBy::Model, &code, None).await?;
        self.change(query("DELETE FROM model WHERE code = $1").bind(code)).await?;
        Ok(())
    }

    /// The code of a model as it was saved, for a row that refers to it.
    pub(crate) async fn model_code(&mut self, code: &str) -> Result<String, StoreError> {
        match self.row(query("SELECT code FROM model WHERE code = $1").bind(code.to_owned())).await? {
            Some(row) => row.text("code"),
            None => Err(StoreError::Missing { what: Noun::Model, name: code.to_owned() }),
        }
    }

    /// Notes that a document names exactly these models.
    pub(crate) async fn replace_model_uses(
        &mut self,
        used_by: UsedBy,
        user_id: &str,
        models: impl IntoIterator<Item = &str>,
    ) -> Result<(), StoreError> {
        let clear = query("DELETE FROM model_use WHERE used_by = $1 AND user_id = $2");
        self.change(clear.bind(used_by.key()).bind(user_id.to_owned())).await?;
        self.add_model_uses(used_by, user_id, models).await
    }

    /// Notes that a document names these models too.
    pub(crate) async fn add_model_uses(
        &mut self,
        used_by: UsedBy,
        user_id: &str,
        models: impl IntoIterator<Item = &str>,
    ) -> Result<(), StoreError> {
        for model in models.into_iter().map(key).collect::<BTreeSet<_>>() {
            let add =
                query("INSERT INTO model_use (model, used_by, user_id) VALUES ($1, $2, $3) ON CONFLICT DO NOTHING");
            self.change(add.bind(model).bind(used_by.key()).bind(user_id.to_owned())).await?;
        }
        Ok(())
    }
}

/// The models that a club of a sheet names.
pub(crate) fn models_of_club(club: &SheetClub) -> impl Iterator<Item = &str> {
    [&club.head_model, &club.shaft_model, &club.grip_model]
        .into_iter()
        .chain(&club.ferrule_model)
        .chain(&club.adhesive)
        .chain(&club.tape)
        .map(String::as_str)
}

/// The models that a sheet names.
pub(crate) fn models_of_sheet(sheet: &Sheet) -> impl Iterator<Item = &str> {
    let reference = sheet.reference.iter().filter_map(|r| r.grip_model.as_deref());
    sheet.clubs.iter().flat_map(models_of_club).chain(reference)
}
