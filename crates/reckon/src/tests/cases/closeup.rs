//! Bolts and grease.

use super::Case;

const TORQUE_TABLE: &str =
    "bolt torque table of the trade (grade 2, dry, K 0.20, 75 % of proof); common practice";
const BY_HAND: &str = "by hand";

pub(super) const CASES: &[Case] = &[
    Case {
        name: "bolt-torque",
        source: TORQUE_TABLE,
        inputs: &[("bolt", "1/2-13 grade 2")],
        wants: &[("preload", "5853 lbf"), ("torque", "48.8 lbf·ft"), ("nut_factor", "0.20")],
    },
    Case {
        name: "bolt-torque",
        source: TORQUE_TABLE,
        inputs: &[("bolt", "3/4-10 grade 2"), ("threads", "dry"), ("fraction", "75 %")],
        wants: &[("preload", "13778 lbf"), ("torque", "172 lbf·ft")],
    },
    // 0.15·0.75·85 000·0.226·0.625/12.
    Case {
        name: "bolt-torque",
        source: "by hand from SAE J429, 85 ksi on 0.226 in²",
        inputs: &[("bolt", "5/8-11 grade 5"), ("threads", "lubricated")],
        wants: &[("preload", "14407.5 lbf"), ("torque", "112.559 lbf·ft")],
    },
    Case {
        name: "bolt-torque",
        source: "ISO 898-1: the proof load of M12 10.9 is 70.0 kN",
        inputs: &[("bolt", "M12 10.9")],
        wants: &[("proof_load", "70.0 kN")],
    },
    Case {
        name: "torque-for-preload",
        source: "by hand: 0.2·68 250·0.016",
        inputs: &[("nut_factor", "0.2"), ("preload", "68.25 kN"), ("diameter", "16 mm")],
        wants: &[("torque", "218.40 N·m")],
    },
    Case {
        name: "preload-range",
        source: "by hand: 218.4/(0.25·0.016) and 218.4/(0.15·0.016)",
        inputs: &[
            ("torque", "218.4 N·m"),
            ("nut_factor_least", "0.15"),
            ("nut_factor_greatest", "0.25"),
            ("diameter", "16 mm"),
        ],
        wants: &[("least", "54.600 kN"), ("greatest", "91.000 kN")],
    },
    // Oiled (K 0.18) where the sheet means dry (0.20) threads: 1.11 times the preload.
    Case {
        name: "tightening",
        source: "by hand: the sheet’s 200 N·m and a nut that takes 12",
        inputs: &[
            ("kind", "gear"),
            ("sheet_torque", "200 N·m"),
            ("bolts", "8"),
            ("sheet_threads", "dry"),
            ("threads", "lubricated"),
            ("prevailing", "12 N·m"),
        ],
        wants: &[
            ("setting", "212.0 N·m"),
            ("seating", "200.0 N·m"),
            ("order", "1; 5; 3; 7; 2; 6; 4; 8"),
            ("from", "the maker’s sheet"),
            ("preload", "133.33 %"),
        ],
    },
    Case {
        name: "tightening",
        source: TORQUE_TABLE,
        inputs: &[
            ("kind", "rigid flange"),
            ("size", "1/2-13"),
            ("grade", "grade 2"),
            ("threads", "dry"),
        ],
        wants: &[("seating", "48.8 lbf·ft"), ("from", "an estimate from size, grade and threads")],
    },
    Case {
        name: "wrench-setting",
        source: BY_HAND,
        inputs: &[("seating", "94.5 N·m"), ("prevailing", "12 N·m")],
        wants: &[("setting", "106.50 N·m")],
    },
    Case {
        name: "bolt-passes",
        source: "by hand: 30, 70 and 100 per cent, in the manner of ASME PCC-1",
        inputs: &[("torque", "218.4 N·m")],
        wants: &[("passes", "65.52 N·m; 152.88 N·m; 218.40 N·m")],
    },
    Case {
        name: "tightening-order",
        source: "common practice: opposite, then at right angles",
        inputs: &[("bolts", "8")],
        wants: &[("order", "1; 5; 3; 7; 2; 6; 4; 8")],
    },
    Case {
        name: "thread",
        source: "ISO 898-1: M16 is 157 mm²",
        inputs: &[("thread", "M16")],
        wants: &[("stress_area", "157 mm2"), ("pitch", "2.0 mm"), ("diameter", "16.0 mm")],
    },
    Case {
        name: "thread",
        source: "SAE J429: 5/8-11 is 0.226 in²",
        inputs: &[("thread", "5/8-11")],
        wants: &[("stress_area", "0.226 in2")],
    },
    Case {
        name: "stress-area",
        source: "ISO 898-1: M20 is 245 mm²",
        inputs: &[("diameter", "20 mm"), ("pitch", "2.5 mm")],
        wants: &[("stress_area", "245 mm2")],
    },
    Case {
        name: "stress-area",
        source: "ASME B1.1: 3/4-10 is 0.334 in²",
        inputs: &[("diameter", "0.75 in"), ("pitch", "0.1 in"), ("family", "unified")],
        wants: &[("stress_area", "0.334 in2")],
    },
    Case {
        name: "flange-friction",
        source: "by hand: 0.15·8·68 250·0.22/2",
        inputs: &[
            ("friction", "0.15"),
            ("bolts", "8"),
            ("preload", "68.25 kN"),
            ("bolt_circle", "220 mm"),
        ],
        wants: &[("torque", "9009.0 N·m")],
    },
    Case {
        name: "fitted-bolts",
        source: "by hand: 6·π/4·22²·60·130",
        inputs: &[
            ("bolts", "6"),
            ("shank", "22 mm"),
            ("shear", "60 MPa"),
            ("bolt_circle", "260 mm"),
        ],
        wants: &[("torque", "17790.2 N·m")],
    },
    Case {
        name: "wrench-for-torque",
        source: "common practice: a wrench of 60 to 340 N·m",
        inputs: &[("torque", "218 N·m")],
        wants: &[("wrench", "60.0 to 340 N·m")],
    },
    Case {
        name: "grease-throw",
        source: "ANSI/AGMA 9001-B97, from memory: CG-1 to 0.75°, CG-3 to 1.5° at low speed",
        inputs: &[("radius", "100 mm"), ("speed", "900 rpm"), ("angle", "1.0 deg")],
        wants: &[("grade", "CG-3")],
    },
    Case {
        name: "grease-throw",
        source: "by hand: (1800·2π/60)²·0.1/9.80665",
        inputs: &[("radius", "100 mm"), ("speed", "1800 rpm")],
        wants: &[("level", "362.311"), ("grade", "CG-2")],
    },
    Case {
        name: "grease-throw",
        source: "by hand: 3 in at 1750 rpm",
        inputs: &[("radius", "3 in"), ("speed", "1750 rpm")],
        wants: &[("level", "260.956")],
    },
    Case {
        name: "grease-speed",
        source: "by hand: √(200·9.80665/0.09)",
        inputs: &[("radius", "90 mm")],
        wants: &[("speed", "1409.7 rpm")],
    },
    Case {
        name: "grease-charge",
        source: "by hand: 0.8·650 cm³ at 900 kg/m³",
        inputs: &[("free", "0.65 L"), ("share", "80 %")],
        wants: &[("volume", "0.5200 L"), ("mass", "0.4680 kg"), ("free", "0.6500 L")],
    },
    // π/4·(200² − 120²)·50 mm³.
    Case {
        name: "grease-charge",
        source: "by hand: one ring",
        inputs: &[("insides", "120 mm"), ("outsides", "200 mm"), ("lengths", "50 mm")],
        wants: &[("free", "1.00531 L")],
    },
    Case {
        name: "grease-number",
        source: "NLGI classification, as reprinted: 265 to 295 is number 2",
        inputs: &[("penetration", "280")],
        wants: &[("number", "2")],
    },
];
