//! A shop on a temporary file.
#![allow(
    clippy::unwrap_used,
    clippy::disallowed_methods,
    reason = "a test may stop, and reads files"
)]
#![allow(dead_code, reason = "each test binary uses its part")]

pub mod browser;

use records::{JobId, Records, book_of_file};
use tempfile::TempDir;
use web::Shop;

/// An invented job, small enough to read here.
pub const PUMP: &str = r#"
hubwright = 1
[job]
number = "41"
title = "Sea-water pump 2"
works = "Tangle Row Drying"
invented = true
units = "metric"
by = "R.A."
[machines]
power = "90 kW"
speed = "1480 rpm"
[machines.driver]
name = "motor"
[machines.driven]
name = "pump"
[coupling]
kind = "gear"
[sizes]
temperature = "20 degC"
[sizes.driver]
nominal = "80 mm"
[sizes.driver.bore.1]
along = "80.012 mm"
"#;

/// A shop with the records it works on and the folder they lie in.
pub struct Held {
    pub shop: Shop,
    pub records: Records,
    pub folder: TempDir,
}

pub async fn shop() -> Held {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("books.db");
    let records = Records::open(&path).await.unwrap();
    let shop = Shop::new(records.clone(), &path, &[("pump", PUMP)], "Hubwright test");
    Held { shop, records, folder }
}

/// The invented job in the records.
pub async fn pump(records: &Records) -> JobId {
    let file = job::read(PUMP).unwrap();
    records.import(&book_of_file(&file, "R.A.")).await.unwrap()
}
