"""The herd at one moment: animals, matings, litters and what happened to them. Frozen; each note makes a new one.

Animals are known by `key`: the tag, or `tag~2` where a gone animal's tag was used again.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import lru_cache
from itertools import count
from typing import Any

from core.herd.layers import with_entry
from core.herd.settings import Settings


@dataclass(frozen=True, slots=True)
class Event:
    """Something that was seen of an animal on a day.

    what    the note kind: temper, nest_manners, ailment, treated, fault, scored, shown, remark, moved, refused ...
    detail  that fact's other fields under their contract names
    """

    on: date
    what: str
    detail: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Weight:
    """A weighing [g]."""

    on: date
    grams: int


@dataclass(frozen=True, slots=True)
class Gone:
    """How an animal left: `died`, `sold`, `culled`, `given_away`."""

    on: date
    how: str
    detail: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Listing:
    """An offer for sale."""

    on: date
    price: int | None  # cents
    until: date | None


@dataclass(frozen=True, slots=True)
class Intention:
    """What a person means to do with an animal: `cull`, `sell`, `keep`, `breed`, `retire`, `replace`, `review`."""

    what: str
    told_on: date
    on: date | None = None
    until: date | None = None
    with_: str | None = None
    reason: str | None = None


@dataclass(frozen=True, slots=True)
class Ration:
    """Feed a day: the amount in its unit (cup, oz, g, lb, kg)."""

    on: date
    amount: float
    unit: str


@dataclass(frozen=True, slots=True)
class Animal:
    """One rabbit with a tag. Parents are keys; `litter` is the litter's key where it is one of a recorded litter's kits."""

    key: str
    tag: str
    name: str | None = None
    sex: str | None = None  # buck, doe
    breed: str | None = None
    color: str | None = None
    born: date | None = None
    sire: str | None = None
    dam: str | None = None
    litter: str | None = None
    origin: str | None = None  # bought, born_here, given, outside (an ancestor that never lived here)
    came_on: date | None = None
    price: int | None = None
    weaned_on: date | None = None
    cage: str | None = None
    gone: Gone | None = None
    listing: Listing | None = None
    ration: Ration | None = None
    weights: tuple[Weight, ...] = ()  # by day
    conditions: tuple[tuple[date, float], ...] = ()
    intentions: tuple[Intention, ...] = ()  # newest last
    events: tuple[Event, ...] = ()  # by the order they were applied

    @property
    def living(self) -> bool:
        """Whether it is on the farm."""
        return self.gone is None and self.origin != "outside"


@dataclass(frozen=True, slots=True)
class Mating:
    """A doe put to a buck. Keys of animals. `outcome`: None while open, then `kindled`, `missed`, `open` (palpated), `rebred`."""

    doe: str
    buck: str
    on: date
    falls: int | None = None
    palpated: tuple[tuple[date, str], ...] = ()  # day, result
    box_in: date | None = None
    outcome: str | None = None
    ended_on: date | None = None


@dataclass(frozen=True, slots=True)
class Loss:
    """Kits that died before weaning."""

    on: date
    count: int
    cause: str | None


@dataclass(frozen=True, slots=True)
class Foster:
    """Kits that came to, or left, a litter; `other` is the other litter's key where it is known."""

    on: date
    count: int
    other: str | None


@dataclass(frozen=True, slots=True)
class Litter:
    """One birth, and the kits nursed in its nest. `key` is `dam@born_on`."""

    key: str
    dam: str
    sire: str | None
    sires_possible: tuple[str, ...]  # several bucks fit: the sire is unknown
    born_on: date
    born: int | None = None
    alive: int | None = None  # live-born
    dead: int | None = None
    losses: tuple[Loss, ...] = ()
    fostered_in: tuple[Foster, ...] = ()
    fostered_out: tuple[Foster, ...] = ()
    counts: tuple[tuple[date, int], ...] = ()
    weaned_on: date | None = None
    weaned: int | None = None
    weaned_bucks: int | None = None
    weaned_does: int | None = None
    tagged: tuple[str, ...] = ()  # keys of its kits with tags
    left: int = 0  # untagged kits that died after weaning, were sold, culled or given away
    left_unweaned: int = 0  # of those, the ones that went before the litter was weaned
    tally: tuple[tuple[date, int], ...] = ()  # kits alive in the nest after each thing that changed it, in the order it happened
    for_sale: tuple[tuple[date, int, int | None, date | None], ...] = ()  # on, count, price, until
    weighings: tuple[tuple[date, int, int | None], ...] = ()  # on, grams of all, count
    colors: tuple[tuple[str, int], ...] = ()
    box_out: date | None = None
    events: tuple[Event, ...] = ()


@dataclass(frozen=True, slots=True)
class Reminding:
    """A reminder that a person asked for, or a chore put off to another day (then `key` is that chore's)."""

    text: str
    on: date
    key: str
    time: str | None = None
    who: str | None = None
    told_on: date | None = None


@dataclass(frozen=True, slots=True)
class Herd:
    """Everything the notes add up to. Mappings are never changed in place: use the `with_...` methods."""

    animals: Mapping[str, Animal] = field(default_factory=dict)
    matings: tuple[Mating, ...] = ()  # by day
    litters: Mapping[str, Litter] = field(default_factory=dict)
    settings: Settings = field(default_factory=Settings)
    reminders: tuple[Reminding, ...] = ()
    closed: Mapping[str, date] = field(default_factory=dict)  # chore keys done or skipped -> the day
    rations: Mapping[str, Ration] = field(default_factory=dict)  # by scope: bucks, does, grow-outs, all
    feed: tuple[Event, ...] = ()  # feed_bought and feed_left
    weather: tuple[Event, ...] = ()
    remarks: tuple[Event, ...] = ()  # of no animal
    living_tags: Mapping[str, str] = field(default_factory=dict)  # folded tag -> key, of animals on the farm
    day: date | None = field(default=None, compare=False)  # the day being told; the replay moves it on before each fact
    _gone_tags: dict[str, str] = field(
        default_factory=dict, init=False, compare=False, repr=False
    )  # the last animal of each tag, once asked for
    _moved: dict[date, Herd] = field(default_factory=dict, init=False, compare=False, repr=False)  # this herd on other days, once asked for

    def on_day(self, day: date) -> Herd:
        """The herd with its day moved on: what a fact without a date of its own counts from."""
        if self.day == day:
            return self
        moved = self._moved.get(day)
        if moved is None:
            moved = self._moved[day] = replace(self, day=day)
        return moved

    def with_animal(self, animal: Animal) -> Herd:
        """The herd with this animal put in or replaced."""
        before = self.animals.get(animal.key)
        told = replace(self, animals=with_entry(self.animals, animal.key, animal), living_tags=self._tags_with(animal, before))
        if self._gone_tags and before is None:
            told._gone_tags.update(self._gone_tags, **{folded(animal.tag): animal.key})  # noqa: SLF001 - a herd made here
        return told

    def _tags_with(self, animal: Animal, before: Animal | None) -> Mapping[str, str]:
        """The tags of the living once the animal is as it is now."""
        now = folded(animal.tag) if animal.living else None
        was = folded(before.tag) if before is not None and self.living_tags.get(folded(before.tag)) == animal.key else None
        if was == now:
            return self.living_tags
        tags = self.living_tags if was is None else {tag: key for tag, key in self.living_tags.items() if tag != was}
        return tags if now is None else with_entry(tags, now, animal.key)

    def with_litter(self, litter: Litter) -> Herd:
        """The herd with this litter put in or replaced."""
        return replace(self, litters=with_entry(self.litters, litter.key, litter))

    def with_mating(self, mating: Mating) -> Herd:
        """The herd with one more mating, in its place by day."""
        if self.matings and self.matings[-1].on <= mating.on:
            return replace(self, matings=(*self.matings, mating))
        return replace(self, matings=tuple(sorted((*self.matings, mating), key=lambda each: each.on)))

    def free_key(self, tag: str) -> str:
        """A key for a new animal of that tag: the tag, or `tag~2`, `tag~3` where earlier animals had it."""
        taken = (f"{tag}~{number}" for number in count(2))
        return tag if tag not in self.animals else next(key for key in taken if key not in self.animals)

    def find(self, tag: str) -> Animal | None:
        """The animal of that tag: the living one, else the last one that went."""
        key = self.living_tags.get(folded(tag))
        if key is not None:
            return self.animals[key]
        if not self._gone_tags:
            self._gone_tags.update((folded(animal.tag), animal.key) for animal in self.animals.values())
        gone = self._gone_tags.get(folded(tag))
        return self.animals[gone] if gone is not None else None


@lru_cache(maxsize=16384)
def folded(tag: str) -> str:
    """A tag as it is compared: case, leading zeros, spaces and hyphens don't matter (`r-021` is `R21`)."""
    bare = tag.replace(" ", "").replace("-", "").upper()
    letters = bare.rstrip("0123456789")
    digits = bare[len(letters) :]
    return letters + (digits.lstrip("0") or "0" if digits else "")
