//! The catalogue and its answers as JSON.

use std::fmt;

use quantities::System;
use serde::de::{Deserialize, Deserializer, MapAccess, Visitor};
use serde_json::{Map, Value as Json, json};

use crate::{Answer, Calculation, Outcome, ReckonError, Sort, reckon};

/// Asks a calculation with the inputs of a JSON object, each a text (or several in an array). When
/// `name` is `None` the object names it under "reckon".
///
/// # Errors
/// [`ReckonError`], as [`reckon`]; [`ReckonError::NotJson`] for anything but an object of texts.
pub fn ask_json(name: Option<&str>, case: &str) -> Result<Answer, ReckonError> {
    let Pairs(pairs) = serde_json::from_str(case).map_err(|error| not_json(&error.to_string()))?;
    let named = pairs.iter().find(|(key, _)| key == "reckon").and_then(|(_, value)| value.as_str());
    let name =
        name.or(named).ok_or_else(|| not_json("expected “reckon”, the name of a calculation"))?;
    let mut inputs = Vec::with_capacity(pairs.len());
    for (key, value) in pairs.iter().filter(|(key, _)| key != "reckon") {
        match value {
            Json::String(text) => inputs.push((key.as_str(), text.clone())),
            Json::Number(number) => inputs.push((key.as_str(), number.to_string())),
            Json::Array(parts) => inputs.push((key.as_str(), joined(key, parts)?)),
            _ => return Err(not_json(&format!("“{key}” is no text"))),
        }
    }
    reckon(name, inputs.iter().map(|(key, text)| (*key, text.as_str())))
}

/// An object as it is written: what stands there twice is seen twice.
struct Pairs(Vec<(String, Json)>);

impl<'de> Deserialize<'de> for Pairs {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_map(InOrder)
    }
}

struct InOrder;

impl<'de> Visitor<'de> for InOrder {
    type Value = Pairs;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Pairs, A::Error> {
        let mut pairs = Vec::new();
        while let Some(pair) = object.next_entry()? {
            pairs.push(pair);
        }
        Ok(Pairs(pairs))
    }
}

/// Several texts or numbers as one text, parted by semicolons.
fn joined(key: &str, parts: &[Json]) -> Result<String, ReckonError> {
    let texts = parts.iter().map(|part| match part {
        Json::String(text) => Ok(text.clone()),
        Json::Number(number) => Ok(number.to_string()),
        _ => Err(not_json(&format!("“{key}” holds what is no text"))),
    });
    Ok(texts.collect::<Result<Vec<_>, _>>()?.join("; "))
}

fn not_json(why: &str) -> ReckonError {
    ReckonError::NotJson(why.to_owned())
}

/// One line of JSON for one case: results and working, or the error.
pub fn answer_line(answered: &Result<Answer, ReckonError>) -> String {
    let line = match answered {
        Ok(answer) => {
            let results: Map<String, Json> = answer
                .results
                .iter()
                .map(|(name, outcome)| ((*name).to_owned(), outcome_json(outcome)))
                .collect();
            json!({ "results": results, "working": answer.working })
        }
        Err(error) => json!({ "error": error.to_string() }),
    };
    line.to_string()
}

fn outcome_json(outcome: &Outcome) -> Json {
    match outcome {
        Outcome::Value(value) => json!(value),
        Outcome::Word(word) => json!(word),
        Outcome::Values(values) => json!(values),
        Outcome::Words(words) => json!(words),
    }
}

/// What the catalogue says of a calculation.
pub fn describe(calculation: &Calculation) -> Json {
    let inputs: Vec<Json> = calculation
        .inputs
        .iter()
        .map(|input| {
            let mut out = json!({ "name": input.name, "what": input.what });
            match input.sort {
                Sort::Quantity(kind) | Sort::Quantities(kind) => {
                    out["is"] = json!(kind.dimension().words());
                    out["examples"] = json!(kind.dimension().examples());
                    out["several"] = json!(matches!(input.sort, Sort::Quantities(_)));
                }
                Sort::Choice(words) => out["one_of"] = json!(words),
                Sort::Word => {}
                Sort::Words => out["several"] = json!(true),
            }
            if let Some(default) = input.default {
                out["default"] = json!(default);
            }
            out
        })
        .collect();
    let outputs: Vec<Json> = calculation
        .outputs
        .iter()
        .map(|output| {
            let units = output
                .kind
                .map(|kind| [System::Metric, System::Inch].map(|system| kind.unit(system).name()));
            json!({ "name": output.name, "what": output.what, "units": units })
        })
        .collect();
    json!({
        "name": calculation.name,
        "does": calculation.does,
        "inputs": inputs,
        "outputs": outputs,
        "valid": calculation.valid,
        "source": calculation.source.to_string(),
    })
}
