"""Names and notes that mean harm, or are merely very long; and files that are very large."""

from __future__ import annotations

import pytest

from bot.telegram.pieces import length
from bot.telegram.words import LIST_TOO_LARGE, PHOTO_TOO_LARGE
from tests.bot.telegram.served import Served
from tests.bot.telegram.test_telegram_people import invited
from tests.standin import StandIn

LONGEST = 4096
MB = 1024 * 1024

NAMES = [
    '<a href="http://x.example">Ann</a>',
    "<b>",
    "</pre><script>x()</script>",
    "&lt;i&gt; & co",
    "*bold* _it_ [x](y) `c`",
    "\u202egnirts\u202c",
]


@pytest.mark.parametrize("name", NAMES)
def test_a_name_is_shown_as_it_is_written(barn: Served, standin: StandIn, name: str) -> None:
    """No markup of a person's or an animal's name is taken for ours: no call asks for it to be read as such."""
    standin.person(name)
    barn.ask(name, invited(barn, "helper"))
    told = barn.ask("Ann", "people")
    assert f"{name}: helper" in told
    barn.ask("Ann", f"remark on 14: calm with {name}")
    barn.ask("Ann", "card of 14")
    sent = standin.calls("sendMessage") + standin.calls("sendDocument") + standin.calls("sendPhoto")
    assert not any(call.params.get("parse_mode") for call in sent)


@pytest.mark.parametrize(
    "text",
    [
        ("14 weighed 8-2. " * 300)[:LONGEST],
        "x" * LONGEST,
        "14 " * (LONGEST // 3),
        "\U0001f407" * (LONGEST // 2),
        "<b>" * (LONGEST // 3),
        "\n" * (LONGEST - 2) + "14",
        "9" * LONGEST,
    ],
    ids=["weights", "letters", "tags", "emoji", "markup", "lines", "digits"],
)
def test_the_longest_note_is_answered_and_kept(barn: Served, standin: StandIn, text: str) -> None:
    """Whole, in pieces that the service takes; and the next one is answered as ever."""
    assert length(text) <= LONGEST
    note = standin.say("Ann", text)
    assert standin.wait_answer(note, timeout=60)
    assert barn.reply(standin.say("Ann", "3 weighed 9-2"))["text"].startswith("Buck 3: 9 lb 2 oz.")
    assert text.strip() in [kept.strip() for kept in barn.notes()]
    assert all(length(call.params["text"]) <= LONGEST for call in standin.calls("sendMessage"))


@pytest.mark.parametrize(
    ("name", "kind", "said"),
    [("herd.csv", "text/csv", LIST_TOO_LARGE), ("doe.jpg", "image/jpeg", PHOTO_TOO_LARGE)],
)
def test_a_file_over_20_mb_is_not_fetched(barn: Served, standin: StandIn, name: str, kind: str, said: str) -> None:
    """A plain line says so, and the chat goes on."""
    large = standin.send_file("Ann", "document", b"0" * (20 * MB + 1), name=name, mime_type=kind, caption="14")
    assert standin.wait_answer(large)["text"] == said
    assert barn.ask("Ann", "3 weighed 9-2").startswith("Buck 3: 9 lb 2 oz.")


@pytest.mark.parametrize(("name", "kind"), [("herd.csv", "text/csv"), ("herd.xlsx", ""), ("doe.jpg", "image/jpeg")])
def test_20_mb_of_rubbish_is_answered(barn: Served, standin: StandIn, name: str, kind: str) -> None:
    """What the service just gives out: it is no list and no photo, whatever its name says."""
    before = barn.notes()
    rubbish = standin.send_file("Ann", "document", b"\x00\xff;\n" * (5 * MB), name=name, mime_type=kind)
    assert standin.wait_answer(rubbish, timeout=60)["text"]
    assert barn.ask("Ann", "3 weighed 9-2").startswith("Buck 3: 9 lb 2 oz.")
    assert barn.notes() == [*before, "3 weighed 9-2"]
