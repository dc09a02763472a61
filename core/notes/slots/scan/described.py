"""Animals told by what they look like: `the opal doe`, `the black doe out of Juno`."""

from __future__ import annotations

from typing import Final

from core.notes.slots.animals import Mention
from core.notes.slots.items import NO_MARKS
from core.notes.slots.scan.base import Scanned

OWNED_SEX: Final = frozenset({"doe's", "buck's"})
SIZES: Final = frozenset({"little", "big", "old", "young", "pretty", "poor", "sweet", "dear", "new"})
#: What is told of an animal that was described, not of one that is new.
OF_A_DOE: Final = frozenset(
    {"step", "lose", "eat", "kindle", "bite", "refuse", "miss", "die", "manners", "palpate", "temper", "temper:bad"}
)


class Described(Scanned):
    """Animals told by what they look like: `the opal doe`, `the black doe out of Juno`."""

    def _description(self, sex: str) -> bool:
        """`the opal doe`: the colour and breed said just before, where one living animal fits."""
        back = len(self.items)
        color = breed = None
        while back and self.items[back - 1].marks & {"color", "breed_name"} and self.items[back - 1].value:
            item = self.items[back - 1]
            color = color or (item.value[0] if "color" in item.marks else None)
            breed = breed or (item.value[1] if "breed_name" in item.marks and "color" not in item.marks else None)
            back -= 1
        while 1 < back < len(self.items) and self.items[back - 1].said in SIZES:
            back -= 1
        led = back and self.items[back - 1].said in {"the", "that", "our", "my", "my only", "this"}
        if back == len(self.items) or not (led or self._heads(back)) or self._said_of_newcomer(back):
            return False
        if self._key(self.at + 1) in {"from", "out"} and color is None:
            return False
        tags = self.herd.described(color, breed, sex)
        end = self.at + 1
        if len(tags) > 1 and (bred_by := self._born_to(tags)):
            tags, end = bred_by
        if not led and len(tags) != 1:
            return False
        start = self.items[back].start
        said = " ".join(token.text for token in self.tokens[start:end])
        del self.items[back:]
        unit = "possessive" if self.tokens[end - 1].text in OWNED_SEX else ""
        self._add("animal", end, Mention(tags, said, sex))
        self.items[-1].start, self.items[-1].unit = start, unit
        return True

    def _born_to(self, tags: tuple[str, ...]) -> tuple[tuple[str, ...], int] | None:
        """`the black doe out of Juno`: of several that fit, the one of that parent, and where the words end."""
        at = self.at + 1
        for lead in (("out", "of"), ("by",), ("from",)):
            if tuple(self._key(at + n) for n in range(len(lead))) == lead:
                parent = self.herd.parent(self._key(at + len(lead)))
                kids = tuple(tag for tag in tags if parent is not None and self.herd.is_child(tag, parent))
                return (kids, at + len(lead) + 1) if len(kids) == 1 else None
        return None

    def _said_of_newcomer(self, back: int) -> bool:
        """`Bruno is my californian buck`: what somebody that the book does not know is, and no animal of it."""
        if back <= 2 or self.items[back - 1].said not in {"my", "our"} or self.items[back - 2].said != "is":
            return False
        who = self.items[back - 3]
        return who.sort == "code" or (who.sort == "word" and not who.marks)

    def _heads(self, back: int) -> bool:
        """`red doe sat on a kit`: a description at the head of a message, and what befell her right behind it."""
        if back:
            return False
        word = self._key(self.at + 1)
        longer = self.lexicon.longer.get(word, {}).get(self._key(self.at + 2), ())
        marks = self.lexicon.single.get(word, NO_MARKS).union(*(marks for _, marks in longer))
        return not marks.isdisjoint(OF_A_DOE)
