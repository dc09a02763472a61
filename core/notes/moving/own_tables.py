"""The whole book as tables: three to look at, one a kind of fact, and the notes as they were typed.

about      what this is, and what a table can't carry
animals    every animal as it is now, living and gone; matings, litters: the same
told KIND  the facts that stand, a row each, in the order told: these, and only these, are read when the tables come back in
notes      what was typed, by whom, what was answered, and whether any of it stands
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import UTC
from typing import Final

from core.herd.litters import alive_now, live_born
from core.herd.state import Animal, Herd, Litter
from core.notes.as_notes import TALK
from core.notes.fact import field_names
from core.notes.journal import Entry, Note
from core.notes.kinds import KINDS
from core.notes.moving.facts import cells_of
from core.notes.moving.table import Cell, Table
from core.notes.replay import Book

#: What the first cells of `about` say: by this the tables are known when they come back.
FORM: Final = "haynote tables"
VERSION: Final = 1

#: How a table of facts is named: `told weighed`.
TOLD: Final = "told "
#: Its columns before the fact's own: the place among all facts, when it was told, and by whom.
KEYS: Final = ("order", "told_at", "told_by", "note")

#: What tables leave to other forms.
LEFT_OUT: Final = (
    "What was undone or put right stands under notes as it was typed, not under told: `export --journal` keeps it whole.",
    "People, chats and photos are in the archive: `export --archive`.",
)


def own_tables(book: Book, farm: str) -> tuple[Table, ...]:
    """The book as tables, empty ones of kinds left out."""
    herd = book.herd
    shown = (_animals(herd), _matings(herd), _litters(herd))
    return (_about(farm), *shown, *_told(book), _notes(book))


def told_entries(book: Book) -> tuple[Entry, ...]:
    """The facts that stand and say something of the farm, in the order told; a fact put right stands where the wrong one was."""
    return tuple(sorted((one for one in book.standing() if one.fact.kind not in TALK), key=lambda one: (one.place, one.note.id)))


def _about(farm: str) -> Table:
    rows: tuple[tuple[Cell, ...], ...] = (
        ("form", FORM),
        ("version", VERSION),
        ("farm", farm),
        ("units", "grams, degrees Celsius, ISO dates"),
        *(("not here", line) for line in LEFT_OUT),
    )
    return Table("about", ("what", "value"), rows)


def _told(book: Book) -> Iterable[Table]:
    """A table a kind, in the order of the kinds."""
    by_kind: dict[str, list[tuple[Cell, ...]]] = {}
    for order, entry in enumerate(told_entries(book), start=1):
        note = entry.note
        keys = (order, note.at.astimezone(UTC).isoformat(), note.author, note.id)
        by_kind.setdefault(entry.fact.kind, []).append((*keys, *cells_of(entry.fact)))
    for kind in KINDS:
        if kind.name in by_kind:
            fields = (names.json for names in field_names(kind.fact))
            yield Table(f"{TOLD}{kind.name}", (*KEYS, *fields), tuple(by_kind[kind.name]))


def _notes(book: Book) -> Table:
    stands = {entry.note.id for entry in book.standing()}
    columns = ("note", "sent_at", "told_by", "text", "reply", "stands")
    return Table("notes", columns, tuple(_note(note, stands) for note in book.notes))


def _note(note: Note, stands: set[int]) -> tuple[Cell, ...]:
    return (note.id, note.at.astimezone(UTC).isoformat(), note.author, note.text, note.reply, note.id in stands)


def _animals(herd: Herd) -> Table:
    columns = (
        "tag", "name", "sex", "breed", "color", "born", "sire", "dam", "origin", "came_on", "cage", "weight_grams", "weighed_on",
        "condition", "for_sale", "gone", "gone_on",
    )  # fmt: skip
    return Table("animals", columns, tuple(_animal(herd, one) for one in herd.animals.values()))


def _animal(herd: Herd, one: Animal) -> tuple[Cell, ...]:
    weight = one.weights[-1] if one.weights else None
    gone = one.gone
    return (
        one.tag, one.name, one.sex, one.breed, one.color, one.born, _tag(herd, one.sire), _tag(herd, one.dam), one.origin, one.came_on,
        one.cage, weight.grams if weight else None, weight.on if weight else None, one.conditions[-1][1] if one.conditions else None,
        one.listing is not None and one.living, gone.how if gone else None, gone.on if gone else None,
    )  # fmt: skip


def _matings(herd: Herd) -> Table:
    columns = ("doe", "buck", "on", "falls", "nest_box_in", "outcome", "ended_on")
    rows = tuple(
        (_tag(herd, one.doe), _tag(herd, one.buck), one.on, one.falls, one.box_in, one.outcome, one.ended_on) for one in herd.matings
    )
    return Table("matings", columns, rows)


def _litters(herd: Herd) -> Table:
    columns = ("dam", "sire", "born_on", "born", "live_born", "dead", "lost", "alive_now", "weaned", "weaned_on", "tagged")
    return Table("litters", columns, tuple(_litter(herd, one) for one in herd.litters.values()))


def _litter(herd: Herd, one: Litter) -> tuple[Cell, ...]:
    lost = sum(each.count for each in one.losses)
    tags = ", ".join(_known(herd.animals, key) for key in one.tagged)
    sire = _tag(herd, one.sire)
    dam = _tag(herd, one.dam)
    return (dam, sire, one.born_on, one.born, live_born(one), one.dead, lost, alive_now(one), one.weaned, one.weaned_on, tags)


def _tag(herd: Herd, key: str | None) -> str | None:
    return None if key is None else _known(herd.animals, key)


def _known(animals: Mapping[str, Animal], key: str) -> str:
    return animals[key].tag if key in animals else key
