"""Whom to breed an animal to, and which doe next: the mates that fit, the least inbred kits first, with what speaks for and against each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta

from core.handbook import genetics, reproduction
from core.herd.matings import last_mating
from core.herd.questions import events, leaving
from core.herd.state import Animal
from core.reply import Choice, Reply
from core.reports.asking import grown_and_open
from core.reports.bucks import growth_merit, worth
from core.reports.evidence import Evidence
from core.reports.flags import long_open
from core.reports.keep_or_cull import in_breed
from core.reports.pairing import Pairing, pairing
from core.reports.wording import called, more_or_less, short, tag_of, when
from core.words import count

TOLD = 5  # not a figure: mates that fit a phone, and does
CLOSE_ENOUGH = 3  # not a figure: digits of a share; two mates that differ by less are told apart by what they pass on

#: What came of a mating that is over.
CAME_OF_IT = {"kindled": "she kindled from it", "missed": "she missed", "open": "she was found open", "rebred": "she was bred again since"}


@dataclass(frozen=True)
class Mates:
    """The grown mates of the other sex, the best first, and the doe or buck that they are for."""

    barn: Evidence
    animal: Animal
    pairings: tuple[Pairing, ...]
    other_breeds: bool = False

    def reply(self) -> Reply:
        """Each mate in a line: how inbred the kits, how its own grow, what speaks against it."""
        other = "buck" if self.animal.sex == "doe" else "doe"
        if not self.pairings:
            return Reply((f"No grown {other} on the farm is free for {called(self.animal)}.",))
        head = f"{called(self.animal)} to which {other}? The least inbred kits first."
        if self.other_breeds:
            head = f"No grown {other} of the breed of {called(self.animal)} is free; of other breeds, the least inbred kits first."
        best = f"{self.pairings[0].doe.tag} x {self.pairings[0].buck.tag}?"
        return Reply((head, *map(self._line, self.pairings[:TOLD]), *self._own()), (Choice(best, best),))

    def _line(self, one: Pairing) -> str:
        mate = one.buck if self.animal.key == one.doe.key else one.doe
        unsure = "" if min(one.generations) else " (or more: not all parents are on the book)"
        value, _, kits = growth_merit(self.barn, mate)
        grows = f"; growth {more_or_less(self.barn.herd.settings, value)} the breed's mean" if value is not None and kits else ""
        against = [each for each in one.warnings if called(self.animal) not in each]
        return f"{short(mate)}: kits {one.coi * 100:.1f} % inbred{unsure}{grows}.{' ' + against[0] if against else ''}"

    def _own(self) -> list[str]:
        """What speaks against breeding the animal itself, to whomever."""
        return [each for each in self.pairings[0].warnings if called(self.animal) in each]


def mates(barn: Evidence, animal: Animal) -> Mates:
    """The grown ones of the other sex that stay, of its breed; of other breeds only where its own has none."""
    other = "buck" if animal.sex == "doe" else "doe"
    free = [
        one
        for one in barn.living
        if one.sex == other and barn.stages[one.key] in {"junior", "senior"} and _stays(one) and not _disqualified(one)
    ]
    own = [one for one in free if in_breed(one.breed, animal.breed)]
    return Mates(barn, animal, _in_order(barn, animal, own or free), other_breeds=not own)


def _stays(animal: Animal) -> bool:
    return leaving(animal) is None and animal.listing is None


def _disqualified(animal: Animal) -> bool:
    return any(each.detail.get("disqualifies") for each in events(animal, "fault"))


def _in_order(barn: Evidence, animal: Animal, others: Sequence[Animal]) -> tuple[Pairing, ...]:
    """The pairings, the least inbred first, of two as close the one whose mate passes on more."""
    pairs = [(other, (animal, other) if animal.sex == "doe" else (other, animal)) for other in others]
    told = [(other, pairing(barn.herd, barn.today, *pair)) for other, pair in pairs]
    return tuple(one for _, one in sorted(told, key=lambda each: (round(each[1].coi, CLOSE_ENOUGH), -worth(barn, each[0]))))


def next_does(barn: Evidence, breed: str | None) -> Reply:
    """The open does, the best first, each with the buck whose kits would be least inbred."""
    does = sorted((one for one in grown_and_open(barn, breed) if _stays(one)), key=lambda one: (_disqualified(one), -worth(barn, one)))
    if not does:
        return Reply(("No doe is open: each grown one is bred, nurses or is to go.",))
    lines = [_doe_line(barn, one) for one in does[:TOLD]]
    lines += [f"Open too: {', '.join(short(one) for one in does[TOLD:])}."] if len(does) > TOLD else []
    bucks = Choice(f"Bucks for {does[0].tag}", f"who should I breed {does[0].tag} to")
    return Reply(("The open does, the best first.", *lines), (bucks,))


def bred_to(barn: Evidence, animal: Animal) -> Reply:
    """Whom it was last bred to, and what is known to have come of it."""
    mating = last_mating(barn.herd, animal.key)
    if mating is None:
        return Reply((f"{called(animal)} has no mating on the book.",))
    mate = tag_of(barn.herd, mating.buck if animal.key == mating.doe else mating.doe)
    due = when(mating.on + timedelta(reproduction.GESTATION_DAYS.whole), barn.today)
    came = f"due about {due}" if mating.outcome is None else CAME_OF_IT[mating.outcome]
    return Reply((f"{called(animal)} was last bred to {mate} {when(mating.on, barn.today)}; {came}.",))


def _doe_line(barn: Evidence, doe: Animal) -> str:
    found = mates(barn, doe)
    best = next((one for one in found.pairings if one.coi < genetics.COI_STRONG.value), None)
    cross = " (another breed)" if found.other_breeds else ""
    to = f"to {short(best.buck)}{cross}, kits {best.coi * 100:.1f} % inbred" if best else "no buck here is far enough from her"
    flagged = long_open(barn, doe)
    since = f"; open for {count(flagged.evidence['days'], 'day')}" if flagged else ""
    against = f" {best.warnings[0]}" if best and best.warnings else ""
    return f"{short(doe)}: {to}{since}.{against}"
