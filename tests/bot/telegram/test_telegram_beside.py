"""The process beside the server: what is reckoned there is what is reckoned here, and it is there only while somebody asks."""

from __future__ import annotations

import io
import math
import operator
import pickle
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from bot.telegram.beside import RESTS, Beside, work
from core.app import Message
from core.app.papers import Wanted
from tests.bot.telegram.served import opened

AT = datetime(2026, 3, 4, 13, 15, tzinfo=UTC)
TOLD = ("new doe 14 mini rex", "new buck 3 mini rex", "bred 14 to 3 on 1/2", "14 kindled 6 on 2/2", "14 weighed 4-2")
ASKED = ("digest", "who should i keep", "why 14", "who is due", "14 x 3?")


@pytest.fixture
def beside() -> Iterator[Beside]:
    found = Beside()
    yield found
    found.close()


def test_it_is_begun_when_asked_and_ended_after_a_rest(beside: Beside) -> None:
    """What it can't work out is raised here; a question in between keeps it; asked once more it is begun anew."""
    assert not beside.runs
    assert beside(math.hypot, 3, 4) == 5
    with pytest.raises(ZeroDivisionError):
        beside(operator.truediv, 1, 0)
    for _ in range(RESTS):
        beside.rest()
    assert beside.runs
    assert beside(math.hypot, 6, 8) == 10
    for _ in range(RESTS + 1):
        beside.rest()
    assert not beside.runs


def test_where_it_is_killed_it_is_reckoned_here(beside: Beside, caplog: pytest.LogCaptureFixture) -> None:
    """The answer comes all the same, the operator reads of it, and the next question goes to a new one."""
    beside(math.hypot, 3, 4)
    assert beside._process is not None
    beside._process.kill()
    beside._process.wait()
    assert beside(math.hypot, 6, 8) == 10
    assert "The process that reckons is gone" in caplog.text
    assert not beside.runs
    assert beside(math.hypot, 3, 4) == 5
    assert beside.runs


def there(what: Callable[..., Any], *given: Any, **named: Any) -> Any:
    """Worked out by way of the two pipes."""
    answers = io.BytesIO()
    work(io.BytesIO(pickle.dumps((what, given, named))), answers)
    held, found = pickle.loads(answers.getvalue())  # noqa: S301 - written a line above
    assert held, found
    return found


def test_the_same_answers_there_as_here(tmp_path: Path) -> None:
    """To questions, in the digest that goes out by itself, and in pictures: everything finds its way through the pipes."""
    said = []
    for where in (None, there):
        app = opened(tmp_path / f"{where is None}.sqlite")
        app.reckon = where or app.reckon
        hear = [app.hear(Message(text, AT, "ann", "c", str(number))) for number, text in enumerate((*TOLD, *ASKED))]
        said.append((hear, app.picture("growing", "14", AT), app.paper("pedigree", Wanted(who="14"), AT)))
        app.close()
    assert said[0] == said[1]
