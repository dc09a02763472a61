"""Every living animal as one object: what it is, how inbred, what it passes on, how it raises kits, and the genes its coat hides."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from core.herd.questions import age_days
from core.herd.state import Animal, Herd
from core.reply import Reply
from core.reports.coat import genotype_document
from core.reports.counts import counted, counts
from core.reports.evidence import Evidence, evidence
from core.reports.family import diversity_lines
from core.reports.merit import Trait
from core.reports.traits import usual_gain, usual_weight
from core.reports.wording import age, short, tag_of


@dataclass(frozen=True, slots=True)
class HerdDocument:
    """The living herd."""

    barn: Evidence

    def document(self) -> dict[str, Any]:
        """The contract's `herd` object."""
        genes = genes_of(self.barn)
        return {"animals": [animal_document(self.barn, one, genes.get(one.key, {})) for one in self.barn.living]}

    def reply(self) -> Reply:
        """The herd, an animal a line, grown ones first."""
        barn = self.barn
        told = counts(barn.herd, barn.today)
        return Reply((f"{told.line()}.", *self._lines(barn.living), *diversity_lines(barn)))

    def of(self, scope: str) -> Reply:
        """The bucks, the does or the grow-outs, an animal a line."""
        barn = self.barn
        young = scope == "grow-outs"
        found = [
            one
            for one in barn.living
            if (barn.stages[one.key] == "grow-out" if young else barn.stages[one.key] in {"junior", "senior"} and f"{one.sex}s" == scope)
        ]
        return Reply((*counted(barn, scope, None).lines, *self._lines(found)))

    def _lines(self, animals: Iterable[Animal]) -> list[str]:
        barn, order = self.barn, {"senior": 0, "junior": 1, "grow-out": 2, "kit": 3}
        in_order = sorted(animals, key=lambda one: (order[barn.stages[one.key]], one.sex or "", one.breed or ""))
        return [_line(barn, one) for one in in_order]


def herd_document(herd: Herd, today: date) -> HerdDocument:
    """The living herd on that day."""
    return HerdDocument(evidence(herd, today))


def _line(barn: Evidence, one: Animal) -> str:
    days = age_days(one, barn.today)
    told = [one.breed, one.color, f"{barn.stages[one.key]} {one.sex or 'of unknown sex'}", age(days) if days is not None else None]
    return f"{short(one)}: {', '.join(part for part in told if part)}"


def genes_of(barn: Evidence) -> Mapping[str, Mapping[str, Mapping[str, float]]]:
    """The likely genes of those of the living of whom some coat tells."""
    return barn.coats.genes(one.key for one in barn.living if one.key in barn.coats.told)


def animal_document(barn: Evidence, one: Animal, genes: Mapping[str, Mapping[str, float]]) -> dict[str, Any]:
    """One animal of the contract; what is not known is null."""
    dam = barn.dams.get(one.key)
    newest = one.weights[-1] if one.weights else None
    eater = barn.eaters.get(one.key)
    return {
        "tag": one.tag,
        "name": one.name,
        "sex": one.sex,
        "breed": one.breed,
        "color": one.color,
        "stage": barn.stages.get(one.key),
        "age_days": age_days(one, barn.today),
        "born": one.born.isoformat() if one.born else None,
        "sire": tag_of(barn.herd, one.sire),
        "dam": tag_of(barn.herd, one.dam),
        "origin": one.origin,
        "cage": one.cage,
        "weight_grams": newest.grams if newest else None,
        "weighed_on": newest.on.isoformat() if newest else None,
        "condition": one.conditions[-1][1] if one.conditions else None,
        "feed_grams_a_day": eater.grams() if eater else None,
        "inbreeding": barn.kinship.inbreeding.get(one.key),
        "mean_kinship": barn.kinship.mean_of(one.key) if one.living else None,
        "breeding_values": breeding_values_document(barn, one),
        "survival": dam.document() if dam else None,
        "genotype": genotype_document(genes),
        "for_sale": one.listing is not None,
        "gone": one.gone.how if one.gone else None,
    }


def breeding_values_document(barn: Evidence, one: Animal) -> dict[str, Any]:
    """What the animal passes on, as deviations from the breed's living mean; null where nothing is known."""
    weights = {f"weight_{age}d": _value(barn, trait, one, "grams", usual_weight(one, age)) for age, trait in barn.weight_traits.items()}
    return {
        **weights,
        "daily_gain": _value(barn, barn.gain, one, "grams", usual_gain(one)),
        "born_alive": _value(barn, barn.born_alive, one, "kits", 1.0),
        "weaned": _value(barn, barn.weaned, one, "kits", 1.0),
        "survival": _value(barn, barn.raising, one, "share", 1.0),
    }


def _value(barn: Evidence, trait: Trait | None, one: Animal, unit: str, scale: float) -> dict[str, Any]:
    value = trait.value(one.key, barn.mates(one)) if trait else None
    return {
        unit: None if value is None else value * scale,
        "reliability": trait.reliability(one.key) if trait else None,
        "records": trait.of_litter.get(one.key, 0) if trait else 0,
    }
