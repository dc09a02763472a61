"""Writes the invented season: `python -m demo_data.generate > demo_data/season.txt`.

A day-by-day story with a fixed seed. Chance decides the ordinary things; the stories that matter are planned: a doe whose litters
shrink (Hazel), a good mother hit by a cold snap (Wren), a bad one (Nettle), a buck outproduced by another (Boulder by Anvil), a son
better than his sire (Flicker and Ember), a greedy buck (Baron), too many young Mini Rex bucks, a runt, and a show animal that
nobody bought by its date.
"""

from __future__ import annotations

import heapq
import math
import random
import sys
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta

from demo_data import phrases
from demo_data.cast import ADULT_G, CEILING, Rabbit, founders

SEED = 20250322
FIRST, LAST = date(2025, 3, 22), date(2026, 11, 22)
COLD_SNAPS = {date(2025, 12, 13): "14F", date(2026, 1, 12): "6F", date(2026, 2, 3): "11F", date(2026, 11, 17): "19F"}
HOT_DAYS = {date(2025, 7, 8): "93F", date(2025, 8, 2): "95F", date(2026, 6, 27): "92F", date(2026, 7, 19): "96F"}
PARENTS_FROM_HERD = 7  # daughters that join the does
RESTING_FROM = date(2026, 9, 25)  # few matings before winter
ASIDES = (
    "fixed the drip line on the north row",
    "new hay smells great",
    "cleaned all the trays today",
    "neighbor's kids came to see the babies",
    "changed the shade cloth",
    "water lines frozen this morning, thawed them with a kettle",
    "swept the barn",
)


@dataclass
class Kits:
    """A litter of the story."""

    dam: Rabbit
    sire: Rabbit
    born_on: date
    alive: int
    luck: float
    tagged: list[Rabbit] = field(default_factory=list)
    untagged: int = 0


class Season:
    """The farm's days, and the notes written on them."""

    def __init__(self, seed: int = SEED) -> None:
        """The herd on the first day; nothing written yet."""
        self.chance = random.Random(seed)  # noqa: S311 - a story, not a secret
        self.notes: list[tuple[datetime, int, str]] = []
        self.queue: list[tuple[date, int, Callable[[date], None]]] = []
        self.turn = 0
        self.herd = {rabbit.tag: rabbit for rabbit in founders()}
        self.daughters = 0
        self.tags = {2025: 0, 2026: 0}

    # the clock

    def at(self, day: date, event: Callable[[date], None]) -> None:
        """Let something happen on a day of the season."""
        if FIRST <= day <= LAST:
            self.turn += 1
            heapq.heappush(self.queue, (day, self.turn, event))

    def note(self, day: date, text: str, *, evening: bool = False) -> None:
        """Write a note at one of the two chores."""
        start = time(17, 20) if evening else time(6, 50)
        used = sum(1 for when, _, _ in self.notes if when.date() == day and (when.hour > 12) == evening)
        when = datetime.combine(day, start) + timedelta(minutes=2 * used + self.chance.randrange(2))
        self.notes.append((when, len(self.notes), text))

    def run(self) -> list[str]:
        """The whole season as lines of a replay file."""
        self.open_the_book()
        while self.queue:
            day, _, event = heapq.heappop(self.queue)
            event(day)
        return [f"{when:%Y-%m-%d %H:%M} {text}" for when, _, text in sorted(self.notes)]

    # the first days

    def open_the_book(self) -> None:
        """The herd goes on the book, and the year's fixed events are set."""
        for text in ("timezone america/chicago", "feed is 19.50 a bag", "keep two bucks a breed", "winter starts december 1"):
            self.note(FIRST, text)
        for rabbit in self.herd.values():
            self.note(FIRST, f"new {rabbit.sex} {rabbit.tag} {rabbit.name} {rabbit.breed.lower()} {rabbit.color} born {rabbit.born.isoformat()}")
        for text in ("bucks get 5 oz", "does get 6 oz", "baron gets 1.75 cups", "tinder gets 3/4 cup"):
            self.note(FIRST + timedelta(days=1), text)
        for number, doe in enumerate(self.does()):
            self.at(FIRST + timedelta(days=2 + 2 * number), self.mating_of(doe))
        self.set_the_year()
        self.set_the_stories()

    def set_the_year(self) -> None:
        """Feed, weather, adult weights, passing remarks."""
        day = FIRST + timedelta(days=3)
        while day <= LAST:
            self.at(day, self.buy_feed)
            day += timedelta(days=13)
        for day in (FIRST + timedelta(days=20 + 30 * month) for month in range(20)):
            self.at(day, self.weigh_adults)
            self.at(day + timedelta(days=9), lambda on: self.note(on, self.chance.choice(ASIDES), evening=True))
            self.at(day + timedelta(days=4), lambda on: self.note(on, f"{self.chance.randrange(60, 190, 10)} lb feed left", evening=True))
        for day, degrees in {**COLD_SNAPS, **HOT_DAYS}.items():
            self.at(day, self.weather(degrees))

    def set_the_stories(self) -> None:
        """What is planned, whatever chance brings."""
        self.at(date(2025, 12, 11), self.mating_of(self.herd["11"], forced=True))
        for day in (date(2026, 3, 4), date(2026, 8, 19)):
            self.at(day, lambda on: self.note(on, self.chance.choice(("23 bit me", "inkwell bit me again, drew blood")), evening=True))
        for day in (date(2025, 9, 2), date(2026, 4, 9), date(2026, 8, 1)):
            self.at(day, lambda on: self.note(on, "9 peeing in the box"))
        for day in (date(2025, 6, 20), date(2026, 5, 11), date(2026, 10, 3)):
            self.at(day, lambda on: self.note(on, "buck 4 bcs 4"))
            self.at(day, lambda on: self.note(on, "buck 5 bcs 3"))
            self.at(day, lambda on: self.note(on, "11 is sweet as ever"))
        self.at(date(2026, 11, 9), lambda on: self.note(on, "gave 18 ivermectin .2 ml, 28 day withdrawal"))
        for day in (date(2026, 9, 8), date(2026, 9, 29)):
            self.at(day, self.missed_mating)
        self.at(date(2026, 11, 20), lambda on: self.note(on, "keep 24 til he's proven", evening=True))

    def does(self) -> list[Rabbit]:
        """The does of the breeding herd."""
        return [rabbit for rabbit in self.herd.values() if rabbit.sex == "doe" and not rabbit.gone]

    # the year's round

    def buy_feed(self, day: date) -> None:
        """A trip to the mill."""
        bags = self.chance.choice((4, 5, 6, 7))
        self.note(day, self.chance.choice((f"bought {bags} bags feed 50 lb 19.50 each", f"bought {bags} 50 lb bags of feed at 19.50")), evening=True)

    def weigh_adults(self, day: date) -> None:
        """Some of the grown rabbits on the scale."""
        grown = [rabbit for rabbit in self.herd.values() if not rabbit.gone and (day - rabbit.born).days > 330]
        for rabbit in self.chance.sample(grown, min(4, len(grown))):
            grams = ADULT_G[rabbit.breed] * rabbit.size * (1.06 if rabbit.sex == "doe" else 0.97) * self.chance.gauss(1, 0.02)
            self.note(day, phrases.weighed(self.chance, [(rabbit.tag, grams)]), evening=True)

    def weather(self, degrees: str) -> Callable[[date], None]:
        """A cold night or a hot day."""

        def tell(day: date) -> None:
            warm = int(degrees[:-1]) > 60
            self.note(day, f"hot today {degrees}" if warm else f"cold snap tonight {degrees}", evening=True)

        return tell

    # breeding

    def buck_for(self, doe: Rabbit, day: date) -> Rabbit:
        """The buck whose turn it is."""
        match doe.breed:
            case "New Zealand":
                return self.herd[self.chance.choice(("1", "2"))]
            case "Satin":
                return self.herd[self.chance.choice(("4", "5", "5"))]
            case _:
                kin = doe.sire is not None or doe.tag == "11"
                young = "24" in self.herd and (day - self.herd["24"].born).days > 190 and not kin
                return self.herd["24" if young and self.chance.random() < 0.65 else "3"]

    def mating_of(self, doe: Rabbit, *, forced: bool = False) -> Callable[[date], None]:
        """The doe's next mating."""

        def mate(day: date) -> None:
            held = doe.tag == "11" and date(2025, 11, 1) < day < date(2025, 12, 11) and not forced
            if doe.gone or held or day > RESTING_FROM + timedelta(days=50):
                return
            if (doe.tag == "21" and day > date(2026, 6, 1)) or (doe.tag == "18" and day > date(2026, 7, 1)):
                return
            if day > RESTING_FROM and self.chance.random() < 0.6:
                return
            buck = self.buck_for(doe, day)
            if not forced and self.chance.random() < 0.07:
                self.note(day, f"{doe.tag} wouldn't lift for {buck.called}", evening=True)
                self.at(day + timedelta(days=2), self.mating_of(doe))
                return
            self.note(day, phrases.bred(self.chance, doe, buck), evening=self.chance.random() < 0.5)
            self.after_mating(doe, buck, day, settled=forced or self.chance.random() < doe.takes)

        return mate

    def after_mating(self, doe: Rabbit, buck: Rabbit, day: date, *, settled: bool) -> None:
        """Palpation, box and birth, or another try."""
        felt = day + timedelta(days=self.chance.choice((12, 12, 13)))
        if settled:
            if self.chance.random() < 0.8:
                self.at(felt, lambda on: self.note(on, phrases.palpated(self.chance, doe, settled=True)))
            boxed = self.chance.choice((f"box in {doe.tag}", f"nest box in with {doe.called}", f"NB in {doe.tag}"))
            self.at(day + timedelta(days=28), lambda on: self.note(on, boxed, evening=True))
            self.at(day + timedelta(days=self.chance.choice((30, 31, 31, 31, 32))), self.birth_of(doe, buck))
        else:
            self.at(felt, lambda on: self.note(on, phrases.palpated(self.chance, doe, settled=False)))
            self.at(felt + timedelta(days=self.chance.randrange(2, 5)), self.mating_of(doe))

    def missed_mating(self, day: date) -> None:
        """Sprig is bred and misses."""
        self.note(day, "bred sprig to ember, 1 fall")
        self.at(day + timedelta(days=13), lambda on: self.note(on, "18 palpated open"))

    def birth_of(self, doe: Rabbit, buck: Rabbit) -> Callable[[date], None]:
        """A litter is born."""

        def kindle(day: date) -> None:
            expected = doe.litter_size - doe.shrinks * doe.litters
            born = max(1, round(self.chance.gauss(expected, 1.1)))
            dead = sum(self.chance.random() < 0.05 for _ in range(born))
            doe.litters += 1
            self.note(day, phrases.kindled(self.chance, doe, born, dead))
            litter = Kits(doe, buck, day, born - dead, self.chance.gauss(1, 0.04))
            self.losses(litter)
            self.at(day + timedelta(days=self.chance.choice((18, 18, 19, 20))), self.box_out(doe))
            self.at(day + timedelta(days=self.chance.choice((35, 35, 36))), self.weaning_of(litter))
            self.at(day + timedelta(days=self.chance.randrange(43, 62)), self.mating_of(doe))

        return kindle

    def losses(self, litter: Kits) -> None:
        """Kits that die before weaning: by the doe's ways, or by the cold."""
        day = litter.born_on
        snap = next((cold for cold in COLD_SNAPS if 0 <= (cold - day).days <= 6), None)
        frozen = 0
        if snap is not None:
            frozen = min(litter.alive, round(litter.alive * (0.8 if litter.dam.tag == "11" else 0.35)))
        if frozen and snap is not None:
            self.lose(litter, frozen, "froze", snap + timedelta(days=1))
        failing = sum(self.chance.random() > litter.dam.rearing for _ in range(litter.alive - frozen))
        while failing:
            count = min(failing, self.chance.choice((1, 1, 2, 3)))
            failing -= count
            self.lose(litter, count, self.chance.choice(litter.dam.ways_to_lose), day + timedelta(days=self.chance.choice((1, 2, 2, 3, 4, 6, 9, 12))))

    def lose(self, litter: Kits, count: int, way: str, day: date) -> None:
        """The kits are gone on that day, and somebody writes it down."""

        def tell(on: date) -> None:
            taken = min(count, litter.alive)
            if taken:
                litter.alive -= taken
                self.note(on, phrases.lost(self.chance, litter.dam, taken, way))

        self.at(day, tell)

    def box_out(self, doe: Rabbit) -> Callable[[date], None]:
        """The nest box comes out."""
        return lambda day: self.note(day, self.chance.choice((f"box out {doe.tag}", f"nest box out of {doe.called}")), evening=True)

    # growing

    def weaning_of(self, litter: Kits) -> Callable[[date], None]:
        """The litter leaves the doe; some get a tag, the rest grow for the table."""

        def wean(day: date) -> None:
            if not litter.alive:
                return
            bucks = sum(self.chance.random() < 0.5 for _ in range(litter.alive))
            self.note(day, phrases.weaned(self.chance, litter.dam, bucks, litter.alive - bucks))
            keep = min(litter.alive, self.chance.choice((2, 3, 3, 4)))
            litter.untagged = litter.alive - keep
            sexes = ["buck"] * bucks + ["doe"] * (litter.alive - bucks)
            for sex in self.chance.sample(sexes, keep):
                self.tag_kit(litter, sex, day + timedelta(days=1))
            for age in (56, 70, 84, 112):
                self.at(litter.born_on + timedelta(days=age + self.chance.randrange(2)), self.weigh(litter, age))
            if litter.untagged:
                self.at(litter.born_on + timedelta(days=self.chance.randrange(62, 68)), self.clear_untagged(litter))

        return wean

    def tag_kit(self, litter: Kits, sex: str, day: date) -> None:
        """A kit gets a number and a fate."""
        year = litter.born_on.year
        self.tags[year] += 1
        tag = f"{'H' if year == 2025 else 'P'}{self.tags[year]}"
        color = litter.dam.color if self.chance.random() < 0.5 else litter.sire.color
        flicker = litter.dam.tag == "11" and sex == "buck" and year == 2025 and "24" not in self.herd and litter.born_on > date(2025, 6, 1)
        growth = litter.sire.merit * litter.luck * self.chance.gauss(1, 0.035)
        kit = Rabbit("24" if flicker else tag, "Flicker" if flicker else None, sex, litter.dam.breed, color, litter.born_on, litter.sire, litter.dam, size=growth)
        litter.tagged.append(kit)
        if flicker:
            kit.merit = 1.10
            self.herd["24"] = kit
            self.at(day, lambda on: self.note(on, f"new buck 24 Flicker mini rex {color} born {kit.born.isoformat()} sire 3 dam 11"))
            return
        self.at(day, lambda on: self.note(on, phrases.say(self.chance, f"tattooed {tag} out of {litter.dam.tag}, {sex}, {color}", f"tattooed {tag} out of {litter.dam.called} {sex} {color}")))
        self.fate(kit, litter)

    def fate(self, kit: Rabbit, litter: Kits) -> None:
        """What becomes of a tagged kit: a breeding doe, a spare buck, the table, or a sale."""
        grown = litter.born_on + timedelta(days=self.chance.randrange(114, 122))
        late = litter.born_on > date(2026, 6, 10)
        wanted = kit.sex == "doe" and self.daughters < PARENTS_FROM_HERD and date(2025, 6, 15) < litter.born_on < date(2026, 3, 1)
        if wanted and litter.dam.tag != "9" and self.chance.random() < 0.30:
            self.daughters += 1
            kit.litter_size, kit.rearing = litter.dam.litter_size - litter.dam.shrinks, min(0.95, litter.dam.rearing)
            self.herd[kit.tag] = kit
            self.at(litter.born_on + timedelta(days=self.chance.randrange(175, 200)), self.mating_of(kit))
        elif kit.breed == "Mini Rex" and kit.sex == "buck" and date(2026, 2, 15) < litter.born_on < date(2026, 6, 20):
            return
        elif late and self.chance.random() < 0.35:
            return
        else:
            self.at(grown, self.parting(kit))

    def parting(self, kit: Rabbit) -> Callable[[date], None]:
        """A grown kit is butchered, sold or given away."""

        def part(day: date) -> None:
            kit.gone = True
            grams = self.grams(kit, day)
            self.note(
                day,
                self.chance.choice(
                    (
                        f"butchered {kit.tag} {phrases.pounds(grams)} dressed {phrases.pounds(grams * 0.53)}",
                        f"butchered {kit.tag}",
                        f"butchered {kit.tag} {phrases.pounds(grams)} dressed {phrases.pounds(grams * 0.52)}",
                        f"sold {kit.tag} ${self.chance.choice((25, 30, 40))}",
                        f"sold {kit.tag} for {self.chance.choice((25, 30, 40))}",
                    )
                ),
                evening=True,
            )

        return part

    def clear_untagged(self, litter: Kits) -> Callable[[date], None]:
        """The untagged kits of a litter go to the table or to a buyer."""

        def clear(day: date) -> None:
            kits = "kit" if litter.untagged == 1 else "kits"
            self.note(
                day,
                self.chance.choice(
                    (
                        f"butchered {litter.untagged} {kits} from {litter.dam.tag}'s litter",
                        f"butchered {litter.untagged} {kits} out of {litter.dam.tag}",
                        f"sold {litter.untagged} {kits} from {litter.dam.tag}'s litter, {litter.untagged * 15} dollars",
                    )
                ),
                evening=True,
            )

        return clear

    def grams(self, kit: Rabbit, day: date) -> float:
        """What the kit weighs that day [g]: a growth curve of the story's own, and the scale's error."""
        age = (day - kit.born).days
        runt = 0.66 if kit.tag == "P60" else 1.0
        ceiling = ADULT_G[kit.breed] * CEILING * kit.size * runt
        return ceiling * math.exp(-3.9 * math.exp(-0.0264 * age)) * self.chance.gauss(1, 0.012)

    def weigh(self, litter: Kits, age: int) -> Callable[[date], None]:
        """The litter's tagged kits on the scale."""

        def scale(day: date) -> None:
            rows = [(kit.tag, self.grams(kit, day)) for kit in litter.tagged if not kit.gone]
            if rows and (age != 84 or self.chance.random() < 0.7):
                self.note(day, phrases.weighed(self.chance, rows[:5]), evening=True)
            self.look_over(litter, age, day)

        return scale

    def look_over(self, litter: Kits, age: int, day: date) -> None:
        """At ten weeks somebody looks for faults and show stock."""
        if age != 70:
            return
        for kit in litter.tagged:
            if kit.gone or self.chance.random() > 0.12:
                continue
            self.note(day, self.chance.choice((f"{kit.tag} white toenail dq", f"{kit.tag} type 4 fur 5", f"{kit.tag} type 3 fur 4")), evening=True)
        stays = [kit for kit in litter.tagged if kit.breed == "Satin" and not kit.gone]
        if stays and date(2026, 8, 20) < day < date(2026, 10, 10):
            self.note(day, f"list {stays[0].tag} for 75 until nov 1", evening=True)


def main() -> None:
    """Print the season."""
    lines = Season().run()
    sys.stdout.write("# An invented farm's notes, written by demo_data/generate.py. Replay them with: haynote replay FILE\n")
    sys.stdout.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
