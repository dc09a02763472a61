"""What comes from outside: environment variables, the settings file behind them, and the folder for this person's data."""

from __future__ import annotations

import os
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from bot.settings_file import KEYS, told
from core.problem import Problem

PUBLIC_API = "https://api.telegram.org"

#: A bot's token: its number, a colon, and the secret.
KEY = re.compile(r"\d+:[A-Za-z0-9_-]{8,}")

#: What says yes to a setting.
YES = frozenset({"1", "yes", "true", "on"})

KEY_FORM = "Copy it whole from @BotFather: a number, a colon and a long word, nothing before or after."
NO_SUCH_KEY = f"HAYNOTE_BOT_TOKEN, or bot_token in the settings file, is no bot token. {KEY_FORM}"
NO_ADDRESS = "HAYNOTE_BOT_API is no address. It begins with https://, or with http:// on your own network; leave it out for Telegram's own."


@dataclass(frozen=True, slots=True)
class Settings:
    """Where the book is, how to reach the chat service, and how voice notes are taken. The token never appears in `repr`.

    voice_model  the folder of a model to hear with, in place of the packaged one
    keep_voice   whether the recordings stay once their notes are saved
    """

    database_url: str
    bot_token: str | None
    bot_api: str
    webhook: str | None = None
    listen: str | None = None
    voice_model: str | None = None
    keep_voice: bool = False

    def __repr__(self) -> str:
        """Everything but the token."""
        return f"Settings(database_url={self.database_url!r}, bot_token={'set' if self.bot_token else None}, bot_api={self.bot_api!r})"


def settings(environment: Mapping[str, str] = os.environ) -> Settings | Problem:
    """The settings in force: what the environment says, else what the settings file says, else a default; or what is wrong with the file."""
    file = told(environment)
    if isinstance(file, Problem):
        return file
    said = {name: environment.get(variable) or file.get(name) or None for name, variable in KEYS.items()}
    return Settings(
        database_url=said["database_url"] or f"sqlite:///{data_folder(environment) / 'herd-book.sqlite'}",
        bot_token=said["bot_token"],
        bot_api=(said["bot_api"] or PUBLIC_API).rstrip("/"),
        webhook=said["webhook"],
        listen=said["listen"],
        voice_model=said["voice_model"],
        keep_voice=(said["keep_voice"] or "no").lower() in YES,
    )


def trouble(kept: Settings) -> str | None:
    """What can't be right in the settings of a bot, and what would be; None where nothing stands out. The token itself is not told."""
    if kept.bot_token is not None and not KEY.fullmatch(kept.bot_token):
        return NO_SUCH_KEY
    return None if re.fullmatch(r"https?://[^\s/]+\S*", kept.bot_api) else NO_ADDRESS


def data_folder(environment: Mapping[str, str] = os.environ) -> Path:
    """The person's data folder; HAYNOTE_DATA or the settings file names another. What is wrong with that file `settings` tells."""
    file = {} if environment.get("HAYNOTE_DATA") else told(environment)
    named = environment.get("HAYNOTE_DATA") or (None if isinstance(file, Problem) else file.get("data"))
    if named:
        return Path(named).expanduser()
    from platformdirs import user_data_path  # noqa: PLC0415 - only where a book is opened without being named

    return user_data_path("haynote", appauthor=False)
