//! The sheet as a user writes it, and the schema that tells how.

use couplings::Sheet;
use serde_json::{Value, json};

fn sheet(text: &Value) -> Result<Sheet, serde_json::Error> {
    serde_json::from_value(text.clone())
}

#[test]
fn a_sheet_comes_back_as_it_was_written() {
    let written = json!({
        "taken_from": "invented sheet for a test",
        "rated_torque": "2.4 kN·m",
        "max_speed": "3600 rpm",
        "torsional_stiffness": "1.5e6 N·m/rad",
        "sizes": { "hub_length": "4 1/8 in", "pack_thickness": "8.5 mm" },
        "gap": { "hub_faces": "3.2 ± 0.4 mm" },
        "allows": { "running": { "offset": "0.30 mm", "angle": "0.25 deg", "axial": "1.5 mm" } },
        "bolts": { "count": 8, "size": "M16", "grade": "8.8", "threads": "dry" },
        "lubricant": { "name": "coupling grease", "mass": "0.45 kg", "months": 12 },
        "masses": { "total": "38 kg" },
    });
    let read = sheet(&written).unwrap();
    assert_eq!(serde_json::to_value(&read).unwrap(), written);
}

#[test]
fn an_empty_sheet_writes_nothing() {
    assert_eq!(serde_json::to_value(Sheet::default()).unwrap(), json!({}));
}

#[test]
fn a_slip_of_the_pen_is_said() {
    for (text, says) in [
        (json!({ "rated_torqe": "2 kN·m" }), "unknown field `rated_torqe`"),
        (json!({ "bolts": { "sise": "M16" } }), "unknown field `sise`"),
        (json!({ "rated_torque": "2 kW" }), "unit of a power"),
        (json!({ "rated_torque": 2400 }), "no unit"),
        (json!({ "bolts": { "threads": "rusty" } }), "unknown variant `rusty`"),
    ] {
        let error = sheet(&text).unwrap_err().to_string();
        assert!(error.contains(says), "{text}: {error}");
    }
}

/// Every field says what to look for in the manual.
#[test]
fn the_schema_describes_every_field() {
    let schema = serde_json::to_value(schemars::schema_for!(Sheet)).unwrap();
    let parts = schema["$defs"].as_object().unwrap();
    let objects = std::iter::once(&schema).chain(parts.values());
    let mut fields = 0;
    for (name, field) in objects.filter_map(|part| part["properties"].as_object()).flatten() {
        assert!(field["description"].is_string(), "{name}: {field}");
        fields += 1;
    }
    assert!(fields > 50, "{fields} fields");
}
