"""Generators of property tests, all in one place."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

from hypothesis import settings
from hypothesis import strategies as st

from core.notes.fact import Fact
from core.notes.journal import Note, Target
from core.notes.kinds.animal import AnimalNoted
from core.notes.kinds.death import Died
from core.notes.kinds.kindling import Kindled
from core.notes.kinds.kit_loss import KitsLost
from core.notes.kinds.mating import Bred
from core.notes.kinds.plan import Planned
from core.notes.kinds.remark import Remark
from core.notes.kinds.setting import SettingChanged
from core.notes.kinds.weaning import Weaned
from core.notes.kinds.weighing import Weighed
from core.reckon.colour import LOCI, genotypes

# A slow or busy machine is no fault of the code; and the same examples each run, so that a red test stays red.
settings.register_profile("barn", deadline=None, derandomize=True)
settings.load_profile("barn")


@st.composite
def pedigree_rows(draw: st.DrawFn, most: int = 14) -> list[tuple[str, str | None, str | None]]:
    """Small tangled family books: even places are bucks, odd ones does, parents older than their kits; rows in any order."""
    size = draw(st.integers(min_value=1, max_value=most))
    rows: list[tuple[str, str | None, str | None]] = []
    for at in range(size):
        bucks = [None, *(f"r{one}" for one in range(0, at, 2))]
        does = [None, *(f"r{one}" for one in range(1, at, 2))]
        rows.append((f"r{at}", draw(st.sampled_from(bucks)), draw(st.sampled_from(does))))
    return draw(st.permutations(rows))


def colour_genotypes() -> st.SearchStrategy[dict[str, str]]:
    """A rabbit's genotype at every colour locus."""
    return st.fixed_dictionaries({locus: st.sampled_from(genotypes(locus)) for locus in LOCI})


def kit_counts(most: int = 12) -> st.SearchStrategy[tuple[int, int]]:
    """A litter's kits alive, and of them kept."""
    return st.integers(min_value=0, max_value=most).flatmap(lambda alive: st.tuples(st.just(alive), st.integers(0, alive)))


# --- notes as facts -----------------------------------------------------------------------------------------------

FIRST_DAY = date(2026, 1, 1)
DOES = ("9", "12", "14", "16")
BUCKS = ("3", "5")
TAGS = (*DOES, *BUCKS, "31", "R22")


def days(most: int = 200) -> st.SearchStrategy[date]:
    """Days of one year, close enough together to meet."""
    return st.integers(0, most).map(lambda day: FIRST_DAY + timedelta(day))


def told_facts() -> st.SearchStrategy[Fact]:
    """Facts of the kinds that change a herd most, sensible or not, about few animals."""
    doe, buck, who, small = st.sampled_from(DOES), st.sampled_from(BUCKS), st.sampled_from(TAGS), st.integers(1, 9)
    return st.one_of(
        st.builds(AnimalNoted, tag=who, sex=st.sampled_from(("buck", "doe", None)), born=st.none() | days()),
        st.builds(Bred, doe=doe, buck=buck, on=days()),
        st.builds(Kindled, doe=doe, on=days(), born=small, dead=st.none() | st.integers(0, 1)),
        st.builds(KitsLost, doe=doe, on=days(), count=small),
        st.builds(Weaned, doe=doe, on=days(), count=small),
        st.builds(Weighed, who=who, on=days(), grams=st.integers(50, 6000)),
        st.builds(Died, who=who, on=days()),
        st.builds(Planned, who=who, what=st.sampled_from(("cull", "keep", "sell")), on=st.none() | days()),
        st.builds(Remark, text=st.just("looks well"), who=who, on=days()),
        st.builds(SettingChanged, name=st.just("timezone"), value=st.sampled_from(("America/Chicago", "Asia/Tokyo", "nowhere"))),
    )


@st.composite
def journals(draw: st.DrawFn, most: int = 12) -> tuple[Note, ...]:
    """A farm's notes as they were told; some take back earlier ones, or one fact of them."""
    notes: list[Note] = []
    at = datetime(2026, 1, 1, 5, tzinfo=UTC)
    for number in range(1, draw(st.integers(1, most)) + 1):
        at += timedelta(hours=draw(st.integers(0, 400)))
        targets: tuple[Target, ...] = ()
        if notes and draw(st.integers(0, 3)) == 0:
            index = draw(st.none() | st.integers(0, 1))
            targets = (Target(draw(st.integers(1, number - 1)), index),)
        facts = tuple(draw(st.lists(told_facts(), max_size=2)))
        notes.append(Note(number, "", at, draw(st.sampled_from(("ann", "bo"))), facts=facts, reverses=targets))
    return tuple(notes)
