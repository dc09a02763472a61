"""Whatever the notes say, in whatever order, every report has an answer and every question a reply."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import timedelta
from random import Random

import pytest

from core.herd.state import Herd
from core.notes.kinds.query import Query
from core.reports.answers import ANSWERS, answered
from core.reports.card import card
from core.reports.digest import digest
from core.reports.due import due
from core.reports.feed import feed
from core.reports.herd_document import herd_document
from core.reports.keep_or_cull import keep_or_cull
from core.reports.line_up import line_up
from tests.farm import TODAY, ago, tell

TAGS = ("1", "2", "3", "4", "5", "6")
BREEDS = ("New Zealand", "Mini Rex", "Barn Mix", None)
COLORS = ("black", "castor", "blue", "white", "palomino", "steel", None)


def sayings(random: Random) -> tuple[Callable[[], tuple[str, dict[str, object]]], ...]:
    """What a note may say of any animal on any day, drawn anew with each call."""

    def day() -> object:
        return ago(random.randint(0, 500))

    def tag() -> str:
        return random.choice(TAGS)

    def few() -> int:
        return random.randint(0, 9)

    return (
        lambda: ("animal", {"tag": tag(), "sex": random.choice(["buck", "doe", None]), "breed": random.choice(BREEDS), "color": random.choice(COLORS), "born": random.choice([None, day()]), "sire": random.choice([None, tag()]), "dam": random.choice([None, tag()])}),
        lambda: ("bred", {"doe": tag(), "buck": tag(), "on": day()}),
        lambda: ("kindled", {"doe": tag(), "born": few(), "alive": random.choice([None, few()]), "on": day()}),
        lambda: ("kits_lost", {"doe": tag(), "count": few(), "cause": random.choice([None, "cold", "eaten"]), "on": day()}),
        lambda: ("fostered", {"from_": tag(), "to": tag(), "count": few(), "on": day()}),
        lambda: ("weaned", {"doe": tag(), "count": few(), "on": day()}),
        lambda: ("tagged", {"litter_of": tag(), "tag": f"R{random.randint(1, 9)}", "sex": random.choice(["buck", "doe", None]), "on": day()}),
        lambda: ("weighed", {"who": random.choice([tag(), f"R{few()}"]), "grams": random.randint(1, 9000), "on": day()}),
        lambda: ("litter_weighed", {"doe": tag(), "grams": random.randint(1, 9000), "count": random.choice([None, few()]), "on": day()}),
        lambda: ("missed", {"doe": tag(), "on": day()}),
        lambda: ("condition", {"who": tag(), "score": 3.5, "on": day()}),
        lambda: ("ration", {"who": tag(), "amount": 1.0, "unit": random.choice(["cup", "oz", "g"]), "on": day()}),
        lambda: ("feed_left", {"grams": random.randint(0, 90000), "on": day()}),
        lambda: ("feed_bought", {"bags": random.choice([None, 0, 2]), "grams": random.choice([None, 0, 9000]), "price": random.choice([None, 1500]), "on": day()}),
        lambda: ("temper", {"who": tag(), "grade": "bad", "on": day()}),
        lambda: ("nest_manners", {"doe": tag(), "sign": "soiled", "on": day()}),
        lambda: ("fault", {"who": tag(), "fault": "tail", "disqualifies": random.choice([True, False, None]), "on": day()}),
        lambda: ("treated", {"who": tag(), "with_": "drops", "withdrawal_days": random.choice([None, 28]), "on": day()}),
        lambda: ("scored", {"who": tag(), "trait": "fur", "score": few(), "on": day()}),
        lambda: ("for_sale", {"who": tag(), "until": random.choice([None, TODAY + timedelta(3), day()]), "on": day()}),
        lambda: ("for_sale", {"litter_of": tag(), "count": few(), "until": random.choice([None, day()]), "on": day()}),
        lambda: ("planned", {"who": tag(), "what": random.choice(["keep", "cull", "sell", "review", "replace"]), "with_": random.choice([None, tag()]), "until": random.choice([None, TODAY])}),
        lambda: (random.choice(["died", "sold", "culled", "given_away"]), {"who": f"R{few()}", "on": day()}),
        lambda: ("setting", {"name": random.choice(["bucks_a_breed", "does_a_breed", "cages", "mouths"]), "value": few()}),
    )  # fmt: skip


def wild(seed: int, facts: int = 90) -> Herd:
    """A herd of notes that make little sense."""
    random = Random(seed)
    herd, said = Herd(), sayings(random)
    for _ in range(facts):
        kind, fields = random.choice(said)()
        herd = tell(herd, kind, **fields)
    return herd


@pytest.mark.parametrize("seed", range(60))
def test_every_report_answers(seed: int) -> None:
    """No report raises, every document is plain JSON, and no verdict lacks a reason."""
    herd = wild(seed)
    reports = (due(herd, TODAY), digest(herd, TODAY), keep_or_cull(herd, TODAY), herd_document(herd, TODAY), feed(herd, TODAY))
    cards = tuple(card(herd, TODAY, animal) for animal in herd.animals.values())
    rows = tuple(line_up(herd, TODAY, sex) for sex in ("buck", "doe"))
    for report in (*reports, *cards, *rows):
        assert report.reply().lines
        json.dumps(report.document(), allow_nan=False)
    assert all(1 <= len(one.document()["reasons"]) <= 3 for one in keep_or_cull(herd, TODAY).verdicts)


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("about", ANSWERS)
def test_every_question_is_answered(seed: int, about: str) -> None:
    """No question raises on any herd."""
    herd = wild(seed)
    for who in (None, *TAGS, "R1"):
        assert answered(Query(about=about, who=who, with_="2" if about in {"pair", "compare"} else None), herd, TODAY).lines
