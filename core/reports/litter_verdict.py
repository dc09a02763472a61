"""One verdict for a weaned litter's kits that have no tags yet."""

from __future__ import annotations

from typing import Any

from core.handbook import growth, stages
from core.herd.settings import target_weight
from core.herd.state import Litter
from core.reckon.growing_together import Young
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.growing import CHANCES, breed_curve, days_told, litter_curve
from core.reports.verdict import Verdict
from core.reports.wording import age, begun, grams, tag_of, when


def litter_verdict(barn: Evidence, litter: Litter, number: int) -> Verdict:
    """One verdict for a weaned litter's untagged kits."""
    dam = barn.herd.animals.get(litter.dam)
    tag = tag_of(barn.herd, litter.dam) or litter.dam
    days = (barn.today - litter.born_on).days
    verdict, reason = _of_litter(barn, litter, number, days, dam.breed if dam else None)
    return Verdict(
        litter.key,
        None,
        "grow-out",
        verdict,
        (reason,),
        litter_of=tag,
        count=number,
        breed=dam.breed if dam else None,
        pinned=verdict == "sell",
    )


def _of_litter(barn: Evidence, litter: Litter, number: int, days: int, breed: str | None) -> tuple[str, Finding]:
    settings = barn.herd.settings
    tag = tag_of(barn.herd, litter.dam) or litter.dam
    offers = [one for one in litter.for_sale if one[3] is None or one[3] >= barn.today]
    target = target_weight(settings, breed)
    newest = max((one for one in litter.weighings if one[0] <= barn.today), default=None)
    mean = newest[1] / (newest[2] or number) if newest else None
    at = (newest[0] - litter.born_on).days if newest else None
    facts = {"age_days": days, "count": number, "mean_grams": mean, "weighed_at_days": at, "target_grams": target}
    if offers:
        return "sell", Finding(
            litter.key, tag, "for_sale", f"For sale since {when(offers[-1][0], barn.today)}.", facts, kinds=("for_sale",)
        )
    if mean is not None and at is not None and at >= growth.LIGHT_AGE_DAYS.value and mean < target:
        text = f"{grams(settings, mean)} a kit at {age(at)}, under the {grams(settings, target)} wanted at 16 weeks."
        return "cull", Finding(litter.key, tag, "light_growout", text, facts, heed=2, kinds=("litter_weighed",))
    weighed = f", {grams(settings, mean)} a kit at {age(at)}" if mean is not None and at is not None else ", never weighed"
    going, on = _target_days(barn, litter, number, breed)
    text = f"{age(days)} old{weighed}{going}: tag and weigh them at 16 weeks, then decide."
    return "watch", Finding(litter.key, tag, "unproven", begun(text), facts | on, kinds=("weaned", "litter_weighed"))


def _target_days(barn: Evidence, litter: Litter, number: int, breed: str | None) -> tuple[str, dict[str, Any]]:
    """When the mean kit makes the breed's target, in words and as days; of a litter never weighed, when its breed would."""
    target, days = target_weight(barn.herd.settings, breed), (barn.today - litter.born_on).days
    told = [((on - litter.born_on).days, total / (kits or number)) for on, total, kits in litter.weighings if on <= barn.today]
    told = [(at, mean) for at, mean in told if at >= growth.CURVE_FROM_DAYS.value and mean > 0]
    own = litter_curve(barn, breed, Young(litter.key, "", tuple(told))) if told else breed_curve(barn, breed)
    until = max(stages.SENIOR_FROM_DAYS.whole, days)
    early, on, late = days_told(litter.born_on, days, own.ages_when(target, CHANCES, until=until))
    names = {"target_early": early, "target_on": on, "target_late": late}
    facts = {name: day.isoformat() if day else None for name, day in names.items()}
    if on is None or early is None:
        return f"; not likely to make {grams(barn.herd.settings, target)}", facts
    end = f"to {when(late, barn.today)}" if late else "or never"
    aim = f"{grams(barn.herd.settings, target)} a kit about {when(on, barn.today)} (likely {when(early, barn.today)} {end})"
    return ("" if late == barn.today else f"; {aim}"), facts
