"""Where a note that is told in one breath begins to speak of something else, with no comma and no `and` to say so.

A verb of the barn with its animal behind it, or an animal with its verb behind it, begins a new statement once the one before has both.
"""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Scene
from core.notes.clauses.with_subject import LEADS
from core.notes.slots.items import Item

#: Verbs that an animal may stand right behind; a number behind them may be a tag.
BEFORE_ANIMALS: Final = frozenset({"breed", "palpate", "wean", "move", "box", "treat", "weigh", "cull", "sell", "give", "plan"})
#: Verbs that an animal may stand right before.
BEHIND_ANIMALS: Final = BEFORE_ANIMALS | {"kindle", "litter_born", "had", "lose", "refuse", "bite", "die", "fault", "condition"}
#: What a statement says at least, beside its animal.
SAYING: Final = BEHIND_ANIMALS | {"has_kits", "open", "pregnant"}
COPULAS: Final = frozenset({"is", "has", "was", "got", "just", "also", "still", "looks", "seems"})
BETWEEN: Final = frozenset({"the", "of", "for", "from", "in", "on", "with", "out", "out of", "off", "off of", "doe", "buck"})
#: Behind them an animal is not the first of a new statement.
LEADING: Final = (
    LEADS
    | BETWEEN
    | {
        "and",
        "&",
        ",",
        "than",
        "like",
        "that",
        "and then",
        "or",
        "vs",
        "over to",
        "into",
        "my",
        "our",
        "her",
        "his",
        "when",
        "if",
        "as",
        "because",
        "until",
        "til",
    }
)
TREATING: Final = frozenset({"gave", "treat"})
PRONOUNS: Final = frozenset({"she", "he", "shes", "hes", "she's", "he's"})
#: What is said of an animal beside the deed told before.
MANNERS: Final = frozenset({"lounge", "toilet", "bite", "weigh"})
#: Words that a new statement may begin with.
WAKING: Final = PRONOUNS | {"put", "found"}
WAKING_MARKS: Final = BEFORE_ANIMALS | TREATING | {"lose"}
OPENING_SORTS: Final = frozenset({"animal", "num"})
REACH: Final = 3  # items between a verb and its animal
FARTHEST: Final = 100  # not a figure: items: no statement told in one breath is longer
LEAST: Final = 3  # items: a statement has a verb, an animal and mostly something said of it


def may_begin(item: Item) -> bool:
    """Whether an animal, or an item with marks, is one that a statement told in one breath may begin with."""
    return item.sort in OPENING_SORTS or item.said in WAKING or not item.marks.isdisjoint(WAKING_MARKS)


def begins_anew(items: list[Item], start: int, i: int, scene: Scene) -> bool:
    """Whether a new statement begins at `i` of a sentence whose last one began at `start`."""
    item = items[i]
    start = max(start, i - FARTHEST)
    if item.said == "put" and _put_together(items, start, i, scene):
        return True
    if not item.marks.isdisjoint(TREATING) and _treated_for_it(items, start, i):
        return True
    if "lose" in item.marks and _fewer_by_now(items, start, i, scene):
        return True
    if item.said == "found" and _found_beside_count(items, start, i):
        return True
    if item.said in PRONOUNS:
        return _told_of_it(items, start, i, scene)
    if item.sort == "word":
        return bool(item.marks & BEFORE_ANIMALS) and _verb_first(items, start, i, scene)
    return item.sort in {"animal", "num"} and _animal_first(items, start, i, scene)


def _verb_first(items: list[Item], start: int, i: int, scene: Scene) -> bool:
    """`... weaned sixteen two bucks`: the verb of another animal."""
    before = items[i - 1]
    if items[i].said == "felt" and any("palpate" in item.marks for item in items[start:i]):
        return False  # "palpated I felt three or four marbles"
    if items[i].said == "x" or before.said in LEADING or before.said in COPULAS or "negation" in before.marks:
        return False
    behind = items[i + 1 : i + 2 + REACH]
    place = next((n for n, item in enumerate(behind) if item.said not in BETWEEN and (n or item.said not in {"is", "goes", "went"})), None)
    return place is not None and _named(behind, place, scene) and _whole(items[start:i], scene)


def _put_together(items: list[Item], start: int, i: int, scene: Scene) -> bool:
    """`biscuit is open put her back in with moss`: the mating behind what was felt."""
    felt = any(item.marks & {"open", "refuse"} for item in items[start:i])
    return felt and any("in_with" in item.marks for item in items[i + 1 : i + 2 + REACH]) and _whole(items[start:i], scene)


def _treated_for_it(items: list[Item], start: int, i: int) -> bool:
    """`moss has sore hocks gave him penicillin`: a sign was seen, and what it got for it is told of `him`."""
    before = items[start:i]
    seen = any("ail" in item.marks for item in before) and items[i - 1].said not in LEADING
    named = any(item.sort in {"animal", "num"} for item in before)
    behind = items[i + 1 : i + 2 + REACH]
    given = any("pronoun" in item.marks for item in behind) and any(
        "drug" in item.marks or item.sort == "dose" for item in items[i : i + FARTHEST]
    )
    return seen and named and given and all(item.marks.isdisjoint(TREATING) and "drug" not in item.marks for item in before)


def _fewer_by_now(items: list[Item], start: int, i: int, scene: Scene) -> bool:
    """`sorrel has six kits now lost one overnight`: the day of the loss is not the count's."""
    marks = frozenset().union(*(item.marks for item in items[start:i]))
    return "has_kits" in marks and not marks.isdisjoint({"kits", "count"}) and "lose" not in marks and _whole(items[start:i], scene)


def _found_beside_count(items: list[Item], start: int, i: int) -> bool:
    """`sorrel's down to six i found one dead`: the count is told, and then the loss."""
    counted = any("count" in item.marks and items[start + n + 1].sort == "num" for n, item in enumerate(items[start : i - 1]))
    return counted and i + 2 < len(items) and items[i + 1].sort == "num" and "dead" in items[i + 2].marks


def _told_of_it(items: list[Item], start: int, i: int, scene: Scene) -> bool:
    """`... the box from sixteen she just keeps lounging in it`: how the same animal behaves."""
    behind = frozenset().union(*(item.marks for item in items[i + 1 : i + 1 + REACH]))
    led = items[i - 1].said in LEADING or "negation" in items[i - 1].marks
    return not led and bool(behind & MANNERS) and not any(item.marks & MANNERS for item in items[start:i]) and _whole(items[start:i], scene)


def _animal_first(items: list[Item], start: int, i: int, scene: Scene) -> bool:
    """`... moss weighs nine pounds`: another animal, and its verb behind it."""
    if i + 1 >= len(items):
        return False
    before, following = items[i - 1], items[i + 1]
    if before.said in LEADING or before.said in COPULAS or "negation" in before.marks or before.marks & BEHIND_ANIMALS:
        return False
    if items[i].sort == "num" and not (following.marks & BEFORE_ANIMALS or following.said.split(" ")[0] == "has"):
        return False
    if items[i].unit == "possessive" or not (following.marks & BEHIND_ANIMALS or following.said.split(" ")[0] in COPULAS):
        return False
    return _named(items, i, scene) and _whole(items[start:i], scene)


def _named(items: list[Item], place: int, scene: Scene) -> bool:
    item = items[place]
    if item.sort == "animal":
        return True
    beside = Clause(items[place : place + LEAST + 1], scene)
    return item.sort == "num" and beside.known(0) is not None and not beside.counted(0)


def _whole(items: list[Item], scene: Scene) -> bool:
    """Whether a piece has its verb and its animal."""
    told = Clause(items, scene)
    return bool(told.marks & SAYING) and any(_named(items, place, scene) for place in range(len(items)))
