//! A quantity as somebody wrote it: its value, its `±`, and the text itself.

use std::fmt;
use std::str::FromStr;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error as _};

use crate::{Kind, Physical, System, TextError, Value, text};

/// A quantity as written. The text is kept, so that a log book says what the hand wrote.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured<Q: Physical> {
    value: Q,
    spread: Option<Q::Spread>,
    text: String,
}

impl<Q: Physical> Measured<Q> {
    /// The value.
    pub fn value(&self) -> Q {
        self.value
    }

    /// Half the width of its `±`, if one was written.
    pub fn spread(&self) -> Option<Q::Spread> {
        self.spread
    }

    /// What was written.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// To be shown as its type is shown in general.
    pub fn shown(&self) -> Value {
        self.shown_as(Q::KIND)
    }

    /// To be shown as a `kind` of the same dimension.
    pub fn shown_as(&self, kind: Kind) -> Value {
        debug_assert_eq!(kind.dimension(), Q::DIMENSION);
        Value { kind, si: self.value.si(), plus_minus: self.spread.map(Q::spread_si) }
    }

    /// A value that this program found, written out in one system of units.
    pub fn written(value: Q, kind: Kind, system: System) -> Self {
        let shown = Value { kind, si: value.si(), plus_minus: None };
        Self { value, spread: None, text: shown.plain(system) }
    }
}

impl<Q: Physical> FromStr for Measured<Q> {
    type Err = TextError;

    fn from_str(text: &str) -> Result<Self, TextError> {
        let reading = text::read(text, Q::DIMENSION)?;
        Ok(Self {
            value: Q::from_si(reading.si),
            spread: reading.spread.map(Q::spread_from_si),
            text: text.trim().to_owned(),
        })
    }
}

impl<Q: Physical> fmt::Display for Measured<Q> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

impl<Q: Physical> Serialize for Measured<Q> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.text)
    }
}

impl<'de, Q: Physical> Deserialize<'de> for Measured<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Visitor<Q>(std::marker::PhantomData<Q>);
        impl<Q: Physical> serde::de::Visitor<'_> for Visitor<Q> {
            type Value = Measured<Q>;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                let [metric, inch] = Q::DIMENSION.examples();
                write!(f, "{} as text, such as \"{metric}\" or \"{inch}\"", Q::DIMENSION.words())
            }
            fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Measured<Q>, E> {
                text.parse().map_err(E::custom)
            }
            fn visit_i64<E: serde::de::Error>(self, number: i64) -> Result<Measured<Q>, E> {
                self.visit_str(&number.to_string())
            }
            fn visit_u64<E: serde::de::Error>(self, number: u64) -> Result<Measured<Q>, E> {
                self.visit_str(&number.to_string())
            }
            fn visit_f64<E: serde::de::Error>(self, number: f64) -> Result<Measured<Q>, E> {
                self.visit_str(&number.to_string())
            }
        }
        deserializer.deserialize_any(Visitor(std::marker::PhantomData)).map_err(D::Error::custom)
    }
}

impl<Q: Physical> JsonSchema for Measured<Q> {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        format!("{:?}", Q::DIMENSION).into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let description =
            format!("{} with its unit; a ± may follow the number", Q::DIMENSION.words());
        json_schema!({ "type": "string", "description": description, "examples": Q::DIMENSION.examples() })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        AngularVelocity, Area, Force, HeatTransfer, Length, Power, Pressure, Ratio,
        TemperatureInterval, ThermodynamicTemperature, Torque,
    };

    fn si<Q: Physical>(text: &str) -> f64 {
        text.parse::<Measured<Q>>().unwrap_or_else(|error| panic!("{text}: {error}")).value().si()
    }

    fn close(found: f64, wanted: f64) {
        assert!((found - wanted).abs() <= 1e-9 * wanted.abs(), "{found} for {wanted}");
    }

    /// Conversion factors: NIST SP 811 (2008), appendix B.8, as printed there (seven digits).
    #[test]
    fn units_convert_as_the_standard_prints() {
        let printed = |found: f64, wanted: f64| {
            assert!((found / wanted - 1.0).abs() < 5e-7, "{found} for {wanted}");
        };
        printed(si::<Power>("1 hp"), 745.699_9);
        printed(si::<Torque>("1 lbf·ft"), 1.355_818);
        printed(si::<Torque>("1 lbf·in"), 0.112_984_8);
        printed(si::<Pressure>("1 psi"), 6_894.757);
        printed(si::<Force>("1 lbf"), 4.448_222);
        printed(si::<AngularVelocity>("1 rpm"), 0.104_719_8);
        printed(si::<Area>("1 in2"), 6.4516e-4);
        printed(si::<HeatTransfer>("1 Btu/h/ft2/degF"), 5.678_263);
        close(si::<Length>("1 mil"), 2.54e-5);
        close(si::<ThermodynamicTemperature>("212 °F"), 373.15);
        close(si::<ThermodynamicTemperature>("180 degC"), 453.15);
        close(si::<TemperatureInterval>("72 °F"), 40.0);
    }

    #[test]
    fn one_size_is_the_same_however_it_is_written() {
        for text in ["80.062 mm", "80.062mm", "0.080062 m", "80062 µm", "3.152047244094488 in"] {
            close(si::<Length>(text), 0.080_062);
        }
        close(si::<Length>("3 1/8 in"), 0.079_375);
        close(si::<Length>("3-1/8\""), 0.079_375);
        close(si::<Length>("-4 mil"), -1.016e-4);
        close(si::<Ratio>("75 %"), 0.75);
        close(si::<Ratio>("1.75"), 1.75);
    }

    #[test]
    fn a_spread_may_have_its_own_unit_or_share_one() {
        for text in
            ["80.062 ± 0.004 mm", "80.062 mm ± 0.004 mm", "80.062 mm ± 4 µm", "80.062 mm +/- 0.004"]
        {
            let bore: Measured<Length> = text.parse().unwrap();
            close(bore.value().si(), 0.080_062);
            close(bore.spread().unwrap().si(), 4e-6);
        }
        let warm: Measured<ThermodynamicTemperature> = "68 ± 9 °F".parse().unwrap();
        close(warm.value().si(), 293.15);
        close(warm.spread().unwrap().si(), 5.0);
    }

    #[test]
    fn errors_say_what_was_expected() {
        let error = |text: &str| text.parse::<Measured<Length>>().unwrap_err().to_string();
        assert_eq!(
            error("80.062"),
            "“80.062” has no unit; expected a length, such as 80.062 mm or 3.1512 in"
        );
        assert!(error("80 kW").starts_with("“kW” is a unit of a power; expected a length"));
        assert!(error("80 furlong").contains("not a unit that is known"));
        assert!(error("80,062 mm").contains("two meanings, 80.062 or 80062"));
        assert!(
            error("80.062 ± 3 kW mm").contains("±") || error("80.062 ± 3 kW mm").contains("unit")
        );
        assert!(error("80.062 ± -0.004 mm").contains("negative"));
        assert!(error("").starts_with("nothing is written"));
        let grease = "3 gal".parse::<Measured<crate::Volume>>().unwrap_err().to_string();
        assert!(grease.contains("US gal or imp gal"), "{grease}");
    }

    proptest::proptest! {
        /// No text, however odd, stops the program.
        #[test]
        fn any_text_is_answered(text in "\\PC{0,24}") {
            let _ = text.parse::<Measured<Length>>();
            let _ = text.parse::<Measured<ThermodynamicTemperature>>();
        }

        /// Text that looks like a quantity, more often.
        #[test]
        fn near_quantities_are_answered(text in "[-−+]?[0-9 ,./]{0,8}(±|\\+/-)?[0-9.,]{0,4} ?(mm|in|mil|°C|kW|\")?") {
            if let Ok(read) = text.parse::<Measured<Length>>() {
                proptest::prop_assert!(read.value().si().is_finite());
            }
        }

        /// A length written out in either system reads back as the same length.
        #[test]
        fn written_lengths_read_back(mm in -9_000.0..9_000.0_f64) {
            for system in [System::Metric, System::Inch] {
                let written = Measured::<Length>::written(Length::from_si(mm / 1e3), Kind::Size, system);
                let back: Measured<Length> = written.text().parse().unwrap();
                proptest::prop_assert!((back.value().si() - mm / 1e3).abs() <= 0.51e-6 * 2.6);
            }
        }
    }
}
