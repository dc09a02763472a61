"""Who is not well: what was seen lately and is not over, wherever one looks."""

from __future__ import annotations

from datetime import timedelta

import pytest

from core.handbook import flags, health
from core.notes.kinds.query import Query
from core.reports.ailing import ailing, all_ailing, is_over
from core.reports.answers import answered
from core.reports.card import card
from core.reports.digest import digest
from core.reports.evidence import evidence
from core.reports.keep_or_cull import keep_or_cull
from core.reports.why import why
from tests.core.reports.notes import entry
from tests.farm import TODAY, ago
from tests.herds import Barn


def sick(days_ago: int = 2, sign: str = "snotty nose") -> Barn:
    """A proven doe with a sign noted so many days ago, and a buck."""
    barn = Barn().buck("3").doe("21").litter("21", "3", 60, 6, weaned=6)
    return barn.say("ailment", who="21", sign=sign, on=ago(days_ago))


def test_a_sign_is_told_with_its_day() -> None:
    """The sign and since when; no diagnosis."""
    found = ailing(sick().seen, sick().find("21"))
    assert found is not None
    assert found.text == "Snotty nose since Mon 23 Nov."
    assert (found.evidence["since"], found.evidence["call_a_vet"]) == (ago(2).isoformat(), False)
    assert ailing(sick().seen, sick().find("3")) is None


def test_red_flag_calls_for_a_vet() -> None:
    """A sign of the handbook's list says to call one, and comes first."""
    barn = sick(sign="off feed").doe("9").say("ailment", who="9", sign="sneezing", on=ago(1))
    first, second = all_ailing(barn.seen)
    assert (first.tag, second.tag) == ("21", "9")
    assert first.text == f"Off feed since Mon 23 Nov. {health.CALL_A_VET}"


def test_signs_in_a_row_count_from_the_first() -> None:
    """Each within a month of the one before; one long before is another matter, and an old one is over."""
    last = flags.AILING_DAYS.whole
    barn = sick(20).say("ailment", who="21", sign="sneezing", on=ago(3))
    assert _text(barn) == "Snotty nose and sneezing since Thu 5 Nov."
    assert _text(sick(90).say("ailment", who="21", sign="sneezing", on=ago(3))) == "Sneezing since Sun 22 Nov."
    assert _text(sick(last)) is not None
    assert _text(sick(last + 1)) is None


def test_another_year_is_named() -> None:
    """In January the November before has its year."""
    barn = Barn().doe("21").say("ailment", who="21", sign="mites", on=TODAY + timedelta(25))
    found = ailing(evidence(barn.herd, TODAY + timedelta(45)), barn.find("21"))
    assert found is not None
    assert found.text == "Mites since Sun 20 Dec 2026."


def _text(barn: Barn) -> str | None:
    found = ailing(barn.seen, barn.find("21"))
    return None if found is None else found.text


@pytest.mark.parametrize(
    "note", ["21 is better", "21 ok again", "21 recovered", "21's nose cleared up", "21 is eating again", "21 no longer sneezing"]
)
def test_a_later_note_ends_it(note: str) -> None:
    """A note that it is over, also on the same day; a sign after that begins anew."""
    barn = sick().say("remark", who="21", text=note, on=ago(2))
    assert _text(barn) is None
    assert _text(barn.say("ailment", who="21", sign="sneezing", on=ago(1))) == "Sneezing since Tue 24 Nov."


@pytest.mark.parametrize(
    "note", ["21 is not better", "21 still off", "21 no better", "21 getting better", "clipped her nails", "hope 21 is better soon"]
)
def test_other_notes_do_not(note: str) -> None:
    """Not yet, not about it, or only hoped for."""
    assert not is_over(note)
    assert _text(sick().say("remark", who="21", text=note, on=ago(1))) is not None


def test_a_good_word_before_is_no_end() -> None:
    """That it looked well the day before says nothing of today."""
    barn = Barn().doe("21").say("remark", who="21", text="21 looks well", on=ago(5)).say("ailment", who="21", sign="mites", on=ago(2))
    assert _text(barn) == "Mites since Mon 23 Nov."


def test_digest_tells_before_all_else() -> None:
    """Counted among those to look at, on its own line, and apart from the flags."""
    found = digest(sick().herd, TODAY)
    assert found.reply().lines[0].endswith("1 animal to look at.")
    assert found.reply().lines[1] == "Doe 21: snotty nose since Mon 23 Nov."
    assert found.reply().choices[0].says == "why 21"
    told = found.document()
    assert told["flags"] == []
    assert [(one["tag"], one["signs"], one["since"]) for one in told["ailing"]] == [("21", ["snotty nose"], ago(2).isoformat())]


def test_digest_names_many() -> None:
    """Beyond a few, by tag."""
    barn = Barn()
    for tag in ("1", "2", "4", "5", "6", "7"):
        barn.doe(tag).say("ailment", who=tag, sign="sneezing", on=ago(1))
    assert "Not well too: 6 and 7." in digest(barn.herd, TODAY).reply().lines


def test_card_says_so_while_it_lasts() -> None:
    """Second line; once it is over, among what was seen. One that is gone ails no more."""
    barn = sick()
    assert card(barn.herd, TODAY, barn.find("21")).reply().lines[1] == "Not well: snotty nose since Mon 23 Nov."
    assert card(barn.herd, TODAY, barn.find("21")).document()["ailing"]["signs"] == ["snotty nose"]
    barn.say("remark", who="21", text="21 recovered", on=ago(1))
    assert "Seen: snotty nose, Mon 23 Nov." in card(barn.herd, TODAY, barn.find("21")).reply().lines
    gone = sick().say("died", who="21", on=ago(0))
    assert card(gone.herd, TODAY, gone.find("21")).document()["ailing"] is None


def test_kept_but_not_well() -> None:
    """A sick animal is not simply kept: the summary and its reasons say what was seen."""
    found = keep_or_cull(sick().herd, TODAY)
    (verdict,) = (one for one in found.verdicts if one.tag == "21")
    assert (verdict.verdict, verdict.reasons[0].code) == ("keep", "ailing")
    assert "Not well: 21, snotty nose since Mon 23 Nov." in found.reply().lines
    barn = Barn().buck("3").say("ailment", who="3", sign="mites", on=ago(1))
    assert "no_complaint" not in [one.code for one in keep_or_cull(barn.herd, TODAY).verdicts[0].reasons]


def test_young_and_not_well_is_watched_for_that() -> None:
    """Not among those that only need time."""
    barn = Barn().doe("9", age=400).say("ailment", who="9", sign="mites", on=ago(1))
    assert "Watch 9: Mites since Tue 24 Nov. Decide once it is well, or a vet has seen it." in keep_or_cull(barn.herd, TODAY).reply().lines


def test_before_sale_or_meat_ask_a_vet() -> None:
    """One that should go is told with the caution, and its meat is not counted on."""
    for what in ("cull", "sell"):
        barn = sick().say("planned", who="21", what=what)
        found = keep_or_cull(barn.herd, TODAY)
        (verdict,) = (one for one in found.verdicts if one.tag == "21")
        assert [one.code for one in verdict.reasons[:2]] == [f"planned_{what}", "ailing"]
        assert f"Doe 21: {health.ASK_BEFORE}" in found.reply().lines
        assert found.plan.meat[0] == 0


def test_why_says_it_first() -> None:
    """The verdict's line, the sign, and the note behind it; a kit without a verdict too."""
    barn = sick()
    lines = why(barn.herd, TODAY, barn.find("21"), [entry("21 has snotty nose", "ailment", 2, who="21", sign="snotty nose")]).reply().lines
    assert lines[:3] == ("Doe 21: keep; not well now.", "Snotty nose since Mon 23 Nov.", "  Mon 23 Nov: 21 has snotty nose")
    kit = Barn().doe("31", age=20).say("ailment", who="31", sign="mites", on=ago(1))
    assert why(kit.herd, TODAY, kit.find("31")).reply().lines[1] == "Mites since Tue 24 Nov."


def test_asked_for_flags_the_sick_come_first() -> None:
    """`Anything wrong?` is answered with who is not well, then with what is flagged; of one animal likewise."""
    barn = sick().doe("9", age=200).say("ailment", who="9", sign="off feed", on=ago(1))
    every = answered(Query(about="flags"), barn.herd, TODAY).lines
    assert every == (
        f"Doe 9: off feed since Tue 24 Nov. {health.CALL_A_VET}",
        "Doe 21: snotty nose since Mon 23 Nov.",
        "Nothing is flagged.",
    )
    assert answered(Query(about="flags", who="21"), barn.herd, TODAY).lines == ("Doe 21: 0 flags.", "Snotty nose since Mon 23 Nov.")
    assert answered(Query(about="flags", breed="Mini Rex"), barn.herd, TODAY).lines == ("Nothing is flagged.",)


def test_losses_of_an_unfinished_litter_are_mentioned() -> None:
    """Nothing is held against her yet, but her `why` says how many are gone and of what."""
    barn = Barn().buck("3").doe("22").litter("22", "3", 15, 9).lost("22", 3, ago(13), "cold").lost("22", 2, ago(11))
    lines = why(barn.herd, TODAY, barn.find("22")).reply().lines
    assert "5 of 9 kits lost so far (3 cold, 2 no cause noted) in the litter of Tue 10 Nov; counted at weaning age." in lines
