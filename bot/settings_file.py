"""The settings file: where it lies, what may stand in it, and what is wrong with one. What the environment says wins over it."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from difflib import get_close_matches
from pathlib import Path
from typing import Final

from core.problem import Problem
from core.words import listed

#: What may be said in the file, and the variable that says the same.
KEYS: Final[Mapping[str, str]] = {
    "database_url": "HAYNOTE_DATABASE_URL",
    "data": "HAYNOTE_DATA",
    "bot_token": "HAYNOTE_BOT_TOKEN",
    "bot_api": "HAYNOTE_BOT_API",
    "webhook": "HAYNOTE_WEBHOOK",
    "listen": "HAYNOTE_LISTEN",
    "voice_model": "HAYNOTE_VOICE_MODEL",
    "keep_voice": "HAYNOTE_KEEP_VOICE",
}
#: What is no text but true or false.
SWITCHES: Final = ("keep_voice",)
NAMES_IT: Final = "HAYNOTE_SETTINGS"
FORM: Final = 'Write one setting a line, its value in quotation marks, such as: bot_api = "https://api.telegram.org"'
#: What TOML calls by other names.
SORTS: Final = {"str": "text", "bool": "true or false", "int": "a number", "float": "a number", "list": "a list", "dict": "a group"}


def place(environment: Mapping[str, str]) -> Path:
    """The file: HAYNOTE_SETTINGS names it; else it is `settings.toml` in HAYNOTE_DATA, else in this person's folder for such."""
    if named := environment.get(NAMES_IT):
        return Path(named)
    if data := environment.get("HAYNOTE_DATA"):
        return Path(data) / "settings.toml"
    from platformdirs import user_config_path  # noqa: PLC0415 - only where nobody named a folder

    return user_config_path("haynote", appauthor=False) / "settings.toml"


def told(environment: Mapping[str, str]) -> Mapping[str, str] | Problem:
    """What the file says; nothing where there is none, unless one was named; a Problem where it can't be right."""
    path = place(environment)
    try:
        said = tomllib.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return _bad(f"There is no file {path}.", f"Make it, or leave out {NAMES_IT}.") if environment.get(NAMES_IT) else {}
    except tomllib.TOMLDecodeError as error:
        return _bad(f"{path} can't be read as settings: {error}.", FORM)
    except (OSError, UnicodeDecodeError) as error:
        why = error.strerror if isinstance(error, OSError) else "it is no text"
        return _bad(f"{path} can't be read: {why}.", "Look whether it is a file, and yours to read.")
    wrong = next((problem for name, value in said.items() if (problem := _wrong(path, name, value))), None)
    return wrong or {name: "yes" if value is True else "" if value is False else value for name, value in said.items()}


def _wrong(path: Path, name: str, value: object) -> Problem | None:
    """What is wrong with one line. The value itself is not told: it may be the token."""
    if name not in KEYS:
        near = get_close_matches(name, KEYS, n=1)
        return _bad(f"{path} has no setting '{name}'.", f"Did you mean {near[0]}?" if near else f"There are {listed(KEYS)}.")
    sort, wanted = type(value).__name__, "bool" if name in SWITCHES else "str"
    if sort == wanted:
        return None
    right = f"Write {name} = true, or false." if name in SWITCHES else FORM
    return _bad(f"{name} in {path} should be {SORTS[wanted]}, and is {SORTS.get(sort, 'a day or time')}.", right)


def _bad(text: str, remedy: str) -> Problem:
    return Problem("bad_settings", text, remedy=remedy)


def kept(path: Path, name: str, value: str) -> None:
    """Write a setting into the file, over what it said before; all else in it stays. Only this person can read it. OSError where it can't be written."""
    line = f'{name} = "{value}"'
    path.parent.mkdir(parents=True, exist_ok=True)
    path.touch(mode=0o600)
    before = path.read_text(encoding="utf-8")
    after, changed = re.subn(rf"^{name}[ \t]*=.*$", lambda _: line, before, count=1, flags=re.MULTILINE)
    path.write_text(after if changed else f"{line}\n{before}", encoding="utf-8")
