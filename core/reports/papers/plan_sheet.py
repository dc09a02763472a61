"""The keep or cull plan on paper: each verdict with all its animals and the reasons, and what the plan comes to."""

from __future__ import annotations

from datetime import date

from core.handbook import health
from core.herd.state import Herd
from core.reports.keep_or_cull import KeepOrCull, keep_or_cull
from core.reports.papers.calendar import on_one_line
from core.reports.papers.leaf import Leaf, Row, Section
from core.reports.papers.paper import written
from core.reports.papers.wanted import Wanted
from core.reports.verdict import VERDICTS, Verdict, heads
from core.words import count

WHO = ("Who", "What", "Why")


def plan_sheet(herd: Herd, today: date, wish: Wanted) -> Leaf | None:
    """The plan for the herd, for some of it, or for one animal; None where nobody is old enough for a verdict."""
    advice = keep_or_cull(herd, today).only(scope=wish.scope, breed=wish.breed)
    told = tuple(one for one in advice.verdicts if wish.who is None or one.tag == wish.who)
    if not told:
        return None
    by_word = {word: tuple(one for one in told if one.verdict == word) for word in VERDICTS}
    sections = tuple(_section(word, found) for word, found in by_word.items() if found)
    return Leaf(f"Keep or cull, {written(today)}", sections, foot=(*_comes_to(advice, wish, herd, today), health.ADVICE))


def _comes_to(advice: KeepOrCull, wish: Wanted, herd: Herd, today: date) -> list[str]:
    """What it saves and gives: the whole plan's, so only under the whole plan; what to heed always."""
    whole = wish.who is None and wish.scope in {None, "all"} and wish.breed is None
    return advice.plan.lines(herd, today) if whole else list(advice.plan.cautions)


def _section(word: str, found: tuple[Verdict, ...]) -> Section:
    head = f"{word.capitalize()}: {count(heads(found), 'animal')}"
    return Section(head, columns=WHO, rows=tuple(_row(one) for one in found), to_tick=found[0].going)


def _row(one: Verdict) -> Row:
    what = " ".join(part for part in (one.stage, one.sex, one.breed) if part)
    why = [reason.text for reason in one.shown]
    after = [f"Not before {written(one.after)}."] if one.after else []
    return on_one_line(one.called), on_one_line(what), on_one_line(" ".join((*why, *after)))
