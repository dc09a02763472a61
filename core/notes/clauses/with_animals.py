"""Which numbers and words of a statement are animals, and which count something."""

from __future__ import annotations

from typing import Final

from core.herd.state import Animal
from core.notes.clauses.marked import Marked
from core.notes.slots.animals import Mention

MOST_FIGURES: Final = 100  # not a figure: items: the longest lists of tags have no more
INTERJECTIONS: Final = frozenset(
    {
        "ugh", "omg", "bruh", "um", "uh", "hey", "lol", "damn", "dang", "aw", "aww", "wow", "oh", "ah", "hmm", "yay", "woohoo", "update",
        "fyi", "news", "okay", "yep", "yeah", "yes", "alright", "yo", "dude", "guys", "hi", "hello", "man", "gosh", "argh", "oof", "sigh",
        "sad", "rip", "welp", "btw", "also", "today",
    }
)  # fmt: skip
#: Behind `nine of`: the number counts.
PARTS: Final = frozenset({"them", "those", "em", "which", "these", "hers", "the", "her", "my", "our"})
#: Words between a number and what it counts.
LOOKS: Final = frozenset(
    {
        "little", "big", "nice", "fat", "pretty", "good", "young", "healthy", "small", "tiny", "cute", "fine", "strong", "lovely",
        "beautiful", "chunky", "plump", "sturdy", "nice-looking",
    }
)  # fmt: skip
#: Things of the barn that a number counts: `twelve cages`, `filled 12 bottles`.
COUNTED_THINGS: Final = frozenset(
    {
        "cages", "trays", "bottles", "crocks", "feeders", "waterers", "pans", "hutches", "pens", "holes", "nestboxes", "mats", "gauge",
        "foot", "feet", "inch", "inches", "gallon", "gallons", "mile", "miles", "mph", "watts", "people", "eggs",
    }
)  # fmt: skip
#: Behind `@` they say when, not how many at what price.
HOURS: Final = frozenset({"time", "clock"})
#: Sorts of items that name an animal outright.
NAMED_SORTS: Final = frozenset({"animal", "code"})


class WithAnimals(Marked):
    """Which numbers and words of a statement are animals, and which count something."""

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

    def counted(self, i: int) -> bool:
        """Whether the number at `i` counts what follows (`2 kits`, `3 bucks`)."""
        if self._counted_by_lead(i):
            return True
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
        if item.marks & {"buck_word", "doe_word"} and self.whole(i) == 1:
            return True  # "1 buck 2 does"
        return self._is_counted(following)

    def _counted_by_lead(self, i: int) -> bool:
        """`the three Rs`, `weaned her five`, `two of those`, `all three look good`, `Thistle's five`."""
        if (
            self.items[i].spoken
            and self.said(i - 1) in {"the", "those", "these", "my", "our", "other"}
            and self.said(i + 1) not in {"", ".", ",", "?", "!"}
            and i + 1 < len(self.items)
            and self.items[i + 1].sort == "word"
            and not self.items[i + 1].marks
        ):
            return True
        if i > 1 and self.said(i - 1) in {"her", "his", "their"} and self.items[i - 2].marks & {"wean", "lose", "count"}:
            return True
        if self.said(i + 1) == "of" and self.said(i + 2) in PARTS:
            return True
        return self.said(i - 1) == "all" or bool(self.items[i].spoken and i and self.items[i - 1].unit == "possessive")

    def _is_counted(self, place: int) -> bool:
        """Whether the item, with a number before it, is a thing that is counted."""
        item, after = self.items[place], self.items[place + 1 : place + 2]
        if item.marks & {"kits", "bucks_word", "does_word", "bag", "falls", "each", "scope:grow-outs"} or item.said in COUNTED_THINGS:
            return True
        if "live_weight" in item.marks and after and after[0].sort in {"weight", "pair"}:
            return False  # "butchered 32 live 5-2 dressed 2-12"
        if item.marks & {"color"} and item.value and (self.has("litter", "kits", "litter_color") or self._so_many(place)):
            return True
        return (
            bool(item.marks & {"alive", "born"})
            or ("dead" in item.marks and not item.marks & {"die"})
            or (item.said in {"@", "%"} and item.sort == "mark" and not (after and after[0].sort in HOURS))
        )

    def _so_many(self, i: int) -> bool:
        """`three castors`: a colour with an s counts rabbits."""
        item = self.items[i]
        return item.said.endswith("s") and item.said[:-1] == item.value[0]

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
