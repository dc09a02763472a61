"""Under which name the bot is known on the service: noted when it serves, for the QR codes of papers that are printed later."""

from __future__ import annotations

import json
from pathlib import Path

#: In the data folder: book and farm -> the bot's name.
FILE = "bots.json"


def remember(folder: Path, book: str, name: str) -> None:
    """Note the bot of that book. Where it can't be noted papers have no codes, and nothing else is lost."""
    known = {**_known(folder), book: name}
    try:
        folder.mkdir(parents=True, exist_ok=True)
        (folder / FILE).write_text(json.dumps(known, ensure_ascii=False, indent=1), encoding="utf-8")
    except OSError:
        return


def bot_of(folder: Path, book: str) -> str | None:
    """The name of the bot that last served that farm's book, or all farms of that book; None where none did."""
    known = _known(folder)
    whole = (name for place, name in known.items() if book.startswith(f"{place} "))
    return known.get(book) or next(whole, None)


def _known(folder: Path) -> dict[str, str]:
    try:
        found = json.loads((folder / FILE).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return found if isinstance(found, dict) else {}
