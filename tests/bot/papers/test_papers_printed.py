"""Lists and pedigrees as they come out of the printer: all their text is there, on as many pages as it needs."""

from __future__ import annotations

from datetime import UTC, date, datetime
from typing import Any

import pypdfium2
import pytest

from bot.papers.fonts import in_our_order
from bot.papers.pdf import DRAWN, Printed, pdf
from core.app.papers import PAPERS, Ancestor, Leaf, Paper, PedigreeTree, Section
from core.reports.papers.crib_sheet import crib_sheet
from tests.bot.papers.looking import ink_at_the_edge, size, texts

MADE = datetime(2026, 11, 25, 13, 10, tzinfo=UTC)
LONG = "Wilhelmina-Anastasia of the Upper Meadow"


def printed(about: str, content: Any, on: str = "letter") -> Printed:
    """That on paper."""
    return pdf(Paper(about, "x.pdf", "Title", "hill farm", MADE, date(2026, 11, 25), on, content, "Alt."))


def words(made: Printed) -> list[str]:
    """All words of it, in order."""
    return " ".join(texts(made.content)).split()


def leaf(*sections: Section, foot: tuple[str, ...] = ()) -> Leaf:
    """A leaf of sections."""
    return Leaf("What is to do", sections, lead=("Above all this.",), foot=foot)


def test_every_paper_is_drawn() -> None:
    """Each that there is, and no other."""
    assert set(DRAWN) == set(PAPERS)


def test_a_list_has_all_its_text_in_order() -> None:
    """Title, lead, heads, rows, foot; and at the bottom whose it is, as of when, which page."""
    section = Section("Late", ("Before all.",), ("Who", "Why"), (("14 Juno", "because of this"), ("15", "and that")), to_tick=True)
    made = printed("plan", (leaf(section, foot=("Below.",)),))
    assert words(made) == [
        "What",
        "is",
        "to",
        "do",
        "Above",
        "all",
        "this.",
        "Late",
        "Before",
        "all.",
        "Who",
        "Why",
        "14",
        "Juno",
        "because",
        "of",
        "this",
        "15",
        "and",
        "that",
        "Below.",
        "hill",
        "farm,",
        "as",
        "of",
        "25",
        "Nov",
        "2026",
        "1",
        "of",
        "1",
    ]


def test_rows_go_on_over_pages_under_their_heads() -> None:
    """Three hundred rows: each once, none where a printer can't print; each page says what it is of."""
    rows = tuple((f"T{number}", f"reason {number} " + "and so on " * (number % 9)) for number in range(300))
    for on in ("letter", "a4"):
        made = printed("plan", (leaf(Section("Keep", columns=("Who", "Why"), rows=rows)),), on)
        pages = texts(made.content)
        told = words(made)
        assert all(told.count(row[0]) == 1 for row in rows)
        assert made.pages == len(pages) > 5
        assert all("Who" in page and "What is to do" in page and f"{at} of {len(pages)}" in page for at, page in enumerate(pages, 1))
        assert not any(ink_at_the_edge(made.content, page) for page in (0, 1, made.pages - 1))


def test_a_text_longer_than_a_page_is_shrunk_and_not_cut() -> None:
    """A reminder may be as long as a message."""
    story = " ".join(f"word{number}" for number in range(900))
    made = printed("chores", (leaf(Section("Today", columns=("", "What you saw"), rows=((story, ""),), to_tick=True), foot=(story,)),))
    told = words(made)
    assert all(told.count(f"word{number}") == 2 for number in range(900))
    assert not any(ink_at_the_edge(made.content, page) for page in range(made.pages))


def test_a_word_longer_than_its_column_is_shrunk() -> None:
    """It stays within the page."""
    made = printed("plan", (leaf(Section(rows=(("x" * 300, "why"),))),))
    assert "x" * 300 in words(made)
    assert not ink_at_the_edge(made.content)


def test_a_head_stays_with_its_rows() -> None:
    """It never stands alone at the foot of a page."""
    for lines in range(40, 60):
        made = printed("plan", (leaf(Section(rows=(("a row",),) * lines), Section("The head", columns=("Who",), rows=(("the row",),))),))
        assert any("The head" in page and "the row" in page for page in texts(made.content))


def test_each_leaf_has_its_page() -> None:
    """Litter records can be filed one by one."""
    made = printed("litter", (leaf(Section(rows=(("one",),))), leaf(Section(rows=(("two",),)))))
    assert [("one" in page, "two" in page) for page in texts(made.content)] == [(True, False), (False, True)]


def test_a_number_stays_with_its_unit() -> None:
    """`4 lb 3 oz` is never broken before `oz`, nor `81 %` before its sign."""
    row = (" ".join(["allowing for luck 81 % or 4 lb 3 oz"] * 40),)
    made = printed("plan", (leaf(Section(rows=(row,))),))
    lines = [line.strip() for line in texts(made.content)[0].splitlines()]
    assert len(lines) > 10
    assert not any(line.startswith(("%", "lb", "oz")) for line in lines)


@pytest.mark.parametrize("generations", [3, 4, 5])
@pytest.mark.parametrize("on", ["letter", "a4"])
def test_a_pedigree_has_everybody(generations: int, on: str) -> None:
    """On one sheet that lies across, each with all that is known, however long the names are."""
    rows = tuple(
        tuple(
            Ancestor(f"G{deep}N{at} {LONG}", ("broken blue otter", "born 4 Mar 2025", "4 lb 3 oz", "COI 12.5 %")) for at in range(2**deep)
        )
        for deep in range(1, generations + 1)
    )
    made = printed("pedigree", PedigreeTree(Ancestor(f"14 {LONG}", ("Mini Rex", "castor")), rows, ("COI 1.0 %.", "Through 3.")), on)
    told = " ".join(words(made))
    assert made.pages == 1
    assert size(made.content) == {"letter": (279, 216), "a4": (297, 210)}[on]
    assert not ink_at_the_edge(made.content)
    for deep, row in enumerate(rows, 1):
        assert all(f"G{deep}N{at} {LONG}" in told for at in range(len(row)))
    assert told.count("born 4 Mar 2025") == told.count("4 lb 3 oz") == sum(len(row) for row in rows)
    assert f"14 {LONG} Mini Rex · castor COI 1.0 %. Through 3." in told


def test_who_is_not_known_has_a_line() -> None:
    """And nothing on it."""
    made = printed("pedigree", PedigreeTree(Ancestor("14", ()), ((None, None), (None,) * 4, (None,) * 8), ("COI 0.0 %.",)))
    assert words(made) == ["14", "COI", "0.0", "%.", "hill", "farm,", "as", "of", "25", "Nov", "2026", "1", "of", "1"]


def test_the_crib_is_read_from_afar() -> None:
    """Larger than other papers, and still on one page of either size."""
    content = (crib_sheet(),)
    for on in ("letter", "a4"):
        made = printed("crib", content, on)
        assert made.pages == 1
        assert not ink_at_the_edge(made.content)
    assert "14 missed" in texts(made.content)[0].replace("\u00a0", " ")


def test_a_name_from_the_right_turns_nothing_around() -> None:
    """The tag stays before it and the day behind it; text from the left is as it was."""
    named = "14 \u05e9\u05e8\u05d4 \u05dc\u05d0\u05d4, 10 Nov"
    assert in_our_order(named) == "\u200e14 \u05e9\u05e8\u05d4 \u05dc\u05d0\u05d4\u200e, 10 Nov"
    assert in_our_order("14 Juno, 10 Nov") == "14 Juno, 10 Nov"
    page = pypdfium2.PdfDocument(printed("plan", (leaf(Section(named, (), ())),)).content)[0].get_textpage()
    shown = page.get_text_range()
    left = {letter: page.get_charbox(shown.index(letter))[0] for letter in "4\u05e9N"}
    assert left["4"] < left["\u05e9"] < left["N"]
