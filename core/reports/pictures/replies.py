"""Answers that bring a picture along: what it shows in words, and the picture to be drawn."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from core.herd.litters import litters_of
from core.herd.state import Animal
from core.problem import Problem
from core.reply import Attached, Choice, Reply
from core.reports.evidence import Evidence
from core.reports.pictures.picture import picture
from core.reports.pictures.wanted import about_of
from core.reports.wording import short

if TYPE_CHECKING:
    from core.reports.answers import Asked

#: What asks for photos and not for a drawing.
PHOTOS = re.compile(r"\b(photos?|snaps?|snapshots?)\b", re.IGNORECASE)
#: The farm's pictures as buttons: what each shows, and the words that ask for it.
OFFERED = (
    ("The winter's feed", "picture of the winter feed"),
    ("Does by kits raised", "picture of the dams"),
    ("Bucks by growth", "picture of the bucks"),
    ("The week's chores", "picture of the week"),
)


def picture_reply(asked: Asked) -> Reply:
    """The picture asked for; where the words leave it open, those that there are."""
    who = asked.who
    if who is not None:
        return of_animal(asked.barn, who, asked.said)
    about = about_of(asked.said, asked.query.scope, one=False)
    return drawn(asked.barn, about, asked.query.breed) if about else offered(asked.barn)


def of_animal(barn: Evidence, animal: Animal, said: str = "") -> Reply:
    """A picture of one animal: its photos where the words ask for them; else its weights, or of a doe that was never weighed her litters."""
    if PHOTOS.search(said):
        return photos_of(animal)
    about = about_of(said, None, one=True)
    if about is None:
        about = "growing" if animal.weights or not litters_of(barn.herd, animal.key) else "litters"
    return drawn(barn, about, animal.key)


def photos_of(animal: Animal) -> Reply:
    """That its photos are wanted: which there are only the store knows, and the door puts them in."""
    name = f"{_plain(animal.tag)}-photo"
    return Reply((), attached=(Attached("photo", "photos", animal.key, name, f"Photos of {short(animal)}."),))


def drawn(barn: Evidence, about: str, key: str | None) -> Reply:
    """The picture with its words; the words alone where there is nothing to show."""
    found = picture(barn, about, key)
    if isinstance(found, Problem):
        return Reply((f"{found.text} {found.remedy}",))
    name = "-".join(part for part in (about, _plain(key)) if part)
    return Reply(tuple(found.alt.split("\n")), attached=(Attached("picture", about, key, f"{name}.png", found.alt),))


def _plain(key: str | None) -> str:
    """A key as it may stand in the name of a file on any machine."""
    return re.sub(r"[^A-Za-z0-9]+", "-", key or "").strip("-").lower()


def with_picture(told: Reply, says: str) -> Reply:
    """An answer with a button for its picture."""
    return replace(told, choices=(*told.choices, Choice("Picture", says)))


def offered(barn: Evidence) -> Reply:
    """The pictures to choose from."""
    if not barn.living:
        return Reply(("Nothing to draw yet. Begin with an animal: new doe 40 mini rex born 3/4",))
    young = next((one for one in barn.living if one.weights and barn.stages[one.key] == "grow-out"), None)
    weighed = young or next((one for one in barn.living if one.weights), None)
    growing = (Choice(f"{weighed.tag} growing", f"picture of {weighed.tag}"),) if weighed else ()
    return Reply(("Which picture?",), (*growing, *(Choice(label, says) for label, says in OFFERED)))
