//! Why a page is not shown: the one place that knows status codes.

use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use records::RecordsError;

use crate::frame;

/// Why a page is not shown.
#[derive(Debug, thiserror::Error)]
pub enum PageError {
    /// There is no such page.
    #[error("there is no such page")]
    NoPage,
    /// What was sent cannot be understood.
    #[error("{0}")]
    Unreadable(String),
    /// The job does not accept it.
    #[error("{0}")]
    Unaccepted(String),
    /// It was sent from another site's page.
    #[error("this was sent from another page than ours")]
    ForeignPage,
    /// It was asked under a name that is not this program's.
    #[error("this program does not answer to the name “{0}”")]
    ForeignName(String),
    /// The records do not answer.
    #[error(transparent)]
    Records(#[from] RecordsError),
    /// The card cannot be set.
    #[error("the card cannot be set: {0}")]
    Card(String),
    /// Work that was begun did not end.
    #[error("the plan was not finished")]
    Unfinished(#[from] tokio::task::JoinError),
}

impl PageError {
    pub(crate) fn status(&self) -> StatusCode {
        match self {
            Self::NoPage | Self::Records(RecordsError::NoSuchJob(_)) => StatusCode::NOT_FOUND,
            Self::Unreadable(_) => StatusCode::BAD_REQUEST,
            Self::Unaccepted(_) => StatusCode::UNPROCESSABLE_ENTITY,
            Self::ForeignPage => StatusCode::FORBIDDEN,
            Self::ForeignName(_) => StatusCode::MISDIRECTED_REQUEST,
            Self::Records(RecordsError::SaysElse { .. }) => StatusCode::CONFLICT,
            Self::Records(_) | Self::Card(_) | Self::Unfinished(_) => {
                StatusCode::INTERNAL_SERVER_ERROR
            }
        }
    }

    /// What the reader can do.
    fn advice(&self) -> &'static str {
        match self {
            Self::NoPage | Self::Records(RecordsError::NoSuchJob(_)) => {
                "Go back to the list of jobs and choose from there."
            }
            Self::Unreadable(_) | Self::Unaccepted(_) => "Go back, mend it, and send it again.",
            Self::ForeignPage => "Open the page from the list of jobs and enter it there.",
            Self::ForeignName(_) => {
                "Open it as localhost, or start the program with this name allowed."
            }
            Self::Card(_) => "The job itself is safe. Its numbers are on its pages.",
            Self::Records(_) | Self::Unfinished(_) => {
                "Nothing that was written before is lost. Go back and try once more; what you \
                 typed last may have to be entered again."
            }
        }
    }

    fn page(&self) -> Markup {
        let body = html! {
            main id="page" .leaf.lone {
                p.job { "Hubwright" }
                h1 { "This did not work" }
                p.advice { (sentence(&self.to_string())) " " (self.advice()) }
                p { a.button href="/" { "To the list of jobs" } }
            }
        };
        frame::bare("This did not work", &body)
    }
}

fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", letters.as_str())
}

impl IntoResponse for PageError {
    fn into_response(self) -> Response {
        (self.status(), self.page()).into_response()
    }
}
