//! t
use super::{SectionError, assembly::Assembly};
pub(super) fn build(_a: &mut Assembly, _b: Option<u32>) -> Result<(), SectionError> {
    Ok(())
}
