"""Generators of property tests, all in one place.

Over 300 lines: one file holds them all, so that nobody writes a second one for the same thing.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from typing import Any

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st

from core.herd.chore import CHORES
from core.notes.fact import Cents, ColorCounts, Fact, Fields, SettingValue
from core.notes.journal import Note, Target
from core.notes.kinds.ailment import Ailing
from core.notes.kinds.animal import AnimalNoted
from core.notes.kinds.coloring import ColorSettled
from core.notes.kinds.condition import ConditionScored
from core.notes.kinds.correction import Correct
from core.notes.kinds.culling import Culled
from core.notes.kinds.death import Died
from core.notes.kinds.doing import ChoreDone
from core.notes.kinds.fault import FaultSeen
from core.notes.kinds.feed_left import FeedLeft
from core.notes.kinds.feed_purchase import FeedBought
from core.notes.kinds.fostering import Fostered
from core.notes.kinds.giving import GivenAway
from core.notes.kinds.kindling import Kindled
from core.notes.kinds.kit_count import KitsCounted
from core.notes.kinds.kit_loss import KitsLost
from core.notes.kinds.listing import Listed
from core.notes.kinds.litter_colors import LitterColored
from core.notes.kinds.litter_weighing import LitterWeighed
from core.notes.kinds.mating import Bred
from core.notes.kinds.miss import Missed
from core.notes.kinds.moving import Moved
from core.notes.kinds.nest_box import NestBoxMoved
from core.notes.kinds.nest_manners import NestManners
from core.notes.kinds.palpation import Palpated
from core.notes.kinds.plan import Planned
from core.notes.kinds.query import Query
from core.notes.kinds.ration import RationSet
from core.notes.kinds.refusal import Refused
from core.notes.kinds.remark import Remark
from core.notes.kinds.reminder import Reminder
from core.notes.kinds.sale import Sold
from core.notes.kinds.scoring import Scored
from core.notes.kinds.setting import SettingChanged
from core.notes.kinds.showing import Shown
from core.notes.kinds.skipping import Skipped
from core.notes.kinds.tagging import Tagged
from core.notes.kinds.temper import TemperShown
from core.notes.kinds.treatment import Treated
from core.notes.kinds.undoing import Undo
from core.notes.kinds.weaning import Weaned
from core.notes.kinds.weather import WeatherNoted
from core.notes.kinds.weighing import Weighed
from core.reckon.colour import LOCI, genotypes

# A slow or busy machine is no fault of the code; and the same examples each run, so that a red test stays red.
settings.register_profile("barn", deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
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


# --- facts as a reader makes them, about the small farm of tests/farm.py ------------------------------------------

FARM_DAY = date(2026, 11, 25)
#: Who lives there, by sex; and whose kits lie in a nest or run untagged.
FARM_DOES = ("9", "12", "14", "15", "16", "22")
FARM_BUCKS = ("3", "5", "31")
FARM_NESTS = ("12", "16")
PHRASES = (
    "looks rough today",
    "gate was left open",
    "coat is coming in nicely",
    "trim nails on Saturday",
    "fed late, all well",
    "3 of them were out again",
)
CAUSES = (
    "cold", "heat", "starved", "crushed", "eaten", "scattered", "out_of_box", "predator", "sick", "deformed", "unknown",
)  # fmt: skip
SIGNS = ("soiled", "lounging", "scattered", "ate_kits", "stepped_on", "no_fur", "no_nest", "good")
PLANS = ("cull", "sell", "keep", "breed", "retire", "replace", "review")
ABOUT = (
    "card", "due", "keep", "why", "pair", "compare", "feed", "count", "weights", "pedigree", "flags", "open", "litters", "sales",
    "journal", "winter", "what_if", "picture", "help",
)  # fmt: skip
SAID_SETTINGS: tuple[tuple[str, SettingValue], ...] = (
    ("bucks_a_breed", 2), ("does_a_breed", 6), ("cages", 14), ("mouths", 9), ("winter", "2026-12-05"), ("spring", "2027-04-10"),
    ("feed_price", "22.00"), ("feed_money", "150.50"), ("feed_bag", 22680), ("cup_weight", 142), ("target_weight", 2041),
    ("weight_units", "kg"), ("temperature_units", "C"), ("date_order", "DMY"), ("dotted_weight", "ounces"),
    ("timezone", "America/Chicago"), ("reminder_time", "06:15"), ("digest_day", "friday"), ("quiet_from", "21:30"), ("quiet_to", "06:00"),
    ("plain_notes", "thumb"),
    ("highest_coi", 0.2), ("lowest_survival", 0.75), ("colors_wanted", "castor"), ("aim", "meat"),
    ("litters_wanted", 5), ("lowest_temper", "good"), ("risk", "low"), ("winter_feed", 272155),
)  # fmt: skip
CORRECTIONS = (
    (("who", "15"),), (("count", 7),), (("on", "2026-11-22"),), (("grams", 1984),), (("buck", "3"),), (("born", 8), ("dead", 2)),
    (("cause", "cold"),), (("price", "40.00"),),
)  # fmt: skip


def _lately() -> st.SearchStrategy[date]:
    """A day of the last two weeks: by then all the farm's animals were there."""
    return st.integers(0, 12).map(lambda days: FARM_DAY - timedelta(days))


def _soon() -> st.SearchStrategy[date]:
    return st.integers(0, 200).map(lambda days: FARM_DAY + timedelta(days))


def _some(number: int, most: int) -> st.SearchStrategy[int]:
    return st.integers(number, most)


@st.composite
def _kindlings(draw: st.DrawFn) -> Fact:
    """Numbers as a reader completes them: born; or born and alive; or all three, adding up."""
    born = draw(_some(1, 15))
    dead = draw(_some(0, born))
    alive, lost = draw(st.sampled_from(((None, None), (born, None), (born - dead, dead))))
    return Kindled(doe=draw(st.sampled_from(("9", "14"))), on=draw(_lately()), born=born, alive=alive, dead=lost)


@st.composite
def _weanings(draw: st.DrawFn) -> Fact:
    count = draw(_some(1, 5))
    bucks = draw(_some(0, count))
    sexes = draw(st.sampled_from(((None, None), (bucks, count - bucks))))
    return Weaned(doe=draw(st.sampled_from(FARM_NESTS)), on=draw(_lately()), count=count, bucks=sexes[0], does=sexes[1])


@st.composite
def _plans(draw: st.DrawFn) -> Fact:
    what = draw(st.sampled_from(PLANS))
    who = draw(st.sampled_from(FARM_DOES if what == "breed" else (*FARM_DOES, *FARM_BUCKS)))
    other = {"breed": FARM_BUCKS, "replace": ("31", "15")}.get(what)
    on, until = sorted((draw(_soon()), draw(_soon())))
    days = draw(st.sampled_from(((None, None), (on, None), (None, until), (on, until))))
    with_ = draw(st.sampled_from([tag for tag in other if tag != who])) if other else None
    return Planned(who=who, what=what, on=days[0], until=days[1], with_=with_, reason=draw(st.none() | st.sampled_from(PHRASES[:3])))


#: Who is told of, and with what, in facts of many kinds.
WHO = st.sampled_from((*FARM_DOES, *FARM_BUCKS))
PRICE = st.none() | st.integers(0, 99999).map(Cents)
COLOR = st.sampled_from(("castor", "black", "blue otter", "broken opal"))
SCOPE = st.sampled_from(("bucks", "does", "grow-outs", "all"))


def _leaving(fact: type[Fact], **fields: st.SearchStrategy[Any]) -> st.SearchStrategy[Fact]:
    """An animal, or untagged kits, with what else the kind says."""
    one = st.builds(fact, who=WHO, on=_lately(), **fields)
    return one | st.builds(fact, litter_of=st.sampled_from(FARM_NESTS), count=_some(1, 5), on=_lately(), **fields)


def _of_animals() -> dict[str, st.SearchStrategy[Fact]]:
    """What is told of one animal."""
    on, maybe, breed = _lately(), st.none(), st.sampled_from(("Mini Rex", "New Zealand"))
    born = st.integers(30, 900).map(lambda days: FARM_DAY - timedelta(days))
    sex = st.sampled_from(("buck", "doe"))
    parents = {"sire": maybe | st.sampled_from(("3", "5")), "dam": maybe | st.sampled_from(("9", "14"))}
    return {
        "animal": st.builds(
            AnimalNoted, tag=st.sampled_from(("40", "R50", "B7")), name=maybe | st.sampled_from(("Hazel", "Bramble")), sex=maybe | sex,
            breed=maybe | breed, color=maybe | COLOR, born=maybe | born, origin=maybe | st.sampled_from(("bought", "born_here", "given")),
            price=PRICE, on=maybe | on, **parents,
        ),
        "moved": st.builds(Moved, who=WHO, cage=st.sampled_from(("B3", "C7", "12", "barn 2")), on=on),
        "tagged": st.builds(Tagged, litter_of=st.just("16"), tag=st.sampled_from(("R30", "44")), sex=maybe | sex, color=maybe | COLOR, on=on)
        | st.builds(Tagged, who=st.just("31"), tag=st.just("R31"), sex=maybe | st.just("buck"), color=maybe | COLOR, on=on),
        "weighed": st.builds(Weighed, who=WHO, grams=_some(500, 5500), on=on),
        "condition": st.builds(ConditionScored, who=WHO, score=_some(2, 10).map(lambda halves: halves / 2), on=on),
        "temper": st.builds(
            TemperShown, who=WHO, grade=st.sampled_from(("good", "bad")), sign=maybe | st.sampled_from(("growled and lunged", "sweet")), on=on
        ),
        "ailment": st.builds(Ailing, who=WHO, sign=st.sampled_from(("snotty nose", "ear mites", "off feed")), on=on),
        "treated": st.builds(
            Treated, who=WHO, with_=st.sampled_from(("ivermectin", "penicillin", "amprolium in the water")),
            dose=maybe | st.sampled_from((".2 ml", "1 cc")), withdrawal_days=maybe | _some(0, 60), on=on,
        ),
        "fault": st.builds(
            FaultSeen, who=WHO, fault=st.sampled_from(("white toenail", "malocclusion", "white spot on his foot")),
            disqualifies=st.sampled_from((None, True, False)), on=on,
        ),
        "scored": st.builds(
            Scored, who=WHO, trait=st.sampled_from(("type", "fur", "color", "size", "overall")),
            score=_some(2, 10).map(lambda halves: halves / 2), on=on,
        ),
        "color": st.builds(ColorSettled, who=WHO, color=COLOR, on=on),
        "shown": st.builds(Shown, who=WHO, placing=maybe | st.sampled_from(("best of breed", "2nd in class", "1st")), on=on),
    }  # fmt: skip


def _of_litters() -> dict[str, st.SearchStrategy[Fact]]:
    """From the mating to the weaning."""
    doe, buck, nest, on = st.sampled_from(FARM_DOES), st.sampled_from(FARM_BUCKS), st.sampled_from(FARM_NESTS), _lately()
    maybe = st.none()
    colors = st.dictionaries(COLOR, _some(1, 3), min_size=1).map(lambda counts: ColorCounts(tuple(counts.items())))
    return {
        "bred": st.builds(Bred, doe=doe, buck=buck, falls=maybe | _some(1, 4), on=on),
        "refused": st.builds(Refused, doe=doe, buck=maybe | buck, on=on),
        "palpated": st.builds(Palpated, doe=doe, result=st.sampled_from(("bred", "open", "unsure")), on=on),
        "nest_box": st.builds(NestBoxMoved, doe=doe, change=st.sampled_from(("in", "out")), on=on),
        "kindled": _kindlings(),
        "missed": st.builds(Missed, doe=doe, on=on),
        "kits_lost": st.builds(KitsLost, doe=nest, count=_some(1, 5), cause=maybe | st.sampled_from(CAUSES), on=on),
        "fostered": st.builds(Fostered, from_=st.just("12"), to=st.sampled_from(("9", "14")), count=_some(1, 5), on=on),
        "kit_count": st.builds(KitsCounted, doe=st.just("12"), count=_some(1, 9), on=st.just(FARM_DAY), age_days=maybe | st.just(15)),
        "weaned": _weanings(),
        "litter_weighed": st.builds(
            LitterWeighed, doe=st.just("12"), grams=_some(400, 2500), count=maybe | _some(1, 7), age_days=maybe | st.just(15),
            on=st.just(FARM_DAY),
        ),
        "nest_manners": st.builds(NestManners, doe=doe, sign=st.sampled_from(SIGNS), on=on),
        "litter_colors": st.builds(LitterColored, doe=nest, colors=colors, on=on),
    }  # fmt: skip


def _of_those_that_leave() -> dict[str, st.SearchStrategy[Fact]]:
    """Who died, was sold, offered, culled or given away, and who is to."""
    maybe = st.none()
    buyer = maybe | st.sampled_from(("a neighbor", "the feed store"))
    return {
        "died": _leaving(Died, cause=maybe | st.sampled_from(("unknown", "predator", "sick"))),
        "sold": _leaving(Sold, price=PRICE, to=buyer),
        "for_sale": _leaving(Listed, price=PRICE, until=maybe | _soon()),
        "culled": _leaving(Culled, live_grams=maybe | _some(1500, 3500), dressed_grams=maybe | _some(700, 1400)),
        "given_away": _leaving(GivenAway, to=buyer),
        "planned": _plans(),
    }  # fmt: skip


def _of_the_barn() -> dict[str, st.SearchStrategy[Fact]]:
    """Feed, weather, chores and settings."""
    on, words, maybe = _lately(), st.sampled_from(PHRASES), st.none()
    keys, clock = st.sampled_from(("kindling:9:2026-10-28", "custom:9:2026-11-25:trim-nails")), st.sampled_from(("07:00", "16:30"))
    setting = st.sampled_from(SAID_SETTINGS).map(lambda said: SettingChanged(name=said[0], value=said[1]))
    ration = {"amount": st.sampled_from((0.25, 0.5, 1.0, 1.5, 0.333)), "unit": st.sampled_from(("cup", "oz", "g", "lb", "kg")), "on": on}
    return {
        "ration": st.builds(RationSet, who=WHO, **ration) | st.builds(RationSet, scope=SCOPE, **ration),
        "feed_bought": st.builds(FeedBought, bags=_some(1, 9), grams=maybe | _some(9000, 99999), price=PRICE, on=on)
        | st.builds(FeedBought, grams=_some(9000, 99999), price=PRICE, on=on),
        "feed_left": st.builds(FeedLeft, grams=_some(500, 99999), on=on),
        "weather": st.builds(
            WeatherNoted, what=st.sampled_from(("frost", "cold", "heat", "other")), on=on,
            celsius=maybe | st.integers(-300, 450).map(lambda tenths: tenths / 10),
        ),
        "skipped": st.builds(Skipped, chore=st.sampled_from(CHORES), who=maybe | WHO, on=on),
        "setting": setting
        | st.builds(SettingChanged, name=st.just("target_weight"), value=_some(1000, 3000), breed=st.sampled_from(("Mini Rex", "New Zealand"))),
        "remind": st.builds(Reminder, text=words, on=_soon(), time=maybe | clock, who=maybe | WHO, key=maybe | keys),
        "done": st.builds(ChoreDone, chore=st.sampled_from(("trimming nails", "check_nest")), who=maybe | WHO, key=maybe | keys, on=on),
    }  # fmt: skip


def _of_the_talk() -> dict[str, st.SearchStrategy[Fact]]:
    """Remarks, questions and what is taken back."""
    buck, on, words, maybe = st.sampled_from(FARM_BUCKS), _lately(), st.sampled_from(PHRASES), st.none()
    return {
        "remark": st.builds(Remark, text=words, who=maybe | WHO, on=on),
        "query": st.builds(
            Query, about=st.sampled_from(ABOUT), who=maybe | WHO, with_=maybe | buck, scope=maybe | SCOPE,
            breed=maybe | st.sampled_from(("Mini Rex", "New Zealand")), until=maybe | _soon(),
        ),
        "undo": st.builds(Undo, who=maybe | WHO, about=maybe | st.sampled_from(("weighed", "kindled", "kits_lost", "nest_box"))),
        "correct": st.builds(Correct, set=st.sampled_from(CORRECTIONS).map(Fields), who=maybe | WHO),
    }  # fmt: skip


def written_facts() -> dict[str, st.SearchStrategy[Fact]]:
    """By kind: facts in the form that a reader gives them, every field said and unsaid."""
    return {**_of_animals(), **_of_litters(), **_of_those_that_leave(), **_of_the_barn(), **_of_the_talk()}
