//! Trains with invented readings: a motor and a pump, and three machines in a row.

use figures::lineup::{
    Band, Coupling, Foot, Line, LineUp, Machine, Move, Plate, Sight, Stands, Wedge, draw,
};

use crate::{Figure, Paper, System};

/// Each train on each paper.
pub fn all() -> Vec<(String, Figure)> {
    let papers = [
        ("card", Paper::CARD),
        ("page", Paper::PAGE),
        ("column", Paper::COLUMN),
        ("phone", Paper::PHONE),
    ];
    let trains =
        [("pair", pair()), ("train", train(System::Metric)), ("mils", train(System::Inch))];
    let mut figures = Vec::new();
    for (train, lineup) in &trains {
        for (name, paper) in papers {
            match draw(lineup, paper) {
                Ok(figure) => figures.push((format!("lineup-{train}-{name}"), figure)),
                Err(error) => eprintln!("{train}: {error}"),
            }
        }
    }
    figures
}

fn line(at_mm: f64, offset_mm: f64, slope: f64) -> Line {
    Line { at_mm, offset_mm, slope }
}

fn sight(found: Option<Line>, target: Line) -> Sight {
    let band = |line: Line| Band { pivot_mm: line.at_mm, offset_mm: 0.012, slope: 0.000_1 };
    Sight { found: found.map(|line| (line, band(line))), target, after: found.map(|_| target) }
}

fn foot(x_mm: f64, pack: Vec<Plate>, rise: &str, push: &str, mm: (f64, f64)) -> Foot {
    Foot {
        x_mm,
        text: format!("{:.0}", x_mm.abs()),
        pack,
        rise: Some(Move { mm: mm.0, text: rise.to_owned() }),
        push: Some(Move { mm: mm.1, text: push.to_owned() }),
    }
}

fn pair() -> LineUp {
    use Plate::{GoesIn, Stays};
    let side = sight(Some(line(0.0, -0.195, 0.000_37)), line(0.0, -0.093, 0.0));
    let above = sight(Some(line(0.0, 0.138, -0.000_41)), Line::ZERO);
    let motor = Machine {
        name: "motor".to_owned(),
        shaft_mm: (-850.0, -3.0),
        body_mm: Some((-850.0, -250.0)),
        feet: vec![
            foot(-776.0, vec![Stays, GoesIn, GoesIn], "+0.35", "0.45 to 9", (0.35, -0.45)),
            foot(-318.0, vec![Stays, GoesIn], "+0.20", "0.27 to 9", (0.20, -0.27)),
        ],
        stands: Stands::Moves,
        side,
        above,
    };
    let pump = Machine {
        name: "pump".to_owned(),
        shaft_mm: (3.0, 150.0),
        body_mm: None,
        feet: vec![],
        stands: Stands::Fixed,
        side: sight(None, Line::ZERO),
        above: sight(None, Line::ZERO),
    };
    let coupling = Coupling {
        planes_mm: (-3.0, 3.0),
        text: "0".to_owned(),
        limit: Some(Wedge { offset_mm: 0.10, slope: 0.000_8 }),
        aim: Some(Wedge { offset_mm: 0.05, slope: 0.000_5 }),
    };
    LineUp { machines: vec![motor, pump], couplings: vec![coupling], system: System::Metric }
}

fn train(system: System) -> LineUp {
    use Plate::{ComesOut, GoesIn, Stays};
    let written = |mm: f64| match system {
        System::Metric => format!("{mm:+.2}").replace('-', "−"),
        System::Inch => format!("{:+.1}", mm / 0.0254).replace('-', "−"),
    };
    let sideways = |mm: f64| {
        let to = if mm < 0.0 { 9 } else { 3 };
        match system {
            System::Metric => format!("{:.2} to {to}", mm.abs()),
            System::Inch => format!("{:.1} to {to}", mm.abs() / 0.0254),
        }
    };
    let feet = |side: Sight, above: Sight, at: [(f64, Vec<Plate>); 2]| {
        at.into_iter()
            .map(|(x, pack)| {
                let need = |sight: Sight| {
                    sight.found.map_or(0.0, |(found, _)| sight.target.height(x) - found.height(x))
                };
                let (rise, push) = (need(side), need(above));
                foot(x, pack, &written(rise), &sideways(push), (rise, push))
            })
            .collect::<Vec<_>>()
    };
    let motor_side = sight(Some(line(1500.0, -0.18, 0.000_09)), line(1500.0, -0.06, 0.0));
    let motor_above = sight(Some(line(1500.0, 0.12, -0.000_1)), Line::ZERO);
    let fan_side = sight(Some(line(2700.0, 0.11, 0.000_07)), line(2700.0, 0.04, 0.0));
    let fan_above = sight(Some(line(2700.0, -0.06, 0.000_05)), Line::ZERO);
    let machine = |name: &str, shaft_mm, body_mm, feet, stands, side, above| Machine {
        name: name.to_owned(),
        shaft_mm,
        body_mm: Some(body_mm),
        feet,
        stands,
        side,
        above,
    };
    let zero = sight(None, Line::ZERO);
    let coupling = |planes_mm, text: &str| Coupling {
        planes_mm,
        text: text.to_owned(),
        limit: Some(Wedge { offset_mm: 0.025, slope: 0.000_5 }),
        aim: None,
    };
    LineUp {
        machines: vec![
            machine(
                "motor",
                (0.0, 1500.0),
                (150.0, 1250.0),
                feet(
                    motor_side,
                    motor_above,
                    [(300.0, vec![Stays, GoesIn]), (1100.0, vec![GoesIn])],
                ),
                Stands::Moves,
                motor_side,
                motor_above,
            ),
            machine(
                "gearbox",
                (1680.0, 2500.0),
                (1820.0, 2360.0),
                vec![],
                Stands::Fixed,
                zero,
                zero,
            ),
            machine(
                "compressor",
                (2700.0, 4300.0),
                (2900.0, 4200.0),
                feet(
                    fan_side,
                    fan_above,
                    [(3050.0, vec![Stays, Stays, ComesOut]), (4050.0, vec![Stays, ComesOut])],
                ),
                Stands::Moves,
                fan_side,
                fan_above,
            ),
        ],
        couplings: vec![
            coupling((1500.0, 1680.0), "coupling 1"),
            coupling((2500.0, 2700.0), "coupling 2"),
        ],
        system,
    }
}
