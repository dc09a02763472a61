"""The litter of a pairing: how many kits to expect of her, how many she would raise, and how they would grow."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import erf, hypot
from typing import Any

from core.herd.state import Animal
from core.reckon.litters_together import LitterSize
from core.reports.bucks import grams_scale, growth_merit, same_breed
from core.reports.evidence import Evidence
from core.reports.litter_size import litters_of_her_breed, next_litter, size_document, size_of
from core.reports.wording import how_sure, more_or_less
from core.words import count


@dataclass(frozen=True, eq=False)
class MatingLitter:
    """What a doe's next litter would be by this buck."""

    barn: Evidence
    doe: Animal
    buck: Animal

    @cached_property
    def size(self) -> LitterSize:
        """Her next litter's size, as her litters and those of her breed here tell."""
        return size_of(self.barn, self.doe)

    def raised(self) -> float | None:
        """Kits of it that she would raise; None where nobody saw her raise any."""
        dam = self.barn.dams.get(self.doe.key)
        return self.size.following * dam.share.estimate if dam else None

    @cached_property
    def growth(self) -> float | None:
        """What their kits should weigh at ten weeks [g] over the breed's mean here; None where nothing was weighed, or of two breeds."""
        if not same_breed(self.doe, self.buck):
            return None
        told = [growth_merit(self.barn, one)[0] for one in (self.doe, self.buck)]
        known = [value for value in told if value is not None]
        return sum(known) / len(known) if len(known) == len(told) else None

    def grows_above(self) -> float | None:
        """The chance that their kits' growth is bred above the breed's mean here; None where it is not known."""
        trait = self.barn.growth
        errors = (
            [trait.solved.asked[one.key].standard_error for one in (self.doe, self.buck) if one.key in trait.solved.asked] if trait else []
        )
        if self.growth is None or len(errors) < 2:
            return None
        spread = hypot(*errors) / 2 * grams_scale(self.doe)
        return (1 + erf(self.growth / spread / 2**0.5)) / 2

    def weighed(self) -> tuple[int, int]:
        """How many weighed kits the doe and the buck have."""
        return growth_merit(self.barn, self.doe)[2], growth_merit(self.barn, self.buck)[2]

    def lines(self) -> list[str]:
        """The litter in words."""
        return [self._size_line(), *self._growth_line()]

    def _size_line(self) -> str:
        low, high = next_litter(self.size)
        own = f"going by {count(self.size.litters, 'litter')} of hers and her breed's here"
        here = litters_of_her_breed(self.barn, self.doe)
        by = "her breed's here" if here else "what is usual, for none of her breed is either"
        first = f"no litter of hers is on the book, so going by {by}"
        raised = self.raised()
        kept = f", about {raised:.0f} raised" if raised is not None else ""
        return f"Litter to expect: about {self.size.following:.0f} born alive, likely {low:.0f} to {high:.0f}{kept}; {own if self.size.litters else first}."

    def _growth_line(self) -> list[str]:
        above = self.grows_above()
        if self.growth is None or above is None:
            return (
                ["Growth: they are of two breeds, so there is no mean to tell it against."] if not same_breed(self.doe, self.buck) else []
            )
        off = more_or_less(self.barn.herd.settings, self.growth)
        of_hers, of_his = self.weighed()
        sure = how_sure("they would", "outgrow it", above)
        return [
            f"Growth: kits should weigh {off} the breed's mean here at 10 weeks; {sure} ({of_hers} weighed kits of hers, {of_his} of his)."
        ]

    def thin(self) -> tuple[str, ...]:
        """What nobody noted yet and would make this surer."""
        return () if sum(self.weighed()) else ("weights of kits at about 10 weeks",)

    def document(self) -> dict[str, Any]:
        """The same as numbers."""
        return {
            "litter_size": size_document(self.size),
            "raised": self.raised(),
            "weight_70d_grams": self.growth,
            "weight_70d_above_mean": self.grows_above(),
            "kits_weighed": list(self.weighed()),
        }
