//! What heat on and heat off owe to physics, to Lamé, and to experience.

mod cases;

use cases::{celsius, flanged, joint, mm, plain, settled, shaft, steel};
use proptest::prelude::*;
use quantities::{Physical, Power, Pressure, Time};
use thermal::{
    Advice, Air, Body, Effort, Friction, Heat, HotHub, Hub, Metal, Place, Removal, Sample, Search,
    Shaft, Slice, Surroundings, ThermalError, Unknowns, Zone,
};
use uom::si::f64::HeatTransfer;

fn hot(hub: Hub, interference: f64, hub_c: f64) -> HotHub {
    let shaft = shaft(&hub);
    HotHub {
        surfaces: joint(),
        unknowns: settled(),
        ..HotHub::new(hub, shaft, mm(interference), celsius(hub_c), celsius(20.0))
    }
}

fn seconds(asked: &HotHub) -> f64 {
    asked.solve().expect("a sound case").contact.likely.si()
}

/// A flush plain hub presses as Lamé says: p = δ·E·(1 − d²/D²)/(2·d) for one metal and a solid
/// shaft (Shigley, *Mechanical Engineering Design*, 9th ed., eq. 7-40), to a thousandth.
#[test]
fn a_flush_plain_hub_presses_as_lame_says() {
    let flush = HotHub {
        shaft: Shaft { behind: mm(0.0), ..shaft(&plain()) },
        friction: Friction { low: 1.0, high: 1.0 },
        ..hot(plain(), 0.060, 180.0)
    };
    let pressure = 60e-6 * 207e9 / (2.0 * 0.080) * (1.0 - (80.0_f64 / 130.0).powi(2));
    let wanted = pressure * std::f64::consts::PI * 0.080 * 0.090;
    let found = flush.solve().unwrap().after.cold_pull.low.si();
    assert!((found / wanted - 1.0).abs() < 1e-3, "{found} for {wanted}");
}

/// Clearance as it comes home is d·α·ΔT − δ, exactly.
#[test]
fn a_hot_hub_clears_by_its_growth() {
    let grab = hot(flanged(), 0.100, 200.0).solve().unwrap();
    let wanted = 0.100 * 11.52e-6 * 180.0 - 100e-6;
    let found = grab.clearance.si();
    assert!((found - wanted).abs() < 1e-10, "{found} for {wanted}");
}

/// A lump of hub that loses its heat to the air while the shaft stays cold:
/// t = ρ·c·V/(h·A)·ln(ΔT₀/ΔT₁) (Incropera et al., 5.1).
fn alone_in_air_s(hub: &HotHub, loss_w_m2k: f64) -> f64 {
    let (bore, outside, length) =
        (hub.hub.bore.si(), hub.hub.slices[0].outside.si(), hub.hub.length().si());
    let pi = std::f64::consts::PI;
    let volume = pi / 4.0 * (outside.powi(2) - bore.powi(2)) * length;
    let area = pi * outside * length + pi / 2.0 * (outside.powi(2) - bore.powi(2));
    let hot = hub.hub_temperature.si() - hub.shaft_temperature.si();
    let grabs = hub.interference.si() / (bore * 11.52e-6);
    7800.0 * 470.0 * volume / (loss_w_m2k * area) * (hot / grabs).ln()
}

/// Two lumps, hub and the shaft in its bore, through a gap that closes evenly; Euler's steps.
fn two_lumps_s(asked: &HotHub) -> f64 {
    let (bore, outside, length) =
        (asked.hub.bore.si(), asked.hub.slices[0].outside.si(), asked.hub.length().si());
    let pi = std::f64::consts::PI;
    let heat = 7800.0 * 470.0 * pi / 4.0 * length;
    let (hub_j_k, shaft_j_k) = (heat * (outside.powi(2) - bore.powi(2)), heat * bore.powi(2));
    let (mut hub, mut shaft, mut time) =
        (asked.hub_temperature.si(), asked.shaft_temperature.si(), 0.0);
    loop {
        let gap = 0.5 * (bore * 11.52e-6 * (hub - shaft) - asked.interference.si());
        if gap <= 0.0 {
            return time;
        }
        let watts = 0.032 / (gap + 0.032 / 5000.0) * pi * bore * length * (hub - shaft);
        hub -= watts / hub_j_k * 0.01;
        shaft += watts / shaft_j_k * 0.01;
        time += 0.01;
    }
}

/// A hub that cools alone beside a shaft that stays cold promises tens of times too long; two
/// lumps, which forget how slowly metal conducts and how long the shaft is, promise too little.
#[test]
fn shortcuts_mislead() {
    let asked = HotHub { unknowns: Unknowns::none(), ..hot(plain(), 0.060, 180.0) };
    let found = seconds(&asked);
    let alone = alone_in_air_s(&asked, 12.0);
    assert!(alone > 15.0 * found, "alone {alone} s, together {found} s");
    let lumps = two_lumps_s(&asked);
    assert!((0.5..0.85).contains(&(lumps / found)), "two lumps {lumps} s, found {found} s");
}

#[test]
fn the_low_end_is_the_shortest() {
    let grab =
        HotHub { unknowns: Unknowns::default(), ..hot(plain(), 0.060, 180.0) }.solve().unwrap();
    assert!(grab.contact.low < grab.contact.likely && grab.contact.likely < grab.contact.high);
    assert!(grab.check.coarser.unwrap().si() < 0.01, "{:?}", grab.check);
    assert!(grab.check.energy.si() < 1e-6, "{:?}", grab.check);
    assert!(grab.after.grips.unwrap() > grab.contact.likely);
    assert!(grab.after.cool.unwrap() > grab.after.grips.unwrap());
    let working = grab.working();
    assert!(working.formula.ends_with("is gone") && working.terms.len() == 11);
}

/// The finer the mesh and the steps, the less the answer moves.
#[test]
fn more_effort_comes_closer() {
    let with = |effort| seconds(&HotHub { effort, ..hot(flanged(), 0.100, 200.0) });
    let [quick, usual, fine] = [Effort::Quick, Effort::Usual, Effort::Fine].map(with);
    let (first, second) = ((quick - usual).abs(), (usual - fine).abs());
    assert!(second < 0.5 * first && second < 2e-3 * fine, "{quick} {usual} {fine}");
}

/// A hub and shaft turned end for end are the same hub and shaft.
#[test]
fn a_hub_turned_round_grabs_at_the_same_moment() {
    let asked = hot(flanged(), 0.100, 200.0);
    let mut turned = asked.clone();
    turned.hub.slices.reverse();
    turned.shaft =
        Shaft { behind: asked.shaft.ahead, ahead: asked.shaft.behind, ..asked.shaft.clone() };
    let (one, other) = (seconds(&asked), seconds(&turned));
    assert!((one / other - 1.0).abs() < 1e-4, "{one} {other}");
}

/// Twice every length, with four times the clock and half of every film: the same temperatures
/// and, to scale, the same gaps.
#[test]
fn a_hub_of_twice_the_size_takes_four_times_as_long() {
    let small = hot(plain(), 0.060, 180.0);
    let mut large = small.clone();
    large.hub = Hub::plain(mm(160.0), mm(260.0), mm(180.0), steel());
    large.shaft = shaft(&large.hub);
    large.interference = mm(0.120);
    let half = |air: &mut Air| {
        air.convection /= 2.0;
        air.emissivity = 0.0;
    };
    large.surfaces.touching = small.surfaces.touching / 2.0;
    large.surfaces.emissivity = 0.0;
    half(&mut large.surroundings.hub);
    half(&mut large.surroundings.shaft);
    let mut small = small;
    small.surfaces.emissivity = 0.0;
    small.surroundings.hub.emissivity = 0.0;
    small.surroundings.shaft.emissivity = 0.0;
    let (one, four) = (seconds(&small), seconds(&large));
    assert!((four / one / 4.0 - 1.0).abs() < 2e-3, "{one} s and {four} s");
}

#[test]
fn a_hub_that_is_carried_far_has_less_time() {
    let carried = |s: f64| HotHub { carried: Time::from_si(s), ..hot(plain(), 0.060, 180.0) };
    assert!(seconds(&carried(0.0)) > seconds(&carried(60.0)));
    assert!(seconds(&carried(60.0)) > seconds(&carried(300.0)));
    let too_far = carried(3600.0).solve();
    assert!(matches!(too_far, Err(ThermalError::NoClearance(_))), "{too_far:?}");
}

fn torch(interference: f64, watts: [f64; 2], until: f64) -> Removal {
    let zones =
        [Zone::outside("body", mm(0.0), mm(90.0)), Zone::outside("flange", mm(90.0), mm(120.0))];
    let heat = |(zone, watts)| Heat::until(zone, Power::from_si(watts), Time::from_si(until));
    Removal {
        clearance: mm(0.020),
        until: Time::from_si(until),
        ..Removal::new(
            flanged(),
            shaft(&flanged()),
            mm(interference),
            celsius(20.0),
            zones.into_iter().zip(watts).map(heat).collect(),
        )
    }
}

/// Too little never opens it, however long; the body alone leaves the flange's end gripping.
#[test]
fn heat_must_be_enough_and_in_the_right_place() {
    let little = torch(0.080, [1_500.0, 1_500.0], 3_600.0).solve().unwrap();
    assert!(little.opens.low.is_none(), "{:?}", little.opens);
    assert!(little.least_pull.1.high.si() > 0.25 * little.cold_pull.high.si());
    let body = torch(0.080, [16e3, 0.0], 600.0).solve().unwrap();
    assert!(
        body.opens.low.is_none() && body.least_pull.1.high.si() > 0.2 * body.cold_pull.high.si()
    );
    let both = torch(0.080, [16e3, 16e3], 600.0).solve().unwrap();
    let opens = both.opens;
    assert!(
        opens.low.unwrap() < opens.likely.unwrap() && opens.likely.unwrap() < opens.high.unwrap()
    );
}

/// Each slice as a ring of its own, as warm as the middle of its wall: the shortcut knows nothing of
/// the body that helps the flange along, and is a third out with the time.
#[test]
fn rings_by_themselves_mislead() {
    let watched = |radius: f64, along: f64, body| Place {
        name: format!("{radius} {along}"),
        body,
        radius: mm(radius),
        along: mm(along),
        limit: None,
    };
    let places = vec![
        watched(62.5, 45.0, Body::Hub),
        watched(95.0, 105.0, Body::Hub),
        watched(33.0, 45.0, Body::Shaft),
        watched(33.0, 105.0, Body::Shaft),
    ];
    let asked = Removal { places, unknowns: settled(), ..torch(0.050, [8e3, 8e3], 100.0) };
    let opening = asked.solve().unwrap();
    let open = |sample: &Sample, hub: usize, shaft: usize| {
        let warmer = sample.places[hub].si() - sample.places[shaft].si();
        0.100 * 11.52e-6 * warmer - 50e-6 >= 20e-6
    };
    let rings = opening.curve.iter().find(|sample| open(sample, 0, 2) && open(sample, 1, 3));
    let (rings, found) = (rings.unwrap().time.si(), opening.opens.likely.unwrap().si());
    assert!(rings > 1.25 * found, "rings {rings} s, found {found} s");
}

#[test]
fn heat_that_stops_lets_the_shaft_catch_up() {
    let opening = torch(0.050, [8e3, 8e3], 90.0);
    let opening = Removal { until: Time::from_si(400.0), ..opening }.solve().unwrap();
    let (window, stopped) = (opening.window.unwrap(), opening.if_stopped.unwrap());
    assert_eq!(window.opens, stopped.opens);
    assert!(stopped.shuts.unwrap() < window.shuts.unwrap());
    assert!(stopped.lasts().unwrap().si() > 0.5 && window.shuts.unwrap().si() > 90.0);
    assert!(opening.check.energy.si() < 1e-6);
    let hottest = opening.hottest;
    assert!(hottest.radius.si() > 0.07 && hottest.peak.time.si() <= 91.0, "{hottest:?}");
}

/// What lies along the shaft is hottest after the hub is.
#[test]
fn a_seal_behind_the_hub_warms_up_late() {
    let seal = |limit| Place {
        name: "seal".into(),
        body: Body::Shaft,
        radius: mm(50.0),
        along: mm(-120.0),
        limit: Some(celsius(limit)),
    };
    let asked = Removal { places: vec![seal(45.0)], ..torch(0.050, [8e3, 8e3], 90.0) };
    let opening = Removal { until: Time::from_si(1_800.0), ..asked }.solve().unwrap();
    let peak = opening.places[0];
    assert!(peak.time > opening.hottest.peak.time, "{peak:?}");
    assert!(peak.temperature < opening.hottest.peak.temperature);
    assert!(peak.over_limit.unwrap() < peak.time);
}

/// Ice on the shaft behind the hub keeps it back.
#[test]
fn a_cooled_shaft_helps() {
    let warm = torch(0.050, [6e3, 6e3], 300.0);
    let mut iced = warm.clone();
    let film = HeatTransfer::new::<uom::si::heat_transfer::watt_per_square_meter_kelvin>(1500.0);
    iced.surroundings = Surroundings {
        shaft: Air { temperature: celsius(0.0), convection: film, emissivity: 0.0 },
        ..warm.surroundings
    };
    let opens = |asked: &Removal| asked.solve().unwrap().opens.likely.unwrap().si();
    assert!(opens(&iced) < opens(&warm));
}

#[test]
fn advice_keeps_the_limits_or_says_that_nothing_does() {
    let asked = Removal {
        limit: Some(celsius(260.0)),
        until: Time::from_si(1_200.0),
        ..torch(0.050, [0.0, 0.0], 1_200.0)
    };
    let zones: Vec<Zone> = asked.heats.iter().map(|heat| heat.zone.clone()).collect();
    let search = |watts| Search {
        zones: zones.clone(),
        greatest: Power::from_si(watts),
        window: Time::from_si(10.0),
    };
    match asked.advise(&search(30e3)).unwrap() {
        Advice::Heat { trial, opening } => {
            assert!(opening.hottest.peak.temperature < celsius(260.0));
            assert!(
                opening.opens.high.is_some()
                    && opening.window.unwrap().lasts().unwrap().si() > 10.0
            );
            assert!(trial.shares[1] > 0.2, "the flange needs its share: {trial:?}");
        }
        Advice::Nothing { nearest } => panic!("{nearest:?}"),
    }
    assert!(matches!(asked.advise(&search(3e3)).unwrap(), Advice::Nothing { .. }));
    let none = Search { zones: vec![], ..search(3e3) };
    assert_eq!(asked.advise(&none).unwrap_err(), ThermalError::NothingToSearch);
}

#[test]
fn what_is_not_modelled_is_refused() {
    let asked = || hot(plain(), 0.060, 180.0);
    let loose = HotHub { interference: mm(-0.01), ..asked() };
    assert!(matches!(loose.solve(), Err(ThermalError::Loose(_))));
    let cold = HotHub { hub_temperature: celsius(60.0), ..asked() };
    assert!(matches!(cold.solve(), Err(ThermalError::NoClearance(_))));
    let limited = Metal { heating_limit: Some(celsius(150.0)), ..steel() };
    let over = HotHub { hub: Hub { metal: limited, ..plain() }, ..asked() };
    assert!(matches!(over.solve(), Err(ThermalError::TooHot { .. })));
    let melting = HotHub { hub_temperature: celsius(700.0), ..asked() };
    assert!(matches!(melting.solve(), Err(ThermalError::TooHot { .. })));
    let huge = HotHub { hub: Hub::plain(mm(80.0), mm(1_700.0), mm(90.0), steel()), ..asked() };
    assert!(matches!(huge.solve(), Err(ThermalError::Proportions { .. })));
    let soft = Metal { yield_strength: Some(Pressure::from_si(60e6)), ..steel() };
    let yields = HotHub { hub: Hub { metal: soft, ..plain() }, ..asked() };
    assert!(matches!(yields.solve(), Err(ThermalError::Yields { .. })));
    let nowhere = Place {
        name: "seal".into(),
        body: Body::Shaft,
        radius: mm(40.0),
        along: mm(-900.0),
        limit: None,
    };
    let lost = HotHub { places: vec![nowhere], ..asked() };
    assert!(matches!(lost.solve(), Err(ThermalError::NoMetal { .. })));
    let mut bare = torch(0.05, [1.0, 1.0], 60.0);
    bare.heats[0].zone = Zone::outside("tail", mm(300.0), mm(400.0));
    assert!(matches!(bare.solve(), Err(ThermalError::NoSurface { .. })));
}

/// A run is cut off where the metal is no longer what it was, not carried on.
#[test]
fn a_run_ends_where_the_model_does() {
    let opening = torch(0.080, [20e3, 20e3], 600.0).solve().unwrap();
    let ended = opening.ended.unwrap();
    assert!(ended.si() < 100.0 && opening.curve.last().unwrap().time == ended);
    assert!(opening.opens.likely.unwrap() < ended);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    /// Whatever is entered, there is an answer or a refusal; and an answer is a time.
    #[test]
    fn any_entry_is_answered(
        bore in prop_oneof![Just(f64::NAN), -10.0..400.0_f64],
        wall in prop_oneof![Just(0.0), -5.0..120.0_f64],
        length in prop_oneof![Just(f64::INFINITY), 0.0..300.0_f64],
        flange in 0.0..60.0_f64,
        interference in prop_oneof![Just(f64::NAN), -0.1..0.5_f64],
        hub_c in -300.0..900.0_f64,
        shaft_c in -80.0..80.0_f64,
    ) {
        let slice = |length, outside| Slice { length: mm(length), outside: mm(outside) };
        let slices = vec![slice(length, bore + 2.0 * wall), slice(flange, bore + 3.0 * wall)];
        let hub = Hub { bore: mm(bore), slices, metal: steel() };
        let shaft = Shaft::solid(mm(bore), steel());
        let asked = HotHub {
            effort: Effort::Quick,
            ..HotHub::new(hub, shaft, mm(interference), celsius(hub_c), celsius(shaft_c))
        };
        if let Ok(grab) = asked.solve() {
            prop_assert!(grab.contact.low.si() > 0.0 && grab.contact.high.si().is_finite());
            prop_assert!(grab.contact.low <= grab.contact.likely);
        }
    }

    /// More interference, sooner; hotter, later.
    #[test]
    fn more_interference_grabs_sooner(interference in 0.02..0.10_f64, more in 0.005..0.02_f64) {
        let quick = |interference, hub_c| {
            seconds(&HotHub { effort: Effort::Quick, ..hot(plain(), interference, hub_c) })
        };
        let usual = quick(interference, 200.0);
        prop_assert!(quick(interference + more, 200.0) < usual);
        prop_assert!(quick(interference, 210.0) > usual);
    }
}
