//! Temperature over the section of hub and shaft at a moment: the data of a picture.
//!
//! What is drawn are lines of one temperature. Between the nodes of a ring the temperature is taken
//! as linear, as a picture needs it; the computing itself is quadratic.

use quantities::{Length, Physical, ThermodynamicTemperature, Time};

use crate::curve::Body;
use crate::kernel::mesh::Part;
use crate::kernel::model::Model;

/// Temperature over the whole section at a moment.
#[derive(Clone, Debug, PartialEq)]
pub struct Field {
    /// Since the beginning.
    pub time: Time,
    patches: Vec<Patch>,
}

/// A quarter of a ring's section.
#[derive(Clone, Debug, PartialEq)]
struct Patch {
    body: Body,
    r_m: [f64; 2],
    z_m: [f64; 2],
    /// At `[r, z]` low-low, high-low, high-high, low-high: once round.
    kelvin: [f64; 4],
}

/// A line through the section, each point a distance from the axis and one along the shaft.
pub type Line = Vec<[Length; 2]>;

impl Field {
    pub(crate) fn new(model: &Model, time: Time, nodal_k: &[f64]) -> Self {
        let quarters = [[0, 1, 4, 3], [1, 2, 5, 4], [3, 4, 7, 6], [4, 5, 8, 7]];
        let patches = model.mesh.elements.iter().flat_map(|element| {
            let body = if element.part == Part::Hub { Body::Hub } else { Body::Shaft };
            quarters.map(|corners| {
                let nodes = corners.map(|corner| element.nodes[corner]);
                let [[r0, z0], _, [r1, z1], _] = nodes.map(|node| model.mesh.nodes_m[node]);
                let kelvin = nodes.map(|node| nodal_k[node]);
                Patch { body, r_m: [r0, r1], z_m: [z0, z1], kelvin }
            })
        });
        Self { time, patches: patches.collect() }
    }

    /// Coldest and hottest of a body.
    pub fn range(&self, body: Body) -> [ThermodynamicTemperature; 2] {
        let within = self.patches.iter().filter(|patch| patch.body == body);
        let (low, high) = within
            .flat_map(|patch| patch.kelvin)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), k| (low.min(k), high.max(k)));
        [low, high].map(ThermodynamicTemperature::from_si)
    }

    /// The lines of one temperature, in both bodies; a line ends at the joint and at a surface.
    pub fn lines(&self, at: ThermodynamicTemperature) -> Vec<Line> {
        let mut lines = Vec::new();
        for body in [Body::Hub, Body::Shaft] {
            let within = self.patches.iter().filter(|patch| patch.body == body);
            let pieces = within.flat_map(|patch| patch.cuts(at.si())).collect();
            lines.extend(joined(pieces).iter().map(|line| straightened(line)));
        }
        let length = |line: Vec<[f64; 2]>| line.iter().map(|at| at.map(Length::from_si)).collect();
        lines.into_iter().map(length).collect()
    }
}

/// A straight piece of a line, `[r, z]` in metres.
type Piece = [[f64; 2]; 2];

impl Patch {
    /// Where its plane stands at a temperature: none, one, or at a saddle two pieces.
    fn cuts(&self, kelvin: f64) -> Vec<Piece> {
        let [[r0, r1], [z0, z1]] = [self.r_m, self.z_m];
        let corners = [[r0, z0], [r1, z0], [r1, z1], [r0, z1]];
        let crossing = |k: usize| {
            let (from, to) = (k, (k + 1) % 4);
            let (a, b) = (self.kelvin[from] - kelvin, self.kelvin[to] - kelvin);
            let share = a / (a - b);
            let between = |axis: usize| {
                corners[from][axis] + share * (corners[to][axis] - corners[from][axis])
            };
            ((a > 0.0) != (b > 0.0)).then(|| [between(0), between(1)])
        };
        let points: Vec<[f64; 2]> = (0..4).filter_map(crossing).collect();
        points.chunks_exact(2).map(|pair| [pair[0], pair[1]]).collect()
    }
}

/// Ends closer than this meet (m).
const MEET_M: f64 = 1e-9;

/// Pieces put end to end.
fn joined(mut pieces: Vec<Piece>) -> Vec<Vec<[f64; 2]>> {
    let near = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).hypot(a[1] - b[1]) < MEET_M;
    let mut lines = Vec::new();
    while let Some([from, to]) = pieces.pop() {
        let mut line = vec![from, to];
        for _ in 0..2 {
            line.reverse();
            while let Some(&end) = line.last() {
                let next = pieces.iter().position(|one| one.iter().any(|point| near(*point, end)));
                let Some(next) = next else { break };
                let [a, b] = pieces.swap_remove(next);
                line.push(if near(a, end) { b } else { a });
            }
        }
        lines.push(line);
    }
    lines
}

/// A line leaves out what stands off the rest by less than this share of its length.
const STRAIGHT: f64 = 0.004;

/// The same line with fewer points (Douglas and Peucker).
fn straightened(line: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let length: f64 =
        line.windows(2).map(|pair| (pair[1][0] - pair[0][0]).hypot(pair[1][1] - pair[0][1])).sum();
    let mut kept = Vec::new();
    keep(line, STRAIGHT * length, &mut kept);
    kept.extend(line.last());
    kept
}

/// Adds all of a run's points that matter but its last.
fn keep(run: &[[f64; 2]], off_m: f64, kept: &mut Vec<[f64; 2]>) {
    let (Some(from), Some(to)) = (run.first(), run.last()) else { return };
    let chord = [to[0] - from[0], to[1] - from[1]];
    let length = chord[0].hypot(chord[1]);
    let off = |point: &[f64; 2]| {
        let [r, z] = [point[0] - from[0], point[1] - from[1]];
        if length > 0.0 { (chord[0] * z - chord[1] * r).abs() / length } else { r.hypot(z) }
    };
    let farthest =
        (1..run.len().saturating_sub(1)).max_by(|a, b| off(&run[*a]).total_cmp(&off(&run[*b])));
    match farthest.filter(|far| off(&run[*far]) > off_m) {
        Some(far) => {
            keep(&run[..=far], off_m, kept);
            keep(&run[far..], off_m, kept);
        }
        None => kept.push(*from),
    }
}

/// Temperatures of a run as it went, of which a few moments are kept.
#[derive(Clone, Debug, Default)]
pub(crate) struct Past(Vec<(f64, Vec<f64>)>);

impl Past {
    /// Notes a moment.
    pub fn note(&mut self, seconds: f64, nodal_k: &[f64]) {
        self.0.push((seconds, nodal_k.to_vec()));
    }

    /// The fields at these moments, in order; a moment beyond the run is left out.
    pub fn fields(&self, model: &Model, mut seconds: Vec<f64>) -> Vec<Field> {
        seconds.sort_by(f64::total_cmp);
        seconds.dedup_by(|a, b| (*a - *b).abs() < 0.05);
        let field = |at_s: f64| {
            let nodal = self.at(at_s)?;
            Some(Field::new(model, Time::from_si(at_s), &nodal))
        };
        seconds.into_iter().filter_map(field).collect()
    }

    fn at(&self, seconds: f64) -> Option<Vec<f64>> {
        let next = self.0.partition_point(|(past_s, _)| *past_s < seconds);
        let (to_s, to) = self.0.get(next)?;
        let Some((from_s, from)) = next.checked_sub(1).and_then(|before| self.0.get(before)) else {
            return Some(to.clone());
        };
        let share = (seconds - from_s) / (to_s - from_s);
        Some(from.iter().zip(to).map(|(from, to)| from + share * (to - from)).collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kernel::model::tests::bar;

    fn k(kelvin: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::from_si(kelvin)
    }

    /// T = 300 K + 1000 K/m·r: the line of 320 K stands at r = 20 mm, in the shaft alone, straight.
    #[test]
    fn a_line_stands_where_its_temperature_is() {
        let model = bar(10.0, 1.0);
        let nodal: Vec<f64> = model.mesh.nodes_m.iter().map(|[r, _]| 300.0 + 1000.0 * r).collect();
        let field = Field::new(&model, Time::from_si(0.0), &nodal);
        let lines = field.lines(k(320.0));
        assert_eq!(lines.len(), 1, "{lines:?}");
        assert_eq!(lines[0].len(), 2, "{lines:?}");
        for [r, _] in &lines[0] {
            assert!((r.si() - 0.02).abs() < 1e-9, "{r:?}");
        }
        let ends = (lines[0][0][1] - lines[0][1][1]).si().abs();
        let [low, high] = model
            .mesh
            .nodes_m
            .iter()
            .fold([f64::INFINITY, 0.0], |[low, high], at| [low.min(at[1]), high.max(at[1])]);
        assert!((ends - (high - low)).abs() < 1e-9, "{ends}");
        assert!(field.lines(k(299.0)).is_empty());
        let [cold, hot] = field.range(Body::Hub);
        assert!((cold.si() - 325.0).abs() < 1e-9 && (hot.si() - 350.0).abs() < 1e-9);
    }

    #[test]
    fn a_moment_between_two_lies_between_them() {
        let model = bar(10.0, 1.0);
        let nodes = model.mesh.nodes_m.len();
        let mut past = Past::default();
        past.note(0.0, &vec![300.0; nodes]);
        past.note(10.0, &vec![400.0; nodes]);
        let fields = past.fields(&model, vec![11.0, 2.5, 0.0, 2.52]);
        let times: Vec<f64> = fields.iter().map(|field| field.time.si()).collect();
        assert_eq!(times, [0.0, 2.5]);
        assert!((fields[1].range(Body::Shaft)[0].si() - 325.0).abs() < 1e-9);
    }
}
