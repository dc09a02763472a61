"""A farm packed up and unpacked on another machine."""

from __future__ import annotations

import hashlib
import json
from datetime import timedelta
from pathlib import Path

import pytest

from core.app.archiving import ABOUT, JOURNAL, PEOPLE, SHOWN
from core.app.book import App
from core.app.photos import lay_down
from core.problem import Problem
from core.store import people, photos
from core.store.people import Member
from core.store.photos import Photo
from tests.core.app.conftest import AT, Say, opened

FILE = f"{hashlib.sha256(b'picture').hexdigest()}.jpg"


@pytest.fixture
def whole(app: App, say: Say, tmp_path: Path) -> App:
    """A farm with a note that was undone, two people, a chat and a photo."""
    say("new doe 14 mini rex")
    say("14 weighed 4-2")
    say("undo")
    lay_down(tmp_path / "photos", FILE, b"picture")
    with app._engine.begin() as connection:
        for place, name in enumerate(("zoe", "ann")):
            people.add_member(connection, app._farm, Member(f"chat:{name}", name, "owner"), AT + timedelta(place))
        people.know_chat(connection, app._farm, "barn")
        photos.keep(connection, app._farm, Photo("barn", "7", FILE, AT, "ann", None, "14"))
    return app


def test_an_archive_is_the_same_farm_elsewhere(whole: App, tmp_path: Path) -> None:
    """All that was typed, what was undone too; the people in their order, the chats, the photos and whose they are."""
    parts = whole.archive(tmp_path / "photos")
    other = opened(tmp_path / "other.sqlite")
    assert other.take_archive(parts, tmp_path / "elsewhere", AT) == len(list(whole.export_journal())) - 1
    assert list(other.export_journal())[1:] == list(whole.export_journal())[1:]
    assert (tmp_path / "elsewhere" / FILE).read_bytes() == b"picture"
    assert other.photo_rows() == whole.photo_rows()
    assert other.archive(tmp_path / "elsewhere") == parts
    assert [member["name"] for member in other.status()["members"]] == ["zoe", "ann"]
    other.close()


def test_an_archive_says_what_it_leaves_out(whole: App, tmp_path: Path) -> None:
    """In its first part."""
    about = json.loads(whole.archive(tmp_path / "photos")[ABOUT])
    assert len(about["not_here"]) == 3
    assert about["farm"] == "home"


def test_a_book_with_notes_takes_no_archive(whole: App, tmp_path: Path) -> None:
    """Nothing is mixed."""
    found = whole.take_archive(whole.archive(tmp_path / "photos"), tmp_path / "photos", AT)
    assert isinstance(found, Problem)
    assert found.code == "not_empty"


@pytest.mark.parametrize(
    ("name", "content"),
    [
        (ABOUT, b"{}"), (ABOUT, b'{"form": "other", "version": 1, "notes": 3}'), (ABOUT, b'{"form": "haynote archive", "version": 1, "notes": 99}'), (JOURNAL, b"x"), (PEOPLE, b"[]"),
        (SHOWN, b'[{"chat": "x"}]'), (f"photos/{FILE}", b"another"), ("photos/../../x", b"x"),
    ],
)  # fmt: skip
def test_an_archive_that_was_spoilt_is_refused_whole(whole: App, tmp_path: Path, name: str, content: bytes) -> None:
    """Nothing of it is taken, no file is laid down."""
    parts = whole.archive(tmp_path / "photos") | {name: content}
    other = opened(tmp_path / "other.sqlite")
    assert isinstance(other.take_archive(parts, tmp_path / "elsewhere", AT), Problem)
    assert len(list(other.export_journal())) == 1
    assert not (tmp_path / "elsewhere").exists()
    other.close()


def test_a_part_that_is_missing(whole: App, tmp_path: Path) -> None:
    """The archive is not whole."""
    parts = whole.archive(tmp_path / "photos")
    del parts[PEOPLE]
    found = whole.take_archive(parts, tmp_path / "elsewhere", AT)
    assert isinstance(found, Problem)
    assert found.code == "bad_archive"
