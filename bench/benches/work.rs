//! Our side of every row of `bench/run`, one at a time, with its spread.

use bench::work::{circle, missed, placed, steel, torque_held, window};
use bench::{hubs, pairs, sweeps, thicknesses};
use divan::Bencher;

fn main() {
    divan::main();
}

#[divan::bench]
fn torque_held_by_a_hub(bencher: Bencher) {
    let (hubs, steel) = (hubs(1), steel());
    bencher.bench(|| torque_held(divan::black_box(&hubs[0]), steel));
}

#[divan::bench]
fn window_of_interference(bencher: Bencher) {
    let (hubs, steel) = (hubs(1), steel());
    bencher.bench(|| window(divan::black_box(&hubs[0]), steel));
}

#[divan::bench]
fn circle_through_a_sweep(bencher: Bencher) {
    let sweeps = sweeps(1);
    bencher.bench(|| circle(divan::black_box(&sweeps[0])));
}

#[divan::bench]
fn position_from_two_rims(bencher: Bencher) {
    let pairs = pairs(1);
    bencher.bench(|| placed(divan::black_box(&pairs[0])));
}

#[divan::bench]
fn shim_pack(bencher: Bencher) {
    let wanted = thicknesses(1);
    bencher.bench(|| missed(divan::black_box(wanted[0])));
}
