//! How the opening was found.

use quantities::{Basis, Kind, Physical, Source, Value, Working};

use super::Opening;

const ELEMENTS: Source = Source::new(
    "Heat conduction, thermoelasticity and one-sided contact by finite elements",
    "checked against Incropera, Fundamentals of Heat and Mass Transfer, 5.6, and Lamé’s thick ring",
    Basis::Computed,
);

impl Opening {
    /// How the least pull was found.
    pub fn working(&self) -> Working {
        let asked = &self.asked;
        let allowance = |length| Value::new(Kind::Allowance, length);
        let power = asked.heats.iter().map(|heat| heat.power.si()).sum();
        Working::new(
            "Least pull, friction at its high end",
            "ρ·c·dT/dt = div(k·grad T) + heat\nF = m·(least in time of the sum of p·dA), where growth of the bore − growth of the shaft < δ",
            Value::new(Kind::Force, self.least_pull.1.high),
            ELEMENTS,
        )
        .term("d", "joint", Value::new(Kind::Size, asked.hub.bore))
        .term("δ", "interference", allowance(asked.interference))
        .term("m", "friction, high end", Value::number(asked.friction.high))
        .term("P", "heat that goes in", Value::new(Kind::HeatFlow, quantities::Power::from_si(power)))
        .term("C", "clearance wanted", allowance(asked.clearance))
        .term("T", "hottest spot of the hub", Value::new(Kind::Temperature, self.hottest.peak.temperature))
        .term("t", "time of the least pull", Value::new(Kind::Time, self.least_pull.0))
        .valid("straight bore, no keyway, no taper; heat evenly all round")
    }
}
