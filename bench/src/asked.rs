//! What is asked as text: plans of jobs, and lines of JSON.

use job::{Job, JobFile, Stage};
use quantities::System;

use crate::Hub;

/// Invented jobs that the project ships.
pub const JOBS: [(&str, &str); 4] = [
    ("boiler feed pump", include_str!("../../demo/boiler-feed-pump.toml")),
    ("drum line shaft", include_str!("../../demo/drum-line-shaft.toml")),
    ("drying belt", include_str!("../../demo/drying-belt.toml")),
    ("sea water pump", include_str!("../../demo/sea-water-pump.toml")),
];

/// The job of a file; `None` when it cannot be read.
pub fn job(text: &str) -> Option<Job> {
    let file: JobFile = job::read(text).ok()?;
    Some(Job::from_file(&file))
}

/// How many numbers its fits hold: both ends, their keys, and the sizes that they lean on.
pub fn fitted(job: &Job) -> usize {
    job::plan::stage(job, System::Metric, Stage::Fit).numbers.len()
}

/// How many numbers its plan holds, the flow of heat left out.
pub fn planned(job: &Job) -> usize {
    job::plan::plan(job, System::Metric).numbers().count()
}

/// A hub as a line of JSON.
pub fn line(hub: &Hub) -> String {
    let mm = |metres: f64| format!("{} mm", 1e3 * metres);
    serde_json::json!({
        "reckon": "press-fit",
        "interference": format!("{:.4} ± 0.004 mm", 1e3 * hub.interference),
        "joint": mm(hub.joint),
        "outside": mm(hub.outside),
        "length": mm(hub.barrel),
        "flange_outside": mm(hub.flange),
        "flange_length": mm(hub.flange_length),
        "speed": format!("{} rad/s", hub.speed),
    })
    .to_string()
}

/// A line of JSON answered with a line of JSON; `None` for a case that has no answer.
pub fn answered(line: &str) -> Option<String> {
    let answer = reckon::ask_json(None, line);
    answer.is_ok().then(|| reckon::answer_line(&answer))
}

/// The same without working.
pub fn bare(line: &str) -> Option<String> {
    let answer = reckon::ask_json(None, line);
    answer.is_ok().then(|| reckon::bare_line(&answer))
}
