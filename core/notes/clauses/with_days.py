"""When a statement's facts happened, or are to happen, and the weights beside them."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.with_subject import WithSubject
from core.notes.slots.dates import Days, Said, days_of
from core.notes.slots.items import Item, pair_grams

PAST: Final = "past"
PLAN: Final = "plan"
WELL: Final = frozenset({"fine", "ok", "okay", "great", "healthy", "normal", "perfect", "clean", "clear", "himself", "herself"})
#: Before a date they tell how long something goes on.
UP_TO: Final = frozenset({"until", "til", "till", "thru", "up until"})


class WithDays(WithSubject):
    """When a statement's facts happened, or are to happen, and the weights beside them."""

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
