//! Published press and shrink fits, and what physics owes us.

use proptest::prelude::*;
use quantities::{
    AngularVelocity, MassDensity, TemperatureCoefficient, TemperatureInterval, Torque,
};
use uom::si::angular_velocity::revolution_per_minute;
use uom::si::length::{inch, micrometer, millimeter};
use uom::si::pressure::{gigapascal, megapascal, psi};
use uom::si::torque::{newton_meter, pound_force_inch};

use super::flattening::{Interference, flattening_din_7190, flattening_from_ra};
use super::hub::{Metal, PressFit, Running};
use super::release::LetsGo;
use super::*;
use crate::{Estimate, Range, Slice};

fn mm(mm: f64) -> Length {
    Length::new::<millimeter>(mm)
}

fn elastic(mpa: f64, poisson: f64) -> Elastic {
    Elastic { young: Pressure::new::<megapascal>(mpa), poisson }
}

fn joint(bore: f64, joint: f64, outside: f64, hub: Elastic, shaft: Elastic) -> Joint {
    let sizes = Sizes { shaft_bore: mm(bore), joint: mm(joint), hub_outside: mm(outside) };
    Joint::new(sizes, hub, shaft).unwrap()
}

fn close(found: f64, wanted: f64, half_digit: f64, what: &str) {
    assert!((found - wanted).abs() <= half_digit, "{what}: {found} for {wanted}");
}

/// Solid steel shafts in steel hubs, inch and metric, radial or diametral as printed:
/// Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, 8th ed., solutions 3-64, 3-65,
/// 3-68, 7-24 (30 Mpsi or 207 GPa, ν 0.292); T. H. Brown, *Marks' Calculations for Machine
/// Design*, Example 6 (prints 2100 psi, having rounded a square to 0.44).
#[test]
fn one_metal_and_a_solid_shaft() {
    let steel = |young| Elastic { young, poisson: 0.292 };
    let inch_steel = steel(Pressure::new::<psi>(30e6));
    #[rustfmt::skip]
    let printed = [
        // interference on the diameter, shaft, hub (in) | pressure (psi), half the last digit
        (0.0023,     1.5,  3.0,   17_250.0,   5.0, "3-65"),
        (0.002,      1.0,  2.0,   22_500.0,  50.0, "3-68"),
        (0.0023,     1.5,  2.5,   14_720.0,   5.0, "7-24, most"),
        (0.0007,     1.5,  2.5,    4_480.0,   5.0, "7-24, least"),
        (0.001,      4.0,  6.0,    2_100.0,  50.0, "Marks 6"),
    ];
    for (interference, shaft, outside, pressure, digit, name) in printed {
        let inches = Length::new::<inch>;
        let sizes =
            Sizes { shaft_bore: inches(0.0), joint: inches(shaft), hub_outside: inches(outside) };
        let joint = Joint::new(sizes, inch_steel, inch_steel).unwrap();
        let contact = contact_pressure(&joint, inches(interference)).unwrap();
        close(contact.pressure.get::<psi>(), pressure, digit, name);
    }
    let metric = joint(
        0.0,
        40.0,
        80.0,
        steel(Pressure::new::<gigapascal>(207.0)),
        steel(Pressure::new::<gigapascal>(207.0)),
    );
    let pressure = |i| contact_pressure(&metric, mm(i)).unwrap().pressure.get::<megapascal>();
    close(pressure(0.059), 114.5, 0.05, "3-64, most");
    close(pressure(0.018), 34.9, 0.05, "3-64, least");
}

/// Shigley 8th ed., 3-68 (hub hoop 37 500 psi) and 7-24 (shaft −14 720 psi, 3.9 against 57 kpsi).
#[test]
fn stresses_of_one_metal() {
    let steel = Elastic { young: Pressure::new::<psi>(30e6), poisson: 0.292 };
    let inches = Length::new::<inch>;
    let at = |shaft, outside, interference| {
        let sizes =
            Sizes { shaft_bore: inches(0.0), joint: inches(shaft), hub_outside: inches(outside) };
        contact_pressure(&Joint::new(sizes, steel, steel).unwrap(), inches(interference)).unwrap()
    };
    close(at(1.0, 2.0, 0.002).hub_bore().hoop.get::<psi>(), 37_500.0, 50.0, "3-68");
    let shaft = at(1.5, 2.5, 0.0023).shaft_surface();
    close(shaft.hoop.get::<psi>(), -14_720.0, 5.0, "7-24");
    close(shaft.safety(Pressure::new::<psi>(57_000.0)), 3.9, 0.05, "7-24");
}

/// Norton, *Machine Design*, 4th ed., Example 10-5 (cast-iron hub on steel): 15 265 psi.
/// Mott, *Machine Elements in Mechanical Design*, Example 13-2 (bronze bushing in steel, from
/// memory): 3518, 10 846 and −16 025 psi.
#[test]
fn unlike_metals_and_hollow_shafts_in_inches() {
    let metal = |psi_: f64, poisson| Elastic { young: Pressure::new::<psi>(psi_), poisson };
    let inches = Length::new::<inch>;
    let at = |bore, shaft, outside, hub, inner, interference| {
        let sizes =
            Sizes { shaft_bore: inches(bore), joint: inches(shaft), hub_outside: inches(outside) };
        contact_pressure(&Joint::new(sizes, hub, inner).unwrap(), inches(interference)).unwrap()
    };
    let norton = at(0.0, 0.781, 3.0, metal(14e6, 0.28), metal(30e6, 0.28), 0.0015);
    close(norton.pressure.get::<psi>(), 15_265.0, 0.5, "Norton 10-5");
    let mott = at(2.0, 2.5, 3.5, metal(30e6, 0.27), metal(17e6, 0.27), 0.0032);
    close(mott.pressure.get::<psi>(), 3518.0, 0.5, "Mott 13-2");
    close(mott.hub_bore().hoop.get::<psi>(), 10_846.0, 0.5, "Mott 13-2, sleeve");
    close(mott.shaft_surface().hoop.get::<psi>(), -16_025.0, 0.5, "Mott 13-2, bushing");
    let sum = mott.hub_growth() + mott.shaft_shrink();
    close(sum.get::<inch>(), 0.0032, 1e-12, "growth and shrink make up the interference");
    close(mott.hub_growth().get::<inch>(), 0.000_983, 5e-7, "Mott 13-2, growth");
}

/// Textbook statements solved by hand with the Lamé formulas, six digits: a steel sleeve on a brass
/// tube; an aluminium gear; a jacket set for 100 MPa (Bhandari, *Design of Machine Elements*,
/// Example 22.6: bore 39.968 289 mm before).
#[test]
fn unlike_metals_and_hollow_shafts_in_millimetres() {
    let brass = joint(50.8, 101.6, 127.0, elastic(206_700.0, 0.29), elastic(103_400.0, 0.32));
    let contact = contact_pressure(&brass, mm(0.051)).unwrap();
    let mpa = |stress: Pressure| stress.get::<megapascal>();
    close(mpa(contact.pressure), 13.7653, 5e-5, "brass tube");
    close(mpa(contact.hub_bore().hoop), 62.7084, 5e-5, "brass tube, sleeve");
    close(mpa(contact.shaft_surface().hoop), -22.9421, 5e-5, "brass tube, surface");
    close(mpa(contact.shaft_inside().hoop), -36.7074, 5e-5, "brass tube, inside");
    close(mpa(contact.shaft_inside().radial), 0.0, 1e-9, "brass tube, inside");

    let aluminium = elastic(69_000.0, 0.33);
    let gear = contact_pressure(&joint(0.0, 30.0, 55.0, aluminium, aluminium), mm(0.1)).unwrap();
    close(mpa(gear.pressure), 80.7851, 5e-5, "gear");
    close(mpa(gear.hub_bore().hoop), 149.215, 5e-4, "gear");
    close(mpa(gear.hub_bore().von_mises), 202.103, 5e-4, "gear");

    // The jacket alone: p = 100/2.6 MPa opens its bore by 40 − 39.968 289 in the end.
    let steel = elastic(207_000.0, 0.3);
    let jacket = joint(20.0, 40.0, 60.0, steel, steel);
    let contact = contact_pressure(&jacket, mm(40.0 - 39.968_289)).unwrap();
    close(mpa(contact.pressure), 100.0 / 2.6, 1e-3, "jacket");
    close(mpa(contact.hub_bore().hoop), 100.0, 3e-3, "jacket");
}

/// *Machinery's Handbook*, 31st ed., Tables 1 to 3, pp. 644–645: C is how the shaft gives over how
/// the hub gives, with ν 1/3 (iron hub 1/4). The solid steel column is right to its last digit; the
/// rest was rounded on the way (2.0 with 3.0 is 0.4583 exactly, printed 0.459), so one in the last
/// digit is allowed there.
#[test]
fn how_the_parts_give_matches_the_handbook_factors() {
    let ratio = |hollow: f64, outside: f64, hub_poisson: f64| {
        let bore = if hollow.is_finite() { 60.0 / hollow } else { 0.0 };
        let (hub, shaft) = (elastic(207_000.0, hub_poisson), elastic(207_000.0, 1.0 / 3.0));
        let contact =
            contact_pressure(&joint(bore, 60.0, 60.0 * outside, hub, shaft), mm(0.05)).unwrap();
        contact.shaft_give / contact.hub_give
    };
    #[rustfmt::skip]
    let printed = [
        // D/d | solid: steel, iron | hollow, d/b 2.0, 2.5, 3.0, 3.5: steel | iron
        (1.5, [0.227, 0.234], [0.455, 0.357, 0.313, 0.288], [0.468, 0.368, 0.322, 0.296]),
        (1.8, [0.299, 0.311], [0.599, 0.471, 0.412, 0.379], [0.621, 0.488, 0.427, 0.393]),
        (2.0, [0.333, 0.348], [0.667, 0.524, 0.459, 0.422], [0.696, 0.547, 0.479, 0.441]),
        (2.4, [0.380, 0.399], [0.760, 0.597, 0.523, 0.481], [0.798, 0.628, 0.549, 0.506]),
        (2.6, [0.397, 0.417], [0.793, 0.624, 0.546, 0.502], [0.834, 0.656, 0.574, 0.528]),
        (3.0, [0.421, 0.444], [0.842, 0.662, 0.580, 0.533], [0.888, 0.698, 0.611, 0.562]),
        (3.2, [0.430, 0.455], [0.860, 0.676, 0.591, 0.544], [0.909, 0.715, 0.625, 0.576]),
        (3.6, [0.444, 0.471], [0.888, 0.698, 0.611, 0.562], [0.941, 0.740, 0.647, 0.596]),
        (3.8, [0.450, 0.477], [0.900, 0.707, 0.619, 0.570], [0.953, 0.749, 0.656, 0.603]),
    ];
    for (outside, [steel, iron], steel_hollow, iron_hollow) in printed {
        close(ratio(f64::INFINITY, outside, 1.0 / 3.0), steel, 0.0005, "steel hub");
        close(ratio(f64::INFINITY, outside, 0.25), iron, 0.001, "iron hub");
        for (place, bore) in [2.0, 2.5, 3.0, 3.5].into_iter().enumerate() {
            let (steel, iron) = (steel_hollow[place], iron_hollow[place]);
            // Two cells are a whole digit low (steel 2.2, not held here, and iron 1.8 with 2.0).
            let slack = if (outside, bore) == (1.8, 2.0) { 0.0013 } else { 0.0011 };
            close(ratio(bore, outside, 1.0 / 3.0), steel, slack, "hollow shaft");
            close(ratio(bore, outside, 0.25), iron, slack, "hollow shaft, iron hub");
        }
    }
}

/// *Machinery's Handbook*, 31st ed., p. 645, Example 1: 375 mm hub on 250 mm, 170 MPa. The printed
/// 0.026 mm per mm is mm per inch (its metric formula carries a stray 25.4).
#[test]
fn the_handbook_allowance_is_per_inch() {
    let steel = elastic(206_843.0, 1.0 / 3.0);
    let joint = joint(0.0, 250.0, 375.0, steel, steel);
    let contact = contact_pressure(&joint, mm(250.0 * 0.026 / 25.4)).unwrap();
    let tension = contact.pressure.get::<megapascal>() * contact.hub_give;
    close(tension / 170.0, 1.0, 0.0005 / 0.026, "tension, as E times hoop strain");
}

fn metal(elastic: Elastic) -> Metal {
    Metal {
        elastic,
        density: MassDensity::from_si(7850.0),
        expansion: TemperatureCoefficient::from_si(11.5e-6),
    }
}

fn fit(bore: f64, diameter: f64, slices: &[(f64, f64)], hub: Elastic, shaft: Elastic) -> PressFit {
    let slice =
        |&(length, outside): &(f64, f64)| Slice { length: mm(length), outside: mm(outside) };
    let slices: Vec<Slice> = slices.iter().map(slice).collect();
    PressFit::new(mm(bore), mm(diameter), &slices, metal(hub), metal(shaft)).unwrap()
}

/// Whole chains by the elastic procedure of DIN 7190-1 in plane stress, worked apart from this
/// program to six digits: s6 and r6 in H7 with Rz 6.3 and 4.0 µm.
#[test]
fn chains_from_tolerance_to_torque() {
    #[rustfmt::skip]
    let chains = [
        // bore, d, D, L | i most, i least | Eh, νh, Es, νs, μ | p most, p least, hoop, shaft, T, F
        ([0.0, 100.0, 160.0, 120.0], [0.093, 0.036], [210e3, 0.3, 210e3, 0.3, 0.14],
         [54.2332, 17.7621, 123.763, -54.2332, 4687.3, 93_746.0]),
        ([0.0, 80.0, 130.0, 90.0], [0.062, 0.013], [170e3, 0.28, 210e3, 0.3, 0.12],
         [37.2637, 3.299_39, 82.69, -37.2637, 358.227, 8955.66]),
        ([60.0, 150.0, 240.0, 160.0], [0.125, 0.06], [207e3, 0.292, 207e3, 0.292, 0.14],
         [43.9882, 19.5001, 100.383, -60.7456, 15_437.8, 205_838.0]),
    ];
    let flattening =
        flattening_din_7190(Length::new::<micrometer>(6.3), Length::new::<micrometer>(4.0));
    close(flattening.get::<millimeter>(), 0.008_24, 5e-6, "flattening");
    for ([bore, d, outside, length], [most, least], [eh, vh, es, vs, friction], wanted) in chains {
        let joint = joint(bore, d, outside, elastic(eh, vh), elastic(es, vs));
        let at = |i| contact_pressure(&joint, mm(i) - flattening).unwrap();
        let (high, low) = (at(most), at(least));
        let fit = fit(bore, d, &[(length, outside)], elastic(eh, vh), elastic(es, vs));
        let state = fit.state(mm(least) - flattening, Running::default()).unwrap();
        let found = [
            high.pressure.get::<megapascal>(),
            low.pressure.get::<megapascal>(),
            high.hub_bore().hoop.get::<megapascal>(),
            high.shaft_surface().hoop.get::<megapascal>(),
            state.torque(friction).get::<newton_meter>(),
            state.axial(friction).si(),
        ];
        for (found, wanted) in found.into_iter().zip(wanted) {
            let digit = 10.0_f64.powf(f64::abs(wanted).log10().floor() - 5.0) / 2.0 * 1.01;
            close(found, wanted, digit, "chain");
        }
    }
}

/// Bloch, *Improving Machinery Reliability*, pp. 217–218: 12 000 psi at d/D 0.68 on 4 in takes
/// 0.0015 in/in; with L·d² = 56 in³ and friction 0.12 the hub holds about 125 664 lbf·in (the book
/// rounds on the way; its printed torque implies 0.119).
#[test]
fn the_four_inch_hub_of_bloch() {
    let steel = Elastic { young: Pressure::new::<psi>(30e6), poisson: 0.3 };
    let inches = Length::new::<inch>;
    let slice = Slice { length: inches(3.5), outside: inches(4.0 / 0.68) };
    let fit =
        PressFit::new(inches(0.0), inches(4.0), &[slice], metal(steel), metal(steel)).unwrap();
    let state = fit.state(inches(0.0015 * 4.0), Running::default()).unwrap();
    close(state.mean_pressure().get::<psi>(), 12_000.0, 500.0, "pressure from 0.0015 in/in");
    let exact = fit.state(inches(0.001_488_1 * 4.0), Running::default()).unwrap();
    close(exact.mean_pressure().get::<psi>(), 12_000.0, 0.5, "pressure from 0.0014881 in/in");
    close(exact.torque(0.119).get::<pound_force_inch>(), 125_664.0, 0.5e3, "torque");
}

/// Statements solved by hand: 60 mm in 100 mm, 30 µm, 210 GPa, 10 mm long, friction 0.3 (33.6 MPa,
/// 19 000.4 N); Norton's hub with friction 0.15 holds 3290.9 lbf·in.
#[test]
fn force_and_torque_by_hand() {
    let steel = elastic(210_000.0, 0.292);
    let state = fit(0.0, 60.0, &[(10.0, 100.0)], steel, steel)
        .state(mm(0.030), Running::default())
        .unwrap();
    close(state.mean_pressure().get::<megapascal>(), 33.6, 0.05, "press fit");
    close(state.axial(0.3).si(), 19_000.4, 0.05, "press fit");
    let metal_of =
        |young: f64| metal(Elastic { young: Pressure::new::<psi>(young), poisson: 0.28 });
    let inches = Length::new::<inch>;
    let slice = Slice { length: inches(1.5), outside: inches(3.0) };
    let hub = PressFit::new(inches(0.0), inches(0.781), &[slice], metal_of(14e6), metal_of(30e6));
    let state = hub.unwrap().state(inches(0.0015), Running::default()).unwrap();
    close(state.torque(0.15).get::<pound_force_inch>(), 3290.9, 0.05, "Norton");
}

/// A thin ring running free carries ρ·v² (Timoshenko, *Strength of Materials*, rotating ring): here
/// 7850 kg/m³ at 100 m/s, 78.5 MPa; the rotating disk with a small hole at its bore twice the solid
/// one's centre, (3 + ν)/4·ρ·ω²·b².
#[test]
fn turning_stress_has_the_known_limits() {
    let steel = elastic(207_000.0, 0.292);
    let bore_stress = |d: f64, outside: f64, speed: f64| {
        let fit = fit(0.0, d, &[(10.0, outside)], steel, steel);
        let speed = AngularVelocity::from_si(speed);
        // So little interference that the ring has long lifted off.
        let state = fit.state(mm(1e-9), Running { speed, ..Running::default() }).unwrap();
        assert!(state.slices[0].left < Length::default());
        state.slices[0].hub_bore.hoop.get::<megapascal>()
    };
    close(bore_stress(400.0, 400.001, 500.0), 78.5, 0.05, "thin ring");
    let small_hole = (3.0 + 0.292) / 4.0 * 7850.0 * 500.0_f64.powi(2) * 0.2_f64.powi(2) / 1e6;
    close(bore_stress(0.01, 400.0, 500.0), small_hole, 0.05, "small hole");
}

#[test]
fn roughness_rules_are_kept_apart() {
    let um = Length::new::<micrometer>;
    let by_ra = flattening_from_ra(um(1.6), um(0.8));
    close(by_ra.get::<micrometer>(), 2.88, 1e-9, "1.2·(Ra + Ra)");
    let shaft = Estimate::new(mm(80.062), mm(0.003));
    let bore = Estimate::new(mm(80.000), mm(0.004));
    let interference = Interference::new(shaft, bore, um(8.24)).unwrap();
    close(interference.measured.value.get::<micrometer>(), 62.0, 1e-6, "interference");
    close(interference.measured.plus_minus.get::<micrometer>(), 5.0, 1e-9, "3 and 4 make 5");
    close(interference.effective.value.get::<micrometer>(), 53.76, 1e-6, "less flattening");
    let loose = Interference::new(bore, shaft, um(0.0)).unwrap();
    assert!(loose.measured.value < Length::default());
}

/// A gauge set on the micrometer that measured the shaft: 0.005 of the micrometer's own error sits in
/// both ± of 0.0058 (0.003 beside it) and falls out; √(0.003² + 0.003²) = 0.00424 is left.
#[test]
fn what_both_sizes_share_falls_out() {
    let shared = mm(0.005);
    let size = |value: f64| Estimate::new(mm(value), mm(0.005_f64.hypot(0.003)));
    let fit = |shared| {
        Interference::sharing(size(80.045), size(80.010), shared, mm(0.0)).unwrap().measured
    };
    close(fit(shared).plus_minus.get::<micrometer>(), 4.2426, 5e-5, "shared");
    close(fit(mm(0.0)).plus_minus.get::<micrometer>(), 8.2462, 5e-5, "apart");
    assert!(Interference::sharing(size(80.045), size(80.01), mm(0.006), mm(0.0)).is_err());
}

/// A keyway of 22 mm in a joint of 80 mm leaves 1 − 22/(π·80) = 0.912 of it.
#[test]
fn a_keyway_takes_its_width() {
    let steel = elastic(207_000.0, 0.292);
    let whole = fit(0.0, 80.0, &[(100.0, 130.0)], steel, steel);
    let held = |fit: &PressFit| fit.state(mm(0.05), Running::default()).unwrap();
    let keyed = whole.clone().bearing(1.0 - 22.0 / (std::f64::consts::PI * 80.0)).unwrap();
    close((held(&keyed).torque(0.14) / held(&whole).torque(0.14)).value, 0.9125, 5e-5, "keyway");
    close((held(&keyed).mean_pressure() / held(&whole).mean_pressure()).value, 1.0, 1e-12, "p");
    assert!(whole.clone().bearing(0.0).is_err() && whole.bearing(1.1).is_err());
}

/// Statics: 3 kN around and 4 kN along make 5 kN; either alone is the plain quotient.
#[test]
fn torque_and_pull_add_as_forces() {
    let steel = elastic(207_000.0, 0.292);
    let state = fit(0.0, 80.0, &[(100.0, 130.0)], steel, steel)
        .state(mm(0.05), Running::default())
        .unwrap();
    let force = quantities::Force::from_si;
    let (torque, axial) = (Torque::new::<newton_meter>(3000.0 * 0.04), force(4000.0));
    let both = state.hold(0.14, torque, axial).unwrap();
    close(both.together.si(), 5000.0, 1e-9, "together");
    let alone = state.hold(0.14, torque, force(0.0)).unwrap();
    close(alone.safety, (state.torque(0.14) / torque).value, 1e-9, "torque alone");
    assert!(state.hold(0.14, Torque::default(), force(0.0)).is_err());
}

#[test]
fn what_is_no_joint_is_refused() {
    let steel = elastic(207_000.0, 0.292);
    let sizes = |b, d, outside| Sizes { shaft_bore: mm(b), joint: mm(d), hub_outside: mm(outside) };
    for bad in [
        sizes(0.0, 50.0, 50.0),
        sizes(50.0, 50.0, 60.0),
        sizes(-1.0, 50.0, 60.0),
        sizes(0.0, f64::NAN, 60.0),
        sizes(0.0, 50.0, f64::INFINITY),
    ] {
        assert!(matches!(Joint::new(bad, steel, steel), Err(JointError::Order(_))), "{bad:?}");
    }
    let rubber = elastic(207_000.0, 0.5);
    assert!(Joint::new(sizes(0.0, 50.0, 60.0), steel, rubber).is_err());
    let joint = joint(0.0, 50.0, 100.0, steel, steel);
    for loose in [0.0, -0.01, f64::NAN] {
        assert!(contact_pressure(&joint, mm(loose)).is_err());
    }
    let fit = fit(0.0, 50.0, &[(60.0, 100.0)], steel, steel);
    let backwards = Range::new(0.2, 0.1);
    assert!(fit.grip(Estimate::exact(mm(0.05)), backwards, Running::default()).is_err());
    let speed = AngularVelocity::from_si(f64::NAN);
    assert!(fit.state(mm(0.05), Running { speed, ..Running::default() }).is_err());
}

/// A `±` as wide as the interference: nothing is promised at its lower end.
#[test]
fn a_fit_that_may_be_loose_promises_nothing() {
    let steel = elastic(207_000.0, 0.292);
    let fit = fit(0.0, 50.0, &[(60.0, 100.0)], steel, steel);
    let doubtful = Estimate::new(mm(0.010), mm(0.012));
    let grip = fit.grip(doubtful, Range::new(0.12, 0.18), Running::default()).unwrap();
    assert_eq!(grip.least, None);
    assert_eq!(grip.torque.low, Torque::default());
    assert!(grip.torque.high > Torque::default());
}

/// The least of both against the most of both, each from a fit of its own.
#[test]
fn the_grip_spans_interference_and_friction() {
    let steel = elastic(207_000.0, 0.292);
    let fit = fit(0.0, 80.0, &[(100.0, 130.0)], steel, steel);
    let grip = fit
        .grip(Estimate::new(mm(0.060), mm(0.010)), Range::new(0.12, 0.18), Running::default())
        .unwrap();
    let held = |i, friction| fit.state(mm(i), Running::default()).unwrap().torque(friction).si();
    close(grip.torque.low.si() / held(0.050, 0.12), 1.0, 1e-12, "least");
    close(grip.torque.high.si() / held(0.070, 0.18), 1.0, 1e-12, "most");
    close(grip.axial.high.si() / (grip.torque.high.si() / 0.040), 1.0, 1e-12, "axial");
    close(grip.axial.low.si() / (grip.torque.low.si() / 0.040), 1.0, 1e-12, "axial");
}

fn any_elastic() -> impl Strategy<Value = Elastic> {
    (60e3..220e3_f64, 0.2..0.35_f64).prop_map(|(young, poisson)| elastic(young, poisson))
}

proptest! {
    /// One metal, solid shaft: p = E·δ/(2d)·(1 − d²/D²), whatever ν.
    #[test]
    fn one_metal_has_its_closed_form(e in any_elastic(), d in 20.0..300.0_f64, ratio in 1.1..4.0_f64) {
        let i = 0.001 * d;
        let found = contact_pressure(&joint(0.0, d, d * ratio, e, e), mm(i)).unwrap().pressure;
        let wanted = e.young * (i / (2.0 * d) * (1.0 - 1.0 / (ratio * ratio)));
        prop_assert!(((found / wanted).value - 1.0).abs() < 1e-12);
    }

    /// The same joint in inches and pounds presses the same.
    #[test]
    fn inches_and_millimetres_agree(
        d in 1.0..12.0_f64, ratio in 1.1..4.0_f64, hollow in 0.0..0.9_f64, mpsi in 10.0..30.0_f64,
    ) {
        let metal = |young| Elastic { young, poisson: 0.29 };
        let pressure = |length: &dyn Fn(f64) -> Length, young| {
            let (shaft_bore, hub_outside) = (length(d * hollow), length(d * ratio));
            let sizes = Sizes { shaft_bore, joint: length(d), hub_outside };
            let joint = Joint::new(sizes, metal(young), metal(young)).unwrap();
            contact_pressure(&joint, length(0.001 * d)).unwrap().pressure
        };
        let in_inches = pressure(&Length::new::<inch>, Pressure::new::<psi>(mpsi * 1e6));
        let metric = pressure(&|x| mm(25.4 * x), Pressure::new::<megapascal>(mpsi * 6894.757));
        prop_assert!(((in_inches / metric).value - 1.0).abs() < 1e-9);
    }

    /// A rigid hub squeezes a solid shaft evenly: p·(1 − ν)/E = δ/d.
    #[test]
    fn a_rigid_hub_squeezes_evenly(shaft in any_elastic(), d in 20.0..300.0_f64) {
        let rigid = elastic(1e15, 0.3);
        let found = contact_pressure(&joint(0.0, d, 2.0 * d, rigid, shaft), mm(0.001 * d)).unwrap();
        let strain = found.pressure.si() * (1.0 - shaft.poisson) / shaft.young.si();
        prop_assert!((strain / 0.001 - 1.0).abs() < 1e-6);
    }

    /// A thin ring on a rigid shaft: hoop = E·δ/d and p = hoop·2t/d.
    #[test]
    fn a_thin_ring_is_stretched(hub in any_elastic(), d in 20.0..300.0_f64) {
        let rigid = elastic(1e15, 0.3);
        let found = contact_pressure(&joint(0.0, d, d * 1.0001, hub, rigid), mm(0.001 * d)).unwrap();
        let hoop = found.hub_bore().hoop.si() / (hub.young.si() * 0.001);
        let pressure = found.pressure.si() / (hub.young.si() * 0.001 * 0.0001);
        prop_assert!((hoop - 1.0).abs() < 1e-3 && (pressure - 1.0).abs() < 1e-3);
    }

    /// More interference and a thicker hub press harder; a hollow shaft presses less.
    #[test]
    fn pressure_rises_with_interference_and_wall(
        hub in any_elastic(), shaft in any_elastic(), d in 20.0..300.0_f64,
        ratio in 1.1..3.0_f64, more in 1.01..1.5_f64, hollow in 0.1..0.9_f64,
    ) {
        let i = 0.001 * d;
        let at = |bore: f64, ratio: f64, i: f64| {
            contact_pressure(&joint(bore, d, d * ratio, hub, shaft), mm(i)).unwrap().pressure
        };
        let plain = at(0.0, ratio, i);
        prop_assert!(at(0.0, ratio, i * more) > plain);
        prop_assert!(at(0.0, ratio * more, i) > plain);
        prop_assert!(at(d * hollow, ratio, i) < plain);
    }

    /// A slice cut in two, or two alike laid together, holds the same.
    #[test]
    fn slices_may_be_cut_and_merged(cut in 0.05..0.95_f64, rpm in 0.0..6000.0_f64) {
        let steel = elastic(207_000.0, 0.292);
        let running = Running {
            speed: AngularVelocity::new::<revolution_per_minute>(rpm),
            hub_rise: TemperatureInterval::from_si(20.0),
            shaft_rise: TemperatureInterval::from_si(15.0),
        };
        let held = |slices: &[(f64, f64)]| {
            let state = fit(0.0, 80.0, slices, steel, steel).state(mm(0.06), running).unwrap();
            state.torque(0.14).si()
        };
        let whole = held(&[(100.0, 130.0), (30.0, 220.0)]);
        let parts = held(&[(100.0 * cut, 130.0), (30.0, 220.0), (100.0 * (1.0 - cut), 130.0)]);
        prop_assert!((whole / parts - 1.0).abs() < 1e-12);
    }

    /// Speed and a warmer hub only take; both parts equally warm and of one metal change nothing.
    #[test]
    fn speed_and_warmth_take_grip(rpm in 100.0..3000.0_f64, rise in 1.0..60.0_f64) {
        let steel = elastic(207_000.0, 0.292);
        let fit = fit(20.0, 80.0, &[(100.0, 130.0), (30.0, 220.0)], steel, steel);
        let held = |running| fit.state(mm(0.08), running).unwrap().torque(0.14);
        let still = Running::default();
        let speed = AngularVelocity::new::<revolution_per_minute>(rpm);
        let rise = TemperatureInterval::from_si(rise);
        let fast = held(Running { speed, ..still });
        let warm_hub = held(Running { hub_rise: rise, ..still });
        let warm_shaft = held(Running { shaft_rise: rise, ..still });
        prop_assert!(fast < held(still) && warm_hub < held(still) && warm_shaft > held(still));
        let both = held(Running { hub_rise: rise, shaft_rise: rise, ..still });
        prop_assert!(((both / held(still)).value - 1.0).abs() < 1e-9);
    }

    /// Where it lets go, the torque held is the torque needed; a ring alone lifts off when the warmth
    /// has opened all of the interference, δ = α·d·t.
    #[test]
    fn it_lets_go_where_it_says(i in 0.02..0.12_f64, part in 0.1..0.9_f64) {
        let steel = elastic(207_000.0, 0.292);
        let fit = fit(0.0, 80.0, &[(100.0, 130.0), (30.0, 220.0)], steel, steel);
        let still = Running::default();
        let needed = fit.state(mm(i), still).unwrap().torque(0.14) * part;
        let LetsGo::At(speed) = fit.lets_go_at_speed(mm(i), 0.14, needed, still).unwrap() else {
            panic!("no speed");
        };
        let held = fit.state(mm(i), Running { speed, ..still }).unwrap().torque(0.14);
        prop_assert!(((held / needed).value - 1.0).abs() < 1e-6);
        let LetsGo::At(rise) =
            fit.lets_go_at_hub_rise(mm(i), 0.14, Torque::default(), still).unwrap()
        else {
            panic!("no temperature");
        };
        let wanted = i / (11.5e-6 * 80.0);
        prop_assert!((rise.si() / wanted - 1.0).abs() < 1e-6, "{rise:?} for {wanted}");
        let too_much = needed / part * 1.01;
        let already = fit.lets_go_at_speed(mm(i), 0.14, too_much, still).unwrap();
        prop_assert_eq!(already, LetsGo::Already);
    }
}
