//! Drawings to scale and curves, as SVG
