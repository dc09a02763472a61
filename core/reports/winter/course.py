"""How a verdict is carried out: at once, by a day, at a weight, or only after something was seen."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Any


@dataclass(frozen=True, slots=True)
class Course:
    """When what becomes of an animal is done.

    code  `now`, `after_hold` (her kits, a withdrawal time), `at_weight`, `after_mating`, `as_planned`, `ask_vet`, `sell_then_cull`, `observe`
    on    the day that it leaves by, or of what is to be seen; None where nobody can tell
    text  the same as a sentence
    """

    code: str
    on: date | None
    text: str

    def document(self) -> dict[str, Any]:
        """The same for programs."""
        return {"code": self.code, "on": self.on.isoformat() if self.on else None, "text": self.text}
