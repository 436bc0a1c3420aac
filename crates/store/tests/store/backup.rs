//! Goal: a copy made while the shop is in use holds all that was acknowledged; a damaged one is never put back; what is put back
//! is whole, and nothing of the shop before is lost or mixed into it.
//! Method: files in temporary folders, a writer beside the copying, bits turned in a copy, and the log that a killed program
//! leaves, made by copying the side files of an open database.

use crate::refused_words;
use crate::samples::{add_job, reading, stock_models};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicI64, Ordering};
use store::{Contents, ShopFile, Store, StoreError, look_into};
use trade::job::Job;
use trade::reading::What;

struct Place {
    folder: tempfile::TempDir,
    file: PathBuf,
    url: String,
}

impl Place {
    fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("shop.db");
        let url = format!("sqlite://{}", file.display());
        Self { folder, file, url }
    }

    fn beside(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn shop(&self) -> ShopFile {
        ShopFile::of(&self.url).expect("an address").expect("a file")
    }

    fn names(&self) -> Vec<String> {
        let files = std::fs::read_dir(self.folder.path()).expect("the folder");
        let mut names: Vec<String> =
            files.map(|file| file.expect("a file").file_name().to_string_lossy().into_owned()).collect();
        names.sort();
        names
    }
}

async fn with_job(store: &Store) -> Job {
    let mut tx = store.write().await.expect("begun");
    stock_models(&mut tx).await;
    let job = add_job(&mut tx, &["6", "7"]).await;
    tx.commit().await.expect("committed");
    job
}

async fn read(store: &Store, job: &Job) {
    let mut tx = store.write().await.expect("begun");
    tx.append_reading(&reading(job, 0, What::SwingWeight, 41.7), None, None).await.expect("appended");
    tx.commit().await.expect("committed");
}

fn counted(contents: &Contents) -> (i64, i64, i64) {
    (contents.sheets, contents.jobs, contents.readings)
}

/// The whole way: a copy beside a writer that does not stop; every reading that was acknowledged before is in it.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_copy_made_while_others_write_holds_what_was_acknowledged() {
    let place = Place::new();
    let store = Store::open(&place.url).await.expect("made");
    let job = with_job(&store).await;
    let (stop, acknowledged) = (Arc::new(AtomicBool::new(false)), Arc::new(AtomicI64::new(0)));
    let writing = {
        let (store, job, stop, acknowledged) =
            (store.clone(), job.clone(), Arc::clone(&stop), Arc::clone(&acknowledged));
        tokio::spawn(async move {
            while !stop.load(Ordering::SeqCst) {
                read(&store, &job).await;
                acknowledged.fetch_add(1, Ordering::SeqCst);
            }
        })
    };
    for copy in 0..5 {
        while acknowledged.load(Ordering::SeqCst) < 10 * (copy + 1) {
            tokio::task::yield_now().await;
        }
        let before = acknowledged.load(Ordering::SeqCst);
        let copied = store.copy_to(&place.beside(&format!("copy-{copy}.db"))).await.expect("copied");
        let after = acknowledged.load(Ordering::SeqCst);
        // One more may be saved and not acknowledged yet.
        assert!((before..=after + 1).contains(&copied.contents.readings), "{before} {copied:?} {after}");
        assert_eq!(look_into(&copied.path).await.expect("good"), copied.contents);
        assert!(copied.bytes > 4096 && copied.contents.last_reading_at.is_some());
    }
    stop.store(true, Ordering::SeqCst);
    writing.await.expect("the writer");
    // A name that is taken is not written over.
    let taken = place.beside("copy-0.db");
    assert!(matches!(store.copy_to(&taken).await, Err(StoreError::CannotOpen { .. })));
    store.close().await;
    // Nothing is left beside the copies but the shop.
    assert!(place.names().iter().all(|name| name == "shop.db" || name.starts_with("copy-")), "{:?}", place.names());
}

#[cfg(unix)]
#[tokio::test]
async fn only_its_owner_may_read_a_copy() {
    use std::os::unix::fs::PermissionsExt;
    let place = Place::new();
    let store = Store::open(&place.url).await.expect("made");
    let copied = store.copy_to(&place.beside("copy.db")).await.expect("copied");
    let rights = |path: &Path| std::fs::metadata(path).expect("there").permissions().mode() & 0o777;
    assert_eq!(rights(&copied.path), 0o600);
    store.close().await;
    place.shop().replace_with(&copied.path, &place.beside("aside.db")).await.expect("put back");
    assert_eq!(rights(&place.file), 0o600);
}

/// Two pasts: what was entered after the copy, and the log that a killed program left. Neither gets into what is put back.
#[tokio::test]
async fn what_is_put_back_is_the_copy_and_nothing_else() {
    let place = Place::new();
    let store = Store::open(&place.url).await.expect("made");
    let job = with_job(&store).await;
    read(&store, &job).await;
    let copied = store.copy_to(&place.beside("copy.db")).await.expect("copied");
    for _ in 0..40 {
        read(&store, &job).await;
    }
    // In use: nothing is changed.
    let shop = place.shop();
    let refused = shop.replace_with(&copied.path, &place.beside("aside.db")).await.expect_err("it is open");
    assert!(matches!(refused, StoreError::InUseElsewhere { .. }), "{refused}");
    assert_eq!(store.contents().await.expect("counted").readings, 41);
    // The log of a program that was killed lies beside the file.
    let (wal, shm) = (place.beside("shop.db-wal"), place.beside("shop.db-shm"));
    assert!(std::fs::metadata(&wal).expect("a log").len() > 0);
    let log = [(wal, place.beside("kept-wal")), (shm, place.beside("kept-shm"))];
    for (from, to) in &log {
        std::fs::copy(from, to).expect("kept");
    }
    let killed = place.beside("kept.db");
    std::fs::copy(&place.file, &killed).expect("kept");
    store.close().await;
    std::fs::copy(&killed, &place.file).expect("put there");
    for (to, from) in &log {
        std::fs::copy(from, to).expect("put there");
    }

    let aside = place.beside("aside.db");
    let contents = shop.replace_with(&copied.path, &aside).await.expect("put back");
    assert_eq!(counted(&contents), (1, 1, 1));
    let store = Store::open_existing(&place.url).await.expect("opened");
    assert_eq!(store.contents().await.expect("counted"), copied.contents);
    assert!(store.damage(true).await.expect("looked").is_empty());
    store.close().await;
    // What was there before is kept whole, with what its log still held.
    assert_eq!(look_into(&aside).await.expect("good").readings, 41);
}

#[tokio::test]
async fn where_no_shop_is_a_copy_is_put_and_an_old_log_goes() {
    let place = Place::new();
    let store = Store::open(&place.url).await.expect("made");
    with_job(&store).await;
    let copied = store.copy_to(&place.beside("copy.db")).await.expect("copied");
    store.close().await;
    std::fs::remove_file(&place.file).expect("lost");
    std::fs::write(place.beside("shop.db-wal"), "a log of another past").expect("left");
    place.shop().replace_with(&copied.path, &place.beside("aside.db")).await.expect("put back");
    assert!(!place.beside("aside.db").exists() && !place.beside("shop.db-wal").exists());
    let store = Store::open_existing(&place.url).await.expect("opened");
    assert_eq!(store.contents().await.expect("counted"), copied.contents);
}

/// One bit, then a whole page, then the end: whatever is found, the shop stays.
#[tokio::test]
async fn a_damaged_copy_is_never_put_back() {
    let place = Place::new();
    let store = Store::open(&place.url).await.expect("made");
    let job = with_job(&store).await;
    for _ in 0..30 {
        read(&store, &job).await;
    }
    let copied = store.copy_to(&place.beside("copy.db")).await.expect("copied");
    store.close().await;
    let whole = std::fs::read(&copied.path).expect("read");
    let shop = std::fs::read(&place.file).expect("read");
    let mut refused = 0;
    // Every page in turn; what lies unused in a page may be turned without harm.
    for page in 0..whole.len() / 4096 {
        let mut torn = whole.clone();
        torn[page * 4096..page * 4096 + 64].iter_mut().for_each(|byte| *byte ^= 0x5a);
        std::fs::write(&copied.path, torn).expect("written");
        let answer = place.shop().replace_with(&copied.path, &place.beside("aside.db")).await;
        if let Err(error) = answer {
            let known = matches!(
                error,
                StoreError::Torn { .. }
                    | StoreError::NotADatabase { .. }
                    | StoreError::NotOurs { .. }
                    | StoreError::NoShop { .. }
                    | StoreError::Disk { .. }
                    | StoreError::Database { .. }
            );
            assert!(known && !refused_words(&error).is_empty(), "page {page}: {error:?}");
            assert_eq!(std::fs::read(&place.file).expect("read"), shop, "page {page}");
            refused += 1;
        } else {
            panic!("page {page} was put back though it is torn");
        }
    }
    assert!(refused > 20, "{refused}");
    std::fs::write(&copied.path, &whole[..whole.len() / 2]).expect("written");
    assert!(look_into(&copied.path).await.is_err(), "half a copy");
    std::fs::write(&copied.path, "not a shop").expect("written");
    assert!(matches!(look_into(&copied.path).await, Err(StoreError::NotADatabase { .. })));
    std::fs::write(&copied.path, "").expect("written");
    assert!(matches!(look_into(&copied.path).await, Err(StoreError::NoShop { .. })));
    assert!(matches!(look_into(&place.beside("nowhere.db")).await, Err(StoreError::CannotOpen { .. })));
}

#[tokio::test]
async fn a_shop_in_memory_has_no_file_to_copy() {
    let store = Store::open("sqlite::memory:").await.expect("made");
    let folder = tempfile::tempdir().expect("a folder");
    let refused = store.copy_to(&folder.path().join("copy.db")).await.expect_err("no file");
    assert!(matches!(refused, StoreError::OnServer { .. }), "{refused}");
    assert_eq!(std::fs::read_dir(folder.path()).expect("a folder").count(), 0);
}
