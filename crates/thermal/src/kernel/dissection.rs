//! The order in which the unknowns of a mesh are eliminated: nested dissection.
//!
//! A line of the mesh cuts a body in two that share no ring; each half is eliminated before the
//! line, and is itself cut so. What fills in is about as little as can be.
//!
//! Source: George, *Nested dissection of a regular finite element mesh*, SIAM Journal on Numerical
//! Analysis 10 (1973); from memory.

use super::mesh::{Mesh, Part};

/// A piece of no more nodes is not cut.
const LEAF: usize = 12;

/// A node with its place in the grid of its body: even numbers are lines, odd ones lie between.
#[derive(Clone, Copy)]
struct Placed {
    node: usize,
    at: [usize; 2],
}

/// All nodes, those of the hub first, in the order of their elimination.
pub(crate) fn order(mesh: &Mesh) -> Vec<usize> {
    let mut order = Vec::with_capacity(mesh.nodes_m.len());
    for part in [Part::Hub, Part::Shaft] {
        cut(placed(mesh, part), &mut order);
    }
    order
}

fn placed(mesh: &Mesh, part: Part) -> Vec<Placed> {
    let elements = mesh.elements.iter().filter(|element| element.part == part);
    let mut nodes: Vec<usize> = elements.flat_map(|element| element.nodes).collect();
    nodes.sort_unstable();
    nodes.dedup();
    let lines = [0, 1].map(|axis| {
        let mut lines: Vec<f64> = nodes.iter().map(|&node| mesh.nodes_m[node][axis]).collect();
        lines.sort_by(f64::total_cmp);
        lines.dedup();
        lines
    });
    let rank = |node: usize, axis: usize| {
        lines[axis].partition_point(|line| *line < mesh.nodes_m[node][axis])
    };
    nodes.into_iter().map(|node| Placed { node, at: [rank(node, 0), rank(node, 1)] }).collect()
}

fn cut(mut piece: Vec<Placed>, order: &mut Vec<usize>) {
    let line = match piece.len() {
        ..=LEAF => None,
        _ => [0, 1].into_iter().filter_map(|axis| middle_line(&mut piece, axis)).min(),
    };
    let Some((_, axis, line)) = line else {
        piece.sort_by_key(|placed| placed.at.map(|k| k % 2 == 0));
        order.extend(piece.iter().map(|placed| placed.node));
        return;
    };
    let part = |keep: fn(usize, usize) -> bool| -> Vec<Placed> {
        piece.iter().copied().filter(|placed| keep(placed.at[axis], line)).collect()
    };
    cut(part(|at, line| at < line), order);
    cut(part(|at, line| at > line), order);
    order.extend(part(|at, line| at == line).iter().map(|placed| placed.node));
}

/// The line that halves a piece across an axis: `(nodes on it, axis, line)`.
fn middle_line(piece: &mut [Placed], axis: usize) -> Option<(usize, usize, usize)> {
    let half = piece.len() / 2;
    let (before, middle, after) = piece.select_nth_unstable_by_key(half, |placed| placed.at[axis]);
    let first = before.iter().map(|placed| placed.at[axis]).min()?;
    let last = after.iter().map(|placed| placed.at[axis]).max()?;
    let near = middle.at[axis] + middle.at[axis] % 2;
    let line = [near, near.saturating_sub(2)].into_iter().find(|k| first < *k && *k < last)?;
    let on_line = piece.iter().filter(|placed| placed.at[axis] == line).count();
    Some((on_line, axis, line))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kernel::model::tests::bar;

    #[test]
    fn every_node_has_its_turn() {
        let mesh = bar(0.0, 1.0).mesh;
        let mut order = order(&mesh);
        let last_of_hub = order.iter().rposition(|node| *node == 0);
        assert!(last_of_hub < order.iter().position(|node| *node + 1 == mesh.nodes_m.len()));
        order.sort_unstable();
        assert_eq!(order, (0..mesh.nodes_m.len()).collect::<Vec<_>>());
    }
}
