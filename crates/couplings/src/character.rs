//! What a kind is like to live with, beside what it forgives.

use quantities::Source;
use serde::Serialize;

/// What can be seen of a kind, how it twists and what its balance rests on.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Character {
    /// What of its working parts can be seen without taking it apart.
    pub seen: &'static str,
    /// How stiff it is in torsion, how that changes with the torque, and its play.
    pub torsion: &'static str,
    /// What its balance rests on.
    pub balance: &'static str,
    /// What gives in it.
    pub gives: Gives,
    /// How it is known.
    pub source: Source,
}

/// What gives in a coupling, and so what heat and time do to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Gives {
    /// Nothing does.
    Nothing,
    /// Metal: it slides or bends.
    Metal,
    /// An elastomer: it ages, and heat takes its strength.
    Elastomer,
    /// Not known of such a kind.
    NotKnown,
}
