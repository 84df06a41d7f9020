//! The practice of the trade: every figure as published, and the worked examples it comes with.

use quantities::{Force, Length, Power, System, Torque};
use serde::de::{DeserializeOwned, value::StrDeserializer};
use tables::friction::{self, Joint};
use tables::limits::{self, Limit};
use tables::nut_factor::{Threads, nut_factor};
use tables::pullers::{self, Drive, puller_for};
use tables::service_factors::{Driver, Load, machines, service_factor};
use tables::{balance, din_7190, greases, growth, hub_fits, seals, shims, tools};
use uom::si::angle::radian;
use uom::si::force::pound_force;
use uom::si::length::{inch, microinch, mil, millimeter};
use uom::si::power::horsepower;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::torque::newton_meter;

use super::{inches, mm, number, number_or_dash, rows, same, text};

const FILE: &str = include_str!("practice.toml");

fn single(table: &str, key: &str) -> f64 {
    let file: toml::Table = FILE.parse().expect("the file of published figures reads");
    number(&file[table][key])
}

/// An enum by the name that an entry gives it.
fn named<T: DeserializeOwned>(name: &str) -> T {
    let name: StrDeserializer<'_, serde::de::value::Error> = StrDeserializer::new(name);
    T::deserialize(name).expect("a name that an entry may give")
}

fn most_mm(limit: Limit) -> f64 {
    limit.most.get::<millimeter>()
}

fn most_in(limit: Limit) -> f64 {
    limit.most.get::<inch>()
}

#[test]
fn single_limits_are_as_published() {
    same(most_mm(limits::SOFT_FOOT), single("soft_foot", "usual_mm"), "soft foot");
    same(most_in(limits::SOFT_FOOT_STRICT), single("soft_foot", "strict_in"), "strict soft foot");
    same(most_in(limits::CLOSURE), single("closure", "most_in"), "closure");
    same(most_mm(limits::PIPE_STRAIN), single("pipe", "shaft_movement_mm"), "pipe strain");
    let textbook = most_in(limits::PIPE_STRAIN_TEXTBOOK);
    same(textbook, single("pipe", "textbook_movement_in"), "pipe strain by the textbook");
    same(most_mm(limits::PIPE_BOLT_HOLES), single("pipe", "bolt_holes_mm"), "bolt holes");
    same(most_mm(limits::PIPE_GAP), single("pipe", "gap_mm"), "pipe gap");
    let slope = limits::FLEX_PLANES.get::<radian>() * 1e3;
    same(slope, single("flex_planes", "mm_per_m"), "flex planes");
    for (row, (rotor, coupling)) in rows(FILE, "end_float").iter().zip(limits::END_FLOAT) {
        same(rotor.get::<inch>(), number(&row[0]), "rotor end float");
        same(coupling.get::<inch>(), number(&row[1]), "coupling end float");
    }
}

#[test]
fn limits_by_size_are_as_published() {
    for row in rows(FILE, "pipe") {
        let limit = limits::pipe_parallelism(mm(number(&row[0]))).unwrap();
        same(most_mm(limit), number(&row[1]), "pipe parallelism");
    }
    for row in rows(FILE, "shaft_runout") {
        for shaft in [number(&row[0]) + 0.01, number(&row[1])] {
            let limit = limits::shaft_runout(mm(shaft)).unwrap();
            same(most_mm(limit), number(&row[2]), &format!("runout of {shaft}"));
        }
    }
    for size in [0.0, -10.0, f64::NAN, f64::INFINITY] {
        assert!(limits::pipe_parallelism(mm(size)).is_none(), "{size}");
        assert!(limits::shaft_runout(mm(size)).is_none(), "{size}");
    }
    assert!(limits::shaft_runout(mm(6.0)).is_none() && limits::shaft_runout(mm(631.0)).is_none());
}

#[test]
fn shims_are_as_sold() {
    for (row, found) in rows(FILE, "shims_inch")[0].iter().zip(shims::stock(System::Inch)) {
        same(found.get::<inch>(), number(row), "inch shim");
    }
    for (row, found) in rows(FILE, "shims_metric")[0].iter().zip(shims::stock(System::Metric)) {
        same(found.get::<millimeter>(), number(row), "metric shim");
    }
    assert_eq!(rows(FILE, "shims_inch")[0].len(), shims::INCH.len());
    assert_eq!(rows(FILE, "shims_metric")[0].len(), shims::METRIC.len());
    let pack = |hp| shims::first_pack(Power::new::<horsepower>(hp)).get::<inch>();
    same(pack(100.0), 0.125, "first pack");
    same(pack(300.0), 0.250, "first pack of a large motor");
}

#[test]
fn seals_stand_what_is_published() {
    for row in rows(FILE, "seals") {
        let seal = seals::seal(text(&row[0])).unwrap();
        same(seal.limit.get::<degree_celsius>(), number(&row[1]), seal.name);
        same(seal.short_term.unwrap().get::<degree_celsius>(), number(&row[2]), seal.name);
    }
    assert_eq!(seals::seal("FKM"), seals::seal("fluoroelastomer"));
    assert!(seals::seal("leather").is_none());
    let mut limits = seals::all().iter().map(|seal| seal.limit.get::<degree_celsius>());
    assert!(limits.all(|limit| (60.0..=300.0).contains(&limit)));
}

#[test]
fn supports_grow_as_published() {
    for row in rows(FILE, "supports") {
        let support = growth::support_of(text(&row[0])).unwrap();
        same(support.expansion.get::<per_kelvin>() * 1e6, number(&row[1]), support.name);
    }
    assert_eq!(rows(FILE, "supports").len(), growth::supports().len());
    let frame = growth::supports()[0].expansion.get::<per_kelvin>();
    for row in rows(FILE, "growth") {
        let rise_k = (number(&row[2]) - number(&row[1])) / 1.8;
        let growth = inches(number(&row[0]) * frame * rise_k).get::<mil>();
        assert!((growth - number(&row[3])).abs() <= number(&row[4]), "{growth} mil");
    }
    for (row, usual) in rows(FILE, "usual_growth").iter().zip(growth::usual()) {
        assert_eq!(text(&row[0]), usual.machine);
        same(usual.height.0.get::<millimeter>(), number(&row[1]), usual.machine);
        same(usual.height.1.get::<millimeter>(), number(&row[2]), usual.machine);
        same(usual.rise.0.get::<kelvin>(), number(&row[3]), usual.machine);
        same(usual.rise.1.get::<kelvin>(), number(&row[4]), usual.machine);
    }
    assert_eq!(rows(FILE, "usual_growth").len(), growth::usual().len());
}

#[test]
fn greases_are_as_recalled() {
    assert_eq!(rows(FILE, "greases").len(), greases::GREASES.len());
    for (row, grease) in rows(FILE, "greases").iter().zip(&greases::GREASES) {
        assert_eq!(text(&row[0]), grease.grade);
        same(grease.base_oil_mm2_s, number(&row[1]), grease.grade);
        same(f64::from(grease.nlgi.0), number(&row[2]), grease.grade);
        same(f64::from(grease.nlgi.1), number(&row[3]), grease.grade);
        assert_eq!(grease.separation_percent_24h, number_or_dash(&row[4]), "{}", grease.grade);
        same(grease.misalignment_deg, number(&row[5]), grease.grade);
        same(f64::from(grease.interval_months), number(&row[6]), grease.grade);
    }
    assert_eq!(greases::grease_for(200.0).unwrap().grade, "CG-1");
    assert_eq!(greases::grease_for(200.1).unwrap().grade, "CG-2");
    assert!(greases::grease_for(-1.0).is_none() && greases::grease_for(f64::NAN).is_none());
}

#[test]
fn nlgi_numbers_are_as_published() {
    for row in rows(FILE, "nlgi") {
        let [from, to] = [1, 2].map(|c| u32::try_from(row[c].as_integer().unwrap()).unwrap());
        for penetration in [from, u32::midpoint(from, to), to] {
            assert_eq!(greases::nlgi(penetration), Some(text(&row[0])));
        }
        assert_eq!(greases::nlgi(to + 1), None);
        assert_eq!(greases::nlgi(from - 1), None);
    }
}

/// 15.7 mm/s (180 g·mm on 6 kg at 5000 rpm, a worked example of the trade) still meets G16.
#[test]
fn balance_grades_are_as_published() {
    assert_eq!(rows(FILE, "balance")[0].len(), balance::GRADES.len());
    for (printed, grade) in rows(FILE, "balance")[0].iter().zip(balance::GRADES) {
        same(grade.g_mm_s, number(printed), "grade");
        assert_eq!(balance::grade(&format!("G{}", grade.g_mm_s)), Some(&grade));
    }
    same(balance::met_by(15.708).unwrap().g_mm_s, 16.0, "grade met");
    assert!(balance::met_by(101.0).is_none() && balance::met_by(f64::NAN).is_none());
    assert!(balance::grade("G5").is_none() && balance::grade("").is_none());
    for (row, (class, off)) in rows(FILE, "agma_9000").iter().zip(balance::AGMA_9000) {
        same(f64::from(class), number(&row[0]), "class");
        same(off.get::<microinch>(), number(&row[1]), "mass axis");
    }
}

#[test]
fn friction_and_joining_are_as_recalled() {
    for row in rows(FILE, "friction") {
        let grip = friction::grip(named::<Joint>(text(&row[0])));
        same(grip, number(&row[1]), text(&row[0]));
        let (low, high) = friction::RANGE;
        assert!((low..=high).contains(&grip) && grip < friction::PULL);
    }
    for row in rows(FILE, "joining") {
        let joining = din_7190::joining_of(text(&row[0])).unwrap();
        same(joining.heating.get::<per_kelvin>() * 1e6, number(&row[1]), joining.material);
        same(joining.chilling.get::<per_kelvin>() * 1e6, number(&row[2]), joining.material);
    }
    for (printed, (name, highest)) in rows(FILE, "highest_joining")[0].iter().zip(din_7190::HIGHEST)
    {
        same(highest.get::<degree_celsius>(), number(printed), name);
    }
}

#[test]
fn pullers_come_out_of_the_worked_example() {
    let load = Force::new::<pound_force>(single("pullers", "force_lbf")) * pullers::MARGIN;
    same(pullers::MARGIN, single("pullers", "margin"), "margin");
    same(load.get::<pound_force>() / 2000.0, 95.00175, "tons");
    assert!((95.00175 - single("pullers", "needed_tons")).abs() <= 0.5e-4 + 1e-9);
    assert_eq!(puller_for(load, Drive::Hydraulic).unwrap().tons, 100);
    assert!(puller_for(load, Drive::Screw).is_none());
    assert!(puller_for(load * 2.0, Drive::Hydraulic).is_none());
    let (least, greatest) = pullers::TONS_AN_INCH;
    same(least * single("pullers", "shaft_in"), 32.0, "tons by the shaft");
    same(greatest * single("pullers", "shaft_in"), 40.0, "tons by the shaft");
    let nothing = Force::new::<pound_force>(f64::NAN);
    assert!(puller_for(nothing, Drive::Screw).is_none());
    for drive in [Drive::Screw, Drive::Hydraulic] {
        for puller in pullers::classes(drive) {
            assert_eq!(puller_for(puller.capacity, drive), Some(puller));
        }
    }
}

#[test]
fn factors_are_as_published() {
    for row in rows(FILE, "service_factors") {
        let load: Load = named(text(&row[0]));
        let drivers = [Driver::ElectricMotor, Driver::EngineFourToTwelve, Driver::EngineOneToThree];
        for (driver, printed) in drivers.into_iter().zip(&row[1..]) {
            same(service_factor(load, driver), number(printed), text(&row[0]));
        }
        assert!(machines(load).len() >= 5);
    }
    for row in rows(FILE, "nut_factors") {
        same(nut_factor(named::<Threads>(text(&row[0]))), number(&row[1]), text(&row[0]));
    }
    for row in rows(FILE, "hub_fits") {
        let (least, greatest) = hub_fits::keyed(inches(number(&row[1]))).unwrap();
        same(least.get::<inch>(), number(&row[2]), "least");
        same(greatest.get::<inch>(), number(&row[3]), "greatest");
    }
    assert!(hub_fits::keyed(inches(0.5)).is_none() && hub_fits::keyed(inches(6.1)).is_none());
}

#[test]
fn tools_span_their_sizes() {
    let micrometer = |size, system| tools::micrometer_for(size, system).map(|range| range.show());
    for (size, in_metric, in_inches) in [
        (25.0, "0 to 25 mm", "0 to 1 in"),
        (25.4, "25 to 50 mm", "0 to 1 in"),
        (25.5, "25 to 50 mm", "1 to 2 in"),
        (600.0, "575 to 600 mm", "23 to 24 in"),
    ] {
        assert_eq!(micrometer(mm(size), System::Metric).as_deref(), Some(in_metric));
        assert_eq!(micrometer(mm(size), System::Inch).as_deref(), Some(in_inches));
    }
    for size in [0.0, -1.0, 611.0, f64::NAN, f64::INFINITY] {
        assert_eq!(micrometer(mm(size), System::Metric), None, "{size}");
        assert_eq!(micrometer(mm(size), System::Inch), None, "{size}");
        assert!(tools::bore_gauge_for(mm(size), System::Metric).is_none(), "{size}");
    }
    let bore = tools::bore_gauge_for(inches(2.875), System::Inch).unwrap();
    assert_eq!(bore.show(), "2 to 6 in");
    let wrench = tools::torque_wrench_for(Torque::new::<newton_meter>(218.0), System::Inch);
    assert_eq!(wrench.unwrap().show(), "50.0 to 250 lbf·ft");
    assert!(tools::feelers(System::Inch).from < Length::new::<mil>(2.0));
}

proptest::proptest! {
    /// Whatever is measured lies within the tool named for it, and no smaller one would do.
    #[test]
    fn a_tool_holds_what_it_is_named_for(size in 0.5..599.0_f64, torque in 5.0..1990.0_f64) {
        for system in [System::Metric, System::Inch] {
            let range = tools::micrometer_for(mm(size), system).unwrap();
            proptest::prop_assert!(range.from <= mm(size) && mm(size) <= range.to * (1.0 + 1e-9));
        }
        if (6.0..=450.0).contains(&size) {
            let range = tools::bore_gauge_for(mm(size), System::Metric).unwrap();
            proptest::prop_assert!(range.from <= mm(size) && mm(size) <= range.to);
        }
        let torque = Torque::new::<newton_meter>(torque);
        for system in [System::Metric, System::Inch] {
            let range = tools::torque_wrench_for(torque, system).unwrap();
            proptest::prop_assert!(range.from <= torque && torque <= range.to);
        }
    }
}
