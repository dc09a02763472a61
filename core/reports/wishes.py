"""What a person already said of an animal's stay: plans, holds and offers. Their word goes before every number."""

from __future__ import annotations

from datetime import date

from core.herd.litters import litters_of, litters_sired
from core.herd.state import Animal, Intention, Listing
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.wording import pronoun, tag_of, when

#: Plans that say what becomes of an animal.
STAY = ("keep", "cull", "sell", "retire", "replace", "review")


def wish_of(barn: Evidence, animal: Animal) -> Intention | None:
    """The person's last word on whether it stays; None where there is none, it has run out, or what it waited for has come."""
    said = [one for one in animal.intentions if one.what in STAY]
    if not said:
        return None
    last = said[-1]
    if last.what == "keep" and (_over(last, barn.today) or _proven_since(barn, animal, last)):
        return None
    return last


def _over(wish: Intention, today: date) -> bool:
    end = wish.until or wish.on
    return end is not None and end < today


def _proven_since(barn: Evidence, animal: Animal, wish: Intention) -> bool:
    """`Keep 7 til he's proven` ends with his first litter, or hers."""
    if "prove" not in (wish.reason or "").lower():
        return False
    litters = [*litters_sired(barn.herd, animal.key), *litters_of(barn.herd, animal.key)]
    return any(one.born_on >= wish.told_on and one.weaned_on is not None for one in litters)


_WISHES = {
    "keep": "You said to keep {it}",
    "cull": "You plan to cull {it}",
    "sell": "You plan to sell {it}",
    "retire": "You plan to retire {it}",
    "replace": "You plan to replace {it}",
    "review": "You want to look at {it} again",
}


#: Days from today with a name of their own: `today`, `tomorrow`.
_NAMED = (-1, 0, 1)


def wished(barn: Evidence, animal: Animal, wish: Intention) -> Finding:
    it = {"he": "him", "she": "her"}.get(pronoun(animal), "it")
    text = _WISHES[wish.what].format(it=it)
    if wish.with_:
        text += f" with {tag_of(barn.herd, wish.with_)}"
    if wish.on:
        near = (wish.on - barn.today).days in _NAMED
        text += f"{' ' if near else ' on '}{when(wish.on, barn.today)}"
    if wish.until:
        text += f" until {when(wish.until, barn.today)}"
    text += f": {wish.reason}." if wish.reason else "."
    evidence = {
        "what": wish.what,
        "told_on": wish.told_on.isoformat(),
        "on": wish.on.isoformat() if wish.on else None,
        "until": wish.until.isoformat() if wish.until else None,
        "reason": wish.reason,
        "count": 1,
    }
    return Finding(animal.key, animal.tag, f"planned_{wish.what}", text, evidence, kinds=("planned",))


def offered(barn: Evidence, animal: Animal, offer: Listing) -> Finding:
    until = f" until {when(offer.until, barn.today)}" if offer.until else ""
    text = f"For sale since {when(offer.on, barn.today)}{until}."
    evidence = {
        "on": offer.on.isoformat(),
        "until": offer.until.isoformat() if offer.until else None,
        "price_cents": offer.price,
        "count": 1,
    }
    return Finding(animal.key, animal.tag, "for_sale", text, evidence, kinds=("for_sale",))
