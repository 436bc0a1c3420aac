//! The tables of a schema, as the migrations make them: their columns, what those hold, and in which order rows may be written.

pub(crate) use crate::column::Holds;
use crate::engine::{Connection, query};
use crate::error::StoreError;
use crate::schema::{reference, referring_first};

/// A table with its columns, as the migrations make them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Table {
    pub name: String,
    pub columns: Vec<(String, Holds)>,
    /// The columns that put its rows into an order: those that count up first, so that a row stands after one that it refers to.
    pub order: Vec<String>,
}

impl Table {
    /// The names of its columns.
    pub(crate) fn names(&self) -> impl Iterator<Item = &str> {
        self.columns.iter().map(|(name, _)| name.as_str())
    }
}

/// Tables that are made from others, or that count the changes of this one database.
pub(crate) const LEFT_OUT: [&str; 6] =
    ["_sqlx_migrations", "data_state", "stock_change", "find_entry", "find_word", "find_dirty"];

/// The tables of a schema that hold what people entered, each after those that it refers to.
///
/// They are read from an empty database in memory, so no list has to be kept by hand; both databases have the same.
pub(crate) async fn of_schema(place: &str, schema: i64) -> Result<Vec<Table>, StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let mut reference = reference(place, schema).await?;
    let found = tables_of(&mut reference.lend()).await.map_err(failed);
    reference.close().await.map_err(failed)?;
    found
}

async fn tables_of(conn: &mut Connection<'_>) -> Result<Vec<Table>, sqlx::Error> {
    let names = "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite!_%' ESCAPE '!'
                 AND name NOT LIKE 'find!_fts%' ESCAPE '!' ORDER BY name";
    let mut left = Vec::new();
    for row in conn.rows(query(names)).await? {
        left.push(row.get::<String, _>("name")?);
    }
    let mut tables = Vec::new();
    for name in referring_first(conn, left).await?.into_iter().rev().filter(|name| !LEFT_OUT.contains(&name.as_str())) {
        let sql = "SELECT name, type, pk FROM pragma_table_info($1) ORDER BY cid";
        let (mut columns, mut key) = (Vec::new(), Vec::new());
        for row in conn.rows(query(sql).bind(name.as_str())).await? {
            let (column, kind): (String, String) = (row.get("name")?, row.get("type")?);
            let holds = match kind.as_str() {
                "BIGINT" => Holds::Whole,
                "DOUBLE PRECISION" => Holds::Real,
                _ => Holds::Text,
            };
            if row.get::<i64, _>("pk")? > 0 {
                key.push(column.clone());
            }
            columns.push((column, holds));
        }
        // A correction refers to the entry that it replaces, which came before it.
        let counts_up = columns.iter().any(|(column, _)| column == "seq");
        let order = if counts_up { vec!["seq".to_owned()] } else { key };
        tables.push(Table { name, columns, order });
    }
    Ok(tables)
}
