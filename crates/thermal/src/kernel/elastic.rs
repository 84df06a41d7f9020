//! Growth and squeeze of both bodies: K·u = loads of thermal strain and of the joint's forces.
//!
//! Linear and axisymmetric, small strains, one modulus a body. Thermal strain is given at the
//! nodes and varies as the shape functions between them. Displacements come as `[u_r, u_z]`.
//! Neither body is held along the axis but at one node, which carries nothing.
//!
//! The joint needs of all that only its clearance. What moves it outward and inward is eliminated
//! last, so that the clearance which strains make is known half-way through the factor, and how it
//! answers forces is kept beside it.

use std::sync::{Arc, OnceLock};

use super::condensed::Condensed;
use super::dense::{Full, dot};
use super::element::Point;
use super::influence::Influence;
use super::mesh::{Element, Mesh, Part};
use super::sparse::{Order, Pattern, Symmetric};
use super::triangle::ABREAST;
use super::wide::wide;

/// How stiff a body is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Stiffness {
    /// Young's modulus.
    pub young_pa: f64,
    /// Poisson's ratio.
    pub poisson: f64,
}

impl Stiffness {
    fn shear_pa(self) -> f64 {
        self.young_pa / (2.0 * (1.0 + self.poisson))
    }

    fn lame_pa(self) -> f64 {
        self.young_pa * self.poisson / ((1.0 + self.poisson) * (1.0 - 2.0 * self.poisson))
    }

    /// Stress of an even strain that is wholly held: E/(1 − 2ν).
    fn held_pa(self) -> f64 {
        self.young_pa / (1.0 - 2.0 * self.poisson)
    }
}

/// Both bodies, factored.
pub(crate) struct Elastic {
    condensed: Condensed,
    /// Unknown of every node along r and along z, numbered in the order of elimination.
    unknowns: Vec<[Option<usize>; 2]>,
    of: [Stiffness; 2],
    swelling: Vec<Swelling>,
    stretch_by_strain: Vec<f64>,
    clearance_by_strain: OnceLock<Influence>,
}

/// The loads that thermal strain makes in a ring.
struct Swelling {
    nodes: [usize; 9],
    /// Its unknowns, along r and along z in turn; one beyond the last for what is held.
    unknowns: [usize; 18],
    /// What a unit strain at a node puts on each of them (N).
    loads_n: [[f64; 18]; 9],
}

fn index(part: Part) -> usize {
    usize::from(part == Part::Shaft)
}

/// Radial, hoop, axial and shear strain of the shape function `n` moved along r or z.
fn strain(point: &Point, n: usize, along: usize) -> [f64; 4] {
    let [dr, dz] = point.slope[n];
    if along == 0 { [dr, point.value[n] / point.r_m, 0.0, dz] } else { [0.0, 0.0, dz, dr] }
}

fn stress(of: Stiffness, strain: [f64; 4]) -> [f64; 4] {
    let spread = of.lame_pa() * (strain[0] + strain[1] + strain[2]);
    let shear = of.shear_pa();
    [0, 1, 2, 3].map(|k| if k < 3 { spread + 2.0 * shear * strain[k] } else { shear * strain[3] })
}

impl Elastic {
    /// Assembles and factors, to be eliminated in this order of nodes; `None` when memory runs out
    /// or a modulus is not positive.
    pub fn new(mesh: &Mesh, order: &[usize], of: [Stiffness; 2]) -> Option<Self> {
        let (unknowns, size) = number(mesh, order);
        let block = |element: &Element| -> Vec<usize> {
            element.nodes.iter().flat_map(|&node| unknowns[node]).flatten().collect()
        };
        let blocks: Vec<Vec<usize>> = mesh.elements.iter().map(block).collect();
        let pattern = Arc::new(Pattern::of_blocks(size, blocks.iter().map(Vec::as_slice)));
        let mut matrix = Symmetric::zero(&pattern);
        let mut swelling = Vec::with_capacity(mesh.elements.len());
        for element in &mesh.elements {
            let of = of[index(element.part)];
            let ring = Swelling::new(element, numbers(element, &unknowns, size), of);
            matrix.add_block(&ring.unknowns, &stiffness(element, of));
            swelling.push(ring);
        }
        let factor = Order::new(&pattern, (0..size).collect())?.factor(&matrix)?;
        let condensed = Condensed::new(factor, mesh.pairs.len());
        let (stretch_by_strain, clearance_by_strain) = (Vec::new(), OnceLock::new());
        let mut elastic =
            Self { condensed, unknowns, of, swelling, stretch_by_strain, clearance_by_strain };
        elastic.stretch_by_strain = elastic.answer_to_strain(mesh, &elastic.pulled_apart(mesh));
        Some(elastic)
    }

    fn size(&self) -> usize {
        self.condensed.factor.size()
    }

    /// Clearance on the radius at a pair for a unit force at another (m/N), pairs by pairs.
    pub fn by_force(&self) -> &Full {
        &self.condensed.between
    }

    /// Clearance on the radius that thermal strains of the nodes make at every pair (m), by the way
    /// that has less to fetch: the influence of every node, or the factor.
    pub fn clearance_m(&self, strain: &[f64]) -> Vec<f64> {
        if self.influence_is_less(strain.len()) {
            self.clearance_by_strain.get_or_init(|| self.influence(strain.len())).of(strain)
        } else {
            self.exact_clearance_m(strain)
        }
    }

    /// The same by the factor.
    fn exact_clearance_m(&self, strain: &[f64]) -> Vec<f64> {
        self.condensed.difference(&mut self.load_n(strain))
    }

    fn influence_is_less(&self, nodes: usize) -> bool {
        let influence = nodes * self.by_force().size() * size_of::<f32>();
        let factor = self.condensed.factor.figures() * size_of::<f64>();
        influence < factor + self.swelling.len() * size_of::<Swelling>()
    }

    /// By Maxwell's and Betti's theorem, for a few pairs abreast.
    fn influence(&self, nodes: usize) -> Influence {
        let pairs = self.by_force().size();
        let rows = (0..pairs).step_by(ABREAST).flat_map(|first| {
            let moved = self.condensed.answers(first);
            let by_node = self.answers_to_strain(nodes, &moved);
            let row = move |lane: usize| by_node.iter().map(|lanes| lanes[lane]).collect();
            (0..ABREAST.min(pairs - first)).map(row)
        });
        Influence::from_rows(nodes, rows)
    }

    fn answers_to_strain(&self, nodes: usize, moved: &[[f64; ABREAST]]) -> Vec<[f64; ABREAST]> {
        let mut out = vec![[0.0; ABREAST]; nodes];
        wide(|| {
            for ring in &self.swelling {
                let here = ring.unknowns.map(|k| moved.get(k).copied().unwrap_or([0.0; ABREAST]));
                for (&node, loads) in ring.nodes.iter().zip(&ring.loads_n) {
                    let mut sums = out[node];
                    for (load, moved) in loads.iter().zip(&here) {
                        for (sum, moved) in sums.iter_mut().zip(moved) {
                            *sum += load * moved;
                        }
                    }
                    out[node] = sums;
                }
            }
        });
        out
    }

    /// How much longer thermal strains make the bore than the shaft in it (m).
    pub fn stretch_m(&self, strain: &[f64]) -> f64 {
        dot(&self.stretch_by_strain, strain)
    }

    /// The displacement of every node under thermal strains and the joint's forces (N, those that
    /// push the hub outward).
    pub fn displacement_m(&self, mesh: &Mesh, strain: &[f64], force_n: &[f64]) -> Vec<[f64; 2]> {
        let mut load = self.load_n(strain);
        for (pair, force) in mesh.pairs.iter().zip(force_n) {
            for (node, sign) in [(pair.hub, 1.0), (pair.shaft, -1.0)] {
                if let Some(k) = self.unknowns[node][0] {
                    load[k] += sign * force;
                }
            }
        }
        let moved = self.solved(load);
        let value = |k: Option<usize>| k.map_or(0.0, |k| moved[k]);
        self.unknowns.iter().map(|unknown| unknown.map(value)).collect()
    }

    fn solved(&self, mut load: Vec<f64>) -> Vec<f64> {
        self.condensed.factor.forward(&mut load);
        self.condensed.factor.backward(&mut load);
        load
    }

    /// Loads of thermal strain.
    fn load_n(&self, strain: &[f64]) -> Vec<f64> {
        let mut load = vec![0.0; self.size() + 1];
        for ring in &self.swelling {
            let mut sums = [0.0; 18];
            for (&node, loads) in ring.nodes.iter().zip(&ring.loads_n) {
                for (sum, by) in sums.iter_mut().zip(loads) {
                    *sum += strain[node] * by;
                }
            }
            for (&unknown, sum) in ring.unknowns.iter().zip(sums) {
                load[unknown] += sum;
            }
        }
        load.pop();
        load
    }

    /// How both bodies move when the ends of the bore and of the shaft in it are pulled apart.
    fn pulled_apart(&self, mesh: &Mesh) -> Vec<f64> {
        let mut load = vec![0.0; self.size()];
        if let [first, .., last] = mesh.pairs.as_slice() {
            for (node, sign) in
                [(last.hub, 1.0), (first.hub, -1.0), (last.shaft, -1.0), (first.shaft, 1.0)]
            {
                if let Some(k) = self.unknowns[node][1] {
                    load[k] += sign;
                }
            }
        }
        self.solved(load)
    }

    /// By Maxwell's and Betti's theorem: what a unit strain at each node does to the quantity
    /// whose unit load moves the unknowns so.
    fn answer_to_strain(&self, mesh: &Mesh, moved: &[f64]) -> Vec<f64> {
        let mut out = vec![0.0; mesh.nodes_m.len()];
        for ring in &self.swelling {
            let here = ring.unknowns.map(|k| moved.get(k).copied().unwrap_or(0.0));
            for (&node, loads) in ring.nodes.iter().zip(&ring.loads_n) {
                out[node] += dot(loads, &here);
            }
        }
        out
    }

    /// Von Mises stress at a place of an element (local coordinates), without thermal strain.
    pub fn von_mises_pa(&self, element: &Element, at: [f64; 2], field: &[[f64; 2]]) -> f64 {
        let point = element.ring.at(at);
        let mut total = [0.0; 4];
        for (n, &node) in element.nodes.iter().enumerate() {
            for (along, &moved) in field[node].iter().enumerate() {
                for (sum, part) in total.iter_mut().zip(strain(&point, n, along)) {
                    *sum += part * moved;
                }
            }
        }
        let [r, t, z, s] = stress(self.of[index(element.part)], total);
        (0.5 * ((r - t).powi(2) + (t - z).powi(2) + (z - r).powi(2)) + 3.0 * s * s).sqrt()
    }
}

/// How the shape function `n`, moved along r and along z, swells the metal.
fn spread(point: &Point, n: usize) -> [f64; 2] {
    let [dr, dz] = point.slope[n];
    [dr + point.value[n] / point.r_m, dz]
}

impl Swelling {
    fn new(element: &Element, unknowns: [usize; 18], of: Stiffness) -> Self {
        let mut loads_n = [[0.0; 18]; 9];
        for point in element.ring.points() {
            let pressed = of.held_pa() * point.volume_m3;
            let spread: [f64; 18] = std::array::from_fn(|k| spread(&point, k / 2)[k % 2]);
            for (loads, value) in loads_n.iter_mut().zip(point.value) {
                for (load, spread) in loads.iter_mut().zip(spread) {
                    *load += pressed * value * spread;
                }
            }
        }
        Self { nodes: element.nodes, unknowns, loads_n }
    }
}

/// The unknowns of a ring, along r and along z in turn; `held` for what is.
fn numbers(element: &Element, unknowns: &[[Option<usize>; 2]], held: usize) -> [usize; 18] {
    std::array::from_fn(|k| unknowns[element.nodes[k / 2]][k % 2].unwrap_or(held))
}

/// Numbers what may move, in the order of elimination: nothing off the axis, one node a body not
/// along it, and what opens the joint last.
fn number(mesh: &Mesh, order: &[usize]) -> (Vec<[Option<usize>; 2]>, usize) {
    let mut held = [None, None];
    for element in &mesh.elements {
        held[index(element.part)].get_or_insert(element.nodes[4]);
    }
    let mut unknowns = vec![[None; 2]; mesh.nodes_m.len()];
    let mut joined = vec![false; mesh.nodes_m.len()];
    let joint = mesh.joint();
    for &node in &joint {
        joined[node] = true;
    }
    let mut size = 0;
    let mut next = || {
        size += 1;
        Some(size - 1)
    };
    for &node in order {
        if mesh.nodes_m[node][0] > 0.0 && !joined[node] {
            unknowns[node][0] = next();
        }
        if !held.contains(&Some(node)) {
            unknowns[node][1] = next();
        }
    }
    for node in joint {
        unknowns[node][0] = next();
    }
    (unknowns, size)
}

/// What a ring adds to the stiffness of its unknowns.
fn stiffness(element: &Element, of: Stiffness) -> [[f64; 18]; 18] {
    let mut block = [[0.0; 18]; 18];
    for point in element.ring.points() {
        let strains: [[f64; 4]; 18] = std::array::from_fn(|k| strain(&point, k / 2, k % 2));
        for (row, left) in block.iter_mut().zip(&strains) {
            let stress = stress(of, *left).map(|stress| stress * point.volume_m3);
            for (entry, right) in row.iter_mut().zip(&strains) {
                *entry += stress.iter().zip(right).map(|(s, e)| s * e).sum::<f64>();
            }
        }
    }
    block
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kernel::dissection::order;
    use crate::kernel::grading::as_float;
    use crate::kernel::mesh::Plot;

    const STEEL: Stiffness = Stiffness { young_pa: 207e9, poisson: 0.292 };

    fn even(from: f64, to: f64, cells: usize) -> Vec<f64> {
        (0..=cells).map(|k| from + (to - from) * as_float(k) / as_float(cells)).collect()
    }

    /// A plain hub of 100 mm outside on a shaft of 50 mm, flush at both ends.
    fn flush(cells: usize, shaft_bore: f64) -> Mesh {
        let mut mesh = Mesh::default();
        let (z, all) = (even(0.0, 0.06, 3), |_: [f64; 2]| true);
        mesh.add(Part::Hub, &Plot { r_m: &even(0.025, 0.05, cells), z_m: &z, metal: &all });
        mesh.add(Part::Shaft, &Plot { r_m: &even(shaft_bore, 0.025, cells), z_m: &z, metal: &all });
        mesh.join(0.025, 0.06);
        mesh
    }

    /// u = α·ΔT·r, exactly: an even strain is within the shape functions.
    #[test]
    fn a_ring_heated_evenly_grows_as_a_bar() {
        let mesh = flush(3, 0.01);
        let elastic = Elastic::new(&mesh, &order(&mesh), [STEEL; 2]).unwrap();
        let strain = vec![11.5e-6 * 160.0; mesh.nodes_m.len()];
        let field = elastic.displacement_m(&mesh, &strain, &[]);
        for ([ur, _], [r, _]) in field.iter().zip(&mesh.nodes_m) {
            assert!((ur / (11.5e-6 * 160.0 * r) - 1.0).abs() < 1e-10, "{ur} at {r}");
        }
        let hub_only: Vec<f64> =
            mesh.nodes_m.iter().map(|[r, _]| if *r > 0.025 { 1e-3 } else { 0.0 }).collect();
        let direct = elastic.displacement_m(&mesh, &hub_only, &[]);
        for (pair, found) in mesh.pairs.iter().zip(elastic.exact_clearance_m(&hub_only)) {
            let wanted = direct[pair.hub][0] - direct[pair.shaft][0];
            assert!((found - wanted).abs() < 1e-12 * wanted.abs().max(1e-5), "{found} {wanted}");
        }
        let [first, last] = [mesh.pairs[0], mesh.pairs[mesh.pairs.len() - 1]];
        let long = |a: usize, b: usize| direct[b][1] - direct[a][1];
        let wanted = long(first.hub, last.hub) - long(first.shaft, last.shaft);
        let found = elastic.stretch_m(&hub_only);
        assert!((found / wanted - 1.0).abs() < 1e-9, "{found} {wanted}");
    }

    /// The influence of every node against the factor, in single precision of its figures.
    #[test]
    fn both_ways_lead_to_the_same_clearance() {
        for cells in [2, 7] {
            let mesh = flush(cells, 0.01);
            let elastic = Elastic::new(&mesh, &order(&mesh), [STEEL; 2]).unwrap();
            let strain: Vec<f64> =
                mesh.nodes_m.iter().map(|[r, z]| 1e-3 * (1.0 + 20.0 * r - 9.0 * z)).collect();
            let found = elastic.influence(strain.len()).of(&strain);
            for (found, wanted) in found.iter().zip(elastic.exact_clearance_m(&strain)) {
                assert!((found - wanted).abs() < 1e-7 * 1e-3 * 0.025, "{found} for {wanted}");
            }
        }
    }

    /// The clearance that an even pressure of 100 MPa makes in a flush joint, against Lamé:
    /// u = p·d/2·( (Ch + νh)/Eh + (Cs − νs)/Es ); and the order in which the mesh comes to it.
    /// Shigley, *Mechanical Engineering Design*, 9th ed., eq. 7-39.
    #[test]
    fn a_flush_joint_gives_as_lame_says() {
        for (bore, cs) in
            [(0.0, 1.0), (0.01, (0.025_f64.powi(2) + 1e-4) / (0.025_f64.powi(2) - 1e-4))]
        {
            let error = |cells: usize| {
                let mesh = flush(cells, bore);
                let elastic = Elastic::new(&mesh, &order(&mesh), [STEEL; 2]).unwrap();
                let force: Vec<f64> = mesh.pairs.iter().map(|pair| 100e6 * pair.area_m2).collect();
                let opened = elastic.by_force().times(&force);
                let ch =
                    (0.05_f64.powi(2) + 0.025_f64.powi(2)) / (0.05_f64.powi(2) - 0.025_f64.powi(2));
                let wanted = 100e6 * 0.025 / 207e9 * (ch + 0.292 + cs - 0.292);
                opened.iter().map(|u| (u / wanted - 1.0).abs()).fold(0.0, f64::max)
            };
            let errors = [error(2), error(4), error(8)];
            assert!(errors[1] < 1e-3 && errors[2] < 1e-4, "{errors:?}");
            let order = (errors[1] / errors[2]).log2();
            assert!(order > 3.5, "order {order}: {errors:?}");
        }
    }

    /// Bore and outside of a long tube that is hotter inside, free at its ends, in the middle of its
    /// length: u = 2·α·r·∫T·r dr/(b² − a²), with T = ΔT·ln(b/r)/ln(b/a); and the order in which the
    /// mesh comes to it.
    /// Timoshenko and Goodier, *Theory of Elasticity*, 3rd ed., article 151; from memory.
    #[test]
    fn a_tube_hot_inside_grows_as_timoshenko_says() {
        let (a, b, growth) = (0.025_f64, 0.05_f64, 11.5e-6 * 160.0);
        let ratio = (b / a).ln();
        let error = |cells: usize| {
            let mut mesh = Mesh::default();
            let z = even(0.0, 1.0, 20);
            mesh.add(Part::Hub, &Plot { r_m: &even(a, b, cells), z_m: &z, metal: &|_| true });
            let elastic = Elastic::new(&mesh, &order(&mesh), [STEEL; 2]).unwrap();
            let strain: Vec<f64> =
                mesh.nodes_m.iter().map(|[r, _]| growth * (b / r).ln() / ratio).collect();
            let moved = elastic.displacement_m(&mesh, &strain, &[]);
            let whole = growth / ratio * ((b * b - a * a) / 4.0 - a * a / 2.0 * ratio);
            let off = |(node, [r, z]): (usize, &[f64; 2])| {
                let ends = (r - a).abs().min((r - b).abs()) < 1e-12 && (z - 0.5).abs() < 1e-12;
                let wanted = 2.0 * whole * r / (b * b - a * a);
                ends.then(|| (moved[node][0] / wanted - 1.0).abs())
            };
            mesh.nodes_m.iter().enumerate().filter_map(off).fold(0.0, f64::max)
        };
        let errors = [error(2), error(4), error(8)];
        assert!(errors[2] < 1e-4, "{errors:?}");
        for pair in errors.windows(2) {
            let order = (pair[0] / pair[1]).log2();
            assert!(order > 3.5, "order {order}: {errors:?}");
        }
    }

    /// At the bore: hoop p·C and radial −p; von Mises of the two with no stress along the axis.
    #[test]
    fn the_bore_is_stressed_as_lame_says() {
        let mesh = flush(8, 0.0);
        let elastic = Elastic::new(&mesh, &order(&mesh), [STEEL; 2]).unwrap();
        let force: Vec<f64> = mesh.pairs.iter().map(|pair| 100e6 * pair.area_m2).collect();
        let field = elastic.displacement_m(&mesh, &vec![0.0; mesh.nodes_m.len()], &force);
        let (element, at) = mesh.find(Part::Hub, [0.025, 0.03]).unwrap();
        let found = elastic.von_mises_pa(element, at, &field);
        let (hoop, radial): (f64, f64) = (100e6 * 5.0 / 3.0, -100e6);
        let wanted = (hoop * hoop - hoop * radial + radial * radial).sqrt();
        assert!((found / wanted - 1.0).abs() < 3e-3, "{found} for {wanted}");
    }
}
