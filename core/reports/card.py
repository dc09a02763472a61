"""An animal's whole story on one card: who it is, whose, its weights, its litters, its faults and honours, and what is planned."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from core.herd.litters import alive_now, litters_of, litters_sired, live_born
from core.herd.matings import open_mating
from core.herd.questions import age_days, events, stage
from core.herd.settings import target_weight
from core.herd.state import Animal, Herd, Litter
from core.notes.journal import Entry
from core.notes.kinds.condition import flesh
from core.notes.telling import bad_notes
from core.reply import Choice, Reply
from core.reports.ailing import ailing, ailing_document
from core.reports.behind import notes_behind
from core.reports.doe_life import doe_life, life_lines
from core.reports.evidence import Evidence, evidence
from core.reports.family import family_problems
from core.reports.finding import Finding
from core.reports.flags import flags_of, raised_said
from core.reports.growing import heading, heading_lines
from core.reports.herd_document import animal_document
from core.reports.holding import Held, held, held_lines
from core.reports.litter_story import story
from core.reports.withdrawal import held_lines as held_from_table
from core.reports.wording import age, called, grams, price, tag_of, when
from core.words import count, listed

#: How many of each thing a card shows.
SHOWN = 4
LITTERS_SHOWN = 3  # not a figure: lines on a phone


@dataclass(frozen=True, slots=True)
class Card:
    """One animal, living or gone."""

    barn: Evidence
    animal: Animal
    entries: Sequence[Entry]

    @property
    def flags(self) -> tuple[Finding, ...]:
        """What is flagged of it; of one that is gone nothing is."""
        return flags_of(self.barn, self.animal) if self.animal.key in self.barn.stages else ()

    def reply(self) -> Reply:
        """The card as it is read on a phone."""
        lines = [
            self._who(),
            *(held_from_table(self.animal, self.barn.today) if self.animal.living else []),
            *self._ailing(),
            *self._family(),
            *self._weights(),
            *self._fed(),
            *self._breeding(),
            *self._seen(),
            *self._plans(),
        ]
        lines += [one.text for one in self.flags[:SHOWN]]
        lines += [line for problem in family_problems(self.barn, self.entries, self.animal)[:1] for line in problem.lines(self.barn)]
        why = (Choice("Why?", f"why {self.animal.tag}"),) if self.animal.living else ()
        picture = (Choice("Picture", f"picture of {self.animal.tag}"),) if self.animal.weights else ()
        return Reply(tuple(dict.fromkeys(lines)), (*why, *picture))

    @property
    def ailing(self) -> Finding | None:
        """What ails it; nothing ails one that is gone any more."""
        return ailing(self.barn, self.animal) if self.animal.living else None

    def document(self) -> dict[str, Any]:
        """The herd's object of this animal, with its whole story."""
        herd, one = self.barn.herd, self.animal
        genes = self.barn.coats.genes([one.key])
        litters = [litter_document(herd, each) for each in (*litters_of(herd, one.key), *litters_sired(herd, one.key))]
        return animal_document(self.barn, one, genes.get(one.key, {})) | {
            "weights": [{"on": each.on.isoformat(), "grams": each.grams} for each in one.weights],
            "litters": litters,
            "matings": [
                {"doe": tag_of(herd, each.doe), "buck": tag_of(herd, each.buck), "on": each.on.isoformat(), "outcome": each.outcome}
                for each in herd.matings
                if one.key in {each.doe, each.buck}
            ],
            "events": [{"on": each.on.isoformat(), "what": each.what} | dict(each.detail) for each in one.events],
            "heading": heading(self.barn, one).document() if self.barn.stages.get(one.key) in {"kit", "grow-out"} else None,
            "life": doe_life(self.barn, one).document() if one.sex == "doe" else None,
            "holding": self.holding.document() if self.holding else None,
            "ailing": ailing_document(self.ailing) if self.ailing else None,
            "flags": [each.document() for each in self.flags],
            "gone_on": one.gone.on.isoformat() if one.gone else None,
            "generations_known": self.barn.book.generations(one.key),
            "notes": [each.document() for each in notes_behind(self.entries, one.tag)],
        }

    def _who(self) -> str:
        one, today = self.animal, self.barn.today
        days = age_days(one, one.gone.on if one.gone else today)
        at_stage = self.barn.stages.get(one.key) or stage(self.barn.herd, one, today)
        told = [one.breed, one.color, at_stage if one.gone is None else None, age(days) if days is not None else None]
        told += [f"cage {one.cage}"] if one.cage else []
        told += [f"{_GONE[one.gone.how]} {when(one.gone.on, today)}"] if one.gone else []
        return f"{called(one)}: {', '.join(part for part in told if part)}."

    def _ailing(self) -> list[str]:
        return [f"Not well: {self.ailing.text[:1].lower()}{self.ailing.text[1:]}"] if self.ailing else []

    def _family(self) -> list[str]:
        one, herd = self.animal, self.barn.herd
        parents = [(name, tag_of(herd, key)) for name, key in (("sire", one.sire), ("dam", one.dam)) if key]
        if not parents:
            return []
        inbred = self.barn.kinship.inbreeding.get(one.key, 0.0)
        told = f"; inbreeding {inbred * 100:.1f} %" if inbred > 0 else ""
        return [f"Out of {listed(f'{name} {tag}' for name, tag in parents)}{told}."]

    def _weights(self) -> list[str]:
        one, settings = self.animal, self.barn.herd.settings
        if not one.weights:
            return []
        told = [f"{grams(settings, each.grams)} {when(each.on, self.barn.today)}" for each in one.weights[-SHOWN:]]
        young = self.barn.stages.get(one.key) in {"kit", "grow-out"}
        target = f"; {grams(settings, target_weight(settings, one.breed))} wanted at 16 weeks" if young else ""
        return [f"Weights: {', '.join(told)}{target}.", *(heading_lines(self.barn, one) if young else [])]

    @property
    def holding(self) -> Held | None:
        """How it fared on its ration; of one that is gone nobody asks."""
        return held(self.barn.herd, self.animal, self.barn.today) if self.animal.living else None

    def _fed(self) -> list[str]:
        found = self.holding
        return held_lines(self.barn.herd, found) if found else []

    def _breeding(self) -> list[str]:
        one, barn = self.animal, self.barn
        lines = []
        mating = open_mating(barn.herd, one.key, barn.today) if one.sex == "doe" else None
        if mating:
            box = f"; nest box in {when(mating.box_in, barn.today)}" if mating.box_in else ""
            lines.append(
                f"Bred to {tag_of(barn.herd, mating.buck)} {when(mating.on, barn.today)}, day {(barn.today - mating.on).days}{box}."
            )
        litters = litters_of(barn.herd, one.key) or litters_sired(barn.herd, one.key)
        if litters:
            sizes = [str(live_born(each)) for each in litters]
            lines.append(f"{count(len(litters), 'litter')}: {listed(sizes)} born alive.")
            lines += [f"Litter of {story(barn, one, each)}." for each in reversed(litters[-LITTERS_SHOWN:])]
        lines += life_lines(barn, one) if one.sex == "doe" else []
        if one.key in barn.dams and not any(flag.code == "low_survival" for flag in self.flags):
            lines.append(raised_said(barn, one))
        return lines

    def _seen(self) -> list[str]:
        one, today = self.animal, self.barn.today
        told = [("shown", "placing"), ("fault", "fault"), ("treated", "with")]
        told += [] if self.ailing else [("ailment", "sign")]
        last = [(what, each, str(each.detail.get(name) or "")) for what, name in told for each in events(one, what)[-2:]]
        lines = [f"{_SEEN[what]} {seen}".strip() + f", {when(each.on, today)}." for what, each, seen in last]
        lines = [*self._condition(), *self._temper(), *lines]
        if one.listing:
            asked = f" for {price(self.barn.herd.settings, one.listing.price)}" if one.listing.price is not None else ""
            until = f" until {when(one.listing.until, today)}" if one.listing.until else ""
            lines.append(f"For sale{asked}{until}.")
        return lines

    def _condition(self) -> list[str]:
        scored = [(on, score) for on, score in self.animal.conditions if on <= self.barn.today]
        on, score = max(scored, default=(None, 0.0), key=lambda one: one[0])
        return [f"Condition {score:g}, {flesh(score)}, {when(on, self.barn.today)}."] if on else []

    def _temper(self) -> list[str]:
        """The last word on its temper; bad ones with their count in twelve months."""
        last = events(self.animal, "temper")[-1:]
        bad = bad_notes(self.animal, "temper", self.barn.today)
        often = f" ({count(bad, 'bad note')} in 12 months)" if bad else ""
        return [f"Temper: {one.detail.get('sign') or one.detail['grade']}, {when(one.on, self.barn.today)}{often}." for one in last]

    def _plans(self) -> list[str]:
        if not self.animal.intentions:
            return []
        last = self.animal.intentions[-1]
        on = f" on {when(last.on, self.barn.today)}" if last.on else ""
        other = f" with {tag_of(self.barn.herd, last.with_)}" if last.with_ else ""
        why = f" ({last.reason})" if last.reason else ""
        return [f"Planned: {last.what}{other}{on}{why}."]


_GONE = {"died": "died", "sold": "sold", "culled": "culled", "given_away": "given away"}
_SEEN = {"shown": "Shown:", "fault": "Fault:", "treated": "Treated with", "ailment": "Seen:"}


def card(herd: Herd, today: date, animal: Animal, entries: Iterable[Entry] = ()) -> Card:
    """The card of an animal."""
    return Card(evidence(herd, today), animal, tuple(entries))


def litter_document(herd: Herd, litter: Litter) -> dict[str, Any]:
    """One litter as a value."""
    return {
        "dam": tag_of(herd, litter.dam),
        "sire": tag_of(herd, litter.sire),
        "born_on": litter.born_on.isoformat(),
        "born": litter.born,
        "alive": litter.alive,
        "dead": litter.dead,
        "lost": sum(each.count for each in litter.losses),
        "fostered_in": sum(each.count for each in litter.fostered_in),
        "fostered_out": sum(each.count for each in litter.fostered_out),
        "alive_now": alive_now(litter),
        "weaned": litter.weaned,
        "weaned_on": litter.weaned_on.isoformat() if litter.weaned_on else None,
    }
