"""A conversation in the terminal, typed or piped.

Choices under a question carry letters: a number alone may be the answer itself.
"""

from __future__ import annotations

import string
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

from core.reply import Choice, Reply

Hear = Callable[[str], Reply]
Write = Callable[[str], None]

GREETING = "Type a note as you would text it. 'help' tells what you can say; 'quit' ends the chat."
PROMPT = "barn> "
#: Shows the last reply again: a question with its letters.
AGAIN = "?"
LEAVING = ("/quit", "/exit", "quit", "exit", "bye")


def shown(reply: Reply) -> str:
    """The reply as a terminal shows it: its lines, then a line a choice with its letter."""
    letters = (f"  {letter}) {choice.label}" for letter, choice in zip(string.ascii_lowercase, reply.choices, strict=False))
    return "\n".join((*reply.lines, *letters))


def chosen(text: str, choices: tuple[Choice, ...]) -> str:
    """What a letter stands for; the text itself where it is no letter of a choice."""
    letter = text.strip().lower().rstrip(")")
    place = string.ascii_lowercase.find(letter) if len(letter) == 1 else -1
    return choices[place].says if 0 <= place < len(choices) else text


def converse(messages: Iterable[str], hear: Hear, write: Write, *, gap: str = "") -> None:
    """Answer each message in turn; `gap` is written after each reply. A question mark alone brings the last reply once more."""
    choices: tuple[Choice, ...] = ()
    last: Reply | None = None
    for text in messages:
        reply = last if last is not None and text.strip() == AGAIN else hear(chosen(text, choices))
        choices, last = reply.choices, reply
        write(shown(reply))
        write(gap)


def piped(lines: Iterable[str], hear: Hear, write: Write) -> None:
    """One message a line; each reply ends with an empty line."""
    converse((line.rstrip("\n") for line in lines), hear, write)


def typed(hear: Hear, write: Write, history: Path) -> None:
    """A person at the keyboard, with history and editing."""
    write(GREETING)
    converse(keyboard(history), hear, write)


def keyboard(history: Path) -> Iterator[str]:
    """Lines as they are typed, until Ctrl-D or a word of leaving; Ctrl-C drops the line. Empty lines are passed over."""
    from prompt_toolkit import PromptSession  # noqa: PLC0415 - only a keyboard needs it
    from prompt_toolkit.history import FileHistory  # noqa: PLC0415

    history.parent.mkdir(parents=True, exist_ok=True)
    session: PromptSession[str] = PromptSession(PROMPT, history=FileHistory(str(history)))
    while True:
        try:
            text = session.prompt()
        except KeyboardInterrupt:
            continue
        except EOFError:
            return
        if text.strip().lower() in LEAVING:
            return
        if text.strip():
            yield text
