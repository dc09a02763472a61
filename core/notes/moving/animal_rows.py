"""Rows that tell of animals: who they are, what they weighed, and what became of them."""

from __future__ import annotations

from datetime import date, timedelta

from core.handbook import breeds, colors
from core.notes.fact import Fact, Sex
from core.notes.kinds.animal import AnimalNoted
from core.notes.kinds.culling import Culled
from core.notes.kinds.death import Died
from core.notes.kinds.giving import GivenAway
from core.notes.kinds.moving import Moved
from core.notes.kinds.sale import Sold
from core.notes.kinds.weighing import Weighed
from core.notes.moving.amounts import cents_of, grams_of, is_yes, number_of, sex_of
from core.notes.moving.days import day_of
from core.notes.moving.layout import Column
from core.notes.moving.row import Row
from core.notes.moving.table import Cell
from core.notes.moving.whose import words_of
from core.words import OUNCES_IN_POUND
from core.words import grams_of as grams_said

#: What a column of fates may say, and which fact that is.
_FATES = {
    **dict.fromkeys(("sold", "sale"), "sold"),
    **dict.fromkeys(("dead", "died", "deceased", "lost"), "died"),
    **dict.fromkeys(("culled", "butchered", "processed", "freezer", "freezer camp", "meat", "eaten"), "culled"),
    **dict.fromkeys(("given away", "gave away", "gifted", "rehomed"), "given_away"),
}
_HERE = frozenset({"active", "alive", "here", "current", "keeper", "keep", "breeder", "breeding", "in herd", "living", "present"})


def read_animal(row: Row) -> None:
    """Add what the row tells of its animal."""
    who = row.tag("tag") or row.tag("name")
    if who is None:
        row.nobody("it names no animal")
        return
    animal = _animal(row, who)
    row.facts.append(animal)
    on = row.day("date")
    if (cage := row.cell("cage")) is not None:
        row.facts.append(Moved(who=who, cage=words_of(cage), on=on or row.today))
    _weights(row, who, animal.born, on)
    _fate(row, who)
    row.remarks(who, on or row.today)


def _animal(row: Row, who: str) -> AnimalNoted:
    tag, name = row.cell("tag"), row.cell("name")
    called = name if tag is not None or (name is not None and who != words_of(name)) else None
    breed, color = _looks(row)
    came, paid = row.day("came"), row.cell("paid")
    price = cents_of(paid) if paid is not None else None
    if paid is not None and price is None:
        row.keep("paid")
    return AnimalNoted(
        tag=who,
        name=words_of(called) if called is not None else words_of(tag) if tag is not None and " " in words_of(tag) else None,
        sex=_sex(row),
        breed=breed,
        color=color,
        born=row.day("born"),
        sire=_parent(row, "sire", who),
        dam=_parent(row, "dam", who),
        origin="bought" if price is not None else None,
        price=price,
        on=came,
    )


def _sex(row: Row) -> Sex | None:
    cell = row.cell("sex")
    sex = sex_of(cell)
    if cell is not None and sex is None:
        row.keep("sex")
    return sex or row.sex


def _parent(row: Row, name: str, who: str) -> str | None:
    """The parent; an animal is none of its own."""
    tag = row.tag(name)
    if tag != who:
        return tag
    row.keep(name)
    return None


def _looks(row: Row) -> tuple[str | None, str | None]:
    """Breed and colour, by the handbook's names where it knows them: `NZW` says both."""
    breed, color = (words_of(cell) if (cell := row.cell(name)) is not None else None for name in ("breed", "color"))
    both = breeds.breed_color_words().get((breed or "").lower())
    if both:
        breed, color = both[0], color or both[1]
    known = breeds.breed(breed)
    return known.name if known else breed, (colors.color(color) or color.lower()) if color else None


def _weights(row: Row, who: str, born: date | None, on: date | None) -> None:
    """Each weight with its day: of its heading, of its age, of the row, or as somebody decided."""
    herd_born = born or row.whose.born.get(who)
    for column, cell in row.columns("weight"):
        grams = _grams(row, column, cell)
        day = _weighed_on(row, column, herd_born, on)
        if not grams or day is None or day > row.today:
            row.doubts.append(f"{words_of(cell)} is {'no weight' if not grams else 'a weight without a day'}")
            row.words.append(f"{column.head}: {words_of(cell)}")
        else:
            row.facts.append(Weighed(who=who, grams=grams, on=day))


def _grams(row: Row, column: Column, cell: Cell) -> int | None:
    grams = grams_of(cell, column.unit or row.layout.unit, row.layout.dots)
    ounces = next((each for each in row.layout.columns if each.means == "ounces" and each.place == column.place + 1), None)
    extra = number_of(row.cells[ounces.place]) if ounces else None
    fits = grams is not None and extra is not None and 0 <= extra < OUNCES_IN_POUND
    return (grams or 0) + grams_said(0, extra) if fits and extra is not None else grams


def _weighed_on(row: Row, column: Column, born: date | None, on: date | None) -> date | None:
    if column.when is not None:
        return day_of(column.when, row.layout.order)
    if column.age is not None:
        return born + timedelta(column.age) if born else None
    decided = row.layout.decisions.get("weighed", "")
    return on or (day_of(decided, row.layout.order) if decided else None)


def _fate(row: Row, who: str) -> None:
    """What became of it, from the column of a day or of a word; the first that tells it."""
    status = row.cell("status")
    said = words_of(status).lower() if status is not None else ""
    found = next((how for word, how in _FATES.items() if said.startswith(word)), None)
    days = {"sold": _gone_on(row, "sold_on"), "died": _gone_on(row, "died_on"), "culled": _gone_on(row, "culled_on")}
    how = next((each for each, day in days.items() if day is not None), found)
    if status is not None and found is None and said not in _HERE:
        row.keep("status")
    on = days.get(how or "") or (_decided(row) if how else None)
    if how and on:
        row.facts.append(_gone(row, who, how, on))
    else:
        for name in ("sold_for", "buyer", *(("status",) if found else ())):
            row.keep(name)


def _gone_on(row: Row, name: str) -> date | None:
    """The day; a mere tick takes the day that somebody decided."""
    cell = row.cell(name)
    return _decided(row) if cell is not None and is_yes(cell) else row.day(name)


def _decided(row: Row) -> date | None:
    """The day for those that are gone nobody knows when."""
    said = row.layout.decisions.get("gone", "")
    row.undated = row.undated or not said
    return day_of(said, row.layout.order) if said else None


def _gone(row: Row, who: str, how: str, on: date) -> Fact:
    if how == "sold":
        paid, buyer = row.cell("sold_for"), row.cell("buyer")
        price = cents_of(paid) if paid is not None else None
        if paid is not None and price is None:
            row.keep("sold_for")
        return Sold(who=who, on=on, price=price, to=words_of(buyer) if buyer is not None else None)
    for name in ("sold_for", "buyer"):
        row.keep(name)
    made: dict[str, type[Died | Culled | GivenAway]] = {"died": Died, "culled": Culled, "given_away": GivenAway}
    return made[how](who=who, on=on)
