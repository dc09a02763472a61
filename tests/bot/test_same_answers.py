"""The terminal and Telegram give the same answers: every transcript is held in both, on books that begin alike."""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pytest

from bot.terminal.chat import converse, shown
from core.app import App, Member, Message, ReplyTo
from core.app.letters import Letter, put
from core.reply import Reply
from core.store.people import add_member
from tests.bot.telegram.served import FAST, Served, opened
from tests.conversations.transcript import Turn, transcripts, turns
from tests.standin import StandIn

ROSTER = Path(__file__).parents[1] / "corpus" / "roster.json"
PEOPLE = sorted({turn.author for path in transcripts() for turn in turns(path)})
WHERE = "terminal"


@dataclass(frozen=True)
class Answer:
    """What a person sees: the text, and the choices under it."""

    text: str
    choices: tuple[str, ...] = ()


@pytest.fixture(scope="module")
def farm(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A book with the roster in it and everybody on the farm."""
    file = tmp_path_factory.mktemp("farm") / "farm.sqlite"
    app = opened(file)
    app.replay("", roster=json.loads(ROSTER.read_text(encoding="utf-8")))
    with StandIn() as standin, app._engine.begin() as connection:
        for who in PEOPLE:
            add_member(connection, 1, Member(f"telegram:{standin.person(who)['id']}", who, "owner"), standin.world.now)
    app.close()
    return file


@pytest.fixture
def typed(farm: Path, tmp_path: Path) -> Iterator[App]:
    """The book of the terminal."""
    shutil.copy(farm, tmp_path / "typed.sqlite")
    app = opened(tmp_path / "typed.sqlite")
    yield app
    app.close()


@pytest.fixture
def served(farm: Path, tmp_path: Path) -> Iterator[Served]:
    """The book of the bot, in a group that everybody is in."""
    shutil.copy(farm, tmp_path / "served.sqlite")
    with StandIn(reads_all=True) as standin:
        for who in PEOPLE:
            standin.person(who)
        standin.group("Barn", *PEOPLE)
        with Served(standin, tmp_path / "served.sqlite", replace(FAST, tick=3600.0)) as server:
            yield server


def in_the_terminal(app: App, talk: list[Turn]) -> list[Answer]:
    """The talk typed, a message a line. What the terminal has no gesture for, an edit or an answer to a reminder, is told with the message."""
    waiting = iter(enumerate(talk))
    edits: dict[int, int] = {}
    replies: list[Reply] = []
    written: list[str] = []

    def hear(text: str) -> Reply:
        place, turn = next(waiting)
        number = place if turn.edits is None else turn.edits
        edits[number] = edits.get(number, -1) + 1
        reply_to = ReplyTo(*turn.answers) if turn.answers else None
        replies.append(app.hear(Message(text, turn.at, turn.author, WHERE, str(number), edits[number], reply_to)))
        return replies[-1]

    converse((turn.text for turn in talk), hear, written.append)
    assert written[::2] == [shown(reply) for reply in replies]
    return [Answer(reply.text, tuple(choice.label for choice in reply.choices)) for reply in replies]


def on_telegram(served: Served, talk: list[Turn]) -> list[Answer]:
    """The talk in the group."""
    said: list[dict[str, Any]] = []
    answers: list[Answer] = []
    for place, turn in enumerate(talk):
        served.standin.set_now(turn.at)
        before = _last(served)
        if turn.edits is None:
            reminder = _reminder(served, place, ReplyTo(*turn.answers)) if turn.answers else None
            said.append(served.standin.say(turn.author, turn.text, chat="Barn", reply_to=reminder))
        else:
            said.append(served.standin.edit(said[turn.edits], turn.text))
        answers.append(_seen(_answer(served, said[-1], before)))
    return answers


def _last(served: Served) -> int:
    return served._last(served.standin.group("Barn")["id"])


def _answer(served: Served, note: dict[str, Any], before: int) -> dict[str, Any]:
    """The newest reply to that message."""

    def found() -> dict[str, Any] | None:
        later = (each for each in served.standin.answers(note) if each["message_id"] > before)
        return next((each for each in later if each.get("reply_to_message", {}).get("message_id") == note["message_id"]), None)

    return served.standin._wait(found, f"an answer to {note['text']!r}", 10)


def _reminder(served: Served, place: int, chore: ReplyTo) -> dict[str, Any]:
    """A reminder of that chore, as it arrived."""
    chat, before = served.standin.group("Barn"), _last(served)
    with served.app._engine.begin() as connection:
        put(connection, 1, Letter(f"reminder:{place}", str(chat["id"]), ("It is time.",), chores=(chore,)), served.now())
    served.ring()
    return served.standin.wait_answer({"chat": chat, "message_id": before})


def _seen(message: dict[str, Any]) -> Answer:
    """What the answer itself offers. The chat adds keys for a thumb, which the terminal types: undo and fix, and numbers to press."""
    rows = message.get("reply_markup", {}).get("inline_keyboard", [])
    labels = [button["text"] for row in rows for button in row]
    if labels[-2:] == ["Undo", "Fix"]:
        labels = labels[:-2]
    return Answer(message["text"], () if labels and all(label.isdigit() for label in labels) and len(labels) >= 14 else tuple(labels))


@pytest.mark.parametrize("path", transcripts(), ids=lambda path: path.stem)
def test_a_conversation_is_the_same_in_both(path: Path, typed: App, served: Served) -> None:
    """Word by word and choice by choice; and as the transcript says. An empty message can be typed, but not sent."""
    talk = [turn for turn in turns(path) if turn.text.strip()]
    here, there = in_the_terminal(typed, talk), on_telegram(served, talk)
    assert there == here
    for turn, answer in zip(talk, there, strict=True):
        assert list(answer.choices) == turn.choices
    assert _herd(served.app, talk) == _herd(typed, talk)


def test_a_letter_and_a_button_are_the_same_answer(typed: App, served: Served) -> None:
    """What the terminal letters, Telegram puts on buttons."""
    path = next(path for path in transcripts() if path.stem == "which_animal_missing")
    first = turns(path)[0]
    assert first.choices
    answers = in_the_terminal(typed, [first, replace(first, text="a")])
    served.standin.set_now(first.at)
    note = served.standin.say(first.author, first.text, chat="Barn")
    question = served.reply(note)
    served.standin.press(first.author, question, first.choices[0])
    after = served.standin.wait_answer({"chat": question["chat"], "message_id": question["message_id"]})
    assert [_seen(question), _seen(after)] == answers


def _herd(app: App, talk: list[Turn]) -> object:
    """The whole herd as it stands after the talk."""
    return app.herd(talk[-1].at).document
