"""Lists brought through a chat: what is answered before and after they are taken in."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from core.app.book import App
from core.app.bringing import LEFT, Listed, is_list, kept, listed
from core.app.moving_in import Brought
from core.reply import Choice, Reply
from tests.core.app.conftest import AT, Say, opened

HERD = b"Tag,Sex,Breed\nR1,d,Mini Rex\nR2,b,Mini Rex\n"


def brought(content: bytes) -> Brought:
    """A file called herd.csv."""
    return Brought("herd.csv", [("herd", content)], "ann", AT)


def looked(app: App, content: bytes, wanted: Listed | None = None) -> Reply:
    """What is answered about it."""
    return app.bring(brought(content), wanted or Listed("f", "herd.csv"))


def pressed(app: App, content: bytes, reply: Reply, label: str) -> Reply:
    """What a button under the answer leads to."""
    wanted = listed(next(choice.says for choice in reply.choices if choice.label == label))
    assert wanted is not None
    return looked(app, content, wanted)


def labels(reply: Reply) -> list[str]:
    """What stands on the buttons."""
    return [choice.label for choice in reply.choices]


def test_a_button_carries_all_of_its_list() -> None:
    """Other words are no such button."""
    wanted = Listed("f", "our herd.csv", "from the shed", {"dates": "MDY"}, "take")
    assert listed(wanted.says()) == wanted
    assert listed("doe 14 kindled 8") is None
    assert wanted.choice("x", "look", unit="oz") == Choice(
        "x", Listed("f", "our herd.csv", "from the shed", {"dates": "MDY", "unit": "oz"}).says()
    )


def test_a_list_lies_under_what_it_holds(tmp_path: Path) -> None:
    """The same again is the same file."""
    one, other = (kept(tmp_path, name, HERD, "w") for name in ("a.csv", "b.csv"))
    assert one.file == other.file
    assert (tmp_path / one.file).read_bytes() == HERD


def test_where_lists_lie(app: App, place: Path) -> None:
    """Beside the book, apart from its photos."""
    assert app.upload_folder(Path("spare")) == Path(f"{place}.uploads")


def test_it_is_looked_at_then_taken_in(app: App) -> None:
    """With a word about rows that are odd."""
    content = HERD + b"R3,b,Mini Rex\nR4,d,Mini Rex\nR4,b,Mini Rex\n"
    reply = looked(app, content)
    assert reply.lines[-1] == "Nothing is recorded yet. Take it in?"
    done = pressed(app, content, reply, "Take it in")
    assert done.lines[0].startswith("Taken in from herd.csv: ")
    assert done.lines[1] == "1 row with something to look at, as said above."
    assert looked(app, content).lines[-1] == "Nothing new is in it."
    assert pressed(app, content, reply, "Take it in").lines[-1] == "Nothing new is in it."
    assert pressed(app, content, reply, "Leave it") == Reply((LEFT,))


@pytest.mark.parametrize(
    ("content", "asked"),
    [
        (b"Shelf,Breed,Sex\nA,Mini Rex,d\nB,Mini Rex,b\n", ["Shelf", "Breed", "Sex"]),
        (b"Tag,DOB\nR1,3/4/2025\n", ["Month first", "Day first"]),
        (b"Tag,Weight\nR1,4.6\n", ["Tenths of a pound", "Ounces"]),
        (b"Tag,Weight,Date\nR1,900,2026-01-02\n", ["Ounces", "Grams"]),
        (b"Tag,Weight\nR1,4-6\n", ["Wed 4 Mar 2026"]),
        (b"Tag,Status\nR1,dead\n", ["Wed 4 Mar 2026"]),
        (b"Doe,Kindled,Alive,Weaned\nR1,2026-01-02,8,7\n", ["At 28 days", "At 35 days", "At 42 days", "At 56 days"]),
    ],
)
def test_what_has_to_be_known_is_a_button(app: App, content: bytes, asked: list[str]) -> None:
    """And pressing one answers it; nothing is taken in before."""
    reply = looked(app, content)
    assert labels(reply) == [*asked, "Leave it"]
    answered = pressed(app, content, reply, asked[0])
    assert reply.lines[-1] not in answered.lines
    taken = looked(app, content, Listed("f", "herd.csv", do="take"))
    assert taken.lines == reply.lines


@pytest.mark.parametrize("do", ["look", "take"])
def test_what_is_no_list_is_said(app: App, do: str) -> None:
    """Nothing to read, and a book that is none."""
    wanted = Listed("f", "herd.csv", do=do)
    assert looked(app, b"", wanted).lines[0].startswith("There are no rows in herd.csv. Give a CSV file")
    assert "no book of Haynote" in looked(app, b'{"form": "other"}', wanted).lines[0]


def test_a_book_of_ours_comes_back_the_same_way(app: App, small_farm: Say, tmp_path: Path) -> None:
    """Into an empty book as what it was."""
    told = json.dumps(app.export_document()).encode()
    other = opened(str(tmp_path / "other.sqlite"))
    reply = looked(other, told)
    assert labels(reply) == ["Take it in", "Leave it"]
    assert pressed(other, told, reply, "Take it in").lines[-1] == "They are on the book."
    assert other.herd(AT).document == app.herd(AT).document
    assert small_farm is not None


def test_which_messages_are_lists() -> None:
    """One line never is."""
    assert is_list("tag, sex, breed\n14, doe, Mini Rex")
    assert not is_list("tag, sex, breed")
    assert not is_list("14 weighed 8-2\n15 weighed 7-1")
