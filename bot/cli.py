"""`haynote`: the commands, grouped by what a person wants. Each is loaded only when it is called."""

from __future__ import annotations

import importlib
import sys
from typing import Any

import click

#: group -> command -> where it lives
COMMANDS = {
    "Try it": {"demo": "bot.commands.demo:demo"},
    "Every day": {
        "chat": "bot.commands.talking:chat",
        "serve": "bot.commands.serving:serve",
        "work": "bot.commands.working:work",
        "say": "bot.commands.talking:say",
        "hear": "bot.commands.hearing:hear",
        "due": "bot.commands.asking:due",
        "digest": "bot.commands.asking:digest",
        "keep": "bot.commands.asking:keep",
        "herd": "bot.commands.asking:herd",
        "card": "bot.commands.asking:card",
    },
    "On paper": {
        "paper": "bot.commands.papers:paper",
        "calendar": "bot.commands.papers:calendar",
        "picture": "bot.commands.picturing:picture",
    },
    "Notes in and out": {
        "read": "bot.commands.reading:read",
        "replay": "bot.commands.moving:replay",
        "import": "bot.commands.importing:import_",
        "export": "bot.commands.exporting:export",
    },
    "Look after the book": {
        "setup": "bot.commands.setting_up:setup",
        "status": "bot.commands.caring:status",
        "check": "bot.commands.caring:check",
        "backup": "bot.commands.caring:backup",
        "restore": "bot.commands.caring:restore",
        "delete": "bot.commands.leaving:delete",
    },
}
AS_JSON = "bot.cli.as_json"
PLACES = {name: place for group in COMMANDS.values() for name, place in group.items()}


class GroupedCommands(click.Group):
    """A click group that loads a command's module only when it is asked for, and lists commands under what they are for."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """Note whether JSON is wanted, before anything can go wrong."""
        ctx.meta[AS_JSON] = "--json" in args
        return super().parse_args(ctx, args)

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command. What the machine does to the book meanwhile, such as a full disk, is told in plain words."""
        try:
            return super().invoke(ctx)
        except Exception as error:
            from core.app import trouble  # noqa: PLC0415 - nobody needs it while all is well

            problem = trouble(error)
            if problem is None:
                raise
            from bot.commands.options import refuse  # noqa: PLC0415 - the same

            refuse(problem, as_json=ctx.meta[AS_JSON])

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - click's signature
        """All command names, in the order of COMMANDS."""
        return list(PLACES)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002 - click's signature
        """The command of that name; None where there is none."""
        place = PLACES.get(cmd_name)
        if place is None:
            return None
        module, _, name = place.partition(":")
        command: click.Command = getattr(importlib.import_module(module), name)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """The commands under their groups' headings."""
        for group, commands in COMMANDS.items():
            rows = [(name, command.get_short_help_str(80)) for name in commands if (command := self.get_command(ctx, name))]
            with formatter.section(group):
                formatter.write_dl(rows)


@click.command(cls=GroupedCommands)
@click.version_option(package_name="haynote", message="haynote %(version)s")
def haynote() -> None:
    """Short notes from the barn become records, reminders, a weekly digest, and a keep or cull summary with reasons.

    Everything stays on this machine. Haynote advises; you decide.
    """


def main() -> None:
    """The console script. Text comes in and goes out as UTF-8 whatever the terminal says; a byte that is none is replaced."""
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="replace")
    haynote.main(prog_name="haynote")
