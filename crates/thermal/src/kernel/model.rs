//! A hub and its shaft ready for computing: what does not change from one moment to the next.
//!
//! The matrix of a time step, M + τ·(K + surface films), is factored once a step size and kept.
//! The joint couples the bodies through few nodes, so it enters as a change of low rank
//! (Woodbury): these nodes are eliminated last, B = d·A⁻¹·dᵀ of the difference d = hub − shaft at
//! the pairs is kept beside the factor, and any conductance of the joint costs one small full
//! system on the way through the factor.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex};

use super::condensed::Condensed;
use super::conduction::{Conduction, Conductor};
use super::dense::Cholesky;
use super::dissection;
use super::elastic::{Elastic, Stiffness};
use super::mesh::{Facing, Mesh, Part};
use super::section::Section;
use super::sparse::Symmetric;

/// Surface that a node stands for, open to the air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Skin {
    /// The node.
    pub node: usize,
    /// Its surface.
    pub area_m2: f64,
    /// Its body.
    pub part: Part,
}

/// A hub, its shaft, and all that can be made ready beforehand.
pub(crate) struct Model {
    /// The rings.
    pub mesh: Mesh,
    /// Nodes below this number are the hub's.
    pub hub_nodes: usize,
    /// Conduction.
    pub conduction: Conduction,
    /// Elasticity.
    pub elastic: Elastic,
    /// Where heat leaves to the air. The bore of a hollow shaft is taken to lose none.
    pub skins: Vec<Skin>,
    /// The film that the kept factors hold; the difference from the true one is iterated.
    pub film_w_m2k: f64,
    /// What each node stores by itself: the diagonal of M (J/K).
    pub stored_j_k: Vec<f64>,
    with_films: Symmetric,
    steps: Mutex<BTreeMap<u64, Arc<Step>>>,
}

/// A factored time step.
pub(crate) struct Step {
    /// τ, what the rates are multiplied by (s).
    pub tau_s: f64,
    condensed: Condensed,
}

/// A time step with the joint at a conductance.
pub(crate) struct Coupled<'a> {
    step: &'a Step,
    /// √(τ·h) at each pair.
    root: Vec<f64>,
    /// 1 + √(τ·h)·B·√(τ·h).
    inner: Cholesky,
}

impl Step {
    /// Solves (M + τ·(K + films))·x = right in place: the joint left out.
    pub fn smooth(&self, right: &[f64]) -> Vec<f64> {
        self.condensed.factor.solve(right)
    }

    /// With a conductance of the joint (W/K) at each pair; `None` when a number is none.
    pub fn coupled(&self, joint_w_k: &[f64]) -> Option<Coupled<'_>> {
        let root: Vec<f64> = joint_w_k.iter().map(|h| (self.tau_s * h).sqrt()).collect();
        let between = &self.condensed.between;
        let entry = |i: usize, j: usize| {
            root[i] * between.row(j)[i] * root[j] + f64::from(u8::from(i == j))
        };
        let inner = Cholesky::new(root.len(), entry)?;
        Some(Coupled { step: self, root, inner })
    }
}

impl Coupled<'_> {
    /// What crosses the joint for a difference that there would be without it.
    fn flow(&self, mut difference: Vec<f64>) -> Vec<f64> {
        difference.iter_mut().zip(&self.root).for_each(|(value, root)| *value *= root);
        self.inner.solve(&mut difference);
        difference.iter_mut().zip(&self.root).for_each(|(value, root)| *value *= root);
        difference
    }

    /// Solves (M + τ·(K + films + joint))·T = right; `None` when a number is none.
    pub fn solve(&self, right: &[f64]) -> Option<Vec<f64>> {
        let condensed = &self.step.condensed;
        let mut ordered = condensed.factor.ordered(right);
        let flow = self.flow(condensed.difference(&mut ordered));
        condensed.less(&mut ordered, &flow);
        condensed.factor.backward(&mut ordered);
        let temperature = condensed.factor.restored(&ordered);
        temperature.iter().all(|value| value.is_finite()).then_some(temperature)
    }

    /// The most by which the difference at a pair would change if so much more heat (J) crossed
    /// there (K).
    pub fn shift_k(&self, more_j: &[f64]) -> f64 {
        let between = &self.step.condensed.between;
        let apart = between.times(more_j);
        let back = between.times(&self.flow(apart.clone()));
        apart.iter().zip(back).map(|(apart, back)| (apart - back).abs()).fold(0.0, f64::max)
    }
}

impl Model {
    /// Meshes and factors; `None` when memory runs out or a figure is not physical.
    pub fn new(
        section: &Section,
        conductors: [Conductor; 2],
        stiffness: [Stiffness; 2],
        film_w_m2k: f64,
    ) -> Option<Self> {
        let mesh = section.mesh();
        let order = dissection::order(&mesh);
        let of = |part| conductors[usize::from(part == Part::Shaft)];
        let conduction = Conduction::new(&mesh, &order, of)?;
        let elastic = Elastic::new(&mesh, &order, stiffness)?;
        let skins = skins(&mesh);
        let mut with_films = conduction.stiffness.clone();
        for skin in &skins {
            with_films.add(skin.node, skin.node, film_w_m2k * skin.area_m2);
        }
        let hub = mesh.elements.iter().filter(|element| element.part == Part::Hub);
        let hub_nodes = hub.flat_map(|element| element.nodes).max().map_or(0, |node| node + 1);
        let (steps, stored_j_k) = (Mutex::default(), conduction.mass.diagonal());
        Some(Self {
            mesh,
            hub_nodes,
            conduction,
            elastic,
            skins,
            film_w_m2k,
            stored_j_k,
            with_films,
            steps,
        })
    }

    /// The body of a node.
    pub fn part(&self, node: usize) -> Part {
        if node < self.hub_nodes { Part::Hub } else { Part::Shaft }
    }

    /// The step of a size, by its number of ticks; `None` when it cannot be factored.
    pub fn step(&self, ticks: u64, tau_s: f64) -> Option<Arc<Step>> {
        let mut steps = self.steps.lock().ok()?;
        if let Some(step) = steps.get(&ticks) {
            return Some(Arc::clone(step));
        }
        let step = Arc::new(self.factored(tau_s)?);
        steps.insert(ticks, Arc::clone(&step));
        Some(step)
    }

    fn factored(&self, tau_s: f64) -> Option<Step> {
        let matrix = self.conduction.mass.plus(tau_s, &self.with_films);
        let factor = self.conduction.order.factor(&matrix)?;
        Some(Step { tau_s, condensed: Condensed::new(factor, self.mesh.pairs.len()) })
    }

    /// Hub less shaft, at each pair.
    pub fn differences<'a>(&'a self, nodal: &'a [f64]) -> impl Iterator<Item = f64> + 'a {
        self.mesh.pairs.iter().map(|pair| nodal[pair.hub] - nodal[pair.shaft])
    }
}

/// The free surface, node by node.
fn skins(mesh: &Mesh) -> Vec<Skin> {
    let mut areas: BTreeMap<usize, Skin> = BTreeMap::new();
    let open = |edge: &&super::mesh::Edge| edge.part == Part::Hub || edge.facing != Facing::Inward;
    for edge in mesh.edges.iter().filter(open) {
        for (&node, &share) in edge.nodes.iter().zip(&edge.shares_m2) {
            areas.entry(node).or_insert(Skin { node, area_m2: 0.0, part: edge.part }).area_m2 +=
                share;
        }
    }
    areas.into_values().collect()
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use crate::kernel::elastic::Stiffness;
    use crate::kernel::grading::as_float;

    pub(crate) const STEEL: Stiffness = Stiffness { young_pa: 207e9, poisson: 0.292 };

    impl Model {
        /// The same with only its outside open to the air: a piece of an endless bar.
        pub(crate) fn endless(mut self) -> Self {
            let outside: Vec<usize> = self
                .mesh
                .edges
                .iter()
                .filter(|edge| edge.part == Part::Hub && edge.facing == Facing::Outward)
                .flat_map(|edge| edge.nodes)
                .collect();
            let mut areas: BTreeMap<usize, f64> = BTreeMap::new();
            for edge in self
                .mesh
                .edges
                .iter()
                .filter(|edge| edge.part == Part::Hub && edge.facing == Facing::Outward)
            {
                for (node, share) in edge.nodes.iter().zip(edge.shares_m2) {
                    *areas.entry(*node).or_insert(0.0) += share;
                }
            }
            self.skins.retain(|skin| outside.contains(&skin.node));
            self.with_films = self.conduction.stiffness.clone();
            for skin in &mut self.skins {
                skin.area_m2 = areas[&skin.node];
                self.with_films.add(skin.node, skin.node, self.film_w_m2k * skin.area_m2);
            }
            self
        }
    }

    /// A bar of 50 mm radius, cut at 25 mm into hub and shaft.
    pub(crate) fn bar(film_w_m2k: f64, coarseness: f64) -> Model {
        let section = Section {
            bore_r_m: 0.025,
            slices_m: vec![(0.0, 0.02, 0.05)],
            hollow_r_m: 0.0,
            beyond_m: [0.0; 2],
            marks_m: vec![],
            coarseness,
        };
        let conductor = Conductor { conductivity_w_mk: 50.0, capacity_j_m3k: 3.7e6 };
        Model::new(&section, [conductor; 2], [STEEL; 2], film_w_m2k).unwrap()
    }

    /// The low-rank change against the whole: what comes out satisfies the joined equations.
    #[test]
    fn the_joint_enters_as_a_change_of_low_rank() {
        let model = bar(10.0, 1.0);
        let step = model.step(1024, 0.3).unwrap();
        let count = model.mesh.nodes_m.len();
        let right: Vec<f64> = (0..count).map(|k| 100.0 + as_float(k % 7)).collect();
        let conductance: Vec<f64> =
            model.mesh.pairs.iter().map(|pair| 800.0 * pair.area_m2).collect();
        let coupled = step.coupled(&conductance).unwrap();
        let found = coupled.solve(&right).unwrap();
        let mut back = model.conduction.mass.plus(0.3, &model.with_films).times(&found);
        for ((pair, w_k), kelvin) in
            model.mesh.pairs.iter().zip(&conductance).zip(model.differences(&found))
        {
            back[pair.hub] += 0.3 * w_k * kelvin;
            back[pair.shaft] -= 0.3 * w_k * kelvin;
        }
        for (back, right) in back.iter().zip(&right) {
            assert!((back / right - 1.0).abs() < 1e-9, "{back} for {right}");
        }
    }
}
