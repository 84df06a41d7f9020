//! New entries: their names and their time.

use jiff::Timestamp;
use job::{Act, Entry, EntryId};
use uuid::Uuid;

/// An entry made now by this hand.
///
/// # Example
/// ```
/// let act = job::Act::Note { stage: "lineup".into(), text: "bearing 2 runs warm".into() };
/// let entry = records::new_entry("R.A.", act);
/// assert_eq!(entry.by, "R.A.");
/// ```
pub fn new_entry(by: &str, act: Act) -> Entry {
    Entry { id: next_id(), at: Timestamp::now(), by: by.to_owned(), act }
}

/// A name that no other entry has; later ones sort after earlier ones.
pub fn next_id() -> EntryId {
    EntryId(Uuid::now_v7())
}

/// The time now.
pub fn now() -> Timestamp {
    Timestamp::now()
}
