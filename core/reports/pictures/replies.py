"""Answers that bring a picture along: what it shows in words, and the picture to be drawn."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from core.herd.state import Animal
from core.problem import Problem
from core.reply import Attached, Choice, Reply
from core.reports.evidence import Evidence
from core.reports.pictures.picture import PICTURES, picture
from core.reports.pictures.wanted import about_of

if TYPE_CHECKING:
    from core.reports.answers import Asked


def picture_reply(asked: Asked) -> Reply:
    """The picture asked for; where the words leave it open, those that there are."""
    said, who = asked.said, asked.who
    if who is not None:
        return of_animal(asked.barn, who, said)
    about = about_of(said, asked.query.scope, one=False)
    return drawn(asked.barn, about, asked.query.breed) if about and about in PICTURES else offered(asked.barn)


def of_animal(barn: Evidence, animal: Animal, said: str = "") -> Reply:
    """A picture of one animal."""
    about = about_of(said, None, one=True)
    return drawn(barn, about if about and about in PICTURES else "growing", animal.key)


def drawn(barn: Evidence, about: str, key: str | None) -> Reply:
    """The picture with its words; the words alone where there is nothing to show."""
    found = picture(barn, about, key)
    if isinstance(found, Problem):
        return Reply((found.text,))
    name = "-".join(part for part in (about, _plain(key)) if part)
    return Reply(tuple(found.alt.split("\n")), attached=(Attached("picture", about, key, f"{name}.png", found.alt),))


def _plain(key: str | None) -> str:
    """A key as it may stand in the name of a file on any machine."""
    return re.sub(r"[^A-Za-z0-9]+", "-", key or "").strip("-").lower()


def offered(barn: Evidence) -> Reply:
    """The pictures to choose from."""
    young = next((one for one in barn.living if one.weights and barn.stages[one.key] == "grow-out"), None)
    weighed = young or next((one for one in barn.living if one.weights), None)
    if weighed is None:
        return Reply((f"Nothing to draw yet. Weigh one: {next((one.tag for one in barn.living), '31')} 4-6",))
    return Reply(("Which picture?",), (Choice(f"{weighed.tag} growing", f"picture of {weighed.tag}"),))
