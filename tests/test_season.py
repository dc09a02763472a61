"""The invented season, held against what its writer meant: every line, every count, every animal alive at the end."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from importlib.resources import files
from typing import Any

import pytest

from core.app.reading import no_answer
from core.notes.dated_lines import DatedLine, dated_lines
from core.notes.fact import to_json
from core.notes.journal import Note
from core.notes.listen import listen
from core.notes.replay import Book, book, zone
from core.herd.state import Herd
from demo_data.generate import Line, Season, season_text


@dataclass
class Replayed:
    """The season, its lines, and the note that each became."""

    season: Season
    lines: list[Line]
    notes: list[Note]
    book: Book


@pytest.fixture(scope="module")
def replayed() -> Replayed:
    """The generator's season, read line by line from an empty book."""
    season = Season()
    lines = season.run()
    after, notes = book(Herd()), []
    for line in dated_lines(season_text(lines)):
        assert isinstance(line, DatedLine)
        heard = listen(after, line.message(zone(after.herd.settings.timezone), "me"), no_answer)
        after = heard.book
        notes.append(heard.note)
    return Replayed(season, lines, notes, after)


def meant(line: Line) -> list[dict[str, Any]]:
    """The facts that the line's writer meant, with the day on which each happened."""
    day = line.when.date() - timedelta(days="last night" in line.note.text)
    dateless = {"animal", "setting", "planned"}
    return [fact if fact["kind"] in dateless else {"on": day.isoformat(), **fact} for fact in line.note.gives]


def missing(wanted: dict[str, Any], found: list[dict[str, Any]]) -> bool:
    """Whether no fact says all that is wanted, nothing more and nothing else."""
    return not any(all(fact.get(name) == value for name, value in wanted.items()) for fact in found)


def misread(replayed: Replayed) -> Iterator[tuple[str, Any, Any]]:
    """Lines that gave other facts than were meant."""
    for line, note in zip(replayed.lines, replayed.notes, strict=True):
        found = [to_json(fact) for fact in note.facts]
        wanted = meant(line)
        if len(found) != len(wanted) or any(missing(each, found) for each in wanted):
            yield line.note.text, wanted, found


def test_the_stored_season_is_what_the_generator_writes() -> None:
    """Same seed, same season: the file in the package is the generator's output."""
    stored = files("demo_data").joinpath("season.txt").read_text(encoding="utf-8")
    assert stored == season_text(Season().run())


def test_every_line_gives_the_facts_that_were_meant(replayed: Replayed) -> None:
    """No line of the season is misread, in silence or aloud."""
    assert list(misread(replayed)) == []


def test_only_unclear_lines_ask(replayed: Replayed) -> None:
    """What asks is what nobody could read, and it asks for that reason."""
    asked = [(line.note.text, note.ask.why) for line, note in zip(replayed.lines, replayed.notes, strict=True) if note.ask]
    assert asked == [(line.note.text, line.note.asks) for line in replayed.lines if line.note.asks]


def test_the_books_tally_is_the_storys(replayed: Replayed) -> None:
    """Kits born, alive, lost and weaned, mouths sold and butchered, weights and matings come to the writer's own sums."""
    assert tally(to_json(entry.fact) for entry in replayed.book.standing()) == tally(fact for line in replayed.lines for fact in line.note.gives)


def tally(facts: Any) -> Counter[str]:
    """How many facts of each kind, and what their numbers add up to."""
    sums: Counter[str] = Counter()
    for fact in facts:
        sums[fact["kind"]] += 1
        for name in ("born", "alive", "count", "bucks", "grams", "falls", "bags"):
            if isinstance(fact.get(name), int):
                sums[f"{fact['kind']} {name}"] += fact[name]
    return sums


def test_the_living_are_the_storys_living(replayed: Replayed) -> None:
    """At the end the book's animals alive are those that the story left alive."""
    season = replayed.season
    alive = {rabbit.tag for rabbit in (*season.herd.values(), *season.nursery.kits) if not rabbit.gone}
    tagged = {fact["tag"] for line in replayed.lines for fact in line.note.gives if fact["kind"] in {"animal", "tagged"}}
    assert {animal.tag for animal in replayed.book.herd.animals.values() if animal.living} == alive & tagged
