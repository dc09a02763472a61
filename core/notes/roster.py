"""The roster: a farm written down at one moment, to read notes against or to begin a book with.

One JSON object: `farm` (its settings), `now`, `animals`, `breedings` (those still open) and `litters` (with the kits alive now).
Everything but the tags may be missing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from decimal import Decimal

from core.handbook.reproduction import WEAN_DAY
from core.herd.settings import Settings
from core.herd.state import Animal, Herd, Litter, Mating
from core.notes.fact import Fact, Json, SettingValue
from core.notes.kinds.animal import AnimalNoted
from core.notes.kinds.kindling import Kindled
from core.notes.kinds.mating import Bred
from core.notes.kinds.setting import SettingChanged
from core.words import grams_of

Row = Mapping[str, Json]

#: Settings that stand under the same name in the roster and in a `setting` note.
SAME_NAME = ("timezone", "weight_units", "temperature_units", "date_order", "dotted_weight")


def herd_of(roster: Row) -> Herd:
    """The herd as the roster tells it, built without replay. Raises KeyError or ValueError where the roster is malformed."""
    today = _today(roster)
    animals = {animal.key: animal for animal in _animals(roster, today)}
    for ancestor in _ancestors(roster, animals):
        animals.setdefault(ancestor.key, ancestor)
    litters = {litter.key: litter for litter in _litters(roster, animals, today)}
    herd = Herd(matings=_matings(roster), litters=litters, settings=_settings(roster))
    for animal in animals.values():
        key = f"{animal.dam}@{animal.born}"
        herd = herd.with_animal(replace(animal, litter=key) if key in litters else animal)
    return herd


def facts_of(roster: Row) -> tuple[Fact, ...]:
    """What a person would have noted to bring an empty book to this roster: settings, animals (parents first), breedings, litters.

    A litter comes as a kindling with the kits alive now: how many were born is not on a roster.
    """
    settings = tuple(SettingChanged(name=name, value=value) for name, value in _said(roster).items())
    return (*settings, *_animal_facts(roster), *_breeding_facts(roster), *_litter_facts(roster))


def _today(roster: Row) -> date | None:
    return datetime.fromisoformat(roster["now"]).date() if roster.get("now") else None


def _day(row: Row, name: str) -> date | None:
    return date.fromisoformat(row[name]) if row.get(name) else None


def _rows(roster: Row, name: str) -> Sequence[Row]:
    rows: Sequence[Row] = roster.get(name) or ()
    return rows


def _text(row: Row, name: str) -> str | None:
    return str(row[name]) if row.get(name) else None


def _said(roster: Row) -> dict[str, SettingValue]:
    """The farm's settings under their contract names; weights in grams."""
    farm: Row = roster.get("farm") or {}
    said: dict[str, SettingValue] = {name: farm[name] for name in SAME_NAME if farm.get(name)}
    if farm.get("feed_bag_lb"):
        said["feed_bag"] = grams_of(Decimal(str(farm["feed_bag_lb"])))
    return said


def _settings(roster: Row) -> Settings:
    said = _said(roster)
    named = {name: said[name] for name in SAME_NAME if name in said}
    currency = (roster.get("farm") or {}).get("currency") or Settings().currency
    return replace(Settings(said=said, currency=currency), **named)  # type: ignore[arg-type] # these settings are all text


def _animals(roster: Row, today: date | None) -> Iterator[Animal]:
    for row in _rows(roster, "animals"):
        born = _day(row, "born")
        weaned = born + timedelta(WEAN_DAY.whole) if born else None
        yield Animal(
            key=str(row["tag"]),
            tag=str(row["tag"]),
            name=_text(row, "name"),
            sex=_text(row, "sex"),
            breed=_text(row, "breed"),
            color=_text(row, "color"),
            born=born,
            sire=_text(row, "sire"),
            dam=_text(row, "dam"),
            origin=_text(row, "origin"),
            weaned_on=weaned if weaned and (today is None or weaned <= today) else None,
        )


def _ancestors(roster: Row, animals: Mapping[str, Animal]) -> Iterator[Animal]:
    """Parents and mates that the roster names but doesn't list: they never lived here, as far as it tells."""
    named = [(row, name, sex) for row in _rows(roster, "animals") for name, sex in (("sire", "buck"), ("dam", "doe"))]
    named += [(row, name, name) for row in _rows(roster, "breedings") for name in ("buck", "doe")]
    for row, name, sex in named:
        tag = _text(row, name)
        if tag and tag not in animals:
            yield Animal(key=tag, tag=tag, sex=sex, origin="outside")


def _matings(roster: Row) -> tuple[Mating, ...]:
    rows = _rows(roster, "breedings")
    matings = [Mating(doe=str(row["doe"]), buck=str(row["buck"]), on=date.fromisoformat(row["on"])) for row in rows]
    return tuple(sorted(matings, key=lambda mating: mating.on))


def _litters(roster: Row, animals: Mapping[str, Animal], today: date | None) -> Iterator[Litter]:
    """The litters; one whose kits are all tagged counts as weaned at the usual age."""
    for row in _rows(roster, "litters"):
        dam, born_on = str(row["dam"]), date.fromisoformat(row["born_on"])
        kits = tuple(animal.key for animal in animals.values() if animal.dam == dam and animal.born == born_on)
        alive = int(row.get("alive_now") or 0)
        weaned_on = born_on + timedelta(WEAN_DAY.whole)
        weaned = alive > 0 and int(row.get("tagged") or 0) >= alive and (today is None or weaned_on <= today)
        sire = _text(row, "sire")
        yield Litter(
            key=f"{dam}@{born_on}",
            dam=dam,
            sire=sire,
            sires_possible=(sire,) if sire else (),
            born_on=born_on,
            alive=alive,
            weaned_on=weaned_on if weaned else None,
            weaned=alive if weaned else None,
            tagged=kits,
        )


def _animal_facts(roster: Row) -> Iterator[AnimalNoted]:
    """The animals, each after its parents."""
    rows = {str(row["tag"]): row for row in _rows(roster, "animals")}
    done: set[str] = set()

    def lineage(tag: str) -> Iterator[AnimalNoted]:
        if tag in done or tag not in rows:
            return
        done.add(tag)
        row = rows[tag]
        for parent in ("sire", "dam"):
            yield from lineage(str(row.get(parent)))
        yield _animal_fact(row)

    for tag in rows:
        yield from lineage(tag)


def _animal_fact(row: Row) -> AnimalNoted:
    sex = row.get("sex")
    return AnimalNoted(
        tag=str(row["tag"]),
        name=_text(row, "name"),
        sex=sex if sex in ("buck", "doe") else None,
        breed=_text(row, "breed"),
        color=_text(row, "color"),
        born=_day(row, "born"),
        sire=_text(row, "sire"),
        dam=_text(row, "dam"),
        origin=_text(row, "origin"),
    )


def _breeding_facts(roster: Row) -> Iterator[Bred]:
    for mating in _matings(roster):
        yield Bred(doe=mating.doe, buck=mating.buck, on=mating.on)


def _litter_facts(roster: Row) -> Iterator[Kindled]:
    for row in _rows(roster, "litters"):
        yield Kindled(doe=str(row["dam"]), alive=int(row.get("alive_now") or 0), on=date.fromisoformat(row["born_on"]))
