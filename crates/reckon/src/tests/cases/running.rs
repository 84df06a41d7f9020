//! Running, wear, removal.

use super::Case;

const PULL: &str = "by hand: Lamé and F = π·μ·d·L·p, to six digits";

pub(super) const CASES: &[Case] = &[
    // (π/2.4)²·√(207e9·(0.14² + 0.12²)/(16·7850)).
    Case {
        name: "spacer-whirl",
        source: "by hand: a beam on two supports",
        inputs: &[
            ("outside", "140 mm"),
            ("inside", "120 mm"),
            ("length", "2400 mm"),
            ("young", "207 GPa"),
            ("density", "7850 kg/m3"),
        ],
        wants: &[("critical", "3873.28 rpm"), ("run_below", "2711.3 rpm")],
    },
    Case {
        name: "spacer-swing",
        source: "by hand: √(2·250 000/18)/2π",
        inputs: &[("pack_force", "250 N"), ("mass", "18 kg")],
        wants: &[("frequency", "26.5258 Hz")],
    },
    Case {
        name: "overhang",
        source: "by hand: 30·9.80665, times 0.15",
        inputs: &[("mass", "30 kg"), ("reach", "150 mm")],
        wants: &[("weight", "294.1995 N"), ("moment", "44.130 N·m")],
    },
    Case {
        name: "tooth-sliding",
        source: "by hand: 0.1·0.25°·3600 rpm",
        inputs: &[("pitch_diameter", "200 mm"), ("angle", "0.25 deg"), ("speed", "3600 rpm")],
        wants: &[("highest", "164.49 mm/s"), ("mean", "104.72 mm/s"), ("stroke", "0.8727 mm")],
    },
    Case {
        name: "tooth-thrust",
        source: "by hand: 0.25·31 512.7/3.5, power, speed and pitch diameter of Mancuso and Jones, Coupling Interface Connection",
        inputs: &[("torque", "31512.7 lbf·in"), ("pitch_diameter", "7 in")],
        wants: &[("force", "2250.91 lbf")],
    },
    Case {
        name: "axial-force",
        source: "by hand: 400 N/mm moved 0.8 mm",
        inputs: &[("stiffness", "400 N/mm"), ("moved", "0.80 ± 0.05 mm")],
        wants: &[("force", "0.320 kN")],
    },
    Case {
        name: "turning-inertia",
        source: "by hand: 1.2 + 0.05 + 0.03 + 0.04/2",
        inputs: &[
            ("machine", "1.2 kg·m2"),
            ("hub", "0.05 kg·m2"),
            ("sleeve", "0.03 kg·m2"),
            ("spacer", "0.04 kg·m2"),
        ],
        wants: &[("inertia", "1.300 kg·m2")],
    },
    Case {
        name: "turning-inertia",
        source: "by hand: 1.2 + 0.3/2",
        inputs: &[("machine", "1.2 kg·m2"), ("coupling", "0.3 kg·m2")],
        wants: &[("inertia", "1.350 kg·m2")],
    },
    Case {
        name: "vibration-zone",
        source: "ISO 10816-3:2009, group 2 rigid, in two independent reprints: 1.4, 2.8, 4.5 mm/s",
        inputs: &[("velocity", "2.0 ± 0.2 mm/s"), ("power", "90 kW"), ("baseline", "1.2 mm/s")],
        wants: &[
            ("zone", "B"),
            ("bounds", "1.4 mm/s; 2.8 mm/s; 4.5 mm/s"),
            ("alarm", "1.90 mm/s"),
            ("highest_trip", "5.625 mm/s"),
        ],
    },
    // A trade article prints 0.16 in/s.
    Case {
        name: "sine-vibration",
        source: "trade article: 2.8 mm/s r.m.s. is 0.16 in/s peak",
        inputs: &[("rms", "2.8 mm/s"), ("frequency", "1485 rpm")],
        wants: &[("peak", "0.16 in/s"), ("peak_to_peak", "50.927 µm")],
    },
    Case {
        name: "off-centre",
        source: "by hand: 40 kg by 0.15 mm at 3600 rpm",
        inputs: &[("mass", "40 kg"), ("shift", "0.15 mm"), ("speed", "3600 rpm")],
        wants: &[
            ("force", "852.734 N"),
            ("unbalance", "6.000"),
            ("quality", "56.5487 mm/s"),
            ("grade", "G100"),
        ],
    },
    // 180 g·mm on 6 kg: 30 µm.
    Case {
        name: "off-centre",
        source: "balancing trade article, July 2013: 30 µm at 5000 rpm; by ISO 21940-11 within G16",
        inputs: &[("mass", "6 kg"), ("shift", "30 µm"), ("speed", "5000 rpm")],
        wants: &[("unbalance", "0.180"), ("quality", "15.708 mm/s"), ("grade", "G16")],
    },
    Case {
        name: "balance-grade",
        source: "ISO 21940-11, as reprinted",
        inputs: &[("grade", "G6.3")],
        wants: &[("quality", "6.3 mm/s")],
    },
    Case {
        name: "balance-class",
        source: "ANSI/AGMA 9000: class 9, 2000 µin; from memory",
        inputs: &[("class", "9")],
        wants: &[("most", "2000 µin")],
    },
    // Backlash from 0.30 to 0.45 in 20 000 h; doubled at 0.60, another 20 000 h.
    Case {
        name: "wear",
        source: "common practice: gear teeth may double their backlash; time by proportion",
        inputs: &[
            ("part", "backlash"),
            ("measured", "0.45 ± 0.03 mm"),
            ("new_backlash", "0.30 mm"),
            ("in_service", "20000 h"),
        ],
        wants: &[
            ("verdict", "inside"),
            ("fate", "it goes back"),
            ("limit", "0.600 mm"),
            ("left", "20000 h"),
        ],
    },
    Case {
        name: "wear",
        source: "by hand: 18 mm is thinner than 20",
        inputs: &[("part", "element"), ("measured", "18.0 ± 0.2 mm"), ("limit", "20 mm")],
        wants: &[("verdict", "outside"), ("fate", "renew")],
    },
    Case {
        name: "wear",
        source: "by hand: 2 mm gone in 6000 h leave 3 mm, and so 9000 h",
        inputs: &[
            ("part", "element"),
            ("measured", "23.0 ± 0.2 mm"),
            ("new_thickness", "25 mm"),
            ("limit", "20 mm"),
            ("in_service", "6000 h"),
        ],
        wants: &[("verdict", "inside"), ("left", "9000 h")],
    },
    Case {
        name: "wear",
        source: "by hand: without a limit nobody can say",
        inputs: &[("part", "tooth"), ("measured", "0.4 mm")],
        wants: &[("verdict", "not measured"), ("fate", "no limit: ask the maker")],
    },
    Case {
        name: "chain-stretch",
        source: "by hand: 1 of 3 per cent in 9000 h leaves 18 000 h",
        inputs: &[("measured", "1.0 %"), ("limit", "3 %"), ("in_service", "9000 h")],
        wants: &[("verdict", "inside"), ("left", "18000 h"), ("fate", "it goes back")],
    },
    Case {
        name: "pack-set",
        source: "by hand: 11.25 − 11.00 of 0.20 mm",
        inputs: &[("measured", "11.25 ± 0.03 mm"), ("new", "11.00 mm"), ("may_differ", "0.20 mm")],
        wants: &[("set", "0.250 mm"), ("verdict", "outside"), ("fate", "renew")],
    },
    Case {
        name: "vertical-orbit",
        source: "US Bureau of Reclamation, FIST 2-1 (2000), Table 1: 0.002 in·240/60",
        inputs: &[("below", "240 in"), ("runner", "60 in")],
        wants: &[("greatest", "0.0080 in"), ("straightness", "0.003 in")],
    },
    Case {
        name: "vertical-plumb",
        source: "US Bureau of Reclamation, FIST 2-1 (2000), Table 1: 0.000 025 of the length",
        inputs: &[("between", "100 in")],
        wants: &[("greatest", "0.0025 in")],
    },
    Case {
        name: "fit-friction",
        source: "DIN 7190:2001, transverse fits, degreased; from memory",
        inputs: &[("joint", "shrunk degreased")],
        wants: &[("friction", "0.20"), ("for_pulling", "0.24")],
    },
    Case {
        name: "pull-off",
        source: PULL,
        inputs: &[
            ("interference", "0.08 mm"),
            ("joint", "100 mm"),
            ("outside", "160 mm"),
            ("length", "110 mm"),
            ("friction_least", "0.15"),
        ],
        wants: &[("least", "261.546 kN"), ("normal_force", "1743.64 kN")],
    },
    // 12 000 psi on 4 in by 3.5 in with 0.24, by the printed formula; the interference that gives it.
    Case {
        name: "pull-off",
        source: "Bloch, Improving Machinery Reliability, pp. 217 to 219; E of our table, 207 GPa",
        inputs: &[
            ("interference", "0.0059478 in"),
            ("joint", "4 in"),
            ("outside", "5.8823529 in"),
            ("length", "3.5 in"),
        ],
        wants: &[("greatest", "126669 ± 15 lbf")],
    },
    Case {
        name: "puller",
        source: "by hand: 1.5·126 669 lbf is 95 tons of 2000 lbf, so a hundred",
        inputs: &[("pull", "126669 lbf")],
        wants: &[("needed", "190004 lbf"), ("class", "200000 lbf"), ("tons", "100")],
    },
    Case {
        name: "puller-screw",
        source: "by hand: 0.15·60 kN·30 mm",
        inputs: &[("pull", "60 kN"), ("screw", "30 mm")],
        wants: &[("torque", "270.00 N·m")],
    },
    Case {
        name: "ram",
        source: "by hand: 10 000 psi on 6.5 in²",
        inputs: &[("area", "6.5 in2"), ("pressure", "10000 psi")],
        wants: &[("force", "65000.0 lbf")],
    },
    Case {
        name: "ram",
        source: "by hand: 65 000 lbf on 6.5 in²",
        inputs: &[("area", "6.5 in2"), ("pull", "65000 lbf")],
        wants: &[("pressure", "10000.0 psi")],
    },
    Case {
        name: "puller-bolts",
        source: "by hand: 65 000/(2·0.606)",
        inputs: &[("pull", "65000 lbf"), ("bolts", "2"), ("thread", "1-8")],
        wants: &[("stress", "53630.4 psi")],
    },
];
