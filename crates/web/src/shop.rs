//! What the pages work with: the records, the demo jobs, and the plans made last.

use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use jiff::tz::TimeZone;
use quantities::System;
use records::{JobId, Records};

use crate::PageError;
use crate::opened::Opened;

/// Plans that are kept before all are let go.
const PLANS_KEPT: usize = 200;

/// What the pages work with. Cheap to clone.
#[derive(Clone)]
pub struct Shop {
    inner: Arc<Inner>,
}

struct Inner {
    records: Records,
    book: PathBuf,
    demos: Vec<(String, String)>,
    made_by: String,
    hosts: Vec<String>,
    zone: TimeZone,
    plans: Mutex<HashMap<Wanted, Arc<Opened>>>,
}

/// Which job, in which units; `None` for the job's own.
type Wanted = (JobId, Option<System>);

impl Shop {
    /// A shop over these records, which lie in the file `book`. The demo jobs are given as name
    /// and job file; `made_by` is the program's name and version, as printouts carry it.
    pub fn new(records: Records, book: &Path, demos: &[(&str, &str)], made_by: &str) -> Self {
        let demos = demos.iter().map(|(name, file)| ((*name).to_owned(), (*file).to_owned()));
        let inner = Inner {
            records,
            book: book.to_owned(),
            demos: demos.collect(),
            made_by: made_by.to_owned(),
            hosts: Vec::new(),
            zone: TimeZone::system(),
            plans: Mutex::default(),
        };
        Self { inner: Arc::new(inner) }
    }

    /// Answers to these host names too, beside those of this machine's own loopback address.
    #[must_use]
    pub fn with_hosts(mut self, hosts: impl IntoIterator<Item = String>) -> Self {
        if let Some(inner) = Arc::get_mut(&mut self.inner) {
            inner.hosts = hosts.into_iter().map(|host| host.to_lowercase()).collect();
        }
        self
    }

    pub(crate) fn records(&self) -> &Records {
        &self.inner.records
    }

    pub(crate) fn book(&self) -> &Path {
        &self.inner.book
    }

    pub(crate) fn demos(&self) -> &[(String, String)] {
        &self.inner.demos
    }

    pub(crate) fn made_by(&self) -> &str {
        &self.inner.made_by
    }

    pub(crate) fn hosts(&self) -> &[String] {
        &self.inner.hosts
    }

    pub(crate) fn zone(&self) -> &TimeZone {
        &self.inner.zone
    }

    /// A job with its plan. A log book only grows, so its length names its state, and a plan
    /// that was made of that many entries still holds.
    pub(crate) async fn open(
        &self,
        id: JobId,
        units: Option<System>,
    ) -> Result<Arc<Opened>, PageError> {
        let length = self.records().length(id).await?;
        if let Some(kept) = self.kept((id, units)).filter(|kept| kept.length() == length) {
            return Ok(kept);
        }
        let book = self.records().book(id).await?;
        let opened = tokio::task::spawn_blocking(move || Opened::of(id, book, units)).await?;
        let opened = Arc::new(opened);
        self.keep((id, units), &opened);
        Ok(opened)
    }

    fn kept(&self, wanted: Wanted) -> Option<Arc<Opened>> {
        let plans = self.inner.plans.lock().unwrap_or_else(PoisonError::into_inner);
        plans.get(&wanted).cloned()
    }

    fn keep(&self, wanted: Wanted, opened: &Arc<Opened>) {
        let mut plans = self.inner.plans.lock().unwrap_or_else(PoisonError::into_inner);
        if plans.len() >= PLANS_KEPT {
            plans.clear();
        }
        plans.insert(wanted, Arc::clone(opened));
    }
}
