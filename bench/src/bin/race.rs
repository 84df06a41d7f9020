//! Times our side of every row and prints it as JSON with the inputs and what was found, so that
//! `race.py` can do the same with numpy and scipy, compare, and time that.

use std::hint::black_box;
use std::time::Instant;

use bench::chances::{FEET_M, SPREADS, TRIALS, chance, line_ups};
use bench::trains::{LIMITS, MOST, lined_up, trains};
use bench::work::{self, circle, missed, placed, torque_held, window};
use bench::{asked, heat, hubs, pairs, sweeps, thicknesses};
use serde::Serialize;
use serde_json::{Value, json};
use thermal::{Effort, InHand, ThermalError};

/// The allocator of the program itself.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Each row is timed so often; the best counts, on both sides.
const TIMES: usize = 7;

fn main() {
    let steel = work::steel();
    let rows = [
        row("torque held by hubs of two slices, running", &hubs(10_000), |hub| {
            torque_held(hub, steel)
        }),
        row("windows of interference", &hubs(200), |hub| window(hub, steel)),
        row("circles through sweeps of eight readings", &sweeps(10_000), circle),
        row("positions from two rims, eight readings each", &pairs(1_000), placed),
        row("shim packs, eleven sizes, five at most", &thicknesses(20), |wanted| missed(*wanted)),
        row("trains of five machines, whole shims", &trains(3), lined_up),
        row("chances, a million trials of a line-up", &line_ups(4), chance),
    ];
    let elastic = steel.elastic;
    let given = json!({
        "young": elastic.young.value,
        "poisson": elastic.poisson,
        "density": steel.density.value,
        "friction": work::FRICTION,
        "allowed": work::ALLOWED_PA,
        "planes": work::PLANES_M,
        "stock": work::stock(),
        "most": MOST,
        "limits": LIMITS,
        "division": work::DIVISION_M,
        "spreads": SPREADS,
        "feet": FEET_M,
        "trials": TRIALS,
        "times": TIMES,
    });
    let run = json!({ "given": given, "rows": rows, "alone": alone(), "heat": hot() });
    println!("{run}");
}

/// Rows that no library stands beside: what, how many, seconds for all.
fn alone() -> Vec<Value> {
    let lines: Vec<String> = hubs(10_000).iter().map(asked::line).collect();
    let mut rows = vec![
        timed("press fits as lines of JSON, with working", &lines, |line| asked::answered(line)),
        timed("press fits as lines of JSON, bare", &lines, |line| asked::bare(line)),
    ];
    for (name, text) in asked::JOBS {
        let jobs: Vec<_> = asked::job(text).into_iter().collect();
        rows.push(timed(&format!("sizes, fit and keys of a plan: {name}"), &jobs, |job| {
            Some(asked::fitted(job))
        }));
        rows.push(timed(&format!("plan without flow of heat: {name}"), &jobs, |job| {
            Some(asked::planned(job))
        }));
    }
    rows
}

fn timed<In, Out>(what: &str, inputs: &[In], work: impl Fn(&In) -> Option<Out>) -> Value {
    let all = || inputs.iter().map(|input| work(black_box(input))).collect::<Vec<_>>();
    let answered = all().iter().flatten().count();
    json!({ "what": what, "cases": answered, "seconds": best(TIMES, all) })
}

/// Hot hubs at each effort with their bounds, and a large one.
fn hot() -> Vec<Value> {
    let mut rows = Vec::new();
    for hot in &heat::ORDINARY {
        for effort in [Effort::Quick, Effort::Usual, Effort::Fine] {
            rows.extend(in_hand(hot, effort, TIMES, heat::bounded));
        }
    }
    rows.extend(large(&heat::LARGE));
    rows
}

/// A large hub in steps of one length, which the other side takes too.
fn large(hot: &heat::Hot) -> Option<Value> {
    let expected = heat::in_hand(hot, Effort::Usual).ok()?.contact.likely.value;
    let (found, stride) = heat::in_strides(hot, expected).ok()?;
    Some(json!({
        "what": format!("{}, {} even steps", hot.name, heat::STRIDES),
        "hub": hot.name,
        "case": heat::told(hot),
        "contact": found.contact.likely.value,
        "nodes": found.nodes,
        "steps": found.steps,
        "stride": stride,
        "seconds": best(2, || heat::in_strides(hot, expected)),
    }))
}

fn in_hand(
    hot: &heat::Hot,
    effort: Effort,
    times: usize,
    work: fn(&heat::Hot, Effort) -> Result<InHand, ThermalError>,
) -> Option<Value> {
    let found = work(hot, effort).ok()?;
    Some(json!({
        "what": format!("{}, {effort:?}", hot.name),
        "hub": hot.name,
        "case": heat::told(hot),
        "contact": found.contact.likely.value,
        "nodes": found.nodes,
        "steps": found.steps,
        "seconds": best(times, || work(hot, effort)),
    }))
}

fn row<In: Serialize, Out: Serialize>(
    what: &str,
    inputs: &[In],
    work: impl Fn(&In) -> Option<Out>,
) -> Value {
    let all =
        || -> Vec<Option<Out>> { inputs.iter().map(|input| work(black_box(input))).collect() };
    json!({ "what": what, "inputs": inputs, "found": all(), "seconds": best(TIMES, all) })
}

fn best<T>(times: usize, work: impl Fn() -> T) -> f64 {
    (0..times).map(|_| seconds(&work)).fold(f64::INFINITY, f64::min)
}

#[expect(clippy::disallowed_methods, reason = "timing is what this program is for")]
fn seconds<T>(work: impl Fn() -> T) -> f64 {
    let start = Instant::now();
    black_box(work());
    start.elapsed().as_secs_f64()
}
