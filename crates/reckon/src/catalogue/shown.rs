//! The working of what takes one line: the formula, and what was put in.

use quantities::{
    Area, Basis, Force, Kind, Length, Limits, Physical, Pressure, Source, TemperatureCoefficient,
    ThermodynamicTemperature, Time, Value, Working,
};

/// The reference temperature of sizes (ISO 1).
const REFERENCE_K: f64 = 293.15;

const GROWS: Source = Source::new("Linear expansion", "mean coefficient", Basis::Computed);
const CONE: Source = Source::new("Geometry of a cone", "taper on the diameter", Basis::Computed);

fn allowance(length: Length) -> Value {
    Value::new(Kind::Allowance, length)
}

fn temperature(at: ThermodynamicTemperature) -> Value {
    Value::new(Kind::Temperature, at)
}

fn reference() -> Value {
    temperature(ThermodynamicTemperature::from_si(REFERENCE_K))
}

/// How a diameter grows to a temperature.
pub(super) fn growth(
    growth: Length,
    mean: TemperatureCoefficient,
    diameter: Length,
    to: ThermodynamicTemperature,
) -> Working {
    Working::new("Growth", "g = a·d·(T − R)", allowance(growth), GROWS)
        .term("a", "mean expansion between the two", Value::new(Kind::Expansion, mean))
        .term("d", "diameter at 20 °C (68 °F)", Value::new(Kind::Size, diameter))
        .term("T", "temperature", temperature(to))
        .term("R", "reference of sizes", reference())
}

/// Where it has grown by so much.
pub(super) fn reaches(
    at: ThermodynamicTemperature,
    mean: TemperatureCoefficient,
    diameter: Length,
    growth: Length,
) -> Working {
    Working::new("Temperature for that growth", "T = R + g/(a·d)", temperature(at), GROWS)
        .term("g", "growth", allowance(growth))
        .term("a", "mean expansion between the two", Value::new(Kind::Expansion, mean))
        .term("d", "diameter at 20 °C (68 °F)", Value::new(Kind::Size, diameter))
        .term("R", "reference of sizes", reference())
}

/// Interference that a draw-up gives.
pub(super) fn drawn(interference: Value, on_diameter: f64, distance: Value) -> Working {
    Working::new("Interference from the draw-up", "i = t·x", interference, CONE)
        .term("t", "taper on the diameter", Value::number(on_diameter))
        .term("x", "distance drawn up", distance)
}

/// Taper between two diameters.
pub(super) fn taper(slope: Value, large: Length, small: Length, length: Length) -> Working {
    Working::new("Taper on the diameter", "t = (D − d)/L", slope, CONE)
        .term("D", "large end", Value::new(Kind::Size, large))
        .term("d", "small end", Value::new(Kind::Size, small))
        .term("L", "distance between them", Value::new(Kind::Length, length))
}

/// Stress in the bolts of a puller.
pub(super) fn bolt_stress(stress: Pressure, pull: Force, bolts: u32, area: Area) -> Working {
    let source = Source::new("Tension in bolts that share a pull", "", Basis::Computed);
    Working::new("Stress in each bolt", "s = F/(n·A)", Value::new(Kind::Stress, stress), source)
        .term("F", "pull", Value::new(Kind::Force, pull))
        .term("n", "bolts", Value::count(bolts))
        .term("A", "stress area of one", Value::new(Kind::Area, area))
        .valid("all bolts alike, and evenly loaded")
}

/// Chance that a true value lies between limits.
pub(super) fn chance(chance: f64, value: &Value, limits: &Limits) -> Working {
    let bare = |si| Value { si, plus_minus: None, ..*value };
    let result = Value { kind: Kind::Percent, ..Value::number(chance) };
    let source = Source::new("JCGM 106:2012", "7.3 and 7.4", Basis::Memory);
    let formula = match (limits.least, limits.greatest) {
        (Some(_), Some(_)) => "P = Φ((G − x)/u) − Φ((L − x)/u)",
        (Some(_), None) => "P = 1 − Φ((L − x)/u)",
        (None, _) => "P = Φ((G − x)/u)",
    };
    let mut working = Working::new("Chance that it lies inside", formula, result, source)
        .term("x", "value", bare(value.si))
        .term("u", "half its ±", bare(value.plus_minus.unwrap_or(0.0) / 2.0));
    if let Some(least) = limits.least {
        working = working.term("L", "least", bare(least));
    }
    if let Some(greatest) = limits.greatest {
        working = working.term("G", "greatest", bare(greatest));
    }
    working.valid("normally distributed")
}

/// Time in which a body of one temperature cools.
pub(super) fn cooling(
    time: Time,
    constant: Time,
    [from, to, surroundings]: [ThermodynamicTemperature; 3],
) -> Working {
    let source = Source::new(
        "Incropera, Fundamentals of Heat and Mass Transfer",
        "5.1, the lumped capacitance method",
        Basis::Memory,
    );
    let shown = |time| Value::new(Kind::Time, time);
    Working::new("Time to cool", "t = k·ln((a − s)/(b − s))", shown(time), source)
        .term("k", "time constant, ρ·c·V/(h·A)", shown(constant))
        .term("a", "from", temperature(from))
        .term("b", "to", temperature(to))
        .term("s", "surroundings", temperature(surroundings))
        .valid("Biot number below 0.1")
}

/// Interference that is a part of the shaft.
pub(super) fn part_of(
    name: &'static str,
    interference: Length,
    part: f64,
    shaft: Length,
) -> Working {
    let source = tables::hub_fits::SOURCE;
    Working::new(name, "i = r·d", allowance(interference), source)
        .term("r", "part of the diameter", Value::number(part))
        .term("d", "shaft", Value::new(Kind::Size, shaft))
}
