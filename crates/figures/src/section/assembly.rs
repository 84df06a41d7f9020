//! A coupling as parts, put together by its kind, before it has a scale or a place.

use quantities::System;

use super::check::{check, order};
use super::shape::{Edges, Part, Shape};
use super::{Dim, Half, Kind, Known, Section, SectionError};
use super::{chain, diaphragm, disc, gear, grid, jaw, joint, other, pin, rigid, shaft, shear};
use crate::geometry::{Point, at};

/// Which half of the coupling.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    Driver,
    Driven,
}

pub(super) const SIDES: [Side; 2] = [Side::Driver, Side::Driven];

impl Side {
    /// Of x: the driver lies to the left.
    pub fn sign(self) -> f64 {
        match self {
            Self::Driver => -1.0,
            Self::Driven => 1.0,
        }
    }

    pub fn index(self) -> usize {
        match self {
            Self::Driver => 0,
            Self::Driven => 1,
        }
    }
}

/// A diameter to be written beside the drawing.
#[derive(Clone, Debug)]
pub(super) struct Diameter {
    pub side: Side,
    pub dim: Dim,
    /// Where its extension lines begin; `None` for the end of the shaft.
    pub from: Option<f64>,
}

/// A coupling in parts, in the order of drawing.
#[derive(Clone, Debug)]
pub(super) struct Assembly<'a> {
    pub(super) section: &'a Section,
    /// The larger shaft's diameter, which proportions are taken from.
    pub(super) d: f64,
    /// Half the gap between the hub faces.
    pub(super) half_gap: f64,
    /// What the stated gap lies between: the hub faces, or seats further out.
    pub(super) between: [f64; 2],
    /// Between the flanges that hold a pack or a diaphragm, where it is not the gap itself.
    pub(super) flange_gap: Option<Dim>,
    /// Length of shaft shown beyond a hub.
    pub(super) stub: f64,
    pub(super) parts: Vec<Part>,
    pub(super) edges: Edges,
    /// Largest radius that is written.
    pub(super) reach: f64,
    /// How far a plug's head stands out beyond it.
    pub(super) crest: f64,
    pub(super) diameters: Vec<Diameter>,
    /// One bolt by itself, for the picture of the parts apart.
    pub(super) bolt: Vec<Shape>,
    /// For disc couplings: the view along the axis and the bolt, which need a row of their own.
    pub(super) joint: Option<joint::Joint>,
}

/// The parts of a coupling, its shafts broken off at a share of the diameter beyond the hubs.
pub(super) fn assemble(section: &Section, stub: f64) -> Result<Assembly<'_>, SectionError> {
    check(section)?;
    let mut assembly = Assembly::new(section, stub);
    match &section.kind {
        Kind::Gear { sleeves, sleeve_outside, bolts } => {
            gear::build(&mut assembly, *sleeves, sleeve_outside.as_ref(), *bolts)?;
        }
        Kind::Grid { cover, middle, slotted_outside, bolts } => {
            let slotted = slotted_outside.as_ref();
            grid::build(&mut assembly, (*cover, *middle), slotted, *bolts)?;
        }
        Kind::Disc { packs, bolts } => disc::build(&mut assembly, packs, *bolts)?,
        Kind::Rigid { through, middle, bolts } => {
            rigid::build(&mut assembly, *through, *middle, *bolts)?;
        }
        Kind::Jaw { element, jaws } => jaw::build(&mut assembly, *element, *jaws)?,
        Kind::Pin { middle, pins } => pin::build(&mut assembly, *middle, *pins)?,
        Kind::Chain { cover } => chain::build(&mut assembly, *cover)?,
        Kind::Shear { rubber, screws } => shear::build(&mut assembly, *rubber, *screws)?,
        Kind::Diaphragm { packs, bolts } => diaphragm::build(&mut assembly, packs, *bolts)?,
        Kind::Other => other::build(&mut assembly)?,
    }
    Ok(assembly)
}

impl<'a> Assembly<'a> {
    fn new(section: &'a Section, stub: f64) -> Self {
        let d = section.driver.shaft.mm.max(section.driven.shaft.mm);
        let half_gap = if section.kind.faces_meet() { 0.0 } else { section.gap.mm / 2.0 };
        let mut edges = Edges::default();
        edges.xs.push(half_gap);
        for half in section.halves() {
            edges.xs.push(half_gap + half.hub_length.mm);
            edges.radii.push(half.shaft.mm / 2.0);
        }
        let governing = [&section.driver.hub_length, &section.driven.hub_length, &section.gap];
        edges.assumed = governing.iter().any(|dim| dim.known == Known::Assumed);
        let mut assembly = Self {
            section,
            d,
            half_gap,
            between: [-half_gap, half_gap],
            flange_gap: None,
            stub: (stub * d).max(12.0_f64.min(0.5 * d)),
            parts: Vec::new(),
            edges,
            reach: 0.0,
            crest: 0.0,
            diameters: Vec::new(),
            bolt: Vec::new(),
            joint: None,
        };
        for side in SIDES {
            let dim = assembly.half(side).shaft.clone();
            assembly.diameters.push(Diameter { side, dim, from: None });
        }
        assembly
    }

    pub fn half(&self, side: Side) -> &'a Half {
        self.section.halves()[side.index()]
    }

    /// Radii of the two hub barrels, and of what lies round them from the inside out.
    ///
    /// A radius that nobody stated lies a share of the larger bore beyond the one before; where a
    /// stated one further out leaves less room, the unstated ones share what there is.
    pub fn radii<const N: usize>(
        &mut self,
        hub_share: f64,
        round: [(&'static str, Option<&Dim>, f64); N],
    ) -> Result<([f64; 2], [f64; N]), SectionError> {
        let hubs = SIDES.map(|side| self.half(side).hub_outside.as_ref());
        let larger = match hubs {
            [Some(a), Some(b)] => Some(if a.mm >= b.mm { a } else { b }),
            [a, b] => a.or(b),
        };
        let steps: Vec<Step> = std::iter::once(("hub outside", larger, hub_share))
            .chain(round)
            .map(|(name, given, share)| Step { name, given: given.map(|d| d.mm / 2.0), share })
            .collect();
        let all = grown(self.d, &steps)?;
        for given in hubs.into_iter().chain(round.map(|(_, given, _)| given)) {
            self.note(given);
        }
        let barrels = hubs.map(|hub| hub.map_or(all[0], |dim| dim.mm / 2.0));
        Ok((barrels, std::array::from_fn(|i| all[i + 1])))
    }

    /// The radius of a coupling whose hubs are its largest diameter.
    pub fn only_radius(&mut self, share: f64) -> Result<f64, SectionError> {
        let section = self.section;
        let hubs = section.halves().map(|half| half.hub_outside.as_ref());
        let given = section.outside.as_ref().or(hubs[0]).or(hubs[1]);
        let step = Step { name: "hub outside", given: given.map(|d| d.mm / 2.0), share };
        let radii = grown(self.d, &[step])?;
        self.note(given);
        Ok(radii[0])
    }

    /// Remembers that an edge's radius is known, or that a size was assumed.
    fn note(&mut self, given: Option<&Dim>) {
        match given {
            Some(dim) if dim.known != Known::Assumed => self.edges.radii.push(dim.mm / 2.0),
            _ => self.edges.assumed = true,
        }
    }

    /// Writes the barrel of the driver's hub to the left, and the driven one's if it differs.
    pub fn write_hubs(&mut self, radii: [f64; 2]) {
        for side in SIDES {
            let radius = radii[side.index()];
            let differs = (radii[0] - radii[1]).abs() > 0.005 * self.d;
            if side == Side::Driver || differs {
                let half = self.half(side);
                let dim = self.given_or_assumed(half.hub_outside.as_ref(), 2.0 * radius);
                let from = side.sign() * (self.half_gap + half.hub_length.mm * 0.98);
                self.diameters.push(Diameter { side, dim, from: Some(from) });
            }
        }
    }

    /// Writes the largest diameter to the right; `from` is where it lies.
    pub fn write_outside(&mut self, radius: f64, from: f64) {
        self.reach = self.reach.max(radius);
        // Where hubs are all there is, theirs is the largest diameter.
        let is_it = |dim: &&Dim| (dim.mm / 2.0 - radius).abs() < 1e-9;
        let hubs = self.section.halves().map(|half| half.hub_outside.as_ref().filter(is_it));
        let given = self.section.outside.as_ref().or(hubs[0]).or(hubs[1]);
        let dim = self.given_or_assumed(given, 2.0 * radius);
        self.diameters.push(Diameter { side: Side::Driven, dim, from: Some(from) });
    }

    fn given_or_assumed(&self, given: Option<&Dim>, mm: f64) -> Dim {
        given.cloned().unwrap_or_else(|| self.assumed(mm))
    }

    /// A size that nobody stated, as it is written.
    pub fn assumed(&self, mm: f64) -> Dim {
        let text = match self.section.system {
            System::Metric => format!("{mm:.0}"),
            System::Inch => format!("{:.2}", mm / 25.4),
        };
        Dim::assumed(mm, text)
    }

    /// Adds a part with a letter of its own; `inside` is a place well inside it.
    pub fn part(
        &mut self,
        letter: char,
        name: impl Into<String>,
        inside: Point,
        shapes: Vec<Shape>,
    ) {
        let tag = Some((name.into(), inside));
        let part = Part { letter: Some(letter), side: None, tag, shapes, apart: Vec::new() };
        self.parts.push(part);
    }

    /// Adds one of twins; the one on the side `lettered` carries letter and name.
    pub fn twin(
        &mut self,
        (side, lettered): (Side, Side),
        letter: char,
        name: &str,
        inside: Point,
        shapes: Vec<Shape>,
    ) {
        let tag = (side == lettered).then(|| (name.to_owned(), inside));
        let (letter, side) = (Some(letter), Some(side));
        self.parts.push(Part { letter, side, tag, shapes, apart: Vec::new() });
    }

    /// Adds lines that are no part.
    pub fn lines(&mut self, shapes: Vec<Shape>) {
        let part = Part { letter: None, side: None, tag: None, shapes, apart: Vec::new() };
        self.parts.push(part);
    }

    /// What shows of the last part when it lies apart from the others.
    pub fn apart(&mut self, shapes: Vec<Shape>) {
        if let Some(part) = self.parts.last_mut() {
            part.apart = shapes;
        }
    }

    /// Both shafts, their ends flush with the hub faces or standing back by `back`.
    pub fn shafts(&mut self, back: f64) {
        for side in SIDES {
            let shapes = shaft::shaft(self, side, back);
            let inside = at(
                side.sign() * (self.half_gap + self.half(side).hub_length.mm + self.stub * 0.5),
                self.half(side).shaft.mm * 0.22,
            );
            let name = format!("shaft, {}", self.machine(side));
            self.twin((side, Side::Driver), 'A', &name, inside, shapes);
        }
    }

    /// Both keys; drawn last of the inner parts, for nothing lies in front of them.
    pub fn keys(&mut self, back: f64) {
        let keyed: Vec<Side> =
            SIDES.into_iter().filter(|side| self.half(*side).key.is_some()).collect();
        let Some(&lettered) = keyed.last() else { return };
        let name = if keyed.len() > 1 { "key (2)" } else { "key" };
        for side in keyed {
            if let Some((shapes, inside)) = shaft::key(self, side, back) {
                self.twin((side, lettered), 'K', name, inside, shapes);
            }
        }
    }

    /// The machine's name where it is short, else its part in the train.
    pub fn machine(&self, side: Side) -> String {
        let name = &self.half(side).machine;
        let fits =
            !name.is_empty() && crate::face::Face::Print.width(name, crate::ink::NAME) < 24.0;
        match (fits, side) {
            (true, _) => name.clone(),
            (false, Side::Driver) => "driver".to_owned(),
            (false, Side::Driven) => "driven".to_owned(),
        }
    }

    /// Ends of the drawing along the shafts.
    pub fn span(&self) -> (f64, f64) {
        let end = |side: Side| self.half_gap + self.half(side).hub_length.mm + self.stub;
        (-end(Side::Driver), end(Side::Driven))
    }
}

/// "bolt and nut (8)", or without the count where nobody told it.
pub(super) fn counted(name: &str, count: Option<u32>) -> String {
    count.map_or_else(|| name.to_owned(), |count| format!("{name} ({count})"))
}

/// A radius to be found.
struct Step {
    name: &'static str,
    given: Option<f64>,
    share: f64,
}

/// Each radius as it was given, or its share of `d` beyond the one before, if there is room.
fn grown(d: f64, steps: &[Step]) -> Result<Vec<f64>, SectionError> {
    let mut radii: Vec<f64> = Vec::new();
    let (mut before, mut name) = (d / 2.0, "shaft");
    for (index, step) in steps.iter().enumerate() {
        let radius = step.given.unwrap_or_else(|| {
            let ahead = steps[index..].iter().position(|s| s.given.is_some());
            let shares: f64 =
                steps[index..].iter().take(ahead.map_or(1, |n| n + 1)).map(|s| s.share * d).sum();
            let limit = ahead.and_then(|n| steps[index + n].given);
            let room = limit.map_or(shares, |limit| (limit - before).min(shares));
            before + step.share * d * room / shares
        });
        order((name, 2.0 * before), (step.name, 2.0 * radius))?;
        radii.push(radius);
        (before, name) = (radius, step.name);
    }
    Ok(radii)
}
