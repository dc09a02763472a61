"""Whether a piece goes on with the statement before it, or begins one of its own: one case after the other."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.clauses.holdings import Holdings
from core.notes.clauses.joints import (
    BEFORE_ANIMAL,
    BIRTHS,
    NUMBERS,
    SHORT,
    SOFT,
    VALUES,
    WEATHER,
    apart,
    counts_kits,
    degrees_apart,
    degrees_only,
    describes,
    figures,
    left_over,
    more_cages,
    names_sire,
    nothing_befell,
    of_the_weather,
    only_cause,
    only_result,
    tells_of_itself,
    treats,
)
from core.notes.slots.items import Item

#: Words that may begin a new statement without a verb, and words behind which others may.
TURNING: Final = frozenset({"put", "in_with", "tentative", "negation"})
TURNED: Final = frozenset({"refuse", "ail"})
WORDS_AND_MARKS: Final = frozenset({"word", "mark"})
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
    "palpate": frozenset({"count", "open", "pregnant", "unsure", "palpate", "miss"}),
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
SEX_MARKS: Final = frozenset({"buck_word", "doe_word"})


class GoingOn(Holdings):
    """Whether a piece goes on with the statement before it, or begins one of its own: one case after the other."""

    def _rambles_on(self, last: Clause, items: list[Item], marks: frozenset[str]) -> bool:
        """Whether a piece is words of no barn's verb, guess, animal or number: most of a long story, and quickly passed."""
        return (
            marks.isdisjoint(self.opens)
            and marks.isdisjoint(TURNING)
            and last.marks.isdisjoint(TURNED)
            and WORDS_AND_MARKS.issuperset([item.sort for item in items])
            and any(item.said not in BEFORE_ANIMAL for item in items)
            and not apart(last, items, marks, self.opens)
        )

    def _dated_anew(self, last: Clause, items: list[Item], opens: frozenset[str], *, hard: bool) -> bool:
        """`1 kit lost 19 Nov; 1 kit lost 22 Nov`: a day of its own behind a statement that has one already."""
        return (
            hard
            and bool(opens)
            and bool(last.marks & self.opens)
            and bool(last.dates())
            and self._has_value(last)
            and any(item.sort == "date" and "due" not in items[i - 1].said for i, item in enumerate(items))
        )

    def _weighed_before(self, items: list[Item], marks: frozenset[str]) -> Clause | None:
        """`I weighed 33 and I know I'm not supposed to have favorites, but three pounds twelve`: the weight behind an aside."""
        if len(self.clauses) < 2 or "tentative" not in self.clauses[-1].marks:  # not a figure: the weighing and the aside
            return None
        weighing, aside = self.clauses[-2:]
        if not (marks & self.opens or aside.marks & self.opens or aside.placed(VALUES) or aside.holds("animal", "code")):
            sorts = {item.sort for item in items}
            lacks = "weigh" in weighing.marks and not weighing.holds("weight", "pair")
            return weighing if lacks and sorts & {"weight", "pair"} and sorts.isdisjoint({"animal", "code"}) else None
        return None

    def _birth_told_on(self, items: list[Item], marks: frozenset[str]) -> Clause | None:
        """The birth told of a moment ago, where a piece only adds how many of its kits live or are dead."""
        if not self.clauses or not (marks & self.opens) <= {"die"} or all(clause.marks.isdisjoint(BIRTHS) for clause in self.clauses[-3:]):
            return None
        if NUMBERS.isdisjoint([item.sort for item in items]):
            return None
        rest_of_them = next((items[i + 1 : i + 3] for i, item in enumerate(items) if item.sort == "num"), [])
        of_them = [item.said for item in rest_of_them] in (["of", "them"], ["of", "those"], ["of", "em"])
        if not (of_them or marks & {"dead", "alive", "nest_place"}):
            return None
        if self._has_animal(Clause([item for item in items if item.sort != "num"], self.scene)):
            return None
        births = [
            clause
            for clause in self.clauses[-3:]
            if clause.marks & BIRTHS
            and (
                any(item.sort in NUMBERS for item in clause.items) == (of_them or bool(marks & {"dead", "alive"}))
                or (of_them and not any(item.sort in NUMBERS for item in clause.items))
                or marks >= {"dead", "nest_place"}
            )
        ]
        return (
            births[-1]
            if births and len(births) == 1 and births[0] is not self.clauses[-1] and not self._has_numbers(self.clauses[-1])
            else None
        )

    def _continues(self, last: Clause, items: list[Item], rest: list[Item], marks: frozenset[str], *, hard: bool) -> bool:
        """Whether a piece goes on with the statement before it."""
        had, opens = last.marks & self.opens, marks & self.opens
        begins = self._begins_with_animal(rest, last, hard=hard) and not (
            had & BIRTHS
            and (counts_kits(items) or self._buck_number(rest) or names_sire(items) or (not hard and self._count_alone(last, items)))
        )
        told = (
            self._line_continues(last, items, marks, had, opens, begins=begins)
            if hard
            else self._aside_continues(last, items, marks, had, opens)
        )
        if told is not None:
            return told
        if last.marks & {"buy", "purchase"} and left_over(items) and self._has_numbers(last):
            return False  # "bought 3 bags at 19.25, 190 lb left"
        if "palpate" in had and opens == {"breed"} and all(item.sort in {"word", "mark", "date", "break"} for item in items):
            return True  # "palpated 9, bred" tells how she felt
        if opens == {"tag"} and not hard and not last.marks.isdisjoint(SEX_MARKS) and not self._has_animal(last):
            return True  # "a friend gave me a doe, tag 46, New Zealand"
        if opens:
            return self._verb_continues(last, items, rest, had, opens, begins=begins, hard=hard)
        if begins:
            return self._animal_continues(last, items, had, hard=hard)
        return not hard or self._words_continue(last, items, rest, had)

    def _aside_continues(
        self, last: Clause, items: list[Item], marks: frozenset[str], had: frozenset[str], opens: frozenset[str]
    ) -> bool | None:
        """The same of a piece in mid sentence, where its words alone settle it."""
        if "breed" in opens and not had and "open" in last.items[-1].marks and items[0].said in {"so", "and"} and self._has_animal(last):
            return False  # "Biscuit is open so I bred her to Moss"
        if "refuse" in had and any("put" in item.marks for item in items) and any("in_with" in item.marks for item in items):
            return False  # "... so I put her in with Moss"
        if more_cages(last, items):
            return True
        if "ail" in last.marks and self._has_animal(last) and treats(items):
            return False  # "Moss has sore hocks so I put some salve on him"
        if had and marks >= {"put", "in_with"} and self._put_to_a_buck(items):
            return False  # "Thistle's five got weaned, then I put 15 in with Flint"
        if not had and not last.marks.isdisjoint(WEATHER) and degrees_only(items):
            return True  # "cold one tonight, they say down to 18"
        return None

    def _line_continues(
        self, last: Clause, items: list[Item], marks: frozenset[str], had: frozenset[str], opens: frozenset[str], *, begins: bool
    ) -> bool | None:
        """The same of a sentence or a line, where its words alone settle it."""
        anew = items[0].sort == "break"
        if begins and anew and last.items[0].said in SOFT and not self._has_animal(last):
            return False  # "9 - day 28, box in", and another animal's line below it
        if anew and "done" in opens and "done" in had and self._chore_told(last):
            return False  # two chores, a line each
        if begins and anew and "box" in had and "box" not in opens and "kits" in marks and self._has_animal(last):
            return False  # a box for one doe, and another's kits below it
        if begins and (nothing_befell(last) or (anew and not self._has_animal(last) and self._has_numbers(last))):
            return False  # "nothing dead. 14 due", "feed 140 lb left", and an animal's line below it
        if begins and self._tells_plainly(last):
            return False  # "22 ok", and another animal's line below it
        return False if of_the_weather(last, items) or degrees_apart(last, items) else None

    def _animal_continues(self, last: Clause, items: list[Item], had: frozenset[str], *, hard: bool) -> bool:
        """Whether a piece that begins with an animal, and has no verb, goes on with the statement before it."""
        if "tag" in had and not any(item.sort == "code" or (item.sort == "animal" and not item.value.tags) for item in last.items):
            return True
        if hard and "tentative" in last.marks and self._has_animal(last):
            return False  # "may replace buck 5 next year. Doe 15 not bred"
        told = had or hard or tells_of_itself(items)
        if not hard and self._done_for_another(last, had):
            return False
        return not (told and self._has_animal(last) and self._has_value(last, listing=not hard))

    def _words_continue(self, last: Clause, items: list[Item], rest: list[Item], had: frozenset[str]) -> bool:
        """Whether a sentence or line without verb and animal goes on with the statement before it."""
        if "palpate" in had and only_result(last, items):
            return True
        if last.marks & {"lose", "fewer", "dead", "die", "took_kits"} and last.marks & {"kits", "litter"} and only_cause(items):
            return True
        if "new" in had and describes(items):
            return True
        label = all(item.sort in {"word", "mark"} for item in items) and rest[len(items) : len(items) + 2]
        numbers = any(item.sort in NUMBERS for item in [*items, *(label or [])]) or any(
            item.marks & {"alive", "dead", "born", "bucks_word", "does_word", "each", "dq", "not_dq"} for item in items
        )
        plain = sum(1 for item in items if item.sort == "word" and not item.marks)
        form = any(item.said in {":", "="} for item in items[1:3])
        return (numbers and plain <= SHORT and bool(had or self._has_animal(last))) or (form and bool(had))

    def _verb_continues(
        self, last: Clause, items: list[Item], rest: list[Item], had: frozenset[str], opens: frozenset[str], *, begins: bool, hard: bool
    ) -> bool:
        """Whether a piece with a verb of the barn goes on with the statement before it."""
        named = any(
            item.sort in {"animal", "code"} or (item.sort == "num" and Clause(items, self.scene).known(i)) for i, item in enumerate(items)
        )
        if opens <= {"die", "lose"} and not named and not hard and not had and self._has_animal(last):
            return not (opens == {"lose"} and "kits" in last.marks and figures(items) and self._nurses(last))  # "12 - 7 kits, lost 1"
        if not hard and not had and items[0].said in {"and", "&", ","} and self._only_animals(last):
            return True  # "31, 32 and 33: weights 4-1, 4-2, 4-0"
        if not had:
            return self._first_verb_continues(last, items, opens, begins=begins, hard=hard)
        if hard and opens & had and self._has_animal(last) and self._has_animal(Clause(rest, self.scene)):
            return False
        if had & {"die", "lose"} and any(item.said == "cause" for item in items[:3]):
            return True
        if "skip" in had or ("plan" in had and items[0].said in {"because", "since", "cause", "cuz"}):
            return True
        if hard and self._has_animal(last) and self._has_value(last) and self._has_animal(Clause(rest, self.scene)):
            return False
        if begins and not hard and not opens & had and self._done_for_another(last, had):
            return False  # "scrubbed her tray, and then Biscuit bit"
        if begins:
            listed = not hard and self._ends_with_animal(last) and items[0].said in {"and", "&", ","} and not self._has_value(last)
            return listed or (not self._has_animal(last) and not self._has_value(last))
        if self._tells_more(last, items, had, opens, named=named):
            return True
        if (
            named
            and self._has_animal(last)
            and (opens & {"plan"} or ("list" in had and "sell" in opens - had) or ("sell" in had and "give" in opens - had))
        ):
            return False
        absorbed = frozenset().union(*(ABSORBED.get(mark, frozenset()) for mark in had))
        if opens <= absorbed | (had if not self._has_value(last) else frozenset()):
            return True
        return hard and not self._has_animal(last) and bool(opens & had)

    def _first_verb_continues(self, last: Clause, items: list[Item], opens: frozenset[str], *, begins: bool, hard: bool) -> bool:
        """The same, where the statement before has no verb yet."""
        if not hard and begins and self._has_animal(last) and self._has_value(last):
            return False
        if "kindle" in opens and not any(item.sort in NUMBERS for item in items) and not hard and not begins:
            return True
        return not self._has_numbers(last) and (not hard or (self._has_animal(last) and len(last.items) <= SHORT // 2 + 1))

    def _tells_more(self, last: Clause, items: list[Item], had: frozenset[str], opens: frozenset[str], *, named: bool) -> bool:
        """How many of a birth live, what they died of: of the same litter or animal, with a verb of its own."""
        numbers = any(item.sort in NUMBERS for item in items)
        if opens <= {"die", "lose"} and not named and not numbers:
            return True
        if had & {"die", "lose", "eat", "step"} and not named and any(mark.startswith("cause:") for item in items for mark in item.marks):
            return True
        if had & BIRTHS and numbers and not self._has_numbers(last) and any(item.marks & {"born", "alive"} for item in items):
            return True
        return "kindle" in opens and had <= {"die", "lose", "count", "newborn", "had"} and not numbers
