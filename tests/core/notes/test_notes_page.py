"""The pages that are made from the kinds of notes and from the settings."""

from __future__ import annotations

import dataclasses

import pytest

from core.notes import page as notes_page
from core.notes import settings_page
from core.notes.kind import Example
from core.notes.kinds import KIND_OF, KINDS


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_every_kind_has_its_section_with_examples(kind: object) -> None:
    """A heading, what it is, its fields, and a note that gives it; `from` and `with` stand without an underscore."""
    section = notes_page.page().split(f"\n### {kind.name}\n", 1)[1].split("\n## ", 1)[0].split("\n### ", 1)[0]  # type: ignore[attr-defined]
    assert "Fields: `" in section
    assert "_`" not in section
    assert "| note | becomes |" in section


def test_a_kind_without_examples_is_told_all_the_same() -> None:
    """No empty table."""
    bare = dataclasses.replace(KIND_OF["moved"], examples=(), not_this=())
    assert "|" not in notes_page._section(bare)
    assert "Not of this kind" not in notes_page._section(bare)


def test_a_note_of_several_lines_stays_in_its_cell() -> None:
    """So does one with a bar."""
    kind = dataclasses.replace(
        KIND_OF["moved"], examples=(Example("14 to B3\n15 | B4", ({"who": "14", "cage": "B3"},)),), not_this=("a | b",)
    )
    told = notes_page._section(kind)
    assert "`14 to B3 ⏎ 15 \\| B4`" in told
    assert "Not of this kind: `a \\| b`" in told
    assert '`{"kind": "moved", "who": "14", "cage": "B3"}`' in told


@pytest.mark.parametrize(
    ("name", "words"), [("bucks_a_breed", "2"), ("winter", "1 December"), ("cages", "not said"), ("lowest_survival", "70 %")]
)
def test_defaults_in_words(name: str, words: str) -> None:
    """What holds until the farm says otherwise."""
    assert settings_page.default(name) == words
    assert f"| {words} |" in settings_page.page()
