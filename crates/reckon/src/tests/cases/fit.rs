//! Fits, interference fits, tapers, keys.

use super::Case;

const ISO: &str =
    "ISO 286-1 and -2, as tabulated in Narayana, Kannaiah and Venkata Reddy, Machine Drawing";
const SOLUTIONS: &str =
    "solutions manual to Mechanical Engineering Design (Budynas and Nisbett, 8th ed.)";
const BY_LAME: &str = "by hand: Lamé, solid steel shaft, to six digits";
const CONE: &str = "by hand: geometry and statics of a cone, 3/4 in per foot";
const MOTT: &str = "Mott, Machine Elements in Mechanical Design, ch. 11, exercise 1";
const MH_KEYS: &str = "ANSI B17.1, depth control values, in Machinery’s Handbook; from memory";

pub(super) const CASES: &[Case] = &[
    Case {
        name: "iso-limits",
        source: ISO,
        inputs: &[("class", "H7"), ("nominal", "80 mm")],
        wants: &[("upper", "0.030 mm"), ("lower", "0.000 mm"), ("largest", "80.030 mm")],
    },
    Case {
        name: "iso-limits",
        source: ISO,
        inputs: &[("class", "p6"), ("nominal", "80 mm")],
        wants: &[("upper", "0.051 mm"), ("lower", "0.032 mm"), ("smallest", "80.032 mm")],
    },
    Case {
        name: "iso-grade",
        source: ISO,
        inputs: &[("grade", "7"), ("nominal", "100 mm")],
        wants: &[("width", "0.035 mm")],
    },
    Case {
        name: "fit-limits",
        source: ISO,
        inputs: &[("fit", "H7/p6"), ("nominal", "80 mm")],
        wants: &[
            ("least", "0.002 mm"),
            ("greatest", "0.051 mm"),
            ("sort", "interference"),
            ("system", "ISO 286"),
        ],
    },
    Case {
        name: "fit-limits",
        source: "the same in Shigley’s text: 1.5 in H7/s6 is 0.0007 to 0.0023 in (prob. 7-24)",
        inputs: &[("fit", "H7/s6"), ("nominal", "1.5 in")],
        wants: &[("least", "0.0007 in"), ("greatest", "0.0023 in")],
    },
    Case {
        name: "fit-limits",
        source: ISO,
        inputs: &[("fit", "H7/k6"), ("nominal", "80 mm")],
        wants: &[("least", "-0.028 mm"), ("greatest", "0.021 mm"), ("sort", "transition")],
    },
    Case {
        name: "fit-limits",
        source: "ANSI B4.1-1967, Table 11, in Machinery’s Handbook: FN2 over 2.56 up to 3.15 in",
        inputs: &[("fit", "FN2"), ("nominal", "3 in")],
        wants: &[
            ("hole_upper", "1.2 mil"),
            ("hole_lower", "0.0 mil"),
            ("shaft_upper", "2.9 mil"),
            ("shaft_lower", "2.2 mil"),
            ("least", "1.0 mil"),
            ("greatest", "2.9 mil"),
        ],
    },
    Case {
        name: "coupling-bore",
        source: "ANSI/AGMA 9002-B04: 1.0000 in, interference; 1/4 in keyway, T 1.114 in",
        inputs: &[("nominal", "1 in"), ("fit", "interference")],
        wants: &[
            ("upper", "-0.0005 in"),
            ("lower", "-0.0010 in"),
            ("keyway_width", "0.2500 in"),
            ("across", "1.114 in"),
            ("across_upper", "0.015 in"),
        ],
    },
    Case {
        name: "motor-shaft",
        source: "NEMA MG 1, part 4: over 1.5 in, 0.001 in below; from memory",
        inputs: &[("nominal", "2.125 in")],
        wants: &[("upper", "0.0000 in"), ("lower", "-0.0010 in")],
    },
    Case {
        name: "usual-interference",
        source: "common practice: over 2 in 0.0005 to 0.002 in; keyless 0.001 to 0.0015 in an inch",
        inputs: &[("shaft", "3 in")],
        wants: &[
            ("keyed_least", "0.0005 in"),
            ("keyed_greatest", "0.0020 in"),
            ("keyless_least", "0.0030 in"),
            ("keyless_greatest", "0.0045 in"),
            ("taper", "0.003 in"),
        ],
    },
    // DIN 7190-1, from memory: 0.8·(6.3 + 4.0) µm. The ± add as squares: 3 and 4 make 5 µm.
    Case {
        name: "interference",
        source: "by hand, by DIN 7190-1",
        inputs: &[
            ("shaft", "80.060 ± 0.003 mm"),
            ("bore", "80.014 ± 0.004 mm"),
            ("rz_hub", "6.3 µm"),
            ("rz_shaft", "4 µm"),
        ],
        wants: &[
            ("measured", "0.0460 mm"),
            ("measured ±", "0.0050 mm"),
            ("flattening", "0.00824 mm"),
            ("effective", "0.03776 mm"),
        ],
    },
    // 3² + 4² − 2·2² = 17.
    Case {
        name: "interference",
        source: "by hand, by JCGM 100:2008 (GUM), 5.2.2",
        inputs: &[
            ("shaft", "80.060 ± 0.003 mm"),
            ("bore", "80.014 ± 0.004 mm"),
            ("shared", "0.002 mm"),
        ],
        wants: &[("measured ±", "0.004123 mm")],
    },
    Case {
        name: "interference",
        source: "common practice: 1.2·(Ra + Ra)",
        inputs: &[
            ("shaft", "80.060 mm"),
            ("bore", "80.014 mm"),
            ("ra_hub", "1.6 µm"),
            ("ra_shaft", "0.8 µm"),
        ],
        wants: &[("flattening", "0.00288 mm")],
    },
    // Prob. 3-68: radial 0.001 in on a 1 in shaft in a 2 in hub.
    Case {
        name: "contact-pressure",
        source: SOLUTIONS,
        inputs: &[
            ("interference", "0.002 in"),
            ("joint", "1 in"),
            ("outside", "2 in"),
            ("hub_young", "30000 ksi"),
            ("shaft_young", "30000 ksi"),
        ],
        wants: &[("pressure", "22500 psi"), ("hoop", "37500 psi")],
    },
    // Prob. 3-65: radial 0.00115 in on 1.5 in in 3 in.
    Case {
        name: "contact-pressure",
        source: SOLUTIONS,
        inputs: &[
            ("interference", "0.0023 in"),
            ("joint", "1.5 in"),
            ("outside", "3 in"),
            ("hub_young", "30000 ksi"),
            ("shaft_young", "30000 ksi"),
        ],
        wants: &[("pressure", "17250 psi")],
    },
    // Prob. 3-64: radial 0.0295 and 0.009 mm on 40 mm in 80 mm.
    Case {
        name: "contact-pressure",
        source: SOLUTIONS,
        inputs: &[("interference", "0.059 mm"), ("joint", "40 mm"), ("outside", "80 mm")],
        wants: &[("pressure", "114.5 MPa")],
    },
    Case {
        name: "contact-pressure",
        source: SOLUTIONS,
        inputs: &[("interference", "0.018 mm"), ("joint", "40 mm"), ("outside", "80 mm")],
        wants: &[("pressure", "34.9 MPa")],
    },
    // Prob. 7-24: 1.5 in H7/s6 in 2.5 in.
    Case {
        name: "contact-pressure",
        source: SOLUTIONS,
        inputs: &[
            ("interference", "0.0023 in"),
            ("joint", "1.5 in"),
            ("outside", "2.5 in"),
            ("hub_young", "30000 ksi"),
            ("shaft_young", "30000 ksi"),
        ],
        wants: &[("pressure", "14720 psi"), ("shaft_hoop", "-14720 psi")],
    },
    // Printed 15 265 psi from 15 265.5.
    Case {
        name: "contact-pressure",
        source: "Norton, Machine Design: An Integrated Approach, 4th ed., example 10-5",
        inputs: &[
            ("interference", "0.0015 in"),
            ("joint", "0.781 in"),
            ("outside", "3 in"),
            ("hub_young", "14000 ksi"),
            ("shaft_young", "30000 ksi"),
            ("hub_poisson", "0.28"),
            ("shaft_poisson", "0.28"),
        ],
        wants: &[("pressure", "15265 ± 1 psi")],
    },
    Case {
        name: "contact-pressure",
        source: "Mott, Machine Elements in Mechanical Design, example 13-2: bronze in steel, FN3; results from memory",
        inputs: &[
            ("interference", "0.0032 in"),
            ("joint", "2.5 in"),
            ("outside", "3.5 in"),
            ("shaft_bore", "2 in"),
            ("hub_young", "30000 ksi"),
            ("shaft_young", "17000 ksi"),
            ("hub_poisson", "0.27"),
            ("shaft_poisson", "0.27"),
        ],
        wants: &[
            ("pressure", "3518 psi"),
            ("hoop", "10846 psi"),
            ("shaft_hoop", "-16025 psi"),
            ("hub_growth", "0.000983 in"),
            ("shaft_shrink", "0.002217 in"),
        ],
    },
    Case {
        name: "press-fit",
        source: BY_LAME,
        inputs: &[
            ("interference", "0.08 mm"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("friction_least", "0.15"),
            ("friction_greatest", "0.15"),
        ],
        wants: &[
            ("pressure", "50.4562 MPa"),
            ("torque_least", "13077.3 N·m"),
            ("torque_greatest", "13077.3 N·m"),
            ("pull_greatest", "261.546 kN"),
        ],
    },
    Case {
        name: "press-fit",
        source: BY_LAME,
        inputs: &[
            ("interference", "0.045 mm"),
            ("joint", "75 mm"),
            ("outside", "120 mm"),
            ("length", "90 mm"),
            ("friction_least", "0.1"),
            ("friction_greatest", "0.24"),
        ],
        wants: &[
            ("pressure", "37.8422 MPa"),
            ("torque_greatest", "7222.25 N·m"),
            ("pull_greatest", "192.59 kN"),
        ],
    },
    // The same hub 40 K warmer than its shaft, α 11.52e-6: 0.08 − 0.04608 mm is left, in proportion.
    Case {
        name: "press-fit",
        source: "by hand: Lamé is linear, 261.546 kN·0.03392/0.08",
        inputs: &[
            ("interference", "0.08 mm"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("friction_least", "0.15"),
            ("friction_greatest", "0.15"),
            ("hub_rise", "40 K"),
        ],
        wants: &[("pull_greatest", "110.9 kN"), ("lost", "0.04608 mm")],
    },
    // Above: 0.08 mm holds 13 077.3 N·m, half of it twice safe; there the bore bears 147.02 MPa by
    // von Mises, of 115.144 around and −50.456 outwards.
    // A keyway of 10 % of the circumference: nine tenths press.
    Case {
        name: "press-fit",
        source: BY_LAME,
        inputs: &[
            ("interference", "0.08 mm"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("friction_greatest", "0.15"),
            ("bears", "90 %"),
        ],
        wants: &[("pull_greatest", "235.39 kN")],
    },
    // 0.15·1743.64 kN hold; 10 000 N·m are 200 kN around, with 150 kN along 250 kN.
    Case {
        name: "torque-and-pull",
        source: BY_LAME,
        inputs: &[
            ("interference", "0.08 mm"),
            ("torque", "10 kN·m"),
            ("axial", "150 kN"),
            ("friction", "0.15"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
        ],
        wants: &[("together", "250.000 kN"), ("safety", "1.0462"), ("normal_force", "1743.64 kN")],
    },
    Case {
        name: "interference-window",
        source: BY_LAME,
        inputs: &[
            ("torque", "6538.65 N·m"),
            ("safety", "2"),
            ("friction", "0.15"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("hub_stress", "147.016 MPa"),
            ("shaft_stress", "1 GPa"),
            ("flattening", "0.010 mm"),
        ],
        wants: &[
            ("least", "0.0900 mm"),
            ("greatest", "0.0900 mm"),
            ("limited_by", "bore of the hub, slice 1"),
        ],
    },
    // 80 % of the yield of the table's steel, 275 MPa, is 220 MPa: 0.08·220/147.016.
    Case {
        name: "interference-window",
        source: BY_LAME,
        inputs: &[
            ("torque", "3000 N·m"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("shaft_stress", "1 GPa"),
        ],
        wants: &[("greatest", "0.1197 mm"), ("window", "open")],
    },
    // Two slices of one outside are one hub.
    Case {
        name: "interference-window",
        source: BY_LAME,
        inputs: &[
            ("torque", "6538.65 N·m"),
            ("safety", "2"),
            ("friction", "0.15"),
            ("joint", "100 mm"),
            ("slice_lengths", "30; 80 mm"),
            ("slice_outsides", "160; 160 mm"),
            ("hub_stress", "147.016 MPa"),
            ("shaft_stress", "1 GPa"),
            ("flattening", "0.010 mm"),
        ],
        wants: &[("least", "0.0900 mm"), ("greatest", "0.0900 mm")],
    },
    // Half the torque needs half the 0.080 that presses; 150 °C opens 100·11.5e-6·130 − 0.100.
    // ISO 286-2, 80 to 100 mm, in µm: H7 0 to 35; h6 −22 to 0, p6 37 to 59, r6 51 to 73, s6 71 to 93.
    // So h6 presses by −57 to 0, p6 by 2 to 59, r6 by 16 to 73, s6 by 36 to 93, in a window of 20 to
    // 49.5.
    Case {
        name: "choose-fit",
        source: BY_LAME,
        inputs: &[
            ("torque", "3269.325 N·m"),
            ("safety", "1"),
            ("friction", "0.15"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("hub_stress", "147.016 MPa"),
            ("shaft_stress", "1 GPa"),
            ("hub_limit", "160 °C"),
            ("loss", "10 K"),
            ("clearance", "0.100 mm"),
            ("hub_expansion", "11.5 µm/m/K"),
            ("fits", "H7/h6; H7/p6; H7/r6; H7/s6"),
        ],
        wants: &[
            ("least", "0.0200 mm"),
            ("borne", "0.0800 mm"),
            ("goes_on", "0.0495 mm"),
            ("greatest", "0.0495 mm"),
            ("window", "open"),
            ("limited_by", "the hub’s temperature"),
            ("partly", "H7/p6; H7/r6; H7/s6"),
            ("outside", "H7/h6"),
        ],
    },
    // Without a limit of temperature, from 15.9 µm (0.08·2600/13077.3) to 80 µm: r6 lies inside, j6
    // (13 µm at most) and u6 (89 µm at least) outside, k6 (25 µm at most) and t6 (56 µm at least) partly.
    Case {
        name: "choose-fit",
        source: BY_LAME,
        inputs: &[
            ("torque", "2600 N·m"),
            ("safety", "1"),
            ("friction", "0.15"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("hub_stress", "147.016 MPa"),
            ("shaft_stress", "1 GPa"),
        ],
        wants: &[
            ("limited_by", "bore of the hub, slice 1"),
            ("inside", "H7/r6"),
            ("partly", "H7/k6; H7/m6; H7/n6; H7/p6; H7/s6; H7/t6"),
        ],
    },
    // The hub has grown by all of it: 0.08/(100·11.52e-6).
    Case {
        name: "hub-lets-go",
        source: "by hand: 0.08/(100·11.52e-6)",
        inputs: &[
            ("interference", "0.08 mm"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
        ],
        wants: &[
            ("at_rise", "69.444 K"),
            ("by_warmth", "at the rise"),
            ("by_speed", "at the speed"),
        ],
    },
    Case {
        name: "taper-draw-up",
        source: CONE,
        inputs: &[("one_in", "16"), ("interference", "0.1524 mm")],
        wants: &[("distance", "2.4384 mm")],
    },
    Case {
        name: "taper-interference",
        source: CONE,
        inputs: &[("one_in", "16"), ("distance", "2.4384 mm")],
        wants: &[("interference", "0.15240 mm")],
    },
    Case {
        name: "taper-of-sizes",
        source: CONE,
        inputs: &[("large", "101.6 mm"), ("small", "96.6 mm"), ("length", "80 mm")],
        wants: &[
            ("one_in", "16.000"),
            ("on_diameter", "62.50 mm/m"),
            ("half_angle", "1.78991 deg"),
        ],
    },
    // 82.7 MPa on 101.6 by 88.9 mm: N = 2346.67 kN; N·sin β and μ·N·cos β.
    Case {
        name: "taper-forces",
        source: CONE,
        inputs: &[("one_in", "16"), ("normal_force", "2346.666 kN"), ("friction", "0.02")],
        wants: &[
            ("push_off", "73297 ± 1 N"),
            ("grip", "46910 ± 1 N"),
            ("stays_on", "no"),
            ("to_draw_off", "0.0 kN"),
        ],
    },
    Case {
        name: "taper-forces",
        source: CONE,
        inputs: &[("one_in", "16"), ("normal_force", "1000 kN"), ("friction", "0.14")],
        wants: &[("to_draw_off", "108.697 kN"), ("to_draw_up", "171.166 kN"), ("stays_on", "yes")],
    },
    // Drawn up 1.28 mm: 0.08 mm; 100 mm at the hub’s middle, where the ring above presses.
    Case {
        name: "taper-fit",
        source: "by hand: Lamé at the middle, and N·(μ·cos β − sin β)",
        inputs: &[
            ("one_in", "16"),
            ("small", "96.5625 mm"),
            ("distance", "1.28 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("friction", "0.15"),
        ],
        wants: &[
            ("interference", "0.0800 mm"),
            ("pressure", "50.4562 MPa"),
            ("torque", "13077.3 N·m"),
            ("normal_force", "1743.64 kN"),
            ("to_draw_off", "206.96 kN"),
        ],
    },
    Case {
        name: "oil-dilation",
        source: "by hand: 1.2·50.4562, pressure by Lamé",
        inputs: &[
            ("interference", "0.08 mm"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("factor", "1.2"),
        ],
        wants: &[("fit_pressure", "50.4562 MPa"), ("oil_pressure", "60.547 MPa")],
    },
    Case {
        name: "key-metric",
        source: "ISO/R 773 and DIN 6885-1, as reprinted: over 75 up to 85 mm; N9 and JS9 of ISO 286",
        inputs: &[("shaft", "80 mm")],
        wants: &[
            ("width", "22.0 mm"),
            ("height", "14.0 mm"),
            ("shaft_depth", "9.0 mm"),
            ("hub_depth", "5.4 mm"),
            ("across_hub", "85.4 mm"),
            ("across_shaft", "71.0 mm"),
            ("deeper_by", "0.2 mm"),
            ("shaft_seat_lower", "-0.052 mm"),
            ("hub_seat_upper", "0.026 mm"),
        ],
    },
    Case {
        name: "key-inch",
        source: MH_KEYS,
        inputs: &[("shaft", "1 in")],
        wants: &[
            ("width", "0.250 in"),
            ("height", "0.250 in"),
            ("across_shaft", "0.859 in"),
            ("across_hub", "1.114 in"),
            ("key_lower", "-0.002 in"),
            ("seat_upper", "0.002 in"),
        ],
    },
    Case {
        name: "keyseat-depths",
        source: MH_KEYS,
        inputs: &[("shaft", "1 in"), ("width", "0.25 in"), ("height", "0.25 in")],
        wants: &[("across_shaft", "0.859 in"), ("across_hub", "1.114 in")],
    },
    // T − S − H = C in an interference fit.
    Case {
        name: "key-top-room",
        source: "ANSI B17.1 keeps 0.005 in over a key; from memory",
        inputs: &[
            ("hub_across", "1.114 in"),
            ("bore", "1.000 in"),
            ("shaft_across", "0.859 in"),
            ("shaft", "1.000 in"),
            ("key_height", "0.250 in"),
        ],
        wants: &[("room", "0.0050 in")],
    },
    Case {
        name: "key-side-play",
        source: "by hand",
        inputs: &[("keyway", "21.970 ± 0.006 mm"), ("key", "21.990 ± 0.008 mm")],
        wants: &[("play", "-0.0200 mm")],
    },
    // 0.03 mm in the hub, a tight key in the shaft; 0.01 one way and 0.01 the other.
    Case {
        name: "key-lean",
        source: "by hand: 0.03 + 0 − 0.02",
        inputs: &[
            ("hub_keyway", "22.03 ± 0.005 mm"),
            ("shaft_keyway", "21.99 ± 0.005 mm"),
            ("key", "22.00 ± 0.005 mm"),
            ("hub_lean", "0.01 mm"),
            ("shaft_lean", "-0.01 mm"),
        ],
        wants: &[("room", "0.0100 mm"), ("lean", "0.0200 mm")],
    },
    Case {
        name: "key-for-balance",
        source: "alignment trade note, common practice: 3 and 5 in less 5 % are 3.8 in",
        inputs: &[("hub_keyway", "3 in"), ("shaft_keyway", "5 in"), ("rule", "mean less 5 %")],
        wants: &[("length", "3.80 in")],
    },
    Case {
        name: "key-load",
        source: "by hand: 2·1200/0.060 = 40 kN on 15 by 90 mm, half of 15 mm deep",
        inputs: &[
            ("torque", "1200 N·m"),
            ("shaft", "60 mm"),
            ("width", "15 mm"),
            ("height", "15 mm"),
            ("length", "90 mm"),
            ("key_yield", "700 MPa"),
            ("weakest_yield", "425 MPa"),
        ],
        wants: &[
            ("force", "40.000 kN"),
            ("shear", "29.6296 MPa"),
            ("bearing", "59.2593 MPa"),
            ("shear_safety", "11.8125"),
            ("bearing_safety", "7.17188"),
            ("longest", "90.0 mm"),
        ],
    },
    // 200 of 1200 N·m by friction; both ends round: 90 − 15 mm bear.
    Case {
        name: "key-load",
        source: "by hand: 1000 N·m on 75 mm",
        inputs: &[
            ("torque", "1200 N·m"),
            ("shaft", "60 mm"),
            ("width", "15 mm"),
            ("height", "15 mm"),
            ("length", "90 mm"),
            ("ends", "both round"),
            ("held_by_friction", "200 N·m"),
        ],
        wants: &[("carried", "1000.0 N·m"), ("straight", "75.0 mm"), ("shear", "29.6296 MPa")],
    },
    Case {
        name: "key-length",
        source: MOTT,
        inputs: &[
            ("torque", "21000 lbf·in"),
            ("shaft", "2 in"),
            ("width", "0.5 in"),
            ("height", "0.5 in"),
            ("key_yield", "54 ksi"),
            ("weakest_yield", "54 ksi"),
            ("safety", "3"),
        ],
        wants: &[("needed", "4.67 in"), ("for_shear", "4.67 in"), ("for_bearing", "4.67 in")],
    },
    Case {
        name: "key-length",
        source: MOTT,
        inputs: &[
            ("torque", "21000 lbf·in"),
            ("shaft", "2 in"),
            ("width", "0.5 in"),
            ("height", "0.5 in"),
            ("key_yield", "77 ksi"),
            ("weakest_yield", "77 ksi"),
            ("safety", "3"),
        ],
        wants: &[("needed", "3.27 in")],
    },
    // Tresca, 42 MPa of shear from 84 of yield; crushing at 70. The book rounds T to 1.03e6.
    Case {
        name: "key-length",
        source: "Khurmi and Gupta, A Textbook of Machine Design, example 13.1; results from memory",
        inputs: &[
            ("torque", "1030 N·m"),
            ("shaft", "50 mm"),
            ("width", "16 mm"),
            ("height", "10 mm"),
            ("key_yield", "84 MPa"),
            ("weakest_yield", "70 MPa"),
            ("safety", "1"),
        ],
        wants: &[("for_shear", "61.31 mm"), ("for_bearing", "117.7 mm")],
    },
    Case {
        name: "set-screws",
        source: "by hand: 2·2000 lbf·1 in",
        inputs: &[("holding", "2000 lbf"), ("screws", "2"), ("shaft", "2 in")],
        wants: &[("torque", "4000.0 lbf·in"), ("thrust", "4000.0 lbf")],
    },
    Case {
        name: "set-screw",
        source: "Shigley’s Mechanical Engineering Design, 9th ed., Table 7-4; from memory",
        inputs: &[("size", "3/8")],
        wants: &[("holding", "2000 lbf"), ("seating", "290 lbf·in"), ("diameter", "0.375 in")],
    },
    Case {
        name: "set-screw",
        source: "ANSI B17.1: a 1/2 in screw over a 1/2 in key; from memory",
        inputs: &[("key_width", "0.5 in")],
        wants: &[("name", "1/2 in")],
    },
    Case {
        name: "puller-threads",
        source: "by hand: 120 kN over 4·0.88·π·16 mm·20 mm = 3539 mm²; share by Norton, from memory",
        inputs: &[("pull", "120 kN"), ("holes", "4"), ("thread", "M16"), ("engaged", "20 mm")],
        wants: &[("stress", "33.9 MPa")],
    },
    Case {
        name: "puller-jaws",
        source: "by hand: 30 kN on 30·10 mm²; 150 N·m over 30·20²/6 mm³",
        inputs: &[
            ("pull", "120 kN"),
            ("jaws", "4"),
            ("width", "30 mm"),
            ("grip", "10 mm"),
            ("thickness", "20 mm"),
        ],
        wants: &[("pressure", "100 MPa"), ("bending", "75.0 MPa")],
    },
];
