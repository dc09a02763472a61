"""Photos join an animal's card, and stay with the book."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from core.app import Message, Problem, Sent
from core.app.book import App
from core.app.photos import SHOWN, WHOSE, folder_of, named_alone
from core.reply import Attached, Choice, Reply
from core.store.engine import engine
from tests.core.app.conftest import AT, Say, opened
from tests.core.app.test_app_post import come, waiting

DOT, DASH = b"\xff\xd8 a dot", b"\xff\xd8 a dash"


class Camera:
    """Somebody who sends photos to the farm."""

    def __init__(self, app: App) -> None:
        self.app = app
        self.number = 100
        self.folder = app.photo_folder(Path("nowhere"))

    def send(self, words: str, content: bytes = DOT, *, album: str | None = None, edit: int = 0) -> Reply | None:
        """A photo with these words under it; an edit is of the last one."""
        self.number += not edit
        update = come(self.app, self.number * 10 + edit)
        message = Message(words, AT + timedelta(minutes=self.number), "ann", "c", str(self.number), edit)
        return self.app.photo_update(update, message, Sent(content, "jpg", album), AT, self.folder)

    def ask(self, words: str) -> Reply:
        """The answer to a question."""
        self.number += 1
        return self.app.hear(Message(words, AT + timedelta(days=1), "ann", "c", str(self.number)))

    def shown(self, words: str = "photos 14") -> list[bytes | Problem]:
        """What the photos asked for hold."""
        return [self.app.photo(one.key or "", self.folder) for one in self.ask(words).attached]


@pytest.fixture
def camera(app: App, small_farm: Say) -> Camera:
    """A farm with doe 14, buck 3, and somebody with a camera."""
    return Camera(app)


def test_a_photo_joins_the_card_of_whom_it_names(camera: Camera) -> None:
    """The tag alone is enough; it can be looked at, and the card says that it is there."""
    assert camera.send("14") == Reply(("The photo is kept with doe 14.",), (Choice("Photos of 14", "photos 14"),))
    told = camera.ask("photos 14")
    assert told.lines == ("Doe 14: 1 photo.",)
    (shown,) = told.attached
    assert shown == Attached("photo", "photo", Sent(DOT, "jpg").file, "14-photo-1.jpg", "14, Wed 4 Mar 2026")
    assert camera.app.photo(shown.key or "", camera.folder) == DOT
    assert camera.ask("card 14").choices[-1].says == "photos 14"
    assert camera.app.status()["photos"] == 1
    (kept,) = waiting(camera.app)
    assert kept.payload["lines"] == ["The photo is kept with doe 14."]


@pytest.mark.parametrize("words", ["14", "Juno", "doe 14", "photo of 14", "Here is Juno!", "14 Juno"])
def test_the_words_may_say_whose_it_is_in_many_ways(camera: Camera, words: str) -> None:
    """Name or tag, with the small words that people put beside it."""
    camera.app.hear(Message("new doe 15 named Juno", AT, "ann", "c", "n15"))
    wanted = "15" if "Juno" in words and "14" not in words else "14"
    if words == "14 Juno":
        assert named_alone(camera.app._hearing.book().herd, words) is None
    else:
        assert camera.send(words) is not None
        assert len(camera.shown(f"photos {wanted}")) == 1


def test_words_that_are_a_note_are_heard(camera: Camera) -> None:
    """The photo is with whom the note tells of, and the answer says both."""
    told = camera.send("14 weighed 4-2")
    assert told is not None
    assert "4 lb 2 oz" in told.text
    assert told.lines[-1] == "The photo is kept with doe 14."
    assert camera.shown() == [DOT]
    assert camera.ask("weights 14").lines[0].startswith("Doe 14: 1 weight")


def test_a_note_that_asks_keeps_its_photo(camera: Camera) -> None:
    """The question is about an animal; the photo is of it whatever the answer."""
    told = camera.send("14 weighed 44 lb")
    assert told is not None
    assert "44 lb can't be for 14" in told.text
    assert told.lines[-1] == "The photo is kept with doe 14."


def test_a_note_of_nobody_keeps_no_photo(camera: Camera) -> None:
    """It is asked whose it is; a question is no note of anybody."""
    for words in ("the barn roof leaks", "card 14"):
        told = camera.send(words)
        assert told is not None
        assert told.lines[-1] == WHOSE
    assert camera.app.status()["photos"] == 0


def test_a_photo_without_words_asks_whose_it_is(camera: Camera) -> None:
    """Nothing is kept of it."""
    assert camera.send("") == Reply((WHOSE,))
    assert camera.app.photo_rows() == ()


def test_an_album_is_answered_once(camera: Camera) -> None:
    """The words stand under one of its photos, wherever that is, and count for all."""
    assert camera.send("", DASH, album="7") == Reply((WHOSE,))
    told = camera.send("14", DOT, album="7")
    assert told is not None
    assert "doe 14" in told.text
    assert camera.send("", b"third", album="7") is None
    assert set(map(str, camera.shown())) == set(map(str, (DOT, DASH, b"third")))
    assert camera.send("", b"other", album="8") == Reply((WHOSE,))
    assert camera.app.status()["photos"] == 3


def test_other_words_under_it_put_it_right(camera: Camera) -> None:
    """An edit moves the photo to the other animal."""
    camera.send("14")
    told = camera.send("3", edit=1)
    assert told is not None
    assert told.text == "The photo is kept with buck 3."
    assert camera.ask("photos 14").text == "No photo of doe 14 yet. Send one with 14 under it."
    assert camera.shown("photos 3") == [DOT]
    camera.send("", edit=2)
    assert camera.shown("photos 3") == [DOT]


def test_a_photo_that_came_twice_is_shown_once(camera: Camera) -> None:
    """It is one file; of many the newest are shown."""
    camera.send("14")
    camera.send("14")
    assert camera.ask("photos 14").text == "Doe 14: 1 photo."
    for number in range(SHOWN):
        camera.send("14", b"photo %d" % number)
    told = camera.ask("photos 14")
    assert told.text == f"Doe 14: {SHOWN + 1} photos, the newest {SHOWN}."
    assert len(told.attached) == SHOWN
    assert len(list(camera.folder.iterdir())) == SHOWN + 1


def test_the_same_update_again_changes_nothing(camera: Camera) -> None:
    """It was kept, and the machine stopped before that was written down."""
    camera.send("14")
    camera.number -= 1
    camera.app.take_updates("bot", [(9999, "c", "{}")])
    assert camera.send("14") is None
    assert len(camera.app.photo_rows()) == 1


def test_a_file_that_is_gone_is_said(camera: Camera) -> None:
    """And nothing but a file of the folder can be had."""
    camera.send("14")
    for file in camera.folder.iterdir():
        file.unlink()
    for name in (Sent(DOT, "jpg").file, "../book.sqlite"):
        found = camera.app.photo(name, camera.folder)
        assert isinstance(found, Problem)
    assert list(camera.app.photos(camera.folder)) == []


def test_a_check_misses_files_that_are_gone(camera: Camera) -> None:
    """It says how many and where they should be; a book whose photos are there is sound."""
    camera.send("14")
    camera.send("3", DASH)
    assert camera.app.check() == ()
    next(camera.folder.iterdir()).unlink()
    (problem,) = camera.app.check()
    assert problem.code == "unsound"
    assert problem.text == f"1 photo of 2: the file is not in {camera.folder}."


def test_a_damaged_photo_is_told_and_goes_nowhere(camera: Camera, tmp_path: Path) -> None:
    """It is not shown, nor in an archive, which stays one that can be taken in; a copy of the day keeps the whole one, and gives it back."""
    camera.send("14")
    camera.send("3", DASH)
    assert camera.app.copy_of_the_day(AT) is None
    harmed = camera.folder / Sent(DOT, "jpg").file
    harmed.write_bytes(b"\xff\xd8 a dor")
    (problem,) = camera.app.check()
    assert problem.text == f"1 photo of 2: the file in {camera.folder} is damaged."
    assert camera.shown("photos 3") == [DASH]
    assert isinstance(camera.shown("photos 14")[0], Problem)
    assert camera.app.backup(tmp_path / "copy.sqlite") is None
    assert [file.read_bytes() for file in (tmp_path / "copy.sqlite.photos").iterdir()] == [DASH]
    parts, again = camera.app.archive(camera.folder), opened(tmp_path / "again.sqlite")
    assert again.take_archive(parts, tmp_path / "again", AT) == len(camera.app._hearing.book().notes)
    copies = Path(f"{tmp_path / 'book.sqlite'}.copies")
    assert camera.app.copy_of_the_day(AT + timedelta(days=1)) is None
    assert {file.read_bytes() for file in (copies / "photos").iterdir()} == {DOT, DASH}
    third = opened(tmp_path / "third.sqlite")
    third.restore_file(copies / "2026-03-05.sqlite")
    assert Camera(third).shown() == [DOT]
    camera.send("14")
    assert camera.app.check() == ()
    for book in (again, third):
        book.close()


def test_photos_of_an_animal_that_was_taken_back(camera: Camera) -> None:
    """They stay with its key, and are told by it."""
    camera.app.hear(Message("new doe 21", AT, "ann", "c", "n21"))
    camera.send("21", album="9")
    camera.app.hear(Message("undo", AT, "ann", "c", "n22"))
    told = camera.send("", DASH, album="9")
    assert told is None
    camera.send("14", b"other")
    assert len(camera.app.photo_rows()) == 3


def test_a_backup_holds_the_photos(camera: Camera, tmp_path: Path) -> None:
    """In a folder beside the copy; restored they are shown again, in the other book's own folder."""
    camera.send("14")
    camera.send("3", DASH)
    copy = tmp_path / "safe" / "copy.sqlite"
    assert camera.app.backup(copy) is None
    assert {file.read_bytes() for file in Path(f"{copy}.photos").iterdir()} == {DOT, DASH}
    again = opened(tmp_path / "again.sqlite")
    assert again.restore_file(copy) == 3
    assert Camera(again).shown() == [DOT]
    assert dict(again.photos(Camera(again).folder)) == dict(camera.app.photos(camera.folder))
    assert again.status()["photos"] == 2
    again.close()


def test_a_book_without_photos_is_copied_without_a_folder(camera: Camera, tmp_path: Path) -> None:
    """A journal has none either."""
    copy = tmp_path / "copy.sqlite"
    assert camera.app.backup(copy) is None
    assert not Path(f"{copy}.photos").exists()


def test_photos_lie_beside_a_book_in_a_file(tmp_path: Path) -> None:
    """A book in no file keeps them in the spare place."""
    made = engine("sqlite://")
    assert folder_of(made.url) is None
    made.dispose()
    assert folder_of(engine(f"sqlite:///{tmp_path}/b.sqlite").url) == tmp_path / "b.sqlite.photos"
