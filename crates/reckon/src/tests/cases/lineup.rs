//! Dials, positions, growth, feet, moves, levels.

use super::Case;

const BLOCH_GEITNER: &str = "Bloch and Geitner, Machinery Component Maintenance and Repair";
const MCMILLAN: &str =
    "McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment";
const FIST_4_1A: &str = "US Bureau of Reclamation, FIST 4-1A";
const GEOMETRY: &str =
    "by hand: a truth was chosen, readings made of it by geometry, moves taken from the truth";
const WORKSHOP: &str =
    "training sheet on thermal growth, turbine and compressor (inputs); results by hand";

pub(super) const CASES: &[Case] = &[
    // A bar that sags 3 mil: 16 at the bottom and 8 at the sides when corrected, so 8 mil of offset;
    // the touched shaft is low, which is − here.
    Case {
        name: "dial-sweep",
        source: "handbook text on centrifugal pumps, alignment, figure 19",
        inputs: &[("readings", "0; 5; 10; 5 mil"), ("sag", "3 mil"), ("division", "0.1 mil")],
        wants: &[
            ("up", "-8.0 mil"),
            ("right", "0.0 mil"),
            ("indicator_reading", "10.0 mil"),
            ("spare", "1"),
        ],
    },
    // u = 1 mm by a division of √12 mm: var a 0.98985, var b 0.25, var c 0.42422, cov −0.52774.
    Case {
        name: "dial-sweep",
        source: "inverse of the normal matrix over 9 to 3 o’clock, worked apart to 12 digits",
        inputs: &[
            ("readings", "0; -0.116244; -0.163827; -0.13; -0.023827; 0.126244; 0.28 mm"),
            ("positions", "9; 10; 11; 12; 1; 2; 3"),
            ("sag", "0.04 mm"),
            ("division", "3.4641016151377544 mm"),
        ],
        wants: &[
            ("u_cosine", "0.9949108 mm"),
            ("u_sine", "0.5000000 mm"),
            ("u_constant", "0.6513220 mm"),
            ("correlation", "-0.814400"),
            ("up", "-0.31000 mm"),
            ("right", "0.14000 mm"),
        ],
    },
    // Readings only; the four do not close: 0 + 2.92 − 1.78 − 1.32.
    Case {
        name: "dial-check",
        source: "student exercise on a pump set: readings that do not close",
        inputs: &[("readings", "0; 1.78; 2.92; 1.32 mm")],
        wants: &[("closure", "-0.180 mm"), ("verdict", "outside")],
    },
    // N 0.347, E 0.354, S 0.359, W 0.3525 in: 0.706 against 0.7065.
    Case {
        name: "dial-check",
        source: "US Bureau of Reclamation, FIST 2-1 (2000), figure 16, shaft at 0°",
        inputs: &[
            ("readings", "0.347; 0.354; 0.359; 0.3525 in"),
            ("limit", "0.002 in"),
            ("division", "0.0005 in"),
            ("returned", "0.347 in"),
            ("zero", "12"),
        ],
        wants: &[("closure", "-0.0005 in"), ("verdict", "inside")],
    },
    // A wrong sign at the bottom: 0.40 for −0.40 closes.
    Case {
        name: "dial-check",
        source: "by hand: 0 − 0.40 − 0.30 − 0.10 does not close, 0 + 0.40 − 0.30 − 0.10 does",
        inputs: &[("readings", "0; 0.30; -0.40; 0.10 mm"), ("zero", "12"), ("returned", "0.01 mm")],
        wants: &[("slips", "sign at 6"), ("return_to_zero", "0.010 mm"), ("verdict", "outside")],
    },
    // Each of eight even readings holds 3/8 of its own fit: 0.10 mm off shows 0.0625.
    Case {
        name: "dial-check",
        source: "by hand: 0.2·cos t, the reading at 4:30 off by 0.10 mm",
        inputs: &[
            ("readings", "0.20; 0.1414; 0; -0.0414; -0.20; -0.1414; 0; 0.1414 mm"),
            ("positions", "12; 1:30; 3; 4:30; 6; 7:30; 9; 10:30"),
        ],
        wants: &[("odd", "4:30, off by 0.06 mm (2.5 mil)")],
    },
    Case {
        name: "dial-check",
        source: "by hand: two readings 0.01 mm apart have a standard deviation of 0.01/√2",
        inputs: &[("readings", "0.20; 0; -0.20; 0; 0.21 mm"), ("positions", "12; 3; 6; 9; 12")],
        wants: &[("repeatability", "0.0071 mm")],
    },
    Case {
        name: "dial-rezero",
        source: "Piotrowski, Shaft Alignment Handbook, ch. 8, figure 8.10",
        inputs: &[("readings", "0; -50; -40; 10 mil"), ("at", "3")],
        wants: &[("readings", "50 mil; 0 mil; 10 mil; 60 mil"), ("positions", "12; 3; 6; 9")],
    },
    // p. 212: −0.010 and 0.004 in: half the difference is −0.007 in.
    Case {
        name: "face-dials-apart",
        source: BLOCH_GEITNER,
        inputs: &[
            ("first", "0; -0.010 in"),
            ("first_positions", "12; 6"),
            ("second", "0; 0.004 in"),
            ("second_positions", "6; 12"),
            ("swing", "8 in"),
        ],
        wants: &[("readings", "0.000 in; -0.007 in"), ("positions", "12; 6")],
    },
    // p. 186: a sag of 0.004 in, and 0.008 in on the bottom reading.
    Case {
        name: "mandrel-sag",
        source: BLOCH_GEITNER,
        inputs: &[("bottom", "-0.008 in")],
        wants: &[("sag", "0.004 in"), ("add_at_bottom", "0.008 in")],
    },
    // pp. 187 to 188: what the face dial shows when the bracket is pushed up, sign changed.
    Case {
        name: "mandrel-sag",
        source: BLOCH_GEITNER,
        inputs: &[("bottom", "0.002 in"), ("dial", "face")],
        wants: &[("add_at_bottom", "-0.002 in")],
    },
    Case {
        name: "bar-sag",
        source: "by hand: W·L³/(3·E·I) + w·L⁴/(8·E·I), a rod of 12 mm",
        inputs: &[
            ("outside", "12 mm"),
            ("overhang", "250 mm"),
            ("end_mass", "0.15 kg"),
            ("density", "7850 kg/m3"),
            ("young", "207 GPa"),
        ],
        wants: &[("sag", "0.056538 mm"), ("bottom", "-0.113077 mm")],
    },
    Case {
        name: "bar-sag",
        source: "by hand: the same of a tube of 25 by 21 mm",
        inputs: &[
            ("outside", "25 mm"),
            ("inside", "21 mm"),
            ("overhang", "400 mm"),
            ("end_mass", "0.15 kg"),
            ("density", "7850 kg/m3"),
            ("young", "207 GPa"),
        ],
        wants: &[("sag", "0.033608 mm")],
    },
    // d = −0.18 + 0.00065·x up, 0.12 − 0.0004·x right; the driver stays at x = 0.
    Case {
        name: "reverse-rim",
        source: GEOMETRY,
        inputs: &[
            ("moving", "driven"),
            ("on_driven", "0; 0.174; 0.204; 0.030 mm"),
            ("at_driven", "120 mm"),
            ("on_driver", "0; -0.30; -0.36; -0.06 mm"),
            ("at_driver", "0 mm"),
            ("feet", "310; 760 mm"),
        ],
        wants: &[
            ("offset_up", "-0.1800 mm"),
            ("offset_right", "0.1200 mm"),
            ("slope_up", "0.650 mm/m"),
            ("slope_right", "-0.400 mm/m"),
            ("move_up", "-0.0215 mm; -0.3140 mm"),
            ("move_right", "0.0040 mm; 0.1840 mm"),
            ("spare", "0"),
        ],
    },
    // Ten times as far out, the first dial booked from the other end; a straightedge disagrees.
    Case {
        name: "reverse-rim",
        source: GEOMETRY,
        inputs: &[
            ("moving", "driven"),
            ("on_driven", "0; 0.30; 2.04; 1.74 mm"),
            ("at_driven", "120 mm"),
            ("on_driver", "0; -3.0; -3.6; -0.6 mm"),
            ("at_driver", "0 mm"),
            ("straightedge_at", "120 mm"),
            ("straightedge_up", "-1.0 mm"),
            ("straightedge_right", "0.7 mm"),
        ],
        wants: &[("suspects", "dial 1: 3 and 9 for each other"), ("spare", "2")],
    },
    // The same in mils and inches with two brackets that sag.
    Case {
        name: "reverse-rim",
        source: GEOMETRY,
        inputs: &[
            ("moving", "driven"),
            ("on_driven", "0; -7.44; -12.4; -4.96 mil"),
            ("at_driven", "8 in"),
            ("on_driver", "0; 7.5; 9.0; 1.5 mil"),
            ("at_driver", "0 in"),
            ("sag_on_driven", "2.5 mil"),
            ("sag_on_driver", "2.0 mil"),
            ("feet", "20; 44 in"),
        ],
        wants: &[
            ("offset_up", "6.500 mil"),
            ("offset_right", "-3.000 mil"),
            ("slope_up", "-0.3500 mil/in"),
            ("slope_right", "0.2200 mil/in"),
            ("move_up", "0.500 mil; 8.900 mil"),
            ("move_right", "-1.400 mil; -6.680 mil"),
        ],
    },
    // d = 0.220 − 0.0008·x up, −0.090 + 0.0005·x right; both dials on the driver, rim at 15 mm.
    Case {
        name: "rim-and-face",
        source: GEOMETRY,
        inputs: &[
            ("moving", "driven"),
            ("carried_by", "driver"),
            ("rim", "0; -0.119258; -0.2905; -0.413415; -0.416; -0.296742; -0.1255; -0.002585 mm"),
            ("at", "15 mm"),
            ("face", "0; 0.058787; 0.13; 0.171924; 0.16; 0.101213; 0.03; -0.011924 mm"),
            ("swing", "200 mm"),
            ("positions", "12; 1:30; 3; 4:30; 6; 7:30; 9; 10:30"),
            ("reference", "15 mm"),
            ("feet", "260; 690 mm"),
        ],
        wants: &[
            ("offset_up", "0.2080 mm"),
            ("offset_right", "-0.0825 mm"),
            ("slope_up", "-0.800 mm/m"),
            ("slope_right", "0.500 mm/m"),
            ("move_up", "-0.0120 mm; 0.3320 mm"),
            ("move_right", "-0.0400 mm; -0.2550 mm"),
        ],
    },
    Case {
        name: "faces-across-spacer",
        source: GEOMETRY,
        inputs: &[
            ("moving", "driven"),
            ("on_driver_end", "0; 0.084; 0.072; -0.012 mm"),
            ("driver_plane", "0 mm"),
            ("driver_swing", "240 mm"),
            ("on_driven_end", "0; 0.204; 0.288; 0.084 mm"),
            ("driven_plane", "500 mm"),
            ("driven_swing", "240 mm"),
            ("reference", "500 mm"),
            ("feet", "720; 1340 mm"),
        ],
        wants: &[
            ("driver_angle_up", "-0.300 mm/m"),
            ("driven_angle_up", "-1.200 mm/m"),
            ("driver_angle_right", "0.400 mm/m"),
            ("driven_angle_right", "0.500 mm/m"),
            ("offset_up", "-0.1500 mm"),
            ("slope_up", "-1.500 mm/m"),
            ("move_up", "0.4800 mm; 1.4100 mm"),
            ("move_right", "-0.3980 mm; -0.9560 mm"),
        ],
    },
    // pp. 198 to 199: the bottom gap wide by 0.007 in, the machine high by 0.0055 in; the ratios of
    // distances to diameter, 9/4 and 39/4, are inferred from the printed products, which are rounded.
    Case {
        name: "position",
        source: BLOCH_GEITNER,
        inputs: &[
            ("moving", "driven"),
            ("offsets_up", "0.0055 ± 0.0005 in"),
            ("offsets_right", "0 ± 0.0005 in"),
            ("at", "0 in"),
            ("gaps_up", "-0.007 ± 0.0005 in"),
            ("gaps_right", "0 ± 0.0005 in"),
            ("gap_diameter", "4 in"),
            ("feet", "9; 39 in"),
        ],
        wants: &[("move_up", "-0.0212 ± 0.0001 in; -0.0738 ± 0.0001 in")],
    },
    Case {
        name: "position",
        source: "by hand: two offsets 100 mm apart and the slope between them, which agree",
        inputs: &[
            ("moving", "driver"),
            ("offsets_up", "0.10 ± 0.02 mm; 0.15 ± 0.02 mm"),
            ("offsets_right", "0 ± 0.02 mm; 0 ± 0.02 mm"),
            ("at", "0; 100 mm"),
            ("slopes_up", "0.5 ± 0.1 mm/m"),
            ("slopes_right", "0 ± 0.1 mm/m"),
        ],
        wants: &[
            ("offset_up", "0.1000 mm"),
            ("slope_up", "0.500 mm/m"),
            ("spare", "2"),
            ("chi_squared", "0.000"),
        ],
    },
    // Example 8-3 prints 2.99 (cut off) and 8.3 mil.
    Case {
        name: "support-growth",
        source: MCMILLAN,
        inputs: &[("height", "22 in"), ("rise", "60 degF"), ("expansion", "6.3 µin/in/degF")],
        wants: &[("growth", "8.3 mil")],
    },
    Case {
        name: "support-growth",
        source: MCMILLAN,
        inputs: &[("height", "17 in"), ("rise", "28 degF")],
        wants: &[("growth", "2.99 ± 0.01 mil")],
    },
    // Compressor feet at −32 and −80 in, turbine feet at 56 and 116 in.
    Case {
        name: "cold-target",
        source: WORKSHOP,
        inputs: &[
            ("fixed_at", "-32; -80 in"),
            ("fixed_growth", "24; 19 mil"),
            ("moving_at", "56; 116 in"),
            ("moving_growth", "21; 62 mil"),
            ("wanted_at", "0; 24; 56; 116 in"),
        ],
        wants: &[
            ("target", "44.600 mil; 30.700 mil; 12.167 mil; -22.583 mil"),
            ("slope", "-0.57917 mil/in"),
        ],
    },
    // Figure 9-10: 5 and 2 mil above; readings 10 and −4 mil.
    Case {
        name: "line-drift",
        source: "by hand: 0.10 mm in two years, 0.20 in four; 0.06 mm more is 1.2 years",
        inputs: &[
            ("years", "2; 4"),
            ("changes", "-0.10 ± 0.02 mm; -0.20 ± 0.02 mm"),
            ("now", "-0.04 mm"),
            ("limit", "0.10 mm"),
        ],
        wants: &[("per_year", "-0.0500 mm"), ("years_left", "1.200")],
    },
    Case {
        name: "target-readings",
        source: MCMILLAN,
        inputs: &[
            ("moving", "driven"),
            ("target_at", "0; 10 in"),
            ("target_up", "5; 2 mil"),
            ("carried_by", "driven"),
            ("at", "0 in"),
            ("positions", "6"),
        ],
        wants: &[("readings", "10.00 mil")],
    },
    Case {
        name: "target-readings",
        source: MCMILLAN,
        inputs: &[
            ("moving", "driven"),
            ("target_at", "0; 10 in"),
            ("target_up", "5; 2 mil"),
            ("carried_by", "driver"),
            ("at", "10 in"),
            ("positions", "12; 6"),
        ],
        wants: &[("readings", "0.00 mil; -4.00 mil")],
    },
    Case {
        name: "short-levels",
        source: "by hand from the rule of our own: 102/1750, 193/1900, 0.08 + 600/1500, 0.10 + 900/1500",
        inputs: &[("speed", "1500 rpm")],
        wants: &[
            ("offset_aim", "0.0583 mm"),
            ("offset_limit", "0.1016 mm"),
            ("slope_aim", "0.480 mm/m"),
            ("slope_limit", "0.700 mm/m"),
        ],
    },
    Case {
        name: "spacer-levels",
        source: "by hand from the rule of our own: 1100/3000 and 1850/3000",
        inputs: &[("speed", "3000 rpm")],
        wants: &[("slope_aim", "0.3667 mm/m"), ("slope_limit", "0.6167 mm/m")],
    },
    Case {
        name: "line-up-verdict",
        source: "by hand: 0.08 of 0.10 mm, 0.30 of 0.50 mm/m; ± 0.01 mm reaches past 0.10 at the other",
        inputs: &[
            ("offset_up", "0.08 ± 0.01 mm"),
            ("offset_right", "-0.095 ± 0.01 mm"),
            ("slope_up", "0.30 ± 0.05 mm/m"),
            ("slope_right", "0.10 ± 0.05 mm/m"),
            ("offset_limit", "0.10 mm"),
            ("slope_limit", "0.50 mm/m"),
        ],
        wants: &[
            ("verdict", "too close to call"),
            (
                "each",
                "offset upwards: inside; slope upwards: inside; offset sideways: too close to call; slope sideways: inside",
            ),
            ("worst_ratio", "0.950"),
            ("likely", "84.13 %"),
        ],
    },
    Case {
        name: "line-up-verdict",
        source: "by hand from the levels at 1500 rpm",
        inputs: &[
            ("offset_up", "0.08 ± 0.01 mm"),
            ("offset_right", "0.02 ± 0.01 mm"),
            ("slope_up", "0.30 ± 0.05 mm/m"),
            ("slope_right", "0.10 ± 0.05 mm/m"),
            ("speed", "1500 rpm"),
        ],
        wants: &[
            ("verdict", "inside"),
            (
                "aims",
                "offset upwards: outside; slope upwards: inside; offset sideways: inside; slope sideways: inside",
            ),
        ],
    },
    Case {
        name: "pipe-strain",
        source: "API RP 686, 2nd ed., by a summary: 0.05 mm in each direction",
        inputs: &[("up", "0.03 ± 0.01 mm"), ("right", "-0.07 ± 0.01 mm")],
        wants: &[("verdict", "outside"), ("limit", "0.050 mm")],
    },
    Case {
        name: "flange-parallelism",
        source: "API RP 686, 2nd ed., by a summary: 0.01 mm a centimetre",
        inputs: &[("outside", "400 mm")],
        wants: &[("most", "0.400 mm")],
    },
    Case {
        name: "soft-foot",
        source: "by hand: even gaps of 0.20 mm want a shim of 0.20 mm",
        inputs: &[("rise", "0.20 ± 0.02 mm"), ("gaps", "0.20; 0.20; 0.20; 0.20 mm")],
        wants: &[("verdict", "outside"), ("kind", "parallel: shim it"), ("shim", "0.200 mm")],
    },
    Case {
        name: "soft-foot",
        source: "by hand: gaps that run from 0.05 to 0.25 mm are filled by steps",
        inputs: &[
            ("rise", "0.25 ± 0.02 mm"),
            ("gaps", "0.05; 0.05; 0.25; 0.25 mm"),
            ("rise_free", "0.24 mm"),
        ],
        wants: &[
            ("kind", "angled: step shims, or machine it"),
            ("shim", "0.050 mm"),
            ("steps", "0.000 mm; 0.000 mm; 0.200 mm; 0.200 mm"),
        ],
    },
    // p. 17: 0.005 against 0.002 in.
    Case {
        name: "highest-foot",
        source: FIST_4_1A,
        inputs: &[("rises", "0.005; 0.002; 0.002; 0.002 in")],
        wants: &[("foot", "1"), ("shim", "0.003 in")],
    },
    Case {
        name: "foot-twist",
        source: "by hand: 0.10 + 0.06 − 0.02 − 0.02",
        inputs: &[("gaps", "0.10 ± 0.01 mm; 0.02 ± 0.01 mm; 0.06 ± 0.01 mm; 0.02 ± 0.01 mm")],
        wants: &[("twist", "0.120 mm"), ("shim", "0.120 mm")],
    },
    // One corner of a rectangle up by t leaves a quarter of t at each, in turn up and down.
    Case {
        name: "feet-out-of-plane",
        source: "by hand: 0.12/4 at each corner of a rectangle",
        inputs: &[
            ("x", "0; 0; 800; 800 mm"),
            ("z", "0; 500; 500; 0 mm"),
            ("gaps", "0.12; 0; 0; 0 mm"),
        ],
        wants: &[("out", "0.0300 mm; -0.0300 mm; 0.0300 mm; -0.0300 mm")],
    },
    Case {
        name: "shim-pack",
        source: "by hand: 1.0 + 0.25 mm is all of 1.25",
        inputs: &[("wanted", "1.25 mm")],
        wants: &[
            ("total", "1.2500 mm"),
            ("deviation", "0.0000 mm"),
            ("pack", "1.000 mm; 0.250 mm"),
        ],
    },
    // 0.30 of 0.20 and 0.12: 0.32 by two is nearer than 0.24; 0.36 by three is no nearer.
    Case {
        name: "shim-pack",
        source: "by hand: every sum of two sizes",
        inputs: &[("wanted", "0.30 mm"), ("stock", "0.20; 0.12 mm"), ("most", "3")],
        wants: &[("total", "0.3200 mm"), ("deviation", "0.0200 mm")],
    },
    Case {
        name: "shim-repack",
        source: "by hand: 1.0 and 0.5 lie there, 1.2 is wanted: 0.5 out, 0.2 in",
        inputs: &[("there", "1.0; 0.5 mm"), ("wanted", "1.2 mm")],
        wants: &[("total", "1.2000 mm"), ("take_out", "0.500 mm"), ("put_in", "0.200 mm")],
    },
    // 2.0 mm lie there: 1.0, 1.2 and 1.4 mm anew, as they are, or 0.2 mm on top.
    Case {
        name: "whole-moves",
        source: "by hand: every sum of three of 0.2 and 1.0 mm",
        inputs: &[
            ("there", "2 mm"),
            ("stock", "0.2; 1.0 mm"),
            ("most", "3"),
            ("low", "-1 mm"),
            ("high", "0.3 mm"),
        ],
        wants: &[("moves", "-1.000 mm; -0.800 mm; -0.600 mm; 0.000 mm; 0.200 mm")],
    },
    // 1.0 and 0.5 mm lie there: either out, both out, or 0.2 mm with them.
    Case {
        name: "whole-moves",
        source: "by hand: shims that lie there stay or go, one more joins them",
        inputs: &[
            ("pack", "1.0; 0.5 mm"),
            ("stock", "0.2 mm"),
            ("most", "3"),
            ("low", "-1.5 mm"),
            ("high", "0.3 mm"),
        ],
        wants: &[(
            "moves",
            "-1.5 mm; -1.3 mm; -1.1 mm; -1.0 mm; -0.9 mm; -0.8 mm; -0.6 mm; -0.5 mm; -0.3 mm; \
             -0.1 mm; 0.0 mm; 0.2 mm",
        )],
    },
    // p. 17: at least 0.125 in.
    Case {
        name: "first-pack",
        source: FIST_4_1A,
        inputs: &[("power", "100 hp")],
        wants: &[("pack", "0.125 in")],
    },
    // p. 203: 0.012 and 0.007 in at planes 14 in apart; feet 12 in and 38 in beyond.
    Case {
        name: "foot-moves",
        source: BLOCH_GEITNER,
        inputs: &[("at", "0; 14 in"), ("up", "0.012; 0.007 in"), ("feet", "26; 52 in")],
        wants: &[("move_up", "-0.0027 in; 0.0066 in")],
    },
    // Graph of figure 8-13, read to half a mil: 0.5 and −5.5 mil at 18 and 48 in.
    Case {
        name: "foot-moves",
        source: MCMILLAN,
        inputs: &[("at", "0; 10 in"), ("up", "4; 2 mil"), ("feet", "18; 48 in")],
        wants: &[
            ("move_up", "-0.5 ± 0.15 mil; 5.5 ± 0.15 mil"),
            ("dial_on_top", "-0.5 ± 0.15 mil; 5.5 ± 0.15 mil"),
        ],
    },
    // Down by 0.20 with 0.15 mm of shims, 0.10 to the left with 0.06 mm of room.
    Case {
        name: "foot-moves",
        source: "by hand: 0.20 − 0.15 and 0.10 − 0.06 beyond",
        inputs: &[
            ("at", "0; 100 mm"),
            ("up", "0.20; 0.20 mm"),
            ("right", "0.10; 0.10 mm"),
            ("target_at", "0; 100 mm"),
            ("target_up", "0; 0 mm"),
            ("feet", "300; 700 mm"),
            ("shims", "1; 0.15 mm"),
            ("room_right", "1; 1 mm"),
            ("room_left", "0.06; 1 mm"),
        ],
        wants: &[
            ("move_up", "-0.2000 mm; -0.2000 mm"),
            ("move_right", "-0.1000 mm; -0.1000 mm"),
            (
                "bound",
                "plane 1: bolt-bound by 0.04 mm (1.6 mil); plane 2: base-bound by 0.05 mm (2.0 mil)",
            ),
            ("dial_from_right", "-0.100 mm; -0.100 mm"),
        ],
    },
    // The rear comes down by its 0.15 mm; the rest is shared so that the ratios' squares are least:
    // (u/0.05)² + (v/0.5)² with u + 0.7·v = 0.05 (mm, mm/m) is least at v = 0.7·λ·0.25, u = λ·0.0025.
    Case {
        name: "best-move",
        source: "by hand: the nearest point of a line in an ellipse’s measure",
        inputs: &[
            ("moving", "driven"),
            ("at", "0; 100 mm"),
            ("up", "0.20; 0.20 mm"),
            ("feet", "300; 700 mm"),
            ("shims", "1; 0.15 mm"),
            ("offset_limit", "0.05 mm"),
            ("slope_limit", "0.5 mm/m"),
        ],
        wants: &[
            ("move_up", "-0.1780 mm; -0.1500 mm"),
            ("left_offset_up", "0.0010 mm"),
            ("left_slope_up", "0.0700 mm/m"),
            ("worst_ratio", "0.140"),
            ("obstacles", "plane 2: 0.05 mm (2.0 mil) more room down is wanted"),
        ],
    },
    // Options four and five: 0.015 and 0.035 in down, no shims, 0.050 in wanted.
    Case {
        name: "raise-fixed",
        source: "Harlon, A Millwright’s Guide to Motor/Pump Alignment, 2nd ed.",
        inputs: &[("move_up", "-0.015 in"), ("shims", "0 in"), ("least_pack", "0.050 in")],
        wants: &[("raise", "0.065 in")],
    },
    Case {
        name: "raise-fixed",
        source: "Harlon, A Millwright’s Guide to Motor/Pump Alignment, 2nd ed.",
        inputs: &[("move_up", "-0.035 in"), ("shims", "0 in"), ("least_pack", "0.050 in")],
        wants: &[("raise", "0.085 in")],
    },
    // pp. 224 to 225: 0.015 in wants 0.011 in; the ratio of height to spread, 0.6818, is inferred.
    Case {
        name: "tilt-shims",
        source: BLOCH_GEITNER,
        inputs: &[("shift", "0.015 in"), ("shaft_height", "15 in"), ("foot_width", "22 in")],
        wants: &[("shims", "0.011 in")],
    },
    // 1 mm/m too much on a circle of 400 mm: 0.2 mm to each side of the middle.
    Case {
        name: "flange-shims",
        source: "by hand: 0.2·(1 − cos t)",
        inputs: &[
            ("moving", "driver"),
            ("at", "0; 100 mm"),
            ("up", "0; 0.1 mm"),
            ("seat", "0 mm"),
            ("bolt_circle", "400 mm"),
            ("bolts", "4"),
        ],
        wants: &[
            ("shims", "0.000 mm; 0.200 mm; 0.400 mm; 0.200 mm"),
            ("bolts_at", "12; 3; 6; 9"),
            ("shift_up", "0.000 mm"),
        ],
    },
    Case {
        name: "common-line",
        source: "by hand: the motor rises 0.20 and goes 0.10 mm to the left",
        inputs: &[
            ("machines", "motor; pump"),
            ("held", "pump"),
            ("feet", "0; 0.5; 1.0; 1.5 m"),
            ("couplings_at", "0.75 m"),
            ("offsets_up", "0.20 ± 0.01 mm"),
            ("offsets_right", "-0.10 ± 0.01 mm"),
            ("slopes_up", "0 ± 0.05 mm/m"),
            ("slopes_right", "0 ± 0.05 mm/m"),
            ("offset_limit", "0.1 mm"),
            ("slope_limit", "1 mm/m"),
        ],
        wants: &[
            ("move_up", "0.2000 mm; 0.2000 mm; 0.0000 mm; 0.0000 mm"),
            ("move_right", "-0.1000 mm; -0.1000 mm; 0.0000 mm; 0.0000 mm"),
            ("worst_ratio_up", "0.0000"),
        ],
    },
    // The motor should come down by 0.20 and has no shims: it tips, (0.2 − 0.25·s)/0.1 = s.
    Case {
        name: "common-line",
        source: "by hand: offset and slope take the same ratio, 2/3.5",
        inputs: &[
            ("machines", "motor; pump"),
            ("held", "pump"),
            ("feet", "0; 0.5; 1.0; 1.5 m"),
            ("shims", "0; 0; 0; 0 mm"),
            ("couplings_at", "0.75 m"),
            ("offsets_up", "-0.20 ± 0.01 mm"),
            ("offsets_right", "0 ± 0.01 mm"),
            ("slopes_up", "0 ± 0.05 mm/m"),
            ("slopes_right", "0 ± 0.05 mm/m"),
            ("offset_limit", "0.1 mm"),
            ("slope_limit", "1 mm/m"),
        ],
        wants: &[
            ("move_up", "0.2857 mm; 0.0000 mm; 0.0000 mm; 0.0000 mm"),
            ("worst_ratio_up", "0.5714"),
        ],
    },
    Case {
        name: "common-line-whole",
        source: "by hand: 0.20 mm is a shim of the stock",
        inputs: &[
            ("machines", "motor; pump"),
            ("held", "pump"),
            ("feet", "0; 0.5; 1.0; 1.5 m"),
            ("couplings_at", "0.75 m"),
            ("offsets_up", "0.20 ± 0.01 mm"),
            ("offsets_right", "0 ± 0.01 mm"),
            ("slopes_up", "0 ± 0.05 mm/m"),
            ("slopes_right", "0 ± 0.05 mm/m"),
            ("offset_limit", "0.1 mm"),
            ("slope_limit", "1 mm/m"),
        ],
        wants: &[
            ("move_up", "0.2000 mm; 0.2000 mm; 0.0000 mm; 0.0000 mm"),
            ("worst_ratio_up", "0.0000"),
            ("proof", "nothing better can be made of the stock"),
        ],
    },
    // Motor, gearbox held, compressor: the same truth as the plan's train of three; shims of 0.01 mm
    // make its moves whole.
    Case {
        name: "train",
        source: GEOMETRY,
        inputs: &[
            ("machines", "motor; gearbox; compressor"),
            ("held", "gearbox"),
            ("feet", "-290; -940; 200; 850; 1360; 2260 mm"),
            ("couplings_at", "0; 1050 mm"),
            ("dial_at_coupling", "1; 1; 2; 2"),
            ("dial_rides_on", "driver; driven; driven; driver"),
            ("dial_reads", "rim; rim; rim; rim"),
            ("dial_at", "60; -60; 960; 1140 mm"),
            ("dial_sag", "0.03; 0.03; 0.05; 0.05 mm"),
            (
                "readings",
                "0; -0.35; -0.5; -0.15; 0; 0.398; 0.524; 0.126; 0; -0.69; -1.02; -0.33; 0; 0.842; \
                 1.144; 0.302 mm",
            ),
            ("offset_limits", "0.1 mm"),
            ("slope_limits", "1 mm/m"),
            ("stock", "1; 0.5; 0.2; 0.1; 0.05; 0.02; 0.01 mm"),
        ],
        wants: &[
            ("move_up", "0.43 mm; 0.82 mm; 0.00 mm; 0.00 mm; 0.82 mm; 1.63 mm"),
            ("move_right", "-0.205 mm; -0.400 mm; 0.000 mm; 0.000 mm; -0.380 mm; -0.830 mm"),
            ("probability", "100 %"),
            ("proof", "nothing better can be made of the stock"),
        ],
    },
    Case {
        name: "line-up-chance",
        source: "by hand: ±0.04 mm evenly is inside ±0.02 mm by half; of a bell as wide, 61 %",
        inputs: &[
            ("dial_rides_on", "driver; driven"),
            ("dial_reads", "rim; rim"),
            ("dial_at", "100; -100 mm"),
            ("readings", "0; 0; 0; 0; 0; 0; 0; 0 mm"),
            ("division", "0.0001 mm"),
            ("growth_at", "-1000; -500; 0; 1000 mm"),
            ("growth", "0 mm; 0 mm; 0 ± 0.04 mm; 0 ± 0.04 mm"),
            ("growth_is", "between"),
            ("offset_limits", "0.02 mm"),
            ("slope_limits", "1 mm/m"),
        ],
        wants: &[
            ("chance", "50 %"),
            ("by_squares", "61 %"),
            ("judged", "offset, vertical; slope, vertical; offset, sideways; slope, sideways"),
            ("inside", "50 %; 100 %; 100 %; 100 %"),
            ("offsets", "0.000 mm; 0.000 mm"),
            ("offset_deviation", "0.023 mm; 0.000 mm"),
            ("slopes", "0.000 mm/m; 0.000 mm/m"),
            ("slope_deviation", "0.033 mm/m; 0.000 mm/m"),
            ("worst_ratio", "1.9"),
        ],
    },
    // The same machines by another instrument at the first coupling: what its dials come to.
    Case {
        name: "train",
        source: GEOMETRY,
        inputs: &[
            ("machines", "motor; gearbox; compressor"),
            ("held", "gearbox"),
            ("feet", "-290; -940; 200; 850; 1360; 2260 mm"),
            ("couplings_at", "0; 1050 mm"),
            ("offset_at_coupling", "1"),
            ("offset_at", "0 mm"),
            ("offsets_up", "0.256 ± 0.005 mm"),
            ("offsets_right", "-0.118 ± 0.005 mm"),
            ("slope_at_coupling", "1"),
            ("slopes_up", "-0.6 ± 0.05 mm/m"),
            ("slopes_right", "0.3 ± 0.05 mm/m"),
            ("dial_at_coupling", "2; 2"),
            ("dial_rides_on", "driven; driver"),
            ("dial_reads", "rim; rim"),
            ("dial_at", "960; 1140 mm"),
            ("dial_sag", "0.05; 0.05 mm"),
            ("readings", "0; -0.69; -1.02; -0.33; 0; 0.842; 1.144; 0.302 mm"),
            ("offset_limits", "0.1 mm"),
            ("slope_limits", "1 mm/m"),
            ("stock", "1; 0.5; 0.2; 0.1; 0.05; 0.02; 0.01 mm"),
        ],
        wants: &[
            ("move_up", "0.43 mm; 0.82 mm; 0.00 mm; 0.00 mm; 0.82 mm; 1.63 mm"),
            ("move_right", "-0.205 mm; -0.400 mm; 0.000 mm; 0.000 mm; -0.380 mm; -0.830 mm"),
        ],
    },
    Case {
        name: "gap-difference",
        source: "by hand: the driven climbs 0.5 mm/m, so the top gap of 200 mm faces is 0.10 mm narrower",
        inputs: &[("moving", "driven"), ("slope", "0.5 ± 0.05 mm/m"), ("diameter", "200 mm")],
        wants: &[("difference", "-0.1000 mm")],
    },
    // Hubs at 3 and 21 in are taken as the flex planes.
    Case {
        name: "flex-angles",
        source: WORKSHOP,
        inputs: &[
            ("moving", "driven"),
            ("at", "0; 24 in"),
            ("up", "44.6; 30.7 mil"),
            ("driver_plane", "3 in"),
            ("driven_plane", "21 in"),
        ],
        wants: &[("driver_up", "1.80208 mil/in"), ("driven_up", "-2.38125 mil/in")],
    },
];
