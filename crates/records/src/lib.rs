//! Where log books are kept: one `SQLite` file, in which entries are added and never changed.
//!
//! [`Records`] opens the file and keeps the books. An entry that was appended is on the disk when
//! [`Records::append`] returns (write-ahead log, synchronous full), so it outlives the program
//! that wrote it. The database itself refuses to change or to remove an entry. Two books of one
//! job come together as the union of their entries.
//!
//! Here is also where time and names of new entries come from ([`new_entry`]); all that computes
//! with entries gets them from outside.
//!
//! Not here: what entries mean (`job`).
#![expect(
    clippy::disallowed_methods,
    reason = "new entries are given their time here, and the database lies on a disk"
)]

mod entry;
mod error;
mod file;
mod id;
mod listed;
mod records;

pub use entry::{new_entry, next_id, now};
pub use error::RecordsError;
pub use file::book_of_file;
pub use id::JobId;
pub use listed::Listed;
pub use records::Records;
