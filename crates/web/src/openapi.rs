//! What the HTTP interface says of itself: `OpenAPI` 3.1.

use serde_json::{Value as Json, json};

/// The document.
pub(crate) fn document() -> Json {
    json!({
        "openapi": "3.1.0",
        "info": {
            "title": "Hubwright",
            "version": env!("CARGO_PKG_VERSION"),
            "description": "Jobs, their plans and their log books. Quantities are text with units. \
                            An entry is added, never changed: to correct one, enter another that \
                            names it."
        },
        "paths": {
            "/api/openapi.json": {
                "get": { "summary": "This document", "responses": { "200": answer("The document", &json!({ "type": "object" })) } }
            },
            "/api/reckon": {
                "get": {
                    "summary": "The catalogue of calculations",
                    "responses": { "200": answer("The calculations", &json!({ "type": "array", "items": reference("Calculation") })) }
                }
            },
            "/api/reckon/{name}": {
                "get": {
                    "summary": "What the catalogue says of one calculation",
                    "parameters": [name()],
                    "responses": { "200": answer("The calculation", &reference("Calculation")), "404": error("There is no such calculation") }
                },
                "post": {
                    "summary": "Asks one calculation",
                    "parameters": [name()],
                    "requestBody": {
                        "required": true,
                        "content": { "application/json": { "schema": {
                            "type": "object", "description": "Inputs by name, each a text with its unit, or several in an array",
                            "additionalProperties": { "anyOf": [{ "type": ["string", "number"] }, { "type": "array", "items": { "type": ["string", "number"] } }] }
                        } } }
                    },
                    "responses": {
                        "200": answer("Results by name, and their working", &reference("Answer")),
                        "404": error("There is no such calculation"),
                        "422": error("No answer: an input is missing or does not read, or the case is outside what it holds for")
                    }
                }
            },
            "/api/jobs": {
                "get": {
                    "summary": "All jobs, the one written last first",
                    "responses": {
                        "200": answer("The jobs", &json!({ "type": "array", "items": reference("Job") }))
                    }
                }
            },
            "/api/jobs/{id}/plan": {
                "get": {
                    "summary": "The plan of a job: numbers, verdicts, steps, cautions, kit",
                    "parameters": [id(), {
                        "name": "units", "in": "query", "required": false,
                        "description": "Units of the sentences; the job's own by default. Every value is in SI and as text in both.",
                        "schema": { "enum": ["metric", "inch"] }
                    }, {
                        "name": "depth", "in": "query", "required": false,
                        "description": "“full” works out the flow of heat too, which takes some seconds; “quick”, the default, does not.",
                        "schema": { "enum": ["quick", "full"] }
                    }],
                    "responses": { "200": answer("The plan", &reference("Plan")), "404": error("There is no such job") }
                }
            },
            "/api/jobs/{id}/entries": {
                "post": {
                    "summary": "Adds one entry to the log book",
                    "parameters": [id()],
                    "requestBody": {
                        "required": true,
                        "content": { "application/json": { "schema": {
                            "type": "object", "required": ["by", "act"], "additionalProperties": false,
                            "properties": { "by": { "type": "string", "description": "Initials" }, "act": reference("Act") }
                        } } }
                    },
                    "responses": {
                        "201": answer("The entry as it is kept", &reference("Entry")),
                        "404": error("There is no such job"),
                        "422": error("The job does not accept it: the text does not read, or what it says cannot be")
                    }
                }
            }
        },
        "components": { "schemas": schemas() }
    })
}

fn id() -> Json {
    json!({ "name": "id", "in": "path", "required": true, "schema": { "type": "string", "format": "uuid" } })
}

fn name() -> Json {
    json!({ "name": "name", "in": "path", "required": true, "schema": { "type": "string" }, "example": "torque" })
}

fn reference(name: &str) -> Json {
    json!({ "$ref": format!("#/components/schemas/{name}") })
}

fn answer(description: &str, schema: &Json) -> Json {
    let content = json!({ "application/json": { "schema": schema } });
    json!({ "description": description, "content": content })
}

fn error(description: &str) -> Json {
    answer(description, &reference("Error"))
}

fn schemas() -> Json {
    let text = json!({ "type": "string" });
    let written =
        json!({ "anyOf": [text, { "type": "boolean" }, { "type": "array", "items": text }] });
    let uuid = json!({ "type": "string", "format": "uuid" });
    let one = |name: &str, properties: Json, required: Json| {
        json!({
            "type": "object", "required": [name], "additionalProperties": false,
            "properties": { name: { "type": "object", "properties": properties, "required": required, "additionalProperties": false } }
        })
    };
    json!({
        "Calculation": {
            "type": "object", "required": ["name", "does", "inputs", "outputs", "valid", "source"],
            "properties": {
                "name": text, "does": text, "valid": text, "source": text,
                "inputs": { "type": "array", "items": { "type": "object" } },
                "outputs": { "type": "array", "items": { "type": "object" } }
            }
        },
        "Answer": {
            "type": "object", "required": ["results", "working"],
            "properties": { "results": { "type": "object" }, "working": { "type": "array", "items": { "type": "object" } } }
        },
        "Error": { "type": "object", "required": ["error"], "properties": { "error": text } },
        "Job": {
            "type": "object",
            "required": ["id", "number", "title", "works", "kind", "entries", "last", "by"],
            "properties": {
                "id": uuid, "number": text, "title": text, "works": text, "kind": text,
                "entries": { "type": "integer" },
                "last": { "type": ["string", "null"], "format": "date-time" }, "by": text
            }
        },
        "Entry": {
            "type": "object", "required": ["id", "at", "by", "act"],
            "properties": { "id": uuid, "at": { "type": "string", "format": "date-time" }, "by": text, "act": reference("Act") }
        },
        "Act": { "oneOf": [
            one("write", json!({ "place": text, "value": written }), json!(["place", "value"])),
            one("correct", json!({ "replaces": uuid, "value": written, "why": text }), json!(["replaces", "value"])),
            one("strike", json!({ "replaces": uuid, "why": text }), json!(["replaces"])),
            one("note", json!({ "stage": text, "text": text }), json!(["stage", "text"])),
            one("tick", json!({ "step": text }), json!(["step"]))
        ] },
        "Plan": {
            "type": "object",
            "required": ["head", "stages", "cautions", "on", "off", "kit", "about", "choice", "dues", "ways", "drawings"],
            "properties": {
                "head": { "type": "object" },
                "stages": { "type": "array", "minItems": 10, "maxItems": 10, "items": { "type": "object" } },
                "cautions": { "type": "array", "items": { "type": "object" } },
                "on": { "type": "array", "items": { "type": "object" } },
                "off": { "type": "array", "items": { "type": "object" } },
                "kit": { "type": "array", "items": { "type": "object" } },
                "about": { "type": ["object", "null"] },
                "choice": { "type": "object" },
                "dues": { "type": "array", "items": { "type": "object" } },
                "ways": { "type": "array", "items": { "type": "object" } },
                "drawings": { "type": "object" }
            }
        }
    })
}
