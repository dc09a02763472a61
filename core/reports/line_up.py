"""The bucks or the does of a breed lined up: whose kits grow faster, who weans more, how sure each place is, and what to note next."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import Any

from core.handbook import flags as figures
from core.herd.state import Animal, Herd
from core.reckon.choose import Guess, Ranked, ranked
from core.reply import Choice, Reply
from core.reports.bucks import grams_scale, growth_merit, on_kits
from core.reports.evidence import Evidence, evidence
from core.reports.flags import shrinking_litters
from core.reports.keep_or_cull import in_breed
from core.reports.litter_size import size_of
from core.reports.wording import begun, how_sure, more_or_less, short
from core.words import count, listed, share

#: Places that are told of one breed.
PLACES = 8  # not a figure: lines on a phone


@dataclass(frozen=True, slots=True)
class Row:
    """A breed's bucks or does, the best first; `unknown` are those that nothing tells of yet."""

    breed: str | None
    places: tuple[Ranked, ...]
    unknown: tuple[Animal, ...]


@dataclass(frozen=True, slots=True)
class LineUp:
    """All bucks or all does of breeding age, breed by breed."""

    barn: Evidence
    sex: str
    rows: tuple[Row, ...]

    def reply(self) -> Reply:
        """Each place with what it stands on and how sure it is."""
        if not self.rows:
            return Reply((f"No {self.sex} of breeding age is on the farm.",))
        head = {
            "buck": "Bucks by the growth that they pass on; dam, litter, nest and season are allowed for.",
            "doe": "Does by what they wean of a litter; kits lost to weather or predators are not held against them.",
        }
        lines = [head[self.sex], *(line for row in self.rows for line in self._row(row))]
        best = [self._animal(row.places[0]) for row in self.rows if row.places]
        return Reply(tuple(lines), tuple(Choice(f"Card of {one.tag}", one.tag) for one in best[:2]))

    def _animal(self, place: Ranked) -> Animal:
        return self.barn.herd.animals[place.animal]

    def _row(self, row: Row) -> list[str]:
        lines = [f"{row.breed or 'Breed unknown'}:"] if len(self.rows) > 1 else []
        lines += [self._place(row, at) for at in range(len(row.places[:PLACES]))]
        lines += [f"and {len(row.places) - PLACES} more"] if len(row.places) > PLACES else []
        return [*lines, *self._wanted(row)]

    def _place(self, row: Row, at: int) -> str:
        place = row.places[at]
        one = self._animal(place)
        told = self._of_buck(one) if self.sex == "buck" else self._of_doe(one, place.value)
        if place.better_than_next is None:
            return f"{at + 1}. {told}."
        following = self._animal(row.places[at + 1])
        says = ("his kits would", f"outgrow {short(following)}'s") if self.sex == "buck" else ("she", f"weans more than {short(following)}")
        return f"{at + 1}. {told}. {begun(how_sure(*says, place.better_than_next))}."

    def _of_buck(self, one: Animal) -> str:
        value, _, kits = growth_merit(self.barn, one)
        weighed = f"{count(kits, 'kit')} of his weighed" if kits else "no kit of his weighed, by his own weights and his family's"
        return f"{short(one)}: {more_or_less(self.barn.herd.settings, value or 0.0)} the breed's mean at 10 weeks, {weighed}"

    def _of_doe(self, one: Animal, weans: float) -> str:
        size, dam = size_of(self.barn, one), self.barn.dams[one.key]
        raised = f"{size.at_best:.1f} born alive, {share(dam.share.estimate)} of them raised"
        falls = "; her litters shrink" if shrinking_litters(self.barn, one) else ""
        behind = f"by {count(dam.alive, 'kit')} in {count(len(dam.litters), 'litter')}"
        return f"{short(one)}: about {weans:.1f} weaned ({raised}, {behind}{falls})"

    def _wanted(self, row: Row) -> list[str]:
        """What to note next: of those that nothing is known of, and of the two best where they can't be told apart."""
        note = "weigh kits at 10 weeks" if self.sex == "buck" else "note her litters at kindling and at weaning"
        lines = [f"Too little is known of {listed(short(one) for one in row.unknown)}: {note}."] if row.unknown else []
        first = row.places[0].better_than_next if row.places else None
        if first is not None and first < figures.OUTDOES_CHANCE.value:
            pair = [self._animal(each) for each in row.places[:2]]
            stands = f" They stand {on_kits(self.barn, *pair)}." if self.sex == "buck" else ""
            more = "weigh more of their kits" if self.sex == "buck" else "their next litters will tell"
            lines.append(f"Not sure yet between {listed(short(one) for one in pair)}: {more}.{stands}")
        return lines

    def document(self) -> dict[str, Any]:
        """The same as numbers; grams at ten weeks over the breed's mean for a buck, kits weaned of a litter for a doe."""
        scale = {one.key: grams_scale(one) if self.sex == "buck" else 1.0 for one in self.barn.living}
        return {
            "sex": self.sex,
            "breeds": [
                {
                    "breed": row.breed,
                    "places": [
                        {
                            "tag": self._animal(one).tag,
                            "value": one.value * scale[one.animal],
                            "expected_rank": one.expected_rank,
                            "chance_better_than_next": one.better_than_next,
                        }
                        for one in row.places
                    ],
                    "too_little_known": [one.tag for one in row.unknown],
                }
                for row in self.rows
            ],
        }


def line_up(herd: Herd, today: date, sex: str, breed: str | None = None) -> LineUp:
    """The bucks, or the does, of breeding age; of one breed where it is told."""
    barn = evidence(herd, today)
    grown = [one for one in barn.living if one.sex == sex and barn.stages[one.key] in {"junior", "senior"} and in_breed(one.breed, breed)]
    breeds = dict.fromkeys((one.breed or "").lower() for one in sorted(grown, key=lambda one: (one.breed or "~").lower()))
    make = _bucks if sex == "buck" else _does
    return LineUp(barn, sex, tuple(make(barn, [one for one in grown if (one.breed or "").lower() == each]) for each in breeds))


def _bucks(barn: Evidence, bucks: list[Animal]) -> Row:
    trait = barn.growth
    known = [one for one in bucks if trait and (one.weights or trait.of_litter.get(one.key))]
    values = {one.key: trait.value(one.key, barn.mates(one)) or 0.0 for one in known} if trait else {}
    places = ranked(values, trait.solved.better) if trait else ()
    return Row(bucks[0].breed, places, _rest(bucks, known))


def _does(barn: Evidence, does: list[Animal]) -> Row:
    known = [one for one in does if one.key in barn.dams]
    weans = {one.key: weaned_of_a_litter(barn, one) for one in known}
    places = ranked({key: guess.value for key, guess in weans.items()}, lambda one, other: weans[one].chance_above(weans[other]))
    return Row(does[0].breed, places, _rest(does, known))


def weaned_of_a_litter(barn: Evidence, doe: Animal) -> Guess:
    """What a doe with a finished litter is expected to wean of one of her best litters [kits]: live-born times the share that she raises."""
    size, raised = size_of(barn, doe), barn.dams[doe.key].share
    return Guess(size.at_best, size.at_best_sd).times(Guess(raised.estimate, raised.deviation))


def _rest(all_: Iterable[Animal], known: Iterable[Animal]) -> tuple[Animal, ...]:
    told = {one.key for one in known}
    return tuple(one for one in all_ if one.key not in told)
