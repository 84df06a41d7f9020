//! Heat in the metal: M·dT/dt + K·T = heat that comes in at the nodes.

use std::sync::Arc;

use super::mesh::{Element, Mesh, Part};
use super::sparse::{Order, Pattern, Symmetric};

/// How a body conducts and stores heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Conductor {
    /// Thermal conductivity.
    pub conductivity_w_mk: f64,
    /// Density times specific heat capacity.
    pub capacity_j_m3k: f64,
}

/// The matrices of conduction of both bodies, not yet joined.
#[derive(Clone, Debug)]
pub(crate) struct Conduction {
    /// K = ∫ k·∇N·∇N dV (W/K).
    pub stiffness: Symmetric,
    /// M = ∫ ρ·c·N·N dV (J/K).
    pub mass: Symmetric,
    /// How both, and any sum of them, are eliminated.
    pub order: Order,
}

impl Conduction {
    /// Assembles both, to be eliminated in this order of nodes but for the joint, which goes last;
    /// `None` when memory runs out.
    pub fn new(mesh: &Mesh, order: &[usize], of: impl Fn(Part) -> Conductor) -> Option<Self> {
        let blocks = mesh.elements.iter().map(|element| element.nodes.as_slice());
        let pattern = Arc::new(Pattern::of_blocks(mesh.nodes_m.len(), blocks));
        let (mut stiffness, mut mass) = (Symmetric::zero(&pattern), Symmetric::zero(&pattern));
        for element in &mesh.elements {
            let [flow, store] = blocks_of(element, of(element.part));
            stiffness.add_block(&element.nodes, &flow);
            mass.add_block(&element.nodes, &store);
        }
        let joint = mesh.joint();
        let mut joined = vec![false; mesh.nodes_m.len()];
        for &node in &joint {
            joined[node] = true;
        }
        let before = order.iter().copied().filter(|&node| !joined[node]);
        let sequence = before.chain(joint.iter().copied()).collect();
        let order = Order::new(&pattern, sequence)?;
        Some(Self { stiffness, mass, order })
    }
}

/// What one ring adds to both matrices.
fn blocks_of(element: &Element, of: Conductor) -> [[[f64; 9]; 9]; 2] {
    let (mut flow, mut store) = ([[0.0; 9]; 9], [[0.0; 9]; 9]);
    for point in element.ring.points() {
        let conducts = of.conductivity_w_mk * point.volume_m3;
        let stores = of.capacity_j_m3k * point.volume_m3;
        for (a, [ar, az]) in point.slope.into_iter().enumerate() {
            for (b, [br, bz]) in point.slope.into_iter().enumerate() {
                flow[a][b] += conducts * (ar * br + az * bz);
                store[a][b] += stores * (point.value[a] * point.value[b]);
            }
        }
    }
    [flow, store]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kernel::dissection::order;
    use crate::kernel::grading::as_float;
    use crate::kernel::mesh::Plot;

    fn tube(r_m: [f64; 2], cells: usize) -> Mesh {
        let mut mesh = Mesh::default();
        let r: Vec<f64> = (0..=cells)
            .map(|k| r_m[0] + (r_m[1] - r_m[0]) * as_float(k) / as_float(cells))
            .collect();
        mesh.add(Part::Hub, &Plot { r_m: &r, z_m: &[0.0, 0.02], metal: &|_| true });
        mesh
    }

    /// Heat through a thick tube between two temperatures: Q = 2π·k·L·ΔT / ln(R/r).
    /// Incropera et al., *Fundamentals of Heat and Mass Transfer*, 3.3.1; from memory.
    /// The energy of the exact field overstates it by the fourth power of the mesh.
    #[test]
    fn a_tube_conducts_as_the_logarithm_says() {
        let flow = |cells: usize| {
            let mesh = tube([0.03, 0.09], cells);
            let conductor = Conductor { conductivity_w_mk: 50.0, capacity_j_m3k: 3.7e6 };
            let conduction = Conduction::new(&mesh, &order(&mesh), |_| conductor).unwrap();
            let exact = |[r, _]: &[f64; 2]| (0.09 / r).ln() / 3.0_f64.ln();
            let field: Vec<f64> = mesh.nodes_m.iter().map(exact).collect();
            let heat = conduction.stiffness.times(&field);
            field.iter().zip(&heat).map(|(t, q)| t * q).sum::<f64>()
        };
        let exact = std::f64::consts::TAU * 50.0 * 0.02 / 3.0_f64.ln();
        let errors = [8, 16].map(|cells| (flow(cells) / exact - 1.0).abs());
        assert!(errors[1] < 1e-6, "{errors:?}");
        let order = (errors[0] / errors[1]).log2();
        assert!(order > 3.7, "order {order}: {errors:?}");
    }

    #[test]
    fn a_body_stores_its_mass_times_its_heat_capacity() {
        let mesh = tube([0.0, 0.05], 3);
        let conductor = Conductor { conductivity_w_mk: 50.0, capacity_j_m3k: 3.7e6 };
        let conduction = Conduction::new(&mesh, &order(&mesh), |_| conductor).unwrap();
        let stored: f64 = conduction.mass.times(&vec![2.0; mesh.nodes_m.len()]).iter().sum();
        let wanted = 2.0 * 3.7e6 * std::f64::consts::PI * 0.0025 * 0.02;
        assert!((stored / wanted - 1.0).abs() < 1e-13, "{stored} for {wanted}");
        let still = conduction.stiffness.times(&vec![2.0; mesh.nodes_m.len()]);
        assert!(still.iter().all(|watts| watts.abs() < 1e-9), "an even temperature moves no heat");
    }
}
