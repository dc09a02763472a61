"""A finding: what the book says of one animal, the number behind it, how sure it is, and which notes it stands on."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing worth knowing about an animal.

    animal    its key
    tag       as people know it
    code      what was found, such as `low_survival`
    text      the line a person reads: number, count and uncertainty in plain words
    evidence  the same as numbers, unrounded; unknown is None
    heed      how much it weighs against keeping the animal: 2 enough alone, 1 a warning, 0 only to know, below 0 in its favour
    kinds     the kinds of note that it stands on
    """

    animal: str
    tag: str
    code: str
    text: str
    evidence: Mapping[str, Any] = field(default_factory=dict)
    heed: int = 0
    kinds: tuple[str, ...] = ()

    @property
    def brief(self) -> str:
        """What it comes to, without the rest: the words up to the first bracket, semicolon or end of a sentence."""
        return re.split(r"; |\. | \(", self.text)[0].rstrip(".")

    def document(self) -> dict[str, Any]:
        """The finding as a flag of the digest."""
        return {"tag": self.tag, "flag": self.code, "text": self.text, "evidence": dict(self.evidence)}

    def reason(self) -> dict[str, Any]:
        """The finding as a reason of a verdict."""
        return {"code": self.code, "text": self.text, "evidence": dict(self.evidence)}
