//! What the pages work with: the records, the demo jobs, and the plans made last.

use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use jiff::tz::TimeZone;
use job::plan::Depth;
use quantities::System;
use records::{JobId, Records};

use crate::PageError;
use crate::opened::{Opened, Summary};

/// Plans that are kept before all are let go.
const PLANS_KEPT: usize = 64;

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
    full: tokio::sync::Mutex<()>,
    plans: Mutex<HashMap<Wanted, Arc<Opened>>>,
    summaries: Mutex<HashMap<Wanted, Arc<Summary>>>,
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
            full: tokio::sync::Mutex::default(),
            plans: Mutex::default(),
            summaries: Mutex::default(),
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
    /// that was made of that many entries still holds, be it quick or full.
    pub(crate) async fn open(
        &self,
        id: JobId,
        units: Option<System>,
    ) -> Result<Arc<Opened>, PageError> {
        match self.kept(id, units).await? {
            Some(kept) => Ok(kept),
            None => self.keep(id, units, Depth::Quick).await,
        }
    }

    /// A job with its full plan, which takes some seconds. One is made at a time, so that a row of
    /// entries does not set a row of plans to work.
    pub(crate) async fn open_full(
        &self,
        id: JobId,
        units: Option<System>,
    ) -> Result<Arc<Opened>, PageError> {
        let _one_at_a_time = self.inner.full.lock().await;
        match self.kept(id, units).await?.filter(|kept| kept.depth == Depth::Full) {
            Some(kept) => Ok(kept),
            None => self.keep(id, units, Depth::Full).await,
        }
    }

    async fn kept(
        &self,
        id: JobId,
        units: Option<System>,
    ) -> Result<Option<Arc<Opened>>, PageError> {
        let length = self.records().length(id).await?;
        let kept = locked(&self.inner.plans).get(&(id, units)).cloned();
        Ok(kept.filter(|kept| kept.length() == length))
    }

    async fn keep(
        &self,
        id: JobId,
        units: Option<System>,
        depth: Depth,
    ) -> Result<Arc<Opened>, PageError> {
        let opened = Arc::new(self.read(id, units, depth).await?);
        let mut plans = locked(&self.inner.plans);
        if plans.len() >= PLANS_KEPT {
            plans.clear();
        }
        plans.insert((id, units), Arc::clone(&opened));
        Ok(opened)
    }

    /// What the list says of a job that has so many entries.
    pub(crate) async fn summary(
        &self,
        id: JobId,
        units: Option<System>,
        length: usize,
    ) -> Result<Arc<Summary>, PageError> {
        let kept = locked(&self.inner.summaries).get(&(id, units)).cloned();
        if let Some(kept) = kept.filter(|kept| kept.length == length) {
            return Ok(kept);
        }
        let summary = Arc::new(Summary::of(&self.read(id, units, Depth::Quick).await?));
        locked(&self.inner.summaries).insert((id, units), Arc::clone(&summary));
        Ok(summary)
    }

    async fn read(
        &self,
        id: JobId,
        units: Option<System>,
        depth: Depth,
    ) -> Result<Opened, PageError> {
        let book = self.records().book(id).await?;
        Ok(tokio::task::spawn_blocking(move || Opened::of(id, book, units, depth)).await?)
    }
}

fn locked<T>(kept: &Mutex<T>) -> MutexGuard<'_, T> {
    kept.lock().unwrap_or_else(PoisonError::into_inner)
}
