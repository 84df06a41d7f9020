//! Nine-node rings that fill the section of a hub and of its shaft.
//!
//! Both bodies stand in one mesh without sharing a node. Over the length of the bore their
//! stations agree, so that every node of the bore has its partner on the shaft.

use super::element::{Ring, edge_shares};

/// Which body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Part {
    /// The hub.
    Hub,
    /// The shaft.
    Shaft,
}

/// Which way a surface looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Facing {
    /// Away from the axis.
    Outward,
    /// Towards the axis.
    Inward,
    /// Towards smaller z.
    Back,
    /// Towards larger z.
    Front,
}

/// A ring of one body.
#[derive(Clone, Debug)]
pub(crate) struct Element {
    /// Node `3·j + i` at the i-th radius and the j-th station.
    pub nodes: [usize; 9],
    /// Its section.
    pub ring: Ring,
    /// Its body.
    pub part: Part,
}

/// A side of an element with nothing of its own body beyond it.
#[derive(Clone, Debug)]
pub(crate) struct Edge {
    /// Its nodes, the middle one between.
    pub nodes: [usize; 3],
    /// ∫ N 2π·r ds of each node (m²).
    pub shares_m2: [f64; 3],
    /// Its ends, each `[r, z]`.
    pub ends_m: [[f64; 2]; 2],
    /// Its body.
    pub part: Part,
    /// Which way it looks.
    pub facing: Facing,
}

/// Two nodes that face each other across the joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pair {
    /// On the bore.
    pub hub: usize,
    /// On the shaft.
    pub shaft: usize,
    /// Station along the bore (m).
    pub z_m: f64,
    /// The surface that the pair stands for (m²).
    pub area_m2: f64,
}

/// Rings, their free sides, and the pairs of the joint.
#[derive(Clone, Debug, Default)]
pub(crate) struct Mesh {
    /// `[r, z]` of every node (m).
    pub nodes_m: Vec<[f64; 2]>,
    /// The rings of both bodies.
    pub elements: Vec<Element>,
    /// Their free sides.
    pub edges: Vec<Edge>,
    /// The joint, in order of z.
    pub pairs: Vec<Pair>,
}

/// The lines of one body, and which of the cells between them it fills.
pub(crate) struct Plot<'a> {
    /// Radii of the lines.
    pub r_m: &'a [f64],
    /// Stations of the lines.
    pub z_m: &'a [f64],
    /// True for a cell, by the middle of its section, that is metal.
    pub metal: &'a dyn Fn([f64; 2]) -> bool,
}

impl Plot<'_> {
    fn cell(&self, i: usize, j: usize) -> Option<Ring> {
        let (Some(r), Some(z)) = (self.r_m.get(i..i + 2), self.z_m.get(j..j + 2)) else {
            return None;
        };
        let ring = Ring { r_m: [r[0], r[1]], z_m: [z[0], z[1]] };
        let middle = [f64::midpoint(r[0], r[1]), f64::midpoint(z[0], z[1])];
        (self.metal)(middle).then_some(ring)
    }
}

impl Mesh {
    /// Adds a body.
    pub fn add(&mut self, part: Part, plot: &Plot) {
        let (columns, rows) = (plot.r_m.len().saturating_sub(1), plot.z_m.len().saturating_sub(1));
        let width = 2 * columns + 1;
        let mut numbers = vec![None; width * (2 * rows + 1)];
        for j in 0..rows {
            for i in 0..columns {
                let Some(ring) = plot.cell(i, j) else { continue };
                let nodes = std::array::from_fn(|n| {
                    let (x, y) = (n % 3, n / 3);
                    let number = &mut numbers[(2 * j + y) * width + 2 * i + x];
                    *number.get_or_insert_with(|| {
                        let along = |side: [f64; 2], k: usize| match k {
                            0 => side[0],
                            1 => f64::midpoint(side[0], side[1]),
                            _ => side[1],
                        };
                        self.nodes_m.push([along(ring.r_m, x), along(ring.z_m, y)]);
                        self.nodes_m.len() - 1
                    })
                });
                self.elements.push(Element { nodes, ring, part });
                let beyond = [
                    (Facing::Outward, plot.cell(i + 1, j)),
                    (Facing::Inward, i.checked_sub(1).and_then(|i| plot.cell(i, j))),
                    (Facing::Back, j.checked_sub(1).and_then(|j| plot.cell(i, j))),
                    (Facing::Front, plot.cell(i, j + 1)),
                ];
                for (facing, _) in beyond.iter().filter(|(_, neighbour)| neighbour.is_none()) {
                    self.edges.push(self.side(nodes, part, *facing));
                }
            }
        }
    }

    fn side(&self, nodes: [usize; 9], part: Part, facing: Facing) -> Edge {
        let nodes = match facing {
            Facing::Outward => [2, 5, 8],
            Facing::Inward => [0, 3, 6],
            Facing::Back => [0, 1, 2],
            Facing::Front => [6, 7, 8],
        }
        .map(|n| nodes[n]);
        let ends_m = [self.nodes_m[nodes[0]], self.nodes_m[nodes[2]]];
        Edge { nodes, shares_m2: edge_shares(ends_m), ends_m, part, facing }
    }

    /// Pairs the nodes of the bore with those of the shaft, and takes their sides off the free
    /// ones.
    pub fn join(&mut self, bore_r_m: f64, length_m: f64) {
        let on_bore = |edge: &Edge| {
            let [[r0, z0], [r1, z1]] = edge.ends_m;
            let facing = match edge.part {
                Part::Hub => Facing::Inward,
                Part::Shaft => Facing::Outward,
            };
            edge.facing == facing
                && r0.total_cmp(&bore_r_m).is_eq()
                && r1.total_cmp(&bore_r_m).is_eq()
                && 0.0 <= z0
                && z1 <= length_m
        };
        let (mut seat, free): (Vec<Edge>, Vec<Edge>) =
            std::mem::take(&mut self.edges).into_iter().partition(on_bore);
        self.edges = free;
        seat.sort_by(|a, b| a.ends_m[0][1].total_cmp(&b.ends_m[0][1]));
        let (hub, shaft): (Vec<Edge>, Vec<Edge>) =
            seat.into_iter().partition(|edge| edge.part == Part::Hub);
        for (bore, seat) in hub.iter().zip(&shaft) {
            for k in 0..3 {
                self.add_pair(bore.nodes[k], seat.nodes[k], bore.shares_m2[k]);
            }
        }
    }

    fn add_pair(&mut self, hub: usize, shaft: usize, area_m2: f64) {
        match self.pairs.last_mut() {
            Some(pair) if pair.hub == hub => pair.area_m2 += area_m2,
            _ => self.pairs.push(Pair { hub, shaft, z_m: self.nodes_m[hub][1], area_m2 }),
        }
    }

    /// The nodes of the pairs, those of the hub first.
    pub fn joint(&self) -> Vec<usize> {
        let (hub, shaft) = (|pair: &Pair| pair.hub, |pair: &Pair| pair.shaft);
        self.pairs.iter().map(hub).chain(self.pairs.iter().map(shaft)).collect()
    }

    /// The ring of `part` that holds a place, and the place within it; `None` outside the metal.
    pub fn find(&self, part: Part, [r, z]: [f64; 2]) -> Option<(&Element, [f64; 2])> {
        let local = |side: [f64; 2], x: f64| 2.0 * (x - side[0]) / (side[1] - side[0]) - 1.0;
        self.elements.iter().filter(|element| element.part == part).find_map(|element| {
            let at = [local(element.ring.r_m, r), local(element.ring.z_m, z)];
            at.iter().all(|x| x.abs() <= 1.0 + 1e-9).then_some((element, at))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A flanged hub of two steps on a shaft that stands out on both sides.
    fn flanged() -> Mesh {
        let mut mesh = Mesh::default();
        let metal = |[r, z]: [f64; 2]| r < 0.8 || z > 2.0;
        mesh.add(
            Part::Hub,
            &Plot { r_m: &[0.5, 0.65, 0.8, 1.2], z_m: &[0.0, 1.0, 2.0, 3.0], metal: &metal },
        );
        let all = |_: [f64; 2]| true;
        mesh.add(
            Part::Shaft,
            &Plot { r_m: &[0.0, 0.3, 0.5], z_m: &[-1.0, 0.0, 1.0, 2.0, 3.0, 4.0], metal: &all },
        );
        mesh.join(0.5, 3.0);
        mesh
    }

    #[test]
    fn every_node_of_the_bore_has_its_partner() {
        let mesh = flanged();
        assert_eq!(mesh.pairs.len(), 7);
        for pair in &mesh.pairs {
            let ([r, z], [shaft_r, shaft_z]) = (mesh.nodes_m[pair.hub], mesh.nodes_m[pair.shaft]);
            assert!(r.total_cmp(&shaft_r).is_eq() && z.total_cmp(&shaft_z).is_eq(), "{pair:?}");
        }
        let area: f64 = mesh.pairs.iter().map(|pair| pair.area_m2).sum();
        assert!((area - std::f64::consts::TAU * 0.5 * 3.0).abs() < 1e-12, "{area}");
    }

    /// Guldin: what the free surfaces of a stepped ring measure.
    #[test]
    fn the_free_surface_is_the_whole_surface() {
        let mesh = flanged();
        let area = |part| -> f64 {
            let edges = mesh.edges.iter().filter(|edge| edge.part == part);
            edges.flat_map(|edge| edge.shares_m2).sum()
        };
        let pi = std::f64::consts::PI;
        let hub = pi * (2.0 * 0.8 * 2.0 + 2.0 * 1.2 * 1.0 + 2.0 * (1.44 - 0.25));
        assert!((area(Part::Hub) / hub - 1.0).abs() < 1e-12, "{} for {hub}", area(Part::Hub));
        let shaft = pi * (2.0 * 0.5 * 2.0 + 2.0 * 0.25);
        assert!((area(Part::Shaft) / shaft - 1.0).abs() < 1e-12, "{}", area(Part::Shaft));
    }

    #[test]
    fn a_place_is_found_in_its_own_body() {
        let mesh = flanged();
        let (element, at) = mesh.find(Part::Hub, [1.0, 2.5]).unwrap();
        assert!((element.ring.r_m[0] - 0.8).abs() < 1e-12, "{:?}", element.ring);
        assert!(at[0].abs() < 1e-12 && at[1].abs() < 1e-12);
        assert!(mesh.find(Part::Hub, [1.0, 1.5]).is_none());
        assert!(mesh.find(Part::Shaft, [0.1, 3.9]).is_some());
    }
}
