"""What an update says about whose it is, for a bot that speaks for many farms."""

from __future__ import annotations

from bot.telegram import words
from bot.telegram.updates import read
from core.app import Hint

#: Longer words are no set-up code.
LONGEST_CODE = 80


def hint_of(raw: str) -> Hint | None:
    """Who wrote where, what it answers, and a code or a farm's name in it; None for an update that no person made."""
    update = read(raw)
    if update is None:
        return None
    text = update.text or ""
    return Hint(
        account=update.account,
        chat=update.chat,
        group=update.group,
        words=words.code(text) if len(text) <= LONGEST_CODE else "",
        number=update.number if update.edit else None,
        answers=update.answers,
        button=update.press[1] if update.press else None,
        moved=update.moved_to,
        farm=words.farm(text),
    )
