//! Who is who on the x axis: driver at smaller x, driven at larger, a spool between them perhaps.
//!
//! A spool hinges at the two flex planes, so it's the straight line from the driver's centre at
//! the one to the driven's centre at the other. Every line is then a linear form of the two
//! unknowns of one plane, `d` at the reference plane and its slope.

use quantities::{Length, Physical};

/// One of the two coupled machines.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Machine {
    /// At smaller x.
    Driver,
    /// At larger x.
    Driven,
}

impl Machine {
    /// The machine at the other end of the coupling.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Driver => Self::Driven,
            Self::Driven => Self::Driver,
        }
    }
}

/// What carries a dial, or what its stem touches; in the order of x.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Body {
    /// The driver's shaft or hub.
    Driver,
    /// The spool or spacer between two flex planes.
    Spool,
    /// The driven machine's shaft or hub.
    Driven,
}

impl std::fmt::Display for Body {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Driver => "the driver",
            Self::Spool => "the spool",
            Self::Driven => "the driven machine",
        })
    }
}

impl From<Machine> for Body {
    fn from(machine: Machine) -> Self {
        match machine {
            Machine::Driver => Self::Driver,
            Machine::Driven => Self::Driven,
        }
    }
}

/// One of the two planes that shafts are looked at in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Plane {
    /// y, up.
    Vertical,
    /// z, to the right looking along +x.
    Sideways,
}

impl Plane {
    /// Both, vertical first.
    pub const BOTH: [Self; 2] = [Self::Vertical, Self::Sideways];

    /// In a word.
    pub fn words(self) -> &'static str {
        match self {
            Self::Vertical => "vertical",
            Self::Sideways => "sideways",
        }
    }

    pub(crate) fn index(self) -> usize {
        usize::from(self == Self::Sideways)
    }
}

/// The flex planes of a spacer coupling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spool {
    /// x of the flex plane at the driver's end.
    pub driver_end: Length,
    /// x of the flex plane at the driven machine's end, larger than the other.
    pub driven_end: Length,
}

impl Spool {
    /// Distance between the flex planes.
    pub fn length(&self) -> Length {
        self.driven_end - self.driver_end
    }
}

/// Where things are, and which machine moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layout {
    /// The machine that moves; the other one stays.
    pub moving: Machine,
    /// The plane that offsets are stated at, usually the coupling's middle.
    pub reference: Length,
    /// Flex planes, when the coupling has a spacer.
    pub spool: Option<Spool>,
}

impl Layout {
    /// `d` of `body` above the driver's line at `x`, as coefficients of (offset at reference, slope)
    /// of the moving machine against the fixed one; `None` for a spool that isn't there.
    pub(crate) fn line_row(&self, body: Body, x: f64) -> Option<[f64; 2]> {
        let reference = self.reference.si();
        let sign = self.sign();
        match body {
            Body::Driver => Some([0.0, 0.0]),
            Body::Driven => Some([sign, sign * (x - reference)]),
            Body::Spool => {
                let (x1, x2) = self.flex_planes()?;
                let part = sign * (x - x1) / (x2 - x1);
                Some([part, part * (x2 - reference)])
            }
        }
    }

    /// Slope of `body` against the driver's line, as [`Layout::line_row`].
    pub(crate) fn slope_row(&self, body: Body) -> Option<[f64; 2]> {
        let at = |x| self.line_row(body, x);
        let ([p0, q0], [p1, q1]) = (at(0.0)?, at(1.0)?);
        match body {
            Body::Driver => Some([0.0, 0.0]),
            Body::Driven => Some([0.0, self.sign()]),
            Body::Spool => Some([p1 - p0, q1 - q0]),
        }
    }

    /// The flex planes, if there is a spool of some length.
    pub(crate) fn flex_planes(&self) -> Option<(f64, f64)> {
        let spool = self.spool?;
        let (x1, x2) = (spool.driver_end.si(), spool.driven_end.si());
        (x2 > x1 && x1.is_finite() && x2.is_finite()).then_some((x1, x2))
    }

    /// Driven minus driver, as a multiple of moving minus fixed.
    pub(crate) fn sign(&self) -> f64 {
        match self.moving {
            Machine::Driven => 1.0,
            Machine::Driver => -1.0,
        }
    }
}
