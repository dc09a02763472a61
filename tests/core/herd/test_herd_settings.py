"""How the farm wants things: defaults of the handbook, and what was said instead."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from core.handbook import breeds, feeding, flags, genetics, stages, survival
from core.herd import settings as wanted
from core.herd.settings import Settings, changed
from core.herd.wishes import BY_BREED, WISHES, normal

NOW = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("asked", "default"),
    [
        (wanted.bucks_a_breed, flags.BUCKS_A_BREED.value),
        (wanted.does_a_breed, None),
        (wanted.target_weight, breeds.target_g(None)),
        (wanted.lowest_survival, survival.LOWEST_SURVIVAL.value),
        (wanted.highest_coi, genetics.COI_WARN.value),
        (wanted.junior_age, stages.JUNIOR_FROM_DAYS.value),
        (wanted.feed_bag, feeding.BAG_G.value),
        (wanted.cup_weight, feeding.CUP_G.value),
        (wanted.feed_price, None),
        (wanted.feed_money, None),
        (wanted.cages, None),
        (wanted.mouths, None),
        (wanted.reminder_time, "07:00"),
        (wanted.digest_day, "sunday"),
        (wanted.quiet_hours, ("21:00", "06:30")),
        (wanted.colors_wanted, None),
        (wanted.aim, None),
        (wanted.winter_low, None),
        (wanted.litters_wanted, None),
        (wanted.lowest_temper, "mixed"),
        (wanted.risk, "some"),
        (wanted.plain_notes, "words"),
        (wanted.winter_feed, None),
    ],
)
def test_default(asked: Any, default: Any) -> None:
    """What nobody said is the handbook's figure, or unknown."""
    assert asked(Settings()) == default


@pytest.mark.parametrize(
    ("name", "value", "asked", "answer"),
    [
        ("does_a_breed", 4, wanted.does_a_breed, 4),
        ("feed_price", "22.00", wanted.feed_price, 2200),
        ("feed_money", "150.50", wanted.feed_money, 15050),
        ("cages", 14, wanted.cages, 14),
        ("mouths", 9, wanted.mouths, 9),
        ("reminder_time", "06:15", wanted.reminder_time, "06:15"),
        ("quiet_to", "05:00", wanted.quiet_hours, ("21:00", "05:00")),
        ("colors_wanted", "castor", wanted.colors_wanted, "castor"),
        ("aim", "meat", wanted.aim, "meat"),
        ("winter_low", -9.4, wanted.winter_low, -9.4),
        ("litters_wanted", 8, wanted.litters_wanted, 8),
        ("lowest_temper", "good", wanted.lowest_temper, "good"),
        ("risk", "low", wanted.risk, "low"),
        ("plain_notes", "thumb", wanted.plain_notes, "thumb"),
        ("winter_feed", 272160, wanted.winter_feed, 272160),
    ],
)
def test_said(name: str, value: Any, asked: Any, answer: Any) -> None:
    """What was said is what the farm wants."""
    assert asked(changed(Settings(), name, value)) == answer


def test_said_for_a_breed_holds_for_that_breed_only() -> None:
    """A target for Mini Rex, by any of its names, leaves the New Zealands at theirs."""
    said = changed(Settings(), "target_weight", 1500, "mini rex")

    assert wanted.target_weight(said, "Mini Rex") == 1500
    assert wanted.target_weight(said, "New Zealand") == breeds.target_g("New Zealand")
    assert wanted.target_weight(changed(said, "target_weight", 2000), "New Zealand") == 2000


def test_a_breed_nobody_knows_can_have_a_wish() -> None:
    """A breed that the handbook lacks is known by its own name in any case."""
    assert wanted.bucks_a_breed(changed(Settings(), "bucks_a_breed", 1, "Barn Mix"), "barn mix") == 1


def test_litters_wanted_of_a_breed_are_no_litters_of_all() -> None:
    """Eight litters in all say nothing of one breed, three of Mini Rex nothing of all."""
    said = changed(changed(Settings(), "litters_wanted", 8), "litters_wanted", 3, "mini rex")

    assert (wanted.litters_wanted(said), wanted.litters_wanted(said, "Mini Rex"), wanted.litters_wanted(said, "Rex")) == (8, 3, None)


def test_units_become_fields() -> None:
    """The settings that code asks for by name are fields too."""
    said = changed(Settings(), "weight_units", "kg")

    assert (said.weight_units, said.said["weight_units"]) == ("kg", "kg")


def test_seasons() -> None:
    """Winter and spring are the next ones unless the farm names a day."""
    assert wanted.winter(Settings(), NOW) == date(2026, 12, 1)
    assert wanted.spring(Settings(), NOW) == date(2027, 4, 1)
    assert wanted.winter(changed(Settings(), "winter", "2026-11-15"), NOW) == date(2026, 11, 15)


@pytest.mark.parametrize(
    ("today", "begins", "over"),
    [
        (date(2026, 4, 1), date(2025, 12, 1), date(2026, 4, 1)),
        (date(2026, 4, 2), date(2026, 12, 1), date(2027, 4, 1)),
        (date(2026, 12, 31), date(2026, 12, 1), date(2027, 4, 1)),
        (date(2027, 1, 1), date(2026, 12, 1), date(2027, 4, 1)),
    ],
)
def test_the_winter_is_the_one_before_the_next_spring(today: date, begins: date, over: date) -> None:
    """In January winter began in December, in April the next one is meant."""
    assert (wanted.winter(Settings(), today), wanted.spring(Settings(), today)) == (begins, over)


def test_a_season_once_said_comes_every_year() -> None:
    """Said for one year, it holds for the next; a leap day is the 28th in other years."""
    said = changed(changed(Settings(), "winter", "2025-11-10"), "spring", "2026-04-20")
    assert [wanted.spring(said, today) for today in (NOW, date(2027, 5, 1))] == [date(2027, 4, 20), date(2028, 4, 20)]
    assert [wanted.winter(said, today) for today in (NOW, date(2027, 5, 1))] == [date(2026, 11, 10), date(2027, 11, 10)]
    assert wanted.spring(changed(Settings(), "spring", "2024-02-29"), NOW) == date(2027, 2, 28)


@pytest.mark.parametrize(
    ("name", "value", "kept"),
    [
        ("bucks_a_breed", 2, 2),
        ("bucks_a_breed", "2.0", 2),
        ("bucks_a_breed", -1, None),
        ("bucks_a_breed", 1.5, None),
        ("bucks_a_breed", "two", None),
        ("cages", True, None),
        ("mouths", "inf", None),
        ("target_weight", 0, None),
        ("target_weight", 2041, 2041),
        ("feed_price", "$22", "22.00"),
        ("feed_price", -3, None),
        ("lowest_survival", 70, 0.7),
        ("lowest_survival", "65%", 0.65),
        ("lowest_survival", "0.5%", 0.005),
        ("lowest_survival", 0.7, 0.7),
        ("lowest_survival", 170, None),
        ("highest_coi", "a lot", None),
        ("winter", "2026-12-01", "2026-12-01"),
        ("winter", "soon", None),
        ("reminder_time", "6:05", "06:05"),
        ("reminder_time", "25:00", None),
        ("timezone", "America/Chicago", "America/Chicago"),
        ("timezone", "america/new york", "America/New_York"),
        ("timezone", "Moon/Crater", None),
        ("timezone", "/etc", None),
        ("digest_day", "Sunday", "sunday"),
        ("digest_day", "someday", None),
        ("weight_units", "KG", "kg"),
        ("date_order", "dmy", "DMY"),
        ("dotted_weight", "both", None),
        ("aim", "  show ", "show"),
        ("winter_low", "-9.4", -9.4),
        ("winter_low", 0, 0.0),
        ("winter_low", -61, None),
        ("winter_low", "cold", None),
        ("aim", " ", None),
        ("no_such", 1, None),
    ],
)
def test_normal(name: str, value: Any, kept: Any) -> None:
    """A value is put into the book's one form, or refused."""
    assert normal(name, value) == kept


def test_settings_by_breed_are_settings() -> None:
    """Whatever may be said for one breed is a setting."""
    assert set(WISHES) >= BY_BREED
