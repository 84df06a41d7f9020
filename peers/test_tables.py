"""Printed tables against the rules that they were rounded from."""

import numpy as np
import pytest

from asking import ask

# ISO 286-1: steps of size in mm, factors of the standard tolerance unit for IT5 and on; from memory.
STEPS = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500]
FACTORS = {5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64, 11: 100}
# Fundamental deviations in µm of D in mm, towards the nominal size; from memory.
DEVIATIONS = {
    "d": lambda size: -16 * size**0.44,
    "e": lambda size: -11 * size**0.41,
    "f": lambda size: -5.5 * size**0.41,
    "g": lambda size: -2.5 * size**0.34,
    "n": lambda size: 5 * size**0.34,
}


def means():
    """The top of each step and the geometric mean of its ends."""
    return [(to, np.sqrt(over * to)) for over, to in zip(STEPS, STEPS[1:])]


def test_grades_follow_their_rule():
    """IT = f·(0.45·∛D + 0.001·D). The standard rounds to preferred figures, up to 4.5 % away, and to
    whole micrometres, mostly upwards: 1 µm."""
    given = [(to, mean, grade) for to, mean in means() for grade in FACTORS]
    answers = ask([
        {"reckon": "iso-grade", "grade": str(grade), "nominal": f"{to} mm"} for to, _, grade in given
    ])
    for answer, (to, mean, grade) in zip(answers, given):
        rule = FACTORS[grade] * (0.45 * np.cbrt(mean) + 0.001 * mean)
        assert answer["width"] * 1e6 == pytest.approx(rule, rel=0.045, abs=1.0), (to, grade)


def test_every_fifth_grade_is_ten_times_as_wide():
    """ISO 286-1: exactly, from IT7 on (IT6 over 3 to 6 mm is the one that is not)."""
    given = [(to, grade) for to in STEPS[1:] for grade in range(7, 14)]
    widths = {}
    for extra in (0, 5):
        answers = ask([
            {"reckon": "iso-grade", "grade": str(grade + extra), "nominal": f"{to} mm"}
            for to, grade in given
        ])
        widths[extra] = np.array([answer["width"] for answer in answers])
    np.testing.assert_allclose(widths[5], 10 * widths[0], rtol=1e-12)


def test_deviations_follow_their_rule():
    """Rounded to whole micrometres, and to fives from 100 on: 1 µm, or 2.5 %."""
    given = [(to, mean, letter) for to, mean in means() for letter in DEVIATIONS]
    answers = ask([
        {"reckon": "iso-limits", "class": f"{letter}7", "nominal": f"{to} mm"} for to, _, letter in given
    ])
    for answer, (to, mean, letter) in zip(answers, given):
        rule = DEVIATIONS[letter](mean)
        near = answer["upper"] if rule < 0 else answer["lower"]
        assert near * 1e6 == pytest.approx(rule, rel=0.025, abs=1.0), (to, letter)


def test_stress_areas_follow_their_rule():
    """π/4·(d − 0.9382·P)² (ISO 898-1) and π/4·(D − 0.9743/n)² (ASME B1.1), to the digits printed."""
    metric = ["M6", "M8", "M10", "M12", "M14", "M16", "M18", "M20", "M22", "M24", "M27"]
    inch = ["1/4-20", "5/16-18", "3/8-16", "1/2-13", "5/8-11", "3/4-10", "1-8", "1 1/4-7", "1 1/2-6"]
    names = metric + inch
    for name, answer in zip(names, ask([{"reckon": "thread", "thread": name} for name in names])):
        factor = 0.9382 if name in metric else 0.9743
        rule = np.pi / 4 * (answer["diameter"] - factor * answer["pitch"]) ** 2
        # Three digits: half of the third is 0.5 % at most.
        assert answer["stress_area"] == pytest.approx(rule, rel=0.005), name
