//! The plant's rules as a file of their own: written once, put into every job.
//!
//! It is TOML with the same keys as `site` in a job file.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::Value as Json;

use crate::book::leaves;
use crate::fields::{self, FieldLine};
use crate::file::Site;
use crate::parse::parsed;
use crate::read::{at, from_problem, place_start};
use crate::{Act, FileError, JobFile, impossible};

/// The version of the rules' form that this program writes.
pub const SITE_VERSION: u32 = 1;

/// The plant's rules.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SiteFile {
    /// The version mark: 1.
    pub hubwright_site: u32,
    /// The rules.
    #[serde(default)]
    pub site: Site,
}

/// Reads the plant's rules.
///
/// # Errors
/// What is wrong with them and where, as for a job file.
/// # Example
/// ```
/// let rules = job::read_site("hubwright_site = 1\n[site]\nhub_limit = \"180 degC\"\n").unwrap();
/// assert_eq!(rules.site.hub_limit.unwrap().text(), "180 degC");
/// assert!(job::read_site("hubwright_site = 1\n[site.holds.on]\ndance = \"x\"\n").is_err());
/// ```
pub fn read_site(text: &str) -> Result<SiteFile, Vec<FileError>> {
    let file: SiteFile = parsed(text)?;
    if file.hubwright_site != SITE_VERSION {
        let what = format!("these rules are of version {}", file.hubwright_site);
        let expected = format!("hubwright_site = {SITE_VERSION}: the version that is read here");
        return Err(vec![at(text, place_start(text, "hubwright_site"), what, expected)]);
    }
    let problems = impossible(&file.into_job(&JobFile::default()));
    if problems.is_empty() {
        return Ok(file);
    }
    Err(problems.iter().map(|problem| from_problem(text, problem)).collect())
}

/// Writes the plant's rules.
///
/// # Errors
/// When TOML cannot hold them, which no rules cause.
pub fn write_site(file: &SiteFile) -> Result<String, toml::ser::Error> {
    toml::to_string_pretty(file)
}

/// An empty set of rules to be filled in by hand: every rule with what it is, each behind a #.
///
/// # Example
/// ```
/// let blank = job::blank_site();
/// assert_eq!(job::read_site(&blank).unwrap().site, job::file::Site::default());
/// let filled = blank.replace("# torque_within = \"\"", "torque_within = \"2 %\"");
/// assert!(job::read_site(&filled).unwrap().site.torque_within.is_some());
/// ```
pub fn blank_site() -> String {
    let lines = site_lines(&Site::default());
    format!("hubwright_site = {SITE_VERSION}\n\n{}", fields::blank("site", &lines))
}

/// Every rule in order, plain ones before tables, with what the plant says.
pub fn site_lines(site: &Site) -> Vec<FieldLine> {
    fields::lines(site)
}

/// The JSON Schema of the plant's rules, for editors.
pub fn site_schema() -> Json {
    let mut schema = schemars::schema_for!(SiteFile);
    schema.insert("title".into(), "Hubwright plant rules, version 1".into());
    schema.to_value()
}

impl SiteFile {
    /// The rules that stand in a job.
    pub fn of(file: &JobFile) -> Self {
        Self { hubwright_site: SITE_VERSION, site: file.site.clone() }
    }

    /// The job with these rules in it, in place of whatever rules it had.
    #[must_use]
    pub fn into_job(&self, file: &JobFile) -> JobFile {
        JobFile { site: self.site.clone(), ..file.clone() }
    }

    /// What has to be entered in a log book to put these rules in: one entry a rule.
    pub fn acts(&self) -> Vec<Act> {
        let mut written = Vec::new();
        if let Ok(Json::Object(site)) = serde_json::to_value(&self.site) {
            leaves(&site, &mut "site".to_owned(), &mut written);
        }
        written.into_iter().map(|(place, value)| Act::Write { place, value }).collect()
    }
}
