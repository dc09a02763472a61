"""Colour names and the words for them."""

from __future__ import annotations

import pytest

from core.handbook.colors import SPOTTED, WHITES, color, color_names, color_words


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("castor", "castor"),
        ("Caster", "castor"),
        ("choc", "chocolate"),
        ("tort", "tortoise"),
        ("blue tort", "blue tortoise"),
        ("REW", "rew"),
        ("ruby eyed white", "rew"),
        ("blue-eyed white", "bew"),
        ("white", "white"),
        ("aguti", "agouti"),
        ("Broken  Caster", "broken castor"),
        ("bkn black", "broken black"),
        ("charlie blue", "charlie blue"),
        ("black otter", "black otter"),
        ("smoke pearl", "smoke pearl"),
        ("silver tipped steel", "silver-tipped steel"),
        ("bkn", "broken"),
    ],
)
def test_color_is_found_by_what_people_say(said: str, name: str) -> None:
    """Slips, short forms and mishearings lead to the handbook's word."""
    assert color(said) == name


@pytest.mark.parametrize("said", ["", "plaid", "broken white", "doe"])
def test_unknown_color_is_none(said: str) -> None:
    """A word that is no colour gives none; all-white animals take no spotting prefix."""
    assert color(said) is None


def test_names_are_lower_case_and_once() -> None:
    """Each name is lower case, stands once and is among the words as itself."""
    names = color_names()
    assert len(names) == len(set(names))
    assert all(name == name.lower() and color_words()[name] == name for name in names)


def test_words_lead_to_names() -> None:
    """Every word leads to a handbook name, with a spotting prefix or without."""
    plain = set(color_names())
    for name in color_words().values():
        prefix, _, rest = name.partition(" ")
        assert name in plain or (prefix in SPOTTED and rest in plain - set(WHITES))
