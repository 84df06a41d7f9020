//! Our side of every row of `bench/run`, one at a time, with its spread.

use bench::work::{circle, missed, placed, steel, torque_held, window};
use bench::{asked, heat, hubs, pairs, sweeps, thicknesses};
use divan::Bencher;
use thermal::Effort;

/// The allocator of the program itself.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

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

#[divan::bench(args = asked::JOBS.map(|(name, _)| name))]
fn sizes_fit_and_keys_of_a_plan(bencher: Bencher, name: &str) {
    let text = asked::JOBS.iter().find(|(of, _)| *of == name).map(|(_, text)| text);
    if let Some(job) = text.and_then(|text| asked::job(text)) {
        bencher.bench(|| asked::fitted(divan::black_box(&job)));
    }
}

#[divan::bench]
fn press_fit_as_a_line_of_json(bencher: Bencher) {
    let line = asked::line(&hubs(1)[0]);
    bencher.bench(|| asked::answered(divan::black_box(&line)));
}

#[divan::bench(sample_count = 2)]
fn large_hub_in_even_steps(bencher: Bencher) {
    let hot = &heat::LARGE;
    let expected = heat::in_hand(hot, Effort::Usual).map(|found| found.contact.likely.value);
    if let Ok(expected) = expected {
        bencher.bench(|| heat::in_strides(divan::black_box(hot), expected));
    }
}
