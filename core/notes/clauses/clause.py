"""One statement of a note, with the question every kind asks of it: which animal, how many, how heavy, when.

A kind takes the items it can explain. What nobody takes is asked about, never dropped.
What a statement can be asked is told in layers, each knowing the ones before: marked, with_animals, with_subject, with_days, and this.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from core.notes.clauses.scene import Found, Need, Pick, first_need, unknown_animal, when, wrong_sex
from core.notes.clauses.with_days import PAST, WithDays
from core.notes.fact import Fact
from core.notes.slots.dates import Days
from core.notes.slots.items import Item

#: They limit what was said before them.
CONDITIONS: Final = frozenset(
    {"once theyre", "once shes", "once hes", "once they're", "once she's", "once he's", "once they are", "once she is", "as soon as"}
)


class Clause(WithDays):
    """Items that make one statement."""

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
