//! How the seconds were found.

use quantities::{Basis, Kind, Source, Value, Working};

use super::Grab;

const ELEMENTS: Source = Source::new(
    "Heat conduction and thermoelasticity by finite elements",
    "checked against Incropera, Fundamentals of Heat and Mass Transfer, 5.6, and Lamé’s thick ring",
    Basis::Computed,
);

impl Grab {
    /// How the time until the hub grabs was found.
    pub fn working(&self) -> Working {
        let asked = &self.asked;
        let allowance = |length| Value::new(Kind::Allowance, length);
        let celsius = |at| Value::new(Kind::Temperature, at);
        let metal = &asked.hub.metal;
        let coarser = self.check.coarser.unwrap_or_default();
        Working::new(
            "Time until the hub grabs, low end",
            "ρ·c·dT/dt = div(k·grad T)\nclearance = growth of the bore − growth of the shaft − δ\nt = the moment when the least clearance, at first C, is gone",
            Value::new(Kind::Time, self.contact.low),
            ELEMENTS,
        )
        .term("d", "joint", Value::new(Kind::Size, asked.hub.bore))
        .term("δ", "interference, upper end", allowance(asked.interference))
        .term("C", "clearance as it comes home, on the diameter", allowance(self.clearance))
        .term("Th", "hub from the heater", celsius(asked.hub_temperature))
        .term("Ts", "shaft", celsius(asked.shaft_temperature))
        .term("k", "conductivity of the hub", Value::new(Kind::Conductivity, metal.conductivity))
        .term("c", "heat capacity of the hub", Value::new(Kind::HeatCapacity, metal.heat_capacity))
        .term("ρ", "density of the hub", Value::new(Kind::Density, metal.density))
        .term("e", "off the middle, 0 to 1", Value::number(asked.unknowns.eccentricity.high))
        .term("n", "nodes of the mesh", Value::number(count(self.check.nodes)))
        .term("x", "difference from a coarser mesh", Value::new(Kind::Percent, coarser))
        .valid("straight bore, no keyway, no taper; the hub evenly hot; hub resting on the shaft")
    }
}

fn count(nodes: usize) -> f64 {
    crate::kernel::grading::as_float(nodes)
}
