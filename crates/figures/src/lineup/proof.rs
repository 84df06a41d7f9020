//! Random trains on all papers: no label collides, and lines lie where their numbers say.

use proptest::prelude::*;

use super::*;
use crate::proof::{cases, is_plain, is_tidy, paths, texts};

/// A machine in shares of a metre and hundredths of a millimetre.
#[derive(Clone, Debug)]
struct Sketch {
    body: f64,
    overhang: f64,
    feet: (f64, f64),
    offset: [f64; 2],
    slope: [f64; 2],
    target: f64,
    band: (f64, f64),
    plates: Vec<u8>,
    measured: bool,
}

fn sketch() -> impl Strategy<Value = Sketch> {
    (
        (0.2..2.5_f64, 0.05..0.5_f64, (0.02..0.4_f64, 0.6..0.98_f64)),
        ([-0.8..0.8_f64, -0.8..0.8_f64], [-8e-4..8e-4_f64, -8e-4..8e-4_f64], -0.2..0.2_f64),
        ((0.001..0.05_f64, 1e-6..3e-4_f64), prop::collection::vec(0..3_u8, 0..7), 0..6_u8),
    )
        .prop_map(|((body, overhang, feet), (offset, slope, target), (band, plates, luck))| {
            Sketch { body, overhang, feet, offset, slope, target, band, plates, measured: luck > 0 }
        })
}

fn written(mm: f64, system: System) -> String {
    let text = match system {
        System::Metric => format!("{mm:+.2}"),
        System::Inch => format!("{:+.1}", mm / 0.0254),
    };
    text.replace('-', "−")
}

fn machine(sketch: &Sketch, index: usize, from: f64, stands: Stands, system: System) -> Machine {
    let (body, over) = (1000.0 * sketch.body, 1000.0 * sketch.overhang);
    let to = from + body + 2.0 * over;
    let sight = |view: usize| {
        let pivot = from + over;
        let line = Line { at_mm: pivot, offset_mm: sketch.offset[view], slope: sketch.slope[view] };
        let band = Band { pivot_mm: pivot, offset_mm: sketch.band.0, slope: sketch.band.1 };
        let moves = stands == Stands::Moves && sketch.measured;
        let target = match stands {
            Stands::Fixed => Line::ZERO,
            Stands::Moves => Line { offset_mm: sketch.target, ..Line::ZERO },
        };
        let after = moves.then_some(Line { offset_mm: target.offset_mm + 0.01, ..target });
        Sight { found: moves.then_some((line, band)), target, after }
    };
    let (side, above) = (sight(0), sight(1));
    let plate = |kind: &u8| [Plate::Stays, Plate::GoesIn, Plate::ComesOut][usize::from(*kind)];
    let foot = |share: f64| {
        let x = from + over + body * share;
        let shift = |sight: Sight| {
            let (found, _) = sight.found?;
            let mm = sight.target.height(x) - found.height(x);
            Some(Move { mm, text: written(mm, system) })
        };
        let push = shift(above).map(|m| {
            let side = if m.mm < 0.0 { 9 } else { 3 };
            Move { text: format!("{} to {side}", m.text.trim_start_matches(['+', '−'])), ..m }
        });
        Foot {
            x_mm: x,
            text: format!("{x:.0}"),
            pack: sketch.plates.iter().map(plate).collect(),
            rise: shift(side),
            push,
        }
    };
    Machine {
        name: ["motor", "gearbox", "compressor", "exciter"][index].to_owned(),
        shaft_mm: (from, to),
        body_mm: (index != 1).then_some((from + over, to - over)),
        feet: vec![foot(sketch.feet.0), foot(sketch.feet.1)],
        stands,
        side,
        above,
    }
}

fn train() -> impl Strategy<Value = LineUp> {
    let wedge = (0.01..0.2_f64, 1e-4..2e-3_f64);
    let gaps = prop::collection::vec((2.0..400.0_f64, prop::option::of(wedge)), 3);
    (prop::collection::vec(sketch(), 2..5), gaps, any::<bool>(), any::<bool>(), 0..4_usize)
        .prop_map(|(sketches, gaps, inch, aimed, fixed)| {
            let system = if inch { System::Inch } else { System::Metric };
            let (mut from, mut machines, mut couplings) = (0.0, Vec::new(), Vec::new());
            for (index, sketch) in sketches.iter().enumerate() {
                let moves = index != fixed % sketches.len();
                let stands = if moves { Stands::Moves } else { Stands::Fixed };
                let machine = machine(sketch, index, from, stands, system);
                let end = machine.shaft_mm.1;
                machines.push(machine);
                if index + 1 < sketches.len() {
                    let (gap, wedge) = gaps[index];
                    let limit = wedge.map(|(offset_mm, slope)| Wedge { offset_mm, slope });
                    let half =
                        |w: Wedge| Wedge { offset_mm: w.offset_mm / 2.0, slope: w.slope / 2.0 };
                    couplings.push(Coupling {
                        planes_mm: (end, end + gap),
                        text: format!("coupling {}", index + 1),
                        limit,
                        aim: limit.filter(|_| aimed).map(half),
                    });
                    from = end + gap;
                }
            }
            LineUp { machines, couplings, system }
        })
}

const PAPERS: [Paper; 4] = [Paper::CARD, Paper::PAGE, Paper::COLUMN, Paper::PHONE];

proptest! {
    #![proptest_config(cases(400))]

    #[test]
    fn labels_never_collide(lineup in train()) {
        for paper in PAPERS {
            let drawing = sheet::draw(&lineup, paper);
            let tidy = is_tidy(&drawing);
            prop_assert!(tidy.is_ok(), "{} mm: {}", paper.width_mm, tidy.unwrap_err());
        }
    }
}

proptest! {
    #![proptest_config(cases(60))]

    #[test]
    fn figures_are_plain_and_to_scale(lineup in train(), paper in prop::sample::select(PAPERS.to_vec())) {
        let figure = draw(&lineup, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        let plain = is_plain(&figure);
        prop_assert!(plain.is_ok(), "{}", plain.unwrap_err());
        // No move is lost, however little room there is.
        let written = texts(&figure.svg);
        let moving = lineup.machines.iter().filter(|m| m.stands == Stands::Moves);
        for shift in moving.flat_map(|m| &m.feet).flat_map(|f| f.rise.iter().chain(&f.push)) {
            prop_assert!(written.contains(&shift.text), "{} is lost", shift.text);
        }
        let (along, across) = stated_scales(&figure.svg);
        // Found lines are the pencil lines of their weight; each is as long and as steep as it says.
        let lines: Vec<_> = paths(&figure.svg)
            .into_iter()
            .filter(|(a, _)| a.contains("stroke-width=\"0.6\"") && a.contains("pencil"))
            .map(|(_, points)| points)
            .collect();
        let found = lineup.machines.iter().filter(|m| m.side.found.is_some());
        for (machine, line) in found.zip(&lines) {
            let Some((real, _)) = machine.side.found else { continue };
            let (from, to) = machine.shaft_mm;
            let run = (line[1].0 - line[0].0) / along;
            let rise = (line[0].1 - line[1].1) / across;
            prop_assert!((run - (to - from)).abs() < 0.021 / along, "{run} mm for {}", to - from);
            let wanted = real.height(to) - real.height(from);
            prop_assert!((rise - wanted).abs() < 0.021 / across, "{rise} mm for {wanted}");
        }
    }
}

/// Paper over train, along and across, read from the words of the figure.
fn stated_scales(svg: &str) -> (f64, f64) {
    let words = texts(svg).join(" ");
    let after = |mark: &str| -> f64 {
        let rest = words.split(mark).nth(1).expect("both scales are stated");
        let number: String = rest.chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
        number.trim_end_matches('.').parse().expect("a number")
    };
    (1.0 / after("Along 1:"), after("across "))
}

#[test]
fn what_is_no_train_is_refused() {
    let good = LineUp { machines: vec![], couplings: vec![], system: System::Metric };
    assert_eq!(draw(&good, Paper::CARD), Err(LineUpError::NoTrain));
    let sight = Sight { found: None, target: Line::ZERO, after: None };
    let machine = |from: f64, to: f64| Machine {
        name: String::new(),
        shaft_mm: (from, to),
        body_mm: None,
        feet: vec![],
        stands: Stands::Moves,
        side: sight,
        above: sight,
    };
    let coupling = Coupling { planes_mm: (0.0, 1.0), text: String::new(), limit: None, aim: None };
    let lineup = |machines| LineUp { machines, couplings: vec![coupling.clone()], ..good.clone() };
    let backwards = lineup(vec![machine(0.0, -1.0), machine(1.0, 2.0)]);
    assert!(matches!(draw(&backwards, Paper::CARD), Err(LineUpError::Backwards { .. })));
    let endless = lineup(vec![machine(f64::NEG_INFINITY, 0.0), machine(1.0, 2.0)]);
    assert!(matches!(draw(&endless, Paper::CARD), Err(LineUpError::NotALength(_))));
    let narrow = Paper { width_mm: 10.0, type_mm: 3.0 };
    let fine = lineup(vec![machine(-1.0, 0.0), machine(1.0, 2.0)]);
    assert!(matches!(draw(&fine, narrow), Err(LineUpError::Paper(_))));
    assert!(draw(&fine, Paper::PHONE).is_ok());
}
