//! t
use super::assembly::Assembly;
use crate::ink::Drawing;
#[derive(Clone, Debug)]
pub(crate) struct Joint {}
pub(super) const LETTERS: [char; 3] = ['H', 'N', 'W'];
impl Joint {
    pub fn draw(&self, _d: &mut Drawing, _a: &Assembly, _y: f64) {}
}
