"""Asks the program many calculations in one process: JSON lines in, JSON lines out.

HUBWRIGHT names the binary. Every number that comes back is in SI.
"""

import json
import os
import subprocess


def ask(cases):
    """Answers to cases, each a dict that names its calculation under "reckon".

    A case that the program refuses stops the test: no comparison passes for want of an answer.
    """
    lines = "".join(json.dumps(case, ensure_ascii=False) + "\n" for case in cases)
    program = os.environ["HUBWRIGHT"]
    done = subprocess.run(
        [program, "reckon"], input=lines, capture_output=True, text=True, check=True, encoding="utf-8"
    )
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    assert len(answers) == len(cases)
    for case, answer in zip(cases, answers):
        assert "error" not in answer, f"{case}: {answer['error']}"
    return [Answer(answer["results"]) for answer in answers]


class Answer:
    """The results of one case."""

    def __init__(self, results):
        self.results = results

    def __getitem__(self, name):
        """A number in SI, a list of them, or a word."""
        return _si(self.results[name])

    def __contains__(self, name):
        return name in self.results

    def plus_minus(self, name):
        """Half the width of its 95 % interval, or a list of them."""
        result = self.results[name]
        if isinstance(result, list):
            return [one["plus_minus"] for one in result]
        return result["plus_minus"]


def _si(result):
    if isinstance(result, dict):
        return result["si"]
    if isinstance(result, list):
        return [_si(one) for one in result]
    return result


def metres(value, plus_minus=None):
    """A length as text, to the last digit."""
    spread = "" if plus_minus is None else f" ± {float(plus_minus)!r}"
    return f"{float(value)!r}{spread} m"


def kelvins(value):
    """A temperature as text, to the last digit; the program reads °C."""
    return f"{float(value) - 273.15!r} degC"
