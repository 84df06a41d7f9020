//! Entries: what is added to a log book, and never changed.

use jiff::Timestamp;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// The name of one entry; sorts by the time it was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct EntryId(pub Uuid);

impl JsonSchema for EntryId {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "EntryId".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "format": "uuid" })
    }
}

/// One entry: when, who, and what was done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// Its name.
    pub id: EntryId,
    /// When it was made.
    #[schemars(with = "String")]
    pub at: Timestamp,
    /// Whose hand: initials.
    pub by: String,
    /// What was done.
    pub act: Act,
}

/// What an entry does. A correction is a new entry that names the one it replaces.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Act {
    /// Writes a value at a place of the job, such as "sizes.driver.bore.1.along".
    Write {
        /// The place: keys of the job file joined by dots.
        place: String,
        /// What is written there: text with its unit, a word, yes or no, or a list.
        value: Written,
    },
    /// Writes another value instead of an earlier one.
    Correct {
        /// The entry that is replaced.
        replaces: EntryId,
        /// What stands there now.
        value: Written,
        /// Why.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        why: String,
    },
    /// Takes an earlier entry back; it stays legible.
    Strike {
        /// The entry that no longer counts.
        replaces: EntryId,
        /// Why.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        why: String,
    },
    /// A remark at a stage.
    Note {
        /// The stage's key, such as "lineup".
        stage: String,
        /// The remark.
        text: String,
    },
    /// A step done, or a hold point agreed.
    Tick {
        /// The step: "on.lockout", "off.gap".
        step: String,
    },
}

/// What can be written at a place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(untagged)]
pub enum Written {
    /// Yes or no.
    Flag(bool),
    /// Text, with its unit where it is a quantity.
    Text(String),
    /// Several texts.
    List(Vec<String>),
}

impl Written {
    /// As a reader sees it in the log.
    pub fn shown(&self) -> String {
        match self {
            Self::Flag(true) => "yes".into(),
            Self::Flag(false) => "no".into(),
            Self::Text(text) => text.clone(),
            Self::List(texts) => texts.join(", "),
        }
    }
}

impl From<&str> for Written {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}
