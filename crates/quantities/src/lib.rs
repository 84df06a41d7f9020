//! Units at the face of Hubwright.
//!
//! A quantity comes in as text ([`Measured`]), is computed with as a [`uom`] type (or as an SI
//! float inside a kernel), and goes out as a [`Value`] that knows how to show itself in metric or
//! in inch. With it go its [`Working`] (how it was found), its [`Source`] (where a figure or a
//! formula comes from) and a [`Verdict`] (whether it lies within its [`Limits`]).
//!
//! Every `±` in Hubwright is half the width of the interval that holds the true value with about
//! 95 % probability (an expanded uncertainty with coverage factor 2; JCGM 100:2008, 6.2).
//!
//! Not here: what any number means for a coupling.

mod both;
mod conformance;
mod dimension;
mod estimate;
mod kind;
mod measured;
mod number;
mod source;
mod text;
mod unit;
mod value;
mod verdict;
mod whole;
mod working;

pub use both::both;
pub use conformance::{probability_inside, settling};
pub use dimension::{Dimension, Physical};
pub use estimate::{Estimate, is_spread, root_sum_square};
pub use kind::{Kind, System};
pub use measured::Measured;
pub use source::{Basis, Source};
pub use text::{Reading, TextError, parse, read};
pub use unit::{Unit, units_of};
pub use value::Value;
pub use verdict::{Limits, Verdict, judge};
pub use whole::Whole;
pub use working::{Term, Working};

/// Force for a length, as of a spring.
pub use uom::si::f64::SurfaceTension as Stiffness;
pub use uom::si::f64::{
    Acceleration, Angle, AngularVelocity, Area, Energy, Force, HeatTransfer, Length,
    LinearMassDensity, Mass, MassDensity, MomentOfInertia, Power, Pressure, Ratio,
    SpecificHeatCapacity, TemperatureCoefficient, TemperatureInterval, ThermalConductivity,
    ThermodynamicTemperature, Time, Torque, Velocity, Volume,
};
