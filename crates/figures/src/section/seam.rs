//! The joint of a cover that is split along the shaft, seen from above: beyond the shell lies the
//! joint's face, with its gasket and its bolts end on.

use super::assembly::{Assembly, counted};
use super::shape::{Shape, block};
use crate::geometry::{at, regular};
use crate::ink::THIN;

/// How far the joint's face reaches along the shaft to either side, and from where to where it
/// stands out.
#[derive(Clone, Copy, Debug)]
pub(super) struct Seam {
    pub end: f64,
    pub from: f64,
    pub to: f64,
}

impl Seam {
    /// Metal that is not cut, but lies in the plane of the cut.
    pub fn face(self) -> Shape {
        Shape::outside(block((-self.end, self.from), (self.end, self.to)))
    }

    /// Gasket and bolts, lettered.
    pub fn fasten(self, a: &mut Assembly, bolts: Option<u32>) {
        let Self { end, from, to } = self;
        let (low, high) = (from + 0.06 * (to - from), from + 0.22 * (to - from));
        let gasket = Shape::Ink(block((-end, low), (end, high)));
        let inside = at(0.62 * end, f64::midpoint(low, high));
        a.part('G', "gasket, along the joint", inside, vec![gasket]);
        let width = (0.095 * a.d).min(0.5 * (to - high)).min(0.12 * end);
        let (y, run) = (f64::midpoint(high, to), end - 1.6 * width);
        let mut heads = Vec::new();
        for share in [-1.0, -0.33, 0.33, 1.0] {
            let centre = at(share * run, y);
            heads.push(Shape::small(regular(centre, 0.9 * width, 6, 0.0)));
            heads.push(Shape::Ring { centre, radius: 0.5 * width, weight: THIN, filled: false });
        }
        a.part('H', counted("cover bolt", bolts), at(-0.33 * run, y), heads);
    }
}
