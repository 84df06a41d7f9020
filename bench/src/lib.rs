//! Benchmarks live under benches/.
