//! Customers: kept, found, given sheets and jobs, exported, and deleted on request with what must stay.
//!
//! What stays of a deleted customer is the work: jobs, parts, masses and readings, from which the shop has learned and by
//! which a bad lot is found. They say the customer's code where the name stood.

pub use crate::deletion::{Deletion, NameStandsIn};
use crate::known_customer::{CustomerDeed, customer_row};
use crate::look_up::LookUp;
use crate::need::need_name;
use crate::sheet::SheetSummary;
use crate::{App, AppError, load_shop};
use bench::record::Record;
use fact::Refusal;
use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use store::{ClubFilter, CustomerRow, PartFilter, SheetRow, Tx};
use trade::club::Club;
use trade::customer::{Customer, code, name_key, number_of};
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::id::SheetId;
use trade::job::{Job, JobState};
use trade::kind::Hand;
use trade::part::Part;
use trade::sheet::Sheet;
use utoipa::ToSchema;

/// Customers that a list shows at once.
pub const CUSTOMERS_SHOWN: i64 = 200;

/// A customer in a list.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CustomerSummary {
    /// Running number; never given twice.
    pub number: i64,
    /// Code that labels and lists say: `CU-7`.
    pub code: String,
    /// As it stands on sheets and records.
    pub name: String,
    /// The hand they play with; left out where it was not asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hand: Option<Hand>,
    /// How many sheets are theirs, approved or not.
    pub sheets: i64,
    /// How many jobs are theirs, those that are over among them.
    pub jobs: i64,
}

/// A customer with what is theirs.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct CustomerView {
    /// Running number; never given twice.
    pub number: i64,
    /// Code that labels and lists say: `CU-7`.
    pub code: String,
    /// What is known of them.
    pub customer: Customer,
    /// Version to send back with a change.
    pub version: i64,
    /// Their sheets, those saved last first.
    pub sheets: Vec<SheetSummary>,
    /// Their jobs, the latest first.
    pub jobs: Vec<CustomerJob>,
    /// Codes of their own parts that are in the shop or on their way here.
    pub parts: Vec<String>,
}

/// A job of a customer in a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct CustomerJob {
    /// Running number of the job.
    pub number: i64,
    /// When it is, or was, due.
    #[schema(value_type = String, format = Date)]
    pub due: Date,
    /// Where it stands.
    pub state: JobState,
    /// Numbers of its clubs, in the order of the tray.
    pub clubs: Vec<String>,
}

impl From<&Job> for CustomerJob {
    fn from(job: &Job) -> Self {
        let clubs = job.clubs.iter().map(|club| club.target.number.clone()).collect();
        Self { number: job.number, due: job.sheet.due, state: job.state, clubs }
    }
}

/// A name on sheets that belong to no customer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct NameOnSheets {
    /// As it stands on the latest of them.
    pub name: String,
    /// How many sheets carry it.
    pub sheets: i64,
    /// Customers who have this name already.
    pub customers: Vec<i64>,
}

/// Sheets that carry a name, to be given to a customer.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeName {
    /// The name on the sheets.
    pub name: String,
    /// Whose they are; left out: a new customer's of that name.
    #[serde(default)]
    pub customer: Option<i64>,
    /// Who says so.
    #[serde(default)]
    pub by: String,
}

/// Whose a sheet is to be.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GiveSheet {
    /// Number of the customer; none: nobody's, its name stays as it is.
    pub customer: Option<i64>,
    /// Who says so.
    #[serde(default)]
    pub by: String,
}

/// A request to delete a customer.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DeleteCustomer {
    /// Their name, typed again, so that nobody deletes the one beside it.
    pub name: String,
    /// Who deletes.
    pub by: String,
}

/// A job of a customer with its record.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct JobOfCustomer {
    /// Running number of the job.
    pub number: i64,
    /// Where it stands.
    pub state: JobState,
    /// When it was made of its sheet.
    #[schema(value_type = String, format = DateTime)]
    pub made_at: Timestamp,
    /// What was built, with every reading; left out while no part is planned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub record: Option<Record>,
}

/// A sheet of a customer, whole.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct SheetOfCustomer {
    /// Identity.
    pub id: SheetId,
    /// What it asks.
    pub sheet: Sheet,
    /// When it was last saved.
    #[schema(value_type = String, format = DateTime)]
    pub saved_at: Timestamp,
}

/// Everything that is held about a customer, as one document.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct CustomerFile {
    /// Name of the shop that holds it.
    pub shop: String,
    /// When this was made.
    #[schema(value_type = String, format = DateTime)]
    pub made_at: Timestamp,
    /// Number of the customer.
    pub number: i64,
    /// Code that labels and lists say.
    pub code: String,
    /// What is known of them.
    pub customer: Customer,
    /// When that was last changed.
    #[schema(value_type = String, format = DateTime)]
    pub saved_at: Timestamp,
    /// Their sheets, those saved last first.
    pub sheets: Vec<SheetOfCustomer>,
    /// Their jobs with the records, by number.
    pub jobs: Vec<JobOfCustomer>,
    /// Parts that are theirs, those that are gone or in clubs among them.
    pub parts: Vec<Part>,
    /// Clubs that are theirs, with what was read of them.
    pub clubs: Vec<Club>,
    /// Reasons and notes elsewhere that the name was typed into.
    pub name_stands: Vec<NameStandsIn>,
}

impl App {
    /// Customers by name: all, or those of whom each word of a text occurs in code, name or contacts.
    ///
    /// # Errors
    /// What the store says.
    pub async fn customers(&self, text: &str) -> Result<Vec<CustomerSummary>, AppError> {
        let mut tx = self.store.read().await?;
        let lines = tx.customer_lines(text, CUSTOMERS_SHOWN).await?;
        Ok(lines
            .into_iter()
            .map(|line| CustomerSummary {
                number: line.number,
                code: code(line.number),
                name: line.customer.name,
                hand: line.customer.hand,
                sheets: line.sheets,
                jobs: line.jobs,
            })
            .collect())
    }

    /// The numbers of the customers with a name, lowest first; of one customer where it is their code.
    ///
    /// # Errors
    /// No such customer, for a code; what the store says.
    pub async fn customers_named(&self, name: &str) -> Result<Vec<i64>, AppError> {
        let mut tx = self.store.read().await?;
        match number_of(name) {
            Some(number) => Ok(vec![customer_row(&mut tx, number).await?.number]),
            None => Ok(tx.customers_named(name).await?),
        }
    }

    /// A customer with their sheets and jobs.
    ///
    /// # Errors
    /// No such customer, or one who was deleted; what the store says.
    pub async fn customer(&self, number: i64) -> Result<CustomerView, AppError> {
        let mut tx = self.store.read().await?;
        let row = customer_row(&mut tx, number).await?;
        let sheets = tx.sheets_of_customer(number).await?;
        let mut jobs: Vec<CustomerJob> = tx.jobs_of_customer(number).await?.iter().map(CustomerJob::from).collect();
        jobs.reverse();
        let mut summaries = Vec::new();
        for sheet in sheets {
            let job = match &sheet.approved_job {
                Some(job) => tx.job_number(job).await?,
                None => None,
            };
            summaries.push(SheetSummary {
                id: sheet.id,
                player: sheet.sheet.player,
                due: sheet.sheet.due,
                clubs: sheet.sheet.clubs.into_iter().map(|c| c.number).collect(),
                job,
            });
        }
        Ok(CustomerView {
            number,
            code: code(number),
            customer: row.customer,
            version: row.version,
            sheets: summaries,
            jobs,
            parts: tx.parts_here_of(number).await?,
        })
    }

    /// Keeps a new customer.
    ///
    /// # Errors
    /// No name, or a text or figure that cannot be; what the store says.
    pub async fn add_customer(&self, customer: &Customer) -> Result<CustomerView, AppError> {
        let mut tx = self.store.write().await?;
        let number = self.insert_customer(&mut tx, customer).await?;
        tx.commit().await?;
        self.tell(None, "customer");
        self.customer(number).await
    }

    async fn insert_customer(&self, tx: &mut Tx, customer: &Customer) -> Result<i64, AppError> {
        let customer = customer.clone().trimmed();
        customer.check()?;
        let number = tx.next_customer_number().await?;
        let saved_at = self.now();
        tx.insert_customer(&CustomerRow { number, customer, deleted_at: None, version: 0, saved_at }).await?;
        Ok(number)
    }

    /// Changes what is known of a customer. A new name goes onto all their sheets and jobs.
    ///
    /// # Errors
    /// No such customer; a version that is out of date; what [`Self::add_customer`] refuses.
    pub async fn change_customer(
        &self,
        number: i64,
        customer: &Customer,
        version: i64,
    ) -> Result<CustomerView, AppError> {
        let customer = customer.clone().trimmed();
        customer.check()?;
        let mut tx = self.store.write().await?;
        let row = customer_row(&mut tx, number).await?;
        let renamed = row.customer.name != customer.name;
        tx.update_customer(&CustomerRow { customer: customer.clone(), version, ..row }, self.now()).await?;
        if renamed {
            rewrite(&mut tx, number, |sheet| sheet.player.clone_from(&customer.name)).await?;
            for mut club in clubs_of(&mut tx, number).await? {
                club.player.clone_from(&customer.name);
                tx.save_owned_club(&club, self.now()).await?;
            }
        }
        tx.commit().await?;
        self.tell(None, "customer");
        self.customer(number).await
    }

    /// The names on sheets that belong to no customer.
    ///
    /// # Errors
    /// What the store says.
    pub async fn names_on_sheets(&self) -> Result<Vec<NameOnSheets>, AppError> {
        let mut tx = self.store.read().await?;
        let mut found = Vec::new();
        for free in tx.free_names().await? {
            let customers = tx.customers_named(&free.name).await?;
            found.push(NameOnSheets { name: free.name, sheets: free.sheets, customers });
        }
        Ok(found)
    }

    /// Gives all sheets of a name that belong to nobody, and the jobs made from them, to a customer.
    ///
    /// # Errors
    /// No sheet of that name is free; no such customer; what the store says.
    pub async fn take_name(&self, take: &TakeName) -> Result<CustomerView, AppError> {
        let mut tx = self.store.write().await?;
        let sheets = tx.sheets_of_name(&take.name).await?;
        if sheets.is_empty() {
            return Err(AppError::not_found(Noun::Sheet, take.name.trim(), &LookUp::Customers));
        }
        let number = match take.customer {
            Some(number) => number,
            None => {
                let hand = sheets.first().map(|row| row.sheet.hand);
                self.insert_customer(&mut tx, &Customer { hand, ..Customer::named(&take.name) }).await?
            }
        };
        for row in sheets {
            self.give(&mut tx, row, Some(number), &take.by).await?;
        }
        tx.commit().await?;
        self.tell(None, "customer");
        self.customer(number).await
    }

    /// Gives a sheet, and the job that was made from it, to a customer or to nobody.
    ///
    /// # Errors
    /// No such sheet or customer; what the store says.
    pub async fn give_sheet(&self, id: &SheetId, give: &GiveSheet) -> Result<(), AppError> {
        let mut tx = self.store.write().await?;
        let row = crate::sheet::sheet_row(&mut tx, id).await?;
        self.give(&mut tx, row, give.customer, &give.by).await?;
        tx.commit().await?;
        self.tell(None, "customer");
        Ok(())
    }

    async fn give(&self, tx: &mut Tx, mut row: SheetRow, to: Option<i64>, by: &str) -> Result<(), AppError> {
        let name = match to {
            Some(number) => Some(customer_row(tx, number).await?.customer.name),
            None => None,
        };
        let put = |sheet: &mut Sheet| {
            sheet.customer = to;
            if let Some(name) = &name {
                sheet.player.clone_from(name);
            }
        };
        put(&mut row.sheet);
        let saved_at = row.saved_at;
        tx.update_sheet(&row, saved_at).await?;
        let mut of_job = None;
        if let Some(id) = &row.approved_job
            && let Some(mut job) = tx.job(id).await?
        {
            let others = tx.parts_of_job_not_of(&job.id, to).await?;
            if !others.is_empty() {
                return Err(AppError::conflict(CustomerDeed::HoldsTheirParts { job: job.number, codes: others }));
            }
            put(&mut job.sheet);
            tx.save_job(&job).await?;
            of_job = Some(job.id);
        }
        let body = serde_json::json!({ "customer": to, "sheet": row.id.as_str() });
        self.log(tx, of_job.as_ref(), None, EventKind::SheetOfCustomer, by, body).await
    }

    /// Everything that is held about a customer.
    ///
    /// # Errors
    /// No such customer; what the store says.
    pub async fn customer_file(&self, number: i64) -> Result<CustomerFile, AppError> {
        let mut tx = self.store.read().await?;
        let row = customer_row(&mut tx, number).await?;
        let shop = load_shop(&mut tx).await?.name.clone();
        let sheets = tx.sheets_of_customer(number).await?;
        let jobs = tx.jobs_of_customer(number).await?;
        let name_stands = stands(&mut tx, &row.customer.name).await?;
        let parts = tx.parts(&PartFilter { owner: Some(number), ..PartFilter::default() }).await?;
        let clubs = clubs_of(&mut tx, number).await?;
        drop(tx);
        let mut with_records = Vec::new();
        for job in jobs {
            let planned = job.clubs.iter().any(|club| club.plan.is_some());
            let record = if planned { Some(self.record(job.number).await?) } else { None };
            with_records.push(JobOfCustomer { number: job.number, state: job.state, made_at: job.made_at, record });
        }
        Ok(CustomerFile {
            shop,
            made_at: self.now(),
            number,
            code: code(number),
            customer: row.customer,
            saved_at: row.saved_at,
            sheets: sheets
                .into_iter()
                .map(|row| SheetOfCustomer { id: row.id, sheet: row.sheet, saved_at: row.saved_at })
                .collect(),
            jobs: with_records,
            parts,
            clubs,
            name_stands,
        })
    }

    /// What deleting a customer would do. Nothing is changed.
    ///
    /// # Errors
    /// No such customer; what the store says.
    pub async fn deletion(&self, number: i64) -> Result<Deletion, AppError> {
        let mut tx = self.store.read().await?;
        let row = customer_row(&mut tx, number).await?;
        self.deletion_of(&mut tx, &row).await
    }

    async fn deletion_of(&self, tx: &mut Tx, row: &CustomerRow) -> Result<Deletion, AppError> {
        let jobs = tx.jobs_of_customer(row.number).await?;
        let sheets = tx.sheets_of_customer(row.number).await?;
        let (under_way, over): (Vec<_>, Vec<_>) = jobs.iter().partition(|job| JobState::UNDER_WAY.contains(&job.state));
        let count = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
        Ok(Deletion {
            number: row.number,
            code: code(row.number),
            parts_here: tx.parts_here_of(row.number).await?,
            under_way: under_way.iter().map(|job| job.number).collect(),
            sheets_removed: count(sheets.iter().filter(|row| row.approved_job.is_none()).count()),
            jobs_kept: over.iter().map(|job| job.number).collect(),
            clubs_kept: clubs_of(tx, row.number).await?.into_iter().map(|club| club.code.0).collect(),
            other_sheets: count(tx.sheets_of_name(&row.customer.name).await?.len()),
            name_stands: stands(tx, &row.customer.name).await?,
            backup_folder: self.backup_state().folder,
            backup_months: crate::backup::KEPT_MONTHS,
        })
    }

    /// Deletes a customer: their row is emptied, their sheets without a job go, and what was built says their code where the
    /// name stood. Returns what was done.
    ///
    /// # Errors
    /// No such customer; another name than theirs; a job of theirs that is under way; nobody who deletes; what the store
    /// says.
    pub async fn delete_customer(&self, number: i64, request: &DeleteCustomer) -> Result<Deletion, AppError> {
        need_name(&request.by)?;
        let mut tx = self.store.write().await?.signed(&request.by);
        let row = customer_row(&mut tx, number).await?;
        if name_key(&request.name) != name_key(&row.customer.name) {
            let fault = CustomerDeed::OtherName { typed: request.name.trim().to_owned(), customer: number };
            return Err(AppError::Invalid(Refusal::new(&fault).at("name")));
        }
        let deletion = self.deletion_of(&mut tx, &row).await?;
        if !deletion.under_way.is_empty() {
            return Err(AppError::conflict(CustomerDeed::UnderWay { jobs: deletion.under_way }));
        }
        if !deletion.parts_here.is_empty() {
            return Err(AppError::conflict(CustomerDeed::PartsHere { codes: deletion.parts_here }));
        }
        for sheet in tx.sheets_of_customer(number).await? {
            if sheet.approved_job.is_none() {
                tx.remove_sheet(&sheet.id).await?;
            }
        }
        rewrite(&mut tx, number, |sheet| {
            sheet.player = code(number);
            sheet.note = String::new();
        })
        .await?;
        for mut club in clubs_of(&mut tx, number).await? {
            club.player = code(number);
            if club.label.to_lowercase().contains(&row.customer.name.to_lowercase()) {
                club.label.clear();
            }
            tx.save_owned_club(&club, self.now()).await?;
        }
        let emptied = CustomerRow { customer: Customer::default(), deleted_at: Some(self.now()), ..row };
        tx.update_customer(&emptied, self.now()).await?;
        let body = serde_json::json!({ "customer": number });
        self.log(&mut tx, None, None, EventKind::CustomerDeleted, &request.by, body).await?;
        tx.commit().await?;
        // Best effort: a reader at work keeps the log for now; the next checkpoint empties it.
        let _ = self.store.empty_log().await;
        self.tell(None, "customer");
        Ok(deletion)
    }
}

/// The clubs of a customer.
async fn clubs_of(tx: &mut Tx, number: i64) -> Result<Vec<Club>, AppError> {
    Ok(tx.owned_clubs(&ClubFilter { owner: Some(number), ..ClubFilter::default() }, i64::MAX).await?)
}

/// Changes what the sheets and jobs of a customer say of them.
async fn rewrite(tx: &mut Tx, number: i64, put: impl Fn(&mut Sheet)) -> Result<(), AppError> {
    for mut row in tx.sheets_of_customer(number).await? {
        put(&mut row.sheet);
        let saved_at = row.saved_at;
        tx.update_sheet(&row, saved_at).await?;
    }
    for mut job in tx.jobs_of_customer(number).await? {
        put(&mut job.sheet);
        tx.save_job(&job).await?;
    }
    Ok(())
}

async fn stands(tx: &mut Tx, name: &str) -> Result<Vec<NameStandsIn>, AppError> {
    let found = tx.name_stands(name).await?;
    Ok(found.into_iter().map(|(place, entries)| NameStandsIn { place, entries }).collect())
}
