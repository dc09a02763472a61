"""What each kind of note does to the herd.

Over 300 lines: forty kinds, one effect or two of each.
"""

from __future__ import annotations

from typing import Any

import pytest

from core.herd.calendar import all_chores
from core.herd.litters import alive_now, untagged
from core.herd.state import Event, Herd, Intention, Listing, Ration
from core.notes.fact import Cents, ColorCounts
from core.notes.kinds import KIND_OF, KINDS
from tests.core.notes.kinds.test_kind_checks import CASES
from tests.farm import TODAY, ago, fact, small_herd, tell


@pytest.mark.parametrize(("kind", "fields"), [(kind, fields) for kind, fields, _ in CASES], ids=lambda part: str(part)[:60])
def test_nothing_raises_in_an_empty_herd(kind: str, fields: dict[str, Any]) -> None:
    """Whatever was undone before it, a fact that hangs in the air is taken, answered and written back without an error."""
    one, of = fact(kind, **fields), KIND_OF[kind]
    after = of.apply(one, Herd())

    assert isinstance(after, Herd)
    assert all(of.reply(one, Herd(), after))
    assert of.show(one, Herd())


@pytest.mark.parametrize(("kind", "fields"), [(kind, fields) for kind, fields, _ in CASES], ids=lambda part: str(part)[:60])
def test_nothing_raises_in_a_herd(kind: str, fields: dict[str, Any]) -> None:
    """Even a fact that would be asked about can be taken."""
    one, of = fact(kind, **fields), KIND_OF[kind]
    before = small_herd()
    after = of.apply(one, before)

    assert all(line.strip() for line in of.reply(one, before, after))
    assert tuple(of.chores(after, TODAY)) is not None


def test_kinds_are_those_of_the_contract() -> None:
    """Every kind stands once in the tuple under its name."""
    assert len(KINDS) == len(KIND_OF) == len({kind.fact for kind in KINDS})


# --- animals ------------------------------------------------------------------------------------------------------


def test_a_new_animal() -> None:
    """It is on the book under its tag, with what was told of it."""
    herd = tell(Herd(), "animal", tag="40", name="Hazel", sex="doe", breed="Mini Rex", color="opal", born=ago(90), price=Cents(5000))
    animal = herd.animals["40"]

    assert (animal.name, animal.sex, animal.price, animal.came_on, animal.living) == ("Hazel", "doe", 5000, TODAY, True)


def test_unknown_parents_become_ancestors() -> None:
    """Parents that are not on the book are from elsewhere and don't count as living."""
    herd = tell(Herd(), "animal", tag="40", sire="Duke", dam="Pearl")

    assert (herd.animals["40"].sire, herd.animals["40"].dam) == ("Duke", "Pearl")
    assert [(herd.animals[key].sex, herd.animals[key].living) for key in ("Duke", "Pearl")] == [("buck", False), ("doe", False)]


def test_an_ancestor_that_is_bought_comes_home() -> None:
    """The same animal, now living here; of the other sex it is another one."""
    herd = tell(tell(Herd(), "animal", tag="40", sire="Duke"), "animal", tag="Duke", origin="bought", on=ago(3))

    assert herd.animals["Duke"].living
    assert herd.animals["Duke"].came_on == ago(3)
    other = tell(tell(Herd(), "animal", tag="40", sire="Duke"), "animal", tag="Duke", sex="doe")
    assert set(other.animals) == {"40", "Duke", "Duke~2"}


def test_a_living_animal_is_completed() -> None:
    """A second note adds to it and leaves the rest."""
    herd = tell(small_herd(), "animal", tag="15", name="Willow", on=ago(1))

    assert (herd.animals["15"].name, herd.animals["15"].color, herd.animals["15"].came_on) == ("Willow", "opal", ago(1))


def test_the_tag_of_one_that_left_is_used_again() -> None:
    """It is another animal, and the one that is found from then on."""
    herd = tell(small_herd(), "animal", tag="R23", sex="doe")

    assert herd.find("R23") == herd.animals["R23~2"]
    assert herd.animals["R23"].gone is not None


def test_a_kit_of_a_recorded_litter_is_not_counted_twice() -> None:
    """Dam and birth date fit: it joins the litter and has its sire."""
    herd = tell(small_herd(), "animal", tag="R50", sex="buck", dam="16", born=ago(48))

    kit = herd.animals["R50"]
    assert (kit.litter, kit.sire, kit.weaned_on, kit.origin) == (f"16@{ago(48)}", "3", ago(13), "born_here")
    assert untagged(herd, herd.litters[f"16@{ago(48)}"]) == 4


def test_kits_on_the_book_before_their_birth_was_noted() -> None:
    """A kindling that is noted late takes them in; others of the dam stay out."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "animal", tag="R1", dam="1", born=ago(40))
    herd = tell(tell(herd, "animal", tag="R2", dam="1", born=ago(300)), "animal", tag="R3", dam="1")
    herd = tell(herd, "kindled", doe="1", born=5, on=ago(40))

    litter = herd.litters[f"1@{ago(40)}"]
    assert litter.tagged == ("R1",)
    assert untagged(herd, litter) == 4


def test_tagged_kits() -> None:
    """A kit of the litter becomes an animal of its dam's breed; of mixed parents the breed stays open."""
    herd = tell(small_herd(), "tagged", litter_of="16", tag="R30", sex="buck", color="black")
    kit = herd.animals["R30"]
    assert (kit.born, kit.dam, kit.sire, kit.breed, kit.color, kit.litter) == (ago(48), "16", "3", "Mini Rex", "black", f"16@{ago(48)}")

    mixed = tell(tell(small_herd(), "bred", doe="15", buck="5", on=ago(31)), "kindled", doe="15", born=3)
    assert tell(mixed, "tagged", litter_of="15", tag="R31").animals["R31"].breed is None


def test_tagged_without_a_litter() -> None:
    """Confirmed all the same, it is a kit of that doe without a birth date."""
    herd = tell(small_herd(), "tagged", litter_of="15", tag="R31")

    assert (herd.animals["R31"].dam, herd.animals["R31"].born) == ("15", None)


def test_a_new_tag_for_one_on_the_book() -> None:
    """It is the same animal under another tag; the old tag is free."""
    herd = tell(small_herd(), "tagged", who="31", tag="R31", color="opal")

    assert herd.find("31") is None
    assert (herd.animals["31"].tag, herd.animals["31"].color) == ("R31", "opal")
    assert tell(herd, "animal", tag="31").animals["31~2"].tag == "31"


@pytest.mark.parametrize(
    ("kind", "fields", "field", "value"),
    [
        ("moved", {"cage": "B3"}, "cage", "B3"),
        ("color", {"color": "opal"}, "color", "opal"),
        ("ration", {"amount": 0.5, "unit": "cup"}, "ration", Ration(TODAY, 0.5, "cup")),
        ("condition", {"score": 2.5}, "conditions", ((TODAY, 2.5),)),
        ("for_sale", {"price": Cents(6000), "until": ago(-9)}, "listing", Listing(TODAY, 6000, ago(-9))),
        ("planned", {"what": "cull", "on": ago(-8)}, "intentions", (Intention("cull", TODAY, on=ago(-8)),)),
        ("planned", {"what": "replace", "with_": "3"}, "intentions", (Intention("replace", TODAY, with_="3"),)),
        ("temper", {"grade": "bad", "sign": "bit"}, "events", (Event(TODAY, "temper", {"grade": "bad", "sign": "bit"}),)),
        ("ailment", {"sign": "sneezing"}, "events", (Event(TODAY, "ailment", {"sign": "sneezing"}),)),
        (
            "treated",
            {"with_": "ivermectin", "dose": ".2 ml"},
            "events",
            (Event(TODAY, "treated", {"with": "ivermectin", "dose": ".2 ml"}),),
        ),
        ("fault", {"fault": "dq", "disqualifies": False}, "events", (Event(TODAY, "fault", {"fault": "dq", "disqualifies": False}),)),
        ("scored", {"trait": "type", "score": 4}, "events", (Event(TODAY, "scored", {"trait": "type", "score": 4}),)),
        ("shown", {"placing": "first"}, "events", (Event(TODAY, "shown", {"placing": "first"}),)),
        ("remark", {"text": "rough"}, "events", (Event(TODAY, "remark", {"text": "rough"}),)),
    ],
)
def test_what_stays_with_an_animal(kind: str, fields: dict[str, Any], field: str, value: Any) -> None:
    """What was seen or wanted of an animal is kept with it, unsaid details left out."""
    assert getattr(tell(small_herd(), kind, who="31", **fields).animals["31"], field) == value


def test_to_keep_one_takes_it_off_the_market() -> None:
    """An animal that is to be kept is no longer for sale."""
    herd = tell(tell(small_herd(), "for_sale", who="31"), "planned", who="31", what="keep")

    assert herd.animals["31"].listing is None


def test_a_plan_counts_from_the_day_it_was_told() -> None:
    """Outside a replay, from its own day."""
    apply = KIND_OF["planned"].apply
    bare = tell(Herd(), "animal", tag="1")
    told = apply(fact("planned", who="1", what="cull", on=ago(-8)), bare.on_day(ago(2)))

    assert told.animals["1"].intentions[0].told_on == ago(2)


# --- mating to weaning --------------------------------------------------------------------------------------------


def test_bred_to_a_stud_from_elsewhere() -> None:
    """A buck that is not on the book becomes an ancestor from elsewhere; sexes that were open are settled."""
    herd = tell(tell(Herd(), "animal", tag="1"), "bred", doe="1", buck="Duke", falls=2)

    assert (herd.animals["1"].sex, herd.animals["Duke"].origin, herd.matings[0].falls) == ("doe", "outside", 2)


def test_palpated() -> None:
    """What was felt stands on the matings before that day; open ends them, and today's new one stays open."""
    felt = tell(small_herd(), "palpated", doe="22", result="bred")
    assert felt.matings[-1].palpated == ((TODAY, "bred"),)
    herd = tell(tell(small_herd(), "bred", doe="22", buck="3"), "palpated", doe="22", result="open")

    assert [mating.outcome for mating in herd.matings if mating.doe == "22"] == ["rebred", None]
    ended = tell(small_herd(), "palpated", doe="22", result="open").matings[-1]
    assert (ended.outcome, ended.ended_on) == ("open", TODAY)


def test_nest_box() -> None:
    """In, it stands with the open mating; out, with the youngest litter."""
    herd = tell(tell(small_herd(), "nest_box", doe="14", change="in"), "nest_box", doe="12", change="out")

    assert [mating.box_in for mating in herd.matings if mating.doe == "14"] == [None, TODAY]
    assert herd.litters[f"12@{ago(15)}"].box_out == TODAY
    assert tell(small_herd(), "nest_box", doe="15", change="out").animals["15"].events[-1].what == "nest_box"


def test_missed() -> None:
    """The open mating came to nothing."""
    assert tell(small_herd(), "missed", doe="14").matings[-3].outcome == "missed"


def test_kindled() -> None:
    """A litter with its sire; the mating is closed."""
    herd = tell(small_herd(), "kindled", doe="14", born=8, alive=6, dead=2)
    litter = herd.litters[f"14@{TODAY}"]

    assert (litter.sire, litter.born, litter.alive, litter.dead, alive_now(litter)) == ("3", 8, 6, 2, 6)
    assert [mating.outcome for mating in herd.matings if mating.doe == "14"] == ["kindled", "kindled"]


@pytest.mark.parametrize(
    ("said", "born", "alive"),
    [({"born": 8}, 8, 8), ({"born": 8, "dead": 2}, 8, 6), ({"alive": 6, "dead": 2}, 8, 6), ({"alive": 6}, 6, 6), ({"dead": 2}, None, 0)],
)
def test_numbers_of_a_kindling(said: dict[str, int], born: int | None, alive: int) -> None:
    """Alive not said is born less dead; born not said is alive and dead."""
    litter = tell(small_herd(), "kindled", doe="14", **said).litters[f"14@{TODAY}"]

    assert (litter.born, litter.alive) == (born, alive)


def test_a_kindling_closes_what_can_no_longer_be() -> None:
    """The mating that fits has kindled, a later one in the doe already in kindle is over; a mating of today is new."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="2", on=ago(31))
    herd = tell(tell(herd, "bred", doe="1", buck="3", on=ago(12)), "bred", doe="1", buck="3")
    herd = tell(herd, "kindled", doe="1", born=5)

    assert [mating.outcome for mating in herd.matings] == ["kindled", "rebred", None]
    assert herd.litters[f"1@{TODAY}"].sire == "2"


def test_a_kindling_at_no_fitting_day_closes_the_last_open_mating() -> None:
    """Confirmed at day 38, the mating has kindled; the sire stays open."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="2", on=ago(38))
    herd = tell(herd, "kindled", doe="1", born=5)

    assert (herd.matings[0].outcome, herd.litters[f"1@{TODAY}"].sire) == ("kindled", None)


def test_the_same_birth_is_one_litter() -> None:
    """A second kindling of that doe on that day changes nothing."""
    herd = tell(small_herd(), "kindled", doe="14", born=8)

    assert tell(herd, "kindled", doe="14", born=5).litters == herd.litters


def test_kits_lost() -> None:
    """A loss in the nest keeps its cause; after weaning kits that died have left."""
    litter = tell(small_herd(), "kits_lost", doe="12", count=2, cause="cold").litters[f"12@{ago(15)}"]
    weaned = tell(small_herd(), "died", litter_of="16", count=2).litters[f"16@{ago(48)}"]

    assert ([(loss.count, loss.cause) for loss in litter.losses], alive_now(litter)) == ([(2, "cold")], 5)
    assert (weaned.left, weaned.losses) == (2, ())
    early = tell(small_herd(), "died", litter_of="12", count=2, cause="cold").litters[f"12@{ago(15)}"]
    assert alive_now(early) == 5


def test_fostered() -> None:
    """Both litters count the move and know each other; a nest that is not on the book is passed over."""
    herd = tell(tell(small_herd(), "kindled", doe="9", born=4), "fostered", from_="12", to="9", count=2)
    old, new = herd.litters[f"12@{ago(15)}"], herd.litters[f"9@{TODAY}"]

    assert (alive_now(old), alive_now(new)) == (5, 6)
    assert (old.fostered_out[0].other, new.fostered_in[0].other) == (new.key, old.key)
    assert alive_now(tell(small_herd(), "fostered", from_="12", to="15", count=2).litters[old.key]) == 5
    assert alive_now(tell(small_herd(), "fostered", from_="15", to="12", count=2).litters[old.key]) == 9


def test_a_doe_that_lost_her_own_kits_takes_others() -> None:
    """An empty nest can be filled again."""
    herd = tell(tell(small_herd(), "kindled", doe="9", born=4), "kits_lost", doe="9", count=4)
    herd = tell(herd, "fostered", from_="12", to="9", count=3)

    assert alive_now(herd.litters[f"9@{TODAY}"]) == 3


def test_kit_count_puts_the_book_right() -> None:
    """What was counted is what there is; once weaned, it is only kept."""
    herd = tell(tell(small_herd(), "kit_count", doe="12", count=6), "kit_count", doe="16", count=4)

    assert alive_now(herd.litters[f"12@{ago(15)}"]) == 6
    assert untagged(herd, herd.litters[f"16@{ago(48)}"]) == 5
    assert herd.litters[f"16@{ago(48)}"].counts == ((TODAY, 4),)


def test_weaned() -> None:
    """The count and the sexes stand with the litter; tagged kits are weaned with it, those that left are not."""
    herd = tell(tell(small_herd(), "tagged", litter_of="12", tag="R40"), "tagged", litter_of="12", tag="R41")
    herd = tell(tell(herd, "died", who="R41"), "weaned", doe="12", count=6, bucks=4, does=2)
    litter = herd.litters[f"12@{ago(15)}"]

    assert (litter.weaned_on, litter.weaned, litter.weaned_bucks, litter.weaned_does) == (TODAY, 6, 4, 2)
    assert (herd.animals["R40"].weaned_on, herd.animals["R41"].weaned_on) == (TODAY, None)


def test_weaned_in_two_goes_adds_up() -> None:
    """The second part is added to the first, on the first day; told a third time, the last word holds."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "kindled", doe="1", born=7, on=ago(40))
    herd = tell(tell(herd, "weaned", doe="1", count=3, bucks=3, on=ago(5)), "weaned", doe="1", count=4)
    litter = herd.litters[f"1@{ago(40)}"]

    assert (litter.weaned_on, litter.weaned, litter.weaned_bucks, litter.weaned_does) == (ago(5), 7, 3, None)
    assert tell(herd, "weaned", doe="1", count=6).litters[litter.key].weaned == 6


def test_the_litter_of_age_is_weaned() -> None:
    """A doe with a new litter under her weans the old one."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "kindled", doe="1", born=7, on=ago(40))
    herd = tell(tell(herd, "kindled", doe="1", born=5, on=ago(5)), "weaned", doe="1", count=7)

    assert [litter.weaned for litter in herd.litters.values()] == [7, None]


def test_litter_weighed_and_colors() -> None:
    """A weight without a count is of the kits on the book; the last colours hold."""
    herd = tell(tell(small_herd(), "litter_weighed", doe="12", grams=1673), "litter_weighed", doe="12", grams=1800, count=6)
    herd = tell(herd, "litter_colors", doe="16", colors=ColorCounts((("castor", 3),)))

    assert herd.litters[f"12@{ago(15)}"].weighings == ((TODAY, 1673, 7), (TODAY, 1800, 6))
    assert herd.litters[f"16@{ago(48)}"].colors == (("castor", 3),)


# --- leaving and the farm -----------------------------------------------------------------------------------------


def test_who_left_how() -> None:
    """A sale keeps price and buyer; a butchered animal its last weight."""
    sold = tell(small_herd(), "sold", who="31", price=Cents(4000), to="a neighbor").animals["31"]
    culled = tell(small_herd(), "culled", who="31", live_grams=2325, dressed_grams=1247).animals["31"]

    assert sold.gone is not None
    assert (sold.gone.how, dict(sold.gone.detail)) == ("sold", {"price": 4000, "to": "a neighbor"})
    assert culled.gone is not None
    assert (culled.gone.how, culled.weights[-1].grams) == ("culled", 2325)
    assert tell(small_herd(), "given_away", litter_of="16", count=2).litters[f"16@{ago(48)}"].left == 2
    assert tell(small_herd(), "culled", litter_of="16", count=2).litters[f"16@{ago(48)}"].left == 2


def test_what_became_of_untagged_kits_is_kept() -> None:
    """The litter remembers who bought how many for how much."""
    herd = tell(small_herd(), "sold", litter_of="16", count=2, price=Cents(5000), to="a neighbor")

    assert herd.litters[f"16@{ago(48)}"].events == (Event(TODAY, "sold", {"count": 2, "price": 5000, "to": "a neighbor"}),)


def test_the_kinds_cause_the_calendar() -> None:
    """What the kinds cause one by one is the whole calendar."""
    herd = tell(small_herd(), "remind", text="buy straw", on=ago(-1))
    caused = {chore.key for kind in KINDS for chore in kind.chores(herd, TODAY)}

    assert caused == {chore.key for chore in all_chores(herd, TODAY)}


def test_for_sale_and_sold_of_kits() -> None:
    """Kits without tags are offered and sold by number."""
    herd = tell(small_herd(), "for_sale", litter_of="16", count=3, price=Cents(2500))

    assert herd.litters[f"16@{ago(48)}"].for_sale == ((TODAY, 3, 2500, None),)
    assert untagged(tell(herd, "sold", litter_of="16", count=3), herd.litters[f"16@{ago(48)}"]) == 5


def test_what_stays_with_the_farm() -> None:
    """Feed, weather, rations of a class and remarks on nobody."""
    herd = tell(tell(Herd(), "feed_bought", bags=4, price=Cents(7400)), "feed_left", grams=54431)
    herd = tell(tell(herd, "weather", what="cold", celsius=-9.4), "remark", text="gate was open")
    herd = tell(tell(herd, "ration", scope="does", amount=1, unit="cup"), "remark", text="who was that", who="99")

    assert [event.what for event in herd.feed] == ["feed_bought", "feed_left"]
    assert herd.weather[0].detail == {"what": "cold", "celsius": -9.4}
    assert [event.detail["text"] for event in herd.remarks] == ["gate was open", "who was that"]
    assert herd.rations["does"].amount == 1


def test_settings() -> None:
    """A setting is put into form; one that can't be changes nothing."""
    herd = tell(tell(Herd(), "setting", name="lowest_survival", value="75%"), "setting", name="digest_day", value="someday")

    assert dict(herd.settings.said) == {"lowest_survival": 0.75}


def test_talk_changes_nothing() -> None:
    """Questions, undo and corrections are not of the herd."""
    herd = small_herd()

    assert tell(herd, "query", about="due") is herd
    assert tell(herd, "undo") is herd
