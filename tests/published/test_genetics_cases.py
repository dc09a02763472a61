"""Every worked case comes out, and the runner can tell a wrong answer: a check that can't fail is none."""

from __future__ import annotations

import json
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest

from tests.published.genetics_cases import cases_in, main, misses

FILE = Path(__file__).with_name("cases.json")
CASES = cases_in(FILE)


def named(case: dict[str, Any]) -> str:
    return str(case["id"])


@pytest.mark.parametrize("case", CASES, ids=named)
def test_a_worked_case_comes_out(case: dict[str, Any]) -> None:
    """Each answer that the case expects, within the case's tolerance; the source stands in the case."""
    assert case["source"]
    assert misses(case) == []


def shifted(value: Any) -> Any:
    """The same answer a little wrong."""
    if isinstance(value, bool):
        return not value
    if isinstance(value, dict):
        return {key: shifted(one) for key, one in value.items()}
    if isinstance(value, list):
        return [shifted(one) for one in value]
    if isinstance(value, (int, float)):
        return value * 1.1 + 1
    return "something else" if not isinstance(value, str) or "/" not in value else "1/97"


@pytest.mark.parametrize("case", [case for case in CASES if case["kind"] != "scale"], ids=named)
def test_each_answer_of_a_case_is_really_compared(case: dict[str, Any]) -> None:
    """A wrong expectation is a miss, whichever answer it stands in."""
    for name, value in case["expected"].items():
        if name != "reason":
            wrong = deepcopy(case)
            wrong["expected"][name] = shifted(value)
            assert any(line.startswith(name) for line in misses(wrong)), name


def test_a_kind_or_an_answer_that_nobody_knows_is_a_failure() -> None:
    """Never passed over."""
    assert misses({"kind": "tea leaves", "input": {}, "expected": {}}) == ["no calculator for the kind tea leaves"]
    odd = deepcopy(CASES[1])
    odd["expected"]["fortune"] = 1
    assert misses(odd) == ["fortune: nothing answers it"]


def test_the_runner_prints_one_line_a_case_and_the_count(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Exit 0 when all pass, 1 when one fails, 2 on wrong use."""
    good, bad = deepcopy(CASES[1]), deepcopy(CASES[2])
    bad["expected"]["F"] = {"k": 0.5}
    for told, code, last in (([good], 0, "1 of 1 cases pass"), ([good, bad], 1, "1 of 2 cases pass")):
        (tmp_path / "cases.json").write_text(json.dumps({"cases": told}))
        assert main([str(tmp_path / "cases.json")]) == code
        lines = capsys.readouterr().out.splitlines()
        assert lines[-1] == last
        assert sum(line.startswith(("ok", "FAIL")) for line in lines) == len(told)
    assert main([]) == 2
