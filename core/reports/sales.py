"""Who is for sale, and what was sold: animals with their tags and kits without, and what they brought."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any

from core.herd.litters import untagged
from core.herd.settings import Settings
from core.herd.state import Animal, Herd, Listing, Litter
from core.reply import Reply
from core.reports.asking import first_lines
from core.reports.evidence import Evidence
from core.reports.keep_or_cull import in_breed
from core.reports.wording import price, short, tag_of, when
from core.words import count

#: What a note of those that left says: the day, how many, how many of them kits without a tag, and its other words.
Gone = tuple[date, int, int, Mapping[str, Any]]


def sales(barn: Evidence, breed: str | None) -> Reply:
    """Who is for sale, and what was sold this year."""
    offered = [one for one in barn.living if one.listing is not None and in_breed(one.breed, breed)]
    lines = [_offer(barn, one, one.listing) for one in offered if one.listing]
    lines += [line for litter in _litters(barn.herd, breed) for line in _kits_offered(barn, litter)]
    year = year_line(barn, breed)
    if not lines:
        return Reply(("Nobody is for sale. List one: list 32 for 60 until dec 20", year))
    return first_lines(f"{len(lines)} for sale. {year}", lines)


def _offer(barn: Evidence, one: Animal, offer: Listing) -> str:
    until = f" until {when(offer.until, barn.today)}" if offer.until else ""
    late = " (past its date)" if offer.until and offer.until < barn.today else ""
    return f"{short(one)}{_for(barn.herd.settings, offer.price)}{until}{late}"


def _for(settings: Settings, cents: int | None) -> str:
    return f" for {price(settings, cents)}" if cents is not None else ""


def _litters(herd: Herd, breed: str | None) -> list[Litter]:
    """The litters of does of that breed."""
    dams = herd.animals
    return [one for one in herd.litters.values() if in_breed(dams[one.dam].breed if one.dam in dams else None, breed)]


def _kits_offered(barn: Evidence, litter: Litter) -> list[str]:
    """The last offer of a litter's kits: no more of them than are there still."""
    offers = [(min(kits, untagged(barn.herd, litter)), cents) for _, kits, cents, _until in litter.for_sale[-1:]]
    dam = tag_of(barn.herd, litter.dam)
    return [f"{count(kits, 'kit')} of {dam}{_for(barn.herd.settings, cents)}" for kits, cents in offers if kits]


def year_line(barn: Evidence, breed: str | None) -> str:
    """What was sold this year, kits too, and what it brought: what was sold without a price is told apart from it."""
    year = barn.today.year
    sold = [one for one in _sold(barn.herd, breed) if one[0].year == year and one[0] <= barn.today]
    if not sold:
        return f"Nothing sold in {year} yet."
    kits, unpriced = sum(one[2] for one in sold), sum(one[1] for one in sold if one[3].get("price") is None)
    earned = [int(one[3]["price"]) for one in sold if one[3].get("price") is not None]
    told = [str(sum(one[1] for one in sold)) + (f" ({count(kits, 'kit')} without a tag)" if kits else "")]
    told += [price(barn.herd.settings, sum(earned))] if earned else []
    told += [f"{unpriced} of them with no price noted" if earned else "no price noted"] if unpriced else []
    return f"Sold in {year}: {', '.join(told)}."


def _sold(herd: Herd, breed: str | None) -> Iterator[Gone]:
    """Every sale on the book."""
    for one in herd.animals.values():
        if one.gone and one.gone.how == "sold" and in_breed(one.breed, breed):
            yield one.gone.on, 1, 0, one.gone.detail
    for litter in _litters(herd, breed):
        for event in litter.events:
            if event.what == "sold":
                yield event.on, event.detail["count"], event.detail["count"], event.detail
