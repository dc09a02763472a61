"""Whatever the notes say, in whatever order, every paper can be made, and says what the other reports say."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.herd.state import Herd
from core.problem import Problem
from core.reports.due import due
from core.reports.evidence import evidence
from core.reports.papers.fam import fam_lines
from core.reports.papers.leaf import Leaf
from core.reports.papers.paper import PAPERS, Paper
from core.reports.papers.press import paper
from core.reports.papers.wanted import Wanted
from tests.core.reports.test_any_herd import wild
from tests.farm import TODAY

NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)


def leaves(made: Paper) -> tuple[Leaf, ...]:
    """Those of a paper of lists."""
    return tuple(each for each in made.content if isinstance(each, Leaf)) if isinstance(made.content, tuple) else ()


def wishes(herd: Herd) -> list[Wanted]:
    """Everybody's, and each animal's."""
    return [Wanted(), *(Wanted(animal.tag, generations=5) for animal in herd.animals.values())]


@pytest.mark.parametrize("seed", range(20))
def test_every_paper_can_be_made(seed: int) -> None:
    """Or says why not; the rows of each section are as long as their heads, so that all of it is drawn."""
    herd = wild(seed)
    for about in PAPERS:
        for wish in wishes(herd):
            made = paper(herd, "home", about, wish, NOW)
            assert made.alt if isinstance(made, Paper) else made.remedy
            for section in (section for leaf in ([] if isinstance(made, Problem) else leaves(made)) for section in leaf.sections):
                assert (
                    len({len(row) for row in section.rows} | ({len(section.columns)} if section.columns and section.rows else set())) <= 1
                )


@pytest.mark.parametrize("seed", range(20))
def test_the_chores_on_the_wall_are_those_that_are_due(seed: int) -> None:
    """As many, whatever happened."""
    herd = wild(seed)
    made = paper(herd, "home", "chores", Wanted(days=60), NOW)
    assert isinstance(made, Paper)
    assert sum(len(section.rows) for section in leaves(made)[0].sections) == len(due(herd, TODAY, 60).chores)


@pytest.mark.parametrize("seed", range(20))
def test_the_family_file_is_the_family_book(seed: int) -> None:
    """Everybody once, each with the parents of the book, above its kits."""
    herd = wild(seed)
    book = evidence(herd, TODAY).book
    seen: set[str] = set()
    rows = [line.split(" ") for line in fam_lines(herd, "home")]
    for _, animal, sire, dam, _, _ in rows:
        assert book.parents(animal) == tuple(None if parent == "0" else parent for parent in (sire, dam))
        assert {sire, dam} <= seen | {"0"}
        assert animal not in seen
        seen.add(animal)
    assert seen == set(book.ids)
