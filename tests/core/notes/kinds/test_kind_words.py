"""What a person reads: the reply that echoes the reading, and the fact written back as a note.

Over 300 lines: tables with a row or more for every kind.
"""

from __future__ import annotations

from typing import Any

import pytest

from core.handbook import health
from core.herd.state import Animal, Herd
from core.notes.fact import Cents, ColorCounts, Fields
from core.notes.kinds import KIND_OF
from core.notes.telling import by_key, shortened, when, whom
from tests.farm import TODAY, ago, fact, reply, show, small_herd, tell


def farm() -> Herd:
    """The small herd with a weight, two treatments and a bad note."""
    herd = tell(small_herd(), "weighed", who="31", grams=1700, on=ago(14))
    herd = tell(herd, "treated", who="31", with_="ivermectin", withdrawal_days=28, on=ago(20))
    herd = tell(herd, "treated", who="22", with_="penicillin", on=ago(20))
    return tell(herd, "temper", who="22", grade="bad", on=ago(50)).on_day(TODAY)


#: Kind, fields, the note written back, the lines of the reply.
CASES: list[tuple[str, dict[str, Any], str, tuple[str, ...]]] = [
    (
        "animal",
        {"tag": "40", "sex": "doe", "name": "Hazel", "breed": "Mini Rex", "color": "opal", "born": ago(90), "sire": "Duke", "dam": "14",
         "price": Cents(5000), "origin": "bought", "on": ago(1)},
        'new doe 40, name "Hazel", breed Mini Rex, color opal, born 2026-08-27, sire Duke, dam 14, bought, price 50.00, on 2026-11-24',
        ("Doe 40 on the book: Hazel, Mini Rex, opal, born Thu 27 Aug 2026, sire Duke, dam 14, bought, paid $50.00.",
         "Duke wasn't on the book: kept as an ancestor from elsewhere."),
    ),
    ("animal", {"tag": "15", "name": "Willow"}, 'new rabbit 15, name "Willow"', ("Doe 15 changed: Willow, Mini Rex, opal, born Sat 2 Mar 2024.",)),
    ("animal", {"tag": "41"}, "new rabbit 41", ("41 on the book.",)),
    (
        "animal", {"tag": "R60", "dam": "16", "born": ago(48)}, "new rabbit R60, born 2026-10-08, dam 16",
        ("R60 on the book: born Thu 8 Oct 2026, dam 16, born here.", "One of doe 16's litter of Thu 8 Oct 2026."),
    ),
    ("moved", {"who": "14", "cage": "B3"}, "2026-11-25: moved 14 to cage B3", ("Doe 14 is in cage B3.",)),
    ("moved", {"who": "14", "cage": "B3", "on": ago(3)}, "2026-11-22: moved 14 to cage B3", ("Doe 14 is in cage B3 (Sun 22 Nov).",)),
    (
        "tagged", {"tag": "R30", "litter_of": "16", "sex": "buck", "color": "black"},
        "2026-11-25: tattooed R30 out of 16, buck, color black",
        ("Buck R30 out of doe 16, black, born Thu 8 Oct 2026.", "4 kits of that litter left without a tag."),
    ),
    ("tagged", {"tag": "R31", "who": "31"}, "2026-11-25: tattooed 31 as R31", ("Buck 31 is now R31.",)),
    (
        "bred", {"doe": "15", "buck": "3", "falls": 2}, "2026-11-25: bred doe 15 to buck 3, 2 falls",
        ("Doe 15 bred to 3, 2 falls.", "Palpate Mon 7 Dec; nest box in Wed 23 Dec; kits due Sat 26 Dec."),
    ),
    (
        "bred", {"doe": "22", "buck": "Duke"}, "2026-11-25: bred doe 22 to buck Duke",
        ("Doe 22 bred to Duke.", "Duke wasn't on the book: kept as a buck from elsewhere.", "Her breeding of Wed 11 Nov counts as not taken.",
         "Palpate Mon 7 Dec; nest box in Wed 23 Dec; kits due Sat 26 Dec."),
    ),
    (
        "refused", {"doe": "22", "buck": "5"}, "2026-11-25: doe 22 refused buck 5",
        ("Doe 22 refused buck 5.", "Her breeding to buck 5 (Wed 11 Nov) still stands; none is added."),
    ),
    (
        "refused", {"doe": "22"}, "2026-11-25: doe 22 refused the buck",
        ("Doe 22 refused the buck.", "Her breeding to buck 5 (Wed 11 Nov) still stands; none is added."),
    ),
    (
        "palpated", {"doe": "22", "result": "bred"}, "2026-11-25: doe 22 palpated bred",
        ("Doe 22 palpated bred, day 14 after buck 5.", "Nest box in Wed 9 Dec; kits due Sat 12 Dec."),
    ),
    (
        "palpated", {"doe": "22", "result": "unsure"}, "2026-11-25: doe 22 palpated unsure",
        ("Doe 22 palpated unsure, day 14 after buck 5.", "Feel again in a few days.", "Nest box in Wed 9 Dec; kits due Sat 12 Dec."),
    ),
    (
        "palpated", {"doe": "22", "result": "open"}, "2026-11-25: doe 22 palpated open",
        ("Doe 22 palpated open, day 14 after buck 5.", "That breeding is closed. She can be bred again."),
    ),
    (
        "palpated", {"doe": "15", "result": "open"}, "2026-11-25: doe 15 palpated open",
        ("Doe 15 palpated open.", "There is no open breeding of hers on the book."),
    ),
    ("nest_box", {"doe": "14", "change": "in"}, "2026-11-25: nest box in for doe 14", ("Doe 14: nest box in.", "Kits due yesterday.")),
    ("nest_box", {"doe": "12", "change": "out"}, "2026-11-25: nest box out for doe 12", ("Doe 12: nest box out.", "Wean Tue 15 Dec.")),
    ("nest_box", {"doe": "15", "change": "out"}, "2026-11-25: nest box out for doe 15", ("Doe 15: nest box out.",)),
    (
        "kindled", {"doe": "14", "born": 8, "alive": 6, "dead": 2}, "2026-11-25: doe 14 kindled 8, 6 alive, 2 dead",
        ("Doe 14: 8 born, 6 alive, 2 dead.", "Sire: buck 3.", "Check the nest tomorrow; nest box out Sun 13 Dec."),
    ),
    (
        "kindled", {"doe": "14", "born": 8, "on": ago(2)}, "2026-11-23: doe 14 kindled 8",
        ("Doe 14: 8 born, 8 alive (Mon 23 Nov).", "Nobody said how many live, so I count them all.", "Sire: buck 3.",
         "Check the nest yesterday (overdue); nest box out Fri 11 Dec."),
    ),
    (
        "missed", {"doe": "14"}, "2026-11-25: doe 14 missed",
        ("Doe 14 missed.", "Her breeding to buck 3 of Sat 24 Oct is closed. She can be bred again."),
    ),
    ("missed", {"doe": "15"}, "2026-11-25: doe 15 missed", ("Doe 15 missed.", "There was no open breeding of hers on the book.")),
    (
        "kits_lost", {"doe": "12", "count": 2, "cause": "out_of_box"}, "2026-11-25: doe 12 lost 2 kits, cause out of box",
        ("Doe 12 lost 2 kits (out of box).", "5 kits under doe 12 now."),
    ),
    ("kits_lost", {"doe": "12", "count": 7}, "2026-11-25: doe 12 lost 7 kits", ("Doe 12 lost 7 kits.", "No kits left under doe 12.")),
    (
        "kits_lost", {"doe": "12", "count": 1, "cause": "cold"}, "2026-11-25: doe 12 lost 1 kit, cause cold",
        ("Doe 12 lost 1 kit (cold).", "6 kits under doe 12 now.", health.COLD),
    ),
    (
        "fostered", {"from_": "12", "to": "16", "count": 2}, "2026-11-25: fostered 2 kits from doe 12 to doe 16",
        ("Moved 2 kits from doe 12 to doe 16.", "5 kits under doe 12 now.", "Doe 16 has no litter on the book."),
    ),
    (
        "kit_count", {"doe": "12", "count": 6, "age_days": 15}, "2026-11-25: doe 12 has 6 kits at 15 days",
        ("Doe 12 has 6 kits.", 'That is 1 fewer than on the book. If you know why: "12 lost 1, cold".'),
    ),
    ("kit_count", {"doe": "12", "count": 7}, "2026-11-25: doe 12 has 7 kits", ("Doe 12 has 7 kits.", "That agrees with the book.")),
    ("kit_count", {"doe": "12", "count": 8}, "2026-11-25: doe 12 has 8 kits", ("Doe 12 has 8 kits.", "The book is put right.")),
    (
        "weaned", {"doe": "12", "count": 5, "bucks": 3, "does": 2}, "2026-11-25: weaned doe 12, 5 kits, 3 bucks, 2 does",
        ("Doe 12: weaned 5 kits, 3 bucks and 2 does.", "At 15 days; 7 were born alive.",
         'The book had 2 more. If you know why: "12 lost 2, cold".', "Weigh them Tue 5 Jan."),
    ),
    (
        "weaned", {"doe": "12", "count": 7}, "2026-11-25: weaned doe 12, 7 kits",
        ("Doe 12: weaned 7 kits.", "At 15 days; 7 were born alive.", "Weigh them Tue 5 Jan."),
    ),
    (
        "weighed", {"who": "31", "grams": 1984}, "2026-11-25: 31 weighed 1984 g",
        ("Buck 31: 4 lb 6 oz.", "Up 10 oz in 14 days.", "Day 129: over the target 2 lb 8 oz at 112 days."),
    ),
    (
        "weighed", {"who": "31", "grams": 1000}, "2026-11-25: 31 weighed 1000 g",
        ("Buck 31: 2 lb 3 oz.", "Down 1 lb 9 oz in 14 days.", "Day 129: 4 oz under the target 2 lb 8 oz at 112 days."),
    ),
    ("weighed", {"who": "5", "grams": 4700}, "2026-11-25: 5 weighed 4700 g", ("Buck 5: 10 lb 6 oz.",)),
    (
        "litter_weighed", {"doe": "12", "grams": 1673, "count": 7, "age_days": 15},
        "2026-11-25: doe 12 litter of 7 weighed 1673 g at 15 days", ("Doe 12's litter: 3 lb 11 oz.", "Day 15, 8 oz a kit for 7."),
    ),
    ("condition", {"who": "5", "score": 2}, "2026-11-25: 5 condition 2", ("Buck 5: condition 2, thin.",)),
    ("condition", {"who": "5", "score": 3.0}, "2026-11-25: 5 condition 3", ("Buck 5: condition 3, good.",)),
    ("condition", {"who": "5", "score": 4.5}, "2026-11-25: 5 condition 4.5", ("Buck 5: condition 4.5, fat.",)),
    ("ration", {"who": "5", "amount": 0.5, "unit": "cup"}, "2026-11-25: 5 gets 0.5 cup a day", ("Buck 5: 0.5 cup a day.",)),
    ("ration", {"scope": "does", "amount": 1, "unit": "cup"}, "2026-11-25: does get 1 cup a day", ("Does, each: 1 cup a day.",)),
    (
        "feed_bought", {"bags": 4, "grams": 90718, "price": Cents(7400)}, "2026-11-25: bought feed, 4 bags, 90718 g, 74.00 in all",
        ("Feed bought: 4 bags, 200 lb, $74.00 in all, $18.50 a bag.",),
    ),
    ("feed_bought", {"grams": 22680}, "2026-11-25: bought feed, 22680 g", ("Feed bought: 50 lb.",)),
    ("feed_bought", {"bags": 1}, "2026-11-25: bought feed, 1 bag", ("Feed bought: 1 bag, 50 lb.",)),
    ("feed_left", {"grams": 54431}, "2026-11-25: 54431 g feed left", ("Feed left: 120 lb.",)),
    (
        "temper", {"who": "22", "grade": "bad", "sign": "bit me"}, '2026-11-25: 22 temper bad, "bit me"',
        ("Doe 22: bad temper, bit me.", "That is bad note 2 in 12 months: it comes up in the digest."),
    ),
    ("temper", {"who": "9", "grade": "good"}, "2026-11-25: 9 temper good", ("Doe 9: good temper.",)),
    (
        "nest_manners", {"doe": "16", "sign": "soiled"}, "2026-11-25: doe 16 nest manners soiled",
        ("Doe 16: bad nest manners, soiled the nest.", "Clean the box and put in dry bedding."),
    ),
    ("nest_manners", {"doe": "16", "sign": "stepped_on"}, "2026-11-25: doe 16 nest manners stepped on", ("Doe 16: bad nest manners, stepped or sat on kits.",)),
    ("nest_manners", {"doe": "16", "sign": "good"}, "2026-11-25: doe 16 nest manners good", ("Doe 16: good nest manners (pulled fur, or built a nest).",)),
    ("ailment", {"who": "5", "sign": "off feed"}, '2026-11-25: 5 ailing, "off feed"', ("Buck 5: off feed.", health.CALL_A_VET)),
    ("ailment", {"who": "5", "sign": "ear mites"}, '2026-11-25: 5 ailing, "ear mites"', ("Buck 5: ear mites.", health.ZOONOSES)),
    ("ailment", {"who": "5", "sign": "snotty nose"}, '2026-11-25: 5 ailing, "snotty nose"', ("Buck 5: snotty nose.",)),
    (
        "treated", {"who": "22", "with_": "ivermectin", "dose": ".2 ml", "withdrawal_days": 28},
        '2026-11-25: treated 22 with "ivermectin", dose ".2 ml", 28 day withdrawal',
        ("Doe 22 given ivermectin, dose .2 ml.", "Withdrawal as you noted it: 28 days. Not to be eaten until after Wed 23 Dec 2026."),
    ),
    ("treated", {"who": "22", "with_": "salt"}, '2026-11-25: treated 22 with "salt"', ("Doe 22 given salt.", health.WITHDRAWAL)),
    ("died", {"who": "31", "cause": "fox"}, '2026-11-25: 31 died, cause "fox"', ("Buck 31 died (fox).",)),
    ("died", {"litter_of": "16", "count": 2}, "2026-11-25: 2 kits of doe 16 died", ("2 kits of doe 16 died.", "3 untagged kits of doe 16 left.")),
    (
        "fault", {"who": "31", "fault": "white toenail", "disqualifies": True}, '2026-11-25: 31 fault "white toenail", disqualifies',
        ("Buck 31: white toenail, disqualifies.",),
    ),
    (
        "fault", {"who": "31", "fault": "white toenail", "disqualifies": False}, '2026-11-25: 31 fault "white toenail", does not disqualify',
        ("Buck 31: white toenail, does not disqualify.",),
    ),
    ("fault", {"who": "31", "fault": "white toenail"}, '2026-11-25: 31 fault "white toenail"', ("Buck 31: white toenail.",)),
    ("scored", {"who": "31", "trait": "type", "score": 4}, "2026-11-25: 31 scored type 4", ("Buck 31: type 4.",)),
    ("color", {"who": "31", "color": "opal"}, "2026-11-25: 31 color opal", ("Buck 31 is opal, was castor.",)),
    ("color", {"who": "31", "color": "castor"}, "2026-11-25: 31 color castor", ("Buck 31 is castor.",)),
    (
        "litter_colors", {"doe": "16", "colors": ColorCounts((("castor", 3), ("black", 2)))},
        "2026-11-25: doe 16 litter colors 3 castor, 2 black", ("Doe 16's litter: 3 castor and 2 black.",),
    ),
    ("shown", {"who": "3", "placing": "best of breed"}, '2026-11-25: 3 shown, placing "best of breed"', ("Buck 3 shown, best of breed.",)),
    ("shown", {"who": "3"}, "2026-11-25: 3 shown", ("Buck 3 shown.",)),
    (
        "sold", {"who": "31", "price": Cents(4000), "to": "a neighbor"}, '2026-11-25: sold 31 for 40.00 to "a neighbor"',
        ("Sold buck 31 for $40.00 to a neighbor.", f"{health.WITHDRAWAL_RUNNING} It runs until Thu 3 Dec 2026."),
    ),
    ("sold", {"litter_of": "16", "count": 2}, "2026-11-25: sold 2 kits of doe 16", ("Sold 2 kits of doe 16.", "3 untagged kits of doe 16 left.")),
    (
        "for_sale", {"who": "31", "price": Cents(6000), "until": ago(-9)}, "2026-11-25: for sale 31 at 60.00 until 2026-12-04",
        ("For sale: buck 31 at $60.00 until Fri 4 Dec 2026. I will remind you then.",),
    ),
    ("for_sale", {"litter_of": "16", "count": 2}, "2026-11-25: for sale 2 kits of doe 16", ("For sale: 2 kits of doe 16.",)),
    (
        "culled", {"who": "22", "live_grams": 2325, "dressed_grams": 1247}, "2026-11-25: butchered 22, 2325 g live, 1247 g dressed",
        ("Butchered doe 22, 5 lb 2 oz live, 2 lb 12 oz dressed, 54 %.",
         f"Treated with penicillin Thu 5 Nov 2026. {health.WITHDRAWAL_UNKNOWN}"),
    ),
    ("culled", {"who": "9", "dressed_grams": 1247}, "2026-11-25: butchered 9, 1247 g dressed", ("Butchered doe 9, 2 lb 12 oz dressed.",)),
    ("given_away", {"who": "9", "to": "a neighbor"}, '2026-11-25: gave away 9 to "a neighbor"', ("Gave away doe 9 to a neighbor.",)),
    ("given_away", {"who": "9"}, "2026-11-25: gave away 9", ("Gave away doe 9.",)),
    (
        "planned", {"who": "31", "what": "cull", "on": ago(-8)}, "plan to cull 31 on 2026-12-03",
        ("Planned: cull 31 on Thu 3 Dec 2026.", "I will remind you then.", f"{health.WITHDRAWAL_RUNNING} It runs until Thu 3 Dec 2026.",
         health.SLAUGHTER),
    ),
    (
        "planned", {"who": "14", "what": "breed", "with_": "3", "on": ago(-8), "until": ago(-20), "reason": "she is ready"},
        'plan to breed 14 with 3 on 2026-12-03 until 2026-12-15 because "she is ready"',
        ("Planned: breed 14 to 3 until Tue 15 Dec 2026 (she is ready).", "I will remind you then."),
    ),
    ("planned", {"who": "5", "what": "replace", "with_": "31"}, "plan to replace 5 with 31", ("Planned: replace 5 with 31.",)),
    ("skipped", {"chore": "check_nest", "who": "12"}, "2026-11-25: skip check_nest for 12", ("Skipped: check nest for doe 12.",)),
    ("skipped", {"chore": "sweeping"}, '2026-11-25: skip "sweeping"', ("Skipped: sweeping.", "No such chore is open.")),
    (
        "setting", {"name": "target_weight", "value": 2041, "breed": "Mini Rex"}, "setting target_weight for Mini Rex is 2041",
        ("Target weight of a grow-out of Mini Rex: 4 lb 8 oz.",),
    ),
    ("setting", {"name": "lowest_survival", "value": 0.7}, "setting lowest_survival is 0.7", ("A doe should raise 70 % of her live-born kits.",)),
    ("setting", {"name": "digest_day", "value": "friday"}, "setting digest_day is friday", ("The digest comes on Friday.",)),
    ("setting", {"name": "digest_day", "value": "someday"}, "setting digest_day is someday", ("Digest day can't be someday.",)),
    (
        "remind", {"text": "trim nails", "on": ago(-2), "time": "16:00", "who": "9"}, "remind on 2026-11-27 at 16:00 for 9: trim nails",
        ("I will remind you: trim nails (doe 9), Fri 27 Nov 2026 at 16:00.",),
    ),
    (
        "remind", {"text": "nest box for 9", "on": ago(-1), "who": "9", "key": "nest_box_in:9:2026-10-28"},
        "remind on 2026-11-26 for 9 key nest_box_in:9:2026-10-28: nest box for 9", ("Put off: nest box for 9, Thu 26 Nov 2026.",),
    ),
    ("done", {"chore": "trim nails", "who": "9"}, "2026-11-25: chore done for 9: trim nails", ("Done: trim nails (doe 9).",)),
    (
        "done", {"chore": "check_nest", "key": "check_nest:12:2026-11-10"}, "2026-11-25: chore done key check_nest:12:2026-11-10: check_nest",
        ("Done: check nest.",),
    ),
    (
        "weather", {"what": "cold", "celsius": -9.4}, "2026-11-25: weather cold, -9.4 C",
        ("Noted: cold, 15 °F.", "Doe 12: 7 kits, 15 days old, leaving the nest: look for kits outside the box.",
         "Doe 9 is due: box in, dry straw, out of the draught.", "Doe 14 is due: box in, dry straw, out of the draught.", health.COLD),
    ),
    (
        "weather", {"what": "heat", "celsius": 35.0}, "2026-11-25: weather heat, 35 C",
        ("Noted: heat, 95 °F.", "Look first at does near kindling and nursing: 9, 14 and 12.", health.HEAT,
         "Bucks may be less fertile for 21 days."),
    ),
    ("weather", {"what": "other"}, "2026-11-25: weather other", ("Noted: other.",)),
    ("remark", {"text": "looks rough", "who": "16"}, "2026-11-25: remark on 16: looks rough", ("Kept as a remark for doe 16: looks rough.",)),
    (
        "remark", {"text": "she is bleeding", "who": "16"}, "2026-11-25: remark on 16: she is bleeding",
        ("Kept as a remark for doe 16: she is bleeding.", health.CALL_A_VET),
    ),
    ("remark", {"text": "gate was open"}, "2026-11-25: remark: gate was open", ("Kept as a remark: gate was open.",)),
    (
        "query", {"about": "pair", "who": "15", "with_": "7", "scope": "does", "breed": "Mini Rex", "until": ago(-6)},
        "query pair, who 15, with 7, scope does, breed Mini Rex, until 2026-12-01", (),
    ),
    ("undo", {"who": "31", "about": "weighed"}, "undo the weighed on 31", ()),
    ("undo", {}, "undo", ()),
    ("correct", {"who": "31", "set": Fields((("who", "15"), ("count", 7)))}, 'correct 31: who "15", count 7', ()),
    ("correct", {"set": Fields((("count", 7),))}, "correct: count 7", ()),
]  # fmt: skip


@pytest.mark.parametrize(("kind", "fields", "written", "lines"), CASES, ids=[case[2] for case in CASES])
def test_words(kind: str, fields: dict[str, Any], written: str, lines: tuple[str, ...]) -> None:
    """The fact is written back whole, and the reply echoes it and says what follows."""
    assert show(kind, **fields) == written
    assert reply(farm(), kind, **fields) == lines


def test_every_kind_has_words() -> None:
    """The cases cover every kind."""
    assert {kind for kind, _, _, _ in CASES} == set(KIND_OF)


def test_a_farm_in_metric() -> None:
    """Weights and temperatures follow the farm's units."""
    herd = tell(tell(small_herd(), "setting", name="weight_units", value="kg"), "setting", name="temperature_units", value="C")

    assert reply(herd, "weighed", who="5", grams=4700) == ("Buck 5: 4.70 kg.",)
    assert reply(herd, "feed_left", grams=900) == ("Feed left: 900 g.",)
    assert reply(herd, "weather", what="other", celsius=-9.4) == ("Noted: other, -9.4 °C.",)
    again = tell(herd, "weighed", who="5", grams=4700, on=ago(9))
    assert reply(again, "weighed", who="5", grams=4700)[1] == "No change in 9 days."


def test_naked_kits_in_the_cold() -> None:
    """The youngest litters are told apart: they can't hold their warmth yet."""
    herd = tell(small_herd(), "kindled", doe="14", born=5, on=ago(1))

    assert "Doe 14: 5 kits, 1 day old, still naked, in the nest." in reply(herd, "weather", what="frost")


def test_weather_without_litters() -> None:
    """Nobody at risk is said so; heat has its caution all the same."""
    assert reply(Herd(), "weather", what="cold") == ("Noted: cold.", "No litter in the nest just now.")
    assert reply(Herd(), "weather", what="heat")[1] == health.HEAT


def test_several_deaths_in_a_week() -> None:
    """Three grown animals dead in a week: it may be a disease that must be reported."""
    herd = tell(tell(small_herd(), "died", who="14", on=ago(2)), "died", who="15", on=ago(1))

    assert health.REPORTABLE in reply(herd, "died", who="9")
    assert health.REPORTABLE not in reply(herd, "died", who="9", on=ago(10))


def test_bad_nests_add_up() -> None:
    """A second bad nest within a year is told."""
    herd = tell(small_herd(), "nest_manners", doe="16", sign="soiled", on=ago(60))

    assert reply(herd, "nest_manners", doe="16", sign="ate_kits")[-1].startswith("That is bad note 2")


def test_a_kindling_without_a_known_sire() -> None:
    """Without a breeding that fits nothing is said of a sire."""
    assert reply(small_herd(), "kindled", doe="15", born=4, dead=1) == (
        "Doe 15: 4 born, 3 alive, 1 dead.",
        "Check the nest tomorrow; nest box out Sun 13 Dec.",
    )


def test_overdue_kits() -> None:
    """A doe past her window is told as overdue when her box goes in."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="2", on=ago(34))

    assert reply(herd, "nest_box", doe="1", change="in")[-1] == "Kits due Sun 22 Nov (overdue)."


@pytest.mark.parametrize(
    ("days", "words"), [(0, "today"), (-1, "tomorrow"), (1, "yesterday"), (-18, "Sun 13 Dec"), (400, "Tue 21 Oct 2025")]
)
def test_when(days: int, words: str) -> None:
    """Days near today are told by name; far ones in another year with it."""
    assert when(ago(days), TODAY) == words


def test_when_nobody_knows_the_day() -> None:
    """Without a day to tell from, the date stands."""
    assert when(TODAY, None) == "Wed 25 Nov"
    assert KIND_OF["weighed"].reply(fact("weighed", who="31", grams=900), Herd(), Herd()) == ("31: 2 lb (Wed 25 Nov).",)


def test_words_about_one_that_was_never_on_the_book() -> None:
    """A fact that hangs in the air is echoed by its tag."""
    assert KIND_OF["animal"].reply(fact("animal", tag="40"), Herd(), Herd()) == ("Noted 40.",)
    assert whom(Herd(), "40") == "40"
    assert by_key(Herd(), None) is None
    assert by_key(Herd().with_animal(Animal(key="40", tag="40")), "40") == "40"


def test_long_words_are_cut() -> None:
    """A reply repeats the beginning of a long remark."""
    assert shortened("a b") == "a b"
    assert shortened("word " * 40).endswith("word…")
