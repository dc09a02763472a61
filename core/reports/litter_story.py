"""One litter in a line: born, lost and of what, alive now, nest box, weaned, who left and who is still there."""

from __future__ import annotations

from core.herd.litters import alive_now, live_born, untagged
from core.herd.state import Animal, Litter, Loss
from core.reports.evidence import Evidence
from core.reports.wording import price, tag_of, when
from core.words import listed


def story(barn: Evidence, animal: Animal, litter: Litter) -> str:
    """The litter as one of its parents sees it: `Tue 10 Nov (by 3): 9 born alive, 5 lost (3 cold, 2 no cause noted), 4 now`."""
    other = litter.sire if litter.dam == animal.key else litter.dam
    by = f" ({'by' if litter.dam == animal.key else 'out of'} {tag_of(barn.herd, other)})" if other else ""
    return f"{when(litter.born_on, barn.today)}{by}: {', '.join([*_born(litter), *_since(barn, litter)])}"


def _born(litter: Litter) -> list[str]:
    """How it began."""
    if litter.alive is None and litter.born is None:
        return ["count not told"]
    return [f"{live_born(litter)} born alive"] + ([f"{litter.dead} dead"] if litter.dead else [])


def _since(barn: Evidence, litter: Litter) -> list[str]:
    """What became of it."""
    came, went = (sum(one.count for one in each) for each in (litter.fostered_in, litter.fostered_out))
    told = [f"{came} fostered in"] if came else []
    told += [f"{went} fostered out"] if went else []
    dead = sum(one.count for one in litter.losses)
    told += [f"{dead} lost ({causes(litter.losses)})"] if dead else []
    if litter.weaned is not None:
        told.append(f"{litter.weaned} weaned" + (f" {when(litter.weaned_on, barn.today)}" if litter.weaned_on else ""))
    else:
        told.append(f"{alive_now(litter)} now")
    return told + _left(barn, litter) + _box(barn, litter)


#: How kits without a tag leave.
_LEFT = {"sold": "sold", "given_away": "given away", "culled": "butchered", "died": "died"}


def _left(barn: Evidence, litter: Litter) -> list[str]:
    """The kits without a tag that left, to whom and for how much; and how many of a weaned litter did not."""
    settings, told = barn.herd.settings, []
    for one in (each for each in litter.events if each.what in _LEFT):
        to = f" to {one.detail['to']}" if one.detail.get("to") else ""
        paid = f" for {price(settings, one.detail['price'])}" if one.detail.get("price") is not None else ""
        told.append(f"{one.detail['count']} {_LEFT[one.what]}{to}{paid} {when(one.on, barn.today)}")
    return [*told, f"{untagged(barn.herd, litter)} without a tag left"] if told and litter.weaned_on is not None else told


def _box(barn: Evidence, litter: Litter) -> list[str]:
    """When the nest box went in and came out."""
    births = (one for one in barn.herd.matings if one.doe == litter.dam and one.outcome == "kindled" and one.ended_on == litter.born_on)
    put_in = next((one.box_in for one in births if one.box_in), None)
    days = ((word, on) for word, on in (("in", put_in), ("out", litter.box_out)) if on)
    told = [f"{word} {when(on, barn.today)}" for word, on in days]
    return [f"nest box {listed(told)}"] if told else []


def causes(losses: tuple[Loss, ...]) -> str:
    """What the kits were lost to: `3 cold, 2 no cause noted`."""
    told: dict[str, int] = {}
    for one in losses:
        cause = (one.cause or "no cause noted").replace("_", " ")
        told[cause] = told.get(cause, 0) + one.count
    return ", ".join(f"{kits} {cause}" for cause, kits in told.items())
