//! The arithmetic behind heat on and off, in SI floats: mesh, conduction, elasticity, contact, time.

pub(crate) mod case;
pub(crate) mod condensed;
pub(crate) mod conduction;
pub(crate) mod contact;
pub(crate) mod crossing;
pub(crate) mod dense;
pub(crate) mod dissection;
pub(crate) mod elastic;
pub(crate) mod element;
pub(crate) mod grading;
pub(crate) mod growth;
pub(crate) mod influence;
pub(crate) mod march;
pub(crate) mod mesh;
pub(crate) mod model;
pub(crate) mod moment;
pub(crate) mod path;
pub(crate) mod section;
pub(crate) mod sparse;
pub(crate) mod taken;
pub(crate) mod triangle;
pub(crate) mod wide;
