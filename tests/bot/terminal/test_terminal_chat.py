"""The chat in a terminal: letters for choices, a keyboard, a pipe."""

from __future__ import annotations

from pathlib import Path

import pytest
from prompt_toolkit.application import create_app_session
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from bot.terminal import chat
from core.reply import Choice, Reply

ASKS = Reply(("Which buck?",), (Choice("3 Flint", "3"), Choice("5 Moss", "5")))


def keyed(keys: str, history: Path) -> list[str]:
    """The lines that these keys give."""
    with create_pipe_input() as pipe, create_app_session(input=pipe, output=DummyOutput()):
        pipe.send_text(keys)
        return list(chat.keyboard(history))


def test_choices_carry_letters() -> None:
    """One line each, beneath the question."""
    assert chat.shown(ASKS) == "Which buck?\n  a) 3 Flint\n  b) 5 Moss"


@pytest.mark.parametrize(
    ("typed", "means"), [("a", "3"), ("B)", "5"), (" b ", "5"), ("c", "c"), ("3", "3"), ("ab", "ab"), ("", ""), ("1", "1")]
)
def test_letters_stand_for_choices(typed: str, means: str) -> None:
    """A letter beyond the choices, a number and a word are themselves."""
    assert chat.chosen(typed, ASKS.choices) == means


def test_letters_belong_to_the_last_reply_only() -> None:
    """An old question's letters mean nothing."""
    heard: list[str] = []
    replies = iter((ASKS, Reply(("Done.",)), Reply(("Kept.",))))

    def hear(text: str) -> Reply:
        heard.append(text)
        return next(replies)

    chat.piped(["bred 15\n", "b\n", "b\n"], hear, lambda _: None)
    assert heard == ["bred 15", "5", "b"]


def test_question_mark_brings_the_question_again() -> None:
    """The last reply is shown once more, a question with its letters, which still count; before any reply it is a message like any other."""
    heard: list[str] = []
    shown: list[str] = []

    def hear(text: str) -> Reply:
        heard.append(text)
        return ASKS if text == "bred 15" else Reply(("Done.",))

    chat.piped(["?\n", "bred 15\n", "?\n", "b\n"], hear, shown.append)
    assert heard == ["?", "bred 15", "5"]
    assert shown[2] == shown[4] == chat.shown(ASKS)


def test_banner_names_the_way_out() -> None:
    """A word anybody would type."""
    assert "'quit'" in chat.GREETING


def test_keyboard_gives_lines_until_a_word_of_leaving(tmp_path: Path) -> None:
    """Empty lines are passed over; the folder of the history is made."""
    assert keyed("14 has 6 kits\n\n  \nquit\nnever\n", tmp_path / "new" / "lines") == ["14 has 6 kits"]
    assert "14 has 6 kits" in (tmp_path / "new" / "lines").read_text(encoding="utf-8")


def test_ctrl_d_ends_and_ctrl_c_drops_the_line(tmp_path: Path) -> None:
    """As in any shell."""
    assert keyed("wrong li\x03right\n\x04", tmp_path / "lines") == ["right"]


def test_what_is_pasted_stays_one_message(tmp_path: Path) -> None:
    """A list has lines; only the key at its end sends it."""
    assert keyed("\x1b[200~tag, sex\r\n14, doe\x1b[201~\nquit\n", tmp_path / "lines") == ["tag, sex\n14, doe"]


def test_typed_greets_and_answers(tmp_path: Path) -> None:
    """A person is told how to leave, then answered line by line."""
    written: list[str] = []
    with create_pipe_input() as pipe, create_app_session(input=pipe, output=DummyOutput()):
        pipe.send_text("hello\nbye\n")
        chat.typed(lambda text: Reply((f"heard {text}",)), written.append, tmp_path / "lines")
    assert written == [chat.GREETING, "heard hello", ""]
