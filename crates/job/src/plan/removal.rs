//! Removal.
use super::{Context, StagePlan};
use crate::Stage;
pub(super) fn stage(cx: &Context) -> StagePlan {
    cx.stage(Stage::Removal, false).done("not begun")
}
#[derive(Clone, Debug)]
pub(super) struct Found {
    pub puller: Option<tables::pullers::Puller>,
}
pub(super) fn found(_cx: &Context, _end: crate::file::End) -> Option<Found> {
    None
}
