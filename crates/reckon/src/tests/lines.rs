//! Cases and answers as lines of JSON.

use serde_json::{Value as Json, json};

use super::*;
use crate::{ReckonError, answer_line, ask_json, bare_line};

fn object(case: &Case) -> String {
    let mut object = json!({ "reckon": case.name });
    for (key, text) in case.inputs {
        object[*key] = json!(text);
    }
    object.to_string()
}

/// A case on a line gives the answer that it gives when asked directly, and its line carries every
/// result in full.
#[test]
fn a_line_says_what_the_answer_says() {
    for case in cases::all() {
        let direct = case.answer();
        let asked = ask_json(None, &object(case)).unwrap();
        assert_eq!(asked, direct, "{}", case.name);
        let line = answer_line(&Ok(asked));
        assert!(!line.contains('\n'), "{}", case.name);
        let read: Json = serde_json::from_str(&line).unwrap();
        let results = read["results"].as_object().unwrap();
        assert_eq!(results.len(), direct.results.len(), "{}", case.name);
        for (name, outcome) in &direct.results {
            let found = &results[*name];
            match outcome {
                Outcome::Value(value) => close(&found["si"], value.si, name),
                Outcome::Values(values) => {
                    let found = found.as_array().unwrap();
                    assert_eq!(found.len(), values.len(), "{name}");
                    found
                        .iter()
                        .zip(values)
                        .for_each(|(it, value)| close(&it["si"], value.si, name));
                }
                Outcome::Word(word) => assert_eq!(found, word, "{name}"),
                Outcome::Words(words) => assert_eq!(found, &json!(words), "{name}"),
            }
        }
        assert_eq!(read["working"].as_array().unwrap().len(), direct.working.len());
    }
}

/// To the last digit or two: the reader of this test rounds what was written in full.
fn close(found: &Json, wanted: f64, name: &str) {
    let found = found.as_f64().unwrap();
    assert!(
        (found - wanted).abs() <= 4.0 * f64::EPSILON * wanted.abs(),
        "{name}: {found} {wanted}"
    );
}

#[test]
fn the_name_may_stand_outside_the_line() {
    let inputs = "{\"power\": \"90 kW\", \"speed\": \"1480 rpm\", \"service_factor\": 1.75}";
    let answer = ask_json(Some("torque"), inputs).unwrap();
    assert_eq!(
        answer,
        ask_json(None, &inputs.replacen('{', "{\"reckon\": \"torque\", ", 1)).unwrap()
    );
}

#[test]
fn several_texts_may_stand_in_an_array() {
    let array =
        ask_json(Some("size"), "{\"readings\": [\"80.1 mm\", \"80.3 mm\"], \"spread\": \"1 µm\"}");
    let text = ask_json(Some("size"), "{\"readings\": \"80.1; 80.3 mm\", \"spread\": \"1 µm\"}");
    assert_eq!(array.unwrap(), text.unwrap());
}

/// A bare line has the same results, and nothing else.
#[test]
fn a_bare_line_says_the_same_in_si() {
    for case in cases::all() {
        let asked = Ok(case.answer());
        let [full, bare] = [answer_line(&asked), bare_line(&asked)]
            .map(|line| serde_json::from_str::<Json>(&line).unwrap());
        assert_eq!(bare.as_object().unwrap().len(), 1, "{}", case.name);
        for (name, told) in full["results"].as_object().unwrap() {
            assert_eq!(without_texts(told), bare["results"][name], "{}: {name}", case.name);
        }
    }
    let wrong = ask_json(None, "{\"reckon\": \"torque\", \"power\": \"90 kW\"}");
    assert_eq!(bare_line(&wrong), answer_line(&wrong));
}

fn without_texts(told: &Json) -> Json {
    match told {
        Json::Object(value) => json!({ "si": value["si"], "plus_minus": value["plus_minus"] }),
        Json::Array(all) => all.iter().map(without_texts).collect(),
        text => text.clone(),
    }
}

#[test]
fn an_error_is_the_answer_of_its_line() {
    let line = answer_line(&ask_json(None, "{\"reckon\": \"torque\", \"power\": \"90 kW\"}"));
    assert_eq!(line, "{\"error\":\"torque needs speed: speed of the coupling\"}");
}

#[test]
fn an_input_that_stands_twice_is_an_error() {
    let twice = "{\"power\": \"90 kW\", \"speed\": \"1480 rpm\", \"power\": \"9 kW\"}";
    let answered = ask_json(Some("torque"), twice);
    assert_eq!(answered, Err(ReckonError::Twice("power".to_owned())));
}

#[test]
fn what_is_no_object_is_an_error() {
    for line in ["[]", "3", "\"torque\"", "{", "{\"power\": {}}"] {
        let answered = ask_json(Some("torque"), line);
        assert!(matches!(answered, Err(ReckonError::NotJson(_))), "{line}: {answered:?}");
    }
}
