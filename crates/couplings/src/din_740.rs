//! Rating of elastomer couplings in the manner of DIN 740-2: steady torque, shock and fatigue.
//!
//! ```text
//! steady    K ≥ T·St
//! shock     M ≥ P·S·J2/(J1 + J2)·Sz·St      driver's side; the load's side has J1 above
//!           M ≥ P·S·J2/(J1 + J2)·Sz·St + T·St      where the shock rides on the load's torque
//! fatigue   W ≥ V·St·Sf                     Sf = 1 up to 10 Hz, √(f/10) above
//! ```
//! K, M, W rated, greatest and vibratory torque of the coupling · T, P, V steady, peak and vibratory
//! torque · J1, J2 inertia of driver and load · St temperature, Sz starts, Sf frequency, S shock
//!
//! All factors are from memory, as widely repeated; the maker's own come first.

use quantities::{
    AngularVelocity, Basis, Kind, MomentOfInertia, Physical, Source, ThermodynamicTemperature,
    Torque, Value, Working,
};
use uom::si::thermodynamic_temperature::degree_celsius;

/// How the method and its factors are known.
pub const SOURCE: Source =
    Source::new("DIN 740-2", "factors to be confirmed with the maker", Basis::Memory);

/// Why there is no torque.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("{what} is out of range: {si}")]
pub struct RatingError {
    /// What was put in.
    pub what: &'static str,
    /// In SI.
    pub si: f64,
}

fn positive<Q: Physical>(what: &'static str, quantity: Q) -> Result<f64, RatingError> {
    let si = quantity.si();
    if si.is_finite() && si > 0.0 { Ok(si) } else { Err(RatingError { what, si }) }
}

fn factor(what: &'static str, factor: f64) -> Result<f64, RatingError> {
    if factor.is_finite() && factor >= 1.0 {
        Ok(factor)
    } else {
        Err(RatingError { what, si: factor })
    }
}

/// Temperature factor of natural-rubber-like elastomers, −30 to 80 °C; `None` beyond.
///
/// A band holds its upper end, in whatever unit that was written: 104 °F is 40 °C.
pub fn temperature_factor(at: ThermodynamicTemperature) -> Option<f64> {
    // Rounding on the way from °F must not carry a temperature over the end of its band.
    match (at.get::<degree_celsius>() * 1e6).round() / 1e6 {
        celsius if (-30.0..=30.0).contains(&celsius) => Some(1.0),
        celsius if celsius > 30.0 && celsius <= 40.0 => Some(1.2),
        celsius if celsius > 40.0 && celsius <= 60.0 => Some(1.4),
        celsius if celsius > 60.0 && celsius <= 80.0 => Some(1.8),
        _ => None,
    }
}

/// Factor for the number of starts in an hour, up to 800; `None` beyond.
pub fn start_factor(per_hour: u32) -> Option<f64> {
    match per_hour {
        0..=100 => Some(1.0),
        101..=200 => Some(1.2),
        201..=400 => Some(1.4),
        401..=800 => Some(1.6),
        _ => None,
    }
}

/// Frequency factor of vibratory torque: 1 up to 10 Hz, √(f/10) above.
pub fn frequency_factor(hertz: f64) -> Option<f64> {
    (hertz.is_finite() && hertz >= 0.0).then(|| (hertz / 10.0).sqrt().max(1.0))
}

/// On which side of the coupling a shock arises.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum From {
    /// At the driver: a motor's start.
    Driver,
    /// At the load: a jam.
    Load,
}

/// A shock and the two masses that share it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shock {
    /// Where it arises.
    pub from: From,
    /// Peak torque there.
    pub peak: Torque,
    /// Inertia of driver and load, at the coupling's speed.
    pub inertias: [MomentOfInertia; 2],
    /// Shock factor: 1.5 light, 1.8 medium, 2.2 heavy.
    pub shock_factor: f64,
    /// Start factor.
    pub start_factor: f64,
    /// Temperature factor.
    pub temperature_factor: f64,
    /// The load's own torque that the shock rides on; `None` where it starts without its load.
    pub load: Option<Torque>,
}

/// What a shock asks of the coupling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShockNeed {
    /// What was put in.
    pub shock: Shock,
    /// Share of the peak that passes through the coupling, without factors.
    pub share: f64,
    /// Torque of the shock in the coupling.
    pub in_coupling: Torque,
    /// Greatest torque that the coupling must bear.
    pub needed: Torque,
}

/// The greatest torque that a coupling must bear for a shock.
///
/// # Errors
/// [`RatingError`] for a torque or inertia not above zero, or a factor below one.
/// # Source
/// [`SOURCE`], from memory; the load's torque is added with the temperature factor alone.
pub fn shock(shock: Shock) -> Result<ShockNeed, RatingError> {
    let [driver, load] = shock.inertias;
    let (driver, load) = (positive("driver’s inertia", driver)?, positive("load’s inertia", load)?);
    let other = match shock.from {
        From::Driver => load,
        From::Load => driver,
    };
    let share = other / (driver + load);
    let peak = positive("peak torque", shock.peak)? * factor("shock factor", shock.shock_factor)?;
    let in_coupling = peak * share;
    let factors = factor("start factor", shock.start_factor)?
        * factor("temperature factor", shock.temperature_factor)?;
    let load = shock.load.map_or(Ok(0.0), |load| positive("load’s torque", load))?;
    Ok(ShockNeed {
        shock,
        share,
        in_coupling: Torque::from_si(in_coupling),
        needed: Torque::from_si(in_coupling * factors + load * shock.temperature_factor),
    })
}

impl ShockNeed {
    /// How the torque was found.
    pub fn working(&self) -> Working {
        let torque = |torque| Value::new(Kind::Torque, torque);
        let (formula, valid) = match self.shock.load {
            Some(_) => ("C = P·S·q\nM = C·Sz·St + T·St", "a start against the load’s torque"),
            None => ("C = P·S·q\nM = C·Sz·St", "a start without load"),
        };
        let working = Working::new("Greatest torque needed", formula, torque(self.needed), SOURCE)
            .term("P", "peak torque where it arises", torque(self.shock.peak))
            .term("S", "shock factor", Value::number(self.shock.shock_factor))
            .term("q", "share of the far inertia", Value::number(self.share))
            .term("C", "shock in the coupling", torque(self.in_coupling))
            .term("Sz", "start factor", Value::number(self.shock.start_factor))
            .term("St", "temperature factor", Value::number(self.shock.temperature_factor))
            .valid(valid);
        match self.shock.load {
            Some(load) => working.term("T", "load’s torque", torque(load)),
            None => working,
        }
    }
}

/// Rated torque that a steady torque asks for: T·St.
///
/// # Errors
/// [`RatingError`] for a torque not above zero or a factor below one.
pub fn steady(torque: Torque, temperature_factor: f64) -> Result<Torque, RatingError> {
    let needed =
        positive("steady torque", torque)? * factor("temperature factor", temperature_factor)?;
    Ok(Torque::from_si(needed))
}

/// A torque that swings about the steady one without end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swings {
    /// To each side.
    pub torque: Torque,
    /// How often, as an angle per time.
    pub frequency: AngularVelocity,
    /// Temperature factor.
    pub temperature_factor: f64,
}

/// What a swinging torque asks of the coupling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SwingNeed {
    /// What was put in.
    pub swings: Swings,
    /// Frequency factor.
    pub frequency_factor: f64,
    /// Vibratory torque that the coupling must be rated for.
    pub needed: Torque,
}

/// Vibratory torque rating that an alternating torque asks for: V·St·Sf.
///
/// # Errors
/// [`RatingError`] for a torque not above zero, a factor below one, or no frequency.
pub fn swings(swings: Swings) -> Result<SwingNeed, RatingError> {
    let hertz = swings.frequency.si() / std::f64::consts::TAU;
    let frequency = frequency_factor(hertz).ok_or(RatingError { what: "frequency", si: hertz })?;
    let heat = factor("temperature factor", swings.temperature_factor)?;
    let needed = Torque::from_si(positive("vibratory torque", swings.torque)? * heat * frequency);
    Ok(SwingNeed { swings, frequency_factor: frequency, needed })
}

impl SwingNeed {
    /// How the torque was found.
    pub fn working(&self) -> Working {
        let torque = |torque| Value::new(Kind::Torque, torque);
        Working::new("Vibratory torque needed", "W = V·St·Sf", torque(self.needed), SOURCE)
            .term("V", "swinging torque, to each side", torque(self.swings.torque))
            .term("St", "temperature factor", Value::number(self.swings.temperature_factor))
            .term(
                "Sf",
                "frequency factor, √(f/10 Hz) above 10 Hz",
                Value::number(self.frequency_factor),
            )
            .valid("natural-rubber-like elastomers, −30 to 80 °C")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kg_m2(si: f64) -> MomentOfInertia {
        MomentOfInertia::from_si(si)
    }

    /// The method worked by hand: motor start 1400 N·m, 1.2 and 3.6 kg·m², S 1.8, Sz 1.2.
    fn start() -> Shock {
        Shock {
            from: From::Driver,
            peak: Torque::from_si(1400.0),
            inertias: [1.2, 3.6].map(kg_m2),
            shock_factor: 1.8,
            start_factor: 1.2,
            temperature_factor: 1.0,
            load: None,
        }
    }

    /// DIN 740-2, from memory: where the shock rides on the load's torque, T·St is added. By hand,
    /// with 400 N·m and St 1.4: 2268·1.4 + 400·1.4 = 3735.2 N·m.
    #[test]
    fn a_start_under_load_adds_the_loads_torque() {
        let warm = Shock { temperature_factor: 1.4, ..start() };
        let loaded = Shock { load: Some(Torque::from_si(400.0)), ..warm };
        assert!((shock(warm).unwrap().needed.si() - 3175.2).abs() <= 0.05);
        assert!((shock(loaded).unwrap().needed.si() - 3735.2).abs() <= 0.05);
        assert!(shock(Shock { load: Some(Torque::from_si(-1.0)), ..warm }).is_err());
    }

    #[test]
    fn the_far_mass_draws_the_shock_through() {
        let need = shock(start()).unwrap();
        assert!((need.in_coupling.si() - 1890.0).abs() <= 0.5);
        assert!((need.needed.si() - 2268.0).abs() <= 0.5);
        let load = shock(Shock { from: From::Load, ..start() }).unwrap();
        assert!((load.in_coupling.si() - 630.0).abs() <= 0.5);
        assert!(shock(Shock { shock_factor: 0.5, ..start() }).is_err());
        assert!(shock(Shock { inertias: [kg_m2(0.0), kg_m2(1.0)], ..start() }).is_err());
    }

    /// By hand: √(25/10) = 1.58114, so 120 N·m at 1.2 asks for 227.684; 45 kW at 1475 rpm at 1.4 asks
    /// for 407.868 N·m.
    #[test]
    fn steady_and_fatigue() {
        assert!((frequency_factor(25.0).unwrap() - 1.581_14).abs() <= 0.5e-5);
        let swinging = |hertz: f64| {
            let frequency = AngularVelocity::from_si(hertz * std::f64::consts::TAU);
            swings(Swings { torque: Torque::from_si(120.0), frequency, temperature_factor: 1.2 })
        };
        assert!((swinging(25.0).unwrap().needed.si() - 227.684).abs() <= 0.0005);
        let torque = Torque::from_si(45e3 / (1475.0 * std::f64::consts::TAU / 60.0));
        assert!((steady(torque, 1.4).unwrap().si() - 407.868).abs() <= 0.0005);
        assert!(swinging(f64::NAN).is_err());
    }

    #[test]
    fn factors_end_where_the_table_ends() {
        let at =
            |celsius| temperature_factor(ThermodynamicTemperature::new::<degree_celsius>(celsius));
        assert_eq!([at(20.0), at(35.0), at(60.0), at(75.0)], [1.0, 1.2, 1.4, 1.8].map(Some));
        assert_eq!([at(-40.0), at(90.0), at(f64::NAN)], [None; 3]);
        assert_eq!(
            [start_factor(100), start_factor(101), start_factor(801)],
            [Some(1.0), Some(1.2), None]
        );
    }

    /// Ends of the bands in both units: −30, 30, 40, 60 and 80 °C are −22, 86, 104, 140 and 176 °F.
    #[test]
    fn a_band_ends_where_it_ends_in_either_unit() {
        use uom::si::thermodynamic_temperature::degree_fahrenheit;
        let ends = [
            (-30.0, -22.0, 1.0),
            (30.0, 86.0, 1.0),
            (40.0, 104.0, 1.2),
            (60.0, 140.0, 1.4),
            (80.0, 176.0, 1.8),
        ];
        for (celsius, fahrenheit, factor) in ends {
            let metric = ThermodynamicTemperature::new::<degree_celsius>(celsius);
            let inch = ThermodynamicTemperature::new::<degree_fahrenheit>(fahrenheit);
            assert_eq!([metric, inch].map(temperature_factor), [Some(factor); 2], "{celsius} °C");
        }
        let over = ThermodynamicTemperature::new::<degree_celsius>(40.01);
        assert_eq!(temperature_factor(over), Some(1.4));
    }

    proptest::proptest! {
        /// What the coupling feels from both ends adds up to the whole shock.
        #[test]
        fn both_ends_add_up(driver in 0.01..99.0_f64, load in 0.01..99.0_f64) {
            let shares = [From::Driver, From::Load].map(|from| {
                let inertias = [kg_m2(driver), kg_m2(load)];
                shock(Shock { from, inertias, ..start() }).unwrap().share
            });
            proptest::prop_assert!((shares[0] + shares[1] - 1.0).abs() < 1e-12);
        }
    }
}
