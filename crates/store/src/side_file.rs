//! Files beside a database: their names, private ones, copies, and those that SQLite keeps itself.

use crate::engine::{Connection, query};
use crate::error::StoreError;
use std::fs::{File, OpenOptions};
use std::path::{Path, PathBuf};

/// Copies the database of a connection into an empty file.
pub(crate) async fn copy(conn: &mut Connection<'_>, path: &Path) -> Result<(), sqlx::Error> {
    conn.change(query("VACUUM INTO $1").bind(path.display().to_string())).await.map(|_| ())
}

/// A new file that only its owner may read.
pub(crate) fn new_private(path: &Path) -> std::io::Result<File> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(path)
}

/// The name of a file with something behind it.
pub(crate) fn with_suffix(path: &Path, suffix: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(suffix);
    PathBuf::from(name)
}

pub(crate) fn remove_with_side_files(path: &Path) -> Result<(), StoreError> {
    remove_files(&[path.to_owned()])?;
    remove_side_files(path)
}

/// The files that SQLite keeps beside a database.
pub(crate) fn remove_side_files(path: &Path) -> Result<(), StoreError> {
    remove_files(&[with_suffix(path, "-wal"), with_suffix(path, "-shm")])
}

/// Removes what is there of these files.
pub(crate) fn remove_files(files: &[PathBuf]) -> Result<(), StoreError> {
    for file in files {
        match std::fs::remove_file(file) {
            Err(e) if e.kind() != std::io::ErrorKind::NotFound => {
                return Err(StoreError::CannotOpen { place: file.display().to_string(), problem: e.to_string() });
            }
            _ => {}
        }
    }
    Ok(())
}
