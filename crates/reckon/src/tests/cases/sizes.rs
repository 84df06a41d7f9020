//! Measured sizes and their uncertainty.

use super::Case;

pub(super) const CASES: &[Case] = &[
    Case {
        name: "size",
        source: "by hand: mean of two, ± 0.004/√2",
        inputs: &[("readings", "80.060; 80.064 mm"), ("spread", "0.004 mm")],
        wants: &[
            ("mean", "80.0620 mm"),
            ("mean ±", "0.00283 mm"),
            ("least", "80.060 mm"),
            ("greatest", "80.064 mm"),
            ("random", "0.00283 mm"),
            ("common", "0.0000 mm"),
        ],
    },
    // ISO 1: a size holds at 20 °C. 80.010/(1 + 11.5e-6·10); ± 80·11.5e-6·1 K.
    Case {
        name: "size",
        source: "by hand: a part at 30 °C, an instrument at 20 °C",
        inputs: &[
            ("readings", "80.010 mm"),
            ("spread", "0 mm"),
            ("part_temperature", "30 degC"),
            ("temperature_spread", "1 K"),
        ],
        wants: &[("at_20", "80.00080 mm"), ("common", "0.00130 mm")],
    },
    // The ring is 80.000 and read 79.990: everything reads 0.010 small.
    Case {
        name: "size",
        source: "by hand: set on a ring",
        inputs: &[
            ("readings", "80.050; 80.052; 80.048 mm"),
            ("spread", "0.003 mm"),
            ("standard", "80.000 ± 0.002 mm"),
            ("read_on_standard", "79.990 mm"),
            ("nominal", "80 mm"),
        ],
        wants: &[
            ("mean", "80.0600 mm"),
            ("mean ±", "0.00265 mm"),
            ("random", "0.00173 mm"),
            ("common", "0.0020 mm"),
        ],
    },
    // The same readings as differences from the ring, which the gauge was set to read as -0.010.
    Case {
        name: "size",
        source: "by hand: differences from the ring; 80 + 0.050 + 0.010",
        inputs: &[
            ("readings", "0.050; 0.052; 0.048 mm"),
            ("reads", "difference"),
            ("spread", "0.003 mm"),
            ("standard", "80.000 ± 0.002 mm"),
            ("read_on_standard", "-0.010 mm"),
        ],
        wants: &[("mean", "80.0600 mm"), ("mean ±", "0.00265 mm"), ("common", "0.0020 mm")],
    },
    Case {
        name: "size",
        source: "by hand: a bore gauge zeroed in a ring of 3.1500 in, reading mils under it",
        inputs: &[
            ("readings", "-1.2; -1.0; -1.4 mil"),
            ("reads", "difference"),
            ("spread", "0.1 mil"),
            ("standard", "3.1500 in"),
        ],
        wants: &[("mean", "3.14880 in"), ("least", "3.14860 in"), ("greatest", "3.14900 in")],
    },
    // A turn of a metric thimble is 0.5 mm, on the third reading.
    Case {
        name: "size",
        source: "common practice: micrometers of 0.5 mm pitch",
        inputs: &[
            ("readings", "80.060; 80.062; 80.561; 80.061; 80.059 mm"),
            ("spread", "0.003 mm"),
        ],
        wants: &[(
            "suspects",
            "reading 3, off by 0.500 mm (0.0197 in): one turn of a metric thimble",
        )],
    },
    Case {
        name: "size-form",
        source: "by hand: 0.010 mm in every 40 mm",
        inputs: &[
            ("readings", "80.000; 80.010; 80.020 mm"),
            ("stations", "10; 50; 90 mm"),
            ("directions", "along; along; along"),
            ("spread", "0.002 mm"),
        ],
        wants: &[
            ("taper", "0.2500 mm/m"),
            ("over_span", "0.0200 mm"),
            ("middle_over_ends", "0.0000 mm"),
            ("profile", "straight"),
        ],
    },
    // 80.030 along and 80.010 across: an oval of at least 0.020.
    Case {
        name: "size-form",
        source: "by hand: two directions at one depth",
        inputs: &[
            ("readings", "80.030; 80.010 mm"),
            ("stations", "30; 30 mm"),
            ("directions", "along; across"),
            ("spread", "0.002 mm"),
        ],
        wants: &[("out_of_round", "0.0200 mm"), ("blind_to", "3 lobes")],
    },
    // D + A·cos 2φ with D 80, A 0.015: 80.015 at 0, 80.000 at 45, 79.985 at 90 degrees.
    Case {
        name: "size-form",
        source: "by hand: an oval in three directions, with a slip of a millimetre",
        inputs: &[
            ("readings", "80.015; 80.000; 79.985; 81.015; 80.000; 79.985 mm"),
            ("stations", "20; 20; 20; 60; 60; 60 mm"),
            ("directions", "along; 45 deg; across; along; 45 deg; 90 deg"),
            ("spread", "0.002 mm"),
        ],
        wants: &[(
            "suspects",
            "reading 4, off by 1.015 mm (0.0400 in): one division of a metric sleeve",
        )],
    },
    Case {
        name: "tool-for-size",
        source: "common practice: micrometers in steps of 25 mm",
        inputs: &[("size", "80 mm")],
        wants: &[("micrometer", "75 to 100 mm")],
    },
    Case {
        name: "tool-for-size",
        source: "common practice: micrometers in steps of an inch",
        inputs: &[("size", "3.15 in"), ("units", "inch")],
        wants: &[("micrometer", "3 to 4 in")],
    },
    Case {
        name: "reading-uncertainty",
        source: "JCGM 100:2008 (GUM), H.1.3.2: 5.8, 3.9 and 6.7 nm give 9.7 nm",
        inputs: &[("standard", "0.0058; 0.0039; 0.0067 µm")],
        wants: &[("standard", "0.0097 µm"), ("factor", "2.0")],
    },
    // u = √((10/√12)² + (4/√5)²) = 3.3961 µm; ν = u⁴/((4/√5)⁴/4) = 51.96; t(51) = 2.0076.
    Case {
        name: "reading-uncertainty",
        source: "by hand, by JCGM 100:2008 (GUM), 4.3.7, 4.2.3 and G.4.1",
        inputs: &[("division", "10 µm"), ("repeat_deviation", "4 µm"), ("repeats", "5")],
        wants: &[("standard", "3.3961 µm"), ("freedom", "51.96"), ("factor", "2.008")],
    },
    Case {
        name: "reading-uncertainty",
        source: "JCGM 100:2008 (GUM), 4.3.7: a rectangle of half-width a has a/√3",
        inputs: &[("bounds", "3; 4 µm")],
        wants: &[("standard", "2.8868 µm"), ("plus_minus", "5.7735 µm")],
    },
    Case {
        name: "student-factor",
        source: "JCGM 100:2008 (GUM), Table G.2, 95 %: ν = 16",
        inputs: &[("freedom", "16")],
        wants: &[("factor", "2.12")],
    },
    Case {
        name: "student-factor",
        source: "JCGM 100:2008 (GUM), Table G.2, 95 %: ν = 1",
        inputs: &[("freedom", "1")],
        wants: &[("factor", "12.71")],
    },
    Case {
        name: "inside-limits",
        source: "by hand: on a limit the chance is even; ± 0.004 reaches past it",
        inputs: &[
            ("value", "80.051 ± 0.004 mm"),
            ("least", "80.002 mm"),
            ("greatest", "80.051 mm"),
        ],
        wants: &[
            ("verdict", "too close to call"),
            ("likely", "50.00 %"),
            ("settled_by", "0.0000 mm"),
        ],
    },
    // One standard deviation, 2 µm, inside: Φ(1) = 0.8413.
    Case {
        name: "inside-limits",
        source: "Abramowitz and Stegun, Handbook of Mathematical Functions, Table 26.1: P(1)",
        inputs: &[("value", "80.049 ± 0.004 mm"), ("greatest", "80.051 mm")],
        wants: &[("likely", "84.13 %"), ("settled_by", "0.0020 mm")],
    },
];
