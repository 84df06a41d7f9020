//! Against a program of its own in scikit-fem 12.0.2 and scipy 1.17.1 (`peers/thermal_peer.py`):
//! other elements, other time steps, the joint integrated over its facets. Its figures stand
//! below as it printed them; its own mesh and step carry errors of a few tenths of a percent.

mod cases;

use cases::{celsius, flanged, joint, metal, mm, plain, settled, shaft};
use quantities::{Force, Physical, Power, Time};
use thermal::{Effort, Friction, Heat, HotHub, Hub, Opening, Removal, Sample, Shaft, Zone};
use uom::si::length::meter;

fn close(what: &str, found: f64, wanted: f64, share: f64) {
    assert!((found / wanted - 1.0).abs() <= share, "{what}: {found} for {wanted}");
}

/// Hot enough to slide on; only what the joint carries once cold is looked at.
fn cold_pull(hub: Hub, shaft: Shaft, interference: f64) -> Force {
    let hot = HotHub {
        friction: Friction { low: 0.15, high: 0.15 },
        unknowns: settled(),
        ..HotHub::new(hub, shaft, mm(interference), celsius(250.0), celsius(20.0))
    };
    hot.solve().expect("a sound case").after.cold_pull.low
}

#[test]
fn a_press_fit_carries_the_torque_of_scikit_fem() {
    let iron = metal([36.0, 490.0, 7100.0, 11.0e-6, 170e9, 0.29]);
    let hollow = Shaft { hollow: mm(40.0), ahead: mm(50.0), ..shaft(&flanged()) };
    let printed = [
        ("plain", plain(), shaft(&plain()), 0.060, 6_600.197_684_424_863),
        ("flanged", flanged(), shaft(&flanged()), 0.080, 15_017.522_803_508_53),
        ("iron", Hub { metal: iron, ..flanged() }, hollow, 0.080, 11_952.491_568_311_285),
    ];
    for (what, hub, shaft, interference, torque_nm) in printed {
        let radius_m = 0.5 * hub.bore.get::<meter>();
        let found = cold_pull(hub, shaft, interference).si() * radius_m;
        close(what, found, torque_nm, 0.001);
    }
}

fn at(curve: &[Sample], seconds: f64, figure: impl Fn(&Sample) -> f64) -> f64 {
    let k = curve.partition_point(|sample| sample.time.si() < seconds).max(1);
    let (a, b) = (&curve[k - 1], &curve[k]);
    let share = (seconds - a.time.si()) / (b.time.si() - a.time.si());
    figure(a) + share * (figure(b) - figure(a))
}

fn grabs(hub: &Hub, interference: f64, hot: f64, contact_s: f64, printed: [[f64; 4]; 2]) {
    let grab = HotHub {
        surfaces: joint(),
        unknowns: settled(),
        ..HotHub::new(hub.clone(), shaft(hub), mm(interference), celsius(hot), celsius(20.0))
    };
    let quick = HotHub { effort: Effort::Quick, ..grab.clone() };
    let quick = quick.in_hand().expect("a sound case");
    close("contact, quickly", quick.contact.likely.si(), contact_s, 0.005);
    let seconds = grab.in_hand().expect("a sound case").contact;
    let grab = grab.solve().expect("a sound case");
    assert_eq!(seconds, grab.contact, "the seconds alone are those of the whole");
    close("contact", grab.contact.likely.si(), contact_s, 0.003);
    for [seconds, bore, seat, clearance] in printed {
        let found = at(&grab.curve, seconds, |sample| sample.bore.si());
        assert!((found - bore).abs() < 0.3, "bore at {seconds} s: {found} for {bore}");
        let found = at(&grab.curve, seconds, |sample| sample.seat.si());
        assert!((found - seat).abs() < 0.3, "seat at {seconds} s: {found} for {seat}");
        let found = at(&grab.curve, seconds, |sample| sample.least.si());
        assert!((found - clearance).abs() < 0.5e-6, "clearance at {seconds} s: {found} m");
    }
}

#[test]
fn a_hot_hub_grabs_when_scikit_fem_says() {
    #[rustfmt::skip]
    grabs(&plain(), 0.060, 180.0, 37.547_276_687_187_75, [
        // s   bore K          seat K          least clearance on the diameter, m
        [ 5.0, 434.352_708_286, 315.122_216_147, 7.120_968_763e-05],
        [15.0, 422.976_179_473, 331.996_433_283, 4.999_773_281e-05],
    ]);
    #[rustfmt::skip]
    grabs(&flanged(), 0.100, 200.0, 42.172_647_785_981_92, [
        [ 5.0, 454.561_797_578, 314.216_376_962, 8.750_715_057e-05],
        [20.0, 438.201_551_449, 336.523_412_164, 5.425_417_041e-05],
    ]);
}

fn heated(interference: f64, watts: [f64; 2], stop_s: f64, until_s: f64) -> Opening {
    let zones =
        [Zone::outside("body", mm(0.0), mm(90.0)), Zone::outside("flange", mm(90.0), mm(120.0))];
    let heat = |(zone, watts)| Heat::until(zone, Power::from_si(watts), Time::from_si(stop_s));
    let heats = zones.into_iter().zip(watts).map(heat).collect();
    Removal {
        surfaces: joint(),
        unknowns: settled(),
        clearance: mm(0.020),
        friction: Friction { low: 1.0, high: 1.0 },
        until: Time::from_si(until_s),
        ..Removal::new(flanged(), shaft(&flanged()), mm(interference), celsius(20.0), heats)
    }
    .solve()
    .expect("a sound case")
}

fn pulls(opening: &Opening, printed: &[[f64; 3]]) {
    for [seconds, normal_n, hottest_k] in printed {
        let found = at(&opening.curve, *seconds, |sample| sample.pull.low.si());
        let off = (found - normal_n).abs() / opening.cold_pull.low.si();
        assert!(off < 0.003, "force at {seconds} s: {found} for {normal_n}");
        let found = at(&opening.curve, *seconds, |sample| sample.hub.si());
        assert!((found - hottest_k).abs() < 0.5, "hottest at {seconds} s: {found}");
    }
}

#[test]
fn a_heated_hub_opens_and_shuts_when_scikit_fem_says() {
    let opening = heated(0.050, [8e3, 8e3], 80.0, 120.0);
    let window = opening.window.unwrap();
    close("opens", window.opens.si(), 57.817_997_043_456_096, 0.005);
    close("shuts", window.shuts.unwrap().si(), 108.388_845_177_227_57, 0.005);
    #[rustfmt::skip]
    pulls(&opening, &[
        // s   ∫p dA, N       hottest K
        [10.0, 701_642.394_5, 375.158_483_619],
        [20.0, 316_353.668_5, 410.818_963_502],
        [40.0,   7_666.810_5, 463.278_823_048],
    ]);
}

#[test]
fn the_body_alone_lets_go_as_little_as_scikit_fem_says() {
    let opening = heated(0.080, [8e3, 0.0], 60.0, 60.0);
    assert!(opening.window.is_none());
    #[rustfmt::skip]
    pulls(&opening, &[
        [20.0, 1_330_191.880_9, 370.397_837_967],
        [40.0, 1_040_843.115_4, 407.654_632_284],
        [60.0,   918_818.784_0, 439.442_644_753],
    ]);
}
