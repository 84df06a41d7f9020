//! The HTTP interface: jobs, plans, entries and calculations as JSON, described at `/api/openapi.json`.

use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use axum::{Json, Router};
use job::plan::Plan;
use job::{Act, Entry};
use quantities::System;
use records::{JobId, Listed, new_entry};
use serde::Deserialize;
use serde_json::Value;

use crate::{PageError, Shop, openapi};

/// The routes; `openapi` describes each of them.
pub(crate) fn routes() -> Router<Shop> {
    Router::new()
        .route("/api/openapi.json", get(|| async { Json(openapi::document()) }))
        .route("/api/reckon", get(catalogue))
        .route("/api/reckon/{name}", get(describe).post(ask))
        .route("/api/jobs", get(jobs))
        .route("/api/jobs/{id}/plan", get(plan))
        .route("/api/jobs/{id}/entries", post(enter))
}

/// A [`PageError`] as JSON.
pub(crate) struct ApiError(PageError);

impl<E: Into<PageError>> From<E> for ApiError {
    fn from(error: E) -> Self {
        Self(error.into())
    }
}

impl IntoResponse for ApiError {
    fn into_response(self) -> Response {
        let body = serde_json::json!({ "error": self.0.to_string() });
        (self.0.status(), Json(body)).into_response()
    }
}

async fn catalogue() -> Json<Vec<Value>> {
    Json(reckon::all().map(reckon::describe).collect())
}

async fn describe(Path(name): Path<String>) -> Result<Json<Value>, ApiError> {
    let calculation = reckon::calculation(&name).map_err(|_| PageError::NoPage)?;
    Ok(Json(reckon::describe(calculation)))
}

/// Answers a JSON object of inputs as texts.
async fn ask(Path(name): Path<String>, body: String) -> Result<Response, ApiError> {
    reckon::calculation(&name).map_err(|_| PageError::NoPage)?;
    let answered = reckon::ask_json(Some(&name), &body);
    let status = if answered.is_ok() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY };
    let json = [(CONTENT_TYPE, "application/json")];
    Ok((status, json, reckon::answer_line(&answered)).into_response())
}

async fn jobs(State(shop): State<Shop>) -> Result<Json<Vec<Listed>>, ApiError> {
    Ok(Json(shop.records().jobs().await?))
}

/// In which units the plan's sentences are, and whether the flow of heat is worked out.
#[derive(Deserialize)]
struct Wanted {
    units: Option<System>,
    #[serde(default)]
    depth: Deep,
}

/// [`job::plan::Depth`] as it is asked for.
#[derive(Default, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Deep {
    #[default]
    Quick,
    Full,
}

async fn plan(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    Query(Wanted { units, depth }): Query<Wanted>,
) -> Result<Json<Plan>, ApiError> {
    let opened = match depth {
        Deep::Quick => shop.open(id, units).await?,
        Deep::Full => shop.open_full(id, units).await?,
    };
    Ok(Json(opened.plan.clone()))
}

/// What is to be entered, and whose hand enters it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct NewEntry {
    by: String,
    act: Act,
}

async fn enter(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    Json(NewEntry { by, act }): Json<NewEntry>,
) -> Result<(StatusCode, Json<Entry>), ApiError> {
    let opened = shop.open(id, None).await?;
    opened.job.accepts(&act).map_err(|why| PageError::Unaccepted(why.to_string()))?;
    let entry = new_entry(&by, act);
    shop.records().append(id, &entry).await?;
    Ok((StatusCode::CREATED, Json(entry)))
}
