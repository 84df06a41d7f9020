//! What a job takes over from elsewhere: from another job of this book, or from a file's text.

use job::FileError;
use maud::{Markup, html};
use records::JobId;
use serde::Deserialize;

use crate::opened::Opened;
use crate::{PageError, Shop};

/// Where it is to come from.
#[derive(Deserialize)]
pub(crate) struct Offer {
    /// Another job of this book.
    pub job: Option<JobId>,
    /// The text of a file.
    #[serde(default)]
    pub text: String,
}

/// The other jobs that have such a thing, each with what `says` calls it.
pub(crate) async fn others(
    shop: &Shop,
    id: JobId,
    says: fn(&Opened) -> Option<String>,
) -> Result<Vec<(JobId, String)>, PageError> {
    let mut others = Vec::new();
    for (other, _) in shop.records().lengths().await?.into_iter().filter(|(other, _)| *other != id)
    {
        others.extend(says(&*shop.open(other, None).await?).map(|words| (other, words)));
    }
    Ok(others)
}

/// That a text cannot be read as `what`, and why.
pub(crate) fn unreadable(what: &str, errors: &[FileError]) -> PageError {
    let said: Vec<String> = errors.iter().map(ToString::to_string).collect();
    PageError::Unreadable(format!("{what} cannot be read: {}", said.join("; ")))
}

/// The two forms that post an [`Offer`] to `here`; `mark` is the first line of such a file.
pub(crate) fn forms(here: &str, others: &[(JobId, String)], mark: &str) -> Markup {
    html! {
        @if !others.is_empty() {
            form.take method="post" action=(here) {
                label { span { "From another job of this book" }
                    select name="job" { @for (id, words) in others { option value=(id) { (words) } } } }
                button.button.quiet type="submit" { "Take this one" }
            }
        }
        form.take method="post" action=(here) {
            label { span { "From a file: its text" }
                textarea name="text" rows="6" required placeholder=(mark) {} }
            button.button.quiet type="submit" { "Take this text" }
        }
    }
}
