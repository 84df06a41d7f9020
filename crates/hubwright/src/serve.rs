//! `hubwright serve`: the pages on the loopback address, the record in one file.

use std::path::PathBuf;

use crate::arguments;
use crate::{Failure, card};

/// The demo jobs, as they stand in `demo/`.
pub const DEMOS: [(&str, &str); 4] = [
    ("sea-water-pump", include_str!("../../../demo/sea-water-pump.toml")),
    ("drying-belt", include_str!("../../../demo/drying-belt.toml")),
    ("boiler-feed-pump", include_str!("../../../demo/boiler-feed-pump.toml")),
    ("drum-line-shaft", include_str!("../../../demo/drum-line-shaft.toml")),
];

/// Serves until it is stopped.
pub fn run(asked: &arguments::Serve) -> Result<(), Failure> {
    let refused = |error: &dyn std::fmt::Display| Failure::Refused(error.to_string());
    let book = asked.book.clone().map_or_else(usual_book, Ok)?;
    if let Some(folder) = book.parent() {
        std::fs::create_dir_all(folder)
            .map_err(|error| refused(&format!("{}: {error}", folder.display())))?;
    }
    let runtime = tokio::runtime::Runtime::new().map_err(|error| refused(&error))?;
    runtime.block_on(async {
        let records = records::Records::open(&book).await.map_err(|error| refused(&error))?;
        let shop = web::Shop::new(records, &book, &DEMOS, card::made_by());
        let at = (asked.address, asked.port);
        let listener = tokio::net::TcpListener::bind(at)
            .await
            .map_err(|error| refused(&format!("{}:{}: {error}", at.0, at.1)))?;
        let address = listener.local_addr().map_err(|error| refused(&error))?;
        eprintln!("hubwright: the log books are in {}", book.display());
        eprintln!("hubwright: open http://{address} in a browser; Ctrl-C ends it");
        web::serve(listener, shop, stopped()).await.map_err(|error| refused(&error))
    })
}

async fn stopped() {
    let _ = tokio::signal::ctrl_c().await;
}

/// `$XDG_DATA_HOME/hubwright/hubwright.db`, or what this system has in its place.
fn usual_book() -> Result<PathBuf, Failure> {
    let home = |rest: &str| std::env::home_dir().map(|home| home.join(rest));
    let set =
        |name: &str| std::env::var_os(name).filter(|value| !value.is_empty()).map(PathBuf::from);
    let folder = if cfg!(windows) {
        set("LOCALAPPDATA")
    } else if cfg!(target_os = "macos") {
        home("Library/Application Support")
    } else {
        set("XDG_DATA_HOME").or_else(|| home(".local/share"))
    };
    let folder = folder.ok_or_else(|| {
        Failure::Refused(
            "there is no home folder for the log books; give one with --book FILE".into(),
        )
    })?;
    Ok(folder.join("hubwright").join("hubwright.db"))
}
