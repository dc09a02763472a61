"""Whom a statement is about: the animal at its head, behind its verb, spoken of before, or one that the book does not know."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from core.notes.clauses.scene import Pick
from core.notes.clauses.with_animals import WithAnimals
from core.notes.slots.animals import Mention
from core.notes.slots.common_words import COMMON

NAME_LETTERS: Final = 3  # shorter words are hardly names
#: Words that lead to an animal.
LEADS: Final = frozenset(
    {
        "on", "of", "for", "from", "to", "with", "under", "in", "w", "x", "out", "off", "by", "ex", "doe", "buck", "tag", "number",
        "animal", "rabbit", "litter",
    }
)  # fmt: skip
#: What is sold without an article, and is no animal's name.
STUFF: Final = frozenset(
    {
        "hay", "straw", "manure", "meat", "feed", "fur", "wool", "poop", "compost", "fertilizer", "milk", "honey", "bread", "stuff",
        "equipment", "wire", "lumber", "wood", "furniture", "pork", "beef", "chicken", "grain", "bedding", "firewood", "fence", "fencing",
        "some", "more", "it", "out", "everything", "nothing", "something", "one", "him", "her",
    }
)  # fmt: skip
#: Verbs that an animal stands right behind.
VERBS_OF_ANIMALS: Final = frozenset({"breed", "sell", "cull", "die", "palpate", "wean", "weigh", "list", "move", "treat", "tag"})
BESIDE_ANIMALS: Final = frozenset({"under", "from", "on", "for", "in", "of", "off"})
OF_ANIMALS: Final = ("box", "dead", "die", "lose", "weigh", "kits", "litter", "palpate", "foster", "condition")


class WithSubject(WithAnimals):
    """Whom a statement is about: the animal at its head, behind its verb, spoken of before, or one that the book does not know."""

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
        return [i for i in range(1, len(self.items)) if self._may_be_name(i) and self._in_animal_place(i) and self._ends_behind(i)]

    def _may_be_name(self, i: int) -> bool:
        """Whether the unknown word could be somebody's name."""
        item = self.items[i]
        name = item.said.removesuffix("'s")
        return not (
            item.sort != "word"
            or item.marks
            or not name.isalpha()
            or len(name) < NAME_LETTERS
            or (name in COMMON and name.capitalize() not in self.scene.text.split() and not self._bare_noun_sold(i))
            or name.endswith(("ing", "ly", "tion", "itis", "osis", "ness"))
            or self.taken(i)
        )

    def _in_animal_place(self, i: int) -> bool:
        """Whether the word before leads to an animal here."""
        before, name = self.items[i - 1], self.items[i].said.removesuffix("'s")
        return (
            bool(before.marks & VERBS_OF_ANIMALS)
            or (before.said in {"to", "x", "with", "w"} and self.has("breed"))
            or (before.said == "of" and (self.whole(i - 2) is not None or self.said(i - 2) in {"one", "some", "all"}))
            or (before.said in {"found", "lost"} and (self.has("die", "dead") or i + 1 == len(self.items)))
            or (before.said == "put" and self.has("in_with"))
            or (before.said in {"gave", "give"} and (self.has("drug", "to") or bool(self.sorted_as("cup", "dose"))))
            or (before.said.split(" ")[-1] in BESIDE_ANIMALS and name not in COMMON and self.has(*OF_ANIMALS))
            or (self.has("box") and bool(before.marks & {"box_in", "box_out"}))
        )

    def _ends_behind(self, i: int) -> bool:
        """Whether the name ends there: no further word of it follows."""
        after = self.items[i + 1] if i + 1 < len(self.items) else None
        return (
            after is None
            or after.sort != "word"
            or bool(after.marks & {"to", "all", "kits", "litter", "each", "drug", "dead", "die", "in_with"})
            or after.said in {"to", "for", "with", "at", "today", "and", "a", "her", "his", "this"}
        )

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
