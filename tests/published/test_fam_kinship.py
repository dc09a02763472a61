"""The .fam file read by another program gives the herd's own kinship.

What the genetics library sgkit 0.10 made of the file is stored; `python -m tests.bench.fam` makes it anew.
"""

from __future__ import annotations

import json
from typing import Any

import pytest

from core.reckon.kinship import kinship
from core.reports.evidence import evidence
from core.reports.papers.fam import fam_lines
from tests.bench.fam import ANIMALS, STORED, invented_herd
from tests.farm import TODAY


@pytest.fixture(scope="module")
def stored() -> Any:
    """The file's lines, and the kinship that sgkit found in them."""
    return json.loads(STORED.read_text(encoding="utf-8"))


def test_the_stored_file_is_the_one_that_we_write(stored: Any) -> None:
    """Else what follows would be about another herd."""
    assert stored["lines"] == list(fam_lines(invented_herd(), "hill farm"))
    assert len(stored["lines"]) == ANIMALS


def test_sgkit_finds_our_kinship_in_the_file(stored: Any) -> None:
    """Of all pairs, each with itself included, and so everybody's inbreeding."""
    barn = evidence(invented_herd(), TODAY)
    ours = kinship(barn.book, barn.book.ids)
    assert len(stored["kinship"]) == ANIMALS
    for one, row in zip(ours.among, stored["kinship"], strict=True):
        for other, theirs in zip(ours.among, row, strict=True):
            assert ours.of(one, other) == pytest.approx(theirs, abs=1e-12)
    assert max(ours.inbreeding.values()) > 0.2
