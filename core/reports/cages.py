"""Who sits in which cage, as the notes tell, and the farm's settings as they are."""

from __future__ import annotations

from collections import defaultdict
from typing import Final

from core.herd import settings
from core.herd.litters import alive_now, litters_of
from core.herd.state import Animal, Herd
from core.notes.kinds.setting import SettingChanged
from core.notes.kinds.setting import reply as echoed
from core.reply import Reply
from core.reports.asking import LINES
from core.reports.evidence import Evidence
from core.reports.wording import short
from core.words import count, listed

#: Settings that every farm lives by, told where nobody changed them.
USUAL: Final = ("bucks_a_breed", "weight_units", "reminder_time", "digest_day")


def cages_reply(barn: Evidence, cage: str) -> Reply:
    """Who is in that cage; who is in each, and how many nobody is noted in."""
    inside = _inside(barn)
    if cage:
        found = next((ones for name, ones in inside.items() if _same(name, cage)), [])
        if not found:
            return Reply((f"Cage {cage.upper()}: nobody, as far as the notes tell. Tell me who moves: 14 to cage {cage.upper()}",))
        return Reply((f"Cage {cage.upper()}: {listed(_with_kits(barn, one) for one in found)}.",))
    told = [
        f"{name}: {listed(_with_kits(barn, one) for one in ones)}"
        for name, ones in sorted(inside.items(), key=lambda each: _by_number(each[0]))
    ]
    nowhere = [short(one) for one in barn.living if not one.cage]
    more = f" and {len(nowhere) - LINES} more" if len(nowhere) > LINES else ""
    homeless = [f"In no cage as far as the notes tell: {', '.join(nowhere[:LINES])}{more}. Tell me: 14 to cage B3"] if nowhere else []
    return Reply((_head(settings.cages(barn.herd.settings), len(inside)), *told, *homeless))


def _inside(barn: Evidence) -> dict[str, list[Animal]]:
    inside: dict[str, list[Animal]] = defaultdict(list)
    for one in barn.living:
        if one.cage:
            inside[one.cage].append(one)
    return inside


def _head(cages: int | None, taken: int) -> str:
    if not taken:
        return "The notes tell of nobody's cage yet."
    if cages is None:
        return f"{count(taken, 'cage')} with somebody in. How many are there? Tell me: setting cages is 12"
    if taken > cages:
        return f"{count(taken, 'cage')} with somebody in, and {cages} by your settings."
    return f"{count(cages, 'cage')}: {taken} with somebody in, {cages - taken} with nobody noted."


def _with_kits(barn: Evidence, one: Animal) -> str:
    kits = sum(alive_now(litter) for litter in litters_of(barn.herd, one.key) if litter.weaned_on is None)
    return f"{short(one)} and {count(kits, 'kit')}" if kits else short(one)


def _same(one: str, other: str) -> bool:
    return one.replace(" ", "").replace("-", "").lower() == other.lower()


def _by_number(cage: str) -> tuple[str, int]:
    letters = cage.rstrip("0123456789")
    return letters, int(cage[len(letters) :] or 0)


def settings_reply(herd: Herd) -> Reply:
    """Every setting that was said, in its own words, then the usual ones that nobody changed."""
    said = [SettingChanged(name=name, value=value) for name, value in herd.settings.said.items()]
    said += [SettingChanged(name=name, value=value, breed=breed.title()) for (name, breed), value in herd.settings.by_breed.items()]
    rest = [SettingChanged(name=name, value=value) for name, value in _usual(herd).items() if name not in herd.settings.said]
    lines = [line for one in said for line in echoed(one, herd, herd)[:1]]
    default = [line.rstrip(".") for one in rest for line in echoed(one, herd, herd)[:1]]
    head = "Your settings:" if lines else "You changed no setting yet."
    usual = [f"As usual: {'; '.join(default)}."] if default else []
    return Reply((head, *lines, *usual, "To change one, see: help settings"))


def _usual(herd: Herd) -> dict[str, str | int]:
    wishes = herd.settings
    told = (settings.bucks_a_breed(wishes), wishes.weight_units, settings.reminder_time(wishes), settings.digest_day(wishes))
    return dict(zip(USUAL, told, strict=True))
