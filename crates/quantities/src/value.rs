//! A number on its way out, to be shown in the units of whoever reads it.

use std::fmt;

use serde::{Serialize, Serializer, ser::SerializeStruct};

use crate::{Kind, Physical, System, Unit};

/// A quantity to be shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Value {
    /// What it is, and so its unit and decimals.
    pub kind: Kind,
    /// In SI base units.
    pub si: f64,
    /// Half the width of its 95 % interval, in SI base units; `None` when exact or not known.
    pub plus_minus: Option<f64>,
}

impl Value {
    /// A quantity without a `±`.
    pub fn new<Q: Physical>(kind: Kind, quantity: Q) -> Self {
        debug_assert_eq!(kind.dimension(), Q::DIMENSION);
        Self { kind, si: quantity.si(), plus_minus: None }
    }

    /// A plain number.
    pub fn number(number: f64) -> Self {
        Self { kind: Kind::Number, si: number, plus_minus: None }
    }

    /// A number of things.
    pub fn count(count: u32) -> Self {
        Self { kind: Kind::Count, si: f64::from(count), plus_minus: None }
    }

    /// With a `±` of so much, in SI.
    #[must_use]
    pub fn with_plus_minus(self, si: f64) -> Self {
        Self { plus_minus: Some(si), ..self }
    }

    /// The unit it is shown in: "mm"; empty for a plain number.
    pub fn unit(&self, system: System) -> &'static str {
        self.kind.unit(system).name()
    }

    /// The number alone: "80.062", with a true minus and narrow spaces between thousands.
    pub fn digits(&self, system: System) -> String {
        let face = Face::of(self, system);
        Digits { number: face.unit.from_si(self.si), decimals: face.decimals }.to_string()
    }

    /// The half-width alone: "0.004".
    pub fn plus_minus_digits(&self, system: System) -> Option<String> {
        Face::of(self, system).half_width.map(|digits| digits.to_string())
    }

    /// The whole of it: "80.062 ± 0.004 mm".
    pub fn show(&self, system: System) -> String {
        Shown(self, system).to_string()
    }

    /// For typing back in: plain minus, no thousands marks, no `±`.
    pub fn plain(&self, system: System) -> String {
        let unit = self.kind.unit(system);
        let number = unit.from_si(self.si);
        let decimals = self.kind.decimals(system, number);
        format!("{number:.decimals$} {}", unit.name()).trim_end().to_owned()
    }
}

/// How a value looks in one system.
struct Face {
    unit: &'static Unit,
    decimals: usize,
    half_width: Option<Digits>,
}

impl Face {
    /// The decimals of its kind, and one more where its ± would vanish among them.
    fn of(value: &Value, system: System) -> Self {
        let unit = value.kind.unit(system);
        let usual = value.kind.decimals(system, unit.from_si(value.si));
        let half_width = value.plus_minus.map(|si| si / unit.factor);
        let vanishes = half_width.is_some_and(|half_width| {
            half_width > 0.0 && half_width < 0.5 * 0.1_f64.powi(i32::try_from(usual).unwrap_or(0))
        });
        let decimals = if vanishes { usual + 1 } else { usual };
        let half_width = half_width.map(|number| Digits { number, decimals });
        Self { unit, decimals, half_width }
    }
}

/// A value as it is shown in one system.
struct Shown<'a>(&'a Value, System);

impl fmt::Display for Shown<'_> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(value, system) = self;
        let Face { unit, decimals, half_width } = Face::of(value, *system);
        Digits { number: unit.from_si(value.si), decimals }.fmt(out)?;
        if let Some(half_width) = half_width {
            write!(out, " ± {half_width}")?;
        }
        match unit.name() {
            "" => Ok(()),
            name => write!(out, " {name}"),
        }
    }
}

impl Serialize for Shown<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

/// SI, and both systems as text, so that no reader of the JSON needs to convert.
impl Serialize for Value {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("Value", 5)?;
        out.serialize_field("kind", &self.kind)?;
        out.serialize_field("si", &self.si)?;
        out.serialize_field("plus_minus", &self.plus_minus)?;
        out.serialize_field("metric", &Shown(self, System::Metric))?;
        out.serialize_field("inch", &Shown(self, System::Inch))?;
        out.end()
    }
}

/// A number with so many decimals, a true minus and narrow spaces between thousands.
struct Digits {
    number: f64,
    decimals: usize,
}

impl fmt::Display for Digits {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = format!("{:.*}", self.decimals, self.number.abs());
        let is_zero = text.bytes().all(|b| matches!(b, b'0' | b'.'));
        if self.number < 0.0 && !is_zero {
            out.write_str("−")?;
        }
        let point = text.find('.').unwrap_or(text.len());
        let (mut whole, part) = text.split_at(point);
        while whole.len() > 3 {
            let (group, rest) = whole.split_at((whole.len() - 1) % 3 + 1);
            write!(out, "{group}\u{202f}")?;
            whole = rest;
        }
        write!(out, "{whole}{part}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Length, Torque};

    #[test]
    fn one_value_shows_in_both_systems() {
        let bore = Value::new(Kind::Size, Length::from_si(0.080_062)).with_plus_minus(4e-6);
        assert_eq!(bore.show(System::Metric), "80.062 ± 0.004 mm");
        assert_eq!(bore.show(System::Inch), "3.1520 ± 0.0002 in");
        let torque = Value::new(Kind::Torque, Torque::from_si(2420.0));
        assert_eq!(torque.show(System::Metric), "2\u{202f}420 N·m");
        let sure = Value::new(Kind::Offset, Length::from_si(1.4e-4)).with_plus_minus(4e-6);
        assert_eq!(sure.show(System::Metric), "0.140 ± 0.004 mm");
        let low = Value::new(Kind::Offset, Length::from_si(-1.02e-4));
        assert_eq!(low.show(System::Metric), "−0.10 mm");
        assert_eq!(low.show(System::Inch), "−4.0 mil");
        assert_eq!(Value::new(Kind::Offset, Length::from_si(-1e-7)).digits(System::Metric), "0.00");
    }
}
