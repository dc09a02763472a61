"""Papers by name: sizes, file names, and why there is none."""

from __future__ import annotations

from datetime import UTC, date, datetime

from core.herd.settings import changed
from core.herd.state import Herd
from core.problem import Problem
from core.reports.papers.paper import Paper, size_for, written
from core.reports.papers.press import NO_CARDS, file_part, paper
from core.reports.papers.wanted import Wanted
from tests.farm import small_herd, tell

NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)


def made(about: str, herd: Herd | None = None, wish: Wanted | None = None) -> Paper:
    """That paper; there must be one."""
    found = paper(small_herd() if herd is None else herd, "home", about, wish or Wanted(), NOW)
    assert isinstance(found, Paper), found
    return found


def refused(about: str, herd: Herd | None = None, wish: Wanted | None = None) -> Problem:
    """Why there is none."""
    found = paper(small_herd() if herd is None else herd, "home", about, wish or Wanted(), NOW)
    assert isinstance(found, Problem), found
    return found


def test_a_paper_tells_what_it_is() -> None:
    """Its name, whose it is, as of when, how many."""
    found = made("cards")
    assert (found.name, found.title, found.farm, found.made_at) == ("cage-cards.pdf", "Cage cards", "home", NOW)
    assert found.alt == "9 cage cards to print."
    assert len(found.content) == 9


def test_one_animals_paper() -> None:
    """By tag or by name."""
    for who in ("14", "juno"):
        found = made("cards", wish=Wanted(who))
        assert (found.name, found.alt) == ("cage-card-14.pdf", "1 cage card to print.")


def test_no_such_animal() -> None:
    """Or several of one name."""
    assert refused("cards", wish=Wanted("77")).text == "There is no animal 77 on the book."
    herd = tell(small_herd(), "animal", tag="50", name="Juno", sex="doe")
    assert refused("cards", herd, Wanted("Juno")).text == "Juno is the name of several."


def test_nobody_to_print_for() -> None:
    """Says so."""
    assert refused("cards", Herd()) == NO_CARDS


def test_the_sheet_goes_with_the_units() -> None:
    """Letter with pounds, A4 with kilograms, another where it is wanted."""
    metric = changed(Herd().settings, "weight_units", "kg")
    assert (size_for(Herd().settings, None), size_for(metric, None), size_for(metric, "letter")) == ("letter", "a4", "letter")
    assert made("cards", wish=Wanted(size="a4")).size == "a4"


def test_days_on_paper_have_their_year() -> None:
    """A paper hangs for long."""
    assert (written(date(2025, 3, 4)), written(None)) == ("4 Mar 2025", "")


def test_any_tag_makes_a_file_name() -> None:
    """Without what some machines can't have in one."""
    assert [file_part(tag) for tag in ("R-22", "a/b:c", "é 9", "..")] == ["R-22", "a-b-c", "é-9", "x"]
