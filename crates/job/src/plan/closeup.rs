//! Closeup.
use super::{Context, StagePlan};
use crate::Stage;
pub(super) fn stage(cx: &Context) -> StagePlan {
    cx.stage(Stage::Closeup, false).done("not begun")
}
#[derive(Clone, Debug, Default)]
pub(super) struct Found;
pub(super) fn found(_cx: &Context) -> Found {
    Found
}
impl Found {
    pub fn torque(&self) -> Option<quantities::Torque> {
        None
    }
    pub fn grease_words(&self, _cx: &Context) -> String {
        String::new()
    }
}
