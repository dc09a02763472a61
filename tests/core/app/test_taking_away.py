"""Which words ask for the whole book, and who gets it."""

from __future__ import annotations

import pytest

from core.app.members import OWNERS_ONLY
from core.app.taking_away import EXPORT, FORMS, handed_over, wanted_form


@pytest.mark.parametrize(
    ("said", "form"),
    [
        ("export notes", "notes"),
        ("Send me all my notes", "notes"),
        ("/export csv", "csv"),
        ("please export a spreadsheet", "xlsx"),
        ("send me a table of everything", "xlsx"),
        ("download the JSON.", "json"),
        ("export fam", "fam"),
        ("send me the archive of the farm", "archive"),
        ("export", ""),
        ("export everything!", ""),
    ],
)
def test_the_form_that_is_wanted(said: str, form: str) -> None:
    """In a person's own words."""
    assert wanted_form(said) == form


@pytest.mark.parametrize(
    "said", ["send me the notes on 14", "14 weighed 4-6", "notes", "sold the spreadsheet of 14", "export 14 to Flint", "archive", ""]
)
def test_other_words_are_none_of_it(said: str) -> None:
    """They stay notes and questions."""
    assert wanted_form(said) is None


def test_without_a_form_every_form_is_offered() -> None:
    """And each offer asks for just that form."""
    reply = handed_over("", owner=True)
    assert [wanted_form(choice.says) for choice in reply.choices] == list(FORMS)
    assert not reply.attached


def test_only_an_owner_gets_the_book() -> None:
    """Whatever the form."""
    for form in ("", *FORMS):
        refused = handed_over(form, owner=False)
        assert refused.lines == (OWNERS_ONLY,)
        assert not refused.attached
    given = handed_over("archive", owner=True).attached
    assert [(file.what, file.about, file.name) for file in given] == [(EXPORT, "archive", "farm-archive.zip")]
