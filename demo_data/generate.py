"""Writes the invented season: `python -m demo_data.generate > demo_data/season.txt`.

A day-by-day story with a fixed seed. Chance decides the ordinary things; the stories that matter are planned: a doe whose litters
shrink (Hazel), a good mother hit by a cold snap (Wren), a bad one (Nettle), a buck outproduced by another (Boulder by Anvil, whose son
wants the place), a son better than his sire (Flicker and Ember), a greedy buck (Baron), too many young Mini Rex bucks, a runt, and a
show animal that nobody bought by its date. Each note knows the facts that it states, so that tests can hold a replay against them.
"""

from __future__ import annotations

import heapq
import random
import sys
from collections.abc import Callable
from datetime import date, datetime, time, timedelta
from typing import NamedTuple

from demo_data import growing, phrases
from demo_data.cast import ADULT_G, Rabbit, founders
from demo_data.phrases import Said, fact, said

SEED = 20250322
FIRST, LAST = date(2025, 3, 22), date(2026, 11, 22)
COLD_SNAPS = {date(2025, 12, 13): 14, date(2026, 1, 12): 6, date(2026, 2, 3): 11, date(2026, 11, 17): 19}
HOT_DAYS = {date(2025, 7, 8): 93, date(2025, 8, 2): 95, date(2026, 6, 27): 92, date(2026, 7, 19): 96}
RESTING_FROM = date(2026, 8, 28)  # only planned matings before winter
LATE_MATINGS = {
    date(2026, 9, 22): "15", date(2026, 10, 5): "7", date(2026, 10, 16): "11", date(2026, 10, 18): "8", date(2026, 10, 28): "19", date(2026, 11, 4): "13",
}  # fmt: skip
ASIDES = (
    "fixed the drip line on the north row",
    "new hay smells great",
    "cleaned all the trays today",
    "neighbor's kids came to see the babies",
    "changed the shade cloth",
    "water lines frozen this morning, thawed them with a kettle",
    "swept the barn",
)
DONE = ("cleaned", "swept")  # chores told as done
#: What nobody could read safely, and what it has to be asked back.
UNCLEAR = {
    date(2025, 7, 27): Said("lost some kits from bramble's litter", asks="how_many"),
    date(2025, 10, 19): Said("bramble weighed 11.2", asks="which_number"),
    date(2026, 3, 14): Said("41 has a runny nose", asks="which_animal"),
}


class Line(NamedTuple):
    """A note of the season and when it was sent."""

    when: datetime
    turn: int
    note: Said


class Season:
    """The farm's days, and the notes written on them."""

    def __init__(self, seed: int = SEED) -> None:
        """The herd on the first day; nothing written yet."""
        self.chance = random.Random(seed)  # noqa: S311 - a story, not a secret
        self.notes: list[Line] = []
        self.queue: list[tuple[date, int, Callable[[date], None]]] = []
        self.turn = 0
        self.herd = {rabbit.tag: rabbit for rabbit in founders()}
        self.nursery = growing.Nursery(self)

    # the clock

    def at(self, day: date, event: Callable[[date], None]) -> None:
        """Let something happen on a day of the season."""
        if FIRST <= day <= LAST:
            self.turn += 1
            heapq.heappush(self.queue, (day, self.turn, event))

    def plan(self, day: date, note: Said, *, evening: bool = False) -> None:
        """A note that is written on that day whatever happens."""
        self.at(day, lambda on: self.note(on, note, evening=evening))

    def note(self, day: date, note: Said, *, evening: bool = False) -> None:
        """Write a note at one of the two chores."""
        start = time(17, 20) if evening else time(6, 50)
        used = sum(1 for line in self.notes if line.when.date() == day and (line.when.hour > 12) == evening)
        when = datetime.combine(day, start) + timedelta(minutes=2 * used + self.chance.randrange(2))
        self.notes.append(Line(when, len(self.notes), note))

    def run(self) -> list[Line]:
        """The whole season, in order."""
        self.open_the_book()
        while self.queue:
            day, _, event = heapq.heappop(self.queue)
            event(day)
        return sorted(self.notes, key=lambda line: line[:2])

    # the first days

    def open_the_book(self) -> None:
        """The herd goes on the book, and the year's fixed events are set."""
        self.note(FIRST, said("timezone america/chicago", "setting", name="timezone", value="america/chicago"))
        self.note(FIRST, said("feed is 19.50 a bag", "setting", name="feed_price", value="19.50"))
        self.note(FIRST, said("keep two bucks a breed", "setting", name="bucks_a_breed", value=2))
        self.note(FIRST, said("winter starts december 1", "setting", name="winter", value="2025-12-01"))
        for rabbit in self.herd.values():
            self.note(FIRST, phrases.newcomer(rabbit))
        second = FIRST + timedelta(days=1)
        self.note(second, said("bucks get 5 oz", "ration", scope="bucks", amount=5, unit="oz"))
        self.note(second, said("does get 6 oz", "ration", scope="does", amount=6, unit="oz"))
        self.note(second, said("baron gets 1.75 cups", "ration", who="4", amount=1.75, unit="cup"))
        self.note(second, said("tinder gets 3/4 cup", "ration", who="5", amount=0.75, unit="cup"))
        for number, doe in enumerate(rabbit for rabbit in self.herd.values() if rabbit.sex == "doe"):
            self.at(FIRST + timedelta(days=2 + 2 * number), self.mating_of(doe))
        self.set_the_year()
        self.set_the_stories()

    def set_the_year(self) -> None:
        """Feed, weather, adult weights, passing remarks, and a few notes that nobody could read."""
        day = FIRST + timedelta(days=3)
        while day <= LAST:
            self.at(day, lambda on: self.note(on, phrases.fed(self.chance, self.chance.choice((4, 5, 6, 7))), evening=True))
            day += timedelta(days=13)
        for day in (FIRST + timedelta(days=20 + 30 * month) for month in range(20)):
            self.at(day, self.weigh_adults)
            self.at(day + timedelta(days=9), lambda on: self.note(on, self.aside(), evening=True))
            self.at(day + timedelta(days=4), lambda on: self.note(on, phrases.feed_left(self.chance.randrange(60, 190, 10)), evening=True))
        self.plan(LAST - timedelta(days=3), phrases.feed_left(280), evening=True)
        for day, degrees in {**COLD_SNAPS, **HOT_DAYS}.items():
            self.plan(day, phrases.weather(degrees), evening=True)
        for day, note in UNCLEAR.items():
            self.plan(day, note)
        twice = said("weighed 8 10-12", "weighed", who="8", grams=phrases.shown(172 * phrases.OUNCE_G))
        self.plan(date(2026, 2, 21), twice, evening=True)
        self.plan(date(2026, 2, 21), Said(twice.text, asks="duplicate"), evening=True)

    def aside(self) -> Said:
        """A sentence about the barn."""
        text = self.chance.choice(ASIDES)
        done = text.startswith(DONE)
        return Said(text, (fact("done") if done else fact("remark", text=text),))

    def set_the_stories(self) -> None:
        """What is planned, whatever chance brings."""
        self.at(date(2025, 12, 11), self.mating_of(self.herd["11"], forced=True))
        for day, tag in LATE_MATINGS.items():
            self.at(day, self.mating_of(self.herd[tag], forced=True))
        self.plan(date(2026, 3, 4), said("23 bit me", "temper", who="23", grade="bad"), evening=True)
        self.plan(date(2026, 8, 19), said("inkwell bit me again, drew blood", "temper", who="23", grade="bad"), evening=True)
        for day in (date(2025, 9, 2), date(2026, 4, 9), date(2026, 8, 1)):
            self.plan(day, said("9 peeing in the box", "nest_manners", doe="9", sign="soiled"))
        for day in (date(2025, 6, 20), date(2026, 5, 11), date(2026, 10, 3)):
            self.plan(day, said("buck 4 bcs 4", "condition", who="4", score=4))
            self.plan(day, said("buck 5 bcs 3", "condition", who="5", score=3))
            self.plan(day, said("11 is sweet as ever", "temper", who="11", grade="good"))
        dosed = fact("treated", who="18", dose=".2 ml", withdrawal_days=28) | {"with": "ivermectin"}
        self.plan(date(2026, 11, 9), Said("gave 18 ivermectin .2 ml, 28 day withdrawal", (dosed,)))
        for day in (date(2026, 9, 8), date(2026, 9, 29)):
            self.plan(day, said("bred sprig to ember, 1 fall", "bred", doe="18", buck="3", falls=1))
            self.plan(day + timedelta(days=13), said("18 palpated open", "palpated", doe="18", result="open"))
        self.plan(
            date(2026, 10, 11),
            said("flicker weighs 4 lb 2 oz", "weighed", who="24", grams=phrases.shown(66 * phrases.OUNCE_G)),
            evening=True,
        )
        self.plan(date(2026, 11, 20), said("keep 24 til he's proven", "planned", who="24", what="keep"), evening=True)
        self.at(date(2026, 8, 12), lambda on: self.leave(on, "10", said("found Dimity dead", "died", who="10")))
        self.at(date(2026, 8, 30), lambda on: self.leave(on, "17", said("sold plum for 45", "sold", who="17", price="45.00")))

    def leave(self, day: date, tag: str, note: Said) -> None:
        """A grown rabbit is gone."""
        self.herd[tag].gone = True
        self.note(day, note)

    def weigh_adults(self, day: date) -> None:
        """Some of the grown rabbits on the scale."""
        grown = [rabbit for rabbit in self.herd.values() if not rabbit.gone and (day - rabbit.born).days > 330]
        for rabbit in self.chance.sample(grown, min(4, len(grown))):
            large = (1.06 if rabbit.sex == "doe" else 0.97) if rabbit.sire is None else 0.95
            grams = ADULT_G[rabbit.breed] * (rabbit.size if rabbit.sire is None else 1) * large * self.chance.gauss(1, 0.02)
            self.note(day, phrases.weighed(self.chance, [(rabbit.tag, grams)]), evening=True)

    # breeding

    def buck_for(self, doe: Rabbit, day: date) -> Rabbit:
        """The buck whose turn it is."""
        match doe.breed:
            case "New Zealand":
                return self.herd["1" if doe.sire is self.herd["2"] else "2" if doe.sire else self.chance.choice(("1", "2"))]
            case "Satin":
                return self.herd["4" if doe.sire is self.herd["5"] else "5" if doe.sire else self.chance.choice(("4", "5", "5"))]
            case _:
                kin = doe.sire is not None or doe.tag == "11"
                young = "24" in self.herd and (day - self.herd["24"].born).days > 190 and not kin
                return self.herd["24" if young and self.chance.random() < 0.65 else "3"]

    def mating_of(self, doe: Rabbit, *, forced: bool = False) -> Callable[[date], None]:
        """The doe's next mating."""

        def mate(day: date) -> None:
            held = doe.tag == "11" and date(2025, 11, 1) < day < date(2025, 12, 11)
            over = day > RESTING_FROM or (doe.last_mating is not None and day > doe.last_mating) or self.waits(doe, day)
            if doe.gone or day < doe.busy_until or (not forced and (held or over)):
                return
            buck = self.buck_for(doe, day)
            if not forced and self.chance.random() < 0.07:
                self.note(day, said(f"{doe.tag} wouldn't lift for {buck.called}", "refused", doe=doe.tag, buck=buck.tag), evening=True)
                self.at(day + timedelta(days=2), self.mating_of(doe))
                return
            self.note(day, phrases.bred(self.chance, doe, buck), evening=self.chance.random() < 0.5)
            self.after_mating(doe, buck, day, settled=forced or self.chance.random() < doe.takes)

        return mate

    def waits(self, doe: Rabbit, day: date) -> bool:
        """Whether she is left for a mating that is planned within a litter's time."""
        return any(tag == doe.tag and day < planned < day + timedelta(days=72) for planned, tag in LATE_MATINGS.items())

    def after_mating(self, doe: Rabbit, buck: Rabbit, day: date, *, settled: bool) -> None:
        """Palpation, box and birth, or another try."""
        felt = day + timedelta(days=self.chance.choice((12, 12, 13)))
        if settled:
            if self.chance.random() < 0.8:
                self.at(felt, lambda on: self.note(on, phrases.palpated(self.chance, doe, settled=True)))
            self.at(day + timedelta(days=28), lambda on: self.note(on, phrases.boxed(self.chance, doe, "in"), evening=True))
            born = day + timedelta(days=self.chance.choice((30, 31, 31, 31, 32)))
            doe.busy_until = born + timedelta(days=40)
            self.at(born, self.birth_of(doe, buck))
        else:
            self.at(felt, lambda on: self.note(on, phrases.palpated(self.chance, doe, settled=False)))
            self.at(felt + timedelta(days=self.chance.randrange(2, 5)), self.mating_of(doe))

    def birth_of(self, doe: Rabbit, buck: Rabbit) -> Callable[[date], None]:
        """A litter is born."""

        def kindle(day: date) -> None:
            expected = doe.litter_size - doe.shrinks * doe.litters
            born = max(1, round(self.chance.gauss(expected, 1.1)))
            dead = sum(self.chance.random() < 0.05 for _ in range(born))
            doe.litters += 1
            self.note(day, phrases.kindled(self.chance, doe, born, dead))
            snap = next((cold for cold in COLD_SNAPS if 0 <= (cold - day).days <= 6), None)
            self.nursery.begin(growing.Kits(doe, buck, day, born - dead, self.chance.gauss(1, 0.04)), snap)
            self.at(day + timedelta(days=self.chance.randrange(43, 62)), self.mating_of(doe))

        return kindle


def main() -> None:
    """Print the season."""
    sys.stdout.write(season_text(Season().run()))


def season_text(lines: list[Line]) -> str:
    """The season as a file to replay."""
    head = "# An invented farm's notes, written by demo_data/generate.py. Replay them with: haynote replay FILE\n"
    return head + "".join(f"{line.when:%Y-%m-%d %H:%M} {line.note.text}\n" for line in lines)


if __name__ == "__main__":
    main()
