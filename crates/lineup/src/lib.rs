//! Where the shafts are: readings to positions, targets, foot moves and shims.
//!
//! The x axis runs from driver to driven, y is up, z to the right of someone looking along +x.
//! Clock positions are read in that same view, 12 up and 3 to the right. Each shaft is a straight
//! line; what is wanted is the line of the machine that moves minus the line of the one that stays,
//! `d(x)`. Which of the two moves is an input; nothing depends on which lies to the left.
//!
//! A dial reading rises when its stem is pushed in. Carried by shaft A and touching shaft B:
//!
//! ```text
//! rim:   r(t) = c + (B − A)y·cos t + (B − A)z·sin t + s·cos t
//! face:  r(t) = c + D/2·(qy·cos t + qz·sin t) + f·cos t      face that looks back at the carrier
//! ```
//!
//! with `s` the sag of the bracket, `D` the swing diameter, `q` the slope of the shaft at larger x
//! minus the slope of the shaft at smaller x. Shafts are taken as straight and their slopes as small:
//! the model departs from true geometry by about offset²/(2·rim radius).
//!
//! Every `±` is the half-width of a 95 % interval (k = 2). Kernels carry standard uncertainties.
//!
//! Not here: what a kind of coupling forgives (`couplings`), and what to say to whom (`job`).

pub mod axial;
pub mod bounded;
pub mod budget;
mod chain;
pub mod clock;
pub mod closure;
mod common_line;
pub mod dial;
pub mod drift;
pub mod fit;
pub mod flange;
pub mod foot;
pub mod gains;
pub mod growth;
mod layout;
pub mod line;
mod linear;
pub mod moves;
mod observation;
pub mod position;
pub mod sag;
pub mod shims;
pub mod strain;
pub mod suspects;
mod sweep;
pub mod tolerance;
pub mod train;
pub mod trials;
pub mod whole;

pub use layout::{Body, Layout, Machine, Plane, Spool};
pub use quantities::Estimate;
