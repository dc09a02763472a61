"""Voice notes on Telegram: saved where it is sure, shown where it is not, and never in anybody's way."""

from __future__ import annotations

import os
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from bot.telegram import words
from bot.voice import ear as voice
from bot.voice.ear import TOO_LONG, Progress, Sounds
from core.app import Primer
from core.app.members import LOOKS_ONLY
from core.app.speaking import DISCARDED, NO_NOTE
from core.problem import Problem
from tests.bot.telegram.served import Served
from tests.bot.telegram.test_telegram_lists import labels, pressed
from tests.bot.telegram.test_telegram_people import invited
from tests.ears import FakeEar
from tests.standin import StandIn

SURE = "14 weighed 8 pounds 3 ounces|fourteen weighed eight pounds three ounces"
UNSURE = "14 weighed 8 pounds 3 ounces"


class SlowEar(FakeEar):
    """Hears nothing before it may, and tells on the way how far it is."""

    def __init__(self) -> None:
        super().__init__(seconds=60)
        self.listens = threading.Event()
        self.may = threading.Event()
        self.closed = False

    def hear(self, sound: Path, told: Primer, progress: Progress = lambda _done, _all: None) -> Sounds | Problem:
        """Waits in the middle."""
        progress(30, 60)
        self.listens.set()
        assert self.may.wait(10)
        return super().hear(sound, told, progress)

    def close(self) -> None:
        """What it is at comes to an end."""
        self.closed = True
        self.may.set()


@pytest.fixture
def ear(monkeypatch: pytest.MonkeyPatch) -> FakeEar:
    """The ear of the server."""
    found = FakeEar()
    monkeypatch.setattr(voice, "ear", lambda: found)
    return found


@pytest.fixture
def slow(monkeypatch: pytest.MonkeyPatch) -> Iterator[SlowEar]:
    """An ear that waits."""
    found = SlowEar()
    monkeypatch.setattr(voice, "ear", lambda: found)
    yield found
    found.may.set()


def spoken(barn: Served, who: str, content: str | bytes, kind: str = "voice", **more: Any) -> dict[str, Any]:
    """The answer to a recording."""
    return barn.standin.wait_answer(barn.standin.send_file(who, kind, content.encode() if isinstance(content, str) else content, **more))


def recordings(barn: Served) -> list[Path]:
    """Those that are kept."""
    return list(Path(f"{barn.book}.voices").glob("*"))


def test_two_ears_that_agree_are_believed(barn: Served, standin: StandIn, ear: FakeEar) -> None:
    """It is saved at once, can be taken back, and the recording is gone."""
    answer = spoken(barn, "Ann", SURE)
    assert answer["text"].splitlines()[:2] == ["Heard: “14 weighed 8 pounds 3 ounces”", "Doe 14: 8 lb 3 oz."]
    assert labels(answer) == ["Undo", "Fix"]
    assert barn.notes()[-1] == "14 weighed 8 pounds 3 ounces"
    assert recordings(barn) == []
    assert pressed(standin, "Ann", answer, "Undo")["text"].startswith("Taken back: Doe 14: 8 lb 3 oz")


def test_one_ear_alone_waits_for_a_button(barn: Served, standin: StandIn, ear: FakeEar) -> None:
    """Nothing is noted and the recording kept until it is saved; a press later changes nothing."""
    before = barn.notes()
    asked = spoken(barn, "Ann", UNSURE, kind="audio", mime_type="audio/mpeg")
    assert labels(asked) == ["Save", "Fix", "Discard"]
    assert (barn.notes(), len(recordings(barn))) == (before, 1)
    saved = pressed(standin, "Ann", asked, "Save")
    assert saved["text"].startswith("Doe 14: 8 lb 3 oz.")
    assert barn.notes()[-1] == UNSURE
    assert recordings(barn) == []
    with pytest.raises(LookupError):
        standin.press("Ann", asked, "Save")


def test_fix_and_discard(barn: Served, standin: StandIn, ear: FakeEar, monkeypatch: pytest.MonkeyPatch) -> None:
    """Neither records anything; where the operator keeps recordings they stay."""
    monkeypatch.setenv("HAYNOTE_KEEP_VOICE", "yes")
    asked = spoken(barn, "Ann", UNSURE, kind="document", mime_type="audio/ogg")
    assert pressed(standin, "Ann", asked, "Fix")["text"] == f"Then please type it as it should be. I heard: “{UNSURE}”"
    assert pressed(standin, "Ann", spoken(barn, "Ann", UNSURE), "Discard")["text"] == DISCARDED
    assert len(recordings(barn)) == 1
    assert barn.ask("Ann", "14 weighed 8-2").startswith("Doe 14: 8 lb 2 oz.")


def test_what_holds_no_note(barn: Served, standin: StandIn, ear: FakeEar) -> None:
    """Silence, talk, a picture with another name, a long recording, one that the service has not got: a plain line, and no record."""
    before = barn.notes()
    assert spoken(barn, "Ann", "")["text"] == NO_NOTE
    assert spoken(barn, "Ann", "The tractor will not start.")["text"].endswith(NO_NOTE)
    assert "no sound" in spoken(barn, "Ann", b"\x89PNG\xff\xfe")["text"]
    assert spoken(barn, "Ann", SURE, duration=600)["text"] == f"{TOO_LONG.text} {TOO_LONG.remedy}"
    standin.fail("getFile", "refuse", code=400, text="Bad Request: file is too big")
    assert spoken(barn, "Ann", SURE)["text"] == words.SOUND_GONE
    assert (barn.notes(), recordings(barn)) == (before, [])


def test_a_recording_that_nobody_answers_goes_with_its_buttons(barn: Served, standin: StandIn, ear: FakeEar) -> None:
    """When the next one comes after a month."""
    spoken(barn, "Ann", UNSURE)
    (old,) = recordings(barn)
    day = barn.now().timestamp()
    os.utime(old, (day, day - 31 * 24 * 3600))
    spoken(barn, "Ann", "15 weighed 7 pounds")
    assert old not in recordings(barn)
    assert len(recordings(barn)) == 1


def test_who_may_only_look_may_only_ask(barn: Served, standin: StandIn, ear: FakeEar) -> None:
    """A question is answered, a note refused, and a button that another may press as well."""
    asked = spoken(barn, "Ann", UNSURE)
    barn.ask("Lou", invited(barn, "looker"))
    assert spoken(barn, "Lou", SURE)["text"] == LOOKS_ONLY
    assert "14" in spoken(barn, "Lou", "who is 14")["text"]
    assert len(recordings(barn)) == 1
    assert labels(asked)


def test_words_under_a_recording_are_the_note(barn: Served, ear: FakeEar) -> None:
    """Whoever types has said it."""
    assert spoken(barn, "Ann", SURE, caption="14 weighed 8-9")["text"].startswith("Doe 14: 8 lb 9 oz.")


def test_others_are_answered_while_one_is_listened_to(barn: Served, standin: StandIn, slow: SlowEar) -> None:
    """The bot says how far it is, answers somebody else, and the speaker's own next message after the recording."""
    barn.ask("Bo", invited(barn, "helper"))
    note = standin.send_file("Ann", "voice", SURE.encode(), duration=60)
    after = standin.say("Ann", "14 to cage B3")
    assert slow.listens.wait(10)
    assert barn.ask("Bo", "14 weighed 8-2").startswith("Doe 14: 8 lb 2 oz.")
    assert standin._wait(lambda: "Listening: 30 of 60 s." in [each["text"] for each in standin.answers(note)], "how far", 10)
    slow.may.set()
    assert "B3" in barn.reply(after)["text"]
    told = [each["text"] for each in standin.answers(note)]
    assert any("Heard: " in each for each in told)


def test_what_is_listened_to_at_the_end_is_heard_at_the_next_start(barn: Served, standin: StandIn, slow: SlowEar) -> None:
    """The end waits for no recording, and none is lost."""
    note = standin.send_file("Ann", "voice", SURE.encode())
    assert slow.listens.wait(10)
    barn.stop()
    assert slow.closed
    with Served(standin, barn.book) as again:
        note["text"] = "a recording"
        assert "8 lb 3 oz" in again.reply(note)["text"]


def test_without_the_extra_one_line_says_how_to_get_it(barn: Served, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is fetched from the service for it."""
    monkeypatch.setattr(voice, "find_spec", lambda _name: None)
    assert "pip install 'haynote[voice]'" in spoken(barn, "Ann", SURE)["text"]
    assert barn.standin.calls("getFile") == []
