//! The only place with SQL: SQLite or PostgreSQL.
