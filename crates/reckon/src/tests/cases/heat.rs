//! Heat, metals, gaps.

use super::Case;

const BY_EXPANSION: &str = "by hand: ΔT = (δ + c)/(α·d), α 11.7e-6 per K";
const INCROPERA: &str = "Incropera et al., Fundamentals of Heat and Mass Transfer, Table 5.1, infinite cylinder; from memory";

const SCIKIT_FEM: &str = "a program of its own in scikit-fem 12.0.2, `peers/thermal_peer.py`; its mesh and step carry a few tenths of a percent";

pub(super) const CASES: &[Case] = &[
    Case {
        name: "time-in-hand",
        source: SCIKIT_FEM,
        inputs: &[
            ("bore", "80 mm"),
            ("outside", "130 mm"),
            ("length", "90 mm"),
            ("interference", "0.060 mm"),
            ("hub_temperature", "180 degC"),
            ("conductivity", "51 W/m/K"),
            ("heat_capacity", "470 J/kg/K"),
            ("density", "7800 kg/m3"),
            ("expansion", "11.52 µm/m/K"),
            ("modulus", "207 GPa"),
            ("touching", "5000 W/m2/K"),
            ("pressed", "20000 W/m2/K"),
            ("gap_filling", "0.032 W/m/K"),
        ],
        wants: &[("likely", "37.547 ± 0.113 s")],
    },
    Case {
        name: "heat-off",
        source: SCIKIT_FEM,
        inputs: &[
            ("bore", "100 mm"),
            ("outside", "150 mm"),
            ("length", "120 mm"),
            ("flange_outside", "280 mm"),
            ("flange_length", "30 mm"),
            ("interference", "0.050 mm"),
            ("body_power", "8 kW"),
            ("flange_power", "8 kW"),
            ("heated_for", "80 s"),
            ("looked_for", "120 s"),
            ("conductivity", "51 W/m/K"),
            ("heat_capacity", "470 J/kg/K"),
            ("density", "7800 kg/m3"),
            ("expansion", "11.52 µm/m/K"),
            ("modulus", "207 GPa"),
            ("touching", "5000 W/m2/K"),
            ("pressed", "20000 W/m2/K"),
            ("gap_filling", "0.032 W/m/K"),
        ],
        wants: &[("opens_likely", "57.818 ± 0.289 s"), ("shuts", "108.389 ± 0.542 s")],
    },
    Case {
        name: "material",
        source: "Shigley’s Mechanical Engineering Design, 9th ed., Table A-5: 207 GPa, 0.292",
        inputs: &[("material", "steel")],
        wants: &[
            ("young", "207 GPa"),
            ("poisson", "0.292"),
            ("joining_heated", "11.0 µm/m/K"),
            ("joining_chilled", "8.5 µm/m/K"),
        ],
    },
    Case {
        name: "material",
        source: "Shigley’s Mechanical Engineering Design, 9th ed., Table A-5: grey iron 100 GPa, 0.211",
        inputs: &[("material", "grey iron")],
        wants: &[("young", "100 GPa"), ("poisson", "0.211")],
    },
    Case {
        name: "seal-limit",
        source: "ASTM D2000, heat type B: 100 °C; from memory",
        inputs: &[("seal", "nbr")],
        wants: &[("long", "100 degC")],
    },
    Case {
        name: "growth",
        source: "ASME BPVC II-D (2001), Table TE-1, group 1: 7.1e-6 per °F to 400 °F",
        inputs: &[("diameter", "100 mm"), ("temperature", "400 degF")],
        wants: &[("mean_expansion", "7.1 µin/in/degF")],
    },
    Case {
        name: "growth",
        source: "by hand: 100 mm·11.7e-6·100",
        inputs: &[
            ("diameter", "100 mm"),
            ("temperature", "120 degC"),
            ("expansion", "11.7 µm/m/K"),
        ],
        wants: &[("growth", "0.11700 mm")],
    },
    Case {
        name: "growth-temperature",
        source: BY_EXPANSION,
        inputs: &[("diameter", "100 mm"), ("growth", "0.13 mm"), ("expansion", "11.7 µm/m/K")],
        wants: &[("temperature", "131.111 degC")],
    },
    Case {
        name: "hub-mass",
        source: "by hand: π/4·(0.2² − 0.1²)·0.12·7850",
        inputs: &[
            ("bore", "100 mm"),
            ("outside", "200 mm"),
            ("length", "120 mm"),
            ("density", "7850 kg/m3"),
        ],
        wants: &[("mass", "22.1954 kg"), ("volume", "2.82743 L")],
    },
    // 90 mm of 120 and 30 mm of 220 mm outside, bore 80: π/4·(8000·90 + 42000·30)·7.8e-6 kg.
    Case {
        name: "hub-mass",
        source: "by hand: a body and a flange of the table’s steel, 7800 kg/m³",
        inputs: &[
            ("bore", "80 mm"),
            ("outside", "120 mm"),
            ("length", "120 mm"),
            ("flange_outside", "220 mm"),
            ("flange_length", "30 mm"),
        ],
        wants: &[("mass", "12.1297 kg")],
    },
    Case {
        name: "lump-cooling",
        source: "Incropera et al., Fundamentals of Heat and Mass Transfer, prob. 5.6: steel balls; from memory",
        inputs: &[
            ("outside", "12 mm"),
            ("density", "7800 kg/m3"),
            ("heat_capacity", "600 J/kg/K"),
            ("conductivity", "40 W/m/K"),
            ("film", "20 W/m2/K"),
            ("from", "876.85 degC"),
            ("to", "126.85 degC"),
            ("surroundings", "51.85 degC"),
        ],
        wants: &[("time", "1122 s")],
    },
    // V/A = 0.2²−0.1²·0.12/… : τ = ρ·c·V/(h·A), all surfaces of the ring bare.
    Case {
        name: "lump-cooling",
        source: "by hand: V 2.82743e-3 m³, A 0.160221 m²; τ = 7850·470·V/(10·A) = 6510.9 s",
        inputs: &[
            ("outside", "200 mm"),
            ("bore", "100 mm"),
            ("length", "120 mm"),
            ("density", "7850 kg/m3"),
            ("heat_capacity", "470 J/kg/K"),
            ("conductivity", "50 W/m/K"),
            ("film", "10 W/m2/K"),
            ("from", "200 degC"),
            ("to", "100 degC"),
            ("surroundings", "20 degC"),
        ],
        wants: &[
            ("time_constant", "6510.9 s"),
            ("time", "5279.9 s"),
            ("biot", "0.0035294"),
            ("mass", "22.1954 kg"),
        ],
    },
    Case {
        name: "cylinder-cooling",
        source: "Cengel, heat-transfer text, long shaft of 350 mm: one term",
        inputs: &[("biot", "0.705"), ("fourier", "0.1548"), ("terms", "1")],
        wants: &[
            ("first_root", "1.0904 ± 0.0005"),
            ("first_coefficient", "1.1548 ± 0.0003"),
            ("left", "0.9607 ± 0.0002"),
        ],
    },
    Case {
        name: "cylinder-cooling",
        source: INCROPERA,
        inputs: &[("biot", "1"), ("fourier", "0.3")],
        wants: &[("first_root", "1.2558"), ("first_coefficient", "1.2071")],
    },
    Case {
        name: "cylinder-cooling",
        source: INCROPERA,
        inputs: &[("biot", "0.5"), ("fourier", "0.3"), ("radius", "1")],
        wants: &[("first_root", "0.9408"), ("first_coefficient", "1.1143")],
    },
    Case {
        name: "sliding-clearance",
        source: "DIN 7190-1: a thousandth of the diameter; from memory",
        inputs: &[("diameter", "100 mm")],
        wants: &[("clearance", "0.100 mm")],
    },
    Case {
        name: "hub-temperature",
        source: BY_EXPANSION,
        inputs: &[
            ("diameter", "100 mm"),
            ("interference", "0.08 mm"),
            ("clearance", "0.05 mm"),
            ("hub_expansion", "11.7 µm/m/K"),
            ("shaft_expansion", "11.7 µm/m/K"),
            ("loss", "15 K"),
            ("limit", "200 degC"),
        ],
        wants: &[
            ("at_shaft", "131.111 degC"),
            ("from_heater", "146.111 degC"),
            ("bore_growth", "0.1300 mm"),
            ("can_be_done", "yes"),
            ("in_hand", "53.889 K"),
        ],
    },
    // A shaft at 45 °C: 51.2821 K more than the shaft's 25.
    Case {
        name: "hub-temperature",
        source: BY_EXPANSION,
        inputs: &[
            ("diameter", "75 mm"),
            ("interference", "0.045 mm"),
            ("clearance", "0 mm"),
            ("hub_expansion", "11.7 µm/m/K"),
            ("shaft_expansion", "11.7 µm/m/K"),
            ("shaft_temperature", "45 degC"),
        ],
        wants: &[("at_shaft", "96.2821 degC")],
    },
    // 0.0015 in an inch and 6.3e-6 per °F: 238 °F over a room at 68 °F.
    Case {
        name: "hub-temperature",
        source: "Bloch, Improving Machinery Reliability, pp. 217 to 219",
        inputs: &[
            ("diameter", "4 in"),
            ("interference", "0.006 in"),
            ("clearance", "0 in"),
            ("hub_expansion", "6.3 µin/in/degF"),
            ("shaft_expansion", "6.3 µin/in/degF"),
        ],
        wants: &[("at_shaft", "306 degF")],
    },
    // At 120 °C the bore opens 0.117 of the 0.180 mm wanted: 0.063 by cold, 63 K at 10e-6; or 0.017
    // of interference; or, with 0.080, a clearance of 0.037.
    Case {
        name: "hub-temperature",
        source: "by hand: what else serves",
        inputs: &[
            ("diameter", "100 mm"),
            ("interference", "0.08 mm"),
            ("clearance", "0.1 mm"),
            ("hub_expansion", "11.7 µm/m/K"),
            ("shaft_expansion", "10 µm/m/K"),
            ("limit", "120 degC"),
        ],
        wants: &[
            ("can_be_done", "not by heat alone"),
            ("chill_shaft_to", "-43.000 degC"),
            ("interference_at_most", "0.0170 mm"),
            ("clearance_left", "0.0370 mm"),
        ],
    },
    Case {
        name: "shaft-chill",
        source: "by hand: 0.1/(100·8.5e-6) = 117.647 K",
        inputs: &[("diameter", "100 mm"), ("interference", "0.05 mm"), ("clearance", "0.05 mm")],
        wants: &[("shaft", "-97.647 degC")],
    },
    Case {
        name: "hub-opens",
        source: BY_EXPANSION,
        inputs: &[
            ("diameter", "100 mm"),
            ("clearance", "0.05 mm"),
            ("hub_expansion", "11.7 µm/m/K"),
            ("shaft_expansion", "11.7 µm/m/K"),
            ("hub_temperature", "131.111 degC"),
        ],
        wants: &[("interference", "0.08000 mm")],
    },
    Case {
        name: "heating-energy",
        source: "by hand: 8.3·470·160",
        inputs: &[("mass", "8.3 kg"), ("heat_capacity", "470 J/kg/K"), ("rise", "160 K")],
        wants: &[("energy", "624.160 kJ")],
    },
    Case {
        name: "heating-energy",
        source: "by hand: the table’s steel, 470 J/(kg·K)",
        inputs: &[("mass", "8.3 kg"), ("rise", "160 K")],
        wants: &[("energy", "624.160 kJ")],
    },
    Case {
        name: "soak-time",
        source: "common practice: 3 min a millimetre in an oven",
        inputs: &[("bath", "oven"), ("wall", "40 mm")],
        wants: &[("time", "120 min")],
    },
    Case {
        name: "gap-target",
        source: "by hand: 3.2 ± 0.4",
        inputs: &[("kind", "gear"), ("hub_faces", "3.2 ± 0.4 mm")],
        wants: &[
            ("gap", "3.20 mm"),
            ("at_least", "2.80 mm"),
            ("at_most", "3.60 mm"),
            ("from", "gap.hub_faces"),
        ],
    },
    // Two packs of 11 and a spacer of 140 mm; an eighth of 2 mm of axial movement.
    Case {
        name: "gap-target",
        source: "by hand: 140 + 2·11 ± 2/8",
        inputs: &[
            ("kind", "disc"),
            ("form", "two packs with spacer"),
            ("pack", "11 mm"),
            ("spacer", "140 mm"),
            ("axial", "2 mm"),
        ],
        wants: &[("gap", "162.00 mm"), ("at_least", "161.75 mm"), ("at_most", "162.25 mm")],
    },
    Case {
        name: "gap-mean",
        source: "by hand: (3.1 + 3.2 + 3.3 + 3.2)/4, ± 0.02/2",
        inputs: &[
            ("readings", "3.10 ± 0.02 mm; 3.20 ± 0.02 mm; 3.30 ± 0.02 mm; 3.20 ± 0.02 mm"),
            ("least", "3.0 mm"),
            ("greatest", "3.4 mm"),
        ],
        wants: &[
            ("mean", "3.2000 mm"),
            ("mean ±", "0.0100 mm"),
            ("spread", "0.2000 mm"),
            ("verdict", "inside"),
        ],
    },
    Case {
        name: "gap-change",
        source: "by hand: 3.20 − 2.95",
        inputs: &[("recorded", "3.20 ± 0.03 mm"), ("found", "2.95 ± 0.04 mm")],
        wants: &[("change", "0.250 mm")],
    },
    Case {
        name: "shaft-ends",
        source: "by hand: 180 + 11.7e-6·(80·900 + 40·1100)",
        inputs: &[
            ("hot", "180 mm"),
            ("driver_length", "900 mm"),
            ("driver_rise", "80 K"),
            ("driven_length", "1100 mm"),
            ("driven_rise", "40 K"),
        ],
        wants: &[
            ("cold", "181.3572 mm"),
            ("driver_growth", "0.8424 mm"),
            ("driven_growth", "0.5148 mm"),
        ],
    },
    Case {
        name: "end-float",
        source: "by hand: (12.7 − 4.76)/2 − 0.5",
        inputs: &[("rotor", "12.7 mm"), ("magnetic_centre", "0.5 mm"), ("coupling", "4.76 mm")],
        wants: &[
            ("clearance", "3.4700 mm"),
            ("clears_shoulders", "inside"),
            ("within_half", "inside"),
        ],
    },
    Case {
        name: "end-float-usual",
        source: "NEMA MG 1, part 20: 0.25 in of rotor, 0.09 in of coupling; from memory",
        inputs: &[("power", "200 hp")],
        wants: &[("rotor_least", "0.25 in"), ("coupling_greatest", "0.09 in")],
    },
];
