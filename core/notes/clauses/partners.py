"""A doe and a buck: which animals of a statement they are, by their sexes and the words between them."""

from __future__ import annotations

from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Pick
from core.notes.slots.items import Item


def partners(c: Clause, cue: int, used: list[Item]) -> list[int]:
    """Where the animals stand: those named, then bare numbers where an animal may be."""
    explicit = c.explicit()
    _heard_to(c, used)
    bare = [i for i in c.sorted_as("num") if c.whole(i) is not None and not c.counted(i) and all(item is not c.items[i] for item in used)]
    known = [i for i in bare if c.known(i)]
    places = sorted({*explicit, *(known if len(_distinct(c, explicit)) < 2 else [])})
    if len(places) < 2:
        led = [
            i
            for i in bare
            if i not in places
            and (c.said(i - 1) in {"to", "x", "with", "in with", "and", "bred", "put"} or c.said(i + 1) in {"to", "x"} or i == cue + 1)
        ]
        places = sorted({*places, *led})
    return _distinct(c, places)


def _heard_to(c: Clause, used: list[Item]) -> None:
    """`bred fifteen two seven`: the `two` between a doe and a buck is `to`."""
    heard = (i for i in c.sorted_as("num") if c.items[i].spoken and c.whole(i) == 2 and c.known(i) is None)
    used.extend(c.items[i] for i in heard if {animal.sex for animal in (c.known(i - 1), c.known(i + 1)) if animal} == {"doe", "buck"})


def _distinct(c: Clause, places: list[int]) -> list[int]:
    """Each animal once."""
    seen: set[object] = set()
    kept = []
    for i in places:
        mention = c.mention(i)
        who = mention.tags if mention and mention.tags else (mention.said if mention else i)
        if who not in seen:
            kept.append(i)
        seen.add(who)
    return kept


def doe_and_buck(c: Clause, picks: list[Pick]) -> tuple[Pick | None, Pick | None]:
    """Who is which, by their sexes; where those don't tell, the doe comes first."""
    sexes = [_sex(c, pick) for pick in picks]
    if len(picks) == 2:
        if sexes[0] == "buck" and sexes[1] != "buck":
            return picks[1], picks[0]
        if sexes[0] is None and sexes[1] == "doe":
            return picks[1], picks[0]
        return picks[0], picks[1]
    if not picks:
        return c.spoken_of(), None
    if sexes[0] == "buck":
        return None, picks[0]
    return picks[0], None


def _sex(c: Clause, pick: Pick) -> str | None:
    if pick.mention.tag is None:
        if pick.mention.tags:
            found = {animal.sex for tag in pick.mention.tags if (animal := c.herd.find(tag))}
            return found.pop() if len(found) == 1 else pick.mention.sex
        return pick.mention.sex
    animal = c.herd.find(pick.mention.tag)
    return animal.sex if animal and animal.sex else pick.mention.sex


def doe_spoken_of(c: Clause) -> Pick | None:
    """The animal spoken of before, if it is a doe."""
    spoken = c.spoken_of()
    return spoken if spoken and _sex(c, spoken) == "doe" else None


def stud_elsewhere(c: Clause) -> str | None:
    """A stud from elsewhere: the name behind `the neighbor's buck`."""
    i = c.first("elsewhere")
    if i is None:
        return None
    after = c.items[i + 1] if i + 1 < len(c.items) else None
    if after is None or after.sort != "word" or after.marks:
        return None
    c.use([i, i + 1])
    return after.said.capitalize()


def bucks_here(c: Clause) -> tuple[str, ...]:
    """Tags of bucks, to choose from."""
    return tuple(animal.tag for animal in c.scene.words.living() if animal.sex == "buck")[:5]
