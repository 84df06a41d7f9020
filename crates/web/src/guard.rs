//! Who may ask: this machine's own names only, and forms only from our own pages.
//!
//! A page of another site can make a browser send a form here, and a name server can make such a
//! site look like this machine. Both are refused: the first by where a form says it comes from,
//! the second by the name that was asked for.

use axum::extract::{Request, State};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, HOST, ORIGIN, REFERRER_POLICY, X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method};
use axum::middleware::Next;
use axum::response::Response;

use crate::{PageError, Shop};

/// Everything from this program alone; no other page may frame it.
const POLICY: &str = "default-src 'self'; object-src 'none'; base-uri 'none'; form-action 'self'; \
                      frame-ancestors 'none'";

const SEC_FETCH_SITE: HeaderName = HeaderName::from_static("sec-fetch-site");

/// Lets in what may come in, and says to the browser what our pages may do.
pub(crate) async fn check(
    State(shop): State<Shop>,
    request: Request,
    next: Next,
) -> Result<Response, PageError> {
    let host = asked_host(&request);
    if !answers_to(&host, shop.hosts()) {
        return Err(PageError::ForeignName(host));
    }
    let reads = matches!(*request.method(), Method::GET | Method::HEAD);
    if !reads && !from_our_page(request.headers(), &host) {
        return Err(PageError::ForeignPage);
    }
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    headers.entry(CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    headers.insert(CONTENT_SECURITY_POLICY, HeaderValue::from_static(POLICY));
    headers.insert(X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    headers.insert(REFERRER_POLICY, HeaderValue::from_static("same-origin"));
    Ok(response)
}

/// The host and port that were asked for.
fn asked_host(request: &Request) -> String {
    let header = request.headers().get(HOST).and_then(|host| host.to_str().ok());
    let host = header.or_else(|| request.uri().authority().map(axum::http::uri::Authority::as_str));
    host.unwrap_or("").to_lowercase()
}

fn answers_to(host: &str, allowed: &[String]) -> bool {
    let name = without_port(host);
    matches!(name, "localhost" | "127.0.0.1" | "[::1]") || allowed.iter().any(|one| one == name)
}

fn without_port(host: &str) -> &str {
    match host.rsplit_once(':') {
        Some((name, port)) if port.bytes().all(|b| b.is_ascii_digit()) => name,
        _ => host,
    }
}

/// A browser says where a form comes from; a program that says nothing is no browser.
fn from_our_page(headers: &HeaderMap, host: &str) -> bool {
    let said = |name: HeaderName| headers.get(name).map(|value| value.to_str().unwrap_or("?"));
    let site_is_ours =
        said(SEC_FETCH_SITE).is_none_or(|site| matches!(site, "same-origin" | "none"));
    let origin_is_ours = said(ORIGIN).is_none_or(|origin| {
        origin.split_once("://").is_some_and(|(_, from)| from.eq_ignore_ascii_case(host))
    });
    site_is_ours && origin_is_ours
}
