"""How this person types: a few ways to say each thing, some terse, some chatty, some with a slip of the thumb.

Each note comes with the facts that it states, so that a replay of the season can be held against what was meant.
"""

from __future__ import annotations

import random
from typing import Any, NamedTuple

from demo_data.cast import Rabbit

SLIPS = {"kindled": "kindeld", "weighed": "weigehd", "palpated": "palpted", "weaned": "weened", "tattooed": "tatooed"}
OUNCE_G = 28.349523125

Fact = dict[str, Any]


class Said(NamedTuple):
    """What was typed, the facts in it, and the code of the question it deserves, if any."""

    text: str
    gives: tuple[Fact, ...] = ()
    asks: str | None = None


def fact(kind: str, /, **fields: Any) -> Fact:
    """A fact of that kind with what the note says of it."""
    return {"kind": kind, **fields}


def said(text: str, kind: str, /, **fields: Any) -> Said:
    """A note that gives one fact."""
    return Said(text, (fact(kind, **fields),))


def say(chance: random.Random, *ways: str) -> str:
    """One of the ways, now and then with a slip."""
    text = chance.choice(ways)
    if chance.random() < 0.04:
        for right, wrong in SLIPS.items():
            text = text.replace(right, wrong, 1)
    return text


def many(count: int, thing: str) -> str:
    """`1 kit`, `3 kits`."""
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"


def ounces(grams: float) -> int:
    """What the scale shows [oz]."""
    return round(grams / OUNCE_G)


def pounds(grams: float) -> str:
    """A weight as it is typed: 4-6."""
    lb, oz = divmod(ounces(grams), 16)
    return f"{lb}-{oz}"


def shown(grams: float) -> int:
    """The weight that the typed pounds and ounces come to [g]."""
    return round(ounces(grams) * OUNCE_G)


def newcomer(rabbit: Rabbit, parents: str = "") -> Said:
    """An animal comes on the book; `parents` such as ` sire 3 dam 11`."""
    born = rabbit.born.isoformat()
    text = f"new {rabbit.sex} {rabbit.tag} {rabbit.name} {rabbit.breed.lower()} {rabbit.color} born {born}{parents}"
    known = {"sire": rabbit.sire.tag, "dam": rabbit.dam.tag} if rabbit.sire and rabbit.dam else {}
    return said(
        text, "animal", tag=rabbit.tag, name=rabbit.name, sex=rabbit.sex, breed=rabbit.breed, color=rabbit.color, born=born, **known
    )


def bred(chance: random.Random, doe: Rabbit, buck: Rabbit) -> Said:
    """A mating."""
    falls = chance.choice((1, 2, 2, 3))
    text = say(
        chance,
        f"bred {doe.tag} to {buck.called}, {many(falls, 'fall')}",
        f"bred {doe.tag} to {buck.tag}",
        f"{doe.tag} x {buck.tag} this morning",
        f"put {doe.called} in with {buck.called}, {many(falls, 'fall')}",
        f"bred {doe.called} to {buck.called}",
    )
    return said(text, "bred", doe=doe.tag, buck=buck.tag, falls=falls if "fall" in text else None)


def palpated(chance: random.Random, doe: Rabbit, *, settled: bool) -> Said:
    """Feeling for kits."""
    if settled:
        text = say(
            chance,
            f"palpated {doe.tag} bred",
            f"palp {doe.tag} +",
            f"{doe.called} palpated bred, feels like grapes",
            f"palpated {doe.tag}, bred",
        )
    else:
        text = say(chance, f"{doe.tag} palpated open", f"palpated {doe.tag} open", f"{doe.called} palpated open")
    return said(text, "palpated", doe=doe.tag, result="bred" if settled else "open")


def boxed(chance: random.Random, doe: Rabbit, change: str) -> Said:
    """The nest box goes in, or out."""
    if change == "in":
        text = chance.choice((f"box in {doe.tag}", f"nest box in with {doe.called}", f"NB in {doe.tag}"))
    else:
        text = chance.choice((f"box out {doe.tag}", f"nest box out of {doe.called}"))
    return said(text, "nest_box", doe=doe.tag, change=change)


def kindled(chance: random.Random, doe: Rabbit, born: int, dead: int) -> Said:
    """A birth."""
    if dead:
        text = say(
            chance,
            f"doe {doe.tag} kindled {born}, {dead} dead",
            f"{doe.tag} k{born} {dead}d",
            f"{doe.called} kindled {born}, {born - dead} alive, {dead} dead",
            f"{doe.tag} kindled {born} last night, {dead} dead",
        )
    else:
        text = say(
            chance,
            f"doe {doe.tag} kindled {born}, all alive",
            f"{doe.called} kindled {born}, all alive",
            f"{doe.tag} kindled {born} all alive last night",
            f"{doe.tag} kindled {born}, 0 dead",
        )
    return said(text, "kindled", doe=doe.tag, born=born, alive=born - dead)


def lost(chance: random.Random, doe: Rabbit, count: int, way: str) -> Said:
    """Kits that died in the nest, and what that tells of the doe."""
    kits = many(count, "kit")
    cause: str | None
    sign: str | None
    match way:
        case "scattered":
            text = say(chance, f"{doe.tag} lost {kits}, scattered all over the cage", f"{doe.called} scattered her kits, lost {count}")
            cause, sign = "scattered", "scattered" if "her kits" in text else None
        case "stepped on":
            text = say(chance, f"{doe.tag} stepped on {kits}", f"{doe.called} stepped on {kits}, dead")
            cause, sign = "crushed", "stepped_on"
        case "ate":
            text = say(chance, f"{doe.tag} ate {count} of her kits", f"{doe.called} ate {kits}")
            cause, sign = "eaten", "ate_kits"
        case "froze":
            text = say(chance, f"{doe.tag} lost {kits}, froze on the wire", f"{doe.called} lost {kits} to the cold")
            cause, sign = "cold", None
        case "found outside":
            text = say(chance, f"{doe.tag} lost {kits}, found outside the box")
            cause, sign = "out_of_box", None
        case "starved":
            text = say(chance, f"{doe.tag} lost {kits}, starved", f"{doe.called} lost {kits}, empty bellies")
            cause, sign = "starved", None
        case _:
            text = say(chance, f"{doe.tag} lost {kits}", f"lost {kits} from {doe.called}'s litter")
            cause, sign = None, None
    manners = (fact("nest_manners", doe=doe.tag, sign=sign),) if sign else ()
    return Said(text, (fact("kits_lost", doe=doe.tag, count=count, cause=cause), *manners))


def weaned(chance: random.Random, doe: Rabbit, bucks: int, does: int) -> Said:
    """A litter leaves its doe."""
    both = " ".join(many(count, sex) for count, sex in ((bucks, "buck"), (does, "doe")) if count)
    kits = many(bucks + does, "kit")
    text = say(chance, f"weaned {doe.tag}: {kits}, {both}", f"weaned {doe.tag}, {kits}", f"weaned {doe.called}'s litter, {kits}: {both}")
    sexed = {"bucks": bucks or None, "does": does or None} if both in text else {}
    return said(text, "weaned", doe=doe.tag, count=bucks + does, **sexed)


def tagged(chance: random.Random, kit: Rabbit, dam: Rabbit) -> Said:
    """A kit gets its tag."""
    text = say(
        chance,
        f"tattooed {kit.tag} out of {dam.tag}, {kit.sex}, {kit.color}",
        f"tattooed {kit.tag} out of {dam.called} {kit.sex} {kit.color}",
    )
    return said(text, "tagged", litter_of=dam.tag, tag=kit.tag, sex=kit.sex, color=kit.color)


def weighed(chance: random.Random, rows: list[tuple[str, float]]) -> Said:
    """One to five rabbits on the scale."""
    gives = tuple(fact("weighed", who=tag, grams=shown(grams)) for tag, grams in rows)
    if len(rows) == 1:
        tag, grams = rows[0]
        return Said(
            say(
                chance, f"{tag} {pounds(grams)}", f"weighed {tag} {pounds(grams)}", f"{tag} weighs {pounds(grams).replace('-', ' lb ')} oz"
            ),
            gives,
        )
    listed = ", ".join(f"{tag} {pounds(grams)}" for tag, grams in rows)
    return Said(say(chance, f"weighed {listed}", listed, f"weights: {listed}"), gives)


def parted(chance: random.Random, tag: str, grams: float) -> Said:
    """A grown kit is butchered or sold."""
    price = chance.choice((25, 30, 40))
    share = chance.choice((0.52, 0.53))
    culled = fact("culled", who=tag)
    weights = {"live_grams": shown(grams), "dressed_grams": shown(grams * share)}
    sold = fact("sold", who=tag, price=f"{price}.00")
    return chance.choice(
        (
            Said(f"butchered {tag} {pounds(grams)} dressed {pounds(grams * share)}", ({**culled, **weights},)),
            Said(f"butchered {tag}", (culled,)),
            Said(f"sold {tag} ${price}", (sold,)),
            Said(f"sold {tag} for {price}", (sold,)),
        )
    )


def cleared(chance: random.Random, dam: Rabbit, count: int) -> Said:
    """The untagged kits of a litter go to the table or to a buyer."""
    kits = many(count, "kit")
    return chance.choice(
        (
            said(f"butchered {kits} from {dam.tag}'s litter", "culled", litter_of=dam.tag, count=count),
            said(f"butchered {kits} out of {dam.tag}", "culled", litter_of=dam.tag, count=count),
            said(
                f"sold {kits} from {dam.tag}'s litter, {count * 15} dollars",
                "sold",
                litter_of=dam.tag,
                count=count,
                price=f"{count * 15}.00",
            ),
        )
    )


def fed(chance: random.Random, bags: int) -> Said:
    """A trip to the mill: bags of fifty pounds."""
    text = chance.choice((f"bought {bags} bags feed 50 lb 19.50 each", f"bought {bags} 50 lb bags of feed at 19.50"))
    return said(text, "feed_bought", bags=bags, grams=round(bags * 50 * 16 * OUNCE_G), price=f"{bags * 19.5:.2f}")


def feed_left(count: int) -> Said:
    """What is left in the bins [lb]."""
    return said(f"{count} lb feed left", "feed_left", grams=round(count * 16 * OUNCE_G))


def weather(degrees: int) -> Said:
    """A cold night or a hot day [degrees Fahrenheit]."""
    warm = degrees > 60
    text = f"hot today {degrees}F" if warm else f"cold snap tonight {degrees}F"
    return said(text, "weather", what="heat" if warm else "cold", celsius=round((degrees - 32) * 5 / 9, 1))


def looked_over(chance: random.Random, tag: str) -> Said:
    """Faults and points of a young animal."""
    kind, fur = chance.choice(((4, 5), (3, 4)))
    scored = Said(
        f"{tag} type {kind} fur {fur}", (fact("scored", who=tag, trait="type", score=kind), fact("scored", who=tag, trait="fur", score=fur))
    )
    return chance.choice((disqualified(tag), scored, scored))


def disqualified(tag: str) -> Said:
    """A fault that keeps it off the show table."""
    return said(f"{tag} white toenail dq", "fault", who=tag, fault="white toenail", disqualifies=True)
