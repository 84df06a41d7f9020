//! A job's maker's sheet by itself: to print, to keep as a file, to take over from elsewhere.

use axum::Form;
use axum::extract::{Path, State};
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Redirect, Response};
use job::{FieldLine, SheetFile};
use maud::{Markup, html};
use records::JobId;

use crate::card::file_name;
use crate::frame::{Cover, Part, answer};
use crate::hand::Hand;
use crate::head::head;
use crate::opened::Opened;
use crate::take_over::{self, Offer};
use crate::{PageError, Shop, write};

/// The page.
pub(crate) async fn show(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    hand: Hand,
    part: Part,
) -> Result<Response, PageError> {
    let opened = shop.open(id, hand.units).await?;
    let others = take_over::others(&shop, id, called).await?;
    let here = format!("/jobs/{id}/sheet");
    let cover = Cover { hand: &hand, system: opened.system, here: &here };
    let title = format!("Maker’s sheet · {}", opened.title());
    Ok(answer(part, &title, &cover, &book(&opened, &others)))
}

/// The sheet as a file.
pub(crate) async fn file(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
) -> Result<impl IntoResponse, PageError> {
    let opened = shop.open(id, None).await?;
    let named = file_name(&opened, "attachment", "sheet.toml");
    let sheet = SheetFile::of(&opened.job.file);
    let toml =
        job::write_sheet(&sheet).map_err(|error| PageError::Unreadable(error.to_string()))?;
    Ok(([(CONTENT_TYPE, "application/toml".to_owned()), (CONTENT_DISPOSITION, named)], toml))
}

/// The sheet on paper, with lines to write on for what it is silent on.
pub(crate) async fn pdf(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    hand: Hand,
) -> Result<impl IntoResponse, PageError> {
    let opened = shop.open(id, hand.units).await?;
    let named = file_name(&opened, "inline", "sheet.pdf");
    let pdf = tokio::task::spawn_blocking(move || {
        let paper = papers::Paper::usual(opened.system);
        papers::sheet(&SheetFile::of(&opened.job.file), paper, shop.made_by())
    });
    let pdf = pdf.await?.map_err(|error| PageError::Card(error.to_string()))?;
    Ok(([(CONTENT_TYPE, "application/pdf".to_owned()), (CONTENT_DISPOSITION, named)], pdf))
}

/// Puts a sheet into the job: an entry for each figure that it did not have.
pub(crate) async fn take(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    hand: Hand,
    Form(offer): Form<Offer>,
) -> Result<Redirect, PageError> {
    let opened = shop.open(id, hand.units).await?;
    let sheet = match offer.job {
        Some(other) => SheetFile::of(&shop.open(other, None).await?.job.file),
        None => job::read_sheet(&offer.text)
            .map_err(|errors| take_over::unreadable("the sheet", &errors))?,
    };
    Box::pin(write::put_in(&shop, &opened, &hand, sheet.acts())).await?;
    Ok(Redirect::to(&format!("/jobs/{id}/sheet")))
}

/// What the sheet of a job is called, if it has one.
fn called(opened: &Opened) -> Option<String> {
    let sheet = SheetFile::of(&opened.job.file);
    let words = [opened.title(), &sheet.kind, &sheet.name];
    let words: Vec<&str> = words.into_iter().filter(|one| !one.is_empty()).collect();
    (sheet.sheet != SheetFile::default().sheet).then(|| words.join(", "))
}

fn book(opened: &Opened, others: &[(JobId, String)]) -> Markup {
    let sheet = SheetFile::of(&opened.job.file);
    let lines = job::sheet_lines(&sheet.sheet);
    let (said, silent): (Vec<_>, Vec<_>) =
        lines.into_iter().partition(|line| !line.says.is_empty());
    html! {
        div.book.no-spine id="book" {
            main.leaf id="page" tabindex="-1" {
                (head(opened, "Maker’s sheet", None, &[]))
                div.sides.wide-left {
                    div.left {
                        @if said.is_empty() {
                            p.advice { "Nothing stands on it yet. Its figures are entered under "
                                a href={ "/jobs/" (opened.id) "/coupling" } { "Coupling" }
                                ", or taken over from elsewhere." }
                        } @else { (table(&said)) }
                        @if !silent.is_empty() {
                            details.folded id="silent" {
                                summary { h2 { "Not on the sheet" } small { (silent.len()) " figures" } }
                                (table(&silent))
                            }
                        }
                    }
                    div.right { (keep(opened, &said)) (to_take(opened, others)) }
                }
            }
        }
    }
}

/// Its figures, each group under its name.
fn table(lines: &[FieldLine]) -> Markup {
    html! {
        @for lines in lines.chunk_by(|one, next| one.group() == next.group()) {
            @if let Some(name) = lines.first().and_then(FieldLine::group) { h2 { (name) } }
            dl.traits.sheet {
                @for line in lines {
                    div { dt { (line.what.trim_end_matches('.')) } dd { span.entry { (line.says) } } }
                }
            }
        }
    }
}

fn keep(opened: &Opened, said: &[FieldLine]) -> Markup {
    html! {
        @if !said.is_empty() {
            section {
                div.h { h2 { "To keep" } small { "for the next job with this coupling" } }
                p.take { a.button.quiet href={ "/jobs/" (opened.id) "/sheet.toml" } { "Sheet as a file" } }
                p.take { a.button.quiet href={ "/jobs/" (opened.id) "/sheet.pdf" } { "Sheet on paper" } }
            }
        }
    }
}

fn to_take(opened: &Opened, others: &[(JobId, String)]) -> Markup {
    let here = format!("/jobs/{}/sheet", opened.id);
    html! {
        section {
            div.h { h2 { "To take over" } small { "one entry a figure, in place of what stands" } }
            (take_over::forms(&here, others, "hubwright_sheet = 1"))
        }
    }
}
