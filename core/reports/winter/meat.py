"""The meat that the culls give: each one's weight on its day, dressed; none of one that must not be eaten then."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from core.handbook import growth
from core.herd.questions import in_withdrawal, withdrawal_untold
from core.reports.evidence import Evidence
from core.reports.winter.dishes import diners
from core.reports.winter.eating import rows, table


@dataclass(frozen=True, slots=True)
class Meat:
    """Dressed meat [g], between `low` and `high` as dressing shares go.

    grams_of  what each cull gives [g], by its key;  heads  how many these are
    held      keys of those that give none: a withdrawal time runs on their day, or nobody noted one after a treatment
    """

    grams: float
    low: float
    high: float
    heads: float
    grams_of: Mapping[str, float]
    held: tuple[str, ...]

    def document(self) -> dict[str, Any]:
        """The meat as numbers."""
        return {"grams": self.grams, "low": self.low, "high": self.high, "heads": self.heads, "held": list(self.held)}


def meat(barn: Evidence, culls: Mapping[str, date]) -> Meat:
    """What these give, each culled on its day. A litter's key stands for its kits; one with no dish gives nothing."""
    told = table(barn)
    ours = {key: on for key, on in culls.items() if key in rows(barn)}
    held = tuple(key for key, on in ours.items() if must_not_be_eaten(barn, key, on))
    live, heads = {}, 0.0
    for key, on in ours.items():
        if key not in held:
            row, day = rows(barn)[key], min(max((on - barn.today).days, 0), told.weights.shape[1] - 1)
            live[key] = float(told.weights[row, day]) * diners(barn)[row].heads
            heads += diners(barn)[row].heads
    whole, share = sum(live.values()), growth.DRESSING_SHARE
    dressed = {key: grams * share.value for key, grams in live.items()}
    return Meat(whole * share.value, whole * share.low, whole * share.high, heads, dressed, held)


def must_not_be_eaten(barn: Evidence, key: str, on: date) -> bool:
    """Whether its withdrawal time runs on that day, or may run because nobody noted one."""
    animal = barn.herd.animals.get(key)
    return animal is not None and (in_withdrawal(animal, on) is not None or withdrawal_untold(animal, barn.today) is not None)
