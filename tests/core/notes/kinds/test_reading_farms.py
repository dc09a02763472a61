"""What depends on the farm: its units, an animal whose birth nobody knows, a tag that two bear, a dot that nobody explained."""

from __future__ import annotations

from datetime import datetime
from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader
from tests.core.notes.kinds.reads import AT, ROSTER


def document(text: str, at: datetime = AT, **farm: Any) -> dict[str, Any]:
    """What a note becomes on the sample farm with some settings changed, and a doe 40 of unknown birth, and a doe 41 like whom a stud elsewhere is called."""
    stud = {"tag": "041", "sex": "buck", "origin": "outside"}
    animals = [{"tag": "40", "sex": "doe", "breed": "Mini Rex"}, {"tag": "41", "sex": "doe"}, stud, *ROSTER["animals"]]
    found = reader({**ROSTER, "farm": {**ROSTER["farm"], **farm}, "animals": animals})
    assert isinstance(found, Reader), found
    return found.read(text, at)


@pytest.mark.parametrize("text", ["weighed 31 4.6", "33 weighs 3.9"])
def test_a_dot_that_the_farm_has_not_explained_asks(text: str) -> None:
    """Four pounds and six tenths, or six ounces: the two are choices."""
    found = document(text, dotted_weight=None)
    assert found["ask"]["why"] == "which_number"
    assert found["facts"] == []


def test_a_dot_with_more_figures_is_decimal_in_no_case_silently() -> None:
    """`4.625` says pounds and a fraction; it is recorded as that or asked about."""
    found = document("weighed 31 4.625", dotted_weight=None)
    assert found["ask"] or found["facts"][0]["grams"] == 2098


@pytest.mark.parametrize(("dotted", "grams"), [("decimal", 2087), ("ounces", 1984)])
def test_a_dot_means_what_the_farm_says(dotted: str, grams: int) -> None:
    """4.6 lb, or 4 lb 6 oz."""
    assert document("weighed 31 4.6", dotted_weight=dotted)["facts"][0]["grams"] == grams


def test_an_age_of_an_animal_of_unknown_birth_agrees_with_nothing() -> None:
    """The weight is recorded; the age can't be checked."""
    found = document("weighed 40 at 10 weeks 4-6")
    assert [fact["kind"] for fact in found["facts"]] == ["weighed"]
    assert found["ask"] is None


def test_a_tag_that_two_bear_is_the_living_animal() -> None:
    """The doe that lives here, not the buck elsewhere."""
    found = document("41 wouldn't lift for Moss")
    assert (found["facts"][0]["doe"], found["ask"]) == ("41", None)
