"""The invented season, held against what its writer meant: every line, every count, every animal alive at the end."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from importlib.resources import files
from typing import Any

import pytest

from core.app.telling import digest
from core.herd.state import Herd
from core.notes.fact import to_json
from core.notes.journal import Note
from core.notes.layout.dated_lines import DatedLine, dated_lines
from core.notes.listen import noted
from core.notes.replay import Book, book, zone
from core.reports.pairing import pairing
from demo_data.generate import LAST, Line, Season, season_text


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
    after: Book = book(Herd())
    notes: list[Note] = []
    for line in dated_lines(season_text(lines)):
        assert isinstance(line, DatedLine)
        note = noted(after, line.message(zone(after.herd.settings.timezone), "me"))
        after = after.with_note(note)
        notes.append(note)
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
    assert tally(to_json(entry.fact) for entry in replayed.book.standing()) == tally(
        fact for line in replayed.lines for fact in line.note.gives
    )


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


def test_the_stories_come_to_light(replayed: Replayed) -> None:
    """What the season was written to tell, the digest says at its end; the doe hit by the cold is not blamed."""
    flags = {(one["tag"], one["flag"]) for one in digest(replayed.book.herd, LAST).document["flags"]}
    of = {tag: {flag for who, flag in flags if who == tag} for tag, _ in flags}
    young = replayed.season.nursery.kits
    [runt] = [kit.tag for kit in young if kit.runt]
    [offered] = [kit.tag for kit in young if kit.stays]
    told = {"6": "shrinking_litters", "9": "low_survival", "1": "excess_buck", "3": "excess_buck", "4": "heavy_feeder", "23": "bad_temper"}
    told |= {"21": "long_open", "18": "missed_twice", runt: "light_growout", offered: "past_sale_date"}
    assert {(tag, flag) for tag, flag in told.items() if flag not in of.get(tag, set())} == set()
    assert not of.keys() & {"11", "2", "24"}
    spare = {tag for tag, flag in flags if flag == "excess_buck"} - {"1", "3"}
    assert len(spare) > 1
    assert any(flag == "disqualifying_fault" for tag in spare for flag in of[tag])


def test_the_barn_is_as_full_as_a_small_one(replayed: Replayed) -> None:
    """About twenty-five grown rabbits, some litters in the nest, some grow-outs, does in kindle, and feed in the bin."""
    herd = replayed.book.herd
    counts = digest(herd, LAST).document["counts"]
    assert 22 <= counts["bucks"] + counts["does"] <= 30
    assert 12 <= counts["grow_outs"] <= 25
    assert counts["litters"] >= 3
    assert {mating.doe for mating in herd.matings if mating.outcome is None and mating.on > LAST - timedelta(30)} >= {"13", "19"}


def test_a_color_question_that_a_raw_count_gets_wrong(replayed: Replayed) -> None:
    """Buck 3 on his daughter H65 gave castors only, so a count says castor; both carry self and blue for sure, by his kits and her dam."""
    herd = replayed.book.herd
    doe, buck = herd.find("H65"), herd.find("3")
    assert doe is not None
    assert buck is not None
    found = pairing(herd, LAST, doe, buck)
    assert {color for litter in found.document()["past_colors"] for color in litter} == {"castor"}
    assert found.colors["castor"] == pytest.approx(9 / 16, abs=0.05)
    assert found.colors["black"] == pytest.approx(3 / 16, abs=0.05)
    carried = found.document()["carries"]
    assert [carried[tag][form] for tag in ("H65", "3") for form in ("self", "blue")] == pytest.approx([1.0] * 4)
    assert found.warnings[0].startswith("Too close")
