"""`haynote read`: notes read against a roster or the book, and nothing written down."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.machine import Machine

TOP = Path(__file__).parents[3]
ROSTER = TOP / "tests" / "corpus" / "roster.json"
AT = "2026-11-25T07:10:00-06:00"
HEAVY = ("sqlalchemy", "alembic", "numpy", "scipy", "telegram", "httpx", "prompt_toolkit")


def test_read_document(machine: Machine) -> None:
    """Facts, question, words left over."""
    told = machine.json("read", "--roster", str(ROSTER), "--at", AT, "doe 14 kindled 8, 2 dead")
    assert set(told) == {"facts", "ask", "unread"}
    assert told["facts"] == [{"kind": "kindled", "doe": "14", "born": 8, "alive": 6, "dead": 2, "on": "2026-11-25"}]
    assert told["ask"] is None


def test_read_in_words(machine: Machine) -> None:
    """For people: a line a fact, the question with its reason, the words left over, or that there is nothing."""
    told = machine.ok("read", "--roster", str(ROSTER), "--at", AT, typed="14 kindled 8\n77 kindled 8\n31 4-6 lovely\n\n")
    assert "kindled: doe 14, on 2026-11-25, born 8" in told
    assert "asks (which_animal): " in told
    assert "not read: lovely" in told
    assert told.endswith("nothing to record\n")


def test_at_without_an_offset_is_farm_time(machine: Machine) -> None:
    """Half past eleven in the evening at the farm is already tomorrow in UTC."""
    for name in ("--at", "--now"):
        told = machine.json("read", "--roster", str(ROSTER), name, "2026-11-25T23:30", "31 4-6")
        assert told["facts"][0]["on"] == "2026-11-25"


def test_each_line_on_its_own(machine: Machine) -> None:
    """Without a text, one message a line and one object a line, in order; none answers another."""
    told = machine.ok("read", "--roster", str(ROSTER), "--at", AT, "--json", typed="14 kindled\n8\n31 4-6\n")
    first, second, third = (json.loads(line) for line in told.splitlines())
    assert first["ask"]["why"] == "how_many"
    assert second["facts"] == []
    assert third["facts"][0]["who"] == "31"


def test_jsonl_conversation(machine: Machine) -> None:
    """Messages of one conversation are read in the light of those before."""
    lines = [{"text": "14 kindled", "conversation": "c"}, {"text": "8", "conversation": "c"}, {"text": "8"}]
    told = machine.ok("read", "--roster", str(ROSTER), "--at", AT, "--json", "--jsonl", typed="\n".join(map(json.dumps, lines)))
    _, answer, alone = (json.loads(line) for line in told.splitlines())
    assert answer["facts"][0]["born"] == 8
    assert alone["facts"] == []


@pytest.mark.parametrize(
    "line", ["no json", "", "[]", '"text"', "{}", '{"text": 8}', '{"text": "14", "at": "soon"}', '{"text": "8", "edit_of": -1}']
)
def test_jsonl_with_a_bad_line(machine: Machine, line: str) -> None:
    """One output a line still; that one asks `what`, and where it is no object the command ends with 2."""
    good = json.dumps({"text": "31 4-6"})
    result = machine.run("read", "--roster", str(ROSTER), "--at", AT, "--json", "--jsonl", typed=f"{good}\n{line}\n{good}\n")
    told = [json.loads(each) for each in result.stdout.splitlines()]
    assert [bool(each["facts"]) for each in told] == [True, False, True]
    assert told[1]["ask"]["why"] == "what"
    assert set(told[1]) == {"facts", "ask", "unread"}
    assert result.exit_code == (0 if line.startswith("{") else 2)


@pytest.mark.parametrize(
    "text", ["no json", "", "[]", '{"animals": [{"name": "Clover"}]}', '{"animals": [{"tag": "1", "born": "soon"}]}', '{"animals": 3}']
)
def test_a_bad_roster(machine: Machine, text: str) -> None:
    """Ends with 1 and says what a roster is."""
    (machine.folder / "bad.json").write_text(text, encoding="utf-8")
    assert machine.refused("read", "--roster", "bad.json", "31 4-6")["code"] == "bad_roster"


def test_a_roster_that_is_not_there(machine: Machine) -> None:
    """The same, with the file's name."""
    problem = machine.refused("read", "--roster", "none.json", "31 4-6")
    assert problem["code"] == "bad_roster"
    assert "none.json" in problem["text"]


def test_reading_against_the_book_writes_nothing(farm: Machine) -> None:
    """Without a roster the farm's own book serves; it is as long afterwards as before."""
    before = farm.json("status")["notes"]
    told = farm.json("read", "14 has 6 kits")
    assert told["facts"] == [{"kind": "kit_count", "doe": "14", "count": 6, "on": "2026-11-25"}]
    assert farm.json("status")["notes"] == before


def test_a_cold_read_loads_nothing_heavy() -> None:
    """No database, no numbers library, no chat: reading a note with a roster starts quickly."""
    program = (
        "import sys; from bot.cli import haynote;"
        f"haynote.main(['read', '--roster', {str(ROSTER)!r}, '--at', {AT!r}, '--json', 'doe 14 kindled 8, 2 dead yesterday'], standalone_mode=False);"
        f"print(sorted(set({HEAVY!r}) & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", program], cwd=TOP, capture_output=True, encoding="utf-8", check=True)
    told, loaded = done.stdout.splitlines()
    assert json.loads(told)["facts"][0]["kind"] == "kindled"
    assert loaded == "[]"


def test_the_examples_are_read_right() -> None:
    """At least 97 % of the example notes right and none silently wrong, by the scorer that outsiders use."""
    score = [sys.executable, "tests/corpus/score.py", "--right", "97", "--silent", "0", "--show", "10", "--", sys.executable, "-m", "bot"]
    done = subprocess.run(score, cwd=TOP, capture_output=True, encoding="utf-8", check=False)
    assert done.returncode == 0, done.stdout + done.stderr
