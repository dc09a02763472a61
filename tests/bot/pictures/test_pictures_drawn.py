"""Pictures as they are drawn: a PNG of the width of a phone's screen, whatever the names and numbers are."""

from __future__ import annotations

import io
from datetime import UTC, datetime
from itertools import pairwise
from pathlib import Path

import pytest
from PIL import Image

from bot.attachments import File, made
from bot.papers import fonts
from bot.pictures.draw import png
from bot.pictures.fitting import fitted, wide
from bot.pictures.growing import _clear, _spread
from bot.pictures.letters import NO_LETTER, Letters, drawable
from bot.pictures.sheet import EDGE
from core.app import App, Message, Problem, open_book
from core.app.pictures import Aim, Axis, Growing, Series
from core.reply import Attached

AT = datetime(2026, 11, 25, 13, tzinfo=UTC)
LONG = "Wilhelmina Persephone of the Upper Meadow"


def weights(**fields: object) -> Growing:
    """A picture of a few weights."""
    plain = {
        "title": "Doe 14 growing",
        "note": "Mini Rex",
        "alt": "Doe 14",
        "along": Axis("weeks old", 0, 18, ((0, "0"), (8, "8"), (16, "16"))),
        "up": Axis("lb", 0, 6),
        "series": (Series("14", ((8, 3), (10, 3.5))),),
    }
    return Growing(**(plain | fields))  # type: ignore[arg-type]


def opened(content: bytes) -> Image.Image:
    """The picture as a viewer sees it."""
    return Image.open(io.BytesIO(content)).convert("RGB")


def ink(picture: Image.Image, color: tuple[int, int, int]) -> int:
    """How many dots have that color, nearly."""
    return sum(n for n, dot in picture.getcolors(1 << 20) or [] if all(abs(a - b) < 8 for a, b in zip(dot, color, strict=True)))


def test_a_picture_is_as_wide_as_a_phone_shows() -> None:
    """1080 dots, whatever stands on it."""
    assert opened(png(weights())).width == 1080
    assert opened(png(weights(title=LONG * 3, note=LONG * 4))).width == 1080


def test_what_is_told_is_drawn() -> None:
    """The curve of the breed and the day of the target each leave their ink; without them there is none."""
    plain = opened(png(weights()))
    full = opened(
        png(
            weights(
                own=((8, 3), (17, 5.6)),
                usual=((3, 1), (17, 5)),
                usual_said="usual Mini Rex here",
                target=4.5,
                target_said="4 lb 8 oz wanted",
                aim=Aim(13, 12, None, "makes it today\n(or never)"),
                today=11.0,
            )
        )
    )
    for color in ((0xE0, 0x7A, 0x00), (0xB2, 0x3A, 0x00)):
        assert ink(plain, color) == 0
        assert ink(full, color) > 50


def test_a_runts_breed_is_named_on_the_other_side() -> None:
    """The name of the usual curve keeps clear of the animal's own weights."""
    usual = ((3.0, 1.0), (10.0, 4.0), (17.0, 5.0))
    above, below = (opened(png(weights(usual=usual, usual_said="usual", series=(Series("1", ((9, up),)),)))) for up in (5, 2))
    assert above.tobytes() != below.tobytes()


def test_the_name_of_the_usual_curve_keeps_clear() -> None:
    """Below the words on the target where it has room to its left, else above them, else at the end of the curve."""
    usual = tuple((float(week), week / 3) for week in range(3, 19))
    assert _clear(weights(usual=usual, target=5.0), 1.0)[1] < 5.0 * 0.7
    assert _clear(weights(usual=usual, target=5.0), 2.7)[1] > 5.0
    assert _clear(weights(usual=usual, target=9.0), 30.0) == usual[-1]


def test_names_of_many_animals_stand_apart() -> None:
    """Ten kits of one weight: ten names, none over another, none out of the picture."""
    series = tuple(Series(f"R{number}", ((8, 3), (10, 3.5))) for number in range(10))
    assert opened(png(weights(series=series))).width == 1080
    places = _spread([300.0] * 10, 13.0)
    assert all(later - earlier == pytest.approx(13) for earlier, later in pairwise(places))
    assert places[-1] <= 4.3 * 72


def test_long_names_shrink_and_then_break() -> None:
    """Nothing is cut."""
    short, size = fitted("Doe 14", 16, 3)
    assert (short, size) == (["Doe 14"], 16)
    shrunk, smaller = fitted("Doe 14 with a longer name", 16, wide("Doe 14 with a longer name", 14))
    assert len(shrunk) == 1
    assert smaller < 16
    broken, smallest = fitted(LONG, 16, 1.5)
    assert len(broken) > 1
    assert " ".join(broken) == LONG
    assert all(wide(line, smallest) <= 1.5 for line in broken)
    word, size = fitted("x" * 90, 16, 1.5)
    assert "".join(word) == "x" * 90
    assert all(wide(line, size) <= 1.5 for line in word)


def test_formula_signs_are_letters() -> None:
    """A name with dollar signs, carets or backslashes is written as it is."""
    assert opened(png(weights(title=r"Doe $9^{2 \frac", note="$1$ _ {"))).width == 1080


def test_letters_that_no_font_has_are_marked() -> None:
    """A name in a script that can't be drawn shows that there are letters; Greek and Cyrillic are drawn, and more by other fonts."""
    assert drawable("Ωμέγα Жук\n9") == "Ωμέγα Жук\n9"
    assert drawable("\U00010b00") == NO_LETTER
    bold = Letters(iter([fonts.bold()]))
    assert bold.drawable("Ω\U00010b00") == f"Ω{NO_LETTER}"
    assert opened(png(weights(title="Быстрый خرگوش खरगोश กระต่าย うさぎ"))).width == 1080


def test_heads_stay_large() -> None:
    """A long title breaks into lines before it is smaller than what stands under it."""
    assert fitted(LONG * 2, 16, 4, least=13)[1] == 13


def test_grey_print_tells_the_lines_apart() -> None:
    """The colors of a picture differ in lightness as well."""
    from bot.pictures.look import MAIN, OTHER

    def lightness(color: str) -> float:
        red, green, blue = (int(color[at : at + 2], 16) for at in (1, 3, 5))
        return 0.299 * red + 0.587 * green + 0.114 * blue

    assert lightness(OTHER) - lightness(MAIN) > 70


def test_a_head_stands_within_the_edges() -> None:
    """White all around."""
    picture = opened(png(weights(title=LONG, note=LONG)))
    edge = round(EDGE * 200) - 6
    assert picture.crop((0, 0, edge, picture.height)).getextrema() == ((255, 255),) * 3


def test_the_book_s_picture_is_drawn(tmp_path: Path) -> None:
    """From a note to a file; what is not on the book any more is said."""
    app = open_book(str(tmp_path / "book.sqlite"))
    assert isinstance(app, App)
    for number, text in enumerate(("new doe 14 mini rex born 2026-09-01", "14 2-6")):
        app.hear(Message(text, AT, "ann", "barn", str(number)))
    told = app.hear(Message("picture of 14", AT, "ann", "barn", "9"))
    file = made(app, told.attached[0], AT)
    assert isinstance(file, File)
    assert file.mime == "image/png"
    assert opened(file.content).width == 1080
    gone = made(app, Attached("picture", "growing", "99", "x.png", ""), AT)
    assert isinstance(gone, Problem)
    assert gone.code == "no_animal"
