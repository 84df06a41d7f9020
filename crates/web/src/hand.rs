//! Whose hand writes, and in which units this browser reads: kept in one cookie.

use axum::Form;
use axum::extract::FromRequestParts;
use axum::http::header::{COOKIE, SET_COOKIE};
use axum::http::request::Parts;
use axum::response::{IntoResponse, Redirect};
use quantities::System;
use serde::{Deserialize, Serialize};

/// The longest initials that are kept.
const LONGEST: usize = 12;

/// Whose hand writes, and in which units it reads.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub(crate) struct Hand {
    /// Initials; empty until they were given.
    pub by: String,
    /// Units other than the job's own.
    pub units: Option<System>,
}

impl Hand {
    /// The hand that a cookie header names.
    fn of(header: &str) -> Self {
        let cookies = header.split(';').filter_map(|cookie| cookie.trim().split_once('='));
        let kept = cookies.into_iter().find(|(name, _)| *name == "hand").map(|(_, value)| value);
        kept.and_then(|value| serde_urlencoded::from_str(value).ok()).unwrap_or_default()
    }

    fn cookie(&self) -> String {
        let value = serde_urlencoded::to_string(self).unwrap_or_default();
        format!("hand={value}; Path=/; Max-Age=34560000; HttpOnly; SameSite=Lax")
    }
}

impl<S: Sync> FromRequestParts<S> for Hand {
    type Rejection = std::convert::Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Self::Rejection> {
        let headers = parts.headers.get_all(COOKIE).iter().filter_map(|value| value.to_str().ok());
        let all: Vec<&str> = headers.collect();
        Ok(Self::of(&all.join("; ")))
    }
}

/// What the switch and the initials in the head send.
#[derive(Deserialize)]
pub(crate) struct Change {
    by: Option<String>,
    units: Option<System>,
    #[serde(default)]
    back: String,
}

/// Keeps the change and goes back to the page that it was made on.
pub(crate) async fn keep(hand: Hand, Form(change): Form<Change>) -> impl IntoResponse {
    let by = change.by.map(|by| by.trim().chars().take(LONGEST).collect());
    let kept = Hand { by: by.unwrap_or(hand.by), units: change.units.or(hand.units) };
    // Only ever to a page of ours.
    let ours = change.back.starts_with('/') && !change.back.starts_with("//");
    let back = if ours && !change.back.contains('\\') { change.back } else { "/".to_owned() };
    ([(SET_COOKIE, kept.cookie())], Redirect::to(&back))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hand_is_read_back_from_its_cookie() {
        for (by, units) in
            [("R.A.", Some(System::Inch)), ("Ø; =&", None), ("", Some(System::Metric))]
        {
            let hand = Hand { by: by.into(), units };
            let cookie = hand.cookie();
            let sent = cookie.split(';').next().unwrap();
            assert_eq!(Hand::of(&format!("other=1; {sent}")), hand);
        }
        assert_eq!(Hand::of("hand=%ff&units=furlongs"), Hand::default());
    }
}
