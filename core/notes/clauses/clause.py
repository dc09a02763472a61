"""One statement of a note, with the question every kind asks of it: which animal, how many, how heavy, when.

A kind takes the items it can explain. What nobody takes is asked about, never dropped.

Over 300 lines: all that a kind may ask of its statement stands in one class, so that a kind's file needs no other.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence, Set
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from itertools import islice, pairwise
from typing import Any, Final

from core.herd.state import Animal, Herd
from core.notes.fact import Fact
from core.notes.reading import Context
from core.notes.slots.animals import HerdWords, Mention
from core.notes.slots.common_words import COMMON
from core.notes.slots.dates import Days, Said, days_of
from core.notes.slots.items import Item, marks_of, pair_grams
from core.notes.slots.tokens import Token

MOST_FIGURES: Final = 100  # not a figure: items: the longest lists of tags have no more
NAME_LETTERS: Final = 3  # shorter words are hardly names
PAST: Final = "past"
PLAN: Final = "plan"
#: Words that lead to an animal.
LEADS: Final = frozenset(
    {
        "on",
        "of",
        "for",
        "from",
        "to",
        "with",
        "under",
        "in",
        "w",
        "x",
        "out",
        "off",
        "by",
        "ex",
        "doe",
        "buck",
        "tag",
        "number",
        "animal",
        "rabbit",
        "litter",
    }
)
INTERJECTIONS: Final = frozenset(
    [
        "ugh",
        "omg",
        "bruh",
        "um",
        "uh",
        "hey",
        "lol",
        "damn",
        "dang",
        "aw",
        "aww",
        "wow",
        "oh",
        "ah",
        "hmm",
        "yay",
        "woohoo",
        "update",
        "fyi",
        "news",
        "okay",
        "yep",
        "yeah",
        "yes",
        "alright",
        "yo",
        "dude",
        "guys",
        "hi",
        "hello",
        "man",
        "gosh",
        "argh",
        "oof",
        "sigh",
        "sad",
        "rip",
        "welp",
        "btw",
        "also",
        "today",
    ]
)
WELL: Final = frozenset({"fine", "ok", "okay", "great", "healthy", "normal", "perfect", "himself", "herself"})
#: Behind `nine of`: the number counts.
PARTS: Final = frozenset({"them", "those", "em", "which", "these", "hers", "the", "her", "my", "our"})
#: They limit what was said before them.
CONDITIONS: Final = frozenset(
    {"once theyre", "once shes", "once hes", "once they're", "once she's", "once he's", "once they are", "once she is", "as soon as"}
)
#: Words between a number and what it counts.
LOOKS: Final = frozenset(
    {
        "little",
        "big",
        "nice",
        "fat",
        "pretty",
        "good",
        "young",
        "healthy",
        "small",
        "tiny",
        "cute",
        "fine",
        "strong",
        "lovely",
        "beautiful",
        "chunky",
        "plump",
        "sturdy",
        "nice-looking",
    }
)
#: What is sold without an article, and is no animal's name.
STUFF: Final = frozenset(
    {
        "hay",
        "straw",
        "manure",
        "meat",
        "feed",
        "fur",
        "wool",
        "poop",
        "compost",
        "fertilizer",
        "milk",
        "honey",
        "bread",
        "stuff",
        "equipment",
        "wire",
        "lumber",
        "wood",
        "furniture",
        "pork",
        "beef",
        "chicken",
        "grain",
        "bedding",
        "firewood",
        "fence",
        "fencing",
        "some",
        "more",
        "it",
        "out",
        "everything",
        "nothing",
        "something",
        "one",
        "him",
        "her",
    }
)
#: Verbs that an animal stands right behind.
VERBS_OF_ANIMALS: Final = frozenset({"breed", "sell", "cull", "die", "palpate", "wean", "weigh", "list", "move", "treat", "tag"})
BESIDE_ANIMALS: Final = frozenset({"under", "from", "on", "for", "in", "of", "off"})
OF_ANIMALS: Final = ("box", "dead", "die", "lose", "weigh", "kits", "litter", "palpate", "foster", "condition")
#: Things of the barn that a number counts: `twelve cages`, `filled 12 bottles`.
COUNTED_THINGS: Final = frozenset(
    {
        "cages",
        "trays",
        "bottles",
        "crocks",
        "feeders",
        "waterers",
        "pans",
        "hutches",
        "pens",
        "holes",
        "nestboxes",
        "mats",
        "gauge",
        "foot",
        "feet",
        "inch",
        "inches",
        "gallon",
        "gallons",
        "mile",
        "miles",
        "mph",
        "watts",
        "people",
        "eggs",
    }
)
#: Behind `@` they say when, not how many at what price.
HOURS: Final = frozenset({"time", "clock"})
COUNT_MARKS: Final = frozenset({"kits", "alive", "dead", "born", "bucks_word", "does_word", "bag", "falls", "cup_word", "each"})
FILLERS: Final = frozenset(
    {
        "more",
        "good",
        "solid",
        ",",
        ":",
        "-",
        "(",
        ")",
        "=",
        ">",
        "the",
        "a",
        "an",
        "of",
        "her",
        "his",
        "and",
        "is",
        "is a",
        "was",
        "are",
        "were",
        "with",
        "at",
        "about",
        "only",
        "just",
        "em",
        "them",
        "my",
        "our",
        "that",
    }
)


#: Sorts of items that name an animal outright.
NAMED_SORTS: Final = frozenset({"animal", "code"})


@dataclass(frozen=True, slots=True)
class Scene:
    """All that a message is read against."""

    herd: Herd
    words: HerdWords
    today: date
    context: Context
    text: str = ""
    clock: str = ""  # the time of the message on the farm, `HH:MM`
    newcomers: dict[str, Animal] = field(default_factory=dict)  # animals that the message itself brings onto the book, by their tags
    tokens: Sequence[Token] = ()  # of the message, where its items stand


@dataclass(slots=True)
class Need:
    """What a reading lacks: why it asks, which field is wanted (or `confirm`), the words of the question, and likely answers."""

    why: str
    wanted: str
    text: str
    choices: tuple[str, ...] = ()


@dataclass(slots=True)
class Found:
    """What a kind read: the values of its fields, the items they came from, and what is missing if something is."""

    fact: type[Fact]
    values: dict[str, Any]
    used: list[Item] = field(default_factory=list)
    need: Need | None = None
    said: Mention | None = None


@dataclass(slots=True)
class Pick:
    """An animal taken from a clause."""

    mention: Mention
    items: list[Item]

    @property
    def tag(self) -> str | None:
        """The one animal meant."""
        return self.mention.tag


class Clause:
    """Items that make one statement."""

    def __init__(self, items: list[Item], scene: Scene, before: Clause | None = None, virtual: frozenset[str] = frozenset()) -> None:
        self.items = items
        self.scene = scene
        self.before = before
        self.virtual = virtual
        self.header: Said | None = None
        self.subject: Mention | None = None
        self.used: set[int] = set()
        self.found: list[Found] = []
        self._places: dict[str, list[int]] = {}  # indices of the items by sort, words left out
        self._words: set[str] = set()
        self._counted_items = self._heard_items = 0  # so many items are in them
        self._tags: list[int] = []  # indices of the numbers that are somebody's tag
        self._numbers_looked_up = 0
        self.beyond = False  # whether it is all that a message said after more statements than are read at once
        self.day_said: Item | None = None  # the date that the statement's facts share
        self.put_off = False  # whether what was read in it has not happened: it is wished, needed, yet to come, or denied
        self.condition = False  # whether what follows hangs on it: `if 14 kindles, ...`
        self.marks = marks_of(items, virtual)

    # looking

    @property
    def herd(self) -> Herd:
        """The herd before the note."""
        return self.scene.herd

    @property
    def today(self) -> date:
        """The day of the message."""
        return self.scene.today

    def has(self, *marks: str) -> bool:
        """Whether any word carries one of these marks."""
        return not self.marks.isdisjoint(marks)

    def first(self, *marks: str) -> int | None:
        """Index of the first free item with one of these marks."""
        if self.marks.isdisjoint(marks):
            return None
        for i, item in enumerate(self.items):
            if item.marks and not item.marks.isdisjoint(marks) and id(item) not in self.used:
                return i
        return None

    def each(self, *marks: str) -> list[int]:
        """Indices of all free items with one of these marks."""
        if self.marks.isdisjoint(marks):
            return []
        return [i for i, item in enumerate(self.items) if item.marks and not item.marks.isdisjoint(marks) and id(item) not in self.used]

    def _sorts(self) -> dict[str, list[int]]:
        """Where the items of each sort stand, words left out."""
        places, begin = self._places, self._counted_items
        if begin != len(self.items):  # statements only grow
            for i, item in enumerate(self.items[begin:] if begin else self.items, begin):
                sort = item.sort
                if sort in places:
                    places[sort].append(i)
                elif sort != "word":
                    places[sort] = [i]
            self._counted_items = len(self.items)
        return places

    def sorts(self) -> Collection[str]:
        """The sorts of its items, words left out."""
        return self._sorts().keys()

    def places(self, sort: str) -> Sequence[int]:
        """Indices of the items of a sort, free or not."""
        return self._sorts().get(sort, ())

    def placed(self, sorts: Set[str]) -> list[int]:
        """Indices of the items of these sorts, free or not."""
        places = self._sorts()
        return sorted([i for sort in places.keys() & sorts for i in places[sort]])

    def holds(self, *sorts: str) -> bool:
        """Whether any item, free or not, is of one of these sorts."""
        return not self._sorts().keys().isdisjoint(sorts)

    def tags(self) -> list[int]:
        """Indices of the numbers that are somebody's tag, whatever they count."""
        numbers = self._sorts().get("num", ())
        if len(numbers) > self._numbers_looked_up:
            self._tags += [i for i in numbers[self._numbers_looked_up :] if self.known(i) is not None]
            self._numbers_looked_up = len(numbers)
        return self._tags

    def overfull(self) -> bool:
        """Whether it has more animals and numbers than one statement ever tells."""
        if len(self.items) <= MOST_FIGURES:
            return False
        places = self._sorts()
        return len(places.get("num", ())) + len(places.get("animal", ())) + len(places.get("code", ())) > MOST_FIGURES

    def sorted_as(self, *sorts: str) -> list[int]:
        """Indices of the free items of these sorts."""
        places = self._places if self._counted_items == len(self.items) else self._sorts()
        if places.keys().isdisjoint(sorts):
            return []
        found = places[sorts[0]] if len(sorts) == 1 else sorted([i for sort in sorts if sort in places for i in places[sort]])
        used, items = self.used, self.items
        return [i for i in found if id(items[i]) not in used] if used else found[:]

    def taken(self, i: int) -> bool:
        """Whether a kind has used the item."""
        return id(self.items[i]) in self.used

    def take(self, found: Found) -> Found:
        """Mark what a reading used."""
        self.used.update(id(item) for item in found.used)
        self.found.append(found)
        return found

    def use(self, indices: Iterable[int]) -> None:
        """Mark items as explained without a fact."""
        self.used.update(id(self.items[i]) for i in indices)

    def said(self, i: int) -> str:
        """The words of an item; empty past the ends."""
        try:
            return self.items[i].said if i >= 0 else ""
        except IndexError:
            return ""

    def says(self, words: Set[str]) -> bool:
        """Whether one of these words is among its items."""
        return not words.isdisjoint(self.words())

    def words(self) -> Set[str]:
        """What its items say, each once."""
        begin = self._heard_items
        if begin != len(self.items):
            self._words.update([item.said for item in (self.items[begin:] if begin else self.items)])
            self._heard_items = len(self.items)
        return self._words

    def text(self) -> str:
        """The clause's words."""
        return " ".join(item.said for item in self.items)

    # numbers

    def whole(self, i: int) -> int | None:
        """The whole number of an item; None for anything else."""
        if not 0 <= i < len(self.items):
            return None
        item = self.items[i]
        if item.sort != "num" or id(item) in self.used:
            return None
        number = int(item.value)
        return number if item.value == number else None

    def past_fillers(self, i: int, step: int, most: int = 3) -> int:
        """The next index that is no small word."""
        for _ in range(most):
            if 0 <= i < len(self.items) and self.items[i].said in FILLERS:
                i += step
        return i

    def number_for(self, i: int, *, behind: bool = True) -> int | None:
        """Index of the whole number that belongs to the word at `i`: before it, else behind it."""
        before = self.past_fillers(i - 1, -1)
        if self.whole(before) is not None:
            return before
        if not behind:
            return None
        after = self.past_fillers(i + 1, 1)
        return after if self.whole(after) is not None else None

    def part_of(self) -> tuple[int, int] | None:
        """Indices of the count and the doe in `two of Thistle's`, `2 of 16 kits`."""
        for i in self.sorted_as("num"):
            lead = (
                i + 2
                if self.said(i + 1)
                in {"smallest", "biggest", "oldest", "best", "other", "last", "little", "small", "big", "nicest", "runts"}
                else i + 1
            )
            following = lead + 1 if self.said(lead) in {"of", "from", "out of", "off of", "off"} else None
            if following is not None and self.said(following) == "the" and self.items[following + 1 : following + 2]:
                following += self.items[following + 1].sort == "animal"  # "two of the Thistle kits"
            if following is None or self.whole(i) is None or self.said(following) in {"the", "her", "them"}:
                continue
            if self.known(following) is not None or self.items[following].sort == "animal" if following < len(self.items) else False:
                return i, following
        return None

    def counted(self, i: int) -> bool:
        """Whether the number at `i` counts what follows (`2 kits`, `3 bucks`)."""
        if (
            self.items[i].spoken
            and self.said(i - 1) in {"the", "those", "these", "my", "our", "other"}
            and self.said(i + 1) not in {"", ".", ",", "?", "!"}
            and i + 1 < len(self.items)
            and self.items[i + 1].sort == "word"
            and not self.items[i + 1].marks
        ):
            return True  # "the three Rs"
        if i > 1 and self.said(i - 1) in {"her", "his", "their"} and self.items[i - 2].marks & {"wean", "lose", "count"}:
            return True  # "weaned her five"
        if self.said(i + 1) == "of" and self.said(i + 2) in PARTS:
            return True
        if self.said(i - 1) == "all" or (self.items[i].spoken and i and self.items[i - 1].unit == "possessive"):
            return True  # "all three look good", "Thistle's five"
        following = self.past_fillers(i + 1, 1, 2) if self.said(i + 1) in {"of", "her", "the", "his", "little"} else i + 1
        while following + 1 < len(self.items) and (
            self.said(following) in LOOKS or (self.items[i].spoken and "breed_name" in self.items[following].marks)
        ):
            following += 1  # "three little does", "the three Mini Rex youngsters"
        if not 0 <= following < len(self.items):
            return False
        item = self.items[following]
        if item.said == "go" and self.said(following + 1) in {"", ".", "!", "to", "in", "into", "over to"} and self.known(i) is not None:
            return False  # "31 and 32 go"
        if item.marks & {"kits", "bucks_word", "does_word", "bag", "falls", "each", "scope:grow-outs"} or item.said in COUNTED_THINGS:
            return True
        if item.marks & {"buck_word", "doe_word"} and self.whole(i) == 1:
            return True  # "1 buck 2 does"
        if "live_weight" in item.marks and following + 1 < len(self.items) and self.items[following + 1].sort in {"weight", "pair"}:
            return False  # "butchered 32 live 5-2 dressed 2-12"
        if item.marks & {"color"} and item.value and (self.has("litter", "kits", "litter_color") or self._so_many(following)):
            return True
        return (
            bool(item.marks & {"alive", "born"})
            or ("dead" in item.marks and not item.marks & {"die"})
            or (
                item.said in {"@", "%"}
                and item.sort == "mark"
                and not (self.items[following + 1 :] and self.items[following + 1].sort in HOURS)
            )
        )

    def _so_many(self, i: int) -> bool:
        """`three castors`: a colour with an s counts rabbits."""
        item = self.items[i]
        return item.said.endswith("s") and item.said[:-1] == item.value[0]

    # animals

    def mention(self, i: int) -> Mention | None:
        """The animal that the item at `i` is, or would be if it is a bare number."""
        if not 0 <= i < len(self.items):
            return None
        item = self.items[i]
        if item.sort == "animal":
            mention = item.value if isinstance(item.value, Mention) else None
            new = self.scene.newcomers.get(mention.said.upper()) if mention is not None and not mention.tags else None
            if mention is not None and len(mention.tags) > 1:
                return self._told_apart(mention)
            return mention if new is None else Mention((new.tag,), new.tag, mention.sex if mention else None)
        if item.sort == "code":
            return Mention((item.value,) if item.value in self.scene.newcomers else (), item.value)
        number = self.whole(i)
        if number is None or number < 0:
            return None
        known = self.scene.words.tagged(str(number)) or self.scene.newcomers.get(str(number))
        others = self.scene.words.sounds_like(str(number)) if item.spoken else ()
        return Mention((known.tag,) if known else (), str(number), None, not item.spoken, others)

    def _told_apart(self, mention: Mention) -> Mention:
        """`that castor buck with the bad teeth, 32`: of several that fit a description, the one whose number is said as well."""
        beside = {tag for i in self.tags() if (tag := str(self.items[i].value)) in mention.tags and not self.counted(i)}
        return Mention((beside.pop(),), mention.said, mention.sex) if len(beside) == 1 else mention

    def known(self, i: int) -> Animal | None:
        """The one animal that the item is, if it is one on the book."""
        if not 0 <= i < len(self.items):
            return None
        sort = self.items[i].sort
        if sort == "num":
            return self._numbered(i)
        mention = self.mention(i) if sort in NAMED_SORTS else None
        tag = mention.tag if mention is not None else None
        return (self.scene.herd.find(tag) or self.scene.newcomers.get(tag)) if tag else None

    def _numbered(self, i: int) -> Animal | None:
        """The animal whose tag the number at `i` is."""
        number = self.whole(i)
        if number is None or number < 0:
            return None
        known = self.scene.words.tagged(str(number)) or self.scene.newcomers.get(str(number))
        return (self.scene.herd.find(known.tag) or self.scene.newcomers.get(known.tag)) if known is not None else None

    def explicit(self) -> list[int]:
        """Indices of free animals that can't be mere numbers."""
        return self.sorted_as("animal", "code")

    def opening(self) -> int | None:
        """Index of the first item that says something."""
        for i, item in enumerate(self.items):
            if (
                item.sort in {"date", "break", "mark"}
                or item.said in {",", ":", "-", "and", "so", "the", "then", "also", "but", "ok", "well", "a", "plus", "."}
                or (item.said in INTERJECTIONS and not item.marks)
            ):
                continue
            return i
        return None

    def subject_of(self, cue: int | None, *, lead: bool = True, after: bool = True) -> Pick | None:
        """The animal that a statement is about: named beside the cue, a number that stands where an animal does, or the one spoken of."""
        explicit = self.explicit()
        if explicit:
            if cue is not None:
                before = [i for i in explicit if i < cue]
                return self._picked(before[-1] if before else explicit[0])
            return self._picked(explicit[0])
        bare = self._bare_subject(cue, lead=lead, after=after)
        if bare is not None:
            return self._picked(bare)
        return self.spoken_of()

    def spoken_of(self) -> Pick | None:
        """The animal carried over from the statement or message before; a name that nobody knows, where a statement begins with one."""
        stranger = self._stranger()
        if stranger is None:
            stranger = next(iter(self.strangers()), None)
        if stranger is not None:
            return Pick(Mention((), self.items[stranger].said.removesuffix("'s")), [self.items[stranger]])
        mention = next((found.said for found in reversed(self.found) if found.said), None) or self.subject
        if mention is None and self.scene.context.subject:
            mention = Mention((self.scene.context.subject,), self.scene.context.subject)
        return Pick(mention, []) if mention else None

    def _stranger(self) -> int | None:
        """Index of an unknown word that opens the statement where its animal would stand: `zed 4-3`, `mopsy kindled 8`."""
        place = self.opening()
        item = self.items[place] if place is not None else None
        if (
            place is None
            or item is None
            or item.sort != "word"
            or item.marks
            or item.said.removesuffix("'s") in COMMON
            or not item.said.removesuffix("'s").isalpha()
            or len(item.said) < NAME_LETTERS
        ):
            return None
        following = self.items[place + 1] if place + 1 < len(self.items) else None
        return (
            place
            if following is not None
            and (following.sort in {"weight", "pair", "clock", "num"} or bool(following.marks - {"to", "from", "pronoun", "question"}))
            else None
        )

    def strangers(self) -> list[int]:
        """Indices of unknown words that stand where an animal does: `sold patches for 40`, `bred zorro to 5`, `lost one of zorro's kits`."""
        found = []
        for i in range(1, len(self.items)):
            item, before = self.items[i], self.items[i - 1]
            name = item.said.removesuffix("'s")
            if (
                item.sort != "word"
                or item.marks
                or not name.isalpha()
                or len(name) < NAME_LETTERS
                or (name in COMMON and name.capitalize() not in self.scene.text.split() and not self._bare_noun_sold(i))
                or name.endswith(("ing", "ly", "tion", "itis", "osis", "ness"))
                or self.taken(i)
            ):
                continue
            led = (
                bool(before.marks & VERBS_OF_ANIMALS)
                or (before.said in {"to", "x", "with", "w"} and self.has("breed"))
                or (before.said == "of" and (self.whole(i - 2) is not None or self.said(i - 2) in {"one", "some", "all"}))
            )
            led = (
                led
                or (before.said in {"found", "lost"} and (self.has("die", "dead") or i + 1 == len(self.items)))
                or (before.said == "put" and self.has("in_with"))
                or (before.said in {"gave", "give"} and (self.has("drug", "to") or bool(self.sorted_as("cup", "dose"))))
            )
            led = (
                led
                or (before.said.split(" ")[-1] in BESIDE_ANIMALS and name not in COMMON and self.has(*OF_ANIMALS))
                or (self.has("box") and bool(before.marks & {"box_in", "box_out"}))
            )
            after = self.items[i + 1] if i + 1 < len(self.items) else None
            ends = (
                after is None
                or after.sort != "word"
                or bool(after.marks & {"to", "all", "kits", "litter", "each", "drug", "dead", "die", "in_with"})
                or after.said in {"to", "for", "with", "at", "today", "and", "a", "her", "his", "this"}
            )
            if led and ends:
                found.append(i)
        return found

    def _bare_noun_sold(self, i: int) -> bool:
        """Whether a common word can only be a name: `sold duke for 60` has no article, and is neither stuff nor many."""
        priced = self.said(i + 1) == "for" and i + 2 < len(self.items) and self.items[i + 2].sort in {"num", "money"}
        return priced and "sell" in self.items[i - 1].marks and not self.said(i).endswith("s") and self.said(i) not in STUFF

    def listed_subjects(self, cue: int) -> list[Pick | None]:
        """The animals that a verb is said of, when they stand in a list (`14 and 9 missed`); else the one subject."""
        numbers = [i for i in self.sorted_as("num") if self.known(i) and not self.counted(i)]
        places = sorted({*self.explicit(), *numbers})
        for start in range(len(places) - 1):
            row = places[start : start + 1]
            for a, b in pairwise(places[start:]):
                if not all(item.said in {",", "and", "&"} for item in self.items[a + 1 : b]):
                    break
                row.append(b)
            if len(row) > 1:
                distinct = {self.pick(i).mention.tags or (self.said(i),): self.pick(i) for i in row}
                return list(distinct.values())
        return [self.subject_of(cue if cue >= 0 else None)]

    def _picked(self, i: int) -> Pick:
        mention = self.mention(i)
        explicit = self.explicit() if mention is not None and mention.tag else []
        same = [j for j in explicit if j != i and mention and self.items[j].value == mention.tag]
        same += [
            j
            for j in explicit
            if j != i and mention and isinstance(self.items[j].value, Mention) and self.items[j].value.tags == mention.tags
        ]
        return Pick(mention or Mention((), ""), [self.items[i], *(self.items[j] for j in same)])

    def pick(self, i: int) -> Pick:
        """The animal at an index, with its other mentions."""
        return self._picked(i)

    def _bare_subject(self, cue: int | None, *, lead: bool, after: bool) -> int | None:
        opening = self.opening()
        if opening is not None and self.whole(opening) is not None and not self.counted(opening) and opening != cue:
            return opening
        alone = len(self.sorted_as("num")) == 1
        if cue is not None and self.whole(cue - 1) is not None and not self.counted(cue - 1) and (self.known(cue - 1) or alone):
            return cue - 1
        if cue is not None and after:
            behind = self._behind(cue)
            if behind is not None:
                return behind
        led = self.led() if lead else None
        if led is not None:
            return led
        known = [
            i
            for i in self.sorted_as("num")
            if self.known(i) and not self.counted(i) and i and (self.items[i - 1].sort == "word" or self.said(i - 1) in {":", ",", "\n"})
        ]
        return known[0] if len(known) == 1 and cue is not None else None

    def _behind(self, cue: int) -> int | None:
        i = cue + 1
        for _ in range(3):
            if self.said(i) in {
                ":",
                "\n",
                ",",
                ".",
                "noted",
                "seen",
                "on",
                "of",
                "for",
                "up",
                "out",
                "from",
                "the",
                "with",
                "w",
                "in",
                "doe",
                "buck",
                "off",
                "-",
            } or (i < len(self.items) and self.items[i].sort in {"date", "dose"}):
                i += 1
        return i if self.whole(i) is not None and not self.counted(i) else None

    def led(self, *leads: str) -> int | None:
        """Index of a bare number that stands behind `on`, `from`, `under` ... and is somebody's tag."""
        wanted = frozenset(leads) or LEADS
        for i in range(1, len(self.items)):
            lead = self.said(i - 2) if self.said(i - 1) in {":", "="} else self.said(i - 1)
            if lead.split(" ")[-1] in wanted and self.whole(i) is not None and not self.counted(i) and self.known(i):
                return i
        return None

    # weights

    def grams(self, i: int) -> int | None:
        """The weight that the weight, pair or `3:15` at `i` says outright [g]; None where it says an impossible one."""
        item = self.items[i]
        if item.sort == "weight":
            grams = item.value[0]
            return int(grams) if grams is not None else None
        if item.sort == "pair":
            return pair_grams(*item.value)
        pounds, _, ounces = item.value.partition(":")
        return pair_grams(int(pounds), int(ounces))

    # days

    def dates(self) -> list[int]:
        """Indices of the free dates."""
        return self.sorted_as("date")

    def days(self, direction: str) -> tuple[Days, list[Item], Said | None]:
        """The day or days of the statement: its own date, the list's, else today; with the items that said so."""
        found = [i for i in self.dates() if direction != PAST or not (self.told_due(i) or self.said(i - 1) in UP_TO)]
        item = self.items[found[0]] if found else self.day_said
        if item is not None:
            self.day_said = item
            return self.resolved(item.value, direction), [item], item.value
        if self.header is not None:
            return self.resolved(self.header, direction), [], self.header
        return Days(self.today if direction == PAST else None), [], None

    def ahead(self) -> bool:
        """Whether a date of the statement can only lie ahead: `tomorrow`, `next saturday`, `a week from saturday`, `in 2 weeks`."""
        dates = [self.items[i].value for i in self.dates()]
        return any(
            (said.shape == "near" and said.a > 0) or said.modifier in {"ahead", "next"} or (said.modifier == "weeks" and said.b > 0)
            for said in dates
        )

    def to_come(self, verb: int) -> bool:
        """Whether a verb in the ing form with an animal right behind it has a day to come: `weaning 16 on saturday`; a day before the animal heads a list."""
        if not self.said(verb).endswith("ing") or self.known(verb + 1) is None:
            return False
        weekday = any(self.items[i].value.shape == "weekday" and self.items[i].value.modifier != "last" for i in self.dates() if i > verb)
        return weekday or self.ahead()

    def planned_for(self, verb: int) -> bool:
        """Whether a verb in the ing form has a weekday right behind it, and nothing else: `they are ready, butchering saturday`."""
        if not self.said(verb).endswith("ing") or verb + 1 >= len(self.items) or self.items[verb + 1].sort != "date":
            return False
        day = self.items[verb + 1].value
        ends = verb + 2 >= len(self.items) or self.items[verb + 2].sort == "mark"
        return ends and day.shape == "weekday" and day.modifier != "last" and not self.has("dress", "live_weight", "money")

    def told_due(self, i: int) -> bool:
        """Whether the date at `i` says when something is due (`since she's due next week`), not when it was done."""
        return (
            any(self.said(j).startswith("due") for j in (i - 1, i - 2))
            or (i > 0 and "appointment" in self.items[i - 1].marks and len(self.found) + len(self.items) > 3 and self._is_day(i))
            or self._told_well(i)
        )

    def _is_day(self, i: int) -> bool:
        """Whether the date at `i` can be a day at all: `vet 4-61` names none, and is asked about."""
        return self.resolved(self.items[i].value, PLAN).on is not None

    def _told_well(self, i: int) -> bool:
        """`he was just fine last night`: a day when nothing had befallen it yet."""
        if self.said(i - 1) not in WELL or self.items[i].value.shape not in {"near", "weekday"}:
            return False
        return not {"was", "were", "seemed", "looked", "acted"}.isdisjoint(self.said(j) for j in range(max(i - len(WELL), 0), i - 1))

    def resolved(self, said: Said, direction: str) -> Days:
        """What a date comes to on the day of the message."""
        return days_of(said, self.today, direction, self.herd.settings.date_order)

    # building

    def past(
        self,
        fact: type[Fact],
        pick: Pick | None,
        field_name: str,
        values: dict[str, Any],
        used: Sequence[Item] = (),
        need: Need | None = None,
    ) -> Found:
        """A reading of something that happened: its animal and its day come with it."""
        days, items, said = self.days(PAST)
        if said is not None and said.shape in {"week", "month_alone"} and said.modifier == "this":
            days = Days(self.today)
        values = dict(values)
        found = Found(fact, values, [*used, *items], need)
        if (
            days.on is None
            or days.on > self.today
            or (days.until is not None and days.until != days.on and said is not None and said.shape != "weekend")
            or (days.until is not None and said is not None and said.shape == "weekend")
        ):
            found.need = first_need(found.need, when(said))
        values["on"] = days.on or self.today
        if field_name:
            self._with_animal(found, pick, field_name)
        return found

    def _with_animal(self, found: Found, pick: Pick | None, field_name: str) -> None:
        if pick is None:
            found.need = first_need(found.need, Need("which_animal", field_name, "Which animal is this about?"))
            return
        found.used.extend(pick.items)
        self.fill(found, pick, field_name)

    def fill(self, found: Found, pick: Pick, field_name: str) -> None:
        """Put an animal into a field, or ask which one is meant; a doe's field takes no buck."""
        mention = pick.mention
        found.said = found.said or mention
        if mention.tag is None:
            found.need = first_need(found.need, unknown_animal(mention, field_name, self.scene.words))
            return
        animal = self.herd.find(mention.tag) or self.scene.newcomers.get(mention.tag)
        found.values[field_name] = mention.tag
        wanted = {"doe": "doe", "dam": "doe", "buck": "buck", "sire": "buck", "from_": "doe", "litter_of": "doe"}.get(field_name)
        if field_name == "to":
            wanted = "doe"
        sex = animal.sex if animal else None
        claimed = mention.sex
        if wanted and ((sex and sex != wanted) or (claimed and claimed != wanted)):
            found.need = first_need(found.need, wrong_sex(mention, field_name, wanted))
        elif claimed and sex and claimed != sex:
            found.need = first_need(found.need, wrong_sex(mention, field_name, claimed))


def when(said: Said | None) -> Need:
    """The question about a day that can't be."""
    _ = said
    return Need("when", "on", "Which day was that? I can't make a day of it that fits. For example: yesterday, or 24 nov.")


def unknown_animal(mention: Mention, field_name: str, words: HerdWords) -> Need:
    """The question about an animal that nobody knows, or that several could be."""
    if mention.tags:
        return Need("which_animal", field_name, f"Which one do you mean by \u201c{mention.said}\u201d?", mention.tags[:5])
    near = _near(mention.said, words)
    sex = "buck" if field_name in {"buck", "sire"} else "doe"
    new = (
        f"new {sex} {mention.said}"
        if any(letter.isdigit() for letter in mention.said)
        else f"new {sex} 40 named {mention.said.capitalize()}"
    )
    text = f"I don't know an animal \u201c{mention.said}\u201d. Which one is it? Send its tag or name; if it is new, first add it: \u201c{new}\u201d."
    return Need("which_animal", field_name, text, near)


def _near(said: str, words: HerdWords) -> tuple[str, ...]:
    """Living animals whose tags look like what was said, the likeliest first."""
    digits = "".join(sign for sign in said if sign.isdigit())
    if not digits:
        return ()
    alike = (
        animal.tag
        for animal in words.living()
        if animal.tag != said
        and (digits in animal.tag or (len(digits) == len(animal.tag) and sum(a != b for a, b in zip(digits, animal.tag, strict=True)) == 1))
    )
    return tuple(islice(alike, 5))  # not a figure: choices


def wrong_sex(mention: Mention, field_name: str, wanted: str) -> Need:
    """The question about an animal of the other sex."""
    other = "buck" if wanted == "doe" else "doe"
    return Need(
        "wrong_sex", field_name, f"{mention.tag or mention.said} is a {other} on the book, and this needs a {wanted}. Which {wanted} is it?"
    )


#: Before a date they tell how long something goes on.
UP_TO: Final = frozenset({"until", "til", "till", "thru", "up until"})
ORDER: Final = ("which_animal", "wrong_sex", "when", "how_many", "which_number", "what", "impossible", "confirm", "duplicate")


def first_need(one: Need | None, other: Need | None) -> Need | None:
    """The one that is asked first."""
    if one is None or other is None:
        return one or other
    return one if ORDER.index(one.why) <= ORDER.index(other.why) else other


def decimal_text(value: Decimal) -> float:
    """A decimal with three places at most."""
    return round(float(value), 3)
