//! Growth and squeeze of both bodies: K·u = loads of thermal strain and of the joint's forces.
//!
//! Linear and axisymmetric, small strains, one modulus a body. Thermal strain is given at the
//! nodes and varies as the shape functions between them. Displacements come as `[u_r, u_z]`.
//! Neither body is held along the axis but at one node, which carries nothing.
//!
//! The joint needs of all that only how its clearance answers, and that is linear:
//! clearance = (row of strains) · ε + (row of forces) · λ − interference; [`Give`] holds the rows.

use std::sync::Arc;

use super::dense::Full;
use super::element::Point;
use super::mesh::{Element, Mesh, Pair, Part};
use super::sparse::{Factor, Order, Pattern, Symmetric};

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
    factor: Factor,
    unknowns: Vec<[Option<usize>; 2]>,
    size: usize,
    of: [Stiffness; 2],
}

/// How the joint's clearance answers strains and forces.
#[derive(Clone, Debug)]
pub(crate) struct Give {
    /// Clearance on the radius at a pair for a unit thermal strain at a node (m), pairs by nodes.
    pub by_strain: Full,
    /// Clearance on the radius at a pair for a unit force at another (m/N), pairs by pairs.
    pub by_force: Full,
    /// How much longer the bore grows than the shaft in it, for a unit strain at a node (m).
    pub stretch_by_strain: Vec<f64>,
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
    /// Assembles and factors; `None` when memory runs out or a modulus is not positive.
    pub fn new(mesh: &Mesh, of: [Stiffness; 2]) -> Option<Self> {
        let (unknowns, size) = number(mesh);
        let block = |element: &Element| -> Vec<usize> {
            element.nodes.iter().flat_map(|&node| unknowns[node]).flatten().collect()
        };
        let blocks: Vec<Vec<usize>> = mesh.elements.iter().map(block).collect();
        let pattern = Arc::new(Pattern::of_blocks(size, blocks.iter().map(Vec::as_slice)));
        let mut matrix = Symmetric::zero(&pattern);
        for element in &mesh.elements {
            add_stiffness(&mut matrix, element, &unknowns, of[index(element.part)]);
        }
        let factor = Order::new(&pattern)?.factor(&matrix)?;
        Some(Self { factor, unknowns, size, of })
    }

    /// The displacement of every node under thermal strains and the joint's forces (N, those that
    /// push the hub outward).
    pub fn displacement_m(&self, mesh: &Mesh, strain: &[f64], force_n: &[f64]) -> Vec<[f64; 2]> {
        let mut load = vec![0.0; self.size];
        for element in &mesh.elements {
            let held = self.of[index(element.part)].held_pa();
            for point in element.ring.points() {
                let here: f64 = (0..9).map(|n| point.value[n] * strain[element.nodes[n]]).sum();
                for (n, &node) in element.nodes.iter().enumerate() {
                    for (unknown, spread) in self.unknowns[node].iter().zip(spread(&point, n)) {
                        if let Some(k) = unknown {
                            load[*k] += held * here * spread * point.volume_m3;
                        }
                    }
                }
            }
        }
        for (pair, force) in mesh.pairs.iter().zip(force_n) {
            self.push(&mut load, pair, *force);
        }
        self.factor.solve(&mut load);
        self.nodal(&load)
    }

    /// A unit of clearance at a pair: outward on the hub, inward on the shaft.
    fn push(&self, load: &mut [f64], pair: &Pair, amount: f64) {
        for (node, sign) in [(pair.hub, 1.0), (pair.shaft, -1.0)] {
            if let Some(k) = self.unknowns[node][0] {
                load[k] += sign * amount;
            }
        }
    }

    fn nodal(&self, solution: &[f64]) -> Vec<[f64; 2]> {
        let value = |k: Option<usize>| k.map_or(0.0, |k| solution[k]);
        self.unknowns.iter().map(|unknown| unknown.map(value)).collect()
    }

    /// How the joint gives: one solution for each pair, and one for the stretch.
    pub fn give(&self, mesh: &Mesh) -> Give {
        let count = mesh.pairs.len();
        let mut columns = vec![0.0; self.size * (count + 1)];
        for (pair, load) in mesh.pairs.iter().zip(columns.chunks_exact_mut(self.size.max(1))) {
            self.push(load, pair, 1.0);
        }
        if let [first, .., last] = mesh.pairs.as_slice() {
            let load = &mut columns[self.size * count..];
            for (node, sign) in
                [(last.hub, 1.0), (first.hub, -1.0), (last.shaft, -1.0), (first.shaft, 1.0)]
            {
                if let Some(k) = self.unknowns[node][1] {
                    load[k] += sign;
                }
            }
        }
        self.factor.solve(&mut columns);
        let fields: Vec<Vec<[f64; 2]>> =
            columns.chunks_exact(self.size.max(1)).map(|column| self.nodal(column)).collect();
        let by_strain: Vec<Vec<f64>> =
            fields.iter().map(|field| self.answer_to_strain(mesh, field)).collect();
        let by_force = fields[..count].iter().flat_map(|field| {
            mesh.pairs.iter().map(|pair| field[pair.hub][0] - field[pair.shaft][0])
        });
        Give {
            by_force: Full::from_rows(count, by_force.collect()),
            stretch_by_strain: by_strain[count].clone(),
            by_strain: Full::from_rows(mesh.nodes_m.len(), by_strain[..count].concat()),
        }
    }

    /// By Maxwell's and Betti's theorem: what a unit strain at each node does to the quantity
    /// whose unit load moves the bodies as `field`.
    fn answer_to_strain(&self, mesh: &Mesh, field: &[[f64; 2]]) -> Vec<f64> {
        let mut out = vec![0.0; mesh.nodes_m.len()];
        for element in &mesh.elements {
            let held = self.of[index(element.part)].held_pa();
            for point in element.ring.points() {
                let swelling: f64 = (0..9)
                    .map(|n| {
                        let ([ur, uz], [sr, sz]) = (field[element.nodes[n]], spread(&point, n));
                        ur * sr + uz * sz
                    })
                    .sum();
                for (n, &node) in element.nodes.iter().enumerate() {
                    out[node] += held * swelling * point.value[n] * point.volume_m3;
                }
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

/// Numbers what may move: nothing off the axis, and one node a body not along it.
fn number(mesh: &Mesh) -> (Vec<[Option<usize>; 2]>, usize) {
    let mut held = [None, None];
    for element in &mesh.elements {
        held[index(element.part)].get_or_insert(element.nodes[4]);
    }
    let mut size = 0;
    let mut next = |free: bool| {
        free.then(|| {
            size += 1;
            size - 1
        })
    };
    let unknowns = mesh
        .nodes_m
        .iter()
        .enumerate()
        .map(|(node, [r, _])| [next(*r > 0.0), next(!held.contains(&Some(node)))])
        .collect();
    (unknowns, size)
}

fn add_stiffness(
    matrix: &mut Symmetric,
    element: &Element,
    unknowns: &[[Option<usize>; 2]],
    of: Stiffness,
) {
    let mut block = [[0.0; 18]; 18];
    for point in element.ring.points() {
        let strains: [[f64; 4]; 18] = std::array::from_fn(|k| strain(&point, k / 2, k % 2));
        for (row, left) in block.iter_mut().zip(&strains) {
            let stress = stress(of, *left);
            for (entry, right) in row.iter_mut().zip(&strains) {
                let work: f64 = stress.iter().zip(right).map(|(s, e)| s * e).sum();
                *entry += work * point.volume_m3;
            }
        }
    }
    let unknown = |k: usize| unknowns[element.nodes[k / 2]][k % 2];
    for (a, row) in block.iter().enumerate() {
        for (b, value) in row.iter().enumerate() {
            if let (Some(row), Some(column)) = (unknown(a), unknown(b)) {
                matrix.add(row, column, *value);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
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
        let elastic = Elastic::new(&mesh, [STEEL; 2]).unwrap();
        let strain = vec![11.5e-6 * 160.0; mesh.nodes_m.len()];
        let field = elastic.displacement_m(&mesh, &strain, &[]);
        for ([ur, _], [r, _]) in field.iter().zip(&mesh.nodes_m) {
            assert!((ur / (11.5e-6 * 160.0 * r) - 1.0).abs() < 1e-10, "{ur} at {r}");
        }
        let give = elastic.give(&mesh);
        let hub_only: Vec<f64> =
            mesh.nodes_m.iter().map(|[r, _]| if *r > 0.025 { 1e-3 } else { 0.0 }).collect();
        let direct = elastic.displacement_m(&mesh, &hub_only, &[]);
        for (pair, row) in mesh.pairs.iter().zip(give.by_strain.rows()) {
            let found: f64 = row.iter().zip(&hub_only).map(|(a, b)| a * b).sum();
            let wanted = direct[pair.hub][0] - direct[pair.shaft][0];
            assert!((found - wanted).abs() < 1e-12 * wanted.abs().max(1e-5), "{found} {wanted}");
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
                let elastic = Elastic::new(&mesh, [STEEL; 2]).unwrap();
                let force: Vec<f64> = mesh.pairs.iter().map(|pair| 100e6 * pair.area_m2).collect();
                let opened = elastic.give(&mesh).by_force.times(&force);
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

    /// At the bore: hoop p·C and radial −p; von Mises of the two with no stress along the axis.
    #[test]
    fn the_bore_is_stressed_as_lame_says() {
        let mesh = flush(8, 0.0);
        let elastic = Elastic::new(&mesh, [STEEL; 2]).unwrap();
        let force: Vec<f64> = mesh.pairs.iter().map(|pair| 100e6 * pair.area_m2).collect();
        let field = elastic.displacement_m(&mesh, &vec![0.0; mesh.nodes_m.len()], &force);
        let (element, at) = mesh.find(Part::Hub, [0.025, 0.03]).unwrap();
        let found = elastic.von_mises_pa(element, at, &field);
        let (hoop, radial): (f64, f64) = (100e6 * 5.0 / 3.0, -100e6);
        let wanted = (hoop * hoop - hoop * radial + radial * radial).sqrt();
        assert!((found / wanted - 1.0).abs() < 3e-3, "{found} for {wanted}");
    }
}
