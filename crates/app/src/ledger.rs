//! The ledger of a job, and its record held against the chain of its seals.

use crate::{App, AppError};
use bench::ledger::{Ledger, ledger};
use bench::seal::{Chain, PRINTED_DIGITS, Verified, printed_end};

fact::facts! {
    /// What is refused of a seal.
    pub(crate) enum SealRefusal: "seal_refusal" {
        /// Too few digits of a printed end, or no digits.
        ShortEnd { digits: usize },
    }
}

/// The reasons and remarks in the document of an entry of the log.
fn reason_of(body: &str) -> Option<String> {
    let body: serde_json::Value = serde_json::from_str(body).ok()?;
    let said = ["reason", "why", "note", "word"].iter().find_map(|key| body.get(key)?.as_str())?;
    (!said.trim().is_empty()).then(|| said.to_owned())
}

impl App {
    /// The ledger of a job as it stands now.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub async fn ledger(&self, number: i64) -> Result<Ledger, AppError> {
        // The chain first: what comes in between is in the record and not yet in the chain.
        let chain = self.chain(number).await?;
        let file = self.job_file(number).await?;
        Ok(ledger(file.record()?, &chain, &file.library, &reason_of))
    }

    /// Holds the record of a job against the chain of its seals. `printed` is the end that a printed ledger shows, or at least its
    /// first digits.
    ///
    /// # Errors
    /// No such job; too few digits, or no digits; what the store says.
    pub async fn verify_record(&self, number: i64, printed: Option<&str>) -> Result<Verified, AppError> {
        let printed = match printed {
            Some(typed) => Some(
                printed_end(typed)
                    .ok_or_else(|| AppError::invalid(SealRefusal::ShortEnd { digits: PRINTED_DIGITS }))?,
            ),
            None => None,
        };
        Ok(self.chain(number).await?.verify(printed.as_deref()))
    }

    /// The chain of a job; an unknown one is told of in the words of all pages.
    async fn chain(&self, number: i64) -> Result<Chain, AppError> {
        let mut tx = self.store.read().await?;
        crate::order::job_of(&mut tx, number).await?;
        Ok(tx.chain(number).await?)
    }

    /// The same of every job, by its number.
    ///
    /// # Errors
    /// What the store says.
    pub async fn verify_records(&self) -> Result<Vec<Verified>, AppError> {
        let numbers = self.store.read().await?.job_numbers().await?;
        let mut found = Vec::new();
        for number in numbers {
            // One at a time, so that a shop of many years needs no memory for all of its readings.
            found.push(self.store.read().await?.chain(number).await?.verify(None));
        }
        Ok(found)
    }
}
