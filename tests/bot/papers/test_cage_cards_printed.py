"""Cage cards as they come out of the printer."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

import pytest

from bot.papers import fonts
from bot.papers.pdf import Printed, pdf
from bot.papers.qr import IN_64, link, matrix, note_of
from core.app.papers import CageCard, Paper
from tests.bot.papers.looking import codes, ink_at_the_edge, size, texts

MADE = datetime(2026, 11, 25, 13, 10, tzinfo=UTC)
LONG = "Wilhelmina-Anastasia of the Upper Meadow"


def card(tag: str, name: str = "Juno", breed: str = "Mini Rex") -> CageCard:
    """A doe's card."""
    columns = ("Bred", "Buck", "Due", "Kindled", "Alive", "Weaned")
    line = ("24 Oct 2026", "3", "24 Nov 2026", "palpated open", "8", "7")
    facts = (("Born", "4 Mar 2025"), ("Sire", f"3 {LONG}"), ("Dam", ""), ("Cage", "B2"))
    return CageCard(tag, "".join(tag.split()), name, ("doe", breed, "castor"), facts, columns, (line, *[("",) * 6] * 4))


def printed(*cards: CageCard, on: str = "letter", bot: str | None = "barn_notes_bot") -> Printed:
    """Those cards on paper."""
    return pdf(Paper("cards", "cards.pdf", "Cage cards", "home", MADE, MADE.date(), on, cards, "Cards."), bot)


def test_each_code_opens_the_chat_at_its_animal() -> None:
    """Read off the rendered page, whatever the tag looks like."""
    tags = ("14", "R-22", "R 22", "7&8", "ОЛ-1", "é9")
    addresses = {link("barn_notes_bot", tag.replace(" ", "")) for tag in tags}
    assert codes(printed(*(card(tag) for tag in tags)).content) == addresses
    payloads = {str(address).partition("start=")[2] for address in addresses}
    assert {note_of(payload) for payload in payloads} == {"card " + tag.replace(" ", "") for tag in tags}


def test_a_dirty_code_is_still_read() -> None:
    """A barn is no office: a fifth of its fields may be wrong in one corner."""
    import numpy as np
    import zxingcpp

    fields = np.array(matrix("https://t.me/barn_notes_bot?start=card_14"), dtype=np.uint8)
    fields[-6:, -6:] = 1
    shown = np.kron(np.pad(1 - fields, 4, constant_values=1), np.ones((6, 6), dtype=np.uint8)) * 255
    (found,) = zxingcpp.read_barcodes(shown)
    assert found.text == "https://t.me/barn_notes_bot?start=card_14"


def test_no_code_without_a_bot_or_for_a_tag_too_long() -> None:
    """Nor where no word means the animal. The card is whole without it."""
    assert codes(printed(replace(card("14"), asks=None)).content) == set()
    assert codes(printed(card("14"), bot=None).content) == set()
    long = printed(card("x" * 70))
    assert codes(long.content) == set()
    assert "x" * 70 in texts(long.content)[0]


@pytest.mark.parametrize(
    "payload", ["ABCD-1234", "card_", "card_a b", "tag64_!!", "tag64_gA", "", IN_64 + "MTQgZGllZA", IN_64 + "MTQKdW5kbw"]
)
def test_other_payloads_are_no_animal(payload: str) -> None:
    """A set-up code, say, or one that somebody made up: `14 died`, or `14` and `undo` on the next line."""
    assert note_of(payload) is None


def test_all_of_it_can_be_read() -> None:
    """By extraction: tag, name, breed, parents, and each line."""
    (text,) = texts(printed(card("14", LONG)).content)
    for part in (
        "14",
        "Wilhelmina-Anastasia",
        "Meadow",
        "doe · Mini Rex · castor",
        "4 Mar 2025",
        f"3 {LONG}",
        "palpated open",
        "24 Nov 2026",
    ):
        assert part in text


def test_six_on_a_sheet() -> None:
    """On both sizes, nothing where a printer can't print."""
    seven = [card(str(tag)) for tag in range(1, 8)]
    for on, expected in (("letter", (216, 279)), ("a4", (210, 297))):
        made = printed(*seven, on=on)
        assert made.pages == len(texts(made.content)) == 2
        assert size(made.content) == expected
        assert not ink_at_the_edge(made.content)


def test_names_in_any_script_that_the_fonts_have() -> None:
    """Greek, Cyrillic, Hebrew, Arabic: DejaVu has them, and it is always there."""
    made = printed(*(card(str(at), name) for at, name in enumerate(("Ελπίδα", "Рябина", "Žofie", "ארנבת", "أرنب"))))
    assert made.missing == ""
    (text,) = texts(made.content)
    assert all(name in text for name in ("Ελπίδα", "Рябина", "Žofie"))


def test_a_letter_in_no_font_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    """A hollow box stands for it."""
    monkeypatch.setattr(fonts, "others", lambda: iter(()))
    made = printed(card("14", "月 Luna"))
    assert made.missing == "月"
    assert "▯ Luna" in texts(made.content)[0]


def test_other_fonts_are_opened_only_when_needed(monkeypatch: pytest.MonkeyPatch) -> None:
    """One after the other, until all letters are there."""
    opened: list[str] = []

    def others() -> Any:
        for path in (fonts.folder() / "DejaVuSerif.ttf", fonts.folder() / "STIXGeneral.ttf"):
            opened.append(path.name)
            yield path

    monkeypatch.setattr(fonts, "others", others)
    assert printed(card("14")).missing == ""
    assert opened == []
    assert printed(card("14", "月")).missing == "月"
    assert opened == ["DejaVuSerif.ttf", "STIXGeneral.ttf"]


def test_fonts_of_the_machine_are_found() -> None:
    """As far as they are there; a package that is missing says so."""
    assert all(path.exists() for path in fonts.others())
    assert fonts.regular().exists()
    assert fonts.bold().exists()
    with pytest.raises(ModuleNotFoundError):
        fonts._package("no_such_package_of_fonts")


def test_signs_that_nobody_sees_are_left_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """No box stands for a joiner or for what tells an emoji's form; even half a sign breaks nothing."""
    monkeypatch.setattr(fonts, "others", lambda: iter(()))
    made = printed(card("14", "Lu\U000e0020na\U000e0100 \ud83d"))
    assert made.missing == "\ud83d"
    assert "Luna ▯" in texts(made.content)[0]
