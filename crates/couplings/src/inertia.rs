//! What of the coupling turns with each machine: its inertia, shared between the two shafts.

use quantities::{Basis, Kind, Measured, MomentOfInertia, Source, Value, Working};

use crate::{End, Sheet};

/// The part of the coupling that turns with one machine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Turns {
    /// Its parts: a hub, what is bolted to it, half of the spacer.
    Parts {
        /// The hub.
        hub: MomentOfInertia,
        /// A sleeve or half cover; nothing where there is none.
        sleeve: MomentOfInertia,
        /// The whole spacer, of which each end turns half.
        spacer: MomentOfInertia,
    },
    /// Half of the whole coupling.
    HalfOf(MomentOfInertia),
}

impl Turns {
    /// What the sheet says of one end: its parts, else half of the whole; `None` when it is silent.
    ///
    /// # Example
    /// ```
    /// use couplings::{End, Sheet, inertia::Turns};
    /// let mut sheet = Sheet::default();
    /// sheet.inertia = Some("0.3 kg·m2".parse()?);
    /// let turns = Turns::of(&sheet, End::Driver).unwrap();
    /// assert_eq!(turns.inertia().value, 0.15);
    /// # Ok::<(), quantities::TextError>(())
    /// ```
    pub fn of(sheet: &Sheet, end: End) -> Option<Self> {
        let parts = &sheet.inertias;
        let driven = parts.driven_hub.as_ref().filter(|_| end == End::Driven);
        let part = |part: &Option<Measured<_>>| part.as_ref().map(Measured::value);
        match driven.or(parts.hub.as_ref()) {
            Some(hub) => Some(Self::Parts {
                hub: hub.value(),
                sleeve: part(&parts.sleeve).unwrap_or_default(),
                spacer: part(&parts.spacer).unwrap_or_default(),
            }),
            None => part(&sheet.inertia).map(Self::HalfOf),
        }
    }

    /// Its moment of inertia.
    pub fn inertia(self) -> MomentOfInertia {
        match self {
            Self::Parts { hub, sleeve, spacer } => hub + sleeve + spacer / 2.0,
            Self::HalfOf(whole) => whole / 2.0,
        }
    }

    /// A machine's inertia with this part of the coupling in it.
    pub fn with(self, machine: MomentOfInertia) -> MomentOfInertia {
        machine + self.inertia()
    }

    /// How that was found.
    pub fn working(self, machine: MomentOfInertia) -> Working {
        let shown = |inertia| Value::new(Kind::Inertia, inertia);
        let source = Source::new("what turns together adds up", "", Basis::Computed);
        let (name, result) = ("Inertia with its half of the coupling", shown(self.with(machine)));
        let working = |formula| {
            Working::new(name, formula, result, source).term(
                "M",
                "the machine’s rotor",
                shown(machine),
            )
        };
        match self {
            Self::Parts { hub, sleeve, spacer } => working("J = M + h + s + p/2")
                .term("h", "hub", shown(hub))
                .term("s", "sleeve or half cover", shown(sleeve))
                .term("p", "spacer, which turns with both alike", shown(spacer)),
            Self::HalfOf(whole) => working("J = M + w/2")
                .term("w", "whole coupling", shown(whole))
                .valid("two halves alike; enter the inertias of the parts where they differ"),
        }
    }
}
