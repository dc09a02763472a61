"""Worked cases with known answers, read from cases.json; each case names its source and how sure it is."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

CASES: list[dict[str, Any]] = json.loads(Path(__file__).with_name("cases.json").read_text(encoding="utf-8"))["cases"]


def of_kind(kind: str) -> list[dict[str, Any]]:
    """All cases of one kind."""
    return [case for case in CASES if case["kind"] == kind]


def named(case: dict[str, Any]) -> str:
    """A test's name for a case."""
    return str(case["id"])


def rows(case: dict[str, Any]) -> list[tuple[str, str | None, str | None]]:
    """A case's pedigree as (animal, sire, dam)."""
    return [(row[0], row[1], row[2]) for row in case["input"]["pedigree"]]
