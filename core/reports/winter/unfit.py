"""When the wishes contradict each other: the smallest change that makes a plan fit; and breeds that could not breed on."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any

from core.handbook import breeds
from core.reckon.winter.types import Change
from core.reports.evidence import Evidence
from core.reports.winter.wanted import Asked
from core.reports.wording import grams
from core.words import count, listed


def unfit_lines(barn: Evidence, asked: Asked, called: Mapping[str, str]) -> list[str]:
    """That nothing fits, and what to change; nothing where it fits."""
    unfit = asked.unfit
    if unfit is None:
        return []
    wanted = listed([_wanted(barn, one) for one in unfit.changes])
    lift = f" Or let go of what you said of one of these: {listed([called[key] for key in unfit.or_lift])}." if unfit.or_lift else ""
    return [f"What you asked for can't all be. The smallest change that fits: {wanted}. The plan below takes it so.{lift}"]


def _wanted(barn: Evidence, one: Change) -> str:
    """A limit changed, in words."""
    breed = f" of {breed_called(one.breed)}" if one.breed else ""
    whole = {"cages": "cage", "mouths": "mouth", "bucks": "buck", "does": "doe", "litters": "litter"}
    if one.limit == "feed_g":
        return f"{grams(barn.herd.settings, one.to - one.was)} more feed until spring"
    return f"{count(round(one.to), whole[one.limit])}{breed} instead of {round(one.was)}"


def unfit_document(asked: Asked, called: Mapping[str, str]) -> dict[str, Any]:
    """Whether it fits; the changes that make it so, and whose pins alone would."""
    unfit = asked.unfit
    changes = [{"limit": one.limit, "breed": one.breed, "was": one.was, "to": one.to} for one in (unfit.changes if unfit else ())]
    return {"fits": unfit is None, "changes": changes, "or_lift": [called[key] for key in (unfit.or_lift if unfit else ())]}


#: What a breed lacks, in words.
LACKS = {
    "buck": "no buck stays; bring one in before spring",
    "doe": "no doe stays to breed on with",
    "both": "neither a buck nor a doe stays",
}


def lacking_lines(asked: Asked, going: Collection[str] | None = None) -> list[str]:
    """The breeds that can't breed on with those that stay; with `going`, only those of which somebody goes (breeds in lower case)."""
    told = LACKS | {"pair": f"no buck and doe that stay are related less than {percent(asked.limits.highest_coi)}; bring in new blood"}
    lacking = [(breed, lack) for breed, lack in sorted(asked.choice.lacking.items()) if going is None or breed in going]
    return [f"{breed_called(breed)}: {told[lack]}." for breed, lack in lacking]


def percent(share: float) -> str:
    """A limit as it was set: `12.5 %`."""
    return f"{share * 100:g} %"  # not a figure: per cent


def breed_called(breed: str | None) -> str:
    """A breed by its name; of one that nobody named so much is said."""
    known = breeds.breed(breed) if breed else None
    return known.name if known else (breed or "Rabbits of no breed that you named")
