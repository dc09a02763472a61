"""The reference page of the figures: `python -m core.handbook.page > docs/reference/figures.md`."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping, Sequence
from types import ModuleType
from typing import Final

from core.handbook import asking, feeding, flags, genetics, growth, health, reproduction, stages, survival, weather, winter, worth
from core.handbook.breeds import Breed, Range, all_breeds
from core.handbook.coat_genes import COAT_PATTERNS, GENE_FORMS, TRADE_WORDS, Words
from core.handbook.figure import Figure
from core.handbook.sources import SOURCES
from core.words import OUNCES_IN_POUND, pounds_and_ounces

TOPICS: Final[tuple[ModuleType, ...]] = (
    reproduction,
    growth,
    feeding,
    weather,
    survival,
    genetics,
    stages,
    flags,
    winter,
    worth,
    asking,
    health,
)


def figures() -> Iterator[tuple[str, Figure]]:
    """Every figure of the handbook with its name: `reproduction.PALPATE_DAY`, `growth.WEIGH_DAYS[0]`."""
    for topic in TOPICS:
        for name, held in vars(topic).items():
            for key, figure in _figures_in(held):
                yield f"{topic.__name__.rpartition('.')[2]}.{name}{key}", figure


def page() -> str:
    """The whole page, in Markdown."""
    parts = (_HEAD, *(_topic(topic) for topic in TOPICS), _breed_table(), _coat_tables(), _source_table())
    return "\n\n".join(parts) + "\n"


_HEAD: Final = """# Figures

Every number of the trade that the program uses, with its range and its source. Made by `python -m core.handbook.page`; don't edit it by
hand. A farm's own settings win over what stands here.

*Seen* tells how far the source was seen by whoever wrote the figure down: `page`, `abstract` or `extract` were read; `common practice` has
no source; `ours` was chosen for this program, and the note tells how; `weak` stands on pages that name no author; `memory` was not looked
up and may be wrong."""


def _figures_in(held: object) -> Iterator[tuple[str, Figure]]:
    """The figures that a module's name holds: itself, or those in a tuple or a mapping."""
    if isinstance(held, Figure):
        yield "", held
    elif isinstance(held, tuple):
        yield from ((f"[{number}]", item) for number, item in enumerate(held) if isinstance(item, Figure))
    elif isinstance(held, Mapping):
        yield from ((f"[{key}]", item) for key, item in held.items() if isinstance(item, Figure))


def _topic(topic: ModuleType) -> str:
    short = topic.__name__.rpartition(".")[2]
    title = (topic.__doc__ or "").splitlines()[0]
    rows = [
        (name.partition(".")[2], f"{one.value:g}", one.unit, f"{one.low:g} to {one.high:g}", one.source, SOURCES[one.source].seen, one.note)
        for name, one in figures()
        if name.startswith(f"{short}.")
    ]
    return f"## {short.capitalize()}\n\n{title}\n\n{_table(('Name', 'Value', 'Unit', 'Range', 'Source', 'Seen', 'Note'), rows)}"


def _breed_table() -> str:
    rows = [_breed_row(one) for one in all_breeds()]
    head = ("Breed", "Size", "Senior buck", "Senior doe", "Target at 16 weeks", "First mating, doe", "Source", "Seen", "Note")
    return f"## Breeds\n\nSenior weights in lb, targets in lb and oz, first mating in days of age.\n\n{_table(head, rows)}"


def _breed_row(one: Breed) -> tuple[str, ...]:
    pounds, ounces = pounds_and_ounces(one.target_g)
    target, mating = f"{pounds} lb {ounces} oz", str(one.first_mating_days("doe"))
    return (one.name, one.size, _pounds(one.buck), _pounds(one.doe), target, mating, ", ".join(one.sources), one.seen, one.note)


def _pounds(limits: Range) -> str:
    """A range in pounds: `9 to 11`, `to 2.5`, `from 13`."""
    least, most = (_quarters(limit) for limit in (limits.least, limits.most))
    if least and most:
        return f"{least} to {most}"
    return f"to {most}" if most else f"from {least}"


def _quarters(grams: int | None) -> str:
    """Pounds of a standard, which prints no finer than an ounce: `3.75`."""
    if grams is None:
        return ""
    pounds, ounces = pounds_and_ounces(grams)
    return f"{pounds + ounces / OUNCES_IN_POUND:g}"


def _coat_tables() -> str:
    """Color genes, patterns and trade words."""
    forms = [(one.locus, one.symbol, one.makes, one.hides, one.source, SOURCES[one.source].seen, one.note) for one in GENE_FORMS]
    patterns = [
        (one.name, *(_words(told) for told in (one.full, one.chinchilla, one.shaded)), one.source, SOURCES[one.source].seen)
        for one in COAT_PATTERNS
    ]
    trade = [
        (one.said, " or ".join(one.means) or ", ".join(f"{' or '.join(told)}" for told in (one.shows or {}).values()), one.source)
        for one in TRADE_WORDS
    ]
    tables = (
        _table(("Locus", "Form", "Makes", "Dominance", "Source", "Seen", "Note"), forms),
        "{x} is black, blue, chocolate or lilac; {sh} is sable, smoke pearl, chocolate sable or lilac sable.",
        _table(("Pattern", "Full color", "Chinchilla", "Shaded", "Source", "Seen"), patterns),
        _table(("Said", "Means", "Source"), trade),
    )
    return "## Coat colors\n\nForms of a gene, the most dominant first.\n\n" + "\n\n".join(tables)


def _words(told: Words) -> str:
    return told if isinstance(told, str) else " / ".join(told)


def _source_table() -> str:
    return f"## Sources\n\n{_table(('Key', 'Source', 'Seen'), [(key, one.title, one.seen) for key, one in SOURCES.items()])}"


def _table(head: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> str:
    lines = [head, ("---",) * len(head), *rows]
    return "\n".join(f"| {' | '.join(cells)} |" for cells in lines)


if __name__ == "__main__":  # pragma: no cover - the page itself is tested; this only prints it
    sys.stdout.write(page())
