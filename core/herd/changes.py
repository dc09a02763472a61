"""Small changes to a herd that many notes make: an animal seen, gone, or put in order. None of them ever raises."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

from core.herd.calendar import all_chores
from core.herd.chore import chore_named
from core.herd.litters import alive_now, litter_born
from core.herd.matings import SERVICE_DAYS
from core.herd.state import Animal, Event, Foster, Gone, Herd, Litter, Loss, Mating, Weight


def changed(herd: Herd, tag: str | None, /, **fields: Any) -> Herd:
    """The herd with fields of that animal changed; the same herd where nobody has that tag."""
    animal = herd.find(tag) if tag is not None else None
    return herd.with_animal(replace(animal, **fields)) if animal else herd


def seen(herd: Herd, tag: str | None, on: date, what: str, detail: Mapping[str, Any]) -> Herd:
    """The herd with something seen of that animal; unsaid details are left out."""
    animal = herd.find(tag) if tag is not None else None
    if animal is None:
        return herd
    event = Event(on, what, {name: value for name, value in detail.items() if value is not None})
    return herd.with_animal(replace(animal, events=(*animal.events, event)))


def of_sex(herd: Herd, tag: str, sex: str) -> Herd:
    """The herd with the animal's sex filled in where it was not known."""
    animal = herd.find(tag)
    return herd.with_animal(replace(animal, sex=sex)) if animal and animal.sex is None else herd


def ancestor(herd: Herd, tag: str, sex: str) -> tuple[Herd, str]:
    """The herd that knows an animal of that tag, and its key; one nobody told of is from elsewhere and never lived here."""
    known = herd.find(tag)
    if known is not None:
        return herd, known.key
    return herd.with_animal(Animal(key=herd.free_key(tag), tag=tag, sex=sex, origin="outside")), herd.free_key(tag)


def gone(herd: Herd, tag: str, on: date, how: str, detail: Mapping[str, Any]) -> Herd:
    """The herd without that animal; a kit that went before weaning is missing from its nest too."""
    animal = herd.find(tag)
    if animal is None or not animal.living:
        return herd
    left = Gone(on, how, {name: value for name, value in detail.items() if value is not None})
    herd = herd.with_animal(replace(animal, gone=left))
    litter = herd.litters.get(animal.litter or "")
    if litter is None or litter.weaned_on is not None:
        return herd
    if how == "died":
        return herd.with_litter(lost(litter, on, 1, detail.get("cause")))
    return herd.with_litter(tallied(litter, on, alive_now(litter) - 1))


def tallied(litter: Litter, on: date, kits: int) -> Litter:
    """The litter with so many kits alive from that day on."""
    return replace(litter, tally=(*litter.tally, (on, max(0, kits))))


def lost(litter: Litter, on: date, count: int, cause: str | None) -> Litter:
    """The litter after kits died: a loss in the nest; after weaning they count among those that left."""
    if litter.weaned_on is not None:
        return left(litter, on, count, "died", {"cause": cause})
    smaller = replace(litter, losses=(*litter.losses, Loss(on, count, cause)))
    return tallied(smaller, on, alive_now(litter) - count)


def left(litter: Litter, on: date, count: int, how: str, detail: Mapping[str, Any]) -> Litter:
    """The litter after untagged kits were sold, given away or butchered, or died once weaned."""
    event = Event(on, how, {"count": count} | {name: value for name, value in detail.items() if value is not None})
    fewer = replace(litter, left=litter.left + count, events=(*litter.events, event))
    if litter.weaned_on is not None:
        return fewer
    return tallied(replace(fewer, left_unweaned=fewer.left_unweaned + count), on, alive_now(litter) - count)


def fostered_out(litter: Litter, on: date, count: int, other: str | None) -> Litter:
    """The litter after kits went to another nest."""
    return tallied(replace(litter, fostered_out=(*litter.fostered_out, Foster(on, count, other))), on, alive_now(litter) - count)


def fostered_in(litter: Litter, on: date, count: int, other: str | None) -> Litter:
    """The litter after kits came from another nest."""
    return tallied(replace(litter, fostered_in=(*litter.fostered_in, Foster(on, count, other))), on, alive_now(litter) + count)


def with_outcome(herd: Herd, matings: tuple[Mating, ...], outcome: str, on: date) -> Herd:
    """The herd with these matings ended."""
    if not matings:
        return herd
    does = {mating.doe for mating in matings}
    ended = tuple(
        replace(mating, outcome=outcome, ended_on=on) if mating.doe in does and mating in matings else mating for mating in herd.matings
    )
    return replace(herd, matings=ended)


def mated_again(herd: Herd, doe: str, on: date) -> Herd:
    """The herd with the doe's earlier open matings ended as `rebred`; those of the same service stay open."""
    earlier = tuple(m for m in herd.matings if m.doe == doe and m.outcome is None and (on - m.on).days > SERVICE_DAYS)
    return with_outcome(herd, earlier, "rebred", on) if earlier else herd


def weighed(herd: Herd, animal: Animal, on: date, grams: int) -> Herd:
    """The herd with one more weight of that animal, in its place by day."""
    weights = tuple(sorted((*animal.weights, Weight(on, grams)), key=lambda weight: weight.on))
    return herd.with_animal(replace(animal, weights=weights))


def joined(herd: Herd, animal: Animal, litter: Litter | None = None) -> Herd:
    """The herd with that animal; one whose dam and birth date fit a litter is one of its kits, not one more."""
    if litter is None and animal.dam and animal.born and animal.litter is None and animal.origin in {None, "born_here"}:
        litter = litter_born(herd, animal.dam, animal.born)
    if litter is None:
        return herd.with_animal(animal)
    weaned_on = animal.weaned_on or litter.weaned_on
    kit = replace(animal, litter=litter.key, sire=animal.sire or litter.sire, origin="born_here", weaned_on=weaned_on)
    return herd.with_animal(kit).with_litter(replace(litter, tagged=(*litter.tagged, kit.key)))


def closed(herd: Herd, chore: str, tag: str | None, key: str | None, on: date) -> Herd:
    """The herd with a chore done or skipped: the one of that key, else the first open one that the words fit."""
    keys = [key] if key else _open_keys(herd, chore, tag, on)[:1]
    return replace(herd, closed={**herd.closed, **dict.fromkeys(keys, on)}) if keys else herd


def _open_keys(herd: Herd, said: str, tag: str | None, on: date) -> list[str]:
    """Keys of the open chores that the words name, by day: by the chore's name, else a reminder with those words."""
    animal = herd.find(tag) if tag is not None else None
    open_ones = [chore for chore in all_chores(herd, on) if animal is None or chore.tag == animal.tag]
    asked = [chore.key for chore in open_ones if chore.chore == "custom" and _alike(chore.text, said)]
    named = chore_named(said)
    return asked or [chore.key for chore in open_ones if chore.chore == named]


def _alike(one: str, other: str) -> bool:
    """Whether two phrases share a word that tells something: `trim nails on 9`, `trimming nails`."""
    stems = [{word[:4] for word in text.lower().split() if len(word) > 3} for text in (one, other)]
    return bool(stems[0] & stems[1])
