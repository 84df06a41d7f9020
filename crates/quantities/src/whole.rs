//! A number of things: bolts, months.

use std::fmt;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Deserialize, Deserializer, Serialize};

/// A whole number, written as a number or as text.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(transparent)]
pub struct Whole(pub u32);

impl<'de> Deserialize<'de> for Whole {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Visitor;
        impl serde::de::Visitor<'_> for Visitor {
            type Value = Whole;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a whole number, such as 8")
            }
            fn visit_u64<E: serde::de::Error>(self, number: u64) -> Result<Whole, E> {
                let whole = u32::try_from(number).map(Whole);
                whole.map_err(|_| {
                    E::custom(format!("{number} is too many; expected a whole number, such as 8"))
                })
            }
            fn visit_i64<E: serde::de::Error>(self, number: i64) -> Result<Whole, E> {
                let whole = u32::try_from(number).map(Whole);
                whole.map_err(|_| {
                    E::custom(format!(
                        "{number} is not possible; expected a whole number, such as 8"
                    ))
                })
            }
            fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Whole, E> {
                let whole = text.trim().parse().map(Whole);
                whole.map_err(|_| {
                    E::custom(format!("“{text}” is not a whole number; expected one such as 8"))
                })
            }
        }
        deserializer.deserialize_any(Visitor)
    }
}

impl JsonSchema for Whole {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Whole".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": ["integer", "string"], "minimum": 0, "description": "a whole number" })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_numbers_and_text() {
        let read = |json: &str| serde_json::from_str::<Whole>(json);
        assert_eq!(read("8").unwrap(), Whole(8));
        assert_eq!(read("\" 8 \"").unwrap(), Whole(8));
        for wrong in ["-1", "\"eight\"", "99999999999", "2.5", "true"] {
            assert!(read(wrong).unwrap_err().to_string().contains("whole number"), "{wrong}");
        }
    }
}
