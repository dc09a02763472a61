"""Runs a file of worked cases through the program's own functions: `python -m tests.published.genetics_cases FILE`.

One line a case, a count at the end, exit 1 when a case fails. A case's `kind` says which calculator answers it; every answer that
the case expects is compared within its tolerance, and one that nothing here can answer counts as a failure.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from tests.published import answers_of_cases
from tests.published.answers_of_cases import Refused

Case = Mapping[str, Any]

#: Expected entries that tell how a case was made and not what a calculator should answer.
TOLD_ONLY = frozenset({"reason", "note", "comment"})
#: Cases print ten decimals: no answer can be held to less than half of the last one.
HALF_A_DIGIT = 5.1e-11
#: Grams squared: the residual of an exact curve whose weights were rounded.
EXACT_CURVE = 1e-6


def cases_in(path: Path) -> list[dict[str, Any]]:
    """The cases of a file."""
    told: list[dict[str, Any]] = json.loads(path.read_text(encoding="utf-8"))["cases"]
    return told


def misses(case: Case) -> list[str]:
    """What is wrong with the program's answers to a case: nothing when it passes."""
    answer = answers_of_cases.ANSWERS.get(case["kind"])
    if answer is None:
        return [f"no calculator for the kind {case['kind']}"]
    try:
        found = answer(case["input"], case["expected"])
    except Refused as refusal:
        return [str(refusal)]
    except Exception as broken:  # noqa: BLE001 - one broken case must not hide the others
        return [f"broke: {type(broken).__name__}: {broken}"]
    wrong: list[str] = []
    for name, expected in case["expected"].items():
        if name in TOLD_ONLY:
            continue
        if name not in found:
            wrong.append(f"{name}: nothing answers it")
            continue
        wrong += differences(name, found[name], expected, _tolerance(case.get("tol", {}), name))
    return wrong


def _tolerance(told: Mapping[str, Any], name: str) -> dict[str, float]:
    """How far off an answer may be: `abs`, `rel`, `exact`, and the names that have their own."""
    if name == "published":
        return {"abs": float(told.get("published_abs", told.get("abs", 0.0)))}
    if name == "target_age_days" and "days" in told:
        return {"abs": float(told["days"])}
    allowed = {key: float(told[key]) for key in ("abs", "rel") if key in told}
    return allowed | ({"abs": EXACT_CURVE} if name == "rss" else {})


def differences(name: str, found: Any, expected: Any, tol: Mapping[str, float]) -> Iterator[str]:
    """Each place where an answer is not what is expected."""
    if isinstance(expected, Mapping):
        yield from _of_mappings(name, found, expected, tol)
    elif isinstance(expected, list):
        if not isinstance(found, Sequence) or isinstance(found, str) or len(found) != len(expected):
            yield f"{name}: {found!r} is not {expected!r}"
            return
        for at, (one, other) in enumerate(zip(found, expected, strict=True)):
            yield from differences(f"{name}[{at}]", one, other, tol)
    elif not same(found, expected, tol):
        yield f"{name}: {found!r} is not {expected!r}"


def _of_mappings(name: str, found: Any, expected: Mapping[str, Any], tol: Mapping[str, float]) -> Iterator[str]:
    if not isinstance(found, Mapping):
        yield f"{name}: {found!r} is not {expected!r}"
        return
    for key, value in expected.items():
        if key in found:
            yield from differences(f"{name}.{key}", found[key], value, tol)
        else:
            yield f"{name}.{key}: nothing answers it"
    if name in {"distribution", "posterior"}:
        yield from (f"{name}.{key}: {share!r} was not expected" for key, share in found.items() if key not in expected and share)


def same(found: Any, expected: Any, tol: Mapping[str, float]) -> bool:
    """Whether two answers agree. A fraction is exact against a fraction; numbers within the tolerance; all else must be equal."""
    if isinstance(expected, bool) or expected is None or found is None or isinstance(found, bool):
        return found is expected
    if isinstance(expected, str) and isinstance(found, (Fraction, float)):
        share = Fraction(expected)
        return found == share if isinstance(found, Fraction) else abs(found - float(share)) <= tol.get("abs", 0.0)
    if isinstance(expected, str) or isinstance(found, str):
        return bool(found == expected)
    allowed = max(tol.get("abs", 0.0), tol.get("rel", 0.0) * abs(expected), HALF_A_DIGIT)
    return bool(abs(found - expected) <= allowed)


def main(words: Sequence[str]) -> int:
    """One line a case, and the count."""
    if len(words) != 1:
        sys.stderr.write("usage: python -m tests.published.genetics_cases FILE\n")
        return 2
    told = cases_in(Path(words[0]))
    passed = 0
    for case in told:
        wrong = misses(case)
        passed += not wrong
        sys.stdout.write(f"{'FAIL' if wrong else 'ok':4} {case['id']} {case['kind']}: {case.get('title', '')}\n")
        sys.stdout.writelines(f"     {line}\n" for line in wrong[:6])
    sys.stdout.write(f"{passed} of {len(told)} cases pass\n")
    return 0 if passed == len(told) else 1


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
