//! Every working is worked again: the last line of its formula, with its terms put in as they
//! stand, must give its result. A formula that says one thing while the program does another fails.

#![expect(clippy::unwrap_used, reason = "a test may stop where it stands")]

use std::iter::Peekable;
use std::vec::IntoIter;

use mechanics::bolts::{
    Thread, fitted_bolts, flange_friction, preload_working, prevailing_working, stress_area,
    tightening_torque,
};
use mechanics::heat::carried::{Carried, surface};
use mechanics::heat::expansion::Expansion;
use mechanics::heat::ramp::Ramp;
use mechanics::heat::{Opening, heating_energy, sliding_clearance_working};
use mechanics::interference::flattening::Interference;
use mechanics::interference::hub::{Metal, PressFit, Running};
use mechanics::interference::{Joint, Sizes, contact_pressure};
use mechanics::keys::balance::{BalanceKey, LengthRule};
use mechanics::keys::room::{TopSizes, across_keyway, leaning, side_fit, top_clearance};
use mechanics::keys::set_screw::set_screws;
use mechanics::keys::{
    Depth, Ends, Key, Keys, Sharing, ShearYield, Strength, loaded, needed_length,
};
use mechanics::mass::hub_mass;
use mechanics::power::Duty;
use mechanics::pull::hold::{Jaws, thread_shear};
use mechanics::pull::{pull_force, puller, ram_force_working, ram_working};
use mechanics::size::correction::{Setting, Temperatures};
use mechanics::size::{Contact, Direction, Measurement, Reading};
use mechanics::taper::{Taper, dilation};
use mechanics::window::{Allowed, Demand};
use mechanics::{Estimate, Range, Slice};
use quantities::{
    Angle, AngularVelocity, Area, Force, HeatTransfer, Length, Mass, MassDensity, Physical, Power,
    Pressure, Ratio, SpecificHeatCapacity, System, TemperatureCoefficient, TemperatureInterval,
    ThermalConductivity, ThermodynamicTemperature, Time, Torque, Working,
};

#[derive(Clone, Debug, PartialEq)]
enum Token {
    Number(f64),
    Sign(char),
}

/// Numbers, letters that stand for terms, and signs.
fn tokens(line: &str, working: &Working) -> Vec<Token> {
    let mut out = Vec::new();
    let mut letters = line.chars().peekable();
    while let Some(c) = letters.next() {
        if c.is_whitespace() {
            continue;
        }
        if !c.is_alphanumeric() || c == '²' {
            out.push(Token::Sign(c));
            continue;
        }
        let mut word = c.to_string();
        while let Some(&next) = letters.peek() {
            if next == '²' || !(next.is_alphanumeric() || next == '.') {
                break;
            }
            word.push(next);
            letters.next();
        }
        let term = working.terms.iter().find(|term| term.symbol == word);
        let number = match (term, word.as_str()) {
            (Some(term), _) => term.value.si,
            (None, "π") => std::f64::consts::PI,
            (None, word) => word.parse().unwrap_or_else(|_| panic!("{word} in {line} is no term")),
        };
        out.push(Token::Number(number));
    }
    out
}

type Tokens = Peekable<IntoIter<Token>>;

fn sum(tokens: &mut Tokens) -> f64 {
    let mut value = if tokens.next_if_eq(&Token::Sign('−')).is_some() {
        -product(tokens)
    } else {
        product(tokens)
    };
    loop {
        if tokens.next_if_eq(&Token::Sign('+')).is_some() {
            value += product(tokens);
        } else if tokens.next_if_eq(&Token::Sign('−')).is_some() {
            value -= product(tokens);
        } else {
            return value;
        }
    }
}

fn product(tokens: &mut Tokens) -> f64 {
    let mut value = power(tokens);
    loop {
        if tokens.next_if_eq(&Token::Sign('·')).is_some() {
            value *= power(tokens);
        } else if tokens.next_if_eq(&Token::Sign('/')).is_some() {
            value /= power(tokens);
        } else {
            return value;
        }
    }
}

fn power(tokens: &mut Tokens) -> f64 {
    let value = match tokens.next() {
        Some(Token::Number(number)) => number,
        Some(Token::Sign('√')) => return power(tokens).sqrt(),
        Some(Token::Sign('(')) => {
            let value = sum(tokens);
            assert_eq!(tokens.next(), Some(Token::Sign(')')));
            value
        }
        Some(Token::Sign('|')) => {
            let value = sum(tokens);
            assert_eq!(tokens.next(), Some(Token::Sign('|')));
            value.abs()
        }
        other => panic!("{other:?} where a value was expected"),
    };
    if tokens.next_if_eq(&Token::Sign('²')).is_some() { value * value } else { value }
}

/// The right side of the last line, worked; a remark after a comma is no part of it.
fn worked(working: &Working) -> f64 {
    let last = working.formula.lines().last().unwrap();
    let right = last.split_once('=').unwrap().1.split(',').next().unwrap();
    let mut tokens = tokens(right, working).into_iter().peekable();
    let value = sum(&mut tokens);
    assert_eq!(tokens.next(), None, "left over in {last}");
    value
}

fn again(workings: &[Working]) {
    for working in workings {
        let (found, said) = (worked(working), working.result.si);
        let near = 1e-9 * said.abs().max(1e-9);
        assert!((found - said).abs() <= near, "{}: {found} for {said}", working.name);
        for system in [System::Metric, System::Inch] {
            assert!(
                working.put_in(system).contains(|c: char| c.is_ascii_digit()),
                "{}",
                working.name
            );
        }
    }
}

fn mm(mm: f64) -> Length {
    Length::from_si(mm / 1e3)
}

fn celsius(degrees: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::from_si(degrees + 273.15)
}

fn size(value: f64, spread: f64) -> Estimate<Length> {
    Estimate::new(mm(value), mm(spread))
}

fn fit() -> PressFit {
    let steel = Metal::from(tables::materials::material("steel").unwrap());
    let slices = [(90.0, 130.0), (30.0, 220.0)]
        .map(|(length, outside)| Slice { length: mm(length), outside: mm(outside) });
    PressFit::new(mm(20.0), mm(80.0), &slices, steel, steel).unwrap()
}

fn running() -> Running {
    Running {
        speed: AngularVelocity::from_si(300.0),
        hub_rise: TemperatureInterval::from_si(15.0),
        shaft_rise: TemperatureInterval::from_si(5.0),
    }
}

#[test]
fn sizes() {
    let read = |station, degrees: f64, size| Reading {
        station: mm(station),
        direction: Direction::At(Angle::from_si(degrees.to_radians())),
        size: mm(size),
        spread: mm(0.004),
    };
    let readings = vec![
        read(10.0, 0.0, 80.06),
        read(10.0, 60.0, 80.07),
        read(10.0, 120.0, 80.05),
        read(90.0, 0.0, 80.08),
    ];
    let alpha = |alpha| TemperatureCoefficient::from_si(alpha);
    let temperatures = Temperatures {
        part: celsius(35.0),
        instrument: celsius(24.0),
        part_expansion: alpha(11.5e-6),
        instrument_expansion: alpha(10.8e-6),
        spread: TemperatureInterval::from_si(1.0),
        expansion_spread: alpha(0.5e-6),
    };
    let setting = Setting { standard: size(80.0, 0.001), read: mm(80.002) };
    for temperatures in [None, Some(temperatures)] {
        for setting in [None, Some(setting)] {
            let contact = Contact::TwoPoint;
            let readings = readings.clone();
            let measurement =
                Measurement { readings, contact, temperatures, setting, nominal: None };
            let size = measurement.size().unwrap();
            again(&[
                measurement.reading_working(2).unwrap(),
                size.working(),
                size.spread_working(),
                setting.map_or_else(|| size.working(), |setting| setting.working()),
                temperatures.map_or_else(
                    || size.working(),
                    |temperatures| temperatures.correction(size.mean.value).working(),
                ),
                size.taper.unwrap().working(),
                size.roundness.unwrap().working(),
            ]);
        }
    }
}

/// Two directions at three depths: what a mechanic takes.
#[test]
fn form() {
    let mut readings = Vec::new();
    for (station, along, across) in
        [(10.0, 80.012, 80.014), (46.0, 80.010, 80.013), (80.0, 80.013, 80.016)]
    {
        for (direction, read) in [(Direction::AlongKey, along), (Direction::AcrossKey, across)] {
            let (station, spread) = (mm(station), mm(0.004));
            readings.push(Reading { station, direction, size: mm(read), spread });
        }
    }
    let size = Measurement::plain(readings).size().unwrap();
    again(&[
        size.taper.unwrap().working(),
        size.bow.unwrap().working(),
        size.roundness.unwrap().working(),
    ]);
}

#[test]
fn interference_fits() {
    let interference =
        Interference::new(size(80.062, 0.003), size(80.0, 0.004), mm(0.008)).unwrap();
    let sizes = Sizes { shaft_bore: mm(20.0), joint: mm(80.0), hub_outside: mm(130.0) };
    let iron = tables::materials::material("ductile iron").unwrap().elastic;
    let joint = Joint::new(sizes, iron, tables::materials::steel()).unwrap();
    let contact = contact_pressure(&joint, interference.effective.value).unwrap();
    let state = fit().state(mm(0.054), running()).unwrap();
    again(&[
        interference.working(),
        interference.effective_working(),
        contact.working(),
        contact.hub_bore().working("bore"),
        interference.spread_working(),
        state.pressure_working(),
        state.torque_working(0.14),
        state.axial_working(0.14),
        state.hold(0.14, Torque::from_si(900.0), Force::from_si(8e3)).unwrap().working(),
        state.slices[1].left_working(),
    ]);
    let fast = Running { speed: AngularVelocity::from_si(900.0), ..Running::default() };
    let warm = Running { hub_rise: TemperatureInterval::from_si(30.0), ..Running::default() };
    let release =
        |at| fit().release(mm(0.054), 0.14, Torque::from_si(900.0), [Running::default(), at]);
    again(&[release(fast).unwrap().speed_working(), release(warm).unwrap().warmth_working()]);
    let demand = Demand {
        torque: Torque::from_si(1500.0),
        safety: 1.5,
        friction: 0.12,
        running: running(),
        flattening: mm(0.008),
    };
    let stress = Pressure::from_si(220e6);
    let window = fit().window(demand, Allowed { hub: stress, shaft: stress }).unwrap();
    again(&[window.least_working().unwrap(), window.greatest_working().unwrap()]);
    // What holds is what was asked: S·T and m·N·d/2 are one.
    let least = window.least.unwrap().state.torque(0.12).si();
    assert!((least / 2250.0 - 1.0).abs() < 1e-6);
}

#[test]
fn keys_and_screws() {
    let depth = Depth::ShaftKeyway(mm(9.0));
    let key =
        Key { width: mm(22.0), height: mm(14.0), length: mm(90.0), ends: Ends::BothRound, depth };
    let torque = Torque::from_si(1500.0);
    let load = loaded(key, Keys::Two, torque, mm(80.0)).unwrap();
    let yields = Pressure::from_si(370e6);
    let strength = Strength::from_yield(yields, yields, ShearYield::GreatestShear);
    let room = top_clearance(TopSizes {
        hub_across: size(85.4, 0.02),
        bore: size(80.0, 0.004),
        shaft_across: size(71.0, 0.02),
        shaft: size(79.99, 0.003),
        key_height: size(14.0, 0.01),
    });
    let across = across_keyway(mm(50.8), mm(12.7), mm(12.7)).unwrap();
    again(&[
        load.shear_working(),
        load.bearing_working(),
        Sharing::KeyAlone.working(torque),
        Sharing::AfterFriction(Torque::from_si(400.0)).working(torque),
        room.unwrap().working(),
        side_fit(size(22.03, 0.01), size(22.0, 0.01)).unwrap().working("hub"),
        leaning(
            side_fit(size(22.03, 0.01), size(22.0, 0.01)).unwrap(),
            side_fit(size(21.99, 0.01), size(22.0, 0.01)).unwrap(),
            size(0.02, 0.01),
            size(-0.01, 0.01),
        )
        .unwrap()
        .working(),
        across.hub_working(mm(50.8), mm(12.7), mm(12.7)),
        set_screws(Force::from_si(8000.0), 2, mm(50.0)).unwrap().working(),
        set_screws(Force::from_si(8000.0), 2, mm(50.0)).unwrap().thrust_working(),
        needed_length(key, Keys::Two, torque, mm(80.0), strength, 1.5).unwrap().working(
            1.5,
            &load,
            strength,
            mm(22.0),
        ),
        BalanceKey::new(mm(75.0), mm(125.0), LengthRule::MeanLess5Percent).unwrap().working(),
    ]);
}

#[test]
fn heat() {
    let opening = Opening {
        diameter: mm(80.0),
        interference: mm(0.062),
        clearance: mm(0.08),
        hub: Expansion::Steel,
        shaft: Expansion::Constant(TemperatureCoefficient::from_si(8.5e-6)),
        shaft_temperature: celsius(30.0),
        loss: TemperatureInterval::from_si(15.0),
    };
    let heat = opening.hub_heat().unwrap();
    let mass = hub_mass(
        mm(80.0),
        &[Slice { length: mm(90.0), outside: mm(130.0) }],
        MassDensity::from_si(7800.0),
    );
    let rise = TemperatureInterval::from_si(150.0);
    let way = Carried {
        surface: surface(mm(80.0), &[Slice { length: mm(90.0), outside: mm(130.0) }]),
        mass: Mass::from_si(6.0),
        heat_capacity: SpecificHeatCapacity::from_si(470.0),
        convection: HeatTransfer::from_si(7.0),
        emissivity: 0.6,
        air: celsius(20.0),
        time: Time::from_si(60.0),
    };
    let ramp = Ramp {
        wall: mm(25.0),
        conductivity: ThermalConductivity::from_si(51.0),
        heat_capacity: SpecificHeatCapacity::from_si(470.0),
        density: MassDensity::from_si(7800.0),
        rise,
    };
    let energy = heating_energy(Mass::from_si(8.3), SpecificHeatCapacity::from_si(470.0), rise);
    again(&[
        heat.working(),
        opening.chill_working(celsius(120.0)).unwrap(),
        opening.opens_working(celsius(240.0)).unwrap(),
        sliding_clearance_working(mm(80.0)),
        energy.unwrap().working(),
        mass.unwrap().working(),
        way.working(celsius(180.0)).unwrap(),
        ramp.shortest_working(TemperatureInterval::from_si(50.0)).unwrap(),
        ramp.apart_working(Time::from_si(90.0)).unwrap(),
    ]);
}

#[test]
fn power_bolts_tapers_and_pulls() {
    let speed = AngularVelocity::from_si(155.0);
    let duty = Duty::new(Power::from_si(75e3), speed, Ratio::from_si(1.5)).unwrap();
    let preload = Force::from_si(68_250.0);
    let state = fit().state(mm(0.06), Running::default()).unwrap();
    let pull = pull_force(&state, Range::new(0.12, 0.24)).unwrap();
    let torque = Torque::from_si;
    let jaws = Jaws { count: 3, width: mm(30.0), grip: mm(10.0) };
    let area = Area::from_si(3e-3);
    again(&[
        duty.working(),
        duty.design_working(),
        preload_working(Force::from_si(91_000.0), 0.75).unwrap(),
        tightening_torque(0.2, preload, mm(16.0)).unwrap().working(),
        prevailing_working(torque(94.5), torque(12.0)).unwrap(),
        flange_friction(0.15, 8, preload, mm(220.0)).unwrap().working(),
        fitted_bolts(6, mm(22.0), Pressure::from_si(60e6), mm(260.0)).unwrap().working(),
        Taper::ONE_IN_TEN.draw_up(size(0.1, 0.005)).unwrap().working(),
        Taper::ONE_IN_TEN.axial(state.normal_force, 0.12).unwrap().working(),
        Taper::ONE_IN_TEN.axial(state.normal_force, 0.12).unwrap().draw_up_working(),
        dilation(&state, 1.2).unwrap().working(),
        dilation(&state, 1.2).unwrap().stress_working(),
        pull.working(),
        puller(pull.force.high, 1.5, tables::pullers::Drive::Hydraulic).unwrap().working(),
        ram_working(pull.force.high, area).unwrap(),
        ram_force_working(Pressure::from_si(70e6), area).unwrap(),
        thread_shear(pull.force.high, 4, mm(16.0), mm(20.0)).unwrap().working(),
        jaws.bearing_working(pull.force.high).unwrap(),
        jaws.bending_working(pull.force.high, mm(25.0)).unwrap(),
    ]);
    assert!(stress_area(mm(16.0), mm(2.0), Thread::Metric).is_ok());
}
