"""Long answers are cut where a person would cut them."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from bot.telegram.pieces import LONGEST, length, pieces


def test_a_short_text_stays_whole() -> None:
    """Nothing is cut that fits."""
    assert pieces("Doe 14: 8 born\nKindled Tue 24 Nov") == ("Doe 14: 8 born\nKindled Tue 24 Nov",)


def test_an_empty_text_is_no_message() -> None:
    """The service refuses empty messages, so there are none."""
    assert pieces("") == pieces("\n \n") == ()


def test_lines_stay_whole() -> None:
    """A cut falls between lines, and everything arrives in order."""
    lines = [f"{tag}: keep, born alive {tag}" for tag in range(400)]
    cut = pieces("\n".join(lines))
    assert len(cut) > 1
    assert "\n".join(cut).split("\n") == lines


def test_a_very_long_line_is_cut_at_a_space() -> None:
    """A line with no end is cut between words, and a word with no end where it must be."""
    assert pieces("one two three", 8) == ("one two", "three")
    assert pieces("abcdefgh" * 2, 8) == ("abcdefgh", "abcdefgh")


def test_length_is_counted_as_the_service_counts() -> None:
    """Emoji beyond the basic plane count as two."""
    assert length("🐇") == 2
    assert [length(piece) for piece in pieces("🐇" * 5, 5)] == [4, 4, 2]


@given(st.text(max_size=200), st.integers(min_value=2, max_value=60))
def test_every_piece_fits_and_no_word_is_lost(text: str, longest: int) -> None:
    """Whatever the text: pieces fit, and hold the text's letters in order, white space at the cuts apart."""
    cut = pieces(text, longest)
    assert all(length(piece) <= longest for piece in cut)
    assert "".join("".join(cut).split()) == "".join(text.split())


def test_the_longest_piece_is_below_the_limit() -> None:
    """4096 is the service's limit (Bot API, sendMessage)."""
    assert LONGEST < 4096
