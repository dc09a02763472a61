"""A question that nothing answers: told as such, with those nearest to it that are answered. Its words stay a remark, which claims nothing."""

from __future__ import annotations

import re
from typing import Final

from core.herd.state import Herd

#: Words that ask at the head of a message even without a mark. `what a doe` and `how 14 loves hay` only exclaim.
_ASKS: Final = re.compile(
    r"(?:who|whos|whose|whom|what(?! an?\b)|whats|which|why|where|wheres|how (?:much|many|long|old|often|big|cold|hot|warm|far|do|does|did|is|are|can|should|come)|hows"
    r"|did (?:i|we)|when (?:do|does|did|is|are|was|will|should|can)|can (?:i|you|we)|could (?:i|you|we)|do (?:i|we|you)|should (?:i|we))\b"
)
#: What asks nothing for all its words or its mark.
_RHETORICAL: Final = re.compile(
    r"(?:who knew|who would have|who says|what the|did you know|guess|would you believe|what(?:s|'s)? (?:ever|up)$)"
)
LONGEST: Final = 14  # not a figure: words; a longer text without a mark tells a story
TOLD: Final = 3  # not a figure: questions that fit a line

#: Word beginnings -> the questions nearest to them; `{one}` is an animal of the farm.
_NEAREST: Final = (
    ("money earn made make profit income paid price sold sell sale buyer worth", ("sales", "what if I sold {one}")),
    ("cost spend spent feed fed eat ate hay pellet hungry ration", ("feed", "how much does {one} eat", "winter plan")),
    ("cage hutch pen room space empty where", ("cages", "list my rabbits")),
    ("old age born birthday bought came name", ("card {one}", "list my rabbits")),
    ("bred breed mate mating buck sire related cross", ("who should I breed next", "which does are open", "pedigree of {one}")),
    ("due when kindl pregnan next today tomorrow week chore task remind", ("who's due this week", "calendar", "digest")),
    ("weigh weight heavy big grow gain lb fat thin", ("weights {one}", "card {one}", "picture of {one}")),
    ("keep cull butcher eat slaughter go winter replace", ("who should I keep", "why {one}", "what if I sold {one}")),
    ("sick wrong ill hurt vet treat medic worm withdraw safe problem", ("flags", "card {one}")),
    ("litter kit baby babies bunnies lost died dead surviv", ("litters", "litters of {one}", "list kits")),
    ("color colour gene parent dam father mother inbre", ("pedigree of {one}", "card {one}")),
    ("many count number total", ("herd", "litters", "cages")),
    ("set note said wrote typed change remember", ("journal", "settings", "help")),
)
_ALWAYS: Final = ("who's due this week", "herd", "help")


def is_asked(text: str) -> bool:
    """Whether the words ask something: by their mark, or by how they begin."""
    said = " ".join(text.lower().replace("\u2019", "'").split())
    if _RHETORICAL.match(said):
        return False
    if said.endswith("?"):
        return True
    return bool(_ASKS.match(said.replace("'", ""))) and len(said.split()) <= LONGEST and not re.search(r"[,;:!]|\. ", said)


def nearest(text: str, herd: Herd, who: str | None) -> tuple[str, ...]:
    """Questions that are answered, those that share most with these words first."""
    words = re.findall(r"[a-z]+", text.lower())
    scores = [sum(word.startswith(begin) for word in words for begin in begins.split()) for begins, _ in _NEAREST]
    order = sorted((at for at, score in enumerate(scores) if score), key=lambda at: -scores[at])
    one = who or next((animal.tag for animal in herd.animals.values() if animal.living), None)
    told = [question for at in order for question in _NEAREST[at][1]] + list(_ALWAYS)
    return tuple(dict.fromkeys(each.format(one=one) for each in told if one or "{one}" not in each))[:TOLD]


def unanswered(text: str, shown: str, herd: Herd, who: str | None) -> str:
    """What is said to such a question."""
    return f"I don't know that question (kept as words only: “{shown}”). What I can answer: {' · '.join(nearest(text, herd, who))}"
