//! t
use super::{SectionError, assembly::Assembly};
pub(super) fn build(_a: &mut Assembly, _s: Option<&super::Dim>) -> Result<(), SectionError> {
    Ok(())
}
