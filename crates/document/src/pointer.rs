//! JSON pointers (RFC 6901).

use serde_path_to_error::{Path, Segment};

/// The pointer of a path. It ends where the path is no longer known.
pub(crate) fn of(path: &Path) -> String {
    let mut pointer = String::new();
    for segment in path {
        match segment {
            Segment::Seq { index } => pointer.push_str(&format!("/{index}")),
            Segment::Map { key } | Segment::Enum { variant: key } => push(&mut pointer, key),
            Segment::Unknown => break,
        }
    }
    pointer
}

/// The pointer of a field of the object at `path`. A field that is not known is already the end of its path: serde finds
/// it while it reads the name.
pub(crate) fn beside(path: &str, name: &str) -> String {
    let mut pointer = path.to_owned();
    let mut own = String::new();
    push(&mut own, name);
    if !pointer.ends_with(&own) {
        pointer.push_str(&own);
    }
    pointer
}

/// `~` and `/` of a name are written `~0` and `~1`, in this order (RFC 6901, 3).
fn push(pointer: &mut String, name: &str) {
    pointer.push('/');
    pointer.push_str(&name.replace('~', "~0").replace('/', "~1"));
}
