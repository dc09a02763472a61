"""One animal before the plan is made: what speaks against it, what speaks for it, and what a person already decided.

Flags weigh 2 (enough alone) or 1 (a warning). Two or more together mean it should go; one is watched; none keeps it, or, for the
young and unproven, waits. A person's own word goes before everything. Does with kits never go before these are weaned.
"""

from __future__ import annotations

from core.herd.litters import litters_of, litters_sired
from core.herd.state import Animal
from core.reports.bucks import growth_merit
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.flags import flags_of
from core.reports.merits import merits, nothing_against, too_young, unproven
from core.reports.verdict import Verdict
from core.reports.wishes import offered, wish_of, wished

ENOUGH = 2
#: A merit's numbers that a flag of the same evidence has said already.
SAID_ALREADY = {"raises_kits": "low_survival", "weight": "light_growout", "runt": "light_growout"}


def judged(barn: Evidence, animal: Animal) -> Verdict:
    """The verdict on one animal by itself; the herd's plan may still change it."""
    strikes = sorted(flags_of(barn, animal), key=lambda one: -one.heed)
    praise = [one for one in merits(barn, animal) if not any(strike.code == SAID_ALREADY.get(one.code) for strike in strikes)]
    verdict, reasons, pinned = _weighed(barn, animal, strikes, praise)
    return Verdict(
        animal.key,
        animal.tag,
        barn.stages[animal.key],
        verdict,
        tuple(reasons),
        name=animal.name,
        breed=animal.breed,
        sex=animal.sex,
        pinned=pinned,
    )


def _weighed(barn: Evidence, animal: Animal, strikes: list[Finding], praise: list[Finding]) -> tuple[str, list[Finding], bool]:
    """The verdict, its reasons, and whether a person said so."""
    wish = wish_of(barn, animal)
    if wish is not None:
        verdict = {"keep": "keep", "cull": "cull", "sell": "sell"}.get(wish.what, "watch")
        others = [*praise, *strikes] if verdict == "keep" else [*strikes, *praise]
        return verdict, [wished(barn, animal, wish), *others], True
    heed = sum(one.heed for one in strikes)
    late_offer = any(one.code == "past_sale_date" for one in strikes)
    if animal.listing is not None and not late_offer:
        return "sell", [offered(barn, animal, animal.listing), *strikes, *praise], True
    if heed >= ENOUGH:
        return _way_out(barn, animal, strikes, praise), [*strikes, *praise], False
    if heed or strikes:
        return "watch", [*strikes, *praise], False
    return _unflagged(barn, animal, praise)


def _unflagged(barn: Evidence, animal: Animal, praise: list[Finding]) -> tuple[str, list[Finding], bool]:
    """An animal that nothing speaks against: bucks within the number and proven does stay, the unproven are watched."""
    at_stage = barn.stages[animal.key]
    if at_stage == "grow-out":
        return "watch", [*praise, too_young(barn, animal)], False
    if animal.sex == "buck" or litters_of(barn.herd, animal.key):
        return "keep", praise or [nothing_against(animal)], False
    return "watch", [unproven(animal), *praise], False


def _way_out(barn: Evidence, animal: Animal, strikes: list[Finding], praise: list[Finding]) -> str:
    """Show stock, and proven bucks that are only one too many, find a buyer; the others don't."""
    codes = {one.code for one in strikes}
    if "disqualifying_fault" in codes:
        return "cull"
    if any(one.code == "show_quality" for one in praise):
        return "sell"
    return "sell" if codes <= {"excess_buck", "heavy_feeder"} and _good_sire(barn, animal) else "cull"


def _good_sire(barn: Evidence, animal: Animal) -> bool:
    """A buck with litters whose kits grow no worse than the breed's mean here."""
    value, _, _ = growth_merit(barn, animal)
    return bool(litters_sired(barn.herd, animal.key)) and value is not None and value >= 0
