"""The family book as a PLINK .fam file, for genetics programs: who is out of whom, and of which sex. Nothing else fits into one.

A line an animal, six fields with spaces between: family (the farm), animal, sire, dam, sex (1 buck, 2 doe, 0 unknown), and -9 for
the trait that such a file may hold. A parent of 0 is unknown.
"""

from __future__ import annotations

import re
from datetime import date

from core.herd.state import Herd
from core.reports.evidence import evidence

SEX = {"buck": "1", "doe": "2"}
UNKNOWN = "0"
NO_TRAIT = "-9"
#: What a reader of such a file takes for the end of a field.
BLANK = re.compile(r"\s+")


def fam_lines(herd: Herd, farm: str) -> tuple[str, ...]:
    """The lines, parents before their kits. Parents that contradict each other count as unknown, as in every reckoning here."""
    book = evidence(herd, herd.day or date.min).book
    names = _names(book.ids)
    sires, dams = ({book.ids[at] for at in places if at >= 0} for places in (book.sires, book.dams))
    lines = []
    for one in book.ids:
        sire, dam = (names[parent] if parent else UNKNOWN for parent in book.parents(one))
        lines.append(f"{_field(farm)} {names[one]} {sire} {dam} {_sex(herd, one, sires, dams)} {NO_TRAIT}")
    return tuple(lines)


def _sex(herd: Herd, key: str, sires: set[str], dams: set[str]) -> str:
    """As told, else as its kits say."""
    told = herd.animals[key].sex if key in herd.animals else None
    if told is not None:
        return SEX[told]
    return SEX["buck"] if key in sires else SEX["doe"] if key in dams else UNKNOWN


def _names(keys: tuple[str, ...]) -> dict[str, str]:
    """A name without blanks for each animal, its tag where that can be."""
    names: dict[str, str] = {}
    taken = {UNKNOWN}
    for key in keys:
        name = _field(key)
        while name in taken:
            name += "_"
        taken.add(name)
        names[key] = name
    return names


def _field(text: str) -> str:
    return BLANK.sub("_", text.strip()) or "_"
