"""The reference page of the commands: `python -m bot.commands.page > docs/reference/commands.md`."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from typing import Final

import click

from bot.cli import COMMANDS, haynote

WIDTH: Final = 110

_HEAD: Final = """# Commands

What `haynote COMMAND --help` says, in one place. Made by `python -m bot.commands.page`; don't edit it by hand.

A command ends with 0 when it could answer, with 1 when it could not (and says what to do), with 2 when it was used wrongly. With `--json`
an answer is one JSON object on one line of standard output; what could not be done is
`{"problem": {"code": ..., "text": ..., "remedy": ...}}`. The forms are told in [JSON](json.md), the codes in [Problems](problems.md).
Progress goes to standard error."""


def page() -> str:
    """The whole page, in Markdown."""
    return "\n\n".join((_HEAD, *_sections())) + "\n"


def _sections() -> Iterator[str]:
    """A heading a group, and under it each command's help."""
    for group, commands in COMMANDS.items():
        yield f"## {group}"
        for name in commands:
            yield f"### haynote {name}\n\n```text\n{_help(name)}\n```"


def _help(name: str) -> str:
    top = click.Context(haynote, info_name="haynote")
    command = haynote.get_command(top, name)
    if command is None:  # pragma: no cover - COMMANDS holds what there is
        raise KeyError(name)
    return command.get_help(click.Context(command, parent=top, info_name=name, terminal_width=WIDTH, max_content_width=WIDTH)).rstrip()


if __name__ == "__main__":  # pragma: no cover - the page itself is tested; this only prints it
    sys.stdout.write(page())
