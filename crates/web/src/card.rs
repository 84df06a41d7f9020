//! A job on paper and as a file.

use axum::extract::{Path, State};
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::IntoResponse;
use papers::CardFigures;
use records::JobId;

use crate::hand::Hand;
use crate::opened::Opened;
use crate::{PageError, Shop};

/// The job card.
pub(crate) async fn pdf(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    hand: Hand,
) -> Result<impl IntoResponse, PageError> {
    let opened = shop.open_full(id, hand.units).await?;
    let named = file_name(&opened, "inline", "pdf");
    let pdf = tokio::task::spawn_blocking(move || {
        let paper = papers::Paper::usual(opened.system);
        papers::card(&opened.plan, &CardFigures::of(&opened.plan), paper, shop.made_by())
    });
    let pdf = pdf.await?.map_err(|error| PageError::Card(error.to_string()))?;
    Ok(([(CONTENT_TYPE, "application/pdf".to_owned()), (CONTENT_DISPOSITION, named)], pdf))
}

/// The job file.
pub(crate) async fn file(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
) -> Result<impl IntoResponse, PageError> {
    let opened = shop.open(id, None).await?;
    let named = file_name(&opened, "attachment", "toml");
    let toml = shop.records().export(id).await?;
    Ok(([(CONTENT_TYPE, "application/toml".to_owned()), (CONTENT_DISPOSITION, named)], toml))
}

/// A name that every file system takes.
pub(crate) fn file_name(opened: &Opened, how: &str, ending: &str) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    let title: String = opened.title().chars().map(plain).collect();
    let words: Vec<&str> = title.split('-').filter(|word| !word.is_empty()).collect();
    format!("{how}; filename=\"{}.{ending}\"", words.join("-"))
}
