//! The plant's rules in a job by themselves: to keep as a file, to take over from elsewhere.

use axum::Form;
use axum::extract::{Path, State};
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Redirect, Response};
use job::SiteFile;
use maud::{Markup, html};
use records::JobId;

use crate::card::file_name;
use crate::fields;
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
    let here = format!("/jobs/{id}/rules");
    let cover = Cover { hand: &hand, system: opened.system, here: &here };
    let title = format!("Plant rules · {}", opened.title());
    Ok(answer(part, &title, &cover, &book(&opened, &others)))
}

/// The rules as a file.
pub(crate) async fn file(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
) -> Result<impl IntoResponse, PageError> {
    let opened = shop.open(id, None).await?;
    let named = file_name(&opened, "attachment", "rules.toml");
    let toml = job::write_site(&SiteFile::of(&opened.job.file))
        .map_err(|error| PageError::Unreadable(error.to_string()))?;
    Ok(([(CONTENT_TYPE, "application/toml".to_owned()), (CONTENT_DISPOSITION, named)], toml))
}

/// Puts rules into the job: an entry for each that it did not have.
pub(crate) async fn take(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    hand: Hand,
    Form(offer): Form<Offer>,
) -> Result<Redirect, PageError> {
    let opened = shop.open(id, hand.units).await?;
    let rules = match offer.job {
        Some(other) => SiteFile::of(&shop.open(other, None).await?.job.file),
        None => job::read_site(&offer.text)
            .map_err(|errors| take_over::unreadable("the rules", &errors))?,
    };
    Box::pin(write::put_in(&shop, &opened, &hand, rules.acts())).await?;
    Ok(Redirect::to(&format!("/jobs/{id}/rules")))
}

/// What the rules of a job are called, if it has any.
fn called(opened: &Opened) -> Option<String> {
    let site = &opened.job.file.site;
    let words = [opened.title(), &site.rules];
    let words: Vec<&str> = words.into_iter().filter(|one| !one.is_empty()).collect();
    (*site != SiteFile::default().site).then(|| words.join(", "))
}

fn book(opened: &Opened, others: &[(JobId, String)]) -> Markup {
    let rules = standing(opened);
    let (page, here) = (format!("/jobs/{}", opened.id), format!("/jobs/{}/rules", opened.id));
    html! {
        div.book.no-spine id="book" {
            main.leaf id="page" tabindex="-1" {
                (head(opened, "Plant rules", None, &[]))
                div.sides.wide-left {
                    div.left {
                        p.advice { "Rules are entered under " a href={ (page) "/machines" } { "Machines" }
                            ", or taken over from elsewhere. They come before the usual, and the plan says where." }
                        dl.traits.sheet {
                            @for (what, says) in &rules { div { dt { (what) } dd { span.entry { (says) } } } }
                        }
                    }
                    div.right {
                        @if !rules.is_empty() {
                            section {
                                div.h { h2 { "To keep" } small { "for every job of this plant" } }
                                p.take { a.button.quiet href={ (here) ".toml" } { "Rules as a file" } }
                            }
                        }
                        section {
                            div.h { h2 { "To take over" } small { "one entry a rule, in place of what stands" } }
                            (take_over::forms(&here, others, "hubwright_site = 1"))
                        }
                    }
                }
            }
        }
    }
}

/// The rules that stand in the job, each as its field is called and as it was entered.
fn standing(opened: &Opened) -> Vec<(String, String)> {
    let rows = fields::rules(opened).into_iter().flat_map(|group| group.rows);
    let fields =
        rows.flat_map(|row| row.fields.into_iter().map(move |field| (row.label.clone(), field)));
    fields
        .filter_map(|(label, field)| {
            let says = opened.text_at(&field.place);
            let what = if field.say.is_empty() { label } else { field.say };
            (!says.is_empty()).then_some((what, says))
        })
        .collect()
}
