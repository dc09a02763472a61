"""A message cut into its statements: one verb, its animal and its numbers each.

`weighed 31 4-6, 32 3-15` is two with one verb; a form of several lines is one. A date or a doe said first holds for what follows.
"""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.clauses.going_on import GoingOn
from core.notes.clauses.headings import leading_date, round_date, title_date
from core.notes.clauses.joints import (
    ANIMAL_PLACES,
    BIRTHS,
    HARD,
    NUMBERS,
    ONE_OWN,
    SMALL,
    SMALL_OR_DATE,
    SOFT,
    apart,
    behind_animal,
    goes_to_cage,
    inside,
    nothing_befell,
    parts,
    says_of_its_own,
    tells_of_deaths,
)
from core.notes.clauses.run_on import begins_anew, may_begin
from core.notes.clauses.scene import Scene
from core.notes.clauses.with_days import WELL
from core.notes.slots.dates import Said
from core.notes.slots.items import SIGNS, Item, marks_of, only_signs

#: No verbs, but held for the rest of a list too.
CARRIED: Final = frozenset({"drug", "show_place"})
#: They take no weight: an animal with one behind them has nothing to do with them.
WEIGHTLESS: Final = BIRTHS | {
    "die",
    "lose",
    "step",
    "eat",
    "miss",
    "count",
    "palpate",
    "breed",
    "refuse",
    "box",
    "foster",
    "bite",
    "temper",
    "wean",
}
MOST_STATEMENTS: Final = 250  # not a figure: a whole page of a litter book has fewer


class Cutter(GoingOn):
    """Cuts one message."""

    def cut(self, items: list[Item]) -> list[Clause]:
        """The message's statements, in order."""
        start = 0
        for i, item in enumerate(items):
            if item.sort == "break" or (item.sort == "mark" and item.said in HARD and not inside(items, i)):
                read = self._segment(items[start:i], ends_line=item.sort == "break")
                if len(self.clauses) >= MOST_STATEMENTS:
                    return self._beyond(items[start + read :])
                start = i
                if item.sort == "break":
                    self.line = None
        read = self._segment(items[start:])
        return self._beyond(items[start + read :])

    def _beyond(self, items: list[Item]) -> list[Clause]:
        """The statements, and behind them in one what is more than a message may tell."""
        if not only_signs(items):
            self.clauses.append(Clause(items, self.scene))
            self.clauses[-1].beyond = True
        return self.clauses

    def _segment(self, items: list[Item], *, ends_line: bool = False) -> int:
        """Cut one sentence; how many of its items were cut, all of them unless the message is full."""
        sorts = [item.sort for item in items]
        if SIGNS.issuperset(sorts):
            if self.clauses:
                self.clauses[-1].items.extend(items)
            return len(items)
        leading = self._days_at_its_head(items, ends_line=ends_line) if "date" in sorts else None
        first = True
        anew = False
        start = 0
        for i, item in enumerate(items):
            if (
                item.said in SOFT
                and i > start
                and parts(items, i)
                and not all(each.said in SMALL or each.sort in {"mark", "break"} for each in items[start:i])
            ):
                first = self._chunk(items[start:i], items, start, leading, hard=first, anew=anew)
                start, anew = i, False
            elif (
                i > start + 1
                and (item.marks or item.sort in ANIMAL_PLACES)
                and may_begin(item)
                and begins_anew(items, start, i, self.scene)
            ):
                first = self._chunk(items[start:i], items, start, leading, hard=first, anew=anew)
                start, anew = i, True
            if i == start and len(self.clauses) >= MOST_STATEMENTS:
                return start
        self._chunk(items[start:], items, start, leading, hard=first, anew=anew)
        return len(items)

    def _days_at_its_head(self, items: list[Item], *, ends_line: bool) -> Said | None:
        """The day that a sentence begins with; one that heads more than the sentence is kept for what follows."""
        leading, heads = leading_date(items)
        if heads:
            self.line = leading
        if (ends_line or "chore_word" in items[0].marks) and (title := title_date(items)):
            self.header = title
        if not self.clauses and self.header is None and not heads and (told := round_date(items)):
            self.header = told
        return leading

    def _chunk(self, items: list[Item], sentence: list[Item], start: int, leading: Said | None, *, hard: bool, anew: bool = False) -> bool:
        """Take one piece of a sentence, from `start` on; whether it only heads what follows."""
        marks = marks_of(items)
        last = self.clauses[-1] if self.clauses and not self.clauses[-1].overfull() else None
        if last is not None and not hard and not anew and self._rambles_on(last, items, marks):
            self._extend(last, items)
            return False
        opens = marks & self.opens
        rest = sentence[start:]
        anew = anew or (last is not None and not hard and apart(last, items, marks, self.opens))
        if not hard and (weighed := self._weighed_before(items, marks)) is not None:
            self._extend(weighed, items)
            return False
        birth = self._birth_told_on(items, marks)
        if birth is not None and not anew:
            self._extend(birth, items)
            return False
        if hard and all(item.sort in {"date", "mark", "break"} or item.said in SMALL_OR_DATE for item in items):
            return self._date_alone(items, rest, last)
        if last is not None and not anew and not self._dated_anew(last, items, opens, hard=hard):
            felt = "palpate" in last.virtual and opens <= {"breed"} and not any(item.sort in NUMBERS for item in items)
            if opens and last.virtual and not hard and not felt and not self._has_value_said(last):
                self._said_at_last(last, items)
                return False
            if self._continues(last, items, rest, marks, hard=hard):
                self._extend(last, items)
                return False
        self._open(items, rest, opens, last, leading, hard=hard, anew=anew)
        return False

    def _said_at_last(self, last: Clause, items: list[Item]) -> None:
        """`14 palpated bred; 9, box in`: the animal took up no verb of the list, it has its own."""
        last.virtual = frozenset()
        last.marks = marks_of(last.items)
        self._extend(last, items)

    def _date_alone(self, items: list[Item], rest: list[Item], last: Clause | None) -> bool:
        tells = len(rest) > len(items) and (bool(self._opens(rest)) or self._begins_with_animal(rest, last, hard=True))
        if last is not None and last.marks & self.opens and not last.dates() and last.header is None and not tells:
            self._extend(last, items)
            return False
        days = [item for item in items if item.sort == "date"]
        if len(days) > 1:
            self.two_days = days
            return False
        self.header = days[0].value if days else self.header
        return tells

    def _extend(self, clause: Clause, items: list[Item]) -> None:
        clause.items.extend(items)
        clause.marks = marks_of(items, clause.marks)

    def _open(
        self,
        items: list[Item],
        rest: list[Item],
        opens: frozenset[str],
        last: Clause | None,
        leading: Said | None,
        *,
        hard: bool,
        anew: bool = False,
    ) -> None:
        items, self.two_days = [*self.two_days, *items], []
        felt = (
            last is not None
            and "palpate" in last.marks
            and opens == {"breed"}
            and not any(item.said in {"to", "x", "with"} for item in items)
        )
        listed = not anew and last is not None and (not opens or felt) and self._begins_with_animal(rest, last, hard=hard)
        virtual = self._verbs_taken_up(items, last, hard=hard) if listed and last is not None else frozenset()
        clause = Clause(items, self.scene, last, virtual)
        clause.header = leading or self.line or self.header
        if last is not None:
            self._day_taken_up(clause, last, hard=hard)
        if last is not None and (listed or (opens & last.marks and self._begins_with_animal(rest, last, hard=hard))):
            dates = [i for i in last.dates() if not self._day_of_its_own(last, i, items)]
            clause.header = clause.header or (last.items[dates[0]].value if dates else last.header)
        self.clauses.append(clause)

    def _verbs_taken_up(self, items: list[Item], last: Clause, *, hard: bool) -> frozenset[str]:
        """`weighed 31 4-6, 32 3-15`: the verbs that a further animal of a list takes from the one before it."""
        virtual = last.marks & (self.opens | CARRIED) - ({"breed"} if "palpate" in last.marks else set())
        if not WELL.isdisjoint([item.said for item in items]):
            virtual = frozenset()  # "biscuit fine" behind any list
        elif "in_with" in marks_of(items) and self._put_to_a_buck(items):
            virtual = frozenset()  # "14 kindled 5", and below it "Flint in with 15"
        elif nothing_befell(last):
            virtual = virtual - ONE_OWN
        elif "die" in virtual and "die" not in last.virtual and not tells_of_deaths(last):
            virtual = virtual - {"die"}
        if hard and not virtual.isdisjoint(ONE_OWN) and says_of_its_own(items):
            virtual = virtual - ONE_OWN  # "12 lost one", and below it "16s crew all good, 5"
        if virtual & WEIGHTLESS and any(item.sort in {"weight", "pair"} or goes_to_cage(items, i) for i, item in enumerate(items)):
            virtual = virtual - WEIGHTLESS  # "doe 14 kindled 6. R21 5 lb 2"
        return virtual

    def _day_taken_up(self, clause: Clause, last: Clause, *, hard: bool) -> None:
        """The day of the statement before holds for `him` or `her` in the same sentence, and behind a semicolon."""
        if clause.header is not None or not last.dates() or clause.dates():
            return
        pronoun = not hard and any("pronoun" in item.marks for item in clause.items)
        if pronoun or (clause.items[0].said == ";" and not self._has_animal(clause)):
            clause.header = last.items[last.dates()[0]].value

    @staticmethod
    def _day_of_its_own(last: Clause, i: int, items: list[Item]) -> bool:
        """Whether a day of the statement before is that of its animal alone: when she is due, or until when."""
        return last.told_due(i) or (items[0].sort == "break" and behind_animal(last, i)) or bool(i and "until" in last.items[i - 1].marks)


def statements(items: list[Item], scene: Scene, opens: frozenset[str]) -> list[Clause]:
    """The statements of a message."""
    return Cutter(scene, opens).cut(items)
