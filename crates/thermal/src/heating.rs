//! Where a hub is heated, how strongly, and when.

use quantities::{Length, Physical, Power, Time};

use crate::ThermalError;
use crate::check::{duration, not_negative};
use crate::kernel::case::Burn;
use crate::kernel::mesh::{Edge, Facing, Part};
use crate::kernel::model::Model;
use crate::kernel::moment::ticks;
use crate::setup::SWITCH_TICKS;

/// A surface of the hub that can be heated.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// Its name: "body", "flange", "gear ring".
    pub name: String,
    /// Where it is.
    pub surface: Surface,
}

/// A surface of the hub.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Surface {
    /// Its outside, all round, between two stations from the face towards the machine.
    Outside {
        /// From here.
        from: Length,
        /// To here.
        to: Length,
    },
    /// The face towards the machine.
    BackFace,
    /// The face at the shaft's end.
    FrontFace,
}

/// Heat into a zone, evenly over its surface, for a while.
///
/// The power is what goes into the metal. Of a gas burner's, a third to a half does; of an
/// induction heater's rated power, most (common practice; from memory).
#[derive(Clone, Debug, PartialEq)]
pub struct Heat {
    /// Where.
    pub zone: Zone,
    /// How strong.
    pub power: Power,
    /// From when, kept to an eighth of a second.
    pub start: Time,
    /// Until when.
    pub stop: Time,
}

impl Zone {
    /// A zone on the outside.
    pub fn outside(name: &str, from: Length, to: Length) -> Self {
        Self { name: name.to_owned(), surface: Surface::Outside { from, to } }
    }

    /// Stations at which the mesh must have a line.
    pub(crate) fn marks_m(&self) -> Vec<f64> {
        match self.surface {
            Surface::Outside { from, to } => vec![from.si(), to.si()],
            Surface::BackFace | Surface::FrontFace => vec![],
        }
    }

    fn holds(&self, edge: &Edge, length_m: f64) -> bool {
        let [start, end] = edge.ends_m.map(|end| end[1]);
        let hair = 1e-5 * length_m;
        edge.part == Part::Hub
            && match self.surface {
                Surface::Outside { from, to } => {
                    edge.facing == Facing::Outward
                        && from.si() - hair <= start
                        && end <= to.si() + hair
                }
                Surface::BackFace => edge.facing == Facing::Back && start.abs() <= hair,
                Surface::FrontFace => {
                    edge.facing == Facing::Front && (start - length_m).abs() <= hair
                }
            }
    }

    /// Each node's share of the zone.
    pub(crate) fn shares(&self, model: &Model) -> Result<Vec<(usize, f64)>, ThermalError> {
        let length_m = model.mesh.pairs.last().map_or(0.0, |pair| pair.z_m);
        let edges = model.mesh.edges.iter().filter(|edge| self.holds(edge, length_m));
        let areas: Vec<(usize, f64)> =
            edges.flat_map(|edge| edge.nodes.into_iter().zip(edge.shares_m2)).collect();
        let whole: f64 = areas.iter().map(|(_, area)| area).sum();
        if whole > 0.0 {
            Ok(areas.into_iter().map(|(node, area)| (node, area / whole)).collect())
        } else {
            Err(ThermalError::NoSurface { zone: self.name.clone() })
        }
    }
}

impl Heat {
    /// From the beginning until `stop`.
    pub fn until(zone: Zone, power: Power, stop: Time) -> Self {
        Self { zone, power, start: Time::from_si(0.0), stop }
    }

    pub(crate) fn check(&self) -> Result<(), ThermalError> {
        not_negative("power", self.power.si())?;
        duration(self.start)?;
        duration(self.stop)?;
        if self.stop < self.start { Err(ThermalError::Time(self.stop)) } else { Ok(()) }
    }

    pub(crate) fn burn(&self, model: &Model) -> Result<Burn, ThermalError> {
        let power_w = self.power.si();
        let shares = self.zone.shares(model)?;
        Ok(Burn {
            ticks: [self.start, self.stop].map(|time| ticks(time.si(), SWITCH_TICKS)),
            watts: shares.into_iter().map(|(node, share)| (node, share * power_w)).collect(),
        })
    }
}
