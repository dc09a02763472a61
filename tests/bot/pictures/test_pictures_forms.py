"""Each form of picture as it is drawn: what it tells leaves ink, and awkward herds break nothing."""

from __future__ import annotations

import io
from dataclasses import replace

import pytest
from PIL import Image

from bot.pictures.days import days
from bot.pictures.draw import DRAWERS, png
from core.app.pictures import Axis, Born, DayRow, Days, Group, Growing, Litters, Panel, Picture, Ranks, Row, Series, Week

LONG = "Wilhelmina Persephone of the Upper Meadow"
MAIN, OTHER, LOOK, INK = (0x00, 0x49, 0x7A), (0xE0, 0x7A, 0x00), (0xB2, 0x3A, 0x00), (0x11, 0x11, 0x11)

ROWS = (Row("9 Nettle", 53, 42, 63, "19 of 46, 6 litters", marked=True), Row("11 Wren", 94, 89, 98, "34 of 35, 7 litters"))
RANKS = Ranks("Does", "share", "alt", Axis("% raised", 0, 100), (Group("", ROWS),), 70, "your line 70 %", "below it")
LITTERS = Litters("Litters", "Mini Rex", "alt", (Born("5 May\n2026", 6, 1, 5), Born("11 Aug", 7, 0, None)), (4.0, 6.0, 8.0))
PANEL = Panel("rabbits", (41.0, 44.0, 69.0), (31.0, 33.0, 58.0), "all stay", "with the plan")
DAYS = Days(
    "Winter", "until spring", "alt", ((0.0, "Dec"), (2.0, "Jan")), (PANEL, PANEL), ((1.0, "bin empty"), (2.0, "empty with the plan"))
)
WEEK = Week(
    "Week",
    "3 chores",
    "alt",
    (DayRow("late", ("Weigh 9",), late=True), DayRow("Wed 25 Nov", ("Wean 14",), 2, today=True), DayRow("Thu", ())),
)
GROWING = Growing("Doe 14", "Rex", "alt", Axis("weeks", 0, 18, ((0, "0"),)), Axis("lb", 0, 6), (Series("14", ((8, 3),)),))


def drawn(told: Picture) -> Image.Image:
    """The picture as a viewer sees it."""
    return Image.open(io.BytesIO(png(told))).convert("RGB")


def ink(told: Picture, color: tuple[int, int, int]) -> int:
    """How many dots have that color, nearly."""
    counted = drawn(told).getcolors(1 << 22) or []
    return sum(n for n, dot in counted if all(abs(a - b) < 8 for a, b in zip(dot, color, strict=True)))


def test_every_form_is_drawn() -> None:
    """None is left out of the table, and each is as wide as a phone shows."""
    forms = (GROWING, RANKS, LITTERS, DAYS, WEEK)
    assert {type(form) for form in forms} == set(DRAWERS)
    assert {drawn(form).width for form in forms} == {1080}


def test_marked_rows_have_a_color_and_a_shape_of_their_own() -> None:
    """Without a mark there is none of it, and no word on it."""
    plain = replace(RANKS, groups=(Group("", tuple(replace(row, marked=False) for row in ROWS)),), marked_said="")
    assert ink(plain, LOOK) == 0
    assert ink(RANKS, LOOK) > 200
    assert drawn(RANKS).height > drawn(plain).height


def test_groups_have_headings_and_gaps_are_told() -> None:
    """Each takes room of its own."""
    plain = drawn(RANKS).height
    assert drawn(replace(RANKS, groups=(Group("Mini Rex", ROWS),))).height > plain
    assert drawn(replace(RANKS, groups=(Group("", ROWS, 290, 1),))).height > plain


@pytest.mark.parametrize("line", [0.0, 50.0, 100.0])
def test_the_words_on_the_line_stay_on_the_picture(line: float) -> None:
    """Wherever the line is: the edges stay white."""
    picture = drawn(replace(RANKS, line=line, line_said="a rather long line 70 %"))
    for left in (0, 1080 - 12):
        assert picture.crop((left, 0, left + 12, picture.height)).getextrema() == ((255, 255),) * 3


def test_one_row_of_no_width() -> None:
    """A single buck at the mean."""
    told = replace(RANKS, along=Axis("oz", 0, 0), groups=(Group("", (Row("1", 0, 0, 0, ""),)),), line=0)
    assert ink(told, MAIN) > 0


def test_long_names_take_more_room_and_are_not_cut() -> None:
    """Names of forty letters break into lines; nothing runs over the edge."""
    told = replace(RANKS, groups=(Group(LONG, tuple(replace(row, name=f"{LONG} {LONG}", stands_on=LONG) for row in ROWS)),))
    picture = drawn(told)
    assert picture.height > drawn(RANKS).height
    assert picture.crop((1080 - 12, 0, 1080, picture.height)).getextrema() == ((255, 255),) * 3


def test_columns_of_litters() -> None:
    """The weaned in the light color, the next one in its own; what nobody told is not there."""
    assert ink(LITTERS, OTHER) > 500
    assert ink(LITTERS, LOOK) > 100
    bare = replace(LITTERS, litters=(Born("1 May", 0, 0, None),), following=None)
    assert ink(bare, OTHER) == ink(bare, LOOK) == 0


def test_many_litters_stand_beside_each_other() -> None:
    """Twelve and the next one: their days are set in two lines, none over another."""
    many = replace(LITTERS, litters=tuple(Born(f"{day} May", 7, 1, 6) for day in range(1, 13)))
    assert ink(many, MAIN) > ink(LITTERS, MAIN) / 2


def test_the_plan_is_a_line_of_its_own() -> None:
    """Where it differs; a winter without it has one line and no key."""
    plain = replace(DAYS, panels=(replace(PANEL, planned=()),), events=())
    assert ink(plain, OTHER) == ink(plain, LOOK) == 0
    assert ink(DAYS, OTHER) > 200
    assert ink(DAYS, LOOK) > 200


def test_nothing_eaten_is_drawn_all_the_same() -> None:
    """Lines at nought."""
    assert ink(replace(DAYS, panels=(replace(PANEL, whole=(0.0, 0.0), planned=()),), events=()), MAIN) > 0


def test_rabbits_are_counted_whole() -> None:
    """No mark for a fifth of one; feed may have parts."""
    few = replace(DAYS, panels=(replace(PANEL, whole=(1.0, 2.0), planned=()), replace(PANEL, whole=(0.1, 0.25), planned=())))
    whole, parts = (axes.get_yticks() for axes in days(few)._figure.axes)
    assert all(mark == int(mark) for mark in whole)
    assert not all(mark == int(mark) for mark in parts)


def test_today_and_late_stand_out() -> None:
    """Today on dark, what is late in its own color; a quiet week has neither."""
    quiet = replace(WEEK, days=(DayRow("Thu 26 Nov", ()),))
    assert ink(quiet, LOOK) == 0
    assert ink(WEEK, LOOK) > 1000
    assert ink(WEEK, INK) > ink(quiet, INK)


def test_long_chores_break_into_lines() -> None:
    """The day grows by what it holds."""
    wordy = replace(WEEK, days=(DayRow("Wed 25 Nov", (f"Palpate {LONG} {LONG}, bred to {LONG}",)),))
    assert drawn(wordy).height > drawn(replace(WEEK, days=(DayRow("Wed 25 Nov", ("Wean 14",)),))).height


def test_pictures_fit_on_a_phone() -> None:
    """The longest, with all its rows, is not much taller than a phone's screen."""
    picture = drawn(replace(RANKS, groups=(Group("", ROWS * 8, 284, 8),)))
    assert picture.height / picture.width < 2.2
