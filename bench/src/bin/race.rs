//! Times our side of every row and prints it as JSON with the inputs and what was found, so that
//! `race.py` can do the same with numpy and scipy, compare, and time that.

use std::hint::black_box;
use std::time::Instant;

use bench::work::{self, circle, missed, placed, torque_held, window};
use bench::{hubs, pairs, sweeps, thicknesses};
use serde::Serialize;
use serde_json::{Value, json};

/// Each row is timed so often; the best counts, on both sides.
const TIMES: usize = 7;

fn main() {
    let steel = work::steel();
    let rows = [
        row("torque held by hubs of two slices, running", &hubs(10_000), |hub| {
            torque_held(hub, steel)
        }),
        row("windows of interference", &hubs(200), |hub| window(hub, steel)),
        row("circles through sweeps of eight readings", &sweeps(2_000), circle),
        row("positions from two rims, eight readings each", &pairs(1_000), placed),
        row("shim packs, eleven sizes, five at most", &thicknesses(20), |wanted| missed(*wanted)),
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
        "times": TIMES,
    });
    println!("{}", json!({ "given": given, "rows": rows }));
}

fn row<In: Serialize, Out: Serialize>(
    what: &str,
    inputs: &[In],
    work: impl Fn(&In) -> Option<Out>,
) -> Value {
    let all =
        || -> Vec<Option<Out>> { inputs.iter().map(|input| work(black_box(input))).collect() };
    let times = (0..TIMES).map(|_| seconds(all));
    let best = times.fold(f64::INFINITY, f64::min);
    json!({ "what": what, "inputs": inputs, "found": all(), "seconds": best })
}

#[expect(clippy::disallowed_methods, reason = "timing is what this program is for")]
fn seconds<T>(work: impl Fn() -> T) -> f64 {
    let start = Instant::now();
    black_box(work());
    start.elapsed().as_secs_f64()
}
