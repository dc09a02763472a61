"""How the reports speak."""

from __future__ import annotations

from datetime import date

import pytest

from core.herd.settings import Settings
from core.herd.state import Animal, Herd
from core.reports import wording
from tests.farm import TODAY


@pytest.mark.parametrize(
    ("days", "text"),
    [(1, "1 day"), (13, "13 days"), (14, "2 weeks"), (188, "26 weeks"), (189, "6 months"), (729, "23 months"), (913, "2.5 years")],
)
def test_ages(days: int, text: str) -> None:
    """Days, weeks to half a year, months to two years, then years."""
    assert wording.age(days) == text


@pytest.mark.parametrize(
    ("chance", "text"),
    [
        (0.01, "his would hardly ever outgrow mine"),
        (0.1, "his would outgrow mine 1 time in 10"),
        (0.5, "his would outgrow mine half the time"),
        (0.83, "his would outgrow mine 8 times in 10"),
        (0.99, "his would almost surely outgrow mine"),
    ],
)
def test_chances(chance: float, text: str) -> None:
    """Chances as people say them."""
    assert wording.how_sure("his would", "outgrow mine", chance) == text


@pytest.mark.parametrize(
    ("sex", "called", "pronoun"), [("buck", "Buck 7 (Moss)", "he"), ("doe", "Doe 7 (Moss)", "she"), (None, "Rabbit 7 (Moss)", "it")]
)
def test_names(sex: str | None, called: str, pronoun: str) -> None:
    """An animal by sex, tag and name."""
    animal = Animal("7", "7", name="Moss", sex=sex)
    assert (wording.called(animal), wording.pronoun(animal), wording.short(animal)) == (called, pronoun, "7 Moss")


def test_weights_and_money_as_the_farm_has_them() -> None:
    """Pounds or kilograms, dollars or other money."""
    metric = Settings(weight_units="kg", currency="EUR")
    assert wording.grams(Settings(), 1984.4) == "4 lb 6 oz"
    assert wording.grams(metric, 1984.4) == "1.98 kg"
    assert wording.more_or_less(Settings(), -85) == "3 oz below"
    assert wording.more_or_less(Settings(), 85) == "3 oz above"
    assert wording.more_or_less(metric, 0.2) == "level with"
    assert (wording.price(Settings(), 1850.4), wording.price(metric, 1850)) == ("$18.50", "18.50 EUR")


@pytest.mark.parametrize(
    ("on", "text"),
    [
        (TODAY, "today"),
        (date(2026, 11, 24), "yesterday"),
        (date(2026, 11, 26), "tomorrow"),
        (date(2026, 11, 1), "Sun 1 Nov"),
        (date(2025, 11, 1), "Sat 1 Nov 2025"),
    ],
)
def test_days(on: date, text: str) -> None:
    """Near days by name, other years with the year."""
    assert wording.when(on, TODAY) == text


def test_tags() -> None:
    """A key's tag; one that is no animal of the book as it stands."""
    herd = Herd(animals={"7~2": Animal("7~2", "7")})
    assert [wording.tag_of(herd, key) for key in ("7~2", "Duke", None)] == ["7", "Duke", None]


def test_interval() -> None:
    """An interval in whole per cent."""
    assert wording.likely(0.554, 0.796) == "allowing for luck, likely 55 to 80 %"
