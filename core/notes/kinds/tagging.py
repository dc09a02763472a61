"""A kit gets its ear number."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from typing import ClassVar, Final

from core import words
from core.herd.changes import changed, joined
from core.herd.litters import newest_litter, the_litter, untagged
from core.herd.state import Animal, Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need
from core.notes.fact import Sex, Tag
from core.notes.kind import Example, Kind
from core.notes.slots.items import Item, color_said
from core.notes.telling import called, color_written, dated, noted, parts, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Tagged:
    """A kit gets its ear number."""

    kind: ClassVar[str] = "tagged"

    tag: Tag
    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    sex: Sex | None = None
    color: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example(
        "tattooed R30 out of 16, book, black",
        ({"tag": "R30", "litter_of": "16", "sex": "buck", "color": "black", "on": "2026-11-25"},),
    ),
    Example(
        "tattooed R31 out of 16, doe, castor",
        ({"tag": "R31", "on": "2026-11-25", "litter_of": "16", "sex": "doe", "color": "castor"},),
    ),
    Example(
        "16's kits: tattooed R32 buck black",
        ({"tag": "R32", "on": "2026-11-25", "litter_of": "16", "sex": "buck", "color": "black"},),
    ),
    Example(
        "tattooed R32 outta 16, lil buck, black", ({"tag": "R32", "on": "2026-11-25", "litter_of": "16", "sex": "buck", "color": "black"},)
    ),
    Example(
        "R34 R35 tattooed out of 16, both does",
        (
            {"tag": "R34", "on": "2026-11-25", "litter_of": "16", "sex": "doe"},
            {"tag": "R35", "on": "2026-11-25", "litter_of": "16", "sex": "doe"},
        ),
    ),
    Example(
        "tattooed 16's kits R36 buck black, R37 doe castor",
        (
            {"tag": "R36", "on": "2026-11-25", "litter_of": "16", "sex": "buck", "color": "black"},
            {"tag": "R37", "on": "2026-11-25", "litter_of": "16", "sex": "doe", "color": "castor"},
        ),
    ),
    Example("tagged 16 litter K1", ({"tag": "K1", "on": "2026-11-25", "litter_of": "16"},)),
    Example("tagged R33 from 16", ({"tag": "R33", "on": "2026-11-25", "litter_of": "16"},)),
    Example("Tag: litter 16: R30 buck black.", ({"tag": "R30", "on": "2026-11-25", "litter_of": "16", "sex": "buck", "color": "black"},)),
    Example("tatood R30 out of 16", ({"tag": "R30", "on": "2026-11-25", "litter_of": "16"},)),
)
NOT_THIS: tuple[str, ...] = (
    "R30 2-1",
    "new doe 40 mini rex opal",
    "the price tag fell off",
    "22's tattoo wants doing again",
    "tattoo pliers are broken",
    "tagged R21",
)

OPENS: Final = ("tag",)
CUES: Final = {
    "tag": "tattooed | tattoo | tatooed | tattoed | tatood | tat | tats | tagged | retag | retagged | re tagged | ear tattoo | ear tag | tag | ear number | tatted | tattoos | tatoo | tattooing | tattood | renumbered",
    "out_of": "out of | from | of | ex | off | off of | litter of | from litter of | one of",
}  # fmt: skip


def read(c: Clause) -> None:
    """A kit's new number, the doe it is out of, its sex and colour; or a new number for an animal on the book."""
    cue = c.first("tag")
    if cue is None and "tag" not in c.virtual:
        return
    dam, used = _dam(c)
    if dam is None and "tag" in c.virtual and c.before is not None:
        dam = next((found.values["litter_of"] for found in c.before.found if found.values.get("litter_of")), None)
    c.used.update(id(item) for item in used)
    places = [i for i in range(len(c.items)) if not c.taken(i) and _may_be_tag(c, i)]
    if not places:
        if cue is not None and c.said(cue) in NOUNS:
            c.used.difference_update(id(item) for item in used)
            return  # "the tattoo on 31 is fading"
        c.take(c.past(Tagged, None, "", {"tag": None, "litter_of": dam}, used, Need("what", "tag", "Which number did it get?")))
        return
    used += [item for item in c.items if item.marks & {"tag", "color", "buck_word", "doe_word", "bucks_word", "does_word"}]
    if len(places) > 1 and dam is not None and all(c.known(i) is None for i in places):
        _several(c, places, dam, used)
        return
    values: dict[str, object] = {"sex": _sex(c), "color": next((color for item in c.items if (color := color_said(item))), None)}
    if dam is None and c.known(places[0]):
        if len(places) > 1:
            values["tag"] = _tag(c, places[-1])
            c.take(c.past(Tagged, c.pick(places[0]), "who", values, [*used, c.items[places[-1]]]))
        return
    used += [c.items[i - 1] for i in places if c.said(i - 1) == "k"]
    dam = dam or _doe_spoken_of(c)
    need = None if dam is not None else Need("which_animal", "litter_of", "Out of which doe is it?")
    place = places[0]
    c.take(c.past(Tagged, None, "", {**values, "tag": _tag(c, place), "litter_of": dam}, [*used, c.items[place]], need))


def _may_be_tag(c: Clause, i: int) -> bool:
    return c.items[i].sort in {"code", "animal"} or (c.whole(i) is not None and not c.counted(i) and c.said(i + 1) != "of")


def _doe_spoken_of(c: Clause) -> str | None:
    """The doe spoken of before: the kits are hers."""
    spoken = c.spoken_of()
    animal = c.herd.find(spoken.tag) if spoken and spoken.tag else None
    return animal.tag if animal and animal.sex == "doe" else None


#: They name the number in the ear; where none is told, nobody got one.
NOUNS: Final = frozenset({"tag", "ear tag", "tattoo", "tattoos", "tats", "ear tattoo", "ear number"})


def _several(c: Clause, places: list[int], dam: str, used: list[Item]) -> None:
    """`R32 R33 tattooed out of 16, both does`: a kit a tag; sex and colour are of those told just before."""
    groups: list[list[int]] = [[places[0]]]
    for before, i in pairwise(places):
        if all(item.said in {",", "and", "&"} for item in c.items[before + 1 : i]):
            groups[-1].append(i)
        else:
            groups.append([i])
    ends = [0, *(group[0] for group in groups[1:]), len(c.items)]
    for group, (start, end) in zip(groups, pairwise(ends), strict=True):
        told = c.items[start:end]
        color = next((color for item in told if (color := color_said(item))), None)
        for i in group:
            c.take(
                c.past(Tagged, None, "", {"sex": _sex_in(told), "color": color, "tag": _tag(c, i), "litter_of": dam}, [*used, c.items[i]])
            )


def _tag(c: Clause, i: int) -> str:
    mention = c.mention(i)
    letter = "K" if c.said(i - 1) == "k" else ""  # "tagged 16 litter K1": no kindling
    return letter + (mention.tag or mention.said if mention else c.said(i)).upper()


def _sex(c: Clause) -> str | None:
    return _sex_in(c.items)


def _sex_in(items: list[Item]) -> str | None:
    if any(item.marks & {"buck_word", "bucks_word"} for item in items):
        return "buck"
    return "doe" if any(item.marks & {"doe_word", "does_word"} for item in items) else None


def _dam(c: Clause) -> tuple[str | None, list[Item]]:
    """The doe behind `out of`, `from`, `litter of`, or by `thistle's`."""
    for i in range(len(c.items)):
        before = c.items[i - 1] if i else None
        behind = before is not None and (bool(before.marks & {"out_of", "from"}) or before.said in {"of", "litter"})
        animal = c.known(i)
        following = c.items[i + 1].marks if i + 1 < len(c.items) else frozenset()
        if animal and animal.sex == "doe" and (behind or c.items[i].unit == "possessive" or following & {"litter", "kits"}):
            pick = c.pick(i)
            return animal.tag, pick.items
    return None, []


def check(fact: Tagged, herd: Herd, today: date) -> Problem | None:
    """The tag must be free; a litter must have a kit without one."""
    return worst(not_yet(fact.on, today), _tag_taken(fact, herd), _kit_problem(fact, herd))


def _tag_taken(fact: Tagged, herd: Herd) -> Problem | None:
    holder = herd.find(fact.tag)
    if holder is None or not holder.living:
        return None
    text = f"{fact.tag} is already the tag of another {holder.sex or 'rabbit'}. Which tag is the new one?"
    return Problem("which_animal", text, (), "Send the note again with the right tag.")


def _kit_problem(fact: Tagged, herd: Herd) -> Problem | None:
    if fact.who is not None:
        return animal_problem(herd, fact.who, fact.on, fact.sex)
    if fact.litter_of is None:
        return Problem("which_animal", f"Out of which doe is {fact.tag}?", (), f'Send it as "tattooed {fact.tag} out of 16".')
    doe = herd.find(fact.litter_of)
    if doe is None or doe.sex == "buck":
        return animal_problem(herd, fact.litter_of, fact.on, "doe")
    if the_litter(herd, doe.key, fact.on):
        return None
    text = f"Doe {fact.litter_of} has no untagged kits on the book. Put {fact.tag} down as hers all the same?"
    return Problem("confirm", text, ("yes", "no"), "Answer yes, or send the right doe.")


def apply(fact: Tagged, herd: Herd) -> Herd:
    """A kit of the doe's litter becomes an animal; one that is on the book changes its tag."""
    if fact.who is not None:
        told = {name: value for name, value in (("sex", fact.sex), ("color", fact.color)) if value is not None}
        return changed(herd, fact.who, tag=fact.tag, **told)
    dam = herd.find(fact.litter_of or "")
    if dam is None:
        return herd
    litter = the_litter(herd, dam.key, fact.on) or newest_litter(herd, dam.key, fact.on)
    sire = herd.animals.get(litter.sire or "") if litter else None
    breed = dam.breed if sire is None or sire.breed == dam.breed else None
    kit = Animal(
        key=herd.free_key(fact.tag), tag=fact.tag, sex=fact.sex, color=fact.color, breed=breed,
        born=litter.born_on if litter else None, dam=dam.key, origin="born_here", came_on=litter.born_on if litter else fact.on,
    )  # fmt: skip
    return joined(herd, kit, litter)


def reply(fact: Tagged, before: Herd, after: Herd) -> tuple[str, ...]:
    """Whose kit carries the tag, and how many are left without one."""
    if fact.who is not None:
        return (dated(f"{called(before, fact.who)} is now {fact.tag}", fact.on, after),)
    doe = fact.litter_of or ""
    dam, kit = after.find(doe), after.find(fact.tag)
    litter = after.litters.get(kit.litter or "") if kit else None
    born = f"born {words.full_day(litter.born_on)}" if litter else None
    told = parts(f"{called(after, fact.tag)} out of doe {doe}", fact.color, born)
    left = untagged(after, litter) if dam and litter else 0
    return (dated(told, fact.on, after), f"{words.count(left, 'kit')} of that litter left without a tag.")


WRITTEN = (
    "tattooed {tag:TAG} out of {litter_of:TAG}(?:, (?P<sex>buck|doe))?(?:, color {color:COLOR})?",
    "tattooed {who:TAG} as {tag:TAG}(?:, (?P<sex>buck|doe))?(?:, color {color:COLOR})?",
)


def show(fact: Tagged, _herd: Herd) -> str:
    """`2026-11-25: tattooed R30 out of 16, buck, color black`, or `tattooed 31 as R31`."""
    of = f"tattooed {fact.who} as {fact.tag}" if fact.who is not None else f"tattooed {fact.tag} out of {fact.litter_of}"
    return noted(fact.on, parts(of, fact.sex, told("color ", color_written(fact.color))))


KIND = Kind(fact=Tagged, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
