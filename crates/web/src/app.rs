//! The routes, and the server that answers them.

use std::future::Future;

use axum::extract::DefaultBodyLimit;
use axum::routing::{get, post};
use axum::{Router, middleware};
use tokio::net::TcpListener;
use tower_http::compression::CompressionLayer;

use crate::{
    PageError, Shop, api, assets, card, guard, hand, job_page, jobs, reckon_page, rules_page,
    sheet_page, stage_page, steps, trying,
};

/// The largest form or job file that is taken, bytes.
const LARGEST: usize = 1 << 20;

/// All pages and the HTTP interface.
pub fn app(shop: Shop) -> Router {
    let pages = Router::new()
        .route("/", get(jobs::list))
        .route("/jobs", post(jobs::begin))
        .route("/demos/{name}", post(jobs::open_demo))
        .route("/jobs/{id}", get(job_page::show))
        .route("/jobs/{id}/steps", get(steps::show).post(steps::tick))
        .route("/jobs/{id}/notes", post(job_page::remark))
        .route("/jobs/{id}/drawing", get(job_page::drawing))
        .route("/jobs/{id}/card.pdf", get(card::pdf))
        .route("/jobs/{id}/job.toml", get(card::file))
        .route("/jobs/{id}/sheet", get(sheet_page::show).post(sheet_page::take))
        .route("/jobs/{id}/sheet.toml", get(sheet_page::file))
        .route("/jobs/{id}/sheet.pdf", get(sheet_page::pdf))
        .route("/jobs/{id}/rules", get(rules_page::show).post(rules_page::take))
        .route("/jobs/{id}/rules.toml", get(rules_page::file))
        .route("/jobs/{id}/heat/try", get(trying::show))
        .route("/jobs/{id}/{stage}", get(stage_page::show).post(stage_page::enter))
        .route("/reckon", get(reckon_page::list))
        .route("/reckon/{name}", get(reckon_page::show))
        .route("/hand", post(hand::keep))
        .route("/assets/{name}", get(assets::show));
    let guarded = middleware::from_fn_with_state(shop.clone(), guard::check);
    pages
        .merge(api::routes())
        .fallback(|| async { PageError::NoPage })
        .layer(DefaultBodyLimit::max(LARGEST))
        .layer(CompressionLayer::new())
        .layer(guarded)
        .with_state(shop)
}

/// Answers on this socket until `stopped` comes to its end.
///
/// # Errors
/// What the socket says.
pub async fn serve(
    listener: TcpListener,
    shop: Shop,
    stopped: impl Future<Output = ()> + Send + 'static,
) -> std::io::Result<()> {
    axum::serve(listener, app(shop)).with_graceful_shutdown(stopped).await
}
