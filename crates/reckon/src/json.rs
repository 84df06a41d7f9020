//! The catalogue and its answers as JSON.

use std::borrow::Cow;
use std::fmt;

use quantities::{System, Value};
use serde::de::{Deserializer, MapAccess, Visitor};
use serde::ser::{SerializeStruct as _, Serializer};
use serde::{Deserialize, Serialize};
use serde_json::{Value as Json, json};

use crate::{Answer, Calculation, Outcome, ReckonError, Sort, reckon};

/// Asks a calculation with the inputs of a JSON object, each a text (or several in an array). When
/// `name` is `None` the object names it under "reckon".
///
/// # Errors
/// [`ReckonError`], as [`reckon`]; [`ReckonError::NotJson`] for anything but an object of texts.
pub fn ask_json(name: Option<&str>, case: &str) -> Result<Answer, ReckonError> {
    let Pairs(pairs) = serde_json::from_str(case).map_err(|error| not_json(&error.to_string()))?;
    let named = pairs.iter().find(|(key, _)| key == "reckon").map(|(_, told)| told);
    let named = named.and_then(|told| if let Told::Text(text) = told { Some(text) } else { None });
    let name = name
        .or(named.map(AsRef::as_ref))
        .ok_or_else(|| not_json("expected “reckon”, the name of a calculation"))?;
    let mut inputs = Vec::with_capacity(pairs.len());
    for (key, told) in pairs.iter().filter(|(key, _)| key != "reckon") {
        inputs.push((key.as_ref(), told.text(key)?));
    }
    reckon(name, inputs.iter().map(|(key, text)| (*key, text.as_ref())))
}

/// An object as it is written: what stands there twice is seen twice.
struct Pairs<'a>(Vec<(Cow<'a, str>, Told<'a>)>);

/// What stands for one input: mostly a text, which is not copied.
#[derive(Deserialize)]
#[serde(untagged)]
enum Told<'a> {
    #[serde(borrow)]
    Text(Cow<'a, str>),
    Other(Json),
}

impl<'a> Told<'a> {
    fn text(&'a self, key: &str) -> Result<Cow<'a, str>, ReckonError> {
        match self {
            Self::Text(text) => Ok(Cow::Borrowed(text)),
            Self::Other(Json::Number(number)) => Ok(number.to_string().into()),
            Self::Other(Json::Array(parts)) => Ok(joined(key, parts)?.into()),
            Self::Other(_) => Err(not_json(&format!("“{key}” is no text"))),
        }
    }
}

impl<'de> Deserialize<'de> for Pairs<'de> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_map(InOrder)
    }
}

struct InOrder;

impl<'de> Visitor<'de> for InOrder {
    type Value = Pairs<'de>;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Pairs<'de>, A::Error> {
        let mut pairs = Vec::new();
        while let Some((Key(key), told)) = object.next_entry()? {
            pairs.push((key, told));
        }
        Ok(Pairs(pairs))
    }
}

#[derive(Deserialize)]
struct Key<'a>(#[serde(borrow)] Cow<'a, str>);

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
    line(answered, |answer| answer)
}

/// One line of JSON for one case: results alone, as numbers in SI, or the error.
pub fn bare_line(answered: &Result<Answer, ReckonError>) -> String {
    line(answered, |answer| Bare { results: Named(&answer.results, bare) })
}

fn line<'a, T: Serialize>(
    answered: &'a Result<Answer, ReckonError>,
    shown: impl FnOnce(&'a Answer) -> T,
) -> String {
    let told = match answered {
        Ok(answer) => serde_json::to_string(&shown(answer)).map_err(|error| error.to_string()),
        Err(error) => Err(error.to_string()),
    };
    told.unwrap_or_else(|error| json!({ "error": error }).to_string())
}

impl Serialize for Answer {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("Answer", 2)?;
        out.serialize_field("results", &Named(&self.results, |outcome| outcome))?;
        out.serialize_field("working", &self.working)?;
        out.end()
    }
}

/// Results under their names, each as it is wanted.
struct Named<'a, T>(&'a [(&'static str, Outcome)], fn(&'a Outcome) -> T);

impl<T: Serialize> Serialize for Named<'_, T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(name, outcome)| (name, self.1(outcome))))
    }
}

/// An answer without its working.
#[derive(Serialize)]
struct Bare<'a> {
    results: Named<'a, BareOutcome<'a>>,
}

#[derive(Serialize)]
#[serde(untagged)]
enum BareOutcome<'a> {
    Value(BareValue),
    Values(Vec<BareValue>),
    Text(&'a Outcome),
}

#[derive(Serialize)]
struct BareValue {
    si: f64,
    plus_minus: Option<f64>,
}

fn bare(outcome: &Outcome) -> BareOutcome<'_> {
    let number = |value: &Value| BareValue { si: value.si, plus_minus: value.plus_minus };
    match outcome {
        Outcome::Value(value) => BareOutcome::Value(number(value)),
        Outcome::Values(values) => BareOutcome::Values(values.iter().map(number).collect()),
        Outcome::Word(_) | Outcome::Words(_) => BareOutcome::Text(outcome),
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
                    out["examples"] = json!(kind.examples());
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
