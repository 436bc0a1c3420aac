//! The stiffness readings of shafts: appended to, never changed; the latest set of a shaft counts.

use crate::column::{document, query};
use crate::error::StoreError;
use crate::tx::Tx;
use trade::error::Noun;
use trade::id::PartId;
use trade::stiffness_profile::ShaftProfile;

impl Tx {
    /// Appends a set of stiffness readings to a shaft; one without readings takes those before it back. Returns whether the same
    /// request came before, so that nothing was written.
    ///
    /// # Errors
    /// [`StoreError::Missing`] for an unknown part; [`StoreError::NotStorable`] for a figure that is not a finite number.
    pub async fn append_profile(
        &mut self,
        part: &PartId,
        profile: &ShaftProfile,
        request_key: Option<&str>,
    ) -> Result<bool, StoreError> {
        if let Some(key) = request_key
            && self.any(query("SELECT 1 FROM shaft_profile WHERE request_key = $1").bind(key.to_owned())).await?
        {
            return Ok(true);
        }
        if !self.any(query("SELECT 1 FROM part WHERE id = $1").bind(part.0.clone())).await? {
            return Err(StoreError::Missing { what: Noun::Part, name: part.0.clone() });
        }
        let body = document("the stiffness readings of a shaft", profile)?;
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM shaft_profile")).await?;
        let insert = query("INSERT INTO shaft_profile (seq, part, request_key, body) VALUES ($1, $2, $3, $4)");
        let insert = insert.bind(seq).bind(part.0.clone()).bind(request_key.map(str::to_owned)).bind(body);
        self.change(insert).await?;
        Ok(false)
    }
}
