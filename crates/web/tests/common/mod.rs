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
    kept(records, PUMP).await
}

/// A plain steel hub that is to be heated, invented.
pub const HOT: &str = r#"
hubwright = 1
[job]
title = "plain hub"
invented = true
[coupling]
kind = "rigid flange"
[coupling.driver]
outside = "130 mm"
length = "90 mm"
material = "steel"
shaft_material = "steel"
[machines]
ambient = "20 degC"
[sizes]
spread = "0.001 mm"
[sizes.driver]
nominal = "80 mm"
[sizes.driver.bore.1]
along = "80.000 mm"
[sizes.driver.shaft.1]
along = "80.050 mm"
"#;

/// A job in the records.
pub async fn kept(records: &Records, text: &str) -> JobId {
    // The file is large, and no future is to carry it.
    let book = book_of_file(&job::read(text).unwrap(), "R.A.");
    records.import(&book).await.unwrap()
}
