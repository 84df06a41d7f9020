//! Stress at a surface in plane stress, and how near it comes to yielding.

use quantities::{Basis, Kind, Physical, Pressure, Source, Value, Working};

/// Hoop and radial stress at one place; tension positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stress {
    /// Around.
    pub hoop: Pressure,
    /// Outwards.
    pub radial: Pressure,
    /// Equivalent stress by von Mises.
    pub von_mises: Pressure,
}

impl Stress {
    /// A state of plane stress.
    ///
    /// ```text
    /// σ = √( h² − h·r + r² )
    /// ```
    /// # Valid
    /// No shear and no stress along the axis.
    pub fn plane(hoop: Pressure, radial: Pressure) -> Self {
        let (h, r) = (hoop.si(), radial.si());
        Self { hoop, radial, von_mises: Pressure::from_si((h * h - h * r + r * r).sqrt()) }
    }

    /// Safety against yielding; infinite for a part that carries nothing.
    ///
    /// About 80 % of yield at the bore of the hub (1.25) is found good; hubs of d/D 0.4 or less
    /// have stood full yield there.
    /// # Source
    /// Bloch, *Improving Machinery Reliability*, p. 217.
    pub fn safety(&self, yield_strength: Pressure) -> f64 {
        yield_strength.si() / self.von_mises.si()
    }

    /// How the equivalent stress at `place` was found.
    pub fn working(&self, place: &str) -> Working {
        let stress = |stress| Value::new(Kind::Stress, stress);
        let source = Source::new("von Mises, plane stress", "", Basis::Computed);
        let formula = "s = √(h² − h·r + r²)";
        Working::new(format!("Equivalent stress, {place}"), formula, stress(self.von_mises), source)
            .term("h", "hoop stress", stress(self.hoop))
            .term("r", "radial stress", stress(self.radial))
    }
}
