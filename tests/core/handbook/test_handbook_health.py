"""Cautions: they defer to label, vet and law, and promise nothing."""

from __future__ import annotations

import re

import pytest

from core.handbook import health

TEXTS = {name: text for name, text in vars(health).items() if name.isupper() and isinstance(text, str)}


@pytest.mark.parametrize("name", TEXTS)
def test_caution_names_no_number(name: str) -> None:
    """No caution states days, doses or temperatures: those come from the person, the label or a figure."""
    assert not re.search(r"\d", TEXTS[name])


@pytest.mark.parametrize(
    ("name", "who"),
    [
        ("WITHDRAWAL", "vet"),
        ("WITHDRAWAL_UNKNOWN", "vet"),
        ("SLAUGHTER", "local law"),
        ("SELLING_MEAT", "department"),
        ("ZOONOSES", "doctor"),
        ("REPORTABLE", "vet"),
        ("HEAT", "vet"),
        ("CALL_A_VET", "vet"),
    ],
)
def test_caution_defers(name: str, who: str) -> None:
    """Each caution sends the person to somebody who may decide."""
    assert who in TEXTS[name]


def test_signs_are_plain_words() -> None:
    """Red flags and catching signs are lower-case phrases, as they are matched."""
    assert all(sign == sign.lower().strip() for sign in (*health.RED_FLAGS, *health.CATCHING_SIGNS))
