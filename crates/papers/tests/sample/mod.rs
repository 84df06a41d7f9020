//! A plan as a job could give it. Machines, works, hands and every number are invented.

#![allow(dead_code, reason = "each user of the sample takes what it needs")]

use figures::Figure;
use job::plan::{Caution, Done, Head, KitItem, Missing, Number, Piece, Plan, StagePlan, Step};
use job::{Job, JobFile, Stage};
use papers::CardFigures;
use quantities::{Basis, Kind, Limits, Source, System, Value, Verdict, Working, judge};

/// A whole job: gear coupling, two new hubs.
pub fn plan() -> Plan {
    Plan {
        head: head(),
        stages: stages(),
        cautions: vec![
            caution(
                None,
                &[
                    "Lock and prove dead: motor switch 2M, discharge and suction valves shut, casing drained.",
                    "Local codes and the site’s permit come first.",
                ],
            ),
            caution(
                Some(Stage::Heat),
                &[
                    "Burns: gloves, sleeves, face shield.",
                    "Hub 8.3 kg, hot: walk the way cold once.",
                    "No grease or rag near the oven.",
                ],
            ),
            caution(
                Some(Stage::Removal),
                &["A puller under load can fly: screen, nobody in line."],
            ),
        ],
        on: on(),
        off: off(),
        kit: kit(),
        ..of_no_job()
    }
}

/// What a job without a single entry comes to.
fn of_no_job() -> Plan {
    job::plan::plan(&Job::from_file(&JobFile::default()), System::Metric)
}

/// A job that was only just opened.
pub fn bare() -> Plan {
    let empty = Head {
        number: String::new(),
        title: "Fan 3".into(),
        works: String::new(),
        coupling: String::new(),
        driver: String::new(),
        driven: String::new(),
        runs_at: String::new(),
        written: String::new(),
        by: String::new(),
        ..head()
    };
    let stages = Stage::ALL.map(|stage| StagePlan {
        stage,
        summary: String::new(),
        numbers: Vec::new(),
        missing: Vec::new(),
        notes: Vec::new(),
        begun: false,
    });
    let stages = stages.into();
    let plan = of_no_job();
    Plan { head: empty, stages, cautions: vec![], on: vec![], off: vec![], kit: vec![], ..plan }
}

/// Drawings of plain lines in the sizes that a card expects.
pub fn figures() -> CardFigures {
    CardFigures {
        section: Some(figure(88.0, 68.0, "Coupling in half section, gap 6.0 mm")),
        lineup: Some(figure(88.0, 74.0, "Line-up graph, rear feet up 0.35 mm")),
        apart: Some(figure(180.0, 90.0, "Taken apart: shaft, seal, sleeve, hub")),
        tightening: Some(figure(80.0, 60.0, "Eight bolts, opposite ones first")),
        fit: vec![
            ("Fit of the motor hub.".into(), figure(88.0, 60.0, "Motor hub, 0.034 mm tight")),
            ("Fit of the pump hub.".into(), figure(88.0, 60.0, "Pump hub, 0.031 mm tight")),
        ],
        bore_map: vec![("Bore of the motor hub.".into(), figure(60.0, 60.0, "Motor hub, bore"))],
        more: vec![("Seconds in hand.".into(), figure(180.0, 70.0, "Clearance against seconds"))],
    }
}

/// A frame with a cross, words in both faces, and every colour of the screen.
pub fn figure(width_mm: f64, height_mm: f64, says: &str) -> Figure {
    let (w, h) = (width_mm, height_mm);
    let (x, y) = (w / 2.0, h / 2.0);
    let svg = format!(
        r##"<svg xmlns="http://www.w3.org/2000/svg" class="figure" role="img" width="{w}mm" height="{h}mm" viewBox="0 0 {w} {h}" font-family="Libertinus Serif, Georgia, serif"><title>sample</title><rect x="0.25" y="0.25" width="{fw}" height="{fh}" fill="none" stroke="#1c1a17" stroke-width="0.5"/><path d="M0 {y}L{w} {y}M{x} 0L{x} {h}" fill="none" stroke="#857a68" stroke-width="0.2" stroke-dasharray="6 0.8 0.9 0.8"/><circle cx="{x}" cy="{y}" r="12" fill="#5a2a8a" fill-opacity="0.2" stroke="#5a2a8a" stroke-width="0.6"/><text x="4" y="8" font-size="3.6" font-weight="600" fill="#1c1a17">sample figure</text><text x="4" y="14" font-size="3.3" font-family="DejaVu Sans Mono, monospace" fill="#5a2a8a" stroke="#ffffff" stroke-width="0.9" paint-order="stroke">⌀ 80.062</text></svg>"##,
        fw = w - 0.5,
        fh = h - 0.5,
    );
    Figure { svg, width_mm, height_mm, says: says.to_owned() }
}

fn head() -> Head {
    Head {
        number: "41".into(),
        title: "Sea-water pump 2".into(),
        works: "Tangle Row Drying".into(),
        invented: true,
        coupling: "gear coupling, two new hubs".into(),
        driver: "motor".into(),
        driven: "pump".into(),
        runs_at: "90 kW, 1480 rpm".into(),
        written: "2026-11-25".into(),
        by: "R.A.".into(),
        system: System::Metric,
    }
}

fn caution(stage: Option<Stage>, orders: &[&str]) -> Caution {
    Caution { stage, orders: orders.iter().map(|&order| order.into()).collect() }
}

fn on() -> Vec<Step> {
    let lock = step(
        Stage::Machines,
        "on.lockout",
        "Lock out, tag and prove dead: driver and driven machine",
    );
    let lock = held(lock, "Everyone on the job has a lock on; the holder of the permit agrees.");
    vec![
        Step { done: Some(Done { at: "2026-11-25 07:40".into(), by: "R.A.".into() }), ..lock },
        step(Stage::Machines, "on.check", "Check bases, soft foot, pipe strain and shaft runout"),
        step(
            Stage::Sizes,
            "on.measure",
            "Old hubs off, shafts clean, burrs dressed; bores and shafts measured",
        ),
        held(
            step(Stage::Fit, "on.fit", "Agree the fit: [0.034 mm], [0.031 mm]"),
            "Whoever is responsible for the fit agrees before a hub is heated.",
        ),
        step(
            Stage::Heat,
            "on.shield",
            "Sleeve, seal and end ring on each shaft, well back from heat",
        ),
        step(
            Stage::Heat,
            "on.heat",
            "Motor hub from the oven at [155 °C], home within [39 s], held until it grips",
        ),
        step(
            Stage::Heat,
            "on.heat2",
            "Pump hub from the oven at {oven temperature, pump hub}, held until it grips",
        ),
        step(Stage::Gap, "on.gap", "Gap between hub faces [6.0 ± 0.2 mm], four places"),
        step(
            Stage::Lineup,
            "on.raise",
            "Raise rear feet [0.35 mm] (0.25 + 0.10), front feet [0.20 mm]",
        ),
        step(
            Stage::Lineup,
            "on.push",
            "Push to 9 o’clock: rear [0.45], front [0.27 mm]; read again",
        ),
        held(
            step(Stage::Lineup, "on.agree", "Line-up read again and agreed"),
            "Someone other than the doer reads the line-up again and agrees.",
        ),
        step(Stage::Closeup, "on.close", "Teeth packed, sleeves home, bolts to [110 N·m] in order"),
    ]
}

fn off() -> Vec<Step> {
    vec![
        held(
            step(Stage::Removal, "off.lockout", "Lock out, tag and prove dead once more"),
            "Everyone on the job has a lock on; the holder of the permit agrees.",
        ),
        step(
            Stage::Removal,
            "off.record",
            "Record gap, place of each hub and line-up; match-mark all",
        ),
        step(Stage::Removal, "off.pull", "Pull the motor hub: [186 kN] expected, cold"),
        step(Stage::Removal, "off.pull2", "Pull the pump hub: {force, pump hub} expected, cold"),
    ]
}

/// A step whose title holds numbers in `[]` and what is missing in `{}`.
pub fn step(stage: Stage, id: &str, title: &str) -> Step {
    Step {
        id: id.into(),
        stage,
        title: pieces(title),
        detail: pieces(
            "Slowly, and look before each move. The number to hold is [0.05 mm]; if it can’t be \
             held, stop and say so.",
        ),
        hold: None,
        needs: vec!["clean cloth".into(), "torque wrench, checked".into()],
        done: None,
    }
}

fn held(step: Step, who: &str) -> Step {
    Step { hold: Some(who.into()), ..step }
}

fn pieces(text: &str) -> Vec<Piece> {
    let marked = text.split_inclusive([']', '}']).flat_map(|part| {
        let inner = |close| part.trim_end_matches(close).rsplit_once(['[', '{']);
        if let (true, Some((words, number))) = (part.ends_with(']'), inner(']')) {
            [Piece::Words(words.into()), Piece::Number(number.into())].into()
        } else if let (true, Some((words, what))) = (part.ends_with('}'), inner('}')) {
            [Piece::Words(words.into()), Piece::Missing(what.into())].into()
        } else {
            vec![Piece::Words(part.into())]
        }
    });
    marked.collect()
}

fn kit() -> Vec<KitItem> {
    [
        ("outside micrometer 75 to 100 mm", "shafts"),
        ("bore gauge 50 to 100 mm and setting ring", "bores"),
        ("contact thermometer to 250 °C", "hub before it goes on"),
        ("oven or induction heater", ""),
        ("two dial indicators with bracket", "line-up"),
        ("shims 0.05 to 1.00 mm", "feet"),
        ("torque wrench to 200 N·m", "flange bolts"),
        ("coupling grease, 1.2 kg", "teeth"),
    ]
    .map(|(what, why)| KitItem { what: what.into(), why: why.into() })
    .into()
}

fn stages() -> Vec<StagePlan> {
    Stage::ALL.map(stage).into()
}

fn stage(stage: Stage) -> StagePlan {
    let told = |summary, numbers| told(stage, summary, numbers);
    match stage {
        Stage::Machines => told("Motor 90 kW drives a pump at 1480 rpm.", vec![torque()]),
        Stage::Coupling => {
            lacking(told("Gear coupling, sheet entered.", vec![]), &["grease quantity"])
        }
        Stage::Sizes => noted(
            lacking(
                told("Six of eight sizes are measured.", vec![]),
                &["key height, pump end", "depth of the key seat, pump end, at the middle"],
            ),
            "The bore gauge was set at 19 °C; sizes are brought to 20 °C.",
        ),
        Stage::Fit => {
            told("The motor hub is tight as asked; the largest shaft is too close to call.", fit())
        }
        Stage::Heat => lacking(
            told("Oven to 155 °C; 39 s in hand.", vec![seconds()]),
            &["oven temperature, pump hub"],
        ),
        Stage::Gap => lacking(told("The gap is not measured.", vec![gap()]), &["gap at 6 o’clock"]),
        Stage::Lineup => noted(
            told("Outside: the motor lies to 3 o’clock.", lineup()),
            "Soft foot was put right before the readings.",
        ),
        Stage::Closeup => told("Bolts in two stages, opposite ones first.", vec![bolts()]),
        Stage::Running => told("Not run yet.", vec![]),
        Stage::Removal => told("It comes off by puller and heat.", vec![pull()]),
    }
}

fn told(stage: Stage, summary: &str, numbers: Vec<Number>) -> StagePlan {
    StagePlan {
        stage,
        summary: summary.into(),
        numbers,
        missing: Vec::new(),
        notes: Vec::new(),
        begun: stage != Stage::Running,
    }
}

fn lacking(stage: StagePlan, what: &[&str]) -> StagePlan {
    let missing = what.iter().map(|&what| Missing { place: String::new(), what: what.into() });
    StagePlan { missing: missing.collect(), ..stage }
}

fn noted(stage: StagePlan, note: &str) -> StagePlan {
    StagePlan { notes: vec![note.into()], ..stage }
}

/// A number with its limits judged.
pub fn number(id: &str, label: &str, value: Value, limits: Option<Limits>) -> Number {
    Number {
        id: id.into(),
        label: label.into(),
        second: String::new(),
        value: Some(value),
        limits,
        verdict: limits.map(|limits| judge(&value, &limits)),
        settle: String::new(),
        working: None,
        key: true,
    }
}

fn of(kind: Kind, si: f64, plus_minus: f64) -> Value {
    Value { kind, si, plus_minus: Some(plus_minus) }
}

fn bare_value(kind: Kind, si: f64) -> Value {
    Value { kind, si, plus_minus: None }
}

fn torque() -> Number {
    let result = bare_value(Kind::Torque, 580.7);
    let working = Working::new(
        "Steady torque",
        "T = P/ω",
        result,
        Source::common_practice("power over speed"),
    )
    .term("P", "rated power", bare_value(Kind::Power, 90e3))
    .term("ω", "speed", bare_value(Kind::Speed, 154.985));
    Number {
        key: false,
        working: Some(working),
        ..number("machines.torque", "Steady torque", result, None)
    }
}

fn fit() -> Vec<Number> {
    let tight = of(Kind::Allowance, 34e-6, 4e-6);
    let working = Working::new(
        "Interference, motor hub",
        "u = √(s² + b²)\nδ = S − B",
        tight,
        Source::new("ISO 286-1:2010", "clause 3.2", Basis::Memory),
    )
    .term("S", "shaft, mean of six readings at 20 °C", of(Kind::Size, 80.039e-3, 3e-6))
    .term("B", "bore, mean of six readings at 20 °C", of(Kind::Size, 80.005e-3, 3e-6))
    .valid("both sizes at 20 °C; round within what was measured");
    let largest = of(Kind::Size, 80.050e-3, 4e-6);
    let limits = Limits::at_most(80.051e-3);
    vec![
        Number {
            working: Some(working),
            ..number(
                "fit.driver.interference",
                "Interference, motor hub",
                tight,
                Some(Limits::between(2e-6, 51e-6)),
            )
        },
        Number {
            second: "where the shaft is thickest".into(),
            settle: "Measure station 3 again across the key: half the ± would settle it.".into(),
            ..number("fit.driver.largest", "Largest shaft size", largest, Some(limits))
        },
        Number {
            key: false,
            ..number(
                "fit.driver.pressure",
                "Contact pressure",
                bare_value(Kind::Stress, 42.7e6),
                Some(Limits::at_most(120e6)),
            )
        },
    ]
}

fn seconds() -> Number {
    number(
        "heat.driver.seconds",
        "Seconds in hand, motor hub",
        bare_value(Kind::Time, 39.0),
        Some(Limits::at_least(20.0)),
    )
}

fn gap() -> Number {
    let unmeasured = number("gap.six", "Gap at 6 o’clock", bare_value(Kind::Gap, 0.0), None);
    Number {
        value: None,
        limits: Some(Limits::between(5.8e-3, 6.2e-3)),
        verdict: Some(Verdict::NotMeasured),
        settle: "Feelers at 6 o’clock, hubs pushed home.".into(),
        ..unmeasured
    }
}

fn lineup() -> Vec<Number> {
    let offset = Some(Limits::at_most(0.10e-3));
    let tilt = Some(Limits::at_most(0.80e-3));
    vec![
        Number {
            settle: "Read the rim dial once more; raise both feet as the sheet says.".into(),
            ..number(
                "lineup.vertical.offset",
                "Line-up, motor low",
                of(Kind::Offset, 0.102e-3, 0.009e-3),
                offset,
            )
        },
        Number {
            settle: "Push to 9 o’clock: rear 0.45, front 0.27 mm.".into(),
            ..number(
                "lineup.horizontal.offset",
                "Line-up, motor to 3 o’clock",
                of(Kind::Offset, 0.138e-3, 0.008e-3),
                offset,
            )
        },
        number(
            "lineup.vertical.tilt",
            "Tilt, rear end low",
            of(Kind::Slope, 0.37e-3, 0.10e-3),
            tilt,
        ),
        number(
            "lineup.horizontal.tilt",
            "Tilt, rear end to 3 o’clock",
            of(Kind::Slope, 0.41e-3, 0.09e-3),
            tilt,
        ),
    ]
}

fn bolts() -> Number {
    let result = bare_value(Kind::Torque, 110.0);
    let working = Working::new(
        "Tightening torque",
        "T = K·F·d",
        result,
        Source::common_practice("nut factor"),
    )
    .term("K", "nut factor, oiled", Value::number(0.15))
    .term("F", "preload", bare_value(Kind::Force, 45.8e3))
    .term("d", "bolt diameter", bare_value(Kind::Length, 0.016))
    .valid(
        "threads and nut face oiled; not for coated or locking nuts, whose maker states the torque",
    );
    Number {
        working: Some(working),
        ..number("closeup.torque", "Flange bolts, torque", result, None)
    }
}

fn pull() -> Number {
    Number {
        key: false,
        ..number("removal.driver.force", "Pull, motor hub", bare_value(Kind::Force, 186e3), None)
    }
}
