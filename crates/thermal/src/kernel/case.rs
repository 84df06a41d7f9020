//! One case: a model with its fit, its air, its heat, and how the joint conducts.

use super::contact::forces_n;
use super::crossing::{Crossing, radiated_w_m2k};
use super::growth::Growth;
use super::mesh::Part;
use super::model::Model;

/// The air round a body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Film {
    /// Temperature of air and walls.
    pub air_k: f64,
    /// Convection.
    pub convection_w_m2k: f64,
    /// Emissivity of the surface.
    pub emissivity: f64,
}

impl Film {
    fn loss_w_m2(&self, surface_k: f64) -> f64 {
        let radiated = self.emissivity * radiated_w_m2k(surface_k, self.air_k);
        (self.convection_w_m2k + radiated) * (surface_k - self.air_k)
    }
}

/// Heat put in at some nodes for a while.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Burn {
    /// From this tick on, up to the other.
    pub ticks: [u64; 2],
    /// Watts at nodes.
    pub watts: Vec<(usize, f64)>,
}

/// Whether the hub is on its shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Place {
    /// On the way: the bore and the seat lose heat to the air, each for itself.
    Apart,
    /// In its place on the shaft.
    Home,
}

/// A case.
#[derive(Clone)]
pub(crate) struct Case<'a> {
    /// Metal and mesh.
    pub model: &'a Model,
    /// Growth of hub and shaft.
    pub growth: [Growth; 2],
    /// Half the diametral interference at 20 °C.
    pub interference_r_m: f64,
    /// How heat crosses the joint.
    pub crossing: Crossing,
    /// Air round the hub and round the shaft.
    pub film: [Film; 2],
    /// Where the hub is.
    pub place: Place,
    /// Heat that is put in.
    pub burns: Vec<Burn>,
}

/// The joint at a moment, pair by pair.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Joint {
    /// Clearance on the radius if nothing touched: negative where it does.
    pub free_gap_m: Vec<f64>,
    /// Clearance on the radius.
    pub gap_m: Vec<f64>,
    /// Contact force.
    pub force_n: Vec<f64>,
}

impl Joint {
    /// The least clearance on the radius; how deep it would overlap where it touches.
    pub fn least_m(&self) -> f64 {
        self.free_gap_m.iter().copied().fold(f64::INFINITY, f64::min)
    }

    /// ∫ p dA.
    pub fn force_n(&self) -> f64 {
        self.force_n.iter().sum()
    }
}

/// What leaves to the air, and what is left out of the kept factors.
pub(crate) struct Losses {
    /// Heat that leaves each node (W).
    pub at_nodes_w: Vec<(usize, f64)>,
    /// Heat that leaves each body (W).
    pub of_bodies_w: [f64; 2],
}

impl Case<'_> {
    fn body<'b, T>(&self, both: &'b [T; 2], node: usize) -> &'b T {
        &both[usize::from(self.model.part(node) == Part::Shaft)]
    }

    /// Thermal strain at every node.
    pub fn strain(&self, temperature_k: &[f64]) -> Vec<f64> {
        let (hub, shaft) = temperature_k.split_at(self.model.hub_nodes);
        let grown = |growth: usize, k: &f64| self.growth[growth].strain(*k);
        hub.iter().map(|k| grown(0, k)).chain(shaft.iter().map(|k| grown(1, k))).collect()
    }

    /// Clearance on the radius at every pair if nothing touched.
    pub fn free_gap_m(&self, temperature_k: &[f64]) -> Vec<f64> {
        let mut gap = self.model.elastic.clearance_m(&self.strain(temperature_k));
        for gap in &mut gap {
            *gap -= self.interference_r_m;
        }
        gap
    }

    /// The joint for what its clearance would be if nothing touched; `guess` is what it was shortly
    /// before.
    pub fn joint(&self, free_gap_m: Vec<f64>, guess: &Joint) -> Option<Joint> {
        if self.place == Place::Apart || free_gap_m.iter().all(|gap| *gap >= 0.0) {
            let force_n = vec![0.0; free_gap_m.len()];
            return Some(Joint { gap_m: free_gap_m.clone(), free_gap_m, force_n });
        }
        let by_force = self.model.elastic.by_force();
        let force_n = forces_n(by_force, &free_gap_m, &guess.force_n)?;
        let opened = by_force.times(&force_n);
        let gap_m =
            free_gap_m.iter().zip(opened).map(|(gap, more)| (gap + more).max(0.0)).collect();
        Some(Joint { free_gap_m, gap_m, force_n })
    }

    /// Conductance of the joint at every pair (W/K).
    pub fn joint_w_k(&self, joint: &Joint, temperature_k: &[f64]) -> Vec<f64> {
        let pairs = self.model.mesh.pairs.iter().zip(joint.gap_m.iter().zip(&joint.force_n));
        pairs
            .map(|(pair, (gap, force))| {
                if self.place == Place::Apart {
                    return 0.0;
                }
                let (hub, shaft) = (temperature_k[pair.hub], temperature_k[pair.shaft]);
                let pressure = force / pair.area_m2;
                pair.area_m2 * self.crossing.conductance_w_m2k(*gap, pressure, hub, shaft)
            })
            .collect()
    }

    /// What leaves to the air.
    pub fn losses(&self, temperature_k: &[f64]) -> Losses {
        let mut losses = Losses { at_nodes_w: Vec::new(), of_bodies_w: [0.0; 2] };
        let mut lose = |node: usize, area_m2: f64| {
            let watts = area_m2 * self.body(&self.film, node).loss_w_m2(temperature_k[node]);
            losses.at_nodes_w.push((node, watts));
            losses.of_bodies_w[usize::from(self.model.part(node) == Part::Shaft)] += watts;
        };
        self.model.skins.iter().for_each(|skin| lose(skin.node, skin.area_m2));
        if self.place == Place::Apart {
            for pair in &self.model.mesh.pairs {
                lose(pair.hub, pair.area_m2);
                lose(pair.shaft, pair.area_m2);
            }
        }
        losses
    }

    /// Heat put in between two ticks: at nodes, with no switch in between.
    pub fn given_w(&self, tick: u64) -> impl Iterator<Item = (usize, f64)> {
        let on = move |burn: &&Burn| (burn.ticks[0]..burn.ticks[1]).contains(&tick);
        self.burns.iter().filter(on).flat_map(|burn| burn.watts.iter().copied())
    }

    /// The next tick at which heat switches.
    pub fn next_switch(&self, tick: u64) -> Option<u64> {
        let switches = self.burns.iter().flat_map(|burn| burn.ticks);
        switches.filter(|switch| *switch > tick).min()
    }
}
