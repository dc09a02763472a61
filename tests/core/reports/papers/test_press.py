"""Papers by name: sizes, file names, and why there is none."""

from __future__ import annotations

from datetime import UTC, date, datetime

from core.herd.settings import changed
from core.herd.state import Herd
from core.problem import Problem
from core.reports.papers.paper import PAPERS, Paper, size_for, written
from core.reports.papers.press import NO_CARDS, NO_LITTER, NO_PLAN, SHEETS, WHOSE, file_part, paper
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


def test_each_paper_has_its_name_and_words() -> None:
    """A pedigree and a litter's record are named after their animal."""
    told = {
        about: (made(about, wish=wish).name, made(about, wish=wish).alt)
        for about, wish in (
            ("pedigree", Wanted("31")), ("litter", Wanted("16")), ("litter", Wanted()), ("chores", Wanted("22", days=0)), ("crib", Wanted()),
        )
    }  # fmt: skip
    assert told["pedigree"] == ("pedigree-31.pdf", "Pedigree of 31, 4 generations. COI 0.0 %, all ancestors known for 1 generation.")
    assert told["litter"] == ("litters.pdf", "1 litter record to print.")
    assert made("litter", wish=Wanted("16")).alt == "Litter of 16 Thistle, 8 Oct 2026: its record to print."
    assert made("litter", wish=Wanted("16")).name == "litter-16.pdf"
    assert told["chores"] == ("chores.pdf", "Chores for 22, Wed 25 Nov 2026: 1 chore to print.")
    assert told["crib"] == ("crib.pdf", "What to text when: a page for the barn wall.")
    assert made("plan").alt.startswith("The keep or cull plan to print: ")


def test_what_can_not_be_printed() -> None:
    """Each says why, and what to do."""
    assert refused("pedigree") == WHOSE
    assert refused("litter", wish=Wanted("22")) == NO_LITTER
    assert refused("plan", Herd()) == NO_PLAN


def test_there_is_a_sheet_for_each_paper() -> None:
    """And for no other."""
    assert set(SHEETS) == set(PAPERS)
