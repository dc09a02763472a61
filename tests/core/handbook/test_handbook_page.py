"""The reference page that is made from the figures."""

from __future__ import annotations

from pathlib import Path

import pytest

from core.handbook.breeds import all_breeds
from core.handbook.page import figures, page

COMMITTED = Path(__file__).parents[3] / "docs" / "reference" / "figures.md"


def test_committed_page_is_current() -> None:
    """The page in docs is what the figures say now; if not: `python -m core.handbook.page > docs/reference/figures.md`."""
    assert COMMITTED.read_text(encoding="utf-8") == page()


@pytest.mark.parametrize("name", [name for name, _ in figures()])
def test_page_shows_every_figure(name: str) -> None:
    """Each figure has its row."""
    assert f"| {name.partition('.')[2]} |" in page()


@pytest.mark.parametrize("name", [breed.name for breed in all_breeds()])
def test_page_shows_every_breed(name: str) -> None:
    """Each breed has its row."""
    assert f"| {name} |" in page()


def test_page_shows_open_ranges() -> None:
    """A standard without a minimum or a maximum is shown so, never with an invented limit."""
    assert "| Netherland Dwarf | dwarf | to 2.5 | to 2.5 |" in page()
    assert "| Flemish Giant | giant | from 13 | from 14 |" in page()
