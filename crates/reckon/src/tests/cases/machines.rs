//! Machines, kinds, rating, misalignment, elastomers.

use super::Case;

const ARMY: &str = "US Army TM 10-4320-307-24, para. 3-7, flexible coupling, pp. 3-13 to 3-16";
const DIN_740: &str = "by hand, by the method of DIN 740-2; factors from memory";

pub(super) const CASES: &[Case] = &[
    Case {
        name: "torque",
        source: "by hand: 9549.297·75/1480",
        inputs: &[("power", "75 kW"), ("speed", "1480 rpm")],
        wants: &[("torque", "483.917 N·m"), ("design_torque", "483.917 N·m")],
    },
    Case {
        name: "torque",
        source: "by hand: 63025.36·100/1750",
        inputs: &[("power", "100 hp"), ("speed", "1750 rpm")],
        wants: &[("torque", "3601.45 lbf·in")],
    },
    Case {
        name: "torque",
        source: "by hand: 9549.297·110/990, times 1.5",
        inputs: &[("power", "110 kW"), ("speed", "990 rpm"), ("service_factor", "1.5")],
        wants: &[("torque", "1061.03 N·m"), ("design_torque", "1591.55 N·m")],
    },
    Case {
        name: "service-factor",
        source: "AGMA 514.02, as reprinted: motor, medium load",
        inputs: &[("load", "moderate")],
        wants: &[("service_factor", "1.5")],
    },
    Case {
        name: "service-factor",
        source: "AGMA 514.02, as reprinted: motor, uniform load",
        inputs: &[("load", "uniform"), ("driver", "electric motor")],
        wants: &[("service_factor", "1.0")],
    },
    Case {
        name: "usual-service-factor",
        source: "AGMA 514.02, as reprinted: centrifugal pumps on clean or on semi-liquid",
        inputs: &[("driver", "electric motor"), ("machine", "centrifugal pump")],
        wants: &[("least", "1.0"), ("greatest", "1.5")],
    },
    Case {
        name: "special-train-factor",
        source: "API Std 671, data sheet: metallic flexing elements 1.5",
        inputs: &[("kind", "disc")],
        wants: &[("service_factor", "1.5")],
    },
    Case {
        name: "starting-torque",
        source: "by hand: 1400·3.6/4.8",
        inputs: &[
            ("torque", "1400 N·m"),
            ("driver_inertia", "1.2 kg·m2"),
            ("load_inertia", "3.6 kg·m2"),
        ],
        wants: &[("passes", "1050.0 N·m")],
    },
    Case {
        name: "starting-torque",
        source: "by hand: 600 + 3.6·(1400 − 600)/4.8",
        inputs: &[
            ("torque", "1400 N·m"),
            ("driver_inertia", "1.2 kg·m2"),
            ("load_inertia", "3.6 kg·m2"),
            ("load_torque", "600 N·m"),
        ],
        wants: &[("passes", "1200.0 N·m")],
    },
    Case {
        name: "machine-load",
        source: "AGMA 514.02, as reprinted: reciprocating pumps are heavy",
        inputs: &[("machine", "piston pump")],
        wants: &[("load", "heavy")],
    },
    Case {
        name: "shaft-end-runout",
        source: "ANSI/EASA AR100-2015, Table 2-4: over 50 up to 80 mm",
        inputs: &[("shaft", "60 mm")],
        wants: &[("most", "0.060 mm")],
    },
    Case {
        name: "coupling-kind",
        source: "AGMA 9009: a full-flex gear coupling flexes in two planes",
        inputs: &[("kind", "gear")],
        wants: &[("planes", "two")],
    },
    Case {
        name: "coupling-kind",
        source: "AGMA 9009: a rigid coupling does not flex",
        inputs: &[("kind", "rigid flange")],
        wants: &[("planes", "none")],
    },
    Case {
        name: "coupling-kind",
        source: "common practice: an elastomer jaw bears a little offset",
        inputs: &[("kind", "jaw")],
        wants: &[("planes", "one")],
    },
    Case {
        name: "kinds-for-duty",
        source: "common practice: reasons without a number",
        inputs: &[
            ("load", "heavy"),
            ("speed", "1480 rpm"),
            ("grease_service", "no"),
            ("hot_place", "yes"),
        ],
        wants: &[],
    },
    Case {
        name: "kinds-for-duty",
        source: "common practice: play hammers where the torque turns round",
        inputs: &[("reversing", "yes"), ("starts", "120"), ("end_float", "yes")],
        wants: &[],
    },
    Case {
        name: "torque-share",
        source: "by hand: 1.5·1061.03/2000",
        inputs: &[
            ("power", "110 kW"),
            ("speed", "990 rpm"),
            ("service_factor", "1.5"),
            ("rated_torque", "2000 N·m"),
        ],
        wants: &[("share", "79.577 %"), ("verdict", "inside")],
    },
    Case {
        name: "peak-share",
        source: "by hand: a reversing peak of 1500 N·m counts 3000, of 4000",
        inputs: &[("peak", "1500 N·m"), ("swing", "reversing"), ("peak_torque", "4 kN·m")],
        wants: &[("counts", "3000 N·m"), ("share", "75.0 %"), ("verdict", "inside")],
    },
    Case {
        name: "bore-share",
        source: "by hand: 80/75",
        inputs: &[("bore", "80.000 ± 0.004 mm"), ("largest", "75 mm")],
        wants: &[("share", "106.667 %"), ("verdict", "outside")],
    },
    Case {
        name: "speed-need",
        source: "by hand: 3000 lies between 2500 and 4500",
        inputs: &[("running", "3000 rpm"), ("as_supplied", "2500 rpm"), ("balanced", "4500 rpm")],
        wants: &[
            ("need", "balance as an assembly"),
            ("share_as_supplied", "120 %"),
            ("share_balanced", "66.667 %"),
        ],
    },
    // Gap differences over one diameter stand for angles: 0.020 of 0.061 in. The manual reads a graph
    // and calls it acceptable; it prints 36 per cent axial.
    Case {
        name: "misalignment-share",
        source: ARMY,
        inputs: &[
            ("axial", "0.035 in"),
            ("axial_borne", "0.098 in"),
            ("offset", "0.007 in"),
            ("offset_borne", "0.047 in"),
            ("angle", "20 mil/in"),
            ("angle_borne", "61 mil/in"),
        ],
        wants: &[
            ("axial_share", "36 %"),
            ("angle_share", "33 %"),
            ("share", "83 %"),
            ("verdict", "inside"),
        ],
    },
    Case {
        name: "misalignment-share",
        source: ARMY,
        inputs: &[
            ("axial", "1.48 mm"),
            ("axial_borne", "2.5 mm"),
            ("offset", "0.34 mm"),
            ("offset_borne", "1.2 mm"),
            ("angle", "0.13 mm/m"),
            ("angle_borne", "1.56 mm/m"),
        ],
        wants: &[("offset_share", "28.3 %"), ("verdict", "inside")],
    },
    Case {
        name: "axial-left",
        source: "by hand: 2.5·(1 − 0.3/1.0)",
        inputs: &[("angle", "0.3 deg"), ("angle_borne", "1.0 deg"), ("axial_borne", "2.5 mm")],
        wants: &[("left", "1.75 mm")],
    },
    Case {
        name: "offset-borne",
        source: "by hand: 500·tan 0.5°",
        inputs: &[("span", "500 mm"), ("angle", "0.5 deg")],
        wants: &[("offset", "4.3634 mm")],
    },
    Case {
        name: "angle-of-gaps",
        source: "by hand: atan(0.5/200)",
        inputs: &[("difference", "0.5 mm"), ("diameter", "200 mm")],
        wants: &[("angle", "2.500 mm/m"), ("degrees", "0.14324 deg")],
    },
    Case {
        name: "elastomer-steady",
        source: DIN_740,
        inputs: &[("torque", "291.334 N·m"), ("temperature", "55 degC")],
        wants: &[("needed", "407.868 N·m"), ("temperature_factor", "1.4")],
    },
    Case {
        name: "elastomer-shock",
        source: DIN_740,
        inputs: &[
            ("peak", "1400 N·m"),
            ("driver_inertia", "1.2 kg·m2"),
            ("load_inertia", "3.6 kg·m2"),
            ("starts_per_hour", "150"),
        ],
        wants: &[
            ("in_coupling", "1890 N·m"),
            ("needed", "2268 N·m"),
            ("start_factor", "1.2"),
            ("passes", "75 %"),
        ],
    },
    Case {
        name: "elastomer-swing",
        source: DIN_740,
        inputs: &[("torque", "120 N·m"), ("frequency", "25 Hz"), ("temperature", "35 degC")],
        wants: &[("frequency_factor", "1.58114"), ("needed", "227.684 N·m")],
    },
];
