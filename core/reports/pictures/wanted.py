"""Which picture a question asks for, by its words and whom it names."""

from __future__ import annotations

import re

#: What each picture goes by in a question, the narrow before the broad.
WORDS = (
    ("litters", re.compile(r"\b(litters|litter sizes?|sizes? of (her|the) litters?|born alive)\b", re.IGNORECASE)),
    ("litter", re.compile(r"\b(litter|kits)\b", re.IGNORECASE)),
    ("winter", re.compile(r"\b(winter|feed|mouths|spring|bin)\b", re.IGNORECASE)),
    ("week", re.compile(r"\b(week|chores?|due|to do|todo)\b", re.IGNORECASE)),
    ("bucks", re.compile(r"\b(bucks?|sires?|boys)\b", re.IGNORECASE)),
    ("dams", re.compile(r"\b(dams?|does?|mothers|mamas|girls|survival|raised?)\b", re.IGNORECASE)),
)
#: The pictures of one animal, and those of the farm.
OF_ONE = ("growing", "litter", "litters")
OF_FARM = ("winter", "week", "bucks", "dams")


def about_of(said: str, scope: str | None, *, one: bool) -> str | None:
    """The picture that the words ask for: of `one` animal or of the farm; None where they leave it open."""
    among = OF_ONE if one else OF_FARM
    found = next((name for name, words in WORDS if name in among and words.search(said)), None)
    return found or {"bucks": "bucks", "does": "dams"}.get(scope or "" if not one else "")
