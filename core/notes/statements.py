"""A message cut into its statements: one verb, its animal and its numbers each.

`weighed 31 4-6, 32 3-15` is two with one verb; a form of several lines is one. A date or a doe said first holds for what follows.

Over 300 lines: where one statement ends and the next begins, one case after the other.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from core.notes.clause import Clause, Scene
from core.notes.dates import Said
from core.notes.items import Item

HARD: Final = frozenset({".", ";", "!", "?", "|", "~"})
SOFT: Final = frozenset(
    {
        ",",
        "and",
        "but",
        "so",
        "then",
        "also",
        "plus",
        "while",
        "&",
        "because",
        "cause",
        "cuz",
        "since",
        "although",
        "though",
        "and then",
        "-",
        "/",
    }
)
#: Behind `so` they tell how much, not what follows from it.
DEGREES: Final = frozenset(
    {
        "many",
        "much",
        "far",
        "few",
        "good",
        "bad",
        "big",
        "small",
        "tiny",
        "cold",
        "hot",
        "mean",
        "long",
        "little",
        "nice",
        "well",
        "fat",
        "thin",
        "sweet",
        "gentle",
        "calm",
        "cute",
        "hard",
    }
)
NUMBERS: Final = frozenset({"num", "weight", "pair", "clock", "money", "temp", "span", "dose", "cup", "sum", "percent"})
SMALL: Final = frozenset(
    {
        ",",
        ":",
        "-",
        "(",
        ")",
        "and",
        "so",
        "then",
        "also",
        "but",
        "the",
        "ok",
        "well",
        "plus",
        "=",
        "&",
        "/",
        '"',
        "'",
        "...",
        "~",
        "while",
        "because",
        "since",
    }
)
BIRTHS: Final = frozenset({"kindle", "had", "litter_born"})
BESIDE: Final = 5  # items: as far as a number is looked at with what follows it
SHORT: Final = 6  # words: a sentence without a verb of the barn that is longer stands on its own

#: What a verb takes as its own: `kindled 8, lost 2` is one birth.
ABSORBED: Final[Mapping[str, frozenset[str]]] = {
    "kindle": frozenset({"die", "lose", "count", "had", "litter_born", "froze"}),
    "had": frozenset({"die", "lose", "litter_born", "froze", "count"}),
    "lose": frozenset({"count", "die", "cold", "cause", "froze", "lose", "eat", "step"}),
    "step": frozenset({"die", "lose", "step"}),
    "eat": frozenset({"die", "lose", "eat"}),
    "die": frozenset({"cause", "lose", "froze", "die"}),
    "breed": frozenset({"falls", "breed"}),
    "cull": frozenset({"weigh", "cull", "dress"}),
    "treat": frozenset({"withdrawal", "treat"}),
    "wean": frozenset({"count", "litter_weight"}),
    "new": frozenset({"buy", "purchase", "sell", "give", "given", "tag", "new", "trait", "plan"}),
    "tag": frozenset({"color_is"}),
    "list": frozenset({"ask", "list", "plan", "sell"}),
    "sell": frozenset({"sell", "buy", "give"}),
    "palpate": frozenset({"open", "pregnant", "unsure", "palpate", "miss"}),
    "buy": frozenset({"feed_left", "buy"}),
    "bite": frozenset({"temper"}),
    "fault": frozenset({"fault", "dq"}),
    "feed": frozenset({"ration"}),
    "ration": frozenset({"feed", "ration"}),
    "weigh": frozenset({"weigh"}),
    "show": frozenset({"show"}),
    "remind": frozenset({"done", "weigh", "breed", "palpate", "box", "wean", "move", "clean", "treat", "plan", "tag", "buy", "show", "remind", "feed", "sell"}),
    "foster": frozenset({"foster", "move"}),
    "fostered": frozenset(),
}  # fmt: skip


class Cutter:
    """Cuts one message."""

    def __init__(self, scene: Scene, opens: frozenset[str]) -> None:
        self.scene = scene
        self.opens = opens
        self.clauses: list[Clause] = []
        self.header: Said | None = None

    def cut(self, items: list[Item]) -> list[Clause]:
        """The message's statements, in order."""
        start = 0
        for i, item in enumerate(items):
            if item.sort == "break" or (item.sort == "mark" and item.said in HARD and not _inside(items, i)):
                self._segment(items[start:i])
                start = i
        self._segment(items[start:])
        return self.clauses

    def _segment(self, items: list[Item]) -> None:
        if not any(item.sort not in {"mark", "break"} for item in items):
            if self.clauses:
                self.clauses[-1].items.extend(items)
            return
        leading = self._leading_date(items)
        first = True
        start = 0
        for i in range(len(items)):
            if i > start and _parts(items, i) and not all(each.said in SMALL or each.sort in {"mark", "break"} for each in items[start:i]):
                self._chunk(items[start:i], items[start:], leading, hard=first)
                first, start = False, i
        self._chunk(items[start:], items[start:], leading, hard=first)

    @staticmethod
    def _leading_date(items: list[Item]) -> Said | None:
        """A date said first holds for the whole sentence."""
        for item in items:
            if item.said in SMALL or item.said in {"on", "bred", "sat"}:
                continue
            return item.value if item.sort == "date" else None
        return None

    def _chunk(self, items: list[Item], rest: list[Item], leading: Said | None, *, hard: bool) -> None:
        """One piece of a sentence; `rest` is the sentence from there on."""
        opens = self._opens(items)
        last = self.clauses[-1] if self.clauses else None
        birth = self._birth_told_on(items, opens)
        if birth is not None:
            self._extend(birth, items)
            return
        if hard and all(item.sort in {"date", "mark", "break"} or item.said in SMALL | {"date"} for item in items):
            self._date_alone(items, last)
            return
        if last is not None and self._continues(last, items, rest, opens, hard=hard):
            self._extend(last, items)
            return
        self._open(items, rest, opens, last, leading, hard=hard)

    def _birth_told_on(self, items: list[Item], opens: frozenset[str]) -> Clause | None:
        """The birth told of a moment ago, where a piece only adds how many of its kits live or are dead."""
        if opens - {"die"} or not any(item.sort in NUMBERS for item in items) or not any(item.marks & {"dead", "alive"} for item in items):
            return None
        if self._has_animal(Clause([item for item in items if item.sort != "num"], self.scene)):
            return None
        births = [clause for clause in self.clauses[-3:] if clause.marks & BIRTHS and any(item.sort in NUMBERS for item in clause.items)]
        return (
            births[-1]
            if births and len(births) == 1 and births[0] is not self.clauses[-1] and not self._has_numbers(self.clauses[-1])
            else None
        )

    def _date_alone(self, items: list[Item], last: Clause | None) -> None:
        if last is not None and last.marks & self.opens and not last.dates():
            self._extend(last, items)
            return
        self.header = next((item.value for item in items if item.sort == "date"), self.header)

    def _opens(self, items: list[Item]) -> frozenset[str]:
        found: set[str] = set()
        for item in items:
            if item.marks:
                found.update(item.marks & self.opens)
        return frozenset(found)

    def _continues(self, last: Clause, items: list[Item], rest: list[Item], opens: frozenset[str], *, hard: bool) -> bool:
        had = last.marks & self.opens
        begins = self._begins_with_animal(rest, last, hard=hard) and not (
            had & BIRTHS and (_counts_kits(items) or self._buck_number(rest) or _names_sire(items))
        )
        if "palpate" in had and opens == {"breed"} and all(item.sort in {"word", "mark", "date", "break"} for item in items):
            return True  # "palpated 9, bred" tells how she felt
        if opens:
            return self._verb_continues(last, items, rest, had, opens, begins=begins, hard=hard)
        if (
            begins
            and "tag" in had
            and not any(item.sort == "code" or (item.sort == "animal" and not item.value.tags) for item in last.items)
        ):
            return True
        if begins:
            return not ((had or hard) and self._has_animal(last) and self._has_value(last, listing=not hard))
        if not hard:
            return True
        if last.marks & {"lose", "fewer", "dead", "die", "took_kits"} and last.marks & {"kits", "litter"} and _only_cause(items):
            return True
        if "new" in had and _describes(items):
            return True
        numbers = any(item.sort in NUMBERS for item in items) or any(
            item.marks & {"alive", "dead", "born", "bucks_word", "does_word", "each", "dq", "not_dq"} for item in items
        )
        plain = sum(1 for item in items if item.sort == "word" and not item.marks)
        form = any(item.said in {":", "="} for item in items[1:3])
        return (numbers and plain <= SHORT and bool(had or self._has_animal(last))) or (form and bool(had))

    def _verb_continues(
        self, last: Clause, items: list[Item], rest: list[Item], had: frozenset[str], opens: frozenset[str], *, begins: bool, hard: bool
    ) -> bool:
        named = any(
            item.sort in {"animal", "code"} or (item.sort == "num" and Clause(items, self.scene).known(i)) for i, item in enumerate(items)
        )
        if opens <= {"die", "lose"} and not named and not hard and not had and self._has_animal(last):
            return True
        if not had:
            alone = not self._has_numbers(last)
            if "kindle" in opens and not any(item.sort in NUMBERS for item in items) and not hard and not begins:
                return True
            return alone and (not hard or (self._has_animal(last) and len(last.items) <= SHORT // 2 + 1))
        if hard and opens & had and self._has_animal(last) and self._has_animal(Clause(rest, self.scene)):
            return False
        if had & {"die", "lose"} and any(item.said == "cause" for item in items[:3]):
            return True
        if "skip" in had or ("plan" in had and items[0].said in {"because", "since", "cause", "cuz"}):
            return True
        if hard and self._has_animal(last) and self._has_value(last) and self._has_animal(Clause(rest, self.scene)):
            return False
        if begins:
            return not self._has_animal(last) and not self._has_value(last)
        if opens <= {"die", "lose"} and not named and not any(item.sort in NUMBERS for item in items):
            return True
        if had & {"die", "lose", "eat", "step"} and not named and any(mark.startswith("cause:") for item in items for mark in item.marks):
            return True
        if (
            had & BIRTHS
            and not self._has_numbers(last)
            and any(item.marks & {"born", "alive"} for item in items)
            and any(item.sort in NUMBERS for item in items)
        ):
            return True
        if "kindle" in opens and had <= {"die", "lose", "count", "newborn", "had"} and not any(item.sort in NUMBERS for item in items):
            return True
        if named and self._has_animal(last) and (opens & {"plan"} or ("list" in had and "sell" in opens - had)):
            return False
        absorbed = frozenset().union(*(ABSORBED.get(mark, frozenset()) for mark in had))
        if opens <= absorbed | (had if not self._has_value(last) else frozenset()):
            return True
        return hard and not self._has_animal(last) and bool(opens & had)

    def _has_numbers(self, clause: Clause) -> bool:
        mentions = 0
        for i, item in enumerate(clause.items):
            if item.sort in NUMBERS and not (item.spoken and item.value == 1) and clause.said(i + 1) != "of":
                if item.sort == "num" and mentions == 0 and clause.known(i):
                    mentions += 1
                    continue
                return True
        return False

    def _has_animal(self, clause: Clause) -> bool:
        return any(
            item.sort in {"animal", "code"} or (item.sort == "num" and not clause.counted(i) and clause.known(i) is not None)
            for i, item in enumerate(clause.items)
        )

    def _has_value(self, clause: Clause, *, listing: bool = False) -> bool:
        """Whether the statement says something of its animal already; in a list further animals are nothing said."""
        seen = False
        for i, item in enumerate(clause.items):
            if (
                listing
                and seen
                and item.sort == "num"
                and clause.said(i - 1) in {",", "and", "&"}
                and clause.known(i) is not None
                and not clause.counted(i)
            ):
                continue
            if not seen and (item.sort in {"animal", "code"} or (item.sort == "num" and clause.known(i) is not None)):
                seen = True
            elif (
                item.sort in NUMBERS
                or item.sort == "cage"
                or (
                    seen
                    and item.marks - {"negation", "pronoun", "to", "from", "question", "all", "none"}
                    and not item.marks & {"doe_word", "buck_word", "kits"}
                    and item.said not in SMALL
                )
                or (seen and item.said == "+")
            ):
                return True
        return False

    def _begins_with_animal(self, items: list[Item], last: Clause | None, *, hard: bool) -> bool:
        """Whether a piece starts with an animal of its own, and says something of it."""
        for i, item in enumerate(items):
            if (
                item.said in SMALL
                or item.said in HARD
                or item.sort in {"date", "break"}
                or (item.said in {"doe", "buck", "tag", "on"} and i < len(items) - 1)
            ):
                continue
            if item.sort in {"animal", "code"}:
                return len(items) - i > 1 or hard
            if item.sort != "num":
                return False
            beside = Clause(items[i : i + BESIDE], self.scene, None, last.marks if last else frozenset())
            return beside.known(0) is not None and not beside.counted(0) and any(after.said not in SMALL for after in items[i + 1 :])
        return False

    def _buck_number(self, items: list[Item]) -> bool:
        """Whether a bare number that begins a piece is only a buck's: behind a birth it counts kits."""
        first = next((item for item in items if item.said not in SMALL and item.sort != "break"), None)
        if first is None or first.sort != "num":
            return False
        animal = Clause([first], self.scene).known(0)
        return animal is not None and animal.sex == "buck" and any(item.marks & {"dead", "alive"} for item in items)

    def _extend(self, clause: Clause, items: list[Item]) -> None:
        clause.items.extend(items)
        clause.marks = clause.marks.union(*(item.marks for item in items))

    def _open(
        self, items: list[Item], rest: list[Item], opens: frozenset[str], last: Clause | None, leading: Said | None, *, hard: bool
    ) -> None:
        virtual: frozenset[str] = frozenset()
        felt = (
            last is not None
            and "palpate" in last.marks
            and opens == {"breed"}
            and not any(item.said in {"to", "x", "with"} for item in items)
        )
        listed = last is not None and (not opens or felt) and self._begins_with_animal(rest, last, hard=hard)
        if listed and last is not None:
            virtual = last.marks & self.opens
        clause = Clause(items, self.scene, last, virtual)
        clause.header = leading or self.header
        if (
            clause.header is None
            and not hard
            and last is not None
            and last.dates()
            and not clause.dates()
            and any("pronoun" in item.marks for item in items)
        ):
            clause.header = last.items[last.dates()[0]].value
        if last is not None and (listed or (opens & last.marks and self._begins_with_animal(rest, last, hard=hard))):
            dates = last.dates()
            clause.header = clause.header or (last.items[dates[0]].value if dates else last.header)
        self.clauses.append(clause)


def _only_cause(items: list[Item]) -> bool:
    """`. hawk.`: nothing but what they died of."""
    told = [
        item
        for item in items
        if item.sort not in {"mark", "break"} and item.said not in SMALL | {"a", "an", "by", "it", "was", "probably", "maybe"}
    ]
    return bool(told) and all(any(mark.startswith("cause:") for mark in item.marks) for item in told)


DETAILS: Final = frozenset({"name_word", "born_word", "buck_word", "doe_word", "breed_name", "color", "sire", "dam_word"})


def _describes(items: list[Item]) -> bool:
    """`. Buck. New Zealand, white. Name Duke. Born 5/2/2026.`: details of the newcomer before."""
    told = [item for item in items if item.sort not in {"mark", "break"} and item.said not in SMALL]
    return bool(told) and bool(told[0].marks & DETAILS) and len(told) <= SHORT


def _counts_kits(items: list[Item]) -> bool:
    """`2 dead` behind a birth counts kits, whoever has the tag 2."""
    told = [item for item in items if item.said not in SMALL]
    return len(told) > 1 and told[0].sort == "num" and bool(told[1].marks & {"dead", "alive"})


def _names_sire(items: list[Item]) -> bool:
    """`, buck 3` behind a birth only says whose kits they are."""
    told = [item for item in items if item.said not in SMALL]
    return len(told) == 1 and told[0].sort == "animal" and told[0].value.sex == "buck"


def _parts(items: list[Item], i: int) -> bool:
    """Whether a comma, an `and` or a dash may part two statements; `so sweet` may not."""
    item = items[i]
    if item.said not in SOFT or (item.said == "so" and i + 1 < len(items) and items[i + 1].said in DEGREES):
        return False
    return item.sort != "mark" or item.said in {",", "&", "/"} or (item.said == "-" and not item.glued)


def _inside(items: list[Item], i: int) -> bool:
    """Whether a dot belongs to a short form (`lb.`, `no.`), a mark to what follows (`palp ? not sure`), rather than to the end of a sentence."""
    if items[i].said == "?" and i + 1 < len(items) and "unsure" in items[i + 1].marks:
        return True
    if items[i].said != "." or i == 0:
        return False
    before = items[i - 1]
    if before.said in {"b", "dob"} and i + 1 < len(items) and items[i + 1].sort == "date":
        return True
    if before.said in {"no", "mr", "mrs", "dr", "approx", "vs", "wt", "wts"} and i + 1 < len(items):
        return before.said != "no"
    return False


def statements(items: list[Item], scene: Scene, opens: frozenset[str]) -> list[Clause]:
    """The statements of a message."""
    return Cutter(scene, opens).cut(items)
