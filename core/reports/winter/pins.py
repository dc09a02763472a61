"""What a person's word costs the plan: the feed of who is kept, and who goes or stays in its place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from core.reckon.winter.types import Price
from core.reports.evidence import Evidence
from core.reports.verdict import Verdict
from core.reports.winter.bringing import NOTHING
from core.reports.winter.wanted import Asked
from core.reports.wording import grams, price
from core.words import listed


@dataclass(frozen=True, slots=True)
class Pinned:
    """One animal that a person said is to stay or to go, and what that changes.

    go, stay  tags of who goes, or stays, instead
    """

    tag: str
    stays: bool
    cost: Price
    go: tuple[str, ...]
    stay: tuple[str, ...]

    def line(self, barn: Evidence) -> str:
        """The same as a sentence."""
        settings = barn.herd.settings
        what = f"Keeping {self.tag}" if self.stays else f"Letting {self.tag} go"
        fed = f" takes {grams(settings, self.cost.feed_g)} of feed ({price(settings, self.cost.feed_g * barn.cents_a_gram)}) until spring"
        told = [f"{listed(self.go)} {_verb('go', self.go)} instead"] if self.go else []
        told += [f"{listed(self.stay)} {_verb('stay', self.stay)} instead"] if self.stay else []
        worth = grams(settings, self.cost.worth)
        lost = f"costs the herd {'hardly any kits' if worth in NOTHING else f'about {worth} of kits a year'}"
        return f"{what}, as you said,{f'{fed} and' if self.stays else ''} {lost}{'; ' if told else ''}{', and '.join(told)}."

    def document(self) -> dict[str, Any]:
        """The same as numbers."""
        return {
            "tag": self.tag,
            "pin": "keep" if self.stays else "go",
            "worth_grams": self.cost.worth,
            "feed_grams": self.cost.feed_g,
            "more_feed_grams": self.cost.more_feed_g,
            "goes_instead": list(self.go),
            "stays_instead": list(self.stay),
        }


def _verb(what: str, who: Sequence[str]) -> str:
    return what if len(who) > 1 else {"go": "goes", "stay": "stays"}[what]


def pins(verdicts: Sequence[Verdict], asked: Asked) -> tuple[Pinned, ...]:
    """The animals that a person pinned and whose pin changes the plan."""
    called = {one.key: one.tag or f"the kits of {one.litter_of}" for one in verdicts}
    told = asked.choice.price_of_pin
    return tuple(
        Pinned(called[one.key], not one.going, told[one.key], _tags(called, told[one.key].go), _tags(called, told[one.key].stay))
        for one in verdicts
        if one.pinned and one.key in told
    )


def _tags(called: dict[str, str], keys: Sequence[str]) -> tuple[str, ...]:
    return tuple(called[key] for key in keys)
