//! The mesh of a hub of stepped outside on a shaft, from their sizes.

use super::grading::Grading;
use super::mesh::{Mesh, Part, Plot};

/// Sizes of a hub and its shaft, in metres; the hub's back face is at z = 0.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Section {
    /// Radius of the bore and the shaft.
    pub bore_r_m: f64,
    /// `(start, end, outside radius)` of every slice, from the back face on.
    pub slices_m: Vec<(f64, f64, f64)>,
    /// Radius of the shaft's own bore; 0 when solid.
    pub hollow_r_m: f64,
    /// Shaft beyond the back face and beyond the front face.
    pub beyond_m: [f64; 2],
    /// Further stations at which the mesh must have a line.
    pub marks_m: Vec<f64>,
    /// Width of the meshes, 1 for the usual, 2 for twice as wide.
    pub coarseness: f64,
}

/// Breaks closer than this share of the bore are one (a mark beside a step).
const SAME: f64 = 1e-6;

/// Width at the fine places, growth and greatest width, as shares of the bore's radius: along the
/// bore, across it, and along the shaft beyond it.
const ALONG: [f64; 3] = [0.06, 0.35, 0.6];
const ACROSS: [f64; 3] = [0.08, 0.4, 0.6];
const BEYOND: [f64; 3] = [0.06, 0.6, f64::INFINITY];

impl Section {
    /// Length of the bore.
    pub fn length_m(&self) -> f64 {
        self.slices_m.last().map_or(0.0, |(_, end, _)| *end)
    }

    /// The outside radius at a station.
    pub fn outside_r_m(&self, z_m: f64) -> f64 {
        let slice = self.slices_m.iter().find(|(start, end, _)| *start <= z_m && z_m <= *end);
        slice.map_or(0.0, |(_, _, radius)| *radius)
    }

    fn breaks(&self, found: impl Iterator<Item = f64>) -> Vec<f64> {
        let mut breaks: Vec<f64> = found.collect();
        breaks.sort_by(f64::total_cmp);
        breaks.dedup_by(|b, a| *b - *a <= SAME * self.bore_r_m);
        breaks
    }

    /// Widths as shares of the bore's radius: `size` at the fine places, growing by `growth`, at
    /// most `largest`.
    fn grading(&self, fine_m: Vec<f64>, [size, growth, largest]: [f64; 3]) -> Grading {
        let (scale, unit) = (self.coarseness, self.bore_r_m);
        Grading {
            fine_m,
            size_m: size * unit * scale,
            growth: growth * scale,
            largest_m: largest * unit * scale,
        }
    }

    /// The mesh: finest at the joint, at its ends and at the steps of the outside.
    pub fn mesh(&self) -> Mesh {
        let length = self.length_m();
        let steps = self.slices_m.iter().flat_map(|(start, end, _)| [*start, *end]);
        let bore_z = self.breaks(
            steps.chain(self.marks_m.iter().copied()).filter(|z| (0.0..=length).contains(z)),
        );
        let fine = self.slices_m.iter().map(|slice| slice.0).chain([length]).collect();
        let hub_z = self.grading(fine, ALONG).lines(&bore_z);
        let hub_r = self
            .grading(vec![self.bore_r_m], ACROSS)
            .lines(&self.breaks(self.slices_m.iter().map(|slice| slice.2).chain([self.bore_r_m])));
        let shaft_r =
            self.grading(vec![self.bore_r_m], ACROSS).lines(&[self.hollow_r_m, self.bore_r_m]);
        let beyond = self.grading(vec![0.0, length], BEYOND);
        let mut shaft_z = beyond.lines(&self.beyond(-self.beyond_m[0], 0.0));
        shaft_z.pop();
        shaft_z.extend(&hub_z);
        shaft_z.pop();
        shaft_z.extend(beyond.lines(&self.beyond(length, length + self.beyond_m[1])));

        let mut mesh = Mesh::default();
        let metal = |[r, z]: [f64; 2]| r < self.outside_r_m(z);
        mesh.add(Part::Hub, &Plot { r_m: &hub_r, z_m: &hub_z, metal: &metal });
        mesh.add(Part::Shaft, &Plot { r_m: &shaft_r, z_m: &shaft_z, metal: &|_| true });
        mesh.join(self.bore_r_m, length);
        mesh
    }

    /// Breaks of the shaft beyond the hub; one line alone when there is nothing beyond.
    fn beyond(&self, from: f64, to: f64) -> Vec<f64> {
        if to - from > SAME * self.bore_r_m { vec![from, to] } else { vec![from] }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn section(coarseness: f64) -> Section {
        Section {
            bore_r_m: 0.05,
            slices_m: vec![(0.0, 0.1, 0.08), (0.1, 0.13, 0.14)],
            hollow_r_m: 0.01,
            beyond_m: [0.0, 0.15],
            marks_m: vec![0.04, 5.0],
            coarseness,
        }
    }

    #[test]
    fn the_mesh_fills_the_metal() {
        let mesh = section(1.0).mesh();
        let volume = |part| -> f64 {
            let elements = mesh.elements.iter().filter(|element| element.part == part);
            elements.flat_map(|element| element.ring.points()).map(|point| point.volume_m3).sum()
        };
        let pi = std::f64::consts::PI;
        let hub = pi * ((0.08_f64.powi(2) - 0.0025) * 0.1 + (0.14_f64.powi(2) - 0.0025) * 0.03);
        assert!((volume(Part::Hub) / hub - 1.0).abs() < 1e-12);
        let shaft = pi * (0.0025 - 0.0001) * 0.28;
        assert!((volume(Part::Shaft) / shaft - 1.0).abs() < 1e-12);
        assert!(mesh.nodes_m.iter().any(|[_, z]| (z - 0.04).abs() < 1e-15), "the mark has a line");
    }

    #[test]
    fn a_wider_mesh_has_fewer_rings_and_the_same_joint() {
        let (fine, coarse) = (section(1.0).mesh(), section(2.0).mesh());
        assert!(coarse.elements.len() * 3 < fine.elements.len() * 2, "{}", coarse.elements.len());
        for mesh in [fine, coarse] {
            let area: f64 = mesh.pairs.iter().map(|pair| pair.area_m2).sum();
            assert!((area / (std::f64::consts::TAU * 0.05 * 0.13) - 1.0).abs() < 1e-12);
        }
    }
}
